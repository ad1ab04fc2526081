//! Names that lines are known by: a paint, a wood, a supply. One that is given another name stays the same line: what was ticked and
//! typed for it follows.
//!
//! Not where the old name still stands somewhere else (that is what the line is, then), nor where the new one already does (what is
//! kept there is its own).

use serde_json::{Map, json};

use super::rows::MADE;
use super::{Node, Place, Project, shopping};
use crate::ask::Need;
use crate::lists::LineId;
use crate::sheet;
use crate::text::text;

/// Names that are being typed anew: under `made` in the file, by sheet and path, until there is one again.
const EMPTIED: &str = "emptied";

impl Project {
    /// What a line of a sheet was called in the input at a path, before it is typed into.
    pub(super) fn name_before(&self, place: &Place, path: &str) -> String {
        match self.typed(place, path) {
            blank if blank.trim().is_empty() => self.default_name(place, path),
            name => name,
        }
    }

    /// Lets what is kept for a line follow its new name; `before` is the old one.
    pub(super) fn follow_name(&mut self, place: &Place, path: &str, before: &str) {
        let Place::Sheet(id) = place else { return };
        let at = text!("{} {}", id, path);
        let typed = self.typed(place, path);
        let now = if typed.trim().is_empty() { self.default_name(place, path) } else { typed };
        let mut made = match self.document.get(MADE) {
            Some(Node::Object(made)) => made.clone(),
            _ => Map::new(),
        };
        let emptied = made.entry(EMPTIED).or_insert_with(|| json!({}));
        let kept = emptied.as_object_mut().and_then(|all| all.shift_remove(&at));
        let kept = kept.as_ref().and_then(Node::as_str).filter(|_| before.trim().is_empty());
        let before = kept.unwrap_or(before);
        let (old, new) = (LineId::name(before), LineId::name(&now));
        if new.is_empty() && !old.is_empty() {
            emptied[at] = json!(before);
        }
        if emptied.as_object().is_none_or(Map::is_empty) {
            made.shift_remove(EMPTIED);
        }
        if made.is_empty() {
            self.document.shift_remove(MADE);
        } else {
            self.document.insert(MADE.into(), Node::Object(made));
        }
        if old.is_empty() || new.is_empty() || old == new {
            return;
        }
        let uses =
            |name: &str| self.sheets().map(|sheet| count(sheet.inputs(), name)).sum::<usize>();
        if uses(&old) == 0 && uses(&new) <= 1 {
            self.move_kept(&old, &new);
        }
    }

    /// What stands for a name that is left out.
    fn default_name(&self, place: &Place, path: &str) -> String {
        let Place::Sheet(id) = place else { return String::new() };
        let kind = self.sheet(id).and_then(|sheet| sheet.kind()).and_then(sheet::find);
        let ask = kind.and_then(|kind| kind.asks.iter().find(|ask| ask.key == path));
        match ask.map(|ask| ask.need) {
            Some(Need::Default(text)) => text.to_owned(),
            _ => String::new(),
        }
    }

    /// Moves what is kept for the lines of one name to those of another.
    fn move_kept(&mut self, old: &str, new: &str) {
        let moved = |key: &str| {
            let (line, rest) = key.find('|').map_or((key, ""), |at| key.split_at(at));
            let mut parts: Vec<&str> = line.split('/').collect();
            match parts.get_mut(1) {
                Some(part) if *part == old => *part = new,
                _ => return None,
            }
            Some(text!("{}{}", parts.join("/"), rest))
        };
        let rename = |kept: &mut Node| {
            let Some(kept) = kept.as_object_mut() else { return };
            if !kept.keys().any(|key| moved(key).is_some()) {
                return;
            }
            let before = std::mem::take(kept);
            for (key, value) in before.clone() {
                let key = moved(&key).filter(|key| !before.contains_key(key)).unwrap_or(key);
                kept.insert(key, value);
            }
        };
        if let Some(Node::Object(ticked)) = self.document.get_mut("ticked") {
            ticked.values_mut().for_each(rename);
        }
        let Some(shopping) = self.document.get_mut(shopping::KEY) else { return };
        if let Some(lines) = shopping.get_mut("lines") {
            rename(lines);
        }
        for own in shopping.get_mut("own").and_then(Node::as_array_mut).into_iter().flatten() {
            let to = own.get("adds_to").and_then(Node::as_str).and_then(moved);
            if let Some(to) = to {
                own["adds_to"] = json!(to);
            }
        }
    }
}

/// How often a name stands among inputs.
fn count(node: &Node, name: &str) -> usize {
    match node {
        Node::String(text) => usize::from(LineId::name(text) == name),
        Node::Array(items) => items.iter().map(|item| count(item, name)).sum(),
        Node::Object(fields) => fields.values().map(|value| count(value, name)).sum(),
        _ => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ask::Kind;
    use crate::quantity::UnitSystem;

    fn project() -> Project {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        project.add_sheet("cut_plan", "", json!({ "material": "1x4 pine" }));
        project.add_sheet("coating", "", json!({ "supplies": [{ "label": "brush" }] }));
        project.set_extra(
            "ticked",
            json!({ "buy": { "stock/1x4-pine/2400mm": 3, "supply/brush": 1 },
            "cuts": { "stock/1x4-pine/2400mm|s1.p1@700|1": 1 } }),
        );
        project.set_extra(
            shopping::KEY,
            json!({ "lines": { "stock/1x4-pine/2400mm": { "price": 4 } },
            "own": [{ "item": "more", "adds_to": "supply/brush" }] }),
        );
        project
    }

    fn type_in(project: &mut Project, sheet: &str, path: &str, texts: &[&str]) {
        for text in texts {
            project.set_typed(&Place::Sheet(sheet.to_owned()), path, &Kind::Words, text);
        }
    }

    #[test]
    fn what_is_kept_for_a_line_follows_its_name() {
        let mut renamed = project();
        type_in(&mut renamed, "s1", "material", &["1x4 pin", "1x4 pi", "", "f", "fir"]);
        type_in(&mut renamed, "s2", "supplies.0.label", &["brus", "", "w", "wide brush"]);
        let wanted = project().to_text().replace("1x4-pine", "fir").replace("1x4 pine", "fir");
        let wanted = wanted
            .replace("supply/brush", "supply/wide-brush")
            .replace("\"brush\"", "\"wide brush\"");
        assert_eq!(renamed.to_text(), wanted);
        type_in(&mut renamed, "s1", "material", &["1x4 pine"]);
        type_in(&mut renamed, "s2", "supplies.0.label", &["brush"]);
        assert_eq!(renamed, project());
    }

    #[test]
    fn a_name_that_still_stands_elsewhere_keeps_what_is_its_own() {
        let mut two = project();
        two.add_sheet("cut_plan", "", json!({ "material": "1x4 Pine" }));
        let before = two.extra("ticked").cloned();
        type_in(&mut two, "s1", "material", &["fir"]);
        assert_eq!(two.extra("ticked").cloned(), before);
        // Nor does a name that something has already take it away from that.
        type_in(&mut two, "s2", "supplies.0.label", &["1x4 pine"]);
        assert_eq!(two.extra("ticked").cloned(), before);
    }
}
