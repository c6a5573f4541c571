//! Strict JSON: accepts exactly what the published description calls an object, an integer or an optional field.
//!
//! Derived deserializers differ from the description: they accept an array for an object, field by field, and refuse `3.0` for an
//! integer, which JSON Schema counts as one. [`StrictDeserializer`] wraps a deserializer and all nested ones to correct that, and
//! stops at an array that is too long. It costs nothing for valid requests.
//!
//! In an optional field `null`, `""` and `[]` count as absent: many generated clients send them for what nobody filled in. Items of
//! lists and entries of maps are no optional fields.

use std::fmt;

use serde::de::{
    self, Deserialize, DeserializeSeed, Deserializer, EnumAccess, Error, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, Visitor,
};
use serde_json::value::RawValue;

/// The error message for a `null` where a value belongs. What callers are told is found by [`super::structure`].
const NULL_NOT_ALLOWED: &str = "null stands where a value belongs";
/// The error message for an array of too many items.
const TOO_MANY_ITEMS: &str = "more items than are taken";

/// A strict deserializer of JSON text, with what it keeps to.
pub struct StrictDeserializer<D>(pub D, pub StrictRules);

/// What a strict deserializer keeps to.
#[derive(Clone, Copy)]
pub struct StrictRules {
    max_items: usize,
    may_hold_absent: bool,
}

impl StrictRules {
    /// The rules for a body, with the most items of any one array in it.
    pub fn for_body(body: &[u8], max_items: usize) -> Self {
        Self { max_items, may_hold_absent: may_hold_absent(body) }
    }
}

/// Whether a body may hold `null`, `""` or `[]`. Only then is each optional value looked at before it is read.
#[expect(clippy::needless_bitwise_bool, reason = "with lazy operators the compiler compares byte by byte")]
fn may_hold_absent(body: &[u8]) -> bool {
    // All pairs are looked at, for then the compiler compares many at once.
    let holds =
        |first, second| body.windows(2).fold(false, |found, pair| found | ((pair[0] == first) & (pair[1] == second)));
    holds(b'"', b'"')
        || holds(b'n', b'u') && body.windows(4).any(|part| part == b"null")
        || body.split(|byte| *byte == b'[').skip(1).any(|rest| rest.trim_ascii_start().starts_with(b"]"))
}

/// Whether a JSON text is `null`, `""` or `[]`.
pub fn is_absent(json: &str) -> bool {
    matches!(json, "null" | "\"\"")
        || json.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')).is_some_and(|inner| inner.trim().is_empty())
}

/// The visitor that makes the deserializers of nested values strict.
struct StrictVisitor<V>(V, StrictRules);

/// The visitor of an optional value that was sent.
struct OptionalVisitor<V>(V, StrictRules);

/// The visitor of an integer, which may be written `3.0`.
struct IntegerVisitor<V>(V);

/// The visitor of a member of a closed list.
struct EnumVisitor<V>(V);

macro_rules! forward {
    ($($method:ident)+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(StrictVisitor(visitor, self.1))
        })+
    };
}

macro_rules! forward_integer {
    ($($method:ident)+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(IntegerVisitor(visitor))
        })+
    };
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for StrictDeserializer<D> {
    type Error = D::Error;

    forward! {
        deserialize_any deserialize_bool deserialize_f32 deserialize_f64 deserialize_char deserialize_str deserialize_string
        deserialize_bytes deserialize_byte_buf deserialize_unit deserialize_seq deserialize_map deserialize_identifier
        deserialize_ignored_any
    }

    forward_integer! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32
        deserialize_u64
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
        if !self.1.may_hold_absent {
            return self.0.deserialize_option(OptionalVisitor(visitor, self.1));
        }
        let json = <&RawValue>::deserialize(self.0)?.get();
        if is_absent(json) {
            return visitor.visit_none();
        }
        let mut value = serde_json::Deserializer::from_str(json);
        visitor.visit_some(StrictDeserializer(&mut value, self.1)).map_err(D::Error::custom)
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_unit_struct(name, StrictVisitor(visitor, self.1))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, StrictVisitor(visitor, self.1))
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple(len, StrictVisitor(visitor, self.1))
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        len: usize,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple_struct(name, len, StrictVisitor(visitor, self.1))
    }

    /// A struct is an object and nothing else.
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(StrictVisitor(visitor, self.1))
    }

    /// The enums of requests are closed lists, so a member is text and nothing else.
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_str(EnumVisitor(visitor))
    }
}

macro_rules! visit {
    ($($method:ident: $type:ty)+) => {
        $(fn $method<E: de::Error>(self, value: $type) -> Result<V::Value, E> {
            self.0.$method(value)
        })+
    };
}

impl<'de, V: Visitor<'de>> Visitor<'de> for StrictVisitor<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    visit! {
        visit_bool: bool visit_i64: i64 visit_u64: u64 visit_f64: f64 visit_str: &str visit_string: String
    }

    fn visit_borrowed_str<E: de::Error>(self, value: &'de str) -> Result<V::Value, E> {
        self.0.visit_borrowed_str(value)
    }

    fn visit_unit<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL_NOT_ALLOWED))
    }

    fn visit_none<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL_NOT_ALLOWED))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, deserializer: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(StrictDeserializer(deserializer, self.1))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, items: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(StrictSeq { inner: items, rules: self.1, count: 0 })
    }

    fn visit_map<A: MapAccess<'de>>(self, entries: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(StrictMap(entries, self.1))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, data: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(data)
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for OptionalVisitor<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(StrictDeserializer(deserializer, self.1))
    }
}

/// Every whole number below this is exact in binary floating point.
pub const MAX_EXACT_INTEGER: f64 = 9_007_199_254_740_992.0;

impl<'de, V: Visitor<'de>> Visitor<'de> for IntegerVisitor<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    visit! { visit_i64: i64 visit_u64: u64 }

    fn visit_f64<E: de::Error>(self, value: f64) -> Result<V::Value, E> {
        if value.fract() != 0.0 {
            Err(E::invalid_type(Unexpected::Float(value), &self))
        } else if value.abs() < MAX_EXACT_INTEGER {
            self.0.visit_i64(value as i64)
        } else {
            Err(E::invalid_value(Unexpected::Float(value), &self))
        }
    }

    fn visit_unit<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL_NOT_ALLOWED))
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for EnumVisitor<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_str<E: de::Error>(self, value: &str) -> Result<V::Value, E> {
        self.0.visit_enum(value.into_deserializer())
    }

    fn visit_unit<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL_NOT_ALLOWED))
    }
}

/// The items of an array, each with a strict deserializer.
struct StrictSeq<A> {
    inner: A,
    rules: StrictRules,
    count: usize,
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for StrictSeq<A> {
    type Error = A::Error;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, A::Error> {
        let item = self.inner.next_element_seed(StrictSeed(seed, self.rules))?;
        self.count += usize::from(item.is_some());
        if self.count > self.rules.max_items { Err(de::Error::custom(TOO_MANY_ITEMS)) } else { Ok(item) }
    }

    fn size_hint(&self) -> Option<usize> {
        self.inner.size_hint()
    }
}

/// The entries of an object, each value with a strict deserializer.
struct StrictMap<A>(A, StrictRules);

impl<'de, A: MapAccess<'de>> MapAccess<'de> for StrictMap<A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        self.0.next_key_seed(seed)
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, A::Error> {
        self.0.next_value_seed(StrictSeed(seed, self.1))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

struct StrictSeed<T>(T, StrictRules);

impl<'de, T: DeserializeSeed<'de>> DeserializeSeed<'de> for StrictSeed<T> {
    type Value = T::Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<T::Value, D::Error> {
        self.0.deserialize(StrictDeserializer(deserializer, self.1))
    }
}
