//! The life of an instance: bind, self-test, serve, drain, stop.

use std::io::Error;
use std::net::{SocketAddr, TcpListener};
use std::time::Duration;

use actix_web::dev::{Server, ServerHandle};
use actix_web::middleware::{Condition, from_fn};
use actix_web::{App, HttpServer, web};
use futures_util::future::{try_join, try_join_all};
use tokio::signal::unix::{Signal, SignalKind, signal};

use super::app_state::AppState;
use super::middleware::{admit, observe};
use super::{connection, cross_origin, health, routes, watchdog};
use crate::calculation;
use crate::settings::Settings;
use crate::wording;

/// How often idle addresses are forgotten.
const FORGET_INTERVAL: Duration = Duration::from_secs(60);

/// The most connections of a listener beside the main one.
const MAX_CONNECTIONS_ASIDE: usize = 64;

/// The addresses that an instance serves on.
pub struct Listeners {
    /// For all callers.
    pub service: TcpListener,
    /// For `/metrics`, if it has an address of its own.
    pub metrics: Option<TcpListener>,
    /// For `/health/`, if it has an address of its own.
    pub probes: Option<TcpListener>,
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
        probes: settings.probe_listen.map(|address| bind("LOOPWRIGHT_PROBE_LISTEN", address)).transpose()?,
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
    let addresses = [&listeners.metrics, &listeners.probes]
        .map(|listener| listener.as_ref().and_then(|listener| listener.local_addr().ok()));
    let aside = [
        listeners.metrics.map(|listener| aside(&state, listener, routes::configure_metrics)).transpose()?,
        listeners.probes.map(|listener| aside(&state, listener, routes::configure_probes)).transpose()?,
    ];
    let aside: Vec<_> = aside.into_iter().flatten().collect();

    calculation::prepare();
    wording::prepare();
    match health::self_test() {
        Ok(()) => state.set_ready(),
        Err(row) => tracing::error!(row, "the self-test failed; this instance never becomes ready"),
    }
    let (metrics, probes) = (addresses[0].map(tracing::field::display), addresses[1].map(tracing::field::display));
    tracing::info!(
        metrics,
        probes,
        "listening on http://{address}, begin at http://{address}/, documentation at http://{address}/docs/"
    );
    let aside_handles = aside.iter().map(Server::handle).collect();
    let tasks = [
        actix_web::rt::spawn(stop(
            signals.terminate,
            signals.interrupt,
            service.handle(),
            aside_handles,
            state.clone(),
        )),
        actix_web::rt::spawn(reload_keys(signals.hangup, state.clone())),
        actix_web::rt::spawn(forget_idle_addresses(state)),
    ];
    let outcome = try_join(service, try_join_all(aside)).await.map(|_| ());
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
        let keys = shared.clone();
        let cors = cross_origin::cors(&shared.settings, move |origin| keys.admission.has_key_for(origin));
        App::new()
            .app_data(shared.clone())
            .wrap(from_fn(admit))
            .wrap(Condition::new(shared.settings.may_have_pages(), cors))
            .wrap(from_fn(observe))
            .configure(routes::configure)
    };
    let watched = state.clone();
    Ok(HttpServer::new(build)
        .on_connect(move |connection, data| connection::watch(connection, data, &watched))
        // A caller that hangs up is noticed while its answer is computed.
        .h1_allow_half_closed(false)
        .workers(settings.workers)
        .max_connections(limits.connections.div_ceil(settings.workers))
        .client_request_timeout(limits.header_deadline)
        .keep_alive(limits.idle)
        .shutdown_timeout(settings.stop_timeout.as_secs_f64().ceil() as u64)
        .disable_signals()
        .listen(listener)?
        .run())
}

/// A service beside the main one, with one thread of its own and an address that need not be public: the counters, or the probes.
fn aside(
    state: &web::Data<AppState>,
    listener: TcpListener,
    routes: fn(&mut web::ServiceConfig),
) -> std::io::Result<Server> {
    let (limits, shared) = (&state.settings.limits, state.clone());
    let build = move || App::new().app_data(shared.clone()).wrap(from_fn(observe)).configure(routes);
    let watched = state.clone();
    Ok(HttpServer::new(build)
        .on_connect(move |connection, data| connection::watch_unlimited(connection, data, &watched))
        .workers(1)
        .max_connections(MAX_CONNECTIONS_ASIDE)
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
    aside: Vec<ServerHandle>,
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
    for server in aside {
        server.stop(false).await;
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
