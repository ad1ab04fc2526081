//! Boards over ribs: courses and rips, joints on ribs, marks and notches of every board, what to cut and to buy.

mod asks;
mod choices;
mod drawing;
mod movement;
mod nailers;
mod screw;
mod template;
mod words;
mod working;

use crate::sorting::sort_by;
use crate::text::text;
use crate::words::Phrase;
use uom::si::f64::{Mass, Volume};
use uom::si::length::millimeter;
use uom::si::volume::liter;

use self::asks::{ASKS, Inputs, read};
use self::movement::Movement;
use super::cut_plan::planned::{Planned, Wanted};
use super::cut_plan::stock;
use super::{Sheet, solve};
use crate::carpentry::boards::{
    ACROSS, BoardLayout, BoardPiece, BoardTask, BoardsError, ENDS, HALF_BEARING, LEAST_STRIP,
    MARKS, NAILER, SupportMark, TWO_SUPPORTS, USUAL_EDGE, heights_mm, lay_out,
};
use crate::carpentry::courses::{BALANCED, CoursesError, LEAST_RIP, SHOWN_TAPER};
use crate::carpentry::cut_stock::{KERF_RULE, PATTERNS, Stock};
use crate::carpentry::joints::{JointError, LEAST_PIECE, ON_SUPPORTS, STRIP_STAGGER, TOGETHER};
use crate::carpentry::margin::{CULL, MARGIN, spare_boards};
use crate::carpentry::moisture::CHANGE;
use crate::carpentry::setting_out::FROM_DATUM;
use crate::carpentry::stations::BETWEEN;
use crate::coating::gap::{VOLUMES, hole};
use crate::fastening::window::{LEAST_THREAD, NO_FARTHER};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId, Mark, MarkStrip};
use crate::mass::densities::{MASS_OF_VOLUME, WOOD};
use crate::outcome::Record;
use crate::quantity::{Length, Style};
use crate::report::Report;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "boards",
    title: Phrase::Written("Boards"),
    trade: Phrase::Written("Ceiling and walls"),
    purpose: Phrase::Written(
        "Boards, planks or panelling over ribs: rips, joints, marks and notches of every board.",
    ),
    asks: ASKS,
    sources: &[
        &BALANCED,
        &LEAST_RIP,
        &ON_SUPPORTS,
        &STRIP_STAGGER,
        &LEAST_PIECE,
        &TOGETHER,
        &MARKS,
        &ENDS,
        &TWO_SUPPORTS,
        &NAILER,
        &HALF_BEARING,
        &USUAL_EDGE,
        &LEAST_STRIP,
        &FROM_DATUM,
        &SHOWN_TAPER,
        &BETWEEN,
        &ACROSS,
        &VOLUMES,
        &NO_FARTHER,
        &LEAST_THREAD,
        &CULL,
        &MARGIN,
        &CHANGE,
        &PATTERNS,
        &KERF_RULE,
        &MASS_OF_VOLUME,
        &WOOD,
    ],
    example: r#"{ "coverage": "5 1/8 in", "full_width": "5 3/8 in",
        "material": "1x6 tongue-and-groove board",
        "stock": [
            { "length": "8 ft", "price": 11.5 },
            { "length": "10 ft", "price": 14.4 },
            { "length": "12 ft", "price": 17.9 } ],
        "kerf": "1/8 in", "end_gap": "1/8 in", "side_gap": "1/4 in", "start": "balanced",
        "least_rip": "2 in", "joint_stagger": "16 in", "joint_price": 2, "edge_distance": "3/8 in",
        "shown_ribs": [1, 13], "opening_clearance": "1/8 in", "flange": "1 in",
        "joint_gap": "1/16 in", "laid_percent": "10", "screw": "trim-head #8 x 1 1/4 in", "strip_thickness": "3/4 in", "behind": "1 mm",
        "species": "pine, ponderosa", "thickness": "3/4 in", "density": "white pine" }"#,
    solve: |reader| solve(reader, read, report),
};

/// Work for choosing joints and stock, in the cut planner's steps.
const EFFORT: u64 = 24_000_000;

/// Layout and cut plan.
struct Worked {
    layout: BoardLayout,
    planned: Planned,
    holes: usize,
    filled_holes: usize,
    /// What the filled holes take.
    filler: Volume,
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    inputs.screw.check(style).map_err(|fault| vec![fault])?;
    let worked = work_out(inputs, style)?;
    let mut drawings = vec![drawing::plan(inputs, &worked, style)];
    drawings.extend(drawing::templates(inputs, &worked, style));
    drawings.extend(worked.planned.drawings(style));
    let kinds = worked.layout.kinds.iter().enumerate();
    let marks = kinds
        .map(|(index, kind)| {
            let piece = &worked.layout.pieces[kind.first];
            mark_strip(inputs, piece, words::kind_strip(&worked, index, style), style)
        })
        .collect();
    Ok(Report {
        answers: words::answers(inputs, &worked, style),
        remarks: words::remarks(inputs, &worked, style),
        tables: words::tables(inputs, &worked, style),
        checks: nailers::checks(inputs, &worked, style),
        drawings,
        templates: template::templates(inputs, &worked, style),
        marks,
        working: working::working(inputs, &worked, style),
        cautions: words::cautions(),
        buy: buy(inputs, &worked, style),
        centre: Some(mm(inputs.task.run_mm / 2.0)),
        cut: worked.planned.cut(style),
        cutting: worked.planned.cutting(),
        outcome: outcome(inputs, &worked),
        ..Report::default()
    })
}

fn work_out(inputs: &Inputs, style: Style) -> Result<Worked, Vec<Fault>> {
    let task = BoardTask { effort: EFFORT, ..inputs.task.clone() };
    let layout = lay_out(&task).map_err(|error| vec![fault(&error, inputs, style)])?;
    let wanted: Vec<Wanted> = layout
        .kinds
        .iter()
        .enumerate()
        .map(|(index, kind)| Wanted {
            id: piece_id(&layout.pieces[kind.first]),
            label: text!("board {}", letters(index)),
            length_mm: layout.pieces[kind.first].length_mm,
            count: kind.count,
        })
        .collect();
    let planned = Planned::follow(wanted, &inputs.shelf, &layout.joining.cut_plan)
        .map_err(|error| vec![stock::fault(&error, |_| "stock".into(), style)])?;
    let filled_holes = filled_holes(inputs, &layout);
    let one =
        hole(inputs.fill).map_err(|error| vec![Fault::new("fill_depth", error.to_string())])?;
    let holes = layout.holes(inputs.task.screws_across);
    Ok(Worked { layout, planned, holes, filled_holes, filler: one * filled_holes as f64 })
}

fn fault(error: &BoardsError, inputs: &Inputs, style: Style) -> Fault {
    let length = |value: f64| style.length(mm(value));
    let small = |value: f64| style.small(mm(value));
    match error {
        BoardsError::Loose { .. } => words::loose(error, inputs, style),
        BoardsError::Gap { end: true } => Fault::new("end_gap", error.to_string()),
        BoardsError::Gap { end: false } => Fault::new("side_gap", error.to_string()),
        BoardsError::SupportWidth => Fault::new("support_width", error.to_string()),
        BoardsError::Courses(CoursesError::Width { .. }) => {
            Fault::new("coverage", "this coverage gives no courses over the field, or too many")
        }
        BoardsError::Courses(CoursesError::RipTooNarrow { rip_mm, least_mm }) => Fault::new(
            "least_rip",
            text!(
                "a course would be ripped to {}, less than the least rip of {}; take {}a smaller least rip",
                length(*rip_mm),
                length(*least_mm),
                if inputs.balanced() { "" } else { "a balanced start, or " }
            ),
        ),
        BoardsError::Joints(JointError::EdgeDistance { edge_distance_mm, most_mm }) => Fault::new(
            "edge_distance",
            text!(
                "at a joint, marks {} in from the board's end miss the support; at most {} are on it: take wider supports or a smaller edge distance",
                small(*edge_distance_mm),
                small(*most_mm)
            ),
        ),
        BoardsError::Joints(JointError::Unreachable { longest_mm }) => Fault::new(
            "stock",
            text!(
                "boards of at most {} do not reach from rib to rib over the run; add longer stock",
                length(*longest_mm)
            ),
        ),
        BoardsError::Joints(JointError::Stagger { stagger_mm }) => Fault::new(
            "joint_stagger",
            text!(
                "no joints on these ribs stand {} apart in neighbouring courses; take a smaller stagger or longer stock",
                length(*stagger_mm)
            ),
        ),
        BoardsError::Joints(JointError::ShortPiece { least_mm }) => Fault::new(
            "stock",
            text!(
                "every joint on these ribs would leave a piece shorter than {}; take other stock lengths",
                length(*least_mm)
            ),
        ),
        BoardsError::Joints(JointError::Number) => Fault::new("stock", error.to_string()),
        BoardsError::Joints(JointError::Cut(error)) => {
            let mut fault = stock::fault(error, |_| "stock".into(), style);
            if fault.field == "pieces" {
                fault.field = "coverage".into();
            }
            fault
        }
    }
}

/// `A`, `B`, …, `Z`, `AA`, …
pub(super) fn letters(index: usize) -> String {
    let mut text = String::new();
    let mut rest = index;
    loop {
        let letter = u8::try_from(rest % 26).unwrap_or(0);
        text.insert(0, char::from(b'A' + letter));
        match (rest / 26).checked_sub(1) {
            Some(next) => rest = next,
            None => return text,
        }
    }
}

fn finish(inputs: &Inputs, mark: &SupportMark) -> &'static str {
    let shown = mark.support.is_some_and(|support| inputs.shown_ribs.contains(&(support + 1)));
    if shown { "shown" } else { "filled" }
}

fn outcome(inputs: &Inputs, worked: &Worked) -> Record {
    let layout = &worked.layout;
    // Those of the marks on ribs; the nailers' are counted on their own, and all of them are filled.
    let nailer_holes = layout.nailer_holes(inputs.task.screws_across);
    let pieces: Vec<Record> =
        layout.pieces.iter().map(|piece| piece_record(inputs, piece)).collect();
    let layouts = layout.joining.choices.iter().map(|choice| {
        Record::new()
            .with("joints", choice.joints)
            .with("cost", choice.cost)
            .with("bound", choice.bound)
            .with("proved", choice.proved)
    });
    Record::new()
        .with("courses", layout.courses.count)
        .with("first_rip_mm", layout.courses.first_mm)
        .with("last_rip_mm", layout.courses.last_mm)
        .with("course_edges_mm", layout.edges_mm.clone())
        .with("pieces", pieces)
        .with("nailers", nailers::records(worked))
        .with("holes", worked.holes - nailer_holes)
        .with("filled_holes", worked.filled_holes - nailer_holes)
        .with("nailer_holes", nailer_holes)
        .with("joint_in_opening", layout.joint_in_opening)
        .with("filler_l", worked.filler.get::<liter>())
        .maybe("last_rip_at", last_rip_at(worked))
        .with("cut_plan", worked.planned.record())
        .maybe("screw", inputs.screw.record())
        .maybe("spare", spare(inputs, worked).map(|spare| spare.record()))
        .maybe("board_grows_mm", inputs.movement.as_ref().map(Movement::grows_mm))
        .maybe("board_shrinks_mm", inputs.movement.as_ref().map(Movement::shrinks_mm))
        .with("layouts", layouts.collect::<Vec<_>>())
        .with("layout_bound", layout.joining.bound)
        .with("layout_proved", layout.joining.proved)
}

fn filled_holes(inputs: &Inputs, layout: &BoardLayout) -> usize {
    let holes = |piece: &BoardPiece| -> usize {
        let filled = piece.marks.iter().filter(|mark| finish(inputs, mark) == "filled");
        filled.map(|mark| heights_mm(mark, inputs.task.screws_across).len()).sum()
    };
    layout.pieces.iter().map(holes).sum()
}

/// Widths of the last course along the run, where it tapers.
fn last_rip_at(worked: &Worked) -> Option<Vec<Record>> {
    let widths = last_rips(worked);
    let record =
        |(x_mm, rip_mm): &(f64, f64)| Record::new().with("x_mm", *x_mm).with("rip_mm", *rip_mm);
    (!widths.is_empty()).then(|| widths.iter().map(record).collect())
}

/// The last course from front to rear: place and width; none where it is equally wide. [mm]
fn last_rips(worked: &Worked) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = Vec::new();
    for piece in &worked.layout.pieces {
        for station in &piece.widths_mm {
            let x_mm = piece.from_mm + station.x_mm;
            // Where two pieces meet both have the width of the joint.
            if found.last().is_none_or(|(before, _)| x_mm - before > 1e-3) {
                found.push((x_mm, station.width_mm));
            }
        }
    }
    found
}

fn piece_record(inputs: &Inputs, piece: &BoardPiece) -> Record {
    let record = |mark: &SupportMark| {
        let across = inputs.task.screws_across;
        Record::new()
            .maybe("rib", mark.support.map(|support| support + 1))
            .with("offset_mm", mark.offset_mm)
            .with("finish", finish(inputs, mark))
            .maybe("across_mm", (across > 1 || mark.beside).then(|| heights_mm(mark, across)))
    };
    let marks = piece.marks.iter().filter(|mark| mark.support.is_some()).map(record);
    let nailer_mark = piece.marks.iter().find(|mark| mark.support.is_none()).map(record);
    let notches = piece.notches.iter().map(|notch| {
        Record::new()
            .with("opening", inputs.opening_name(notch.opening))
            .with("from_mm", notch.from_mm)
            .with("to_mm", notch.to_mm)
            .with("edge", notch.edge.name())
            .with("depth_mm", notch.depth_mm)
            .with("inset_mm", notch.inset_mm)
    });
    Record::new()
        .with("course", piece.course)
        .with("piece", piece.piece)
        .with("from_mm", piece.from_mm)
        .with("to_mm", piece.to_mm)
        .with("length_mm", piece.length_mm)
        .with("marks", marks.collect::<Vec<_>>())
        .maybe("nailer_mark", nailer_mark)
        .with("notches", notches.collect::<Vec<_>>())
        .with("y_from_mm", piece.across_mm.0)
        .with("y_to_mm", piece.across_mm.1)
        .with("board", letters(piece.kind))
        .maybe("left_end_width_mm", piece.widths_mm.first().map(|station| station.width_mm))
        .maybe("right_end_width_mm", piece.widths_mm.last().map(|station| station.width_mm))
}

/// A board by its place in the layout, as in the outcome: course and piece.
pub(super) fn piece_id(piece: &BoardPiece) -> String {
    text!("b{}.{}", &piece.course, &piece.piece)
}

/// The strip with the marks of one kind of board, and the lines of its notches among them.
fn mark_strip(inputs: &Inputs, piece: &BoardPiece, strip: MarkStrip, style: Style) -> MarkStrip {
    let mut marks: Vec<Mark> = piece
        .marks
        .iter()
        .map(|mark| {
            let mut note = finish(inputs, mark).to_owned();
            if mark.joint {
                note.push_str(", joint");
            }
            match *heights_mm(mark, inputs.task.screws_across) {
                [low, high] => {
                    note.push_str(&words::across_words(piece, mark, (low, high), style));
                }
                [at] if mark.beside => note.push_str(&text!(
                    ", {} from the right edge, beside the cut-out",
                    style.mark(mm(at)).text
                )),
                _ => {}
            }
            let (id, label) = match mark.support.map(|support| support + 1) {
                Some(rib) => (text!("r{}", &rib), text!("rib {}", &rib)),
                None => ("nailer".to_owned(), "nailer".to_owned()),
            };
            Mark { id, label, at: mm(mark.offset_mm), note }
        })
        .collect();
    for notch in &piece.notches {
        let name = inputs.opening_name(notch.opening);
        let note = words::notch_words(notch, style);
        let key = inputs.opening_keys.get(notch.opening).map_or("", String::as_str);
        for (end, at) in [("from", notch.from_mm), ("to", notch.to_mm)] {
            let label = text!("cut out for {}, {}", &name, &end);
            let id = text!("n{}.{}", key, &end);
            marks.push(Mark { id, label, at: mm(at), note: note.clone() });
        }
    }
    // Where the ripped edge of a last course changes its slant, and how wide it is there.
    let inside = piece.widths_mm.iter();
    for station in inside.filter(|one| one.x_mm > 1e-3 && one.x_mm < piece.length_mm - 1e-3) {
        let note = text!("{} wide here", style.mark(mm(station.width_mm)).text);
        let id = "bend".to_owned();
        marks.push(Mark { id, label: "rip bends".to_owned(), at: mm(station.x_mm), note });
    }
    sort_by(&mut marks, |a, b| a.at.value.total_cmp(&b.at.value));
    MarkStrip { length: mm(piece.length_mm), marks, ..strip }
}

fn buy(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let mut lines = worked.planned.buy(style);
    if let Some(spare) = spare(inputs, worked) {
        let count = f64::from(spare.count);
        let id = LineId::own(text!("spare/{}", LineId::mm(spare.stock.length_mm)));
        let item = text!("{}, spare", &inputs.shelf.material);
        let line = BuyLine::pieces(id, item, style.length(mm(spare.stock.length_mm)), count)
            .cost(spare.stock.price.map(|price| price * count));
        // A spare takes the place of a board that is left out, or stays behind: it adds nothing to the rig.
        lines.push(line.mass(Some(Mass::default())));
    }
    lines.extend(nailers::buy(inputs, worked, style));
    if worked.holes > 0 {
        lines.push(inputs.screw.line(worked.holes, style));
    }
    if worked.filled_holes > 0 && worked.filler > Volume::default() {
        let (needed, unit) = style.poured(worked.filler);
        let id = LineId::shared("filler/wood");
        lines.push(BuyLine::amount(id, "wood filler", "for sunk screws", needed, unit));
    }
    lines
}

/// Boards beside those of the cut plan.
struct Spare {
    count: u32,
    /// The longest that is bought: it can take the place of any other.
    stock: Stock,
}

impl Spare {
    fn record(&self) -> Record {
        Record::new().with("count", self.count).with("length_mm", self.stock.length_mm)
    }
}

/// The spare boards. Source: [`CULL`].
fn spare(inputs: &Inputs, worked: &Worked) -> Option<Spare> {
    let bought = &worked.planned.plan.bought;
    let count = spare_boards(bought.iter().sum(), inputs.cull_percent);
    let some = inputs.shelf.stock.iter().zip(bought).filter(|(_, count)| **count > 0);
    let longest = some.max_by(|a, b| a.0.length_mm.total_cmp(&b.0.length_mm));
    longest.filter(|_| count > 0).map(|(stock, _)| Spare { count, stock: *stock })
}

#[cfg(test)]
mod tests {
    use super::letters;

    #[test]
    fn boards_are_lettered_past_z() {
        let names: Vec<String> = [0, 25, 26, 27, 51, 52, 701, 702].map(letters).to_vec();
        assert_eq!(names, ["A", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA"]);
    }
}
