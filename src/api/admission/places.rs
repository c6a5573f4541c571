//! Where a publishable key is good: on pages of these origins, for these paths. Such a key stands in a page, so it is no secret.

use actix_web::dev::ServiceRequest;
use actix_web::http::header;
use reqwest::Url;

use crate::api::cross_origin::PAGE_METHODS;
use crate::api::problem::{Problem, ProblemCode};
use crate::calculation::report::{MAX_NAME_CHARS, Statement};
use crate::settings;

/// What is said to an entry with one of the two, or an empty one.
pub const TOGETHER: &str = "origins and paths go together, and neither may be empty: list the pages that have the key, such as \
    https://shop.example, and what it is for, such as /v1/loop-sizing";

/// The origins and the paths of a key, each compared byte by byte with what was sent.
pub struct Places {
    /// The origins, as browsers send them.
    pub origins: Vec<String>,
    paths: Vec<String>,
}

impl Places {
    /// The places of an entry in the file of keys; `None` for a secret key, which has none.
    ///
    /// # Errors
    /// What to write instead.
    pub fn of_entry(
        origins: Option<Vec<String>>,
        paths: Option<Vec<String>>,
        is_path: fn(&str) -> bool,
    ) -> Result<Option<Self>, String> {
        let (origins, paths) = match (origins, paths) {
            (None, None) => return Ok(None),
            (Some(origins), Some(paths)) if !origins.is_empty() && !paths.is_empty() => (origins, paths),
            _ => return Err(TOGETHER.to_owned()),
        };
        if let Some(other) = origins.iter().find(|origin| !is_page_origin(origin)) {
            return Err(format!(
                "origins holds \"{}\"; write each as browsers send it: https://shop.example, in lower case, with a port only \
                 where it is not 443, and nothing behind; on this machine also http://localhost:3000, 127.0.0.1 or [::1]; no *",
                other.escape_default()
            ));
        }
        if let Some(other) = paths.iter().find(|path| !is_path(path)) {
            return Err(format!(
                "paths holds \"{}\", which the service does not have; write each as the description does, such as \
                 /v1/loop-sizing, without a query or a slash at the end",
                other.escape_default()
            ));
        }
        Ok(Some(Self { origins, paths }))
    }

    /// Whether a request is from one of the origins, or of a page of the service itself, and for one of the paths, as it was sent, before
    /// anything is decoded. Of a service without a public address the pages on the same machine are its own.
    ///
    /// # Errors
    /// 403 that says which of them is not listed, or that the method or a repeated header is none for pages.
    pub fn check(&self, request: &ServiceRequest, own_origin: Option<&str>) -> Result<(), Problem> {
        let is_own = |origin: &[u8]| match own_origin {
            Some(own) => own.as_bytes() == origin,
            None => is_same_machine(request, origin),
        };
        let mut sent = request.headers().get_all(header::ORIGIN);
        let detail = match (sent.next(), sent.next()) {
            (None, _) => Statement::new("problems-key-no-origin"),
            (Some(_), Some(_)) => Statement::new("problems-header-twice").text("header", "Origin"),
            (Some(origin), None) if !is_listed(&self.origins, origin.as_bytes()) && !is_own(origin.as_bytes()) => {
                Statement::new("problems-key-origin").text("origin", shortened(origin.as_bytes()))
            }
            _ if !is_listed(&self.paths, request.path().as_bytes()) => {
                Statement::new("problems-key-path").text("path", shortened(request.path().as_bytes()))
            }
            _ if !PAGE_METHODS.contains(&request.method().as_str()) => {
                Statement::new("problems-page-method").text("methods", PAGE_METHODS.join(", "))
            }
            _ => return Ok(()),
        };
        Err(Problem::new(ProblemCode::KeyNotForHere).detail(detail))
    }
}

fn is_listed(list: &[String], sent: &[u8]) -> bool {
    list.iter().any(|listed| listed.as_bytes() == sent)
}

/// Whether an origin is that of the address asked for, on this machine: no name of elsewhere can be made to lead here.
fn is_same_machine(request: &ServiceRequest, origin: &[u8]) -> bool {
    let host = request.headers().get(header::HOST).map(header::HeaderValue::as_bytes).unwrap_or_default();
    origin.strip_prefix(b"http://") == Some(host) && str::from_utf8(origin).is_ok_and(is_page_origin)
}

/// What was sent, as far as an answer repeats it.
fn shortened(sent: &[u8]) -> String {
    String::from_utf8_lossy(sent).chars().take(MAX_NAME_CHARS).collect()
}

/// Whether a text is an origin as browsers send it, of a page that nobody on the way can have changed: `https`, or this machine.
fn is_page_origin(text: &str) -> bool {
    settings::is_origin(text)
        && Url::parse(text).is_ok_and(|url| {
            let is_here = matches!(url.host_str(), Some("localhost" | "127.0.0.1" | "[::1]"));
            url.scheme() == "https" || url.scheme() == "http" && is_here
        })
}

#[cfg(test)]
mod tests {
    use super::is_page_origin;

    #[test]
    fn an_origin_is_written_as_browsers_send_it() {
        for origin in [
            "https://shop.tern-island.example",
            "https://shop.tern-island.example:8443",
            "https://xn--insel-kva.example",
            "https://192.0.2.7",
            "http://localhost",
            "http://localhost:3000",
            "http://127.0.0.1:3000",
            "http://[::1]:3000",
        ] {
            assert!(is_page_origin(origin), "{origin}");
        }
        for other in [
            "",
            "*",
            "null",
            "https://",
            "https://*.tern-island.example",
            "https://shop.tern-island.example/",
            "https://shop.tern-island.example/gates",
            "https://shop.tern-island.example?a=b",
            "https://shop.tern-island.example#a",
            "https://shop.tern-island.example:443",
            "https://shop.tern-island.example:08443",
            "https://Shop.tern-island.example",
            "HTTPS://shop.tern-island.example",
            "https://user@shop.tern-island.example",
            "https://shop.tern-island.example\n",
            " https://shop.tern-island.example",
            "https://inselküste.example",
            "https://sh%6fp.example",
            "https://0x7f.1",
            "http://shop.tern-island.example",
            "http://localhost:80",
            "http://localhost.tern-island.example",
            "http://127.0.0.2:3000",
            "http://[0:0:0:0:0:0:0:1]:3000",
            "file:///gates.html",
            "shop.tern-island.example",
            "wss://shop.tern-island.example",
        ] {
            assert!(!is_page_origin(other), "{other}");
        }
    }
}
