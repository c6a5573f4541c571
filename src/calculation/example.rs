//! Published requests.

/// A request of `openapi/examples`. Its published answer is computed when it is needed; a test compares it with the file beside it.
pub struct Example {
    /// The name of the example in the description.
    pub name: &'static str,
    /// What it shows, in a phrase.
    pub summary: &'static str,
    /// The request, JSON text.
    pub request: &'static str,
}
