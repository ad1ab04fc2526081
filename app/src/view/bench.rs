//! At the bench: one mark at a time, in figures to be read at arm's length, and one button that ticks it and goes on.

use calc::project::{Evaluation, Project};
use calc::words::app_page as said;
use js_sys::{Function, Promise, Reflect};
use leptos::ev::{KeyboardEvent, MouseEvent};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

use super::html::{Html, asked, shown};
use super::marks::{Board, MARKS, board_turned, boards};
use super::tape::push_tape;
use crate::desk::{Desk, tick, ticked};
use crate::route::{Part, Route};
use crate::words::text;

/// A mark of the run: which piece, and which of its marks.
type At = (usize, usize);

/// The run through all marks of a sheet; of all sheets where none is named.
pub fn bench_page(desk: Desk, sheet: &str) -> AnyView {
    let sheet = StoredValue::new(sheet.to_owned());
    let at = RwSignal::new(None::<At>);
    let with_boards = move |all: &Evaluation| -> Vec<usize> {
        sheet.with_value(|sheet| {
            let all = boards(all);
            let of = all
                .iter()
                .enumerate()
                .filter(|(_, board)| sheet.is_empty() || board.sheet == sheet);
            of.map(|(number, _)| number).collect()
        })
    };
    // Where one is: where one went, else the first that is not marked yet.
    let here = Memo::new(move |_| {
        desk.evaluation.with(|all| {
            desk.project.with(|project| {
                let run = Run::new(all, project, &with_boards(all));
                at.get().filter(|at| run.has(*at)).or_else(|| run.open_after(None))
            })
        })
    });
    let page = shown("bench", move |html| {
        desk.evaluation.with(|all| {
            desk.project.with(|project| {
                write(html, project, &Run::new(all, project, &with_boards(all)), here.get());
            });
        });
    });
    let go = move |what: &str| {
        let all = desk.evaluation.get_untracked();
        let numbers = with_boards(&all);
        let now = here.get_untracked();
        let step = |forward: bool| {
            desk.project.with_untracked(|project| {
                now.and_then(|now| Run::new(&all, project, &numbers).beside(now, forward))
            })
        };
        match what {
            "marked" => {
                let Some(now) = now else { return };
                desk.change(|project| mark(project, &all, &numbers, now));
                let next = desk.project.with_untracked(|project| {
                    Run::new(&all, project, &numbers).open_after(Some(now))
                });
                at.set(next);
            }
            "back" => at.set(step(false).or(now)),
            "on" => at.set(step(true).or(now)),
            "undo" => desk.undo(),
            _ => {}
        }
    };
    let tapped = move |event: MouseEvent| {
        if let Some((what, _)) = asked(&event) {
            go(&what);
        }
    };
    let keys = window_event_listener(leptos::ev::keydown, move |event: KeyboardEvent| match event
        .key()
        .as_str()
    {
        "ArrowLeft" => go("back"),
        "ArrowRight" => go("on"),
        _ => {}
    });
    let awake = keep_awake();
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
    view! {
        <div on:click=tapped>{page}</div>
        <p class="links"><a class="button" href=back>{text(said::BENCH_LEAVE)}</a></p>
    }
    .into_any()
}

/// The marks that are gone through.
struct Run<'a> {
    project: &'a Project,
    boards: Vec<Board<'a>>,
}

impl<'a> Run<'a> {
    fn new(all: &'a Evaluation, project: &'a Project, numbers: &[usize]) -> Self {
        let boards = boards(all).into_iter().enumerate();
        let boards = boards.filter(|(number, _)| numbers.contains(number)).map(|(_, board)| board);
        Self { project, boards: boards.collect() }
    }

    fn all(&self) -> impl DoubleEndedIterator<Item = At> + '_ {
        let boards = self.boards.iter().enumerate();
        boards.flat_map(|(board, one)| (0..one.strip.marks.len()).map(move |mark| (board, mark)))
    }

    fn has(&self, at: At) -> bool {
        self.boards.get(at.0).is_some_and(|board| at.1 < board.strip.marks.len())
    }

    fn is_open(&self, at: At) -> bool {
        self.boards.get(at.0).is_some_and(|board| {
            let mark = board.strip.marks.get(at.1);
            mark.is_some_and(|mark| ticked(self.project, MARKS, &board.mark_key(mark)).is_none())
        })
    }

    /// The next mark that is not ticked, from the start again after the last.
    fn open_after(&self, at: Option<At>) -> Option<At> {
        let after =
            self.all().filter(|one| at.is_none_or(|at| *one > at)).find(|one| self.is_open(*one));
        after.or_else(|| self.all().find(|one| self.is_open(*one)))
    }

    fn beside(&self, at: At, forward: bool) -> Option<At> {
        if forward {
            self.all().find(|one| *one > at)
        } else {
            self.all().rev().find(|one| *one < at)
        }
    }

    /// Pieces that are not done, those alike counted each.
    fn left(&self) -> usize {
        self.boards.iter().map(|board| board.strip.alike - board.done(self.project)).sum()
    }
}

/// Ticks a mark; with its last one the piece is done, and of several alike the next one begins.
fn mark(project: &mut Project, all: &Evaluation, numbers: &[usize], at: At) {
    let run = boards(all).into_iter().enumerate();
    let mut run = run.filter(|(number, _)| numbers.contains(number)).map(|(_, board)| board);
    let Some(board) = run.nth(at.0) else { return };
    let Some(mark) = board.strip.marks.get(at.1) else { return };
    tick(project, MARKS, &board.mark_key(mark), Some(1.0));
    let whole = |mark| ticked(project, MARKS, &board.mark_key(mark)).is_some();
    if board.strip.marks.iter().all(whole) {
        board_turned(project, all, &board.key, true);
    }
}

fn write(html: &mut Html, project: &Project, run: &Run<'_>, at: Option<At>) {
    let style = project.style();
    let Some((board, (number, mark))) = at.and_then(|at| Some((run.boards.get(at.0)?, at))) else {
        let none = run.boards.is_empty();
        let words = text(if none { said::NO_MARKS } else { said::ALL_MARKED });
        html.raw("<h1 tabindex=\"-1\">");
        html.text(words);
        html.raw("</h1>");
        return;
    };
    let strip = board.strip;
    let Some(here) = strip.marks.get(mark) else { return };
    html.raw("<h1 tabindex=\"-1\">");
    html.text(board.name());
    html.raw("</h1>");
    let title =
        project.sheet(board.sheet).map_or_else(String::new, |sheet| super::title_of(&sheet));
    let long = style.mark(strip.length).text;
    html.tag("p", "bench-of", &style.say(said::BenchOf { sheet: title, length: long }));
    let copy = (strip.alike > 1).then(|| board.done(project) + 1);
    let place = style.say(match copy {
        Some(copy) => calc::words::Msg::from(said::BenchCopy {
            mark: mark + 1,
            of: strip.marks.len(),
            copy: copy.min(strip.alike),
            alike: strip.alike,
        }),
        None => said::BenchMark { mark: mark + 1, of: strip.marks.len() }.into(),
    });
    let marked = style.mark(here.at);
    html.raw("<div class=\"bench-mark\" role=\"status\">");
    html.tag("p", "bench-label", &here.label);
    html.tag("p", "bench-figure", &marked.text);
    html.tag_if_any("p", "bench-note", &style.left_over(&marked));
    html.tag_if_any("p", "bench-note", &here.note);
    html.raw("</div>");
    push_tape(html, here.at, style);
    html.tag("p", "bench-place", &place);
    if !run.is_open((number, mark)) {
        html.tag("p", "bench-place done", text(said::BENCH_DONE));
    }
    html.tag("p", "bench-place", &style.say(said::BenchLeft { count: run.left() }));
    html.raw("<div class=\"bench-keys\">");
    key(html, "back", "‹", said::BENCH_BACK);
    html.button("main", "marked", "", text(said::BENCH_MARKED));
    key(html, "on", "›", said::BENCH_ON);
    key(html, "undo", "↶", said::BENCH_UNDO);
    html.raw("</div>");
}

/// A button with a sign for a face.
fn key(html: &mut Html, what: &str, sign: &str, name: calc::words::Id) {
    html.raw("<button data-do=\"");
    html.raw(what);
    html.raw("\" data-with=\"\" aria-label=\"");
    html.text(text(name));
    html.raw("\">");
    html.raw(sign);
    html.raw("</button>");
}

/// Keeps the screen lit until it is dropped, where the browser can.
struct Awake(StoredValue<Option<JsValue>, LocalStorage>);

fn keep_awake() -> Awake {
    let kept = StoredValue::new_local(None);
    let asked = (|| {
        let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
        let request = Reflect::get(&lock, &"request".into()).ok()?.dyn_into::<Function>().ok()?;
        request.call1(&lock, &"screen".into()).ok()?.dyn_into::<Promise>().ok()
    })();
    if let Some(asked) = asked {
        js_sys::futures::spawn_local(async move {
            // Refused, as on a low battery: the screen goes dark as it always does.
            if let Ok(lock) = js_sys::futures::JsFuture::from(asked).await
                && kept.try_set_value(Some(lock.clone())).is_some()
            {
                // The page was left meanwhile.
                release(&lock);
            }
        });
    }
    Awake(kept)
}

impl Drop for Awake {
    fn drop(&mut self) {
        if let Some(lock) = self.0.try_update_value(Option::take).flatten() {
            release(&lock);
        }
    }
}

fn release(lock: &JsValue) {
    let release = Reflect::get(lock, &"release".into()).ok();
    if let Some(release) = release.and_then(|it| it.dyn_into::<Function>().ok()) {
        // What is let go already needs no letting go.
        let _ = release.call0(lock);
    }
}
