//! One run to one load: drop, loss, longest run, fuse, and every conductor beside the others.

mod drawing;
mod shown;

use calc_derive::{Either, Inputs, Outcome};
use uom::si::f64::{ElectricCurrent, Length, Power};
use uom::si::power::watt;

use super::wiring::{
    self, LaidInputs, Supply, SupplyInputs, amperes, read_conditions, read_supply, volts,
};
use super::{Sheet, tried};
use crate::ask::Figure;
use crate::electrical::charging::fuse_voltage;
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::{DropError, Load, Run, Wired};
use crate::electrical::sources;
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::handoff::Handed;
use crate::reader::Reader;
use crate::sheet::handoffs::{self, Drawn};
use crate::words::{Arg, Msg, Phrase, common, voltage_drop as words};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "voltage_drop",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WIRING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: &[
        SupplyInputs::SOURCE_VOLTAGE,
        Inputs::DRAWS,
        Inputs::LENGTH,
        Inputs::CONDUCTOR,
        Inputs::DROP_LIMIT_PERCENT,
        LaidInputs::INSULATION,
        Inputs::CONTINUOUS,
        SupplyInputs::LOW_VOLTAGE,
        SupplyInputs::CHARGING_VOLTAGE,
        Inputs::FAR_SOURCE,
        LaidInputs::BUNDLED,
        LaidInputs::IN_JACKET,
        LaidInputs::IN_INSULATION,
        LaidInputs::CONDUCTOR_TEMPERATURE,
        LaidInputs::AIR_TEMPERATURE,
    ],
    sources: &[
        &sources::NEC_TABLE_8,
        &sources::IEC_60228_CLASS_5,
        &sources::CONSTANT_POWER,
        &sources::CFR_TABLE_5,
        &sources::ABYC_BUNDLING,
        &sources::NEC_CONTINUOUS,
        &sources::FUSE_PROTECTS_CONDUCTOR,
        &sources::NEC_552_FUSE,
        &sources::ABYC_DROP_LIMITS,
    ],
    example: r#"{ "source_voltage": "12.8 V", "power": "36 W", "length": "18 ft",
        "conductor": "auto", "drop_limit_percent": 3, "insulation": "105 C" }"#,
    ahead: None,
    solve: |reader| tried(reader, Job::read, solve, shown::show),
};

/// What is asked besides what all wiring sheets ask.
#[derive(Inputs)]
#[words(voltage_drop)]
struct Inputs {
    #[ask(either)]
    draws: Draws,
    #[ask(
        units("ft", "m"),
        range(0.01, 10_000.0),
        usual("18 ft", "5.5 m"),
        figure(Figure::OneWay)
    )]
    length: Length,
    #[ask(read_by(&SUGGESTIONS, wiring::wanted), usual("auto", "auto mm2"), convention())]
    conductor: Wanted,
    #[ask(
        percent,
        range(0.01, 99.0),
        usual("3", "3"),
        convention(),
        word(wiring::drop_limit_percent)
    )]
    drop_limit_percent: f64,
    #[ask(usually(true), word(wiring::continuous))]
    continuous: bool,
    #[ask(usually(false), word(wiring::far_source))]
    far_source: bool,
}

/// What the load draws.
#[derive(Either)]
#[words(voltage_drop)]
enum Draws {
    #[ask(units("W", "W"), range(0.001, 1e6), usual("36 W", "36 W"))]
    Power(Power),
    #[ask(units("A", "A"), range(0.001, 10_000.0), usual("2.8 A", "2.8 A"))]
    Current(ElectricCurrent),
}

impl From<&Draws> for Load {
    fn from(draws: &Draws) -> Self {
        match draws {
            Draws::Power(power) => Self::Power(power.value),
            Draws::Current(current) => Self::Current(current.value),
        }
    }
}

/// What was typed, read.
struct Job {
    run: Run,
    wanted: Wanted,
    supply: Supply,
    /// Whether there is a source at the far end too.
    far_source: bool,
}

impl Job {
    fn read(reader: &Reader<'_>) -> Self {
        let supply = read_supply(reader);
        let inputs = Inputs::read(reader);
        let (conditions, temperature_c) = read_conditions(reader);
        Self {
            run: Run {
                source_v: supply.source_v,
                low_v: supply.low_v,
                load: Load::from(&inputs.draws),
                length_m: inputs.length.value,
                temperature_c,
                drop_limit_percent: inputs.drop_limit_percent,
                continuous: inputs.continuous,
                conditions,
            },
            wanted: inputs.conductor,
            supply,
            far_source: inputs.far_source,
        }
    }

    /// Whether the conductor is chosen here.
    fn is_open(&self) -> bool {
        matches!(self.wanted, Wanted::Least(_))
    }
}

/// All that is worked out of a run.
#[derive(Outcome)]
struct Found {
    conductor: String,
    resistance_ohm: f64,
    current_a: f64,
    drop_v: f64,
    drop_percent: f64,
    load_voltage_v: f64,
    loss_w: f64,
    within_limit: bool,
    longest_run_m: Option<f64>,
    ampacity_a: Option<f64>,
    highest_current_a: f64,
    insulation_c: f64,
    /// Where wire and fuse are safe; nothing is listed or drawn without it.
    fuse_a: Option<f64>,
    fuse_volts_least: Option<f64>,
    least_awg: Option<String>,
    least_mm2: Option<String>,
    /// Every size, AWG first, each from the thinnest.
    choices: Vec<Choice>,
    /// The run with the conductor that was named or chosen.
    #[outcome(skip)]
    wired: Wired,
    /// The least AWG size that is enough, and the least metric one.
    #[outcome(skip)]
    least: [Option<Conductor>; 2],
}

impl Found {
    fn gives(&self) -> Handed {
        let power = Power::new::<watt>(self.current_a * self.load_voltage_v);
        Handed::of(Drawn(Ok(handoffs::Load::of(power))))
    }
}

/// A conductor beside the others. One with which no steady voltage exists has no drop.
#[derive(Outcome)]
struct Choice {
    conductor: String,
    drop_percent: Option<f64>,
    within_limit: bool,
    ampacity_a: Option<f64>,
    enough: bool,
    #[outcome(skip)]
    of: Conductor,
    #[outcome(skip)]
    wired: Option<Wired>,
}

impl From<(Conductor, Result<Wired, DropError>)> for Choice {
    fn from((of, wired): (Conductor, Result<Wired, DropError>)) -> Self {
        let wired = wired.ok();
        let is = |what: fn(&Wired) -> bool| wired.as_ref().is_some_and(what);
        Self {
            conductor: of.to_string(),
            drop_percent: wired.as_ref().map(|wired| wired.drop_percent),
            within_limit: is(|wired| wired.within_limit),
            ampacity_a: wired.as_ref().and_then(|wired| wired.ampacity_a),
            // Drop within the limit, current within the ampacity, and a fuse that fits.
            enough: is(|wired| wired.within_limit && wired.is_protected()),
            of,
            wired,
        }
    }
}

fn solve(job: &Job) -> Result<Found, (String, Msg)> {
    let run = &job.run;
    let at = |message: Msg| (Inputs::CONDUCTOR.key.to_owned(), message);
    let least = [Series::Awg, Series::SquareMillimetre].map(|s| run.least(s.conductors()));
    let sizes = least.each_ref().map(|wired| wired.as_ref().ok().map(|wired| wired.conductor));
    let wired = match job.wanted {
        Wanted::This(conductor) => run.wired(conductor).map_err(|error| {
            at(no_steady_voltage(conductor, &error, of_series(conductor, &sizes)))
        })?,
        Wanted::Least(series) => {
            let [awg, metric] = &least;
            let least = if series == Some(Series::SquareMillimetre) { metric } else { awg };
            least.clone().map_err(|error| at(Msg::from(&error)))?
        }
    };
    if let Err(unrated) = wired.rated {
        return Err(at(unrated.into()));
    }
    if !wired.carries() && !matches!(wired.conductor, Conductor::PerLength { .. }) {
        return Err(at(overheats(&wired, run, of_series(wired.conductor, &sizes))));
    }
    let choices = run.choices(Conductor::awg().chain(Conductor::metric()));
    let fuse_a = wired.fuse.as_ref().ok().filter(|_| wired.is_protected()).map(|f| f.rating_a);
    Ok(Found {
        conductor: wired.conductor.to_string(),
        resistance_ohm: wired.resistance_ohm,
        current_a: wired.current_a,
        drop_v: wired.drop_v,
        drop_percent: wired.drop_percent,
        load_voltage_v: wired.load_v,
        loss_w: wired.loss_w,
        within_limit: wired.within_limit,
        longest_run_m: wired.longest_run_m,
        ampacity_a: wired.ampacity_a,
        highest_current_a: wired.highest_a,
        insulation_c: run.conditions.insulation.rating_c(),
        fuse_a,
        fuse_volts_least: fuse_a.map(|a| fuse_voltage(job.supply.highest_v, a).0),
        least_awg: sizes[0].map(|size| size.to_string()),
        least_mm2: sizes[1].map(|size| size.to_string()),
        choices: choices.into_iter().map(Choice::from).collect(),
        wired,
        least: sizes,
    })
}

impl Found {
    /// The least size that would do, of the series of the one that was named.
    fn would_do(&self) -> Option<Conductor> {
        of_series(self.wired.conductor, &self.least)
    }

    /// Why wire and fuse are not shown; the voltages are true nevertheless.
    fn not_safe(&self, run: &Run) -> Option<Msg> {
        let wired = &self.wired;
        match &wired.fuse {
            _ if !wired.carries() => Some(overheats(wired, run, self.would_do())),
            Err(error) => Some(words::NoFuse { problem: Msg::from(error) }.into()),
            Ok(_) => None,
        }
    }
}

/// What would do of the series of the conductor that was named, else of the other; `least` has AWG first.
fn of_series(conductor: Conductor, least: &[Option<Conductor>; 2]) -> Option<Conductor> {
    let [awg, metric] = *least;
    match conductor {
        Conductor::SquareMillimetre(_) => metric.or(awg),
        _ => awg.or(metric),
    }
}

/// A conductor that cannot feed the load at all.
fn no_steady_voltage(conductor: Conductor, error: &DropError, would_do: Option<Conductor>) -> Msg {
    let (conductor, problem) = (conductor.to_string(), Msg::from(error));
    match would_do {
        Some(size) if !matches!(error, DropError::Range(_)) => {
            words::NoSteadyWouldDo { conductor, problem, size: size.to_string() }.into()
        }
        _ => words::NoSteady { conductor, problem }.into(),
    }
}

/// A conductor that may not carry what flows.
fn overheats(wired: &Wired, run: &Run, would_do: Option<Conductor>) -> Msg {
    let conductor = wired.conductor.to_string();
    let ampacity = amperes(wired.ampacity_a.unwrap_or(0.0));
    let highest = amperes(wired.highest_a);
    let current = match run.low_v {
        Some(low_v) if wired.highest_a > wired.current_a * (1.0 + 1e-9) => {
            Arg::Message(words::DrawsAt { current: highest, volts: volts(low_v) }.into())
        }
        _ => highest.into(),
    };
    match would_do {
        Some(size) => {
            let size = size.to_string();
            words::OverheatsWouldDo { conductor, ampacity, current, size }.into()
        }
        None => words::Overheats { conductor, ampacity, current }.into(),
    }
}
