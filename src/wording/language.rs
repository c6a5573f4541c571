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
            Self::English => &[
                include_str!("en/characteristics.ftl"),
                include_str!("en/response.ftl"),
                include_str!("en/sizing.ftl"),
                include_str!("en/compatibility.ftl"),
                include_str!("en/materials.ftl"),
                include_str!("en/cure.ftl"),
                include_str!("en/plan.ftl"),
                include_str!("en/faults.ftl"),
                include_str!("en/existing.ftl"),
                include_str!("en/input.ftl"),
                include_str!("en/errors.ftl"),
                include_str!("en/practice.ftl"),
                include_str!("en/summary.ftl"),
            ],
        }
    }
}
