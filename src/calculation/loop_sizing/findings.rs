//! What a loop means for its role: whether it can be built, and which vehicles it sees.

use uom::si::f64::{Length, Ratio};
use uom::si::inductance::microhenry;
use uom::si::ratio::percent;

use super::design::{self, GradedLoop, LoopGrade};
use super::resolved::ResolvedLoopSizing;
use super::search::SeenAtStep;
use crate::calculation::input::{CutPlace, NarrowSlot, Shape, width_finding};
use crate::calculation::layout::{ClassSighting, JobLayout, LaidLoop};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::calculation::vehicle_response::UnseenStrips;
use crate::practice::detectors::{FINEST_CLASS_PERCENT, MIN_TIMES_THRESHOLD};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::round;

/// What helps where a vehicle changes a loop by too little.
fn finer_or_shorter() -> Statement {
    Statement::new("sizing-finer-or-shorter")
}

/// States whether the unit tunes to the loop, and whether its turns fit the slot.
pub fn judge_fit(role: Role, design: &GradedLoop, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    if design.grade == LoopGrade::Untunable {
        let message = Statement::new("sizing-no-working-turns");
        diagnostics.add_finding(
            Finding::new(FindingCode::NoWorkingTurns, Level::Stop, &body.field("detector"), message).on(Some(role)),
        );
    }
    if design.grade == LoopGrade::NearLeast {
        let (low, least) = (design.electrical.as_built_low, job.detector.limits.inductance_min_uh);
        let message = Statement::new("sizing-near-least-inductance")
            .quantity("as_built_low", low.get::<microhenry>(), 0, "uH")
            .quantity("inductance_min", least, 0, "uH");
        diagnostics.add_finding(
            Finding::new(FindingCode::NearLeastInductance, Level::Note, &body.field("detector"), message)
                .on(Some(role))
                .figure("as_built_low", low.get::<microhenry>(), "uH")
                .figure("inductance_min", least, "uH"),
        );
    }
    let Some((slot, levels)) = job.slot.as_ref().zip(design::slot_levels(&design.coil, job)) else { return };
    let (slot_at, widest) = (body.field("slot"), job.wire.widest(job.construction));
    if let Some(narrow) = NarrowSlot::find(slot.width, widest, widest, job.system()) {
        let (kind, widths) = ((FindingCode::SlotTooNarrow, narrow.level), (slot.width, widest));
        let finding = width_finding(kind, CutPlace::Loop, widths, narrow.advice, job.system(), &slot_at);
        diagnostics.add_finding(finding.on(Some(role)));
    }
    if let Some(finding) = levels.finding(&slot_at) {
        diagnostics.add_finding(finding.on(Some(role)));
    }
}

/// States which vehicles a loop misses, and what would cure it.
pub fn judge_vehicles(laid: &LaidLoop, seen: &SeenAtStep, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let role = laid.role;
    for (sighting, unseen) in laid.sightings.iter().zip(&seen.unseen) {
        judge_change(role, sighting, laid.step, diagnostics);
        let is_quadrupole = laid.coil.shape == Shape::Quadrupole;
        judge_strip((role, is_quadrupole), sighting.class, unseen.as_ref(), job, diagnostics);
    }
    if laid.count() > 1 {
        let message = Statement::new("sizing-side-by-side").count("loops", laid.count() as u64);
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
    if role == Role::BetweenLeaves && laid.place.from < job.opening.barrier.sweep_share() * job.opening.width {
        let message = Statement::new("sizing-leaves-pass-over");
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
        let message = Statement::new("sizing-vehicle-too-wide")
            .member("vehicle", *class)
            .length("vehicle_width", class.width(), system)
            .length("opening_width", job.opening.width, system);
        diagnostics.add_finding(
            Finding::new(FindingCode::VehicleTooWide, Level::Warning, &FieldPath::BODY.field("vehicles"), message)
                .length("vehicle_width", class.width(), system)
                .send(&FieldPath::BODY.field("opening").field("width"))
                .send(&FieldPath::BODY.field("vehicles")),
        );
    }
}

fn judge_change(role: Role, sighting: &ClassSighting, threshold: Ratio, diagnostics: &mut Diagnostics) {
    let (change, least) = (sighting.change.get::<percent>(), sighting.least.get::<percent>());
    let with_vehicle = |statement: Statement| {
        let threshold = threshold.get::<percent>();
        statement.member("vehicle", sighting.class).percent("threshold", threshold, Decimals::AtMost(3))
    };
    let (code, level, message) = if sighting.change < threshold {
        let message = with_vehicle(Statement::new("sizing-vehicle-not-seen")).percent("change", change, 3);
        (FindingCode::VehicleNotSeen, Level::Stop, message.followed_by(finer_or_shorter()))
    } else if sighting.least < threshold {
        let message = with_vehicle(Statement::new("sizing-vehicle-not-seen-at-edge"));
        let message = message.percent("least_change_across", least, 3);
        (FindingCode::VehicleNotSeen, Level::Stop, message.followed_by(finer_or_shorter()))
    } else if sighting.drops_out(threshold) {
        let level = if role.holds_the_gate() { Level::Stop } else { Level::Warning };
        (FindingCode::DropsOut, level, Statement::new("sizing-drops-out").member("vehicle", sighting.class))
    } else if sighting.least < MIN_TIMES_THRESHOLD * threshold {
        let message = with_vehicle(Statement::new("sizing-thin-margin"))
            .percent("least_change_across", least, 3)
            .code("place", if sighting.least < sighting.change { "hardest" } else { "anywhere" });
        (FindingCode::ThinMargin, Level::Warning, message.followed_by(finer_or_shorter()))
    } else {
        return;
    };
    let body = FieldPath::BODY;
    let finding = Finding::new(code, level, &body.field("vehicles"), message)
        .on(Some(role))
        .figure("change", change, "percent")
        .figure("least_change_across", least, "percent")
        .figure("threshold", threshold.get::<percent>(), "percent")
        .send(&body.field("detector").field("threshold_steps_percent"));
    let is_not_seen_at_edge = code == FindingCode::VehicleNotSeen && sighting.change >= threshold;
    diagnostics.add_finding(if is_not_seen_at_edge {
        finding.send(&body.field("opening").field("edge_setback"))
    } else {
        finding
    });
}

fn judge_strip(
    (role, is_quadrupole): (Role, bool),
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
    let message = Statement::new("sizing-blind-strip")
        .length("blind_strip", unseen.width(), system)
        .code("place", if unseen.contains_centre() { "centre" } else { "aside" })
        .member("vehicle", class)
        .code(
            "cure",
            match (covered, is_quadrupole) {
                (true, _) => "other_device",
                (false, true) => "line",
                (false, false) => "line_or_quadrupole",
            },
        );
    let finding = Finding::new(FindingCode::BlindStrip, level, &FieldPath::BODY.field("vehicles"), message)
        .on(Some(role))
        .length("blind_strip", unseen.width(), system)
        .figure("share_of_lane", (unseen.width() / job.opening.width).get::<percent>(), "percent");
    let ways_out = match (covered, is_quadrupole) {
        (true, _) => &[][..],
        (false, true) => &["seen_by_other_devices"],
        (false, false) => &["fixed_loops", "seen_by_other_devices"],
    };
    diagnostics
        .add_finding(ways_out.iter().fold(finding, |finding, field| finding.send(&FieldPath::BODY.field(field))));
}

/// States the sensitivity to set, and whether units have it: once where all channels are set alike, else for each loop.
pub fn judge_sensitivity(layout: &JobLayout, diagnostics: &mut Diagnostics) {
    let first = layout.loops.first().map(|laid| laid.step);
    let are_alike = layout.loops.iter().all(|laid| Some(laid.step) == first);
    let at = FieldPath::BODY.field("detector").field("threshold_percent").pointer();
    for laid in layout.loops.iter().take(if are_alike { 1 } else { layout.loops.len() }) {
        let threshold = laid.step.get::<percent>();
        let subject = (!are_alike).then_some(laid.role);
        let told = if are_alike { layout.loops.as_slice() } else { std::slice::from_ref(laid) };
        let sightings = told.iter().flat_map(|laid| &laid.sightings).rev();
        let hardest = sightings.min_by(|a, b| a.least.value.total_cmp(&b.least.value));
        let message = Statement::new("sizing-sensitivity")
            .code("channels", if are_alike { "every" } else { "this" })
            .percent("threshold", threshold, Decimals::AtMost(3))
            .member("hardest", hardest.map_or(VehicleClass::PassengerCar, |sighting| sighting.class));
        diagnostics.add_finding(
            Finding::at(FindingCode::Sensitivity, Level::Note, at.clone(), message).on(subject).figure(
                "threshold",
                threshold,
                "percent",
            ),
        );
        if round(threshold, 3) < FINEST_CLASS_PERCENT {
            let message = Statement::new("input-fine-threshold")
                .percent("threshold", threshold, Decimals::AtMost(3))
                .percent("finest_class", FINEST_CLASS_PERCENT, Decimals::All);
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
