//! Evaluates a whole project: every sheet, then the lists that all of them add to.

use std::cell::RefCell;
use std::sync::Arc;

use super::{Body, Project};
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
    let style = project.style();
    let body = Body::read(project.body(), style);
    let run = Run { project, style, body: &body, states: RefCell::default() };
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
    Evaluation { body, sheets, buy_list, cut_list }
}

/// One evaluation under way. Sheets are worked out when they are first asked for, so that a sheet
/// can take from another wherever the two stand in the file.
struct Run<'a> {
    project: &'a Project,
    style: Style,
    body: &'a Body,
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
        let result = Arc::new(self.work_out(id));
        self.set_state(id, State::Done(Arc::clone(&result)));
        result
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

fn unknown_kind(kind: &str) -> String {
    let kinds: Vec<&str> = sheet::SHEETS.iter().map(|sheet| sheet.kind).collect();
    let kind: String = kind.chars().take(40).collect();
    format!("no sheet of kind \"{kind}\" is known here; known are {}", kinds.join(", "))
}
