//! The register of sources: published documents, laws of nature, and the honest names of what has no document.

use crate::vocabulary::Vocabulary;

/// A closed list whose members rest on figures of the trade.
pub trait Sourced: Vocabulary {
    /// Where the figures in the description come from.
    fn sources(self) -> &'static [Source];
}

/// Declares a closed list of the trade, a member per line: `Name "code" "Label" "Description" [sources]`.
macro_rules! sourced_vocabulary {
    ($(#[doc = $doc:literal])+ $name:ident { $($member:ident $code:literal $label:literal $description:literal [$($source:ident)*];)+ }) => {
        $crate::vocabulary::vocabulary! {
            $(#[doc = $doc])+
            $name { $($member $code $label $description;)+ }
        }

        impl $crate::practice::sources::Sourced for $name {
            fn sources(self) -> &'static [$crate::practice::sources::Source] {
                match self { $(Self::$member => &[$($crate::practice::sources::Source::$source),*]),+ }
            }
        }
    };
}
pub(crate) use sourced_vocabulary;

sourced_vocabulary! {
    /// Where a figure comes from. Each report lists the entries that it used under `basis`.
    Source {
        CommonPractice "common_practice" "Common practice" "What installers of loops commonly do and expect. No document stands behind it." [];
        OwnChoice "own_choice" "Choice made here" "A value chosen for this service where no published figure exists. Your own value replaces it wherever one can be given." [];
        FromMemory "from_memory" "From memory" "A figure that is held in memory and was not read in its document again. Check it before you rely on it." [];
        Computed "computed" "Computed here" "Follows from the other sources by calculation in this service." [];
        RosaGrover "rosa_grover_1912" "Rosa and Grover, 1912" "E. B. Rosa and F. W. Grover, Formulas and tables for the calculation of mutual and self-inductance, Bulletin of the Bureau of Standards, vol. 8 no. 1." [];
        Grover "grover_1946" "Grover, 1946" "F. W. Grover, Inductance Calculations: mutual inductance of straight filaments in any position." [];
        AstmB258 "astm_b258" "ASTM B258" "Standard nominal diameters and areas of AWG sizes of solid round wires." [];
        IacsCopper "iacs_copper" "IACS copper" "International Annealed Copper Standard: 1.7241e-8 ohm metre at 20 degrees Celsius, 0.00393 per kelvin." [];
        SkinEffect "round_wire_skin_effect" "Skin effect of a round wire" "The classical Bessel-function solution for the alternating current in an isolated round wire." [];
        CircuitTheory "circuit_theory" "Circuit theory" "Exact relations of lumped inductances, resistances and capacitances." [];
        MethodOfImages "method_of_images" "Method of images" "A perfectly conducting plane acts as the mirror image of the loop, with its current reversed: a bound for mesh and sheet." [];
        EddyCurrentPlate "eddy_current_plate" "Eddy currents in a plate" "Partial inductances of a meshed perfect conductor: no net flux threads any cell. That an underside is a flat plate, and a two-wheeler an upright turn, is a model and not a measurement." [];
        NemaTestLoop "nema_test_loop" "NEMA test-loop clause" "NEMA vehicle-detector standard, clause on the test loop: 6 x 6 ft, three turns of 14 AWG, corners cut 12 in, slot 1.5 in deep, lead-in of 20 to 24 microhenries per 100 ft; read in a secondary copy." [];
        NemaEnvelope "nema_envelope" "NEMA detector-unit envelope" "NEMA TS 1 section 15 and TS 2 section 6.5: a unit tunes at least 50 to 700 microhenries with a quality factor of 5 or more. The figures are from memory." [];
        NemaSensitivity "nema_sensitivity" "NEMA sensitivity classes" "NEMA TS 1 clause 15.2 and TS 2 clause 6.5.2: changes of 0.13, 0.32 and 3.2 percent on the test loop for a small motorcycle, a large motorcycle and an automobile. From memory, cross-checked by calculation." [];
        FhwaHandbook "fhwa_detector_handbook" "FHWA Traffic Detector Handbook" "Federal Highway Administration, FHWA-HRT-06-108 chapter 2 and FHWA-HRT-06-139 appendices A and E: models of loops, lead-ins and vehicles; drive frequencies of 10 to 200 kHz." [];
        Everett "everett_special_provisions" "City of Everett special provisions" "City of Everett, Washington, special provisions for loop detectors: resistance of at most 5 ohm and a quality factor of at least 5 at 50 kHz, one inch of sealant over the top wire, pieces of backer rod 2 inches long every 2 feet and at corners, sealant flush to 1/8 inch below the surface, slots washed and blown dry, clearance to utility covers, no work in rain or below 40 degrees Fahrenheit." [];
        Fp96 "fp_96_636" "FP-96 section 636" "Federal Highway Administration, Standard Specifications for Construction of Roads and Bridges on Federal Highway Projects (FP-96), section 636: saw cuts, slack, sleeves at joints; read in a secondary copy." [];
        Iso4217 "iso_4217" "ISO 4217" "Codes of currencies, and the number of decimals of each." [];
        NyCorners "bikowitz_ross_1985" "Bikowitz and Ross, 1985" "Transportation Research Record 1010: why loops in New York failed, and the change from diagonal corners to square ones that are chiselled or cored." [];
        Geometry "geometry" "Geometry" "Exact relations of lengths, areas and volumes." [];
        WaRd744 "wa_rd_744_5" "WA-RD 744.5" "Washington State Department of Transportation report WA-RD 744.5 (2010): pavement panels with loops crack more often than panels without." [];
        Wsdot820 "wsdot_8_20_3_14_d" "WSDOT 8-20.3(14)D" "Washington State Department of Transportation, Standard Specifications 8-20.3(14)D, tests B and C: insulation of at least 200 megohm at 500 V. From memory." [];
        Caltrans87 "caltrans_87_1_01d" "Caltrans 87-1.01D" "California Department of Transportation, Standard Specifications 87-1.01D: insulation of at least 100 megohm at 500 V for loop circuits. From memory." [];
        TxDot6340 "txdot_dms_6340" "TxDOT DMS-6340" "Texas Department of Transportation, departmental materials specification DMS-6340: the families of loop sealants, one-part moisture-cured, two-part, and hot-melt." [];
        EverettHotMelt "everett_hot_melt" "City of Everett, hot-melt loop sealant" "City of Everett, Washington, special provisions for loop detectors: hot-melt sealant is poured at 387 degrees Fahrenheit and heated to 410 at most; sealant is protected from wheels until it has cured." [];
        CtDot1612 "ct_dot_m_16_12" "CT DOT M.16.12" "Connecticut Department of Transportation, item 1111451A and article M.16.12: two-part loop sealant is free of tack within 25 minutes and fully cured within 60 at 77 degrees Fahrenheit; it keeps for 12 months. Read in a secondary copy." [];
        MilHdbk1110 "mil_hdbk_1110" "MIL-HDBK-1110" "United States Department of Defense handbook on paints and protective coatings, chapters 7 and 9: storage at 50 to 85 degrees Fahrenheit, 24 hours of conditioning, pot life that shrinks with heat, no work where it will fall below 40 before the coat is dry, a surface at least 5 degrees Fahrenheit above the dew point. Its limits for coatings are applied to sealants by analogy." [];
        Iso8502 "iso_8502_4" "ISO 8502-4" "Guidance on the probability of condensation before paint is applied: the surface at least 3 degrees Celsius above the dew point; the figure is read in secondary pages." [];
        AlduchovEskridge "alduchov_eskridge_1996" "Alduchov and Eskridge, 1996" "O. A. Alduchov and R. E. Eskridge, Improved Magnus form approximation of saturation vapor pressure, Journal of Applied Meteorology 35: 6.1094 hectopascal, 17.625 and 243.04 over water." [];
        WmoIce "wmo_no_8" "WMO No. 8" "World Meteorological Organization, Guide to Instruments and Methods of Observation, annex 4.B: Magnus coefficients over ice, 6.112 hectopascal, 22.46 and 272.62. From memory." [];
        Comyn "comyn_1998" "Comyn, 1998" "J. Comyn, Moisture cure of adhesives and sealants, International Journal of Adhesion and Adhesives 18: the cured layer grows as a sharp front, as fast as water permeates it, so its depth goes with the root of time and of vapour pressure." [];
        Arrhenius "arrhenius" "Law of Arrhenius" "The rate of a reaction against absolute temperature, by its activation energy. Energies of 45 to 60 kilojoule per mole stand for urethanes: 45 to 51 doubles the rate per 10 degrees Celsius between 0 and 30, and 60.1 has been published; the band is a choice made here." [];
        BayesRule "bayes_rule" "Bayes' rule" "Exact rule for how much a measurement shifts the odds between causes, given what each cause predicts." [];
        PublicForecast "public_forecast" "Public weather forecast" "The hourly forecast of the weather service that the operator of this service has set. A forecast can be wrong: look at the sky and measure the pavement on the day." [];
        OshaSilica "osha_1926_1153" "29 CFR 1926.1153" "OSHA construction standard on respirable crystalline silica, Table 1: wet cutting with an integrated water feed." [];
        OshaExcavation "osha_1926_651" "29 CFR 1926.651(b)" "OSHA construction standard on excavations: underground installations are located first. From memory." [];
        OshaHotWork "osha_1910_252" "29 CFR 1910.252" "OSHA standard on hot work: what can burn within 35 ft is moved or shielded, and a fire watch stays for at least half an hour after; read in a secondary copy." [];
        Mutcd "mutcd_part_6" "MUTCD part 6" "Manual on Uniform Traffic Control Devices, 11th edition, part 6: temporary traffic control; read in a secondary copy." [];
        PostTension "post_tension_guidance" "Post-tensioning guidance" "Guidance of the post-tensioning industry: no cut before the tendons are located; decks are taken as post-tensioned until shown otherwise. From memory." [];
        IsocyanateHealth "niosh_96_111" "NIOSH 96-111" "NIOSH alert on diisocyanates: they sensitise airways and skin, permanently." [];
        InsulationTest "iec_60364_6" "IEC 60364-6" "Verification of low-voltage installations: insulation test voltages; electronic devices are disconnected first. Cross-checked from memory." [];
        Ul325 "ul_325" "UL 325 and ASTM F2200" "Standards for powered gates: independent means of entrapment protection, controls out of reach, a separate way for pedestrians; read in public announcements." [];
    }
}
