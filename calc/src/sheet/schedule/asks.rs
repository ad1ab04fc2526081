//! What the schedule asks, and how it is read.

use crate::text::text;
use uom::si::f64::{Ratio, ThermodynamicTemperature, Time};
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use super::clock::{day_and_time, time_of_day};
use super::{Inputs, Weather};
use crate::ask::Ask;
use crate::coating::mixing;
use crate::coating::schedule::{Hours, Step};
use crate::quantity::{TEMPERATURE, TIME};
use crate::reader::Reader;

pub static ASKS: &[&Ask] = &[&START, &HOURS, &LABEL_TEMPERATURE, &AIR, &STEPS];

/// Waits of more than 29 days are left to the label. [s]
const LONGEST: f64 = 29.0 * 86_400.0;

pub static START: Ask = Ask::notation("start", "First start", "time of day", &["8:00", "9:00"])
    .usual("8:00 am", "8:00")
    .help("When the first step starts, on the first day.");
static FROM: Ask =
    Ask::notation("from", "From", "time of day", &["7:00", "8:00"]).usual("8:00 am", "8:00");
static TO: Ask =
    Ask::notation("to", "To", "time of day", &["18:00", "20:00"]).usual("7:00 pm", "19:00");
pub static HOURS: Ask = Ask::group("hours", "Working hours", &[&FROM, &TO])
    .optional()
    .help("Nothing is started or left unfinished outside of them; leave them out to work round the clock.");
static LABEL_TEMPERATURE: Ask = Ask::measure(
    "label_temperature",
    "Labels' times are for",
    &TEMPERATURE,
    ["F", "C"],
    (258.15, 323.15),
)
.default("25 C")
.help("On the labels, mostly 20 to 25 C (68 to 77 F).");

static AIR_TEMPERATURE: Ask =
    Ask::measure("temperature", "Air temperature", &TEMPERATURE, ["F", "C"], (258.15, 323.15))
        .usual("68 F", "20 C");
static HUMIDITY: Ask =
    Ask::percent("humidity_percent", "Relative humidity", (1.0, 100.0)).usual("50", "50");
static SURFACE_TEMPERATURE: Ask = Ask::measure(
    "surface_temperature",
    "Surface temperature",
    &TEMPERATURE,
    ["F", "C"],
    (258.15, 353.15),
)
.usual("64 F", "18 C")
.help("At the coldest spot.");
const IN_AIR: &[&Ask] = &[&AIR_TEMPERATURE, &HUMIDITY, &SURFACE_TEMPERATURE];
static AIR: Ask = Ask::group("air", "Air and surface", IN_AIR)
    .optional()
    .help("Expected while you work; a step of its own weather can have its own.");

static LABEL: Ask = Ask::words("label", "Step").usual("first coat", "first coat");
static WORK: Ask =
    Ask::measure("work", "Work takes", &TIME, ["min", "min"], (0.0, 13.0 * 86_400.0))
        .usual("60 min", "60 min");
static DRY: Ask = Ask::flag("dry", "Dry work: sanding, cleaning", false)
    .help("Temperature and dew point do not matter for it.");
static FILLER: Ask = Ask::sheet_of("filler", "Takes batches and pot life from", "gap_fill")
    .optional()
    .help("A gap-filling sheet: this step is one of its passes.");
static BATCHES: Ask = Ask::count("batches", "Batches", (1, 10_000)).optional().usual("1", "1");
static WORKABLE: Ask =
    Ask::measure("workable", "A batch stays workable", &TIME, ["min", "min"], (1.0, LONGEST))
        .optional()
        .usual("25 min", "25 min")
        .help("On the label: pot life or working time.");
static RECOAT_LEAST: Ask =
    Ask::measure("recoat_least", "Least wait before the next", &TIME, ["h", "h"], (0.0, LONGEST))
        .default("0 min")
        .usual("3 h", "3 h")
        .help("On the label: recoat after.");
static RECOAT_MOST: Ask =
    Ask::measure("recoat_most", "Longest wait before the next", &TIME, ["h", "h"], (0.0, LONGEST))
        .optional()
        .usual("24 h", "24 h")
        .help("On the label: recoat within; after that it must be abraded first.");
static TRAFFIC: Ask =
    Ask::measure("traffic", "Wait before walking on it", &TIME, ["h", "h"], (0.0, LONGEST))
        .optional()
        .usual("24 h", "24 h");
static STARTS: Ask = Ask::notation("starts", "Starts at", "day and time", &["tomorrow 8:00"])
    .optional()
    .help("Where it did start or must start: 14:00, tomorrow 8:00, day 3 9:30. Else it is worked out.");
static STEP_AIR: Ask = Ask::group("air", "Its own air and surface", IN_AIR).optional();
pub static STEPS: Ask = Ask::rows(
    "steps",
    "Passes and coats",
    "step",
    1,
    &[
        &LABEL,
        &WORK,
        &DRY,
        &FILLER,
        &BATCHES,
        &WORKABLE,
        &RECOAT_LEAST,
        &RECOAT_MOST,
        &TRAFFIC,
        &STARTS,
        &STEP_AIR,
    ],
)
.help("In the order they are done; sanding is a step, too.");

pub fn read(reader: &Reader<'_>) -> Inputs {
    let general = reader.maybe_group(&AIR, weather);
    let label_temperature = reader.measure(&LABEL_TEMPERATURE);
    let mut steps = reader.rows(&STEPS, |row| {
        let own = row.maybe_group(&STEP_AIR, weather);
        // Dry work has no weather.
        let weather = own.or(general).filter(|_| !row.flag(&DRY));
        (step(row, label_temperature), weather)
    });
    for (index, (step, _)) in steps.iter_mut().enumerate() {
        if step.label.is_empty() {
            step.label = text!("step {}", index + 1);
        }
    }
    Inputs {
        start_min: reader.notation(&START, 0.0, time_of_day),
        hours: reader.maybe_group(&HOURS, |group| {
            let (from_min, to_min) =
                (group.notation(&FROM, 0.0, time_of_day), group.notation(&TO, 1440.0, time_of_day));
            if to_min <= from_min {
                group
                    .fault_at(&TO, "the working day must end after it starts, and before midnight");
            }
            Hours { from_min, to_min }
        }),
        label_temperature,
        steps,
    }
}

fn weather(group: &Reader<'_>) -> Weather {
    Weather {
        temperature: group.measure(&AIR_TEMPERATURE),
        humidity: Ratio::new::<percent>(group.number(&HUMIDITY)),
        surface: group.measure(&SURFACE_TEMPERATURE),
    }
}

fn step(row: &Reader<'_>, label_temperature: ThermodynamicTemperature) -> Step {
    let minutes = |time: Time| time.get::<minute>();
    let maybe = |ask| row.maybe::<Time>(ask).map(minutes);
    let filler = row.sheet(&FILLER);
    let of_filler = |name| filler.as_ref().and_then(|outcome| outcome.number(name));
    // The filler's label may be for another temperature than the labels here.
    let pot_life = of_filler("label_pot_life_min").zip(of_filler("label_temperature_c"));
    let pot_life = pot_life.and_then(|(life, at)| {
        let at = ThermodynamicTemperature::new::<degree_celsius>(at);
        mixing::pot_life(Time::new::<minute>(life), at, label_temperature).ok().map(minutes)
    });
    let batches = row.maybe_count(&BATCHES);
    Step {
        label: row.words(&LABEL),
        work_min: minutes(row.measure(&WORK)),
        batches: batches.or(of_filler("batches.0.count").map(|count| count as u32)).unwrap_or(1),
        workable_min: maybe(&WORKABLE).or(pot_life),
        recoat_least_min: minutes(row.measure(&RECOAT_LEAST)),
        recoat_most_min: maybe(&RECOAT_MOST),
        traffic_min: maybe(&TRAFFIC),
        pace: 1.0,
        starts_min: row.maybe_notation(&STARTS, day_and_time),
    }
}
