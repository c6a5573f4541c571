//! The fields of a sizing, in the order in which a person is asked. What it takes and does not need is no field.

use super::row::{DefaultByOption, FieldDefault, Row, rows};
use super::usual_sizes;
use crate::calculation::report::Statement;
use crate::practice::detectors::DetectorEnvelope;
use crate::practice::roles::Role;
use crate::practice::site::{Barrier, LeafOpen, Surface, UnitSide};
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires;
use crate::vocabulary::Vocabulary;
use FieldDefault::{Code, Codes, Flag, Number, Quantity};

/// The fields.
pub fn rows() -> Vec<Row> {
    let limits = DetectorEnvelope::StandardMinimum.limits();
    let mut rows = rows! {
        Usual Opening "#/opening/width": label Statement::new("forms-width"), help Statement::new("forms-width-help");
        Usual Opening "#/opening/barrier": label Statement::new("forms-barrier"), help Statement::new("forms-barrier-help");
        Usual Loops "#/roles": label Statement::new("forms-roles"), help Statement::new("forms-roles-help"), or Statement::new("forms-roles-default");
        Usual Opening "#/opening/approach_speed": label Statement::new("forms-approach-speed"), help Statement::new("forms-approach-speed-help"), or Statement::new("forms-exit-time-default");
        Usual Opening "#/opening/opening_time": label Statement::new("forms-opening-time"), help Statement::new("forms-opening-time-help"), or Statement::new("forms-exit-time-default");
        Usual Loops "#/vehicles": help Statement::new("forms-vehicles-help"), is Codes(codes(&VehicleClass::USUAL));
        Usual Pavement "#/surface": help Statement::new("forms-surface-help"), is Code(Surface::ExistingAsphalt.code());
        Usual Pavement "#/site_hazards": label Statement::new("forms-hazards"), help Statement::new("forms-hazards-help"), is Codes(Vec::new());
        Usual LeadIn "#/lead_in/length": help Statement::new("forms-lead-in-length-help"), is Quantity(wires::USUAL_LEAD_IN_LENGTH);

        Specialist Opening "#/opening/edge_setback": help Statement::new("forms-edge-setback-help"), or usual_sizes::edge_setback();
        Specialist Opening "#/opening/drive_length": label Statement::new("forms-drive-length"), help Statement::new("forms-drive-length-help"), or Statement::new("forms-drive-length-default");
        Specialist Opening "#/opening/leaf_height": help Statement::new("forms-leaf-height-help"), or usual_sizes::leaf_height();
        Specialist Opening "#/opening/leaf_ground_gap": help Statement::new("forms-leaf-gap-help"), or usual_sizes::leaf_gap();
        Specialist Opening "#/opening/leaf_open": help Statement::new("forms-leaf-open-help"), is Code(LeafOpen::Level.code());
        Specialist Opening "#/opening/unit_side": help Statement::new("forms-unit-side-help"), is Code(UnitSide::Right.code());
        Specialist Opening "#/opening/seen_otherwise": label Statement::new("forms-seen-otherwise"), help Statement::new("forms-seen-otherwise-help"), is Flag(false);

        Specialist Loops "#/seen_by_other_devices": label Statement::new("forms-seen-by-others"), help Statement::new("forms-seen-by-others-help"), is Codes(Vec::new());
        Specialist Loops "#/construction": help Statement::new("forms-construction-help"), or Statement::new("forms-construction-default");

        Specialist Pavement "#/slab/thickness": label Statement::new("forms-slab-thickness"), help Statement::new("forms-slab-thickness-help");
        Specialist Pavement "#/slab/reinforcement_depth": label Statement::new("forms-steel-depth"), help Statement::new("forms-steel-depth-help"), or Statement::new("forms-steel-depth-default");
        Specialist Pavement "#/slab/cut_approved": label Statement::new("forms-cut-approved"), help Statement::new("forms-cut-approved-help"), is Flag(false);

        Specialist LeadIn "#/lead_in/in_slot": help Statement::new("forms-in-slot-help"), or Statement::new("forms-in-slot-default");
        Specialist LeadIn "#/lead_in/in_conduit": help Statement::new("forms-in-conduit-help"), or Statement::new("forms-in-conduit-default");
        Specialist LeadIn "#/lead_in/pair": label Statement::new("forms-pair"), help Statement::new("forms-pair-help"), or Statement::new("forms-pair-default");
        Specialist LeadIn "#/lead_in/spare": help Statement::new("forms-spare-help"), like ["3 ft", "1 m"], is Quantity(wires::USUAL_SPARE);
        Specialist LeadIn "#/lead_in/gauge": help Statement::new("forms-lead-in-gauge-help"), is Quantity(wires::USUAL_GAUGE);
        Specialist LeadIn "#/lead_in/inductance": help Statement::new("forms-lead-in-inductance-help"), is Quantity(wires::USUAL_LEAD_IN_INDUCTANCE), or Statement::new("forms-lead-in-inductance-default");

        Specialist Wire "#/wire/gauge": help Statement::new("forms-wire-gauge-help"), is Quantity(wires::USUAL_GAUGE);
        Specialist Wire "#/wire/over_insulation": help Statement::new("forms-over-insulation-help"), is Quantity(wires::USUAL_OVER_INSULATION), or Statement::new("forms-over-insulation-default");
        Specialist Wire "#/wire/over_jacket": label Statement::new("forms-over-jacket"), help Statement::new("forms-over-jacket-help"), or Statement::new("forms-over-jacket-default");

        Specialist Cuts "#/slot/width": help Statement::new("forms-slot-width-help"), is Quantity(wires::USUAL_SLOT_WIDTH), or Statement::new("forms-slot-width-default");
        Specialist Cuts "#/slot/depth": help Statement::new("forms-slot-depth-help"), or usual_sizes::slot_depth();
        Specialist Cuts "#/slot/cover": help Statement::new("forms-cover-help"), or usual_sizes::cover();

        Specialist Detector "#/detector/envelope": help Statement::new("forms-envelope-help"), is Code(DetectorEnvelope::StandardMinimum.code());
        Specialist Detector "#/detector/inductance_min_uh": help Statement::new("forms-from-unit-sheet"), is Number(limits.inductance_min_uh), or Statement::new("forms-limit-default");
        Specialist Detector "#/detector/inductance_max_uh": help Statement::new("forms-from-unit-sheet"), is Number(limits.inductance_max_uh), or Statement::new("forms-limit-default");
        Specialist Detector "#/detector/quality_factor_min": label Statement::new("forms-quality-factor"), help Statement::new("forms-from-unit-sheet"), is Number(limits.quality_factor_min);
        Specialist Detector "#/detector/threshold_percent": label Statement::new("forms-threshold"), help Statement::new("forms-threshold-help"), or Statement::new("forms-threshold-default");
        Specialist Detector "#/detector/threshold_steps_percent": help Statement::new("forms-threshold-steps-help"), or Statement::new("forms-threshold-steps-default");
    };
    for row in rows.iter_mut().filter(|row| row.pointer == "#/roles") {
        row.defaults_by_option = Barrier::ALL.iter().map(|barrier| usual_roles(*barrier)).collect();
    }
    rows
}

/// What an opening with a barrier is given where no roles are sent.
fn usual_roles(barrier: Barrier) -> DefaultByOption {
    let default_codes = codes(Role::usual_for(barrier));
    DefaultByOption { pointer: "#/opening/barrier", code: barrier.code(), default_codes }
}

fn codes<V: Vocabulary>(members: &[V]) -> Vec<&'static str> {
    members.iter().map(|member| member.code()).collect()
}
