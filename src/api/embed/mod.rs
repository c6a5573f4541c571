//! The helper that pages of shops embed: one module of each release, and a page that holds it for those that embed a frame.
//!
//! A released file never changes and is served throughout `/v1`, so that a page may pin it by its hash. The newest is also served by an
//! address without a release, which follows it.

mod files;
mod frame;

pub use files::{VERSION, integrity, latest, released};
pub use frame::frame;

/// The page for frames.
pub const FRAME_PATH: &str = "/embed/frame";
