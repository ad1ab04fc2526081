//! A circuit's inputs as an outline: which run or row hangs on which, from the source down.
//!
//! Made from what was typed, so that it stands while inputs are still missing or wrong.

use calc::project::{Place, Project};

/// What a line of the outline stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pick {
    /// The source.
    Source,
    /// The run with this number, and the splice at its end.
    Run(usize),
    /// The row of lights with this number.
    Row(usize),
    /// The load with this number, which hangs on nothing.
    Load(usize),
}

impl Pick {
    /// Where its inputs stand.
    pub fn path(self) -> String {
        match self {
            Self::Source => "source".to_owned(),
            Self::Run(index) => format!("runs.{index}"),
            Self::Row(index) => format!("rows.{index}"),
            Self::Load(index) => format!("loads.{index}"),
        }
    }

    /// What stands at a path.
    pub fn from_path(path: &str) -> Option<Self> {
        let (list, index) = path.split_once('.').unwrap_or((path, "0"));
        let index = index.parse().ok()?;
        match list {
            "source" => Some(Self::Source),
            "runs" => Some(Self::Run(index)),
            "rows" => Some(Self::Row(index)),
            "loads" => Some(Self::Load(index)),
            _ => None,
        }
    }
}

/// A line of the outline.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it stands for.
    pub pick: Pick,
    /// The name of its splice, or of its row.
    pub name: String,
    /// The splices that it has: one, but of a row one for each light.
    pub nodes: Vec<String>,
    /// The splice that it is fed from.
    pub from: String,
    /// How far it stands in.
    pub depth: usize,
    /// Whether the line above is not what feeds it.
    pub told: bool,
    /// Whether nothing feeds it.
    pub loose: bool,
    /// The loads that hang on it, by their numbers.
    pub loads: Vec<usize>,
    /// The line that feeds it.
    pub feeder: Option<Pick>,
}

/// All lines from the source down, then those that nothing feeds.
pub fn outline(project: &Project, place: &Place) -> Vec<Line> {
    let mut items = items(project, place);
    let below = children(&items);
    let mut lines = Vec::with_capacity(items.len());
    let mut seen = vec![false; items.len()];
    for root in 0..items.len() {
        // First the source; then what was not reached, from where nothing is above it.
        if !seen[root] && (root == 0 || !is_fed(&below, root)) {
            walk(root, &mut items, &below, &mut seen, &mut lines);
        }
    }
    for root in 0..items.len() {
        // A ring has no end to begin at.
        if !seen[root] {
            walk(root, &mut items, &below, &mut seen, &mut lines);
        }
    }
    lines.extend(loose_loads(project, place, &lines));
    lines
}

/// The numbers of the lines that hang on a line, itself first.
pub fn branch(lines: &[Line], pick: Pick) -> Vec<Pick> {
    let mut found = vec![pick];
    let mut next = 0;
    while let Some(&above) = found.get(next) {
        let below = lines.iter().filter(|line| line.feeder == Some(above)).map(|line| line.pick);
        let new: Vec<Pick> = below.filter(|pick| !found.contains(pick)).collect();
        found.extend(new);
        next += 1;
    }
    found
}

/// The splices of a row of so many lights.
pub fn row_nodes(label: &str, count: usize) -> Vec<String> {
    (1..=count.min(100)).map(|number| format!("{label} {number}")).collect()
}

fn items(project: &Project, place: &Place) -> Vec<Line> {
    let typed = |path: String| project.typed(place, &path).trim().to_owned();
    let line = |pick, name: String, nodes, from| Line {
        pick,
        name,
        nodes,
        from,
        depth: 0,
        told: false,
        loose: false,
        loads: Vec::new(),
        feeder: None,
    };
    let source = "source".to_owned();
    let mut items = vec![line(Pick::Source, source.clone(), vec![source], String::new())];
    for index in 0..project.row_count(place, "runs") {
        let to = typed(format!("runs.{index}.to"));
        let nodes = if to.is_empty() { Vec::new() } else { vec![to.clone()] };
        items.push(line(Pick::Run(index), to, nodes, typed(format!("runs.{index}.from"))));
    }
    for index in 0..project.row_count(place, "rows") {
        let label = typed(format!("rows.{index}.label"));
        let count = typed(format!("rows.{index}.count")).parse().unwrap_or(0);
        let nodes = if label.is_empty() { Vec::new() } else { row_nodes(&label, count) };
        items.push(line(Pick::Row(index), label, nodes, typed(format!("rows.{index}.from"))));
    }
    for index in 0..project.row_count(place, "loads") {
        let at = typed(format!("loads.{index}.at"));
        if let Some(item) = items.iter_mut().find(|item| item.nodes.contains(&at)) {
            item.loads.push(index);
        }
    }
    items
}

/// Which items hang on which: by the first that has the splice.
fn children(items: &[Line]) -> Vec<Vec<usize>> {
    let mut below = vec![Vec::new(); items.len()];
    for (child, item) in items.iter().enumerate().skip(1) {
        if let Some(above) = items.iter().position(|above| above.nodes.contains(&item.from)) {
            below[above].push(child);
        }
    }
    below
}

fn is_fed(below: &[Vec<usize>], item: usize) -> bool {
    below.iter().any(|children| children.contains(&item))
}

/// Writes an item and all below it. Side branches stand in; a way on without a fork does not.
fn walk(
    root: usize,
    items: &mut [Line],
    below: &[Vec<usize>],
    seen: &mut [bool],
    lines: &mut Vec<Line>,
) {
    let mut waiting = vec![(root, 0, None)];
    while let Some((at, depth, feeder)) = waiting.pop() {
        if std::mem::replace(&mut seen[at], true) {
            continue;
        }
        let last = lines.last().map(|line: &Line| line.pick);
        let mut line = items[at].clone();
        line.depth = depth;
        line.feeder = feeder;
        line.loose = root != 0 && at == root;
        line.told = feeder.is_some() && last != feeder;
        let pick = Some(line.pick);
        lines.push(line);
        let is_long =
            |child: &usize| !below[*child].is_empty() || matches!(items[*child].pick, Pick::Row(_));
        let (long, short): (Vec<usize>, Vec<usize>) = below[at].iter().partition(|c| is_long(c));
        let alone = below[at].len() == 1;
        let long_depth = if long.len() > 1 { depth + 1 } else { depth };
        let short_depth = if alone { depth } else { depth + 1 };
        // The last that is put by comes first.
        waiting.extend(long.into_iter().rev().map(|child| (child, long_depth, pick)));
        waiting.extend(short.into_iter().rev().map(|child| (child, short_depth, pick)));
    }
}

fn loose_loads(project: &Project, place: &Place, lines: &[Line]) -> Vec<Line> {
    let loose = |index: &usize| !lines.iter().any(|line| line.loads.contains(index));
    (0..project.row_count(place, "loads"))
        .filter(loose)
        .map(|index| Line {
            pick: Pick::Load(index),
            name: project.typed(place, &format!("loads.{index}.label")),
            nodes: Vec::new(),
            from: project.typed(place, &format!("loads.{index}.at")),
            depth: 0,
            told: false,
            loose: true,
            loads: vec![index],
            feeder: None,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc::quantity::UnitSystem;
    use serde_json::{Value, json};

    fn lines(inputs: Value) -> Vec<String> {
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let place = Place::Sheet(project.add_sheet("circuit", "", inputs));
        outline(&project, &place)
            .iter()
            .map(|line| {
                let told = if line.told { format!(" from {}", line.from) } else { String::new() };
                let loose = if line.loose { " loose" } else { "" };
                let loads = format!("{:?}", line.loads);
                format!("{}{}{told}{loose} {loads}", "  ".repeat(line.depth), line.name)
            })
            .collect()
    }

    fn run(from: &str, to: &str) -> Value {
        json!({ "id": format!("r {to}"), "from": from, "to": to })
    }

    #[test]
    fn zones_stand_in_and_a_chain_does_not() {
        let inputs = json!({
            "runs": [run("source", "panel"), run("panel", "a"), run("a", "b"), run("b", "c"),
                run("panel", "fan"), run("b", "side")],
            "rows": [{ "label": "left", "from": "panel", "count": 3 }],
            "loads": [{ "at": "fan" }, { "at": "left 2" }, { "at": "panel" }, { "at": "roof", "label": "pump" }]
        });
        assert_eq!(
            lines(inputs),
            [
                "source []",
                "panel [2]",
                "  fan [0]",
                "  a from panel []",
                "  b []",
                "    c []",
                "    side from b []",
                "  left from panel [1]",
                "pump loose [3]"
            ]
        );
    }

    #[test]
    fn what_hangs_on_nothing_and_rings_are_shown_too() {
        let inputs = json!({ "runs": [run("nowhere", "a"), run("a", "b"), run("x", "y"), run("y", "x"), {}] });
        let shown = lines(inputs);
        assert_eq!(shown, ["source []", "a loose []", "b []", " loose []", "y loose []", "x []"]);
        assert_eq!(lines(json!({ "runs": "text" })), ["source []"]);
    }

    #[test]
    fn forty_nodes_stay_on_a_phone() {
        let mut runs = vec![run("source", "panel")];
        for zone in 0..3 {
            for lamp in 0..13 {
                let from =
                    if lamp == 0 { "panel".to_owned() } else { format!("{zone} {}", lamp - 1) };
                runs.push(run(&from, &format!("{zone} {lamp}")));
            }
        }
        let mut project = Project::new("p", "", UnitSystem::Metric);
        let place = Place::Sheet(project.add_sheet("circuit", "", json!({ "runs": runs })));
        let lines = outline(&project, &place);
        assert_eq!(lines.len(), 41);
        assert!(lines.iter().all(|line| line.depth <= 1));
        assert_eq!(branch(&lines, Pick::Run(1)).len(), 13);
        assert_eq!(branch(&lines, Pick::Source).len(), 41);
    }
}
