//! The sections of a report that differ: each once, with the loops that have it.

use crate::calculation::material_estimate::{EstimatedLoopEcho, LoopMaterials, MaterialEstimateReport, SlotFit};
use crate::calculation::report::Message;
use crate::practice::materials::RodForm;
use crate::practice::site::Construction;
use crate::quantity::output::DetailLength;

/// What a section is cut through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectionPlace {
    /// The slot of a loop.
    Loop,
    /// The slot of a lead-in.
    LeadIn,
    /// Ground over a buried loop.
    Buried,
}

/// What lies in a slot or in the ground.
#[derive(Clone, Debug, PartialEq)]
pub enum SlotContents {
    /// Wires one on the other.
    Wires { count: u32, over: DetailLength, conductor: DetailLength },
    /// Two wires, twisted along their way.
    Pair { over: DetailLength, conductor: DetailLength },
    /// A jacket with its turns, or a jacketed pair; its diameter where it is known.
    Jacket { over: Option<DetailLength>, turns: Option<u32> },
}

impl SlotContents {
    /// How high they stand from the floor, millimetres.
    pub fn height(&self, slot: Option<&SawnSlot>) -> f64 {
        match self {
            Self::Wires { count, over, .. } => f64::from(*count) * over.mm(),
            Self::Pair { over, .. } => {
                over.mm() + pair_offset(over.mm(), slot.map_or(f64::INFINITY, |slot| slot.width.mm())).1
            }
            Self::Jacket { over, .. } => over.map_or(0.0, crate::quantity::output::DetailLength::mm),
        }
    }

    /// Whether they are one piece, without a top wire among others.
    pub fn is_single(&self) -> bool {
        match self {
            Self::Wires { count, .. } => *count < 2,
            Self::Pair { .. } | Self::Jacket { .. } => true,
        }
    }
}

/// From the middle of one wire of a pair to that of the other, across and up, in a slot of a width; millimetres.
pub fn pair_offset(over: f64, width: f64) -> (f64, f64) {
    let across = (width - over).clamp(0.0, over);
    (across, (over * over - across * across).sqrt())
}

/// A backer rod over what lies in a slot.
#[derive(Clone, Debug, PartialEq)]
pub struct RodInSlot {
    /// Whether it lies in pieces, so that most sections do not cut it.
    pub in_pieces: bool,
    /// How high it stands.
    pub height: DetailLength,
}

/// A sawn slot.
#[derive(Clone, Debug, PartialEq)]
pub struct SawnSlot {
    /// Its width.
    pub width: DetailLength,
    /// Its depth.
    pub depth: DetailLength,
    /// The rod in it.
    pub rod: Option<RodInSlot>,
    /// What is left of the width.
    pub clearance: DetailLength,
    /// Whether sealant can flow round what lies in it.
    pub verdict: &'static str,
    /// What to do about it.
    pub advice: Message,
}

/// A section, without the names of its loops.
#[derive(Clone, Debug, PartialEq)]
pub struct CrossSection {
    /// What it is cut through.
    pub place: SectionPlace,
    /// How the loops are made.
    pub construction: Construction,
    /// What lies in it.
    pub contents: SlotContents,
    /// The cover over the contents; absent where the report does not hold it.
    pub cover: Option<DetailLength>,
    /// The slot; absent for what is buried.
    pub slot: Option<SawnSlot>,
}

/// A section with the loops that have it.
pub struct SharedSection {
    /// The section.
    pub section: CrossSection,
    /// Their labels, with how many there are where there are more than one.
    pub labels: Vec<String>,
}

impl SharedSection {
    /// All sections of a report that differ, those of loops before those of lead-ins.
    pub fn all(report: &MaterialEstimateReport) -> Vec<Self> {
        let mut shared: Vec<Self> = Vec::new();
        for place in [SectionPlace::Loop, SectionPlace::LeadIn, SectionPlace::Buried] {
            for (one, echo) in report.loops.iter().zip(&report.inputs.loops) {
                let label = if one.quantity == 1 {
                    one.label.clone()
                } else {
                    format!("{} ({}\u{a0}loops)", one.label, one.quantity)
                };
                let Some(section) = cross_section(place, one, echo, report) else { continue };
                match shared.iter_mut().find(|other| other.section == section) {
                    Some(other) => other.labels.push(label),
                    None => shared.push(Self { section, labels: vec![label] }),
                }
            }
        }
        shared
    }
}

/// The section of a loop at a place; `None` where the loop has none there.
fn cross_section(
    place: SectionPlace,
    one: &LoopMaterials,
    echo: &EstimatedLoopEcho,
    report: &MaterialEstimateReport,
) -> Option<CrossSection> {
    let (wire, turns) = (&echo.r#loop.wire, echo.r#loop.turns);
    let is_wound = one.construction == Construction::HandWound;
    let buried = CrossSection {
        place,
        construction: one.construction,
        contents: SlotContents::Jacket { over: echo.over_jacket, turns: Some(turns) },
        cover: None,
        slot: None,
    };
    let code = match place {
        SectionPlace::Loop => "loop",
        SectionPlace::LeadIn => "lead_in",
        SectionPlace::Buried => return one.slot_width.is_none().then_some(buried),
    };
    let fit = report.slot_fit.iter().find(|fit| fit.label == one.label && fit.place == code)?;
    let slot = |depth, rod: Option<DetailLength>| SawnSlot {
        width: fit.width,
        depth,
        rod: rod.map(|height| RodInSlot { in_pieces: one.backer_rod == Some(RodForm::Pieces), height }),
        clearance: fit.clearance,
        verdict: fit.verdict,
        advice: fit.advice.clone(),
    };
    let (contents, cover, slot) = if place == SectionPlace::LeadIn {
        let contents = if is_wound {
            SlotContents::Pair { over: wire.over_insulation.into(), conductor: wire.diameter().into() }
        } else {
            SlotContents::Jacket { over: echo.over_jacket, turns: None }
        };
        (contents, one.lead_in_cover, slot(one.lead_in_slot_depth?, one.lead_in_rod_height))
    } else {
        let contents = if echo.over_jacket.is_some() && !is_wound {
            buried.contents.clone()
        } else {
            SlotContents::Wires {
                count: stacked_wires(one, fit, wire.over_insulation.into()),
                over: wire.over_insulation.into(),
                conductor: wire.diameter().into(),
            }
        };
        (contents, one.cover, slot(one.slot_depth?, one.rod_height))
    };
    Some(CrossSection { contents, cover, slot: Some(slot), ..buried })
}

/// How many wires lie one on the other in the highest stack.
fn stacked_wires(one: &LoopMaterials, fit: &SlotFit, over: DetailLength) -> u32 {
    let height = one.wires_height.unwrap_or(fit.widest);
    (height.mm() / over.mm()).round().max(1.0) as u32
}
