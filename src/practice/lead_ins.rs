//! The way of lead-ins: how a pair is made, which pairs may lie together, and what they go through outside the pavement.

use std::f64::consts::FRAC_PI_4;

use uom::si::f64::{Area, Length};
use uom::si::length::{inch, millimeter};

use super::layout::NominalLength;
use super::site::Construction;
use super::sources::sourced_vocabulary;
use crate::quantity::UnitSystem;

sourced_vocabulary! {
    /// How the two wires of a lead-in are held together.
    LeadInPair {
        Twisted "twisted" "Twisted" "Three turns a foot (ten a metre) or more all the way: pairs of one unit may lie in one slot." [CommonPractice];
        Jacketed "jacketed" "Jacketed" "A twisted pair in a jacket, as preformed loops have it: pairs of one unit may lie in one slot." [CommonPractice];
        Screened "screened" "Screened" "A twisted pair in a screen that is earthed at the unit: pairs of different units may lie in one slot." [CommonPractice];
        Loose "loose" "Loose" "Two wires side by side, or twisted less than three times a foot: each pair lies in a slot of its own, for such pairs couple." [Computed];
    }
}

impl LeadInPair {
    /// The pair that a construction usually has. Common practice.
    pub fn usual_for(construction: Construction) -> Self {
        if construction.is_preformed() { Self::Jacketed } else { Self::Twisted }
    }

    /// Whether it may lie in one slot with other pairs of its unit: untwisted and stacked for 50 ft they couple 0.9 %, interleaved 3.6 %.
    pub fn may_share_slot(self) -> bool {
        match self {
            Self::Twisted | Self::Jacketed | Self::Screened => true,
            Self::Loose => false,
        }
    }

    /// Whether it may lie in one slot with pairs of other units.
    pub fn may_share_with_other_units(self) -> bool {
        match self {
            Self::Screened => true,
            Self::Twisted | Self::Jacketed | Self::Loose => false,
        }
    }
}

/// How far off the legs of a row the slot runs that its pairs share on their way to the edge: 1 ft / 0.3 m. A choice made here: no pair
/// lies in the slot of another loop.
pub const OFF_THE_ROW: NominalLength = NominalLength::new(1.0, 0.3);

/// A size of conduit.
#[derive(Clone, Copy, Debug)]
pub struct ConduitSize {
    /// The name that it is bought under.
    pub name: &'static str,
    /// Its bore.
    pub bore: Length,
}

/// The bores of conduit on sale, smallest first: trade sizes with a wall of schedule 40, inches; rigid plastic by its diameter, millimetres.
/// From memory.
fn conduit_sizes(system: UnitSystem) -> Vec<ConduitSize> {
    let sizes = |sizes: &[(&'static str, f64)], of: fn(f64) -> Length| -> Vec<ConduitSize> {
        sizes.iter().map(|(name, bore)| ConduitSize { name, bore: of(*bore) }).collect()
    };
    match system {
        UnitSystem::UsCustomary => sizes(
            &[
                ("1/2 in", 0.622),
                ("3/4 in", 0.824),
                ("1 in", 1.049),
                ("1-1/4 in", 1.380),
                ("1-1/2 in", 1.610),
                ("2 in", 2.067),
                ("2-1/2 in", 2.469),
                ("3 in", 3.068),
                ("4 in", 4.026),
            ],
            Length::new::<inch>,
        ),
        UnitSystem::Metric => sizes(
            &[
                ("16 mm", 13.0),
                ("20 mm", 16.9),
                ("25 mm", 21.4),
                ("32 mm", 27.8),
                ("40 mm", 35.4),
                ("50 mm", 44.3),
                ("63 mm", 56.0),
                ("75 mm", 67.0),
                ("110 mm", 100.0),
            ],
            Length::new::<millimeter>,
        ),
    }
}

/// The share of its bore that cables may fill: one 53 %, two 31 %, more 40 %. Common practice.
pub fn conduit_fill(cables: u64) -> f64 {
    match cables {
        0 | 1 => 0.53,
        2 => 0.31,
        _ => 0.40,
    }
}

/// The smallest conduit for so many cables of this diameter; the largest there is where none is large enough.
pub fn conduit_for(cables: u64, diameter: Length, system: UnitSystem) -> ConduitSize {
    let disc = |diameter: Length| -> Area { FRAC_PI_4 * diameter * diameter };
    let sizes = conduit_sizes(system);
    let holds =
        |size: &&ConduitSize| cables as f64 * disc(diameter) <= conduit_fill(cables) * disc(size.bore) * 1.000_001;
    let largest = ConduitSize { name: "4 in", bore: Length::new::<inch>(4.026) };
    sizes.iter().find(holds).or(sizes.last()).copied().unwrap_or(largest)
}

#[cfg(test)]
mod tests {
    use super::{UnitSystem, conduit_for};
    use uom::si::f64::Length;
    use uom::si::length::inch;

    #[test]
    fn conduit_follows_from_the_number_of_cables_and_their_diameter() {
        let named =
            |cables, diameter: f64| conduit_for(cables, Length::new::<inch>(diameter), UnitSystem::UsCustomary).name;
        // 0.26 in across: 0.0531 in2 of 0.304 in2 is 17 %; two are 35 %, over 31 %; three of 0.864 in2 are 18 %.
        assert_eq!([named(1, 0.26), named(2, 0.26), named(3, 0.26)], ["1/2 in", "3/4 in", "3/4 in"]);
        // Three of 1/2 in are 0.589 in2: 40 % of 1.496 in2 holds them.
        assert_eq!([named(3, 0.5), named(99, 1.0)], ["1-1/4 in", "4 in"]);
    }
}
