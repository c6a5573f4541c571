//! The slot: the saw cut that the wire lies in.

use serde::{Deserialize, Serialize};
use uom::si::f64::Length;
use uom::si::length::{inch, meter, millimeter};
use utoipa::ToSchema;
use validator::Validate;

use super::slot_fit::{CutLevels, CutPlace};
use super::{Cover, SlotDepth, SlotWidth};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::materials::usual_slot_width;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::practice::wires::{self, least_cover};
use crate::quantity::format::format_detail_length_input;
use crate::quantity::output::DetailLength;
use crate::quantity::{QuantityField, UnitSystem, dimension, parse};

/// The saw cut that the wire lies in.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Slot {
    /// The width. Default 3/16 in, or wider where the wire needs it.
    pub width: Option<SlotWidth>,
    /// The depth. Default 1-1/2 in for a wound loop, 1-1/4 in for a jacketed one; deeper where turns and cover need it.
    pub depth: Option<SlotDepth>,
    /// The sealant to keep over the top wire; over a buried loop, what covers it. Default 1 in; 3/4 in for a jacketed loop, which lies deeper than its wires. In a depth that was sent the default gives way to what that leaves over the wires.
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
    /// Whether the cover was given; one that was not gives way to the depth.
    #[serde(skip)]
    pub cover_is_fixed: bool,
    /// What else the slot holds, where known.
    #[serde(skip)]
    pub allowance: SlotAllowance,
}

/// What a slot holds beside wires and sealant, and how deep it may be.
#[derive(Clone, Copy, Debug, Default)]
pub struct SlotAllowance {
    /// From the pavement down to the top of the sealant.
    pub finish: Length,
    /// The height of rod that lies all along it.
    pub rod_height: Length,
    /// The deepest cut that slab and steel leave, where known: a depth that nobody sent gives way to it.
    pub deepest: Option<Length>,
}

impl Slot {
    /// Reads the slot, or takes the usual one of the construction, for wires of a width in a system of units. Without them a default cover
    /// takes the share of the depth that it usually has.
    pub fn resolve(
        slot: Option<&Self>,
        construction: Construction,
        wires: Option<(Length, UnitSystem)>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedSlot> {
        let (usual_depth, depth_source) = construction.usual_slot_depth();
        let (usual_cover, cover_source) = construction.usual_cover();
        let (width_at, width_sent) = (at.field("width"), slot.and_then(|slot| slot.width.as_ref()));
        let width = match wires.filter(|_| width_sent.is_none()) {
            Some((widest, system))
                if usual_slot_width(widest, system) != usual_slot_width(Length::default(), system) =>
            {
                let width = usual_slot_width(widest, system);
                let (value, reason) = (format_detail_length_input(width, system), Statement::new("input-wide-slot"));
                diagnostics.add_assumption(&width_at, value, reason, &[Source::OwnChoice]);
                Some(width)
            }
            _ => diagnostics.parse_or_default(
                &width_at,
                width_sent,
                wires::USUAL_SLOT_WIDTH,
                Statement::new("input-usual-slot-width"),
                Source::CommonPractice,
            ),
        };
        let depth_sent = slot.and_then(|slot| slot.depth.as_ref());
        let depth = diagnostics.parse_or_default(
            &at.field("depth"),
            depth_sent,
            usual_depth,
            Statement::new("input-usual-slot-depth"),
            depth_source,
        );
        let cover_sent = slot.and_then(|slot| slot.cover.as_ref());
        let cover = diagnostics.parse_or_default(
            &at.field("cover"),
            cover_sent,
            usual_cover,
            Statement::new("input-usual-slot-cover"),
            cover_source,
        );
        let mut slot = ResolvedSlot {
            width: width?,
            depth: depth?,
            depth_is_fixed: depth_sent.is_some(),
            cover: cover?,
            cover_is_fixed: cover_sent.is_some(),
            allowance: SlotAllowance::default(),
        };
        // A depth that was not given follows the cover and the turns.
        if slot.depth_is_fixed && slot.cover_is_fixed && slot.cover >= slot.depth {
            diagnostics.add_error(
                &at.field("cover"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-deep-cover"),
                Statement::new("errors-deep-cover-hint"),
            );
        }
        let usual_depth = parse::<dimension::Length>(usual_depth).map_or(slot.depth, |usual| usual.si);
        if wires.is_none() && !slot.cover_is_fixed && slot.depth < usual_depth {
            slot.cover = slot.cover * slot.depth / usual_depth;
            diagnostics.mark_unneeded(at, &[("cover", false)]);
            // Nobody says which system the reader has but the text of the depth.
            let system =
                depth_sent.and_then(|depth| depth.read().ok()).map_or(UnitSystem::Metric, |depth| depth.system);
            let (value, reason) =
                (format_detail_length_input(slot.cover, system), Statement::new("input-cover-by-depth"));
            diagnostics.add_assumption(&at.field("cover"), value, reason, &[Source::OwnChoice]);
        }
        Some(slot)
    }
}

impl ResolvedSlot {
    /// The cover to keep over a stack of wires: the one that was sent, or the usual one, which gives way to what the depth leaves.
    pub fn cover_over(&self, stack: Length) -> Length {
        let deepest = if self.depth_is_fixed { Some(self.depth) } else { self.allowance.deepest };
        let Some(deepest) = deepest.filter(|_| !self.cover_is_fixed) else { return self.cover };
        let left = deepest - (stack + self.allowance.rod_height + self.allowance.finish);
        // A depth of ours is kept deep enough for the least cover; in one that was sent any is better than none.
        let is_enough = if self.depth_is_fixed { left.get::<meter>() > 1e-6 } else { left >= least_cover() };
        self.cover.min(if is_enough { left } else { least_cover() })
    }

    /// The levels of the cut over a stack of wires. A depth that was not given is the usual one, deeper where wires and cover need it, in
    /// steps of 1/4 in or 5 mm, and no deeper than they need where slab and steel leave less.
    pub fn levels(&self, place: CutPlace, stack: Length, system: UnitSystem) -> CutLevels {
        let SlotAllowance { finish, rod_height, deepest } = self.allowance;
        let mut levels = CutLevels {
            place,
            depth: self.depth,
            stack,
            rod_height,
            finish,
            asked_cover: self.cover_over(stack),
            usual_cover: self.cover,
            system,
        };
        let needed = levels.needed_depth();
        if !self.depth_is_fixed {
            let usual = if needed <= self.depth { self.depth } else { tidy_depth(needed, system) };
            levels.depth = deepest.map_or(usual, |deepest| usual.min(deepest.max(needed)));
        }
        levels
    }

    /// Says which covers the usual one gave way to, in the place of the usual one; nothing where it did not.
    pub fn say_cover(&self, covers: &[Length], system: UnitSystem, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        if self.cover_is_fixed || covers.iter().all(|cover| *cover >= self.cover) {
            return;
        }
        diagnostics.mark_unneeded(at, &[("cover", false)]);
        let mut values: Vec<_> = covers.iter().map(|cover| format_detail_length_input(*cover, system)).collect();
        values.dedup();
        let reason = Statement::new("input-cover-gives-way");
        diagnostics.add_assumption(&at.field("cover"), values.join(" or "), reason, &[Source::OwnChoice]);
    }
}

/// The next depth in steps of 1/4 in or 5 mm.
fn tidy_depth(needed: Length, system: UnitSystem) -> Length {
    match system {
        UnitSystem::UsCustomary => Length::new::<inch>((4.0 * needed.get::<inch>() - 1e-9).ceil() / 4.0),
        UnitSystem::Metric => Length::new::<millimeter>(5.0 * (needed.get::<millimeter>() / 5.0 - 1e-9).ceil()),
    }
}
