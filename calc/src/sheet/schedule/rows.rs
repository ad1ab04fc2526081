//! A row of the schedule, read: one step, or all passes and coats of another sheet.

use std::rc::Rc;

use uom::si::f64::ThermodynamicTemperature;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use super::inputs::{Planned, Row};
use super::label::{OnLabel, Times};
use crate::ask::Ask;
use crate::coating::climate::{Climate, Weather};
use crate::coating::mixing;
use crate::coating::schedule::{Pace, Step};
use crate::coating::verdict::Limits;
use crate::formula::Formula as _;
use crate::reader::Reader;
use crate::sheet::handoffs::{Coated, Filling, Layer};
use crate::words::{Arg, Id, Msg, coating, gap_fill, schedule as words};

/// Passes or coats of one product after each other.
struct Stage {
    name: Arg,
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
pub(super) struct OfAll<'a> {
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
pub(super) fn read(reader: &Reader<'_>, of_all: &OfAll<'_>) -> Vec<Planned> {
    let label_temperature = of_all.label_temperature;
    let row = Row::read(reader);
    let own_air = row.own_air().map(|own| {
        Rc::new(
            of_all
                .night
                .map_or_else(|| Climate::even(own), |night| Climate::with_night(own, night)),
        )
    });
    let of_coats = reader.given(Row::COATS);
    let of_sheet = reader.given(Row::PASSES) || of_coats;
    // Dry work has no weather.
    let air = own_air.or_else(|| of_all.climate.cloned()).filter(|_| !row.dry);
    let stages = stages(reader, &row, label_temperature);
    if row.dry && of_sheet {
        reader.tell(Row::DRY, words::DRY_PASSES);
    }
    let mut planned: Vec<Planned> = Vec::new();
    let mut left: u32 = stages.iter().map(|stage| stage.count).sum();
    for stage in stages {
        let label_at = stage.times.at_c.map(ThermodynamicTemperature::new::<degree_celsius>);
        let dry_step = |name: Id, work_min: f64, with: With| {
            let step = Step { work_min, ..Step::default() };
            Planned { dry: true, with, ..Planned::of(name, step) }
        };
        if let Some(prepare) = stage.times.prepare.filter(|_| of_sheet) {
            planned.push(dry_step(words::CLOSE, prepare, With::Nothing));
        }
        for number in 1..=stage.count {
            left -= 1;
            let mut step = step(&stage, number, left == 0);
            step.batches = row.batches.or(stage.batches).unwrap_or(1);
            let sand = stage.times.sand.filter(|_| left > 0 || !of_sheet);
            if sand.is_some() {
                // Abraded, it may wait as long as it will.
                step.recoat_most_min = None;
            }
            planned.push(Planned {
                label_at: label_at.unwrap_or(label_temperature),
                fewest_batches: of_coats && row.batches.is_none(),
                of_sheet,
                cured: stage.times.cure.is_some(),
                air: air.clone(),
                dry: row.dry,
                limits: stage.limits.or(of_all.limits),
                with: stage.with,
                first: number == 1,
                ..Planned::of(stage.name_of(number), step)
            });
            if let Some(work_min) = sand {
                planned.push(dry_step(words::SAND, work_min, With::Nothing));
            }
        }
        if let Some(wash) = stage.times.wash.filter(|_| of_sheet) {
            planned.push(dry_step(words::WASH, wash, With::Wash));
        }
    }
    if let Some(first) = planned.first_mut() {
        first.step.starts_min = row.starts_min();
    }
    planned
}

impl Stage {
    /// What one of its passes or coats is called.
    fn name_of(&self, number: u32) -> Arg {
        let step = self.name.clone();
        match self.count {
            1 => step,
            count => {
                let (number, count) = (Arg::count(number), Arg::count(count));
                Msg::from(words::Numbered { step, number, count }).into()
            }
        }
    }
}

/// One pass or coat of a stage; `last` is the last of the row.
fn step(stage: &Stage, number: u32, last: bool) -> Step {
    let times = &stage.times;
    let between = times.recoat_least.unwrap_or(0.0);
    // Behind the last one of its product the other wait counts.
    let wait = if number == stage.count { times.cure.unwrap_or(between) } else { between };
    Step {
        label: String::new(),
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

fn stages(
    reader: &Reader<'_>,
    row: &Row,
    label_temperature: ThermodynamicTemperature,
) -> Vec<Stage> {
    let own = Times::read(reader);
    let label = row.label.as_str();
    let given: Vec<&Ask> = [Row::PASSES, Row::COATS, Row::FILLER]
        .into_iter()
        .filter(|ask| reader.given(ask))
        .collect();
    if let [_, second, ..] = given.as_slice() {
        reader.tell(second, words::ONE_SHEET);
    }
    let found = row.passes.is_some() || row.coats.is_some() || row.filler.is_some();
    let stages = match (&row.passes, &row.coats, &row.filler) {
        (Some(filler), _, _) => {
            let name = match label {
                "" => product_of(filler.product.as_deref(), gap_fill::FILLER),
                label => label.into(),
            };
            vec![Stage { count: filler.passes, ..pass(name, own, filler, label_temperature) }]
        }
        (_, Some(Coated(layers)), _) => {
            layers.iter().map(|layer| coat(label, own, layer)).collect()
        }
        (_, _, Some(filler)) => vec![pass(label.into(), own, filler, label_temperature)],
        _ => vec![Stage {
            name: label.into(),
            count: 1,
            batches: None,
            times: own,
            limits: Limits::default(),
            with: With::Nothing,
        }],
    };
    // A sheet that cannot be read was found fault with already.
    let known = given.is_empty() || found;
    if known && stages.iter().any(|stage| stage.times.work.is_none()) {
        let missing = if given.is_empty() { words::WORK_MISSING } else { words::WORK_UNSAID };
        reader.tell(OnLabel::WORK, missing);
    }
    stages
}

/// What a product is called: its name, or what it is called where it was given none.
fn product_of(named: Option<&str>, unnamed: Id) -> Arg {
    named.map_or_else(|| unnamed.into(), Arg::from)
}

/// One pass of a filler.
fn pass(name: Arg, own: Times, filler: &Filling, at: ThermodynamicTemperature) -> Stage {
    let mut times = filler.times.map_or(own, |of_label| own.or(of_label));
    times.work = times.work.or(filler.pass_min);
    // The filler's label may give its pot life for another temperature than its waits.
    let at = times.at_c.map_or(at, ThermodynamicTemperature::new::<degree_celsius>);
    times.workable = times.workable.or_else(|| {
        let (life, of_label) = filler.pot_life?;
        let life = mixing::PotLife::new(life, of_label, at).ok()?.value();
        Some(life.get::<minute>())
    });
    Stage {
        name,
        count: 1,
        batches: Some(filler.batches),
        times,
        limits: filler.limits.into(),
        with: With::Filler,
    }
}

/// The coats of one layer.
fn coat(label: &str, own: Times, layer: &Layer) -> Stage {
    let product = product_of(layer.product.as_deref(), coating::COATING);
    let name = match label {
        "" => product,
        label => Msg::from(words::OfProduct { label, product }).into(),
    };
    Stage {
        name,
        count: layer.coats,
        batches: None,
        times: own.or(layer.times),
        limits: layer.limits.into(),
        with: layer.wiped.map_or(With::Film, With::Wiped),
    }
}
