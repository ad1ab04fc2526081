//! A sheet of paper to draw on: SVG written as text.
//!
//! The page's content security policy blocks `style` attributes, so looks come from classes and
//! presentation attributes. Numbers are written by a small function of our own: one decimal is
//! finer than a pixel, and number formatting is dear in bytes.

use crate::view::html::escape;

/// Height of the letters. [px]
pub(crate) const TEXT: f64 = 14.0;
/// Distance between two rows of text. [px]
pub(crate) const ROW: f64 = 17.0;

/// SVG text that grows.
pub(crate) struct Paper {
    text: String,
}

impl Paper {
    /// A sheet of this size in px. It shrinks with a narrower page and is hidden from screen
    /// readers, which get the words instead.
    pub fn new(width: f64, height: f64) -> Self {
        let mut paper = Self { text: String::with_capacity(2048) };
        paper.push("<svg xmlns=\"http://www.w3.org/2000/svg\" aria-hidden=\"true\"");
        paper.number("width", width);
        paper.number("height", height);
        paper.push(" viewBox=\"0 0");
        paper.pair(width, height);
        paper.push("\" font-size=\"14\" fill=\"none\">");
        paper
    }

    /// A clear sheet of this size in px, over another, for what can be tapped.
    pub fn over(width: f64, height: f64) -> Self {
        let mut paper = Self { text: String::with_capacity(1024) };
        paper.push("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"presentation\"");
        paper.number("width", width);
        paper.number("height", height);
        paper.push(" viewBox=\"0 0");
        paper.pair(width, height);
        paper.push("\">");
        paper
    }

    /// Writes people's text, in a quoted attribute.
    pub fn said(&mut self, name: &str, text: &str) {
        self.push(" ");
        self.push(name);
        self.push("=\"");
        escape(&mut self.text, text);
        self.push("\"");
    }

    /// A piece of a larger sheet in true size: all in mm, letters 4 mm high.
    pub fn in_millimetres(corner: (f64, f64), size: (f64, f64)) -> Self {
        let mut paper = Self { text: String::with_capacity(2048) };
        paper.push("<svg xmlns=\"http://www.w3.org/2000/svg\" aria-hidden=\"true\" width=\"");
        decimal(&mut paper.text, size.0);
        paper.push("mm\" height=\"");
        decimal(&mut paper.text, size.1);
        paper.push("mm\" viewBox=\"");
        paper.pair(corner.0, corner.1);
        paper.pair(size.0, size.1);
        paper.push("\" font-size=\"4\" fill=\"none\">");
        paper
    }

    /// Writes SVG as it is.
    pub fn push(&mut self, raw: &str) {
        self.text.push_str(raw);
    }

    /// Opens an element: `<name class="class"`.
    pub fn open(&mut self, name: &str, class: &str) {
        self.push("<");
        self.push(name);
        self.attribute("class", class);
    }

    /// Writes an attribute; its value comes from the program, never from people.
    pub fn attribute(&mut self, name: &str, value: &str) {
        self.push(" ");
        self.push(name);
        self.push("=\"");
        self.push(value);
        self.push("\"");
    }

    /// Writes an attribute that is a number.
    pub fn number(&mut self, name: &str, value: f64) {
        self.push(" ");
        self.push(name);
        self.push("=\"");
        decimal(&mut self.text, value);
        self.push("\"");
    }

    /// A path through points in px.
    pub fn path(&mut self, class: &str, points: &[(f64, f64)], closed: bool) {
        self.open("path", class);
        self.outline(points, closed);
        self.push("/>");
    }

    /// Upright lines that hang from the same height, as one path: `(x, length)` each.
    pub fn hanging_lines(&mut self, class: &str, top: f64, lines: &[(f64, f64)]) {
        self.open("path", class);
        self.push(" d=\"");
        for &(x, length) in lines {
            self.push("M");
            self.pair(x, top);
            self.push("v");
            decimal(&mut self.text, length);
        }
        self.push("\"/>");
    }

    /// The `d` attribute of a path through points.
    pub fn outline(&mut self, points: &[(f64, f64)], closed: bool) {
        self.push(" d=\"");
        for (at, &(x, y)) in points.iter().enumerate() {
            self.push(if at == 0 { "M" } else { "L" });
            self.pair(x, y);
        }
        self.push(if closed { "Z\"" } else { "\"" });
    }

    /// A text whose middle height is at `y`, along the direction `(cos, sin)`.
    pub fn text(&mut self, class: &str, at: (f64, f64), along: (f64, f64), text: &str) {
        self.open("text", class);
        let drop = TEXT * 0.35;
        let (x, y) = (at.0 - along.1 * drop, at.1 + along.0 * drop);
        if along.1 == 0.0 {
            self.number("x", x);
            self.number("y", y);
        } else {
            self.push(" transform=\"matrix(");
            for part in [along.0, along.1, -along.1, along.0] {
                // Four decimals, so that a long text keeps its place.
                digits(&mut self.text, part, 4);
                self.push(" ");
            }
            self.pair(x, y);
            self.push(")\"");
        }
        self.push(">");
        escape(&mut self.text, text);
        self.push("</text>");
    }

    /// The finished SVG.
    pub fn finish(mut self) -> String {
        self.push("</svg>");
        self.text
    }

    fn pair(&mut self, x: f64, y: f64) {
        self.push(" ");
        decimal(&mut self.text, x);
        self.push(" ");
        decimal(&mut self.text, y);
    }
}

/// Writes a number with up to one decimal.
pub(crate) fn decimal(text: &mut String, value: f64) {
    digits(text, value, 1);
}

fn digits(text: &mut String, value: f64, places: u32) {
    let scale = 10_i64.pow(places);
    // Casts saturate, and NaN becomes 0: what is written is always a number.
    let whole = (value * scale as f64).round() as i64;
    if whole < 0 {
        text.push('-');
    }
    let whole = whole.unsigned_abs();
    let scale = scale.unsigned_abs();
    push_whole(text, whole / scale);
    let (mut rest, mut unit) = (whole % scale, scale / 10);
    if rest != 0 {
        text.push('.');
    }
    while rest != 0 && unit != 0 {
        push_whole(text, rest / unit);
        rest %= unit;
        unit /= 10;
    }
}

/// Writes a whole number.
pub(crate) fn push_whole(text: &mut String, value: u64) {
    if value >= 10 {
        push_whole(text, value / 10);
    }
    text.push(char::from(b'0' + (value % 10) as u8));
}

/// About how wide a text is, in px at the height [`TEXT`]: rather too wide than too narrow.
pub(crate) fn text_width(text: &str) -> f64 {
    let ems: f64 = text
        .chars()
        .map(|letter| match letter {
            ' ' | '.' | ',' | ':' | ';' | '\'' | '|' | 'i' | 'j' | 'l' | 'I' | '·' => 0.3,
            'f' | 't' | 'r' | '(' | ')' | '-' | '/' | '"' => 0.4,
            'm' | 'w' | 'M' | 'W' | '%' | '—' | '…' => 0.9,
            'A'..='Z' | '×' | '+' | '=' | '±' => 0.7,
            _ if letter > '\u{2e80}' => 1.0,
            _ => 0.58,
        })
        .sum();
    ems * TEXT
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(value: f64) -> String {
        let mut text = String::new();
        decimal(&mut text, value);
        text
    }

    #[test]
    fn numbers_have_one_decimal_at_most() {
        assert_eq!(written(0.0), "0");
        assert_eq!(written(-0.04), "0");
        assert_eq!(written(12.34), "12.3");
        assert_eq!(written(-7.96), "-8");
        assert_eq!(written(-0.5), "-0.5");
        assert_eq!(written(358.0), "358");
        assert_eq!(written(f64::NAN), "0");
        let mut text = String::new();
        digits(&mut text, 0.7331, 4);
        assert_eq!(text, "0.7331");
        text.clear();
        digits(&mut text, 0.05, 4);
        assert_eq!(text, "0.05");
    }

    #[test]
    fn labels_are_escaped() {
        let mut paper = Paper::new(10.0, 10.0);
        paper.text("label", (0.0, 0.0), (1.0, 0.0), "<b>\"1\" & '2'\u{7}");
        let svg = paper.finish();
        assert!(svg.contains("&lt;b&gt;&quot;1&quot; &amp; &#39;2&#39; </text>"), "{svg}");
    }
}
