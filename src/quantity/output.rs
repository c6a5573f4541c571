//! The quantities of reports: both systems, fixed decimals, so that no caller converts or rounds.

use serde::Serialize;
use uom::si::{
    f64 as si, length, magnetic_permeability, temperature_interval, thermodynamic_temperature as temperature, time,
    velocity,
};
use utoipa::ToSchema;

use super::dimension::PerLength;

/// Rounds to a fixed number of decimals, halves away from zero.
///
/// A guard far below the last decimal takes back the noise of binary conversion: 3/16 in is 4.7625 mm and shows as 4.763,
/// though the nearest double lies slightly below.
pub fn round(value: f64, decimals: i32) -> f64 {
    let scale = 10_f64.powi(decimals);
    let scaled = value * scale;
    // The added zero turns a rounded -0 into 0.
    (scaled + scaled.signum() * scaled.abs().max(1.0) * 1e-12).round() / scale + 0.0
}

/// A plan dimension, distance, height, wire or cut length, in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct PlanLength {
    /// Feet, 2 decimals.
    pub ft: f64,
    /// Metres, 3 decimals.
    pub m: f64,
}

impl From<si::Length> for PlanLength {
    fn from(value: si::Length) -> Self {
        Self { ft: round(value.get::<length::foot>(), 2), m: round(value.get::<length::meter>(), 3) }
    }
}

/// A small dimension (slot, cover, corner cut, diameter), in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct DetailLength {
    /// Inches, 4 decimals.
    pub inch: f64,
    /// Millimetres, 3 decimals.
    pub mm: f64,
}

impl From<si::Length> for DetailLength {
    fn from(value: si::Length) -> Self {
        Self { inch: round(value.get::<length::inch>(), 4), mm: round(value.get::<length::millimeter>(), 3) }
    }
}

/// A temperature on both scales.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct TemperatureValue {
    /// Degrees Fahrenheit, 2 decimals.
    pub f: f64,
    /// Degrees Celsius, 2 decimals.
    pub c: f64,
}

impl From<si::ThermodynamicTemperature> for TemperatureValue {
    fn from(value: si::ThermodynamicTemperature) -> Self {
        Self {
            f: round(value.get::<temperature::degree_fahrenheit>(), 2),
            c: round(value.get::<temperature::degree_celsius>(), 2),
        }
    }
}

/// A difference of temperatures on both scales: no zero point, so 1 °C is 1.8 °F.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct TemperatureDifferenceValue {
    /// Degrees Fahrenheit, 2 decimals.
    pub f: f64,
    /// Degrees Celsius, 2 decimals.
    pub c: f64,
}

impl From<si::TemperatureInterval> for TemperatureDifferenceValue {
    fn from(value: si::TemperatureInterval) -> Self {
        Self {
            f: round(value.get::<temperature_interval::degree_fahrenheit>(), 2),
            c: round(value.get::<temperature_interval::degree_celsius>(), 2),
        }
    }
}

/// A depth per day, the advance of a curing front in its first day, in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct DepthPerDayValue {
    /// Inches per day, 4 decimals.
    pub inch_per_day: f64,
    /// Millimetres per day, 3 decimals.
    pub mm_per_day: f64,
}

impl From<si::Velocity> for DepthPerDayValue {
    fn from(value: si::Velocity) -> Self {
        let depth = value * si::Time::new::<time::day>(1.0);
        Self {
            inch_per_day: round(depth.get::<length::inch>(), 4),
            mm_per_day: round(depth.get::<length::millimeter>(), 3),
        }
    }
}

/// A speed in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct SpeedValue {
    /// Miles per hour, 2 decimals.
    pub mph: f64,
    /// Kilometres per hour, 2 decimals.
    pub km_h: f64,
}

impl From<si::Velocity> for SpeedValue {
    fn from(value: si::Velocity) -> Self {
        Self {
            mph: round(value.get::<velocity::mile_per_hour>(), 2),
            km_h: round(value.get::<velocity::kilometer_per_hour>(), 2),
        }
    }
}

/// A pace of work in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct WorkSpeedValue {
    /// Feet per minute, 2 decimals.
    pub ft_per_min: f64,
    /// Metres per minute, 3 decimals.
    pub m_per_min: f64,
}

impl From<si::Velocity> for WorkSpeedValue {
    fn from(value: si::Velocity) -> Self {
        let per_minute = value * si::Time::new::<time::minute>(1.0);
        Self {
            ft_per_min: round(per_minute.get::<length::foot>(), 2),
            m_per_min: round(per_minute.get::<length::meter>(), 3),
        }
    }
}

/// A volume in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct VolumeValue {
    /// US fluid ounces, 1 decimal.
    pub fl_oz: f64,
    /// Millilitres, no decimals.
    pub ml: f64,
}

impl From<si::Volume> for VolumeValue {
    fn from(value: si::Volume) -> Self {
        Self {
            fl_oz: round(value.get::<uom::si::volume::fluid_ounce>(), 1),
            ml: round(value.get::<uom::si::volume::milliliter>(), 0),
        }
    }
}

/// A duration in three units.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct DurationValue {
    /// Hours, 3 decimals.
    pub h: f64,
    /// Minutes, 2 decimals.
    pub min: f64,
    /// Seconds, 1 decimal.
    pub s: f64,
}

impl From<si::Time> for DurationValue {
    fn from(value: si::Time) -> Self {
        Self {
            h: round(value.get::<time::hour>(), 3),
            min: round(value.get::<time::minute>(), 2),
            s: round(value.get::<time::second>(), 1),
        }
    }
}

/// An inductance per length in both systems.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, ToSchema)]
pub struct InductancePerLengthValue {
    /// Microhenries per foot, 4 decimals.
    pub uh_per_ft: f64,
    /// Microhenries per metre, 4 decimals.
    pub uh_per_m: f64,
}

impl From<PerLength> for InductancePerLengthValue {
    fn from(value: PerLength) -> Self {
        let per_metre = value.get::<magnetic_permeability::henry_per_meter>() * 1e6;
        Self { uh_per_ft: round(per_metre * 0.3048, 4), uh_per_m: round(per_metre, 4) }
    }
}
