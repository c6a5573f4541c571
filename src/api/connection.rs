//! What ends a connection whose caller has gone silent in the middle.
//!
//! The HTTP library times the head of a connection's first request and the pause between two requests. It times neither the head
//! of a later request nor the reading of an answer; without this a caller could keep as many connections as it likes.

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

/// Answers of so many bytes may take their caller a while to read.
const LARGE: u64 = 64 * 1024;

/// A connection, for as long as it is open.
struct Connection {
    /// A second handle of the same socket: the HTTP library holds the first.
    socket: Socket,
    in_work: Cell<usize>,
    /// When the last request ended, or a large answer began to be written.
    last_sign: Cell<Instant>,
    is_writing: Cell<bool>,
    watch: OnceCell<JoinHandle<()>>,
}

impl Drop for Connection {
    fn drop(&mut self) {
        if let Some(watch) = self.watch.get() {
            watch.abort();
        }
    }
}

/// A request of a connection that is in work.
pub struct ActiveRequest(Option<Rc<Connection>>);

impl ActiveRequest {
    /// Begins a request.
    pub fn begin(request: &HttpRequest) -> Self {
        let connection = request.conn_data::<Rc<Connection>>().cloned();
        if let Some(connection) = &connection {
            connection.in_work.set(connection.in_work.get() + 1);
        }
        Self(connection)
    }

    /// Keeps the request in work until its answer is written, if that is large.
    pub fn until_written(self, response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
        match response.response().body().size() {
            BodySize::Sized(length) if length >= LARGE => {
                if let Some(connection) = &self.0 {
                    connection.last_sign.set(Instant::now());
                    connection.is_writing.set(true);
                }
                response.map_body(|_, answer| GuardedBody::until_written(answer, self))
            }
            _ => response,
        }
    }
}

impl Drop for ActiveRequest {
    fn drop(&mut self) {
        if let Some(connection) = &self.0 {
            connection.in_work.set(connection.in_work.get() - 1);
            connection.last_sign.set(Instant::now());
            connection.is_writing.set(false);
        }
    }
}

/// Watches a new connection.
pub fn watch(connection: &dyn Any, data: &mut Extensions, limits: &LimitSettings) {
    let Some(stream) = connection.downcast_ref::<TcpStream>() else { return };
    if let Err(error) = begin(&SockRef::from(stream), data, limits) {
        // Without a second handle the connection is served all the same.
        tracing::warn!("a connection is not watched: {error}");
    }
}

fn begin(socket: &Socket, data: &mut Extensions, limits: &LimitSettings) -> std::io::Result<()> {
    // A caller that takes nothing of its answer (RFC 5482).
    socket.set_tcp_user_timeout(Some(limits.idle))?;
    let socket = socket.try_clone()?;
    let watched = Rc::new(Connection {
        socket,
        in_work: Cell::new(0),
        last_sign: Cell::new(Instant::now()),
        is_writing: Cell::new(false),
        watch: OnceCell::new(),
    });
    let allowed = Allowed { silent: limits.idle + limits.header_deadline, writing: limits.answer_deadline };
    let watch = actix_web::rt::spawn(end_when_due(Rc::downgrade(&watched), allowed));
    // Set once, here.
    let _ = watched.watch.set(watch);
    data.insert(watched);
    Ok(())
}

/// How long a connection may be silent, and how long one large answer may be written.
struct Allowed {
    silent: Duration,
    writing: Duration,
}

/// Ends a connection that has no request in work and had none for so long, or whose caller reads a large answer for too long. The
/// library, with its own times, comes first wherever it can; the second handle is closed together with the connection.
async fn end_when_due(connection: Weak<Connection>, allowed: Allowed) {
    let step = allowed.silent.min(allowed.writing);
    loop {
        let due = {
            let Some(connection) = connection.upgrade() else { return };
            let now = Instant::now();
            let due = match (connection.is_writing.get(), connection.in_work.get()) {
                (true, _) => connection.last_sign.get() + allowed.writing,
                (false, 0) => connection.last_sign.get() + allowed.silent,
                _ => now + step,
            };
            if due <= now {
                // It may be gone already.
                let _ = connection.socket.shutdown(Shutdown::Both);
                return;
            }
            due.min(now + step)
        };
        tokio::time::sleep_until(due.into()).await;
    }
}
