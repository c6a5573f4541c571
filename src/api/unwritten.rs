//! The answers that are being written, and how much memory they hold. A caller who asks and does not read would fill the memory, so
//! answers that are not written yet have a limit, all together and for each caller; over it, the one that has been stalled for longest is
//! cut. Answers that move leave by themselves; only at twice the limit the one that has not moved for longest is cut all the same.

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
    bytes_by_caller: HashMap<u64, usize>,
    last_id: u64,
    answers: HashMap<u64, AnswerState>,
}

struct AnswerState {
    caller: u64,
    bytes: usize,
    moved_at: Instant,
    /// Whether it has no more to write for now: what comes next is being computed.
    waits_for_service: bool,
    connection: Option<Arc<Socket>>,
}

/// An answer that counts as unwritten until this is dropped.
pub struct AnswerInWriting {
    registry: Arc<UnwrittenAnswers>,
    id: u64,
}

impl AnswersInWriting {
    fn bytes_of(&self, caller: u64) -> usize {
        self.bytes_by_caller.get(&caller).copied().unwrap_or_default()
    }

    /// Sets what an answer holds; nothing, when it is no longer counted.
    fn set_bytes(&mut self, id: u64, bytes: usize) -> Option<&mut AnswerState> {
        let answer = self.answers.get_mut(&id)?;
        let of_caller = self.bytes_by_caller.entry(answer.caller).or_default();
        *of_caller = *of_caller - answer.bytes + bytes;
        if *of_caller == 0 {
            self.bytes_by_caller.remove(&answer.caller);
        }
        self.bytes = self.bytes - answer.bytes + bytes;
        answer.bytes = bytes;
        Some(answer)
    }

    fn remove(&mut self, id: u64) -> Option<AnswerState> {
        self.set_bytes(id, 0)?;
        self.answers.remove(&id)
    }

    /// Cuts one answer: of this caller, or of the caller whose answers hold most, that which has not moved for longest. Whether there was
    /// one that may be cut.
    fn cut_one(&mut self, caller: Option<u64>, may_cut: impl Fn(&AnswerState) -> bool) -> bool {
        let is_meant = |answer: &AnswerState| caller.is_none_or(|caller| caller == answer.caller) && may_cut(answer);
        let held_by = |answer: &AnswerState| self.bytes_of(answer.caller);
        let meant = self.answers.iter().filter(|(_, answer)| is_meant(answer));
        let first = meant.min_by_key(|(_, answer)| (Reverse(held_by(answer)), answer.moved_at)).map(|(id, _)| *id);
        let Some(answer) = first.and_then(|id| self.remove(id)) else { return false };
        if let Some(connection) = answer.connection {
            // It may be closed already.
            let _ = connection.shutdown(Shutdown::Both);
        }
        true
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
        writing.answers.insert(
            id,
            AnswerState { caller, bytes: 0, moved_at: Instant::now(), waits_for_service: false, connection },
        );
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

    /// Notes that the caller has taken all that there is, and waits for more.
    pub fn waits_for_service(&self) {
        if let Some(answer) = self.registry.writing().answers.get_mut(&self.id) {
            answer.waits_for_service = true;
        }
    }

    fn holds_at(&self, own_bytes: usize, now: Instant) {
        let (registry, bytes) = (&self.registry, own_bytes + LIBRARY_BUFFER);
        let mut writing = registry.writing();
        // Cut answers are no longer counted.
        let Some(before) = writing.answers.get(&self.id).map(|answer| answer.bytes) else { return };
        let Some(answer) = writing.set_bytes(self.id, bytes) else { return };
        let caller = answer.caller;
        answer.moved_at = now;
        answer.waits_for_service = false;
        if bytes <= before {
            return;
        }
        let is_stalled = |answer: &AnswerState| {
            !answer.waits_for_service && now.saturating_duration_since(answer.moved_at) >= STALLED_AFTER
        };
        // The answer that has just moved has moved last.
        let is_another = |answer: &AnswerState| answer.moved_at < now;
        while writing.bytes_of(caller) > registry.share && writing.cut_one(Some(caller), is_stalled)
            || writing.bytes_of(caller) > 2 * registry.share && writing.cut_one(Some(caller), is_another)
            || writing.bytes > registry.whole && writing.cut_one(None, is_stalled)
            || writing.bytes > 2 * registry.whole && writing.cut_one(None, is_another)
        {
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
    fn answers_that_move_or_wait_for_the_service_may_hold_twice_as_much() {
        let registry = registry(100, 6);
        let waiting = begin(&registry, 1, 3, 0);
        waiting.waits_for_service();
        let moving = [6, 6, 6].map(|second| begin(&registry, 1, 3, second));
        assert!(is_counted(&waiting) && moving.iter().all(is_counted));
        let next = begin(&registry, 1, 3, 6);
        assert!(!is_counted(&waiting), "what has not moved for longest goes");
        assert!(moving.iter().all(is_counted) && is_counted(&next));
        let late = begin(&registry, 1, 3, 9);
        assert!(is_counted(&late) && registry.bytes() == 6 * LIBRARY_BUFFER, "stalled answers are kept over the share");
    }
}
