//! Values for the fields of a request, drawn by the published description and now and then against it.

use std::collections::HashMap;
use std::sync::LazyLock;

use serde_json::{Map, Value, json};

/// Text that has broken readers elsewhere, and quantities at an edge of the grammar.
const TRICKY: [&str; 28] = [
    "",
    " ",
    "0",
    "-0 ft",
    "0 in",
    "1e3 ft",
    "NaN m",
    "inf",
    "3/0 in",
    "1-1/4 in",
    "5'-6\"",
    "6 ft 6 in",
    "7,2 m",
    "1,200 mm",
    "7m20",
    "5 ft 6",
    "24½ pies",
    "1 h 30 min",
    "99999999999999999999999999999999999999 m",
    ".0000000000000000000000001 ft",
    "-40 °C",
    "1.5 mm²",
    "14 AWG",
    "0 AWG",
    "2026-03-08T02:30:00-05:00",
    "2026-02-29",
    "\u{0}\u{1b}<&\"'>",
    "\u{202e}𝕏\u{301}",
];

/// Numbers at an edge.
const NUMBERS: [f64; 14] = [
    0.0,
    -0.0,
    1.0,
    -1.0,
    0.5,
    3.0,
    20.0,
    100.0,
    255.0,
    336.0,
    1e-300,
    1e300,
    4_294_967_296.0,
    9_007_199_254_740_993.0,
];

/// A source of choices that a seed decides.
pub struct Draw(u64);

impl Draw {
    pub fn new(seed: u32) -> Self {
        Self(u64::from(seed))
    }

    /// The next of a sequence of 64 bits (Steele, Lea and Flood's `SplitMix`).
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    pub fn one_in(&mut self, count: usize) -> bool {
        self.below(count) == 0
    }

    pub fn of<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.below(list.len())]
    }

    /// From 0 to 1.
    fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Any leaf, whatever the description says.
    pub fn leaf(&mut self) -> Value {
        match self.below(8) {
            0 => Value::Null,
            1 => json!(self.one_in(2)),
            2 => json!([]),
            3 => json!({}),
            4..=5 => json!(self.of(&NUMBERS)),
            _ => json!(self.of(&TRICKY)),
        }
    }
}

/// The part of the description that a target's request is described by.
pub struct Schemas {
    root: Value,
}

static DESCRIPTION: LazyLock<Value> = LazyLock::new(|| {
    serde_json::from_str(include_str!("../../openapi/openapi.json")).expect("the description is JSON")
});

impl Schemas {
    /// Those of a target, read once.
    pub fn of(target: &str) -> &'static Self {
        static READ: LazyLock<HashMap<String, Schemas>> = LazyLock::new(|| {
            let paths = DESCRIPTION["paths"].as_object().expect("the description has paths");
            let request = |path: &Value| path.pointer("/post/requestBody/content/application~1json/schema").cloned();
            let name = |path: &str| match path.trim_start_matches("/v1/") {
                "installation-plan/batch" => "batch".to_owned(),
                name => name.to_owned(),
            };
            paths
                .iter()
                .filter_map(|(path, operations)| Some((name(path), Schemas { root: request(operations)? })))
                .collect()
        });
        &READ[target]
    }

    /// The schema of a place, if it is described.
    pub fn at(&self, place: &[String]) -> Option<&Value> {
        place.iter().try_fold(resolved(&self.root), |schema, step| match schema["type"].as_str() {
            Some("array") => Some(resolved(&schema["items"])),
            _ => schema["properties"].get(step).or_else(|| schema.get("additionalProperties")).map(resolved),
        })
    }

    /// A value that a schema allows, most times.
    pub fn value(&self, schema: &Value, draw: &mut Draw, depth: usize) -> Value {
        let schema = resolved(schema);
        if draw.one_in(12) {
            return draw.leaf();
        }
        if let Some(members) = schema["enum"].as_array() {
            return draw.of(members).clone();
        }
        match schema["type"].as_str() {
            Some("object") => self.object(schema, draw, depth),
            Some("array") => {
                let count = if draw.one_in(8) { draw.below(30) } else { 1 + draw.below(3) };
                (0..count).map(|_| self.value(&schema["items"], draw, depth + 1)).collect()
            }
            Some("boolean") => json!(draw.one_in(2)),
            Some("integer") => json!(number(schema, draw, 30.0).round() as i64),
            Some("number") => json!(number(schema, draw, 1000.0)),
            _ => json!(text(schema, draw)),
        }
    }

    /// The fields that are needed and some of the others, fewer the deeper they lie.
    fn object(&self, schema: &Value, draw: &mut Draw, depth: usize) -> Value {
        let needed =
            |name: &str| schema["required"].as_array().is_some_and(|names| names.iter().any(|other| other == name));
        let mut members = Map::new();
        for (name, inner) in schema["properties"].as_object().into_iter().flatten() {
            if needed(name) || draw.one_in(2 + depth) {
                members.insert(name.clone(), self.value(inner, draw, depth + 1));
            }
        }
        Value::Object(members)
    }
}

/// What a reference stands for.
fn resolved(schema: &Value) -> &Value {
    match schema["$ref"].as_str() {
        Some(reference) => DESCRIPTION.pointer(reference.trim_start_matches('#')).expect("a reference that stands"),
        None => schema,
    }
}

/// A number of the range, its ends more often than others, and now and then one beyond.
fn number(schema: &Value, draw: &mut Draw, usual: f64) -> f64 {
    let least = schema["minimum"].as_f64().unwrap_or(0.0);
    let most = schema["maximum"].as_f64().unwrap_or(least + usual);
    match draw.below(10) {
        0 => least,
        1 => most,
        2 => *draw.of(&NUMBERS),
        3 => most + 1.0,
        _ => least + (most - least) * draw.share().powi(2),
    }
}

/// A text of the kind that the description shows: an example, a bound of the range, or a number with one of the units.
fn text(schema: &Value, draw: &mut Draw) -> String {
    let words = schema["description"].as_str().unwrap_or_default();
    let range = words.split(" From ").nth(1).and_then(|rest| rest.split(". Units: ").next()?.split_once(" to "));
    let units: Vec<_> =
        words.split(" Units: ").nth(1).map_or_else(Vec::new, |list| list.trim_end_matches('.').split(", ").collect());
    let examples = schema["examples"].as_array().map_or(&[][..], Vec::as_slice);
    match (draw.below(10), range, examples) {
        (0, _, _) => (*draw.of(&TRICKY)).to_owned(),
        (1, Some((least, _)), _) => least.to_owned(),
        (2, Some((_, most)), _) => most.to_owned(),
        (3..=6, _, [_, ..]) => draw.of(examples).as_str().unwrap_or_default().to_owned(),
        (_, Some(_), _) if !units.is_empty() => {
            let number = 10.0_f64.powf(4.0 * draw.share() - 1.0);
            format!("{number:.prec$} {}", draw.of(&units), prec = draw.below(3))
        }
        _ if schema["format"] == "date-time" => time(draw),
        _ => ["a", "1", "24.50", "USD", "2026-05-04", "TIB-1", "inside"][draw.below(7)].to_owned(),
    }
}

/// A time within two days of one January, so that several stand near each other.
fn time(draw: &mut Draw) -> String {
    format!("2026-01-{:02}T{:02}:00:00-05:00", 20 + draw.below(2), draw.below(24))
}
