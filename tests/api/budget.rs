//! What one answer may compute: counted steps, the same for the same request, never the clock.

use std::collections::BTreeSet;
use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use loopwright::calculation::budget::WorkBudget;
use loopwright::calculation::report::Diagnostics;
use loopwright::calculation::{self, Calculation, CalculationVisitor};
use loopwright::practice::finding_codes::FindingCode;
use loopwright::vocabulary::Vocabulary;
use loopwright::wording::{Language, Worded};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::harness::calculate;

#[path = "../bench/request_space.rs"]
#[allow(dead_code, reason = "a search also climbs")]
mod request_space;

use request_space::{Dice, spaces};

/// The most steps of any answer: those of its searches, of the trial in which they end, and of what is no search.
const MOST_STEPS: u64 = 20_000_000;
/// How many nanoseconds a step takes, about, on the core that the estimates were measured on.
const NANOS_PER_STEP: f64 = 1.5;

/// What one answer used.
struct Used {
    steps: u64,
    estimated_micros: u64,
    report: Option<Value>,
}

/// Answers a request of the calculation of a name within a budget.
struct Counted<'a> {
    name: &'a str,
    request: &'a Value,
    budget: WorkBudget,
    used: Option<Used>,
}

impl CalculationVisitor for Counted<'_> {
    fn visit<C: Calculation>(&mut self) {
        if C::NAME == self.name {
            let request: C = serde_json::from_value(self.request.clone()).expect("a request of the description");
            let answer = request.answer_with(Diagnostics::within(self.budget.clone()));
            self.used = Some(Used {
                steps: self.budget.used(),
                estimated_micros: request.estimated_micros(),
                report: answer
                    .ok()
                    .map(|report| serde_json::to_value(report.worded(Language::English)).expect("a report")),
            });
        }
    }
}

fn used_within(name: &str, request: &Value, budget: WorkBudget) -> Used {
    let mut counted = Counted { name, request, budget, used: None };
    calculation::visit_all(&mut counted);
    counted.used.expect("a calculation of this name")
}

fn used(name: &str, request: &Value) -> Used {
    used_within(name, request, WorkBudget::default())
}

/// The worst requests that the search of `tests/bench/worst_requests.rs` found, as `(calculation, request)`.
fn worst() -> Vec<(String, Value)> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/bench/worst");
    let files = std::fs::read_dir(folder).expect("the folder of the worst requests");
    let mut worst: Vec<_> = files
        .map(|file| {
            let path = file.expect("a file").path();
            let stem = path.file_stem().expect("a name").to_string_lossy().into_owned();
            let name = stem.split_once('.').map_or(stem.clone(), |(name, _)| name.to_owned());
            (name, serde_json::from_str(&std::fs::read_to_string(&path).expect("a text")).expect("JSON"))
        })
        .collect();
    worst.sort_by(|a, b| a.0.cmp(&b.0));
    worst
}

struct Examples(Vec<(&'static str, Value)>);

impl CalculationVisitor for Examples {
    fn visit<C: Calculation>(&mut self) {
        self.0.extend(C::EXAMPLES.iter().map(|one| (C::NAME, serde_json::from_str(one.request).expect("JSON"))));
    }
}

fn examples() -> Vec<(&'static str, Value)> {
    let mut examples = Examples(Vec::new());
    calculation::visit_all(&mut examples);
    examples.0
}

#[test]
fn no_request_within_the_limits_uses_more_steps_than_an_answer_may() {
    let mut dice = Dice::new(2026);
    for space in spaces() {
        for _ in 0..12 {
            let request = space.request(&space.random(&mut dice));
            let steps = used(space.calculation, &request).steps;
            assert!(steps <= MOST_STEPS, "{} {steps}: {request}", space.calculation);
        }
    }
    for (name, request) in worst() {
        let steps = used(&name, &request).steps;
        assert!(steps <= MOST_STEPS, "{name} {steps}: {request}");
    }
}

#[test]
fn a_search_that_ends_early_says_so_and_says_the_same_each_time() {
    let code = FindingCode::SearchBounded.code();
    let mut bounded = BTreeSet::new();
    for (name, request) in worst() {
        let first = calculate(&name, &request);
        assert_eq!(first.status, 200, "{name}: {:#}", first.body);
        let findings = first.body["findings"].as_array().expect("findings");
        if let Some(finding) = findings.iter().find(|finding| finding["code"] == code) {
            assert_eq!(finding["level"], "warning");
            let message = finding["message"].as_str().expect("a message");
            assert!(message.contains("fewer"), "{message}");
            assert_eq!(calculate(&name, &request).body, first.body, "{name}");
            bounded.insert(name);
        }
    }
    let expected = ["detector-compatibility", "installation-plan", "loop-sizing"].map(str::to_owned);
    assert_eq!(bounded, BTreeSet::from(expected));
}

#[test]
fn no_example_ends_a_search_early() {
    for (name, request) in examples() {
        let answer = calculate(name, &request);
        assert!(!answer.body.to_string().contains(FindingCode::SearchBounded.code()), "{name}: {request}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    // Openings as they are met with: the usual roles, up to three kinds of vehicle of one part, the steps of the standard;
    // lanes with an arm up to 12 ft, for no leg of a wider one lets the arm fall behind every tail, and each is tried.
    #[test]
    fn no_usual_opening_ends_a_search_early(
        width in 8..=40_u32,
        barrier in prop::sample::select(vec!["slide_gate", "swing_gate", "swing_gate_pair", "barrier_arm", "vertical_lift_gate", "overhead_door", "none"]),
        vehicles in prop::sample::subsequence(vec!["passenger_car", "pickup", "high_bed_truck", "bus"], 1..=3),
        construction in prop::sample::select(vec!["hand_wound", "preformed_saw_cut"]),
        length in 20..=200_u32,
    ) {
        let width = if barrier == "barrier_arm" { width.min(12) } else { width };
        let request = json!({
            "opening": { "width": format!("{width} ft"), "barrier": barrier }, "vehicles": vehicles, "construction": construction,
            "lead_in": { "length": format!("{length} ft") },
        });
        let mut plan = request.clone();
        plan["vehicles"] = json!(["passenger_car", "high_bed_truck"]);
        for (name, request) in [("loop-sizing", request), ("installation-plan", plan)] {
            let report = used(name, &request).report.expect("an answer");
            prop_assert!(!report.to_string().contains(FindingCode::SearchBounded.code()), "{}: {}", name, request);
        }
    }
}

#[test]
fn what_nobody_waits_for_is_not_searched_for() {
    for (name, request) in worst() {
        let whole = used(&name, &request).steps;
        let abandoned = used_within(&name, &request, WorkBudget::until(Arc::new(AtomicBool::new(true)))).steps;
        if ["loop-sizing", "installation-plan", "detector-compatibility"].contains(&name.as_str()) {
            assert!(3 * abandoned < 2 * whole, "{name}: {abandoned} of {whole}");
        }
    }
}

#[test]
fn an_abandoned_answer_is_whole_all_the_same() {
    for (name, request) in examples() {
        let flag = Arc::new(AtomicBool::new(true));
        assert!(used_within(name, &request, WorkBudget::until(flag)).report.is_some(), "{name}: {request}");
    }
}

#[test]
fn estimates_follow_the_counted_steps() {
    let requests = examples().into_iter().map(|(name, request)| (name.to_owned(), request)).chain(worst());
    for (name, request) in requests {
        let used = used(&name, &request);
        let (counted, estimated) = (used.steps as f64 * NANOS_PER_STEP / 1e3, used.estimated_micros as f64);
        // What has few steps has its time elsewhere, and is estimated in the classes that follow.
        if counted > 200.0 {
            let ratio = estimated / counted;
            assert!((1.0 / 5.0..=5.0).contains(&ratio), "{name}: {estimated} µs of {counted:.0}: {request}");
        }
    }
}

/// The table of the guide, as `(work, µs)`.
fn published_terms() -> BTreeSet<(String, u64)> {
    let section = include_str!("../../openapi/GUIDE.md").split("## What a request costs").nth(1).expect("the section");
    let section = section.split("\n## ").next().expect("its text");
    let rows = section.lines().filter(|line| line.starts_with("| ") && !line.starts_with("| for"));
    rows.map(|row| {
        let cells: Vec<_> = row.trim_matches('|').split('|').map(str::trim).collect();
        (cells[0].to_owned(), cells[1].trim_end_matches(" µs").parse().expect("a whole number of µs"))
    })
    .collect()
}

struct Terms(BTreeSet<(String, u64)>);

impl CalculationVisitor for Terms {
    fn visit<C: Calculation>(&mut self) {
        let mut dice = Dice::new(5);
        let examples = C::EXAMPLES.iter().map(|one| serde_json::from_str::<Value>(one.request).expect("JSON"));
        let drawn = spaces().into_iter().filter(|space| space.calculation == C::NAME).collect::<Vec<_>>();
        let drawn =
            drawn.iter().flat_map(|space| (0..20).map(|_| space.request(&space.random(&mut dice))).collect::<Vec<_>>());
        for request in examples.chain(drawn) {
            let request: C = serde_json::from_value(request).expect("a request of the description");
            self.0.extend(request.cost_terms().into_iter().map(|term| (term.work.to_owned(), term.micros)));
        }
    }
}

#[test]
fn the_guide_has_what_requests_are_estimated_by() {
    let mut terms = Terms(BTreeSet::new());
    calculation::visit_all(&mut terms);
    assert_eq!(published_terms(), terms.0);
}

#[test]
fn small_calculations_are_estimated_under_a_tenth_of_a_millisecond() {
    for (name, request) in examples() {
        let estimate = used(name, &request).estimated_micros;
        if name == "loop-characteristics" {
            assert!(estimate < 100, "{name}: {estimate} µs");
        }
    }
}
