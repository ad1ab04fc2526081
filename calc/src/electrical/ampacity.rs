//! What a conductor may carry: table value, bundling, warm surroundings.

use super::conductor::{Conductor, MM2_PER_CIRCULAR_MIL};
use super::sources;
use crate::source::Source;

/// Temperature rating of the insulation, as printed on the jacket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Insulation {
    /// 60 C.
    C60,
    /// 75 C.
    C75,
    /// 80 C.
    C80,
    /// 90 C.
    C90,
    /// 105 C.
    C105,
    /// 125 C.
    C125,
    /// 200 C.
    C200,
}

/// How the wire lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions {
    /// Rating of the insulation.
    ///
    /// The usual value is 105 C: the rating of boat cable, the wire that ABYC E-11 gives bundling
    /// factors for. Wire with a lower rating printed on it, or with none, needs a lower column; a
    /// sheet that uses the usual value says so beside the answer.
    pub insulation: Insulation,
    /// Current-carrying conductors that lie together; the two of one circuit count as 2.
    pub bundled: u32,
    /// Air around the wire, in C.
    pub ambient_c: f64,
}

/// A table value and what stands behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TableAmpacity {
    /// At 30 C, for no more than two current-carrying conductors together, outside engine spaces.
    pub amperes: f64,
    /// The table.
    pub source: &'static Source,
}

/// Air temperature that the table is for, in C.
pub const TABLE_AMBIENT_C: f64 = 30.0;

impl Insulation {
    /// Every rating of the table, lowest first.
    pub const ALL: [Self; 7] =
        [Self::C60, Self::C75, Self::C80, Self::C90, Self::C105, Self::C125, Self::C200];

    /// The rating in C.
    pub fn rating_c(self) -> f64 {
        match self {
            Self::C60 => 60.0,
            Self::C75 => 75.0,
            Self::C80 => 80.0,
            Self::C90 => 90.0,
            Self::C105 => 105.0,
            Self::C125 => 125.0,
            Self::C200 => 200.0,
        }
    }
}

impl Default for Conditions {
    /// Two conductors of 105 C insulation in air of 30 C.
    fn default() -> Self {
        Self { insulation: Insulation::C105, bundled: 2, ambient_c: TABLE_AMBIENT_C }
    }
}

/// What the tables allow, before bundling and warm surroundings.
///
/// A mm² size takes the value of the AWG size next below it by copper area, so it is never allowed
/// more than its copper bears out. 0.75 mm² lies below the smallest size of the table and has a
/// value from memory (none at 60 C); 0.5 mm² and a conductor given by its resistance have none.
///
/// # Source
/// [`sources::CFR_TABLE_5`], [`sources::METRIC_BY_AWG`], [`sources::ISO_10133`].
pub fn table_ampacity(conductor: Conductor, insulation: Insulation) -> Option<TableAmpacity> {
    let column = insulation as usize;
    let (amperes, source) = match conductor {
        Conductor::Awg(size) => {
            let (_, _, row) = TABLE_5.iter().find(|(label, ..)| *label == size.label)?;
            (row[column], &sources::CFR_TABLE_5)
        }
        Conductor::SquareMillimetre(size) => {
            let below = TABLE_5
                .iter()
                .rev()
                .find(|(_, cmil, _)| cmil * MM2_PER_CIRCULAR_MIL <= size.area_mm2);
            match below {
                Some((_, _, row)) => (row[column], &sources::METRIC_BY_AWG),
                None if size.area_mm2 == 0.75 && insulation > Insulation::C60 => {
                    (THREE_QUARTERS[column], &sources::ISO_10133)
                }
                None => return None,
            }
        }
        Conductor::PerLength { .. } => return None,
    };
    Some(TableAmpacity { amperes, source })
}

/// Share of the table value that is left when so many current-carrying conductors lie together.
///
/// # Source
/// [`sources::ABYC_BUNDLING`].
pub fn bundling_factor(bundled: u32) -> f64 {
    match bundled {
        0..=2 => 1.0,
        3 => 0.7,
        4..=6 => 0.6,
        7..=24 => 0.5,
        _ => 0.4,
    }
}

/// Share of the table value that is left in air warmer than 30 C: sqrt((Tc - T) / (Tc - 30)).
///
/// Colder air gives no more than the table (1); air at the insulation's rating, or no number, 0.
///
/// # Source
/// [`sources::AMBIENT`].
pub fn ambient_factor(insulation: Insulation, ambient_c: f64) -> f64 {
    let rating_c = insulation.rating_c();
    if ambient_c <= TABLE_AMBIENT_C {
        1.0
    } else if ambient_c < rating_c {
        ((rating_c - ambient_c) / (rating_c - TABLE_AMBIENT_C)).sqrt()
    } else {
        0.0
    }
}

/// What the conductor may carry as it lies, in A; `None` where no table has it.
pub fn ampacity_a(conductor: Conductor, conditions: &Conditions) -> Option<f64> {
    let table = table_ampacity(conductor, conditions.insulation)?;
    Some(
        table.amperes
            * bundling_factor(conditions.bundled)
            * ambient_factor(conditions.insulation, conditions.ambient_c),
    )
}

/// The thinnest of the conductors that may carry `current_a`.
pub fn least_conductor(
    choices: impl IntoIterator<Item = Conductor>,
    current_a: f64,
    conditions: &Conditions,
) -> Option<Conductor> {
    choices
        .into_iter()
        .filter(|c| ampacity_a(*c, conditions).is_some_and(|a| carries(a, current_a)))
        .filter_map(|c| Some((c.area_mm2()?, c)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, c)| c)
}

/// Whether an ampacity is enough for a current, rounding of the last digits forgiven.
pub fn carries(ampacity_a: f64, current_a: f64) -> bool {
    current_a <= ampacity_a * (1.0 + 1e-9)
}

/// Size, circular mils (NEC chapter 9 table 8) and amperes by insulation rating, 60 to 200 C.
static TABLE_5: [(&str, f64, [f64; 7]); 15] = [
    ("18", 1620.0, [10.0, 10.0, 15.0, 20.0, 20.0, 25.0, 25.0]),
    ("16", 2580.0, [15.0, 15.0, 20.0, 25.0, 25.0, 30.0, 35.0]),
    ("14", 4110.0, [20.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0]),
    ("12", 6530.0, [25.0, 25.0, 35.0, 40.0, 45.0, 50.0, 55.0]),
    ("10", 10_380.0, [40.0, 40.0, 50.0, 55.0, 60.0, 70.0, 70.0]),
    ("8", 16_510.0, [55.0, 65.0, 70.0, 70.0, 80.0, 90.0, 100.0]),
    ("6", 26_240.0, [80.0, 95.0, 100.0, 100.0, 120.0, 125.0, 135.0]),
    ("4", 41_740.0, [105.0, 125.0, 130.0, 135.0, 160.0, 170.0, 180.0]),
    ("3", 52_620.0, [120.0, 145.0, 150.0, 155.0, 180.0, 195.0, 210.0]),
    ("2", 66_360.0, [140.0, 170.0, 175.0, 180.0, 210.0, 225.0, 240.0]),
    ("1", 83_690.0, [165.0, 195.0, 210.0, 210.0, 245.0, 265.0, 280.0]),
    ("1/0", 105_600.0, [195.0, 230.0, 245.0, 245.0, 285.0, 305.0, 325.0]),
    ("2/0", 133_100.0, [225.0, 265.0, 285.0, 285.0, 330.0, 355.0, 370.0]),
    ("3/0", 167_800.0, [260.0, 310.0, 330.0, 330.0, 385.0, 410.0, 430.0]),
    ("4/0", 211_600.0, [300.0, 360.0, 385.0, 385.0, 445.0, 475.0, 510.0]),
];

/// 0.75 mm² by insulation rating, ISO 10133 from memory; its 70 C column stands for 75 and 80 C.
/// Nothing is known for 60 C, whose place is not read.
static THREE_QUARTERS: [f64; 7] = [0.0, 10.0, 10.0, 12.0, 16.0, 20.0, 25.0];

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn amperes(text: &str, bundled: u32) -> f64 {
        let conditions = Conditions { bundled, ..Conditions::default() };
        ampacity_a(text.parse().expect(text), &conditions).expect(text)
    }

    /// ABYC E-11 for 105 C insulation outside engine spaces, as a UL 1426 cable maker prints it.
    #[test]
    fn bundled_boat_cable_as_printed() {
        for (size, alone, three, six, many) in [
            ("18 AWG", 20.0, 14.0, 12.0, 10.0),
            ("16 AWG", 25.0, 17.5, 15.0, 12.5),
            ("14 AWG", 35.0, 24.5, 21.0, 17.5),
            ("12 AWG", 45.0, 31.5, 27.0, 22.5),
            ("10 AWG", 60.0, 42.0, 36.0, 30.0),
            ("6 AWG", 120.0, 84.0, 72.0, 60.0),
            ("2 AWG", 210.0, 147.0, 126.0, 105.0),
            ("1/0 AWG", 285.0, 199.5, 171.0, 142.5),
            ("4/0 AWG", 445.0, 311.5, 267.0, 222.5),
        ] {
            for (bundled, printed) in [(2, alone), (3, three), (4, six), (6, six), (7, many)] {
                assert!((amperes(size, bundled) - printed).abs() < 1e-9, "{size}, {bundled}");
            }
            assert_eq!(amperes(size, 24), amperes(size, 7));
            assert!((amperes(size, 25) - 0.4 * alone).abs() < 1e-9);
        }
    }

    /// 33 CFR 183.425 table 5, one value of each column.
    #[test]
    fn table_columns() {
        for (size, insulation, printed) in [
            ("18 AWG", Insulation::C60, 10.0),
            ("8 AWG", Insulation::C75, 65.0),
            ("12 AWG", Insulation::C80, 35.0),
            ("4 AWG", Insulation::C90, 135.0),
            ("3 AWG", Insulation::C105, 180.0),
            ("10 AWG", Insulation::C125, 70.0),
            ("4/0 AWG", Insulation::C200, 510.0),
        ] {
            let table = table_ampacity(size.parse().unwrap(), insulation).unwrap();
            assert_eq!((table.amperes, table.source), (printed, &sources::CFR_TABLE_5));
        }
    }

    /// NEC factors for 90 C insulation, the middle of each printed band, and exact values of the
    /// formula.
    #[test]
    fn warm_air() {
        for (ambient_c, printed) in [(38.0, 0.91), (48.0, 0.82), (58.0, 0.71), (73.0, 0.50)] {
            let factor = ambient_factor(Insulation::C90, ambient_c);
            assert!((factor - printed).abs() < 0.04, "{ambient_c}: {factor}");
        }
        for (insulation, ambient_c, exact) in [
            (Insulation::C60, 40.0, 0.8165),
            (Insulation::C75, 50.0, 0.7454),
            (Insulation::C105, 50.0, 0.8563),
            (Insulation::C105, 60.0, 0.7746),
        ] {
            assert!((ambient_factor(insulation, ambient_c) - exact).abs() < 5e-5);
        }
        assert_eq!(ambient_factor(Insulation::C105, 10.0), 1.0);
        assert_eq!(ambient_factor(Insulation::C105, 105.0), 0.0);
        assert_eq!(ambient_factor(Insulation::C105, f64::NAN), 0.0);
    }

    /// Never above what the AWG table gives for the same or more copper.
    #[test]
    fn metric_sizes_are_no_better_than_their_copper() {
        for metric in Conductor::metric() {
            let Some(table) = table_ampacity(metric, Insulation::C105) else {
                assert_eq!(metric.to_string(), "0.5 mm2");
                continue;
            };
            let thicker = Conductor::awg()
                .find(|awg| awg.area_mm2() >= metric.area_mm2())
                .expect("an AWG size of as much copper");
            let above = table_ampacity(thicker, Insulation::C105).unwrap();
            assert!(table.amperes <= above.amperes, "{metric}");
        }
        assert_eq!(amperes("2.5 mm2", 2), 35.0);
        assert_eq!(amperes("16 mm2", 2), 120.0);
    }

    #[test]
    fn least_conductor_for_a_current() {
        let conditions = Conditions::default();
        let least = least_conductor(Conductor::awg(), 50.0, &conditions).unwrap();
        assert_eq!(least.to_string(), "10 AWG");
        assert_eq!(least_conductor(Conductor::awg(), 446.0, &conditions), None);
        assert_eq!(least_conductor(Conductor::awg(), f64::NAN, &conditions), None);
    }

    proptest! {
        #[test]
        fn finite_for_all_conditions(bundled in any::<u32>(), ambient_c in any::<f64>()) {
            for insulation in Insulation::ALL {
                let conditions = Conditions { insulation, bundled, ambient_c };
                for wire in Conductor::awg().chain(Conductor::metric()) {
                    if let Some(a) = ampacity_a(wire, &conditions) {
                        prop_assert!(a.is_finite() && a >= 0.0);
                    }
                }
            }
        }
    }
}
