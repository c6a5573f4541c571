//! Loop wire, and the spools that it comes on.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::estimate::Part;
use super::job::{Job, LoopJob};

/// The wire of one hand-wound loop: its turns, and twice the lead-in with its spare.
pub fn length(one: &LoopJob) -> Length {
    Length::new::<meter>(one.coil.winding().wire_length()) + 2.0 * (one.lead_in.length + one.lead_in.spare)
}

/// Pieces of wire that are alike, each one length without a splice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pieces {
    /// Of one.
    pub length: Length,
    /// How many.
    pub count: u64,
}

/// Wire of one sort: one gauge, one diameter over insulation.
pub struct WireGroup {
    /// The gauge as it was written.
    pub gauge: String,
    /// Diameter over insulation.
    pub over_insulation: Length,
    /// What is to be laid.
    pub pieces: Vec<Pieces>,
    /// For each spool of the request, how many to take; empty: by length.
    pub spools: Vec<u64>,
}

impl WireGroup {
    /// All of it.
    pub fn total(&self) -> Length {
        self.pieces.iter().map(|pieces| pieces.count as f64 * pieces.length).fold(Length::default(), |a, b| a + b)
    }

    /// How many pieces.
    pub fn count(&self) -> u64 {
        self.pieces.iter().map(|pieces| pieces.count).sum()
    }

    /// The longest piece.
    pub fn longest(&self) -> Length {
        self.pieces.iter().map(|pieces| pieces.length).fold(Length::default(), Length::max)
    }
}

/// The wire of all loops that are wound on site, by its sort.
pub fn groups(parts: &[Part<'_>], job: &Job) -> Vec<WireGroup> {
    let mut groups: Vec<WireGroup> = Vec::new();
    for part in parts {
        let Some(length) = part.wire() else { continue };
        let pieces = Pieces { length, count: u64::from(part.one.quantity) };
        let wire = &part.one.coil.wire;
        let is_alike = |group: &WireGroup| {
            group.gauge == wire.gauge
                && (group.over_insulation - wire.over_insulation).abs() < 1e-6 * wire.over_insulation
        };
        match groups.iter_mut().find(|group| is_alike(group)) {
            Some(group) => group.pieces.push(pieces),
            None => groups.push(WireGroup {
                gauge: wire.gauge.clone(),
                over_insulation: wire.over_insulation,
                pieces: vec![pieces],
                spools: Vec::new(),
            }),
        }
    }
    let spools: Vec<Length> = job.spools.iter().map(|(length, _)| *length).collect();
    for group in &mut groups {
        group.spools = choose(&group.pieces, &spools);
    }
    groups
}

/// Chooses spools: the longest piece first, onto the fullest spool that still holds it; then each spool is exchanged for the
/// shortest that holds its load. Of the spools that could be the largest, the choice that buys the least wire counts. A piece that no
/// spool holds is cut into whole spools and a rest.
///
/// That is a good packing and not always the best: the best one is a hard problem, and an estimate does not need it. Pieces that are
/// alike are packed together, so the work grows with the sorts of pieces and not with their number.
pub fn choose(pieces: &[Pieces], spools: &[Length]) -> Vec<u64> {
    let longest = spools.iter().copied().fold(Length::default(), Length::max);
    if longest <= Length::default() {
        return Vec::new();
    }
    let mut parts: Vec<Pieces> = Vec::new();
    let mut whole = 0;
    for piece in pieces {
        // The last length of a piece is a rest, even if it is a whole spool.
        let spools: f64 = (piece.length / longest).into();
        let full = (spools - 1e-9).ceil().max(1.0) - 1.0;
        whole += piece.count * full as u64;
        add(&mut parts, piece.length - full * longest, piece.count);
    }
    if whole > 0 {
        add(&mut parts, longest, whole);
    }
    parts.sort_by(|a, b| b.length.value.total_cmp(&a.length.value));
    let bought = |counts: &[u64]| -> f64 {
        counts.iter().zip(spools).map(|(count, spool)| *count as f64 * spool.get::<meter>()).sum()
    };
    spools
        .iter()
        .filter(|largest| parts.first().is_none_or(|part| part.length <= **largest * HAIR))
        .map(|largest| pack(&parts, *largest, spools))
        .min_by(|a, b| bought(a).total_cmp(&bought(b)))
        .unwrap_or_default()
}

/// A length that is a hair longer fits all the same.
const HAIR: f64 = 1.000_000_001;

/// Adds to the pieces of the same length, or as a new sort.
fn add(sorts: &mut Vec<Pieces>, length: Length, count: u64) {
    match sorts.iter_mut().find(|sort| (sort.length - length).abs() <= (HAIR - 1.0) * length) {
        Some(sort) => sort.count += count,
        None => sorts.push(Pieces { length, count }),
    }
}

fn pack(parts: &[Pieces], largest: Length, spools: &[Length]) -> Vec<u64> {
    // Spools that carry the same load are one sort as well.
    let mut loads: Vec<Pieces> = Vec::new();
    for part in parts {
        loads.sort_by(|a, b| b.length.value.total_cmp(&a.length.value));
        let mut left = part.count;
        let mut loaded: Vec<Pieces> = Vec::new();
        let begun = loads.drain(..).chain([Pieces { length: Length::default(), count: u64::MAX }]);
        for begun in begun.collect::<Vec<_>>() {
            let room: f64 = ((largest * HAIR - begun.length) / part.length).into();
            // As many as one of these still takes, on as many of them as that needs.
            let each = (room.floor().max(0.0) as u64).min(left);
            let full = left.checked_div(each).unwrap_or_default().min(begun.count);
            left -= full * each;
            add(&mut loaded, begun.length + each as f64 * part.length, full);
            let is_one_more = left > 0 && left < each && full < begun.count;
            if is_one_more {
                add(&mut loaded, begun.length + left as f64 * part.length, 1);
                left = 0;
            }
            if begun.length > Length::default() {
                add(&mut loaded, begun.length, begun.count - full - u64::from(is_one_more));
            }
        }
        loaded.retain(|load| load.count > 0);
        loads = loaded;
    }
    let mut counts = vec![0; spools.len()];
    for load in loads {
        let shortest = (0..spools.len())
            .filter(|index| spools[*index] * (HAIR * HAIR) >= load.length)
            .min_by(|a, b| spools[*a].value.total_cmp(&spools[*b].value));
        if let Some(index) = shortest {
            counts[index] += load.count;
        }
    }
    counts
}

#[cfg(test)]
mod tests {
    use super::{Length, Pieces, choose};
    use uom::si::length::foot;

    fn feet(length: f64) -> Length {
        Length::new::<foot>(length)
    }

    fn chosen(pieces: &[(f64, u64)], spools: &[f64]) -> Vec<u64> {
        let pieces: Vec<_> =
            pieces.iter().map(|(length, count)| Pieces { length: feet(*length), count: *count }).collect();
        choose(&pieces, &spools.iter().copied().map(feet).collect::<Vec<_>>())
    }

    #[test]
    fn alike_pieces_share_spools_without_a_splice() {
        assert_eq!(chosen(&[(171.0, 3)], &[500.0]), [2]);
        assert_eq!(chosen(&[(171.0, 3)], &[500.0, 200.0]), [0, 3]);
        assert_eq!(chosen(&[(250.0, 4)], &[500.0]), [2], "two halves fill a spool");
        // The rest of a spool that holds one of 300 ft takes one of 200 ft.
        assert_eq!(chosen(&[(300.0, 2), (200.0, 3)], &[500.0]), [3]);
    }

    #[test]
    fn a_long_piece_is_whole_spools_and_a_rest() {
        assert_eq!(chosen(&[(171.0, 3)], &[150.0]), [4], "three spools, and three rests of 21 ft on a fourth");
        assert_eq!(chosen(&[(20_000.0, 1)], &[10.0]), [2000]);
        assert_eq!(chosen(&[(300.0, 2)], &[150.0]), [4]);
    }

    #[test]
    fn every_load_gets_a_spool_and_no_wire_is_lost() {
        for count in 1..40 {
            let pieces = [(97.3, count), (41.9, 2 * count), (12.7, 3 * count), (260.0, 1)];
            let spools = [250.0, 120.0, 60.0];
            let bought: f64 =
                chosen(&pieces, &spools).iter().zip(spools).map(|(count, spool)| *count as f64 * spool).sum();
            let needed: f64 = pieces.iter().map(|(length, count)| length * *count as f64).sum();
            assert!(bought >= needed && bought <= 2.0 * needed + 250.0, "{count}: {bought} for {needed}");
        }
    }
}
