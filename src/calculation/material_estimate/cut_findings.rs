//! Findings about each cut: its depth, what it comes near to, its blade, its rod, and whether sealant can flow round what lies in it.

use uom::si::f64::Length;
use uom::si::ratio::ratio;

use super::cut::{CutGeometry, blade_reaches};
use super::estimate::MaterialEstimate;
use super::loop_cuts::LoopCuts;
use super::loop_estimate::LoopEstimate;
use super::report::SlotFit;
use super::resolved::ResolvedMaterialEstimate;
use crate::calculation::input::{CutPlace, LIMIT_TOLERANCE, NarrowSlot, detail_figure, width_finding};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::{best_width, deepest_cut, generous_clearance, steel_clearance};
use crate::quantity::UnitSystem;

/// Judges every cut, and gives the fit of its slot.
pub fn judge_cuts(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) -> Vec<SlotFit> {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let loops_at = body.field("loops");
    let mut fits = Vec::new();
    for (index, loop_estimate) in estimate.loops.iter().enumerate() {
        let Some(cuts) = &loop_estimate.cuts else { continue };
        let own_at = loops_at.item(index);
        let slot_at = if loop_estimate.resolved.has_own_slot { own_at.field("slot") } else { body.field("slot") };
        judge_loop_cuts(loop_estimate, cuts, &slot_at, job, diagnostics);
        for cut in cuts.iter() {
            let fit = SlotAssessment::of(cut, loop_estimate.resolved.coil.system, job);
            fit.judge(loop_estimate, &slot_at, diagnostics);
            fits.push(fit.to_report(&loop_estimate.resolved.label));
        }
    }
    let lead_in_at = body.field("lead_in_slot");
    for shared in &estimate.shared_slots {
        let (cut, loop_estimate) = (&shared.cut, &estimate.loops[shared.pairs_of[0]]);
        CutCheck { loop_estimate, cut, at: &lead_in_at, diagnostics }.check_all(job);
        let fit = SlotAssessment::of(cut, loop_estimate.resolved.coil.system, job);
        fit.judge(loop_estimate, &lead_in_at, diagnostics);
        fits.push(fit.to_report(&shared.label(&estimate.loops)));
    }
    fits
}

/// Judges both cuts of one loop; `slot_at` is the place of its slot in the request.
fn judge_loop_cuts(
    loop_estimate: &LoopEstimate<'_>,
    cuts: &LoopCuts,
    slot_at: &FieldPath<'_>,
    job: &ResolvedMaterialEstimate,
    diagnostics: &mut Diagnostics,
) {
    let body = FieldPath::BODY;
    let lead_in_at = body.field("lead_in_slot");
    for cut in cuts.iter() {
        let at = match cut.place() {
            CutPlace::Loop => slot_at,
            CutPlace::LeadIn => &lead_in_at,
        };
        let mut check = CutCheck { loop_estimate, cut, at, diagnostics };
        check.check_cover();
        // A lead-in cut that is as deep as the loop's repeats no finding about that depth.
        let repeats =
            cut.place() == CutPlace::LeadIn && (cut.depth() - cuts.loop_cut.depth()).abs() <= check.depth_tolerance();
        if !repeats {
            check.check_slab(job);
            check.check_steel(job);
            check.check_blade(job);
        }
        check.check_edge(job);
        check.check_rod(job);
    }
}

/// One cut under judgement, and where its findings go.
struct CutCheck<'a> {
    loop_estimate: &'a LoopEstimate<'a>,
    cut: &'a CutGeometry,
    at: &'a FieldPath<'a>,
    diagnostics: &'a mut Diagnostics,
}

impl CutCheck<'_> {
    /// All of it, for a cut that stands by itself.
    fn check_all(mut self, job: &ResolvedMaterialEstimate) {
        self.check_cover();
        self.check_slab(job);
        self.check_steel(job);
        self.check_blade(job);
        self.check_edge(job);
        self.check_rod(job);
    }

    fn system(&self) -> UnitSystem {
        self.loop_estimate.resolved.coil.system
    }

    fn depth_tolerance(&self) -> Length {
        LIMIT_TOLERANCE * self.cut.depth()
    }

    /// Adds which cut it is, and lengths of it.
    fn describe(&self, statement: Statement, lengths: &[(&'static str, Length)]) -> Statement {
        let statement = statement.code("place", self.cut.place().code());
        lengths
            .iter()
            .fold(statement, |statement, (name, length)| statement.detail_length(name, *length, self.system()))
    }

    fn add_finding(
        &mut self,
        code: FindingCode,
        level: Level,
        at: &FieldPath<'_>,
        message: Statement,
        figures: &[(&'static str, Length)],
    ) {
        let system = self.system();
        let finding = Finding::new(code, level, at, message).on(Some(self.loop_estimate.resolved.subject()));
        self.diagnostics.add_finding(
            figures.iter().fold(finding, |finding, (name, value)| detail_figure(finding, name, *value, system)),
        );
    }

    fn check_cover(&mut self) {
        let finding = self.cut.levels.finding(self.at);
        let subject = self.loop_estimate.resolved.subject();
        if let Some(finding) = finding {
            self.diagnostics.add_finding(finding.on(Some(subject)));
        }
    }

    /// Adds a finding about the depth. That of a loop points to what limits the depth (`limit_at`), that of a lead-in to its slot.
    fn add_depth_finding(
        &mut self,
        limit_at: &FieldPath<'_>,
        code: FindingCode,
        level: Level,
        message: Statement,
        figures: &[(&'static str, Length)],
    ) {
        let at = self.at;
        match self.cut.place() {
            CutPlace::Loop => self.add_finding(code, level, limit_at, message, figures),
            CutPlace::LeadIn => self.add_finding(code, level, &at.field("depth"), message, figures),
        }
    }

    fn check_slab(&mut self, job: &ResolvedMaterialEstimate) {
        let Some(thickness) = job.slab.thickness else { return };
        let (body, depth, third) = (FieldPath::BODY, self.cut.depth(), thickness / 3.0);
        let slab_at = body.field("slab");
        let (level, message) = if depth >= thickness - self.depth_tolerance() {
            (Level::Stop, Statement::new("materials-cut-through-slab"))
        } else if depth > third + self.depth_tolerance() {
            (Level::Warning, Statement::new("materials-cut-weakens-slab"))
        } else {
            return;
        };
        let message =
            self.describe(message, &[("slot_depth", depth)]).detail_length_at_most("enough", third, self.system());
        let figures = [("slot_depth", depth), ("slab_thickness", thickness), ("enough", third)];
        self.add_depth_finding(&slab_at.field("thickness"), FindingCode::CutDeepForSlab, level, message, &figures);
    }

    fn check_steel(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, depth) = (FieldPath::BODY, self.cut.depth());
        let slab_at = body.field("slab");
        let Some(steel) = job.slab.steel.filter(|steel| depth > *steel - steel_clearance() + self.depth_tolerance())
        else {
            return;
        };
        let enough = (steel - steel_clearance()).max(Length::default());
        let figures = [("slot_depth", depth), ("steel_depth", steel), ("enough", enough)];
        let message = self
            .describe(Statement::new("materials-steel-near-cut"), &figures[..2])
            .detail_length_at_most("enough", enough, self.system())
            .detail_length("steel_clearance", steel_clearance(), self.system());
        let at = slab_at.field("reinforcement_depth");
        self.add_depth_finding(&at, FindingCode::SteelNearCut, Level::Stop, message, &figures);
    }

    fn check_blade(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, cut) = (FieldPath::BODY, self.cut);
        let saw_at = body.field("saw");
        let at = saw_at.field("blade_diameter");
        if cut.depth() > deepest_cut() + self.depth_tolerance() {
            let figures = [("slot_depth", cut.depth()), ("enough", deepest_cut())];
            let message = self
                .describe(Statement::new("materials-no-blade-reaches"), &figures[..1])
                .detail_length_at_most("enough", deepest_cut(), self.system());
            self.add_depth_finding(&at, FindingCode::BladeTooSmall, Level::Stop, message, &figures);
        } else if !blade_reaches(job.saw.blade, cut.depth()) {
            let figures = [("blade_diameter", job.saw.blade), ("slot_depth", cut.depth()), ("enough", cut.blade)];
            let message = self
                .describe(Statement::new("materials-blade-too-small"), &figures[..2])
                .detail_length_at_least("enough", cut.blade, self.system())
                .detail_length("run_out", cut.ends.run_out, self.system());
            self.add_depth_finding(&at, FindingCode::BladeTooSmall, Level::Warning, message, &figures);
        }
    }

    /// Of the loop's cut only: a lead-in leaves the slab anyhow, and the item of its blade names the run-out there.
    fn check_edge(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, reach) = (FieldPath::BODY, self.cut.ends.reach);
        let slab_at = body.field("slab");
        let is_past = |edge: &Length| reach > *edge + self.depth_tolerance();
        let Some(edge) = job.slab.edge.filter(is_past).filter(|_| self.cut.place() == CutPlace::Loop) else { return };
        let message = Statement::new("materials-overrun-leaves-slab")
            .detail_length("reach", reach, self.system())
            .length("edge_distance", edge, self.system());
        let figures = [("reach", reach), ("edge_distance", edge)];
        self.add_finding(
            FindingCode::OverrunLeavesSlab,
            Level::Warning,
            &slab_at.field("edge_distance"),
            message,
            &figures,
        );
    }

    fn check_rod(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, cut) = (FieldPath::BODY, self.cut);
        let (rod, available) = (job.rod.height_in(cut.width), cut.depth() - cut.levels.stack - cut.levels.finish);
        if !cut.rod_form.is_laid() || rod <= available + self.depth_tolerance() {
            return;
        }
        let message = self
            .describe(Statement::new("materials-rod-stands-out"), &[("rod_height", rod)])
            .detail_length_at_least("needed_depth", cut.levels.stack + cut.levels.finish + rod, self.system());
        let figures = [("rod_height", rod), ("room", available)];
        self.add_finding(FindingCode::RodStandsOut, Level::Warning, &body.field("backer_rod"), message, &figures);
    }
}

/// A slot and what lies in it.
struct SlotAssessment<'a> {
    /// The cut.
    cut: &'a CutGeometry,
    /// The system of the reader.
    system: UnitSystem,
    /// Whether it is too narrow.
    narrow: Option<NarrowSlot>,
    /// What an agency asks for, where it is narrower than that.
    agency: Option<Statement>,
    /// What narrower slot would do.
    generous: Option<Statement>,
}

impl<'a> SlotAssessment<'a> {
    fn of(cut: &'a CutGeometry, system: UnitSystem, job: &ResolvedMaterialEstimate) -> Self {
        let (width, widest) = (cut.width, cut.widest);
        let (clearance, tolerance) = (width - widest, LIMIT_TOLERANCE * width);
        let advised = best_width(widest, system).max(job.agency_width());
        let agency = job.agency.as_ref().filter(|agency| agency.slot_width - tolerance > width).map(|agency| {
            Statement::new("materials-fit-agency-minimum")
                .text("agency", agency.name.clone())
                .detail_length("agency_slot_width", agency.slot_width, system)
                .detail_length("advised_width", advised, system)
        });
        let is_generous = clearance > generous_clearance() + tolerance && advised < width - tolerance;
        let generous = is_generous.then(|| {
            let share = (width / advised).get::<ratio>() - 1.0;
            Statement::new("materials-fit-generous")
                .code("fraction", fraction_code(share))
                .percent("share", 100.0 * share, Decimals::AtMost(0))
                .detail_length("advised_width", advised, system)
        });
        Self { cut, system, narrow: NarrowSlot::find(width, widest, cut.stiffest, system), agency, generous }
    }

    /// The row of the report: what does not go in comes first, then an agency.
    fn to_report(&self, label: &str) -> SlotFit {
        let narrow = self.narrow.as_ref();
        let does_not_go_in = narrow.filter(|narrow| narrow.level == Level::Stop).map(|narrow| &narrow.advice);
        let too_narrow = does_not_go_in.or(self.agency.as_ref()).or(narrow.map(|narrow| &narrow.advice));
        let right = Statement::new("materials-fit-right");
        let (verdict, advice) = match (too_narrow, &self.generous) {
            (Some(advice), _) => ("too_narrow", advice),
            (None, Some(advice)) => ("generous", advice),
            (None, None) => ("right", &right),
        };
        SlotFit {
            label: label.to_owned(),
            place: self.cut.place().code(),
            verdict,
            width: self.cut.width.into(),
            widest: self.cut.widest.into(),
            clearance: (self.cut.width - self.cut.widest).into(),
            advice: advice.clone().into(),
        }
    }

    /// Adds findings where the slot is too narrow for what lies in it or for an agency, or wider than needed.
    fn judge(&self, loop_estimate: &LoopEstimate<'_>, slot_at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        let (body, cut) = (FieldPath::BODY, self.cut);
        let at = match cut.place() {
            CutPlace::LeadIn => body.field("lead_in_slot"),
            CutPlace::Loop => *slot_at,
        };
        let narrow = self.narrow.as_ref().map(|narrow| (FindingCode::SlotTooNarrow, narrow.level, &narrow.advice));
        let agency = self.agency.as_ref().map(|advice| (FindingCode::SlotTooNarrow, Level::Warning, advice));
        let generous = self.generous.as_ref().map(|advice| (FindingCode::SlotGenerous, Level::Note, advice));
        for (code, level, advice) in narrow.into_iter().chain(agency).chain(generous) {
            let widths = (cut.width, cut.widest);
            let finding = width_finding((code, level), cut.place(), widths, advice.clone(), self.system, &at);
            diagnostics.add_finding(finding.on(Some(loop_estimate.resolved.subject())));
        }
    }
}

/// Shares that have a word of their own.
fn fraction_code(share: f64) -> &'static str {
    match share {
        share if (share - 1.0 / 3.0).abs() < 1e-6 => "one_third",
        share if (share - 0.5).abs() < 1e-6 => "one_half",
        _ => "other",
    }
}
