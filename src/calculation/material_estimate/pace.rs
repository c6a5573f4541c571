//! How fast the crew works: the caller's figures, or those assumed.

use uom::si::f64::{Length, Time, Velocity};

use super::request::Productivity;
use crate::calculation::report::{Diagnostics, FieldPath};
use crate::practice::materials::{
    BURIAL_TIME, CLEANING_SPEED, CORE_TIME, PULL_TIME, SEALING_SPEED, SET_UP_TIME, TERMINATION_TIME, TEST_TIME,
    depth_per_pass, saw_speed,
};
use crate::practice::site::Surface;
use crate::practice::sources::Source;

/// The pace of each step.
pub struct Pace {
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
    /// For the readings of one loop.
    pub test: Time,
}

const REASON: &str = "No public figure for the pace of a crew exists; send your own.";

impl Pace {
    /// Reads the caller's figures, and takes the usual ones for the others.
    pub fn read(sent: Option<&Productivity>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let none = Productivity::default();
        let sent = sent.unwrap_or(&none);
        let mut time = |name, text: Option<&_>, default| {
            diagnostics.parse_or_default(&at.field(name), text, default, REASON, Source::OwnChoice)
        };
        let set_up = time("set_up", sent.set_up.as_ref(), SET_UP_TIME);
        let core = time("core", sent.core.as_ref(), CORE_TIME);
        let pull = time("pull", sent.pull.as_ref(), PULL_TIME);
        let burial = time("burial", sent.burial.as_ref(), BURIAL_TIME);
        let termination = time("termination", sent.termination.as_ref(), TERMINATION_TIME);
        let test = time("test", sent.test.as_ref(), TEST_TIME);
        let mut speed = |name, text: Option<&_>, default| {
            diagnostics.parse_or_default(&at.field(name), text, default, REASON, Source::OwnChoice)
        };
        let cleaning_speed = speed("cleaning_speed", sent.cleaning_speed.as_ref(), CLEANING_SPEED);
        let sealing_speed = speed("sealing_speed", sent.sealing_speed.as_ref(), SEALING_SPEED);
        let saw_at = at.field("saw_speed");
        if sent.saw_speed.is_none() {
            let value = "6 ft/min in asphalt, 3 ft/min in concrete, at 1-1/2 in; less the deeper";
            diagnostics.add_assumption(&saw_at, value, REASON, &[Source::OwnChoice]);
        }
        let saw_speed = diagnostics.parse_optional(&saw_at, sent.saw_speed.as_ref());
        Some(Self {
            set_up: set_up?,
            saw_speed,
            core: core?,
            cleaning_speed: cleaning_speed?,
            pull: pull?,
            burial: burial?,
            sealing_speed: sealing_speed?,
            termination: termination?,
            test: test?,
        })
    }

    /// To saw a length at a depth, all passes.
    pub fn sawing(&self, length: Length, depth: Length, surface: Surface) -> Time {
        match self.saw_speed {
            Some(speed) => f64::from(passes(depth)) * length / speed,
            None => length / saw_speed(surface, depth),
        }
    }
}

/// The passes that a depth takes.
pub fn passes(depth: Length) -> u32 {
    let exact: f64 = (depth / depth_per_pass()).into();
    (exact - 1e-9).ceil().max(1.0) as u32
}
