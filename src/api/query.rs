//! The parameters of a query: those that an operation knows, each once, and all that is wrong with them.

use std::collections::BTreeMap;

use super::problem::MAX_ERRORS;
use super::structure::{StructureFault, child, nearest};
use crate::calculation::report::{FieldError, MAX_NAME_CHARS};
use crate::vocabulary::Vocabulary;

/// Parameters as they were sent, by name.
pub type SentParameters = BTreeMap<&'static str, String>;

/// What is done with parameters that an operation does not know.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum OtherParameters {
    /// Each is a fault.
    Refused,
    /// They say nothing.
    Ignored,
}

/// What is wrong with a query itself.
#[derive(Default)]
pub struct QueryFaults {
    /// The first faults, each with its parameter if it has a name.
    pub errors: Vec<FieldError>,
    /// How many there are.
    pub count: usize,
}

impl QueryFaults {
    /// Of those that no answer lists only the number is kept.
    pub fn add(&mut self, name: &str, fault: &StructureFault<'_>) {
        self.count += 1;
        if self.errors.len() < MAX_ERRORS {
            let name: String = name.chars().take(MAX_NAME_CHARS).collect();
            let error = fault.at(child("#", &name));
            let parameter = Some(name).filter(|name| !name.is_empty());
            self.errors.push(FieldError { parameter, ..error });
        }
    }

    /// The parameters that are known, each once.
    pub fn parameters(&mut self, query: &str, known: &[&'static str], others: OtherParameters) -> SentParameters {
        let mut sent = SentParameters::new();
        let pairs = || form_urlencoded::parse(query.as_bytes());
        for (name, value) in pairs() {
            match known.iter().find(|known| **known == name) {
                None if others == OtherParameters::Ignored => {}
                None => {
                    let may_guess = self.errors.len() < MAX_ERRORS;
                    self.add(&name, &StructureFault::UnknownField { name: &name, known });
                    // A misspelt one is read as the one that it resembles, where that was not sent.
                    let meant = if may_guess { nearest(&name, known) } else { None };
                    if let Some(meant) = meant.filter(|meant| pairs().all(|(other, _)| other != **meant)) {
                        sent.entry(meant).or_insert_with(|| value.into_owned());
                    }
                }
                Some(known) if sent.contains_key(known) => self.add(&name, &StructureFault::DuplicateField(&name)),
                Some(known) => drop(sent.insert(*known, value.into_owned())),
            }
        }
        sent
    }

    /// A member of a closed list; the default where none was sent.
    pub fn member<V: Vocabulary>(&mut self, name: &str, sent: &SentParameters, default: V) -> V {
        let Some(value) = sent.get(name).filter(|value| !value.is_empty()) else { return default };
        V::ALL.iter().copied().find(|member| member.code() == value).unwrap_or_else(|| {
            let known: Vec<_> = V::ALL.iter().map(|member| member.code()).collect();
            self.add(name, &StructureFault::UnknownValue { value, known: &known });
            default
        })
    }
}
