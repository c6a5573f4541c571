//! One call for the whole job: loops, unit, materials, cure, commissioning, and the order of the work.
//!
//! `request` is the flat union of the nouns. `feed` makes the requests of the single calculations, each fed from the one before;
//! they are answered as on their own, so that no number differs. `gather` turns their pointers to the plan's request and says each
//! thing once; `commissioning` and `steps` add what only the whole job has; `illustrated` has the drawings made; `report` answers.

mod commissioning;
mod feed;
mod gather;
mod illustrated;
mod report;
mod request;
mod steps;

pub use illustrated::Illustrator;
pub use report::{Commissioning, ExpectedReading, InstallationPlanReport, PlanDrawings, PlanStep, PlanTrial};
pub use request::InstallationPlanRequest;

use super::input::Weather;
use super::loop_sizing::LoopSizingReport;
use super::report::{Diagnostics, FieldErrorCode, FieldPath, InvalidRequest};
use super::vehicle_response::VehicleResponseReport;
use super::{Calculation, Example};
use crate::practice::job_steps::{JobStep, PlanExtra, PlanPart};
use crate::practice::sealants::SealantKind;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::vocabulary::Vocabulary;
use gather::{Reported, gather};

impl Calculation for InstallationPlanRequest {
    type Report = InstallationPlanReport;
    const NAME: &'static str = "installation-plan";
    const OPERATION_ID: &'static str = "plan_installation";
    const SUMMARY: &'static str = "One call for the whole job";
    const DESCRIPTION: &'static str = "From an opening to everything that goes in the van and on paper: the loops, whether the detector \
        unit tunes to them, what to load, whether to seal in this weather, what to measure and to try, and the order of the work with \
        its cautions. The request is the flat union of the single calculations' fields; each of them is fed from the one before and \
        answered as on its own, so no number differs. Only the opening is needed. `parts` chooses what is planned beside the sizing, \
        `cure` needs `weather` and `start`, and `include` adds drawings. Pointers of all parts lead into this request; `findings` \
        holds those of all parts, the gravest first.";
    const BODY_SHARE: usize = 4;
    const REPORT_CAPACITY: usize = 128 * 1024;
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate_in_january",
            summary: "Tern Island Boatyard: the yard gate, in January",
            request: include_str!("../../../openapi/examples/installation-plan/yard_gate_in_january.request.json"),
        },
        Example {
            name: "barrier_lane",
            summary: "The ticketed barrier lane of the car park",
            request: include_str!("../../../openapi/examples/installation-plan/barrier_lane.request.json"),
        },
        Example {
            name: "cafe_drive_through",
            summary: "The café drive-through, preformed, sizing and materials only",
            request: include_str!("../../../openapi/examples/installation-plan/cafe_drive_through.request.json"),
        },
    ];

    fn weather_mut(&mut self) -> Option<&mut Weather> {
        self.weather.as_mut()
    }

    fn illustrate(&self, report: &mut Self::Report, illustrator: &dyn Illustrator) {
        if self.include.as_deref().unwrap_or_default().contains(&PlanExtra::Drawings) {
            let response = self.hardest_response(&report.sizing);
            report.drawings = Some(illustrated::draw(report, response.as_ref(), self.system(), illustrator));
        }
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let sizing = self.sizing().answer();
        let loops = sizing.as_ref().map_or_else(|_| self.stand_in(), |report| self.sized(report));
        let cover = sizing.as_ref().ok().map(|report| report.inputs.cover);
        let is_sealed = loops.iter().any(|sized| sized.construction.is_sawn());
        let materials = self.asks(PlanPart::Materials).then(|| self.materials(&loops).answer());
        let detector = self.asks(PlanPart::Detector).then(|| self.detector(&loops).answer());
        let cure = (self.asks_cure(diagnostics) && is_sealed).then(|| self.cure(cover.as_ref())).flatten();
        let cure = cure.map(|request| request.answer());
        let sizing = settled(sizing, diagnostics);
        let materials = materials.map(|report| settled(report, diagnostics));
        let detector = detector.map(|report| settled(report, diagnostics));
        let cure = cure.map(|report| settled(report, diagnostics));
        let mut sizing = diagnostics.finish(sizing)?;
        let (mut detector, mut materials, mut cure) = (detector.flatten(), materials.flatten(), cure.flatten());

        self.leave_idle(is_sealed, diagnostics);
        let mut parts: Vec<&mut dyn Reported> = vec![&mut sizing];
        parts.extend(detector.as_mut().map(|part| part as &mut dyn Reported));
        parts.extend(materials.as_mut().map(|part| part as &mut dyn Reported));
        parts.extend(cure.as_mut().map(|part| part as &mut dyn Reported));
        gather(&mut parts, diagnostics);

        let hazards = self.site_hazards.as_deref().unwrap_or_default();
        let commissioning = self
            .asks(PlanPart::Commissioning)
            .then(|| commissioning::plan(&sizing, &loops, self.opening.barrier, hazards));
        if let Some(commissioning) = &commissioning {
            for reading in &commissioning.readings {
                diagnostics.add_sources(&reading.source_ids);
            }
        }
        let steps = steps::order(&steps::Job {
            sizing: &sizing,
            loops: &loops,
            materials: materials.as_ref(),
            cure: cure.as_ref(),
            barrier: self.opening.barrier,
            system: self.system(),
        });
        diagnostics.add_sources(&[Source::CommonPractice]);
        let taken = JobStep::ALL.iter().filter(|step| steps.iter().any(|taken| taken.step == step.code()));
        let cautions: Vec<_> = taken.flat_map(|step| step.cautions()).copied().collect();
        diagnostics.add_cautions(&cautions);

        let closing = diagnostics.into_parts();
        Ok(InstallationPlanReport {
            sizing,
            detector,
            materials,
            cure,
            commissioning,
            steps,
            drawings: None,
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

/// The report of a part, or its faults among those of the plan.
fn settled<R>(answer: Result<R, InvalidRequest>, diagnostics: &mut Diagnostics) -> Option<R> {
    answer.map_err(|refusal| gather::faults(refusal.faults).for_each(|fault| diagnostics.push_error(fault))).ok()
}

impl InstallationPlanRequest {
    fn asks(&self, part: PlanPart) -> bool {
        self.parts.as_ref().is_none_or(|parts| parts.contains(&part))
    }

    /// Whether the cure is to be planned; notes what is missing for it.
    fn asks_cure(&self, diagnostics: &mut Diagnostics) -> bool {
        let body = FieldPath::BODY;
        let is_named = self.parts.as_ref().is_some_and(|parts| parts.contains(&PlanPart::Cure));
        if is_named && self.weather.is_none() {
            let hint = "Send weather, or leave cure out of parts.";
            diagnostics.add_error(
                &body.field("weather"),
                FieldErrorCode::FieldMissing,
                "The cure is asked for without weather.",
                hint,
            );
        }
        // Weather that is at fault already is not asked for again.
        let asks = self.asks(PlanPart::Cure)
            && self.weather.is_some()
            && !diagnostics.has_error_at(&body.field("weather").field("location"));
        if asks && self.start.is_none() {
            let hint = "Send start, when the sealant goes in, such as \"2026-01-20T13:00:00-05:00\".";
            diagnostics.add_error(
                &body.field("start"),
                FieldErrorCode::FieldMissing,
                "The weather was sent without a start.",
                hint,
            );
        }
        if asks && self.sealant.is_none() {
            let kind = SEALANT_KIND.code();
            diagnostics.add_assumption(
                &body.field("sealant").field("kind"),
                kind,
                "The usual loop sealant.",
                &[Source::CommonPractice],
            );
        }
        asks
    }

    /// Lists fields of parts that are not planned.
    fn leave_idle(&self, is_sealed: bool, diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        let plans_cure = self.asks(PlanPart::Cure) && self.weather.is_some() && is_sealed;
        let plans_materials = self.asks(PlanPart::Materials);
        let fields = [
            (self.asks(PlanPart::Detector), "wiring", self.wiring.is_some()),
            (plans_materials, "lead_in_slot", self.lead_in_slot.is_some()),
            (plans_materials, "saw", self.saw.is_some()),
            (plans_materials || plans_cure, "sealant", self.sealant.is_some()),
            (plans_materials, "backer_rod", self.backer_rod.is_some()),
            (plans_materials, "wire_spools", self.wire_spools.is_some()),
            (plans_materials, "waste_percent", self.waste_percent.is_some()),
            (plans_materials, "slab", self.slab.is_some()),
            (plans_materials, "crossings", self.crossings.is_some()),
            (plans_materials, "agency_minimum", self.agency_minimum.is_some()),
            (plans_materials, "prices", self.prices.is_some()),
            (plans_materials, "productivity", self.productivity.is_some()),
            (plans_cure, "start", self.start.is_some()),
            (plans_cure, "surface_condition", self.surface_condition.is_some()),
            (plans_cure, "needed_open_by", self.needed_open_by.is_some()),
            (plans_cure, "weather", self.weather.is_some()),
        ];
        for (_, name, _) in fields.into_iter().filter(|(is_planned, _, is_sent)| !is_planned && *is_sent) {
            diagnostics.mark_unused(&body.field(name));
        }
    }

    /// The response of the hardest vehicle over the first loop.
    fn hardest_response(&self, sizing: &LoopSizingReport) -> Option<VehicleResponseReport> {
        let loops = self.sized(sizing);
        let (sized, found) = (loops.first()?, sizing.loops.first()?);
        let hardest = found.vehicles.iter().min_by(|a, b| a.times_threshold.total_cmp(&b.times_threshold))?;
        let vehicle = VehicleClass::ALL.iter().copied().find(|class| class.code() == hardest.vehicle)?;
        self.response(sized, vehicle, sizing.inputs.threshold_percent).answer().ok()
    }
}

/// The sealant that is taken where none was sent.
const SEALANT_KIND: SealantKind = SealantKind::OnePartMoistureCure;
