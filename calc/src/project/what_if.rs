//! What if the store lacks something: one sheet worked out from a changed copy of its inputs. The project stays as it is.
//!
//! A sheet's `choices` are what it can be bought in: stock lengths, containers, screw lengths, conductors. A `Lacking` says which
//! of them are not to be had; `Lacking::applied` gives the inputs without them, `what_if` the sheet's result from these, and
//! `side_by_side` both results as a table. `Project::keep_lacking` keeps one beside the sheet until it is dropped.

use serde_json::{Map, json};
use uom::si::length::millimeter;

use crate::words::{Id, Phrase, project as words};

use super::evaluate::{Run, SheetResult};
use super::{Evaluation, Node, Project, shopping};
use crate::ask::{Ask, Kind};
use crate::lists::LineId;
use crate::quantity::{Length, Style, money, percent};
use crate::report::{Report, Table, TableRow};
use crate::text::text;

/// Inputs whose entries are things that a store has or has not.
const LISTS: [&str; 4] = ["stock", "containers", "lengths", "conductor_choices"];
/// What names a row of such a list, where its entries are rows.
const NAMES: [&str; 2] = ["length", "size"];
/// Under this name what is kept stands in the project file.
const KEPT: &str = "what_if";

/// A list of things to be bought that a sheet chooses from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choices {
    /// The path of the input: `stock`.
    pub list: String,
    /// Its name on the page.
    pub label: Phrase,
    /// Each entry's name as it was typed, and whether the sheet may buy it as it stands.
    pub entries: Vec<(String, bool)>,
}

/// What a store does not have: names of entries, by the path of their list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lacking(Vec<(String, Vec<String>)>);

impl Lacking {
    /// Whether nothing is lacking.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Whether an entry of a list is lacking.
    pub fn lacks(&self, list: &str, name: &str) -> bool {
        self.0.iter().any(|(of, names)| of == list && names.iter().any(|known| known == name))
    }

    /// Says that an entry is lacking, or takes that back.
    pub fn turn(&mut self, list: &str, name: &str) {
        let index = self.0.iter().position(|(of, _)| of == list).unwrap_or_else(|| {
            self.0.push((list.to_owned(), Vec::new()));
            self.0.len() - 1
        });
        let names = &mut self.0[index].1;
        match names.iter().position(|known| known == name) {
            Some(at) => drop(names.remove(at)),
            None => names.push(name.to_owned()),
        }
        if names.is_empty() {
            self.0.remove(index);
        }
    }

    /// A sheet's inputs without what is lacking: such stock can still be used where it is here already, all other entries are left
    /// out.
    pub fn applied(&self, inputs: &Node) -> Node {
        let mut changed = inputs.clone();
        for (list, names) in &self.0 {
            let pointer = text!("/{}", list.replace('.', "/"));
            let Some(Node::Array(rows)) = changed.pointer_mut(&pointer) else { continue };
            let lacks = |row: &Node| name_of(row).is_some_and(|name| names.contains(&name));
            if list == "stock" {
                for row in rows.iter_mut().filter(|row| lacks(row)) {
                    if let Some(row) = row.as_object_mut() {
                        row.insert("available".into(), json!(0));
                    }
                }
            } else {
                rows.retain(|row| !lacks(row));
            }
        }
        changed
    }
}

/// What a sheet with these asks and inputs can be bought in; lists of a single entry are no choice.
pub fn choices(asks: &[&'static Ask], inputs: &Node) -> Vec<Choices> {
    let mut found = Vec::new();
    gather(asks, inputs, "", &mut found);
    found
}

/// The result of a sheet as it would be with other inputs, all else as it stands. Nothing is changed; what the sheet takes from
/// other sheets is taken over from `standing` where it can be.
pub fn what_if(project: &Project, standing: &Evaluation, id: &str, inputs: &Node) -> SheetResult {
    Run::new(project, &standing.body, Some(standing)).work_out_with(id, inputs)
}

/// Two results of a sheet side by side: answers and lines to buy that differ, what all of it costs by the prices of the sheet and
/// those typed on the buy list, and how well it is cut.
pub fn side_by_side(project: &Project, id: &str, now: &Report, then: &Report) -> Table {
    let style = project.style();
    let mut rows: Vec<TableRow> = Vec::new();
    let cost = |report: &Report| {
        let lines = shopping::priced(project, id, &report.buy);
        let (mut sum, mut without) = (0.0, 0);
        for line in &lines {
            match line.cost {
                Some(cost) => sum += cost,
                None => without += 1,
            }
        }
        (sum, without)
    };
    let (a, b) = (cost(now), cost(then));
    if a.0 + b.0 > 0.0 {
        let sums = |(sum, without): (f64, usize)| match without {
            0 => money(sum),
            count => style.say(words::WithoutPrice { sum: money(sum), count }),
        };
        rows.push(TableRow {
            cells: vec![style.say(words::TO_PAY), sums(a), sums(b)],
            chosen: false,
        });
    }
    let mut told: Vec<&LineId> = Vec::new();
    for line in now.buy.iter().chain(&then.buy) {
        let count = |report: &Report| {
            let same = report.buy.iter().filter(|one| one.id == line.id);
            crate::quantity::plain(same.map(|one| one.quantity).sum(), 2)
        };
        let (a, b) = (count(now), count(then));
        let again = told.contains(&&line.id);
        told.push(&line.id);
        let name = if line.spec.is_empty() { line.item.clone() } else { line.spec.clone() };
        // What two items share tells neither.
        let name = if rows_have(&rows, &name) { text!("{}, {}", &line.item, &name) } else { name };
        if a != b && !again {
            rows.push(TableRow { cells: vec![name, a, b], chosen: false });
        }
    }
    if !now.cut.is_empty() && !then.cut.is_empty() {
        let mut row = |name: Id, tell: &dyn Fn(&Report) -> String| {
            let cells = vec![style.say(name), tell(now), tell(then)];
            rows.push(TableRow { cells, chosen: false });
        };
        row(words::LEFT_OVER, &|report| {
            let waste =
                report.cut.iter().map(|line| line.waste.get::<millimeter>() * line.count as f64);
            style.length(Length::new::<millimeter>(waste.sum()))
        });
        row(words::WAYS, &|report| report.cut.len().to_string());
        row(words::BEST, &|report| proof(report, style));
    }
    for answer in &now.answers {
        let other = then.answers.iter().find(|other| other.label == answer.label);
        let other = other.map_or("–", |other| other.text.as_str());
        if answer.text != other && !rows_have(&rows, &answer.label) {
            let cells = vec![answer.label.clone(), answer.text.clone(), other.to_owned()];
            rows.push(TableRow { cells, chosen: false });
        }
    }
    let [now, then] = [words::SIDE_BY_SIDE_NOW, words::SIDE_BY_SIDE_THEN].map(|id| style.say(id));
    Table { title: style.say(words::SIDE_BY_SIDE), heads: vec![String::new(), now, then], rows }
}

impl Project {
    /// What is kept as lacking beside a sheet.
    pub fn lacking(&self, id: &str) -> Lacking {
        let kept = self.extra(KEPT).and_then(|all| all.get(id)).and_then(Node::as_object);
        let lists = kept.into_iter().flatten().filter_map(|(list, names)| {
            let names: Vec<String> =
                names.as_array()?.iter().filter_map(Node::as_str).map(str::to_owned).collect();
            (!names.is_empty()).then(|| (list.clone(), names))
        });
        Lacking(lists.collect())
    }

    /// Keeps what is lacking beside a sheet; nothing lacking takes it out.
    pub fn keep_lacking(&mut self, id: &str, lacking: &Lacking) {
        let mut all = match self.extra(KEPT) {
            Some(Node::Object(all)) => all.clone(),
            _ => Map::new(),
        };
        if lacking.is_empty() {
            all.shift_remove(id);
        } else {
            let lists = lacking.0.iter().map(|(list, names)| (list.clone(), json!(names)));
            all.insert(id.to_owned(), Node::Object(lists.collect()));
        }
        let all = if all.is_empty() { Node::Null } else { Node::Object(all) };
        self.set_extra(KEPT, all);
    }
}

fn rows_have(rows: &[TableRow], name: &str) -> bool {
    rows.iter().any(|row| row.cells.first().is_some_and(|first| first == name))
}

/// Whether a report's cut plan is proved to be the best, or how far from it it may be.
fn proof(report: &Report, style: Style) -> String {
    let Some(planned) = &report.cutting else { return "–".to_owned() };
    let (cost, bound) = (planned.plan.cost, planned.plan.bound);
    if cost - bound <= 1e-6 * cost {
        style.say(words::PROVED)
    } else {
        style.say(words::Within { percent: percent(100.0 * (cost - bound) / cost) })
    }
}

fn gather(asks: &[&'static Ask], inputs: &Node, before: &str, found: &mut Vec<Choices>) {
    for ask in asks {
        let path =
            if before.is_empty() { ask.key.to_owned() } else { text!("{}.{}", &before, &ask.key) };
        match (ask.kind, inputs.get(ask.key)) {
            (Kind::Group(of), Some(group)) => gather(of, group, &path, found),
            (Kind::Either(of), _) => gather(of, inputs, before, found),
            (Kind::Rows { .. } | Kind::List { .. }, Some(Node::Array(rows)))
                if LISTS.contains(&ask.key) =>
            {
                let mut entries: Vec<(String, bool)> = Vec::new();
                for row in rows {
                    let for_sale = row
                        .get("available")
                        .is_none_or(|most| most.as_u64() != Some(0) && most.as_str() != Some("0"));
                    if let Some(name) = name_of(row)
                        && !entries.iter().any(|(known, _)| *known == name)
                    {
                        entries.push((name, for_sale));
                    }
                }
                if entries.len() > 1 {
                    found.push(Choices { list: path, label: ask.label, entries });
                }
            }
            _ => {}
        }
    }
}

fn name_of(row: &Node) -> Option<String> {
    let text = NAMES.iter().find_map(|name| row.get(name)).unwrap_or(row).as_str()?;
    (!text.is_empty()).then(|| text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::UnitSystem;
    use crate::sheet;

    fn planned() -> (Project, String) {
        let mut project = Project::new("p", "", UnitSystem::Imperial);
        let id = project.add_sheet("cut_plan", "", json!({}));
        project.fill_example(&id);
        (project, id)
    }

    #[test]
    fn a_length_that_the_store_lacks_is_not_bought_but_used_up() {
        let (project, id) = planned();
        let all = crate::evaluate(&project);
        let inputs = project.sheet(&id).unwrap().inputs().clone();
        let offered = choices(sheet::find("cut_plan").unwrap().asks, &inputs);
        assert_eq!(offered[0].list, "stock");
        assert_eq!(offered[0].entries[2], ("12 ft".to_owned(), true));
        let mut lacking = Lacking::default();
        for name in ["8 ft", "12 ft"] {
            lacking.turn("stock", name);
        }
        let changed = what_if(&project, &all, &id, &lacking.applied(&inputs)).unwrap();
        // 8 ft lengths that are here are still cut; only 10 ft are bought.
        assert!(changed.cut.iter().any(|line| line.stock.ends_with("8 ft")));
        assert!(!changed.cut.iter().any(|line| line.stock.ends_with("12 ft")));
        let mut bought = changed.buy.iter().filter(|line| line.quantity > 0.0);
        assert!(bought.all(|line| line.spec == "10 ft"));
        let Ok(now) = all.sheet(&id).unwrap() else { panic!() };
        let table = side_by_side(&project, &id, now, &changed);
        assert!(
            table.rows.iter().any(|row| row.cells[0] == "To pay" && row.cells[1] != row.cells[2])
        );
        assert_eq!(crate::evaluate(&project), all);
        // A price that was typed on the buy list counts, before that of the sheet.
        let mut dear = project.clone();
        for line in &changed.buy {
            dear.set(&super::super::Place::Line(line.id.of_sheet(&id)), "price", json!(1000));
        }
        let sum: f64 = changed.buy.iter().map(|line| line.quantity).sum();
        let table = side_by_side(&dear, &id, now, &changed);
        assert_eq!(table.rows[0].cells[2], money(1000.0 * sum));
        // The same as taking it.
        let mut taken = project.clone();
        taken.set(&super::super::Place::Sheet(id.clone()), "", lacking.applied(&inputs));
        assert_eq!(crate::evaluate(&taken).sheet(&id), Some(&Ok(changed)));
    }

    #[test]
    fn what_is_kept_is_there_until_it_is_dropped() {
        let (mut project, id) = planned();
        let before = project.clone();
        let mut lacking = Lacking::default();
        lacking.turn("stock", "10 ft");
        project.keep_lacking(&id, &lacking);
        let mut again = Project::from_text(&project.to_text()).unwrap();
        assert_eq!(again.lacking(&id), lacking);
        lacking.turn("stock", "10 ft");
        assert!(lacking.is_empty());
        again.keep_lacking(&id, &lacking);
        assert_eq!(again, before);
    }

    #[test]
    fn containers_that_the_store_lacks_are_left_out() {
        let mut lacking = Lacking::default();
        lacking.turn("containers", "1 gal");
        let inputs = json!({ "containers": [{ "size": "1 qt" }, { "size": "1 gal" }], "coats": 2 });
        let left = json!({ "containers": [{ "size": "1 qt" }], "coats": 2 });
        assert_eq!(lacking.applied(&inputs), left);
    }
}
