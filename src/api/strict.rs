//! JSON taken at its word: what the published description calls an object, an integer or an optional field is just that.
//!
//! Derived deserializers are more generous than the description: they take an array for an object, field by field, and `null`
//! for an absent optional; and they refuse `3.0` for an integer, which JSON Schema counts as one. [`Strict`] wraps a
//! deserializer, and all nested ones, and closes those gaps; it also ends the reading of an array that is far too long. It costs
//! nothing on the good path.

use std::fmt;

use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, IntoDeserializer, MapAccess, SeqAccess, Unexpected, Visitor,
};

/// The error message for a `null` where a value belongs.
pub const NULL: &str = "null stands where a value belongs";
/// The error message for a `null` where an optional value may be absent.
pub const NULL_FOR_ABSENT: &str = "null stands for an absent value";

/// The error message for more items in an array than are taken.
pub const TOO_MANY: &str = "more items than are taken";

/// A deserializer that takes JSON at its word, and at most so many items of any one array.
pub struct Strict<D>(pub D, pub usize);

/// The visitor that carries the strictness into nested values.
struct Nested<V>(V, usize);

/// The visitor of an optional value that was sent.
struct Sent<V>(V, usize);

/// The visitor of an integer, which may be written `3.0`.
struct Whole<V>(V);

/// The visitor of a member of a closed list.
struct Member<V>(V);

macro_rules! forward {
    ($($method:ident)+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(Nested(visitor, self.1))
        })+
    };
}

macro_rules! forward_whole {
    ($($method:ident)+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(Whole(visitor))
        })+
    };
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Strict<D> {
    type Error = D::Error;

    forward! {
        deserialize_any deserialize_bool deserialize_f32 deserialize_f64 deserialize_char deserialize_str deserialize_string
        deserialize_bytes deserialize_byte_buf deserialize_unit deserialize_seq deserialize_map deserialize_identifier
        deserialize_ignored_any
    }

    forward_whole! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32
        deserialize_u64
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_option(Sent(visitor, self.1))
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_unit_struct(name, Nested(visitor, self.1))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, Nested(visitor, self.1))
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple(len, Nested(visitor, self.1))
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        len: usize,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple_struct(name, len, Nested(visitor, self.1))
    }

    /// A struct is an object and nothing else.
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(Nested(visitor, self.1))
    }

    /// The enums of requests are closed lists, so a member is text and nothing else.
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_str(Member(visitor))
    }
}

macro_rules! visit {
    ($($method:ident: $type:ty)+) => {
        $(fn $method<E: de::Error>(self, value: $type) -> Result<V::Value, E> {
            self.0.$method(value)
        })+
    };
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Nested<V> {
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
        Err(E::custom(NULL))
    }

    fn visit_none<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, deserializer: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(Strict(deserializer, self.1))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, items: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(Items { rest: items, most: self.1, taken: 0 })
    }

    fn visit_map<A: MapAccess<'de>>(self, entries: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(Entries(entries, self.1))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, data: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(data)
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Sent<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_none<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL_FOR_ABSENT))
    }

    fn visit_unit<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL_FOR_ABSENT))
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(Strict(deserializer, self.1))
    }
}

/// Below this every whole number is exact in binary floating point.
const EXACT: f64 = 9_007_199_254_740_992.0;

impl<'de, V: Visitor<'de>> Visitor<'de> for Whole<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    visit! { visit_i64: i64 visit_u64: u64 }

    fn visit_f64<E: de::Error>(self, value: f64) -> Result<V::Value, E> {
        if value.fract() != 0.0 {
            Err(E::invalid_type(Unexpected::Float(value), &self))
        } else if value.abs() < EXACT {
            self.0.visit_i64(value as i64)
        } else {
            Err(E::invalid_value(Unexpected::Float(value), &self))
        }
    }

    fn visit_unit<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL))
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Member<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_str<E: de::Error>(self, value: &str) -> Result<V::Value, E> {
        self.0.visit_enum(value.into_deserializer())
    }

    fn visit_unit<E: de::Error>(self) -> Result<V::Value, E> {
        Err(E::custom(NULL))
    }
}

/// The items of an array, each taken at its word.
struct Items<A> {
    rest: A,
    most: usize,
    taken: usize,
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Items<A> {
    type Error = A::Error;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, A::Error> {
        let item = self.rest.next_element_seed(Seed(seed, self.most))?;
        self.taken += usize::from(item.is_some());
        if self.taken > self.most { Err(de::Error::custom(TOO_MANY)) } else { Ok(item) }
    }

    fn size_hint(&self) -> Option<usize> {
        self.rest.size_hint()
    }
}

/// The entries of an object, each value taken at its word.
struct Entries<A>(A, usize);

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Entries<A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        self.0.next_key_seed(seed)
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, A::Error> {
        self.0.next_value_seed(Seed(seed, self.1))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

struct Seed<T>(T, usize);

impl<'de, T: DeserializeSeed<'de>> DeserializeSeed<'de> for Seed<T> {
    type Value = T::Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<T::Value, D::Error> {
        self.0.deserialize(Strict(deserializer, self.1))
    }
}
