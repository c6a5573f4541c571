//! Whether traffic can be let back when it is needed, and what would meet that.

use uom::si::f64::Time;
use uom::si::length::millimeter;

use super::job::Job;
use super::judgement::earliest_start;
use super::product::Product;
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::cure::CureMilestone;
use crate::practice::findings::{FindingCode, Level};
use crate::quantity::format::format_detail_length;
use crate::vocabulary::Vocabulary;

/// Whether traffic can be let back when it is needed.
pub fn traffic(job: &Job, product: &Product) -> Option<Finding> {
    let needed = job.needed?;
    let (sky, at) = (&job.sky, FieldPath::BODY.field("needed_open_by").pointer());
    let span = product.reached(CureMilestone::OpenToTraffic, sky.start, sky)?;
    let limit = needed.since(sky.begin.at);
    if span.latest.is_some_and(|latest| latest <= limit) {
        return None;
    }
    let (needed, opens) = (needed.say(), |time: Time| sky.moment(time).to_minute().say());
    let is_beyond = limit > sky.end();
    let (code, level, message) = match (span.earliest, span.latest) {
        (_, None) if is_beyond => (
            FindingCode::ForecastTooShort,
            Level::Warning,
            format!(
                "The weather ends before traffic may surely return, so nobody can say whether {needed} is met. Send more hours."
            ),
        ),
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

/// What the times of traffic rest on, where no sheet gives them; more than a note where they meet what is needed.
pub fn by_skin(job: &Job, product: &Product) -> Option<Finding> {
    let skin = product.traffic_skin()?;
    let is_relied_on = job.needed.is_some() && traffic(job, product).is_none();
    let level = if is_relied_on { Level::Warning } else { Level::Note };
    let message = format!(
        "No data sheet says when traffic may return, so a cured skin of {} stands in: a choice made here. Below it the sealant stays soft for days. Keep wheels off until nothing tracks; where they must be back the same day, take two-part sealant.",
        format_detail_length(skin, job.sky.system)
    );
    let at = FieldPath::BODY.field("sealant").field("data_sheet").field("open_to_traffic").pointer();
    Some(Finding::at(FindingCode::TrafficBySkin, level, at, message).figure("skin", skin.get::<millimeter>(), "mm"))
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
