//! The page of one sheet, whatever its trade: its inputs, and what follows from them.

use std::collections::BTreeMap;
use std::sync::Arc;

use calc::project::{Place, Project, SheetResult};
use calc::quantity::Style;
use calc::report::Report;
use calc::sheet;
use leptos::prelude::*;

use super::editors::inputs;
use super::html::{Html, asked, shown};
use super::page::{element_id, faults_by_path, width_of_results};
use super::report;
use crate::desk::Desk;
use crate::route::{Route, go};
use crate::words::words;

/// The page of the sheet with this id.
pub fn sheet_page(desk: Desk, id: &str) -> AnyView {
    let kind = desk
        .project
        .with_untracked(|project| project.sheet(id).map(|sheet| sheet.kind().map(str::to_owned)));
    let Some(kind) = kind else {
        return view! { <h1 tabindex="-1">"No such sheet"</h1><p>"It was taken out, or the address is wrong."</p> }
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
            Some(report) => report::answers(html, report),
            None => to_mend(html, faults),
        });
    });
    // Parts of their own: what a change leaves as it was is not written anew.
    let part = move |write: fn(&mut Html, &Report, Style, f64)| {
        shown("part", move |html| {
            with_report(result, |report| {
                if let Some(report) = report {
                    write(html, report, style.get(), width.get());
                }
            });
        })
    };
    let drawings = part(|html, report, _, width| report::drawings(html, report, width, 0));
    let address = {
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        Route::Templates(project, id.to_owned()).hash()
    };
    let templates = shown("part", move |html| {
        with_report(result, |report| {
            if report.is_some_and(|report| !report.templates.is_empty()) {
                html.link("button wide", &address, "Templates in true size, to print");
            }
        });
    });
    let marks = part(|html, report, style, _| report::marks_and_tables(html, report, style));
    let rest = part(|html, report, style, _| report::cautions_and_lists(html, report, style));
    let working = shown("steps", move |html| {
        with_report(result, |report| {
            if let Some(report) = report {
                html.raw("<ol>");
                report::working(html, report);
                html.raw("</ol>");
            }
        });
    });
    let sources = shown("listed", move |html| {
        html.raw("<ul>");
        for source in sheet.sources {
            html.tag("li", "", &source.say(words()));
        }
        html.raw("</ul>");
    });
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
    view! {
        {title(desk, id, sheet.title.say(words()))}
        <p class="purpose">{sheet.purpose.say(words())}</p>
        {super::offers::behind(desk, id)}
        {example(desk, id)}
        <div class="sheet">
            <section class="inputs" aria-label="Measurements">{inputs(desk, place, sheet, wanted)}</section>
            <section class="results" id="results" tabindex="-1" aria-label="Answers" on:click=jump>
                {found}
                {super::offers::offers(desk, id, result)}
                {drawings}
                {templates}
                {marks}
                {what_if}
                {super::checks::check_lists(desk, id, result)}
                {rest}
                <details class="working"><summary>"How it is worked out"</summary>{working}</details>
                <details class="sources"><summary>"Sources"</summary>{sources}</details>
            </section>
        </div>
        {headline_bar(result, faults)}
        {foot(desk, id)}
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

pub(super) fn with_report(result: Result, show: impl FnOnce(Option<&Report>)) {
    result.with(|result| {
        show(result.as_ref().and_then(|result| result.as_ref().as_ref().ok()));
    });
}

/// What is missing or wrong, each a way to its field.
fn to_mend(html: &mut Html, faults: Faults) {
    html.raw("<div class=\"to-mend\"><h2>Still needed for an answer</h2><ul>");
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
                let things = if count == 1 { "thing" } else { "things" };
                html.tag("span", "", &format!("{count} {things} to fill in or mend"));
            }
        });
        html.finish()
    };
    view! {
        <button class="headline" aria-live="polite" on:click=move |_| super::show("results") inner_html=write></button>
    }
    .into_any()
}

/// The sheet's title, to be changed in place.
fn title(desk: Desk, id: &str, kind_title: &'static str) -> AnyView {
    let shown = {
        let id = id.to_owned();
        Memo::new(move |_| {
            desk.project.with(|project| {
                project.sheet(&id).map_or_else(String::new, |sheet| super::title_of(&sheet))
            })
        })
    };
    let id = id.to_owned();
    view! {
        <h1 tabindex="-1">{shown}</h1>
        <details class="rename">
            <summary>{kind_title}" · rename"</summary>
            <label for="sheet-title">"Name of this sheet"</label>
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
            <p>"Nothing is filled in yet."</p>
            <button class="main" data-fill="" on:click=fill>"See it with the example"</button>
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
            <button data-fill="" on:click=fill>"Fill in the example (undo takes it back)"</button>
            <button class="danger" on:click=remove>"Take this sheet out (undo takes it back)"</button>
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
        <h1 tabindex="-1">"A sheet made by another version"</h1>
        <p>"This version does not know this kind of sheet. It is kept as it is, and saved with the project."</p>
        <pre>{saved}</pre>
    }
    .into_any()
}
