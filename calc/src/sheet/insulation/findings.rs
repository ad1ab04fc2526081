//! What is found of a build-up: answers and remarks.

use uom::si::f64::ThermodynamicTemperature;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::Inputs;
use super::found::Found;
use crate::formula::Formula as _;
use crate::quantity::{Style, amount, beside, plain};
use crate::report::{Answer, Remark, Weight};
use crate::sorting::sort_by_key;
use crate::thermal::condensation::Profile;
use crate::thermal::moisture::MOULD_HUMIDITY;
use crate::words::{Arg, insulation as words};

/// Exact where whole degrees would not show whether a surface is below the dew point.
fn telling(found: &Found, style: Style) -> Style {
    let Some(dew) = found.dew_point.as_ref().map(|dew| dew.value()) else { return style };
    let lining = found.inner_surface.as_ref().map(|lining| lining.value());
    [lining, found.bridge_surface]
        .into_iter()
        .flatten()
        .fold(style, |style, of| style.of_dew(dew, of))
}

pub(super) fn answers(inputs: &Inputs, found: &Found, style: Style) -> Vec<Answer> {
    let style = telling(found, style);
    let r = Arg::resistance(found.r_m2k_w);
    let note = match &inputs.bridge {
        None => style.say(words::UPlain { r }),
        Some(crossing) => {
            let u = Arg::transmittance(found.field_u.value());
            style.say(words::UCrossed { by: crossing.called(), r, u })
        }
    };
    let mut answers =
        vec![Answer::new(style.say(words::U), style.u_value(found.u.value())).note(note)];
    if let Some(lining) = &found.inner_surface {
        let note = match (&inputs.bridge, found.bridge_surface) {
            (Some(crossing), Some(over)) => {
                let temperature = Arg::temperature(over);
                style.say(words::LiningOver { by: crossing.called(), temperature })
            }
            _ => String::new(),
        };
        let lining = style.temperature(lining.value());
        answers.push(Answer::new(style.say(words::LINING), lining).note(note));
    }
    if let Some(grams) = found.condenses_g_m2_day {
        let label = style.say(words::GATHERING);
        answers.push(match found.wet() {
            0 => Answer::new(label, style.say(words::GATHERING_NONE)),
            _ => Answer::new(label, style.say(words::Rate { grams: plain(grams, 2) }))
                .note(style.say(words::GATHERING_NOTE)),
        });
    }
    answers
}

pub(super) fn remarks(inputs: &Inputs, found: &Found, style: Style) -> Vec<Remark> {
    let style = telling(found, style);
    let mut remarks = Vec::new();
    if let Some(dew) = &found.dew_point {
        remarks.push(wet_surfaces(inputs, found, dew.value(), style));
    }
    if let Some(profile) = &found.profile {
        wet_planes(inputs, profile, style, &mut remarks);
    } else if inputs.inside.is_some() && inputs.outside.is_some() {
        let missing = inputs.layers.iter().enumerate();
        let missing = missing.filter(|(_, layer)| layer.vapour_factor.is_none());
        let layers = Arg::each(missing.map(|(index, _)| inputs.name(index, style)));
        remarks.push(Remark::note(style.say(words::FactorsMissing { layers })));
    } else {
        remarks.push(Remark::note(style.say(words::AIR_MISSING)));
    }
    if let Some(percent) = found.humidity_limit_percent {
        let humidity = amount(percent.floor(), 0, "%");
        remarks
            .push(Remark::note(style.say(words::HumidityLimit { humidity, limit: mold_limit() })));
    }
    if found.rib.is_some() {
        remarks.push(Remark::note(style.say(words::RIB_TEMPERATURE)));
        remarks.push(Remark::note(style.say(words::RIB_ESTIMATE)));
    }
    if found.profile.is_some() {
        remarks.push(Remark::note(style.say(words::LEFT_OUT)));
    }
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

fn mold_limit() -> String {
    amount(MOULD_HUMIDITY * 100.0, 0, "%")
}

fn wet_surfaces(
    inputs: &Inputs,
    found: &Found,
    at: ThermodynamicTemperature,
    style: Style,
) -> Remark {
    let (dew, limit) = (Arg::temperature(at), mold_limit());
    let Some(lining) = &found.inner_surface else {
        return Remark::note(style.say(words::DewPoint { dew }));
    };
    if lining.value() <= at {
        return Remark::warning(style.say(words::WetEverywhere { dew }));
    }
    if let (Some(crossing), Some(over)) = (&inputs.bridge, found.bridge_surface)
        && over <= at
    {
        return Remark::warning(style.say(words::WetOver { by: crossing.called(), dew }));
    }
    match found.surface_humidity_percent.filter(|humid| *humid > MOULD_HUMIDITY * 100.0) {
        Some(humid) => {
            let humidity = beside(humid, MOULD_HUMIDITY * 100.0, 0, "%");
            Remark::warning(style.say(words::Mold { dew, humidity, limit }))
        }
        None => Remark::good(style.say(words::Dry { dew, limit })),
    }
}

fn wet_planes(inputs: &Inputs, profile: &Profile, style: Style, remarks: &mut Vec<Remark>) {
    for plane in &profile.planes {
        remarks.push(Remark::warning(style.say(words::WetBehind {
            frost: frost(plane.temperature),
            layer: inputs.name(plane.after_layer.saturating_sub(1), style),
            temperature: Arg::temperature(plane.temperature),
            grams: plain(plane.condenses_g_m2_day, 2),
        })));
    }
    for within in &profile.within {
        remarks.push(Remark::warning(style.say(words::WetWithin {
            frost: frost(within.temperature),
            layer: inputs.name(within.layer.saturating_sub(1), style),
            temperature: Arg::temperature(within.temperature),
            grams: plain(within.condenses_g_m2_day, 2),
        })));
    }
    if profile.planes.is_empty() && profile.within.is_empty() {
        remarks.push(Remark::note(style.say(words::NO_WATER)));
    }
    if profile.outer_surface_wet {
        remarks.push(Remark::note(style.say(words::OUTSIDE_DEW)));
    }
}

/// What a message chooses its words by.
fn frost(at: ThermodynamicTemperature) -> &'static str {
    if at < ThermodynamicTemperature::new::<degree_celsius>(0.0) { "yes" } else { "no" }
}
