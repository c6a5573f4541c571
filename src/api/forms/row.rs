//! What is written by hand of a field: where a person meets it, and in which words.

use crate::calculation::report::Statement;

/// Whom a field is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Audience {
    /// What a customer at a gate knows, or what decides much.
    Usual,
    /// What a specialist may want to set.
    Specialist,
}

impl Audience {
    /// The value in a form.
    pub fn code(self) -> &'static str {
        match self {
            Self::Usual => "usual",
            Self::Specialist => "specialist",
        }
    }
}

/// Declares the sections of forms, in order: `Name "code" Label`.
macro_rules! sections {
    ($($(#[doc = $doc:literal])+ $name:ident $code:literal $label:expr;)+) => {
        /// A section of a form.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Section {
            $($(#[doc = $doc])+ $name,)+
        }

        impl Section {
            /// All of them, in order.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// The value in a form.
            pub fn code(self) -> &'static str {
                match self { $(Self::$name => $code),+ }
            }

            /// Its heading.
            pub fn label(self) -> Statement {
                match self { $(Self::$name => $label),+ }
            }
        }
    };
}

sections! {
    /// What vehicles pass through.
    Opening "opening" Statement::new("forms-section-opening");
    /// What loops are for, and whom they see.
    Loops "loops" Statement::new("forms-section-loops");
    /// What loops lie in.
    Pavement "pavement" Statement::new("forms-section-pavement");
    /// The pair to the unit.
    LeadIn "lead_in" Statement::new("forms-section-lead-in");
    /// The wire of the loops.
    Wire "wire" Statement::new("forms-section-wire");
    /// Saw and slots.
    Cuts "cuts" Statement::new("forms-section-cuts");
    /// The unit.
    Detector "detector" Statement::new("forms-section-detector");
    /// The sealant and its data sheet.
    Sealant "sealant" Statement::new("forms-section-sealant");
    /// Start, weather and traffic.
    Day "day" Statement::new("forms-section-day");
    /// How fast the crew works.
    Work "work" Statement::new("forms-section-work");
    /// What things cost.
    Prices "prices" Statement::new("forms-section-prices");
    /// What is planned.
    Plan "plan" Statement::new("forms-section-plan");
}

/// What is taken where a field is left out, from the constants that the calculations take it from.
#[derive(Clone, Debug, PartialEq)]
pub enum FieldDefault {
    /// A quantity, as a request would hold it.
    Quantity(&'static str),
    /// A member of a closed list.
    Code(&'static str),
    /// Members of a closed list; none where nothing is taken.
    Codes(Vec<&'static str>),
    /// A number.
    Number(f64),
    /// How many.
    Count(u32),
    /// Yes or no.
    Flag(bool),
}

/// What is taken of a list where a menu elsewhere has a member.
pub struct DefaultByOption {
    /// The field of that menu.
    pub pointer: &'static str,
    /// The member.
    pub code: &'static str,
    /// What is then taken.
    pub default_codes: Vec<&'static str>,
}

/// A field of a form, as far as it is not derived from the request.
pub struct Row {
    /// Where its value stands in a request, as `errors[].pointer` names it.
    pub pointer: &'static str,
    /// Its section.
    pub section: Section,
    /// Whom it is for.
    pub audience: Audience,
    /// Its name.
    pub label: Statement,
    /// What to measure or to choose.
    pub help: Statement,
    /// A text that is taken, in US customary and in metric units, where the one of the request would not be usual here.
    pub example: Option<[&'static str; 2]>,
    /// What is taken where it is left out and nothing else speaks against it.
    pub default: Option<FieldDefault>,
    /// What its default depends on.
    pub default_words: Option<Statement>,
    /// What is taken by a member of another menu.
    pub defaults_by_option: Vec<DefaultByOption>,
}

impl Row {
    /// A field with the name that the job sheet has for it, and without a default.
    pub fn new(pointer: &'static str, audience: Audience, section: Section, help: Statement) -> Self {
        let label = name_on_sheet(pointer);
        let defaults_by_option = Vec::new();
        Self {
            pointer,
            section,
            audience,
            label,
            help,
            example: None,
            default: None,
            default_words: None,
            defaults_by_option,
        }
    }

    /// The same with a name of its own.
    pub fn called(self, label: Statement) -> Self {
        Self { label, ..self }
    }

    /// The same with an example of its own, in US customary and in metric units.
    pub fn such_as(self, example: [&'static str; 2]) -> Self {
        Self { example: Some(example), ..self }
    }

    /// The same with a default.
    pub fn defaulting_to(self, default: FieldDefault) -> Self {
        Self { default: Some(default), ..self }
    }

    /// The same with what its default depends on.
    pub fn depending_on(self, default_words: Statement) -> Self {
        Self { default_words: Some(default_words), ..self }
    }
}

fn name_on_sheet(pointer: &'static str) -> Statement {
    Statement::new("sheet-field").text("field", pointer.trim_start_matches("#/").replace('/', "-"))
}

/// Declares the fields of a form, a line for each. One without a `label` has the name that the job sheet has for it; `like` states an
/// example, `is` a fixed default, and `or` says what a default depends on.
macro_rules! rows {
    ($($audience:ident $section:ident $pointer:literal: $(label $label:expr,)? help $help:expr $(, like $example:expr)? $(, is $default:expr)? $(, or $words:expr)?;)+) => {
        vec![$(
            $crate::api::forms::row::Row::new(
                $pointer,
                $crate::api::forms::row::Audience::$audience,
                $crate::api::forms::row::Section::$section,
                $help,
            )
            $(.called($label))?
            $(.such_as($example))?
            $(.defaulting_to($default))?
            $(.depending_on($words))?
        ),+]
    };
}
pub(super) use rows;
