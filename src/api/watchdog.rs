//! The watchdog of the service manager (`sd_notify(3)`, `WatchdogSec=` of the unit): it hears from the process only while every worker
//! that serves still gets its turn, and starts the process again when it hears nothing for the time that it has set.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, LazyLock, Mutex, PoisonError, Weak};
use std::thread;
use std::time::Duration;

use sd_notify::NotifyState;

/// The workers of this process, if a service manager wants to hear of them.
static HEARTBEATS: LazyLock<Option<Arc<Heartbeats>>> = LazyLock::new(start);

/// Has the worker that calls this watched. Called by each as it starts, also by one that takes the place of another.
pub fn watch_worker() {
    if let Some(heartbeats) = HEARTBEATS.as_ref() {
        heartbeats.add_worker();
    }
}

/// Starts the thread that tells the service manager, if there is one.
fn start() -> Option<Arc<Heartbeats>> {
    let heartbeats = Arc::new(Heartbeats::every(sd_notify::watchdog_enabled()?));
    let watched = heartbeats.clone();
    let told = thread::Builder::new().name("watchdog".to_owned()).spawn(move || {
        loop {
            if watched.are_all_beating() {
                if let Err(error) = sd_notify::notify(&[NotifyState::Watchdog]) {
                    tracing::warn!("the service manager was not told that the instance is alive: {error}");
                }
            } else {
                tracing::error!("a worker does not answer; the service manager is told nothing");
            }
            thread::sleep(watched.interval);
        }
    });
    told.inspect_err(|error| tracing::error!("there is no watchdog: {error}")).ok().map(|_| heartbeats)
}

/// The heartbeats of the workers.
struct Heartbeats {
    /// The time in which each must beat once. Workers beat four times as often.
    interval: Duration,
    /// Whether each has beaten since the last look. A worker that has ended has none.
    beats: Mutex<Vec<Weak<AtomicBool>>>,
}

impl Heartbeats {
    /// For a service manager that waits so long.
    fn every(patience: Duration) -> Self {
        Self { interval: patience / 4, beats: Mutex::default() }
    }

    /// Lets this thread's worker beat until it ends.
    fn add_worker(&self) {
        let beat = Arc::new(AtomicBool::new(true));
        self.beats.lock().unwrap_or_else(PoisonError::into_inner).push(Arc::downgrade(&beat));
        let pause = self.interval / 4;
        actix_web::rt::spawn(async move {
            loop {
                beat.store(true, Ordering::Relaxed);
                tokio::time::sleep(pause).await;
            }
        });
    }

    /// Whether each worker has beaten since this was asked the last time.
    fn are_all_beating(&self) -> bool {
        let mut beats = self.beats.lock().unwrap_or_else(PoisonError::into_inner);
        beats.retain(|beat| beat.strong_count() > 0);
        // Each is asked, so that each begins anew.
        let beating = beats.iter().filter(|beat| beat.upgrade().is_none_or(|beat| beat.swap(false, Ordering::Relaxed)));
        beating.count() == beats.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[actix_web::test]
    async fn a_worker_that_does_not_answer_is_seen_until_it_answers_again() {
        let heartbeats = Heartbeats::every(Duration::from_millis(400));
        heartbeats.add_worker();
        heartbeats.add_worker();
        assert!(heartbeats.are_all_beating());
        // This thread is the worker: while it sleeps, nothing beats.
        thread::sleep(2 * heartbeats.interval);
        assert!(!heartbeats.are_all_beating());
        tokio::time::sleep(2 * heartbeats.interval).await;
        assert!(heartbeats.are_all_beating());
    }

    #[test]
    fn a_worker_that_has_ended_is_not_waited_for() {
        let heartbeats = Heartbeats::every(Duration::from_millis(400));
        actix_web::rt::System::new().block_on(async { heartbeats.add_worker() });
        assert!(heartbeats.are_all_beating() && heartbeats.are_all_beating());
    }
}
