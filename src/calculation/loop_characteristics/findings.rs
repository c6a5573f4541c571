//! What the electrical figures of a loop mean: the findings.

use uom::si::electrical_resistance::ohm;
use uom::si::frequency::kilohertz;
use uom::si::inductance::microhenry;
use uom::si::length::inch;
use uom::si::ratio::{percent, ratio};

use super::electrical::{ElectricalFigures, MeasurementConditions};
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::detectors::{LOOP_TO_LEAD_IN, Limits, RESISTANCE_LIMIT_OHM, RESONANCE_SHARE};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_detail_length;

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
    let weight =
        if lead_in > coil { "has more inductance than the loop" } else { "has over half the loop's inductance" };
    let message = format!(
        "The lead-in {weight}: only {share:.0} % of a change at the loop reaches the unit. Add a turn, shorten the \
         lead-in, or set a finer sensitivity."
    );
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
    let band = format!("Finished, it will measure {low:.0} to {high:.0} µH at the unit");
    if low < least {
        let (level, outcome) =
            if high < least { (Level::Stop, "no such unit tunes to it") } else { (Level::Warning, "it may not tune") };
        let message = format!("{band}, and a unit tunes from {least:.0} µH: {outcome}. Wind one turn more.");
        diagnostics.add_finding(
            Finding::new(FindingCode::BelowEnvelope, level, &context.unit, message)
                .on(context.subject)
                .figure("as_built_low", low, "uH")
                .figure("inductance_min", least, "uH"),
        );
    }
    if high > most {
        let (level, outcome) =
            if low > most { (Level::Stop, "no such unit tunes to it") } else { (Level::Warning, "it may not tune") };
        let message = format!(
            "{band}, and a unit tunes up to {most:.0} µH: {outcome}. Wind one turn less or shorten the lead-in."
        );
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
        let message = format!(
            "Loop and lead-in have {resistance:.1} ohm; one agency accepts at most {RESISTANCE_LIMIT_OHM:.0}. Take a \
             heavier or shorter lead-in."
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::HighResistance, Level::Warning, &context.lead_in, message)
                .on(context.subject)
                .figure("dc_resistance", resistance, "ohm")
                .figure("limit", RESISTANCE_LIMIT_OHM, "ohm"),
        );
    }
    if figures.quality_factor < limits.quality_factor_min {
        let message = format!(
            "The quality factor is at best {:.1}, and the unit needs {:.1}. Take heavier wire or a shorter lead-in.",
            figures.quality_factor, limits.quality_factor_min
        );
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
        let message = format!(
            "With that capacitance the loop resonates by itself at {resonance:.0} kHz. At {working:.0} kHz a meter or unit \
             sees more inductance than there is. Use a lower frequency or fewer turns."
        );
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
    let message = format!(
        "Steel {} below takes at most {drop:.0} % of the loop's inductance, as if it were a solid sheet, and lowers the \
         height at which metal is seen. Mesh takes less. Lay the loop as high above the steel as the cover allows.",
        format_detail_length(depth, context.system)
    );
    let level = if drop > 25.0 { Level::Warning } else { Level::Note };
    diagnostics.add_finding(
        Finding::new(FindingCode::SteelBelow, level, &context.coil, message)
            .on(context.subject)
            .figure("inductance_drop_bound", drop, "percent")
            .figure("depth_below_loop", depth.get::<inch>(), "inch"),
    );
}
