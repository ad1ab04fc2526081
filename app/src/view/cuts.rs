//! The cut list over all sheets: every stock length as a bar, every piece to be ticked off when it is cut.

use calc::project::{CutBar, CutGroup, CutPiece, Evaluation, Node, Project};
use calc::quantity::{Length, Style, from_digits};
use calc::words::{app_common, app_store as said};
use leptos::prelude::*;
use uom::si::length::millimeter;

use super::drawing::paper::{Paper, ROW, TEXT, text_width};
use super::html::{Html, asked, shown};
use super::report::remark;
use super::ticks::{tick_box, tick_part};
use super::unroll::BREAK;
use crate::desk::{Desk, tick, ticked};
use crate::words::{say, text};

/// Ticks of this list: for each bar and copy of it, which of its pieces are cut, a bit each.
const LIST: &str = "cuts";
/// A number in the file holds so many bits exactly; a piece past them is ticked with its bar.
const MOST_BITS: usize = 52;
/// Width of the longest bar. [px]
const WIDTH: f64 = 358.0;
const HIGH: f64 = 34.0;
const RIGHT: (f64, f64) = (1.0, 0.0);

/// The page.
pub fn cuts_page(desk: Desk) -> AnyView {
    let style = Memo::new(move |_| desk.project.with(Project::style));
    let write = move |html: &mut Html| {
        let all = desk.evaluation.get();
        let style = style.get();
        if all.cut_list.is_empty() {
            html.tag("p", "help", text(said::NOTHING_TO_CUT));
        }
        let mut names = Names::default();
        desk.project.with_untracked(|project| {
            for group in &all.cut_list {
                write_group(html, project, group, &mut names, style);
            }
        });
    };
    let turn = move |what: &str, with: &str, on: bool| {
        let Some((bar, piece)) = with.rsplit_once('#') else { return };
        let before = desk.project.with_untracked(|project| bits(project, bar));
        let now = match (what, piece.parse::<u64>()) {
            ("piece", Ok(piece)) if on => before | (1 << piece),
            ("piece", Ok(piece)) => before & !(1 << piece),
            ("bar", Ok(pieces)) if on => all_bits(pieces),
            _ => 0,
        };
        let kept = (now > 0).then_some(now as f64);
        desk.change(|project| tick(project, LIST, bar, kept));
    };
    let list = tick_part(desk, write, is_ticked, turn, |_| ());
    let foot = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| left_over_ticks(html, project, &all, style.get()));
    });
    let forget = move |event: leptos::ev::MouseEvent| {
        if let Some((_, key)) = asked(&event) {
            desk.change(|project| tick(project, LIST, &key, None));
        }
    };
    let progress = shown("progress", move |html| {
        let all = desk.evaluation.get();
        let (done, pieces) = desk.project.with(|project| count(project, &all));
        if pieces > 0 {
            html.tag("p", "total", &say(said::PiecesCut { done, pieces }));
        }
    });
    view! {
        <h1 tabindex="-1">{text(app_common::CUT_LIST)}</h1>
        {progress}
        <div class="cuts">{list}</div>
        <div on:click=forget>{foot}</div>
    }
    .into_any()
}

/// Names of bars, copies of one name counted.
#[derive(Default)]
struct Names(Vec<(String, usize)>);

impl Names {
    /// The name of the next copy of a bar.
    fn next(&mut self, key: &str) -> String {
        let copy = match self.0.iter_mut().find(|(known, _)| known == key) {
            Some((_, count)) => {
                *count += 1;
                *count
            }
            None => {
                self.0.push((key.to_owned(), 1));
                1
            }
        };
        format!("{key}|{copy}")
    }
}

fn bits(project: &Project, bar: &str) -> u64 {
    // What was kept is a whole number below 2^52.
    ticked(project, LIST, bar).map_or(0, |bits| bits as u64)
}

fn all_bits(pieces: u64) -> u64 {
    (1 << pieces.min(MOST_BITS as u64)) - 1
}

fn is_ticked(project: &Project, what: &str, with: &str) -> bool {
    let Some((bar, number)) = with.rsplit_once('#') else { return false };
    let Ok(number) = number.parse::<u64>() else { return false };
    match what {
        "piece" => bits(project, bar) & (1 << number) != 0,
        _ => bits(project, bar) & all_bits(number) == all_bits(number),
    }
}

/// Pieces that are cut, and pieces in all.
fn count(project: &Project, all: &Evaluation) -> (u32, u32) {
    let mut names = Names::default();
    let (mut done, mut pieces) = (0, 0);
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        let key = bar.key();
        for _ in 0..bar.count {
            let cut = bits(project, &names.next(&key)) & all_bits(bar.pieces.len() as u64);
            done += cut.count_ones();
            pieces += bar.pieces.len().min(MOST_BITS) as u32;
        }
    }
    (done, pieces)
}

/// The pieces that are not cut yet, each with what it is cut from.
pub(super) fn open_pieces<'a>(
    project: &Project,
    all: &'a Evaluation,
) -> Vec<(&'a CutBar, &'a CutPiece)> {
    let mut names = Names::default();
    let mut open = Vec::new();
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        let key = bar.key();
        for _ in 0..bar.count {
            let cut = bits(project, &names.next(&key));
            let pieces = bar.pieces.iter().take(MOST_BITS).enumerate();
            open.extend(
                pieces.filter(|(at, _)| cut & (1 << at) == 0).map(|(_, piece)| (bar, piece)),
            );
        }
    }
    open
}

fn write_group(
    html: &mut Html,
    project: &Project,
    group: &CutGroup,
    names: &mut Names,
    style: Style,
) {
    html.raw("<section class=\"cut-group\">");
    html.tag("h2", "", &group.title);
    html.tag("p", "help", &titles(project, &group.sheets));
    html.raw("<ul class=\"remarks\">");
    for one in &group.remarks {
        remark(html, one);
    }
    html.raw("</ul>");
    let longest = group.bars.iter().filter_map(|bar| bar.length).map(mm).fold(1.0, f64::max);
    let several = group.sheets.len() > 1;
    for (index, bar) in group.bars.iter().enumerate() {
        // A long list is drawn as it comes into view, a few bars at a time.
        if index > 0 {
            html.raw("</section>");
            html.raw(BREAK);
            html.raw("<section class=\"cut-more\">");
        }
        write_bar(html, project, bar, several, longest, names, style);
    }
    html.raw("</section>");
    html.raw(BREAK);
}

fn write_bar(
    html: &mut Html,
    project: &Project,
    bar: &CutBar,
    several: bool,
    longest: f64,
    names: &mut Names,
    style: Style,
) {
    html.raw("<section class=\"bar\">");
    let name = bar.length.map_or_else(|| bar.stock.clone(), |length| style.length(length));
    html.tag("h3", "", &format!("{} × {name}", bar.count));
    if bar.length.is_some() {
        html.raw("<div class=\"drawing\" role=\"img\" aria-label=\"");
        html.text(&say(said::BarCut { stock: bar.stock.as_str(), count: bar.pieces.len() }));
        html.raw("\">");
        html.raw(&bar_svg(bar, longest));
        html.raw("</div>");
        html.tag("p", "help", &say(said::BarLeft { length: style.length(bar.waste) }));
    }
    html.raw("<ul class=\"ticks\">");
    let key = bar.key();
    for copy in 0..bar.count {
        let key = names.next(&key);
        // A length that gives one piece has one box.
        let single = bar.pieces.len() == 1;
        if !single {
            html.raw("<li><label class=\"whole\">");
            tick_box(html, "bar", &format!("{key}#{}", bar.pieces.len()), "");
            html.tag("span", "what", &say(said::BarOf { number: copy + 1, count: bar.count }));
            html.raw("</label><ul>");
        }
        for (at, piece) in bar.pieces.iter().take(MOST_BITS).enumerate() {
            html.raw("<li><label>");
            tick_box(html, "piece", &format!("{key}#{at}"), "");
            write_piece(html, project, piece, several, style);
            html.raw("</label></li>");
        }
        if !single {
            html.raw("</ul></li>");
        }
    }
    html.raw("</ul></section>");
}

fn write_piece(html: &mut Html, project: &Project, piece: &CutPiece, several: bool, style: Style) {
    html.raw("<span class=\"what\">");
    let marked = style.mark(piece.length);
    html.tag("strong", "", &marked.text);
    html.raw(" ");
    html.text(&piece.label);
    if several {
        html.tag("span", "note", &titles(project, std::slice::from_ref(&piece.sheet)));
    }
    html.raw("</span>");
}

fn titles(project: &Project, sheets: &[String]) -> String {
    let titles: Vec<String> = sheets
        .iter()
        .filter_map(|id| project.sheet(id))
        .map(|sheet| super::title_of(&sheet))
        .collect();
    titles.join(", ")
}

/// A stock length to scale: its pieces with their names, and what is left over.
fn bar_svg(bar: &CutBar, longest: f64) -> String {
    let stock = bar.length.map_or(1.0, mm);
    let px = (WIDTH - 2.0) / longest.max(1.0);
    let mut paper = Paper::new(WIDTH, HIGH + 2.0);
    let rectangle = |paper: &mut Paper, class: &str, from: f64, to: f64| {
        let (a, b) = (1.0 + from * px, 1.0 + to * px);
        paper.path(class, &[(a, 1.0), (b, 1.0), (b, HIGH), (a, HIGH)], true);
    };
    rectangle(&mut paper, "pen-thin ground-waste", 0.0, stock);
    let mut at = 0.0;
    for piece in &bar.pieces {
        let end = (at + mm(piece.length)).min(stock);
        rectangle(&mut paper, "pen-solid fill-stock", at, end);
        if end < stock {
            let x = 1.0 + end * px;
            paper.path("pen-cut", &[(x, 0.0), (x, HIGH + 2.0)], false);
        }
        if text_width(&piece.label) * TEXT / ROW + 6.0 < (end - at) * px {
            let middle = (1.0 + f64::midpoint(at, end) * px, HIGH * 0.5 + 1.0);
            paper.text("", middle, RIGHT, &piece.label);
        }
        at = (end + mm(bar.kerf)).min(stock);
    }
    paper.finish()
}

/// What was cut for a plan that has changed since: it is there, and is told.
fn left_over_ticks(html: &mut Html, project: &Project, all: &Evaluation, style: Style) {
    let Some(Node::Object(kept)) = project.extra("ticked").and_then(|all| all.get(LIST)) else {
        return;
    };
    let mut names = Names::default();
    let mut planned: Vec<String> = Vec::new();
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        let key = bar.key();
        planned.extend((0..bar.count).map(|_| names.next(&key)));
    }
    let mut gone = kept.keys().filter(|key| !planned.contains(key)).peekable();
    if gone.peek().is_none() {
        return;
    }
    html.raw("<section class=\"cut-before\">");
    html.tag("h2", "", text(said::CUT_BEFORE));
    html.tag("p", "help", text(said::CUT_BEFORE_HELP));
    html.raw("<ul>");
    for key in gone {
        html.raw("<li>");
        html.tag("span", "what", &words_of(key, all, style));
        html.button("", "forget", key, text(said::REMOVE));
        html.raw("</li>");
    }
    html.raw("</ul></section>");
}

/// A bar that is planned no more, in words: `1x4 pine, 8 ft: rail 60 in, rung 36 in`. Pieces that are still wanted have their
/// names; of the others the length tells.
fn words_of(key: &str, all: &Evaluation, style: Style) -> String {
    let (stock, rest) = key.split_once('|').unwrap_or((key, ""));
    let (pieces, _copy) = rest.rsplit_once('|').unwrap_or((rest, ""));
    let read = |text: &str| from_digits(text).map(Length::new::<millimeter>);
    let known: Vec<&CutPiece> =
        all.cut_list.iter().flat_map(|g| &g.bars).flat_map(|bar| &bar.pieces).collect();
    let called = |id: &str| {
        let piece = known.iter().find(|piece| format!("{}.{}", piece.sheet, piece.id) == id);
        piece.map_or_else(String::new, |piece| format!("{} ", piece.label))
    };
    let pieces: Vec<String> = pieces
        .split('+')
        .map(|piece| match piece.rsplit_once('@') {
            Some((id, length)) => {
                let length = read(length).map_or_else(String::new, |l| style.mark(l).text);
                format!("{}{length}", called(id))
            }
            None => piece.to_owned(),
        })
        .collect();
    let mut parts = stock.split('/').skip(1);
    let material = parts.next().unwrap_or(stock).replace('-', " ");
    let length = parts.last().and_then(|last| read(last.strip_suffix("mm")?));
    let length = length.map_or_else(String::new, |l| format!(", {}", style.length(l)));
    format!("{material}{length}: {}", pieces.join(", "))
}

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}
