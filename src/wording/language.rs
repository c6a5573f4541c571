//! The languages that the service speaks.

/// A language of reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// English.
    English,
}

impl Language {
    /// All of them.
    pub const ALL: &'static [Self] = &[Self::English];

    /// Its tag (BCP 47), which is also the name of its folder; the rules of plurals follow from it.
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
        }
    }

    /// Its sentences.
    pub fn resources(self) -> &'static [&'static str] {
        match self {
            Self::English => &[include_str!("en/characteristics.ftl"), include_str!("en/input.ftl")],
        }
    }
}
