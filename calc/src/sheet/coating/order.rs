//! The order of work of a finish, to be ticked off.

use uom::si::f64::Time;

use super::found::in_order;
use super::inputs::{Job, Layer};
use crate::quantity::Style;
use crate::report::{CheckLine, CheckList};
use crate::text::text;
use crate::words::{Arg, Id, Msg, coating as words};

/// What is done from the bare wood to the last coat.
pub fn of_work(job: &Job, style: Style) -> CheckList {
    let line = |key: &str, said: Msg, note: Option<Msg>| CheckLine {
        key: text!("order {}", key),
        text: style.say(said),
        note: note.map_or_else(String::new, |note| style.say(note)),
        warns: false,
    };
    let before: [(&str, Id, Id); 3] = [
        ("dry", words::ORDER_DRY, words::ORDER_DRY_NOTE),
        ("patch", words::ORDER_PATCH, words::ORDER_PATCH_NOTE),
        ("dust", words::ORDER_DUST, words::ORDER_DUST_NOTE),
    ];
    let before =
        before.into_iter().map(|(key, said, note)| line(key, said.into(), Some(note.into())));
    let mut lines: Vec<CheckLine> = before.collect();
    let layers = job.layers.iter().enumerate().map(|layer| (layer, layer.1.over));
    for (index, layer) in in_order(layers) {
        let product = layer.name(style);
        let key = |part: &str| text!("layer {} {}", &index, part);
        let on = words::OrderOn { coats: layer.coats, product: product.as_str() };
        let note = match (layer.penetrating, layer.coats) {
            (true, _) => Some(words::ORDER_ON_WIPED.into()),
            (false, 1) => None,
            (false, _) => Some(words::ORDER_ON_BETWEEN.into()),
        };
        lines.push(line(&key("on"), on.into(), note));
        if layer.penetrating {
            let wipe = words::OrderWipe { product };
            lines.push(line(&key("wipe"), wipe.into(), Some(wiped(layer))));
            let note = Some(words::ORDER_RAGS_NOTE.into());
            lines.push(line(&key("rags"), words::ORDER_RAGS.into(), note));
        }
    }
    CheckList { title: style.say(words::ORDER), lines }
}

/// When what has not gone into the wood is wiped off.
fn wiped(layer: &Layer) -> Msg {
    let in_minutes = |wipe: Time| words::OrderWipeNote { time: Arg::rough_minutes(wipe) }.into();
    layer.wipe.map_or_else(|| words::ORDER_WIPE_UNKNOWN.into(), in_minutes)
}
