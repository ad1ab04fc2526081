//! Evaluates a whole project: every sheet, then the lists that all of them add to.

use std::cell::RefCell;
use std::sync::Arc;

use super::{Body, Node, Project};
use crate::ask::{Ask, Kind};
use crate::fault::Fault;
use crate::lists::{MergedBuyLine, SheetCutLine, merge_buy_lines};
use crate::outcome::Record;
use crate::quantity::Style;
use crate::reader::Site;
use crate::report::Report;
use crate::sheet;

/// What a sheet came to: its report, or all that is wrong with its inputs.
pub type SheetResult = Result<Report, Vec<Fault>>;

/// Everything that is derived from a project; nothing of it is stored.
#[derive(Clone, Debug, PartialEq)]
pub struct Evaluation {
    /// The body as read.
    pub body: Body,
    /// The sheets' results by id, in the order of the file.
    pub sheets: Vec<(String, Arc<SheetResult>)>,
    /// The buy list over all sheets.
    pub buy_list: Vec<MergedBuyLine>,
    /// The cut list over all sheets.
    pub cut_list: Vec<SheetCutLine>,
    /// What all of it was worked out from.
    pub(super) basis: Basis,
}

/// What an evaluation was worked out from: what has not changed since need not be worked out again.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Basis {
    pub(super) style: Style,
    body: Node,
    /// The sheets as saved, in the order of the file.
    sheets: Vec<Node>,
}

impl Evaluation {
    /// The result of the sheet with this id.
    pub fn sheet(&self, id: &str) -> Option<&SheetResult> {
        self.sheets.iter().find(|(known, _)| known == id).map(|(_, result)| result.as_ref())
    }
}

/// Evaluates a project. A sheet that cannot be worked out has its faults; all others are worked
/// out all the same.
pub fn evaluate(project: &Project) -> Evaluation {
    evaluate_since(project, None)
}

/// As `evaluate`, taking over from the evaluation before what has not changed since: the same
/// outcome, sooner.
pub fn evaluate_since(project: &Project, before: Option<&Evaluation>) -> Evaluation {
    let style = project.style();
    let basis = Basis {
        style,
        body: project.body().clone(),
        sheets: project.sheets().map(|sheet| sheet.node.clone()).collect(),
    };
    let before = before
        .filter(|before| before.basis.style == basis.style && before.basis.body == basis.body);
    let body = match before {
        Some(before) => before.body.clone(),
        None => Body::read(project.body(), style),
    };
    let run = Run { project, style, body: &body, before, states: RefCell::default() };
    let sheets: Vec<(String, Arc<SheetResult>)> =
        project.sheets().map(|sheet| sheet.id()).map(|id| (id.clone(), run.result(&id))).collect();
    let reports = || {
        sheets.iter().filter_map(|(id, result)| {
            result.as_ref().as_ref().ok().map(|report| (id.as_str(), report))
        })
    };
    let buy_list = merge_buy_lines(
        reports().flat_map(|(id, report)| report.buy.iter().map(move |line| (id, line))),
    );
    let cut_list = reports()
        .flat_map(|(id, report)| report.cut.iter().map(move |line| (id, line)))
        .map(|(id, line)| SheetCutLine { line: line.clone(), sheet: id.to_owned() })
        .collect();
    Evaluation { body, sheets, buy_list, cut_list, basis }
}

/// One evaluation under way. Sheets are worked out when they are first asked for, so that a sheet
/// can take from another wherever the two stand in the file.
struct Run<'a> {
    project: &'a Project,
    style: Style,
    body: &'a Body,
    before: Option<&'a Evaluation>,
    states: RefCell<Vec<(String, State)>>,
}

#[derive(Clone)]
enum State {
    UnderWay,
    Done(Arc<SheetResult>),
}

impl Run<'_> {
    fn state(&self, id: &str) -> Option<State> {
        let states = self.states.borrow();
        states.iter().find(|(known, _)| known == id).map(|(_, state)| state.clone())
    }

    fn set_state(&self, id: &str, state: State) {
        let mut states = self.states.borrow_mut();
        states.retain(|(known, _)| known != id);
        states.push((id.to_owned(), state));
    }

    fn result(&self, id: &str) -> Arc<SheetResult> {
        if let Some(State::Done(result)) = self.state(id) {
            return result;
        }
        self.set_state(id, State::UnderWay);
        let result = self.taken_over(id).unwrap_or_else(|| Arc::new(self.work_out(id)));
        self.set_state(id, State::Done(Arc::clone(&result)));
        result
    }

    /// The result from before, where nothing that it hangs on has changed.
    fn taken_over(&self, id: &str) -> Option<Arc<SheetResult>> {
        let before = self.before?;
        let mut same_id =
            before.sheets.iter().zip(&before.basis.sheets).filter(|((b, _), _)| b == id);
        let ((_, result), node) = same_id.next()?;
        let entry = self.project.sheet(id)?;
        let alone = sheet::find(entry.kind()?).is_some_and(|sheet| !takes_from_sheets(sheet.asks));
        let unchanged = entry.node == node && same_id.next().is_none();
        (alone && unchanged && self.project.sheets().filter(|other| other.id() == id).count() == 1)
            .then(|| Arc::clone(result))
    }

    fn work_out(&self, id: &str) -> SheetResult {
        let mut same_id = self.project.sheets().filter(|sheet| sheet.id() == id);
        let (Some(entry), None) = (same_id.next(), same_id.next()) else {
            return Err(vec![Fault::new(
                "",
                format!("two sheets have the id \"{id}\"; give each its own"),
            )]);
        };
        let Some(kind) = entry.kind() else {
            return Err(vec![Fault::new("kind", "the sheet's kind is not given as text")]);
        };
        let Some(sheet) = sheet::find(kind) else {
            return Err(vec![Fault::new("kind", unknown_kind(kind))]);
        };
        let others = |other: &str, kind: &str| self.other(other, kind);
        let site = Site { style: self.style, body: self.body, sheets: &others };
        sheet::solve_sheet(sheet, &site, entry.inputs())
    }

    /// The outcome of another sheet, for a sheet that takes from it.
    fn other(&self, id: &str, kind: &str) -> Result<Arc<Record>, String> {
        let entry = self
            .project
            .sheet(id)
            .ok_or_else(|| format!("there is no sheet \"{id}\" in this project"))?;
        if entry.kind() != Some(kind) {
            return Err(format!("\"{id}\" is no {kind} sheet; choose one that is"));
        }
        if matches!(self.state(id), Some(State::UnderWay)) {
            return Err(format!("\"{id}\" takes from this sheet itself; choose another"));
        }
        match self.result(id).as_ref() {
            Ok(report) => Ok(Arc::new(report.outcome.clone())),
            Err(_) => Err(format!("\"{id}\" has inputs that are wrong or missing; mend it first")),
        }
    }
}

/// Whether any of the asks names another sheet.
fn takes_from_sheets(asks: &[&Ask]) -> bool {
    asks.iter().any(|ask| match ask.kind {
        Kind::SheetOf(_) => true,
        Kind::Group(of) | Kind::Rows { asks: of, .. } | Kind::Either(of) => takes_from_sheets(of),
        Kind::List { of, .. } => takes_from_sheets(&[of]),
        _ => false,
    })
}

fn unknown_kind(kind: &str) -> String {
    let kinds: Vec<&str> = sheet::SHEETS.iter().map(|sheet| sheet.kind).collect();
    let kind: String = kind.chars().take(40).collect();
    format!("no sheet of kind \"{kind}\" is known here; known are {}", kinds.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::Place;
    use serde_json::json;

    const DEMO: &str = include_str!("../../../shared/demo.json");

    /// Whatever changes, what is taken over must be what would be worked out anew.
    #[test]
    fn taking_over_changes_nothing() {
        let mut project = Project::from_text(DEMO).unwrap();
        let mut last = evaluate(&project);
        let ids: Vec<String> = project.sheets().map(|sheet| sheet.id()).collect();
        let changes: [&dyn Fn(&mut Project); 6] = [
            &|p| p.set(&Place::Sheet("s1".into()), "coats", json!(2)),
            &|p| p.set(&Place::Body, "ribs.measured.4", json!("1890 mm")),
            &|p| p.set_system(crate::quantity::UnitSystem::Metric),
            &|p| p.set(&Place::Sheet("insulation".into()), "layers.0.thickness", json!("9 mm")),
            &|p| p.remove_sheet("s3"),
            &|p| drop(p.add_sheet("trim", "", json!({}))),
        ];
        for change in changes {
            change(&mut project);
            let again = evaluate_since(&project, Some(&last));
            assert!(again == evaluate(&project));
            last = again;
        }
        assert!(ids.len() > 10);
    }

    #[test]
    fn a_sheet_that_has_not_changed_is_not_worked_out_again() {
        let mut project = Project::from_text(DEMO).unwrap();
        let first = evaluate(&project);
        project.set(&Place::Sheet("s1".into()), "coats", json!(2));
        let second = evaluate_since(&project, Some(&first));
        let same = |id: &str| {
            let result = |all: &Evaluation| {
                Arc::clone(&all.sheets.iter().find(|(known, _)| known == id).unwrap().1)
            };
            Arc::ptr_eq(&result(&first), &result(&second))
        };
        assert!(same("boards") && !same("s1"));
    }
}
