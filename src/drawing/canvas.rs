//! The canvas of a drawing: the only file that writes SVG.
//!
//! A canvas is [`WIDTH`] units wide, so that its text is 9 pixels high where a page shows it 280 pixels wide, and as high as what
//! is drawn needs. All text goes through [`Canvas::text`]: the SVG library escapes it there, after characters that XML
//! does not allow were replaced.

use svg::Node;
use svg::node::Text;
use svg::node::element::Element;

use super::options::{DrawingContent, DrawingOptions};
use super::style;
use super::text_metrics::{HEADING_SIZE, LINE_HEIGHT, TEXT_SIZE, lines_height, wrap};
use crate::wording::{Language, NARROW_NO_BREAK_SPACE, NO_BREAK_SPACE};

/// The width of every canvas, in units.
pub const WIDTH: f64 = 342.0;
/// The margin at both sides.
pub const MARGIN: f64 = 8.0;
/// The width inside the margins.
pub const INNER: f64 = WIDTH - 2.0 * MARGIN;
/// The space between parts of a drawing.
pub const GAP: f64 = 8.0;
/// How far the baseline of a line of text lies above the lower edge of the line.
const LINE_BOTTOM_TO_BASELINE: f64 = 3.4;

/// A point of the canvas, from its upper left corner.
pub type CanvasPoint = (f64, f64);

/// A canvas, and what is drawn on it so far.
pub struct Canvas {
    language: Language,
    options: DrawingOptions,
    elements: Vec<Element>,
}

impl Canvas {
    /// An empty canvas, whose text is of a language.
    pub fn new(language: Language, options: &DrawingOptions) -> Self {
        Self { language, options: options.clone(), elements: Vec::new() }
    }

    /// Whether only the picture is drawn, for a page that says the rest.
    pub fn is_figure(&self) -> bool {
        self.options.content == DrawingContent::Figure
    }

    /// A straight line.
    pub fn line(&mut self, class: &str, from: CanvasPoint, to: CanvasPoint) {
        self.polyline(class, &[from, to]);
    }

    /// Straight lines from point to point.
    pub fn polyline(&mut self, class: &str, points: &[CanvasPoint]) {
        self.path(class, &format_lines(points));
    }

    /// Straight lines from point to point and back to the first.
    pub fn polygon(&mut self, class: &str, points: &[CanvasPoint]) {
        self.path(class, &format!("{}Z", format_lines(points)));
    }

    /// A rectangle by two opposite corners.
    pub fn rectangle(&mut self, class: &str, from: CanvasPoint, to: CanvasPoint) {
        self.polygon(class, &[from, (to.0, from.1), to, (from.0, to.1)]);
    }

    /// A circle.
    pub fn circle(&mut self, class: &str, middle: CanvasPoint, radius: f64) {
        let mut circle = Element::new("circle");
        for (name, value) in [("cx", middle.0), ("cy", middle.1), ("r", radius)] {
            circle.assign(name, format_number(value));
        }
        self.push(circle, class);
    }

    /// A quarter of a circle round `middle`, from one point on it to another.
    pub fn arc(&mut self, class: &str, from: CanvasPoint, to: CanvasPoint, radius: f64, clockwise: bool) {
        let radius = format_number(radius);
        let sweep = u8::from(clockwise);
        self.path(class, &format!("M{}A{radius} {radius} 0 0 {sweep} {}", format_point(from), format_point(to)));
    }

    /// Parallel lines at 45° within a rectangle.
    pub fn hatch(&mut self, class: &str, from: CanvasPoint, to: CanvasPoint, step: f64) {
        let (left, right) = (from.0.min(to.0), from.0.max(to.0));
        let (top, bottom) = (from.1.min(to.1), from.1.max(to.1));
        let height = bottom - top;
        let mut lines = String::new();
        let mut lower_end = left - height + step;
        while lower_end < right {
            // From the lower end up to the right, clipped at both sides.
            let (start, end) = (lower_end.max(left), (lower_end + height).min(right));
            if end > start {
                lines += &format_lines(&[(start, bottom - (start - lower_end)), (end, bottom - (end - lower_end))]);
            }
            lower_end += step;
        }
        if !lines.is_empty() {
            self.path(class, &lines);
        }
    }

    /// A line with an open head at its end.
    pub fn arrow(&mut self, class: &str, from: CanvasPoint, to: CanvasPoint) {
        self.line(class, from, to);
        self.arrow_head(class, from, to);
    }

    /// An open arrow head at `to`, as of a line that comes from `from`.
    pub fn arrow_head(&mut self, class: &str, from: CanvasPoint, to: CanvasPoint) {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        let length = x.hypot(y).max(1e-9);
        let (x, y) = (5.0 * x / length, 5.0 * y / length);
        let wing = |side: f64| (to.0 - x - side * 0.55 * y, to.1 - y + side * 0.55 * x);
        self.polyline(class, &[wing(1.0), to, wing(-1.0)]);
    }

    /// The tick that ends a dimension, at 45° through a point.
    pub fn tick(&mut self, at: CanvasPoint) {
        self.line("line", (at.0 - 3.0, at.1 + 3.0), (at.0 + 3.0, at.1 - 3.0));
    }

    /// A text with its baseline at a point: it starts there, or is anchored as the class says (`middle`, `end`).
    pub fn text(&mut self, class: &str, at: CanvasPoint, words: &str) {
        let mut text = Element::new("text");
        text.assign("x", format_number(at.0));
        text.assign("y", format_number(at.1));
        text.append(Text::new(sanitize(words)));
        self.push(text, class);
    }

    /// Lines of text one below the other, their middle at a point.
    pub fn text_lines(&mut self, class: &str, middle: CanvasPoint, lines: &[String]) {
        let top = middle.1 - lines_height(lines.len()) / 2.0;
        for (index, line) in lines.iter().enumerate() {
            self.text(class, (middle.0, top + lines_height(index + 1) - LINE_BOTTOM_TO_BASELINE), line);
        }
    }

    /// A text in as many lines as it needs, its upper edge at `at`; returns its lower edge.
    pub fn paragraph(&mut self, class: &str, at: CanvasPoint, line_width: f64, words: &str) -> f64 {
        let size = if class.contains("head") { HEADING_SIZE } else { TEXT_SIZE };
        let bold = class.contains("head") || class.contains("strong");
        let mut bottom = at.1;
        // The symbol of a unit must not begin a line.
        let words = sanitize(words).replace(" %", "\u{a0}%").replace(" µH", "\u{a0}µH").replace(" °", "\u{a0}°");
        for line in wrap(&words, line_width, size, bold) {
            bottom += LINE_HEIGHT * size;
            self.text(class, (at.0, bottom - 0.3 * size), &line);
        }
        bottom
    }

    /// The finished drawing, `height` units high, with a title and a description for readers that do not see it.
    ///
    /// `name` and the prefix that was asked for make the ids of several drawings on one page differ.
    pub fn finish(self, name: &str, title: &str, description: &str, height: f64) -> String {
        let height = height.ceil();
        let id = |part: &str| format!("{}{name}-{part}", self.options.id_prefix);
        let child = |tag: &str, id: Option<String>, words: &str| {
            let mut child = Element::new(tag);
            if let Some(id) = id {
                child.assign("id", id);
            }
            child.append(Text::new(sanitize(words)));
            child
        };
        let mut svg = Element::new("svg");
        svg.assign("xmlns", "http://www.w3.org/2000/svg");
        svg.assign("viewBox", format!("0 0 {} {}", format_number(WIDTH), format_number(height)));
        svg.assign("class", style::root_classes(self.options.theme));
        svg.assign("role", "img");
        svg.assign("lang", self.language.tag());
        svg.assign("aria-labelledby", format!("{} {}", id("title"), id("desc")));
        svg.append(child("title", Some(id("title")), title));
        svg.append(child("desc", Some(id("desc")), description));
        if !self.is_figure() {
            svg.append(child("style", None, &style::style_sheet(self.options.theme)));
        }
        let mut paper = Self::new(self.language, &self.options);
        paper.rectangle("paper", (0.0, 0.0), (WIDTH, height));
        let mut group = Element::new("g");
        for (attribute, value) in style::INHERITED {
            group.assign(attribute, value);
        }
        for element in paper.elements.into_iter().chain(self.elements) {
            group.append(element);
        }
        svg.append(group);
        format!("{svg}\n")
    }

    fn push(&mut self, mut element: Element, class: &str) {
        style::dress(&mut element, class, self.options.theme);
        self.elements.push(element);
    }

    fn path(&mut self, class: &str, data: &str) {
        let mut path = Element::new("path");
        path.assign("d", data);
        self.push(path, class);
    }
}

/// The text without characters that XML does not allow or that change the direction of reading; each is replaced by U+FFFD.
pub fn sanitize(words: &str) -> String {
    let is_allowed = |letter: char| match letter {
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}' => false,
        letter => !letter.is_control() || letter.is_whitespace(),
    };
    let replace = |letter: char| if is_allowed(letter) { letter } else { '\u{fffd}' };
    // A no-break space between a number and its unit stays; all other white space becomes a plain space.
    let stays = |letter: char| !letter.is_whitespace() || [NO_BREAK_SPACE, NARROW_NO_BREAK_SPACE].contains(&letter);
    let space = |letter: char| if stays(letter) { letter } else { ' ' };
    words.chars().map(replace).map(space).collect()
}

/// A number of the drawing, to 0.1 unit.
fn format_number(value: f64) -> String {
    let tenths = (value * 10.0).round() / 10.0 + 0.0;
    tenths.to_string()
}

fn format_point(point: CanvasPoint) -> String {
    format!("{} {}", format_number(point.0), format_number(point.1))
}

fn format_lines(points: &[CanvasPoint]) -> String {
    let mut data = String::new();
    for (index, point) in points.iter().enumerate() {
        data.push(if index == 0 { 'M' } else { 'L' });
        data += &format_point(*point);
    }
    data
}

#[cfg(test)]
mod tests {
    use super::{Canvas, sanitize};
    use crate::drawing::options::DrawingOptions;
    use crate::wording::Language;

    #[test]
    fn text_is_escaped_and_holds_only_what_xml_allows() {
        let mut canvas = Canvas::new(Language::English, &DrawingOptions::default());
        canvas.text("", (1.0, 2.0), "a<script>&\"'\u{0}\u{1b}\u{202e}b");
        let drawn = canvas.finish("x", "<t>", "]]>&", 10.0);
        assert!(drawn.contains("a&lt;script&gt;&amp;\"'\u{fffd}\u{fffd}\u{fffd}b"), "{drawn}");
        assert!(drawn.contains(">&lt;t&gt;</title>") && drawn.contains(">]]&gt;&amp;</desc>"), "{drawn}");
    }

    #[test]
    fn white_space_becomes_a_plain_space_except_no_break_spaces() {
        assert_eq!(sanitize("a\tb\nc\u{2003}d\u{85}e"), "a b c d e");
        assert_eq!(sanitize("24\u{a0}ft, 5\u{202f}%"), "24\u{a0}ft, 5\u{202f}%");
    }

    #[test]
    fn hatching_stays_within_its_rectangle() {
        let mut canvas = Canvas::new(Language::English, &DrawingOptions::default());
        canvas.hatch("fine", (10.0, 20.0), (50.0, 26.0), 4.0);
        let drawn = canvas.elements.first().map(ToString::to_string).unwrap_or_default();
        let way = drawn.split("d=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap_or_default();
        let numbers = way.split(|letter: char| !letter.is_ascii_digit() && letter != '.');
        let numbers: Vec<f64> = numbers.filter_map(|text| text.parse().ok()).collect();
        assert!(numbers.len() > 20, "{drawn}");
        for point in numbers.chunks(2) {
            assert!((10.0..=50.0).contains(&point[0]) && (20.0..=26.0).contains(&point[1]), "{point:?}");
        }
    }
}
