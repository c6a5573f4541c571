//! What a loop measures: inductance, resistance and quality factor at the unit's terminals.
//!
//! - `request`: what is asked, as sent and in typed quantities
//! - `electrical`: the model
//! - `findings`: what the figures mean
//! - `report`: what is answered

mod electrical;
mod findings;
mod report;
mod request;

use uom::si::capacitance::nanofarad;
use uom::si::frequency::kilohertz;

pub use electrical::{ElectricalFigures, MeasurementConditions, SOURCES, USUAL_FREQUENCY_KHZ, measure};
pub use findings::{JudgementContext, judge};
pub use report::{LoopCharacteristicsInputs, LoopCharacteristicsReport, LoopElectrical};
pub use request::LoopCharacteristicsRequest;

use super::cost::CostTerm;
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::cautions::CautionCode;
use crate::practice::detectors::DetectorEnvelope;
use crate::quantity::output::round;
use request::ResolvedLoopCharacteristics;

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

    fn cost_terms(&self) -> Vec<CostTerm> {
        vec![CostTerm::new("a loop's figures", 1, 12), CostTerm::new("a turn of a loop", self.r#loop.turns as usize, 1)]
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        let body = FieldPath::BODY;
        diagnostics.mark_unneeded(&body.field("loop"), &[("cover", self.r#loop.cover.is_some())]);
        diagnostics.mark_unneeded(&body.field("lead_in"), &self.lead_in.parts_sent());
        Ok(solve(resolved, diagnostics))
    }
}

/// Measures the loop, and reports.
fn solve(resolved: ResolvedLoopCharacteristics, diagnostics: &mut Diagnostics) -> LoopCharacteristicsReport {
    let ResolvedLoopCharacteristics { coil, lead_in, conditions } = resolved;
    let body = FieldPath::BODY;
    let (loop_at, lead_in_at) = (body.field("loop"), body.field("lead_in"));
    let figures = measure(&coil, &lead_in, &conditions);
    diagnostics.add_sources(SOURCES);
    let context =
        JudgementContext { coil: loop_at, lead_in: lead_in_at, unit: loop_at, system: coil.system, subject: None };
    judge(&figures, &conditions, &DetectorEnvelope::StandardMinimum.limits(), &context, diagnostics);
    diagnostics.add_cautions(&[
        CautionCode::LocalCodes,
        CautionCode::NotForPeople,
        CautionCode::InsulationTester,
        CautionCode::GateCanMove,
    ]);

    let inputs = LoopCharacteristicsInputs {
        r#loop: coil,
        lead_in,
        frequency_khz: round(conditions.frequency.get::<kilohertz>(), 3),
        temperature: conditions.temperature.into(),
        steel_below: conditions.steel_below.map(Into::into),
        shunt_capacitance_nf: round(conditions.shunt_capacitance.get::<nanofarad>(), 3),
    };
    let closing = diagnostics.into_parts();
    LoopCharacteristicsReport::of(
        &figures,
        inputs,
        closing.findings,
        closing.assumed,
        closing.unused,
        closing.cautions,
        closing.basis,
    )
}
