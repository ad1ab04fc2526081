//! A coating worked out: areas, films, amounts, what to buy, and whether it may go on.

use calc_derive::Outcome;
use uom::si::area::square_meter;
use uom::si::f64::{Area, Length, Ratio, ThermodynamicTemperature, Volume};
use uom::si::length::micrometer;
use uom::si::ratio::percent;
use uom::si::temperature_interval::kelvin;
use uom::si::time::minute;

use super::super::schedule::label::{Limits, NIGHT, Times};
use super::inputs::{Boards, Coat, Job, Layer, at};
use crate::coating::air::{self, Margin};
use crate::coating::containers::{self, Choice, Offer};
use crate::coating::film;
use crate::coating::range::OutOfRange;
use crate::coating::surface;
use crate::coating::verdict::Verdict;
use crate::sheet::handoffs::{self, Coated};
use crate::text::text;
use crate::words::{Msg, coating as words};

/// All that is worked out.
#[derive(Outcome)]
pub(super) struct Found {
    /// Net, as measured, the boards included.
    pub(super) area: Area,
    measured_area: Area,
    /// With the surface factor.
    coated_area: Area,
    /// The sheet's own layer.
    #[outcome(flat)]
    pub(super) own: OfLayer,
    dew_point: Option<ThermodynamicTemperature>,
    dew_margin_c: Option<f64>,
    may_coat: Option<bool>,
    /// The others, as they were typed; none where there are none.
    layers: Option<Vec<Other>>,
    /// All layers in the order in which they go on, as a schedule takes them.
    stages: Vec<Stage>,
    supplies: Option<Vec<Counted>>,

    #[outcome(skip)]
    pub(super) of_boards: Area,
    #[outcome(skip)]
    pub(super) margin: Option<Margin>,
    /// Whether each of the layers may go on now, where the air is known; as the job's layers.
    #[outcome(skip)]
    pub(super) verdicts: Vec<Verdict>,
    /// How many of each supply.
    #[outcome(skip)]
    pub(super) counts: Vec<u32>,
}

/// What is worked out for one layer.
#[derive(Outcome)]
pub(super) struct OfLayer {
    /// As applied, the loss included.
    pub(super) volume: Volume,
    /// What stays on the surface or goes into it.
    pub(super) net_volume: Volume,
    /// Out of the can.
    pub(super) paint: Volume,
    pub(super) thinner: Volume,
    containers: Vec<Can>,
    pub(super) cost: Option<f64>,
    left_over: Option<Volume>,
    proved: Option<bool>,
    wet_film_um: Option<f64>,
    dry_film_um: Option<f64>,

    #[outcome(skip)]
    pub(super) wet: Length,
    #[outcome(skip)]
    pub(super) choice: Option<Choice>,
}

/// Containers that are bought.
#[derive(Outcome)]
struct Can {
    size: Volume,
    count: u32,
}

/// One of the other layers.
#[derive(Outcome)]
struct Other {
    product: String,
    #[outcome(flat)]
    found: OfLayer,
    may_coat: Option<bool>,
}

/// A layer as a schedule takes it.
#[derive(Outcome)]
struct Stage {
    product: String,
    coats: u32,
    penetrating: bool,
    wipe_min: Option<f64>,
    #[outcome(flat)]
    times: Times,
    limits: Option<Limits>,
}

/// So many of a supply.
#[derive(Outcome)]
struct Counted {
    label: String,
    count: u32,
}

impl Found {
    /// What was found of each layer, as the job's layers.
    pub(super) fn layers(&self) -> impl Iterator<Item = &OfLayer> {
        let others = self.layers.iter().flatten().map(|other| &other.found);
        std::iter::once(&self.own).chain(others)
    }
}

/// Layers in the order in which they go on: those under the sheet's own, its own, those over.
pub(super) fn in_order<T>(
    layers: impl Iterator<Item = (T, bool)> + Clone,
) -> impl Iterator<Item = T> {
    let others = |over: bool| {
        layers.clone().skip(1).filter(move |(_, is_over)| *is_over == over).map(|(layer, _)| layer)
    };
    let own = layers.clone().take(1).map(|(layer, _)| layer);
    others(false).chain(own).chain(others(true)).collect::<Vec<T>>().into_iter()
}

/// The containers of which some are bought, with their number.
pub(super) fn bought<'a>(
    offers: &'a [Offer],
    choice: &'a Choice,
) -> impl Iterator<Item = (&'a Offer, u32)> + 'a {
    offers.iter().zip(choice.counts.iter().copied()).filter(|(_, count)| *count > 0)
}

/// What is wrong, and with which input.
type Wrong = (String, Msg);

fn of(field: impl Into<String>) -> impl FnOnce(OutOfRange) -> Wrong {
    move |range| (field.into(), range.into())
}

/// Works it out.
pub(super) fn solve(job: &Job) -> Result<Found, Wrong> {
    let mut of_boards = Area::default();
    for (index, boards) in job.boards.iter().enumerate() {
        let Boards { pieces, thickness, count, sides, .. } = boards;
        for (length, width) in pieces {
            of_boards += surface::boards(*count, *length, *width, *thickness, *sides)
                .map_err(of(text!("{}.{}", at::OF_BOARDS, &index)))?;
        }
    }
    let area = job.inputs.areas.iter().fold(of_boards, |sum, rectangle| {
        if rectangle.subtract { sum - rectangle.all() } else { sum + rectangle.all() }
    });
    if area <= Area::new::<square_meter>(1e-9) {
        return Err((at::AREAS.to_owned(), words::NOTHING_LEFT.into()));
    }
    let factor = job.inputs.surface_factor;
    let mut layers = Vec::with_capacity(job.layers.len());
    for (index, layer) in job.layers.iter().enumerate() {
        // The first stands at the top of the inputs, the others in their rows.
        let place = match index.checked_sub(1) {
            None => String::new(),
            Some(row) => text!("{}.{}.", at::OF_LAYERS, &row),
        };
        layers.push(layer_found(layer, area, factor, &place)?);
    }
    let mut counts = Vec::with_capacity(job.inputs.supplies.len());
    for (index, supply) in job.inputs.supplies.iter().enumerate() {
        let number = surface::used_up(area * f64::from(supply.times), supply.each);
        counts.push(number.map_err(of(text!("{}.{}", at::SUPPLIES, &index)))?);
    }
    let margin = job.air.as_ref();
    let margin = margin.map(|air| air::margin(air.temperature, air.humidity, air.surface));
    let margin = margin.transpose().map_err(of(at::AIR))?;
    let mut verdicts = Vec::new();
    if let Some(air) = &job.air {
        for layer in &job.layers {
            let verdict = Verdict::of(&layer.limits, air, job.night.as_ref(), job.moisture);
            verdicts.push(verdict.map_err(of(NIGHT.key))?);
        }
    }
    let may_coat = |index: usize| verdicts.get(index).and_then(Verdict::may_coat);
    let mut layers = layers.into_iter();
    // There is always the sheet's own.
    let Some(own) = layers.next() else {
        return Err((at::AREAS.to_owned(), words::NOTHING_GIVEN.into()));
    };
    let others: Vec<Other> = (1..)
        .zip(job.layers.iter().skip(1).zip(layers))
        .map(|(index, (layer, found))| Other {
            product: layer.product.clone(),
            found,
            may_coat: may_coat(index),
        })
        .collect();
    let supplies: Vec<Counted> = job
        .inputs
        .supplies
        .iter()
        .zip(&counts)
        .map(|(supply, count)| Counted { label: supply.label.clone(), count: *count })
        .collect();
    let stages = in_order(job.layers.iter().map(|layer| (layer, layer.over)));
    Ok(Found {
        area,
        measured_area: area,
        coated_area: area * factor,
        own,
        dew_point: margin.map(|margin| margin.air.dew_point),
        dew_margin_c: margin.map(|margin| margin.margin.get::<kelvin>()),
        may_coat: may_coat(0),
        layers: (!others.is_empty()).then_some(others),
        stages: stages.map(stage).collect(),
        supplies: (!supplies.is_empty()).then_some(supplies),
        of_boards,
        margin,
        verdicts,
        counts,
    })
}

/// All layers in the order in which they go on, for a schedule.
pub(super) fn coated(job: &Job) -> Coated {
    let layers = in_order(job.layers.iter().map(|layer| (layer, layer.over)));
    let handed = layers.map(|layer| handoffs::Layer {
        product: layer.named.then(|| layer.product.clone()),
        coats: layer.coats,
        wiped: layer.penetrating.then(|| layer.wipe.map(|wipe| wipe.get::<minute>())),
        times: layer.times,
        limits: layer.on_label.unwrap_or_default(),
    });
    Coated(handed.collect())
}

fn stage(layer: &Layer) -> Stage {
    Stage {
        product: layer.product.clone(),
        coats: layer.coats,
        penetrating: layer.penetrating,
        wipe_min: layer.wipe.map(|wipe| wipe.get::<minute>()),
        times: layer.times,
        limits: layer.on_label,
    }
}

fn layer_found(
    layer: &Layer,
    area: Area,
    surface_factor: f64,
    place: &str,
) -> Result<OfLayer, Wrong> {
    let below = |key: &str| text!("{}{}", place, key);
    let none = Ratio::new::<percent>(0.0);
    let (wet, dry, thinner_share) = match layer.coat {
        Coat::Spread { rate, solids } => {
            let wet = film::wet_film(rate).map_err(of(below(at::SPREAD_RATE)))?;
            let dry = solids.map(|solids| film::dry_of_wet(wet, solids, none)).transpose();
            (wet, dry.map_err(of(below(at::SOLIDS)))?, none)
        }
        Coat::Film { dry, solids, thinner } => {
            let wet = film::wet_for_dry(dry, solids, thinner).map_err(of(below(at::DRY_FILM)))?;
            (wet, Some(dry), thinner)
        }
    };
    let amount =
        film::amount(area, layer.coats, wet, surface_factor, layer.loss).map_err(of(at::AREAS))?;
    let (paint, thinner) =
        film::paint_and_thinner(amount.needed, thinner_share).map_err(of(at::AREAS))?;
    let choice = (!layer.offers.is_empty())
        .then(|| containers::choose(paint, &layer.offers))
        .transpose()
        .map_err(|refused| (below(at::CONTAINERS), refused.into()))?;
    let cans = choice.iter().flat_map(|choice| bought(&layer.offers, choice));
    Ok(OfLayer {
        volume: amount.needed,
        net_volume: amount.net,
        paint,
        thinner,
        containers: cans.map(|(offer, count)| Can { size: offer.size, count }).collect(),
        cost: choice.as_ref().and_then(|choice| choice.cost),
        left_over: choice.as_ref().map(|choice| choice.left_over),
        proved: choice.as_ref().map(|choice| choice.proved),
        wet_film_um: (!layer.penetrating).then(|| wet.get::<micrometer>()),
        dry_film_um: dry.map(|dry| dry.get::<micrometer>()),
        wet,
        choice,
    })
}
