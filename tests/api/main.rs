//! The service through its front door: every test speaks HTTP to a real instance on a free port.

mod body;
mod examples;
mod harness;
mod refusals;
mod requests;
mod socket;
mod unused;
