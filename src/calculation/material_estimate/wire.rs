//! Loop wire: how much of each sort, and the spools to buy for it.

use rust_decimal::prelude::ToPrimitive;
use uom::si::f64::Length;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use super::resolved::{ResolvedEstimatedLoop, ResolvedMaterialEstimate, ResolvedWireSpool};
use crate::quantity::format::format_detail_length_input;

/// Pieces of wire of the same length, each without a splice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WirePieces {
    /// The length of one.
    pub length: Length,
    /// How many.
    pub count: u64,
}

/// Wire of one sort: one gauge, one diameter over insulation.
#[derive(Clone, Debug)]
pub struct WireRequirement {
    /// The gauge as it was written.
    pub gauge: String,
    /// Diameter over insulation.
    pub over_insulation: Length,
    /// Both, as they stand on a bill.
    pub size: String,
    /// The pieces to lay.
    pub pieces: Vec<WirePieces>,
    /// How many to take of each spool of the request; empty: wire by length.
    pub spools: Vec<u64>,
}

impl WireRequirement {
    /// Whether another wire is of the same sort.
    pub fn is_alike(&self, other: &Self) -> bool {
        let apart = (self.over_insulation - other.over_insulation).abs();
        self.gauge == other.gauge && apart < 1e-6 * self.over_insulation
    }

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
    job: &ResolvedMaterialEstimate,
) -> Vec<WireRequirement> {
    let mut groups: Vec<WireRequirement> = Vec::new();
    let longest = job.spools.iter().map(|spool| spool.length).fold(Length::default(), Length::max);
    for resolved in loops {
        let (net, allowance) = (resolved.wire_length(), 1.0 + job.wire_allowance.get::<ratio>());
        // The allowance forces no splice.
        let length = if net <= longest { (allowance * net).min(longest) } else { allowance * net };
        let pieces = WirePieces { length, count: u64::from(resolved.quantity) };
        let wire = &resolved.coil.wire;
        let requirement = WireRequirement {
            gauge: wire.gauge.clone(),
            over_insulation: wire.over_insulation,
            size: format!("{}, {}", wire.gauge, format_detail_length_input(wire.over_insulation, job.system())),
            pieces: vec![pieces],
            spools: Vec::new(),
        };
        match groups.iter_mut().find(|group| group.is_alike(&requirement)) {
            Some(group) => group.pieces.push(pieces),
            None => groups.push(requirement),
        }
    }
    for group in &mut groups {
        group.spools = choose_spools(&group.pieces, &SpoolOffer::of(&job.spools));
    }
    groups
}

/// A sort of spools, and what it costs: its price where all sorts have one, else its wire, so that the least is bought.
#[derive(Clone, Copy, Debug)]
pub struct SpoolOffer {
    /// The wire on it.
    pub length: Length,
    /// What it costs.
    pub cost: f64,
}

impl SpoolOffer {
    /// The offers of the request.
    pub fn of(spools: &[ResolvedWireSpool]) -> Vec<Self> {
        let is_priced = spools.iter().all(|spool| spool.price.is_some());
        let cost = |spool: &ResolvedWireSpool| {
            let price = spool.price.filter(|_| is_priced).and_then(|price| price.to_f64());
            price.unwrap_or(spool.length.get::<meter>())
        };
        spools.iter().map(|spool| Self { length: spool.length, cost: cost(spool) }).collect()
    }
}

/// How many pieces are packed by trying all ways, which finds the cheapest.
const MAX_TRIED_PIECES: u64 = 8;

/// Chooses the spools that splice nothing and cost least. A piece that no spool holds is cut into whole spools and a rest.
///
/// Of few pieces all ways are tried. Of many, the longest goes first, onto the fullest spool that still holds it; then each spool is
/// exchanged for the cheapest that holds its load. Each spool length that holds the longest piece is tried as the largest. That is a good
/// packing and not always the best: the best one is a hard problem. Pieces that are alike are packed together, so the work grows with the
/// number of lengths and not with that of pieces.
pub fn choose_spools(pieces: &[WirePieces], spools: &[SpoolOffer]) -> Vec<u64> {
    let longest = spools.iter().map(|spool| spool.length).fold(Length::default(), Length::max);
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
    if parts.iter().map(|part| part.count).sum::<u64>() <= MAX_TRIED_PIECES {
        return pack_all_ways(&parts, spools);
    }
    spools
        .iter()
        .filter(|largest| parts.first().is_none_or(|part| part.length <= largest.length * FIT_FACTOR))
        .map(|largest| pack(&parts, largest.length, spools))
        .min_by(|a, b| cost_of(a, spools).total_cmp(&cost_of(b, spools)))
        .unwrap_or_default()
}

/// What so many of each spool cost.
pub fn cost_of(counts: &[u64], spools: &[SpoolOffer]) -> f64 {
    counts.iter().zip(spools).map(|(count, spool)| *count as f64 * spool.cost).sum()
}

/// The cheapest spool that holds a load, by its index.
fn cheapest_for(load: Length, spools: &[SpoolOffer]) -> Option<usize> {
    let by_cost = |a: &usize, b: &usize| {
        let (a, b) = (&spools[*a], &spools[*b]);
        a.cost.total_cmp(&b.cost).then(a.length.value.total_cmp(&b.length.value))
    };
    (0..spools.len()).filter(|index| spools[*index].length * (FIT_FACTOR * FIT_FACTOR) >= load).min_by(by_cost)
}

/// The cheapest packing of few pieces: for each set of them, the best of all ways to put some on one spool and the others on others.
fn pack_all_ways(parts: &[WirePieces], spools: &[SpoolOffer]) -> Vec<u64> {
    let pieces: Vec<Length> = parts.iter().flat_map(|part| (0..part.count).map(|_| part.length)).collect();
    let sets = 1_usize << pieces.len();
    let load = |set: usize| {
        let in_set = pieces.iter().enumerate().filter(|(index, _)| set & (1 << index) != 0);
        in_set.fold(Length::default(), |sum, (_, piece)| sum + *piece)
    };
    let on_one: Vec<Option<usize>> = (0..sets).map(|set| cheapest_for(load(set), spools)).collect();
    // The least cost of each set, the pieces that lie on the spool of its first piece, and how many spools it takes.
    let mut best: Vec<(f64, usize, u32)> = vec![(0.0, 0, 0)];
    for set in 1..sets {
        let first = set & set.wrapping_neg();
        let (mut chosen, mut some) = ((f64::INFINITY, set, u32::MAX), set);
        while some > 0 {
            if let Some(spool) = on_one[some].filter(|_| some & first != 0) {
                let (cost, _, count) = best[set & !some];
                let candidate = (cost + spools[spool].cost, some, count + 1);
                let is_cheaper = candidate.0 < chosen.0 * (1.0 - 1e-12);
                if is_cheaper || (candidate.0 <= chosen.0 * (1.0 + 1e-12) && candidate.2 < chosen.2) {
                    chosen = candidate;
                }
            }
            some = (some - 1) & set;
        }
        best.push(chosen);
    }
    let (mut counts, mut set) = (vec![0; spools.len()], sets - 1);
    while set > 0 {
        let on_spool = best[set].1;
        if let Some(spool) = on_one[on_spool] {
            counts[spool] += 1;
        }
        set &= !on_spool;
    }
    counts
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

/// How many to take of each spool: parts are packed onto spools of the largest length, each then exchanged for the cheapest that
/// holds its load.
fn pack(parts: &[WirePieces], largest: Length, spools: &[SpoolOffer]) -> Vec<u64> {
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
        if let Some(index) = cheapest_for(load.length, spools) {
            counts[index] += load.count;
        }
    }
    counts
}

#[cfg(test)]
mod tests {
    use super::{Length, SpoolOffer, WirePieces, choose_spools};
    use uom::si::length::foot;

    fn feet(length: f64) -> Length {
        Length::new::<foot>(length)
    }

    fn chosen(pieces: &[(f64, u64)], spools: &[f64]) -> Vec<u64> {
        let pieces: Vec<_> =
            pieces.iter().map(|(length, count)| WirePieces { length: feet(*length), count: *count }).collect();
        let offer = |length: &f64| SpoolOffer { length: feet(*length), cost: *length };
        choose_spools(&pieces, &spools.iter().map(offer).collect::<Vec<_>>())
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
    fn the_cheapest_spools_are_taken() {
        let priced = |pieces: &[(f64, u64)], spools: &[(f64, f64)]| {
            let pieces: Vec<_> =
                pieces.iter().map(|(length, count)| WirePieces { length: feet(*length), count: *count }).collect();
            let offer = |(length, cost): &(f64, f64)| SpoolOffer { length: feet(*length), cost: *cost };
            choose_spools(&pieces, &spools.iter().map(offer).collect::<Vec<_>>())
        };
        let offers = [(500.0, 95.0), (1000.0, 170.0)];
        assert_eq!(priced(&[(390.0, 2)], &offers), [0, 1], "one of 170 for two of 95");
        assert_eq!(priced(&[(260.0, 3)], &offers), [0, 1]);
        assert_eq!(priced(&[(390.0, 1)], &offers), [1, 0]);
        // Three on one of 1,000 ft leave a fourth for one of 500 ft.
        assert_eq!(priced(&[(300.0, 4)], &offers), [1, 1]);
        // Fifty pieces are packed by the longest first.
        assert_eq!(priced(&[(300.0, 51)], &offers), [0, 17]);
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
