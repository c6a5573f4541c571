//! The classes of vehicles that a loop is asked to see.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::sources::Source;
use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// The classes of vehicles that a loop is asked to see.
    VehicleClass {
        PassengerCar "passenger_car" "Passenger car" "A car, about 4.5 m long." [NemaSensitivity];
        Pickup "pickup" "Pickup or van" "A pickup or van, about 5.3 m long." [OwnChoice];
        HighBedTruck "high_bed_truck" "High-bed truck" "A rigid truck whose bed is 0.9 to 1.2 m above the pavement." [FromMemory];
        TractorTrailer "tractor_trailer" "Tractor and trailer" "A tractor with a trailer whose floor is 1.2 m above the pavement, and the gap at the tongue." [FromMemory];
        SmallMotorcycle "small_motorcycle" "Small motorcycle" "A small motorcycle, moped or scooter." [NemaSensitivity];
        LargeMotorcycle "large_motorcycle" "Large motorcycle" "A large motorcycle." [NemaSensitivity];
        Bicycle "bicycle" "Bicycle" "A bicycle with metal rims." [OwnChoice];
        CarWithTrailer "car_with_trailer" "Car with trailer" "A car and a light trailer of one axle behind it, and the gap at the tongue." [OwnChoice];
        Bus "bus" "Bus" "A bus or coach, about 12 m long." [FromMemory];
        Forklift "forklift" "Forklift" "A forklift truck, about 2.3 m long without its forks, whose solid underside is low." [FromMemory];
        GolfCart "golf_cart" "Golf cart" "A golf cart, about 2.4 m long, with little metal in its floor." [OwnChoice];
    }
}

/// The metal of a vehicle, as the response model takes it.
#[derive(Clone, Debug)]
pub enum VehicleBody {
    /// One flat plate or several in a row.
    Underside(Vec<UndersidePanel>),
    /// An upright shorted turn along travel: a two-wheeler.
    Upright {
        /// Its horizontal side.
        length: Length,
        /// Its vertical side.
        height: Length,
        /// From the pavement to its lower side.
        ground_gap: Length,
        /// Radius of its conductor.
        radius: Length,
    },
}

/// A flat plate of an underside.
#[derive(Clone, Copy, Debug)]
pub struct UndersidePanel {
    /// Side across the lane.
    pub width: Length,
    /// Side along travel.
    pub length: Length,
    /// From the vehicle's front to the plate's.
    pub behind: Length,
    /// Effective height above the pavement.
    pub height: Length,
}

impl VehicleClass {
    /// Whether the vehicle runs on two wheels in one line.
    pub fn is_two_wheeler(self) -> bool {
        match self {
            Self::SmallMotorcycle | Self::LargeMotorcycle | Self::Bicycle => true,
            Self::PassengerCar
            | Self::Pickup
            | Self::HighBedTruck
            | Self::TractorTrailer
            | Self::CarWithTrailer
            | Self::Bus
            | Self::Forklift
            | Self::GolfCart => false,
        }
    }

    /// Whether its metal has a gap that a loop may fall into.
    pub fn has_gap(self) -> bool {
        matches!(self.body(), VehicleBody::Underside(panels) if panels.len() > 1)
    }

    /// Whether a short loop serves it: cars, pickups and small carts sit low, and have no gap that a short loop falls into.
    pub fn is_low(self) -> bool {
        match self {
            Self::PassengerCar | Self::Pickup | Self::Forklift | Self::GolfCart => true,
            Self::HighBedTruck
            | Self::TractorTrailer
            | Self::CarWithTrailer
            | Self::Bus
            | Self::SmallMotorcycle
            | Self::LargeMotorcycle
            | Self::Bicycle => false,
        }
    }

    /// The class whose flat underside measures how high above a loop metal is seen: the vehicle's own, a rigid truck's for a tractor
    /// and trailer, and a car's for a car with trailer and for two-wheelers, which have none.
    #[must_use]
    pub fn seen_height_class(self) -> Self {
        match self {
            Self::PassengerCar | Self::Pickup | Self::HighBedTruck | Self::Bus | Self::Forklift | Self::GolfCart => {
                self
            }
            Self::TractorTrailer => Self::HighBedTruck,
            Self::SmallMotorcycle | Self::LargeMotorcycle | Self::Bicycle | Self::CarWithTrailer => Self::PassengerCar,
        }
    }

    /// The change at the unit's terminals, percent, that a unit should switch at to see the class.
    ///
    /// 0.32 for what sits low and 0.13 for what sits high and for large motorcycles are steps of the NEMA sensitivity classes; 0.05 for the small ones is finer than the finest class (from memory): the unit's sheet must show it.
    pub fn threshold_percent(self) -> f64 {
        match self {
            Self::PassengerCar | Self::Pickup | Self::CarWithTrailer | Self::Forklift | Self::GolfCart => 0.32,
            Self::HighBedTruck | Self::TractorTrailer | Self::Bus | Self::LargeMotorcycle => 0.13,
            Self::SmallMotorcycle | Self::Bicycle => 0.05,
        }
    }

    /// The metal that a loop sees.
    ///
    /// *Calibrated*, not validated, on the standard test loop (6 x 6 ft, corners cut 12 in, three turns of 14 AWG at a pitch of
    /// 0.150 in at the bottom of a slot 1.5 in deep, lead-in of 22 µH, 50 kHz), at the terminals: the height of the car (3.2 %),
    /// about twice its ground clearance since an underside is no flat sheet; the conductor radii of the motorcycles (0.13 and
    /// 0.32 %, 0.3 m inside the side wire). All other sizes are assumed, from memory of such vehicles.
    pub fn body(self) -> VehicleBody {
        let m = Length::new::<meter>;
        let plate = |width, length, height| UndersidePanel {
            width: m(width),
            length: m(length),
            behind: m(0.0),
            height: m(height),
        };
        let upright = |length, height, radius| VehicleBody::Upright {
            length: m(length),
            height: m(height),
            ground_gap: m(0.15),
            radius: m(radius),
        };
        match self {
            Self::PassengerCar => VehicleBody::Underside(vec![plate(1.75, 4.5, 0.49795)]),
            Self::Pickup => VehicleBody::Underside(vec![plate(1.9, 5.3, 0.60)]),
            // Beds lie 0.9 to 1.2 m high; the higher end is the harder one to see.
            Self::HighBedTruck => VehicleBody::Underside(vec![plate(2.4, 7.0, 1.2)]),
            Self::TractorTrailer => VehicleBody::Underside(vec![
                plate(2.4, 5.0, 0.9),
                UndersidePanel { behind: m(6.0), ..plate(2.4, 12.0, 1.2) },
            ]),
            Self::SmallMotorcycle => upright(1.25, 0.60, 0.02078),
            Self::LargeMotorcycle => upright(1.60, 0.70, 0.07859),
            Self::Bicycle => upright(1.0, 0.5, 0.010),
            // Behind the car's bumper a tongue of 1.3 m, which is too thin to count, and a bed of 2.4 m.
            Self::CarWithTrailer => VehicleBody::Underside(vec![
                plate(1.75, 4.5, 0.49795),
                UndersidePanel { behind: m(5.8), ..plate(1.5, 2.4, 0.65) },
            ]),
            // Twice the clearance of a coach, as for a car. One with a low floor is seen better.
            Self::Bus => VehicleBody::Underside(vec![plate(2.5, 12.0, 0.8)]),
            // A closed body of steel acts at its clearance, which is up to 0.2 m on machines for rough ground.
            Self::Forklift => VehicleBody::Underside(vec![plate(1.1, 2.3, 0.2)]),
            // A ladder frame and an axle under a floor of plastic: as high as a pickup's underside rather than as its own frame.
            Self::GolfCart => VehicleBody::Underside(vec![plate(1.2, 2.4, 0.6)]),
        }
    }

    /// How the body is known: `calibrated` on a published figure, or `assumed`.
    pub fn model(self) -> &'static str {
        match self {
            Self::PassengerCar | Self::SmallMotorcycle | Self::LargeMotorcycle => "calibrated",
            Self::Pickup
            | Self::HighBedTruck
            | Self::TractorTrailer
            | Self::Bicycle
            | Self::CarWithTrailer
            | Self::Bus
            | Self::Forklift
            | Self::GolfCart => "assumed",
        }
    }

    /// Width over all: of the plate that stands for it, or of a rider's handlebar (from memory).
    pub fn width(self) -> Length {
        match self.body() {
            VehicleBody::Underside(panels) => {
                panels.iter().map(|panel| panel.width).fold(Length::default(), Length::max)
            }
            VehicleBody::Upright { .. } => Length::new::<meter>(0.7),
        }
    }

    /// Length over all. From memory, but for the plates that the response model assumes.
    pub fn length(self) -> Length {
        Length::new::<meter>(match self {
            Self::PassengerCar => 4.5,
            Self::Pickup => 5.3,
            Self::HighBedTruck => 7.0,
            Self::TractorTrailer => 18.0,
            Self::SmallMotorcycle => 2.0,
            Self::LargeMotorcycle | Self::GolfCart => 2.4,
            Self::Bicycle => 1.8,
            Self::CarWithTrailer => 8.2,
            Self::Bus => 12.0,
            Self::Forklift => 2.3,
        })
    }

    /// The length of the shortest cars: 2.7 m (from memory).
    pub fn shortest_car() -> Length {
        Length::new::<meter>(2.7)
    }

    /// Where [`VehicleClass::threshold_percent`] comes from.
    pub fn threshold_sources(self) -> &'static [Source] {
        match self {
            Self::PassengerCar | Self::LargeMotorcycle => &[Source::NemaSensitivity],
            Self::Pickup
            | Self::HighBedTruck
            | Self::TractorTrailer
            | Self::CarWithTrailer
            | Self::Bus
            | Self::Forklift
            | Self::GolfCart => &[Source::NemaSensitivity, Source::OwnChoice],
            Self::SmallMotorcycle | Self::Bicycle => &[Source::FromMemory, Source::OwnChoice],
        }
    }

    /// The vehicles that an opening is sized for when none are named.
    pub const USUAL: [Self; 2] = [Self::PassengerCar, Self::HighBedTruck];
}
