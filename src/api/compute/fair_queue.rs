//! A bounded queue that is fair between callers: they take turns, and a full one makes room for a caller who has less in it.

use std::collections::VecDeque;

/// Jobs that wait, by caller. Callers are few, for the queue is bounded, so they are searched in turn.
pub struct FairQueue<J> {
    capacity: usize,
    length: usize,
    last_ticket: u64,
    /// The callers that wait, the next one first; none is without jobs.
    callers: VecDeque<WaitingCaller<J>>,
}

struct WaitingCaller<J> {
    caller: u64,
    jobs: VecDeque<(Ticket, J)>,
}

/// A place in the queue.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ticket(u64);

impl<J> FairQueue<J> {
    /// A queue of at most `capacity` jobs.
    pub fn new(capacity: usize) -> Self {
        Self { capacity, length: 0, last_ticket: 0, callers: VecDeque::new() }
    }

    /// The number of jobs that wait.
    pub fn len(&self) -> usize {
        self.length
    }

    /// Whether a job of this caller would be refused now.
    fn is_full_for(&self, caller: u64) -> bool {
        self.length >= self.capacity && self.most_waiting().is_none_or(|most| most <= self.count(caller) + 1)
    }

    /// Adds a job behind the others of its caller. A full queue gives up the newest job of the caller who has the most, if that is more
    /// than this one would have then; it is given back.
    ///
    /// # Errors
    /// The job, when it is refused.
    pub fn push(&mut self, caller: u64, job: J) -> Result<(Ticket, Option<J>), J> {
        if self.is_full_for(caller) {
            return Err(job);
        }
        let given_up = if self.length >= self.capacity { self.pop_newest_of_largest() } else { None };
        self.last_ticket += 1;
        let ticket = Ticket(self.last_ticket);
        match self.callers.iter_mut().find(|waiting| waiting.caller == caller) {
            Some(waiting) => waiting.jobs.push_back((ticket, job)),
            None => self.callers.push_back(WaitingCaller { caller, jobs: VecDeque::from([(ticket, job)]) }),
        }
        self.length += 1;
        Ok((ticket, given_up))
    }

    /// Takes the oldest job of the caller whose turn it is.
    pub fn pop(&mut self) -> Option<J> {
        let mut waiting = self.callers.pop_front()?;
        let (_, job) = waiting.jobs.pop_front()?;
        if !waiting.jobs.is_empty() {
            self.callers.push_back(waiting);
        }
        self.length -= 1;
        Some(job)
    }

    /// Removes a job that nobody waits for any more, if it is still in the queue.
    pub fn remove(&mut self, caller: u64, ticket: Ticket) -> Option<J> {
        let at = self.callers.iter().position(|waiting| waiting.caller == caller)?;
        let jobs = &mut self.callers[at].jobs;
        let index = jobs.iter().position(|(other, _)| *other == ticket)?;
        let (_, job) = jobs.remove(index)?;
        if jobs.is_empty() {
            self.callers.remove(at);
        }
        self.length -= 1;
        Some(job)
    }

    fn count(&self, caller: u64) -> usize {
        self.callers.iter().find(|waiting| waiting.caller == caller).map_or(0, |waiting| waiting.jobs.len())
    }

    fn most_waiting(&self) -> Option<usize> {
        self.callers.iter().map(|waiting| waiting.jobs.len()).max()
    }

    fn pop_newest_of_largest(&mut self) -> Option<J> {
        let largest = self.callers.iter_mut().max_by_key(|waiting| waiting.jobs.len())?;
        let (_, job) = largest.jobs.pop_back()?;
        self.length -= 1;
        Some(job)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn callers_take_turns_and_each_keeps_its_order() {
        let mut queue = FairQueue::new(10);
        for job in ["a1", "a2", "a3", "b1", "a4", "c1", "b2"] {
            queue.push(job.as_bytes()[0].into(), job).unwrap();
        }
        let order: Vec<_> = std::iter::from_fn(|| queue.pop()).collect();
        assert_eq!(order, ["a1", "b1", "c1", "a2", "b2", "a3", "a4"]);
        assert_eq!(queue.len(), 0);
    }

    #[test]
    fn a_full_queue_makes_room_for_a_caller_who_has_less_in_it() {
        let mut queue = FairQueue::new(3);
        for job in 1..=3 {
            queue.push(1, job).unwrap();
        }
        assert!(queue.is_full_for(1) && !queue.is_full_for(2));
        assert_eq!(queue.push(1, 4), Err(4));
        assert_eq!(queue.push(2, 20).unwrap().1, Some(3));
        // Two of the first and one of the second: one more would only turn that round.
        assert_eq!(queue.push(2, 21), Err(21));
        let order: Vec<_> = std::iter::from_fn(|| queue.pop()).collect();
        assert_eq!(order, [1, 20, 2], "the newest job of the first is given up");
    }

    #[test]
    fn a_job_that_nobody_waits_for_leaves_the_queue_once() {
        let mut queue = FairQueue::new(3);
        let [first, second] = [1, 2].map(|job| queue.push(7, job).unwrap().0);
        assert_eq!([queue.remove(7, first), queue.remove(7, first), queue.remove(8, second)], [Some(1), None, None]);
        assert_eq!((queue.len(), queue.pop(), queue.pop()), (1, Some(2), None));
        assert_eq!(queue.remove(7, second), None);
    }
}
