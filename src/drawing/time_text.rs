//! Times and dates as text: days by the names of the language's months, hours from 0 to 24.

use jiff::civil::DateTime;

use crate::calculation::report::Statement;
use crate::wording::Reader;

/// The local time of a time of a report. All times of a report have the same offset, so it is left out.
pub fn parse_local(text: &str) -> Option<DateTime> {
    text.get(..19)?.parse().ok()
}

/// A date: `Jan 20`.
pub fn format_date(at: DateTime, reader: Reader) -> String {
    let count = |number: i8| u64::from(number.unsigned_abs());
    let date = Statement::new("drawings-date").count("month", count(at.month())).count("day", count(at.day()));
    reader.say(&date).into_owned()
}

fn format_clock(at: DateTime) -> String {
    format!("{:02}:{:02}", at.hour(), at.minute())
}

/// A time of a report: `Jan 20 13:00`.
pub fn format_time(text: &str, reader: Reader) -> String {
    parse_local(text)
        .map_or_else(|| text.to_owned(), |at| format!("{}\u{a0}{}", format_date(at, reader), format_clock(at)))
}

/// From one time to another, the date only where it changes.
pub fn format_time_span(from: &str, to: &str, reader: Reader) -> String {
    let (day, until) = match (parse_local(from), parse_local(to)) {
        (Some(one), Some(other)) if one == other => return format_time(from, reader),
        (Some(one), Some(other)) if one.date() == other.date() => ("same", format_clock(other)),
        _ => ("other", format_time(to, reader)),
    };
    let span = Statement::new("drawings-span").text("from", format_time(from, reader)).text("until", until);
    reader.say(&span.code("day", day)).into_owned()
}

#[cfg(test)]
mod tests {
    use super::format_time_span;
    use crate::quantity::UnitSystem;
    use crate::wording::{Language, Reader};

    #[test]
    fn a_span_names_its_date_once() {
        let plain = |from, to, language| {
            format_time_span(from, to, Reader::new(UnitSystem::Metric, language)).replace('\u{a0}', " ")
        };
        let (day, evening, next) =
            ("2026-01-31T17:05:00-05:00", "2026-01-31T19:40:00-05:00", "2026-02-01T02:00:00-05:00");
        assert_eq!(plain(day, evening, Language::English), "Jan 31 17:05 to 19:40");
        assert_eq!(plain(day, next, Language::English), "Jan 31 17:05 to Feb 1 02:00");
        assert_eq!(plain(day, day, Language::English), "Jan 31 17:05");
        assert_eq!(plain(day, next, Language::Spanish), "31 ene 17:05 al 1 feb 02:00");
        assert_eq!(plain(day, next, Language::French), "31 janv. 17:05 au 1er févr. 02:00");
    }
}
