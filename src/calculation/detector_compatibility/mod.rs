//! Whether a detector unit tunes to loops, and how to set it: before the cut.
//!
//! `request` asks; `channel` joins loops as they come to the unit, `checks` holds them against its limits, `neighbours` looks at
//! their coupling, `settings` says how to set each channel, `remedies` tries what would turn a bad check; `report` answers.

mod channel;
mod checks;
mod neighbours;
mod remedies;
mod report;
mod request;
mod settings;

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

pub use report::{
    ChannelSettings, Check, ConnectedLoopEcho, DetectorCompatibilityInputs, DetectorCompatibilityReport,
    NeighbourAction, Neighbours, Remedy, Sensitivity, SensitivityStep,
};
pub use request::{ConnectedLoop, DetectorCompatibilityRequest, Position};

use super::input::{Detector, ResolvedDetector};
use super::report::{Diagnostics, FieldErrorCode, FieldPath, Finding, InvalidRequest};
use super::{Calculation, Example, loop_characteristics, vehicle_response};
use crate::practice::cautions::CautionCode;
use crate::practice::detectors::{USUAL_STEPS_PERCENT, Wiring};
use crate::practice::findings::{FindingCode, Level};
use crate::practice::sources::Source;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;
use channel::{Channel, Member};
use checks::Verdict;

/// What a finding leaves of a verdict: a stop makes it unsuitable, neighbours that disturb each other marginal.
fn weight(finding: &Finding) -> Verdict {
    match (finding.level, finding.code) {
        (Level::Stop, _) => Verdict::Unsuitable,
        (_, FindingCode::Crosstalk) => Verdict::Marginal,
        _ => Verdict::Suitable,
    }
}

/// A request in typed quantities.
struct Job {
    members: Vec<Member>,
    wiring: Wiring,
    detector: ResolvedDetector,
    vehicles: Vec<VehicleClass>,
}

impl ConnectedLoop {
    fn read(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Member> {
        let coil = self.r#loop.read(&at.field("loop"), diagnostics);
        let lead_in = self.lead_in.read(&at.field("lead_in"), diagnostics);
        let position_at = at.field("position");
        let position = self.position.as_ref().and_then(|position| {
            let along = diagnostics.parse(&position_at.field("along"), &position.along);
            let across = diagnostics.parse(&position_at.field("across"), &position.across);
            Some((along?.si, across?.si))
        });
        let presence_time = diagnostics.parse_optional(&at.field("presence_time"), self.presence_time.as_ref());
        diagnostics.mark_unneeded(&at.field("lead_in"), &self.lead_in.parts_sent());
        Some(Member {
            label: self.label.clone(),
            role: self.role,
            coil: coil?,
            lead_in: lead_in?,
            position,
            output: self.output,
            presence_time,
            on_loop_failure: self.on_loop_failure,
        })
    }
}

impl DetectorCompatibilityRequest {
    fn read(&self, diagnostics: &mut Diagnostics) -> Option<Job> {
        let body = FieldPath::BODY;
        let loops = body.field("loops");
        let mut members = Vec::new();
        for (index, connected) in self.loops.iter().enumerate() {
            let at = loops.item(index);
            if self.loops[..index].iter().any(|other| other.label == connected.label) {
                diagnostics.add_error(
                    &at.field("label"),
                    FieldErrorCode::Contradiction,
                    format!("The label {} stands twice.", connected.label),
                    "Give every loop a label of its own.",
                );
            }
            members.extend(connected.read(&at, diagnostics));
        }
        let wiring = diagnostics.value_or_default(
            &body.field("wiring"),
            self.wiring,
            (Wiring::Separate, Wiring::Separate.code()),
            "Every loop has its own channel.",
            Source::CommonPractice,
        );
        let detector = Detector::resolve(self.detector.as_ref(), &body.field("detector"), diagnostics);
        let vehicles = VehicleClass::read_list(self.vehicles.as_deref(), &body.field("vehicles"), diagnostics);
        let mut detector = detector?;
        if detector.threshold_percent.is_none() && detector.threshold_steps_percent.is_empty() {
            let steps = USUAL_STEPS_PERCENT.map(|step| step.to_string()).join(", ");
            let reason = "Steps of the standard's sensitivity classes and a finer one; the unit's sheet governs.";
            let sources = [Source::NemaSensitivity, Source::FromMemory];
            diagnostics.add_assumption(
                &body.field("detector").field("threshold_steps_percent"),
                steps,
                reason,
                &sources,
            );
            detector.threshold_steps_percent = USUAL_STEPS_PERCENT.to_vec();
        }
        Some(Job { members, wiring, detector, vehicles })
    }
}

impl Job {
    /// One channel per loop, or one for all.
    fn channels(&self) -> Vec<Channel> {
        match self.wiring {
            Wiring::Separate => {
                self.members.iter().map(|member| Channel::new(vec![member.clone()], Wiring::Separate)).collect()
            }
            wiring => vec![Channel::new(self.members.clone(), wiring)],
        }
    }
}

impl Calculation for DetectorCompatibilityRequest {
    type Report = DetectorCompatibilityReport;
    const NAME: &'static str = "detector-compatibility";
    const OPERATION_ID: &'static str = "check_detector";
    const SUMMARY: &'static str = "Whether a detector unit tunes to loops";
    const DESCRIPTION: &'static str = "Holds loops, each at the end of its lead-in, against what a detector unit tunes to: \
        inductance with its as-built band, quality factor, resistance, the share that the lead-in leaves, the frequency where the \
        unit's tank capacitance is known, and every vehicle at every sensitivity step. Says how neighbours couple, how to set each \
        channel, and what change would turn a bad check, with the figure that it gives. Send the figures of the unit's own sheet in \
        `detector`, or let an envelope of `reference/detector-envelopes` stand in for it.";
    const EXAMPLES: &'static [Example] = &[
        Example {
            name: "yard_gate_pair",
            summary: "Tern Island Boatyard: two obstruction loops of the yard gate on one unit",
            request: include_str!("../../../openapi/examples/detector-compatibility/yard_gate_pair.request.json"),
        },
        Example {
            name: "one_turn",
            summary: "One turn is too few: what would do",
            request: include_str!("../../../openapi/examples/detector-compatibility/one_turn.request.json"),
        },
    ];

    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest> {
        let job = self.read(diagnostics);
        let job = diagnostics.finish(job)?;
        if let Some(detector) = &self.detector {
            let [_, _, _, insulation] = detector.parts_sent();
            diagnostics.mark_unneeded(&FieldPath::BODY.field("detector"), &[insulation]);
        }
        let channels = job.channels();
        let mut verdict = Verdict::Suitable;
        let (mut shown, mut sensitivities, mut settings, mut found) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        let mut first = 0;
        for channel in &channels {
            let checks = checks::check(channel, &job.detector, &job.vehicles);
            verdict = checks.iter().map(|check| check.verdict).fold(verdict, Verdict::max);
            for check in &checks {
                diagnostics.add_sources(check.sources);
            }
            shown.extend(checks.iter().map(|check| check.show(channel)));
            sensitivities.extend(job.sensitivities(channel));
            let changes: Vec<_> =
                job.vehicles.iter().map(|class| (*class, checks::least(&channel.changes(*class)))).collect();
            let step = checks::step_to_set(&changes, &job.detector);
            job.judge_gaps(channel, step, diagnostics);
            settings.push(settings::set(channel, first, step, &job.detector, diagnostics));
            found.extend(remedies::find(channel, &job.detector, &job.vehicles));
            first += channel.members.len();
        }
        let neighbours = neighbours::pairs(&channels, &job.detector, diagnostics);
        diagnostics.add_sources(loop_characteristics::SOURCES);
        diagnostics.add_sources(vehicle_response::SOURCES);
        diagnostics.add_sources(&[Source::NemaEnvelope, Source::Everett]);
        diagnostics.add_cautions(&[
            CautionCode::NotForPeople,
            CautionCode::LocalCodes,
            CautionCode::GateCanMove,
            CautionCode::LiveParts,
            CautionCode::InsulationTester,
        ]);
        let inputs = job.echo();
        let closing = diagnostics.into_parts();
        let verdict = closing.findings.iter().map(weight).fold(verdict, Verdict::max);
        Ok(DetectorCompatibilityReport {
            verdict: verdict.code(),
            checks: shown,
            sensitivities,
            neighbours,
            settings,
            remedies: found,
            inputs,
            findings: closing.findings,
            assumed: closing.assumed,
            unused: closing.unused,
            cautions: closing.cautions,
            basis: closing.basis,
        })
    }
}

impl Job {
    /// States where the unit would let go under a vehicle of several parts.
    fn judge_gaps(&self, channel: &Channel, step: f64, diagnostics: &mut Diagnostics) {
        for class in &self.vehicles {
            for member in channel.letting_go(*class, Ratio::new::<percent>(step)) {
                let level = if channel.holds_the_gate() { Level::Stop } else { Level::Warning };
                let message = format!(
                    "The unit lets go of {} under a {}, between its parts. Take a finer step, or a longer loop along travel.",
                    member.label,
                    class.label().to_lowercase()
                );
                diagnostics.add_finding(
                    Finding::new(FindingCode::DropsOut, level, &FieldPath::BODY.field("vehicles"), message)
                        .on(Some(member.role.code())),
                );
            }
        }
    }

    fn sensitivities(&self, channel: &Channel) -> Vec<Sensitivity> {
        let steps = checks::steps(&self.detector);
        let of = |class: &VehicleClass| {
            let changes = channel.changes(*class);
            let vehicle = class.code();
            let at = |change| {
                let step = |step: &f64| SensitivityStep {
                    threshold_percent: round(*step, 3),
                    verdict: checks::at_step(change, *step).code(),
                };
                steps.iter().map(step).collect::<Vec<_>>()
            };
            let seen: Vec<_> = channel
                .members
                .iter()
                .zip(changes)
                .map(|(member, change)| Sensitivity {
                    channel: channel.label(),
                    r#loop: member.label.clone(),
                    vehicle,
                    change_percent: round(change.get::<percent>(), 3),
                    steps: at(change),
                })
                .collect();
            seen
        };
        self.vehicles.iter().flat_map(of).collect()
    }

    fn echo(&self) -> DetectorCompatibilityInputs {
        DetectorCompatibilityInputs {
            loops: self
                .members
                .iter()
                .map(|member| ConnectedLoopEcho {
                    label: member.label.clone(),
                    role: member.role.code(),
                    r#loop: member.coil.echo(),
                    lead_in: member.lead_in.echo(),
                    along: member.position.map(|(along, _)| along.into()),
                    across: member.position.map(|(_, across)| across.into()),
                })
                .collect(),
            wiring: self.wiring.code(),
            detector: self.detector.echo(),
            vehicles: self.vehicles.iter().map(|class| class.code()).collect(),
        }
    }
}
