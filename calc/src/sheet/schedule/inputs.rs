//! What is asked of a schedule, and how its steps come about.

use std::rc::Rc;

use calc_derive::Inputs;
use uom::si::f64::{Ratio, ThermodynamicTemperature};
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::clock::{DayAndTime, TimeOfDay};
use super::label::{self, OnLabel};
use super::rows::{self, With};
use crate::ask::Ask;
use crate::coating::climate::{BEFORE_DAWN, Climate, Reading as AtTime, Weather};
use crate::coating::schedule::{Hours, Step};
use crate::coating::verdict::Limits;
use crate::reader::Reader;
use crate::sheet::handoffs::{Coated, Filling};
use crate::text::text;
use crate::words::{Arg, Msg, Phrase, schedule as words};

/// What was typed, but for the night, the limits and the steps.
#[derive(Inputs)]
#[words(schedule)]
pub(super) struct Inputs {
    #[ask(notation("8:00", "9:00"), usual("8:00 am", "8:00"))]
    start: TimeOfDay,
    #[ask(group)]
    hours: Option<Working>,
    #[ask(units("F", "C"), range(258.15, 323.15), default("25 C"))]
    label_temperature: ThermodynamicTemperature,
    /// All day the same.
    #[ask(group)]
    air: Option<Air>,
    #[ask(rows(0), optional())]
    readings: Vec<Reading>,
}

/// The working day.
#[derive(Inputs)]
#[words(schedule)]
struct Working {
    #[ask(notation("7:00", "8:00"), usual("8:00 am", "8:00"), no_help)]
    from: TimeOfDay,
    #[ask(notation("18:00", "20:00"), usual("7:00 pm", "19:00"), no_help)]
    to: TimeOfDay,
}

/// Air and surface.
#[derive(Inputs)]
#[words(schedule)]
struct Air {
    #[ask(units("F", "C"), range(258.15, 323.15), usual("68 F", "20 C"), no_help)]
    temperature: ThermodynamicTemperature,
    #[ask(percent, range(1.0, 100.0), usual("50", "50"), no_help)]
    humidity_percent: f64,
    #[ask(units("F", "C"), range(258.15, 353.15), usual("64 F", "18 C"))]
    surface_temperature: ThermodynamicTemperature,
}

impl Air {
    fn weather(&self) -> Weather {
        Weather {
            temperature: self.temperature,
            humidity: Ratio::new::<percent>(self.humidity_percent),
            surface: self.surface_temperature,
        }
    }
}

/// Air and surface at a time of day.
#[derive(Inputs)]
#[words(schedule)]
struct Reading {
    #[ask(notation("8:00", "13:00", "19:00"), usual("8:00 am", "8:00"), no_help)]
    at: TimeOfDay,
    #[ask(units("F", "C"), range(258.15, 323.15), usual("68 F", "20 C"), no_help)]
    temperature: ThermodynamicTemperature,
    #[ask(percent, range(1.0, 100.0), usual("50", "50"), no_help)]
    humidity_percent: f64,
    #[ask(units("F", "C"), range(258.15, 353.15), usual("64 F", "18 C"))]
    surface_temperature: ThermodynamicTemperature,
}

/// A row of the schedule, but for the times on a label.
#[derive(Inputs)]
#[words(schedule)]
pub(super) struct Row {
    pub(super) label: String,
    #[ask(sheet_of("gap_fill"))]
    pub(super) passes: Option<Filling>,
    #[ask(sheet_of("coating"))]
    pub(super) coats: Option<Coated>,
    #[ask(usually(false))]
    pub(super) dry: bool,
    #[ask(sheet_of("gap_fill"))]
    pub(super) filler: Option<Filling>,
    #[ask(range(1, 10_000), usual("1", "1"), no_help)]
    pub(super) batches: Option<u32>,
    #[ask(notation("tomorrow 8:00"))]
    starts: Option<DayAndTime>,
    #[ask(group, word(own_air), no_help)]
    air: Option<Air>,
}

impl Row {
    /// When it starts, where that was typed. [min]
    pub(super) fn starts_min(&self) -> Option<f64> {
        self.starts.map(|starts| starts.0)
    }

    /// Its own air, where it has one.
    pub(super) fn own_air(&self) -> Option<Weather> {
        self.air.as_ref().map(Air::weather)
    }
}

/// Passes and coats.
pub(super) static STEPS: Ask = Ask::rows(
    "steps",
    "",
    "",
    1,
    &[
        Row::LABEL,
        Row::PASSES,
        Row::COATS,
        OnLabel::WORK,
        Row::DRY,
        Row::FILLER,
        Row::BATCHES,
        OnLabel::WORKABLE,
        OnLabel::RECOAT_LEAST,
        OnLabel::RECOAT_MOST,
        OnLabel::SAND,
        OnLabel::CURE,
        OnLabel::TRAFFIC,
        Row::STARTS,
        Row::AIR,
    ],
)
.row(Phrase::Id(words::STEPS_ROW))
.named(Phrase::Id(words::STEPS))
.told(Phrase::Id(words::STEPS_HELP));

/// All that is asked, in the order of the page.
pub(super) static ASKS: &[&Ask] = &[
    Inputs::START,
    Inputs::HOURS,
    Inputs::LABEL_TEMPERATURE,
    Inputs::AIR,
    Inputs::READINGS,
    &label::NIGHT,
    &label::LIMITS,
    &STEPS,
];

/// What is to be done.
pub(super) struct Job {
    pub(super) start_min: f64,
    pub(super) hours: Option<Hours>,
    pub(super) steps: Vec<Planned>,
    /// Times of day that were typed, but for those of the steps.
    pub(super) typed_min: Vec<f64>,
}

/// A step as typed, or as another sheet has it.
pub(super) struct Planned {
    /// The row that it comes from, counted from 0.
    pub(super) row: usize,
    /// What it is called; in the step itself as it is called in outcomes.
    pub(super) name: Arg,
    pub(super) step: Step,
    /// The temperature that its label's times are for.
    pub(super) label_at: ThermodynamicTemperature,
    /// The air that is expected for it; none for dry work.
    pub(super) air: Option<Rc<Climate>>,
    /// Whether it is mixed in the fewest batches that stay workable.
    pub(super) fewest_batches: bool,
    /// Whether it is a pass or a coat of another sheet.
    pub(super) of_sheet: bool,
    /// Whether the wait behind it was given as that after the last one.
    pub(super) cured: bool,
    pub(super) dry: bool,
    /// What its label allows.
    pub(super) limits: Limits,
    /// What is done with it besides.
    pub(super) with: With,
    /// Whether it is the first pass or coat of its product.
    pub(super) first: bool,
}

impl Planned {
    pub(super) fn of(name: impl Into<Arg>, step: Step) -> Self {
        Self {
            row: 0,
            name: name.into(),
            step,
            label_at: ThermodynamicTemperature::new::<degree_celsius>(25.0),
            air: None,
            fewest_batches: false,
            of_sheet: false,
            cured: false,
            dry: false,
            limits: Limits::default(),
            with: With::Nothing,
            first: false,
        }
    }
}

impl Job {
    pub(super) fn read(reader: &Reader<'_>) -> Self {
        let inputs = Inputs::read(reader);
        let night = label::night(reader);
        let climate = inputs.climate(reader, night).map(Rc::new);
        if let Some(Working { from, to }) = &inputs.hours
            && to.0 <= from.0
        {
            let path = text!("{}.{}", Inputs::HOURS.key, Working::TO.key);
            reader.tell_at(&path, words::ENDS_TOO_SOON);
        }
        let of_all = rows::OfAll {
            label_temperature: inputs.label_temperature,
            limits: label::Limits::of(reader).unwrap_or_default().into(),
            climate: climate.as_ref(),
            night,
        };
        let rows = reader.rows(&STEPS, |row| rows::read(row, &of_all));
        let hours = inputs.hours.iter().flat_map(|Working { from, to }| [from.0, to.0]);
        let readings = inputs.readings.iter().map(|reading| reading.at.0);
        let typed = hours.chain(readings).chain([inputs.start.0]).collect();
        Self {
            start_min: inputs.start.0,
            hours: inputs
                .hours
                .map(|Working { from, to }| Hours { from_min: from.0, to_min: to.0 }),
            steps: in_order(rows, reader),
            typed_min: typed,
        }
    }
}

/// The steps of all rows, one behind the other.
fn in_order(rows: Vec<Vec<Planned>>, reader: &Reader<'_>) -> Vec<Planned> {
    let english = reader.style().english();
    let mut steps: Vec<Planned> = Vec::new();
    for (row, of_row) in rows.into_iter().enumerate() {
        for planned in of_row {
            let name = match english.write(&planned.name).is_empty() {
                true => Msg::from(words::Unnamed { number: row + 1 }).into(),
                false => planned.name,
            };
            let step = Step { label: english.write(&name), ..planned.step };
            steps.push(Planned { row, name, step, ..planned });
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
    steps
}

impl Inputs {
    /// The air of all steps that have none of their own.
    fn climate(&self, reader: &Reader<'_>, night: Option<Weather>) -> Option<Climate> {
        if self.air.is_some() && reader.given(Self::READINGS) {
            reader.tell(Self::READINGS, words::ONE_OR_SEVERAL);
        }
        let mut known: Vec<f64> = Vec::new();
        for (index, reading) in self.readings.iter().enumerate() {
            let path = text!("{}.{}.{}", Self::READINGS.key, &index, Reading::AT.key);
            if known.contains(&reading.at.0) {
                reader.tell_at(&path, words::SAME_TIME);
            }
            known.push(reading.at.0);
        }
        match (&self.air, night) {
            (Some(air), None) => Some(Climate::even(air.weather())),
            (Some(air), Some(night)) => Some(Climate::with_night(air.weather(), night)),
            (None, night) => {
                let readings = self.readings.iter().map(|reading| AtTime {
                    at_min: reading.at.0,
                    weather: Weather {
                        temperature: reading.temperature,
                        humidity: Ratio::new::<percent>(reading.humidity_percent),
                        surface: reading.surface_temperature,
                    },
                });
                let mut readings: Vec<AtTime> = readings.collect();
                // A night alone is no day.
                let night = night.filter(|_| !readings.is_empty());
                readings.extend(night.map(|weather| AtTime { at_min: BEFORE_DAWN, weather }));
                Climate::new(readings)
            }
        }
    }
}
