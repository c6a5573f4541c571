//! What loops usually measure, for a loop that has neither a design nor a record.

use uom::si::area::square_meter;
use uom::si::f64::Length;
use uom::si::length::meter;

use super::designed_turns::inductance_ladder;
use super::meters::ReadingBand;
use super::request::FaultFindingRequest;
use crate::calculation::input::{LeadIn, ResolvedLeadIn};
use crate::calculation::report::{Diagnostics, FieldPath, Statement};
use crate::physics::conductor;
use crate::physics::winding::{Winding, WindingShape};
use crate::practice::layout::USUAL_LOOP_SIZES;
use crate::practice::sources::Source;
use crate::practice::wires::{WireGauge, usual_over_insulation};
use crate::quantity::UnitSystem;
use crate::quantity::format::format_length_input;

/// The fewest and the most turns that loops at openings usually have. Common practice.
const USUAL_TURNS: [u32; 2] = [2, 5];
/// How far a loop that nobody recorded strays from what is computed for its size, as a share: paced out, of unknown wire and packing. A
/// choice made here.
const SIZE_DEVIATION: f64 = 0.06;

/// The loops that one without a record may be: 2 to 5 turns of the usual wire, of its size where that is known.
pub struct UsualLoops {
    /// The smallest and the largest, legs along and across.
    sizes: [[Length; 2]; 2],
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
}

impl UsualLoops {
    /// The loops that a request without design and record may be about; says under `assumed` what was taken.
    pub fn resolve(request: &FaultFindingRequest, diagnostics: &mut Diagnostics) -> Option<Self> {
        let body = FieldPath::BODY;
        let lead_in = LeadIn::resolve_or_default(request.lead_in.as_ref(), &body.field("lead_in"), diagnostics);
        let parts = LeadIn::parts_sent_of(request.lead_in.as_ref());
        diagnostics.mark_unneeded(&body.field("lead_in"), &parts);
        let at = body.field("size");
        let sizes = if let Some(size) = &request.size {
            size.resolve(&at, diagnostics).map(|legs| [legs, legs])
        } else {
            let sizes = USUAL_LOOP_SIZES.map(|legs| legs.map(|leg| leg.in_system(UnitSystem::UsCustomary)));
            let [least, most] = sizes.map(|legs| {
                let [along, across] = legs.map(|leg| format_length_input(leg, UnitSystem::UsCustomary));
                format!("{along} x {across}")
            });
            let reason = Statement::new("faults-usual-sizes");
            diagnostics.add_assumption(&at, format!("{least} to {most}"), reason, &[Source::OwnChoice]);
            Some(sizes)
        };
        let [least, most] = USUAL_TURNS;
        let reason = Statement::new("faults-usual-loops");
        let value = format!("{least} to {most} turns of 14 AWG");
        diagnostics.add_assumption(&body.field("design"), value, reason, &[Source::CommonPractice, Source::OwnChoice]);
        Some(Self { sizes: sizes?, lead_in: lead_in? })
    }

    /// Inductance, µH, and resistance, ohm, of the coil, from the least to the greatest.
    pub fn bands(&self, frequency: f64, celsius: f64) -> (ReadingBand, ReadingBand) {
        let ends = [0, 1].map(|end| {
            let (turns, [along, across]) = (USUAL_TURNS[end], self.sizes[end].map(|leg| leg.get::<meter>()));
            let area = WireGauge::Awg14.area();
            let winding = Winding {
                shape: WindingShape::Rectangle,
                along,
                across,
                corner_cut: 0.0,
                turns,
                pitch: usual_over_insulation(area, UnitSystem::UsCustomary).get::<meter>(),
                wire_radius: (area.get::<square_meter>() / std::f64::consts::PI).sqrt(),
            };
            let internal = conductor::skin_effect(winding.wire_radius, frequency, celsius).internal_factor;
            let inductance = inductance_ladder(&winding, internal, turns)[turns as usize] * 1e6;
            let per_metre = conductor::dc_resistance_per_metre(area.get::<square_meter>(), celsius);
            (inductance, winding.wire_length() * per_metre)
        });
        let band =
            |ends: [f64; 2], absolute| ReadingBand { low: ends[0], high: ends[1], relative: SIZE_DEVIATION, absolute };
        (band(ends.map(|(inductance, _)| inductance), 0.5), band(ends.map(|(_, resistance)| resistance), 0.05))
    }
}
