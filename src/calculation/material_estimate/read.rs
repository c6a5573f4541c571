//! Reads a request into a [`Job`].

use uom::si::f64::{Length, Ratio};
use uom::si::ratio::percent;

use super::job::{Job, LeadInSlot, LoopJob, SawUnderstood, SealantUnderstood, SlabUnderstood};
use super::pace::Pace;
use super::request::{EstimatedLoop, MaterialEstimateRequest};
use super::rod::Rod;
use crate::calculation::answer::{At, FaultCode, Notes};
use crate::calculation::subject::{CartridgeVolume, LeadIn, LeadInUnderstood, LoopUnderstood, Slot, SlotUnderstood};
use crate::practice::Vocabulary;
use crate::practice::materials::{Corner, USUAL_BLADE, USUAL_CARTRIDGE, USUAL_CORE, USUAL_WASTE_PERCENT, suits};
use crate::practice::roles::usual_corner_cut;
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, Surface};
use crate::practice::sources::Source;
use crate::quantity::Kind;
use crate::quantity::shown::write;

impl MaterialEstimateRequest {
    /// Reads the request.
    pub(super) fn read(&self, notes: &mut Notes) -> Option<Job> {
        let body = At::BODY;
        let surface = notes.value_or(
            &body.field("surface"),
            self.surface,
            (Surface::ExistingAsphalt, Surface::ExistingAsphalt.code()),
            "The usual surface.",
            Source::OwnChoice,
        );
        let saw = self.read_saw(&body.field("saw"), notes);
        let loops = self.read_loops(surface, notes);
        self.read_idle_slot(notes);
        let lead_in_slot = self.read_lead_in_slot(&body.field("lead_in_slot"), notes);
        let sealant = self.read_sealant(&body.field("sealant"), notes);
        let rod = Rod::read(self.backer_rod.as_ref(), &body.field("backer_rod"), notes);
        let spools_at = body.field("wire_spools");
        let spools: Option<Vec<_>> = (self.wire_spools.iter().flatten().enumerate())
            .map(|(index, spool)| {
                let length = notes.read(&spools_at.item(index).field("length"), &spool.length)?;
                Some((length.si, spool.sku.clone()))
            })
            .collect();
        let waste = notes.value_or(
            &body.field("waste_percent"),
            self.waste_percent,
            (USUAL_WASTE_PERCENT, "10"),
            "Sealant stays in cartridges, overfills and spills.",
            Source::OwnChoice,
        );
        let slab = self.read_slab(&body.field("slab"), notes);
        let agency_at = body.field("agency_minimum");
        let agency = self.agency_minimum.as_ref().map(|agency| {
            Some((agency.agency.clone(), notes.read(&agency_at.field("slot_width"), &agency.slot_width)?.si))
        });
        let pace = Pace::read(self.productivity.as_ref(), &body.field("productivity"), notes);
        self.leave_out_steps(surface, notes);
        let stock_at = body.field("stock");
        let stock: Option<Vec<_>> = self.stock.as_ref().map(|stock| {
            stock.iter().enumerate().filter_map(|(index, item)| item.read(&stock_at.item(index), notes)).collect()
        });
        let prices = self.prices.as_ref().map(|prices| {
            let skus = self.stock.iter().flatten().map(|item| item.sku.as_str());
            let spools = self.wire_spools.iter().flatten().filter_map(|spool| spool.sku.as_deref());
            prices.read(&skus.chain(spools).collect::<Vec<_>>(), &body.field("prices"), notes)
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

    fn read_loops(&self, surface: Surface, notes: &mut Notes) -> Option<Vec<LoopJob>> {
        let body = At::BODY;
        let loops_at = body.field("loops");
        let mut loops = Vec::new();
        for (index, estimated) in self.loops.iter().enumerate() {
            let at = loops_at.item(index);
            if self.loops[..index].iter().any(|other| other.label == estimated.label) {
                notes.fault(
                    &at.field("label"),
                    FaultCode::Contradiction,
                    format!("The label {} stands twice.", estimated.label),
                    "Give every loop a label of its own; loops that are alike are one with a quantity.",
                );
            }
            loops.push(self.read_loop(estimated, surface, &at, notes));
        }
        loops.into_iter().collect()
    }

    fn read_loop(
        &self,
        estimated: &EstimatedLoop,
        surface: Surface,
        at: &At<'_>,
        notes: &mut Notes,
    ) -> Option<LoopJob> {
        let coil = estimated.r#loop.read(&at.field("loop"), notes);
        let usual = if surface.is_sawn() { Construction::HandWound } else { Construction::PreformedDirectBurial };
        let construction = notes.value_or(
            &at.field("construction"),
            estimated.construction,
            (usual, usual.code()),
            "What the surface asks for.",
            Source::CommonPractice,
        );
        let lead_in = read_lead_in(estimated, construction, at, notes);
        let slots = self.read_slots(estimated, construction, surface, at, notes);
        let coil = self.round_corners(coil?, construction, at, notes);
        if construction == Construction::PreformedSawCut || suits(Construction::PreformedSawCut, surface) {
            notes.needed(&at.field("loop").field("wire").field("over_jacket"));
        }
        let (lead_in, in_slot) = lead_in?;
        Some(LoopJob {
            label: estimated.label.clone(),
            coil,
            construction,
            quantity: estimated.quantity.unwrap_or(1),
            lead_in,
            in_slot,
            slots: slots?,
        })
    }

    /// Takes the usual corner cut where diagonal corners are asked for and the loop gives none.
    fn round_corners(
        &self,
        mut coil: LoopUnderstood,
        construction: Construction,
        at: &At<'_>,
        notes: &mut Notes,
    ) -> LoopUnderstood {
        let loop_at = at.field("loop");
        let has_cut = coil.corner_cut > Length::default();
        match self.saw.as_ref().and_then(|saw| saw.corner) {
            Some(Corner::Diagonal) if !has_cut && construction.is_sawn() => {
                coil.corner_cut = usual_corner_cut(construction, coil.along_travel.min(coil.across_lane), coil.system);
                notes.not_needed(&loop_at, &[("corner_cut", false)]);
                let reason = "The usual corner cut, for diagonal corners are asked for.";
                let value = write(coil.corner_cut, coil.system);
                notes.assume(&loop_at.field("corner_cut"), value, reason, &[Source::NemaTestLoop]);
            }
            Some(corner @ (Corner::SquareOverrun | Corner::Cored)) if has_cut => {
                let detail = format!("Corners are {}, and a loop has corner cuts.", corner.code());
                let hint = "Leave corner_cut of the loop out, or send diagonal.";
                notes.fault(&At::BODY.field("saw").field("corner"), FaultCode::Contradiction, detail, hint);
            }
            _ => {}
        }
        coil
    }

    /// The slot of each construction that is sawn. What the other one would assume is no assumption of this job.
    fn read_slots(
        &self,
        estimated: &EstimatedLoop,
        construction: Construction,
        surface: Surface,
        at: &At<'_>,
        notes: &mut Notes,
    ) -> Option<[SlotUnderstood; 2]> {
        let (body, own_at) = (At::BODY, at.field("slot"));
        let common_at = body.field("slot");
        let (sent, slot_at) = match &estimated.slot {
            Some(own) => (Some(own), own_at),
            None => (self.slot.as_ref(), common_at),
        };
        // The cover of the loop itself goes before that of its slot; where it cannot be read, that was noted with the loop.
        let own_cover = estimated.r#loop.cover.clone().filter(|cover| cover.read().is_ok());
        let slot = Slot {
            width: sent.and_then(|slot| slot.width.clone()),
            depth: sent.and_then(|slot| slot.depth.clone()),
            cover: own_cover.or_else(|| sent.and_then(|slot| slot.cover.clone())),
        };
        let mut read = |sawn: Construction| {
            if sawn == construction {
                return Slot::read(Some(&slot), sawn, &slot_at, notes);
            }
            let mut aside = Notes::default();
            let understood = Slot::read(Some(&slot), sawn, &slot_at, &mut aside);
            if !construction.is_sawn() {
                notes.take_faults(&mut aside);
            }
            understood
        };
        let slots = [read(Construction::HandWound), read(Construction::PreformedSawCut)];
        let loop_at = at.field("loop");
        notes.not_needed(&loop_at, &[("cover", false)]);
        if !construction.is_sawn() && !suits(Construction::HandWound, surface) {
            notes.not_needed(&loop_at, &[("cover", estimated.r#loop.cover.is_some())]);
            if let Some(sent) = sent {
                let fields =
                    [("width", sent.width.is_some()), ("depth", sent.depth.is_some()), ("cover", sent.cover.is_some())];
                notes.not_needed(&slot_at, &fields);
            }
        }
        let [wound, preformed] = slots;
        Some([wound?, preformed?])
    }

    /// A common slot that no loop takes must be sound all the same.
    fn read_idle_slot(&self, notes: &mut Notes) {
        let Some(slot) = self.slot.as_ref().filter(|_| self.loops.iter().all(|one| one.slot.is_some())) else { return };
        let body = At::BODY;
        let mut aside = Notes::default();
        Slot::read(Some(slot), Construction::HandWound, &body.field("slot"), &mut aside);
        notes.take_faults(&mut aside);
        notes.leave(&body.field("slot"));
    }

    fn read_lead_in_slot(&self, at: &At<'_>, notes: &mut Notes) -> LeadInSlot {
        self.lead_in_slot.as_ref().map_or_else(LeadInSlot::default, |slot| LeadInSlot {
            width: notes.read_optional(&at.field("width"), slot.width.as_ref()),
            depth: notes.read_optional(&at.field("depth"), slot.depth.as_ref()),
            cover: notes.read_optional(&at.field("cover"), slot.cover.as_ref()),
        })
    }

    fn read_saw(&self, at: &At<'_>, notes: &mut Notes) -> Option<SawUnderstood> {
        let saw = self.saw.as_ref();
        let sawn = self.loops.iter().any(|estimated| estimated.construction.is_none_or(Construction::is_sawn));
        let blade = notes.read_or(
            &at.field("blade_diameter"),
            saw.and_then(|saw| saw.blade_diameter.as_ref()),
            USUAL_BLADE,
            "A usual blade; it sets how far cuts run on for their full depth.",
            Source::CommonPractice,
        );
        let core_sent = saw.and_then(|saw| saw.core_diameter.as_ref());
        let corner = saw.and_then(|saw| saw.corner);
        let core = notes.read_or(
            &at.field("core_diameter"),
            core_sent,
            USUAL_CORE,
            "Room for the wire to bend.",
            Source::OwnChoice,
        );
        let life = saw.and_then(|saw| saw.blade_life.as_ref());
        let blade_life = life.map(|life| notes.read(&at.field("blade_life"), life));
        if corner != Some(Corner::Cored) || !sawn {
            notes.not_needed(at, &[("core_diameter", core_sent.is_some())]);
        }
        Some(SawUnderstood {
            blade: blade?,
            corner,
            core: core?,
            blade_life: blade_life.map_or(Some(None), |life| life.map(|life| Some(life.si)))?,
        })
    }

    fn read_sealant(&self, at: &At<'_>, notes: &mut Notes) -> Option<SealantUnderstood> {
        let sealant = self.sealant.as_ref();
        let kind = notes.value_or(
            &at.field("kind"),
            sealant.map(|sealant| sealant.kind),
            (SealantKind::OnePartMoistureCure, SealantKind::OnePartMoistureCure.code()),
            "The usual loop sealant.",
            Source::CommonPractice,
        );
        let cartridge_sent = sealant.and_then(|sealant| sealant.cartridge.as_ref());
        let cartridge = notes.read_or::<CartridgeVolume>(
            &at.field("cartridge"),
            cartridge_sent,
            USUAL_CARTRIDGE,
            "A quart-size cartridge.",
            Source::CommonPractice,
        );
        if kind == SealantKind::HotApplied {
            notes.not_needed(at, &[("cartridge", cartridge_sent.is_some())]);
        }
        let finish = notes.read_or(
            &at.field("finish_below_surface"),
            sealant.and_then(|sealant| sealant.finish_below_surface.as_ref()),
            "0 in",
            "Flush with the pavement; agencies ask for flush to 1/8 in below.",
            Source::Everett,
        );
        if let Some(sealant) = sealant {
            sealant.check_curing(at, notes);
        }
        Some(SealantUnderstood { kind, cartridge: cartridge?, finish: finish? })
    }

    /// Steps that neither the job nor its comparison has.
    fn leave_out_steps(&self, surface: Surface, notes: &mut Notes) {
        let body = At::BODY;
        let is_cored = self.saw.as_ref().is_some_and(|saw| saw.corner == Some(Corner::Cored));
        let is_buried = suits(Construction::PreformedDirectBurial, surface)
            || self.loops.iter().any(|one| one.construction == Some(Construction::PreformedDirectBurial));
        let sent = self.productivity.as_ref();
        let steps = [
            (is_cored, "core", sent.is_some_and(|pace| pace.core.is_some())),
            (is_buried, "burial", sent.is_some_and(|pace| pace.burial.is_some())),
        ];
        for (_, step, sent) in steps.into_iter().filter(|(is_taken, ..)| !is_taken) {
            notes.not_needed(&body.field("productivity"), &[(step, sent)]);
        }
    }

    fn read_slab(&self, at: &At<'_>, notes: &mut Notes) -> SlabUnderstood {
        self.slab.as_ref().map_or_else(SlabUnderstood::default, |slab| SlabUnderstood {
            thickness: notes.read_optional(&at.field("thickness"), slab.thickness.as_ref()),
            steel: notes.read_optional(&at.field("reinforcement_depth"), slab.reinforcement_depth.as_ref()),
            edge: notes.read_optional(&at.field("edge_distance"), slab.edge_distance.as_ref()),
            is_suspended: slab.is_suspended.unwrap_or_default(),
            cut_approved: slab.cut_approved.unwrap_or_default(),
        })
    }
}

/// The pair, and how much of it lies in a saw cut.
fn read_lead_in(
    estimated: &EstimatedLoop,
    construction: Construction,
    at: &At<'_>,
    notes: &mut Notes,
) -> Option<(LeadInUnderstood, Length)> {
    let at = at.field("lead_in");
    let sent = estimated.lead_in.as_ref();
    let lead_in = LeadIn::read_or_usual(sent, &at, notes);
    // The pair is the loop's own wire, or comes with the preformed loop.
    let is_sent = |field: fn(&LeadIn) -> bool| sent.is_some_and(field);
    notes.not_needed(
        &at,
        &[
            ("gauge", is_sent(|lead_in| lead_in.gauge.is_some())),
            ("inductance", is_sent(|lead_in| lead_in.inductance.is_some())),
        ],
    );
    let lead_in = lead_in?;
    let rest = (lead_in.length - lead_in.in_conduit.unwrap_or_default()).max(Length::default());
    if lead_in.in_slot.is_none() && construction.is_sawn() && rest > Length::default() {
        let reason = "What is not in conduit lies in a saw cut; send in_slot where the cut ends before the unit.";
        notes.assume(&at.field("in_slot"), write(rest, lead_in.system), reason, &[Source::OwnChoice]);
    }
    let in_slot = lead_in.in_slot.unwrap_or(rest);
    Some((lead_in, in_slot))
}
