//! The cable between the battery and everything else, those of the chargers, and their fuses.

use super::supply::InverterInputs;
use crate::ask::Ask;
use crate::electrical::ampacity::{Conditions, carries};
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::{Load, Run, Wired};
use crate::electrical::least_size::may_be_chosen;
use crate::electrical::sources::{CONSTANT_POWER, FUSE_PROTECTS_CONDUCTOR, NEC_CONTINUOUS};
use crate::electrical::splice::stud;
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::energy::battery_fuse::{
    BANK, BatteryFuse, UNKNOWN_SHORT_CIRCUIT_A, battery_fuse, breaking,
};
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{CURRENT, LENGTH, Style, amount, percent, plain};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::sheet::wiring::{
    self, DROP_LIMIT, IN_INSULATION, INSULATION, amperes, lug_line, run_length, wire_line,
    wire_name,
};
use crate::sorting::sort_by;
use crate::text::text;

static CABLE_LENGTH: Ask =
    Ask::measure("length", "Battery to fuse block, one way", &LENGTH, ["ft", "m"], (0.01, 100.0))
        .usual("5 ft", "1.5 m")
        .help("Along the way the cable will lie; the way back is added here.");
static CONDUCTOR: Ask = Ask::notation("conductor", "Cable", "conductor", &SUGGESTIONS)
    .default("auto")
    .usual("auto", "auto mm2")
    .help("auto takes the least AWG size that is enough, auto mm2 the least metric one.");
static SHORT_CIRCUIT: Ask = Ask::measure(
    "short_circuit",
    "Battery's short-circuit current",
    &CURRENT,
    ["A", "A"],
    (1.0, 1e6),
)
.optional()
.usual("3000 A", "3000 A")
.help("In the maker's sheet; of batteries side by side the sum. Left blank: 20 kA is counted.");
pub(super) static CABLE: Ask = Ask::group(
    "cable",
    "Battery cable and fuse",
    &[&CABLE_LENGTH, &CONDUCTOR, &DROP_LIMIT, &INSULATION, &IN_INSULATION, &SHORT_CIRCUIT],
)
.optional()
.help("For all that is on at once with the inverter at its rating, and for the strongest charger.");

/// A cable before its load is known.
pub(super) struct CableInputs {
    run: Run,
    wanted: Wanted,
    short_circuit_a: Option<f64>,
}

pub(super) fn read_cable(group: &Reader<'_>) -> CableInputs {
    let (conditions, temperature_c) = wiring::read_conditions(group);
    CableInputs {
        run: Run {
            source_v: 1.0,
            low_v: None,
            load: Load::Power(1.0),
            length_m: group.si(&CABLE_LENGTH),
            temperature_c,
            drop_limit_percent: group.number(&DROP_LIMIT),
            continuous: true,
            conditions,
        },
        wanted: group.notation(&CONDUCTOR, wiring::stand_in(), wiring::wanted),
        short_circuit_a: group.maybe_si(&SHORT_CIRCUIT),
    }
}

impl CableInputs {
    /// The cable of a charger: laid as the battery's own, in the same series, the least that is enough; where no
    /// battery cable is filled in, with insulation for 60 °C and a drop of 3 %.
    pub fn of_charger(battery: Option<&Self>, length_m: f64) -> Self {
        let series = battery.and_then(|cable| match cable.wanted {
            Wanted::This(Conductor::SquareMillimetre(_)) => Some(Series::SquareMillimetre),
            Wanted::This(_) => None,
            Wanted::Least(series) => series,
        });
        let run = battery.map_or(
            Run {
                source_v: 1.0,
                low_v: None,
                load: Load::Current(1.0),
                length_m,
                temperature_c: 30.0,
                drop_limit_percent: 3.0,
                continuous: true,
                conditions: Conditions::default(),
            },
            |cable| Run { length_m, ..cable.run },
        );
        Self {
            run,
            wanted: Wanted::Least(series),
            short_circuit_a: battery.and_then(|cable| cable.short_circuit_a),
        }
    }
}

/// What a cable carries.
pub(super) struct Carried {
    /// Of constant power, drawn at the lowest voltage. [W]
    pub power_w: f64,
    /// Of constant current. [A]
    pub current_a: f64,
    /// The least fuse that will do whatever the currents; 0 where it does not matter. [A]
    pub least_fuse_a: f64,
    /// The battery's lowest voltage. [V]
    pub lowest_v: f64,
    /// The highest voltage that a charger takes it to. [V]
    pub charging_v: f64,
}

/// A cable with what it carries, worked out.
pub(super) struct Cable {
    run: Run,
    wired: Wired,
    /// The fuse, or why none is shown.
    fuse: Result<BatteryFuse, String>,
    charging_v: f64,
    short_circuit_a: Option<f64>,
}

/// The cable for what it carries; the error says what to do where none can be shown.
pub(super) fn cable(inputs: &CableInputs, carried: &Carried) -> Result<Cable, String> {
    let short = inputs.short_circuit_a;
    if breaking(carried.charging_v, short).next().is_none() {
        return Err(no_class(carried.charging_v, short));
    }
    match inputs.wanted {
        Wanted::This(conductor) => wired(inputs, carried, conductor),
        Wanted::Least(series) => {
            let mut sizes: Vec<(f64, Conductor)> = series
                .unwrap_or(Series::Awg)
                .conductors()
                .into_iter()
                .filter(|size| may_be_chosen(*size, &inputs.run.conditions))
                .filter_map(|size| Some((size.area_mm2()?, size)))
                .collect();
            sort_by(&mut sizes, |a, b| a.0.total_cmp(&b.0));
            let mut last = Err("there is no size to choose from".to_owned());
            for (_, size) in sizes {
                last = match wired(inputs, carried, size) {
                    Ok(cable) if !cable.wired.within_limit => Err(text!(
                        "even {} loses {} of the voltage on this way: a shorter one, or two cables side by side as a licensed or qualified electrician sizes them",
                        &size,
                        percent(cable.wired.drop_percent)
                    )),
                    Ok(Cable { fuse: Err(message), .. }) => Err(message),
                    other => other,
                };
                if last.is_ok() {
                    break;
                }
            }
            last
        }
    }
}

fn no_class(charging_v: f64, short: Option<f64>) -> String {
    text!(
        "no usual fuse breaks {} at {}: fuse each battery by itself, as its maker says",
        amount(short.unwrap_or(UNKNOWN_SHORT_CIRCUIT_A), 0, "A"),
        wiring::volts(charging_v)
    )
}

/// The cable with one conductor: the harder of what draws at the lowest voltage and what charges.
fn wired(inputs: &CableInputs, carried: &Carried, conductor: Conductor) -> Result<Cable, String> {
    let at_lowest = Run { source_v: carried.lowest_v, ..inputs.run };
    let mut run = Run { load: Load::Power(carried.power_w.max(0.001)), ..at_lowest };
    let mut wired = run.wired(conductor).map_err(|error| error.to_string())?;
    if carried.current_a > wired.current_a {
        run = Run { load: Load::Current(carried.current_a), ..at_lowest };
        wired = run.wired(conductor).map_err(|error| error.to_string())?;
    }
    let needed_a = (1.25 * wired.current_a).max(carried.least_fuse_a);
    let fuse = match &wired.rated {
        Err(unrated) => Err(unrated.to_string()),
        Ok(rated) => {
            let (volts, short) = (carried.charging_v, inputs.short_circuit_a);
            battery_fuse(needed_a, rated.fuse_limit_a(), volts, short)
                .filter(|_| carries(rated.ampacity_a(), wired.current_a))
                .ok_or_else(|| match breaking(volts, short).next() {
                    None => no_class(volts, short),
                    Some(_) => text!(
                        "it would be {} or more, and before {} no more than {} may stand: take a thicker cable, or put less on it",
                        amperes(needed_a),
                        wire_name(conductor, &inputs.run.conditions),
                        amperes(rated.fuse_limit_a())
                    ),
                })
        }
    };
    Ok(Cable {
        run,
        wired,
        fuse,
        charging_v: carried.charging_v,
        short_circuit_a: inputs.short_circuit_a,
    })
}

impl Cable {
    pub fn record(&self) -> Record {
        let fuse = self.fuse.as_ref().ok();
        Record::new()
            .with("conductor", self.wired.conductor.to_string())
            .with("current_a", self.wired.current_a)
            .with("drop_percent", self.wired.drop_percent)
            .with("within_limit", self.wired.within_limit)
            .maybe("ampacity_a", self.wired.ampacity_a)
            .with("insulation_c", self.run.conditions.insulation.rating_c())
            .maybe("fuse_a", fuse.map(|fuse| fuse.rating_a))
            .maybe("fuse_volts_least", fuse.map(|_| self.charging_v))
            .maybe("fuse_class", fuse.map(|fuse| fuse.class.name))
            .maybe("fuse_class_volts", fuse.map(|fuse| fuse.class.greatest_v))
            .maybe("fuse_breaks_a", fuse.map(|fuse| fuse.class.breaks_a))
    }

    pub fn remarks(&self, name: &str, in_full: bool, remarks: &mut Vec<Remark>) {
        let wired = &self.wired;
        if !wired.within_limit {
            remarks.push(Remark::warning(text!(
                "{} loses {}, and {} is allowed: a thicker one, or a shorter way.",
                name,
                percent(wired.drop_percent),
                percent(self.run.drop_limit_percent)
            )));
        }
        match &self.fuse {
            Err(message) => {
                remarks.push(Remark::warning(text!("{}: fuse not shown: {}.", name, message)));
            }
            // A charger's stands in its table.
            Ok(_) if !in_full => {}
            Ok(fuse) => remarks.push(Remark::note(text!(
                "{}: {}, {} A {}, fuse and holder for {} DC or more; the class breaks {} ({}). {}",
                name,
                wire_name(wired.conductor, &self.run.conditions),
                plain(fuse.rating_a, 1),
                fuse.class.name,
                fuse_volts(self.charging_v),
                amount(fuse.class.breaks_a, 0, "A"),
                fuse.class.source,
                match self.short_circuit_a {
                    Some(short) => text!("The battery gives {} at most.", amount(short, 0, "A")),
                    None => text!("Nobody gave the battery\u{2019}s short-circuit current, so that 20 kA are counted: {}.", &BANK),
                }
            ))),
        }
    }

    /// The inverter's own fuse, where its maker names one and a class is made in it.
    pub fn inverter_fuse(&self, inverter: &InverterInputs) -> Option<BatteryFuse> {
        let maker_a = inverter.maker_fuse_a?;
        battery_fuse(maker_a, maker_a, self.charging_v, self.short_circuit_a)
            .filter(|_| self.fuse.is_ok())
    }

    pub fn inverter_remarks(&self, inverter: &InverterInputs, remarks: &mut Vec<Remark>) {
        if inverter.is_rated() {
            remarks.push(Remark::note(
                "The battery cable is sized for the inverter at its rating, not for its loads alone.",
            ));
        } else {
            remarks.push(Remark::note(
                "The battery cable is sized for a usual inverter for these loads: enter the rating of yours, which it is sized for then.",
            ));
        }
        let Some(maker_a) = inverter.maker_fuse_a else {
            remarks.push(Remark::note(
                "Not shown: the inverter\u{2019}s own fuse. Enter the one its maker asks for: its instructions come before the battery fuse here.",
            ));
            return;
        };
        remarks.push(match self.inverter_fuse(inverter) {
            Some(fuse) => Remark::note(text!(
                "In front of the inverter by its maker: {} A {}, its cable no thinner than the battery cable.",
                plain(fuse.rating_a, 1),
                fuse.class.name
            )),
            None => Remark::warning(text!(
                "Not shown: a fuse of {} in front of the inverter: no class that breaks this battery\u{2019}s short circuit is made in it, or the battery cable has none. Ask its maker which fuse to take.",
                amperes(maker_a)
            )),
        });
    }

    pub fn steps(&self, steps: &mut Vec<Step>) {
        let wired = &self.wired;
        steps.push(match self.run.load {
            Load::Power(watts) => Step::new(
                "Battery cable: current",
                "U = (U₀ + √(U₀² − 4 R P)) / 2, I = P / U",
                text!(
                    "{} from {}, {} there and back",
                    amount(watts, 0, "W"),
                    wiring::volts(self.run.source_v),
                    wiring::ohms(wired.resistance_ohm)
                ),
                amperes(wired.current_a),
                &CONSTANT_POWER,
            ),
            _ => Step::new(
                "Battery cable: current",
                "I of the strongest charger",
                "more than all loads draw",
                amperes(wired.current_a),
                &CONSTANT_POWER,
            ),
        });
        steps.push(Step::new(
            "Battery cable: drop",
            "100 I R / U₀",
            text!("{} · {}", amperes(wired.current_a), wiring::ohms(wired.resistance_ohm)),
            wiring::percent(wired.drop_percent),
            wired.conductor.resistance_source(),
        ));
        steps.extend(wiring::ampacity_steps(wired.conductor, &self.run.conditions));
        let Ok(fuse) = &self.fuse else { return };
        steps.push(Step::new(
            "The fuse carries at least",
            "If = 1.25 · I",
            text!("1.25 · {}", amperes(wired.current_a)),
            amperes(1.25 * wired.current_a),
            &NEC_CONTINUOUS,
        ));
        steps.push(Step::new(
            text!("Least {} that is made", fuse.class.name),
            "If ≤ rating ≤ Iz",
            text!("ratings of a {}", fuse.class.name),
            text!("{} A", plain(fuse.rating_a, 1)),
            &FUSE_PROTECTS_CONDUCTOR,
        ));
    }

    /// The cable, so many of its fuses, and a lug for each end: two on the negative, two on the positive and
    /// two more wherever a fuse parts it. Nothing where no fuse protects it.
    pub fn buy(&self, fuses: usize, style: Style) -> Vec<BuyLine> {
        let Ok(fuse) = &self.fuse else { return Vec::new() };
        let conductor = self.wired.conductor;
        vec![
            wire_line(conductor, 2.0 * self.run.length_m, &self.run.conditions, style),
            line(fuse, self.charging_v, fuses),
            lug_line(conductor, stud(conductor), 4.0 + 2.0 * fuses as f64),
        ]
    }

    /// The inverter's own fuse for the buy list.
    pub fn buy_inverter_fuse(&self, inverter: &InverterInputs) -> Option<BuyLine> {
        self.inverter_fuse(inverter).map(|fuse| line(&fuse, self.charging_v, 1))
    }

    /// What it is, for the table: conductor, length, current, drop, fuse.
    pub fn cells(&self, style: Style) -> Vec<String> {
        vec![
            wire_name(self.wired.conductor, &self.run.conditions),
            run_length(self.run.length_m, style),
            amperes(self.wired.current_a),
            wiring::percent(self.wired.drop_percent),
            match &self.fuse {
                Ok(fuse) => text!("{} A {}", plain(fuse.rating_a, 1), fuse.class.name),
                Err(_) => "not shown".to_owned(),
            },
        ]
    }
}

/// What fuse and holder must stand, rounded up: 32 V is the least that they are sold for.
fn fuse_volts(charging_v: f64) -> String {
    text!("{} V", plain(least_volts(charging_v), 0))
}

fn least_volts(charging_v: f64) -> f64 {
    (charging_v - 1e-6).ceil().max(32.0)
}

fn line(fuse: &BatteryFuse, charging_v: f64, count: usize) -> BuyLine {
    let (amperes, volts) = (plain(fuse.rating_a, 1), fuse_volts(charging_v));
    let class = fuse.class.name;
    let id =
        text!("fuse/{}a/{}v/{}", &amperes, plain(least_volts(charging_v), 0), LineId::name(class));
    let spec = text!(
        "{} A, {} DC or more, breaks {} or more",
        &amperes,
        &volts,
        amount(fuse.class.breaks_a, 0, "A")
    );
    BuyLine::pieces(LineId::shared(id), text!("{} with holder", class), spec, count as f64)
}
