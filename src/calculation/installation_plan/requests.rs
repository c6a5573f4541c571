//! The requests of the single calculations, made from the plan's request and from the reports before.

use super::request::InstallationPlanRequest;
use crate::calculation::cure_guidance::CureGuidanceRequest;
use crate::calculation::detector_compatibility::{ConnectedLoop, DetectorCompatibilityRequest, Position};
use crate::calculation::input::{Coordinate, CornerLeg, Cover, LeadIn, Loop, LoopLeg, Sealant, Slot};
use crate::calculation::loop_sizing::{LoopSizingReport, LoopSizingRequest, SizedLoop};
use crate::calculation::material_estimate::{EstimatedLoop, MaterialEstimateRequest};
use crate::calculation::vehicle_response::VehicleResponseRequest;
use crate::practice::roles::{Role, Side};
use crate::practice::sealants::SealantKind;
use crate::practice::site::Construction;
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires;
use crate::quantity::output::{DetailLength, PlanLength, round};
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;

/// A loop of the sizing, as the other calculations are asked about it.
pub struct PlannedLoop {
    /// The role.
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

/// The request for loop-sizing.
pub fn sizing_request(plan: &InstallationPlanRequest) -> LoopSizingRequest {
    LoopSizingRequest {
        opening: plan.opening.clone(),
        roles: plan.roles.clone(),
        vehicles: plan.vehicles.clone(),
        seen_by_other_devices: plan.seen_by_other_devices.clone(),
        surface: plan.surface,
        site_hazards: plan.site_hazards.clone(),
        construction: plan.construction,
        lead_in: plan.lead_in.clone(),
        wire: plan.wire.clone(),
        slot: plan.slot.clone(),
        detector: plan.detector.clone(),
        stock: plan.stock.clone(),
    }
}

/// The loops that the sizing found, in the order of its report.
pub fn planned_loops(plan: &InstallationPlanRequest, report: &LoopSizingReport) -> Vec<PlannedLoop> {
    let system = plan.system();
    let each = |sized: &SizedLoop| {
        let length = |length: &PlanLength| match system {
            UnitSystem::UsCustomary => length.ft(),
            UnitSystem::Metric => length.m(),
        };
        let from_line = sized.distance_from_barrier.or(sized.distance_from_reference);
        let middle = from_line.as_ref().map_or(0.0, length) + length(&sized.along_travel) / 2.0;
        let along = match sized.side {
            Side::OnTheLine => 0.0,
            Side::Outside => -middle,
            Side::Inside => middle,
        };
        let centres = sized.side_by_side.as_ref().map(|row| row.centres.iter().map(length).collect());
        let across: Vec<f64> = centres.unwrap_or_else(|| vec![0.0]);
        PlannedLoop {
            label: sized.role.code().to_owned(),
            role: sized.role,
            coil: coil(plan, sized, report.inputs.cover, system),
            construction: sized.construction,
            count: sized.count,
            middles: across.into_iter().map(|across| (along, across)).collect(),
        }
    };
    report.loops.iter().map(each).collect()
}

/// A loop of the report as a request. Its sizes are rounded, so that the text holds them exactly.
fn coil(plan: &InstallationPlanRequest, sized: &SizedLoop, cover: DetailLength, system: UnitSystem) -> Loop {
    Loop {
        shape: Some(sized.shape),
        along_travel: plan_text(sized.along_travel, system),
        across_lane: plan_text(sized.across_lane, system),
        turns: sized.turns,
        corner_cut: Some(detail_text::<CornerLeg>(sized.corner_cut, system)),
        cover: Some(detail_text::<Cover>(cover, system)),
        wire: plan.wire.clone(),
    }
}

/// A loop for the other calculations where the sizing has no answer, so that the errors of all other fields are reported with its own.
pub fn stand_in_loops(plan: &InstallationPlanRequest) -> Vec<PlannedLoop> {
    let coil = Loop {
        shape: None,
        along_travel: LoopLeg::from_text("6 ft".to_owned()),
        across_lane: LoopLeg::from_text("6 ft".to_owned()),
        turns: 2,
        corner_cut: None,
        cover: None,
        wire: plan.wire.clone(),
    };
    vec![PlannedLoop {
        label: "loop".to_owned(),
        role: Role::Presence,
        coil,
        construction: plan.construction.unwrap_or(Construction::HandWound),
        count: 1,
        middles: vec![(0.0, 0.0)],
    }]
}

fn lead_in_or_default(plan: &InstallationPlanRequest) -> LeadIn {
    plan.lead_in.clone().unwrap_or_else(|| LeadIn::of_length(wires::USUAL_LEAD_IN_LENGTH))
}

/// The request for detector-compatibility.
pub fn detector_request(plan: &InstallationPlanRequest, loops: &[PlannedLoop]) -> DetectorCompatibilityRequest {
    let system = plan.system();
    let each = |sized: &PlannedLoop| {
        let place = |(index, (along, across)): (usize, &(f64, f64))| ConnectedLoop {
            label: if sized.count > 1 { format!("{} {}", sized.label, index + 1) } else { sized.label.clone() },
            role: sized.role,
            r#loop: sized.coil.clone(),
            lead_in: lead_in_or_default(plan),
            position: Some(Position { along: coordinate(*along, system), across: coordinate(*across, system) }),
            output: None,
            presence_time: None,
            on_loop_failure: None,
        };
        sized.middles.iter().enumerate().map(place).collect::<Vec<_>>()
    };
    DetectorCompatibilityRequest {
        loops: loops.iter().flat_map(each).collect(),
        wiring: plan.wiring,
        detector: plan.detector.clone(),
        vehicles: plan.vehicles.clone(),
    }
}

/// The request for material-estimate.
pub fn materials_request(plan: &InstallationPlanRequest, loops: &[PlannedLoop]) -> MaterialEstimateRequest {
    let each = |sized: &PlannedLoop| EstimatedLoop {
        label: sized.label.clone(),
        r#loop: Loop { cover: None, ..sized.coil.clone() },
        construction: Some(sized.construction),
        quantity: Some(sized.count as u32),
        lead_in: plan.lead_in.clone(),
        slot: None,
    };
    MaterialEstimateRequest {
        loops: loops.iter().map(each).collect(),
        slot: plan.slot.clone(),
        lead_in_slot: plan.lead_in_slot.clone(),
        saw: plan.saw.clone(),
        sealant: plan.sealant.clone(),
        backer_rod: plan.backer_rod.clone(),
        wire_spools: plan.wire_spools.clone(),
        waste_percent: plan.waste_percent,
        surface: plan.surface,
        slab: plan.slab.clone(),
        site_hazards: plan.site_hazards.clone(),
        crossings: plan.crossings,
        agency_minimum: plan.agency_minimum.clone(),
        prices: plan.prices.clone(),
        productivity: plan.productivity.clone(),
        stock: plan.stock.clone(),
    }
}

/// The request for cure-guidance, with the cover that the sizing used; `None` without weather or start.
pub fn cure_request(plan: &InstallationPlanRequest, cover: Option<DetailLength>) -> Option<CureGuidanceRequest> {
    let system = plan.system();
    let default = || Sealant {
        kind: SealantKind::DEFAULT,
        cartridge: None,
        finish_below_surface: None,
        data_sheet: None,
        made_on: None,
        shelf_life: None,
    };
    let sent = plan.slot.as_ref();
    let slot = Slot {
        width: sent.and_then(|slot| slot.width.clone()),
        depth: sent.and_then(|slot| slot.depth.clone()),
        cover: sent
            .and_then(|slot| slot.cover.clone())
            .or_else(|| cover.map(|cover| detail_text::<Cover>(cover, system))),
    };
    Some(CureGuidanceRequest {
        sealant: plan.sealant.clone().unwrap_or_else(default),
        slot: Some(slot),
        wire: plan.wire.clone(),
        start: plan.start.clone()?,
        surface_condition: plan.surface_condition,
        needed_open_by: plan.needed_open_by.clone(),
        weather: plan.weather.clone()?,
    })
}

/// The request for the response of a vehicle over a loop, for its drawing.
pub fn response_request(
    plan: &InstallationPlanRequest,
    sized: &PlannedLoop,
    vehicle: VehicleClass,
    threshold_percent: f64,
) -> VehicleResponseRequest {
    VehicleResponseRequest {
        r#loop: sized.coil.clone(),
        lead_in: lead_in_or_default(plan),
        vehicle: Some(vehicle),
        plate: None,
        offset_across: None,
        threshold_percent: Some(threshold_percent),
        positions: None,
        lane_width: None,
    }
}

fn plan_text(length: PlanLength, system: UnitSystem) -> LoopLeg {
    LoopLeg::from_text(match system {
        UnitSystem::UsCustomary => format!("{} ft", length.ft()),
        UnitSystem::Metric => format!("{} m", length.m()),
    })
}

fn detail_text<K: QuantityField>(length: DetailLength, system: UnitSystem) -> K {
    K::from_text(match system {
        UnitSystem::UsCustomary => format!("{} in", length.inch()),
        UnitSystem::Metric => format!("{} mm", length.mm()),
    })
}

fn coordinate(value: f64, system: UnitSystem) -> Coordinate {
    let rounded = round(value, 4);
    Coordinate::from_text(match system {
        UnitSystem::UsCustomary => format!("{rounded} ft"),
        UnitSystem::Metric => format!("{rounded} m"),
    })
}
