//! How resistance, ampacity and fuse came about.

use super::{amperes, degrees, rating};
use crate::electrical::ampacity::{
    Conditions, Rated, TABLE_AMBIENT_C, ambient_factor, bundling_factor, insulation_factor,
    table_ampacity,
};
use crate::electrical::conductor::Conductor;
use crate::electrical::fuse::{self, Fuse};
use crate::electrical::run_formulas::{
    Bundled, Buried, InWarmAir, NeededLong, NeededShort, WarmAwg, WarmMetric,
};
use crate::formula::{Formula as _, step};
use crate::quantity::{Style, amount};
use crate::report::Step;
use crate::words::{Msg, wiring as words};

/// Resistance of one conductor at its temperature. [ohm/m, C]
pub fn resistance_steps(
    conductor: Conductor,
    copper_c: f64,
    ohm_per_m: f64,
    style: Style,
) -> Vec<Step> {
    let size = conductor.to_string();
    let source = conductor.resistance_source();
    let (symbol, table_c) = match conductor {
        Conductor::Awg(_) => ("r75", 75.0),
        Conductor::SquareMillimetre(_) => ("r20", 20.0),
        Conductor::PerLength { .. } => {
            return vec![Step::new(
                style.say(words::STEP_GIVEN),
                style.say(words::STEP_GIVEN_FORMULA),
                style.figure(size),
                style.ohms_per_length(ohm_per_m),
                source,
            )];
        }
    };
    let table = conductor.ohm_per_m(table_c).unwrap_or(ohm_per_m);
    let listed = Step::new(
        style.say(words::StepTable { conductor: size.as_str(), temperature: degrees(table_c) }),
        symbol,
        style.say(words::StepTableNumbers { conductor: size.as_str() }),
        style.ohms_per_length(table),
        source,
    );
    let name = words::StepWarmed { temperature: amount(copper_c, 1, "°C") };
    let warmed = match conductor {
        Conductor::Awg(_) => step(name, &WarmAwg { at_75: table, copper_c }, style),
        _ => step(name, &WarmMetric { at_20: table, copper_c }, style),
    };
    vec![listed, warmed]
}

/// What a conductor may carry as it lies; nothing where no table has it.
pub fn ampacity_steps(conductor: Conductor, conditions: &Conditions, style: Style) -> Vec<Step> {
    let Some(table) = table_ampacity(conductor, conditions.insulation) else { return Vec::new() };
    let size = conductor.to_string();
    let listed: Msg = match table.stands_in {
        Some(listed) => words::StepCarriesAs { conductor: size, listed }.into(),
        None => words::StepCarries { conductor: size }.into(),
    };
    let in_air = words::StepCarriesNumbers {
        rating: degrees(conditions.insulation.rating_c()),
        air: degrees(TABLE_AMBIENT_C),
    };
    let mut steps = vec![Step::new(
        style.say(listed),
        "Iz",
        style.say(in_air),
        style.figure(amperes(table.amperes)),
        table.source,
    )];
    let mut left = table.amperes;
    let factor = bundling_factor(conditions.bundled);
    if factor < 1.0 {
        let bundled = Bundled { table_a: left, factor };
        let count = conditions.bundled;
        steps.push(step(words::StepBundled { count }, &bundled, style));
        left = bundled.value();
    }
    if ambient_factor(conditions.insulation, conditions.ambient_c) < 1.0 {
        let (rating_c, air_c) = (conditions.insulation.rating_c(), conditions.ambient_c);
        let warm = InWarmAir { current_a: left, rating_c, air_c };
        steps.push(step(words::STEP_WARM_AIR, &warm, style));
        left = warm.value();
    }
    let factor = insulation_factor(conditions.in_insulation);
    if factor < 1.0 {
        steps.push(step(words::STEP_BURIED, &Buried { current_a: left, factor }, style));
    }
    if let Some((wire, rule)) =
        Rated::new(conductor, conditions).ok().and_then(|wire| Some((wire, wire.fuse_rule()?)))
    {
        steps.push(Step::new(
            style.say(words::STEP_SMALL),
            style.say(words::STEP_SMALL_FORMULA),
            style.figure(conductor.to_string()),
            style.figure(amperes(wire.fuse_limit_a())),
            rule,
        ));
    }
    steps
}

/// The fuse at the source.
pub fn fuse_steps(
    current_a: f64,
    continuous: bool,
    fuse: Option<&Fuse>,
    style: Style,
) -> Vec<Step> {
    let (needed_a, needed) = if continuous {
        let needed = NeededLong { current_a };
        (needed.value(), step(words::STEP_FUSE_LEAST, &needed, style))
    } else {
        let needed = NeededShort { current_a };
        (needed.value(), step(words::STEP_FUSE_LEAST, &needed, style))
    };
    let mut steps = vec![needed];
    if let Some((rating_a, source)) = fuse::next_rating(needed_a).filter(|_| fuse.is_some()) {
        steps.push(Step::new(
            style.say(words::STEP_RATING),
            style.say(words::STEP_RATING_FORMULA),
            style.figure(amperes(needed_a)),
            style.figure(rating(rating_a)),
            source,
        ));
    }
    steps
}
