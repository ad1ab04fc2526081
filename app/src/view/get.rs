//! What a link or a code brings. It is asked first: nothing is kept that nobody wanted. Then it stands beside what is here.

use leptos::prelude::*;

use super::html::{Html, asked, shown};
use super::versions::size;
use crate::route::{Part, Route, go, go_instead};
use crate::storage::Store;
use crate::transfer::{self, Arrived, Offer};
use crate::words::{say, text};
use calc::quantity::plain;
use calc::words::{app_common, app_pass as words};

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
            tell(
                said,
                match transfer::look_at(store, &data, keep_codes).await {
                    Ok(arrived) => Said::Arrived(arrived),
                    Err(why) => Said::Refused(why),
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
                Err(error) => tell(said, Said::NoRoom(offer, error.to_string())),
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
                tell(said, Said::Forgotten);
            }
            _ => {}
        }
    };
    view! {
        <header class="top">
            <a class="back" href="#/"><span aria-hidden="true">"‹ "</span><span class="where">{text(app_common::ALL_PROJECTS)}</span></a>
            {super::menu::theme_button(store)}
        </header>
        <main id="main" on:click=act>{page}</main>
    }
    .into_any()
}

fn tell(said: RwSignal<Said>, what: Said) {
    // Whoever left the page before it was read is told nothing.
    let _ = said.try_set(what);
    super::keys::focus_heading();
}

fn write(html: &mut Html, store: Store, said: &Said) {
    let heading = match said {
        Said::Arrived(Arrived::Whole(offer)) | Said::NoRoom(offer, _) => {
            say(words::KeepThis { name: name_of(offer) })
        }
        Said::Arrived(Arrived::FirstPart { number, count }) => {
            say(words::CodeKeep { number: *number, count: *count })
        }
        Said::Arrived(Arrived::Waiting { number, count, .. }) => {
            say(words::CodeHere { number: *number, count: *count })
        }
        Said::Arrived(Arrived::Known(_)) => say(words::KNOWN),
        Said::Refused(_) => say(words::CANNOT_TAKE),
        Said::Forgotten => say(words::CODES_FORGOTTEN),
        Said::Reading => say(words::READING),
    };
    html.raw("<h1 tabindex=\"-1\">");
    html.text(&heading);
    html.raw("</h1>");
    match said {
        Said::Arrived(Arrived::Whole(offer)) => offered(html, store, offer, ""),
        Said::NoRoom(offer, why) => offered(html, store, offer, why),
        Said::Arrived(Arrived::FirstPart { .. }) => {
            html.tag("p", "", text(words::FIRST_PART_HELP));
            html.raw("<p class=\"links\">");
            html.button("main", "keep-codes", "", text(words::KEEP_CODES));
            html.button("", "leave", "", text(words::KEEP_NOT));
            html.raw("</p>");
        }
        Said::Arrived(Arrived::Waiting { missing, .. }) => waiting(html, store, missing),
        Said::Arrived(Arrived::Known(id)) => {
            html.tag("p", "", text(words::KNOWN_HELP));
            html.link("button", &Route::Project(id.clone()).hash(), text(app_common::OPEN_IT));
        }
        Said::Refused(why) => {
            html.raw("<p role=\"alert\">");
            html.text(why);
            html.raw("</p>");
        }
        Said::Forgotten => html.tag("p", "", text(words::SCAN_ALL)),
        Said::Reading => {}
    }
}

fn name_of(offer: &Offer) -> &str {
    match offer.project.name() {
        "" => text(words::NAMELESS),
        name => name,
    }
}

/// What came, what keeping it would take, and the choice.
fn offered(html: &mut Html, store: Store, offer: &Offer, why: &str) {
    let sheets = offer.project.sheets().count();
    html.tag("p", "offered", &say(words::Offered { sheets, size: size(offer.bytes) }));
    let used = store.room_used();
    let room = words::OfferedRoom { would: percent(offer.room), used: percent(used) };
    html.tag("p", "offered", &say(room));
    if store.keeps() && offer.room + used > 1.0 {
        html.tag("p", "note warning", text(words::NO_ROOM));
    }
    if offer.beside {
        html.tag("p", "note", text(words::OFFERED_BESIDE));
    }
    html.tag("p", "help", text(words::NOTHING_KEPT));
    if !why.is_empty() {
        html.raw("<p role=\"alert\">");
        html.text(why);
        html.raw("</p>");
    }
    html.raw("<p class=\"links\">");
    html.button("main", "keep", "", text(words::KEEP));
    html.button("", "leave", "", text(words::KEEP_NOT));
    html.button("", "save", "", text(app_common::SAVE_TO_FILE));
    html.raw("</p>");
}

/// A share in percent: whole numbers, and what is small as less than one.
fn percent(share: f64) -> String {
    let percent = share * 100.0;
    if percent < 1.0 {
        return say(words::LESS_THAN_ONE);
    }
    say(words::Percent { percent: plain(percent, 0) })
}

fn waiting(html: &mut Html, store: Store, missing: &[usize]) {
    let numbers: Vec<String> = missing.iter().map(ToString::to_string).collect();
    let missing = say(words::StillToCome { numbers: numbers.join(", ") });
    html.tag("p", "missing-codes", &missing);
    html.tag("p", "help", text(words::SCAN_REST));
    for other in store.part_sets().iter().skip(1) {
        let set = words::OtherSet { here: other.parts.len(), count: other.count };
        html.tag("p", "note", &say(set));
    }
    html.raw("<p>");
    html.button("danger", "forget", "", text(words::FORGET_CODES));
    html.raw("</p>");
}
