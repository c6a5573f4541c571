//! How two loops on the ground couple.

use uom::si::f64::{Inductance, Length, Ratio};
use uom::si::inductance::henry;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use crate::calculation::budget::WorkBudget;
use crate::calculation::input::ResolvedLoop;
use crate::physics::filament::{Filament, mutual};
use crate::physics::winding::Strand;

/// A loop whose place is known.
#[derive(Clone, Copy)]
pub struct PlacedCoil<'a> {
    /// The loop.
    pub coil: &'a ResolvedLoop,
    /// The inductance of the loop alone, without its lead-in.
    pub inductance: Inductance,
    /// Where its middle lies, along and across.
    pub position: (Length, Length),
}

impl PlacedCoil<'_> {
    /// The same loop elsewhere.
    #[must_use]
    pub fn moved_to(self, position: (Length, Length)) -> Self {
        Self { position, ..self }
    }

    /// Whether its rectangle on the ground, that of the outline for a quadrupole, and that of another lie over one another. Loops that
    /// only touch do not.
    pub fn overlaps(&self, other: &Self) -> bool {
        let near = |ours: Length, theirs: Length, legs: Length| {
            (ours - theirs).abs() < legs / 2.0 - Length::new::<meter>(TOUCHING_M)
        };
        near(self.position.0, other.position.0, self.coil.along_travel + other.coil.along_travel)
            && near(self.position.1, other.position.1, self.coil.across_lane + other.coil.across_lane)
    }
}

/// What the mutual inductance of two straight wires costs, in steps of the budget. Measured.
const MUTUAL_STEPS: u64 = 5;

/// Rectangles that lie over one another by less than this only touch, metres: texts in feet are not exact in metres.
const TOUCHING_M: f64 = 0.001;

/// The coupling coefficient of two loops: their mutual inductance over the geometric mean of their own.
///
/// The wires of a slot count as one bundle at their mean depth, which is right for neighbours and quick for any number of turns.
pub fn coupling(one: &PlacedCoil<'_>, other: &PlacedCoil<'_>, budget: &WorkBudget) -> Ratio {
    let (from, to) = (one.position, other.position);
    let own = (one.inductance.get::<henry>() * other.inductance.get::<henry>()).sqrt();
    let (ours, theirs) = (one.coil.winding(), other.coil.winding());
    // Wires that would lie on one another lie above one another instead: the loop farther along on top, whichever is named first.
    let sense = if (from.0, from.1) <= (to.0, to.1) { 1.0 } else { -1.0 };
    let offset = [
        (to.1 - from.1).get::<meter>(),
        (to.0 - from.0).get::<meter>(),
        sense * ours.pitch * f64::from(ours.turns.max(theirs.turns)),
    ];
    let is_symmetric = offset[0] == 0.0 && ours.shape == theirs.shape;
    let theirs: Vec<_> =
        theirs.outline().into_iter().map(|strand| (strand.segment.shifted(offset), strand.wires)).collect();
    let flux = |strand: &Strand| {
        theirs.iter().map(|(segment, wires)| strand.wires * wires * mutual(&strand.segment, segment)).sum::<f64>()
    };
    // Where both are alike to the right and to the left, the wires on the right stand for those on the left.
    let weight = |Strand { segment: Filament { from, to }, .. }: &Strand| match from[0] + to[0] {
        _ if !is_symmetric => 1.0,
        place if place.abs() < TOUCHING_M => 1.0,
        place => 1.0 + place.signum(),
    };
    let ours: Vec<_> = ours.outline().into_iter().map(|strand| (weight(&strand), strand)).collect();
    let counted = || ours.iter().filter(|(weight, _)| *weight > 0.0);
    budget.count(MUTUAL_STEPS * (counted().count() * theirs.len()) as u64);
    let mutual: f64 = counted().map(|(weight, strand)| weight * flux(strand)).sum();
    // No coupling exceeds 1, though bundles that nearly touch would.
    Ratio::new::<ratio>((mutual / own).abs().min(1.0))
}
