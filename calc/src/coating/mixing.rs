//! Two-part mixing: parts and marks on one cup, pot life, and batches that can be poured in time.

use std::f64::consts::PI;

use uom::si::f64::{Length, Mass, MassDensity, ThermodynamicTemperature, Time, Volume, VolumeRate};
use uom::si::length::millimeter;
use uom::si::mass::gram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};
use uom::si::volume::{liter, milliliter};
use uom::si::volume_rate::liter_per_minute;

use super::range::{OutOfRange, ceiling, within};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Arg, Msg, range as names, wet as words};

/// Shares of a mix by volume or by mass; the volumes of the parts are taken to add up.
pub static SHARES: Source = Source::identity_of(words::SOURCE_SHARES);

/// Reaction pace doubles for each 10 C warmer. Makers' texts give 1.5 to 2.5 times.
pub static POT_LIFE: Source = Source::practice_of(words::SOURCE_POT_LIFE);

/// A batch must be poured within its pot life, and the batches of a pass are equal.
pub static BATCHES: Source = Source::identity_of(words::SOURCE_BATCHES);

/// How hot a cup of mixed epoxy gets, and the mass that it is told for.
pub static CUP_HEAT: Source = Source::published(
    "Gougeon Brothers, Inc., Uncontrolled Cure (westsystem.com/safety)",
    "a mass of 100 g can reach 400 F; the larger, the hotter",
);

/// What goes into one cup where no label's limit is entered. [g] Source: [`CUP_HEAT`].
pub const MOST_IN_CUP_G: f64 = 100.0;
/// The same by volume where densities are not known: 100 g of a mix of 1.25 kg/l, heavier than clear
/// epoxy. [ml] Our own rule.
pub const MOST_IN_CUP_ML: f64 = 80.0;

/// The most batches that a plan is made for.
pub const MOST_BATCHES: u32 = 10_000;

/// What a mixing ratio counts in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Parts by volume: measured in a cup.
    Volume,
    /// Parts by mass: measured on a scale.
    Mass,
}

/// A mixing ratio a : b.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mix {
    /// What the two numbers count in.
    pub by: By,
    /// Parts of a, such as the resin.
    pub a: f64,
    /// Parts of b, such as the hardener.
    pub b: f64,
    /// Density of a; needed for a ratio by mass.
    pub density_a: Option<MassDensity>,
    /// Density of b; needed for a ratio by mass.
    pub density_b: Option<MassDensity>,
}

/// How much of each part makes a volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// Volume of a.
    pub a: Volume,
    /// Volume of b.
    pub b: Volume,
    /// Mass of a, where its density is known.
    pub a_mass: Option<Mass>,
    /// Mass of b, where its density is known.
    pub b_mass: Option<Mass>,
}

/// Where to stop when both parts go into one cup, a first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CupMarks {
    /// Pour a up to here, and b from here ...
    pub first: Volume,
    /// ... up to here.
    pub second: Volume,
    /// What a scale that was set to zero with the empty cup shows after a, where densities are
    /// known.
    pub first_mass: Option<Mass>,
    /// What it shows after b.
    pub second_mass: Option<Mass>,
}

/// Equal batches, pass by pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batches {
    /// How many passes the work is split into.
    pub passes: u32,
    /// How many batches each pass takes.
    pub per_pass: u32,
    /// All batches together.
    pub count: u32,
    /// What one batch holds.
    pub each: Volume,
    /// The most that one may hold; none where nothing limits it.
    pub largest: Option<Volume>,
}

/// Why a mix cannot be worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// A ratio by mass without the density of a part.
    NoDensity {
        /// Whether it is part a's that is missing; else b's.
        of_a: bool,
    },
    /// So small batches that there would be more than [`MOST_BATCHES`].
    TooManyBatches {
        /// The most that one batch may hold, in litres.
        largest_l: f64,
        /// What all of them must hold, in litres.
        total_l: f64,
    },
    /// A value is outside its range.
    Range(OutOfRange),
}

/// How much of each part makes `whole`. Source: [`SHARES`].
///
/// # Errors
/// Whole from 0 to 1e6 l, parts from 0.001 to 100 000, densities from 100 to 10 000 kg/m³; both
/// densities for a ratio by mass.
pub fn parts(mix: &Mix, whole: Volume) -> Result<Parts, Fault> {
    within(names::VOLUME_TO_MIX, whole.get::<liter>(), 0.0, 1e6, "l")?;
    let share_a = volume_share_of_a(mix)?;
    let (a, b) = (whole * share_a, whole * (1.0 - share_a));
    let mass =
        |volume: Volume, density: Option<MassDensity>| density.map(|density| volume * density);
    Ok(Parts { a, b, a_mass: mass(a, mix.density_a), b_mass: mass(b, mix.density_b) })
}

/// The share of part a in the whole, by volume: from 0 to 1. Source: [`SHARES`].
///
/// # Errors
/// As [`parts`].
pub fn volume_share_of_a(mix: &Mix) -> Result<f64, Fault> {
    let a = within(names::PARTS_OF_A, mix.a, 0.001, 1e5, "")?;
    let b = within(names::PARTS_OF_B, mix.b, 0.001, 1e5, "")?;
    let density = |what, density: Option<MassDensity>| {
        let known = density.map(|density| density.get::<kilogram_per_cubic_meter>());
        known.map(|known| within(what, known, 100.0, 10_000.0, "kg/m3")).transpose()
    };
    let density_a = density(names::DENSITY_OF_A, mix.density_a)?;
    let density_b = density(names::DENSITY_OF_B, mix.density_b)?;
    match mix.by {
        By::Volume => Ok(a / (a + b)),
        By::Mass => {
            let a = a / density_a.ok_or(Fault::NoDensity { of_a: true })?;
            let b = b / density_b.ok_or(Fault::NoDensity { of_a: false })?;
            Ok(a / (a + b))
        }
    }
}

/// How many cups a batch is mixed in, one after the other, so that none holds more than a mass that is
/// known for its heat. Source: [`CUP_HEAT`].
pub fn cups(batch: &Parts) -> u32 {
    match batch.mass() {
        Some(batch) => CupsByMass { batch, most: Mass::new::<gram>(MOST_IN_CUP_G) }.value(),
        None => {
            let most = Volume::new::<milliliter>(MOST_IN_CUP_ML);
            CupsByVolume { batch: batch.a + batch.b, most }.value()
        }
    }
}

impl Parts {
    /// Of both parts, where it is known.
    pub fn mass(&self) -> Option<Mass> {
        self.a_mass.zip(self.b_mass).map(|(a, b)| a + b)
    }

    /// One of so many equal shares.
    #[must_use]
    pub fn share(&self, of: u32) -> Self {
        let of = f64::from(of.max(1));
        let mass = |mass: Option<Mass>| mass.map(|mass| mass / of);
        Self {
            a: self.a / of,
            b: self.b / of,
            a_mass: mass(self.a_mass),
            b_mass: mass(self.b_mass),
        }
    }
}

/// The marks for pouring both parts into one cup. Source: [`SHARES`].
pub fn cup_marks(parts: &Parts) -> CupMarks {
    CupMarks {
        first: parts.a,
        second: parts.a + parts.b,
        first_mass: parts.a_mass,
        second_mass: parts.a_mass.zip(parts.b_mass).map(|(a, b)| a + b),
    }
}

/// How high a volume stands in a cup with straight walls, `across` wide inside. Source:
/// [`super::gap::VOLUMES`].
///
/// # Errors
/// Cup from 5 to 2000 mm, volume from 0 to 1e6 l.
pub fn height_in_cup(volume: Volume, across: Length) -> Result<Length, OutOfRange> {
    within(names::VOLUME_IN_THE_CUP, volume.get::<liter>(), 0.0, 1e6, "l")?;
    within(names::CUP, across.get::<millimeter>(), 5.0, 2000.0, "mm")?;
    Ok(volume / (PI / 4.0 * across * across))
}

/// How much longer than on the label everything takes at another temperature: 2^((label -
/// working) / 10 C). Source: [`POT_LIFE`].
///
/// # Errors
/// Both temperatures from -20 to 60 C.
pub fn pace(
    label_at: ThermodynamicTemperature,
    working: ThermodynamicTemperature,
) -> Result<f64, OutOfRange> {
    let label_at = label_at.get::<degree_celsius>();
    let label_at = within(names::TEMPERATURE_ON_THE_LABEL, label_at, -20.0, 60.0, "C")?;
    let working =
        within(names::WORKING_TEMPERATURE, working.get::<degree_celsius>(), -20.0, 60.0, "C")?;
    Ok(libm::exp2((label_at - working) / 10.0))
}

formula! {
    /// The pot life at the working temperature, from the label's; made by [`PotLife::new`].
    PotLife: "t = t₀ · 2^((T₀ − T) / 10 °C)", &POT_LIFE;
    |of| {
        let [label_at, working] = [of.label_at, of.working].map(|at| at.get::<degree_celsius>());
        of.label * libm::exp2((label_at - working) / of.for_each)
    } => Time as pot_life;
    /// On the label.
    "t₀" as pot_life: label: Time,
    /// The temperature that it is given for.
    "T₀" as temperature: label_at: ThermodynamicTemperature,
    /// The temperature at which it is mixed.
    "T" as temperature: working: ThermodynamicTemperature,
    /// So much warmer, it is halved. [K]
    "10 °C" as kelvin: for_each: f64,
}

impl PotLife {
    /// Source: [`POT_LIFE`].
    ///
    /// # Errors
    /// Label's pot life from 0.1 min to 30 days; temperatures as [`pace`].
    pub fn new(
        label: Time,
        label_at: ThermodynamicTemperature,
        working: ThermodynamicTemperature,
    ) -> Result<Self, OutOfRange> {
        within(names::POT_LIFE, label.get::<minute>(), 0.1, 43_200.0, "min")?;
        pace(label_at, working)?;
        Ok(Self { label, label_at, working, for_each: 10.0 })
    }
}

/// The most that a batch may hold: its limit, and what is poured within its pot life. Source:
/// [`BATCHES`].
///
/// # Errors
/// Limit from 0.001 to 1e6 l, pour rate from 1e-4 to 1e4 l/min, pot life above 0 and up to 10 000
/// h.
pub fn largest_batch(
    limit: Option<Volume>,
    pour: Option<(VolumeRate, Time)>,
) -> Result<Option<Volume>, OutOfRange> {
    if let Some(limit) = limit {
        within(names::BATCH_LIMIT, limit.get::<liter>(), 0.001, 1e6, "l")?;
    }
    let poured = match pour {
        Some((rate, life)) => {
            within(names::POUR_RATE, rate.get::<liter_per_minute>(), 1e-4, 1e4, "l/min")?;
            within(names::POT_LIFE, life.get::<hour>(), 1e-5, 1e4, "h")?;
            Some(rate * life)
        }
        None => None,
    };
    Ok(match (limit, poured) {
        (Some(limit), Some(poured)) => Some(limit.min(poured)),
        (limit, poured) => limit.or(poured),
    })
}

formula! {
    /// Part A of a whole, where the ratio is by volume: see [`parts`].
    PartByVolume: "A = V · a / (a + b)", &SHARES;
    |of| of.whole * (of.a / (of.a + of.b)) => Volume as volume_needed;
    /// Of both parts.
    "V" as volume_needed: whole: Volume,
    /// Parts of A.
    "a" as factor: a: f64,
    /// Parts of B.
    "b" as factor: b: f64,
}

formula! {
    /// Part A of a whole, where the ratio is by mass: see [`parts`].
    PartByMass: "A = V · (a / ρa) / (a / ρa + b / ρb)", &SHARES;
    |of| {
        let (a, b) = (of.a / of.density_a.value, of.b / of.density_b.value);
        of.whole * (a / (a + b))
    } => Volume as volume_needed;
    /// Of both parts.
    "V" as volume_needed: whole: Volume,
    /// Parts of A.
    "a" as factor: a: f64,
    /// Parts of B.
    "b" as factor: b: f64,
    /// Above 0.
    "ρa" as density: density_a: MassDensity,
    /// Above 0.
    "ρb" as density: density_b: MassDensity,
}

formula! {
    /// How many batches a pass takes: see [`batches`].
    BatchesPerPass: "n = ⌈V / p / L⌉", &BATCHES;
    |of| {
        let [whole, largest] = [of.whole, of.largest].map(|volume| volume.get::<liter>());
        ceiling(whole / f64::from(of.passes) / largest).max(1.0) as u32
    } => u32 as count;
    /// Of all passes.
    "V" as volume_needed: whole: Volume,
    /// From 1 up.
    "p" as count: passes: u32,
    /// The most that a batch may hold, above 0.
    "L" as volume: largest: Volume,
}

formula! {
    /// How many cups a batch goes into, by mass: see [`cups`].
    CupsByMass: "k = ⌈m / M⌉", &CUP_HEAT;
    |of| {
        let [batch, most] = [of.batch, of.most].map(|mass| mass.get::<gram>());
        ceiling(batch / most).max(1.0) as u32
    } => u32 as count;
    /// Of both parts.
    "m" as tenth_grams: batch: Mass,
    /// What goes into one cup at most, above 0.
    "M" as grams: most: Mass,
}

formula! {
    /// How many cups a batch goes into, by volume: see [`cups`].
    CupsByVolume: "k = ⌈V / M⌉", &CUP_HEAT;
    |of| {
        let [batch, most] = [of.batch, of.most].map(|volume| volume.get::<milliliter>());
        ceiling(batch / most).max(1.0) as u32
    } => u32 as count;
    /// Of both parts.
    "V" as volume_needed: batch: Volume,
    /// What goes into one cup at most, above 0.
    "M" as milliliters: most: Volume,
}

/// Splits a volume evenly into passes, and each pass into the fewest equal batches that hold no
/// more than `largest`. Source: [`BATCHES`].
///
/// # Errors
/// Volume from 0 to 1e6 l, passes from 1 to 50; no more than [`MOST_BATCHES`] batches.
pub fn batches(total: Volume, passes: u32, largest: Option<Volume>) -> Result<Batches, Fault> {
    let total_l = within(names::VOLUME_TO_MIX, total.get::<liter>(), 0.0, 1e6, "l")?;
    let passes_f = within(names::NUMBER_OF_PASSES, f64::from(passes), 1.0, 50.0, "")?;
    let per_pass = match largest {
        _ if total_l == 0.0 => 0.0,
        None => 1.0,
        Some(largest) => {
            let largest_l = within(names::LARGEST_BATCH, largest.get::<liter>(), 1e-9, 1e9, "l")?;
            let per_pass = BatchesPerPass { whole: total, passes, largest }.value();
            let per_pass = f64::from(per_pass);
            if per_pass * passes_f > f64::from(MOST_BATCHES) {
                return Err(Fault::TooManyBatches { largest_l, total_l });
            }
            per_pass
        }
    };
    let count = per_pass * passes_f;
    let each = if count > 0.0 { total / count } else { Volume::new::<liter>(0.0) };
    Ok(Batches { passes, per_pass: per_pass as u32, count: count as u32, each, largest })
}

impl From<OutOfRange> for Fault {
    fn from(range: OutOfRange) -> Self {
        Self::Range(range)
    }
}

impl From<Fault> for Msg {
    fn from(fault: Fault) -> Self {
        match fault {
            Fault::NoDensity { of_a } => {
                let part = if of_a { "A" } else { "B" };
                words::NoDensity { part, like: "1.15 kg/l" }.into()
            }
            Fault::TooManyBatches { largest_l, total_l } => words::TooManyBatches {
                total: Arg::volume(Volume::new::<liter>(total_l)),
                largest: Arg::volume(Volume::new::<liter>(largest_l)),
                most: Arg::from(MOST_BATCHES.to_string()),
            }
            .into(),
            Fault::Range(range) => range.into(),
        }
    }
}

#[cfg(test)]
mod tests;
