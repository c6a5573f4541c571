//! Which requests within the limits take longest, by random search and hill climbing.
//!
//!     cargo run --profile bench --example worst_requests -- search SECONDS [CALCULATION]
//!     cargo run --profile bench --example worst_requests -- slowest SECONDS [CALCULATION]
//!     cargo run --profile bench --example worst_requests -- reports COUNT
//!     cargo run --profile bench --example worst_requests -- time CALCULATION REQUEST.json
//!
//! `search` climbs by counted steps for so many seconds a calculation and prints the worst request with its time, its steps and its
//! estimate; it also prints the request whose time is longest for its steps. `slowest` climbs by processor time, whatever it counts.
//! `reports` writes a digest of the report of each of so many random requests: to compare two builds line by line. The worst requests
//! found are kept in `worst/`; `calculations.rs` has them as benchmarks.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a measurement that cannot go on has failed"
)]

#[path = "../load/processor_time.rs"]
mod processor_time;
mod request_space;

use std::time::{Duration, Instant};

use loopwright::calculation::budget::WorkBudget;
use loopwright::calculation::report::Diagnostics;
use loopwright::calculation::{self, Calculation, CalculationVisitor};
use processor_time::processor_nanoseconds;
use request_space::{Alleles, Dice, RequestSpace, spaces};
use serde_json::Value;
use sha2::{Digest, Sha256};

const USAGE: &str =
    "worst_requests (search|slowest) SECONDS [CALCULATION] | reports COUNT | time CALCULATION REQUEST.json";

/// What one answer took, in processor time.
#[derive(Clone, Copy, Default)]
struct Cost {
    micros: f64,
    steps: u64,
    estimate: u64,
    is_answered: bool,
}

/// Answers one request of the calculation of a name.
struct Measured<'a> {
    name: &'a str,
    request: &'a Value,
    cost: Cost,
    report: Option<Value>,
    keeps_report: bool,
}

impl CalculationVisitor for Measured<'_> {
    fn visit<C: Calculation>(&mut self) {
        if C::NAME != self.name {
            return;
        }
        let Ok(request) = serde_json::from_value::<C>(self.request.clone()) else { return };
        let budget = WorkBudget::default();
        let before = processor_nanoseconds();
        let answer = request.answer_with(Diagnostics::within(budget.clone()));
        let micros = (processor_nanoseconds() - before) as f64 / 1e3;
        self.cost =
            Cost { micros, steps: budget.used(), estimate: request.estimated_micros(), is_answered: answer.is_ok() };
        if self.keeps_report {
            use loopwright::wording::{Language, Worded};
            self.report = answer.ok().map(|report| {
                let worded = report.worded(Language::English);
                serde_json::to_value(worded).expect("a report")
            });
        }
    }
}

fn cost(name: &str, request: &Value) -> Cost {
    let mut measured = Measured { name, request, cost: Cost::default(), report: None, keeps_report: false };
    calculation::visit_all(&mut measured);
    measured.cost
}

/// The least of three, for other programs take their share.
fn steady_cost(name: &str, request: &Value) -> Cost {
    (0..3).map(|_| cost(name, request)).min_by(|a, b| a.micros.total_cmp(&b.micros)).expect("three costs")
}

/// From where a climb begins: anywhere, where much is said, or beside the best so far.
fn start(space: &RequestSpace, best: Option<&Alleles>, dice: &mut Dice) -> Alleles {
    match (dice.throw(3), best) {
        (0, _) => space.random(dice),
        (1, Some(best)) => (0..5).fold(best.clone(), |alleles, _| space.changed(&alleles, dice)),
        _ => space.fullest(dice),
    }
}

fn climb(space: &RequestSpace, until: Instant, dice: &mut Dice, weight: fn(&Cost) -> f64) -> (Value, Cost) {
    let name = space.calculation;
    let mut best: Option<(Alleles, Cost)> = None;
    while Instant::now() < until {
        let mut alleles = start(space, best.as_ref().map(|(alleles, _)| alleles), dice);
        let mut here = cost(name, &space.request(&alleles));
        let mut failures = 0;
        while failures < 60 && Instant::now() < until {
            let next = space.changed(&alleles, dice);
            let request = space.request(&next);
            // What is better once must be so again: other programs take their share.
            let is_better = |there: &Cost| weight(there) > weight(&here);
            let there = Some(cost(name, &request)).filter(is_better).map(|_| steady_cost(name, &request));
            match there.filter(is_better) {
                Some(there) => (alleles, here, failures) = (next, there, 0),
                None => failures += 1,
            }
        }
        let here = steady_cost(name, &space.request(&alleles));
        if best.as_ref().is_none_or(|(_, best)| weight(&here) > weight(best)) {
            best = Some((alleles, here));
        }
    }
    best.map(|(alleles, cost)| (space.request(&alleles), cost)).expect("time for one climb")
}

fn show(name: &str, what: &str, (request, cost): &(Value, Cost)) {
    println!(
        "{name}: {what} {:.2} ms, {} steps ({:.2} ns each), estimated {:.2} ms\n{request}\n",
        cost.micros / 1e3,
        cost.steps,
        cost.micros * 1e3 / cost.steps.max(1) as f64,
        cost.estimate as f64 / 1e3,
    );
}

fn chosen(only: Option<&str>) -> Vec<RequestSpace> {
    spaces().into_iter().filter(|space| only.is_none_or(|only| only == space.calculation)).collect()
}

fn search(seconds: u64, only: Option<&str>) {
    let mut dice = Dice::new(17);
    for space in &chosen(only) {
        let half = Duration::from_secs_f64(seconds as f64 / 2.0);
        let by_steps = climb(space, Instant::now() + half, &mut dice, |cost| {
            if cost.is_answered { cost.steps as f64 + cost.micros.min(1e4) / 1e4 } else { 0.0 }
        });
        show(space.calculation, "most steps", &by_steps);
        // Among what takes a millisecond at least, for small ones are all overhead.
        let per_step = |cost: &Cost| {
            if cost.is_answered { cost.micros.min(1000.0) * (cost.micros / (cost.steps + 20_000) as f64) } else { 0.0 }
        };
        show(space.calculation, "longest for its steps", &climb(space, Instant::now() + half, &mut dice, per_step));
    }
}

fn slowest(seconds: u64, only: Option<&str>) {
    let mut dice = Dice::new(23);
    for space in &chosen(only) {
        let until = Instant::now() + Duration::from_secs(seconds);
        let by_time = climb(space, until, &mut dice, |cost| if cost.is_answered { cost.micros } else { 0.0 });
        show(space.calculation, "longest", &by_time);
    }
}

fn reports(count: u64) {
    let mut dice = Dice::new(4);
    for space in spaces() {
        for number in 0..count {
            let request = space.request(&space.random(&mut dice));
            let mut measured = Measured {
                name: space.calculation,
                request: &request,
                cost: Cost::default(),
                report: None,
                keeps_report: true,
            };
            calculation::visit_all(&mut measured);
            let text = measured.report.map_or_else(|| "refused".to_owned(), |report| report.to_string());
            let digest = Sha256::digest(text.as_bytes());
            let digest = u64::from_be_bytes(std::array::from_fn(|place| digest[place]));
            println!(
                "{} {number} {digest:016x} {:.1} {} {}",
                space.calculation,
                measured.cost.micros / 1e3,
                measured.cost.is_answered,
                text.contains("search_bounded")
            );
        }
    }
}

fn main() {
    calculation::prepare();
    let arguments: Vec<_> = std::env::args().skip(1).collect();
    let arguments: Vec<_> = arguments.iter().map(String::as_str).collect();
    match arguments.as_slice() {
        ["search", seconds] => search(seconds.parse().expect(USAGE), None),
        ["search", seconds, only] => search(seconds.parse().expect(USAGE), Some(only)),
        ["slowest", seconds] => slowest(seconds.parse().expect(USAGE), None),
        ["slowest", seconds, only] => slowest(seconds.parse().expect(USAGE), Some(only)),
        ["reports", count] => reports(count.parse().expect(USAGE)),
        ["time", name, file] => {
            let request: Value = serde_json::from_str(&std::fs::read_to_string(file).expect("a file")).expect("JSON");
            let cost = steady_cost(name, &request);
            show(name, if cost.is_answered { "answered in" } else { "refused in" }, &(request, cost));
        }
        _ => panic!("{USAGE}"),
    }
}
