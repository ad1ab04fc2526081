//! What is asked of a coating, and what is wrong between its inputs.

use calc_derive::{Choice, Either, Inputs};
use uom::si::f64::{
    Area, Length, MassDensity, Ratio, ReciprocalLength, ThermodynamicTemperature, Time, Volume,
};
use uom::si::ratio::percent;

use super::super::schedule::label::{self, LIMITS, OF_COAT, Times};
use crate::ask::{Ask, Figure};
use crate::coating::climate::Weather;
use crate::coating::containers::Offer;
use crate::coating::surface::Sides;
use crate::coating::verdict::Limits;
use crate::quantity::Style;
use crate::reader::Reader;
use crate::sheet::handoffs::LaidBoards;
use crate::words::{Phrase, coating as words};

/// What was typed, but for boards, coats and the other layers.
#[derive(Inputs)]
#[words(coating)]
pub(super) struct Inputs {
    /// The name on the buy list.
    #[ask(default("coating"))]
    product: String,
    #[ask(rows(1), optional())]
    pub(super) areas: Vec<Rectangle>,
    #[ask(range(1.0, 10.0), default("1"))]
    pub(super) surface_factor: f64,
    #[ask(rows(0), optional(), no_help)]
    pub(super) supplies: Vec<Supply>,
    #[ask(group)]
    air: Option<Air>,
    /// Of the wood, by a meter.
    #[ask(percent, range(1.0, 60.0), usual("9", "9"))]
    moisture_percent: Option<f64>,
}

/// One row of rectangles.
#[derive(Inputs)]
#[words(coating)]
pub(super) struct Rectangle {
    pub(super) label: String,
    #[ask(units("in", "mm"), range(1e-4, 1000.0), usual("180 in", "4500 mm"), no_help)]
    #[ask(figure(Figure::Along))]
    pub(super) length: Length,
    #[ask(units("in", "mm"), range(1e-4, 1000.0), usual("72 in", "1900 mm"), no_help)]
    #[ask(figure(Figure::Across))]
    pub(super) width: Length,
    #[ask(range(1, 1000), default("1"), no_help)]
    pub(super) count: u32,
    /// How many faces of each are coated.
    #[ask(range(1, 2), default("1"))]
    pub(super) faces: u32,
    #[ask(usually(false))]
    pub(super) subtract: bool,
}

impl Rectangle {
    pub(super) fn all(&self) -> Area {
        self.length * self.width * f64::from(self.count) * f64::from(self.faces)
    }
}

/// One row of boards, as it was typed.
#[derive(Inputs)]
#[words(coating)]
struct BoardsRow {
    #[ask(word(board_label))]
    label: String,
    #[ask(sheet_of("boards"))]
    sheet: Option<LaidBoards>,
    #[ask(units("in", "mm"), range(1e-3, 50.0), usual("12 ft", "3600 mm"))]
    #[ask(figure(Figure::Along))]
    length: Option<Length>,
    #[ask(units("in", "mm"), range(1e-4, 5.0), usual("3 1/2 in", "90 mm"))]
    #[ask(figure(Figure::Across))]
    width: Option<Length>,
    #[ask(units("in", "mm"), range(1e-4, 0.5), usual("5/16 in", "8 mm"), no_help)]
    #[ask(figure(Figure::Thickness))]
    thickness: Length,
    #[ask(range(1, 1000), default("1"), no_help)]
    count: u32,
    #[ask(range(0, 2), default("2"), no_help)]
    faces: u32,
    #[ask(range(0, 2), default("2"), no_help)]
    edges: u32,
    #[ask(range(0, 2), default("2"), no_help)]
    ends: u32,
}

/// Boards that are coated before they are fitted.
static BOARDS: Ask = Ask::rows("boards", "", "", 0, BoardsRow::ASKS)
    .row(Phrase::Id(words::BOARDS_ROW))
    .named(Phrase::Id(words::BOARDS))
    .told(Phrase::Id(words::BOARDS_HELP))
    .optional();

/// What the label says of the coats of one product.
#[derive(Inputs)]
#[words(coating)]
struct Coats {
    #[ask(range(1, 50), usual("3", "3"), convention())]
    coats: u32,
    #[ask(choice)]
    finish_type: Finish,
    #[ask(either)]
    how_thick: HowThick,
    #[ask(percent, range(1.0, 100.0), usual("40", "40"), word(solids_known))]
    solids_percent: Option<f64>,
    #[ask(units("min", "min"), range(60.0, 86_400.0), usual("15 min", "15 min"))]
    wipe_after: Option<Time>,
    #[ask(percent, range(0.0, 95.0), default("10"), usual("10", "10"))]
    loss_percent: f64,
    #[ask(rows(1), optional())]
    containers: Vec<Container>,
    #[ask(units("lb/gal", "kg/l"), range(100.0, 9000.0), usual("8.7 lb/gal", "1.04 kg/l"))]
    density: Option<MassDensity>,
}

#[derive(Choice, Clone, Copy, PartialEq)]
#[words(coating)]
enum Finish {
    Film,
    Penetrating,
}

/// How thick a coat is.
#[derive(Either)]
#[words(coating)]
enum HowThick {
    #[ask(units("ft2/gal", "m2/l"), range(100.0, 1e6), usual("400 ft2/gal", "10 m2/l"))]
    SpreadRate(ReciprocalLength),
    #[ask(group, no_help)]
    Film(Film),
}

/// What a coat leaves.
#[derive(Inputs)]
#[words(coating)]
struct Film {
    #[ask(units("mil", "um"), range(1e-6, 0.01), usual("1.5 mil", "40 um"))]
    dry: Length,
    #[ask(percent, range(1.0, 100.0), usual("40", "40"))]
    solids_percent: f64,
    #[ask(percent, range(0.0, 200.0), default("0"))]
    thinner_percent: f64,
}

/// A container on the shelf.
#[derive(Inputs)]
#[words(coating)]
struct Container {
    #[ask(units("gal", "l"), range(5e-6, 1.0), usual("1 gal", "2.5 l"), no_help)]
    size: Volume,
    #[ask(range(0.0, 1e6), no_help)]
    price: Option<f64>,
}

/// Another layer, but for its coats.
#[derive(Inputs)]
#[words(coating)]
struct OtherLayer {
    #[ask(required(), word(layer_product))]
    product: String,
    #[ask(choice, no_help)]
    place: Place,
}

#[derive(Choice, Clone, Copy, PartialEq)]
#[words(coating)]
enum Place {
    Under,
    Over,
}

/// The other layers.
static LAYERS: Ask = Ask::rows(
    "layers",
    "",
    "",
    0,
    &[
        OtherLayer::PRODUCT,
        OtherLayer::PLACE,
        Coats::COATS,
        Coats::FINISH_TYPE,
        Coats::HOW_THICK,
        Coats::SOLIDS_PERCENT,
        Coats::WIPE_AFTER,
        Coats::LOSS_PERCENT,
        Coats::CONTAINERS,
        Coats::DENSITY,
        &OF_COAT,
        &LIMITS,
    ],
)
.row(Phrase::Id(words::LAYERS_ROW))
.named(Phrase::Id(words::LAYERS))
.told(Phrase::Id(words::LAYERS_HELP))
.optional();

/// What is used up by area.
#[derive(Inputs)]
#[words(coating)]
pub(super) struct Supply {
    #[ask(required(), word(supply))]
    pub(super) label: String,
    /// How much surface one does.
    #[ask(units("ft2", "m2"), range(0.02, 5000.0), usual("10 ft2", "1 m2"))]
    pub(super) each: Area,
    #[ask(range(1, 100), default("1"), word(times_over))]
    pub(super) times: u32,
    #[ask(range(0.0, 1e6), word(price_of_one), no_help)]
    pub(super) price: Option<f64>,
}

/// Measured, where and when it goes on.
#[derive(Inputs)]
#[words(coating)]
struct Air {
    #[ask(units("F", "C"), range(233.15, 323.15), usual("68 F", "20 C"), no_help)]
    temperature: ThermodynamicTemperature,
    #[ask(percent, range(1.0, 100.0), usual("50", "50"), no_help)]
    humidity_percent: f64,
    #[ask(units("F", "C"), range(233.15, 363.15), usual("64 F", "18 C"))]
    surface_temperature: ThermodynamicTemperature,
}

/// Names of inputs that are found fault with as it is worked out.
pub(super) mod at {
    use super::{BOARDS, Coats, HowThick, Inputs, LAYERS};

    pub const AREAS: &str = Inputs::AREAS.key;
    pub const AIR: &str = Inputs::AIR.key;
    pub const SUPPLIES: &str = Inputs::SUPPLIES.key;
    pub const SPREAD_RATE: &str = HowThick::SPREAD_RATE.key;
    pub const DRY_FILM: &str = "film.dry";
    pub const SOLIDS: &str = Coats::SOLIDS_PERCENT.key;
    pub const CONTAINERS: &str = Coats::CONTAINERS.key;
    pub static OF_BOARDS: &str = BOARDS.key;
    pub static OF_LAYERS: &str = LAYERS.key;
}

/// All that is asked, in the order of the page.
pub(super) static ASKS: &[&Ask] = &[
    Inputs::PRODUCT,
    Inputs::AREAS,
    &BOARDS,
    Coats::COATS,
    Coats::FINISH_TYPE,
    Coats::HOW_THICK,
    Coats::SOLIDS_PERCENT,
    Coats::WIPE_AFTER,
    Inputs::SURFACE_FACTOR,
    Coats::LOSS_PERCENT,
    Coats::CONTAINERS,
    Coats::DENSITY,
    &OF_COAT,
    &LIMITS,
    &LAYERS,
    Inputs::SUPPLIES,
    Inputs::AIR,
    &label::NIGHT,
    Inputs::MOISTURE_PERCENT,
];

/// One row of boards.
pub(super) struct Boards {
    pub(super) label: String,
    /// Length and width of each; one for a row of boards that are alike.
    pub(super) pieces: Vec<(Length, Length)>,
    pub(super) thickness: Length,
    /// How many of each piece.
    pub(super) count: u32,
    pub(super) sides: Sides,
}

/// How thick a coat is.
pub(super) enum Coat {
    Spread { rate: ReciprocalLength, solids: Option<Ratio> },
    Film { dry: Length, solids: Ratio, thinner: Ratio },
}

/// One product on the surface.
pub(super) struct Layer {
    pub(super) product: String,
    /// Whether the product has a name of its own.
    pub(super) named: bool,
    /// Whether it goes on after the sheet's own coats.
    pub(super) over: bool,
    /// Whether it goes into the wood and leaves no film.
    pub(super) penetrating: bool,
    /// When what has not gone in is wiped off.
    pub(super) wipe: Option<Time>,
    pub(super) coats: u32,
    pub(super) coat: Coat,
    pub(super) loss: Ratio,
    /// Whether the loss was typed.
    pub(super) loss_given: bool,
    pub(super) limits: Limits,
    /// The same as it is handed on.
    pub(super) on_label: Option<label::Limits>,
    pub(super) density: Option<MassDensity>,
    pub(super) offers: Vec<Offer>,
    pub(super) times: Times,
}

/// What is to be done.
pub(super) struct Job {
    pub(super) inputs: Inputs,
    pub(super) boards: Vec<Boards>,
    /// The sheet's own layer, then the others on the same surface.
    pub(super) layers: Vec<Layer>,
    pub(super) air: Option<Weather>,
    /// To be expected.
    pub(super) night: Option<Weather>,
    pub(super) moisture: Option<Ratio>,
}

impl Job {
    pub(super) fn read(reader: &Reader<'_>) -> Self {
        if !reader.given(Inputs::AREAS) && !reader.given(&BOARDS) {
            reader.tell(Inputs::AREAS, words::NOTHING_GIVEN);
        }
        let own = Layer::read(reader, String::new(), false);
        let others = reader.rows(&LAYERS, |row| {
            let OtherLayer { product, place } = OtherLayer::read(row);
            Layer::read(row, product, place == Place::Over)
        });
        let inputs = Inputs::read(reader);
        let named = reader.given(Inputs::PRODUCT);
        let own = Layer { product: inputs.product.clone(), named, ..own };
        let layers = std::iter::once(own).chain(others).collect();
        Self {
            boards: reader.rows(&BOARDS, Boards::read),
            layers,
            air: inputs.air.as_ref().map(|air| Weather {
                temperature: air.temperature,
                humidity: share(air.humidity_percent),
                surface: air.surface_temperature,
            }),
            night: label::night(reader),
            moisture: inputs.moisture_percent.map(share),
            inputs,
        }
    }
}

impl Boards {
    fn read(reader: &Reader<'_>) -> Self {
        let row = BoardsRow::read(reader);
        let pieces = match &row.sheet {
            Some(sheet) => {
                if row.length.is_some() {
                    reader.tell(BoardsRow::LENGTH, words::OF_BOARDS_SHEET);
                }
                let width = |across| row.width.unwrap_or(across);
                sheet.pieces.iter().map(|(length, across)| (*length, width(*across))).collect()
            }
            None => {
                let wanted = |ask: &Ask, typed: Option<Length>| {
                    if typed.is_none() && !reader.given(BoardsRow::SHEET) {
                        reader.tell(ask, words::GIVE_OR_CHOOSE);
                    }
                    typed.unwrap_or_default()
                };
                let length = wanted(BoardsRow::LENGTH, row.length);
                vec![(length, wanted(BoardsRow::WIDTH, row.width))]
            }
        };
        let sides = Sides { faces: row.faces as u8, edges: row.edges as u8, ends: row.ends as u8 };
        Self { label: row.label, pieces, thickness: row.thickness, count: row.count, sides }
    }

    pub(super) fn number(&self) -> u32 {
        self.count.saturating_mul(self.pieces.len() as u32)
    }
}

impl Layer {
    /// What the label says of one layer: the sheet's own, or a row of the others.
    fn read(reader: &Reader<'_>, product: String, over: bool) -> Self {
        let coats = Coats::read(reader);
        let penetrating = coats.finish_type == Finish::Penetrating;
        if penetrating {
            for ask in [HowThick::FILM, Coats::SOLIDS_PERCENT] {
                if reader.given(ask) {
                    reader.tell(ask, words::LEAVES_NO_FILM);
                }
            }
        } else if coats.wipe_after.is_some() {
            reader.tell(Coats::WIPE_AFTER, words::FILM_STAYS);
        }
        let coat = match coats.how_thick {
            HowThick::SpreadRate(rate) => {
                Coat::Spread { rate, solids: coats.solids_percent.map(share) }
            }
            HowThick::Film(Film { dry, solids_percent, thinner_percent }) => {
                if coats.solids_percent.is_some() {
                    reader.tell(Coats::SOLIDS_PERCENT, words::FILM_HAS_SOLIDS);
                }
                let (solids, thinner) = (share(solids_percent), share(thinner_percent));
                Coat::Film { dry, solids, thinner }
            }
        };
        let offers = coats.containers.iter().map(|one| Offer { size: one.size, price: one.price });
        let on_label = label::Limits::of(reader);
        Self {
            product,
            named: true,
            over,
            penetrating,
            wipe: coats.wipe_after,
            coats: coats.coats,
            coat,
            loss: share(coats.loss_percent),
            loss_given: reader.given(Coats::LOSS_PERCENT),
            limits: on_label.unwrap_or_default().into(),
            on_label,
            density: coats.density,
            offers: offers.collect(),
            times: Times::group(reader, &OF_COAT).unwrap_or_default(),
        }
    }

    /// What it is called.
    pub(super) fn name(&self, style: Style) -> String {
        if self.named { self.product.clone() } else { style.say(words::COATING) }
    }
}

fn share(value: f64) -> Ratio {
    Ratio::new::<percent>(value)
}
