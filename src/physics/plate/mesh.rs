//! The cells of a conducting surface, their matrix, and its factor.
//!
//! Currents in a thin sheet close on themselves, so each cell may carry its own current round its
//! rim and the sheet's current is their sum: along a line between two cells the difference of the
//! two. Everything here is counted in units of μ0/4π; the caller puts the factor back.

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
use std::f64::consts::{FRAC_1_SQRT_2, TAU};

use super::super::filament::Point3;

/// How far the outermost line of a grid lies inside the rim, in pitches.
///
/// The sheet's current rises without bound towards a rim. Found on the one case solved in closed
/// form, an endless strip in a uniform field (its current function is a semicircle): with this
/// inset the error of its moment falls with the square of the pitch, not with the pitch itself.
const INSET: f64 = 0.284;

/// Radius in pitches of the wire that stands for the sheet between two lines.
///
/// A grid of parallel wires lets no flux slip through, beyond what a sheet would, when the surface
/// of each wire equals the sheet that it replaces: 2πr = pitch. (The sum of the logarithms of all
/// distances in the grid against its integral, by Stirling's formula.)
const LINE_RADIUS: f64 = 1.0 / TAU;

/// The fewest cells, two at least, that divide a side at no more than `pitch`.
pub(super) fn cells(side: f64, pitch: f64) -> usize {
    ((side / pitch - 2.0 * INSET).ceil() as usize).max(2)
}

/// Second antiderivative of 1/√(x² + ρ²) in x: its second difference over the ends of two parallel
/// wires, ρ apart, is their mutual inductance.
///
/// A term x·ln ρ is left out, as it is linear in x and falls out of every second difference.
#[inline]
pub(super) fn second_antiderivative(x: f64, rho_squared: f64) -> f64 {
    let distance = (x * x + rho_squared).sqrt();
    let sum = if x < 0.0 {
        // The same without the difference of two near numbers.
        rho_squared / (distance - x)
    } else {
        distance + x
    };
    x * sum.ln() - distance
}

/// Behaviour of a distribution under reflection in the plane x = 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Parity {
    Even,
    Odd,
}

impl Parity {
    const fn sign(self) -> f64 {
        match self {
            Self::Even => 1.0,
            Self::Odd => -1.0,
        }
    }
}

/// Equally spaced lines that divide one side of a panel.
#[derive(Clone, Copy, Debug)]
struct GridLines {
    first: f64,
    pitch: f64,
    cells: usize,
}

impl GridLines {
    fn dividing(centre: f64, side: f64, cells: usize) -> Self {
        let pitch = side / (cells as f64 + 2.0 * INSET);
        Self { first: centre - 0.5 * pitch * cells as f64, pitch, cells }
    }

    fn at(&self, line: usize) -> f64 {
        self.first + self.pitch * line as f64
    }

    /// The cells on one side of the centre, the middle one included where there is one.
    const fn half(&self) -> usize {
        self.cells.div_ceil(2)
    }

    const fn mirror(&self, cell: usize) -> usize {
        self.cells - 1 - cell
    }
}

/// A rectangle divided into equal cells, at one height.
#[derive(Clone, Debug)]
pub(super) struct Grid {
    across: GridLines,
    along: GridLines,
    rise: f64,
}

impl Grid {
    /// A panel of sides `size`, centred at (0, `along`) and `rise` up, in `cells` per side.
    pub(super) fn new(size: [f64; 2], along: f64, rise: f64, cells: [usize; 2]) -> Self {
        Self {
            across: GridLines::dividing(0.0, size[0], cells[0]),
            along: GridLines::dividing(along, size[1], cells[1]),
            rise,
        }
    }

    /// The longer pitch of the two, in metres.
    pub(super) fn pitch(&self) -> f64 {
        self.across.pitch.max(self.along.pitch)
    }

    /// Mutual inductance of two cells' rims, the second in `other`, which may be this grid itself.
    ///
    /// Sixteen pairs of corners: each pair of parallel edges is a second difference of [`second_antiderivative`].
    /// No two lines come nearer than the wire's surface, which gives a line its effect on itself.
    pub(super) fn mutual(&self, [i, j]: [usize; 2], other: &Self, [k, l]: [usize; 2]) -> f64 {
        let rise_squared = (self.rise - other.rise).powi(2);
        let surface = |ours: &GridLines, theirs: &GridLines| (LINE_RADIUS * ours.pitch.min(theirs.pitch)).powi(2);
        let least_x = surface(&self.across, &other.across);
        let least_y = surface(&self.along, &other.along);
        let mut total = 0.0;
        for corners in 0..16_usize {
            let [a, b, c, d] = [0, 1, 2, 3].map(|bit| (corners >> bit) & 1);
            let x = self.across.at(i + a) - other.across.at(k + b);
            let y = self.along.at(j + c) - other.along.at(l + d);
            let edges = second_antiderivative(x, (y * y + rise_squared).max(least_y))
                + second_antiderivative(y, (x * x + rise_squared).max(least_x));
            total += if corners.count_ones() % 2 == 0 { -edges } else { edges };
        }
        total
    }

    /// Mutual inductances within the grid, which depend on the cells' distance only: by columns
    /// and rows apart.
    fn table(&self) -> DMatrix<f64> {
        DMatrix::from_fn(self.across.cells, self.along.cells, |columns, rows| {
            self.mutual([0, 0], self, [columns, rows])
        })
    }
}

/// A cell of a mesh that stands for itself and for its mirror image.
#[derive(Clone, Copy, Debug)]
struct CellPair {
    grid: usize,
    column: usize,
    row: usize,
    /// 1 for a pair, and 1/√2 for a middle cell, its own mirror image, which would count twice.
    scale: f64,
}

/// All grids of one body at one fineness, factored for both parities across the lane.
#[derive(Clone, Debug)]
pub(super) struct Mesh {
    grids: Vec<Grid>,
    even: ParitySystem,
    odd: ParitySystem,
}

/// The currents of one parity: as many unknowns as there are pairs.
#[derive(Clone, Debug)]
struct ParitySystem {
    parity: Parity,
    pairs: Vec<CellPair>,
    factor: Cholesky<f64, Dyn>,
}

impl Mesh {
    /// Builds and factors the cell matrix; `None` if it is not positive definite, which no body
    /// of positive, finite dimensions whose panels keep apart gives.
    pub(super) fn new(grids: Vec<Grid>) -> Option<Self> {
        let even = ParitySystem::new(&grids, Parity::Even)?;
        let odd = ParitySystem::new(&grids, Parity::Odd)?;
        Some(Self { grids, even, odd })
    }

    /// The longest pitch of the mesh, in metres.
    pub(super) fn pitch(&self) -> f64 {
        self.grids.iter().map(Grid::pitch).fold(0.0, f64::max)
    }

    /// The corners of cells at which a response asks for the potential, with the flux of a parity or without.
    pub(super) fn corners(&self, symmetric: bool) -> usize {
        let of_grid = |Grid { across, along, .. }: &Grid| {
            (if symmetric { across.half() } else { across.cells } + 1) * (along.cells + 1)
        };
        self.grids.iter().map(of_grid).sum()
    }

    /// The products of its triangular solutions.
    pub(super) fn products(&self, symmetric: Option<Parity>) -> usize {
        let halves = [&self.even, &self.odd].into_iter();
        let solved = halves.filter(|half| symmetric.is_none_or(|parity| parity == half.parity));
        solved.map(|half| half.pairs.len() * half.pairs.len() / 2).sum()
    }

    /// φᵀK⁻¹φ, where the flux φ through a cell is the mixed difference of `potential` over the
    /// cell's four corners.
    ///
    /// Where the potential's flux has a parity of its own, `symmetric`, it costs half: one side of
    /// the metal is computed and one parity solved.
    pub(super) fn response(&self, symmetric: Option<Parity>, potential: impl Fn(Point3) -> f64) -> f64 {
        let fluxes: Vec<_> = self.grids.iter().map(|grid| fluxes(grid, symmetric.is_some(), &potential)).collect();
        [&self.even, &self.odd]
            .into_iter()
            .filter(|half| symmetric.is_none_or(|parity| parity == half.parity))
            .map(|half| half.response(&self.grids, &fluxes, symmetric.is_some()))
            .sum()
    }
}

/// Flux through each cell of the left half, or of all, by columns.
fn fluxes(grid: &Grid, half: bool, potential: impl Fn(Point3) -> f64) -> Vec<f64> {
    let rows = grid.along.cells;
    let columns = if half { grid.across.half() } else { grid.across.cells };
    let mut flux = vec![0.0; columns * rows];
    for line in 0..=columns {
        let x = grid.across.at(line);
        let mut before = 0.0;
        for corner in 0..=rows {
            let here = potential([x, grid.along.at(corner), grid.rise]);
            if let Some(row) = corner.checked_sub(1) {
                let step = here - before;
                if line > 0 {
                    flux[(line - 1) * rows + row] += step;
                }
                if line < columns {
                    flux[line * rows + row] -= step;
                }
            }
            before = here;
        }
    }
    flux
}

impl ParitySystem {
    fn new(grids: &[Grid], parity: Parity) -> Option<Self> {
        let pairs = pairs(grids, parity);
        let tables: Vec<_> = grids.iter().map(Grid::table).collect();
        let mutual = |a: &CellPair, b: &CellPair, column: usize| {
            if a.grid == b.grid {
                tables[a.grid][(a.column.abs_diff(column), a.row.abs_diff(b.row))]
            } else {
                grids[a.grid].mutual([a.column, a.row], &grids[b.grid], [column, b.row])
            }
        };
        // The factor reads the lower triangle only.
        let mut matrix = DMatrix::zeros(pairs.len(), pairs.len());
        for (column, b) in pairs.iter().enumerate() {
            let image = grids[b.grid].across.mirror(b.column);
            for (row, a) in pairs.iter().enumerate().skip(column) {
                matrix[(row, column)] =
                    a.scale * b.scale * (mutual(a, b, b.column) + parity.sign() * mutual(a, b, image));
            }
        }
        Some(Self { parity, pairs, factor: Cholesky::new(matrix)? })
    }

    /// The part of φᵀK⁻¹φ that the currents of this parity give: the squared length of C⁻¹φ,
    /// where `K = CCᵀ`.
    fn response(&self, grids: &[Grid], fluxes: &[Vec<f64>], symmetric: bool) -> f64 {
        let mut flux = DVector::from_iterator(
            self.pairs.len(),
            self.pairs.iter().map(|pair| {
                let along = &grids[pair.grid].along;
                let across = &grids[pair.grid].across;
                let of = |column: usize| fluxes[pair.grid][column * along.cells + pair.row];
                let here = of(pair.column);
                let there = if symmetric { here } else { self.parity.sign() * of(across.mirror(pair.column)) };
                pair.scale * FRAC_1_SQRT_2 * (here + there)
            }),
        );
        self.factor.l_dirty().solve_lower_triangular_mut(&mut flux);
        flux.norm_squared()
    }
}

/// The pairs of cells that can carry a current of this parity; a middle cell has no odd one.
fn pairs(grids: &[Grid], parity: Parity) -> Vec<CellPair> {
    let mut pairs = Vec::new();
    for (grid, Grid { across, along, .. }) in grids.iter().enumerate() {
        for column in 0..across.half() {
            let middle = across.mirror(column) == column;
            if middle && parity == Parity::Odd {
                continue;
            }
            let scale = if middle { FRAC_1_SQRT_2 } else { 1.0 };
            pairs.extend((0..along.cells).map(|row| CellPair { grid, column, row, scale }));
        }
    }
    pairs
}
