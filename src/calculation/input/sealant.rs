//! The sealant: what fills the slot.

use serde::{Deserialize, Serialize};
use uom::si::f64::{ThermodynamicTemperature, Time, Velocity};
use utoipa::ToSchema;
use validator::Validate;

use super::{
    ApplicationTemperature, CartridgeVolume, CureTime, FinishDepth, FirstDayDepth, PourTemperature, ShelfLife,
};
use crate::calculation::report::{Diagnostics, FieldPath, Statement};
use crate::practice::sealants::SealantKind;
use crate::practice::sources::Source;

/// The sealant, and what its data sheet and its cartridge say.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Sealant {
    /// The family.
    pub kind: SealantKind,
    /// The volume of one cartridge, both parts together. Default 29 fl oz.
    pub cartridge: Option<CartridgeVolume>,
    /// From the pavement down to the finished top of the sealant. Default 0 in: flush.
    pub finish_below_surface: Option<FinishDepth>,
    /// What the manufacturer's data sheet gives; each value replaces a default.
    #[validate(nested)]
    pub data_sheet: Option<SealantDataSheet>,
    /// The date that it was made on, `2026-01-31`.
    #[validate(length(min = 10, max = 10))]
    #[schema(min_length = 10, max_length = 10, format = Date)]
    pub made_on: Option<String>,
    /// How long it keeps unopened. Default one year.
    pub shelf_life: Option<ShelfLife>,
}

/// The values of a sealant's data sheet.
#[derive(Clone, Debug, Default, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SealantDataSheet {
    /// Until a skin has formed, at the temperature and humidity below.
    pub skin_over: Option<CureTime>,
    /// Until traffic may return, at the temperature and humidity below.
    pub open_to_traffic: Option<CureTime>,
    /// Until it is cured through, at the temperature and humidity below.
    pub full_cure: Option<CureTime>,
    /// How deep it cures in the first day, at the temperature and humidity below.
    pub depth_per_day: Option<FirstDayDepth>,
    /// How long mixed or opened sealant can be worked, at the temperature and humidity below.
    pub pot_life: Option<CureTime>,
    /// The temperature that the times hold at. Default 23 °C.
    pub at_temperature: Option<ApplicationTemperature>,
    /// The relative humidity that the times hold at, percent. Default 50.
    #[validate(range(min = 5.0, max = 100.0))]
    #[schema(minimum = 5, maximum = 100)]
    pub at_relative_humidity_percent: Option<f64>,
    /// The lowest temperature of application. Default 40 °F and rising.
    pub minimum_application_temperature: Option<ApplicationTemperature>,
    /// The highest temperature of application.
    pub maximum_application_temperature: Option<ApplicationTemperature>,
    /// The activation energy of the cure, kJ/mol. Default a band of 45 to 60.
    #[validate(range(min = 10.0, max = 200.0))]
    #[schema(minimum = 10, maximum = 200)]
    pub activation_energy_kj_per_mol: Option<f64>,
    /// The temperature that hot-applied sealant is poured at.
    pub pour_temperature: Option<PourTemperature>,
    /// Whether the sheet allows a damp slot. Default: it does not.
    pub damp_slot_allowed: Option<bool>,
}

/// What a data sheet gives, in typed quantities; `None` where it says nothing, and after an error.
#[derive(Clone, Debug)]
pub struct SheetValues {
    /// Until a skin has formed.
    pub skin: Option<Time>,
    /// Until traffic may return.
    pub traffic: Option<Time>,
    /// Until it is cured through.
    pub full: Option<Time>,
    /// How deep it cures in the first day.
    pub depth_per_day: Option<Velocity>,
    /// How long it can be worked.
    pub pot_life: Option<Time>,
    /// The temperature that the times hold at.
    pub at_temperature: Option<ThermodynamicTemperature>,
    /// The lowest temperature of application.
    pub minimum: Option<ThermodynamicTemperature>,
    /// The highest temperature of application.
    pub maximum: Option<ThermodynamicTemperature>,
    /// The temperature of the pour, the sheet's or the usual one; `None` for sealant that is applied cold.
    pub pour: Option<ThermodynamicTemperature>,
}

impl Sealant {
    /// Reads every quantity of the data sheet of a kind of sealant, whether it is needed or not; an absent sheet gives nothing.
    ///
    /// The one default is the temperature of a hot pour, which the materials need, too.
    pub fn read_sheet(
        sealant: Option<&Self>,
        kind: SealantKind,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> SheetValues {
        let at = at.field("data_sheet");
        let absent = SealantDataSheet::default();
        let sheet = sealant.and_then(|sealant| sealant.data_sheet.as_ref()).unwrap_or(&absent);
        let mut time =
            |name: &'static str, sent: &Option<CureTime>| diagnostics.parse_optional(&at.field(name), sent.as_ref());
        let (skin, traffic) = (time("skin_over", &sheet.skin_over), time("open_to_traffic", &sheet.open_to_traffic));
        let (full, pot_life) = (time("full_cure", &sheet.full_cure), time("pot_life", &sheet.pot_life));
        let mut temperature = |name: &'static str, sent: &Option<ApplicationTemperature>| {
            diagnostics.parse_optional(&at.field(name), sent.as_ref())
        };
        let at_temperature = temperature("at_temperature", &sheet.at_temperature);
        let minimum = temperature("minimum_application_temperature", &sheet.minimum_application_temperature);
        let maximum = temperature("maximum_application_temperature", &sheet.maximum_application_temperature);
        let pour_at = at.field("pour_temperature");
        let pour = match kind.pour_temperature() {
            Some(usual) => diagnostics.parse_or_default::<PourTemperature>(
                &pour_at,
                sheet.pour_temperature.as_ref(),
                usual,
                Statement::new("input-usual-pour-temperature"),
                Source::EverettHotMelt,
            ),
            // Not needed, but still an error where it cannot be read.
            None => diagnostics.parse_optional(&pour_at, sheet.pour_temperature.as_ref()).filter(|_| false),
        };
        let depth_per_day = diagnostics.parse_optional(&at.field("depth_per_day"), sheet.depth_per_day.as_ref());
        SheetValues { skin, traffic, full, depth_per_day, pot_life, at_temperature, minimum, maximum, pour }
    }

    /// Checks what only the cure needs, and marks it as unneeded. The pour temperature of hot-applied sealant is not among it.
    pub fn check_cure_fields(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        diagnostics.parse_optional(&at.field("shelf_life"), self.shelf_life.as_ref());
        diagnostics
            .mark_unneeded(at, &[("made_on", self.made_on.is_some()), ("shelf_life", self.shelf_life.is_some())]);
        match &self.data_sheet {
            Some(sheet) if self.kind.is_poured_hot() => {
                diagnostics.mark_unneeded(&at.field("data_sheet"), &sheet.fields_except_pour_temperature());
            }
            sheet => diagnostics.mark_unneeded(at, &[("data_sheet", sheet.is_some())]),
        }
    }
}

impl SealantDataSheet {
    /// Every field but the pour temperature, and whether it was sent.
    fn fields_except_pour_temperature(&self) -> [(&'static str, bool); 11] {
        [
            ("skin_over", self.skin_over.is_some()),
            ("open_to_traffic", self.open_to_traffic.is_some()),
            ("full_cure", self.full_cure.is_some()),
            ("depth_per_day", self.depth_per_day.is_some()),
            ("pot_life", self.pot_life.is_some()),
            ("at_temperature", self.at_temperature.is_some()),
            ("at_relative_humidity_percent", self.at_relative_humidity_percent.is_some()),
            ("minimum_application_temperature", self.minimum_application_temperature.is_some()),
            ("maximum_application_temperature", self.maximum_application_temperature.is_some()),
            ("activation_energy_kj_per_mol", self.activation_energy_kj_per_mol.is_some()),
            ("damp_slot_allowed", self.damp_slot_allowed.is_some()),
        ]
    }
}
