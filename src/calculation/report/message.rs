//! What a report holds where a person reads a sentence: the statement, and its words once they are said.

use std::borrow::Cow;
use std::fmt;

use serde::{Serialize, Serializer};

use super::param::Param;
use super::statement::{MemberFact, Statement};
use crate::vocabulary::Vocabulary;

/// What a person reads in a report. A calculation says what is meant; [`crate::wording`] adds the words before anybody reads it.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    meaning: Meaning,
    words: Option<Cow<'static, str>>,
}

/// What words stand for.
#[derive(Clone, Debug, PartialEq)]
pub enum Meaning {
    /// A sentence.
    Sentence(Statement),
    /// A value as a request holds it: the same in every language.
    Value(Statement),
    /// The short name of a member of a closed list.
    Label(MemberFact),
    /// What a member of a closed list means, in a sentence.
    Description(MemberFact),
}

impl Message {
    /// The short name of a member of a closed list.
    pub fn label_of(member: impl Vocabulary) -> Self {
        Self { meaning: Meaning::Label(MemberFact::of(member)), words: None }
    }

    /// What a member of a closed list means.
    pub fn description_of(member: impl Vocabulary) -> Self {
        Self { meaning: Meaning::Description(MemberFact::of(member)), words: None }
    }

    /// A value as a request holds it, which reads the same in every language.
    pub fn value(statement: Statement) -> Self {
        Self { meaning: Meaning::Value(statement), words: None }
    }

    /// What is meant.
    pub fn meaning(&self) -> &Meaning {
        &self.meaning
    }

    /// The facts of its sentence, for programs that have their own words.
    pub fn params(&self) -> Vec<Param> {
        match &self.meaning {
            Meaning::Sentence(statement) | Meaning::Value(statement) => Param::of(&[statement]),
            Meaning::Label(_) | Meaning::Description(_) => Vec::new(),
        }
    }

    /// Whether it can be read.
    pub fn has_words(&self) -> bool {
        self.words.is_some()
    }

    /// Adds the words.
    pub fn set_words(&mut self, words: Cow<'static, str>) {
        self.words = Some(words);
    }

    /// The words. Whoever reads them before they are said reads an id, which is a mistake of ours.
    pub fn words(&self) -> &str {
        debug_assert!(self.words.is_some(), "the report with {:?} was not worded", self.meaning);
        self.words.as_deref().unwrap_or(match &self.meaning {
            Meaning::Sentence(statement) | Meaning::Value(statement) => statement.id(),
            Meaning::Label(member) | Meaning::Description(member) => member.code,
        })
    }
}

impl From<Statement> for Message {
    fn from(statement: Statement) -> Self {
        Self { meaning: Meaning::Sentence(statement), words: None }
    }
}

impl fmt::Display for Message {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl Serialize for Message {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.words())
    }
}

/// Something that holds sentences: a report, or a part of one. `has_messages` implements it by the names of the fields.
pub trait HasMessages {
    /// Calls `visit` with each sentence, each once.
    fn each_message(&mut self, visit: &mut dyn FnMut(&mut Message));
}

impl HasMessages for Message {
    fn each_message(&mut self, visit: &mut dyn FnMut(&mut Message)) {
        visit(self);
    }
}

impl<T: HasMessages> HasMessages for Option<T> {
    fn each_message(&mut self, visit: &mut dyn FnMut(&mut Message)) {
        if let Some(inner) = self {
            inner.each_message(visit);
        }
    }
}

impl<T: HasMessages> HasMessages for Vec<T> {
    fn each_message(&mut self, visit: &mut dyn FnMut(&mut Message)) {
        for item in self {
            item.each_message(visit);
        }
    }
}

/// Says which fields of a type hold sentences: `has_messages!(Finding: message);`.
macro_rules! has_messages {
    ($($name:ty: $($field:ident),+;)+) => {$(
        impl $crate::calculation::report::HasMessages for $name {
            fn each_message(&mut self, visit: &mut dyn FnMut(&mut $crate::calculation::report::Message)) {
                $($crate::calculation::report::HasMessages::each_message(&mut self.$field, visit);)+
            }
        }
    )+};
}
pub(crate) use has_messages;
