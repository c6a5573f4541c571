//! What would turn a check that is not suitable: computed by trying, the smallest change first.

use uom::si::f64::Length;

use super::channel::{Channel, Member};
use super::checks::{Checked, Verdict, check};
use super::report::Remedy;
use crate::calculation::input::{ResolvedDetector, ResolvedLoop};
use crate::practice::detectors::Wiring;
use crate::practice::roles::{MAX_LEG, STEP};
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires::WireGauge;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_length;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// How many turns more or less are tried.
const MAX_TURNS_APART: u32 = 4;
/// Into how many steps the lead-in is divided that it is shortened by.
const LEAD_IN_STEPS: u32 = 20;

/// A changed channel.
struct Trial {
    change: &'static str,
    from: String,
    to: String,
    channel: Channel,
}

/// The remedies of a channel: of each kind of change the smallest that turns a check, unless it spoils another.
pub fn find(channel: &Channel, detector: &ResolvedDetector, vehicles: &[VehicleClass]) -> Vec<Remedy> {
    let now = check(channel, detector, vehicles);
    let failing: Vec<_> = now.iter().filter(|check| check.verdict != Verdict::Suitable).collect();
    if failing.is_empty() {
        return Vec::new();
    }
    let quantity_fields: [Vec<Trial>; 5] =
        [turns(channel), wirings(channel), gauges(channel), shorter_lead_ins(channel), longer_legs(channel)];
    let checked: Vec<Vec<(Trial, Vec<Checked>)>> = quantity_fields
        .into_iter()
        .map(|kind| {
            kind.into_iter()
                .map(|trial| {
                    let then = check(&trial.channel, detector, vehicles);
                    (trial, then)
                })
                .collect()
        })
        .collect();
    let mut remedies = Vec::new();
    for check in failing {
        for kind in &checked {
            let turning = kind.iter().find_map(|(trial, then)| {
                let turned = then.iter().find(|other| other.is_like(check))?;
                (turned.verdict == Verdict::Suitable && spoils_nothing(&now, then)).then_some((trial, turned))
            });
            remedies.extend(turning.map(|(trial, turned)| describe(channel, trial, turned)));
        }
    }
    remedies
}

/// No check may stand worse than before.
fn spoils_nothing(now: &[Checked], then: &[Checked]) -> bool {
    now.iter()
        .all(|check| then.iter().find(|other| other.is_like(check)).is_none_or(|other| other.verdict <= check.verdict))
}

fn describe(channel: &Channel, trial: &Trial, turned: &Checked) -> Remedy {
    let what = match trial.change {
        "turns" => "turns",
        "wiring" => "wiring",
        "lead_in_gauge" => "wire in the lead-in",
        "lead_in_length" => "of lead-in",
        _ => "along travel",
    };
    let subject = turned.vehicle.map_or_else(|| turned.check.replace('_', " "), |class| class.label().to_lowercase());
    Remedy {
        channel: channel.label(),
        check: turned.check,
        change: trial.change,
        from: trial.from.clone(),
        to: trial.to.clone(),
        value: round(turned.value, 3),
        message: format!(
            "{} {what} instead of {}: {subject} is then {} {}, and no other check stands worse.",
            trial.to,
            trial.from,
            round(turned.value, 3),
            turned.unit()
        ),
    }
}

/// The channel with every loop changed alike.
fn changed(channel: &Channel, change: impl Fn(&mut Member)) -> Channel {
    let mut members = channel.members.clone();
    members.iter_mut().for_each(change);
    Channel::new(members, channel.wiring)
}

fn turns(channel: &Channel) -> Vec<Trial> {
    let from = channel.members[0].coil.turns;
    let by_size = (1..=MAX_TURNS_APART).flat_map(|apart| [from.checked_add(apart), from.checked_sub(apart)]);
    by_size
        .flatten()
        .filter(|turns| (1..=20).contains(turns))
        .filter(|turns| {
            // Every loop of a group changes by as many turns.
            channel.members.iter().all(|member| (1..=20).contains(&(member.coil.turns + turns).saturating_sub(from)))
        })
        .map(|turns| Trial {
            change: "turns",
            from: from.to_string(),
            to: turns.to_string(),
            channel: changed(channel, |member| member.coil.turns = member.coil.turns + turns - from),
        })
        .collect()
}

fn wirings(channel: &Channel) -> Vec<Trial> {
    if channel.members.len() < 2 {
        return Vec::new();
    }
    [Wiring::Series, Wiring::Parallel]
        .into_iter()
        .filter(|wiring| *wiring != channel.wiring)
        .map(|wiring| Trial {
            change: "wiring",
            from: channel.wiring.code().to_owned(),
            to: wiring.code().to_owned(),
            channel: Channel::new(channel.members.clone(), wiring),
        })
        .collect()
}

fn gauges(channel: &Channel) -> Vec<Trial> {
    let from = channel.members[0].lead_in.clone();
    [WireGauge::Awg16, WireGauge::Awg14, WireGauge::Awg12, WireGauge::Awg10]
        .into_iter()
        .filter(|gauge| gauge.area() > from.area)
        .map(|gauge| Trial {
            change: "lead_in_gauge",
            from: from.gauge.clone(),
            to: gauge.code().to_owned(),
            channel: changed(channel, |member| {
                if gauge.area() > member.lead_in.area {
                    gauge.code().clone_into(&mut member.lead_in.gauge);
                    member.lead_in.area = gauge.area();
                }
            }),
        })
        .collect()
}

fn shorter_lead_ins(channel: &Channel) -> Vec<Trial> {
    let (longest, system) = longest_lead_in(channel);
    (1..LEAD_IN_STEPS)
        .map(|step| 1.0 - f64::from(step) / f64::from(LEAD_IN_STEPS))
        .map(|share| (share, STEP.floor(share * longest, system)))
        .filter(|(_, length)| *length > Length::default())
        .map(|(share, length)| Trial {
            change: "lead_in_length",
            from: format_length(longest, system),
            to: format_length(length, system),
            channel: changed(channel, |member| {
                member.lead_in.length = STEP.floor(share * member.lead_in.length, system);
            }),
        })
        .collect()
}

fn longest_lead_in(channel: &Channel) -> (Length, UnitSystem) {
    let lead_in = channel.members.iter().map(|member| &member.lead_in);
    let system = channel.members[0].lead_in.system;
    (lead_in.map(|lead_in| lead_in.length).fold(Length::default(), Length::max), system)
}

fn longer_legs(channel: &Channel) -> Vec<Trial> {
    let ResolvedLoop { along_travel: from, system, .. } = channel.members[0].coil.clone();
    let step = crate::practice::roles::ALTERNATIVE_STEP.in_system(system);
    (1..=6)
        .map(|count| from + f64::from(count) * step)
        .take_while(|leg| *leg <= MAX_LEG.in_system(system))
        .map(|leg| Trial {
            change: "along_travel",
            from: format_length(from, system),
            to: format_length(leg, system),
            channel: changed(channel, |member| member.coil.along_travel += leg - from),
        })
        .collect()
}
