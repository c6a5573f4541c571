//! The order of an installation, and what proves it at the end. Common practice, with the cautions of each step.

use super::cautions::CautionCode;
use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// The parts of an installation plan beside the sizing, which is always there.
    PlanPart {
        Detector "detector" "Detector unit" "Whether the unit tunes to the loops, and how to set it." [CommonPractice];
        Materials "materials" "Materials" "What to load, how long it takes and what it costs." [CommonPractice];
        Cure "cure" "Cure" "Whether to seal in this weather, and when traffic may return." [CommonPractice];
        Commissioning "commissioning" "Commissioning" "What to measure and what to try before the site is left." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// What a plan may hold on request.
    PlanExtra {
        Drawings "drawings" "Drawings" "The plan, the section of the slot, the response of a vehicle and the times of the cure, as SVG drawings." [OwnChoice];
    }
}

sourced_vocabulary! {
    /// The steps of an installation, in order.
    JobStep {
        Locate "locate" "Locate what lies below" "Have buried services, heating and steel located and marked before the work begins." [OshaExcavation];
        Guard "guard" "Guard the work zone" "Close the lane, lead people round it, keep it guarded until it carries traffic again." [Mutcd];
        Isolate "isolate" "Isolate the gate" "Lock out the operator, mains, battery and solar, or hold the leaf mechanically, and post a watch." [Ul325 CommonPractice];
        MarkOut "mark_out" "Mark out" "Chalk the loops and the way of the lead-ins, and measure them twice." [CommonPractice];
        Cut "cut" "Cut" "Wet, in passes, past the ends that must be deep." [OshaSilica Geometry];
        Clean "clean" "Clean and dry" "Wash the slurry out, vacuum, blow dry; look for sharp edges and burrs." [Everett];
        Bed "bed" "Bed" "Lay the loop and its conduit in their bed, flat, and fix them." [CommonPractice];
        Lay "lay" "Lay the wire" "Without kinks and without tools that nick it; all turns the same way; hold it down." [CommonPractice];
        MeasureOpen "measure_open" "Measure before it is closed" "Resistance, inductance and insulation, before sealant or cover goes over the wire; write them down." [Fp96];
        Seal "seal" "Seal" "Fill the slot round and over the wire from the bottom up, without air." [CommonPractice];
        Cover "cover" "Cover" "Cover the loop before the surface is laid, and keep machines off it." [CommonPractice];
        Protect "protect" "Keep traffic off" "Until it carries traffic without tracking, whatever the clock says." [Everett];
        Terminate "terminate" "Terminate" "Twist the pair, solder or tin the ends, seal every splice." [CommonPractice];
        MeasureSealed "measure_sealed" "Measure once it is closed" "The same readings at the end of the lead-in; they are the record for the next call." [CommonPractice];
        PowerUp "power_up" "Power up and tune" "Set the unit, and let it tune with lanes empty and the gate closed." [CommonPractice];
        Prove "prove" "Prove" "Try with vehicles and with the gate what the unit must and must not see." [CommonPractice];
        Restore "restore" "Restore and hand over" "Every loop connected, every protective device of the gate proved by itself, readings handed over." [Ul325 CommonPractice];
    }
}

impl JobStep {
    /// What to heed at it.
    pub fn cautions(self) -> &'static [CautionCode] {
        use CautionCode::{
            BuriedServices, GateCanMove, InsulationTester, LiveParts, LocalCodes, NotForPeople, Saw, Sealant, Silica,
            WorkZone,
        };
        match self {
            Self::Locate => &[BuriedServices],
            Self::Guard | Self::MarkOut | Self::Protect | Self::Bed | Self::Cover | Self::Lay => &[WorkZone],
            Self::Isolate => &[GateCanMove],
            Self::Cut => &[Silica, Saw],
            Self::Clean => &[Silica],
            Self::MeasureOpen | Self::MeasureSealed => &[InsulationTester],
            Self::Seal => &[Sealant],
            Self::Terminate => &[LiveParts],
            Self::PowerUp => &[GateCanMove, LiveParts],
            Self::Prove => &[GateCanMove, WorkZone, NotForPeople],
            Self::Restore => &[NotForPeople, LocalCodes],
        }
    }
}

sourced_vocabulary! {
    /// What is tried before the site is left.
    Trial {
        TuneEmpty "tune_empty" "Tune with lanes empty" "Power up with no vehicle within 10 ft (3 m) and the gate closed: every channel tunes and shows no call." [CommonPractice OwnChoice];
        CycleGate "cycle_gate" "Cycle the gate three times" "Open and close the gate three times with the lanes empty: no channel calls." [CommonPractice];
        NextLane "next_lane" "Traffic in the next lane" "Let vehicles pass in the next lane: no channel calls." [CommonPractice];
        SmallestVehicle "smallest_vehicle" "The smallest vehicle at a crawl" "Drive the smallest vehicle that must be seen over each loop at a crawl, along the middle and along both edges: the call holds from the first wire to the last." [CommonPractice];
        HighestVehicle "highest_vehicle" "The highest vehicle at a crawl" "The same with the highest vehicle; stop with its highest part over the loop: the call holds throughout." [CommonPractice];
        PowerFail "power_fail" "Power fails with a vehicle on the loop" "Park on a loop that holds the gate, switch the power off and on: the gate stays as it is, and the loop still sees the vehicle or calls." [CommonPractice];
        ProtectiveDevices "protective_devices" "Prove the protective devices" "Prove each entrapment-protection device of the gate by itself, as its maker and the code ask: no loop stands in for one." [Ul325];
    }
}

impl Trial {
    /// What to heed at it.
    pub fn cautions(self) -> &'static [CautionCode] {
        use CautionCode::{GateCanMove, LocalCodes, NotForPeople, WorkZone};
        match self {
            Self::TuneEmpty | Self::CycleGate | Self::PowerFail => &[GateCanMove],
            Self::NextLane | Self::SmallestVehicle | Self::HighestVehicle => &[WorkZone, GateCanMove],
            Self::ProtectiveDevices => &[NotForPeople, LocalCodes],
        }
    }
}
