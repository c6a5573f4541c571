//! A sheet to draw on: the one place that writes SVG.
//!
//! The sheet is [`WIDTH`] units wide, so that its text stays legible where a phone shows it 320 pixels wide, and as high as what
//! is drawn needs. All text goes through [`Sheet::text`]: it is escaped there by the SVG library, after characters that XML
//! does not hold were replaced.

use svg::Node;
use svg::node::Text;
use svg::node::element::Element;

use super::letters::{HEAD, LEADING, SIZE, wrap};
use super::style;

/// The width of every sheet, in units.
pub const WIDTH: f64 = 360.0;
/// The margin at both sides.
pub const MARGIN: f64 = 8.0;
/// The width inside the margins.
pub const INNER: f64 = WIDTH - 2.0 * MARGIN;

/// A point of the sheet, from its upper left corner.
pub type Point = (f64, f64);

/// A sheet, and what is drawn on it so far.
#[derive(Default)]
pub struct Sheet {
    drawn: Vec<Element>,
}

impl Sheet {
    /// A straight line.
    pub fn line(&mut self, class: &str, from: Point, to: Point) {
        self.polyline(class, &[from, to]);
    }

    /// Straight lines from point to point.
    pub fn polyline(&mut self, class: &str, points: &[Point]) {
        self.path(class, &outline(points));
    }

    /// Straight lines from point to point and back to the first.
    pub fn polygon(&mut self, class: &str, points: &[Point]) {
        self.path(class, &format!("{}Z", outline(points)));
    }

    /// A rectangle by two opposite corners.
    pub fn rectangle(&mut self, class: &str, from: Point, to: Point) {
        self.polygon(class, &[from, (to.0, from.1), to, (from.0, to.1)]);
    }

    /// A circle.
    pub fn circle(&mut self, class: &str, middle: Point, radius: f64) {
        let mut circle = Element::new("circle");
        for (name, value) in [("cx", middle.0), ("cy", middle.1), ("r", radius)] {
            circle.assign(name, number(value));
        }
        circle.assign("class", class);
        self.drawn.push(circle);
    }

    /// A quarter of a circle round `middle`, from one point on it to another.
    pub fn arc(&mut self, class: &str, from: Point, to: Point, radius: f64, clockwise: bool) {
        let radius = number(radius);
        let sweep = u8::from(clockwise);
        self.path(class, &format!("M{}A{radius} {radius} 0 0 {sweep} {}", pair(from), pair(to)));
    }

    /// Parallel lines at 45° within a rectangle.
    pub fn hatch(&mut self, class: &str, from: Point, to: Point, step: f64) {
        let (left, right) = (from.0.min(to.0), from.0.max(to.0));
        let (top, bottom) = (from.1.min(to.1), from.1.max(to.1));
        let height = bottom - top;
        let mut lines = String::new();
        let mut foot = left - height + step;
        while foot < right {
            // From the foot upwards to the right, cut off at both sides.
            let (start, end) = (foot.max(left), (foot + height).min(right));
            if end > start {
                lines += &outline(&[(start, bottom - (start - foot)), (end, bottom - (end - foot))]);
            }
            foot += step;
        }
        if !lines.is_empty() {
            self.path(class, &lines);
        }
    }

    /// A line with an open head at its end.
    pub fn arrow(&mut self, class: &str, from: Point, to: Point) {
        self.line(class, from, to);
        self.head(class, from, to);
    }

    /// An open arrow head at `to`, as of a line that comes from `from`.
    pub fn head(&mut self, class: &str, from: Point, to: Point) {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        let length = x.hypot(y).max(1e-9);
        let (x, y) = (5.0 * x / length, 5.0 * y / length);
        let wing = |side: f64| (to.0 - x - side * 0.55 * y, to.1 - y + side * 0.55 * x);
        self.polyline(class, &[wing(1.0), to, wing(-1.0)]);
    }

    /// The tick that ends a dimension, at 45° through a point.
    pub fn tick(&mut self, at: Point) {
        self.line("line", (at.0 - 3.0, at.1 + 3.0), (at.0 + 3.0, at.1 - 3.0));
    }

    /// A text with its baseline at a point: from there on, or as the class says (`middle`, `end`).
    pub fn text(&mut self, class: &str, at: Point, words: &str) {
        let mut text = Element::new("text");
        text.assign("x", number(at.0));
        text.assign("y", number(at.1));
        if !class.is_empty() {
            text.assign("class", class);
        }
        text.append(Text::new(plain(words)));
        self.drawn.push(text);
    }

    /// A text in as many lines as it needs, its upper edge at `top`; gives its lower edge.
    pub fn paragraph(&mut self, class: &str, at: Point, most: f64, words: &str) -> f64 {
        let size = if class.contains("head") { HEAD } else { SIZE };
        let bold = class.contains("head") || class.contains("strong");
        let mut bottom = at.1;
        // A sign of a unit never begins a line.
        let words = plain(words).replace(" %", "\u{a0}%").replace(" µH", "\u{a0}µH").replace(" °", "\u{a0}°");
        for line in wrap(&words, most, size, bold) {
            bottom += LEADING * size;
            self.text(class, (at.0, bottom - 0.3 * size), &line);
        }
        bottom
    }

    /// The finished drawing, `height` units high: named and told for readers that do not see it.
    ///
    /// `name` keeps the ids of drawings on one page apart.
    pub fn finish(self, name: &str, title: &str, told: &str, height: f64) -> String {
        let height = height.ceil();
        let child = |tag: &str, id: Option<String>, words: &str| {
            let mut child = Element::new(tag);
            if let Some(id) = id {
                child.assign("id", id);
            }
            child.append(Text::new(plain(words)));
            child
        };
        let mut svg = Element::new("svg");
        svg.assign("xmlns", "http://www.w3.org/2000/svg");
        svg.assign("viewBox", format!("0 0 {} {}", number(WIDTH), number(height)));
        svg.assign("class", style::ROOT);
        svg.assign("role", "img");
        svg.assign("lang", "en");
        svg.assign("aria-labelledby", format!("{name}-title {name}-desc"));
        svg.append(child("title", Some(format!("{name}-title")), title));
        svg.append(child("desc", Some(format!("{name}-desc")), told));
        svg.append(child("style", None, &style::sheet()));
        let mut paper = Self::default();
        paper.rectangle("paper", (0.0, 0.0), (WIDTH, height));
        for element in paper.drawn.into_iter().chain(self.drawn) {
            svg.append(element);
        }
        format!("{svg}\n")
    }

    fn path(&mut self, class: &str, way: &str) {
        let mut path = Element::new("path");
        path.assign("class", class);
        path.assign("d", way);
        self.drawn.push(path);
    }
}

/// The text without characters that XML does not hold or that turn the direction of reading; each leaves a mark.
pub fn plain(words: &str) -> String {
    let is_plain = |letter: char| match letter {
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}' => false,
        letter => !letter.is_control() || letter.is_whitespace(),
    };
    let mark = |letter: char| if is_plain(letter) { letter } else { '\u{fffd}' };
    // A space that ties a number to its unit stays; the others are one to the eye.
    let space = |letter: char| if letter.is_whitespace() && letter != '\u{a0}' { ' ' } else { letter };
    words.chars().map(mark).map(space).collect()
}

/// A number of the drawing, to a tenth of a unit.
fn number(value: f64) -> String {
    let tenths = (value * 10.0).round() / 10.0 + 0.0;
    tenths.to_string()
}

fn pair(point: Point) -> String {
    format!("{} {}", number(point.0), number(point.1))
}

fn outline(points: &[Point]) -> String {
    let mut way = String::new();
    for (index, point) in points.iter().enumerate() {
        way.push(if index == 0 { 'M' } else { 'L' });
        way += &pair(*point);
    }
    way
}

#[cfg(test)]
mod tests {
    use super::{Sheet, plain};

    #[test]
    fn text_is_escaped_and_holds_only_what_xml_holds() {
        let mut sheet = Sheet::default();
        sheet.text("", (1.0, 2.0), "a<script>&\"'\u{0}\u{1b}\u{202e}b");
        let drawn = sheet.finish("x", "<t>", "]]>&", 10.0);
        assert!(drawn.contains("a&lt;script&gt;&amp;\"'\u{fffd}\u{fffd}\u{fffd}b"), "{drawn}");
        assert!(drawn.contains(">&lt;t&gt;</title>") && drawn.contains(">]]&gt;&amp;</desc>"), "{drawn}");
    }

    #[test]
    fn every_kind_of_space_is_one_but_that_which_ties() {
        assert_eq!(plain("a\tb\nc\u{2003}d\u{85}e"), "a b c d e");
        assert_eq!(plain("24\u{a0}ft"), "24\u{a0}ft");
    }

    #[test]
    fn hatching_stays_within_its_rectangle() {
        let mut sheet = Sheet::default();
        sheet.hatch("fine", (10.0, 20.0), (50.0, 26.0), 4.0);
        let drawn = sheet.drawn.first().map(ToString::to_string).unwrap_or_default();
        let numbers = drawn.split(|letter: char| !letter.is_ascii_digit() && letter != '.');
        let numbers: Vec<f64> = numbers.filter_map(|text| text.parse().ok()).collect();
        assert!(numbers.len() > 20, "{drawn}");
        for point in numbers.chunks(2) {
            assert!((10.0..=50.0).contains(&point[0]) && (20.0..=26.0).contains(&point[1]), "{point:?}");
        }
    }
}
