//! The page of one sheet, whatever its trade: its inputs, and what follows from them.

use std::collections::BTreeMap;
use std::sync::Arc;

use calc::drawing::Drawing;
use calc::project::{Place, Project, SheetResult};
use calc::quantity::Style;
use calc::report::Report;
use calc::sheet;
use calc::words::{Msg, app_page as said};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::drawing::{push_drawing, width_in_sight};
use super::editors::inputs;
use super::html::{Html, asked, shown};
use super::page::{element_id, faults_by_path, width_of_results};
use super::report;
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::words::{say, text, words};

/// The page of the sheet with this id.
pub fn sheet_page(desk: Desk, id: &str) -> AnyView {
    let kind = desk
        .project
        .with_untracked(|project| project.sheet(id).map(|sheet| sheet.kind().map(str::to_owned)));
    let Some(kind) = kind else {
        return view! { <h1 tabindex="-1">{text(said::NO_SUCH_SHEET)}</h1><p>{text(said::NO_SUCH_SHEET_HELP)}</p> }
            .into_any();
    };
    let Some(sheet) = kind.as_deref().and_then(sheet::find) else {
        return unknown(desk, id);
    };
    let place = Place::Sheet(id.to_owned());
    let result = result_of(desk, id);
    let style = Memo::new(move |_| desk.project.with(Project::style));
    let width = width_of_results();
    let faults = {
        let place = place.clone();
        Memo::new(move |_| {
            desk.evaluation.with(|all| {
                faults_by_path(all, &place)
                    .into_iter()
                    .map(|(path, message)| (path.to_owned(), message.to_owned()))
                    .collect()
            })
        })
    };
    let found = shown("found", move |html| {
        with_report(result, |report| match report {
            Some(report) => {
                report::figures(html, report);
                report::remarks(html, report::warnings(report).take(WARNINGS));
                if let Some(first) = report.drawings.first() {
                    let (width, higher) = first_width(report, first, width.get());
                    html.raw(if higher { "<div class=\"peek\">" } else { "<div>" });
                    push_drawing(html, first, width, 0);
                    html.raw("</div>");
                }
                report::hazard(html, report);
            }
            None => to_mend(html, faults),
        });
    });
    let part = move |head: fn(&Report, Style) -> Option<Msg>, write: Write| {
        folded(
            Memo::new(move |_| {
                with_report(result, |report| Some(style.get().say(head(report?, style.get())?)))
            }),
            Box::new(move |html| {
                with_report(result, |report| {
                    if let Some(report) = report {
                        write(html, report, style.get(), width.get());
                    }
                });
            }),
        )
    };

    let more_warnings = part(
        |report, _| {
            let count =
                report::warnings(report).count().checked_sub(WARNINGS).filter(|more| *more > 0);
            Some(said::MoreWarnings { count: count? }.into())
        },
        |html, report, _, _| report::remarks(html, report::warnings(report).skip(WARNINGS)),
    );
    let marks = part(
        |report, _| Some(said::MarksOf { count: some(report.marks.len())? }.into()),
        |html, report, style, _| report::marks(html, report, style),
    );
    let notes = part(
        |report, _| Some(said::Notes { count: some(report::notes(report).count())? }.into()),
        |html, report, _, _| report::remarks(html, report::notes(report)),
    );
    let drawings = folded(
        Memo::new(move |_| {
            with_report(result, |report| {
                let (whole, more) = more_drawings(report?, width.get());
                let count = some(more.len())?;
                Some(match whole {
                    true => say(said::DrawingsWhole { count }),
                    false => say(said::MoreDrawings { count }),
                })
            })
        }),
        Box::new(move |html| {
            with_report(result, |report| {
                if let Some(report) = report {
                    let (_, more) = more_drawings(report, width.get());
                    report::drawings(html, more, width.get(), 1);
                }
            });
        }),
    );
    let buy = part(
        |report, _| Some(said::ToBuy { count: some(report.buy.len())? }.into()),
        |html, report, _, _| report::buy(html, report),
    );
    let cut = part(
        |report, _| Some(said::ToCut { count: some(report.cut.len())? }.into()),
        |html, report, style, _| {
            report.cut.iter().for_each(|line| report::cut_line(html, line, style))
        },
    );
    let cautions = part(
        |report, _| Some(said::TakeCare { count: some(report.cautions.len())? }.into()),
        |html, report, _, _| {
            html.raw("<section class=\"cautions\">");
            report::caution_list(html, report);
            html.raw("</section>");
        },
    );
    let working = part(
        |report, _| (!report.working.is_empty()).then(|| said::WORKING.into()),
        |html, report, _, _| {
            html.raw("<div class=\"working\"><ol>");
            report::working(html, report);
            html.raw("</ol></div>");
        },
    );
    // A few have a line each; many stand behind one.
    let tables = shown("part", move |html| {
        with_report(result, |report| {
            for table in report
                .filter(|report| report.tables.len() <= FEW_TABLES)
                .map_or(&[][..], |report| &report.tables)
            {
                html.raw("<details class=\"part-fold\"><summary>");
                html.text(&table.title);
                html.raw("</summary>");
                report::table(html, table);
                html.raw("</details>");
            }
        });
    });
    let all_tables = part(
        |report, _| {
            let count = Some(report.tables.len()).filter(|count| *count > FEW_TABLES)?;
            Some(said::AllTables { count }.into())
        },
        |html, report, _, _| report.tables.iter().for_each(|table| report::table(html, table)),
    );
    let address = {
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        Route::Templates(project, id.to_owned()).hash()
    };
    let bench = {
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        Route::Bench(project, id.to_owned()).hash()
    };
    let bench = shown("part", move |html| {
        with_report(result, |report| {
            if report.is_some_and(|report| !report.marks.is_empty() || !report.tasks.is_empty()) {
                html.link("button main wide", &bench, text(said::AT_THE_BENCH));
            }
        });
    });
    let templates = shown("part", move |html| {
        with_report(result, |report| {
            if report.is_some_and(|report| !report.templates.is_empty()) {
                html.link("button wide", &address, text(said::TEMPLATES));
            }
        });
    });
    let sources = folded(
        Memo::new(move |_| Some(text(said::SOURCES).to_owned())),
        Box::new(move |html| {
            html.raw("<ul class=\"listed cited\">");
            for source in sheet.sources {
                html.tag("li", "", &source.say(words()));
            }
            html.raw("</ul>");
        }),
    );
    let what_if = super::whatif::what_if(desk, id, sheet);
    // A field that does not stand on the page is asked for.
    let wanted = RwSignal::new(String::new());
    let jump = move |event| {
        let Some((what, field)) = asked(&event) else { return };
        if what != "show" {
            return;
        }
        if document().get_element_by_id(&field).is_some() {
            super::show(&field);
        } else {
            wanted.set(field);
        }
    };
    let solved = Memo::new(move |_| with_report(result, |report| report.is_some()));
    view! {
        {heading(desk, id)}
        <p class="purpose" class:hidden=move || solved.get()>{sheet.purpose.say(words())}</p>
        {super::offers::behind(desk, id)}
        {example(desk, id)}
        <div class="sheet" class:unsolved=move || !solved.get()>
            <section class="results first" id="results" tabindex="-1" aria-label=text(said::ANSWERS) on:click=jump>
                {found}
                {more_warnings}
            </section>
            <section class="inputs" aria-label=text(said::MEASUREMENTS)>{inputs(desk, place, sheet, wanted)}</section>
            <section class="results rest" on:click=jump>
                {bench}
                {marks}
                {super::checks::check_lists(desk, id, result)}
                {drawings}
                {tables}
                {all_tables}
                {notes}
                {cut}
                {buy}
                {what_if}
                {super::offers::offers(desk, id, result)}
                {templates}
                {cautions}
                {working}
                {sources}
                {rename(desk, id, sheet.title.say(words()))}
            </section>
        </div>
        {headline_bar(result, faults)}
        {foot(desk, id)}
    }
    .into_any()
}

/// So many tables have a line of their own.
const FEW_TABLES: usize = 3;
/// So many warnings stand beside the answer; the others behind a line.
const WARNINGS: usize = 1;
/// The drawing that is seen together with the answer is at most so high; with more than two answers or a warning above it, less. [px]
const IN_SIGHT: f64 = 300.0;
const IN_SIGHT_BELOW_MANY: f64 = 255.0;
const IN_SIGHT_WARNED: f64 = 220.0;

/// How wide the first drawing is, for a page of this width, and whether only its upper part is in sight. [px]
fn first_width(report: &Report, first: &Drawing, width: f64) -> (f64, bool) {
    let most = match () {
        () if report::warnings(report).next().is_some() => IN_SIGHT_WARNED,
        () if report.answers.len() > 2 => IN_SIGHT_BELOW_MANY,
        () => IN_SIGHT,
    };
    width_in_sight(first, width, most)
}

/// The drawings behind the line: all but the first, which is among them only where it stands above made smaller or cut short. Whether it is.
fn more_drawings(report: &Report, width: f64) -> (bool, &[Drawing]) {
    let Some((first, more)) = report.drawings.split_first() else { return (false, &[]) };
    let (seen, higher) = first_width(report, first, width);
    match higher || seen < width_in_sight(first, width, f64::INFINITY).0 {
        true => (true, &report.drawings),
        false => (false, more),
    }
}

/// A count, where there is something to count.
fn some(count: usize) -> Option<usize> {
    (count > 0).then_some(count)
}

/// Writes a part of a report for a page of this width. [px]
type Write = fn(&mut Html, &Report, Style, f64);

/// A part behind a line that says what it is; it is not there where there is nothing to say. Written only while it stands open.
pub(super) fn folded(head: Memo<Option<String>>, write: Box<dyn Fn(&mut Html) + Send>) -> AnyView {
    folded_unless(false, head, write)
}

/// As `folded`, but open from the start where something in it is under way.
pub(super) fn folded_unless(
    under_way: bool,
    head: Memo<Option<String>>,
    write: Box<dyn Fn(&mut Html) + Send>,
) -> AnyView {
    let open = RwSignal::new(under_way);
    let part = shown("part", move |html| {
        if open.get() {
            write(html);
        }
    });
    let toggled = move |event: leptos::ev::Event| {
        let at = event.current_target().and_then(|at| at.dyn_into::<web_sys::Element>().ok());
        open.set(at.is_some_and(|at| at.has_attribute("open")));
    };
    view! {
        <details class="part-fold" open=under_way class:hidden=move || head.with(Option::is_none) on:toggle=toggled>
            <summary>{move || head.get().unwrap_or_default()}</summary>
            {part}
        </details>
    }
    .into_any()
}

type Faults = Memo<BTreeMap<String, String>>;
pub(super) type Result = Memo<Option<Arc<SheetResult>>>;

fn result_of(desk: Desk, id: &str) -> Result {
    let id = id.to_owned();
    let find = move |_: Option<&Option<Arc<SheetResult>>>| {
        desk.evaluation.with(|all| {
            all.sheets.iter().find(|(known, _)| *known == id).map(|(_, result)| Arc::clone(result))
        })
    };
    Memo::new_with_compare(find, |before, now| pointer(before) != pointer(now))
}

/// Where a result lies: one that was taken over is the same.
fn pointer(result: Option<&Option<Arc<SheetResult>>>) -> Option<*const SheetResult> {
    result?.as_ref().map(Arc::as_ptr)
}

pub(super) fn with_report<T>(result: Result, show: impl FnOnce(Option<&Report>) -> T) -> T {
    result.with(|result| show(result.as_ref().and_then(|result| result.as_ref().as_ref().ok())))
}

/// What is missing or wrong, each a way to its field.
fn to_mend(html: &mut Html, faults: Faults) {
    html.raw("<div class=\"to-mend\">");
    html.tag("h2", "", text(said::STILL_NEEDED));
    html.raw("<ul>");
    faults.with(|faults| {
        for (path, message) in faults {
            html.raw("<li>");
            html.button("plain", "show", &element_id(path), message);
            html.raw("</li>");
        }
    });
    html.raw("</ul></div>");
}

/// The first answer, always in sight while typing.
fn headline_bar(result: Result, faults: Faults) -> AnyView {
    let write = move || {
        let mut html = Html::default();
        with_report(result, |report| match report.and_then(|report| report.answers.first()) {
            Some(answer) => {
                html.tag("span", "", &answer.label);
                html.raw(" ");
                html.tag("strong", "", &answer.text);
            }
            None => {
                let count = faults.with(BTreeMap::len);
                html.tag("span", "", &say(said::InputsToFill { count }));
            }
        });
        html.finish()
    };
    view! {
        <button class="headline typing" aria-live="polite" on:click=move |_| super::show("results") inner_html=write></button>
    }
    .into_any()
}

fn title_memo(desk: Desk, id: &str) -> Memo<String> {
    let id = id.to_owned();
    Memo::new(move |_| {
        desk.project.with(|project| {
            project.sheet(&id).map_or_else(String::new, |sheet| super::title_of(&sheet))
        })
    })
}

fn heading(desk: Desk, id: &str) -> AnyView {
    view! { <h1 tabindex="-1">{title_memo(desk, id)}</h1> }.into_any()
}

/// The sheet's title, to be changed.
fn rename(desk: Desk, id: &str, kind_title: &'static str) -> AnyView {
    let shown = title_memo(desk, id);
    let id = id.to_owned();
    view! {
        <details class="rename part-fold">
            <summary>{text(said::RENAME)}</summary>
            <label for="sheet-title">{kind_title}</label>
            <input
                id="sheet-title"
                type="text"
                autocomplete="off"
                prop:value=shown
                on:change=move |event| {
                    let title = event_target_value(&event);
                    desk.change(|project| project.set_sheet_title(&id, &title));
                }
            />
        </details>
    }
    .into_any()
}

/// What the example would give, one tap away for as long as nothing is filled in.
fn example(desk: Desk, id: &str) -> AnyView {
    let id = id.to_owned();
    let empty = {
        let id = id.clone();
        Memo::new(move |_| {
            desk.project.with(|project| {
                let inputs = project.sheet(&id).map(|sheet| sheet.inputs().as_object());
                inputs.is_some_and(|inputs| inputs.is_none_or(serde_json::Map::is_empty))
            })
        })
    };
    let fill = move |_| desk.change(|project| project.fill_example(&id));
    view! {
        <div class="example" class:hidden=move || !empty.get()>
            <p>{text(said::EMPTY)}</p>
            <button class="main" data-fill="" on:click=fill>{text(said::SEE_EXAMPLE)}</button>
        </div>
    }
    .into_any()
}

fn foot(desk: Desk, id: &str) -> AnyView {
    let id = id.to_owned();
    let fill = {
        let id = id.clone();
        move |_| desk.change(|project| project.fill_example(&id))
    };
    let remove = move |_| {
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        go(&Route::Project(project));
        desk.change(|project| project.remove_sheet(&id));
    };
    view! {
        <div class="foot">
            <button data-fill="" on:click=fill>{text(said::FILL_EXAMPLE)}</button>
            <button class="danger" on:click=remove>{text(said::REMOVE_SHEET)}</button>
        </div>
    }
    .into_any()
}

/// A sheet that this version does not know: kept, and shown as what it is.
fn unknown(desk: Desk, id: &str) -> AnyView {
    let saved = desk.project.with_untracked(|project| {
        project.sheet(id).map_or_else(String::new, |sheet| format!("{:#}", sheet.inputs()))
    });
    view! {
        <h1 tabindex="-1">{text(said::OTHER_VERSION)}</h1>
        <p>{text(said::OTHER_VERSION_HELP)}</p>
        <pre>{saved}</pre>
    }
    .into_any()
}
