//! Quantities as people write them and as programs read them.
//!
//! # The grammar
//!
//! A quantity is a number and a unit, as text. There is no default unit and no guessing: what has one meaning is read in the ways
//! that people type it, and the rest is refused with a code, a hint and, where it is likely what was meant, a suggestion.
//!
//! ```text
//! quantity  = [sign] number [joint] unit ["."]            one number and its unit: 24 ft, 24-ft, 7.2 m.
//!           | whole unit [space or "-"] number [unit]     two parts: 6 ft 6 in, 5'-6", 7 m 20 cm, 1 h 30 min
//! joint     = spaces | "-"                                a hyphen touches both, and joins no temperature
//! number    = digits [("." or ",") digits]                7, 7.2, .5, 7,2; not three digits after a comma
//!           | digits "/" digits                           3/16
//!           | digits ("-" or space) digits "/" digits     1-1/4, 1 1/4
//!           | [digits] vulgar fraction                    ½, 24½, 24 ½
//! sign      = "-" | "+"                                   a minus passes only where the field's range reaches below zero
//! ```
//!
//! Units are short (`ft`, `°C`, `mm/day`) or in words of English, Spanish, French or German (`pies`, `pouces`, `Meter`, `millas por
//! hora`, `grados Celsius`). Letters may be upper or lower case, accents may be left out, spaces around and inside are free (no-break
//! ones, too), and typographic primes, quotes, hyphens and the minus sign count as their plain forms. At most 40 characters.
//!
//! What is decided where a text could mean two things:
//!
//! - **Commas.** One comma is a decimal mark, unless exactly three digits follow: those may be thousands, so `1,200 mm` is refused, and
//!   `0,500 m` by the same rule. A comma beside a point, or a second one, is refused. `1.200 mm` is 1.2 mm: a point is always decimal.
//!   Spaces never separate thousands.
//! - **Two parts.** Feet with inches, metres with centimetres or millimetres, hours with minutes, minutes with seconds, days with hours.
//!   The larger number is whole and has no minus: `-1 ft 6 in` says not which way its inches go, and `-0 ft 6 in` neither. Metres with
//!   feet are refused. There may be 14 inches beside feet and 90 minutes beside hours; the other smaller parts are less than one of the
//!   larger.
//! - **No unit behind the second part.** Inches below 12, with or without a fraction (`5 ft 6`, `24' 6½`), if they are 0 or at least 1:
//!   `5 ft 1/2` may be five feet and a half. Centimetres and minutes as just two digits (`7m20`, `1h30`): `7m2` may be 7.02 or 7.2 m.
//!   A hyphen between the parts then touches both. `7m20` as a duration is refused: `m` is a metre.
//! - **Hyphens.** `24-ft` is 24 ft and `-24-ft` is -24 ft. `24 - ft` may lack a number, and `20-°C` may be a minus behind: refused.
//! - **Stops.** One after the unit is the end of a sentence or of an abbreviation. Between two parts a space follows it (but for the
//!   released `ft.` with `in`): `5 ft.6` may be 0.6. A number never ends in a point.
//! - **Degrees** name their scale, ounces are `fl oz`, wire gauges are `AWG`: `20°`, `29 oz` and `14 ga` are refused.
//! - No exponent, no number that is spelled out, no other digits than 0 to 9.
//!
//! A field suggests only what it takes itself, in its range: `1200 mm` for `1,200 mm`, `14 AWG` for a bare `14` in a wire size, for
//! no other unit fits, and nothing for a bare `24` in a width, which may be feet or metres. Where both readings of a comma fit, it is
//! the one with thousands, and the hint shows both.
//!
//! ```
//! use loopwright::quantity::{dimension::*, parse, output::round};
//! use uom::si::{length::millimeter, thermodynamic_temperature::degree_celsius};
//!
//! // Lengths to the micrometre; the last binary digit is nobody's concern.
//! let mm = |text| parse::<Length>(text).map(|written| round(written.si.get::<millimeter>(), 3));
//! assert_eq!(mm("7.2 m"), Ok(7200.0));
//! assert_eq!(mm("48 mm"), Ok(48.0));
//! assert_eq!(mm("24 ft"), Ok(7315.2));
//! assert_eq!(mm("20 FEET"), mm("20ft"));
//! assert_eq!(mm("6 ft 6 in"), Ok(1981.2));
//! assert_eq!(mm("5'-6\""), Ok(1676.4));
//! assert_eq!(mm("5′ 6″"), Ok(1676.4));
//! assert_eq!(mm("3/16 in"), Ok(4.763)); // 4.7625 exactly, a half that binary fractions miss
//! assert_eq!(mm("1-1/4 in"), Ok(31.75));
//! assert_eq!(mm("1 1/4\""), Ok(31.75));
//! assert_eq!(mm(".5 in"), Ok(12.7));
//! assert_eq!(mm("7,2 m"), mm("7.2 m."));
//! assert_eq!(mm("24½ ft"), mm("24-1/2-ft"));
//! assert_eq!(mm("5 pies 6"), mm("5 ft 6 in"));
//! assert_eq!(mm("7m20"), mm("7 Meter 20 cm"));
//!
//! let celsius = |text| parse::<Temperature>(text).map(|written| round(written.si.get::<degree_celsius>(), 3));
//! assert_eq!(celsius("-5 °C"), Ok(-5.0));
//! assert_eq!(celsius("23 F"), Ok(-5.0));
//! ```
//!
//! The other dimensions read the same way:
//!
//! ```
//! use loopwright::quantity::{dimension::*, parse};
//!
//! assert!(parse::<TemperatureDifference>("3 °C").is_ok());
//! assert!(parse::<Speed>("10 mph").is_ok());
//! assert!(parse::<Speed>("15 km/h").is_ok());
//! assert!(parse::<Volume>("29 fl oz").is_ok());
//! assert!(parse::<Volume>("850 ml").is_ok());
//! assert!(parse::<Time>("3 h").is_ok());
//! assert!(parse::<Time>("1 h 30 min").is_ok());
//! assert!(parse::<InductancePerLength>("0.22 uH/ft").is_ok());
//! assert!(parse::<InductancePerLength>("0.72 µH/m").is_ok());
//! assert!(parse::<DepthPerDay>("3 mm/day").is_ok());
//! assert!(parse::<Share>("10 %").is_ok());
//! assert!(parse::<WireSize>("14 AWG").is_ok());
//! assert!(parse::<WireSize>("1.5 mm2").is_ok());
//! ```
//!
//! What cannot be read says why, in a word that a program can act on and what a hint for a person needs:
//!
//! ```
//! use loopwright::quantity::{dimension::*, parse, CommaMeaning, QuantityErrorCode::*, QuantityFault};
//!
//! let refused = |text| parse::<Length>(text).unwrap_err().code;
//! assert_eq!(refused("6"), UnitMissing);
//! assert_eq!(refused("6 furlongs"), UnitUnknown);
//! assert_eq!(refused("6 mph"), UnitWrongDimension);
//! assert_eq!(refused("1,200 mm"), DecimalComma);
//! assert_eq!(refused("NaN m"), NumberInvalid);
//! assert_eq!(refused("1e3 ft"), NumberInvalid);
//! assert_eq!(refused("3/0 in"), NumberInvalid);
//! assert_eq!(refused(""), NumberInvalid);
//! let comma = QuantityFault::Comma(CommaMeaning::Decimals("0.200 m".to_owned()));
//! assert_eq!(parse::<Length>("0,200 m").unwrap_err().fault, comma);
//! ```
//!
//! # The modules
//!
//! - [`dimension`]: the dimensions and the units of each; `uom` holds the conversion factors.
//! - [`text`]: the reader of the grammar above; `plain`, `number` and `words` are its parts.
//! - [`fault`]: why a text is refused; `suggest` is what may have been meant.
//! - [`field`]: a dimension with the range that a field allows: the string types of request fields.
//! - [`output`]: the objects of reports, in both systems, rounded to fixed decimals.
//! - [`mod@format`]: quantities as text.

pub mod dimension;
pub mod fault;
pub mod field;
pub mod format;
mod number;
pub mod output;
mod plain;
mod suggest;
pub mod text;
mod words;

pub use dimension::{Dimension, UnitSystem};
pub use fault::{CommaMeaning, QuantityError, QuantityErrorCode, QuantityFault};
pub use field::QuantityField;
pub use text::{ParsedQuantity, parse};
