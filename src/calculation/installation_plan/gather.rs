//! What the parts say, gathered: pointers into the plan's own request, and each thing said once.

use std::collections::BTreeSet;

use crate::calculation::cure_guidance::CureGuidanceReport;
use crate::calculation::detector_compatibility::DetectorCompatibilityReport;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::material_estimate::MaterialEstimateReport;
use crate::calculation::report::{Assumed, Basis, Caution, Diagnostics, FieldError, Finding};

/// The parts that every report has in the same shape.
pub struct Common<'a> {
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
    /// The fields of the plan that this part was given.
    pub given: &'static [&'static str],
}

/// A report whose common parts can be gathered.
pub trait Reported {
    /// The common parts.
    fn common(&mut self) -> Common<'_>;
}

macro_rules! reported {
    ($($report:ident from $given:expr;)+) => {
        $(impl Reported for $report {
            fn common(&mut self) -> Common<'_> {
                Common {
                    findings: &mut self.findings,
                    assumed: &mut self.assumed,
                    unused: &mut self.unused,
                    cautions: &self.cautions,
                    basis: &self.basis,
                    given: $given,
                }
            }
        })+
    };
}

reported! {
    LoopSizingReport from &["opening", "roles", "vehicles", "seen_by_other_devices", "surface", "site_hazards", "construction",
        "lead_in", "wire", "slot", "detector", "stock"];
    DetectorCompatibilityReport from &["lead_in", "wire", "detector", "wiring", "vehicles"];
    MaterialEstimateReport from &["lead_in", "wire", "slot", "lead_in_slot", "saw", "sealant", "backer_rod", "wire_spools",
        "waste_percent", "surface", "slab", "site_hazards", "crossings", "agency_minimum", "prices", "productivity", "stock",
        "construction"];
    CureGuidanceReport from &["sealant", "slot", "wire", "start", "surface_condition", "needed_open_by", "weather"];
}

/// A pointer into the request of a part, as one into the plan's: what a part has for each loop, the plan has once.
pub fn pointer(part: &str) -> String {
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

/// Faults of a part, with the plan's pointers.
pub fn faults(faults: Vec<FieldError>) -> impl Iterator<Item = FieldError> {
    faults.into_iter().map(|fault| FieldError { pointer: pointer(&fault.pointer), ..fault })
}

/// Turns the pointers of each part to the plan's request, and gathers what they say.
pub fn gather(parts: &mut [&mut dyn Reported], diagnostics: &mut Diagnostics) {
    for part in parts.iter_mut() {
        let Common { findings, assumed, unused, .. } = part.common();
        for finding in findings.iter_mut() {
            finding.about = pointer(&finding.about);
        }
        assumed.retain(|assumed| !is_filled_in(&assumed.about));
        for assumed in assumed.iter_mut() {
            assumed.about = pointer(&assumed.about);
        }
        let kept: BTreeSet<_> =
            unused.iter().filter(|unused| !is_filled_in(unused)).map(|unused| pointer(unused)).collect();
        *unused = kept.into_iter().collect();
    }
    let mut unused: Vec<(String, bool)> = Vec::new();
    for index in 0..parts.len() {
        for pointer in parts[index].common().unused.clone() {
            if unused.iter().all(|(known, _)| *known != pointer) {
                let everywhere = parts.iter_mut().all(|part| is_idle(&part.common(), &pointer));
                unused.push((pointer, everywhere));
            }
        }
    }
    for (pointer, _) in unused.into_iter().filter(|(_, everywhere)| *everywhere) {
        diagnostics.mark_unused_pointer(pointer);
    }
    for part in parts.iter_mut() {
        let common = part.common();
        diagnostics.merge(common.findings, common.assumed, common.cautions, common.basis);
    }
}

/// Whether a part was not given a field, or has no use for it.
fn is_idle(part: &Common<'_>, pointer: &str) -> bool {
    let field = pointer.trim_start_matches("#/").split('/').next().unwrap_or_default();
    !part.given.contains(&field) || part.unused.iter().any(|unused| unused == pointer)
}
