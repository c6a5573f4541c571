//! All routes of the service.

use std::sync::Arc;

use actix_web::{HttpRequest, HttpResponse, web};

use super::app_state::AppState;
use super::compute::for_request;
use super::problem::{Problem, ProblemCode};
use super::reference_tables::{self, Table, TableVisitor};
use super::request_context::RequestContext;
use super::respond::{self, handle};
use super::weather::FetchedWeather;
use super::{batch, body, documentation, drain, health, pages, weather};
use crate::calculation::budget::WorkBudget;
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::{self, Calculation};
use crate::drawing::{self, Drawing, SvgIllustrator, job_sheet};
use crate::wording::{Language, Worded};

/// What is estimated to take less is computed on the thread that has read it: the way to the pool and back costs about a tenth of that.
const MAX_MICROS_WHERE_READ: u64 = 100;

/// Bodies up to so many bytes are decoded on the thread that has read them.
const MAX_BYTES_WHERE_READ: usize = 16 * 1024;

/// Adds every route of the service.
pub fn configure(app: &mut web::ServiceConfig) {
    let mut routes = RouteVisitor(app);
    calculation::visit_all(&mut routes);
    drawing::visit_all(&mut routes);
    routes.post("/v1/installation-plan/batch".to_owned(), web::post().to(batch::answer));
    routes.post(job_sheet::PATH.to_owned(), web::post().to(print_job_sheet));
    reference_tables::visit_all(&mut routes);
    get_async(app, "/openapi.json", documentation::openapi);
    get(app, "/docs", documentation::redirect_to_docs);
    get(app, "/docs/{file:.*}", documentation::docs);
    get(app, "/problems/{slug}", pages::problem);
    get(app, "/health/live", health::live);
    get(app, "/health/ready", health::ready);
    get(app, "/metrics", health::local_metrics);
    app.default_service(web::route().to(not_found));
}

/// Adds only the probes, for a listener of their own.
pub fn configure_probes(app: &mut web::ServiceConfig) {
    get(app, "/health/live", health::live);
    get(app, "/health/ready", health::ready);
    app.default_service(web::route().to(not_found));
}

/// Adds only the counters, for a listener of their own.
pub fn configure_metrics(app: &mut web::ServiceConfig) {
    get(app, "/metrics", health::metrics);
    app.default_service(web::route().to(not_found));
}

/// Adds a path for GET and HEAD.
fn get(app: &mut web::ServiceConfig, path: &str, answer: fn(&HttpRequest) -> Result<HttpResponse, Problem>) {
    get_async(app, path, move |request| async move { answer(&request) });
}

/// Adds a path for GET and HEAD whose answer takes a while.
fn get_async<F>(app: &mut web::ServiceConfig, path: &str, answer: impl Fn(HttpRequest) -> F + Copy + 'static)
where
    F: Future<Output = Result<HttpResponse, Problem>> + 'static,
{
    let handler = move |request: HttpRequest| handle(request.clone(), answer(request));
    app.service(
        web::resource(path)
            .route(web::get().to(handler))
            .route(web::head().to(handler))
            .default_service(refuse_method("GET, HEAD")),
    );
}

/// Adds a path for each calculation, each drawing and each reference table.
struct RouteVisitor<'a>(&'a mut web::ServiceConfig);

impl RouteVisitor<'_> {
    fn post(&mut self, path: String, route: actix_web::Route) {
        self.0.service(web::resource(path).route(route).default_service(refuse_method("POST")));
    }
}

impl calculation::CalculationVisitor for RouteVisitor<'_> {
    fn visit<C: Calculation>(&mut self) {
        self.post(format!("/v1/{}", C::NAME), web::post().to(answer::<C>));
    }
}

impl drawing::DrawingVisitor for RouteVisitor<'_> {
    fn visit<D: Drawing>(&mut self) {
        self.post(format!("/v1/drawings/{}", D::NAME), web::post().to(draw::<D>));
    }
}

impl TableVisitor for RouteVisitor<'_> {
    fn visit<T: Table>(&mut self) {
        get(self.0, &format!("/v1/reference/{}", T::NAME), |request| {
            Ok(respond::cached_document(T::document(), request))
        });
    }
}

async fn answer<C: Calculation>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let write = |asked: &C, mut report: C::Report| {
            asked.illustrate(&mut report, &SvgIllustrator);
            respond::json_text(&report, C::REPORT_CAPACITY)
        };
        Ok(respond::json(compute_from_report(&request, &mut payload, write).await??))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

async fn draw<D: Drawing>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let draw = |asked: &D::Request, report| D::draw(&report, D::system(asked));
        Ok(respond::document(drawing::MEDIA_TYPE.to_owned(), compute_from_report(&request, &mut payload, draw).await?))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

async fn print_job_sheet(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let print = |asked: &InstallationPlanRequest, report| job_sheet::page(&report, asked.system());
        let page = compute_from_report(&request, &mut payload, print).await?;
        Ok(respond::document(format!("{}; charset=utf-8", job_sheet::MEDIA_TYPE), page))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

/// Reads a body and computes its report; returns what `make` makes of the request and its report. What is estimated to take long is
/// computed on the pool, and stops when the caller leaves.
async fn compute_from_report<C: Calculation, T: Send + 'static>(
    request: &HttpRequest,
    payload: &mut web::Payload,
    make: impl FnOnce(&C, C::Report) -> T + Send + 'static,
) -> Result<T, Problem> {
    let (state, context) = (AppState::of(request), RequestContext::of(request));
    let mut asked = read_request::<C>(request, payload).await?;
    let estimate = asked.estimated_micros();
    state.admission.charge_cost(&context, estimate)?;
    let fetched = FetchedWeather::of(&mut asked, state, weather::asker(request)).await?;
    let answer = move |is_abandoned| {
        let report = fetched.answer(&asked, WorkBudget::until(is_abandoned))?.worded(Language::English);
        Ok(make(&asked, report))
    };
    if estimate < MAX_MICROS_WHERE_READ {
        return context.compute(|| answer(Arc::default()));
    }
    for_request::run(request, answer).await?
}

/// Reads the typed request of a body. A large one is decoded on the pool.
async fn read_request<C: Calculation>(request: &HttpRequest, payload: &mut web::Payload) -> Result<C, Problem> {
    let state = AppState::of(request);
    let limit = state.settings.limits.body.saturating_mul(C::BODY_LIMIT_FACTOR);
    let (body, limits) = (body::read(request, payload, limit).await?, state.json_limits());
    if body.bytes.len() <= MAX_BYTES_WHERE_READ {
        return body::decode(&body.bytes, limits);
    }
    let decode = move |_| {
        // All of it, for it counts as arriving until it is decoded.
        let body = body;
        body::decode(&body.bytes, limits)
    };
    for_request::run(request, decode).await?
}

/// Refuses the methods that a path does not have.
fn refuse_method(allow: &'static str) -> actix_web::Route {
    web::route().to(move |request: HttpRequest, rest: web::Payload| async move {
        drain::refuse(&request, rest, Problem::method_not_allowed(allow)).await
    })
}

async fn not_found(request: HttpRequest, rest: web::Payload) -> HttpResponse {
    drain::refuse(&request, rest, Problem::new(ProblemCode::NotFound)).await
}
