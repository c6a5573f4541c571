//! The helper on a page of its own, for pages that embed a frame and no script.

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse};
use maud::{PreEscaped, html};

use super::files::VERSION;
use crate::api::app_state::AppState;
use crate::api::content_language;
use crate::api::problem::Problem;
use crate::api::respond::framed_policy;
use crate::calculation::report::Statement;
use crate::wording::say;

/// The parameter that holds the publishable key.
const KEY: &str = "publishable-key";

/// The page. Its query holds attributes of the helper, which its script sets; the key is set here, for it must be the one whose origins
/// were looked up. Only pages of these may show it, and learn of height and cart; without keys, those that may call the service from
/// elsewhere.
///
/// # Errors
/// None.
pub fn frame(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    let state = AppState::of(request);
    let mut sent = form_urlencoded::parse(request.query_string().as_bytes()).filter(|(name, _)| name == KEY);
    let key = sent.next().map(|(_, key)| key).filter(|_| sent.next().is_none());
    let origins = match &key {
        _ if state.settings.keys.is_none() => state.settings.cors_origins.clone(),
        Some(key) => state.admission.page_origins(key.as_bytes()),
        None => Vec::new(),
    };
    // Files of this service, calls to it, and the list of stock of the page that shows it.
    let calls = ["'self'"].into_iter().chain(origins.iter().map(String::as_str)).collect::<Vec<_>>().join(" ");
    let sources =
        format!("script-src 'self'; style-src 'self'; connect-src {calls}; require-trusted-types-for 'script'");
    let language = content_language::of_request(request);
    let page = html! {
        (PreEscaped("<!doctype html>"))
        html lang=(language.tag()) data-origins=(origins.join(" ")) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width";
                meta name="color-scheme" content="light dark";
                meta name="referrer" content="no-referrer";
                title { (say(&Statement::new("front-frame"), language)) }
                link rel="stylesheet" href=(format!("{VERSION}/frame.css"));
                script type="module" src=(format!("{VERSION}/helper.js")) {}
                script type="module" src=(format!("{VERSION}/frame.js")) {}
            }
            body { loopwright-helper publishable-key=[key] {} }
        }
    };
    Ok(HttpResponse::Ok()
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .insert_header((header::VARY, "accept-language"))
        .insert_header(content_language::content_language(language))
        .insert_header(framed_policy(&sources, &origins))
        .content_type("text/html; charset=utf-8")
        .body(page.into_string()))
}
