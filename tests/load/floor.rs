//! What the service is measured against.
//!
//!     floor serve ADDRESS NAME REQUEST.json         a bare server of one calculation's requests and answers
//!     floor alone NAME REQUEST.json STAGE COUNT     one stage of an answer, without a server, so many times
//!
//! The bare server parses each body into the calculation's own typed request with the framework's JSON extractor and writes the
//! typed report anew for each answer, so both bodies are those of the service to the byte. It computes nothing: the report is
//! made once, at the start. It has one worker and no middleware, and one route.
//!
//! The stages are `decode` (body to typed request), `answer` (typed request to typed report) and `write` (report to body).
#![allow(clippy::expect_used, reason = "a measurement that cannot go on has failed")]

mod processor_time;

use std::hint::black_box;

use actix_web::{App, HttpResponse, HttpServer, web};
use loopwright::calculation::{self, Calculation, CalculationVisitor};
use loopwright::drawing::SvgIllustrator;
use loopwright::wording::{self, Language, Worded};
use processor_time::processor_nanoseconds;

const USAGE: &str =
    "usage: floor serve ADDRESS NAME REQUEST.json | floor alone NAME REQUEST.json (decode|answer|write) COUNT";

/// What is asked of the calculation of that name.
struct Asked<'a> {
    name: &'a str,
    body: String,
    what: What<'a>,
    was_found: bool,
}

enum What<'a> {
    Serve { address: &'a str },
    Alone { stage: &'a str, count: u64 },
}

impl CalculationVisitor for Asked<'_> {
    fn visit<C: Calculation>(&mut self) {
        if C::NAME != self.name {
            return;
        }
        self.was_found = true;
        match self.what {
            What::Serve { address } => serve::<C>(address, self.body.clone()),
            What::Alone { stage, count } => alone::<C>(&self.body, stage, count),
        }
    }
}

fn main() {
    let arguments: Vec<_> = std::env::args().skip(1).collect();
    let arguments: Vec<_> = arguments.iter().map(String::as_str).collect();
    let (name, file, what) = match arguments[..] {
        ["serve", address, name, file] => (name, file, What::Serve { address }),
        ["alone", name, file, stage, count] => {
            (name, file, What::Alone { stage, count: count.parse().expect("COUNT is a number") })
        }
        _ => {
            eprintln!("{USAGE}");
            std::process::exit(2);
        }
    };
    let body = std::fs::read_to_string(file).expect("the request can be read");
    calculation::prepare();
    wording::prepare();
    let mut asked = Asked { name, body, what, was_found: false };
    calculation::visit_all(&mut asked);
    assert!(asked.was_found, "there is no calculation {name}");
}

fn decoded<C: Calculation>(body: &str) -> C {
    serde_json::from_str(body).expect("the request is sound")
}

fn answered<C: Calculation>(request: &C) -> C::Report {
    let Ok(report) = request.answer() else { unreachable!("the request is refused") };
    let mut report = report.worded(Language::English);
    request.illustrate(&mut report, &SvgIllustrator { language: Language::English });
    report
}

fn serve<C: Calculation>(address: &str, body: String) {
    let server = HttpServer::new(move || {
        // A report need not be shared between threads, so each worker has its own.
        let report = web::Data::new(answered::<C>(&decoded(&body)));
        let handler = move |request: web::Json<C>| {
            let report = report.clone();
            async move {
                black_box(&*request);
                HttpResponse::Ok().json(&*report)
            }
        };
        App::new().route(&format!("/v1/{}", C::NAME), web::post().to(handler))
    })
    .workers(1)
    .bind(address)
    .expect("the address is free");
    actix_web::rt::System::new().block_on(server.run()).expect("the server runs");
}

/// Prints how many nanoseconds of processor time one pass took. Instructions are counted from outside.
fn alone<C: Calculation>(body: &str, stage: &str, count: u64) {
    let request: C = decoded(body);
    let report = answered(&request);
    let pass = || match stage {
        "decode" => drop(black_box(decoded::<C>(black_box(body)))),
        "answer" => drop(black_box(answered(black_box(&request)))),
        "write" => drop(black_box(serde_json::to_string(black_box(&report)))),
        _ => unreachable!("{USAGE}"),
    };
    let before = processor_nanoseconds();
    (0..count).for_each(|_| pass());
    println!("{}", (processor_nanoseconds() - before) / count.max(1));
}
