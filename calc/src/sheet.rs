//! The contract of a sheet, and the one list of sheets.

use crate::ask::Ask;
use crate::fault::Fault;
use crate::handoff::Handed;
use crate::node::Node;
use crate::quantity::Style;
use crate::reader::{Notes, Reader, Site};
use crate::report::Report;
use crate::source::Source;
use crate::words::{Msg, Phrase, reader as words};

/// One sheet: all that is known of it before anything is typed.
pub struct Sheet {
    /// Its name in project files and addresses; never changed once released.
    pub kind: &'static str,
    /// Its title on the page.
    pub title: Phrase,
    /// The part of the fit-out that it belongs to; sheets of one trade stand together in the list.
    pub trade: Phrase,
    /// What it is for, in one line.
    pub purpose: Phrase,
    /// What it asks, in the order of the page.
    pub asks: &'static [&'static Ask],
    /// What its results rest on.
    pub sources: &'static [&'static Source],
    /// Inputs from the demo project's rig, as JSON: they must give answers.
    pub example: &'static str,
    /// What it hands over before it is worked out, from its inputs alone: that much cannot hang on the sheets that take it.
    /// Other sheets then take this from it, and nothing else.
    pub ahead: Option<fn(&Reader<'_>) -> Option<Handed>>,
    /// Works it out.
    pub solve: fn(&Reader<'_>) -> Result<Report, Vec<Fault>>,
}

mod bars;
pub mod handoffs;

/// Declares the modules of the sheets and lists them.
macro_rules! sheets {
    ($($name:ident)+) => {
        $(pub mod $name;)+
        /// All sheets, in the order in which a fit-out meets them.
        pub static SHEETS: &[&Sheet] = &[$(&$name::SHEET),+];
    };
}

mod wiring;

sheets! {
    gap_fill
    coating
    schedule
    furring
    boards
    stud_marks
    cut_plan
    trim
    voltage_drop
    circuit
    lights
    insulation
    heat_load
    energy
    solar
    water
    axles
}

/// The sheet of a kind.
pub fn find(kind: &str) -> Option<&'static Sheet> {
    SHEETS.iter().copied().find(|sheet| sheet.kind == kind)
}

/// Reads typed inputs and works them out: the body of every sheet's `solve`. Nothing is worked
/// out unless all inputs are right.
///
/// # Errors
/// All faults of the inputs; where there are none, those that `report` finds between them.
pub fn solve<I>(
    reader: &Reader<'_>,
    read: fn(&Reader<'_>) -> I,
    report: fn(&I, Style) -> Result<Report, Vec<Fault>>,
) -> Result<Report, Vec<Fault>> {
    let inputs = read(reader);
    if reader.has_faults() {
        // The faults themselves are in the notes, where `solve_sheet` takes them from.
        return Err(Vec::new());
    }
    report(&inputs, reader.style())
}

/// Reads typed inputs, works them out, and puts the result into words: the body of a sheet's `solve`. Nothing is
/// worked out unless all inputs are right.
///
/// # Errors
/// All faults of the inputs.
pub fn solved<I, R>(
    reader: &Reader<'_>,
    read: fn(&Reader<'_>) -> I,
    solve: fn(&I) -> R,
    show: fn(&I, &R, Style) -> Report,
) -> Result<Report, Vec<Fault>> {
    let inputs = read(reader);
    if reader.has_faults() {
        return Err(Vec::new());
    }
    Ok(show(&inputs, &solve(&inputs), reader.style()))
}

/// As [`solved`], for what can turn out wrong only as it is worked out: the path of an input, and what is wrong with it.
///
/// # Errors
/// All faults of the inputs; where there are none, what `solve` finds between them.
pub fn tried<I, R>(
    reader: &Reader<'_>,
    read: fn(&Reader<'_>) -> I,
    solve: fn(&I) -> Result<R, (String, Msg)>,
    show: fn(&I, &R, Style) -> Report,
) -> Result<Report, Vec<Fault>> {
    let inputs = read(reader);
    if reader.has_faults() {
        return Err(Vec::new());
    }
    let style = reader.style();
    match solve(&inputs) {
        Ok(found) => Ok(show(&inputs, &found, style)),
        Err((field, message)) => Err(vec![Fault::new(field, style.say(message))]),
    }
}

/// A report of what is not safe: nothing of it is bought, cut, marked or drawn.
fn values_alone(report: Report) -> Report {
    Report {
        checks: Vec::new(),
        tasks: Vec::new(),
        offers: Vec::new(),
        drawings: Vec::new(),
        templates: Vec::new(),
        marks: Vec::new(),
        buy: Vec::new(),
        cut: Vec::new(),
        cutting: None,
        ..report
    }
}

/// Works a sheet out from its saved inputs.
///
/// # Errors
/// All faults of the inputs.
pub fn solve_sheet(sheet: &Sheet, site: &Site<'_>, inputs: &Node) -> Result<Report, Vec<Fault>> {
    let notes = Notes::default();
    let result = (sheet.solve)(&Reader::new(site, inputs, &notes));
    let (mut faults, taken) = notes.faults();
    match result {
        Ok(mut report) if faults.is_empty() => {
            if let Some(name) = report.outcome.not_finite() {
                let message = words::BeyondMeasure { name };
                return Err(vec![Fault::new("", site.style.say(message))]);
            }
            report.from_body = taken;
            if !report.faults.is_empty() {
                report = values_alone(report);
            }
            Ok(report)
        }
        Ok(_) => Err(faults),
        Err(more) => {
            faults.extend(more);
            Err(faults)
        }
    }
}
