//! How to set each channel, and which settings must not be.

use uom::si::f64::Ratio;
use uom::si::frequency::kilohertz;
use uom::si::ratio::percent;

use super::report::ChannelSettings;
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
        judge(one, holds, &FieldPath::BODY.field("loops").item(first + index), diagnostics);
    }
    if holds && channel.loops.iter().any(|one| !one.role.holds_the_gate()) {
        let message = Statement::new("compatibility-mixed-roles").text("channel", channel.label());
        diagnostics.add_finding(Finding::new(
            FindingCode::MixedRoles,
            Level::Stop,
            &FieldPath::BODY.field("wiring"),
            message,
        ));
    }
    let asked = |of: fn(&ChannelLoop) -> bool| channel.loops.iter().any(of);
    let output =
        if asked(|one| one.output == Some(OutputMode::Pulse)) { OutputMode::Pulse } else { OutputMode::Presence };
    let presence_time = channel.loops.iter().filter_map(|one| one.presence_time).reduce(uom::si::f64::Time::min);
    let on_failure = if asked(|one| one.on_loop_failure == Some(FailureBehaviour::NoDetect)) {
        FailureBehaviour::NoDetect
    } else if asked(|one| one.on_loop_failure == Some(FailureBehaviour::Detect)) || holds {
        FailureBehaviour::Detect
    } else {
        FailureBehaviour::NoDetect
    };
    ChannelSettings {
        channel: channel.label(),
        marks: channel.loops.iter().filter_map(|one| one.mark).collect(),
        threshold_percent: round(step.get::<percent>(), 3),
        frequency_khz: detector.tuning_capacitance.map(|capacitance| {
            round(DetectorChannel::frequency(channel.inductance, capacitance).get::<kilohertz>(), 3)
        }),
        frequency_setting: Statement::new("compatibility-frequency-setting").into(),
        output,
        presence_time: presence_time.map(Into::into),
        on_loop_failure: on_failure,
        failure_consequence: Statement::new("compatibility-failure-consequence")
            .member("on_loop_failure", on_failure)
            .member("role", role)
            .into(),
        operator_input: operator_input(role),
    }
}

/// The role that a channel is set for: one that holds the gate where there is one, else that of the first loop.
fn governing_role(channel: &DetectorChannel) -> Role {
    let roles = || channel.loops.iter().map(|one| one.role);
    roles().find(|role| role.holds_the_gate()).or(roles().next()).unwrap_or(Role::Presence)
}

/// A loop on a channel that holds a gate is judged as one that does, whatever its own role.
fn judge(one: &ChannelLoop, holds: bool, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
    if !holds {
        return;
    }
    let role = Some(one.role);
    if one.output == Some(OutputMode::Pulse) {
        let message = Statement::new("compatibility-pulse-holds-nothing").text("loop", one.label.clone());
        diagnostics.add_finding(
            Finding::new(FindingCode::PulseHoldsNothing, Level::Stop, &at.field("output"), message).on(role),
        );
    }
    if one.presence_time.is_some() {
        let message = Statement::new("compatibility-presence-runs-out").text("loop", one.label.clone());
        diagnostics.add_finding(
            Finding::new(FindingCode::PresenceRunsOut, Level::Stop, &at.field("presence_time"), message).on(role),
        );
    }
    if one.on_loop_failure == Some(FailureBehaviour::NoDetect) {
        let message = Statement::new("compatibility-fails-to-no-detect").text("loop", one.label.clone());
        diagnostics.add_finding(
            Finding::new(FindingCode::FailsToNoDetect, Level::Stop, &at.field("on_loop_failure"), message).on(role),
        );
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
