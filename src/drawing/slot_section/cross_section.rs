//! The sections of a report that differ: each once, with the loops that have it.

use crate::calculation::material_estimate::{
    EstimatedLoopEcho, LoopMaterials, MaterialEstimateReport, SharedLeadInSlot, SlotFit,
};
use crate::calculation::report::{Message, Statement};
use crate::practice::materials::RodForm;
use crate::practice::site::Construction;
use crate::quantity::output::DetailLength;
use crate::wording::Reader;

/// What a section is cut through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectionPlace {
    /// The slot of a loop.
    Loop,
    /// The slot of a lead-in.
    LeadIn,
    /// A slot that pairs of several loops lie in.
    SharedLeadIn,
    /// Ground over a buried loop.
    Buried,
}

/// What lies in a slot or in the ground.
#[derive(Clone, Debug, PartialEq)]
pub enum SlotContents {
    /// Wires one on the other.
    Wires { count: u32, over: DetailLength, conductor: DetailLength },
    /// Two wires, twisted along their way; so many such pairs one on the other.
    Pairs { count: u32, over: DetailLength, conductor: DetailLength },
    /// A jacket with its turns, or a jacketed pair; its diameter where it is known.
    Jacket { over: Option<DetailLength>, turns: Option<u32> },
    /// Jacketed pairs, one on the other.
    JacketedPairs { count: u32, over: DetailLength },
}

impl SlotContents {
    /// How high they stand from the floor, millimetres.
    pub fn height(&self, slot: Option<&SawnSlot>) -> f64 {
        match self {
            Self::Wires { count, over, .. } | Self::JacketedPairs { count, over } => f64::from(*count) * over.mm(),
            // The top pair as it lies; each below it takes the height of both wires.
            Self::Pairs { count, over, .. } => {
                let below = f64::from(count.saturating_sub(1)) * 2.0 * over.mm();
                below + over.mm() + pair_offset(over.mm(), slot.map_or(f64::INFINITY, |slot| slot.width.mm())).1
            }
            Self::Jacket { over, .. } => over.map_or(0.0, crate::quantity::output::DetailLength::mm),
        }
    }

    /// Whether they are one piece, without a top wire among others.
    pub fn is_single(&self) -> bool {
        match self {
            Self::Wires { count, .. } | Self::Pairs { count, .. } | Self::JacketedPairs { count, .. } => *count < 2,
            Self::Jacket { .. } => true,
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

impl SawnSlot {
    /// A slot of this depth, with its fit.
    fn of(fit: &SlotFit, depth: DetailLength, rod: Option<RodInSlot>) -> Self {
        Self {
            width: fit.width,
            depth,
            rod,
            clearance: fit.clearance,
            verdict: fit.verdict,
            advice: fit.advice.clone(),
        }
    }
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
    /// How it lies; absent for what lies in a slot.
    pub burial: Option<BuriedLoop>,
}

/// A loop in the ground.
#[derive(Clone, Debug, PartialEq)]
pub struct BuriedLoop {
    /// From the finished surface down to it.
    pub cover: DetailLength,
    /// The bed under it.
    pub bed_under: DetailLength,
    /// How to lay it.
    pub message: Message,
}

/// A section with the loops that have it.
pub struct SharedSection {
    /// The section.
    pub section: CrossSection,
    /// Their labels, with how many there are where there are more than one.
    pub labels: Vec<String>,
}

impl SharedSection {
    /// All sections of a report that differ: those of loops, of lead-ins, of slots that pairs share, and of buried loops.
    pub fn all(report: &MaterialEstimateReport, reader: Reader) -> Vec<Self> {
        let mut shared: Vec<Self> = Vec::new();
        for place in [SectionPlace::Loop, SectionPlace::LeadIn, SectionPlace::Buried] {
            for (one, echo) in report.loops.iter().zip(&report.inputs.loops) {
                let name = one.mark.map_or_else(|| one.label.clone(), |mark| mark.to_string());
                let label = match one.quantity {
                    1 => name,
                    count => {
                        let several = Statement::new("drawings-section-several").text("name", name);
                        reader.say(&several.count("count", count.into())).into_owned()
                    }
                };
                let Some(section) = cross_section(place, one, echo, report) else { continue };
                match shared.iter_mut().find(|other| other.section == section) {
                    Some(other) => other.labels.push(label),
                    None => shared.push(Self { section, labels: vec![label] }),
                }
            }
            if place == SectionPlace::LeadIn {
                shared.extend(report.shared_slots.iter().filter_map(|slot| Self::of_shared_slot(slot, report)));
            }
        }
        shared
    }

    /// The section of a slot that pairs share.
    fn of_shared_slot(slot: &SharedLeadInSlot, report: &MaterialEstimateReport) -> Option<Self> {
        let is_in_it = |one: &&LoopMaterials| slot.labels.contains(&one.label);
        let index = report.loops.iter().position(|one| is_in_it(&one))?;
        let (one, echo) = (&report.loops[index], report.inputs.loops.get(index)?);
        // Its fit stands after those of the loops, under the names of all whose pairs lie in it.
        let name = slot.labels.join(", ");
        let fit = report.slot_fit.iter().rev().find(|fit| fit.label == name && fit.place == "lead_in")?;
        let wire = &echo.r#loop.wire;
        let contents = match echo.over_jacket.filter(|_| one.construction.is_preformed()) {
            Some(over) => SlotContents::JacketedPairs { count: slot.pairs, over },
            None => SlotContents::Pairs {
                count: slot.pairs,
                over: wire.over_insulation.into(),
                conductor: wire.diameter().into(),
            },
        };
        let rod =
            slot.rod_height.map(|height| RodInSlot { in_pieces: one.backer_rod == Some(RodForm::Pieces), height });
        let section = CrossSection {
            place: SectionPlace::SharedLeadIn,
            construction: one.construction,
            contents,
            cover: Some(slot.cover),
            slot: Some(SawnSlot::of(fit, slot.depth, rod)),
            burial: None,
        };
        let marks: Vec<_> = slot.marks.iter().map(ToString::to_string).collect();
        Some(Self { section, labels: if marks.is_empty() { slot.labels.clone() } else { marks } })
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
        burial: one.burial.as_ref().map(|burial| BuriedLoop {
            cover: burial.cover,
            bed_under: burial.bed_under,
            message: burial.message.clone(),
        }),
    };
    let code = match place {
        SectionPlace::Loop => "loop",
        SectionPlace::LeadIn => "lead_in",
        // Such a slot belongs to no single loop.
        SectionPlace::SharedLeadIn => return None,
        SectionPlace::Buried => return one.slot_width.is_none().then_some(buried),
    };
    let fit = report.slot_fit.iter().find(|fit| fit.label == one.label && fit.place == code)?;
    let in_pieces = one.backer_rod == Some(RodForm::Pieces);
    let slot =
        |depth, rod: Option<DetailLength>| SawnSlot::of(fit, depth, rod.map(|height| RodInSlot { in_pieces, height }));
    let (contents, cover, slot) = if place == SectionPlace::LeadIn {
        let contents = if is_wound {
            SlotContents::Pairs { count: 1, over: wire.over_insulation.into(), conductor: wire.diameter().into() }
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
    Some(CrossSection { contents, cover, slot: Some(slot), burial: None, ..buried })
}

/// How many wires lie one on the other in the highest stack.
fn stacked_wires(one: &LoopMaterials, fit: &SlotFit, over: DetailLength) -> u32 {
    let height = one.wires_height.unwrap_or(fit.widest);
    (height.mm() / over.mm()).round().max(1.0) as u32
}
