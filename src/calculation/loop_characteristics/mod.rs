//! What a loop measures: inductance, resistance and quality factor at the unit's terminals.
//!
//! `request` asks, `electrical` computes, `judgement` says what the figures mean, `report` answers.

mod electrical;
mod judgement;
mod report;
mod request;

use uom::si::capacitance::nanofarad;
use uom::si::f64::{Capacitance, Frequency};
use uom::si::frequency::kilohertz;

pub use electrical::{Conditions, Electrical, SOURCES, measure};
pub use judgement::{Places, judge};
pub use report::{LoopCharacteristicsInputs, LoopCharacteristicsReport, LoopElectrical};
pub use request::{LoopCharacteristicsRequest, Reinforcement};

use super::input::{ResolvedLeadIn, ResolvedLoop};
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::cautions::CautionCode;
use crate::practice::detectors::DetectorEnvelope;
use crate::practice::sources::Source;
use crate::quantity::output::round;

/// The frequency at which one agency tests loops, and the middle of what units run at, kHz.
pub const USUAL_FREQUENCY_KHZ: f64 = 50.0;

/// A request in typed quantities.
struct Understood {
    coil: ResolvedLoop,
    lead_in: ResolvedLeadIn,
    conditions: Conditions,
}

impl LoopCharacteristicsRequest {
    fn read(&self, diagnostics: &mut Diagnostics) -> Option<Understood> {
        let body = FieldPath::BODY;
        let coil = self.r#loop.read(&body.field("loop"), diagnostics);
        let lead_in = self.lead_in.read(&body.field("lead_in"), diagnostics);
        let frequency = diagnostics.value_or_default(
            &body.field("frequency_khz"),
            self.frequency_khz,
            (USUAL_FREQUENCY_KHZ, "50"),
            "The frequency of an agency's acceptance test.",
            Source::Everett,
        );
        let temperature = diagnostics.parse_or_default(
            &body.field("temperature"),
            self.temperature.as_ref(),
            "20 °C",
            "The temperature at which wire tables hold.",
            Source::IacsCopper,
        );
        let reinforcement = body.field("reinforcement");
        let steel_below = self.reinforcement.as_ref().and_then(|steel| {
            diagnostics.parse_optional(&reinforcement.field("depth_below_loop"), Some(&steel.depth_below_loop))
        });
        let capacitance = diagnostics.value_or_default(
            &body.field("shunt_capacitance_nf"),
            self.shunt_capacitance_nf,
            (0.0, "0"),
            "No public figure for the capacitance of slots and cables exists.",
            Source::OwnChoice,
        );
        Some(Understood {
            coil: coil?,
            lead_in: lead_in?,
            conditions: Conditions {
                frequency: Frequency::new::<kilohertz>(frequency),
                temperature: temperature?,
                steel_below,
                shunt_capacitance: Capacitance::new::<nanofarad>(capacitance),
            },
        })
    }
}

impl Calculation for LoopCharacteristicsRequest {
    type Report = LoopCharacteristicsReport;
    const NAME: &'static str = "loop-characteristics";
    const OPERATION_ID: &'static str = "characterize_loop";
    const SUMMARY: &'static str = "What a loop will measure";
    const DESCRIPTION: &'static str = "Inductance, resistance and quality factor of a loop on its lead-in, at the detector \
        unit's terminals, before it is cut. Inductance comes from filament sums at the working frequency, resistance from the \
        standards of wire. The as-built band says what a meter should show after installation. The quality factor is an upper \
        bound, for pavement, steel and neighbouring turns add loss.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "standard_test_loop",
            summary: "6 x 6 ft, three turns, corners cut, 100 ft of lead-in",
            request: include_str!("../../../openapi/examples/loop-characteristics/standard_test_loop.request.json"),
        },
        Example {
            name: "over_mesh",
            summary: "Tern Island Boatyard: a metric loop over reinforcing mesh",
            request: include_str!("../../../openapi/examples/loop-characteristics/over_mesh.request.json"),
        },
    ];

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let understood = self.read(diagnostics);
        let Understood { coil, lead_in, conditions } = diagnostics.finish(understood)?;
        let body = FieldPath::BODY;
        let (loop_at, lead_in_at) = (body.field("loop"), body.field("lead_in"));
        diagnostics.mark_unneeded(&loop_at, &[("cover", self.r#loop.cover.is_some())]);
        diagnostics.mark_unneeded(&lead_in_at, &self.lead_in.parts_sent());

        let figures = measure(&coil, &lead_in, &conditions);
        diagnostics.add_sources(SOURCES);
        let places = Places { coil: loop_at, lead_in: lead_in_at, unit: loop_at, system: coil.system, subject: None };
        judge(&figures, &conditions, &DetectorEnvelope::StandardMinimum.limits(), &places, diagnostics);
        diagnostics.add_cautions(&[
            CautionCode::LocalCodes,
            CautionCode::NotForPeople,
            CautionCode::InsulationTester,
            CautionCode::GateCanMove,
        ]);

        let inputs = LoopCharacteristicsInputs {
            r#loop: coil.echo(),
            lead_in: lead_in.echo(),
            frequency_khz: round(conditions.frequency.get::<kilohertz>(), 3),
            temperature: conditions.temperature.into(),
            steel_below: conditions.steel_below.map(Into::into),
            shunt_capacitance_nf: round(conditions.shunt_capacitance.get::<nanofarad>(), 3),
        };
        let closing = diagnostics.into_parts();
        Ok(LoopCharacteristicsReport::of(
            &figures,
            inputs,
            closing.findings,
            closing.assumed,
            closing.unused,
            closing.cautions,
            closing.basis,
        ))
    }
}
