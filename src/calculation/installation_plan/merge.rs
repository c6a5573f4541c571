//! Merges what the reports of the parts state into the plan's report: pointers lead into the plan's request, and each statement
//! stands once.

use std::collections::BTreeSet;

use super::fields::{PlanField, PlanReader};
use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::detector_compatibility::DetectorCompatibilityReport;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::calculation::report::{Assumed, Basis, Caution, Diagnostics, FieldError, FieldPath, Finding};

/// The fields that every report has in the same shape.
pub struct SharedReportFields<'a> {
    /// Statements about the job.
    pub findings: &'a mut Vec<Finding>,
    /// Defaults used.
    pub assumed: &'a mut Vec<Assumed>,
    /// Fields sent and not needed.
    pub unused: &'a mut Vec<String>,
    /// What can hurt someone.
    pub cautions: &'a [Caution],
    /// What the figures rest on.
    pub basis: &'a Basis,
    /// Which part it is of.
    pub reader: PlanReader,
}

/// A report of a part, as it is merged.
pub trait MergeableReport {
    /// The fields to merge.
    fn shared_fields(&mut self) -> SharedReportFields<'_>;
}

macro_rules! mergeable {
    ($($report:ident is $reader:ident;)+) => {
        $(impl MergeableReport for $report {
            fn shared_fields(&mut self) -> SharedReportFields<'_> {
                SharedReportFields {
                    findings: &mut self.findings,
                    assumed: &mut self.assumed,
                    unused: &mut self.unused,
                    cautions: &self.cautions,
                    basis: &self.basis,
                    reader: PlanReader::$reader,
                }
            }
        })+
    };
}

mergeable! {
    LoopSizingReport is Sizing;
    DetectorCompatibilityReport is Detector;
    MaterialEstimateReport is Materials;
    CureGuidanceReport is Cure;
}

/// A pointer into the request of a part, as one into the plan's: what a part has for each loop, the plan has once.
fn plan_pointer(part: &str) -> String {
    if part == "#/loops" {
        return "#/opening".to_owned();
    }
    let Some(rest) = part.strip_prefix("#/loops/") else { return part.to_owned() };
    let place = rest.split_once('/').map_or("", |(_, place)| place);
    let own = match place.split('/').next().unwrap_or_default() {
        "loop" => place.strip_prefix("loop/wire").map(|rest| format!("wire{rest}")),
        "lead_in" | "slot" | "construction" => Some(place.to_owned()),
        _ => None,
    };
    own.map_or_else(|| "#/opening".to_owned(), |own| format!("#/{own}"))
}

/// Whether a default was taken for a field that the plan itself fills in.
fn is_filled_in(pointer: &str) -> bool {
    pointer.strip_prefix("#/loops/").and_then(|rest| rest.split_once('/')).is_some_and(|(_, place)| {
        let name = place.split('/').next().unwrap_or_default();
        !matches!(name, "lead_in" | "slot" | "construction") && !place.starts_with("loop/wire")
    })
}

/// The errors of a part, with pointers into the plan's request.
pub fn with_plan_pointers(errors: Vec<FieldError>) -> impl Iterator<Item = FieldError> {
    errors.into_iter().map(|error| FieldError { pointer: plan_pointer(&error.pointer), ..error })
}

/// Rewrites the pointers of each part to lead into the plan's request, and adds what the parts state to the plan's diagnostics. A field
/// is unused when every planned part that reads it has no use for it.
pub fn merge(fields: &[PlanField], parts: &mut [&mut dyn MergeableReport], diagnostics: &mut Diagnostics) {
    for part in parts.iter_mut() {
        let SharedReportFields { findings, assumed, unused, .. } = part.shared_fields();
        for finding in findings.iter_mut() {
            finding.about = plan_pointer(&finding.about);
            // What the plan fills in by itself cannot be sent.
            let sent: BTreeSet<_> =
                finding.send.iter().filter(|send| !is_filled_in(send)).map(|send| plan_pointer(send)).collect();
            finding.send = sent.into_iter().collect();
        }
        // What was said of each of several loops that are alike reads the same now.
        let mut told: Vec<Finding> = Vec::new();
        findings.retain(|finding| {
            let is_new = !told.contains(finding);
            told.extend(is_new.then(|| finding.clone()));
            is_new
        });
        assumed.retain(|assumed| !is_filled_in(&assumed.about));
        for assumed in assumed.iter_mut() {
            assumed.about = plan_pointer(&assumed.about);
        }
        let pointers: BTreeSet<_> =
            unused.iter().filter(|unused| !is_filled_in(unused)).map(|unused| plan_pointer(unused)).collect();
        *unused = pointers.into_iter().collect();
    }
    let planned: Vec<_> = parts.iter_mut().map(|part| part.shared_fields().reader).collect();
    let body = FieldPath::BODY;
    let is_planned = |field: &&PlanField| field.readers.iter().any(|reader| planned.contains(reader));
    for field in fields.iter().filter(|field| field.is_sent && !is_planned(field)) {
        diagnostics.mark_unused(&body.field(field.name));
    }
    for index in 0..parts.len() {
        for pointer in parts[index].shared_fields().unused.clone() {
            if parts.iter_mut().all(|part| is_unneeded_by(fields, &part.shared_fields(), &pointer)) {
                diagnostics.mark_unused_pointer(pointer);
            }
        }
    }
    for part in parts.iter_mut() {
        let SharedReportFields { findings, assumed, cautions, basis, .. } = part.shared_fields();
        diagnostics.merge(findings, assumed, cautions, basis);
    }
}

/// Whether a part does not read a field, or has no use for it.
fn is_unneeded_by(fields: &[PlanField], part: &SharedReportFields<'_>, pointer: &str) -> bool {
    let name = pointer.trim_start_matches("#/").split('/').next().unwrap_or_default();
    let reads = fields.iter().any(|field| field.name == name && field.readers.contains(&part.reader));
    !reads || part.unused.iter().any(|unused| unused == pointer)
}
