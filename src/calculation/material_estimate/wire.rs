//! Loop wire: how much of each sort, and the spools to buy for it.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::resolved::{ResolvedEstimatedLoop, ResolvedWireSpool};

/// Pieces of wire of the same length, each without a splice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WirePieces {
    /// The length of one.
    pub length: Length,
    /// How many.
    pub count: u64,
}

/// Wire of one sort: one gauge, one diameter over insulation.
pub struct WireRequirement {
    /// The gauge as it was written.
    pub gauge: String,
    /// Diameter over insulation.
    pub over_insulation: Length,
    /// The pieces to lay.
    pub pieces: Vec<WirePieces>,
    /// How many to take of each spool of the request; empty: wire by length.
    pub spools: Vec<u64>,
}

impl WireRequirement {
    /// The length of all pieces.
    pub fn total_length(&self) -> Length {
        self.pieces.iter().map(|pieces| pieces.count as f64 * pieces.length).fold(Length::default(), |a, b| a + b)
    }

    /// How many pieces.
    pub fn piece_count(&self) -> u64 {
        self.pieces.iter().map(|pieces| pieces.count).sum()
    }

    /// The longest piece.
    pub fn longest_piece(&self) -> Length {
        self.pieces.iter().map(|pieces| pieces.length).fold(Length::default(), Length::max)
    }
}

/// The wire of loops that are wound on site, by its sort, and the spools to take.
pub fn group_wire<'a>(
    loops: impl Iterator<Item = &'a ResolvedEstimatedLoop>,
    spools: &[ResolvedWireSpool],
) -> Vec<WireRequirement> {
    let mut groups: Vec<WireRequirement> = Vec::new();
    for resolved in loops {
        let pieces = WirePieces { length: resolved.wire_length(), count: u64::from(resolved.quantity) };
        let wire = &resolved.coil.wire;
        let is_alike = |group: &WireRequirement| {
            group.gauge == wire.gauge
                && (group.over_insulation - wire.over_insulation).abs() < 1e-6 * wire.over_insulation
        };
        match groups.iter_mut().find(|group| is_alike(group)) {
            Some(group) => group.pieces.push(pieces),
            None => groups.push(WireRequirement {
                gauge: wire.gauge.clone(),
                over_insulation: wire.over_insulation,
                pieces: vec![pieces],
                spools: Vec::new(),
            }),
        }
    }
    let lengths: Vec<Length> = spools.iter().map(|spool| spool.length).collect();
    for group in &mut groups {
        group.spools = choose_spools(&group.pieces, &lengths);
    }
    groups
}

/// Chooses spools: the longest piece first, onto the fullest spool that still holds it; then each spool is exchanged for the
/// shortest that holds its load. Each spool length that holds the longest piece is tried as the
/// largest, and the choice that buys the least wire is taken. A piece that no spool holds is cut into whole spools and a rest.
///
/// That is a good packing and not always the best: the best one is a hard problem, and an estimate does not need it. Pieces that are
/// alike are packed together, so the work grows with the number of lengths and not with that of pieces.
pub fn choose_spools(pieces: &[WirePieces], spools: &[Length]) -> Vec<u64> {
    let longest = spools.iter().copied().fold(Length::default(), Length::max);
    if longest <= Length::default() {
        return Vec::new();
    }
    let mut parts: Vec<WirePieces> = Vec::new();
    let mut whole = 0;
    for piece in pieces {
        // The last length of a piece is a rest, even if it is a whole spool.
        let spools: f64 = (piece.length / longest).into();
        let full = (spools - 1e-9).ceil().max(1.0) - 1.0;
        whole += piece.count * full as u64;
        add_pieces(&mut parts, piece.length - full * longest, piece.count);
    }
    if whole > 0 {
        add_pieces(&mut parts, longest, whole);
    }
    parts.sort_by(|a, b| b.length.value.total_cmp(&a.length.value));
    let bought = |counts: &[u64]| -> f64 {
        counts.iter().zip(spools).map(|(count, spool)| *count as f64 * spool.get::<meter>()).sum()
    };
    spools
        .iter()
        .filter(|largest| parts.first().is_none_or(|part| part.length <= **largest * FIT_FACTOR))
        .map(|largest| pack(&parts, *largest, spools))
        .min_by(|a, b| bought(a).total_cmp(&bought(b)))
        .unwrap_or_default()
}

/// A length that is longer by no more than this factor still fits: binary fractions of exact fits differ by less.
const FIT_FACTOR: f64 = 1.000_000_001;

/// Adds to the pieces of the same length, or as a new length.
fn add_pieces(sorts: &mut Vec<WirePieces>, length: Length, count: u64) {
    match sorts.iter_mut().find(|sort| (sort.length - length).abs() <= (FIT_FACTOR - 1.0) * length) {
        Some(sort) => sort.count += count,
        None => sorts.push(WirePieces { length, count }),
    }
}

/// How many to take of each spool: parts are packed onto spools of the largest length, each then exchanged for the shortest that
/// holds its load.
fn pack(parts: &[WirePieces], largest: Length, spools: &[Length]) -> Vec<u64> {
    // Spools that carry the same load are counted together.
    let mut loads: Vec<WirePieces> = Vec::new();
    for part in parts {
        loads.sort_by(|a, b| b.length.value.total_cmp(&a.length.value));
        let mut left = part.count;
        let mut loaded: Vec<WirePieces> = Vec::new();
        let begun = loads.drain(..).chain([WirePieces { length: Length::default(), count: u64::MAX }]);
        for spool in begun.collect::<Vec<_>>() {
            let capacity: f64 = ((largest * FIT_FACTOR - spool.length) / part.length).into();
            // As many pieces as one of these spools still takes, on as many of them as that needs.
            let per_spool = (capacity.floor().max(0.0) as u64).min(left);
            let full = left.checked_div(per_spool).unwrap_or_default().min(spool.count);
            left -= full * per_spool;
            add_pieces(&mut loaded, spool.length + per_spool as f64 * part.length, full);
            let is_one_more = left > 0 && left < per_spool && full < spool.count;
            if is_one_more {
                add_pieces(&mut loaded, spool.length + left as f64 * part.length, 1);
                left = 0;
            }
            if spool.length > Length::default() {
                add_pieces(&mut loaded, spool.length, spool.count - full - u64::from(is_one_more));
            }
        }
        loaded.retain(|load| load.count > 0);
        loads = loaded;
    }
    let mut counts = vec![0; spools.len()];
    for load in loads {
        let shortest = (0..spools.len())
            .filter(|index| spools[*index] * (FIT_FACTOR * FIT_FACTOR) >= load.length)
            .min_by(|a, b| spools[*a].value.total_cmp(&spools[*b].value));
        if let Some(index) = shortest {
            counts[index] += load.count;
        }
    }
    counts
}

#[cfg(test)]
mod tests {
    use super::{Length, WirePieces, choose_spools};
    use uom::si::length::foot;

    fn feet(length: f64) -> Length {
        Length::new::<foot>(length)
    }

    fn chosen(pieces: &[(f64, u64)], spools: &[f64]) -> Vec<u64> {
        let pieces: Vec<_> =
            pieces.iter().map(|(length, count)| WirePieces { length: feet(*length), count: *count }).collect();
        choose_spools(&pieces, &spools.iter().copied().map(feet).collect::<Vec<_>>())
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
