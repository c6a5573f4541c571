//! The words of reports: a calculation says what, as a [`Statement`], and this module says how, in a language.
//!
//! - `en/*.ftl`, `es/*.ftl`, `fr/*.ftl`: the sentences, a file for each question or theme, in the syntax of Project Fluent
//! - `es/members/*.ftl`, `fr/members/*.ftl`: the labels and descriptions of closed lists, which stand in the code in English
//! - `language`: the languages, each with its files
//! - `catalog`: the sentences of a language, read once
//! - `facts`: numbers, quantities and members of closed lists as they stand in a sentence
//! - `members`: the words of closed lists
//! - `messages`: the sentences as they are published
//! - `numbers`: the decimal mark and the signs of units
//! - `reader`: whom a page or a drawing is written for: units and language
//! - `say`: the sentence of a statement
//!
//! A sentence is looked up by the id of the statement, and each fact is a variable of its name. Some facts have further forms:
//! `$low-number` is a number without its unit, `$class-code` the code of a member, `$class-label` its name
//! as in a menu and `$class-description` what it means.
//!
//! ```
//! use loopwright::calculation::report::Statement;
//! use loopwright::wording::{Language, say};
//!
//! let statement = Statement::new("characteristics-high-resistance")
//!     .quantity("dc_resistance", 5.21, 1, "ohm")
//!     .quantity("limit", 4.0, 0, "ohm");
//! let words = "Loop and lead-in have 5.2 ohm; one agency accepts at most 4. Take a heavier or shorter lead-in.";
//! assert_eq!(say(&statement, Language::English), words);
//! ```
//!
//! [`Statement`]: crate::calculation::report::Statement

mod catalog;
mod facts;
mod language;
mod members;
mod messages;
mod numbers;
mod reader;
mod say;

pub use catalog::FactForm;
pub use language::Language;
pub use members::MemberIn;
pub use messages::{PublishedMessage, messages};
pub use numbers::{NARROW_NO_BREAK_SPACE, NO_BREAK_SPACE, colon, decimal, unit_sign, with_unit};
pub use reader::Reader;
pub use say::say;

use std::borrow::Cow;

use catalog::Catalog;

use crate::calculation::report::{HasMessages, Meaning};

/// The step that makes a report readable.
pub trait Worded: Sized {
    /// The same with the words of every message, in a language.
    #[must_use]
    fn worded(self, language: Language) -> Self;
}

impl<T: HasMessages> Worded for T {
    fn worded(mut self, language: Language) -> Self {
        self.each_message(&mut |message| {
            if !message.has_words() {
                let words = match message.meaning() {
                    Meaning::Sentence(statement) => say(statement, language),
                    Meaning::Value(statement) => say(statement, Language::English),
                    Meaning::Label(member) => Cow::Borrowed(members::label_of(member, language)),
                    Meaning::Description(member) => Cow::Borrowed(members::description_of(member, language)),
                };
                message.set_words(words);
            }
        });
        self
    }
}

/// Reads the sentences of all languages, before the first request waits for them.
pub fn prepare() {
    for language in Language::ALL {
        Catalog::of(*language);
    }
}
