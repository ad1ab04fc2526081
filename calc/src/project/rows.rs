//! What a row of a list is known by, whatever stands before it and whatever it is called.
//!
//! A row may have a `key` of its own in the file. One without is known by its `id` where it has one (a run of a circuit), else by its
//! place, from 1. Rows get a key when they are added, and before anything is taken out in front of them, so that no tick of one row
//! ever becomes another's. Numbers that rows and sheets once had are not given again: the highest stand under `made` in the file.

use serde_json::{Map, json};

use super::{Node, Place, Project};
use crate::node::{KEY, id_of, key_of, keys, own_of};
use crate::text::text;

/// Under which key the file keeps the highest numbers given so far.
pub(super) const MADE: &str = "made";
/// The highest number that is looked at.
const MOST: u64 = u32::MAX as u64;

/// Whether two rows are the same but for what they are known by.
pub(super) fn alike(one: &Node, other: &Node) -> bool {
    let (Some(a), Some(b)) = (one.as_object(), other.as_object()) else { return one == other };
    let mut keys = a.keys().chain(b.keys()).filter(|key| *key != KEY);
    keys.all(|key| a.get(key) == b.get(key))
}

fn number(key: &str) -> u64 {
    // Only numbers that were counted up to.
    key.parse::<u32>().map_or(0, u64::from)
}

impl Project {
    /// The rows of a list whose lines are known by row: those of a sheet and of the body.
    fn known_rows(&self, place: &Place, list: &str) -> Option<&Vec<Node>> {
        matches!(place, Place::Sheet(_) | Place::Body)
            .then(|| self.node(place, list)?.as_array())?
    }

    /// The highest number given so far, to rows or to sheets.
    fn made(&self, what: &str) -> u64 {
        self.document.get(MADE).and_then(|made| made.get(what)?.as_u64()).unwrap_or(0).min(MOST)
    }

    fn set_made(&mut self, what: &str, highest: u64) {
        if highest > self.made(what) {
            let made = self.document.entry(MADE).or_insert_with(|| json!({}));
            if !made.is_object() {
                *made = Node::Object(Map::new());
            }
            made[what] = json!(highest);
        }
    }

    /// Gives a row a key that none of its list has had, in place of one that it was copied with.
    pub(super) fn key_new_row(&mut self, place: &Place, list: &str, index: usize) {
        let Some(rows) = self.known_rows(place, list) else { return };
        let Some(row) = rows.get(index).filter(|row| row.is_object()) else { return };
        if id_of(row).is_some() && key_of(row).is_none() {
            return;
        }
        let mut others = rows.clone();
        others[index] = Node::Null;
        let highest = keys(&others).iter().map(|key| number(key)).max().unwrap_or(0);
        let fresh = (highest.max(self.made("rows")) + 1).max(index as u64 + 1);
        self.set(place, &text!("{}.{}.{}", list, &index, KEY), json!(fresh.to_string()));
    }

    /// Writes down what the rows of a list are known by, before one of them is taken out.
    pub(super) fn key_rows(&mut self, place: &Place, list: &str) {
        let Some(rows) = self.known_rows(place, list) else { return };
        let keys = keys(rows);
        let highest = keys.iter().map(|key| number(key)).max().unwrap_or(0);
        let open: Vec<(usize, String)> = rows
            .iter()
            .zip(keys)
            .enumerate()
            .filter(|(_, (row, key))| row.is_object() && own_of(row) != Some(key.as_str()))
            .map(|(at, (_, key))| (at, key))
            .collect();
        for (at, key) in open {
            self.set(place, &text!("{}.{}.{}", list, &at, KEY), json!(key));
        }
        self.set_made("rows", highest);
    }

    /// Before a row is typed into: one that is made by that has a key where its place was another's, and
    /// one that is known by its name keeps it as a key.
    pub(super) fn key_before(&mut self, place: &Place, path: &str) -> Option<(String, usize)> {
        let (row, field) = path.rsplit_once('.')?;
        let (list, index) = row.rsplit_once('.')?;
        let index: usize = index.parse().ok()?;
        let rows = self.known_rows(place, list).map_or(&[][..], Vec::as_slice);
        let Some(old) = rows.get(index).filter(|row| !row.is_null()) else {
            let was =
                self.made("rows") > index as u64 || rows.iter().any(|row| key_of(row).is_some());
            return was.then(|| (list.to_owned(), index));
        };
        if field == "id"
            && key_of(old).is_none()
            && let Some(id) = id_of(old).map(str::to_owned)
        {
            self.set(place, &text!("{}.{}", row, KEY), json!(id));
        }
        None
    }

    /// The id of a new sheet: the first that is free, and that no sheet has had.
    pub(super) fn fresh_sheet_id(&self) -> String {
        (self.made("sheets") + 1..)
            .map(|number| text!("s{}", &number))
            .find(|id| self.sheet(id).is_none())
            .unwrap_or_default()
    }

    /// Notes that a sheet is taken out, so that no other gets its id and with it its ticks.
    pub(super) fn note_sheet_gone(&mut self, id: &str) {
        if let Some(number) = id.strip_prefix('s') {
            self.set_made("sheets", self::number(number));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::UnitSystem;

    fn project(rows: Node) -> (Project, Place) {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let id = project.add_sheet("cut_plan", "", json!({ "pieces": rows }));
        (project, Place::Sheet(id))
    }

    fn known(project: &Project, place: &Place) -> Vec<String> {
        keys(project.node(place, "pieces").unwrap().as_array().unwrap())
    }

    #[test]
    fn what_is_taken_out_moves_no_key_and_gives_none_to_what_comes() {
        let (mut project, place) = project(json!([{}, {}, {}]));
        assert_eq!(known(&project, &place), ["1", "2", "3"]);
        project.remove_row(&place, "pieces", 2);
        project.add_row(&place, "pieces", json!({}));
        assert_eq!(known(&project, &place), ["1", "2", "4"]);
        project.remove_row(&place, "pieces", 0);
        assert_eq!(known(&project, &place), ["2", "4"]);
        // A copy of a row is another row.
        let copy = project.node(&place, "pieces.0").cloned().unwrap();
        project.add_row(&place, "pieces", copy);
        assert_eq!(known(&project, &place), ["2", "4", "5"]);
        // A row that is made by typing into it.
        project.set_typed(&place, "pieces.3.label", &crate::ask::Kind::Words, "rail");
        assert_eq!(known(&project, &place), ["2", "4", "5", "6"]);
    }

    #[test]
    fn rows_of_a_file_that_was_edited_by_hand_are_told_apart() {
        let keys = |rows: Node| keys(rows.as_array().unwrap());
        assert_eq!(keys(json!([{}, { "key": "1" }, { "key": "1" }])), ["1-2", "1", "3"]);
        assert_eq!(keys(json!([{ "key": "" }, null, { "key": 7 }, 5])), ["1", "2", "3", "4"]);
        assert_eq!(
            keys(json!([{ "key": "a|b" }, { "id": "r2" }, { "id": "r2" }])),
            ["1", "r2", "3"]
        );
    }

    #[test]
    fn a_run_that_is_renamed_is_known_by_its_first_name() {
        let (mut project, place) = project(json!([{ "id": "r1" }, { "id": "r2" }]));
        let words = crate::ask::Kind::Words;
        project.set_typed(&place, "pieces.0.id", &words, "feed");
        project.set_typed(&place, "pieces.0.id", &words, "feed 2");
        assert_eq!(known(&project, &place), ["r1", "r2"]);
    }

    #[test]
    fn a_sheet_that_was_taken_out_leaves_its_id_to_none() {
        let (mut project, _) = project(json!([]));
        let second = project.add_sheet("trim", "", json!({}));
        project.remove_sheet(&second);
        assert_eq!(project.add_sheet("coating", "", json!({})), "s3");
    }
}
