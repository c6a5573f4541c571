//! One loop of the job, or several that are alike, in one construction: its cuts, its wire, its way to the unit, and what it is in stock.

use uom::si::f64::Length;
use uom::si::length::inch;

use super::burial::LoopBurial;
use super::cut::CutGeometry;
use super::loop_cuts::LoopCuts;
use super::report::LoopMaterials;
use super::resolved::{ResolvedEstimatedLoop, ResolvedMaterialEstimate, StockDecision};
use crate::calculation::input::{ResolvedStockItem, Shape};
use crate::practice::burial::usual_cover;
use crate::practice::site::Construction;
use crate::practice::wires::usual_over_insulation;

/// Loops that are alike, in one construction.
pub struct LoopEstimate<'a> {
    /// The loop.
    pub resolved: &'a ResolvedEstimatedLoop,
    /// How it is made here.
    pub construction: Construction,
    /// Its cuts; absent where nothing is sawn.
    pub cuts: Option<LoopCuts>,
}

impl LoopEstimate<'_> {
    /// How many.
    pub fn count(&self) -> f64 {
        f64::from(self.resolved.quantity)
    }

    /// The wire to pull for one of them; `None` for a preformed loop.
    pub fn wire_length(&self) -> Option<Length> {
        (!self.construction.is_preformed()).then(|| self.resolved.wire_length())
    }

    /// How many splices its pair has, each in a pull box: one to a home run; else one where its slot ends and one at the end of each spool
    /// from there on, where no spool holds its wire in one length.
    pub fn splices(&self, job: &ResolvedMaterialEstimate) -> u32 {
        if self.resolved.home_run.is_some() {
            return 1;
        }
        let longest = job.spools.iter().map(|spool| spool.length).reduce(Length::max);
        let Some((wire, spool)) = self.wire_length().zip(longest) else { return 0 };
        if wire <= spool * 1.000_000_001 {
            return 0;
        }
        let beyond = self.resolved.lead_in_needed() - self.resolved.way.in_slot();
        let spools: f64 = (beyond / spool).into();
        (spools - 1e-9).ceil().max(1.0) as u32
    }

    /// How often wire is pulled round for one of them: once for each turn, or once for all turns of a preformed loop.
    pub fn pulls(&self) -> u32 {
        if self.construction.is_preformed() {
            return 1;
        }
        match self.resolved.coil.shape {
            Shape::Rectangle => self.resolved.coil.turns,
            Shape::Quadrupole => 2 * self.resolved.coil.turns,
        }
    }

    /// What lies over it where it is buried: as it was sent, or as is usual in the surface and over its steel.
    pub fn burial_cover(&self, job: &ResolvedMaterialEstimate) -> Length {
        let usual = || usual_cover(job.surface, job.slab.steel, self.resolved.coil.system);
        self.resolved.burial_cover.unwrap_or_else(usual)
    }

    /// How much of the lead-in of one of them lies in conduit: what lies in no saw cut, unless the request says how much.
    pub fn conduit_length(&self) -> Length {
        let (lead_in, is_sawn) = (&self.resolved.lead_in, self.cuts.is_some());
        match lead_in.in_conduit {
            Some(given) if is_sawn || !self.resolved.construction.is_sawn() => given,
            None if is_sawn => (lead_in.length - self.resolved.way.farthest_in_slot()).max(Length::default()),
            // What is sawn as asked for lies in conduit where the loop is buried instead.
            Some(_) | None => lead_in.length,
        }
    }

    /// The cable that lies in its conduit, from wall to wall: the home run, the jacket, or two wires twisted.
    pub fn cable_diameter(&self) -> Length {
        let (coil, lead_in) = (&self.resolved.coil, &self.resolved.lead_in);
        match (&self.resolved.home_run, coil.wire.jacket(self.construction)) {
            (Some(_), _) => 2.0 * usual_over_insulation(lead_in.area, coil.system),
            (None, Some(jacket)) => jacket,
            (None, None) => 2.0 * coil.wire.over_insulation,
        }
    }

    /// What of the lead-in of one of them lies neither in a cut nor in conduit.
    pub fn unaccounted_lead_in(&self) -> Length {
        let in_slot = self.cuts.as_ref().map_or_else(Length::default, |_| self.resolved.way.farthest_in_slot());
        (self.resolved.lead_in.length - in_slot - self.conduit_length()).max(Length::default())
    }

    /// The stock loop that it is: the one that the layout took, or one with these legs and turns whose lead-in is the shortest that
    /// reaches with its spare. `None` when there is none.
    pub fn find_in_stock<'j>(&'j self, job: &'j ResolvedMaterialEstimate) -> Option<&'j ResolvedStockItem> {
        if let StockDecision::Decided(item) = &self.resolved.stock
            && self.is_stock_decided()
        {
            return item.as_ref();
        }
        let coil = &self.resolved.coil;
        // A leg that is off by half an inch fits the same cut.
        let alike = |a: Length, b: Length| (a - b).abs() <= Length::new::<inch>(0.5);
        let needed = self.resolved.lead_in_needed();
        job.stock
            .iter()
            .flatten()
            .filter(|item| alike(item.along_travel, coil.along_travel) && alike(item.across_lane, coil.across_lane))
            .filter(|item| item.turns.is_none_or(|turns| turns == coil.turns))
            .filter(|item| item.construction.is_none_or(|made| made == self.construction))
            .filter(|item| item.lead_in_length >= needed * 0.999_999)
            .min_by(|a, b| {
                let missing = |item: &ResolvedStockItem| item.missing(self.resolved.quantity.into());
                let by_lead_in = a.lead_in_length.value.total_cmp(&b.lead_in_length.value);
                let by_price = || a.price_to_compare().cmp(&b.price_to_compare());
                missing(a).cmp(&missing(b)).then(by_lead_in).then_with(by_price)
            })
    }

    /// Whether the layout has decided which stock item it is, or that it is none. It decides for the loop as it is asked for.
    pub fn is_stock_decided(&self) -> bool {
        let is_decided = matches!(self.resolved.stock, StockDecision::Decided(_));
        is_decided && self.construction == self.resolved.construction
    }

    /// Whether the bundle is only assumed, for the diameter over the jacket that lies in its cut was not given.
    pub fn lacks_jacket(&self) -> bool {
        self.construction == Construction::PreformedSawCut && self.resolved.coil.wire.over_jacket.is_none()
    }

    /// The loop by itself, in the report.
    pub fn to_report(&self, job: &ResolvedMaterialEstimate) -> LoopMaterials {
        let cuts = self.cuts.as_ref();
        let loop_cut = cuts.map(|cuts| &cuts.loop_cut);
        let lead_in_cut = cuts.and_then(|cuts| cuts.lead_in_cut.as_ref());
        let rod_height = |cut: &CutGeometry| cut.rod_form.is_laid().then(|| job.rod.height_in(cut.width).into());
        LoopMaterials {
            label: self.resolved.label.clone(),
            mark: self.resolved.mark,
            role: self.resolved.role,
            quantity: self.resolved.quantity,
            construction: self.construction,
            wire_length: self.wire_length().map(Into::into),
            splices: self.splices(job),
            slot_width: loop_cut.map(|cut| cut.width.into()),
            slot_depth: loop_cut.map(|cut| cut.depth().into()),
            cover: loop_cut.map(|cut| cut.levels.cover_left().into()),
            corner: cuts.map(|_| self.resolved.corner(&job.saw)),
            run_out: loop_cut.map(|cut| cut.ends.run_out.into()),
            blade_diameter: loop_cut.map(|cut| cut.blade.into()),
            saw_cut: cuts.map(|cuts| cuts.total_length().into()),
            sealant_net: cuts.map(|cuts| cuts.volumes().sealant().into()),
            wires_height: loop_cut.map(|cut| cut.levels.stack.into()),
            backer_rod: loop_cut.map(|cut| cut.rod_form),
            rod_height: loop_cut.and_then(rod_height),
            lead_in_slot: cuts.map(|_| self.resolved.way.own_slot.into()),
            shared_slot: cuts
                .map(|_| self.resolved.way.in_shared_slot())
                .filter(|shared| *shared > Length::default())
                .map(Into::into),
            lead_in_slot_width: lead_in_cut.map(|cut| cut.width.into()),
            lead_in_slot_depth: lead_in_cut.map(|cut| cut.depth().into()),
            burial: LoopBurial::of(&self.resolved.coil, self.construction, self.burial_cover(job), job.surface),
            lead_in_cover: lead_in_cut.map(|cut| cut.levels.cover_left().into()),
            lead_in_rod_height: lead_in_cut.and_then(rod_height),
        }
    }
}
