//! Where meters and known inductors are connected, and what an insulation reading means.

use super::faults::FaultLocation;
use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// Where a meter was connected.
    ReadingPlace {
        DetectorEnd "detector_end" "Detector end" "At the unit's end of the lead-in, with the unit disconnected: lead-in and loop are measured together." [CommonPractice];
        LoopEnd "loop_end" "Loop end" "At the loop's own tails, with the splice opened: the loop is measured alone." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// Where a known inductor stood in for what lies beyond.
    SubstitutionPoint {
        UnitTerminals "unit_terminals" "Unit's terminals" "At the terminals of the unit, with nothing else connected to them." [CommonPractice];
        HarnessEnd "harness_end" "End of the harness" "At the far end of the harness, in place of the lead-in." [CommonPractice];
        LeadInEnd "lead_in_end" "End of the lead-in" "At the far end of the lead-in, in place of the loop, with the splice opened." [CommonPractice];
    }
}

sourced_vocabulary! {
    /// How wet the ground was when insulation was measured.
    InsulationState {
        Dry "dry" "Dry" "Slot, splice and lead-in were dry: a good reading says little about a fault that comes with rain." [CommonPractice];
        Wet "wet" "Wet" "After rain, or after slot, splice and lead-in were wetted: what leaks only when wet leaks now." [CommonPractice];
    }
}

impl ReadingPlace {
    /// The nearest location to the unit that a meter there measures; what lies nearer is disconnected.
    pub fn measures_from(self) -> FaultLocation {
        match self {
            Self::DetectorEnd => FaultLocation::LeadIn,
            Self::LoopEnd => FaultLocation::Loop,
        }
    }
}

impl SubstitutionPoint {
    /// The farthest part from the unit that stays in the circuit with the inductor.
    pub fn farthest(self) -> FaultLocation {
        match self {
            Self::UnitTerminals => FaultLocation::Unit,
            Self::HarnessEnd => FaultLocation::Harness,
            Self::LeadInEnd => FaultLocation::LeadIn,
        }
    }

    /// Whether what sits at a location stays in the circuit with the inductor.
    pub fn reaches(self, location: FaultLocation) -> bool {
        location <= self.farthest()
    }
}

/// What an insulation reading means: from this value up, in whose words, and by whom.
#[derive(Clone, Copy, Debug)]
pub struct InsulationBand {
    /// The least reading of the band, megohm.
    pub from_megohm: f64,
    /// Its name in statements.
    pub code: &'static str,
    /// Whether it calls for work.
    pub is_bad: bool,
    /// Whose limit it is.
    pub sources: &'static [super::sources::Source],
}

/// The bands, best first. Agencies differ, and the lower ones are nobody's limit but engineering judgement.
pub const INSULATION_BANDS: [InsulationBand; 5] = {
    use super::sources::Source::{Caltrans87, Fp96, FromMemory, OwnChoice, Wsdot820};
    [
        InsulationBand {
            from_megohm: 200.0,
            code: "strictest_agency",
            is_bad: false,
            sources: &[Wsdot820, FromMemory],
        },
        InsulationBand {
            from_megohm: 100.0,
            code: "stricter_agency",
            is_bad: false,
            sources: &[Caltrans87, Wsdot820, FromMemory],
        },
        InsulationBand { from_megohm: 10.0, code: "lenient_agency", is_bad: false, sources: &[Fp96, OwnChoice] },
        InsulationBand { from_megohm: 1.0, code: "poor", is_bad: true, sources: &[OwnChoice] },
        InsulationBand { from_megohm: 0.0, code: "failed", is_bad: true, sources: &[OwnChoice] },
    ]
};

/// Below this insulation calls for work, megohm: the lowest limit of an agency.
pub const LEAK_BELOW_MEGOHM: f64 = 10.0;

/// The test voltage of the agencies' limits, V (WSDOT and Caltrans, from memory).
pub const USUAL_TEST_VOLTAGE_V: f64 = 500.0;
