//! The life of an instance: bind, self-test, serve, drain, stop.

use std::io::Error;
use std::net::{SocketAddr, TcpListener};
use std::time::Duration;

use actix_cors::Cors;
use actix_web::dev::{Server, ServerHandle};
use actix_web::middleware::{Condition, from_fn};
use actix_web::{App, HttpServer, web};
use futures_util::future::try_join;
use tokio::signal::unix::{Signal, SignalKind, signal};

use super::app_state::AppState;
use super::middleware::{admit, observe};
use super::request_id::RequestId;
use super::{connection, health, routes, watchdog};
use crate::calculation;
use crate::settings::Settings;
use crate::wording;

/// How often idle addresses are forgotten.
const FORGET_INTERVAL: Duration = Duration::from_secs(60);

/// The most connections of the listener of the counters.
const MAX_METRICS_CONNECTIONS: usize = 64;

/// The addresses that an instance serves on.
pub struct Listeners {
    /// For all callers.
    pub service: TcpListener,
    /// For `/metrics`, if it has an address of its own.
    pub metrics: Option<TcpListener>,
}

/// Binds the addresses of the settings; port 0 is any free port.
///
/// # Errors
/// When one cannot be bound; the message names its variable.
pub fn bind(settings: &Settings) -> std::io::Result<Listeners> {
    let bind = |variable: &str, address: SocketAddr| {
        TcpListener::bind(address).map_err(|error| Error::new(error.kind(), format!("{variable} {address}: {error}")))
    };
    Ok(Listeners {
        service: bind("LOOPWRIGHT_LISTEN", settings.listen)?,
        metrics: settings.metrics_listen.map(|address| bind("LOOPWRIGHT_METRICS_LISTEN", address)).transpose()?,
    })
}

/// Serves until SIGTERM or SIGINT; SIGHUP reads the keys again.
///
/// # Errors
/// When the server fails.
pub async fn run(settings: Settings, listeners: Listeners) -> std::io::Result<()> {
    // From here on no signal ends the process before its requests have ended.
    let signals = Signals::listen()?;
    let address = listeners.service.local_addr()?;
    let state = web::Data::new(AppState::new(settings).map_err(Error::other)?);
    let service = service(&state, listeners.service)?;
    let metrics = listeners.metrics.map(|listener| metrics(&state, listener)).transpose()?;

    calculation::prepare();
    wording::prepare();
    match health::self_test() {
        Ok(()) => state.set_ready(),
        Err(row) => tracing::error!(row, "the self-test failed; this instance never becomes ready"),
    }
    tracing::info!("listening on http://{address}, documentation at http://{address}/docs/");
    let metrics_handle = metrics.as_ref().map(Server::handle);
    let tasks = [
        actix_web::rt::spawn(stop(
            signals.terminate,
            signals.interrupt,
            service.handle(),
            metrics_handle,
            state.clone(),
        )),
        actix_web::rt::spawn(reload_keys(signals.hangup, state.clone())),
        actix_web::rt::spawn(forget_idle_addresses(state)),
    ];
    let outcome = match metrics {
        Some(metrics) => try_join(service, metrics).await.map(|_| ()),
        None => service.await,
    };
    for task in tasks {
        task.abort();
    }
    outcome
}

/// The service itself.
fn service(state: &web::Data<AppState>, listener: TcpListener) -> std::io::Result<Server> {
    let (settings, shared) = (&state.settings, state.clone());
    let limits = &settings.limits;
    let build = move || {
        watchdog::watch_worker();
        App::new()
            .app_data(shared.clone())
            .wrap(from_fn(admit))
            .wrap(Condition::new(!shared.settings.cors_origins.is_empty(), cors(&shared.settings)))
            .wrap(from_fn(observe))
            .configure(routes::configure)
    };
    let watched = limits.clone();
    Ok(HttpServer::new(build)
        .on_connect(move |connection, data| connection::watch(connection, data, &watched))
        .workers(settings.workers)
        .max_connections(limits.connections.div_ceil(settings.workers))
        .client_request_timeout(limits.header_deadline)
        .keep_alive(limits.idle)
        .shutdown_timeout(settings.stop_timeout.as_secs_f64().ceil() as u64)
        .disable_signals()
        .listen(listener)?
        .run())
}

/// The counters, at an address that need not be public.
fn metrics(state: &web::Data<AppState>, listener: TcpListener) -> std::io::Result<Server> {
    let (limits, shared) = (&state.settings.limits, state.clone());
    let build = move || {
        let app = App::new().app_data(shared.clone()).wrap(from_fn(observe));
        app.configure(routes::configure_metrics)
    };
    let watched = limits.clone();
    Ok(HttpServer::new(build)
        .on_connect(move |connection, data| connection::watch(connection, data, &watched))
        .workers(1)
        .max_connections(MAX_METRICS_CONNECTIONS)
        .client_request_timeout(limits.header_deadline)
        .keep_alive(limits.idle)
        .disable_signals()
        .listen(listener)?
        .run())
}

/// The signals that an instance handles.
struct Signals {
    terminate: Signal,
    interrupt: Signal,
    hangup: Signal,
}

impl Signals {
    fn listen() -> std::io::Result<Self> {
        Ok(Self {
            terminate: signal(SignalKind::terminate())?,
            interrupt: signal(SignalKind::interrupt())?,
            hangup: signal(SignalKind::hangup())?,
        })
    }
}

/// SIGTERM: readiness fails, balancers choose other instances, then running requests end. SIGINT, from a terminal, stops at once, also
/// in the middle of that.
async fn stop(
    mut terminate: Signal,
    mut interrupt: Signal,
    service: ServerHandle,
    metrics: Option<ServerHandle>,
    state: web::Data<AppState>,
) {
    let graceful = async {
        terminate.recv().await;
        tracing::info!("stopping: readiness fails, then running requests end");
        state.set_stopping();
        tokio::time::sleep(state.settings.drain_delay).await;
        service.stop(true).await;
    };
    tokio::select! {
        () = graceful => (),
        _ = interrupt.recv() => service.stop(false).await,
    }
    if let Some(metrics) = metrics {
        metrics.stop(false).await;
    }
}

async fn reload_keys(mut hangup: Signal, state: web::Data<AppState>) {
    while hangup.recv().await.is_some() {
        state.admission.reload_keys();
    }
}

async fn forget_idle_addresses(state: web::Data<AppState>) {
    loop {
        tokio::time::sleep(FORGET_INTERVAL).await;
        state.admission.forget_idle();
    }
}

/// Permits pages of the configured origins to call and to read the request id.
pub fn cors(settings: &Settings) -> Cors {
    let cors = Cors::default()
        .allowed_methods(["GET", "HEAD", "POST"])
        .allowed_headers(["authorization", "content-type", "if-none-match", RequestId::HEADER])
        .expose_headers([RequestId::HEADER, "etag", "retry-after", "www-authenticate"])
        .max_age(3600);
    if settings.cors_origins.iter().any(|origin| origin == "*") {
        cors.send_wildcard().allow_any_origin()
    } else {
        settings.cors_origins.iter().fold(cors, |cors, origin| cors.allowed_origin(origin))
    }
}
