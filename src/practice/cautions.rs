//! What can hurt someone. Each caution defers to local codes, data sheets and licensed people.

use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// The cautions that reports carry where they fit the job.
    CautionCode {
        NotForPeople "not_for_people" "A loop does not see people" "A vehicle loop sees metal, not people, and is no entrapment-protection device. The gate needs its own listed devices, and people on foot need their own way." [Ul325];
        LocalCodes "local_codes" "Local codes decide" "Local codes, the manufacturers' data sheets and licensed people decide. Access and egress for the fire service are settled with the local authority." [CommonPractice];
        GateCanMove "gate_can_move" "The gate can move" "Before a loop is disconnected or a detector unit is cycled, isolate and lock out the operator (mains, battery and solar) or hold the leaf mechanically, keep people out of its path and post a watch. Restore every loop and prove every protective device before you leave." [Ul325 CommonPractice];
        Silica "silica" "Silica dust" "Sawing pavement makes respirable silica. Cut wet with a continuous water feed; wear breathing protection as the rule asks: indoors always, and outdoors with a hand-held saw beyond four hours a shift." [OshaSilica];
        Saw "saw" "The saw" "Blade guard in place; eye, hearing and foot protection. No combustion saw indoors: carbon monoxide. An electric wet saw only on a ground-fault protected supply." [CommonPractice];
        BuriedServices "buried_services" "Buried services" "Have buried services located and marked before any cut or trench." [OshaExcavation];
        SlabSteel "slab_steel" "Steel in the slab" "Never cut reinforcing steel. Set the saw above it." [CommonPractice];
        TensionedSlab "tensioned_slab" "Stressed slabs" "Post-tensioned slabs, bridge and suspended decks are never cut without a scan and the engineer's word." [PostTension];
        SnowMelt "snow_melt" "Snow-melt systems" "Locate heating pipes and cables first, and isolate cables before the cut." [CommonPractice];
        WorkZone "work_zone" "Traffic at the work zone" "Plan traffic control, people on foot included, before the work starts." [Mutcd];
        Sealant "sealant" "Sealants" "Many sealants hold isocyanates, which sensitise airways and skin for life; molten sealant burns, and steam makes it spatter. The data sheet decides." [IsocyanateHealth];
        InsulationTester "insulation_tester" "Insulation tester" "Test insulation only with the detector unit and surge arresters disconnected, and discharge the loop afterwards." [InsulationTest];
        HotWork "hot_work" "Hot work" "Kettles, torches and fuel cylinders: clear or shield what can burn within 35 ft, keep a fire watch meanwhile and after, and pour only in the clothing that the data sheet asks for." [OshaHotWork];
        ClassifiedArea "classified_area" "Fuel and other classified areas" "On fuel forecourts and in other classified areas work only under the site's permit." [CommonPractice];
        PowerUpEmpty "power_up_empty" "Power up with empty loops" "A unit that is switched on or reset under a vehicle learns it as empty: it does not see that vehicle, and the gate may close on it. Clear every loop first, and drive over each afterwards." [CommonPractice];
        LiveParts "live_parts" "Live parts" "Only qualified people open enclosures with live parts." [CommonPractice];
    }
}

impl CautionCode {
    /// What every measurement at a loop that is in use asks for.
    pub const AT_A_LOOP_IN_USE: &'static [Self] =
        &[Self::GateCanMove, Self::InsulationTester, Self::LiveParts, Self::NotForPeople, Self::LocalCodes];
}
