//! All routes of the service.

use actix_web::{HttpRequest, HttpResponse, web};

use super::answering::compute_report;
use super::app_state::AppState;
use super::compute::for_request;
use super::content_coding::{CodedText, Coding};
use super::problem::{Problem, ProblemCode};
use super::reference_tables::{self, Table, TableVisitor};
use super::respond::{self, handle};
use super::{
    batch, body, content_language, docs, documentation, drain, drawing_query, embed, forms, front, health, messages,
    pages, paths, plan_link,
};
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::summary::Summarized;
use crate::calculation::{self, Calculation};
use crate::drawing::{self, Drawing, SvgIllustrator, bill_csv, job_sheet};
use crate::wording::Reader;

/// Bodies up to so many bytes are decoded on the thread that has read them.
const MAX_BYTES_WHERE_READ: usize = 16 * 1024;

/// The capacity reserved for the text of a summary, bytes.
const SUMMARY_CAPACITY: usize = 2 * 1024;

/// Adds every route of the service.
pub fn configure(app: &mut web::ServiceConfig) {
    let mut routes = RouteVisitor(app);
    calculation::visit_all(&mut routes);
    drawing::visit_all(&mut routes);
    routes.post(paths::PLAN_BATCH.to_owned(), web::post().to(batch::answer));
    routes.summary::<LoopSizingRequest>();
    routes.summary::<InstallationPlanRequest>();
    routes.post(job_sheet::PATH.to_owned(), web::post().to(print_job_sheet));
    routes.post(bill_csv::PATH.to_owned(), web::post().to(export_bill));
    reference_tables::visit_all(&mut routes);
    forms::visit_all(&mut routes);
    get_async(app, paths::MESSAGES, messages::list);
    get_async(app, "/openapi.json", documentation::openapi);
    get_async(app, "/openapi-compact.json", documentation::compact_openapi);
    get(app, "/docs", docs::add_slash);
    get_async(app, "/docs/guide", pages::guide);
    get(app, "/docs/try", docs::add_slash);
    get_async(app, "/docs/try/{file:.*}", docs::viewer);
    get_async(app, "/docs/{file:.*}", docs::page);
    get_async(app, "/changes", pages::changes);
    get_async(app, "/", front::page);
    get(app, "/front/{version}/{file}", front::file);
    get(app, embed::FRAME_PATH, embed::frame);
    get_async(app, "/embed/{version}/{file}", embed::released);
    get_async(app, "/embed/{file}", embed::latest);
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

/// Adds a path for each calculation, each drawing, each reference table and each form.
struct RouteVisitor<'a>(&'a mut web::ServiceConfig);

impl RouteVisitor<'_> {
    fn post(&mut self, path: String, route: actix_web::Route) {
        self.0.service(web::resource(path).route(route).default_service(refuse_method("POST")));
    }

    fn summary<C: Calculation<Report: Summarized>>(&mut self) {
        self.post(C::Report::PATH.to_owned(), web::post().to(sum_up::<C>));
    }
}

impl calculation::CalculationVisitor for RouteVisitor<'_> {
    fn visit<C: Calculation>(&mut self) {
        self.post(format!("/v1/{}", C::NAME), web::post().to(answer::<C>));
    }
}

impl drawing::DrawingVisitor for RouteVisitor<'_> {
    fn visit<D: Drawing>(&mut self) {
        let path = format!("/v1/drawings/{}", D::NAME);
        if path != drawing::plan::PATH {
            return self.post(path, web::post().to(draw::<D>));
        }
        let link = |request: HttpRequest| handle(request.clone(), plan_link::draw(request));
        let resource = web::resource(path).route(web::post().to(draw::<D>));
        let resource = resource.route(web::get().to(link)).route(web::head().to(link));
        self.0.service(resource.default_service(refuse_method("GET, HEAD, POST")));
    }
}

impl TableVisitor for RouteVisitor<'_> {
    fn visit<T: Table>(&mut self) {
        get(self.0, &format!("/v1/reference/{}", T::NAME), |request| {
            Ok(respond::cached_document(T::document(content_language::of_request(request)), request))
        });
    }
}

impl forms::FormVisitor for RouteVisitor<'_> {
    fn visit<C: forms::HasForm>(&mut self) {
        get_async(self.0, &forms::path::<C>(), forms::show::<C>);
    }
}

async fn answer<C: Calculation>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let coding = Coding::of_computed(&request);
        let language = content_language::of_request(&request);
        let write = move |asked: &C, mut report: C::Report| {
            asked.illustrate(&mut report, &SvgIllustrator { language });
            respond::json_text(&report, C::REPORT_CAPACITY).map(|text| CodedText::new(text, coding))
        };
        Ok(respond::json(compute_from_report(&request, &mut payload, write).await??, &request))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

async fn sum_up<C: Calculation<Report: Summarized>>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let coding = Coding::of_computed(&request);
        let write = move |_: &C, report: C::Report| {
            respond::json_text(report.summary(), SUMMARY_CAPACITY).map(|text| CodedText::new(text, coding))
        };
        Ok(respond::json(compute_from_report(&request, &mut payload, write).await??, &request))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

async fn draw<D: Drawing>(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let coding = Coding::of_computed(&request);
        let language = content_language::of_request(&request);
        let options = drawing_query::read(request.query_string())?;
        let draw = move |asked: &D::Request, report| {
            CodedText::new(D::draw(&report, Reader::new(D::system(asked), language), &options), coding)
        };
        Ok(respond::document(
            drawing::MEDIA_TYPE.to_owned(),
            compute_from_report(&request, &mut payload, draw).await?,
            &request,
        ))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

async fn print_job_sheet(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let coding = Coding::of_computed(&request);
        let language = content_language::of_request(&request);
        let print = move |asked: &InstallationPlanRequest, report| {
            CodedText::new(job_sheet::page(&report, Reader::new(asked.system(), language)), coding)
        };
        let page = compute_from_report(&request, &mut payload, print).await?;
        Ok(respond::document(format!("{}; charset=utf-8", job_sheet::MEDIA_TYPE), page, &request))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

async fn export_bill(request: HttpRequest, mut payload: web::Payload) -> HttpResponse {
    let response = handle(request.clone(), async {
        let coding = Coding::of_computed(&request);
        let language = content_language::of_request(&request);
        let export = move |asked: &InstallationPlanRequest, report| {
            CodedText::new(bill_csv::table(&report, Reader::new(asked.system(), language)), coding)
        };
        let bill = compute_from_report(&request, &mut payload, export).await?;
        Ok(respond::document(format!("{}; charset=utf-8; header=present", bill_csv::MEDIA_TYPE), bill, &request))
    })
    .await;
    drain::close_if_unread(&request, response, payload)
}

/// Reads a body and computes its report; returns what `make` makes of the request and its report.
async fn compute_from_report<C: Calculation, T: Send + 'static>(
    request: &HttpRequest,
    payload: &mut web::Payload,
    make: impl FnOnce(&C, C::Report) -> T + Send + 'static,
) -> Result<T, Problem> {
    let asked = read_request::<C>(request, payload).await?;
    // Both halves hold the request: in one future it would stand twice.
    Box::pin(compute_report(request, asked, make)).await
}

/// Reads the typed request of a body. A large one is decoded on the pool.
async fn read_request<C: Calculation>(request: &HttpRequest, payload: &mut web::Payload) -> Result<C, Problem> {
    let state = AppState::of(request);
    let limit = state.settings.limits.body.saturating_mul(C::BODY_LIMIT_FACTOR);
    let (body, limits) = (body::read(request, payload, limit).await?, state.json_limits());
    if body.bytes.len() <= MAX_BYTES_WHERE_READ {
        return body::decode_request(&body.bytes, limits, |_, _| ());
    }
    let decode = move |_| {
        // All of it, for it counts as arriving until it is decoded.
        let body = body;
        body::decode_request(&body.bytes, limits, |_, _| ())
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
