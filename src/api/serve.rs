//! The life of an instance: bind, test itself, serve, drain, stop.

use std::net::TcpListener;

use actix_cors::Cors;
use actix_web::dev::ServerHandle;
use actix_web::middleware::{Condition, from_fn};
use actix_web::{App, HttpServer, web};
use tokio::signal::unix::{SignalKind, signal};

use super::edge::{Edge, RequestId};
use super::guard::observed;
use super::{health, routes};
use crate::calculation;
use crate::settings::Settings;

/// Takes the address of the settings; port 0 takes any that is free.
///
/// # Errors
/// When it cannot be taken.
pub fn bind(settings: &Settings) -> std::io::Result<TcpListener> {
    TcpListener::bind(settings.listen)
        .map_err(|error| std::io::Error::new(error.kind(), format!("LOOPWRIGHT_LISTEN {}: {error}", settings.listen)))
}

/// Serves until SIGTERM or SIGINT.
///
/// # Errors
/// When the server fails.
pub async fn run(settings: Settings, listener: TcpListener) -> std::io::Result<()> {
    let address = listener.local_addr()?;
    let edge = web::Data::new(Edge::new(settings).map_err(std::io::Error::other)?);
    let server = {
        let edge = edge.clone();
        HttpServer::new(move || {
            App::new()
                .app_data(edge.clone())
                .wrap(Condition::new(!edge.settings.cors_origins.is_empty(), cors(&edge.settings)))
                .wrap(from_fn(observed))
                .configure(routes::configure)
        })
    }
    .workers(edge.settings.workers)
    .shutdown_timeout(edge.settings.stop_timeout.as_secs())
    .disable_signals()
    .listen(listener)?
    .run();

    calculation::prepare();
    match health::self_test() {
        Ok(()) => edge.set_ready(true),
        Err(row) => tracing::error!(row, "the self-test failed; this instance never becomes ready"),
    }
    tracing::info!("listening on http://{address}, documentation at http://{address}/docs/");
    let stop = actix_web::rt::spawn(stop_on_signal(server.handle(), edge));
    let outcome = server.await;
    stop.abort();
    outcome
}

/// SIGTERM: readiness fails, balancers look elsewhere, then running requests end. SIGINT, from a terminal, does not wait.
async fn stop_on_signal(server: ServerHandle, edge: web::Data<Edge>) -> std::io::Result<()> {
    let mut terminate = signal(SignalKind::terminate())?;
    let mut interrupt = signal(SignalKind::interrupt())?;
    tokio::select! {
        _ = terminate.recv() => {
            tracing::info!("stopping: readiness fails, then running requests end");
            edge.set_ready(false);
            tokio::time::sleep(edge.settings.drain_delay).await;
        }
        _ = interrupt.recv() => edge.set_ready(false),
    }
    server.stop(true).await;
    Ok(())
}

/// Lets the pages of the set origins call, and read the request id.
fn cors(settings: &Settings) -> Cors {
    let cors = Cors::default()
        .allowed_methods(["GET", "HEAD", "POST"])
        .allowed_headers(["content-type", "if-none-match", RequestId::HEADER])
        .expose_headers([RequestId::HEADER, "etag", "retry-after"])
        .max_age(3600);
    if settings.cors_origins.iter().any(|origin| origin == "*") {
        cors.send_wildcard().allow_any_origin()
    } else {
        settings.cors_origins.iter().fold(cors, |cors, origin| cors.allowed_origin(origin))
    }
}
