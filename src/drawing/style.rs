//! The look of drawings: thin ink on paper, by the classes of their elements.
//!
//! Colours and weights stand at each element as presentation attributes, so that a page may forbid style sheets and a converter
//! need not know them. A sheet of the page beats them. A full drawing has a style sheet for what attributes cannot say: dark
//! where the reader's device asks, light in print, and the reader's own colours. Its rules weigh less than a page's: the class of
//! the drawing counts nothing in them. Colour says nothing that is not also said in words.

use std::fmt::Write;

use svg::Node;
use svg::node::element::Element;

use super::options::DrawingTheme;
use Paint::{Faint, Fill, Ink, Paper, Stop, Wire};

/// The class of the outermost element.
pub const ROOT_CLASS: &str = "loopwright-drawing";

/// What every element inherits. It stands at a group: pages often have rules for `svg` itself.
pub const INHERITED: [(&str, &str); 4] =
    [("fill", "none"), ("stroke-linejoin", "round"), ("font-family", "sans-serif"), ("font-size", "11")];

/// A colour, by what it is for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Paint {
    Paper,
    Ink,
    Faint,
    Wire,
    Fill,
    Stop,
}

impl Paint {
    /// A stop comes behind the ink of all text.
    const ALL: [Self; 6] = [Paper, Ink, Faint, Wire, Fill, Stop];

    fn light(self) -> &'static str {
        match self {
            Paper => "#ffffff",
            Ink => "#16191d",
            Faint => "#79828c",
            Wire => "#0b4f94",
            Fill => "#d6dee6",
            Stop => "#a3140c",
        }
    }

    fn dark(self) -> &'static str {
        match self {
            Paper => "#14171b",
            Ink => "#eceff2",
            Faint => "#8b949e",
            Wire => "#86bdf7",
            Fill => "#39444f",
            Stop => "#ff9d93",
        }
    }

    /// The colour where the reader chose all colours.
    fn forced(self) -> &'static str {
        match self {
            Paper => "Canvas",
            Ink | Faint | Stop => "CanvasText",
            Wire => "LinkText",
            // No pair of system colours keeps ink legible on a shade.
            Fill => "CanvasText;fill-opacity:.25",
        }
    }
}

/// A class of elements, and what they look like.
pub struct DrawingClass {
    /// Its name.
    pub name: &'static str,
    fill: Option<Paint>,
    stroke: Option<Paint>,
    shape: &'static [(&'static str, &'static str)],
}

impl DrawingClass {
    const fn of(
        name: &'static str,
        fill: Option<Paint>,
        stroke: Option<Paint>,
        shape: &'static [(&'static str, &'static str)],
    ) -> Self {
        Self { name, fill, stroke, shape }
    }
}

/// All classes; `openapi/GUIDE.md` says what each is. Pages have rules for them: none is renamed or removed.
pub const CLASSES: [DrawingClass; 21] = [
    DrawingClass::of("paper", Some(Paper), None, &[]),
    DrawingClass::of("line", None, Some(Ink), &[]),
    DrawingClass::of("fine", None, Some(Faint), &[("stroke-width", ".6")]),
    DrawingClass::of("heavy", None, Some(Ink), &[("stroke-width", "2")]),
    DrawingClass::of("dashed", None, Some(Ink), &[("stroke-width", ".9"), ("stroke-dasharray", "4 3")]),
    DrawingClass::of("chain", None, Some(Ink), &[("stroke-width", ".9"), ("stroke-dasharray", "9 2.5 2 2.5")]),
    DrawingClass::of("wire", None, Some(Wire), &[("stroke-width", "1.6")]),
    DrawingClass::of("wiredot", Some(Wire), None, &[]),
    DrawingClass::of("core", Some(Paper), Some(Wire), &[]),
    DrawingClass::of("dot", Some(Ink), None, &[]),
    DrawingClass::of("balloon", Some(Paper), Some(Ink), &[]),
    DrawingClass::of("fill", Some(Fill), None, &[]),
    DrawingClass::of("frame", None, Some(Stop), &[("stroke-width", "1.6")]),
    DrawingClass::of("stop", Some(Stop), None, &[]),
    DrawingClass::of("head", None, None, &[("font-size", "14"), ("font-weight", "bold")]),
    DrawingClass::of("strong", None, None, &[("font-weight", "bold")]),
    DrawingClass::of("middle", None, None, &[("text-anchor", "middle")]),
    DrawingClass::of("end", None, None, &[("text-anchor", "end")]),
    // What these are shows in the lines that they are drawn with.
    DrawingClass::of("slot", None, None, &[]),
    DrawingClass::of("conduit", None, None, &[]),
    DrawingClass::of("pullbox", None, None, &[]),
];

/// The classes of the outermost element: the second says which rules of a style sheet are for it.
pub fn root_classes(theme: DrawingTheme) -> String {
    format!("{ROOT_CLASS} {}", theme_class(theme))
}

fn theme_class(theme: DrawingTheme) -> &'static str {
    match theme {
        DrawingTheme::Auto => "loopwright-auto",
        DrawingTheme::Light => "loopwright-light",
        DrawingTheme::Dark => "loopwright-dark",
    }
}

/// Gives an element its classes, separated by spaces, and what they look like.
pub fn dress(element: &mut Element, classes: &str, theme: DrawingTheme) {
    let colour = |paint: Paint| if theme == DrawingTheme::Dark { paint.dark() } else { paint.light() };
    if element.get_name() == "text" {
        element.assign("fill", colour(Ink));
    }
    if !classes.is_empty() {
        element.assign("class", classes);
    }
    for class in classes.split(' ').filter_map(|name| CLASSES.iter().find(|class| class.name == name)) {
        for (property, paint) in [("fill", class.fill), ("stroke", class.stroke)] {
            if let Some(paint) = paint {
                element.assign(property, colour(paint));
            }
        }
        for (name, value) in class.shape {
            element.assign(*name, *value);
        }
    }
}

/// The style sheet of a full drawing.
pub fn style_sheet(theme: DrawingTheme) -> String {
    let rules_where =
        |media: &str, colour: fn(Paint) -> &'static str| format!("@media {media}{{{}}}", rules(theme, colour));
    let first = match theme {
        DrawingTheme::Auto => rules_where("screen and (prefers-color-scheme:dark)", Paint::dark),
        DrawingTheme::Light => String::new(),
        DrawingTheme::Dark => rules_where("print", Paint::light),
    };
    first + &rules_where("(forced-colors:active)", Paint::forced)
}

/// A rule for each colour.
fn rules(theme: DrawingTheme, colour: fn(Paint) -> &'static str) -> String {
    let mut rules = String::new();
    for property in ["fill", "stroke"] {
        let paint_of = |class: &DrawingClass| if property == "fill" { class.fill } else { class.stroke };
        let mut done = Vec::new();
        for value in Paint::ALL.map(colour) {
            let is_so = |class: &&DrawingClass| paint_of(class).is_some_and(|paint| colour(paint) == value);
            let mut of: Vec<_> = CLASSES.iter().filter(is_so).map(|class| format!(".{}", class.name)).collect();
            if property == "fill" && value == colour(Ink) {
                of.push("text".to_owned());
            }
            if !of.is_empty() && !done.contains(&value) {
                done.push(value);
                let _ = write!(rules, ":where(.{}) :is({}){{{property}:{value}}}", theme_class(theme), of.join(","));
            }
        }
    }
    rules
}

#[cfg(test)]
mod tests {
    use super::{CLASSES, style_sheet};
    use crate::drawing::options::DrawingTheme;

    #[test]
    fn each_media_rule_has_every_class_with_a_colour_once_for_each_property() {
        for theme in [DrawingTheme::Auto, DrawingTheme::Light, DrawingTheme::Dark] {
            let sheet = style_sheet(theme);
            let parts: Vec<_> = sheet.split("@media ").filter(|part| !part.is_empty()).collect();
            assert_eq!(parts.len(), if theme == DrawingTheme::Light { 1 } else { 2 }, "{sheet}");
            for part in parts {
                for class in &CLASSES {
                    let times = part.split(&['(', ')', ','][..]).filter(|name| *name == format!(".{}", class.name));
                    let colours = usize::from(class.fill.is_some()) + usize::from(class.stroke.is_some());
                    assert_eq!(times.count(), colours, "{} in {part}", class.name);
                }
                assert_eq!(part.matches(",text)").count(), 1, "{part}");
            }
        }
    }

    #[test]
    fn names_of_classes_differ() {
        let mut names: Vec<_> = CLASSES.iter().map(|class| class.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), CLASSES.len());
    }
}
