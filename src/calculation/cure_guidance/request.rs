//! What is asked of [`super`], and the same in typed quantities.

use serde::Deserialize;
use uom::si::f64::{Length, ThermodynamicTemperature};
use utoipa::ToSchema;
use validator::Validate;

use super::candidate::SealantCandidate;
use super::data_sheet::{DataSheet, RemainingShelfLife};
use super::offset_date_time::OffsetDateTime;
use super::sealing_work::{EstimatedWork, SealingWork};
use super::slot_condition::SlotCondition;
use super::weather_series::WeatherSeries;
use crate::calculation::input::{ResolvedSlot, Sealant, Slot, Weather, Wire, WorkDuration};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::sealants::SealantKind;
use crate::practice::sealing::SurfaceCondition;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;

/// A sealant, a slot, a start, and the weather round it.
#[derive(Clone, Debug, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CureGuidanceRequest {
    /// The sealant.
    #[validate(nested)]
    pub sealant: Sealant,
    /// The slot. Default: the usual one of a wound loop.
    #[validate(nested)]
    pub slot: Option<Slot>,
    /// The wire in it; its `insulation_rating` decides whether hot-applied sealant may be poured.
    #[validate(nested)]
    pub wire: Option<Wire>,
    /// When the first sealant goes in, RFC 3339 with offset: `2026-01-20T13:00:00-05:00`. It lies within the weather. Send the offset of the
    /// site: times are answered on this clock, and it tells night from day for a slab that nobody measured.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub start: String,
    /// How long the sealing of the whole job takes, from the first foot to the last. Default 60 min; in a plan what its estimate says.
    pub work_duration: Option<WorkDuration>,
    /// What the slot looks like at the start; it holds for every later start until somebody looks again. Default: `dry`, or `wet` where the
    /// weather tells of rain that has not dried yet, and then no plain `go` is given.
    pub surface_condition: Option<SurfaceCondition>,
    /// When traffic must be let back, RFC 3339 with offset.
    #[validate(length(min = 1, max = 40))]
    #[schema(min_length = 1, max_length = 40, format = DateTime)]
    pub needed_open_by: Option<String>,
    /// The weather.
    #[validate(nested)]
    pub weather: Weather,
}

/// What a plan knows of its sealing.
#[derive(Clone, Copy)]
pub struct PlannedSealing<'a> {
    /// The sealant over the top wires of each loop that is laid.
    pub covers: &'a [Length],
    /// The system of the reader.
    pub system: UnitSystem,
    /// The work, where it was estimated.
    pub work: Option<EstimatedWork>,
}

/// The request in typed quantities.
#[derive(Clone, Debug)]
pub struct ResolvedCureGuidance {
    /// The sealant that was asked about.
    pub candidate: SealantCandidate,
    /// How long it keeps, where known.
    pub shelf_life: Option<RemainingShelfLife>,
    /// The slot.
    pub slot: ResolvedSlot,
    /// How long the work takes.
    pub work: SealingWork,
    /// What the slot is like.
    pub condition: SlotCondition,
    /// The temperature that the insulation of the wire stands.
    pub rating: Option<ThermodynamicTemperature>,
    /// When traffic must be let back.
    pub needed: Option<OffsetDateTime>,
    /// The weather, with the start in it.
    pub weather: WeatherSeries,
}

impl CureGuidanceRequest {
    /// Resolves every field, for the slot of a construction and what a plan seals in it; `None` after an error.
    pub fn resolve_for(
        &self,
        construction: Construction,
        planned: Option<PlannedSealing<'_>>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedCureGuidance> {
        let body = FieldPath::BODY;
        let start = OffsetDateTime::resolve(&self.start, &body.field("start"), diagnostics);
        let needed_at = body.field("needed_open_by");
        let needed = self.needed_open_by.as_ref().map(|text| OffsetDateTime::resolve(text, &needed_at, diagnostics));
        if let (Some(start), Some(Some(needed))) = (start, needed)
            && needed.at <= start.at
        {
            let detail = Statement::new("errors-needed-before-start");
            diagnostics.add_error(
                &needed_at,
                FieldErrorCode::Contradiction,
                detail,
                Statement::new("errors-needed-before-start-hint"),
            );
        }
        let sealant_at = body.field("sealant");
        let sheet = DataSheet::resolve(&self.sealant, self.surface_condition, &sealant_at, diagnostics);
        let shelf_life = RemainingShelfLife::resolve(&self.sealant, start, &sealant_at, diagnostics);
        let slot_at = body.field("slot");
        let slot = self.resolve_slot(construction, planned, &slot_at, diagnostics);
        let rating = self.resolve_rating(diagnostics);
        let estimated = planned.and_then(|planned| planned.work);
        let work_at = body.field("work_duration");
        let work = SealingWork::resolve(self.work_duration.as_ref(), estimated, &work_at, diagnostics);
        let weather = WeatherSeries::resolve(&self.weather, start, &body.field("weather"), diagnostics);
        let is_width_sent = self.slot.as_ref().is_some_and(|slot| slot.width.is_some());
        diagnostics.mark_unneeded(&slot_at, &[("width", is_width_sent)]);
        let (weather, slot) = (weather?, slot?);
        let condition = SlotCondition::new(self.surface_condition, &weather);
        if self.surface_condition.is_none() {
            let (value, reason) = (condition.at_start(&weather).code(), Statement::new("cure-usual-surface-condition"));
            diagnostics.add_assumption(&body.field("surface_condition"), value, reason, &[Source::OwnChoice]);
        }
        Some(ResolvedCureGuidance {
            candidate: SealantCandidate::new(self.sealant.kind, sheet?, slot.cover, &weather),
            shelf_life,
            slot,
            work: work?,
            condition,
            rating,
            // `None` within is a text whose error has been added.
            needed: needed.flatten().map(|needed| OffsetDateTime { at: needed.at, offset: weather.begin.offset }),
            weather,
        })
    }

    /// The slot; where loops are laid in it, with the thickest cover of theirs, which cures last.
    fn resolve_slot(
        &self,
        construction: Construction,
        planned: Option<PlannedSealing<'_>>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedSlot> {
        let wires = planned.map(|planned| (Length::default(), planned.system));
        let mut slot = Slot::resolve(self.slot.as_ref(), construction, wires, at, diagnostics)?;
        if let Some(planned) = planned {
            slot.say_cover(planned.covers, planned.system, at, diagnostics);
            slot.cover = planned.covers.iter().copied().reduce(Length::max).unwrap_or(slot.cover);
        }
        Some(slot)
    }

    /// The rating of the insulation; nothing else of the wire is needed.
    fn resolve_rating(&self, diagnostics: &mut Diagnostics) -> Option<ThermodynamicTemperature> {
        let wire = self.wire.as_ref()?;
        let at = FieldPath::BODY.field("wire");
        // The errors of the wire count; the defaults of its absent fields do not.
        let mut wire_diagnostics = Diagnostics::default();
        Wire::resolve(Some(wire), &at, &mut wire_diagnostics);
        diagnostics.append_errors(&mut wire_diagnostics);
        // The alternatives include hot-applied sealant, so the rating always counts.
        diagnostics.mark_unneeded(
            &at,
            &[
                ("gauge", wire.gauge.is_some()),
                ("over_insulation", wire.over_insulation.is_some()),
                ("over_jacket", wire.over_jacket.is_some()),
            ],
        );
        wire.insulation_rating.as_ref().and_then(|rating| rating.read().ok()).map(|rating| rating.si)
    }
}

impl ResolvedCureGuidance {
    /// The job as it is once somebody has dried the slot and looked.
    #[must_use]
    pub fn once_dry(&self) -> Self {
        Self { condition: SlotCondition::new(Some(SurfaceCondition::Dry), &self.weather), ..self.clone() }
    }

    /// Every kind of sealant in the same slot and weather, in the order of the list; only the chosen one has its data sheet.
    pub fn candidates(&self) -> Vec<SealantCandidate> {
        let candidate = |kind: &SealantKind| {
            if *kind == self.candidate.kind {
                self.candidate.clone()
            } else {
                SealantCandidate::new(*kind, DataSheet::usual(*kind), self.candidate.cover, &self.weather)
            }
        };
        SealantKind::ALL.iter().map(candidate).collect()
    }
}
