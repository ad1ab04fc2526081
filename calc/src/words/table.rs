//! The table of a language: finds a message in it and puts it into words.
//!
//! How the bytes are laid out is told in `words/src/table.rs`, which writes them.

use std::fmt;

use super::arg::{Arg, Msg};
use super::plural::{category, decimal_comma};
use super::{Id, common};
use crate::part::whole_words;
use crate::quantity::Style;

const ARGUMENT: u8 = 1;
const SELECT: u8 = 2;
const NUMBER: u8 = 255;

/// The words of a language.
#[derive(Clone, Copy)]
pub struct Words {
    table: &'static [u8],
}

/// A table that is none: cut short, or of another version of the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Broken;

/// What all other languages fall back on.
static WHOLE: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/en.words"));

/// What of it a program in two parts has at first. The other messages are there, and empty.
#[cfg(split)]
static ENGLISH: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/first.words"));
#[cfg(not(split))]
static ENGLISH: &[u8] = WHOLE;

impl Words {
    /// English, which is a part of the program.
    pub const ENGLISH: Self = Self { table: ENGLISH };

    /// English with all of its messages.
    #[cfg(split)]
    pub(crate) fn all_english() -> Self {
        Self { table: WHOLE }
    }

    /// The words of a language by its tag, for programs that have all languages in them.
    #[cfg(feature = "json")]
    pub fn of(tag: &str) -> Option<Self> {
        static TABLES: &[(&str, &[u8])] = include!(concat!(env!("OUT_DIR"), "/tables.rs"));
        if tag == Self::ENGLISH.tag() {
            return Some(Self::ENGLISH);
        }
        let (_, table) = TABLES.iter().find(|(known, _)| *known == tag)?;
        Some(Self { table })
    }

    /// The words of a table that was loaded. It is kept as long as the program runs: a device shows one language,
    /// and seldom another.
    ///
    /// # Errors
    /// The bytes are no table of this version of the program.
    pub fn load(table: Vec<u8>) -> Result<Self, Broken> {
        let found = Self { table: table.leak() };
        let starts: Option<Vec<usize>> =
            (0..=found.count()).map(|number| found.start(number)).collect();
        let whole = starts.is_some_and(|starts| {
            starts.is_sorted() && starts.last() == Some(&found.bodies().len())
        });
        if whole && found.count() == Self::ENGLISH.count() { Ok(found) } else { Err(Broken) }
    }

    /// The language's tag: `en`.
    pub fn tag(self) -> &'static str {
        let length = self.tag_length();
        std::str::from_utf8(self.table.get(1..1 + length).unwrap_or_default()).unwrap_or_default()
    }

    /// A message that stands by itself.
    pub fn plain(self, id: Id) -> &'static str {
        std::str::from_utf8(self.body(id)).unwrap_or_default()
    }

    pub(super) fn say(self, message: &Msg, style: Style, said: &mut String) {
        Saying { words: self, style, filled: &message.filled }.body(self.body(message.id), said);
    }

    pub(super) fn argument(self, arg: &Arg, style: Style, said: &mut String) {
        Saying { words: self, style, filled: &[] }.argument(arg, said);
    }

    fn tag_length(self) -> usize {
        self.table.first().copied().unwrap_or_default().into()
    }

    /// A figure as the language writes it: a point between digits is its decimal sign.
    pub fn figure(self, text: String) -> String {
        if !decimal_comma(self.tag()) || !text.contains('.') {
            return text;
        }
        let mut bytes = text.into_bytes();
        for at in 1..bytes.len().saturating_sub(1) {
            if bytes[at] == b'.' && bytes[at - 1].is_ascii_digit() && bytes[at + 1].is_ascii_digit()
            {
                bytes[at] = b',';
            }
        }
        String::from_utf8(bytes).unwrap_or_default()
    }

    fn count(self) -> usize {
        self.whole(1 + self.tag_length(), 2).unwrap_or_default()
    }

    /// A whole number of so many bytes.
    fn whole(self, at: usize, bytes: usize) -> Option<usize> {
        let bytes = self.table.get(at..at + bytes)?;
        Some(bytes.iter().rev().fold(0, |whole, byte| whole << 8 | usize::from(*byte)))
    }

    fn start(self, number: usize) -> Option<usize> {
        self.whole(3 + self.tag_length() + 4 * number, 4)
    }

    fn bodies(self) -> &'static [u8] {
        self.table.get(3 + self.tag_length() + 4 * (self.count() + 1)..).unwrap_or_default()
    }

    /// The bytes of a message; the first language's where this one does not say it.
    fn body(self, id: Id) -> &'static [u8] {
        let number = usize::from(id.0);
        let ends = self.start(number).zip(self.start(number + 1));
        match ends.and_then(|(start, end)| self.bodies().get(start..end)) {
            Some([]) | None if self != Self::ENGLISH && Some(self) != whole_words() => {
                Self::ENGLISH.body(id)
            }
            Some([]) | None if self == Self::ENGLISH => {
                whole_words().map_or(&[], |whole| whole.body(id))
            }
            found => found.unwrap_or_default(),
        }
    }
}

/// One message being put into words.
struct Saying<'a> {
    words: Words,
    style: Style,
    filled: &'a [Arg],
}

impl Saying<'_> {
    fn body(&self, mut rest: &[u8], said: &mut String) {
        while let Some(special) = rest.iter().position(|byte| matches!(*byte, ARGUMENT | SELECT)) {
            let (words, placed) = rest.split_at(special);
            self.plain(words, said);
            rest = match placed {
                [ARGUMENT, number, rest @ ..] => {
                    if let Some(arg) = self.filled.get(usize::from(*number)) {
                        self.argument(arg, said);
                    }
                    rest
                }
                [SELECT, number, variants, rest @ ..] => {
                    self.select(self.filled.get(usize::from(*number)), *variants, rest, said)
                }
                _ => return,
            };
        }
        self.plain(rest, said);
    }

    fn plain(&self, words: &[u8], said: &mut String) {
        said.push_str(std::str::from_utf8(words).unwrap_or_default());
    }

    /// Says the first text whose key fits, else the last, and gives what stands behind all of them.
    fn select<'a>(
        &self,
        arg: Option<&Arg>,
        variants: u8,
        mut rest: &'a [u8],
        said: &mut String,
    ) -> &'a [u8] {
        let mut chosen = None;
        for _ in 0..variants {
            let Some((key, length, behind)) = variant(rest) else { return &[] };
            let (body, behind) = behind.split_at(length.min(behind.len()));
            if !matches!(chosen, Some((true, _))) {
                chosen = Some((arg.is_some_and(|arg| self.fits(arg, key)), body));
            }
            rest = behind;
        }
        if let Some((_, body)) = chosen {
            self.body(body, said);
        }
        rest
    }

    fn fits(&self, arg: &Arg, key: Key<'_>) -> bool {
        match (arg, key) {
            (Arg::Count(count), Key::Number(number)) => *count == u64::from(number),
            (Arg::Count(count), Key::Word(word)) => {
                category(self.words.tag(), *count).as_bytes() == word
            }
            // As it is written: 1.04 days to a tenth are one day.
            (Arg::Quantity(si, write), Key::Word(word)) => {
                let count = if write(&self.style, *si) == "1" { 1 } else { 2 };
                category(self.words.tag(), count).as_bytes() == word
            }
            (Arg::As(text), Key::Word(word)) => text.as_bytes() == word,
            _ => false,
        }
    }

    fn argument(&self, arg: &Arg, said: &mut String) {
        match arg {
            // A name stays as somebody typed it; what begins with a number is a figure.
            Arg::As(text)
                if text
                    .starts_with(|first: char| first.is_ascii_digit() || "-−±".contains(first)) =>
            {
                said.push_str(&self.words.figure(text.clone()));
            }
            Arg::As(text) => said.push_str(text),
            Arg::Count(count) => said.push_str(&count.to_string()),
            Arg::Quantity(si, write) => {
                said.push_str(&self.words.figure(write(&self.style, *si)));
            }
            Arg::Message(message) => self.words.say(message, self.style, said),
            Arg::Each(several) => self.each(several, said),
            Arg::Cited(source) => said.push_str(&source.say(self.words)),
        }
    }

    fn each(&self, several: &[Arg], said: &mut String) {
        let joined = |arg: &Arg| {
            let mut said = String::new();
            self.argument(arg, &mut said);
            said
        };
        let mut last_first = several.iter().rev().map(joined);
        let Some(last) = last_first.next() else { return };
        let Some(before) = last_first.next() else { return said.push_str(&last) };
        let mut all = self.style.say(common::ListEnd { before, last });
        for before in last_first {
            all = self.style.say(common::ListMiddle { before, rest: all });
        }
        said.push_str(&all);
    }
}

/// What an argument has to be for a text to be chosen.
enum Key<'a> {
    Number(u8),
    Word(&'a [u8]),
}

/// The key of a text, its length, and what follows them.
fn variant(rest: &[u8]) -> Option<(Key<'_>, usize, &[u8])> {
    let (key, rest) = match rest {
        [NUMBER, number, rest @ ..] => (Key::Number(*number), rest),
        [length, rest @ ..] => {
            let (word, rest) = rest.split_at_checked(usize::from(*length))?;
            (Key::Word(word), rest)
        }
        [] => return None,
    };
    match rest {
        [low, high, rest @ ..] => Some((key, usize::from(u16::from_le_bytes([*low, *high])), rest)),
        _ => None,
    }
}

impl Default for Words {
    fn default() -> Self {
        Self::ENGLISH
    }
}

impl PartialEq for Words {
    /// Tables are told apart by where they stand: each is loaded once.
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self.table, other.table)
    }
}

impl Eq for Words {}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Words({})", self.tag())
    }
}
