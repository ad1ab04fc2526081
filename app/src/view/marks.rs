//! The mark list over all sheets, board by board: each mark as a number and a piece of tape, ticked off with the thumb.

use calc::lists::{Mark, MarkStrip};
use calc::project::{Evaluation, Project};
use calc::quantity::{Style, plain};
use leptos::prelude::*;
use uom::si::length::millimeter;

use super::html::{Html, asked, shown};
use super::report::mark_words;
use super::tape::push_tape;
use super::ticks::{tick_box, tick_part};
use crate::desk::{Desk, tick, ticked};

/// Ticks of marks, by sheet, board and place.
const MARKS: &str = "marks";
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
            for (number, board) in boards(&all).iter().enumerate() {
                write_board(html, project, board, number, style);
                any = true;
            }
        });
        if !any {
            html.tag("p", "help", "No sheet has marks yet.");
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
    let list = tick_part(desk, write, is_ticked, turn);
    let jumps = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| write_jumps(html, project, &all));
    });
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
        <h1 tabindex="-1">"Mark list"</h1>
        <nav class="jumps" aria-label="Boards" on:click=jump>{jumps}</nav>
        <div class="mark-list">{list}</div>
        <div on:click=jump>{next}</div>
    }
    .into_any()
}

/// A piece with marks, in the list.
struct Board<'a> {
    sheet: &'a str,
    /// Its name for ticks: the ids of the sheet and of the strip.
    key: String,
    /// Its name on the page: the strip's, and which one where several of a sheet are called so.
    name: String,
    strip: &'a MarkStrip,
}

impl Board<'_> {
    /// Its name on the page.
    fn name(&self) -> &str {
        &self.name
    }

    fn done(&self, project: &Project) -> usize {
        boards_done(project, &self.key).min(self.strip.alike)
    }

    fn is_done(&self, project: &Project) -> bool {
        self.done(project) >= self.strip.alike
    }

    /// A mark that moves by more than a tenth of a millimetre is another one, and not ticked.
    fn mark_key(&self, mark: &Mark) -> String {
        format!("{}|{}|{}", self.key, mark.id, plain(mark.at.get::<millimeter>(), 1))
    }
}

fn boards(all: &Evaluation) -> Vec<Board<'_>> {
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
fn board_turned(project: &mut Project, all: &Evaluation, key: &str, on: bool) {
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

fn write_board(html: &mut Html, project: &Project, board: &Board<'_>, number: usize, style: Style) {
    let strip = board.strip;
    html.raw("<section class=\"marks strip\" tabindex=\"-1\" id=\"");
    html.raw(&strip_id(number));
    html.raw("\">");
    html.tag("h2", "", board.name());
    let title = project.sheet(board.sheet).map_or_else(String::new, |s| super::title_of(&s));
    let more = match strip.more(style) {
        more if more.is_empty() => more,
        more => format!(", {more}"),
    };
    html.tag("p", "help", &format!("{title}{more}"));
    let length = style.mark(strip.length).text;
    // A strip that is not measured from its left end says so in its label.
    let from =
        if more.contains("from ") { "" } else { " All from its left end, tape hooked once." };
    html.tag("p", "help", &format!("{length} long.{from}"));
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
            1 => format!("{} done", board.name()),
            alike => format!("{} {} of {alike} done", board.name(), copy + 1),
        };
        html.tag("span", "what", &words);
        html.raw("</label></li>");
    }
    html.raw("</ul></section>");
}

/// A way to every board, with how far it is.
fn write_jumps(html: &mut Html, project: &Project, all: &Evaluation) {
    for (number, board) in boards(all).iter().enumerate() {
        let done = board.is_done(project);
        let sign = if done { "✓ " } else { "" };
        let name = board.name();
        let text = match board.strip.alike {
            1 => format!("{sign}{name}"),
            alike => format!("{sign}{name} {}/{alike}", board.done(project)),
        };
        html.button(if done { "done" } else { "" }, "show", &strip_id(number), &text);
    }
}

/// The first mark that is not ticked, always in sight.
fn write_next(html: &mut Html, project: &Project, all: &Evaluation, style: Style) {
    let boards = boards(all);
    let Some((number, board)) = boards.iter().enumerate().find(|(_, one)| !one.is_done(project))
    else {
        if !boards.is_empty() {
            html.raw("<p class=\"headline\">All marked ✓</p>");
        }
        return;
    };
    let name = board.name();
    let mut marks = board.strip.marks.iter().enumerate();
    let open = marks.find(|(_, mark)| ticked(project, MARKS, &board.mark_key(mark)).is_none());
    match open {
        Some((at, mark)) => {
            let text = format!("Next: {name}, {} ", mark.label);
            write_headline(html, &mark_id(number, at), &text, &style.mark(mark.at).text);
        }
        None => write_headline(html, &board_id(number), &format!("Next: {name} "), "done?"),
    }
}

fn write_headline(html: &mut Html, id: &str, text: &str, figure: &str) {
    html.raw("<button class=\"headline\" data-do=\"show\" data-with=\"");
    html.raw(id);
    html.raw("\">");
    html.tag("span", "", text);
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
