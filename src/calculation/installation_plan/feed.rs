//! The requests of the single calculations, each fed from the one before.

use super::request::InstallationPlanRequest;
use crate::calculation::cure_guidance::CureGuidanceRequest;
use crate::calculation::detector_compatibility::{ConnectedLoop, DetectorCompatibilityRequest, Position};
use crate::calculation::input::{Coordinate, CornerLeg, Cover, LeadIn, Loop, LoopLeg, Sealant, Shape, Slot};
use crate::calculation::loop_sizing::{LoopSizingReport, LoopSizingRequest, SizedLoop};
use crate::calculation::material_estimate::{EstimatedLoop, MaterialEstimateRequest};
use crate::calculation::vehicle_response::VehicleResponseRequest;
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires;
use crate::quantity::output::{DetailLength, PlanLength};
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;

/// A loop of the sizing as the other calculations take it.
pub struct Sized {
    /// The role, and its place in a row where several lie side by side.
    pub label: String,
    /// What it is for.
    pub role: Role,
    /// The loop.
    pub coil: Loop,
    /// How it is made.
    pub construction: Construction,
    /// How many such loops share the opening.
    pub count: usize,
    /// The middles of them: along travel, from the line of the barrier or the reference inwards; and across.
    pub middles: Vec<(f64, f64)>,
}

impl InstallationPlanRequest {
    /// The system of the plan: that of the opening's width.
    pub fn system(&self) -> UnitSystem {
        self.opening.width.read().map_or(UnitSystem::Metric, |width| width.system)
    }

    /// The request for loop-sizing.
    pub(super) fn sizing(&self) -> LoopSizingRequest {
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
            detector: self.detector.clone(),
            stock: self.stock.clone(),
        }
    }

    /// The loops that the sizing found, in the order of its report.
    pub(super) fn sized(&self, report: &LoopSizingReport) -> Vec<Sized> {
        let system = self.system();
        let member = |code: &str, all: &[Role]| all.iter().copied().find(|role| role.code() == code);
        let each = |sized: &SizedLoop| {
            let role = member(sized.role, Role::ALL)?;
            let length = |length: &PlanLength| match system {
                UnitSystem::UsCustomary => length.ft,
                UnitSystem::Metric => length.m,
            };
            let from_line = sized.distance_from_barrier.or(sized.distance_from_reference);
            let sign = if sized.side == "outside" { -1.0 } else { 1.0 };
            let along = match sized.side {
                "on_the_line" => 0.0,
                _ => sign * (from_line.as_ref().map_or(0.0, length) + length(&sized.along_travel) / 2.0),
            };
            let centres = sized.side_by_side.as_ref().map(|row| row.centres.iter().map(length).collect());
            let across: Vec<f64> = centres.unwrap_or_else(|| vec![0.0]);
            Some(Sized {
                label: sized.role.to_owned(),
                role,
                coil: self.coil(sized, &report.inputs.cover, system),
                construction: *Construction::ALL.iter().find(|made| made.code() == sized.construction)?,
                count: sized.count,
                middles: across.into_iter().map(|across| (along, across)).collect(),
            })
        };
        report.loops.iter().filter_map(each).collect()
    }

    /// A loop of the report as a request writes it. Its sizes are tidy, so that the text holds them exactly.
    fn coil(&self, sized: &SizedLoop, cover: &DetailLength, system: UnitSystem) -> Loop {
        Loop {
            shape: Shape::ALL.iter().copied().find(|shape| shape.code() == sized.shape),
            along_travel: plan_text(&sized.along_travel, system),
            across_lane: plan_text(&sized.across_lane, system),
            turns: sized.turns,
            corner_cut: Some(detail_text::<CornerLeg>(&sized.corner_cut, system)),
            cover: Some(detail_text::<Cover>(cover, system)),
            wire: self.wire.clone(),
        }
    }

    /// A loop that stands in where the opening itself is at fault, so that the faults of all other fields come all the same.
    pub(super) fn stand_in(&self) -> Vec<Sized> {
        let coil = Loop {
            shape: None,
            along_travel: LoopLeg::from_text("6 ft".to_owned()),
            across_lane: LoopLeg::from_text("6 ft".to_owned()),
            turns: 2,
            corner_cut: None,
            cover: None,
            wire: self.wire.clone(),
        };
        vec![Sized {
            label: "loop".to_owned(),
            role: Role::Presence,
            coil,
            construction: self.construction.unwrap_or(Construction::HandWound),
            count: 1,
            middles: vec![(0.0, 0.0)],
        }]
    }

    fn lead_in_or_usual(&self) -> LeadIn {
        self.lead_in.clone().unwrap_or_else(|| LeadIn::of_length(wires::USUAL_LEAD_IN_LENGTH))
    }

    /// The request for detector-compatibility.
    pub(super) fn detector(&self, loops: &[Sized]) -> DetectorCompatibilityRequest {
        let system = self.system();
        let each = |sized: &Sized| {
            let place = |(index, (along, across)): (usize, &(f64, f64))| ConnectedLoop {
                label: if sized.count > 1 { format!("{} {}", sized.label, index + 1) } else { sized.label.clone() },
                role: sized.role,
                r#loop: sized.coil.clone(),
                lead_in: self.lead_in_or_usual(),
                position: Some(Position { along: coordinate(*along, system), across: coordinate(*across, system) }),
                output: None,
                presence_time: None,
                on_loop_failure: None,
            };
            sized.middles.iter().enumerate().map(place).collect::<Vec<_>>()
        };
        DetectorCompatibilityRequest {
            loops: loops.iter().flat_map(each).collect(),
            wiring: self.wiring,
            detector: self.detector.clone(),
            vehicles: self.vehicles.clone(),
        }
    }

    /// The request for material-estimate.
    pub(super) fn materials(&self, loops: &[Sized]) -> MaterialEstimateRequest {
        let each = |sized: &Sized| EstimatedLoop {
            label: sized.label.clone(),
            r#loop: Loop { cover: None, ..sized.coil.clone() },
            construction: Some(sized.construction),
            quantity: Some(sized.count as u32),
            lead_in: self.lead_in.clone(),
            slot: None,
        };
        MaterialEstimateRequest {
            loops: loops.iter().map(each).collect(),
            slot: self.slot.clone(),
            lead_in_slot: self.lead_in_slot.clone(),
            saw: self.saw.clone(),
            sealant: self.sealant.clone(),
            backer_rod: self.backer_rod.clone(),
            wire_spools: self.wire_spools.clone(),
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

    /// The request for cure-guidance, with the cover that the sizing used; `None` without weather or start.
    pub(super) fn cure(&self, cover: Option<&DetailLength>) -> Option<CureGuidanceRequest> {
        let system = self.system();
        let usual = || Sealant {
            kind: SealantKind::OnePartMoistureCure,
            cartridge: None,
            finish_below_surface: None,
            data_sheet: None,
            made_on: None,
            shelf_life: None,
        };
        let sent = self.slot.as_ref();
        let slot = Slot {
            width: sent.and_then(|slot| slot.width.clone()),
            depth: sent.and_then(|slot| slot.depth.clone()),
            cover: sent
                .and_then(|slot| slot.cover.clone())
                .or_else(|| cover.map(|cover| detail_text::<Cover>(cover, system))),
        };
        Some(CureGuidanceRequest {
            sealant: self.sealant.clone().unwrap_or_else(usual),
            slot: Some(slot),
            wire: self.wire.clone(),
            start: self.start.clone()?,
            surface_condition: self.surface_condition,
            needed_open_by: self.needed_open_by.clone(),
            weather: self.weather.clone()?,
        })
    }

    /// The request for the response of a vehicle over a loop, for its drawing.
    pub(super) fn response(
        &self,
        sized: &Sized,
        vehicle: VehicleClass,
        threshold_percent: f64,
    ) -> VehicleResponseRequest {
        VehicleResponseRequest {
            r#loop: sized.coil.clone(),
            lead_in: self.lead_in_or_usual(),
            vehicle: Some(vehicle),
            plate: None,
            offset_across: None,
            threshold_percent: Some(threshold_percent),
            positions: None,
            lane_width: None,
        }
    }
}

fn plan_text(length: &PlanLength, system: UnitSystem) -> LoopLeg {
    LoopLeg::from_text(match system {
        UnitSystem::UsCustomary => format!("{} ft", length.ft),
        UnitSystem::Metric => format!("{} m", length.m),
    })
}

fn detail_text<K: QuantityField>(length: &DetailLength, system: UnitSystem) -> K {
    K::from_text(match system {
        UnitSystem::UsCustomary => format!("{} in", length.inch),
        UnitSystem::Metric => format!("{} mm", length.mm),
    })
}

fn coordinate(value: f64, system: UnitSystem) -> Coordinate {
    let rounded = crate::quantity::output::round(value, 4);
    Coordinate::from_text(match system {
        UnitSystem::UsCustomary => format!("{rounded} ft"),
        UnitSystem::Metric => format!("{rounded} m"),
    })
}
