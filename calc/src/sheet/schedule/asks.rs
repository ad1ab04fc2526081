//! What the schedule asks, and how it is read.

use std::rc::Rc;

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::clock::time_of_day;
use super::{Inputs, label, rows};
use crate::ask::Ask;
use crate::coating::climate::{BEFORE_DAWN, Climate, Reading, Weather};
use crate::coating::schedule::Hours;
use crate::quantity::TEMPERATURE;
use crate::reader::Reader;
use crate::text::text;

pub static ASKS: &[&Ask] =
    &[&START, &HOURS, &LABEL_TEMPERATURE, &AIR, &READINGS, &label::NIGHT, &label::LIMITS, &STEPS];

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
static AIR: Ask = Ask::group("air", "Air and surface, all day", IN_AIR)
    .optional()
    .help("Expected while you work; a step of its own weather can have its own.");
static AT: Ask =
    Ask::notation("at", "At", "time of day", &["8:00", "13:00", "19:00"]).usual("8:00 am", "8:00");
pub static READINGS: Ask = Ask::rows(
    "readings",
    "Air and surface over the day",
    "reading",
    0,
    &[&AT, &AIR_TEMPERATURE, &HUMIDITY, &SURFACE_TEMPERATURE],
)
.optional()
.help("Instead of one for all day: morning, noon, evening; a straight line between them, every day alike. That line misses how cold it gets before dawn: give the night below.");

pub static LABEL: Ask = Ask::words("label", "Step").usual("first coat", "first coat");
pub static PASSES: Ask = Ask::sheet_of("passes", "All passes of", "gap_fill")
    .optional()
    .help("A gap-filling sheet; batches and times from there.");
pub static COATS: Ask = Ask::sheet_of("coats", "All coats of", "coating")
    .optional()
    .help("A coating sheet; layers and times from there.");
pub static DRY: Ask = Ask::flag("dry", "Dry work: sanding, cleaning", false)
    .help("Temperature and dew point do not matter for it.");
pub static FILLER: Ask = Ask::sheet_of("filler", "Batches and pot life of", "gap_fill")
    .optional()
    .help("This step is one pass of that sheet.");
pub static BATCHES: Ask = Ask::count("batches", "Batches", (1, 10_000)).optional().usual("1", "1");
pub static STARTS: Ask = Ask::notation("starts", "Starts at", "day and time", &["tomorrow 8:00"])
    .optional()
    .help("Where it did start or must start: 14:00, tomorrow 8:00, day 3 9:30. Else it is worked out.");
pub static STEP_AIR: Ask = Ask::group("air", "Its own air and surface", IN_AIR).optional();
pub static STEPS: Ask = Ask::rows(
    "steps",
    "Passes and coats",
    "step",
    1,
    &[
        &LABEL,
        &PASSES,
        &COATS,
        &label::WORK,
        &DRY,
        &FILLER,
        &BATCHES,
        &label::WORKABLE,
        &label::RECOAT_LEAST,
        &label::RECOAT_MOST,
        &label::SAND,
        &label::CURE,
        &label::TRAFFIC,
        &STARTS,
        &STEP_AIR,
    ],
)
.help("In the order they are done; sanding is a step, too. What a sheet says of its passes and coats need not be said again here.");

pub fn read(reader: &Reader<'_>) -> Inputs {
    let night = label::night(reader);
    let climate = match (reader.maybe_group(&AIR, weather), night) {
        (Some(weather), None) => Some(Climate::even(weather)),
        (Some(weather), Some(night)) => Some(Climate::with_night(weather, night)),
        (None, night) => {
            let mut readings = readings(reader);
            // A night alone is no day.
            let night = night.filter(|_| !readings.is_empty());
            readings.extend(night.map(|weather| Reading { at_min: BEFORE_DAWN, weather }));
            Climate::new(readings)
        }
    };
    if reader.given(&AIR) && reader.given(&READINGS) {
        reader.fault_at(&READINGS, "give one reading for all day or several, not both");
    }
    let climate = climate.map(Rc::new);
    let label_temperature = reader.measure(&LABEL_TEMPERATURE);
    let limits = label::limits(reader);
    let of_all = rows::OfAll { label_temperature, limits, climate: climate.as_ref(), night };
    let rows = reader.rows(&STEPS, |row| rows::read(row, &of_all));
    let mut steps = Vec::new();
    for (row, of_row) in rows.into_iter().enumerate() {
        for mut planned in of_row {
            planned.row = row;
            if planned.step.label.is_empty() {
                planned.step.label = text!("step {}", row + 1);
            }
            steps.push(planned);
        }
    }
    for at in 1..steps.len() {
        // What is sanded next may wait as long as it will.
        if let [before, next] = &mut steps[at - 1..=at]
            && before.of_sheet
            && next.dry
        {
            before.step.recoat_most_min = None;
            // And where one stands on it, it must bear that.
            if !before.cured {
                let traffic = before.step.traffic_min.unwrap_or(0.0);
                before.step.recoat_least_min = before.step.recoat_least_min.max(traffic);
            }
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
        steps,
    }
}

fn readings(reader: &Reader<'_>) -> Vec<Reading> {
    let mut known: Vec<f64> = Vec::new();
    let readings = reader.rows(&READINGS, |row| {
        let at_min = row.notation(&AT, 0.0, time_of_day);
        (row.given(&AT).then_some(at_min), Reading { at_min, weather: weather(row) })
    });
    for (index, (at_min, _)) in readings.iter().enumerate() {
        let Some(at_min) = at_min else { continue };
        if known.contains(at_min) {
            let path = text!("{}.{}.{}", READINGS.key, &index, AT.key);
            reader.note(&path, "there is a reading at this time already; give each its own");
        }
        known.push(*at_min);
    }
    readings.into_iter().map(|(_, reading)| reading).collect()
}

pub fn weather(group: &Reader<'_>) -> Weather {
    Weather {
        temperature: group.measure(&AIR_TEMPERATURE),
        humidity: Ratio::new::<percent>(group.number(&HUMIDITY)),
        surface: group.measure(&SURFACE_TEMPERATURE),
    }
}
