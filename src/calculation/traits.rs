//! What a question is: the trait that its request implements, and the visitor of all questions.

use serde::Serialize;
use serde::de::DeserializeOwned;
use utoipa::ToSchema;
use validator::Validate;

use super::cost::CostTerm;
use super::example::Example;
use super::input::Weather;
use super::installation_plan::Illustrator;
use super::report::{Diagnostics, HasMessages, InvalidRequest};

/// One question: a request that can be answered by a pure function of itself.
pub trait Calculation: DeserializeOwned + Validate + ToSchema + Send + 'static {
    /// The answer.
    type Report: HasMessages + Serialize + ToSchema + 'static;
    /// The last part of the path, and the name of the module: `loop-sizing`.
    const NAME: &'static str;
    /// The name of the operation in generated clients: `size_loops`.
    const OPERATION_ID: &'static str;
    /// The question in a phrase.
    const SUMMARY: &'static str;
    /// What goes in, what comes out, and what to know about it.
    const DESCRIPTION: &'static str;
    /// The largest body of this path, as a multiple of the setting.
    const BODY_LIMIT_FACTOR: usize = 1;
    /// The capacity reserved for the text of a report, bytes: most are written without growing.
    const REPORT_CAPACITY: usize = 24 * 1024;
    /// The greatest lengths of lists of the request that follow from closed lists, by field, for the description. A list of members
    /// of one closed list needs no entry.
    const MAX_ITEMS: &'static [(&'static str, u64)] = &[];
    /// The published requests, at least one.
    const EXAMPLES: &'static [Example];

    /// What the request asks for, and what each is estimated to take. From its counts alone: nothing is computed for it.
    fn cost_terms(&self) -> Vec<CostTerm>;

    /// How long the answer is estimated to take on a usual core, µs: the sum of [`Calculation::cost_terms`]. It is charged to the caller's
    /// rate, and what takes under 100 µs is computed where it is read.
    fn estimated_micros(&self) -> u64 {
        self.cost_terms().iter().map(CostTerm::total).sum()
    }

    /// Adds the drawings that the request asks for. Most reports have none.
    fn illustrate(&self, _report: &mut Self::Report, _illustrator: &dyn Illustrator) {}

    /// Answers the question. Reads no clock, waits for nothing, keeps nothing.
    ///
    /// # Errors
    /// A [`InvalidRequest`] that names every field that is wrong. A sound request that has no good answer is a report with a `stop`.
    fn calculate(&self, diagnostics: &mut Diagnostics) -> Result<Self::Report, InvalidRequest>;

    /// The weather of the request, where it has one. The API replaces its `location` by the forecast before the calculation runs,
    /// for a calculation waits for nothing. A request that has [`Weather`] says where.
    fn weather_mut(&mut self) -> Option<&mut Weather> {
        None
    }

    /// Checks counts and list sizes, then answers; all errors come together.
    ///
    /// # Errors
    /// As [`Calculation::calculate`].
    fn answer(&self) -> Result<Self::Report, InvalidRequest> {
        self.answer_with(Diagnostics::default())
    }

    /// Answers with the diagnostics of an earlier step, such as the fetching of a forecast.
    ///
    /// # Errors
    /// As [`Calculation::calculate`], with the errors of the earlier step.
    fn answer_with(&self, mut diagnostics: Diagnostics) -> Result<Self::Report, InvalidRequest> {
        if let Err(errors) = self.validate() {
            diagnostics.add_validation(&errors);
        }
        self.calculate(&mut diagnostics)
    }
}

/// Something to do for each calculation: add a route, describe an operation, test it.
pub trait CalculationVisitor {
    /// Called once for each calculation, in order.
    fn visit<C: Calculation>(&mut self);
}
