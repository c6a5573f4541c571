//! Reads a request into a [`Job`].

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::job::{Job, LeadInSlot, ResolvedSaw, ResolvedSealant, ResolvedSlab};
use super::pace::Pace;
use super::request::{EstimatedLoop, MaterialEstimateRequest};
use super::rod::Rod;
use crate::calculation::input::{CartridgeVolume, PourTemperature, price_keys};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};
use crate::practice::cure::POUR_TEMPERATURE;
use crate::practice::materials::{
    Corner, MaterialItem, USUAL_BLADE, USUAL_CARTRIDGE, USUAL_CORE, USUAL_WASTE_PERCENT, suits,
};
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, Surface};
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;

impl MaterialEstimateRequest {
    /// Reads the request.
    pub(super) fn read(&self, diagnostics: &mut Diagnostics) -> Option<Job> {
        let body = FieldPath::BODY;
        let surface = diagnostics.value_or_default(
            &body.field("surface"),
            self.surface,
            (Surface::ExistingAsphalt, Surface::ExistingAsphalt.code()),
            "The usual surface.",
            Source::OwnChoice,
        );
        let is_sawn = self.is_sawn(surface);
        let saw = read_where(is_sawn, &body.field("saw"), self.saw.is_some(), diagnostics, |at, diagnostics| {
            self.read_saw(at, diagnostics)
        });
        let (agency_at, agency_sent) = (body.field("agency_minimum"), self.agency_minimum.as_ref());
        let agency = agency_sent.map(|agency| {
            let width = read_where(is_sawn, &agency_at, true, diagnostics, |at, diagnostics| {
                diagnostics.parse(&at.field("slot_width"), &agency.slot_width)
            });
            Some((agency.agency.clone(), width?.si))
        });
        let agency_width = agency.as_ref().and_then(|agency| Some(agency.as_ref()?.1)).unwrap_or_default();
        let loops = self.read_loops(surface, agency_width, diagnostics);
        self.read_idle_slot(diagnostics);
        let lead_in_slot = read_where(
            is_sawn,
            &body.field("lead_in_slot"),
            self.lead_in_slot.is_some(),
            diagnostics,
            |at, diagnostics| self.read_lead_in_slot(at, diagnostics),
        );
        let sealant =
            read_where(is_sawn, &body.field("sealant"), self.sealant.is_some(), diagnostics, |at, diagnostics| {
                self.read_sealant(at, diagnostics)
            });
        let rod = read_where(
            is_sawn,
            &body.field("backer_rod"),
            self.backer_rod.is_some(),
            diagnostics,
            |at, diagnostics| Rod::read(self.backer_rod.as_ref(), at, diagnostics),
        );
        let spools_at = body.field("wire_spools");
        let spools: Option<Vec<_>> = (self.wire_spools.iter().flatten().enumerate())
            .map(|(index, spool)| {
                let length = diagnostics.parse(&spools_at.item(index).field("length"), &spool.length)?;
                Some((length.si, spool.sku.clone()))
            })
            .collect();
        let waste_at = body.field("waste_percent");
        let waste = read_where(is_sawn, &waste_at, self.waste_percent.is_some(), diagnostics, |at, diagnostics| {
            let usual = (USUAL_WASTE_PERCENT, "10");
            let reason = "Sealant stays in cartridges, overfills and spills.";
            diagnostics.value_or_default(at, self.waste_percent, usual, reason, Source::OwnChoice)
        });
        let slab = read_where(is_sawn, &body.field("slab"), self.slab.is_some(), diagnostics, |at, diagnostics| {
            self.read_slab(at, diagnostics)
        });
        let pace = Pace::read(self.productivity.as_ref(), &body.field("productivity"), diagnostics);
        self.leave_out_steps(surface, diagnostics);
        self.check_skus(diagnostics);
        let stock_at = body.field("stock");
        let stock: Option<Vec<_>> = self.stock.as_ref().map(|stock| {
            stock.iter().enumerate().filter_map(|(index, item)| item.read(&stock_at.item(index), diagnostics)).collect()
        });
        let prices = self.prices.as_ref().map(|prices| {
            let skus = self.stock.iter().flatten().map(|item| item.sku.as_str());
            let spools = self.wire_spools.iter().flatten().filter_map(|spool| spool.sku.as_deref());
            prices.read(&skus.chain(spools).collect::<Vec<_>>(), &body.field("prices"), diagnostics)
        });
        Some(Job {
            loops: loops?,
            lead_in_slot,
            saw: saw?,
            sealant: sealant?,
            rod: rod?,
            rod_is_asked: self.backer_rod.is_some(),
            spools: spools?,
            waste: Ratio::new::<percent>(waste),
            surface,
            slab,
            hazards: self.site_hazards.clone().unwrap_or_default(),
            crossings: self.crossings.unwrap_or_default(),
            agency: agency.map_or(Some(None), |agency| agency.map(Some))?,
            prices: prices.map_or(Some(None), |prices| prices.map(Some))?,
            pace: pace?,
            stock,
        })
    }

    fn read_lead_in_slot(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> LeadInSlot {
        self.lead_in_slot.as_ref().map_or_else(LeadInSlot::default, |slot| LeadInSlot {
            width: diagnostics.parse_optional(&at.field("width"), slot.width.as_ref()),
            depth: diagnostics.parse_optional(&at.field("depth"), slot.depth.as_ref()),
            cover: diagnostics.parse_optional(&at.field("cover"), slot.cover.as_ref()),
        })
    }

    fn read_saw(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedSaw> {
        let saw = self.saw.as_ref();
        let blade = diagnostics.parse_or_default(
            &at.field("blade_diameter"),
            saw.and_then(|saw| saw.blade_diameter.as_ref()),
            USUAL_BLADE,
            "A usual blade; it sets how far cuts run on for their full depth.",
            Source::CommonPractice,
        );
        let core_sent = saw.and_then(|saw| saw.core_diameter.as_ref());
        let corner = saw.and_then(|saw| saw.corner);
        let core = diagnostics.parse_or_default(
            &at.field("core_diameter"),
            core_sent,
            USUAL_CORE,
            "Room for the wire to bend.",
            Source::OwnChoice,
        );
        let life = saw.and_then(|saw| saw.blade_life.as_ref());
        let blade_life = life.map(|life| diagnostics.parse(&at.field("blade_life"), life));
        if corner != Some(Corner::Cored) {
            diagnostics.mark_unneeded(at, &[("core_diameter", core_sent.is_some())]);
        }
        Some(ResolvedSaw {
            blade: blade?,
            corner,
            core: core?,
            blade_life: blade_life.map_or(Some(None), |life| life.map(|life| Some(life.si)))?,
        })
    }

    fn read_sealant(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedSealant> {
        let sealant = self.sealant.as_ref();
        let kind = diagnostics.value_or_default(
            &at.field("kind"),
            sealant.map(|sealant| sealant.kind),
            (SealantKind::OnePartMoistureCure, SealantKind::OnePartMoistureCure.code()),
            "The usual loop sealant.",
            Source::CommonPractice,
        );
        let cartridge_sent = sealant.and_then(|sealant| sealant.cartridge.as_ref());
        let cartridge = diagnostics.parse_or_default::<CartridgeVolume>(
            &at.field("cartridge"),
            cartridge_sent,
            USUAL_CARTRIDGE,
            "A quart-size cartridge.",
            Source::CommonPractice,
        );
        if kind == SealantKind::HotApplied {
            diagnostics.mark_unneeded(at, &[("cartridge", cartridge_sent.is_some())]);
        }
        let finish = diagnostics.parse_or_default(
            &at.field("finish_below_surface"),
            sealant.and_then(|sealant| sealant.finish_below_surface.as_ref()),
            "0 in",
            "Flush with the pavement; agencies ask for flush to 1/8 in below.",
            Source::Everett,
        );
        if let Some(sealant) = sealant {
            sealant.check_curing(at, diagnostics);
        }
        let pour = (kind == SealantKind::HotApplied).then(|| {
            let sheet = sealant.and_then(|sealant| sealant.data_sheet.as_ref());
            diagnostics.parse_or_default::<PourTemperature>(
                &at.field("data_sheet").field("pour_temperature"),
                sheet.and_then(|sheet| sheet.pour_temperature.as_ref()),
                POUR_TEMPERATURE,
                "What one agency's hot-applied sealant is poured at.",
                Source::EverettHotMelt,
            )
        });
        Some(ResolvedSealant {
            kind,
            cartridge: cartridge?,
            finish: finish?,
            pour: pour.map_or(Some(None), |pour| pour.map(Some))?,
        })
    }

    /// Steps that neither the job nor its comparison has.
    fn leave_out_steps(&self, surface: Surface, diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        let is_sawn = self.is_sawn(surface);
        let is_cored = is_sawn && self.saw.as_ref().is_some_and(|saw| saw.corner == Some(Corner::Cored));
        let is_buried = suits(Construction::PreformedDirectBurial, surface)
            || self.loops.iter().any(|one| one.construction == Some(Construction::PreformedDirectBurial));
        let sent = self.productivity.as_ref();
        let steps = [
            (is_cored, "core", sent.is_some_and(|pace| pace.core.is_some())),
            (is_buried, "burial", sent.is_some_and(|pace| pace.burial.is_some())),
            (is_sawn, "saw_speed", sent.is_some_and(|pace| pace.saw_speed.is_some())),
            (is_sawn, "cleaning_speed", sent.is_some_and(|pace| pace.cleaning_speed.is_some())),
            (is_sawn, "sealing_speed", sent.is_some_and(|pace| pace.sealing_speed.is_some())),
        ];
        for (_, step, sent) in steps.into_iter().filter(|(is_taken, ..)| !is_taken) {
            diagnostics.mark_unneeded(&body.field("productivity"), &[(step, sent)]);
        }
    }

    fn read_slab(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> ResolvedSlab {
        self.slab.as_ref().map_or_else(ResolvedSlab::default, |slab| ResolvedSlab {
            thickness: diagnostics.parse_optional(&at.field("thickness"), slab.thickness.as_ref()),
            steel: diagnostics.parse_optional(&at.field("reinforcement_depth"), slab.reinforcement_depth.as_ref()),
            edge: diagnostics.parse_optional(&at.field("edge_distance"), slab.edge_distance.as_ref()),
            is_suspended: slab.is_suspended.unwrap_or_default(),
            cut_approved: slab.cut_approved.unwrap_or_default(),
        })
    }

    /// Whether the job, or a row of its comparison, has a saw cut.
    pub(super) fn is_sawn(&self, surface: Surface) -> bool {
        let asked = |one: &EstimatedLoop| one.construction.unwrap_or(usual_construction(surface)).is_sawn();
        suits(Construction::HandWound, surface) || self.loops.iter().any(asked)
    }

    /// A sku that is the name of an item would take the price of the item.
    fn check_skus(&self, diagnostics: &mut Diagnostics) {
        let body = FieldPath::BODY;
        let (spools_at, stock_at, keys) = (body.field("wire_spools"), body.field("stock"), price_keys());
        let mut check = |list_at: &FieldPath<'_>, index: usize, sku: &str| {
            let item = list_at.item(index);
            if MaterialItem::ALL.iter().any(|item| item.code() == sku) || keys.iter().any(|key| key == sku) {
                let detail = format!("The sku {sku} is the name of an item.");
                diagnostics.add_error(
                    &item.field("sku"),
                    FieldErrorCode::Contradiction,
                    detail,
                    "Send your own number for it.",
                );
            }
        };
        for (index, spool) in self.wire_spools.iter().flatten().enumerate() {
            check(&spools_at, index, spool.sku.as_deref().unwrap_or_default());
        }
        for (index, item) in self.stock.iter().flatten().enumerate() {
            check(&stock_at, index, &item.sku);
        }
    }
}

/// Reads a noun; where the job has no need of it, for its faults only, and what was sent of it is unused.
fn read_where<T>(
    is_needed: bool,
    at: &FieldPath<'_>,
    is_sent: bool,
    diagnostics: &mut Diagnostics,
    read: impl FnOnce(&FieldPath<'_>, &mut Diagnostics) -> T,
) -> T {
    if is_needed {
        return read(at, diagnostics);
    }
    let mut aside = Diagnostics::default();
    let understood = read(at, &mut aside);
    diagnostics.append_errors(&mut aside);
    if is_sent {
        diagnostics.mark_unused(at);
    }
    understood
}

/// What a surface asks for.
pub(super) fn usual_construction(surface: Surface) -> Construction {
    if surface.is_sawn() { Construction::HandWound } else { Construction::PreformedDirectBurial }
}
