//! Which fuse a battery cable can have: one whose class breaks the battery's short-circuit current at its charging
//! voltage, in a rating that the class is made in, no higher than the cable carries.

use crate::source::Source;
use crate::words::{Id, energy as words};

/// The short-circuit current that is counted where nobody gave it. [A]
pub const UNKNOWN_SHORT_CIRCUIT_A: f64 = 20_000.0;

/// The rule for boats, followed here for want of one for vans: the fuse breaks the bank's short-circuit current, or
/// 20 kA at 125 V DC beyond 500 Ah or 2200 A of cold cranking current.
pub const BANK: Source = Source::transcribed(
    "ABYC E-11 (boats)",
    "interrupting rating: at least the bank's short-circuit current, or 20 kA at 125 V DC where that exceeds 10 kA",
);

/// A kind of fuse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FuseClass {
    /// Its name in outcomes and ids, the same in every language.
    pub name: &'static str,
    /// What to ask for.
    pub called: Id,
    /// The greatest current that it breaks. [A]
    pub breaks_a: f64,
    /// The greatest voltage that it breaks it at. [V]
    pub greatest_v: f64,
    /// The ratings that it is made in, least first. [A]
    pub ratings_a: &'static [f64],
    /// Who says so.
    pub source: &'static Source,
}

/// The classes, the one that breaks least first.
pub static CLASSES: [FuseClass; 3] = [
    FuseClass {
        name: "blade fuse",
        called: words::CLASS_BLADE,
        breaks_a: 1000.0,
        greatest_v: 32.0,
        ratings_a: &[
            1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0,
            70.0, 80.0, 100.0,
        ],
        source: &BLADE,
    },
    FuseClass {
        name: "bolt-down strip fuse",
        called: words::CLASS_STRIP,
        breaks_a: 2000.0,
        greatest_v: 32.0,
        ratings_a: &[
            30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0,
            300.0, 350.0, 400.0, 450.0, 500.0,
        ],
        source: &STRIP,
    },
    FuseClass {
        name: "class T fuse",
        called: words::CLASS_T,
        breaks_a: 20_000.0,
        greatest_v: 125.0,
        ratings_a: &[
            1.0, 3.0, 6.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0, 80.0,
            90.0, 100.0, 110.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 300.0, 350.0, 400.0,
            450.0, 500.0, 600.0,
        ],
        source: &CLASS_T,
    },
];

static BLADE: Source = Source::from_memory(
    "ISO 8820-3",
    "types C, E, F: ratings by type; 32 V, up to 100 A, breaking capacity 1000 A by its scope",
);
static STRIP: Source = Source::from_memory(
    "ISO 8820-5",
    "types SF 30 and SF 51: ratings by type; 32 V, 30 to 500 A, breaking capacity 2000 A by its scope",
);
static CLASS_T: Source = Source::from_memory(
    "UL 248-15 and makers' data sheets",
    "class T: UL rates it for AC and leaves a DC rating to the maker; makers of battery fuses print 125 V DC and 20 kA or more: look for both on the fuse",
);

/// A fuse that a battery cable can have.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BatteryFuse {
    /// Its rating. [A]
    pub rating_a: f64,
    /// Its class.
    pub class: &'static FuseClass,
}

/// The fuse for a cable: the first class that breaks the short-circuit current at the charging voltage and is made in
/// a rating of at least `needed_a` and at most what the cable carries; none where no class is. A short-circuit
/// current that nobody gave counts as [`UNKNOWN_SHORT_CIRCUIT_A`].
pub fn battery_fuse(
    needed_a: f64,
    ampacity_a: f64,
    charging_v: f64,
    short_circuit_a: Option<f64>,
) -> Option<BatteryFuse> {
    breaking(charging_v, short_circuit_a).find_map(|class| {
        let fits = |rating: &&f64| {
            needed_a <= **rating * (1.0 + 1e-9) && **rating <= ampacity_a * (1.0 + 1e-9)
        };
        class.ratings_a.iter().find(fits).map(|rating| BatteryFuse { rating_a: *rating, class })
    })
}

/// The classes that break the short-circuit current at this voltage.
pub fn breaking(
    charging_v: f64,
    short_circuit_a: Option<f64>,
) -> impl Iterator<Item = &'static FuseClass> {
    let breaks = short_circuit_a.unwrap_or(UNKNOWN_SHORT_CIRCUIT_A);
    CLASSES.iter().filter(move |class| {
        breaks <= class.breaks_a * (1.0 + 1e-9) && charging_v <= class.greatest_v * (1.0 + 1e-9)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    // ISO 8820-3 and -5, scopes: 1000 A and 2000 A at 32 V.
    #[test]
    fn the_short_circuit_current_picks_the_class() {
        let name = |needed, volts, short| {
            battery_fuse(needed, 1e4, volts, short).map(|fuse| fuse.class.name)
        };
        assert_eq!(name(60.0, 14.6, Some(900.0)), Some("blade fuse"));
        assert_eq!(name(60.0, 14.6, Some(1900.0)), Some("bolt-down strip fuse"));
        assert_eq!(name(150.0, 14.6, Some(900.0)), Some("bolt-down strip fuse"));
        assert_eq!(name(150.0, 14.6, Some(6000.0)), Some("class T fuse"));
        assert_eq!(name(150.0, 58.4, Some(900.0)), Some("class T fuse"));
        assert_eq!(name(60.0, 14.6, None), Some("class T fuse"));
        assert_eq!(name(60.0, 14.6, Some(30_000.0)), None);
        assert_eq!(name(60.0, 14.6, Some(f64::NAN)), None);
    }

    // No blade fuse is made in 45 A: on a cable for 48 A one of a class that is, or none.
    #[test]
    fn only_ratings_that_are_made() {
        let rating = |needed, carries, short| {
            battery_fuse(needed, carries, 14.6, short).map(|fuse| (fuse.rating_a, fuse.class.name))
        };
        assert_eq!(rating(42.0, 60.0, Some(900.0)), Some((50.0, "blade fuse")));
        assert_eq!(rating(42.0, 48.0, Some(900.0)), Some((45.0, "class T fuse")));
        assert_eq!(rating(42.0, 44.0, Some(900.0)), None);
    }

    proptest! {
        #[test]
        fn never_above_the_cable_nor_below_the_voltage(
            needed in 0.1..400.0_f64, carries in 0.1..500.0_f64, volts in 1.0..200.0_f64, short in prop::option::of(1.0..4e4_f64),
        ) {
            if let Some(fuse) = battery_fuse(needed, carries, volts, short) {
                prop_assert!(fuse.rating_a <= carries + 1e-6 && fuse.rating_a >= needed - 1e-6);
                prop_assert!(fuse.class.greatest_v >= volts - 1e-6);
                prop_assert!(fuse.class.breaks_a >= short.unwrap_or(2e4) - 1e-3);
                prop_assert!(fuse.class.ratings_a.contains(&fuse.rating_a));
            }
        }

        #[test]
        fn any_number_is_answered_or_refused(a in any_number(), b in any_number(), v in any_number(), s in any_number()) {
            if let Some(fuse) = battery_fuse(a, b, v, Some(s)) {
                prop_assert!(fuse.rating_a.is_finite());
            }
        }
    }
}
