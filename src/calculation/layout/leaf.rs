//! The metal leaf of a barrier, closed, open and on its way, and what it makes over a loop.

use std::cell::RefCell;
use std::f64::consts::FRAC_PI_2;
use std::sync::Arc;

use rustc_hash::FxHashMap;
use uom::si::f64::{Length, Ratio};
use uom::si::inductance::henry;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use crate::calculation::budget::WorkBudget;
use crate::calculation::input::{ResolvedLoop, ResolvedOpening};
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::physics::plate::{BodyCache, Plate, PrimaryLoop, Wall};
use crate::physics::winding::{Winding, WindingShape};
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
    whole: Arc<Wall>,
    /// One leaf of a pair, or the half of an overhead leaf that still stands on its way; `None` of other barriers.
    part: Option<Arc<Wall>>,
    /// An overhead leaf under the ceiling, and the half of it that lies there on its way.
    levels: Option<(Arc<Plate>, Arc<Plate>)>,
    /// What it was asked already: rounds ask again.
    known: RefCell<FxHashMap<(BesideKey, LeafState), f64>>,
    budget: WorkBudget,
}

/// Where a leaf is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
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

/// A loop on the ground as the key of what is known of it.
type BesideKey = [u64; 9];

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
    fn change_by_wall(
        &self,
        (wall, budget): (&Wall, &WorkBudget),
        middle: (f64, f64),
        lower_edge: f64,
        angle: f64,
    ) -> f64 {
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
            PrimaryLoop::rotated(&self.winding, -angle, |point| wall.distance(foot, point))
        };
        budget.count(wall.steps(&primary, foot));
        wall.change(&primary, foot) / self.terminal
    }

    fn change_by_plate(&self, (plate, budget): (&Plate, &WorkBudget), along: f64, height: f64) -> f64 {
        let position = [-self.middle.1, along - self.middle.0, height + self.depth];
        let primary = PrimaryLoop::new(&self.winding);
        budget.count(plate.steps(&primary, position));
        plate.change(&primary, position) / self.terminal
    }

    /// What tells it from others, to the last bit.
    fn key(&self) -> BesideKey {
        let Winding { shape, along, across, corner_cut, turns, pitch, .. } = self.winding;
        let cells = if shape == WindingShape::Rectangle { 1.0 } else { -1.0 };
        let wound = [along, across, corner_cut, pitch, cells * f64::from(turns)];
        let [a, b, c, d, e] = wound.map(f64::to_bits);
        let [f, g, h, i] = [self.terminal, self.depth, self.middle.0, self.middle.1].map(f64::to_bits);
        [a, b, c, d, e, f, g, h, i]
    }
}

fn wall(length: f64, height: f64) -> Option<Arc<Wall>> {
    static WALLS: BodyCache<Wall> = BodyCache::empty();
    WALLS.body([length, height], || Wall::new(length, height))
}

fn plate(width: f64, length: f64) -> Option<Arc<Plate>> {
    static PLATES: BodyCache<Plate> = BodyCache::empty();
    PLATES.body([width, length], || Plate::new(width, length))
}

impl Leaf {
    /// The leaf of an opening; `None` where no metal leaf closes it.
    pub fn of(opening: &ResolvedOpening, budget: &WorkBudget) -> Option<Self> {
        let (height, ground_gap) = opening.leaf_height.zip(opening.leaf_ground_gap)?;
        let (width, height) = (opening.width.get::<meter>(), height.get::<meter>());
        let level = opening.leaf_open == Some(LeafOpen::Level);
        // Sheets that no state asks for are not factored, for that takes longer than most of what is asked of them.
        let part = match opening.barrier {
            Barrier::SwingGatePair => wall(width / 2.0, height),
            Barrier::OverheadDoor => wall(width, height / 2.0),
            _ => None,
        };
        let levels = level.then(|| plate(width, height).zip(plate(width, height / 2.0))).flatten();
        Some(Self {
            barrier: opening.barrier,
            width,
            height,
            ground_gap: ground_gap.get::<meter>(),
            whole: wall(width, height)?,
            part,
            levels,
            known: RefCell::default(),
            budget: budget.clone(),
        })
    }

    /// Whether it is the same to the right and to the left of the opening's middle, in every state.
    pub fn is_symmetric(&self) -> bool {
        !matches!(self.barrier, Barrier::SlideGate | Barrier::SwingGate)
    }

    /// The least distance from a loop that the model resolves; nearer a figure is rough.
    pub fn least_distance(&self) -> Length {
        Length::new::<meter>(self.whole.least_distance())
    }

    /// What it makes over a loop in one of its states.
    pub fn change(&self, beside: &LoopBesideLeaf, state: LeafState) -> Ratio {
        let greatest =
            |shares: &[f64]| shares.iter().map(|share| self.change_after(beside, *share)).fold(0.0, f64::max);
        let compute = || match state {
            LeafState::Closed => greatest(&[0.0]),
            LeafState::Open => greatest(&[1.0]),
            // An overhead leaf has one such place.
            LeafState::Moving if self.barrier == Barrier::OverheadDoor => greatest(&[0.5]),
            LeafState::Moving => greatest(&[0.25, 0.5, 0.75]),
        };
        Ratio::new::<ratio>(*self.known.borrow_mut().entry((beside.key(), state)).or_insert_with(compute))
    }

    /// What it makes after a share of its way.
    fn change_after(&self, beside: &LoopBesideLeaf, share: f64) -> f64 {
        let standing = |across: f64, up: f64| {
            beside.change_by_wall((&self.whole, &self.budget), (0.0, across), self.ground_gap + up, 0.0)
        };
        if share == 0.0 {
            return standing(0.0, 0.0);
        }
        match self.barrier {
            Barrier::SlideGate => standing(share * self.width, 0.0),
            Barrier::SwingGate => self.swung(beside, &self.whole, self.width, -1.0, share),
            Barrier::SwingGatePair => {
                let of_side = |leaf: &Wall, side| self.swung(beside, leaf, self.width / 2.0, side, share);
                self.part.as_deref().map_or(0.0, |leaf| {
                    // Both leaves make the same over a loop in the middle.
                    if beside.middle.1 == 0.0 {
                        2.0 * of_side(leaf, 1.0)
                    } else {
                        of_side(leaf, -1.0) + of_side(leaf, 1.0)
                    }
                })
            }
            Barrier::OverheadDoor => self.under_ceiling(beside, share),
            Barrier::VerticalLiftGate | Barrier::BarrierArm | Barrier::None => standing(0.0, share * self.height),
        }
    }

    /// A leaf that hangs on one edge of the opening, swung inwards by a share of the quarter circle.
    fn swung(&self, beside: &LoopBesideLeaf, leaf: &Wall, length: f64, side: f64, share: f64) -> f64 {
        let angle = share * FRAC_PI_2;
        let middle = (length / 2.0 * angle.sin(), side * (self.width / 2.0 - length / 2.0 * angle.cos()));
        beside.change_by_wall((leaf, &self.budget), middle, self.ground_gap, -side * angle)
    }

    /// An overhead leaf of which a share lies level, or is coiled up, which counts for nothing; on its way the halves stand for every share.
    fn under_ceiling(&self, beside: &LoopBesideLeaf, share: f64) -> f64 {
        let ceiling = self.ground_gap + self.height;
        let is_open = share >= 1.0;
        let lying = self.levels.as_ref().map_or(0.0, |(level, half)| {
            let (plate, length) = if is_open { (level, self.height) } else { (half, self.height / 2.0) };
            beside.change_by_plate((plate, &self.budget), length / 2.0, ceiling)
        });
        if is_open {
            return lying;
        }
        let edge = ceiling - self.height / 2.0;
        let of_half = |half: &Wall| beside.change_by_wall((half, &self.budget), (0.0, 0.0), edge, 0.0);
        lying + self.part.as_deref().map_or(0.0, of_half)
    }
}
