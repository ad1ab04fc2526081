//! What can be done to a circuit's tree: its inputs are changed as if they had been typed.

use calc::project::{Node, Place, Project};
use calc::words::app_tree as said;
use serde_json::json;

use crate::words::text;

use super::outline::{Line, Pick, branch, outline};

/// Adds a run from a splice, to a new one; its number.
pub fn add_run(project: &mut Project, place: &Place, from: &str) -> usize {
    let index = project.row_count(place, "runs");
    let id = fresh("r1", &texts(project, place, "runs", "id"));
    let to = fresh(text(said::NEW_SPLICE), &names(project, place));
    let run = json!({ "id": id, "from": from, "to": to, "conductor": "auto" });
    project.add_row(place, "runs", run);
    index
}

/// Adds a load at a splice; its number.
pub fn add_load(project: &mut Project, place: &Place, at: &str) -> usize {
    let index = project.row_count(place, "loads");
    let label = fresh(text(said::NEW_LOAD), &texts(project, place, "loads", "label"));
    project.add_row(place, "loads", json!({ "at": at, "label": label, "model": "power" }));
    index
}

/// Adds a row of lights that is fed from a splice; its number.
pub fn add_row(project: &mut Project, place: &Place, from: &str) -> usize {
    let index = project.row_count(place, "rows");
    let label = fresh_label(text(said::NEW_LIGHTS), &texts(project, place, "rows", "label"));
    project.add_row(place, "rows", json!({ "label": label, "from": from, "model": "power" }));
    index
}

/// Copies a line with all that hangs on it, fed from where it is fed: its copy.
pub fn copy(project: &mut Project, place: &Place, pick: Pick) -> Pick {
    let lines = outline(project, place);
    let mut taken = names(project, place);
    let mut ids = texts(project, place, "runs", "id");
    let mut labels = texts(project, place, "rows", "label");
    let mut load_labels = texts(project, place, "loads", "label");
    // Names of splices, as they are and as they turn out.
    let mut turns: Vec<(String, String)> = Vec::new();
    let mut head = pick;
    for one in branch(&lines, pick) {
        let Some(line) = lines.iter().find(|line| line.pick == one) else { continue };
        let Some(Node::Object(mut row)) = project.node(place, &one.path()).cloned() else {
            continue;
        };
        let from = renamed(&turns, &line.from);
        row.insert("from".into(), json!(from));
        let (list, copied) = match one {
            Pick::Run(_) => {
                let to = put_fresh(&line.name, &mut taken);
                turns.push((line.name.clone(), to.clone()));
                row.insert("to".into(), json!(to));
                let id = row.get("id").and_then(Node::as_str).unwrap_or("r1");
                let id = put_fresh(id, &mut ids);
                row.insert("id".into(), json!(id));
                ("runs", Pick::Run(project.row_count(place, "runs")))
            }
            Pick::Row(_) => {
                let label = fresh_label(&line.name, &labels);
                labels.push(label.clone());
                for node in &line.nodes {
                    let tail = node.strip_prefix(&line.name).unwrap_or(node);
                    turns.push((node.clone(), format!("{label}{tail}")));
                }
                row.insert("label".into(), json!(label));
                ("rows", Pick::Row(project.row_count(place, "rows")))
            }
            Pick::Source | Pick::Load(_) => continue,
        };
        project.add_row(place, list, Node::Object(row));
        if one == pick {
            head = copied;
        }
        for load in &line.loads {
            let Some(Node::Object(mut row)) =
                project.node(place, &Pick::Load(*load).path()).cloned()
            else {
                continue;
            };
            let at = row.get("at").and_then(Node::as_str).unwrap_or_default();
            let at = renamed(&turns, at);
            row.insert("at".into(), json!(at));
            if let Some(label) = row.get("label").and_then(Node::as_str) {
                let label = put_fresh(label, &mut load_labels);
                row.insert("label".into(), json!(label));
            }
            project.add_row(place, "loads", Node::Object(row));
        }
    }
    head
}

/// Takes a line out, with all that hangs on it.
pub fn take_out(project: &mut Project, place: &Place, pick: Pick) {
    let lines = outline(project, place);
    let branch = branch(&lines, pick);
    let mut gone: Vec<Pick> = branch.clone();
    for line in lines.iter().filter(|line| branch.contains(&line.pick)) {
        gone.extend(line.loads.iter().map(|load| Pick::Load(*load)));
    }
    for list in ["runs", "rows", "loads"] {
        // From the end, so that the numbers before stay what they are.
        for index in (0..project.row_count(place, list)).rev() {
            if gone.iter().any(|pick| pick.path() == format!("{list}.{index}")) {
                project.remove_row(place, list, index);
            }
        }
    }
}

/// Gives a splice or a row another name, wherever it is named. False where the name is empty or
/// taken: nothing is changed then.
pub fn rename(project: &mut Project, place: &Place, line: &Line, name: &str) -> bool {
    let name = name.trim();
    if name == line.name {
        return true;
    }
    let (key, turns): (&str, Vec<(String, String)>) = match line.pick {
        Pick::Run(_) => ("to", vec![(line.name.clone(), name.to_owned())]),
        Pick::Row(_) => {
            let tail = |node: &String| node.strip_prefix(&line.name).map(str::to_owned);
            let tails = line.nodes.iter().filter_map(|node| Some((node.clone(), tail(node)?)));
            ("label", tails.map(|(node, tail)| (node, format!("{name}{tail}"))).collect())
        }
        Pick::Source | Pick::Load(_) => return false,
    };
    let taken = names(project, place);
    let others = |new: &String| taken.contains(new) && !line.nodes.contains(new);
    if name.is_empty() || turns.iter().any(|(_, new)| others(new)) {
        return false;
    }
    project.set(place, &format!("{}.{key}", line.pick.path()), json!(name));
    for (list, key) in [("runs", "from"), ("rows", "from"), ("loads", "at")] {
        for index in 0..project.row_count(place, list) {
            let path = format!("{list}.{index}.{key}");
            let now = project.typed(place, &path);
            if let Some((_, new)) = turns.iter().find(|(old, _)| *old == now.trim()) {
                project.set(place, &path, json!(new));
            }
        }
    }
    true
}

/// All names of splices, the source's too.
fn names(project: &Project, place: &Place) -> Vec<String> {
    outline(project, place).into_iter().flat_map(|line| line.nodes).collect()
}

fn texts(project: &Project, place: &Place, list: &str, key: &str) -> Vec<String> {
    (0..project.row_count(place, list))
        .map(|index| project.typed(place, &format!("{list}.{index}.{key}")))
        .collect()
}

fn renamed(turns: &[(String, String)], name: &str) -> String {
    turns.iter().find(|(old, _)| old == name).map_or(name, |(_, new)| new).to_owned()
}

fn put_fresh(name: &str, taken: &mut Vec<String>) -> String {
    let name = fresh(name, taken);
    taken.push(name.clone());
    name
}

/// The name itself where it is free, else with the next number that is.
fn fresh(name: &str, taken: &[String]) -> String {
    if !name.is_empty() && !taken.iter().any(|one| one == name) {
        return name.to_owned();
    }
    let stem = name.trim_end_matches(|sign: char| sign.is_ascii_digit());
    let number: u32 = name[stem.len()..].parse().unwrap_or(1);
    let stem = if stem.len() == name.len() { format!("{stem} ") } else { stem.to_owned() };
    (number.saturating_add(1)..u32::MAX)
        .map(|number| format!("{stem}{number}"))
        .find(|one| !taken.contains(one))
        .unwrap_or_default()
}

/// As `fresh`, with letters: the lights of a row have numbers.
fn fresh_label(label: &str, taken: &[String]) -> String {
    if !label.is_empty() && !taken.iter().any(|one| one == label) {
        return label.to_owned();
    }
    let stem = match label.rsplit_once(' ') {
        Some((stem, letter)) if letter.len() == 1 => stem,
        _ => label,
    };
    ('b'..='z')
        .map(|letter| format!("{stem} {letter}"))
        .find(|one| !taken.contains(one))
        .unwrap_or_else(|| fresh(label, taken))
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc::quantity::UnitSystem;

    fn example() -> (Project, Place) {
        let mut project = Project::new("p", "", UnitSystem::Imperial);
        let inputs = serde_json::from_str(calc::sheet::find("circuit").unwrap().example).unwrap();
        let place = Place::Sheet(project.add_sheet("circuit", "", inputs));
        (project, place)
    }

    fn lines(project: &Project, place: &Place) -> Vec<String> {
        outline(project, place)
            .iter()
            .map(|line| format!("{}<{} {}", line.name, line.from, line.loads.len()))
            .collect()
    }

    fn is_solved(project: &Project) -> bool {
        calc::evaluate(project).sheet("s1").unwrap().is_ok()
    }

    #[test]
    fn a_circuit_is_built_from_nothing() {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let place = Place::Sheet(project.add_sheet("circuit", "", json!({})));
        project.set(&place, "source_voltage", json!("12.8 V"));
        project.set(&place, "drop_limit_percent", json!(3));
        let run = add_run(&mut project, &place, "source");
        project.set(&place, &format!("runs.{run}.length"), json!("2 m"));
        let load = add_load(&mut project, &place, "splice 1");
        project.set(&place, &format!("loads.{load}.value"), json!("20 W"));
        let row = add_row(&mut project, &place, "splice 1");
        for (key, value) in [("first", "1 m"), ("spacing", "900 mm"), ("value", "3 W")] {
            project.set(&place, &format!("rows.{row}.{key}"), json!(value));
        }
        project.set(&place, "rows.0.count", json!(4));
        assert!(is_solved(&project));
        assert_eq!(
            lines(&project, &place),
            ["source< 0", "splice 1<source 1", "lights<splice 1 0"]
        );
    }

    #[test]
    fn a_copied_branch_hangs_beside_and_has_names_of_its_own() {
        let (mut project, place) = example();
        assert_eq!(copy(&mut project, &place, Pick::Row(0)), Pick::Row(2));
        assert_eq!(project.typed(&place, "rows.2.label"), "left b");
        assert_eq!(copy(&mut project, &place, Pick::Run(0)), Pick::Run(2));
        assert!(is_solved(&project), "{:#?}", calc::evaluate(&project).sheet("s1"));
        let shown = lines(&project, &place);
        assert_eq!(shown.len(), 1 + 2 * 5);
        for name in ["panel 2<source 0", "fan 2<panel 2 1", "left c<panel 2 0", "left d<panel 2 0"]
        {
            assert!(shown.iter().any(|line| line == name), "{name}: {shown:?}");
        }
    }

    #[test]
    fn a_branch_goes_with_all_that_hangs_on_it() {
        let (mut project, place) = example();
        take_out(&mut project, &place, Pick::Run(1));
        assert_eq!(
            lines(&project, &place),
            ["source< 0", "panel<source 0", "left<panel 0", "right<panel 0"]
        );
        assert_eq!(project.row_count(&place, "loads"), 0);
        take_out(&mut project, &place, Pick::Run(0));
        assert_eq!(lines(&project, &place), ["source< 0"]);
    }

    #[test]
    fn a_new_name_is_used_everywhere() {
        let (mut project, place) = example();
        let line = |project: &Project, pick| {
            outline(project, &place).into_iter().find(|line| line.pick == pick).unwrap()
        };
        let panel = line(&project, Pick::Run(0));
        assert!(!rename(&mut project, &place, &panel, "fan"));
        assert!(!rename(&mut project, &place, &panel, " "));
        assert!(rename(&mut project, &place, &panel, "fuse box"));
        let left = line(&project, Pick::Row(0));
        project.add_row(
            &place,
            "runs",
            json!({ "id": "x", "from": "left 3", "to": "x", "length": "1 m", "conductor": "auto" }),
        );
        project.add_row(&place, "loads", json!({ "at": "x", "model": "power", "value": "1 W" }));
        assert!(rename(&mut project, &place, &left, "port"));
        assert_eq!(project.typed(&place, "runs.2.from"), "port 3");
        assert!(is_solved(&project), "{:#?}", calc::evaluate(&project).sheet("s1"));
        assert_eq!(project.typed(&place, "rows.1.from"), "fuse box");
    }

    #[test]
    fn names_count_on() {
        let taken = ["lamp 3", "lamp 4", "fan", "left"].map(str::to_owned);
        assert_eq!(fresh("lamp 3", &taken), "lamp 5");
        assert_eq!(fresh("fan", &taken), "fan 2");
        assert_eq!(fresh("pump", &taken), "pump");
        assert_eq!(fresh_label("left", &taken), "left b");
    }
}
