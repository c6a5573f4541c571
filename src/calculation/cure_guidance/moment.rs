//! Points of time: RFC 3339 with an offset, kept so that answers speak the caller's clock.

use jiff::civil::Date;
use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp};
use uom::si::f64::Time;
use uom::si::time::second;

use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath};

/// A point of time, and the offset that it was written with.
#[derive(Clone, Copy, Debug)]
pub struct Moment {
    /// The instant.
    pub at: Timestamp,
    /// What the caller's clock adds to UTC.
    pub offset: Offset,
}

/// A text that is a time: date, `T`, time with seconds, then `Z` or an offset in hours and minutes. The library's own reader takes
/// more than RFC 3339, so the shape is held first.
fn parse(text: &str) -> Option<Moment> {
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
    let offset = if rest == "Z" { Offset::UTC } else { offset(&text[text.len() - 6..])? };
    let at: Timestamp = text.to_ascii_uppercase().parse().ok()?;
    in_range(at, offset).then_some(Moment { at, offset })
}

/// `+05:30` as an offset; RFC 3339 goes to 23:59.
fn offset(text: &str) -> Option<Offset> {
    let (hours, minutes): (i32, i32) = (text[1..3].parse().ok()?, text[4..6].parse().ok()?);
    let seconds = 60 * (60 * hours + minutes);
    let is_sound = hours < 24 && minutes < 60;
    is_sound.then(|| Offset::from_seconds(if text.starts_with('-') { -seconds } else { seconds }).ok())?
}

/// From 1970 to 2200, by the caller's clock: far from the ends of the calendar.
fn in_range(at: Timestamp, offset: Offset) -> bool {
    (1970..=2200).contains(&offset.to_datetime(at).year())
}

impl Moment {
    /// Reads a time; a fault is noted and gives `None`.
    pub fn read(text: &str, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let moment = parse(text);
        if moment.is_none() && text.chars().count() <= 40 && !text.is_empty() {
            diagnostics.add_error(
                at,
                FieldErrorCode::TimeInvalid,
                "The text is no time with an offset.",
                "Send a time such as \"2026-01-20T07:00:00-05:00\" or \"2026-01-20T12:00:00Z\", with its offset, from 1970 to 2200.",
            );
        }
        moment
    }

    /// From another instant to this one; negative when this one is earlier.
    pub fn since(&self, other: Timestamp) -> Time {
        Time::new::<second>(self.at.duration_since(other).as_secs_f64())
    }

    /// The same clock, later by a time.
    pub fn later(&self, by: Time) -> Self {
        let by = SignedDuration::from_millis((by.get::<second>() * 1e3).round() as i64);
        Self { at: self.at.saturating_add(by).unwrap_or(self.at), offset: self.offset }
    }

    /// The same, to the whole minute.
    pub fn to_minute(self) -> Self {
        let minutes = (self.at.as_millisecond() as f64 / 6e4).round();
        Self { at: Timestamp::from_second(60 * minutes as i64).unwrap_or(self.at), offset: self.offset }
    }

    /// The hour that the caller's clock shows.
    pub fn hour(&self) -> i8 {
        self.offset.to_datetime(self.at).hour()
    }

    /// The date that the caller's calendar shows.
    pub fn date(&self) -> Date {
        self.offset.to_datetime(self.at).date()
    }

    /// RFC 3339, with the caller's offset.
    pub fn write(&self) -> String {
        self.at.display_with_offset(self.offset).to_string()
    }

    /// For a sentence: `2026-01-20 13:00`.
    pub fn say(&self) -> String {
        let local = self.offset.to_datetime(self.at);
        format!("{} {:02}:{:02}", local.date(), local.hour(), local.minute())
    }
}

/// Reads a date, `2026-01-31`.
pub fn read_date(text: &str, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Date> {
    let shape: String = text.chars().map(|c| if c.is_ascii_digit() { '0' } else { c }).collect();
    let date = text.parse::<Date>().ok().filter(|date| (1970..=2200).contains(&date.year()));
    let date = date.filter(|_| shape == "0000-00-00");
    if date.is_none() && text.chars().count() == 10 {
        diagnostics.add_error(
            at,
            FieldErrorCode::TimeInvalid,
            "The text is no date.",
            "Send a date such as \"2026-01-31\".",
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
            assert!(parse(text).is_some(), "{text}");
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
            assert!(parse(text).is_none(), "{text}");
        }
    }

    #[test]
    fn a_moment_is_written_on_the_clock_that_it_came_with() {
        let moment = parse("2026-03-29T01:30:00+01:00").unwrap_or_else(|| unreachable!("a time"));
        let later = moment.later(Time::new::<second>(3629.0)).to_minute();
        assert_eq!(later.write(), "2026-03-29T02:30:00+01:00");
        assert_eq!((later.hour(), later.say()), (2, "2026-03-29 02:30".to_owned()));
        assert_eq!(
            parse("2026-03-29T00:30:00Z").map(|moment| moment.write()),
            Some("2026-03-29T00:30:00+00:00".to_owned())
        );
    }
}
