//! How to treat sealant and slot in the weather of the start.

use super::job::Job;
use super::report::CureAdvice;
use crate::practice::Sourced;
use crate::practice::cure::{CureHandling, SurfaceCondition, cold_handling, hot_handling};
use crate::practice::sealants::SealantKind;
use crate::vocabulary::Vocabulary;

/// The advice that fits, in the order of the work.
pub fn advice(job: &Job) -> Vec<CureAdvice> {
    let hour = job.sky.hour(job.sky.start);
    let (kind, is_dry) = (job.product.kind, job.condition == SurfaceCondition::Dry);
    let is_hot_applied = kind == SealantKind::HotApplied;
    let is_cold = hour.air < cold_handling() || hour.surface < cold_handling();
    let is_hot = hour.air >= hot_handling() || hour.surface >= hot_handling();
    let fits = |advice: CureHandling| match advice {
        CureHandling::StoreWarm | CureHandling::ConditionCartridges => is_cold && !is_hot_applied,
        CureHandling::DryAndWarmSlot => is_cold || !is_dry,
        CureHandling::CapPartUsed => kind == SealantKind::OnePartMoistureCure,
        CureHandling::MixSmall => is_hot && kind == SealantKind::TwoPartReactive,
        CureHandling::KeepShaded => is_hot && !is_hot_applied,
        CureHandling::KettleLimit => is_hot_applied,
        CureHandling::KeepWheelsOff => true,
    };
    CureHandling::ALL
        .iter()
        .filter(|advice| fits(**advice))
        .map(|advice| CureAdvice {
            code: advice.code(),
            message: advice.description(),
            source_ids: advice.sources().to_vec(),
        })
        .collect()
}
