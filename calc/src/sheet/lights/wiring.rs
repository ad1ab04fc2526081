//! The wire between the lamps, and the circuit that can be made of it.

use uom::si::length::meter;

use super::{Figures, Inputs};
use crate::light::cable::Stretch;
use crate::outcome::Record;
use crate::quantity::{Style, amount};
use crate::report::{Offer, Table, TableRow, texts};
use crate::text::text;

fn lamp(place: usize) -> String {
    text!("lamp {}", place + 1)
}

/// Where a stretch comes from, as the node of a circuit.
fn from(stretch: &Stretch) -> String {
    stretch.from.map_or("source".to_owned(), lamp)
}

pub(super) fn table(figures: &Figures, style: Style) -> Table {
    let rows = figures.wire.iter().map(|stretch| TableRow {
        cells: vec![
            lamp(stretch.to),
            stretch.from.map_or("where it comes up".to_owned(), lamp),
            style.run(stretch.length),
        ],
        chosen: false,
    });
    Table {
        title: "Wire to each lamp, one way".into(),
        heads: texts(&["To", "From", "Length"]),
        rows: rows.collect(),
    }
}

pub(super) fn records(figures: &Figures) -> Vec<Record> {
    let record = |stretch: &Stretch| {
        Record::new()
            .with("from", from(stretch))
            .with("to", lamp(stretch.to))
            .with("length_m", stretch.length.get::<meter>())
    };
    figures.wire.iter().map(record).collect()
}

/// A circuit with a run and a load for each lamp.
pub(super) fn offers(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Offer> {
    if inputs.lamp.watts <= 0.0 {
        return Vec::new();
    }
    let watts = amount(inputs.lamp.watts, 3, "W");
    let mut fields = Vec::new();
    let mut put = |path: String, text: &str| fields.push((path, text.to_owned()));
    put("source_voltage".to_owned(), "12.8 V");
    put("drop_limit_percent".to_owned(), "3");
    for (row, stretch) in figures.wire.iter().enumerate() {
        let name = lamp(stretch.to);
        let length = style.length(stretch.length);
        for (key, text) in [
            ("id", text!("run {}", stretch.to + 1)),
            ("from", from(stretch)),
            ("to", name.clone()),
            ("length", length),
            ("conductor", "auto".to_owned()),
        ] {
            put(text!("runs.{}.{}", &row, &key), &text);
        }
        for (key, text) in
            [("label", name.as_str()), ("at", &name), ("model", "power"), ("value", &watts)]
        {
            put(text!("loads.{}.{}", &row, &key), text);
        }
    }
    vec![Offer { label: "Make a circuit of these lamps", kind: "circuit", inputs: fields }]
}
