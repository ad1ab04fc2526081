//! One run to one load: drop, loss, longest run, fuse, and every conductor beside the others.

mod drawing;
mod figures;

use super::wiring::{
    AIR_TEMPERATURE, BUNDLED, CONDUCTOR_TEMPERATURE, CONTINUOUS, DROP_LIMIT, INSULATION,
    SOURCE_VOLTAGE, amperes, drop_volts, fuse_line, general_remarks, limit, percent,
    read_conditions, run_at_most, run_length, stand_in, volts, wanted, watts, wire_line,
};
use super::{Sheet, solve};
use crate::ask::{Ask, Figure};
use crate::electrical::ampacity::carries;
use crate::electrical::cautions::WIRING;
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::{DropError, Load, NoConductor, Run, Wired};
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::electrical::{fuse, sources};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{CURRENT, LENGTH, POWER, Style, plain};
use crate::reader::Reader;
use crate::report::{Answer, Remark, Report};
use crate::text::text;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "voltage_drop",
    title: "Voltage drop",
    trade: "Wiring",
    purpose: "Choose the wire and the fuse for one run to one load.",
    asks: &[
        &SOURCE_VOLTAGE,
        &DRAWS,
        &LENGTH_ONE_WAY,
        &CONDUCTOR,
        &DROP_LIMIT,
        &CONTINUOUS,
        &BUNDLED,
        &CONDUCTOR_TEMPERATURE,
        &AIR_TEMPERATURE,
        &INSULATION,
    ],
    sources: &[
        &sources::NEC_TABLE_8,
        &sources::IEC_60228_CLASS_5,
        &sources::CONSTANT_POWER,
        &sources::CFR_TABLE_5,
        &sources::ABYC_BUNDLING,
        &sources::NEC_CONTINUOUS,
        &sources::FUSE_PROTECTS_CONDUCTOR,
        &sources::ABYC_DROP_LIMITS,
    ],
    example: r#"{ "source_voltage": "12.8 V", "power": "36 W", "length": "18 ft",
        "conductor": "auto", "drop_limit_percent": 3 }"#,
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
}

fn read(reader: &Reader<'_>) -> Inputs {
    let source_v = reader.si(&SOURCE_VOLTAGE);
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
            source_v,
            load,
            length_m,
            temperature_c,
            drop_limit_percent,
            continuous,
            conditions,
        },
        wanted,
    }
}

/// All that is said of a run.
struct Findings<'a> {
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
            let would_do = least.iter().flatten().next().map(|wired| wired.conductor);
            at(no_steady_voltage(conductor, &error, would_do))
        })?,
        Wanted::Least(series) => {
            let [awg, metric] = &least;
            let least = if series == Some(Series::SquareMillimetre) { metric } else { awg };
            least.clone().map_err(|error| at(none_will_do(&error, style)))?
        }
    };
    let findings = Findings {
        run,
        wired,
        chosen_here: matches!(inputs.wanted, Wanted::Least(_)),
        least: least.map(|wired| wired.ok().map(|wired| wired.conductor)),
        choices: run.choices(Conductor::awg().chain(Conductor::metric())),
    };
    Ok(findings.report(style))
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
        let Wired { conductor, fuse, .. } = &self.wired;
        let mut buy = vec![wire_line(*conductor, 2.0 * self.run.length_m, &self.run.conditions, style)];
        if let Ok(fuse) = fuse {
            buy.push(fuse_line(fuse.rating_a, self.run.source_v));
        }
        Report {
            answers: self.answers(),
            remarks: self.remarks(style),
            tables: self.tables(style),
            drawings: vec![self.drawing(style)],
            working: self.working(style),
            cautions: WIRING.to_vec(),
            buy,
            outcome: self.outcome(),
            ..Report::default()
        }
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
            .maybe("fuse_a", wired.fuse.as_ref().ok().map(|fuse| fuse.rating_a))
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
        let fuse = match &wired.fuse {
            Ok(fuse) => Answer::new("Fuse at the source", text!("{} A", plain(fuse.rating_a, 1)))
                .note(self.fuse_note()),
            Err(_) => Answer::new("Fuse at the source", "none fits")
                .note(text!("the load draws {}", amperes(wired.current_a))),
        };
        vec![conductor, drop, fuse]
    }

    fn fuse_note(&self) -> String {
        let draws = text!("the load draws {}", amperes(self.wired.current_a));
        match self.wired.ampacity_a.and_then(fuse::greatest_rating) {
            Some(most) => text!("{}; this wire stands fuses up to {} A", &draws, plain(most, 1)),
            None => draws,
        }
    }

    fn remarks(&self, style: Style) -> Vec<Remark> {
        let wired = &self.wired;
        let run = self.run;
        let mut remarks = Vec::new();
        let would_do = match wired.conductor {
            Conductor::SquareMillimetre(_) => self.least[1].or(self.least[0]),
            _ => self.least[0].or(self.least[1]),
        };
        let better = match would_do {
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
        match wired.ampacity_a {
            Some(ampacity_a) if !carries(ampacity_a, wired.current_a) => {
                remarks.push(Remark::warning(text!(
                    "{} overheats: as it lies it may carry {}, and the load draws {}.{}",
                    &wired.conductor,
                    amperes(ampacity_a),
                    amperes(wired.current_a),
                    &better
                )));
            }
            None => remarks.push(Remark::warning(text!(
                "No table says what {} may carry: the fuse was not held against it. Look up what \
                 its maker allows.",
                &wired.conductor
            ))),
            Some(_) => {}
        }
        if let Err(error) = &wired.fuse {
            remarks.push(Remark::warning(text!("No fuse fits: {}.", &error)));
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
        general_remarks(run.source_v, &used, &run.conditions, &mut remarks);
        if wired.fuse.is_ok() {
            remarks.push(Remark::note(
                "Motors, compressors and inverters draw several times their usual current as they \
                 start: where the maker names a fuse, that one, as long as the wire stands it.",
            ));
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
