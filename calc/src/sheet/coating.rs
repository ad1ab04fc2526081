//! Film coats on a surface: how much, what to buy, and whether the air lets one coat now.

mod drawing;
mod words;

use uom::si::area::square_meter;
use uom::si::f64::{Ratio, ReciprocalLength};
use uom::si::length::micrometer;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::liter;

use super::{Sheet, solve};
use crate::ask::Ask;
use crate::coating::air::{self, Margin};
use crate::coating::cautions::FOR_COATING;
use crate::coating::containers::{self, Choice, Offer};
use crate::coating::film;
use crate::coating::range::OutOfRange;
use crate::fault::Fault;
use crate::lists::BuyLine;
use crate::outcome::Record;
use crate::quantity::{
    Area, LENGTH, Length, SPREAD_RATE, Style, TEMPERATURE, ThermodynamicTemperature, VOLUME, Volume,
};
use crate::reader::Reader;
use crate::report::{Caution, Report};
use crate::source::Source;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "coating",
    title: "Coating",
    purpose: "How much finish or paint a surface takes, what to buy, and whether to coat now.",
    asks: &[
        &PRODUCT,
        &AREAS,
        &COATS,
        &RATE_OR_FILM,
        &SOLIDS_KNOWN,
        &SURFACE_FACTOR,
        &LOSS,
        &CONTAINERS,
        &AIR,
    ],
    sources: &[
        &AREA_SUM,
        &film::SPREAD_RATE,
        &film::SOLIDS,
        &film::LOSS,
        &containers::METHOD,
        &air::MAGNUS,
        &air::MARGIN_RULE,
    ],
    example: r#"{ "product": "floor finish",
        "areas": [
            { "label": "floor", "length": "5480 mm", "width": "2060 mm" },
            { "label": "wheel boxes", "length": "36 in", "width": "10 in", "count": 2, "subtract": true } ],
        "coats": 3, "film": { "dry": "40 um", "solids_percent": 42, "thinner_percent": 5 },
        "surface_factor": 1.1, "loss_percent": 15,
        "containers": [{ "size": "1 qt", "price": 31 }, { "size": "1 gal", "price": 89 }],
        "air": { "temperature": "64 F", "humidity_percent": 62, "surface_temperature": "61 F" } }"#,
    solve: |reader| solve(reader, read, report),
};

static PRODUCT: Ask = Ask::words("product", "What it is")
    .default("coating")
    .usual("floor finish", "floor finish")
    .help("Its name on the buy list; cans of the same name and size are added up there.");
static LABEL: Ask = Ask::words("label", "Name").usual("floor", "floor");
static AREA_LENGTH: Ask =
    Ask::measure("length", "Length", &LENGTH, ["in", "mm"], (1e-4, 1000.0)).usual("180 in", "4500 mm");
static AREA_WIDTH: Ask =
    Ask::measure("width", "Width", &LENGTH, ["in", "mm"], (1e-4, 1000.0)).usual("72 in", "1900 mm");
static COUNT: Ask = Ask::count("count", "How many", (1, 1000)).default("1");
static SUBTRACT: Ask = Ask::flag("subtract", "Not coated: take it off", false)
    .help("For what stands on the surface or is cut out of it: wheel boxes, a hatch.");
static AREAS: Ask = Ask::rows(
    "areas",
    "Areas",
    "area",
    1,
    &[&LABEL, &AREA_LENGTH, &AREA_WIDTH, &COUNT, &SUBTRACT],
)
.help("Split the surface into rectangles.");
static COATS: Ask =
    Ask::count("coats", "Coats", (1, 50)).usual("3", "3").help("As many as the label asks for.");
static SPREAD: Ask =
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
static SOLIDS_KNOWN: Ask =
    Ask::percent("solids_percent", "Solids by volume, beside a spread rate", (1.0, 100.0))
        .optional()
        .usual("40", "40")
        .help("Only to tell the dry film that the spread rate leaves.");
static SURFACE_FACTOR: Ask = Ask::number("surface_factor", "Surface factor", (1.0, 10.0))
    .default("1")
    .help("1 is smooth; worn or open-grained wood 1.1 to 1.2, ribbed metal as measured.");
static LOSS: Ask = Ask::percent("loss_percent", "Loss", (0.0, 95.0))
    .default("0")
    .usual("10", "10")
    .help("The share that stays in tray, roller and can; brush and roller 10 to 15 %, spray 30 % and more.");
static SIZE: Ask =
    Ask::measure("size", "Size", &VOLUME, ["gal", "l"], (5e-6, 1.0)).usual("1 gal", "2.5 l");
static PRICE: Ask = Ask::number("price", "Price", (0.0, 1e6)).optional();
static CONTAINERS: Ask = Ask::rows("containers", "Containers on the shelf", "container", 1, &[&SIZE, &PRICE])
    .optional()
    .help("With a price for each, the cheapest that are enough; else those that leave least over.");
static AIR_TEMPERATURE: Ask =
    Ask::measure("temperature", "Air temperature", &TEMPERATURE, ["F", "C"], (233.15, 323.15))
        .usual("68 F", "20 C");
static HUMIDITY: Ask = Ask::percent("humidity_percent", "Relative humidity", (1.0, 100.0))
    .usual("50", "50");
static SURFACE_TEMPERATURE: Ask = Ask::measure(
    "surface_temperature",
    "Surface temperature",
    &TEMPERATURE,
    ["F", "C"],
    (233.15, 363.15),
)
.usual("64 F", "18 C")
.help("Lay the thermometer on the board or the metal, at its coldest spot.");
static AIR: Ask =
    Ask::group("air", "Air and surface", &[&AIR_TEMPERATURE, &HUMIDITY, &SURFACE_TEMPERATURE])
        .optional()
        .help("Measured inside, where and when you will coat.");

/// Rectangles added and taken off.
static AREA_SUM: Source = Source::identity("area of rectangles");

/// One row of rectangles.
struct Rectangle {
    label: String,
    length: Length,
    width: Length,
    count: u32,
    subtract: bool,
}

impl Rectangle {
    fn all(&self) -> Area {
        self.length * self.width * f64::from(self.count)
    }
}

/// How thick a coat is.
enum Coat {
    Spread { rate: ReciprocalLength, solids: Option<Ratio> },
    Film { dry: Length, solids: Ratio, thinner: Ratio },
}

/// Air and surface, measured.
struct Weather {
    temperature: ThermodynamicTemperature,
    humidity: Ratio,
    surface: ThermodynamicTemperature,
}

/// What was typed, read.
struct Inputs {
    product: String,
    areas: Vec<Rectangle>,
    coats: u32,
    coat: Coat,
    surface_factor: f64,
    loss: Ratio,
    offers: Vec<Offer>,
    air: Option<Weather>,
}

/// What was worked out.
struct Worked {
    /// Net, as measured.
    area: Area,
    wet: Length,
    dry: Option<Length>,
    /// Area with surface factor and coats; volumes as applied.
    amount: film::Amount,
    /// Out of the can.
    paint: Volume,
    thinner: Volume,
    choice: Option<Choice>,
    margin: Option<Margin>,
}

fn read(reader: &Reader<'_>) -> Inputs {
    let share = |value| Ratio::new::<percent>(value);
    let film = |group: &Reader<'_>| Coat::Film {
        dry: group.measure(&DRY),
        solids: share(group.number(&SOLIDS)),
        thinner: share(group.number(&THINNER)),
    };
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
    Inputs {
        product: reader.words(&PRODUCT),
        areas: reader.rows(&AREAS, |row| Rectangle {
            label: row.words(&LABEL),
            length: row.measure(&AREA_LENGTH),
            width: row.measure(&AREA_WIDTH),
            count: row.count(&COUNT),
            subtract: row.flag(&SUBTRACT),
        }),
        coats: reader.count(&COATS),
        coat,
        surface_factor: reader.number(&SURFACE_FACTOR),
        loss: share(reader.number(&LOSS)),
        offers: reader.rows(&CONTAINERS, |row| Offer {
            size: row.measure(&SIZE),
            price: row.maybe_number(&PRICE),
        }),
        air: reader.maybe_group(&AIR, |group| Weather {
            temperature: group.measure(&AIR_TEMPERATURE),
            humidity: share(group.number(&HUMIDITY)),
            surface: group.measure(&SURFACE_TEMPERATURE),
        }),
    }
}

fn work(inputs: &Inputs) -> Result<Worked, Vec<Fault>> {
    let fault = |field: &'static str| {
        move |range: OutOfRange| vec![Fault::new(field, range.to_string())]
    };
    let area = inputs.areas.iter().fold(Area::default(), |sum, rectangle| {
        if rectangle.subtract { sum - rectangle.all() } else { sum + rectangle.all() }
    });
    if area <= Area::new::<square_meter>(1e-9) {
        return Err(vec![Fault::new(
            AREAS.key,
            "as much is taken off as there is, so nothing is left to coat; check which areas are \
             marked as taken off",
        )]);
    }
    let none = Ratio::new::<percent>(0.0);
    let (wet, dry, thinner_share) = match inputs.coat {
        Coat::Spread { rate, solids } => {
            let wet = film::wet_film(rate).map_err(fault(SPREAD.key))?;
            let dry = solids.map(|solids| film::dry_of_wet(wet, solids, none)).transpose();
            (wet, dry.map_err(fault(SOLIDS_KNOWN.key))?, none)
        }
        Coat::Film { dry, solids, thinner } => {
            let wet = film::wet_for_dry(dry, solids, thinner).map_err(fault("film.dry"))?;
            (wet, Some(dry), thinner)
        }
    };
    let amount = film::amount(area, inputs.coats, wet, inputs.surface_factor, inputs.loss)
        .map_err(fault(AREAS.key))?;
    let (paint, thinner) =
        film::paint_and_thinner(amount.needed, thinner_share).map_err(fault(AREAS.key))?;
    let choice = (!inputs.offers.is_empty())
        .then(|| containers::choose(paint, &inputs.offers))
        .transpose()
        .map_err(|refused| vec![Fault::new(CONTAINERS.key, refused.to_string())])?;
    let margin = inputs.air.as_ref();
    let margin = margin
        .map(|air| air::margin(air.temperature, air.humidity, air.surface))
        .transpose()
        .map_err(fault(AIR.key))?;
    Ok(Worked { area, wet, dry, amount, paint, thinner, choice, margin })
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let worked = work(inputs)?;
    Ok(Report {
        answers: words::answers(inputs, &worked, style),
        remarks: words::remarks(inputs, &worked, style),
        drawings: vec![drawing::areas(inputs, worked.area, style)],
        working: words::working(inputs, &worked, style),
        cautions: Caution::all(&FOR_COATING),
        buy: buy(inputs, &worked, style),
        outcome: outcome(inputs, &worked),
        ..Report::default()
    })
}

/// The containers of which some are bought, with their number.
fn bought<'a>(
    offers: &'a [Offer],
    choice: &'a Choice,
) -> impl Iterator<Item = (&'a Offer, u32)> + 'a {
    offers.iter().zip(choice.counts.iter().copied()).filter(|(_, count)| *count > 0)
}

fn outcome(inputs: &Inputs, worked: &Worked) -> Record {
    let choice = worked.choice.as_ref();
    let cans: Vec<Record> = choice
        .iter()
        .flat_map(|choice| bought(&inputs.offers, choice))
        .map(|(offer, count)| {
            Record::new().with("size_l", offer.size.get::<liter>()).with("count", count)
        })
        .collect();
    let air = worked.margin.as_ref();
    Record::new()
        .with("area_m2", worked.area.get::<square_meter>())
        .with("coated_area_m2", worked.area.get::<square_meter>() * inputs.surface_factor)
        .with("volume_l", worked.amount.needed.get::<liter>())
        .with("net_volume_l", worked.amount.net.get::<liter>())
        .with("paint_l", worked.paint.get::<liter>())
        .with("thinner_l", worked.thinner.get::<liter>())
        .with("containers", cans)
        .maybe("cost", choice.and_then(|choice| choice.cost))
        .maybe("left_over_l", choice.map(|choice| choice.left_over.get::<liter>()))
        .maybe("proved", choice.map(|choice| choice.proved))
        .with("wet_film_um", worked.wet.get::<micrometer>())
        .maybe("dry_film_um", worked.dry.map(|dry| dry.get::<micrometer>()))
        .maybe("dew_point_c", air.map(|air| air.air.dew_point.get::<degree_celsius>()))
        .maybe("dew_margin_c", air.map(|air| air.margin.get::<kelvin>()))
        .maybe("may_coat", air.map(|air| air.may_coat))
}

fn buy(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let line = |item: &str, spec, quantity, unit, cost| BuyLine {
        item: item.to_owned(),
        spec,
        quantity,
        unit,
        cost,
        mass: None,
    };
    let loose = |item: &str, volume: Volume| {
        let (quantity, unit) = style.poured(volume);
        line(item, String::new(), quantity, unit, None)
    };
    let mut lines: Vec<BuyLine> = match &worked.choice {
        Some(choice) => bought(&inputs.offers, choice)
            .map(|(offer, count)| {
                let count = f64::from(count);
                let cost = offer.price.map(|price| price * count);
                line(&inputs.product, style.container(offer.size), count, "each", cost)
            })
            .collect(),
        None => vec![loose(&inputs.product, worked.paint)],
    };
    if worked.thinner > Volume::default() {
        lines.push(loose(&format!("thinner for {}", inputs.product), worked.thinner));
    }
    lines
}
