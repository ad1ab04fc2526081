//! The panels on the roof: how many fit around its openings, drawn to scale.

use calc_derive::Inputs;
use uom::si::length::{meter, millimeter};

use super::super::boards::letters;
use super::Wrong;
use crate::ask::BodyPart;
use crate::body::Body;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::roof::{LAYOUT, Layout, Rect, Roof, RoofError, Side, layout};
use crate::outcome::Record;
use crate::quantity::{Length, Style};
use crate::report::{Remark, Step};
use crate::words::solar as words;

/// What was typed.
#[derive(Inputs)]
#[words(solar)]
pub(super) struct OnRoof {
    #[ask(units("in", "mm"), range(0.1, 5.0), usual("47 in", "1190 mm"))]
    panel_length: Length,
    #[ask(units("in", "mm"), range(0.1, 5.0), usual("21 1/4 in", "540 mm"))]
    panel_width: Length,
    #[ask(units("in", "mm"), range(0.1, 30.0), from_body(BodyPart::Length))]
    length: Length,
    #[ask(units("in", "mm"), range(0.1, 10.0), from_body(BodyPart::Width))]
    width: Length,
    #[ask(units("in", "mm"), range(0.0, 2.0), default("50 mm"), usual("2 in", "50 mm"))]
    edge: Length,
    #[ask(units("in", "mm"), range(0.0, 2.0), default("50 mm"), usual("2 in", "50 mm"))]
    clearance: Length,
    #[ask(units("in", "mm"), range(0.0, 1.0), default("20 mm"), usual("3/4 in", "20 mm"))]
    gap: Length,
    #[ask(units("in", "mm"), range(0.05, 5.0), usual("14 in", "350 mm"))]
    walkway: Option<Length>,
    #[ask(choice, no_help)]
    walkway_side: Side,
}

/// What was typed and measured. [m]
pub(super) struct RoofInputs {
    size: (f64, f64),
    panel: (f64, f64),
    edge: f64,
    clearance: f64,
    gap: f64,
    walkway: Option<(f64, Side)>,
    openings: Vec<(String, Rect)>,
}

impl RoofInputs {
    /// With the openings of the body.
    pub fn of(typed: &OnRoof, body: &Body) -> Self {
        let metres = |length: Length| length.get::<meter>();
        let openings = body.openings.iter().map(|opening| {
            let rect = Rect {
                x: metres(opening.x),
                y: metres(opening.y),
                length: metres(opening.length),
                width: metres(opening.width),
            };
            (opening.name.clone(), rect)
        });
        Self {
            size: (metres(typed.length), metres(typed.width)),
            panel: (metres(typed.panel_length), metres(typed.panel_width)),
            edge: metres(typed.edge),
            clearance: metres(typed.clearance),
            gap: metres(typed.gap),
            walkway: typed.walkway.map(|width| (metres(width), typed.walkway_side)),
            openings: openings.collect(),
        }
    }
}

pub(super) fn laid_out(inputs: &RoofInputs) -> Result<Layout, Wrong> {
    let openings: Vec<Rect> = inputs.openings.iter().map(|(_, rect)| *rect).collect();
    let roof = Roof {
        length: inputs.size.0,
        width: inputs.size.1,
        openings: &openings,
        edge: inputs.edge,
        clearance: inputs.clearance,
        gap: inputs.gap,
        walkway: inputs.walkway,
    };
    layout(&roof, inputs.panel).map_err(|error| {
        let field = match error {
            RoofError::Roof => "roof.length",
            RoofError::Panel => "roof.panel_length",
            RoofError::Clearance => "roof.edge",
            RoofError::Walkway => "roof.walkway",
        };
        Wrong { field: field.to_owned(), message: error.told() }
    })
}

fn size(metres: f64, style: Style) -> String {
    style.short(Length::new::<meter>(metres))
}

pub(super) fn remark(layout: &Layout, count: u32, style: Style) -> Remark {
    let (fits, bound) = (layout.places.len(), layout.bound);
    let proved = if layout.proved() { "yes" } else { "no" };
    if fits < count as usize {
        Remark::warning(style.say(words::RoofShort { proved, fits, count, bound }))
    } else {
        Remark::good(style.say(words::RoofTakes { proved, fits, bound }))
    }
}

pub(super) fn step(inputs: &RoofInputs, layout: &Layout, style: Style) -> Step {
    let size = |metres: f64| size(metres, style);
    Step::new(
        style.say(words::STEP_ROOF),
        "N ≤ A_0 / A_1",
        style.say(words::StepRoofNumbers {
            length: size(inputs.panel.0),
            width: size(inputs.panel.1),
            gap: size(inputs.gap),
            edge: size(inputs.edge),
        }),
        style.say(words::StepRoofResult { fits: layout.places.len(), bound: layout.bound }),
        &LAYOUT,
    )
}

pub(super) fn record(layout: &Layout, record: Record) -> Record {
    let millimetres = |metres: f64| Length::new::<meter>(metres).get::<millimeter>();
    let places: Vec<Record> = layout
        .places
        .iter()
        .map(|place| {
            Record::new()
                .with("x_mm", millimetres(place.x))
                .with("y_mm", millimetres(place.y))
                .with("length_mm", millimetres(place.length))
                .with("width_mm", millimetres(place.width))
        })
        .collect();
    record
        .with("roof_fits", layout.places.len())
        .with("roof_bound", layout.bound)
        .with("roof_proved", layout.proved())
        .with("places", places)
}

/// The roof from above, its front on the left, its left edge on top.
pub(super) fn drawing(inputs: &RoofInputs, layout: &Layout, count: u32, style: Style) -> Drawing {
    let (length, width) = inputs.size;
    let used = layout.places.len().min(count as usize);
    // A name is wider than its opening, and would stand over the panels.
    let openings = inputs.openings.iter().enumerate().map(|(index, (name, _))| {
        style.say(words::RoofDrawingOpening { letter: letters(index), name: name.as_str() })
    });
    let openings: Vec<String> = openings.collect();
    let title = match openings.is_empty() {
        true => style.say(words::ROOF_DRAWING),
        false => style.say(words::RoofDrawingOpenings { openings: openings.join(", ") }),
    };
    let words = style.say(words::RoofDrawingWords {
        length: size(length, style),
        width: size(width, style),
        used,
        count,
        more: layout.places.len() - used,
    });
    let mut drawing = Drawing::new(title, words);
    let corners = |rect: &Rect| {
        [Point::metres(rect.x, rect.y), Point::metres(rect.x + rect.length, rect.y + rect.width)]
    };
    let [from, to] = corners(&Rect { x: 0.0, y: 0.0, length, width });
    drawing.rectangle(Pen::Solid, Fill::Empty, from, to);
    if let Some(walkway) = &layout.walkway {
        let [from, to] = corners(walkway);
        drawing.rectangle(Pen::Hidden, Fill::Waste, from, to);
    }
    for (index, place) in layout.places.iter().enumerate() {
        let [from, to] = corners(place);
        let (pen, fill) =
            if index < used { (Pen::Solid, Fill::Level(3)) } else { (Pen::Hidden, Fill::Empty) };
        drawing.rectangle(pen, fill, from, to);
        if index < used {
            drawing.text(
                Point::metres(place.x + place.length / 2.0, place.y + place.width / 2.0),
                Anchor::Middle,
                (index + 1).to_string(),
            );
        }
    }
    for (index, (_, opening)) in inputs.openings.iter().enumerate() {
        let [from, to] = corners(opening);
        drawing.rectangle(Pen::Solid, Fill::Opening, from, to);
        let middle =
            Point::metres(opening.x + opening.length / 2.0, opening.y + opening.width / 2.0);
        drawing.text(middle, Anchor::Middle, letters(index));
    }
    if let Some(walkway) = &layout.walkway {
        drawing.dimension(
            Point::metres(length, walkway.y),
            Point::metres(length, walkway.y + walkway.width),
            1.5,
            size(walkway.width, style),
        );
    }
    // Where the first panel goes, from the front and from the left edge.
    if let Some(first) = layout.places.first() {
        let x = first.x + first.length;
        drawing.dimension(
            Point::metres(0.0, 0.0),
            Point::metres(first.x, 0.0),
            1.5,
            size(first.x, style),
        );
        drawing.dimension(
            Point::metres(first.x, 0.0),
            Point::metres(x, 0.0),
            1.5,
            size(first.length, style),
        );
    }
    drawing.dimension(
        Point::metres(length, width),
        Point::metres(0.0, width),
        1.5,
        size(length, style),
    );
    drawing.dimension(Point::metres(0.0, width), Point::metres(0.0, 0.0), 1.5, size(width, style));
    drawing
}
