//! Limits of connections that the HTTP library does not have: timeouts, and how many an address may have.
//!
//! The library limits the time for the head of a connection's first request and for the pause between two requests, but not the time
//! for the head of a later request or for the reading of an answer. Without limits a caller could keep any number of connections.

use std::any::Any;
use std::cell::{Cell, OnceCell};
use std::net::Shutdown;
use std::rc::{Rc, Weak};
use std::sync::Arc;
use std::time::{Duration, Instant};

use actix_web::HttpRequest;
use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::dev::{Extensions, ServiceResponse};
use actix_web::rt::net::TcpStream;
use actix_web::rt::task::JoinHandle;
use socket2::{SockRef, Socket};

use super::admission::{Caller, is_trusted};
use super::app_state::AppState;
use super::caller_shares::{Exhausted, TakenShare};
use super::response_body::GuardedBody;
use super::sliced_body::{LARGEST_UNCOUNTED, SharedBytes, SlicedBody};
use crate::settings::LimitSettings;

/// The buffer of the system for what a connection sends, bytes; Linux takes twice as much.
const SEND_BUFFER: usize = 64 * 1024;

/// A connection, for as long as it is open.
struct WatchedConnection {
    /// A second handle of the same socket: the HTTP library holds the first.
    socket: Arc<Socket>,
    /// Its place among those of its address.
    _place: Option<TakenShare>,
    active_requests: Cell<usize>,
    /// When the last request ended, or the writing of a large answer began.
    last_activity: Cell<Instant>,
    is_writing: Cell<bool>,
    watch: OnceCell<JoinHandle<()>>,
}

impl Drop for WatchedConnection {
    fn drop(&mut self) {
        if let Some(watch) = self.watch.get() {
            watch.abort();
        }
    }
}

/// Counts a request of a connection as active until it is dropped.
pub struct ActiveRequest(Option<Rc<WatchedConnection>>);

impl ActiveRequest {
    /// Counts a request that begins.
    pub fn begin(request: &HttpRequest) -> Self {
        let connection = request.conn_data::<Rc<WatchedConnection>>().cloned();
        if let Some(connection) = &connection {
            connection.active_requests.set(connection.active_requests.get() + 1);
        }
        Self(connection)
    }

    /// Counts the request until its answer is written, if that is large.
    pub fn until_written(self, caller: u64, response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
        match response.response().body().size() {
            BodySize::None => return response,
            BodySize::Sized(length) if length <= LARGEST_UNCOUNTED => return response,
            BodySize::Sized(_) | BodySize::Stream => {}
        }
        let socket = self.0.as_ref().map(|connection| {
            connection.last_activity.set(Instant::now());
            connection.is_writing.set(true);
            connection.socket.clone()
        });
        let writing = AppState::of(response.request()).unwritten.begin(caller, socket);
        let is_shared = response.response().extensions().get::<SharedBytes>().is_some();
        response.map_body(|_, body| GuardedBody::boxed(SlicedBody::boxed(body, is_shared, writing), self))
    }
}

impl Drop for ActiveRequest {
    fn drop(&mut self) {
        if let Some(connection) = &self.0 {
            connection.active_requests.set(connection.active_requests.get() - 1);
            connection.last_activity.set(Instant::now());
            connection.is_writing.set(false);
        }
    }
}

/// Ends the connection of a request without an answer.
pub fn cut(request: &HttpRequest) {
    if let Some(connection) = request.conn_data::<Rc<WatchedConnection>>() {
        // It may be closed already.
        let _ = connection.socket.shutdown(Shutdown::Both);
    }
}

/// Starts the timeouts of a new connection, or ends it where its address has too many.
pub fn watch(connection: &dyn Any, data: &mut Extensions, state: &AppState) {
    let Some(stream) = connection.downcast_ref::<TcpStream>() else { return };
    let socket = SockRef::from(stream);
    let Ok(place) = place_of(stream, state) else {
        state.metrics.connections_refused.inc();
        // The HTTP library then finds that its caller has left.
        let _ = socket.shutdown(Shutdown::Both);
        return;
    };
    start_watch(&socket, place, data, &state.settings.limits);
}

/// Starts the timeouts of a new connection of a listener that is not for all callers.
pub fn watch_unlimited(connection: &dyn Any, data: &mut Extensions, state: &AppState) {
    if let Some(stream) = connection.downcast_ref::<TcpStream>() {
        start_watch(&SockRef::from(stream), None, data, &state.settings.limits);
    }
}

/// The place of a connection among those of its address; trusted proxies have as many as they need.
fn place_of(stream: &TcpStream, state: &AppState) -> Result<Option<TakenShare>, Exhausted> {
    let Ok(peer) = stream.peer_addr() else { return Ok(None) };
    if is_trusted(peer.ip(), &state.settings.limits.trusted_proxies) {
        return Ok(None);
    }
    state.connections.take(Caller::at(peer.ip()).id(), 1).map(Some)
}

fn start_watch(socket: &Socket, place: Option<TakenShare>, data: &mut Extensions, limits: &LimitSettings) {
    if let Err(error) = try_start_watch(socket, place, data, limits) {
        // The connection is served in spite of that.
        tracing::warn!("a connection is not watched: {error}");
    }
}

fn try_start_watch(
    socket: &Socket,
    place: Option<TakenShare>,
    data: &mut Extensions,
    limits: &LimitSettings,
) -> std::io::Result<()> {
    // What is not read should wait here, where it is counted, not in the buffers of the system.
    socket.set_send_buffer_size(SEND_BUFFER)?;
    // For a caller that reads nothing of its answer (RFC 5482).
    socket.set_tcp_user_timeout(Some(limits.idle))?;
    let socket = Arc::new(socket.try_clone()?);
    let watched = Rc::new(WatchedConnection {
        socket,
        _place: place,
        active_requests: Cell::new(0),
        last_activity: Cell::new(Instant::now()),
        is_writing: Cell::new(false),
        watch: OnceCell::new(),
    });
    let timeouts = ConnectionTimeouts { silent: limits.idle + limits.header_deadline, writing: limits.answer_deadline };
    let watch = actix_web::rt::spawn(close_when_due(Rc::downgrade(&watched), timeouts));
    // Set once, here.
    let _ = watched.watch.set(watch);
    data.insert(watched);
    Ok(())
}

/// How long a connection may be silent, and how long one large answer may be written.
struct ConnectionTimeouts {
    silent: Duration,
    writing: Duration,
}

/// Closes a connection that has had no active request for too long, or whose caller takes too long to read a large answer. The
/// timeouts of the library come first where it has them. The second handle is closed together with the connection.
async fn close_when_due(connection: Weak<WatchedConnection>, timeouts: ConnectionTimeouts) {
    let step = timeouts.silent.min(timeouts.writing);
    loop {
        let due = {
            let Some(connection) = connection.upgrade() else { return };
            let now = Instant::now();
            let due = match (connection.is_writing.get(), connection.active_requests.get()) {
                (true, _) => connection.last_activity.get() + timeouts.writing,
                (false, 0) => connection.last_activity.get() + timeouts.silent,
                _ => now + step,
            };
            if due <= now {
                // It may be closed already.
                let _ = connection.socket.shutdown(Shutdown::Both);
                return;
            }
            due.min(now + step)
        };
        tokio::time::sleep_until(due.into()).await;
    }
}
