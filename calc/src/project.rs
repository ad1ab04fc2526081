//! The project file: one measured body, its sheets, and the text that was typed. The only place with serde.

mod compare;
mod cuts;
mod evaluate;
mod example;
mod gradual;
#[cfg(feature = "json")]
mod json;
pub mod limits;
mod lists;
mod load;
mod names;
mod offer;
mod plan;
pub(crate) mod rows;
pub mod shopping;
mod what_if;

pub use crate::body::{ASKS as BODY_ASKS, Body, Diagonals, Opening, Station};
pub use crate::cutting::{CutBar, CutPiece};
pub use compare::{Found, Line, Part, PartPlace, compare};
pub use cuts::CutGroup;
pub use evaluate::{Evaluation, SheetResult, evaluate, evaluate_since, takes_weight};
pub use gradual::Gradual;
pub use limits::MAX_BYTES;
pub use lists::{BuyList, CutList};
pub(crate) use load::settle;
pub use load::{LoadError, VERSION};
pub use offer::Behind;
pub use plan::{asking_plan, plan};
pub use what_if::{Choices, Lacking, choices, side_by_side, what_if};

pub use crate::node::Node;
use crate::node::member;

use crate::ask::Kind;
use crate::quantity::{Rounding, Style, UnitSystem};
use crate::words::Words;
use serde::{Deserialize, Serialize};
use serde_json::{Map, json};

/// One project, as it is saved. What was typed is kept as it was typed, and so is all that this
/// version of the program does not know: a load and a save lose nothing.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Project {
    document: Map<String, Node>,
    #[serde(skip)]
    words: Words,
}

/// The language belongs to the device: in another one it is the same project.
impl PartialEq for Project {
    fn eq(&self, other: &Self) -> bool {
        self.document == other.document
    }
}

/// A sheet of a project, as it is saved.
#[derive(Clone, Copy, Debug)]
pub struct SheetEntry<'a> {
    node: &'a Node,
    index: usize,
}

/// Where an input stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// In the measured body.
    Body,
    /// In the inputs of the sheet with this id.
    Sheet(String),
    /// In what is kept beside the buy list.
    Shopping,
    /// In what was typed for the line of the buy list with this key.
    Line(String),
}

impl Project {
    /// A new project without a body and without sheets.
    pub fn new(id: &str, name: &str, system: UnitSystem) -> Self {
        let mut document = Map::new();
        document.insert("battenbook".into(), json!(VERSION));
        document.insert("id".into(), json!(id));
        document.insert("name".into(), json!(name));
        document.insert("units".into(), json!(system_key(system)));
        document.insert("body".into(), json!({}));
        document.insert("sheets".into(), json!([]));
        Self { document, words: Words::ENGLISH }
    }

    /// The text of the file, made to be read by people.
    pub fn to_text(&self) -> String {
        serde_json::to_string_pretty(&self.document).unwrap_or_default()
    }

    /// Its id; empty where the file has none.
    pub fn id(&self) -> &str {
        self.document.get("id").and_then(Node::as_str).unwrap_or_default()
    }

    /// Gives it another id, as a copy needs one.
    pub fn set_id(&mut self, id: &str) {
        self.document.insert("id".into(), json!(id));
    }

    /// Its name; empty where the file has none.
    pub fn name(&self) -> &str {
        self.document.get("name").and_then(Node::as_str).unwrap_or_default()
    }

    /// Renames it.
    pub fn set_name(&mut self, name: &str) {
        self.document.insert("name".into(), json!(name));
    }

    /// The unit system that results are shown in; metric where the file does not say.
    pub fn system(&self) -> UnitSystem {
        match self.document.get("units").and_then(Node::as_str) {
            Some("imperial") => UnitSystem::Imperial,
            _ => UnitSystem::Metric,
        }
    }

    /// Shows results in another unit system, rounded as is usual in it.
    pub fn set_system(&mut self, system: UnitSystem) {
        if system != self.system() {
            shopping::pin_units(self);
        }
        self.document.insert("units".into(), json!(system_key(system)));
        self.document.remove("rounding");
    }

    /// How results are written: the unit system, and what marks are rounded to.
    pub fn style(&self) -> Style {
        let system = self.system();
        let chosen = self.document.get("rounding").and_then(Node::as_str);
        let rounding = Rounding::ALL
            .into_iter()
            .filter(|rounding| rounding.system() == system)
            .find(|rounding| Some(rounding.name()) == chosen)
            .unwrap_or_else(|| Rounding::for_system(system));
        Style { system, rounding, words: self.words, exact: false }
    }

    /// Says everything in the words of a language. It belongs to the device, and is not kept in the file.
    pub fn set_words(&mut self, words: Words) {
        self.words = words;
    }

    /// Rounds marks to something else.
    pub fn set_rounding(&mut self, rounding: Rounding) {
        self.document.insert("rounding".into(), json!(rounding.name()));
    }

    /// The body as saved; null where the file has none.
    pub fn body(&self) -> &Node {
        self.document.get("body").unwrap_or(&Node::Null)
    }

    /// The sheets in their order.
    pub fn sheets(&self) -> impl Iterator<Item = SheetEntry<'_>> {
        let nodes = match self.document.get("sheets") {
            Some(Node::Array(nodes)) => nodes.as_slice(),
            _ => &[],
        };
        nodes.iter().enumerate().map(|(index, node)| SheetEntry { node, index })
    }

    /// The sheet with this id.
    pub fn sheet(&self, id: &str) -> Option<SheetEntry<'_>> {
        self.sheets().find(|sheet| sheet.id() == id)
    }

    /// Whether it has as many sheets as a project may have.
    pub fn is_full(&self) -> bool {
        self.sheets().count() >= limits::MOST_SHEETS
    }

    /// Adds a sheet of a kind at the end; returns its id. A full project gets none, and the id is empty.
    pub fn add_sheet(&mut self, kind: &str, title: &str, inputs: Node) -> String {
        if self.is_full() {
            return String::new();
        }
        let id = self.fresh_sheet_id();
        let sheet = json!({ "id": id, "title": title, "kind": kind, "inputs": inputs });
        match self.document.get_mut("sheets") {
            Some(Node::Array(nodes)) => nodes.push(sheet),
            _ => {
                self.document.insert("sheets".into(), json!([sheet]));
            }
        }
        id
    }

    /// Takes a sheet out.
    pub fn remove_sheet(&mut self, id: &str) {
        let index = self.sheet(id).map(|sheet| sheet.index);
        if let (Some(index), Some(nodes)) = (index, self.sheet_nodes()) {
            nodes.remove(index);
            self.note_sheet_gone(id);
        }
    }

    /// Gives a sheet another title.
    pub fn set_sheet_title(&mut self, id: &str, title: &str) {
        if let Some(fields) = self.sheet_node(id).and_then(Node::as_object_mut) {
            fields.insert("title".into(), json!(title));
        }
    }

    /// What stands at a path below a place; none where nothing does.
    pub fn node(&self, place: &Place, path: &str) -> Option<&Node> {
        let root = match place {
            Place::Body => self.body(),
            Place::Sheet(id) => self.sheet(id)?.node.get("inputs")?,
            Place::Shopping => self.extra(shopping::KEY)?,
            Place::Line(key) => self.extra(shopping::KEY)?.get("lines")?.get(key)?,
        };
        walk(path).try_fold(root, |node, key| match node {
            Node::Array(items) => items.get(key.parse::<usize>().ok()?),
            _ => node.get(key),
        })
    }

    /// The typed text at a path; numbers and flags as they would be typed, blank where nothing
    /// is.
    pub fn typed(&self, place: &Place, path: &str) -> String {
        match self.node(place, path) {
            Some(Node::String(text)) => text.clone(),
            Some(Node::Number(number)) => number.to_string(),
            Some(Node::Bool(flag)) => flag.to_string(),
            _ => String::new(),
        }
    }

    /// How many rows or values stand in the list at a path.
    pub fn row_count(&self, place: &Place, path: &str) -> usize {
        self.node(place, path).and_then(Node::as_array).map_or(0, Vec::len)
    }

    /// Keeps typed text at a path, as what the ask takes: text, a number, a flag. Blank text
    /// takes the entry out, but leaves its place in a list.
    pub fn set_typed(&mut self, place: &Place, path: &str, kind: &Kind, text: &str) {
        let node = typed_node(kind, text);
        let made = self.key_before(place, path);
        let named = matches!(kind, Kind::Words).then(|| self.name_before(place, path));
        self.set(place, path, node);
        if let Some(before) = named {
            self.follow_name(place, path, &before);
        }
        if let Some((list, index)) = made {
            self.key_new_row(place, &list, index);
        }
        // An own line that is called otherwise is another thing: it is not added to a sheet's any more.
        if *place == Place::Shopping
            && let Some((row, "item" | "spec" | "unit")) = path.rsplit_once('.')
        {
            self.set(place, &[row, ".adds_to"].concat(), Node::Null);
        }
    }

    /// Puts a node at a path, making what leads to it; null takes the entry out.
    pub fn set(&mut self, place: &Place, path: &str, value: Node) {
        let Some(root) = self.root(place) else { return };
        let mut keys: Vec<&str> = walk(path).collect();
        let Some(last) = keys.pop() else {
            *root = value;
            return;
        };
        let mut node = root;
        for key in keys {
            node = child(node, key);
        }
        match node {
            Node::Array(_) => *child(node, last) = value,
            _ if value.is_null() => {
                if let Some(fields) = node.as_object_mut() {
                    fields.shift_remove(last);
                }
            }
            _ => *child(node, last) = value,
        }
    }

    /// Adds a row at the end of the list at a path.
    pub fn add_row(&mut self, place: &Place, path: &str, row: Node) {
        let mut rows = self.node(place, path).and_then(Node::as_array).cloned().unwrap_or_default();
        let index = rows.len();
        rows.push(row);
        self.set(place, path, Node::Array(rows));
        self.key_new_row(place, path, index);
        if *place == Place::Shopping {
            shopping::name_own_rows(self);
        }
    }

    /// Takes a row out of the list at a path.
    pub fn remove_row(&mut self, place: &Place, path: &str, index: usize) {
        if index >= self.row_count(place, path) {
            return;
        }
        self.key_rows(place, path);
        if let Some(mut rows) = self.node(place, path).and_then(Node::as_array).cloned() {
            rows.remove(index);
            self.set(place, path, Node::Array(rows));
        }
    }

    /// What is kept at the top of the file beside the named fields: ticks, notes.
    pub fn extra(&self, key: &str) -> Option<&Node> {
        self.document.get(key)
    }

    /// Keeps something at the top of the file.
    pub fn set_extra(&mut self, key: &str, value: Node) {
        if value.is_null() {
            self.document.shift_remove(key);
        } else {
            self.document.insert(key.into(), value);
        }
    }

    fn root(&mut self, place: &Place) -> Option<&mut Node> {
        match place {
            Place::Body => Some(self.document.entry("body").or_insert_with(|| json!({}))),
            Place::Sheet(id) => {
                let node = self.sheet_node(id)?;
                Some(node.as_object_mut()?.entry("inputs").or_insert_with(|| json!({})))
            }
            Place::Shopping => {
                Some(self.document.entry(shopping::KEY).or_insert_with(|| json!({})))
            }
            Place::Line(key) => {
                let shopping = self.document.entry(shopping::KEY).or_insert(Node::Null);
                let lines = child(shopping, "lines");
                if !lines.is_object() {
                    *lines = json!({});
                }
                Some(lines.as_object_mut()?.entry(key.clone()).or_insert_with(|| json!({})))
            }
        }
    }

    fn sheet_nodes(&mut self) -> Option<&mut Vec<Node>> {
        self.document.get_mut("sheets")?.as_array_mut()
    }

    fn sheet_node(&mut self, id: &str) -> Option<&mut Node> {
        let index = self.sheet(id)?.index;
        self.sheet_nodes()?.get_mut(index)
    }
}

impl<'a> SheetEntry<'a> {
    /// Its id; a stand-in by position where the file has none.
    pub fn id(&self) -> String {
        match member(self.node, "id").and_then(Node::as_str) {
            Some(id) if !id.is_empty() => id.to_owned(),
            _ => format!("sheet {}", self.index + 1),
        }
    }

    /// Its title; empty where the file has none.
    pub fn title(&self) -> &'a str {
        member(self.node, "title").and_then(Node::as_str).unwrap_or_default()
    }

    /// Its kind; none where the file does not say, or not as text.
    pub fn kind(&self) -> Option<&'a str> {
        member(self.node, "kind").and_then(Node::as_str)
    }

    /// Its inputs as saved; null where the file has none.
    pub fn inputs(&self) -> &'a Node {
        member(self.node, "inputs").unwrap_or(&Node::Null)
    }
}

fn system_key(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Imperial => "imperial",
        UnitSystem::Metric => "metric",
    }
}

fn walk(path: &str) -> impl Iterator<Item = &str> {
    path.split('.').filter(|key| !key.is_empty())
}

/// The child of a node under a key, made where it is missing. A number as key makes a list.
fn child<'n>(node: &'n mut Node, key: &str) -> &'n mut Node {
    match key.parse::<usize>() {
        Ok(index) if index <= crate::ask::MOST_ROWS && !node.is_object() => {
            if !node.is_array() {
                *node = json!([]);
            }
            let Node::Array(items) = node else { unreachable!("made a list above") };
            while items.len() <= index {
                items.push(Node::Null);
            }
            &mut items[index]
        }
        _ => {
            if !node.is_object() {
                *node = json!({});
            }
            let Node::Object(fields) = node else { unreachable!("made a set of fields above") };
            fields.entry(key).or_insert(Node::Null)
        }
    }
}

/// Typed text as it is kept: a number only where it would be written back the same.
fn typed_node(kind: &Kind, text: &str) -> Node {
    let trimmed = text.trim();
    if trimmed.is_empty() {
        return Node::Null;
    }
    match kind {
        Kind::Number { .. } | Kind::Count { .. } => match serde_json::from_str(trimmed) {
            Ok(Node::Number(number)) if number.to_string() == trimmed => Node::Number(number),
            _ => json!(trimmed),
        },
        Kind::Flag if trimmed == "true" => json!(true),
        Kind::Flag if trimmed == "false" => json!(false),
        _ => json!(text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn project() -> Project {
        Project::new("p1", "Field bus", UnitSystem::Metric)
    }

    #[test]
    fn typed_text_is_kept_as_typed() {
        let mut project = project();
        let id = project.add_sheet("coating", "Floor", json!({}));
        let place = Place::Sheet(id);
        let words = Kind::Words;
        let count = Kind::Count { range: (1, 9) };
        project.set_typed(&place, "areas.0.length", &words, "90 1/2 in");
        project.set_typed(&place, "areas.1.length", &words, "2.3 m");
        project.set_typed(&place, "coats", &count, "3");
        project.set_typed(&place, "surface_factor", &count, "1.");
        assert_eq!(project.typed(&place, "areas.1.length"), "2.3 m");
        assert_eq!(project.row_count(&place, "areas"), 2);
        assert_eq!(project.node(&place, "coats"), Some(&json!(3)));
        assert_eq!(project.typed(&place, "surface_factor"), "1.");
        project.remove_row(&place, "areas", 0);
        assert_eq!(project.typed(&place, "areas.0.length"), "2.3 m");
        project.set_typed(&place, "coats", &count, " ");
        assert_eq!(project.node(&place, "coats"), None);
    }

    #[test]
    fn ids_of_sheets_are_not_given_twice() {
        let mut project = project();
        assert_eq!(project.add_sheet("trim", "", json!({})), "s1");
        assert_eq!(project.add_sheet("trim", "", json!({})), "s2");
        project.remove_sheet("s1");
        assert_eq!(project.add_sheet("trim", "", json!({})), "s3", "nor to another sheet later");
        assert_eq!(project.sheets().count(), 2);
    }

    #[test]
    fn a_sheet_that_is_no_set_of_fields_is_kept_and_harms_nothing() {
        let mut project = Project::from_text(r#"{"battenbook":1,"sheets":[5, "x"]}"#).unwrap();
        project.set_sheet_title("sheet 1", "renamed");
        project.set(&Place::Sheet("sheet 2".into()), "a", json!(1));
        assert_eq!(project.sheets().count(), 2);
        assert!(project.to_text().contains('5'));
    }

    #[test]
    fn fields_that_are_not_known_are_kept() {
        let text = r#"{"battenbook":2,"id":"a","later":{"x":[1,2.50,"y"]},
            "sheets":[{"id":"s1","kind":"new kind","inputs":{"a":1},"colour":"green"}]}"#;
        let mut project = Project::from_text(text).unwrap();
        project.set_name("B");
        let again: Node = serde_json::from_str(&project.to_text()).unwrap();
        assert_eq!(again["later"], json!({"x":[1,2.50,"y"]}));
        assert_eq!(again["sheets"][0]["colour"], json!("green"));
    }
}
