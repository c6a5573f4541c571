//! Instants with the UTC offset that they were written with, so that answers are on the clock of the caller.

use jiff::civil::Date;
use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp};
use uom::si::f64::Time;
use uom::si::time::second;

use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};

/// An instant, and the UTC offset that it was written with.
#[derive(Clone, Copy, Debug)]
pub struct OffsetDateTime {
    /// The instant.
    pub at: Timestamp,
    /// The UTC offset of the clock of the caller.
    pub offset: Offset,
}

/// Parses date, `T`, time with seconds, then `Z` or an offset in hours and minutes. The library's own parser accepts more than
/// RFC 3339, so the shape is checked first.
fn parse_rfc_3339(text: &str) -> Option<OffsetDateTime> {
    let shape: String = text.chars().map(|c| if c.is_ascii_digit() { '0' } else { c.to_ascii_uppercase() }).collect();
    let rest = shape.strip_prefix("0000-00-00T00:00:00")?;
    let rest = match rest.strip_prefix('.') {
        Some(fraction) if fraction.starts_with('0') => fraction.trim_start_matches('0'),
        Some(_) => return None,
        None => rest,
    };
    if !["Z", "+00:00", "-00:00"].contains(&rest) {
        return None;
    }
    let offset = if rest == "Z" { Offset::UTC } else { parse_offset(&text[text.len() - 6..])? };
    let at: Timestamp = text.to_ascii_uppercase().parse().ok()?;
    in_range(at, offset).then_some(OffsetDateTime { at, offset })
}

/// Parses an offset such as `+05:30`, at most 23:59 by RFC 3339.
fn parse_offset(text: &str) -> Option<Offset> {
    let (hours, minutes): (i32, i32) = (text[1..3].parse().ok()?, text[4..6].parse().ok()?);
    let seconds = 60 * (60 * hours + minutes);
    let is_valid = hours < 24 && minutes < 60;
    is_valid.then(|| Offset::from_seconds(if text.starts_with('-') { -seconds } else { seconds }).ok())?
}

/// Whether the year on the clock of the caller is from 1970 to 2200: far from the ends of the library's calendar.
fn in_range(at: Timestamp, offset: Offset) -> bool {
    (1970..=2200).contains(&offset.to_datetime(at).year())
}

impl OffsetDateTime {
    /// Parses a time; `None` after an error.
    pub fn resolve(text: &str, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let date_time = parse_rfc_3339(text);
        if date_time.is_none() && text.chars().count() <= 40 && !text.is_empty() {
            diagnostics.add_error(
                at,
                FieldErrorCode::TimeInvalid,
                Statement::new("errors-no-time"),
                Statement::new("errors-no-time-hint"),
            );
        }
        date_time
    }

    /// The time from another instant to this one; negative when this one is earlier.
    pub fn since(&self, other: Timestamp) -> Time {
        Time::new::<second>(self.at.duration_since(other).as_secs_f64())
    }

    /// The instant that is later by a time, on the same clock.
    pub fn plus(&self, by: Time) -> Self {
        let by = SignedDuration::from_millis((by.get::<second>() * 1e3).round() as i64);
        Self { at: self.at.saturating_add(by).unwrap_or(self.at), offset: self.offset }
    }

    /// The nearest whole minute, on the same clock.
    pub fn round_to_minute(self) -> Self {
        let minutes = (self.at.as_millisecond() as f64 / 6e4).round();
        Self { at: Timestamp::from_second(60 * minutes as i64).unwrap_or(self.at), offset: self.offset }
    }

    /// The hour of the day on the clock of the caller.
    pub fn hour(&self) -> i8 {
        self.offset.to_datetime(self.at).hour()
    }

    /// The date on the clock of the caller.
    pub fn date(&self) -> Date {
        self.offset.to_datetime(self.at).date()
    }

    /// As RFC 3339, with the offset of the caller.
    pub fn format_rfc_3339(&self) -> String {
        self.at.display_with_offset(self.offset).to_string()
    }

    /// For a sentence: `2026-01-20 13:00`.
    pub fn format_for_sentence(&self) -> String {
        let local = self.offset.to_datetime(self.at);
        format!("{} {:02}:{:02}", local.date(), local.hour(), local.minute())
    }
}

/// Parses a date, `2026-01-31`; `None` after an error.
pub fn resolve_date(text: &str, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Date> {
    let shape: String = text.chars().map(|c| if c.is_ascii_digit() { '0' } else { c }).collect();
    let date = text.parse::<Date>().ok().filter(|date| (1970..=2200).contains(&date.year()));
    let date = date.filter(|_| shape == "0000-00-00");
    if date.is_none() && text.chars().count() == 10 {
        diagnostics.add_error(
            at,
            FieldErrorCode::TimeInvalid,
            Statement::new("errors-no-date"),
            Statement::new("errors-no-date-hint"),
        );
    }
    date
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_rfc_3339_with_an_offset_is_a_time() {
        for text in [
            "2026-01-20T07:00:00-05:00",
            "2026-01-20T12:00:00Z",
            "2026-01-20t12:00:00z",
            "2026-01-20T17:30:00.5+05:30",
            "2024-02-29T00:00:00+00:00",
        ] {
            assert!(parse_rfc_3339(text).is_some(), "{text}");
        }
        for text in [
            "",
            "2026-01-20",
            "2026-01-20T07:00:00",
            "2026-01-20T07:00-05:00",
            "2026-01-20 07:00:00-05:00",
            "20260120T070000Z",
            "2026-01-20T07:00:00-05",
            "2026-01-20T07:00:00-0500",
            "2026-01-20T07:00:00-05:00[America/New_York]",
            "2026-01-20T07:00:00.Z",
            "2026-02-30T07:00:00Z",
            "2026-01-20T25:00:00Z",
            "2026-01-20T07:00:00+24:00",
            "2026-01-20T07:00:00+05:60",
            "1969-01-20T07:00:00Z",
            "2201-01-20T07:00:00Z",
            "٢٠٢٦-01-20T07:00:00Z",
            "tomorrow",
        ] {
            assert!(parse_rfc_3339(text).is_none(), "{text}");
        }
    }

    #[test]
    fn an_instant_is_formatted_on_the_clock_that_it_came_with() {
        let date_time = parse_rfc_3339("2026-03-29T01:30:00+01:00").unwrap_or_else(|| unreachable!("a time"));
        let later = date_time.plus(Time::new::<second>(3629.0)).round_to_minute();
        assert_eq!(later.format_rfc_3339(), "2026-03-29T02:30:00+01:00");
        assert_eq!((later.hour(), later.format_for_sentence()), (2, "2026-03-29 02:30".to_owned()));
        assert_eq!(
            parse_rfc_3339("2026-03-29T00:30:00Z").map(|date_time| date_time.format_rfc_3339()),
            Some("2026-03-29T00:30:00+00:00".to_owned())
        );
    }
}
