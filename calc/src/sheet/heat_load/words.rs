//! What is said about a heat load: answers, remarks, table, working, and the bars.

use crate::text::text;
use uom::si::f64::{Power, VolumeRate};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;

use super::super::bars::{self, Bar};
use super::{Inputs, PERFORMANCE_SOURCE, Weather};
use crate::drawing::{Drawing, Fill};
use crate::quantity::{Style, UnitSystem, amount, plain};
use crate::report::{Answer, Remark, Step, Table, TableRow};
use crate::thermal::heat_loss::{
    AIR_WH_M3_K, BTU, FRESH_AIR, HeatLoad, SOLAR_GAIN, TRANSMISSION, air_density_share,
    btu_per_hour,
};

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

pub(super) fn answers(
    night: &HeatLoad,
    noon: Option<&HeatLoad>,
    cooler: Option<Power>,
    style: Style,
) -> Vec<Answer> {
    let size = |load: &HeatLoad, when: &str| {
        let label = match load.total < Power::default() {
            true => text!("Cooling {}", &when),
            false => text!("Heating {}", &when),
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

pub(super) fn remarks(
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
            remarks.push(Remark::note(text!(
                "Most is lost through the {}: {}, {} of all.",
                label(inputs, index),
                heat(*most, style),
                amount(most.value / through * 100.0, 0, "%")
            )));
        }
    }
    if let Some(heater) = &inputs.heater {
        let share = amount(heater.duty(night.total) * 100.0, 0, "%");
        if night.total > heater.output {
            remarks.insert(0, Remark::warning(text!(
                "The heater gives {} at most and cannot hold {}: a larger one, more insulation, or less glass.",
                heat(heater.output, style),
                heat(night.total, style)
            )));
        } else if night.total > Power::default() {
            remarks.push(Remark::note(text!(
                "On the coldest night the heater runs {} of the time and draws {} meanwhile: the energy sheet takes both from here.",
                &share,
                watts(heater.draw)
            )));
        }
    }
    let denser = air_density_share(inputs.night.outside);
    if denser > 1.03 && inputs.fresh_air > VolumeRate::default() {
        remarks.push(Remark::note(text!(
            "Fresh air counts as 1.2 kg/m³, as it leaves a warm room. Where its flow is measured in the cold outside it is {} denser, and takes that much more heat.",
            amount((denser - 1.0) * 100.0, 0, "%")
        )));
    }
    remarks.push(Remark::note(
        "This keeps a warm body warm. To heat up a cold one in reasonable time, take a heater of \
         about half as much again.",
    ));
    if let Some(noon) = noon.filter(|noon| noon.total < Power::default()) {
        remarks.push(Remark::warning(text!("The {} at noon leave out the sun on roof and walls and what a cooler spends on drying the air: both are loads. Add the sun on the roof to the heat given off inside (about 150 W for a white roof to 450 W for a dark one of 10 m² with some insulation, a rule of thumb), and take a cooler with room to spare.", heat(noon.total, style))));
        if inputs.noon.as_ref().is_some_and(|noon| noon.gains - inputs.sun <= Power::default()) {
            remarks.push(Remark::note(
                "At noon nothing is counted for people and devices inside: a person gives off about 70 W.",
            ));
        }
    }
    if let Some(cooler) = cooler {
        remarks.push(Remark::note(text!(
            "The energy sheet takes the cooler's {} from here; its hours are given there.",
            watts(cooler)
        )));
    }
    remarks
}

pub(super) fn label(inputs: &Inputs, index: usize) -> String {
    inputs.parts.get(index).map_or_else(String::new, |part| part.label.clone())
}

pub(super) fn table(
    inputs: &Inputs,
    night: &HeatLoad,
    noon: Option<&HeatLoad>,
    style: Style,
) -> Table {
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
        .parts
        .iter()
        .map(|part| &part.surface)
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

pub(super) fn working(
    inputs: &Inputs,
    night: &HeatLoad,
    noon: Option<&HeatLoad>,
    cooler: Option<Power>,
    style: Style,
) -> Vec<Step> {
    let mut steps = one_case("", inputs, &inputs.night, night, style);
    if let (Some(weather), Some(load)) = (&inputs.noon, noon) {
        if inputs.sun > Power::default() {
            steps.push(Step::new(
                "At noon: sun through the windows, a part of what is given off",
                "Q = Σ A · g · f · I",
                "each window: area, share let in, share in the sun, sun on it",
                flow(inputs.sun, style),
                &SOLAR_GAIN,
            ));
        }
        steps.extend(one_case("At noon: ", inputs, weather, load, style));
        if let (Some(power), Some(performance)) = (cooler, inputs.performance) {
            steps.push(Step::new(
                "The cooler draws",
                "P = Q / COP",
                text!("{} / {}", watts(-load.total), plain(performance, 2)),
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
        .parts
        .iter()
        .map(|part| &part.surface)
        .zip(&load.surfaces)
        .enumerate()
        .map(|(index, (surface, heat))| {
            Step::new(
                text!("{}{}", &when, label(inputs, index)),
                "Q = U · A · (θi − θe)",
                text!(
                    "{} · {} · {}",
                    style.u_value(surface.u.get::<watt_per_square_meter_kelvin>()),
                    style.area(surface.area),
                    &difference
                ),
                flow(*heat, style),
                &TRANSMISSION,
            )
        })
        .collect();
    steps.push(Step::new(
        text!("{}fresh air", &when),
        "Q = c · V · (θi − θe)",
        text!(
            "{} · {} · {}",
            amount(AIR_WH_M3_K, 3, "Wh/(m³ K)"),
            style.air_flow(inputs.fresh_air.value),
            &difference
        ),
        flow(load.fresh_air, style),
        &FRESH_AIR,
    ));
    let through = load.surfaces.iter().fold(Power::default(), |sum, heat| sum + *heat);
    steps.push(Step::new(
        text!("{}to be supplied", &when),
        "Q = Σ Q_parts + Q_air − gains",
        text!(
            "{} + {} − {}",
            flow(through, style),
            flow(load.fresh_air, style),
            flow(weather.gains, style)
        ),
        flow(load.total, style),
        &TRANSMISSION,
    ));
    steps.push(Step::new(
        text!("{}in the other unit", &when),
        "1 W = 3.412 Btu/h",
        watts(load.total),
        btu(load.total),
        &BTU,
    ));
    steps
}

pub(super) fn picture(
    title: &str,
    inputs: &Inputs,
    weather: &Weather,
    load: &HeatLoad,
    style: Style,
) -> Drawing {
    let inside = style.temperature(weather.inside);
    let outside = style.temperature(weather.outside);
    let mut drawing = Drawing::new(
        text!("{}: {} inside, {} outside", &title, &inside, &outside),
        text!(
            "Bars for the heat that leaves through each part, {} to be supplied.",
            flow(load.total, style)
        ),
    );
    let bar = |name: String, power: Power, fill| Bar {
        text: text!("{} · {}", &name, flow(power, style)),
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
