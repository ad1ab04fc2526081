//! What panels yield month by month against what a day needs, and their voltage on the coldest morning.

mod controller;
mod gap;
mod months;
mod roof;
#[cfg(test)]
mod tests;
mod words;

pub use months::NAMES as MONTHS;

use crate::text::text;
use crate::words::Phrase;
use uom::si::angle::degree;
use uom::si::electric_potential::volt;
use uom::si::energy::{joule, watt_hour};
use uom::si::f64::{Angle, ElectricPotential, Energy, Power, ThermodynamicTemperature};
use uom::si::power::watt;

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::energy::battery_voltage::BELOW_50_V;
use crate::energy::budget::PANEL_LOSSES;
use crate::energy::cautions;
use crate::energy::roof::{CLEAR, LAYOUT, Layout};
use crate::energy::solar::{
    DAY_PROFILE, DAY_PROFILE_SCALE, DIFFUSE_SHARE, GROUND, GROUND_REFLECTANCE, Month, Plane, Site,
    SolarError, TILTED_PLANE, day_yield, months,
};
use crate::energy::string::{
    ColdRule, ColdString, FIVE_ABOVE, HOT_CELLS, METHOD, NEC_690_8, NEC_690_9, PV_RATINGS,
    StringError, TABLE, TABLE_MILD, cold_string, most_in_series, string_wire_a,
};
use crate::energy::sun::{GEOMETRY, MEAN_DAYS};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{
    ANGLE, CURRENT, ENERGY, MASS, Mass, Style, TEMPERATURE, VOLTAGE, amount, plain,
};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use gap::{Short, Store};
use roof::{ROOF, RoofInputs};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "solar",
    title: Phrase::Written("Solar panels"),
    trade: Phrase::Written("Living in it"),
    purpose: Phrase::Written(
        "See what panels bring in each month, whether it covers the day's use, and their voltage in the cold.",
    ),
    asks: &[
        &LATITUDE,
        &TILT,
        &AZIMUTH,
        &CLEARNESS,
        &PANELS,
        &LOSS,
        &NEED,
        &COLDEST,
        &CONTROLLER,
        &controller::OUTPUT,
        &controller::INPUT,
        &controller::BATTERY,
        &controller::HOT,
        &ROOF,
    ],
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
    solve: |reader| solve(reader, read, report),
};

/// A quarter turn and half a turn. [rad]
const QUARTER: f64 = std::f64::consts::FRAC_PI_2;
const HALF: f64 = std::f64::consts::PI;

static LATITUDE: Ask =
    Ask::measure("latitude", "Latitude", &ANGLE, ["deg", "deg"], (-QUARTER, QUARTER))
        .usual("43 deg", "43 deg")
        .help("Of the place where you stand; south of the equator with a minus.");
static TILT: Ask =
    Ask::measure("tilt", "Tilt of the panels", &ANGLE, ["deg", "deg"], (0.0, QUARTER))
        .default("0 deg")
        .usual("0 deg", "0 deg")
        .help("From the level: 0 flat on the roof.");
static AZIMUTH: Ask =
    Ask::measure("azimuth", "Turned away from the equator", &ANGLE, ["deg", "deg"], (-HALF, HALF))
        .default("0 deg")
        .usual("0 deg", "0 deg")
        .help("0 faces the equator, 90 east or west; a flat panel has no direction.");
static CLEARNESS_ONE: Ask = Ask::number("", "Clearness", (0.05, 0.85)).usual("0.5", "0.5");
static CLEARNESS: Ask = Ask::list("clearness", "Clearness, one or twelve", 1, &CLEARNESS_ONE)
    .at_most(12)
    .help("Share of the sun's light that gets through in a month, January first: 0.3 in cloudy winters to 0.7 in deserts; one figure stands for all months.");
static COUNT: Ask = Ask::count("count", "Number of panels", (1, 100)).usual("2", "2");
static WATTS: Ask = Ask::number_in("watts", "Rated power of each", "W", (1.0, 2000.0))
    .usual("120", "120")
    .help("On the label at its back.");
static VOC: Ask =
    Ask::measure("voc", "Open-circuit voltage of each", &VOLTAGE, ["V", "V"], (0.1, 1000.0))
        .optional()
        .usual("22.5 V", "22.5 V")
        .help("Voc on the label.");
static VOC_PER_C: Ask =
    Ask::number("voc_per_c_percent", "Change of that voltage, % per °C", (-2.0, 2.0))
        .optional()
        .usual("-0.3", "-0.3")
        .help("In the data sheet, with a minus; without it the electrical code's table is used.");
static ISC: Ask =
    Ask::measure("isc", "Short-circuit current of each", &CURRENT, ["A", "A"], (0.01, 100.0))
        .optional()
        .usual("7 A", "7 A")
        .help("Isc on the label; for the wire and the fuse of a string.");
static VMP: Ask =
    Ask::measure("vmp", "Voltage at most power of each", &VOLTAGE, ["V", "V"], (0.1, 1000.0))
        .optional()
        .usual("18.5 V", "18.5 V")
        .help("Vmp on the label; for whether hot panels still charge.");
static MAX_SERIES_FUSE: Ask =
    Ask::measure("max_series_fuse", "Maximum series fuse", &CURRENT, ["A", "A"], (0.1, 200.0))
        .optional()
        .usual("15 A", "15 A")
        .help("On the label; no fuse of a string may be larger.");
static IN_SERIES: Ask = Ask::count("in_series", "Panels in series", (1, 100))
    .default("1")
    .usual("1", "1")
    .help("Joined plus to minus in one string.");
static PANEL_MASS: Ask = Ask::measure("mass", "Mass of each", &MASS, ["lb", "kg"], (0.0, 200.0))
    .optional()
    .usual("15 lb", "7 kg")
    .help("For the weight on the buy list: in the data sheet, brackets not counted.");
static PANELS: Ask = Ask::group(
    "panels",
    "Panels",
    &[&COUNT, &WATTS, &VOC, &VOC_PER_C, &ISC, &VMP, &MAX_SERIES_FUSE, &IN_SERIES, &PANEL_MASS],
);
static LOSS: Ask = Ask::percent("loss_percent", "Losses", (0.0, 99.0)).usual("20", "20").help(
    "Dirt, heat, cables and controller together: 14 % by the usual list, more flat on a hot roof.",
);
static NEED_WH: Ask =
    Ask::measure("need", "Needed in a day", &ENERGY, ["Wh", "Wh"], (3600.0, 3.6e9))
        .usual("770 Wh", "770 Wh")
        .help("What a day uses.");
static NEED_SHEET: Ask = Ask::sheet_of("sheet", "From the energy sheet", "energy")
    .help("Takes a day's use from there and follows it.");
static NEED: Ask = Ask::either("Needed in a day", &[&NEED_WH, &NEED_SHEET]).optional();
static COLDEST: Ask =
    Ask::measure("coldest", "Coldest morning", &TEMPERATURE, ["F", "C"], (213.15, 333.15))
        .optional()
        .usual("-4 F", "-20 C")
        .help("The lowest temperature that the panels will see in daylight.");
static CONTROLLER: Ask = Ask::measure(
    "controller_voltage",
    "Controller's highest voltage",
    &VOLTAGE,
    ["V", "V"],
    (1.0, 2000.0),
)
.optional()
.usual("75 V", "75 V")
.help("Most that its panel terminals take, on its label.");

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
}

fn read(reader: &Reader<'_>) -> Inputs {
    let site = Site {
        latitude: reader.measure(&LATITUDE),
        clearness: read_clearness(reader),
        ground_reflectance: GROUND_REFLECTANCE,
    };
    let plane = Plane { tilt: reader.measure(&TILT), azimuth: reader.measure(&AZIMUTH) };
    let (count, watts, mass, open_circuit, rule, in_series, [isc, vmp, most_fuse]) =
        reader.group(&PANELS, |group| {
            let (count, in_series) = (group.count(&COUNT), group.count(&IN_SERIES));
            let rule =
                group.maybe_number(&VOC_PER_C).map_or(ColdRule::Table, ColdRule::Coefficient);
            if matches!(rule, ColdRule::Coefficient(percent) if percent > 0.0) {
                group.fault_at(&VOC_PER_C, StringError::Coefficient.to_string());
            }
            if !group.has_faults() && in_series > count {
                group.fault_at(
                    &IN_SERIES,
                    text!("there are {} panels; no more than that can be in series", &count),
                );
            }
            let (watts, mass) = (group.number(&WATTS), group.maybe(&PANEL_MASS));
            let more = [&ISC, &VMP, &MAX_SERIES_FUSE].map(|ask| group.maybe_si(ask));
            (count, watts, mass, group.maybe(&VOC), rule, in_series, more)
        });
    let loss = reader.number(&LOSS) / 100.0;
    let mut store = None;
    let need = match reader.which(&NEED) {
        Some(0) => reader.maybe_si(&NEED_WH).map(Energy::new::<joule>),
        // That sheet may charge its battery from this one: its use does not hang on it.
        Some(_) => reader.sheet_if_ready(&NEED_SHEET).and_then(|outcome| {
            let need = outcome.number("wh_day").map(Energy::new::<watt_hour>);
            if need.is_none() {
                reader.fault_at(&NEED_SHEET, "this sheet gives no day's use; choose another");
            }
            store = Some(Store::of(&outcome));
            need
        }),
        None => None,
    };
    Inputs {
        site,
        plane,
        count,
        watts,
        mass,
        open_circuit,
        rule,
        in_series,
        short_circuit_a: isc,
        most_power_v: vmp,
        max_series_fuse_a: most_fuse,
        loss,
        need,
        current: controller::read(reader, store.as_ref()),
        store,
        roof: reader.maybe_group(&ROOF, roof::read),
        coldest: reader.maybe(&COLDEST),
        controller: reader.maybe(&CONTROLLER),
    }
}

/// One figure for all months, or twelve.
fn read_clearness(reader: &Reader<'_>) -> [f64; 12] {
    let given = reader.one_or_more_numbers(&CLEARNESS);
    match given.as_slice() {
        [one] => [*one; 12],
        [] => [0.5; 12],
        many => <[f64; 12]>::try_from(many).unwrap_or_else(|_| {
            reader.fault_at(
                &CLEARNESS,
                text!("give one figure for all months, or twelve; there are {}", many.len()),
            );
            [0.5; 12]
        }),
    }
}

fn solar_fault(error: SolarError) -> Vec<Fault> {
    let field = match error {
        SolarError::Latitude => "latitude".to_owned(),
        SolarError::Clearness(month) => text!("clearness.{}", &month),
        SolarError::GroundReflectance | SolarError::Tilt => "tilt".to_owned(),
        SolarError::Azimuth => "azimuth".to_owned(),
        SolarError::Power => "panels.watts".to_owned(),
        SolarError::Loss => "loss_percent".to_owned(),
    };
    vec![Fault::new(field, error.to_string())]
}

fn string_fault(error: StringError) -> Vec<Fault> {
    let field = match error {
        StringError::OpenCircuit => "panels.voc",
        StringError::Coefficient => "panels.voc_per_c_percent",
        StringError::Coldest | StringError::BelowTable => "coldest",
        StringError::InSeries => "panels.in_series",
        StringError::Controller => "controller_voltage",
    };
    vec![Fault::new(field, error.to_string())]
}

/// What was worked out.
struct Figures {
    months: [Month; 12],
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
    fn of(inputs: &Inputs) -> Result<Self, Vec<Fault>> {
        let months = months(&inputs.site, inputs.plane).map_err(solar_fault)?;
        let yields = months
            .iter()
            .map(|month| day_yield(month, inputs.rated(), inputs.loss))
            .collect::<Result<Vec<Energy>, SolarError>>()
            .map_err(solar_fault)?;
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

    /// Index of the month that brings least.
    fn least(&self) -> usize {
        let darkest = self.yields.iter().enumerate().min_by(|a, b| a.1.value.total_cmp(&b.1.value));
        darkest.map_or(0, |(index, _)| index)
    }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let figures = Figures::of(inputs)?;
    let records: Vec<Record> = figures
        .months
        .iter()
        .zip(&figures.yields)
        .map(|(month, energy)| {
            Record::new()
                .with("h0_mj_m2", month.h0_mj_m2)
                .with("h_mj_m2", month.level_mj_m2)
                .with("plane_mj_m2", month.plane_mj_m2)
                .with("wh_day", energy.get::<watt_hour>())
        })
        .collect();
    let mut steps = months::working(inputs, &figures);
    steps.extend(words::string_steps(inputs, &figures, style));
    let mut drawings = vec![months::bars(inputs, &figures)];
    let mut record = Record::new().with("months", records);
    if let (Some(roof), Some(layout)) = (&inputs.roof, &figures.layout) {
        steps.push(roof::step(roof, layout, style));
        drawings.push(roof::drawing(roof, layout, inputs.count, style));
        record = roof::record(layout, record);
    }
    Ok(Report {
        answers: words::answers(inputs, &figures),
        remarks: words::remarks(inputs, &figures, style),
        tables: std::iter::once(months::table(inputs, &figures))
            .chain(gap::table(inputs, &figures))
            .collect(),
        drawings,
        working: steps,
        cautions: Caution::all(&cautions::PANELS),
        buy: std::iter::once(
            BuyLine::pieces(
                LineId::shared(text!("solar-panel/{}w", plain(inputs.watts, 1))),
                "solar panel",
                amount(inputs.watts, 1, "W"),
                f64::from(inputs.count),
            )
            .mass(inputs.mass.map(|mass| mass * f64::from(inputs.count))),
        )
        .chain(controller::buy(inputs, &figures))
        .collect(),
        outcome: controller::record(inputs, &figures, record)
            .maybe("cold_voc_v", figures.cold.map(|cold| cold.panel.get::<volt>()))
            .maybe("string_v", figures.cold.map(|cold| cold.string.get::<volt>()))
            .maybe("within_controller", figures.within_controller)
            .maybe("most_in_series", figures.most_in_series.map(|most| most as usize))
            .maybe("table_voc_v", figures.by_table.map(|panel| panel.get::<volt>()))
            .maybe("string_wire_a", inputs.short_circuit_a.map(string_wire_a))
            .with("short", gap::records(&figures.short))
            .with("rated_w", inputs.rated().get::<watt>())
            .maybe("need_wh_day", inputs.need.map(|need| need.get::<watt_hour>())),
        ..Report::default()
    })
}

fn degrees(angle: Angle) -> String {
    text!("{}°", plain(angle.get::<degree>(), 2))
}
