//! Fuses: standard ratings, and the one for a load and the conductors behind it.

use std::fmt;

use super::ampacity::{self, Conditions, Rated, Unrated};
use super::conductor::Conductor;
use super::range::{LOAD_CURRENT_A, OutOfRange};
use super::run_formulas::{NeededLong, NeededShort};
use super::sources;
use crate::formula::Formula as _;
use crate::source::Source;
use crate::words::{Msg, electrical as words};

/// A fuse that fits: no more than any conductor behind it stands, all of which are known.
#[derive(Clone, Debug, PartialEq)]
pub struct Fuse {
    /// Standard rating in A.
    pub rating_a: f64,
    /// What the load asks for: 125 % of its continuous part and 100 % of the rest, in A.
    pub needed_a: f64,
    /// Where the rating is listed.
    pub source: &'static Source,
}

/// Why no fuse fits.
#[derive(Clone, Debug, PartialEq)]
pub enum FuseError {
    /// A load current that is no current.
    Range(OutOfRange),
    /// The load asks for more than the greatest standard rating.
    BeyondRatings {
        /// What the load asks for, in A.
        needed_a: f64,
        /// The greatest rating, in A.
        greatest_a: f64,
    },
    /// A conductor behind it has no ampacity: nobody knows what fuse it stands.
    Unrated(Unrated),
    /// The rating that the load asks for is more than a conductor behind it may carry.
    ConductorTooThin {
        /// What the load asks for, in A.
        needed_a: f64,
        /// The next standard rating, in A.
        rating_a: f64,
        /// Place of the weakest conductor among those behind the fuse.
        weakest: usize,
        /// The weakest conductor.
        conductor: Conductor,
        /// The greatest fuse that it stands, in A.
        limit_a: f64,
        /// The rule for small conductors that sets it; none where it is the ampacity.
        rule: Option<&'static Source>,
        /// The thinnest of its series that the rating protects, if there is one.
        would_do: Option<Conductor>,
    },
}

/// Standard ratings in A, lowest first, with their source: blade fuses up to 40 A, beyond them the
/// NEC's list.
///
/// # Source
/// [`sources::ISO_8820_3`] (1 A from memory), [`sources::NEC_240_6`].
pub static RATINGS: [(f64, &Source); 36] = [
    (1.0, &sources::ISO_8820_3_ONE_AMPERE),
    (2.0, &sources::ISO_8820_3),
    (3.0, &sources::ISO_8820_3),
    (4.0, &sources::ISO_8820_3),
    (5.0, &sources::ISO_8820_3),
    (7.5, &sources::ISO_8820_3),
    (10.0, &sources::ISO_8820_3),
    (15.0, &sources::ISO_8820_3),
    (20.0, &sources::ISO_8820_3),
    (25.0, &sources::ISO_8820_3),
    (30.0, &sources::ISO_8820_3),
    (35.0, &sources::ISO_8820_3),
    (40.0, &sources::ISO_8820_3),
    (45.0, &sources::NEC_240_6),
    (50.0, &sources::NEC_240_6),
    (60.0, &sources::NEC_240_6),
    (70.0, &sources::NEC_240_6),
    (80.0, &sources::NEC_240_6),
    (90.0, &sources::NEC_240_6),
    (100.0, &sources::NEC_240_6),
    (110.0, &sources::NEC_240_6),
    (125.0, &sources::NEC_240_6),
    (150.0, &sources::NEC_240_6),
    (175.0, &sources::NEC_240_6),
    (200.0, &sources::NEC_240_6),
    (225.0, &sources::NEC_240_6),
    (250.0, &sources::NEC_240_6),
    (300.0, &sources::NEC_240_6),
    (350.0, &sources::NEC_240_6),
    (400.0, &sources::NEC_240_6),
    (450.0, &sources::NEC_240_6),
    (500.0, &sources::NEC_240_6),
    (600.0, &sources::NEC_240_6),
    (700.0, &sources::NEC_240_6),
    (800.0, &sources::NEC_240_6),
    (1000.0, &sources::NEC_240_6),
];

/// The rating current that a load asks for, in A: 125 % of what flows three hours or more and
/// 100 % of the rest.
///
/// # Errors
/// [`OutOfRange`] for a current outside 0 to 10,000 A.
///
/// # Source
/// [`sources::NEC_CONTINUOUS`], [`sources::NEC_CONTINUOUS_MEANS`].
pub fn needed_a(continuous_a: f64, other_a: f64) -> Result<f64, OutOfRange> {
    let long = NeededLong { current_a: LOAD_CURRENT_A.check(continuous_a)? };
    let short = NeededShort { current_a: LOAD_CURRENT_A.check(other_a)? };
    Ok(long.value() + short.value())
}

/// The lowest standard rating that is at least `needed_a`, and its source.
pub fn next_rating(needed_a: f64) -> Option<(f64, &'static Source)> {
    RATINGS.iter().copied().find(|(rating_a, _)| needed_a <= rating_a * (1.0 + 1e-9))
}

/// The greatest standard rating that is no more than a conductor may carry.
pub fn greatest_rating(ampacity_a: f64) -> Option<f64> {
    RATINGS.iter().rev().map(|(a, _)| *a).find(|a| ampacity::carries(ampacity_a, *a))
}

/// The fuse before a load and the conductors to it.
///
/// It is the next standard rating for the load, and no more than the weakest conductor behind it
/// stands: its ampacity as it lies, or less by a rule for small conductors. That is the strict rule;
/// for boats below 50 V 33 CFR 183.455(c) would allow half as much again.
///
/// # Errors
/// [`FuseError`] when the load is out of range, beyond every rating, or asks for more than a
/// conductor behind the fuse stands.
///
/// # Source
/// [`needed_a`], [`RATINGS`], [`sources::FUSE_PROTECTS_CONDUCTOR`], [`sources::CFR_FUSE_LIMIT`],
/// [`Rated::fuse_limit_a`].
pub fn select(
    continuous_a: f64,
    other_a: f64,
    behind: &[Rated],
    conditions: &Conditions,
) -> Result<Fuse, FuseError> {
    let needed_a = needed_a(continuous_a, other_a).map_err(FuseError::Range)?;
    let Some((rating_a, source)) = next_rating(needed_a) else {
        let greatest_a = RATINGS.iter().fold(0.0, |most: f64, (a, _)| most.max(*a));
        return Err(FuseError::BeyondRatings { needed_a, greatest_a });
    };
    let mut weakest: Option<(usize, &Rated)> = None;
    for (place, wire) in behind.iter().enumerate() {
        if weakest.is_none_or(|(_, least)| wire.fuse_limit_a() < least.fuse_limit_a()) {
            weakest = Some((place, wire));
        }
    }
    match weakest {
        Some((weakest, wire)) if !ampacity::carries(wire.fuse_limit_a(), rating_a) => {
            let conductor = wire.conductor();
            let would_do = match conductor {
                Conductor::SquareMillimetre(_) => {
                    ampacity::least_conductor(Conductor::metric(), rating_a, conditions)
                }
                _ => ampacity::least_conductor(Conductor::awg(), rating_a, conditions),
            };
            Err(FuseError::ConductorTooThin {
                needed_a,
                rating_a,
                weakest,
                conductor,
                limit_a: wire.fuse_limit_a(),
                rule: wire.fuse_rule(),
                would_do,
            })
        }
        _ => Ok(Fuse { rating_a, needed_a, source }),
    }
}

impl From<&FuseError> for Msg {
    fn from(error: &FuseError) -> Self {
        match error {
            FuseError::Range(range) => (*range).into(),
            FuseError::BeyondRatings { needed_a, greatest_a } => words::FuseBeyondRatings {
                needed: format!("{needed_a:.1}"),
                greatest: greatest_a.to_string(),
            }
            .into(),
            FuseError::Unrated(unrated) => (*unrated).into(),
            FuseError::ConductorTooThin {
                needed_a,
                rating_a,
                conductor,
                limit_a,
                rule,
                would_do,
                ..
            } => {
                let (needed, rating) = (format!("{needed_a:.1}"), rating_a.to_string());
                let conductor = conductor.to_string();
                let instead = match would_do {
                    Some(size) => words::SizeWouldDo { size: size.to_string() }.into(),
                    None => Self::from(words::NO_SIZE_WOULD_DO),
                };
                match *rule {
                    Some(rule) => {
                        let limit = limit_a.to_string();
                        words::FuseTooLargeByRule {
                            needed,
                            rating,
                            conductor,
                            limit,
                            rule,
                            instead,
                        }
                        .into()
                    }
                    None => {
                        let limit = format!("{limit_a:.1}");
                        words::FuseTooLarge { needed, rating, conductor, limit, instead }.into()
                    }
                }
            }
        }
    }
}

/// In English, for tests.
impl fmt::Display for FuseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for FuseError {}

#[cfg(test)]
mod tests {
    use super::super::ampacity::BOAT_CABLE;
    use super::*;
    use proptest::prelude::*;

    fn rated(text: &str) -> Rated {
        Rated::new(text.parse().unwrap(), &BOAT_CABLE).unwrap()
    }

    fn fuse(continuous_a: f64, other_a: f64, behind: &[&str]) -> Result<f64, FuseError> {
        let behind: Vec<Rated> = behind.iter().map(|c| rated(c)).collect();
        select(continuous_a, other_a, &behind, &BOAT_CABLE).map(|fuse| fuse.rating_a)
    }

    #[test]
    fn greatest_rating_that_a_conductor_stands() {
        assert_eq!(greatest_rating(35.0), Some(35.0));
        assert_eq!(greatest_rating(24.5), Some(20.0));
        assert_eq!(greatest_rating(0.5), None);
        assert_eq!(greatest_rating(f64::NAN), None);
    }

    /// NEC 210.20(A): 125 % of the continuous load and the whole of the rest.
    #[test]
    fn next_rating_at_125_percent() {
        assert_eq!(fuse(10.0, 0.0, &["14 AWG"]), Ok(15.0));
        assert_eq!(fuse(20.0, 5.0, &["10 AWG"]), Ok(30.0));
        assert_eq!(fuse(24.0, 0.0, &["10 AWG"]), Ok(30.0));
        assert_eq!(fuse(48.0, 0.0, &["6 AWG"]), Ok(60.0));
        assert_eq!(fuse(0.0, 10.0, &["14 AWG"]), Ok(10.0));
        assert_eq!(fuse(0.0, 0.0, &[]), Ok(1.0));
    }

    #[test]
    fn the_weakest_conductor_behind_decides() {
        let error = fuse(36.0, 0.0, &["4 AWG", "8 AWG", "10 AWG"]).unwrap_err();
        assert!(matches!(
            error,
            FuseError::ConductorTooThin { weakest: 2, rating_a: 45.0, limit_a: 30.0, .. }
        ));
        let message = error.to_string();
        assert!(message.contains("10 AWG behind it is rated for fuses up to 30 A"), "{message}");
        assert!(message.contains("8 AWG would do"), "{message}");
        // Beyond the small sizes the ampacity decides: 8 AWG carries 80 A.
        let error = fuse(72.0, 0.0, &["8 AWG"]).unwrap_err();
        assert!(matches!(error, FuseError::ConductorTooThin { limit_a: 80.0, rule: None, .. }));
        assert_eq!(fuse(64.0, 0.0, &["8 AWG"]), Ok(80.0));
        assert!(fuse(900.0, 0.0, &[]).unwrap_err().to_string().contains("1000 A"));
        assert!(fuse(f64::NAN, 0.0, &[]).is_err());
    }

    /// 0.0135 ohm/m is held against 18 AWG.
    #[test]
    fn a_resistance_is_held_against_a_listed_size() {
        assert_eq!(fuse(4.0, 0.0, &["16 AWG", "0.0135 ohm/m"]), Ok(5.0));
        assert!(fuse(5.0, 0.0, &["0.0135 ohm/m"]).is_err());
    }

    proptest! {
        /// I_needed <= I_fuse <= I_z of every conductor behind, as it lies.
        #[test]
        fn between_load_and_conductor(
            a in 0.0..400.0f64, b in 0.0..50.0f64, size in 0usize..29, bundled in 1u32..30,
            ambient_c in 10.0..59.0f64, in_insulation in any::<bool>(), insulation in 0usize..7,
        ) {
            let conductor = Conductor::awg().chain(Conductor::metric()).nth(size).unwrap();
            let insulation = ampacity::Insulation::ALL[insulation];
            let conditions =
                Conditions { insulation, bundled, ambient_c, in_insulation, in_jacket: true };
            let Ok(rated) = Rated::new(conductor, &conditions) else { return Ok(()) };
            if let Ok(fuse) = select(a, b, &[rated], &conditions) {
                prop_assert!(fuse.rating_a >= 1.25 * a + b - 1e-6);
                let limit = ampacity::ampacity_a(conductor, &conditions).unwrap();
                prop_assert!(fuse.rating_a <= limit * (1.0 + 1e-8));
                prop_assert!(rated.fuse_limit_a() <= limit);
            }
        }

        #[test]
        fn any_number_is_answered_or_refused(a in any::<f64>(), b in any::<f64>()) {
            if let Ok(fuse) = select(a, b, &[], &BOAT_CABLE) {
                prop_assert!(fuse.rating_a.is_finite() && fuse.needed_a.is_finite());
            }
        }
    }
}
