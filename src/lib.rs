//! Loopwright: a vehicle-loop specialist's calculations as a stateless JSON service.
//!
//! # The map
//!
//! A request enters by [`api`], which reads JSON and turns every failure into a problem; a [`calculation`] reads its nouns into
//! typed quantities ([`quantity`]), applies what the trade knows ([`practice`]) and the laws of nature ([`physics`]), and
//! answers a report with its findings, assumptions, cautions and sources. Where a request names a place instead of its weather,
//! [`forecast`] has fetched that before. A [`drawing`] shows a report as SVG.
//!
//! Arrows run one way: `api → forecast, drawing → calculation → practice, quantity → physics`. Nothing below `forecast` knows of
//! HTTP; `physics` knows of nothing but numbers in SI units. A test holds the arrows.

pub mod api;
pub mod calculation;
pub mod drawing;
pub mod forecast;
pub mod physics;
pub mod practice;
pub mod quantity;
pub mod settings;
pub mod vocabulary;
