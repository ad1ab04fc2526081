//! What a sheet gives back: answers, working, cautions, drawings, list lines and the outcome.

use std::sync::Arc;

use crate::cutting::planned::Planned;
use crate::drawing::Drawing;
use crate::fault::Fault;
use crate::handoff::Handed;
use crate::lists::{BuyLine, CutLine, MarkStrip};
use crate::outcome::Record;
use crate::quantity::Length;
use crate::source::Source;
use crate::words::Phrase;

/// Everything a sheet has to say about one set of inputs.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// The one to three figures that the person came for.
    pub answers: Vec<Answer>,
    /// What has to be said about them.
    pub remarks: Vec<Remark>,
    /// Figures side by side, where a choice is to be made.
    pub tables: Vec<Table>,
    /// Lines to be ticked off as the work goes on.
    pub checks: Vec<CheckList>,
    /// What is done one at a time at the bench, besides marking: wires to cut, cups to mix.
    pub tasks: Vec<Task>,
    /// New sheets that could be made from these results.
    pub offers: Vec<Offer>,
    /// Drawings to scale.
    pub drawings: Vec<Drawing>,
    /// Templates to be printed in true size and laid on the work: shapes in real lengths, and words
    /// that say how to lay them on.
    pub templates: Vec<Drawing>,
    /// Marks, piece by piece.
    pub marks: Vec<MarkStrip>,
    /// How the answers were worked out.
    pub working: Vec<Step>,
    /// What can hurt someone or ruin the job.
    pub cautions: Vec<Caution>,
    /// Lines for the buy list.
    pub buy: Vec<BuyLine>,
    /// Where the things of the buy list have their middle along the body, from the front wall; none
    /// where the sheet does not know. [length]
    pub centre: Option<Length>,
    /// Lines for the cut list.
    pub cut: Vec<CutLine>,
    /// The plan that these lines come from, so that the project can plan like sheets together.
    pub cutting: Option<Arc<Planned>>,
    /// What it hands to other sheets.
    pub gives: Handed,
    /// The outcome as plain named numbers.
    pub outcome: Record,
    /// What is not safe as it was typed, though the values of the outcome are true: a wire too thin for
    /// its fuse. Nothing is bought, cut, marked or drawn then.
    pub faults: Vec<Fault>,
    /// Inputs that were left out and taken from the body; filled in by the reader.
    pub from_body: Vec<Taken>,
}

impl Default for Report {
    /// An empty report. In the caller's own code, so that the compiler sees what need not be dropped
    /// where a sheet fills it in.
    #[inline(always)]
    fn default() -> Self {
        Self {
            answers: Vec::new(),
            remarks: Vec::new(),
            tables: Vec::new(),
            checks: Vec::new(),
            tasks: Vec::new(),
            offers: Vec::new(),
            drawings: Vec::new(),
            templates: Vec::new(),
            marks: Vec::new(),
            working: Vec::new(),
            cautions: Vec::new(),
            buy: Vec::new(),
            centre: None,
            cut: Vec::new(),
            cutting: None,
            gives: Handed::default(),
            outcome: Record::new(),
            faults: Vec::new(),
            from_body: Vec::new(),
        }
    }
}

/// A figure that the person came for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// What it is: `Cut off at the front left corner`.
    pub label: String,
    /// The figure with its unit, rounded to the tool in the hand.
    pub text: String,
    /// A second line where it helps: what the rounding left over, the other unit.
    pub note: String,
}

impl Answer {
    /// A figure without a second line.
    pub fn new(label: impl Into<String>, text: impl Into<String>) -> Self {
        Self { label: label.into(), text: text.into(), note: String::new() }
    }

    /// The same with a second line.
    #[must_use]
    pub fn note(mut self, note: impl Into<String>) -> Self {
        self.note = note.into();
        self
    }
}

/// How much a remark matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// All is well.
    Good,
    /// Worth knowing.
    Note,
    /// Something is to be changed before the work goes on.
    Warning,
}

/// Something to be said about the answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// How much it matters.
    pub weight: Weight,
    /// What is said.
    pub text: String,
}

impl Remark {
    /// All is well.
    pub fn good(text: impl Into<String>) -> Self {
        Self { weight: Weight::Good, text: text.into() }
    }

    /// Worth knowing.
    pub fn note(text: impl Into<String>) -> Self {
        Self { weight: Weight::Note, text: text.into() }
    }

    /// To be changed before the work goes on.
    pub fn warning(text: impl Into<String>) -> Self {
        Self { weight: Weight::Warning, text: text.into() }
    }
}

/// Figures side by side.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// What it shows.
    pub title: String,
    /// Column heads; the first column names the rows.
    pub heads: Vec<String>,
    /// The rows.
    pub rows: Vec<TableRow>,
}

/// Lines to be ticked off, one by one, as the work goes on.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CheckList {
    /// What it is for.
    pub title: String,
    /// The lines, in the order of the work.
    pub lines: Vec<CheckLine>,
}

/// A line to be ticked off.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CheckLine {
    /// What the tick is kept under, unique among all lines of the sheet. A line that asks for other
    /// work after a change has another key: its tick does not hold any more.
    pub key: String,
    /// What is to be done.
    pub text: String,
    /// A second line where it helps.
    pub note: String,
    /// Whether the second line is a warning.
    pub warns: bool,
}

/// One figure to work by at the bench.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// What the tick is kept under, as that of a [`CheckLine`]: a line with the same key is ticked with it.
    pub key: String,
    /// The piece that it is done to; tasks in a row with the same piece are one piece's.
    pub piece: String,
    /// What is done: `part A`, `14 AWG red and black`.
    pub text: String,
    /// The figure to work by.
    pub figure: Figure,
    /// A second line where it helps.
    pub note: String,
}

/// What is read at arm's length.
#[derive(Clone, Debug, PartialEq)]
pub enum Figure {
    /// A length on the tape, exact; it is rounded where it is shown.
    Tape(Length),
    /// An amount as the cup or the scale shows it.
    Amount(String),
}

/// A new sheet that could be made from these results. The app adds it in one tap; when the results
/// change, the sheet made from them says that it is behind, and takes the new ones in another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Offer {
    /// What is offered: `Wire these lamps`.
    pub label: Phrase,
    /// The kind of the new sheet.
    pub kind: &'static str,
    /// Its inputs: path and text as a person would type it. The first input of a row names the row;
    /// it is by that name that the row is found again.
    pub inputs: Vec<(String, String)>,
}

/// Texts that are written out in a sheet, such as the heads of a table.
#[inline(never)]
pub fn texts(of: &[&str]) -> Vec<String> {
    let mut texts = Vec::with_capacity(of.len());
    for text in of {
        texts.push((*text).to_owned());
    }
    texts
}

/// A row of a table.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TableRow {
    /// One text per column.
    pub cells: Vec<String>,
    /// Whether this is the row that was chosen.
    pub chosen: bool,
}

/// A step of the working: in symbols, with the numbers in it, and its result.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// What is worked out: `Needed volume`.
    pub name: String,
    /// The formula in symbols: `V = A · n / s`.
    pub formula: String,
    /// The formula with the numbers in it: `168 ft² · 3 / 400 ft²/gal`.
    pub numbers: String,
    /// The result with its unit.
    pub result: String,
    /// Where the formula comes from.
    pub source: &'static Source,
}

impl Step {
    /// A step of the working.
    pub fn new(
        name: impl Into<String>,
        formula: impl Into<String>,
        numbers: impl Into<String>,
        result: impl Into<String>,
        source: &'static Source,
    ) -> Self {
        Self {
            name: name.into(),
            formula: formula.into(),
            numbers: numbers.into(),
            result: result.into(),
            source,
        }
    }
}

/// What can hurt someone or ruin the job, and who says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What to do or to leave undone.
    pub text: Phrase,
    /// Who says so.
    pub source: &'static Source,
}

impl Caution {
    /// A trade's cautions.
    pub fn all(of: &'static [(Phrase, Source)]) -> Vec<Self> {
        of.iter().map(|(text, source)| Self { text: *text, source }).collect()
    }
}

/// An input that was taken from the body.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// The input's path.
    pub field: String,
    /// What was taken, in words: `90 1/2 in`.
    pub text: String,
}
