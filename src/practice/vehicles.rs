//! The classes of vehicles that a loop is asked to see.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::vocabulary;

vocabulary! {
    /// The classes of vehicles that a loop is asked to see.
    VehicleClass {
        PassengerCar "passenger_car" "Passenger car" "A car, about 4.5 m long." [NemaSensitivity];
        Pickup "pickup" "Pickup or van" "A pickup or van, about 5.3 m long." [OwnChoice];
        HighBedTruck "high_bed_truck" "High-bed truck" "A rigid truck whose bed is 0.9 to 1.2 m above the pavement." [FromMemory];
        TractorTrailer "tractor_trailer" "Tractor and trailer" "A tractor with a trailer whose floor is 1.2 m above the pavement, and the gap at the tongue." [FromMemory];
        SmallMotorcycle "small_motorcycle" "Small motorcycle" "A small motorcycle, moped or scooter." [NemaSensitivity];
        LargeMotorcycle "large_motorcycle" "Large motorcycle" "A large motorcycle." [NemaSensitivity];
        Bicycle "bicycle" "Bicycle" "A bicycle with metal rims." [OwnChoice];
    }
}

impl VehicleClass {
    /// Whether the vehicle runs on two wheels in one line.
    pub fn is_two_wheeler(self) -> bool {
        matches!(self, Self::SmallMotorcycle | Self::LargeMotorcycle | Self::Bicycle)
    }

    /// Whether a short loop serves it: cars and pickups sit low.
    pub fn is_low(self) -> bool {
        matches!(self, Self::PassengerCar | Self::Pickup)
    }

    /// Length over all. From memory, but for the plates that the response model assumes.
    pub fn length(self) -> Length {
        Length::new::<meter>(match self {
            Self::PassengerCar => 4.5,
            Self::Pickup => 5.3,
            Self::HighBedTruck => 7.0,
            Self::TractorTrailer => 18.0,
            Self::SmallMotorcycle => 2.0,
            Self::LargeMotorcycle => 2.4,
            Self::Bicycle => 1.8,
        })
    }

    /// The height of a high bed at its lowest: 0.9 m (FHWA handbook discussion, from memory: 3 to 4 ft).
    pub fn lowest_high_bed() -> Length {
        Length::new::<meter>(0.9)
    }

    /// The vehicles that an opening is sized for when none are named.
    pub const USUAL: [Self; 2] = [Self::PassengerCar, Self::HighBedTruck];
}
