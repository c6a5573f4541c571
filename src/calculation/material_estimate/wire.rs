//! Loop wire, and the spools that it comes on.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::job::{Job, LoopJob};

/// The wire of one hand-wound loop: its turns, and twice the lead-in with its spare.
pub fn length(one: &LoopJob) -> Length {
    Length::new::<meter>(one.coil.winding().wire_length()) + 2.0 * (one.lead_in.length + one.lead_in.spare)
}

/// Spools for pieces of wire that are each one length without a splice.
pub struct Spools {
    /// For each spool of the request, how many to take.
    pub counts: Vec<u32>,
    /// The pieces, by index, that no spool holds in one length.
    pub spliced: Vec<usize>,
}

/// Chooses spools: the longest piece first, onto the fullest spool that still holds it; then each spool is exchanged for the
/// shortest that holds its load. Of the spools that could be the largest, the choice that buys the least wire counts.
///
/// That is a good packing and not always the best: the best one is a hard problem, and an estimate does not need it.
pub fn choose(pieces: &[Length], job: &Job) -> Spools {
    let spools: Vec<Length> = job.spools.iter().map(|(length, _)| *length).collect();
    let longest = spools.iter().copied().fold(Length::default(), Length::max);
    let spliced: Vec<usize> = (0..pieces.len()).filter(|index| pieces[*index] > longest).collect();
    // A piece that no spool holds is cut into whole spools and a rest.
    let mut parts: Vec<Length> = Vec::new();
    for piece in pieces {
        let mut rest = *piece;
        while rest > longest {
            parts.push(longest);
            rest -= longest;
        }
        parts.push(rest);
    }
    parts.sort_by(|a, b| b.value.total_cmp(&a.value));
    let bought = |counts: &[u32]| -> f64 {
        counts.iter().zip(&spools).map(|(count, spool)| f64::from(*count) * spool.get::<meter>()).sum()
    };
    let counts = spools
        .iter()
        .filter(|largest| parts.first().is_none_or(|part| part <= largest))
        .map(|largest| pack(&parts, *largest, &spools))
        .min_by(|a, b| bought(a).total_cmp(&bought(b)))
        .unwrap_or_default();
    Spools { counts, spliced }
}

fn pack(parts: &[Length], largest: Length, spools: &[Length]) -> Vec<u32> {
    let mut loads: Vec<Length> = Vec::new();
    for part in parts {
        let fullest = (0..loads.len())
            .filter(|index| loads[*index] + *part <= largest)
            .max_by(|a, b| loads[*a].value.total_cmp(&loads[*b].value));
        match fullest {
            Some(index) => loads[index] += *part,
            None => loads.push(*part),
        }
    }
    let mut counts = vec![0; spools.len()];
    for load in loads {
        let shortest = (0..spools.len())
            .filter(|index| spools[*index] >= load)
            .min_by(|a, b| spools[*a].value.total_cmp(&spools[*b].value));
        if let Some(index) = shortest {
            counts[index] += 1;
        }
    }
    counts
}
