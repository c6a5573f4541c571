//! Whether to keep a loop: its condition, the unit, the vehicles, and what would settle the rest.

use uom::si::f64::{Length, Ratio};
use uom::si::inductance::microhenry;
use uom::si::ratio::ratio;

use super::candidates::{TurnCandidates, at_terminals, wound};
use super::report::{ExistingLoopTuning, SettlingTest};
use super::request::{ResolvedExistingLoop, SteelBelow};
use super::tuning::TuningJudgement;
use crate::calculation::budget::WorkBudget;
use crate::calculation::fault_finding::{MeterKind, MeterReading};
use crate::calculation::layout::{ChannelLoop, DetectorChannel, Lane, LoopRow, MeasuredLoop};
use crate::calculation::loop_sizing::VehicleSighting;
use crate::calculation::report::{Decimals, ListJoin, Message, Statement};
use crate::calculation::vehicle_response::LoopField;
use crate::practice::detectors::{THIN_TIMES_THRESHOLD, Wiring};
use crate::practice::existing_loops::{
    ExistingLoopVerdict, FAULTY_BELOW_MEGOHM, LoopCondition, SOUND_FROM_MEGOHM, TuningFit,
};
use crate::practice::fault_tests::FaultTest;
use crate::practice::meter_readings::{InsulationState, LEAK_BELOW_MEGOHM, ReadingPlace};
use crate::practice::roles::Role;

/// What stands against keeping the loop, in words, what it makes of the verdict, and the test that would settle it.
struct Objection {
    verdict: ExistingLoopVerdict,
    reason: Statement,
    test: FaultTest,
}

/// How the loop stands as a whole.
pub struct LoopAssessment {
    /// Whether to keep it.
    pub verdict: ExistingLoopVerdict,
    /// What stands behind that, the gravest first.
    pub reasons: Vec<Statement>,
    /// How it stands by its readings.
    pub condition: LoopCondition,
    /// Whether the unit tunes to it.
    pub tuning: ExistingLoopTuning,
    /// What the vehicles make.
    pub vehicles: Vec<VehicleSighting>,
    /// The test that would settle what is open.
    pub settling_test: Option<SettlingTest>,
}

impl LoopAssessment {
    /// Judges a loop by its readings and its candidates; what is computed is counted.
    pub fn new(resolved: &ResolvedExistingLoop, candidates: &TurnCandidates, budget: &WorkBudget) -> Self {
        let condition = condition(resolved, candidates);
        let tuning = TuningJudgement::new(resolved, candidates, is_open(resolved));
        let vehicles = sight_vehicles(resolved, candidates, budget);
        let mut objections = Vec::new();
        object_to_condition(resolved, candidates, &mut objections);
        object_to_tuning(resolved, candidates, &tuning, &mut objections);
        object_to_vehicles(resolved, &vehicles, &mut objections);
        object_to_steel(resolved, candidates, &mut objections);
        if resolved.holds_the_gate() && resolved.drive_over_passed.is_none() {
            let reason = Statement::new("existing-holds-gate");
            objections.push(Objection {
                verdict: ExistingLoopVerdict::KeepWithCare,
                reason,
                test: FaultTest::DriveOver,
            });
        }
        // The gravest first; of equals the first that was raised.
        objections.sort_by_key(|objection| std::cmp::Reverse(objection.verdict));
        let settling_test = settling_test(resolved, candidates, &objections);
        Self {
            verdict: objections.first().map_or(ExistingLoopVerdict::Keep, |objection| objection.verdict),
            reasons: objections.into_iter().map(|objection| objection.reason).collect(),
            condition,
            tuning: tuning.report,
            vehicles,
            settling_test,
        }
    }
}

fn is_open(resolved: &ResolvedExistingLoop) -> bool {
    resolved.readings.of(MeterKind::Resistance).is_some_and(MeterReading::is_open)
}

/// Whether inductance was over range on a circuit that is closed: the two do not agree.
fn is_inductance_over_range(resolved: &ResolvedExistingLoop) -> bool {
    let is_over = resolved.readings.of(MeterKind::Inductance).is_some_and(|reading| reading == MeterReading::OverRange);
    is_over && !is_open(resolved)
}

/// The insulation, megohm; without bound where it is over range.
fn insulation(resolved: &ResolvedExistingLoop) -> Option<f64> {
    resolved.readings.of(MeterKind::Insulation).map(|reading| match reading {
        MeterReading::Number(megohm) => megohm,
        MeterReading::OverRange => f64::INFINITY,
    })
}

fn condition(resolved: &ResolvedExistingLoop, candidates: &TurnCandidates) -> LoopCondition {
    let is_read = |meter| resolved.readings.of(meter).is_some();
    let insulation = insulation(resolved);
    let best_fits = candidates.ranked.iter().take(2).any(|one| one.fits);
    if is_open(resolved) || insulation.is_some_and(|megohm| megohm < FAULTY_BELOW_MEGOHM) {
        LoopCondition::Faulty
    } else if insulation.is_some_and(|megohm| megohm < SOUND_FROM_MEGOHM)
        || !best_fits
        || is_inductance_over_range(resolved)
    {
        LoopCondition::Doubtful
    } else if insulation.is_none() || !is_read(MeterKind::Resistance) || !is_read(MeterKind::Inductance) {
        LoopCondition::NotMeasured
    } else {
        LoopCondition::Sound
    }
}

/// What vehicles make over the loop, taken as its likeliest candidate. The change at the loop is the candidate's; what the unit sees of it
/// is its share of the inductance that was measured, where it was.
fn sight_vehicles(
    resolved: &ResolvedExistingLoop,
    candidates: &TurnCandidates,
    budget: &WorkBudget,
) -> Vec<VehicleSighting> {
    let Some(best) = candidates.ranked.first() else { return Vec::new() };
    let role = resolved.role.unwrap_or(Role::Presence);
    let coil = wound(resolved, best.wire.0, best.turns);
    let lane = Lane::of(role, resolved.lane_width, vec![Length::default()], resolved.system);
    let one = ChannelLoop::new(String::new(), role, coil, resolved.lead_in.clone(), lane.clone());
    let measured = MeasuredLoop::new(one, budget);
    let computed = measured.figures.terminal_inductance.get::<microhenry>();
    let (figures, coil) = (measured.figures, measured.own.coil.clone());
    let channel = DetectorChannel::new(vec![measured], Wiring::Separate);
    let step = channel.step(&resolved.detector, &resolved.vehicles);
    // Steel takes from the change as it takes from the inductance: the candidate's own share stands there.
    let is_read = !is_open(resolved) && best.steel < 0.5 && best.fits;
    let read = resolved.readings.number(MeterKind::Inductance).filter(|_| is_read);
    let share = read.map_or(1.0, |read| computed / at_terminals(resolved, read).max(1.0));
    let share = Ratio::new::<ratio>(share);
    let field = LoopField::new(&coil, &figures, budget);
    let sighting = |class: &_| {
        let unseen = LoopRow { field: &field, lane: &lane }.unseen(*class, step / share);
        let made = channel.sightings(*class);
        made.first().map(|made| VehicleSighting::of(&made.diluted(share), unseen.as_ref(), step, resolved.lane_width))
    };
    resolved.vehicles.iter().filter_map(sighting).collect()
}

fn object_to_condition(resolved: &ResolvedExistingLoop, candidates: &TurnCandidates, objections: &mut Vec<Objection>) {
    use ExistingLoopVerdict::{KeepWithCare, Recut};
    let mut object = |verdict, reason, test| objections.push(Objection { verdict, reason, test });
    if is_open(resolved) {
        object(Recut, Statement::new("existing-open"), FaultTest::Capacitance);
    }
    match insulation(resolved) {
        None => object(KeepWithCare, Statement::new("existing-insulation-unknown"), FaultTest::Insulation),
        Some(megohm) if megohm < SOUND_FROM_MEGOHM => {
            let reason = Statement::new("existing-leaks")
                .code("degree", if megohm < FAULTY_BELOW_MEGOHM { "failed" } else { "fair" })
                .quantity("insulation", megohm, Decimals::AtMost(2), "megohm")
                .quantity("sound_from", SOUND_FROM_MEGOHM, 0, "megohm");
            let verdict = if megohm < FAULTY_BELOW_MEGOHM { Recut } else { KeepWithCare };
            let leaks = megohm < LEAK_BELOW_MEGOHM;
            object(verdict, reason, if leaks { FaultTest::SplitAtSplice } else { FaultTest::InsulationWet });
        }
        Some(_) => {}
    }
    if is_open(resolved) {
        return;
    }
    if is_inductance_over_range(resolved) {
        object(KeepWithCare, Statement::new("existing-inductance-over-range"), FaultTest::Inductance);
    }
    if resolved.readings.of(MeterKind::Inductance).is_none() {
        object(KeepWithCare, Statement::new("existing-inductance-unknown"), FaultTest::Inductance);
    }
    if resolved.readings.of(MeterKind::Resistance).is_none() {
        object(KeepWithCare, Statement::new("existing-resistance-unknown"), FaultTest::Resistance);
    }
    if !candidates.ranked.iter().take(2).any(|one| one.fits) {
        object(KeepWithCare, Statement::new("existing-fits-none"), FaultTest::ResistanceAtLoop);
    }
}

fn object_to_tuning(
    resolved: &ResolvedExistingLoop,
    candidates: &TurnCandidates,
    tuning: &TuningJudgement,
    objections: &mut Vec<Objection>,
) {
    use ExistingLoopVerdict::{KeepWithCare, Recut};
    if is_open(resolved) || tuning.report.fit == TuningFit::Tunes {
        return;
    }
    let does_not_tune = tuning.report.fit == TuningFit::DoesNotTune;
    // Resistance far above that of any likely wire is a bad joint before it is a bad loop.
    let splice_first = tuning.fails_by_quality_alone() && shows_bad_joint(resolved, candidates);
    let another_unit = does_not_tune && !tuning.is_lossy(resolved);
    let remedy = match (splice_first, another_unit) {
        (true, _) => "mend_splice",
        (false, true) => "another_unit",
        (false, false) => "none",
    };
    let reason = Statement::new("existing-tuning")
        .code("fit", if does_not_tune { "does_not_tune" } else { "marginal" })
        .phrases("limits", tuning.limits_said(resolved), ListJoin::And)
        .code("remedy", remedy);
    // A unit that is only assumed is chosen after the loop.
    let spares_the_loop = splice_first || another_unit && !resolved.unit_is_told;
    let verdict = if does_not_tune && !spares_the_loop { Recut } else { KeepWithCare };
    let test = if resolved.readings.of(MeterKind::Inductance).is_none() {
        FaultTest::Inductance
    } else if tuning.report.quality_factor.is_none() {
        FaultTest::Resistance
    } else if tuning.is_lossy(resolved) {
        FaultTest::ResistanceAtLoop
    } else {
        FaultTest::DriveOver
    };
    objections.push(Objection { verdict, reason, test });
}

/// Whether the resistance from the unit's end is more than any of the likely counts shows.
fn shows_bad_joint(resolved: &ResolvedExistingLoop, candidates: &TurnCandidates) -> bool {
    let read = resolved.readings.number(MeterKind::Resistance);
    let most = candidates.ranked.iter().take(2).map(|one| one.resistance.1).fold(0.0, f64::max);
    resolved.readings.conditions.place == ReadingPlace::DetectorEnd && read.is_some_and(|ohms| ohms > most)
}

fn object_to_vehicles(resolved: &ResolvedExistingLoop, vehicles: &[VehicleSighting], objections: &mut Vec<Objection>) {
    use ExistingLoopVerdict::{KeepWithCare, Recut};
    let mut object = |verdict, reason| objections.push(Objection { verdict, reason, test: FaultTest::DriveOver });
    match resolved.drive_over_passed {
        Some(false) => return object(Recut, Statement::new("existing-drive-over-failed")),
        // What was seen is seen.
        Some(true) => return,
        None => {}
    }
    let of = |counts: &dyn Fn(&VehicleSighting) -> bool| {
        let chosen = vehicles.iter().filter(|one| counts(one)).map(|one| one.vehicle);
        chosen.collect::<Vec<_>>()
    };
    let unseen = of(&|one| !one.detected && !one.vehicle.is_two_wheeler());
    // A two-wheeler stands in the null of many a loop: no stop where other devices can have it.
    let unseen_two_wheelers = of(&|one| !one.detected && one.vehicle.is_two_wheeler());
    let dropped = of(&|one| one.detected && one.drops_out);
    let is_thin = |one: &VehicleSighting| one.least_change_percent < THIN_TIMES_THRESHOLD * one.threshold_percent;
    let thin = of(&|one| one.detected && !one.drops_out && is_thin(one));
    if !unseen.is_empty() {
        object(Recut, Statement::new("existing-unseen").members("vehicles", &unseen));
    }
    if !unseen_two_wheelers.is_empty() {
        let verdict = if resolved.holds_the_gate() { Recut } else { KeepWithCare };
        object(verdict, Statement::new("existing-unseen-two-wheelers").members("vehicles", &unseen_two_wheelers));
    }
    if !dropped.is_empty() {
        let verdict = if resolved.holds_the_gate() { Recut } else { KeepWithCare };
        object(verdict, Statement::new("existing-dropped").members("vehicles", &dropped));
    }
    if !thin.is_empty() {
        object(KeepWithCare, Statement::new("existing-thin").members("vehicles", &thin));
    }
}

fn object_to_steel(resolved: &ResolvedExistingLoop, candidates: &TurnCandidates, objections: &mut Vec<Objection>) {
    let is_told = matches!(resolved.steel, SteelBelow::Present(_));
    if !is_told && candidates.steel() < 0.5 {
        return;
    }
    let reason = Statement::new("existing-over-steel").code("known", if is_told { "told" } else { "likely" });
    let test = if is_told { FaultTest::DriveOver } else { FaultTest::LookForSteel };
    objections.push(Objection { verdict: ExistingLoopVerdict::KeepWithCare, reason, test });
}

/// The test that answers the gravest objection that one can still answer; without objections what tells two counts apart, or the last
/// proof. `None` where all was done.
fn settling_test(
    resolved: &ResolvedExistingLoop,
    candidates: &TurnCandidates,
    objections: &[Objection],
) -> Option<SettlingTest> {
    let second = candidates.ranked.get(1).map_or(0.0, |one| one.likelihood);
    let is_left = |test: FaultTest| !is_done(resolved, test);
    let (test, settles) = match objections.iter().find(|objection| is_left(objection.test)) {
        Some(objection) => (objection.test, "objection"),
        None if !objections.is_empty() => return None,
        None if second >= 0.3 && resolved.steel == SteelBelow::Unknown => (FaultTest::LookForSteel, "turns"),
        None if is_left(FaultTest::DriveOver) => (FaultTest::DriveOver, "proof"),
        None => return None,
    };
    Some(SettlingTest {
        test,
        label: Message::label_of(test),
        how: Message::description_of(test),
        minutes: test.minutes(),
        disturbs: test.disturbs(),
        reason: Statement::new("existing-settles")
            .code("settles", settles)
            .member("disturbs", test.disturbs())
            .count("minutes", test.minutes().into())
            .into(),
        cautions: test.cautions().to_vec(),
    })
}

/// Whether what was sent holds the result of a test already.
fn is_done(resolved: &ResolvedExistingLoop, test: FaultTest) -> bool {
    let readings = &resolved.readings;
    let is_read = |meter| readings.of(meter).is_some();
    let is_at_loop = readings.conditions.place == ReadingPlace::LoopEnd;
    match test {
        FaultTest::DriveOver => resolved.drive_over_passed.is_some(),
        FaultTest::Insulation => is_read(MeterKind::Insulation),
        FaultTest::InsulationWet => {
            is_read(MeterKind::Insulation) && readings.conditions.ground == InsulationState::Wet
        }
        FaultTest::Resistance => is_read(MeterKind::Resistance),
        FaultTest::ResistanceAtLoop => is_at_loop && is_read(MeterKind::Resistance),
        FaultTest::Inductance => is_read(MeterKind::Inductance) && !is_inductance_over_range(resolved),
        _ => false,
    }
}
