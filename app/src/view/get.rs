//! What a link or a code brings: taken in beside what is here, or kept until the other codes have come.

use leptos::prelude::*;

use super::html::{Html, asked, shown};
use crate::route::{Part, Route, go_instead};
use crate::storage::Store;
use crate::transfer::{self, Received};

/// What is to be said.
#[derive(Clone)]
enum Said {
    Reading,
    Waiting { number: usize, missing: Vec<usize>, count: usize },
    Known(String),
    Refused(String),
    Forgotten,
}

/// The page.
pub fn get_page(store: Store, data: String) -> AnyView {
    let said = RwSignal::new(Said::Reading);
    leptos::task::spawn_local(async move {
        match transfer::receive(store, &data).await {
            Ok(Received::Kept { id, beside: None }) => go_instead(&Route::Project(id)),
            Ok(Received::Kept { id, .. }) => go_instead(&Route::Part(id, Part::Compare)),
            Ok(Received::Known(id)) => say(said, Said::Known(id)),
            Ok(Received::Waiting { number, missing, count }) => {
                say(said, Said::Waiting { number, missing, count });
            }
            Err(words) => say(said, Said::Refused(words)),
        }
    });
    let page = shown("get", move |html| said.with(|said| write(html, store, said)));
    let act = move |event: leptos::ev::MouseEvent| {
        if asked(&event).is_some() {
            for set in store.part_sets() {
                store.forget_parts(&set.id, set.count);
            }
            said.set(Said::Forgotten);
        }
    };
    view! {
        <header class="top">
            <a class="back" href="#/"><span aria-hidden="true">"‹ "</span><span class="where">"All projects"</span></a>
            {super::menu::theme_button(store)}
        </header>
        <main id="main" on:click=act>{page}</main>
    }
    .into_any()
}

fn say(said: RwSignal<Said>, what: Said) {
    // Whoever left the page before it was read is told nothing.
    let _ = said.try_set(what);
    super::keys::focus_heading();
}

fn write(html: &mut Html, store: Store, said: &Said) {
    let heading = match said {
        Said::Waiting { number, count, .. } => format!("Code {number} of {count} is here"),
        Said::Known(_) => "You have this project already".to_owned(),
        Said::Refused(_) => "This link cannot be taken in".to_owned(),
        Said::Forgotten => "The codes are forgotten".to_owned(),
        Said::Reading => "Taking it in…".to_owned(),
    };
    html.raw("<h1 tabindex=\"-1\">");
    html.text(&heading);
    html.raw("</h1>");
    match said {
        Said::Waiting { missing, .. } => waiting(html, store, missing),
        Said::Known(id) => {
            html.tag("p", "", "Nothing differs, so nothing was added.");
            html.link("button", &Route::Project(id.clone()).hash(), "Open it");
        }
        Said::Refused(words) => {
            html.raw("<p role=\"alert\">");
            html.text(words);
            html.raw("</p>");
        }
        Said::Forgotten => html.tag("p", "", "Scan all of a sequence to take a project in."),
        Said::Reading => {}
    }
}

fn waiting(html: &mut Html, store: Store, missing: &[usize]) {
    let numbers: Vec<String> = missing.iter().map(ToString::to_string).collect();
    html.raw("<p class=\"missing-codes\">Still to come: <strong>");
    html.text(&numbers.join(", "));
    html.raw("</strong>.</p>");
    html.tag(
        "p",
        "help",
        "Scan them with the camera and open each link, in any order. This device keeps what has come until all are here.",
    );
    for other in store.part_sets().iter().skip(1) {
        let words = format!(
            "Another sequence waits too: {} of its {} codes are here. It stays apart from this one.",
            other.parts.len(),
            other.count
        );
        html.tag("p", "note", &words);
    }
    html.raw("<p>");
    html.button("danger", "forget", "", "Forget the codes that wait");
    html.raw("</p>");
}
