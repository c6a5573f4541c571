//! The cells of a conducting surface, their matrix, and its factor.
//!
//! Currents in a thin sheet close on themselves, so each cell may carry its own current round its
//! rim and the sheet's current is their sum: along a line between two cells the difference of the
//! two. Everything here is counted in units of μ0/4π; the caller puts the factor back.

use std::f64::consts::{FRAC_1_SQRT_2, TAU};

use super::super::filament::Point3;
use super::lanes::{SymmetricMatrix, TriangularSystem, with_widest};
use super::primary::Parity;

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

/// The part of a body that is computed where the flux through the rest is the same, or its opposite.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Part {
    /// The flux is of a parity across, so that the left half is enough.
    pub across: Option<Parity>,
    /// The flux is even along, so that the half before the middle is enough.
    pub along: bool,
}

impl Part {
    /// How many columns and rows of a grid's cells it has, with the middle ones.
    const fn cells(self, Grid { across, along, .. }: &Grid) -> [usize; 2] {
        let columns = if self.across.is_some() { across.half() } else { across.cells };
        [columns, if self.along { along.half() } else { along.cells }]
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

    /// The corners of a part's cells, line by line.
    fn corners(&self, part: Part) -> impl Iterator<Item = Point3> {
        let [columns, rows] = part.cells(self);
        let line = move |line| (0..=rows).map(move |corner| [self.across.at(line), self.along.at(corner), self.rise]);
        (0..=columns).flat_map(line)
    }

    /// The fluxes through a part's cells, by columns, from the potentials at their corners; of all rows. Takes the potentials off the rest.
    fn fluxes(&self, part: Part, potentials: &mut &[f64]) -> Vec<f64> {
        let [columns, rows] = part.cells(self);
        let mut fluxes = Vec::with_capacity(columns * self.along.cells);
        for _ in 0..columns {
            let (left, right) = potentials.split_at(rows + 1);
            let through = |row: usize| (right[row + 1] - right[row]) - (left[row + 1] - left[row]);
            fluxes.extend((0..rows).map(through));
            fluxes.extend((rows..self.along.cells).map(|row| through(self.along.mirror(row))));
            *potentials = right;
        }
        *potentials = &potentials[rows + 1..];
        fluxes
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

    /// Mutual inductances within the grid, which depend on the cells' distance only: by columns apart, and in each by rows apart.
    ///
    /// As [`Self::mutual`] has it, but what edges make of one another is worked out once for each of their distances.
    pub(super) fn table(&self) -> Vec<Vec<f64>> {
        let least = |lines: &GridLines| (LINE_RADIUS * lines.pitch).powi(2);
        let (least_x, least_y) = (least(&self.across), least(&self.along));
        let edges = |columns: f64, rows: f64| {
            let (x, y) = (self.across.pitch * columns, self.along.pitch * rows);
            second_antiderivative(x, (y * y).max(least_y)) + second_antiderivative(y, (x * x).max(least_x))
        };
        // From one line back to as many ahead as there are cells.
        let lines = |cells: usize| (0..cells + 2).map(|line| line as f64 - 1.0);
        let edges =
            lines(self.across.cells).map(|columns| lines(self.along.cells).map(|rows| edges(columns, rows)).collect());
        let edges: Vec<Vec<f64>> = edges.collect();
        let bend = |[before, at, after]: [f64; 3]| before - 2.0 * at + after;
        let cell = |column: usize, row: usize| {
            -bend([0, 1, 2].map(|line| bend([0, 1, 2].map(|other| edges[column + line][row + other]))))
        };
        (0..self.across.cells).map(|column| (0..self.along.cells).map(|row| cell(column, row)).collect()).collect()
    }
}

/// A cell of a mesh that stands for itself and for its mirror image, and what the pair counts.
#[derive(Clone, Copy, Debug)]
struct CellPair {
    grid: usize,
    column: usize,
    row: usize,
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
    unknowns: usize,
    /// The columns of C, where `K = CCᵀ`, each from its diagonal on.
    factor: Vec<f64>,
}

impl Mesh {
    /// Builds and factors the cell matrix; `None` if it is not positive definite, which no body
    /// of positive, finite dimensions whose panels keep apart gives.
    pub(super) fn new(grids: Vec<Grid>) -> Option<Self> {
        let tables: Vec<_> = grids.iter().map(Grid::table).collect();
        let even = ParitySystem::new(&grids, &tables, Parity::Even)?;
        let odd = ParitySystem::new(&grids, &tables, Parity::Odd)?;
        Some(Self { grids, even, odd })
    }

    /// The longest pitch of the mesh, in metres.
    pub(super) fn pitch(&self) -> f64 {
        self.grids.iter().map(Grid::pitch).fold(0.0, f64::max)
    }

    /// The corners of a part's cells, grid by grid and line by line: across, in the second direction, and their rise.
    pub(super) fn corners(&self, part: Part) -> impl Iterator<Item = Point3> {
        self.grids.iter().flat_map(move |grid| grid.corners(part))
    }

    /// The products of its triangular solutions.
    pub(super) fn products(&self, part: Part) -> usize {
        self.solved(part).map(|half| half.unknowns * half.unknowns / 2).sum()
    }

    /// φᵀK⁻¹φ, where the flux φ through a cell is the mixed difference of the potentials at the
    /// cell's four [corners](Self::corners).
    ///
    /// Where the flux has a parity of its own across, one parity is solved. Takes the potentials off the rest.
    pub(super) fn response(&self, part: Part, potentials: &mut &[f64]) -> f64 {
        let fluxes: Vec<_> = self.grids.iter().map(|grid| grid.fluxes(part, potentials)).collect();
        self.solved(part).map(|half| half.response(&self.grids, &fluxes, part.across.is_some())).sum()
    }

    /// The systems whose currents are not zero.
    fn solved(&self, part: Part) -> impl Iterator<Item = &ParitySystem> {
        [&self.even, &self.odd].into_iter().filter(move |half| part.across.is_none_or(|parity| parity == half.parity))
    }
}

impl ParitySystem {
    /// Builds and factors the matrix of a parity, from the [tables](Grid::table) of its grids.
    fn new(grids: &[Grid], tables: &[Vec<Vec<f64>>], parity: Parity) -> Option<Self> {
        let pairs = pairs(grids, parity);
        let mutual = |a: &CellPair, b: &CellPair, column: usize| {
            if a.grid == b.grid {
                tables[a.grid][a.column.abs_diff(column)][a.row.abs_diff(b.row)]
            } else {
                grids[a.grid].mutual([a.column, a.row], &grids[b.grid], [column, b.row])
            }
        };
        let mut factor = Vec::with_capacity(pairs.len() * (pairs.len() + 1) / 2);
        for (first, b) in pairs.iter().enumerate() {
            let image = grids[b.grid].across.mirror(b.column);
            let of_both = |a: &CellPair| mutual(a, b, b.column) + parity.sign() * mutual(a, b, image);
            factor.extend(pairs[first..].iter().map(|a| a.scale * b.scale * of_both(a)));
        }
        let is_factored = with_widest(SymmetricMatrix { columns: &mut factor, order: pairs.len() });
        is_factored.then_some(())?;
        Some(Self { parity, unknowns: pairs.len(), factor })
    }

    /// The part of φᵀK⁻¹φ that the currents of this parity give: the squared length of C⁻¹φ. The fluxes are those of the left half, or of all.
    fn response(&self, grids: &[Grid], fluxes: &[Vec<f64>], of_half: bool) -> f64 {
        let mut unknowns = Vec::with_capacity(self.unknowns);
        for (Grid { across, along, .. }, fluxes) in grids.iter().zip(fluxes) {
            let of = |column: usize| &fluxes[column * along.cells..][..along.cells];
            for (column, scale) in paired_columns(across, self.parity) {
                let scale = scale * FRAC_1_SQRT_2;
                let (image, sign) = if of_half { (column, 1.0) } else { (across.mirror(column), self.parity.sign()) };
                unknowns.extend(of(column).iter().zip(of(image)).map(|(here, there)| scale * (here + sign * there)));
            }
        }
        with_widest(TriangularSystem { columns: &self.factor, unknowns: &mut unknowns });
        unknowns.iter().map(|unknown| unknown * unknown).sum()
    }
}

/// The columns of the left half that can carry a current of this parity, and what their pairs count: 1, and 1/√2 for a middle column, its
/// own mirror image, which would count twice and has no odd current.
fn paired_columns(across: &GridLines, parity: Parity) -> impl Iterator<Item = (usize, f64)> {
    let is_middle = |column: &usize| across.mirror(*column) == *column;
    let columns = (0..across.half()).filter(move |column| parity == Parity::Even || !is_middle(column));
    columns.map(move |column| (column, if is_middle(&column) { FRAC_1_SQRT_2 } else { 1.0 }))
}

/// The pairs of cells that can carry a current of this parity, in the order of the unknowns.
fn pairs(grids: &[Grid], parity: Parity) -> Vec<CellPair> {
    let of_grid = |(grid, Grid { across, along, .. }): (usize, &Grid)| -> Vec<CellPair> {
        let columns = paired_columns(across, parity);
        let cells =
            columns.flat_map(|(column, scale)| (0..along.cells).map(move |row| CellPair { grid, column, row, scale }));
        cells.collect()
    };
    grids.iter().enumerate().flat_map(of_grid).collect()
}
