//! What the site asks for: construction, hazards, cautions.

use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::site::{Construction, SiteHazard, Surface};
use crate::vocabulary::Vocabulary;

/// Where loops are to lie, and how they are made.
pub struct SiteConditions<'a> {
    /// What the loops lie in.
    pub surface: Surface,
    /// What stands in the way.
    pub hazards: &'a [SiteHazard],
    /// How the loops are made.
    pub construction: Construction,
    /// Where the construction stands in the request.
    pub construction_at: FieldPath<'a>,
    /// Whether something moves at the opening.
    pub has_barrier: bool,
    /// Whether a scan was made and the engineer agreed to the cut.
    pub cut_approved: bool,
}

/// States what construction and hazards mean.
pub fn judge(site: &SiteConditions<'_>, diagnostics: &mut Diagnostics) {
    judge_construction(site, diagnostics);
    judge_hazards(site, diagnostics);
    add_cautions(site, diagnostics);
}

/// States whether the construction can be built in the surface.
pub fn judge_construction(site: &SiteConditions<'_>, diagnostics: &mut Diagnostics) {
    let message = match (site.construction.is_sawn(), site.surface.is_sawn()) {
        (true, false) => {
            let level = if site.surface.will_be_sawable() { Level::Note } else { Level::Stop };
            let message = format!(
                "{} offers nothing to saw yet. Take preformed_direct_burial, laid before the surface.",
                site.surface.label()
            );
            Some((level, message))
        }
        (false, true) => Some((
            Level::Stop,
            "A direct-burial loop goes under a surface that is yet to be laid. In finished pavement take preformed_saw_cut \
             or hand_wound."
                .to_owned(),
        )),
        (true, true) | (false, false) => None,
    };
    if let Some((level, message)) = message {
        diagnostics.add_finding(Finding::new(FindingCode::WrongConstruction, level, &site.construction_at, message));
    }
}

fn judge_hazards(site: &SiteConditions<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let hazards = body.field("site_hazards");
    for (index, hazard) in site.hazards.iter().enumerate() {
        if site.hazards[..index].contains(hazard) {
            continue;
        }
        let (code, level, message) = statement(*hazard, site);
        diagnostics.add_finding(Finding::new(code, level, &hazards.item(index), message));
    }
}

/// What a hazard means for this job. Common practice, and the sources of the finding's code.
fn statement(hazard: SiteHazard, site: &SiteConditions<'_>) -> (FindingCode, Level, String) {
    let sawn = site.construction.is_sawn();
    let (code, level, message) = match hazard {
        SiteHazard::ReinforcingMesh => (
            FindingCode::ReinforcingMesh,
            Level::Warning,
            "Locate the steel and keep the loop at least 2 in (50 mm) above it; never cut it. It takes inductance and height: \
             ask loop-characteristics with reinforcement for the bound.",
        ),
        SiteHazard::PostTensionedSlab | SiteHazard::BridgeDeck if sawn && site.cut_approved => (
            FindingCode::TensionedDeck,
            Level::Warning,
            "Keep the scan and the engineer's written word on site, mark the tendons and the steel on the pavement, and cut only \
             where and as deep as they allow.",
        ),
        SiteHazard::PostTensionedSlab if sawn => (
            FindingCode::TensionedDeck,
            Level::Stop,
            "Do not saw a post-tensioned slab without a scan for tendons and the engineer's written word. A surface-mounted or \
             another kind of detector avoids the cut.",
        ),
        SiteHazard::BridgeDeck if sawn => (
            FindingCode::TensionedDeck,
            Level::Stop,
            "Treat the deck as post-tensioned until drawings or a scan show otherwise: no cut without the engineer's written \
             word. A preformed loop above the top steel before the overlay avoids the cut.",
        ),
        SiteHazard::PostTensionedSlab | SiteHazard::BridgeDeck => (
            FindingCode::TensionedDeck,
            Level::Warning,
            "Settle the loop's place with the engineer before the pour; keep it above the top steel and clear of tendons.",
        ),
        SiteHazard::SnowMeltCable => (
            FindingCode::SnowMelt,
            if sawn { Level::Stop } else { Level::Warning },
            "Have the heating cables located, marked and isolated before any cut; a saw through one is live. Lay the loop \
             between runs, and expect hum while they heat.",
        ),
        SiteHazard::SnowMeltPipe => (
            FindingCode::SnowMelt,
            if sawn { Level::Stop } else { Level::Warning },
            "Have the heating pipes located and marked before any cut, and set the saw above them.",
        ),
        SiteHazard::OverheadPowerLine => (
            FindingCode::PowerLine,
            Level::Note,
            "Hum from the line can disturb the unit: keep the lead-in twisted and short of it, and choose the frequency on site.",
        ),
        SiteHazard::BuriedPowerLine => (
            FindingCode::PowerLine,
            if sawn { Level::Stop } else { Level::Warning },
            "Have the line located and marked before any cut or trench, and cross it at right angles.",
        ),
        SiteHazard::AdjacentTraffic => (
            FindingCode::AdjacentTraffic,
            Level::Note,
            "Vehicles in the next lane must stay unseen: the loop keeps its setback from the edge for that. Prove it with traffic \
             there before you leave.",
        ),
        SiteHazard::FreezingClimate => (
            FindingCode::FreezingClimate,
            Level::Warning,
            "Fill the slot completely and dry: water in it freezes and lifts the sealant. Use hold-downs in short pieces, never \
             continuous.",
        ),
        SiteHazard::PavementJoint => (
            FindingCode::PavementJoint,
            Level::Warning,
            "Move the loop off the joint if you can. Where wire must cross, sleeve it 4 in (100 mm) on each side and leave slack \
             inside.",
        ),
        SiteHazard::CrackedPavement if site.construction == Construction::HandWound => (
            FindingCode::CrackedPavement,
            Level::Warning,
            "Single wire breaks in pavement that moves. A jacketed loop (preformed_saw_cut) lasts longer here.",
        ),
        SiteHazard::CrackedPavement => (
            FindingCode::CrackedPavement,
            Level::Note,
            "The jacketed loop takes some of the movement; seal the cracks as well, or water follows the slot.",
        ),
        SiteHazard::OldLoopCut => (
            FindingCode::OldLoopCut,
            Level::Note,
            "Cut the new slot beside the old one, at least a hand's width away, and leave the old wire dead and unconnected: a \
             closed old turn steals sensitivity.",
        ),
    };
    (code, level, message.to_owned())
}

fn add_cautions(site: &SiteConditions<'_>, diagnostics: &mut Diagnostics) {
    diagnostics.add_cautions(&[
        CautionCode::NotForPeople,
        CautionCode::LocalCodes,
        CautionCode::BuriedServices,
        CautionCode::WorkZone,
        CautionCode::InsulationTester,
        CautionCode::ClassifiedArea,
    ]);
    if site.has_barrier {
        diagnostics.add_cautions(&[CautionCode::GateCanMove, CautionCode::LiveParts]);
    }
    if site.construction.is_sawn() {
        diagnostics.add_cautions(&[CautionCode::Silica, CautionCode::Saw, CautionCode::Sealant]);
        diagnostics.add_cautions(site.surface.saw_cautions());
    }
    for hazard in site.hazards {
        diagnostics.add_cautions(hazard.cautions());
    }
}
