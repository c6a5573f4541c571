//! Whether traffic can be let back when it is needed, and what would meet that.

use uom::si::f64::Time;

use super::job::Job;
use super::judgement::earliest_start;
use super::product::Product;
use crate::calculation::answer::{At, Finding};
use crate::practice::Vocabulary;
use crate::practice::cure::CureMilestone;
use crate::practice::findings::{FindingCode, Level};

/// Whether traffic can be let back when it is needed.
pub fn traffic(job: &Job, product: &Product) -> Option<Finding> {
    let needed = job.needed?;
    let (sky, at) = (&job.sky, At::BODY.field("needed_open_by").to_string());
    let span = product.reached(CureMilestone::OpenToTraffic, sky.start, sky)?;
    let limit = needed.since(sky.begin.at);
    if span.latest.is_some_and(|latest| latest <= limit) {
        return None;
    }
    let (needed, opens) = (needed.say(), |time: Time| sky.moment(time).to_minute().say());
    let is_beyond = limit > sky.end();
    let (code, level, message) = match (span.earliest, span.latest) {
        (Some(earliest), Some(latest)) if earliest <= limit => (
            FindingCode::OpensLate,
            Level::Warning,
            format!(
                "Traffic may return between {} and {}, and is needed at {needed}. Have a way round ready.",
                opens(earliest),
                opens(latest)
            ),
        ),
        (Some(earliest), None) if earliest <= limit => (
            FindingCode::OpensLate,
            Level::Warning,
            format!(
                "Traffic may return from {} on, but perhaps only after the weather that was sent ends; it is needed at {needed}. Have a way round ready.",
                opens(earliest)
            ),
        ),
        (None, _) if is_beyond => (
            FindingCode::ForecastTooShort,
            Level::Warning,
            format!(
                "The weather ends before traffic may return, so nobody can say whether {needed} is met. Send more hours."
            ),
        ),
        (Some(earliest), _) => (
            FindingCode::OpensLate,
            Level::Stop,
            format!(
                "Traffic may return at {} at the earliest, and is needed at {needed}.{}",
                opens(earliest),
                instead(job, product)
            ),
        ),
        (None, _) => (
            FindingCode::OpensLate,
            Level::Stop,
            format!(
                "Traffic may not return within the weather that was sent, and is needed at {needed}.{}",
                instead(job, product)
            ),
        ),
    };
    Some(Finding::at(code, level, at, message))
}

/// What would meet the time: another kind, another start.
fn instead(job: &Job, product: &Product) -> String {
    let say = |start: Time| job.sky.moment(start).say();
    let own = earliest_start(job, product).map(|start| format!("this sealant from {}", say(start)));
    let others = job.products().into_iter().filter(|other| other.kind != product.kind).filter_map(|other| {
        let start = earliest_start(job, &other)?;
        Some(format!("{} sealant from {}", other.kind.label().to_lowercase(), say(start)))
    });
    let all: Vec<_> = own.into_iter().chain(others).collect();
    if all.is_empty() {
        return " Nothing in this weather meets it: take a later time, or another day.".to_owned();
    }
    format!(" What would meet it, in a dry slot: {}.", all.join("; "))
}
