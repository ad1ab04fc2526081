//! Layer by layer: tables and working.

use uom::si::length::millimeter;

use super::found::Found;
use super::{Crossing, Inputs};
use crate::formula::step;
use crate::quantity::{Length, Style, significant};
use crate::report::{Step, Table, TableRow};
use crate::thermal::build_up::COMBINED_METHOD;
use crate::thermal::condensation::AIR_PERMEABILITY;
use crate::thermal::materials::{MATERIALS, Range};
use crate::thermal::steel_rib::{LEAST_COVER_MM, ZONE_METHOD};
use crate::words::{Arg, insulation as words};

pub(super) fn tables(inputs: &Inputs, found: &Found, style: Style) -> Vec<Table> {
    through(inputs, found, style).into_iter().chain([usual(style)]).collect()
}

/// The table of materials.
fn usual(style: Style) -> Table {
    let said = style.words;
    let rows = MATERIALS.iter().map(|material| {
        let factor = material.vapour_factor;
        TableRow {
            cells: vec![
                style.say(material.name),
                range(&material.conductivity_w_mk, style, |value| style.conductivity(value)),
                factor.map_or_else(String::new, |factor| {
                    range(&factor, style, |value| significant(value, 3))
                }),
                material.conductivity_w_mk.source.say(said),
                factor.map_or_else(String::new, |factor| factor.source.say(said)),
            ],
            chosen: false,
        }
    });
    Table {
        title: style.say(words::USUAL),
        heads: [
            words::USUAL_MATERIAL,
            words::USUAL_CONDUCTIVITY,
            words::USUAL_FACTOR,
            words::USUAL_CONDUCTIVITY_SOURCE,
            words::USUAL_FACTOR_SOURCE,
        ]
        .map(|head| style.say(head))
        .into(),
        rows: rows.collect(),
    }
}

fn range(range: &Range, style: Style, write: impl Fn(f64) -> String) -> String {
    if range.low == range.high {
        return write(range.low);
    }
    style.say(words::Range { low: write(range.low), high: write(range.high) })
}

/// Temperatures, and where they are known vapour pressures, at every face.
fn through(inputs: &Inputs, found: &Found, style: Style) -> Option<Table> {
    if found.faces.is_empty() {
        return None;
    }
    let mut heads = vec![words::THROUGH_FACE, words::THROUGH_TEMPERATURE];
    if found.profile.is_some() {
        heads.extend([words::THROUGH_VAPOR, words::THROUGH_SATURATED]);
    }
    let rows = found.faces.iter().enumerate().map(|(index, temperature)| {
        let name = match index {
            0 => style.say(words::FACE_LINING),
            _ => style.say(words::FaceBehind { layer: inputs.name(index - 1, style) }),
        };
        let mut cells = vec![name, style.temperature(*temperature)];
        if let Some(face) = found.profile.as_ref().and_then(|profile| profile.faces.get(index)) {
            cells.extend([face.vapour, face.saturation].map(|pa| style.write(&Arg::pressure(pa))));
        }
        TableRow { cells, chosen: false }
    });
    Some(Table {
        title: style.say(match &inputs.bridge {
            None => words::THROUGH,
            Some(Crossing::Timber(_)) => words::THROUGH_BATTENS,
            Some(Crossing::Steel(_)) => words::THROUGH_RIBS,
        }),
        heads: heads.into_iter().map(|head| style.say(head)).collect(),
        rows: rows.collect(),
    })
}

pub(super) fn working(inputs: &Inputs, found: &Found, style: Style) -> Vec<Step> {
    let layers = inputs.plain_layers();
    let layers = layers.iter().enumerate();
    let mut steps: Vec<Step> = layers
        .map(|(index, layer)| Step {
            name: inputs.name(index, style),
            ..step(words::STEP_ALL, &layer.resistance(), style)
        })
        .collect();
    steps.push(step(words::STEP_ALL, &found.field, style));
    if let Some(mean) = &found.mean {
        steps.push(step(words::STEP_UPPER, &mean.upper, style));
        steps.push(step(words::STEP_LOWER, &mean.lower, style));
        steps.push(step(words::STEP_MEAN, mean, style));
    }
    if let Some(rib) = &found.rib {
        let least = Arg::small(Length::new::<millimeter>(LEAST_COVER_MM));
        steps.push(step(words::StepZone { least }, &rib.zone_width, style));
        steps.push(step(words::STEP_ZONE_R, &rib.zone, style));
        steps.push(step(words::STEP_RIBBED, &rib.shown, style));
    }
    steps.push(Step {
        // ISO 6946 leaves metal out.
        source: if found.rib.is_some() { &ZONE_METHOD } else { &COMBINED_METHOD },
        ..step(words::STEP_U, &found.u, style)
    });
    steps.extend(found.dew_point.iter().map(|dew| step(words::STEP_DEW, dew, style)));
    let lining = match &inputs.bridge {
        None => words::STEP_LINING,
        Some(Crossing::Timber(_)) => words::STEP_LINING_BATTENS,
        Some(Crossing::Steel(_)) => words::STEP_LINING_RIBS,
    };
    steps.extend(found.inner_surface.iter().map(|surface| step(lining, surface, style)));
    steps.extend(found.over_rib.iter().map(|over| step(words::STEP_OVER_RIB, over, style)));
    steps.extend(water(inputs, found, style));
    steps
}

/// What gathers at each plane.
fn water(inputs: &Inputs, found: &Found, style: Style) -> Vec<Step> {
    let Some(profile) = &found.profile else { return Vec::new() };
    let steps = profile.planes.iter().map(|plane| {
        let layer = inputs.name(plane.after_layer.saturating_sub(1), style);
        let mut step = step(words::StepWater { layer }, &plane.gathers, style);
        if profile.planes.len() > 1 {
            step.source = &AIR_PERMEABILITY;
        }
        step
    });
    steps.collect()
}
