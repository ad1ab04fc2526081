//! What a vehicle's braking, cornering and bumps do to what is fixed in it.

use uom::si::f64::{Force, Mass};
use uom::si::force::newton;
use uom::si::mass::kilogram;

use crate::coating::range::{OutOfRange, within};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::fastening as words;
use crate::words::range as names;

/// Standard gravity, in m/s².
pub const GRAVITY_M_S2: f64 = 9.806_65;

/// A direction that a load pushes in, with the share of its weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Under braking.
    pub forward: f64,
    /// Under driving off.
    pub rearward: f64,
    /// In corners, to either side.
    pub sideways: f64,
    /// Where they come from.
    pub source: Source,
}

/// Road transport of stable loads. The standard does not apply to vehicles of 3.5 t and less and
/// notes that lighter ones may see more.
pub static EN_12195: Factors = Factors {
    forward: 0.8,
    rearward: 0.5,
    sideways: 0.5,
    source: Source::transcribed("EN 12195-1", "accelerations on the road, stable loads"),
};

/// US cargo rule, against breaking.
pub static US_BREAKING: Factors = Factors {
    forward: 0.8,
    rearward: 0.5,
    sideways: 0.5,
    source: Source::transcribed("49 CFR 393.102", "accelerations for breaking strength"),
};

/// US cargo rule, against the working load limit.
pub static US_WORKING: Factors = Factors {
    forward: 0.435,
    rearward: 0.5,
    sideways: 0.25,
    source: Source::transcribed("49 CFR 393.102", "accelerations for working load limits"),
};

/// For light vans: brakes reach 0.8 g, and pitching adds to it, so 1.0 forward.
pub static LIGHT_VAN: Factors = Factors {
    forward: 1.0,
    rearward: 0.5,
    sideways: 0.5,
    source: Source::transcribed("GDV load-securing guide; EN 12195-1 for the rest", "1.0 forward"),
};

/// Downwards, a ceiling hangs by its own weight and by what the road adds: twice its weight.
pub static ROAD_VERTICAL: Source = Source::practice_of(words::SOURCE_ROAD);

formula! {
    /// What hangs pulls down with twice its weight.
    RoadLoad: "F = 2 · m · g", &ROAD_VERTICAL;
    |of| Force::new::<newton>(of.mass.get::<kilogram>() * GRAVITY_M_S2 * VERTICAL) => Force as force;
    /// What hangs.
    "m" as mass: mass: Mass,
}

/// The factor of [`ROAD_VERTICAL`].
pub const VERTICAL: f64 = 2.0;

/// The forces on a mass; each by itself, they are not summed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forces {
    /// Forward.
    pub forward: Force,
    /// Rearward.
    pub rearward: Force,
    /// Sideways.
    pub sideways: Force,
    /// Downward. Source: [`ROAD_VERTICAL`].
    pub downward: Force,
}

/// The forces on a mass: mass x factor x g.
///
/// # Errors
/// Mass from 0 to 50 000 kg.
pub fn forces(mass: Mass, factors: &Factors) -> Result<Forces, OutOfRange> {
    let weight = within(names::MASS, mass.get::<kilogram>(), 0.0, 50_000.0, "kg")? * GRAVITY_M_S2;
    let share = |factor: f64| Force::new::<newton>(weight * factor);
    Ok(Forces {
        forward: share(factors.forward),
        rearward: share(factors.rearward),
        sideways: share(factors.sideways),
        downward: RoadLoad { mass }.value(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By EN 12195-1's factors: a cabinet of 12 kg takes 94.1 N forward, 58.8 N sideways; at 2 g
    /// down 235 N.
    #[test]
    fn cabinet() {
        let got = forces(Mass::new::<kilogram>(12.0), &EN_12195).unwrap();
        for (force, expected) in [(got.forward, 94.1), (got.sideways, 58.8), (got.downward, 235.4)]
        {
            assert!((force.get::<newton>() - expected).abs() < 0.05, "{force:?}");
        }
    }

    #[test]
    fn refuses_what_is_no_mass() {
        for mass in [f64::NAN, -1.0, f64::INFINITY] {
            assert!(forces(Mass::new::<kilogram>(mass), &US_WORKING).is_err());
        }
    }
}
