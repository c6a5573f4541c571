//! What was understood of a request, as its report has it.

use serde::Serialize;
use uom::si::f64::{MolarEnergy, Time};
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::time::day;
use utoipa::ToSchema;

use super::candidate::{Hardening, SealantCandidate};
use super::data_sheet::parse_usual;
use super::request::ResolvedCureGuidance;
use crate::calculation::input::ResolvedSlot;
use crate::practice::sealants::{CureMechanism, SealantKind};
use crate::practice::sealing::{CureMilestone, SurfaceCondition, dew_point_margin};
use crate::quantity::dimension;
use crate::quantity::output::{DepthPerDayValue, DurationValue, TemperatureDifferenceValue, TemperatureValue, round};

/// What was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureGuidanceInputs {
    /// The sealant.
    pub sealant: CureSealantEcho,
    /// The slot.
    pub slot: ResolvedSlot,
    /// What the insulation of the wire stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub insulation_rating: Option<TemperatureValue>,
    /// The start.
    #[schema(format = DateTime)]
    pub start: String,
    /// How far the slab must lie above the dew point.
    pub least_dew_point_margin: TemperatureDifferenceValue,
    /// How long the sealing takes.
    pub work_duration: DurationValue,
    /// What the slot looks like at the start.
    #[schema(value_type = String)]
    pub surface_condition: SurfaceCondition,
    /// When traffic must be let back.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(format = DateTime)]
    pub needed_open_by: Option<String>,
    /// The beginning of the weather, on the clock of the start.
    #[schema(format = DateTime)]
    pub weather_from: String,
    /// Its end.
    #[schema(format = DateTime)]
    pub weather_until: String,
}

/// A sealant as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureSealantEcho {
    /// The kind.
    #[schema(value_type = String)]
    pub kind: SealantKind,
    /// The lowest temperature of application.
    pub minimum_application_temperature: TemperatureValue,
    /// The highest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub maximum_application_temperature: Option<TemperatureValue>,
    /// What the data sheet gives, and the usual skin-over time where it gives none. Absent for `hot_applied`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub data_sheet: Option<CureSheetEcho>,
    /// What each milestone takes at 23 °C and 50 % (hot-applied: in any weather), by the sheet or as usual.
    pub reference_times: Vec<CureReferenceTime>,
    /// How deep one-part sealant cures in its first day of that climate, at least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_per_day_low: Option<DepthPerDayValue>,
    /// At most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_per_day_high: Option<DepthPerDayValue>,
    /// The least activation energy, kJ/mol; for one part the earliest times hold without any. 1 decimal.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub activation_energy_low_kj_per_mol: Option<f64>,
    /// The greatest, 1 decimal.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub activation_energy_high_kj_per_mol: Option<f64>,
    /// The temperature of the pour; hot-applied only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pour_temperature: Option<TemperatureValue>,
}

/// The times of a data sheet, and the climate that they hold in.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureSheetEcho {
    /// Until a skin has formed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub skin_over: Option<DurationValue>,
    /// Until traffic may return.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open_to_traffic: Option<DurationValue>,
    /// Until it is cured through.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub full_cure: Option<DurationValue>,
    /// How deep one-part sealant cures in the first day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_per_day: Option<DepthPerDayValue>,
    /// How long it can be worked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pot_life: Option<DurationValue>,
    /// The temperature that these hold at.
    pub at_temperature: TemperatureValue,
    /// The relative humidity that these hold at, percent, 1 decimal; one-part sealant only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_relative_humidity_percent: Option<f64>,
}

/// What a milestone takes in the reference climate.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CureReferenceTime {
    /// The milestone.
    #[schema(value_type = String)]
    pub milestone: CureMilestone,
    /// At least.
    pub least: DurationValue,
    /// At most.
    pub most: DurationValue,
}

/// The request as it was resolved.
pub fn echo(job: &ResolvedCureGuidance) -> CureGuidanceInputs {
    let weather = &job.weather;
    CureGuidanceInputs {
        sealant: echo_sealant(&job.candidate),
        slot: job.slot.clone(),
        insulation_rating: job.rating.map(Into::into),
        start: weather.date_time(weather.start).format_rfc_3339(),
        least_dew_point_margin: dew_point_margin().into(),
        work_duration: job.work.duration.into(),
        surface_condition: job.condition.at_start(weather),
        needed_open_by: job.needed.map(|needed| needed.format_rfc_3339()),
        weather_from: weather.begin.format_rfc_3339(),
        weather_until: weather.date_time(weather.end()).format_rfc_3339(),
    }
}

fn echo_sealant(candidate: &SealantCandidate) -> CureSealantEcho {
    let sheet = &candidate.sheet;
    let energy = |energy: MolarEnergy| round(energy.get::<kilojoule_per_mole>(), 1);
    let energies = match &candidate.hardening {
        Hardening::Cures(model) => Some(model.energies),
        Hardening::Cools(_) => None,
    };
    // The earliest times of a front go by no activation energy.
    let has_low_energy = match candidate.kind.cure_mechanism() {
        CureMechanism::Reaction(_) => true,
        CureMechanism::MoistureFront(_) | CureMechanism::Cooling(_) => false,
    };
    let reference = |(milestone, [least, most]): (CureMilestone, [Time; 2])| CureReferenceTime {
        milestone,
        least: least.into(),
        most: most.into(),
    };
    let a_day = Time::new::<day>(1.0);
    let first_day = candidate.first_day_depth().map(|depths| depths.map(|depth| DepthPerDayValue::from(depth / a_day)));
    CureSealantEcho {
        kind: candidate.kind,
        minimum_application_temperature: sheet.minimum.into(),
        maximum_application_temperature: sheet.maximum.map(Into::into),
        data_sheet: echo_data_sheet(candidate),
        reference_times: candidate.reference_times().into_iter().map(reference).collect(),
        depth_per_day_low: first_day.map(|[low, _]| low),
        depth_per_day_high: first_day.map(|[_, high]| high),
        activation_energy_low_kj_per_mol: energies.filter(|_| has_low_energy).map(|[low, _]| energy(low)),
        activation_energy_high_kj_per_mol: energies.map(|[_, high]| energy(high)),
        pour_temperature: sheet.pour.map(Into::into),
    }
}

/// The times of the data sheet; `None` for what only cools.
fn echo_data_sheet(candidate: &SealantCandidate) -> Option<CureSheetEcho> {
    let sheet = &candidate.sheet;
    let skin_over = sheet.skin.map(DurationValue::from);
    let echo = CureSheetEcho {
        skin_over,
        open_to_traffic: sheet.traffic.map(Into::into),
        full_cure: sheet.full.map(Into::into),
        depth_per_day: None,
        pot_life: sheet.pot_life.map(Into::into),
        at_temperature: sheet.at_temperature.into(),
        at_relative_humidity_percent: None,
    };
    match candidate.kind.cure_mechanism() {
        CureMechanism::MoistureFront(figures) => Some(CureSheetEcho {
            skin_over: skin_over
                .or_else(|| Some(parse_usual::<dimension::Time>(figures.skin_over, Time::default()).into())),
            depth_per_day: sheet.depth_per_day.map(Into::into),
            at_relative_humidity_percent: Some(round(sheet.at_humidity_percent, 1)),
            ..echo
        }),
        CureMechanism::Reaction(_) => Some(echo),
        CureMechanism::Cooling(_) => None,
    }
}
