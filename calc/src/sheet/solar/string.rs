//! The string on the coldest morning, and its wire, step by step.

use super::{Figures, Inputs};
use crate::energy::string::ColdPanel;
use crate::formula::step;
use crate::quantity::Style;
use crate::report::Step;
use crate::words::solar as words;

pub(super) fn steps(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Step> {
    let Some(cold) = &figures.cold else { return Vec::new() };
    let mut steps = vec![
        match &cold.by {
            ColdPanel::Coefficient(by) => step(words::STEP_COLD_PANEL, by, style),
            ColdPanel::Table(by) => step(words::STEP_COLD_PANEL, by, style),
        },
        step(words::STEP_COLD_STRING, &cold.in_string, style),
    ];
    steps.extend(Figures::wire(inputs).map(|wire| step(words::STEP_WIRE, &wire, style)));
    steps
}
