//! Which vehicles a loop sees: eddy currents in their metal, all the way over the loop.
//!
//! `request` asks; `metal` holds vehicles ready for the solver, `field` a loop ready to be driven over; `pass`, `strip` and
//! `height` look along the way, across the lane and upwards; `report` answers.

mod field;
mod height;
mod metal;
mod pass;
mod report;
mod request;
mod root;
mod strip;

use uom::si::capacitance::nanofarad;
use uom::si::f64::{Capacitance, Frequency, Length, Ratio, ThermodynamicTemperature};
use uom::si::frequency::kilohertz;
use uom::si::inductance::microhenry;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;

pub use field::Field;
pub use height::{SeenHeight, highest};
pub use metal::Metal;
pub use pass::{Pass, drive};
pub use report::{BlindStrip, ProfilePoint, Stretch, VehicleResponseInputs, VehicleResponseReport};
pub use request::{PlateSize, VehicleResponseRequest};
pub use strip::{Blind, search};

use super::input::{ResolvedLeadIn, ResolvedLoop};
use super::loop_characteristics::{self, Conditions, Electrical, USUAL_FREQUENCY_KHZ, measure};
use super::report::{Diagnostics, FieldErrorCode, FieldPath, Finding, InvalidRequest};
use super::{Calculation, Example};
use crate::practice::cautions::CautionCode;
use crate::practice::detectors::{FINEST_CLASS_PERCENT, MIN_TIMES_THRESHOLD};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::roles::EDGE_SETBACK;
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::format::{format_length, format_length_input};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// The sources of every figure here, beside those of the electrical model.
pub const SOURCES: &[Source] = &[Source::EddyCurrentPlate, Source::NemaSensitivity, Source::OwnChoice];

/// The conditions under which changes are computed: those of an agency's acceptance test.
pub fn usual_conditions() -> Conditions {
    Conditions {
        frequency: Frequency::new::<kilohertz>(USUAL_FREQUENCY_KHZ),
        temperature: ThermodynamicTemperature::new::<degree_celsius>(20.0),
        steel_below: None,
        shunt_capacitance: Capacitance::new::<nanofarad>(0.0),
    }
}

/// Factors every vehicle class, so that no request waits for it.
pub fn prepare() {
    for class in VehicleClass::ALL {
        Metal::of_class(*class);
    }
}

/// The underside whose height [`highest`] looks for: the vehicle's own, or a car's for two-wheelers.
pub fn flat_underside(class: VehicleClass) -> &'static Metal {
    match class {
        VehicleClass::TractorTrailer => Metal::of_class(VehicleClass::HighBedTruck),
        class if class.is_two_wheeler() => Metal::of_class(VehicleClass::PassengerCar),
        class => Metal::of_class(class),
    }
}

/// A request in typed quantities.
struct Understood {
    coil: ResolvedLoop,
    lead_in: ResolvedLeadIn,
    class: Option<VehicleClass>,
    metal: Metal,
    offset: Length,
    threshold: Ratio,
    positions: usize,
    lane: Length,
}

impl VehicleResponseRequest {
    fn read(&self, diagnostics: &mut Diagnostics) -> Option<Understood> {
        let body = FieldPath::BODY;
        let coil = self.r#loop.read(&body.field("loop"), diagnostics);
        let lead_in = self.lead_in.read(&body.field("lead_in"), diagnostics);
        let metal = self.read_metal(&body, diagnostics);
        let offset = diagnostics.parse_optional(&body.field("offset_across"), self.offset_across.as_ref());
        let lane = diagnostics.parse_optional(&body.field("lane_width"), self.lane_width.as_ref());
        let threshold = self.threshold_percent.unwrap_or_else(|| {
            let class = self.vehicle.unwrap_or(VehicleClass::PassengerCar);
            let threshold = class.threshold_percent();
            let reason = "The step that this vehicle asks for.";
            diagnostics.add_assumption(
                &body.field("threshold_percent"),
                threshold.to_string(),
                reason,
                class.threshold_sources(),
            );
            threshold
        });
        let positions = diagnostics.value_or_default(
            &body.field("positions"),
            self.positions,
            (41, "41"),
            "Enough to draw the profile.",
            Source::OwnChoice,
        );
        let (coil, metal) = (coil?, metal?);
        let offset = offset.unwrap_or_else(|| {
            let (offset, reason) = if self.vehicle.is_some_and(VehicleClass::is_two_wheeler) {
                (
                    coil.riding_line(),
                    "Where two-wheelers are calibrated: 0.3 m inside the side wire, or over the centre slot.",
                )
            } else {
                (Length::default(), "Over the middle of the loop.")
            };
            diagnostics.add_assumption(
                &body.field("offset_across"),
                format_length_input(offset, coil.system),
                reason,
                &[Source::OwnChoice],
            );
            offset
        });
        let lane = lane.unwrap_or_else(|| {
            let lane = coil.across_lane + 2.0 * EDGE_SETBACK.in_system(coil.system);
            let reason = "The loop and the usual setback on each side.";
            diagnostics.add_assumption(
                &body.field("lane_width"),
                format_length_input(lane, coil.system),
                reason,
                &[Source::CommonPractice],
            );
            lane
        });
        Some(Understood {
            lead_in: lead_in?,
            class: self.vehicle,
            metal,
            offset,
            threshold: Ratio::new::<percent>(threshold),
            positions: positions as usize,
            lane,
            coil,
        })
    }

    fn read_metal(&self, body: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Metal> {
        let plate_at = body.field("plate");
        let own = self.plate.as_ref().and_then(|plate| {
            let width = diagnostics.parse(&plate_at.field("width"), &plate.width);
            let length = diagnostics.parse(&plate_at.field("length"), &plate.length);
            let height = diagnostics.parse(&plate_at.field("effective_height"), &plate.effective_height);
            Metal::of_plate(width?.si, length?.si, height?.si)
        });
        match (self.vehicle, &self.plate) {
            (Some(class), None) => Some(Metal::of_class(class).clone()),
            (None, Some(_)) => own,
            (Some(_), Some(_)) => {
                diagnostics.add_error(
                    &plate_at,
                    FieldErrorCode::Contradiction,
                    "Both a vehicle class and a plate were sent.",
                    "Send vehicle or plate, not both.",
                );
                None
            }
            (None, None) => {
                diagnostics.add_error(
                    &body.field("vehicle"),
                    FieldErrorCode::FieldMissing,
                    "Neither a vehicle class nor a plate was sent.",
                    "Send vehicle with a code of reference/vehicle-classes, or plate with width, length and effective_height.",
                );
                None
            }
        }
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

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let job = self.read(diagnostics);
        let job = diagnostics.finish(job)?;
        let body = FieldPath::BODY;
        diagnostics.mark_unneeded(&body.field("lead_in"), &self.lead_in.parts_sent());
        let is_two_wheeler = job.class.is_some_and(VehicleClass::is_two_wheeler);
        if !is_two_wheeler {
            diagnostics.mark_unneeded(&body, &[("lane_width", self.lane_width.is_some())]);
        }
        let electrical = measure(&job.coil, &job.lead_in, &usual_conditions());
        let field = Field::new(&job.coil, &electrical);
        let pass = drive(&field, &job.metal, job.offset, job.threshold, job.positions);
        let blind = is_two_wheeler.then(|| search(&field, &[Length::default()], &job.metal, job.lane, job.threshold));
        let underside = job.class.map_or(&job.metal, |class| flat_underside(class));
        let seen_height = SeenHeight::of(&field, highest(&field, underside, job.threshold));

        diagnostics.add_sources(loop_characteristics::SOURCES);
        diagnostics.add_sources(SOURCES);
        diagnostics.add_cautions(&[CautionCode::NotForPeople, CautionCode::LocalCodes]);
        judge(&job, &pass, blind.as_ref(), diagnostics);
        Ok(job.report(&electrical, &pass, blind.as_ref(), seen_height, diagnostics))
    }
}

fn judge(job: &Understood, pass: &Pass, blind: Option<&Blind>, diagnostics: &mut Diagnostics) {
    let vehicle_at = FieldPath::BODY.field(if job.class.is_some() { "vehicle" } else { "plate" });
    let threshold_at = FieldPath::BODY.field("threshold_percent");
    let (peak, threshold) = (pass.peak.1.get::<percent>(), round(job.threshold.get::<percent>(), 3));
    let figures =
        |finding: Finding| finding.figure("change", peak, "percent").figure("threshold", threshold, "percent");
    if peak < threshold {
        let message = format!(
            "The vehicle changes the loop by {peak:.3} % at most, and the unit switches at {threshold} %. Set a finer \
             sensitivity, lengthen the short leg, add a turn, or shorten the lead-in."
        );
        diagnostics.add_finding(figures(Finding::new(
            FindingCode::VehicleNotSeen,
            Level::Warning,
            &vehicle_at,
            message,
        )));
    } else if peak < MIN_TIMES_THRESHOLD * threshold {
        let message = format!(
            "The vehicle changes the loop by {peak:.3} %, less than twice the {threshold} % that the unit switches at. Pavement, \
             age and weather take their part: set a finer sensitivity or enlarge the loop."
        );
        diagnostics.add_finding(figures(Finding::new(FindingCode::ThinMargin, Level::Warning, &vehicle_at, message)));
    }
    if pass.gaps().next().is_some() {
        let message = "The unit lets go while the vehicle is still over the loop. A longer loop along travel bridges the gap; do \
                       not use this one to hold a gate.";
        diagnostics.add_finding(Finding::new(FindingCode::DropsOut, Level::Warning, &vehicle_at, message));
    }
    if let Some(blind) = blind.filter(|blind| blind.contains_centre()) {
        let message = format!(
            "Over {} of the lane, its centre included, the machine is not seen: only the wires along travel couple with it. A \
             quadrupole sees the centre.",
            format_length(blind.width(), job.coil.system)
        );
        diagnostics.add_finding(Finding::new(FindingCode::BlindStrip, Level::Warning, &vehicle_at, message).length(
            "blind_strip",
            blind.width(),
            job.coil.system,
        ));
    }
    if threshold < FINEST_CLASS_PERCENT {
        let message = format!(
            "{threshold} % is finer than the finest class of the standard ({FINEST_CLASS_PERCENT} %). The unit's own sheet must \
             show that it switches there."
        );
        diagnostics.add_finding(
            Finding::new(FindingCode::FineThreshold, Level::Warning, &threshold_at, message).figure(
                "threshold",
                threshold,
                "percent",
            ),
        );
    }
    if job.metal.height < job.metal.least_height() {
        let message = format!(
            "The underside lies lower than the solver resolves for its size ({}): the figure is rough by more than 3 %.",
            format_length(job.metal.least_height(), job.coil.system)
        );
        diagnostics.add_finding(Finding::new(FindingCode::RoughAnswer, Level::Note, &vehicle_at, message));
    }
}

impl Understood {
    fn report(
        &self,
        electrical: &Electrical,
        pass: &Pass,
        blind: Option<&Blind>,
        seen_height: SeenHeight,
        diagnostics: &mut Diagnostics,
    ) -> VehicleResponseReport {
        let peak = pass.peak.1;
        let undiluted = peak
            * (electrical.terminal_inductance.get::<microhenry>() / electrical.loop_inductance.get::<microhenry>());
        let stretch = |(from, to): (Length, Length)| Stretch { from: from.into(), to: to.into() };
        let closing = diagnostics.into_parts();
        VehicleResponseReport {
            peak_change_percent: round(peak.get::<percent>(), 3),
            peak_change_at_loop_percent: round(undiluted.get::<percent>(), 3),
            peak_position: pass.peak.0.into(),
            threshold_percent: round(self.threshold.get::<percent>(), 3),
            times_threshold: round(peak.get::<percent>() / self.threshold.get::<percent>(), 2),
            detected: peak >= self.threshold,
            switches_on_at: pass.seen.first().map(|(from, _)| (*from).into()),
            switches_off_at: pass.seen.last().map(|(_, to)| (*to).into()),
            drops_out: pass.seen.len() > 1,
            drop_outs: pass.gaps().map(stretch).collect(),
            profile: pass
                .profile
                .iter()
                .map(|(position, change)| ProfilePoint {
                    position: (*position).into(),
                    change_percent: round(change.get::<percent>(), 3),
                })
                .collect(),
            blind_strip: blind.map(|blind| BlindStrip::of(blind, self.lane)),
            seen_height,
            model: self.class.map_or("plate", VehicleClass::model),
            inputs: VehicleResponseInputs {
                r#loop: self.coil.echo(),
                lead_in: self.lead_in.echo(),
                vehicle: self.class.map_or("plate", Vocabulary::code),
                vehicle_length: self.metal.length.into(),
                vehicle_width: self.metal.width.into(),
                effective_height: self.metal.height.into(),
                offset_across: self.offset.into(),
                lane_width: self.lane.into(),
                positions: self.positions,
            },
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        }
    }
}
