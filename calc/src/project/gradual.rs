//! The same evaluation in steps, for whoever has to show that it goes on: each step adds a sheet to what was worked out before.

use std::sync::Arc;

use super::evaluate::{Evaluation, evaluate_since, takes_weight};
use super::{Node, Project};
use crate::sheet;

/// An evaluation in steps.
///
/// First every sheet is worked out, then what several of them cut together is planned. What the last step gives is what `evaluate`
/// gives, and is taken over by it.
pub struct Gradual {
    whole: Project,
    /// The project with the sheets that have had their turn.
    part: Project,
    /// The sheets that have not, the next one last.
    waiting: Vec<Node>,
    /// Whether the lists are being made.
    lists: bool,
    count: usize,
    last: Option<Arc<Evaluation>>,
}

impl Gradual {
    /// Begins with nothing worked out.
    pub fn new(project: &Project) -> Self {
        let mut gradual = Self {
            whole: project.clone(),
            part: project.clone(),
            waiting: Vec::new(),
            lists: false,
            count: project.sheets().count(),
            last: None,
        };
        gradual.begin();
        gradual
    }

    /// Takes all sheets out of the part again.
    fn begin(&mut self) {
        let Some(nodes) = self.part.sheet_nodes() else { return };
        let mut sheets = std::mem::take(nodes);
        sheets.reverse();
        // What takes the weight of the buy list would have all lists made at each step.
        let last = |node: &Node| {
            let kind = node.get("kind").and_then(Node::as_str).and_then(sheet::find);
            kind.is_some_and(takes_weight)
        };
        let (mut waiting, others): (Vec<Node>, Vec<Node>) = sheets.into_iter().partition(last);
        waiting.extend(others);
        self.waiting = waiting;
    }

    /// Works out one sheet more; false once all is done.
    pub fn step(&mut self) -> bool {
        let Some(next) = self.waiting.pop() else {
            if self.lists {
                return false;
            }
            // Once more over all sheets: they are taken over, and what each adds to the lists is planned.
            self.lists = true;
            self.part = self.whole.clone();
            self.begin();
            let of_all = evaluate_since(&self.whole, self.last.as_deref());
            self.last = Some(Arc::new(of_all));
            return !self.waiting.is_empty();
        };
        if let Some(nodes) = self.part.sheet_nodes() {
            nodes.push(next);
        }
        let now = evaluate_since(&self.part, self.last.as_deref());
        if self.lists {
            now.make_lists();
        }
        self.last = Some(Arc::new(now));
        !(self.lists && self.waiting.is_empty())
    }

    /// How far it is: steps done, and steps in all.
    pub fn progress(&self) -> (usize, usize) {
        let here = self.count.saturating_sub(self.waiting.len());
        (if self.lists { self.count + here } else { here }, 2 * self.count)
    }

    /// What was worked out by now, to be taken over by `evaluate_since`.
    pub fn so_far(self) -> Option<Arc<Evaluation>> {
        self.last
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::evaluate;
    use serde_json::json;

    const DEMO: &str = include_str!("../../../shared/demo.json");

    #[test]
    fn step_by_step_comes_to_the_same() {
        let project = Project::from_text(DEMO).unwrap();
        let mut gradual = Gradual::new(&project);
        let count = project.sheets().count();
        assert_eq!(gradual.progress(), (0, 2 * count));
        let mut steps = 1;
        while gradual.step() {
            steps += 1;
            assert!(steps <= 2 * count + 2, "it comes to an end");
        }
        assert_eq!(gradual.progress(), (2 * count, 2 * count));
        let so_far = gradual.so_far();
        let last = evaluate_since(&project, so_far.as_deref());
        let anew = evaluate(&project);
        assert!(last == anew);
        assert_eq!((&*last.buy_list, &*last.cut_list), (&*anew.buy_list, &*anew.cut_list));
    }

    /// What the last step has planned together is not planned once more.
    #[test]
    fn what_was_planned_together_is_taken_over() {
        let inputs = |length: &str| {
            json!({ "pieces": [{ "length": length, "count": 4 }], "kerf": "0 in",
                "stock": [{ "length": "8 ft", "price": 5 }] })
        };
        let mut project = Project::new("p", "", crate::quantity::UnitSystem::Imperial);
        project.add_sheet("cut_plan", "", inputs("5 ft"));
        project.add_sheet("cut_plan", "", inputs("3 ft"));
        let mut gradual = Gradual::new(&project);
        while gradual.step() {}
        let so_far = gradual.so_far().unwrap();
        let last = evaluate_since(&project, Some(&so_far));
        assert!(Arc::ptr_eq(&so_far.buy_list.0.first_joint(), &last.buy_list.0.first_joint()));
    }

    #[test]
    fn a_project_without_sheets_is_done_at_once() {
        let mut gradual = Gradual::new(&Project::new("p", "", crate::quantity::UnitSystem::Metric));
        assert!(!gradual.step() && !gradual.step());
        assert_eq!(gradual.progress(), (0, 0));
    }
}
