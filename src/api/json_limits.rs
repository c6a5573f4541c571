//! How much structure a JSON body may have, and how deep one is.

use std::fmt;

use serde::de::{self, Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

/// How much structure a body may have, whatever the lists of its fields allow.
#[derive(Clone, Copy, Debug)]
pub struct JsonLimits {
    /// The most objects and arrays within each other.
    pub depth: usize,
    /// The most items of one array.
    pub items: usize,
}

/// How many objects and arrays of a JSON text are within each other; nothing else of the text is stored.
pub struct NestingDepth(pub usize);

impl<'de> Deserialize<'de> for NestingDepth {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(NestingVisitor)
    }
}

struct NestingVisitor;

macro_rules! scalar {
    ($($method:ident: $type:ty)+) => {
        $(fn $method<E: de::Error>(self, _: $type) -> Result<NestingDepth, E> {
            Ok(NestingDepth(0))
        })+
    };
}

impl<'de> Visitor<'de> for NestingVisitor {
    type Value = NestingDepth;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any value")
    }

    scalar! { visit_bool: bool visit_i64: i64 visit_u64: u64 visit_f64: f64 visit_str: &str }

    fn visit_unit<E: de::Error>(self) -> Result<NestingDepth, E> {
        Ok(NestingDepth(0))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<NestingDepth, A::Error> {
        let mut deepest = 0;
        while let Some(NestingDepth(depth)) = items.next_element()? {
            deepest = deepest.max(depth);
        }
        Ok(NestingDepth(1 + deepest))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<NestingDepth, A::Error> {
        let mut deepest = 0;
        // A name is a text, of depth 0.
        while let Some((NestingDepth(_), NestingDepth(depth))) = members.next_entry()? {
            deepest = deepest.max(depth);
        }
        Ok(NestingDepth(1 + deepest))
    }
}
