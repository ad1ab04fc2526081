//! The form of a page, whatever it asks: written as text, listened to as a whole, mended in place.
//!
//! Its shape (rows, alternatives, units) is written anew only when it changes. What stands in the
//! fields, what is wrong with them and what could fill them is put into the elements that are
//! there, so that typing never loses the caret.

mod fields;
mod figure;
mod shape;

use std::collections::{BTreeMap, BTreeSet};

use calc::ask::{Ask, Kind};
use calc::project::{Node, Place};
use calc::quantity::UnitSystem;
use leptos::ev::{Event, FocusEvent, KeyboardEvent, MouseEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::dom::elements;
use super::html::asked;
use super::page::element_id;
use crate::desk::{Desk, stored_text};
use crate::words::words;
use fields::{Caret, mend};
use shape::{Shelves, Walk, find_ask};

pub use shape::join;

/// What a table may have been read in.
const UNIT_SYSTEMS: [UnitSystem; 2] = [UnitSystem::Imperial, UnitSystem::Metric];

/// What a form knows beside the project.
#[derive(Clone, Copy)]
struct Form {
    desk: Desk,
    place: StoredValue<Place>,
    asks: &'static [&'static Ask],
    /// Where they stand; empty at the top.
    base: StoredValue<String>,
    /// Keys of those that are left out.
    skip: &'static [&'static str],
    /// Which alternative was picked where none is filled in yet.
    picked: RwSignal<BTreeMap<String, usize>>,
    /// What was typed under an alternative that is not chosen: it comes back when the choice does.
    put_by: StoredValue<BTreeMap<String, Node>>,
    /// Where the focus goes after the shape has changed.
    go_to: StoredValue<Option<String>>,
    /// Where the inputs stand, each a line to tap; none where they stand one below another as they are.
    shelves: StoredValue<Option<Shelves>>,
}

/// The form for all asks of a place: each a line that opens to its field, what is blank and not needed behind one line more.
pub fn form(desk: Desk, place: Place, asks: &'static [&'static Ask]) -> AnyView {
    form_of(desk, place, asks, String::new(), &[], Some(Shelves::new()))
}

/// The form for asks that stand at `base`, such as those of one row; those with a key in `skip`
/// are left out.
pub fn form_part(
    desk: Desk,
    place: Place,
    asks: &'static [&'static Ask],
    base: String,
    skip: &'static [&'static str],
) -> AnyView {
    form_of(desk, place, asks, base, skip, None)
}

fn form_of(
    desk: Desk,
    place: Place,
    asks: &'static [&'static Ask],
    base: String,
    skip: &'static [&'static str],
    shelves: Option<Shelves>,
) -> AnyView {
    let form = Form {
        desk,
        place: StoredValue::new(place),
        asks,
        base: StoredValue::new(base),
        skip,
        picked: RwSignal::new(BTreeMap::new()),
        put_by: StoredValue::new(BTreeMap::new()),
        go_to: StoredValue::new(None),
        shelves: StoredValue::new(shelves),
    };
    let root = NodeRef::<leptos::html::Div>::new();
    let shape = StoredValue::new(String::new());
    Effect::new(move |_| {
        let Some(root) = root.get() else { return };
        let anew = form.shelve(&root);
        let walk = form.walk();
        if shape.with_value(|shape| *shape != walk.shape) {
            let caret = Caret::now(&root);
            let first = shape.with_value(String::is_empty);
            let mut open = if first { walk.filled_groups.clone() } else { open_groups(&root) };
            if anew {
                open.retain(|group| !group.starts_with("ask "));
                open.extend(walk.open_at_first());
            }
            root.set_inner_html(&walk.shape);
            open_again(&root, &open);
            // With the pad one types at once: no phone's keyboard has to be called up by a tap.
            if anew && first && super::pad::wanted() {
                focus_what_is_asked(&root);
            }
            if let Some(caret) = caret {
                caret.put_back(&root);
            }
            shape.set_value(walk.shape.clone());
        }
        let system = form.desk.project.with_untracked(calc::project::Project::system);
        fields::mend_chips(&root, &walk.chips);
        mend(&root, &walk.fields, |path, typed| {
            form.ask(path).map_or_else(
                || typed.to_owned(),
                |ask| stored_text(ask, typed, ask.unit_in(system)),
            )
        });
        if let Some(path) = form.go_to.try_update_value(Option::take).flatten() {
            focus_first(&root, &path);
        }
    });
    view! {
        <div
            class="form"
            node_ref=root
            on:input=move |event| if form.stands() { form.typed(&event) }
            on:change=move |event| if form.stands() { form.picked_option(&event) }
            on:click=move |event| form.tapped(&event)
            on:focusout=move |event| if form.stands() { form.left(&event) }
            on:keydown=move |event| next_on_enter(&event)
        ></div>
    }
    .into_any()
}

impl Form {
    /// Whether the page still stands: a field that goes with its page is left, and changed, after it.
    fn stands(&self) -> bool {
        self.place.try_with_value(|_| ()).is_some()
    }

    fn walk(&self) -> Walk {
        let all = self.desk.evaluation.get();
        let picked = self.picked.get();
        self.desk.project.with(|project| {
            self.place.with_value(|place| {
                let shelved = self.shelves.with_value(|shelves| {
                    let shelves = shelves.as_ref()?;
                    Some(Walk::shelved(project, &all, place, &picked, self.asks, shelves))
                });
                shelved.unwrap_or_else(|| {
                    self.base.with_value(|base| {
                        Walk::part(project, &all, place, &picked, self.asks, base, self.skip)
                    })
                })
            })
        })
    }

    /// Puts the inputs onto their shelves: at first, and where more than one belongs elsewhere now, as after the example
    /// was filled in. What one change by hand would move stays where the hand is. Says whether they were put anew.
    fn shelve(&self, root: &Element) -> bool {
        let Some(before) = self.shelves.get_value() else { return false };
        let all = self.desk.evaluation.get();
        let now = self.desk.project.with(|project| {
            self.place.with_value(|place| shape::shelves(project, &all, place, self.asks))
        });
        let moved = now.iter().filter(|(name, shelf)| before.get(*name) != Some(*shelf)).count();
        let in_hand = document().active_element().is_some_and(|one| root.contains(Some(&one)));
        let anew = before.is_empty() || moved > 1 && !in_hand;
        if anew {
            self.shelves.set_value(Some(now));
        }
        anew
    }

    /// A line was tapped: its field opens and takes the focus, the one that stood open closes.
    fn unfold_line(&self, event: &MouseEvent) {
        let Some(summary) = element_of(event).and_then(|at| at.closest("summary").ok()?) else {
            return;
        };
        let Some(line) = summary.parent_element().filter(|line| line.class_list().contains("ask"))
        else {
            return;
        };
        if line.has_attribute("open") {
            return;
        }
        // Opened here, so that the focus is moved by the tap itself: a phone shows its keyboard for nothing else.
        event.prevent_default();
        for other in elements(line.parent_element().as_ref(), "details.ask[open]") {
            close_line(&other);
        }
        let _ = line.set_attribute("open", "");
        let fields = elements(Some(&line), "[data-path]");
        match fields.as_slice() {
            [only] => super::dom::focus(only),
            // What is asked for is typed at once; what was told is looked at first.
            [first, ..] if line.class_list().contains("needed") => super::dom::focus(first),
            _ => line.scroll_into_view_with_bool(true),
        }
    }

    /// The ask for the input at a path.
    fn ask(&self, path: &str) -> Option<&'static Ask> {
        let path = self.base.with_value(|base| path.strip_prefix(base.as_str()))?;
        find_ask(self.asks, path.trim_start_matches('.'))
    }

    /// Text was typed into a field.
    fn typed(&self, event: &Event) {
        let Some((path, input)) = field_of(event) else { return };
        self.write(&path, &input.value());
    }

    /// An option was picked.
    fn picked_option(&self, event: &Event) {
        let Some(element) = element_of(event) else { return };
        if element.tag_name() != "SELECT" {
            return;
        }
        if let Some(path) = element.get_attribute("data-picks") {
            self.fill_from_table(&path, &event_target_value(event));
            // The list is a way in, not a field: it shows its own name again.
            if let Some(list) = element.dyn_ref::<HtmlSelectElement>() {
                list.set_selected_index(0);
            }
            return;
        }
        if let Some(path) = element.get_attribute("data-path") {
            self.write(&path, &event_target_value(event));
            self.desk.leave_field();
            // One question after another: a pick answers this one.
            let asked = matches!(element.closest("details.ask.needed"), Ok(Some(_)));
            if asked && super::pad::wanted() {
                super::keys::focus_after(&element);
            }
        }
    }

    /// A field was left: it now shows what is kept of it.
    fn left(&self, event: &FocusEvent) {
        self.desk.leave_field();
        if let Some((path, input)) = field_of(event) {
            let kept = self.place.with_value(|place| {
                self.desk.project.with_untracked(|project| project.typed(place, &path))
            });
            if input.value() != kept {
                input.set_value(&kept);
                fields::drop_unit(&input);
            }
        }
    }

    /// Fills the row of the field at `path` with what its table says of the thing picked. What was
    /// typed stays: only blank fields are filled, and those that hold what the table put there.
    fn fill_from_table(&self, path: &str, picked: &str) {
        let picks = find_ask(self.asks, path).and_then(|ask| ask.picks);
        let (Some(picks), Ok(picked)) = (picks, picked.parse::<usize>()) else { return };
        let system = self.desk.project.with_untracked(calc::project::Project::system);
        let row = path.rsplit_once('.').map_or("", |(row, _)| row);
        self.desk.leave_field();
        self.place.with_value(|place| {
            self.desk.change(|project| {
                for (key, text) in (picks.fills)(picked, system, words()) {
                    let path = join(row, key);
                    let typed = project.typed(place, &path);
                    let from_table = typed.trim().is_empty()
                        || (0..(picks.names)(words()).len()).any(|other| {
                            UNIT_SYSTEMS.iter().any(|system| {
                                (picks.fills)(other, *system, words())
                                    .iter()
                                    .any(|(k, text)| *k == key && *text == typed)
                            })
                        });
                    if let Some(ask) = find_ask(self.asks, &path).filter(|_| from_table) {
                        project.set_typed(place, &path, &ask.kind, &text);
                    }
                }
            });
        });
    }

    fn write(&self, path: &str, text: &str) {
        if let Some(ask) = self.ask(path) {
            self.place.with_value(|place| self.desk.type_into(place, path, ask, text));
        }
    }

    /// A button of the form was tapped.
    fn tapped(&self, event: &MouseEvent) {
        let Some((what, with)) = asked(event) else { return self.unfold_line(event) };
        let place = self.place.get_value();
        match what.as_str() {
            "key" => {
                if let Some(input) = input_beside(event) {
                    super::pad::insert(&input, &with);
                    let _ = input.focus();
                }
            }
            "fill" => {
                if let Some((path, text)) = with.split_once('=') {
                    // A key pressed on it: the button goes, so the focus goes on to the field.
                    if event.detail() == 0
                        && let Some(input) = input_beside(event)
                    {
                        let _ = input.focus();
                    }
                    self.write(path, text);
                    self.desk.leave_field();
                }
            }
            "add-row" => self.add_row(&place, &with),
            "copy-row" => {
                let row = self.desk.project.with_untracked(|p| p.node(&place, &with).cloned());
                if let Some((list, _)) = with.rsplit_once('.') {
                    let row = row.unwrap_or_else(|| serde_json::json!({}));
                    // The copy stands last: it is what is looked at next.
                    let count = self.desk.project.with_untracked(|p| p.row_count(&place, list));
                    self.go_to.set_value(Some(join(list, &count.to_string())));
                    self.desk.change(|project| project.add_row(&place, list, row));
                }
            }
            "take-row" => {
                if let Some((list, index)) = with.rsplit_once('.')
                    && let Ok(index) = index.parse()
                {
                    self.desk.change(|project| project.remove_row(&place, list, index));
                }
            }
            "either" => self.choose(&place, &with),
            _ => {}
        }
    }

    fn add_row(&self, place: &Place, list: &str) {
        let before = self.desk.project.with_untracked(|p| p.row_count(place, list));
        // The first row of a sheet that needs one stands on the page before it stands in the file.
        let shown =
            self.walk_untracked(|walk| walk.rows_shown.get(list).copied()).unwrap_or(before);
        self.go_to.set_value(Some(join(list, &shown.to_string())));
        self.desk.change(|project| {
            for _ in before..=shown {
                project.add_row(place, list, serde_json::json!({}));
            }
        });
    }

    /// Chooses one of several inputs; `with` is its path, its place among them, and the path of
    /// the one that gives way.
    fn choose(&self, place: &Place, with: &str) {
        let mut parts = with.split('|');
        let (Some(group), Some(index), Some(old), Some(new)) =
            (parts.next(), parts.next(), parts.next(), parts.next())
        else {
            return;
        };
        let index = index.parse().unwrap_or(0);
        self.picked.update(|picked| {
            picked.insert(group.to_owned(), index);
        });
        let was = self.desk.project.with_untracked(|p| p.node(place, old).cloned());
        let back = self.put_by.with_value(|all| all.get(new).cloned());
        if was.is_none() && back.is_none() {
            return;
        }
        self.put_by.update_value(|all| {
            all.insert(old.to_owned(), was.unwrap_or_default());
        });
        self.desk.change(|project| {
            project.set(place, old, Node::Null);
            project.set(place, new, back.unwrap_or_default());
        });
    }

    fn walk_untracked<T>(&self, read: impl FnOnce(&Walk) -> T) -> T {
        read(&untrack(|| self.walk()))
    }
}

fn element_of(event: &Event) -> Option<Element> {
    event.target()?.dyn_into::<Element>().ok()
}

/// The field that an event comes from, and its path.
fn field_of(event: &Event) -> Option<(String, HtmlInputElement)> {
    let input = element_of(event)?.dyn_into::<HtmlInputElement>().ok()?;
    Some((input.get_attribute("data-path")?, input))
}

/// The field that a key stands beside.
fn input_beside(event: &Event) -> Option<HtmlInputElement> {
    let field = element_of(event)?.closest(".field").ok()??;
    field.query_selector("input").ok()??.dyn_into().ok()
}

fn next_on_enter(event: &KeyboardEvent) {
    if event.key() == "Enter" && field_of(event).is_some() {
        super::keys::focus_next(event);
    }
}

/// Puts the focus into the first field of what is asked first, once the page stands.
fn focus_what_is_asked(root: &Element) {
    let root = root.clone();
    super::dom::move_focus_soon(move || {
        let asked = elements(
            Some(&root),
            "details.ask.needed[open] [data-path], details.ask.to-measure[open] [data-path]",
        );
        if let Some(field) = asked.first() {
            super::dom::focus(field);
        }
    });
}

/// Asks for the input at a path, from elsewhere on the page: its line opens, the others close, and its field takes the focus. A row
/// that is not there yet is added; of an input that is not on the page, what it belongs to.
pub fn ask_for(path: &str) {
    let mut path = path;
    loop {
        let id = element_id(path);
        let below = format!("{id}-");
        let fields = elements(None, ".form [data-path]");
        if let Some(field) =
            fields.iter().find(|field| field.id() == id || field.id().starts_with(&below))
        {
            for other in elements(None, ".form details.ask[open]") {
                if !other.contains(Some(field)) {
                    close_line(&other);
                }
            }
            super::dom::unfold(field);
            return super::dom::focus(field);
        }
        let Some((list, _)) = path.rsplit_once('.') else { return };
        let adds = elements(None, ".form [data-do=\"add-row\"]");
        let add = adds.iter().find(|add| add.get_attribute("data-with").as_deref() == Some(list));
        if let Some(add) = add.and_then(|add| add.dyn_ref::<web_sys::HtmlElement>()) {
            for other in elements(None, ".form details.ask[open]") {
                close_line(&other);
            }
            return add.click();
        }
        path = list;
    }
}

/// Puts the focus into the first field below a path.
fn focus_first(root: &Element, path: &str) {
    let id = element_id(path);
    let below = format!("{id}-");
    let fields = elements(Some(root), "[data-path]");
    let first = fields.iter().find(|field| field.id() == id || field.id().starts_with(&below));
    if let Some(field) = first {
        super::dom::unfold(field);
        super::dom::focus(field);
    }
}

/// Closes the line of an input; one with something wrong in it stays open.
pub fn close_line(line: &Element) {
    if !line.class_list().contains("wrong") {
        let _ = line.remove_attribute("open");
    }
}

/// The groups that stand open.
fn open_groups(root: &Element) -> BTreeSet<String> {
    let open = elements(Some(root), "details[open]");
    open.iter().filter_map(|group| group.get_attribute("data-group")).collect()
}

fn open_again(root: &Element, open: &BTreeSet<String>) {
    for group in elements(Some(root), "details") {
        if group.get_attribute("data-group").is_some_and(|path| open.contains(&path)) {
            let _ = group.set_attribute("open", "");
        }
    }
}

/// Whether a field's text is read as a number with a unit.
fn takes_unit(ask: &Ask) -> bool {
    matches!(ask.kind, Kind::Measure { .. })
}
