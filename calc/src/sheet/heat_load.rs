//! Heat to keep the body warm or cool: through its surfaces, with the fresh air, less what is given off inside.

mod parts;
#[cfg(test)]
mod tests;
mod words;

use crate::text::text;
use uom::si::area::square_meter;
use uom::si::f64::{Power, ThermodynamicTemperature, VolumeRate};
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::kelvin;

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{FLOW, POWER, Style, TEMPERATURE};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::thermal::cautions;
use crate::thermal::heat_loss::{
    BTU, FRESH_AIR, HeatLoad, HeatLoadError, SOLAR_GAIN, Surface, TRANSMISSION, btu_per_hour,
    electrical_use, heat_load,
};
use crate::words::Phrase;
use parts::{PARTS, Part, SUN, SURFACES, WINDOWS};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "heat_load",
    title: Phrase::Written("Heater and cooler"),
    trade: Phrase::Written("Living in it"),
    purpose: Phrase::Written(
        "See how much heat it takes to keep the body warm on the coldest night, and cool at the hottest noon.",
    ),
    asks: &[
        &SURFACES,
        &WINDOWS,
        &PARTS,
        &FRESH_AIR_ASK,
        &INSIDE,
        &OUTSIDE,
        &GAINS,
        &HEATER,
        &NOON,
        &SUN,
        &PERFORMANCE,
    ],
    sources: &[
        &TRANSMISSION,
        &FRESH_AIR,
        &BTU,
        &SOLAR_GAIN,
        &parts::SUN_ON_GLASS,
        &parts::GLASS,
        &PERFORMANCE_SOURCE,
        &AIR_EACH,
        &HEAT_UP,
    ],
    example: r#"{ "surfaces": { "walls": "insulation" },
        "windows": [
            { "label": "windshield", "area": "1.6 m2", "u": "3 W/m2/K", "sun_percent": 15, "lit_percent": 100 },
            { "label": "side windows", "area": "2.6 m2", "u": "5.6 W/m2/K" } ],
        "fresh_air": "30 m3/h", "inside_temperature": "18 C", "outside_temperature": "-5 C", "gains": "150 W",
        "heater": { "output": "2 kW", "draw": "30 W" },
        "noon": { "inside_temperature": "26 C", "outside_temperature": "36 C", "gains": "250 W" },
        "performance": 2.8 }"#,
    solve: |reader| solve(reader, read, report),
};

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
    "A sleeper gives off about 70 W, a fridge what it draws; the sun through windows is added below.",
);
static NOON: Ask = Ask::group("noon", "The hottest noon, beside it", &[&INSIDE, &OUTSIDE, &GAINS])
    .optional()
    .help("Fill in to size a cooler too.");
static HEATER_OUTPUT: Ask =
    Ask::measure("output", "Heat it gives at most", &POWER, ["W", "W"], (1.0, 100_000.0))
        .usual("2000 W", "2000 W")
        .help("On its label; 1 kW is 3412 Btu/h.");
static HEATER_DRAW: Ask =
    Ask::measure("draw", "Electricity it draws", &POWER, ["W", "W"], (0.0, 100_000.0))
        .usual("30 W", "30 W")
        .help("Fan and pump of a fuel heater at full heat; an electric heater draws all its heat.");
static HEATER: Ask =
    Ask::group("heater", "The heater you have in mind", &[&HEATER_OUTPUT, &HEATER_DRAW]).optional();
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
    parts: Vec<Part>,
    fresh_air: VolumeRate,
    night: Weather,
    noon: Option<Weather>,
    /// Sun through the windows, a part of the noon's gains.
    sun: Power,
    heater: Option<Heater>,
    performance: Option<f64>,
}

/// A heater: most heat, and what it draws meanwhile.
struct Heater {
    output: Power,
    draw: Power,
}

impl Heater {
    /// Share of the time that it runs to hold a heat load; 1 where it is too small.
    fn duty(&self, load: Power) -> f64 {
        (load / self.output).value.clamp(0.0, 1.0)
    }
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
    let (parts, sun) = parts::read(reader);
    let mut noon = reader.maybe_group(&NOON, Weather::read);
    if let Some(noon) = &mut noon {
        noon.gains += sun;
    }
    Inputs {
        parts,
        fresh_air: reader.measure(&FRESH_AIR_ASK),
        night: Weather::read(reader),
        noon,
        sun,
        heater: reader.maybe_group(&HEATER, |group| Heater {
            output: group.measure(&HEATER_OUTPUT),
            draw: group.measure(&HEATER_DRAW),
        }),
        performance: reader.maybe_number(&PERFORMANCE),
    }
}

fn load(inputs: &Inputs, weather: &Weather, path: &str) -> Result<HeatLoad, Vec<Fault>> {
    let surfaces: Vec<Surface> = inputs.parts.iter().map(|part| part.surface).collect();
    heat_load(&surfaces, inputs.fresh_air, weather.inside, weather.outside, weather.gains).map_err(
        |error| {
            let part = |at: usize, field: usize| {
                inputs.parts.get(at).map_or_else(String::new, |part| part.fields[field].clone())
            };
            let field = match error {
                HeatLoadError::Area(at) => part(at, 0),
                HeatLoadError::Transmittance(at) => part(at, 1),
                HeatLoadError::FreshAir => "fresh_air".to_owned(),
                HeatLoadError::Inside => text!("{}inside_temperature", &path),
                HeatLoadError::Outside => text!("{}outside_temperature", &path),
                HeatLoadError::Gains => text!("{}gains", &path),
            };
            vec![Fault::new(field, error.to_string())]
        },
    )
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
                .maybe(
                    "area_m2",
                    inputs.parts.get(index).map(|part| part.surface.area.get::<square_meter>()),
                )
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
            .maybe("sun_w", noon.as_ref().map(|_| inputs.sun.get::<watt>()))
            .maybe("cooler_w", cooler.map(|power| power.get::<watt>()))
            .maybe("heater_draw_w", inputs.heater.as_ref().map(|heater| heater.draw.get::<watt>()))
            .maybe(
                "heater_duty_percent",
                inputs.heater.as_ref().map(|heater| 100.0 * heater.duty(night.total)),
            ),
        ..Report::default()
    })
}
