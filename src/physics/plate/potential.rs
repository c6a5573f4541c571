//! The potential of a loop's unit current at many points at once.
//!
//! The flux through a level or an upright rectangle is the mixed difference of a potential over its four corners. Nearly all of what a
//! response costs is computed here.

#![expect(clippy::inline_always, reason = "only what is inlined is compiled for the wider registers")]

use pulp::NullaryFnOnce;

use super::super::filament::Point3;
use super::lanes::{BLOCK, ln_of_quotients, with_widest};
use super::primary::{ACROSS, ALONG, AskewPieces, PrimaryLoop, WireEnds};

/// How many factors are multiplied before one logarithm is taken of them: few enough that no product leaves the range of numbers.
const FACTORS: usize = 16;

/// How a rectangle lies to the loop, which says whose wires drive flux through it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Facing {
    /// Level: its mixed difference is in x and y.
    Up,
    /// Upright across the lane: in x and z.
    Along,
    /// Upright along travel: in y and z.
    Across,
}

impl Facing {
    /// The axes of the wires that count.
    const fn wires(self) -> &'static [usize] {
        match self {
            Self::Up => &[ACROSS, ALONG],
            Self::Along => &[ACROSS],
            Self::Across => &[ALONG],
        }
    }
}

/// Points side by side, by coordinate.
type Points<const N: usize> = [[f64; N]; 3];

/// Points whose potentials are asked for together, in blocks.
#[derive(Clone, Debug)]
pub(super) struct PointBlocks {
    /// The last block is filled up with the last point.
    blocks: Vec<Points<BLOCK>>,
    count: usize,
}

impl PointBlocks {
    pub(super) fn new(points: &[Point3]) -> Self {
        let block = |points: &[Point3]| {
            let at = |lane: usize| points[lane.min(points.len() - 1)];
            [0, 1, 2].map(|axis| std::array::from_fn(|lane| at(lane)[axis]))
        };
        Self { blocks: points.chunks(BLOCK).map(block).collect(), count: points.len() }
    }

    /// The points, one by one.
    #[cfg(test)]
    pub(super) fn points(&self) -> impl Iterator<Item = Point3> {
        let of_block = |block: &Points<BLOCK>| std::array::from_fn::<_, BLOCK, _>(|lane| block.map(|axis| axis[lane]));
        self.blocks.iter().flat_map(of_block).take(self.count)
    }

    /// How many points there are.
    pub(super) const fn count(&self) -> usize {
        self.count
    }
}

impl PrimaryLoop {
    /// Potentials in units of μ0/4π at points that are moved by `shift` into the loop's axes: their mixed difference is the flux of a unit
    /// current through a rectangle that lies so.
    pub(super) fn potentials(&self, facing: Facing, points: &PointBlocks, shift: Point3) -> Vec<f64> {
        let mut potentials = vec![0.0; points.blocks.len() * BLOCK];
        self.evaluate(facing, &points.blocks, shift, potentials.as_chunks_mut().0);
        potentials.truncate(points.count);
        potentials
    }

    /// The same at a few points.
    pub(super) fn potentials_at<const N: usize>(&self, facing: Facing, points: [Point3; N]) -> [f64; N] {
        let mut potentials = [[0.0; N]];
        let points = [0, 1, 2].map(|axis| points.map(|point| point[axis]));
        self.evaluate(facing, &[points], [0.0; 3], &mut potentials);
        potentials[0]
    }

    fn evaluate<const N: usize>(
        &self,
        facing: Facing,
        points: &[Points<N>],
        shift: Point3,
        potentials: &mut [[f64; N]],
    ) {
        with_widest(Evaluation { primary: self, axes: facing.wires(), points, shift, potentials });
    }
}

/// Potentials that are asked for.
struct Evaluation<'a, const N: usize> {
    primary: &'a PrimaryLoop,
    axes: &'static [usize],
    points: &'a [Points<N>],
    shift: Point3,
    potentials: &'a mut [[f64; N]],
}

impl<const N: usize> NullaryFnOnce for Evaluation<'_, N> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        for (points, potentials) in self.points.iter().zip(self.potentials) {
            let mut points = *points;
            for (axis, shift) in points.iter_mut().zip(self.shift) {
                for coordinate in axis {
                    *coordinate += shift;
                }
            }
            for &axis in self.axes {
                for ends in &self.primary.ends[axis] {
                    add_straight(potentials, ends, axis, &points);
                }
                for pieces in &self.primary.askew {
                    add_pieces(potentials, pieces, axis, &points);
                }
            }
            if !self.primary.cuts.is_empty() {
                add_cuts(potentials, self.primary, self.axes, &points);
            }
            for potential in potentials {
                *potential *= self.primary.turns;
            }
        }
    }
}

/// Adds Σ ±(s·ln(s + R) - R) over the ends of wires along an axis, where s is the part of R in its direction:
/// [`second_antiderivative`](super::mesh::second_antiderivative). Ends of one s share a logarithm.
#[inline(always)]
fn add_straight<const N: usize>(sum: &mut [f64; N], ends: &WireEnds, axis: usize, points: &Points<N>) {
    let (mut plus, mut minus, mut distances) = ([1.0; N], [1.0; N], [0.0; N]);
    for end in &ends.plus {
        let apart = distances_from(*end, points);
        for lane in 0..N {
            plus[lane] *= points[axis][lane] - ends.at + apart[lane];
            distances[lane] += apart[lane];
        }
    }
    for end in &ends.minus {
        let apart = distances_from(*end, points);
        for lane in 0..N {
            minus[lane] *= points[axis][lane] - ends.at + apart[lane];
            distances[lane] -= apart[lane];
        }
    }
    let logarithms = ln_of_quotients(&plus, &minus);
    for lane in 0..N {
        sum[lane] += (points[axis][lane] - ends.at) * logarithms[lane] - distances[lane];
    }
}

/// Adds Σ ±(leg/2)·ln(s + R) over the points of the corner cuts, for the parts along some `axes`: the derivative of such a term times
/// its share of the path.
#[inline(always)]
fn add_cuts<const N: usize>(sum: &mut [f64; N], primary: &PrimaryLoop, axes: &[usize], points: &Points<N>) {
    let (mut plus, mut minus) = ([1.0; N], [1.0; N]);
    for cut in &primary.cuts {
        let apart = distances_from(cut.point, points);
        for &axis in axes {
            let product = if cut.adds[axis] { &mut plus } else { &mut minus };
            for lane in 0..N {
                product[lane] *= points[axis][lane] - cut.point[axis] + apart[lane];
            }
        }
    }
    let logarithms = ln_of_quotients(&plus, &minus);
    for lane in 0..N {
        sum[lane] += 0.5 * primary.leg * logarithms[lane];
    }
}

/// Adds the same of the pieces of wires that lie askew; points of one weight share logarithms.
#[inline(always)]
fn add_pieces<const N: usize>(sum: &mut [f64; N], pieces: &AskewPieces, axis: usize, points: &Points<N>) {
    for places in pieces.points.chunks(FACTORS) {
        let mut product = [1.0; N];
        for place in places {
            let apart = distances_from(*place, points);
            for lane in 0..N {
                product[lane] *= points[axis][lane] - place[axis] + apart[lane];
            }
        }
        let logarithms = ln_of_quotients(&product, &[1.0; N]);
        for lane in 0..N {
            sum[lane] += pieces.weights[axis] * logarithms[lane];
        }
    }
}

#[inline(always)]
fn distances_from<const N: usize>([x, y, z]: Point3, [xs, ys, zs]: &Points<N>) -> [f64; N] {
    let mut distances = [0.0; N];
    for lane in 0..N {
        let (dx, dy, dz) = (xs[lane] - x, ys[lane] - y, zs[lane] - z);
        distances[lane] = (dx * dx + dy * dy + dz * dz).sqrt();
    }
    distances
}

#[cfg(test)]
mod tests {
    use super::super::super::winding::{Winding, WindingShape};
    use super::*;

    // So a request is answered alike on every machine.
    #[test]
    fn wider_registers_give_the_same_digits() {
        let winding = Winding {
            shape: WindingShape::Quadrupole,
            along: 1.83,
            across: 2.44,
            corner_cut: 0.3,
            turns: 3,
            pitch: 3.8e-3,
            wire_radius: 0.8e-3,
        };
        let places: Vec<Point3> =
            (0..100_u8).map(|place| [0.07, 0.11, 0.01].map(|step| step * f64::from(place))).collect();
        let (points, shift) = (PointBlocks::new(&places), [-2.0, -5.0, 0.3]);
        for primary in [PrimaryLoop::new(&winding), PrimaryLoop::rotated(&winding, 0.4, |_| 1.0)] {
            let wide = primary.potentials(Facing::Up, &points, shift);
            let mut narrow = vec![[0.0; BLOCK]; points.blocks.len()];
            let axes = Facing::Up.wires();
            Evaluation { primary: &primary, axes, points: &points.blocks, shift, potentials: &mut narrow }.call();
            assert_eq!(wide, narrow.as_flattened()[..wide.len()]);
        }
    }
}
