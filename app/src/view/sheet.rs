//! The page of one sheet, whatever its trade: its inputs, and what follows from them.

use calc::project::{Place, SheetResult};
use calc::sheet;
use leptos::prelude::*;

use super::asks::asks;
use super::page::{Page, element_id};
use super::report;
use crate::desk::Desk;
use crate::route::{Route, go};

/// The page of the sheet with this id.
pub fn sheet_page(desk: Desk, id: &str) -> AnyView {
    let entry = desk.project.with_untracked(|project| {
        project.sheet(id).map(|sheet| (sheet.kind().map(str::to_owned), sheet.title().to_owned()))
    });
    let Some((kind, _)) = entry else {
        return view! { <h1 tabindex="-1">"No such sheet"</h1><p>"It was taken out, or the address is wrong."</p> }
            .into_any();
    };
    let Some(sheet) = kind.as_deref().and_then(sheet::find) else {
        return unknown(desk, id);
    };
    let place = Place::Sheet(id.to_owned());
    let page = Page::new(desk, place);
    let result = {
        let id = id.to_owned();
        Memo::new(move |_| desk.evaluation.with(|all| all.sheet(&id).cloned()))
    };
    let style = Memo::new(move |_| desk.project.with(calc::project::Project::style));
    let faults = page.faults();
    let sources = sheet
        .sources
        .iter()
        .map(|source| view! { <li>{source.to_string()}</li> })
        .collect_view();
    let inputs = asks(&page, sheet.asks, "");
    view! {
        {title(desk, id, sheet.title)}
        <p class="purpose">{sheet.purpose}</p>
        <div class="sheet">
            <section class="inputs" aria-label="Measurements">
                {inputs}
            </section>
            <section class="results" id="results" aria-label="Answers" aria-live="polite">
                {move || match result.get() {
                    Some(Ok(report)) => view! {
                        {report::answers(&report)}
                        {report::details(&report, style.get())}
                    }.into_any(),
                    _ => to_mend(faults).into_any(),
                }}
                <details class="sources"><summary>"Sources"</summary><ul>{sources}</ul></details>
            </section>
        </div>
        {headline_bar(result, faults)}
        {foot(desk, id)}
    }
    .into_any()
}

/// What is missing or wrong, each a link to its field.
fn to_mend(faults: Memo<std::collections::BTreeMap<String, String>>) -> impl IntoView {
    let lines = move || {
        faults.with(|faults| {
            faults
                .iter()
                .map(|(path, message)| {
                    let id = element_id(path);
                    let jump = move |event: leptos::ev::MouseEvent| {
                        event.prevent_default();
                        super::show(&id);
                    };
                    view! { <li><button class="plain" on:click=jump>{message.clone()}</button></li> }
                })
                .collect_view()
        })
    };
    view! {
        <div class="to-mend">
            <h2>"Still needed for an answer"</h2>
            <ul>{lines}</ul>
        </div>
    }
}

/// The first answer, always in sight while typing.
fn headline_bar(
    result: Memo<Option<SheetResult>>,
    faults: Memo<std::collections::BTreeMap<String, String>>,
) -> impl IntoView {
    let words = move || match result.get() {
        Some(Ok(report)) => report.answers.first().map_or_else(
            || view! { <span>"—"</span> }.into_any(),
            |answer| {
                view! { <span>{answer.label.clone()}</span>" "<strong>{answer.text.clone()}</strong> }
                    .into_any()
            },
        ),
        _ => {
            let count = faults.with(std::collections::BTreeMap::len);
            let words = if count == 1 { " thing to fill in or mend" } else { " things to fill in or mend" };
            view! { <span>{count}{words}</span> }.into_any()
        }
    };
    view! {
        <button class="headline" on:click=move |_| super::show("results")>{words}</button>
    }
}

/// The sheet's title, to be changed in place.
fn title(desk: Desk, id: &str, kind_title: &'static str) -> impl IntoView + use<> {
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
}

fn foot(desk: Desk, id: &str) -> impl IntoView + use<> {
    let id = id.to_owned();
    let place = Place::Sheet(id.clone());
    let remove = move |_| {
        let project = desk.project.with_untracked(|project| project.id().to_owned());
        go(&Route::Project(project));
        desk.change(|project| project.remove_sheet(&id));
    };
    let fill = move |_| {
        let kind = desk.project.with_untracked(|project| match &place {
            Place::Sheet(id) => project.sheet(id).and_then(|sheet| sheet.kind().map(str::to_owned)),
            Place::Body => None,
        });
        let Some(sheet) = kind.as_deref().and_then(sheet::find) else { return };
        if let Ok(example) = serde_json::from_str(sheet.example) {
            desk.change(|project| project.set(&place, "", example));
        }
    };
    view! {
        <div class="foot">
            <button on:click=fill>"Fill in the example (undo takes it back)"</button>
            <button class="danger" on:click=remove>"Take this sheet out (undo takes it back)"</button>
        </div>
    }
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
