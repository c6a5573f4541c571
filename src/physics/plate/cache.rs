//! Factored bodies that are kept between questions, for factoring takes longer than most of what is asked of one.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

/// How many bodies a cache keeps, the latest ones. One takes some hundred kilobytes.
const MAX_BODIES: usize = 32;

/// The latest bodies of a kind, by the two dimensions in metres that make them.
pub struct BodyCache<Body> {
    bodies: Mutex<VecDeque<([u64; 2], Arc<Body>)>>,
}

impl<Body> BodyCache<Body> {
    /// A cache that keeps nothing yet.
    pub const fn empty() -> Self {
        Self { bodies: Mutex::new(VecDeque::new()) }
    }

    /// The body of these dimensions, factored if it is not kept; `None` where there is none.
    pub fn body(&self, dimensions: [f64; 2], factor: impl FnOnce() -> Option<Body>) -> Option<Arc<Body>> {
        let key = dimensions.map(f64::to_bits);
        let bodies = || self.bodies.lock().unwrap_or_else(PoisonError::into_inner);
        let known = bodies().iter().find(|(other, _)| *other == key).map(|(_, body)| body.clone());
        if known.is_some() {
            return known;
        }
        // Factored without the lock, so that nobody waits for it; two may factor the same.
        let body = Arc::new(factor()?);
        let mut bodies = bodies();
        bodies.truncate(MAX_BODIES - 1);
        bodies.push_front((key, body.clone()));
        Some(body)
    }
}
