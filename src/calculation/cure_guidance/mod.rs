//! Whether to seal today, in this cold, damp or heat, with which sealant, and when traffic may return.
//!
//! `request` is the question, as sent and in typed quantities: of `offset_date_time`, `weather_series`, `data_sheet` and `sealing_work`.
//! `candidate` is a kind of sealant in this slot and weather, whose cure `cure_model` computes. `work_stops` finds what stops the work at a
//! start, with `slot_condition` and `deadline`; `possible_starts` asks it of all starts, for the windows. `stop_findings`,
//! `traffic_findings` and `warnings` say what there is to say; `assessment` puts all together and gives the verdict. `compose` and
//! `echo` make the `report`.
//!
//! The work lasts: what goes on while sealant goes in is judged from the start to the last foot, rain until the last foot is safe from it, and
//! every milestone counts from the last foot.
//!
//! Each row of weather holds until the next, the last for an hour, and nothing is guessed beyond. One part cures with the pressure of
//! water vapour: at the earliest with that alone, at the latest also slowed by cold by the law of Arrhenius. Heat above 23 °C, or above
//! the temperature of its data sheet where that is higher, does not hasten it, except by the water that warm air holds. Two parts cure
//! by Arrhenius between two activation energies; where it is warmer than 23 °C the order of the two turns round, and the band stays a
//! band.

mod assessment;
mod candidate;
mod compose;
mod cure_model;
mod data_sheet;
mod deadline;
mod echo;
mod fields_to_send;
mod offset_date_time;
mod possible_starts;
mod report;
mod request;
mod sealing_work;
mod slot_condition;
mod stop_findings;
mod traffic_findings;
mod warnings;
mod weather_series;
mod work_stops;

pub use echo::{CureGuidanceInputs, CureReferenceTime, CureSealantEcho, CureSheetEcho};
pub use report::{
    CureAdvice, CureAlternative, CureConditions, CureEquivalentHours, CureGuidanceReport, CureHour,
    CureMilestoneReached, CureReason, CureShelf, CureTimes, CureWindow,
};
pub use request::{CureGuidanceRequest, PlannedSealing, ResolvedCureGuidance};
pub use sealing_work::EstimatedWork;

use super::cost::CostTerm;
use super::input::Weather;
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest, Statement};
use super::{Calculation, Example};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealants::CureMechanism;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use assessment::Assessment;
use candidate::SealantCandidate;

impl Calculation for CureGuidanceRequest {
    type Report = CureGuidanceReport;
    const NAME: &'static str = "cure-guidance";
    const OPERATION_ID: &'static str = "guide_cure";
    const SUMMARY: &'static str = "Whether to seal now, with which sealant, and when traffic may return";
    const DESCRIPTION: &'static str = "From a sealant, a start and the weather hour by hour to a verdict with its reasons, the hours in \
        which the work would pass, and a range for each milestone. Each row of weather holds until the next, the last for one hour; \
        milestones are solved inside the hour, and nothing is guessed beyond the last: what is not reached comes with its progress. \
        One part cures with the pressure of water vapour, at the earliest with that alone, at the latest also slowed by cold as \
        Arrhenius has it, and heat above 23 °C is not counted on; two parts by Arrhenius between two activation energies; hot-applied sealant cools. The temperature of the \
        sealant is that of the slab where `surface` was sent, of the air elsewhere. Values of the sealant's data sheet replace every \
        default: send them. Without a data sheet the depth of one-part cure is calibrated to common practice, not validated. Needs \
        `weather`: `conditions`, at most 14 days, or a `location`, where the operator has switched forecasts on; then the report is \
        that of the forecast of the moment, and sending its `conditions_used` as `conditions` gives it again.";
    const BODY_LIMIT_FACTOR: usize = 4;
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "winter_gate_damp",
            summary: "Tern Island Boatyard: the air just reached 5 °C after a frosty night, and the slot is damp",
            request: include_str!("../../../openapi/examples/cure-guidance/winter_gate_damp.request.json"),
        },
        Example {
            name: "mild_cafe_lane",
            summary: "The café drive-through on a mild day, two-part sealant with its data sheet",
            request: include_str!("../../../openapi/examples/cure-guidance/mild_cafe_lane.request.json"),
        },
    ];

    fn weather_mut(&mut self) -> Option<&mut Weather> {
        Some(&mut self.weather)
    }

    fn cost_terms(&self) -> Vec<CostTerm> {
        let hours = self.weather.conditions.as_ref().map_or(0, Vec::len);
        vec![CostTerm::new("a cure", 1, 60), CostTerm::new("an hour of weather", hours, 4)]
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let job = self.resolve_for(Construction::HandWound, None, diagnostics);
        let job = diagnostics.finish(job)?;
        Ok(solve(self, &job, diagnostics))
    }
}

/// Assesses every kind of sealant, and reports.
pub fn solve(
    request: &CureGuidanceRequest,
    job: &ResolvedCureGuidance,
    diagnostics: &mut Diagnostics,
) -> CureGuidanceReport {
    let chosen = Assessment::new(job, job.candidate.clone());
    let assess = |candidate: SealantCandidate| {
        if candidate.kind == chosen.candidate.kind { chosen.clone() } else { Assessment::new(job, candidate) }
    };
    let assessments: Vec<_> = job.candidates().into_iter().map(assess).collect();
    for finding in &chosen.findings {
        diagnostics.add_finding(finding.clone());
    }
    add_model_note(job, diagnostics);
    add_basis(job, diagnostics);
    // The reasons of the other kinds have sources, too.
    for finding in assessments.iter().flat_map(|assessment| &assessment.findings) {
        diagnostics.add_sources(&finding.source_ids);
    }
    let handling = compose::advice(job, &chosen);
    for advice in &handling {
        diagnostics.add_sources(&advice.source_ids);
    }
    let parts = diagnostics.into_parts();
    compose::compose_report(request, job, &chosen, &assessments, handling, parts)
}

/// Adds a note on what the times rest on, where no data sheet gives them; what only cools always has one.
fn add_model_note(job: &ResolvedCureGuidance, diagnostics: &mut Diagnostics) {
    let sheet = &job.candidate.sheet;
    let (code, message, sent): (_, _, &[&'static str]) = match job.candidate.kind.cure_mechanism() {
        CureMechanism::MoistureFront(_) if sheet.depth_per_day.is_none() && sheet.full.is_none() => {
            (FindingCode::FrontCalibrated, Statement::new("cure-front-calibrated"), &["depth_per_day", "full_cure"])
        }
        CureMechanism::Reaction(_) if sheet.skin.is_none() || sheet.traffic.is_none() || sheet.full.is_none() => (
            FindingCode::UsualTimes,
            Statement::new("cure-usual-times"),
            &["skin_over", "open_to_traffic", "full_cure"],
        ),
        CureMechanism::MoistureFront(_) | CureMechanism::Reaction(_) => return,
        CureMechanism::Cooling(_) if sheet.traffic.is_none() => {
            (FindingCode::CoolsNotCures, Statement::new("cure-cools-in-usual-time"), &["open_to_traffic"])
        }
        CureMechanism::Cooling(_) => (FindingCode::CoolsNotCures, Statement::new("cure-cools-in-time-of-sheet"), &[]),
    };
    let body = FieldPath::BODY;
    let sealant_at = body.field("sealant");
    let at = sealant_at.field("data_sheet");
    let finding = Finding::new(code, Level::Note, &at, message);
    diagnostics.add_finding(sent.iter().fold(finding, |finding, name| finding.send(&at.field(name))));
}

/// Adds sources and cautions.
fn add_basis(job: &ResolvedCureGuidance, diagnostics: &mut Diagnostics) {
    use CautionCode::{LocalCodes, NotForPeople, Sealant, WorkZone};
    diagnostics.add_sources(&[
        Source::AlduchovEskridge,
        Source::Iso8502,
        Source::MilHdbk1110,
        Source::OwnChoice,
        Source::TxDot6340,
    ]);
    if job.weather.hours.iter().any(|hour| hour.frost_point.is_some()) {
        diagnostics.add_sources(&[Source::WmoIce]);
    }
    diagnostics.add_sources(job.candidate.kind.cure_sources());
    diagnostics.add_cautions(&[NotForPeople, LocalCodes, Sealant, WorkZone]);
    diagnostics.add_cautions(job.candidate.kind.cautions());
}
