//! The typed job: what every part of a plan reads, decided once.
//!
//! - `marks`: the letters of loops
//! - `sightings`: what a vehicle makes over a loop, or a row of loops, at its hardest place
//! - `channel`: loops, joined as they come to the unit
//! - `coupling`: how two loops on the ground couple
//! - `step`: the step that a channel is set to
//! - `job_layout`: the loops that are laid, each with its mark, its place, its lead-in and its step

mod channel;
mod coupling;
mod job_layout;
mod marks;
mod sightings;
mod step;

pub use channel::{ChannelLoop, DetectorChannel, MeasuredLoop, channel_weights, join_channels};
pub use coupling::{PlacedCoil, coupling};
pub use job_layout::{JobLayout, LaidLoop, LoopPlacement};
pub use marks::LoopMark;
pub use sightings::{ClassSighting, Lane, LoopRow};
pub use step::{candidate_steps, choose_step, design_step};
