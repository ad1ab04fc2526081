//! A mark as it is read aloud: `forty-one and five sixteenths`. Voices stumble over `41 5/16 in`.

use super::mark::to_lines;
use super::style::Style;
use crate::quantity::Length;
use crate::words::{Id, Msg, aloud as words};

/// The words reach this far: 20 thousand inches or millimetres, longer than any tape.
const BELOW: u32 = 21_000;

impl Style {
    /// The figure of a mark in the words of the tape, without its unit; none before the start of the tape and beyond
    /// its end.
    pub fn aloud(&self, length: Length) -> Option<String> {
        let parts = self.lines().parts();
        let lines = to_lines(length, self.lines())?;
        if !(0.0..f64::from(BELOW * parts)).contains(&lines) {
            return None;
        }
        let lines = lines as u32;
        let (whole, part) = (lines / parts, self.fraction(lines % parts, parts));
        Some(match part {
            None => self.number(whole),
            Some(part) if whole == 0 => self.say(part),
            Some(fraction) => self.say(words::And { whole: self.number(whole), fraction }),
        })
    }

    /// A fraction of the unit, shortened: 10 of 16 are five eighths.
    fn fraction(&self, top: u32, bottom: u32) -> Option<Msg> {
        if top == 0 {
            return None;
        }
        if top.is_multiple_of(2) {
            return self.fraction(top / 2, bottom / 2);
        }
        let (count, parts) = (top, self.number(top));
        Some(match bottom {
            2 => words::HALF.into(),
            4 => words::Quarters { count, parts }.into(),
            8 => words::Eighths { count, parts }.into(),
            16 => words::Sixteenths { count, parts }.into(),
            _ => words::ThirtySeconds { count, parts }.into(),
        })
    }

    /// A whole number below [`BELOW`].
    fn number(&self, whole: u32) -> String {
        let after = |words: fn(String, String) -> Msg, of: u32, before: String| match whole % of {
            0 => before,
            rest => self.say(words(before, self.number(rest))),
        };
        match whole {
            1_000.. => {
                let count = whole / 1_000;
                let thousands = words::Thousands { count, words: self.number(count) };
                after(
                    |thousands, rest| words::AfterThousands { thousands, rest }.into(),
                    1_000,
                    self.say(thousands),
                )
            }
            100 => self.said(words::HUNDRED),
            101.. => after(
                |hundreds, rest| words::AfterHundreds { hundreds, rest }.into(),
                100,
                self.listed(words::HUNDREDS, whole / 100 - 1).to_owned(),
            ),
            _ => match self.listed(words::SMALL, whole) {
                // Tens from the last, ninety: languages begin them at twenty or at thirty.
                "" => after(
                    |tens, ones| words::AfterTens { tens, ones }.into(),
                    10,
                    self.listed_from_last(words::TENS, 9 - whole / 10).to_owned(),
                ),
                small => small.to_owned(),
            },
        }
    }

    fn said(&self, id: Id) -> String {
        self.words.plain(id).to_owned()
    }

    /// A word of a list; none beyond its end.
    fn listed(&self, list: Id, at: u32) -> &'static str {
        self.words.plain(list).split(", ").nth(at as usize).unwrap_or_default()
    }

    fn listed_from_last(&self, list: Id, at: u32) -> &'static str {
        self.words.plain(list).rsplit(", ").nth(at as usize).unwrap_or_default()
    }
}
