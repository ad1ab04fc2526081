//! What a coating takes from the store.

use uom::si::f64::{MassDensity, Volume};

use super::found::{Found, bought};
use super::inputs::Job;
use crate::lists::{BuyLine, LineId};
use crate::quantity::Style;
use crate::text::text;
use crate::words::coating as words;

pub(super) fn buy(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let mut lines = Vec::new();
    let id = |kind: &str, name: &str| text!("{}/{}", kind, LineId::name(name));
    let loose = |id: String, item: String, volume: Volume, density: Option<MassDensity>| {
        let (needed, unit) = style.poured(volume);
        BuyLine::amount(LineId::shared(id), item, "", needed, unit)
            .mass(density.map(|density| density * volume))
    };
    for (layer, of_layer) in job.layers.iter().zip(found.layers()) {
        let name = layer.name(style);
        match &of_layer.choice {
            Some(choice) => lines.extend(bought(&layer.offers, choice).map(|(offer, count)| {
                let count = f64::from(count);
                let id = id("paint", &layer.product);
                let id = LineId::shared(text!("{}/{}", &id, LineId::volume(offer.size)));
                // What is left over is shared among the containers by what they hold.
                let used = 1.0 - (choice.left_over / choice.total).value;
                BuyLine {
                    needed: count * used,
                    ..BuyLine::pieces(id, name.as_str(), style.container(offer.size), count)
                        .cost(offer.price.map(|price| price * count))
                        .mass(layer.density.map(|density| density * offer.size * count))
                }
            })),
            None => {
                let id = id("paint", &layer.product);
                lines.push(loose(id, name.clone(), of_layer.paint, layer.density));
            }
        }
        if of_layer.thinner > Volume::default() {
            let item = style.say(words::ThinnerFor { product: name });
            lines.push(loose(id("thinner", &layer.product), item, of_layer.thinner, None));
        }
    }
    for (supply, count) in job.inputs.supplies.iter().zip(&found.counts) {
        let count = f64::from(*count);
        let id = LineId::shared(id("supply", &supply.label));
        lines.push(
            BuyLine::pieces(id, supply.label.as_str(), "", count)
                .cost(supply.price.map(|price| price * count)),
        );
    }
    lines
}
