//! What to measure and to try before the site is left.

use super::report::{Commissioning, ExpectedReading, PlanTrial};
use super::steps::format_steps;
use crate::calculation::layout::JobLayout;
use crate::calculation::loop_sizing::{LoopSizingReport, SizedLoop};
use crate::physics::conductor;
use crate::practice::detectors::RESISTANCE_LIMIT_OHM;
use crate::practice::faults::{INSULATION_BANDS, USUAL_TEST_VOLTAGE_V};
use crate::practice::job_steps::Trial;
use crate::practice::site::{Barrier, Construction, SiteHazard};
use crate::practice::sources::Source;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// The coldest and the warmest wire for which the expected resistance is given, °C. A choice made here.
const WIRE_CELSIUS: (f64, f64) = (-20.0, 40.0);
/// How far the resistance may stray from the computed one by strands, splices and the meter, as a share. A choice made here.
const RESISTANCE_TOLERANCE: f64 = 0.05;

/// The readings and trials of the plan. `barrier` is the one of the opening.
pub fn plan(report: &LoopSizingReport, layout: &JobLayout, barrier: Barrier, hazards: &[SiteHazard]) -> Commissioning {
    let readings = report.loops.iter().flat_map(|sized| readings(sized, report)).collect();
    let holds = layout.loops.iter().any(|laid| laid.role.holds_the_gate());
    let has_gate = barrier != Barrier::None;
    let is_tried = |trial: Trial| match trial {
        Trial::CycleGate | Trial::ProtectiveDevices => has_gate,
        Trial::PowerFail => has_gate && holds,
        Trial::NextLane => hazards.contains(&SiteHazard::AdjacentTraffic),
        Trial::HighestVehicle => report.inputs.vehicles.len() > 1,
        Trial::TuneEmpty | Trial::SmallestVehicle => true,
    };
    let trials =
        Trial::ALL.iter().copied().filter(|trial| is_tried(*trial)).map(|trial| plan_trial(trial, report, layout));
    Commissioning { readings, trials: trials.collect() }
}

fn plan_trial(trial: Trial, report: &LoopSizingReport, layout: &JobLayout) -> PlanTrial {
    let vehicles: Vec<_> = report.inputs.vehicles.iter().map(|class| class.code().replace('_', " ")).collect();
    let of_this_job = match trial {
        Trial::SmallestVehicle | Trial::HighestVehicle => format!(" Here: {}.", vehicles.join(", ")),
        Trial::TuneEmpty => format!(" Set to switch at {}.", format_steps(layout)),
        Trial::CycleGate | Trial::NextLane | Trial::PowerFail | Trial::ProtectiveDevices => String::new(),
    };
    PlanTrial {
        trial,
        label: trial.label(),
        message: format!("{}{of_this_job}", trial.description()),
        cautions: trial.cautions().to_vec(),
    }
}

fn readings(sized: &SizedLoop, report: &LoopSizingReport) -> Vec<ExpectedReading> {
    let figures = &sized.electrical;
    let stages = match sized.construction {
        Construction::PreformedDirectBurial => vec!["before_covering", "after_covering"],
        Construction::HandWound | Construction::PreformedSawCut => {
            vec!["after_winding", "before_sealing", "after_sealing"]
        }
    };
    let reading = |reading, unit, message: String, source_ids: Vec<Source>| ExpectedReading {
        label: sized.role.code().to_owned(),
        mark: sized.mark,
        reading,
        unit,
        expected: None,
        low: None,
        high: None,
        at_least: None,
        at_most: None,
        stages: stages.clone(),
        message,
        source_ids,
    };
    let at_20 = conductor::copper_resistivity(20.0);
    let at = |celsius: f64| figures.dc_resistance_ohm * conductor::copper_resistivity(celsius) / at_20;
    let unit = &report.inputs.detector;
    let best = &INSULATION_BANDS[0];
    let accepted = &INSULATION_BANDS[1];
    vec![
        ExpectedReading {
            expected: Some(round(figures.dc_resistance_ohm, 3)),
            low: Some(round(at(WIRE_CELSIUS.0) * (1.0 - RESISTANCE_TOLERANCE), 3)),
            high: Some(round(at(WIRE_CELSIUS.1) * (1.0 + RESISTANCE_TOLERANCE), 3)),
            at_most: Some(RESISTANCE_LIMIT_OHM),
            ..reading(
                "resistance",
                "ohm",
                "At 20 °C (68 °F); the band is that of wire between -20 and 40 °C. More is a poor splice, open is a broken wire."
                    .to_owned(),
                vec![Source::IacsCopper, Source::Everett, Source::OwnChoice],
            )
        },
        ExpectedReading {
            expected: Some(round(figures.terminal_inductance_uh, 3)),
            low: Some(round(figures.as_built_low_uh, 3)),
            high: Some(round(figures.as_built_high_uh, 3)),
            at_least: Some(round(unit.inductance_min_uh, 3)),
            at_most: Some(round(unit.inductance_max_uh, 3)),
            ..reading(
                "inductance",
                "uH",
                "With the gate closed and no vehicle near. Far below the band: a shorted turn, a turn too few, or steel; the limits are \
                 what the unit tunes to."
                    .to_owned(),
                vec![Source::Grover, Source::OwnChoice],
            )
        },
        ExpectedReading {
            expected: Some(round(figures.quality_factor, 3)),
            high: Some(round(figures.quality_factor, 3)),
            at_least: Some(round(unit.quality_factor_min, 3)),
            ..reading(
                "quality_factor",
                "ratio",
                "At 50 kHz; computed without the losses of pavement and steel, so a meter shows less.".to_owned(),
                vec![Source::SkinEffect, Source::NemaEnvelope],
            )
        },
        ExpectedReading {
            at_least: Some(accepted.from_megohm),
            ..reading(
                "insulation",
                "megohm",
                format!(
                    "To earth at {USUAL_TEST_VOLTAGE_V} V, unit and arresters disconnected, discharged afterwards. From {} megohm it {}; \
                     from {} megohm it {}.",
                    best.from_megohm, best.meaning, accepted.from_megohm, accepted.meaning
                ),
                [best.sources, accepted.sources].concat(),
            )
        },
    ]
}
