//! Total mass of many things and its centre along the body.

use uom::si::f64::{Length, Mass};
use uom::si::length::meter;
use uom::si::mass::kilogram;

use crate::source::Source;
use crate::words::axles as words;

/// x̄ = Σ m x / Σ m.
pub static CENTRE_OF_MASS: Source = Source::identity_of(words::SOURCE_CENTRE);

/// What everything on the buy list weighs, as far as it is known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Weight {
    /// Masses and places.
    pub balance: Balance,
    /// Lines whose mass is not known.
    pub without_mass: usize,
    /// Lines that have a mass, but no place along the body.
    pub without_place: usize,
}

/// What many things weigh together. Masses are from 0 up; anything else counts as nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Balance {
    /// All of them.
    pub mass: Mass,
    /// Those of them whose place is known.
    pub placed: Mass,
    /// Σ m x of those. [kg m]
    moment_kg_m: f64,
}

impl Balance {
    /// Adds one thing, with its middle along the body where that is known.
    pub fn add(&mut self, mass: Mass, place: Option<Length>) {
        let kg = mass.get::<kilogram>();
        if !kg.is_finite() || kg <= 0.0 {
            return;
        }
        self.mass += mass;
        if let Some(place) = place.filter(|place| place.is_finite()) {
            self.placed += mass;
            self.moment_kg_m += kg * place.get::<meter>();
        }
    }

    /// The common middle of what has a place; none where nothing has. Source: [`CENTRE_OF_MASS`].
    pub fn centre(&self) -> Option<Length> {
        let centre = self.moment_kg_m / self.placed.get::<kilogram>();
        centre.is_finite().then(|| Length::new::<meter>(centre))
    }

    /// The mass that has no place.
    pub fn unplaced(&self) -> Mass {
        let left = self.mass - self.placed;
        // Sums in another order differ in their last digits.
        if left.get::<kilogram>() > 1e-6 { left } else { Mass::default() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kg(mass: f64) -> Mass {
        Mass::new::<kilogram>(mass)
    }

    // By the definition: 2 kg at 1 m and 6 kg at 3 m balance at (2 + 18) / 8 = 2.5 m.
    #[test]
    fn the_centre_is_where_the_moments_balance() {
        let mut all = Balance::default();
        all.add(kg(2.0), Some(Length::new::<meter>(1.0)));
        all.add(kg(6.0), Some(Length::new::<meter>(3.0)));
        all.add(kg(5.0), None);
        assert!((all.centre().unwrap().get::<meter>() - 2.5).abs() < 1e-12);
        assert_eq!((all.mass, all.placed, all.unplaced()), (kg(13.0), kg(8.0), kg(5.0)));
    }

    #[test]
    fn nothing_has_no_centre_and_rubbish_counts_as_nothing() {
        let mut all = Balance::default();
        for rubbish in [f64::NAN, -1.0, 0.0, f64::INFINITY] {
            all.add(kg(rubbish), Some(Length::new::<meter>(1.0)));
        }
        all.add(kg(1.0), Some(Length::new::<meter>(f64::NAN)));
        assert_eq!((all.centre(), all.mass), (None, kg(1.0)));
    }
}
