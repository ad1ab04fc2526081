//! Times and limits on a label, as the filling and the coating sheet ask them and as the schedule takes
//! them; and the coming night, which they are held against.

use uom::si::f64::{Ratio, ThermodynamicTemperature, Time};
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use crate::ask::Ask;
use crate::coating::climate::Weather;
use crate::coating::verdict::Limits;
use crate::outcome::Record;
use crate::quantity::{TEMPERATURE, TIME};
use crate::reader::Reader;

/// Waits of more than 29 days are left to the label. [s]
const LONGEST: f64 = 29.0 * 86_400.0;

const fn wait(key: &'static str, label: &'static str) -> Ask {
    Ask::measure(key, label, &TIME, ["h", "h"], (0.0, LONGEST)).optional()
}

pub static WORK: Ask =
    Ask::measure("work", "One takes", &TIME, ["min", "min"], (0.0, 13.0 * 86_400.0))
        .optional()
        .usual("60 min", "60 min")
        .help("For one pass or coat.");
pub static WORKABLE: Ask =
    Ask::measure("workable", "A batch stays workable", &TIME, ["min", "min"], (1.0, LONGEST))
        .optional()
        .usual("25 min", "25 min")
        .help("On the label of what is mixed from two parts.");
pub static RECOAT_LEAST: Ask = wait("recoat_least", "Least wait before the next")
    .usual("3 h", "3 h")
    .help("On the label: recoat after.");
pub static RECOAT_MOST: Ask = wait("recoat_most", "Longest wait before the next")
    .usual("24 h", "24 h")
    .help("On the label: recoat within; later, abrade first.");
pub static CURE: Ask = wait("cure", "Wait after the last one")
    .usual("8 h", "8 h")
    .help("Before sanding it, or another product. Left out: as between them, or walking on it.");
pub static TRAFFIC: Ask = wait("traffic", "Wait before walking on it").usual("24 h", "24 h");
pub static SAND: Ask =
    Ask::measure("sand", "Sanding before the next takes", &TIME, ["min", "min"], (0.0, 86_400.0))
        .optional()
        .usual("30 min", "30 min")
        .help("Where coats are abraded; no longest wait then.");
static PREPARE: Ask = Ask::measure(
    "prepare",
    "Closing below and masking takes",
    &TIME,
    ["min", "min"],
    (0.0, 86_400.0),
)
.optional()
.usual("45 min", "45 min")
.help("Before the first pass: tape or plugs below, masked edges, the wood checked for moisture.");
static WASH: Ask =
    Ask::measure("wash", "Washing it off and drying takes", &TIME, ["min", "min"], (0.0, 86_400.0))
        .optional()
        .usual("60 min", "60 min")
        .help("After the last pass has cured: amine blush off with water, before it is sanded.");
static AT: Ask = Ask::measure("at", "At", &TEMPERATURE, ["F", "C"], (258.15, 323.15))
    .optional()
    .usual("77 F", "25 C")
    .help("The temperature that the label gives these times for.");

/// For a filler, whose pot life is asked apart.
pub static OF_FILLER: Ask = Ask::group(
    "times",
    "Times on the label",
    &[&PREPARE, &WORK, &RECOAT_LEAST, &RECOAT_MOST, &CURE, &WASH, &TRAFFIC, &AT],
)
.optional()
.help("For a schedule that takes its passes from this sheet.");

/// For a coat.
pub static OF_COAT: Ask = Ask::group(
    "times",
    "Times on the label",
    &[&WORK, &WORKABLE, &RECOAT_LEAST, &RECOAT_MOST, &SAND, &CURE, &TRAFFIC, &AT],
)
.optional()
.help("For a schedule that takes its coats from this sheet.");

static TEMPERATURE_LEAST: Ask = Ask::measure(
    "temperature_least",
    "Least temperature",
    &TEMPERATURE,
    ["F", "C"],
    (233.15, 323.15),
)
.optional()
.usual("50 F", "10 C")
.help("Of the air and of the surface.");
static TEMPERATURE_MOST: Ask = Ask::measure(
    "temperature_most",
    "Greatest temperature",
    &TEMPERATURE,
    ["F", "C"],
    (258.15, 363.15),
)
.optional()
.usual("90 F", "32 C");
static HUMIDITY_MOST: Ask =
    Ask::percent("humidity_most_percent", "Greatest humidity", (1.0, 100.0))
        .optional()
        .usual("80", "80")
        .help("Relative humidity of the air.");
static MOISTURE_MOST: Ask = Ask::percent("moisture_most_percent", "Wettest wood", (1.0, 60.0))
    .optional()
    .usual("12", "12")
    .help("By a moisture meter; many labels give it, some do not.");

/// What a label allows.
pub static LIMITS: Ask = Ask::group(
    "limits",
    "Limits on the label",
    &[&TEMPERATURE_LEAST, &TEMPERATURE_MOST, &HUMIDITY_MOST, &MOISTURE_MOST],
)
.optional()
.help("On the label or the data sheet. Without them nobody can say that it may go on.");

static NIGHT_TEMPERATURE: Ask =
    Ask::measure("temperature", "Air temperature", &TEMPERATURE, ["F", "C"], (258.15, 323.15))
        .usual("55 F", "13 C");
static NIGHT_HUMIDITY: Ask =
    Ask::percent("humidity_percent", "Relative humidity", (1.0, 100.0)).usual("70", "70");
static NIGHT_SURFACE: Ask = Ask::measure(
    "surface_temperature",
    "Surface temperature",
    &TEMPERATURE,
    ["F", "C"],
    (258.15, 353.15),
)
.usual("52 F", "11 C")
.help("Of steel without a heater: as cold as the air outside, under a clear sky colder.");

/// The coming night.
pub static NIGHT: Ask = Ask::group(
    "night",
    "The coming night, before dawn",
    &[&NIGHT_TEMPERATURE, &NIGHT_HUMIDITY, &NIGHT_SURFACE],
)
.optional()
.help("Inside, at its coldest: read last night, or from the forecast and your heater. A steel body is coldest before dawn.");

/// What the label allows; nothing known where the group is left out.
pub fn limits(reader: &Reader<'_>) -> Limits {
    let share = |share: f64| Ratio::new::<percent>(share);
    let read = reader.maybe_group(&LIMITS, |group| {
        let limits = Limits {
            least: group.maybe(&TEMPERATURE_LEAST),
            most: group.maybe(&TEMPERATURE_MOST),
            humidity_most: group.maybe_number(&HUMIDITY_MOST).map(share),
            moisture_most: group.maybe_number(&MOISTURE_MOST).map(share),
        };
        if limits.least.zip(limits.most).is_some_and(|(least, most)| least > most) {
            group.fault_at(&TEMPERATURE_MOST, "it must not be below the least temperature");
        }
        limits
    });
    read.unwrap_or_default()
}

/// Puts limits into an outcome, where any is known.
pub fn put_limits(limits: &Limits, record: Record) -> Record {
    if *limits == Limits::default() {
        return record;
    }
    let celsius =
        |limit: Option<ThermodynamicTemperature>| limit.map(|t| t.get::<degree_celsius>());
    let share = |limit: Option<Ratio>| limit.map(|share| share.get::<percent>());
    let limits = Record::new()
        .maybe("temperature_least_c", celsius(limits.least))
        .maybe("temperature_most_c", celsius(limits.most))
        .maybe("humidity_most_percent", share(limits.humidity_most))
        .maybe("moisture_most_percent", share(limits.moisture_most));
    record.with("limits", limits)
}

/// The limits of an outcome.
pub fn limits_of(record: &Record) -> Limits {
    let celsius =
        |name: &str| record.number(name).map(ThermodynamicTemperature::new::<degree_celsius>);
    let share = |name: &str| record.number(name).map(Ratio::new::<percent>);
    Limits {
        least: celsius("limits.temperature_least_c"),
        most: celsius("limits.temperature_most_c"),
        humidity_most: share("limits.humidity_most_percent"),
        moisture_most: share("limits.moisture_most_percent"),
    }
}

/// The coming night, where it is given.
pub fn night(reader: &Reader<'_>) -> Option<Weather> {
    reader.maybe_group(&NIGHT, |group| Weather {
        temperature: group.measure(&NIGHT_TEMPERATURE),
        humidity: Ratio::new::<percent>(group.number(&NIGHT_HUMIDITY)),
        surface: group.measure(&NIGHT_SURFACE),
    })
}

/// Where each of the times stands in [`Times`], and in an outcome.
const NAMES: [(&Ask, &str); 9] = [
    (&WORK, "work_min"),
    (&WORKABLE, "workable_min"),
    (&RECOAT_LEAST, "recoat_least_min"),
    (&RECOAT_MOST, "recoat_most_min"),
    (&SAND, "sand_min"),
    (&CURE, "cure_min"),
    (&TRAFFIC, "traffic_min"),
    (&PREPARE, "prepare_min"),
    (&WASH, "wash_min"),
];

/// Times of one pass or coat, in minutes; none where they are not given.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Times {
    pub work: Option<f64>,
    pub workable: Option<f64>,
    pub recoat_least: Option<f64>,
    pub recoat_most: Option<f64>,
    pub sand: Option<f64>,
    pub cure: Option<f64>,
    pub traffic: Option<f64>,
    pub prepare: Option<f64>,
    pub wash: Option<f64>,
    /// What the label gives them for, in °C.
    pub at_c: Option<f64>,
}

impl Times {
    fn of(times: [Option<f64>; 9], at_c: Option<f64>) -> Self {
        let [work, workable, recoat_least, recoat_most, sand, cure, traffic, prepare, wash] = times;
        Self { work, workable, recoat_least, recoat_most, sand, cure, traffic, prepare, wash, at_c }
    }

    /// Those that stand beside each other at one place of the inputs.
    pub fn read(reader: &Reader<'_>) -> Self {
        Self::of(NAMES.map(|(ask, _)| Some(reader.maybe::<Time>(ask)?.get::<minute>())), None)
    }

    /// Those of a group, with the temperature that they are given for.
    pub fn group(reader: &Reader<'_>, ask: &Ask) -> Option<Self> {
        reader.maybe_group(ask, |group| {
            let at = group.maybe::<ThermodynamicTemperature>(&AT);
            Self { at_c: at.map(|at| at.get::<degree_celsius>()), ..Self::read(group) }
        })
    }

    /// Those of an outcome.
    pub fn of_record(record: &Record) -> Self {
        Self::of(NAMES.map(|(_, name)| record.number(name)), record.number("label_temperature_c"))
    }

    /// Adds them to an outcome.
    pub fn put(&self, mut record: Record) -> Record {
        let all = [
            self.work,
            self.workable,
            self.recoat_least,
            self.recoat_most,
            self.sand,
            self.cure,
            self.traffic,
            self.prepare,
            self.wash,
        ];
        for ((_, name), minutes) in NAMES.into_iter().zip(all) {
            record = record.maybe(name, minutes);
        }
        record.maybe("label_temperature_c", self.at_c)
    }

    /// These, and where they say nothing the others.
    pub fn or(self, other: Self) -> Self {
        Self {
            work: self.work.or(other.work),
            workable: self.workable.or(other.workable),
            recoat_least: self.recoat_least.or(other.recoat_least),
            recoat_most: self.recoat_most.or(other.recoat_most),
            sand: self.sand.or(other.sand),
            cure: self.cure.or(other.cure),
            traffic: self.traffic.or(other.traffic),
            prepare: self.prepare.or(other.prepare),
            wash: self.wash.or(other.wash),
            at_c: self.at_c.or(other.at_c),
        }
    }
}
