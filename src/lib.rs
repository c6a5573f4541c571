//! Loopwright: a vehicle-loop specialist's calculations as a stateless JSON service.
//!
//! # The map
//!
//! A request enters by [`api`], which reads JSON and turns every failure into a problem. A [`calculation`] parses its nouns into
//! typed quantities ([`quantity`]), applies what the trade knows ([`practice`]) and the laws of nature ([`physics`]), and returns a
//! report with findings, assumptions, cautions and sources. Where a request names a location instead of its weather, the API asks
//! [`forecast`] before. [`wording`] gives the report its sentences, and a [`drawing`] shows it as SVG. Closed lists are declared by [`vocabulary`]; [`settings`] holds every
//! environment variable.
//!
//! Dependencies run one way: `api → forecast, drawing → wording → calculation → practice → quantity → physics`, with `vocabulary` and
//! `settings` beside them. Nothing below `forecast` knows HTTP; `physics` knows only numbers in SI units. Tests hold this, and that
//! no two files use each other in a circle.

pub mod api;
pub mod calculation;
pub mod drawing;
pub mod forecast;
pub mod physics;
pub mod practice;
pub mod quantity;
pub mod settings;
pub mod vocabulary;
pub mod wording;
