//! Metal without end, by the method of images: what no finite piece of it can exceed.

use super::super::filament::{Filament, mutual};
use super::super::winding::Winding;

/// Fall of a loop's inductance in henry under an endless level sheet, `height` metres above the
/// centre of its top wire: the mutual inductance with its mirror image at twice that height.
///
/// An upper bound for every flat underside at that height. Source: method of images for a perfect
/// conductor. Worked number: 6 × 6 ft, 3 turns, at 18 in: 5.25 µH (6.8 %).
pub fn endless_sheet(winding: &Winding, height: f64) -> f64 {
    // A sheet over the top wire and one as far under the lowest are mirror images themselves.
    winding.mirror_mutual(height)
}

/// Fall of a loop's inductance in henry beside an endless upright sheet across the lane,
/// `distance` metres ahead of the loop's centre, which is more than half its leg.
///
/// A generous upper bound for a gate leaf, as the sheet also goes down into the ground. The wires of
/// a slot count as one bundle. Source: method of images for a perfect conductor.
/// Worked number: 6 × 20 ft (along × across), 2 turns, 4 ft from its edge: 0.539 µH (0.63 %).
pub fn endless_wall(winding: &Winding, distance: f64) -> f64 {
    let strands = winding.outline();
    let reflected = |[x, y, z]: [f64; 3]| [x, 2.0 * distance - y, z];
    // The image carries the current of the reflection, reversed; its flux through the loop counts
    // against the loop's own.
    strands
        .iter()
        .flat_map(|ours| strands.iter().map(move |theirs| (ours, theirs)))
        .map(|(ours, theirs)| {
            let image = Filament { from: reflected(theirs.segment.from), to: reflected(theirs.segment.to) };
            ours.wires * theirs.wires * mutual(&ours.segment, &image)
        })
        .sum()
}
