//! One build-up from inside to outside: heat through it, temperatures in it, and where it gets wet.

mod findings;
mod found;
mod layers;
mod section;
#[cfg(test)]
mod tests;

use calc_derive::Inputs;
use uom::si::f64::{HeatTransfer, Length, ThermalConductivity, ThermodynamicTemperature};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;

use super::{Sheet, solve};
use crate::ask::{Ask, BodyPart, Figure, Picks};
use crate::fault::Fault;
use crate::formula::Formula as _;
use crate::handoff::Handed;
use crate::outcome::Outcome as _;
use crate::quantity::{CONDUCTIVITY, LENGTH, Style, THERMAL_RESISTANCE, significant};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::sheet::handoffs::UValue;
use crate::thermal::build_up::{
    Bridge, COMBINED_METHOD, Layer, METAL_SCOPE, RATIO_LIMIT, SURFACE_RESISTANCES, Surfaces,
};
use crate::thermal::cautions;
use crate::thermal::condensation::{AIR_PERMEABILITY, METHOD, SLICES};
use crate::thermal::materials::MATERIALS;
use crate::thermal::moisture::{self, MOULD, SATURATION, SATURATION_ICE};
use crate::thermal::steel_rib::{Rib, STRIP, TEMPERATURE_FACTOR, ZONE_METHOD};
use crate::words::{Phrase, common, insulation as words};
use found::Found;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "insulation",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_LIVING),
    purpose: Phrase::Id(words::PURPOSE),
    asks: Inputs::ASKS,
    sources: &[
        &COMBINED_METHOD,
        &SURFACE_RESISTANCES,
        &RATIO_LIMIT,
        &METAL_SCOPE,
        &ZONE_METHOD,
        &TEMPERATURE_FACTOR,
        &STRIP,
        &METHOD,
        &AIR_PERMEABILITY,
        &SLICES,
        &SATURATION,
        &SATURATION_ICE,
        &MOULD,
    ],
    example: r#"{ "layers": [
            { "name": "birch plywood lining", "thickness": "6 mm", "conductivity": "0.17 W/m/K", "vapour_factor": 90 },
            { "name": "extruded polystyrene", "thickness": "40 mm", "conductivity": "0.034 W/m/K", "vapour_factor": 150 },
            { "name": "steel skin", "thickness": "1 mm", "conductivity": "50 W/m/K", "vapour_factor": 1000000 } ],
        "bridge": { "layer": 2, "web": "1.2 mm", "conductivity": "50 W/m/K" },
        "inside": { "temperature": "18 C", "humidity_percent": 60 },
        "outside": { "temperature": "-5 C", "humidity_percent": 85 } }"#,
    ahead: None,
    solve: |reader| solve(reader, Inputs::read, report),
};

/// What was typed, read.
#[derive(Inputs)]
#[words(insulation)]
struct Inputs {
    #[ask(rows(1))]
    layers: Vec<TypedLayer>,
    #[ask(units("h ft2 F/Btu", "m2K/W"), dimension(&THERMAL_RESISTANCE), range(0.0, 1.0))]
    #[ask(default("0.13 m2K/W"), usual("0.74 h ft2 F/Btu", "0.13 m2K/W"))]
    surface_in: f64,
    #[ask(units("h ft2 F/Btu", "m2K/W"), dimension(&THERMAL_RESISTANCE), range(0.0, 1.0))]
    #[ask(default("0.04 m2K/W"), usual("0.23 h ft2 F/Btu", "0.04 m2K/W"))]
    surface_out: f64,
    #[ask(group)]
    bridge: Option<Crossing>,
    #[ask(group, no_help)]
    inside: Option<Air>,
    #[ask(group)]
    outside: Option<Air>,
}

/// One layer.
#[derive(Inputs)]
#[words(insulation)]
struct TypedLayer {
    #[ask(usual("extruded polystyrene", "extruded polystyrene"), picks(&MATERIAL_PICKS))]
    name: String,
    #[ask(
        units("in", "mm"),
        range(1e-5, 5.0),
        usual("1 1/2 in", "40 mm"),
        figure(Figure::Thickness)
    )]
    thickness: Length,
    #[ask(units("Btu in/(h ft2 F)", "W/m/K"), range(0.001, 1000.0))]
    #[ask(usual("0.24 Btu in/(h ft2 F)", "0.034 W/m/K"))]
    conductivity: ThermalConductivity,
    #[ask(range(0.01, 1e7), usual("150", "150"))]
    vapour_factor: Option<f64>,
}

/// The table of materials, as it fills a layer.
static MATERIAL_PICKS: Picks = Picks {
    noun: Phrase::Id(words::MATERIAL),
    names: |said| MATERIALS.iter().map(|material| said.plain(material.name)).collect(),
    fills: |index, system, said| {
        let Some(material) = MATERIALS.get(index) else { return Vec::new() };
        let conductivity = material.careful_conductivity_w_mk();
        vec![
            (TypedLayer::NAME.key, said.plain(material.name).to_owned()),
            (
                TypedLayer::CONDUCTIVITY.key,
                TypedLayer::CONDUCTIVITY.unit_in(system).map_or_else(String::new, |unit| {
                    format!("{} {}", significant(unit.from_si(conductivity), 4), unit.symbol())
                }),
            ),
            (
                TypedLayer::VAPOUR_FACTOR.key,
                material
                    .careful_vapour_factor()
                    .map_or_else(String::new, |factor| significant(factor, 3)),
            ),
        ]
    },
};

/// The air of one side.
#[derive(Clone, Copy, Inputs)]
#[words(insulation)]
struct Air {
    #[ask(units("F", "C"), range(213.15, 353.15), usual("64 F", "18 C"))]
    temperature: ThermodynamicTemperature,
    #[ask(percent, range(1.0, 100.0), usual("60", "60"))]
    humidity_percent: f64,
}

impl Air {
    fn moist(self) -> moisture::Air {
        moisture::Air { temperature: self.temperature, humidity: self.humidity_percent / 100.0 }
    }
}

/// What crosses a layer.
enum Crossing {
    Timber(Bridge),
    Steel(Rib),
}

// Timber has nothing from the body, and a rib all three: which is read depends on what is typed.
static BRIDGE_LAYER: Ask = Ask::count("layer", "", (1, 400))
    .named(Phrase::Id(words::BRIDGE_LAYER))
    .told(Phrase::Id(words::BRIDGE_LAYER_HELP))
    .usual("2", "2");
static SHARE: Ask = Ask::percent("share_percent", "", (0.01, 99.99))
    .named(Phrase::Id(words::SHARE))
    .told(Phrase::Id(words::SHARE_HELP))
    .optional()
    .usual("12", "12");
static METAL_WIDTH: Ask = Ask::measure("metal_width", "", &LENGTH, ["in", "mm"], (1e-4, 1.0))
    .named(Phrase::Id(words::METAL_WIDTH))
    .told(Phrase::Id(words::METAL_WIDTH_HELP))
    .from_body(BodyPart::RibWidth)
    .usual("1 1/2 in", "38 mm")
    .figure(Figure::Across);
static WEB: Ask = Ask::measure("web", "", &LENGTH, ["in", "mm"], (1e-4, 0.1))
    .named(Phrase::Id(words::WEB))
    .told(Phrase::Id(words::WEB_HELP))
    .optional()
    .usual("0.05 in", "1.2 mm")
    .figure(Figure::Thickness);
static SPACING: Ask = Ask::measure("spacing", "", &LENGTH, ["in", "mm"], (0.001, 5.0))
    .named(Phrase::Id(words::SPACING))
    .told(Phrase::Id(words::SPACING_HELP))
    .from_body(BodyPart::RibSpacing)
    .usual("16 in", "420 mm")
    .figure(Figure::Spacing);
static BRIDGE_CONDUCTIVITY: Ask =
    Ask::measure("conductivity", "", &CONDUCTIVITY, ["Btu in/(h ft2 F)", "W/m/K"], (0.001, 1000.0))
        .named(Phrase::Id(words::BRIDGE_CONDUCTIVITY))
        .told(Phrase::Id(words::BRIDGE_CONDUCTIVITY_HELP))
        .usual("0.9 Btu in/(h ft2 F)", "0.13 W/m/K");

impl Crossing {
    const ASKS: &'static [&'static Ask] =
        &[&BRIDGE_LAYER, &SHARE, &METAL_WIDTH, &WEB, &SPACING, &BRIDGE_CONDUCTIVITY];

    /// Timber or steel, by which keys are there.
    fn read(group: &Reader<'_>) -> Self {
        let layer = (group.count(&BRIDGE_LAYER) as usize).saturating_sub(1);
        let conductivity: ThermalConductivity = group.measure(&BRIDGE_CONDUCTIVITY);
        let widths = [&METAL_WIDTH, &WEB, &SPACING];
        if !widths.iter().any(|ask| group.given(ask)) {
            let share = group.maybe_number(&SHARE).unwrap_or_else(|| {
                group.tell(&SHARE, words::SHARE_MISSING);
                0.0
            });
            return Self::Timber(Bridge { layer, share: share / 100.0, conductivity });
        }
        let [metal_width, web, spacing] = if group.given(&SHARE) {
            group.tell(&SHARE, words::SHARE_OR_RIB);
            [Length::default(); 3]
        } else {
            widths.map(|ask| {
                group.maybe(ask).unwrap_or_else(|| {
                    group.tell(ask, words::RIB_INCOMPLETE);
                    Length::default()
                })
            })
        };
        Self::Steel(Rib { layer, metal_width, web, spacing, conductivity })
    }

    /// The layer that is crossed, by its index.
    fn layer(&self) -> usize {
        match self {
            Self::Timber(bridge) => bridge.layer,
            Self::Steel(rib) => rib.layer,
        }
    }

    /// What a message chooses its words by.
    fn called(&self) -> &'static str {
        match self {
            Self::Timber(_) => "battens",
            Self::Steel(_) => "ribs",
        }
    }
}

impl Inputs {
    /// The name of a layer, by its index.
    fn name(&self, index: usize, style: Style) -> String {
        match self.layers.get(index) {
            Some(layer) if !layer.name.is_empty() => layer.name.clone(),
            _ => style.say(words::Layer { number: index + 1 }),
        }
    }

    fn plain_layers(&self) -> Vec<Layer> {
        let plain = |layer: &TypedLayer| Layer {
            thickness: layer.thickness,
            conductivity: layer.conductivity,
        };
        self.layers.iter().map(plain).collect()
    }

    fn surfaces(&self) -> Surfaces {
        Surfaces { inside_m2k_w: self.surface_in, outside_m2k_w: self.surface_out }
    }
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let found = Found::of(inputs)
        .map_err(|wrong| vec![Fault::new(wrong.field, style.say(wrong.message))])?;
    Ok(Report {
        answers: findings::answers(inputs, &found, style),
        remarks: findings::remarks(inputs, &found, style),
        tables: layers::tables(inputs, &found, style),
        drawings: section::drawings(inputs, &found, style),
        working: layers::working(inputs, &found, style.exact()),
        cautions: Caution::all(&cautions::INSULATION),
        gives: Handed::of(UValue(HeatTransfer::new::<watt_per_square_meter_kelvin>(
            found.u.value(),
        ))),
        outcome: found.record(),
        ..Report::default()
    })
}
