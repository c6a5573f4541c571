//! When a sealant may be applied, and how fast it cures: closed lists, limits and reference times.
//!
//! Sheet values of the caller replace every figure here that a field of `data_sheet` names.

use uom::si::f64::{Length, MolarEnergy, TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::length::{inch, millimeter};
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::time::{day, hour, minute};

use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// What the slot and the pavement round it look like.
    SurfaceCondition {
        Dry "dry" "Dry" "No moisture to be seen or felt in the slot." [CommonPractice];
        Damp "damp" "Damp" "Dark or cool to the touch, and no free water: two-part and hot-applied sealants wait, unless the sheet allows it." [CommonPractice OwnChoice];
        Wet "wet" "Wet" "Free water in the slot: no sealant goes in." [CommonPractice];
        Frost "frost" "Frost or ice" "White frost or ice on the pavement or in the slot: no sealant goes in." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// What a sealant comes to, in this order.
    CureMilestone {
        SkinOver "skin_over" "Skin over" "A skin has formed on one-part sealant; two-part sealant has set." [CommonPractice];
        RainSafe "rain_safe" "Safe from rain" "Rain no longer spoils it: taken as the moment at which the skin is there." [OwnChoice];
        OpenToTraffic "open_to_traffic" "Open to traffic" "A cured skin of 6 mm or of half the cover, whichever is less; two-part sealant is free of tack to fully cured; hot-applied sealant is cold. On site the test is that nothing tracks." [OwnChoice CtDot1612];
        FullCure "full_cure" "Full cure" "The cured front has reached the top wire; two-part sealant has reacted through." [Comyn CtDot1612];
    }
}

sourced_vocabulary! {
    /// Whether to seal at the start that was asked for.
    CureVerdict {
        Go "go" "Go" "Nothing stands against it." [OwnChoice];
        GoWithCare "go_with_care" "Go with care" "It may be done; the reasons say what to look at first." [OwnChoice];
        Wait "wait" "Wait" "Not at this start; the forecast has hours that would do." [OwnChoice];
        DoNotApply "do_not_apply" "Do not apply" "Not at this start, and the forecast has no hour that would do." [OwnChoice];
    }
}

sourced_vocabulary! {
    /// How to treat sealant and slot in this weather.
    CureHandling {
        StoreWarm "store_warm" "Store it warm" "Keep the sealant at 10 to 29 °C (50 to 85 °F) until it is used; take out what the next hour needs." [MilHdbk1110];
        ConditionCartridges "condition_cartridges" "Condition it first" "Sealant that was stored cold needs a day in a warm room before it is used; cold sealant flows badly and traps air." [MilHdbk1110];
        DryAndWarmSlot "dry_and_warm_slot" "Dry and warm the slot" "Blow the slot out with dry, oil-free air and warm it gently until the slab itself, measured, is warm enough; a hot-air lance does both. No open flame near wire or fuel." [CommonPractice];
        CapPartUsed "cap_part_used" "Cap a part-used tube" "Close a part-used cartridge at once and keep moisture out; what has skinned in the nozzle is thrown away." [CommonPractice];
        MixSmall "mix_small" "Mix little, pour at once" "In heat mix no more than can be poured within half of the pot life: a larger batch warms itself and sets sooner still." [MilHdbk1110 OwnChoice];
        KeepShaded "keep_shaded" "Keep it in the shade" "Keep sealant and slot out of the sun, and work in the cooler hours." [MilHdbk1110];
        KettleLimit "kettle_limit" "Watch the kettle" "Pour at the temperature of the data sheet and never heat beyond its safe limit; overheated sealant burns, breaks down and damages insulation." [EverettHotMelt];
        KeepWheelsOff "keep_wheels_off" "Keep wheels off" "Keep traffic off until nothing tracks, whatever the clock says; dust with sand or cement if a wheel cannot be kept off." [EverettHotMelt CommonPractice];
    }
}

/// The lowest temperature of application: 40 °F and rising. City of Everett special provisions.
pub const MINIMUM_TEMPERATURE: &str = "40 °F";
/// The temperature that laboratory times hold at. From memory of sealant test standards.
pub const REFERENCE_TEMPERATURE: &str = "23 °C";
/// The relative humidity that laboratory times hold at, percent. From memory of sealant test standards.
pub const REFERENCE_HUMIDITY_PERCENT: f64 = 50.0;
/// One-part sealant skins over in about 3 h in mild weather. Common practice; mild is taken as 23 °C and 50 %.
pub const ONE_PART_SKIN: &str = "3 h";
/// The temperature that hot sealant is poured at where no sheet says another. City of Everett special provisions.
pub const POUR_TEMPERATURE: &str = "387 °F";
/// How long unopened sealant keeps: a year. Common practice; CT DOT asks for 12 months, too.
pub const SHELF_LIFE: &str = "365 d";
/// Days before the end of the shelf life from which a report says so. A choice made here.
pub const SHELF_LIFE_SHORT_DAYS: i64 = 30;
/// The probability of rain or snow in an hour, percent, from which it stops the work: more likely than not. A choice made here.
pub const RAIN_STOPS_PERCENT: f64 = 50.0;
/// The probability from which it asks for care. A choice made here.
pub const RAIN_CARE_PERCENT: f64 = 20.0;
/// The first and the last hour of the night by the caller's clock. A choice made here.
pub const NIGHT: (i8, i8) = (18, 6);

/// Two-part sealant sets in 10 to 15 minutes in warm weather. Common practice; warm is taken as 23 °C.
pub fn two_part_set() -> [Time; 2] {
    [Time::new::<minute>(10.0), Time::new::<minute>(15.0)]
}

/// Two-part sealant carries traffic between tack-free (25 minutes) and fully cured (60), at 77 °F. CT DOT M.16.12.
pub fn two_part_traffic() -> [Time; 2] {
    [Time::new::<minute>(25.0), two_part_full()]
}

/// Two-part sealant is fully cured within 60 minutes at 77 °F. CT DOT M.16.12.
pub fn two_part_full() -> Time {
    Time::new::<minute>(60.0)
}

/// The temperature of the two figures above: 77 °F. CT DOT M.16.12.
pub fn two_part_temperature() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_fahrenheit>(77.0)
}

/// The depth of the practice slot: 1-1/4 in. Common practice.
pub fn calibration_depth() -> Length {
    Length::new::<inch>(1.25)
}

/// One-part sealant cures through the practice slot in 3 to 7 days at 23 °C and 50 %: several days, by common practice. *Calibrated.*
pub fn calibration_times() -> [Time; 2] {
    [Time::new::<day>(3.0), Time::new::<day>(7.0)]
}

/// The cured skin that carries traffic: 6 mm. A choice made here.
pub fn traffic_skin() -> Length {
    Length::new::<millimeter>(6.0)
}

/// Hot-applied sealant is cold enough for traffic after 15 to 60 minutes. A choice made here; the test is that nothing tracks.
pub fn cooling_times() -> [Time; 2] {
    [Time::new::<minute>(15.0), Time::new::<minute>(60.0)]
}

/// The band of activation energies of urethanes: 45 to 60 kJ/mol. A choice made here, round what doubles the rate per 10 °C.
pub fn activation_energies() -> [MolarEnergy; 2] {
    [MolarEnergy::new::<kilojoule_per_mole>(45.0), MolarEnergy::new::<kilojoule_per_mole>(60.0)]
}

/// The least margin of the slab above the dew point: 3 °C. ISO 8502-4; MIL-HDBK-1110 9.6.6 asks for 5 °F, which is less.
pub fn dew_point_margin() -> TemperatureInterval {
    TemperatureInterval::new::<kelvins>(3.0)
}

/// From here down a slab is frozen.
pub fn freezing() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(0.0)
}

/// Below this, sealant is stored and handled warm: 50 °F. MIL-HDBK-1110 7.2.
pub fn cold_handling() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_fahrenheit>(50.0)
}

/// From here up, pot life is very short: 90 °F. MIL-HDBK-1110 7.3.
pub fn hot_handling() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_fahrenheit>(90.0)
}

/// The rain or melted snow of an hour that stops the work: 0.2 mm. A choice made here, about the least that a gauge shows.
pub fn rain_stops() -> Length {
    Length::new::<millimeter>(0.2)
}

/// For how long a slab remembers the cold of the air. A choice made here.
pub fn slab_memory() -> Time {
    Time::new::<hour>(12.0)
}

/// How much colder than the air a slab is taken to be at night, under an open sky. A choice made here.
pub fn night_drop() -> TemperatureInterval {
    TemperatureInterval::new::<kelvins>(2.0)
}

/// The longest time that one row of weather may stand for. A choice made here: some services give every third hour.
pub fn longest_gap() -> Time {
    Time::new::<hour>(3.0)
}

/// The longest weather that is taken.
pub fn longest_weather() -> Time {
    Time::new::<day>(14.0)
}
