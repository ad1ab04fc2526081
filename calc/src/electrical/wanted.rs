//! What is asked for a run: a conductor by name, or the least one that is enough.

use crate::text::lower;
use std::str::FromStr;

use super::conductor::{Conductor, Series};
use super::conductor_text::ConductorTextError;

/// What is asked for a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wanted {
    /// This conductor.
    This(Conductor),
    /// The least conductor that is enough, of the series if one is named.
    Least(Option<Series>),
}

impl Default for Wanted {
    /// `auto`.
    fn default() -> Self {
        Self::Least(None)
    }
}

/// Texts to choose from where a conductor is asked for; others may be typed.
pub static SUGGESTIONS: [&str; 20] = [
    "auto", "auto mm2", "18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG",
    "4 AWG", "2 AWG", "1/0 AWG", "2/0 AWG", "0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2",
    "6 mm2", "10 mm2",
];

impl FromStr for Wanted {
    type Err = ConductorTextError;

    /// Reads `auto`, `auto AWG`, `auto mm2`, and every conductor.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let word: String =
            text.chars().take(40).filter(|c| !c.is_whitespace()).map(lower).collect();
        match word.as_str() {
            "auto" => Ok(Self::Least(None)),
            "autoawg" => Ok(Self::Least(Some(Series::Awg))),
            "automm2" | "automm²" => Ok(Self::Least(Some(Series::SquareMillimetre))),
            _ => text.parse().map(Self::This),
        }
    }
}

impl Series {
    /// The conductors of the series, thinnest first.
    pub fn conductors(self) -> Vec<Conductor> {
        match self {
            Self::Awg => Conductor::awg().collect(),
            Self::SquareMillimetre => Conductor::metric().collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn auto_or_a_conductor() {
        assert_eq!(" Auto".parse(), Ok(Wanted::Least(None)));
        assert_eq!("auto AWG".parse(), Ok(Wanted::Least(Some(Series::Awg))));
        assert_eq!("auto mm²".parse(), Ok(Wanted::Least(Some(Series::SquareMillimetre))));
        for text in SUGGESTIONS {
            assert!(text.parse::<Wanted>().is_ok(), "{text}");
        }
        assert!("automatic".parse::<Wanted>().is_err());
        assert!(matches!("1.5 mm2".parse(), Ok(Wanted::This(Conductor::SquareMillimetre(_)))));
    }
}
