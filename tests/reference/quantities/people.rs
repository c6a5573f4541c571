//! What people type, in four languages: each text is the quantity that is written beside it, and no other.

use loopwright::quantity::dimension::{
    DepthPerDay, Dimension, InductancePerLength, Length, Magnitude, Share, Speed, Temperature, TemperatureDifference,
    Time, Volume, WireSize,
};
use loopwright::quantity::parse;
use proptest::prelude::*;

/// Each of the texts is the same as the first, to the last digits of the sum, and in the same system.
#[track_caller]
fn are_one<D: Dimension>(texts: &[&str]) {
    let read = |text: &str| match parse::<D>(text) {
        Ok(read) => (read.si.magnitude(), read.system),
        Err(fault) => panic!("{text}: {fault:?}"),
    };
    let (expected, expected_system) = read(texts[0]);
    for text in &texts[1..] {
        let (is, system) = read(text);
        assert!((is - expected).abs() <= 1e-12 * expected.abs(), "{text} is {is}, {} is {expected}", texts[0]);
        assert_eq!(system, expected_system, "{text}");
    }
}

#[track_caller]
fn are_refused<D: Dimension>(texts: &[&str]) {
    for text in texts {
        assert!(parse::<D>(text).is_err(), "{text} is read");
    }
}

#[test]
fn commas_are_decimals_unless_they_may_be_thousands() {
    are_one::<Length>(&["7.2 m", "7,2 m", "7,20 m", "7,2000 m", "+7,2m", "007,2 m"]);
    are_one::<Length>(&["0.5 m", ",5 m", "0,5 m", ".5 m"]);
    are_one::<Temperature>(&["-5.5 °C", "-5,5 °C", "−5,5 °C", "- 5,50 C"]);
    are_one::<Share>(&["7.5 %", "7,5 %", "7,5\u{202f}%"]);
    are_one::<Length>(&["5 ft 6.5 in", "5 ft 6,5 in"]);
    are_refused::<Length>(&[
        "1,200 mm",
        "1,200.5 m",
        "1.200,5 m",
        "0,500 m",
        ",500 m",
        "1,5,2 m",
        "1,5.2 m",
        "1.5,2 m",
        "1 ,5 m",
        "1, 5 m",
        "5, m",
        ",m",
        ", m",
        "1,5/2 m",
        "1,5 1/2 m",
        "1,1/4 in",
        "1,½ in",
        "5 ft 1,200 in",
        "5,5 ft 6 in",
        "1,2,3,4 m",
    ]);
}

#[test]
fn halves_and_eighths_have_signs_of_their_own() {
    are_one::<Length>(&["24 1/2 ft", "24½ ft", "24 ½ ft", "24-½ ft", "24.5 ft", "24½'", "24 1⁄2 ft", "24½-ft"]);
    are_one::<Length>(&["3/8 in", "⅜ in", "⅜\"", "0 ⅜ in"]);
    are_one::<Length>(&["-1/2 ft", "-½ ft"]);
    are_one::<Length>(&["5 ft 6 1/2 in", "5' 6½\"", "5' 6 ½\"", "5' 6-½", "5 ft 6½"]);
    are_one::<Length>(&["1/2 in", "½ in", "2/4 in"]);
    are_refused::<Length>(&[
        "½", "24½", "2½½ ft", "½½ ft", "½2 ft", "2½2 ft", "½/2 ft", "1/½ ft", "½.5 ft", "1.5½ ft", "½,5 ft",
    ]);
}

#[test]
fn a_hyphen_may_join_and_a_stop_may_end() {
    are_one::<Length>(&["24 ft", "24-ft", "24-foot", "24‑ft", "24–ft", "24 ft.", "24ft.", "24'.", "+24-ft"]);
    are_one::<Length>(&["7.2 m", "7.2 m.", "7.2-m"]);
    are_one::<Length>(&["-24 ft", "-24-ft", "- 24-ft"]);
    are_one::<Length>(&["3/16 in", "3/16-in", "3/16-inch."]);
    are_one::<WireSize>(&["14 AWG", "14-AWG", "14 awg."]);
    are_one::<Volume>(&["29 fl oz", "29 fl. oz.", "29-fl. oz"]);
    // A hyphen behind a temperature may be its minus; a blank in a range may be a number that is missing.
    are_refused::<Temperature>(&["20-C", "20-°C", "20- °C"]);
    are_refused::<Length>(&["24 - ft", "24--ft", "5-6 ft", "24-' ", "7.2 m..", "7.2 m. .", "7.2 .m", "24-", "24 -ft-"]);
}

#[test]
fn two_parts_and_a_smaller_one_without_its_unit() {
    are_one::<Length>(&[
        "5 ft 6 in",
        "5 ft 6",
        "5' 6",
        "5'6",
        "5'-6",
        "5-foot-6",
        "5 ft. 6 in.",
        "5 ft 06",
        "5′ 6″",
        "5' 6''",
    ]);
    are_one::<Length>(&["5 ft 6 in", "5 pies 6 pulgadas", "5 pieds 6 pouces", "5 Fuß 6 Zoll", "5 pi 6 po", "5 pies 6"]);
    are_one::<Length>(&[
        "7.2 m",
        "7 m 20 cm",
        "7m20",
        "7 m 20",
        "7m 20",
        "7M20",
        "7 m. 20 cm.",
        "7 Meter 20",
        "7 m 200 mm",
    ]);
    are_one::<Length>(&["7.05 m", "7m05", "7 m 5 cm", "7 m 50 mm"]);
    are_one::<Time>(&[
        "1.5 h",
        "1 h 30 min",
        "1h30",
        "1 h 30",
        "1 heure 30",
        "1 hora 30 minutos",
        "1 Stunde 30 Minuten",
    ]);
    are_one::<Time>(&["7 min 20 s", "440 s", "7 minutes 20 secondes"]);
    are_one::<Time>(&["2 d 12 h", "60 h", "2 días 12 horas", "2 jours 12 heures", "2 Tage 12 Stunden"]);
    are_refused::<Length>(&[
        "5 ft 12",
        "5 ft 13",
        "5 ft 6.",
        "5 ft -6",
        "5 ft - 6",
        "5 ft.6",
        "5 ft 1/2",
        "5 ft .5",
        "5½ ft 6",
        "5.5 ft 6",
        "5 in 6",
        "5 yd 6",
        "7m2",
        "7m200",
        "7 m 2",
        "7m20.5",
        "7m2½",
        "7 m.20 cm",
        "7m-",
        "7 m 5 ft",
        "5 ft 20 cm",
        "7 cm 5",
        "7 m 20 ft",
        "5 ft 6 m",
        "5 ft, 6 in",
        "5 ft 6 1/2 1/2",
        "5 ft 6 7",
        "5 ft +6 in",
        "1'200 mm",
        "-5 ft 6",
    ]);
    are_refused::<Time>(&[
        "1h5",
        "1h75",
        "1 h 3",
        "7m20",
        "7 min 20",
        "1h30m",
        "1:30 h",
        "2 d 30 h",
        "7 min 70 s",
        "-1 h 30 min",
    ]);
}

#[test]
fn units_in_words() {
    are_one::<Length>(&["24 ft", "24 feet", "24 pies", "24 pie", "24 pieds", "24 pi", "24 Fuß", "24 Fuss", "24 FUSS"]);
    are_one::<Length>(&["6 in", "6 inches", "6 pulgadas", "6 pulg.", "6 pouces", "6 po", "6 Zoll", "6''", "6 ”"]);
    are_one::<Length>(&["8 yd", "8 yards", "8 yardas", "8 verges"]);
    are_one::<Length>(&["7 m", "7 metros", "7 mètres", "7 me\u{300}tres", "7 Meter", "7 metern", "7 mts.", "7 MÈTRES"]);
    are_one::<Length>(&["40 mm", "40 milímetros", "40 millimètres", "40 Millimeter", "40 millimeters"]);
    are_one::<Length>(&["40 cm", "40 centímetros", "40 centimètres", "40 Zentimeter", "40 centimeters"]);
    are_one::<Temperature>(&[
        "20 °C",
        "20 grados C",
        "20 grados centígrados",
        "20 degrés Celsius",
        "20 Grad Celsius",
        "20 ºC",
        "20 ° C",
        "20 degrees C",
        "20 ℃",
        "20 deg. C",
        "20\u{a0}°C",
    ]);
    are_one::<Temperature>(&[
        "68 °F",
        "68 grados Fahrenheit",
        "68 degrés F",
        "68 Grad Fahrenheit",
        "68 ℉",
        "68 °Fahrenheit",
    ]);
    are_one::<TemperatureDifference>(&["5 °C", "5 grados Celsius", "5 degrés C", "5 Grad Celsius"]);
    are_one::<Speed>(&[
        "10 mph",
        "10 miles per hour",
        "10 millas por hora",
        "10 milles à l'heure",
        "10 Meilen pro Stunde",
    ]);
    are_one::<Speed>(&[
        "16 km/h",
        "16 kilómetros por hora",
        "16 kilomètres à l’heure",
        "16 km par heure",
        "16 Kilometer pro Stunde",
        "16 km/Std",
        "16 km / h",
        "16 km/h.",
    ]);
    are_one::<Speed>(&["5 m/s", "5 metros por segundo", "5 mètres par seconde", "5 Meter pro Sekunde", "5 m/sec"]);
    are_one::<Speed>(&["6 ft/min", "6 pies por minuto", "6 pieds par minute", "6 pi/min", "6 feet per minute"]);
    are_one::<Volume>(&["29 fl oz", "29 fluid ounces", "29 onzas líquidas", "29 onces liquides", "29 oz liq."]);
    are_one::<Volume>(&["850 ml", "850 mililitros", "850 millilitres", "850 Milliliter"]);
    are_one::<Volume>(&["1 gal", "1 galón", "1 Gallone"]);
    are_one::<Volume>(&["52 in3", "52 cubic inches", "52 pulgadas cúbicas", "52 pouces cubes"]);
    are_one::<Time>(&["3 h", "3 horas", "3 heures", "3 Stunden", "3 hrs."]);
    are_one::<Time>(&["15 min", "15 minutos", "15 minutes", "15 Minuten", "15 mn"]);
    are_one::<Time>(&["12 s", "12 segundos", "12 secondes", "12 Sekunden", "12 sec."]);
    are_one::<Time>(&["2 d", "2 días", "2 jours", "2 Tage", "2 j"]);
    are_one::<InductancePerLength>(&[
        "0.22 uH/ft",
        "0,22 µH/pi",
        "0,22 microhenrys par pied",
        "0.22 microhenries per foot",
    ]);
    are_one::<InductancePerLength>(&[
        "0.72 uH/m",
        "0,72 µH / m",
        "0,72 microhenrios por metro",
        "0,72 Mikrohenry pro Meter",
    ]);
    are_one::<DepthPerDay>(&["3 mm/day", "3 mm por día", "3 mm par jour", "3 mm pro Tag", "3 mm/j"]);
    are_one::<DepthPerDay>(&["1/8 in/day", "⅛ po/jour", "1/8 pulgada por día", "⅛ Zoll pro Tag"]);
    are_one::<WireSize>(&["1.5 mm2", "1,5 mm²", "1,5 mm carrés", "1.5 milímetros cuadrados", "1,5 Quadratmillimeter"]);
    are_one::<Share>(&["10 %", "10 por ciento", "10 pour cent", "10 Prozent", "10 percent."]);
    // A word that names no scale, or several units, is no unit.
    are_refused::<Temperature>(&["20 grados", "20 degrés", "20 Grad", "20°", "20 degrees"]);
    are_refused::<Length>(&[
        "24 f",
        "24 feets",
        "24 p",
        "5 mi n",
        "5 m in",
        "5 m i n",
        "24 ft wide",
        "7 m m",
        "7 per m",
    ]);
    are_refused::<Time>(&["5m", "5 m in", "5 weeks", "3 h per d"]);
    are_refused::<WireSize>(&["14 ga", "14 gauge", "1.5 mm", "#14", "AWG 14"]);
    are_refused::<Volume>(&["29 oz", "29 once", "850 cc"]);
}

/// Spellings of one unit, the released one first.
const FEET: [&str; 9] = ["ft", "'", "-ft", " ft.", " pies", " pieds", " Fuß", "′", "-foot"];
const INCHES: [&str; 7] = ["in", "\"", " in.", " pulgadas", " po", " Zoll", "″"];
const METRES: [&str; 7] = ["m", " m.", "-m", " mètres", " metros", " Meter", "\u{202f}m"];

proptest! {
    /// A comma is the point of the same text.
    #[test]
    fn a_decimal_comma_is_a_point(whole in 0..10_000_u32, decimals in "[0-9]{1,2}|[0-9]{4,6}", unit in 0..METRES.len()) {
        let read = |mark: char| parse::<Length>(&format!("{whole}{mark}{decimals}{}", METRES[unit])).unwrap().si;
        prop_assert_eq!(read(','), read('.'));
        let point = format!("{whole}.{decimals} m");
        prop_assert_eq!(read(','), parse::<Length>(&point).unwrap().si);
    }

    /// Three digits after a comma are read by nobody, whatever stands around them.
    #[test]
    fn three_digits_after_a_comma_are_refused(whole in "[0-9]{0,4}", digits in "[0-9]{3}", unit in 0..METRES.len()) {
        let text = format!("{whole},{digits}{}", METRES[unit]);
        prop_assert!(parse::<Length>(&text).is_err(), "{text} is read");
    }

    /// Feet and inches are their sum in sixteenths of an inch, in whatever way they are written.
    #[test]
    fn feet_and_inches_are_their_sum(
        feet in 0..200_u32, inches in 1..12_u32, sixteenths in 0..16_u32, ft in 0..FEET.len(), inch in 0..=INCHES.len(),
        joint in prop::sample::select(vec!["", " ", "-"]),
    ) {
        let unit = INCHES.get(inch).copied().unwrap_or_default();
        let fraction = match sixteenths { 0 => String::new(), some => format!(" {some}/16") };
        // A point that touches a digit may be its own.
        let joint = if FEET[ft].ends_with('.') { " " } else { joint };
        let text = format!("{feet}{}{joint}{inches}{fraction}{unit}", FEET[ft]);
        let expected = f64::from(feet * 192 + inches * 16 + sixteenths) / 16.0 * 0.0254;
        let read = parse::<Length>(&text).map(|read| read.si.magnitude());
        prop_assert!(read.as_ref().is_ok_and(|read| (read - expected).abs() < 1e-9), "{text} is {read:?}, not {expected}");
        prop_assert!(parse::<Length>(&format!("-{text}")).is_err(), "-{text} is read");
    }

    /// Metres and centimetres are the metres with the centimetres as decimals.
    #[test]
    fn metres_and_centimetres_are_decimals(metres in 0..100_u32, cm in 0..100_u32, m in 0..METRES.len()) {
        let expected = parse::<Length>(&format!("{metres}.{cm:02} m")).unwrap().si.magnitude();
        let joint = if METRES[m].ends_with('.') { " " } else { "" };
        for text in [format!("{metres}{}{joint}{cm:02}", METRES[m]), format!("{metres}{} {cm} cm", METRES[m])] {
            let read = parse::<Length>(&text).map(|read| read.si.magnitude());
            prop_assert!(read.as_ref().is_ok_and(|read| (read - expected).abs() < 1e-12), "{text} is {read:?}");
        }
    }

    /// What the released grammar had: a number in one of its forms, a space or none, and a released spelling. Its meaning stays.
    #[test]
    fn what_was_released_means_the_same(
        sign in prop::sample::select(vec!["", "-", "+", "- "]), whole in 0..1000_u32, numerator in 0..100_u32,
        denominator in 1..100_u32, form in 0..4_u8, space in prop::sample::select(vec!["", " ", "  "]),
        unit in prop::sample::select(vec![("ft", 0.3048), ("'", 0.3048), ("in.", 0.0254), ("\"", 0.0254), ("yards", 0.9144),
            ("m", 1.0), ("metres", 1.0), ("cm", 0.01), ("MM", 0.001)]),
    ) {
        let fraction = f64::from(numerator) / f64::from(denominator);
        let (number, value) = match form {
            0 => (format!("{whole}"), f64::from(whole)),
            1 => (format!("{whole}.{numerator:02}"), f64::from(whole) + f64::from(numerator) / 100.0),
            2 => (format!("{numerator}/{denominator}"), fraction),
            _ => (format!("{whole}-{numerator}/{denominator}"), f64::from(whole) + fraction),
        };
        let expected = if sign.starts_with('-') { -value } else { value } * unit.1;
        let text = format!("{sign}{number}{space}{}", unit.0);
        let read = parse::<Length>(&text).unwrap().si.magnitude();
        prop_assert!((read - expected).abs() <= 1e-12 * (1.0 + expected.abs()), "{text} is {read}, not {expected}");
    }
}
