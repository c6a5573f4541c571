//! All routes, on one page.

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse, web};
use serde::Serialize;

use super::app_state::AppState;
use super::body;
use super::middleware::handle;
use super::problem::{Problem, ProblemCode};
use super::request_context::RequestContext;
use super::weather::FetchedWeather;
use super::{batch, documentation, health, pages, reference, drain};
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::{self, Calculation};
use crate::drawing::{self, Drawing, Pen, job_sheet};

/// What a drawing or a job sheet may do as a document of its own: show with its own style sheet, nothing else.
const DRAWING_POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'";

/// Adds every route of the service.
pub fn configure(app: &mut web::ServiceConfig) {
    calculation::visit_all(&mut Register(app));
    drawing::visit_all(&mut Register(app));
    Register(app).post("/v1/installation-plan/batch".to_owned(), web::post().to(batch::answer));
    Register(app).post(job_sheet::PATH.to_owned(), web::post().to(print_job_sheet));
    reference::configure(app);
    get(app, "/openapi.json", documentation::openapi);
    get(app, "/docs", documentation::to_docs);
    get(app, "/docs/{file:.*}", documentation::docs);
    get(app, "/problems/{slug}", pages::problem);
    get(app, "/health/live", health::live);
    get(app, "/health/ready", health::ready);
    get(app, "/metrics", health::metrics_nearby);
    app.default_service(web::route().to(not_found));
}

/// Adds the counters alone, for a listener of their own.
pub fn configure_metrics(app: &mut web::ServiceConfig) {
    get(app, "/metrics", health::metrics);
    app.default_service(web::route().to(not_found));
}

/// Adds a path for GET and HEAD.
pub fn get(app: &mut web::ServiceConfig, path: &str, answer: fn(&HttpRequest) -> Result<HttpResponse, Problem>) {
    let handler = move |request: HttpRequest| async move { handle(request.clone(), async { answer(&request) }).await };
    app.service(
        web::resource(path)
            .route(web::get().to(handler))
            .route(web::head().to(handler))
            .default_service(refuse_method("GET, HEAD")),
    );
}

/// Adds a path for each calculation and each drawing.
struct Register<'a>(&'a mut web::ServiceConfig);

impl Register<'_> {
    fn post(&mut self, path: String, route: actix_web::Route) {
        self.0.service(web::resource(path).route(route).default_service(refuse_method("POST")));
    }
}

impl calculation::CalculationVisitor for Register<'_> {
    fn visit<C: Calculation>(&mut self) {
        self.post(format!("/v1/{}", C::NAME), web::post().to(answer::<C>));
    }
}

impl drawing::Visitor for Register<'_> {
    fn visit<D: Drawing>(&mut self) {
        self.post(format!("/v1/drawings/{}", D::NAME), web::post().to(draw::<D>));
    }
}

async fn answer<C: Calculation>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let illustrated = |asked: &C, mut report| {
            asked.illustrate(&mut report, &Pen);
            report
        };
        let report = made_of_report(&request, &mut payload, illustrated).await?;
        let response = json_report(&report, C::REPORT_CAPACITY);
        // To free what a calculation took is a part of it.
        RequestContext::of(&request).compute(|| drop(report));
        response
    })
    .await;
    drain::close_behind(response, payload)
}

async fn draw<D: Drawing>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let draw = |asked: &D::Request, report| D::draw(&report, D::system(asked));
        Ok(drawn(drawing::MEDIA_TYPE.to_owned(), made_of_report(&request, &mut payload, draw).await?))
    })
    .await;
    drain::close_behind(response, payload)
}

async fn print_job_sheet(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let print = |asked: &InstallationPlanRequest, report| job_sheet::page(&report, asked.system());
        let page = made_of_report(&request, &mut payload, print).await?;
        Ok(drawn(format!("{}; charset=utf-8", job_sheet::MEDIA_TYPE), page))
    })
    .await;
    drain::close_behind(response, payload)
}

/// Reads a body and computes its report; gives what `make` makes of both.
async fn made_of_report<C: Calculation, T>(
    request: &HttpRequest,
    payload: &mut web::Payload,
    make: impl FnOnce(&C, C::Report) -> T,
) -> Result<T, Problem> {
    let mut asked = read::<C>(request, payload).await?;
    let fetched = FetchedWeather::of(&mut asked, AppState::of(request)).await?;
    RequestContext::of(request).compute(|| Ok(make(&asked, fetched.answer(&asked)?)))
}

/// The answer that is a drawing or a page.
fn drawn(media_type: String, document: String) -> HttpResponse {
    HttpResponse::Ok()
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .insert_header((header::CONTENT_SECURITY_POLICY, DRAWING_POLICY))
        .content_type(media_type)
        .body(document)
}

/// The answer that holds a report; `room` is what is reserved for its text, bytes.
///
/// # Errors
/// 500 when the report cannot be written.
pub fn json_report(report: &impl Serialize, room: usize) -> Result<HttpResponse, Problem> {
    let mut json = Vec::with_capacity(room);
    serde_json::to_writer(&mut json, report).map_err(|_| Problem::new(ProblemCode::InternalError))?;
    Ok(HttpResponse::Ok()
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .content_type("application/json")
        .body(json))
}

/// The typed request of a body.
async fn read<C: Calculation>(request: &HttpRequest, payload: &mut web::Payload) -> Result<C, Problem> {
    let state = AppState::of(request);
    let limit = state.settings.limits.body.saturating_mul(C::BODY_SHARE);
    let body = body::read(request, payload, limit).await?;
    body::decode(&body, state.json_limits())
}

/// Answers methods that a path does not have.
fn refuse_method(allow: &'static str) -> actix_web::Route {
    web::route().to(move |request: HttpRequest, rest: web::Payload| async move {
        drain::refuse(&request, rest, Problem::method_not_allowed(allow)).await
    })
}

async fn not_found(request: HttpRequest, rest: web::Payload) -> HttpResponse {
    drain::refuse(&request, rest, Problem::new(ProblemCode::NotFound)).await
}
