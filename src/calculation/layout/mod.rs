//! The typed job: what every part of a plan reads, decided once.
//!
//! - `marks`: the letters of loops
//! - `sightings`: what a vehicle makes over a loop, or a row of loops, at its hardest place
//! - `reach`: where a vehicle comes to be seen, and where the unit lets go of it
//! - `leaf`: what the metal leaf makes over a loop, closed, open and on its way
//! - `channel`: loops, joined as they come to the unit
//! - `coupling`: how two loops on the ground couple
//! - `step`: the step that a channel is set to
//! - `lead_in_way`, `way_to_unit`: the way of each pair from its loop to the unit, and how it is decided
//! - `slot_end`: where the slot of a pair ends, and its way in words; `home_run`: cable of its own gauge from there on
//! - `job_layout`: the loops that are laid, each with its mark, its place, its lead-in and its step

mod channel;
mod coupling;
mod home_run;
mod job_layout;
mod lead_in_way;
mod leaf;
mod marks;
mod reach;
mod sightings;
mod slot_end;
mod step;
mod way_to_unit;

pub use channel::{ChannelLoop, DetectorChannel, MeasuredLoop, channel_weights, join_channels};
pub use coupling::{PlacedCoil, coupling};
pub use home_run::HomeRun;
pub use job_layout::{JobLayout, LaidLoop, LoopPlacement};
pub use lead_in_way::{LeadInWay, SharedSlotKey};
pub use leaf::{Leaf, LeafChanges, LeafState, LoopBesideLeaf};
pub use marks::LoopMark;
pub use sightings::{ClassSighting, Lane, LoopRow};
pub use slot_end::{SlotEnd, describe_way, slot_to_edge};
pub use step::{StepLadder, StepVerdict, candidate_steps, choose_step, design_step};
pub use way_to_unit::lay_ways;
