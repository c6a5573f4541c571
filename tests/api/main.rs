//! The service through its front door: every test speaks HTTP to a real instance on a free port.

mod examples;
mod harness;
mod readme;
