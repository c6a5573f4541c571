//! The service through its front door: every test speaks HTTP to a real instance on a free port.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]
#![allow(clippy::needless_pass_by_value, reason = "JSON literals read better by value")]

mod bills;
mod body;
mod budget;
mod call_backs;
mod characteristics;
mod coding;
mod cors;
mod cure_guidance;
mod defaults;
mod description;
mod detector_compatibility;
mod drawings;
mod drawings_in_languages;
mod drawings_of_work;
mod examples;
mod existing_loop;
mod failures;
mod fault_finding;
mod forecast;
mod forecast_callers;
mod forecast_documents;
mod forecast_memory;
mod forecast_source;
mod harness;
mod health;
mod http;
mod installation_plan;
mod instance;
mod job_sheet;
mod keys;
mod languages;
mod laws;
mod limits;
mod links;
mod log;
mod material_estimate;
mod pages;
mod process;
mod readme;
mod reference_tables;
mod refusals;
mod released;
mod reports;
mod requests;
mod send;
mod sizing;
mod sizing_vehicles;
mod socket;
mod summaries;
#[cfg(feature = "otlp")]
mod traces;
mod unused;
mod vehicle_response;
mod weather_service;
