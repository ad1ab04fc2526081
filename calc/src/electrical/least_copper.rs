//! Conductors for the runs that are left open: one size for all of them, and the best mix.
//!
//! "Least copper" is the least volume of copper in the open runs, both conductors counted, that
//! keeps every load within the drop limit and every open run thick enough for the fuse at the
//! source, hence for its own current.

use std::fmt;

use super::ampacity::{Conditions, ampacity_a, carries};
use super::conductor::Conductor;
use super::copper_search::{self, Search};
use super::copper_tables::Choice;
use super::drop::is_within;
use super::fuse;
use super::network::{self, Circuit, Draw, NetworkError, Part, PlacedLoad, Solution};
use super::range::{self, OutOfRange};
use super::tree::Tree;

/// A circuit with open runs.
#[derive(Clone, Copy, Debug)]
pub struct OpenCircuit<'a> {
    /// Its shape.
    pub tree: &'a Tree,
    /// Voltage of the source, 0.1 to 1000 V.
    pub source_v: f64,
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
    /// Sizes that may be taken for open runs. Those without a known area or ampacity never are.
    pub choices: &'a [Conductor],
    /// How the wires lie.
    pub conditions: Conditions,
    /// Whether the loads are expected to last three hours or more.
    pub continuous: bool,
}

/// A circuit with all its runs wired.
#[derive(Clone, Debug, PartialEq)]
pub struct Wiring {
    /// What each run is wired with.
    pub conductor: Vec<Conductor>,
    /// Copper in the runs that were open, both conductors, in cm³.
    pub copper_cm3: f64,
    /// Rating of the fuse at the source, in A; conductors that were given may still be too thin
    /// for it ([`fuse::select`] tells).
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
    /// Even the thickest choice may not carry the fuse that the loads ask for.
    AmpacityTooSmall {
        /// The thickest choice.
        conductor: Conductor,
        /// What the loads ask the fuse to carry, in A.
        needed_a: f64,
        /// What the thickest choice may carry as it lies, in A.
        ampacity_a: f64,
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

/// An open circuit with its quantities checked and its options tabulated.
pub(super) struct Problem<'a> {
    open: &'a OpenCircuit<'a>,
    draws: Vec<Draw>,
    /// Usable choices, least copper first.
    sizes: Vec<(Conductor, f64)>,
    /// What each run may be wired with; a given run has one choice and no copper.
    choices: Vec<Vec<Choice>>,
}

impl<'a> Problem<'a> {
    pub(super) fn new(open: &'a OpenCircuit<'a>) -> Result<Self, OpenError> {
        let runs = open.tree.runs();
        if open.length_m.len() != runs || open.conductor.len() != runs {
            return Err(OpenError::Network(NetworkError::Mismatch));
        }
        range::DROP_LIMIT_PERCENT.check(open.drop_limit_percent)?;
        range::CONDUCTOR_TEMPERATURE_C.check(open.temperature_c)?;
        if open.conductor.iter().all(Option::is_some) {
            return Err(OpenError::NothingOpen);
        }
        let mut sizes: Vec<(f64, Conductor, f64)> = open
            .choices
            .iter()
            .filter_map(|c| Some((c.area_mm2()?, *c, ampacity_a(*c, &open.conditions)?)))
            .collect();
        sizes.sort_by(|a, b| a.0.total_cmp(&b.0));
        if sizes.is_empty() {
            return Err(OpenError::NoChoices);
        }
        let mut choices = Vec::with_capacity(runs);
        for (run, (length_m, given)) in open.length_m.iter().zip(open.conductor).enumerate() {
            let both_m = 2.0
                * range::RUN_LENGTH_M.check(*length_m).map_err(|range| {
                    OpenError::Network(NetworkError::Range { part: Part::Run(run), range })
                })?;
            let mut of_run = Vec::new();
            match given {
                Some(conductor) => of_run.push(Choice {
                    ohm: both_m * conductor.ohm_per_m(open.temperature_c)?,
                    copper_cm3: 0.0,
                }),
                None => {
                    for (area_mm2, conductor, _) in &sizes {
                        of_run.push(Choice {
                            ohm: both_m * conductor.ohm_per_m(open.temperature_c)?,
                            copper_cm3: both_m * area_mm2,
                        });
                    }
                }
            }
            choices.push(of_run);
        }
        let sizes = sizes.into_iter().map(|(_, c, a)| (c, a)).collect();
        let run_ohm: Vec<f64> = choices.iter().map(|c| c[0].ohm).collect();
        let draws = network::draws(&Circuit {
            tree: open.tree,
            source_v: open.source_v,
            source_ohm: 0.0,
            run_ohm: &run_ohm,
            loads: open.loads,
        })
        .map_err(OpenError::Network)?;
        Ok(Self { open, draws, sizes, choices })
    }

    /// The thinnest single size that does, as a pick for every run.
    fn single(&self) -> Option<Vec<usize>> {
        (0..self.sizes.len()).map(|size| self.all(size)).find(|pick| self.fits(pick))
    }

    fn all(&self, size: usize) -> Vec<usize> {
        self.open.conductor.iter().map(|given| if given.is_some() { 0 } else { size }).collect()
    }

    /// The search, once for each fuse that the loads may come to ask for: a fuse leaves only the
    /// sizes that may stand behind it.
    fn search(&self, single: &Option<Vec<usize>>, effort: usize) -> Found {
        let least_v = self.open.source_v * (1.0 - self.open.drop_limit_percent / 100.0);
        let (mut low_a, mut high_a) = (0.0, 0.0);
        for draw in &self.draws {
            let (low, high) = draw.bounds_a(least_v, self.open.source_v);
            low_a += low;
            high_a += high;
        }
        let mut found = Found { best: single.clone(), bound: f64::INFINITY, exhausted: true };
        let mut best_cm3 = single.as_ref().map_or(f64::INFINITY, |pick| self.copper_cm3(pick));
        let (least_fuse, most_fuse) = (self.needed_a(low_a), self.needed_a(high_a));
        let mut fuses: Vec<f64> = fuse::RATINGS
            .iter()
            .map(|(fuse_a, _)| *fuse_a)
            .filter(|fuse_a| carries(*fuse_a, least_fuse))
            .collect();
        fuses.truncate(1 + fuses.iter().take_while(|fuse_a| !carries(**fuse_a, most_fuse)).count());
        // A first pass without descent finds a good wiring, whichever fuse it comes to; the second
        // has that to beat from the start.
        let mut effort = effort;
        for (is_first, fuse_a) in
            fuses.iter().map(|a| (true, *a)).chain(fuses.iter().map(|a| (false, *a)))
        {
            if is_first && fuses.len() == 1 {
                continue;
            }
            let behind: Vec<bool> = self.sizes.iter().map(|(_, a)| carries(*a, fuse_a)).collect();
            if !behind.contains(&true) {
                continue;
            }
            let allowed =
                |run: usize, size: usize| self.open.conductor[run].is_some() || behind[size];
            let check = |pick: &[usize]| {
                let volts = self.settled(pick)?;
                self.rating_a(&volts).is_some_and(|a| a <= fuse_a).then_some(volts)
            };
            let search = Search {
                tree: self.open.tree,
                source_v: self.open.source_v,
                least_v,
                most_a: fuse_a * (1.0 + 2e-9) / self.needed_a(1.0),
                draws: &self.draws,
                choices: &self.choices,
                allowed: &allowed,
                check: &check,
            };
            let steps = if is_first { &mut 0 } else { &mut effort };
            let outcome = copper_search::run(&search, best_cm3, steps);
            if !is_first {
                found.bound = found.bound.min(outcome.bound_cm3);
                found.exhausted &= outcome.exhausted;
            }
            if let Some(pick) = outcome.best {
                best_cm3 = self.copper_cm3(&pick);
                found.best = Some(pick);
            }
        }
        found
    }

    pub(super) fn copper_cm3(&self, pick: &[usize]) -> f64 {
        self.choices.iter().zip(pick).map(|(choices, p)| choices[*p].copper_cm3).sum()
    }

    /// Whether a pick keeps every load within the limit and every open run within its fuse.
    pub(super) fn fits(&self, pick: &[usize]) -> bool {
        let Some(rating_a) = self.settled(pick).and_then(|volts| self.rating_a(&volts)) else {
            return false;
        };
        let mut open = pick.iter().zip(self.open.conductor).filter(|(_, given)| given.is_none());
        open.all(|(p, _)| carries(self.sizes[*p].1, rating_a))
    }

    /// The voltages of a pick, when they are steady and every load is within the limit.
    fn settled(&self, pick: &[usize]) -> Option<Vec<f64>> {
        let Ok(volts) = self.volts(pick) else { return None };
        let within = |(draw, v): (&Draw, &f64)| {
            !draw.is_load()
                || is_within(
                    100.0 * (self.open.source_v - v) / self.open.source_v,
                    self.open.drop_limit_percent,
                )
        };
        self.draws.iter().zip(&volts).all(within).then_some(volts)
    }

    fn volts(&self, pick: &[usize]) -> Result<Vec<f64>, usize> {
        let run_ohm: Vec<f64> =
            self.choices.iter().zip(pick).map(|(choices, p)| choices[*p].ohm).collect();
        network::settle(self.open.tree, self.open.source_v, 0.0, &run_ohm, &self.draws)
    }

    fn needed_a(&self, source_a: f64) -> f64 {
        if self.open.continuous { 1.25 * source_a } else { source_a }
    }

    fn source_a(&self, volts: &[f64]) -> f64 {
        self.draws.iter().zip(volts).map(|(draw, v)| draw.amperes(*v)).sum()
    }

    fn rating_a(&self, volts: &[f64]) -> Option<f64> {
        fuse::next_rating(self.needed_a(self.source_a(volts))).map(|(rating_a, _)| rating_a)
    }

    fn wiring(&self, pick: &[usize]) -> Result<Wiring, OpenError> {
        let run_ohm: Vec<f64> =
            self.choices.iter().zip(pick).map(|(choices, p)| choices[*p].ohm).collect();
        let solution = network::solve(&Circuit {
            tree: self.open.tree,
            source_v: self.open.source_v,
            source_ohm: 0.0,
            run_ohm: &run_ohm,
            loads: self.open.loads,
        })
        .map_err(OpenError::Network)?;
        let given = self.open.conductor.iter().zip(pick);
        Ok(Wiring {
            conductor: given.map(|(given, p)| given.unwrap_or(self.sizes[*p].0)).collect(),
            copper_cm3: self.copper_cm3(pick),
            fuse_a: self.rating_a(&solution.node_v).unwrap_or(0.0),
            solution,
        })
    }

    /// What the thickest choice in all open runs falls short by.
    fn shortfall(&self) -> OpenError {
        let thickest = self.sizes.len() - 1;
        let (conductor, ampacity_a) = self.sizes[thickest];
        let limit_percent = self.open.drop_limit_percent;
        let Ok(volts) = self.volts(&self.all(thickest)) else {
            return OpenError::DropTooGreat { conductor, worst: None, limit_percent };
        };
        let worst = (0..volts.len())
            .filter(|node| self.draws[*node].is_load())
            .min_by(|a, b| volts[*a].total_cmp(&volts[*b]))
            .map(|node| (node, 100.0 * (1.0 - volts[node] / self.open.source_v)));
        if let Some((node, percent)) = worst.filter(|(_, p)| !is_within(*p, limit_percent)) {
            let worst = Some((self.open.tree.name(node).to_string(), percent));
            return OpenError::DropTooGreat { conductor, worst, limit_percent };
        }
        let needed_a = self.needed_a(self.source_a(&volts));
        match fuse::next_rating(needed_a) {
            Some((rating_a, _)) if carries(ampacity_a, rating_a) => OpenError::GivenUp,
            _ => OpenError::AmpacityTooSmall { conductor, needed_a, ampacity_a },
        }
    }
}

struct Found {
    best: Option<Vec<usize>>,
    bound: f64,
    exhausted: bool,
}

impl From<OutOfRange> for OpenError {
    fn from(range: OutOfRange) -> Self {
        Self::Range(range)
    }
}

impl fmt::Display for OpenError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Range(range) => range.fmt(f),
            Self::Network(error) => error.fmt(f),
            Self::NoChoices => f.write_str(
                "there is no size to choose from; name AWG sizes, or metric sizes from 0.75 mm2",
            ),
            Self::NothingOpen => f.write_str("every run has its conductor; set one to auto"),
            Self::DropTooGreat { conductor, worst, limit_percent } => {
                match worst {
                    Some((node, percent)) => write!(
                        f,
                        "even with {conductor} in all open runs “{node}” loses {percent:.1} %, and \
                         {limit_percent} % is allowed"
                    )?,
                    None => write!(f, "even {conductor} in all open runs has no steady voltage")?,
                }
                f.write_str("; shorten the runs, split the circuit or take a higher voltage")
            }
            Self::AmpacityTooSmall { conductor, needed_a, ampacity_a } => write!(
                f,
                "the loads ask for a fuse of {needed_a:.1} A, and even {conductor} may carry no \
                 more than {ampacity_a:.1} A; split the circuit or lay fewer conductors together"
            ),
            Self::GivenUp => f.write_str(
                "no mix of these sizes was found in the time allowed; name a conductor for some of \
                 the runs",
            ),
        }
    }
}

impl std::error::Error for OpenError {}

#[cfg(test)]
#[path = "least_copper_tests.rs"]
mod tests;
