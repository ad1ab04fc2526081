//! The cable between the battery and everything else, those of the chargers, and their fuses.

use calc_derive::{Inputs, Outcome};
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Length, Power};
use uom::si::length::meter;
use uom::si::power::watt;

use super::inverter::InverterInputs;
use crate::electrical::ampacity::{Conditions, carries};
use crate::electrical::conductor::{Conductor, Series};
use crate::electrical::drop::{Load, Run, Wired};
use crate::electrical::least_size::may_be_chosen;
use crate::electrical::sources::{CONSTANT_POWER, FUSE_PROTECTS_CONDUCTOR, NEC_CONTINUOUS};
use crate::electrical::wanted::{SUGGESTIONS, Wanted};
use crate::energy::battery_fuse::{
    BANK, BatteryFuse, UNKNOWN_SHORT_CIRCUIT_A, battery_fuse, breaking,
};
use crate::lists::{BuyLine, LineId};
use crate::quantity::{Style, amount, plain};
use crate::report::{Remark, Step};
use crate::sheet::wiring::{self, Rating};
use crate::sorting::sort_by;
use crate::text::text;
use crate::words::{Arg, Msg, energy as words};

/// What is asked of the battery cable.
#[derive(Inputs)]
#[words(energy)]
pub(super) struct CableInputs {
    #[ask(units("ft", "m"), range(0.01, 100.0), usual("5 ft", "1.5 m"), word(cable_length))]
    length: Length,
    #[ask(read_by(&SUGGESTIONS, wiring::wanted), default("auto"), usual("auto", "auto mm2"), convention())]
    conductor: Wanted,
    #[ask(
        percent,
        range(0.01, 99.0),
        usual("3", "3"),
        convention(),
        word(wiring::drop_limit_percent)
    )]
    drop_limit_percent: f64,
    #[ask(choice, default("60 C"), word(wiring::insulation))]
    insulation: Rating,
    #[ask(usually(false), word(wiring::in_insulation))]
    in_insulation: bool,
    #[ask(units("A", "A"), range(1.0, 1e6), usual("3000 A", "3000 A"))]
    short_circuit: Option<ElectricCurrent>,
}

/// A cable before its load is known.
pub(super) struct Laid {
    run: Run,
    wanted: Wanted,
    short_circuit_a: Option<f64>,
}

/// Copper as warm as it gets under a light load. [C]
const COPPER_C: f64 = 30.0;

impl Laid {
    /// The battery's own.
    pub fn of(inputs: &CableInputs) -> Self {
        Self {
            run: Run {
                source_v: 1.0,
                low_v: None,
                load: Load::Power(1.0),
                length_m: inputs.length.get::<meter>(),
                temperature_c: COPPER_C,
                drop_limit_percent: inputs.drop_limit_percent,
                continuous: true,
                conditions: Conditions {
                    insulation: inputs.insulation.into(),
                    in_insulation: inputs.in_insulation,
                    ..Conditions::default()
                },
            },
            wanted: inputs.conductor,
            short_circuit_a: inputs.short_circuit.map(|current| current.get::<ampere>()),
        }
    }

    /// That of a charger: laid as the battery's own, in the same series, the least that is enough; where no battery
    /// cable is filled in, with insulation for 60 °C and a drop of 3 %.
    pub fn of_charger(battery: Option<&Self>, way: Length) -> Self {
        let series = battery.and_then(|cable| match cable.wanted {
            Wanted::This(Conductor::SquareMillimetre(_)) => Some(Series::SquareMillimetre),
            Wanted::This(_) => None,
            Wanted::Least(series) => series,
        });
        let length_m = way.get::<meter>();
        let run = battery.map_or(
            Run {
                source_v: 1.0,
                low_v: None,
                load: Load::Current(1.0),
                length_m,
                temperature_c: COPPER_C,
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
#[derive(Outcome)]
pub(super) struct Cable {
    conductor: String,
    current_a: f64,
    drop_percent: f64,
    within_limit: bool,
    ampacity_a: Option<f64>,
    insulation_c: f64,
    fuse_a: Option<f64>,
    fuse_volts_least: Option<f64>,
    fuse_class: Option<&'static str>,
    fuse_class_volts: Option<f64>,
    fuse_breaks_a: Option<f64>,
    #[outcome(skip)]
    run: Run,
    #[outcome(skip)]
    wired: Wired,
    /// The fuse, or why none is shown.
    #[outcome(skip)]
    fuse: Result<BatteryFuse, Msg>,
    #[outcome(skip)]
    charging_v: f64,
    #[outcome(skip)]
    short_circuit_a: Option<f64>,
}

/// The cable for what it carries; the error says what to do where none can be shown.
pub(super) fn cable(laid: &Laid, carried: &Carried) -> Result<Cable, Msg> {
    let short = laid.short_circuit_a;
    if breaking(carried.charging_v, short).next().is_none() {
        return Err(no_class(carried.charging_v, short));
    }
    match laid.wanted {
        Wanted::This(conductor) => wired(laid, carried, conductor),
        Wanted::Least(series) => {
            let mut sizes: Vec<(f64, Conductor)> = series
                .unwrap_or(Series::Awg)
                .conductors()
                .into_iter()
                .filter(|size| may_be_chosen(*size, &laid.run.conditions))
                .filter_map(|size| Some((size.area_mm2()?, size)))
                .collect();
            sort_by(&mut sizes, |a, b| a.0.total_cmp(&b.0));
            let mut last = Err(words::WHY_NO_SIZE.into());
            for (_, size) in sizes {
                last = match wired(laid, carried, size) {
                    Ok(cable) if !cable.within_limit => Err(words::WhyDrop {
                        size: size.to_string(),
                        drop: wiring::drop_beside(cable.drop_percent, cable.run.drop_limit_percent),
                    }
                    .into()),
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

fn no_class(charging_v: f64, short: Option<f64>) -> Msg {
    words::WhyNoClass {
        current: whole_amperes(short.unwrap_or(UNKNOWN_SHORT_CIRCUIT_A)),
        volts: Arg::volts(ElectricPotential::new::<volt>(charging_v)),
    }
    .into()
}

/// The cable with one conductor: the harder of what draws at the lowest voltage and what charges.
fn wired(laid: &Laid, carried: &Carried, conductor: Conductor) -> Result<Cable, Msg> {
    let at_lowest = Run { source_v: carried.lowest_v, ..laid.run };
    let mut run = Run { load: Load::Power(carried.power_w.max(0.001)), ..at_lowest };
    let mut wired = run.wired(conductor).map_err(|error| Msg::from(&error))?;
    if carried.current_a > wired.current_a {
        run = Run { load: Load::Current(carried.current_a), ..at_lowest };
        wired = run.wired(conductor).map_err(|error| Msg::from(&error))?;
    }
    let needed_a = (1.25 * wired.current_a).max(carried.least_fuse_a);
    let (charging_v, short_circuit_a) = (carried.charging_v, laid.short_circuit_a);
    let fuse = match &wired.rated {
        Err(unrated) => Err((*unrated).into()),
        Ok(rated) => battery_fuse(needed_a, rated.fuse_limit_a(), charging_v, short_circuit_a)
            .filter(|_| carries(rated.ampacity_a(), wired.current_a))
            .ok_or_else(|| match breaking(charging_v, short_circuit_a).next() {
                None => no_class(charging_v, short_circuit_a),
                Some(_) => words::WhyTooLarge {
                    least: amperes(needed_a),
                    wire: wiring::wire_name(conductor, &run.conditions),
                    most: amperes(rated.fuse_limit_a()),
                }
                .into(),
            }),
    };
    let found = fuse.as_ref().ok();
    Ok(Cable {
        conductor: wired.conductor.to_string(),
        current_a: wired.current_a,
        drop_percent: wired.drop_percent,
        within_limit: wired.within_limit,
        ampacity_a: wired.ampacity_a,
        insulation_c: run.conditions.insulation.rating_c(),
        fuse_a: found.map(|fuse| fuse.rating_a),
        fuse_volts_least: found.map(|_| charging_v),
        fuse_class: found.map(|fuse| fuse.class.name),
        fuse_class_volts: found.map(|fuse| fuse.class.greatest_v),
        fuse_breaks_a: found.map(|fuse| fuse.class.breaks_a),
        run,
        wired,
        fuse,
        charging_v,
        short_circuit_a,
    })
}

impl Cable {
    /// What has to be said of it; a charger's fuse stands in its table.
    pub fn remarks(&self, cable: &Msg, in_full: bool, style: Style, remarks: &mut Vec<Remark>) {
        if !self.within_limit {
            remarks.push(Remark::warning(style.say(words::CableDrop {
                cable: cable.clone(),
                drop: wiring::drop_beside(self.drop_percent, self.run.drop_limit_percent),
                limit: Arg::percent(self.run.drop_limit_percent),
            })));
        }
        match &self.fuse {
            Err(why) => {
                let (cable, why) = (cable.clone(), why.clone());
                remarks.push(Remark::warning(style.say(words::CableNoFuse { cable, why })));
            }
            Ok(_) if !in_full => {}
            Ok(fuse) => {
                let cable = cable.clone();
                let wire = wiring::wire_name(self.wired.conductor, &self.run.conditions);
                let volts = fuse_volts(self.charging_v);
                let breaks = whole_amperes(fuse.class.breaks_a);
                let short = self.short();
                let fuse = called(fuse);
                remarks.push(Remark::note(match self.short_circuit_a {
                    Some(_) => {
                        style.say(words::CableFuse { cable, wire, fuse, volts, breaks, short })
                    }
                    None => style.say(words::CableFuseAssumed {
                        cable,
                        wire,
                        fuse,
                        volts,
                        breaks,
                        short,
                    }),
                }));
            }
        }
    }

    /// The battery's short-circuit current, as given or as assumed.
    fn short(&self) -> String {
        whole_amperes(self.short_circuit_a.unwrap_or(UNKNOWN_SHORT_CIRCUIT_A))
    }

    /// The inverter's own fuse, where its maker names one and a class is made in it.
    pub fn inverter_fuse(&self, inverter: &InverterInputs) -> Option<BatteryFuse> {
        let maker_a = inverter.maker_fuse_a()?;
        battery_fuse(maker_a, maker_a, self.charging_v, self.short_circuit_a)
            .filter(|_| self.fuse.is_ok())
    }

    pub fn inverter_remarks(
        &self,
        inverter: &InverterInputs,
        style: Style,
        remarks: &mut Vec<Remark>,
    ) {
        let sized =
            if inverter.is_rated() { words::SIZED_FOR_RATING } else { words::SIZED_FOR_USUAL };
        remarks.push(Remark::note(style.say(sized)));
        remarks.push(match (inverter.maker_fuse_a(), self.inverter_fuse(inverter)) {
            (None, _) => Remark::note(style.say(words::INVERTER_FUSE_UNKNOWN)),
            (_, Some(fuse)) => Remark::note(style.say(words::InverterFuse { fuse: called(&fuse) })),
            (Some(maker_a), None) => {
                let current = amperes(maker_a);
                Remark::warning(style.say(words::InverterFuseNone { current }))
            }
        });
    }

    pub fn steps(&self, style: Style, steps: &mut Vec<Step>) {
        let wired = &self.wired;
        let resistance = style.figure(wiring::ohms(wired.resistance_ohm));
        let current = style.write(&amperes(wired.current_a));
        let name = style.say(words::STEP_CURRENT);
        steps.push(match self.run.load {
            Load::Power(watts) => Step::new(
                name,
                "U = (U₀ + √(U₀² − 4 R P)) / 2, I = P / U",
                style.say(words::StepCurrentNumbers {
                    power: Arg::watts(Power::new::<watt>(watts)),
                    volts: Arg::volts(ElectricPotential::new::<volt>(self.run.source_v)),
                    resistance: resistance.as_str(),
                }),
                current.clone(),
                &CONSTANT_POWER,
            ),
            _ => Step::new(
                name,
                "I",
                style.say(words::STEP_CURRENT_CHARGER),
                current.clone(),
                &CONSTANT_POWER,
            ),
        });
        steps.push(Step::new(
            style.say(words::STEP_DROP),
            "100 I R / U₀",
            text!("{} · {}", &current, &resistance),
            style.figure(wiring::percent(wired.drop_percent)),
            wired.conductor.resistance_source(),
        ));
        steps.extend(wiring::ampacity_steps(wired.conductor, &self.run.conditions, style));
        let Ok(fuse) = &self.fuse else { return };
        steps.push(Step::new(
            style.say(words::STEP_FUSE_LEAST),
            "If = 1.25 · I",
            text!("1.25 · {}", &current),
            style.write(&amperes(1.25 * wired.current_a)),
            &NEC_CONTINUOUS,
        ));
        let class = fuse.class.called;
        steps.push(Step::new(
            style.say(words::StepFuse { class }),
            "If ≤ rating ≤ Iz",
            style.say(words::StepFuseNumbers { class }),
            style.figure(rating(fuse)),
            &FUSE_PROTECTS_CONDUCTOR,
        ));
        let current = self.short();
        if self.short_circuit_a.is_none() {
            steps.push(Step::new(
                style.say(words::SHORT_CIRCUIT),
                "Ik",
                style.say(words::STEP_ASSUMED),
                current.clone(),
                &BANK,
            ));
        }
        steps.push(Step::new(
            style.say(words::StepBreaks { class }),
            "Ib ≥ Ik",
            style.say(words::StepBreaksNumbers { current }),
            whole_amperes(fuse.class.breaks_a),
            fuse.class.source,
        ));
    }

    /// The cable, so many of its fuses, and a lug for each end: two on the negative, two on the positive and
    /// two more wherever a fuse parts it. Nothing where no fuse protects it.
    pub fn buy(&self, fuses: usize, style: Style) -> Vec<BuyLine> {
        let Ok(fuse) = &self.fuse else { return Vec::new() };
        let Run { length_m, conditions, .. } = &self.run;
        let lugs = 4.0 + 2.0 * fuses as f64;
        let conductor = self.wired.conductor;
        let [wire, lug] =
            wiring::buy_wire_and_lugs(conductor, 2.0 * length_m, lugs, conditions, style);
        vec![wire, line(fuse, self.charging_v, fuses, style), lug]
    }

    /// The inverter's own fuse for the buy list.
    pub fn buy_inverter_fuse(&self, inverter: &InverterInputs, style: Style) -> Option<BuyLine> {
        self.inverter_fuse(inverter).map(|fuse| line(&fuse, self.charging_v, 1, style))
    }

    /// What it is, for the table: conductor, length, current, drop, fuse.
    pub fn cells(&self, style: Style) -> Vec<String> {
        vec![
            style.say(wiring::wire_name(self.wired.conductor, &self.run.conditions)),
            style.run(Length::new::<meter>(self.run.length_m)),
            style.write(&amperes(self.current_a)),
            style.figure(wiring::percent(self.drop_percent)),
            match &self.fuse {
                Ok(fuse) => style.say(called(fuse)),
                Err(_) => style.say(words::NOT_SHOWN),
            },
        ]
    }
}

pub(super) fn amperes(a: f64) -> Arg {
    Arg::amperes(ElectricCurrent::new::<ampere>(a))
}

fn whole_amperes(a: f64) -> String {
    amount(a, 0, "A")
}

fn rating(fuse: &BatteryFuse) -> String {
    amount(fuse.rating_a, 1, "A")
}

/// `90 A class T fuse`.
fn called(fuse: &BatteryFuse) -> Msg {
    words::Fuse { rating: rating(fuse), class: fuse.class.called }.into()
}

/// What fuse and holder must be rated for, rounded up: 32 V is the least that they are sold for.
fn fuse_volts(charging_v: f64) -> String {
    amount(least_volts(charging_v), 0, "V")
}

fn least_volts(charging_v: f64) -> f64 {
    (charging_v - 1e-6).ceil().max(32.0)
}

fn line(fuse: &BatteryFuse, charging_v: f64, count: usize, style: Style) -> BuyLine {
    let class = fuse.class;
    let id = text!(
        "fuse/{}a/{}v/{}",
        plain(fuse.rating_a, 1),
        plain(least_volts(charging_v), 0),
        LineId::name(class.name)
    );
    let item = style.say(words::BuyFuse { class: class.called });
    let spec = style.say(words::BuyFuseSpec {
        rating: rating(fuse),
        volts: fuse_volts(charging_v),
        breaks: whole_amperes(class.breaks_a),
    });
    BuyLine::pieces(LineId::shared(id), item, spec, count as f64)
}
