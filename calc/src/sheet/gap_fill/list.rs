//! What a filling takes from the store: the filler, and what it takes beside it.

use uom::si::f64::{Length, Volume};

use super::found::{Found, bought, key};
use super::inputs::Job;
use super::order;
use crate::coating::gap::Hole;
use crate::coating::purchase::{Part, PartOffer, Purchase};
use crate::lists::{BuyLine, LineId};
use crate::quantity::Style;
use crate::text::text;
use crate::words::{Arg, Id, gap_fill as words};

/// A part as it is called.
pub(super) fn called(part: Part) -> Id {
    match part {
        Part::A => words::PART_A,
        Part::B => words::PART_B,
        Part::Kit => words::KIT,
    }
}

pub(super) fn buy(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let product = &job.inputs.product;
    let name = if job.named { product.clone() } else { style.say(words::FILLER) };
    let item = |part| style.say(words::Item { product: name.as_str(), part: called(part) });
    let id = |part| text!("filler/{}/{}", LineId::name(product), key(part));
    let mut lines: Vec<BuyLine> = match &found.purchase {
        Some(purchase) => bought(&job.offers, purchase)
            .map(|(PartOffer { part, offer }, count)| {
                let count = f64::from(count);
                let id = LineId::shared(text!("{}/{}", id(*part), LineId::volume(offer.size)));
                BuyLine {
                    needed: count * used(found, purchase, *part),
                    ..BuyLine::pieces(id, item(*part), style.container(offer.size), count)
                        .cost(offer.price.map(|price| price * count))
                        .mass(found.density(*part).map(|density| density * offer.size * count))
                }
            })
            .collect(),
        None => [
            (Part::A, found.parts.a, found.parts.a_mass),
            (Part::B, found.parts.b, found.parts.b_mass),
        ]
        .into_iter()
        .map(|(part, volume, mass)| {
            let (needed, unit) = style.poured(volume);
            BuyLine::amount(LineId::shared(id(part)), item(part), "", needed, unit).mass(mass)
        })
        .collect(),
    };
    lines.append(&mut beside(job, found, style));
    lines
}

/// The share of what was bought of a part that is used; of kits, of the part that runs out first.
fn used(found: &Found, purchase: &Purchase, part: Part) -> f64 {
    let share = |need: Volume, left_over: Volume| match need + left_over {
        all if all > Volume::default() => (need / all).value,
        _ => 1.0,
    };
    let a = share(found.parts.a, purchase.left_over_a);
    let b = share(found.parts.b, purchase.left_over_b);
    match part {
        Part::A => a,
        Part::B => b,
        Part::Kit => a.max(b),
    }
}

/// What it takes beside the filler: plugs, tape, cups and sticks.
fn beside(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let mut lines = Vec::new();
    for holes in &job.inputs.holes {
        if let Hole::Plugged { plug_diameter, plug_length, .. } = holes.hole() {
            let spec = style.say(words::PlugSize {
                diameter: Arg::short(plug_diameter),
                length: Arg::short(plug_length),
            });
            let [across, long] = [plug_diameter, plug_length].map(LineId::length);
            let id = LineId::shared(text!("plug/{}/{}", &across, &long));
            lines.push(BuyLine::pieces(id, style.say(words::PLUG), spec, f64::from(holes.count)));
        }
    }
    let tape = order::needs(&job.inputs);
    for (id, item, length) in [
        ("tape/below", words::TAPE_BELOW, tape.below),
        ("tape/masking", words::TAPE_MASKING, tape.edges),
    ] {
        if length > Length::default() {
            let (needed, unit) = style.by_the_roll(length);
            lines.push(BuyLine::amount(LineId::shared(id), style.say(item), "", needed, unit));
        }
    }
    for (id, item) in [("cup/mixing", words::CUP_ITEM), ("stick/mixing", words::STICK_ITEM)] {
        let cups = f64::from(found.all_cups);
        lines.push(BuyLine::pieces(LineId::shared(id), style.say(item), "", cups));
    }
    lines
}
