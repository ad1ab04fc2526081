//! What charges the battery: shore power, the alternator, panels month by month; each with its cable.

use calc_derive::{Choice, Either, Inputs, Outcome};
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCurrent, ElectricPotential, Energy, Length, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::Battery;
use super::cable::amperes;
use super::cable::{Cable, Carried, Laid, cable};
use crate::energy::charging::{Charging, TimeToFull, ToFull, time_to_full, time_to_full_lead_acid};
use crate::formula::step;
use crate::lists::BuyLine;
use crate::quantity::Style;
use crate::reader::NamedSheet;
use crate::report::{Remark, Step, Table, TableRow};
use crate::sheet::handoffs::PanelYield;
use crate::sheet::solar::MONTHS;
use crate::text::text;
use crate::words::{Arg, Id, Msg, energy as words};

/// What is asked of a charger.
#[derive(Inputs)]
#[words(energy)]
pub(super) struct Row {
    #[ask(no_help, usual("fridge", "fridge"))]
    label: String,
    #[ask(either)]
    charged_by: ChargedBy,
    #[ask(unit("h"), range(0.0, 24.0), usual("2", "2"), word(charge_hours))]
    hours: Option<f64>,
    #[ask(choice)]
    kind: Kind,
    #[ask(units("ft", "m"), range(0.01, 100.0), usual("8 ft", "2.5 m"), word(way))]
    length: Option<Length>,
}

/// What it charges with.
#[derive(Either)]
#[words(energy)]
enum ChargedBy {
    #[ask(units("W", "W"), range(0.1, 100_000.0), usual("380 W", "380 W"), word(charge_power))]
    Power(Power),
    #[ask(units("A", "A"), range(0.01, 10_000.0), usual("30 A", "30 A"), word(charge_current))]
    Current(ElectricCurrent),
    #[ask(sheet_of("solar"), later, word(panels))]
    Solar(NamedSheet),
}

/// What limits its current.
#[derive(Clone, Copy, PartialEq, Eq, Choice)]
#[words(energy)]
pub(super) enum Kind {
    Auto,
    Shore,
    DcDc,
    Alternator,
    Controller,
}

/// One charger.
pub(super) struct Charger {
    /// As it was typed.
    pub label: String,
    /// As it was typed, or its number.
    pub name: Arg,
    pub brings: Brings,
    time: Option<Time>,
    pub kind: Kind,
    /// Charger to battery, one way.
    way: Option<Length>,
    /// Its current: as typed, or its power at the nominal voltage; none where it is not known. [A]
    pub current_a: Option<f64>,
    /// Its current is what was typed, whatever the voltage.
    pub by_current: bool,
}

/// How a charger brings what it brings.
pub(super) enum Brings {
    /// The same power all the time.
    Power(Power),
    /// Panels: the yield of a mean day, January first. [Wh]
    Months(Vec<f64>),
}

impl Charger {
    /// Of what was typed; `panels` gives what a named sheet of panels brings, where that is wanted.
    pub fn of(
        index: usize,
        row: &Row,
        voltage: ElectricPotential,
        panels: impl Fn(&NamedSheet) -> Option<PanelYield>,
    ) -> Self {
        let mut panels_w = None;
        let brings = match &row.charged_by {
            ChargedBy::Power(power) => Brings::Power(*power),
            ChargedBy::Current(current) => Brings::Power(*current * voltage),
            ChargedBy::Solar(named) => {
                let taken = panels(named);
                panels_w = taken.as_ref().map(|panels| panels.rated.get::<watt>());
                let days = taken.iter().flat_map(|panels| panels.days);
                Brings::Months(days.map(|day| day.get::<watt_hour>()).collect())
            }
        };
        let power_w = match &brings {
            Brings::Power(power) => Some(power.get::<watt>()),
            Brings::Months(_) => panels_w,
        };
        Self {
            name: match row.label.as_str() {
                "" => Msg::from(words::ChargerNumber { number: index + 1 }).into(),
                label => label.into(),
            },
            label: row.label.clone(),
            brings,
            time: row.hours.map(Time::new::<hour>),
            kind: row.kind,
            way: row.length,
            by_current: matches!(row.charged_by, ChargedBy::Current(_)),
            current_a: power_w.map(|watts| watts / voltage.get::<volt>()),
        }
    }

    /// The constant power, where it is one.
    pub fn power(&self) -> Option<Power> {
        match self.brings {
            Brings::Power(power) => Some(power),
            Brings::Months(_) => None,
        }
    }
}

/// What a charger comes to.
#[derive(Outcome)]
pub(super) struct Charged {
    current_a: Option<f64>,
    cable: Option<Cable>,
    /// From here on nothing without a battery.
    label: Option<String>,
    power_w: Option<f64>,
    full_h: Option<f64>,
    kept_wh_day: Option<f64>,
    months: Option<Vec<MonthLeft>>,
    /// From the lowest charge to full; none for panels.
    #[outcome(skip)]
    full: Option<ToFull>,
    /// Kept in a day of its hours, before the battery is full.
    #[outcome(skip)]
    pub day: Option<Energy>,
    /// Why no cable is shown.
    #[outcome(skip)]
    why_no_cable: Option<Msg>,
}

/// A mean day of a month: brought, left over after the day's use, and days to full where anything is left.
#[derive(Outcome)]
struct MonthLeft {
    wh_day: f64,
    left_wh_day: f64,
    full_days: Option<f64>,
}

/// What chargers are held against.
pub(super) struct Against<'a> {
    pub voltage: ElectricPotential,
    pub usable: f64,
    pub efficiency: f64,
    pub battery: Option<&'a Battery>,
    /// All loads in a day.
    pub day: Energy,
    pub battery_cable: Option<&'a Laid>,
    pub lowest_v: f64,
    pub charging_v: f64,
}

impl Charged {
    pub fn of(
        charger: &Charger,
        index: usize,
        against: &Against<'_>,
    ) -> Result<Self, (String, Msg)> {
        let (cable, why_no_cable) = match cable_of(charger, against) {
            Some(Ok(cable)) => (Some(cable), None),
            Some(Err(why)) => (None, Some(why)),
            None => (None, None),
        };
        let mut charged = Self {
            current_a: charger.current_a,
            cable,
            label: None,
            power_w: None,
            full_h: None,
            kept_wh_day: None,
            months: None,
            full: None,
            day: None,
            why_no_cable,
        };
        let Some(battery) = against.battery else { return Ok(charged) };
        charged.label = Some(charger.label.clone());
        match &charger.brings {
            Brings::Power(power) => {
                let charging = Charging {
                    power: *power,
                    battery_limit: battery
                        .charge_limit
                        .map_or(*power, |limit| limit * against.voltage),
                    efficiency: battery.kept(),
                };
                let full = if battery.is_lead_acid() {
                    time_to_full_lead_acid(battery.energy, against.usable, charging)
                } else {
                    time_to_full(battery.energy, against.usable, charging).map(ToFull::Steady)
                };
                let full =
                    full.map_err(|error| (text!("charging.{}.power", &index), error.told()))?;
                charged.power_w = Some(power.get::<watt>());
                charged.full_h = Some(full.time().get::<hour>());
                let kept = steady(&full) * charging.efficiency;
                charged.day = charger.time.map(|time| kept * time);
                charged.kept_wh_day = charged.day.map(|day| day.get::<watt_hour>());
                charged.full = Some(full);
            }
            Brings::Months(yields) if yields.is_empty() => {}
            Brings::Months(yields) => {
                let missing = battery.energy * against.usable;
                let drawn = against.day / against.efficiency;
                charged.months = Some(
                    yields
                        .iter()
                        .map(|wh| {
                            let brought = Energy::new::<watt_hour>(*wh);
                            let left = brought * battery.kept() - drawn;
                            let days = missing.value / left.value;
                            let fills = left > Energy::default() && days < 36_500.0;
                            MonthLeft {
                                wh_day: brought.get::<watt_hour>(),
                                left_wh_day: left.get::<watt_hour>(),
                                full_days: fills.then_some(days),
                            }
                        })
                        .collect(),
                );
            }
        }
        Ok(charged)
    }
}

/// The lesser of charger and battery's limit.
fn steady(full: &ToFull) -> Power {
    match full {
        ToFull::Steady(TimeToFull { power, .. }) => *power,
        ToFull::Tapering(tapering) => tapering.power,
    }
}

/// The cable of a charger; none where its way or its current was not given.
fn cable_of(charger: &Charger, against: &Against<'_>) -> Option<Result<Cable, Msg>> {
    let carried = Carried {
        power_w: 0.0,
        current_a: charger.current_a?,
        least_fuse_a: 0.0,
        lowest_v: against.lowest_v,
        charging_v: against.charging_v,
    };
    Some(cable(&Laid::of_charger(against.battery_cable, charger.way?), &carried))
}

fn all<'a>(
    chargers: &'a [Charger],
    charged: &'a [Charged],
) -> impl Iterator<Item = (&'a Charger, &'a Charged)> + Clone {
    chargers.iter().zip(charged)
}

/// Every cable with a fuse at either end.
pub(super) fn buy(charged: &[Charged], style: Style) -> Vec<BuyLine> {
    let cables = charged.iter().filter_map(|one| one.cable.as_ref());
    cables.flat_map(|cable| cable.buy(2, style)).collect()
}

fn heads<const N: usize>(of: [Id; N], style: Style) -> Vec<String> {
    of.map(|head| style.say(head)).into()
}

pub(super) fn tables(chargers: &[Charger], charged: &[Charged], style: Style) -> Vec<Table> {
    let mut tables = Vec::new();
    let row = |cells| TableRow { cells, chosen: false };
    let cables = all(chargers, charged).filter_map(|(charger, charged)| {
        let mut cells = vec![style.write(&charger.name)];
        cells.extend(charged.cable.as_ref()?.cells(style));
        Some(row(cells))
    });
    let cables: Vec<TableRow> = cables.collect();
    if !cables.is_empty() {
        tables.push(Table {
            title: style.say(words::CHARGERS_TABLE),
            heads: heads(
                [
                    words::CHARGERS_TABLE_CHARGER,
                    words::CHARGERS_TABLE_CABLE,
                    words::CHARGERS_TABLE_WAY,
                    words::CHARGERS_TABLE_CURRENT,
                    words::CHARGERS_TABLE_DROP,
                    words::CHARGERS_TABLE_FUSE,
                ],
                style,
            ),
            rows: cables,
        });
    }
    let full = all(chargers, charged).filter_map(|(charger, charged)| {
        let (power, full) = (charger.power()?, charged.full?);
        let day = charged.day.map(Arg::watt_hours);
        Some(row(vec![
            style.write(&charger.name),
            style.write(&Arg::watts(power)),
            style.write(&Arg::spell(full.time())),
            day.map_or_else(String::new, |day| style.write(&day)),
        ]))
    });
    let full: Vec<TableRow> = full.collect();
    if !full.is_empty() {
        tables.push(Table {
            title: style.say(words::FULL_TABLE),
            heads: heads(
                [
                    words::FULL_TABLE_BY,
                    words::FULL_TABLE_POWER,
                    words::FULL_TABLE_TIME,
                    words::FULL_TABLE_KEPT,
                ],
                style,
            ),
            rows: full,
        });
    }
    let wh = |wh: f64| style.write(&Arg::watt_hours(Energy::new::<watt_hour>(wh)));
    for (charger, charged) in all(chargers, charged) {
        let Some(months) = &charged.months else { continue };
        let rows = months.iter().zip(MONTHS).map(|(left, month)| {
            row(vec![
                style.say(month),
                wh(left.wh_day),
                wh(left.left_wh_day),
                match left.full_days {
                    Some(days) => style.write(&Arg::spell(Time::new::<hour>(24.0 * days))),
                    None => style.say(words::NEVER),
                },
            ])
        });
        tables.push(Table {
            title: style.say(words::LeftTable { charger: charger.name.clone() }),
            heads: heads(
                [
                    words::LEFT_TABLE_MONTH,
                    words::LEFT_TABLE_BRING,
                    words::LEFT_TABLE_LEFT,
                    words::LEFT_TABLE_FULL,
                ],
                style,
            ),
            rows: rows.collect(),
        });
    }
    tables
}

pub(super) fn steps(chargers: &[Charger], charged: &[Charged], style: Style) -> Vec<Step> {
    let steps = all(chargers, charged).filter_map(|(charger, charged)| {
        let name = words::StepFull { charger: charger.name.clone() };
        Some(match charged.full? {
            ToFull::Steady(full) => step(name, &full, style),
            ToFull::Tapering(full) => step(name, &full, style),
        })
    });
    steps.collect()
}

/// What charges held against what battery and cables are rated for.
pub(super) fn remarks(
    battery: Option<&Battery>,
    chargers: &[Charger],
    charged: &[Charged],
    style: Style,
    remarks: &mut Vec<Remark>,
) {
    let note = |message: Msg| Remark::note(style.say(message));
    let warning = |message: Msg| Remark::warning(style.say(message));
    let known = chargers.iter().filter_map(|charger| Some((charger, charger.current_a?)));
    let sum: f64 = known.clone().map(|(_, current)| current).sum();
    let limit_a = battery.and_then(Battery::charge_limit_a);
    match limit_a {
        _ if known.clone().next().is_none() => {}
        None => remarks.push(note(words::LIMIT_UNKNOWN.into())),
        Some(limit_a) => {
            let above = |current: f64| current > limit_a * (1.0 + 1e-9);
            let limit = amperes(limit_a);
            for (charger, current) in known.clone().filter(|(_, current)| above(*current)) {
                let (charger, current) = (charger.name.clone(), amperes(current));
                let limit = limit.clone();
                remarks.push(warning(words::ChargerStrong { charger, current, limit }.into()));
            }
            if above(sum) && !known.clone().any(|(_, current)| above(current)) {
                let current = amperes(sum);
                remarks.push(warning(words::ChargersStrong { current, limit }.into()));
            }
        }
    }
    for (one, current) in known {
        let charger = one.name.clone();
        match one.kind {
            Kind::Alternator if battery.is_none_or(|battery| !battery.is_lead_acid()) => {
                remarks.push(warning(words::StraightUnknown { charger }.into()));
            }
            Kind::Alternator => {
                let current = amperes(current);
                remarks.push(warning(words::Straight { charger, current }.into()));
            }
            Kind::DcDc => {
                let current = amperes((current * 1.2).ceil());
                remarks.push(note(words::DcDcInput { charger, current }.into()));
            }
            Kind::Auto if one.power().is_some() => {
                remarks.push(note(words::KindUnknown { charger }.into()));
            }
            _ => {}
        }
    }
    let mut open = Vec::new();
    for (charger, charged) in all(chargers, charged) {
        let name = || Msg::from(words::ChargerCable { charger: charger.name.clone() });
        match (&charged.cable, &charged.why_no_cable) {
            (Some(cable), _) => cable.remarks(&name(), false, style, remarks),
            (None, Some(why)) => {
                let (cable, why) = (name(), why.clone());
                remarks.push(warning(words::CableNotShown { cable, why }.into()));
            }
            (None, None) if charger.power().is_some() => open.push(charger.name.clone()),
            (None, None) => {}
        }
    }
    if !open.is_empty() {
        remarks.push(note(words::ChargerCablesOpen { chargers: Arg::each(open) }.into()));
    }
}
