//! How deep a JSON text is, found by reading it to its end and keeping nothing.

use std::fmt;

use serde::de::{self, Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

/// How many objects and arrays are within each other.
pub struct Depth(pub usize);

impl<'de> Deserialize<'de> for Depth {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Levels)
    }
}

struct Levels;

macro_rules! flat {
    ($($method:ident: $type:ty)+) => {
        $(fn $method<E: de::Error>(self, _: $type) -> Result<Depth, E> {
            Ok(Depth(0))
        })+
    };
}

impl<'de> Visitor<'de> for Levels {
    type Value = Depth;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any value")
    }

    flat! { visit_bool: bool visit_i64: i64 visit_u64: u64 visit_f64: f64 visit_str: &str }

    fn visit_unit<E: de::Error>(self) -> Result<Depth, E> {
        Ok(Depth(0))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Depth, A::Error> {
        let mut deepest = 0;
        while let Some(Depth(depth)) = items.next_element()? {
            deepest = deepest.max(depth);
        }
        Ok(Depth(1 + deepest))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Depth, A::Error> {
        let mut deepest = 0;
        // Names are texts, and read as such.
        while let Some((Depth(_), Depth(depth))) = members.next_entry()? {
            deepest = deepest.max(depth);
        }
        Ok(Depth(1 + deepest))
    }
}
