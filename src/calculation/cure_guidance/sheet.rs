//! The sealant as its data sheet and its cartridge have it.

use jiff::civil::Date;
use uom::si::f64::{MolarEnergy, ThermodynamicTemperature, Time, Velocity};
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::day;

use super::moment::{Moment, read_date};
use crate::calculation::input::{
    ApplicationTemperature, CureTime, PourTemperature, Sealant, SealantDataSheet, ShelfLife,
};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::practice::cure::{
    MINIMUM_TEMPERATURE, ONE_PART_SKIN, POUR_TEMPERATURE, REFERENCE_HUMIDITY_PERCENT, REFERENCE_TEMPERATURE,
    SHELF_LIFE, SurfaceCondition, activation_energies,
};
use crate::practice::sealants::SealantKind;
use crate::practice::sources::Source;
use crate::quantity::dimension::{self, Dimension};
use crate::quantity::parse;

/// What the data sheet gives, in typed quantities; `None` where it says nothing.
#[derive(Clone, Debug)]
pub struct Sheet {
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
    /// The temperature that these hold at.
    pub at_temperature: ThermodynamicTemperature,
    /// The relative humidity that these hold at, percent.
    pub at_humidity_percent: f64,
    /// The lowest temperature of application.
    pub minimum: Option<ThermodynamicTemperature>,
    /// The highest temperature of application.
    pub maximum: Option<ThermodynamicTemperature>,
    /// The activation energy.
    pub energy: Option<MolarEnergy>,
    /// The temperature of the pour.
    pub pour: ThermodynamicTemperature,
    /// Whether a damp slot is allowed.
    pub damp_allowed: bool,
}

/// How long the sealant still keeps at the start.
#[derive(Clone, Copy, Debug)]
pub struct Shelf {
    /// The last day on which it keeps.
    pub until: Date,
    /// Whole days from the start until then; negative when it is past.
    pub days_left: i64,
}

/// A text of ours as a quantity; a default that cannot be read is ruled out by a test.
fn usual<D: Dimension>(text: &str, otherwise: D::Si) -> D::Si {
    parse::<D>(text).map_or(otherwise, |written| written.si)
}

impl Default for Sheet {
    fn default() -> Self {
        let zero = ThermodynamicTemperature::new::<degree_celsius>(0.0);
        Self {
            skin: None,
            traffic: None,
            full: None,
            depth_per_day: None,
            pot_life: None,
            at_temperature: usual::<dimension::Temperature>(REFERENCE_TEMPERATURE, zero),
            at_humidity_percent: REFERENCE_HUMIDITY_PERCENT,
            minimum: None,
            maximum: None,
            energy: None,
            pour: usual::<dimension::Temperature>(POUR_TEMPERATURE, zero),
            damp_allowed: false,
        }
    }
}

impl Sheet {
    /// The lowest temperature of application, the sheet's or the usual one.
    pub fn least_temperature(&self) -> ThermodynamicTemperature {
        let freezing = ThermodynamicTemperature::new::<degree_celsius>(0.0);
        self.minimum.unwrap_or_else(|| usual::<dimension::Temperature>(MINIMUM_TEMPERATURE, freezing))
    }
}

/// When one-part sealant skins over where its sheet says nothing.
pub fn usual_skin() -> Time {
    usual::<dimension::Time>(ONE_PART_SKIN, Time::default())
}

impl Sealant {
    /// Reads the data sheet, whatever of it this kind of sealant needs.
    pub(super) fn read_sheet(
        &self,
        condition: Option<SurfaceCondition>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Sheet> {
        diagnostics.parse_optional(&at.field("cartridge"), self.cartridge.as_ref());
        diagnostics.parse_optional(&at.field("finish_below_surface"), self.finish_below_surface.as_ref());
        diagnostics.mark_unneeded(
            at,
            &[("cartridge", self.cartridge.is_some()), ("finish_below_surface", self.finish_below_surface.is_some())],
        );
        let at = at.field("data_sheet");
        let absent = SealantDataSheet::default();
        let sent = self.data_sheet.as_ref().unwrap_or(&absent);
        let mut time =
            |name: &'static str, text: &Option<CureTime>| diagnostics.parse_optional(&at.field(name), text.as_ref());
        let (skin, traffic) = (time("skin_over", &sent.skin_over), time("open_to_traffic", &sent.open_to_traffic));
        let (full, pot_life) = (time("full_cure", &sent.full_cure), time("pot_life", &sent.pot_life));
        let depth_per_day = diagnostics.parse_optional(&at.field("depth_per_day"), sent.depth_per_day.as_ref());
        let maximum = diagnostics.parse_optional(
            &at.field("maximum_application_temperature"),
            sent.maximum_application_temperature.as_ref(),
        );
        let minimum = diagnostics.parse_or_default::<ApplicationTemperature>(
            &at.field("minimum_application_temperature"),
            sent.minimum_application_temperature.as_ref(),
            MINIMUM_TEMPERATURE,
            "40 °F and rising, for every kind of sealant; the data sheet governs.",
            Source::Everett,
        );
        let pour = diagnostics.parse_or_default::<PourTemperature>(
            &at.field("pour_temperature"),
            sent.pour_temperature.as_ref(),
            POUR_TEMPERATURE,
            "What one agency's hot-applied sealant is poured at.",
            Source::EverettHotMelt,
        );
        let at_temperature = diagnostics.parse_or_default::<ApplicationTemperature>(
            &at.field("at_temperature"),
            sent.at_temperature.as_ref(),
            REFERENCE_TEMPERATURE,
            "The laboratory climate that data sheets refer to.",
            Source::FromMemory,
        );
        let at_humidity_percent = diagnostics.value_or_default(
            &at.field("at_relative_humidity_percent"),
            sent.at_relative_humidity_percent,
            (REFERENCE_HUMIDITY_PERCENT, "50"),
            "The laboratory climate that data sheets refer to.",
            Source::FromMemory,
        );
        if self.kind == SealantKind::OnePartMoistureCure {
            if sent.skin_over.is_none() {
                let reason = "About what one-part sealant takes in mild weather.";
                diagnostics.add_assumption(&at.field("skin_over"), ONE_PART_SKIN, reason, &[Source::CommonPractice]);
            }
            let [_, high] = activation_energies();
            let energy = (high, "60");
            let given = sent.activation_energy_kj_per_mol.map(MolarEnergy::new::<kilojoule_per_mole>);
            let reason =
                "The latest times hold with it, the earliest without: cold slows the cure more than dry air alone.";
            diagnostics.value_or_default(
                &at.field("activation_energy_kj_per_mol"),
                given,
                energy,
                reason,
                Source::Arrhenius,
            );
        }
        if condition == Some(SurfaceCondition::Damp) && self.kind != SealantKind::OnePartMoistureCure {
            let reason = "A damp slot only where the sheet allows it.";
            let no = (false, "false");
            diagnostics.value_or_default(
                &at.field("damp_slot_allowed"),
                sent.damp_slot_allowed,
                no,
                reason,
                Source::OwnChoice,
            );
        }
        check_order(skin, traffic, full, &at, diagnostics);
        if maximum.zip(minimum).is_some_and(|(maximum, minimum)| maximum <= minimum) {
            diagnostics.add_error(
                &at.field("maximum_application_temperature"),
                FieldErrorCode::Contradiction,
                "The highest temperature of application is no higher than the lowest.",
                "Send a higher maximum_application_temperature, or a lower minimum_application_temperature.",
            );
        }
        sent.note_unneeded(self.kind, condition, &at, diagnostics);
        Some(Sheet {
            skin,
            traffic,
            full,
            depth_per_day,
            pot_life,
            at_temperature: at_temperature?,
            at_humidity_percent: at_humidity_percent.clamp(5.0, 100.0),
            minimum: minimum.filter(|_| sent.minimum_application_temperature.is_some()),
            maximum,
            energy: sent
                .activation_energy_kj_per_mol
                .map(|energy| MolarEnergy::new::<kilojoule_per_mole>(energy.clamp(10.0, 200.0))),
            pour: pour?,
            damp_allowed: sent.damp_slot_allowed.unwrap_or(false),
        })
    }

    /// How long it still keeps, where its date is known.
    pub(super) fn read_shelf(
        &self,
        start: Option<Moment>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Shelf> {
        let place = at.field("shelf_life");
        let Some(text) = &self.made_on else {
            diagnostics.parse_optional(&place, self.shelf_life.as_ref());
            diagnostics.mark_unneeded(at, &[("shelf_life", self.shelf_life.is_some())]);
            return None;
        };
        let made = read_date(text, &at.field("made_on"), diagnostics);
        let reason = "One year from the date of manufacture.";
        let life = diagnostics.parse_or_default::<ShelfLife>(
            &place,
            self.shelf_life.as_ref(),
            SHELF_LIFE,
            reason,
            Source::CommonPractice,
        );
        let (made, start) = (made?, start?);
        if made > start.date() {
            diagnostics.add_error(
                &at.field("made_on"),
                FieldErrorCode::Contradiction,
                "The sealant is made after the start.",
                "Send the date of manufacture, or a later start.",
            );
            return None;
        }
        let until = made.checked_add(jiff::Span::new().days(life?.get::<day>() as i64)).ok()?;
        let days_left = start.date().until(until).map_or(0, |span| i64::from(span.get_days()));
        Some(Shelf { until, days_left })
    }
}

/// A skin comes first, then traffic, then the full cure.
fn check_order(
    skin: Option<Time>,
    traffic: Option<Time>,
    full: Option<Time>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) {
    let pairs = [
        ("open_to_traffic", "skin_over", traffic, skin),
        ("full_cure", "open_to_traffic", full, traffic),
        ("full_cure", "skin_over", full, skin),
    ];
    let mut named = Vec::new();
    for (later, earlier, late, early) in pairs {
        let is_wrong = late.zip(early).is_some_and(|(late, early)| late < early);
        if !is_wrong || named.contains(&later) {
            continue;
        }
        named.push(later);
        diagnostics.add_error(
            &at.field(later),
            FieldErrorCode::Contradiction,
            format!("{later} is shorter than {earlier}."),
            "Send skin_over, open_to_traffic and full_cure each at least as long as the one before.",
        );
    }
}

impl SealantDataSheet {
    /// Names the values that this kind has no use for, and takes back what was assumed for them.
    fn note_unneeded(
        &self,
        kind: SealantKind,
        condition: Option<SurfaceCondition>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) {
        let has_times =
            [&self.skin_over, &self.open_to_traffic, &self.full_cure, &self.pot_life].iter().any(|time| time.is_some());
        let climate = ("at_temperature", self.at_temperature.is_some());
        let humidity = ("at_relative_humidity_percent", self.at_relative_humidity_percent.is_some());
        let depth = ("depth_per_day", self.depth_per_day.is_some());
        let damp = ("damp_slot_allowed", self.damp_slot_allowed.is_some());
        let pour = ("pour_temperature", self.pour_temperature.is_some());
        if condition != Some(SurfaceCondition::Damp) || kind == SealantKind::OnePartMoistureCure {
            diagnostics.mark_unneeded(at, &[damp]);
        }
        match kind {
            SealantKind::OnePartMoistureCure => {
                diagnostics.mark_unneeded(at, &[pour]);
                // A climate that was sent without a value to hold for is not needed.
                let idle = [climate, humidity].into_iter().filter(|(_, sent)| *sent && !has_times && !depth.1);
                diagnostics.mark_unneeded(at, &idle.collect::<Vec<_>>());
            }
            SealantKind::TwoPartReactive => {
                diagnostics.mark_unneeded(at, &[depth, pour, humidity]);
                let idle = Some(climate).filter(|(_, sent)| *sent && !has_times);
                diagnostics.mark_unneeded(at, idle.as_slice());
            }
            SealantKind::HotApplied => diagnostics.mark_unneeded(
                at,
                &[
                    climate,
                    humidity,
                    depth,
                    ("skin_over", self.skin_over.is_some()),
                    ("full_cure", self.full_cure.is_some()),
                    ("pot_life", self.pot_life.is_some()),
                    ("activation_energy_kj_per_mol", self.activation_energy_kj_per_mol.is_some()),
                ],
            ),
        }
    }
}
