//! What a report holds where a person reads a sentence: the statement, and its words once they are said.

use std::borrow::Cow;
use std::fmt;

use serde::{Serialize, Serializer};

use super::statement::Statement;

/// A sentence of a report. A calculation makes it of a [`Statement`]; [`crate::wording`] adds the words before anybody reads it.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    statement: Statement,
    words: Option<Cow<'static, str>>,
}

impl Message {
    /// What is said.
    pub fn statement(&self) -> &Statement {
        &self.statement
    }

    /// Whether it can be read.
    pub fn has_words(&self) -> bool {
        self.words.is_some()
    }

    /// Adds the words.
    pub fn set_words(&mut self, words: Cow<'static, str>) {
        self.words = Some(words);
    }

    /// The words. Whoever reads them before they are said reads the id, which is a mistake of ours.
    pub fn words(&self) -> &str {
        debug_assert!(self.words.is_some(), "the report with {:?} was not worded", self.statement);
        self.words.as_deref().unwrap_or(self.statement.id())
    }
}

impl From<Statement> for Message {
    fn from(statement: Statement) -> Self {
        Self { statement, words: None }
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
