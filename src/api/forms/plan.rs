//! The fields of a plan: those of a sizing, and what else it needs. Examples that stand here are typical values, from memory.

use super::row::{Audience, FieldDefault, Row, rows};
use super::sizing;
use crate::calculation::report::Statement;
use crate::practice::detectors::{DetectorEnvelope, Wiring};
use crate::practice::materials as usual;
use crate::practice::materials::RodForm;
use crate::practice::sealants::{SHELF_LIFE, SealantKind};
use crate::practice::sealing::{REFERENCE_HUMIDITY_PERCENT, REFERENCE_TEMPERATURE};
use crate::vocabulary::Vocabulary;
use FieldDefault::{Code, Codes, Count, Flag, Number, Quantity};

/// The fields: usual ones in the order in which a person is asked, then the others by section.
pub fn rows() -> Vec<Row> {
    let mut rows: Vec<_> = sizing::rows().into_iter().chain(own_rows()).collect();
    rows.sort_by_key(|row| (row.audience == Audience::Specialist).then_some(row.section));
    rows
}

fn own_rows() -> Vec<Row> {
    let limits = DetectorEnvelope::StandardMinimum.limits();
    rows! {
        Usual Sealant "#/sealant/kind": help Statement::new("forms-sealant-kind-help"), is Code(SealantKind::DEFAULT.code());

        Specialist Pavement "#/slab/edge_distance": label Statement::new("forms-slab-edge"), help Statement::new("forms-slab-edge-help");
        Specialist Pavement "#/slab/is_suspended": label Statement::new("forms-slab-suspended"), help Statement::new("forms-slab-suspended-help"), is Flag(false);

        Specialist Cuts "#/crossings": label Statement::new("forms-crossings"), help Statement::new("forms-crossings-help"), is Count(0);
        Specialist Cuts "#/lead_in_slot/width": help Statement::new("forms-lead-in-slot-width-help"), or Statement::new("forms-lead-in-slot-width-default");
        Specialist Cuts "#/lead_in_slot/depth": help Statement::new("forms-lead-in-slot-depth-help"), or Statement::new("forms-lead-in-slot-depth-default");
        Specialist Cuts "#/lead_in_slot/cover": help Statement::new("forms-lead-in-slot-cover-help"), or Statement::new("forms-lead-in-slot-cover-default");
        Specialist Cuts "#/saw/blade_diameter": help Statement::new("forms-blade-help"), is Quantity(usual::USUAL_BLADE);
        Specialist Cuts "#/saw/corner": help Statement::new("forms-corner-help"), or Statement::new("forms-corner-default");
        Specialist Cuts "#/saw/core_diameter": help Statement::new("forms-core-diameter-help"), is Quantity(usual::USUAL_CORE);
        Specialist Cuts "#/saw/blade_life": label Statement::new("forms-blade-life"), help Statement::new("forms-blade-life-help"), is Quantity(usual::USUAL_BLADE_LIFE);
        Specialist Cuts "#/saw/owns_blades": label Statement::new("forms-owns-blades"), help Statement::new("forms-owns-blades-help"), is Flag(false);
        Specialist Cuts "#/backer_rod/form": help Statement::new("forms-rod-form-help"), is Code(RodForm::Pieces.code());
        Specialist Cuts "#/backer_rod/piece_length": help Statement::new("forms-rod-piece-help"), is Quantity(usual::USUAL_ROD_PIECE);
        Specialist Cuts "#/backer_rod/spacing": help Statement::new("forms-rod-spacing-help"), is Quantity(usual::USUAL_ROD_SPACING);
        Specialist Cuts "#/backer_rod/diameter": help Statement::new("forms-rod-diameter-help"), or Statement::new("forms-rod-diameter-default");
        Specialist Cuts "#/agency_minimum/agency": label Statement::new("forms-agency"), help Statement::new("forms-agency-help");
        Specialist Cuts "#/agency_minimum/slot_width": label Statement::new("forms-agency-width"), help Statement::new("forms-agency-width-help");

        Specialist Wire "#/wire/insulation_rating": label Statement::new("forms-insulation-rating"), help Statement::new("forms-insulation-rating-help"), like ["194 °F", "90 °C"];
        Specialist Wire "#/wire_allowance_percent": label Statement::new("forms-wire-allowance"), help Statement::new("forms-wire-allowance-help"), is Number(usual::USUAL_WIRE_ALLOWANCE_PERCENT);

        Specialist Detector "#/detector/frequency_min_khz": help Statement::new("forms-from-unit-sheet"), is Number(limits.frequency_min_khz), or Statement::new("forms-limit-default");
        Specialist Detector "#/detector/frequency_max_khz": help Statement::new("forms-from-unit-sheet"), is Number(limits.frequency_max_khz), or Statement::new("forms-limit-default");
        Specialist Detector "#/detector/tuning_capacitance_nf": label Statement::new("forms-tuning-capacitance"), help Statement::new("forms-from-unit-sheet");
        Specialist Detector "#/wiring": help Statement::new("forms-wiring-help"), is Code(Wiring::Separate.code());

        Specialist Sealant "#/sealant/cartridge": help Statement::new("forms-cartridge-help"), is Quantity(usual::USUAL_CARTRIDGE);
        Specialist Sealant "#/sealant/finish_below_surface": help Statement::new("forms-finish-help"), is Quantity(usual::USUAL_FINISH);
        Specialist Sealant "#/waste_percent": label Statement::new("forms-waste"), help Statement::new("forms-waste-help"), is Number(usual::USUAL_WASTE_PERCENT);
        Specialist Sealant "#/sealant/made_on": label Statement::new("forms-made-on"), help Statement::new("forms-made-on-help");
        Specialist Sealant "#/sealant/shelf_life": help Statement::new("forms-shelf-life-help"), is Quantity(SHELF_LIFE);
        Specialist Sealant "#/sealant/data_sheet/skin_over": help Statement::new("forms-from-sealant-sheet"), or Statement::new("forms-by-sealant-default");
        Specialist Sealant "#/sealant/data_sheet/open_to_traffic": label Statement::new("forms-traffic-time"), help Statement::new("forms-from-sealant-sheet"), or Statement::new("forms-by-sealant-default");
        Specialist Sealant "#/sealant/data_sheet/full_cure": label Statement::new("forms-full-cure"), help Statement::new("forms-from-sealant-sheet"), like ["3 d", "3 d"], or Statement::new("forms-by-sealant-default");
        Specialist Sealant "#/sealant/data_sheet/depth_per_day": label Statement::new("forms-cured-depth"), help Statement::new("forms-from-sealant-sheet"), or Statement::new("forms-by-sealant-default");
        Specialist Sealant "#/sealant/data_sheet/pot_life": label Statement::new("forms-pot-life"), help Statement::new("forms-from-sealant-sheet"), like ["10 min", "10 min"];
        Specialist Sealant "#/sealant/data_sheet/at_temperature": help Statement::new("forms-sheet-temperature-help"), like ["73.4 °F", "23 °C"], is Quantity(REFERENCE_TEMPERATURE);
        Specialist Sealant "#/sealant/data_sheet/at_relative_humidity_percent": help Statement::new("forms-sheet-humidity-help"), is Number(REFERENCE_HUMIDITY_PERCENT);
        Specialist Sealant "#/sealant/data_sheet/minimum_application_temperature": help Statement::new("forms-coldest-help"), is Quantity(SealantKind::DEFAULT.minimum_temperature());
        Specialist Sealant "#/sealant/data_sheet/maximum_application_temperature": label Statement::new("forms-hottest"), help Statement::new("forms-hottest-help"), like ["100 °F", "38 °C"];
        Specialist Sealant "#/sealant/data_sheet/activation_energy_kj_per_mol": help Statement::new("forms-activation-help"), or Statement::new("forms-by-sealant-default");
        Specialist Sealant "#/sealant/data_sheet/pour_temperature": help Statement::new("forms-pour-help"), or Statement::new("forms-by-sealant-default");
        Specialist Sealant "#/sealant/data_sheet/damp_slot_allowed": help Statement::new("forms-damp-slot-help"), is Flag(false);

        Specialist Day "#/start": help Statement::new("forms-start-help");
        Specialist Day "#/needed_open_by": label Statement::new("forms-needed-open"), help Statement::new("forms-needed-open-help");
        Specialist Day "#/surface_condition": label Statement::new("forms-slot-state"), help Statement::new("forms-slot-state-help"), or Statement::new("forms-slot-state-default");
        Specialist Day "#/work_duration": help Statement::new("forms-work-duration-help"), or Statement::new("forms-work-duration-default");

        Specialist Work "#/productivity/set_up": label Statement::new("forms-set-up"), help Statement::new("forms-set-up-help"), is Quantity(usual::SET_UP_TIME);
        Specialist Work "#/productivity/saw_speed": label Statement::new("forms-saw-speed"), help Statement::new("forms-saw-speed-help"), or Statement::new("forms-saw-speed-default");
        Specialist Work "#/productivity/core": label Statement::new("forms-core-time"), help Statement::new("forms-core-time-help"), is Quantity(usual::CORE_TIME);
        Specialist Work "#/productivity/cleaning_speed": label Statement::new("forms-cleaning-speed"), help Statement::new("forms-cleaning-speed-help"), is Quantity(usual::CLEANING_SPEED);
        Specialist Work "#/productivity/pull": label Statement::new("forms-pull-time"), help Statement::new("forms-pull-time-help"), is Quantity(usual::PULL_TIME);
        Specialist Work "#/productivity/burial": label Statement::new("forms-burial-time"), help Statement::new("forms-burial-time-help"), is Quantity(usual::BURIAL_TIME);
        Specialist Work "#/productivity/sealing_speed": label Statement::new("forms-sealing-speed"), help Statement::new("forms-sealing-speed-help"), is Quantity(usual::SEALING_SPEED);
        Specialist Work "#/productivity/termination": label Statement::new("forms-termination-time"), help Statement::new("forms-termination-time-help"), is Quantity(usual::TERMINATION_TIME);
        Specialist Work "#/productivity/test": label Statement::new("forms-test-time"), help Statement::new("forms-test-time-help"), is Quantity(usual::TEST_TIME);

        Specialist Prices "#/prices/currency": label Statement::new("forms-currency"), help Statement::new("forms-currency-help");
        Specialist Prices "#/prices/hourly_rate": label Statement::new("forms-hourly-rate"), help Statement::new("forms-hourly-rate-help");

        Specialist Plan "#/parts": label Statement::new("forms-parts"), help Statement::new("forms-parts-help"), or Statement::new("forms-parts-default");
        Specialist Plan "#/include": label Statement::new("forms-include"), help Statement::new("forms-include-help"), is Codes(Vec::new());
    }
}
