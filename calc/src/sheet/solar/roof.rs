//! The panels on the roof: how many fit around its openings, drawn to scale.

use uom::si::length::{meter, millimeter};

use super::super::boards::letters;
use crate::ask::{Ask, BodyPart};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::roof::{LAYOUT, Layout, Rect, Roof, RoofError, Side, layout};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, Style};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::text::text;

static PANEL_LENGTH: Ask =
    Ask::measure("panel_length", "Panel, long side", &LENGTH, ["in", "mm"], (0.1, 5.0))
        .usual("47 in", "1190 mm")
        .help("Outer edge of the frame, with what sticks out.");
static PANEL_WIDTH: Ask =
    Ask::measure("panel_width", "Panel, short side", &LENGTH, ["in", "mm"], (0.1, 5.0))
        .usual("21 1/4 in", "540 mm")
        .help("Outer edge of the frame.");
static LENGTH_ASK: Ask = Ask::measure("length", "Roof length", &LENGTH, ["in", "mm"], (0.1, 30.0))
    .from_body(BodyPart::Length)
    .help("The flat part; the body\u{2019}s length inside is a little less.");
static WIDTH_ASK: Ask = Ask::measure("width", "Roof width", &LENGTH, ["in", "mm"], (0.1, 10.0))
    .from_body(BodyPart::Width)
    .help("The flat part, between the curves at both sides.");
static EDGE: Ask =
    Ask::measure("edge", "Clear of the roof\u{2019}s edges", &LENGTH, ["in", "mm"], (0.0, 2.0))
        .default("50 mm")
        .usual("2 in", "50 mm")
        .help("Wind gets under a panel that reaches the edge.");
static CLEARANCE: Ask =
    Ask::measure("clearance", "Clear of openings", &LENGTH, ["in", "mm"], (0.0, 2.0))
        .default("50 mm")
        .usual("2 in", "50 mm")
        .help("So that hatches open and flanges can be sealed again.");
static GAP: Ask = Ask::measure("gap", "From panel to panel", &LENGTH, ["in", "mm"], (0.0, 1.0))
    .default("20 mm")
    .usual("3/4 in", "20 mm")
    .help("Room for clamps, and for the panels to grow in the heat.");
static WALKWAY: Ask = Ask::measure("walkway", "Walkway, width", &LENGTH, ["in", "mm"], (0.05, 5.0))
    .optional()
    .usual("14 in", "350 mm")
    .help("Kept free from front to rear, to reach hatches and to clean panels.");
static SIDE: Ask = Ask::choice(
    "walkway_side",
    "Walkway runs",
    &[
        ("best", "where it costs least"),
        ("left", "along the left edge"),
        ("middle", "down the middle"),
        ("right", "along the right edge"),
    ],
);
pub(super) static ROOF: Ask = Ask::group(
    "roof",
    "Panels on the roof",
    &[
        &PANEL_LENGTH,
        &PANEL_WIDTH,
        &LENGTH_ASK,
        &WIDTH_ASK,
        &EDGE,
        &CLEARANCE,
        &GAP,
        &WALKWAY,
        &SIDE,
    ],
)
.optional()
.help("Laid around the roof openings of the body page.");

/// What was typed, read. [m]
pub(super) struct RoofInputs {
    size: (f64, f64),
    panel: (f64, f64),
    edge: f64,
    clearance: f64,
    gap: f64,
    walkway: Option<(f64, Side)>,
    openings: Vec<(String, Rect)>,
}

pub(super) fn read(group: &Reader<'_>) -> RoofInputs {
    let side = match group.choice(&SIDE) {
        "left" => Side::Left,
        "middle" => Side::Middle,
        "right" => Side::Right,
        _ => Side::Best,
    };
    let metres = |length: Length| length.get::<meter>();
    let openings = group.body().openings.iter().map(|opening| {
        let rect = Rect {
            x: metres(opening.x),
            y: metres(opening.y),
            length: metres(opening.length),
            width: metres(opening.width),
        };
        (opening.name.clone(), rect)
    });
    RoofInputs {
        size: (group.si(&LENGTH_ASK), group.si(&WIDTH_ASK)),
        panel: (group.si(&PANEL_LENGTH), group.si(&PANEL_WIDTH)),
        edge: group.si(&EDGE),
        clearance: group.si(&CLEARANCE),
        gap: group.si(&GAP),
        walkway: group.maybe_si(&WALKWAY).map(|width| (width, side)),
        openings: openings.collect(),
    }
}

pub(super) fn laid_out(inputs: &RoofInputs) -> Result<Layout, Vec<Fault>> {
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
        vec![Fault::new(field, error.to_string())]
    })
}

fn size(metres: f64, style: Style) -> String {
    style.short(Length::new::<meter>(metres))
}

pub(super) fn remark(layout: &Layout, count: u32) -> Remark {
    let fits = layout.places.len();
    let more = if layout.proved() {
        "no layout takes more".to_owned()
    } else {
        text!("the free area would take {} if it could all be used", &layout.bound)
    };
    if fits < count as usize {
        Remark::warning(text!(
            "The roof takes {} of the {} panels ({}): fewer or smaller ones, less clearance, or no walkway.",
            &fits,
            &count,
            &more
        ))
    } else {
        Remark::good(text!("The roof takes {} of these panels; {}.", &fits, &more))
    }
}

pub(super) fn step(inputs: &RoofInputs, layout: &Layout, style: Style) -> Step {
    Step::new(
        "Panels that fit on the roof",
        "rows between the openings, the best of all cuts; at most A_free / A_panel",
        text!(
            "{} x {} each, {} apart, {} clear of edges",
            size(inputs.panel.0, style),
            size(inputs.panel.1, style),
            size(inputs.gap, style),
            size(inputs.edge, style)
        ),
        text!("{} of at most {}", layout.places.len(), &layout.bound),
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
    let mut title = String::from("Panels on the roof, from above");
    for (index, (name, _)) in inputs.openings.iter().enumerate() {
        title.push_str(&text!(
            "{} {} {}",
            if index == 0 { ";" } else { "," },
            letters(index),
            name
        ));
    }
    let mut drawing = Drawing::new(
        title,
        text!(
            "The roof, {} x {}, its front on the left: {} of {} panels laid, room for {} more.",
            size(length, style),
            size(width, style),
            &used,
            &count,
            layout.places.len() - used
        ),
    );
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
