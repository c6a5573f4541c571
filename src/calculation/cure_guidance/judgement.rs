//! What is to be said of a product at the start, and the verdict that follows.

use uom::si::f64::Time;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour as an_hour;

use super::deadline;
use super::job::Job;
use super::product::Product;
use super::report::CureReason;
use super::slot;
use super::stops::{self, passes};
use crate::calculation::report::{FieldPath, Finding};
use crate::practice::cure::{
    CureMilestone, CureVerdict, RAIN_CARE_PERCENT, RAIN_STOPS_PERCENT, SHELF_LIFE_SHORT_DAYS, hot_handling, slab_memory,
};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::sealants::SealantKind;
use crate::quantity::format::{format_count, format_duration, format_temperature, format_temperature_difference};
use crate::vocabulary::Vocabulary;

/// A kind of sealant at the start, with what is to be said of it.
#[derive(Clone)]
pub struct Weighed {
    /// The kind.
    pub product: Product,
    /// What weighs on it, the gravest first.
    pub findings: Vec<Finding>,
    /// What follows.
    pub verdict: CureVerdict,
}

impl Weighed {
    /// Weighs a kind of sealant.
    pub fn new(job: &Job, product: Product) -> Self {
        let findings = judge(job, &product);
        let verdict = verdict(job, &product, &findings);
        Self { product, findings, verdict }
    }
}

/// Everything that weighs on a product at the start, the gravest first.
fn judge(job: &Job, product: &Product) -> Vec<Finding> {
    let start = job.sky.start;
    let mut findings: Vec<_> =
        stops::stops(product, start, &job.sky).into_iter().map(|stop| stop.finding(job, product)).collect();
    findings.extend(slot::slot(job, product));
    findings.extend(slot::insulation(job, product));
    findings.extend(rain(job, product));
    findings.extend(surface(job));
    findings.extend(heat(job, product));
    findings.extend(deadline::traffic(job, product));
    if product.kind == job.product.kind {
        findings.extend(shelf(job));
    }
    findings.extend(deadline::by_skin(job, product));
    findings.sort_by_key(|finding| finding.level);
    if findings.iter().all(|finding| finding.level == Level::Note) {
        findings.insert(0, fit(job, product));
    }
    findings
}

/// The verdict that findings make.
fn verdict(job: &Job, product: &Product, findings: &[Finding]) -> CureVerdict {
    let weighs = |level: Level| findings.iter().any(|finding| finding.level == level);
    match (weighs(Level::Stop), weighs(Level::Warning)) {
        (true, _) if earliest_start(job, product).is_some() => CureVerdict::Wait,
        (true, _) => CureVerdict::DoNotApply,
        (false, true) => CureVerdict::GoWithCare,
        (false, false) => CureVerdict::Go,
    }
}

/// The findings that made a verdict: stops and warnings, or that nothing stands against it.
pub fn reasons(findings: &[Finding]) -> Vec<CureReason> {
    let counts = |finding: &&Finding| finding.level != Level::Note || finding.code == FindingCode::FitToApply;
    let reason = |finding: &Finding| CureReason {
        code: finding.code.code(),
        level: finding.level,
        message: finding.message.clone(),
    };
    findings.iter().filter(counts).map(reason).collect()
}

/// The earliest start that passes, and surely meets the time at which traffic is needed. Old sealant and insulation that does not
/// stand the pour pass at no hour.
pub fn earliest_start(job: &Job, product: &Product) -> Option<Time> {
    let is_old = product.kind == job.product.kind && job.shelf.is_some_and(|shelf| shelf.days_left < 0);
    if is_old || slot::insulation(job, product).is_some() {
        return None;
    }
    let meets = |at: Time| {
        let Some(needed) = job.needed else { return true };
        let span = product.reached(CureMilestone::OpenToTraffic, at, &job.sky);
        span.and_then(|span| span.latest).is_some_and(|latest| latest <= needed.since(job.sky.begin.at))
    };
    job.sky.starts().find(|at| passes(product, *at, &job.sky) && meets(*at))
}

fn about(field: &'static str) -> String {
    FieldPath::BODY.field(field).pointer()
}

fn rain(job: &Job, product: &Product) -> Vec<Finding> {
    let (sky, start) = (&job.sky, job.sky.start);
    let safe = product.safe(start, sky);
    let until = safe.unwrap_or_else(|| sky.end());
    let row = |index, field| FieldPath::BODY.field("weather").field("conditions").item(index).field(field).pointer();
    let mut findings = Vec::new();
    let chance = |hour: &&super::sky::Hour| {
        hour.rain_percent.is_some_and(|percent| (RAIN_CARE_PERCENT..RAIN_STOPS_PERCENT).contains(&percent))
    };
    if let Some(hour) = sky.between(start, until).find(chance) {
        let percent = hour.rain_percent.unwrap_or_default();
        let when = sky.moment(hour.from).say();
        findings.push(
            Finding::at(
                FindingCode::RainPossible,
                Level::Warning,
                row(hour.index, "precipitation_probability_percent"),
                format!("At {when} rain or snow is possible ({percent:.0} %), before the sealant keeps it out. Have a cover ready that does not touch the sealant."),
            )
            .figure("probability", percent, "percent"),
        );
    }
    if let Some(hour) = sky.between(start, until).find(|hour| hour.rain_percent.is_none() && hour.rain.is_none()) {
        findings.push(Finding::at(
            FindingCode::RainUnknown,
            Level::Warning,
            row(hour.index, "precipitation_probability_percent"),
            "The weather that was sent does not say whether it rains before the sealant keeps water out. Look at the sky, or send precipitation_probability_percent.",
        ));
    }
    if safe.is_none() {
        findings.push(Finding::at(
            FindingCode::ForecastTooShort,
            Level::Warning,
            FieldPath::BODY.field("weather").pointer(),
            format!(
                "The weather ends at {}, before {}. What comes after is not guessed: send more hours.",
                sky.moment(sky.end()).say(),
                product.when_safe()
            ),
        ));
    }
    findings
}

fn surface(job: &Job) -> Option<Finding> {
    let hour = job.sky.hour(job.sky.start);
    hour.surface_is_assumed.then(|| {
        let at = FieldPath::BODY.field("weather").field("conditions").item(hour.index).field("surface").pointer();
        let slab = format_temperature(hour.surface, job.sky.system);
        let message = if hour.from < slab_memory() {
            format!(
                "Nobody measured the slab, and the weather that was sent begins only at {}: what the hours before left in the slab is not known. It is taken to be at {slab}. Measure it beside the slot before you decide, and send surface.",
                job.sky.begin.say()
            )
        } else {
            format!(
                "Nobody measured the slab; it is taken to be at {slab}, the lowest air of the last 12 hours and less at night. Measure it beside the slot and send surface."
            )
        };
        Finding::at(FindingCode::SurfaceAssumed, Level::Warning, at, message).figure(
            "surface",
            hour.surface.get::<degree_celsius>(),
            "celsius",
        )
    })
}

fn heat(job: &Job, product: &Product) -> Option<Finding> {
    let hour = job.sky.hour(job.sky.start);
    let warmest = if hour.air > hour.surface { hour.air } else { hour.surface };
    if warmest < hot_handling() {
        return None;
    }
    let at = FieldPath::BODY.field("weather").field("conditions").item(hour.index).field("air").pointer();
    let find = |code, message| {
        let finding = Finding::at(code, Level::Warning, at, message);
        Some(finding.figure("warmest", warmest.get::<degree_celsius>(), "celsius"))
    };
    let warmest_said = format_temperature(warmest, job.sky.system);
    match product.kind {
        SealantKind::TwoPartReactive => {}
        SealantKind::OnePartMoistureCure if product.sheet.maximum.is_none() => {
            let message = format!(
                "It is {warmest_said}, and nobody said how hot this sealant may be applied: in heat it skins over fast, and gas below the skin blows bubbles. Look for the highest temperature on the data sheet, or work in the cooler hours."
            );
            return find(FindingCode::HotSlab, message);
        }
        _ => return None,
    }
    let pot_life = product.pot_life(job.sky.start, &job.sky);
    let (what, [least, most]) = match pot_life {
        Some(times) => ("can be worked for", times),
        None => ("sets in", product.set_time(job.sky.start, &job.sky)?),
    };
    let band = match (format_duration(least), format_duration(most)) {
        (least, most) if least == most => least,
        (least, most) => format!("{least} to {most}"),
    };
    let message = format!(
        "At {warmest_said} mixed sealant {what} about {band}. Mix little, pour at once, and keep both parts in the shade."
    );
    find(FindingCode::ShortPotLife, message)
}

fn shelf(job: &Job) -> Option<Finding> {
    let shelf = job.shelf?;
    let at = FieldPath::BODY.field("sealant").field("made_on").pointer();
    let (until, days) = (shelf.until, shelf.days_left);
    let finding = if days < 0 {
        let message = format!(
            "The sealant's shelf life ended on {until}. Take fresh sealant; old sealant cures badly or not at all."
        );
        Finding::at(FindingCode::PastShelfLife, Level::Stop, at, message)
    } else if days <= SHELF_LIFE_SHORT_DAYS {
        let when = if days == 0 {
            "the day of the start".to_owned()
        } else {
            format!("in {}", format_count(days as f64, "day"))
        };
        let message = format!("The sealant's shelf life ends on {until}, {when}. Use it first, and try it on a scrap.");
        Finding::at(FindingCode::ShelfLifeShort, Level::Note, at, message)
    } else {
        return None;
    };
    Some(finding.figure("left", 24.0 * days as f64, "h"))
}

fn fit(job: &Job, product: &Product) -> Finding {
    let hour = job.sky.hour(job.sky.start);
    let system = job.sky.system;
    let safe = product.safe(job.sky.start, &job.sky).unwrap_or(job.sky.start);
    let message = format!(
        "The slot is dry, the slab is at {}, {} above the dew point, and rain is unlikely before {}, by {}. Begin.",
        format_temperature(hour.surface, system),
        format_temperature_difference(hour.margin(), system),
        product.when_safe(),
        job.sky.moment(safe).to_minute().say(),
    );
    Finding::at(FindingCode::FitToApply, Level::Note, about("start"), message)
        .figure("margin", hour.margin().get::<uom::si::temperature_interval::degree_celsius>(), "celsius")
        .figure("safe_after", (safe - job.sky.start).get::<an_hour>(), "h")
}
