//! The kinds of quantities in requests, each with the range in which the models hold.

use crate::quantity_fields;

quantity_fields! {
    /// How far a size may be off, as a share of it.
    SizeUncertainty: Share, "0 %" to "50 %", as "10 %" or "5 percent";
    /// A leg of a loop, along travel or across the lane.
    LoopLeg: Length, "1 ft" to "200 ft", as "6 ft" or "1.8 m";
    /// The clear width of an opening or lane.
    OpeningWidth: Length, "3 ft" to "200 ft", as "24 ft" or "7.2 m";
    /// A clear strip between a loop and the edge of the opening.
    Setback: Length, "0 ft" to "20 ft", as "2 ft" or "0.6 m";
    /// A distance on the ground.
    GroundDistance: Length, "0 ft" to "1000 ft", as "15 ft" or "4.5 m";
    /// The height of a gate leaf.
    LeafHeight: Length, "1 ft" to "30 ft", as "6 ft" or "1.8 m";
    /// The gap under a gate leaf.
    LeafGroundGap: Length, "0 in" to "3 ft", as "4 in" or "100 mm";
    /// A length of cable.
    CableLength: Length, "0 ft" to "5000 ft", as "50 ft" or "15 m";
    /// The leg that a diagonal cut takes off a corner.
    CornerLeg: Length, "0 in" to "10 ft", as "12 in" or "300 mm";
    /// The sealant over the top wire.
    Cover: Length, "0 in" to "12 in", as "1 in" or "25 mm";
    /// The width of a slot.
    SlotWidth: Length, "1/16 in" to "2 in", as "3/16 in" or "5 mm";
    /// The depth of a slot.
    SlotDepth: Length, "1/4 in" to "12 in", as "1-1/2 in" or "40 mm";
    /// The diameter of a wire over its insulation, which is the pitch of stacked turns.
    OverInsulation: Length, "0.03 in" to "1/2 in", as "0.130 in" or "3.3 mm";
    /// The diameter over the jacket that holds all turns of a preformed loop.
    OverJacket: Length, "0.05 in" to "2 in", as "3/16 in" or "5 mm";
    /// The size of a conductor.
    ConductorSize: WireSize, "24 AWG" to "8 AWG", as "14 AWG" or "1.5 mm2";
    /// The inductance of a lead-in per length.
    LeadInInductance: InductancePerLength, "0.05 uH/ft" to "1 uH/ft", as "0.22 uH/ft" or "0.72 uH/m";
    /// The depth of steel below the lowest turn of a loop.
    SteelDepth: Length, "1/4 in" to "10 ft", as "2 in" or "50 mm";
    /// The temperature of the wire.
    WireTemperature: Temperature, "-40 °C" to "85 °C", as "68 °F" or "20 °C";
    /// The speed of a vehicle that comes up to the opening.
    ApproachSpeed: Speed, "1 mph" to "60 mph", as "10 mph" or "15 km/h";
    /// How long the barrier takes to open.
    OpeningTime: Time, "0.5 s" to "120 s", as "12 s" or "0.2 min";
    /// From the middle of the loop to the middle of the vehicle, to the right in the direction of driving.
    SideOffset: Length, "-100 ft" to "100 ft", as "2 ft" or "0.6 m";
    /// A place on the ground, from a point of the caller's choice.
    Coordinate: Length, "-1000 ft" to "1000 ft", as "12 ft" or "3.6 m";
    /// How long a channel holds its output.
    PresenceTime: Time, "1 s" to "30 d", as "5 min" or "1 h";
    /// The width of a lane.
    LaneWidth: Length, "3 ft" to "200 ft", as "12 ft" or "3.6 m";
    /// The side of a flat underside across the lane.
    PlateWidth: Length, "1 ft" to "4 m", as "6 ft" or "1.75 m";
    /// The side of a flat underside along travel.
    PlateLength: Length, "1 ft" to "16 m", as "15 ft" or "4.5 m";
    /// The volume of one cartridge, or of both parts of a set together.
    CartridgeVolume: Volume, "1 fl oz" to "10 gal", as "29 fl oz" or "850 ml";
    /// From the pavement down to the top of the sealant.
    FinishDepth: Length, "0 in" to "1 in", as "1/8 in" or "3 mm";
    /// A time in which a sealant sets, skins over or cures.
    CureTime: Time, "1 min" to "90 d", as "3 h" or "15 min";
    /// How long the sealing of a job takes, from the first foot to the last.
    WorkDuration: Time, "1 min" to "48 h", as "45 min" or "1.5 h";
    /// How long unopened sealant keeps from the date that it was made on.
    ShelfLife: Time, "1 d" to "3660 d", as "365 d" or "180 d";
    /// A temperature at which a sealant is applied or its times hold.
    ApplicationTemperature: Temperature, "-40 °C" to "60 °C", as "40 °F" or "5 °C";
    /// The temperature that hot sealant is poured at, or that insulation stands.
    PourTemperature: Temperature, "40 °C" to "260 °C", as "387 °F" or "190 °C";
    /// How deep a one-part sealant cures in its first day.
    FirstDayDepth: DepthPerDay, "0.2 mm/day" to "2 in/day", as "1/8 in/day" or "3 mm/day";
    /// A temperature of the air, the pavement or the dew point.
    WeatherTemperature: Temperature, "-60 °C" to "80 °C", as "40 °F" or "4.5 °C";
    /// Rain, or the water of snow, that falls within an hour.
    HourlyPrecipitation: Length, "0 in" to "12 in", as "0.05 in" or "1.2 mm";
    /// The diameter of a saw blade.
    BladeDiameter: Length, "4 in" to "48 in", as "14 in" or "350 mm";
    /// The diameter of a hole that is drilled at a corner.
    CoreDiameter: Length, "1/2 in" to "6 in", as "1-1/2 in" or "40 mm";
    /// A length of saw cut.
    CutLength: Length, "1 ft" to "100000 ft", as "500 ft" or "150 m";
    /// The diameter of backer rod before it is pressed into the slot.
    RodDiameter: Length, "1/16 in" to "2 in", as "1/4 in" or "6 mm";
    /// The length of a piece of backer rod.
    RodPiece: Length, "1/4 in" to "2 ft", as "2 in" or "50 mm";
    /// From one piece of backer rod to the next.
    RodSpacing: Length, "1 in" to "20 ft", as "2 ft" or "0.6 m";
    /// The wire on a spool.
    SpoolLength: Length, "10 ft" to "20000 ft", as "500 ft" or "150 m";
    /// The thickness of a slab or of bound layers.
    SlabThickness: Length, "1 in" to "6 ft", as "6 in" or "150 mm";
    /// From the surface down to the steel.
    SlabSteelDepth: Length, "1/4 in" to "6 ft", as "3 in" or "75 mm";
    /// The pace of work along a cut.
    WorkSpeed: Speed, "0.1 ft/min" to "200 ft/min", as "6 ft/min" or "2 m/min";
    /// How long one piece of work takes.
    WorkTime: Time, "0 min" to "48 h", as "10 min" or "0.5 h";
    /// The effective height of a flat underside above the pavement.
    PlateHeight: Length, "6 in" to "6 ft", as "20 in" or "0.5 m";
}
