//! How what was typed is read into a tree.

use super::asks::{
    AT, CONDUCTOR, CONDUCTOR_CHOICES, COUNT, DEVICE_RATING, DEVICE_WATTS, FIRST, FROM, FUSE_BLOCK,
    ID, LABEL, LENGTH_ONE_WAY, LOADS, MODEL, NEGATIVE_LEAD, NEGATIVE_WIRE, POSITIVE_LEAD,
    POSITIVE_WIRE, RISE, ROUTE, ROUTE_FROM, ROUTE_TO, ROW_CONDUCTOR, ROW_COUNT, ROW_LABEL, ROWS,
    RUNS, SELF_PROTECTING, SLACK, SPACING, TO, VALUE, X, Y,
};
use super::common::{
    CONTINUOUS, DROP_LIMIT, FAR_SOURCE, Supply, read_conditions, read_supply, stand_in, wanted,
};
use crate::ask::MOST_ROWS;
use crate::electrical::ampacity::Conditions;
use crate::electrical::colours::{Colour, Hue, Leads};
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::Load;
use crate::electrical::network::PlacedLoad;
use crate::electrical::tree::{Link, Tree, TreeFault};
use crate::electrical::wanted::Wanted;
use crate::electrical::wire::route_m;
use crate::quantity::{CURRENT, Dimension, Measure, POWER, RESISTANCE};
use crate::reader::Reader;
use crate::text::text;

/// A run as typed, or as made for a row of lights.
pub(super) struct RunInput {
    /// Where it was typed: `runs.2`, `rows.0`.
    pub path: String,
    /// What it is known by, whatever it is called: `r3`, of a row of lights `rows.0.2`.
    pub key: String,
    pub id: String,
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
    pub label: String,
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

impl Inputs {
    /// The input of a run, or of the row that it was made for.
    pub fn run_field(&self, run: usize, key: &str) -> String {
        match self.runs.get(run) {
            Some(run) if run.path.starts_with(ROWS.key) && key == "length" => {
                text!("{}.spacing", &run.path)
            }
            Some(run) => text!("{}.{}", &run.path, &key),
            None => RUNS.key.to_owned(),
        }
    }
}

pub(super) fn read(reader: &Reader<'_>) -> Inputs {
    let supply = read_supply(reader);
    let drop_limit_percent = reader.number(&DROP_LIMIT);
    let mut runs = reader.rows(&RUNS, read_run);
    let mut loads = reader.rows(&LOADS, read_load);
    for (run, key) in runs.iter_mut().zip(reader.row_keys(&RUNS)) {
        run.key = key;
    }
    for (load, key) in loads.iter_mut().zip(reader.row_keys(&LOADS)) {
        load.key = key;
    }
    for ((mut row_runs, mut row_loads), key) in
        reader.rows(&ROWS, read_row).into_iter().zip(reader.row_keys(&ROWS))
    {
        // Rows without a key of their own are counted from 0 here.
        let row = key.parse().map_or(key, |number: u64| number.saturating_sub(1).to_string());
        let keys = row_runs.iter_mut().map(|run| &mut run.key).zip(&mut row_loads);
        for (number, (run, load)) in keys.enumerate() {
            *run = text!("{}.{}.{}", ROWS.key, &row, &number);
            load.key.clone_from(run);
        }
        runs.extend(row_runs);
        loads.extend(row_loads);
    }
    if runs.len() > MOST_ROWS {
        reader.fault_at(
            &ROWS,
            format!(
                "with the rows there are {} runs; a circuit takes at most {MOST_ROWS}",
                runs.len()
            ),
        );
    }
    if loads.is_empty() && !reader.has_faults() {
        reader.fault_at(&LOADS, "add at least one load or a row of lights");
    }
    let named = reader.notations(&CONDUCTOR_CHOICES, |text| {
        text.parse::<Conductor>().map_err(|error| error.to_string())
    });
    let choices_named = reader.given(&CONDUCTOR_CHOICES);
    let series = one_series(reader, &runs, choices_named);
    let red = Colour { ground: Hue::Red, stripe: None };
    let wire = Leads {
        positive: reader.notation(&POSITIVE_WIRE, red, colour),
        negative: reader.notation(&NEGATIVE_WIRE, red, colour),
    };
    let (conditions, temperature_c) = read_conditions(reader);
    Inputs {
        supply,
        drop_limit_percent,
        temperature_c,
        continuous: reader.flag(&CONTINUOUS),
        conditions,
        slack_m: reader.maybe_si(&SLACK).unwrap_or(0.0),
        network: network(reader, &runs, &loads),
        runs,
        loads,
        choices: if choices_named { named } else { series.conductors() },
        choices_named,
        wire,
    }
}

fn read_run(row: &Reader<'_>) -> RunInput {
    let wanted = row.notation(&CONDUCTOR, stand_in(), wanted);
    let typed_m = row.maybe_si(&LENGTH_ONE_WAY);
    let routed_m = read_route(row);
    if typed_m.is_none() && routed_m.is_none() {
        row.fault_at(&LENGTH_ONE_WAY, "give length, or where the run begins and ends");
    }
    RunInput {
        path: row.path().to_owned(),
        key: String::new(),
        id: row.words(&ID),
        from: row.words(&FROM),
        to: row.words(&TO),
        length_m: typed_m.or(routed_m).unwrap_or(1.0),
        is_routed: typed_m.is_none(),
        conductor: given(wanted),
        device_rating_a: row.maybe_si(&DEVICE_RATING),
        device_rating_w: row.maybe_si(&DEVICE_WATTS),
        self_protecting: row.flag(&SELF_PROTECTING),
        fuse_block: row.flag(&FUSE_BLOCK),
        far_source: row.flag(&FAR_SOURCE),
        series: series(wanted),
    }
}

/// The length of a run from where it lies. [m]
fn read_route(row: &Reader<'_>) -> Option<f64> {
    row.maybe_group(&ROUTE, |route| {
        let point = |end: &Reader<'_>| (end.si(&X), end.si(&Y));
        let (from, to) = (route.group(&ROUTE_FROM, point), route.group(&ROUTE_TO, point));
        route_m(from, to, route.si(&RISE))
    })
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

fn read_load(row: &Reader<'_>) -> LoadInput {
    let at = row.words(&AT);
    let label = row.words(&LABEL);
    let (load, leads) = read_draw(row);
    LoadInput {
        path: row.path().to_owned(),
        key: String::new(),
        label: if label.is_empty() { at.clone() } else { label },
        at,
        load,
        count: row.count(&COUNT),
        leads,
    }
}

/// A row of lights: each is fed from the one before.
fn read_row(row: &Reader<'_>) -> (Vec<RunInput>, Vec<LoadInput>) {
    let label = row.words(&ROW_LABEL);
    let wanted = row.notation(&ROW_CONDUCTOR, stand_in(), wanted);
    let first_m = row.si(&FIRST);
    let spacing_m = row.si(&SPACING);
    let device_rating_a = row.maybe_si(&DEVICE_RATING);
    let device_rating_w = row.maybe_si(&DEVICE_WATTS);
    let self_protecting = row.flag(&SELF_PROTECTING);
    let count = row.count(&ROW_COUNT);
    let feed = row.words(&FROM);
    let (load, leads) = read_draw(row);
    // Without a name its splices would have none of their own.
    let name = |number: u32| match label.as_str() {
        "" => String::new(),
        label => text!("{} {}", &label, &number),
    };
    let runs = (1..=count).map(|number| RunInput {
        path: row.path().to_owned(),
        key: String::new(),
        id: if label.is_empty() { String::new() } else { text!("run {}", name(number)) },
        from: if number == 1 { feed.clone() } else { name(number - 1) },
        to: name(number),
        length_m: if number == 1 { first_m } else { spacing_m },
        is_routed: false,
        conductor: given(wanted),
        device_rating_a: device_rating_a.filter(|_| number == 1),
        device_rating_w: device_rating_w.filter(|_| number == 1),
        self_protecting,
        fuse_block: false,
        far_source: false,
        series: series(wanted),
    });
    let loads = (1..=count).map(|number| LoadInput {
        path: row.path().to_owned(),
        key: String::new(),
        at: name(number),
        label: text!("light {}", name(number)),
        load,
        count: 1,
        leads,
    });
    (runs.collect(), loads.collect())
}

/// How a load draws, and the colours of its leads.
fn read_draw(row: &Reader<'_>) -> (Load, Option<Leads>) {
    let model = row.choice(&MODEL);
    let positive = row.maybe_notation(&POSITIVE_LEAD, colour);
    let negative = row.maybe_notation(&NEGATIVE_LEAD, colour);
    for (this, other) in [(&POSITIVE_LEAD, &NEGATIVE_LEAD), (&NEGATIVE_LEAD, &POSITIVE_LEAD)] {
        if row.given(this) && !row.given(other) {
            row.fault_at(other, "give the colours of both leads, or of none");
        }
    }
    let load = row.notation(&VALUE, Load::Current(0.0), |text| load(model, text));
    (load, positive.zip(negative).map(|(positive, negative)| Leads { positive, negative }))
}

/// A load's value, in the unit of how it draws.
fn load(model: &str, text: &str) -> Result<Load, String> {
    type Make = fn(f64) -> Load;
    let (dimension, make): (&'static Dimension, Make) = match model {
        "current" => (&CURRENT, Load::Current),
        "resistance" => (&RESISTANCE, Load::Resistance),
        _ => (&POWER, Load::Power),
    };
    let measure = Measure::read(text, dimension, None).map_err(|error| error.to_string())?;
    make(measure.si()).checked().map_err(|range| range.to_string())
}

fn colour(text: &str) -> Result<Colour, String> {
    text.parse().map_err(|error: crate::electrical::colours::NotAColour| error.to_string())
}

/// The series that `auto` chooses from: the one that was named, else AWG.
fn one_series(reader: &Reader<'_>, runs: &[RunInput], choices_named: bool) -> Series {
    let mut one = None;
    for run in runs {
        let Some(series) = run.series else { continue };
        let path = text!("{}.conductor", &run.path);
        if choices_named {
            reader.note(&path, "the sizes to choose from are named already; write auto here");
        } else if one.is_some_and(|one| one != series) {
            reader.note(
                &path,
                "auto AWG and auto mm2 do not mix in one circuit; take one of them, or name the \
                 sizes to choose from",
            );
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
            reader.note(&path(&fault, runs, loads), fault.to_string());
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
            let message = text!(
                "“{}” is a fuse block: give the load a run of its own from there, which has a fuse",
                &load.at
            );
            reader.note(&text!("{}.at", &load.path), message);
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
        Some(run) if run.path.starts_with(ROWS.key) && key != "from" => {
            text!("{}.label", &run.path)
        }
        Some(run) => text!("{}.{}", &run.path, &key),
        None => RUNS.key.to_owned(),
    };
    match fault {
        TreeFault::NoRuns | TreeFault::NoSource => RUNS.key.to_owned(),
        TreeFault::NameMissing { run } | TreeFault::SameName { run, .. } => of_run(run, "id"),
        TreeFault::ToItself { run, .. }
        | TreeFault::IntoSource { run }
        | TreeFault::TwoFeeds { run, .. } => of_run(run, "to"),
        TreeFault::Unfed { run, .. } | TreeFault::Ring { run, .. } => of_run(run, "from"),
        TreeFault::LoadOnNoNode { load, .. } => {
            loads.get(*load).map_or(LOADS.key.to_owned(), |load| text!("{}.at", &load.path))
        }
    }
}
