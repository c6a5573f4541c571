//! The service through its front door: every test speaks HTTP to a real instance on a free port.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod body;
mod characteristics;
mod cors;
mod description;
mod edge;
mod examples;
mod harness;
mod health;
mod laws;
mod pages;
mod process;
mod reference_tables;
mod refusals;
mod reports;
mod requests;
mod sizing;
mod socket;
mod unused;
