//! The names in an object: which were sent, which were read, and what a misspelt one was meant to be.

use std::collections::HashSet;
use std::fmt;

use serde::de::{Deserializer, IgnoredAny, MapAccess, Visitor};

use super::fault::nearest;

/// The names that an object may have, and which of them were sent or read.
pub enum FieldNames {
    /// Those of a type.
    Known {
        /// All of them.
        fields: &'static [&'static str],
        /// Which of them the object has.
        is_sent: Vec<bool>,
        /// Which of them were read already.
        is_read: Vec<bool>,
    },
    /// Any, each once.
    Any(HashSet<String>),
}

/// What is made of a name that was sent.
pub enum SentName {
    /// It is read as it is.
    Sound,
    /// It stands there already.
    Again,
    /// The type does not have it.
    Unknown {
        /// The names that the type has.
        known: &'static [&'static str],
        /// The field that it was meant to be: the one that it resembles, where that was not sent.
        meant: Option<&'static str>,
    },
}

impl FieldNames {
    /// The names of a type, for an object as JSON text.
    pub fn of(json: &str, fields: &'static [&'static str]) -> Self {
        let mut is_sent = vec![false; fields.len()];
        let names = SentFields { fields, is_sent: &mut is_sent };
        // Its syntax was checked before.
        let _ = serde_json::Deserializer::from_str(json).deserialize_map(names);
        Self::Known { fields, is_read: vec![false; fields.len()], is_sent }
    }

    /// Takes the next name of the object; whether it may be read as another is for the caller to say.
    pub fn take(&mut self, sent: &str, may_guess: bool) -> SentName {
        let (fields, is_sent, is_read) = match self {
            Self::Any(read) => {
                return if read.insert(sent.to_owned()) { SentName::Sound } else { SentName::Again };
            }
            Self::Known { fields, is_sent, is_read } => (*fields, is_sent, is_read),
        };
        let place = |name: &str| fields.iter().position(|known| *known == name);
        if let Some(index) = place(sent) {
            return if std::mem::replace(&mut is_read[index], true) { SentName::Again } else { SentName::Sound };
        }
        let meant = if may_guess { nearest(sent, fields).and_then(place) } else { None };
        let meant = meant.filter(|index| !is_sent[*index] && !std::mem::replace(&mut is_read[*index], true));
        SentName::Unknown { known: fields, meant: meant.map(|index| fields[index]) }
    }

    /// The next field of the type that was not sent.
    pub fn next_missing(&mut self) -> Option<&'static str> {
        let Self::Known { fields, is_read, .. } = self else { return None };
        let index = is_read.iter().position(|is_read| !is_read)?;
        is_read[index] = true;
        Some(fields[index])
    }
}

/// Notes which fields of a type an object has.
struct SentFields<'a> {
    fields: &'static [&'static str],
    is_sent: &'a mut [bool],
}

impl<'de> Visitor<'de> for SentFields<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<(), A::Error> {
        while let Some((name, _)) = entries.next_entry::<String, IgnoredAny>()? {
            if let Some(index) = self.fields.iter().position(|known| *known == name) {
                self.is_sent[index] = true;
            }
        }
        Ok(())
    }
}
