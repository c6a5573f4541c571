//! The detector unit: what it tunes to, from its sheet or from a standard.

use serde::{Deserialize, Serialize};
use uom::si::capacitance::nanofarad;
use uom::si::f64::Capacitance;
use utoipa::ToSchema;
use validator::Validate;

use crate::calculation::report::{Decimals, Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::detectors::{DetectorEnvelope, FREQUENCY_SHARE, INDUCTANCE_SHARE, LIMIT_FACTOR, Limits};
use crate::practice::sources::Source;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// The detector unit: figures of its data sheet, each over the same figure of the envelope.
#[derive(Clone, Debug, Default, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Detector {
    /// The envelope that stands in for figures that are not given. Default `standard_minimum`.
    pub envelope: Option<DetectorEnvelope>,
    /// Least inductance that it tunes, µH.
    #[validate(range(min = 1.0, max = 10_000.0))]
    #[schema(minimum = 1, maximum = 10_000)]
    pub inductance_min_uh: Option<f64>,
    /// Greatest inductance that it tunes, µH.
    #[validate(range(min = 1.0, max = 10_000.0))]
    #[schema(minimum = 1, maximum = 10_000)]
    pub inductance_max_uh: Option<f64>,
    /// Least quality factor that it needs.
    #[validate(range(min = 0.1, max = 1_000.0))]
    #[schema(minimum = 0.1, maximum = 1_000)]
    pub quality_factor_min: Option<f64>,
    /// Least frequency that it runs at, kHz.
    #[validate(range(min = 1.0, max = 1_000.0))]
    #[schema(minimum = 1, maximum = 1_000)]
    pub frequency_min_khz: Option<f64>,
    /// Greatest frequency that it runs at, kHz.
    #[validate(range(min = 1.0, max = 1_000.0))]
    #[schema(minimum = 1, maximum = 1_000)]
    pub frequency_max_khz: Option<f64>,
    /// Capacitance of its tank, nF, if its sheet gives it.
    #[validate(range(min = 0.1, max = 10_000.0))]
    #[schema(minimum = 0.1, maximum = 10_000)]
    pub tuning_capacitance_nf: Option<f64>,
    /// The change at its terminals that it switches at, percent.
    #[validate(range(min = 0.001, max = 50.0))]
    #[schema(minimum = 0.001, maximum = 50)]
    pub threshold_percent: Option<f64>,
    /// The changes that its sensitivity steps switch at, percent; `threshold_percent` comes first where both are sent.
    #[validate(length(max = 32))]
    #[schema(schema_with = steps_schema)]
    pub threshold_steps_percent: Option<Vec<f64>>,
    /// The insulation that it needs, megohm.
    #[validate(range(min = 0.001, max = 100_000.0))]
    #[schema(minimum = 0.001, maximum = 100_000)]
    pub insulation_min_megohm: Option<f64>,
}

/// A detector unit with every limit filled in.
#[derive(Clone, Debug)]
pub struct ResolvedDetector {
    /// The envelope that filled the gaps.
    pub envelope: DetectorEnvelope,
    /// What it tunes to.
    pub limits: Limits,
    /// The change that it switches at, percent, when given.
    pub threshold_percent: Option<f64>,
    /// Its steps, percent, coarsest first; empty when not given.
    pub threshold_steps_percent: Vec<f64>,
    /// Capacitance of its tank, when given.
    pub tuning_capacitance: Option<Capacitance>,
}

/// A detector unit as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct DetectorEcho {
    /// The envelope that filled the gaps.
    pub envelope: &'static str,
    /// Least inductance, µH.
    pub inductance_min_uh: f64,
    /// Greatest inductance, µH.
    pub inductance_max_uh: f64,
    /// Least quality factor.
    pub quality_factor_min: f64,
    /// Least frequency, kHz.
    pub frequency_min_khz: f64,
    /// Greatest frequency, kHz.
    pub frequency_max_khz: f64,
    /// The change that it switches at, percent; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub threshold_percent: Option<f64>,
    /// Its steps, percent, coarsest first.
    pub threshold_steps_percent: Vec<f64>,
    /// Capacitance of its tank, nF, 3 decimals; absent when not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tuning_capacitance_nf: Option<f64>,
}

/// The steps as they are published: the items of a list take their range from no attribute.
fn steps_schema() -> utoipa::openapi::schema::Array {
    use utoipa::openapi::schema::{ArrayBuilder, KnownFormat, ObjectBuilder, SchemaFormat, Type};
    let step = ObjectBuilder::new()
        .schema_type(Type::Number)
        .format(Some(SchemaFormat::KnownFormat(KnownFormat::Double)))
        .minimum(Some(0.001))
        .maximum(Some(50.0));
    ArrayBuilder::new()
        .items(step)
        .description(Some("The changes that its sensitivity steps switch at, percent."))
        .min_items(Some(1))
        .max_items(Some(32))
        .build()
}

/// The least and the greatest that a unit takes of something.
struct LimitPair {
    what: &'static str,
    fields: [&'static str; 2],
    sent: [Option<f64>; 2],
    usual: [f64; 2],
    /// The share of the greatest that the least does not exceed, where only the greatest was sent.
    least_share: f64,
}

impl LimitPair {
    /// What was sent; a limit that was not gives way to the other, and says so.
    fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> [f64; 2] {
        let [usual_least, usual_greatest] = self.usual;
        let mut give_way = |field: &'static str, limit: f64, reason: Statement| {
            let value = round(limit, 3);
            diagnostics.add_assumption(&at.field(field), value.to_string(), reason, &[Source::OwnChoice]);
            value
        };
        let [least_field, greatest_field] = self.fields;
        match self.sent {
            [None, None] => self.usual,
            [None, Some(greatest)] if self.least_share * greatest < usual_least => {
                let reason = Statement::new("input-least-gives-way");
                let reason = reason.code("what", self.what).percent("share", 100.0 * self.least_share, 0);
                [give_way(least_field, self.least_share * greatest, reason), greatest]
            }
            [Some(least), None] if LIMIT_FACTOR * least > usual_greatest => {
                let reason = Statement::new("input-greatest-gives-way").code("what", self.what);
                [least, give_way(greatest_field, LIMIT_FACTOR * least, reason.number("factor", LIMIT_FACTOR, 0))]
            }
            [None, Some(greatest)] => [usual_least, greatest],
            [Some(least), None] => [least, usual_greatest],
            [Some(least), Some(greatest)] => {
                if least >= greatest {
                    diagnostics.add_error(
                        &at.field(least_field),
                        FieldErrorCode::Contradiction,
                        Statement::new("errors-detector-limits")
                            .code("what", self.what)
                            .number("least", least, Decimals::All)
                            .number("greatest", greatest, Decimals::All),
                        Statement::new("errors-detector-limits-hint"),
                    );
                }
                [least, greatest]
            }
        }
    }
}

impl Detector {
    /// Which of the fields that only some calculations need were sent.
    pub fn parts_sent(&self) -> [(&'static str, bool); 4] {
        [
            ("frequency_min_khz", self.frequency_min_khz.is_some()),
            ("frequency_max_khz", self.frequency_max_khz.is_some()),
            ("tuning_capacitance_nf", self.tuning_capacitance_nf.is_some()),
            ("insulation_min_megohm", self.insulation_min_megohm.is_some()),
        ]
    }

    /// Resolves the unit; the standard minimum where none was sent.
    pub fn resolve(
        detector: Option<&Self>,
        at: &FieldPath<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Option<ResolvedDetector> {
        let usual = Self::default();
        let detector = detector.unwrap_or(&usual);
        let envelope = diagnostics.value_or_default(
            &at.field("envelope"),
            detector.envelope,
            (DetectorEnvelope::StandardMinimum, DetectorEnvelope::StandardMinimum.code()),
            Statement::new("input-usual-envelope"),
            Source::NemaEnvelope,
        );
        let base = envelope.limits();
        let [inductance_min_uh, inductance_max_uh] = LimitPair {
            what: "inductance",
            fields: ["inductance_min_uh", "inductance_max_uh"],
            sent: [detector.inductance_min_uh, detector.inductance_max_uh],
            usual: [base.inductance_min_uh, base.inductance_max_uh],
            least_share: INDUCTANCE_SHARE,
        }
        .resolve(at, diagnostics);
        let [frequency_min_khz, frequency_max_khz] = LimitPair {
            what: "frequency",
            fields: ["frequency_min_khz", "frequency_max_khz"],
            sent: [detector.frequency_min_khz, detector.frequency_max_khz],
            usual: [base.frequency_min_khz, base.frequency_max_khz],
            least_share: FREQUENCY_SHARE,
        }
        .resolve(at, diagnostics);
        let quality_factor_min = detector.quality_factor_min.unwrap_or(base.quality_factor_min);
        let limits =
            Limits { inductance_min_uh, inductance_max_uh, quality_factor_min, frequency_min_khz, frequency_max_khz };
        let mut steps = detector.threshold_steps_percent.clone().unwrap_or_default();
        for (index, step) in steps.iter().enumerate() {
            if !(0.001..=50.0).contains(step) {
                diagnostics.add_error(
                    &at.field("threshold_steps_percent").item(index),
                    FieldErrorCode::OutOfRange,
                    Statement::new("errors-detector-step").number("step", *step, Decimals::All),
                    Statement::new("errors-detector-step-hint"),
                );
            }
        }
        steps.sort_by(|a, b| b.total_cmp(a));
        Some(ResolvedDetector {
            envelope,
            limits,
            threshold_percent: detector.threshold_percent,
            threshold_steps_percent: steps,
            tuning_capacitance: detector.tuning_capacitance_nf.map(Capacitance::new::<nanofarad>),
        })
    }
}

impl ResolvedDetector {
    /// The echo for reports.
    pub fn echo(&self) -> DetectorEcho {
        let Limits { inductance_min_uh, inductance_max_uh, quality_factor_min, frequency_min_khz, frequency_max_khz } =
            self.limits;
        DetectorEcho {
            envelope: self.envelope.code(),
            inductance_min_uh: round(inductance_min_uh, 2),
            inductance_max_uh: round(inductance_max_uh, 2),
            quality_factor_min: round(quality_factor_min, 2),
            frequency_min_khz: round(frequency_min_khz, 3),
            frequency_max_khz: round(frequency_max_khz, 3),
            threshold_percent: self.threshold_percent.map(|value| round(value, 3)),
            threshold_steps_percent: self.threshold_steps_percent.iter().map(|value| round(*value, 3)).collect(),
            tuning_capacitance_nf: self.tuning_capacitance.map(|value| round(value.get::<nanofarad>(), 3)),
        }
    }
}
