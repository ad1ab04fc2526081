//! Evaluates a whole project: every sheet, then the lists that all of them add to.

use std::cell::{OnceCell, RefCell};
use std::sync::Arc;

use super::lists::{BuyList, CutList, Gathered};
use super::shopping::{self, Shopping, WEIGHT_KEY};
use super::{Body, Node, Project};
use crate::fault::Fault;
use crate::handoff::Handed;
use crate::mass::balance::Weight;
use crate::quantity::Style;
use crate::reader::{Notes, Reader, Site, no_sheet};
use crate::report::Report;
use crate::sheet::{self, Sheet};
use crate::words::{Arg, Msg, any_of, reader as words};

/// What a sheet came to: its report, or all that is wrong with its inputs.
pub type SheetResult = Result<Report, Vec<Fault>>;

/// Everything that is derived from a project; nothing of it is stored.
#[derive(Clone, Debug)]
pub struct Evaluation {
    /// The body as read.
    pub body: Body,
    /// The sheets' results by id, in the order of the file.
    pub sheets: Vec<(String, Arc<SheetResult>)>,
    /// The buy list over all sheets; made when it is first looked at.
    pub buy_list: BuyList,
    /// The cut list over all sheets; made when it is first looked at.
    pub cut_list: CutList,
    /// What all of it was worked out from.
    pub(super) basis: Basis,
}

/// What an evaluation was worked out from: what has not changed since need not be worked out again.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Basis {
    pub(super) style: Style,
    body: Node,
    /// The sheets as saved, in the order of the file.
    sheets: Vec<Arc<Node>>,
    /// What was typed for the buy list.
    shopping: Node,
    /// Which sheets each of them took from, in the order of the file.
    taken: Vec<Taken>,
}

/// What a sheet took from others.
#[derive(Clone, Debug, Default, PartialEq)]
struct Taken {
    /// The ids of those that it took a result from.
    from: Vec<String>,
    /// Those that handed over before they were worked out, with what that was.
    ahead: Vec<(String, Handed)>,
    /// Whether one of them had nothing to give: then it has to be asked anew.
    in_vain: bool,
    /// The weight of the buy list, where it took that.
    weight: Option<Weight>,
}

/// The lists follow from the rest.
impl PartialEq for Evaluation {
    fn eq(&self, other: &Self) -> bool {
        self.basis == other.basis
            && self.body == other.body
            && self.sheets.len() == other.sheets.len()
            && self
                .sheets
                .iter()
                .zip(&other.sheets)
                .all(|(a, b)| a.0 == b.0 && (Arc::ptr_eq(&a.1, &b.1) || a.1 == b.1))
    }
}

impl Evaluation {
    /// The result of the sheet with this id.
    pub fn sheet(&self, id: &str) -> Option<&SheetResult> {
        self.sheets.iter().find(|(known, _)| known == id).map(|(_, result)| result.as_ref())
    }

    /// Makes the lists, which else are made when one of them is first looked at.
    pub fn make_lists(&self) {
        self.buy_list.0.make();
    }

    /// What was typed for the buy list: what is wrong with it, and what all of it weighs.
    pub fn shopping(&self) -> &Shopping {
        self.buy_list.0.shopping()
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
    let before =
        before.filter(|before| before.basis.style == style && before.basis.body == *project.body());
    let body = match before {
        Some(before) => before.body.clone(),
        None => Body::read(project.body(), style),
    };
    let mut run = Run::new(project, &body, before);
    let sheets: Vec<(String, Arc<SheetResult>)> =
        project.sheets().map(|sheet| sheet.id()).map(|id| (id.clone(), run.result(&id))).collect();
    let basis = run.basis(&sheets);
    // A sheet that took the weight has had the lists made already.
    let gathered = run.gathered.take().unwrap_or_else(|| run.gather(sheets.clone()));
    let buy_list = BuyList(Arc::clone(&gathered));
    Evaluation { body, sheets, buy_list, cut_list: CutList(gathered), basis }
}

/// One evaluation under way. A sheet is worked out when it is first asked for, so that another can take from it wherever
/// the two stand in the file. Kinds of sheets form no ring, so that this comes to an end.
pub(super) struct Run<'a> {
    project: &'a Project,
    style: Style,
    body: &'a Body,
    before: Option<&'a Evaluation>,
    done: RefCell<Vec<(String, Arc<SheetResult>, Taken)>>,
    /// What sheets handed over before they were worked out; none where their inputs are at fault.
    ahead: RefCell<Vec<(String, Option<Handed>)>>,
    gathered: OnceCell<Arc<Gathered>>,
}

impl<'a> Run<'a> {
    pub(super) fn new(
        project: &'a Project,
        body: &'a Body,
        before: Option<&'a Evaluation>,
    ) -> Self {
        let (style, done, ahead) = (project.style(), RefCell::default(), RefCell::default());
        Self { project, style, body, before, done, ahead, gathered: OnceCell::new() }
    }

    /// A sheet's result with other inputs than its own.
    pub(super) fn work_out_with(&self, id: &str, inputs: &Node) -> SheetResult {
        self.work_out(id, Some(inputs), &RefCell::default())
    }

    fn fault(&self, field: &str, message: impl Into<Msg>) -> Fault {
        Fault::new(field, self.style.say(message))
    }

    fn done(&self, id: &str) -> Option<(Arc<SheetResult>, Taken)> {
        let done = self.done.borrow();
        let found = done.iter().find(|(known, ..)| known == id);
        found.map(|(_, result, taken)| (Arc::clone(result), taken.clone()))
    }

    fn result(&self, id: &str) -> Arc<SheetResult> {
        if let Some((result, _)) = self.done(id) {
            return result;
        }
        let (result, taken) = self.taken_over(id).unwrap_or_else(|| {
            let taken = RefCell::default();
            (Arc::new(self.work_out(id, None, &taken)), taken.into_inner())
        });
        self.done.borrow_mut().push((id.to_owned(), Arc::clone(&result), taken));
        result
    }

    /// The result from before, where nothing that it hangs on has changed.
    fn taken_over(&self, id: &str) -> Option<(Arc<SheetResult>, Taken)> {
        let (result, taken) = self.unchanged(id)?;
        let is_same = (taken.weight.is_none() || taken.weight == self.weight().ok())
            && taken.from.iter().all(|other| self.same_as_before(other))
            && taken
                .ahead
                .iter()
                .all(|(other, given)| self.handed_ahead(other).as_ref() == Some(given));
        is_same.then(|| (Arc::clone(result), taken.clone()))
    }

    /// The result from before and what it took, where the sheet itself has not changed.
    fn unchanged(&self, id: &str) -> Option<(&'a Arc<SheetResult>, &'a Taken)> {
        let before = self.before?;
        let at = only(before.sheets.iter().map(|(known, _)| known == id))?;
        let (_, result) = before.sheets.get(at)?;
        let (node, taken) = (before.basis.sheets.get(at)?, before.basis.taken.get(at)?);
        let entry = self.project.sheet(id)?;
        let alone = only(self.project.sheets().map(|other| other.id() == id)).is_some();
        (alone && *entry.node == **node && !taken.in_vain).then_some((result, taken))
    }

    /// Whether a sheet that was taken from has the result that it had before.
    fn same_as_before(&self, id: &str) -> bool {
        let mut before = self.before.into_iter().flat_map(|before| &before.sheets);
        let before = before.find(|(known, _)| known == id);
        before.is_some_and(|(_, before)| Arc::ptr_eq(before, &self.result(id)))
    }

    /// What this evaluation was worked out from; what is as it was shares the memory with before.
    fn basis(&self, sheets: &[(String, Arc<SheetResult>)]) -> Basis {
        let nodes = self.project.sheets().enumerate().map(|(at, sheet)| {
            let before = self.before.and_then(|before| before.basis.sheets.get(at));
            match before {
                Some(before) if **before == *sheet.node => Arc::clone(before),
                _ => Arc::new(sheet.node.clone()),
            }
        });
        let taken =
            sheets.iter().map(|(id, _)| self.done(id).map(|(_, taken)| taken).unwrap_or_default());
        Basis {
            style: self.style,
            body: self.project.body().clone(),
            sheets: nodes.collect(),
            shopping: self.project.extra(shopping::KEY).cloned().unwrap_or_default(),
            taken: taken.collect(),
        }
    }

    fn work_out(&self, id: &str, inputs: Option<&Node>, taken: &RefCell<Taken>) -> SheetResult {
        let mut same_id = self.project.sheets().filter(|sheet| sheet.id() == id);
        let (Some(entry), None) = (same_id.next(), same_id.next()) else {
            return Err(vec![self.fault("", words::SameId { id })]);
        };
        let Some(kind) = entry.kind() else {
            return Err(vec![self.fault("kind", words::KIND_NOT_TEXT)]);
        };
        let Some(sheet) = sheet::find(kind) else {
            return Err(vec![self.fault("kind", unknown_kind(kind))]);
        };
        let inputs = inputs.unwrap_or_else(|| entry.inputs());
        self.at_site(taken, |site| sheet::solve_sheet(sheet, site, inputs))
    }

    /// Does something that may look at the body, at other sheets and at the lists; what it took is noted.
    fn at_site<T>(&self, taken: &RefCell<Taken>, what: impl FnOnce(&Site<'_>) -> T) -> T {
        let others = |other: &str, kinds: &str| {
            let found = self.other(other, kinds, &mut taken.borrow_mut());
            taken.borrow_mut().in_vain |= found.is_err();
            found
        };
        let weight = || {
            let found = self.weight();
            let mut taken = taken.borrow_mut();
            taken.in_vain |= found.is_err();
            taken.weight = found.as_ref().ok().copied();
            found
        };
        what(&Site { style: self.style, body: self.body, sheets: &others, weight: &weight })
    }

    /// What the buy list over all sheets weighs. Sheets that take the weight buy nothing
    /// themselves, so they are left out and can ask for it.
    fn weight(&self) -> Result<Weight, Msg> {
        if let Some(gathered) = self.gathered.get() {
            return Ok(gathered.shopping().weight);
        }
        let mut results: Vec<(String, Arc<SheetResult>)> = Vec::new();
        for entry in self.project.sheets() {
            if entry.kind().and_then(sheet::find).is_none_or(takes_weight) {
                continue;
            }
            let id = entry.id();
            let result = self.result(&id);
            results.push((id, result));
        }
        Ok(self.gathered.get_or_init(|| self.gather(results)).shopping().weight)
    }

    fn gather(&self, sheets: Vec<(String, Arc<SheetResult>)>) -> Arc<Gathered> {
        let typed = self.project.extra(shopping::KEY).cloned().unwrap_or_default();
        let before = self.before.map(|before| &*before.buy_list.0);
        Gathered::new(self.style, sheets, typed, before)
    }

    /// What another sheet hands over, for a sheet that takes from it.
    fn other(&self, id: &str, kinds: &str, taken: &mut Taken) -> Result<Handed, Msg> {
        let Some(entry) = self.project.sheet(id) else { return no_sheet(id, kinds) };
        let Some(kind) = entry.kind().filter(|of| kinds.split(' ').any(|one| one == *of)) else {
            let named = kinds.split(' ').filter_map(sheet::find);
            let kinds = any_of(named.map(|sheet| sheet.title.say(self.style.words)));
            return Err(words::OtherKind { id, kinds }.into());
        };
        let handed = if sheet::find(kind).is_some_and(|sheet| sheet.ahead.is_some()) {
            let handed = self.handed_ahead(id);
            taken.ahead.extend(handed.clone().map(|handed| (id.to_owned(), handed)));
            handed
        } else {
            taken.from.push(id.to_owned());
            self.result(id).as_ref().as_ref().ok().map(|report| report.gives.clone())
        };
        handed.ok_or_else(|| words::SheetAtFault { id }.into())
    }

    /// What a sheet hands over before it is worked out; none where its inputs are at fault.
    fn handed_ahead(&self, id: &str) -> Option<Handed> {
        let known =
            self.ahead.borrow().iter().find(|(of, _)| of == id).map(|(_, handed)| handed.clone());
        known.unwrap_or_else(|| {
            let handed = self.hand_ahead(id);
            self.ahead.borrow_mut().push((id.to_owned(), handed.clone()));
            handed
        })
    }

    fn hand_ahead(&self, id: &str) -> Option<Handed> {
        let mut same_id = self.project.sheets().filter(|sheet| sheet.id() == id);
        let (Some(entry), None) = (same_id.next(), same_id.next()) else { return None };
        let (ahead, notes) = (sheet::find(entry.kind()?)?.ahead?, Notes::default());
        let handed = self
            .at_site(&RefCell::default(), |site| ahead(&Reader::new(site, entry.inputs(), &notes)));
        handed.filter(|_| notes.faults().0.is_empty())
    }
}

/// Whether a sheet takes the weight of the whole project.
pub fn takes_weight(sheet: &Sheet) -> bool {
    sheet.asks.iter().any(|ask| ask.key == WEIGHT_KEY)
}

/// The place of the one that is true; none where there is not exactly one.
fn only(mut all: impl Iterator<Item = bool>) -> Option<usize> {
    let first = all.position(|one| one)?;
    all.all(|one| !one).then_some(first)
}

fn unknown_kind(kind: &str) -> Msg {
    let kinds = Arg::each(sheet::SHEETS.iter().map(|sheet| sheet.kind));
    let kind: String = kind.chars().take(40).collect();
    words::UnknownKind { kind, kinds }.into()
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
            let anew = evaluate(&project);
            assert!(again == anew);
            assert_eq!((&*again.buy_list, &*again.cut_list), (&*anew.buy_list, &*anew.cut_list));
            last = again;
        }
        assert!(ids.len() > 10);
    }

    /// Panels and use are held against each other, whichever stands first.
    #[test]
    fn taking_over_sheets_that_take_from_each_other_changes_nothing() {
        let mut document: Node = serde_json::from_str(DEMO).unwrap();
        let sheets = document["sheets"].as_array_mut().unwrap();
        sheets.retain(|sheet| {
            ["lights", "energy", "solar", "water", "boards"]
                .map(Node::from)
                .contains(&sheet["kind"])
        });
        for _ in 0..2 {
            let mut project = Project::from_text(&document.to_string()).unwrap();
            let mut last = evaluate(&project);
            let other = project.add_sheet("solar", "", json!({ "need": { "sheet": "energy" } }));
            let place = |id: &str| Place::Sheet(id.to_owned());
            let changes: [&dyn Fn(&mut Project); 7] = [
                &|p| p.set(&place("lights"), "nothing", json!(1)),
                &|p| p.set(&place("solar"), "tilt", json!("10 deg")),
                &|p| p.set(&place("water"), "nothing", json!(1)),
                &|p| p.set(&place("energy"), "autonomy_days", json!(3)),
                &|p| p.set(&place(&other), "tilt", json!("20 deg")),
                &|p| p.remove_sheet("energy"),
                &|p| p.set(&place("lights"), "nothing", json!(2)),
            ];
            for change in changes {
                change(&mut project);
                last = evaluate_since(&project, Some(&last));
                assert!(last == evaluate(&project));
            }
            document["sheets"].as_array_mut().unwrap().reverse();
        }
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
        // So is what takes from each other.
        assert!(same("energy") && same("solar"));
        // What takes from other sheets follows those, and those only.
        assert!(same("lights") && same("heat_load"));
        project.set(&Place::Sheet("insulation".into()), "layers.0.thickness", json!("9 mm"));
        let third = evaluate_since(&project, Some(&second));
        let heat = |all: &Evaluation| {
            Arc::clone(&all.sheets.iter().find(|(known, _)| known == "heat_load").unwrap().1)
        };
        assert!(!Arc::ptr_eq(&heat(&second), &heat(&third)));
        assert!(third == evaluate(&project));
    }

    /// Typing into a sheet that cuts nothing plans nothing together again.
    #[test]
    fn a_plan_together_is_taken_over_while_its_pieces_are_the_same() {
        let inputs = |length: &str| {
            json!({ "pieces": [{ "length": length, "count": 4 }], "kerf": "0 in",
                "stock": [{ "length": "8 ft", "price": 5 }] })
        };
        let mut project = Project::new("p", "", crate::quantity::UnitSystem::Imperial);
        let first = project.add_sheet("cut_plan", "", inputs("5 ft"));
        project.add_sheet("cut_plan", "", inputs("3 ft"));
        let other = project.add_sheet("coating", "", json!({}));
        let all = evaluate(&project);
        let joint = all.buy_list.0.first_joint();
        let typed = |project: &mut Project, id: &str, path: &str, text: &str, last: &Evaluation| {
            project.set(&Place::Sheet(id.to_owned()), path, json!(text));
            evaluate_since(project, Some(last))
        };
        // Not looked at in between: still taken over by the one after.
        let unseen = typed(&mut project, &other, "coats", "3", &all);
        let seen = typed(&mut project, &other, "coats", "2", &unseen);
        assert!(Arc::ptr_eq(&joint, &seen.buy_list.0.first_joint()));
        let changed = typed(&mut project, &first, "pieces.0.length", "4 ft", &seen);
        assert!(!Arc::ptr_eq(&joint, &changed.buy_list.0.first_joint()));
    }
}
