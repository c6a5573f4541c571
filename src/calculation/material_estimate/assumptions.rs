//! What was taken for slots, corners, rod and jackets that were not given: added once the cuts are known.

use uom::si::f64::Length;

use super::cut::CutGeometry;
use super::estimate::MaterialEstimate;
use super::loop_estimate::LoopEstimate;
use super::resolved::GivenSlotFields;
use crate::calculation::input::CutPlace;
use crate::calculation::report::{Diagnostics, FieldPath, Statement};
use crate::practice::materials::Corner;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::quantity::format::format_detail_length_input;
use crate::vocabulary::Vocabulary;

/// A field of a slot that may be absent.
struct SlotField {
    name: &'static str,
    is_given: fn(&GivenSlotFields) -> bool,
    value: fn(&CutGeometry) -> Length,
    reason: Statement,
    source: fn(Construction) -> Source,
    /// Whether it gave way to what was sent, and the reason then.
    gave_way: fn(&CutGeometry) -> bool,
    gave_way_reason: Statement,
}

const SLOT_FIELDS: [SlotField; 3] = [
    SlotField {
        name: "width",
        is_given: |given| given.width,
        value: |cut| cut.width,
        reason: Statement::new("materials-usual-width"),
        source: |_| Source::CommonPractice,
        gave_way: |_| false,
        gave_way_reason: Statement::new("materials-usual-width"),
    },
    SlotField {
        name: "depth",
        is_given: |given| given.depth,
        value: CutGeometry::depth,
        reason: Statement::new("materials-usual-depth"),
        source: |construction| construction.usual_slot_depth().1,
        gave_way: |cut| cut.depth_gave_way,
        gave_way_reason: Statement::new("materials-depth-gives-way"),
    },
    SlotField {
        name: "cover",
        is_given: |given| given.cover,
        value: |cut| cut.levels.asked_cover,
        reason: Statement::new("input-usual-slot-cover"),
        source: |construction| construction.usual_cover().1,
        gave_way: |cut| cut.levels.cover_gave_way(),
        gave_way_reason: Statement::new("input-cover-gives-way"),
    },
];

/// Adds the assumptions.
pub fn add_assumptions(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let (loops_at, common_at) = (body.field("loops"), body.field("slot"));
    for field in &SLOT_FIELDS {
        let own_slots = estimate.loops.iter().enumerate().filter(|(_, each)| each.resolved.has_own_slot);
        for (index, own) in own_slots {
            let item_at = loops_at.item(index);
            assume_slot_field(field, std::iter::once(own), &item_at.field("slot"), diagnostics);
        }
        let common = estimate.loops.iter().filter(|each| !each.resolved.has_own_slot);
        assume_slot_field(field, common, &common_at, diagnostics);
    }
    assume_lead_in_slot(estimate, diagnostics);
    assume_corners(estimate, diagnostics);
    assume_rod(estimate, diagnostics);
    assume_jackets(estimate, diagnostics);
}

fn assume_slot_field<'a>(
    field: &SlotField,
    loops: impl Iterator<Item = &'a LoopEstimate<'a>>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) {
    let (mut values, mut reason) = (AssumedValues::default(), &field.reason);
    for each in loops.filter(|each| !(field.is_given)(&each.resolved.given)) {
        let Some(cuts) = &each.cuts else { continue };
        let value = format_detail_length_input((field.value)(&cuts.loop_cut), each.resolved.coil.system);
        let mut source = (field.source)(each.construction);
        if (field.gave_way)(&cuts.loop_cut) {
            (reason, source) = (&field.gave_way_reason, Source::OwnChoice);
        }
        values.add(each.construction, value, source);
    }
    values.add_to(diagnostics, &at.field(field.name), reason);
}

fn assume_lead_in_slot(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let (at, given) = (body.field("lead_in_slot"), &estimate.job.lead_in_slot);
    let way = Statement::new("input-cover-gives-way");
    let mut assume = |name: &'static str, is_given: bool, value: fn(&CutGeometry) -> Length, reason: &Statement| {
        let (mut values, mut reason) = (AssumedValues::default(), reason);
        for (_, each, cut) in estimate.cuts().filter(|(_, _, cut)| !is_given && cut.place() == CutPlace::LeadIn) {
            if name == "cover" && cut.levels.cover_gave_way() {
                reason = &way;
            }
            values.add(
                each.construction,
                format_detail_length_input(value(cut), each.resolved.coil.system),
                Source::OwnChoice,
            );
        }
        values.add_to(diagnostics, &at.field(name), reason);
    };
    assume("width", given.width.is_some(), |cut| cut.width, &Statement::new("materials-lead-in-width"));
    assume("depth", given.depth.is_some(), CutGeometry::depth, &Statement::new("materials-lead-in-depth"));
    assume("cover", given.cover.is_some(), |cut| cut.levels.asked_cover, &Statement::new("materials-lead-in-cover"));
}

fn assume_corners(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    if job.saw.corner.is_some() {
        return;
    }
    let mut corners: Vec<Corner> = estimate.sawn_loops().map(|(each, _)| each.resolved.corner(&job.saw)).collect();
    corners.sort_by_key(|corner| corner.code());
    corners.dedup();
    let value = match corners.as_slice() {
        [] => return,
        [only] => only.code().to_owned(),
        [_, ..] => "diagonal where a loop has a corner_cut, square_overrun elsewhere".to_owned(),
    };
    let (saw_at, reason) = (body.field("saw"), Statement::new("materials-usual-corner"));
    diagnostics.add_assumption(&saw_at.field("corner"), value, reason, &[Source::NemaTestLoop, Source::Fp96]);
}

fn assume_rod(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let rods = estimate.rods();
    if job.rod.diameter.is_some() || rods.is_empty() {
        return;
    }
    let diameters: Vec<_> =
        rods.iter().map(|(diameter, _)| format_detail_length_input(*diameter, job.system())).collect();
    let (at, reason) = (body.field("backer_rod"), Statement::new("materials-usual-rod-diameter"));
    diagnostics.add_assumption(&at.field("diameter"), diameters.join(" or "), reason, &[Source::OwnChoice]);
}

fn assume_jackets(estimate: &MaterialEstimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let loops_at = body.field("loops");
    for (index, each) in estimate.loops.iter().enumerate().filter(|(_, each)| each.lacks_jacket()) {
        let item_at = loops_at.item(index);
        let (loop_at, coil) = (item_at.field("loop"), &each.resolved.coil);
        let wire_at = loop_at.field("wire");
        let (wide, high) = (coil.wire.over_insulation, coil.stack());
        let value = format!(
            "{} wide, {} high",
            format_detail_length_input(wide, coil.system),
            format_detail_length_input(high, coil.system)
        );
        let reason = Statement::new("materials-flat-jacket");
        diagnostics.add_assumption(&wire_at.field("over_jacket"), value, reason, &[Source::OwnChoice]);
    }
}

/// What was assumed for one field: one value, or several by construction.
#[derive(Default)]
struct AssumedValues {
    by_construction: Vec<(Construction, Vec<String>)>,
    sources: Vec<Source>,
}

impl AssumedValues {
    fn add(&mut self, construction: Construction, value: String, source: Source) {
        if !self.sources.contains(&source) {
            self.sources.push(source);
        }
        match self.by_construction.iter_mut().find(|(known, _)| *known == construction) {
            Some((_, values)) if values.contains(&value) => {}
            Some((_, values)) => values.push(value),
            None => self.by_construction.push((construction, vec![value])),
        }
    }

    fn add_to(&self, diagnostics: &mut Diagnostics, at: &FieldPath<'_>, reason: &Statement) {
        let value = match self.by_construction.as_slice() {
            [] => return,
            [(_, first), rest @ ..] if rest.iter().all(|(_, values)| values == first) => first.join(" or "),
            all => {
                let format = |(construction, values): &(Construction, Vec<String>)| {
                    format!("{} ({})", values.join(" or "), construction.code())
                };
                all.iter().map(format).collect::<Vec<_>>().join(", ")
            }
        };
        diagnostics.add_assumption(at, value, reason.clone(), &self.sources);
    }
}
