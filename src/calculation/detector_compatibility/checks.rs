//! The checks of a channel: each figure against its limit, and each vehicle at each sensitivity step.

use uom::si::electrical_resistance::ohm;
use uom::si::f64::Ratio;
use uom::si::frequency::kilohertz;
use uom::si::inductance::microhenry;
use uom::si::ratio::percent;

use super::report::{Check, Sensitivity, SensitivityStep};
use crate::calculation::input::ResolvedDetector;
use crate::calculation::layout::{DetectorChannel, candidate_steps};
use crate::calculation::report::{Decimals, Statement};
use crate::practice::detectors::{LOOP_TO_LEAD_IN, MIN_TIMES_THRESHOLD, QUALITY_MARGIN, RESISTANCE_LIMIT_OHM};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::round;

/// How a figure stands against its limit, from best to worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CheckVerdict {
    /// Inside over the whole as-built band.
    Suitable,
    /// It depends on how the loop turns out.
    Marginal,
    /// Outside.
    Unsuitable,
}

impl CheckVerdict {
    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::Suitable => "suitable",
            Self::Marginal => "marginal",
            Self::Unsuitable => "unsuitable",
        }
    }

    /// Suitable by the first condition, marginal by the second, else unsuitable.
    fn of(is_inside: bool, may_be_inside: bool) -> Self {
        match (is_inside, may_be_inside) {
            (true, _) => Self::Suitable,
            (false, true) => Self::Marginal,
            (false, false) => Self::Unsuitable,
        }
    }
}

/// A check before it is reported: the figures unrounded.
pub struct CheckResult {
    /// What is checked.
    pub check: &'static str,
    /// The vehicle, for a check of `vehicle`.
    pub vehicle: Option<VehicleClass>,
    /// How it stands.
    pub verdict: CheckVerdict,
    /// The figure.
    pub value: f64,
    limit: f64,
    margin: f64,
    unit: &'static str,
    message: Statement,
    /// What it rests on.
    pub sources: &'static [Source],
}

impl CheckResult {
    /// Whether it is the same check of another design.
    pub fn is_same_check(&self, other: &Self) -> bool {
        self.check == other.check && self.vehicle == other.vehicle
    }

    /// Whether it stands worse than the same check of another channel.
    pub fn is_worse_than(&self, other: &Self) -> bool {
        (self.verdict, -self.margin) > (other.verdict, -other.margin)
    }

    /// The check as reported.
    pub fn to_report(&self, channel: &DetectorChannel) -> Check {
        Check {
            channel: channel.label(),
            check: self.check,
            vehicle: self.vehicle,
            verdict: self.verdict.code(),
            value: round(self.value, 3),
            limit: round(self.limit, 3),
            margin: round(self.margin, 3),
            unit: self.unit,
            message: self.message.clone().into(),
            source_ids: self.sources.to_vec(),
        }
    }

    /// The unit of its figures.
    pub fn unit(&self) -> &'static str {
        self.unit
    }
}

/// The checks of a channel that no vehicle has a part in.
pub fn electrical_checks(channel: &DetectorChannel, detector: &ResolvedDetector) -> Vec<CheckResult> {
    let mut checks = vec![
        inductance(channel, detector),
        quality(channel, detector),
        dc_quality(channel),
        resistance(channel),
        share(channel),
    ];
    checks.extend(frequency(channel, detector));
    checks
}

/// Every check of a channel at a step.
pub fn all_checks(
    channel: &DetectorChannel,
    step: Ratio,
    detector: &ResolvedDetector,
    vehicles: &[VehicleClass],
) -> Vec<CheckResult> {
    let mut checks = electrical_checks(channel, detector);
    checks.extend(vehicle_checks(channel, step, vehicles));
    checks
}

/// The check of each vehicle at a step.
fn vehicle_checks(channel: &DetectorChannel, step: Ratio, vehicles: &[VehicleClass]) -> Vec<CheckResult> {
    let step = step.get::<percent>();
    vehicles.iter().map(|class| vehicle(*class, channel.least_change(*class), step)).collect()
}

fn inductance(channel: &DetectorChannel, detector: &ResolvedDetector) -> CheckResult {
    let (low, high) = (channel.low.get::<microhenry>(), channel.high.get::<microhenry>());
    let (least, most) = (detector.limits.inductance_min_uh, detector.limits.inductance_max_uh);
    let (over, under) = (low - least, most - high);
    let (limit, margin) = if over < under { (least, over) } else { (most, under) };
    let verdict = CheckVerdict::of(margin >= 0.0, high >= least && low <= most);
    CheckResult {
        check: "inductance",
        vehicle: None,
        verdict,
        value: channel.inductance.get::<microhenry>(),
        limit,
        margin,
        unit: "uH",
        message: Statement::new("compatibility-inductance")
            .quantity("as_built_low", low, 1, "uH")
            .quantity("as_built_high", high, 1, "uH")
            .code("verdict", verdict.code())
            .quantity("inductance_min", least, 0, "uH")
            .quantity("inductance_max", most, 0, "uH"),
        sources: &[Source::RosaGrover, Source::NemaEnvelope],
    }
}

fn quality(channel: &DetectorChannel, detector: &ResolvedDetector) -> CheckResult {
    let (value, limit) = (channel.quality_factor, detector.limits.quality_factor_min);
    CheckResult {
        check: "quality_factor",
        vehicle: None,
        verdict: CheckVerdict::of(value >= QUALITY_MARGIN * limit, value >= limit),
        value,
        limit,
        margin: value - limit,
        unit: "ratio",
        message: Statement::new("compatibility-quality-factor")
            .number("quality_factor", value, 1)
            .number("quality_factor_min", limit, 1)
            .number("wanted", QUALITY_MARGIN * limit, 1),
        sources: &[Source::SkinEffect, Source::NemaEnvelope, Source::OwnChoice],
    }
}

/// One agency's acceptance test divides the reactance at 50 kHz by the resistance to direct current.
fn dc_quality(channel: &DetectorChannel) -> CheckResult {
    let (value, limit) = (channel.dc_quality_factor, 5.0);
    CheckResult {
        check: "dc_quality_factor",
        vehicle: None,
        verdict: CheckVerdict::of(value >= limit, false),
        value,
        limit,
        margin: value - limit,
        unit: "ratio",
        message: Statement::new("compatibility-dc-quality-factor")
            .number("dc_quality_factor", value, 1)
            .number("limit", limit, 0),
        sources: &[Source::Everett],
    }
}

fn resistance(channel: &DetectorChannel) -> CheckResult {
    let (value, limit) = (channel.dc_resistance.get::<ohm>(), RESISTANCE_LIMIT_OHM);
    // Stranded wire has up to 5 % more than the solid wire of the tables.
    CheckResult {
        check: "dc_resistance",
        vehicle: None,
        verdict: CheckVerdict::of(1.05 * value <= limit, value <= limit),
        value,
        limit,
        margin: limit - value,
        unit: "ohm",
        message: Statement::new("compatibility-dc-resistance")
            .quantity("dc_resistance", value, 2, "ohm")
            .quantity("limit", limit, 0, "ohm"),
        sources: &[Source::AstmB258, Source::IacsCopper, Source::Everett],
    }
}

fn share(channel: &DetectorChannel) -> CheckResult {
    let value = channel.share.get::<percent>();
    let wanted = 100.0 * LOOP_TO_LEAD_IN / (1.0 + LOOP_TO_LEAD_IN);
    CheckResult {
        check: "lead_in_share",
        vehicle: None,
        verdict: CheckVerdict::of(value >= wanted, value >= 50.0),
        value,
        limit: wanted,
        margin: value - wanted,
        unit: "percent",
        message: Statement::new("compatibility-lead-in-share")
            .percent("lead_in_share", value, 1)
            .percent("wanted", wanted, 1),
        sources: &[Source::CircuitTheory, Source::FhwaHandbook],
    }
}

/// Known only with the capacitance of the unit's tank.
fn frequency(channel: &DetectorChannel, detector: &ResolvedDetector) -> Option<CheckResult> {
    let capacitance = detector.tuning_capacitance?;
    let at = |inductance| DetectorChannel::frequency(inductance, capacitance).get::<kilohertz>();
    let (slow, fast) = (at(channel.high), at(channel.low));
    let (least, most) = (detector.limits.frequency_min_khz, detector.limits.frequency_max_khz);
    let (over, under) = (slow - least, most - fast);
    let (limit, margin) = if over < under { (least, over) } else { (most, under) };
    Some(CheckResult {
        check: "frequency",
        vehicle: None,
        verdict: CheckVerdict::of(margin >= 0.0, fast >= least && slow <= most),
        value: at(channel.inductance),
        limit,
        margin,
        unit: "kHz",
        message: Statement::new("compatibility-frequency")
            .quantity("slow", slow, 1, "kHz")
            .quantity("fast", fast, 1, "kHz")
            .quantity("frequency_min", least, 0, "kHz")
            .quantity("frequency_max", most, 0, "kHz"),
        sources: &[Source::CircuitTheory, Source::NemaEnvelope],
    })
}

fn vehicle(class: VehicleClass, change: Ratio, step: f64) -> CheckResult {
    let value = change.get::<percent>();
    let wanted = MIN_TIMES_THRESHOLD * step;
    CheckResult {
        check: "vehicle",
        vehicle: Some(class),
        verdict: verdict_at_step(change, step),
        value,
        limit: wanted,
        margin: value - wanted,
        unit: "percent",
        message: Statement::new("compatibility-vehicle")
            .member("vehicle", class)
            .percent("change", value, 3)
            .percent("threshold", step, Decimals::All)
            .percent("wanted", wanted, Decimals::AtMost(3)),
        sources: &[Source::EddyCurrentPlate, Source::NemaSensitivity, Source::OwnChoice],
    }
}

/// How a change stands against a sensitivity step, in percent.
pub fn verdict_at_step(change: Ratio, step: f64) -> CheckVerdict {
    let change = change.get::<percent>();
    CheckVerdict::of(change >= MIN_TIMES_THRESHOLD * step, change >= step)
}

/// Every vehicle over every loop of a channel, at each sensitivity step.
pub fn sensitivities(
    channel: &DetectorChannel,
    detector: &ResolvedDetector,
    vehicles: &[VehicleClass],
) -> Vec<Sensitivity> {
    let steps = candidate_steps(detector);
    let at_steps = |change: Ratio| {
        let at_step = |step: &f64| SensitivityStep {
            threshold_percent: round(*step, 3),
            verdict: verdict_at_step(change, *step).code(),
        };
        steps.iter().map(at_step).collect::<Vec<_>>()
    };
    let of_vehicle = |class: &VehicleClass| {
        let over_loops = channel.loops.iter().zip(channel.sightings(*class));
        let sensitivities = over_loops.map(|(over, sighting)| Sensitivity {
            channel: channel.label(),
            r#loop: over.own.label.clone(),
            vehicle: *class,
            change_percent: round(sighting.least.get::<percent>(), 3),
            steps: at_steps(sighting.least),
        });
        sensitivities.collect::<Vec<_>>()
    };
    vehicles.iter().flat_map(of_vehicle).collect()
}
