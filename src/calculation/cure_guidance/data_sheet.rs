//! The sealant as its data sheet and its cartridge have it.

use jiff::civil::Date;
use uom::si::f64::{MolarEnergy, ThermodynamicTemperature, Time, Velocity};
use uom::si::molar_energy::kilojoule_per_mole;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::day;

use super::offset_date_time::{OffsetDateTime, resolve_date};
use crate::calculation::input::{Sealant, SealantDataSheet, SheetValues, ShelfLife};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::sealants::{CureMechanism, SHELF_LIFE, SealantKind};
use crate::practice::sealing::{
    REFERENCE_HUMIDITY_PERCENT, REFERENCE_TEMPERATURE, SurfaceCondition, least_application_range,
};
use crate::practice::sources::Source;
use crate::quantity::dimension::{self, Dimension};
use crate::quantity::format::format_temperature_input;
use crate::quantity::output::round;
use crate::quantity::{QuantityField, UnitSystem, parse};

/// What the data sheet gives, in typed quantities; `None` where it says nothing.
#[derive(Clone, Debug)]
pub struct DataSheet {
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
    pub minimum: ThermodynamicTemperature,
    /// The highest temperature of application.
    pub maximum: Option<ThermodynamicTemperature>,
    /// The activation energy.
    pub energy: Option<MolarEnergy>,
    /// The temperature of the pour, the sheet's or the usual one; `None` for sealant that is applied cold.
    pub pour: Option<ThermodynamicTemperature>,
    /// Whether a damp slot is allowed.
    pub damp_allowed: bool,
}

/// How long the sealant still keeps at the start.
#[derive(Clone, Copy, Debug)]
pub struct RemainingShelfLife {
    /// The last day on which it keeps.
    pub until: Date,
    /// Whole days from the start until then; negative when it is past.
    pub days_left: i64,
}

/// A usual figure of ours, written as text, in typed quantities. `fallback` is never used: a test reads every such text.
pub fn parse_usual<D: Dimension>(text: &str, fallback: D::Si) -> D::Si {
    parse::<D>(text).map_or(fallback, |parsed| parsed.si)
}

fn parse_usual_temperature(text: &str) -> ThermodynamicTemperature {
    parse_usual::<dimension::Temperature>(text, ThermodynamicTemperature::new::<degree_celsius>(0.0))
}

/// The temperature of the reference climate.
pub fn reference_temperature() -> ThermodynamicTemperature {
    parse_usual_temperature(REFERENCE_TEMPERATURE)
}

impl DataSheet {
    /// A sheet that says nothing: the usual values of a kind.
    pub fn usual(kind: SealantKind) -> Self {
        Self {
            skin: None,
            traffic: None,
            full: None,
            depth_per_day: None,
            pot_life: None,
            at_temperature: reference_temperature(),
            at_humidity_percent: REFERENCE_HUMIDITY_PERCENT,
            minimum: parse_usual_temperature(kind.minimum_temperature()),
            maximum: None,
            energy: None,
            pour: kind.pour_temperature().map(parse_usual_temperature),
            damp_allowed: false,
        }
    }

    /// Resolves the data sheet of a sealant; values that its kind does not need are marked as such.
    pub fn resolve(
        sealant: &Sealant,
        condition: Option<SurfaceCondition>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Self> {
        let kind = sealant.kind;
        diagnostics.parse_optional(&at.field("cartridge"), sealant.cartridge.as_ref());
        diagnostics.parse_optional(&at.field("finish_below_surface"), sealant.finish_below_surface.as_ref());
        diagnostics.mark_unneeded(
            at,
            &[
                ("cartridge", sealant.cartridge.is_some()),
                ("finish_below_surface", sealant.finish_below_surface.is_some()),
            ],
        );
        let SheetValues { skin, traffic, full, depth_per_day, pot_life, at_temperature, minimum, maximum, pour } =
            Sealant::read_sheet(Some(sealant), kind, at, diagnostics);
        let at = at.field("data_sheet");
        let absent = SealantDataSheet::default();
        let sent = sealant.data_sheet.as_ref().unwrap_or(&absent);
        let minimum = match &sent.minimum_application_temperature {
            Some(_) => minimum,
            None => Some(usual_minimum(kind, maximum, sent, &at, diagnostics)),
        };
        let at_temperature = at_temperature.or_else(|| {
            let reason = Statement::new("cure-reference-climate");
            diagnostics.add_assumption(
                &at.field("at_temperature"),
                REFERENCE_TEMPERATURE,
                reason,
                &[Source::FromMemory],
            );
            Some(reference_temperature())
        });
        let at_humidity_percent = diagnostics.value_or_default(
            &at.field("at_relative_humidity_percent"),
            sent.at_relative_humidity_percent,
            (REFERENCE_HUMIDITY_PERCENT, "50"),
            Statement::new("cure-reference-climate"),
            Source::FromMemory,
        );
        if let CureMechanism::MoistureFront(figures) = kind.cure_mechanism() {
            if sent.skin_over.is_none() {
                let reason = Statement::new("cure-usual-skin-over");
                let sources = &[Source::CommonPractice];
                diagnostics.add_assumption(&at.field("skin_over"), figures.skin_over, reason, sources);
            }
            if sent.activation_energy_kj_per_mol.is_none() {
                let [_, high] = figures.activation_energies;
                let high = round(high.get::<kilojoule_per_mole>(), 1).to_string();
                let reason = Statement::new("cure-usual-activation-energy");
                let at = at.field("activation_energy_kj_per_mol");
                diagnostics.add_assumption(&at, high, reason, &[Source::Arrhenius]);
            }
        }
        let needs_approval = condition.is_some_and(|condition| condition.needs_sheet_approval(kind));
        if needs_approval {
            let reason = Statement::new("cure-damp-slot-not-allowed");
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
                Statement::new("errors-application-temperatures"),
                Statement::new("errors-application-temperatures-hint"),
            );
        }
        mark_unneeded_fields(sent, kind, needs_approval, &at, diagnostics);
        Some(Self {
            skin,
            traffic,
            full,
            depth_per_day,
            pot_life,
            at_temperature: at_temperature?,
            at_humidity_percent: at_humidity_percent.clamp(5.0, 100.0),
            minimum: minimum?,
            maximum,
            energy: sent
                .activation_energy_kj_per_mol
                .map(|energy| MolarEnergy::new::<kilojoule_per_mole>(energy.clamp(10.0, 200.0))),
            pour,
            damp_allowed: sent.damp_slot_allowed.unwrap_or(false),
        })
    }
}

impl RemainingShelfLife {
    /// How long a sealant still keeps; `None` where its date of manufacture is not known, or after an error.
    pub fn resolve(
        sealant: &Sealant,
        start: Option<OffsetDateTime>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Self> {
        let shelf_life_at = at.field("shelf_life");
        let Some(text) = &sealant.made_on else {
            diagnostics.parse_optional(&shelf_life_at, sealant.shelf_life.as_ref());
            diagnostics.mark_unneeded(at, &[("shelf_life", sealant.shelf_life.is_some())]);
            return None;
        };
        let made = resolve_date(text, &at.field("made_on"), diagnostics);
        let reason = Statement::new("cure-usual-shelf-life");
        let life = diagnostics.parse_or_default::<ShelfLife>(
            &shelf_life_at,
            sealant.shelf_life.as_ref(),
            SHELF_LIFE,
            reason,
            Source::CommonPractice,
        );
        let (made, start) = (made?, start?);
        if made > start.date() {
            diagnostics.add_error(
                &at.field("made_on"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-made-after-start"),
                Statement::new("errors-made-after-start-hint"),
            );
            return None;
        }
        let until = made.checked_add(jiff::Span::new().days(life?.get::<day>() as i64)).ok()?;
        let days_left = start.date().until(until).map_or(0, |span| i64::from(span.get_days()));
        Some(Self { until, days_left })
    }
}

/// The usual lowest temperature of application, or what gives way to the highest of the sheet.
fn usual_minimum(
    kind: SealantKind,
    maximum: Option<ThermodynamicTemperature>,
    sent: &SealantDataSheet,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> ThermodynamicTemperature {
    let at = at.field("minimum_application_temperature");
    let usual = parse_usual_temperature(kind.minimum_temperature());
    let Some(maximum) = maximum.filter(|maximum| *maximum <= usual) else {
        let reason = Statement::new("cure-usual-minimum-temperature");
        diagnostics.add_assumption(&at, kind.minimum_temperature(), reason, &[Source::Everett]);
        return usual;
    };
    let lower = maximum - least_application_range();
    let sent = sent.maximum_application_temperature.as_ref().and_then(|sent| sent.read().ok());
    let system = sent.map_or(UnitSystem::Metric, |sent| sent.system);
    let (value, reason) = (format_temperature_input(lower, system), Statement::new("cure-minimum-gives-way"));
    diagnostics.add_assumption(&at, value, reason, &[Source::OwnChoice]);
    lower
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
            Statement::new("errors-cure-times-order").text("later", later).text("earlier", earlier),
            Statement::new("errors-cure-times-order-hint"),
        );
    }
}

/// Marks the values that this kind does not need as unused, and takes back what was assumed for those that were not sent.
fn mark_unneeded_fields(
    sent: &SealantDataSheet,
    kind: SealantKind,
    needs_approval: bool,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) {
    let has_times =
        [&sent.skin_over, &sent.open_to_traffic, &sent.full_cure, &sent.pot_life].iter().any(|time| time.is_some());
    let temperature = ("at_temperature", sent.at_temperature.is_some());
    let humidity = ("at_relative_humidity_percent", sent.at_relative_humidity_percent.is_some());
    let depth = ("depth_per_day", sent.depth_per_day.is_some());
    let pour = ("pour_temperature", sent.pour_temperature.is_some());
    if !needs_approval {
        diagnostics.mark_unneeded(at, &[("damp_slot_allowed", sent.damp_slot_allowed.is_some())]);
    }
    // A climate that was sent without a value that holds in it is not needed.
    match kind.cure_mechanism() {
        CureMechanism::MoistureFront(_) => {
            diagnostics.mark_unneeded(at, &[pour]);
            let idle = [temperature, humidity].into_iter().filter(|(_, is_sent)| *is_sent && !has_times && !depth.1);
            diagnostics.mark_unneeded(at, &idle.collect::<Vec<_>>());
        }
        CureMechanism::Reaction(_) => {
            diagnostics.mark_unneeded(at, &[depth, pour, humidity]);
            let idle = Some(temperature).filter(|(_, is_sent)| *is_sent && !has_times);
            diagnostics.mark_unneeded(at, idle.as_slice());
        }
        CureMechanism::Cooling(_) => diagnostics.mark_unneeded(
            at,
            &[
                temperature,
                humidity,
                depth,
                ("skin_over", sent.skin_over.is_some()),
                ("full_cure", sent.full_cure.is_some()),
                ("pot_life", sent.pot_life.is_some()),
                ("activation_energy_kj_per_mol", sent.activation_energy_kj_per_mol.is_some()),
            ],
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::vocabulary::Vocabulary;

    #[test]
    fn every_usual_text_is_a_quantity() {
        let is_temperature = |text: &str| parse::<dimension::Temperature>(text).is_ok();
        assert!(is_temperature(REFERENCE_TEMPERATURE));
        for kind in SealantKind::ALL {
            assert!(is_temperature(kind.minimum_temperature()), "{kind:?}");
            assert!(kind.pour_temperature().is_none_or(is_temperature), "{kind:?}");
            if let CureMechanism::MoistureFront(figures) = kind.cure_mechanism() {
                assert!(parse::<dimension::Time>(figures.skin_over).is_ok(), "{kind:?}");
            }
        }
    }
}
