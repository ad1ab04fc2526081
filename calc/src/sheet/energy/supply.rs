//! The inverter, and the cable and fuse between the battery and everything else.

use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::f64::{ElectricPotential, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::loads::DayLoad;
use super::words::volts;
use crate::ask::Ask;
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::{Load, Run, Wired};
use crate::electrical::sources::CONSTANT_POWER;
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::energy::battery_fuse::{BANK, FuseClass, class_for};
use crate::energy::inverter::{
    self, DC_CURRENT, Inverter, InverterError, MainsLoad, STARTS, cut_off,
};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{CURRENT, LENGTH, POWER, Style, VOLTAGE, amount, percent, plain};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::sheet::wiring::{
    self, DROP_LIMIT, INSULATION, amperes, fuse_line, run_length, wire_line,
};
use crate::text::text;

static EFFICIENCY: Ask = Ask::percent("efficiency_percent", "Inverter's efficiency", (50.0, 100.0))
    .default("90")
    .usual("90", "90")
    .help("In its data sheet; less at small loads.");
static STANDBY: Ask =
    Ask::measure("standby", "Draws with nothing on", &POWER, ["W", "W"], (0.0, 1000.0))
        .default("10 W")
        .usual("10 W", "10 W")
        .help("Idle or no-load power in its data sheet.");
static HOURS_ON: Ask = Ask::number_in("hours_on", "Hours switched on", "h", (0.0, 24.0))
    .default("24")
    .usual("24", "24")
    .help("In a day; switch it off between uses and this falls.");
static LOWEST: Ask =
    Ask::measure("lowest_voltage", "Battery's lowest voltage", &VOLTAGE, ["V", "V"], (1.0, 1000.0))
        .optional()
        .usual("10.5 V", "10.5 V")
        .help("Where inverter or battery switches off: there the current is greatest. Left blank: 10.5 V for each 12 V.");
static RATING: Ask =
    Ask::measure("rating", "The inverter you have in mind", &POWER, ["W", "W"], (1.0, 100_000.0))
        .optional()
        .usual("1000 W", "1000 W")
        .help("What it gives without end, in W (not VA).");
static SURGE: Ask =
    Ask::measure("surge", "Its power for a start", &POWER, ["W", "W"], (1.0, 200_000.0))
        .optional()
        .usual("2000 W", "2000 W")
        .help("Peak or surge power, for a second or more.");
pub(super) static INVERTER: Ask = Ask::group(
    "inverter",
    "Inverter",
    &[&EFFICIENCY, &STANDBY, &HOURS_ON, &LOWEST, &RATING, &SURGE],
)
.optional()
.help("For what runs on mains voltage.");

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
    &[&CABLE_LENGTH, &CONDUCTOR, &DROP_LIMIT, &INSULATION, &SHORT_CIRCUIT],
)
.optional()
.help("For all that is on at once, and for the strongest charger.");

/// An inverter, and the one in mind.
pub(super) struct InverterInputs {
    pub unit: Inverter,
    rating: Option<Power>,
    surge: Option<Power>,
}

pub(super) fn read_inverter(group: &Reader<'_>, nominal: ElectricPotential) -> InverterInputs {
    InverterInputs {
        unit: Inverter {
            efficiency: group.number(&EFFICIENCY) / 100.0,
            standby: group.measure(&STANDBY),
            time_on: Time::new::<hour>(group.number(&HOURS_ON)),
            lowest: group.maybe(&LOWEST).unwrap_or_else(|| cut_off(nominal)),
        },
        rating: group.maybe(&RATING),
        surge: group.maybe(&SURGE),
    }
}

/// A battery cable before its load is known.
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

/// What the loads ask of the inverter.
pub(super) fn ask_of(
    unit: Inverter,
    loads: &[DayLoad],
    nominal: ElectricPotential,
) -> Result<inverter::Ask, Vec<Fault>> {
    if unit.lowest > nominal {
        return Err(vec![Fault::new(
            "inverter.lowest_voltage",
            text!("the lowest voltage must lie below the nominal {}", volts(nominal)),
        )]);
    }
    let mains: Vec<MainsLoad> = loads
        .iter()
        .filter(|load| load.mains)
        .map(|load| MainsLoad {
            power: load.load.power,
            start: load.start,
            day: load.load.power * load.load.time * load.load.duty,
        })
        .collect();
    inverter::ask(&mains, unit).map_err(|error| {
        let field = match error {
            InverterError::Load(_) => "loads",
            InverterError::Efficiency => "inverter.efficiency_percent",
            InverterError::Standby => "inverter.standby",
            InverterError::TimeOn => "inverter.hours_on",
            InverterError::Lowest => "inverter.lowest_voltage",
        };
        vec![Fault::new(field, error.to_string())]
    })
}

/// The cable with what it carries, worked out.
pub(super) struct Cable {
    run: Run,
    wired: Wired,
    /// None where no fuse fits, or no class breaks the current.
    class: Option<&'static FuseClass>,
    short_circuit_a: Option<f64>,
}

/// The battery cable for a power at the battery's lowest voltage; the error is what is said where
/// no cable is enough.
pub(super) fn cable(
    inputs: &CableInputs,
    power: Power,
    lowest: ElectricPotential,
) -> Result<Cable, String> {
    let run = Run {
        source_v: lowest.get::<volt>(),
        load: Load::Power(power.get::<watt>().max(0.001)),
        ..inputs.run
    };
    let wired = match inputs.wanted {
        Wanted::This(conductor) => run.wired(conductor).map_err(|error| error.to_string())?,
        Wanted::Least(series) => {
            let conductors = series.unwrap_or(Series::Awg).conductors();
            run.least(conductors).map_err(|error| error.to_string())?
        }
    };
    let class = wired
        .fuse
        .as_ref()
        .ok()
        .and_then(|fuse| class_for(fuse.rating_a, run.source_v, inputs.short_circuit_a));
    Ok(Cable { run, wired, class, short_circuit_a: inputs.short_circuit_a })
}

impl Cable {
    pub fn record(&self) -> Record {
        Record::new()
            .with("conductor", self.wired.conductor.to_string())
            .with("current_a", self.wired.current_a)
            .with("drop_percent", self.wired.drop_percent)
            .with("within_limit", self.wired.within_limit)
            .maybe("ampacity_a", self.wired.ampacity_a)
            .maybe("fuse_a", self.wired.fuse.as_ref().ok().map(|fuse| fuse.rating_a))
            .maybe("fuse_class", self.class.map(|class| class.name))
            .maybe("fuse_breaks_a", self.class.map(|class| class.breaks_a))
    }

    pub fn remarks(&self, remarks: &mut Vec<Remark>) {
        let wired = &self.wired;
        if !wired.within_limit {
            remarks.push(Remark::warning(text!(
                "The battery cable loses {}, and {} is allowed: a thicker one, or a shorter way.",
                percent(wired.drop_percent),
                percent(self.run.drop_limit_percent)
            )));
        }
        match (&wired.fuse, self.class) {
            (Err(error), _) => {
                remarks.push(Remark::warning(text!("No fuse fits the battery cable: {}.", &error)));
            }
            (Ok(fuse), Some(class)) => remarks.push(Remark::note(text!(
                "Battery cable {}, {} A {} at the battery: it breaks {} A ({}). {}",
                &wired.conductor,
                plain(fuse.rating_a, 1),
                &class.name,
                plain(class.breaks_a, 0),
                class.source,
                match self.short_circuit_a {
                    Some(short) => text!("The battery gives {} A at most.", plain(short, 0)),
                    None => text!("Nobody gave the battery\u{2019}s short-circuit current: {}.", &BANK),
                }
            ))),
            (Ok(_), None) => remarks.push(Remark::warning(
                "No usual fuse breaks that short-circuit current at this voltage: fuse each battery by itself, as its maker says.",
            )),
        }
    }

    pub fn steps(&self, steps: &mut Vec<Step>) {
        let wired = &self.wired;
        steps.push(Step::new(
            "Battery cable: current",
            "U = (U₀ + √(U₀² − 4 R P)) / 2, I = P / U",
            match self.run.load {
                Load::Power(watts) => text!(
                    "{} from {}, {} there and back",
                    amount(watts, 0, "W"),
                    wiring::volts(self.run.source_v),
                    wiring::ohms(wired.resistance_ohm)
                ),
                _ => String::new(),
            },
            amperes(wired.current_a),
            &CONSTANT_POWER,
        ));
        steps.push(Step::new(
            "Battery cable: drop",
            "100 I R / U₀",
            text!("{} · {}", amperes(wired.current_a), wiring::ohms(wired.resistance_ohm)),
            wiring::percent(wired.drop_percent),
            wired.conductor.resistance_source(),
        ));
        steps.extend(wiring::ampacity_steps(wired.conductor, &self.run.conditions));
        steps.extend(wiring::fuse_steps(wired.current_a, true, wired.fuse.as_ref().ok()));
    }

    pub fn buy(&self, style: Style) -> Vec<BuyLine> {
        let mut lines = vec![wire_line(self.conductor(), 2.0 * self.run.length_m, &self.run.conditions, style)];
        if let Ok(fuse) = &self.wired.fuse {
            let mut line = fuse_line(fuse.rating_a, self.run.source_v);
            if let Some(class) = self.class {
                line.item = text!("{} with holder", class.name);
                line.id = LineId::shared(text!("{}/{}", line.id.text(), LineId::name(class.name)));
            }
            lines.push(line);
        }
        lines
    }

    pub fn conductor(&self) -> Conductor {
        self.wired.conductor
    }

    /// What it is, for the table: conductor, length, current, drop, fuse.
    pub fn cells(&self, style: Style) -> Vec<String> {
        vec![
            self.conductor().to_string(),
            run_length(self.run.length_m, style),
            amperes(self.wired.current_a),
            wiring::percent(self.wired.drop_percent),
            match &self.wired.fuse {
                Ok(fuse) => text!("{} A", plain(fuse.rating_a, 1)),
                Err(_) => "none fits".to_owned(),
            },
        ]
    }
}

pub(super) fn inverter_remarks(
    inputs: &InverterInputs,
    asked: &inverter::Ask,
    remarks: &mut Vec<Remark>,
) {
    let (continuous, surge) = (asked.continuous.get::<watt>(), asked.surge.get::<watt>());
    let short = |has: Option<Power>, needs: f64| {
        has.map(|power| power.get::<watt>()).filter(|watts| *watts * (1.0 + 1e-9) < needs)
    };
    if let Some(rating) = short(inputs.rating, continuous) {
        remarks.push(Remark::warning(text!(
            "The inverter gives {}, and its loads take {} together: a larger one, or not all at once.",
            amount(rating, 0, "W"),
            amount(continuous, 0, "W")
        )));
    }
    if let Some(peak) = short(inputs.surge.or(inputs.rating), surge) {
        remarks.push(Remark::warning(text!(
            "The hardest start takes {}, and the inverter gives {} for a moment.",
            amount(surge, 0, "W"),
            amount(peak, 0, "W")
        )));
    }
    remarks.push(Remark::note(text!(
        "Inverter: {} without end and {} for a start{}. At {} it draws {} from the battery, {} in a start.",
        amount(continuous, 0, "W"),
        amount(surge, 0, "W"),
        match asked.rating_w {
            Some(size) => text!(", a usual size is {}", amount(size, 0, "W")),
            None => String::new(),
        },
        volts(inputs.unit.lowest),
        amperes(asked.current.get::<ampere>()),
        amperes(asked.surge_current.get::<ampere>())
    )));
}

pub(super) fn inverter_steps(
    inputs: &InverterInputs,
    asked: &inverter::Ask,
    steps: &mut Vec<Step>,
) {
    let watts = |power: Power| amount(power.get::<watt>(), 0, "W");
    let efficiency = percent(inputs.unit.efficiency * 100.0);
    steps.push(Step::new(
        "Inverter: hardest start",
        "P = Σ P + max(P_start − P)",
        text!("{} + {}", watts(asked.continuous), watts(asked.surge - asked.continuous)),
        watts(asked.surge),
        &STARTS,
    ));
    for (name, power, current) in [
        ("Inverter: from the battery", asked.continuous, asked.current),
        ("Inverter: in a start", asked.surge, asked.surge_current),
    ] {
        steps.push(Step::new(
            name,
            "I = P / (η · U)",
            text!("{} / ({} · {})", watts(power), &efficiency, volts(inputs.unit.lowest)),
            amperes(current.get::<ampere>()),
            &DC_CURRENT,
        ));
    }
}

pub(super) fn inverter_record(asked: &inverter::Ask) -> Record {
    Record::new()
        .with("continuous_w", asked.continuous.get::<watt>())
        .with("surge_w", asked.surge.get::<watt>())
        .maybe("rating_w", asked.rating_w)
        .with("current_a", asked.current.get::<ampere>())
        .with("surge_current_a", asked.surge_current.get::<ampere>())
        .with("lost_wh_day", asked.lost.get::<uom::si::energy::watt_hour>())
}
