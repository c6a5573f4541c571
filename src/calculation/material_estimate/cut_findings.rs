//! Findings about each cut: its depth, what it comes near to, its blade, its rod, and whether sealant can flow round what lies in it.

use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};
use uom::si::ratio::ratio;

use super::cut::{CutGeometry, CutPlace, blade_reaches};
use super::estimate::{LoopEstimate, MaterialEstimate};
use super::loop_cuts::LoopCuts;
use super::report::SlotFit;
use super::resolved::ResolvedMaterialEstimate;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::{best_width, deepest_cut, generous_clearance, steel_clearance};
use crate::practice::wires::least_clearance;
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_detail_length, format_length};
use crate::quantity::output::round;

/// Relative to a depth or a width, the difference that counts as none: a limit that is met exactly does not depend on binary fractions.
const LIMIT_TOLERANCE: f64 = 1e-9;

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
        let at = match cut.place {
            CutPlace::Loop => slot_at,
            CutPlace::LeadIn => &lead_in_at,
        };
        let mut check = CutCheck { loop_estimate, cut, at, diagnostics };
        check.check_cover();
        // A lead-in cut that is as deep as the loop's repeats no finding about that depth.
        let repeats =
            cut.place == CutPlace::LeadIn && (cut.depth - cuts.loop_cut.depth).abs() <= check.depth_tolerance();
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
    fn system(&self) -> UnitSystem {
        self.loop_estimate.resolved.coil.system
    }

    fn format(&self, length: Length) -> String {
        format_detail_length(length, self.system())
    }

    fn depth_tolerance(&self) -> Length {
        LIMIT_TOLERANCE * self.cut.depth
    }

    /// What the cut is called at the start of a sentence.
    fn name(&self) -> String {
        let depth = self.format(self.cut.depth);
        match self.cut.place {
            CutPlace::Loop => format!("A cut of {depth}"),
            CutPlace::LeadIn => format!("The lead-in's cut of {depth}"),
        }
    }

    fn add_finding(
        &mut self,
        code: FindingCode,
        level: Level,
        at: &FieldPath<'_>,
        message: String,
        figures: &[(&'static str, Length)],
    ) {
        let system = self.system();
        let finding = Finding::new(code, level, at, message).on(Some(self.loop_estimate.resolved.subject()));
        self.diagnostics.add_finding(
            figures.iter().fold(finding, |finding, (name, value)| detail_figure(finding, name, *value, system)),
        );
    }

    fn check_cover(&mut self) {
        let cut = self.cut;
        if cut.needed_depth() <= cut.depth + self.depth_tolerance() {
            return;
        }
        let what = match cut.place {
            CutPlace::Loop => "Wires",
            CutPlace::LeadIn => "The pair,",
        };
        let finish = if cut.finish > Length::default() {
            format!(" and a finish {} below the surface", self.format(cut.finish))
        } else {
            String::new()
        };
        let bare = if cut.cover() <= Length::default() { " As asked for, the sealant leaves it bare." } else { "" };
        let message = format!(
            "{what} {} high under {} of cover{finish} need a slot {} deep.{bare} Cut that deep if the slab allows it, or take \
             thinner wire or less cover.",
            self.format(cut.stack),
            self.format(cut.asked_cover),
            self.format(cut.needed_depth())
        );
        let figures = [("needed_depth", cut.needed_depth()), ("slot_depth", cut.depth), ("cover_left", cut.cover())];
        let at = self.at;
        self.add_finding(FindingCode::SlotTooShallow, Level::Stop, &at.field("depth"), message, &figures);
    }

    /// Adds a finding about the depth. That of a loop points to what limits the depth (`limit_at`), that of a lead-in to its slot.
    fn add_depth_finding(
        &mut self,
        limit_at: &FieldPath<'_>,
        code: FindingCode,
        level: Level,
        message: String,
        figures: &[(&'static str, Length)],
    ) {
        let at = self.at;
        match self.cut.place {
            CutPlace::Loop => self.add_finding(code, level, limit_at, message, figures),
            CutPlace::LeadIn => self.add_finding(code, level, &at.field("depth"), message, figures),
        }
    }

    fn check_slab(&mut self, job: &ResolvedMaterialEstimate) {
        let Some(thickness) = job.slab.thickness else { return };
        let (body, depth, third) = (FieldPath::BODY, self.cut.depth, thickness / 3.0);
        let slab_at = body.field("slab");
        let enough = self.format(third);
        let (level, message) = if depth >= thickness - self.depth_tolerance() {
            let message = format!(
                "{} goes through the slab. Do not cut; take a thinner wire, fewer turns or less cover, so that {enough} is enough.",
                self.name()
            );
            (Level::Stop, message)
        } else if depth > third + self.depth_tolerance() {
            let message = format!(
                "{} is deeper than a third of the slab and weakens it. Take fewer turns, thinner wire or less cover, so that \
                 {enough} is enough, or ask whoever answers for the slab.",
                self.name()
            );
            (Level::Warning, message)
        } else {
            return;
        };
        let figures = [("slot_depth", depth), ("slab_thickness", thickness), ("enough", third)];
        self.add_depth_finding(&slab_at.field("thickness"), FindingCode::CutDeepForSlab, level, message, &figures);
    }

    fn check_steel(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, depth) = (FieldPath::BODY, self.cut.depth);
        let slab_at = body.field("slab");
        let Some(steel) = job.slab.steel.filter(|steel| depth > *steel - steel_clearance() + self.depth_tolerance())
        else {
            return;
        };
        let enough = (steel - steel_clearance()).max(Length::default());
        let message = format!(
            "{} comes within {} of steel that lies {} deep. Do not cut it so deep: never cut steel. Take fewer turns, thinner \
             wire or less cover, so that {} is enough.",
            self.name(),
            self.format(steel_clearance()),
            self.format(steel),
            self.format(enough)
        );
        let figures = [("slot_depth", depth), ("steel_depth", steel), ("enough", enough)];
        let at = slab_at.field("reinforcement_depth");
        self.add_depth_finding(&at, FindingCode::SteelNearCut, Level::Stop, message, &figures);
    }

    fn check_blade(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, cut) = (FieldPath::BODY, self.cut);
        let saw_at = body.field("saw");
        let at = saw_at.field("blade_diameter");
        if cut.depth > deepest_cut() + self.depth_tolerance() {
            let message = format!(
                "No common blade cuts {}. Take fewer turns, thinner wire or less cover, so that {} is enough.",
                self.format(cut.depth),
                self.format(deepest_cut())
            );
            let figures = [("slot_depth", cut.depth), ("enough", deepest_cut())];
            self.add_depth_finding(&at, FindingCode::BladeTooSmall, Level::Stop, message, &figures);
        } else if !blade_reaches(job.saw.blade, cut.depth) {
            let message = format!(
                "A blade of {} does not reach {}. Take one of {}: the estimate counts with that, and its run-out of {}.",
                self.format(job.saw.blade),
                self.format(cut.depth),
                self.format(cut.blade),
                self.format(cut.ends.run_out)
            );
            let figures = [("blade_diameter", job.saw.blade), ("slot_depth", cut.depth), ("enough", cut.blade)];
            self.add_depth_finding(&at, FindingCode::BladeTooSmall, Level::Warning, message, &figures);
        }
    }

    /// Of the loop's cut only: a lead-in leaves the slab anyhow, and the item of its blade names the run-out there.
    fn check_edge(&mut self, job: &ResolvedMaterialEstimate) {
        let (body, reach) = (FieldPath::BODY, self.cut.ends.reach);
        let slab_at = body.field("slab");
        let is_past = |edge: &Length| reach > *edge + self.depth_tolerance();
        let Some(edge) = job.slab.edge.filter(is_past).filter(|_| self.cut.place == CutPlace::Loop) else { return };
        let message = format!(
            "For full depth the blade runs {} past the loop, and the edge is {} away. Drill the corners (cored), take a smaller \
             blade, or finish the ends with a chisel.",
            self.format(reach),
            format_length(edge, self.system())
        );
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
        let (rod, available) = (job.rod.height_in(cut.width), cut.depth - cut.stack - cut.finish);
        if !cut.rod_form.is_laid() || rod <= available + self.depth_tolerance() {
            return;
        }
        let what = match cut.place {
            CutPlace::Loop => "wire",
            CutPlace::LeadIn => "pair of the lead-in",
        };
        let message = format!(
            "Rod {} high does not fit between the {what} and the finished sealant. Take thinner rod, or cut {} deep.",
            self.format(rod),
            self.format(cut.stack + cut.finish + rod)
        );
        let figures = [("rod_height", rod), ("room", available)];
        self.add_finding(FindingCode::RodStandsOut, Level::Warning, &body.field("backer_rod"), message, &figures);
    }
}

/// How a slot suits what lies in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum FitVerdict {
    /// It does not go in.
    DoesNotGoIn,
    /// Sealant cannot flow round it.
    TooNarrow,
    /// It can, and no more is cut than needed.
    Right,
    /// It can, and takes more sealant than needed.
    Generous,
}

impl FitVerdict {
    /// The value in reports.
    fn code(self) -> &'static str {
        match self {
            Self::DoesNotGoIn | Self::TooNarrow => "too_narrow",
            Self::Right => "right",
            Self::Generous => "generous",
        }
    }
}

/// A slot and what lies in it.
struct SlotAssessment {
    /// Which slot.
    place: CutPlace,
    /// The verdict.
    verdict: FitVerdict,
    /// Width of the slot.
    width: Length,
    /// The widest that lies in it.
    widest: Length,
    /// What to do about it.
    advice: String,
}

impl SlotAssessment {
    fn of(cut: &CutGeometry, system: UnitSystem, job: &ResolvedMaterialEstimate) -> Self {
        let (verdict, advice) = assess(cut, system, job);
        Self { place: cut.place, verdict, width: cut.width, widest: cut.widest, advice }
    }

    /// The row of the report.
    fn to_report(&self, label: &str) -> SlotFit {
        SlotFit {
            label: label.to_owned(),
            place: self.place.code(),
            verdict: self.verdict.code(),
            width: self.width.into(),
            widest: self.widest.into(),
            clearance: (self.width - self.widest).into(),
            advice: self.advice.clone(),
        }
    }

    /// Adds a finding where the slot is too narrow for sealant, or wider than needed.
    fn judge(&self, loop_estimate: &LoopEstimate<'_>, slot_at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        let (at, what) = match self.place {
            CutPlace::LeadIn => (body.field("lead_in_slot"), "The lead-in's slot"),
            CutPlace::Loop => (*slot_at, "The slot"),
        };
        let (code, level) = match self.verdict {
            FitVerdict::Right => return,
            FitVerdict::DoesNotGoIn => (FindingCode::SlotTooNarrow, Level::Stop),
            FitVerdict::TooNarrow => (FindingCode::SlotTooNarrow, Level::Warning),
            FitVerdict::Generous => (FindingCode::SlotGenerous, Level::Note),
        };
        let system = loop_estimate.resolved.coil.system;
        let message = format!("{what} of {}: {}", format_detail_length(self.width, system), self.advice);
        let finding = Finding::new(code, level, &at.field("width"), message).on(Some(loop_estimate.resolved.subject()));
        let finding = detail_figure(finding, "slot_width", self.width, system);
        diagnostics.add_finding(detail_figure(finding, "widest", self.widest, system));
    }
}

fn assess(cut: &CutGeometry, system: UnitSystem, job: &ResolvedMaterialEstimate) -> (FitVerdict, String) {
    let (width, widest) = (cut.width, cut.widest);
    let clearance = width - widest;
    let tolerance = LIMIT_TOLERANCE * width;
    let advised = best_width(widest, system).max(job.agency_width());
    let wide = format_detail_length(advised, system);
    if cut.stiffest > width + tolerance {
        let advice = format!("{} does not go in. Cut it {wide} wide.", format_detail_length(cut.stiffest, system));
        return (FitVerdict::DoesNotGoIn, advice);
    }
    if let Some(agency) = job.agency.as_ref().filter(|agency| agency.slot_width - tolerance > width) {
        let asked = format_detail_length(agency.slot_width, system);
        return (FitVerdict::TooNarrow, format!("{} asks for {asked} at the least. Cut it {wide} wide.", agency.name));
    }
    if clearance < least_clearance() - tolerance {
        let advice = format!(
            "Sealant cannot flow round {}: air pockets, then false calls, water and frost heave. Cut it {wide} wide.",
            format_detail_length(widest, system),
        );
        return (FitVerdict::TooNarrow, advice);
    }
    if clearance <= generous_clearance() + tolerance || advised >= width - tolerance {
        return (FitVerdict::Right, "Room for sealant all round, and no more.".to_owned());
    }
    let share = (width / advised).get::<ratio>() - 1.0;
    let advice = format!("It works and takes {} more slot, and so sealant, than {wide} would.", share_in_words(share));
    (FitVerdict::Generous, advice)
}

fn share_in_words(share: f64) -> String {
    match share {
        share if (share - 1.0 / 3.0).abs() < 1e-6 => "one third".to_owned(),
        share if (share - 0.5).abs() < 1e-6 => "one half".to_owned(),
        share => format!("{} %", round(100.0 * share, 0)),
    }
}

/// Adds a small length in the system of the reader.
fn detail_figure(finding: Finding, name: &'static str, length: Length, system: UnitSystem) -> Finding {
    match system {
        UnitSystem::UsCustomary => finding.figure(name, length.get::<inch>(), "inch"),
        UnitSystem::Metric => finding.figure(name, length.get::<millimeter>(), "mm"),
    }
}
