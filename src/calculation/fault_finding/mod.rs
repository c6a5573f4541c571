//! Which part has failed, from meter readings, observations and substitution, and what to test next.
//!
//! Each fault, in each of its forms, predicts what meters show, with the physics of the other calculations. What was measured
//! is scored against the predictions with stated uncertainty, combined with what was noticed, and ranked by Bayes' rule under
//! the assumption of a single cause.
//!
//! - `reading`: meters, forecasts, and how well they agree.
//! - `sound`: what a sound loop shows; `shorted`: what a closed turn takes of it.
//! - `hypotheses`: the faults in their forms.
//! - `substitution`, `likelihood`: how all evidence weighs.
//! - `next_test`: what would tell most.
//! - `evidence`, `judgement`: all of it in sentences.

mod evidence;
mod hypotheses;
mod judgement;
mod likelihood;
mod next_test;
mod read;
mod reading;
mod report;
mod request;
mod shorted;
mod sound;
mod substitution;

pub use report::*;
pub use request::*;

use uom::si::frequency::kilohertz;

use self::judgement::{InsulationTest, judge_contradiction, judge_insulation, judge_temperature};
use self::likelihood::Evidence;
use self::next_test::Outlook;
use self::read::Understood;
use self::reading::{Band, Meter};
use self::sound::{Change, Circumstances, Sound};
use super::report::{Diagnostics, InvalidRequest};
use super::{Calculation, Example, loop_characteristics};
use crate::practice::cautions::CautionCode;
use crate::practice::fault_tests::FaultTest;
use crate::practice::faults::{ReadingPlace, SubstitutionPoint};
use crate::practice::sources::Source;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

impl Calculation for FaultFindingRequest {
    type Report = FaultFindingReport;
    const NAME: &'static str = "fault-finding";
    const OPERATION_ID: &'static str = "find_fault";
    const SUMMARY: &'static str = "What has failed, and what to test next";
    const DESCRIPTION: &'static str = "For the call-back: from what a loop should measure (its design or its commissioning \
        record), what meters show now, what people notice, and how the unit runs on a known inductor, to the likely faults and \
        the test that separates them best. Each fault's readings are predicted with the physics of loop-characteristics (a \
        shorted turn is a coupled secondary, a wrong turn count recomputes the loop, copper warms) and scored against the \
        measurement. One reading is enough to start with; a single cause is assumed, and readings that no single fault \
        explains are said to contradict each other. Shares and weights of faults are choices made here after common practice.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "leak_after_rain",
            summary: "Tern Island Boatyard: the yard gate stays open after rain, and insulation is 0.3 megohm",
            request: include_str!("../../../openapi/examples/fault-finding/leak_after_rain.request.json"),
        },
        Example {
            name: "shorted_turn",
            summary: "Tern Island Boatyard: the barrier lane never detects, and the inductance is a third of the design's",
            request: include_str!("../../../openapi/examples/fault-finding/shorted_turn.request.json"),
        },
        Example {
            name: "unit_on_known_inductor",
            summary: "Tern Island Boatyard: the café's unit does not run on a known inductor at its terminals",
            request: include_str!("../../../openapi/examples/fault-finding/unit_on_known_inductor.request.json"),
        },
    ];

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let understood = self.read(diagnostics);
        let understood = diagnostics.finish(understood)?;
        let Understood { design, detector, now, readings, observations } = &understood;

        let sound_at = |place| Sound::of(design.as_ref(), self.expected.as_ref(), &Circumstances { place, ..*now });
        let [at_detector, at_loop] = [ReadingPlace::DetectorEnd, ReadingPlace::LoopEnd].map(|place| {
            let sound = sound_at(place);
            (hypotheses::forms(&sound, place), sound)
        });
        let (forms, sound) = match now.place {
            ReadingPlace::DetectorEnd => &at_detector,
            ReadingPlace::LoopEnd => &at_loop,
        };
        let valid = |done: &&Substitution| !substitution::is_void(done, &detector.limits);
        let evidence = Evidence {
            readings: readings.clone(),
            observations,
            substitution: self.substitution.as_ref().filter(valid),
        };
        let before = likelihood::before(sound, &detector.limits);
        let chances = likelihood::posterior(forms, &evidence, before);
        let suspects = evidence::suspects(forms, &chances, &evidence);
        let outlook = Outlook { at_detector: &at_detector.0, at_loop: &at_loop.0, chances: &chances };
        let next_test = next_test::choose(&understood.open_tests(&evidence), &outlook);

        if let Some((_, shown)) = readings.iter().find(|(meter, _)| *meter == Meter::Insulation) {
            let test = InsulationTest {
                voltage: self.readings.as_ref().and_then(|readings| readings.test_voltage_v),
                asked_megohm: self.detector.as_ref().and_then(|detector| detector.insulation_min_megohm),
            };
            judge_insulation(*shown, test, diagnostics);
        }
        if readings.iter().any(|(meter, _)| *meter == Meter::Resistance) {
            judge_temperature(sound, now, diagnostics);
        }
        if evidence.contradicts_itself(forms) {
            judge_contradiction(readings, diagnostics);
        }
        if let Some(done) = &self.substitution {
            substitution::judge(done, &detector.limits, diagnostics);
        }
        diagnostics.add_sources(&[Source::BayesRule, Source::CommonPractice, Source::OwnChoice]);
        diagnostics.add_sources(if design.is_some() { loop_characteristics::SOURCES } else { &[Source::IacsCopper] });
        diagnostics.add_cautions(&next_test.cautions);
        diagnostics.add_cautions(&[
            CautionCode::GateCanMove,
            CautionCode::InsulationTester,
            CautionCode::LiveParts,
            CautionCode::NotForPeople,
            CautionCode::LocalCodes,
        ]);

        let inputs = self.echo(&understood, sound);
        let closing = diagnostics.into_parts();
        Ok(FaultFindingReport {
            suspects,
            next_test,
            inputs,
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

impl Understood {
    /// The tests that were not done yet.
    fn open_tests(&self, evidence: &Evidence<'_>) -> Vec<FaultTest> {
        let read = |meter| evidence.readings.iter().any(|(other, _)| *other == meter);
        let read_at = |meter, place| read(meter) && self.now.place == place;
        let stood_at = |point| evidence.substitution.is_some_and(|done| done.connected_at == point);
        let is_done = |test: FaultTest| match test {
            FaultTest::Insulation => read(Meter::Insulation),
            FaultTest::Resistance => read_at(Meter::Resistance, ReadingPlace::DetectorEnd),
            FaultTest::ResistanceAtLoop => read_at(Meter::Resistance, ReadingPlace::LoopEnd),
            FaultTest::Inductance => read_at(Meter::Inductance, ReadingPlace::DetectorEnd),
            FaultTest::InductanceAtLoop => read_at(Meter::Inductance, ReadingPlace::LoopEnd),
            FaultTest::SubstituteAtUnit => stood_at(SubstitutionPoint::UnitTerminals),
            FaultTest::SubstituteAtHarness => stood_at(SubstitutionPoint::HarnessEnd),
            FaultTest::SubstituteAtLeadIn => stood_at(SubstitutionPoint::LeadInEnd),
            FaultTest::SplitAtSplice
            | FaultTest::NeighboursOff
            | FaultTest::LoadAndWiggle
            | FaultTest::LookForSteel => false,
        };
        FaultTest::ALL.iter().copied().filter(|test| !is_done(*test)).collect()
    }
}

impl FaultFindingRequest {
    fn echo(&self, understood: &Understood, sound: &Sound) -> FaultFindingInputs {
        let Understood { design, detector, now, observations, .. } = understood;
        let shown = |band: Band, meter, decimals| {
            let (low, high) = band.shown(meter);
            (round(low, decimals), round(high, decimals))
        };
        let inductance = shown(sound.inductance(&Change::NOTHING), Meter::Inductance, 2);
        let resistance = shown(sound.resistance(&Change::NOTHING), Meter::Resistance, 3);
        let quality = shown(sound.quality(&Change::NOTHING), Meter::Quality, 2);
        FaultFindingInputs {
            design: design
                .as_ref()
                .map(|design| LoopDesignEcho { r#loop: design.coil.echo(), lead_in: design.lead_in.echo() }),
            detector: detector.echo(),
            sound_loop: SoundLoop {
                inductance_low_uh: inductance.0,
                inductance_high_uh: inductance.1,
                resistance_low_ohm: resistance.0,
                resistance_high_ohm: resistance.1,
                quality_factor_low: quality.0,
                quality_factor_high: quality.1,
            },
            temperature: now.temperature.into(),
            frequency_khz: round(now.frequency.get::<kilohertz>(), 3),
            taken_at: now.place.code(),
            observations: observations.iter().map(|observation| observation.code()).collect(),
            substitution: self.substitution.as_ref().map(|done| SubstitutionEcho {
                connected_at: done.connected_at.code(),
                inductance_uh: round(done.inductance_uh, 2),
                unit_runs: done.unit_runs,
                simulated_vehicle_switches: done.simulated_vehicle_switches,
            }),
        }
    }
}
