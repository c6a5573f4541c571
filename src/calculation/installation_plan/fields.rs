//! The one table of the plan's fields: which parts read each, and the requests of the parts that are made of them.
//!
//! A field that is forgotten does not compile: the table takes the plan's request apart, and each request below names all of its own.

use super::request::InstallationPlanRequest;
use crate::calculation::cure_guidance::CureGuidanceRequest;
use crate::calculation::detector_compatibility::DetectorCompatibilityRequest;
use crate::calculation::input::Sealant;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::material_estimate::MaterialEstimateRequest;
use crate::practice::sealants::SealantKind;

/// A part of a plan that reads fields of its request.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanReader {
    /// The sizing, which decides the layout.
    Sizing,
    /// The unit.
    Detector,
    /// The materials.
    Materials,
    /// The cure.
    Cure,
}

/// A field of the plan's request.
pub struct PlanField {
    /// Its name.
    pub name: &'static str,
    /// Whether it was sent.
    pub is_sent: bool,
    /// The parts that read it, where they are planned.
    pub readers: &'static [PlanReader],
}

impl InstallationPlanRequest {
    /// Every field that a part may read.
    pub fn fields(&self) -> [PlanField; 31] {
        use PlanReader::{Cure, Detector, Materials, Sizing};
        let Self {
            parts: _,
            include: _,
            opening: _,
            roles,
            vehicles,
            seen_by_other_devices,
            surface,
            site_hazards,
            construction,
            lead_in,
            wire,
            slot,
            stock,
            fixed_loops,
            detector,
            wiring,
            lead_in_slot,
            saw,
            sealant,
            backer_rod,
            wire_spools,
            wire_allowance_percent,
            waste_percent,
            slab,
            crossings,
            agency_minimum,
            prices,
            productivity,
            start,
            work_duration,
            surface_condition,
            needed_open_by,
            weather,
        } = self;
        let field = |name, is_sent, readers| PlanField { name, is_sent, readers };
        [
            field("opening", true, &[Sizing]),
            field("roles", roles.is_some(), &[Sizing]),
            field("vehicles", vehicles.is_some(), &[Sizing, Detector]),
            field("seen_by_other_devices", seen_by_other_devices.is_some(), &[Sizing]),
            field("surface", surface.is_some(), &[Sizing, Materials]),
            field("site_hazards", site_hazards.is_some(), &[Sizing, Materials]),
            field("construction", construction.is_some(), &[Sizing]),
            field("lead_in", lead_in.is_some(), &[Sizing, Materials]),
            field("wire", wire.is_some(), &[Sizing, Materials, Cure]),
            field("slot", slot.is_some(), &[Sizing, Materials, Cure]),
            field("stock", stock.is_some(), &[Sizing]),
            field("fixed_loops", fixed_loops.is_some(), &[Sizing]),
            field("detector", detector.is_some(), &[Sizing, Detector]),
            field("wiring", wiring.is_some(), &[Sizing, Detector]),
            field("lead_in_slot", lead_in_slot.is_some(), &[Materials]),
            field("saw", saw.is_some(), &[Materials]),
            field("sealant", sealant.is_some(), &[Materials, Cure]),
            field("backer_rod", backer_rod.is_some(), &[Materials]),
            field("wire_spools", wire_spools.is_some(), &[Materials]),
            field("wire_allowance_percent", wire_allowance_percent.is_some(), &[Materials]),
            field("waste_percent", waste_percent.is_some(), &[Materials]),
            field("slab", slab.is_some(), &[Sizing, Materials]),
            field("crossings", crossings.is_some(), &[Materials]),
            field("agency_minimum", agency_minimum.is_some(), &[Materials]),
            field("prices", prices.is_some(), &[Materials]),
            field("productivity", productivity.is_some(), &[Materials]),
            field("start", start.is_some(), &[Cure]),
            field("work_duration", work_duration.is_some(), &[Cure]),
            field("surface_condition", surface_condition.is_some(), &[Cure]),
            field("needed_open_by", needed_open_by.is_some(), &[Cure]),
            field("weather", weather.is_some(), &[Cure]),
        ]
    }

    /// The request for loop-sizing.
    pub fn sizing_request(&self) -> LoopSizingRequest {
        LoopSizingRequest {
            opening: self.opening.clone(),
            roles: self.roles.clone(),
            vehicles: self.vehicles.clone(),
            seen_by_other_devices: self.seen_by_other_devices.clone(),
            surface: self.surface,
            site_hazards: self.site_hazards.clone(),
            construction: self.construction,
            lead_in: self.lead_in.clone(),
            wire: self.wire.clone(),
            slot: self.slot.clone(),
            slab: self.slab.clone(),
            fixed_loops: self.fixed_loops.clone(),
            detector: self.detector.clone(),
            stock: self.stock.clone(),
        }
    }

    /// The request for detector-compatibility, without the loops, which come from the layout.
    pub fn detector_request(&self) -> DetectorCompatibilityRequest {
        DetectorCompatibilityRequest {
            loops: Vec::new(),
            wiring: self.wiring,
            detector: self.detector.clone(),
            vehicles: self.vehicles.clone(),
        }
    }

    /// The request for material-estimate, without the loops, which come from the layout.
    pub fn materials_request(&self) -> MaterialEstimateRequest {
        MaterialEstimateRequest {
            loops: Vec::new(),
            slot: self.slot.clone(),
            lead_in_slot: self.lead_in_slot.clone(),
            saw: self.saw.clone(),
            sealant: self.sealant.clone(),
            backer_rod: self.backer_rod.clone(),
            wire_spools: self.wire_spools.clone(),
            wire_allowance_percent: self.wire_allowance_percent,
            waste_percent: self.waste_percent,
            surface: self.surface,
            slab: self.slab.clone(),
            site_hazards: self.site_hazards.clone(),
            crossings: self.crossings,
            agency_minimum: self.agency_minimum.clone(),
            prices: self.prices.clone(),
            productivity: self.productivity.clone(),
            stock: self.stock.clone(),
        }
    }

    /// The request for cure-guidance; `None` without weather or start.
    pub fn cure_request(&self) -> Option<CureGuidanceRequest> {
        let default = || Sealant {
            kind: SealantKind::DEFAULT,
            cartridge: None,
            finish_below_surface: None,
            data_sheet: None,
            made_on: None,
            shelf_life: None,
        };
        Some(CureGuidanceRequest {
            sealant: self.sealant.clone().unwrap_or_else(default),
            slot: self.slot.clone(),
            wire: self.wire.clone(),
            start: self.start.clone()?,
            work_duration: self.work_duration.clone(),
            surface_condition: self.surface_condition,
            needed_open_by: self.needed_open_by.clone(),
            weather: self.weather.clone()?,
        })
    }
}
