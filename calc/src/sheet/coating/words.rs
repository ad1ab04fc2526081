//! Answers, remarks and the table of layers of the coating sheet.

use crate::sorting::sort_by;
use crate::text::text;
use uom::si::temperature_interval::kelvin;

use super::{Inputs, Layer, Worked, WorkedLayer, bought, in_order};
use crate::coating::air::{HUMIDITY_LIMIT_PERCENT, LEAST_MARGIN_K, Margin};
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
    if let Some(margin) = &worked.margin {
        let above = margin.margin.get::<kelvin>();
        let answer = match (margin.may_coat, margin.too_humid) {
            (false, _) => "No: wait",
            (true, true) => "Better wait",
            (true, false) => "Yes",
        };
        answers.push(Answer::new("Coat now?", answer).note(above_dew_point(above, style)));
    }
    answers
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
        Answer::new(text!("Needed{}{}", &of, &before), style.volume_both(of_layer.paint)).note(
            text!(
                "{} on {}, {} wet each",
                coats(layer.coats),
                style.area(worked.area),
                style.film(of_layer.wet)
            ),
        ),
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
                style.film(of_layer.wet),
                style.volume(of_layer.paint),
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
    if let Some(margin) = &worked.margin {
        air_remarks(margin, style, &mut remarks);
    }
    for (layer, of_layer) in inputs.layers.iter().zip(&worked.layers) {
        let of = match inputs.layers.len() {
            1 => String::new(),
            _ => text!("{}: ", &layer.product),
        };
        for text in layer_remarks(layer, of_layer, style) {
            remarks.push(Remark::note(text!("{}{}", &of, &text)));
        }
    }
    remarks
}

fn layer_remarks(layer: &Layer, worked: &WorkedLayer, style: Style) -> Vec<String> {
    let mut remarks = Vec::new();
    if worked.thinner > Volume::default() {
        remarks.push(text!(
            "Mix {} from the can with {} of thinner: {} as applied. The containers cover what \
             comes from the can.",
            style.volume(worked.paint),
            style.volume(worked.thinner),
            style.volume(worked.amount.needed)
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

fn air_remarks(margin: &Margin, style: Style, remarks: &mut Vec<Remark>) {
    let least = style.temperature_difference(LEAST_MARGIN_K);
    let dew = style.temperature(margin.air.dew_point);
    let above = above_dew_point(margin.margin.get::<kelvin>(), style);
    if !margin.may_coat {
        remarks.push(Remark::warning(text!(
            "Do not coat yet: {} of {}, and {} above it is the least. Warm the \
             surface, or wait for drier air.",
            &above,
            &dew,
            &least
        )));
    }
    if margin.too_humid {
        remarks.push(Remark::warning(text!(
            "The air is at {} humidity or more: wait for drier air, whatever the dew point.",
            write_percent(HUMIDITY_LIMIT_PERCENT)
        )));
    }
    if margin.may_coat && !margin.too_humid {
        remarks.push(Remark::good(text!(
            "Dry enough: {} of {}; {} is the least. Measure again before each coat.",
            &above,
            &dew,
            &least
        )));
    }
    if let Some(frost) = margin.air.frost_point {
        remarks.push(Remark::note(text!(
            "Frost forms from {} on: the label's least temperature comes first.",
            style.temperature(frost)
        )));
    }
}
