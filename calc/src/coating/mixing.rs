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
use crate::source::Source;

/// Shares of a mix by volume or by mass; the volumes of the parts are taken to add up.
pub static SHARES: Source = Source::identity(
    "part = whole x share; mass ratio = volume ratio x density of a / density of b",
);

/// Reaction pace doubles for each 10 C warmer. Makers' texts give 1.5 to 2.5 times.
pub static POT_LIFE: Source = Source::common_practice(
    "pot life halves for each 10 C (18 F) warmer, doubles for each 10 C colder",
);

/// A batch must be poured within its pot life, and the batches of a pass are equal.
pub static BATCHES: Source =
    Source::identity("largest batch = the lesser of batch limit and pour rate x pot life");

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
    within("volume to mix", whole.get::<liter>(), 0.0, 1e6, "l")?;
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
    let a = within("parts of a", mix.a, 0.001, 1e5, "")?;
    let b = within("parts of b", mix.b, 0.001, 1e5, "")?;
    let density = |what, density: Option<MassDensity>| {
        let known = density.map(|density| density.get::<kilogram_per_cubic_meter>());
        known.map(|known| within(what, known, 100.0, 10_000.0, "kg/m3")).transpose()
    };
    let density_a = density("density of a", mix.density_a)?;
    let density_b = density("density of b", mix.density_b)?;
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
    let cups = match batch.a_mass.zip(batch.b_mass) {
        Some((a, b)) => (a + b).get::<gram>() / MOST_IN_CUP_G,
        None => (batch.a + batch.b).get::<milliliter>() / MOST_IN_CUP_ML,
    };
    ceiling(cups).max(1.0) as u32
}

impl Parts {
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
    within("volume in the cup", volume.get::<liter>(), 0.0, 1e6, "l")?;
    within("cup", across.get::<millimeter>(), 5.0, 2000.0, "mm")?;
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
    let label_at = within("temperature on the label", label_at, -20.0, 60.0, "C")?;
    let working = within("working temperature", working.get::<degree_celsius>(), -20.0, 60.0, "C")?;
    Ok(libm::exp2((label_at - working) / 10.0))
}

/// The pot life at the working temperature, from the label's. Source: [`POT_LIFE`].
///
/// # Errors
/// Label's pot life from 0.1 min to 30 days; temperatures as [`pace`].
pub fn pot_life(
    label: Time,
    label_at: ThermodynamicTemperature,
    working: ThermodynamicTemperature,
) -> Result<Time, OutOfRange> {
    within("pot life", label.get::<minute>(), 0.1, 43_200.0, "min")?;
    Ok(label * pace(label_at, working)?)
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
        within("batch limit", limit.get::<liter>(), 0.001, 1e6, "l")?;
    }
    let poured = match pour {
        Some((rate, life)) => {
            within("pour rate", rate.get::<liter_per_minute>(), 1e-4, 1e4, "l/min")?;
            within("pot life", life.get::<hour>(), 1e-5, 1e4, "h")?;
            Some(rate * life)
        }
        None => None,
    };
    Ok(match (limit, poured) {
        (Some(limit), Some(poured)) => Some(limit.min(poured)),
        (limit, poured) => limit.or(poured),
    })
}

/// Splits a volume evenly into passes, and each pass into the fewest equal batches that hold no
/// more than `largest`. Source: [`BATCHES`].
///
/// # Errors
/// Volume from 0 to 1e6 l, passes from 1 to 50; no more than [`MOST_BATCHES`] batches.
pub fn batches(total: Volume, passes: u32, largest: Option<Volume>) -> Result<Batches, Fault> {
    let total_l = within("volume to mix", total.get::<liter>(), 0.0, 1e6, "l")?;
    let passes_f = within("number of passes", f64::from(passes), 1.0, 50.0, "")?;
    let per_pass = match largest {
        _ if total_l == 0.0 => 0.0,
        None => 1.0,
        Some(largest) => {
            let largest_l = within("largest batch", largest.get::<liter>(), 1e-9, 1e9, "l")?;
            let per_pass = ceiling(total_l / passes_f / largest_l).max(1.0);
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

impl std::fmt::Display for Fault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoDensity { of_a } => {
                let part = if *of_a { "a" } else { "b" };
                write!(
                    f,
                    "a ratio by mass needs the density of part {part}, such as 1.15 kg/l (its data \
                     sheet has it); or give the ratio by volume"
                )
            }
            Self::TooManyBatches { largest_l, total_l } => write!(
                f,
                "{total_l:.1} l in batches of at most {largest_l:.4} l are more than \
                 {MOST_BATCHES}; raise the batch limit or the pour rate"
            ),
            Self::Range(range) => range.fmt(f),
        }
    }
}

#[cfg(test)]
mod tests;
