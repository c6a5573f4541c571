//! The words of units in English, Spanish, French and German, and what joins them.
//!
//! A unit that is written out is read word by word, so `pieds par seconde` needs no entry of its own: it is `ft/s`. The words stand
//! without accents here, as [`super::plain`] leaves them. All are from memory.

/// A unit in its short spelling: each word as its abbreviation, `per` as a slash, no stop after a word, no space beside a slash or
/// after a degree sign. `None` where that changes nothing.
pub fn shortened(unit: &str) -> Option<String> {
    // The only "per" that is more than a word.
    let spelled = unit.replace(" a l'", "/");
    let mut short = String::with_capacity(spelled.len());
    let mut rest = spelled.as_str();
    while let Some(first) = rest.chars().next() {
        let end = rest.find(|c: char| !c.is_ascii_lowercase()).unwrap_or(rest.len());
        if end == 0 {
            let is_needless = first == ' ' && (short.is_empty() || short.ends_with([' ', '/', '°']));
            if !is_needless {
                short.push(first);
            }
            rest = &rest[first.len_utf8()..];
            continue;
        }
        let word = &rest[..end];
        short.push_str(abbreviation(word).unwrap_or(word));
        rest = &rest[end..];
        // A stop ends the word, and nothing else.
        let after_stop = rest.strip_prefix('.').filter(|after| after.is_empty() || after.starts_with([' ', '/']));
        rest = after_stop.unwrap_or(rest);
    }
    let short = short.trim_end().replace(" /", "/");
    (short != unit).then_some(short)
}

/// The short spelling of a word. `None` where it has none, and for spellings that are short already.
fn abbreviation(word: &str) -> Option<&'static str> {
    WORDS.iter().find(|(_, words)| words.contains(&word)).map(|(short, _)| *short)
}

/// All words with a short spelling, for guesses at what was meant.
pub fn all_words() -> impl Iterator<Item = &'static str> {
    WORDS.iter().flat_map(|(_, words)| words.iter().copied())
}

/// Short spellings, each with its words.
const WORDS: [(&str, &[&str]); 31] = [
    ("ft", &["foot", "feet", "pie", "pies", "pi", "pied", "pieds", "fuss", "fusse", "fuesse"]),
    ("in", &["inch", "inches", "ins", "pulgada", "pulgadas", "pulg", "plg", "po", "pouce", "pouces", "zoll"]),
    ("yd", &["yard", "yards", "yds", "yarda", "yardas", "verge", "verges"]),
    ("m", &["metre", "metres", "meter", "meters", "metern", "metro", "metros", "mt", "mts"]),
    (
        "cm",
        &[
            "cms",
            "centimetre",
            "centimetres",
            "centimeter",
            "centimeters",
            "centimetro",
            "centimetros",
            "zentimeter",
            "zentimetern",
        ],
    ),
    (
        "mm",
        &["mms", "millimetre", "millimetres", "millimeter", "millimeters", "millimetern", "milimetro", "milimetros"],
    ),
    ("km", &["kms", "kilometre", "kilometres", "kilometer", "kilometers", "kilometern", "kilometro", "kilometros"]),
    ("mi", &["mile", "miles", "milla", "millas", "mille", "milles", "meile", "meilen"]),
    ("h", &["hr", "hrs", "hs", "hour", "hours", "hora", "horas", "heure", "heures", "std", "stunde", "stunden"]),
    ("min", &["mins", "mn", "minute", "minutes", "minuten", "minuto", "minutos"]),
    (
        "s",
        &[
            "sec", "secs", "second", "seconds", "seg", "segs", "segundo", "segundos", "seconde", "secondes", "sek",
            "sekunde", "sekunden",
        ],
    ),
    ("d", &["day", "days", "dia", "dias", "j", "jour", "jours", "tag", "tage", "tagen"]),
    ("°", &["deg", "degree", "degrees", "grado", "grados", "degre", "degres", "grad"]),
    ("c", &["celsius", "centigrade", "centigrado", "centigrados"]),
    ("f", &["fahrenheit"]),
    ("k", &["kelvin", "kelvins"]),
    ("l", &["litre", "litres", "liter", "liters", "litern", "litro", "litros"]),
    ("ml", &["millilitre", "millilitres", "milliliter", "milliliters", "millilitern", "mililitro", "mililitros"]),
    ("fl", &["fluid", "liq", "liquide", "liquides", "liquida", "liquidas"]),
    ("oz", &["ounce", "ounces", "onza", "onzas", "once", "onces"]),
    ("fl oz", &["flussigunze", "flussigunzen"]),
    ("gal", &["gals", "gallon", "gallons", "galon", "galones", "gallone", "gallonen"]),
    ("cu", &["cubic", "cubica", "cubicas", "cube", "cubes"]),
    ("sq", &["square", "cuadrado", "cuadrados", "carre", "carres"]),
    ("uh", &["microhenry", "microhenries", "microhenrys", "microhenrio", "microhenrios", "mikrohenry"]),
    ("km/h", &["kmph", "stundenkilometer"]),
    ("ft/s", &["fps"]),
    ("ft/min", &["fpm"]),
    ("mm2", &["qmm", "quadratmillimeter", "quadratmillimetern"]),
    ("cu in", &["kubikzoll"]),
    ("/", &["per", "por", "par", "pro", "an"]),
];
