//! The answers that are being written, and how much memory they hold. A caller who asks and does not read would fill the memory, so
//! answers that are not written yet have a limit, all together and for each caller; over it, the one that has been stalled for longest is
//! cut. Answers that move are never cut: they leave by themselves.

use std::cmp::Reverse;
use std::collections::HashMap;
use std::net::Shutdown;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use prometheus_client::metrics::counter::Counter;
use socket2::Socket;

/// What the HTTP library holds of an answer that is not read: its buffer, and the slice that goes past it.
const LIBRARY_BUFFER: usize = 48 * 1024;

/// An answer is stalled when its caller has taken nothing of it for so long. Choice made here.
const STALLED_AFTER: Duration = Duration::from_secs(1);

/// The answers that are being written.
pub struct UnwrittenAnswers {
    whole: usize,
    share: usize,
    /// Counts the answers that were cut.
    cut: Counter,
    writing: Mutex<AnswersInWriting>,
}

#[derive(Default)]
struct AnswersInWriting {
    bytes: usize,
    last_id: u64,
    answers: HashMap<u64, AnswerState>,
}

struct AnswerState {
    caller: u64,
    bytes: usize,
    moved_at: Instant,
    connection: Option<Arc<Socket>>,
}

/// An answer that counts as unwritten until this is dropped.
pub struct AnswerInWriting {
    registry: Arc<UnwrittenAnswers>,
    id: u64,
}

impl AnswersInWriting {
    fn bytes_of(&self, caller: u64) -> usize {
        self.answers.values().filter(|answer| answer.caller == caller).map(|answer| answer.bytes).sum()
    }

    fn remove(&mut self, id: u64) -> Option<AnswerState> {
        let answer = self.answers.remove(&id)?;
        self.bytes -= answer.bytes;
        Some(answer)
    }

    /// Cuts the answer of a caller that has been stalled for longest; whether there was one.
    fn cut_oldest(&mut self, caller: u64, now: Instant) -> bool {
        let is_stalled = |answer: &AnswerState| now.saturating_duration_since(answer.moved_at) >= STALLED_AFTER;
        let stalled = self.answers.iter().filter(|(_, answer)| answer.caller == caller && is_stalled(answer));
        let Some(oldest) = stalled.min_by_key(|(_, answer)| answer.moved_at).map(|(id, _)| *id) else { return false };
        if let Some(connection) = self.remove(oldest).and_then(|answer| answer.connection) {
            // It may be closed already.
            let _ = connection.shutdown(Shutdown::Both);
        }
        true
    }

    /// All callers, those whose answers hold most first.
    fn largest_callers(&self) -> Vec<u64> {
        let mut by_caller = HashMap::new();
        for answer in self.answers.values() {
            *by_caller.entry(answer.caller).or_insert(0) += answer.bytes;
        }
        let mut callers: Vec<_> = by_caller.into_iter().collect();
        callers.sort_by_key(|(_, bytes)| Reverse(*bytes));
        callers.into_iter().map(|(caller, _)| caller).collect()
    }
}

impl UnwrittenAnswers {
    /// A registry of at most so many bytes, of which a caller may have a share.
    pub fn new(whole: usize, share: usize, cut: Counter) -> Arc<Self> {
        Arc::new(Self { whole, share, cut, writing: Mutex::default() })
    }

    /// Counts an answer.
    pub fn begin(self: &Arc<Self>, caller: u64, connection: Option<Arc<Socket>>) -> AnswerInWriting {
        let mut writing = self.writing();
        writing.last_id += 1;
        let id = writing.last_id;
        writing.answers.insert(id, AnswerState { caller, bytes: 0, moved_at: Instant::now(), connection });
        AnswerInWriting { registry: self.clone(), id }
    }

    /// The bytes that are counted now.
    pub fn bytes(&self) -> usize {
        self.writing().bytes
    }

    fn writing(&self) -> MutexGuard<'_, AnswersInWriting> {
        self.writing.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl AnswerInWriting {
    /// Notes that the answer has moved, and holds so many bytes of its own now. Where that is too much, stalled answers are cut.
    pub fn holds(&self, own_bytes: usize) {
        self.holds_at(own_bytes, Instant::now());
    }

    fn holds_at(&self, own_bytes: usize, now: Instant) {
        let (registry, bytes) = (&self.registry, own_bytes + LIBRARY_BUFFER);
        let mut writing = registry.writing();
        // Cut answers are no longer counted.
        let Some(answer) = writing.answers.get_mut(&self.id) else { return };
        let (caller, before) = (answer.caller, answer.bytes);
        answer.bytes = bytes;
        answer.moved_at = now;
        writing.bytes = writing.bytes - before + bytes;
        if bytes <= before {
            return;
        }
        while writing.bytes_of(caller) > registry.share && writing.cut_oldest(caller, now) {
            registry.cut.inc();
        }
        while writing.bytes > registry.whole {
            if !writing.largest_callers().into_iter().any(|caller| writing.cut_oldest(caller, now)) {
                return;
            }
            registry.cut.inc();
        }
    }
}

impl Drop for AnswerInWriting {
    fn drop(&mut self) {
        self.registry.writing().remove(self.id);
    }
}

#[cfg(test)]
mod tests {
    use std::sync::LazyLock;

    use super::*;

    /// An answer of so many times what the library buffers, which moves at this second and then no more.
    fn begin(registry: &Arc<UnwrittenAnswers>, caller: u64, times: usize, second: u64) -> AnswerInWriting {
        let answer = registry.begin(caller, None);
        answer.holds_at((times - 1) * LIBRARY_BUFFER, at(second));
        answer
    }

    fn at(second: u64) -> Instant {
        static START: LazyLock<Instant> = LazyLock::new(Instant::now);
        *START + Duration::from_secs(second)
    }

    fn is_counted(answer: &AnswerInWriting) -> bool {
        answer.registry.writing().answers.contains_key(&answer.id)
    }

    fn registry(whole: usize, share: usize) -> Arc<UnwrittenAnswers> {
        UnwrittenAnswers::new(whole * LIBRARY_BUFFER, share * LIBRARY_BUFFER, Counter::default())
    }

    #[test]
    fn over_its_share_a_caller_loses_the_answer_that_is_stalled_for_longest() {
        let registry = registry(100, 10);
        let [first, second] = [0, 1].map(|second| begin(&registry, 1, 4, second));
        let other = begin(&registry, 2, 9, 0);
        first.holds_at(2 * LIBRARY_BUFFER, at(3));
        let third = begin(&registry, 1, 4, 4);
        assert_eq!([&first, &second, &other, &third].map(is_counted), [true, false, true, true]);
        assert_eq!((registry.bytes(), registry.cut.get()), (16 * LIBRARY_BUFFER, 1));
        drop([first, second, other, third]);
        assert_eq!(registry.bytes(), 0);
    }

    #[test]
    fn over_the_whole_the_caller_who_holds_most_pays() {
        let registry = registry(20, 15);
        let large = [0, 1].map(|second| begin(&registry, 1, 7, second));
        let small = begin(&registry, 2, 5, 0);
        let next = begin(&registry, 3, 5, 5);
        assert_eq!(large.each_ref().map(is_counted), [false, true]);
        assert!(is_counted(&small) && is_counted(&next));
        assert_eq!(registry.bytes(), 17 * LIBRARY_BUFFER);
    }

    #[test]
    fn answers_that_move_are_never_cut() {
        let registry = registry(4, 2);
        let many: Vec<_> = (0..50).map(|_| begin(&registry, 1, 3, 7)).collect();
        assert!(many.iter().all(is_counted));
        let next = begin(&registry, 1, 3, 9);
        assert!(!many.iter().any(is_counted) && is_counted(&next));
    }
}
