//! A request with some changes, judged as a whole: what is changed for one loop may make another worse.

use std::cell::RefCell;
use std::ops::Range;
use std::rc::Rc;

use rustc_hash::FxHashMap;

use super::super::checks::{CheckResult, CheckVerdict, all_checks, electrical_checks};
use super::super::judgement::{ChannelJudgement, untunable};
use super::super::lanes::lane_of;
use super::super::neighbours::gravity;
use super::super::request::ResolvedDetectorCompatibility;
use super::changes::{Change, ChangeableChannel};
use crate::calculation::budget::Search;
use crate::calculation::layout::{
    ChannelLoop, DetectorChannel, MeasuredLoop, PlacedCoil, StepLadder, coupling, join_channels,
};
use crate::practice::detectors::Wiring;
use crate::practice::vehicles::VehicleClass;

/// How a channel stands after changes that leave nothing worse.
pub struct Outcome {
    /// Its checks; of channels that it was parted into the worst of each.
    pub checks: Vec<CheckResult>,
    /// Whether nothing is wrong with it any more.
    pub cures: bool,
}

/// What it costs to change a loop and to look where it then lies, in steps of the budget. Measured.
const TRIAL_STEPS: u64 = 300;

/// A loop by its place among all, its turns, and its leg in metres to the last bit.
type CoilKey = (usize, u32, u64);

/// A request whose loops may be changed.
pub struct Workshop<'a> {
    resolved: &'a ResolvedDetectorCompatibility,
    channels: &'a [DetectorChannel],
    judged: &'a [ChannelJudgement],
    /// What each loop measures as it is, and with other turns or legs, as far as tried.
    measured: RefCell<Vec<Vec<MeasuredLoop>>>,
    /// How pairs of loops couple: most changes leave all coils as they are.
    couplings: RefCell<FxHashMap<[CoilKey; 2], f64>>,
}

impl<'a> Workshop<'a> {
    /// A request as it is.
    pub fn new(
        resolved: &'a ResolvedDetectorCompatibility,
        channels: &'a [DetectorChannel],
        judged: &'a [ChannelJudgement],
    ) -> Self {
        let as_it_is = channels.iter().flat_map(|channel| &channel.loops).map(|one| vec![one.clone()]);
        let measured = RefCell::new(as_it_is.collect());
        Self { resolved, channels, judged, measured, couplings: RefCell::default() }
    }

    /// Whether one more trial may be made; it is counted for what it takes to make it.
    pub fn may_try(&self) -> bool {
        let budget = &self.resolved.budget;
        let allows = budget.allows(Search::Remedies);
        if allows {
            budget.count(TRIAL_STEPS * self.resolved.loops.len() as u64);
        }
        allows
    }

    /// How a channel stands as it is.
    pub fn judgement(&self, channel: usize) -> &ChannelJudgement {
        &self.judged[channel]
    }

    /// Its label.
    pub fn label(&self, channel: usize) -> String {
        self.channels[channel].label()
    }

    /// What can be changed of it.
    pub fn changeable(&self, channel: usize) -> ChangeableChannel<'_> {
        ChangeableChannel { all: &self.resolved.loops, own: self.range(channel), wiring: self.resolved.wiring }
    }

    /// The places of its loops among all.
    fn range(&self, channel: usize) -> Range<usize> {
        let first = self.channels[..channel].iter().map(|channel| channel.loops.len()).sum();
        first..first + self.channels[channel].loops.len()
    }

    /// Judges a channel with some changes; `None` where they turn none of its checks, or leave any check or finding of the request worse.
    /// What takes long is done last.
    pub fn judge(&self, channel: usize, changes: &[Change]) -> Option<Outcome> {
        let ResolvedDetectorCompatibility { wiring, detector, vehicles, .. } = self.resolved;
        let (loops, changed, new_wiring) = self.changed(changes);
        let affected: Vec<_> = (0..self.channels.len())
            .filter(|index| new_wiring != *wiring || self.range(*index).any(|one| changed.contains(&one)))
            .collect();
        // No check of any channel stands worse, and some check of this one may be turned.
        let may_help = |index: usize, then: &[CheckResult]| {
            let now = &self.judged[index].checks;
            spoils_nothing(now, then) && (index != channel || may_turn(now, then))
        };
        let mut renewed = Vec::new();
        for index in affected {
            let channels = join_channels(loops[self.range(index)].to_vec(), new_wiring);
            let now = &self.judged[index];
            let then = worst(channels.iter().map(|channel| electrical_checks(channel, detector)));
            let mut untunable = channels.iter().filter_map(|channel| untunable(channel, detector));
            if !may_help(index, &then) || untunable.any(|code| now.untunable != Some(code)) {
                return None;
            }
            renewed.push((index, channels));
        }
        self.leaves_neighbours(&loops, &changed, new_wiring).then_some(())?;
        let affected = || renewed.iter().flat_map(|(_, channels)| channels).flat_map(|channel| &channel.loops);
        self.sights_all(affected(), &|one, class| _ = one.sight_whole(class)).then_some(())?;
        // No step is better for what vehicles make than the finest.
        let finest = StepLadder::of(detector).finest();
        for (index, channels) in &renewed {
            let best = worst(channels.iter().map(|one| all_checks(one, finest, detector, vehicles)));
            may_help(*index, &best).then_some(())?;
        }
        self.sights_all(affected(), &|one, class| _ = one.sight(class)).then_some(())?;
        let mut outcome = None;
        for (index, channels) in renewed {
            let now = &self.judged[index];
            let then: Vec<_> = channels
                .iter()
                .map(|one| ChannelJudgement::new(one, one.serving_step(detector, vehicles), detector, vehicles))
                .collect();
            let cures = then.iter().all(ChannelJudgement::is_suitable);
            let drops_more = then.iter().flat_map(|then| &then.drop_outs).any(|other| !now.drop_outs.contains(other));
            let checks = worst(then.into_iter().map(|then| then.checks));
            if drops_more || !spoils_nothing(&now.checks, &checks) {
                return None;
            }
            if index == channel {
                outcome = Some(Outcome { checks, cures });
            }
        }
        outcome
    }

    /// Looks at all vehicles over loops; `false` where the budget ends before, for over many loops at once they are more than one trial may
    /// cost.
    fn sights_all<'l>(
        &self,
        loops: impl IntoIterator<Item = &'l MeasuredLoop>,
        sight: &dyn Fn(&MeasuredLoop, VehicleClass),
    ) -> bool {
        let ResolvedDetectorCompatibility { vehicles, budget, .. } = self.resolved;
        let sights = |one: &MeasuredLoop, class: VehicleClass| {
            let allows = budget.allows(Search::Remedies);
            if allows {
                sight(one, class);
            }
            allows
        };
        loops.into_iter().all(|one| vehicles.iter().all(|class| sights(one, *class)))
    }

    /// All loops with the changes, which of them measure or lie otherwise, and how they come to the unit.
    fn changed(&self, changes: &[Change]) -> (Vec<MeasuredLoop>, Vec<usize>, Wiring) {
        let was: Vec<_> = self.measured.borrow().iter().map(|tried| tried[0].own.clone()).collect();
        let (mut loops, mut wiring) = (was.clone(), self.resolved.wiring);
        for change in changes {
            change.apply(&mut loops, &mut wiring);
        }
        // A row is one only as long as its loops are alike.
        if let Some(sent) = &self.resolved.sent_lanes {
            let lanes: Vec<_> = loops.iter().zip(sent).map(|(one, sent)| lane_of(one, &loops, *sent)).collect();
            for (one, lane) in loops.iter_mut().zip(lanes).filter(|(one, lane)| one.lane != *lane) {
                Rc::make_mut(one).lane = lane;
            }
        }
        let is_changed = |index: &usize| {
            let (one, was) = (&loops[*index], &was[*index]);
            !is_same_coil(one, was) || !is_same_lead_in(one, was)
        };
        let changed = (0..loops.len()).filter(is_changed).collect();
        let measured = loops.iter().enumerate().map(|(index, one)| self.measured(index, one)).collect();
        (measured, changed, wiring)
    }

    /// Measures a loop, unless it was tried before.
    fn measured(&self, index: usize, one: &ChannelLoop) -> MeasuredLoop {
        let mut tried = self.measured.borrow_mut();
        let tried = &mut tried[index];
        let known = tried.iter().find(|other| is_same_coil(&other.own, one)).cloned();
        let known = known.unwrap_or_else(|| {
            let lead_in = self.resolved.loops[index].lead_in.clone();
            let measured =
                MeasuredLoop::new(ChannelLoop { lead_in, sightings: Vec::new(), ..one.clone() }, &self.resolved.budget);
            tried.push(measured.clone());
            measured
        });
        if is_same_lead_in(&known.own, one) { known } else { known.on_lead_in(&one.lead_in) }
    }

    fn coupling(&self, ours: (usize, &PlacedCoil<'_>), theirs: (usize, &PlacedCoil<'_>)) -> f64 {
        let key = [ours, theirs]
            .map(|(index, PlacedCoil { coil, .. })| (index, coil.turns, coil.along_travel.value.to_bits()));
        let mut known = self.couplings.borrow_mut();
        *known.entry(key).or_insert_with(|| coupling(ours.1, theirs.1, &self.resolved.budget).value)
    }

    /// Whether no two loops stand worse to each other than before: those on different channels by their coupling, all by their places.
    fn leaves_neighbours(&self, loops: &[MeasuredLoop], changed: &[usize], wiring: Wiring) -> bool {
        let was = self.measured.borrow();
        let before = |index: usize| &was[index][0];
        let is_parted = wiring != self.resolved.wiring && wiring == Wiring::Separate;
        let mut pairs = (0..loops.len()).flat_map(|second| (0..second).map(move |first| (first, second)));
        pairs.all(|(first, second)| {
            if !is_parted && !changed.contains(&first) && !changed.contains(&second) {
                return true;
            }
            let (one, other) = (&loops[first], &loops[second]);
            let Some((ours, theirs)) = one.placed().zip(other.placed()) else { return true };
            let were_places = before(first).placed().zip(before(second).placed());
            if ours.overlaps(&theirs) && were_places.is_none_or(|(ours, theirs)| !ours.overlaps(&theirs)) {
                return false;
            }
            let stand = |one: &MeasuredLoop, other: &MeasuredLoop, wiring: Wiring| match wiring {
                Wiring::Separate => gravity(one, other, |ours, theirs| self.coupling((first, ours), (second, theirs))),
                Wiring::Series | Wiring::Parallel => None,
            };
            let then = stand(one, other, wiring);
            let now = || stand(before(first), before(second), self.resolved.wiring);
            then.is_none_or(|then| then == 0 || now().is_some_and(|now| then <= now))
        })
    }
}

fn is_same_coil(one: &ChannelLoop, other: &ChannelLoop) -> bool {
    one.coil.turns == other.coil.turns && one.coil.along_travel == other.coil.along_travel && one.lane == other.lane
}

fn is_same_lead_in(one: &ChannelLoop, other: &ChannelLoop) -> bool {
    one.lead_in.length == other.lead_in.length && one.lead_in.area == other.lead_in.area
}

/// Of checks of several channels the worst of each.
fn worst(of_channels: impl Iterator<Item = Vec<CheckResult>>) -> Vec<CheckResult> {
    let mut worst: Vec<CheckResult> = Vec::new();
    for check in of_channels.flatten() {
        match worst.iter_mut().find(|other| other.is_same_check(&check)) {
            Some(other) if check.is_worse_than(other) => *other = check,
            Some(_) => {}
            None => worst.push(check),
        }
    }
    worst
}

/// No check may stand worse than before.
fn spoils_nothing(now: &[CheckResult], then: &[CheckResult]) -> bool {
    now.iter().all(|check| {
        then.iter().find(|other| other.is_same_check(check)).is_none_or(|other| other.verdict <= check.verdict)
    })
}

/// Whether any check is turned, or may be once vehicles are looked at.
fn may_turn(now: &[CheckResult], then: &[CheckResult]) -> bool {
    now.iter().filter(|check| check.verdict != CheckVerdict::Suitable).any(|check| {
        let then = then.iter().find(|other| other.is_same_check(check));
        then.is_none_or(|then| then.verdict == CheckVerdict::Suitable)
    })
}
