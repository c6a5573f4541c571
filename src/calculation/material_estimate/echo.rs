//! What was understood, and each loop by itself.

use uom::si::ratio::percent;

use super::cut::Cut;
use super::estimate::Part;
use super::job::{Job, LoopJob};
use super::pace::Pace;
use super::report::{EstimatedLoopEcho, LoopMaterials, MaterialEstimateInputs, ProductivityEcho};
use super::trench::Trench;
use crate::practice::materials::RodForm;
use crate::practice::sealants::SealantKind;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

impl Job {
    /// The echo of the report.
    pub fn echo(&self) -> MaterialEstimateInputs {
        MaterialEstimateInputs {
            loops: self.loops.iter().map(LoopJob::echo).collect(),
            blade_diameter: self.saw.blade.into(),
            corner: self.saw.corner.map(Vocabulary::code),
            core_diameter: self.saw.core.into(),
            blade_life: self.saw.blade_life.map(Into::into),
            sealant_kind: self.sealant.kind.code(),
            cartridge: (self.sealant.kind != SealantKind::HotApplied).then(|| self.sealant.cartridge.into()),
            finish_below_surface: self.sealant.finish.into(),
            pour_temperature: self.sealant.pour.map(Into::into),
            backer_rod: self.rod.form.code(),
            rod_piece_length: self.rod.piece.into(),
            rod_spacing: self.rod.spacing.into(),
            rod_diameter: self.rod.diameter.map(Into::into),
            wire_spools: self.spools.iter().map(|(length, _)| (*length).into()).collect(),
            waste_percent: round(self.waste.get::<percent>(), 3),
            surface: self.surface.code(),
            site_hazards: self.hazards.iter().map(|hazard| hazard.code()).collect(),
            crossings: self.crossings,
            slab_thickness: self.slab.thickness.map(Into::into),
            reinforcement_depth: self.slab.steel.map(Into::into),
            edge_distance: self.slab.edge.map(Into::into),
            is_suspended: self.slab.is_suspended,
            cut_approved: self.slab.cut_approved,
            agency: self.agency.as_ref().map(|(agency, _)| agency.clone()),
            agency_slot_width: self.agency.as_ref().map(|(_, width)| (*width).into()),
            lead_in_slot_width: self.lead_in_slot.width.map(Into::into),
            lead_in_slot_depth: self.lead_in_slot.depth.map(Into::into),
            lead_in_cover: self.lead_in_slot.cover.map(Into::into),
            currency: self.prices.as_ref().map(|prices| prices.currency.code().to_owned()),
            productivity: self.pace.echo(),
            stock_items: self.stock.as_ref().map_or(0, Vec::len),
        }
    }
}

impl LoopJob {
    fn echo(&self) -> EstimatedLoopEcho {
        EstimatedLoopEcho {
            label: self.label.clone(),
            quantity: self.quantity,
            construction: self.construction.code(),
            r#loop: self.coil.echo(),
            cover: self.slot(self.construction).map(|slot| slot.cover.into()),
            over_jacket: self.coil.wire.over_jacket.map(Into::into),
            insulation_rating: self.rating.map(Into::into),
            lead_in: self.lead_in.echo(),
        }
    }
}

impl Pace {
    fn echo(&self) -> ProductivityEcho {
        ProductivityEcho {
            set_up: self.set_up.into(),
            saw_speed: self.saw_speed.map(Into::into),
            core: self.core.into(),
            cleaning_speed: self.cleaning_speed.into(),
            pull: self.pull.into(),
            burial: self.burial.into(),
            sealing_speed: self.sealing_speed.into(),
            termination: self.termination.into(),
            test: self.test.into(),
        }
    }
}

impl Part<'_> {
    /// The loop by itself.
    pub fn shown(&self, job: &Job) -> LoopMaterials {
        let trench = self.trench.as_ref();
        let of_loop = trench.map(|trench| &trench.of_loop);
        let lead_in = trench.and_then(|trench| trench.lead_in.as_ref());
        let rod = of_loop.map(|cut| cut.rod_form);
        let rod_in = |cut: &Cut| Some(job.rod.height_in(cut.width).into()).filter(|_| cut.rod_form != RodForm::None);
        LoopMaterials {
            label: self.one.label.clone(),
            quantity: self.one.quantity,
            construction: self.construction.code(),
            wire_length: self.wire().map(Into::into),
            slot_width: of_loop.map(|cut| cut.width.into()),
            slot_depth: of_loop.map(|cut| cut.depth.into()),
            cover: of_loop.map(|cut| cut.cover().into()),
            run_out: of_loop.map(|cut| cut.ends.run_out.into()),
            blade_diameter: of_loop.map(|cut| cut.blade.into()),
            saw_cut: trench.map(Trench::total).map(Into::into),
            sealant_net: trench.map(|trench| trench.filling().sealant().into()),
            wires_height: of_loop.map(|cut| cut.stack.into()),
            backer_rod: rod.map(Vocabulary::code),
            rod_height: of_loop.and_then(rod_in),
            lead_in_slot_width: lead_in.map(|cut| cut.width.into()),
            lead_in_slot_depth: lead_in.map(|cut| cut.depth.into()),
            lead_in_cover: lead_in.map(|cut| cut.cover().into()),
            lead_in_rod_height: lead_in.and_then(rod_in),
        }
    }
}
