//! The slot: the saw cut that the wire lies in.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};
use utoipa::ToSchema;
use validator::Validate;

use super::{Cover, SlotDepth, SlotWidth};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::practice::wires;
use crate::quantity::UnitSystem;
use crate::quantity::output::DetailLength;

/// The saw cut that the wire lies in.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Slot {
    /// The width. Default 3/16 in.
    pub width: Option<SlotWidth>,
    /// The depth. Default 1-1/2 in for a wound loop, 1-1/4 in for a jacketed one.
    pub depth: Option<SlotDepth>,
    /// The sealant to keep over the top wire; over a buried loop, what covers it. Default 1 in; 3/4 in for a jacketed loop, which lies deeper than its wires.
    pub cover: Option<Cover>,
}

/// A slot as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[schema(as = SlotEcho)]
pub struct ResolvedSlot {
    /// The width.
    #[serde(serialize_with = "DetailLength::write")]
    #[schema(value_type = DetailLength)]
    pub width: Length,
    /// The depth.
    #[serde(serialize_with = "DetailLength::write")]
    #[schema(value_type = DetailLength)]
    pub depth: Length,
    /// Whether the depth was given, so that it must not be exceeded.
    #[serde(skip)]
    pub depth_is_fixed: bool,
    /// The sealant over the top wire.
    #[serde(serialize_with = "DetailLength::write")]
    #[schema(value_type = DetailLength)]
    pub cover: Length,
}

impl Slot {
    /// Reads the slot, or takes the usual one of the construction.
    pub fn resolve(
        slot: Option<&Self>,
        construction: Construction,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedSlot> {
        let (usual_depth, depth_source) = construction.usual_slot_depth();
        let (usual_cover, cover_source) = construction.usual_cover();
        let width = diagnostics.parse_or_default(
            &at.field("width"),
            slot.and_then(|slot| slot.width.as_ref()),
            wires::USUAL_SLOT_WIDTH,
            Statement::new("input-usual-slot-width"),
            Source::CommonPractice,
        );
        let depth = diagnostics.parse_or_default(
            &at.field("depth"),
            slot.and_then(|slot| slot.depth.as_ref()),
            usual_depth,
            Statement::new("input-usual-slot-depth"),
            depth_source,
        );
        let cover = diagnostics.parse_or_default(
            &at.field("cover"),
            slot.and_then(|slot| slot.cover.as_ref()),
            usual_cover,
            Statement::new("input-usual-slot-cover"),
            cover_source,
        );
        let depth_is_fixed = slot.is_some_and(|slot| slot.depth.is_some());
        let slot = ResolvedSlot { width: width?, depth: depth?, depth_is_fixed, cover: cover? };
        // A depth that was not given follows the cover and the turns.
        if slot.depth_is_fixed && slot.cover >= slot.depth {
            diagnostics.add_error(
                &at.field("cover"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-deep-cover"),
                Statement::new("errors-deep-cover-hint"),
            );
        }
        Some(slot)
    }
}

impl ResolvedSlot {
    /// What the cover over a stack of wires needs.
    pub fn needed_depth(&self, stack: Length) -> Length {
        self.cover + stack
    }

    /// The depth to cut: the given one, or the usual one, deeper where the wires need it, in steps of 1/4 in or 5 mm.
    pub fn depth_to_cut(&self, needed: Length, system: UnitSystem) -> Length {
        if self.depth_is_fixed || needed <= self.depth {
            return self.depth;
        }
        match system {
            UnitSystem::UsCustomary => Length::new::<inch>((4.0 * needed.get::<inch>() - 1e-9).ceil() / 4.0),
            UnitSystem::Metric => Length::new::<millimeter>(5.0 * (needed.get::<millimeter>() / 5.0 - 1e-9).ceil()),
        }
    }
}
