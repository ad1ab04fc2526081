//! Answers, remarks and the table of layers of the coating sheet.

use crate::sorting::sort_by;
use crate::text::text;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;

use super::{Inputs, Layer, Worked, WorkedLayer, bought, in_order, reasons};
use crate::coating::air::Margin;
use crate::coating::verdict::{Verdict, When};
use crate::quantity::{Style, Volume, money, percent as write_percent};
use crate::report::{Answer, Remark, Table, TableRow, texts};

/// Less left over than this share of the need is pointed out.
const SCANT: f64 = 0.03;

/// A row's name: its label, else its number; with how many there are.
pub fn named(label: &str, noun: &str, index: usize, count: u32) -> String {
    let name = match label {
        "" => text!("{} {}", &noun, index + 1),
        label => label.to_owned(),
    };
    match count {
        1 => name,
        count => text!("{} × {}", &name, &count),
    }
}

pub fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let mut answers = Vec::new();
    if let (Some(layer), Some(of_layer)) = (inputs.layers.first(), worked.layers.first()) {
        layer_answers(inputs, layer, worked, of_layer, style, &mut answers);
    }
    if let (Some(margin), Some(verdict), Some(layer)) =
        (&worked.margin, worked.verdicts.first(), inputs.layers.first())
    {
        answers.push(coat_now(layer, verdict, margin, style));
    }
    answers
}

/// Yes only where label, dew point and the coming night are all known and allow it.
fn coat_now(layer: &Layer, verdict: &Verdict, margin: &Margin, style: Style) -> Answer {
    let dew = above_dew_point(margin.margin.get::<kelvin>(), style);
    let now = reasons::bars(verdict, When::Now, &layer.limits, style);
    let later = reasons::bars(verdict, When::Later, &layer.limits, style);
    match verdict.may_coat() {
        Some(true) => {
            Answer::new("Coat now?", "Yes, by label, dew point and the night entered").note(dew)
        }
        Some(false) if now.is_empty() => {
            Answer::new("Coat now?", "No: not before this night").note(text!("then {}", &later))
        }
        Some(false) => Answer::new("Coat now?", "No: wait").note(now),
        None => Answer::new("Coat now?", "Not shown: the dew point alone was checked").note(text!(
            "{}; enter {}",
            &dew,
            reasons::missing(verdict)
        )),
    }
}

fn layer_answers(
    inputs: &Inputs,
    layer: &Layer,
    worked: &Worked,
    of_layer: &WorkedLayer,
    style: Style,
    answers: &mut Vec<Answer>,
) {
    // Where there are several layers, the answers are about the sheet's own.
    let of = match inputs.layers.len() {
        1 => String::new(),
        _ => text!(", {}", &layer.product),
    };
    if let Some(choice) = &of_layer.choice {
        let left = text!("{} left over", style.volume(choice.left_over));
        let label = text!("Buy{}", &of);
        answers.push(Answer::new(label, shopping(layer, of_layer, style)).note(
            match choice.cost {
                Some(cost) => text!("{} in all; {}", money(cost), &left),
                None => left,
            },
        ));
    }
    let thinned = of_layer.thinner > Volume::default();
    let before = if thinned { ", before thinning" } else { "" };
    answers.push(
        Answer::new(text!("Needed{}{}", &of, &before), style.volume_needed_both(of_layer.paint))
            .note(text!(
                "{} on {}, {}",
                coats(layer.coats),
                style.area(worked.area),
                match layer.penetrating {
                    true => "wiped off, no film".to_owned(),
                    false => text!("{} wet each", style.film(of_layer.wet)),
                }
            )),
    );
}

fn coats(coats: u32) -> String {
    if coats == 1 { "1 coat".to_owned() } else { text!("{} coats", &coats) }
}

/// `2 × 1 gal + 1 × 1 qt`.
pub fn shopping(layer: &Layer, worked: &WorkedLayer, style: Style) -> String {
    let cans = worked.choice.iter().flat_map(|choice| bought(&layer.offers, choice));
    let mut cans: Vec<_> = cans.collect();
    sort_by(&mut cans, |(one, _), (other, _)| other.size.value.total_cmp(&one.size.value));
    let cans =
        cans.iter().map(|(offer, count)| text!("{} × {}", &count, style.container(offer.size)));
    cans.collect::<Vec<_>>().join(" + ")
}

/// All layers side by side, where there are several.
pub fn layers_table(inputs: &Inputs, worked: &Worked, style: Style) -> Option<Table> {
    if inputs.layers.len() < 2 {
        return None;
    }
    let row = |(layer, of_layer): (&Layer, &WorkedLayer)| {
        let choice = of_layer.choice.as_ref();
        TableRow {
            cells: vec![
                layer.product.clone(),
                coats(layer.coats),
                if layer.penetrating { "none".into() } else { style.film(of_layer.wet) },
                style.volume_needed(of_layer.paint),
                shopping(layer, of_layer, style),
                choice.and_then(|choice| choice.cost).map_or_else(String::new, money),
            ],
            chosen: false,
        }
    };
    let mut rows: Vec<TableRow> = in_order(inputs, worked).map(row).collect();
    let costs = worked.layers.iter().map(|layer| layer.choice.as_ref()?.cost);
    if let Some(cost) = costs.sum::<Option<f64>>() {
        let mut cells = texts(&["together", "", "", "", ""]);
        cells.push(money(cost));
        rows.push(TableRow { cells, chosen: false });
    }
    Some(Table {
        title: "Layers, in the order in which they go on".into(),
        heads: texts(&["Product", "Coats", "Wet film", "Needed", "Buy", "Cost"]),
        rows,
    })
}

fn above_dew_point(kelvin_above: f64, style: Style) -> String {
    let side = if kelvin_above < 0.0 { "below" } else { "above" };
    text!(
        "the surface is {} {} the dew point",
        style.temperature_difference(kelvin_above.abs()),
        &side
    )
}

pub fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let several = inputs.layers.len() > 1;
    let of = |layer: &Layer| match several {
        false => String::new(),
        true => text!("{}: ", &layer.product),
    };
    if let Some(margin) = &worked.margin {
        for (layer, verdict) in inputs.layers.iter().zip(&worked.verdicts) {
            verdict_remarks(&of(layer), layer, verdict, style, &mut remarks);
        }
        air_remarks(margin, style, &mut remarks);
    }
    for (layer, of_layer) in inputs.layers.iter().zip(&worked.layers) {
        for text in layer_remarks(layer, of_layer, style) {
            remarks.push(Remark::note(text!("{}{}", of(layer), &text)));
        }
    }
    remarks
}

fn layer_remarks(layer: &Layer, worked: &WorkedLayer, style: Style) -> Vec<String> {
    let mut remarks = Vec::new();
    if !layer.loss_given {
        remarks.push(text!(
            "No loss is entered: {} is taken, as usual with brush and roller. Type 0 for none.",
            write_percent(layer.loss.get::<percent>())
        ));
    }
    if layer.penetrating && layer.wipe.is_none() {
        remarks.push(
            "When to wipe it off is not entered: go by the label, and keep to what you can wipe in \
             time."
                .to_owned(),
        );
    }
    if worked.thinner > Volume::default() {
        remarks.push(text!(
            "Mix {} from the can with {} of thinner: {} as applied. The containers cover what \
             comes from the can.",
            style.volume_needed(worked.paint),
            style.volume_needed(worked.thinner),
            style.volume_needed(worked.amount.needed)
        ));
    }
    let Some(choice) = &worked.choice else {
        let add = "Add the containers on the shelf, with their prices, to see which to buy.";
        remarks.push(add.to_owned());
        return remarks;
    };
    if layer.offers.iter().any(|offer| offer.price.is_none()) {
        remarks.push(
            "Not every container has a price, so these leave the least over; with all prices the \
             cheapest are chosen."
                .to_owned(),
        );
    }
    if choice.left_over < worked.paint * SCANT {
        remarks.push(text!(
            "Only {} is left over: with a little more loss than entered it will not do.",
            style.volume(choice.left_over)
        ));
    }
    if !choice.proved {
        remarks.push(
            "There are too many ways to try them all: another choice might be a little better."
                .to_owned(),
        );
    }
    remarks
}

fn verdict_remarks(
    of: &str,
    layer: &Layer,
    verdict: &Verdict,
    style: Style,
    remarks: &mut Vec<Remark>,
) {
    for (when, then) in
        [(When::Now, "Do not coat yet"), (When::Later, "Do not coat before this night")]
    {
        let why = reasons::bars(verdict, when, &layer.limits, style);
        if !why.is_empty() {
            remarks.push(Remark::warning(text!(
                "{}{}: {}. Warm the body, or wait for another day.",
                of,
                then,
                &why
            )));
        }
    }
    match verdict.may_coat() {
        Some(true) => remarks.push(Remark::good(text!(
            "{}Air, surface and the night entered are within the label's limits. Measure again before \
             each coat.",
            of
        ))),
        None => remarks.push(Remark::note(text!(
            "{}Whether it may go on is not shown: enter {}.",
            of,
            reasons::missing(verdict)
        ))),
        Some(false) => {}
    }
}

fn air_remarks(margin: &Margin, style: Style, remarks: &mut Vec<Remark>) {
    if let Some(frost) = margin.air.frost_point {
        remarks.push(Remark::note(text!(
            "Frost forms from {} on: the label's least temperature comes first.",
            style.temperature(frost)
        )));
    }
}
