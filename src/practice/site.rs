//! The site: what closes the opening, what the loop lies in, and what stands in the way.

use super::sources::sourced_vocabulary;

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
        !matches!(self, Self::BarrierArm | Self::None)
    }

    /// How far a leaf sweeps past the closed line, as a share of the opening.
    pub fn sweep_share(self) -> f64 {
        match self {
            Self::SwingGate => 1.0,
            Self::SwingGatePair => 0.5,
            _ => 0.0,
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
        matches!(self, Self::ExistingAsphalt | Self::ExistingConcrete)
    }
}

impl Surface {
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
        !matches!(self, Self::PreformedDirectBurial)
    }
}
