//! Conductors for the runs that are left open: one size for all of them, and the best mix.
//!
//! "Least copper" is the least volume of copper in the open runs, both conductors counted, that
//! keeps every load within the drop limit and every open run thick enough for the fuse at the
//! source, hence for its own current.

use std::fmt;

use super::ampacity::Conditions;
use super::conductor::Conductor;
use super::network::{NetworkError, PlacedLoad, Solution};
use super::open_problem::Problem;
use super::range::OutOfRange;
use super::tree::Tree;
use crate::quantity::{amount, beside};
use crate::words::{Msg, electrical as words};

/// A circuit with open runs.
#[derive(Clone, Copy, Debug)]
pub struct OpenCircuit<'a> {
    /// Its shape.
    pub tree: &'a Tree,
    /// Voltage of the source, 0.1 to 1000 V.
    pub source_v: f64,
    /// The lowest that it falls to, where that is known, no more than `source_v`: fuses and
    /// conductors are held against the currents there too.
    pub low_v: Option<f64>,
    /// Temperature of the copper, -50 to 200 C.
    pub temperature_c: f64,
    /// Drop that is allowed at each load, 0.01 to 99 % of the source voltage.
    pub drop_limit_percent: f64,
    /// One-way length of each run, 0 to 10,000 m.
    pub length_m: &'a [f64],
    /// What each run is wired with; `None` for an open run.
    pub conductor: &'a [Option<Conductor>],
    /// The loads.
    pub loads: &'a [PlacedLoad],
    /// Sizes that may be taken for open runs. Those without a known area or ampacity never are, nor
    /// those too thin for the way the wires lie.
    pub choices: &'a [Conductor],
    /// How the wires lie.
    pub conditions: Conditions,
    /// Whether the loads are expected to last three hours or more.
    pub continuous: bool,
    /// Whether each run has a fuse of its own where it begins; none where the list ends.
    pub fused: &'a [bool],
}

/// A circuit with all its runs wired.
#[derive(Clone, Debug, PartialEq)]
pub struct Wiring {
    /// What each run is wired with.
    pub conductor: Vec<Conductor>,
    /// Copper in the runs that were open, both conductors, in cm³.
    pub copper_cm3: f64,
    /// Rating of the fuse at the source, in A; conductors that were given may still be too thin
    /// for it ([`super::fuse::select`] tells).
    pub fuse_a: f64,
    /// Voltages, currents and losses.
    pub solution: Solution,
}

/// The answers for a circuit with open runs.
#[derive(Clone, Debug, PartialEq)]
pub struct LeastCopper {
    /// The thinnest single size that does for all open runs: one spool to buy.
    pub single: Option<Wiring>,
    /// The mix of sizes with the least copper that was found.
    pub mix: Wiring,
    /// No mix has less copper than this, in cm³.
    pub bound_cm3: f64,
    /// Whether the search was exhausted, so that no mix is better than `mix`.
    pub proved: bool,
}

/// Why open runs stay open.
#[derive(Clone, Debug, PartialEq)]
pub enum OpenError {
    /// A drop limit or temperature out of range.
    Range(OutOfRange),
    /// A quantity of the network is out of range, or lists do not fit the tree.
    Network(NetworkError),
    /// No choice has a known area and ampacity.
    NoChoices,
    /// No run is open.
    NothingOpen,
    /// Even with the thickest choice in all open runs a load loses too much.
    DropTooGreat {
        /// The thickest choice.
        conductor: Conductor,
        /// Name of the load's node that loses most; its drop in percent, where a steady voltage
        /// exists.
        worst: Option<(String, f64)>,
        /// What is allowed.
        limit_percent: f64,
    },
    /// With the thickest choice in all open runs no steady voltage exists at the source's lowest.
    LowCollapse {
        /// The thickest choice.
        conductor: Conductor,
        /// The lowest voltage, in V.
        low_v: f64,
    },
    /// Even the thickest choice does not stand the fuse that the loads ask for.
    AmpacityTooSmall {
        /// The thickest choice.
        conductor: Conductor,
        /// What the loads ask the fuse to carry, in A.
        needed_a: f64,
        /// The greatest fuse that the thickest choice stands as it lies, in A.
        limit_a: f64,
    },
    /// No mix was found before the search was given up, though one may exist.
    GivenUp,
}

/// Steps of search that answer a circuit of a few dozen runs within a screen's frame or two.
pub const USUAL_EFFORT: usize = 20_000;

/// Chooses conductors for the open runs.
///
/// The mix is found by branch and bound: exact for each circuit where `proved` is true, and tested
/// against trying every mix. `effort` bounds the steps of search ([`USUAL_EFFORT`]); when it runs
/// out, the best mix so far is given with the bound that no mix can be under.
///
/// # Errors
/// [`OpenError`] when a quantity is wrong or no mix will do.
pub fn choose(open: &OpenCircuit<'_>, effort: usize) -> Result<LeastCopper, OpenError> {
    let problem = Problem::new(open)?;
    let single = problem.single();
    let found = problem.search(&single, effort);
    match found.best {
        Some(pick) => {
            let mix = problem.wiring(&pick)?;
            let bound_cm3 =
                if found.exhausted { mix.copper_cm3 } else { found.bound.min(mix.copper_cm3) };
            let single = single.map(|pick| problem.wiring(&pick)).transpose()?;
            Ok(LeastCopper { single, bound_cm3, proved: found.exhausted, mix })
        }
        None if found.exhausted => Err(problem.shortfall()),
        None => match problem.shortfall() {
            // The thickest of all would do, and yet nothing was found in time.
            OpenError::GivenUp => Err(OpenError::GivenUp),
            short => Err(short),
        },
    }
}

impl From<OutOfRange> for OpenError {
    fn from(range: OutOfRange) -> Self {
        Self::Range(range)
    }
}

impl From<&OpenError> for Msg {
    fn from(error: &OpenError) -> Self {
        match error {
            OpenError::Range(range) => (*range).into(),
            OpenError::Network(error) => error.into(),
            OpenError::NoChoices => words::OPEN_NO_CHOICES.into(),
            OpenError::NothingOpen => words::NOTHING_OPEN.into(),
            OpenError::DropTooGreat { conductor, worst: Some((node, lost)), limit_percent } => {
                words::OpenDrop {
                    conductor: conductor.to_string(),
                    node: node.as_str(),
                    lost: beside(*lost, *limit_percent, 2, "%"),
                    limit: amount(*limit_percent, 3, "%"),
                }
                .into()
            }
            OpenError::DropTooGreat { conductor, worst: None, .. } => {
                words::OpenCollapse { conductor: conductor.to_string() }.into()
            }
            OpenError::LowCollapse { conductor, low_v } => words::OpenLowCollapse {
                low: amount(*low_v, 2, "V"),
                conductor: conductor.to_string(),
            }
            .into(),
            OpenError::AmpacityTooSmall { conductor, needed_a, limit_a } => words::OpenAmpacity {
                needed: beside(*needed_a, *limit_a, 1, "A"),
                conductor: conductor.to_string(),
                limit: amount(*limit_a, 1, "A"),
            }
            .into(),
            OpenError::GivenUp => words::GIVEN_UP.into(),
        }
    }
}

/// In English, for tests.
impl fmt::Display for OpenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for OpenError {}

#[cfg(test)]
#[path = "least_copper_tests.rs"]
mod tests;
