//! The HTTP interface: routes, problems, documentation, health, telemetry. The only module that answers HTTP.
//!
//! A request passes [`middleware::observe`] (id, log line, counters), CORS and [`middleware::admit`] (keys and limits, decided by
//! [`admission`]) and reaches its handler in [`routes`], which [`respond::handle`] runs. [`body`] decodes it, [`weather`] replaces a
//! place by its forecast, the calculation answers it, and [`respond`] makes the answer: a report, a document or a [`problem`].

pub mod admission;
pub mod answering;
pub mod app_state;
pub mod batch;
pub mod body;
pub mod caller_shares;
pub mod compute;
pub mod connection;
mod content_coding;
pub mod content_language;
pub mod cross_origin;
pub mod deprecation;
pub mod description;
pub mod docs;
pub mod documentation;
pub mod drain;
pub mod drawing_query;
pub mod embed;
pub mod forms;
pub mod front;
pub mod health;
pub mod json_limits;
mod markdown;
pub mod messages;
pub mod metrics;
pub mod middleware;
pub mod pages;
pub mod paths;
pub mod plan_link;
pub mod problem;
pub mod query;
pub mod reference_tables;
pub mod request_context;
pub mod request_id;
pub mod respond;
pub mod response_body;
pub mod routes;
pub mod serve;
pub mod sliced_body;
pub mod strict;
pub mod structure;
pub mod telemetry;
pub mod unwritten;
pub mod wake_count;
pub mod watchdog;
pub mod weather;
