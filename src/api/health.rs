//! Whether an instance is alive, whether it should get requests, and its counters.

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse};

use super::app_state::AppState;
use super::problem::{Problem, ProblemCode};
use crate::physics::winding::{Winding, WindingShape};
use crate::physics::{circuit, conductor};

/// The process answers.
///
/// # Errors
/// None.
pub fn live(_: &HttpRequest) -> Result<HttpResponse, Problem> {
    Ok(status_response("live"))
}

/// The self-test has passed, and the instance is not stopping.
///
/// # Errors
/// 503 otherwise.
pub fn ready(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    if AppState::of(request).is_ready() {
        Ok(status_response("ready"))
    } else {
        Err(Problem::new(ProblemCode::Unavailable))
    }
}

/// The counters.
///
/// # Errors
/// None.
pub fn metrics(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    let state = AppState::of(request);
    state.metrics.waiting.set(state.pool.waiting() as u64);
    state.metrics.unwritten.set(state.unwritten.bytes() as u64);
    Ok(HttpResponse::Ok()
        .content_type("application/openmetrics-text; version=1.0.0; charset=utf-8")
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(state.metrics.render()))
}

/// The counters, for callers on this machine, unless the counters have a listener of their own.
///
/// # Errors
/// 404 for all others, and for requests that a proxy on this machine forwards.
pub fn local_metrics(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    let is_forwarded = ["forwarded", "x-forwarded-for", "via"].iter().any(|name| request.headers().contains_key(*name));
    let is_local = request.peer_addr().is_some_and(|peer| peer.ip().to_canonical().is_loopback());
    if is_local && !is_forwarded && AppState::of(request).settings.metrics_listen.is_none() {
        return metrics(request);
    }
    Err(Problem::new(ProblemCode::NotFound))
}

fn status_response(status: &str) -> HttpResponse {
    HttpResponse::Ok()
        .content_type("application/json")
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .body(format!("{{\"status\":\"{status}\"}}"))
}

/// Computes reference values again: a build with broken arithmetic never becomes ready.
///
/// # Errors
/// The value that is wrong, computed and expected.
pub fn self_test() -> Result<(), String> {
    let square = |corner_cut, turns| Winding {
        shape: WindingShape::Rectangle,
        along: 1.8288,
        across: 1.8288,
        corner_cut,
        turns,
        pitch: 0.150 * 0.0254,
        wire_radius: conductor::awg_diameter(14) / 2.0,
    };
    let rows = [
        // Rosa and Grover, 1912; Neumann sums.
        ("6 x 6 ft, one turn, µH", square(0.0, 1).inductance(0.25) * 1e6, 10.524, 0.002),
        ("6 x 6 ft, three turns, µH", square(0.0, 3).inductance(0.25) * 1e6, 76.97, 0.005),
        ("6 x 6 ft, corners cut 12 in, µH", square(0.3048, 3).inductance(0.25) * 1e6, 71.11, 0.01),
        // ASTM B258 and the Bessel solution.
        ("14 AWG, inch", conductor::awg_diameter(14) / 0.0254, 0.06408, 0.002),
        (
            "14 AWG at 50 kHz",
            conductor::skin_effect(conductor::awg_diameter(14) / 2.0, 50e3, 20.0).resistance_ratio,
            1.638,
            0.005,
        ),
        // Circuit theory.
        ("share of 77 µH on 22 µH", circuit::share(77e-6, 22e-6), 0.7777, 0.002),
    ];
    for (row, computed, expected, tolerance) in rows {
        let error: f64 = (computed - expected) / expected;
        if error.is_nan() || error.abs() > tolerance {
            return Err(format!("{row}: computed {computed}, expected {expected}"));
        }
    }
    Ok(())
}
