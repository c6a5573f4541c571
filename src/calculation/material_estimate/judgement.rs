//! What is to be said about each cut: its depth, what it comes near to, its blade, its rod, its width.

use uom::si::f64::Length;
use uom::si::length::inch;

use super::blade;
use super::cut::{Cut, Place};
use super::estimate::Part;
use super::fit::{Fit, Verdict};
use super::job::Job;
use super::trench::Trench;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::materials::{RodForm, deepest_cut, steel_clearance};
use crate::quantity::UnitSystem;
use crate::quantity::format::{format_detail_length, format_length};

/// Judges both cuts of one loop; `slot_at` is the place of its slot in the request.
pub fn judge_trench(
    part: &Part<'_>,
    trench: &Trench,
    slot_at: &FieldPath<'_>,
    job: &Job,
    diagnostics: &mut Diagnostics,
) {
    let body = FieldPath::BODY;
    let lead_in_at = body.field("lead_in_slot");
    for cut in trench.cuts() {
        let at = match cut.place {
            Place::Loop => slot_at,
            Place::LeadIn => &lead_in_at,
        };
        let mut judge = Judge { part, cut, at, diagnostics };
        judge.cover();
        // What is wrong with the depth of the loop's cut is not said again of a lead-in that follows it.
        let follows = cut.place == Place::LeadIn && (cut.depth - trench.of_loop.depth).abs() <= judge.hair();
        if !follows {
            judge.slab(job);
            judge.steel(job);
            judge.blade(job);
        }
        judge.edge(job);
        judge.rod(job);
    }
}

struct Judge<'a> {
    part: &'a Part<'a>,
    cut: &'a Cut,
    at: &'a FieldPath<'a>,
    diagnostics: &'a mut Diagnostics,
}

impl Judge<'_> {
    fn system(&self) -> UnitSystem {
        self.part.one.coil.system
    }

    fn say(&self, length: Length) -> String {
        format_detail_length(length, self.system())
    }

    /// So small a difference is none.
    fn hair(&self) -> Length {
        1e-9 * self.cut.depth
    }

    /// What the cut is called at the start of a sentence.
    fn name(&self) -> String {
        let depth = self.say(self.cut.depth);
        match self.cut.place {
            Place::Loop => format!("A cut of {depth}"),
            Place::LeadIn => format!("The lead-in's cut of {depth}"),
        }
    }

    fn find(
        &mut self,
        code: FindingCode,
        level: Level,
        at: &FieldPath<'_>,
        message: String,
        figures: &[(&'static str, Length)],
    ) {
        let system = self.system();
        let finding = Finding::new(code, level, at, message).on(Some(&self.part.one.label));
        self.diagnostics
            .add_finding(figures.iter().fold(finding, |finding, (name, value)| small(finding, name, *value, system)));
    }

    fn cover(&mut self) {
        let cut = self.cut;
        if cut.needed_depth() <= cut.depth + self.hair() {
            return;
        }
        let what = match cut.place {
            Place::Loop => "Wires",
            Place::LeadIn => "The pair,",
        };
        let finish = if cut.finish > Length::default() {
            format!(" and a finish {} below the surface", self.say(cut.finish))
        } else {
            String::new()
        };
        let bare = if cut.cover() <= Length::default() { " As asked for, the sealant leaves it bare." } else { "" };
        let message = format!(
            "{what} {} high under {} of cover{finish} need a slot {} deep.{bare} Cut that deep if the slab allows it, or take \
             thinner wire or less cover.",
            self.say(cut.stack),
            self.say(cut.asked_cover),
            self.say(cut.needed_depth())
        );
        let figures = [("needed_depth", cut.needed_depth()), ("slot_depth", cut.depth), ("cover_left", cut.cover())];
        let at = self.at;
        self.find(FindingCode::SlotTooShallow, Level::Stop, &at.field("depth"), message, &figures);
    }

    /// Where a finding about the depth points: to what it comes near to, or to the slot of the lead-in.
    fn with_place(
        &mut self,
        of_loop: &FieldPath<'_>,
        code: FindingCode,
        level: Level,
        message: String,
        figures: &[(&'static str, Length)],
    ) {
        let at = self.at;
        match self.cut.place {
            Place::Loop => self.find(code, level, of_loop, message, figures),
            Place::LeadIn => self.find(code, level, &at.field("depth"), message, figures),
        }
    }

    fn slab(&mut self, job: &Job) {
        let Some(thickness) = job.slab.thickness else { return };
        let (body, depth, third) = (FieldPath::BODY, self.cut.depth, thickness / 3.0);
        let slab_at = body.field("slab");
        let enough = self.say(third);
        let (level, message) = if depth >= thickness - self.hair() {
            let message = format!(
                "{} goes through the slab. Do not cut; take a thinner wire, fewer turns or less cover, so that {enough} is enough.",
                self.name()
            );
            (Level::Stop, message)
        } else if depth > third + self.hair() {
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
        self.with_place(&slab_at.field("thickness"), FindingCode::CutDeepForSlab, level, message, &figures);
    }

    fn steel(&mut self, job: &Job) {
        let (body, depth) = (FieldPath::BODY, self.cut.depth);
        let slab_at = body.field("slab");
        let Some(steel) = job.slab.steel.filter(|steel| depth > *steel - steel_clearance() + self.hair()) else {
            return;
        };
        let enough = (steel - steel_clearance()).max(Length::default());
        let message = format!(
            "{} comes within {} of steel that lies {} deep. Do not cut it so deep: never cut steel. Take fewer turns, thinner \
             wire or less cover, so that {} is enough.",
            self.name(),
            self.say(steel_clearance()),
            self.say(steel),
            self.say(enough)
        );
        let figures = [("slot_depth", depth), ("steel_depth", steel), ("enough", enough)];
        let at = slab_at.field("reinforcement_depth");
        self.with_place(&at, FindingCode::SteelNearCut, Level::Stop, message, &figures);
    }

    fn blade(&mut self, job: &Job) {
        let (body, cut) = (FieldPath::BODY, self.cut);
        let saw_at = body.field("saw");
        let at = saw_at.field("blade_diameter");
        if cut.depth > deepest_cut() + self.hair() {
            let message = format!(
                "No common blade cuts {}. Take fewer turns, thinner wire or less cover, so that {} is enough.",
                self.say(cut.depth),
                self.say(deepest_cut())
            );
            let figures = [("slot_depth", cut.depth), ("enough", deepest_cut())];
            self.with_place(&at, FindingCode::BladeTooSmall, Level::Stop, message, &figures);
        } else if !blade::reaches(job.saw.blade, cut.depth) {
            let message = format!(
                "A blade of {} does not reach {}. Take one of {}: the estimate counts with that, and its run-out of {}.",
                self.say(job.saw.blade),
                self.say(cut.depth),
                self.say(cut.blade),
                self.say(cut.ends.run_out)
            );
            let figures = [("blade_diameter", job.saw.blade), ("slot_depth", cut.depth), ("enough", cut.blade)];
            self.with_place(&at, FindingCode::BladeTooSmall, Level::Warning, message, &figures);
        }
    }

    /// A lead-in leaves the slab anyhow; what its blade needs there stands with the blade.
    fn edge(&mut self, job: &Job) {
        let (body, reach) = (FieldPath::BODY, self.cut.ends.reach);
        let slab_at = body.field("slab");
        let is_past = |edge: &Length| reach > *edge + self.hair();
        let Some(edge) = job.slab.edge.filter(is_past).filter(|_| self.cut.place == Place::Loop) else { return };
        let message = format!(
            "For full depth the blade runs {} past the loop, and the edge is {} away. Drill the corners (cored), take a smaller \
             blade, or finish the ends with a chisel.",
            self.say(reach),
            format_length(edge, self.system())
        );
        let figures = [("reach", reach), ("edge_distance", edge)];
        self.find(FindingCode::OverrunLeavesSlab, Level::Warning, &slab_at.field("edge_distance"), message, &figures);
    }

    fn rod(&mut self, job: &Job) {
        let (body, cut) = (FieldPath::BODY, self.cut);
        let (rod, room) = (job.rod.height_in(cut.width), cut.depth - cut.stack - cut.finish);
        if cut.rod_form == RodForm::None || rod <= room + self.hair() {
            return;
        }
        let what = match cut.place {
            Place::Loop => "wire",
            Place::LeadIn => "pair of the lead-in",
        };
        let message = format!(
            "Rod {} high does not fit between the {what} and the finished sealant. Take thinner rod, or cut {} deep.",
            self.say(rod),
            self.say(cut.stack + cut.finish + rod)
        );
        let figures = [("rod_height", rod), ("room", room)];
        self.find(FindingCode::RodStandsOut, Level::Warning, &body.field("backer_rod"), message, &figures);
    }
}

/// Says where a slot is too narrow for sealant, or wider than needed.
pub fn judge_fit(fit: &Fit, part: &Part<'_>, slot_at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let (at, what) = match fit.place {
        Place::LeadIn => (body.field("lead_in_slot"), "The lead-in's slot"),
        Place::Loop => (*slot_at, "The slot"),
    };
    let (code, level) = match fit.verdict {
        Verdict::Right => return,
        Verdict::DoesNotGoIn => (FindingCode::SlotTooNarrow, Level::Stop),
        Verdict::TooNarrow => (FindingCode::SlotTooNarrow, Level::Warning),
        Verdict::Generous => (FindingCode::SlotGenerous, Level::Note),
    };
    let system = part.one.coil.system;
    let message = format!("{what} of {}: {}", format_detail_length(fit.width, system), fit.advice);
    let finding = Finding::new(code, level, &at.field("width"), message).on(Some(&part.one.label));
    let finding = small(finding, "slot_width", fit.width, system);
    diagnostics.add_finding(small(finding, "widest", fit.widest, system));
}

/// Adds a small length in the system of the reader.
pub fn small(finding: Finding, name: &'static str, length: Length, system: UnitSystem) -> Finding {
    match system {
        UnitSystem::UsCustomary => finding.figure(name, length.get::<inch>(), "inch"),
        UnitSystem::Metric => finding.figure(name, length.get::<uom::si::length::millimeter>(), "mm"),
    }
}
