//! Which vehicles a loop sees: eddy currents in their metal, all the way over the loop.
//!
//! - `request`: what is asked, as sent and in typed quantities
//! - `vehicle_model`: the metal of vehicles, ready for the solver
//! - `loop_field`: a loop, and the change that a vehicle at any place makes
//! - `vehicle_pass`, `unseen_strips`, `seen_height`: along the way, across the lane, and upwards
//! - `findings`: what the figures mean
//! - `report`: what is answered

mod findings;
mod loop_field;
mod report;
mod request;
mod root_finding;
mod seen_height;
mod unseen_strips;
mod vehicle_model;
mod vehicle_pass;

use uom::si::f64::Length;

pub use loop_field::{LoopField, WeakestChange};
pub use report::{BlindStrip, DrivenVehicle, ProfilePoint, Stretch, VehicleResponseInputs, VehicleResponseReport};
use request::USUAL_POSITIONS;
pub use request::{PlateSize, ResolvedVehicleResponse, VehicleResponseRequest};
pub use root_finding::find_crossing;
pub use seen_height::{SeenHeight, find_seen_height};
pub use unseen_strips::{UnseenStrips, find_unseen_strips};
pub use vehicle_model::VehicleModel;

use super::cost::CostTerm;
use super::loop_characteristics::{self, MeasurementConditions, measure};
use super::report::{Diagnostics, FieldPath, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::cautions::CautionCode;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::vocabulary::Vocabulary;
use vehicle_pass::drive_over;

/// The sources of every figure here, beside those of the electrical model.
pub const SOURCES: &[Source] = &[Source::EddyCurrentPlate, Source::NemaSensitivity, Source::OwnChoice];

/// Factors every vehicle class, so that no request waits for it.
pub fn prepare() {
    for class in VehicleClass::ALL {
        VehicleModel::of_class(*class);
    }
}

impl Calculation for VehicleResponseRequest {
    type Report = VehicleResponseReport;
    const NAME: &'static str = "vehicle-response";
    const OPERATION_ID: &'static str = "respond_to_vehicle";
    const SUMMARY: &'static str = "Which vehicles a loop sees";
    const DESCRIPTION: &'static str = "The change of inductance at the detector unit's terminals while a vehicle drives over a \
        loop: the whole profile, where the unit switches on and off, whether it lets go in between, how high metal is seen, and \
        where across the lane a two-wheeler is missed. The underside is a flat conducting plate in the loop's field, a \
        two-wheeler an upright turn. Cars and motorcycles are calibrated on published sensitivity classes, other vehicles are \
        assumed; `model` says which.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "car_on_test_loop",
            summary: "The standard test loop and a car",
            request: include_str!("../../../openapi/examples/vehicle-response/car_on_test_loop.request.json"),
        },
        Example {
            name: "motorcycle_in_barrier_lane",
            summary: "Tern Island Boatyard: a small motorcycle in the ticketed barrier lane",
            request: include_str!("../../../openapi/examples/vehicle-response/motorcycle_in_barrier_lane.request.json"),
        },
        Example {
            name: "boat_trailer_plate",
            summary: "Tern Island Boatyard: a low boat trailer as a plate of its own",
            request: include_str!("../../../openapi/examples/vehicle-response/boat_trailer_plate.request.json"),
        },
    ];

    fn cost_terms(&self) -> Vec<CostTerm> {
        let positions = self.positions.unwrap_or(USUAL_POSITIONS.0) as usize;
        if self.vehicle.is_some_and(VehicleClass::is_two_wheeler) {
            return vec![
                CostTerm::new("the pass of a two-wheeler", 1, 200),
                CostTerm::new("a position of a two-wheeler", positions, 1),
            ];
        }
        if self.vehicle.is_some_and(VehicleClass::has_gap) {
            let pass = CostTerm::new("the pass of a vehicle of several parts", 1, 1000);
            return vec![pass, CostTerm::new("a position of a vehicle of several parts", positions, 12)];
        }
        vec![CostTerm::new("the pass of a vehicle", 1, 150), CostTerm::new("a position of a vehicle", positions, 7)]
    }

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let resolved = self.resolve(diagnostics);
        let resolved = diagnostics.finish(resolved)?;
        let body = FieldPath::BODY;
        diagnostics.mark_unneeded(&body.field("lead_in"), &self.lead_in.parts_sent());
        if !resolved.class.is_some_and(VehicleClass::is_two_wheeler) {
            diagnostics.mark_unneeded(&body, &[("lane_width", self.lane_width.is_some())]);
        }
        Ok(solve(&resolved, diagnostics))
    }
}

/// Drives the vehicle over the loop, and reports.
pub fn solve(resolved: &ResolvedVehicleResponse, diagnostics: &mut Diagnostics) -> VehicleResponseReport {
    let (model, threshold) = (&resolved.model, resolved.threshold);
    let electrical = measure(&resolved.coil, &resolved.lead_in, &MeasurementConditions::usual());
    let field = LoopField::new(&resolved.coil, &electrical, diagnostics.budget());
    let pass = drive_over(&field, model, resolved.offset, threshold, resolved.positions);
    let centres = [Length::default()];
    let is_two_wheeler = resolved.class.is_some_and(VehicleClass::is_two_wheeler);
    let unseen = is_two_wheeler.then(|| find_unseen_strips(&field, &centres, model, resolved.lane, threshold));
    let underside = resolved.class.map_or(model, |class| VehicleModel::for_seen_height(class));
    let own_place = (pass.peak.1 >= threshold && !is_two_wheeler).then_some((pass.peak.0, resolved.offset));
    let seen_height = seen_height::find_with_vehicle(&field, underside, model, own_place, threshold);
    let seen_height = SeenHeight::of(&field, seen_height);

    diagnostics.add_sources(loop_characteristics::SOURCES);
    diagnostics.add_sources(SOURCES);
    diagnostics.add_cautions(&[CautionCode::NotForPeople, CautionCode::LocalCodes]);
    findings::judge(resolved, &pass, unseen.as_ref(), diagnostics);
    VehicleResponseReport::of(resolved, &electrical, &pass, unseen.as_ref(), seen_height, diagnostics)
}
