//! A sheet's example in a project: the sheets that it takes from are there too.

use serde_json::json;

use super::{Node, Place, Project};
use crate::ask::{Ask, Kind};
use crate::sheet;

impl Project {
    /// Fills a sheet with the example of its kind. What the example takes from another sheet it
    /// takes from the project's first one of that kind; where there is none, one is added, filled
    /// with its own example.
    pub fn fill_example(&mut self, id: &str) {
        let Some(kind) = self.sheet(id).and_then(|entry| entry.kind()).and_then(sheet::find) else {
            return;
        };
        let Ok(mut inputs) = serde_json::from_str(kind.example) else { return };
        self.refer(kind.asks, &mut inputs);
        self.set(&Place::Sheet(id.to_owned()), "", inputs);
    }

    /// Puts ids of this project's sheets where the example names a sheet.
    fn refer(&mut self, asks: &[&Ask], node: &mut Node) {
        for ask in asks {
            if let Kind::Either(of) = ask.kind {
                self.refer(of, node);
                continue;
            }
            let Some(here) = node.get_mut(ask.key) else { continue };
            match ask.kind {
                Kind::Group(of) => self.refer(of, here),
                Kind::Rows { asks, .. } => {
                    for row in here.as_array_mut().into_iter().flatten() {
                        self.refer(asks, row);
                    }
                }
                Kind::SheetOf(kind) => *here = json!(self.first_of(kind)),
                _ => {}
            }
        }
    }

    fn first_of(&mut self, kind: &str) -> String {
        // Of several kinds that would do, the example has the first.
        let kind = kind.split(' ').next().unwrap_or_default();
        let known = self.sheets().find(|entry| entry.kind() == Some(kind)).map(|entry| entry.id());
        known.unwrap_or_else(|| {
            let title = sheet::find(kind).map_or("", |sheet| sheet.title.say(self.words));
            let id = self.add_sheet(kind, title, json!({}));
            self.fill_example(&id);
            id
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::UnitSystem;

    #[test]
    fn every_example_gives_answers_in_a_measured_project() {
        for sheet in sheet::SHEETS {
            let mut project = Project::new("p", "", UnitSystem::Metric);
            let body = json!({ "length": "5480 mm", "width": "2060 mm", "height": "1980 mm", "rib_width": "38 mm",
                "ribs": { "even": { "count": 13, "first": "210 mm", "spacing": "420 mm" } } });
            project.set(&Place::Body, "", body);
            let id = project.add_sheet(sheet.kind, "", json!({}));
            project.fill_example(&id);
            for (id, result) in crate::evaluate(&project).sheets {
                assert!(result.is_ok(), "{} {id}: {result:#?}", sheet.kind);
            }
        }
    }

    #[test]
    fn an_example_takes_from_the_sheet_that_is_there() {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let energy = project.add_sheet("energy", "", json!({}));
        let solar = project.add_sheet("solar", "", json!({}));
        project.fill_example(&solar);
        assert_eq!(project.typed(&Place::Sheet(solar), "sheet"), energy);
        assert_eq!(project.sheets().count(), 2);
    }
}
