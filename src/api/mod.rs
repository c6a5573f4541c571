//! The HTTP edge: routes, problems, documentation, health, telemetry. The only room that answers HTTP.
//!
//! A request passes [`middleware::observe`] (id, log line, counters), CORS and [`admission::admit`] (keys and limits), reaches its
//! handler in [`routes`], where [`middleware::handle`] catches what fails; [`body`] reads it, [`weather`] puts a forecast where a
//! place stands, the calculation answers it, [`problem`] refuses it.

pub mod app_state;
pub mod batch;
pub mod body;
pub mod connection;
pub mod depth;
pub mod description;
pub mod documentation;
pub mod response_body;
pub mod admission;
pub mod middleware;
pub mod health;
pub mod response_body;
pub mod metrics;
pub mod pages;
pub mod problem;
pub mod reference;
pub mod request_context;
pub mod routes;
pub mod serve;
pub mod strict;
pub mod telemetry;
pub mod drain;
pub mod weather;
