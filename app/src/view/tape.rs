//! A mark as it is seen in the rig: a piece of the tape with the spot on it.

use calc::quantity::{Length, Rounding, Style, UnitSystem};
use calc::words::{Arg, app_page};

use super::drawing::paper::{Paper, ROW, push_whole, text_width};
use super::html::Html;

/// Size of the picture. [px]
const WIDTH: f64 = 358.0;
const HEIGHT: f64 = 132.0;
/// The tape's two edges. [px]
const TOP: f64 = 44.0;
const BOTTOM: f64 = 106.0;
/// Beyond this no tape reaches. [m]
const LONGEST: f64 = 1e5;

/// Writes a piece of tape around a mark. Read aloud it is `mark at 90 1/2 in`.
pub fn push_tape(html: &mut Html, at: Length, style: Style) {
    html.raw("<div class=\"tape\" role=\"img\" aria-label=\"");
    html.text(&style.say(app_page::MarkAt { mark: Arg::mark(at) }));
    html.raw("\">");
    html.raw(&tape_svg(at, style));
    html.raw("</div>");
}

/// The picture as inline SVG; empty where no tape reaches.
///
/// The crow's foot and the heavy line show the mark, rounded to the tape's lines; a thin line from
/// below shows the exact spot where the rounding left something over. A spot before the tape's
/// start is pointed at, not marked.
pub fn tape_svg(at: Length, style: Style) -> String {
    if !at.value.is_finite() || at.value.abs() > LONGEST {
        return String::new();
    }
    let scale = Scale::of(style);
    let marked = style.mark(at);
    // All in the tape's numbered units: inches or centimetres.
    let mark = marked.rounded.value / scale.unit;
    let exact = at.value / scale.unit;
    let start = (mark - scale.shown / 2.0).max(-0.12 * scale.shown);
    let tape = Tape { start, px: WIDTH / scale.shown, scale };

    let mut paper = Paper::new(WIDTH, HEIGHT);
    tape.body(&mut paper);
    tape.lines(&mut paper);
    let left_over = style.left_over(&marked);
    if !left_over.is_empty() && mark >= 0.0 {
        let exact_x = tape.x(exact);
        paper.path("tape-exact", &[(exact_x, TOP), (exact_x, BOTTOM + 9.0)], false);
        beside(&mut paper, "tape-exact-text", exact_x, BOTTOM + 17.0, &left_over);
    }
    tape.numbers(&mut paper);
    if mark < 0.0 {
        let x = tape.x(0.0) - 8.0;
        let y = TOP - 12.0;
        paper.path("pen-mark", &[(x - 6.0, y), (x - 24.0, y)], false);
        paper.path("pen-mark", &[(x - 17.0, y - 4.0), (x - 24.0, y), (x - 17.0, y + 4.0)], false);
        paper.text(
            "tape-spot text-start",
            (x, y),
            RIGHT,
            &style.say(app_page::BeforeStart { length: marked.text.replacen('-', "", 1) }),
        );
        return paper.finish();
    }
    let x = tape.x(mark);
    let tip = TOP - 1.0;
    paper.path("pen-mark", &[(x - 7.0, tip - 14.0), (x, tip), (x + 7.0, tip - 14.0)], false);
    paper.path("pen-mark", &[(x, tip - 14.0), (x, TOP + scale.longest())], false);
    beside(&mut paper, "tape-spot", x, TOP - 30.0, &marked.text);
    paper.finish()
}

const RIGHT: (f64, f64) = (1.0, 0.0);

/// A text centred on `x`, kept on the picture.
fn beside(paper: &mut Paper, class: &str, x: f64, y: f64, text: &str) {
    let half = text_width(text) / 2.0 + 8.0;
    paper.text(class, (x.max(half).min(WIDTH - half), y), RIGHT, text);
}

/// How a tape is divided.
#[derive(Clone, Copy)]
struct Scale {
    /// The numbered unit. [m]
    unit: f64,
    /// How many of them are shown.
    shown: f64,
    /// Lines in one of them.
    parts: u32,
    /// How long the lines are, the longest first: each with the number of them in a unit. [px]
    heights: &'static [(u32, f64)],
    /// Every how manieth number is told apart, and in what unit.
    great: (i64, &'static str),
}

const INCH: &[(u32, f64)] = &[(1, 30.0), (2, 23.0), (4, 18.0), (8, 13.0), (16, 9.0), (32, 6.0)];
const CENTIMETRE: &[(u32, f64)] = &[(1, 28.0), (2, 20.0), (10, 12.0), (20, 7.0)];

impl Scale {
    fn of(style: Style) -> Self {
        let rounding = if style.rounding.system() == style.system {
            style.rounding
        } else {
            Rounding::for_system(style.system)
        };
        let (shown, parts) = match rounding {
            Rounding::Eighth => (3.0, 8),
            Rounding::Sixteenth => (3.0, 16),
            Rounding::ThirtySecond => (2.0, 32),
            Rounding::Millimetre => (7.0, 10),
            Rounding::HalfMillimetre => (4.0, 20),
        };
        match rounding.system() {
            UnitSystem::Imperial => {
                Self { unit: 0.0254, shown, parts, heights: INCH, great: (12, " ft") }
            }
            UnitSystem::Metric => {
                Self { unit: 0.01, shown, parts, heights: CENTIMETRE, great: (100, " m") }
            }
        }
    }

    fn longest(&self) -> f64 {
        self.heights.first().map_or(0.0, |&(_, height)| height)
    }

    /// How long a line is that is `parts`-ths of a unit away from the tape's start.
    fn height(&self, line: i64) -> f64 {
        let parts = i64::from(self.parts);
        self.heights
            .iter()
            .find(|&&(in_unit, _)| (line * i64::from(in_unit)) % parts == 0)
            .map_or(0.0, |&(_, height)| height)
    }
}

struct Tape {
    /// What is at the picture's left edge.
    start: f64,
    /// Pixels in a numbered unit.
    px: f64,
    scale: Scale,
}

impl Tape {
    fn x(&self, at: f64) -> f64 {
        (at - self.start) * self.px
    }

    /// The tape itself: torn off at both sides, or with its hook at the start.
    fn body(&self, paper: &mut Paper) {
        let from = self.x(0.0);
        let steps = 6;
        let tear = |x: f64, step: i32| {
            let side = if step % 2 == 0 { 0.0 } else { 5.0 };
            (x + side, TOP + (BOTTOM - TOP) * f64::from(step) / f64::from(steps))
        };
        let mut outline: Vec<(f64, f64)> = Vec::new();
        if self.start < 0.0 {
            outline.extend([(from, TOP), (from, BOTTOM)]);
        } else {
            outline.extend((0..=steps).map(|step| tear(1.0, step)));
        }
        outline.extend((0..=steps).rev().map(|step| tear(WIDTH - 6.0, step)));
        paper.path("tape-body", &outline, true);
        if self.start < 0.0 {
            // The hook hangs over the end, its plate is riveted onto the tape.
            let plate = (BOTTOM - 21.0, BOTTOM - 5.0);
            paper.path("tape-hook", &rectangle((from, plate.0), (from + 26.0, plate.1)), true);
            for rivet in [from + 8.0, from + 18.0] {
                let y = (plate.0 + plate.1) / 2.0;
                paper.path("tape-rivet", &[(rivet, y), (rivet, y)], false);
            }
            paper.path("tape-hook", &rectangle((from - 6.0, TOP), (from, BOTTOM + 10.0)), true);
        }
    }

    fn lines(&self, paper: &mut Paper) {
        let parts = f64::from(self.scale.parts);
        let first = ((self.start + 10.0 / self.px) * parts).ceil().max(0.0) as i64;
        let last = ((self.start + (WIDTH - 10.0) / self.px) * parts).floor() as i64;
        // Two paths and not one a line: a page of marks has thousands of lines.
        let (mut whole, mut others) = (Vec::new(), Vec::new());
        for line in first..=last {
            let height = self.scale.height(line);
            let lines = if height >= self.scale.longest() { &mut whole } else { &mut others };
            lines.push((self.x(line as f64 / parts), height));
        }
        paper.hanging_lines("tape-line", TOP, &others);
        paper.hanging_lines("tape-line tape-whole", TOP, &whole);
    }

    /// The numbers at their lines, the zero left to the hook.
    fn numbers(&self, paper: &mut Paper) {
        let first = (self.start.ceil() as i64).max(1);
        let last = (self.start + self.scale.shown).floor() as i64;
        let (every, unit) = self.scale.great;
        let mut free_from = 0.0;
        for number in first..=last {
            let x = self.x(number as f64);
            let text = whole(number);
            let half = text_width(&text) / 2.0;
            // Beside its line and not cut off; very long numbers leave one out rather than overlap.
            if x - half < 11.0 || x + half > WIDTH - 11.0 || x - half < free_from {
                continue;
            }
            free_from = x + half + 4.0;
            let y = TOP + self.scale.longest() + 10.0;
            if number % every == 0 {
                paper.text("tape-number tape-foot", (x, y), RIGHT, &text);
                let great = whole(number / every) + unit;
                paper.text("tape-feet", (x, y + ROW * 0.85), RIGHT, &great);
            } else {
                paper.text("tape-number", (x, y), RIGHT, &text);
            }
        }
    }
}

fn rectangle(a: (f64, f64), b: (f64, f64)) -> [(f64, f64); 4] {
    [a, (b.0, a.1), b, (a.0, b.1)]
}

fn whole(number: i64) -> String {
    let mut text = String::new();
    push_whole(&mut text, number.unsigned_abs());
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn metres(value: f64) -> Length {
        Length { value, ..Length::default() }
    }

    fn style(rounding: Rounding) -> Style {
        Style::rounded(rounding)
    }

    /// The x of the heavy line of the mark.
    fn mark_x(svg: &str) -> f64 {
        let path = svg.rsplit("class=\"pen-mark\" d=\"M ").next().unwrap();
        path.split(' ').next().unwrap().parse().unwrap()
    }

    #[test]
    fn shows_the_inches_on_both_sides_of_the_mark() {
        let svg = tape_svg(metres(90.5 * 0.0254), Style::new(UnitSystem::Imperial));
        for number in [">90<", ">91<", ">90 1/2 in<"] {
            assert!(svg.contains(number), "{number} in {svg}");
        }
        assert_eq!(mark_x(&svg), WIDTH / 2.0);
        assert!(!svg.contains("class=\"tape-exact\""), "nothing is left over");
        assert!(!svg.contains("tape-hook"));
    }

    #[test]
    fn shows_what_the_rounding_left_over() {
        let svg = tape_svg(metres(2.2994), Style::new(UnitSystem::Metric));
        assert!(svg.contains(">2299 mm<") && svg.contains(">230<"), "{svg}");
        assert!(svg.contains("class=\"tape-exact\"") && svg.contains(">0.4 mm over<"), "{svg}");
    }

    #[test]
    fn starts_with_the_hook_near_zero() {
        for rounding in Rounding::ALL {
            let svg = tape_svg(metres(0.0), style(rounding));
            assert!(svg.contains("tape-hook"), "{rounding:?}");
            let shown = Scale::of(style(rounding)).shown;
            assert!((mark_x(&svg) - 0.12 * WIDTH).abs() < 0.06, "{rounding:?} {shown}");
        }
    }

    #[test]
    fn a_spot_before_the_start_is_pointed_at() {
        let svg = tape_svg(metres(-0.127), Style::new(UnitSystem::Imperial));
        assert!(svg.contains(">5 in before the start<"), "{svg}");
        assert!(svg.contains("tape-hook") && !svg.contains("class=\"tape-spot\""));
    }

    #[test]
    fn has_as_many_lines_as_the_rounding_asks_for() {
        for rounding in Rounding::ALL {
            let svg = tape_svg(metres(1.0), style(rounding));
            let paths = svg.split("class=\"tape-line").skip(1);
            let lines: usize = paths
                .filter_map(|path| path.split('>').next())
                .map(|d| d.matches('v').count())
                .sum();
            let lines = lines as f64;
            let scale = Scale::of(style(rounding));
            let expected = scale.shown * f64::from(scale.parts);
            assert!(lines <= expected + 1.0 && lines > expected * 0.9, "{rounding:?} {lines}");
        }
    }

    #[test]
    fn lines_are_the_longer_the_rounder() {
        let scale = Scale::of(style(Rounding::Sixteenth));
        let heights: Vec<f64> = [0, 8, 4, 2, 1].map(|line| scale.height(line)).to_vec();
        assert!(heights.windows(2).all(|pair| pair[0] > pair[1]), "{heights:?}");
        let scale = Scale::of(style(Rounding::HalfMillimetre));
        let heights: Vec<f64> = [20, 10, 2, 1].map(|line| scale.height(line)).to_vec();
        assert!(heights.windows(2).all(|pair| pair[0] > pair[1]), "{heights:?}");
    }

    #[test]
    fn takes_any_length() {
        for rounding in Rounding::ALL {
            for value in [0.0, -0.0, 1e-9, 0.3048, 12.0, 9_999.0, 99_999.9, -99_999.9, 1e-300] {
                let svg = tape_svg(metres(value), style(rounding));
                assert!(svg.ends_with("</svg>") && !svg.contains("NaN"), "{value} {svg}");
                assert!(!svg.contains("style="));
            }
            for value in [f64::NAN, f64::INFINITY, -1e300, 1e12] {
                assert_eq!(tape_svg(metres(value), style(rounding)), "", "{value}");
            }
        }
    }

    #[test]
    fn takes_the_usual_lines_where_the_rounding_is_of_the_other_system() {
        let odd = Style { system: UnitSystem::Metric, ..Style::rounded(Rounding::Eighth) };
        let usual = Style::new(UnitSystem::Metric);
        assert_eq!(tape_svg(metres(0.5), odd), tape_svg(metres(0.5), usual));
    }

    #[test]
    fn feet_are_told_apart() {
        let svg = tape_svg(metres(0.3048 * 7.0), Style::new(UnitSystem::Imperial));
        assert!(svg.contains("tape-number tape-foot") && svg.contains(">7 ft<"), "{svg}");
    }
}
