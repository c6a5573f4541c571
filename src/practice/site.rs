//! The site: what closes the opening, what the loop lies in, and what stands in the way.

use uom::si::f64::{Length, Time, Velocity};
use uom::si::length::{foot, inch};
use uom::si::time::minute;

use super::cautions::CautionCode;
use super::sources::{Source, sourced_vocabulary};
use super::wires;

sourced_vocabulary! {
    /// What closes the opening.
    Barrier {
        SlideGate "slide_gate" "Sliding gate" "A leaf that slides along the opening. It moves in its own plane, so loops may lie close on both sides." [CommonPractice];
        SwingGate "swing_gate" "Swing gate, one leaf" "One leaf as long as the opening. It sweeps a quarter circle on the inside." [CommonPractice];
        SwingGatePair "swing_gate_pair" "Swing gate, two leaves" "Two leaves, each half the opening. They sweep two quarter circles on the inside." [CommonPractice];
        BarrierArm "barrier_arm" "Barrier arm" "An arm that lifts. It is thin, so a loop may lie right under it." [CommonPractice];
        VerticalLiftGate "vertical_lift_gate" "Vertical-lift gate" "A leaf that rises in its own plane." [CommonPractice];
        OverheadDoor "overhead_door" "Overhead door" "A door that rolls or folds up over the opening." [CommonPractice];
        None "none" "No barrier" "An opening or lane without a barrier: a window, a post or a stop line is the reference." [CommonPractice];
    }
}

impl Barrier {
    /// Whether a broad metal leaf stands in or moves through the opening; a loop must keep its distance from it.
    pub fn has_metal_leaf(self) -> bool {
        match self {
            Self::SlideGate | Self::SwingGate | Self::SwingGatePair | Self::VerticalLiftGate | Self::OverheadDoor => {
                true
            }
            Self::BarrierArm | Self::None => false,
        }
    }

    /// Whether anything moves at the opening; if not, distances count from a window, a post or a stop line.
    pub fn is_present(self) -> bool {
        match self {
            Self::SlideGate
            | Self::SwingGate
            | Self::SwingGatePair
            | Self::BarrierArm
            | Self::VerticalLiftGate
            | Self::OverheadDoor => true,
            Self::None => false,
        }
    }

    /// The height of its leaf and the gap under it, where nobody sends them: an overhead door is as high as the vehicles that pass it and
    /// closes on the floor. A choice made here.
    pub fn usual_leaf(self) -> (&'static str, &'static str) {
        match self {
            Self::OverheadDoor => ("12 ft", "0 in"),
            Self::SlideGate
            | Self::SwingGate
            | Self::SwingGatePair
            | Self::BarrierArm
            | Self::VerticalLiftGate
            | Self::None => ("6 ft", "4 in"),
        }
    }

    /// Whether the leaf swings, so that loops lie in its sweep.
    pub fn has_sweep(self) -> bool {
        self.sweep_share() > 0.0
    }

    /// How far a leaf sweeps past the closed line, as a share of the opening.
    pub fn sweep_share(self) -> f64 {
        match self {
            Self::SwingGate => 1.0,
            Self::SwingGatePair => 0.5,
            Self::SlideGate | Self::BarrierArm | Self::VerticalLiftGate | Self::OverheadDoor | Self::None => 0.0,
        }
    }
}

sourced_vocabulary! {
    /// Where the leaf of an overhead door is while the door stands open.
    LeafOpen {
        Level "level" "Level under the ceiling" "The leaf lies level over the ground inside, as high as the opening." [CommonPractice];
        Coiled "coiled" "Coiled up" "The leaf is wound up or folded over the opening." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// On which side of the opening the detector unit stands.
    UnitSide {
        Left "left" "On the left" "On the left as one leaves." [CommonPractice];
        Right "right" "On the right" "On the right as one leaves." [CommonPractice];
    }
}

impl UnitSide {
    /// The sign of its place across the opening, to the right as one drives in.
    pub fn across(self) -> f64 {
        match self {
            Self::Left => 1.0,
            Self::Right => -1.0,
        }
    }
}

sourced_vocabulary! {
    /// What the loop lies in.
    Surface {
        ExistingAsphalt "existing_asphalt" "Existing asphalt" "Laid asphalt: the loop goes into a saw cut." [CommonPractice];
        ExistingConcrete "existing_concrete" "Existing concrete" "Cured concrete: the loop goes into a saw cut." [CommonPractice];
        NewAsphalt "new_asphalt" "New asphalt" "Asphalt yet to be laid: a direct-burial loop goes under the final lift." [CommonPractice];
        NewConcrete "new_concrete" "New concrete" "Concrete yet to be poured: a direct-burial loop is tied in place before the pour." [CommonPractice];
        Gravel "gravel" "Gravel" "Loose surface: a direct-burial loop in a sand bed." [CommonPractice];
        Soil "soil" "Soil" "Earth or grass: a direct-burial loop in a sand bed." [CommonPractice];
        Pavers "pavers" "Pavers" "Block paving: a direct-burial loop in the bed under the blocks." [CommonPractice];
    }
}

impl Surface {
    /// Whether a finished slab is there to be sawn.
    pub fn is_sawn(self) -> bool {
        match self {
            Self::ExistingAsphalt | Self::ExistingConcrete => true,
            Self::NewAsphalt | Self::NewConcrete | Self::Gravel | Self::Soil | Self::Pavers => false,
        }
    }

    /// Whether a slab is yet to be laid that can be sawn afterwards.
    pub fn will_be_sawable(self) -> bool {
        match self {
            Self::NewAsphalt | Self::NewConcrete => true,
            Self::ExistingAsphalt | Self::ExistingConcrete | Self::Gravel | Self::Soil | Self::Pavers => false,
        }
    }

    /// What can hurt someone who saws it, beside what every saw cut brings.
    pub fn saw_cautions(self) -> &'static [CautionCode] {
        match self {
            Self::ExistingConcrete => &[CautionCode::SlabSteel, CautionCode::TensionedSlab],
            Self::ExistingAsphalt | Self::NewAsphalt | Self::NewConcrete | Self::Gravel | Self::Soil | Self::Pavers => {
                &[]
            }
        }
    }

    /// The construction that is usual in it. Common practice.
    pub fn usual_construction(self) -> Construction {
        match self {
            Self::ExistingAsphalt | Self::ExistingConcrete => Construction::HandWound,
            Self::NewAsphalt | Self::NewConcrete | Self::Gravel | Self::Soil | Self::Pavers => {
                Construction::PreformedDirectBurial
            }
        }
    }

    /// Whether the construction can be built in it as it is, or as it is being laid.
    pub fn allows(self, construction: Construction) -> bool {
        match self {
            Self::ExistingAsphalt | Self::ExistingConcrete => construction.is_sawn(),
            Self::NewAsphalt | Self::NewConcrete => true,
            Self::Gravel | Self::Soil | Self::Pavers => !construction.is_sawn(),
        }
    }

    /// What sealant is to blend in with, as a code: grey in concrete, black in asphalt. Common practice. Loose surfaces have nothing
    /// to blend in with.
    pub fn blends_with(self) -> Option<&'static str> {
        match self {
            Self::ExistingConcrete | Self::NewConcrete => Some("concrete"),
            Self::ExistingAsphalt | Self::NewAsphalt => Some("asphalt"),
            Self::Gravel | Self::Soil | Self::Pavers => None,
        }
    }

    /// How fast a saw goes forward in it at a depth: at 1-1/2 in of concrete 3 ft/min, of anything else 6 ft/min, and less the
    /// deeper it cuts. A choice made here.
    pub fn saw_speed(self, depth: Length) -> Velocity {
        let feet_per_minute = match self {
            Self::ExistingConcrete | Self::NewConcrete => 3.0,
            Self::ExistingAsphalt | Self::NewAsphalt | Self::Gravel | Self::Soil | Self::Pavers => 6.0,
        };
        let at_one_and_a_half = Length::new::<foot>(feet_per_minute) / Time::new::<minute>(1.0);
        at_one_and_a_half * (Length::new::<inch>(1.5) / depth)
    }

    /// How deep a direct-burial loop usually lies under it. A choice made here: the thickness of a final lift, of concrete over the
    /// loop, of a sand bed and what covers it.
    pub fn burial_cover(self) -> &'static str {
        match self {
            Self::ExistingAsphalt | Self::ExistingConcrete | Self::NewAsphalt | Self::NewConcrete => "2 in",
            Self::Pavers => "4 in",
            Self::Gravel | Self::Soil => "6 in",
        }
    }
}

sourced_vocabulary! {
    /// What stands in the way, below, above or beside the loop.
    SiteHazard {
        ReinforcingMesh "reinforcing_mesh" "Reinforcing mesh" "Steel mesh or bars in the slab lower the inductance and the height at which metal is seen." [MethodOfImages];
        PostTensionedSlab "post_tensioned_slab" "Post-tensioned slab" "Stressed tendons: a cut tendon can kill and can bring the slab down." [PostTension];
        BridgeDeck "bridge_deck" "Bridge or suspended deck" "A deck that carries: shallow steel, and perhaps stressed tendons." [PostTension];
        SnowMeltCable "snow_melt_cable" "Snow-melt cable" "Live heating cables in the slab." [CommonPractice];
        SnowMeltPipe "snow_melt_pipe" "Snow-melt pipe" "Heating pipes in the slab." [CommonPractice];
        OverheadPowerLine "overhead_power_line" "Overhead power line" "A power line above can induce a hum that disturbs the detector unit." [CommonPractice];
        BuriedPowerLine "buried_power_line" "Buried power line" "A power line below: a danger to the saw, and a source of hum." [CommonPractice OshaExcavation];
        AdjacentTraffic "adjacent_traffic" "Traffic next door" "A lane beside the loop whose vehicles must not be seen." [CommonPractice];
        FreezingClimate "freezing_climate" "Freezing climate" "Water in the slot freezes and lifts the sealant." [CommonPractice];
        PavementJoint "pavement_joint" "Pavement joint" "A joint that the slot or the lead-in must cross moves with the seasons." [Fp96];
        CrackedPavement "cracked_pavement" "Cracked pavement" "Pavement that moves and lets water in." [CommonPractice WaRd744];
        OldLoopCut "old_loop_cut" "Old loop cut" "The saw cut of an earlier loop lies in the same place." [CommonPractice];
    }
}

impl SiteHazard {
    /// What can hurt someone where it is.
    pub fn cautions(self) -> &'static [CautionCode] {
        match self {
            Self::ReinforcingMesh => &[CautionCode::SlabSteel],
            Self::PostTensionedSlab | Self::BridgeDeck => &[CautionCode::SlabSteel, CautionCode::TensionedSlab],
            Self::SnowMeltCable | Self::SnowMeltPipe => &[CautionCode::SnowMelt],
            Self::OverheadPowerLine
            | Self::BuriedPowerLine
            | Self::AdjacentTraffic
            | Self::FreezingClimate
            | Self::PavementJoint
            | Self::CrackedPavement
            | Self::OldLoopCut => &[],
        }
    }
}

sourced_vocabulary! {
    /// How the loop is made and laid.
    Construction {
        HandWound "hand_wound" "Wound on site in a saw cut" "Single wire is laid turn by turn in a saw cut and held down before it is sealed." [CommonPractice];
        PreformedSawCut "preformed_saw_cut" "Preformed, in a saw cut" "A jacketed loop made to size goes into a saw cut in one pass." [CommonPractice];
        PreformedDirectBurial "preformed_direct_burial" "Preformed, direct burial" "A jacketed loop made to size lies in new pavement, sand or soil, its lead-in in conduit." [CommonPractice];
    }
}

impl Construction {
    /// Whether the loop lies in a saw cut that is sealed afterwards.
    pub fn is_sawn(self) -> bool {
        match self {
            Self::HandWound | Self::PreformedSawCut => true,
            Self::PreformedDirectBurial => false,
        }
    }

    /// Whether it is a jacketed loop that comes made to size, instead of single wire from a spool.
    pub fn is_preformed(self) -> bool {
        match self {
            Self::HandWound => false,
            Self::PreformedSawCut | Self::PreformedDirectBurial => true,
        }
    }

    /// The usual depth of its slot, and where that comes from. A buried loop, which has none, is given that of a jacketed one.
    pub fn usual_slot_depth(self) -> (&'static str, Source) {
        match self {
            Self::HandWound => (wires::USUAL_SLOT_DEPTH, Source::NemaTestLoop),
            Self::PreformedSawCut | Self::PreformedDirectBurial => {
                (wires::USUAL_JACKETED_SLOT_DEPTH, Source::CommonPractice)
            }
        }
    }

    /// The usual cover of sealant over its top wire, and where that comes from. A buried loop is given that of a jacketed one.
    pub fn usual_cover(self) -> (&'static str, Source) {
        match self {
            Self::HandWound => (wires::USUAL_COVER, Source::Everett),
            Self::PreformedSawCut | Self::PreformedDirectBurial => (wires::USUAL_JACKETED_COVER, Source::OwnChoice),
        }
    }
}
