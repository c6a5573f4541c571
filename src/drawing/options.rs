//! How a drawing is made for the place where it stands: alone, in a page, in a page with a strict policy.

use crate::vocabulary::vocabulary;

vocabulary! {
    /// The colours of a drawing on a screen; in print it is light, unless it is a dark `figure`.
    DrawingTheme {
        Auto "auto" "As the device" "Light or dark, as the reader's device asks.";
        Light "light" "Light" "Dark ink on light paper.";
        Dark "dark" "Dark" "Light ink on dark paper.";
    }
}

vocabulary! {
    /// How much of a drawing is drawn.
    DrawingContent {
        Full "full" "All of it" "The picture with heading, legend, notes and warnings, and a style sheet of its own.";
        Figure "figure" "The picture alone" "The picture with its dimensions, for a page that says the rest and has a style sheet of its own. A job that must not be done still says so.";
    }
}

/// How a drawing is made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DrawingOptions {
    /// Its colours.
    pub theme: DrawingTheme,
    /// How much of it is drawn.
    pub content: DrawingContent,
    /// What every id in it begins with, so that no two are alike on a page.
    pub id_prefix: String,
}

impl Default for DrawingOptions {
    fn default() -> Self {
        Self { theme: DrawingTheme::Auto, content: DrawingContent::Full, id_prefix: String::new() }
    }
}
