//! The languages that the service speaks.

/// A language of reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Language {
    /// English.
    English,
    /// Spanish, as in North America.
    Spanish,
    /// French, as in Canada.
    French,
}

/// The texts of the files of a folder, by their names.
macro_rules! files {
    ($folder:literal: $($file:literal)+) => {
        &[$(include_str!(concat!($folder, "/", $file, ".ftl"))),+]
    };
}

/// The texts of the files that every language has, and of those that are of this language alone.
macro_rules! themes {
    ($folder:literal) => {
        files!($folder: "characteristics" "response" "sizing" "compatibility" "materials" "cure" "plan" "faults" "existing" "input"
            "errors" "practice" "problems" "summary" "drawings" "sheet" "forms" "bill" "docs" "front")
    };
}

/// The texts of closed lists: a file for each module that declares some, and one for those of the service.
macro_rules! members {
    ($folder:literal) => {
        files!($folder: "cautions" "detectors" "existing_loops" "fault_signs" "fault_tests" "faults" "finding_codes" "job_steps"
            "lead_ins" "materials" "meter_readings" "roles" "sealants" "sealing" "service" "site" "sources" "vehicles" "winding" "wires")
    };
}

impl Language {
    /// All of them.
    pub const ALL: &'static [Self] = &[Self::English, Self::Spanish, Self::French];

    /// Its tag (BCP 47), which is also the name of its folder; the rules of plurals follow from it.
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
            Self::French => "fr",
        }
    }

    /// Its sentences.
    pub fn resources(self) -> &'static [&'static str] {
        match self {
            Self::English => themes!("en"),
            Self::Spanish => themes!("es"),
            Self::French => themes!("fr"),
        }
    }

    /// The labels and descriptions of closed lists; in English these stand in the code, where the lists are declared.
    pub fn members(self) -> &'static [&'static str] {
        match self {
            Self::English => &[],
            Self::Spanish => members!("es/members"),
            Self::French => members!("fr/members"),
        }
    }
}
