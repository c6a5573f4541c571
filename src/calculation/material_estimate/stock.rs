//! The loop on the caller's shelf that is the one asked for.

use uom::si::f64::Length;
use uom::si::length::inch;

use super::job::{Job, LoopJob};
use crate::calculation::input::ResolvedStockItem;
use crate::practice::site::Construction;

/// The stock loop with these legs and turns whose lead-in is the shortest that reaches with its spare; `None` when there is none.
pub fn find<'a>(one: &LoopJob, construction: Construction, job: &'a Job) -> Option<&'a ResolvedStockItem> {
    let coil = &one.coil;
    // A leg that is off by half an inch fits the same cut.
    let alike = |a: Length, b: Length| (a - b).abs() <= Length::new::<inch>(0.5);
    let needed = one.lead_in_needed();
    job.stock
        .iter()
        .flatten()
        .filter(|item| alike(item.along_travel, coil.along_travel) && alike(item.across_lane, coil.across_lane))
        .filter(|item| item.turns.is_none_or(|turns| turns == coil.turns))
        .filter(|item| item.construction.is_none_or(|made| made == construction))
        .filter(|item| item.lead_in_length >= needed * 0.999_999)
        .min_by(|a, b| a.lead_in_length.value.total_cmp(&b.lead_in_length.value))
}
