//! The pace of the crew in typed quantities, and how long the saw takes.

use uom::si::f64::{Length, Time, Velocity};

use super::echo::ProductivityEcho;
use crate::practice::materials::depth_per_pass;
use crate::practice::site::Surface;

/// How fast the crew works.
pub struct ResolvedProductivity {
    /// Once for the job.
    pub set_up: Time,
    /// Of the saw at the depth of one pass, when given.
    pub saw_speed: Option<Velocity>,
    /// For one corner.
    pub core: Time,
    /// Along the slots.
    pub cleaning_speed: Velocity,
    /// For one pull.
    pub pull: Time,
    /// For one buried loop.
    pub burial: Time,
    /// Along the slots.
    pub sealing_speed: Velocity,
    /// For the ends of one loop.
    pub termination: Time,
    /// For the readings of one loop, once.
    pub test: Time,
}

impl ResolvedProductivity {
    /// The time to saw a length at a depth, all passes together.
    pub fn sawing_time(&self, length: Length, depth: Length, surface: Surface) -> Time {
        match self.saw_speed {
            Some(speed) => f64::from(saw_passes(depth)) * length / speed,
            None => length / surface.saw_speed(depth),
        }
    }

    /// The echo of the report.
    pub fn echo(&self) -> ProductivityEcho {
        ProductivityEcho {
            set_up: self.set_up.into(),
            saw_speed: self.saw_speed.map(Into::into),
            core: self.core.into(),
            cleaning_speed: self.cleaning_speed.into(),
            pull: self.pull.into(),
            burial: self.burial.into(),
            sealing_speed: self.sealing_speed.into(),
            termination: self.termination.into(),
            test: self.test.into(),
        }
    }
}

/// The passes of the saw that a depth takes.
pub fn saw_passes(depth: Length) -> u32 {
    let exact: f64 = (depth / depth_per_pass()).into();
    (exact - 1e-9).ceil().max(1.0) as u32
}
