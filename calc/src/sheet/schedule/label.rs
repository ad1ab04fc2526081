//! Times and limits on a label, as the filling and the coating sheet ask them and as the schedule takes
//! them; and the coming night, which they are held against.

use calc_derive::{Inputs, Outcome};
use uom::si::f64::{Ratio, ThermodynamicTemperature, Time};
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use crate::ask::Ask;
use crate::coating::climate::Weather;
use crate::coating::verdict;
use crate::reader::Reader;
use crate::words::{Phrase, label as words};

/// Waits of more than 29 days are left to the label. [s]
const LONGEST: f64 = 29.0 * 86_400.0;
/// No pass and no coat takes more than 13 days. [s]
const LONGEST_WORK: f64 = 13.0 * 86_400.0;
/// Nothing beside it takes more than a day. [s]
const DAY: f64 = 86_400.0;

/// What may stand on a label of the times of one pass or coat.
#[derive(Inputs)]
#[words(label)]
pub struct OnLabel {
    #[ask(units("min", "min"), range(0.0, LONGEST_WORK), usual("60 min", "60 min"))]
    work: Option<Time>,
    #[ask(units("min", "min"), range(1.0, LONGEST), usual("25 min", "25 min"))]
    workable: Option<Time>,
    #[ask(units("h", "h"), range(0.0, LONGEST), usual("3 h", "3 h"))]
    recoat_least: Option<Time>,
    #[ask(units("h", "h"), range(0.0, LONGEST), usual("24 h", "24 h"))]
    recoat_most: Option<Time>,
    #[ask(units("min", "min"), range(0.0, DAY), usual("30 min", "30 min"))]
    sand: Option<Time>,
    #[ask(units("h", "h"), range(0.0, LONGEST), usual("8 h", "8 h"))]
    cure: Option<Time>,
    #[ask(units("h", "h"), range(0.0, LONGEST), usual("24 h", "24 h"), no_help)]
    traffic: Option<Time>,
    #[ask(units("min", "min"), range(0.0, DAY), usual("45 min", "45 min"))]
    prepare: Option<Time>,
    #[ask(units("min", "min"), range(0.0, DAY), usual("60 min", "60 min"))]
    wash: Option<Time>,
}

/// What they are given for.
#[derive(Inputs)]
#[words(label)]
struct GivenFor {
    #[ask(units("F", "C"), range(258.15, 323.15), usual("77 F", "25 C"))]
    at: Option<ThermodynamicTemperature>,
}

/// For a filler, whose pot life is asked apart.
pub static OF_FILLER: Ask = times(
    &[
        OnLabel::PREPARE,
        OnLabel::WORK,
        OnLabel::RECOAT_LEAST,
        OnLabel::RECOAT_MOST,
        OnLabel::CURE,
        OnLabel::WASH,
        OnLabel::TRAFFIC,
        GivenFor::AT,
    ],
    Phrase::Id(words::TIMES_FILLER),
    Phrase::Id(words::TIMES_FILLER_HELP),
);

/// For a coat.
pub static OF_COAT: Ask = times(
    &[
        OnLabel::WORK,
        OnLabel::WORKABLE,
        OnLabel::RECOAT_LEAST,
        OnLabel::RECOAT_MOST,
        OnLabel::SAND,
        OnLabel::CURE,
        OnLabel::TRAFFIC,
        GivenFor::AT,
    ],
    Phrase::Id(words::TIMES_COAT),
    Phrase::Id(words::TIMES_COAT_HELP),
);

const fn times(asks: &'static [&'static Ask], label: Phrase, help: Phrase) -> Ask {
    Ask::group("times", "", asks).named(label).told(help).optional()
}

/// What a label allows: each none where it is not known.
#[derive(Clone, Copy, Debug, Default, Inputs, Outcome, PartialEq)]
#[words(label)]
pub struct Limits {
    #[ask(units("F", "C"), range(233.15, 323.15), usual("50 F", "10 C"))]
    temperature_least: Option<ThermodynamicTemperature>,
    #[ask(units("F", "C"), range(258.15, 363.15), usual("90 F", "32 C"), no_help)]
    temperature_most: Option<ThermodynamicTemperature>,
    #[ask(percent, range(1.0, 100.0), usual("80", "80"))]
    humidity_most_percent: Option<f64>,
    #[ask(percent, range(1.0, 60.0), usual("12", "12"))]
    moisture_most_percent: Option<f64>,
}

/// What a label allows.
pub static LIMITS: Ask = Ask::group("limits", "", Limits::ASKS)
    .named(Phrase::Id(words::LIMITS))
    .told(Phrase::Id(words::LIMITS_HELP))
    .optional();

/// Air and surface in the coming night.
#[derive(Inputs)]
#[words(label)]
struct Night {
    #[ask(units("F", "C"), range(258.15, 323.15), usual("55 F", "13 C"), no_help)]
    temperature: ThermodynamicTemperature,
    #[ask(percent, range(1.0, 100.0), usual("70", "70"), no_help)]
    humidity_percent: f64,
    #[ask(units("F", "C"), range(258.15, 353.15), usual("52 F", "11 C"))]
    surface_temperature: ThermodynamicTemperature,
}

/// The coming night.
pub static NIGHT: Ask = Ask::group("night", "", Night::ASKS)
    .named(Phrase::Id(words::NIGHT))
    .told(Phrase::Id(words::NIGHT_HELP))
    .optional();

impl Limits {
    /// What the label allows; none where the group is left out.
    pub fn of(reader: &Reader<'_>) -> Option<Self> {
        let limits = reader.maybe_group(&LIMITS, |group| {
            let limits = Self::read(group);
            let ends = limits.temperature_least.zip(limits.temperature_most);
            if ends.is_some_and(|(least, most)| least > most) {
                group.tell(Self::TEMPERATURE_MOST, words::MOST_BELOW_LEAST);
            }
            limits
        });
        limits.filter(|limits| *limits != Self::default())
    }
}

impl From<Limits> for verdict::Limits {
    fn from(limits: Limits) -> Self {
        let share = |share: Option<f64>| share.map(Ratio::new::<percent>);
        Self {
            least: limits.temperature_least,
            most: limits.temperature_most,
            humidity_most: share(limits.humidity_most_percent),
            moisture_most: share(limits.moisture_most_percent),
        }
    }
}

/// The coming night, where it is given.
pub fn night(reader: &Reader<'_>) -> Option<Weather> {
    let night = reader.maybe_group(&NIGHT, Night::read)?;
    Some(Weather {
        temperature: night.temperature,
        humidity: Ratio::new::<percent>(night.humidity_percent),
        surface: night.surface_temperature,
    })
}

/// Times of one pass or coat, in minutes; none where they are not given.
#[derive(Clone, Copy, Debug, Default, Outcome, PartialEq)]
pub struct Times {
    #[outcome(name = "work_min")]
    pub work: Option<f64>,
    #[outcome(name = "workable_min")]
    pub workable: Option<f64>,
    #[outcome(name = "recoat_least_min")]
    pub recoat_least: Option<f64>,
    #[outcome(name = "recoat_most_min")]
    pub recoat_most: Option<f64>,
    #[outcome(name = "sand_min")]
    pub sand: Option<f64>,
    #[outcome(name = "cure_min")]
    pub cure: Option<f64>,
    #[outcome(name = "traffic_min")]
    pub traffic: Option<f64>,
    #[outcome(name = "prepare_min")]
    pub prepare: Option<f64>,
    #[outcome(name = "wash_min")]
    pub wash: Option<f64>,
    /// What the label gives them for, in °C.
    #[outcome(name = "label_temperature_c")]
    pub at_c: Option<f64>,
}

impl Times {
    /// Those that stand beside each other at one place of the inputs.
    pub fn read(reader: &Reader<'_>) -> Self {
        let OnLabel {
            work,
            workable,
            recoat_least,
            recoat_most,
            sand,
            cure,
            traffic,
            prepare,
            wash,
        } = OnLabel::read(reader);
        let minutes = |time: Option<Time>| Some(time?.get::<minute>());
        Self {
            work: minutes(work),
            workable: minutes(workable),
            recoat_least: minutes(recoat_least),
            recoat_most: minutes(recoat_most),
            sand: minutes(sand),
            cure: minutes(cure),
            traffic: minutes(traffic),
            prepare: minutes(prepare),
            wash: minutes(wash),
            at_c: None,
        }
    }

    /// Those of a group, with the temperature that they are given for.
    pub fn group(reader: &Reader<'_>, ask: &Ask) -> Option<Self> {
        reader.maybe_group(ask, |group| {
            let at = GivenFor::read(group).at;
            Self { at_c: at.map(|at| at.get::<degree_celsius>()), ..Self::read(group) }
        })
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
