//! What is known of a request on its way through: its id, who sent it, how long was computed for it.

use std::cell::{Cell, OnceCell};
use std::fmt;
use std::rc::Rc;
use std::time::{Duration, Instant};

use actix_web::{HttpMessage, HttpRequest};

use super::app_state::is_plain;
use super::admission::Caller;

/// A request on its way through. It is shared by what it passes, and none of that leaves the request's thread.
pub struct RequestContext {
    /// Its id.
    pub id: RequestId,
    /// Who sent it, once the gate has seen it.
    pub caller: OnceCell<Caller>,
    computed: Cell<Duration>,
}

impl RequestContext {
    /// Notes a request that has just come.
    pub fn begin(request: &impl HttpMessage) -> Rc<Self> {
        let id = RequestId::take(request);
        let context = Rc::new(Self { id, caller: OnceCell::new(), computed: Cell::default() });
        request.extensions_mut().insert(context.clone());
        context
    }

    /// What is known of a request.
    pub fn of(request: &HttpRequest) -> Rc<Self> {
        let known = request.extensions().get::<Rc<Self>>().cloned();
        known.unwrap_or_else(|| Self::begin(request))
    }

    /// Does a part of what the request asks for, and counts the time that it takes.
    pub fn compute<T>(&self, work: impl FnOnce() -> T) -> T {
        let started = Instant::now();
        let done = work();
        self.add_computed(started.elapsed());
        done
    }

    /// Counts time that was computed for the request elsewhere.
    pub fn add_computed(&self, time: Duration) {
        self.computed.set(self.computed.get() + time);
    }

    /// How long was computed so far.
    pub fn computed(&self) -> Duration {
        self.computed.get()
    }
}

/// The id of a request: the caller's, or one made here.
#[derive(Clone, Debug)]
pub struct RequestId(String);

impl RequestId {
    /// The header that carries it, in and out.
    pub const HEADER: &'static str = "x-request-id";

    /// Takes the caller's id if it is short and plain, so that it is safe in logs and headers; else makes one.
    fn take(request: &impl HttpMessage) -> Self {
        let sent = request.headers().get(Self::HEADER).and_then(|value| value.to_str().ok()).filter(|id| is_plain(id));
        Self(sent.map_or_else(|| uuid::Uuid::now_v7().to_string(), str::to_owned))
    }

    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for RequestId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
