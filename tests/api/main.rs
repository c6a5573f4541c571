//! The service through its front door: every test speaks HTTP to a real instance on a free port.

mod body;
mod cors;
mod description;
mod edge;
mod examples;
mod fault_finding;
mod harness;
mod health;
mod pages;
mod process;
mod readme;
mod reference_tables;
mod refusals;
mod requests;
mod sizing_vehicles;
mod socket;
mod unused;
mod vehicle_response;
