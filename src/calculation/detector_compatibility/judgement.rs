//! How a channel stands as a whole: its checks at the step to set, and what else a unit would make of it.

use uom::si::f64::Ratio;
use uom::si::inductance::microhenry;

use super::checks::{CheckResult, CheckVerdict, all_checks};
use super::names::{name_channel, name_loop};
use crate::calculation::input::ResolvedDetector;
use crate::calculation::layout::DetectorChannel;
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// A channel at the step that is set.
pub struct ChannelJudgement {
    /// The step.
    pub step: Ratio,
    /// Every check.
    pub checks: Vec<CheckResult>,
    /// Where the unit would let go under a vehicle of several parts.
    pub drop_outs: Vec<DropOut>,
    /// What is wrong with the inductance of loops that share the channel, where the unit does not tune to it.
    pub untunable: Option<FindingCode>,
}

/// A vehicle over a loop under which the unit would let go.
#[derive(Clone, Debug, PartialEq)]
pub struct DropOut {
    /// The label of the loop.
    pub label: String,
    role: Role,
    class: VehicleClass,
}

impl ChannelJudgement {
    /// Judges a channel at a step.
    pub fn new(channel: &DetectorChannel, step: Ratio, detector: &ResolvedDetector, vehicles: &[VehicleClass]) -> Self {
        let checks = all_checks(channel, step, detector, vehicles);
        Self { step, checks, drop_outs: drop_outs(channel, step, vehicles), untunable: untunable(channel, detector) }
    }

    /// Whether nothing is wrong with it.
    pub fn is_suitable(&self) -> bool {
        let are_suitable = self.checks.iter().all(|check| check.verdict == CheckVerdict::Suitable);
        are_suitable && self.drop_outs.is_empty() && self.untunable.is_none()
    }

    /// States what the checks do not say.
    pub fn state(&self, channel: &DetectorChannel, detector: &ResolvedDetector, diagnostics: &mut Diagnostics) {
        if let Some(code) = self.untunable {
            state_untunable(code, channel, detector, diagnostics);
        }
        for drop_out in &self.drop_outs {
            let level = if channel.holds_the_gate() { Level::Stop } else { Level::Warning };
            let Some(one) = channel.loops.iter().find(|one| one.own.label == drop_out.label) else { continue };
            let message = name_loop(Statement::new("compatibility-drops-out"), &one.own);
            let message = message.member("vehicle", drop_out.class);
            diagnostics.add_finding(
                Finding::new(FindingCode::DropsOut, level, &FieldPath::BODY.field("vehicles"), message)
                    .on(Some(drop_out.role))
                    .send(&FieldPath::BODY.field("detector").field("threshold_steps_percent")),
            );
        }
    }
}

/// Where loops that share a channel come to what the unit does not tune to, though each may suit it alone.
pub fn untunable(channel: &DetectorChannel, detector: &ResolvedDetector) -> Option<FindingCode> {
    let (low, high) = (channel.low.get::<microhenry>(), channel.high.get::<microhenry>());
    match channel.loops.len() {
        0 | 1 => None,
        _ if high < detector.limits.inductance_min_uh => Some(FindingCode::BelowEnvelope),
        _ if low > detector.limits.inductance_max_uh => Some(FindingCode::AboveEnvelope),
        _ => None,
    }
}

fn state_untunable(
    code: FindingCode,
    channel: &DetectorChannel,
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) {
    let (low, high) = (channel.low.get::<microhenry>(), channel.high.get::<microhenry>());
    let (least, most) = (detector.limits.inductance_min_uh, detector.limits.inductance_max_uh);
    let message = name_channel(Statement::new("compatibility-channel-untunable"), channel)
        .quantity("as_built_low", low, 0, "uH")
        .quantity("as_built_high", high, 0, "uH")
        .quantity("inductance_min", least, 0, "uH")
        .quantity("inductance_max", most, 0, "uH");
    let wiring = FieldPath::BODY.field("wiring");
    diagnostics.add_finding(
        Finding::new(code, Level::Stop, &wiring, message)
            .figure("as_built_low", low, "uH")
            .figure("as_built_high", high, "uH")
            .figure("inductance_min", least, "uH")
            .figure("inductance_max", most, "uH")
            .send(&wiring),
    );
}

/// Where the unit would let go under a vehicle of several parts.
fn drop_outs(channel: &DetectorChannel, step: Ratio, vehicles: &[VehicleClass]) -> Vec<DropOut> {
    let under = |class: &VehicleClass| {
        let seen = channel.loops.iter().zip(channel.sightings(*class));
        let missed = seen.filter(|(_, sighting)| sighting.drops_out(step));
        let drop_out = |(one, _): (&crate::calculation::layout::MeasuredLoop, _)| DropOut {
            label: one.own.label.clone(),
            role: one.own.role,
            class: *class,
        };
        missed.map(drop_out).collect::<Vec<_>>()
    };
    vehicles.iter().flat_map(under).collect()
}
