//! A loop as metal above or beside it sees it: the fluxes of its unit current.

use std::ops::Range;

use super::super::filament::{Filament, Point3};
use super::super::winding::{Winding, WindingShape};

/// Points of two-point Gauss quadrature on 0..1; both weigh a half.
const GAUSS: [f64; 2] = [0.211_324_865_405_187_1, 0.788_675_134_594_812_9];

/// The axes, by their place in a [`Point3`].
pub(super) const ACROSS: usize = 0;
pub(super) const ALONG: usize = 1;

/// Behaviour of a distribution under reflection in the plane x = 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Parity {
    Even,
    Odd,
}

impl Parity {
    /// What the distribution on one side is multiplied by for the other.
    pub(super) const fn sign(self) -> f64 {
        match self {
            Self::Even => 1.0,
            Self::Odd => -1.0,
        }
    }
}

/// A loop prepared for the fluxes that it drives through metal: once, for any number of positions.
///
/// The wires of a slot count as one bundle at their mean depth, as [`Winding::outline`] gives them.
///
/// The flux through a level or an upright rectangle is the mixed difference, over its four corners,
/// of a potential that sums over the ends of the loop's wires. Cells of a grid share their corners,
/// so each edge is integrated once. This is exact for the wires along the axes; corner cuts are
/// integrated by two-point Gauss quadrature, good to 10⁻⁴ of the whole from a cut's length away.
#[derive(Clone, Debug)]
pub struct PrimaryLoop {
    pub(super) turns: f64,
    /// Ends of the wires along each axis, those of one coordinate on that axis together.
    pub(super) ends: [Vec<WireEnds>; 2],
    /// Leg of the corner cuts, which run at 45°.
    pub(super) leg: f64,
    pub(super) cuts: Vec<CornerCut>,
    /// The wires of a loop that lies askew.
    pub(super) askew: Vec<AskewPieces>,
    /// What reflection in x = 0 makes of the field.
    parity: Parity,
    /// Whether reflection in y = 0 leaves the field as it is.
    is_even_along: bool,
}

/// Ends of wires in one direction, by the sign of what they add to the potential.
#[derive(Clone, Debug)]
pub(super) struct WireEnds {
    pub(super) at: f64,
    pub(super) plus: Vec<Point3>,
    pub(super) minus: Vec<Point3>,
}

/// Pieces of a wire in any direction, all of one length.
#[derive(Clone, Debug)]
pub(super) struct AskewPieces {
    /// The quadrature points, two in each piece.
    pub(super) points: Vec<Point3>,
    /// What the parts of half a piece across and along add to the potential, metres.
    pub(super) weights: [f64; 2],
}

/// The length of the pieces of a wire that lies askew where it is nearest to metal, metres at most.
const PIECE_M: f64 = 0.5;

/// Farther from metal pieces are longer, up to its distance over this: their error falls with the fourth power of it.
const PIECES_IN_DISTANCE: f64 = 6.0;

/// A corner cut, by two points that stand for half of it each.
#[derive(Clone, Copy, Debug)]
pub(super) struct CornerCut {
    pub(super) points: [Point3; 2],
    /// Whether its wires' part along each axis adds to the potential.
    pub(super) adds: [bool; 2],
}

impl PrimaryLoop {
    /// Prepares a loop that lies at the origin of the axes.
    pub fn new(winding: &Winding) -> Self {
        let parity = match winding.shape {
            WindingShape::Rectangle => Parity::Even,
            WindingShape::Quadrupole => Parity::Odd,
        };
        Self { is_even_along: true, ..Self::wound(winding, parity, |point| point) }
    }

    /// Prepares the loop turned by 90° anticlockwise, seen from above.
    ///
    /// For metal beside the lane, such as a leaf that stands open: what was the loop's right side
    /// now lies ahead, where a [`Wall`](super::Wall) is.
    pub fn turned(winding: &Winding) -> Self {
        // Front and back of either shape are alike.
        Self::wound(winding, Parity::Even, |[x, y, z]| [-y, x, z])
    }

    /// Prepares the loop turned by any angle in radians, anticlockwise seen from above, for a [`Wall`](super::Wall) askew to it.
    ///
    /// Its wires are integrated by two-point Gauss quadrature over pieces of 0.5 m at most, longer ones away from the metal, whose
    /// `distance` in metres from a point of the turned loop is asked for: good to 10⁻³ of the whole from 1 m away.
    pub fn rotated(winding: &Winding, angle: f64, distance: impl Fn(Point3) -> f64) -> Self {
        let (sine, cosine) = angle.sin_cos();
        let mut primary = Self::empty(winding, Parity::Even);
        let place = |[x, y, z]: Point3| [cosine * x - sine * y, sine * x + cosine * y, z];
        for strand in winding.outline() {
            let (from, to) = (place(strand.segment.from), place(strand.segment.to));
            let wire = AskewWire { from, to, pieces: (strand.segment.length() / PIECE_M).ceil().max(1.0) as usize };
            let mut spans = Vec::new();
            wire.divide(0..wire.pieces, &distance, &mut spans);
            spans.sort_by_key(ExactSizeIterator::len);
            for alike in spans.chunk_by(|one, other| one.len() == other.len()) {
                let share = 0.5 * strand.wires / primary.turns * alike[0].len() as f64;
                let run = [0, 1].map(|axis| (to[axis] - from[axis]) / wire.pieces as f64);
                primary.askew.push(AskewPieces {
                    points: alike.iter().flat_map(|span| GAUSS.map(|gauss| wire.point(span, gauss))).collect(),
                    weights: [-share * run[ACROSS], share * run[ALONG]],
                });
            }
        }
        primary
    }

    fn empty(winding: &Winding, parity: Parity) -> Self {
        Self {
            turns: f64::from(winding.turns),
            ends: [Vec::new(), Vec::new()],
            leg: 0.0,
            cuts: Vec::new(),
            askew: Vec::new(),
            parity,
            is_even_along: false,
        }
    }

    fn wound(winding: &Winding, parity: Parity, place: impl Fn(Point3) -> Point3) -> Self {
        let mut primary = Self::empty(winding, parity);
        for strand in winding.outline() {
            let Filament { from, to } = strand.segment;
            // A slot of twice the wires is two slots in one place: so all currents are alike.
            let bundles = (strand.wires / primary.turns).round() as usize;
            for _ in 0..bundles {
                primary.wind(place(from), place(to));
            }
        }
        primary
    }

    /// Adds a wire. Round a rectangle its parts across and along count in opposite senses.
    fn wind(&mut self, from: Point3, to: Point3) {
        let run = [to[0] - from[0], to[1] - from[1]];
        if run[ALONG] == 0.0 {
            add_ends(&mut self.ends[ACROSS], ACROSS, to, from);
        } else if run[ACROSS] == 0.0 {
            add_ends(&mut self.ends[ALONG], ALONG, from, to);
        } else {
            self.leg = run[ACROSS].abs();
            self.cuts.push(CornerCut {
                points: GAUSS.map(|share| [from[0] + share * run[0], from[1] + share * run[1], from[2]]),
                adds: [run[ACROSS] < 0.0, run[ALONG] > 0.0],
            });
        }
    }

    /// The parity of the field, if it has one as seen from a body `offset` across from the loop.
    pub(super) fn symmetry(&self, offset: f64) -> Option<Parity> {
        (offset == 0.0 && self.askew.is_empty()).then_some(self.parity)
    }

    /// Whether the field before and behind the loop's middle is the same.
    pub(super) const fn is_even_along(&self) -> bool {
        self.is_even_along
    }

    /// The distances that one potential at a level corner takes.
    pub(super) fn distances(&self) -> usize {
        let ends = self.ends.iter().flatten().map(|group| group.plus.len() + group.minus.len());
        ends.sum::<usize>() + 2 * self.cuts.len() + self.askew.iter().map(|pieces| pieces.points.len()).sum::<usize>()
    }
}

/// A straight wire in any direction, divided into shortest pieces.
struct AskewWire {
    from: Point3,
    to: Point3,
    pieces: usize,
}

impl AskewWire {
    /// A place within a span of pieces, as a share of it.
    fn point(&self, span: &Range<usize>, share: f64) -> Point3 {
        let place = (span.start as f64 + share * span.len() as f64) / self.pieces as f64;
        [0, 1, 2].map(|axis| self.from[axis] + place * (self.to[axis] - self.from[axis]))
    }

    /// Divides a span until each part is a shortest piece, or short against its distance from metal.
    fn divide(&self, span: Range<usize>, distance_to_metal: &impl Fn(Point3) -> f64, spans: &mut Vec<Range<usize>>) {
        let length = distance(self.point(&span, 0.0), self.point(&span, 1.0));
        if span.len() == 1 || length * PIECES_IN_DISTANCE <= distance_to_metal(self.point(&span, 0.5)) {
            spans.push(span);
            return;
        }
        let middle = span.start.midpoint(span.end);
        self.divide(span.start..middle, distance_to_metal, spans);
        self.divide(middle..span.end, distance_to_metal, spans);
    }
}

fn add_ends(ends: &mut Vec<WireEnds>, axis: usize, plus: Point3, minus: Point3) {
    for (end, adds) in [(plus, true), (minus, false)] {
        let at = end[axis];
        let place = ends.iter().position(|group| group.at == at).unwrap_or_else(|| {
            ends.push(WireEnds { at, plus: Vec::new(), minus: Vec::new() });
            ends.len() - 1
        });
        let group = &mut ends[place];
        let points = if adds { &mut group.plus } else { &mut group.minus };
        points.push(end);
    }
}

fn distance(a: Point3, b: Point3) -> f64 {
    let [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
    (x * x + y * y + z * z).sqrt()
}
