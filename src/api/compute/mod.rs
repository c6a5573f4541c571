//! Where calculations run: threads of their own, as many as cores, behind a bounded queue that is fair between callers. The threads that
//! serve never compute what takes long, so connections and probes are answered whatever is asked.

mod fair_queue;
pub mod for_request;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

use tokio::sync::oneshot;

use fair_queue::{FairQueue, Ticket};

type Job = Box<dyn FnOnce() + Send>;

/// The threads that compute, and what waits for them.
pub struct ComputePool(Arc<SharedQueue>);

struct SharedQueue {
    state: Mutex<QueueState>,
    has_work: Condvar,
}

struct QueueState {
    waiting: FairQueue<Job>,
    is_closed: bool,
}

/// What a job gave, and how long it took.
pub struct Computed<T> {
    /// What it gave.
    pub value: T,
    /// How long a thread was busy with it.
    pub took: Duration,
}

/// Why a job gave nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotComputed {
    /// The queue is full, or the job waited for longer than it may.
    Overloaded,
    /// It panicked.
    Panicked,
}

impl SharedQueue {
    fn state(&self) -> MutexGuard<'_, QueueState> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Removes a job that nobody waits for any more; whether it was still waiting.
    fn remove(&self, caller: u64, ticket: Ticket) -> bool {
        let removed = self.state().waiting.remove(caller, ticket);
        removed.is_some()
    }

    /// Runs jobs until the pool is dropped.
    fn work(&self) {
        loop {
            let mut state = self.state();
            let job = loop {
                if state.is_closed {
                    return;
                }
                match state.waiting.pop() {
                    Some(job) => break job,
                    None => state = self.has_work.wait(state).unwrap_or_else(PoisonError::into_inner),
                }
            };
            drop(state);
            job();
        }
    }
}

impl ComputePool {
    /// Starts so many threads, before which `capacity` jobs may wait.
    ///
    /// # Errors
    /// When a thread cannot be started.
    pub fn start(threads: usize, capacity: usize) -> std::io::Result<Self> {
        let state = Mutex::new(QueueState { waiting: FairQueue::new(capacity), is_closed: false });
        let shared = Arc::new(SharedQueue { state, has_work: Condvar::new() });
        let pool = Self(shared.clone());
        for index in 0..threads {
            let shared = shared.clone();
            thread::Builder::new().name(format!("compute-{index}")).spawn(move || shared.work())?;
        }
        Ok(pool)
    }

    /// How many jobs wait.
    pub fn waiting(&self) -> usize {
        self.0.state().waiting.len()
    }

    /// Runs a job of a caller, which begins before `deadline` or not at all. When the future is dropped, for the caller has left, a job
    /// that waits is removed, and one that runs has its flag set.
    ///
    /// # Errors
    /// [`NotComputed`].
    pub async fn run<T: Send + 'static>(
        &self,
        caller: u64,
        deadline: Instant,
        work: impl FnOnce(Arc<AtomicBool>) -> T + Send + 'static,
    ) -> Result<Computed<T>, NotComputed> {
        let is_abandoned = Arc::new(AtomicBool::new(false));
        let (sender, mut receiver) = oneshot::channel();
        let flag = is_abandoned.clone();
        let job = move || {
            let started = Instant::now();
            let outcome = catch_unwind(AssertUnwindSafe(|| work(flag)));
            let took = started.elapsed();
            // The caller may have left.
            let _ = sender.send(outcome.map(|value| Computed { value, took }).map_err(|_panic| NotComputed::Panicked));
        };
        let pushed = self.0.state().waiting.push(caller, Box::new(job));
        // Its memory is freed where nobody waits for the lock.
        let (ticket, given_up) = pushed.map_err(|_job| NotComputed::Overloaded)?;
        drop(given_up);
        self.0.has_work.notify_one();
        let _abandon = AbandonOnDrop { shared: &self.0, caller, ticket, is_abandoned };
        let outcome = match tokio::time::timeout_at(deadline.into(), &mut receiver).await {
            Ok(outcome) => outcome,
            Err(_) if self.0.remove(caller, ticket) => return Err(NotComputed::Overloaded),
            Err(_) => receiver.await,
        };
        // A job that was given up for another caller's drops its sender.
        outcome.unwrap_or(Err(NotComputed::Overloaded))
    }
}

impl Drop for ComputePool {
    fn drop(&mut self) {
        self.0.state().is_closed = true;
        self.0.has_work.notify_all();
    }
}

/// Takes a job out of the queue, or tells it that nobody waits for it.
struct AbandonOnDrop<'a> {
    shared: &'a SharedQueue,
    caller: u64,
    ticket: Ticket,
    is_abandoned: Arc<AtomicBool>,
}

impl Drop for AbandonOnDrop<'_> {
    fn drop(&mut self) {
        self.is_abandoned.store(true, Ordering::Relaxed);
        self.shared.remove(self.caller, self.ticket);
    }
}

#[cfg(test)]
mod tests {
    use std::sync::mpsc;

    use futures_util::FutureExt;
    use futures_util::future::join_all;

    use super::*;

    const LATER: Duration = Duration::from_secs(60);

    fn later() -> Instant {
        Instant::now() + LATER
    }

    /// A job that runs until it is told to end, and the sender that ends it.
    fn until_told() -> (impl FnOnce(Arc<AtomicBool>) + Send, mpsc::Sender<()>) {
        let (end, ended) = mpsc::channel::<()>();
        let wait = move |_| {
            let _ = ended.recv();
        };
        (wait, end)
    }

    #[actix_web::test]
    async fn jobs_give_what_they_compute_and_a_panic_is_told() {
        let pool = ComputePool::start(2, 4).unwrap();
        let squares = join_all((0..4_u64).map(|n| pool.run(n, later(), move |_| n * n))).await;
        let squares: Vec<_> = squares.into_iter().map(|computed| computed.unwrap().value).collect();
        assert_eq!(squares, [0, 1, 4, 9]);
        let panicked = pool.run(1, later(), |_| panic!("a mistake that this test makes")).await;
        assert_eq!(panicked.map(|computed: Computed<()>| computed.value).err(), Some(NotComputed::Panicked));
        assert_eq!(pool.run(1, later(), |_| 5).await.unwrap().value, 5, "the thread of the panic is gone");
    }

    #[actix_web::test]
    async fn what_its_caller_has_left_is_not_begun_and_what_runs_is_told() {
        let pool = ComputePool::start(1, 4).unwrap();
        let (running, told) = mpsc::channel();
        let (go, gone) = mpsc::channel::<()>();
        let mut first = Box::pin(pool.run(1, later(), move |flag: Arc<AtomicBool>| {
            running.send(flag).unwrap();
            let _ = gone.recv();
        }));
        assert!((&mut first).now_or_never().is_none());
        let flag = told.recv().unwrap();
        let mut second = Box::pin(pool.run(2, later(), |_| panic!("nobody waits for this")));
        assert!((&mut second).now_or_never().is_none());
        assert_eq!(pool.waiting(), 1);
        drop(second);
        assert_eq!(pool.waiting(), 0, "a job that nobody waits for keeps its place");
        assert!(!flag.load(Ordering::Relaxed));
        drop(first);
        assert!(flag.load(Ordering::Relaxed), "a job that runs is not told that its caller has left");
        drop(go);
        assert_eq!(pool.run(3, later(), |_| 5).await.unwrap().value, 5);
    }

    #[actix_web::test]
    async fn a_job_begins_before_its_deadline_or_not_at_all() {
        let pool = ComputePool::start(1, 4).unwrap();
        let (wait, end) = until_told();
        let mut busy = Box::pin(pool.run(1, later(), wait));
        assert!((&mut busy).now_or_never().is_none());
        let late = pool.run(2, Instant::now() + Duration::from_millis(1), |_| panic!("this is too late")).await;
        assert_eq!(late.map(|computed: Computed<()>| computed.value).err(), Some(NotComputed::Overloaded));
        drop(end);
        assert!(busy.await.is_ok());
    }
}
