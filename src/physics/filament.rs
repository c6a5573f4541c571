//! Neumann's integral for straight filaments: every inductance here is a sum of these.
//!
//! `M = (μ0 / 4π) ∬ (dl₁ · dl₂) / R` has a closed form for any two straight segments. A filament is
//! a wire without thickness; a round wire stands in by its geometric mean radius.

use super::MU_0;

/// A position in metres: across the lane, along travel, up.
pub type Point3 = [f64; 3];

/// μ0 / 4π, the factor of Neumann's integral, in H/m.
pub(super) const NEUMANN: f64 = MU_0 / (4.0 * std::f64::consts::PI);

/// Square of the sine under which two segments count as parallel (an angle of 10⁻⁴).
///
/// Below it the inclined form loses more by rounding than leaving out the tilt does.
const PARALLEL_SINE_SQUARED: f64 = 1e-8;

/// Cosine under which two segments count as perpendicular.
const PERPENDICULAR_COSINE: f64 = 1e-14;

/// Overlap of collinear segments, as a share of their lengths, that is only rounding.
const OVERLAP_TOLERANCE: f64 = 1e-12;

/// A straight filament, in metres; the current flows from `from` to `to`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filament {
    /// Where the current enters.
    pub from: Point3,
    /// Where the current leaves.
    pub to: Point3,
}

impl Filament {
    /// Length in metres; from (0, 0, 0) to (3, 4, 0) it is 5 m.
    pub fn length(&self) -> f64 {
        let along = difference(self.to, self.from);
        dot(along, along).sqrt()
    }

    /// The same wire with the current the other way, which turns the sign of every [`mutual`].
    #[must_use]
    pub fn reversed(self) -> Self {
        Self { from: self.to, to: self.from }
    }

    /// The same wire moved by `offset` metres.
    #[must_use]
    pub fn shifted(self, offset: Point3) -> Self {
        Self { from: sum(self.from, offset), to: sum(self.to, offset) }
    }
}

/// Inductance in henry of two equal parallel filaments side by side, which is also the partial
/// self-inductance of a straight wire whose geometric mean distance from itself is `mean_distance`.
///
/// `length` and `mean_distance` in metres, both positive. For a round wire of radius r the mean
/// distance is r·e^(-Y): Y = 1/4 while the current fills the wire, 0 when it flows in the skin only.
///
/// Source: Rosa, NBS Bulletin 4 no. 2 (1908, from memory); Rosa & Grover, NBS Bulletin 8 no. 1.
/// Worked number: 1 m of wire of 1 mm radius at low frequency, 1.3703 µH.
pub fn self_inductance(length: f64, mean_distance: f64) -> f64 {
    let diagonal = length.hypot(mean_distance);
    let logarithm = ((length + diagonal) / mean_distance).ln();
    2.0 * NEUMANN * (length * logarithm - diagonal + mean_distance)
}

/// Mutual inductance in henry of two straight filaments in any position, positive when their
/// currents run with each other.
///
/// Exact for thin wires, whether crossing, touching at an end or skew; 0 for a segment of no length.
/// Two segments that lie on one another have no finite value and give an infinite one: a wire's
/// effect on itself is [`self_inductance`]. Within 10⁻⁴ of parallel the tilt is left out, which
/// costs about (tilt · length / distance)² of the value.
///
/// Source: Grover, *Inductance Calculations*, chapters 6 and 7 (formulas from memory, checked
/// against numerical integration).
/// Worked number: two 1 m wires from one corner at 60°, 0.10986 µH, which is (μ0/4π) · ln 3.
pub fn mutual(a: &Filament, b: &Filament) -> f64 {
    let along_a = difference(a.to, a.from);
    let along_b = difference(b.to, b.from);
    let squares = dot(along_a, along_a) * dot(along_b, along_b);
    let projection = dot(along_a, along_b);
    if projection * projection <= PERPENDICULAR_COSINE * PERPENDICULAR_COSINE * squares {
        return 0.0;
    }
    let normal = cross(along_a, along_b);
    if dot(normal, normal) <= PARALLEL_SINE_SQUARED * squares {
        parallel(a, b, projection.signum())
    } else {
        inclined(a, b)
    }
}

/// Parallel segments of any lengths and offset; `sign` is -1 when they run against each other.
fn parallel(a: &Filament, b: &Filament, sign: f64) -> f64 {
    let along = difference(a.to, a.from);
    let (length_a, length_b) = (a.length(), b.length());

    // `b` as an interval on the line of `a`, which covers 0..length_a, and its distance aside.
    let middle = scale(sum(b.from, b.to), 0.5);
    let reach = difference(middle, a.from);
    let share = dot(reach, along) / dot(along, along);
    let position = share * length_a;
    let aside = difference(reach, scale(along, share));
    let distance_squared = dot(aside, aside);
    let start = position - 0.5 * length_b;
    let end = position + 0.5 * length_b;

    let integral = |z: f64| {
        let z = z.abs();
        let slant = (z * z + distance_squared).sqrt();
        if z > 0.0 { z * (z + slant).ln() - slant } else { -slant }
    };
    let mut sum = integral(end) - integral(start) + integral(length_a - start) - integral(length_a - end);
    // The inverse hyperbolic sines of the closed form, ln((z + slant) / distance), all contain the
    // distance. It cancels unless the intervals overlap, and leaving it out where it does makes
    // collinear segments as good as any others.
    let tolerance = OVERLAP_TOLERANCE * (length_a + length_b);
    if start < length_a - tolerance && end > tolerance {
        let overlap = end.min(length_a) - start.max(0.0);
        sum -= overlap * distance_squared.ln();
    }
    sign * NEUMANN * sum
}

/// Segments at an angle, by the feet of the common perpendicular of their lines.
fn inclined(a: &Filament, b: &Filament) -> f64 {
    let length_a = a.length();
    let length_b = b.length();
    let axis_a = scale(difference(a.to, a.from), length_a.recip());
    let axis_b = scale(difference(b.to, b.from), length_b.recip());
    let normal = cross(axis_a, axis_b);
    let cosine = dot(axis_a, axis_b);
    let sine_squared = dot(normal, normal);
    let sine = sine_squared.sqrt();

    // Coordinates of the four ends, each along its own line and counted from the foot.
    let reach = difference(b.from, a.from);
    let (along_a, along_b) = (dot(reach, axis_a), dot(reach, axis_b));
    let a_from = (along_b * cosine - along_a) / sine_squared;
    let b_from = (along_b - along_a * cosine) / sine_squared;
    let (a_to, b_to) = (a_from + length_a, b_from + length_b);
    let distance = dot(reach, normal).abs() / sine;

    let to_to = separation(a.to, b.to);
    let to_from = separation(a.to, b.from);
    let from_from = separation(a.from, b.from);
    let from_to = separation(a.from, b.to);

    let edges = a_to * inverse_distance_integral(length_b, to_to + to_from)
        + b_to * inverse_distance_integral(length_a, to_to + from_to)
        - a_from * inverse_distance_integral(length_b, from_from + from_to)
        - b_from * inverse_distance_integral(length_a, from_from + to_from);

    // The two lines' distance enters by four arctangents, taken two at a time as the argument of
    // a quotient. Each alone is within ±π/2, so no difference of two can leave its branch.
    let corner = |x: f64, y: f64, separation: f64| {
        (distance * separation * sine, distance * distance * cosine + x * y * sine_squared)
    };
    let angle = if distance > 0.0 {
        quotient_argument(corner(a_to, b_to, to_to), corner(a_to, b_from, to_from))
            + quotient_argument(corner(a_from, b_from, from_from), corner(a_from, b_to, from_to))
    } else {
        0.0
    };
    NEUMANN * cosine * (edges - angle * distance / sine)
}

/// ∫ ds/R along a segment, seen from a point whose distances to its two ends add to `detour`.
///
/// 0 from a point on the segment itself, where the integral is infinite: there the factor before
/// it vanishes faster.
fn inverse_distance_integral(length: f64, detour: f64) -> f64 {
    let excess = detour - length;
    if excess > 0.0 { ((detour + length) / excess).ln() } else { 0.0 }
}

/// The argument of p/q for two complex numbers given as (real, imaginary).
fn quotient_argument(p: (f64, f64), q: (f64, f64)) -> f64 {
    (p.1 * q.0 - p.0 * q.1).atan2(p.0 * q.0 + p.1 * q.1)
}

fn sum(a: Point3, b: Point3) -> Point3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

fn difference(a: Point3, b: Point3) -> Point3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn scale(a: Point3, factor: f64) -> Point3 {
    [a[0] * factor, a[1] * factor, a[2] * factor]
}

fn dot(a: Point3, b: Point3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Point3, b: Point3) -> Point3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn separation(a: Point3, b: Point3) -> f64 {
    let along = difference(b, a);
    dot(along, along).sqrt()
}

#[cfg(test)]
mod tests;
