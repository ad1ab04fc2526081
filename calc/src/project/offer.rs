//! Sheets made from what another sheet offers, and what happens when that sheet changes.

use serde_json::{Map, json};

use super::{Evaluation, Node, Place, Project};
use crate::ask::{Ask, Kind};
use crate::quantity::{LENGTH, Measure};
use crate::report::Offer;
use crate::sheet;

/// Under which key of a sheet it is kept what it was made from: the id of the other sheet, and the
/// inputs as they were taken.
const MADE_FROM: &str = "made_from";

/// Lengths closer than this are the same: what rounding to a tape of the other system leaves. [m]
const SAME_M: f64 = 0.006;

/// A sheet that is not as the sheet that it was made from would make it now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Behind<'a> {
    /// The id of the sheet that it was made from.
    pub source: String,
    /// What that sheet offers now.
    pub offer: &'a Offer,
    /// How many inputs are others than they were when taken.
    pub changes: usize,
}

impl Project {
    /// Makes the sheet that another one offers, and returns its id.
    pub fn make_offered(&mut self, source: &str, offer: &Offer) -> String {
        let title = sheet::find(offer.kind).map_or("", |sheet| sheet.title.say(self.words));
        let id = self.add_sheet(offer.kind, title, json!({}));
        let place = Place::Sheet(id.clone());
        for (path, text) in &offer.inputs {
            self.put_offered(&place, offer.kind, path, text);
        }
        self.note_taken(&id, source, offer);
        id
    }

    /// The sheet of a kind that was made from another one, if there is one: its id.
    pub fn made_of(&self, source: &str, kind: &str) -> Option<String> {
        let alike = self.sheets().filter(|sheet| sheet.kind() == Some(kind));
        alike
            .map(|sheet| sheet.id())
            .find(|id| self.made_from(id).is_some_and(|(from, _)| from == source))
    }

    /// What a sheet was made from has changed since: how, and what it would take now. None where it
    /// is up to date, was made by hand, or where the other sheet is gone or faulty.
    pub fn behind<'a>(&self, id: &str, all: &'a Evaluation) -> Option<Behind<'a>> {
        let (source, taken) = self.made_from(id)?;
        let kind = self.sheet(id)?.kind()?;
        let report = all.sheet(&source)?.as_ref().ok()?;
        let offer = report.offers.iter().find(|offer| offer.kind == kind)?;
        let is_new = |(path, text): &&(String, String)| {
            !text_at(&taken, path).is_some_and(|old| is_same(old, text))
        };
        let gone = taken.keys().filter(|path| !offer.inputs.iter().any(|(p, _)| p == *path));
        let changes = offer.inputs.iter().filter(is_new).count() + gone.count();
        (changes > 0).then_some(Behind { source, offer, changes })
    }

    /// Takes what has changed in an offer since it was taken. What was typed over stays where the
    /// offer did not change; a row that was taken out stays out, and one that is no longer offered
    /// goes.
    pub fn catch_up(&mut self, id: &str, offer: &Offer) {
        let Some((source, taken)) = self.made_from(id) else { return };
        let place = Place::Sheet(id.to_owned());
        let gone = self.rows_gone(&place, &taken, offer);
        for (list, name) in &gone {
            if let Some(index) = self.find_row(&place, list, name) {
                self.remove_row(&place, list, index);
            }
        }
        // Rows are met one after another, each with its name first.
        let mut row: Option<(&str, Option<usize>, Option<String>)> = None;
        for (path, text) in &offer.inputs {
            let Some((list, _, key)) = split_row(path) else {
                if !text_at(&taken, path).is_some_and(|old| is_same(old, text)) {
                    self.put_offered(&place, offer.kind, path, text);
                }
                continue;
            };
            let prefix = path.strip_suffix(key).unwrap_or(path);
            if row.as_ref().is_none_or(|(known, ..)| *known != prefix) {
                let old_prefix = taken_row(&taken, list, text);
                let index = match (self.find_row(&place, list, text), &old_prefix) {
                    (None, None) => {
                        let end = self.row_count(&place, list);
                        self.add_row(&place, list, json!({}));
                        Some(end)
                    }
                    (found, _) => found,
                };
                row = Some((prefix, index, old_prefix));
            }
            let Some((_, Some(index), old_prefix)) = &row else { continue };
            let old = old_prefix
                .as_ref()
                .and_then(|prefix| text_at(&taken, &[prefix.as_str(), key].concat()));
            if !old.is_some_and(|old| is_same(old, text)) {
                let here = [list, ".", index.to_string().as_str(), ".", key].concat();
                self.put_offered(&place, offer.kind, &here, text);
            }
        }
        self.note_taken(id, &source, offer);
    }

    /// Rows that were taken and are no longer offered: list and name.
    fn rows_gone(
        &self,
        place: &Place,
        taken: &Map<String, Node>,
        offer: &Offer,
    ) -> Vec<(String, String)> {
        let mut gone = Vec::new();
        let mut last = String::new();
        for (path, text) in taken {
            let Some((list, _, key)) = split_row(path) else { continue };
            let prefix = path.strip_suffix(key).unwrap_or(path);
            if last == prefix {
                continue;
            }
            prefix.clone_into(&mut last);
            let name = text.as_str().unwrap_or_default();
            let offered = offer.inputs.iter().any(|(path, text)| {
                split_row(path).is_some_and(|(l, _, k)| l == list && k == key) && text == name
            });
            if !offered && self.find_row(place, list, name).is_some() {
                gone.push((list.to_owned(), name.to_owned()));
            }
        }
        gone
    }

    /// The row of a list that has this name in its first input.
    fn find_row(&self, place: &Place, list: &str, name: &str) -> Option<usize> {
        let rows = self.node(place, list)?.as_array()?;
        rows.iter().position(|row| {
            row.as_object().is_some_and(|row| {
                ["id", "label", "name"].iter().any(|key| row.get(*key).is_some_and(|n| n == name))
            })
        })
    }

    fn put_offered(&mut self, place: &Place, kind: &str, path: &str, text: &str) {
        let asks = sheet::find(kind).map_or(&[][..], |sheet| sheet.asks);
        let kind = find_kind(asks, path).unwrap_or(Kind::Words);
        self.set_typed(place, path, &kind, text);
    }

    fn made_from(&self, id: &str) -> Option<(String, Map<String, Node>)> {
        let node = self.sheet(id)?.node.get(MADE_FROM)?;
        let taken = node.get("taken")?.as_object()?.clone();
        Some((node.get("sheet")?.as_str()?.to_owned(), taken))
    }

    fn note_taken(&mut self, id: &str, source: &str, offer: &Offer) {
        let mut taken = Map::new();
        for (path, text) in &offer.inputs {
            taken.insert(path.clone(), json!(text));
        }
        if let Some(fields) = self.sheet_node(id).and_then(Node::as_object_mut) {
            fields.insert(MADE_FROM.into(), json!({ "sheet": source, "taken": taken }));
        }
    }
}

/// `runs.3.length` as its list, its number and its key.
fn split_row(path: &str) -> Option<(&str, usize, &str)> {
    let (list, rest) = path.split_once('.')?;
    let (index, key) = rest.split_once('.')?;
    Some((list, index.parse().ok()?, key))
}

/// Where the row of a list with this name stood when it was taken: `runs.3.`.
fn taken_row(taken: &Map<String, Node>, list: &str, name: &str) -> Option<String> {
    let mut last = "";
    for (path, text) in taken {
        let Some((of, _, key)) = split_row(path) else { continue };
        let prefix = path.strip_suffix(key).unwrap_or(path);
        // The first input of a row names it.
        if of == list && prefix != last && text == name {
            return Some(prefix.to_owned());
        }
        last = prefix;
    }
    None
}

fn text_at<'a>(taken: &'a Map<String, Node>, path: &str) -> Option<&'a str> {
    taken.get(path)?.as_str()
}

/// The same text, or the same length but for its rounding in another unit.
fn is_same(old: &str, new: &str) -> bool {
    let length = |text: &str| Measure::read(text, &LENGTH, None).ok().map(|length| length.si());
    old == new || length(old).zip(length(new)).is_some_and(|(old, new)| (old - new).abs() < SAME_M)
}

/// What the input at a path takes.
fn find_kind(asks: &[&Ask], path: &str) -> Option<Kind> {
    let (head, rest) = match path.split_once('.') {
        Some((head, rest)) => (head, Some(rest)),
        None => (path, None),
    };
    asks.iter().find_map(|ask| match (ask.kind, rest) {
        (Kind::Either(of), _) => find_kind(of, path),
        _ if ask.key != head => None,
        (Kind::Group(of), Some(rest)) => find_kind(of, rest),
        (Kind::Rows { asks, .. }, Some(rest)) => find_kind(asks, rest.split_once('.')?.1),
        (kind, _) => Some(kind),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::UnitSystem;
    use crate::words::Phrase;

    fn offer(lamps: &[(&str, &str)]) -> Offer {
        let mut inputs = vec![("source_voltage".to_owned(), "12.8 V".to_owned())];
        for (index, (name, length)) in lamps.iter().enumerate() {
            let from = if index == 0 { "source" } else { lamps[index - 1].0 };
            for (key, text) in [("id", format!("run {name}")), ("from", from.to_owned())]
                .into_iter()
                .chain([("to", (*name).to_owned()), ("length", (*length).to_owned())])
            {
                inputs.push((format!("runs.{index}.{key}"), text));
            }
        }
        Offer { label: Phrase::Written("Wire these lamps"), kind: "circuit", inputs }
    }

    fn lengths(project: &Project, id: &str) -> Vec<String> {
        let place = Place::Sheet(id.to_owned());
        (0..project.row_count(&place, "runs"))
            .map(|index| {
                let typed = |key| project.typed(&place, &format!("runs.{index}.{key}"));
                format!("{} {}", typed("to"), typed("length"))
            })
            .collect()
    }

    #[test]
    fn what_was_typed_over_stays_and_what_was_taken_out_stays_out() {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let id = project.make_offered("s9", &offer(&[("a", "1 m"), ("b", "2 m"), ("c", "3 m")]));
        assert_eq!(lengths(&project, &id), ["a 1 m", "b 2 m", "c 3 m"]);
        assert_eq!(project.made_of("s9", "circuit"), Some(id.clone()));
        assert_eq!(project.made_of("s8", "circuit"), None);
        let place = Place::Sheet(id.clone());
        project.set(&place, "runs.1.length", json!("2.5 m"));
        project.remove_row(&place, "runs", 2);
        project.add_row(&place, "runs", json!({ "id": "fan", "to": "fan", "length": "9 m" }));
        // A length that changed, a row that is new; b did not change, c is out.
        project.catch_up(
            &id,
            &offer(&[("a", "1100 mm"), ("b", "2 m"), ("c", "3200 mm"), ("d", "4 m")]),
        );
        assert_eq!(lengths(&project, &id), ["a 1100 mm", "b 2.5 m", "fan 9 m", "d 4 m"]);
        // Fewer lamps.
        project.catch_up(&id, &offer(&[("a", "1100 mm")]));
        assert_eq!(lengths(&project, &id), ["a 1100 mm", "fan 9 m"]);
    }

    #[test]
    fn the_same_length_in_another_unit_is_no_change() {
        assert!(is_same("1270 mm", "50 in") && is_same("7 ft 2 1/2 in", "2197 mm"));
        assert!(!is_same("1270 mm", "1277 mm") && !is_same("3 W", "4 W"));
        assert!(is_same("3 W", "3 W"));
    }

    /// From lamps to a circuit and back: every offer of every example makes a sheet that gives
    /// answers, and is not behind, in either unit system.
    #[test]
    fn what_examples_offer_can_be_made_and_followed() {
        let mut offers = 0;
        for sheet in crate::sheet::SHEETS {
            let mut project = Project::new("p", "", UnitSystem::Imperial);
            let body = json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
                "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } } });
            project.set(&Place::Body, "", body);
            let source = project.add_sheet(sheet.kind, "", json!({}));
            project.fill_example(&source);
            let all = crate::evaluate(&project);
            for offer in &all.sheet(&source).unwrap().as_ref().unwrap().offers {
                let id = project.make_offered(&source, offer);
                offers += 1;
                for system in [UnitSystem::Imperial, UnitSystem::Metric] {
                    project.set_system(system);
                    let all = crate::evaluate(&project);
                    assert!(
                        all.sheet(&id).unwrap().is_ok(),
                        "{}: {:#?}",
                        sheet.kind,
                        all.sheet(&id)
                    );
                    assert_eq!(project.behind(&id, &all), None, "{}", sheet.kind);
                }
            }
        }
        assert!(offers > 0);
    }

    #[test]
    fn a_circuit_follows_the_lamps_that_it_was_made_of() {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let lights = project.add_sheet("lights", "", json!({}));
        let place = Place::Sheet(lights.clone());
        project.set(
            &place,
            "",
            serde_json::from_str(sheet::find("lights").unwrap().example).unwrap(),
        );
        project.set(&place, "area", json!({ "length": "5 m", "width": "2 m" }));
        project.set(&place, "lamp_height", json!("1.9 m"));
        let offer = |project: &Project| {
            crate::evaluate(project).sheet(&lights).unwrap().as_ref().unwrap().offers[0].clone()
        };
        let circuit = project.make_offered(&lights, &offer(&project));
        let runs = |project: &Project| project.row_count(&Place::Sheet(circuit.clone()), "runs");
        assert_eq!(runs(&project), 12);
        for columns in [7, 3, 6] {
            project.set(&place, "columns", json!(columns));
            let all = crate::evaluate(&project);
            let behind = project.behind(&circuit, &all).unwrap();
            assert!(behind.changes > 0 && behind.source == lights);
            let offer = behind.offer.clone();
            project.catch_up(&circuit, &offer);
            let all = crate::evaluate(&project);
            assert_eq!(project.behind(&circuit, &all), None);
            assert!(all.sheet(&circuit).unwrap().is_ok(), "{columns}: {:#?}", all.sheet(&circuit));
            assert_eq!(runs(&project), 2 * columns);
        }
    }
}
