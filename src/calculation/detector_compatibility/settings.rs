//! How to set each channel, and what must not be set.

use uom::si::frequency::kilohertz;

use super::channel::{Channel, Member};
use super::report::ChannelSettings;
use crate::calculation::input::ResolvedDetector;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::detectors::{FailureBehaviour, OutputMode};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// The settings of a channel, and a stop where what was asked for would let a gate close on a vehicle.
pub fn set(
    channel: &Channel,
    first: usize,
    step: f64,
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> ChannelSettings {
    let holds = channel.holds_the_gate();
    let role = gravest(channel);
    for (index, member) in channel.members.iter().enumerate() {
        judge(member, holds, &FieldPath::BODY.field("loops").item(first + index), diagnostics);
    }
    if holds && channel.members.iter().any(|member| !member.role.holds_the_gate()) {
        let message = format!(
            "{} share one channel, and only some of them hold the gate: the operator cannot tell them apart. Give the loops that hold \
             it a channel of their own.",
            channel.label()
        );
        diagnostics.add_finding(Finding::new(
            FindingCode::MixedRoles,
            Level::Stop,
            &FieldPath::BODY.field("wiring"),
            message,
        ));
    }
    let asked = |of: fn(&Member) -> bool| channel.members.iter().any(of);
    let output =
        if asked(|member| member.output == Some(OutputMode::Pulse)) { OutputMode::Pulse } else { OutputMode::Presence };
    let presence_time =
        channel.members.iter().filter_map(|member| member.presence_time).reduce(uom::si::f64::Time::min);
    let on_failure = if asked(|member| member.on_loop_failure == Some(FailureBehaviour::NoDetect)) {
        FailureBehaviour::NoDetect
    } else if asked(|member| member.on_loop_failure == Some(FailureBehaviour::Detect)) || holds {
        FailureBehaviour::Detect
    } else {
        FailureBehaviour::NoDetect
    };
    ChannelSettings {
        channel: channel.label(),
        threshold_percent: round(step, 3),
        frequency_khz: detector
            .tuning_capacitance
            .map(|capacitance| round(Channel::frequency(channel.inductance, capacitance).get::<kilohertz>(), 3)),
        frequency_setting:
            "Start at the highest that the unit offers; give neighbours different settings, and change when it \
                            misses or calls for no reason."
                .to_owned(),
        output: output.code(),
        presence_time: presence_time.map(Into::into),
        on_loop_failure: on_failure.code(),
        failure_consequence: consequence(role, on_failure).to_owned(),
        operator_input: input(role),
    }
}

/// Of the roles on a channel the one that holds the gate, if any.
fn gravest(channel: &Channel) -> Role {
    let roles = || channel.members.iter().map(|member| member.role);
    roles().find(|role| role.holds_the_gate()).or(roles().next()).unwrap_or(Role::Presence)
}

/// A loop on a channel that holds a gate is judged as one that does, whatever its own role.
fn judge(member: &Member, holds: bool, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
    if !holds {
        return;
    }
    let role = Some(member.role.code());
    if member.output == Some(OutputMode::Pulse) {
        let message = format!(
            "{} holds a gate and is set to pulse: after the pulse the gate closes on what still stands there. Set it to presence.",
            member.label
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::PulseHoldsNothing, Level::Stop, &at.field("output"), message).on(role),
        );
    }
    if member.presence_time.is_some() {
        let message = format!(
            "{} holds a gate and lets go of a vehicle that stays. Set its presence time to unlimited: leave presence_time out.",
            member.label
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::PresenceRunsOut, Level::Stop, &at.field("presence_time"), message).on(role),
        );
    }
    if member.on_loop_failure == Some(FailureBehaviour::NoDetect) {
        let message = format!(
            "{} holds a gate and fails to no detect: with a broken loop the gate closes unguarded. Set it to detect, so that the \
             gate stays open and somebody calls.",
            member.label
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::FailsToNoDetect, Level::Stop, &at.field("on_loop_failure"), message).on(role),
        );
    }
}

/// What the gate does when the loop fails. Common practice.
fn consequence(role: Role, behaviour: FailureBehaviour) -> &'static str {
    match (behaviour, role) {
        (FailureBehaviour::Detect, role) if role.holds_the_gate() => "The gate stays open until the loop is repaired.",
        (FailureBehaviour::Detect, Role::Exit) => "The gate opens and stays open: whoever comes may drive in.",
        (FailureBehaviour::Detect, Role::Arming) => "The post stays awake and may issue to nobody.",
        (FailureBehaviour::Detect, _) => "A vehicle is reported where none is.",
        (FailureBehaviour::NoDetect, role) if role.holds_the_gate() => "The gate closes unguarded by this loop.",
        (FailureBehaviour::NoDetect, Role::Exit) => {
            "The gate no longer opens for those who leave; give them another way to open it."
        }
        (FailureBehaviour::NoDetect, Role::Arming) => "The post stays asleep until somebody presses.",
        (FailureBehaviour::NoDetect, _) => "A vehicle is not reported.",
    }
}

/// The operator's input, by what it does. Common practice.
fn input(role: Role) -> &'static str {
    match role {
        Role::Exit => "open",
        Role::ObstructionOutside | Role::ObstructionInside => "hold_or_reverse",
        Role::BetweenLeaves => "hold_while_still",
        Role::Closing => "close",
        Role::Arming | Role::Presence => "presence",
    }
}
