//! How the value of a variable is read, and the message when it cannot be.

use std::ops::RangeInclusive;
use std::str::FromStr;
use std::time::Duration;

use reqwest::Url;
use uom::si::time::second;

use crate::quantity::{dimension, parse};

/// A day: no setting needs a longer time, and an `Instant` can represent it.
const MAX_SECONDS: f64 = 86_400.0;

/// The variables that are set; each message names the variable, what it holds and what it takes.
pub(super) struct VariableReader<'a>(pub &'a dyn Fn(&'static str) -> Option<String>);

impl VariableReader<'_> {
    pub fn get(&self, name: &'static str) -> Option<String> {
        (self.0)(name)
    }

    /// The value, empty when it is not set.
    pub fn text(&self, name: &'static str) -> String {
        self.get(name).unwrap_or_default()
    }

    /// The parts of a list that is separated by commas.
    pub fn list(&self, name: &'static str) -> impl Iterator<Item = String> {
        let parts: Vec<_> = self.text(name).split(',').map(|part| part.trim().to_owned()).collect();
        parts.into_iter().filter(|part| !part.is_empty())
    }

    pub fn parsed<T: FromStr>(&self, name: &'static str, default: &str, takes: &str) -> Result<T, String> {
        parsed(name, &self.get(name).unwrap_or_else(|| default.to_owned()), takes)
    }

    pub fn optional<T: FromStr>(&self, name: &'static str, takes: &str) -> Result<Option<T>, String> {
        self.get(name).map(|value| parsed(name, &value, takes)).transpose()
    }

    /// One of these words, and what it stands for.
    pub fn choice<T: Copy>(&self, name: &'static str, words: &[(&str, T)]) -> Result<Option<T>, String> {
        let Some(value) = self.get(name) else { return Ok(None) };
        let found = words.iter().find(|(word, _)| *word == value).map(|(_, meaning)| Some(*meaning));
        let takes = || words.iter().map(|(word, _)| *word).collect::<Vec<_>>().join(" or ");
        found.ok_or_else(|| format!("{name} is \"{value}\"; it takes {}", takes()))
    }

    pub fn count(
        &self,
        name: &'static str,
        default: usize,
        takes: &str,
        range: RangeInclusive<usize>,
    ) -> Result<usize, String> {
        let value = self.parsed(name, &default.to_string(), takes)?;
        if range.contains(&value) {
            return Ok(value);
        }
        Err(format!("{name} is \"{value}\"; it takes {takes} from {} to {}", range.start(), range.end()))
    }

    /// A duration in the grammar of the requests: `10 s`, `1 min`.
    pub fn duration(&self, name: &'static str, default: &str, least_seconds: f64) -> Result<Duration, String> {
        let value = self.get(name).unwrap_or_else(|| default.to_owned());
        let refused = |hint: &str| format!("{name} is \"{value}\"; {hint}");
        let time = parse::<dimension::Time>(&value).map_err(|error| {
            let [hours, minutes] = error.examples;
            refused(&format!("it takes a duration such as \"{hours}\" or \"{minutes}\""))
        })?;
        if !(least_seconds..=MAX_SECONDS).contains(&time.si.get::<second>()) {
            return Err(refused(&format!("it takes a duration of {least_seconds} s to 24 h")));
        }
        Duration::try_from_secs_f64(time.si.get::<second>()).map_err(|_| refused("it takes a duration such as 10 s"))
    }
}

/// Whether a text is the address of a web service, without user, query or fragment.
pub(super) fn is_plain_address(text: &str) -> bool {
    Url::parse(text).is_ok_and(|url| {
        let has_user = !url.username().is_empty() || url.password().is_some();
        ["http", "https"].contains(&url.scheme()) && !has_user && url.query().is_none() && url.fragment().is_none()
    })
}

/// One value of a variable.
pub(super) fn parsed<T: FromStr>(name: &str, value: &str, takes: &str) -> Result<T, String> {
    value.parse().map_err(|_| format!("{name} is \"{value}\"; it takes {takes}"))
}
