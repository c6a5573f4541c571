//! The lead-in: the pair from the loop to the detector unit.

use serde::{Deserialize, Serialize};
use uom::si::area::square_meter;
use uom::si::f64::{Area, Length};
use uom::si::length::meter;
use uom::si::magnetic_permeability::henry_per_meter;
use utoipa::ToSchema;
use validator::Validate;

use super::winding::resolve_gauge;
use super::{CableLength, ConductorSize, LeadInInductance};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::physics::conductor;
use crate::practice::lead_ins::LeadInPair;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::practice::wires;
use crate::quantity::dimension::PerLength;
use crate::quantity::output::{InductancePerLengthValue, PlanLength};
use crate::quantity::{QuantityField, UnitSystem};

/// The pair of wires from the loop to the detector unit.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LeadIn {
    /// The length of the pair from the loop to the detector unit.
    pub length: CableLength,
    /// How much of the length lies in a saw cut.
    pub in_slot: Option<CableLength>,
    /// How much of `in_slot` lies in a slot together with other pairs of its unit. In a plan this is decided by the places of the loops.
    pub in_shared_slot: Option<CableLength>,
    /// How much of the length lies in conduit.
    pub in_conduit: Option<CableLength>,
    /// How the pair is made. Default twisted where the loop is wound on site, jacketed where it is preformed.
    pub pair: Option<LeadInPair>,
    /// Slack to coil at the unit, beyond the length. Default 3 ft.
    pub spare: Option<CableLength>,
    /// The conductors. Default 14 AWG.
    pub gauge: Option<ConductorSize>,
    /// The inductance per length. Default 0.22 uH/ft.
    pub inductance: Option<LeadInInductance>,
}

/// A lead-in as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[schema(as = LeadInEcho)]
pub struct ResolvedLeadIn {
    /// From the loop to the unit.
    #[serde(serialize_with = "PlanLength::write")]
    #[schema(value_type = PlanLength)]
    pub length: Length,
    /// In a saw cut; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub in_slot: Option<Length>,
    /// In a slot with other pairs; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub in_shared_slot: Option<Length>,
    /// How the pair is made; absent when not given: by construction.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub pair: Option<LeadInPair>,
    /// In conduit; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "PlanLength::write_option")]
    #[schema(value_type = Option<PlanLength>)]
    pub in_conduit: Option<Length>,
    /// Slack beyond the length.
    #[serde(serialize_with = "PlanLength::write")]
    #[schema(value_type = PlanLength)]
    pub spare: Length,
    /// The size as it was written.
    pub gauge: String,
    /// Whether the size was sent.
    #[serde(skip)]
    pub gauge_is_sent: bool,
    /// Area of one conductor.
    #[serde(skip)]
    pub area: Area,
    /// Inductance per length of pair.
    #[serde(serialize_with = "InductancePerLengthValue::write")]
    #[schema(value_type = InductancePerLengthValue)]
    pub inductance: PerLength,
    /// The system of the length.
    #[serde(skip)]
    pub system: UnitSystem,
}

impl LeadIn {
    /// A lead-in of a length, otherwise the usual one.
    pub fn of_length(length: &str) -> Self {
        Self {
            length: CableLength::from_text(length.to_owned()),
            in_slot: None,
            in_shared_slot: None,
            in_conduit: None,
            pair: None,
            spare: None,
            gauge: None,
            inductance: None,
        }
    }

    /// Reads the lead-in, or takes one of the usual length.
    pub fn resolve_or_default(
        lead_in: Option<&Self>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedLeadIn> {
        if let Some(lead_in) = lead_in {
            return lead_in.resolve(at, diagnostics);
        }
        let reason = Statement::new("input-usual-lead-in-length");
        diagnostics.add_assumption(&at.field("length"), wires::USUAL_LEAD_IN_LENGTH, reason, &[Source::OwnChoice]);
        Self::of_length(wires::USUAL_LEAD_IN_LENGTH).resolve(at, diagnostics)
    }

    /// Reads the lead-in.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedLeadIn> {
        let length = diagnostics.parse(&at.field("length"), &self.length);
        let in_slot = diagnostics.parse_optional(&at.field("in_slot"), self.in_slot.as_ref());
        let in_shared_slot = diagnostics.parse_optional(&at.field("in_shared_slot"), self.in_shared_slot.as_ref());
        let in_conduit = diagnostics.parse_optional(&at.field("in_conduit"), self.in_conduit.as_ref());
        let spare = diagnostics.parse_or_default(
            &at.field("spare"),
            self.spare.as_ref(),
            wires::USUAL_SPARE,
            Statement::new("input-usual-spare"),
            Source::Fp96,
        );
        let gauge = resolve_gauge(self.gauge.as_ref(), at, Statement::new("input-usual-lead-in-wire"), diagnostics);
        let (usual, reason, source) = if self.pair == Some(LeadInPair::Loose) {
            (wires::LOOSE_LEAD_IN_INDUCTANCE, Statement::new("input-loose-lead-in-inductance"), Source::Geometry)
        } else {
            let reason = Statement::new("input-usual-lead-in-inductance");
            (wires::USUAL_LEAD_IN_INDUCTANCE, reason, Source::NemaTestLoop)
        };
        let inductance_at = at.field("inductance");
        let inductance = diagnostics.parse_or_default(&inductance_at, self.inductance.as_ref(), usual, reason, source);
        let length = length?;
        let parts = in_slot.unwrap_or_default() + in_conduit.unwrap_or_default();
        if parts > length.si * 1.000_001 {
            diagnostics.add_error(
                &at.field("length"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-lead-in-parts"),
                Statement::new("errors-lead-in-parts-hint"),
            );
        }
        let most = in_slot.unwrap_or(length.si - in_conduit.unwrap_or_default());
        if in_shared_slot.is_some_and(|shared| shared > most * 1.000_001) {
            diagnostics.add_error(
                &at.field("in_shared_slot"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-lead-in-shared"),
                Statement::new("errors-lead-in-shared-hint"),
            );
        }
        let (gauge, area, _) = gauge?;
        Some(ResolvedLeadIn {
            system: length.system,
            length: length.si,
            in_slot,
            in_shared_slot,
            in_conduit,
            pair: self.pair,
            gauge_is_sent: self.gauge.is_some(),
            spare: spare?,
            gauge,
            area,
            inductance: inductance?,
        })
    }

    /// Which of the fields that only some calculations need were sent.
    pub fn parts_sent(&self) -> [(&'static str, bool); 5] {
        [
            ("in_slot", self.in_slot.is_some()),
            ("in_shared_slot", self.in_shared_slot.is_some()),
            ("in_conduit", self.in_conduit.is_some()),
            // What is loose has another inductance.
            ("pair", self.pair.is_some_and(|pair| pair != LeadInPair::Loose || self.inductance.is_some())),
            ("spare", self.spare.is_some()),
        ]
    }

    /// The same of one that may not have been sent itself.
    pub fn parts_sent_of(lead_in: Option<&Self>) -> [(&'static str, bool); 5] {
        let names = ["in_slot", "in_shared_slot", "in_conduit", "pair", "spare"];
        lead_in.map_or_else(|| names.map(|name| (name, false)), Self::parts_sent)
    }
}

impl ResolvedLeadIn {
    /// The length of pair to order: with its spare.
    pub fn order_length(&self) -> Length {
        self.length + self.spare
    }

    /// How much of it was sent to lie in a slot: outright, or as what is not in conduit; `None` where neither was sent.
    pub fn slot_sent(&self) -> Option<Length> {
        self.in_slot.or(self.in_conduit.map(|conduit| (self.length - conduit).max(Length::default())))
    }

    /// How its pair is made.
    pub fn pair_of(&self, construction: Construction) -> LeadInPair {
        self.pair.unwrap_or(LeadInPair::usual_for(construction))
    }

    /// Inductance of the whole lead-in in henry, for the physics.
    pub fn henries(&self) -> f64 {
        self.inductance.get::<henry_per_meter>() * self.length.get::<meter>()
    }

    /// Resistance of the pair to direct current, there and back, in ohm at a temperature in °C.
    pub fn ohms(&self, celsius: f64) -> f64 {
        2.0 * self.length.get::<meter>() * conductor::dc_resistance_per_metre(self.area_m2(), celsius)
    }

    /// Conductor area in square metres, for the physics.
    pub fn area_m2(&self) -> f64 {
        self.area.get::<square_meter>()
    }
}
