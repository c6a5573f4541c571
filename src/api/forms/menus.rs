//! The menus of choices and lists, by the name of their closed list.

use super::shape::FormOption;
use crate::practice::detectors::{DetectorEnvelope, Wiring};
use crate::practice::job_steps::{PlanExtra, PlanPart};
use crate::practice::lead_ins::LeadInPair;
use crate::practice::materials::{Corner, RodForm};
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::sealing::SurfaceCondition;
use crate::practice::site::{Barrier, Construction, LeafOpen, SiteHazard, Surface, UnitSide};
use crate::practice::vehicles::VehicleClass;
use crate::vocabulary::Vocabulary;
use crate::wording::{Language, MemberIn};

/// A closed list, and what makes its menu.
type Menu = (&'static str, fn(Language) -> Vec<FormOption>);

const MENUS: [Menu; 17] = [
    menu::<Barrier>(),
    menu::<Construction>(),
    menu::<Corner>(),
    menu::<DetectorEnvelope>(),
    menu::<LeadInPair>(),
    menu::<LeafOpen>(),
    menu::<PlanExtra>(),
    menu::<PlanPart>(),
    menu::<RodForm>(),
    menu::<Role>(),
    menu::<SealantKind>(),
    menu::<SiteHazard>(),
    menu::<Surface>(),
    menu::<SurfaceCondition>(),
    menu::<UnitSide>(),
    menu::<VehicleClass>(),
    menu::<Wiring>(),
];

/// The menu of a closed list, by the name of its schema; empty for a list that is not known here, which a test rules out.
pub fn options_of(list: &str, language: Language) -> Vec<FormOption> {
    MENUS.iter().find(|(name, _)| *name == list).map_or_else(Vec::new, |(_, options)| options(language))
}

const fn menu<V: Vocabulary>() -> Menu {
    (V::NAME, options::<V>)
}

fn options<V: Vocabulary>(language: Language) -> Vec<FormOption> {
    let option = |member: &V| FormOption {
        code: member.code(),
        label: member.label_in(language),
        description: member.description_in(language),
    };
    V::ALL.iter().map(option).collect()
}
