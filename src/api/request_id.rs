//! The id of a request, and what an id or a name may consist of.

use std::fmt;

use actix_web::HttpMessage;
use uuid::Uuid;

/// The id of a request: the caller's, or one made here.
#[derive(Clone, Debug)]
pub struct RequestId(String);

impl RequestId {
    /// The header of requests and answers that carries it.
    pub const HEADER: &'static str = "x-request-id";

    /// The caller's id if it is safe in logs and headers, else a new one.
    pub fn of_request(request: &impl HttpMessage) -> Self {
        let sent =
            request.headers().get(Self::HEADER).and_then(|value| value.to_str().ok()).filter(|id| is_plain_name(id));
        Self(match sent {
            Some(id) => id.to_owned(),
            None => Uuid::now_v7().hyphenated().encode_lower(&mut Uuid::encode_buffer()).to_owned(),
        })
    }

    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for RequestId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Whether a name is safe in logs and headers: 1 to 64 letters, digits, `-`, `_` or `.`.
pub fn is_plain_name(name: &str) -> bool {
    (1..=64).contains(&name.len()) && name.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte))
}
