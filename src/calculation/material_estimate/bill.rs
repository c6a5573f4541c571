//! The bill of a job and its lines, before they are rounded to whole units.

use uom::si::f64::{Length, Time};
use uom::si::length::{foot, meter};

use super::resolved::ResolvedWireSpool;
use super::wire::WireRequirement;
use crate::calculation::input::ResolvedPrices;
use crate::calculation::report::Statement;
use crate::practice::materials::MaterialItem;
use crate::practice::sealants::SealantKind;
use crate::quantity::UnitSystem;

/// One thing to load.
#[derive(Clone, Debug)]
pub struct BillLine {
    /// What.
    pub item: MaterialItem,
    /// The caller's own number.
    pub sku: Option<String>,
    /// Its size, where it comes in several.
    pub size: Option<String>,
    /// The kind of sealant.
    pub sealant: Option<SealantKind>,
    /// The pavement that it blends in with.
    pub blends_with: Option<&'static str>,
    /// The unit.
    pub unit: &'static str,
    /// How many, before rounding up.
    pub exact: f64,
    /// Whether the crew owns it: it is taken along and not bought.
    pub is_owned: bool,
    /// How it comes about.
    pub how: Statement,
}

impl BillLine {
    /// A line without a number or a size.
    pub fn new(item: MaterialItem, unit: &'static str, exact: f64, how: Statement) -> Self {
        Self { item, sku: None, size: None, sealant: None, blends_with: None, unit, exact, is_owned: false, how }
    }

    /// The same of a size.
    #[must_use]
    pub fn of_size(self, size: String) -> Self {
        Self { size: Some(size), ..self }
    }

    /// The quantity in whole units.
    pub fn quantity(&self) -> u64 {
        whole(self.exact)
    }

    /// Whether another line is of the same thing, so that both can be bought together.
    pub fn is_alike(&self, other: &Self) -> bool {
        let thing = |line: &Self| (line.item, line.unit, line.is_owned, line.sealant, line.blends_with);
        thing(self) == thing(other) && self.sku == other.sku && self.size == other.size
    }
}

/// The bill of one job, before it is rounded.
#[derive(Clone, Debug)]
pub struct JobBill {
    /// Its lines.
    pub lines: Vec<BillLine>,
    /// Its wire.
    pub wires: Vec<WireRequirement>,
    /// The spools that wire comes on.
    pub spools: Vec<ResolvedWireSpool>,
    /// The hours of the crew.
    pub hours: Time,
    /// Prices, when given.
    pub prices: Option<ResolvedPrices>,
}

/// A quantity in whole units. The tolerance keeps a whole number from being rounded up for its binary fraction.
pub fn whole(exact: f64) -> u64 {
    (exact - 1e-9).ceil().max(0.0) as u64
}

/// A length with the unit that it is billed in.
pub fn length_in(length: Length, system: UnitSystem) -> (&'static str, f64) {
    match system {
        UnitSystem::UsCustomary => length_in_unit(length, "ft"),
        UnitSystem::Metric => length_in_unit(length, "m"),
    }
}

/// The same in `ft` or `m`.
pub fn length_in_unit(length: Length, unit: &'static str) -> (&'static str, f64) {
    (unit, if unit == "ft" { length.get::<foot>() } else { length.get::<meter>() })
}
