//! The loops of a job, each decided once.

use uom::si::f64::{Length, Ratio};

use super::channel::ChannelLoop;
use super::home_run::HomeRun;
use super::lead_in_way::LeadInWay;
use super::marks::LoopMark;
use super::sightings::{ClassSighting, Lane};
use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop, ResolvedStockItem};
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::practice::roles::{Role, Side};
use crate::practice::site::Construction;
use crate::vocabulary::Vocabulary;

/// The loops of a job, in the order in which a vehicle that leaves meets them.
#[derive(Clone, Debug, Default)]
pub struct JobLayout {
    /// The loops, or rows of loops, of the roles.
    pub loops: Vec<LaidLoop>,
    /// Whether a car, a short one at least, stands unseen between loops that hold the gate, and nothing else watches there.
    pub needs_line_device: bool,
}

impl JobLayout {
    /// What lies over the top wires, from the thinnest to the thickest, each once.
    pub fn covers(&self) -> Vec<Length> {
        let mut covers: Vec<_> = self.loops.iter().map(|laid| laid.coil.cover).collect();
        covers.sort_by(|a, b| a.value.total_cmp(&b.value));
        covers.dedup();
        covers
    }

    /// The step of all loops where it is the same, else that of each: `(None, step)` or one `(mark, step)` for each.
    pub fn steps(&self) -> Vec<(Option<LoopMark>, Ratio)> {
        match self.loops.as_slice() {
            [first, rest @ ..] if rest.iter().all(|other| other.step == first.step) => vec![(None, first.step)],
            loops => loops.iter().map(|laid| (Some(laid.mark), laid.step)).collect(),
        }
    }
}

/// The place of a loop along the way: the line of the closed barrier or the reference is at 0, the inside positive.
#[derive(Clone, Copy, Debug)]
pub struct LoopPlacement {
    /// On which side of the line it lies.
    pub side: Side,
    /// Its end towards the outside.
    pub from: Length,
    /// Its end towards the inside.
    pub to: Length,
}

impl LoopPlacement {
    /// From the line to the nearest wire; 0 for a loop that straddles the line.
    pub fn distance(&self) -> Length {
        self.from.max(-self.to).max(Length::default())
    }

    /// Its middle.
    pub fn middle(&self) -> Length {
        (self.from + self.to) / 2.0
    }
}

/// The loop, or the row of loops that are alike, of a role.
#[derive(Clone, Debug)]
pub struct LaidLoop {
    /// Its letter.
    pub mark: LoopMark,
    /// What it is for.
    pub role: Role,
    /// Which of the loops of its role it is, from 1, where several lie one behind the other.
    pub ordinal: Option<usize>,
    /// The unit that its channel belongs to, from 1: a unit scans its channels in turn.
    pub unit: usize,
    /// The loop that is laid; that of the stock item, where one was chosen.
    pub coil: ResolvedLoop,
    /// How it is made.
    pub construction: Construction,
    /// The item of the caller's stock that it is; `None` where none serves or none was sent.
    pub stock: Option<ResolvedStockItem>,
    /// The pair to the unit, as long as its place needs.
    pub lead_in: ResolvedLeadIn,
    /// The way of the pair to the unit.
    pub way: LeadInWay,
    /// The lane, and where the loops lie across it.
    pub lane: Lane,
    /// Its place along the way.
    pub place: LoopPlacement,
    /// From its lowest turn down to steel in the slab, where there is some.
    pub steel_below: Option<Length>,
    /// What it measures.
    pub electrical: ElectricalFigures,
    /// The change that its unit is set to switch at.
    pub step: Ratio,
    /// The vehicles that must be seen, over it.
    pub sightings: Vec<ClassSighting>,
    /// The same on a channel of its own.
    pub alone: Vec<ClassSighting>,
}

impl LaidLoop {
    /// How many loops lie side by side.
    pub fn count(&self) -> usize {
        self.lane.centres.len()
    }

    /// Its name in the parts of a plan: that of its role, with a number where several lie one behind the other.
    pub fn label(&self) -> String {
        match self.ordinal {
            Some(ordinal) => format!("{} {ordinal}", self.role.code()),
            None => self.role.code().to_owned(),
        }
    }

    /// The mark of each loop of the row; that of the loop where there is only one.
    pub fn marks(&self) -> Vec<LoopMark> {
        match self.count() {
            1 => vec![self.mark],
            count => (0..count).map(|index| self.mark.numbered(index)).collect(),
        }
    }

    /// What of its lead-in lies in conduit: what was sent, else what lies in no slot.
    pub fn in_conduit(&self) -> Length {
        self.lead_in.in_conduit.unwrap_or((self.lead_in.length - self.way.farthest_in_slot()).max(Length::default()))
    }

    /// The cable of its own gauge that goes on to the unit; `None` where its pair goes all the way.
    pub fn home_run(&self) -> Option<HomeRun> {
        let is_asked = HomeRun::is_asked(&self.lead_in, self.coil.wire.area, self.stock.is_some());
        is_asked.then(|| HomeRun::beyond_slot(&self.lead_in, Some(&self.way))).flatten()
    }

    /// From the outermost wire to the edge of the lane.
    pub fn edge_setback(&self) -> Length {
        self.lane.edge_setback(self.coil.across_lane)
    }

    /// The loops as they come to a unit.
    pub fn channel_loops(&self) -> Vec<ChannelLoop> {
        let marks = self.marks();
        let one = |(index, across): (usize, &Length)| {
            let label = if self.count() > 1 { format!("{} {}", self.label(), index + 1) } else { self.label() };
            let (coil, lead_in, lane) = (self.coil.clone(), self.lead_in.clone(), self.lane.clone());
            ChannelLoop {
                mark: marks.get(index).copied(),
                position: Some((self.place.middle(), *across)),
                step: Some(self.step),
                steel_below: self.steel_below,
                unit: Some(self.unit.to_string()),
                sightings: self.alone.clone(),
                ..ChannelLoop::new(label, self.role, coil, lead_in, lane)
            }
        };
        self.lane.centres.iter().enumerate().map(one).collect()
    }
}
