//! The queue of the log: lines are put into memory by the threads that serve, and written by a thread of its own.
//!
//! Nobody waits for who reads the log: what finds no room is dropped and counted, and the log says so once there is room again. Lines
//! are written together, at most [`MAX_DELAY`] after the first of them: a `write` for each costs a small request more than its
//! calculation does. The queue is bounded in bytes, puts a line without allocating and wakes its thread once for many lines; the usual
//! crate for this does none of the three, and when its queue is full at the end it prints to standard output, where it may wait
//! for ever.

use std::io::{Error, ErrorKind, Write};
use std::mem;
use std::sync::{Arc, Condvar, LazyLock, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use prometheus_client::metrics::counter::Counter;

/// How long a line may wait for others. A crash of the process loses the lines that wait.
const MAX_DELAY: Duration = Duration::from_millis(50);

/// Bytes at which lines wait no longer for others.
const BATCH_SIZE: usize = 64 * 1024;

/// The most bytes that wait while others are written; beyond, lines are dropped. A second of a busy instance.
const CAPACITY: usize = 1024 * 1024;

/// The pause before lines that could not be written are tried again.
const RETRY_DELAY: Duration = Duration::from_secs(1);

/// How long the end of the program waits for the last lines to be written.
const END_TIMEOUT: Duration = Duration::from_secs(1);

/// Lines that were dropped because nobody read those before them.
pub static DROPPED_LINES: LazyLock<Counter> = LazyLock::new(Counter::default);

/// Lines on their way to the log.
pub struct LogQueue {
    pending: Mutex<PendingLines>,
    changed: Condvar,
}

#[derive(Default)]
struct PendingLines {
    lines: Vec<u8>,
    /// Lines dropped since the log has said so.
    dropped: u64,
    is_closing: bool,
    is_closed: bool,
}

/// Dropped at the end of the program: waits until the lines are written, but not for ever.
pub struct FlushGuard(Arc<LogQueue>);

impl Drop for FlushGuard {
    fn drop(&mut self) {
        let mut pending = self.0.lock();
        pending.is_closing = true;
        self.0.changed.notify_all();
        let _ = self.0.changed.wait_timeout_while(pending, END_TIMEOUT, |pending| !pending.is_closed);
    }
}

impl LogQueue {
    /// Starts the thread that writes to a target.
    ///
    /// # Errors
    /// When the thread cannot be started.
    pub fn start(target: impl Write + Send + 'static) -> std::io::Result<(Arc<Self>, FlushGuard)> {
        let queue = Arc::new(Self { pending: Mutex::default(), changed: Condvar::new() });
        let (writer, guard) = (queue.clone(), FlushGuard(queue.clone()));
        thread::Builder::new().name("log".to_owned()).spawn(move || writer.write_all_to(target))?;
        Ok((queue, guard))
    }

    /// Puts a line, or drops it where there is no room. Never waits for the target.
    pub fn put(&self, line: &[u8]) {
        let mut pending = self.lock();
        let before = pending.lines.len();
        let after = before + line.len();
        if after > CAPACITY {
            pending.dropped += 1;
            DROPPED_LINES.inc();
            return;
        }
        pending.lines.extend_from_slice(line);
        drop(pending);
        if before == 0 || (before < BATCH_SIZE && after >= BATCH_SIZE) {
            self.changed.notify_all();
        }
    }

    fn lock(&self) -> MutexGuard<'_, PendingLines> {
        self.pending.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Waits until this is no longer so, or the time is over.
    fn wait_while<'a>(
        &self,
        pending: MutexGuard<'a, PendingLines>,
        limit: Duration,
        is_so: impl Fn(&PendingLines) -> bool,
    ) -> MutexGuard<'a, PendingLines> {
        let waited = self.changed.wait_timeout_while(pending, limit, |pending| is_so(pending) && !pending.is_closing);
        waited.unwrap_or_else(PoisonError::into_inner).0
    }

    /// Writes lines until the end of the program.
    fn write_all_to(&self, mut target: impl Write) {
        let mut batch = Vec::new();
        loop {
            let mut pending = self.wait_while(self.lock(), Duration::MAX, |pending| pending.lines.is_empty());
            pending = self.wait_while(pending, MAX_DELAY, |pending| pending.lines.len() < BATCH_SIZE);
            if pending.lines.is_empty() && pending.is_closing {
                pending.is_closed = true;
                self.changed.notify_all();
                return;
            }
            mem::swap(&mut pending.lines, &mut batch);
            let dropped = mem::take(&mut pending.dropped);
            drop(pending);
            self.write(&mut target, &batch);
            batch.clear();
            if dropped > 0 {
                tracing::warn!(dropped, "{dropped} lines of the log were dropped: nobody read those before them");
            }
        }
    }

    /// Writes a batch, however often that fails before the end of the program.
    fn write(&self, target: &mut impl Write, mut batch: &[u8]) {
        while !batch.is_empty() {
            match target.write(batch) {
                Ok(written @ 1..) => batch = &batch[written..],
                Err(error) if error.kind() == ErrorKind::Interrupted => (),
                Ok(0) | Err(_) => {
                    if self.wait_while(self.lock(), RETRY_DELAY, |_| true).is_closing {
                        return;
                    }
                }
            }
        }
    }
}

/// How the layer for people writes a line: as a whole.
impl Write for &LogQueue {
    fn write(&mut self, line: &[u8]) -> Result<usize, Error> {
        self.put(line);
        Ok(line.len())
    }

    fn flush(&mut self) -> Result<(), Error> {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
    use std::time::Instant;

    use super::*;

    /// What was written, and how often writing will still fail.
    #[derive(Clone, Default)]
    pub struct TestTarget(Arc<Mutex<(Vec<u8>, usize)>>);

    impl TestTarget {
        fn lines(&self) -> Vec<String> {
            String::from_utf8(self.0.lock().unwrap().0.clone()).unwrap().lines().map(str::to_owned).collect()
        }
    }

    impl Write for TestTarget {
        fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
            let mut target = self.0.lock().unwrap();
            if target.1 > 0 {
                target.1 -= 1;
                return Err(ErrorKind::StorageFull.into());
            }
            // As a full disk or a full pipe takes a part.
            let taken = &bytes[..bytes.len().min(1000)];
            target.0.extend_from_slice(taken);
            Ok(taken.len())
        }

        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    /// A target that takes nothing until the test lets it.
    struct BlockedTarget(Receiver<()>, TestTarget);

    impl Write for BlockedTarget {
        fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
            // Once the test has let go of its end, all is taken.
            let _ = self.0.recv();
            self.1.write(bytes)
        }

        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    fn blocked() -> (SyncSender<()>, TestTarget, Arc<LogQueue>, FlushGuard) {
        let (let_go, held) = sync_channel(0);
        let target = TestTarget::default();
        let (queue, guard) = LogQueue::start(BlockedTarget(held, target.clone())).unwrap();
        (let_go, target, queue, guard)
    }

    #[test]
    fn lines_arrive_whole_and_those_of_a_thread_in_order() {
        const EACH: usize = 1000;
        let target = TestTarget::default();
        let (queue, guard) = LogQueue::start(target.clone()).unwrap();
        thread::scope(|scope| {
            for name in ["a", "b", "c", "d"] {
                let queue = &queue;
                scope.spawn(move || {
                    for index in 0..EACH {
                        queue.put(format!("{name} {index} {}\n", "x".repeat(200)).as_bytes());
                    }
                });
            }
        });
        drop(guard);
        let sent = target.lines();
        assert_eq!(sent.len(), 4 * EACH);
        for name in ["a", "b", "c", "d"] {
            let of_thread = sent.iter().filter_map(|line| line.strip_prefix(name)?.trim().split_once(' '));
            let (indices, rests): (Vec<_>, Vec<_>) = of_thread.unzip();
            assert_eq!(indices, (0..EACH).map(|index| index.to_string()).collect::<Vec<_>>());
            assert!(rests.iter().all(|rest| *rest == "x".repeat(200)));
        }
    }

    #[test]
    fn a_target_that_takes_nothing_stops_nobody_and_what_finds_no_room_is_counted() {
        let (let_go, target, queue, guard) = blocked();
        let before = DROPPED_LINES.get();
        let line = format!("{}\n", "x".repeat(999));
        // One capacity may be with the target, another waits; the third finds no room.
        for _ in 0..3 * CAPACITY / line.len() {
            queue.put(line.as_bytes());
        }
        let dropped = DROPPED_LINES.get() - before;
        assert!(dropped > 900, "{dropped} lines of 1000 bytes were dropped");
        drop(let_go);
        drop(guard);
        assert_eq!(target.lines().len() as u64 + dropped, (3 * CAPACITY / line.len()) as u64);
    }

    #[test]
    fn the_end_waits_for_a_target_that_takes_nothing_no_longer_than_it_says() {
        let (let_go, target, queue, guard) = blocked();
        queue.put(b"the last\n");
        let started = Instant::now();
        drop(guard);
        assert!(started.elapsed() >= END_TIMEOUT, "it has not waited");
        assert!(target.lines().is_empty());
        drop(let_go);
    }

    #[test]
    fn lines_that_could_not_be_written_are_written_later() {
        let target = TestTarget::default();
        target.0.lock().unwrap().1 = 1;
        let (queue, _guard) = LogQueue::start(target.clone()).unwrap();
        queue.put(b"one\n");
        queue.put(b"two\n");
        let is_there = (0..2000).any(|_| {
            thread::sleep(Duration::from_millis(5));
            target.lines() == ["one", "two"]
        });
        assert!(is_there, "{:?}", target.lines());
    }
}
