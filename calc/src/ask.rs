//! What a sheet asks: each input's name, unit, range, usual value and where to put the tape.

use crate::quantity::{Dimension, Unit, UnitSystem};
use crate::words::{Id, Phrase, Words, body};

/// One input of a sheet or of the body: all that is known of it before anything is typed.
#[derive(Clone, Copy, Debug)]
pub struct Ask {
    /// Its key in the project file.
    pub key: &'static str,
    /// Its name on the page.
    pub label: Phrase,
    /// Where to put the tape, or where on the label to look; one line.
    pub help: Phrase,
    /// What kind of text it takes.
    pub kind: Kind,
    /// What stands for it when it is left out.
    pub need: Need,
    /// An example of what is typed, imperial and metric; empty where there is none.
    pub usual: [&'static str; 2],
    /// The example is what most people take (a kerf, a stagger), not a measure of somebody's rig: it can be offered.
    pub convention: bool,
    /// A small drawing of where the tape goes.
    pub figure: Figure,
    /// A table that fills this input and others of its row in one go; none where there is none.
    pub picks: Option<&'static Picks>,
}

/// Where the tape goes, as a small drawing that many inputs share.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// No drawing.
    None,
    /// A piece, end to end.
    Along,
    /// Across the face of a piece.
    Across,
    /// How thick a piece is.
    Thickness,
    /// Between two pieces.
    Gap,
    /// Across a hole or a round thing.
    Diameter,
    /// Into a hole or a groove.
    Depth,
    /// From a rim to the ceiling above it.
    Standoff,
    /// From a rim to the flange's other edge.
    RimHeight,
    /// From the roof frame down to the ceiling.
    CeilingDepth,
    /// Centre line to centre line.
    Spacing,
    /// From a piece's end to a mark.
    FromEnd,
    /// From the front wall.
    FromFront,
    /// From the left wall.
    FromLeft,
    /// Front wall to rear wall.
    BodyLength,
    /// Left wall to right wall.
    BodyWidth,
    /// From the floor up.
    Height,
    /// A wire or a pipe, up and over, one way.
    OneWay,
    /// From wheel to wheel.
    Wheels,
}

/// A table of named things, each of which fills several inputs of one row: materials.
#[derive(Clone, Copy, Debug)]
pub struct Picks {
    /// What is picked, for the first line of the list: `material`.
    pub noun: Phrase,
    /// The names, in the order of the table.
    pub names: fn(Words) -> Vec<&'static str>,
    /// What one of them fills in: keys of its row, and the texts as they would be typed. All of
    /// the table's keys are named each time, with an empty text where nothing is known.
    pub fills: fn(usize, UnitSystem, Words) -> Vec<(&'static str, String)>,
}

/// What an input takes.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A number with a unit.
    Measure {
        /// What is measured.
        dimension: &'static Dimension,
        /// The unit a bare number takes in the app, imperial and metric.
        units: [&'static str; 2],
        /// The least and the greatest value, in SI units.
        range: (f64, f64),
    },
    /// A plain number between two ends; a percentage where `unit` is `%`. Where the unit is
    /// another, the value is in that unit, and text may name it or one like it: 200, `0.2 kW`.
    Number {
        /// What is written behind it: `%`, a unit, or nothing.
        unit: &'static str,
        /// The least and the greatest value.
        range: (f64, f64),
    },
    /// A whole number between two ends.
    Count {
        /// The least and the greatest value.
        range: (u32, u32),
    },
    /// A name or a label.
    Words,
    /// Text in a notation of its own, read by the sheet: a conductor, a gauge.
    Notation {
        /// What it is, for messages: `conductor`.
        name: &'static str,
        /// Texts to choose from; others may be typed.
        suggestions: &'static [&'static str],
    },
    /// One of several.
    Choice(Options),
    /// Yes or no.
    Flag,
    /// Several inputs under one key.
    Group(&'static [&'static Ask]),
    /// Rows of inputs: areas, runs, pieces.
    Rows {
        /// What each row asks.
        asks: &'static [&'static Ask],
        /// What one row is called: `area`.
        noun: Phrase,
        /// The fewest rows.
        at_least: usize,
    },
    /// Values in order, each like the other: stud positions.
    List {
        /// What each value asks.
        of: &'static Ask,
        /// The fewest values.
        at_least: usize,
        /// The most values that the page offers room for.
        at_most: usize,
    },
    /// One of several inputs, each under its own key beside the others; `key` is empty.
    Either(&'static [&'static Ask]),
    /// The id of another sheet of the given kind, or of one of several, with spaces between.
    SheetOf(&'static str),
}

/// What can be chosen: keys in the file, and names on the page.
#[derive(Clone, Copy, Debug)]
pub enum Options {
    /// Names in the table of words.
    Said(&'static [(&'static str, Id)]),
    /// Names written in the code.
    Written(&'static [(&'static str, &'static str)]),
}

impl Options {
    /// How many there are.
    pub const fn len(self) -> usize {
        match self {
            Self::Said(of) => of.len(),
            Self::Written(of) => of.len(),
        }
    }

    /// Whether there are none.
    pub const fn is_empty(self) -> bool {
        self.len() == 0
    }

    /// Key and name of one.
    pub const fn at(self, index: usize) -> (&'static str, Phrase) {
        match self {
            Self::Said(of) => (of[index].0, Phrase::Id(of[index].1)),
            Self::Written(of) => (of[index].0, Phrase::Written(of[index].1)),
        }
    }

    /// Keys and names in order.
    pub fn all(self, words: Words) -> impl Iterator<Item = (&'static str, &'static str)> {
        (0..self.len()).map(move |index| {
            let (key, name) = self.at(index);
            (key, name.say(words))
        })
    }

    /// The keys in order.
    pub fn keys(self) -> impl Iterator<Item = &'static str> {
        (0..self.len()).map(move |index| self.at(index).0)
    }
}

/// What stands for an input that is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// Nothing: leaving it out is a fault.
    Required,
    /// Nothing: the sheet does without.
    Optional,
    /// This text, read as if it had been typed.
    Default(&'static str),
    /// A measure of the body.
    Body(BodyPart),
}

/// A measure that the body supplies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BodyPart {
    /// Front wall to rear, inside.
    Length,
    /// Left wall to right, inside.
    Width,
    /// Floor to ceiling, inside.
    Height,
    /// The face of a rib that a screw can hit.
    RibWidth,
    /// How many ribs there are.
    RibCount,
    /// The mean distance from rib to rib.
    RibSpacing,
    /// The centre lines of all ribs, from the front wall.
    Ribs,
}

impl BodyPart {
    /// Its name in a sentence: `the body's width`.
    pub const fn name(self) -> Id {
        match self {
            Self::Length => body::PART_LENGTH,
            Self::Width => body::PART_WIDTH,
            Self::Height => body::PART_HEIGHT,
            Self::RibWidth => body::PART_RIB_WIDTH,
            Self::RibCount | Self::Ribs => body::PART_RIBS,
            Self::RibSpacing => body::PART_RIB_SPACING,
        }
    }
}

/// Most rows or values that one input takes; more than any rig needs, few enough to stay quick.
pub const MOST_ROWS: usize = 400;

impl Ask {
    const fn new(key: &'static str, label: &'static str, kind: Kind) -> Self {
        Self {
            key,
            label: Phrase::Written(label),
            help: Phrase::NONE,
            kind,
            need: Need::Required,
            usual: ["", ""],
            convention: false,
            figure: Figure::None,
            picks: None,
        }
    }

    /// A number with a unit; `units` are those that a bare number takes in the app, imperial and
    /// metric; `range` is in SI units.
    pub const fn measure(
        key: &'static str,
        label: &'static str,
        dimension: &'static Dimension,
        units: [&'static str; 2],
        range: (f64, f64),
    ) -> Self {
        Self::new(key, label, Kind::Measure { dimension, units, range })
    }

    /// A plain number.
    pub const fn number(key: &'static str, label: &'static str, range: (f64, f64)) -> Self {
        Self::new(key, label, Kind::Number { unit: "", range })
    }

    /// A percentage; the range in percent.
    pub const fn percent(key: &'static str, label: &'static str, range: (f64, f64)) -> Self {
        Self::new(key, label, Kind::Number { unit: "%", range })
    }

    /// A number whose key names its unit, such as `watts`; it may be typed with or without.
    pub const fn number_in(
        key: &'static str,
        label: &'static str,
        unit: &'static str,
        range: (f64, f64),
    ) -> Self {
        Self::new(key, label, Kind::Number { unit, range })
    }

    /// A whole number.
    pub const fn count(key: &'static str, label: &'static str, range: (u32, u32)) -> Self {
        Self::new(key, label, Kind::Count { range })
    }

    /// A name or a label; may be left out unless made required.
    pub const fn words(key: &'static str, label: &'static str) -> Self {
        Self::new(key, label, Kind::Words).optional()
    }

    /// Text in a notation of its own.
    pub const fn notation(
        key: &'static str,
        label: &'static str,
        name: &'static str,
        suggestions: &'static [&'static str],
    ) -> Self {
        Self::new(key, label, Kind::Notation { name, suggestions })
    }

    /// One of several; the first is taken when it is left out.
    pub const fn choice(
        key: &'static str,
        label: &'static str,
        of: &'static [(&'static str, &'static str)],
    ) -> Self {
        Self::chosen(key, label, Options::Written(of))
    }

    /// One of several whose names stand in the table of words.
    pub const fn one_of(key: &'static str, of: &'static [(&'static str, Id)]) -> Self {
        Self::chosen(key, "", Options::Said(of))
    }

    const fn chosen(key: &'static str, label: &'static str, of: Options) -> Self {
        let first = if of.is_empty() { "" } else { of.at(0).0 };
        Self::new(key, label, Kind::Choice(of)).default(first)
    }

    /// Yes or no.
    pub const fn flag(key: &'static str, label: &'static str, usual: bool) -> Self {
        Self::new(key, label, Kind::Flag).default(if usual { "true" } else { "false" })
    }

    /// Several inputs under one key.
    pub const fn group(
        key: &'static str,
        label: &'static str,
        asks: &'static [&'static Self],
    ) -> Self {
        Self::new(key, label, Kind::Group(asks))
    }

    /// Rows of inputs; `noun` names one row.
    pub const fn rows(
        key: &'static str,
        label: &'static str,
        noun: &'static str,
        at_least: usize,
        asks: &'static [&'static Self],
    ) -> Self {
        Self::new(key, label, Kind::Rows { asks, noun: Phrase::Written(noun), at_least })
    }

    /// Calls one row so.
    #[must_use]
    pub const fn row(mut self, noun: Phrase) -> Self {
        if let Kind::Rows { asks, at_least, .. } = self.kind {
            self.kind = Kind::Rows { asks, noun, at_least };
        }
        self
    }

    /// Values in order.
    pub const fn list(
        key: &'static str,
        label: &'static str,
        at_least: usize,
        of: &'static Self,
    ) -> Self {
        Self::new(key, label, Kind::List { of, at_least, at_most: MOST_ROWS })
    }

    /// Offers no room for more values than so many.
    #[must_use]
    pub const fn at_most(mut self, most: usize) -> Self {
        if let Kind::List { of, at_least, .. } = self.kind {
            self.kind = Kind::List { of, at_least, at_most: most };
        }
        self
    }

    /// Offers a table that fills this input and others of its row.
    #[must_use]
    pub const fn picks(mut self, picks: &'static Picks) -> Self {
        self.picks = Some(picks);
        self
    }

    /// One of several inputs beside each other.
    pub const fn either(label: &'static str, of: &'static [&'static Self]) -> Self {
        Self::new("", label, Kind::Either(of))
    }

    /// The id of another sheet of a kind, or of one of several, with spaces between.
    pub const fn sheet_of(key: &'static str, label: &'static str, kind: &'static str) -> Self {
        Self::new(key, label, Kind::SheetOf(kind))
    }

    /// Says where to put the tape.
    #[must_use]
    pub const fn help(mut self, help: &'static str) -> Self {
        self.help = Phrase::Written(help);
        self
    }

    /// Calls it so on the page.
    #[must_use]
    pub const fn named(mut self, label: Phrase) -> Self {
        self.label = label;
        self
    }

    /// Says where to put the tape, in the words of the table.
    #[must_use]
    pub const fn told(mut self, help: Phrase) -> Self {
        self.help = help;
        self
    }

    /// Draws where the tape goes.
    #[must_use]
    pub const fn figure(mut self, figure: Figure) -> Self {
        self.figure = figure;
        self
    }

    /// The example is a convention, and is offered with a tap. What is measured in the rig has none.
    #[must_use]
    pub const fn convention(mut self) -> Self {
        self.convention = true;
        self
    }

    /// A usual value, imperial and metric.
    #[must_use]
    pub const fn usual(mut self, imperial: &'static str, metric: &'static str) -> Self {
        self.usual = [imperial, metric];
        self
    }

    /// May be left out.
    #[must_use]
    pub const fn optional(mut self) -> Self {
        self.need = Need::Optional;
        self
    }

    /// Must be given.
    #[must_use]
    pub const fn required(mut self) -> Self {
        self.need = Need::Required;
        self
    }

    /// Stands for the input when it is left out.
    #[must_use]
    pub const fn default(mut self, text: &'static str) -> Self {
        self.need = Need::Default(text);
        self
    }

    /// Taken from the body when it is left out.
    #[must_use]
    pub const fn from_body(mut self, part: BodyPart) -> Self {
        self.need = Need::Body(part);
        self
    }

    /// A usual value in the given system; empty where there is none.
    pub fn usual_in(&self, system: UnitSystem) -> &'static str {
        pick(self.usual, system)
    }

    /// The unit that a bare number takes in the given system; none where no unit is asked.
    pub fn unit_in(&self, system: UnitSystem) -> Option<&'static Unit> {
        match self.kind {
            Kind::Measure { dimension, units, .. } => dimension.unit(pick(units, system)),
            _ => None,
        }
    }
}

/// The one of a pair (imperial, metric) that belongs to the system.
pub fn pick<T>([imperial, metric]: [T; 2], system: UnitSystem) -> T {
    match system {
        UnitSystem::Imperial => imperial,
        UnitSystem::Metric => metric,
    }
}
