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

/// The page. Its query holds attributes of the helper. Only pages of the origins of its key may show it, and learn of height and cart;
/// without keys, those that may call the service from elsewhere.
///
/// # Errors
/// None.
pub async fn frame(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let state = AppState::of(&request);
    let key = form_urlencoded::parse(request.query_string().as_bytes()).find(|(name, _)| name == KEY);
    let origins = match key {
        Some((_, key)) if state.settings.keys.is_some() => state.admission.page_origins(key.as_bytes()),
        _ => state.settings.cors_origins.clone(),
    };
    // Files of this service, calls to it, and the list of stock of the page that shows it.
    let sources = format!(
        "script-src 'self'; style-src 'self'; connect-src 'self' {}; require-trusted-types-for 'script'",
        origins.join(" ")
    );
    let language = content_language::of_request(&request);
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
            body { loopwright-helper {} }
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
