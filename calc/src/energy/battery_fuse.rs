//! Which kind of fuse can break the short-circuit current of a battery.

use crate::source::Source;

/// Batteries beyond 500 Ah or 2200 A of cold cranking current.
pub const BANK: Source = Source::transcribed(
    "ABYC E-11",
    "interrupting rating: at least the bank's short-circuit current, or 20 kA at 125 V DC where that exceeds 10 kA",
);

/// A kind of fuse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FuseClass {
    /// What to ask for.
    pub name: &'static str,
    /// The greatest current that it breaks. [A]
    pub breaks_a: f64,
    /// The greatest voltage that it breaks it at. [V]
    pub greatest_v: f64,
    /// Least and greatest rating. [A]
    pub ratings_a: (f64, f64),
    /// Who says so.
    pub source: &'static Source,
}

/// The classes, the one that breaks least first.
pub static CLASSES: [FuseClass; 3] = [
    FuseClass {
        name: "blade fuse",
        breaks_a: 1000.0,
        greatest_v: 32.0,
        ratings_a: (1.0, 100.0),
        source: &BLADE,
    },
    FuseClass {
        name: "bolt-down strip fuse",
        breaks_a: 2000.0,
        greatest_v: 32.0,
        ratings_a: (30.0, 500.0),
        source: &STRIP,
    },
    FuseClass {
        name: "class T fuse",
        breaks_a: 20_000.0,
        greatest_v: 125.0,
        ratings_a: (1.0, 1200.0),
        source: &CLASS_T,
    },
];

static BLADE: Source =
    Source::transcribed("ISO 8820-3", "types C, E, F: 32 V, up to 100 A, breaking capacity 1000 A");
static STRIP: Source = Source::transcribed(
    "ISO 8820-5",
    "types SF 30 and SF 51: 32 V, 30 to 500 A, breaking capacity 2000 A",
);
static CLASS_T: Source = Source::from_memory("UL 248-15", "class T, 20 kA at 125 V DC");

/// The least class that breaks a short-circuit current, for a fuse of a rating at a battery's voltage; none where none
/// does. A current that nobody gave counts as 20 kA.
pub fn class_for(
    rating_a: f64,
    battery_v: f64,
    short_circuit_a: Option<f64>,
) -> Option<&'static FuseClass> {
    let breaks = short_circuit_a.unwrap_or(20_000.0);
    CLASSES.iter().find(|class| {
        let (least, greatest) = class.ratings_a;
        breaks <= class.breaks_a * (1.0 + 1e-9)
            && battery_v <= class.greatest_v
            && (least..=greatest).contains(&rating_a)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    // ISO 8820-3 and -5, scopes: 1000 A and 2000 A at 32 V.
    #[test]
    fn the_short_circuit_current_picks_the_class() {
        let name = |rating, volts, short| class_for(rating, volts, short).map(|class| class.name);
        assert_eq!(name(60.0, 12.8, Some(900.0)), Some("blade fuse"));
        assert_eq!(name(60.0, 12.8, Some(1900.0)), Some("bolt-down strip fuse"));
        assert_eq!(name(150.0, 12.8, Some(900.0)), Some("bolt-down strip fuse"));
        assert_eq!(name(150.0, 12.8, Some(6000.0)), Some("class T fuse"));
        assert_eq!(name(150.0, 51.2, Some(900.0)), Some("class T fuse"));
        assert_eq!(name(60.0, 12.8, None), Some("class T fuse"));
        assert_eq!(name(60.0, 12.8, Some(30_000.0)), None);
        assert_eq!(name(60.0, 12.8, Some(f64::NAN)), None);
    }
}
