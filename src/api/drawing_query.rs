//! The parameters that every drawing takes: its colours, how much of it is drawn, and what its ids begin with.

use utoipa::PartialSchema;
use utoipa::openapi::schema::{ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Schema};

use super::problem::Problem;
use super::query::{OtherParameters, QueryFaults, SentParameters};
use super::structure::StructureFault;
use crate::drawing::DrawingOptions;
use crate::drawing::options::{DrawingContent, DrawingTheme};

/// The colours.
pub const THEME: &str = "theme";
/// How much is drawn.
pub const CONTENT: &str = "content";
/// What every id begins with.
pub const ID_PREFIX: &str = "id_prefix";

/// The parameters in the order of generated methods, with what each says.
pub const PARAMETERS: [(&str, &str); 3] = [
    (THEME, "The colours on a screen. Default `auto`."),
    (
        CONTENT,
        "How much is drawn. A `figure` has no style sheet and no text around the picture: for a page that has both itself. Default `full`.",
    ),
    (
        ID_PREFIX,
        "What every id in the drawing, and every reference to one, begins with: so that no two are alike on a page that shows several.",
    ),
];

/// The longest prefix, in characters.
pub const MAX_PREFIX_CHARS: usize = 32;

/// The schema of a parameter.
pub fn schema(name: &str) -> RefOr<Schema> {
    match name {
        THEME => DrawingTheme::schema(),
        CONTENT => DrawingContent::schema(),
        _ => ObjectBuilder::new()
            .schema_type(Type::String)
            .pattern(Some(format!("^[A-Za-z][A-Za-z0-9_-]{{0,{}}}$", MAX_PREFIX_CHARS - 1)))
            .max_length(Some(MAX_PREFIX_CHARS))
            .examples(["gate-1-"])
            .into(),
    }
}

/// Reads the parameters of a drawing whose request is a body. Others are ignored.
///
/// # Errors
/// 422 with each parameter at fault.
pub fn read(query: &str) -> Result<DrawingOptions, Problem> {
    let mut faults = QueryFaults::default();
    let sent = faults.parameters(query, &PARAMETERS.map(|(name, _)| name), OtherParameters::Ignored);
    let options = options(&mut faults, &sent);
    if faults.count > 0 {
        return Err(Problem::first_invalid_fields(faults.errors, faults.count));
    }
    Ok(options)
}

/// The options that parameters say; an empty one counts as absent.
pub fn options(faults: &mut QueryFaults, sent: &SentParameters) -> DrawingOptions {
    let usual = DrawingOptions::default();
    let id_prefix = sent.get(ID_PREFIX).map_or("", String::as_str);
    if !id_prefix.is_empty() && !is_prefix(id_prefix) {
        faults.add(ID_PREFIX, &StructureFault::NoIdPrefix { value: id_prefix, max_characters: MAX_PREFIX_CHARS });
    }
    DrawingOptions {
        theme: faults.member(THEME, sent, usual.theme),
        content: faults.member(CONTENT, sent, usual.content),
        id_prefix: id_prefix.to_owned(),
    }
}

fn is_prefix(text: &str) -> bool {
    let may_stand = |letter: char| letter.is_ascii_alphanumeric() || letter == '-' || letter == '_';
    text.starts_with(|letter: char| letter.is_ascii_alphabetic())
        && text.len() <= MAX_PREFIX_CHARS
        && text.chars().all(may_stand)
}

#[cfg(test)]
mod tests {
    use super::is_prefix;

    #[test]
    fn a_prefix_begins_with_a_letter_and_is_safe_in_an_id() {
        for prefix in ["a", "gate-1-", "Z_9", &"g".repeat(32)] {
            assert!(is_prefix(prefix), "{prefix}");
        }
        for text in ["", "1a", "-a", "a b", "a\"b", "ä", "a.b", "a\n", &"g".repeat(33)] {
            assert!(!is_prefix(text), "{text}");
        }
    }
}
