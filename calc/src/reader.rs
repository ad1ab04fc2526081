//! Reads a sheet's answers: typed text against what is asked, with a fault for all that is wrong.
//!
//! A read never stops at the first fault. Where an answer is wrong the reader notes a fault and
//! hands out a stand-in, so that the rest is read too; `sheet::solve` sees to it that nothing is
//! ever worked out from a stand-in.

use std::cell::RefCell;
use std::marker::PhantomData;

use crate::ask::{Ask, BodyPart, Kind, MOST_ROWS, Need};
use crate::body::Body;
use crate::fault::Fault;
use crate::handoff::{HandOff, Handed};
use crate::mass::balance::Weight;
use crate::node::{Node, keys, member};
use crate::quantity::{
    ANGLE, AREA, CONDUCTIVITY, CURRENT, DIMENSIONS, Dimension, ENERGY, FLOW, LENGTH, Length, MASS,
    MASS_DENSITY, Measure, POWER, SPREAD_RATE, Style, TEMPERATURE, TIME, U_VALUE, Unit, VOLTAGE,
    VOLUME, plain, read_number, significant,
};
use crate::report::Taken;
use crate::words::{Msg, any_of, reader as words};
use uom::si::f64::{
    Angle, Area, ElectricCurrent, ElectricPotential, Energy, HeatTransfer, Mass, MassDensity,
    Power, ReciprocalLength, ThermalConductivity, ThermodynamicTemperature, Time, Volume,
    VolumeRate,
};

/// A quantity with a unit of its own type, made from its number in SI base units.
pub trait Quantity {
    /// The quantity of so many SI base units.
    fn from_si(si: f64) -> Self;
}

impl<D: uom::si::Dimension + ?Sized> Quantity for uom::si::Quantity<D, uom::si::SI<f64>, f64> {
    fn from_si(si: f64) -> Self {
        Self { dimension: PhantomData, units: PhantomData, value: si }
    }
}

/// A quantity whose dimension follows from its type, for what is asked.
pub trait Measured: Quantity {
    /// What is measured.
    const DIMENSION: &'static Dimension;
}

macro_rules! measured {
    ($($of:ty: $dimension:ident)+) => {
        $(impl Measured for $of {
            const DIMENSION: &'static Dimension = &$dimension;
        })+
    };
}

measured! {
    Length: LENGTH
    Area: AREA
    Volume: VOLUME
    Mass: MASS
    Angle: ANGLE
    ThermodynamicTemperature: TEMPERATURE
    VolumeRate: FLOW
    ElectricCurrent: CURRENT
    ElectricPotential: VOLTAGE
    Power: POWER
    HeatTransfer: U_VALUE
    ThermalConductivity: CONDUCTIVITY
    Energy: ENERGY
    Time: TIME
    MassDensity: MASS_DENSITY
    ReciprocalLength: SPREAD_RATE
}

/// What is written in a notation of its own: a gauge, a conductor.
pub trait Notation: Sized {
    /// Handed out where the text is wrong, which is told.
    fn stand_in() -> Self;

    /// Reads it.
    ///
    /// # Errors
    /// What is wrong with the text, and what would be right.
    fn read(text: &str) -> Result<Self, Msg>;
}

/// Finds what another sheet hands over by its id and the kinds that it may be of; the error is why there is nothing to take.
pub type FindSheet<'a> = dyn Fn(&str, &str) -> Result<Handed, Msg> + 'a;

/// Another sheet as it was named in an input.
#[derive(Clone, Debug, Default)]
pub struct NamedSheet {
    id: Option<String>,
    kinds: &'static str,
    /// Of the input that names it, from the top.
    path: String,
}

/// What a sheet may look at besides its own inputs.
pub struct Site<'a> {
    /// How results are written.
    pub style: Style,
    /// The measured body.
    pub body: &'a Body,
    /// What other sheets hand over.
    pub sheets: &'a FindSheet<'a>,
    /// What everything on the project's buy list weighs; the error is why it cannot be told.
    pub weight: &'a dyn Fn() -> Result<Weight, Msg>,
}

/// No other sheet can be taken from.
pub fn no_sheet(id: &str, _kinds: &str) -> Result<Handed, Msg> {
    Err(words::NoSuchSheet { id }.into())
}

/// Nothing is weighed where no sheet asks for it.
pub fn no_weight() -> Result<Weight, Msg> {
    Err(words::NO_NUMBER_WANTED.into())
}

/// Reads the answers at one place of a sheet's inputs.
pub struct Reader<'a> {
    site: &'a Site<'a>,
    node: Option<&'a Node>,
    path: String,
    notes: &'a Notes,
}

/// What was noted on the way.
#[derive(Debug, Default)]
pub struct Notes {
    faults: RefCell<Vec<Fault>>,
    taken: RefCell<Vec<Taken>>,
}

impl Notes {
    /// The faults found so far, in the order of reading.
    pub fn faults(self) -> (Vec<Fault>, Vec<Taken>) {
        (self.faults.into_inner(), self.taken.into_inner())
    }
}

impl<'a> Reader<'a> {
    /// A reader of all inputs below `node`.
    pub fn new(site: &'a Site<'a>, node: &'a Node, notes: &'a Notes) -> Self {
        let reader = Self { site, node: Some(node), path: String::new(), notes };
        if !node.is_object() && !node.is_null() {
            reader.tell_here(words::InputsNotNamed { like: r#"{"coats": 2}"# });
        }
        reader
    }

    /// The path of this place; empty at the top.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// How results are written.
    pub fn style(&self) -> Style {
        self.site.style
    }

    /// The measured body.
    pub fn body(&self) -> &'a Body {
        self.site.body
    }

    /// What everything on the project's buy list weighs; for sheets that ask under
    /// [`WEIGHT_KEY`](crate::project::shopping::WEIGHT_KEY).
    ///
    /// # Errors
    /// Another sheet on the list takes from this one.
    pub fn project_weight(&self) -> Result<Weight, String> {
        (self.site.weight)().map_err(|message| self.style().say(message))
    }

    /// Notes a fault of this place.
    pub fn fault(&self, message: impl Into<String>) {
        self.notes.faults.borrow_mut().push(Fault::new(self.path.clone(), message));
    }

    /// Notes a fault of the input asked for here.
    pub fn fault_at(&self, ask: &Ask, message: impl Into<String>) {
        self.below(ask.key).fault(message);
    }

    /// Notes a fault of this place, by its message.
    fn tell_here(&self, message: impl Into<Msg>) {
        self.fault(self.style().say(message));
    }

    /// Notes a fault of the input asked for here, by its message.
    pub fn tell(&self, ask: &Ask, message: impl Into<Msg>) {
        self.fault_at(ask, self.style().say(message));
    }

    /// Notes a fault of one value of a list or of one of its rows, by its message.
    pub fn tell_of(&self, ask: &Ask, index: usize, message: impl Into<Msg>) {
        self.note(&join(ask.key, &index.to_string()), self.style().say(message));
    }

    /// Notes at a row of a list that an input of it was left out, for one that nothing handed over.
    pub fn tell_missing(&self, rows: &Ask, index: usize, ask: &Ask) {
        self.below(rows.key).below(&index.to_string()).missing_unless_given(ask);
    }

    /// Notes a fault of what stands at a path below this place, by its message.
    pub fn tell_at(&self, path: &str, message: impl Into<Msg>) {
        self.note(path, self.style().say(message));
    }

    /// Notes a fault of what stands at a path below this place.
    pub fn note(&self, path: &str, message: impl Into<String>) {
        self.notes.faults.borrow_mut().push(Fault::new(join(&self.path, path), message));
    }

    /// Whether anything stands at a dotted path below this place.
    pub fn has(&self, path: &str) -> bool {
        path.split('.').try_fold(self.node, |node, key| Some(node?.get(key))).flatten().is_some()
    }

    /// Whether anything was given at a dotted path below this place: `loads.2.count`.
    pub fn given_at(&self, path: &str) -> bool {
        let step = |node: Option<&'a Node>, key: &str| match node? {
            Node::Array(items) => items.get(key.parse::<usize>().ok()?),
            other => member(other, key),
        };
        let node = path.split('.').fold(self.node, step);
        !Self { site: self.site, node, path: String::new(), notes: self.notes }.is_blank()
    }

    /// Whether a fault was noted so far.
    pub fn has_faults(&self) -> bool {
        !self.notes.faults.borrow().is_empty()
    }

    /// Whether anything was given for the input.
    pub fn given(&self, ask: &Ask) -> bool {
        match ask.kind {
            Kind::Either(of) => of.iter().any(|one| self.given(one)),
            _ => !self.below(ask.key).is_blank(),
        }
    }

    /// A quantity: the one given, else its default, else the body's.
    pub fn measure<Q: Quantity>(&self, ask: &Ask) -> Q {
        Q::from_si(self.si(ask))
    }

    /// A quantity that may be left out.
    pub fn maybe<Q: Quantity>(&self, ask: &Ask) -> Option<Q> {
        self.maybe_si(ask).map(Q::from_si)
    }

    /// A measure or a number as a plain number in SI units, for dimensions without a type of
    /// their own.
    pub fn si(&self, ask: &Ask) -> f64 {
        self.maybe_si(ask).unwrap_or_else(|| self.missing_number(ask))
    }

    /// As `si`, for an input that may be left out.
    pub fn maybe_si(&self, ask: &Ask) -> Option<f64> {
        let here = self.below(ask.key);
        if !here.is_blank() {
            return Some(here.read_number_or_measure(ask));
        }
        match ask.need {
            Need::Required | Need::Optional => None,
            Need::Default(text) => here.read_text(ask, text).ok(),
            Need::Body(part) => {
                let (value, words) = self.site.body.part(part, self.site.style)?;
                self.notes.taken.borrow_mut().push(Taken { field: here.path, text: words });
                Some(value)
            }
        }
    }

    /// A plain number or a percentage.
    pub fn number(&self, ask: &Ask) -> f64 {
        self.si(ask)
    }

    /// A plain number that may be left out.
    pub fn maybe_number(&self, ask: &Ask) -> Option<f64> {
        self.maybe_si(ask)
    }

    /// A whole number.
    pub fn count(&self, ask: &Ask) -> u32 {
        // The range was checked on reading: the value is whole and fits.
        self.si(ask) as u32
    }

    /// A whole number that may be left out.
    pub fn maybe_count(&self, ask: &Ask) -> Option<u32> {
        self.maybe_si(ask).map(|number| number as u32)
    }

    /// A name; empty where none was given and none is required.
    pub fn words(&self, ask: &Ask) -> String {
        let here = self.below(ask.key);
        match here.text() {
            Some(text) => text,
            None => {
                if ask.need == Need::Required {
                    here.tell_here(words::NameMissing { what: self.name_of(ask) });
                }
                match ask.need {
                    Need::Default(text) => text.to_owned(),
                    _ => String::new(),
                }
            }
        }
    }

    /// Text in a notation of its own, read by `read`; `stand_in` is handed out where it is wrong.
    pub fn notation<T>(
        &self,
        ask: &Ask,
        stand_in: T,
        read: impl Fn(&str) -> Result<T, String>,
    ) -> T {
        match self.maybe_notation(ask, read) {
            Some(value) => value,
            None => {
                self.missing_unless_given(ask);
                stand_in
            }
        }
    }

    /// As [`Self::notation`], of a type that knows how it is written.
    pub fn notated<T: Notation>(&self, ask: &Ask) -> T {
        self.notation(ask, T::stand_in(), |text| T::read(text).map_err(|why| self.style().say(why)))
    }

    /// As [`Self::notated`], for an input that may be left out.
    pub fn maybe_notated<T: Notation>(&self, ask: &Ask) -> Option<T> {
        self.maybe_notation(ask, |text| T::read(text).map_err(|why| self.style().say(why)))
    }

    #[inline(never)]
    fn missing_unless_given(&self, ask: &Ask) {
        if !self.given(ask) {
            self.below(ask.key).missing(ask);
        }
    }

    /// As `notation`, for an input that may be left out.
    pub fn maybe_notation<T>(
        &self,
        ask: &Ask,
        read: impl Fn(&str) -> Result<T, String>,
    ) -> Option<T> {
        let (here, text) = self.typed_or_default(ask)?;
        match read(&text) {
            Ok(value) => Some(value),
            Err(message) => {
                here.fault(message);
                None
            }
        }
    }

    /// Text in a notation of its own; what is wrong with it is a message, and its type's default stands in.
    pub fn read_by<T: Default>(&self, ask: &Ask, read: fn(&str) -> Result<T, Msg>) -> T {
        self.maybe_read_by(ask, read).unwrap_or_else(|| {
            self.missing_unless_given(ask);
            T::default()
        })
    }

    /// As `read_by`, for an input that may be left out.
    pub fn maybe_read_by<T>(&self, ask: &Ask, read: fn(&str) -> Result<T, Msg>) -> Option<T> {
        self.maybe_notation(ask, |text| read(text).map_err(|message| self.style().say(message)))
    }

    /// As `read_by`, of each text of a list; those that are wrong are left out.
    pub fn each_read_by<T>(&self, ask: &Ask, read: fn(&str) -> Result<T, Msg>) -> Vec<T> {
        self.notations(ask, |text| read(text).map_err(|message| self.style().say(message)))
    }

    /// The text that was typed, else the default, and its place.
    fn typed_or_default(&self, ask: &Ask) -> Option<(Self, String)> {
        let here = self.below(ask.key);
        let text = match (here.text(), ask.need) {
            (Some(text), _) => text,
            (None, Need::Default(text)) => text.to_owned(),
            (None, _) => return None,
        };
        Some((here, text))
    }

    /// Texts in a notation of their own, in order; those that are wrong are left out.
    pub fn notations<T>(&self, ask: &Ask, read: impl Fn(&str) -> Result<T, String>) -> Vec<T> {
        let Kind::List { of, .. } = ask.kind else { return Vec::new() };
        self.items(ask)
            .iter()
            .filter_map(|item| {
                let Some(text) = item.text() else {
                    item.missing(of);
                    return None;
                };
                read(&text).map_err(|message| item.fault(message)).ok()
            })
            .collect()
    }

    /// The key of the chosen one of several.
    pub fn choice(&self, ask: &Ask) -> &'static str {
        let Kind::Choice(of) = ask.kind else { return "" };
        let here = self.below(ask.key);
        let text = match (here.text(), ask.need) {
            (Some(text), _) => text,
            (None, Need::Default(text)) => text.to_owned(),
            (None, _) => String::new(),
        };
        match of.keys().find(|key| *key == text) {
            Some(key) => key,
            None => {
                let names = any_of(of.all(self.site.style.words).map(|(_, name)| name));
                here.tell_here(words::ChooseOne { names });
                of.keys().next().unwrap_or_default()
            }
        }
    }

    /// Yes or no.
    pub fn flag(&self, ask: &Ask) -> bool {
        let here = self.below(ask.key);
        match here.node {
            Some(Node::Bool(flag)) => *flag,
            _ => match here.text().as_deref() {
                Some("true" | "yes") => true,
                Some("false" | "no") => false,
                Some(_) => {
                    here.tell_here(words::YesOrNo { yes: "true", no: "false" });
                    false
                }
                None => ask.need == Need::Default("true"),
            },
        }
    }

    /// Several inputs under one key.
    pub fn group<T>(&self, ask: &Ask, read: impl Fn(&Reader<'a>) -> T) -> T {
        read(&self.group_below(ask))
    }

    #[inline(never)]
    fn group_below(&self, ask: &Ask) -> Self {
        let here = self.below(ask.key);
        if here.is_blank() && ask.need == Need::Required {
            here.missing(ask);
        } else {
            here.expect_object();
        }
        here
    }

    /// Several inputs under one key that may be left out together.
    pub fn maybe_group<T>(&self, ask: &Ask, read: impl Fn(&Reader<'a>) -> T) -> Option<T> {
        self.given(ask).then(|| self.group(ask, read))
    }

    /// Rows of inputs, each read by `read`.
    pub fn rows<T>(&self, ask: &Ask, read: impl Fn(&Reader<'a>) -> T) -> Vec<T> {
        let mut read_rows = Vec::new();
        for row in &self.row_readers(ask) {
            row.expect_object();
            read_rows.push(read(row));
        }
        read_rows
    }

    /// What each of the rows is known by, for ids: no two are the same, and none changes with what
    /// stands before it.
    pub fn row_keys(&self, ask: &Ask) -> Vec<String> {
        match self.below(ask.key).node {
            Some(Node::Array(rows)) => keys(rows),
            _ => Vec::new(),
        }
    }

    #[inline(never)]
    fn row_readers(&self, ask: &Ask) -> Vec<Self> {
        self.items(ask)
    }

    /// Notes that an input was left out and taken from the body, with what was taken in words: for
    /// what the body hands out as more than one figure.
    pub fn took(&self, ask: &Ask, words: String) {
        let field = self.below(ask.key).path;
        self.notes.taken.borrow_mut().push(Taken { field, text: words });
    }

    /// Positions along the body: those given, else the body's ribs where the ask falls back on
    /// them.
    pub fn positions(&self, ask: &Ask) -> Vec<Length> {
        if self.given(ask) || ask.need != Need::Body(BodyPart::Ribs) {
            return self.measures(ask);
        }
        let here = self.below(ask.key);
        let ribs = &self.site.body.ribs;
        if ribs.is_empty() {
            here.missing(ask);
        } else {
            let text = self.style().say(words::RibsOfBody { count: ribs.len() });
            self.notes.taken.borrow_mut().push(Taken { field: here.path, text });
        }
        ribs.clone()
    }

    /// Quantities in order.
    pub fn measures<Q: Quantity>(&self, ask: &Ask) -> Vec<Q> {
        self.numbers(ask).into_iter().map(Q::from_si).collect()
    }

    /// Numbers in order, in SI units.
    pub fn numbers(&self, ask: &Ask) -> Vec<f64> {
        let Kind::List { of, .. } = ask.kind else { return Vec::new() };
        self.items(ask)
            .iter()
            .map(|item| {
                if item.is_blank() {
                    item.missing(of);
                    return 1.0;
                }
                item.read_number_or_measure(of)
            })
            .collect()
    }

    /// Whole numbers in order.
    pub fn counts(&self, ask: &Ask) -> Vec<u32> {
        // The range was checked on reading: the values are whole and fit.
        self.numbers(ask).into_iter().map(|number| number as u32).collect()
    }

    /// As `numbers`, but a single value may stand alone instead of in a list.
    pub fn one_or_more_numbers(&self, ask: &Ask) -> Vec<f64> {
        let Kind::List { of, .. } = ask.kind else { return Vec::new() };
        let here = self.below(ask.key);
        match here.node {
            Some(Node::String(_) | Node::Number(_)) if !here.is_blank() => {
                vec![here.read_number_or_measure(of)]
            }
            _ => self.numbers(ask),
        }
    }

    /// Which of several inputs is given: the index into the asks of an `Either`. None, with a
    /// fault where one is required, when none or more than one is given.
    pub fn which(&self, ask: &Ask) -> Option<usize> {
        let Kind::Either(of) = ask.kind else { return None };
        let mut given = of.iter().enumerate().filter(|(_, one)| self.given(one));
        match (given.next(), given.next()) {
            (Some((index, _)), None) => Some(index),
            (Some((_, first)), Some((_, second))) => {
                let (first, other) = (self.name_of(first), self.name_of(second));
                self.tell(second, words::NotBoth { first, second: other });
                None
            }
            (None, _) => {
                if ask.need == Need::Required {
                    let names = any_of(of.iter().map(|one| self.name_of(one)));
                    let first = of.first().map_or("", |one| one.key);
                    self.below(first).tell_here(words::OneOfSeveral { names });
                }
                None
            }
        }
    }

    /// Reads what stands for an input that is wrong in a way that was told already: nothing more is noted.
    pub fn unheard<T>(&self, read: impl FnOnce(&Reader<'_>) -> T) -> T {
        let notes = Notes::default();
        read(&Reader { site: self.site, node: self.node, path: self.path.clone(), notes: &notes })
    }

    /// The sheet that an input names, to be taken from once the rest is read.
    pub fn named_sheet(&self, ask: &Ask) -> NamedSheet {
        let Kind::SheetOf(kinds) = ask.kind else { return NamedSheet::default() };
        let here = self.below(ask.key);
        let id = here.text();
        if id.is_none() && ask.need == Need::Required {
            here.missing(ask);
        }
        NamedSheet { id, kinds, path: here.path }
    }

    /// What a named sheet hands over; none, with a fault of the input that names it, where there is nothing to take.
    pub fn taken<T: HandOff>(&self, from: &NamedSheet) -> Option<T> {
        let found = (self.site.sheets)(from.id.as_ref()?, from.kinds);
        let found = found.and_then(|handed| handed.get().cloned().ok_or(T::LACKING.into()));
        found
            .map_err(|none| {
                let message = self.style().say(none);
                self.notes.faults.borrow_mut().push(Fault::new(from.path.clone(), message));
            })
            .ok()
    }

    /// What the sheet named by the input hands over.
    pub fn sheet<T: HandOff>(&self, ask: &Ask) -> Option<T> {
        self.taken(&self.named_sheet(ask))
    }

    /// As `sheet`, of an input that must be given.
    pub fn of_sheet<T: HandOff + Default>(&self, ask: &Ask) -> T {
        self.sheet(ask).unwrap_or_default()
    }

    /// The reader of what stands under `key`.
    fn below(&self, key: &str) -> Self {
        Self {
            site: self.site,
            node: self.node.and_then(|node| member(node, key)),
            path: join(&self.path, key),
            notes: self.notes,
        }
    }

    /// The readers of the items of a list, with its length checked.
    fn items(&self, ask: &Ask) -> Vec<Self> {
        let (noun, at_least) = match ask.kind {
            Kind::Rows { noun, at_least, .. } => {
                (noun.say(self.site.style.words).to_owned(), at_least)
            }
            Kind::List { of, at_least, .. } => (self.name_of(of), at_least),
            _ => return Vec::new(),
        };
        let here = self.below(ask.key);
        let items = match here.node {
            Some(Node::Array(items)) => items.as_slice(),
            None | Some(Node::Null) => &[],
            Some(_) => {
                here.tell_here(words::ListWanted { noun });
                return Vec::new();
            }
        };
        let needed = match ask.need {
            Need::Optional if items.is_empty() => 0,
            _ => at_least,
        };
        if items.len() < needed {
            here.tell_here(words::TooFew { least: needed, noun, count: items.len() });
        }
        if items.len() > MOST_ROWS {
            here.tell_here(words::TooMany { count: items.len(), most: MOST_ROWS });
        }
        items
            .iter()
            .take(MOST_ROWS)
            .enumerate()
            .map(|(index, node)| Self {
                site: here.site,
                node: Some(node),
                path: join(&here.path, &index.to_string()),
                notes: here.notes,
            })
            .collect()
    }

    fn is_blank(&self) -> bool {
        match self.node {
            None | Some(Node::Null) => true,
            Some(Node::String(text)) => text.trim().is_empty(),
            Some(Node::Array(items)) => items.is_empty(),
            Some(Node::Object(fields)) => fields.is_empty(),
            Some(_) => false,
        }
    }

    /// The text that stands here; a number counts as its text. None where it is blank.
    fn text(&self) -> Option<String> {
        match self.node? {
            Node::String(text) if !text.trim().is_empty() => Some(text.trim().to_owned()),
            Node::Number(number) => Some(number.to_string()),
            Node::String(_) | Node::Null => None,
            _ => {
                self.tell_here(words::TEXT_WANTED);
                None
            }
        }
    }

    fn expect_object(&self) {
        if !matches!(self.node, Some(Node::Object(_) | Node::Null) | None) {
            self.tell_here(words::ValuesNotNamed { like: r#"{"length": "90 1/2 in"}"# });
        }
    }

    /// An input's name as it stands inside a sentence.
    fn name_of(&self, ask: &Ask) -> String {
        lower_first(ask.label.say(self.site.style.words))
    }

    fn missing(&self, ask: &Ask) {
        // One of several that is read as the stand-in was told of already.
        if self.notes.faults.borrow().iter().any(|fault| fault.field == self.path) {
            return;
        }
        let usual = ask.usual_in(self.site.style.system);
        let what = self.name_of(ask);
        self.tell_here(match (ask.need, usual) {
            (Need::Body(part), _) => Msg::from(words::MissingOfBody { what, part: part.name() }),
            (_, "") => words::Missing { what }.into(),
            (_, usual) => words::MissingLike { what, usual }.into(),
        });
    }

    fn missing_number(&self, ask: &Ask) -> f64 {
        let here = self.below(ask.key);
        // A default that cannot be read is a mistake in the sheet, found by its tests.
        here.missing(ask);
        stand_in(ask)
    }

    /// Reads what stands here; notes a fault and hands out a stand-in where it is wrong.
    fn read_number_or_measure(&self, ask: &Ask) -> f64 {
        let read = match (self.node, ask.kind) {
            (Some(Node::String(text)), _) => self.read_text(ask, text),
            (Some(Node::Number(number)), Kind::Number { .. } | Kind::Count { .. }) => {
                let value = number.as_f64().unwrap_or(f64::NAN);
                self.check(ask, value, None, &number.to_string())
            }
            (Some(Node::Number(number)), _) => {
                let unit = ask.unit_in(self.site.style.system).map_or("", Unit::symbol);
                let (number, like) = (number.to_string(), format!("\"{number} {unit}\""));
                Err(words::NoUnit { number, like }.into())
            }
            _ => {
                let usual = ask.usual_in(self.site.style.system);
                let usual = if usual.is_empty() { "12" } else { usual };
                Err(words::NumberWanted { like: format!("\"{usual}\"") }.into())
            }
        };
        read.unwrap_or_else(|message| {
            self.tell_here(message);
            stand_in(ask)
        })
    }

    fn read_text(&self, ask: &Ask, text: &str) -> Result<f64, Msg> {
        match ask.kind {
            Kind::Measure { dimension, .. } => {
                let measure =
                    Measure::read(text, dimension, None).map_err(|error| error.message())?;
                self.check(ask, measure.si(), ask.unit_in(self.site.style.system), text.trim())
            }
            Kind::Number { .. } | Kind::Count { .. } => {
                let number = match unit_of(ask) {
                    Some((dimension, unit)) => Measure::read(text, dimension, Some(unit))
                        .map(|measure| unit.from_si(measure.si())),
                    None => read_number(text),
                };
                self.check(ask, number.map_err(|error| error.message())?, None, text.trim())
            }
            _ => Err(words::NO_NUMBER_WANTED.into()),
        }
    }

    /// Checks a value against the range of its ask; `given` is how it was typed.
    fn check(&self, ask: &Ask, value: f64, unit: Option<&Unit>, given: &str) -> Result<f64, Msg> {
        let ((low, high), whole) = match ask.kind {
            Kind::Measure { range, .. } | Kind::Number { range, .. } => (range, false),
            Kind::Count { range: (low, high) } => ((f64::from(low), f64::from(high)), true),
            _ => return Ok(value),
        };
        // Ends typed in another unit than they are kept in must still count as inside.
        let slack = 1e-9 * low.abs().max(high.abs()).min(value.abs().max(1e-3));
        if !value.is_finite() || value < low - slack || value > high + slack {
            let [least, most] = [low, high].map(|end| end_words(ask, end, unit));
            return Err(words::OutOfRange { what: self.name_of(ask), least, most, given }.into());
        }
        if whole && value != value.round() {
            return Err(words::NotWhole { what: self.name_of(ask) }.into());
        }
        Ok(value.clamp(low, high))
    }
}

/// The unit that a number's key names, with its dimension; none for percentages and bare numbers.
fn unit_of(ask: &Ask) -> Option<(&'static Dimension, &'static Unit)> {
    match ask.kind {
        Kind::Number { unit, .. } if unit != "%" => {
            DIMENSIONS.iter().find_map(|dimension| Some((*dimension, dimension.unit(unit)?)))
        }
        _ => None,
    }
}

/// A value inside the range, handed out where none can be read.
fn stand_in(ask: &Ask) -> f64 {
    match ask.kind {
        Kind::Measure { range: (low, high), .. } | Kind::Number { range: (low, high), .. } => {
            1.0_f64.clamp(low, high)
        }
        Kind::Count { range: (low, _) } => f64::from(low),
        _ => 1.0,
    }
}

/// An end of a range as the field takes it: `100 ft`.
fn end_words(ask: &Ask, value: f64, unit: Option<&Unit>) -> String {
    match (ask.kind, unit) {
        (Kind::Measure { .. }, Some(unit)) => {
            format!("{} {}", significant(unit.from_si(value), 4), unit.symbol())
        }
        (Kind::Number { unit, .. }, _) if !unit.is_empty() => {
            format!("{} {unit}", plain(value, 3))
        }
        _ => plain(value, 3),
    }
}

/// `a/b` for paths: dotted.
fn join(path: &str, key: &str) -> String {
    if path.is_empty() { key.to_owned() } else { [path, key].join(".") }
}

/// A label as it stands inside a sentence: its first letter small, unless it is an abbreviation.
pub fn lower_first(label: &str) -> String {
    let is_small =
        |letter: char| letter.is_ascii_lowercase() || matches!(letter, 'ß'..='ö' | 'ø'..='ÿ');
    let mut letters = label.chars();
    match (letters.next(), letters.next()) {
        (Some(first), Some(second)) if is_small(second) || second == ' ' => {
            std::iter::once(small(first)).chain(label.chars().skip(1)).collect()
        }
        _ => label.to_owned(),
    }
}

/// A letter of Latin-1 in lower case, which is what languages of western Europe begin a label with.
fn small(letter: char) -> char {
    match letter {
        'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(letter as u32 + 32).unwrap_or(letter),
        _ => letter.to_ascii_lowercase(),
    }
}

#[cfg(test)]
mod tests {
    use super::lower_first;

    #[test]
    fn labels_begin_small_inside_a_sentence() {
        for (label, inside) in [
            ("Board length", "board length"),
            ("Área", "área"),
            ("Íntegro", "íntegro"),
            ("A side", "a side"),
            ("U-value", "U-value"),
            ("LED strip", "LED strip"),
            ("", ""),
        ] {
            assert_eq!(lower_first(label), inside);
        }
    }
}
