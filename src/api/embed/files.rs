//! The files of the helper, of this release and of those before it.

use std::sync::OnceLock;

use actix_web::http::header::{self, HeaderName, HeaderValue};
use actix_web::{HttpRequest, HttpResponse};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha384};
use tokio::sync::OnceCell;

use crate::api::compute::for_request;
use crate::api::problem::{Problem, ProblemCode};
use crate::api::respond::{cached_document, for_a_year};
use crate::api::response_body::CachedDocument;

/// This release.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// A file of the helper in a release.
struct HelperFile {
    version: &'static str,
    name: &'static str,
    media_type: &'static str,
    text: &'static str,
    document: OnceCell<CachedDocument>,
}

impl HelperFile {
    const fn new(version: &'static str, name: &'static str, media_type: &'static str, text: &'static str) -> Self {
        Self { version, name, media_type, text, document: OnceCell::const_new() }
    }

    /// The answer, which any page may use. It is packed for the first who asks, on the pool: the module is too large for a thread that
    /// answers others.
    async fn respond(&'static self, request: &HttpRequest) -> Result<HttpResponse, Problem> {
        let pack = |_| CachedDocument::new(self.text, self.media_type).packed();
        let document = self.document.get_or_try_init(|| for_request::run(request, pack)).await?;
        let mut response = cached_document(document, request);
        for (name, value) in [
            (header::ACCESS_CONTROL_ALLOW_ORIGIN, "*"),
            (HeaderName::from_static("cross-origin-resource-policy"), "cross-origin"),
        ] {
            response.headers_mut().insert(name, HeaderValue::from_static(value));
        }
        Ok(response)
    }
}

/// The files of a release, which stand in a folder.
macro_rules! release {
    ($version:expr, $folder:literal) => {
        [
            HelperFile::new($version, "helper.js", "text/javascript", include_str!(concat!($folder, "helper.js"))),
            HelperFile::new(
                $version,
                "helper.d.ts",
                "text/plain; charset=utf-8",
                include_str!(concat!($folder, "helper.d.ts")),
            ),
            HelperFile::new(
                $version,
                "custom-elements.json",
                "application/json",
                include_str!(concat!($folder, "custom-elements.json")),
            ),
        ]
    };
}

static LATEST: [HelperFile; 3] = release!(VERSION, "");

/// What the page for frames is made with: of this release alone, for it is that page's own.
static FRAME: [HelperFile; 2] = [
    HelperFile::new(VERSION, "frame.js", "text/javascript", include_str!("frame.js")),
    HelperFile::new(VERSION, "frame.css", "text/css", include_str!("frame.css")),
];

/// What was released. A folder is added with each release, and none is ever taken away or changed.
static RELEASED: [[HelperFile; 3]; 3] = [
    release!("0.10.0", "released/0.10.0/"),
    release!("0.11.0", "released/0.11.0/"),
    release!("0.12.0", "released/0.12.0/"),
];

/// A file of the newest release, by the address that follows it.
///
/// # Errors
/// 404 for a file that it does not have; 503 when the pool has no place.
pub async fn latest(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let name = request.match_info().query("file");
    let file = LATEST.iter().find(|file| file.name == name);
    file.ok_or_else(|| Problem::new(ProblemCode::NotFound))?.respond(&request).await
}

/// A file of the release that the address names, to be kept for ever.
///
/// # Errors
/// 404 for a release or a file that does not exist; 503 when the pool has no place.
pub async fn released(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let [version, name] = ["version", "file"].map(|part| request.match_info().query(part));
    let mut files = LATEST.iter().chain(&FRAME).chain(RELEASED.iter().flatten());
    let file = files.find(|file| file.version == version && file.name == name);
    let mut response = file.ok_or_else(|| Problem::new(ProblemCode::NotFound))?.respond(&request).await?;
    for_a_year(&mut response);
    Ok(response)
}

/// What a page pins the module of this release by (Subresource Integrity).
pub fn integrity() -> &'static str {
    static INTEGRITY: OnceLock<String> = OnceLock::new();
    INTEGRITY.get_or_init(|| hash(LATEST[0].text))
}

fn hash(text: &str) -> String {
    format!("sha384-{}", STANDARD.encode(Sha384::digest(text)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Written by `tests/contract/release`: a page that pins a file by its hash must get that file.
    const HASHES: &str = include_str!("released/hashes.txt");

    #[test]
    fn released_files_are_those_that_were_released() {
        let of_file = |file: &HelperFile| format!("{} {} {}", file.version, file.name, hash(file.text));
        let served: Vec<_> = RELEASED.iter().flatten().map(of_file).collect();
        assert_eq!(served, HASHES.lines().collect::<Vec<_>>());
    }

    #[test]
    fn this_release_is_what_was_released_of_it() {
        for released in RELEASED.iter().flatten().filter(|file| file.version == VERSION) {
            let latest = LATEST.iter().find(|file| file.name == released.name).unwrap();
            assert_eq!(hash(latest.text), hash(released.text), "{}: it needs a version of its own", latest.name);
        }
    }
}
