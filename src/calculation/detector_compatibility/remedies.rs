//! What would turn a check that is not suitable: computed by trying, the smallest change first.

use uom::si::f64::{Length, Ratio};

use super::checks::{CheckResult, CheckVerdict, check};
use super::report::Remedy;
use crate::calculation::input::{ResolvedDetector, ResolvedLoop};
use crate::calculation::layout::{ChannelLoop, DetectorChannel};
use crate::calculation::report::{Decimals, FactValue, Statement};
use crate::practice::detectors::Wiring;
use crate::practice::layout::{MAX_LEG, STEP};
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires::WireGauge;
use crate::quantity::UnitSystem;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// How many turns more or less are tried at most.
const MAX_TURNS_APART: u32 = 4;
/// The lead-in is shortened in steps of this fraction of its length: one over this number.
const LEAD_IN_STEPS: u32 = 20;

/// The kinds of change that are tried, in the order of a report.
#[derive(Clone, Copy)]
enum RemedyKind {
    Turns,
    Wiring,
    LeadInGauge,
    LeadInLength,
    AlongTravel,
}

impl RemedyKind {
    const ALL: [Self; 5] = [Self::Turns, Self::Wiring, Self::LeadInGauge, Self::LeadInLength, Self::AlongTravel];

    /// The value in reports.
    fn code(self) -> &'static str {
        match self {
            Self::Turns => "turns",
            Self::Wiring => "wiring",
            Self::LeadInGauge => "lead_in_gauge",
            Self::LeadInLength => "lead_in_length",
            Self::AlongTravel => "along_travel",
        }
    }

    /// The changes of this kind to try, the smallest first.
    fn candidates(self, channel: &DetectorChannel) -> Vec<RemedyCandidate> {
        match self {
            Self::Turns => turns(channel),
            Self::Wiring => wirings(channel),
            Self::LeadInGauge => gauges(channel),
            Self::LeadInLength => shorter_lead_ins(channel),
            Self::AlongTravel => longer_legs(channel),
        }
    }
}

/// A changed channel.
struct RemedyCandidate {
    kind: RemedyKind,
    from: FactValue,
    to: FactValue,
    channel: DetectorChannel,
}

/// The remedies of a channel: of each kind of change the smallest that turns a check, unless it spoils another.
pub fn find(
    channel: &DetectorChannel,
    step: Ratio,
    detector: &ResolvedDetector,
    vehicles: &[VehicleClass],
) -> Vec<Remedy> {
    let now = check(channel, step, detector, vehicles);
    let failing: Vec<_> = now.iter().filter(|check| check.verdict != CheckVerdict::Suitable).collect();
    if failing.is_empty() {
        return Vec::new();
    }
    let checked = |candidate: RemedyCandidate| {
        let step = candidate.channel.serving_step(detector, vehicles);
        let then = check(&candidate.channel, step, detector, vehicles);
        (candidate, then)
    };
    let by_kind = RemedyKind::ALL.map(|kind| kind.candidates(channel).into_iter().map(checked).collect::<Vec<_>>());
    let mut remedies = Vec::new();
    for check in failing {
        for candidates in &by_kind {
            let turning = candidates.iter().find_map(|(candidate, then)| {
                let turned = then.iter().find(|other| other.is_same_check(check))?;
                (turned.verdict == CheckVerdict::Suitable && spoils_nothing(&now, then)).then_some((candidate, turned))
            });
            remedies.extend(turning.map(|(candidate, turned)| describe(channel, candidate, turned)));
        }
    }
    remedies
}

/// No check may stand worse than before.
fn spoils_nothing(now: &[CheckResult], then: &[CheckResult]) -> bool {
    now.iter().all(|check| {
        then.iter().find(|other| other.is_same_check(check)).is_none_or(|other| other.verdict <= check.verdict)
    })
}

fn describe(channel: &DetectorChannel, candidate: &RemedyCandidate, turned: &CheckResult) -> Remedy {
    let value = |fact: &FactValue| Statement::new("compatibility-changed-value").with("value", fact.clone());
    let message = Statement::new("compatibility-remedy")
        .with("to", candidate.to.clone())
        .code("change", candidate.kind.code())
        .with("from", candidate.from.clone())
        .code("check", turned.check)
        .number("value", turned.value, Decimals::AtMost(3))
        .code("unit", turned.unit());
    let message = turned.vehicle.into_iter().fold(message, |message, class| message.member("vehicle", class));
    Remedy {
        channel: channel.label(),
        check: turned.check,
        change: candidate.kind.code(),
        from: value(&candidate.from).into(),
        to: value(&candidate.to).into(),
        value: round(turned.value, 3),
        message: message.into(),
    }
}

/// The channel with every loop changed alike.
fn changed(channel: &DetectorChannel, change: impl Fn(&mut ChannelLoop)) -> DetectorChannel {
    let mut loops = channel.loops.clone();
    loops.iter_mut().for_each(change);
    DetectorChannel::new(loops, channel.wiring)
}

fn turns(channel: &DetectorChannel) -> Vec<RemedyCandidate> {
    let from = channel.loops[0].coil.turns;
    let by_size = (1..=MAX_TURNS_APART).flat_map(|apart| [from.checked_add(apart), from.checked_sub(apart)]);
    by_size
        .flatten()
        .filter(|turns| (1..=20).contains(turns))
        .filter(|turns| {
            // Every loop of a group changes by as many turns.
            channel.loops.iter().all(|one| (1..=20).contains(&(one.coil.turns + turns).saturating_sub(from)))
        })
        .map(|turns| RemedyCandidate {
            kind: RemedyKind::Turns,
            from: FactValue::Count(from.into()),
            to: FactValue::Count(turns.into()),
            channel: changed(channel, |one| one.coil.turns = one.coil.turns + turns - from),
        })
        .collect()
}

fn wirings(channel: &DetectorChannel) -> Vec<RemedyCandidate> {
    if channel.loops.len() < 2 {
        return Vec::new();
    }
    [Wiring::Series, Wiring::Parallel]
        .into_iter()
        .filter(|wiring| *wiring != channel.wiring)
        .map(|wiring| RemedyCandidate {
            kind: RemedyKind::Wiring,
            from: FactValue::Code(channel.wiring.code()),
            to: FactValue::Code(wiring.code()),
            channel: DetectorChannel::new(channel.loops.clone(), wiring),
        })
        .collect()
}

fn gauges(channel: &DetectorChannel) -> Vec<RemedyCandidate> {
    let from = channel.loops[0].lead_in.clone();
    [WireGauge::Awg16, WireGauge::Awg14, WireGauge::Awg12, WireGauge::Awg10]
        .into_iter()
        .filter(|gauge| gauge.area() > from.area)
        .map(|gauge| RemedyCandidate {
            kind: RemedyKind::LeadInGauge,
            from: FactValue::Text(from.gauge.clone().into()),
            to: FactValue::Code(gauge.code()),
            channel: changed(channel, |one| {
                if gauge.area() > one.lead_in.area {
                    gauge.code().clone_into(&mut one.lead_in.gauge);
                    one.lead_in.area = gauge.area();
                }
            }),
        })
        .collect()
}

fn shorter_lead_ins(channel: &DetectorChannel) -> Vec<RemedyCandidate> {
    let (longest, system) = longest_lead_in(channel);
    (1..LEAD_IN_STEPS)
        .map(|step| 1.0 - f64::from(step) / f64::from(LEAD_IN_STEPS))
        .map(|share| (share, STEP.floor(share * longest, system)))
        .filter(|(_, length)| *length > Length::default())
        .map(|(share, length)| RemedyCandidate {
            kind: RemedyKind::LeadInLength,
            from: FactValue::Length(longest, system),
            to: FactValue::Length(length, system),
            channel: changed(channel, |one| {
                one.lead_in.length = STEP.floor(share * one.lead_in.length, system);
            }),
        })
        .collect()
}

fn longest_lead_in(channel: &DetectorChannel) -> (Length, UnitSystem) {
    let lead_in = channel.loops.iter().map(|one| &one.lead_in);
    let system = channel.loops[0].lead_in.system;
    (lead_in.map(|lead_in| lead_in.length).fold(Length::default(), Length::max), system)
}

fn longer_legs(channel: &DetectorChannel) -> Vec<RemedyCandidate> {
    let ResolvedLoop { along_travel: from, system, .. } = channel.loops[0].coil.clone();
    let step = crate::practice::layout::ALTERNATIVE_STEP.in_system(system);
    (1..=6)
        .map(|count| from + f64::from(count) * step)
        .take_while(|leg| *leg <= MAX_LEG.in_system(system))
        .map(|leg| RemedyCandidate {
            kind: RemedyKind::AlongTravel,
            from: FactValue::Length(from, system),
            to: FactValue::Length(leg, system),
            channel: changed(channel, |one| one.coil.along_travel += leg - from),
        })
        .collect()
}
