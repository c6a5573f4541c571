//! What must hold for any bytes that anybody sends, whatever is in them. A law that does not hold is a panic.
//!
//! The fuzz targets look for bytes that break a law; the tests replay those in the corpus. Both come through [`check`].

use std::any::Any;

use loopwright::api::body::decode_request;
use loopwright::api::json_limits::JsonLimits;
use loopwright::api::problem::Problem;
use loopwright::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest};
use loopwright::calculation::report::{FieldErrorCode, MAX_NAME_CHARS};
use loopwright::calculation::{self, Calculation};
use loopwright::drawing::{self, Drawing, DrawingOptions, SvgIllustrator, job_sheet};
use loopwright::vocabulary::Vocabulary;
use loopwright::wording::{Language, Reader, Worded};
use roxmltree::{Document, ParsingOptions};
use serde_json::Value;

use super::{batch, quantity};

/// As an instance has them by default.
const LIMITS: JsonLimits = JsonLimits { depth: 32, items: 1000 };

/// The names of all targets: each calculation, and two more.
pub fn targets() -> Vec<&'static str> {
    struct Names(Vec<&'static str>);
    impl calculation::CalculationVisitor for Names {
        fn visit<C: Calculation>(&mut self) {
            self.0.push(C::NAME);
        }
    }
    let mut names = Names(vec!["quantity", "batch"]);
    calculation::visit_all(&mut names);
    names.0
}

/// Holds the laws of a target against some bytes.
pub fn check(target: &str, bytes: &[u8]) {
    match target {
        "quantity" => quantity::check(bytes),
        "batch" => batch::check(bytes),
        name => calculation::visit_all(&mut Request { name, body: bytes }),
    }
}

/// The body of a request to the calculation of a name.
struct Request<'a> {
    name: &'a str,
    body: &'a [u8],
}

impl calculation::CalculationVisitor for Request<'_> {
    fn visit<C: Calculation>(&mut self) {
        if C::NAME == self.name {
            let (status, answer) = answer::<C>(self.body);
            judge(status, &answer, self.body);
            assert_eq!((status, answer), self::answer::<C>(self.body), "the same bytes have two answers");
        }
    }
}

/// The status and the JSON of an answer, as the service gives them where no forecast is asked for.
fn answer<C: Calculation>(body: &[u8]) -> (u16, String) {
    let answered = decode_request::<C>(body, LIMITS, |_, _| ()).and_then(|asked| {
        let mut report = asked.answer()?.worded(Language::English);
        draw(&asked, &report);
        asked.illustrate(&mut report, &SvgIllustrator { language: Language::English });
        Ok(report)
    });
    match answered {
        Ok(report) => (200, serde_json::to_string(&report).expect("a report is JSON")),
        Err(problem) => (problem.code.status().as_u16(), refused(&problem)),
    }
}

/// A problem as JSON, without what the service adds.
fn refused(problem: &Problem) -> String {
    assert!(!problem.detail.clone().worded(Language::English).words().is_empty());
    serde_json::json!({ "errors": problem.errors.clone().worded(Language::English) }).to_string()
}

/// What every answer must be: a report whose numbers are finite, or a refusal that says what to send instead.
pub fn judge(status: u16, answer: &str, body: &[u8]) {
    let answer: Value = serde_json::from_str(answer).expect("an answer is JSON");
    match status {
        200 => {
            assert_no_null(&answer, "#");
            let asked: Value = serde_json::from_slice(body).expect("what was answered is JSON");
            assert_unused_was_sent(&answer, &asked);
        }
        400 => assert!(faults(&answer).is_empty()),
        422 => assert_names_faults(&answer),
        _ => panic!("{status}: {answer}"),
    }
}

/// The writer of JSON makes `null` of a number that is not finite, and nothing else of ours writes one.
pub fn assert_no_null(value: &Value, at: &str) {
    match value {
        Value::Null => panic!("{at} is null, so not a finite number"),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(index, item)| assert_no_null(item, &format!("{at}/{index}")));
        }
        Value::Object(members) => {
            members.iter().for_each(|(name, member)| assert_no_null(member, &format!("{at}/{name}")));
        }
        _ => {}
    }
}

/// A field that is listed as unused is one that was sent. A very long name is cut, and so leads nowhere.
fn assert_unused_was_sent(report: &Value, asked: &Value) {
    let pointers = report["unused"].as_array().into_iter().flatten().map(|at| at.as_str().expect("a pointer is text"));
    let is_whole = |pointer: &&str| pointer.split('/').all(|name| name.chars().count() < MAX_NAME_CHARS);
    for pointer in pointers.filter(is_whole) {
        assert!(asked.pointer(pointer.trim_start_matches('#')).is_some(), "{pointer} is unused, and was not sent");
    }
}

/// Each fault has a place, a code of the closed list, and words on what to send.
pub fn assert_names_faults(problem: &Value) {
    let faults = faults(problem);
    assert!(!faults.is_empty(), "a refusal without a fault");
    for fault in faults {
        let text = |key: &str| fault[key].as_str().unwrap_or_else(|| panic!("{key} is missing: {fault}"));
        assert!(text("pointer") == "#" || text("pointer").starts_with("#/"), "{fault}");
        assert!(FieldErrorCode::ALL.iter().any(|code| code.code() == text("code")), "{fault}");
        assert!(!text("detail").is_empty() && !text("hint").is_empty(), "{fault}");
        assert!(
            fault.get("suggestion").is_none_or(|meant| meant.as_str().is_some_and(|meant| !meant.is_empty())),
            "{fault}"
        );
    }
}

fn faults(problem: &Value) -> &[Value] {
    problem["errors"].as_array().expect("a problem lists its faults")
}

/// Draws whatever can be drawn of a report, and reads it as XML.
fn draw(asked: &dyn Any, report: &dyn Any) {
    drawing::visit_all(&mut Draw { asked, report });
    if let (Some(asked), Some(report)) =
        (asked.downcast_ref::<InstallationPlanRequest>(), report.downcast_ref::<InstallationPlanReport>())
    {
        let reader = Reader::new(asked.system(), Language::English);
        assert_well_formed(&job_sheet::page(report, reader));
    }
}

struct Draw<'a> {
    asked: &'a dyn Any,
    report: &'a dyn Any,
}

impl drawing::DrawingVisitor for Draw<'_> {
    fn visit<D: Drawing>(&mut self) {
        let report = self.report.downcast_ref::<<D::Request as Calculation>::Report>();
        if let (Some(asked), Some(report)) = (self.asked.downcast_ref::<D::Request>(), report) {
            assert_well_formed(&D::draw(
                report,
                Reader::new(D::system(asked), Language::English),
                &DrawingOptions::default(),
            ));
        }
    }
}

/// A drawing or a page is XML, and every coordinate in it a number.
pub fn assert_well_formed(text: &str) {
    let options = ParsingOptions { allow_dtd: true, ..ParsingOptions::default() };
    let document = Document::parse_with_options(text, options).unwrap_or_else(|error| panic!("{error}: {text}"));
    for node in document.descendants() {
        for attribute in node.attributes().filter(|attribute| attribute.name() != "class") {
            let value = attribute.value();
            assert!(!["NaN", "inf"].contains(&value.trim_start_matches('-')), "{} is {value}", attribute.name());
            let is_path = ["d", "points", "transform", "viewBox"].contains(&attribute.name());
            assert!(!is_path || !(value.contains("NaN") || value.contains("inf")), "{} is {value}", attribute.name());
        }
    }
}
