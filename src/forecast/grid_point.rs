//! A place as it is sent to the service and used as a cache key.

use std::fmt;

use crate::calculation::input::Location;

/// Steps per degree: 0.001 degree is 110 m at most, far below the cells of a forecast (about 2.5 km, from memory), and too coarse
/// to identify a customer's gate. Choice made here; the service accepts at most four decimals, from memory.
const STEPS: f64 = 1000.0;

/// A place on earth, rounded to 0.001 degree. Displayed as the service expects it: `44.31,-68.204`, without trailing zeros.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct GridPoint {
    /// Thousandths of a degree north.
    latitude: i32,
    /// Thousandths of a degree east.
    longitude: i32,
}

impl From<Location> for GridPoint {
    fn from(location: Location) -> Self {
        let steps = |degrees: f64| (degrees * STEPS).round() as i32;
        Self { latitude: steps(location.latitude), longitude: steps(location.longitude) }
    }
}

impl fmt::Display for GridPoint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{},{}", f64::from(self.latitude) / STEPS, f64::from(self.longitude) / STEPS)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid_point(latitude: f64, longitude: f64) -> GridPoint {
        GridPoint::from(Location { latitude, longitude })
    }

    #[test]
    fn a_place_is_rounded_and_shown_without_trailing_zeros() {
        assert_eq!(grid_point(44.3100, -68.20449).to_string(), "44.31,-68.204");
        assert_eq!(grid_point(-0.0004, 180.0).to_string(), "0,180");
        assert_eq!(grid_point(90.0, -0.12).to_string(), "90,-0.12");
    }

    #[test]
    fn near_places_are_one_and_others_are_not() {
        assert_eq!(grid_point(44.31, -68.204), grid_point(44.3103, -68.2042));
        assert_ne!(grid_point(44.31, -68.204), grid_point(44.312, -68.204));
        assert_ne!(grid_point(44.31, -68.204), grid_point(44.31, 68.204));
    }
}
