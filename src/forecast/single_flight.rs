//! Equal work at the same time is done once, and all who want it get what comes of it.

use std::collections::HashMap;
use std::hash::Hash;
use std::sync::{Mutex, PoisonError};

use futures_util::FutureExt;
use futures_util::future::{BoxFuture, Shared, WeakShared};
use tokio::task::JoinSet;

/// Work that several wait for. It ends unfinished (`None`) when the thread on which it began has stopped.
///
/// The work is a task of its own and goes on when the one who began it leaves; when all have left, it is dropped.
pub type Flight<V> = Shared<BoxFuture<'static, Option<V>>>;

/// The work under way, by key.
#[derive(Debug)]
pub struct SingleFlight<K, V> {
    flights: Mutex<HashMap<K, WeakShared<BoxFuture<'static, Option<V>>>>>,
}

impl<K, V> Default for SingleFlight<K, V> {
    fn default() -> Self {
        Self { flights: Mutex::default() }
    }
}

impl<K: Eq + Hash, V: Clone + Send + 'static> SingleFlight<K, V> {
    /// Joins the work under way for `key`. If there is none, `begin` says what is to be done, or why nothing is.
    ///
    /// # Errors
    /// What `begin` says.
    pub fn join<E>(&self, key: K, begin: impl FnOnce() -> Result<BoxFuture<'static, V>, E>) -> Result<Flight<V>, E> {
        let mut flights = self.flights.lock().unwrap_or_else(PoisonError::into_inner);
        let under_way = |flight: &WeakShared<_>| flight.upgrade().filter(|flight: &Flight<V>| flight.peek().is_none());
        if let Some(flight) = flights.get(&key).and_then(under_way) {
            return Ok(flight);
        }
        let flight = on_a_task(begin()?).boxed().shared();
        flights.retain(|_, flight| under_way(flight).is_some());
        flights.extend(flight.downgrade().map(|weak| (key, weak)));
        Ok(flight)
    }
}

/// Does the work on a task, which ends with this future.
async fn on_a_task<V: Send + 'static>(work: BoxFuture<'static, V>) -> Option<V> {
    let mut tasks = JoinSet::new();
    tasks.spawn(work);
    tasks.join_next().await?.ok()
}

#[cfg(test)]
mod tests {
    use std::convert::Infallible;

    use futures_util::future::{join_all, pending, ready};
    use tokio::sync::oneshot;

    use super::*;

    type Work = Result<BoxFuture<'static, u32>, Infallible>;

    fn refuse_to_begin() -> Work {
        panic!("equal work is begun twice")
    }

    #[tokio::test]
    async fn equal_work_is_done_once_and_all_get_what_comes_of_it() {
        let (flights, (finish, finished)) = (SingleFlight::default(), oneshot::channel());
        let first = flights.join("yard", || Work::Ok(async { finished.await.unwrap() }.boxed())).unwrap();
        let others = [(); 9].map(|()| flights.join("yard", refuse_to_begin).unwrap());
        assert_eq!(flights.join("slip", || Work::Ok(ready(3).boxed())).unwrap().await, Some(3), "other work waits");
        finish.send(7).unwrap();
        assert_eq!(first.await, Some(7));
        assert_eq!(join_all(others.clone()).await, [Some(7); 9]);
        // What is done is done again when it is wanted later, though others still hold the first.
        assert_eq!(flights.join("yard", || Work::Ok(ready(8).boxed())).unwrap().await, Some(8));
    }

    #[tokio::test]
    async fn whoever_leaves_strands_nobody() {
        let (flights, (finish, finished)) = (SingleFlight::default(), oneshot::channel());
        let begun = flights.join("yard", || Work::Ok(async { finished.await.unwrap() }.boxed())).unwrap();
        let leads = tokio::spawn(begun);
        tokio::task::yield_now().await;
        let waits = flights.join("yard", refuse_to_begin).unwrap();
        leads.abort();
        assert!(leads.await.unwrap_err().is_cancelled());
        finish.send(7).unwrap();
        assert_eq!(waits.await, Some(7));
    }

    #[tokio::test]
    async fn what_all_have_left_is_dropped() {
        let (flights, (held, mut dropped)) = (SingleFlight::default(), oneshot::channel::<Infallible>());
        let work = async move {
            let _held = held;
            pending().await
        };
        let begun = flights.join("yard", || Work::Ok(work.boxed())).unwrap();
        let mut both = [begun, flights.join("yard", refuse_to_begin).unwrap()];
        for flight in &mut both {
            assert_eq!(flight.now_or_never(), None);
        }
        tokio::task::yield_now().await;
        assert!(dropped.try_recv().is_err_and(|error| error == oneshot::error::TryRecvError::Empty));
        drop(both);
        assert!(dropped.await.is_err(), "the work goes on");
        assert_eq!(flights.join("yard", || Work::Ok(ready(8).boxed())).unwrap().await, Some(8));
    }

    #[test]
    fn a_thread_that_stops_leaves_the_work_unfinished_and_not_the_others_waiting() {
        let runtime = || tokio::runtime::Builder::new_current_thread().build().unwrap();
        let (flights, stopping) = (SingleFlight::default(), runtime());
        let begun = flights.join("yard", || Work::Ok(pending().boxed())).unwrap();
        let waits = flights.join("yard", refuse_to_begin).unwrap();
        stopping.block_on(async { assert_eq!(begun.now_or_never(), None) });
        drop(stopping);
        assert_eq!(runtime().block_on(waits), None);
    }

    #[tokio::test]
    async fn what_is_not_begun_says_why() {
        let flights = SingleFlight::<_, u32>::default();
        assert_eq!(flights.join("yard", || Err("busy")).map(drop).unwrap_err(), "busy");
        assert_eq!(flights.join("yard", || Work::Ok(ready(8).boxed())).unwrap().await, Some(8));
    }
}
