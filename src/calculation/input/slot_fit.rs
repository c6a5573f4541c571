//! How a slot suits what lies in it. The sizing and the estimate judge by it alike, so that a plan says it once.

use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};

use crate::calculation::report::{FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::best_width;
use crate::practice::wires::{least_clearance, least_cover};
use crate::quantity::UnitSystem;

/// Relative to a depth or a width, the difference that counts as none: a limit that is met exactly does not depend on binary fractions.
pub const LIMIT_TOLERANCE: f64 = 1e-9;

/// What lies in a cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutPlace {
    /// The loop.
    Loop,
    /// The pair.
    LeadIn,
}

impl CutPlace {
    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::Loop => "loop",
            Self::LeadIn => "lead_in",
        }
    }
}

/// What lies one over the other in a cut, from its bottom to the pavement.
#[derive(Clone, Copy, Debug)]
pub struct CutLevels {
    /// Which cut.
    pub place: CutPlace,
    /// The depth that is cut.
    pub depth: Length,
    /// The height of the wires, jacket included.
    pub stack: Length,
    /// The height of rod that lies all along it.
    pub rod_height: Length,
    /// From the pavement down to the top of the sealant.
    pub finish: Length,
    /// Sealant that is asked for over the top wire.
    pub asked_cover: Length,
    /// The same before it gave way to the depth.
    pub usual_cover: Length,
    /// The system of the reader.
    pub system: UnitSystem,
}

impl CutLevels {
    /// The depth that wires, rod, cover and finish need.
    pub fn needed_depth(&self) -> Length {
        self.asked_cover + (self.stack + self.rod_height + self.finish)
    }

    /// The sealant over the top wire, or over the rod on it; below zero where that stands out.
    pub fn cover_left(&self) -> Length {
        self.depth - (self.stack + self.rod_height + self.finish)
    }

    /// Whether a default cover gave way.
    pub fn cover_gave_way(&self) -> bool {
        self.asked_cover < self.usual_cover
    }

    /// Whether the wires do not go in under the cover.
    pub fn is_too_shallow(&self) -> bool {
        self.needed_depth() > self.depth * (1.0 + LIMIT_TOLERANCE)
    }

    /// Whether a default cover gave way to less than should be.
    pub fn is_thin(&self) -> bool {
        self.cover_gave_way() && self.asked_cover < least_cover() * (1.0 - LIMIT_TOLERANCE)
    }

    /// What is to be said of the depth; `at` is the slot.
    pub fn finding(&self, at: &FieldPath<'_>) -> Option<Finding> {
        let (level, message) = if self.is_too_shallow() {
            let outcome = match self.cover_left() <= Length::default() {
                true if self.cover_gave_way() => "full",
                true => "bare",
                false => "covered",
            };
            let message = Statement::new("input-slot-too-shallow")
                .code("place", self.place.code())
                .detail_length("wires_height", self.stack, self.system)
                .detail_length("cover", self.asked_cover, self.system)
                .detail_length("finish_below_surface", self.finish, self.system)
                .detail_length_at_least("needed_depth", self.needed_depth(), self.system)
                .code("finish", if self.finish > Length::default() { "below_surface" } else { "flush" })
                .code("outcome", outcome);
            (Level::Stop, message)
        } else if self.is_thin() {
            let message = Statement::new("input-thin-cover")
                .code("place", self.place.code())
                .detail_length("slot_depth", self.depth, self.system)
                .detail_length("cover_left", self.cover_left(), self.system)
                .detail_length("wires_height", self.stack, self.system)
                .detail_length("least_cover", least_cover(), self.system)
                .detail_length_at_least("enough", least_cover() + self.depth - self.cover_left(), self.system);
            (Level::Warning, message)
        } else {
            return None;
        };
        let figures =
            [("needed_depth", self.needed_depth()), ("slot_depth", self.depth), ("cover_left", self.cover_left())];
        let finding = Finding::new(FindingCode::SlotTooShallow, level, &at.field("depth"), message);
        Some(figures.iter().fold(finding, |finding, (name, value)| detail_figure(finding, name, *value, self.system)))
    }
}

/// A slot that is too narrow for what lies in it.
pub struct NarrowSlot {
    /// `stop` where it does not go in, `warning` where sealant cannot flow round it.
    pub level: Level,
    /// What to do about it.
    pub advice: Statement,
}

impl NarrowSlot {
    /// Judges a width by the widest that lies across the slot, and by the widest that must go in as one; `None` where it is wide enough.
    pub fn find(width: Length, widest: Length, stiffest: Length, system: UnitSystem) -> Option<Self> {
        let (tolerance, advised) = (LIMIT_TOLERANCE * width, best_width(widest, system));
        let (level, advice) = if stiffest > width + tolerance {
            let advice = Statement::new("input-fit-does-not-go-in").detail_length("stiffest", stiffest, system);
            (Level::Stop, advice)
        } else if width - widest < least_clearance() - tolerance {
            (Level::Warning, Statement::new("input-fit-no-room").detail_length("widest", widest, system))
        } else {
            return None;
        };
        Some(Self { level, advice: advice.detail_length("advised_width", advised, system) })
    }
}

/// A statement about the width of a slot; `at` is the slot.
pub fn width_finding(
    (code, level): (FindingCode, Level),
    place: CutPlace,
    (width, widest): (Length, Length),
    advice: Statement,
    system: UnitSystem,
    at: &FieldPath<'_>,
) -> Finding {
    let message = Statement::new("input-slot-fit")
        .code("place", place.code())
        .detail_length("slot_width", width, system)
        .phrase("advice", advice);
    let finding = Finding::new(code, level, &at.field("width"), message);
    detail_figure(detail_figure(finding, "slot_width", width, system), "widest", widest, system)
}

/// Adds a small length in the system of the reader.
pub fn detail_figure(finding: Finding, name: &'static str, length: Length, system: UnitSystem) -> Finding {
    match system {
        UnitSystem::UsCustomary => finding.figure(name, length.get::<inch>(), "inch"),
        UnitSystem::Metric => finding.figure(name, length.get::<millimeter>(), "mm"),
    }
}
