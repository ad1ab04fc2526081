//! Heat to keep the body warm or cool: through its surfaces, with the fresh air, less what is given off inside.

#[cfg(test)]
mod tests;
mod words;

use crate::text::text;
use uom::si::f64::{Area, HeatTransfer, Power, ThermodynamicTemperature, VolumeRate};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::kelvin;

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{AREA, FLOW, POWER, Style, TEMPERATURE, U_VALUE};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::thermal::cautions;
use crate::thermal::heat_loss::{
    BTU, FRESH_AIR, HeatLoad, HeatLoadError, Surface, TRANSMISSION, btu_per_hour, electrical_use,
    heat_load,
};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "heat_load",
    title: "Heater and cooler",
    trade: "Living in it",
    purpose: "See how much heat it takes to keep the body warm on the coldest night, and cool at the hottest noon.",
    asks: &[&PARTS, &FRESH_AIR_ASK, &INSIDE, &OUTSIDE, &GAINS, &NOON, &PERFORMANCE],
    sources: &[&TRANSMISSION, &FRESH_AIR, &BTU, &PERFORMANCE_SOURCE, &AIR_EACH, &HEAT_UP],
    example: r#"{ "parts": [
            { "label": "walls", "area": "26 m2", "sheet": "insulation" },
            { "label": "roof", "area": "11.3 m2", "sheet": "insulation" },
            { "label": "floor", "area": "11.3 m2", "u": "1.08 W/m2/K" },
            { "label": "windows and windshield", "area": "4.2 m2", "u": "5.6 W/m2/K" } ],
        "fresh_air": "30 m3/h", "inside_temperature": "18 C", "outside_temperature": "-5 C", "gains": "150 W",
        "noon": { "inside_temperature": "26 C", "outside_temperature": "36 C", "gains": "700 W" }, "performance": 2.8 }"#,
    solve: |reader| solve(reader, read, report),
};

static LABEL: Ask = Ask::words("label", "Part of the body").usual("roof", "roof");
static PART_AREA: Ask = Ask::measure("area", "Area", &AREA, ["ft2", "m2"], (0.0, 10_000.0))
    .usual("120 ft2", "11 m2")
    .help("Length times height or width, inside.");
static U: Ask = Ask::measure("u", "U value", &U_VALUE, ["Btu/(h ft2 F)", "W/m2/K"], (0.0, 20.0))
    .usual("0.16 Btu/(h ft2 F)", "0.9 W/m2/K")
    .help(
        "From an insulation sheet or a data sheet; single glass about 5.6 W/m2/K, bare steel 5.9.",
    );
static SHEET_ASK: Ask = Ask::sheet_of("sheet", "Insulation sheet", "insulation")
    .help("Takes the U value from there and follows it.");
static U_OR_SHEET: Ask = Ask::either("U value", &[&U, &SHEET_ASK]);
static PARTS: Ask =
    Ask::rows("parts", "Parts of the body", "part", 1, &[&LABEL, &PART_AREA, &U_OR_SHEET])
        .help("Roof, floor, walls and windows, each with its own U value.");
static FRESH_AIR_ASK: Ask =
    Ask::measure("fresh_air", "Fresh air", &FLOW, ["cfm", "m3/h"], (0.0, 10_000.0 / 3600.0))
        .usual("18 cfm", "30 m3/h")
        .help("15 m3/h (9 cfm) for each sleeper; more while you cook.");
static INSIDE: Ask = Ask::measure(
    "inside_temperature",
    "Temperature inside",
    &TEMPERATURE,
    ["F", "C"],
    (213.15, 353.15),
)
.usual("64 F", "18 C")
.help("As warm as you want it on that night.");
static OUTSIDE: Ask = Ask::measure(
    "outside_temperature",
    "Temperature outside",
    &TEMPERATURE,
    ["F", "C"],
    (213.15, 353.15),
)
.usual("23 F", "-5 C")
.help("The coldest night that you will stay in it.");
static GAINS: Ask = Ask::measure(
    "gains",
    "Heat given off inside",
    &POWER,
    ["W", "W"],
    (0.0, 100_000.0),
)
.default("0 W")
.usual("150 W", "150 W")
.help(
    "A sleeper gives off about 70 W, a fridge what it draws; by day add the sun through the glass.",
);
static NOON: Ask = Ask::group("noon", "The hottest noon, beside it", &[&INSIDE, &OUTSIDE, &GAINS])
    .optional()
    .help("Fill in to size a cooler too.");
static PERFORMANCE: Ask =
    Ask::number("performance", "Cooler's coefficient of performance", (0.5, 10.0))
        .optional()
        .usual("2.8", "2.8")
        .help("Cooling power over power drawn, from its data sheet; an EER divided by 3.412.");

/// What a cooler draws.
static PERFORMANCE_SOURCE: Source =
    Source::identity("power drawn is heat moved over the coefficient of performance");

/// How much fresh air a sleeper needs.
static AIR_EACH: Source = Source::common_practice("15 m³/h of fresh air for each sleeper");
/// How much larger a heater is taken than what it holds.
static HEAT_UP: Source = Source::common_practice("half as much again to heat up a cold body");

/// What was typed, read.
struct Inputs {
    labels: Vec<String>,
    /// Whether each part's U value comes from another sheet.
    from_sheet: Vec<bool>,
    surfaces: Vec<Surface>,
    fresh_air: VolumeRate,
    night: Weather,
    noon: Option<Weather>,
    performance: Option<f64>,
}

/// The temperatures of one case.
struct Weather {
    inside: ThermodynamicTemperature,
    outside: ThermodynamicTemperature,
    gains: Power,
}

impl Weather {
    fn read(reader: &Reader<'_>) -> Self {
        Self {
            inside: reader.measure(&INSIDE),
            outside: reader.measure(&OUTSIDE),
            gains: reader.measure(&GAINS),
        }
    }

    fn kelvin(&self) -> f64 {
        self.inside.get::<kelvin>() - self.outside.get::<kelvin>()
    }
}

fn read(reader: &Reader<'_>) -> Inputs {
    let rows = reader.rows(&PARTS, |row| {
        let area: Area = row.measure(&PART_AREA);
        let which = row.which(&U_OR_SHEET);
        let u = match which {
            Some(0) => row.measure(&U),
            Some(_) => row.sheet(&SHEET_ASK).map_or_else(HeatTransfer::default, |outcome| {
                match outcome.number("u_w_m2k") {
                    Some(u) => HeatTransfer::new::<watt_per_square_meter_kelvin>(u),
                    None => {
                        row.fault_at(&SHEET_ASK, "this sheet gives no U value; choose another");
                        HeatTransfer::default()
                    }
                }
            }),
            None => HeatTransfer::default(),
        };
        (row.words(&LABEL), which == Some(1), Surface { area, u })
    });
    Inputs {
        labels: rows.iter().map(|(label, ..)| label.clone()).collect(),
        from_sheet: rows.iter().map(|(_, from, _)| *from).collect(),
        surfaces: rows.iter().map(|(.., surface)| *surface).collect(),
        fresh_air: reader.measure(&FRESH_AIR_ASK),
        night: Weather::read(reader),
        noon: reader.maybe_group(&NOON, Weather::read),
        performance: reader.maybe_number(&PERFORMANCE),
    }
}

fn load(inputs: &Inputs, weather: &Weather, path: &str) -> Result<HeatLoad, Vec<Fault>> {
    heat_load(&inputs.surfaces, inputs.fresh_air, weather.inside, weather.outside, weather.gains)
        .map_err(|error| {
            let field = match error {
                HeatLoadError::Area(at) => text!("parts.{}.area", &at),
                HeatLoadError::Transmittance(at) => {
                    let key = if inputs.from_sheet.get(at) == Some(&true) { "sheet" } else { "u" };
                    text!("parts.{}.{}", &at, &key)
                }
                HeatLoadError::FreshAir => "fresh_air".to_owned(),
                HeatLoadError::Inside => text!("{}inside_temperature", &path),
                HeatLoadError::Outside => text!("{}outside_temperature", &path),
                HeatLoadError::Gains => text!("{}gains", &path),
            };
            vec![Fault::new(field, error.to_string())]
        })
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let night = load(inputs, &inputs.night, "")?;
    let noon = inputs.noon.as_ref().map(|noon| load(inputs, noon, "noon.")).transpose()?;
    let cooler = noon
        .as_ref()
        .filter(|load| load.total < Power::default())
        .and_then(|load| electrical_use(load.total, inputs.performance?));
    let parts: Vec<Record> = night
        .surfaces
        .iter()
        .enumerate()
        .map(|(index, heat)| {
            Record::new()
                .with("label", words::label(inputs, index))
                .with("heat_w", heat.get::<watt>())
        })
        .collect();
    let title = if noon.is_some() { "Coldest night" } else { "Heat balance" };
    let mut drawings = vec![words::picture(title, inputs, &inputs.night, &night, style)];
    if let (Some(weather), Some(load)) = (&inputs.noon, &noon) {
        drawings.push(words::picture("Hottest noon", inputs, weather, load, style));
    }
    Ok(Report {
        answers: words::answers(&night, noon.as_ref(), cooler, style),
        remarks: words::remarks(&night, noon.as_ref(), inputs, cooler, style),
        tables: vec![words::table(inputs, &night, noon.as_ref(), style)],
        drawings,
        working: words::working(inputs, &night, noon.as_ref(), cooler, style),
        cautions: Caution::all(&cautions::HEATING),
        outcome: Record::new()
            .with("heat_w", night.total.get::<watt>())
            .with("heat_btu_h", btu_per_hour(night.total))
            .with("parts", parts)
            .with("fresh_air_w", night.fresh_air.get::<watt>())
            .maybe("noon_w", noon.as_ref().map(|noon| noon.total.get::<watt>()))
            .maybe("noon_btu_h", noon.as_ref().map(|noon| btu_per_hour(noon.total)))
            .maybe("cooler_w", cooler.map(|power| power.get::<watt>())),
        ..Report::default()
    })
}
