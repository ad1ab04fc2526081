//! A filling worked out: volumes, batches, cups, and what to buy.

use calc_derive::Outcome;
use uom::si::f64::{Length, Mass, MassDensity, ThermodynamicTemperature, Volume};
use uom::si::length::meter;
use uom::si::time::minute;
use uom::si::volume::liter;

use super::super::schedule::label::{Limits, Times};
use super::inputs::{Inputs, Job};
use super::order;
use crate::carpentry::moisture::Swelling;
use crate::coating::gap::{self, Mixed};
use crate::coating::mixing::{self, Batches, CupMarks, Parts, PotLife};
use crate::coating::purchase::{self, Part, PartOffer, Purchase};
use crate::coating::range::{OutOfRange, within};
use crate::formula::Formula as _;
use crate::handoff::Handed;
use crate::sheet::handoffs::Filling;
use crate::text::text;
use crate::words::{Msg, gap_fill as words, range as names};

/// All that is worked out.
#[derive(Outcome)]
pub(super) struct Found {
    product: String,
    limits: Option<Limits>,
    /// How long a pass takes to mix and pour.
    pass_min: Option<f64>,
    times: Option<Times>,
    /// All cups of all batches.
    #[outcome(name = "cups")]
    pub(super) all_cups: u32,
    cup_part_a: Volume,
    cup_part_b: Volume,
    tape_below_m: f64,
    masking_tape_m: f64,
    pub(super) joint_swing: Option<Swelling>,
    pub(super) net_volume: Volume,
    /// Shrinkage and loss included.
    pub(super) volume: Mixed,
    part_a: Volume,
    part_b: Volume,
    #[outcome(name = "part_a")]
    part_a_mass: Option<Mass>,
    #[outcome(name = "part_b")]
    part_b_mass: Option<Mass>,
    pot_life_min: Option<f64>,
    label_pot_life_min: Option<f64>,
    label_temperature: Option<ThermodynamicTemperature>,
    largest_batch: Option<Volume>,
    #[outcome(name = "batches")]
    by_pass: Vec<Pass>,
    containers: Option<Vec<Bought>>,
    cost: Option<f64>,
    left_over_a: Option<Volume>,
    left_over_b: Option<Volume>,
    proved: Option<bool>,

    /// Volume of each row of gaps, then of each row of holes.
    #[outcome(skip)]
    pub(super) rows: Vec<Volume>,
    #[outcome(skip)]
    pub(super) parts: Parts,
    /// At the working temperature.
    #[outcome(skip)]
    pub(super) pot_life: Option<PotLife>,
    #[outcome(skip)]
    pub(super) batches: Batches,
    /// Of one batch.
    #[outcome(skip)]
    pub(super) batch: Parts,
    /// How many cups a batch is mixed in, one after the other.
    #[outcome(skip)]
    pub(super) cups: u32,
    /// Of one cup.
    #[outcome(skip)]
    pub(super) in_cup: Parts,
    #[outcome(skip)]
    pub(super) cup: CupMarks,
    /// How high the two marks stand in the cup, where its width is known.
    #[outcome(skip)]
    pub(super) cup_heights: Option<[Length; 2]>,
    #[outcome(skip)]
    pub(super) purchase: Option<Purchase>,
}

/// The batches of one pass, which are all alike.
#[derive(Clone, Outcome)]
struct Pass {
    count: u32,
    part_a: Volume,
    part_b: Volume,
    #[outcome(name = "part_a")]
    part_a_mass: Option<Mass>,
    #[outcome(name = "part_b")]
    part_b_mass: Option<Mass>,
}

/// Containers that are bought.
#[derive(Outcome)]
struct Bought {
    part: &'static str,
    size: Volume,
    count: u32,
}

impl Found {
    pub(super) fn gives(&self, job: &Job) -> Handed {
        Handed::of(Filling {
            product: job.named.then(|| self.product.clone()),
            passes: self.batches.passes,
            batches: self.batches.per_pass,
            pass_min: self.pass_min,
            pot_life: job.inputs.pot_life.as_ref().map(|label| (label.time, label.at)),
            times: self.times,
            limits: self.limits.unwrap_or_default(),
        })
    }

    /// Density of what a container holds, where those of both parts are known.
    pub(super) fn density(&self, part: Part) -> Option<MassDensity> {
        let Parts { a, b, a_mass, b_mass } = self.parts;
        let density = match part {
            Part::A => a_mass? / a,
            Part::B => b_mass? / b,
            Part::Kit => (a_mass? + b_mass?) / (a + b),
        };
        density.is_finite().then_some(density)
    }
}

/// The containers of which some are bought, with their number.
pub(super) fn bought<'a>(
    offers: &'a [PartOffer],
    purchase: &'a Purchase,
) -> impl Iterator<Item = (&'a PartOffer, u32)> + 'a {
    offers.iter().zip(purchase.counts.iter().copied()).filter(|(_, count)| *count > 0)
}

/// A part as it is named in the file.
pub(super) fn key(part: Part) -> &'static str {
    match part {
        Part::A => "a",
        Part::B => "b",
        Part::Kit => "kit",
    }
}

/// What is wrong, and with which input.
type Wrong = (String, Msg);

fn at(field: impl Into<String>) -> impl FnOnce(OutOfRange) -> Wrong {
    move |range| (field.into(), range.into())
}

fn of_mix(fault: mixing::Fault) -> Wrong {
    let field = match fault {
        mixing::Fault::NoDensity { of_a: true } => "mix.density_a",
        mixing::Fault::NoDensity { of_a: false } => "mix.density_b",
        mixing::Fault::TooManyBatches { .. } => Inputs::BATCH_LIMIT.key,
        mixing::Fault::Range(_) => Inputs::MIX.key,
    };
    (field.to_owned(), fault.into())
}

fn rows(inputs: &Inputs) -> Result<Vec<Volume>, Wrong> {
    let mut rows = Vec::new();
    for (index, gap) in inputs.gaps.iter().enumerate() {
        let each = gap::joint(gap.length, gap.width, gap.depth);
        rows.push(each.map_err(at(text!("gaps.{}", &index)))? * f64::from(gap.count));
    }
    for (index, holes) in inputs.holes.iter().enumerate() {
        let each = gap::hole(holes.hole()).map_err(at(text!("holes.{}", &index)))?;
        rows.push(each * f64::from(holes.count));
    }
    Ok(rows)
}

/// Works it out.
pub(super) fn solve(job: &Job) -> Result<Found, Wrong> {
    let inputs = &job.inputs;
    let rows = rows(inputs)?;
    let net: Volume = rows.iter().copied().sum();
    let field = if inputs.gaps.is_empty() { Inputs::HOLES.key } else { Inputs::GAPS.key };
    if net.get::<liter>() <= 1e-9 {
        return Err((field.to_owned(), words::NOTHING_TO_FILL.into()));
    }
    gap::with_shrinkage_and_loss(net, job.shrinkage(), job.loss()).map_err(at(field))?;
    let volume =
        Mixed { net, shrink_percent: inputs.shrink_percent, loss_percent: inputs.loss_percent };
    let whole = volume.value();
    within(names::VOLUME_TO_MIX, whole.get::<liter>(), 0.0, 1e6, "l").map_err(at(field))?;
    let mix = inputs.mix.ratio();
    let parts = mixing::parts(&mix, whole).map_err(of_mix)?;

    let label = inputs.pot_life.as_ref();
    let working = inputs.temperature;
    let pot_life =
        label.map(|label| PotLife::new(label.time, label.at, working.unwrap_or(label.at)));
    let pot_life = pot_life.transpose().map_err(at("pot_life.time"))?;
    let life = pot_life.map(|life| life.value());
    let largest = mixing::largest_batch(inputs.batch_limit, inputs.pour_rate.zip(life))
        .map_err(at(Inputs::POUR_RATE.key))?;
    let batches = mixing::batches(whole, inputs.passes, largest).map_err(|fault| {
        let of_limit = inputs.batch_limit == largest;
        let field = if of_limit { Inputs::BATCH_LIMIT } else { Inputs::POUR_RATE };
        (field.key.to_owned(), fault.into())
    })?;
    let batch = mixing::parts(&mix, batches.each).map_err(of_mix)?;
    let purchase = (!job.offers.is_empty())
        .then(|| purchase::choose(&mix, whole, &job.offers))
        .transpose()
        .map_err(|fault| (Inputs::CONTAINERS.key.to_owned(), fault.into()))?;
    // The label's limit is the person's word; without it no cup holds more than is known for its heat.
    let cups = if inputs.batch_limit.is_some() { 1 } else { mixing::cups(&batch) };
    let in_cup = batch.share(cups);
    let cup = mixing::cup_marks(&in_cup);
    let height = |volume| {
        let height = inputs.cup_diameter.map(|across| mixing::height_in_cup(volume, across));
        height.transpose().map_err(at(Inputs::CUP_DIAMETER.key))
    };
    let (first, second) = (height(cup.first)?, height(cup.second)?);
    // Mixing and walking are in the pour rate.
    let pass_min = inputs.pour_rate.map(|rate| {
        let of_pass = whole / f64::from(batches.passes);
        (of_pass / rate).get::<minute>()
    });
    let tape = order::needs(inputs);
    let pass = Pass {
        count: batches.per_pass,
        part_a: batch.a,
        part_b: batch.b,
        part_a_mass: batch.a_mass,
        part_b_mass: batch.b_mass,
    };
    let containers = purchase.as_ref().map(|purchase| {
        let bought = bought(&job.offers, purchase).map(|(offer, count)| Bought {
            part: key(offer.part),
            size: offer.offer.size,
            count,
        });
        bought.collect()
    });
    Ok(Found {
        product: inputs.product.clone(),
        limits: job.limits,
        pass_min,
        times: job.times,
        all_cups: batches.count.saturating_mul(cups),
        cup_part_a: in_cup.a,
        cup_part_b: in_cup.b,
        tape_below_m: tape.below.get::<meter>(),
        masking_tape_m: tape.edges.get::<meter>(),
        joint_swing: inputs.wood.as_ref().map(super::wood::Wood::swing),
        net_volume: net,
        volume,
        part_a: parts.a,
        part_b: parts.b,
        part_a_mass: parts.a_mass,
        part_b_mass: parts.b_mass,
        pot_life_min: life.map(|life| life.get::<minute>()),
        label_pot_life_min: label.map(|label| label.time.get::<minute>()),
        label_temperature: label.map(|label| label.at),
        largest_batch: batches.largest,
        by_pass: vec![pass; batches.passes as usize],
        containers,
        cost: purchase.as_ref().and_then(|purchase| purchase.cost),
        left_over_a: purchase.as_ref().map(|purchase| purchase.left_over_a),
        left_over_b: purchase.as_ref().map(|purchase| purchase.left_over_b),
        proved: purchase.as_ref().map(|purchase| purchase.proved),
        rows,
        parts,
        pot_life,
        batches,
        batch,
        cups,
        in_cup,
        cup,
        cup_heights: first.zip(second).map(|(first, second)| [first, second]),
        purchase,
    })
}
