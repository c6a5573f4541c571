//! A loop ready to be driven over: the change at the unit's terminals for a vehicle at any place.

use std::cell::RefCell;
use std::sync::Arc;

use rustc_hash::FxHashMap;
use uom::si::f64::{Length, Ratio};
use uom::si::inductance::henry;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use super::vehicle_model::{FactoredShape, VehicleModel};
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::ResolvedLoop;
use crate::calculation::loop_characteristics::ElectricalFigures;
use crate::physics::plate::PrimaryLoop;

/// A loop's field, and what a change of its inductance comes to at the terminals.
pub struct LoopField {
    primary: PrimaryLoop,
    /// At the terminals, henry.
    terminal: f64,
    /// From the pavement down to the centre of the top wire, metres.
    depth: f64,
    /// From the loop's middle to the line on which two-wheelers are taken to ride.
    pub riding_line: Length,
    /// Leg along travel.
    pub along: Length,
    /// Leg across the lane.
    pub across: Length,
    /// The changes that undersides made at places already, henry: searches, judgements and reports ask for the same ones.
    known: RefCell<FxHashMap<KnownPlace, f64>>,
    budget: WorkBudget,
}

/// A metal by its address, and where it is, to the last bit.
type KnownPlace = (usize, [u64; 3]);

/// With which steps, metres, and how many of them, the least change round a gap is looked for.
const VALLEY_STEP_M: f64 = 0.25;
const VALLEY_STEPS: u32 = 5;

/// What a position of a two-wheeler costs: four potentials of the wires along travel.
const UPRIGHT_STEPS: u64 = 60;

/// What a unit must hold on to while a vehicle passes.
#[derive(Clone, Copy, Debug)]
pub struct WeakestChange {
    /// The change when the vehicle's first part stands best over the loop.
    pub first: Ratio,
    /// The least change from then on until the vehicle's tail reaches the loop's first wire.
    pub least: Ratio,
}

/// Metres, without what is only rounding: a place and its mirror image are to be known as one.
fn nanometres(metres: f64) -> f64 {
    (metres * 1e9).round() / 1e9
}

impl WeakestChange {
    /// Whether a unit that switches at `step` sees the first part and lets go before the tail has reached the loop.
    pub fn drops_out(self, step: Ratio) -> bool {
        self.first >= step && self.least < step
    }

    /// The same where only a share of each change reaches the unit.
    #[must_use]
    pub fn diluted(self, share: Ratio) -> Self {
        Self { first: share * self.first, least: share * self.least }
    }
}

impl LoopField {
    /// The field of a loop that measures so; what is computed with it is counted.
    pub fn new(coil: &ResolvedLoop, electrical: &ElectricalFigures, budget: &WorkBudget) -> Self {
        Self {
            primary: PrimaryLoop::new(&coil.winding()),
            terminal: electrical.terminal_inductance.get::<henry>(),
            depth: (coil.cover + coil.wire.over_insulation / 2.0).get::<meter>(),
            riding_line: coil.riding_line(),
            along: coil.along_travel,
            across: coil.across_lane,
            known: RefCell::default(),
            budget: budget.clone(),
        }
    }

    /// The change ΔL/L at the terminals with the vehicle's front `front` past the loop's leading edge, its middle `offset` across
    /// from the loop's.
    pub fn change(&self, model: &VehicleModel, front: Length, offset: Length) -> Ratio {
        self.change_at_height(model, model.height, front, offset)
    }

    /// The same with its metal at another height.
    pub fn change_at_height(&self, model: &VehicleModel, height: Length, front: Length, offset: Length) -> Ratio {
        // Loops and vehicles are the same on both sides, loops before and behind, and so are vehicles of one part.
        let x = nanometres(offset.get::<meter>().abs());
        let beyond_middle = (front - self.along / 2.0 - model.middle).get::<meter>();
        let beyond_middle = if model.parts.len() == 1 { beyond_middle.abs() } else { beyond_middle };
        let y = model.middle.get::<meter>() + nanometres(beyond_middle);
        let z = height.get::<meter>() + self.depth;
        let henries = match &*model.shape {
            FactoredShape::Underside(plate) => {
                let place = (Arc::as_ptr(&model.shape).addr(), [x, y, z].map(f64::to_bits));
                *self.known.borrow_mut().entry(place).or_insert_with(|| {
                    self.budget.count(plate.steps(&self.primary, [x, y, z]));
                    plate.change(&self.primary, [x, y, z])
                })
            }
            FactoredShape::Upright(turn) => {
                self.budget.count(UPRIGHT_STEPS);
                turn.change(&self.primary, [x, y - model.middle.get::<meter>(), z])
            }
        };
        Ratio::new::<ratio>((henries / self.terminal).max(0.0))
    }

    /// What is left of a change until the vehicle's tail reaches the loop's first wire. `None` for a two-wheeler, and for a vehicle that
    /// lies wholly over the loop before it stands best.
    ///
    /// Sampled where it can be least, as a search asks for it often: from each gap on both ways as long as it falls, under each later
    /// part, and at the tail.
    pub fn weakest_until_tail(&self, model: &VehicleModel, offset: Length) -> Option<WeakestChange> {
        let over_middle = |behind: Length| behind + self.along / 2.0;
        let (first, later) = model.parts.split_first()?;
        let best = over_middle(*first);
        let change = |front: &Length| self.change(model, *front, offset);
        let is_counted = |front: &Length| *front > best && *front <= model.length;
        let downhill = |gap: Length, step: f64| {
            let places = (0..=VALLEY_STEPS).map(move |count| gap + Length::new::<meter>(step * f64::from(count)));
            let changes = places.filter(is_counted).map(|front| change(&front));
            changes
                .scan(None, |before, next| before.replace(next).is_none_or(|before| next <= before).then_some(next))
                .last()
        };
        let gaps = model.gaps.iter().map(|gap| over_middle(*gap));
        let of_gaps = gaps.flat_map(|gap| [-VALLEY_STEP_M, VALLEY_STEP_M].map(|step| downhill(gap, step))).flatten();
        let elsewhere = later.iter().map(|part| over_middle(*part)).chain([model.length]);
        let least = of_gaps.chain(elsewhere.filter(is_counted).map(|front| change(&front))).reduce(Ratio::min)?;
        Some(WeakestChange { first: self.change(model, best, offset), least })
    }

    /// The front's position with the middle of the vehicle's longest part over the loop's: where one long enough is seen best.
    pub fn centred(&self, model: &VehicleModel) -> Length {
        self.along / 2.0 + model.middle
    }
}
