//! Finds every fault of the structure of a body at once.
//!
//! A body that cannot be decoded is read once more, by the same types. What fits no type is noted, and a stand-in of the type is
//! decoded in its place, so that reading goes on: no list of fields is kept beside the types. The rules are those of
//! [`crate::api::strict`]. The text is read level by level and nothing of it is kept.

use std::collections::HashSet;
use std::fmt;

use serde::de::value::{MapDeserializer, SeqDeserializer};
use serde::de::{
    Deserialize, DeserializeSeed, Deserializer, Error, Expected, IgnoredAny, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, Visitor,
};
use serde_json::value::RawValue;

use super::fault::StructureFault;
use super::names::{FieldNames, SentName};
use super::notes::{CollectedFaults, FaultNotes, JsonPlace};
use crate::api::json_limits::JsonLimits;
use crate::api::strict::{MAX_EXACT_INTEGER, is_absent};

/// Reads a body as a request, with stand-ins for what is wrong. The request is `None` where no stand-in would do.
pub fn collect_faults<T: for<'de> Deserialize<'de>>(json: &str, limits: JsonLimits) -> (Option<T>, CollectedFaults) {
    let notes = FaultNotes::within(limits);
    let root = CollectingDeserializer { node: JsonNode::Sent(json.trim()), at: JsonPlace::body(), notes: &notes };
    let request = T::deserialize(root).ok();
    (request, notes.into_faults())
}

/// What is decoded at a place.
#[derive(Clone, Copy)]
enum JsonNode<'de> {
    /// A JSON text without white space around it.
    Sent(&'de str),
    /// Nothing: the field of this name was not sent.
    Missing(&'static str),
    /// Whatever fits, for what was sent does not.
    StandIn,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum JsonKind {
    Null,
    Bool,
    Number,
    Text,
    Array,
    Object,
}

impl JsonKind {
    fn of(json: &str) -> Self {
        match json.as_bytes().first() {
            Some(b'n') => Self::Null,
            Some(b't' | b'f') => Self::Bool,
            Some(b'"') => Self::Text,
            Some(b'[') => Self::Array,
            Some(b'{') => Self::Object,
            _ => Self::Number,
        }
    }

    /// The code of the type in messages.
    fn code(self) -> &'static str {
        match self {
            Self::Null => "other",
            Self::Bool => "truth_value",
            Self::Number => "number",
            Self::Text => "text",
            Self::Array => "array",
            Self::Object => "object",
        }
    }
}

/// Decodes one value, or a stand-in for it.
#[derive(Clone)]
struct CollectingDeserializer<'de, 'n> {
    node: JsonNode<'de>,
    at: JsonPlace,
    notes: &'n FaultNotes,
}

impl<'de> CollectingDeserializer<'de, '_> {
    fn note(&self, fault: &StructureFault<'_>) {
        self.notes.add(&self.at, fault);
    }

    /// The JSON text, if it is of one of these kinds; what it is otherwise is noted.
    fn expect(&self, kinds: &[JsonKind], expected: &dyn Expected) -> Option<&'de str> {
        let json = match self.node {
            JsonNode::Sent(json) => json,
            JsonNode::Missing(name) => {
                self.note(&StructureFault::MissingField(name));
                return None;
            }
            JsonNode::StandIn => return None,
        };
        let kind = JsonKind::of(json);
        if kinds.contains(&kind) {
            return Some(json);
        }
        match kind {
            JsonKind::Null => self.note(&StructureFault::Null),
            kind => self.note(&StructureFault::WrongType { sent: kind.code(), expected }),
        }
        None
    }

    /// The whole number that was sent, if it fits; `3.0` is one.
    fn integer<I: TryFrom<i128>>(&self, expected: &dyn Expected) -> Option<i128> {
        let json = self.expect(&[JsonKind::Number], expected)?;
        let is_plain = !json.contains(['.', 'e', 'E']);
        let written = json.parse::<i128>().ok().filter(|_| is_plain);
        let float = json.parse::<f64>().unwrap_or_default();
        let value = match written.filter(|value| i64::try_from(*value).is_ok() || u64::try_from(*value).is_ok()) {
            Some(value) => value,
            None if float.fract() != 0.0 => {
                self.note(&StructureFault::WrongType { sent: JsonKind::Number.code(), expected });
                return None;
            }
            None if float.abs() >= MAX_EXACT_INTEGER => {
                self.note(&StructureFault::NoSuchInteger(Unexpected::Float(float)));
                return None;
            }
            None => float as i128,
        };
        if I::try_from(value).is_err() {
            let sent = i64::try_from(value).map_or(Unexpected::Unsigned(value as u64), Unexpected::Signed);
            self.note(&StructureFault::NoSuchInteger(sent));
            return None;
        }
        Some(value)
    }
}

macro_rules! scalar {
    ($($method:ident: $kinds:expr, else $visit:ident($stand_in:expr);)+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
            match self.expect($kinds, &visitor) {
                Some(json) => serde_json::Deserializer::from_str(json).$method(visitor),
                None => visitor.$visit($stand_in),
            }
        })+
    };
}

macro_rules! integer {
    ($($method:ident: $type:ty;)+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
            let value = self.integer::<$type>(&visitor).unwrap_or(1);
            match u64::try_from(value) {
                Ok(value) => visitor.visit_u64(value),
                Err(_) => visitor.visit_i64(value as i64),
            }
        })+
    };
}

impl<'de> Deserializer<'de> for CollectingDeserializer<'de, '_> {
    type Error = serde_json::Error;

    scalar! {
        // Only texts of quantities take any value, and of those text and numbers.
        deserialize_any: &[JsonKind::Text, JsonKind::Number], else visit_str("");
        deserialize_str: &[JsonKind::Text], else visit_str("");
        deserialize_string: &[JsonKind::Text], else visit_str("");
        deserialize_bool: &[JsonKind::Bool], else visit_bool(false);
        deserialize_f32: &[JsonKind::Number], else visit_f32(1.0);
        deserialize_f64: &[JsonKind::Number], else visit_f64(1.0);
    }

    integer! {
        deserialize_i8: i8; deserialize_i16: i16; deserialize_i32: i32; deserialize_i64: i64;
        deserialize_u8: u8; deserialize_u16: u16; deserialize_u32: u32; deserialize_u64: u64;
    }

    serde::forward_to_deserialize_any! {
        char bytes byte_buf unit unit_struct tuple tuple_struct identifier
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
        visitor.visit_unit()
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
        match self.node {
            JsonNode::Sent(json) if !is_absent(json) => visitor.visit_some(self),
            _ => visitor.visit_none(),
        }
    }

    /// A newtype is what it holds; a raw text is taken as it is.
    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Self::Error> {
        if !name.starts_with('$') {
            return visitor.visit_newtype_struct(self);
        }
        let json = match self.node {
            JsonNode::Sent(json) => json,
            _ => self.expect(&[], &visitor).unwrap_or("null"),
        };
        serde_json::Deserializer::from_str(json).deserialize_newtype_struct(name, visitor)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
        match self.expect(&[JsonKind::Array], &visitor) {
            Some(json) => {
                let reader = NestedVisitor { inner: visitor, fields: None, value: self };
                serde_json::Deserializer::from_str(json).deserialize_seq(reader)
            }
            None => visitor.visit_seq(SeqDeserializer::new(std::iter::empty::<Self>())),
        }
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Self::Error> {
        match self.expect(&[JsonKind::Object], &visitor) {
            Some(json) => {
                let reader = NestedVisitor { inner: visitor, fields: None, value: self };
                serde_json::Deserializer::from_str(json).deserialize_map(reader)
            }
            None => visitor.visit_map(MapDeserializer::new(std::iter::empty::<(&str, Self)>())),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Self::Error> {
        if let Some(json) = self.expect(&[JsonKind::Object], &visitor) {
            let reader = NestedVisitor { inner: visitor, fields: Some(fields), value: self };
            return serde_json::Deserializer::from_str(json).deserialize_map(reader);
        }
        let stand_in = Self { node: JsonNode::StandIn, ..self };
        visitor.visit_map(MapDeserializer::new(fields.iter().map(|name| (*name, stand_in.clone()))))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Self::Error> {
        let sent = self.expect(&[JsonKind::Text], &visitor).map(serde_json::from_str::<String>).transpose()?;
        let member = sent.as_deref().and_then(|value| variants.iter().find(|known| **known == value));
        if let (Some(value), None) = (&sent, member) {
            self.note(&StructureFault::UnknownValue { value, known: variants });
        }
        match member.or(variants.first()) {
            Some(member) => visitor.visit_enum((*member).into_deserializer()),
            None => Err(Error::custom("a list without members")),
        }
    }
}

impl<'de> IntoDeserializer<'de, serde_json::Error> for CollectingDeserializer<'de, '_> {
    type Deserializer = Self;

    fn into_deserializer(self) -> Self {
        self
    }
}

/// Reads the items of a list, the entries of a map, or the fields of an object where they are known.
struct NestedVisitor<'de, 'n, V> {
    inner: V,
    fields: Option<&'static [&'static str]>,
    value: CollectingDeserializer<'de, 'n>,
}

impl<'de, V: Visitor<'de>> Visitor<'de> for NestedVisitor<'de, '_, V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.inner.expecting(f)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, items: A) -> Result<V::Value, A::Error> {
        self.inner.visit_seq(CollectingSeq { inner: items, value: self.value, count: 0 })
    }

    fn visit_map<A: MapAccess<'de>>(self, entries: A) -> Result<V::Value, A::Error> {
        let names = match (self.fields, self.value.node) {
            (Some(fields), JsonNode::Sent(json)) => FieldNames::of(json, fields),
            _ => FieldNames::Any(HashSet::new()),
        };
        self.inner.visit_map(CollectingMap { inner: entries, value: self.value, names, next: None, is_ended: false })
    }
}

/// The items of a list, up to the most that any may have.
struct CollectingSeq<'de, 'n, A> {
    inner: A,
    value: CollectingDeserializer<'de, 'n>,
    count: usize,
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for CollectingSeq<'de, '_, A> {
    type Error = A::Error;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, A::Error> {
        let Some(item) = self.inner.next_element::<&RawValue>()? else { return Ok(None) };
        let (notes, at) = (self.value.notes, self.value.at.item(self.count));
        if self.count == notes.limits.items {
            self.value.note(&StructureFault::TooManyItems(notes.limits));
            while self.inner.next_element::<IgnoredAny>()?.is_some() {}
            return Ok(None);
        }
        self.count += 1;
        let item = CollectingDeserializer { node: JsonNode::Sent(item.get()), at, notes };
        seed.deserialize(item).map(Some).map_err(A::Error::custom)
    }
}

/// The entries of an object: those that it has, then the fields of its type that it lacks.
struct CollectingMap<'de, 'n, A> {
    inner: A,
    value: CollectingDeserializer<'de, 'n>,
    names: FieldNames,
    /// Where the value behind the name that was read is, and which field it lacks.
    next: Option<(JsonPlace, Option<&'static str>)>,
    is_ended: bool,
}

impl<'de, A: MapAccess<'de>> CollectingMap<'de, '_, A> {
    /// The name under which an entry is read, if it is. What is wrong with it is noted; a misspelt one is read as what was meant.
    fn name_of(&mut self, sent: &str) -> Option<String> {
        let (notes, at) = (self.value.notes, &self.value.at);
        let here = at.member(sent, sent);
        let may_guess = !notes.is_full();
        match self.names.take(sent, may_guess) {
            SentName::Sound => {
                self.next = Some((here, None));
                Some(sent.to_owned())
            }
            SentName::Again => {
                notes.add(&here, &StructureFault::DuplicateField(sent));
                None
            }
            SentName::Unknown { known, meant } => {
                notes.add(&here, &StructureFault::UnknownField { name: sent, known });
                let place = at.member(meant?, sent);
                notes.add_renamed(&place);
                self.next = Some((place, None));
                meant.map(str::to_owned)
            }
        }
    }

    /// The next field of the type that was not sent.
    fn next_missing(&mut self) -> Option<&'static str> {
        let name = self.names.next_missing()?;
        self.next = Some((self.value.at.member(name, name), Some(name)));
        Some(name)
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for CollectingMap<'de, '_, A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        while !self.is_ended {
            match self.inner.next_key::<String>()? {
                Some(sent) => match self.name_of(&sent) {
                    Some(name) => return seed.deserialize(name.into_deserializer()).map(Some),
                    None => drop(self.inner.next_value::<IgnoredAny>()?),
                },
                None => self.is_ended = true,
            }
        }
        self.next_missing().map(|name| seed.deserialize(name.into_deserializer())).transpose()
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, A::Error> {
        let Some((at, lacking)) = self.next.take() else { return Err(Error::custom("a value without its name")) };
        let node = match lacking {
            Some(name) => JsonNode::Missing(name),
            None => JsonNode::Sent(self.inner.next_value::<&RawValue>()?.get()),
        };
        let value = CollectingDeserializer { node, at, notes: self.value.notes };
        seed.deserialize(value).map_err(A::Error::custom)
    }
}
