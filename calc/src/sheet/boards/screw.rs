//! The screw of the boards: long enough to hold in the strip, too short to meet what lies behind it.

use calc_derive::Outcome;
use uom::si::length::millimeter;

use super::inputs::Inputs;
use crate::fastening::window::{
    LEAST_THREAD_MM, LeastLining, LongestLining, Unfit, Window, lining,
};
use crate::formula::step;
use crate::lists::{BuyLine, LineId};
use crate::quantity::{LENGTH, Length, Measure, Style};
use crate::report::{Remark, Step};
use crate::text::text;
use crate::words::{Arg, Msg, boards as words};

/// What is known of the screw.
pub(super) struct Screwing {
    /// Its name on the buy list; may be empty.
    name: String,
    /// Its length, where it was typed or its name ends with one.
    length: Option<Length>,
    typed: bool,
    board: Option<Length>,
    strip: Option<Length>,
    behind: Length,
    sunk: Length,
}

/// The lengths that hold and are safe, and the one that is taken.
#[derive(Outcome)]
pub(super) struct Lengths {
    least_length: Length,
    length: Option<Length>,
    longest: Option<Length>,
}

impl Screwing {
    pub(super) fn of(inputs: &Inputs) -> Self {
        let typed = inputs.screw_length;
        Self {
            length: typed.or_else(|| length_in(&inputs.screw)),
            name: inputs.screw.clone(),
            typed: typed.is_some(),
            board: inputs.thickness,
            strip: inputs.strip_thickness,
            behind: inputs.behind,
            sunk: inputs.fill_depth,
        }
    }

    /// Thickness of what the boards are screwed to, where it is known.
    pub(super) fn strip(&self) -> Option<Length> {
        self.strip
    }

    /// The lengths that hold and are safe, where board and strip are known.
    fn window(&self) -> Option<Window> {
        Some(lining(self.board?, self.strip?, self.behind, self.sunk))
    }

    /// Refuses a screw that does not hold, or that meets what lies behind the strip.
    ///
    /// # Errors
    /// Where the length is known and is not safe, or where none would be.
    pub(super) fn check(&self) -> Result<(), (String, Msg)> {
        let Some(window) = self.window() else { return Ok(()) };
        let offered = self.length.or_else(|| window.in_stock()).unwrap_or(window.least);
        let Err(unfit) = window.choose(&[offered]) else { return Ok(()) };
        let field = if self.typed { Inputs::SCREW_LENGTH } else { Inputs::SCREW };
        let (least, longest) = (Arg::small(window.least), Arg::at_most(window.most()));
        let length = Arg::mark(offered);
        let in_stock = match window.in_stock() {
            Some(length) => Msg::from(words::InStock { length: Arg::mark(length) }).into(),
            None => Arg::from(""),
        };
        let (ask, message): (_, Msg) = match unfit {
            Unfit::TooShort => {
                let thread = Arg::small(Length::new::<millimeter>(LEAST_THREAD_MM));
                (field, words::ScrewTooShort { length, thread, least, in_stock }.into())
            }
            Unfit::TooLong { .. } => {
                let [sunk, reach, room] =
                    [self.sunk, offered + self.sunk, window.most() + self.sunk].map(Arg::small);
                let message = words::ScrewTooLong { sunk, length, reach, room, longest, in_stock };
                (field, message.into())
            }
            Unfit::NoRoom => {
                (Inputs::STRIP_THICKNESS, words::ScrewNoRoom { least, longest }.into())
            }
        };
        Err((ask.key.to_owned(), message))
    }

    /// How the lengths come about.
    pub(super) fn steps(&self, style: Style) -> Vec<Step> {
        let (Some(board), Some(strip)) = (self.board, self.strip) else { return Vec::new() };
        let thread = Length::new::<millimeter>(LEAST_THREAD_MM);
        let (free, sunk) = (self.behind, self.sunk);
        vec![
            step(words::STEP_LEAST, &LeastLining { board, thread }, style),
            step(words::STEP_LONGEST, &LongestLining { board, strip, free, sunk }, style),
        ]
    }

    pub(super) fn lengths(&self) -> Option<Lengths> {
        let window = self.window()?;
        Some(Lengths {
            least_length: window.least,
            length: self.length.or_else(|| window.in_stock()),
            longest: window.longest,
        })
    }

    pub(super) fn remark(&self, style: Style) -> Remark {
        let Some(window) = self.window() else {
            return Remark::warning(style.say(words::SCREW_UNKNOWN));
        };
        let (least, longest) = (Arg::small(window.least), Arg::at_most(window.most()));
        let range: Msg = match self.length {
            Some(_) => words::ScrewRange { least, longest }.into(),
            None => words::ScrewRangeUnnamed { least, longest }.into(),
        };
        Remark::note(style.say(range))
    }

    /// The line of the buy list for so many holes. A length that is not known to be safe is not put on it.
    pub(super) fn line(&self, holes: usize, style: Style) -> BuyLine {
        let known = self.window();
        let spec = match (known, self.length) {
            // As a person types it.
            (Some(_), Some(length)) if self.typed && length_in(&self.name).is_none() => {
                text!("{} x {}", &self.name, style.mark(length).text)
            }
            (Some(_), Some(_)) => self.name.clone(),
            (Some(window), None) => {
                let length = window.in_stock().map_or(Arg::from(""), Arg::mark);
                style.say(words::ScrewItemStock { length })
            }
            (None, _) => style.say(words::SCREW_ITEM_UNKNOWN),
        };
        let id = match self.length.filter(|_| known.is_some()) {
            Some(_) if !self.name.is_empty() => LineId::screw_as_typed(&spec),
            _ => LineId::own("screw"),
        };
        BuyLine::pieces(id, style.say(words::SCREW_ITEM), spec, holes as f64)
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
