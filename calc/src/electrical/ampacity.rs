//! What a conductor may carry: table value, bundling, warm surroundings, thermal insulation.

use std::fmt;

use super::conductor::{AWG_SIZES, Conductor, MM2_PER_CIRCULAR_MIL};
use super::least_size::small_fuse;
use super::run_formulas::{Bundled, Buried};
use super::sources;
use crate::formula::Formula as _;
use crate::source::Source;
use crate::words::{Msg, electrical as words};

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
    /// Rating of the insulation, 60 C where nobody read it off the jacket: the lowest column of 33
    /// CFR 183.425 table 5, and what a wire of no known rating (automotive, speaker cable) can be
    /// trusted with.
    pub insulation: Insulation,
    /// Current-carrying conductors that lie together; the two of one circuit count as 2.
    pub bundled: u32,
    /// Air around the wire, in C.
    pub ambient_c: f64,
    /// Whether half a metre or more of it lies in thermal insulation.
    pub in_insulation: bool,
    /// Whether it runs inside the jacket of a cable with several conductors, so that thinner sizes
    /// may be taken.
    pub in_jacket: bool,
}

/// A table value and what stands behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TableAmpacity {
    /// At 30 C, for no more than two current-carrying conductors together, outside engine spaces.
    pub amperes: f64,
    /// The table.
    pub source: &'static Source,
    /// The listed AWG size whose value it is, where the conductor itself is not in the table.
    pub stands_in: Option<&'static str>,
}

/// A conductor whose ampacity is known as it lies: nothing else is ever given a fuse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rated {
    conductor: Conductor,
    ampacity_a: f64,
    fuse_limit_a: f64,
    fuse_rule: Option<&'static Source>,
    stands_in: Option<&'static str>,
}

/// A conductor that no table gives an ampacity for, being thinner than the least size listed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unrated {
    /// The conductor.
    pub conductor: Conductor,
    /// The insulation that was asked for.
    pub insulation: Insulation,
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

/// Boat cable: two conductors of 105 C insulation in air of 30 C, the wire that ABYC E-11 gives
/// bundling factors for.
pub const BOAT_CABLE: Conditions = Conditions {
    insulation: Insulation::C105,
    bundled: 2,
    ambient_c: TABLE_AMBIENT_C,
    in_insulation: false,
    in_jacket: false,
};

impl Default for Conditions {
    /// Two single conductors of 60 C insulation in air of 30 C.
    fn default() -> Self {
        Self { insulation: Insulation::C60, ..BOAT_CABLE }
    }
}

/// The listed AWG size that a conductor is held against: its own, or the nearest that is no thicker.
///
/// A mm² size has the AWG size next below it by copper area; a resistance the thickest AWG size
/// that resists at least as much at 20 C, where data sheets give resistances and every size of the
/// table resists less than when warm, so that the copper is never taken for more than it is.
///
/// # Source
/// [`sources::METRIC_BY_AWG`], [`sources::OHM_BY_AWG`].
pub fn listed_below(conductor: Conductor) -> Option<&'static str> {
    match conductor {
        Conductor::Awg(size) => Some(size.label),
        Conductor::SquareMillimetre(size) => TABLE_5
            .iter()
            .rev()
            .find(|(_, cmil, _)| cmil * MM2_PER_CIRCULAR_MIL <= size.area_mm2)
            .map(|(label, ..)| *label),
        Conductor::PerLength { ohm_per_m } => AWG_SIZES
            .iter()
            .rev()
            .find(|size| Conductor::Awg(size).ohm_per_m(20.0).is_ok_and(|ohm| ohm >= ohm_per_m))
            .map(|size| size.label),
    }
}

/// What the tables allow, before bundling, warm surroundings and thermal insulation.
///
/// A conductor that is not listed takes the value of [`listed_below`], so it is never allowed more
/// than its copper bears out. 0.75 mm² lies below the smallest size of the table and has a value
/// from memory (none at 60 C); what is thinner has none.
///
/// # Source
/// [`sources::CFR_TABLE_5`], [`sources::METRIC_BY_AWG`], [`sources::OHM_BY_AWG`],
/// [`sources::ISO_10133`].
pub fn table_ampacity(conductor: Conductor, insulation: Insulation) -> Option<TableAmpacity> {
    let column = insulation as usize;
    let source = match conductor {
        Conductor::Awg(_) => &sources::CFR_TABLE_5,
        Conductor::SquareMillimetre(_) => &sources::METRIC_BY_AWG,
        Conductor::PerLength { .. } => &sources::OHM_BY_AWG,
    };
    match (listed_below(conductor), conductor) {
        (Some(listed), _) => {
            let (label, _, row) = TABLE_5.iter().find(|(label, ..)| *label == listed)?;
            let stands_in = Some(*label).filter(|_| !matches!(conductor, Conductor::Awg(_)));
            Some(TableAmpacity { amperes: row[column], source, stands_in })
        }
        (None, Conductor::SquareMillimetre(size))
            if size.area_mm2 == 0.75 && insulation > Insulation::C60 =>
        {
            let amperes = THREE_QUARTERS[column];
            Some(TableAmpacity { amperes, source: &sources::ISO_10133, stands_in: None })
        }
        _ => None,
    }
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

/// Share of the table value that is left where half a metre or more lies in thermal insulation.
///
/// # Source
/// [`sources::BS_7671_INSULATION`].
pub fn insulation_factor(in_insulation: bool) -> f64 {
    if in_insulation { 0.5 } else { 1.0 }
}

/// What the conductor may carry as it lies, in A; `None` where no table has it.
pub fn ampacity_a(conductor: Conductor, conditions: &Conditions) -> Option<f64> {
    let table = table_ampacity(conductor, conditions.insulation)?;
    let bundled =
        Bundled { table_a: table.amperes, factor: bundling_factor(conditions.bundled) }.value();
    let warm = bundled * ambient_factor(conditions.insulation, conditions.ambient_c);
    let factor = insulation_factor(conditions.in_insulation);
    Some(Buried { current_a: warm, factor }.value())
}

impl Rated {
    /// A conductor with what it may carry as it lies.
    ///
    /// # Errors
    /// [`Unrated`] where no table has it, nor a thinner one in its place.
    pub fn new(conductor: Conductor, conditions: &Conditions) -> Result<Self, Unrated> {
        let insulation = conditions.insulation;
        let unrated = Unrated { conductor, insulation };
        let table = table_ampacity(conductor, insulation).ok_or(unrated)?;
        let ampacity_a = ampacity_a(conductor, conditions).ok_or(unrated)?;
        let small = small_fuse(conductor).filter(|small| small.most_a < ampacity_a);
        Ok(Self {
            conductor,
            ampacity_a,
            fuse_limit_a: small.as_ref().map_or(ampacity_a, |small| small.most_a),
            fuse_rule: small.map(|small| small.source),
            stands_in: table.stands_in,
        })
    }

    /// The conductor.
    pub fn conductor(&self) -> Conductor {
        self.conductor
    }

    /// What it may carry as it lies, in A.
    pub fn ampacity_a(&self) -> f64 {
        self.ampacity_a
    }

    /// The greatest fuse that may stand before it, in A: what it may carry, or less by a rule for
    /// small conductors.
    pub fn fuse_limit_a(&self) -> f64 {
        self.fuse_limit_a
    }

    /// The rule for small conductors that allows less than it may carry, where one does.
    pub fn fuse_rule(&self) -> Option<&'static Source> {
        self.fuse_rule
    }

    /// The listed AWG size whose ampacity was taken, where its own is not listed.
    pub fn stands_in(&self) -> Option<&'static str> {
        self.stands_in
    }
}

impl From<Unrated> for Msg {
    fn from(Unrated { conductor, insulation }: Unrated) -> Self {
        let instead = match conductor {
            Conductor::SquareMillimetre(size) if size.area_mm2 == 0.75 => {
                words::UnratedThreeQuarters { rating: insulation.rating_c().to_string() }.into()
            }
            Conductor::PerLength { .. } => Self::from(words::UNRATED_RESISTANCE),
            _ => words::UNRATED_SIZE.into(),
        };
        words::Unrated { conductor: conductor.to_string(), instead }.into()
    }
}

/// In English, for tests.
impl fmt::Display for Unrated {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(*self).fmt(f)
    }
}

impl std::error::Error for Unrated {}

/// The thinnest of the conductors that a fuse of `rating_a` may stand before.
pub fn least_conductor(
    choices: impl IntoIterator<Item = Conductor>,
    rating_a: f64,
    conditions: &Conditions,
) -> Option<Conductor> {
    choices
        .into_iter()
        .filter(|c| super::least_size::may_be_chosen(*c, conditions))
        .filter(|c| Rated::new(*c, conditions).is_ok_and(|c| carries(c.fuse_limit_a, rating_a)))
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
        let conditions = Conditions { bundled, ..BOAT_CABLE };
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

    /// By hand from IEC 60228 and NEC chapter 9 table 8: the copper of what is not listed is never
    /// taken for more than it is.
    #[test]
    fn what_is_not_listed_takes_the_size_below() {
        for (text, listed) in [
            ("16 AWG", Some("16")),
            ("1 mm2", Some("18")),
            ("1.5 mm2", Some("16")),
            ("6 mm2", Some("10")),
            ("0.75 mm2", None),
            ("0.5 mm2", None),
            // 16 AWG has 0.01346 ohm/m at 20 C.
            ("0.0135 ohm/m", Some("18")),
            ("0.0134 ohm/m", Some("16")),
            ("0.022 ohm/m", None),
            ("0.00001 ohm/m", Some("4/0")),
        ] {
            assert_eq!(listed_below(text.parse().unwrap()), listed, "{text}");
        }
        let labels: Vec<&str> = AWG_SIZES.iter().map(|size| size.label).collect();
        assert_eq!(labels, TABLE_5.map(|(label, ..)| label));
    }

    #[test]
    fn nothing_without_a_table_is_rated() {
        let rated = |text: &str, conditions| Rated::new(text.parse().unwrap(), conditions);
        let old = Conditions::default();
        assert_eq!(old.insulation, Insulation::C60);
        let unrated = rated("0.5 mm2", &BOAT_CABLE).unwrap_err().to_string();
        assert!(unrated.contains("1 mm2 or thicker"), "{unrated}");
        assert!(rated("0.75 mm2", &old).unwrap_err().to_string().contains("60 °C"));
        assert!(rated("0.75 mm2", &BOAT_CABLE).is_ok());
        assert!(rated("0.03 ohm/m", &BOAT_CABLE).is_err());
        let given = rated("0.0135 ohm/m", &old).unwrap();
        assert_eq!((given.ampacity_a(), given.stands_in()), (10.0, Some("18")));
    }

    /// BS 7671 523.9: half, for half a metre or more.
    #[test]
    fn in_thermal_insulation() {
        let buried = Conditions { in_insulation: true, ..BOAT_CABLE };
        assert_eq!(ampacity_a("14 AWG".parse().unwrap(), &buried), Some(17.5));
    }

    #[test]
    fn least_conductor_for_a_fuse() {
        let conditions = BOAT_CABLE;
        let least = least_conductor(Conductor::awg(), 50.0, &conditions).unwrap();
        assert_eq!(least.to_string(), "8 AWG", "10 AWG carries 60 A, and stands a fuse of 30 A");
        assert_eq!(least_conductor(Conductor::awg(), 446.0, &conditions), None);
        assert_eq!(least_conductor(Conductor::awg(), f64::NAN, &conditions), None);
    }

    proptest! {
        #[test]
        fn finite_for_all_conditions(bundled in any::<u32>(), ambient_c in any::<f64>()) {
            for insulation in Insulation::ALL {
                let conditions = Conditions { insulation, bundled, ambient_c, ..BOAT_CABLE };
                for wire in Conductor::awg().chain(Conductor::metric()) {
                    if let Some(a) = ampacity_a(wire, &conditions) {
                        prop_assert!(a.is_finite() && a >= 0.0);
                    }
                }
            }
        }
    }
}
