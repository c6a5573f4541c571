//! The job in a choice of constructions: each loop with its trench, and their sums.

use uom::si::f64::{Length, Volume};
use uom::si::ratio::ratio;

use super::cut::{Cut, Filling};
use super::job::{Job, LoopJob};
use super::report::{SawCut, SlotVolumes};
use super::trench::{Trench, dig};
use super::wire::WireGroup;
use super::{pace, wire};
use crate::calculation::input::Shape;
use crate::practice::site::Construction;

/// The job in a choice of constructions.
pub struct Estimate<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its loops.
    pub parts: Vec<Part<'a>>,
    /// The wire of those that are wound on site, by its sort, on its spools.
    pub wires: Vec<WireGroup>,
}

/// Loops that are alike, in one construction.
pub struct Part<'a> {
    /// The loop.
    pub one: &'a LoopJob,
    /// How it is made here.
    pub construction: Construction,
    /// Its trench; absent where nothing is sawn.
    pub trench: Option<Trench>,
}

impl Part<'_> {
    /// How many.
    pub fn count(&self) -> f64 {
        f64::from(self.one.quantity)
    }

    /// The wire to pull for one of them; `None` for a preformed loop.
    pub fn wire(&self) -> Option<Length> {
        (self.construction == Construction::HandWound).then(|| wire::length(self.one))
    }

    /// How often wire is pulled round for one of them.
    pub fn pulls(&self) -> u32 {
        match (self.construction, self.one.coil.shape) {
            (Construction::HandWound, Shape::Rectangle) => self.one.coil.turns,
            (Construction::HandWound, Shape::Quadrupole) => 2 * self.one.coil.turns,
            _ => 1,
        }
    }

    /// How much of the lead-in of one of them lies in conduit: what lies in no saw cut, where nothing else is said.
    pub fn conduit(&self) -> Length {
        let (lead_in, sawn) = (&self.one.lead_in, self.trench.is_some());
        match lead_in.in_conduit {
            // What is sawn as asked for lies in conduit where the loop is buried instead.
            Some(given) if sawn || !self.one.construction.is_sawn() => given,
            None if sawn => (lead_in.length - self.one.in_slot).max(Length::default()),
            _ => lead_in.length,
        }
    }

    /// What of the lead-in of one of them lies neither in a cut nor in conduit.
    pub fn nowhere(&self) -> Length {
        let in_slot = self.trench.as_ref().map_or_else(Length::default, Trench::lead_in_length);
        (self.one.lead_in.length - in_slot - self.conduit()).max(Length::default())
    }
}

impl<'a> Estimate<'a> {
    /// The job with each loop in the construction that `construction` gives.
    pub fn new(job: &'a Job, construction: impl Fn(&LoopJob) -> Construction) -> Self {
        let parts = job.loops.iter().map(|one| {
            let construction = construction(one);
            Part { one, construction, trench: dig(one, construction, job) }
        });
        let parts: Vec<_> = parts.collect();
        let wires = wire::groups(&parts, job);
        Self { job, parts, wires }
    }

    /// How many loops there are.
    pub fn loops(&self) -> u64 {
        self.parts.iter().map(|part| u64::from(part.one.quantity)).sum()
    }

    /// Parts with a trench.
    pub fn trenches(&self) -> impl Iterator<Item = (&Part<'a>, &Trench)> {
        self.parts.iter().filter_map(|part| Some((part, part.trench.as_ref()?)))
    }

    /// Every cut with the loops that have it.
    pub fn cuts(&self) -> impl Iterator<Item = (&Part<'a>, &Cut)> {
        self.trenches().flat_map(|(part, trench)| trench.cuts().map(move |cut| (part, cut)))
    }

    /// The sum of a length of each trench.
    pub fn sum(&self, of: impl Fn(&Trench) -> Length) -> Length {
        self.trenches().map(|(part, trench)| part.count() * of(trench)).fold(Length::default(), |a, b| a + b)
    }

    /// The rod to lay, by its diameter.
    pub fn rods(&self) -> Vec<(Length, Length)> {
        let mut rods: Vec<(Length, Length)> = Vec::new();
        for (part, cut) in self.cuts().filter(|(_, cut)| cut.rod > Length::default()) {
            let diameter = self.job.rod.diameter_for(cut.width);
            let length = part.count() * cut.rod;
            match rods.iter_mut().find(|(known, _)| (*known - diameter).abs() < 1e-6 * diameter) {
                Some((_, sum)) => *sum += length,
                None => rods.push((diameter, length)),
            }
        }
        rods
    }

    /// What fills all trenches.
    pub fn filling(&self) -> Filling {
        self.trenches()
            .map(|(part, trench)| trench.filling().times(part.count()))
            .fold(Filling::default(), Filling::plus)
    }

    /// The sealant to load.
    pub fn sealant_with_waste(&self) -> Volume {
        self.sealant() * (1.0 + self.job.waste.get::<ratio>())
    }

    /// The sealant in the slots.
    pub fn sealant(&self) -> Volume {
        self.filling().sealant()
    }

    /// The saw cuts of the report.
    pub fn saw_cut(&self) -> SawCut {
        let count = |of: fn(&Trench) -> u32| self.trenches().map(|(part, trench)| part.one.quantity * of(trench)).sum();
        SawCut {
            straight: self.sum(|trench| trench.straight).into(),
            diagonals: self.sum(|trench| trench.diagonals).into(),
            overruns: self.sum(Trench::overruns).into(),
            lead_in: self.sum(Trench::lead_in_length).into(),
            total: self.sum(Trench::total).into(),
            cut_ends: count(Trench::ends),
            cored_corners: count(|trench| trench.cores),
            passes: self.cuts().map(|(_, cut)| pace::passes(cut.depth)).max().unwrap_or_default(),
        }
    }

    /// The volumes of the report.
    pub fn volumes(&self) -> SlotVolumes {
        let filling = self.filling();
        SlotVolumes {
            slot: filling.slot.into(),
            wire: filling.wire.into(),
            rod: filling.rod.into(),
            left_open: filling.left_open.into(),
            sealant_net: self.sealant().into(),
            sealant_with_waste: self.sealant_with_waste().into(),
        }
    }
}
