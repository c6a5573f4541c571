//! The potential of a loop's unit current at many points at once.
//!
//! The flux through a level or an upright rectangle is the mixed difference of a potential over its four corners. Nearly all of what a
//! response costs is computed here.

#![expect(clippy::inline_always, reason = "only what is inlined is compiled for the wider registers")]

use pulp::NullaryFnOnce;

use super::super::filament::Point3;
use super::lanes::{ln_of_quotient, with_widest};
use super::primary::{ACROSS, ALONG, AskewPieces, CornerCut, PrimaryLoop, WireEnds};

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
    /// Whether wires across, and along, count.
    const fn wires(self) -> [bool; 2] {
        [!matches!(self, Self::Across), !matches!(self, Self::Along)]
    }
}

/// How many numbers the widest registers take at a time.
const LANES: usize = 4;

/// Points whose potentials are asked for together, by coordinate.
#[derive(Clone, Debug)]
pub(super) struct PointSet {
    /// Filled up with the last point, so that nothing is left for narrow registers.
    coordinates: [Vec<f64>; 3],
    count: usize,
}

impl PointSet {
    pub(super) fn new(points: &[Point3]) -> Self {
        let fill = points.last().into_iter().cycle().take(points.len().next_multiple_of(LANES) - points.len());
        let filled = || points.iter().chain(fill.clone());
        Self { coordinates: [0, 1, 2].map(|axis| filled().map(|point| point[axis]).collect()), count: points.len() }
    }

    /// How many points there are.
    pub(super) const fn count(&self) -> usize {
        self.count
    }
}

impl PrimaryLoop {
    /// Potentials in units of μ0/4π at points that are moved by `shift` into the loop's axes: their mixed difference is the flux of a unit
    /// current through a rectangle that lies so. Some that nobody asked for may follow.
    pub(super) fn potentials(&self, facing: Facing, points: &PointSet, shift: Point3) -> Vec<f64> {
        let points = points.coordinates.each_ref().map(Vec::as_slice);
        let count = points[0].len();
        let mut sums = vec![0.0; SUMS * count];
        with_widest(Evaluation { primary: self, wires: facing.wires(), points, shift, sums: &mut sums });
        sums.truncate(count);
        sums
    }

    /// The same at a few points.
    pub(super) fn potentials_at<const N: usize>(&self, facing: Facing, points: [Point3; N]) -> [f64; N] {
        let points = [0, 1, 2].map(|axis| points.map(|point| point[axis]));
        let mut sums = [[0.0; N]; SUMS];
        let (points, shift) = (points.each_ref().map(<[f64; N]>::as_slice), [0.0; 3]);
        with_widest(Evaluation { primary: self, wires: facing.wires(), points, shift, sums: sums.as_flattened_mut() });
        sums[0]
    }
}

/// Potentials that are asked for.
struct Evaluation<'a> {
    primary: &'a PrimaryLoop,
    wires: [bool; 2],
    points: [&'a [f64]; 3],
    shift: Point3,
    /// Room for so many sums at each point, all 0; the first are the potentials.
    sums: &'a mut [f64],
}

impl NullaryFnOnce for Evaluation<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        let Self { primary, wires, points, shift, sums } = self;
        let mut sums = Sums::new(points, shift, sums);
        for axis in [ACROSS, ALONG].into_iter().filter(|axis| wires[*axis]) {
            for ends in &primary.ends[axis] {
                sums.add_straight(ends, axis);
            }
            for pieces in &primary.askew {
                sums.add_pieces(pieces, axis);
            }
        }
        if !primary.cuts.is_empty() {
            sums.add_cuts(&primary.cuts, 0.5 * primary.leg, wires);
        }
        for potential in sums.potentials {
            *potential *= primary.turns;
        }
    }
}

/// How many numbers are kept for each point.
const SUMS: usize = 4;

/// What is summed at each point. Each term is a few short loops over all points: in one long loop the steps of a point would wait for one
/// another.
struct Sums<'a> {
    points: [&'a [f64]; 3],
    shift: Point3,
    potentials: &'a mut [f64],
    /// The products whose quotient the next logarithm is taken of.
    dividends: &'a mut [f64],
    divisors: &'a mut [f64],
    distances: &'a mut [f64],
}

impl<'a> Sums<'a> {
    #[inline(always)]
    fn new(points: [&'a [f64]; 3], shift: Point3, sums: &'a mut [f64]) -> Self {
        let count = points[0].len();
        let (potentials, sums) = sums.split_at_mut(count);
        let (dividends, sums) = sums.split_at_mut(count);
        let (divisors, distances) = sums.split_at_mut(count);
        Self { points, shift, potentials, dividends, divisors, distances }
    }

    /// Adds Σ ±(s·ln(s + R) - R) over the ends of wires along an axis, where s is the part of R in its direction:
    /// [`second_antiderivative`](super::mesh::second_antiderivative). Ends of one s share a logarithm.
    #[inline(always)]
    fn add_straight(&mut self, ends: &WireEnds, axis: usize) {
        let count = self.potentials.len();
        let [xs, ys, zs] = self.points.map(|axis| &axis[..count]);
        let (ahead, at) = (&self.points[axis][..count], ends.at - self.shift[axis]);
        let (distances, potentials) = (&mut self.distances[..count], &mut self.potentials[..count]);
        distances.fill(0.0);
        for (ends, sign, factors) in [(&ends.plus, 1.0, &mut *self.dividends), (&ends.minus, -1.0, &mut *self.divisors)]
        {
            let factors = &mut factors[..count];
            factors.fill(1.0);
            for end in ends {
                let end = less(*end, self.shift);
                for place in 0..count {
                    let distance = length(less([xs[place], ys[place], zs[place]], end));
                    factors[place] *= ahead[place] - at + distance;
                    distances[place] += sign * distance;
                }
            }
        }
        let (dividends, divisors) = (&self.dividends[..count], &self.divisors[..count]);
        for place in 0..count {
            let logarithm = ln_of_quotient(dividends[place], divisors[place]);
            potentials[place] += (ahead[place] - at) * logarithm - distances[place];
        }
    }

    /// Adds Σ ±(leg/2)·ln(s + R) over the points of the corner cuts, for the parts in the directions that count: the derivative of such a term times
    /// its share of the path, half a leg.
    #[inline(always)]
    fn add_cuts(&mut self, cuts: &[CornerCut], share: f64, wires: [bool; 2]) {
        let count = self.potentials.len();
        let [xs, ys, zs] = self.points.map(|axis| &axis[..count]);
        let (dividends, divisors) = (&mut self.dividends[..count], &mut self.divisors[..count]);
        let potentials = &mut self.potentials[..count];
        dividends.fill(1.0);
        divisors.fill(1.0);
        for cut in cuts {
            let ends = cut.points.map(|point| less(point, self.shift));
            let counts = |axis: usize, adds: bool| wires[axis] && cut.adds[axis] == adds;
            // Numbers, for a choice within the loop keeps it out of wide registers: what does not count is a factor of 1.
            let weigh =
                |adds: bool| [ACROSS, ALONG].map(|axis| if counts(axis, adds) { (1.0, 0.0) } else { (0.0, 1.0) });
            let (adds, takes) = (weigh(true), weigh(false));
            for place in 0..count {
                let apart = ends.map(|end| less([xs[place], ys[place], zs[place]], end));
                let [one, other] = apart.map(length);
                let across = (apart[0][ACROSS] + one) * (apart[1][ACROSS] + other);
                let along = (apart[0][ALONG] + one) * (apart[1][ALONG] + other);
                let product = |[x, y]: [(f64, f64); 2]| (x.0 * across + x.1) * (y.0 * along + y.1);
                dividends[place] *= product(adds);
                divisors[place] *= product(takes);
            }
        }
        for place in 0..count {
            potentials[place] += share * ln_of_quotient(dividends[place], divisors[place]);
        }
    }

    /// Adds the same of the pieces of wires that lie askew; points of one weight share logarithms.
    #[inline(always)]
    fn add_pieces(&mut self, pieces: &AskewPieces, axis: usize) {
        let count = self.potentials.len();
        let [xs, ys, zs] = self.points.map(|axis| &axis[..count]);
        let ahead = &self.points[axis][..count];
        let (dividends, potentials) = (&mut self.dividends[..count], &mut self.potentials[..count]);
        for ends in pieces.points.chunks(FACTORS) {
            dividends.fill(1.0);
            for end in ends {
                let end = less(*end, self.shift);
                for place in 0..count {
                    let apart = less([xs[place], ys[place], zs[place]], end);
                    dividends[place] *= ahead[place] - end[axis] + length(apart);
                }
            }
            for place in 0..count {
                potentials[place] += pieces.weights[axis] * ln_of_quotient(dividends[place], 1.0);
            }
        }
    }
}

#[inline(always)]
fn less(point: Point3, other: Point3) -> Point3 {
    [point[0] - other[0], point[1] - other[1], point[2] - other[2]]
}

#[inline(always)]
fn length([x, y, z]: Point3) -> f64 {
    (x * x + y * y + z * z).sqrt()
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
        let (points, shift) = (PointSet::new(&places), [-2.0, -5.0, 0.3]);
        for primary in [PrimaryLoop::new(&winding), PrimaryLoop::rotated(&winding, 0.4, |_| 1.0)] {
            let wide = primary.potentials(Facing::Up, &points, shift);
            let mut narrow = vec![0.0; SUMS * wide.len()];
            let coordinates = points.coordinates.each_ref().map(Vec::as_slice);
            let wires = Facing::Up.wires();
            Evaluation { primary: &primary, wires, points: coordinates, shift, sums: &mut narrow }.call();
            assert_eq!(wide, narrow[..wide.len()]);
        }
    }
}
