//! Conductors as text: what is printed on a jacket, what a data sheet says.

use std::fmt;
use std::str::FromStr;

use super::conductor::{AWG_SIZES, Conductor, METRIC_SIZES};
use super::range::{CONDUCTOR_OHM_PER_M, OutOfRange};
use crate::quantity::from_digits;
use crate::text::lower;
use crate::words::{Msg, any_of, electrical as words};

/// The two series of conductor sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Series {
    /// American wire gauge.
    Awg,
    /// Square millimetres, IEC 60228.
    SquareMillimetre,
}

/// Why a text is no conductor.
#[derive(Clone, Debug, PartialEq)]
pub enum ConductorTextError {
    /// Nothing was typed.
    Empty,
    /// A number stands alone.
    UnitMissing {
        /// What was typed.
        typed: String,
    },
    /// A size that its series does not have; `near` are the sizes next to it, thinner first.
    UnknownSize {
        /// What was typed.
        typed: String,
        /// The series it names.
        series: Series,
        /// The nearest sizes of the series, one or two.
        near: Vec<Conductor>,
    },
    /// A resistance that no copper conductor has.
    Resistance(OutOfRange),
    /// Anything else.
    NotAConductor {
        /// What was typed, cut to 40 characters.
        typed: String,
    },
}

impl FromStr for Conductor {
    type Err = ConductorTextError;

    /// Reads `16 AWG`, `16awg`, `AWG 16`, `#10 AWG`, `1/0 AWG`, `00 AWG`, `1.5 mm2`, `1,5 mm²`,
    /// `0.0135 ohm/m`, `13.5 ohm/km`, `13.5 mΩ/m`, `4.99 ohm/kft`.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let typed: String = text.trim().chars().take(40).collect();
        if typed.is_empty() {
            return Err(ConductorTextError::Empty);
        }
        let plain = plain(text);
        if let Some(rest) = plain.strip_suffix("awg").or_else(|| plain.strip_prefix("awg")) {
            return awg(rest.strip_prefix('#').unwrap_or(rest), typed);
        }
        for unit in ["mm2", "mm^2", "sqmm", "qmm"] {
            if let Some(rest) = plain.strip_suffix(unit) {
                return metric(rest, typed);
            }
        }
        for (unit, metres) in RESISTANCE_UNITS {
            if let Some(rest) = plain.strip_suffix(unit) {
                return match from_digits(rest) {
                    Some(ohm) => {
                        Self::per_length(ohm / metres).map_err(ConductorTextError::Resistance)
                    }
                    None => Err(ConductorTextError::NotAConductor { typed }),
                };
            }
        }
        if from_digits(&plain).is_some() || is_aught(plain.strip_prefix('#').unwrap_or(&plain)) {
            return Err(ConductorTextError::UnitMissing { typed });
        }
        Err(ConductorTextError::NotAConductor { typed })
    }
}

impl From<&ConductorTextError> for Msg {
    fn from(error: &ConductorTextError) -> Self {
        let like = words::CONDUCTOR_LIKE;
        match error {
            ConductorTextError::Empty => words::NoConductor { like }.into(),
            ConductorTextError::UnitMissing { typed } => {
                words::UnitMissing { typed: typed.as_str() }.into()
            }
            ConductorTextError::UnknownSize { typed, series, near } => {
                let (typed, near) = (typed.as_str(), any_of(near.iter().map(Conductor::to_string)));
                match series {
                    Series::Awg => words::UnknownAwg { typed, near }.into(),
                    Series::SquareMillimetre => words::UnknownMetric { typed, near }.into(),
                }
            }
            ConductorTextError::Resistance(range) => {
                words::ResistanceWrong { range: Self::from(*range) }.into()
            }
            ConductorTextError::NotAConductor { typed } => {
                words::NotAConductor { typed: typed.as_str(), like }.into()
            }
        }
    }
}

/// In English, for tests.
impl fmt::Display for ConductorTextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for ConductorTextError {}

/// Units of resistance by length, longest suffix first, with the metres that one ohm is spread
/// over.
const RESISTANCE_UNITS: [(&str, f64); 5] = [
    ("mohm/m", 1000.0),
    ("ohm/km", 1000.0),
    ("ohm/kft", 304.8),
    ("ohm/ft", 0.3048),
    ("ohm/m", 1.0),
];

/// Lower case, without blanks, with one spelling of each sign.
fn plain(text: &str) -> String {
    let mut plain = String::new();
    for c in text.chars().take(60).filter(|c| !c.is_whitespace()).map(lower) {
        match c {
            '²' => plain.push('2'),
            ',' => plain.push('.'),
            'ω' => plain.push_str("ohm"),
            '⁄' => plain.push('/'),
            _ => plain.push(c),
        }
    }
    plain.replace("ohms", "ohm")
}

/// `1/0` to `4/0`, `0` to `0000`.
fn is_aught(text: &str) -> bool {
    AWG_SIZES.iter().any(|size| size.label.contains('/') && size.label == text)
        || (1..=4).contains(&text.len()) && text.bytes().all(|b| b == b'0')
}

fn awg(size: &str, typed: String) -> Result<Conductor, ConductorTextError> {
    let size = match size {
        "0" => "1/0",
        "00" => "2/0",
        "000" => "3/0",
        "0000" => "4/0",
        other => other,
    };
    if let Some(row) = AWG_SIZES.iter().find(|row| row.label == size) {
        return Ok(Conductor::Awg(row));
    }
    // The gauge number falls as the wire thickens: n/0 counts on below zero.
    let gauge = match size.strip_suffix("/0") {
        Some(aughts) => from_digits(aughts).map(|n| 1.0 - n),
        None => from_digits(size),
    };
    let Some(gauge) = gauge else {
        return Err(ConductorTextError::NotAConductor { typed });
    };
    let gauges = AWG_SIZES.iter().map(|row| match row.label.strip_suffix("/0") {
        Some(aughts) => 1.0 - from_digits(aughts).unwrap_or(0.0),
        None => from_digits(row.label).unwrap_or(0.0),
    });
    let near = neighbours(gauges.map(|g| -g), -gauge, Conductor::awg());
    Err(ConductorTextError::UnknownSize { typed, series: Series::Awg, near })
}

fn metric(size: &str, typed: String) -> Result<Conductor, ConductorTextError> {
    let Some(area) = from_digits(size) else {
        return Err(ConductorTextError::NotAConductor { typed });
    };
    if let Some(row) = METRIC_SIZES.iter().find(|row| row.area_mm2 == area) {
        return Ok(Conductor::SquareMillimetre(row));
    }
    let near = neighbours(METRIC_SIZES.iter().map(|row| row.area_mm2), area, Conductor::metric());
    Err(ConductorTextError::UnknownSize { typed, series: Series::SquareMillimetre, near })
}

/// The size next below and next above `wanted`, of sizes in rising order.
fn neighbours(
    rising: impl Iterator<Item = f64>,
    wanted: f64,
    sizes: impl Iterator<Item = Conductor>,
) -> Vec<Conductor> {
    let (mut below, mut above) = (None, None);
    for (value, size) in rising.zip(sizes) {
        if value < wanted {
            below = Some(size);
        } else if above.is_none() {
            above = Some(size);
        }
    }
    below.into_iter().chain(above).collect()
}

// Kept beside the reader, so that the range in the message and the range that is read agree.
const _: () = assert!(CONDUCTOR_OHM_PER_M.least > 0.0);

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(text: &str) -> String {
        match text.parse::<Conductor>() {
            Ok(conductor) => conductor.to_string(),
            Err(error) => format!("! {error}"),
        }
    }

    #[test]
    fn reads_every_usual_spelling() {
        for (text, canonical) in [
            ("16 AWG", "16 AWG"),
            ("16awg", "16 AWG"),
            (" AWG 16 ", "16 AWG"),
            ("#10 AWG", "10 AWG"),
            ("1/0 AWG", "1/0 AWG"),
            ("0 awg", "1/0 AWG"),
            ("0000 AWG", "4/0 AWG"),
            ("1.5 mm2", "1.5 mm2"),
            ("1,5 mm²", "1.5 mm2"),
            ("10mm^2", "10 mm2"),
            ("2.50 mm2", "2.5 mm2"),
            ("0.0135 ohm/m", "0.0135 ohm/m"),
            ("13.5 ohm/km", "0.0135 ohm/m"),
            ("13.5 mΩ/m", "0.0135 ohm/m"),
            ("0,0135 Ω/m", "0.0135 ohm/m"),
        ] {
            assert_eq!(read(text), canonical, "{text}");
        }
        let kft: Conductor = "4.99 ohm/kft".parse().unwrap();
        let awg: Conductor = "16 AWG".parse().unwrap();
        assert_eq!(kft.ohm_per_m(75.0), awg.ohm_per_m(75.0));
    }

    #[test]
    fn refusals_say_what_would_be_right() {
        for (text, near) in [
            ("17 AWG", "18 AWG or 16 AWG"),
            ("5/0 AWG", "4/0 AWG"),
            ("24 AWG", "18 AWG"),
            ("5 AWG", "6 AWG or 4 AWG"),
            ("3 mm2", "2.5 mm2 or 4 mm2"),
            ("0.1 mm2", "0.5 mm2"),
            ("120 mm2", "95 mm2"),
        ] {
            let message = read(text);
            assert!(message.starts_with("! ") && message.ends_with(near), "{message}");
            assert!(message.contains(text), "{message}");
        }
        assert!(read("16").contains("16 AWG or 16 mm2"));
        assert!(read("1/0").contains("no unit"));
        assert!(read("").contains("write a size as 16 AWG"));
        assert!(read("thick").contains("16 AWG"));
        assert!(read("0 ohm/m").contains("between"));
        assert!(read("-1 ohm/m").contains("not a conductor"));
        assert!(read("nan mm2").contains("not a conductor"));
        assert!(read("inf ohm/m").contains("not a conductor"));
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused(text in "\\PC{0,80}") {
            prop_assert!(!read(&text).is_empty());
        }

        #[test]
        fn text_near_a_conductor_is_read_or_refused(
            text in "[#0-9/.,e +-]{0,12}(AWG|awg|mm2|mm²|ohm/m|Ω/km|mΩ/m|ohm/kft|)"
        ) {
            if let Ok(conductor) = text.parse::<Conductor>() {
                prop_assert!(conductor.ohm_per_m(30.0).is_ok_and(f64::is_finite));
                prop_assert_eq!(conductor.to_string().parse::<Conductor>(), Ok(conductor));
            }
        }
    }
}
