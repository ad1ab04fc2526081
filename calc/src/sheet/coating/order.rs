//! The order of work of a finish, to be ticked off.

use uom::si::time::minute;

use super::{Inputs, Layer};
use crate::quantity::significant;
use crate::report::{CheckLine, CheckList};
use crate::text::text;

/// What is done from the bare wood to the last coat.
pub fn of_work(inputs: &Inputs) -> CheckList {
    let mut lines = vec![
        line(
            "dry",
            "Check the wood with the moisture meter",
            "Against the label's limit, near the doors, too.",
        ),
        line(
            "patch",
            "Try every layer on a test patch",
            "On the same wood, sanded alike: colour, drying, and whether one bears the other.",
        ),
        line(
            "dust",
            "Vacuum, then wipe the dust off",
            "Before the first coat and again before each of the others.",
        ),
    ];
    let layers = || inputs.layers.iter().enumerate();
    let under = layers().skip(1).filter(|(_, layer)| !layer.over);
    let over = layers().skip(1).filter(|(_, layer)| layer.over);
    for (index, layer) in under.chain(layers().take(1)).chain(over) {
        let coats = match layer.coats {
            1 => "1 coat".to_owned(),
            coats => text!("{} coats", &coats),
        };
        let what = text!("{}: {}", &layer.product, &coats);
        let key = |part: &str| text!("layer {} {}", &index, &part);
        if layer.penetrating {
            lines.push(line(
                &key("on"),
                &what,
                "Put on no more at once than can be wiped off in time.",
            ));
            lines.push(line(
                &key("wipe"),
                &text!("{}: wipe it off", &layer.product),
                &wiped(layer),
            ));
            lines.push(line(
                &key("rags"),
                "Spread the rags flat outdoors, each by itself",
                "Rags with oil or stain in a heap ignite by themselves.",
            ));
        } else {
            let between = match layer.coats {
                1 => "",
                _ => "Between coats: wait, abrade and take the dust off as the label says.",
            };
            lines.push(line(&key("on"), &what, between));
        }
    }
    CheckList { title: "Order of work".into(), lines }
}

/// When what has not gone into the wood is wiped off.
fn wiped(layer: &Layer) -> String {
    match layer.wipe {
        Some(wipe) => text!(
            "Each part {} min after it went on, with clean rags, until none come away wet.",
            significant(wipe.get::<minute>(), 2)
        ),
        None => "After as many minutes as the label says; left on, it stays sticky.".to_owned(),
    }
}

fn line(key: &str, text: &str, note: &str) -> CheckLine {
    CheckLine {
        key: text!("order {}", &key),
        text: text.to_owned(),
        note: note.to_owned(),
        warns: false,
    }
}
