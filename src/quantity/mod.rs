//! Quantities as people write them and as programs read them.
//!
//! # The grammar
//!
//! A quantity is a number and a unit, as text. There is no default unit and no guessing: what cannot be read for certain
//! is refused with a code and a hint.
//!
//! ```text
//! quantity  = [sign] number [space] unit            one number and its unit
//!           | feet [space or "-"] inches            lengths only: 6 ft 6 in, 5'-6"
//!           | hours [space] minutes                 durations only: 1 h 30 min
//! number    = digits ["." digits]                   7, 7.2, .5
//!           | digits "/" digits                     3/16
//!           | digits ("-" or space) digits "/" digits   1-1/4, 1 1/4
//! sign      = "-" | "+"                             a minus passes only where the field's range reaches below zero
//! ```
//!
//! Letters may be upper or lower case; spaces around and inside are free; typographic primes, quotes and the minus sign
//! count as their plain forms. At most 40 characters, no exponent, no decimal comma, no thousands separator.
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
//! assert_eq!(refused("7,2 m"), DecimalComma);
//! assert_eq!(refused("NaN m"), NumberInvalid);
//! assert_eq!(refused("1e3 ft"), NumberInvalid);
//! assert_eq!(refused("3/0 in"), NumberInvalid);
//! assert_eq!(refused(""), NumberInvalid);
//! let comma = QuantityFault::Comma(CommaMeaning::Decimals("7.2 m".to_owned()));
//! assert_eq!(parse::<Length>("7,2 m").unwrap_err().fault, comma);
//! ```
//!
//! # The modules
//!
//! - [`dimension`]: the dimensions and the units of each; `uom` holds the conversion factors.
//! - [`text`]: the reader of the grammar above.
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
