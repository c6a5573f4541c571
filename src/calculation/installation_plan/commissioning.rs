//! What to measure and to try before the site is left.

use super::report::{Commissioning, ExpectedReading, PlanTrial};
use super::steps::step_phrases;
use crate::calculation::layout::JobLayout;
use crate::calculation::loop_sizing::{LoopSizingReport, SizedLoop};
use crate::calculation::report::{Decimals, ListJoin, Message, Statement};
use crate::physics::conductor;
use crate::practice::detectors::RESISTANCE_LIMIT_OHM;
use crate::practice::job_steps::Trial;
use crate::practice::meter_readings::{INSULATION_BANDS, InsulationBand, USUAL_TEST_VOLTAGE_V};
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
    let what = Statement::new("plan-trial").member("trial", trial);
    let message = match trial {
        Trial::SmallestVehicle | Trial::HighestVehicle => {
            what.followed_by(Statement::new("plan-trial-vehicles").members("vehicles", &report.inputs.vehicles))
        }
        Trial::TuneEmpty => {
            what.followed_by(Statement::new("plan-trial-step").phrases("steps", step_phrases(layout), ListJoin::Comma))
        }
        Trial::CycleGate | Trial::NextLane | Trial::PowerFail | Trial::ProtectiveDevices => what,
    };
    PlanTrial { trial, label: Message::label_of(trial), message: message.into(), cautions: trial.cautions().to_vec() }
}

fn readings(sized: &SizedLoop, report: &LoopSizingReport) -> Vec<ExpectedReading> {
    let figures = &sized.electrical;
    let stages = match sized.construction {
        Construction::PreformedDirectBurial => vec!["before_covering", "after_covering"],
        Construction::HandWound | Construction::PreformedSawCut => {
            vec!["after_winding", "before_sealing", "after_sealing"]
        }
    };
    let reading = |reading, unit, message: Statement, source_ids: Vec<Source>| ExpectedReading {
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
        message: message.into(),
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
                Statement::new("plan-reading-resistance"),
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
                Statement::new("plan-reading-inductance"),
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
                Statement::new("plan-reading-quality-factor"),
                vec![Source::SkinEffect, Source::NemaEnvelope],
            )
        },
        ExpectedReading {
            at_least: Some(accepted.from_megohm),
            ..reading(
                "insulation",
                "megohm",
                Statement::new("plan-reading-insulation")
                    .quantity("voltage", USUAL_TEST_VOLTAGE_V, 0, "V")
                    .quantity("best", best.from_megohm, Decimals::All, "megohm")
                    .phrase("best_meaning", meaning(best))
                    .quantity("accepted", accepted.from_megohm, Decimals::All, "megohm")
                    .phrase("accepted_meaning", meaning(accepted)),
                [best.sources, accepted.sources].concat(),
            )
        },
    ]
}

/// What a band of insulation means, as the end of a sentence.
fn meaning(band: &InsulationBand) -> Statement {
    Statement::new("practice-insulation-band").code("insulation_band", band.code)
}
