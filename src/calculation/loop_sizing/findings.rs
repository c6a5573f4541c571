//! What a loop means for its role: whether it can be built, and which vehicles it sees.

use uom::si::f64::{Length, Ratio};
use uom::si::length::inch;
use uom::si::ratio::percent;

use super::design::{self, GradedLoop, LoopGrade};
use super::resolved::ResolvedLoopSizing;
use super::search::SeenAtStep;
use crate::calculation::layout::{ClassSighting, JobLayout, LaidLoop};
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::calculation::vehicle_response::UnseenStrips;
use crate::practice::detectors::{FINEST_CLASS_PERCENT, MIN_TIMES_THRESHOLD};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires::least_clearance;
use crate::quantity::format::{format_detail_length, format_length};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

const CURE: &str =
    "Set a finer sensitivity if the unit has one, shorten the lead-in, or share the opening among more lanes.";

/// States whether the unit tunes to the loop, and whether its turns fit the slot.
pub fn judge_fit(role: Role, design: &GradedLoop, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    if design.grade == LoopGrade::Untunable {
        let message = "No number of turns brings this loop, with this lead-in, wholly inside what the unit tunes to. Shorten \
                       the lead-in, take heavier wire, or choose a unit with a wider range.";
        diagnostics.add_finding(
            Finding::new(FindingCode::NoWorkingTurns, Level::Stop, &body.field("detector"), message).on(Some(role)),
        );
    }
    if let Some(slot) = job.slot.as_ref().filter(|slot| slot.width < job.wire.over_insulation + least_clearance()) {
        let message = format!(
            "A slot of {} leaves no room for sealant to flow round wire of {}. Cut it wider: wire and {} at the least.",
            format_detail_length(slot.width, job.system()),
            format_detail_length(job.wire.over_insulation, job.system()),
            format_detail_length(least_clearance(), job.system())
        );
        let slot_at = body.field("slot");
        diagnostics.add_finding(
            Finding::new(FindingCode::SlotTooNarrow, Level::Warning, &slot_at.field("width"), message)
                .on(Some(role))
                .figure("slot_width", slot.width.get::<inch>(), "inch"),
        );
    }
    let Some(needed) = design::needed_depth(&design.coil, job) else { return };
    if design.grade == LoopGrade::TooDeep {
        let message = format!(
            "{} turns under the asked cover need a slot {} deep. Cut that deep if the slab allows it, or take thinner \
             wire.",
            design.coil.turns,
            format_detail_length(needed, job.system())
        );
        let slot_at = body.field("slot");
        diagnostics.add_finding(
            Finding::new(FindingCode::SlotTooShallow, Level::Stop, &slot_at.field("depth"), message)
                .on(Some(role))
                .figure("needed_depth", needed.get::<inch>(), "inch")
                .figure("slot_depth", design::deepest_slot(job).get::<inch>(), "inch"),
        );
    }
}

/// States which vehicles a loop misses, and what would cure it.
pub fn judge_vehicles(laid: &LaidLoop, seen: &SeenAtStep, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let role = laid.role;
    for (sighting, unseen) in laid.sightings.iter().zip(&seen.unseen) {
        judge_change(role, sighting, laid.step, diagnostics);
        judge_strip(role, sighting.class, unseen.as_ref(), job, diagnostics);
    }
    if laid.count() > 1 {
        let message = format!(
            "One loop across the whole opening is too insensitive: {} loops share it, each on its own channel of a unit that \
             scans them in turn, their outputs paralleled, neighbours wound in opposite senses.",
            laid.count()
        );
        diagnostics.add_finding(
            Finding::new(
                FindingCode::SideBySide,
                Level::Note,
                &FieldPath::BODY.field("opening").field("width"),
                message,
            )
            .on(Some(role)),
        );
    }
    if role == Role::BetweenLeaves {
        let message = "The leaves pass over this loop while they move, and it sees them. Wire it to the operator's input that is \
                       watched only while the leaves stand, fully open or fully closed; while they move, another device must see a \
                       vehicle that drives in.";
        diagnostics.add_finding(
            Finding::new(FindingCode::LeafSweeps, Level::Warning, &FieldPath::BODY.field("roles"), message)
                .on(Some(role)),
        );
    }
}

/// States which vehicles do not pass the opening at all.
pub fn judge_widths(job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let system = job.system();
    for class in job.vehicles.iter().filter(|class| class.width() > job.opening.width) {
        let message = format!(
            "A {} is {} wide and does not pass an opening of {}. Leave it out of vehicles, or check the width.",
            class.label().to_lowercase(),
            format_length(class.width(), system),
            format_length(job.opening.width, system)
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::VehicleTooWide, Level::Warning, &FieldPath::BODY.field("vehicles"), message)
                .length("vehicle_width", class.width(), system),
        );
    }
}

fn judge_change(role: Role, sighting: &ClassSighting, threshold: Ratio, diagnostics: &mut Diagnostics) {
    let name = sighting.class.label().to_lowercase();
    let words = |change: Ratio| format!("{:.3} %", change.get::<percent>());
    let set = format!("{} %", round(threshold.get::<percent>(), 3));
    let (code, level, message) = if sighting.change < threshold {
        (
            FindingCode::VehicleNotSeen,
            Level::Stop,
            format!(
                "A {name} changes this loop by {}, and the unit switches at {set}: it is not seen. {CURE}",
                words(sighting.change)
            ),
        )
    } else if sighting.least < threshold {
        (
            FindingCode::VehicleNotSeen,
            Level::Stop,
            format!(
                "Hard against the edge or over a gap a {name} changes the loops by {} only, and the unit switches at {set}: it is not \
                 seen there. Reduce edge_setback, or narrow the lane with posts. {CURE}",
                words(sighting.least)
            ),
        )
    } else if sighting.drops_out(threshold) {
        let level = if role.holds_the_gate() { Level::Stop } else { Level::Warning };
        let cure = "Lengthen the loop along travel, or add a second one behind it.";
        (FindingCode::DropsOut, level, format!("The unit lets go under a {name}, between its parts. {cure}"))
    } else if sighting.least < MIN_TIMES_THRESHOLD * threshold {
        let place = if sighting.least < sighting.change { " at its hardest place" } else { "" };
        (
            FindingCode::ThinMargin,
            Level::Warning,
            format!(
                "A {name} changes this loop by {}{place}, less than twice the {set} that the unit switches at; pavement, age and \
                 weather take their part. {CURE}",
                words(sighting.least)
            ),
        )
    } else {
        return;
    };
    diagnostics.add_finding(
        Finding::new(code, level, &FieldPath::BODY.field("vehicles"), message)
            .on(Some(role))
            .figure("change", sighting.change.get::<percent>(), "percent")
            .figure("least_change_across", sighting.least.get::<percent>(), "percent")
            .figure("threshold", threshold.get::<percent>(), "percent"),
    );
}

fn judge_strip(
    role: Role,
    class: VehicleClass,
    unseen: Option<&UnseenStrips>,
    job: &ResolvedLoopSizing,
    diagnostics: &mut Diagnostics,
) {
    let Some(unseen) = unseen.filter(|unseen| unseen.width() > Length::default()) else { return };
    let covered = job.seen_elsewhere.contains(&class);
    // Half the lane is as bad as its centre: nobody rides so that the loop sees him.
    let is_wide = unseen.contains_centre() || unseen.width() > 0.5 * job.opening.width;
    let level = match (is_wide, role.holds_the_gate() && !covered) {
        (true, true) => Level::Stop,
        (true, false) | (false, true) => Level::Warning,
        (false, false) => Level::Note,
    };
    let system = job.system();
    let place = if unseen.contains_centre() { "its centre included" } else { "away from its centre" };
    let cure = if covered {
        "The other device must see it there."
    } else {
        "Mark the line to ride on, take a quadrupole (see alternatives), or let another device see two-wheelers."
    };
    let message = format!(
        "Over {} of the lane, {place}, a {} is not seen: only wires along travel couple with it. {cure}",
        format_length(unseen.width(), system),
        class.label().to_lowercase()
    );
    diagnostics.add_finding(
        Finding::new(FindingCode::BlindStrip, level, &FieldPath::BODY.field("vehicles"), message)
            .on(Some(role))
            .length("blind_strip", unseen.width(), system)
            .figure("share_of_lane", (unseen.width() / job.opening.width).get::<percent>(), "percent"),
    );
}

/// States the sensitivity to set, and whether units have it: once where all channels are set alike, else for each loop.
pub fn judge_sensitivity(layout: &JobLayout, diagnostics: &mut Diagnostics) {
    let first = layout.loops.first().map(|laid| laid.step);
    let are_alike = layout.loops.iter().all(|laid| Some(laid.step) == first);
    let at = FieldPath::BODY.field("detector").field("threshold_percent").pointer();
    for laid in layout.loops.iter().take(if are_alike { 1 } else { layout.loops.len() }) {
        let threshold = round(laid.step.get::<percent>(), 3);
        let subject = (!are_alike).then_some(laid.role);
        let hardest = laid.sightings.iter().rev().min_by(|a, b| a.least.value.total_cmp(&b.least.value));
        let hardest = hardest.map_or(VehicleClass::PassengerCar, |sighting| sighting.class).label().to_lowercase();
        let which = if are_alike { "every channel" } else { "this channel" };
        let message =
            format!("Set {which} to the step that switches at {threshold} %: the {hardest} is the hardest to see.");
        diagnostics.add_finding(
            Finding::at(FindingCode::Sensitivity, Level::Note, at.clone(), message).on(subject).figure(
                "threshold",
                threshold,
                "percent",
            ),
        );
        if threshold < FINEST_CLASS_PERCENT {
            let message = format!(
                "{threshold} % is finer than the finest class of the standard ({FINEST_CLASS_PERCENT} %). The unit's own sheet must \
                 show that it switches there."
            );
            diagnostics.add_finding(
                Finding::at(FindingCode::FineThreshold, Level::Warning, at.clone(), message).on(subject).figure(
                    "threshold",
                    threshold,
                    "percent",
                ),
            );
        }
    }
}
