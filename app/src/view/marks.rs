//! The mark list over all sheets, board by board: each mark as a number and a piece of tape, ticked off with the thumb.

use calc::lists::{Mark, MarkStrip};
use calc::project::{Evaluation, Project};
use calc::quantity::{Style, plain};
use calc::words::{Arg, app_common, app_page as said};
use leptos::prelude::*;
use uom::si::length::millimeter;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement};

use super::elements;
use super::html::{Html, asked, shown};
use super::report::mark_words;
use super::tape::push_tape;
use super::ticks::{tick_box, tick_part};
use crate::desk::{Desk, tick, ticked};
use crate::route::Route;
use crate::words::{say, text};

/// Ticks of marks, by sheet, board and place.
pub(super) const MARKS: &str = "marks";
/// How many of the boards that are alike are done, by sheet and board.
const BOARDS: &str = "boards";

/// The page.
pub fn marks_page(desk: Desk) -> AnyView {
    let style = Memo::new(move |_| desk.project.with(Project::style));
    let write = move |html: &mut Html| {
        let all = desk.evaluation.get();
        let style = style.get();
        let mut any = false;
        desk.project.with_untracked(|project| {
            let mut sheet = "";
            for (number, board) in boards(&all).iter().enumerate() {
                if board.sheet != sheet {
                    sheet = board.sheet;
                    let title =
                        project.sheet(sheet).map_or_else(String::new, |s| super::title_of(&s));
                    html.tag("h2", "", &title);
                }
                write_board(html, board, number, style);
                any = true;
            }
        });
        if !any {
            html.tag("p", "help", text(said::NO_MARK_LISTS));
        }
    };
    let turn = move |what: &str, with: &str, on: bool| match what {
        "mark" => desk.change(|project| tick(project, MARKS, with, on.then_some(1.0))),
        _ => {
            let Some((board, _)) = with.rsplit_once('#') else { return };
            let all = desk.evaluation.get_untracked();
            desk.change(|project| board_turned(project, &all, board, on));
        }
    };
    let list = tick_part(desk, write, is_ticked, turn, say_progress);
    let next = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| write_next(html, project, &all, style.get()));
    });
    let jump = move |event: leptos::ev::MouseEvent| {
        if let Some((_, id)) = asked(&event) {
            super::show(&id);
        }
    };
    view! {
        <h1 tabindex="-1">{text(app_common::MARK_LIST)}</h1>
        {move || {
            let any = desk.evaluation.with(|all| super::bench::has_work(all, ""));
            let bench = Route::Bench(desk.project.with(|project| project.id().to_owned()), String::new());
            any.then(|| view! { <a class="button main wide" href=bench.hash()>{text(said::AT_THE_BENCH)}</a> })
        }}
        <div class="mark-list">{list}</div>
        <div on:click=jump>{next}</div>
    }
    .into_any()
}

/// A piece with marks, in the list.
pub(super) struct Board<'a> {
    /// The id of its sheet.
    pub sheet: &'a str,
    /// Its name for ticks: the ids of the sheet and of the strip.
    pub key: String,
    /// Its name on the page: the strip's, and which one where several of a sheet are called so.
    name: String,
    /// What is marked on it.
    pub strip: &'a MarkStrip,
}

impl Board<'_> {
    /// Its name on the page.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// How many of those that are alike are done.
    pub fn done(&self, project: &Project) -> usize {
        boards_done(project, &self.key).min(self.strip.alike)
    }

    fn is_done(&self, project: &Project) -> bool {
        self.done(project) >= self.strip.alike
    }

    /// A mark that moves by more than a tenth of a millimetre is another one, and not ticked.
    pub fn mark_key(&self, mark: &Mark) -> String {
        format!("{}|{}|{}", self.key, mark.id, plain(mark.at.get::<millimeter>(), 1))
    }
}

/// All pieces with marks, in the order of the sheets.
pub(super) fn boards(all: &Evaluation) -> Vec<Board<'_>> {
    let mut boards: Vec<Board<'_>> = Vec::new();
    for (sheet, result) in &all.sheets {
        let Ok(report) = result.as_ref() else { continue };
        for strip in &report.marks {
            let called_so = |b: &&Board<'_>| b.sheet == sheet && b.strip.label == strip.label;
            let before = boards.iter().filter(called_so).count();
            let mut name = strip.label.clone();
            if before > 0 {
                name.push_str(&format!(" {}", before + 1));
            }
            boards.push(Board { sheet, key: format!("{sheet}|{}", strip.id), name, strip });
        }
    }
    boards
}

fn boards_done(project: &Project, board: &str) -> usize {
    ticked(project, BOARDS, board).map_or(0, |count| count as usize)
}

fn is_ticked(project: &Project, what: &str, with: &str) -> bool {
    if what == "mark" {
        return ticked(project, MARKS, with).is_some();
    }
    with.rsplit_once('#').is_some_and(|(board, number)| {
        number.parse::<usize>().is_ok_and(|number| number < boards_done(project, board))
    })
}

/// One more board is done, or one fewer. Where more boards are alike, the marks of the next are to be ticked anew.
pub(super) fn board_turned(project: &mut Project, all: &Evaluation, key: &str, on: bool) {
    let boards = boards(all);
    let Some(board) = boards.iter().find(|board| board.key == key) else { return };
    let alike = board.strip.alike;
    let before = board.done(project);
    let now = if on { (before + 1).min(alike) } else { before.saturating_sub(1) };
    tick(project, BOARDS, key, (now > 0).then_some(now as f64));
    for mark in &board.strip.marks {
        tick(project, MARKS, &board.mark_key(mark), (now >= alike).then_some(1.0));
    }
}

/// A board as one line: its name, what is to be known of it, how many marks, how far it is. Its marks open under it.
fn write_board(html: &mut Html, board: &Board<'_>, number: usize, style: Style) {
    let strip = board.strip;
    html.raw("<details class=\"part-fold board\" id=\"");
    html.raw(&strip_id(number));
    html.raw("\"><summary tabindex=\"-1\"><span class=\"name\">");
    html.text(board.name());
    html.raw("</span>");
    html.tag_if_any("span", "note", &strip.more(style));
    html.tag("span", "note", &say(said::MarkCount { count: strip.marks.len() }));
    html.raw("<span class=\"progress\"></span></summary><section class=\"marks strip\">");
    let length = Arg::mark(strip.length);
    let long = match strip.own_datum {
        true => style.say(said::Long { length }),
        false => style.say(said::LongHooked { length }),
    };
    html.tag("p", "help", &long);
    html.raw("<ol class=\"ticks\">");
    for (at, mark) in strip.marks.iter().enumerate() {
        html.raw("<li class=\"mark\"><label>");
        tick_box(html, "mark", &board.mark_key(mark), &mark_id(number, at));
        html.raw("<span class=\"what\">");
        mark_words(html, mark, style);
        html.raw("</span></label>");
        push_tape(html, mark.at, style);
        html.raw("</li>");
    }
    html.raw("</ol><ul class=\"ticks boards-done\">");
    for copy in 0..strip.alike {
        html.raw("<li><label>");
        let id = if copy == 0 { board_id(number) } else { String::new() };
        tick_box(html, "board", &format!("{}#{copy}", board.key), &id);
        let words = match strip.alike {
            1 => say(said::BoardDone { board: board.name() }),
            alike => say(said::BoardOfDone { board: board.name(), copy: copy + 1, alike }),
        };
        html.tag("span", "what", &words);
        html.raw("</label></li>");
    }
    html.raw("</ul></section></details>");
}

/// How far each board is, on its line: of those that are alike, how many are done.
fn say_progress(part: &Element) {
    for line in elements(Some(part), "details.board") {
        let boxes = elements(Some(&line), "input[data-do=board]");
        let all = boxes.len();
        let done = boxes
            .iter()
            .filter_map(|one| one.dyn_ref::<HtmlInputElement>())
            .filter(|one| one.checked())
            .count();
        let words = match (done, all) {
            (0, _) => String::new(),
            (done, all) if done == all => "✓".to_owned(),
            (done, all) => format!("{done}/{all}"),
        };
        if let Ok(Some(progress)) = line.query_selector(".progress") {
            progress.set_text_content(Some(&words));
        }
        let _ = line.class_list().toggle_with_force("done", done == all);
    }
}

/// The first mark that is not ticked, always in sight.
fn write_next(html: &mut Html, project: &Project, all: &Evaluation, style: Style) {
    let boards = boards(all);
    let Some((number, board)) = boards.iter().enumerate().find(|(_, one)| !one.is_done(project))
    else {
        if !boards.is_empty() {
            html.tag("p", "headline", text(said::ALL_MARKED));
        }
        return;
    };
    let name = board.name();
    let mut marks = board.strip.marks.iter().enumerate();
    let open = marks.find(|(_, mark)| ticked(project, MARKS, &board.mark_key(mark)).is_none());
    match open {
        Some((at, mark)) => {
            let next = say(said::NextMark { board: name, mark: mark.label.as_str() });
            write_headline(html, &mark_id(number, at), &next, &style.mark(mark.at).text);
        }
        None => {
            let next = say(said::NextBoard { board: name });
            write_headline(html, &board_id(number), &next, text(said::IS_DONE));
        }
    }
}

fn write_headline(html: &mut Html, id: &str, text: &str, figure: &str) {
    html.raw("<button class=\"headline\" data-do=\"show\" data-with=\"");
    html.raw(id);
    html.raw("\">");
    html.tag("span", "", text);
    html.raw(" ");
    html.tag("strong", "", figure);
    html.raw("</button>");
}

fn strip_id(number: usize) -> String {
    format!("strip-{number}")
}

fn mark_id(number: usize, at: usize) -> String {
    format!("mark-{number}-{at}")
}

fn board_id(number: usize) -> String {
    format!("board-{number}")
}
