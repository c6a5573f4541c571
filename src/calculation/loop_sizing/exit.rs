//! The exit loop: how long a driver waits, and how long the gate must stay open for the slowest.

use uom::si::f64::{Length, Time, Velocity};
use uom::si::time::second;
use uom::si::velocity::{kilometer_per_hour, mile_per_hour};

use super::placement::{farthest_exit, run_up};
use super::resolved::ResolvedLoopSizing;
use crate::calculation::layout::LaidLoop;
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::layout::slowest_approach;
use crate::practice::roles::Role;
use crate::quantity::UnitSystem;

/// The times of an exit loop.
#[derive(Clone, Copy, Debug)]
pub struct ExitTimes {
    /// How long a driver waits before the gate is open; `None` unless speed and opening time are known.
    pub wait: Option<Time>,
    /// How long the gate must stay open after a vehicle has left the loop, for one at walking pace to reach what holds the gate.
    close_timer: Time,
}

impl ExitTimes {
    /// The exit loop among the loops that are laid, and its times; `None` without one.
    pub fn of<'l>(loops: &'l [LaidLoop], job: &ResolvedLoopSizing) -> Option<(&'l LaidLoop, Self)> {
        let laid = loops.iter().find(|laid| laid.role == Role::Exit)?;
        let distance = laid.place.distance();
        let speed_and_time = job.opening.approach_speed.zip(job.opening.opening_time);
        let wait = speed_and_time.map(|(speed, time)| (time - distance / speed).max(Time::default()));
        let holds = |other: &&LaidLoop| other.role.holds_the_gate() && other.role.fits(job.opening.barrier);
        let holding = loops.iter().filter(holds).filter(|other| other.place.to <= laid.place.from);
        let held_from = holding.map(|other| other.place.to).fold(Length::default(), Length::max);
        let way = (laid.place.from - held_from).max(Length::default());
        Some((laid, Self { wait, close_timer: way / slowest_approach() }))
    }

    /// The least setting of the close timer, whole seconds. A way that is tidy in feet is not exact in metres.
    pub fn close_timer_seconds(&self) -> f64 {
        (self.close_timer.get::<second>() - 1e-6).ceil()
    }
}

/// States what the place of the exit loop means, and its times.
pub fn judge(exit: &LaidLoop, times: &ExitTimes, job: &ResolvedLoopSizing, diagnostics: &mut Diagnostics) {
    let opening = FieldPath::BODY.field("opening");
    let (distance, leg, system) = (exit.place.distance(), exit.coil.along_travel, job.system());
    let mut state = |finding: Finding| diagnostics.add_finding(finding.on(Some(Role::Exit)));
    match run_up(job) {
        None => {
            let message = Statement::new("sizing-exit-time-unknown");
            let finding = Finding::new(FindingCode::ExitTimeUnknown, Level::Note, &opening, message);
            let sent = [
                ("approach_speed", job.opening.approach_speed.is_some()),
                ("opening_time", job.opening.opening_time.is_some()),
            ];
            let missing = sent.into_iter().filter(|(_, is_sent)| !is_sent);
            state(missing.fold(finding, |finding, (field, _)| finding.send(&opening.field(field))));
        }
        Some(wanted) if distance < 0.999 * wanted => {
            let wait = times.wait.unwrap_or_default();
            let serving_speed = job.opening.opening_time.map_or(Velocity::default(), |time| distance / time);
            let (speed, speed_unit) = match system {
                UnitSystem::UsCustomary => (serving_speed.get::<mile_per_hour>(), "mph"),
                UnitSystem::Metric => (serving_speed.get::<kilometer_per_hour>(), "km/h"),
            };
            let message = Statement::new("sizing-exit-far-away")
                .length("run_up", wanted, system)
                .length("distance_from_barrier", distance, system)
                .quantity("wait", wait.get::<second>(), Decimals::AtMost(0), "s")
                .quantity("serving_speed", speed, Decimals::AtMost(1), speed_unit);
            state(
                Finding::new(FindingCode::ExitFarAway, Level::Warning, &opening.field("approach_speed"), message)
                    .length("run_up", wanted, system)
                    .length("distance_from_barrier", distance, system)
                    .figure("wait", wait.get::<second>(), "s")
                    .send(&opening.field("approach_speed"))
                    .send(&opening.field("opening_time")),
            );
        }
        Some(_) => {}
    }
    let needed = distance + leg;
    if let Some(drive) = job.opening.drive_length.filter(|drive| needed > 1.000_001 * *drive) {
        let message = Statement::new("sizing-drive-too-short")
            .length("drive_length", drive, system)
            .length("needed", needed, system);
        state(
            Finding::new(FindingCode::DriveTooShort, Level::Stop, &opening.field("drive_length"), message)
                .length("drive_length", drive, system)
                .length("needed", needed, system)
                .length("farthest", farthest_exit(job, leg), system)
                .send(&FieldPath::BODY.field("roles")),
        );
    }
    let timer = times.close_timer_seconds();
    let message = Statement::new("sizing-exit-reopens").quantity("close_timer_min", timer, 0, "s");
    state(Finding::new(FindingCode::ExitReopens, Level::Note, &FieldPath::BODY.field("roles"), message).figure(
        "close_timer_min",
        timer,
        "s",
    ));
}
