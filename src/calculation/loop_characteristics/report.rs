//! What [`super`] answers.

use serde::Serialize;
use uom::si::electrical_resistance::ohm;
use uom::si::inductance::microhenry;
use uom::si::ratio::percent;
use utoipa::ToSchema;

use super::electrical::ElectricalFigures;
use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop};
use crate::calculation::report::{Assumed, Basis, Caution, Finding, has_messages};
use crate::quantity::output::{DetailLength, PlanLength, TemperatureValue, round};

/// Defines the electrical figures of a loop, and whatever else a report adds to them, as one flat object: composition by
/// `serde(flatten)` would put a union into the published description.
macro_rules! with_electrical_figures {
    ($(#[doc = $doc:literal])+ $name:ident { $($(#[$attribute:meta])+ $extra:ident: $type:ty,)* }) => {
        $(#[doc = $doc])+
        #[derive(Clone, Debug, Serialize, ToSchema)]
        pub struct $name {
            /// Inductance of the loop alone, in air at the working frequency, µH, 2 decimals.
            pub loop_inductance_uh: f64,
            /// Inductance of the lead-in, µH, 2 decimals.
            pub lead_in_inductance_uh: f64,
            /// Inductance at the unit's terminals, µH, 2 decimals.
            pub terminal_inductance_uh: f64,
            /// Least inductance at the terminals that an installed loop should show, µH, 2 decimals; with steel below, as
            /// if the steel were a solid sheet.
            pub as_built_low_uh: f64,
            /// Greatest inductance at the terminals that an installed loop should show, µH, 2 decimals.
            pub as_built_high_uh: f64,
            /// The installer's rule P·(N² + N)/4 for the loop alone, P in feet, µH, 2 decimals: to recognise, not to rely on.
            pub quick_rule_uh: f64,
            /// Resistance at the terminals to direct current at the asked temperature, ohm, 3 decimals.
            pub dc_resistance_ohm: f64,
            /// The same at the working frequency, skin effect included, ohm, 3 decimals.
            pub ac_resistance_ohm: f64,
            /// Quality factor at the terminals, 2 decimals: an upper bound, for pavement and steel add loss.
            pub quality_factor: f64,
            /// What the lead-in leaves of a change at the loop, percent, 3 decimals.
            pub loop_share_percent: f64,
            /// Wire in the loop: turns times the way round. The lead-in comes on top.
            pub wire_length: PlanLength,
            $($(#[$attribute])+ pub $extra: $type,)*
        }

        impl $name {
            pub(super) fn of(figures: &ElectricalFigures, $($extra: $type),*) -> Self {
                Self {
                    loop_inductance_uh: round(figures.loop_inductance.get::<microhenry>(), 2),
                    lead_in_inductance_uh: round(figures.lead_in_inductance.get::<microhenry>(), 2),
                    terminal_inductance_uh: round(figures.terminal_inductance.get::<microhenry>(), 2),
                    as_built_low_uh: round(figures.as_built_low.get::<microhenry>(), 2),
                    as_built_high_uh: round(figures.as_built_high.get::<microhenry>(), 2),
                    quick_rule_uh: round(figures.quick_rule.get::<microhenry>(), 2),
                    dc_resistance_ohm: round(figures.dc_resistance.get::<ohm>(), 3),
                    ac_resistance_ohm: round(figures.ac_resistance.get::<ohm>(), 3),
                    quality_factor: round(figures.quality_factor, 2),
                    loop_share_percent: round(figures.loop_share.get::<percent>(), 3),
                    wire_length: figures.wire_length.into(),
                    $($extra,)*
                }
            }
        }
    };
}

with_electrical_figures! {
    /// What a loop will measure.
    LoopElectrical {}
}

with_electrical_figures! {
    /// What a loop will measure, and what that means.
    LoopCharacteristicsReport {
        /// What was understood of the request.
        inputs: LoopCharacteristicsInputs,
        /// Statements about the loop, the gravest first.
        findings: Vec<Finding>,
        /// Defaults that stood in for fields that were not sent.
        assumed: Vec<Assumed>,
        /// Fields that were sent and are not needed here, as JSON Pointers.
        unused: Vec<String>,
        /// What can hurt someone on this job.
        cautions: Vec<Caution>,
        /// What the figures rest on.
        basis: Basis,
    }
}

has_messages! {
    LoopCharacteristicsReport: findings, assumed, cautions, basis;
}

impl From<&ElectricalFigures> for LoopElectrical {
    fn from(figures: &ElectricalFigures) -> Self {
        Self::of(figures)
    }
}

/// What was understood of a loop-characteristics request.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopCharacteristicsInputs {
    /// The loop.
    pub r#loop: ResolvedLoop,
    /// The lead-in.
    pub lead_in: ResolvedLeadIn,
    /// The working frequency, kHz, 3 decimals.
    pub frequency_khz: f64,
    /// The temperature of the wire.
    pub temperature: TemperatureValue,
    /// From the lowest turn down to steel; absent when none was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steel_below: Option<DetailLength>,
    /// The capacitance across the terminals, nF, 3 decimals.
    pub shunt_capacitance_nf: f64,
}
