//! Metal above and beside a loop: limits, an independent computation, and what must always hold.
//!
//! Loops are of 14 AWG with turns at 0.150 in, and L is theirs at low frequency.
//!
//! *Computed independently* stands for a program in another language (Python, numpy) with meshes of
//! up to 96 × 24 cells, checked against a second treatment of the plate's rim to 10⁻⁴.

use loopwright::physics::circuit::{parallel_weights, series_weights};
use loopwright::physics::conductor::awg_diameter;
use loopwright::physics::plate::{Plate, PlatePanel, PrimaryLoop, UprightTurn, Wall, endless_sheet, endless_wall};
use loopwright::physics::winding::{Winding, WindingShape};
use proptest::prelude::*;
use std::sync::LazyLock;

const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;
const MICRO: f64 = 1e-6;
const LOW_FREQUENCY: f64 = 0.25;

/// A passenger car's underside.
static CAR: LazyLock<Plate> = LazyLock::new(|| plate(1.75, 4.5));

fn plate(width: f64, length: f64) -> Plate {
    Plate::new(width, length).expect("a sound plate")
}

/// `along` and `across` in feet, `corner_cut` in inches.
pub fn cut(along: f64, across: f64, turns: u32, corner_cut: f64) -> Winding {
    Winding {
        shape: WindingShape::Rectangle,
        along: along * FOOT,
        across: across * FOOT,
        corner_cut: corner_cut * INCH,
        turns,
        pitch: 0.150 * INCH,
        wire_radius: 0.5 * awg_diameter(14),
    }
}

fn rectangle(along: f64, across: f64, turns: u32) -> Winding {
    cut(along, across, turns, 0.0)
}

#[track_caller]
fn assert_within(percent: f64, found: f64, expected: f64) {
    assert!(
        (found - expected).abs() <= percent / 100.0 * expected.abs(),
        "found {found:e}, expected {expected:e} within {percent} %"
    );
}

// Method of images; ratio 0.97 to 1.01, on three fineness steps of a plate of 12 × 12 m at 0.6 m.
#[test]
fn a_large_plate_tends_to_its_image() {
    let winding = rectangle(6.0, 6.0, 3);
    let primary = PrimaryLoop::new(&winding);
    let image = endless_sheet(&winding, 0.6);
    for cells in [12, 14, 16] {
        let plate = Plate::with_cells(12.0, 12.0, [cells; 2]).expect("a sound plate");
        let ratio = plate.change(&primary, [0.0, 0.0, 0.6]) / image;
        assert!((0.97..=1.01).contains(&ratio), "{cells} cells: {ratio}");
    }
}

// Computed: M grows with the turns and L with less than their square, so the ratio is 9·L₁/L₃; 1 %.
#[test]
fn turns_raise_the_relative_change() {
    let relative = |turns| {
        let winding = rectangle(6.0, 6.0, turns);
        // The same distance from the middle of the stack.
        let height = 0.5 - 0.5 * winding.pitch * f64::from(turns - 1);
        let turn = UprightTurn::new(1.6, 0.6, 0.03);
        let primary = PrimaryLoop::new(&winding);
        let position = [0.6, 0.0, height];
        let inductance = winding.inductance(LOW_FREQUENCY);
        [CAR.change(&primary, position), turn.change(&primary, position)].map(|c| c / inductance)
    };
    let (three, one) = (relative(3), relative(1));
    for (three, one) in three.into_iter().zip(one) {
        assert_within(1.0, three / one, 1.231);
    }
}

// Computed by two finite-plate programs that differ by 15 %; 15 %.
// Endless wall: method of images, computed independently (numpy); 0.1 %.
#[test]
fn a_gate_leaf_beside_a_loop() {
    let winding = rectangle(6.0, 20.0, 2);
    let primary = PrimaryLoop::new(&winding);
    let leaf = Wall::new(24.0 * FOOT, 6.0 * FOOT).expect("a sound wall");
    let inductance = winding.inductance(LOW_FREQUENCY);
    for (gap, percent, endless) in
        [(3.0, 0.23, 0.83978), (4.0, 0.11, 0.53940), (5.0, 0.056, 0.36916), (6.0, 0.030, 0.26438)]
    {
        let distance = (3.0 + gap) * FOOT;
        let found = leaf.change(&primary, [0.0, distance, 4.0 * INCH]);
        assert_within(15.0, 100.0 * found / inductance, percent);
        assert_within(0.1, endless_wall(&winding, distance) / MICRO, endless);
    }
}

// Computed independently (numpy), converged; 0.3 %, or 0.5 % where the plate's end is over the loop.
#[test]
fn a_plate_agrees_with_a_finer_computation() {
    let plain = PrimaryLoop::new(&rectangle(6.0, 6.0, 3));
    let cut = PrimaryLoop::new(&cut(6.0, 6.0, 3, 12.0));
    for (loop_, x, y, percent, microhenry) in [
        (&plain, 0.0, 0.0, 0.3, 3.3241),
        (&plain, 0.6, 1.0, 0.3, 1.9993),
        (&plain, 0.0, 2.25, 0.5, 1.0463),
        (&cut, 0.0, 0.0, 0.3, 3.2403),
        (&cut, 0.6, 1.0, 0.3, 1.9209),
        (&cut, 0.0, 2.25, 0.5, 1.0093),
    ] {
        assert_within(percent, CAR.change(loop_, [x, y, 0.5]) / MICRO, microhenry);
    }
}

// Computed independently (numpy) with both plates in one matrix; 1 % over a plate, 4 % over the gap.
#[test]
fn a_tractor_and_its_trailer_agree_with_a_finer_computation() {
    let primary = PrimaryLoop::new(&rectangle(6.0, 6.0, 3));
    let tractor = PlatePanel { width: 2.4, length: 5.0, along: -2.5, rise: 0.0 };
    let trailer = PlatePanel { width: 2.4, length: 12.0, along: -12.0, rise: 0.3 };
    let body = Plate::assembled(&[tractor, trailer]).expect("sound panels");
    for (front, percent, microhenry) in [(2.5, 1.0, 1.3659), (5.5, 4.0, 0.1519), (12.0, 1.0, 0.6520)] {
        assert_within(percent, body.change(&primary, [0.0, front, 0.9]) / MICRO, microhenry);
    }
}

// Computed independently (numpy), converged; 0.5 %. The second: metal along travel, beside the loop.
#[test]
fn a_wall_agrees_with_a_finer_computation() {
    let leaf = Wall::new(24.0 * FOOT, 6.0 * FOOT).expect("a sound wall");
    let foot = |feet: f64| [0.0, feet * FOOT, 4.0 * INCH];
    let ahead = PrimaryLoop::new(&rectangle(6.0, 20.0, 2));
    for (gap, microhenry) in [(3.0, 0.20092), (4.0, 0.09588), (5.0, 0.04854), (6.0, 0.02578)] {
        assert_within(0.5, leaf.change(&ahead, foot(3.0 + gap)) / MICRO, microhenry);
    }
    let beside = PrimaryLoop::turned(&rectangle(6.0, 20.0, 2));
    assert_within(0.5, leaf.change(&beside, foot(14.0)) / MICRO, 0.020522);
}

// Computed independently (numpy), converged; 0.5 %. A quadrupole's field is odd across the lane.
#[test]
fn a_plate_over_a_quadrupole_agrees_with_a_finer_computation() {
    let winding = Winding { shape: WindingShape::Quadrupole, ..rectangle(6.0, 6.0, 3) };
    let primary = PrimaryLoop::new(&winding);
    // The program laid all wires a pitch deep. The centre slot's stack is 1.5 pitches deeper than
    // that in the mean, and holds half the wires along travel.
    for (x, y, microhenry) in [(0.0, 0.0, 1.6447), (0.5, 0.4, 1.4765)] {
        let found = CAR.change(&primary, [x, y, 0.5 - 0.75 * winding.pitch]);
        assert_within(0.5, found / MICRO, microhenry);
    }
}

// Computed independently (numpy), exact sums; 0.1 %. Its inductance: Rosa & Grover's rectangle, which
// leaves out terms of the radius; 1 %.
#[test]
fn a_two_wheeler_agrees_with_an_independent_sum() {
    let machine = UprightTurn::new(1.25, 0.6, 0.02);
    assert_within(1.0, machine.inductance() / MICRO, 2.17471);
    let foot = [0.6, 0.2, 0.18];
    let plain = PrimaryLoop::new(&rectangle(6.0, 6.0, 3));
    assert_within(0.1, machine.mutual(&plain, foot).abs() / MICRO, 0.455824);
    let cut = PrimaryLoop::new(&cut(6.0, 6.0, 3, 12.0));
    assert_within(0.1, machine.mutual(&cut, foot).abs() / MICRO, 0.488615);
    // Over the middle both sides' fluxes cancel.
    assert!(machine.mutual(&plain, [0.0, 0.2, 0.18]).abs() < 1e-9 * MICRO);
}

// Circuit theory, exact: whatever the wiring, two like loops halve the change of a vehicle over one.
#[test]
fn one_channel_with_two_loops_halves_the_change() {
    let winding = rectangle(6.0, 6.0, 3);
    let inductance = winding.inductance(LOW_FREQUENCY);
    let change = CAR.change(&PrimaryLoop::new(&winding), [0.0, 0.0, 0.5]) / inductance;
    for weights in [series_weights(&[inductance; 2]), parallel_weights(&[inductance; 2])] {
        let seen: f64 = weights.iter().zip([change, 0.0]).map(|(weight, own)| weight * own).sum();
        assert_within(1e-9, seen, 0.5 * change);
    }
}

// Finer meshes come nearer and nearer to one answer: 2, 1, 0.5 and 0.2 %.
#[test]
fn refinement_converges() {
    let primary = PrimaryLoop::new(&rectangle(6.0, 6.0, 3));
    let with_cells = |cells| Plate::with_cells(1.75, 4.5, cells).expect("a sound plate");
    let fine = with_cells([8, 21]);
    for (cells, percent) in [([2, 5], 2.0), ([3, 8], 1.0), ([4, 10], 0.5), ([6, 15], 0.2)] {
        let plate = with_cells(cells);
        for position in [[0.0, 0.0, 0.5], [0.4, 0.8, 0.5], [0.0, 2.25, 0.6]] {
            let exact = fine.change(&primary, position);
            assert_within(percent, plate.change(&primary, position), exact);
        }
    }
}

fn winding() -> impl Strategy<Value = Winding> {
    let shapes = prop_oneof![Just(WindingShape::Rectangle), Just(WindingShape::Quadrupole)];
    (shapes, 3.0..12.0_f64, 3.0..24.0_f64, 1..6_u32, 0.0..15.0_f64).prop_map(
        |(shape, along, across, turns, corner_cut)| Winding { shape, ..cut(along, across, turns, corner_cut) },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    // Metal takes flux away, the more the nearer it is while it covers the loop's centre (beside a
    // loop it may be the other way round), and no plate takes more than one without end.
    #[test]
    fn a_plate_takes_less_the_higher_it_is_and_never_more_than_its_image(
        winding in winding(), x in -0.8..0.8_f64, y in -2.2..2.2_f64, height in 0.3..1.2_f64,
    ) {
        let primary = PrimaryLoop::new(&winding);
        let low = CAR.change(&primary, [x, y, height]);
        let high = CAR.change(&primary, [x, y, 1.1 * height]);
        prop_assert!(high > 0.0 && low > high);
        prop_assert!(low < endless_sheet(&winding, height));
        prop_assert!(low < winding.inductance(0.0));
    }

    // Reciprocity and the mirror: left is right, and the front is the back.
    #[test]
    fn mirrored_positions_are_alike(
        winding in winding(), x in 0.0..2.0_f64, y in 0.0..3.0_f64, height in 0.3..1.2_f64,
    ) {
        let primary = PrimaryLoop::new(&winding);
        let change = CAR.change(&primary, [x, y, height]);
        for mirror in [[-x, y, height], [x, -y, height], [-x, -y, height]] {
            prop_assert!((CAR.change(&primary, mirror) - change).abs() <= 1e-9 * change);
        }
    }

    // Nothing but the names of the axes: turning both the loop and the plate changes nothing. The
    // tolerance is for a corner cut's other quadrature points.
    #[test]
    fn turning_loop_and_plate_together_changes_nothing(
        winding in winding(), x in -2.0..2.0_f64, y in -2.0..2.0_f64, height in 0.4..1.2_f64,
    ) {
        let (wide, long) = (Plate::with_cells(3.0, 2.0, [5, 4]), Plate::with_cells(2.0, 3.0, [4, 5]));
        let (wide, long) = (wide.expect("sound"), long.expect("sound"));
        let straight = wide.change(&PrimaryLoop::new(&winding), [x, y, height]);
        let turned = long.change(&PrimaryLoop::turned(&winding), [-y, x, height]);
        prop_assert!((straight - turned).abs() <= 1e-9 * straight, "{straight:e} {turned:e}");
    }

    // A leaf is never seen more than an endless one, and less the further away.
    #[test]
    fn a_wall_fades_with_distance(
        winding in winding(), length in 1.0..10.0_f64, height in 0.5..3.0_f64, gap in 0.5..3.0_f64,
    ) {
        let wall = Wall::new(length, height).expect("a sound wall");
        let primary = PrimaryLoop::new(&winding);
        let distance = 0.5 * winding.along + gap;
        let near = wall.change(&primary, [0.0, distance, 0.1]);
        let far = wall.change(&primary, [0.0, 1.1 * distance, 0.1]);
        prop_assert!(near > far && far > 0.0);
        prop_assert!(near < endless_wall(&winding, distance));
    }
}
