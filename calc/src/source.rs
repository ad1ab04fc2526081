//! Where a formula, a table or a rule comes from: cited beside every one of them.

use std::fmt;

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
    pub publication: &'static str,
    /// Table, section, equation or page; empty where the whole is meant.
    pub part: &'static str,
    /// How well it stands behind what cites it.
    pub standing: Standing,
}

impl Source {
    /// A source that was read.
    pub const fn published(publication: &'static str, part: &'static str) -> Self {
        Self { publication, part, standing: Standing::Published }
    }

    /// A source that was read in a transcription by others.
    pub const fn transcribed(publication: &'static str, part: &'static str) -> Self {
        Self { publication, part, standing: Standing::Transcribed }
    }

    /// A source that is cited from memory.
    pub const fn from_memory(publication: &'static str, part: &'static str) -> Self {
        Self { publication, part, standing: Standing::FromMemory }
    }

    /// A rule of thumb; `what` names the rule.
    pub const fn common_practice(what: &'static str) -> Self {
        Self { publication: what, part: "", standing: Standing::CommonPractice }
    }

    /// A definition or an identity; `what` names it.
    pub const fn identity(what: &'static str) -> Self {
        Self { publication: what, part: "", standing: Standing::Identity }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.publication)?;
        if !self.part.is_empty() {
            write!(f, ", {}", self.part)?;
        }
        match self.standing {
            Standing::Published | Standing::Identity => Ok(()),
            Standing::Transcribed => f.write_str(" (as transcribed)"),
            Standing::FromMemory => f.write_str(" (from memory)"),
            Standing::CommonPractice => f.write_str(" (common practice, no source)"),
        }
    }
}
