//! One bill for several jobs: what is alike is added up before it is rounded, so that cartridges, spools and blades are rounded once.

use serde::Serialize;
use uom::si::f64::Time;
use utoipa::ToSchema;

use super::bill::{BillLine, JobBill};
use super::cost::compute_cost;
use super::report::{Cost, MaterialLine};
use super::resolved::ResolvedWireSpool;
use super::wire::{SpoolOffer, WireRequirement, choose_spools, cost_of};
use crate::calculation::report::{Decimals, Message, Statement, has_messages};
use crate::practice::materials::MaterialItem;
use crate::quantity::output::DurationValue;

/// One bill for several jobs.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PooledBill {
    /// How many jobs it is for.
    pub jobs: usize,
    /// What to load for all of them: what is alike is added up, and rounded once.
    pub items: Vec<MaterialLine>,
    /// The hours of the crew for all of them; each job is set up by itself.
    pub labour_total: DurationValue,
    /// What all of it costs; absent without prices, and where jobs have different prices.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<Cost>,
    /// The ids of the items that it leaves out: those that failed, and those that have no bill.
    pub left_out: Vec<String>,
    /// What it is, and what it lacks, in a sentence or two.
    #[schema(value_type = String)]
    pub message: Message,
}

has_messages! {
    PooledBill: items, message;
}

impl PooledBill {
    /// The bill of these jobs.
    pub fn of(jobs: &[JobBill], left_out: Vec<String>) -> Self {
        let lines = pool_lines(jobs);
        let hours = jobs.iter().map(|job| job.hours).fold(Time::default(), |sum, hours| sum + hours);
        let first = jobs.first().and_then(|job| job.prices.as_ref());
        let is_alike = jobs.iter().all(|job| job.prices.as_ref() == first);
        let cost = first.filter(|_| is_alike).map(|prices| compute_cost(&lines, hours, prices));
        let prices = match (&cost, is_alike) {
            (Some(_), _) => "priced",
            (None, true) => "none",
            (None, false) => "differ",
        };
        let message = Statement::new("materials-pooled-bill")
            .count("jobs", jobs.len() as u64)
            .count("left_out", left_out.len() as u64)
            .code("prices", prices);
        Self {
            jobs: jobs.len(),
            items: lines.iter().map(Into::into).collect(),
            labour_total: hours.into(),
            cost,
            left_out,
            message: message.into(),
        }
    }
}

/// The lines of all jobs, those of the same thing added up.
fn pool_lines(jobs: &[JobBill]) -> Vec<BillLine> {
    let mut pooled: Vec<(BillLine, u64)> = Vec::new();
    for line in jobs.iter().flat_map(|job| &job.lines) {
        match pooled.iter_mut().find(|(known, _)| known.is_alike(line)) {
            Some((known, jobs)) => {
                known.exact += line.exact;
                *jobs += 1;
            }
            None => pooled.push((line.clone(), 1)),
        }
    }
    let spools = common_spools(jobs).map(|spools| pool_spools(jobs, spools)).unwrap_or_default();
    let spooled =
        jobs.iter().filter(|job| job.lines.iter().any(|line| line.unit == MaterialItem::SPOOL)).count() as u64;
    for (line, count) in &mut pooled {
        let packed = spools.iter().find(|packed| packed.is_alike(line));
        if line.unit == MaterialItem::SPOOL && !spools.is_empty() {
            line.exact = packed.map_or(0.0, |packed| packed.exact);
            *count = spooled;
        }
    }
    let is_new = |packed: &BillLine| !pooled.iter().any(|(line, _)| line.is_alike(packed));
    let more: Vec<_> = spools.iter().filter(|packed| is_new(packed)).map(|packed| (packed.clone(), spooled)).collect();
    let lines = pooled.into_iter().chain(more).filter(|(line, _)| line.exact > 0.0);
    let mut lines: Vec<_> = lines
        .map(|(line, count)| {
            let how = Statement::new("materials-pooled-line")
                .count("jobs", count)
                .number("exact", line.exact, Decimals::AtMost(3))
                .code("unit", line.unit)
                .code("pavement", line.blends_with.unwrap_or("other"));
            let kind = line.sealant.map(|kind| Statement::new("materials-pooled-sealant").member("sealant", kind));
            BillLine { how: kind.into_iter().fold(how, Statement::followed_by), ..line }
        })
        .collect();
    lines.sort_by_key(|line| order_of(line, jobs));
    lines
}

/// Where a line stands in the order of the work: as in the bill that has it first.
fn order_of(line: &BillLine, jobs: &[JobBill]) -> usize {
    let place = |job: &JobBill| job.lines.iter().position(|other| other.item == line.item);
    jobs.iter().find_map(place).unwrap_or(usize::MAX)
}

/// The spools that all jobs buy wire on; `None` where they differ, or where wire comes by length.
fn common_spools(jobs: &[JobBill]) -> Option<&[ResolvedWireSpool]> {
    let spools = &jobs.first()?.spools;
    let is_common = !spools.is_empty() && jobs.iter().all(|job| job.spools == *spools);
    is_common.then_some(spools.as_slice())
}

/// The spools for the wire of all jobs, packed anew: never dearer than what each buys by itself.
fn pool_spools(jobs: &[JobBill], spools: &[ResolvedWireSpool]) -> Vec<BillLine> {
    let offers = SpoolOffer::of(spools);
    let mut sorts: Vec<WireRequirement> = Vec::new();
    for wire in jobs.iter().flat_map(|job| &job.wires) {
        match sorts.iter_mut().find(|known| known.is_alike(wire)) {
            Some(known) => {
                known.pieces.extend(&wire.pieces);
                known.spools.iter_mut().zip(&wire.spools).for_each(|(sum, count)| *sum += count);
            }
            None => sorts.push(wire.clone()),
        }
    }
    let lines = sorts.into_iter().flat_map(|sort| {
        let packed = choose_spools(&sort.pieces, &offers);
        let is_cheaper = cost_of(&packed, &offers) < cost_of(&sort.spools, &offers);
        let counts = if is_cheaper { packed } else { sort.spools };
        let line = move |(spool, count): (&ResolvedWireSpool, u64)| {
            let how = Statement::new("materials-pooled-line");
            let line = BillLine::new(MaterialItem::LoopWire, MaterialItem::SPOOL, count as f64, how);
            BillLine { sku: spool.sku.clone(), ..line.of_size(sort.size.clone()) }
        };
        spools.iter().zip(counts).filter(|(_, count)| *count > 0).map(line).collect::<Vec<_>>()
    });
    // Sorts of one gauge, and spools without a number, are alike on a bill.
    let mut alike: Vec<BillLine> = Vec::new();
    for line in lines {
        match alike.iter_mut().find(|known| known.is_alike(&line)) {
            Some(known) => known.exact += line.exact,
            None => alike.push(line),
        }
    }
    alike
}
