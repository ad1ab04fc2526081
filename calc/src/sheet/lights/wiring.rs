//! The wire between the lamps, and the circuit that can be made of it.
//!
//! The names of the nodes (`source`, `lamp 3`) in the outcome and in what is offered are a contract: a person keeps
//! them in the circuit that is made of the lamps, and by them its rows are found again when the lamps change. They are
//! the same in every language; only what is shown of a lamp is said in the words of one.

use calc_derive::Outcome;
use uom::si::length::meter;

use super::{Job, Lit};
use crate::light::cable::Stretch;
use crate::quantity::{Style, amount};
use crate::report::{Offer, Table, TableRow};
use crate::text::text;
use crate::words::{Phrase, lights as words};

/// A stretch of wire from node to node.
#[derive(Outcome)]
pub(super) struct Wire {
    from: String,
    to: String,
    /// One way, m.
    length_m: f64,
    #[outcome(skip)]
    stretch: Stretch,
}

impl From<Stretch> for Wire {
    fn from(stretch: Stretch) -> Self {
        Self {
            from: stretch.from.map_or("source".to_owned(), node),
            to: node(stretch.to),
            length_m: stretch.length.get::<meter>(),
            stretch,
        }
    }
}

/// The node of a lamp, by its name in every language.
fn node(place: usize) -> String {
    text!("lamp {}", place + 1)
}

pub(super) fn table(found: &Lit, style: Style) -> Table {
    let lamp = |place: usize| style.say(words::LampName { number: place + 1 });
    let rows = found.wire.iter().map(|Wire { stretch, .. }| TableRow {
        cells: vec![
            lamp(stretch.to),
            stretch.from.map_or_else(|| style.say(words::WIRES_FEED), lamp),
            style.run(stretch.length),
        ],
        chosen: false,
    });
    Table {
        title: style.say(words::WIRES),
        heads: [words::WIRES_TO, words::WIRES_FROM, words::WIRES_LENGTH]
            .map(|head| style.say(head))
            .into(),
        rows: rows.collect(),
    }
}

/// A circuit with a run and a load for each lamp.
pub(super) fn offers(job: &Job, found: &Lit, style: Style) -> Vec<Offer> {
    let watts = job.inputs.lamp.watts;
    if watts <= 0.0 {
        return Vec::new();
    }
    let watts = amount(watts, 3, "W");
    let mut fields = Vec::new();
    let mut put = |path: String, text: &str| fields.push((path, text.to_owned()));
    put("source_voltage".to_owned(), "12.8 V");
    put("drop_limit_percent".to_owned(), "3");
    for (row, Wire { from, to, stretch, .. }) in found.wire.iter().enumerate() {
        for (key, text) in [
            ("id", text!("run {}", stretch.to + 1)),
            ("from", from.clone()),
            ("to", to.clone()),
            ("length", style.length(stretch.length)),
            ("conductor", "auto".to_owned()),
        ] {
            put(text!("runs.{}.{}", &row, &key), &text);
        }
        for (key, text) in
            [("label", to.as_str()), ("at", to), ("model", "power"), ("value", &watts)]
        {
            put(text!("loads.{}.{}", &row, &key), text);
        }
    }
    vec![Offer { label: Phrase::Id(words::OFFER), kind: "circuit", inputs: fields }]
}
