//! What can be drawn of a body while it is being measured.

use super::{Body, Opening};
use crate::quantity::Length;

/// What is right by itself, though something beside it is wrong or missing. Drawn alone: no sheet works with it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SoFar {
    /// Whether the ribs were told by their spacing.
    pub evenly: bool,
    /// Ribs, each with its place among those that were typed.
    pub ribs: Vec<(usize, Length)>,
    /// The place of the rib that is typed next: the first that is wrong, else the one after the last.
    pub next_rib: usize,
    /// Openings in the roof, as the ribs.
    pub openings: Vec<(usize, Opening)>,
    /// The place of the opening that is typed next, as of the ribs.
    pub next_opening: usize,
}

impl SoFar {
    /// Of a body with its faults found, before what is wrong is taken out.
    pub(super) fn of(body: &Body, evenly: bool) -> Self {
        let wrong = |path: &str| {
            body.faults.iter().any(|fault| {
                let rest = fault.field.strip_prefix(path);
                rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
            })
        };
        // As where there are more than are read.
        let all_are_wrong = body
            .faults
            .iter()
            .any(|fault| ["ribs", "ribs.measured"].contains(&fault.field.as_str()));
        let rib_is_wrong = |row: &usize| {
            let path = if evenly { "ribs".to_owned() } else { format!("ribs.measured.{row}") };
            all_are_wrong || wrong(&path)
        };
        let opening_is_wrong = |row: &usize| wrong(&format!("openings.{row}"));
        let (ribs, openings) = (body.ribs.len(), body.openings.len());
        let rows = body.ribs.iter().copied().enumerate();
        let named = body.openings.iter().cloned().enumerate();
        Self {
            evenly,
            ribs: rows.filter(|(row, _)| !rib_is_wrong(row)).collect(),
            next_rib: (0..ribs).find(rib_is_wrong).unwrap_or(ribs),
            openings: named.filter(|(row, _)| !opening_is_wrong(row)).collect(),
            next_opening: (0..openings).find(opening_is_wrong).unwrap_or(openings),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Style, UnitSystem};
    use serde_json::json;
    use uom::si::length::millimeter;

    #[test]
    fn what_is_right_is_drawn_though_something_beside_it_is_wrong() {
        let node = json!({ "ribs": { "measured": ["400 mm", "300 mm", "900 mm", "a yard"] },
            "openings": [{ "name": "vent", "x": "1 m", "y": "700 mm", "length": "400 mm", "width": "400 mm" },
                { "name": "hatch", "x": "2 m" }] });
        let body = Body::read(&node, Style::new(UnitSystem::Metric));
        assert!(body.ribs.is_empty() && body.openings.is_empty(), "no sheet gets any");
        let so_far = &body.so_far;
        let ribs: Vec<(usize, f64)> =
            so_far.ribs.iter().map(|(row, x)| (*row, x.get::<millimeter>().round())).collect();
        assert_eq!(ribs, [(0, 400.0), (2, 900.0)]);
        assert_eq!((so_far.next_rib, so_far.next_opening), (1, 1));
        let openings: Vec<&str> =
            so_far.openings.iter().map(|(_, one)| one.name.as_str()).collect();
        assert_eq!(openings, ["vent"]);
    }
}
