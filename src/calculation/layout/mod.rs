//! The typed job: what every part of a plan reads, decided once.
//!
//! - `marks`: the letters of loops
//! - `sightings`: what a vehicle makes over a loop, or a row of loops, at its hardest place
//! - `reach`: where a vehicle comes to be seen, and where the unit lets go of it
//! - `leaf`: what the metal leaf makes over a loop, closed, open and on its way
//! - `channel`: loops, joined as they come to the unit
//! - `coupling`: how two loops on the ground couple
//! - `step`: the step that a channel is set to
//! - `job_layout`: the loops that are laid, each with its mark, its place, its lead-in and its step

mod channel;
mod coupling;
mod job_layout;
mod leaf;
mod marks;
mod reach;
mod sightings;
mod step;

pub use channel::{ChannelLoop, DetectorChannel, MeasuredLoop, channel_weights, join_channels};
pub use coupling::{PlacedCoil, coupling};
pub use job_layout::{JobLayout, LaidLoop, LoopPlacement};
pub use leaf::{Leaf, LeafChanges, LeafState, LoopBesideLeaf};
pub use marks::LoopMark;
pub use sightings::{ClassSighting, Lane, LoopRow};
pub use step::{StepLadder, StepVerdict, candidate_steps, choose_step, design_step};
