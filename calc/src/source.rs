//! Where a formula, a table or a rule comes from: cited beside every one of them.

use std::fmt;

use crate::words::{Id, Phrase, Words, common};

/// How well a source stands behind what cites it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Read in the publication itself, or in a copy of it.
    Published,
    /// Read in a transcription by others; the publication is cited.
    Transcribed,
    /// Recalled; nobody has looked it up again.
    FromMemory,
    /// A rule of thumb of the trade that no publication was found for.
    CommonPractice,
    /// Follows from definitions: geometry, bookkeeping, Ohm's law.
    Identity,
}

/// A published source and the part of it that is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Publisher and title, as the trade names it: `NEC (NFPA 70)`.
    pub publication: Phrase,
    /// Table, section, equation or page; empty where the whole is meant.
    pub part: &'static str,
    /// How well it stands behind what cites it.
    pub standing: Standing,
}

impl Source {
    /// A source that was read.
    pub const fn published(publication: &'static str, part: &'static str) -> Self {
        Self { publication: Phrase::Written(publication), part, standing: Standing::Published }
    }

    /// A source that was read in a transcription by others.
    pub const fn transcribed(publication: &'static str, part: &'static str) -> Self {
        Self { publication: Phrase::Written(publication), part, standing: Standing::Transcribed }
    }

    /// A source that is cited from memory.
    pub const fn from_memory(publication: &'static str, part: &'static str) -> Self {
        Self { publication: Phrase::Written(publication), part, standing: Standing::FromMemory }
    }

    /// A rule of thumb; `what` names the rule.
    pub const fn common_practice(what: &'static str) -> Self {
        Self { publication: Phrase::Written(what), part: "", standing: Standing::CommonPractice }
    }

    /// A definition or an identity; `what` names it.
    pub const fn identity(what: &'static str) -> Self {
        Self { publication: Phrase::Written(what), part: "", standing: Standing::Identity }
    }
}

impl Source {
    /// A definition or an identity whose name stands in the table of words.
    pub const fn identity_of(what: Id) -> Self {
        Self { publication: Phrase::Id(what), part: "", standing: Standing::Identity }
    }

    /// A rule of thumb whose name stands in the table of words.
    pub const fn practice_of(what: Id) -> Self {
        Self { publication: Phrase::Id(what), part: "", standing: Standing::CommonPractice }
    }

    /// A source that was read in a transcription by others; its name and the part that is meant stand in the table
    /// of words.
    pub const fn transcribed_of(what: Id) -> Self {
        Self { publication: Phrase::Id(what), part: "", standing: Standing::Transcribed }
    }

    /// A source that is cited from memory; its name and the part that is meant stand in the table of words.
    pub const fn from_memory_of(what: Id) -> Self {
        Self { publication: Phrase::Id(what), part: "", standing: Standing::FromMemory }
    }

    /// The source as it is cited, and how well it stands.
    pub fn say(&self, words: Words) -> String {
        let mut said = self.publication.say(words).to_owned();
        if !self.part.is_empty() {
            said.push_str(", ");
            said.push_str(self.part);
        }
        let standing = match self.standing {
            Standing::Published | Standing::Identity => return said,
            Standing::Transcribed => common::AS_TRANSCRIBED,
            Standing::FromMemory => common::FROM_MEMORY,
            Standing::CommonPractice => common::COMMON_PRACTICE,
        };
        said.push_str(" (");
        said.push_str(words.plain(standing));
        said.push(')');
        said
    }
}

/// As it is cited in English: for tests and scripts.
impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.say(Words::ENGLISH))
    }
}
