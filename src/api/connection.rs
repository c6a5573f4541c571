//! Timeouts of connections that the HTTP library does not have.
//!
//! The library limits the time for the head of a connection's first request and for the pause between two requests, but not the time
//! for the head of a later request or for the reading of an answer. Without limits a caller could keep any number of connections.

use std::any::Any;
use std::cell::{Cell, OnceCell};
use std::net::Shutdown;
use std::rc::{Rc, Weak};
use std::time::{Duration, Instant};

use actix_web::HttpRequest;
use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::dev::{Extensions, ServiceResponse};
use actix_web::rt::net::TcpStream;
use actix_web::rt::task::JoinHandle;
use socket2::{SockRef, Socket};

use super::response_body::GuardedBody;
use crate::settings::LimitSettings;

/// Bytes from which an answer may take its caller a while to read.
const LARGE_ANSWER: u64 = 64 * 1024;

/// A connection, for as long as it is open.
struct WatchedConnection {
    /// A second handle of the same socket: the HTTP library holds the first.
    socket: Socket,
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
    pub fn until_written(self, response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
        match response.response().body().size() {
            BodySize::Sized(length) if length >= LARGE_ANSWER => {
                if let Some(connection) = &self.0 {
                    connection.last_activity.set(Instant::now());
                    connection.is_writing.set(true);
                }
                response.map_body(|_, body| GuardedBody::boxed(body, self))
            }
            _ => response,
        }
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

/// Starts the timeouts of a new connection.
pub fn watch(connection: &dyn Any, data: &mut Extensions, limits: &LimitSettings) {
    let Some(stream) = connection.downcast_ref::<TcpStream>() else { return };
    if let Err(error) = start_watch(&SockRef::from(stream), data, limits) {
        // The connection is served in spite of that.
        tracing::warn!("a connection is not watched: {error}");
    }
}

fn start_watch(socket: &Socket, data: &mut Extensions, limits: &LimitSettings) -> std::io::Result<()> {
    // For a caller that reads nothing of its answer (RFC 5482).
    socket.set_tcp_user_timeout(Some(limits.idle))?;
    let socket = socket.try_clone()?;
    let watched = Rc::new(WatchedConnection {
        socket,
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
