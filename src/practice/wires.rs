//! Wire and cable: the sizes on sale, and what is usual where the caller gives no size.

use uom::si::f64::{Area, Length};
use uom::si::length::{inch, millimeter};

use super::sources::sourced_vocabulary;
use crate::quantity::{UnitSystem, dimension, parse};

sourced_vocabulary! {
    /// Wire sizes that loops and lead-ins are made of, as menus offer them. Requests may send others.
    WireGauge {
        Awg10 "10 AWG" "10 AWG" "Heavier than loops need." [AstmB258 IacsCopper];
        Awg12 "12 AWG" "12 AWG" "Loops whose wire may be pulled hard." [AstmB258 IacsCopper];
        Awg14 "14 AWG" "14 AWG" "The usual loop wire and lead-in." [AstmB258 IacsCopper];
        Awg16 "16 AWG" "16 AWG" "Light loop wire, preformed loops." [AstmB258 IacsCopper];
        Awg18 "18 AWG" "18 AWG" "Preformed loops and short lead-ins." [AstmB258 IacsCopper];
        Awg20 "20 AWG" "20 AWG" "Short lead-ins only." [AstmB258 IacsCopper];
        SquareMillimetre1 "1 mm2" "1 mm²" "Preformed loops and short lead-ins." [IacsCopper];
        SquareMillimetre1Half "1.5 mm2" "1.5 mm²" "The usual metric loop wire and lead-in." [IacsCopper];
        SquareMillimetre2Half "2.5 mm2" "2.5 mm²" "Loops whose wire may be pulled hard." [IacsCopper];
    }
}

impl WireGauge {
    /// The area of the conductor.
    pub fn area(self) -> Area {
        parse::<dimension::WireSize>(crate::vocabulary::Vocabulary::code(self))
            .map_or_else(|_| Area::default(), |size| size.si)
    }
}

/// The least clearance between slot and wire: 1/32 in. A choice made here: for ordinary wire of 0.130 in a slot of 1/8 in is then too
/// narrow and one of 3/16 in right, as in common practice.
pub fn least_clearance() -> Length {
    Length::new::<inch>(1.0 / 32.0)
}

/// The usual wire. Common practice; the test loop has it too.
pub const USUAL_GAUGE: &str = "14 AWG";
/// The usual diameter over insulation of 14 AWG and 1.5 mm², which is the pitch of stacked turns. Common practice.
pub const USUAL_OVER_INSULATION: &str = "0.130 in";
/// The sizes that a default gives way to where thin insulation was sent, the thickest first.
const THINNER_GAUGES: [&str; 5] = ["16 AWG", "18 AWG", "20 AWG", "22 AWG", "24 AWG"];
/// How much of the diameter over insulation the conductor takes in such a wire, at the most. A choice made here.
const CONDUCTOR_SHARE: f64 = 0.7;

/// Diameter of a solid conductor of this area.
pub fn bare_diameter(area: Area) -> Length {
    (area * (4.0 / std::f64::consts::PI)).sqrt()
}

/// The usual diameter over insulation of a conductor: that of loop wire from 1.5 mm² to 14 AWG, and the same insulation on others, in whole
/// thousandths of an inch or hundredths of a millimetre. A choice made here.
pub fn usual_over_insulation(area: Area, system: UnitSystem) -> Length {
    let usual = parse::<dimension::Length>(USUAL_OVER_INSULATION).map_or_else(|_| Length::default(), |usual| usual.si);
    let (thin, thick) = (WireGauge::SquareMillimetre1Half.area(), WireGauge::Awg14.area());
    if area >= 0.999 * thin && area <= 1.001 * thick {
        return usual;
    }
    let over = bare_diameter(area) + usual - bare_diameter(thick);
    match system {
        UnitSystem::UsCustomary => Length::new::<inch>((1e3 * over.get::<inch>()).round() / 1e3),
        UnitSystem::Metric => Length::new::<millimeter>((1e2 * over.get::<millimeter>()).round() / 1e2),
    }
}

/// The thickest gauge with insulation of its own inside this diameter, for where the usual gauge does not go in.
pub fn gauge_within(over_insulation: Length) -> &'static str {
    let fits = |gauge: &&'static str| {
        parse::<dimension::WireSize>(gauge)
            .is_ok_and(|size| bare_diameter(size.si) <= CONDUCTOR_SHARE * over_insulation)
    };
    THINNER_GAUGES.into_iter().find(fits).unwrap_or("24 AWG")
}
/// The usual inductance of a lead-in per length: the middle of 20 to 24 µH per 100 ft (NEMA test-loop clause).
pub const USUAL_LEAD_IN_INDUCTANCE: &str = "0.22 uH/ft";
/// The same of two wires of 14 AWG that lie [`LOOSE_PAIR_SPACING`] apart, from their geometry.
pub const LOOSE_LEAD_IN_INDUCTANCE: &str = "0.36 uH/ft";
/// The lead-in that is assumed when none is given. A choice made here.
pub const USUAL_LEAD_IN_LENGTH: &str = "50 ft";
/// Slack to coil at the detector unit or pull box: 3 ft of pair (FP-96 section 636).
pub const USUAL_SPARE: &str = "3 ft";
/// How far apart the wires of an untwisted pair may come to lie in its slot. A choice made here.
pub const LOOSE_PAIR_SPACING: &str = "1/2 in";

/// The usual width of a saw cut. Common practice.
pub const USUAL_SLOT_WIDTH: &str = "3/16 in";
/// The usual depth of a slot for a wound loop (NEMA test-loop clause: 1.5 in).
pub const USUAL_SLOT_DEPTH: &str = "1-1/2 in";
/// The usual depth of a slot for a jacketed loop. Common practice.
pub const USUAL_JACKETED_SLOT_DEPTH: &str = "1-1/4 in";
/// The least cover of sealant over the top wire: 1 in (City of Everett special provisions).
pub const USUAL_COVER: &str = "1 in";
/// The least cover over the wires of a jacketed loop. A choice made here: the practice slot of 1-1/4 in leaves it above three turns.
pub const USUAL_JACKETED_COVER: &str = "3/4 in";
/// The cover that a default does not fall below without a warning, where the depth that was sent leaves less: 3/4 in. A choice made here.
pub fn least_cover() -> Length {
    Length::new::<inch>(0.75)
}
/// The deepest slot that the sizing takes more turns for, when no depth is given. A choice made here.
pub const DEEPEST_SLOT: &str = "3 in";
