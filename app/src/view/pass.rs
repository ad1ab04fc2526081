//! Passing a project on with no server: as a file, through the system's share sheet, as a link, as QR codes.

use std::time::Duration;

use leptos::prelude::*;

use super::html::shown;
use crate::desk::Desk;
use crate::transfer;

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
            }>"Share…"</button>
        }
    });
    view! {
        <h1 tabindex="-1">"Pass it on"</h1>
        <p class="purpose">
            "The whole project goes along: the body, every sheet, the lists. It goes from this device to the other; no server keeps it. Who receives it gets a copy, and nothing that they have is overwritten."
        </p>
        <h2>"As a file"</h2>
        <p class="links">
            <button data-save="" on:click=move |_| {
                let (name, text) = file();
                transfer::download(&name, &text);
            }>"Save to a file"</button>
            {share}
        </p>
        {move || match packed.get() {
            Packed::NotYet => view! { <p role="status">"Packing…"</p> }.into_any(),
            Packed::Cannot => view! {
                <p role="status">"This browser cannot pack a project into a link or a code. Save it to a file and send that."</p>
            }.into_any(),
            Packed::Data(data) => view! { {link(&data)}{codes(&data)} }.into_any(),
        }}
    }
    .into_any()
}

fn link(data: &str) -> AnyView {
    if data.len() > transfer::MAX_LINK_CHARS {
        return view! {
            <h2>"As a link"</h2>
            <p>"This project is too large for a link. Send the file."</p>
        }
        .into_any();
    }
    let link = transfer::whole_link(&page_address(), data);
    let said = RwSignal::new("");
    let length = link.len();
    let note = if length > LONG_LINK {
        format!(
            "{length} characters. Some programs cut links as long as this; a file or the codes always work."
        )
    } else {
        format!("{length} characters.")
    };
    let to_copy = link.clone();
    let select_all =
        |event: leptos::ev::FocusEvent| event_target::<web_sys::HtmlInputElement>(&event).select();
    view! {
        <h2>"As a link"</h2>
        <p>"The project is inside the link itself, after the # sign: that part stays between the two of you, no host gets to see it."</p>
        <div class="field">
            <label for="link">"Link"</label>
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
                        "Copied."
                    } else {
                        "This browser does not let the page copy. Tap the link above and copy what is selected."
                    });
                });
            }>"Copy the link"</button>
            " "
            <span class="said" role="status">{said}</span>
        </p>
    }
    .into_any()
}

fn codes(data: &str) -> AnyView {
    let Some(links) = transfer::code_links(&page_address(), data) else {
        return view! {
            <h2>"As QR codes"</h2>
            <p>"This project is too large for codes. Send the file or the link."</p>
        }
        .into_any();
    };
    let count = links.len();
    let at = RwSignal::new(0_usize);
    let code = shown("codes", move |html| {
        let at = at.get();
        let label =
            if count == 1 { "The code".to_owned() } else { format!("Code {} of {count}", at + 1) };
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
    let words = if count == 1 {
        "Point the other phone's camera at the code and open the link that it shows."
    } else {
        "Point the other phone's camera at each code and open the link that it shows. The order is free, and a code read twice does no harm; the project opens when all have come."
    };
    view! {
        <h2>"As QR codes"</h2>
        <p>{words}</p>
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
            <button data-step="back" on:click=move |_| { stop(); step(count - 1) }>"‹ Code before"</button>
            <button data-step="next" on:click=move |_| { stop(); step(1) }>"Next code ›"</button>
            <button data-step="auto" aria-pressed=move || timer.get().is_some().to_string() on:click=toggle>
                "Show one after the other"
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
