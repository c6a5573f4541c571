//! The quantities of reports: typed values that are written in both systems of units with fixed decimals, so that no caller converts or rounds.
//!
//! A value is rounded when it is written: by `Serialize`, and by the accessors that are named like its fields.

use std::borrow::Cow;

use serde::{Serialize, Serializer};
use uom::si::{
    f64 as si, length, magnetic_permeability, temperature_interval, thermodynamic_temperature as temperature, time,
    velocity, volume,
};
use utoipa::openapi::{RefOr, Schema};
use utoipa::{PartialSchema, ToSchema};

use super::dimension::PerLength;

/// Rounds to a fixed number of decimals, halves away from zero.
///
/// A guard far below the last decimal takes back the noise of binary conversion: 3/16 in is 4.7625 mm and shows as 4.763,
/// though the nearest double lies slightly below.
pub fn round(value: f64, decimals: i32) -> f64 {
    let scale = 10_f64.powi(decimals);
    let scaled = value * scale;
    if !scaled.is_finite() {
        // So large a number has no decimals.
        return value;
    }
    // The added zero turns a rounded -0 into 0.
    (scaled + scaled.signum() * scaled.abs().max(1.0) * 1e-12).round() / scale + 0.0
}

/// Declares quantities, a line for each field: its name, its documentation, its decimals, and how it is converted.
macro_rules! output_quantities {
    ($($(#[doc = $doc:literal])+ $name:ident($si:ty) with fields $fields:ident {
        $($field:ident $field_doc:literal $decimals:literal = $convert:expr;)+
    })+) => {$(
        $(#[doc = $doc])+
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name(pub $si);

        $(#[doc = $doc])+
        #[derive(Serialize, ToSchema)]
        struct $fields {
            $(#[doc = $field_doc] $field: f64,)+
        }

        impl $name {
            $(
                #[doc = $field_doc]
                pub fn $field(self) -> f64 {
                    let convert: fn($si) -> f64 = $convert;
                    round(convert(self.0), $decimals)
                }
            )+
        }

        impl $name {
            /// Writes a typed quantity as this one, for `serialize_with`.
            ///
            /// # Errors
            /// Those of the serializer.
            pub fn write<S: Serializer>(value: &$si, serializer: S) -> Result<S::Ok, S::Error> {
                Self(*value).serialize(serializer)
            }

            /// The same for one that may be absent.
            ///
            /// # Errors
            /// Those of the serializer.
            pub fn write_option<S: Serializer>(value: &Option<$si>, serializer: S) -> Result<S::Ok, S::Error> {
                value.map(Self).serialize(serializer)
            }
        }

        impl From<$si> for $name {
            fn from(value: $si) -> Self {
                Self(value)
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                $fields { $($field: self.$field(),)+ }.serialize(serializer)
            }
        }

        impl PartialSchema for $name {
            fn schema() -> RefOr<Schema> {
                $fields::schema()
            }
        }

        impl ToSchema for $name {
            fn name() -> Cow<'static, str> {
                Cow::Borrowed(stringify!($name))
            }
        }
    )+};
}

output_quantities! {
    /// A plan dimension, distance, height, wire or cut length, in both systems.
    PlanLength(si::Length) with fields PlanLengthFields {
        ft "Feet, 2 decimals." 2 = |value| value.get::<length::foot>();
        m "Metres, 3 decimals." 3 = |value| value.get::<length::meter>();
    }
    /// A small dimension (slot, cover, corner cut, diameter), in both systems.
    DetailLength(si::Length) with fields DetailLengthFields {
        inch "Inches, 4 decimals." 4 = |value| value.get::<length::inch>();
        mm "Millimetres, 3 decimals." 3 = |value| value.get::<length::millimeter>();
    }
    /// A temperature on both scales.
    TemperatureValue(si::ThermodynamicTemperature) with fields TemperatureFields {
        f "Degrees Fahrenheit, 2 decimals." 2 = |value| value.get::<temperature::degree_fahrenheit>();
        c "Degrees Celsius, 2 decimals." 2 = |value| value.get::<temperature::degree_celsius>();
    }
    /// A difference of temperatures on both scales: no zero point, so 1 °C is 1.8 °F.
    TemperatureDifferenceValue(si::TemperatureInterval) with fields TemperatureDifferenceFields {
        f "Degrees Fahrenheit, 2 decimals." 2 = |value| value.get::<temperature_interval::degree_fahrenheit>();
        c "Degrees Celsius, 2 decimals." 2 = |value| value.get::<temperature_interval::degree_celsius>();
    }
    /// A depth per day, the advance of a curing front in its first day, in both systems.
    DepthPerDayValue(si::Velocity) with fields DepthPerDayFields {
        inch_per_day "Inches per day, 4 decimals." 4 = |value| (value * si::Time::new::<time::day>(1.0)).get::<length::inch>();
        mm_per_day "Millimetres per day, 3 decimals." 3 = |value| (value * si::Time::new::<time::day>(1.0)).get::<length::millimeter>();
    }
    /// A speed in both systems.
    SpeedValue(si::Velocity) with fields SpeedFields {
        mph "Miles per hour, 2 decimals." 2 = |value| value.get::<velocity::mile_per_hour>();
        km_h "Kilometres per hour, 2 decimals." 2 = |value| value.get::<velocity::kilometer_per_hour>();
    }
    /// A pace of work in both systems.
    WorkSpeedValue(si::Velocity) with fields WorkSpeedFields {
        ft_per_min "Feet per minute, 2 decimals." 2 = |value| (value * si::Time::new::<time::minute>(1.0)).get::<length::foot>();
        m_per_min "Metres per minute, 3 decimals." 3 = |value| (value * si::Time::new::<time::minute>(1.0)).get::<length::meter>();
    }
    /// A volume in both systems.
    VolumeValue(si::Volume) with fields VolumeFields {
        fl_oz "US fluid ounces, 1 decimal." 1 = |value| value.get::<volume::fluid_ounce>();
        ml "Millilitres, no decimals." 0 = |value| value.get::<volume::milliliter>();
    }
    /// A duration in three units.
    DurationValue(si::Time) with fields DurationFields {
        h "Hours, 3 decimals." 3 = |value| value.get::<time::hour>();
        min "Minutes, 2 decimals." 2 = |value| value.get::<time::minute>();
        s "Seconds, 1 decimal." 1 = |value| value.get::<time::second>();
    }
    /// An inductance per length in both systems.
    InductancePerLengthValue(PerLength) with fields InductancePerLengthFields {
        uh_per_ft "Microhenries per foot, 4 decimals." 4 = |value| value.get::<magnetic_permeability::henry_per_meter>() * 1e6 * 0.3048;
        uh_per_m "Microhenries per metre, 4 decimals." 4 = |value| value.get::<magnetic_permeability::henry_per_meter>() * 1e6;
    }
}

impl PlanLength {
    /// No length.
    pub fn zero() -> Self {
        Self(si::Length::default())
    }

    /// Without its sign.
    #[must_use]
    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }
}

#[cfg(test)]
mod tests {
    use super::round;

    #[test]
    fn a_number_too_large_for_decimals_stays_as_it_is() {
        assert_eq!((round(-6e303, 6), round(f64::MAX, 1)), (-6e303, f64::MAX));
        assert_eq!((round(0.125, 2), round(-0.001, 2).to_bits()), (0.13, 0));
    }
}
