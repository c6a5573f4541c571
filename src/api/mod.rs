//! The HTTP edge: routes, problems, documentation, health, telemetry. The only room that answers HTTP.
//!
//! A request passes [`guard::observed`] (id, log line, counters), CORS and [`gate::admitted`] (keys and limits), reaches its
//! handler in [`routes`], where [`guard::guarded`] catches what fails; [`body`] reads it, [`weather`] puts a forecast where a
//! place stands, the calculation answers it, [`problem`] refuses it.

pub mod app_state;
pub mod batch;
pub mod body;
pub mod connection;
pub mod depth;
pub mod description;
pub mod documentation;
pub mod fixed;
pub mod gate;
pub mod guard;
pub mod health;
pub mod held;
pub mod metrics;
pub mod pages;
pub mod problem;
pub mod reference;
pub mod request_context;
pub mod routes;
pub mod serve;
pub mod strict;
pub mod telemetry;
pub mod unread;
pub mod weather;
