//! Heat to keep the body warm or cool: through its surfaces, with the fresh air, less what is given off inside.

mod balance;
mod parts;
#[cfg(test)]
mod tests;

use calc_derive::{Inputs, Outcome};
use uom::si::f64::{Area, Power, ThermodynamicTemperature, VolumeRate};

use super::Sheet;
use crate::formula::Formula;
use crate::handoff::Handed;
use crate::outcome::Outcome;
use crate::quantity::{Style, UnitSystem, amount};
use crate::reader::Reader;
use crate::report::{Answer, Caution, Remark, Report};
use crate::sheet::handoffs::{Drawn, HeaterDrawn, Load};
use crate::source::Source;
use crate::text::text;
use crate::thermal::cautions;
use crate::thermal::heat_loss::{
    AirHeat, BTU, Balance, CoolerDraw, FRESH_AIR, HeatLoad, HeatLoadError, PERFORMANCE, SOLAR_GAIN,
    SolarGain, Surface, TRANSMISSION, Transmission, air_density_share, btu_per_hour,
    electrical_use, heat_load,
};
use crate::words::{Arg, Msg, Phrase, common, energy as energy_words, heat_load as words};
use parts::{OwnPart, Part, Surfaces, Window};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "heat_load",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_LIVING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[
        &TRANSMISSION,
        &FRESH_AIR,
        &BTU,
        &SOLAR_GAIN,
        &parts::SUN_ON_GLASS,
        &parts::GLASS,
        &PERFORMANCE,
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
    ahead: None,
    solve: |reader| super::tried(reader, Typed::read, solve, show),
};

/// What is asked.
#[derive(Inputs)]
#[words(heat_load)]
struct Inputs {
    #[ask(group, default(""))]
    surfaces: Option<Surfaces>,
    #[ask(rows(0), optional())]
    windows: Vec<Window>,
    #[ask(rows(0), optional())]
    parts: Vec<OwnPart>,
    #[ask(units("cfm", "m3/h"), range(0.0, 10_000.0 / 3600.0), usual("18 cfm", "30 m3/h"))]
    fresh_air: VolumeRate,
    #[ask(units("F", "C"), range(213.15, 353.15), usual("64 F", "18 C"))]
    inside_temperature: ThermodynamicTemperature,
    #[ask(units("F", "C"), range(213.15, 353.15), usual("23 F", "-5 C"))]
    outside_temperature: ThermodynamicTemperature,
    #[ask(units("W", "W"), range(0.0, 100_000.0), default("0 W"), usual("150 W", "150 W"))]
    gains: Power,
    #[ask(group, no_help)]
    heater: Option<Heater>,
    #[ask(group)]
    noon: Option<Weather>,
    #[ask(unit("W/m²"), range(0.0, 1400.0), default("600"), usual("600", "600"))]
    sun_w_m2: f64,
    #[ask(range(0.5, 10.0), usual("2.8", "2.8"))]
    performance: Option<f64>,
}

/// The temperatures of one case.
#[derive(Clone, Copy, Inputs)]
#[words(heat_load)]
struct Weather {
    #[ask(units("F", "C"), range(213.15, 353.15), usual("64 F", "18 C"))]
    inside_temperature: ThermodynamicTemperature,
    #[ask(units("F", "C"), range(213.15, 353.15), usual("23 F", "-5 C"))]
    outside_temperature: ThermodynamicTemperature,
    #[ask(units("W", "W"), range(0.0, 100_000.0), default("0 W"), usual("150 W", "150 W"))]
    gains: Power,
}

/// A heater: most heat, and what it draws meanwhile.
#[derive(Inputs)]
#[words(heat_load)]
struct Heater {
    #[ask(units("W", "W"), range(1.0, 100_000.0), usual("2000 W", "2000 W"))]
    output: Power,
    #[ask(units("W", "W"), range(0.0, 100_000.0), usual("30 W", "30 W"))]
    draw: Power,
}

impl Heater {
    /// Share of the time that it runs to hold a heat load; 1 where it is too small.
    fn duty(&self, load: Power) -> f64 {
        (load / self.output).value.clamp(0.0, 1.0)
    }
}

/// How much fresh air a sleeper needs.
static AIR_EACH: Source = Source::practice_of(words::SOURCE_AIR_EACH);
/// How much larger a heater is taken than what it holds.
static HEAT_UP: Source = Source::practice_of(words::SOURCE_HEAT_UP);

/// What was typed, read.
struct Typed {
    inputs: Inputs,
    parts: Vec<Part>,
    night: Weather,
    /// The sun through each window at noon.
    sun: Vec<(Arg, SolarGain)>,
}

impl Typed {
    fn read(reader: &Reader<'_>) -> Self {
        let inputs = Inputs::read(reader);
        let parts = parts::read(&inputs, reader);
        let night = Weather {
            inside_temperature: inputs.inside_temperature,
            outside_temperature: inputs.outside_temperature,
            gains: inputs.gains,
        };
        let sun = parts::sun(&inputs, &parts);
        Self { inputs, parts, night, sun }
    }

    fn all_sun(&self) -> Power {
        self.sun.iter().fold(Power::default(), |all, (_, gain)| all + gain.value())
    }

    /// The heat load of one case; its inputs stand below `path`.
    fn load(&self, weather: &Weather, path: &str) -> Result<HeatLoad, (String, Msg)> {
        let surfaces: Vec<Surface> = self.parts.iter().map(|part| part.surface).collect();
        let Weather { inside_temperature, outside_temperature, gains } = *weather;
        let flow = self.inputs.fresh_air;
        heat_load(&surfaces, flow, inside_temperature, outside_temperature, gains).map_err(
            |error| {
                let part = |at: usize, field: usize| {
                    self.parts.get(at).map_or_else(String::new, |part| part.fields[field].clone())
                };
                let field = match error {
                    HeatLoadError::Area(at) => part(at, 0),
                    HeatLoadError::Transmittance(at) => part(at, 1),
                    HeatLoadError::FreshAir => Inputs::FRESH_AIR.key.to_owned(),
                    HeatLoadError::Inside => text!("{}{}", path, Inputs::INSIDE_TEMPERATURE.key),
                    HeatLoadError::Outside => text!("{}{}", path, Inputs::OUTSIDE_TEMPERATURE.key),
                    HeatLoadError::Gains => text!("{}{}", path, Inputs::GAINS.key),
                };
                (field, error.into())
            },
        )
    }
}

/// What it takes on the coldest night, and at noon.
#[derive(Outcome)]
struct Found {
    heat: Balance,
    heat_btu_h: f64,
    parts: Vec<PartHeat>,
    fresh_air: AirHeat,
    noon: Option<Balance>,
    noon_btu_h: Option<f64>,
    /// Through the windows at noon.
    sun: Option<Power>,
    cooler: Option<CoolerDraw>,
    heater_draw: Option<Power>,
    heater_duty_percent: Option<f64>,
    #[outcome(skip)]
    night: Case,
    #[outcome(skip)]
    at_noon: Option<Case>,
}

/// A part of the body, on the coldest night.
#[derive(Outcome)]
struct PartHeat {
    label: String,
    heat: Transmission,
    area: Area,
}

/// The night or the noon.
struct Case {
    weather: Weather,
    load: HeatLoad,
}

impl Case {
    fn total(&self) -> Power {
        self.load.total.value()
    }

    /// Heat is to be taken away.
    fn cools(&self) -> bool {
        self.total() < Power::default()
    }
}

fn solve(typed: &Typed) -> Result<Found, (String, Msg)> {
    let inputs = &typed.inputs;
    let night = Case { weather: typed.night, load: typed.load(&typed.night, "")? };
    let at_noon = match inputs.noon {
        None => None,
        Some(noon) => {
            let weather = Weather { gains: noon.gains + typed.all_sun(), ..noon };
            Some(Case { weather, load: typed.load(&weather, "noon.")? })
        }
    };
    let noon = at_noon.as_ref().map(|noon| noon.load.total);
    let cooled = at_noon.as_ref().filter(|noon| noon.cools());
    let parts = typed.parts.iter().zip(&night.load.surfaces).map(|(part, heat)| PartHeat {
        label: part.label.clone(),
        heat: *heat,
        area: part.surface.area,
    });
    Ok(Found {
        heat: night.load.total,
        heat_btu_h: btu_per_hour(night.total()),
        parts: parts.collect(),
        fresh_air: night.load.fresh_air,
        noon,
        noon_btu_h: noon.map(|noon| btu_per_hour(noon.value())),
        sun: noon.map(|_| typed.all_sun()),
        cooler: cooled.and_then(|noon| electrical_use(noon.total(), inputs.performance?)),
        heater_draw: inputs.heater.as_ref().map(|heater| heater.draw),
        heater_duty_percent: inputs
            .heater
            .as_ref()
            .map(|heater| 100.0 * heater.duty(night.total())),
        night,
        at_noon,
    })
}

fn gives(found: &Found) -> Handed {
    let cooler = found.cooler.as_ref().map(|cooler| Load::of(cooler.value()));
    let handed = Handed::of(Drawn(cooler.ok_or(energy_words::NO_COOLER)));
    match found.heater_draw {
        Some(power) => {
            let duty_percent = found.heater_duty_percent;
            handed.with(HeaterDrawn(Load { duty_percent, ..Load::of(power) }))
        }
        None => handed,
    }
}

fn show(typed: &Typed, found: &Found, style: Style) -> Report {
    Report {
        answers: answers(found, style),
        remarks: remarks(typed, found, style),
        tables: vec![balance::table(typed, found, style)],
        drawings: balance::pictures(typed, found, style),
        working: balance::working(typed, found, style.exact()),
        cautions: Caution::all(&cautions::HEATING),
        gives: gives(found),
        outcome: found.record(),
        ..Report::default()
    }
}

/// A power without its sign, as heaters and coolers are sold.
fn size(power: Power) -> Power {
    if power < Power::default() { -power } else { power }
}

fn answers(found: &Found, style: Style) -> Vec<Answer> {
    let needed = |case: &Case, [heating, cooling]: [crate::words::Id; 2]| {
        let power = size(case.total());
        let other = match style.system {
            UnitSystem::Imperial => Arg::watts(power),
            UnitSystem::Metric => Arg::btu(power),
        };
        let label = if case.cools() { cooling } else { heating };
        Answer::new(style.say(label), style.heat(power)).note(style.write(&other))
    };
    let mut answers = vec![needed(&found.night, [words::HEATING, words::COOLING])];
    let noon = [words::HEATING_NOON, words::COOLING_NOON];
    answers.extend(found.at_noon.as_ref().map(|case| needed(case, noon)));
    answers.extend(found.cooler.map(|cooler| {
        let draw = Arg::watts(cooler.value());
        Answer::new(style.say(words::COOLER_DRAWS), style.write(&draw))
            .note(style.say(words::COOLER_DRAWS_NOTE))
    }));
    answers
}

fn remarks(typed: &Typed, found: &Found, style: Style) -> Vec<Remark> {
    let (inputs, night) = (&typed.inputs, &found.night);
    let mut remarks = Vec::new();
    let aired = inputs.fresh_air > VolumeRate::default();
    if !aired {
        remarks.push(Remark::warning(style.say(words::NO_FRESH_AIR)));
    }
    remarks.extend(most(typed, night, style));
    if let Some(heater) = &inputs.heater {
        let heat = Arg::heat(size(night.total()));
        if night.total() > heater.output {
            let output = Arg::heat(heater.output);
            let small = words::HeaterSmall { output, heat };
            remarks.insert(0, Remark::warning(style.say(small)));
        } else if night.total() > Power::default() {
            let share = amount(heater.duty(night.total()) * 100.0, 0, "%");
            let runs = words::HeaterRuns { share, draw: Arg::watts(heater.draw) };
            remarks.push(Remark::note(style.say(runs)));
        }
    }
    let denser = air_density_share(inputs.outside_temperature);
    if denser > 1.03 && aired {
        let share = amount((denser - 1.0) * 100.0, 0, "%");
        remarks.push(Remark::note(style.say(words::Denser { share })));
    }
    remarks.push(Remark::note(style.say(words::HEAT_UP)));
    if let Some(noon) = found.at_noon.as_ref().filter(|noon| noon.cools()) {
        let heat = Arg::heat(size(noon.total()));
        remarks.push(Remark::warning(style.say(words::NoonLeftOut { heat })));
        remarks.push(Remark::note(style.say(words::NOON_SUN)));
        if inputs.noon.is_some_and(|noon| noon.gains <= Power::default()) {
            remarks.push(Remark::note(style.say(words::NOON_NOBODY)));
        }
    }
    if let Some(cooler) = found.cooler {
        let power = Arg::watts(cooler.value());
        remarks.push(Remark::note(style.say(words::ToEnergy { power })));
    }
    remarks
}

/// Where most is lost.
fn most(typed: &Typed, night: &Case, style: Style) -> Option<Remark> {
    let load = &night.load;
    let heats = load.surfaces.iter().map(|surface| surface.value());
    let (part, most) = typed
        .parts
        .iter()
        .zip(heats.clone())
        .filter(|(_, heat)| *heat > Power::default())
        .max_by(|a, b| a.1.value.total_cmp(&b.1.value))?;
    let through: f64 = heats.chain([load.fresh_air.value()]).map(|heat| heat.value).sum();
    let share = amount(most.value / through * 100.0, 0, "%");
    let said = words::Most { part: part.name.clone(), heat: Arg::heat(most), share };
    (through > 0.0).then(|| Remark::note(style.say(said)))
}
