//! The inputs of a sheet: its form, and for a few kinds an editor of their own in place of a part
//! of it. The only place that knows a kind by its name.

use calc::project::Place;
use calc::sheet::Sheet;
use calc::words::{Id, app_form};
use leptos::prelude::*;

use super::form::form;
use super::tree::tree;
use crate::desk::Desk;
use crate::words::text;

/// An editor that stands for some inputs of a kind, one after another among its asks.
struct Editor {
    kind: &'static str,
    /// What it is called beside the plain form.
    name: Id,
    /// The first of the inputs, and how many they are.
    first: &'static str,
    count: usize,
    view: fn(Desk, Place, &'static Sheet, RwSignal<String>) -> AnyView,
}

static EDITORS: [Editor; 1] =
    [Editor { kind: "circuit", name: app_form::WAY_TREE, first: "runs", count: 3, view: tree }];

/// The inputs of a sheet. The id of a field that is to be shown, but does not stand on the page, is
/// put into `wanted`.
pub fn inputs(
    desk: Desk,
    place: Place,
    sheet: &'static Sheet,
    wanted: RwSignal<String>,
) -> AnyView {
    let editor = EDITORS.iter().find(|editor| editor.kind == sheet.kind);
    let Some(editor) = editor else { return form(desk, place, sheet.asks) };
    let first = sheet.asks.iter().position(|ask| ask.key == editor.first).unwrap_or(0);
    let (before, rest) = sheet.asks.split_at(first);
    let after = rest.get(editor.count..).unwrap_or_default();
    let plain = RwSignal::new(false);
    let choice = move |name: &'static str, is_plain: bool| {
        view! {
            <button
                type="button"
                aria-pressed=move || if plain.get() == is_plain { "true" } else { "false" }
                on:click=move |_| plain.set(is_plain)
            >{name}</button>
        }
    };
    view! {
        <div class="choices" role="group" aria-label=text(app_form::WAYS)>
            {choice(text(editor.name), false)}
            {choice(text(app_form::WAY_FORM), true)}
        </div>
        {move || {
            let place = place.clone();
            if plain.get() {
                return form(desk, place, sheet.asks);
            }
            view! {
                {form(desk, place.clone(), before)}
                {(editor.view)(desk, place.clone(), sheet, wanted)}
                {form(desk, place, after)}
            }
            .into_any()
        }}
    }
    .into_any()
}
