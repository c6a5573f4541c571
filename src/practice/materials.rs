//! What is loaded on the van, and how long the work takes.
//!
//! No public source gives the pace of a crew or the life of a blade, so every such figure is a choice made here and stands under
//! `assumed` until the caller sends their own.

use uom::si::f64::Length;
use uom::si::length::inch;

use super::sources::sourced_vocabulary;
use super::wires::{USUAL_SLOT_WIDTH, least_clearance};
use crate::quantity::{UnitSystem, dimension, parse};
use crate::vocabulary::Vocabulary;

sourced_vocabulary! {
    /// How the wire is brought round the corners of a saw cut.
    Corner {
        SquareOverrun "square_overrun" "Square, cut past the corner" "The cuts run past each other at square corners, so that the slot has its full depth where the wire turns." [Fp96];
        Diagonal "diagonal" "Diagonal cut" "A diagonal cut across each corner spares the wire a sharp bend. The sides end where they meet it, and run on for their full depth there." [NemaTestLoop];
        DiagonalFull "diagonal_full" "Square cut full, then diagonals" "The sides are cut full to sharp corners and diagonals across them: a triangle of pavement then stands alone at each corner." [NemaTestLoop NyCorners];
        Cored "cored" "Cored corner" "A hole drilled at each corner gives the full depth without a cut past it, and rounds the bend." [NyCorners];
    }
}

impl Corner {
    /// How corners are cut where nobody says so: across, where the loop has corner cuts.
    pub fn usual_for(corner_cut: Length) -> Self {
        if corner_cut > Length::default() { Self::Diagonal } else { Self::SquareOverrun }
    }

    /// Whether a hole is drilled at each corner.
    pub fn is_cored(self) -> bool {
        match self {
            Self::Cored => true,
            Self::SquareOverrun | Self::Diagonal | Self::DiagonalFull => false,
        }
    }

    /// Whether the corners are cut across, so that the loop has corner cuts.
    pub fn is_diagonal(self) -> bool {
        match self {
            Self::Diagonal | Self::DiagonalFull => true,
            Self::SquareOverrun | Self::Cored => false,
        }
    }

    /// The bends of the wire at one corner: a diagonal has one at each of its ends.
    pub fn bends(self) -> u32 {
        match self {
            Self::Diagonal | Self::DiagonalFull => 2,
            Self::SquareOverrun | Self::Cored => 1,
        }
    }
}

sourced_vocabulary! {
    /// How the wires are held down until the sealant holds them.
    RodForm {
        None "none" "No backer rod" "A jacketed loop fits its slot and stays down by itself." [CommonPractice];
        Pieces "pieces" "Short pieces" "Short pieces of foam rod at intervals and at the corners: sealant flows round the wire between them." [CommonPractice Everett];
        Continuous "continuous" "Continuous" "One length of rod over the whole wire: it keeps the sealant from the wire, and water finds the way along it." [CommonPractice];
    }
}

impl RodForm {
    /// Whether there is any rod.
    pub fn is_laid(self) -> bool {
        match self {
            Self::None => false,
            Self::Pieces | Self::Continuous => true,
        }
    }

    /// Whether the rod lies over the whole wire, so that its height is lost to the cover all along the slot.
    pub fn covers_wire(self) -> bool {
        match self {
            Self::Continuous => true,
            Self::None | Self::Pieces => false,
        }
    }

    /// Whether it comes as pieces, with a length and a spacing.
    pub fn is_in_pieces(self) -> bool {
        match self {
            Self::Pieces => true,
            Self::None | Self::Continuous => false,
        }
    }
}

sourced_vocabulary! {
    /// What an estimate lists, and what a price can be given for.
    MaterialItem {
        SealantCartridge "sealant_cartridge" "Sealant cartridge" "Cartridges (sets, for two parts) of cold-applied sealant." [CommonPractice];
        HotSealant "hot_sealant" "Hot-applied sealant" "Sealant to be melted, by volume." [TxDot6340];
        MixingNozzle "mixing_nozzle" "Mixing nozzle" "A nozzle for each loop that is sealed in one go with two-part sealant." [OwnChoice];
        BlendingSand "blending_sand" "Blending sand" "Coloured sand for the wet sealant, where it must not show." [CommonPractice];
        LoopWire "loop_wire" "Loop wire" "Single wire for turns and twisted lead-in, by spool or by length." [CommonPractice];
        PreformedLoop "preformed_loop" "Preformed loop" "A jacketed loop with its lead-in, made to size." [CommonPractice];
        BackerRod "backer_rod" "Backer rod" "Foam rod that holds wire down." [Everett];
        HomeRunCable "home_run_cable" "Home-run cable" "Cable of its own gauge from the pull box to the unit." [CommonPractice];
        SpliceKit "splice_kit" "Splice kit" "Solder, sleeves and a seal for the two splices of a pair, in the pull box." [CommonPractice];
        PullBox "pull_box" "Pull box" "A box beside the pavement where pairs leave it and are spliced to the home run." [CommonPractice];
        LeadInConduit "lead_in_conduit" "Conduit for the lead-in" "Conduit outside the slab or under it." [CommonPractice];
        BeddingSand "bedding_sand" "Bedding sand" "Sand under and over a buried loop, free of stones." [CommonPractice OwnChoice];
        Tie "tie" "Tie" "A plastic tie or clip that holds a buried loop in place until it is covered; never wire." [CommonPractice OwnChoice];
        JointSleeve "joint_sleeve" "Joint sleeve" "A sleeve where wire crosses a joint or crack, 4 in on each side, with slack inside." [Fp96];
        Termination "termination" "Soldered or tinned end" "An end of wire, tinned or soldered against oxidation." [CommonPractice];
        LineDevice "line_device" "Device across the line" "A beam or another device that watches the line of the gate, where a vehicle can stand unseen between two loops." [CommonPractice];
        SawBlade "saw_blade" "Saw blade" "A diamond blade as wide as the slot and large enough for its depth." [CommonPractice];
    }
}

impl MaterialItem {
    /// The units that it may come in.
    pub fn units(self) -> &'static [&'static str] {
        match self {
            Self::SealantCartridge => &["cartridge"],
            Self::HotSealant => &["gal", "l"],
            Self::BeddingSand => &["ft3", "m3"],
            Self::BlendingSand => &["lot"],
            Self::LoopWire => &[Self::SPOOL, "ft", "m"],
            Self::BackerRod | Self::LeadInConduit | Self::HomeRunCable => &["ft", "m"],
            Self::SawBlade => &["each", "ft", "m"],
            Self::MixingNozzle
            | Self::PreformedLoop
            | Self::JointSleeve
            | Self::Termination
            | Self::SpliceKit
            | Self::PullBox
            | Self::Tie
            | Self::LineDevice => &["each"],
        }
    }

    /// The unit of wire on a spool. Only the caller's own number says how much is on it, so that number prices it.
    pub const SPOOL: &'static str = "spool";

    /// The name of its price in a unit: its code, followed by the unit where it may come in several (`backer_rod/ft`), but for a piece of it
    /// (`saw_blade`, `saw_blade/ft`). `None` for
    /// wire on a spool, which only its own number prices, and for a unit that it does not come in.
    pub fn price_key(self, unit: &str) -> Option<String> {
        let (code, units) = (self.code(), self.units());
        if unit == Self::SPOOL || !units.contains(&unit) {
            return None;
        }
        Some(if units.len() == 1 || unit == "each" { code.to_owned() } else { format!("{code}/{unit}") })
    }

    /// Whether its quantity follows from the geometry of the job. Sand does not, which is loaded as one lot, nor does what watches the line.
    pub fn is_measured(self) -> bool {
        match self {
            Self::BlendingSand | Self::LineDevice => false,
            Self::SealantCartridge
            | Self::HotSealant
            | Self::MixingNozzle
            | Self::LoopWire
            | Self::PreformedLoop
            | Self::BackerRod
            | Self::LeadInConduit
            | Self::HomeRunCable
            | Self::SpliceKit
            | Self::PullBox
            | Self::BeddingSand
            | Self::Tie
            | Self::JointSleeve
            | Self::Termination
            | Self::SawBlade => true,
        }
    }
}

sourced_vocabulary! {
    /// The steps of the work, in order.
    WorkStep {
        SetUp "set_up" "Set up and mark out" "Traffic control, located services checked, loops marked out." [OwnChoice];
        Saw "saw" "Saw" "All cuts, with their overruns." [OwnChoice];
        Core "core" "Core the corners" "A hole at each corner." [OwnChoice];
        CleanAndDry "clean_and_dry" "Clean and dry the slot" "Wash out the slurry, vacuum, blow dry: sealant holds on a clean and dry wall only." [Everett OwnChoice];
        Wind "wind" "Lay the wire" "One pull for each turn of single wire; one for all turns of a preformed loop." [CommonPractice OwnChoice];
        Bury "bury" "Bed and cover" "Bed a direct-burial loop and its conduit, and cover it." [OwnChoice];
        TestBeforeSealing "test_before_sealing" "Test before it is closed" "Resistance, inductance and insulation before sealant or cover goes over the wire." [Fp96 OwnChoice];
        Seal "seal" "Seal" "Fill the slot round and over the wire." [OwnChoice];
        Terminate "terminate" "Terminate" "Solder or tin the ends, splice in the box, seal the splice." [OwnChoice];
        TestAfterSealing "test_after_sealing" "Test once it is closed" "The same readings again; write them down for the next call." [Fp96 OwnChoice];
    }
}

/// The blade of a hand-held or walk-behind saw that is assumed: 14 in. Common practice.
pub const USUAL_BLADE: &str = "14 in";
/// What a blade cuts before it is worn. A choice made here: no public source gives it, and a crew knows its own.
pub const USUAL_BLADE_LIFE: &str = "1000 ft";
/// Wire that is pulled beyond its measure, percent: corners, ends and what is cut off. A choice made here.
pub const USUAL_WIRE_ALLOWANCE_PERCENT: f64 = 5.0;
/// The tail of a pair that is left in the pull box where a home run begins: 3 ft (FP-96 section 636).
pub const TAIL_IN_PULL_BOX: &str = "3 ft";
/// The hole of a cored corner. A choice made here.
pub const USUAL_CORE: &str = "1-1/2 in";
/// The sealant that is lost in cartridges, overfill and spill, percent. A choice made here.
pub const USUAL_WASTE_PERCENT: f64 = 10.0;
/// The volume of a quart-size cartridge. Common practice: 28 to 29 fl oz.
pub const USUAL_CARTRIDGE: &str = "29 fl oz";
/// From the pavement down to the finished top of the sealant: flush (City of Everett special provisions).
pub const USUAL_FINISH: &str = "0 in";
/// The length of a piece of backer rod: 2 in (City of Everett special provisions).
pub const USUAL_ROD_PIECE: &str = "2 in";
/// From piece to piece: 2 ft (City of Everett special provisions).
pub const USUAL_ROD_SPACING: &str = "2 ft";
/// Sleeve on each side of a joint: 4 in (FP-96 section 636).
pub const SLEEVE_EACH_SIDE: &str = "4 in";

/// How much wider than its slot a rod is, to sit snug: 1/16 in. A choice made here.
pub fn rod_excess() -> Length {
    Length::new::<inch>(1.0 / 16.0)
}

/// What the flange and the guard take of a blade's radius: 2 in, so that a 14 in blade cuts 5 in deep. A choice made here.
pub fn flange_radius() -> Length {
    Length::new::<inch>(2.0)
}

/// The depth that is sawn in one pass: 2 in. A choice made here.
pub fn depth_per_pass() -> Length {
    Length::new::<inch>(2.0)
}

/// Clearance above which a slot is generous: 3/32 in. A choice made here, by which ordinary wire of 0.130 in finds 3/16 in right and
/// 1/4 in generous, as common practice does.
pub fn generous_clearance() -> Length {
    Length::new::<inch>(3.0 / 32.0)
}

/// How close to known steel a cut may come: 1/2 in. A choice made here.
pub fn steel_clearance() -> Length {
    Length::new::<inch>(0.5)
}

/// The widths that blades come in, narrowest first. Common practice.
pub fn blade_widths(system: UnitSystem) -> Vec<Length> {
    match system {
        UnitSystem::UsCustomary => [2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0].map(|n| Length::new::<inch>(n / 16.0)).to_vec(),
        UnitSystem::Metric => {
            [3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0].map(Length::new::<uom::si::length::millimeter>).to_vec()
        }
    }
}

/// The diameters that blades come in, smallest first. Common practice.
pub fn blade_diameters() -> Vec<Length> {
    [12.0, 14.0, 16.0, 18.0, 20.0, 24.0, 30.0].map(Length::new::<inch>).to_vec()
}

/// The deepest cut that an estimate takes for possible: 12 in. A choice made here: common blades end a little deeper.
pub fn deepest_cut() -> Length {
    Length::new::<inch>(12.0)
}

/// The narrowest blade width that leaves sealant room round what lies in a slot, widest dimension `widest`.
pub fn best_width(widest: Length, system: UnitSystem) -> Length {
    let needed = widest + least_clearance();
    // The tolerance lets a blade pass that fits exactly, whatever binary fractions make of it.
    blade_widths(system).into_iter().find(|blade| *blade >= needed * 0.999_999).unwrap_or(needed)
}

/// The usual width of a slot: common practice, or wider where what lies in it needs more.
pub fn usual_slot_width(widest: Length, system: UnitSystem) -> Length {
    let usual = parse::<dimension::Length>(USUAL_SLOT_WIDTH).map_or_else(|_| Length::default(), |usual| usual.si);
    if is_wide_enough(usual, widest) { usual } else { best_width(widest, system) }
}

/// Whether a slot leaves sealant room round what lies in it, widest dimension `widest`; one that fits exactly does.
pub fn is_wide_enough(width: Length, widest: Length) -> bool {
    widest + least_clearance() <= width * 1.000_001
}

/// To set up, mark out and guard the work zone, for the whole job. A choice made here.
pub const SET_UP_TIME: &str = "45 min";
/// To drill one corner. A choice made here.
pub const CORE_TIME: &str = "5 min";
/// To wash, vacuum and dry the slot. A choice made here.
pub const CLEANING_SPEED: &str = "8 ft/min";
/// To pull the wire round once: one turn of single wire, or all turns of a preformed loop. A choice made here.
pub const PULL_TIME: &str = "5 min";
/// To fill the slot. A choice made here.
pub const SEALING_SPEED: &str = "5 ft/min";
/// To bed and cover a direct-burial loop. A choice made here.
pub const BURIAL_TIME: &str = "30 min";
/// To solder, splice and seal the ends of one loop. A choice made here.
pub const TERMINATION_TIME: &str = "10 min";
/// To take the readings of one loop once. A choice made here.
pub const TEST_TIME: &str = "5 min";
