//! What was taken for slots, corners, rod and jackets that were not given: said once the cuts are known.

use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};

use super::cut::Cut;
use super::estimate::{Estimate, Part};
use super::job::SlotGiven;
use super::remarks::lacks_jacket;
use crate::calculation::report::{Diagnostics, FieldPath};
use crate::practice::materials::Corner;
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A field of a slot that may be absent.
struct Field {
    name: &'static str,
    is_given: fn(&SlotGiven) -> bool,
    of: fn(&Cut) -> Length,
    reason: &'static str,
    sources: fn(Construction) -> Source,
}

const FIELDS: [Field; 3] = [
    Field {
        name: "width",
        is_given: |given| given.width,
        of: |cut| cut.width,
        reason: "Room for sealant to flow round what lies in it, and no more; never less than a named agency asks for.",
        sources: |_| Source::CommonPractice,
    },
    Field {
        name: "depth",
        is_given: |given| given.depth,
        of: |cut| cut.depth,
        reason: "The usual depth for this construction; deeper where wires, cover and finish need it.",
        sources: |construction| match construction {
            Construction::HandWound => Source::NemaTestLoop,
            _ => Source::CommonPractice,
        },
    },
    Field {
        name: "cover",
        is_given: |given| given.cover,
        of: |cut| cut.asked_cover,
        reason: "The usual cover for this construction.",
        sources: |construction| match construction {
            Construction::HandWound => Source::Everett,
            _ => Source::OwnChoice,
        },
    },
];

/// Says it.
pub fn assume(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let (loops_at, common_at) = (body.field("loops"), body.field("slot"));
    for field in &FIELDS {
        for (index, part) in estimate.parts.iter().enumerate().filter(|(_, part)| part.one.has_own_slot) {
            let item_at = loops_at.item(index);
            slot_field(field, std::iter::once(part), &item_at.field("slot"), diagnostics);
        }
        slot_field(field, estimate.parts.iter().filter(|part| !part.one.has_own_slot), &common_at, diagnostics);
    }
    lead_in_slot(estimate, diagnostics);
    corners(estimate, diagnostics);
    rod(estimate, diagnostics);
    for (index, part) in estimate.parts.iter().enumerate().filter(|(_, part)| lacks_jacket(part)) {
        let item_at = loops_at.item(index);
        let (loop_at, coil) = (item_at.field("loop"), &part.one.coil);
        let (wide, high) = (exact(coil.wire.over_insulation, coil.system), exact(coil.stack(), coil.system));
        let reason = "Without the diameter over it the jacket is taken to lie flat: one wire wide, its turns high, nothing added.";
        let at = loop_at.field("wire");
        diagnostics.add_assumption(
            &at.field("over_jacket"),
            format!("{wide} wide, {high} high"),
            reason,
            &[Source::OwnChoice],
        );
    }
}

fn slot_field<'a>(
    field: &Field,
    parts: impl Iterator<Item = &'a Part<'a>>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) {
    let mut values = Values::default();
    for part in parts.filter(|part| !(field.is_given)(&part.one.given)) {
        let Some(trench) = &part.trench else { continue };
        let value = exact((field.of)(&trench.of_loop), part.one.coil.system);
        values.add(part.construction, value, (field.sources)(part.construction));
    }
    values.assume(&at.field(field.name), field.reason, diagnostics);
}

fn lead_in_slot(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let (at, given) = (body.field("lead_in_slot"), &estimate.job.lead_in_slot);
    let width: (&str, bool, fn(&Cut) -> Length, &str) = (
        "width",
        given.width.is_some(),
        |cut| cut.width,
        "That of the loop's slot; wider where the pair or a named agency needs it.",
    );
    let depth: (&str, bool, fn(&Cut) -> Length, &str) =
        ("depth", given.depth.is_some(), |cut| cut.depth, "That of the loop's slot; deeper where the pair needs it.");
    let cover: (&str, bool, fn(&Cut) -> Length, &str) =
        ("cover", given.cover.is_some(), |cut| cut.asked_cover, "That over the loop.");
    for (name, is_given, of, reason) in [width, depth, cover] {
        let mut values = Values::default();
        for (part, trench) in estimate.trenches().filter(|_| !is_given) {
            let Some(cut) = &trench.lead_in else { continue };
            values.add(part.construction, exact(of(cut), part.one.coil.system), Source::OwnChoice);
        }
        values.assume(&at.field(name), reason, diagnostics);
    }
}

fn corners(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    if job.saw.corner.is_some() {
        return;
    }
    let mut corners: Vec<Corner> = estimate.trenches().map(|(part, _)| part.one.corner(&job.saw)).collect();
    corners.sort_by_key(|corner| corner.code());
    corners.dedup();
    let value = match corners.as_slice() {
        [] => return,
        [one] => one.code().to_owned(),
        _ => "diagonal where a loop has a corner_cut, square_overrun elsewhere".to_owned(),
    };
    let reason = "Diagonal where the loop has corner cuts, else square.";
    diagnostics.add_assumption(
        &body.field("saw").field("corner"),
        value,
        reason,
        &[Source::NemaTestLoop, Source::Fp96],
    );
}

fn rod(estimate: &Estimate<'_>, diagnostics: &mut Diagnostics) {
    let (job, body) = (estimate.job, FieldPath::BODY);
    let rods = estimate.rods();
    if job.rod.diameter.is_some() || rods.is_empty() {
        return;
    }
    let diameters: Vec<_> = rods.iter().map(|(diameter, _)| exact(*diameter, job.system())).collect();
    let reason = "1/16 in more than its slot, to sit snug.";
    let at = body.field("backer_rod");
    diagnostics.add_assumption(&at.field("diameter"), diameters.join(" or "), reason, &[Source::OwnChoice]);
}

/// What stands in for one field: one value, or several by construction.
#[derive(Default)]
struct Values {
    taken: Vec<(Construction, Vec<String>)>,
    sources: Vec<Source>,
}

impl Values {
    fn add(&mut self, construction: Construction, value: String, source: Source) {
        if !self.sources.contains(&source) {
            self.sources.push(source);
        }
        match self.taken.iter_mut().find(|(known, _)| *known == construction) {
            Some((_, values)) if values.contains(&value) => {}
            Some((_, values)) => values.push(value),
            None => self.taken.push((construction, vec![value])),
        }
    }

    fn assume(&self, at: &FieldPath<'_>, reason: &'static str, diagnostics: &mut Diagnostics) {
        let value = match self.taken.as_slice() {
            [] => return,
            [(_, first), rest @ ..] if rest.iter().all(|(_, values)| values == first) => first.join(" or "),
            all => {
                let say = |(construction, values): &(Construction, Vec<String>)| {
                    format!("{} ({})", values.join(" or "), construction.code())
                };
                all.iter().map(say).collect::<Vec<_>>().join(", ")
            }
        };
        diagnostics.add_assumption(at, value, reason, &self.sources);
    }
}

/// A small length as a request would hold it, close enough that sending it changes no figure.
fn exact(length: Length, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} in", round(length.get::<inch>(), 4)),
        UnitSystem::Metric => format!("{} mm", round(length.get::<millimeter>(), 4)),
    }
}
