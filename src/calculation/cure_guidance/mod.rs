//! Whether to seal today, in this cold, damp or heat, with which sealant, and when traffic may return.
//!
//! `request` asks. `moment` reads times, `sky` the weather, `sheet` the sealant, `job` all together; `product` computes by the `law`s how
//! a kind of sealant cures under the sky. `stops` looks for what of the weather stops the work at an hour, `slot` and `deadline` for
//! what else stands against it, `judgement` weighs all at the start and gives the verdict, `handling` says how to treat sealant and
//! slot; `show` makes the parts of the `report`.
//!
//! Each row of weather holds until the next, the last for an hour, and nothing is guessed beyond. One part cures with the pressure of
//! water vapour: at the earliest with that alone, at the latest also slowed by cold as Arrhenius has it. Above 23 °C, or the
//! temperature of its sheet, heat is not counted on to hasten it, but by the water that warm air holds. Two parts cure by Arrhenius
//! between two activation energies; where it is warmer than 23 °C the order of the two turns round, and the band stays a band.

mod deadline;
mod handling;
mod job;
mod judgement;
mod law;
mod moment;
mod product;
mod report;
mod request;
mod sheet;
mod show;
mod sky;
mod slot;
mod stops;

pub use report::{
    CureAdvice, CureAlternative, CureConditions, CureEquivalentHours, CureGuidanceInputs, CureGuidanceReport, CureHour,
    CureMilestoneReached, CureReason, CureReferenceTime, CureSealantEcho, CureSheetEcho, CureShelf, CureTimes,
    CureWindow,
};
pub use request::CureGuidanceRequest;

use super::input::Weather;
use super::report::{Diagnostics, FieldPath, Finding, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::cautions::CautionCode;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::sealants::SealantKind;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;
use job::Job;
use judgement::Weighed;
use product::Product;

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
    const BODY_SHARE: usize = 4;
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

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let job = self.read(diagnostics);
        let job = diagnostics.finish(job)?;
        let chosen = Weighed::new(&job, job.product.clone());
        let weigh = |product: Product| {
            if product.kind == chosen.product.kind { chosen.clone() } else { Weighed::new(&job, product) }
        };
        let weighed: Vec<_> = job.products().into_iter().map(weigh).collect();
        let (verdict, reasons) = (chosen.verdict, judgement::reasons(&chosen.findings));
        for finding in chosen.findings {
            diagnostics.add_finding(finding);
        }
        note_model(&job, diagnostics);
        note_basis(&job, diagnostics);
        // Reasons of the other kinds have sources, too.
        for finding in weighed.iter().flat_map(|weighed| &weighed.findings) {
            diagnostics.add_sources(&finding.source_ids);
        }
        let chances = job.chances();
        let handling = handling::advice(&job);
        for advice in &handling {
            diagnostics.add_sources(&advice.source_ids);
        }
        let conditions = self.weather.conditions.as_deref().unwrap_or_default();
        let closing = diagnostics.into_parts();
        Ok(CureGuidanceReport {
            verdict: verdict.code(),
            reasons,
            windows: job.windows(&chances),
            milestones: job.milestones(),
            hourly: job.hourly(&chances),
            equivalent_hours: job.equivalent_hours(),
            alternatives: job.alternatives(&weighed),
            shelf: job.show_shelf(),
            pot_life: job.show_pot_life(),
            handling,
            conditions_used: conditions.iter().map(CureConditions::from).collect(),
            inputs: job.echo(),
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

/// Says what the times rest on where no data sheet gives them.
fn note_model(job: &Job, diagnostics: &mut Diagnostics) {
    let sheet = &job.product.sheet;
    let at = FieldPath::BODY.field("sealant").field("data_sheet").pointer();
    let found = match job.product.kind {
        SealantKind::OnePartMoistureCure if sheet.depth_per_day.is_none() && sheet.full.is_none() => (
            FindingCode::FrontCalibrated,
            "Without a data sheet the depth of cure is calibrated to practice, not validated: a slot of 1-1/4 in (32 mm) cures through in 3 to 7 days at \
             23 °C (73 °F) and 50 %. Send depth_per_day or full_cure from the sheet.",
        ),
        SealantKind::TwoPartReactive if sheet.skin.is_none() || sheet.traffic.is_none() || sheet.full.is_none() => (
            FindingCode::UsualTimes,
            "What the data sheet does not give is usual: set in 10 to 15 min at 23 °C (73 °F), traffic after 25 to 60 min and \
             full cure within 60 min at 25 °C (77 °F). Send skin_over, open_to_traffic and full_cure from the sheet.",
        ),
        SealantKind::HotApplied if sheet.traffic.is_none() => (
            FindingCode::CoolsNotCures,
            "Hot-applied sealant does not cure, it cools: it carries traffic when it is cold and nothing tracks, taken as 15 to 60 min \
             after the pour. Send open_to_traffic from the sheet.",
        ),
        SealantKind::HotApplied => (
            FindingCode::CoolsNotCures,
            "Hot-applied sealant does not cure, it cools. The sheet's time holds for its own slot and weather: see that nothing tracks.",
        ),
        _ => return,
    };
    diagnostics.add_finding(Finding::at(found.0, Level::Note, at, found.1));
}

/// Names sources and cautions.
fn note_basis(job: &Job, diagnostics: &mut Diagnostics) {
    use CautionCode::{ClassifiedArea, HotWork, LocalCodes, NotForPeople, Sealant, WorkZone};
    diagnostics.add_sources(&[
        Source::AlduchovEskridge,
        Source::Iso8502,
        Source::MilHdbk1110,
        Source::OwnChoice,
        Source::TxDot6340,
    ]);
    if job.sky.hours.iter().any(|hour| hour.frost_point.is_some()) {
        diagnostics.add_sources(&[Source::WmoIce]);
    }
    match job.product.kind {
        SealantKind::OnePartMoistureCure => {
            diagnostics.add_sources(&[Source::Comyn, Source::Arrhenius, Source::CommonPractice]);
        }
        SealantKind::TwoPartReactive => {
            diagnostics.add_sources(&[Source::Arrhenius, Source::CommonPractice, Source::CtDot1612]);
        }
        SealantKind::HotApplied => diagnostics.add_sources(&[Source::EverettHotMelt]),
    }
    diagnostics.add_cautions(&[NotForPeople, LocalCodes, Sealant, WorkZone]);
    if job.product.kind == SealantKind::HotApplied {
        diagnostics.add_cautions(&[HotWork, ClassifiedArea]);
    }
}
