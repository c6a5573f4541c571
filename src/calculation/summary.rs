//! A job in a few lines, for whoever shows one gate and not a whole report: one shape for every report that lays loops.

use std::collections::BTreeSet;

use serde::Serialize;
use uom::si::f64::Length;
use utoipa::ToSchema;

use super::Example;
use super::layout::LoopMark;
use super::report::{Decimals, Finding, ListJoin, Message, Statement, Subject, has_messages};
use crate::practice::finding_codes::Level;
use crate::practice::materials::USUAL_WIRE_ALLOWANCE_PERCENT;
use crate::practice::roles::{Role, Side};
use crate::practice::site::{Barrier, Construction};
use crate::quantity::UnitSystem;
use crate::quantity::output::PlanLength;
use crate::vocabulary::Vocabulary;

/// The most findings that a summary tells.
const MAX_FINDINGS: usize = 3;

/// A job in a few lines. Its sentences are for a customer or a clerk.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct JobSummary {
    /// The loops, and whether anything is to be watched, in a sentence.
    #[schema(value_type = String)]
    pub headline: Message,
    /// The gravest level among the findings of the report: `stop`, `warning` or `note`; absent without any.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub worst_level: Option<Level>,
    /// The loops, in the order of the report.
    pub lines: Vec<SummaryLine>,
    /// What the caller has by a number of its own, each number once.
    pub cart: Vec<CartLine>,
    /// What has no such number, in words. Of a bill only the loops and their wire are here.
    pub to_order: Vec<OrderLine>,
    /// The gravest stops and warnings, each kind once, three at the most.
    #[schema(max_items = 3)]
    pub top_findings: Vec<TopFinding>,
}

/// One loop of a summary, or a row of loops that are alike.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SummaryLine {
    /// Its mark, as in the report and the drawings.
    #[schema(value_type = String)]
    pub mark: LoopMark,
    /// What it is for; a `code` of `reference/roles`.
    #[schema(value_type = String)]
    pub role: Role,
    /// The same in words.
    #[schema(value_type = String)]
    pub role_label: Message,
    /// Its legs along travel and across the lane, in words; of a row also how many there are.
    #[schema(value_type = String)]
    pub size: Message,
    /// Where its nearest wire lies, in words.
    #[schema(value_type = String)]
    pub place: Message,
    /// Turns.
    pub turns: u32,
}

/// What to take or order by the caller's number.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CartLine {
    /// The caller's number.
    pub sku: String,
    /// How many.
    pub quantity: u64,
    /// The loops that it is for; empty for what is for all.
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
}

/// What to order that the caller has no number for.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct OrderLine {
    /// How many.
    pub quantity: u64,
    /// The loops that it is for.
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
    /// What it is, in words.
    #[schema(value_type = String)]
    pub specification: Message,
}

/// A finding in a sentence without figures. The report has all of it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TopFinding {
    /// How much it weighs: `stop` or `warning`.
    #[schema(value_type = String)]
    pub level: Level,
    /// The loops that it is about; empty when it is about the whole job.
    #[schema(value_type = Vec<String>)]
    pub marks: Vec<LoopMark>,
    /// What it says.
    #[schema(value_type = String)]
    pub message: Message,
}

has_messages! {
    JobSummary: headline, lines, to_order, top_findings;
    SummaryLine: role_label, size, place;
    OrderLine: specification;
    TopFinding: message;
}

/// A report that has a summary.
pub trait Summarized {
    /// The path of the summary alone.
    const PATH: &'static str;
    /// The name of its operation in generated clients.
    const OPERATION_ID: &'static str;
    /// The published requests, at least one.
    const EXAMPLES: &'static [Example];

    /// The summary.
    fn summary(&self) -> &JobSummary;
}

/// A loop, as far as a summary tells it.
pub struct LoopToSum {
    /// Its mark.
    pub mark: LoopMark,
    /// What it is for.
    pub role: Role,
    /// How it is made.
    pub construction: Construction,
    /// How many lie side by side.
    pub count: usize,
    /// The leg along travel and the leg across the lane.
    pub legs: [Length; 2],
    /// Turns.
    pub turns: u32,
    /// The side of the barrier or reference that it lies on.
    pub side: Side,
    /// From there to its nearest wire.
    pub distance: Length,
    /// The wire in the loop, without its pair.
    pub wire_length: Length,
    /// The pair to order with it.
    pub pair_length: Length,
    /// The caller's number of it, where the stock has one.
    pub sku: Option<String>,
}

/// What a summary needs of a job beside its loops.
pub struct JobToSum<'a> {
    /// The barrier at the opening.
    pub barrier: Barrier,
    /// The wire of loops that are wound on site, as it was written.
    pub wire: &'a str,
    /// What is said of the job, the gravest first.
    pub findings: &'a [Finding],
    /// What is bought in packs by the caller's numbers: a number, and how many.
    pub packs: Vec<(String, u64)>,
    /// The system of the reader.
    pub system: UnitSystem,
}

impl JobSummary {
    /// Sums up a job.
    pub fn of(loops: &[LoopToSum], job: &JobToSum<'_>) -> Self {
        let top_findings = top_findings(loops, job.findings);
        Self {
            headline: headline(loops, job).into(),
            worst_level: job.findings.iter().map(|finding| finding.level).min(),
            lines: loops.iter().map(|one| one.line(job)).collect(),
            cart: cart(loops, job),
            to_order: to_order(loops, job),
            top_findings,
        }
    }
}

impl LoopToSum {
    fn line(&self, job: &JobToSum<'_>) -> SummaryLine {
        let place = if job.barrier.is_present() {
            Statement::new("summary-place").member("barrier", job.barrier)
        } else {
            Statement::new("summary-place-without-barrier")
        };
        let place = place.code("side", self.side.code()).length("distance", self.distance, job.system);
        SummaryLine {
            mark: self.mark,
            role: self.role,
            role_label: Statement::new("summary-role").member("role", self.role).into(),
            size: self.size(Statement::new("summary-size"), job).count("loops", self.count as u64).into(),
            place: place.into(),
            turns: self.turns,
        }
    }

    /// Adds the legs to a sentence.
    fn size(&self, statement: Statement, job: &JobToSum<'_>) -> Statement {
        let [along, across] = self.legs;
        statement.length("along_travel", along, job.system).length("across_lane", across, job.system)
    }

    /// Whether a summary calls both by the same words.
    fn is_like(&self, other: &Self) -> bool {
        self.legs == other.legs && self.turns == other.turns
    }
}

/// The sorts of loops, each with how many there are.
fn headline(loops: &[LoopToSum], job: &JobToSum<'_>) -> Statement {
    let sorts = loops.iter().enumerate().filter(|(index, one)| !loops[..*index].iter().any(|other| other.is_like(one)));
    let sorts = sorts.map(|(_, one)| {
        let count: usize = loops.iter().filter(|other| other.is_like(one)).map(|other| other.count).sum();
        let sort = one.size(Statement::new("summary-sort"), job);
        sort.count("loops", count as u64).count("turns", u64::from(one.turns))
    });
    let kinds = |level| {
        let of_level = job.findings.iter().filter(|finding| finding.level == level);
        of_level.map(|finding| finding.code.code()).collect::<BTreeSet<_>>().len() as u64
    };
    let (stops, warnings) = (kinds(Level::Stop), kinds(Level::Warning));
    let outlook = match (stops, warnings) {
        (0, 0) => "sound",
        (0, _) => "watch",
        _ => "stop",
    };
    Statement::new("summary-headline")
        .phrases("sorts", sorts.collect(), ListJoin::And)
        .code("outlook", outlook)
        .count("things", if stops > 0 { stops } else { warnings })
}

fn cart(loops: &[LoopToSum], job: &JobToSum<'_>) -> Vec<CartLine> {
    let mut cart: Vec<CartLine> = Vec::new();
    for one in loops {
        let Some(sku) = &one.sku else { continue };
        match cart.iter_mut().find(|line| line.sku == *sku) {
            Some(line) => {
                line.quantity += one.count as u64;
                line.marks.push(one.mark);
            }
            None => cart.push(CartLine { sku: sku.clone(), quantity: one.count as u64, marks: vec![one.mark] }),
        }
    }
    cart.extend(job.packs.iter().map(|(sku, quantity)| CartLine {
        sku: sku.clone(),
        quantity: *quantity,
        marks: Vec::new(),
    }));
    cart
}

fn to_order(loops: &[LoopToSum], job: &JobToSum<'_>) -> Vec<OrderLine> {
    let open = || loops.iter().filter(|one| one.sku.is_none());
    let mut lines: Vec<OrderLine> = Vec::new();
    for one in open().filter(|one| one.construction != Construction::HandWound) {
        let specification = one
            .size(Statement::new("summary-preformed"), job)
            .count("turns", u64::from(one.turns))
            .length("lead_in_length", one.pair_length, job.system)
            .member("construction", one.construction);
        let specification = Message::from(specification);
        match lines.iter_mut().find(|line| line.specification == specification) {
            Some(line) => {
                line.quantity += one.count as u64;
                line.marks.push(one.mark);
            }
            None => {
                lines.push(OrderLine { quantity: one.count as u64, marks: vec![one.mark], specification });
            }
        }
    }
    let wound: Vec<_> = open().filter(|one| one.construction == Construction::HandWound).collect();
    if !wound.is_empty() && job.packs.is_empty() {
        let mut lengths: Vec<(Length, u64)> = Vec::new();
        for one in &wound {
            let exact = one.wire_length + one.pair_length * 2.0;
            let whole = exact * (1.0 + USUAL_WIRE_ALLOWANCE_PERCENT / 100.0);
            match lengths.iter_mut().find(|(known, _)| *known == whole) {
                Some((_, count)) => *count += one.count as u64,
                None => lengths.push((whole, one.count as u64)),
            }
        }
        let said = lengths.into_iter().map(|(length, count)| {
            Statement::new("summary-wire-length").length("length", length, job.system).count("loops", count)
        });
        let specification = Statement::new("summary-wire")
            .text("wire", job.wire.to_owned())
            .percent("allowance", USUAL_WIRE_ALLOWANCE_PERCENT, Decimals::AtMost(1))
            .phrases("lengths", said.collect(), ListJoin::Comma);
        lines.push(OrderLine {
            quantity: wound.iter().map(|one| one.count as u64).sum(),
            marks: wound.iter().map(|one| one.mark).collect(),
            specification: specification.into(),
        });
    }
    lines
}

fn top_findings(loops: &[LoopToSum], findings: &[Finding]) -> Vec<TopFinding> {
    let weighty = || findings.iter().filter(|finding| finding.level != Level::Note);
    let mut codes = Vec::new();
    for finding in weighty().filter(|finding| finding.level == Level::Stop).chain(weighty()) {
        if !codes.contains(&finding.code) {
            codes.push(finding.code);
        }
    }
    codes.truncate(MAX_FINDINGS);
    let told = codes.into_iter().filter_map(|code| {
        let of_code = || weighty().filter(|finding| finding.code == code);
        let roles: Vec<_> = of_code().map(|finding| finding.subject.as_ref()).collect();
        let is_about = |one: &&LoopToSum| roles.contains(&Some(&Subject::Role(one.role)));
        // What is also said of the whole job is about no loop alone.
        let about = loops.iter().filter(is_about).map(|one| one.mark);
        Some(TopFinding {
            level: of_code().map(|finding| finding.level).min()?,
            marks: if roles.contains(&None) { Vec::new() } else { about.collect() },
            message: Statement::new("summary-finding").member("finding", code).into(),
        })
    });
    told.collect()
}

/// The length of a report in the type that is computed with.
pub fn plan_length(length: Option<PlanLength>) -> Length {
    length.map_or_else(Length::default, |length| length.0)
}
