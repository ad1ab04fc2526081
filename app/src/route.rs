//! Pages and their addresses: `#/`, `#/get/DATA`, `#/p/ID`, `#/p/ID/body`, `#/p/ID/s/SHEET`, …

use leptos::prelude::*;

/// A page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Route {
    /// The list of projects.
    Start,
    /// A project, or a part of one, in the address itself.
    Get(String),
    /// A project.
    Project(String),
    /// The page of a project that is not a sheet.
    Part(String, Part),
    /// A sheet of a project: the project's id, the sheet's id.
    Sheet(String, String),
    /// A version of a project: the project's id, the version's number.
    Version(String, u64),
    /// The templates in true size of a sheet.
    Templates(String, String),
    /// A line of the buy list: the project's id, the line's key.
    Line(String, String),
    /// One mark at a time: the project's id, the sheet's id; without one, all sheets.
    Bench(String, String),
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
    /// What is left of the work, on a page for the wallet.
    Today,
    /// Passing the project on.
    Pass,
    /// The points to go back to.
    Versions,
    /// A received project beside the one that was here.
    Compare,
}

impl Part {
    const ALL: [(Self, &'static str); 10] = [
        (Self::Body, "body"),
        (Self::Add, "add"),
        (Self::Buy, "buy"),
        (Self::Marks, "marks"),
        (Self::Cuts, "cuts"),
        (Self::Pass, "pass"),
        (Self::Versions, "versions"),
        (Self::Compare, "compare"),
        (Self::Book, "book"),
        (Self::Today, "today"),
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
            ["get", data] => Self::Get((*data).to_owned()),
            ["p", id, "versions", number] => match number.parse() {
                Ok(number) => Self::Version((*id).to_owned(), number),
                Err(_) => Self::Part((*id).to_owned(), Part::Versions),
            },
            ["p", id] => Self::Project((*id).to_owned()),
            ["p", id, "s", sheet] => Self::Sheet((*id).to_owned(), (*sheet).to_owned()),
            ["p", id, "t", sheet] => Self::Templates((*id).to_owned(), (*sheet).to_owned()),
            ["p", id, "buy", key] => Self::Line((*id).to_owned(), (*key).to_owned()),
            ["p", id, "bench"] => Self::Bench((*id).to_owned(), String::new()),
            ["p", id, "bench", sheet] => Self::Bench((*id).to_owned(), (*sheet).to_owned()),
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
            Self::Get(data) => format!("#/get/{data}"),
            Self::Version(id, number) => format!("#/p/{}/versions/{number}", encode(id)),
            Self::Project(id) => format!("#/p/{}", encode(id)),
            Self::Part(id, part) => {
                let name = Part::ALL.iter().find(|(known, _)| known == part).map_or("", |(_, n)| n);
                format!("#/p/{}/{name}", encode(id))
            }
            Self::Sheet(id, sheet) => format!("#/p/{}/s/{}", encode(id), encode(sheet)),
            Self::Templates(id, sheet) => format!("#/p/{}/t/{}", encode(id), encode(sheet)),
            Self::Line(id, key) => format!("#/p/{}/buy/{}", encode(id), encode(key)),
            Self::Bench(id, sheet) if sheet.is_empty() => format!("#/p/{}/bench", encode(id)),
            Self::Bench(id, sheet) => format!("#/p/{}/bench/{}", encode(id), encode(sheet)),
        }
    }

    /// The project that the page belongs to.
    pub fn project(&self) -> Option<&str> {
        match self {
            Self::Start | Self::Get(_) => None,
            Self::Project(id)
            | Self::Part(id, _)
            | Self::Sheet(id, _)
            | Self::Version(id, _)
            | Self::Templates(id, _)
            | Self::Line(id, _)
            | Self::Bench(id, _) => Some(id),
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

/// Goes to a page in place of this one: going back does not lead here again.
pub fn go_instead(route: &Route) {
    // As in `go`.
    let _ = window().location().replace(&route.hash());
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
