//! A drawing by its address: the plan of an opening for links and pages, which can only send a query.
//!
//! The query is read as the request that a program would send as a body, so that every rule and every fault is the same; the fault
//! then also names the parameter.

use actix_web::{HttpRequest, HttpResponse};
use serde_json::{Map, Value, json};

use super::answering::compute_report;
use super::app_state::AppState;
use super::content_language;
use super::json_limits::JsonLimits;
use super::problem::Problem;
use super::query::{OtherParameters, QueryFaults, SentParameters};
use super::response_body::CachedDocument;
use super::{body, drawing_query, respond};
use crate::calculation::Calculation;
use crate::calculation::input::OpeningWidth;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::report::Diagnostics;
use crate::drawing::plan::OpeningPlan;
use crate::drawing::{Drawing, DrawingOptions, MEDIA_TYPE};
use crate::quantity::format::format_length_input;
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::vocabulary;
use crate::wording::Reader;

vocabulary! {
    /// The system of units of a drawing.
    DrawingUnits {
        Auto "auto" "As the width" "The system that the width is written in.";
        Us "us" "US customary" "Feet and inches first, and sizes that are tidy in them.";
        Metric "metric" "Metric" "Metres and millimetres first, and sizes that are tidy in them.";
    }
}

/// The parameters of the query, each with the place that it has in the request as a body, and what it says.
pub const PARAMETERS: [(&str, &str, &str); 9] = [
    (
        "width",
        "#/opening/width",
        "The clear width, with its unit. Sizes are tidy in the system that it is written in, unless `units` says another.",
    ),
    ("barrier", "#/opening/barrier", "What closes the opening."),
    ("roles", "#/roles", "What the loops are for, separated by commas. Default: what the barrier usually needs."),
    ("surface", "#/surface", "What the loops lie in. Default `existing_asphalt`."),
    (drawing_query::THEME, "#/theme", drawing_query::PARAMETERS[0].1),
    ("units", "#/units", "The system of the drawing. Default `auto`."),
    (content_language::PARAMETER, "#/lang", content_language::PARAMETER_DESCRIPTION),
    (drawing_query::CONTENT, "#/content", drawing_query::PARAMETERS[1].1),
    (drawing_query::ID_PREFIX, "#/id_prefix", drawing_query::PARAMETERS[2].1),
];

/// The name of the operation in generated clients.
pub const OPERATION_ID: &str = "link_plan";
/// The drawing in a phrase.
pub const SUMMARY: &str = "The loops of an opening, from above, by a link";
/// What it draws, and what to know about it.
pub const DESCRIPTION: &str = "The plan of `drawings/plan` for a link, an `img` or a page: the query holds what most openings need, and \
    everything else takes its default. `roles` are separated by commas. The same address always gives the same drawing of one release, \
    so it has an entity tag and may be kept for an hour. Faults name the `parameter`. Where keys are on, the operator may leave \
    this path open to addresses without a key, at a rate of their own.";

/// Answers a link.
///
/// # Errors
/// 422 with the parameters at fault; 429 and 503 as for any calculation.
pub async fn draw(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let limits = AppState::of(&request).json_limits();
    let PlanLink { request: asked, options } = PlanLink::read(request.query_string(), limits)?;
    let coding = CachedDocument::best_coding(&request);
    // Packed on the pool, too: the thread that answers others has no time for it.
    let language = content_language::of_request(&request);
    let draw = move |asked: &LoopSizingRequest, report| {
        let drawing = OpeningPlan::draw(&report, Reader::new(OpeningPlan::system(asked), language), &options);
        CachedDocument::new(drawing, MEDIA_TYPE).packed_for(coding)
    };
    let drawing = compute_report(&request, asked, draw).await.map_err(with_parameters)?;
    Ok(respond::cached_page(&drawing, respond::OWN_STYLE, &request))
}

/// What a query asks for.
struct PlanLink {
    request: LoopSizingRequest,
    options: DrawingOptions,
}

impl PlanLink {
    fn read(query: &str, limits: JsonLimits) -> Result<Self, Problem> {
        let mut faults = QueryFaults::default();
        let known = PARAMETERS.map(|(name, ..)| name);
        let sent = faults.parameters(query, &known, OtherParameters::Refused);
        let options = drawing_query::options(&mut faults, &sent);
        let units = faults.member("units", &sent, DrawingUnits::Auto);
        let body = body_of(&sent, units).to_string();
        let request = body::decode_request::<LoopSizingRequest>(body.as_bytes(), limits, |_, _| ());
        if faults.count == 0 {
            return Ok(Self { request: request.map_err(with_parameters)?, options });
        }
        let (errors, count) = match request {
            Ok(request) => {
                // Only to find what else is wrong: nothing is computed for a query that is refused.
                let mut diagnostics = Diagnostics::default();
                faults.errors.iter().for_each(|error| diagnostics.push_error(error.clone()));
                let errors = request.answer_with(diagnostics).err().map_or_else(Vec::new, |invalid| invalid.errors);
                let further = errors.len().saturating_sub(faults.errors.len());
                (errors, faults.count + further)
            }
            Err(problem) => {
                let count = faults.count + problem.error_count;
                (faults.errors.into_iter().chain(problem.errors).collect(), count)
            }
        };
        Err(with_parameters(Problem::first_invalid_fields(errors, count)))
    }
}

/// The request that a query stands for, as a program would send it.
fn body_of(sent: &SentParameters, units: DrawingUnits) -> Value {
    let mut opening = Map::new();
    if let Some(width) = sent.get("width") {
        opening.insert("width".to_owned(), in_units(width, units).into());
    }
    if let Some(barrier) = sent.get("barrier") {
        opening.insert("barrier".to_owned(), barrier.as_str().into());
    }
    let roles = sent.get("roles").filter(|roles| !roles.is_empty());
    let roles: Option<Vec<_>> = roles.map(|roles| roles.split(',').map(str::trim).collect());
    json!({ "opening": opening, "roles": roles, "surface": sent.get("surface") })
}

/// A width in the asked system, as far as it can be read: sizes are tidy in the one that it is written in.
fn in_units(width: &str, units: DrawingUnits) -> String {
    let system = match units {
        DrawingUnits::Auto => return width.to_owned(),
        DrawingUnits::Us => UnitSystem::UsCustomary,
        DrawingUnits::Metric => UnitSystem::Metric,
    };
    let field = OpeningWidth::from_text(width.to_owned());
    let read = field.read().ok().filter(|read| read.system != system);
    read.map_or_else(|| width.to_owned(), |read| format_length_input(read.si, system))
}

/// Adds to each fault the parameter that it is about.
fn with_parameters(mut problem: Problem) -> Problem {
    for error in problem.errors.iter_mut().filter(|error| error.parameter.is_none()) {
        let is_of = |place: &str| {
            error.pointer.strip_prefix(place).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
        };
        error.parameter = PARAMETERS.iter().find(|(_, place, _)| is_of(place)).map(|(name, ..)| (*name).to_owned());
    }
    problem
}
