//! How to set each channel, and which settings must not be.

use uom::si::f64::{Ratio, Time};
use uom::si::frequency::kilohertz;
use uom::si::ratio::percent;

use super::names::{name_channel, name_loop};
use super::report::{ChannelSettings, OutputSettings, SentSettings};
use crate::calculation::input::ResolvedDetector;
use crate::calculation::layout::{ChannelLoop, DetectorChannel};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::detectors::{FailureBehaviour, OutputMode};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::quantity::output::round;

/// Chooses the settings of a channel, and adds a stop where what was asked for would let a gate close on a vehicle. `first` is the
/// index of its first loop in the request.
pub fn choose(
    channel: &DetectorChannel,
    first: usize,
    step: Ratio,
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> ChannelSettings {
    let holds = channel.holds_the_gate();
    let role = governing_role(channel);
    for (index, one) in channel.loops.iter().enumerate() {
        judge(&one.own, holds, &FieldPath::BODY.field("loops").item(first + index), diagnostics);
    }
    if holds && channel.loops.iter().any(|one| !one.own.role.holds_the_gate()) {
        let message = name_channel(Statement::new("compatibility-mixed-roles"), channel);
        let wiring = FieldPath::BODY.field("wiring");
        diagnostics.add_finding(Finding::new(FindingCode::MixedRoles, Level::Stop, &wiring, message).send(&wiring));
    }
    let (to_set, as_sent) = choose_output(channel, holds);
    ChannelSettings {
        channel: channel.label(),
        marks: channel.loops.iter().filter_map(|one| one.own.mark).collect(),
        threshold_percent: round(step.get::<percent>(), 3),
        frequency_khz: detector.tuning_capacitance.map(|capacitance| {
            round(DetectorChannel::frequency(channel.inductance, capacitance).get::<kilohertz>(), 3)
        }),
        frequency_setting: Statement::new("compatibility-frequency-setting").into(),
        output: to_set.output,
        presence_time: to_set.presence_time,
        on_loop_failure: to_set.on_loop_failure,
        failure_consequence: Statement::new("compatibility-failure-consequence")
            .member("on_loop_failure", to_set.on_loop_failure)
            .member("role", role)
            .into(),
        operator_input: operator_input(role),
        to_set,
        as_sent,
    }
}

/// How to set the output, and what was sent instead. What was sent is set where no gate depends on it.
fn choose_output(channel: &DetectorChannel, holds: bool) -> (OutputSettings, Option<SentSettings>) {
    let loops = || channel.loops.iter().map(|one| &one.own);
    let asks = |of: &dyn Fn(&ChannelLoop) -> bool| loops().any(|one| of(one));
    let pulses = !holds && asks(&|one| one.output == Some(OutputMode::Pulse));
    let detects = holds || asks(&|one| one.on_loop_failure == Some(FailureBehaviour::Detect));
    let fails_off = !holds && asks(&|one| one.on_loop_failure == Some(FailureBehaviour::NoDetect));
    let sent_time = loops().filter_map(|one| one.presence_time).reduce(Time::min);
    let to_set = OutputSettings {
        output: if pulses { OutputMode::Pulse } else { OutputMode::Presence },
        presence_time: sent_time.filter(|_| !holds).map(Into::into),
        on_loop_failure: if detects && !fails_off { FailureBehaviour::Detect } else { FailureBehaviour::NoDetect },
    };
    let as_sent = SentSettings {
        output: loops().filter_map(|one| one.output).find(|output| *output != to_set.output),
        presence_time: sent_time.filter(|_| holds).map(Into::into),
        on_loop_failure: loops()
            .filter_map(|one| one.on_loop_failure)
            .find(|behaviour| *behaviour != to_set.on_loop_failure),
    };
    let differs = as_sent.output.is_some() || as_sent.presence_time.is_some() || as_sent.on_loop_failure.is_some();
    (to_set, differs.then_some(as_sent))
}

/// The role that a channel is set for: one that holds the gate where there is one, else that of the first loop.
fn governing_role(channel: &DetectorChannel) -> Role {
    let roles = || channel.loops.iter().map(|one| one.own.role);
    roles().find(|role| role.holds_the_gate()).or(roles().next()).unwrap_or(Role::Presence)
}

/// A loop on a channel that holds a gate is judged as one that does, whatever its own role.
fn judge(one: &ChannelLoop, holds: bool, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
    if !holds {
        return;
    }
    let role = Some(one.role);
    if one.output == Some(OutputMode::Pulse) {
        let (message, at) = (name_loop(Statement::new("compatibility-pulse-holds-nothing"), one), at.field("output"));
        let finding = Finding::new(FindingCode::PulseHoldsNothing, Level::Stop, &at, message);
        diagnostics.add_finding(finding.on(role).send(&at));
    }
    if one.presence_time.is_some() {
        let message = name_loop(Statement::new("compatibility-presence-runs-out"), one);
        let at = at.field("presence_time");
        let finding = Finding::new(FindingCode::PresenceRunsOut, Level::Stop, &at, message);
        diagnostics.add_finding(finding.on(role).send(&at));
    }
    if one.on_loop_failure == Some(FailureBehaviour::NoDetect) {
        let message = name_loop(Statement::new("compatibility-fails-to-no-detect"), one);
        let at = at.field("on_loop_failure");
        let finding = Finding::new(FindingCode::FailsToNoDetect, Level::Stop, &at, message);
        diagnostics.add_finding(finding.on(role).send(&at));
    }
}

/// The operator's input, by what it does. Common practice.
fn operator_input(role: Role) -> &'static str {
    match role {
        Role::Exit => "open",
        Role::ObstructionOutside | Role::ObstructionInside => "hold_or_reverse",
        Role::BetweenLeaves => "hold_while_still",
        Role::Closing => "close",
        Role::Arming | Role::Presence => "presence",
    }
}
