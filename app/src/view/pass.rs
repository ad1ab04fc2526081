//! Passing a project on with no server: as a file, through the system's share sheet, as a link, as QR codes.

use std::time::Duration;

use leptos::prelude::*;

use super::html::shown;
use crate::desk::Desk;
use crate::transfer;
use crate::words::{say, text};
use calc::words::{app_common, app_pass as words};

/// How long a code stays when they are shown one after the other: time to aim and to open the link.
const EACH: Duration = Duration::from_secs(6);

/// From this length on some programs cut a link. [characters]
const LONG_LINK: usize = 2000;

/// What the project is packed to.
#[derive(Clone, PartialEq)]
enum Packed {
    NotYet,
    Cannot,
    Data(String),
}

/// The page.
pub fn pass_page(desk: Desk) -> AnyView {
    let packed = RwSignal::new(Packed::NotYet);
    Effect::new(move |_| {
        let project = desk.project.get();
        leptos::task::spawn_local(async move {
            let data = transfer::data_of(&project).await;
            // What was packed before a later change came is not shown.
            if desk.project.try_with_untracked(|now| *now == project) == Some(true) {
                let _ = packed.try_set(data.map_or(Packed::Cannot, Packed::Data));
            }
        });
    });
    let file = move || desk.project.with_untracked(transfer::export_one);
    let share = transfer::can_share().then(|| {
        view! {
            <button data-share="" on:click=move |_| {
                let (name, text) = file();
                transfer::share(&name, &text);
            }>{text(words::SHARE_SYSTEM)}</button>
        }
    });
    view! {
        <h1 tabindex="-1">{text(words::SHARE)}</h1>
        <p class="purpose">
            {text(words::SHARE_HELP)}
        </p>
        <h2>{text(words::AS_FILE)}</h2>
        <p class="links">
            <button data-save="" on:click=move |_| {
                let (name, text) = file();
                transfer::download(&name, &text);
            }>{text(app_common::SAVE_TO_FILE)}</button>
            {share}
        </p>
        {move || match packed.get() {
            Packed::NotYet => view! { <p role="status">{text(words::PACKING)}</p> }.into_any(),
            Packed::Cannot => view! {
                <p role="status">{text(words::CANNOT_PACK)}</p>
            }.into_any(),
            Packed::Data(data) => view! { {link(&data)}{codes(&data)} }.into_any(),
        }}
    }
    .into_any()
}

fn link(data: &str) -> AnyView {
    if data.len() > transfer::MAX_LINK_CHARS {
        return view! {
            <h2>{text(words::AS_LINK)}</h2>
            <p>{text(words::LINK_TOO_LARGE)}</p>
        }
        .into_any();
    }
    let link = transfer::whole_link(&page_address(), data);
    let said = RwSignal::new("");
    let length = link.len();
    let note = if length > LONG_LINK {
        say(words::CharactersMany { count: length })
    } else {
        say(words::Characters { count: length })
    };
    let to_copy = link.clone();
    let select_all =
        |event: leptos::ev::FocusEvent| event_target::<web_sys::HtmlInputElement>(&event).select();
    view! {
        <h2>{text(words::AS_LINK)}</h2>
        <p>{text(words::LINK_HELP)}</p>
        <div class="field">
            <label for="link">{text(words::LINK)}</label>
            <input
                id="link"
                type="text"
                readonly
                prop:value=link
                on:focus=select_all
            />
            <p class="help">{note}</p>
        </div>
        <p>
            <button data-copy="" on:click=move |_| {
                transfer::copy(&to_copy, move |copied| {
                    let _ = said.try_set(if copied {
                        text(words::COPIED)
                    } else {
                        text(words::CANNOT_COPY)
                    });
                });
            }>{text(words::COPY_LINK)}</button>
            " "
            <span class="said" role="status">{said}</span>
        </p>
    }
    .into_any()
}

fn codes(data: &str) -> AnyView {
    let Some(links) = transfer::code_links(&page_address(), data) else {
        return view! {
            <h2>{text(words::AS_CODES)}</h2>
            <p>{text(words::CODES_TOO_LARGE)}</p>
        }
        .into_any();
    };
    let count = links.len();
    let at = RwSignal::new(0_usize);
    let code = shown("codes", move |html| {
        let at = at.get();
        let label = if count == 1 {
            say(words::CODE)
        } else {
            say(words::CodeOf { number: at + 1, count })
        };
        if let Some(link) = links.get(at) {
            html.raw("<figure data-link=\"");
            html.text(link);
            html.raw("\">");
            html.raw(&transfer::drawn(link, &label));
            html.raw("<figcaption aria-live=\"polite\">");
            html.text(&label);
            html.raw("</figcaption></figure>");
        }
    });
    let help = text(if count == 1 { words::CODE_HELP } else { words::CODES_HELP });
    view! {
        <h2>{text(words::AS_CODES)}</h2>
        <p>{help}</p>
        {code}
        {(count > 1).then(|| steps(at, count))}
    }
    .into_any()
}

/// From code to code: by hand, or one after the other when asked.
fn steps(at: RwSignal<usize>, count: usize) -> AnyView {
    let timer = RwSignal::new(None::<IntervalHandle>);
    let stop = move || {
        if let Some(handle) = timer.try_get_untracked().flatten() {
            handle.clear();
            let _ = timer.try_set(None);
        }
    };
    on_cleanup(stop);
    let step = move |by: usize| at.update(|at| *at = (*at + by) % count);
    let toggle = move |_| {
        if timer.get_untracked().is_some() {
            stop();
        } else {
            timer.set(set_interval_with_handle(move || step(1), EACH).ok());
        }
    };
    view! {
        <p class="links">
            <button data-step="back" on:click=move |_| { stop(); step(count - 1) }>{text(words::CODE_BEFORE)}</button>
            <button data-step="next" on:click=move |_| { stop(); step(1) }>{text(words::CODE_NEXT)}</button>
            <button data-step="auto" aria-pressed=move || timer.get().is_some().to_string() on:click=toggle>
                {text(words::CODE_AUTO)}
            </button>
        </p>
    }
    .into_any()
}

/// The address of the app, without what names a page of it.
fn page_address() -> String {
    let whole = window().location().href().unwrap_or_default();
    whole.split('#').next().unwrap_or_default().to_owned()
}
