//! The worked numbers beside each law in `physics`, computed apart from it: what its documentation promises, to the last printed
//! digit.

use super::{FOOT, INCH, MICRO, assert_rounds_to, assert_within};
use crate::plates::cut;
use loopwright::physics::circuit::{parallel_pair, series_pair, share};
use loopwright::physics::conductor::{awg_diameter, copper_resistivity, dc_resistance_per_metre, round_area};
use loopwright::physics::filament::{Filament, mutual, self_inductance};
use loopwright::physics::kinetics::arrhenius;
use loopwright::physics::plate::{Plate, PrimaryLoop, UprightTurn, Wall, endless_sheet, endless_wall};
use loopwright::physics::psychrometrics::{dew_point, frost_point, saturation_pressure, vapour_pressure};
use loopwright::physics::winding::{Winding, WindingShape};

const LOW_FREQUENCY: f64 = 0.25;

#[test]
fn coupled_pairs() {
    assert_within(1e-9, series_pair(77.0 * MICRO, 77.0 * MICRO, -2.0 * MICRO), 150.0 * MICRO);
    assert_within(1e-9, parallel_pair(77.0 * MICRO, 77.0 * MICRO, -2.0 * MICRO), 37.5 * MICRO);
    // Unequal: (80·20 - 9)/(100 - 6), and with the other sense of winding.
    assert_within(1e-9, series_pair(80.0 * MICRO, 20.0 * MICRO, 3.0 * MICRO), 106.0 * MICRO);
    assert_within(1e-9, parallel_pair(80.0 * MICRO, 20.0 * MICRO, 3.0 * MICRO), 1591.0 / 94.0 * MICRO);
    assert_rounds_to(1e-4, share(77.0 * MICRO, 22.0 * MICRO), 0.7778);
}

#[test]
fn copper() {
    assert_rounds_to(1e-3, round_area(awg_diameter(14)) * 1e6, 2.081);
    assert_rounds_to(1e-4, copper_resistivity(75.0) * 1e8, 2.0968);
    assert_rounds_to(1e-3, dc_resistance_per_metre(round_area(awg_diameter(14)), 20.0) * 1e3, 8.285);
}

#[test]
fn air_and_reactions() {
    assert_rounds_to(0.1, saturation_pressure(23.0), 2803.8);
    assert_rounds_to(0.1, vapour_pressure(23.0, 0.5), 1401.9);
    assert_rounds_to(0.01, dew_point(vapour_pressure(20.0, 0.5)), 9.26);
    assert_rounds_to(0.01, frost_point(vapour_pressure(-5.0, 0.7)), -8.55);
    assert_rounds_to(0.01, arrhenius(51.2e3, 303.15, 293.15), 2.0);
}

#[test]
fn filaments() {
    let wire = self_inductance(1.0, 1e-3 * (-LOW_FREQUENCY).exp());
    assert_rounds_to(1e-4, wire / MICRO, 1.3703);
    let (sine, cosine) = std::f64::consts::FRAC_PI_3.sin_cos();
    let along = Filament { from: [0.0; 3], to: [1.0, 0.0, 0.0] };
    let aslant = Filament { from: [0.0; 3], to: [cosine, sine, 0.0] };
    assert_within(1e-9, mutual(&along, &aslant), 1e-7 * 3.0_f64.ln());
    assert_within(1e-12, Filament { from: [1.0, 2.0, 3.0], to: [4.0, 6.0, 3.0] }.length(), 5.0);
}

#[test]
fn windings() {
    let (plain, clipped) = (cut(6.0, 6.0, 3, 0.0), cut(6.0, 6.0, 3, 12.0));
    assert_rounds_to(1e-3, clipped.turn_length(), 6.601);
    assert_rounds_to(1e-3, plain.wire_length(), 21.946);
    assert_rounds_to(1e-3, plain.straight_cut(), 7.315);
    assert_rounds_to(1e-3, clipped.diagonal_cut(), 1.724);
    assert_eq!(plain.outline().len(), 4);
    assert_rounds_to(0.1, plain.mirror_mutual(3.85 * INCH) / MICRO, 20.2);
    let beside = [9.0 * FOOT, 0.0, 0.0];
    assert_rounds_to(1e-4, plain.coupling(&plain, beside, LOW_FREQUENCY), -0.0094);

    let double = Winding { shape: WindingShape::Quadrupole, ..plain };
    assert_rounds_to(0.1, double.inductance(LOW_FREQUENCY) / MICRO, 128.8);
    // Each cell goes round its own four sides; the slot between them is cut once.
    assert_within(1e-9, double.turn_length(), 36.0 * FOOT);
    assert_within(1e-9, double.straight_cut(), 30.0 * FOOT);
    assert_eq!(Winding { corner_cut: 12.0 * INCH, ..double }.outline().len(), 11);
}

#[test]
fn metal() {
    let square = cut(6.0, 6.0, 3, 0.0);
    let car = Plate::new(1.75, 4.5).expect("a sound plate");
    let change = car.change(&PrimaryLoop::new(&square), [0.0, 0.0, 0.5]);
    assert_rounds_to(0.01, change / MICRO, 3.33);
    assert_rounds_to(0.01, car.least_height(), 0.26);
    assert_rounds_to(0.01, endless_sheet(&square, 18.0 * INCH) / MICRO, 5.25);

    let wide = cut(6.0, 20.0, 2, 0.0);
    let leaf = Wall::new(24.0 * FOOT, 6.0 * FOOT).expect("a sound wall");
    let foot = [0.0, 7.0 * FOOT, 4.0 * INCH];
    assert_rounds_to(1e-3, leaf.change(&PrimaryLoop::new(&wide), foot) / MICRO, 0.096);
    assert_rounds_to(1e-3, endless_wall(&wide, 7.0 * FOOT) / MICRO, 0.539);

    // 13 × 3 cells, which reach 0.284 of a pitch short of each rim: 0.6 of the longer pitch.
    assert_rounds_to(1e-4, leaf.least_distance(), 0.6 * 24.0 * FOOT / 13.568);

    let metre = UprightTurn::new(1.0, 1.0, 1e-3);
    assert_rounds_to(1e-4, metre.inductance() / MICRO, 4.9078);
    let machine = UprightTurn::new(1.25, 0.6, 22.9e-3);
    assert_rounds_to(1e-3, machine.change(&PrimaryLoop::new(&square), [0.6, 0.0, 0.18]) / MICRO, 0.104);
}
