//! Metal in a loop's field: eddy currents, and the inductance that they take away.
//!
//! At tens of kilohertz a field enters a metal sheet by fractions of a millimetre, so the sheet is a
//! perfect conductor: its currents let no net flux through any part of it. The sheet is divided
//! into cells, each with a current round its rim. With K the mutual inductances between the rims and
//! φ the fluxes of the loop's unit current through them, the cells' currents are -K⁻¹φ and the loop's
//! inductance falls by
//!
//! ```text
//! ΔL = φᵀ K⁻¹ φ
//! ```
//!
//! K depends on the metal alone. It is factored once; a position of the loop then costs the sums of
//! φ and one triangular solution. Each answer is extrapolated from two meshes, one with half the
//! pitch of the other, as what is left of the error goes with the square of the pitch.
//!
//! | metal | here |
//! |---|---|
//! | the underside of a vehicle | [`Plate`], of one [`PlatePanel`] or several |
//! | a gate leaf | [`Wall`] |
//! | a two-wheeler | [`UprightTurn`] |
//! | any of them, at most | [`endless_sheet`], [`endless_wall`] |
//!
//! Source: partial inductances of a meshed conductor (Ruehli 1972, from memory), with filaments for
//! the edges of cells. That an underside is a flat plate is a model, not a measurement.

mod cache;
mod endless;
mod lanes;
mod mesh;
mod potential;
mod primary;
mod upright_turn;

use super::filament::{NEUMANN, Point3};
use mesh::{Grid, Mesh, Part};
use potential::{Facing, PointSet};
use primary::Parity;

pub use cache::BodyCache;
pub use endless::{endless_sheet, endless_wall};
pub use primary::PrimaryLoop;
pub use upright_turn::UprightTurn;

/// Cells of a body's coarse mesh, all panels together, at least and at most. The fine mesh has four
/// times as many.
const COARSE_CELL_COUNT: (f64, f64) = (40.0, 64.0);

/// Area in m² of a coarse cell of a large body, between these limits.
const COARSE_CELL_AREA: f64 = 0.4;

/// What the logarithms of one potential cost, in distances. Measured.
const LOGARITHM_STEPS: usize = 8;

/// How many products of a solution cost as much as one distance. Measured.
const PRODUCTS_IN_STEP: usize = 8;

/// Metres under which a distance is nothing but rounding.
const ROUNDING: f64 = 1e-12;

/// Panels that a body may have: with 2 × 2 coarse cells each they fill the least number.
const MAX_PANELS: usize = 10;

/// A level rectangle of an underside, with its sides across and along the lane. Metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlatePanel {
    /// Side across the lane; every panel is centred across its body.
    pub width: f64,
    /// Side along travel.
    pub length: f64,
    /// Centre along travel, in the body's own axis.
    pub along: f64,
    /// Height over the body's own zero.
    pub rise: f64,
}

impl PlatePanel {
    /// Alone, with the body's origin in its centre.
    const fn single(width: f64, length: f64) -> Self {
        Self { width, length, along: 0.0, rise: 0.0 }
    }

    fn is_sound(&self) -> bool {
        let sides = [self.width, self.length];
        sides.iter().all(|side| side.is_finite() && *side > 0.0) && self.along.is_finite() && self.rise.is_finite()
    }
}

/// A level conducting plate, or several that move together, factored and ready for any loop.
///
/// Plates of one body are coupled: their cells share one matrix.
///
/// Valid down to [`Plate::least_height`]: at that height a plate of a vehicle's size is within 3 % of
/// its exact answer, and at twice that within 0.5 % (one of 16 × 4 m, 6 and 1.5 %). The last few
/// percent of a change, as the plate's end leaves the loop's edge, are up to a tenth too small.
///
/// Worked number: 1.75 × 4.5 m, 0.5 m over the top wire of a 6 × 6 ft loop of 3 turns (pitch
/// 0.150 in), centred: 3.33 µH of 77.0 µH (4.3 %).
#[derive(Clone, Debug)]
pub struct Plate {
    body: MeshedBody,
}

impl Plate {
    /// One plate, `width` across the lane and `length` along travel, in metres.
    ///
    /// `None` unless both are positive and finite.
    pub fn new(width: f64, length: f64) -> Option<Self> {
        Self::assembled(&[PlatePanel::single(width, length)])
    }

    /// One plate, with a coarse mesh of so many cells across and along, at least 2 each.
    ///
    /// For studies of convergence: the cost grows with the cube of the number of cells. `None` as
    /// for [`Plate::new`].
    pub fn with_cells(width: f64, length: f64, cells: [usize; 2]) -> Option<Self> {
        let panel = PlatePanel::single(width, length);
        if !panel.is_sound() {
            return None;
        }
        let body = MeshedBody::meshed(&[panel], &[cells.map(|count| count.max(2))], Facing::Up)?;
        Some(Self { body })
    }

    /// Several plates that move as one body, such as a tractor and its trailer.
    ///
    /// `None` unless there are 1 to 10 panels, every dimension is finite and every side positive.
    /// No two panels may share space.
    pub fn assembled(panels: &[PlatePanel]) -> Option<Self> {
        MeshedBody::new(panels, Facing::Up).map(|body| Self { body })
    }

    /// Fall of the loop's inductance in henry, for the body's origin at `position` in the loop's
    /// axes: across, along, and height over the centre of the loop's top wire, all in metres; the
    /// height is positive.
    ///
    /// At an offset across of exactly 0, where both are symmetric, it takes half the time, and half of that with a single plate's middle
    /// over the loop's.
    pub fn change(&self, primary: &PrimaryLoop, position: Point3) -> f64 {
        self.body.change(primary, position)
    }

    /// How much work one [position](Self::change) is, in steps of one distance of a corner from the end of a wire.
    pub fn steps(&self, primary: &PrimaryLoop, position: Point3) -> u64 {
        self.body.steps(primary, position)
    }

    /// The lowest height in metres over the loop's wires that the meshes resolve.
    ///
    /// Worked number: 0.26 m for a plate of 1.75 × 4.5 m.
    pub fn least_height(&self) -> f64 {
        self.body.least_distance()
    }
}

/// An upright conducting rectangle across the lane, factored and ready for any loop: a gate leaf.
///
/// Its lower edge is level. For one along travel, beside a loop, see [`PrimaryLoop::turned`].
///
/// Valid from [`Wall::least_distance`] on, as [`Plate`] is.
///
/// Worked number: 24 × 6 ft, 4 in off the ground, 4 ft ahead of the edge of a 6 × 20 ft loop of 2
/// turns: 0.096 µH (0.11 %), where [`endless_wall`] gives 0.63 %.
#[derive(Clone, Debug)]
pub struct Wall {
    body: MeshedBody,
    length: f64,
}

impl Wall {
    /// A wall of `length` across the lane and `height`, in metres.
    ///
    /// `None` unless both are positive and finite.
    pub fn new(length: f64, height: f64) -> Option<Self> {
        // The body's second axis, along for a plate, here points up from the lower edge.
        let standing = PlatePanel { along: 0.5 * height, ..PlatePanel::single(length, height) };
        MeshedBody::new(&[standing], Facing::Along).map(|body| Self { body, length })
    }

    /// How far a point of the loop's axes lies from the wall on the ground, in metres, for the middle of its lower edge at `foot`.
    pub fn distance(&self, foot: Point3, point: Point3) -> f64 {
        let beside = ((point[0] - foot[0]).abs() - 0.5 * self.length).max(0.0);
        beside.hypot(point[1] - foot[1])
    }

    /// Fall of the loop's inductance in henry, for the middle of the wall's lower edge at `foot` in
    /// the loop's axes: across, along, and height over the centre of the loop's top wire.
    ///
    /// The second counts from the loop's centre: half its leg plus the gap to its edge.
    pub fn change(&self, primary: &PrimaryLoop, foot: Point3) -> f64 {
        self.body.change(primary, foot)
    }

    /// How much work one position is, as [`Plate::steps`] counts it.
    pub fn steps(&self, primary: &PrimaryLoop, position: Point3) -> u64 {
        self.body.steps(primary, position)
    }

    /// The least distance in metres from the loop's wires that the meshes resolve.
    pub fn least_distance(&self) -> f64 {
        self.body.least_distance()
    }
}

/// A set of panels with its two meshes.
#[derive(Clone, Debug)]
struct MeshedBody {
    facing: Facing,
    /// Where along the lane it is the same before and behind; `None` for panels one behind another, and for one that stands.
    middle: Option<f64>,
    coarse: Mesh,
    fine: Mesh,
    /// The corners of the cells of the coarse mesh and of the fine one, of each part: by whether it is half of the body across, and along.
    corners: [[PointSet; 2]; 2],
}

impl MeshedBody {
    fn new(panels: &[PlatePanel], facing: Facing) -> Option<Self> {
        let sound = panels.iter().all(PlatePanel::is_sound);
        if !sound || panels.is_empty() || panels.len() > MAX_PANELS {
            return None;
        }
        Self::meshed(panels, &coarse_cells(panels), facing)
    }

    fn meshed(panels: &[PlatePanel], cells: &[[usize; 2]], facing: Facing) -> Option<Self> {
        let middle = (facing == Facing::Up && panels.len() == 1).then(|| panels[0].along);
        let (coarse, fine) = (mesh(panels, cells, 1)?, mesh(panels, cells, 2)?);
        let placed = |[across, second, rise]: Point3| match facing {
            Facing::Up => [across, second, rise],
            Facing::Along | Facing::Across => [across, 0.0, second],
        };
        let corners = [None, Some(Parity::Even)].map(|across| {
            [false, true].map(|along| {
                let part = Part { across, along };
                PointSet::new(&coarse.corners(part).chain(fine.corners(part)).map(placed).collect::<Vec<_>>())
            })
        });
        Some(Self { facing, middle, coarse, fine, corners })
    }

    fn corners(&self, part: Part) -> &PointSet {
        &self.corners[usize::from(part.across.is_some())][usize::from(part.along)]
    }

    /// The part of it that is enough for a loop, from which its origin lies so far.
    fn part(&self, primary: &PrimaryLoop, [x, y, _]: Point3) -> Part {
        let is_over_middle = self.middle.is_some_and(|middle| (middle + y).abs() < ROUNDING);
        Part { across: primary.symmetry(x), along: is_over_middle && primary.is_even_along() }
    }

    fn change(&self, primary: &PrimaryLoop, position: Point3) -> f64 {
        self.change_by_part(primary, position, self.part(primary, position))
    }

    fn change_by_part(&self, primary: &PrimaryLoop, position: Point3, part: Part) -> f64 {
        let potentials = primary.potentials(self.facing, self.corners(part), position);
        let mut rest = potentials.as_slice();
        let [coarse, fine] = [&self.coarse, &self.fine].map(|mesh| NEUMANN * mesh.response(part, &mut rest));
        fine + (fine - coarse) / 3.0
    }

    fn steps(&self, primary: &PrimaryLoop, position: Point3) -> u64 {
        let part = self.part(primary, position);
        let potentials = self.corners(part).count() * (primary.distances() + LOGARITHM_STEPS);
        let products = |mesh: &Mesh| mesh.products(part) / PRODUCTS_IN_STEP;
        (potentials + products(&self.coarse) + products(&self.fine)) as u64
    }

    /// From 0.6 coarse pitches on, the extrapolation converges.
    fn least_distance(&self) -> f64 {
        0.6 * self.coarse.pitch()
    }
}

fn mesh(panels: &[PlatePanel], cells: &[[usize; 2]], refinement: usize) -> Option<Mesh> {
    let grids = panels.iter().zip(cells).map(|(panel, cells)| {
        let size = [panel.width, panel.length];
        Grid::new(size, panel.along, panel.rise, cells.map(|count| count * refinement))
    });
    Mesh::new(grids.collect())
}

/// Cells per side of each panel, nearly square and of one size.
fn coarse_cells(panels: &[PlatePanel]) -> Vec<[usize; 2]> {
    let area: f64 = panels.iter().map(|panel| panel.width * panel.length).sum();
    let most = (area / COARSE_CELL_AREA).clamp(COARSE_CELL_COUNT.0, COARSE_CELL_COUNT.1);
    let longest = panels.iter().map(|panel| panel.width.max(panel.length)).fold(0.0, f64::max);
    // The second matters for very narrow panels only.
    let mut pitch = (area / most).sqrt().max(longest / most);
    loop {
        let cells: Vec<_> =
            panels.iter().map(|panel| [panel.width, panel.length].map(|side| mesh::cells(side, pitch))).collect();
        let count: usize = cells.iter().map(|[m, n]| m * n).sum();
        if count as f64 <= most {
            return cells;
        }
        pitch *= 1.02;
    }
}

#[cfg(test)]
mod tests;
