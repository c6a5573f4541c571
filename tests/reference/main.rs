//! The physics against published and independently computed values, and against the laws that it must obey.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod air;
mod calibration;
mod call_backs;
mod cure;
mod cure_laws;
mod draw;
mod existing_loops;
mod faults;
mod laws;
mod plates;
mod published;
mod quantities;
mod sealing;
