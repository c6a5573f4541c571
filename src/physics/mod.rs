//! The laws of nature behind a vehicle loop: SI numbers in, SI numbers out.
//!
//! This module depends on no other of the crate. It knows no JSON and no unit but the SI's. Its one
//! rule of thumb, [`winding::quick_rule`], is for comparison with the computed inductance.
//!
//! | module | what it computes |
//! |---|---|
//! | [`filament`] | Neumann's integral for two straight wires in any position |
//! | [`winding`] | a loop as stacked polygons of filaments: inductance, coupling, lengths |
//! | [`conductor`] | copper wire: gauge, resistance, skin effect |
//! | [`plate`] | metal in the field: undersides, gate leaves, two-wheelers |
//! | [`saw`] | what a round blade leaves at the end of a cut |
//! | [`circuit`] | what the lead-in, a second loop and a capacitance make of an inductance |
//! | [`psychrometrics`] | moist air: vapour pressure, dew point, frost point |
//! | [`kinetics`] | how fast a reaction runs, and how far it has come |
//!
//! # Axes
//!
//! Seen by a driver: x points across the lane to the right, y along travel, z up. A loop has its
//! origin at its centre. Its top turn lies at z = 0 and turn k, counted from 0, at z = -k · pitch.
//!
//! # Validity
//!
//! Quasi-static fields of thin wires in a non-magnetic medium. At the few hundred kilohertz that a
//! detector unit uses at most, a wavelength is hundreds of times the size of a loop. Arguments are
//! taken as they come: a caller checks that lengths are positive and numbers finite.

pub mod circuit;
pub mod conductor;
pub mod filament;
pub mod kinetics;
pub mod plate;
pub mod psychrometrics;
pub mod saw;
pub mod winding;

/// Magnetic constant in H/m, 4π · 10⁻⁷.
///
/// The exact value before the 2019 revision of the SI; the measured one differs by parts in 10¹⁰.
pub const MU_0: f64 = 4.0e-7 * std::f64::consts::PI;
