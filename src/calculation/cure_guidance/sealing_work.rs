//! How long the sealing lasts, and what an estimate knows of the work before it.

use uom::si::f64::Time;
use uom::si::time::minute;

use crate::calculation::input::WorkDuration;
use crate::calculation::report::{Diagnostics, FieldPath, Statement};
use crate::practice::sealing::{WORK_DURATION, cartridge_time, longest_work};
use crate::practice::sources::Source;

/// What the estimate of a plan says of its work.
#[derive(Clone, Copy, Debug)]
pub struct EstimatedWork {
    /// How long all slots take to seal.
    pub sealing: Time,
    /// How many cartridges go in; 0 for sealant that comes in none.
    pub cartridges: u64,
    /// From the first cut to the first foot of sealant.
    pub before_sealing: Time,
}

/// The sealing of the whole job.
#[derive(Clone, Copy, Debug)]
pub struct SealingWork {
    /// From the first foot to the last.
    pub duration: Time,
    /// How long it takes to empty one cartridge.
    pub cartridge: Time,
    /// How long before the start a wet saw begins, where a plan cuts on the same day.
    pub sawing: Option<Time>,
}

impl SealingWork {
    /// The time that was sent, else that of an estimate in whole minutes, else the usual one; `None` after an error.
    pub fn resolve(
        sent: Option<&WorkDuration>,
        estimated: Option<EstimatedWork>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<Self> {
        let duration = match (sent, estimated) {
            (None, Some(work)) => {
                // Rounded up, so that the text of the assumption gives the same answer when it is sent.
                let minutes = work.sealing.min(longest_work()).get::<minute>().ceil().max(1.0);
                let reason = Statement::new("cure-work-of-estimate");
                diagnostics.add_assumption(at, format!("{minutes} min"), reason, &[Source::OwnChoice]);
                Some(Time::new::<minute>(minutes))
            }
            _ => diagnostics.parse_or_default::<WorkDuration>(
                at,
                sent,
                WORK_DURATION,
                Statement::new("cure-usual-work"),
                Source::OwnChoice,
            ),
        }?;
        // What was sent holds pauses, and other crews: the pace is that of the estimate.
        let estimate = estimated.filter(|work| work.cartridges > 0);
        let cartridge = estimate.map_or(cartridge_time(), |work| work.sealing / work.cartridges as f64);
        Some(Self { duration, cartridge, sawing: estimated.map(|work| work.before_sealing) })
    }
}
