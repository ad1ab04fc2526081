//! One run to one load: drop, loss, longest run, fuse, and every conductor beside the others.

mod drawing;
mod figures;

use super::wiring::{
    AIR_TEMPERATURE, BUNDLED, CHARGING_VOLTAGE, CONDUCTOR_TEMPERATURE, CONTINUOUS, DROP_LIMIT,
    FAR_SOURCE, IN_INSULATION, IN_JACKET, INSULATION, LOW_VOLTAGE, SOURCE_VOLTAGE, Supply, amperes,
    drop_volts, fuse_line, general_remarks, limit, percent, read_conditions, read_supply,
    run_at_most, run_length, stand_in, volts, wanted, watts, wire_line,
};
use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::electrical::cautions::WIRING;
use crate::electrical::charging::fuse_voltage;
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::{DropError, Load, NoConductor, Run, Wired};
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::electrical::{fuse, sources};
use crate::fault::Fault;
use crate::lists::BuyLine;
use crate::outcome::Record;
use crate::quantity::{CURRENT, LENGTH, POWER, Style, plain};
use crate::reader::Reader;
use crate::report::{Answer, Remark, Report};
use crate::text::text;
use crate::words::Phrase;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "voltage_drop",
    title: Phrase::Written("Voltage drop"),
    trade: Phrase::Written("Wiring"),
    purpose: Phrase::Written("Choose the wire and the fuse for one run to one load."),
    asks: &[
        &SOURCE_VOLTAGE,
        &DRAWS,
        &LENGTH_ONE_WAY,
        &CONDUCTOR,
        &DROP_LIMIT,
        &INSULATION,
        &CONTINUOUS,
        &LOW_VOLTAGE,
        &CHARGING_VOLTAGE,
        &FAR_SOURCE,
        &BUNDLED,
        &IN_JACKET,
        &IN_INSULATION,
        &CONDUCTOR_TEMPERATURE,
        &AIR_TEMPERATURE,
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
    solve: |reader| solve(reader, read, report),
};

static CURRENT_DRAWN: Ask =
    Ask::measure("current", "Current of the load", &CURRENT, ["A", "A"], (0.001, 10_000.0))
        .usual("2.8 A", "2.8 A")
        .help("On its label, or measured; taken as the same at any voltage.");
static POWER_DRAWN: Ask =
    Ask::measure("power", "Power of the load", &POWER, ["W", "W"], (0.001, 1e6))
        .usual("36 W", "36 W")
        .help("On its label; taken as constant, so it draws more current as the voltage falls.");
static DRAWS: Ask = Ask::either("The load draws", &[&POWER_DRAWN, &CURRENT_DRAWN]);
static LENGTH_ONE_WAY: Ask =
    Ask::measure("length", "Length of the run, one way", &LENGTH, ["ft", "m"], (0.01, 10_000.0))
        .usual("18 ft", "5.5 m")
        .help("Along the way the wire will lie, up and over, with a hand to spare at both ends; the way back is added here.")
    .figure(Figure::OneWay);
static CONDUCTOR: Ask = Ask::notation("conductor", "Conductor", "conductor", &SUGGESTIONS)
    .usual("auto", "auto mm2")
    .help("Printed on the jacket: 16 AWG, 1.5 mm2; or ohm/m of one conductor; auto takes the least AWG size that is enough, auto mm2 the least metric one.");

/// What was typed, read.
struct Inputs {
    run: Run,
    wanted: Wanted,
    supply: Supply,
    /// Whether there is a source at the far end too.
    far_source: bool,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let supply = read_supply(reader);
    let load = match reader.which(&DRAWS) {
        Some(0) => Load::Power(reader.si(&POWER_DRAWN)),
        Some(_) => Load::Current(reader.si(&CURRENT_DRAWN)),
        None => Load::Current(1.0),
    };
    let length_m = reader.si(&LENGTH_ONE_WAY);
    let wanted = reader.notation(&CONDUCTOR, stand_in(), wanted);
    let drop_limit_percent = reader.number(&DROP_LIMIT);
    let continuous = reader.flag(&CONTINUOUS);
    let (conditions, temperature_c) = read_conditions(reader);
    Inputs {
        run: Run {
            source_v: supply.source_v,
            low_v: supply.low_v,
            load,
            length_m,
            temperature_c,
            drop_limit_percent,
            continuous,
            conditions,
        },
        wanted,
        supply,
        far_source: reader.flag(&FAR_SOURCE),
    }
}

/// All that is said of a run.
struct Findings<'a> {
    inputs: &'a Inputs,
    run: &'a Run,
    /// The run with the conductor that was named or chosen.
    wired: Wired,
    /// Whether the conductor was chosen here.
    chosen_here: bool,
    /// The run with the least AWG size that is enough, and with the least metric one.
    least: [Option<Conductor>; 2],
    /// Every size, AWG first, each from the thinnest.
    choices: Vec<(Conductor, Result<Wired, DropError>)>,
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let run = &inputs.run;
    let at = |message: String| vec![Fault::new(CONDUCTOR.key, message)];
    let least = [Series::Awg, Series::SquareMillimetre].map(|s| run.least(s.conductors()));
    let wired = match inputs.wanted {
        Wanted::This(conductor) => run.wired(conductor).map_err(|error| {
            let would_do = in_series_of(conductor, &least).map(|wired| wired.conductor);
            at(no_steady_voltage(conductor, &error, would_do))
        })?,
        Wanted::Least(series) => {
            let [awg, metric] = &least;
            let least = if series == Some(Series::SquareMillimetre) { metric } else { awg };
            least.clone().map_err(|error| at(none_will_do(&error, style)))?
        }
    };
    let would_do = in_series_of(wired.conductor, &least).map(|wired| wired.conductor);
    if let Err(unrated) = wired.rated {
        return Err(at(unrated.to_string()));
    }
    if !wired.carries() && !matches!(wired.conductor, Conductor::PerLength { .. }) {
        return Err(at(overheats(&wired, run, would_do)));
    }
    let findings = Findings {
        inputs,
        run,
        wired,
        chosen_here: matches!(inputs.wanted, Wanted::Least(_)),
        least: least.map(|wired| wired.ok().map(|wired| wired.conductor)),
        choices: run.choices(Conductor::awg().chain(Conductor::metric())),
    };
    Ok(findings.report(style))
}

/// What would do of the series of the conductor that was named, else of the other; `least` has AWG first.
fn in_series_of<T, E>(conductor: Conductor, least: &[Result<T, E>; 2]) -> Option<&T> {
    let [awg, metric] = least.each_ref().map(|one| one.as_ref().ok());
    match conductor {
        Conductor::SquareMillimetre(_) => metric.or(awg),
        _ => awg.or(metric),
    }
}

/// A conductor that cannot feed the load at all.
fn no_steady_voltage(
    conductor: Conductor,
    error: &DropError,
    would_do: Option<Conductor>,
) -> String {
    match would_do {
        Some(size) if !matches!(error, DropError::Range(_)) => {
            text!("{} cannot feed this load: {}; {} would do", &conductor, &error, &size)
        }
        _ => text!("{}: {}", &conductor, &error),
    }
}

/// A conductor that may not carry what flows.
fn overheats(wired: &Wired, run: &Run, would_do: Option<Conductor>) -> String {
    let at_lowest = match run.low_v {
        Some(low_v) if wired.highest_a > wired.current_a * (1.0 + 1e-9) => {
            text!(" at {}", volts(low_v))
        }
        _ => String::new(),
    };
    text!(
        "{} overheats: as it lies it may carry {}, and the load draws {}{}; {}",
        &wired.conductor,
        amperes(wired.ampacity_a.unwrap_or(0.0)),
        amperes(wired.highest_a),
        &at_lowest,
        match would_do {
            Some(size) => text!("{} would do", &size),
            None => "split the load".to_owned(),
        }
    )
}

/// No size is enough.
fn none_will_do(error: &NoConductor, style: Style) -> String {
    let NoConductor::DropTooGreat { conductor, drop_percent, limit_percent, longest_run_m } = error
    else {
        return error.to_string();
    };
    let falls_short = match drop_percent {
        Some(drop) => text!("loses {}", percent(*drop)),
        None => "has no steady voltage".to_owned(),
    };
    let would_do = match longest_run_m {
        Some(metres) => text!("it would do for {} one way", run_at_most(*metres, style)),
        None => "shorten the run".to_owned(),
    };
    text!(
        "no size is enough: even {} {}, and {} is allowed; {}, or take \
         a higher voltage",
        &conductor,
        &falls_short,
        limit(*limit_percent),
        &would_do
    )
}

impl Findings<'_> {
    fn report(&self, style: Style) -> Report {
        Report {
            answers: self.answers(),
            remarks: self.remarks(style),
            tables: self.tables(style),
            drawings: self.fuse_a().map(|fuse_a| self.drawing(fuse_a, style)).into_iter().collect(),
            working: self.working(style),
            cautions: WIRING.to_vec(),
            buy: self.buy(style),
            outcome: self.outcome(),
            faults: self
                .not_safe()
                .map(|message| Fault::new(CONDUCTOR.key, message))
                .into_iter()
                .collect(),
            ..Report::default()
        }
    }

    /// The fuse, where wire and fuse are safe; nothing is listed or drawn without it. [A]
    fn fuse_a(&self) -> Option<f64> {
        let fuse = self.wired.fuse.as_ref().ok()?;
        self.wired.is_protected().then_some(fuse.rating_a)
    }

    /// The least size that would do, of the series of the one that was named.
    fn would_do(&self) -> Option<Conductor> {
        match self.wired.conductor {
            Conductor::SquareMillimetre(_) => self.least[1].or(self.least[0]),
            _ => self.least[0].or(self.least[1]),
        }
    }

    /// Why wire and fuse are not shown; the voltages are true nevertheless.
    fn not_safe(&self) -> Option<String> {
        let wired = &self.wired;
        match &wired.fuse {
            _ if !wired.carries() => Some(overheats(wired, self.run, self.would_do())),
            Err(error) => Some(text!("no fuse fits: {}", &error)),
            Ok(_) => None,
        }
    }

    fn buy(&self, style: Style) -> Vec<BuyLine> {
        let Some(fuse_a) = self.fuse_a() else { return Vec::new() };
        let mut fuses = fuse_line(fuse_a, self.inputs.supply.highest_v);
        if self.inputs.far_source {
            (fuses.quantity, fuses.needed) = (2.0, 2.0);
        }
        let metres = 2.0 * self.run.length_m;
        vec![wire_line(self.wired.conductor, metres, &self.run.conditions, style), fuses]
    }

    fn outcome(&self) -> Record {
        let wired = &self.wired;
        Record::new()
            .with("conductor", wired.conductor.to_string())
            .with("resistance_ohm", wired.resistance_ohm)
            .with("current_a", wired.current_a)
            .with("drop_v", wired.drop_v)
            .with("drop_percent", wired.drop_percent)
            .with("load_voltage_v", wired.load_v)
            .with("loss_w", wired.loss_w)
            .with("within_limit", wired.within_limit)
            .maybe("longest_run_m", wired.longest_run_m)
            .maybe("ampacity_a", wired.ampacity_a)
            .with("highest_current_a", wired.highest_a)
            .with("insulation_c", self.run.conditions.insulation.rating_c())
            .maybe("fuse_a", self.fuse_a())
            .maybe(
                "fuse_volts_least",
                self.fuse_a().map(|a| fuse_voltage(self.inputs.supply.highest_v, a).0),
            )
            .maybe("least_awg", self.least[0].map(|size| size.to_string()))
            .maybe("least_mm2", self.least[1].map(|size| size.to_string()))
            .with("choices", self.choices.iter().map(choice_record).collect::<Vec<_>>())
    }

    fn answers(&self) -> Vec<Answer> {
        let wired = &self.wired;
        let [awg, metric] = self.least;
        let other = if matches!(wired.conductor, Conductor::Awg(_)) { metric } else { awg };
        let conductor = Answer::new("Conductor", wired.conductor.to_string());
        let conductor = match (self.chosen_here, other) {
            (true, Some(other)) => {
                let series = if metric == Some(other) { "metric" } else { "AWG" };
                conductor.note(text!(
                    "the least that is enough; of the {} sizes {}",
                    &series,
                    &other
                ))
            }
            (true, None) => conductor.note("the least that is enough"),
            (false, _) => conductor.note("as given"),
        };
        let drop = Answer::new(
            "Drop",
            text!("{} ({})", drop_volts(wired.drop_v), percent(wired.drop_percent)),
        )
        .note(text!("{} arrive at the load", volts(wired.load_v)));
        let place = if self.inputs.far_source { "Fuse at each end" } else { "Fuse at the source" };
        let fuse = match self.fuse_a() {
            Some(fuse_a) => {
                Answer::new(place, text!("{} A", plain(fuse_a, 1))).note(self.fuse_note())
            }
            None => Answer::new(place, text!("not shown: {} is too thin", &wired.conductor))
                .note(text!("the load draws {}", amperes(wired.highest_a))),
        };
        vec![conductor, drop, fuse]
    }

    fn fuse_note(&self) -> String {
        let draws = match self.run.low_v {
            Some(_) => text!("the load draws up to {}", amperes(self.wired.highest_a)),
            None => text!("the load draws {}", amperes(self.wired.current_a)),
        };
        let limit_a = self.wired.rated.ok().map(|rated| rated.fuse_limit_a());
        match limit_a.and_then(fuse::greatest_rating) {
            Some(most) => text!("{}; this wire stands fuses up to {} A", &draws, plain(most, 1)),
            None => draws,
        }
    }

    fn remarks(&self, style: Style) -> Vec<Remark> {
        let wired = &self.wired;
        let run = self.run;
        let mut remarks = Vec::new();
        let better = match self.would_do() {
            Some(size) => text!(" {} is enough.", &size),
            None => String::new(),
        };
        if !wired.within_limit {
            let shorter = match wired.longest_run_m {
                Some(metres) => {
                    text!(" {} would do for {}.", &wired.conductor, run_at_most(metres, style))
                }
                None => String::new(),
            };
            remarks.push(Remark::warning(text!(
                "{} is lost, and {} is allowed.{}{}",
                percent(wired.drop_percent),
                limit(run.drop_limit_percent),
                &better,
                &shorter
            )));
        }
        if let Some(message) = self.not_safe() {
            remarks.push(Remark::warning(text!("Not shown: {}.", &message)));
        }
        if wired.within_limit && wired.is_protected() {
            remarks.push(Remark::good(text!(
                "{} keeps the drop within {} for up to {}, and its fuse protects it.",
                &wired.conductor,
                limit(run.drop_limit_percent),
                wired.longest_run_m.map_or("any length".to_owned(), |m| run_at_most(m, style))
            )));
        }
        let used = [wired.conductor];
        let fuses_a: Vec<f64> = self.fuse_a().into_iter().collect();
        general_remarks(&self.inputs.supply, &used, &fuses_a, &run.conditions, &mut remarks);
        if self.inputs.far_source {
            remarks.push(Remark::note(
                "With a source at each end either can burn the wire: a fuse at both, each within \
                 reach of its own source. A lithium battery never straight on an alternator: a \
                 DC-DC charger between them.",
            ));
        }
        if let (Load::Power(_), None) = (run.load, run.low_v) {
            remarks.push(Remark::note(
                "A constant power draws more from a low battery: enter the battery\u{2019}s lowest \
                 voltage, and wire and fuse are chosen for it.",
            ));
        }
        if !fuses_a.is_empty() {
            remarks.push(Remark::note(
                "Motors, compressors and inverters draw several times their usual current as they \
                 start: where the maker names a fuse, that one, as long as the wire stands it.",
            ));
        }
        if fuses_a.is_empty() {
            return remarks;
        }
        remarks.push(Remark::note(text!(
            "Wire to buy: {} positive and as much negative. {} are lost as heat along it.",
            run_length(run.length_m, style),
            watts(wired.loss_w)
        )));
        remarks
    }
}

/// A conductor beside the others. One with which no steady voltage exists has no drop.
fn choice_record((conductor, wired): &(Conductor, Result<Wired, DropError>)) -> Record {
    let record = Record::new().with("conductor", conductor.to_string());
    match wired {
        Ok(wired) => record
            .with("drop_percent", wired.drop_percent)
            .with("within_limit", wired.within_limit)
            .maybe("ampacity_a", wired.ampacity_a)
            .with("enough", is_enough(wired)),
        Err(_) => record.with("within_limit", false).with("enough", false),
    }
}

/// Drop within the limit, current within the ampacity, and a fuse that fits.
fn is_enough(wired: &Wired) -> bool {
    wired.within_limit && wired.is_protected()
}
