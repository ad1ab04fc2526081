//! One board against studs measured in place: every mark from one datum, the board's left end.

use calc_derive::{Either, Inputs, Outcome};
use uom::si::length::{meter, millimeter};

use super::Sheet;
use crate::ask::{BodyPart, Figure};
use crate::carpentry::cautions::{DUST, LOOK_BEHIND};
use crate::carpentry::setting_out::{
    CHAIN_ERROR, ChainLikely, ChainWorst, DATUM_OFFSET, FROM_DATUM, Offset,
};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::formula::{Formula, step};
use crate::lists::{Mark, MarkStrip};
use crate::outcome::Outcome;
use crate::quantity::{Length, Style};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::source::Source;
use crate::words::{Arg, Msg, Phrase, common, stud_marks as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "stud_marks",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WALLS),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[&DATUM_OFFSET, &FROM_DATUM, &CHAIN_ERROR],
    example: r#"{ "board": "12 ft", "first_stud": "5 3/8 in",
        "studs": ["412 mm", "821 mm", "1236 mm", "1640 mm", "2049 mm", "2463 mm", "2868 mm"],
        "edge_distance": "3/4 in", "reading_error": "1/32 in" }"#,
    ahead: None,
    solve: |reader| super::solved(reader, Inputs::read_checked, solve, show),
};

static CAUTIONS: &[(Phrase, Source)] = &[LOOK_BEHIND, DUST];

/// What was typed, read.
#[derive(Inputs)]
#[words(stud_marks)]
struct Inputs {
    #[ask(units("ft", "mm"), range(0.01, 15.0), usual("12 ft", "3600 mm"), figure(Figure::Along))]
    board: Length,
    #[ask(
        units("in", "mm"),
        range(0.0, 15.0),
        usual("5 3/8 in", "137 mm"),
        figure(Figure::FromEnd)
    )]
    first_stud: Length,
    #[ask(either, optional())]
    place: Place,
    #[ask(
        units("in", "mm"),
        range(0.0, 1.0),
        usual("3/4 in", "20 mm"),
        figure(Figure::FromEnd),
        convention()
    )]
    edge_distance: Option<Length>,
    #[ask(units("in", "mm"), range(0.0, 0.1), usual("1/32 in", "1 mm"), convention())]
    reading_error: Option<Length>,
}

/// Where the studs are.
#[derive(Either)]
#[words(stud_marks)]
enum Place {
    #[ask(list(1), units("in", "mm"), range(0.0, 30.0), usual("16 in", "400 mm"))]
    #[ask(from_body(BodyPart::Ribs), figure(Figure::FromFront))]
    Studs(Vec<Length>),
    #[ask(
        list(1),
        units("in", "mm"),
        range(0.001, 10.0),
        usual("16 in", "400 mm"),
        figure(Figure::Spacing)
    )]
    Spacings(Vec<Length>),
}

impl Place {
    /// Centers in order, from any one point.
    fn centers(&self) -> Vec<Length> {
        match self {
            Self::Studs(centers) => centers.clone(),
            Self::Spacings(spacings) => {
                let mut at = Length::default();
                let beyond = spacings.iter().map(|spacing| {
                    at += *spacing;
                    at
                });
                std::iter::once(Length::default()).chain(beyond).collect()
            }
        }
    }
}

impl Inputs {
    fn read_checked(reader: &Reader<'_>) -> Self {
        let inputs = Self::read(reader);
        for (index, pair) in inputs.place.centers().windows(2).enumerate() {
            if pair[1] <= pair[0] {
                reader.tell_of(Place::STUDS, index + 1, words::OUT_OF_ORDER);
            }
        }
        if inputs.first_stud > inputs.board {
            reader.tell(Self::FIRST_STUD, words::OFF_THE_BOARD);
        }
        inputs
    }
}

/// Where the board meets the studs.
#[derive(Outcome)]
struct Marks {
    marks: Vec<OnBoard>,
    off_board: Vec<usize>,
    /// Of the last mark, each measured on from the one before.
    chain_error: Option<ChainWorst>,
    chain_error_rss: Option<ChainLikely>,
    /// Of each mark, all from one datum.
    datum_error: Option<Length>,
}

/// A stud's place on the board.
#[derive(Outcome)]
struct OnBoard {
    /// Counted from 1.
    stud: usize,
    offset: Offset,
    /// Far enough from both ends.
    ok: bool,
}

fn solve(inputs: &Inputs) -> Marks {
    let slack = Length::new::<millimeter>(1e-6);
    let edge = inputs.edge_distance.unwrap_or_default();
    let centers = inputs.place.centers();
    let first = centers.first().copied().unwrap_or_default();
    let (mut marks, mut off_board) = (Vec::new(), Vec::new());
    for (stud, center) in (1..).zip(centers) {
        let offset = Offset { traced: inputs.first_stud, center, first };
        let at = offset.value();
        if at > inputs.board + slack {
            off_board.push(stud);
        } else {
            marks.push(OnBoard {
                stud,
                offset,
                ok: at + slack >= edge && at <= inputs.board - edge + slack,
            });
        }
    }
    let steps = u32::try_from(marks.len().saturating_sub(1)).unwrap_or(u32::MAX);
    Marks {
        marks,
        off_board,
        chain_error: inputs.reading_error.map(|reading| ChainWorst { steps, reading }),
        chain_error_rss: inputs.reading_error.map(|reading| ChainLikely { steps, reading }),
        datum_error: inputs.reading_error,
    }
}

fn show(inputs: &Inputs, found: &Marks, style: Style) -> Report {
    Report {
        answers: answers(found, style),
        remarks: remarks(inputs, found, style),
        tables: inputs.reading_error.map(|reading| copies(reading, style)).into_iter().collect(),
        drawings: vec![template(inputs, found, style)],
        marks: vec![strip(inputs, found, style)],
        working: working(found, style.exact()),
        cautions: Caution::all(CAUTIONS),
        outcome: found.record(),
        ..Report::default()
    }
}

fn answers(found: &Marks, style: Style) -> Vec<Answer> {
    let at = |label: Msg, mark: &OnBoard| {
        let marked = style.mark(mark.offset.value());
        let note = style.left_over(&marked);
        Answer::new(style.say(label), marked.text).note(note)
    };
    let mut answers = Vec::new();
    if let [first, rest @ ..] = found.marks.as_slice() {
        answers.push(at(words::FirstMark { stud: first.stud }.into(), first));
        answers
            .extend(rest.last().map(|last| at(words::LastMark { stud: last.stud }.into(), last)));
    }
    answers.push(Answer::new(style.say(words::MARKS), found.marks.len().to_string()));
    answers
}

fn remarks(inputs: &Inputs, found: &Marks, style: Style) -> Vec<Remark> {
    let edge = inputs.edge_distance.unwrap_or_default();
    let close = found.marks.iter().filter(|mark| !mark.ok);
    let mut remarks: Vec<Remark> = close
        .map(|mark| Remark::warning(style.say(words::TooClose { stud: mark.stud, edge })))
        .collect();
    if !found.off_board.is_empty() {
        let studs = Arg::each(found.off_board.iter().copied());
        remarks
            .push(Remark::note(style.say(words::Beyond { count: found.off_board.len(), studs })));
    }
    if let (Some(each), Some(worst), Some(likely)) =
        (found.datum_error, &found.chain_error, &found.chain_error_rss)
    {
        let [each, worst, likely] = [each, worst.value(), likely.value()].map(Arg::error);
        remarks.push(Remark::note(style.say(words::OneDatum { each, worst, likely })));
    }
    remarks
}

/// How the error grows when each board is marked from the board before it.
fn copies(reading: Length, style: Style) -> Table {
    let rows = [1, 2, 5, 10, 20].map(|steps| {
        let (worst, likely) = (ChainWorst { steps, reading }, ChainLikely { steps, reading });
        let errors = [reading, worst.value(), likely.value()].map(|error| style.error(error));
        TableRow {
            cells: std::iter::once(steps.to_string()).chain(errors).collect(),
            chosen: false,
        }
    });
    Table {
        title: style.say(words::COPIES),
        heads: [
            words::COPIES_BOARD,
            words::COPIES_MASTER,
            words::COPIES_WORST,
            words::COPIES_LIKELY,
        ]
        .map(|head| style.say(head))
        .into(),
        rows: rows.into(),
    }
}

fn strip(inputs: &Inputs, found: &Marks, style: Style) -> MarkStrip {
    let marks = found.marks.iter().map(|mark| Mark {
        id: format!("r{}", mark.stud),
        label: style.say(words::Stud { stud: mark.stud }),
        at: mark.offset.value(),
        note: if mark.ok { String::new() } else { style.say(words::TOO_CLOSE_MARK) },
    });
    MarkStrip {
        id: "board".into(),
        label: style.say(common::BOARD),
        alike: 1,
        length: inputs.board,
        marks: marks.collect(),
        ..MarkStrip::default()
    }
}

fn template(inputs: &Inputs, found: &Marks, style: Style) -> Drawing {
    let (board, length) = (inputs.board.get::<meter>(), inputs.board);
    // The board's width is not asked; it is drawn as a strip that can be read.
    let height = (board * 0.04).clamp(0.05, 0.12);
    let words = style.say(words::DrawingWords { length, marks: found.marks.len() });
    let mut drawing = Drawing::new(style.say(words::DRAWING), words).strip();
    drawing.rectangle(
        Pen::Solid,
        Fill::Stock,
        Point::metres(0.0, 0.0),
        Point::metres(board, height),
    );
    for mark in &found.marks {
        let x = mark.offset.value().get::<meter>();
        drawing.line(Pen::Mark, &[Point::metres(x, 0.0), Point::metres(x, height)]);
        drawing.cross(Pen::Mark, Point::metres(x, height / 2.0));
        let name = format!("{} · {}", mark.stud, style.mark(mark.offset.value()).text);
        drawing.text(Point::metres(x, -height * 0.25), Anchor::Middle, name);
    }
    let (left, right) = (Point::metres(0.0, height), Point::metres(board, height));
    drawing.dimension(right, left, 2.0, style.length(length));
    drawing
}

fn working(found: &Marks, style: Style) -> Vec<Step> {
    let studs = found
        .marks
        .iter()
        .map(|mark| step(words::StepStud { stud: mark.stud }, &mark.offset, style));
    let worst = found.chain_error.iter().map(|error| step(words::STEP_WORST, error, style));
    let likely = found.chain_error_rss.iter().map(|error| step(words::STEP_LIKELY, error, style));
    studs.chain(worst).chain(likely).collect()
}
