//! The tree editor of a circuit: an outline of its splices from the source down, each with its run,
//! its loads and its voltage; what is tapped opens in place.

mod edit;
mod line;
mod outline;

use calc::ask::{Ask, Kind};
use calc::project::{Place, Project};
use calc::sheet::Sheet;
use calc::words::{app_form, app_tree as said};
use leptos::ev::{Event, MouseEvent};
use leptos::prelude::*;

use super::form::form_part;
use super::html::{Html, asked, shown};
use super::page::{element_id, faults_by_path};
use crate::desk::Desk;
use crate::words::{say, text};
use outline::{Line, Pick, branch, outline};

/// What the editor knows.
#[derive(Clone, Copy)]
struct Tree {
    desk: Desk,
    place: StoredValue<Place>,
    asks: &'static [&'static Ask],
    lines: Memo<Vec<Line>>,
    /// The line that stands open.
    open: RwSignal<Option<Pick>>,
}

/// The editor.
pub fn tree(desk: Desk, place: Place, sheet: &'static Sheet, wanted: RwSignal<String>) -> AnyView {
    let lines = {
        let place = place.clone();
        Memo::new(move |_| desk.project.with(|project| outline(project, &place)))
    };
    // What is told already stands as lines; where nothing hangs on the source yet, what can is at hand.
    let bare = lines.with_untracked(|lines| lines.len() < 2);
    let tree = Tree {
        desk,
        place: StoredValue::new(place),
        asks: sheet.asks,
        lines,
        open: RwSignal::new(bare.then_some(Pick::Source)),
    };
    // What stands open, with its loads: it is made anew when one is added, not when one is typed.
    let opened = Memo::new(move |_| {
        let open = tree.open.get()?;
        lines.with(|lines| {
            let line = lines.iter().find(|line| line.pick == open)?;
            Some((open, line.loads.clone()))
        })
    });
    // Lines up to the open one, and those after it.
    let part = move |after: bool| {
        shown("part", move |html| {
            let open = opened.with(|opened| opened.as_ref().map(|(pick, _)| *pick));
            lines.with(|lines| {
                let split = open
                    .and_then(|open| lines.iter().position(|line| line.pick == open))
                    .map_or(lines.len(), |at| at + 1);
                let shown = if after { &lines[split..] } else { &lines[..split] };
                tree.write(html, shown, open);
            });
        })
    };
    Effect::new(move |_| {
        let field = wanted.get();
        if let Some(pick) = tree.holder(&field) {
            tree.open.set(Some(pick));
            show_soon(field);
        }
    });
    view! {
        <section class="tree" on:click=move |event| tree.tapped(&event)>
            <h2>{text(said::TITLE)}</h2>
            <p class="help">{text(said::HELP)}</p>
            {tree.whole_faults()}
            {part(false)}
            {move || opened.get().map(|(pick, loads)| tree.panel(pick, &loads))}
            {part(true)}
        </section>
    }
    .into_any()
}

impl Tree {
    /// What is wrong with the whole of a list.
    fn whole_faults(self) -> AnyView {
        shown("part", move |html| {
            self.desk.evaluation.with(|all| {
                let faults = self.place.with_value(|place| faults_by_path(all, place));
                for list in ["runs", "loads", "rows"] {
                    if let Some(fault) = faults.get(list) {
                        html.raw("<p class=\"fault whole\" tabindex=\"-1\" id=\"");
                        html.text(&element_id(list));
                        html.raw("\">✗ ");
                        html.text(fault);
                        html.raw("</p>");
                    }
                }
            });
        })
    }

    fn write(self, html: &mut Html, lines: &[Line], open: Option<Pick>) {
        if lines.is_empty() {
            return;
        }
        let all = self.desk.evaluation.get();
        self.desk.project.with(|project| {
            self.place.with_value(|place| {
                let shows = line::Shows::new(project, place, &all);
                html.raw("<ol>");
                for line in lines {
                    shows.push(html, line, open == Some(line.pick));
                }
                html.raw("</ol>");
            });
        });
    }

    /// What is asked in each row of a list.
    fn asks_of(self, list: &str) -> &'static [&'static Ask] {
        match self.asks.iter().find(|ask| ask.key == list).map(|ask| &ask.kind) {
            Some(Kind::Rows { asks, .. }) => asks,
            _ => &[],
        }
    }

    /// The line on which a field stands once it is open.
    fn holder(self, field: &str) -> Option<Pick> {
        let is_of = |pick: Pick| {
            let id = element_id(&pick.path());
            field == id || field.strip_prefix(&id).is_some_and(|rest| rest.starts_with('-'))
        };
        self.lines.with_untracked(|lines| {
            let line = lines.iter().find(|line| {
                is_of(line.pick) || line.loads.iter().any(|load| is_of(Pick::Load(*load)))
            });
            line.map(|line| line.pick)
        })
    }

    fn line(self, pick: Pick) -> Option<Line> {
        self.lines.with_untracked(|lines| lines.iter().find(|line| line.pick == pick).cloned())
    }

    /// The open line: its name, its inputs, and what can be done from here.
    fn panel(self, pick: Pick, loads: &[usize]) -> AnyView {
        let place = || self.place.get_value();
        let form = |list: &str, path: String, skip: &'static [&'static str]| {
            form_part(self.desk, place(), self.asks_of(list), path, skip)
        };
        let own = match pick {
            Pick::Run(_) => Some(form("runs", pick.path(), &["id", "from", "to"])),
            Pick::Row(_) => Some(form("rows", pick.path(), &["label", "from"])),
            Pick::Source | Pick::Load(_) => None,
        };
        let is_loose_load = matches!(pick, Pick::Load(_));
        let loads: Vec<AnyView> = loads
            .iter()
            .map(|load| {
                let path = Pick::Load(*load).path();
                // A load that hangs on nothing can be hung on something.
                let form = form("loads", path.clone(), if is_loose_load { &[] } else { &["at"] });
                view! {
                    <fieldset class="row">
                        <legend>{text(said::LOAD)}</legend>
                        <div class="group">{form}</div>
                        <div class="row-keys"><button type="button" data-do="out" data-with=path>{text(said::REMOVE_LOAD)}</button></div>
                    </fieldset>
                }
                .into_any()
            })
            .collect();
        let named = matches!(pick, Pick::Run(_) | Pick::Row(_));
        let names = named.then(|| view! { {self.renaming(pick)}{self.feeding(pick)} });
        let keys = (!is_loose_load).then(|| self.keys(pick));
        view! { <div class="panel">{names}{own}{loads}{keys}</div> }.into_any()
    }

    /// The name, used wherever the splice is named.
    fn renaming(self, pick: Pick) -> AnyView {
        let refused = RwSignal::new("");
        let now = move || self.lines.with(|all| name_of(all, pick));
        let key = if matches!(pick, Pick::Row(_)) { "label" } else { "to" };
        let id = element_id(&format!("{}.{key}", pick.path()));
        let rename = move |event: Event| {
            let Some(line) = self.line(pick) else { return };
            let name = event_target_value(&event);
            let mut done = false;
            self.desk.change(|project| {
                done = self.place.with_value(|place| edit::rename(project, place, &line, &name));
            });
            refused.set(if done { "" } else { text(said::REFUSED) });
        };
        view! {
            <div class="field wide" class:wrong=move || !refused.get().is_empty()>
                <label for=id.clone()>{text(if key == "to" { said::SPLICE_NAME } else { said::ROW_NAME })}</label>
                <div class="entry">
                    <input id=id.clone() type="text" autocomplete="off" autocapitalize="off" prop:value=now on:change=rename/>
                </div>
                <p class="fault">{move || refused.get()}</p>
            </div>
        }
        .into_any()
    }

    /// What feeds it: one of the splices that do not hang on it.
    fn feeding(self, pick: Pick) -> AnyView {
        let id = element_id(&format!("{}.from", pick.path()));
        let path = format!("{}.from", pick.path());
        let options = move || {
            self.lines.with(|lines| {
                let below = branch(lines, pick);
                let now = lines.iter().find(|line| line.pick == pick).map(|line| line.from.clone());
                let now = now.unwrap_or_default();
                let mut html = Html::default();
                let mut known = false;
                for line in lines.iter().filter(|line| !below.contains(&line.pick)) {
                    for node in &line.nodes {
                        known |= *node == now;
                        push_option(&mut html, node, *node == now);
                    }
                }
                if !known {
                    push_option(&mut html, &now, true);
                }
                html.finish()
            })
        };
        let feed = move |event: Event| {
            let from = serde_json::json!(event_target_value(&event));
            self.desk.change(|project| {
                self.place.with_value(|place| project.set(place, &path, from));
            });
        };
        view! {
            <div class="field wide">
                <label for=id.clone()>{text(said::FED_FROM)}</label>
                <div class="entry"><select id=id.clone() on:change=feed inner_html=options></select></div>
            </div>
        }
        .into_any()
    }

    fn keys(self, pick: Pick) -> AnyView {
        shown("tree-keys", move |html| {
            let path = pick.path();
            html.button("", "run", &path, text(said::ADD_RUN));
            html.button("", "load", &path, text(said::ADD_LOAD));
            html.button("", "lamps", &path, text(said::ADD_LAMPS));
            if pick != Pick::Source {
                html.button("", "copy", &path, text(said::COPY_BRANCH));
                let many = self.lines.with(|lines| branch(lines, pick).len());
                let words = match many {
                    0 | 1 => text(app_form::REMOVE).to_owned(),
                    _ => say(said::RemoveBranch { count: many - 1 }),
                };
                html.button("danger", "out", &path, &words);
            }
        })
    }

    /// A button of the tree was tapped.
    fn tapped(self, event: &MouseEvent) {
        let Some((what, with)) = asked(event) else { return };
        let Some(pick) = Pick::from_path(&with) else { return };
        let change = |change: &dyn Fn(&mut Project, &Place)| {
            self.desk.change(|project| self.place.with_value(|place| change(project, place)));
        };
        // From a row things go on from its last light.
        let node = || self.line(pick).and_then(|line| line.nodes.last().cloned());
        let next = |list: &str| {
            self.place.with_value(|place| {
                self.desk.project.with_untracked(|project| project.row_count(place, list))
            })
        };
        match what.as_str() {
            "pick" => {
                let open = (self.open.get_untracked() != Some(pick)).then_some(pick);
                self.open.set(open);
                super::focus_again("data-with", &with);
            }
            "run" => {
                let Some(node) = node() else { return };
                let pick = Pick::Run(next("runs"));
                change(&|project, place| {
                    edit::add_run(project, place, &node);
                });
                self.open_at(pick, "length");
            }
            "load" => {
                let Some(node) = node() else { return };
                let load = Pick::Load(next("loads"));
                change(&|project, place| {
                    edit::add_load(project, place, &node);
                });
                show_soon(element_id(&format!("{}.label", load.path())));
            }
            "lamps" => {
                let Some(node) = node() else { return };
                let pick = Pick::Row(next("rows"));
                change(&|project, place| {
                    edit::add_row(project, place, &node);
                });
                self.open_at(pick, "count");
            }
            "copy" => {
                let mut head = pick;
                self.desk.change(|project| {
                    self.place.with_value(|place| head = edit::copy(project, place, pick));
                });
                self.open.set(Some(head));
                super::focus_again("data-with", &head.path());
            }
            "out" => {
                let feeder = self.line(pick).map(|line| line.feeder.unwrap_or(Pick::Source));
                change(&|project, place| edit::take_out(project, place, pick));
                // A load goes, its splice stays open.
                if let Some(feeder) = feeder {
                    let stands = self
                        .lines
                        .with_untracked(|lines| lines.iter().any(|line| line.pick == feeder));
                    self.open.set(stands.then_some(feeder));
                    super::focus_again("data-with", &feeder.path());
                }
            }
            _ => {}
        }
    }

    fn open_at(self, pick: Pick, key: &str) {
        self.open.set(Some(pick));
        show_soon(element_id(&format!("{}.{key}", pick.path())));
    }
}

/// Shows a field that stands on the page with the next frame.
fn show_soon(field: String) {
    super::dom::move_focus_soon(move || super::show(&field));
}

fn name_of(lines: &[Line], pick: Pick) -> String {
    lines.iter().find(|line| line.pick == pick).map_or_else(String::new, |line| line.name.clone())
}

fn push_option(html: &mut Html, node: &str, chosen: bool) {
    html.raw("<option value=\"");
    html.text(node);
    html.raw(if chosen { "\" selected>" } else { "\">" });
    html.text(node);
    html.raw("</option>");
}
