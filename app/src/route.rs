//! Pages and their addresses: `#/`, `#/p/ID`, `#/p/ID/body`, `#/p/ID/s/SHEET`, …

use leptos::prelude::*;

/// A page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Route {
    /// The list of projects.
    Start,
    /// A project.
    Project(String),
    /// The page of a project that is not a sheet.
    Part(String, Part),
    /// A sheet of a project: the project's id, the sheet's id.
    Sheet(String, String),
    /// The templates in true size of a sheet.
    Templates(String, String),
    /// A line of the buy list: the project's id, the line's key.
    Line(String, String),
}

/// A page of a project that is not a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The measured body.
    Body,
    /// The sheets that can be added.
    Add,
    /// The buy list.
    Buy,
    /// The mark list.
    Marks,
    /// The cut list.
    Cuts,
    /// The whole project as a booklet.
    Book,
}

impl Part {
    const ALL: [(Self, &'static str); 6] = [
        (Self::Body, "body"),
        (Self::Add, "add"),
        (Self::Buy, "buy"),
        (Self::Marks, "marks"),
        (Self::Cuts, "cuts"),
        (Self::Book, "book"),
    ];
}

impl Route {
    /// The page of an address; the start page where the address names none.
    pub fn from_hash(hash: &str) -> Self {
        let hash = hash.trim_start_matches('#');
        let steps: Vec<String> =
            hash.split('/').filter(|step| !step.is_empty()).map(decode).collect();
        let steps: Vec<&str> = steps.iter().map(String::as_str).collect();
        match steps.as_slice() {
            ["p", id] => Self::Project((*id).to_owned()),
            ["p", id, "s", sheet] => Self::Sheet((*id).to_owned(), (*sheet).to_owned()),
            ["p", id, "t", sheet] => Self::Templates((*id).to_owned(), (*sheet).to_owned()),
            ["p", id, "buy", key] => Self::Line((*id).to_owned(), (*key).to_owned()),
            ["p", id, part] => match Part::ALL.iter().find(|(_, name)| name == part) {
                Some((part, _)) => Self::Part((*id).to_owned(), *part),
                None => Self::Project((*id).to_owned()),
            },
            _ => Self::Start,
        }
    }

    /// The address of the page.
    pub fn hash(&self) -> String {
        match self {
            Self::Start => "#/".to_owned(),
            Self::Project(id) => format!("#/p/{}", encode(id)),
            Self::Part(id, part) => {
                let name = Part::ALL.iter().find(|(known, _)| known == part).map_or("", |(_, n)| n);
                format!("#/p/{}/{name}", encode(id))
            }
            Self::Sheet(id, sheet) => format!("#/p/{}/s/{}", encode(id), encode(sheet)),
            Self::Templates(id, sheet) => format!("#/p/{}/t/{}", encode(id), encode(sheet)),
            Self::Line(id, key) => format!("#/p/{}/buy/{}", encode(id), encode(key)),
        }
    }

    /// The project that the page belongs to.
    pub fn project(&self) -> Option<&str> {
        match self {
            Self::Start => None,
            Self::Project(id)
            | Self::Part(id, _)
            | Self::Sheet(id, _)
            | Self::Templates(id, _)
            | Self::Line(id, _) => Some(id),
        }
    }
}

/// Follows the address bar for as long as the app runs.
pub fn follow_hash() -> ReadSignal<Route> {
    let (route, set_route) = signal(here());
    let handle = window_event_listener(leptos::ev::hashchange, move |_| set_route.set(here()));
    on_cleanup(move || handle.remove());
    route
}

/// Goes to a page.
pub fn go(route: &Route) {
    // The only failure is an address that cannot be parsed; `hash` makes none.
    let _ = window().location().set_hash(&route.hash());
}

fn here() -> Route {
    Route::from_hash(&window().location().hash().unwrap_or_default())
}

fn encode(step: &str) -> String {
    js_sys::encode_uri_component(step).into()
}

fn decode(step: &str) -> String {
    js_sys::decode_uri_component(step).map_or_else(|_| step.to_owned(), String::from)
}
