//! Metal in a loop's field, computed afresh on fine meshes: what `mesh_study` holds the physics against.
//!
//! The sheet is a grid of thin wires, each cell with a current round its rim, and every inductance is Neumann's integral between two
//! filaments (`physics::filament`). Nothing of `physics::plate` is used, so what changes there leaves this as it is. Three meshes of
//! three, four and six times as many lines as a coarse one are extrapolated together.

use loopwright::physics::filament::{Filament, Point3, mutual};
use loopwright::physics::winding::Strand;
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
use std::f64::consts::TAU;

/// How far the outermost line lies inside the rim, in pitches: the error then falls with the square of the pitch (the strip in closed
/// form, as in `physics::plate`).
const INSET: f64 = 0.284;

/// Cells of the mesh that the three refine, at least and at most, and their area in m² between these.
const COARSE_CELLS: (f64, f64) = (45.0, 80.0);
const COARSE_CELL_AREA: f64 = 0.5;

const REFINEMENTS: [usize; 3] = [3, 4, 6];

/// A conducting rectangle. Its first side lies across.
#[derive(Clone, Copy)]
pub struct Panel {
    pub sides: [f64; 2],
    /// From the body's origin, in metres.
    pub middle: Point3,
    /// Whether its second side is upright, or along travel.
    pub is_upright: bool,
}

/// Several rectangles that move together.
pub struct FineSheet {
    meshes: Vec<Mesh>,
}

/// What a sheet takes of a loop's inductance, in henry, and how much that moved with the last mesh.
#[derive(Clone, Copy)]
pub struct Reference {
    pub change: f64,
    pub doubt: f64,
}

impl FineSheet {
    pub fn new(panels: &[Panel]) -> Self {
        let area: f64 = panels.iter().map(|panel| panel.sides[0] * panel.sides[1]).sum();
        let pitch = (area / (area / COARSE_CELL_AREA).clamp(COARSE_CELLS.0, COARSE_CELLS.1)).sqrt();
        let coarse = |panel: &Panel| panel.sides.map(|side| ((side / pitch).round() as usize).max(2));
        let refined =
            |by: usize| panels.iter().map(|panel| Grid::new(panel, coarse(panel).map(|count| count * by))).collect();
        Self { meshes: REFINEMENTS.map(|by| Mesh::new(refined(by))).into() }
    }

    /// For the body's origin at `position` in the axes of the loop.
    pub fn change(&self, strands: &[Strand], position: Point3) -> Reference {
        let found: Vec<_> =
            self.meshes.iter().map(|mesh| (mesh.pitch_squared(), mesh.response(strands, position))).collect();
        let change = extrapolated(&found);
        Reference { change, doubt: (change - extrapolated(&found[1..])).abs() }
    }
}

/// The value at a pitch of nothing, of a polynomial in its square through all.
fn extrapolated(found: &[(f64, f64)]) -> f64 {
    let weight = |own: f64| {
        found.iter().filter(|(other, _)| *other != own).map(|(other, _)| other / (other - own)).product::<f64>()
    };
    found.iter().map(|(own, value)| value * weight(*own)).sum()
}

/// A panel in equal cells.
struct Grid {
    panel: Panel,
    pitches: [f64; 2],
    cells: [usize; 2],
}

impl Grid {
    fn new(panel: &Panel, cells: [usize; 2]) -> Self {
        let pitches = [0, 1].map(|axis| panel.sides[axis] / (cells[axis] as f64 + 2.0 * INSET));
        Self { panel: *panel, pitches, cells }
    }

    fn point(&self, lines: [usize; 2]) -> Point3 {
        let [u, v] = [0, 1].map(|axis| self.pitches[axis] * (lines[axis] as f64 - 0.5 * self.cells[axis] as f64));
        let [x, y, z] = self.panel.middle;
        if self.panel.is_upright { [x + u, y, z + v] } else { [x + u, y + v, z] }
    }

    /// The edge that begins where two lines cross and runs along an axis of the panel.
    fn edge(&self, from: [usize; 2], axis: usize) -> Filament {
        let mut to = from;
        to[axis] += 1;
        Filament { from: self.point(from), to: self.point(to) }
    }

    fn count(&self) -> usize {
        self.cells[0] * self.cells[1]
    }

    fn cell(&self, place: usize) -> [usize; 2] {
        [place / self.cells[1], place % self.cells[1]]
    }

    /// The sum over a cell's rim of what its edges have, each with its sense.
    fn round<T: std::ops::Sub<Output = T> + std::ops::Add<Output = T>>(
        [column, row]: [usize; 2],
        edge: impl Fn([usize; 2], usize) -> T,
    ) -> [T; 2] {
        [edge([column, row], 0) - edge([column, row + 1], 0), edge([column + 1, row], 1) - edge([column, row], 1)]
    }

    /// Mutual inductance of the rims of two cells. A line's effect on itself is that at the surface of a wire whose girth is the pitch.
    fn rims(&self, ours: [usize; 2], other: &Self, theirs: [usize; 2]) -> f64 {
        let parts =
            Self::round(ours, |from, axis| {
                let edge = self.edge(from, axis);
                let radius = self.pitches[1 - axis] / TAU;
                Self::round(theirs, |place, their_axis| {
                    if axis == their_axis { beside(&edge, &other.edge(place, axis), radius) } else { 0.0 }
                })[axis]
            });
        parts.iter().sum()
    }
}

/// Mutual inductance of two parallel edges, at the radius of their wire at least.
fn beside(a: &Filament, b: &Filament, radius: f64) -> f64 {
    let run = [0, 1, 2].map(|axis| if a.from[axis] == a.to[axis] { b.from[axis] - a.from[axis] } else { 0.0 });
    let distance = run.iter().map(|part| part * part).sum::<f64>().sqrt();
    if distance >= radius {
        return mutual(a, b);
    }
    // Across and along for edges that run up, up for the others: any direction at a right angle to the edge.
    let aside = if a.from[2] == a.to[2] { [0.0, 0.0, radius] } else { [0.0, radius, 0.0] };
    mutual(a, &b.shifted(aside))
}

struct Mesh {
    grids: Vec<Grid>,
    factor: Cholesky<f64, Dyn>,
}

impl Mesh {
    fn new(grids: Vec<Grid>) -> Self {
        // Within a grid the distance of two cells says all.
        let tables: Vec<_> = grids
            .iter()
            .map(|grid| DMatrix::from_fn(grid.cells[0], grid.cells[1], |u, v| grid.rims([0, 0], grid, [u, v])))
            .collect();
        let cells: Vec<_> = grids
            .iter()
            .enumerate()
            .flat_map(|(place, grid)| (0..grid.count()).map(move |cell| (place, grid.cell(cell))))
            .collect();
        let matrix = DMatrix::from_fn(cells.len(), cells.len(), |row, column| {
            let ((ours, here), (theirs, there)) = (cells[row], cells[column]);
            if row < column {
                0.0 // The factor reads the lower triangle only.
            } else if ours == theirs {
                tables[ours][(here[0].abs_diff(there[0]), here[1].abs_diff(there[1]))]
            } else {
                grids[ours].rims(here, &grids[theirs], there)
            }
        });
        Self { grids, factor: Cholesky::new(matrix).expect("conductors store energy") }
    }

    fn pitch_squared(&self) -> f64 {
        self.grids[0].pitches[0] * self.grids[0].pitches[1]
    }

    fn response(&self, strands: &[Strand], position: Point3) -> f64 {
        let mut flux = Vec::with_capacity(self.factor.l_dirty().nrows());
        for grid in &self.grids {
            let along = [0, 1].map(|axis| {
                let mut counts = grid.cells.map(|count| count + 1);
                counts[axis] -= 1;
                DMatrix::from_fn(counts[0], counts[1], |u, v| {
                    let edge = grid.edge([u, v], axis).shifted(position);
                    strands.iter().map(|strand| strand.wires * mutual(&strand.segment, &edge)).sum::<f64>()
                })
            });
            let of_cell = |place| Grid::round(grid.cell(place), |from, axis| along[axis][(from[0], from[1])]);
            flux.extend((0..grid.count()).map(|place| of_cell(place).iter().sum::<f64>()));
        }
        let mut flux = DVector::from_vec(flux);
        self.factor.l_dirty().solve_lower_triangular_mut(&mut flux);
        flux.norm_squared()
    }
}
