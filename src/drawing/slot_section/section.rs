//! The sections that differ: each once, with the loops that have it.

use crate::calculation::material_estimate::{EstimatedLoopEcho, LoopMaterials, MaterialEstimateReport, SlotFit};
use crate::quantity::output::DetailLength;

/// What a section is cut through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The slot of a loop.
    Loop,
    /// The slot of a lead-in.
    LeadIn,
    /// Ground over a buried loop.
    Buried,
}

/// What lies in it.
#[derive(Clone, Debug, PartialEq)]
pub enum Lies {
    /// Wires one on the other.
    Wires { count: u32, over: DetailLength, conductor: DetailLength },
    /// Two wires, twisted along their way.
    Pair { over: DetailLength, conductor: DetailLength },
    /// A jacket with so many turns in it, or a jacketed pair; its diameter where it is known.
    Jacket { over: Option<DetailLength>, turns: Option<u32> },
}

/// A rod over what lies in a slot.
#[derive(Clone, Debug, PartialEq)]
pub struct Rod {
    /// Whether it lies in pieces, so that most sections do not meet it.
    pub in_pieces: bool,
    /// How high it stands.
    pub height: DetailLength,
}

/// A sawn slot.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// Its width.
    pub width: DetailLength,
    /// Its depth.
    pub depth: DetailLength,
    /// The rod in it.
    pub rod: Option<Rod>,
    /// What is left of the width.
    pub clearance: DetailLength,
    /// Whether sealant can flow round what lies in it.
    pub verdict: &'static str,
    /// What to do about it.
    pub advice: String,
}

/// A section, but for the names of its loops.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// What it is cut through.
    pub place: Place,
    /// How the loops are made.
    pub construction: &'static str,
    /// What lies in it.
    pub lies: Lies,
    /// What covers that; absent where the report does not hold it.
    pub cover: Option<DetailLength>,
    /// The slot; absent for what is buried.
    pub slot: Option<Slot>,
}

/// A section with the loops that have it.
pub struct Shared {
    /// The section.
    pub section: Section,
    /// Their labels, with how many there are where there are more than one.
    pub labels: Vec<String>,
}

/// All sections of a report that differ, those of loops before those of lead-ins.
pub fn all(report: &MaterialEstimateReport) -> Vec<Shared> {
    let mut shared: Vec<Shared> = Vec::new();
    for place in [Place::Loop, Place::LeadIn, Place::Buried] {
        for (one, echo) in report.loops.iter().zip(&report.inputs.loops) {
            let label = if one.quantity == 1 {
                one.label.clone()
            } else {
                format!("{} ({}\u{a0}loops)", one.label, one.quantity)
            };
            let Some(section) = section(place, one, echo, report) else { continue };
            match shared.iter_mut().find(|other| other.section == section) {
                Some(other) => other.labels.push(label),
                None => shared.push(Shared { section, labels: vec![label] }),
            }
        }
    }
    shared
}

fn section(
    place: Place,
    one: &LoopMaterials,
    echo: &EstimatedLoopEcho,
    report: &MaterialEstimateReport,
) -> Option<Section> {
    let (wire, turns) = (&echo.r#loop.wire, echo.r#loop.turns);
    let is_wound = one.construction == "hand_wound";
    let made = Section {
        place,
        construction: one.construction,
        lies: Lies::Jacket { over: echo.over_jacket, turns: Some(turns) },
        cover: None,
        slot: None,
    };
    if place == Place::Buried {
        return one.slot_width.is_none().then_some(made);
    }
    let code = if place == Place::Loop { "loop" } else { "lead_in" };
    let fit = report.slot_fit.iter().find(|fit| fit.label == one.label && fit.place == code)?;
    let slot = |depth, rod: Option<DetailLength>| Slot {
        width: fit.width,
        depth,
        rod: rod.map(|height| Rod { in_pieces: one.backer_rod == Some("pieces"), height }),
        clearance: fit.clearance,
        verdict: fit.verdict,
        advice: fit.advice.clone(),
    };
    let lies = match place {
        Place::LeadIn if is_wound => Lies::Pair { over: wire.over_insulation, conductor: wire.conductor_diameter },
        Place::LeadIn => Lies::Jacket { over: echo.over_jacket, turns: None },
        _ if echo.over_jacket.is_some() && !is_wound => made.lies.clone(),
        _ => Lies::Wires {
            count: wires(one, fit, wire.over_insulation),
            over: wire.over_insulation,
            conductor: wire.conductor_diameter,
        },
    };
    let slot = match place {
        Place::LeadIn => slot(one.lead_in_slot_depth?, one.lead_in_rod_height),
        _ => slot(one.slot_depth?, one.rod_height),
    };
    let cover = if place == Place::Loop { one.cover } else { one.lead_in_cover };
    Some(Section { lies, cover, slot: Some(slot), ..made })
}

/// How many wires lie one on the other where most of them do.
fn wires(one: &LoopMaterials, fit: &SlotFit, over: DetailLength) -> u32 {
    let height = one.wires_height.unwrap_or(fit.widest);
    (height.mm / over.mm).round().max(1.0) as u32
}
