use super::*;
use crate::physics::filament::{Filament, mutual};
use crate::physics::winding::{Winding, WindingShape};
use proptest::prelude::*;

const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;

fn winding(shape: WindingShape, corner_cut: f64) -> Winding {
    Winding {
        shape,
        along: 6.0 * FOOT,
        across: 6.0 * FOOT,
        corner_cut,
        turns: 3,
        pitch: 0.150 * INCH,
        wire_radius: 0.8139e-3,
    }
}

/// The left half of a body under a loop in its middle.
const LEFT_HALF: Part = Part { across: Some(Parity::Even), along: false };

fn panel(width: f64, length: f64, along: f64, rise: f64) -> PlatePanel {
    PlatePanel { width, length, along, rise }
}

#[track_caller]
fn assert_within(percent: f64, found: f64, expected: f64) {
    assert!(
        (found - expected).abs() <= percent / 100.0 * expected.abs(),
        "found {found:e}, expected {expected:e} within {percent} %"
    );
}

/// The rim of the rectangle between two opposite corners, `axes` its first and second direction.
fn rim(low: Point3, high: Point3, axes: [usize; 2]) -> [Filament; 4] {
    let corner = |first: bool, second: bool| {
        let mut point = low;
        point[axes[0]] = if first { high } else { low }[axes[0]];
        point[axes[1]] = if second { high } else { low }[axes[1]];
        point
    };
    let corners = [(false, false), (true, false), (true, true), (false, true)];
    let points = corners.map(|(first, second)| corner(first, second));
    [0, 1, 2, 3].map(|k| Filament { from: points[k], to: points[(k + 1) % 4] })
}

/// Flux of a loop's unit current through a rim, wire by wire.
fn flux(winding: &Winding, rim: &[Filament]) -> f64 {
    let strands = winding.outline();
    let pairs = strands.iter().flat_map(|strand| rim.iter().map(move |edge| (strand, edge)));
    pairs.map(|(strand, edge)| strand.wires * mutual(&strand.segment, edge)).sum()
}

fn potential(primary: &PrimaryLoop, facing: Facing, point: Point3) -> f64 {
    primary.potentials_at(facing, [point])[0]
}

fn mixed(potential: impl Fn(f64, f64) -> f64, [u0, u1]: [f64; 2], [v0, v1]: [f64; 2]) -> f64 {
    NEUMANN * (potential(u1, v1) - potential(u0, v1) - potential(u1, v0) + potential(u0, v0))
}

// Reciprocity: the flux of the loop through a rim, from potentials, is that of the rim through the
// loop, from Neumann's integral. Exact for sharp corners; cuts are integrated to 0.1 %.
#[test]
fn potentials_give_the_mutual_inductance_of_the_filaments() {
    let shapes = [WindingShape::Rectangle, WindingShape::Quadrupole];
    for (shape, cut, percent) in shapes.into_iter().flat_map(|shape| [(shape, 0.0, 1e-7), (shape, FOOT, 0.1)]) {
        let loop_ = winding(shape, cut);
        let primary = PrimaryLoop::new(&loop_);
        let (x, y, z) = ([0.2, 0.55], [-0.9, 0.35], [0.4, 0.8]);

        let level = rim([x[0], y[0], z[0]], [x[1], y[1], z[0]], [0, 1]);
        let found = mixed(|x, y| potential(&primary, Facing::Up, [x, y, z[0]]), x, y);
        assert_within(percent, found, flux(&loop_, &level));

        let across = rim([x[0], y[1], z[0]], [x[1], y[1], z[1]], [0, 2]);
        let found = mixed(|x, z| potential(&primary, Facing::Along, [x, y[1], z]), x, z);
        assert_within(percent, found.abs(), flux(&loop_, &across).abs());

        let along = rim([x[1], y[0], z[0]], [x[1], y[1], z[1]], [1, 2]);
        let found = mixed(|y, z| potential(&primary, Facing::Across, [x[1], y, z]), y, z);
        assert_within(percent, found.abs(), flux(&loop_, &along).abs());
    }
}

/// A panel's sides, place along and rise, and its cells; and the rim of one of them.
type Divided = ([f64; 2], f64, f64, [usize; 2]);

fn cell_rim((size, along, rise, cells): Divided, [column, row]: [usize; 2]) -> [Filament; 4] {
    let line = |centre: f64, side: f64, cells: usize, line: usize| {
        let pitch = side / (cells as f64 + 2.0 * 0.284);
        centre + pitch * (line as f64 - 0.5 * cells as f64)
    };
    let at = |column, row| [line(0.0, size[0], cells[0], column), line(along, size[1], cells[1], row), rise];
    rim(at(column, row), at(column + 1, row + 1), [0, 1])
}

// Neumann's integral over the edges of both rims; no two of them come as near as the surface of a wire.
#[test]
fn cells_of_two_panels_couple_as_their_rims_do() {
    let (one, other) = (([1.2, 2.0], 0.0, 0.0, [3, 4]), ([1.5, 1.8], -2.3, 0.35, [2, 5]));
    let grid = |(size, along, rise, cells): Divided| Grid::new(size, along, rise, cells);
    for (cell, far) in [([0, 0], [1, 4]), ([2, 3], [0, 0]), ([1, 2], [1, 3]), ([0, 1], [0, 4])] {
        let found = NEUMANN * grid(one).mutual(cell, &grid(other), far);
        let theirs = cell_rim(other, far);
        let edges = cell_rim(one, cell);
        let expected: f64 = edges.iter().flat_map(|a| theirs.iter().map(move |b| mutual(a, b))).sum();
        assert_within(1e-6, found, expected);
    }
}

#[test]
fn a_table_holds_what_cells_make_of_one_another() {
    let grid = Grid::new([1.2, 3.0], 0.0, 0.0, [3, 5]);
    let table = grid.table();
    for (column, row) in (0..3).flat_map(|column| (0..5).map(move |row| (column, row))) {
        assert_within(1e-7, table[column][row], grid.mutual([0, 0], &grid, [column, row]));
    }
}

// Method of images; ratio 0.97 to 1.01 for a plate of 12 × 12 m at 0.6 m, extrapolated over three
// meshes as a polynomial in the square of the pitch.
#[test]
fn s04_a_large_plate_tends_to_the_image() {
    let loop_ = winding(WindingShape::Rectangle, 0.0);
    let primary = PrimaryLoop::new(&loop_);
    let large = [panel(12.0, 12.0, 0.0, 0.0)];
    let found = [16, 24, 32].map(|cells: usize| {
        let mesh = mesh(&large, &[[cells; 2]], 1).expect("a sound plate");
        let corners = PointSet::new(&mesh.corners(LEFT_HALF).collect::<Vec<_>>());
        let potentials = primary.potentials(Facing::Up, &corners, [0.0, 0.0, 0.6]);
        let response = mesh.response(LEFT_HALF, &mut potentials.as_slice());
        ((cells as f64).powi(-2), NEUMANN * response)
    });
    let extrapolated: f64 = found
        .iter()
        .map(|(own, change)| {
            let others = found.iter().filter(|(other, _)| other != own);
            change * others.map(|(other, _)| other / (other - own)).product::<f64>()
        })
        .sum();
    let ratio = extrapolated / endless_sheet(&loop_, 0.6);
    assert!((0.97..=1.01).contains(&ratio), "{ratio}");
    assert!(found[0].1 < found[1].1 && found[1].1 < found[2].1);
}

// Exact: a strip of width w in a uniform field has a current function like a semicircle, and
// ΔL/(μ0/4π) is w²/16 for each metre. Two lengths, so that the ends drop out. The error falls with
// the square of the number of cells: 0.25/n².
#[test]
fn a_few_lines_carry_the_moment_of_a_strip() {
    for cells in [3, 4, 6, 8] {
        let moment = |length: f64, rows: usize| {
            let mesh = mesh(&[panel(1.0, length, 0.0, 0.0)], &[[cells, rows]], 1).expect("sound");
            // The mixed difference of xy is a cell's area: its flux in a field of 1.
            let potentials: Vec<_> = mesh.corners(LEFT_HALF).map(|[x, y, _]| x * y).collect();
            mesh.response(LEFT_HALF, &mut potentials.as_slice())
        };
        let per_metre = (moment(30.0, 60) - moment(20.0, 40)) / 10.0;
        assert_within(25.0 / (cells * cells) as f64, per_metre, 1.0 / 16.0);
    }
}

#[test]
fn unsound_bodies_are_refused() {
    for (width, length) in [(0.0, 1.0), (1.0, -1.0), (f64::NAN, 1.0), (1.0, f64::INFINITY)] {
        assert!(Plate::new(width, length).is_none());
        assert!(Wall::new(length, width).is_none());
    }
    assert!(Plate::assembled(&[]).is_none());
    assert!(Plate::with_cells(-1.0, 1.0, [2, 2]).is_none());
    // So narrow a panel is no useful plate, but the search for its mesh must end.
    assert!(Plate::new(1e-300, 1.0).is_none_or(|sliver| sliver.least_height() > 0.0));
    let row = |count: u8| -> Vec<_> { (0..count).map(|k| panel(2.0, 1.0, 2.0 * f64::from(k), 0.0)).collect() };
    assert!(Plate::assembled(&row(10)).is_some());
    assert!(Plate::assembled(&row(11)).is_none());
}

// Exact but for the meshes, which differ: two plates that touch make one. 1 %.
#[test]
fn coupled_plates_that_touch_are_nearly_one() {
    let primary = PrimaryLoop::new(&winding(WindingShape::Rectangle, 0.0));
    let halves = [panel(2.0, 2.5, -1.25, 0.0), panel(2.0, 2.5, 1.25, 0.0)];
    let (whole, halves) = (Plate::new(2.0, 5.0), Plate::assembled(&halves));
    let (whole, halves) = (whole.expect("sound"), halves.expect("sound"));
    let apart = Plate::new(2.0, 2.5).expect("sound");
    // Currents that may not cross the seam screen less than in one plate; but those on either side
    // of it keep each other's flux out, so that both together screen more than one and one.
    let at = |plate: &Plate, y: f64| plate.change(&primary, [0.0, y, 0.6]);
    assert!(at(&halves, 0.0) < at(&whole, 0.0));
    assert!(at(&halves, 0.0) > at(&apart, 1.25) + at(&apart, -1.25));
    assert_within(1.0, at(&halves, 1.25), at(&apart, 0.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    // Meshed conductors store energy: the cell matrix is symmetric and positive definite, in
    // either parity, for one panel or for two at different heights.
    #[test]
    fn the_cell_matrix_is_symmetric_and_positive_definite(
        width in 0.3..4.0_f64, length in 0.3..16.0_f64, gap in 0.1..2.0_f64, step in -0.5..0.5_f64,
        cells in [2..7_usize, 2..7_usize],
    ) {
        let along = 0.5 * length + gap + 1.0;
        let panels = [panel(width, length, 0.0, 0.0), panel(1.5, 2.0, along, step)];
        let grids: Vec<_> = panels.iter().zip([cells, [3, 4]]).map(|(panel, cells)| {
            Grid::new([panel.width, panel.length], panel.along, panel.rise, cells)
        }).collect();
        let cells = grids.iter().zip([cells, [3, 4]]).flat_map(|(grid, [m, n])| {
            (0..m * n).map(move |k| (grid, [k / n, k % n]))
        });
        let cells: Vec<_> = cells.collect();
        let matrix = nalgebra::DMatrix::from_fn(cells.len(), cells.len(), |i, j| {
            let ((a, here), (b, there)) = (cells[i], cells[j]);
            a.mutual(here, b, there)
        });
        prop_assert!((&matrix - matrix.transpose()).amax() <= 1e-11 * matrix.amax());
        let least = matrix.symmetric_eigenvalues().min();
        prop_assert!(least > 0.0, "{least}");
        prop_assert!(Mesh::new(grids).is_some());
    }

    // All parts together are the whole: known symmetry is a saving, not another answer.
    #[test]
    fn symmetry_changes_nothing(height in 0.3..1.5_f64, y in -3.0..3.0_f64, x in -1.0..1.0_f64, cut in 0.0..0.5_f64) {
        let plate = Plate::new(1.75, 4.5).expect("sound");
        for shape in [WindingShape::Rectangle, WindingShape::Quadrupole] {
            let primary = PrimaryLoop::new(&winding(shape, cut));
            for position in [[0.0, y, height], [x, 0.0, height], [0.0, 0.0, height]] {
                let whole = plate.body.change_by_part(&primary, position, Part { across: None, along: false });
                let found = plate.change(&primary, position);
                prop_assert!((found - whole).abs() <= 1e-9 * whole, "{found:e} {whole:e}");
            }
        }
    }
}

// A loop that lies askew is the same loop: turned by nothing or by a right angle it gives what the exact sums give.
#[test]
fn a_loop_turned_by_any_angle_agrees_with_the_exact_ones() {
    let wall = Wall::new(24.0 * FOOT, 6.0 * FOOT).expect("a wall");
    for (shape, cut) in
        [(WindingShape::Rectangle, 0.0), (WindingShape::Rectangle, 12.0 * INCH), (WindingShape::Quadrupole, 0.0)]
    {
        let winding = Winding { across: 20.0 * FOOT, ..winding(shape, cut) };
        let foot = [0.7, 3.0 * FOOT + 4.0 * FOOT, 0.2];
        let straight = wall.change(&PrimaryLoop::new(&winding), foot);
        assert_within(
            0.2,
            wall.change(&PrimaryLoop::rotated(&winding, 0.0, |point| wall.distance(foot, point)), foot),
            straight,
        );
        let beside = [0.7, 10.0 * FOOT + 2.0 * FOOT, 0.2];
        let turned = wall.change(&PrimaryLoop::turned(&winding), beside);
        let quarter = PrimaryLoop::rotated(&winding, std::f64::consts::FRAC_PI_2, |point| wall.distance(beside, point));
        assert_within(0.2, wall.change(&quarter, beside), turned);
    }
}

// Turning loop and wall together changes nothing: a mirrored angle sees the same.
#[test]
fn a_loop_askew_one_way_is_seen_as_one_askew_the_other_way() {
    let wall = Wall::new(12.0 * FOOT, 6.0 * FOOT).expect("a wall");
    let winding = winding(WindingShape::Rectangle, 12.0 * INCH);
    let change = |angle: f64, x: f64| {
        let foot = [x, 8.0 * FOOT, 0.2];
        wall.change(&PrimaryLoop::rotated(&winding, angle, |point| wall.distance(foot, point)), foot)
    };
    assert_within(0.01, change(0.6, 0.5), change(-0.6, -0.5));
}

// Pieces that grow with their distance from the metal are as good as short ones everywhere, and far fewer.
#[test]
fn longer_pieces_away_from_the_metal_change_nothing_that_counts() {
    let wall = Wall::new(100.0 * FOOT, 6.0 * FOOT).expect("a wall");
    let winding = Winding { across: 196.0 * FOOT, along: 6.0 * FOOT, ..winding(WindingShape::Rectangle, 12.0 * INCH) };
    for angle in [0.4, 0.8, 1.2] {
        let foot = [20.0, 12.0, 0.2];
        let graded = PrimaryLoop::rotated(&winding, angle, |point| wall.distance(foot, point));
        let short = PrimaryLoop::rotated(&winding, angle, |_| 0.0);
        assert_within(0.02, wall.change(&graded, foot), wall.change(&short, foot));
        assert!(2 * graded.distances() < short.distances(), "{} {}", graded.distances(), short.distances());
    }
}
