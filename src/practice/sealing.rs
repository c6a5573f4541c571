//! When a sealant may be applied, and what it comes to: closed lists, and the limits of the weather.
//!
//! The figures of each kind of sealant stand beside their list, in [`super::sealants`].

use uom::si::f64::{Length, TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::temperature_interval::kelvin as kelvins;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::time::{day, hour, minute};

use super::sealants::{CureMechanism, SealantKind};
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

impl SurfaceCondition {
    /// The state that is supposed where nobody names one. A choice made here; a report then asks to look.
    pub const DEFAULT: Self = Self::Dry;

    /// Whether the slot can be sealed as it is.
    pub fn is_dry(self) -> bool {
        match self {
            Self::Dry => true,
            Self::Damp | Self::Wet | Self::Frost => false,
        }
    }

    /// Whether only the data sheet of this kind of sealant can allow it into such a slot.
    pub fn needs_sheet_approval(self, kind: SealantKind) -> bool {
        match self {
            Self::Damp => !kind.tolerates_damp(),
            // No sheet changes what these mean.
            Self::Dry | Self::Wet | Self::Frost => false,
        }
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

impl CureMilestone {
    /// Whether sealant that cures from the surface down reaches it by the depth of its front, not by its skin.
    pub fn is_by_depth(self) -> bool {
        match self {
            Self::SkinOver | Self::RainSafe => false,
            Self::OpenToTraffic | Self::FullCure => true,
        }
    }

    /// Whether sealant that only cools comes to it.
    pub fn is_by_cooling(self) -> bool {
        match self {
            Self::OpenToTraffic => true,
            Self::SkinOver | Self::RainSafe | Self::FullCure => false,
        }
    }

    /// Whether a report shows its time in the reference climate. Safe from rain is the moment of the skin, already shown.
    pub fn has_reference_time(self) -> bool {
        match self {
            Self::SkinOver | Self::OpenToTraffic | Self::FullCure => true,
            Self::RainSafe => false,
        }
    }
}

sourced_vocabulary! {
    /// Whether to seal at the start that was asked for.
    CureVerdict {
        Go "go" "Go" "Nothing stands against it." [OwnChoice];
        GoWithCare "go_with_care" "Go with care" "It may be done; the reasons say what to look at first." [OwnChoice];
        Wait "wait" "Wait" "Not at this start; the forecast has hours that would do, where the slot is not dry once it has been dried." [OwnChoice];
        DoNotApply "do_not_apply" "Do not apply" "Not at this start, and the forecast has no hour that would do." [OwnChoice];
    }
}

impl CureVerdict {
    /// Whether the work may begin at the start that was asked for.
    pub fn allows_start(self) -> bool {
        match self {
            Self::Go | Self::GoWithCare => true,
            Self::Wait | Self::DoNotApply => false,
        }
    }
}

sourced_vocabulary! {
    /// How to treat sealant and slot in this weather.
    CureHandling {
        StoreWarm "store_warm" "Store it warm" "Keep the sealant at 10 to 29 °C (50 to 85 °F) until it is used; take out what the next hour needs." [MilHdbk1110];
        ConditionCartridges "condition_cartridges" "Condition it first" "Sealant that was stored cold needs a day in a warm room before it is used; cold sealant flows badly and traps air." [MilHdbk1110];
        DryAndWarmSlot "dry_and_warm_slot" "Dry and warm the slot" "Blow the slot out with dry, oil-free air and warm it gently until the slab itself, measured, is warm enough; a hot-air lance does both. No open flame near wire or fuel." [CommonPractice];
        CheckByTouch "check_by_touch" "Check by touch" "Just before the sealant goes in, press a dry paper towel to the bottom of the slot: wet sawing and rain leave water where no eye sees it. Blow out and warm what marks the towel." [CommonPractice];
        CapPartUsed "cap_part_used" "Cap a part-used tube" "Close a part-used cartridge at once and keep moisture out; what has skinned in the nozzle is thrown away." [CommonPractice];
        MixSmall "mix_small" "Mix little, pour at once" "In heat mix no more than can be poured within half of the pot life: a larger batch warms itself and sets sooner still." [MilHdbk1110 OwnChoice];
        KeepShaded "keep_shaded" "Keep it in the shade" "Keep sealant and slot out of the sun, and work in the cooler hours." [MilHdbk1110];
        KettleLimit "kettle_limit" "Watch the kettle" "Pour at the temperature of the data sheet and never heat beyond its safe limit; overheated sealant burns, breaks down and damages insulation." [EverettHotMelt];
        KeepWheelsOff "keep_wheels_off" "Keep wheels off" "Keep traffic off until nothing tracks, whatever the clock says; dust with sand or cement if a wheel cannot be kept off." [EverettHotMelt CommonPractice];
    }
}

impl CureHandling {
    /// Whether the advice fits a kind of sealant, in a slot that is dry or not, in weather that is cold or hot for handling.
    pub fn fits(self, kind: SealantKind, is_dry: bool, is_cold: bool, is_hot: bool) -> bool {
        match self {
            Self::StoreWarm | Self::ConditionCartridges => is_cold && !kind.is_poured_hot(),
            Self::DryAndWarmSlot => is_cold || !is_dry,
            Self::CapPartUsed => match kind.cure_mechanism() {
                CureMechanism::MoistureFront(_) => true,
                CureMechanism::Reaction(_) | CureMechanism::Cooling(_) => false,
            },
            Self::MixSmall => is_hot && kind.is_mixed_on_site(),
            Self::KeepShaded => is_hot && !kind.is_poured_hot(),
            Self::KettleLimit => kind.is_poured_hot(),
            Self::CheckByTouch | Self::KeepWheelsOff => true,
        }
    }
}

/// The temperature that laboratory times hold at. From memory of sealant test standards.
pub const REFERENCE_TEMPERATURE: &str = "23 °C";
/// The relative humidity that laboratory times hold at, percent. From memory of sealant test standards.
pub const REFERENCE_HUMIDITY_PERCENT: f64 = 50.0;
/// Days before the end of the shelf life from which a report says so. A choice made here.
pub const SHELF_LIFE_SHORT_DAYS: i64 = 30;
/// The probability of rain or snow in an hour, percent, from which it stops the work: more likely than not. A choice made here.
pub const RAIN_STOPS_PERCENT: f64 = 50.0;
/// The probability from which it asks for care. A choice made here.
pub const RAIN_CARE_PERCENT: f64 = 20.0;
/// The air above which water dries from a slot at all, that above which it dries fast, and the relative humidity below which, percent. A
/// choice made here.
pub const DRYING: (f64, f64, f64) = (5.0, 10.0, 85.0);
/// The hour at which night falls and the hour at which day breaks, on the clock of the caller. A choice made here.
pub const NIGHT: (i8, i8) = (18, 6);

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

/// The rain or melted snow of an hour that spoils sealant before its skin: 0.2 mm. A choice made here, about the least that a gauge shows.
pub fn rain_stops() -> Length {
    Length::new::<millimeter>(0.2)
}

/// How long the sealing of a job is taken to last where neither the request nor an estimate says so. A choice made here.
pub const WORK_DURATION: &str = "60 min";

/// The longest work that is taken.
pub fn longest_work() -> Time {
    Time::new::<hour>(48.0)
}

/// How long it takes to empty a cartridge, about 20 ft of slot at the usual pace of sealing. A choice made here.
pub fn cartridge_time() -> Time {
    Time::new::<minute>(4.0)
}

/// How much of the sawing is taken to be on the day of the sealing: the hours of one shift before it. A choice made here.
pub fn shift() -> Time {
    Time::new::<hour>(8.0)
}

/// The shortest window of starts that is told, for a crew does not begin to the minute. A choice made here.
pub fn least_window() -> Time {
    Time::new::<minute>(15.0)
}

/// For how long a measured slab tells of the next hours: as long as one row may stand for. A choice made here.
pub fn measured_memory() -> Time {
    longest_gap()
}

/// For how long rain may leave a slot wet that nobody has looked at. A choice made here.
pub fn wet_memory() -> Time {
    Time::new::<hour>(24.0)
}

/// How long after the sealant is surely safe likely rain still asks for care. A choice made here.
pub fn rain_margin() -> Time {
    Time::new::<hour>(1.0)
}

/// For how long rain that has fallen asks for care in a slot that is called dry. A choice made here.
pub fn rain_memory() -> Time {
    Time::new::<hour>(6.0)
}

/// For how long rain or snow that has fallen makes frost of a frozen slab. A choice made here.
pub fn frost_memory() -> Time {
    Time::new::<hour>(24.0)
}

/// A slab below this that nobody measured stops the work where too few hours before are known: 10 °C. A choice made here.
pub fn warm_without_measuring() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(10.0)
}

/// The share of a slot's drying that an hour of weather does: all of it in 2 h above 10 °C, in 4 h above 5 °C, none of it in air as
/// damp as 85 % or more. A choice made here.
pub fn drying_per_hour(air: ThermodynamicTemperature, humidity_percent: f64) -> f64 {
    let (cold, mild, damp) = DRYING;
    match air.get::<degree_celsius>() {
        _ if humidity_percent >= damp => 0.0,
        celsius if celsius > mild => 1.0 / 2.0,
        celsius if celsius > cold => 1.0 / 4.0,
        _ => 0.0,
    }
}

/// For how long a slab stays as cold as the air was. A choice made here.
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

/// How far below the highest temperature of application the lowest is taken, where only the highest was sent and lies below the usual lowest:
/// 20 °C. A choice made here.
pub fn least_application_range() -> TemperatureInterval {
    TemperatureInterval::new::<kelvins>(20.0)
}
