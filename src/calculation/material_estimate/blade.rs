//! Which blade reaches how deep.

use uom::si::f64::Length;

use crate::practice::materials::{blade_diameters, flange_radius};

/// Whether a blade reaches a depth.
pub fn reaches(blade: Length, depth: Length) -> bool {
    depth <= (blade / 2.0 - flange_radius()) * 1.000_001
}

/// The blade itself where it reaches a depth, else the smallest that does.
pub fn that_reaches(blade: Length, depth: Length) -> Length {
    if reaches(blade, depth) {
        return blade;
    }
    blade_diameters().into_iter().find(|blade| reaches(*blade, depth)).unwrap_or(2.0 * (depth + flange_radius()))
}
