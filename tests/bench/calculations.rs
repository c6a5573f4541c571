//! How long each calculation takes on one core, from parsed request to report: `cargo bench`.
//!
//! Absolute times depend on the machine; compare within one run.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use loopwright::calculation::cure_guidance::CureGuidanceRequest;
use loopwright::calculation::detector_compatibility::DetectorCompatibilityRequest;
use loopwright::calculation::existing_loop::ExistingLoopRequest;
use loopwright::calculation::fault_finding::FaultFindingRequest;
use loopwright::calculation::installation_plan::InstallationPlanRequest;
use loopwright::calculation::loop_characteristics::LoopCharacteristicsRequest;
use loopwright::calculation::loop_sizing::LoopSizingRequest;
use loopwright::calculation::material_estimate::MaterialEstimateRequest;
use loopwright::calculation::vehicle_response::{self, VehicleResponseRequest};
use loopwright::calculation::{Calculation, Example};

/// Measures a request given as JSON text.
fn measure<C: Calculation>(criterion: &mut Criterion, name: &str, request: &str) {
    let request: C = serde_json::from_str(request).expect("a sound request");
    criterion.bench_function(&format!("{}/{name}", C::NAME), |bencher| {
        bencher.iter(|| black_box(&request).answer().map_err(|invalid| invalid.errors.len()).expect("an answer"));
    });
}

fn examples<C: Calculation>(criterion: &mut Criterion) {
    for Example { name, request, .. } in C::EXAMPLES {
        measure::<C>(criterion, name, request);
    }
}

/// The requests of `usual/` are also those of `tests/load/alternate`.
fn calculations(criterion: &mut Criterion) {
    macro_rules! usual {
        ($request:ty, $calculation:literal, $name:literal) => {
            measure::<$request>(criterion, $name, include_str!(concat!("usual/", $calculation, ".", $name, ".json")));
        };
    }
    vehicle_response::prepare();
    usual!(LoopCharacteristicsRequest, "loop-characteristics", "plain");
    examples::<LoopCharacteristicsRequest>(criterion);
    usual!(VehicleResponseRequest, "vehicle-response", "profile_of_41_points");
    examples::<VehicleResponseRequest>(criterion);
    usual!(LoopSizingRequest, "loop-sizing", "three_roles_three_vehicles");
    usual!(LoopSizingRequest, "loop-sizing", "hardest_search");
    examples::<LoopSizingRequest>(criterion);
    examples::<DetectorCompatibilityRequest>(criterion);
    examples::<MaterialEstimateRequest>(criterion);
    usual!(InstallationPlanRequest, "installation-plan", "three_roles_three_vehicles_72_hours");
    usual!(InstallationPlanRequest, "installation-plan", "with_a_motorcycle");
    examples::<InstallationPlanRequest>(criterion);
    examples::<FaultFindingRequest>(criterion);
    examples::<ExistingLoopRequest>(criterion);
    examples::<CureGuidanceRequest>(criterion);
    measure::<CureGuidanceRequest>(criterion, "fourteen_days_hourly", &fortnight());
}

/// The worst requests within the limits, as `worst_requests` found them.
fn worst(criterion: &mut Criterion) {
    macro_rules! worst {
        ($request:ty, $file:literal) => {
            measure::<$request>(criterion, concat!("worst/", $file), include_str!(concat!("worst/", $file, ".json")));
        };
    }
    worst!(LoopSizingRequest, "loop-sizing.stock");
    worst!(LoopSizingRequest, "loop-sizing.long_leaves");
    worst!(InstallationPlanRequest, "installation-plan.stock");
    worst!(InstallationPlanRequest, "installation-plan.long_leaves");
    worst!(DetectorCompatibilityRequest, "detector-compatibility.all_loops");
    worst!(DetectorCompatibilityRequest, "detector-compatibility.one_channel");
    worst!(DetectorCompatibilityRequest, "detector-compatibility.wide_over_steel");
    worst!(VehicleResponseRequest, "vehicle-response.widest");
    worst!(VehicleResponseRequest, "vehicle-response.long_quadrupole");
}

/// A cure under two weeks of hours.
fn fortnight() -> String {
    let hour = |index: u32| {
        let (day, hour, air) = (1 + index / 24, index % 24, 8 + index % 24 / 2);
        format!(
            r#"{{"time": "2026-05-{day:02}T{hour:02}:00:00-04:00", "air": "{air} °C", "relative_humidity_percent": 70,
                "precipitation_probability_percent": 10}}"#
        )
    };
    let hours: Vec<_> = (0..336).map(hour).collect();
    format!(
        r#"{{"sealant": {{"kind": "one_part_moisture_cure"}}, "start": "2026-05-01T12:00:00-04:00", "surface_condition": "dry",
            "weather": {{"conditions": [{}]}}}}"#,
        hours.join(",")
    )
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(20).measurement_time(std::time::Duration::from_secs(2)).without_plots();
    targets = calculations, worst
}
criterion_main!(benches);
