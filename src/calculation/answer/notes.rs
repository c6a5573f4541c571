//! What a calculation says beside its numbers; gathered here so that no room repeats it.

use std::borrow::Cow;
use std::collections::BTreeSet;

use validator::ValidationErrors;

use super::At;
use super::parts::{Assumed, Basis, Caution, Finding, SourceEntry};
use super::refusal::{Fault, FaultCode, Refusal, faults_of_validation};
use crate::practice::Vocabulary;
use crate::practice::cautions::CautionCode;
use crate::practice::sources::Source;
use crate::quantity::{Dimension, Kind, Written, parse};

/// The release that computes: part of every report.
pub const ENGINE: &str = env!("CARGO_PKG_VERSION");

/// Gathers faults while a request is read, then findings, defaults used, cautions and sources while it is answered.
#[derive(Default)]
pub struct Notes {
    faults: Vec<Fault>,
    findings: Vec<Finding>,
    assumed: Vec<Assumed>,
    unused: Vec<String>,
    cautions: BTreeSet<CautionCode>,
    sources: BTreeSet<Source>,
}

/// The common parts of a report, ready to be moved into it.
pub struct Closing {
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

impl Notes {
    /// Notes a fault of the request.
    pub fn fault(&mut self, at: &At<'_>, code: FaultCode, detail: impl Into<String>, hint: impl Into<String>) {
        self.refuse(Fault::new(at, code, detail, hint));
    }

    /// A field that several parts of the job read is refused once.
    pub fn refuse(&mut self, fault: Fault) {
        if !self.faults.contains(&fault) {
            self.faults.push(fault);
        }
    }

    /// Notes what the validation library found about counts and list sizes.
    pub fn add_validation(&mut self, errors: &ValidationErrors) {
        faults_of_validation(errors, "#", &mut self.faults);
    }

    /// Whether a fault was noted at a place or within it, so that it need not be noted again.
    pub fn is_faulty(&self, at: &At<'_>) -> bool {
        let place = at.pointer();
        let is_within =
            |pointer: &str| pointer.strip_prefix(&place).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'));
        self.faults.iter().any(|fault| is_within(&fault.pointer))
    }

    /// Takes over the faults of a noun that was read aside, and nothing else of it.
    pub fn take_faults(&mut self, aside: &mut Self) {
        self.faults.append(&mut aside.faults);
    }

    /// Reads a quantity; a fault is noted and gives `None`.
    pub fn read<'a, K: Kind>(
        &mut self,
        at: &At<'_>,
        text: &'a K,
    ) -> Option<Written<'a, <K::Dimension as Dimension>::Si>> {
        text.read().map_err(|fault| self.refuse(Fault::of_text(at, fault))).ok()
    }

    /// Reads a quantity that may be absent.
    pub fn read_optional<K: Kind>(&mut self, at: &At<'_>, text: Option<&K>) -> Option<<K::Dimension as Dimension>::Si> {
        Some(self.read(at, text?)?.si)
    }

    /// Reads a quantity, or takes a default and says so.
    pub fn read_or<K: Kind>(
        &mut self,
        at: &At<'_>,
        text: Option<&K>,
        default: &'static str,
        reason: &'static str,
        source: Source,
    ) -> Option<<K::Dimension as Dimension>::Si> {
        if text.is_some() {
            return self.read_optional(at, text);
        }
        self.assume(at, default, reason, &[source]);
        parse::<K::Dimension>(default).ok().map(|written| written.si)
    }

    /// Takes a value as it is, or a default and says so.
    pub fn value_or<T>(
        &mut self,
        at: &At<'_>,
        value: Option<T>,
        default: (T, &'static str),
        reason: &'static str,
        source: Source,
    ) -> T {
        value.unwrap_or_else(|| {
            self.assume(at, default.1, reason, &[source]);
            default.0
        })
    }

    /// Notes that a default was used; once, where several parts of the job take the same.
    pub fn assume(
        &mut self,
        at: &At<'_>,
        value: impl Into<Cow<'static, str>>,
        reason: &'static str,
        sources: &[Source],
    ) {
        let assumed = Assumed { about: at.pointer(), value: value.into(), reason, source_ids: sources.to_vec() };
        if !self.assumed.contains(&assumed) {
            self.assumed.push(assumed);
        }
    }

    /// Ends the reading: the value if nothing was wrong.
    ///
    /// # Errors
    /// A [`Refusal`] with every fault that was noted so far.
    pub fn settle<T>(&mut self, value: Option<T>) -> Result<T, Refusal> {
        match value {
            Some(value) if self.faults.is_empty() => Ok(value),
            _ => Err(Refusal { faults: std::mem::take(&mut self.faults) }),
        }
    }

    /// Makes a statement about the job.
    pub fn find(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// Adds cautions; each is said once.
    pub fn caution(&mut self, codes: &[CautionCode]) {
        self.cautions.extend(codes);
    }

    /// Adds sources that the figures rest on.
    pub fn rest_on(&mut self, sources: &[Source]) {
        self.sources.extend(sources);
    }

    /// Names fields of a noun that this calculation does not need: those that were sent are listed as `unused`, and defaults
    /// taken for the others are no assumption of this report.
    pub fn not_needed(&mut self, at: &At<'_>, fields: &[(&'static str, bool)]) {
        for (name, sent) in fields {
            let at = at.field(name);
            if *sent {
                self.leave(&at);
            } else if self.assumed.iter().any(|assumed| assumed.about.ends_with(name)) {
                let pointer = at.pointer();
                self.assumed.retain(|assumed| assumed.about != pointer);
            }
        }
    }

    /// Lists a field that was sent as unused.
    pub fn leave(&mut self, at: &At<'_>) {
        self.leave_at(at.pointer());
    }

    /// Takes back that a field is not needed.
    pub fn needed(&mut self, at: &At<'_>) {
        let pointer = at.pointer();
        self.unused.retain(|unused| *unused != pointer);
    }

    /// Takes over what another report says, each thing once.
    pub fn adopt(&mut self, findings: &[Finding], assumed: &[Assumed], cautions: &[Caution], basis: &Basis) {
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
    pub fn leave_at(&mut self, pointer: String) {
        if !self.unused.contains(&pointer) {
            self.unused.push(pointer);
        }
    }

    /// Closes the notes: the common parts of the report.
    pub fn close(&mut self) -> Closing {
        let Self { mut findings, assumed, unused, cautions, mut sources, .. } = std::mem::take(self);
        findings.sort_by_key(|finding| finding.level);
        sources.extend(findings.iter().flat_map(|finding| &finding.source_ids));
        sources.extend(assumed.iter().flat_map(|assumed| &assumed.source_ids));
        sources.extend(cautions.iter().flat_map(|caution| caution.sources()));
        Closing {
            findings,
            assumed,
            unused,
            cautions: cautions
                .into_iter()
                .map(|code| Caution { code, message: code.description(), source_ids: code.sources().to_vec() })
                .collect(),
            basis: Basis {
                engine: ENGINE,
                sources: sources
                    .into_iter()
                    .map(|id| SourceEntry { id, label: id.label(), description: id.description() })
                    .collect(),
            },
        }
    }
}
