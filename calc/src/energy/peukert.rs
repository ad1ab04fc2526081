//! How long a lead-acid battery lasts at a steady current (Peukert's law).

use std::fmt;

use uom::si::electric_charge::ampere_hour;
use uom::si::electric_current::ampere;
use uom::si::energy::watt_hour;
use uom::si::f64::{ElectricCharge, ElectricCurrent, ElectricPotential, Energy, Power, Time};
use uom::si::power::watt;
use uom::si::time::hour;

use super::budget::OHM;
use crate::formula::formula;
use crate::source::Source;
use crate::words::{Msg, energy as words};

/// t = H (C / (I H))^k with C the capacity at the H-hour rate.
pub const PEUKERT: Source =
    Source::from_memory("Peukert's law", "t = H (C / (I H))^k, C rated at H hours");
/// Usual exponents of lead-acid batteries.
pub static EXPONENTS: Source = Source::practice_of(words::SOURCE_EXPONENTS);

formula! {
    /// The average current of a day.
    AverageCurrent: "I = E / (24 h · U · η)", &OHM;
    |of| Power::new::<watt>(of.day.get::<watt_hour>() / 24.0 / of.efficiency) / of.voltage => ElectricCurrent as exact_amperes;
    /// All loads in a day.
    "E" as day_energy: day: Energy,
    /// Nominal.
    "U" as volts: voltage: ElectricPotential,
    /// Share that reaches the loads.
    "η" as share: efficiency: f64,
}

formula! {
    /// How long the usable share lasts at a steady current. Holds for lead-acid near its rating; not for lithium.
    PeukertTime: "t = u · H · (C / (I · H))^k", &PEUKERT;
    |of| Time::new::<hour>(hours(of.capacity, of.time, of.exponent, of.current)) * of.usable => Time as spell;
    /// Usable share.
    "u" as share: usable: f64,
    /// Hours of the rating.
    "H" as tenth_hours: time: Time,
    /// Rated capacity.
    "C" as ampere_hours: capacity: ElectricCharge,
    /// Drawn all the time.
    "I" as exact_amperes: current: ElectricCurrent,
    /// Peukert exponent.
    "k" as factor: exponent: f64,
}

/// Hours to empty at a steady current.
fn hours(capacity: ElectricCharge, time: Time, exponent: f64, current: ElectricCurrent) -> f64 {
    let rated_h = time.get::<hour>();
    let rated_a = capacity.get::<ampere_hour>() / rated_h;
    rated_h * libm::pow(rated_a / current.get::<ampere>(), exponent)
}

/// A lead-acid battery as rated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rating {
    /// Capacity at the rated hours, 0.1 to 100 000 Ah.
    pub capacity: ElectricCharge,
    /// The hours of the rating, usually 20; 1 to 200 h.
    pub time: Time,
    /// Peukert exponent, 1 to 2; 1 for a battery that gives the same at any current.
    pub exponent: f64,
}

/// What a battery gives at a steady current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Discharge {
    /// Time to empty.
    pub time: Time,
    /// Charge given until then.
    pub charge: ElectricCharge,
    /// The current is below the rated one, where the law promises more than self-discharge leaves: count with the
    /// rated capacity instead.
    pub below_rating: bool,
}

/// Why there is no time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PeukertError {
    /// The capacity is out of range.
    Capacity,
    /// The hours of the rating are out of range.
    RatedTime,
    /// The exponent is out of range.
    Exponent,
    /// The current is out of range.
    Current,
}

impl PeukertError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::Capacity => words::RATED_CAPACITY_RANGE.into(),
            Self::RatedTime => words::RATED_TIME_RANGE.into(),
            Self::Exponent => words::EXPONENT_RANGE.into(),
            Self::Current => words::DISCHARGE_RANGE.into(),
        }
    }
}

impl fmt::Display for PeukertError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for PeukertError {}

/// Time and charge at a steady current and temperature. Holds for lead-acid near its rating; not for lithium.
///
/// # Errors
/// A rating or a current out of range.
pub fn discharge(rating: Rating, current: ElectricCurrent) -> Result<Discharge, PeukertError> {
    let capacity_ah = rating.capacity.get::<ampere_hour>();
    let rated_h = rating.time.get::<hour>();
    let amperes = current.get::<ampere>();
    if !(0.1..=100_000.0).contains(&capacity_ah) {
        return Err(PeukertError::Capacity);
    }
    if !(1.0..=200.0).contains(&rated_h) {
        return Err(PeukertError::RatedTime);
    }
    if !(1.0..=2.0).contains(&rating.exponent) {
        return Err(PeukertError::Exponent);
    }
    if !(0.001..=100_000.0).contains(&amperes) {
        return Err(PeukertError::Current);
    }
    let rated_a = capacity_ah / rated_h;
    let hours = hours(rating.capacity, rating.time, rating.exponent, current);
    Ok(Discharge {
        time: Time::new::<hour>(hours),
        charge: ElectricCharge::new::<ampere_hour>(hours * amperes),
        below_rating: amperes < rated_a * (1.0 - 1e-9),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    fn rating(ah: f64, hours: f64, exponent: f64) -> Rating {
        Rating {
            capacity: ElectricCharge::new::<ampere_hour>(ah),
            time: Time::new::<hour>(hours),
            exponent,
        }
    }

    fn amperes(value: f64) -> ElectricCurrent {
        ElectricCurrent::new::<ampere>(value)
    }

    // Ah, h, k, A, h to empty, Ah given: the law worked in plain arithmetic outside this program. The first row is the
    // trap: a battery rated 100 Ah at 20 h gives 5 A for 20 h whatever its exponent.
    #[test]
    fn peukert_s_law_by_arithmetic() {
        for (ah, hours, k, current, time, charge) in [
            (100.0, 20.0, 1.2, 5.0, 20.0, 100.0),
            (100.0, 20.0, 1.2, 10.0, 8.7055, 87.055),
            (100.0, 20.0, 1.2, 20.0, 3.7893, 75.786),
            (100.0, 20.0, 1.2, 50.0, 1.2619, 63.096),
            (100.0, 20.0, 1.05, 10.0, 9.6594, 96.594),
            (100.0, 20.0, 1.25, 20.0, 3.5355, 70.711),
            (200.0, 20.0, 1.15, 50.0, 3.1421, 157.103),
        ] {
            let found = discharge(rating(ah, hours, k), amperes(current)).unwrap();
            assert!((found.time.get::<hour>() - time).abs() < 1e-4, "{current}: {found:?}");
            assert!(
                (found.charge.get::<ampere_hour>() - charge).abs() < 1e-3,
                "{current}: {found:?}"
            );
            assert!(!found.below_rating);
        }
    }

    #[test]
    fn below_the_rated_current_is_told() {
        assert!(discharge(rating(100.0, 20.0, 1.2), amperes(4.0)).unwrap().below_rating);
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_hours_or_an_error(
            ah in any_number(), hours in any_number(), k in any_number(), current in any_number(),
        ) {
            if let Ok(found) = discharge(rating(ah, hours, k), amperes(current)) {
                prop_assert!(found.time.value.is_finite() && found.charge.value.is_finite());
            }
        }
    }
}
