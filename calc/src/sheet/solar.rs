//! What panels yield month by month against what a day needs, and their voltage on the coldest morning.

mod controller;
mod findings;
mod gap;
mod months;
mod roof;
mod string;
#[cfg(test)]
mod tests;

pub use months::MONTHS;

use calc_derive::{Either, Inputs};
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{
    Angle, ElectricCurrent, ElectricPotential, Energy, Power, ThermodynamicTemperature,
};
use uom::si::power::watt;

use super::{Sheet, solve};
use crate::electrical::charging::GREATEST_NOMINAL_V;
use crate::energy::battery_voltage::BELOW_50_V;
use crate::energy::budget::PANEL_LOSSES;
use crate::energy::cautions;
use crate::energy::roof::{CLEAR, LAYOUT, Layout};
use crate::energy::solar::{
    DAY_PROFILE, DAY_PROFILE_SCALE, DIFFUSE_SHARE, DayYield, GROUND, GROUND_REFLECTANCE, Month,
    Plane, Site, SolarError, TILTED_PLANE, day_yield, months,
};
use crate::energy::string::{
    ColdRule, ColdString, FIVE_ABOVE, HOT_CELLS, METHOD, NEC_690_8, NEC_690_9, PV_RATINGS,
    StringError, StringWire, TABLE, TABLE_MILD, cold_string, most_in_series,
};
use crate::energy::sun::{GEOMETRY, MEAN_DAYS};
use crate::fault::Fault;
use crate::formula::Formula as _;
use crate::handoff::Handed;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{Mass, Style, amount, plain};
use crate::reader::{NamedSheet, Reader};
use crate::report::{Caution, Report};
use crate::sheet::handoffs::{DailyUse, PanelYield};
use crate::words::{Msg, Phrase, common, solar as words};
use gap::{Short, Store};
use roof::{OnRoof, RoofInputs};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "solar",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_LIVING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Typed::ASKS,
    sources: &[
        &GEOMETRY,
        &MEAN_DAYS,
        &DIFFUSE_SHARE,
        &DAY_PROFILE,
        &DAY_PROFILE_SCALE,
        &TILTED_PLANE,
        &GROUND,
        &PANEL_LOSSES,
        &METHOD,
        &TABLE,
        &TABLE_MILD,
        &NEC_690_8,
        &NEC_690_9,
        &PV_RATINGS,
        &HOT_CELLS,
        &FIVE_ABOVE,
        &BELOW_50_V,
        &LAYOUT,
        &CLEAR,
    ],
    example: r#"{ "latitude": "43 deg", "tilt": "0 deg", "azimuth": "0 deg",
        "clearness": [0.44, 0.48, 0.5, 0.5, 0.52, 0.54, 0.56, 0.54, 0.52, 0.48, 0.4, 0.38],
        "panels": { "count": 3, "watts": 120, "voc": "37 V", "voc_per_c_percent": -0.3, "isc": "4.3 A", "vmp": "30.5 V", "max_series_fuse": "15 A", "in_series": 1 },
        "loss_percent": 20, "sheet": "energy", "coldest": "-20 C", "controller_voltage": "75 V", "controller_amps": "30 A", "controller_input_amps": "35 A",
        "roof": { "panel_length": "1190 mm", "panel_width": "540 mm", "walkway": "350 mm" } }"#,
    ahead: Some(|reader| read(reader, |_| None).supply()),
    solve: |reader| {
        let read = |reader: &Reader<'_>| read(reader, |named| reader.taken(named));
        solve(reader, read, report)
    },
};

/// A quarter turn and half a turn. [rad]
const QUARTER: f64 = std::f64::consts::FRAC_PI_2;
const HALF: f64 = std::f64::consts::PI;

/// What was typed.
#[derive(Inputs)]
#[words(solar)]
struct Typed {
    #[ask(units("deg", "deg"), range(-QUARTER, QUARTER), usual("43 deg", "43 deg"))]
    latitude: Angle,
    #[ask(units("deg", "deg"), range(0.0, QUARTER), default("0 deg"), usual("0 deg", "0 deg"))]
    tilt: Angle,
    #[ask(units("deg", "deg"), range(-HALF, HALF), default("0 deg"), usual("0 deg", "0 deg"))]
    azimuth: Angle,
    #[ask(list(1), alone, help_of_all, range(0.05, 0.85), usual("0.5", "0.5"), at_most(12))]
    clearness: Vec<f64>,
    #[ask(group, no_help)]
    panels: Panels,
    #[ask(percent, range(0.0, 99.0), usual("20", "20"))]
    loss_percent: f64,
    #[ask(either)]
    need_in_a_day: Option<Need>,
    #[ask(units("F", "C"), range(213.15, 333.15), usual("-4 F", "-20 C"))]
    coldest: Option<ThermodynamicTemperature>,
    #[ask(units("V", "V"), range(1.0, 2000.0), usual("75 V", "75 V"))]
    controller_voltage: Option<ElectricPotential>,
    #[ask(units("A", "A"), range(0.1, 1000.0), usual("30 A", "30 A"))]
    controller_amps: Option<ElectricCurrent>,
    #[ask(units("A", "A"), range(0.1, 1000.0), usual("35 A", "35 A"))]
    controller_input_amps: Option<ElectricCurrent>,
    #[ask(units("V", "V"), range(1.0, GREATEST_NOMINAL_V), usual("12.8 V", "12.8 V"))]
    battery_voltage: Option<ElectricPotential>,
    #[ask(units("F", "C"), range(273.15, 393.15), default("70 C"), usual("158 F", "70 C"))]
    hot_cells: ThermodynamicTemperature,
    #[ask(group)]
    roof: Option<OnRoof>,
}

/// The panels, all alike.
#[derive(Inputs)]
#[words(solar)]
struct Panels {
    #[ask(range(1, 100), no_help, usual("2", "2"))]
    count: u32,
    #[ask(unit("W"), range(1.0, 2000.0), usual("120", "120"))]
    watts: f64,
    #[ask(units("V", "V"), range(0.1, 1000.0), usual("22.5 V", "22.5 V"))]
    voc: Option<ElectricPotential>,
    #[ask(range(-2.0, 2.0), usual("-0.3", "-0.3"))]
    voc_per_c_percent: Option<f64>,
    #[ask(units("A", "A"), range(0.01, 100.0), usual("7 A", "7 A"))]
    isc: Option<ElectricCurrent>,
    #[ask(units("V", "V"), range(0.1, 1000.0), usual("18.5 V", "18.5 V"))]
    vmp: Option<ElectricPotential>,
    #[ask(units("A", "A"), range(0.1, 200.0), usual("15 A", "15 A"))]
    max_series_fuse: Option<ElectricCurrent>,
    #[ask(range(1, 100), default("1"), usual("1", "1"))]
    in_series: u32,
    #[ask(units("lb", "kg"), range(0.0, 200.0), usual("15 lb", "7 kg"))]
    mass: Option<Mass>,
}

/// What a day needs.
#[derive(Either)]
#[words(solar)]
enum Need {
    #[ask(units("Wh", "Wh"), range(3600.0, 3.6e9), usual("770 Wh", "770 Wh"))]
    Need(Energy),
    #[ask(sheet_of("energy"), later)]
    Sheet(NamedSheet),
}

/// What was typed, read.
struct Inputs {
    site: Site,
    plane: Plane,
    count: u32,
    watts: f64,
    mass: Option<Mass>,
    open_circuit: Option<ElectricPotential>,
    rule: ColdRule,
    in_series: u32,
    short_circuit_a: Option<f64>,
    most_power_v: Option<f64>,
    max_series_fuse_a: Option<f64>,
    loss: f64,
    need: Option<Energy>,
    store: Option<Store>,
    roof: Option<RoofInputs>,
    coldest: Option<ThermodynamicTemperature>,
    controller: Option<ElectricPotential>,
    current: controller::Inputs,
}

impl Inputs {
    /// Strings side by side, the last perhaps not full.
    fn strings(&self) -> u32 {
        self.count.div_ceil(self.in_series.max(1))
    }

    fn rated(&self) -> Power {
        Power::new::<watt>(self.watts * f64::from(self.count))
    }

    /// Each month's sun, and what a mean day of it brings.
    fn yields(&self) -> Result<([Month; 12], Vec<DayYield>), SolarError> {
        let months = months(&self.site, self.plane)?;
        let days = months.iter().map(|month| day_yield(month, self.rated(), self.loss));
        let days = days.collect::<Result<_, _>>()?;
        Ok((months, days))
    }

    /// What the panels bring. It hangs on no use.
    fn supply(&self) -> Option<Handed> {
        let (_, days) = self.yields().ok()?;
        let mut months = [Energy::default(); 12];
        months.iter_mut().zip(&days).for_each(|(month, day)| *month = day.value());
        Some(Handed::of(PanelYield { rated: self.rated(), days: months }))
    }
}

/// Reads what was typed; `daily` gives the use of a named sheet, where that is wanted.
fn read(reader: &Reader<'_>, daily: impl Fn(&NamedSheet) -> Option<DailyUse>) -> Inputs {
    let typed = Typed::read(reader);
    let tell = |path: &str, message: Msg| reader.note(path, reader.style().say(message));
    let clearness = match typed.clearness.as_slice() {
        [one] => [*one; 12],
        [] => [0.5; 12],
        many => <[f64; 12]>::try_from(many).unwrap_or_else(|_| {
            reader.tell(Typed::CLEARNESS, words::ClearnessCount { count: many.len() });
            [0.5; 12]
        }),
    };
    let panels = typed.panels;
    let rule = panels.voc_per_c_percent.map_or(ColdRule::Table, ColdRule::Coefficient);
    if matches!(rule, ColdRule::Coefficient(percent) if percent > 0.0) {
        tell("panels.voc_per_c_percent", StringError::Coefficient.told());
    }
    if !reader.has_faults() && panels.in_series > panels.count {
        tell("panels.in_series", words::TooManyInSeries { count: panels.count }.into());
    }
    let (need, store) = match typed.need_in_a_day {
        None => (None, None),
        Some(Need::Need(need)) => (Some(need), None),
        Some(Need::Sheet(named)) => {
            let daily = daily(&named);
            (daily.as_ref().map(|daily| daily.day), daily.map(Store::of))
        }
    };
    let amperes = |current: Option<ElectricCurrent>| current.map(|current| current.get::<ampere>());
    Inputs {
        site: Site { latitude: typed.latitude, clearness, ground_reflectance: GROUND_REFLECTANCE },
        plane: Plane { tilt: typed.tilt, azimuth: typed.azimuth },
        count: panels.count,
        watts: panels.watts,
        mass: panels.mass,
        open_circuit: panels.voc,
        rule,
        in_series: panels.in_series,
        short_circuit_a: amperes(panels.isc),
        most_power_v: panels.vmp.map(|voltage| voltage.get::<volt>()),
        max_series_fuse_a: amperes(panels.max_series_fuse),
        loss: typed.loss_percent / 100.0,
        need,
        current: controller::Inputs::of(
            amperes(typed.controller_amps),
            amperes(typed.controller_input_amps),
            typed.battery_voltage.map(|voltage| voltage.get::<volt>()),
            typed.hot_cells,
            store.as_ref(),
        ),
        store,
        roof: typed.roof.map(|roof| RoofInputs::of(&roof, reader.body())),
        coldest: typed.coldest,
        controller: typed.controller_voltage,
    }
}

/// An input that is wrong beside the others.
struct Wrong {
    field: String,
    message: Msg,
}

fn solar_fault(error: SolarError) -> Wrong {
    let field = match error {
        SolarError::Latitude => "latitude".to_owned(),
        SolarError::Clearness(month) => format!("clearness.{month}"),
        SolarError::GroundReflectance | SolarError::Tilt => "tilt".to_owned(),
        SolarError::Azimuth => "azimuth".to_owned(),
        SolarError::Power => "panels.watts".to_owned(),
        SolarError::Loss => "loss_percent".to_owned(),
    };
    Wrong { field, message: error.told() }
}

fn string_fault(error: StringError) -> Wrong {
    let field = match error {
        StringError::OpenCircuit => "panels.voc",
        StringError::Coefficient => "panels.voc_per_c_percent",
        StringError::Coldest | StringError::BelowTable => "coldest",
        StringError::InSeries => "panels.in_series",
        StringError::Controller => "controller_voltage",
    };
    Wrong { field: field.to_owned(), message: error.told() }
}

/// What was worked out.
struct Figures {
    months: [Month; 12],
    days: Vec<DayYield>,
    /// Of a mean day of each month.
    yields: Vec<Energy>,
    cold: Option<ColdString>,
    within_controller: Option<bool>,
    most_in_series: Option<u32>,
    /// The panel in the cold by the code's table, beside the maker's figure.
    by_table: Option<ElectricPotential>,
    layout: Option<Layout>,
    short: Vec<Short>,
}

impl Figures {
    fn of(inputs: &Inputs) -> Result<Self, Wrong> {
        let (months, days) = inputs.yields().map_err(solar_fault)?;
        let yields = days.iter().map(DayYield::value).collect();
        let cold = match (inputs.open_circuit, inputs.coldest) {
            (Some(open_circuit), Some(coldest)) => Some(
                cold_string(open_circuit, inputs.rule, coldest, inputs.in_series)
                    .map_err(string_fault)?,
            ),
            _ => None,
        };
        let limit = cold.zip(inputs.controller);
        let by_table = match (inputs.open_circuit, inputs.coldest, inputs.rule) {
            (Some(open_circuit), Some(coldest), ColdRule::Coefficient(_)) => {
                cold_string(open_circuit, ColdRule::Table, coldest, 1).ok().map(|cold| cold.panel)
            }
            _ => None,
        };
        let mut figures = Self {
            months,
            days,
            yields,
            cold,
            within_controller: limit.map(|(cold, controller)| {
                cold.string.get::<volt>() <= controller.get::<volt>() + 1e-9
            }),
            most_in_series: limit
                .map(|(cold, controller)| most_in_series(cold.panel, controller))
                .transpose()
                .map_err(string_fault)?,
            by_table,
            layout: inputs.roof.as_ref().map(roof::laid_out).transpose()?,
            short: Vec::new(),
        };
        figures.short = gap::short(inputs, &figures)?;
        Ok(figures)
    }

    /// What the wire of a string carries.
    fn wire(inputs: &Inputs) -> Option<StringWire> {
        inputs.short_circuit_a.map(|short_circuit_a| StringWire { short_circuit_a })
    }

    /// Index of the month that brings least.
    fn least(&self) -> usize {
        let darkest = self.yields.iter().enumerate().min_by(|a, b| a.1.value.total_cmp(&b.1.value));
        darkest.map_or(0, |(index, _)| index)
    }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let figures = Figures::of(inputs)
        .map_err(|wrong| vec![Fault::new(wrong.field, style.say(wrong.message))])?;
    let exact = style.exact();
    let mut steps = months::working(inputs, &figures, exact);
    steps.extend(string::steps(inputs, &figures, exact));
    let mut drawings = vec![months::bars(inputs, &figures, style)];
    if let (Some(roof), Some(layout)) = (&inputs.roof, &figures.layout) {
        steps.push(roof::step(roof, layout, exact));
        drawings.push(roof::drawing(roof, layout, inputs.count, style));
    }
    let panels = BuyLine::pieces(
        LineId::shared(format!("solar-panel/{}w", plain(inputs.watts, 1))),
        style.say(words::BUY_PANEL),
        amount(inputs.watts, 1, "W"),
        f64::from(inputs.count),
    )
    .mass(inputs.mass.map(|mass| mass * f64::from(inputs.count)));
    Ok(Report {
        answers: findings::answers(inputs, &figures, style),
        remarks: findings::remarks(inputs, &figures, style),
        tables: std::iter::once(months::table(inputs, &figures, style))
            .chain(gap::table(inputs, &figures, style))
            .collect(),
        drawings,
        working: steps,
        cautions: Caution::all(&cautions::PANELS),
        buy: std::iter::once(panels).chain(controller::buy(inputs, &figures, style)).collect(),
        outcome: outcome(inputs, &figures),
        ..Report::default()
    })
}

fn outcome(inputs: &Inputs, figures: &Figures) -> Record {
    let records: Vec<Record> = figures
        .months
        .iter()
        .zip(&figures.yields)
        .map(|(month, energy)| {
            Record::new()
                .with("h0_mj_m2", month.outside.value())
                .with("h_mj_m2", month.level.value())
                .with("plane_mj_m2", month.plane.value())
                .with("wh_day", energy.get::<watt_hour>())
        })
        .collect();
    let mut record = Record::new().with("months", records);
    if let Some(layout) = &figures.layout {
        record = roof::record(layout, record);
    }
    controller::record(inputs, figures, record)
        .maybe("cold_voc_v", figures.cold.map(|cold| cold.panel.get::<volt>()))
        .maybe("string_v", figures.cold.map(|cold| cold.string.get::<volt>()))
        .maybe("within_controller", figures.within_controller)
        .maybe("most_in_series", figures.most_in_series.map(|most| most as usize))
        .maybe("table_voc_v", figures.by_table.map(|panel| panel.get::<volt>()))
        .maybe("string_wire_a", Figures::wire(inputs).map(|wire| wire.value()))
        .with("short", gap::records(&figures.short))
        .with("rated_w", inputs.rated().get::<watt>())
        .maybe("need_wh_day", inputs.need.map(|need| need.get::<watt_hour>()))
}
