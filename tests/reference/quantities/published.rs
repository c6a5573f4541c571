//! Every quantity that was ever published, as a request, an example, a bound or a default, means what it meant: the number that
//! stands in it times its unit, worked out here without the reader.

use std::collections::BTreeSet;

use loopwright::quantity::dimension::{
    DepthPerDay, Dimension, InductancePerLength, Length, Magnitude, Share, Speed, Temperature, Time, Volume, WireSize,
};
use loopwright::quantity::parse;
use serde_json::Value;

const ROOT: &str = env!("CARGO_MANIFEST_DIR");

/// All texts of a document.
fn texts(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::String(text) => {
            found.insert(text.clone());
        }
        Value::Array(items) => items.iter().for_each(|item| texts(item, found)),
        Value::Object(members) => members.values().for_each(|member| texts(member, found)),
        _ => {}
    }
}

/// The documents of `openapi/examples`: those whose names end so.
fn examples(ending: &str) -> Vec<Value> {
    let folders = std::fs::read_dir(format!("{ROOT}/openapi/examples")).unwrap();
    let files = folders.flat_map(|folder| std::fs::read_dir(folder.unwrap().path()).unwrap());
    let paths = files.map(|file| file.unwrap().path()).filter(|path| path.to_str().unwrap().ends_with(ending));
    paths.map(|path| serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()).collect()
}

fn read(path: &str) -> Value {
    serde_json::from_str(&std::fs::read_to_string(format!("{ROOT}/{path}")).unwrap()).unwrap()
}

/// A number as the released grammar had it.
fn number(text: &str) -> Option<f64> {
    let ratio = |text: &str| {
        let (numerator, denominator) = text.split_once('/')?;
        Some(numerator.parse::<f64>().ok()? / denominator.parse::<f64>().ok()?)
    };
    match text.split_once('-').filter(|(whole, _)| !whole.is_empty()) {
        Some((whole, fraction)) => Some(whole.parse::<f64>().ok()? + ratio(fraction)?),
        None => text.parse().ok().or_else(|| ratio(text)),
    }
}

/// The value in SI units, for `number unit`; `None` for what is no such text.
fn worked_out(text: &str) -> Option<f64> {
    let (written, unit) = text.split_once(' ')?;
    let n = number(written)?;
    let (ft, inch, gallon) = (0.3048, 0.0254, 231.0 * 0.0254_f64.powi(3));
    Some(match unit {
        "ft" => n * ft,
        "in" => n * inch,
        "m" | "s" => n,
        "mm" => n * 1e-3,
        "°F" => (n - 32.0) / 1.8 + 273.15,
        "°C" => n + 273.15,
        "mph" => n * 5280.0 * ft / 3600.0,
        "km/h" => n / 3.6,
        "ft/min" => n * ft / 60.0,
        "m/min" => n / 60.0,
        "h" => n * 3600.0,
        "min" => n * 60.0,
        "d" | "days" => n * 86_400.0,
        "fl oz" => n * gallon / 128.0,
        "gal" => n * gallon,
        "ml" | "uH/m" | "mm2" | "mm²" => n * 1e-6,
        "uH/ft" => n * 1e-6 / ft,
        "in/day" => n * inch / 86_400.0,
        "mm/day" => n * 1e-3 / 86_400.0,
        "%" | "percent" => n / 100.0,
        // ASTM B258: 0.005 in at 36, and 92 times the diameter 39 numbers on.
        "AWG" => std::f64::consts::FRAC_PI_4 * (0.005 * inch * 92.0_f64.powf((36.0 - n) / 39.0)).powi(2),
        _ => return None,
    })
}

/// What the reader makes of a text, in whatever dimension takes it.
fn as_read(text: &str) -> Vec<f64> {
    fn of<D: Dimension>(text: &str) -> Option<f64> {
        parse::<D>(text).ok().map(|read| read.si.magnitude())
    }
    let all = [
        of::<Length>(text),
        of::<Temperature>(text),
        of::<Speed>(text),
        of::<Volume>(text),
        of::<Time>(text),
        of::<InductancePerLength>(text),
        of::<DepthPerDay>(text),
        of::<WireSize>(text),
        of::<Share>(text),
    ];
    all.into_iter().flatten().collect()
}

#[track_caller]
fn means_the_same(text: &str, expected: f64) {
    let read = as_read(text);
    // Factors of the units library have seven digits where they are not exact.
    let is_same = matches!(read[..], [value] if (value - expected).abs() <= 3e-7 * expected.abs());
    assert!(is_same, "{text} was {expected} and is {read:?}");
}

#[test]
fn every_published_quantity_means_the_same() {
    let mut published = BTreeSet::new();
    texts(&read("openapi/released/v1.json"), &mut published);
    for request in &examples(".request.json") {
        texts(request, &mut published);
    }
    let known: Vec<_> = published.iter().filter_map(|text| Some((text, worked_out(text)?))).collect();
    assert!(known.len() > 150, "only {} quantities were published", known.len());
    for (text, expected) in known {
        means_the_same(text, expected);
    }
    // The other texts of requests are no quantities, and have not become some.
    let is_prose = |text: &&String| text.contains(' ') || text.contains('_');
    let was_read = ["6 ft 6 in", "5'-6\"", "1 h 30 min"];
    let others = published.iter().filter(is_prose).filter(|text| worked_out(text).is_none());
    let read: Vec<_> = others.filter(|text| !was_read.contains(&text.as_str()) && !as_read(text).is_empty()).collect();
    assert!(read.is_empty(), "{read:?} are read");
}

/// Defaults that a report took and the sizes that it proposes are texts for the next request: what is one quantity is read as it.
#[test]
fn machine_values_are_read() {
    fn machine_values(value: &Value, found: &mut BTreeSet<String>) {
        match value {
            Value::Object(members) => {
                for (name, member) in members {
                    let is_one = ["value", "from", "to", "set"].contains(&name.as_str());
                    if let Some(text) = member.as_str().filter(|_| is_one) {
                        found.insert(text.to_owned());
                    }
                    machine_values(member, found);
                }
            }
            Value::Array(items) => items.iter().for_each(|item| machine_values(item, found)),
            _ => {}
        }
    }
    let mut found = BTreeSet::new();
    for answer in &examples(".answer.json") {
        machine_values(answer, &mut found);
    }
    let is_one = |text: &&String| {
        let starts = text.trim_start_matches('-').starts_with(|c: char| c.is_ascii_digit());
        starts && text.contains(' ') && !text.contains(", ") && !text.contains(" or ")
    };
    let quantities: Vec<_> = found.iter().filter(is_one).collect();
    assert!(quantities.len() > 40, "only {quantities:?}");
    for text in quantities {
        means_the_same(text, worked_out(text).unwrap_or_else(|| panic!("{text} is no number and unit")));
    }
    // Of several nobody makes one.
    for text in found.iter().filter(|text| text.contains(", ") || text.contains(" or ")) {
        assert!(as_read(text).is_empty(), "{text} is read");
    }
}
