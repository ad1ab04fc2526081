//! A coating in words: answers, remarks and the table of layers.

use uom::si::f64::Volume;
use uom::si::temperature_interval::kelvin;

use super::found::{Found, OfLayer, bought, in_order};
use super::inputs::{Job, Layer};
use crate::coating::air::Margin;
use crate::coating::verdict::{Verdict, When};
use crate::quantity::Style;
use crate::report::{Answer, Remark, Table, TableRow, Weight};
use crate::sorting::sort_by;
use crate::text::text;
use crate::words::{Arg, Msg, coating as words};

/// Less left over than this share of the need is pointed out.
const SCANT: f64 = 0.03;

/// A row's name: its label, else its number; with how many there are.
pub(super) fn named(label: &str, number: Msg, count: u32, style: Style) -> String {
    let name = match label {
        "" => style.say(number),
        label => label.to_owned(),
    };
    match count {
        1 => name,
        count => style.say(words::Several { name, count: Arg::count(count) }),
    }
}

pub(super) fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let mut answers = Vec::new();
    let Some(layer) = job.layers.first() else { return answers };
    // Where there are several layers, the answers are about the sheet's own.
    let product = (job.layers.len() > 1).then(|| layer.name(style));
    let own = &found.own;
    if let Some(choice) = &own.choice {
        let label: Msg = match &product {
            None => words::BUY.into(),
            Some(product) => words::BuyOf { product: product.as_str() }.into(),
        };
        let left = words::BuyLeft { volume: Arg::volume(choice.left_over) };
        let note: Msg = match choice.cost {
            Some(cost) => words::BuyCost { cost: Arg::price(cost), left: Msg::from(left) }.into(),
            None => left.into(),
        };
        let answer = Answer::new(style.say(label), shopping(layer, own, style));
        answers.push(answer.note(style.say(note)));
    }
    answers.push(needed(layer, found, product, style));
    if let (Some(margin), Some(verdict)) = (&found.margin, found.verdicts.first()) {
        answers.push(coat_now(layer, verdict, margin, style));
    }
    answers
}

fn needed(layer: &Layer, found: &Found, product: Option<String>, style: Style) -> Answer {
    let own = &found.own;
    let label: Msg = match (product, own.thinner > Volume::default()) {
        (None, false) => words::NEEDED.into(),
        (None, true) => words::NEEDED_THINNED.into(),
        (Some(product), false) => words::NeededOf { product }.into(),
        (Some(product), true) => words::NeededThinnedOf { product }.into(),
    };
    let (coats, area) = (layer.coats, Arg::area(found.area));
    let note: Msg = match layer.penetrating {
        true => words::NeededNoFilm { coats, area }.into(),
        false => words::NeededFilm { coats, area, film: Arg::film(own.wet) }.into(),
    };
    Answer::new(style.say(label), style.volume_needed_both(own.paint)).note(style.say(note))
}

/// Yes only where label, dew point and the coming night are all known and allow it.
fn coat_now(layer: &Layer, verdict: &Verdict, margin: &Margin, style: Style) -> Answer {
    let dew = above_dew(margin);
    let why = |when| verdict.why(when, &layer.limits);
    let (said, note) = match (verdict.may_coat(), why(When::Now)) {
        (Some(true), _) => (words::COAT_NOW_YES, dew),
        (Some(false), Some(now)) => (words::COAT_NOW_WAIT, Arg::from(style.write(&now))),
        (Some(false), None) => {
            let why = why(When::Later).unwrap_or_else(|| Arg::from(""));
            (words::COAT_NOW_NOT_TONIGHT, Msg::from(words::CoatNowThen { why }).into())
        }
        (None, _) => {
            let enter = words::CoatNowEnter { dew, missing: verdict.unknown() };
            (words::COAT_NOW_UNKNOWN, Msg::from(enter).into())
        }
    };
    Answer::new(style.say(words::COAT_NOW), style.say(said)).note(style.write(&note))
}

fn above_dew(margin: &Margin) -> Arg {
    let above = margin.margin.get::<kelvin>();
    let by = Arg::kelvin(above.abs());
    match above < 0.0 {
        true => Msg::from(words::BelowDew { by }).into(),
        false => Msg::from(words::AboveDew { by }).into(),
    }
}

/// `2 × 1 gal + 1 × 1 qt`.
pub(super) fn shopping(layer: &Layer, found: &OfLayer, style: Style) -> String {
    let cans = found.choice.iter().flat_map(|choice| bought(&layer.offers, choice));
    let mut cans: Vec<_> = cans.collect();
    sort_by(&mut cans, |(one, _), (other, _)| other.size.value.total_cmp(&one.size.value));
    let cans =
        cans.iter().map(|(offer, count)| text!("{} × {}", count, style.container(offer.size)));
    cans.collect::<Vec<_>>().join(" + ")
}

/// All layers side by side, where there are several.
pub(super) fn layers_table(job: &Job, found: &Found, style: Style) -> Option<Table> {
    if job.layers.len() < 2 {
        return None;
    }
    let row = |(layer, of_layer): (&Layer, &OfLayer)| TableRow {
        cells: vec![
            layer.name(style),
            style.say(words::CoatsOf { coats: layer.coats }),
            match layer.penetrating {
                true => style.say(words::TABLE_NO_FILM),
                false => style.film(of_layer.wet),
            },
            style.volume_needed(of_layer.paint),
            shopping(layer, of_layer, style),
            of_layer.cost.map_or_else(String::new, |cost| style.write(&Arg::price(cost))),
        ],
        chosen: false,
    };
    let layers: Vec<_> =
        job.layers.iter().zip(found.layers()).map(|both| (both, both.0.over)).collect();
    let mut rows: Vec<TableRow> = in_order(layers.into_iter()).map(row).collect();
    if let Some(cost) = found.layers().map(|layer| layer.cost).sum::<Option<f64>>() {
        let mut cells = vec![String::new(); 6];
        cells[0] = style.say(words::TABLE_TOGETHER);
        cells[5] = style.write(&Arg::price(cost));
        rows.push(TableRow { cells, chosen: false });
    }
    let heads = [
        words::TABLE_PRODUCT,
        words::TABLE_COATS,
        words::TABLE_WET,
        words::TABLE_NEEDED,
        words::TABLE_BUY,
        words::TABLE_COST,
    ];
    let heads = heads.map(|head| style.say(head)).into();
    Some(Table { title: style.say(words::TABLE), heads, rows })
}

pub(super) fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let several = job.layers.len() > 1;
    let of = |layer: &Layer, weight: Weight, said: Msg| {
        let text = match several {
            false => style.say(said),
            true => style.say(words::OfProduct { product: layer.name(style), said }),
        };
        Remark { weight, text }
    };
    let mut remarks = Vec::new();
    for (layer, verdict) in job.layers.iter().zip(&found.verdicts) {
        let said = of_verdict(layer, verdict).into_iter();
        remarks.extend(said.map(|(weight, said)| of(layer, weight, said)));
    }
    let frost = found.margin.and_then(|margin| margin.air.frost_point);
    remarks.extend(frost.map(|frost| {
        Remark::note(style.say(words::Frost { temperature: Arg::temperature(frost) }))
    }));
    for (layer, of_layer) in job.layers.iter().zip(found.layers()) {
        let notes = of_layer_notes(layer, of_layer).into_iter();
        remarks.extend(notes.map(|said| of(layer, Weight::Note, said)));
    }
    remarks
}

fn of_layer_notes(layer: &Layer, found: &OfLayer) -> Vec<Msg> {
    let mut notes: Vec<Msg> = Vec::new();
    if !layer.loss_given {
        notes.push(words::UsualLoss { loss: Arg::ratio(layer.loss) }.into());
    }
    if layer.penetrating && layer.wipe.is_none() {
        notes.push(words::WIPE_UNKNOWN.into());
    }
    if found.thinner > Volume::default() {
        let mix = words::MixThinner {
            paint: Arg::volume_needed(found.paint),
            thinner: Arg::volume_needed(found.thinner),
            all: Arg::volume_needed(found.volume),
        };
        notes.push(mix.into());
    }
    let Some(choice) = &found.choice else {
        notes.push(words::ADD_CONTAINERS.into());
        return notes;
    };
    if layer.offers.iter().any(|offer| offer.price.is_none()) {
        notes.push(words::NOT_PRICED.into());
    }
    if choice.left_over < found.paint * SCANT {
        notes.push(words::Scant { volume: Arg::volume(choice.left_over) }.into());
    }
    if !choice.proved {
        notes.push(words::NOT_PROVED.into());
    }
    notes
}

fn of_verdict(layer: &Layer, verdict: &Verdict) -> Vec<(Weight, Msg)> {
    let why = |when| verdict.why(when, &layer.limits);
    let mut said = Vec::new();
    if let Some(why) = why(When::Now) {
        said.push((Weight::Warning, words::NotYet { why }.into()));
    }
    if let Some(why) = why(When::Later) {
        said.push((Weight::Warning, words::NotTonight { why }.into()));
    }
    match verdict.may_coat() {
        Some(true) => said.push((Weight::Good, words::MAY_GO_ON.into())),
        None => {
            let missing = verdict.unknown();
            said.push((Weight::Note, words::NotShown { missing }.into()));
        }
        Some(false) => {}
    }
    said
}
