//! What the electrical figures of a loop mean: the findings.

use uom::si::electrical_resistance::ohm;
use uom::si::frequency::kilohertz;
use uom::si::inductance::microhenry;
use uom::si::length::inch;
use uom::si::ratio::{percent, ratio};

use super::electrical::{ElectricalFigures, MeasurementConditions};
use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::detectors::{LOOP_TO_LEAD_IN, Limits, RESISTANCE_LIMIT_OHM, RESONANCE_SHARE};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::quantity::UnitSystem;

/// Which loop is judged, where its parts stand in the request, and who reads the findings.
#[derive(Clone, Copy)]
pub struct JudgementContext<'a> {
    /// The loop.
    pub coil: FieldPath<'a>,
    /// The lead-in.
    pub lead_in: FieldPath<'a>,
    /// The detector unit, where the request has one; else the loop.
    pub unit: FieldPath<'a>,
    /// The system of the reader.
    pub system: UnitSystem,
    /// The role of the loop, where it has one.
    pub subject: Option<Role>,
}

/// States what the figures mean against what units tune to.
pub fn judge(
    figures: &ElectricalFigures,
    conditions: &MeasurementConditions,
    limits: &Limits,
    context: &JudgementContext<'_>,
    diagnostics: &mut Diagnostics,
) {
    judge_lead_in(figures, context, diagnostics);
    judge_inductance(figures, limits, context, diagnostics);
    judge_losses(figures, limits, context, diagnostics);
    judge_resonance(figures, conditions, context, diagnostics);
    judge_steel(figures, conditions, context, diagnostics);
}

fn judge_lead_in(figures: &ElectricalFigures, context: &JudgementContext<'_>, diagnostics: &mut Diagnostics) {
    let (coil, lead_in) = (figures.loop_inductance.get::<microhenry>(), figures.lead_in_inductance.get::<microhenry>());
    if lead_in * LOOP_TO_LEAD_IN <= coil {
        return;
    }
    let share = figures.loop_share.get::<percent>();
    let message = Statement::new("characteristics-lead-in-outweighs-loop")
        .code("weight", if lead_in > coil { "more" } else { "over_half" })
        .percent("loop_share", share, 0);
    diagnostics.add_finding(
        Finding::new(FindingCode::LeadInOutweighsLoop, Level::Warning, &context.lead_in, message)
            .on(context.subject)
            .figure("loop_inductance", coil, "uH")
            .figure("lead_in_inductance", lead_in, "uH")
            .figure("loop_share", share, "percent"),
    );
}

fn judge_inductance(
    figures: &ElectricalFigures,
    limits: &Limits,
    context: &JudgementContext<'_>,
    diagnostics: &mut Diagnostics,
) {
    let (low, high) = (figures.as_built_low.get::<microhenry>(), figures.as_built_high.get::<microhenry>());
    let Limits { inductance_min_uh: least, inductance_max_uh: most, .. } = *limits;
    let with_band = |statement: Statement, level: Level| {
        statement
            .quantity("as_built_low", low, 0, "uH")
            .quantity("as_built_high", high, 0, "uH")
            .code("outcome", if level == Level::Stop { "untunable" } else { "doubtful" })
    };
    if low < least {
        let level = if high < least { Level::Stop } else { Level::Warning };
        let message = with_band(Statement::new("characteristics-below-envelope"), level);
        let message = message.quantity("inductance_min", least, 0, "uH");
        diagnostics.add_finding(
            Finding::new(FindingCode::BelowEnvelope, level, &context.unit, message)
                .on(context.subject)
                .figure("as_built_low", low, "uH")
                .figure("inductance_min", least, "uH"),
        );
    }
    if high > most {
        let level = if low > most { Level::Stop } else { Level::Warning };
        let message = with_band(Statement::new("characteristics-above-envelope"), level);
        let message = message.quantity("inductance_max", most, 0, "uH");
        diagnostics.add_finding(
            Finding::new(FindingCode::AboveEnvelope, level, &context.unit, message)
                .on(context.subject)
                .figure("as_built_high", high, "uH")
                .figure("inductance_max", most, "uH"),
        );
    }
}

fn judge_losses(
    figures: &ElectricalFigures,
    limits: &Limits,
    context: &JudgementContext<'_>,
    diagnostics: &mut Diagnostics,
) {
    let resistance = figures.dc_resistance.get::<ohm>();
    if resistance > RESISTANCE_LIMIT_OHM {
        let message = Statement::new("characteristics-high-resistance")
            .quantity("dc_resistance", resistance, 1, "ohm")
            .quantity("limit", RESISTANCE_LIMIT_OHM, 0, "ohm");
        diagnostics.add_finding(
            Finding::new(FindingCode::HighResistance, Level::Warning, &context.lead_in, message)
                .on(context.subject)
                .figure("dc_resistance", resistance, "ohm")
                .figure("limit", RESISTANCE_LIMIT_OHM, "ohm"),
        );
    }
    if figures.quality_factor < limits.quality_factor_min {
        let message = Statement::new("characteristics-low-quality")
            .number("quality_factor", figures.quality_factor, 1)
            .number("quality_factor_min", limits.quality_factor_min, 1);
        diagnostics.add_finding(
            Finding::new(FindingCode::LowQuality, Level::Stop, &context.unit, message)
                .on(context.subject)
                .figure("quality_factor", figures.quality_factor, "ratio")
                .figure("quality_factor_min", limits.quality_factor_min, "ratio"),
        );
    }
}

fn judge_resonance(
    figures: &ElectricalFigures,
    conditions: &MeasurementConditions,
    context: &JudgementContext<'_>,
    diagnostics: &mut Diagnostics,
) {
    let Some(resonance) = figures.self_resonance.map(|frequency| frequency.get::<kilohertz>()) else { return };
    let working = conditions.frequency.get::<kilohertz>();
    if working > RESONANCE_SHARE * resonance {
        let message = Statement::new("characteristics-near-self-resonance")
            .quantity("self_resonance", resonance, 0, "kHz")
            .quantity("frequency", working, 0, "kHz");
        diagnostics.add_finding(
            Finding::new(FindingCode::NearSelfResonance, Level::Warning, &context.coil, message)
                .on(context.subject)
                .figure("self_resonance", resonance, "kHz")
                .figure("frequency", working, "kHz"),
        );
    }
}

fn judge_steel(
    figures: &ElectricalFigures,
    conditions: &MeasurementConditions,
    context: &JudgementContext<'_>,
    diagnostics: &mut Diagnostics,
) {
    let Some(depth) = conditions.steel_below else { return };
    let drop = 100.0 * (1.0 - (figures.loop_inductance_over_steel / figures.loop_inductance).get::<ratio>());
    let message = Statement::new("characteristics-steel-below")
        .detail_length("depth_below_loop", depth, context.system)
        .percent("inductance_drop_bound", drop, 0);
    let level = if drop > 25.0 { Level::Warning } else { Level::Note };
    diagnostics.add_finding(
        Finding::new(FindingCode::SteelBelow, level, &context.coil, message)
            .on(context.subject)
            .figure("inductance_drop_bound", drop, "percent")
            .figure("depth_below_loop", depth.get::<inch>(), "inch"),
    );
}
