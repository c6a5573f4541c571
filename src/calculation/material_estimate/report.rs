//! What [`super`] answers.

use serde::Serialize;
use utoipa::ToSchema;

use super::bill::{BillLine, JobBill};
use super::burial::LoopBurial;
use super::echo::MaterialEstimateInputs;
use crate::calculation::layout::LoopMark;
use crate::calculation::report::{Assumed, Basis, Caution, Finding, Message, has_messages};
use crate::practice::Sourced;
use crate::practice::materials::{Corner, MaterialItem, RodForm, WorkStep};
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::quantity::output::{DetailLength, DurationValue, PlanLength, VolumeValue, round};

/// What to load, how long it takes, and what it costs.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MaterialEstimateReport {
    /// The bill before it is rounded, for one bill of several jobs.
    #[serde(skip)]
    pub bill: JobBill,
    /// What was understood of the request.
    pub inputs: MaterialEstimateInputs,
    /// What to load, in the order of the work.
    pub items: Vec<MaterialLine>,
    /// All saw cuts of the job.
    pub saw_cut: SawCut,
    /// All volumes of the job.
    pub volumes: SlotVolumes,
    /// Each loop by itself.
    pub loops: Vec<LoopMaterials>,
    /// The slots that pairs of several loops lie in together: each is cut once.
    pub shared_slots: Vec<SharedLeadInSlot>,
    /// Whether sealant can flow round what lies in each slot.
    pub slot_fit: Vec<SlotFit>,
    /// How long it takes.
    pub labour: Labour,
    /// What it costs; absent without prices.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<Cost>,
    /// The same job in each construction that the surface allows.
    pub comparison: Vec<ConstructionComparison>,
    /// Statements about the job, the gravest first.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for fields that were not sent.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and are not needed here, as JSON Pointers.
    pub unused: Vec<String>,
    /// What can hurt someone on this job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

has_messages! {
    MaterialEstimateReport: items, loops, slot_fit, labour, comparison, findings, assumed, cautions, basis;
    MaterialLine: how;
    LoopMaterials: burial;
    SlotFit: advice;
    Labour: steps;
    LabourStep: how;
    ConstructionComparison: message;
}

/// One thing to load.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MaterialLine {
    /// What it is; a `code` of `reference/material-items`.
    #[schema(value_type = String)]
    pub item: MaterialItem,
    /// The caller's own number; absent when none fits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sku: Option<String>,
    /// Its size, where it comes in several: the gauge of wire and cable, and the diameter of wire over insulation; the diameter of rod, the
    /// trade size of conduit, width and diameter of a blade, what a cartridge holds, legs, turns and lead-in of a preformed loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub size: Option<String>,
    /// The kind of sealant; a `code` of `reference/sealants`. Absent of what is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub sealant: Option<SealantKind>,
    /// The pavement whose colour it has: `concrete` or `asphalt`. Absent where the colour is the same for all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blends_with: Option<&'static str>,
    /// What to load: whole packs, pieces, feet or metres.
    pub quantity: u64,
    /// The unit of both quantities: `cartridge`, `gal`, `l`, `spool`, `ft`, `m`, `each` or `lot`.
    pub unit: &'static str,
    /// The quantity before rounding up, 3 decimals.
    pub exact: f64,
    /// Whether the crew owns it: it is taken along and not bought, and has no line in `cost`.
    pub is_owned: bool,
    /// How it comes about, in a sentence.
    #[schema(value_type = String)]
    pub how: Message,
    /// Where the rule comes from; ids of `reference/sources`.
    #[schema(value_type = Vec<String>)]
    pub source_ids: Vec<Source>,
}

impl From<&BillLine> for MaterialLine {
    fn from(line: &BillLine) -> Self {
        let mut source_ids = line.item.sources().to_vec();
        if !source_ids.contains(&Source::Geometry) && line.item.is_measured() {
            source_ids.push(Source::Geometry);
        }
        Self {
            item: line.item,
            sku: line.sku.clone(),
            size: line.size.clone(),
            sealant: line.sealant,
            blends_with: line.blends_with,
            quantity: line.quantity(),
            unit: line.unit,
            exact: round(line.exact, 3),
            is_owned: line.is_owned,
            how: line.how.clone().into(),
            source_ids,
        }
    }
}

/// All saw cuts of the job, and their ends.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SawCut {
    /// Straight cuts: the outline of each loop. A side ends at the diagonal that cuts its corner, and goes on to the sharp corner where `saw.corner` is `diagonal_full`. The centre slot of a quadrupole is among them.
    pub straight: PlanLength,
    /// Diagonal cuts across corners.
    pub diagonals: PlanLength,
    /// What the blade runs on past ends of cuts, for their full depth. A lead-in's cut must be deep where it meets the loop and where it leaves the slab, and runs on at both.
    pub overruns: PlanLength,
    /// Cuts for lead-ins.
    pub lead_in: PlanLength,
    /// All of these.
    pub total: PlanLength,
    /// How many ends run on.
    pub cut_ends: u32,
    /// How many holes are drilled: at the corners, and at the ends of the centre slot of a quadrupole.
    pub cored_corners: u32,
    /// How many passes the deepest cut takes, those of lead-ins included.
    pub passes: u32,
}

/// Volumes of slots, and what fills them.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SlotVolumes {
    /// What the saw takes away.
    pub slot: VolumeValue,
    /// Insulated wire, or jackets, in it.
    pub wire: VolumeValue,
    /// Backer rod in it.
    pub rod: VolumeValue,
    /// What stays open above the sealant.
    pub left_open: VolumeValue,
    /// What the sealant fills.
    pub sealant_net: VolumeValue,
    /// The same with what is lost.
    pub sealant_with_waste: VolumeValue,
}

/// One loop by itself: figures for each, not for its quantity.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopMaterials {
    /// What the caller calls it.
    pub label: String,
    /// Its mark in the plan that it belongs to; absent elsewhere.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub mark: Option<LoopMark>,
    /// What it is for in that plan.
    #[serde(skip)]
    pub role: Option<Role>,
    /// How many there are.
    pub quantity: u32,
    /// How it is made.
    #[schema(value_type = String)]
    pub construction: Construction,
    /// Wire to pull, its lead-in included; absent for a preformed loop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wire_length: Option<PlanLength>,
    /// How many splices its pair has, each with a kit in a pull box: that to a home run, or as many as its spools force.
    pub splices: u32,
    /// The width of its slot; this and what follows is absent where nothing is sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot_width: Option<DetailLength>,
    /// The depth of its slot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot_depth: Option<DetailLength>,
    /// The sealant over its top wire, or over the rod on it; below zero where that stands out of the sealant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cover: Option<DetailLength>,
    /// How its corners are cut; a `code` of `reference/corners`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub corner: Option<Corner>,
    /// How far the blade runs on past one end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub run_out: Option<DetailLength>,
    /// The diameter of the blade that cuts it: the one that was asked for, or a larger one where that does not reach.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blade_diameter: Option<DetailLength>,
    /// All of its cuts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saw_cut: Option<PlanLength>,
    /// The sealant in them, without what is lost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sealant_net: Option<VolumeValue>,
    /// The height of the wires in its slot where most of them lie, one on the other, or of their jacket.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wires_height: Option<DetailLength>,
    /// The backer rod in its slots; a `code` of `reference/backer-rods`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub backer_rod: Option<RodForm>,
    /// How high the rod stands once it is pressed into its slot; absent without rod.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rod_height: Option<DetailLength>,
    /// How much of its lead-in lies in a slot of its own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_slot: Option<PlanLength>,
    /// How much of its lead-in lies in a slot with others, one of `shared_slots`; absent where nothing does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shared_slot: Option<PlanLength>,
    /// The width of its lead-in's slot; this and what follows is absent where that is not sawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_slot_width: Option<DetailLength>,
    /// The depth of its lead-in's slot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_slot_depth: Option<DetailLength>,
    /// How it lies where it is buried; absent where it lies in a slot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub burial: Option<LoopBurial>,
    /// The sealant over the pair, or over the rod on it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_cover: Option<DetailLength>,
    /// How high the rod stands in its lead-in's slot; absent without rod.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_in_rod_height: Option<DetailLength>,
}

/// A slot that pairs of several loops lie in together.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SharedLeadInSlot {
    /// The loops whose pairs lie in it.
    pub labels: Vec<String>,
    /// Their marks in the plan that they belong to; empty elsewhere.
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
    /// How many pairs lie in it where most do.
    pub pairs: u32,
    /// Its length, without what the blade runs on.
    pub length: PlanLength,
    /// All of its cut.
    pub saw_cut: PlanLength,
    /// Its width.
    pub width: DetailLength,
    /// Its depth.
    pub depth: DetailLength,
    /// The sealant over the top pair, or over the rod on it.
    pub cover: DetailLength,
    /// How high the rod stands in it; absent without rod.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rod_height: Option<DetailLength>,
}

/// Whether sealant can flow round what lies in a slot.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SlotFit {
    /// The loop.
    pub label: String,
    /// `loop` or `lead_in`.
    pub place: &'static str,
    /// `too_narrow`, `right` or `generous`.
    pub verdict: &'static str,
    /// The width of the slot.
    pub width: DetailLength,
    /// The widest that lies across it: wire, pair or jacket.
    pub widest: DetailLength,
    /// What is left of the width.
    pub clearance: DetailLength,
    /// What to do about it.
    #[schema(value_type = String)]
    pub advice: Message,
}

/// How long it takes.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Labour {
    /// The steps, in order.
    pub steps: Vec<LabourStep>,
    /// All steps: the hours of the crew.
    pub total: DurationValue,
}

/// One step of the work.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LabourStep {
    /// Which; a `code` of `reference/work-steps`.
    #[schema(value_type = String)]
    pub step: WorkStep,
    /// How long.
    pub time: DurationValue,
    /// How it comes about, in a phrase.
    #[schema(value_type = String)]
    pub how: Message,
}

/// What it costs.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Cost {
    /// The currency, ISO 4217.
    pub currency: String,
    /// What was priced.
    pub lines: Vec<CostLine>,
    /// The sum of the lines, as decimal text.
    pub total: String,
    /// Whether everything was priced.
    pub is_complete: bool,
    /// What was not priced and is not in the total: the names to send prices under, skus, `price_keys` of `reference/material-items` or `labour`. For wire on a spool without a sku it is `loop_wire`: give the spool a sku.
    pub unpriced: Vec<String>,
}

/// One priced line.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CostLine {
    /// The name that it is priced under: a sku, one of the `price_keys` of `reference/material-items`, or `labour`.
    pub item: String,
    /// How many units, as decimal text.
    pub quantity: String,
    /// The unit; `h` for labour.
    pub unit: &'static str,
    /// The price of one, as it was sent.
    pub unit_price: String,
    /// The line, rounded to the currency's minor unit.
    pub amount: String,
}

/// The same job, all loops in one construction.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ConstructionComparison {
    /// The construction.
    #[schema(value_type = String)]
    pub construction: Construction,
    /// Whether all loops were asked for in it.
    pub is_asked: bool,
    /// All cuts.
    pub saw_cut: PlanLength,
    /// The sealant, with what is lost.
    pub sealant_with_waste: VolumeValue,
    /// The hours of the crew.
    pub hours: DurationValue,
    /// The sum of what could be priced, as decimal text; absent without prices.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<String>,
    /// Whether everything was priced; absent without prices.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub is_complete: Option<bool>,
    /// What is not in that sum: the names to send prices under.
    pub unpriced: Vec<String>,
    /// What speaks for it and against it, in a sentence or two.
    #[schema(value_type = String)]
    pub message: Message,
}
