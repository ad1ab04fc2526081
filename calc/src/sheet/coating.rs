//! Film coats on a surface: how much, what to buy, and whether the air lets one coat now.

mod asks;
mod drawing;
mod order;
pub(super) mod reasons;
mod words;
mod working;

use crate::text::text;
use uom::si::area::square_meter;
use uom::si::f64::{MassDensity, Ratio, ReciprocalLength, Time};
use uom::si::length::micrometer;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;
use uom::si::volume::liter;

use self::asks::{AIR, AREAS, ASKS, BOARDS, CONTAINERS, LAYERS, SOLIDS_KNOWN, SPREAD, SUPPLIES};
use super::schedule::label::{self, Times};
use super::{Sheet, solve};
use crate::coating::air::{self, Margin};
use crate::coating::cautions::FOR_COATING;
use crate::coating::climate::Weather;
use crate::coating::containers::{self, Choice, Offer};
use crate::coating::film;
use crate::coating::range::OutOfRange;
use crate::coating::surface::{self, Sides};
use crate::coating::verdict::{self, Limits, Verdict};
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{Area, Length, Style, Volume};
use crate::report::{Caution, Report};
use crate::source::Source;
use crate::words::Phrase;

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "coating",
    title: Phrase::Written("Coating"),
    trade: Phrase::Written("Floor"),
    purpose: Phrase::Written(
        "How much finish or paint a surface takes, what to buy, and whether to coat now.",
    ),
    asks: ASKS,
    sources: &[
        &AREA_SUM,
        &surface::BOARD,
        &film::SPREAD_RATE,
        &film::SOLIDS,
        &film::LOSS,
        &film::USUAL_LOSS,
        &containers::METHOD,
        &air::MAGNUS,
        &air::MARGIN_RULE,
        &verdict::LABEL_LIMITS,
        &verdict::NIGHT,
    ],
    example: r#"{ "product": "floor finish",
        "areas": [
            { "label": "floor", "length": "5480 mm", "width": "2060 mm" },
            { "label": "wheel boxes", "length": "36 in", "width": "10 in", "count": 2, "subtract": true } ],
        "boards": [{ "label": "threshold", "length": "2060 mm", "width": "90 mm", "thickness": "18 mm", "count": 2 }],
        "coats": 3, "film": { "dry": "40 um", "solids_percent": 42, "thinner_percent": 5 },
        "surface_factor": 1.1, "loss_percent": 15,
        "containers": [{ "size": "1 qt", "price": 31 }, { "size": "1 gal", "price": 89 }],
        "times": { "recoat_least": "3 h", "recoat_most": "24 h", "sand": "30 min", "traffic": "24 h", "at": "20 C" },
        "limits": { "temperature_least": "10 C", "temperature_most": "32 C", "humidity_most_percent": 80, "moisture_most_percent": 12 },
        "layers": [{ "product": "wood stain", "coats": 1, "finish_type": "penetrating", "spread_rate": "15 m2/l",
            "wipe_after": "10 min", "loss_percent": 10, "times": { "cure": "6 h", "at": "20 C" },
            "limits": { "temperature_least": "10 C", "temperature_most": "30 C", "humidity_most_percent": 75 },
            "containers": [{ "size": "0.5 l", "price": 14 }, { "size": "1 l", "price": 24 }] }],
        "supplies": [{ "label": "abrasive sheet 120", "each": "2 m2", "times": 2, "price": 1.2 }],
        "air": { "temperature": "64 F", "humidity_percent": 62, "surface_temperature": "61 F" },
        "night": { "temperature": "58 F", "humidity_percent": 64, "surface_temperature": "55 F" }, "moisture_percent": 9 }"#,
    solve: |reader| solve(reader, asks::read, report),
};

/// Rectangles added and taken off.
static AREA_SUM: Source = Source::identity("area of rectangles");

/// One row of rectangles.
struct Rectangle {
    label: String,
    length: Length,
    width: Length,
    count: u32,
    /// How many faces of each are coated: 1 or 2.
    faces: u32,
    subtract: bool,
}

impl Rectangle {
    fn all(&self) -> Area {
        self.length * self.width * f64::from(self.count) * f64::from(self.faces)
    }
}

/// One row of boards that are coated before they are fitted.
struct Boards {
    label: String,
    /// Length and width of each; one for a row of boards that are alike.
    pieces: Vec<(Length, Length)>,
    thickness: Length,
    /// How many of each piece.
    count: u32,
    sides: Sides,
}

impl Boards {
    fn number(&self) -> u32 {
        self.count.saturating_mul(self.pieces.len() as u32)
    }
}

/// How thick a coat is.
enum Coat {
    Spread { rate: ReciprocalLength, solids: Option<Ratio> },
    Film { dry: Length, solids: Ratio, thinner: Ratio },
}

/// One product on the surface.
struct Layer {
    product: String,
    /// Whether it goes on after the sheet's own coats.
    over: bool,
    /// Whether it goes into the wood and leaves no film.
    penetrating: bool,
    /// When what has not gone in is wiped off.
    wipe: Option<Time>,
    coats: u32,
    coat: Coat,
    loss: Ratio,
    /// Whether the loss was typed.
    loss_given: bool,
    limits: Limits,
    density: Option<MassDensity>,
    offers: Vec<Offer>,
    times: Option<Times>,
}

/// What is used up by area.
struct Supply {
    label: String,
    each: Area,
    times: u32,
    price: Option<f64>,
}

/// What was typed, read.
struct Inputs {
    areas: Vec<Rectangle>,
    boards: Vec<Boards>,
    /// The sheet's own layer, then the others on the same surface.
    layers: Vec<Layer>,
    surface_factor: f64,
    supplies: Vec<Supply>,
    /// Measured, where and when it goes on.
    air: Option<Weather>,
    /// To be expected.
    night: Option<Weather>,
    /// Of the wood, by a meter.
    moisture: Option<Ratio>,
}

/// What was worked out.
struct Worked {
    /// Net, as measured, the boards included.
    area: Area,
    of_boards: Area,
    /// As the inputs' layers.
    layers: Vec<WorkedLayer>,
    /// How many of each supply.
    supplies: Vec<u32>,
    margin: Option<Margin>,
    /// Whether each of the layers may go on now, where the air is known; as the inputs' layers.
    verdicts: Vec<Verdict>,
}

/// What was worked out for one layer.
struct WorkedLayer {
    wet: Length,
    dry: Option<Length>,
    /// Area with surface factor and coats; volumes as applied.
    amount: film::Amount,
    /// Out of the can.
    paint: Volume,
    thinner: Volume,
    choice: Option<Choice>,
}

/// Words a value that a formula refuses as a fault of a field.
fn fault(field: impl Into<String>) -> impl FnOnce(OutOfRange) -> Vec<Fault> {
    move |range| vec![Fault::new(field, range.to_string())]
}

fn work(inputs: &Inputs) -> Result<Worked, Vec<Fault>> {
    let mut of_boards = Area::default();
    for (index, boards) in inputs.boards.iter().enumerate() {
        let Boards { pieces, thickness, count, sides, .. } = boards;
        for (length, width) in pieces {
            of_boards += surface::boards(*count, *length, *width, *thickness, *sides)
                .map_err(fault(text!("{}.{}", &BOARDS.key, &index)))?;
        }
    }
    let area = inputs.areas.iter().fold(of_boards, |sum, rectangle| {
        if rectangle.subtract { sum - rectangle.all() } else { sum + rectangle.all() }
    });
    if area <= Area::new::<square_meter>(1e-9) {
        return Err(vec![Fault::new(
            AREAS.key,
            "as much is taken off as there is, so nothing is left to coat; check which areas are \
             marked as taken off",
        )]);
    }
    let mut layers = Vec::with_capacity(inputs.layers.len());
    for (index, layer) in inputs.layers.iter().enumerate() {
        // The first stands at the top of the inputs, the others in their rows.
        let place = match index.checked_sub(1) {
            None => String::new(),
            Some(row) => text!("{}.{}.", &LAYERS.key, &row),
        };
        layers.push(work_layer(layer, area, inputs.surface_factor, &place)?);
    }
    let mut supplies = Vec::with_capacity(inputs.supplies.len());
    for (index, supply) in inputs.supplies.iter().enumerate() {
        let number = surface::used_up(area * f64::from(supply.times), supply.each);
        supplies.push(number.map_err(fault(text!("{}.{}", &SUPPLIES.key, &index)))?);
    }
    let margin = inputs.air.as_ref();
    let margin = margin
        .map(|air| air::margin(air.temperature, air.humidity, air.surface))
        .transpose()
        .map_err(fault(AIR.key))?;
    let mut verdicts = Vec::new();
    if let Some(air) = &inputs.air {
        for layer in &inputs.layers {
            let verdict = Verdict::of(&layer.limits, air, inputs.night.as_ref(), inputs.moisture);
            verdicts.push(verdict.map_err(fault(label::NIGHT.key))?);
        }
    }
    Ok(Worked { area, of_boards, layers, supplies, margin, verdicts })
}

fn work_layer(
    layer: &Layer,
    area: Area,
    surface_factor: f64,
    place: &str,
) -> Result<WorkedLayer, Vec<Fault>> {
    let below = |key: &str| text!("{}{}", &place, &key);
    let none = Ratio::new::<percent>(0.0);
    let (wet, dry, thinner_share) = match layer.coat {
        Coat::Spread { rate, solids } => {
            let wet = film::wet_film(rate).map_err(fault(below(SPREAD.key)))?;
            let dry = solids.map(|solids| film::dry_of_wet(wet, solids, none)).transpose();
            (wet, dry.map_err(fault(below(SOLIDS_KNOWN.key)))?, none)
        }
        Coat::Film { dry, solids, thinner } => {
            let wet = film::wet_for_dry(dry, solids, thinner).map_err(fault(below("film.dry")))?;
            (wet, Some(dry), thinner)
        }
    };
    let amount = film::amount(area, layer.coats, wet, surface_factor, layer.loss)
        .map_err(fault(AREAS.key))?;
    let (paint, thinner) =
        film::paint_and_thinner(amount.needed, thinner_share).map_err(fault(AREAS.key))?;
    let choice = (!layer.offers.is_empty())
        .then(|| containers::choose(paint, &layer.offers))
        .transpose()
        .map_err(|refused| vec![Fault::new(below(CONTAINERS.key), refused.to_string())])?;
    Ok(WorkedLayer { wet, dry, amount, paint, thinner, choice })
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let worked = work(inputs)?;
    Ok(Report {
        answers: words::answers(inputs, &worked, style),
        remarks: words::remarks(inputs, &worked, style),
        tables: words::layers_table(inputs, &worked, style).into_iter().collect(),
        checks: vec![order::of_work(inputs)],
        drawings: vec![drawing::areas(inputs, worked.area, style)],
        working: working::working(inputs, &worked, style),
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
    let pairs = || inputs.layers.iter().zip(&worked.layers);
    let mut record = Record::new()
        .with("area_m2", worked.area.get::<square_meter>())
        .with("measured_area_m2", worked.area.get::<square_meter>())
        .with("coated_area_m2", worked.area.get::<square_meter>() * inputs.surface_factor);
    if let Some((layer, of_layer)) = pairs().next() {
        record = layer_outcome(record, layer, of_layer);
    }
    let may_coat = |index: usize| worked.verdicts.get(index).and_then(Verdict::may_coat);
    let others: Vec<Record> = pairs()
        .enumerate()
        .skip(1)
        .map(|(index, (layer, of_layer))| {
            let named = Record::new().with("product", layer.product.as_str());
            layer_outcome(named, layer, of_layer).maybe("may_coat", may_coat(index))
        })
        .collect();
    let supplies: Vec<Record> = inputs
        .supplies
        .iter()
        .zip(&worked.supplies)
        .map(|(supply, count)| {
            Record::new().with("label", supply.label.as_str()).with("count", *count)
        })
        .collect();
    let air = worked.margin.as_ref();
    record
        .maybe("dew_point_c", air.map(|air| air.air.dew_point.get::<degree_celsius>()))
        .maybe("dew_margin_c", air.map(|air| air.margin.get::<kelvin>()))
        .maybe("may_coat", may_coat(0))
        .maybe("layers", (!others.is_empty()).then_some(others))
        .with("stages", in_order(inputs, worked).map(|(layer, _)| stage(layer)).collect::<Vec<_>>())
        .maybe("supplies", (!supplies.is_empty()).then_some(supplies))
}

/// The layers in the order in which they go on, with what was worked out for each: those under the
/// sheet's own, its own, those over.
fn in_order<'a>(
    inputs: &'a Inputs,
    worked: &'a Worked,
) -> impl Iterator<Item = (&'a Layer, &'a WorkedLayer)> {
    let all = || inputs.layers.iter().zip(&worked.layers);
    let others = move |over: bool| all().skip(1).filter(move |(layer, _)| layer.over == over);
    others(false).chain(all().take(1)).chain(others(true))
}

/// A layer as a schedule takes it.
fn stage(layer: &Layer) -> Record {
    let record = Record::new()
        .with("product", layer.product.as_str())
        .with("coats", layer.coats)
        .with("penetrating", layer.penetrating)
        .maybe("wipe_min", layer.wipe.map(|wipe| wipe.get::<minute>()));
    label::put_limits(&layer.limits, layer.times.unwrap_or_default().put(record))
}

fn layer_outcome(record: Record, layer: &Layer, worked: &WorkedLayer) -> Record {
    let choice = worked.choice.as_ref();
    let cans: Vec<Record> = choice
        .iter()
        .flat_map(|choice| bought(&layer.offers, choice))
        .map(|(offer, count)| {
            Record::new().with("size_l", offer.size.get::<liter>()).with("count", count)
        })
        .collect();
    record
        .with("volume_l", worked.amount.needed.get::<liter>())
        .with("net_volume_l", worked.amount.net.get::<liter>())
        .with("paint_l", worked.paint.get::<liter>())
        .with("thinner_l", worked.thinner.get::<liter>())
        .with("containers", cans)
        .maybe("cost", choice.and_then(|choice| choice.cost))
        .maybe("left_over_l", choice.map(|choice| choice.left_over.get::<liter>()))
        .maybe("proved", choice.map(|choice| choice.proved))
        .maybe("wet_film_um", (!layer.penetrating).then(|| worked.wet.get::<micrometer>()))
        .maybe("dry_film_um", worked.dry.map(|dry| dry.get::<micrometer>()))
}

fn buy(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let mut lines = Vec::new();
    let named = |kind: &str, name: &str| text!("{}/{}", kind, LineId::name(name));
    let loose = |id: String, item: &str, volume: Volume, density: Option<MassDensity>| {
        let (needed, unit) = style.poured(volume);
        BuyLine::amount(LineId::shared(id), item, "", needed, unit)
            .mass(density.map(|density| density * volume))
    };
    for (layer, worked) in inputs.layers.iter().zip(&worked.layers) {
        match &worked.choice {
            Some(choice) => lines.extend(bought(&layer.offers, choice).map(|(offer, count)| {
                let count = f64::from(count);
                let id = named("paint", &layer.product);
                let id = LineId::shared(text!("{}/{}", &id, LineId::volume(offer.size)));
                let spec = style.container(offer.size);
                // What is left over is shared among the containers by what they hold.
                let used = 1.0 - (choice.left_over / choice.total).value;
                BuyLine {
                    needed: count * used,
                    ..BuyLine::pieces(id, layer.product.as_str(), spec, count)
                        .cost(offer.price.map(|price| price * count))
                        .mass(layer.density.map(|density| density * offer.size * count))
                }
            })),
            None => {
                let id = named("paint", &layer.product);
                lines.push(loose(id, &layer.product, worked.paint, layer.density));
            }
        }
        if worked.thinner > Volume::default() {
            let item = text!("thinner for {}", &layer.product);
            lines.push(loose(named("thinner", &layer.product), &item, worked.thinner, None));
        }
    }
    for (supply, count) in inputs.supplies.iter().zip(&worked.supplies) {
        let count = f64::from(*count);
        let id = LineId::shared(named("supply", &supply.label));
        lines.push(
            BuyLine::pieces(id, supply.label.as_str(), "", count)
                .cost(supply.price.map(|price| price * count)),
        );
    }
    lines
}
