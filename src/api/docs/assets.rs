//! The files that the documentation is made with: its own, and those of the viewer, which is loaded only when it is asked for.

use std::borrow::Cow;
use std::sync::Arc;

use actix_web::{HttpRequest, HttpResponse};
use tokio::sync::OnceCell;
use utoipa_swagger_ui::Config;

use crate::api::compute::for_request;
use crate::api::problem::Problem;
use crate::api::respond::{cached_page, for_a_year};
use crate::api::response_body::CachedDocument;

/// The query of an address that names this release: what it leads to never changes.
const RELEASE: &str = concat!("v=", env!("CARGO_PKG_VERSION"));

/// What the viewer may load: its own files, and calls to this service. Its style sheets need inline styles.
const VIEWER_SOURCES: &str =
    "script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'";

/// What the pages written here may load: files of this service, and calls to it.
pub const SOURCES: &str = "script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'";

/// A file: written here, or of the library that the viewer is made with.
pub struct Asset {
    name: &'static str,
    media_type: &'static str,
    sources: &'static str,
    /// Its text; of the library where there is none.
    own: Option<&'static str>,
    document: OnceCell<CachedDocument>,
}

impl Asset {
    const fn own(name: &'static str, media_type: &'static str, text: &'static str) -> Self {
        Self { name, media_type, sources: SOURCES, own: Some(text), document: OnceCell::const_new() }
    }

    const fn of_viewer(name: &'static str, media_type: &'static str, own: Option<&'static str>) -> Self {
        Self { name, media_type, sources: VIEWER_SOURCES, own, document: OnceCell::const_new() }
    }

    fn render(&self) -> CachedDocument {
        let text = match self.own {
            Some(own) => Cow::Owned(own.replace("{version}", env!("CARGO_PKG_VERSION")).into_bytes()),
            None => utoipa_swagger_ui::serve(self.name, Arc::new(Config::default()))
                .ok()
                .flatten()
                .map(|file| file.bytes)
                .unwrap_or_default(),
        };
        CachedDocument::new(text, self.media_type).packed()
    }

    /// The answer that is this file, packed for the first who asks: one that was written here where it is read, for it is small and must
    /// not wait behind one of the library, on the pool.
    ///
    /// # Errors
    /// 503 when the pool has no place for one of the library.
    pub async fn respond(&'static self, request: &HttpRequest) -> Result<HttpResponse, Problem> {
        let document = match self.own {
            Some(_) => self.document.get_or_init(|| std::future::ready(self.render())).await,
            None => self.document.get_or_try_init(|| for_request::run(request, |_| self.render())).await?,
        };
        let mut response = cached_page(document, self.sources, request);
        if request.query_string() == RELEASE {
            for_a_year(&mut response);
        }
        Ok(response)
    }
}

static PAGE_ASSETS: [Asset; 3] = [
    Asset::own("index.css", "text/css", include_str!("index.css")),
    Asset::own("page.js", "text/javascript", include_str!("page.js")),
    Asset::own("icon.svg", "image/svg+xml", include_str!("icon.svg")),
];

static VIEWER_ASSETS: [Asset; 7] = [
    Asset::of_viewer("index.html", "text/html; charset=utf-8", Some(include_str!("viewer/index.html"))),
    Asset::of_viewer("viewer.css", "text/css", Some(include_str!("viewer/viewer.css"))),
    Asset::of_viewer("swagger-initializer.js", "text/javascript", Some(include_str!("viewer/swagger-initializer.js"))),
    Asset::of_viewer("swagger-ui-bundle.js", "text/javascript", None),
    Asset::of_viewer("swagger-ui.css", "text/css", None),
    Asset::of_viewer("favicon-16x16.png", "image/png", None),
    Asset::of_viewer("favicon-32x32.png", "image/png", None),
];

/// A file of the pages written here.
pub fn of_pages(name: &str) -> Option<&'static Asset> {
    PAGE_ASSETS.iter().find(|asset| asset.name == name)
}

/// A file of the viewer; its page where no name is given.
pub fn of_viewer(name: &str) -> Option<&'static Asset> {
    let name = if name.is_empty() { "index.html" } else { name };
    VIEWER_ASSETS.iter().find(|asset| asset.name == name)
}

/// Whether this was the name of a file when the viewer stood at `/docs/`.
pub fn has_moved(name: &str) -> bool {
    !["", "index.html"].contains(&name) && of_viewer(name).is_some()
}
