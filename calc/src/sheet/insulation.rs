//! One build-up from inside to outside: heat through it, temperatures in it, and where it gets wet.

mod figures;
mod section;
#[cfg(test)]
mod tests;
mod words;

use crate::text::text;
use crate::words::Phrase;
use uom::si::f64::{Length, ThermalConductivity, ThermodynamicTemperature};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{Sheet, solve};
use crate::ask::{Ask, BodyPart, Figure, Picks};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{CONDUCTIVITY, LENGTH, Style, TEMPERATURE, THERMAL_RESISTANCE, significant};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::thermal::build_up::{
    Bridge, COMBINED_METHOD, Layer, METAL_SCOPE, RATIO_LIMIT, SURFACE_RESISTANCES, Surfaces,
};
use crate::thermal::cautions;
use crate::thermal::condensation::{AIR_PERMEABILITY, METHOD, SLICES};
use crate::thermal::materials::MATERIALS;
use crate::thermal::moisture::{Air, MOULD, SATURATION, SATURATION_ICE};
use crate::thermal::steel_rib::{Rib, STRIP, TEMPERATURE_FACTOR, ZONE_METHOD};
use figures::Figures;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "insulation",
    title: Phrase::Written("Insulation"),
    trade: Phrase::Written("Living in it"),
    purpose: Phrase::Written(
        "See how much heat a wall, roof or floor lets through, how cold its lining gets, and where it gets wet.",
    ),
    asks: &[&LAYERS, &SURFACE_IN, &SURFACE_OUT, &BRIDGE, &INSIDE, &OUTSIDE],
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
    solve: |reader| solve(reader, read, report),
};

static NAME: Ask = Ask::words("name", "Material")
    .usual("extruded polystyrene", "extruded polystyrene")
    .picks(&MATERIAL_PICKS)
    .help("Choose from the list to fill in what it knows, or type; the label comes first.");
/// The table of materials, as it fills a layer.
static MATERIAL_PICKS: Picks = Picks {
    noun: "material",
    names: || MATERIALS.iter().map(|material| material.name).collect(),
    fills: |index, system| {
        let Some(material) = MATERIALS.get(index) else { return Vec::new() };
        let conductivity = material.careful_conductivity_w_mk();
        vec![
            (NAME.key, material.name.to_owned()),
            (
                LAYER_CONDUCTIVITY.key,
                LAYER_CONDUCTIVITY.unit_in(system).map_or_else(String::new, |unit| {
                    text!("{} {}", significant(unit.from_si(conductivity), 4), unit.symbol())
                }),
            ),
            (
                VAPOUR_FACTOR.key,
                material
                    .careful_vapour_factor()
                    .map_or_else(String::new, |factor| significant(factor, 3)),
            ),
        ]
    },
};
static THICKNESS: Ask = Ask::measure("thickness", "Thickness", &LENGTH, ["in", "mm"], (1e-5, 5.0))
    .usual("1 1/2 in", "40 mm")
    .help("As it is built in; foam pressed thinner counts thinner.")
    .figure(Figure::Thickness);
static LAYER_CONDUCTIVITY: Ask = Ask::measure(
    "conductivity",
    "Conductivity",
    &CONDUCTIVITY,
    ["Btu in/(h ft2 F)", "W/m/K"],
    (0.001, 1000.0),
)
.usual("0.24 Btu in/(h ft2 F)", "0.034 W/m/K")
.help("On its label or data sheet as λ or k.");
static VAPOUR_FACTOR: Ask = Ask::number("vapour_factor", "Vapour resistance factor", (0.01, 1e7))
    .optional()
    .usual("150", "150")
    .help("μ on its data sheet; still air has 1, metal and glass 1 000 000. Needed of all layers for the dew planes; of a range the low figure is the careful one at the warm side, the high one outside the plane that gets wet.");
static LAYERS: Ask = Ask::rows(
    "layers",
    "Layers from inside to outside",
    "layer",
    1,
    &[&NAME, &THICKNESS, &LAYER_CONDUCTIVITY, &VAPOUR_FACTOR],
)
.help("Start at the lining that you touch, end at the skin.");
static SURFACE_IN: Ask = Ask::measure(
    "surface_in",
    "Resistance of the air film inside",
    &THERMAL_RESISTANCE,
    ["h ft2 F/Btu", "m2K/W"],
    (0.0, 1.0),
)
.default("0.13 m2K/W")
.usual("0.74 h ft2 F/Btu", "0.13 m2K/W")
.help("0.13 m2K/W for a wall, 0.10 for a roof and 0.17 for a floor in winter.");
static SURFACE_OUT: Ask = Ask::measure(
    "surface_out",
    "Resistance of the air film outside",
    &THERMAL_RESISTANCE,
    ["h ft2 F/Btu", "m2K/W"],
    (0.0, 1.0),
)
.default("0.04 m2K/W")
.usual("0.23 h ft2 F/Btu", "0.04 m2K/W")
.help("0.04 m2K/W for a parked body; driving or a gale makes it smaller.");
static BRIDGE_LAYER: Ask = Ask::count("layer", "Layer that it crosses", (1, 400))
    .usual("2", "2")
    .help("Counted from 1 at the inside.");
static SHARE: Ask = Ask::percent("share_percent", "Timber: share of the area", (0.01, 99.99))
    .optional()
    .usual("12", "12")
    .help("Width of a batten over the distance between battens; leave out for metal ribs.");
static METAL_WIDTH: Ask =
    Ask::measure("metal_width", "Steel rib: widest part", &LENGTH, ["in", "mm"], (1e-4, 1.0))
        .from_body(BodyPart::RibWidth)
        .usual("1 1/2 in", "38 mm")
        .help("Across the flange that the lining rests on.")
        .figure(Figure::Across);
static WEB: Ask =
    Ask::measure("web", "Steel rib: web thickness", &LENGTH, ["in", "mm"], (1e-4, 0.1))
        .optional()
        .usual("0.05 in", "1.2 mm")
        .help(
            "Metal that reaches from the skin to the flange; both sides of a hat section together.",
        )
        .figure(Figure::Thickness);
static SPACING: Ask =
    Ask::measure("spacing", "Steel rib: centre to centre", &LENGTH, ["in", "mm"], (0.001, 5.0))
        .from_body(BodyPart::RibSpacing)
        .usual("16 in", "420 mm")
        .help("From the centre line of one rib to the next.")
        .figure(Figure::Spacing);
static BRIDGE_CONDUCTIVITY: Ask = Ask::measure(
    "conductivity",
    "Conductivity of batten or rib",
    &CONDUCTIVITY,
    ["Btu in/(h ft2 F)", "W/m/K"],
    (0.001, 1000.0),
)
.usual("0.9 Btu in/(h ft2 F)", "0.13 W/m/K")
.help("Softwood 0.13 W/m/K, steel 50, stainless steel 17, aluminium 160.");
static BRIDGE: Ask = Ask::group(
    "bridge",
    "Battens or ribs that cross a layer",
    &[&BRIDGE_LAYER, &SHARE, &METAL_WIDTH, &WEB, &SPACING, &BRIDGE_CONDUCTIVITY],
)
.optional()
.help("Timber by its share of the area; a steel rib by its widths and spacing.");
static AIR_TEMPERATURE: Ask =
    Ask::measure("temperature", "Temperature", &TEMPERATURE, ["F", "C"], (213.15, 353.15))
        .usual("64 F", "18 C")
        .help("Of the air.");
static HUMIDITY: Ask = Ask::percent("humidity_percent", "Relative humidity", (1.0, 100.0))
    .usual("60", "60")
    .help("On a hygrometer; inside, in the morning before you air.");
static INSIDE: Ask = Ask::group("inside", "Air inside", &[&AIR_TEMPERATURE, &HUMIDITY]).optional();
static OUTSIDE: Ask = Ask::group("outside", "Air outside", &[&AIR_TEMPERATURE, &HUMIDITY])
    .optional()
    .help("The coldest night that you will stay in it.");

/// What was typed, read.
struct Inputs {
    names: Vec<String>,
    layers: Vec<Layer>,
    vapour_factors: Vec<Option<f64>>,
    surfaces: Surfaces,
    bridge: Option<Crossing>,
    inside: Option<Air>,
    outside: Option<Air>,
}

/// What crosses a layer.
enum Crossing {
    Timber(Bridge),
    Steel(Rib),
}

impl Inputs {
    /// The name of a layer, by its index.
    fn name(&self, index: usize) -> String {
        match self.names.get(index) {
            Some(name) if !name.is_empty() => name.clone(),
            _ => text!("layer {}", index + 1),
        }
    }
}

fn read(reader: &Reader<'_>) -> Inputs {
    let rows = reader.rows(&LAYERS, |row| {
        let layer = Layer {
            thickness: row.measure(&THICKNESS),
            conductivity: row.measure(&LAYER_CONDUCTIVITY),
        };
        (row.words(&NAME), layer, row.maybe_number(&VAPOUR_FACTOR))
    });
    let surfaces =
        Surfaces { inside_m2k_w: reader.si(&SURFACE_IN), outside_m2k_w: reader.si(&SURFACE_OUT) };
    let bridge = reader.maybe_group(&BRIDGE, read_bridge).flatten();
    let air = |group: &Reader<'_>| Air {
        temperature: group.measure::<ThermodynamicTemperature>(&AIR_TEMPERATURE),
        humidity: group.number(&HUMIDITY) / 100.0,
    };
    Inputs {
        names: rows.iter().map(|(name, ..)| name.clone()).collect(),
        layers: rows.iter().map(|(_, layer, _)| *layer).collect(),
        vapour_factors: rows.iter().map(|(.., factor)| *factor).collect(),
        surfaces,
        bridge,
        inside: reader.maybe_group(&INSIDE, air),
        outside: reader.maybe_group(&OUTSIDE, air),
    }
}

/// Timber or steel, by which keys are there.
fn read_bridge(group: &Reader<'_>) -> Option<Crossing> {
    let layer = (group.count(&BRIDGE_LAYER) as usize).saturating_sub(1);
    let conductivity: ThermalConductivity = group.measure(&BRIDGE_CONDUCTIVITY);
    let widths = [&METAL_WIDTH, &WEB, &SPACING];
    let steel = widths.iter().any(|ask| group.given(ask));
    if steel && group.given(&SHARE) {
        group.fault_at(
            &SHARE,
            "give the share of the area for timber, or widths and spacing for a steel rib, not both",
        );
        return None;
    }
    if !steel {
        return match group.maybe_number(&SHARE) {
            Some(percent) => {
                Some(Crossing::Timber(Bridge { layer, share: percent / 100.0, conductivity }))
            }
            None => {
                group.fault_at(
                    &SHARE,
                    "give the share of the area that the timber takes up, for example 12 %; or for a \
                     steel rib its width, web and spacing",
                );
                None
            }
        };
    }
    let [metal_width, web, spacing] = widths.map(|ask| {
        let length: Option<Length> = group.maybe(ask);
        if length.is_none() {
            group.fault_at(ask, "a steel rib needs its width, its web and its spacing");
        }
        length
    });
    let (metal_width, web, spacing) = (metal_width?, web?, spacing?);
    Some(Crossing::Steel(Rib { layer, metal_width, web, spacing, conductivity }))
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let figures = Figures::of(inputs)?;
    Ok(Report {
        answers: words::answers(inputs, &figures, style),
        remarks: words::remarks(inputs, &figures, style),
        tables: words::tables(inputs, &figures, style),
        drawings: section::drawings(inputs, &figures, style),
        working: words::working(inputs, &figures, style),
        cautions: Caution::all(&cautions::INSULATION),
        outcome: outcome(&figures),
        ..Report::default()
    })
}

fn outcome(figures: &Figures) -> Record {
    let celsius = |t: ThermodynamicTemperature| t.get::<degree_celsius>();
    let (upper, lower) = match &figures.rib {
        Some(_) => (None, None),
        None => (Some(figures.upper_m2k_w), Some(figures.lower_m2k_w)),
    };
    let mut record = Record::new()
        .with("u_w_m2k", 1.0 / figures.r_m2k_w)
        .with("r_m2k_w", figures.r_m2k_w)
        .maybe("r_upper_m2k_w", upper)
        .maybe("r_lower_m2k_w", lower)
        .with("field_u_w_m2k", 1.0 / figures.field_r_m2k_w)
        .maybe("zone_width_mm", figures.rib.map(|rib| rib.zone_width.get::<millimeter>()))
        .maybe("dew_point_c", figures.dew_point.map(celsius))
        .maybe("inner_surface_c", figures.faces.first().copied().map(celsius))
        .maybe("bridge_surface_c", figures.bridge_surface.map(celsius))
        .maybe("surface_humidity_percent", figures.surface_humidity.map(|share| 100.0 * share))
        .maybe("humidity_limit_percent", figures.humidity_limit.map(|share| 100.0 * share));
    if let Some(profile) = &figures.profile {
        let planes: Vec<Record> = profile
            .planes
            .iter()
            .map(|plane| {
                Record::new()
                    .with("after_layer", plane.after_layer)
                    .with("temperature_c", celsius(plane.temperature))
                    .with("condenses_g_m2_day", plane.condenses_g_m2_day)
            })
            .collect();
        let within = profile.within.iter().map(|within| {
            Record::new()
                // Behind the layer before it, within the one named.
                .with("after_layer", within.layer - 1)
                .with("within_layer", within.layer)
                .with("temperature_c", celsius(within.temperature))
                .with("condenses_g_m2_day", within.condenses_g_m2_day)
        });
        let wet: Vec<usize> = profile.within.iter().map(|within| within.layer).collect();
        record = record
            .with("condenses_g_m2_day", profile.condenses_g_m2_day())
            .with("planes", planes.into_iter().chain(within).collect::<Vec<Record>>())
            .with("wet_within_layers", wet)
            .with("inner_surface_wet", profile.inner_surface_wet);
    }
    record
}
