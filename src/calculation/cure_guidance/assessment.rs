//! What is to be said of a kind of sealant at the start, its windows, and the verdict that follows.

use uom::si::f64::Time;
use uom::si::time::minute;

use super::candidate::SealantCandidate;
use super::deadline::late_return;
use super::possible_starts::{StartWindow, is_workable, start_windows};
use super::report::CureReason;
use super::request::ResolvedCureGuidance;
use super::stop_findings::stop_finding;
use super::traffic_findings::{late_finding, traffic_skin_finding};
use super::warnings::{
    cold_finding, fit_finding, heat_finding, rain_findings, shelf_life_finding, slab_findings, slot_findings,
    weather_too_short,
};
use super::work_stops::{SealingSpan, WorkStop, find_stops};
use crate::calculation::report::Finding;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::sealing::CureVerdict;
use crate::vocabulary::Vocabulary;

/// A kind of sealant at the start, with what is to be said of it.
#[derive(Clone)]
pub struct Assessment {
    /// The kind.
    pub candidate: SealantCandidate,
    /// The starts that would do.
    pub windows: Vec<StartWindow>,
    /// Those that would do once the slot is dry, where its state as it was seen stops the work.
    pub windows_once_dry: Vec<StartWindow>,
    /// What is to be said of it, the gravest first.
    pub findings: Vec<Finding>,
    /// The verdict that follows.
    pub verdict: CureVerdict,
}

impl Assessment {
    /// Assesses a kind of sealant.
    pub fn new(job: &ResolvedCureGuidance, candidate: SealantCandidate) -> Self {
        let span = SealingSpan::new(job, &candidate, job.weather.start);
        let stops = find_stops(job, &candidate, &span);
        let windows = start_windows(job, &candidate);
        let is_seen = stops.iter().any(|stop| matches!(stop, WorkStop::SlotAsSeen(_)));
        let windows_once_dry = if is_seen { start_windows(&job.once_dry(), &candidate) } else { Vec::new() };
        let cooler = if windows.is_empty() { &windows_once_dry } else { &windows };
        let findings = find(job, &candidate, &span, &stops, cooler);
        let has_window = !windows.is_empty() || !windows_once_dry.is_empty();
        let verdict = match findings.iter().map(|finding| finding.level).min() {
            Some(Level::Stop) if has_window => CureVerdict::Wait,
            Some(Level::Stop) => CureVerdict::DoNotApply,
            Some(Level::Warning) => CureVerdict::GoWithCare,
            Some(Level::Note) | None => CureVerdict::Go,
        };
        Self { candidate, windows, windows_once_dry, findings, verdict }
    }

    /// The start that milestones are given for: the one that was asked for where the verdict allows it, else that of the first window.
    pub fn milestones_from(&self, job: &ResolvedCureGuidance) -> Option<Time> {
        if self.verdict.allows_start() { Some(job.weather.start) } else { Some(self.windows.first()?.from) }
    }

    /// The findings that the verdict rests on: stops and warnings, or that nothing stands against the work.
    pub fn reasons(&self) -> Vec<CureReason> {
        let counts = |finding: &&Finding| finding.level != Level::Note || finding.code == FindingCode::FitToApply;
        self.findings.iter().filter(counts).map(reason).collect()
    }

    /// Why a window of this kind ends: what stops the start a minute later, or the end of what is known, or why one of the two is not
    /// preferred.
    pub fn end_of(&self, job: &ResolvedCureGuidance, windows: &[StartWindow], window: &StartWindow) -> CureReason {
        let (candidate, after) = (&self.candidate, window.until + Time::new::<minute>(1.0));
        let too_short = || weather_too_short(job, candidate);
        if after >= job.weather.end() {
            return reason(&too_short());
        }
        let span = SealingSpan::new(job, candidate, after);
        if let Some(stop) = find_stops(job, candidate, &span).first() {
            return reason(&stop_finding(job, candidate, after, *stop));
        }
        if span.safe.latest.is_none() {
            return reason(&too_short());
        }
        // What is preferred begins or ends here: of the starts on both sides, the one that is not preferred has a reason.
        let worse = if window.is_preferred { after } else { window.until };
        let heat = Some(worse).filter(|start| !is_workable(job, candidate, *start));
        let heat = heat.and_then(|start| heat_finding(job, candidate, start, windows));
        let late = || {
            let late = late_return(job, candidate, worse + job.work.duration)?;
            Some(late_finding(job, candidate, &late))
        };
        reason(&heat.or_else(late).unwrap_or_else(too_short))
    }
}

fn reason(finding: &Finding) -> CureReason {
    CureReason { code: finding.code.code(), level: finding.level, message: finding.message.clone() }
}

/// Everything that is to be said of a kind of sealant at the start, the gravest first.
fn find(
    job: &ResolvedCureGuidance,
    candidate: &SealantCandidate,
    span: &SealingSpan,
    stops: &[WorkStop],
    windows: &[StartWindow],
) -> Vec<Finding> {
    let start = span.start;
    let mut findings: Vec<_> = stops.iter().map(|stop| stop_finding(job, candidate, start, *stop)).collect();
    findings.extend(slot_findings(job, candidate, start));
    findings.extend(rain_findings(job, candidate, span));
    findings.extend(cold_finding(job, candidate, span, stops));
    findings.extend(slab_findings(job, span, stops));
    findings.extend(heat_finding(job, candidate, start, windows));
    let late = late_return(job, candidate, span.sealed).filter(|late| !late.is_sure);
    findings.extend(late.map(|late| late_finding(job, candidate, &late)));
    if candidate.kind == job.candidate.kind {
        findings.extend(shelf_life_finding(job));
    }
    findings.extend(traffic_skin_finding(job, candidate, span.sealed));
    findings.sort_by_key(|finding| finding.level);
    if findings.iter().all(|finding| finding.level == Level::Note) {
        findings.insert(0, fit_finding(job, candidate, span));
    }
    findings
}
