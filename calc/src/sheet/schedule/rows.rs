//! A row of the schedule, read: one step, or all passes and coats of another sheet.

use std::rc::Rc;

use uom::si::f64::{ThermodynamicTemperature, Time};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use super::Planned;
use super::asks::{BATCHES, COATS, DRY, FILLER, LABEL, PASSES, STARTS, STEP_AIR, weather};
use super::clock::day_and_time;
use super::label::{self, Times};
use crate::coating::climate::{Climate, Weather};
use crate::coating::mixing;
use crate::coating::schedule::{Pace, Step};
use crate::coating::verdict::Limits;
use crate::outcome::{Record, Value};
use crate::reader::Reader;
use crate::text::text;

/// Passes or coats of one product after each other.
struct Stage {
    label: String,
    count: u32,
    batches: Option<u32>,
    times: Times,
    limits: Limits,
    with: With,
}

/// What is done with a product besides putting it on.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum With {
    /// Nothing that is known of.
    #[default]
    Nothing,
    /// A filler: closed below, masked, wet out; washed afterwards.
    Filler,
    /// The washing after a filler.
    Wash,
    /// A film.
    Film,
    /// A finish that is wiped off after so many minutes, where they are known.
    Wiped(Option<f64>),
}

/// What the sheet says for all rows.
pub struct OfAll<'a> {
    /// What labels' times are for.
    pub label_temperature: ThermodynamicTemperature,
    /// What labels allow that are not on a sheet of their own.
    pub limits: Limits,
    /// The air where a row has none of its own.
    pub climate: Option<&'a Rc<Climate>>,
    /// The night.
    pub night: Option<Weather>,
}

/// Reads a row.
pub fn read(row: &Reader<'_>, of_all: &OfAll<'_>) -> Vec<Planned> {
    let label_temperature = of_all.label_temperature;
    let own_air = row.maybe_group(&STEP_AIR, weather).map(|own| {
        Rc::new(
            of_all
                .night
                .map_or_else(|| Climate::even(own), |night| Climate::with_night(own, night)),
        )
    });
    let dry = row.flag(&DRY);
    let of_sheet = row.given(&PASSES) || row.given(&COATS);
    // Dry work has no weather.
    let air = own_air.or_else(|| of_all.climate.cloned()).filter(|_| !dry);
    let own = Times::read(row);
    let batches = row.maybe_count(&BATCHES);
    let stages = stages(row, own, label_temperature);
    if dry && of_sheet {
        row.fault_at(&DRY, "passes and coats are no dry work; give the sanding a row of its own");
    }
    let mut planned: Vec<Planned> = Vec::new();
    let mut left: u32 = stages.iter().map(|stage| stage.count).sum();
    for stage in stages {
        let label_at = stage.times.at_c.map(ThermodynamicTemperature::new::<degree_celsius>);
        let dry_step = |label: &str, work_min: f64, with: With| {
            let step = Step { label: label.to_owned(), work_min, ..Step::default() };
            Planned { dry: true, with, ..Planned::of(step) }
        };
        if let Some(prepare) = stage.times.prepare.filter(|_| of_sheet) {
            planned.push(dry_step("close from below, mask", prepare, With::Nothing));
        }
        for number in 1..=stage.count {
            left -= 1;
            let mut step = step(&stage, number, left == 0);
            step.batches = batches.or(stage.batches).unwrap_or(1);
            let sand = stage.times.sand.filter(|_| left > 0 || !of_sheet);
            if sand.is_some() {
                // Abraded, it may wait as long as it will.
                step.recoat_most_min = None;
            }
            planned.push(Planned {
                label_at: label_at.unwrap_or(label_temperature),
                fewest_batches: row.given(&COATS) && batches.is_none(),
                of_sheet,
                cured: stage.times.cure.is_some(),
                air: air.clone(),
                dry,
                limits: stage.limits.or(of_all.limits),
                with: stage.with,
                first: number == 1,
                ..Planned::of(step)
            });
            if let Some(work_min) = sand {
                planned.push(dry_step("sand", work_min, With::Nothing));
            }
        }
        if let Some(wash) = stage.times.wash.filter(|_| of_sheet) {
            planned.push(dry_step("wash off the filler, let it dry", wash, With::Wash));
        }
    }
    if let Some(first) = planned.first_mut() {
        first.step.starts_min = row.maybe_notation(&STARTS, day_and_time);
    }
    planned
}

/// One pass or coat of a stage; `last` is the last of the row.
fn step(stage: &Stage, number: u32, last: bool) -> Step {
    let times = &stage.times;
    let label = match stage.count {
        1 => stage.label.clone(),
        count => text!("{} {} of {}", &stage.label, &number, &count),
    };
    let between = times.recoat_least.unwrap_or(0.0);
    // Behind the last one of its product the other wait counts.
    let wait = if number == stage.count { times.cure.unwrap_or(between) } else { between };
    Step {
        label,
        work_min: times.work.unwrap_or_default(),
        batches: 1,
        workable_min: times.workable,
        recoat_least_min: wait,
        // Cured through, it has no window that it could miss.
        recoat_most_min: times.recoat_most.filter(|most| *most >= wait || times.cure.is_none()),
        traffic_min: times.traffic.filter(|_| last),
        pace: Pace::Even(1.0),
        starts_min: None,
    }
}

fn stages(row: &Reader<'_>, own: Times, label_temperature: ThermodynamicTemperature) -> Vec<Stage> {
    let label = row.words(&LABEL);
    let given: Vec<_> =
        [&PASSES, &COATS, &FILLER].into_iter().filter(|ask| row.given(ask)).collect();
    if let [_, second, ..] = given.as_slice() {
        row.fault_at(second, "a row takes from one sheet; give the other a row of its own");
    }
    let (passes, coats, filler) = (row.sheet(&PASSES), row.sheet(&COATS), row.sheet(&FILLER));
    let found = passes.is_some() || coats.is_some() || filler.is_some();
    let one = |label, times| Stage {
        label,
        count: 1,
        batches: None,
        times,
        limits: Limits::default(),
        with: With::Nothing,
    };
    let stages = match (passes, coats, filler) {
        (Some(filler), _, _) => {
            let name = if label.is_empty() { product_of(&filler) } else { label };
            let count = filler.list("batches").len() as u32;
            vec![Stage { count, ..pass(name, own, &filler, label_temperature) }]
        }
        (_, Some(coating), _) => coating
            .list("stages")
            .iter()
            .filter_map(|stage| match stage {
                Value::Record(stage) => Some(coat(&label, own, stage)),
                _ => None,
            })
            .collect(),
        (_, _, Some(filler)) => vec![pass(label, own, &filler, label_temperature)],
        _ => vec![one(label, own)],
    };
    // A sheet that cannot be read was found fault with already.
    let known = given.is_empty() || found;
    if known && stages.iter().any(|stage| stage.times.work.is_none()) {
        row.fault_at(
            &label::WORK,
            if given.is_empty() {
                "give how long it takes, for example 60 min"
            } else {
                "that sheet does not say how long one takes; say it here or there"
            },
        );
    }
    stages
}

fn product_of(outcome: &Record) -> String {
    match outcome.get("product") {
        Some(Value::Text(product)) => product.clone(),
        _ => String::new(),
    }
}

/// One pass of a filler.
fn pass(label: String, own: Times, filler: &Record, at: ThermodynamicTemperature) -> Stage {
    let mut times = own;
    if let Some(Value::Record(of_label)) = filler.get("times") {
        times = times.or(Times::of_record(of_label));
    }
    times.work = times.work.or(filler.number("pass_min"));
    // The filler's label may give its pot life for another temperature than its waits.
    let at = times.at_c.map_or(at, ThermodynamicTemperature::new::<degree_celsius>);
    let pot_life = filler.number("label_pot_life_min").zip(filler.number("label_temperature_c"));
    times.workable = times.workable.or_else(|| {
        let (life, of_label) = pot_life?;
        let of_label = ThermodynamicTemperature::new::<degree_celsius>(of_label);
        let life = mixing::pot_life(Time::new::<minute>(life), of_label, at).ok()?;
        Some(life.get::<minute>())
    });
    let batches = filler.number("batches.0.count").map(|count| count as u32);
    Stage { label, count: 1, batches, times, limits: label::limits_of(filler), with: With::Filler }
}

/// The coats of one layer.
fn coat(label: &str, own: Times, stage: &Record) -> Stage {
    let product = product_of(stage);
    let label = if label.is_empty() { product } else { text!("{}: {}", label, &product) };
    let count = stage.number("coats").map_or(1, |coats| coats as u32);
    let with = match stage.get("penetrating") {
        Some(Value::Flag(true)) => With::Wiped(stage.number("wipe_min")),
        _ => With::Film,
    };
    let times = own.or(Times::of_record(stage));
    Stage { label, count, batches: None, times, limits: label::limits_of(stage), with }
}
