//! What the site asks for: construction, hazards, cautions.

use crate::calculation::report::{Diagnostics, FieldPath, Finding, Statement};
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::site::{Construction, SiteHazard, Surface};

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
            Some((level, Statement::new("sizing-nothing-to-saw").member("surface", site.surface)))
        }
        (false, true) => Some((Level::Stop, Statement::new("sizing-burial-in-finished-pavement"))),
        (true, true) | (false, false) => None,
    };
    if let Some((level, message)) = message {
        let finding = Finding::new(FindingCode::WrongConstruction, level, &site.construction_at, message);
        diagnostics.add_finding(finding.send(&site.construction_at));
    }
}

fn judge_hazards(site: &SiteConditions<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let hazards = body.field("site_hazards");
    for (index, hazard) in site.hazards.iter().enumerate() {
        if site.hazards[..index].contains(hazard) {
            continue;
        }
        let (code, level, message) = judge_hazard(*hazard, site);
        let finding = Finding::new(code, level, &hazards.item(index), message);
        let lasts_longer_jacketed = code == FindingCode::CrackedPavement && level == Level::Warning;
        diagnostics.add_finding(if lasts_longer_jacketed { finding.send(&site.construction_at) } else { finding });
    }
}

/// What a hazard means for this job. Common practice, and the sources of the finding's code.
fn judge_hazard(hazard: SiteHazard, site: &SiteConditions<'_>) -> (FindingCode, Level, Statement) {
    let sawn = site.construction.is_sawn();
    match hazard {
        SiteHazard::ReinforcingMesh => {
            (FindingCode::ReinforcingMesh, Level::Warning, Statement::new("sizing-reinforcing-mesh"))
        }
        SiteHazard::PostTensionedSlab | SiteHazard::BridgeDeck if sawn && site.cut_approved => {
            (FindingCode::TensionedDeck, Level::Warning, Statement::new("sizing-cut-approved"))
        }
        SiteHazard::PostTensionedSlab if sawn => {
            (FindingCode::TensionedDeck, Level::Stop, Statement::new("sizing-post-tensioned-slab"))
        }
        SiteHazard::BridgeDeck if sawn => {
            (FindingCode::TensionedDeck, Level::Stop, Statement::new("sizing-bridge-deck"))
        }
        SiteHazard::PostTensionedSlab | SiteHazard::BridgeDeck => {
            (FindingCode::TensionedDeck, Level::Warning, Statement::new("sizing-place-before-the-pour"))
        }
        SiteHazard::SnowMeltCable => (
            FindingCode::SnowMelt,
            if sawn { Level::Stop } else { Level::Warning },
            Statement::new("sizing-snow-melt-cable"),
        ),
        SiteHazard::SnowMeltPipe => (
            FindingCode::SnowMelt,
            if sawn { Level::Stop } else { Level::Warning },
            Statement::new("sizing-snow-melt-pipe"),
        ),
        SiteHazard::OverheadPowerLine => {
            (FindingCode::PowerLine, Level::Note, Statement::new("sizing-overhead-power-line"))
        }
        SiteHazard::BuriedPowerLine => (
            FindingCode::PowerLine,
            if sawn { Level::Stop } else { Level::Warning },
            Statement::new("sizing-buried-power-line"),
        ),
        SiteHazard::AdjacentTraffic => {
            (FindingCode::AdjacentTraffic, Level::Note, Statement::new("sizing-adjacent-traffic"))
        }
        SiteHazard::FreezingClimate => {
            (FindingCode::FreezingClimate, Level::Warning, Statement::new("sizing-freezing-climate"))
        }
        SiteHazard::PavementJoint => {
            (FindingCode::PavementJoint, Level::Warning, Statement::new("sizing-pavement-joint"))
        }
        SiteHazard::CrackedPavement if site.construction == Construction::HandWound => {
            (FindingCode::CrackedPavement, Level::Warning, Statement::new("sizing-cracked-pavement-hand-wound"))
        }
        SiteHazard::CrackedPavement => {
            (FindingCode::CrackedPavement, Level::Note, Statement::new("sizing-cracked-pavement-jacketed"))
        }
        SiteHazard::OldLoopCut => (FindingCode::OldLoopCut, Level::Note, Statement::new("sizing-old-loop-cut")),
    }
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
