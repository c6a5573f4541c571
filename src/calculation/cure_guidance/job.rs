//! A request in typed quantities.

use uom::si::f64::ThermodynamicTemperature;

use super::moment::Moment;
use super::product::Product;
use super::request::CureGuidanceRequest;
use super::sheet::{Sheet, Shelf};
use super::sky::Sky;
use crate::calculation::input::{ResolvedSlot, Slot, Wire};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::practice::cure::SurfaceCondition;
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;

/// What is asked, understood.
#[derive(Clone, Debug)]
pub struct Job {
    /// The sealant that was asked about.
    pub product: Product,
    /// How long it keeps, where known.
    pub shelf: Option<Shelf>,
    /// The slot.
    pub slot: ResolvedSlot,
    /// What the slot looks like at the start.
    pub condition: SurfaceCondition,
    /// Whether nobody said so.
    pub condition_is_assumed: bool,
    /// What the insulation of the wire stands.
    pub rating: Option<ThermodynamicTemperature>,
    /// When traffic must be let back.
    pub needed: Option<Moment>,
    /// The weather, with the start in it.
    pub sky: Sky,
}

impl CureGuidanceRequest {
    /// Reads everything; faults are noted.
    pub(super) fn read(&self, diagnostics: &mut Diagnostics) -> Option<Job> {
        let body = FieldPath::BODY;
        let start = Moment::read(&self.start, &body.field("start"), diagnostics);
        let needed_at = body.field("needed_open_by");
        let needed = self.needed_open_by.as_ref().map(|text| Moment::read(text, &needed_at, diagnostics));
        if let (Some(start), Some(Some(needed))) = (start, needed)
            && needed.at <= start.at
        {
            let detail = "Traffic is needed before the work starts.";
            diagnostics.add_error(&needed_at, FieldErrorCode::Contradiction, detail, "Send a time after start.");
        }
        let sealant_at = body.field("sealant");
        let sheet = self.sealant.read_sheet(self.surface_condition, &sealant_at, diagnostics);
        let shelf = self.sealant.read_shelf(start, &sealant_at, diagnostics);
        let slot_at = body.field("slot");
        let slot = Slot::read(self.slot.as_ref(), Construction::HandWound, &slot_at, diagnostics);
        let rating = self.read_rating(diagnostics);
        let condition = diagnostics.value_or_default(
            &body.field("surface_condition"),
            self.surface_condition,
            (SurfaceCondition::Dry, SurfaceCondition::Dry.code()),
            "Nobody said what the slot looks like; see for yourself that it is dry.",
            Source::OwnChoice,
        );
        let sky = self.weather.read_sky(start, &body.field("weather"), diagnostics);
        let is_width_sent = self.slot.as_ref().is_some_and(|slot| slot.width.is_some());
        diagnostics.mark_unneeded(&slot_at, &[("width", is_width_sent)]);
        let (sky, slot) = (sky?, slot?);
        Some(Job {
            product: Product::new(self.sealant.kind, sheet?, slot.cover, &sky),
            shelf,
            slot,
            condition,
            condition_is_assumed: self.surface_condition.is_none(),
            rating,
            // One that cannot be read has noted its fault.
            needed: needed.flatten().map(|needed| Moment { at: needed.at, offset: sky.begin.offset }),
            sky,
        })
    }

    /// The rating of the insulation; nothing else of the wire is needed.
    fn read_rating(&self, diagnostics: &mut Diagnostics) -> Option<ThermodynamicTemperature> {
        let wire = self.wire.as_ref()?;
        let at = FieldPath::BODY.field("wire");
        // Its faults count; what it takes for absent fields does not.
        let mut aside = Diagnostics::default();
        Wire::read(Some(wire), &at, &mut aside);
        diagnostics.append_errors(&mut aside);
        // Hot-applied sealant stands among the alternatives, so the rating always counts.
        diagnostics.mark_unneeded(
            &at,
            &[
                ("gauge", wire.gauge.is_some()),
                ("over_insulation", wire.over_insulation.is_some()),
                ("over_jacket", wire.over_jacket.is_some()),
            ],
        );
        wire.insulation_rating
            .as_ref()
            .and_then(|rating| crate::quantity::QuantityField::read(rating).ok())
            .map(|written| written.si)
    }
}

impl Job {
    /// The other kinds of sealant in the same slot under the same sky; their sheets are not at hand.
    pub fn products(&self) -> Vec<Product> {
        let of = |kind: &SealantKind| {
            if *kind == self.product.kind {
                self.product.clone()
            } else {
                Product::new(*kind, Sheet::default(), self.product.cover(), &self.sky)
            }
        };
        SealantKind::ALL.iter().map(of).collect()
    }
}
