//! What is said: messages by their ids, and the tables of languages that put them into words.
//!
//! A sheet says a message by its name and what it is filled with, as values:
//! `style.say(stud_marks::TooClose { stud, edge })`. The texts stand in `shared/words/`, a file for each sheet and
//! language; how the table is laid out is told in the crate `words` that makes it.

use std::fmt;

mod arg;
mod plural;
mod table;

pub use arg::{Arg, Msg};
pub use table::{Broken, Words};

use crate::quantity::{Marked, Style, UnitSystem};

#[allow(dead_code, missing_docs)]
mod names {
    use super::{Arg, Id, Msg};
    include!(concat!(env!("OUT_DIR"), "/words.rs"));
}
pub use names::*;

/// A message that stands by itself: its place in the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(pub(crate) u16);

/// A text that is known before anything is typed: a label, a title.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phrase {
    /// In the table.
    Id(Id),
    /// Written in the code: what has not been moved to the table yet.
    Written(&'static str),
}

impl Phrase {
    /// Nothing.
    pub const NONE: Self = Self::Written("");

    /// In words.
    pub fn say(self, words: Words) -> &'static str {
        match self {
            Self::Id(id) => words.plain(id),
            Self::Written(text) => text,
        }
    }

    /// Whether nothing is said.
    pub const fn is_none(self) -> bool {
        matches!(self, Self::Written(text) if text.is_empty())
    }
}

/// In English: for tests and scripts.
impl fmt::Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.say(Words::ENGLISH))
    }
}

impl From<Id> for Phrase {
    fn from(id: Id) -> Self {
        Self::Id(id)
    }
}

impl Msg {
    /// In English, for tests and scripts: of messages that are filled with no quantities.
    pub fn english(self) -> String {
        Style::new(UnitSystem::Imperial).say(self)
    }
}

/// Several to choose from: `1, 2 or 3`.
pub fn any_of<T: Into<Arg>>(several: impl IntoIterator<Item = T>) -> Arg {
    any(several.into_iter().map(Into::into).collect())
}

fn any(mut several: Vec<Arg>) -> Arg {
    let Some(last) = several.pop() else { return Arg::from("") };
    let Some(before) = several.pop() else { return last };
    let mut all = Msg::from(reader::OrEnd { before, last });
    for before in several.into_iter().rev() {
        all = common::ListMiddle { before, rest: all }.into();
    }
    all.into()
}

impl Style {
    /// The same in the language of outcomes and ids, which is English whatever a page is shown in.
    #[must_use]
    pub fn english(self) -> Self {
        Self { words: Words::ENGLISH, ..self }
    }

    /// A message in words, with its quantities in this style.
    pub fn say(&self, message: impl Into<Msg>) -> String {
        let mut said = String::new();
        self.words.say(&message.into(), *self, &mut said);
        said
    }

    /// A value in words.
    pub fn write(&self, arg: &Arg) -> String {
        let mut said = String::new();
        self.words.argument(arg, *self, &mut said);
        said
    }

    /// What rounding a mark left over: `1/64 in over`; empty where nothing is.
    pub fn left_over(&self, marked: &Marked) -> String {
        match marked.left_over() {
            None => String::new(),
            Some((amount, true)) => self.say(common::Over { amount }),
            Some((amount, false)) => self.say(common::Under { amount }),
        }
    }
}
