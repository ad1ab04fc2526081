//! The screw of the boards: long enough to hold in the strip, too short to meet what lies behind it.

use uom::si::length::millimeter;

use crate::ask::{Ask, Figure};
use crate::fastening::window::{LEAST_THREAD, LEAST_THREAD_MM, NO_FARTHER, Unfit, Window, lining};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, Measure, Style};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::sheet::furring::screw::at_most;
use crate::text::text;

pub(super) static SCREW: Ask = Ask::words("screw", "Screw for the boards")
    .usual("trim-head #8 x 1 1/4 in", "trim-head 4 x 32 mm")
    .help("Its name on the buy list, with its length at the end.");
pub(super) static SCREW_LENGTH: Ask =
    Ask::measure("screw_length", "Screw length", &LENGTH, ["in", "mm"], (0.003, 0.3))
        .optional()
        .usual("1 1/4 in", "32 mm")
        .help("Head to tip. Left out: the length that the screw's name ends with.")
        .figure(Figure::Along);
pub(super) static STRIP_THICKNESS: Ask =
    Ask::measure("strip_thickness", "Thickness of the strip", &LENGTH, ["in", "mm"], (1e-4, 0.5))
        .optional()
        .usual("3/4 in", "19 mm")
        .help("What the boards' screws hold in: furring strip, batten, stud.")
        .figure(Figure::Thickness);
pub(super) static BEHIND: Ask =
    Ask::measure("behind", "Free depth behind the strip", &LENGTH, ["in", "mm"], (0.0, 0.5))
        .default("0 mm")
        .usual("0 in", "0 mm")
        .help("A tape or air between strip and steel. Left out: none, the strip lies on the rib.")
        .figure(Figure::Gap);

/// What is known of the screw.
pub(super) struct Screwing {
    /// Its name on the buy list; may be empty.
    pub(super) name: String,
    /// Its length, where it was typed or its name ends with one.
    pub(super) length: Option<Length>,
    typed: bool,
    board: Option<Length>,
    strip: Option<Length>,
    behind: Length,
    sunk: Length,
}

impl Screwing {
    pub(super) fn read(reader: &Reader<'_>, board: Option<Length>, sunk: Length) -> Self {
        let name = reader.words(&SCREW);
        let typed: Option<Length> = reader.maybe(&SCREW_LENGTH);
        Self {
            length: typed.or_else(|| length_in(&name)),
            name,
            typed: typed.is_some(),
            board,
            strip: reader.maybe(&STRIP_THICKNESS),
            behind: reader.measure(&BEHIND),
            sunk,
        }
    }

    /// Thickness of what the boards are screwed to, where it is known.
    pub(super) fn strip(&self) -> Option<Length> {
        self.strip
    }

    /// The lengths that hold and are safe, where board and strip are known.
    pub(super) fn window(&self) -> Option<Window> {
        Some(lining(self.board?, self.strip?, self.behind, self.sunk))
    }

    /// Refuses a screw that does not hold, or that meets what lies behind the strip.
    ///
    /// # Errors
    /// Where the length is known and is not safe, or where none would be.
    pub(super) fn check(&self, style: Style) -> Result<(), Fault> {
        let Some(window) = self.window() else { return Ok(()) };
        let offered = self.length.or_else(|| window.in_stock()).unwrap_or(window.least);
        let Err(unfit) = window.choose(&[offered]) else { return Ok(()) };
        let field = if self.typed { SCREW_LENGTH.key } else { SCREW.key };
        let longest = window.most();
        let stock = window
            .in_stock()
            .map_or(String::new(), |length| text!("; take {}", style.mark(length).text));
        Err(match unfit {
            Unfit::TooShort => Fault::new(
                field,
                text!(
                    "{} leaves less than {} of thread in the strip; at least {} is needed{}",
                    style.mark(offered).text,
                    style.small(Length::new::<millimeter>(LEAST_THREAD_MM)),
                    style.small(window.least),
                    stock
                ),
            ),
            Unfit::TooLong { .. } => Fault::new(
                field,
                text!(
                    "sunk {}, a screw of {} reaches {} in, and board, strip and what is free behind are {}: it meets the steel, and stalls or snaps. The longest safe length is {}{}",
                    style.small(self.sunk),
                    style.mark(offered).text,
                    style.small(offered + self.sunk),
                    style.small(longest + self.sunk),
                    at_most(longest, style),
                    stock
                ),
            ),
            Unfit::NoRoom => Fault::new(
                STRIP_THICKNESS.key,
                text!(
                    "no screw holds in a strip so thin without meeting the steel behind it: it would have to be at least {} and at most {} long; take a thicker strip, or sink the screws less",
                    style.small(window.least),
                    at_most(longest, style)
                ),
            ),
        })
    }

    /// How the lengths come about.
    pub(super) fn steps(&self, style: Style) -> Vec<Step> {
        let (Some(window), Some(board), Some(strip)) = (self.window(), self.board, self.strip)
        else {
            return Vec::new();
        };
        let small = |length: Length| style.small(length);
        vec![
            Step::new(
                "Shortest screw",
                "board + least thread",
                text!("{} + {}", small(board), small(Length::new::<millimeter>(LEAST_THREAD_MM))),
                small(window.least),
                &LEAST_THREAD,
            ),
            Step::new(
                "Longest screw",
                "board + strip + free behind − sunk",
                text!(
                    "{} + {} + {} − {}",
                    small(board),
                    small(strip),
                    small(self.behind),
                    small(self.sunk)
                ),
                small(window.most()),
                &NO_FARTHER,
            ),
        ]
    }

    pub(super) fn record(&self) -> Option<Record> {
        let window = self.window()?;
        let mm = |length: Length| length.get::<millimeter>();
        Some(
            Record::new()
                .with("least_length_mm", mm(window.least))
                .maybe("length_mm", self.length.or_else(|| window.in_stock()).map(mm))
                .maybe("longest_mm", window.longest.map(mm)),
        )
    }

    pub(super) fn remark(&self, style: Style) -> Remark {
        match (self.window(), self.length) {
            (None, _) => Remark::warning(
                "The screw's length is not shown to be right: enter the thickness of the boards and of the strip behind them. Too long, it meets the steel and snaps; too short, it does not hold.",
            ),
            (Some(window), length) => {
                let lengths = text!(
                    "from {} to {}",
                    style.small(window.least),
                    at_most(window.most(), style)
                );
                let end = if length.is_some() {
                    ""
                } else {
                    ". Give it a name with its length for the buy list"
                };
                Remark::note(text!(
                    "A screw for these boards is {} long: it holds in the strip and stops short of the steel{}.",
                    lengths,
                    end
                ))
            }
        }
    }

    /// The line of the buy list for so many holes. A length that is not known to be safe is not put on it.
    pub(super) fn line(&self, holes: usize, style: Style) -> BuyLine {
        let spec = match (self.window(), self.length) {
            (Some(_), Some(_)) => self.name.clone(),
            (Some(window), None) => {
                let length = window.in_stock().map_or(String::new(), |at| style.mark(at).text);
                text!("for the boards, {}", length)
            }
            (None, _) => {
                "for the boards, length not shown: enter thickness of board and strip".to_owned()
            }
        };
        let spec = match self.length.filter(|_| self.typed && self.window().is_some()) {
            Some(length) if length_in(&self.name).is_none() => {
                text!("{} x {}", &self.name, style.mark(length).text)
            }
            _ => spec,
        };
        let id = match self.length.filter(|_| self.window().is_some()) {
            Some(_) if !self.name.is_empty() => LineId::screw_as_typed(&spec),
            _ => LineId::own("screw"),
        };
        BuyLine::pieces(id, "screw", spec, holes as f64)
    }
}

/// The length that a screw's name ends with, as in `trim-head #8 x 1 1/4 in`.
fn length_in(name: &str) -> Option<Length> {
    let (_, end) = name.rsplit_once(['x', 'X', '×'])?;
    let measure = Measure::read(end.trim(), &LENGTH, None).ok()?;
    let length = Length::new::<uom::si::length::meter>(measure.si());
    (length.get::<millimeter>() >= 3.0 && length.get::<millimeter>() <= 300.0).then_some(length)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_ends_with_a_length() {
        let mm = |name: &str| {
            length_in(name).map(|length| (length.get::<millimeter>() * 1e3).round() / 1e3)
        };
        assert_eq!(mm("trim-head #8 x 1 1/4 in"), Some(31.75));
        assert_eq!(mm("4 × 40 mm"), Some(40.0));
        assert_eq!([mm("trim-head #8"), mm("8 x"), mm("box x 40"), mm("")], [None; 4]);
    }
}
