//! What the trade knows: the closed lists of requests, the figures behind them, and where each figure comes from.
//!
//! - [`sources`]: the one register of sources; every figure and finding names its entries.
//! - [`site`]: barriers, surfaces, site hazards, constructions.
//! - [`roles`]: what loops are for.
//! - [`layout`]: distances and sizes of layouts.
//! - [`vehicles`]: the classes of vehicles.
//! - [`wires`]: wire sizes and what is usual round them.
//! - [`detectors`]: the envelopes of detector units.
//! - [`sealants`]: the families of sealants, and how fast each cures.
//! - [`materials`]: what is loaded on the van, and how long the work takes.
//! - [`sealing`]: when sealant may be applied: slot conditions, milestones, verdicts, handling, limits of the weather.
//! - [`job_steps`]: the order of an installation, and what proves it.
//! - [`faults`]: what fails, how often, when it shows, and where it sits.
//! - [`fault_signs`]: what people notice of a fault, and how it shows without a meter.
//! - [`fault_tests`]: the tests that separate faults, and what each takes.
//! - [`existing_loops`]: loops that are there already, and whether to keep one.
//! - [`meter_readings`]: where meters are connected, and what insulation means.
//! - [`finding_codes`]: codes, titles and descriptions of findings; messages are written where a finding is made.
//! - [`cautions`]: what can hurt someone.

pub mod burial;
pub mod cautions;
pub mod detectors;
pub mod existing_loops;
pub mod fault_signs;
pub mod fault_tests;
pub mod faults;
pub mod finding_codes;
pub mod job_steps;
pub mod layout;
pub mod lead_ins;
pub mod materials;
pub mod meter_readings;
pub mod roles;
pub mod sealants;
pub mod sealing;
pub mod site;
pub mod sources;
pub mod vehicles;
pub mod wires;

pub use sources::Sourced;
