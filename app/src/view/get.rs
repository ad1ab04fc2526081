//! What a link or a code brings. It is asked first: nothing is kept that nobody wanted. Then it stands beside what is here.

use leptos::prelude::*;

use super::html::{Html, asked, shown};
use super::versions::size;
use crate::route::{Part, Route, go, go_instead};
use crate::storage::Store;
use crate::transfer::{self, Arrived, Offer};

/// What is to be said.
#[derive(Clone)]
enum Said {
    Reading,
    Arrived(Arrived),
    /// It could not be kept; says why.
    NoRoom(Offer, String),
    Refused(String),
    Forgotten,
}

/// The page.
pub fn get_page(store: Store, data: String) -> AnyView {
    let said = RwSignal::new(Said::Reading);
    let link = StoredValue::new(data);
    let look = move |keep_codes| {
        leptos::task::spawn_local(async move {
            let Some(data) = link.try_get_value() else { return };
            say(
                said,
                match transfer::look_at(store, &data, keep_codes).await {
                    Ok(arrived) => Said::Arrived(arrived),
                    Err(words) => Said::Refused(words),
                },
            );
        });
    };
    look(false);
    let page = shown("get", move |html| said.with(|said| write(html, store, said)));
    let act = move |event: leptos::ev::MouseEvent| {
        let Some((what, _)) = asked(&event) else { return };
        let offer = said.with_untracked(|said| match said {
            Said::Arrived(Arrived::Whole(offer)) | Said::NoRoom(offer, _) => Some(offer.clone()),
            _ => None,
        });
        match (what.as_str(), offer) {
            ("keep", Some(offer)) => match transfer::take_in(store, &offer) {
                Ok(taken) if taken.beside.is_some() => {
                    go_instead(&Route::Part(taken.id, Part::Compare));
                }
                Ok(taken) => go_instead(&Route::Project(taken.id)),
                Err(error) => say(said, Said::NoRoom(offer, error.to_string())),
            },
            ("save", Some(offer)) => {
                let (name, text) = transfer::export_one(&offer.project);
                transfer::download(&name, &text);
            }
            ("leave", offer) => {
                if let Some(offer) = offer {
                    transfer::leave(store, &offer);
                }
                go(&Route::Start);
            }
            ("keep-codes", _) => look(true),
            ("forget", _) => {
                for set in store.part_sets() {
                    store.forget_parts(&set.id, set.count);
                }
                say(said, Said::Forgotten);
            }
            _ => {}
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
        Said::Arrived(Arrived::Whole(offer)) | Said::NoRoom(offer, _) => {
            format!("Keep “{}”?", name_of(offer))
        }
        Said::Arrived(Arrived::FirstPart { number, count }) => {
            format!("Code {number} of {count}: keep it?")
        }
        Said::Arrived(Arrived::Waiting { number, count, .. }) => {
            format!("Code {number} of {count} is here")
        }
        Said::Arrived(Arrived::Known(_)) => "You have this project already".to_owned(),
        Said::Refused(_) => "This link cannot be taken in".to_owned(),
        Said::Forgotten => "The codes are forgotten".to_owned(),
        Said::Reading => "Reading it…".to_owned(),
    };
    html.raw("<h1 tabindex=\"-1\">");
    html.text(&heading);
    html.raw("</h1>");
    match said {
        Said::Arrived(Arrived::Whole(offer)) => offered(html, store, offer, ""),
        Said::NoRoom(offer, why) => offered(html, store, offer, why),
        Said::Arrived(Arrived::FirstPart { .. }) => {
            html.tag(
                "p",
                "",
                "It is a part of a project that comes in several codes. This device can keep them until all have come; then you are asked about the project itself. Nothing is kept yet.",
            );
            html.raw("<p class=\"links\">");
            html.button("main", "keep-codes", "", "Keep the codes until all are here");
            html.button("", "leave", "", "Do not keep it");
            html.raw("</p>");
        }
        Said::Arrived(Arrived::Waiting { missing, .. }) => waiting(html, store, missing),
        Said::Arrived(Arrived::Known(id)) => {
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

fn name_of(offer: &Offer) -> &str {
    match offer.project.name() {
        "" => "a project without a name",
        name => name,
    }
}

/// What came, what keeping it would take, and the choice.
fn offered(html: &mut Html, store: Store, offer: &Offer, why: &str) {
    let sheets = offer.project.sheets().count();
    let words = format!(
        "It came to you by a link or a code: {sheets} {}, {}.",
        if sheets == 1 { "sheet" } else { "sheets" },
        size(offer.bytes)
    );
    html.tag("p", "offered", &words);
    let used = store.room_used();
    let words = format!(
        "It would use {} of the room that the browser gives this page, of which {} is used now.",
        percent(offer.room),
        percent(used)
    );
    html.tag("p", "offered", &words);
    if store.keeps() && offer.room + used > 1.0 {
        html.tag(
            "p",
            "note warning",
            "That is more than is left. Make room first, or save it to a file.",
        );
    }
    if offer.beside {
        html.tag(
            "p",
            "note",
            "You have a project of the same origin. It stays as it is: this one would stand beside it, and you see what differs.",
        );
    }
    html.tag("p", "help", "Nothing of it is kept yet.");
    if !why.is_empty() {
        html.raw("<p role=\"alert\">");
        html.text(why);
        html.raw("</p>");
    }
    html.raw("<p class=\"links\">");
    html.button("main", "keep", "", "Keep it");
    html.button("", "leave", "", "Do not keep it");
    html.button("", "save", "", "Save it to a file");
    html.raw("</p>");
}

/// A share in percent: whole numbers, and what is small as less than one.
fn percent(share: f64) -> String {
    let percent = share * 100.0;
    if percent < 1.0 { "less than 1 %".to_owned() } else { format!("{percent:.0} %") }
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
