//! Whether the unit tunes to a loop that is there, and which of its limits decides.

use std::f64::consts::TAU;

use uom::si::capacitance::farad;
use uom::si::frequency::kilohertz;

use super::candidates::{TurnCandidates, at_terminals};
use super::report::ExistingLoopTuning;
use super::request::ResolvedExistingLoop;
use crate::calculation::fault_finding::MeterKind;
use crate::calculation::report::{Decimals, Statement};
use crate::physics::circuit;
use crate::practice::detectors::QUALITY_MARGIN;
use crate::practice::existing_loops::{TUNING_ALLOWANCE, TuningFit};
use crate::practice::meter_readings::ReadingPlace;
use crate::quantity::output::round;

/// How what is there stands to a range that the unit takes.
#[derive(Clone, Copy, Debug, PartialEq)]
enum RangeFit {
    Inside,
    /// Across an end of it, or not known.
    AtItsEdge,
    Outside,
}

impl RangeFit {
    /// Of what lies between two bounds in what lies between two others.
    fn of((low, high): (f64, f64), (least, most): (f64, f64)) -> Self {
        if high < least || low > most {
            Self::Outside
        } else if low >= least && high <= most {
            Self::Inside
        } else {
            Self::AtItsEdge
        }
    }
}

/// Whether a unit tunes to a loop, and by which of its limits.
pub struct TuningJudgement {
    /// What is answered.
    pub report: ExistingLoopTuning,
    inductance: RangeFit,
    quality: RangeFit,
    frequency: RangeFit,
    /// Where it would run with the tank that was told, kHz.
    runs_between: Option<(f64, f64)>,
}

impl TuningJudgement {
    /// Judges what was measured, or what the candidates would show; of an open circuit inductance was not measured.
    pub fn new(resolved: &ResolvedExistingLoop, candidates: &TurnCandidates, is_open: bool) -> Self {
        let limits = &resolved.detector.limits;
        let measured = resolved.readings.number(MeterKind::Inductance).filter(|_| !is_open);
        let (low, high) = if let Some(inductance) = measured {
            let there = at_terminals(resolved, inductance);
            ((1.0 - TUNING_ALLOWANCE) * there, (1.0 + TUNING_ALLOWANCE) * there)
        } else {
            let (low, high) = candidates.inductance_range();
            (at_terminals(resolved, low), at_terminals(resolved, high))
        };
        let runs_at = |inductance: f64| {
            let tank = resolved.detector.tuning_capacitance?;
            Some(circuit::resonance(inductance * 1e-6, tank.get::<farad>()) / 1e3)
        };
        let runs_between = runs_at(high).zip(runs_at(low));
        let quality = quality_at_terminals(resolved, measured, runs_between.map(|(lowest, _)| lowest));
        // A quality factor that was read is one; that of resistance to direct current is a bound, and wants its margin.
        let needed = limits.quality_factor_min;
        let margin = if resolved.readings.number(MeterKind::Quality).is_some() {
            1.0 + TUNING_ALLOWANCE
        } else {
            QUALITY_MARGIN
        };
        let inductance = RangeFit::of((low, high), (limits.inductance_min_uh, limits.inductance_max_uh));
        let frequencies = (limits.frequency_min_khz, limits.frequency_max_khz);
        let frequency = runs_between.map_or(RangeFit::Inside, |there| RangeFit::of(there, frequencies));
        let quality_fit = match quality {
            Some(quality) if quality < needed => RangeFit::Outside,
            Some(quality) if quality >= margin * needed => RangeFit::Inside,
            _ => RangeFit::AtItsEdge,
        };
        let all = [inductance, quality_fit, frequency];
        let fit = if all.contains(&RangeFit::Outside) {
            TuningFit::DoesNotTune
        } else if measured.is_some() && all == [RangeFit::Inside; 3] {
            TuningFit::Tunes
        } else {
            TuningFit::Marginal
        };
        let report = ExistingLoopTuning {
            fit,
            inductance_low_uh: round(low, 2),
            inductance_high_uh: round(high, 2),
            quality_factor: quality.map(|quality| round(quality, 2)),
        };
        Self { report, inductance, quality: quality_fit, frequency, runs_between }
    }

    /// Whether the quality factor is all that keeps the unit from tuning.
    pub fn fails_by_quality_alone(&self) -> bool {
        self.quality == RangeFit::Outside && self.inductance != RangeFit::Outside && self.frequency != RangeFit::Outside
    }

    /// Whether the quality factor is known, and under what is wanted with its margin.
    pub fn is_lossy(&self, resolved: &ResolvedExistingLoop) -> bool {
        let needed = QUALITY_MARGIN * resolved.detector.limits.quality_factor_min;
        self.report.quality_factor.is_some_and(|quality| quality < needed)
    }

    /// The limits that decide, in words: those that are not kept, else those that are near.
    pub fn limits_said(&self, resolved: &ResolvedExistingLoop) -> Vec<Statement> {
        let limits = &resolved.detector.limits;
        let decides = if self.report.fit == TuningFit::DoesNotTune { RangeFit::Outside } else { RangeFit::AtItsEdge };
        let mut said = Vec::new();
        if self.inductance == decides {
            said.push(
                Statement::new("existing-tunes-inductance")
                    .quantity("inductance_low", self.report.inductance_low_uh, 0, "uH")
                    .quantity("inductance_high", self.report.inductance_high_uh, 0, "uH")
                    .quantity("inductance_min", limits.inductance_min_uh, 0, "uH")
                    .quantity("inductance_max", limits.inductance_max_uh, 0, "uH"),
            );
        }
        if let Some(quality) = self.report.quality_factor.filter(|_| self.quality == decides) {
            said.push(Statement::new("existing-tunes-quality").number("quality", quality, Decimals::AtMost(1)).number(
                "quality_factor_min",
                limits.quality_factor_min,
                Decimals::AtMost(1),
            ));
        }
        if let Some((low, high)) = self.runs_between.filter(|_| self.frequency == decides) {
            said.push(
                Statement::new("existing-tunes-frequency")
                    .quantity("frequency_low", low, 0, "kHz")
                    .quantity("frequency_high", high, 0, "kHz")
                    .quantity("frequency_min", limits.frequency_min_khz, 0, "kHz")
                    .quantity("frequency_max", limits.frequency_max_khz, 0, "kHz"),
            );
        }
        if said.is_empty() {
            said.push(Statement::new("existing-tunes-unmeasured"));
        }
        said
    }
}

/// The quality factor at the terminals and at the unit's own frequency: that of its tank, else the meter's where the unit runs there, else
/// the lowest at which it runs, where losses weigh most. From the one that was read, which gives a loss in ohm, else from resistance to
/// direct current, a bound.
fn quality_at_terminals(
    resolved: &ResolvedExistingLoop,
    measured: Option<f64>,
    tank_frequency: Option<f64>,
) -> Option<f64> {
    let (readings, limits) = (&resolved.readings, &resolved.detector.limits);
    let inductance = measured?;
    let runs_at = limits.frequency_min_khz..=limits.frequency_max_khz;
    let of_meter = readings.conditions.frequency.get::<kilohertz>();
    let of_unit = match tank_frequency {
        Some(frequency) => frequency.clamp(*runs_at.start(), *runs_at.end()),
        None if runs_at.contains(&of_meter) => of_meter,
        None => *runs_at.start(),
    };
    let reactance = |khz: f64, microhenries: f64| TAU * khz * 1e3 * microhenries * 1e-6;
    let by_quality = readings.number(MeterKind::Quality).map(|read| reactance(of_meter, inductance) / read.max(1e-3));
    let ohms = by_quality.or_else(|| readings.number(MeterKind::Resistance))?;
    let lead_in = match readings.conditions.place {
        ReadingPlace::DetectorEnd => 0.0,
        ReadingPlace::LoopEnd => resolved.lead_in_ohms(),
    };
    Some(reactance(of_unit, at_terminals(resolved, inductance)) / (ohms + lead_in).max(1e-3))
}
