//! A loop as metal above or beside it sees it: the fluxes of its unit current.

use super::super::filament::{Point, Segment};
use super::super::winding::{Shape, Winding};
use super::mesh::Parity;

/// Points of two-point Gauss quadrature on 0..1; both weigh a half.
const GAUSS: [f64; 2] = [0.211_324_865_405_187_1, 0.788_675_134_594_812_9];

/// The axes, by their place in a [`Point`].
const ACROSS: usize = 0;
const ALONG: usize = 1;

/// A loop prepared for the fluxes that it drives through metal: once, for any number of positions.
///
/// The wires of a slot count as one bundle at their mean depth, as [`Winding::outline`] gives them.
///
/// The flux through a level or an upright rectangle is the mixed difference, over its four corners,
/// of a potential that sums over the ends of the loop's wires. Cells of a grid share their corners,
/// so each edge is integrated once. This is exact for the wires along the axes; corner cuts are
/// integrated by two-point Gauss quadrature, good to 10⁻⁴ of the whole from a cut's length away.
#[derive(Clone, Debug)]
pub struct Primary {
    turns: f64,
    /// Ends of the wires along each axis, those of one coordinate on that axis together.
    ends: [Vec<Ends>; 2],
    /// Leg of the corner cuts, which run at 45°.
    leg: f64,
    /// Quadrature points of the corner cuts.
    cuts: Vec<Cut>,
    /// What reflection in x = 0 makes of the field.
    parity: Parity,
}

/// Ends of wires in one direction, by the sign of what they add to the potential.
#[derive(Clone, Debug)]
struct Ends {
    at: f64,
    plus: Vec<Point>,
    minus: Vec<Point>,
}

/// A point that stands for half a corner cut.
#[derive(Clone, Copy, Debug)]
struct Cut {
    point: Point,
    /// Whether its wires' part along each axis adds to the potential.
    adds: [bool; 2],
}

impl Primary {
    /// Prepares a loop that lies at the origin of the axes.
    pub fn new(winding: &Winding) -> Self {
        let parity = match winding.shape {
            Shape::Rectangle => Parity::Even,
            Shape::Quadrupole => Parity::Odd,
        };
        Self::wound(winding, parity, |point| point)
    }

    /// Prepares the loop turned by 90° anticlockwise, seen from above.
    ///
    /// For metal beside the lane, such as a leaf that stands open: what was the loop's right side
    /// now lies ahead, where a [`Wall`](super::Wall) is.
    pub fn turned(winding: &Winding) -> Self {
        // Front and back of either shape are alike.
        Self::wound(winding, Parity::Even, |[x, y, z]| [-y, x, z])
    }

    fn wound(winding: &Winding, parity: Parity, place: impl Fn(Point) -> Point) -> Self {
        let mut primary = Self {
            turns: f64::from(winding.turns),
            ends: [Vec::new(), Vec::new()],
            leg: 0.0,
            cuts: Vec::new(),
            parity,
        };
        for strand in winding.outline() {
            let Segment { from, to } = strand.segment;
            // A slot of twice the wires is two slots in one place: so all currents are alike.
            let bundles = (strand.wires / primary.turns).round() as usize;
            for _ in 0..bundles {
                primary.wind(place(from), place(to));
            }
        }
        primary
    }

    /// Adds a wire. Round a rectangle its parts across and along count in opposite senses.
    fn wind(&mut self, from: Point, to: Point) {
        let run = [to[0] - from[0], to[1] - from[1]];
        if run[ALONG] == 0.0 {
            add_ends(&mut self.ends[ACROSS], ACROSS, to, from);
        } else if run[ACROSS] == 0.0 {
            add_ends(&mut self.ends[ALONG], ALONG, from, to);
        } else {
            self.leg = run[ACROSS].abs();
            self.cuts.extend(GAUSS.map(|share| Cut {
                point: [from[0] + share * run[0], from[1] + share * run[1], from[2]],
                adds: [run[ACROSS] < 0.0, run[ALONG] > 0.0],
            }));
        }
    }

    /// The parity of the field, if it has one as seen from a body `offset` across from the loop.
    pub(super) fn symmetry(&self, offset: f64) -> Option<Parity> {
        (offset == 0.0).then_some(self.parity)
    }

    /// Potential, in units of μ0/4π, whose mixed difference in x and y is the flux of a unit
    /// current through a level rectangle.
    pub(super) fn level(&self, point: Point) -> f64 {
        let straight = self.straight::<ACROSS>(point) + self.straight::<ALONG>(point);
        self.turns * (straight + self.inclined(point, &[ACROSS, ALONG]))
    }

    /// The same for a rectangle that stands across the lane: its mixed difference is in x and z.
    pub(super) fn across(&self, point: Point) -> f64 {
        self.turns * (self.straight::<ACROSS>(point) + self.inclined(point, &[ACROSS]))
    }

    /// The same for a rectangle that stands along travel: its mixed difference is in y and z.
    pub(super) fn along(&self, point: Point) -> f64 {
        self.turns * (self.straight::<ALONG>(point) + self.inclined(point, &[ALONG]))
    }

    /// Σ ±(s·ln(s + R) - R) over the ends of the wires along an axis, where s is the part of R in
    /// its direction: [`strand`](super::mesh::strand). Ends of one s share a logarithm.
    fn straight<const AXIS: usize>(&self, point: Point) -> f64 {
        let mut potential = 0.0;
        for ends in &self.ends[AXIS] {
            let s = point[AXIS] - ends.at;
            let sums = |points: &[Point]| {
                points.iter().fold((1.0, 0.0), |(product, sum), end| {
                    let distance = distance(point, *end);
                    (product * (s + distance), sum + distance)
                })
            };
            let (plus, minus) = (sums(&ends.plus), sums(&ends.minus));
            potential += s * (plus.0 / minus.0).ln() - (plus.1 - minus.1);
        }
        potential
    }

    /// Σ ±(leg/2)·ln(s + R) over the points of the corner cuts, for the parts along some `axes`:
    /// the derivative of a strand times its share of the path.
    #[inline]
    fn inclined(&self, point: Point, axes: &[usize]) -> f64 {
        if self.cuts.is_empty() {
            return 0.0;
        }
        let (mut plus, mut minus) = (1.0, 1.0);
        for cut in &self.cuts {
            let distance = distance(point, cut.point);
            for &axis in axes {
                let factor = point[axis] - cut.point[axis] + distance;
                if cut.adds[axis] {
                    plus *= factor;
                } else {
                    minus *= factor;
                }
            }
        }
        0.5 * self.leg * (plus / minus).ln()
    }
}

fn add_ends(ends: &mut Vec<Ends>, axis: usize, plus: Point, minus: Point) {
    for (end, adds) in [(plus, true), (minus, false)] {
        let at = end[axis];
        let place = ends.iter().position(|group| group.at == at).unwrap_or_else(|| {
            ends.push(Ends { at, plus: Vec::new(), minus: Vec::new() });
            ends.len() - 1
        });
        let group = &mut ends[place];
        let points = if adds { &mut group.plus } else { &mut group.minus };
        points.push(end);
    }
}

fn distance(a: Point, b: Point) -> f64 {
    let [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
    (x * x + y * y + z * z).sqrt()
}
