//! What was understood, and each loop by itself.

use uom::si::ratio::percent;

use super::estimate::Part;
use super::job::{Job, LoopJob};
use super::pace::Pace;
use super::report::{EstimatedLoopEcho, LoopMaterials, MaterialEstimateInputs, ProductivityEcho};
use super::trench::Trench;
use crate::practice::Vocabulary;
use crate::practice::materials::RodForm;
use crate::practice::sealants::SealantKind;
use crate::quantity::shown::round;

impl Job {
    /// The echo of the report.
    pub fn echo(&self) -> MaterialEstimateInputs {
        MaterialEstimateInputs {
            loops: self.loops.iter().map(LoopJob::echo).collect(),
            blade_diameter: self.saw.blade.into(),
            sealant_kind: self.sealant.kind.code(),
            cartridge: (self.sealant.kind != SealantKind::HotApplied).then(|| self.sealant.cartridge.into()),
            finish_below_surface: self.sealant.finish.into(),
            backer_rod: self.rod.form.code(),
            wire_spools: self.spools.iter().map(|(length, _)| (*length).into()).collect(),
            waste_percent: round(self.waste.get::<percent>(), 3),
            surface: self.surface.code(),
            site_hazards: self.hazards.iter().map(|hazard| hazard.code()).collect(),
            crossings: self.crossings,
            slab_thickness: self.slab.thickness.map(Into::into),
            reinforcement_depth: self.slab.steel.map(Into::into),
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
            over_jacket: self.coil.wire.over_jacket.map(Into::into),
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
        let lead_in = trench.and_then(|trench| trench.lead_in.as_ref());
        let rod = trench.map(|trench| trench.rod_form);
        let rod_in =
            |width| Some(job.rod.height_in(width).into()).filter(|_| rod.is_some_and(|rod| rod != RodForm::None));
        LoopMaterials {
            label: self.one.label.clone(),
            quantity: self.one.quantity,
            construction: self.construction.code(),
            wire_length: self.wire().map(Into::into),
            slot_width: trench.map(|trench| trench.width.into()),
            slot_depth: trench.map(|trench| trench.depth.into()),
            cover: trench.map(|trench| trench.cover.into()),
            run_out: trench.map(|trench| trench.run_out.into()),
            saw_cut: trench.map(Trench::total).map(Into::into),
            sealant_net: trench.map(|trench| trench.filling.sealant().into()),
            wires_height: trench.map(|trench| trench.stack.into()),
            backer_rod: rod.map(Vocabulary::code),
            rod_height: trench.and_then(|trench| rod_in(trench.width)),
            lead_in_slot_width: lead_in.map(|cut| cut.width.into()),
            lead_in_slot_depth: lead_in.map(|cut| cut.depth.into()),
            lead_in_rod_height: lead_in.and_then(|cut| rod_in(cut.width)),
        }
    }
}
