//! All routes, on one page.

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse, web};

use super::body;
use super::edge::Edge;
use super::guard::guarded;
use super::problem::{Problem, ProblemCode};
use super::{documentation, health, pages, reference, unread, weather};
use crate::calculation::{self, Calculation, Visitor};

/// Adds every route of the service.
pub fn configure(app: &mut web::ServiceConfig) {
    calculation::visit_all(&mut Register(app));
    reference::configure(app);
    get(app, "/openapi.json", documentation::openapi);
    get(app, "/docs", documentation::to_docs);
    get(app, "/docs/{file:.*}", documentation::docs);
    get(app, "/problems/{slug}", pages::problem);
    get(app, "/health/live", health::live);
    get(app, "/health/ready", health::ready);
    get(app, "/metrics", health::metrics);
    app.default_service(web::route().to(not_found));
}

/// Adds a path for GET and HEAD.
pub fn get(app: &mut web::ServiceConfig, path: &str, answer: fn(&HttpRequest) -> Result<HttpResponse, Problem>) {
    let handler = move |request: HttpRequest| async move { guarded(request.clone(), async { answer(&request) }).await };
    app.service(
        web::resource(path)
            .route(web::get().to(handler))
            .route(web::head().to(handler))
            .default_service(web::route().to(|request| refuse_method(request, "GET, HEAD"))),
    );
}

/// Adds a path for each calculation.
struct Register<'a>(&'a mut web::ServiceConfig);

impl Visitor for Register<'_> {
    fn visit<C: Calculation>(&mut self) {
        self.0.service(
            web::resource(format!("/v1/{}", C::NAME))
                .route(web::post().to(answer::<C>))
                .default_service(web::route().to(|request| refuse_method(request, "POST"))),
        );
    }
}

async fn answer<C: Calculation>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = guarded(request.clone(), async {
        let mut asked = read::<C>(&request, &mut payload).await?;
        let report = weather::answer(&mut asked, Edge::of(&request)).await?;
        let json = serde_json::to_string(&report).map_err(|_| Problem::new(ProblemCode::InternalError))?;
        Ok(HttpResponse::Ok()
            .insert_header((header::CACHE_CONTROL, "no-store"))
            .content_type("application/json")
            .body(json))
    })
    .await;
    unread::close_behind(response, payload)
}

/// The typed request of a body.
async fn read<C: Calculation>(request: &HttpRequest, payload: &mut web::Payload) -> Result<C, Problem> {
    let limit = Edge::of(request).settings.body_limit.saturating_mul(C::BODY_SHARE);
    let body = body::read(request, payload, limit).await?;
    body::decode(&body)
}

async fn refuse_method(request: HttpRequest, allow: &'static str) -> HttpResponse {
    guarded(request, async { Err(Problem::method_not_allowed(allow)) }).await
}

async fn not_found(request: HttpRequest) -> HttpResponse {
    guarded(request, async { Err(Problem::new(ProblemCode::NotFound)) }).await
}
