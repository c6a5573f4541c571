//! Reference tables: what a form needs for its menus. Each has its own path, schema and operation.

use serde::Serialize;
use uom::si::area::square_meter;
use uom::si::f64::Length;
use uom::si::length::{foot, meter};
use utoipa::ToSchema;

use super::content_language::PerLanguage;
use super::problem::ProblemCode;
use super::response_body::CachedDocument;
use crate::calculation::input::Shape;
use crate::calculation::report::FieldErrorCode;
use crate::physics::conductor;
use crate::practice::Sourced;
use crate::practice::detectors::{DetectorEnvelope, FailureBehaviour, OutputMode, Wiring};
use crate::practice::existing_loops::{ExistingLoopVerdict, LoopCondition, TuningFit};
use crate::practice::fault_signs::Observation;
use crate::practice::fault_tests::{Disturbance, FaultTest, FaultTestOutcome};
use crate::practice::faults::LoopFault;
use crate::practice::finding_codes::FindingCode;
use crate::practice::job_steps::{JobStep, PlanExtra, PlanPart, Trial};
use crate::practice::lead_ins::LeadInPair;
use crate::practice::materials::{Corner, MaterialItem, RodForm, WorkStep};
use crate::practice::meter_readings::{InsulationState, ReadingPlace, SubstitutionPoint};
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::sealing::{CureMilestone, CureVerdict, SurfaceCondition};
use crate::practice::site::{Barrier, Construction, LeafOpen, SiteHazard, Surface, UnitSide};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::practice::wires::WireGauge;
use crate::quantity::output::{DetailLength, PlanLength, round};
use crate::vocabulary::Vocabulary;
use crate::wording::{Language, MemberIn};

/// A table: its path, its operation, its rows.
pub trait Table: Serialize + ToSchema + Sized + 'static {
    /// The last part of the path: `wire-gauges`.
    const NAME: &'static str;
    /// The name of the operation in generated clients.
    const OPERATION_ID: &'static str;
    /// What it lists, in a phrase.
    const SUMMARY: &'static str;
    /// The table.
    fn table(language: Language) -> Self;
    /// The answer, rendered once for each language.
    fn document(language: Language) -> &'static CachedDocument;
}

/// Something to do for each table: add a route, describe an operation.
pub trait TableVisitor {
    /// Called once for each table, in order.
    fn visit<T: Table>(&mut self);
}

/// Declares tables: the first four columns are the same everywhere, further ones are computed from the member.
macro_rules! tables {
    ($($name:literal $operation:literal $summary:literal $table:ident of $row:ident from $members:expr => $member:ident
       $({ $($(#[doc = $doc:literal])+ $column:ident: $type:ty = $value:expr;)+ })?)+) => {
        $(
            #[doc = concat!("A row of ", $name, ".")]
            #[derive(Serialize, ToSchema)]
            #[schema(description = concat!("A row of ", $name, "."))]
            pub struct $row {
                /// The value in requests and reports.
                #[schema(min_length = 1)]
                code: &'static str,
                /// A short name for a menu.
                #[schema(min_length = 1)]
                label: &'static str,
                /// One or two sentences.
                #[schema(min_length = 1)]
                description: &'static str,
                /// Where the figures come from; ids of `reference/sources`.
                source_ids: Vec<&'static str>,
                $($($(#[doc = $doc])+ $column: $type,)+)?
            }

            #[doc = concat!("The table ", $name, ".")]
            #[derive(Serialize, ToSchema)]
            #[schema(description = concat!("The table ", $name, "."))]
            pub struct $table {
                /// The rows, in the order of a menu.
                rows: Vec<$row>,
            }

            impl Table for $table {
                const NAME: &'static str = $name;
                const OPERATION_ID: &'static str = $operation;
                const SUMMARY: &'static str = $summary;

                fn table(language: Language) -> Self {
                    let rows = $members.into_iter().map(|$member| $row {
                        code: $member.code(),
                        label: $member.label_in(language),
                        description: $member.description_in(language),
                        source_ids: $member.sources().iter().map(|source| source.code()).collect(),
                        $($($column: $value,)+)?
                    });
                    Self { rows: rows.collect() }
                }

                fn document(language: Language) -> &'static CachedDocument {
                    static DOCUMENTS: PerLanguage<CachedDocument> = PerLanguage::new();
                    DOCUMENTS.get_or_init(language, || {
                        let text = serde_json::to_vec(&$table::table(language)).unwrap_or_default();
                        CachedDocument::new(text, "application/json").in_language(language)
                    })
                }
            }
        )+

        /// The list of all tables.
        pub fn visit_all(visitor: &mut impl TableVisitor) {
            $(visitor.visit::<$table>();)+
        }
    };
}

tables! {
    "wire-gauges" "list_wire_gauges" "Sizes of wire" WireGaugesTable of WireGaugeRow from WireGauge::ALL.iter().copied() => wire {
        /// Diameter of the bare conductor (of a solid one with the same area).
        conductor_diameter: DetailLength = Length::new::<meter>(diameter(wire)).into();
        /// Resistance of one conductor at 20 °C, ohm per 1000 ft, 3 decimals.
        resistance_ohm_per_kft: f64 = round(ohm_per_metre(wire) * Length::new::<foot>(1000.0).get::<meter>(), 3);
        /// Resistance of one conductor at 20 °C, ohm per km, 3 decimals.
        resistance_ohm_per_km: f64 = round(ohm_per_metre(wire) * 1000.0, 3);
    }
    "vehicle-classes" "list_vehicle_classes" "Vehicles that a loop is asked to see" VehicleClassesTable of VehicleClassRow from VehicleClass::ALL.iter().copied() => class {
        /// Length over all.
        length: PlanLength = class.length().into();
        /// Whether it runs on two wheels in one line.
        is_two_wheeler: bool = class.is_two_wheeler();
    }
    "surfaces" "list_surfaces" "What a loop lies in" SurfacesTable of SurfaceRow from Surface::ALL.iter().copied() => surface {
        /// Whether a finished slab is there to be sawn.
        is_sawn: bool = surface.is_sawn();
    }
    "barriers" "list_barriers" "What closes an opening" BarriersTable of BarrierRow from Barrier::ALL.iter().copied() => barrier {
        /// Whether a broad metal leaf moves through the opening, from which loops keep their distance.
        has_metal_leaf: bool = barrier.has_metal_leaf();
        /// The roles that an opening with this barrier usually needs.
        usual_roles: Vec<&'static str> = Role::usual_for(barrier).iter().map(|role| role.code()).collect();
    }
    "leaf-positions" "list_leaf_positions" "Where the leaf of an overhead door is while it stands open" LeafPositionsTable of LeafPositionRow from LeafOpen::ALL.iter().copied() => position
    "unit-sides" "list_unit_sides" "On which side of the opening the detector unit stands" UnitSidesTable of UnitSideRow from UnitSide::ALL.iter().copied() => side
    "lead-in-pairs" "list_lead_in_pairs" "How the two wires of a lead-in are held together" LeadInPairsTable of LeadInPairRow from LeadInPair::ALL.iter().copied() => pair {
        /// Whether it may lie in one slot with other pairs of its unit.
        may_share_slot: bool = pair.may_share_slot();
        /// Whether it may lie in one slot with pairs of other units.
        may_share_with_other_units: bool = pair.may_share_with_other_units();
    }
    "site-hazards" "list_site_hazards" "What stands in the way" SiteHazardsTable of SiteHazardRow from SiteHazard::ALL.iter().copied() => hazard
    "roles" "list_roles" "What loops are for" RolesTable of RoleRow from Role::ALL.iter().copied() => role {
        /// Whether the loop keeps a barrier from closing on a vehicle.
        holds_the_gate: bool = role.holds_the_gate();
    }
    "shapes" "list_shapes" "Shapes of loops" ShapesTable of ShapeRow from Shape::ALL.iter().copied() => shape
    "constructions" "list_constructions" "How loops are made and laid" ConstructionsTable of ConstructionRow from Construction::ALL.iter().copied() => construction {
        /// Whether the loop lies in a saw cut.
        is_sawn: bool = construction.is_sawn();
    }
    "detector-envelopes" "list_detector_envelopes" "What detector units tune to" DetectorEnvelopesTable of DetectorEnvelopeRow from DetectorEnvelope::ALL.iter().copied() => envelope {
        /// Least inductance at the terminals, µH.
        inductance_min_uh: f64 = envelope.limits().inductance_min_uh;
        /// Greatest inductance at the terminals, µH.
        inductance_max_uh: f64 = envelope.limits().inductance_max_uh;
        /// Least quality factor.
        quality_factor_min: f64 = envelope.limits().quality_factor_min;
        /// Least frequency, kHz.
        frequency_min_khz: f64 = envelope.limits().frequency_min_khz;
        /// Greatest frequency, kHz.
        frequency_max_khz: f64 = envelope.limits().frequency_max_khz;
    }
    "wirings" "list_wirings" "How several loops come to a unit" WiringsTable of WiringRow from Wiring::ALL.iter().copied() => wiring
    "output-modes" "list_output_modes" "What an output does while a vehicle is there" OutputModesTable of OutputModeRow from OutputMode::ALL.iter().copied() => mode
    "failure-behaviours" "list_failure_behaviours" "What an output does when its loop fails" FailureBehavioursTable of FailureBehaviourRow from FailureBehaviour::ALL.iter().copied() => behaviour
    "sealant-kinds" "list_sealant_kinds" "Families of loop sealant" SealantKindsTable of SealantKindRow from SealantKind::ALL.iter().copied() => kind
    "corners" "list_corners" "How saw cuts go round corners" CornersTable of CornerRow from Corner::ALL.iter().copied() => corner
    "backer-rods" "list_backer_rods" "How single wire is held down" BackerRodsTable of BackerRodRow from RodForm::ALL.iter().copied() => form
    "material-items" "list_material_items" "What an estimate lists and prices are given for" MaterialItemsTable of MaterialItemRow from MaterialItem::ALL.iter().copied() => item {
        /// The units that it may come in.
        units: Vec<&'static str> = item.units().to_vec();
        /// What a price for it stands under in `prices.items`; one for each unit, where it may come in several. Wire on a spool is priced by the spool's sku.
        price_keys: Vec<String> = item.units().iter().filter_map(|unit| item.price_key(unit)).collect();
    }
    "work-steps" "list_work_steps" "Steps of the work" WorkStepsTable of WorkStepRow from WorkStep::ALL.iter().copied() => step
    "plan-parts" "list_plan_parts" "Parts of an installation plan" PlanPartsTable of PlanPartRow from PlanPart::ALL.iter().copied() => part
    "plan-extras" "list_plan_extras" "What a plan holds on request" PlanExtrasTable of PlanExtraRow from PlanExtra::ALL.iter().copied() => extra
    "job-steps" "list_job_steps" "Steps of an installation" JobStepsTable of JobStepRow from JobStep::ALL.iter().copied() => step {
        /// What to heed: codes of cautions.
        cautions: Vec<&'static str> = step.cautions().iter().map(|caution| caution.code()).collect();
    }
    "trials" "list_trials" "What is tried before a site is left" TrialsTable of TrialRow from Trial::ALL.iter().copied() => trial {
        /// What to heed: codes of cautions.
        cautions: Vec<&'static str> = trial.cautions().iter().map(|caution| caution.code()).collect();
    }
    "observations" "list_observations" "What people notice of a fault" ObservationsTable of ObservationRow from Observation::ALL.iter().copied() => observation
    "faults" "list_faults" "What may have failed" FaultsTable of FaultRow from LoopFault::ALL.iter().copied() => fault {
        /// How often it is the cause before anything is measured or noticed, 0 to 1: a choice made here.
        share_before: f64 = fault.prior_share();
    }
    "reading-places" "list_reading_places" "Where a meter was connected" ReadingPlacesTable of ReadingPlaceRow from ReadingPlace::ALL.iter().copied() => place
    "substitution-points" "list_substitution_points" "Where a known inductor stood in" SubstitutionPointsTable of SubstitutionPointRow from SubstitutionPoint::ALL.iter().copied() => point
    "insulation-states" "list_insulation_states" "How wet the ground was when insulation was measured" InsulationStatesTable of InsulationStateRow from InsulationState::ALL.iter().copied() => state
    "fault-tests" "list_fault_tests" "Tests that separate faults, how each is done, and what it takes" FaultTestsTable of FaultTestRow from FaultTest::ALL.iter().copied() => test {
        /// How long it takes, minutes: common practice.
        minutes: u32 = test.minutes();
        /// What it disturbs: a code of disturbances.
        disturbs: &'static str = test.disturbs().code();
        /// What it can show: codes of fault-test-outcomes.
        outcomes: Vec<&'static str> = test.outcomes().iter().map(|outcome| outcome.code()).collect();
        /// What to heed: codes of cautions.
        cautions: Vec<&'static str> = test.cautions().iter().map(|caution| caution.code()).collect();
    }
    "fault-test-outcomes" "list_fault_test_outcomes" "What tests show" FaultTestOutcomesTable of FaultTestOutcomeRow from FaultTestOutcome::ALL.iter().copied() => outcome
    "disturbances" "list_disturbances" "What tests disturb" DisturbancesTable of DisturbanceRow from Disturbance::ALL.iter().copied() => disturbance
    "existing-loop-verdicts" "list_existing_loop_verdicts" "What to do with a loop that is there" ExistingLoopVerdictsTable of ExistingLoopVerdictRow from ExistingLoopVerdict::ALL.iter().copied() => verdict
    "loop-conditions" "list_loop_conditions" "How a loop in the ground stands by its readings" LoopConditionsTable of LoopConditionRow from LoopCondition::ALL.iter().copied() => condition
    "tuning-fits" "list_tuning_fits" "Whether a unit tunes to a loop in the ground" TuningFitsTable of TuningFitRow from TuningFit::ALL.iter().copied() => fit
    "surface-conditions" "list_surface_conditions" "What a slot looks like before it is sealed" SurfaceConditionsTable of SurfaceConditionRow from SurfaceCondition::ALL.iter().copied() => condition
    "cure-milestones" "list_cure_milestones" "What a sealant comes to, in order" CureMilestonesTable of CureMilestoneRow from CureMilestone::ALL.iter().copied() => milestone
    "cure-verdicts" "list_cure_verdicts" "Whether to seal" CureVerdictsTable of CureVerdictRow from CureVerdict::ALL.iter().copied() => verdict
    "findings" "list_findings" "Statements that reports make" FindingsTable of FindingRow from FindingCode::ALL.iter().copied() => finding
    "problems" "list_problems" "What can go wrong with a request" ProblemsTable of ProblemRow from AnyProblem::all() => problem {
        /// `answer` for the code of a whole answer, `field` for the code of one field among its `errors`.
        applies_to: &'static str = problem.applies_to();
        /// The status of the answer.
        status: u16 = problem.status();
    }
    "sources" "list_sources" "Where figures come from" SourcesTable of SourceRow from Source::ALL.iter().copied() => source
}

fn diameter(wire: WireGauge) -> f64 {
    (wire.area().get::<square_meter>() * 4.0 / std::f64::consts::PI).sqrt()
}

fn ohm_per_metre(wire: WireGauge) -> f64 {
    conductor::dc_resistance_per_metre(wire.area().get::<square_meter>(), 20.0)
}

/// A kind of problem, of an answer or of one field: the rows of one table.
#[derive(Clone, Copy)]
enum AnyProblem {
    Answer(ProblemCode),
    Field(FieldErrorCode),
}

impl AnyProblem {
    fn all() -> impl Iterator<Item = Self> {
        let answers = ProblemCode::ALL.iter().copied().map(Self::Answer);
        answers.chain(FieldErrorCode::ALL.iter().copied().map(Self::Field))
    }

    fn applies_to(self) -> &'static str {
        match self {
            Self::Answer(_) => "answer",
            Self::Field(_) => "field",
        }
    }

    fn status(self) -> u16 {
        match self {
            Self::Answer(code) => code.status().as_u16(),
            Self::Field(_) => ProblemCode::ValidationFailed.status().as_u16(),
        }
    }

    fn code(self) -> &'static str {
        match self {
            Self::Answer(code) => code.code(),
            Self::Field(code) => code.code(),
        }
    }

    fn label_in(self, language: Language) -> &'static str {
        match self {
            Self::Answer(code) => code.label_in(language),
            Self::Field(code) => code.label_in(language),
        }
    }

    fn description_in(self, language: Language) -> &'static str {
        match self {
            Self::Answer(code) => code.description_in(language),
            Self::Field(code) => code.description_in(language),
        }
    }

    #[allow(clippy::unused_self, reason = "a table asks each member for its sources; a problem rests on no figure")]
    fn sources(self) -> &'static [Source] {
        &[]
    }
}
