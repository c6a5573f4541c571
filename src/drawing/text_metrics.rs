//! How wide text is at most, and where it wraps.
//!
//! The reader's device chooses the font, so widths are those of the widest of the usual sans-serif faces, in classes of letters;
//! measured for this project on two free faces. A narrower face leaves space.

/// The size of all text except headings, in units of the drawing.
pub const TEXT_SIZE: f64 = 11.0;
/// The size of headings.
pub const HEADING_SIZE: f64 = 14.0;
/// From line to line of text, as a multiple of its size.
pub const LINE_HEIGHT: f64 = 1.25;
/// How far the baseline of a text lies below the middle of its letters.
pub const MIDDLE_TO_BASELINE: f64 = 0.36 * TEXT_SIZE;
/// How much wider bold letters are.
const BOLD_FACTOR: f64 = 1.14;

/// The height of lines of text, in units of the drawing.
pub fn lines_height(count: usize) -> f64 {
    count as f64 * LINE_HEIGHT * TEXT_SIZE
}

/// The largest width that a text can have, in units of the drawing.
pub fn max_width(text: &str, size: f64, bold: bool) -> f64 {
    let width: f64 = text.chars().map(letter_width).sum();
    width * size * if bold { BOLD_FACTOR } else { 1.0 }
}

/// The width of a letter, as a multiple of the size of the text.
fn letter_width(letter: char) -> f64 {
    match without_accent(letter) {
        ' ' | '\u{a0}' | '\u{202f}' | 'i' | 'j' | 'l' | '.' | ',' | '\'' | '|' => 0.34,
        ':' | ';' | '!' | '/' | '-' | 'I' | 'f' | 't' | 'r' | '(' | ')' | '[' | ']' => 0.44,
        'c' | 's' | 'z' | '′' | '″' | '’' | '‘' | '¿' | '¡' | '·' => 0.56,
        'k' | 'v' | 'x' | 'y' => 0.6,
        'm' | 'M' | 'W' | '%' | '@' => 1.02,
        'w' | '#' | '^' | '~' | '+' | '=' | '<' | '>' | '−' | '×' | '≥' => 0.85,
        'A'..='Z' | '&' => 0.79,
        ' '..='~' | 'µ' => 0.65,
        // Scripts whose letters are as wide as high, letters with rare accents, and marks of any kind.
        _ => 1.1,
    }
}

/// The letter of which an accented one of Spanish or French has the width.
fn without_accent(letter: char) -> char {
    match letter {
        'á' | 'à' | 'â' => 'a',
        'é' | 'è' | 'ê' | 'ë' => 'e',
        // An accent is wider than the letter below it.
        'í' | 'î' | 'ï' => 'r',
        'ó' | 'ô' => 'o',
        'ú' | 'ù' | 'û' | 'ü' => 'u',
        'ç' => 'c',
        'ñ' | '«' | '»' | '–' => 'n',
        'Á' | 'À' | 'Â' => 'A',
        'É' | 'È' | 'Ê' | 'Ë' => 'E',
        'Í' | 'Î' | 'Ï' => 'I',
        'Ó' | 'Ô' => 'O',
        'Ú' | 'Ù' | 'Û' => 'U',
        'Ç' => 'C',
        'Ñ' => 'N',
        other => other,
    }
}

/// Breaks a text into lines no wider than `line_width`, at plain spaces only; a word that is longer than a line is broken as well.
pub fn wrap(text: &str, line_width: f64, size: f64, bold: bool) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if max_width(&longer, size, bold) <= line_width {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if max_width(&line, size, bold) > line_width && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::replace(&mut line, letter.to_string()));
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::{TEXT_SIZE, max_width, wrap};

    #[test]
    fn lines_hold_every_word_in_order_and_none_is_too_wide() {
        let text = "Add the role between_leaves: without it a vehicle in the sweep of a leaf is seen by no loop.";
        for width in [60.0, 100.0, 320.0] {
            let lines = wrap(text, width, TEXT_SIZE, false);
            assert!(lines.iter().all(|line| max_width(line, TEXT_SIZE, false) <= width), "{width}: {lines:?}");
            let glued: String = lines.concat().split_whitespace().collect();
            assert_eq!(glued, text.split_whitespace().collect::<String>());
        }
        assert!(wrap(text, 320.0, TEXT_SIZE, false).len() > 1);
    }

    #[test]
    fn accents_add_no_width() {
        let width = |text| max_width(text, TEXT_SIZE, false);
        assert_eq!(width("éàñçü"), width("eancu"));
        assert_eq!(width("12\u{202f}%"), width("12 %"));
    }

    #[test]
    fn a_word_longer_than_a_line_is_broken() {
        let word = "W".repeat(64);
        let lines = wrap(&word, 100.0, TEXT_SIZE, false);
        assert!(lines.len() > 5 && lines.iter().all(|line| max_width(line, TEXT_SIZE, false) <= 100.0), "{lines:?}");
        assert_eq!(lines.concat(), word);
        assert_eq!(wrap(" ", 100.0, TEXT_SIZE, false), Vec::<String>::new());
    }
}
