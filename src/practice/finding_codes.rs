//! The codes, titles and descriptions of findings; their messages are written where a finding is made.

use super::sources::sourced_vocabulary;

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Level {
    /// Do not build this as it stands.
    Stop,
    /// Build it only when you know why.
    Warning,
    /// Good to know.
    Note,
}

sourced_vocabulary! {
    /// The statements that reports make.
    FindingCode {
        LeadInOutweighsLoop "lead_in_outweighs_loop" "Lead-in outweighs loop" "The lead-in takes so much of the inductance that changes at the loop arrive weakened." [CircuitTheory FhwaHandbook];
        BelowEnvelope "below_envelope" "Too little inductance" "The finished loop may measure less than the unit tunes to." [NemaEnvelope];
        AboveEnvelope "above_envelope" "Too much inductance" "The finished loop may measure more than the unit tunes to." [NemaEnvelope];
        LowQuality "low_quality" "Quality factor too low" "Resistance takes so much that the unit may not run." [NemaEnvelope];
        HighResistance "high_resistance" "Resistance too high" "Loop and lead-in have more DC resistance than an agency accepts." [Everett];
        NearSelfResonance "near_self_resonance" "Near self-resonance" "The capacitance of slot and cable makes the inductance look larger than it is." [FhwaHandbook CircuitTheory];
        SteelBelow "steel_below" "Steel below the loop" "Reinforcement below takes part of the inductance and of the height at which metal is seen." [MethodOfImages];
        NoWorkingTurns "no_working_turns" "No turn count works" "No number of turns satisfies the unit, the lead-in and the slot at once." [Computed];
        SlotTooShallow "slot_too_shallow" "Slot too shallow" "The turns and the cover do not fit into the depth of the slot." [Computed];
        EdgeSetbackReduced "edge_setback_reduced" "Less room at the edges" "The opening is narrow, so the loop comes closer to its edges than usual." [CommonPractice];
        ExitTimeUnknown "exit_time_unknown" "Exit distance not proved" "Without the speed of approach and the opening time nobody knows whether the gate is open on arrival." [CommonPractice];
        ExitFarAway "exit_far_away" "Exit loop far away" "The exit loop would lie so far from the gate that a second device serves better." [CommonPractice];
        ExitReopens "exit_reopens" "Opens again for those who enter" "A vehicle that enters crosses the exit loop and opens the gate again." [CommonPractice];
        DriveTooShort "drive_too_short" "No room for the exit loop" "The drive is shorter than the way to the exit loop and its leg." [Computed];
        ArmFallsEarly "arm_falls_early" "The arm falls on the tail" "The unit lets go before the tail of a vehicle is past the arm." [Computed OwnChoice];
        ScanningUnit "scanning_unit" "One scanning unit" "Loops that couple and cannot be moved apart go on one unit that scans its channels in turn." [Computed CommonPractice];
        PairAdvised "pair_advised" "A pair of leaves serves better" "A long single leaf sweeps so far that its loops see with a thin margin." [Computed OwnChoice];
        RoadHoldsGate "road_holds_gate" "Road traffic may hold the gate" "A loop outside, beside a road, sees what passes over it." [CommonPractice];
        NearLeastInductance "near_least_inductance" "Near the least inductance" "The low end of the as-built band lies near the least that the unit tunes to, and no turn count does better." [Computed OwnChoice];
        ExitBeyondLeadIn "exit_beyond_lead_in" "Lead-in too short for the place" "The loop lies farther from the gate than the lead-in that was sent reaches; it is planned with a longer one." [Computed];
        UnseenStretch "unseen_stretch" "Unseen stretch" "Between loops that hold the gate a vehicle can stand unseen." [Computed];
        BetweenLeavesMissing "between_leaves_missing" "No loop between the leaves" "A vehicle in the sweep of swing leaves is seen by no loop." [CommonPractice];
        ClosingUnderLeaf "closing_under_leaf" "Closing loop under a metal leaf" "A loop across the line of a metal leaf sees the leaf itself." [CommonPractice];
        OneSideOnly "one_side_only" "Only one side is watched" "A barrier that moves is held by loops on one side only." [CommonPractice];
        NothingHoldsTheGate "nothing_holds_the_gate" "Nothing holds the barrier" "No loop keeps a barrier that moves from closing on a vehicle." [CommonPractice];
        RoleDoesNotFit "role_does_not_fit" "Role and barrier do not match" "The role makes sense at another kind of barrier." [CommonPractice];
        LeafClearance "leaf_clearance" "Keep clear of the metal leaf" "A loop close to a metal leaf sees the gate move." [CommonPractice];
        WrongConstruction "wrong_construction" "Construction does not fit the surface" "The asked construction and the surface do not go together." [CommonPractice];
        ReinforcingMesh "reinforcing_mesh" "Steel in the slab" "Keep the loop above the steel, and never cut the steel." [MethodOfImages NemaTestLoop];
        TensionedDeck "tensioned_deck" "Deck that may be post-tensioned" "No cut without a scan and the engineer." [PostTension];
        SnowMelt "snow_melt" "Snow melt in the slab" "Locate pipes and cables before the saw." [CommonPractice];
        PowerLine "power_line" "Power line nearby" "Hum from power lines disturbs the unit; a buried line endangers the saw." [CommonPractice OshaExcavation];
        AdjacentTraffic "adjacent_traffic" "Traffic next door" "Vehicles in the next lane must not be seen." [CommonPractice];
        FreezingClimate "freezing_climate" "Freezing climate" "Seal completely: water in the slot freezes and lifts the sealant." [CommonPractice];
        PavementJoint "pavement_joint" "Joint to cross" "Sleeve and slack where the wire crosses a joint." [Fp96];
        CrackedPavement "cracked_pavement" "Cracked pavement" "A jacketed loop lasts longer in pavement that moves." [CommonPractice WaRd744];
        OldLoopCut "old_loop_cut" "Old cut in the way" "Cut anew beside the old slot." [CommonPractice];
        LooseLeadIn "loose_lead_in" "Twist the lead-in" "A loose pair must be twisted; a jacketed pair comes twisted." [FhwaHandbook Computed];
        SlotBeforeEdge "slot_before_edge" "Slot ends before the edge" "The slot of a pair ends before the edge of the pavement, and conduit cannot lie in the slab." [CommonPractice];
        LeadInConduit "lead_in_conduit" "Lead-in in conduit" "Outside the slab a lead-in goes in conduit." [CommonPractice];
        VehicleNotSeen "vehicle_not_seen" "Vehicle not seen" "The change that the vehicle makes stays below what the unit switches at." [NemaSensitivity Computed];
        VehicleTooWide "vehicle_too_wide" "Vehicle wider than the opening" "A vehicle that is asked for does not pass the opening." [OwnChoice];
        SlotTooNarrow "slot_too_narrow" "Slot too narrow" "Sealant cannot flow round the wire: air pockets, then water." [CommonPractice];
        ThinMargin "thin_margin" "Thin margin" "The vehicle is seen, but by less than twice the threshold." [OwnChoice];
        DropsOut "drops_out" "Lets go under the vehicle" "The unit switches off before the vehicle's tail has reached the loop, whether or not it comes back." [Computed];
        BlindStrip "blind_strip" "Blind strip" "A two-wheeler between the side wires of a loop is not seen." [Computed];
        FineThreshold "fine_threshold" "Fine sensitivity needed" "The threshold is finer than the finest class of the standard: the unit's sheet must show it." [NemaSensitivity FromMemory];
        RoughAnswer "rough_answer" "Below what the model resolves" "The underside lies lower than the solver's cells resolve, so the figure is rough." [Computed];
        SideBySide "side_by_side" "Several loops side by side" "One loop across the opening is too insensitive; several share it." [Computed CommonPractice];
        QuadrupoleOffered "quadrupole_offered" "Quadrupole offered" "A quadrupole sees two-wheelers at the centre and loses height." [Computed];
        LeafSeen "leaf_seen" "The leaf may be seen" "The metal leaf changes the loop by more than half the threshold." [Computed CommonPractice];
        LeafSweeps "leaf_sweeps" "Leaves that sweep" "Swing leaves pass over what lies in their way, and a loop there sees them while they move." [CommonPractice];
        PulseHoldsNothing "pulse_holds_nothing" "A pulse holds no gate" "A loop that holds a gate is set to pulse: after the pulse the gate closes on what still stands there." [CommonPractice];
        PresenceRunsOut "presence_runs_out" "Presence runs out" "A loop that holds a gate lets go after a time, and the gate closes on what still stands there." [CommonPractice];
        FailsToNoDetect "fails_to_no_detect" "Fails to no detect" "When a loop that holds a gate fails, the gate closes unguarded." [CommonPractice];
        MixedRoles "mixed_roles" "Roles that do not go together" "Loops that hold a gate share a channel with others." [CommonPractice];
        Crosstalk "crosstalk" "Neighbours disturb each other" "Two loops on different channels couple and run at nearly the same frequency." [Computed OwnChoice];
        SamePlace "same_place" "Two loops at one place" "Loops on different channels lie over one another, and neither can be told from the other." [CommonPractice];
        PositionUnknown "position_unknown" "Positions not given" "Without positions the coupling of neighbours cannot be told." [Computed];
        Sensitivity "sensitivity" "Sensitivity to set" "The step at which every vehicle changes the loop by twice the threshold." [NemaSensitivity OwnChoice];
        SearchBounded "search_bounded" "Search ended early" "The request asks for more than one answer may compute: this is the best that was found so far." [Computed OwnChoice];
        ContradictoryReadings "contradictory_readings" "Readings contradict each other" "No single fault explains all readings: one is wrong, or there are two faults." [BayesRule OwnChoice];
        InsulationReading "insulation_reading" "What the insulation means" "The band in which the insulation lies, and whose limit that is: agencies differ." [OwnChoice];
        TestVoltage "test_voltage" "Low test voltage" "Insulation was tested below the voltage of the agencies' limits, so a leak may hide." [Wsdot820 Caltrans87];
        ReadingTemperature "reading_temperature" "Resistance at this temperature" "The wire was far from 20 degrees Celsius, which moves its resistance." [IacsCopper];
        SubstitutionVoid "substitution_void" "Substitution proves nothing" "The known inductor lies outside what the unit tunes to, so the test says nothing." [NemaEnvelope];
        BreakPlace "break_place" "Where the wire is open" "The share of the whole pair's capacitance that is left tells how far the open wire reaches." [CircuitTheory OwnChoice];
        ExistingLoop "existing_loop" "Whether to keep the loop" "What stands for and against keeping a loop that is there." [CommonPractice OwnChoice];
        GateSeen "gate_seen" "A gate that is seen" "How a loop that sees its gate is looked into: with the loops connected." [CommonPractice];
        SubstitutionResult "substitution_result" "What the substitution shows" "Where the fault lies, by whether the unit runs on a known inductor." [CommonPractice];
        SlotGenerous "slot_generous" "Slot wider than needed" "The slot works and takes more sealant." [CommonPractice Geometry];
        CutDeepForSlab "cut_deep_for_slab" "Deep cut for this slab" "A cut deeper than a third of the slab weakens it." [OwnChoice];
        SteelNearCut "steel_near_cut" "Cut near known steel" "The cut comes within 1/2 inch of the steel." [OwnChoice];
        PriceKeyUnknown "price_key_unknown" "A price that prices nothing" "The name of a price is near to one that is known, and prices nothing as it is written." [OwnChoice];
        StockShort "stock_short" "Not enough in stock" "More loops of a number are planned than are there." [Computed];
        PairsApart "pairs_apart" "Pairs that couple" "Loose pairs in one slot couple: each is given a slot of its own." [Computed];
        BuriedAtSteel "buried_at_steel" "Loop at the steel" "A loop that is tied in concrete lies at its steel or below it, which takes inductance and hides vehicles." [MethodOfImages];
        CornerStandsAlone "corner_stands_alone" "A corner stands alone" "Cuts that run to the sharp corner and a diagonal across it leave a triangle of pavement that breaks out." [NyCorners Geometry];
        ContinuousRod "continuous_rod" "Continuous backer rod" "Continuous rod keeps the sealant from the wire; where it freezes, water along it lifts the sealant." [CommonPractice];
        RodNotNeeded "rod_not_needed" "No backer rod needed" "A jacketed loop stays down by itself." [CommonPractice];
        RodStandsOut "rod_stands_out" "Rod stands out of the slot" "The rod does not fit under the finished sealant." [Geometry];
        RodMelts "rod_melts" "Foam rod under hot sealant" "Hot-applied sealant melts foam rod that is not made for it." [FromMemory];
        WireLoose "wire_loose" "Nothing holds the wire down" "Single wire without rod floats up in wet sealant." [CommonPractice];
        JacketAssumed "jacket_assumed" "Jacket not measured" "Nobody sent the diameter over the jacket, so whether it fits its slot is only assumed." [OwnChoice];
        SpliceForced "splice_forced" "Splice forced" "A loop needs more wire than the longest spool holds." [CommonPractice];
        BladeTooSmall "blade_too_small" "Blade too small" "The blade does not reach the depth of the slot." [OwnChoice Geometry];
        OverrunLeavesSlab "overrun_leaves_slab" "Cut runs past the edge" "For full depth at its end the blade runs on, past the edge of the slab or into what stands there." [Geometry];
        Unpriced "unpriced" "Not all is priced" "Some items have no price, and the total leaves them out." [OwnChoice];
        NotEstimated "not_estimated" "Not in this estimate" "What the estimate leaves out." [OwnChoice];
        SlotWet "slot_wet" "Water in the slot" "Water in the slot spoils every seal, and turns to steam under molten sealant." [CommonPractice];
        SlotDamp "slot_damp" "Damp slot" "Damp keeps sealant from bonding; two-part sealant takes it only where its sheet says so." [CommonPractice OwnChoice];
        SlabFrozen "slab_frozen" "Frost or frozen slab" "No sealant bonds to frost or to a frozen slab." [CommonPractice];
        BelowMinimumTemperature "below_minimum_temperature" "Too cold to apply" "Air or slab lies below the lowest temperature of application." [Everett MilHdbk1110];
        ColdBeforeSkin "cold_before_skin" "Falls too cold before the skin" "The air falls below the lowest temperature of application before the sealant has skinned over." [MilHdbk1110 Everett];
        ColdAfterSkin "cold_after_skin" "Cold after the skin" "The air falls below the lowest temperature of application once a skin may have formed: the cure behind it slows." [MilHdbk1110 OwnChoice];
        FrozenDrySlab "frozen_dry_slab" "Frozen and dry" "The slab is frozen, measured and called dry, and the sheet of the sealant allows its temperature." [OwnChoice];
        SawWaterFreezes "saw_water_freezes" "The water of the saw freezes" "At the freezing point and below, the water of a wet saw is ice in the slot and in the lane." [CommonPractice];
        AboveMaximumTemperature "above_maximum_temperature" "Too hot to apply" "Air or slab lies above the highest temperature of application that the sheet gives." [CommonPractice];
        NearDewPoint "near_dew_point" "Near the dew point" "The slab is so little warmer than the dew point that water may condense on it." [Iso8502 MilHdbk1110];
        RainBeforeSkin "rain_before_skin" "Rain before the skin" "Rain or snow is due before the sealant keeps it out." [Everett CommonPractice OwnChoice];
        RainPossible "rain_possible" "Rain is possible" "Rain or snow before the sealant keeps it out is possible, though not likely." [OwnChoice];
        RainAfterSkin "rain_after_skin" "Rain soon after the skin" "Rain or snow is likely soon after the sealant is safe from it." [OwnChoice];
        RainedBefore "rained_before" "It has rained" "Rain or snow has fallen in the hours before the start, so a slot that looks dry may not be." [OwnChoice CommonPractice];
        RainUnknown "rain_unknown" "Rain not told" "The weather that was sent does not say whether it rains before the sealant keeps water out." [OwnChoice];
        SurfaceAssumed "surface_assumed" "Slab not measured" "Without a measured slab temperature a cautious one stands in, and the verdict is never a plain go; with too few hours of weather before, a cool one stops the work." [OwnChoice];
        SurfaceConditionAssumed "surface_condition_assumed" "State of the slot not told" "Whether the slot is dry was not said." [OwnChoice];
        ForecastTooShort "forecast_too_short" "Forecast too short" "The forecast ends before the answer does; nothing is guessed beyond it." [Computed];
        OpensLate "opens_late" "Open to traffic too late" "Traffic may have to wait longer than it can." [Computed];
        PastShelfLife "past_shelf_life" "Past its shelf life" "The sealant is older than it keeps." [CommonPractice CtDot1612 MilHdbk1110];
        ShelfLifeShort "shelf_life_short" "Use it soon" "The sealant comes to the end of its shelf life." [CommonPractice];
        InsulationTooLow "insulation_too_low" "Insulation does not stand the pour" "Hot sealant would soften the insulation or jacket of the wire." [EverettHotMelt TxDot6340];
        InsulationUnknown "insulation_unknown" "Insulation not rated" "Nobody said what the insulation and jacket of the wire stand." [EverettHotMelt TxDot6340];
        ShortPotLife "short_pot_life" "Sets fast in this heat" "The warmer it is, the sooner mixed sealant sets: perhaps before a cartridge is empty." [MilHdbk1110 Arrhenius OwnChoice];
        HotSlab "hot_slab" "Hot slab" "In heat one-part sealant skins over fast and may blow bubbles; its sheet says how hot it may be." [MilHdbk1110 OwnChoice];
        TrafficBySkin "traffic_by_skin" "Traffic by a skin, not by the sheet" "No sheet says when one-part sealant carries traffic; a cured skin of 6 mm, or of half the cover, stands in. On site nothing may track." [OwnChoice EverettHotMelt];
        FrontCalibrated "front_calibrated" "Calibrated, not validated" "Without a data sheet the depth of cure is fitted to common practice." [CommonPractice Comyn];
        UsualTimes "usual_times" "Times without a data sheet" "Without a data sheet the times are those of common practice and of one agency's specification." [CommonPractice CtDot1612];
        CoolsNotCures "cools_not_cures" "It cools" "Hot-applied sealant does not cure: it carries traffic when it is cold." [OwnChoice];
        FitToApply "fit_to_apply" "Nothing stands against it" "Slot, slab, dew point and rain allow the work at the start that was asked for." [Computed];
        NoStockFits "no_stock_fits" "Nothing in stock fits" "No listed loop serves this role; order one." [Computed];
    }
}
