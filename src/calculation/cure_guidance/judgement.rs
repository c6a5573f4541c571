//! What is to be said of a product at the start, and the verdict that follows.

use uom::si::f64::Time;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour as an_hour;

use super::job::Job;
use super::product::{Behaviour, Product};
use super::report::CureReason;
use super::stops::{self, passes};
use crate::calculation::answer::{At, Finding};
use crate::practice::Vocabulary;
use crate::practice::cure::{
    CureMilestone, CureVerdict, RAIN_CARE_PERCENT, RAIN_STOPS_PERCENT, SHELF_LIFE_SHORT_DAYS, SurfaceCondition,
    hot_handling,
};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::sealants::SealantKind;
use crate::quantity::shown::{say_difference, say_duration, say_temperature};

/// Everything that weighs on a product at the start, the gravest first.
pub fn judge(job: &Job, product: &Product) -> Vec<Finding> {
    let start = job.sky.start;
    let mut findings: Vec<_> =
        stops::stops(product, start, &job.sky).into_iter().map(|stop| stop.finding(job, product)).collect();
    findings.extend(slot(job, product));
    findings.extend(insulation(job, product));
    findings.extend(rain(job, product));
    findings.extend(surface(job));
    findings.extend(heat(job, product));
    findings.extend(traffic(job, product));
    if product.kind == job.product.kind {
        findings.extend(shelf(job));
    }
    findings.sort_by_key(|finding| finding.level);
    if findings.iter().all(|finding| finding.level == Level::Note) {
        findings.insert(0, fit(job, product));
    }
    findings
}

/// The verdict that findings make.
pub fn verdict(job: &Job, product: &Product, findings: &[Finding]) -> CureVerdict {
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
    if is_old || insulation(job, product).is_some() {
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
    At::BODY.field(field).to_string()
}

fn slot(job: &Job, product: &Product) -> Option<Finding> {
    let at = about("surface_condition");
    let find = |code, level, message: &str| Some(Finding::at(code, level, at.clone(), message));
    let is_hot = product.kind == SealantKind::HotApplied;
    match job.condition {
        SurfaceCondition::Wet if is_hot => find(
            FindingCode::SlotWet,
            Level::Stop,
            "There is water in the slot, and molten sealant turns it to steam that spatters. Blow it out and dry the slot first.",
        ),
        SurfaceCondition::Wet => find(
            FindingCode::SlotWet,
            Level::Stop,
            "There is water in the slot: it spoils the seal. Blow it out, dry the slot and let no more in, then begin.",
        ),
        SurfaceCondition::Frost => find(
            FindingCode::SlabFrozen,
            Level::Stop,
            "Frost or ice lies on the slab, and nothing bonds to it. Melt it, dry the slot, and warm the slab itself before you begin.",
        ),
        SurfaceCondition::Damp if is_hot && !product.sheet.damp_allowed => find(
            FindingCode::SlotDamp,
            Level::Stop,
            "The slot is damp, and molten sealant makes steam of it: bubbles, spatter, no bond. Dry the slot with hot air first.",
        ),
        SurfaceCondition::Damp if product.kind == SealantKind::TwoPartReactive && !product.sheet.damp_allowed => find(
            FindingCode::SlotDamp,
            Level::Stop,
            "The slot is damp, and two-part sealant does not bond to damp unless its data sheet says so. Dry the slot first.",
        ),
        SurfaceCondition::Damp => find(
            FindingCode::SlotDamp,
            Level::Warning,
            "The slot is damp. Blow it out and dry it until nothing shows on a paper towel; a film of water lets the seal go.",
        ),
        SurfaceCondition::Dry if job.condition_is_assumed => find(
            FindingCode::SurfaceConditionAssumed,
            Level::Warning,
            "Nobody said whether the slot is dry. See that it is, to the bottom, before the sealant goes in.",
        ),
        SurfaceCondition::Dry => None,
    }
}

fn insulation(job: &Job, product: &Product) -> Option<Finding> {
    if product.kind != SealantKind::HotApplied {
        return None;
    }
    let at = At::BODY.field("wire").field("insulation_rating").to_string();
    let say = |temperature| say_temperature(temperature, job.sky.system);
    let pour = product.sheet.pour;
    match job.rating {
        Some(rating) if rating >= pour => None,
        Some(rating) => Some(
            Finding::at(
                FindingCode::InsulationTooLow,
                Level::Stop,
                at,
                format!(
                    "The insulation stands {}, and the sealant is poured at {}: it would soften and the wires would touch. Take wire and jacket rated for the pour, or a sealant that is applied cold.",
                    say(rating),
                    say(pour)
                ),
            )
            .figure("rating", rating.get::<degree_celsius>(), "celsius")
            .figure("pour", pour.get::<degree_celsius>(), "celsius"),
        ),
        None => Some(Finding::at(
            FindingCode::InsulationUnknown,
            Level::Stop,
            at,
            format!(
                "Nobody said what the insulation and the jacket stand. Send wire.insulation_rating from the wire's sheet: it must be at least the {} of the pour.",
                say(pour)
            ),
        )),
    }
}

fn rain(job: &Job, product: &Product) -> Vec<Finding> {
    let (sky, start) = (&job.sky, job.sky.start);
    let safe = product.safe(start, sky);
    let until = safe.unwrap_or_else(|| sky.end());
    let row = |index, field| At::BODY.field("weather").field("conditions").item(index).field(field).to_string();
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
        let what =
            if matches!(product.behaviour, Behaviour::Cools(_)) { "is surely cold" } else { "has surely skinned over" };
        findings.push(Finding::at(
            FindingCode::ForecastTooShort,
            Level::Warning,
            At::BODY.field("weather").to_string(),
            format!(
                "The weather ends at {}, before the sealant {what}. What comes after is not guessed: send more hours.",
                sky.moment(sky.end()).say()
            ),
        ));
    }
    findings
}

fn surface(job: &Job) -> Option<Finding> {
    let hour = job.sky.hour(job.sky.start);
    hour.surface_is_assumed.then(|| {
        let at = At::BODY.field("weather").field("conditions").item(hour.index).field("surface").to_string();
        let slab = say_temperature(hour.surface, job.sky.system);
        let message = format!(
            "Nobody measured the slab; it is taken to be at {slab}, the lowest air of the last 12 hours and less at night. Measure it beside the slot and send surface."
        );
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
    if product.kind != SealantKind::TwoPartReactive || warmest < hot_handling() {
        return None;
    }
    let pot_life = product.pot_life(job.sky.start, &job.sky);
    let (what, [least, most]) = match pot_life {
        Some(times) => ("can be worked for", times),
        None => ("sets in", product.set_time(job.sky.start, &job.sky)?),
    };
    let band = match (say_duration(least), say_duration(most)) {
        (least, most) if least == most => least,
        (least, most) => format!("{least} to {most}"),
    };
    let at = At::BODY.field("weather").field("conditions").item(hour.index).field("air").to_string();
    let message = format!(
        "At {} mixed sealant {what} about {band}. Mix little, pour at once, and keep both parts in the shade.",
        say_temperature(warmest, job.sky.system)
    );
    Some(Finding::at(FindingCode::ShortPotLife, Level::Warning, at, message).figure(
        "air",
        hour.air.get::<degree_celsius>(),
        "celsius",
    ))
}

/// Whether traffic can be let back when it is needed.
fn traffic(job: &Job, product: &Product) -> Option<Finding> {
    let needed = job.needed?;
    let (sky, at) = (&job.sky, about("needed_open_by"));
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

fn shelf(job: &Job) -> Option<Finding> {
    let shelf = job.shelf?;
    let at = At::BODY.field("sealant").field("made_on").to_string();
    let (until, days) = (shelf.until, shelf.days_left);
    let finding = if days < 0 {
        let message =
            format!("Its shelf life ended on {until}. Take fresh sealant; old sealant cures badly or not at all.");
        Finding::at(FindingCode::PastShelfLife, Level::Stop, at, message)
    } else if days <= SHELF_LIFE_SHORT_DAYS {
        let message = format!("Its shelf life ends on {until}, in {days} days. Use it first, and try it on a scrap.");
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
        "The slot is dry, the slab is at {}, {} above the dew point, and no rain is due before {}. Begin.",
        say_temperature(hour.surface, system),
        say_difference(hour.margin(), system),
        job.sky.moment(safe).to_minute().say(),
    );
    Finding::at(FindingCode::FitToApply, Level::Note, about("start"), message)
        .figure("margin", hour.margin().get::<uom::si::temperature_interval::degree_celsius>(), "celsius")
        .figure("safe_after", (safe - job.sky.start).get::<an_hour>(), "h")
}
