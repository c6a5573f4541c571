//! What holds for the tree as a whole: which module may use which, no circles, one name for one thing.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod arrows;
mod circles;
mod members;
mod names;
mod source;
mod translations;
mod wording;
