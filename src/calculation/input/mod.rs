//! The nouns of requests and their way to typed quantities.
//!
//! Each noun is one type at every endpoint, with all its fields. Its `resolve` checks every field, adds errors and the defaults that
//! it took to the diagnostics, and gives the resolved noun: typed quantities for the calculation, with an echo for the report.

mod detector;
mod labels;
mod lead_in;
mod opening;
mod prices;
mod reinforcement;
mod sealant;
mod sizes;
mod slab;
mod slot;
mod slot_fit;
mod stock;
mod weather;
mod winding;

pub use detector::{Detector, DetectorEcho, ResolvedDetector};
pub use labels::resolve_labels;
pub use lead_in::{LeadIn, ResolvedLeadIn};
pub use opening::{Opening, ResolvedOpening, resolve_vehicles};
pub use prices::{MoneyText, Prices, ResolvedPrices, price_keys};
pub use reinforcement::Reinforcement;
pub use sealant::{Sealant, SealantDataSheet, SheetValues};
pub use sizes::*;
pub use slab::{ResolvedSlab, Slab};
pub use slot::{ResolvedSlot, Slot, SlotAllowance};
pub use slot_fit::{CutLevels, CutPlace, LIMIT_TOLERANCE, NarrowSlot, detail_figure, width_finding};
pub use stock::{ResolvedStockItem, StockItem, judge_shortage};
pub use weather::{HourlyConditions, Location, Weather};
pub use winding::{Loop, ResolvedLoop, ResolvedWire, Shape, Wire};
