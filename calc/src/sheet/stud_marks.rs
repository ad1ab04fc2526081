//! One board against studs measured in place: every mark from one datum, the board's left end.

use crate::text::text;
use uom::si::length::{meter, millimeter};

use super::{Sheet, solve};
use crate::ask::{Ask, BodyPart, Figure};
use crate::carpentry::cautions::{DUST, LOOK_BEHIND};
use crate::carpentry::setting_out::{
    CHAIN_ERROR, FROM_DATUM, MarkError, copied_template_error, datum_error, even_chain_error,
};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::fault::Fault;
use crate::lists::{Mark, MarkStrip};
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, Style};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow, texts};
use crate::source::Source;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "stud_marks",
    title: "Stud marks",
    trade: "Ceiling and walls",
    purpose: "Mark one board so that every screw meets a stud or rib.",
    asks: &[&BOARD, &FIRST_STUD, &STUDS_OR_SPACINGS, &EDGE_DISTANCE, &READING_ERROR],
    sources: &[&DATUM_OFFSET, &FROM_DATUM, &CHAIN_ERROR],
    example: r#"{ "board": "12 ft", "first_stud": "5 3/8 in",
        "studs": ["412 mm", "821 mm", "1236 mm", "1640 mm", "2049 mm", "2463 mm", "2868 mm"],
        "edge_distance": "3/4 in", "reading_error": "1/32 in" }"#,
    solve: |reader| solve(reader, read, report),
};

static BOARD: Ask = Ask::measure("board", "Board length", &LENGTH, ["ft", "mm"], (0.01, 15.0))
    .usual("12 ft", "3600 mm")
    .help("End to end, as it will be put up.")
    .figure(Figure::Along);
static FIRST_STUD: Ask =
    Ask::measure("first_stud", "First stud on the board", &LENGTH, ["in", "mm"], (0.0, 15.0))
        .usual("5 3/8 in", "137 mm")
        .help("Hold the board in place, trace the first stud's centre on it, and measure from the board's left end.")
    .figure(Figure::FromEnd);
static STUD: Ask = Ask::measure("", "Stud", &LENGTH, ["in", "mm"], (0.0, 30.0))
    .usual("16 in", "400 mm")
    .help("Tape hooked once on the same wall; read each centre line.");
static STUDS: Ask = Ask::list("studs", "Stud positions", 1, &STUD)
    .from_body(BodyPart::Ribs)
    .figure(Figure::FromFront);
static SPACING: Ask = Ask::measure("", "Spacing", &LENGTH, ["in", "mm"], (0.001, 10.0))
    .usual("16 in", "400 mm")
    .help("Centre to centre, from each stud to the next.");
static SPACINGS: Ask =
    Ask::list("spacings", "Spacings between studs", 1, &SPACING).figure(Figure::Spacing);
static STUDS_OR_SPACINGS: Ask = Ask::either("Studs", &[&STUDS, &SPACINGS]).optional();
static EDGE_DISTANCE: Ask =
    Ask::measure("edge_distance", "Least distance from an end", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .optional()
        .usual("3/4 in", "20 mm")
        .help("Closer to an end than this, a screw splits the board.")
        .figure(Figure::FromEnd);
static READING_ERROR: Ask =
    Ask::measure("reading_error", "Error of one reading", &LENGTH, ["in", "mm"], (0.0, 0.1))
        .optional()
        .usual("1/32 in", "1 mm")
        .help("How far off a single reading or mark may be: half the smallest division you trust.");

/// offset = traced + (stud - first stud).
static DATUM_OFFSET: Source = Source::identity("Offsets from one datum");
static CAUTIONS: &[(&str, Source)] = &[LOOK_BEHIND, DUST];

/// What was typed, read.
struct Inputs {
    board: Length,
    first_stud: Length,
    /// Centre positions in order, from any one point.
    studs: Vec<Length>,
    edge_distance: Option<Length>,
    reading_error: Option<Length>,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let inputs = Inputs {
        board: reader.measure(&BOARD),
        first_stud: reader.measure(&FIRST_STUD),
        studs: match reader.which(&STUDS_OR_SPACINGS) {
            Some(1) => running(&reader.measures(&SPACINGS)),
            _ => reader.positions(&STUDS),
        },
        edge_distance: reader.maybe(&EDGE_DISTANCE),
        reading_error: reader.maybe(&READING_ERROR),
    };
    for (index, pair) in inputs.studs.windows(2).enumerate() {
        if pair[1] <= pair[0] {
            reader.note(
                &text!("studs.{}", index + 1),
                "this stud is not beyond the one before it; enter the positions in order, all \
                 measured from the same end",
            );
        }
    }
    if inputs.first_stud > inputs.board {
        reader.fault_at(
            &FIRST_STUD,
            "the traced stud must lie on the board: measure it from the board's left end",
        );
    }
    inputs
}

/// Positions from spacings, the first at zero.
fn running(spacings: &[Length]) -> Vec<Length> {
    let mut positions = vec![Length::default()];
    let mut at = Length::default();
    for spacing in spacings {
        at += *spacing;
        positions.push(at);
    }
    positions
}

/// How far off the last mark can be.
struct Growth {
    /// Steps from the first mark to the last.
    steps: u32,
    /// Measured on from mark to mark.
    chain: MarkError,
    /// Every mark from one datum.
    datum: MarkError,
}

impl Growth {
    fn new(reading: Length, marks: usize) -> Self {
        let steps = u32::try_from(marks.saturating_sub(1)).unwrap_or(u32::MAX);
        let reading = reading.get::<millimeter>();
        Self { steps, chain: even_chain_error(steps, reading), datum: datum_error(reading) }
    }
}

/// A stud's place on the board.
struct OnBoard {
    /// Counted from 1.
    stud: usize,
    offset: Length,
    /// Far enough from both ends.
    ok: bool,
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let slack = Length::new::<millimeter>(1e-6);
    let edge = inputs.edge_distance.unwrap_or_default();
    let mut marks = Vec::new();
    let mut off_board = Vec::new();
    let first = inputs.studs.first().copied().unwrap_or_default();
    for (index, position) in inputs.studs.iter().enumerate() {
        let offset = inputs.first_stud + (*position - first);
        if offset > inputs.board + slack {
            off_board.push(index + 1);
        } else {
            let ok = offset + slack >= edge && offset <= inputs.board - edge + slack;
            marks.push(OnBoard { stud: index + 1, offset, ok });
        }
    }
    let growth = inputs.reading_error.map(|error| Growth::new(error, marks.len()));

    let mut outcome = Record::new()
        .with(
            "marks",
            marks
                .iter()
                .map(|mark| {
                    Record::new()
                        .with("stud", mark.stud)
                        .with("offset_mm", mark.offset.get::<millimeter>())
                        .with("ok", mark.ok)
                })
                .collect::<Vec<_>>(),
        )
        .with("off_board", off_board.clone());
    if let Some(growth) = &growth {
        outcome = outcome
            .with("chain_error_mm", growth.chain.worst_mm)
            .with("chain_error_rss_mm", growth.chain.likely_mm)
            .with("datum_error_mm", growth.datum.worst_mm);
    }

    Ok(Report {
        answers: answers(&marks, style),
        remarks: remarks(inputs, &marks, &off_board, growth.as_ref(), style),
        tables: inputs.reading_error.map(|error| copies_table(error, style)).into_iter().collect(),
        drawings: vec![template(inputs, &marks, style)],
        marks: vec![MarkStrip {
            id: "board".into(),
            label: "board".into(),
            note: String::new(),
            alike: 1,
            length: inputs.board,
            marks: marks
                .iter()
                .map(|mark| Mark {
                    id: text!("r{}", &mark.stud),
                    label: text!("stud {}", &mark.stud),
                    at: mark.offset,
                    note: if mark.ok { String::new() } else { "too close to the end".into() },
                })
                .collect(),
        }],
        working: working(inputs, &marks, growth.as_ref(), style),
        cautions: Caution::all(CAUTIONS),
        outcome,
        ..Report::default()
    })
}

fn answers(marks: &[OnBoard], style: Style) -> Vec<Answer> {
    let mut answers = vec![Answer::new("Marks on the board", marks.len().to_string())];
    if let Some(last) = marks.last() {
        let marked = style.mark(last.offset);
        answers.push(
            Answer::new(text!("Last mark, stud {}", &last.stud), marked.text.clone())
                .note(marked.left_over_text()),
        );
    }
    answers
}

fn remarks(
    inputs: &Inputs,
    marks: &[OnBoard],
    off_board: &[usize],
    growth: Option<&Growth>,
    style: Style,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    for mark in marks.iter().filter(|mark| !mark.ok) {
        let edge = style.length(inputs.edge_distance.unwrap_or_default());
        remarks.push(Remark::warning(text!(
            "Stud {} is less than {} from the board's end: shift the board, or fix it there \
             another way.",
            &mark.stud,
            &edge
        )));
    }
    if !off_board.is_empty() {
        let numbers: Vec<String> = off_board.iter().map(usize::to_string).collect();
        remarks.push(Remark::note(text!(
            "Beyond this board: {} {}.",
            if off_board.len() == 1 { "stud" } else { "studs" },
            numbers.join(", ")
        )));
    }
    if let Some(growth) = growth {
        let small = |mm: f64| style.error(Length::new::<millimeter>(mm));
        remarks.push(Remark::note(text!("Hook the tape on the left end once and set every mark from there: each is then within \
             {}. Measured on from mark to mark, the last could be off by {} (most likely within {}).", small(growth.datum.worst_mm), small(growth.chain.worst_mm), small(growth.chain.likely_mm))));
    }
    remarks
}

/// How the error grows when each board is marked from the board before it.
fn copies_table(error: Length, style: Style) -> Table {
    let rows = [1, 2, 5, 10, 20].map(|copies| {
        let reading = error.get::<millimeter>();
        let small = |mm: f64| style.error(Length::new::<millimeter>(mm));
        let copied = copied_template_error(copies, reading);
        TableRow {
            cells: vec![
                copies.to_string(),
                small(datum_error(reading).worst_mm),
                small(copied.worst_mm),
                small(copied.likely_mm),
            ],
            chosen: false,
        }
    });
    Table {
        title: "Boards marked from one master, and each from the one before".into(),
        heads: texts(&["Board", "From the master", "From the one before: worst", "most likely"]),
        rows: rows.to_vec(),
    }
}

fn template(inputs: &Inputs, marks: &[OnBoard], style: Style) -> Drawing {
    let board = inputs.board.get::<meter>();
    // The board's width is not asked; it is drawn as a strip that can be read.
    let height = (board * 0.04).clamp(0.05, 0.12);
    let mut drawing = Drawing::new(
        "Board with its marks",
        text!("A board {} long with {} marks.", style.length(inputs.board), marks.len()),
    )
    .strip();
    let far = Point::metres(board, height);
    drawing.rectangle(Pen::Solid, Fill::Stock, Point::metres(0.0, 0.0), far);
    for mark in marks {
        let x = mark.offset.get::<meter>();
        drawing.line(Pen::Mark, &[Point::metres(x, 0.0), Point::metres(x, height)]);
        drawing.cross(Pen::Mark, Point::metres(x, height / 2.0));
        drawing.text(
            Point::metres(x, -height * 0.25),
            Anchor::Middle,
            text!("{} · {}", &mark.stud, style.mark(mark.offset).text),
        );
    }
    let (left, right) = (Point::metres(0.0, height), Point::metres(board, height));
    drawing.dimension(right, left, 2.0, style.length(inputs.board));
    drawing
}

fn working(inputs: &Inputs, marks: &[OnBoard], growth: Option<&Growth>, style: Style) -> Vec<Step> {
    let first = inputs.studs.first().copied().unwrap_or_default();
    let mut steps: Vec<Step> = marks
        .iter()
        .map(|mark| {
            let position = inputs.studs.get(mark.stud - 1).copied().unwrap_or_default();
            Step::new(
                text!("Stud {}", &mark.stud),
                "o = o₁ + (p − p₁)",
                text!(
                    "{} + ({} − {})",
                    style.mark(inputs.first_stud).text,
                    style.mark(position).text,
                    style.mark(first).text
                ),
                style.mark(mark.offset).text,
                &DATUM_OFFSET,
            )
        })
        .collect();
    if let (Some(growth), Some(error)) = (growth, inputs.reading_error) {
        let error = style.error(error);
        let small = |mm: f64| style.error(Length::new::<millimeter>(mm));
        steps.push(Step::new(
            "Chained marks, worst case",
            "e = n · t",
            text!("{} · {}", &growth.steps, &error),
            small(growth.chain.worst_mm),
            &CHAIN_ERROR,
        ));
        steps.push(Step::new(
            "Chained marks, most likely",
            "e = √n · t",
            text!("√{} · {}", &growth.steps, &error),
            small(growth.chain.likely_mm),
            &CHAIN_ERROR,
        ));
    }
    steps
}
