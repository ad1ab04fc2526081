//! Heat to keep the body warm or cool: through its surfaces, with the fresh air, less what is given off inside.

use uom::si::f64::{Area, HeatTransfer, Power, ThermodynamicTemperature, VolumeRate};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::kelvin;

use super::bars::{self, Bar};
use super::{Sheet, solve};
use crate::ask::Ask;
use crate::drawing::{Drawing, Fill};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{AREA, FLOW, POWER, Style, TEMPERATURE, U_VALUE, UnitSystem, amount, plain};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report, Step, Table, TableRow};
use crate::source::Source;
use crate::thermal::cautions;
use crate::thermal::heat_loss::{
    AIR_WH_M3_K, BTU, FRESH_AIR, HeatLoad, HeatLoadError, Surface, TRANSMISSION, btu_per_hour,
    electrical_use, heat_load,
};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "heat_load",
    title: "Heater and cooler",
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
    .help("From an insulation sheet or a data sheet; single glass about 5.6 W/m2/K, bare steel 5.9.");
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
static GAINS: Ask = Ask::measure("gains", "Heat given off inside", &POWER, ["W", "W"], (0.0, 100_000.0))
    .default("0 W")
    .usual("150 W", "150 W")
    .help("A sleeper gives off about 70 W, a fridge what it draws; by day add the sun through the glass.");
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
    heat_load(
        &inputs.surfaces,
        inputs.fresh_air,
        weather.inside,
        weather.outside,
        weather.gains,
    )
    .map_err(|error| {
        let field = match error {
            HeatLoadError::Area(at) => format!("parts.{at}.area"),
            HeatLoadError::Transmittance(at) => {
                let key = if inputs.from_sheet.get(at) == Some(&true) { "sheet" } else { "u" };
                format!("parts.{at}.{key}")
            }
            HeatLoadError::FreshAir => "fresh_air".to_owned(),
            HeatLoadError::Inside => format!("{path}inside_temperature"),
            HeatLoadError::Outside => format!("{path}outside_temperature"),
            HeatLoadError::Gains => format!("{path}gains"),
        };
        vec![Fault::new(field, error.to_string())]
    })
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let night = load(inputs, &inputs.night, "")?;
    let noon =
        inputs.noon.as_ref().map(|noon| load(inputs, noon, "noon.")).transpose()?;
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
                .with("label", label(inputs, index))
                .with("heat_w", heat.get::<watt>())
        })
        .collect();
    let title = if noon.is_some() { "Coldest night" } else { "Heat balance" };
    let mut drawings = vec![picture(title, inputs, &inputs.night, &night, style)];
    if let (Some(weather), Some(load)) = (&inputs.noon, &noon) {
        drawings.push(picture("Hottest noon", inputs, weather, load, style));
    }
    Ok(Report {
        answers: answers(&night, noon.as_ref(), cooler, style),
        remarks: remarks(&night, noon.as_ref(), inputs, cooler, style),
        tables: vec![table(inputs, &night, noon.as_ref(), style)],
        drawings,
        working: working(inputs, &night, noon.as_ref(), cooler, style),
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

/// Watts, and Btu per hour first where heaters are sold so.
fn heat(power: Power, style: Style) -> String {
    let power = if power < Power::default() { -power } else { power };
    match style.system {
        UnitSystem::Imperial => btu(power),
        UnitSystem::Metric => watts(power),
    }
}

fn other_unit(power: Power, style: Style) -> String {
    let power = if power < Power::default() { -power } else { power };
    match style.system {
        UnitSystem::Imperial => watts(power),
        UnitSystem::Metric => btu(power),
    }
}

fn watts(power: Power) -> String {
    amount(power.get::<watt>(), 0, "W")
}

fn btu(power: Power) -> String {
    amount(btu_per_hour(power), 0, "Btu/h")
}

/// A heat flow with its sign, in the style's unit.
fn flow(power: Power, style: Style) -> String {
    match style.system {
        UnitSystem::Imperial => btu(power),
        UnitSystem::Metric => watts(power),
    }
}

fn answers(
    night: &HeatLoad,
    noon: Option<&HeatLoad>,
    cooler: Option<Power>,
    style: Style,
) -> Vec<Answer> {
    let size = |load: &HeatLoad, when: &str| {
        let label = match load.total < Power::default() {
            true => format!("Cooling {when}"),
            false => format!("Heating {when}"),
        };
        Answer::new(label, heat(load.total, style)).note(other_unit(load.total, style))
    };
    let mut answers = vec![size(night, "needed")];
    answers.extend(noon.map(|noon| size(noon, "needed at noon")));
    answers.extend(
        cooler.map(|power| Answer::new("The cooler draws", watts(power)).note("while it runs")),
    );
    answers
}

fn remarks(
    night: &HeatLoad,
    noon: Option<&HeatLoad>,
    inputs: &Inputs,
    cooler: Option<Power>,
    style: Style,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if inputs.fresh_air <= VolumeRate::default() {
        remarks.push(Remark::warning(
            "No fresh air is counted: whoever sleeps inside needs it. Count about 15 m³/h (9 cfm) each.",
        ));
    }
    let most = night
        .surfaces
        .iter()
        .enumerate()
        .filter(|(_, heat)| **heat > Power::default())
        .max_by(|a, b| a.1.value.total_cmp(&b.1.value));
    if let Some((index, most)) = most {
        let through: f64 =
            night.surfaces.iter().chain([&night.fresh_air]).map(|heat| heat.value).sum();
        if through > 0.0 {
            remarks.push(Remark::note(format!(
                "Most is lost through the {}: {}, {} of all.",
                label(inputs, index),
                heat(*most, style),
                amount(most.value / through * 100.0, 0, "%")
            )));
        }
    }
    remarks.push(Remark::note(
        "This keeps a warm body warm. To heat up a cold one in reasonable time, take a heater of \
         about half as much again.",
    ));
    if let Some(noon) = noon.filter(|noon| noon.total < Power::default()) {
        remarks.push(Remark::note(format!(
            "At noon count the sun as a gain; the {} leave out what a cooler spends on drying the air.",
            heat(noon.total, style)
        )));
    }
    if let Some(cooler) = cooler {
        remarks.push(Remark::note(format!(
            "Enter {} with its hours as a load on the energy sheet.",
            watts(cooler)
        )));
    }
    remarks
}

fn label(inputs: &Inputs, index: usize) -> String {
    match inputs.labels.get(index) {
        Some(label) if !label.is_empty() => label.clone(),
        _ => format!("part {}", index + 1),
    }
}

fn table(inputs: &Inputs, night: &HeatLoad, noon: Option<&HeatLoad>, style: Style) -> Table {
    let mut heads = vec!["Part".to_owned(), "Area".to_owned(), "U".to_owned(), "Night".to_owned()];
    if noon.is_some() {
        heads.push("Noon".to_owned());
    }
    let row = |name: String, area: String, u: String, pick: &dyn Fn(&HeatLoad) -> Power| {
        let mut cells = vec![name, area, u, flow(pick(night), style)];
        cells.extend(noon.map(|noon| flow(pick(noon), style)));
        TableRow { cells, chosen: false }
    };
    let mut rows: Vec<TableRow> = inputs
        .surfaces
        .iter()
        .enumerate()
        .map(|(index, surface)| {
            row(
                label(inputs, index),
                style.area(surface.area),
                style.u_value(surface.u.get::<watt_per_square_meter_kelvin>()),
                &|load| load.surfaces.get(index).copied().unwrap_or_default(),
            )
        })
        .collect();
    rows.push(row("fresh air".into(), String::new(), String::new(), &|load| load.fresh_air));
    rows.push(row("given off inside".into(), String::new(), String::new(), &|load| {
        load.total
            - load.fresh_air
            - load.surfaces.iter().fold(Power::default(), |sum, heat| sum + *heat)
    }));
    rows.push(row("to be supplied".into(), String::new(), String::new(), &|load| load.total));
    Table { title: "Heat out (with a minus: in)".into(), heads, rows }
}

fn working(
    inputs: &Inputs,
    night: &HeatLoad,
    noon: Option<&HeatLoad>,
    cooler: Option<Power>,
    style: Style,
) -> Vec<Step> {
    let mut steps = one_case("", inputs, &inputs.night, night, style);
    if let (Some(weather), Some(load)) = (&inputs.noon, noon) {
        steps.extend(one_case("At noon: ", inputs, weather, load, style));
        if let (Some(power), Some(performance)) = (cooler, inputs.performance) {
            steps.push(Step::new(
                "The cooler draws",
                "P = Q / COP",
                format!("{} / {}", watts(-load.total), plain(performance, 2)),
                watts(power),
                &PERFORMANCE_SOURCE,
            ));
        }
    }
    steps
}

fn one_case(
    when: &str,
    inputs: &Inputs,
    weather: &Weather,
    load: &HeatLoad,
    style: Style,
) -> Vec<Step> {
    let difference = style.temperature_difference(weather.kelvin());
    let mut steps: Vec<Step> = inputs
        .surfaces
        .iter()
        .zip(&load.surfaces)
        .enumerate()
        .map(|(index, (surface, heat))| {
            Step::new(
                format!("{when}{}", label(inputs, index)),
                "Q = U · A · (θi − θe)",
                format!(
                    "{} · {} · {difference}",
                    style.u_value(surface.u.get::<watt_per_square_meter_kelvin>()),
                    style.area(surface.area)
                ),
                flow(*heat, style),
                &TRANSMISSION,
            )
        })
        .collect();
    steps.push(Step::new(
        format!("{when}fresh air"),
        "Q = c · V · (θi − θe)",
        format!(
            "{} · {} · {difference}",
            amount(AIR_WH_M3_K, 3, "Wh/(m³ K)"),
            style.air_flow(inputs.fresh_air.value)
        ),
        flow(load.fresh_air, style),
        &FRESH_AIR,
    ));
    let through = load.surfaces.iter().fold(Power::default(), |sum, heat| sum + *heat);
    steps.push(Step::new(
        format!("{when}to be supplied"),
        "Q = Σ Q_parts + Q_air − gains",
        format!(
            "{} + {} − {}",
            flow(through, style),
            flow(load.fresh_air, style),
            flow(weather.gains, style)
        ),
        flow(load.total, style),
        &TRANSMISSION,
    ));
    steps.push(Step::new(
        format!("{when}in the other unit"),
        "1 W = 3.412 Btu/h",
        watts(load.total),
        btu(load.total),
        &BTU,
    ));
    steps
}

fn picture(
    title: &str,
    inputs: &Inputs,
    weather: &Weather,
    load: &HeatLoad,
    style: Style,
) -> Drawing {
    let inside = style.temperature(weather.inside);
    let outside = style.temperature(weather.outside);
    let mut drawing = Drawing::new(
        format!("{title}: {inside} inside, {outside} outside"),
        format!(
            "Bars for the heat that leaves through each part, {} to be supplied.",
            flow(load.total, style)
        ),
    );
    let bar = |name: String, power: Power, fill| Bar {
        text: format!("{name} · {}", flow(power, style)),
        value: power.get::<watt>(),
        fill,
    };
    let mut bars: Vec<Bar> = load
        .surfaces
        .iter()
        .enumerate()
        .map(|(index, power)| bar(label(inputs, index), *power, Fill::Level(2)))
        .collect();
    bars.push(bar("fresh air".into(), load.fresh_air, Fill::Level(1)));
    if weather.gains > Power::default() {
        bars.push(bar("given off inside".into(), -weather.gains, Fill::Waste));
    }
    let name = if load.total < Power::default() { "to be cooled" } else { "to be heated" };
    bars.push(bar(name.into(), load.total, Fill::Stock));
    bars::draw(&mut drawing, &bars, 0.0);
    drawing
}

#[cfg(test)]
mod tests {
    use crate::testing::{faulty_fields, number, solved};
    use serde_json::{Value as Json, json};

    fn body(parts: Json, fresh_air: &str, inside: &str, outside: &str) -> Json {
        json!({ "parts": parts, "fresh_air": fresh_air, "inside_temperature": inside, "outside_temperature": outside })
    }

    fn close(found: f64, wanted: f64, within: f64) {
        assert!((found - wanted).abs() < within, "{found} is not {wanted}");
    }

    // Plain arithmetic of the definitions: 20 m² of 0.7 at 25 K are 350 W or 1194.25 Btu/h; 15 m³/h at 25 K are
    // 125.625 W; 7.5 m² of 1.2 at 20 K are 180 W or 614.185 Btu/h.
    #[test]
    fn transmission_and_fresh_air() {
        let wall = json!([{ "label": "wall", "area": "20 m2", "u": "0.7 W/m2/K" }]);
        let still = solved("heat_load", body(wall.clone(), "0 m3/h", "20 C", "-5 C"));
        close(number(&still, "heat_w"), 350.0, 1e-9);
        close(number(&still, "heat_btu_h"), 1194.25, 1e-3);
        let aired = solved("heat_load", body(wall, "15 m3/h", "20 C", "-5 C"));
        close(number(&aired, "heat_w"), 475.625, 1e-9);
        close(number(&aired, "fresh_air_w"), 125.625, 1e-9);
        close(number(&aired, "parts.0.heat_w"), 350.0, 1e-9);
        let floor = json!([{ "area": "7.5 m2", "u": "1.2 W/m2/K" }]);
        let floor = solved("heat_load", body(floor, "0 m3/h", "20 C", "0 C"));
        close(number(&floor, "heat_btu_h"), 614.185, 1e-3);
    }

    #[test]
    fn cooling_is_negative_and_gains_add_to_it() {
        let mut inputs =
            body(json!([{ "area": "10 m2", "u": "1 W/m2/K" }]), "0 m3/h", "25 C", "35 C");
        inputs["gains"] = json!("300 W");
        inputs["noon"] = json!({ "inside_temperature": "26 C", "outside_temperature": "36 C", "gains": "900 W" });
        inputs["performance"] = json!(2.5);
        let result = solved("heat_load", inputs);
        close(number(&result, "heat_w"), -400.0, 1e-9);
        close(number(&result, "noon_w"), -1000.0, 1e-9);
        close(number(&result, "cooler_w"), 400.0, 1e-9);
    }

    #[test]
    fn a_part_takes_its_u_value_from_an_insulation_sheet() {
        let u = number(&solved("insulation", serde_json::from_str(crate::sheet::insulation::SHEET.example).unwrap()), "u_w_m2k");
        let parts = json!([{ "area": "2 m2", "sheet": "insulation" }]);
        let result = solved("heat_load", body(parts, "0 m3/h", "20 C", "10 C"));
        close(number(&result, "heat_w"), u * 20.0, 1e-9);
        let parts = json!([{ "area": "2 m2", "sheet": "water" }, { "area": "2 m2", "sheet": "none" },
            { "area": "1 m2" }, { "area": "1 m2", "u": "1 W/m2/K", "sheet": "insulation" }]);
        let result = solved("heat_load", body(parts, "0", "20 C", "10 C"));
        assert_eq!(
            faulty_fields(&result),
            ["parts.0.sheet", "parts.1.sheet", "parts.2.u", "parts.3.sheet", "fresh_air"]
        );
    }
}
