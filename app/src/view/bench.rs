//! At the bench: one figure at a time, to be read at arm's length, and one button that ticks it and goes on.

use calc::project::{Evaluation, Project};
use calc::quantity::Style;
use calc::report::{Figure, Task};
use calc::words::{Msg, app_page as said};
use leptos::ev::{KeyboardEvent, MouseEvent, PointerEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::aloud::Aloud;
use super::awake::Awake;
use super::checks::list_name;
use super::html::{Html, asked, shown};
use super::marks::{Board, MARKS, board_turned, boards};
use super::tape::push_tape;
use crate::desk::{Desk, tick, ticked};
use crate::route::{Part, Route};
use crate::words::text;

/// Where one is: which piece, and which of its figures.
type At = (usize, usize);

/// Whether there is something to do at the bench; of all sheets where none is named.
pub fn has_work(all: &Evaluation, sheet: &str) -> bool {
    !pieces(all, sheet).is_empty()
}

/// The run through all pieces of a sheet; of all sheets where none is named.
pub fn bench_page(desk: Desk, sheet: &str) -> AnyView {
    let sheet = StoredValue::new(sheet.to_owned());
    let at = RwSignal::new(None::<At>);
    // What was marked last: undo leads back to it.
    let last = StoredValue::new(None::<At>);
    // Where one is: where one went, else the first that is not done yet.
    let here = Memo::new(move |_| {
        desk.evaluation.with(|all| {
            desk.project.with(|project| {
                let run = run_of(all, sheet);
                at.get().filter(|at| run.has(*at)).or_else(|| run.open_after(project, None))
            })
        })
    });
    let written = move |write: fn(&mut Html, &Project, &Run<'_>, Option<At>)| {
        move |html: &mut Html| {
            desk.evaluation.with(|all| {
                desk.project.with(|project| write(html, project, &run_of(all, sheet), here.get()));
            });
        }
    };
    let head = shown("bench-name", written(write_head));
    let figure = shown("bench", written(write_figure));
    let place = shown("bench-left", written(write_place));
    let aloud = Aloud::new(Memo::new(move |_| {
        desk.evaluation.with(|all| {
            desk.project.with(|project| spoken(project, &run_of(all, sheet), here.get()))
        })
    }));
    let go = move |what: &str| {
        let all = desk.evaluation.get_untracked();
        let run = run_of(&all, sheet);
        let Some(now) = here.get_untracked() else { return };
        let step = |to: Option<At>| at.set(to.or(Some(now)));
        match what {
            "marked" => {
                let open = desk.project.with_untracked(|project| run.is_open(project, now));
                if open {
                    desk.change(|project| run.mark(project, &all, now));
                    last.set_value(Some(now));
                }
                at.set(desk.project.with_untracked(|project| run.open_after(project, Some(now))));
            }
            "back" => step(run.beside(now, false)),
            "on" => step(run.beside(now, true)),
            "piece-back" => step(run.piece_beside(now, false)),
            "piece-on" => step(run.piece_beside(now, true)),
            _ => {}
        }
    };
    let act = move |what: &str| match what {
        // Also where nothing is left to do.
        "undo" => {
            desk.undo();
            if let Some(before) = last.try_update_value(Option::take).flatten() {
                at.set(Some(before));
            }
        }
        "aloud" => aloud.turn(),
        _ => go(what),
    };
    let tapped = move |event: MouseEvent| {
        if let Some((what, _)) = asked(&event) {
            act(&what);
        }
    };
    let keys = window_event_listener(leptos::ev::keydown, move |event: KeyboardEvent| {
        if event.alt_key() || event.ctrl_key() || event.meta_key() {
            return;
        }
        match event.key().as_str() {
            "ArrowLeft" => go("piece-back"),
            "ArrowRight" => go("piece-on"),
            _ => {}
        }
    });
    // Where a finger or a mouse came down beside the buttons.
    let pressed = StoredValue::new(None::<(i32, i32)>);
    let down = move |event: PointerEvent| {
        let target = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        let free =
            target.is_some_and(|target| matches!(target.closest("button, a, summary"), Ok(None)));
        pressed.set_value(free.then(|| (event.client_x(), event.client_y())));
    };
    let up = move |event: PointerEvent| {
        let Some(from) = pressed.try_update_value(Option::take).flatten() else { return };
        match swiped((event.client_x() - from.0, event.client_y() - from.1)) {
            Some(true) => go("piece-on"),
            Some(false) => go("piece-back"),
            None => {}
        }
    };
    let awake = Awake::begin();
    on_cleanup(move || {
        keys.remove();
        drop(awake);
    });
    let back = move || {
        let id = desk.project.with(|project| project.id().to_owned());
        let back = sheet.with_value(|sheet| match sheet.as_str() {
            "" => Route::Part(id, Part::Marks),
            sheet => Route::Sheet(id, sheet.to_owned()),
        });
        back.hash()
    };
    let over = move || here.get().is_none();
    let done = move || {
        let board = here.get().is_none_or(|at| {
            desk.evaluation
                .with(|all| matches!(run_of(all, sheet).0.get(at.0), Some(Piece::Board(_))))
        });
        text(if board { said::BENCH_MARKED } else { said::BENCH_TASK_DONE })
    };
    view! {
        <div class="bench-page" class:bench-over=over on:click=tapped on:pointerdown=down on:pointerup=up>
            <header class="bench-top">
                <a class="button" href=back aria-label=text(said::BENCH_LEAVE)>"✕"</a>
                {head}
            </header>
            {figure}
            <div class="bench-pieces">
                <button data-do="piece-back" aria-label=text(said::BENCH_PIECE_BACK)>"‹"</button>
                {place}
                <button data-do="piece-on" aria-label=text(said::BENCH_PIECE_ON)>"›"</button>
            </div>
            {aloud.button()}
            <div class="bench-keys">
                <button data-do="back" aria-label=text(said::BENCH_BACK)>"↑"</button>
                <button class="main" data-do="marked">{done}</button>
                <button data-do="undo" aria-label=text(said::BENCH_UNDO)>"↶"</button>
            </div>
        </div>
    }
    .into_any()
}

fn run_of(all: &Evaluation, sheet: StoredValue<String>) -> Run<'_> {
    Run(sheet.with_value(|sheet| pieces(all, sheet)))
}

/// So far a finger goes sideways to turn to another piece. [CSS px]
const SWIPE: i32 = 60;

/// Whether a way is a swipe on to the next piece, or back; none where it is a tap or goes up or down.
fn swiped((x, y): (i32, i32)) -> Option<bool> {
    (x.abs() >= SWIPE && x.abs() > 2 * y.abs()).then_some(x < 0)
}

/// A piece that is worked on.
enum Piece<'a> {
    /// To be marked.
    Board(Board<'a>),
    /// What else is done with it, of the sheet with this id.
    Tasks(&'a str, &'a [Task]),
}

/// All pieces of a sheet, or of all sheets where none is named: what is marked first, then what else is to be done.
fn pieces<'a>(all: &'a Evaluation, of: &str) -> Vec<Piece<'a>> {
    let mut boards = boards(all).into_iter().peekable();
    let mut pieces = Vec::new();
    for (sheet, result) in &all.sheets {
        let wanted = of.is_empty() || sheet == of;
        while let Some(board) = boards.next_if(|board| board.sheet == sheet) {
            if wanted && !board.strip.marks.is_empty() {
                pieces.push(Piece::Board(board));
            }
        }
        if let (true, Ok(report)) = (wanted, result.as_ref()) {
            let each = report.tasks.chunk_by(|one, next| one.piece == next.piece);
            pieces.extend(each.map(|tasks| Piece::Tasks(sheet, tasks)));
        }
    }
    pieces
}

impl Piece<'_> {
    fn sheet(&self) -> &str {
        match self {
            Self::Board(board) => board.sheet,
            Self::Tasks(sheet, _) => sheet,
        }
    }

    fn name(&self) -> &str {
        match self {
            Self::Board(board) => board.name(),
            Self::Tasks(_, tasks) => tasks.first().map_or("", |task| &task.piece),
        }
    }

    /// How many figures it has.
    fn len(&self) -> usize {
        match self {
            Self::Board(board) => board.strip.marks.len(),
            Self::Tasks(_, tasks) => tasks.len(),
        }
    }

    fn is_open(&self, project: &Project, number: usize) -> bool {
        let done = match self {
            Self::Board(board) => board
                .strip
                .marks
                .get(number)
                .map(|mark| ticked(project, MARKS, &board.mark_key(mark)).is_some()),
            Self::Tasks(sheet, tasks) => tasks
                .get(number)
                .map(|task| ticked(project, &list_name(sheet), &task.key).is_some()),
        };
        done == Some(false)
    }

    /// How many are left to do, those alike counted each.
    fn left(&self, project: &Project) -> usize {
        match self {
            Self::Board(board) => board.strip.alike - board.done(project),
            Self::Tasks(..) => {
                usize::from((0..self.len()).any(|number| self.is_open(project, number)))
            }
        }
    }
}

/// The pieces that are gone through.
struct Run<'a>(Vec<Piece<'a>>);

impl Run<'_> {
    fn all(&self) -> impl DoubleEndedIterator<Item = At> + '_ {
        let pieces = self.0.iter().enumerate();
        pieces.flat_map(|(at, piece)| (0..piece.len()).map(move |number| (at, number)))
    }

    fn has(&self, at: At) -> bool {
        self.0.get(at.0).is_some_and(|piece| at.1 < piece.len())
    }

    fn is_open(&self, project: &Project, at: At) -> bool {
        self.0.get(at.0).is_some_and(|piece| piece.is_open(project, at.1))
    }

    /// The next figure that is not ticked, from the start again after the last.
    fn open_after(&self, project: &Project, at: Option<At>) -> Option<At> {
        let mut after = self.all().filter(|one| at.is_none_or(|at| *one > at));
        let next = after.find(|one| self.is_open(project, *one));
        next.or_else(|| self.all().find(|one| self.is_open(project, *one)))
    }

    fn beside(&self, at: At, forward: bool) -> Option<At> {
        if forward {
            self.all().find(|one| *one > at)
        } else {
            self.all().rev().find(|one| *one < at)
        }
    }

    /// The start of the piece beside; where there is only one piece, the figure beside.
    fn piece_beside(&self, at: At, forward: bool) -> Option<At> {
        if self.0.len() < 2 {
            return self.beside(at, forward);
        }
        let piece = if forward { at.0 + 1 } else { at.0.checked_sub(1)? };
        self.has((piece, 0)).then_some((piece, 0))
    }

    fn left(&self, project: &Project) -> usize {
        self.0.iter().map(|piece| piece.left(project)).sum()
    }

    /// Ticks a figure; with its last mark a board is done, and of several alike the next one begins.
    fn mark(&self, project: &mut Project, all: &Evaluation, at: At) {
        match self.0.get(at.0) {
            Some(Piece::Board(board)) => {
                let Some(mark) = board.strip.marks.get(at.1) else { return };
                tick(project, MARKS, &board.mark_key(mark), Some(1.0));
                let whole = |mark| ticked(project, MARKS, &board.mark_key(mark)).is_some();
                if board.strip.marks.iter().all(whole) {
                    board_turned(project, all, &board.key, true);
                }
            }
            Some(Piece::Tasks(sheet, tasks)) => {
                if let Some(task) = tasks.get(at.1) {
                    tick(project, &list_name(sheet), &task.key, Some(1.0));
                }
            }
            None => {}
        }
    }
}

/// What the figure is of: the piece's name, and the sheet that it comes from.
fn write_head(html: &mut Html, project: &Project, run: &Run<'_>, at: Option<At>) {
    let Some(piece) = at.and_then(|at| run.0.get(at.0)) else {
        let words = if run.0.is_empty() { said::NO_MARKS } else { said::BENCH_OVER };
        html.raw("<h1 tabindex=\"-1\">");
        html.text(text(words));
        html.raw("</h1>");
        return;
    };
    html.raw("<h1 tabindex=\"-1\">");
    html.text(piece.name());
    html.raw("</h1>");
    let sheet = project.sheet(piece.sheet());
    let sheet = sheet.map_or_else(String::new, |sheet| super::title_of(&sheet));
    let of = match piece {
        Piece::Board(board) => {
            let length = project.style().mark(board.strip.length).text;
            project.style().say(said::BenchOf { sheet, length })
        }
        Piece::Tasks(..) => sheet,
    };
    html.tag("p", "bench-of", &of);
}

/// The figure, what it marks and what is done there, and its tape.
fn write_figure(html: &mut Html, project: &Project, run: &Run<'_>, at: Option<At>) {
    let Some((piece, number)) = at.and_then(|at| Some((run.0.get(at.0)?, at.1))) else { return };
    let style = project.style();
    let [label, figure, left_over, note] = read(piece, number, style);
    html.raw("<div class=\"bench-mark\" role=\"status\">");
    html.tag("p", "bench-label", &label);
    html.tag("p", "bench-figure", &figure);
    html.tag_if_any("p", "bench-note", &left_over);
    html.tag_if_any("p", "bench-do", &note);
    html.raw("</div><div class=\"bench-side\">");
    match piece {
        Piece::Board(board) => {
            if let Some(mark) = board.strip.marks.get(number) {
                push_tape(html, mark.at, style);
            }
            html.tag_if_any("p", "bench-note", &board.strip.note);
            if !board.strip.own_datum {
                html.tag("p", "bench-note", text(said::BENCH_HOOKED));
            }
        }
        Piece::Tasks(_, tasks) => {
            if let Some(Figure::Tape(length)) = tasks.get(number).map(|task| &task.figure) {
                push_tape(html, *length, style);
            }
        }
    }
    if !piece.is_open(project, number) {
        html.tag("p", "bench-done", text(said::BENCH_DONE));
    }
    html.raw("</div>");
}

/// What a figure is read as: what it marks, the figure, what rounding left over, what else is to be known.
fn read(piece: &Piece<'_>, number: usize, style: Style) -> [String; 4] {
    let on_tape = |length| {
        let marked = style.mark(length);
        (style.left_over(&marked), marked.text)
    };
    match piece {
        Piece::Board(board) => {
            let Some(mark) = board.strip.marks.get(number) else { return Default::default() };
            let (left_over, figure) = on_tape(mark.at);
            [mark.label.clone(), figure, left_over, mark.note.clone()]
        }
        Piece::Tasks(_, tasks) => {
            let Some(task) = tasks.get(number) else { return Default::default() };
            let (left_over, figure) = match &task.figure {
                Figure::Tape(length) => on_tape(*length),
                Figure::Amount(amount) => (String::new(), amount.clone()),
            };
            [task.text.clone(), figure, left_over, task.note.clone()]
        }
    }
}

/// How far one is with the piece, and how many are left.
fn write_place(html: &mut Html, project: &Project, run: &Run<'_>, at: Option<At>) {
    let Some((piece, number)) = at.and_then(|at| Some((run.0.get(at.0)?, at.1))) else { return };
    let style = project.style();
    let (mark, of) = (number + 1, piece.len());
    let place: Msg = match piece {
        Piece::Board(board) if board.strip.alike > 1 => {
            let alike = board.strip.alike;
            let copy = (board.done(project) + 1).min(alike);
            said::BenchCopy { mark, of, copy, alike }.into()
        }
        Piece::Board(_) => said::BenchMark { mark, of }.into(),
        Piece::Tasks(..) => said::BenchStep { step: mark, of }.into(),
    };
    if of > 1 {
        html.tag("p", "", &style.say(place));
    }
    html.tag("p", "", &style.say(said::BenchLeft { count: run.left(project) }));
}

/// What is read aloud: with the first figure of a piece its name, what is marked, and the figure in the words of the tape.
fn spoken(project: &Project, run: &Run<'_>, at: Option<At>) -> String {
    let Some((piece, number)) = at.and_then(|at| Some((run.0.get(at.0)?, at.1))) else {
        return String::new();
    };
    let style = project.style();
    let [label, figure, ..] = read(piece, number, style);
    let length = match piece {
        Piece::Board(board) => board.strip.marks.get(number).map(|mark| mark.at),
        Piece::Tasks(_, tasks) => match tasks.get(number).map(|task| &task.figure) {
            Some(Figure::Tape(length)) => Some(*length),
            _ => None,
        },
    };
    let figure = length.and_then(|length| style.aloud(length)).unwrap_or(figure);
    let name = if number == 0 { piece.name() } else { "" };
    let parts = [name, &label, &figure].map(str::trim);
    let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    parts.join(", ")
}

#[cfg(test)]
mod tests {
    use super::swiped;

    #[test]
    fn a_swipe_goes_sideways_and_far_enough() {
        assert_eq!(swiped((-120, 10)), Some(true), "leftward: on to the next");
        assert_eq!(swiped((120, -10)), Some(false));
        for tap in [(0, 0), (-59, 0), (-80, 60), (10, 200), (30, 5)] {
            assert_eq!(swiped(tap), None, "{tap:?}");
        }
    }
}
