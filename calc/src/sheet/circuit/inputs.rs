//! How what was typed is read into a tree.

use super::asked::{Asked, Drawn, LightsRow, LoadRow, Model, RunRow};
use super::common::{Supply, read_conditions, read_supply};
use crate::ask::MOST_ROWS;
use crate::electrical::ampacity::Conditions;
use crate::electrical::colours::{Colour, Leads};
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::Load;
use crate::electrical::network::PlacedLoad;
use crate::electrical::tree::{Link, Tree, TreeFault};
use crate::electrical::wanted::Wanted;
use crate::electrical::wire::route_m;
use crate::reader::Reader;
use crate::text::text;
use crate::words::{Arg, Msg, circuit as words, electrical};

/// A run as typed, or as made for a row of lights.
pub(super) struct RunInput {
    /// Where it was typed: `runs.2`, `rows.0`.
    pub path: String,
    /// What it is known by, whatever it is called: `r3`, of a row of lights `rows.0.2`.
    pub key: String,
    /// Its name in the file and in the outcome, the same in every language.
    pub id: String,
    /// Its name as it is shown.
    pub name: Arg,
    /// The same in a sentence: `run r3`.
    pub called: Arg,
    pub from: String,
    pub to: String,
    /// One way. [m]
    pub length_m: f64,
    /// Whether the length was taken from where the run lies.
    pub is_routed: bool,
    /// None where it is to be chosen.
    pub conductor: Option<Conductor>,
    /// What a dimmer or switch in it carries. [A]
    pub device_rating_a: Option<f64>,
    /// The same in watts.
    pub device_rating_w: Option<f64>,
    /// Whether that device protects itself.
    pub self_protecting: bool,
    /// Whether it ends at a fuse block.
    pub fuse_block: bool,
    /// Whether there is a source at its far end too.
    pub far_source: bool,
    series: Option<Series>,
}

/// A load as typed, or as made for a row of lights.
pub(super) struct LoadInput {
    /// Where it was typed: `loads.2`, `rows.0`.
    pub path: String,
    /// What it is known by, whatever it is called: `2`, of a row of lights `rows.0.2`.
    pub key: String,
    pub at: String,
    pub label: Arg,
    pub load: Load,
    pub count: u32,
    pub leads: Option<Leads>,
}

/// What was typed, read.
pub(super) struct Inputs {
    pub supply: Supply,
    pub drop_limit_percent: f64,
    pub temperature_c: f64,
    pub continuous: bool,
    pub conditions: Conditions,
    pub slack_m: f64,
    pub runs: Vec<RunInput>,
    pub loads: Vec<LoadInput>,
    /// Sizes for the runs that are open.
    pub choices: Vec<Conductor>,
    /// Whether those sizes were named.
    pub choices_named: bool,
    /// Colours of the wire of the runs.
    pub wire: Leads,
    /// The tree and its loads, where the runs are one.
    pub network: Option<(Tree, Vec<PlacedLoad>)>,
}

impl LoadInput {
    /// Its name, with its number where there are several alike.
    pub fn shown(&self) -> Arg {
        match self.count {
            1 => self.label.clone(),
            count => {
                // The number is no number of a sentence here.
                let count = count.to_string();
                Msg::from(words::Several { count, label: self.label.clone() }).into()
            }
        }
    }
}

impl Inputs {
    /// The input of a run, or of the row that it was made for.
    pub fn run_field(&self, run: usize, key: &str) -> String {
        match self.runs.get(run) {
            Some(run) if run.path.starts_with(Asked::ROWS.key) && key == "length" => {
                text!("{}.spacing", &run.path)
            }
            Some(run) => text!("{}.{}", &run.path, &key),
            None => Asked::RUNS.key.to_owned(),
        }
    }
}

pub(super) fn read(reader: &Reader<'_>) -> Inputs {
    let supply = read_supply(reader);
    let asked = Asked::read(reader);
    let numbered = |ask: &'static crate::ask::Ask| reader.row_keys(ask).into_iter().enumerate();
    let keys = numbered(Asked::RUNS);
    let mut runs: Vec<RunInput> = asked
        .runs
        .into_iter()
        .zip(keys)
        .map(|(row, (at, key))| typed_run(reader, row, at, key))
        .collect();
    let keys = numbered(Asked::LOADS);
    let mut loads: Vec<LoadInput> = asked
        .loads
        .into_iter()
        .zip(keys)
        .map(|(row, (at, key))| typed_load(reader, row, at, key))
        .collect();
    for (row, (at, key)) in asked.rows.into_iter().zip(numbered(Asked::ROWS)) {
        // Rows without a key of their own are counted from 0 here.
        let key = key.parse().map_or(key, |number: u64| number.saturating_sub(1).to_string());
        lights(reader, &row, at, &key, &mut runs, &mut loads);
    }
    if runs.len() > MOST_ROWS {
        reader.tell(Asked::ROWS, words::TooManyRuns { count: runs.len(), most: MOST_ROWS });
    }
    if loads.is_empty() && !reader.has_faults() {
        reader.tell(Asked::LOADS, words::NO_LOADS);
    }
    let choices_named = reader.given(Asked::CONDUCTOR_CHOICES);
    let series = one_series(reader, &runs, choices_named);
    let (conditions, temperature_c) = read_conditions(reader);
    Inputs {
        supply,
        drop_limit_percent: asked.drop_limit_percent,
        temperature_c,
        continuous: asked.continuous,
        conditions,
        slack_m: asked.slack.map_or(0.0, |slack| slack.value),
        network: network(reader, &runs, &loads),
        runs,
        loads,
        choices: if choices_named { asked.conductor_choices } else { series.conductors() },
        choices_named,
        wire: Leads { positive: asked.positive_wire, negative: asked.negative_wire },
    }
}

fn typed_run(reader: &Reader<'_>, row: RunRow, at: usize, key: String) -> RunInput {
    let path = text!("{}.{}", Asked::RUNS.key, &at);
    let typed_m = row.length.map(|length| length.value);
    let routed_m =
        row.route.map(|route| route_m(route.from.metres(), route.to.metres(), route.rise.value));
    if typed_m.is_none() && routed_m.is_none() {
        reader.tell_at(&text!("{}.{}", &path, RunRow::LENGTH.key), words::LENGTH_OR_ROUTE);
    }
    RunInput {
        path,
        key,
        name: row.id.as_str().into(),
        called: Msg::from(words::RunCalled { name: row.id.as_str() }).into(),
        id: row.id,
        from: row.from,
        to: row.to,
        length_m: typed_m.or(routed_m).unwrap_or(1.0),
        is_routed: typed_m.is_none(),
        conductor: given(row.conductor),
        device_rating_a: row.device_rating.map(|rating| rating.value),
        device_rating_w: row.device_watts.map(|rating| rating.value),
        self_protecting: row.protects_itself,
        fuse_block: row.fuse_block,
        far_source: row.far_source,
        series: series(row.conductor),
    }
}

fn given(wanted: Wanted) -> Option<Conductor> {
    match wanted {
        Wanted::This(conductor) => Some(conductor),
        Wanted::Least(_) => None,
    }
}

fn series(wanted: Wanted) -> Option<Series> {
    match wanted {
        Wanted::Least(series) => series,
        Wanted::This(_) => None,
    }
}

fn typed_load(reader: &Reader<'_>, row: LoadRow, at: usize, key: String) -> LoadInput {
    let path = text!("{}.{}", Asked::LOADS.key, &at);
    let label = if row.label.is_empty() { &row.at } else { &row.label };
    LoadInput {
        label: label.as_str().into(),
        at: row.at,
        load: load(reader, &path, row.model, &row.value),
        count: row.count,
        leads: leads(reader, &path, row.positive_lead, row.negative_lead),
        path,
        key,
    }
}

/// The runs and loads of a row of lights: each is fed from the one before.
fn lights(
    reader: &Reader<'_>,
    row: &LightsRow,
    at: usize,
    key: &str,
    runs: &mut Vec<RunInput>,
    loads: &mut Vec<LoadInput>,
) {
    let path = text!("{}.{}", Asked::ROWS.key, &at);
    let load = load(reader, &path, row.model, &row.value);
    let leads = leads(reader, &path, row.positive_lead, row.negative_lead);
    // Without a name its splices would have none of their own.
    let name = |number: u32| match row.label.as_str() {
        "" => String::new(),
        label => text!("{} {}", &label, &number),
    };
    for number in 1..=row.count {
        let node = name(number);
        let key = text!("{}.{}.{}", Asked::ROWS.key, &key, number - 1);
        let is_first = number == 1;
        let run = Arg::from(Msg::from(words::RunOfRow { node: node.as_str() }));
        runs.push(RunInput {
            path: path.clone(),
            key: key.clone(),
            id: if node.is_empty() { String::new() } else { text!("run {}", &node) },
            name: run.clone(),
            called: run,
            from: if is_first { row.from.clone() } else { name(number - 1) },
            to: node.clone(),
            length_m: if is_first { row.first.value } else { row.spacing.value },
            is_routed: false,
            conductor: given(row.conductor),
            device_rating_a: row.device_rating.filter(|_| is_first).map(|rating| rating.value),
            device_rating_w: row.device_watts.filter(|_| is_first).map(|rating| rating.value),
            self_protecting: row.protects_itself,
            fuse_block: false,
            far_source: false,
            series: series(row.conductor),
        });
        loads.push(LoadInput {
            path: path.clone(),
            key,
            label: Msg::from(words::LightOfRow { node: node.as_str() }).into(),
            at: node,
            load,
            count: 1,
            leads,
        });
    }
}

/// How a load draws.
fn load(reader: &Reader<'_>, path: &str, model: Model, value: &Drawn) -> Load {
    value.load(model).unwrap_or_else(|message| {
        reader.tell_at(&text!("{}.{}", &path, LoadRow::VALUE.key), message);
        Load::Current(0.0)
    })
}

/// The colours of its leads: both or none.
fn leads(
    reader: &Reader<'_>,
    path: &str,
    positive: Option<Colour>,
    negative: Option<Colour>,
) -> Option<Leads> {
    let [plus, minus] = [LoadRow::POSITIVE_LEAD, LoadRow::NEGATIVE_LEAD]
        .map(|lead| text!("{}.{}", &path, lead.key));
    for (this, other) in [(&plus, &minus), (&minus, &plus)] {
        if reader.given_at(this) && !reader.given_at(other) {
            reader.tell_at(other, words::BOTH_LEADS);
        }
    }
    positive.zip(negative).map(|(positive, negative)| Leads { positive, negative })
}

/// The series that `auto` chooses from: the one that was named, else AWG.
fn one_series(reader: &Reader<'_>, runs: &[RunInput], choices_named: bool) -> Series {
    let mut one = None;
    for run in runs {
        let Some(series) = run.series else { continue };
        let path = text!("{}.{}", &run.path, RunRow::CONDUCTOR.key);
        if choices_named {
            reader.tell_at(&path, words::CHOICES_NAMED);
        } else if one.is_some_and(|one| one != series) {
            reader.tell_at(&path, words::MIXED_SERIES);
        }
        one = Some(series);
    }
    one.unwrap_or(Series::Awg)
}

/// The tree of the runs with its loads; what keeps them from being one is noted.
fn network(
    reader: &Reader<'_>,
    runs: &[RunInput],
    loads: &[LoadInput],
) -> Option<(Tree, Vec<PlacedLoad>)> {
    // Names that are missing were noted already, and would lead to faults that mean nothing.
    let is_named = |run: &RunInput| ![&run.id, &run.from, &run.to].iter().any(|n| n.is_empty());
    if runs.is_empty() || runs.len() > MOST_ROWS || !runs.iter().all(is_named) {
        return None;
    }
    let links: Vec<Link<'_>> =
        runs.iter().map(|run| Link { id: &run.id, from: &run.from, to: &run.to }).collect();
    let note_all = |faults: Vec<TreeFault>| {
        for fault in faults {
            let message = match &fault {
                // The names of what a row makes are shown in words.
                TreeFault::SameName { run, first, .. } => {
                    electrical::SameName { number: first + 1, name: name_of(runs, *run) }.into()
                }
                other => Msg::from(other),
            };
            reader.tell_at(&path(&fault, runs, loads), message);
        }
    };
    let tree = Tree::build(&links).map_err(note_all).ok()?;
    let at: Vec<&str> = loads.iter().map(|load| load.at.as_str()).collect();
    if at.contains(&"") {
        return None;
    }
    let places = tree.places(&at).map_err(note_all).ok()?;
    for (place, load) in places.iter().zip(loads) {
        let is_block = (0..tree.runs())
            .any(|run| tree.ends(run).1 == *place && runs.get(run).is_some_and(|r| r.fuse_block));
        if is_block {
            let path = text!("{}.{}", &load.path, LoadRow::AT.key);
            reader.tell_at(&path, words::LoadOnBlock { node: load.at.as_str() });
        }
    }
    let placed = places
        .into_iter()
        .zip(loads)
        .map(|(node, load)| PlacedLoad { node, load: load.load, count: load.count })
        .collect();
    Some((tree, placed))
}

/// The input that a fault of the tree belongs to.
fn path(fault: &TreeFault, runs: &[RunInput], loads: &[LoadInput]) -> String {
    let of_run = |run: &usize, key: &str| match runs.get(*run) {
        Some(run) if run.path.starts_with(Asked::ROWS.key) && key != "from" => {
            text!("{}.label", &run.path)
        }
        Some(run) => text!("{}.{}", &run.path, &key),
        None => Asked::RUNS.key.to_owned(),
    };
    match fault {
        TreeFault::NoRuns | TreeFault::NoSource => Asked::RUNS.key.to_owned(),
        TreeFault::NameMissing { run } | TreeFault::SameName { run, .. } => of_run(run, "id"),
        TreeFault::ToItself { run, .. }
        | TreeFault::IntoSource { run }
        | TreeFault::TwoFeeds { run, .. } => of_run(run, "to"),
        TreeFault::Unfed { run, .. } | TreeFault::Ring { run, .. } => of_run(run, "from"),
        TreeFault::LoadOnNoNode { load, .. } => {
            loads.get(*load).map_or(Asked::LOADS.key.to_owned(), |load| text!("{}.at", &load.path))
        }
    }
}

fn name_of(runs: &[RunInput], run: usize) -> Arg {
    runs.get(run).map_or_else(|| "".into(), |run| run.name.clone())
}
