//! The metal leaf of a barrier, closed, open and on its way, and what it makes over a loop.

use std::f64::consts::FRAC_PI_2;

use uom::si::f64::{Length, Ratio};
use uom::si::inductance::henry;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use crate::calculation::input::{ResolvedLoop, ResolvedOpening};
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::physics::plate::{Plate, PrimaryLoop, Wall};
use crate::physics::winding::Winding;
use crate::practice::site::{Barrier, LeafOpen};

/// The leaf of a barrier as conducting sheets: laws of the finite plate, with a loop on the ground.
///
/// Along the lane the line of the closed barrier is at 0 and the inside positive; across it 0 is the middle of the opening, and a single
/// swing leaf hangs on the left as one drives in. Sheets that stand at once are summed as if each were alone, which is an upper bound.
pub struct Leaf {
    barrier: Barrier,
    width: f64,
    height: f64,
    ground_gap: f64,
    /// All of the leaf, standing.
    whole: Wall,
    /// One leaf of a pair, or the half of an overhead leaf that still stands on its way.
    part: Wall,
    /// An overhead leaf under the ceiling, and the half of it that lies there on its way.
    levels: Option<(Plate, Plate)>,
}

/// Where a leaf is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeafState {
    /// In the line of the barrier.
    Closed,
    /// Out of the way.
    Open,
    /// Between the two: the worst of a few places.
    Moving,
}

/// What a leaf makes over a loop in each of its states.
#[derive(Clone, Copy, Debug)]
pub struct LeafChanges {
    /// Closed.
    pub closed: Ratio,
    /// Open.
    pub open: Ratio,
    /// On its way.
    pub moving: Ratio,
}

/// A loop on the ground, for the leaf.
pub struct LoopBesideLeaf {
    winding: Winding,
    /// At the terminals, henry.
    terminal: f64,
    /// From the pavement down to the centre of the top wire, metres.
    depth: f64,
    /// Its middle along and across, metres.
    middle: (f64, f64),
}

impl LoopBesideLeaf {
    /// A loop that measures so, its middle at a place along and across.
    pub fn new(coil: &ResolvedLoop, electrical: &ElectricalFigures, middle: (Length, Length)) -> Self {
        Self {
            winding: coil.winding(),
            terminal: electrical.terminal_inductance.get::<henry>(),
            depth: (coil.cover + coil.wire.over_insulation / 2.0).get::<meter>(),
            middle: (middle.0.get::<meter>(), middle.1.get::<meter>()),
        }
    }

    /// The share of its inductance that a standing sheet takes, its middle at a place along and across, its lower edge so far up,
    /// turned by an angle from the line of the barrier.
    fn change_by_wall(&self, wall: &Wall, middle: (f64, f64), lower_edge: f64, angle: f64) -> f64 {
        let (sine, cosine) = angle.sin_cos();
        let (along, across) = (middle.0 - self.middle.0, middle.1 - self.middle.1);
        // Seen from the sheet, whose own direction is across.
        let foot = [cosine * across + sine * along, cosine * along - sine * across, lower_edge + self.depth];
        let primary = if angle == 0.0 {
            PrimaryLoop::new(&self.winding)
        } else if (angle.abs() - FRAC_PI_2).abs() < 1e-9 {
            // A loop is the same turned either way.
            PrimaryLoop::turned(&self.winding)
        } else {
            PrimaryLoop::rotated(&self.winding, -angle)
        };
        wall.change(&primary, foot) / self.terminal
    }

    fn change_by_plate(&self, plate: &Plate, along: f64, height: f64) -> f64 {
        let position = [-self.middle.1, along - self.middle.0, height + self.depth];
        plate.change(&PrimaryLoop::new(&self.winding), position) / self.terminal
    }
}

impl Leaf {
    /// The leaf of an opening; `None` where no metal leaf closes it.
    pub fn of(opening: &ResolvedOpening) -> Option<Self> {
        let (height, ground_gap) = opening.leaf_height.zip(opening.leaf_ground_gap)?;
        let (width, height) = (opening.width.get::<meter>(), height.get::<meter>());
        let level = opening.leaf_open == Some(LeafOpen::Level);
        let part =
            if opening.barrier == Barrier::SwingGatePair { (width / 2.0, height) } else { (width, height / 2.0) };
        let levels = Plate::new(width, height).zip(Plate::new(width, height / 2.0)).filter(|_| level);
        Some(Self {
            barrier: opening.barrier,
            width,
            height,
            ground_gap: ground_gap.get::<meter>(),
            whole: Wall::new(width, height)?,
            part: Wall::new(part.0, part.1)?,
            levels,
        })
    }

    /// The least distance from a loop that the model resolves; nearer a figure is rough.
    pub fn least_distance(&self) -> Length {
        Length::new::<meter>(self.whole.least_distance())
    }

    /// What it makes over a loop in one of its states.
    pub fn change(&self, beside: &LoopBesideLeaf, state: LeafState) -> Ratio {
        let shares: &[f64] = match state {
            LeafState::Closed => &[0.0],
            LeafState::Open => &[1.0],
            // An overhead leaf has one such place.
            LeafState::Moving if self.barrier == Barrier::OverheadDoor => &[0.5],
            LeafState::Moving => &[0.25, 0.5, 0.75],
        };
        let greatest = shares.iter().map(|share| self.change_after(beside, *share)).fold(0.0, f64::max);
        Ratio::new::<ratio>(greatest)
    }

    /// What it makes after a share of its way.
    fn change_after(&self, beside: &LoopBesideLeaf, share: f64) -> f64 {
        let standing =
            |across: f64, up: f64| beside.change_by_wall(&self.whole, (0.0, across), self.ground_gap + up, 0.0);
        if share == 0.0 {
            return standing(0.0, 0.0);
        }
        match self.barrier {
            Barrier::SlideGate => standing(share * self.width, 0.0),
            Barrier::SwingGate => self.swung(beside, &self.whole, self.width, -1.0, share),
            Barrier::SwingGatePair => {
                [-1.0, 1.0].iter().map(|side| self.swung(beside, &self.part, self.width / 2.0, *side, share)).sum()
            }
            Barrier::OverheadDoor => self.under_ceiling(beside, share),
            Barrier::VerticalLiftGate | Barrier::BarrierArm | Barrier::None => standing(0.0, share * self.height),
        }
    }

    /// A leaf that hangs on one edge of the opening, swung inwards by a share of the quarter circle.
    fn swung(&self, beside: &LoopBesideLeaf, leaf: &Wall, length: f64, side: f64, share: f64) -> f64 {
        let angle = share * FRAC_PI_2;
        let middle = (length / 2.0 * angle.sin(), side * (self.width / 2.0 - length / 2.0 * angle.cos()));
        beside.change_by_wall(leaf, middle, self.ground_gap, -side * angle)
    }

    /// An overhead leaf of which a share lies level, or is coiled up, which counts for nothing; on its way the halves stand for every share.
    fn under_ceiling(&self, beside: &LoopBesideLeaf, share: f64) -> f64 {
        let ceiling = self.ground_gap + self.height;
        let is_open = share >= 1.0;
        let lying = self.levels.as_ref().map_or(0.0, |(level, half)| {
            let (plate, length) = if is_open { (level, self.height) } else { (half, self.height / 2.0) };
            beside.change_by_plate(plate, length / 2.0, ceiling)
        });
        if is_open {
            return lying;
        }
        lying + beside.change_by_wall(&self.part, (0.0, 0.0), ceiling - self.height / 2.0, 0.0)
    }
}
