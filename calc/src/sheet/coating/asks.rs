//! What the coating sheet asks, and how it is read.

use uom::si::f64::Ratio;
use uom::si::length::{micrometer, millimeter};
use uom::si::ratio::percent;

use super::super::schedule::label::{self, LIMITS, NIGHT, OF_COAT, Times};
use super::{Boards, Coat, Inputs, Layer, Rectangle, Supply};
use crate::ask::{Ask, Figure};
use crate::coating::climate::Weather;
use crate::coating::containers::Offer;
use crate::coating::surface::Sides;
use crate::outcome::Record;
use crate::quantity::{AREA, LENGTH, Length, MASS_DENSITY, SPREAD_RATE, TEMPERATURE, TIME, VOLUME};
use crate::reader::Reader;

pub static ASKS: &[&Ask] = &[
    &PRODUCT,
    &AREAS,
    &BOARDS,
    &COATS,
    &FINISH_TYPE,
    &RATE_OR_FILM,
    &SOLIDS_KNOWN,
    &WIPE,
    &SURFACE_FACTOR,
    &LOSS,
    &CONTAINERS,
    &DENSITY,
    &OF_COAT,
    &LIMITS,
    &LAYERS,
    &SUPPLIES,
    &AIR,
    &NIGHT,
    &MOISTURE,
];

static PRODUCT: Ask = Ask::words("product", "What it is")
    .default("coating")
    .usual("floor finish", "floor finish")
    .help("Its name on the buy list; cans of the same name and size are added up there.");
static LABEL: Ask = Ask::words("label", "Name").usual("floor", "floor");
static AREA_LENGTH: Ask = Ask::measure("length", "Length", &LENGTH, ["in", "mm"], (1e-4, 1000.0))
    .usual("180 in", "4500 mm")
    .figure(Figure::Along);
static AREA_WIDTH: Ask = Ask::measure("width", "Width", &LENGTH, ["in", "mm"], (1e-4, 1000.0))
    .usual("72 in", "1900 mm")
    .figure(Figure::Across);
static COUNT: Ask = Ask::count("count", "How many", (1, 1000)).default("1");
static SUBTRACT: Ask = Ask::flag("subtract", "Not coated: take it off", false)
    .help("For what stands on the surface or is cut out of it: wheel boxes, a hatch.");
static FACES_OF_AREA: Ask = Ask::count("faces", "Faces coated", (1, 2))
    .default("1")
    .help("2 for a door or a panel that is coated on both.");
pub static AREAS: Ask = Ask::rows(
    "areas",
    "Areas",
    "area",
    1,
    &[&LABEL, &AREA_LENGTH, &AREA_WIDTH, &COUNT, &FACES_OF_AREA, &SUBTRACT],
)
.optional()
.help("Split the surface into rectangles.");
static COATS: Ask =
    Ask::count("coats", "Coats", (1, 50)).usual("3", "3").help("As many as the label asks for.");
static FINISH_TYPE: Ask = Ask::choice(
    "finish_type",
    "Finish",
    &[("film", "a film: varnish, paint, floor finish"), ("penetrating", "penetrating: oil, stain")],
)
.help(
    "A penetrating finish goes into the wood and leaves no film; what stays on top is wiped off.",
);
static WIPE: Ask =
    Ask::measure("wipe_after", "Wiped off after", &TIME, ["min", "min"], (60.0, 86_400.0))
        .optional()
        .usual("15 min", "15 min")
        .help("Of a penetrating finish, on the label.");
pub static SPREAD: Ask =
    Ask::measure("spread_rate", "Spread rate", &SPREAD_RATE, ["ft2/gal", "m2/l"], (100.0, 1e6))
        .usual("400 ft2/gal", "10 m2/l")
        .help("On the label: coverage, for one coat.");
static DRY: Ask = Ask::measure("dry", "Dry film of one coat", &LENGTH, ["mil", "um"], (1e-6, 0.01))
    .usual("1.5 mil", "40 um")
    .help("On the data sheet: dry film thickness, DFT.");
static SOLIDS: Ask = Ask::percent("solids_percent", "Solids by volume", (1.0, 100.0))
    .usual("40", "40")
    .help("On the data sheet; by volume, not by weight.");
static THINNER: Ask = Ask::percent("thinner_percent", "Thinner added", (0.0, 200.0))
    .default("0")
    .help("Of the volume that is thinned: 10 % is 100 ml to the litre.");
static FILM: Ask = Ask::group("film", "Film thickness", &[&DRY, &SOLIDS, &THINNER]);
static RATE_OR_FILM: Ask = Ask::either("How thick", &[&SPREAD, &FILM]);
pub static SOLIDS_KNOWN: Ask =
    Ask::percent("solids_percent", "Solids by volume, beside a spread rate", (1.0, 100.0))
        .optional()
        .usual("40", "40")
        .help("Only to tell the dry film that the spread rate leaves.");
static SURFACE_FACTOR: Ask = Ask::number("surface_factor", "Surface factor", (1.0, 10.0))
    .default("1")
    .help("1 is smooth; worn or open-grained wood 1.1 to 1.2, ribbed metal as measured.");
static LOSS: Ask = Ask::percent("loss_percent", "Loss", (0.0, 95.0))
    .default("10")
    .usual("10", "10")
    .help("The share that stays in tray, roller and can; brush and roller 10 to 15 %, spray 30 % and more. Left out it is 10 %; type 0 for none.");
static SIZE: Ask =
    Ask::measure("size", "Size", &VOLUME, ["gal", "l"], (5e-6, 1.0)).usual("1 gal", "2.5 l");
static PRICE: Ask = Ask::number("price", "Price", (0.0, 1e6)).optional();
pub static CONTAINERS: Ask = Ask::rows(
    "containers",
    "Containers on the shelf",
    "container",
    1,
    &[&SIZE, &PRICE],
)
.optional()
.help("With a price for each, the cheapest that are enough; else those that leave least over.");
static DENSITY: Ask =
    Ask::measure("density", "Density", &MASS_DENSITY, ["lb/gal", "kg/l"], (100.0, 9000.0))
        .optional()
        .usual("8.7 lb/gal", "1.04 kg/l")
        .help("On the data sheet; for the weight on the buy list.");
static AIR_TEMPERATURE: Ask =
    Ask::measure("temperature", "Air temperature", &TEMPERATURE, ["F", "C"], (233.15, 323.15))
        .usual("68 F", "20 C");
static HUMIDITY: Ask =
    Ask::percent("humidity_percent", "Relative humidity", (1.0, 100.0)).usual("50", "50");
static SURFACE_TEMPERATURE: Ask = Ask::measure(
    "surface_temperature",
    "Surface temperature",
    &TEMPERATURE,
    ["F", "C"],
    (233.15, 363.15),
)
.usual("64 F", "18 C")
.help("Lay the thermometer on the board or the metal, at its coldest spot.");
pub static AIR: Ask =
    Ask::group("air", "Air and surface", &[&AIR_TEMPERATURE, &HUMIDITY, &SURFACE_TEMPERATURE])
        .optional()
        .help("Measured inside, where and when you will coat.");
static MOISTURE: Ask = Ask::percent("moisture_percent", "Moisture of the wood", (1.0, 60.0))
    .optional()
    .usual("9", "9")
    .help("By a moisture meter, the wettest of several places.");

static BOARD_LENGTH: Ask = Ask::measure("length", "Length", &LENGTH, ["in", "mm"], (1e-3, 50.0))
    .optional()
    .usual("12 ft", "3600 mm")
    .help("Not needed for boards of a sheet.")
    .figure(Figure::Along);
static BOARD_WIDTH: Ask = Ask::measure("width", "Width", &LENGTH, ["in", "mm"], (1e-4, 5.0))
    .optional()
    .usual("3 1/2 in", "90 mm")
    .help("Over tongue and all. Of a sheet's boards, as they are laid when left out.")
    .figure(Figure::Across);
static THICKNESS: Ask = Ask::measure("thickness", "Thickness", &LENGTH, ["in", "mm"], (1e-4, 0.5))
    .usual("5/16 in", "8 mm")
    .figure(Figure::Thickness);
static BOARDS_SHEET: Ask = Ask::sheet_of("sheet", "Boards of", "boards").optional().help(
    "A boards sheet: the pieces that it cuts, by their lengths and widths; give their thickness.",
);
static FACES: Ask = Ask::count("faces", "Faces coated", (0, 2)).default("2");
static EDGES: Ask = Ask::count("edges", "Long edges coated", (0, 2)).default("2");
static ENDS: Ask = Ask::count("ends", "Ends coated", (0, 2)).default("2");
pub static BOARDS: Ask = Ask::rows(
    "boards",
    "Boards finished before fitting",
    "board",
    0,
    &[
        &LABEL,
        &BOARDS_SHEET,
        &BOARD_LENGTH,
        &BOARD_WIDTH,
        &THICKNESS,
        &COUNT,
        &FACES,
        &EDGES,
        &ENDS,
    ],
)
.optional()
.help("Boards that are coated on both faces, edges and ends; added to the areas.");

static PLACE: Ask =
    Ask::choice("place", "Goes on", &[("under", "before the coats above"), ("over", "after them")]);
static LAYER_PRODUCT: Ask =
    Ask::words("product", "What it is").required().usual("primer", "primer");
pub static LAYERS: Ask = Ask::rows(
    "layers",
    "Other layers on the same surface",
    "layer",
    0,
    &[
        &LAYER_PRODUCT,
        &PLACE,
        &COATS,
        &FINISH_TYPE,
        &RATE_OR_FILM,
        &SOLIDS_KNOWN,
        &WIPE,
        &LOSS,
        &CONTAINERS,
        &DENSITY,
        &OF_COAT,
        &LIMITS,
    ],
)
.optional()
.help("Stain, primer, sealer, paint: each with its own label.");

static SUPPLY: Ask =
    Ask::words("label", "What it is").required().usual("abrasive sheet 120", "abrasive sheet 120");
static ONE_DOES: Ask = Ask::measure("each", "One does", &AREA, ["ft2", "m2"], (0.02, 5000.0))
    .usual("10 ft2", "1 m2")
    .help("How much surface one roller, pad or sheet lasts for. No table gives it: try one on a patch until it slips or loads up.");
static TIMES: Ask = Ask::count("times", "Times over the surface", (1, 100))
    .default("1")
    .help("Sanding between three coats is twice over.");
static SUPPLY_PRICE: Ask = Ask::number("price", "Price of one", (0.0, 1e6)).optional();
pub static SUPPLIES: Ask = Ask::rows(
    "supplies",
    "Rollers, brushes, abrasive sheets",
    "supply",
    0,
    &[&SUPPLY, &ONE_DOES, &TIMES, &SUPPLY_PRICE],
)
.optional();

pub fn read(reader: &Reader<'_>) -> Inputs {
    if !reader.given(&AREAS) && !reader.given(&BOARDS) {
        reader.fault_at(&AREAS, "add at least one area");
    }
    let mut layers = vec![layer(reader, reader.words(&PRODUCT), false)];
    layers.extend(
        reader.rows(&LAYERS, |row| {
            layer(row, row.words(&LAYER_PRODUCT), row.choice(&PLACE) == "over")
        }),
    );
    Inputs {
        areas: reader.rows(&AREAS, |row| Rectangle {
            label: row.words(&LABEL),
            length: row.measure(&AREA_LENGTH),
            width: row.measure(&AREA_WIDTH),
            count: row.count(&COUNT),
            faces: row.count(&FACES_OF_AREA),
            subtract: row.flag(&SUBTRACT),
        }),
        boards: reader.rows(&BOARDS, boards),
        layers,
        surface_factor: reader.number(&SURFACE_FACTOR),
        supplies: reader.rows(&SUPPLIES, |row| Supply {
            label: row.words(&SUPPLY),
            each: row.measure(&ONE_DOES),
            times: row.count(&TIMES),
            price: row.maybe_number(&SUPPLY_PRICE),
        }),
        air: reader.maybe_group(&AIR, |group| Weather {
            temperature: group.measure(&AIR_TEMPERATURE),
            humidity: share(group.number(&HUMIDITY)),
            surface: group.measure(&SURFACE_TEMPERATURE),
        }),
        night: label::night(reader),
        moisture: reader.maybe_number(&MOISTURE).map(share),
    }
}

fn boards(row: &Reader<'_>) -> Boards {
    let (length, width) = (row.maybe::<Length>(&BOARD_LENGTH), row.maybe::<Length>(&BOARD_WIDTH));
    let sheet = row.sheet(&BOARDS_SHEET);
    let pieces = match &sheet {
        Some(sheet) => {
            if length.is_some() {
                row.fault_at(
                    &BOARD_LENGTH,
                    "the boards of the sheet have their lengths; leave this empty",
                );
            }
            pieces(sheet, width)
        }
        None => {
            let missing = |ask: &Ask, usual: Option<Length>| {
                if usual.is_none() && !row.given(&BOARDS_SHEET) {
                    row.fault_at(ask, "give it here, or choose a boards sheet");
                }
                usual.unwrap_or_default()
            };
            vec![(missing(&BOARD_LENGTH, length), missing(&BOARD_WIDTH, width))]
        }
    };
    Boards {
        label: row.words(&LABEL),
        pieces,
        thickness: row.measure(&THICKNESS),
        count: row.count(&COUNT),
        sides: Sides {
            faces: row.count(&FACES) as u8,
            edges: row.count(&EDGES) as u8,
            ends: row.count(&ENDS) as u8,
        },
    }
}

/// The pieces of a boards sheet, each with its length and width.
fn pieces(boards: &Record, width: Option<Length>) -> Vec<(Length, Length)> {
    let mm = Length::new::<millimeter>;
    let pieces = boards.list("pieces").iter().filter_map(|piece| {
        let across = piece.number("y_to_mm")? - piece.number("y_from_mm")?;
        Some((mm(piece.number("length_mm")?), width.unwrap_or_else(|| mm(across))))
    });
    pieces.collect()
}

/// What the label says of one layer: the sheet's own, or a row of the others.
fn layer(reader: &Reader<'_>, product: String, over: bool) -> Layer {
    let film = |group: &Reader<'_>| Coat::Film {
        dry: group.measure(&DRY),
        solids: share(group.number(&SOLIDS)),
        thinner: share(group.number(&THINNER)),
    };
    let penetrating = reader.choice(&FINISH_TYPE) == "penetrating";
    if penetrating {
        for (ask, given) in
            [(&FILM, reader.given(&FILM)), (&SOLIDS_KNOWN, reader.given(&SOLIDS_KNOWN))]
        {
            if given {
                reader.fault_at(
                    ask,
                    "a penetrating finish leaves no film; give its spread rate and leave this empty",
                );
            }
        }
    } else if reader.given(&WIPE) {
        reader.fault_at(
            &WIPE,
            "a film is not wiped off; choose a penetrating finish, or leave this empty",
        );
    }
    let coat = match reader.which(&RATE_OR_FILM) {
        Some(1) => {
            if reader.given(&SOLIDS_KNOWN) {
                reader.fault_at(&SOLIDS_KNOWN, "the film has its solids already; leave this empty");
            }
            reader.group(&FILM, film)
        }
        Some(_) => Coat::Spread {
            rate: reader.measure(&SPREAD),
            solids: reader.maybe_number(&SOLIDS_KNOWN).map(share),
        },
        // Refused already: any coat will do.
        None => Coat::Spread { rate: 1.0 / Length::new::<micrometer>(100.0), solids: None },
    };
    Layer {
        product,
        over,
        penetrating,
        wipe: reader.maybe(&WIPE),
        limits: label::limits(reader),
        loss_given: reader.given(&LOSS),
        times: Times::group(reader, &OF_COAT),
        coats: reader.count(&COATS),
        coat,
        loss: share(reader.number(&LOSS)),
        density: reader.maybe(&DENSITY),
        offers: reader.rows(&CONTAINERS, |row| Offer {
            size: row.measure(&SIZE),
            price: row.maybe_number(&PRICE),
        }),
    }
}

fn share(value: f64) -> Ratio {
    Ratio::new::<percent>(value)
}
