//! What is said about a build-up: answers, remarks, tables and working.

use crate::sorting::sort_by_key;
use crate::text::text;
use uom::si::f64::{Length, ThermodynamicTemperature};
use uom::si::length::millimeter;
use uom::si::pressure::pascal;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::figures::Figures;
use super::{Crossing, Inputs};
use crate::quantity::{Style, amount, percent, plain, significant};
use crate::report::{Answer, Remark, Step, Table, TableRow, Weight, texts};
use crate::thermal::build_up::{COMBINED_METHOD, Layer};
use crate::thermal::condensation::{AIR_PERMEABILITY, AIR_PERMEABILITY_KG_M_S_PA, METHOD, Profile};
use crate::thermal::materials::{MATERIALS, Range};
use crate::thermal::moisture::{MOULD, MOULD_HUMIDITY, SATURATION};
use crate::thermal::steel_rib::{LEAST_COVER_MM, STRIP, TEMPERATURE_FACTOR, ZONE_METHOD};

pub(super) fn answers(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Answer> {
    let u = 1.0 / figures.r_m2k_w;
    let mut answers =
        vec![Answer::new("Heat let through (U)", style.u_value(u)).note(match &inputs.bridge {
            None => text!("R {}", style.thermal_resistance(figures.r_m2k_w)),
            Some(crossing) => text!(
                "R {}; without {} U {}",
                style.thermal_resistance(figures.r_m2k_w),
                called(crossing),
                style.u_value(1.0 / figures.field_r_m2k_w)
            ),
        })];
    if let Some(surface) = figures.faces.first() {
        let answer = Answer::new("Lining inside", style.temperature(*surface));
        let note = match (&inputs.bridge, figures.bridge_surface) {
            (Some(crossing), Some(over)) => {
                text!("over {} about {}", called(crossing), style.temperature(over))
            }
            _ => String::new(),
        };
        answers.push(answer.note(note));
    }
    if let Some(profile) = &figures.profile {
        let gathers = profile.condenses_g_m2_day();
        answers.push(match profile.planes.len() + profile.within.len() {
            0 => Answer::new("Water gathering inside", "none by diffusion"),
            _ => Answer::new("Water gathering inside", text!("{} g/m² a day", plain(gathers, 2)))
                .note("by diffusion alone; leaking air brings far more"),
        });
    }
    answers
}

fn called(crossing: &Crossing) -> &'static str {
    match crossing {
        Crossing::Timber(_) => "battens",
        Crossing::Steel(_) => "ribs",
    }
}

pub(super) fn remarks(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if let Some(dew) = figures.dew_point {
        wet_surfaces(inputs, figures, dew, style, &mut remarks);
    }
    if let Some(profile) = &figures.profile {
        wet_planes(inputs, profile, style, &mut remarks);
    } else if inputs.inside.is_some() && inputs.outside.is_some() {
        let missing: Vec<String> = (0..inputs.layers.len())
            .filter(|index| inputs.vapour_factors.get(*index).is_none_or(Option::is_none))
            .map(|index| inputs.name(index))
            .collect();
        remarks.push(Remark::note(text!(
            "For the dew planes give the vapour factor of {} too.",
            missing.join(", ")
        )));
    } else {
        remarks.push(Remark::note(
            "Give the air inside and outside to see temperatures and where it gets wet.",
        ));
    }
    if let Some(limit) = figures.humidity_limit {
        remarks.push(Remark::note(text!(
            "At these temperatures keep the humidity inside below {}: from there on the air at the coldest part of the lining is {} humid, and mould can grow ({}). Humidity is no free choice: two sleepers give off about 100 g of water an hour, which fresh air must carry off.",
            amount((limit * 100.0).floor(), 0, "%"),
            amount(MOULD_HUMIDITY * 100.0, 0, "%"),
            &MOULD
        )));
    }
    if figures.rib.is_some() {
        remarks.push(Remark::note(
            "The temperature over a rib is an estimate: heat is taken to flow straight through a \
             strip as wide as the metal. A strip of foam over the ribs, under the lining, helps most.",
        ));
        remarks.push(Remark::note(
            "The U value with ribs is an estimate. Against a two-dimensional model of 18 T ribs (flange 20 to 80 mm, \
             web 1 to 3 mm, insulation 20 to 80 mm, lining 3 to 20 mm) it read from 1.5 % low to 5.5 % high; hat \
             sections and other sizes were not checked, and can be further off. Rivets, rails along the body, \
             corners, door frames and wheel boxes are left out: more heat goes there.",
        ));
    }
    if figures.profile.is_some() {
        remarks.push(Remark::note(
            "The dew planes leave out, first of all, air that leaks behind the lining; also \
             driving rain, sun, what materials soak up, and days that differ from the mean.",
        ));
    }
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

fn wet_surfaces(
    inputs: &Inputs,
    figures: &Figures,
    dew: ThermodynamicTemperature,
    style: Style,
    remarks: &mut Vec<Remark>,
) {
    let dew_text = style.temperature(dew);
    let wet = |surface: Option<&ThermodynamicTemperature>| surface.is_some_and(|s| *s <= dew);
    if wet(figures.faces.first()) {
        remarks.push(Remark::warning(text!(
            "The lining is colder than the dew point of {}: it gets wet everywhere. More \
             insulation, or more fresh air.",
            &dew_text
        )));
    } else if wet(figures.bridge_surface.as_ref()) {
        let over = inputs.bridge.as_ref().map_or("ribs", called);
        remarks.push(Remark::warning(text!(
            "Over the {} the lining is colder than the dew point of {}: it gets wet \
             there. Insulate across the {}, or bring in more fresh air.",
            &over,
            &dew_text,
            &over
        )));
    } else if let Some(humid) = figures.surface_humidity.filter(|humid| *humid > MOULD_HUMIDITY) {
        remarks.push(Remark::warning(text!(
            "The lining stays above the dew point of {}, but at its coldest the air is {} humid: from {} on mould can grow. More insulation, or more fresh air.",
            &dew_text,
            amount(humid * 100.0, 0, "%"),
            amount(MOULD_HUMIDITY * 100.0, 0, "%")
        )));
    } else if !figures.faces.is_empty() {
        remarks.push(Remark::good(text!(
            "The lining stays above the dew point of {}, and at its coldest below the {} from which mould can grow.",
            &dew_text,
            amount(MOULD_HUMIDITY * 100.0, 0, "%")
        )));
    } else {
        remarks.push(Remark::note(text!("The air inside has its dew point at {}.", &dew_text)));
    }
}

fn wet_planes(inputs: &Inputs, profile: &Profile, style: Style, remarks: &mut Vec<Remark>) {
    for plane in &profile.planes {
        let frost = if plane.temperature < freezing() { ", as frost" } else { "" };
        remarks.push(Remark::warning(text!(
            "Water gathers behind {} at {}{}: {} g/m² a day by diffusion. A vapour check at \
             the lining lessens it.",
            inputs.name(plane.after_layer.saturating_sub(1)),
            style.temperature(plane.temperature),
            &frost,
            plain(plane.condenses_g_m2_day, 2)
        )));
    }
    for within in &profile.within {
        let frost = if within.temperature < freezing() { ", as frost" } else { "" };
        remarks.push(Remark::warning(text!(
            "Water gathers within {}, down to {}{}: {} g/m² a day by diffusion.",
            inputs.name(within.layer.saturating_sub(1)),
            style.temperature(within.temperature),
            &frost,
            plain(within.condenses_g_m2_day, 2)
        )));
    }
    if profile.planes.is_empty() && profile.within.is_empty() {
        remarks.push(Remark::note(
            "No water gathers by diffusion. That is no clearance: air that leaks behind the lining \
             brings far more water.",
        ));
    }
    if profile.outer_surface_wet {
        remarks.push(Remark::note("Dew forms on the outside of the skin; it does no harm there."));
    }
}

fn freezing() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(0.0)
}

pub(super) fn tables(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Table> {
    let faces = profile_table(inputs, figures, style);
    let rows = MATERIALS.iter().map(|material| TableRow {
        cells: vec![
            material.name.to_owned(),
            range(&material.conductivity_w_mk, |value| style.conductivity(value)),
            material
                .vapour_factor
                .map_or_else(String::new, |factor| range(&factor, |value| significant(value, 3))),
            material.conductivity_w_mk.source.to_string(),
            material.vapour_factor.map_or_else(String::new, |factor| factor.source.to_string()),
        ],
        chosen: false,
    });
    let materials = Table {
        title: "Usual figures; the label comes first".into(),
        heads: texts(&[
            "Material",
            "Conductivity",
            "Vapour factor",
            "Source of the conductivity",
            "Source of the vapour factor",
        ]),
        rows: rows.collect(),
    };
    faces.into_iter().chain([materials]).collect()
}

fn range(range: &Range, write: impl Fn(f64) -> String) -> String {
    if range.low == range.high {
        write(range.low)
    } else {
        text!("{} to {}", write(range.low), write(range.high))
    }
}

/// Temperatures, and where they are known vapour pressures, at every face.
fn profile_table(inputs: &Inputs, figures: &Figures, style: Style) -> Option<Table> {
    if figures.faces.is_empty() {
        return None;
    }
    let mut heads = vec!["Face".to_owned(), "Temperature".to_owned()];
    if figures.profile.is_some() {
        heads.extend(["Vapour".to_owned(), "Saturated at".to_owned()]);
    }
    let rows = figures.faces.iter().enumerate().map(|(index, temperature)| {
        let name = match index {
            0 => "lining inside".to_owned(),
            _ => text!("behind {}", inputs.name(index - 1)),
        };
        let mut cells = vec![name, style.temperature(*temperature)];
        if let Some(face) = figures.profile.as_ref().and_then(|profile| profile.faces.get(index)) {
            cells.push(amount(face.vapour.get::<pascal>(), 0, "Pa"));
            cells.push(amount(face.saturation.get::<pascal>(), 0, "Pa"));
        }
        TableRow { cells, chosen: false }
    });
    Some(Table {
        title: match inputs.bridge.as_ref() {
            None => "Through the layers".into(),
            Some(crossing) => text!("Through the layers, between the {}", called(crossing)),
        },
        heads,
        rows: rows.collect(),
    })
}

pub(super) fn working(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Step> {
    let mut steps: Vec<Step> = inputs
        .layers
        .iter()
        .enumerate()
        .map(|(index, layer)| {
            Step::new(
                inputs.name(index),
                "R = d / λ",
                text!("{} / {}", style.small(layer.thickness), conductivity(layer, style)),
                style.thermal_resistance(layer.resistance_m2k_w()),
                &COMBINED_METHOD,
            )
        })
        .collect();
    let resistance = |value: f64| style.thermal_resistance(value);
    steps.push(Step::new(
        "All layers and both air films",
        "R = Rsi + Σ d/λ + Rse",
        text!(
            "{} + {} + {}",
            resistance(inputs.surfaces.inside_m2k_w),
            resistance(inputs.layers.iter().map(Layer::resistance_m2k_w).sum()),
            resistance(inputs.surfaces.outside_m2k_w)
        ),
        resistance(figures.field_r_m2k_w),
        &COMBINED_METHOD,
    ));
    crossing_steps(inputs, figures, style, &mut steps);
    steps.push(Step::new(
        "U value",
        "U = 1 / R",
        text!("1 / {}", resistance(figures.r_m2k_w)),
        style.u_value(1.0 / figures.r_m2k_w),
        // ISO 6946 leaves metal out.
        if figures.rib.is_some() { &ZONE_METHOD } else { &COMBINED_METHOD },
    ));
    air_steps(inputs, figures, style, &mut steps);
    steps
}

/// A figure as it stands behind a minus sign.
fn in_sum(text: &str) -> String {
    if text.starts_with('-') { text!("({})", &text) } else { text.to_owned() }
}

fn conductivity(layer: &Layer, style: Style) -> String {
    style.conductivity(layer.conductivity.get::<watt_per_meter_kelvin>())
}

fn crossing_steps(inputs: &Inputs, figures: &Figures, style: Style, steps: &mut Vec<Step>) {
    let resistance = |value: f64| style.thermal_resistance(value);
    match (&inputs.bridge, &figures.rib) {
        (Some(Crossing::Timber(bridge)), _) => {
            let share = percent(bridge.share * 100.0);
            steps.push(Step::new(
                "Upper limit: heat keeps to its path",
                "R′ = 1 / (f / R_timber + (1 − f) / R_field)",
                text!("f = {}", &share),
                resistance(figures.upper_m2k_w),
                &COMBINED_METHOD,
            ));
            steps.push(Step::new(
                "Lower limit: every layer evens out",
                "R″ = Rsi + Σ 1 / (f / R_timber + (1 − f) / R_layer) + Rse",
                text!("f = {}", &share),
                resistance(figures.lower_m2k_w),
                &COMBINED_METHOD,
            ));
            steps.push(Step::new(
                "Resistance",
                "R = (R′ + R″) / 2",
                text!(
                    "({} + {}) / 2",
                    resistance(figures.upper_m2k_w),
                    resistance(figures.lower_m2k_w)
                ),
                resistance(figures.r_m2k_w),
                &COMBINED_METHOD,
            ));
        }
        (Some(Crossing::Steel(rib)), Some(ribbed)) => {
            steps.push(Step::new(
                "Zone that one rib draws heat from",
                "W = m + 2 d",
                text!(
                    "{} + 2 d, d at least {}",
                    style.small(rib.metal_width),
                    style.small(Length::new::<millimeter>(LEAST_COVER_MM))
                ),
                style.small(ribbed.zone_width),
                &ZONE_METHOD,
            ));
            steps.push(Step::new(
                "Through that zone",
                "R_zone: metal and filling side by side in each layer, the layers in series",
                text!("web {} of {}", style.small(rib.web), style.small(ribbed.zone_width)),
                resistance(ribbed.zone_r_m2k_w),
                &ZONE_METHOD,
            ));
            steps.push(Step::new(
                "U value with ribs",
                "U = (W / R_zone + (s − W) / R_field) / s",
                format!(
                    "({w} / {} + ({s} − {w}) / {}) / {s}",
                    resistance(ribbed.zone_r_m2k_w),
                    resistance(figures.field_r_m2k_w),
                    w = style.small(ribbed.zone_width),
                    s = style.small(rib.spacing),
                ),
                style.u_value(1.0 / figures.r_m2k_w),
                &ZONE_METHOD,
            ));
        }
        _ => {}
    }
}

fn air_steps(inputs: &Inputs, figures: &Figures, style: Style, steps: &mut Vec<Step>) {
    if let (Some(inside), Some(dew)) = (inputs.inside, figures.dew_point) {
        steps.push(Step::new(
            "Dew point of the air inside",
            "p_sat(θ_dew) = φ · p_sat(θ)",
            text!(
                "{} at {}",
                percent(inside.humidity * 100.0),
                style.temperature(inside.temperature)
            ),
            style.temperature(dew),
            &SATURATION,
        ));
    }
    let (Some(inside), Some(outside), Some(surface)) =
        (inputs.inside, inputs.outside, figures.faces.first())
    else {
        return;
    };
    let (warm, cold) =
        (style.temperature(inside.temperature), style.temperature(outside.temperature));
    steps.push(Step::new(
        match &inputs.bridge {
            None => "Lining inside".to_owned(),
            Some(crossing) => text!("Lining between {}", called(crossing)),
        },
        "θ = θi − (θi − θe) · Rsi / R",
        text!(
            "{} − ({} − {}) · {} / {}",
            &warm,
            &warm,
            in_sum(&cold),
            style.thermal_resistance(inputs.surfaces.inside_m2k_w),
            style.thermal_resistance(figures.field_r_m2k_w)
        ),
        style.temperature(*surface),
        &TEMPERATURE_FACTOR,
    ));
    if let (Some(rib), Some(over)) = (&figures.rib, figures.bridge_surface) {
        steps.push(Step::new(
            "Lining over a rib",
            "θ = θe + f · (θi − θe)",
            text!("{} + {} · ({} − {})", &cold, plain(rib.rib_factor, 3), &warm, in_sum(&cold)),
            style.temperature(over),
            &STRIP,
        ));
    }
    let Some(profile) = &figures.profile else { return };
    for plane in &profile.planes {
        let name = inputs.name(plane.after_layer.saturating_sub(1));
        steps.push(Step::new(
            text!("Water behind {}", &name),
            "g = δ₀ · (slope of p over sd before − behind)",
            text!(
                "δ₀ = {} kg/(m s Pa), bend of the lower convex hull",
                plain(AIR_PERMEABILITY_KG_M_S_PA * 1e10, 1) + "·10⁻¹⁰"
            ),
            text!("{} g/m² a day", plain(plane.condenses_g_m2_day, 3)),
            if profile.planes.len() == 1 { &METHOD } else { &AIR_PERMEABILITY },
        ));
    }
}
