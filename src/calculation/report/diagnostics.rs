//! What a calculation says beside its numbers; gathered here so that no module repeats it.

use std::borrow::Cow;
use std::mem::take;

use validator::ValidationErrors;

use super::FieldPath;
use super::invalid_request::{FieldError, FieldErrorCode, InvalidRequest, errors_of_validation};
use super::message::Message;
use super::parts::{Assumed, Basis, Caution, Finding, SourceEntry};
use super::statement::Statement;
use crate::calculation::budget::WorkBudget;
use crate::practice::Sourced;
use crate::practice::cautions::CautionCode;
use crate::practice::sources::Source;
use crate::quantity::{Dimension, ParsedQuantity, QuantityField, parse};

/// The release that computes: part of every report.
pub const ENGINE: &str = env!("CARGO_PKG_VERSION");

/// Gathers faults while a request is read, then findings, defaults used, cautions and sources while it is answered.
#[derive(Default)]
pub struct Diagnostics {
    errors: Vec<FieldError>,
    findings: Vec<Finding>,
    assumed: Vec<Assumed>,
    unused: Vec<String>,
    /// In any order, some of them twice.
    cautions: Vec<CautionCode>,
    /// The same.
    sources: Vec<Source>,
    budget: WorkBudget,
}

/// The common parts of a report, ready to be moved into it.
pub struct ReportParts {
    /// Findings, the gravest first.
    pub findings: Vec<Finding>,
    /// Defaults that stood in for absent fields.
    pub assumed: Vec<Assumed>,
    /// Fields that were sent and not needed, as pointers.
    pub unused: Vec<String>,
    /// Cautions that fit the job.
    pub cautions: Vec<Caution>,
    /// What the figures rest on.
    pub basis: Basis,
}

impl Diagnostics {
    /// Diagnostics of an answer that may compute so much.
    pub fn within(budget: WorkBudget) -> Self {
        Self { budget, ..Self::default() }
    }

    /// The same diagnostics, of an answer that may compute so much.
    #[must_use]
    pub fn bounded_by(self, budget: WorkBudget) -> Self {
        Self { budget, ..self }
    }

    /// What the answer may still compute.
    pub fn budget(&self) -> &WorkBudget {
        &self.budget
    }

    /// Notes a fault of the request.
    pub fn add_error(&mut self, at: &FieldPath<'_>, code: FieldErrorCode, detail: Statement, hint: Statement) {
        self.push_error(FieldError::new(at, code, detail, hint));
    }

    /// A field that several parts of the job read is refused once.
    pub fn push_error(&mut self, error: FieldError) {
        if !self.errors.contains(&error) {
            self.errors.push(error);
        }
    }

    /// Notes what the validation library found about counts and list sizes.
    pub fn add_validation(&mut self, errors: &ValidationErrors) {
        errors_of_validation(errors, "#", &mut self.errors);
    }

    /// Whether a fault was noted at a place or within it, so that it need not be noted again.
    pub fn has_error_at(&self, at: &FieldPath<'_>) -> bool {
        let place = at.pointer();
        let is_within =
            |pointer: &str| pointer.strip_prefix(&place).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'));
        self.errors.iter().any(|error| is_within(&error.pointer))
    }

    /// Whether any fault was noted, so that the request will not be answered.
    pub fn has_errors(&self) -> bool {
        !self.errors.is_empty()
    }

    /// Takes over the faults of a noun that was read aside, and nothing else of it.
    pub fn append_errors(&mut self, aside: &mut Self) {
        self.errors.append(&mut aside.errors);
    }

    /// Reads a quantity; a fault is noted and gives `None`.
    pub fn parse<'a, K: QuantityField>(
        &mut self,
        at: &FieldPath<'_>,
        text: &'a K,
    ) -> Option<ParsedQuantity<'a, <K::Dimension as Dimension>::Si>> {
        text.read().map_err(|error| self.push_error(FieldError::of_text(at, error))).ok()
    }

    /// Reads a quantity that may be absent.
    pub fn parse_optional<K: QuantityField>(
        &mut self,
        at: &FieldPath<'_>,
        text: Option<&K>,
    ) -> Option<<K::Dimension as Dimension>::Si> {
        Some(self.parse(at, text?)?.si)
    }

    /// Reads a quantity, or takes a default and says so.
    pub fn parse_or_default<K: QuantityField>(
        &mut self,
        at: &FieldPath<'_>,
        text: Option<&K>,
        default: &'static str,
        reason: impl Into<Message>,
        source: Source,
    ) -> Option<<K::Dimension as Dimension>::Si> {
        if text.is_some() {
            return self.parse_optional(at, text);
        }
        self.add_assumption(at, default, reason, &[source]);
        parse::<K::Dimension>(default).ok().map(|written| written.si)
    }

    /// Takes a value as it is, or a default and says so.
    pub fn value_or_default<T>(
        &mut self,
        at: &FieldPath<'_>,
        value: Option<T>,
        default: (T, &'static str),
        reason: impl Into<Message>,
        source: Source,
    ) -> T {
        value.unwrap_or_else(|| {
            self.add_assumption(at, default.1, reason, &[source]);
            default.0
        })
    }

    /// Notes that a default was used; once, where several parts of the job take the same.
    pub fn add_assumption(
        &mut self,
        at: &FieldPath<'_>,
        value: impl Into<Cow<'static, str>>,
        reason: impl Into<Message>,
        sources: &[Source],
    ) {
        let assumed =
            Assumed { about: at.pointer(), value: value.into(), reason: reason.into(), source_ids: sources.to_vec() };
        if !self.assumed.contains(&assumed) {
            self.assumed.push(assumed);
        }
    }

    /// Ends the reading: the value if nothing was wrong.
    ///
    /// # Errors
    /// A [`InvalidRequest`] with every fault that was noted so far.
    pub fn finish<T>(&mut self, value: Option<T>) -> Result<T, InvalidRequest> {
        match value {
            Some(value) if self.errors.is_empty() => Ok(value),
            _ => Err(InvalidRequest { errors: take(&mut self.errors) }),
        }
    }

    /// Makes a statement about the job.
    pub fn add_finding(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// Adds cautions; each is said once.
    pub fn add_cautions(&mut self, codes: &[CautionCode]) {
        self.cautions.extend(codes);
    }

    /// Adds sources that the figures rest on.
    pub fn add_sources(&mut self, sources: &[Source]) {
        self.sources.extend(sources);
    }

    /// Names fields of a noun that this calculation does not need: those that were sent are listed as `unused`, and defaults
    /// taken for the others are no assumption of this report.
    pub fn mark_unneeded(&mut self, at: &FieldPath<'_>, fields: &[(&'static str, bool)]) {
        for (name, sent) in fields {
            let at = at.field(name);
            if *sent {
                self.mark_unused(&at);
            } else if self.assumed.iter().any(|assumed| assumed.about.ends_with(name)) {
                let pointer = at.pointer();
                self.assumed.retain(|assumed| assumed.about != pointer);
            }
        }
    }

    /// Lists a field that was sent as unused.
    pub fn mark_unused(&mut self, at: &FieldPath<'_>) {
        self.mark_unused_pointer(at.pointer());
    }

    /// Takes back that a field is not needed.
    pub fn mark_used(&mut self, at: &FieldPath<'_>) {
        let pointer = at.pointer();
        self.unused.retain(|unused| *unused != pointer);
    }

    /// Takes over what another report says, each thing once.
    pub fn merge(&mut self, findings: &[Finding], assumed: &[Assumed], cautions: &[Caution], basis: &Basis) {
        for finding in findings {
            if !self.findings.contains(finding) {
                self.findings.push(finding.clone());
            }
        }
        for assumed in assumed {
            if !self.assumed.contains(assumed) {
                self.assumed.push(assumed.clone());
            }
        }
        self.cautions.extend(cautions.iter().map(|caution| caution.code));
        self.sources.extend(basis.sources.iter().map(|source| source.id));
    }

    /// Lists a pointer as unused.
    pub fn mark_unused_pointer(&mut self, pointer: String) {
        if !self.unused.contains(&pointer) {
            self.unused.push(pointer);
        }
    }

    /// Closes the notes: the common parts of the report.
    pub fn into_parts(&mut self) -> ReportParts {
        let (mut findings, assumed) = (take(&mut self.findings), take(&mut self.assumed));
        let (cautions, mut sources) = (each_once(take(&mut self.cautions)), take(&mut self.sources));
        findings.sort_by_key(|finding| finding.level);
        sources.extend(findings.iter().flat_map(|finding| &finding.source_ids));
        sources.extend(assumed.iter().flat_map(|assumed| &assumed.source_ids));
        sources.extend(cautions.iter().flat_map(|caution| caution.sources()));
        ReportParts {
            findings,
            assumed,
            unused: take(&mut self.unused),
            cautions: cautions
                .into_iter()
                .map(|code| Caution { code, message: Message::description_of(code), source_ids: code.sources() })
                .collect(),
            basis: Basis {
                engine: ENGINE,
                sources: each_once(sources)
                    .into_iter()
                    .map(|id| SourceEntry {
                        id,
                        label: Message::label_of(id),
                        description: Message::description_of(id),
                    })
                    .collect(),
            },
        }
    }
}

/// The members of a list in their order, each once.
fn each_once<T: Ord>(mut members: Vec<T>) -> Vec<T> {
    members.sort_unstable();
    members.dedup();
    members
}
