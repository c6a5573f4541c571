//! What must stay true of the source itself, so that a newcomer finds their way.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod arrows;
