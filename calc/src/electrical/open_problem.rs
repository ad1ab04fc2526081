//! An open circuit made ready for choosing: options tabulated, picks checked by the network solver.
//!
//! A pick names a size for every run by its place; runs that were given have one choice.

use super::ampacity::{ampacity_a, carries};
use super::conductor::Conductor;
use super::copper_search::{self, Search};
use super::copper_tables::Choice;
use super::drop::is_within;
use super::fuse;
use super::least_copper::{OpenCircuit, OpenError, Wiring};
use super::network::{self, Circuit, Draw, NetworkError, Part};
use super::range;
use crate::sorting::sort_by;

/// An open circuit with its quantities checked and its options tabulated.
pub(super) struct Problem<'a> {
    open: &'a OpenCircuit<'a>,
    draws: Vec<Draw>,
    /// Usable choices with their ampacities, least copper first.
    pub sizes: Vec<(Conductor, f64)>,
    /// What each run may be wired with; a given run has one choice and no copper.
    pub choices: Vec<Vec<Choice>>,
}

impl<'a> Problem<'a> {
    /// Checks the quantities of an open circuit.
    pub fn new(open: &'a OpenCircuit<'a>) -> Result<Self, OpenError> {
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
        sort_by(&mut sizes, |a, b| a.0.total_cmp(&b.0));
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
    pub fn single(&self) -> Option<Vec<usize>> {
        (0..self.sizes.len()).map(|size| self.all(size)).find(|pick| self.fits(pick))
    }

    /// The pick of one size for all open runs.
    pub fn all(&self, size: usize) -> Vec<usize> {
        self.open.conductor.iter().map(|given| if given.is_some() { 0 } else { size }).collect()
    }

    /// The search, once for each fuse that the loads may come to ask for: a fuse leaves only the
    /// sizes that may stand behind it.
    pub fn search(&self, single: &Option<Vec<usize>>, effort: usize) -> Found {
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

    /// Copper of a pick in the open runs, in cm³.
    pub fn copper_cm3(&self, pick: &[usize]) -> f64 {
        self.choices.iter().zip(pick).map(|(choices, p)| choices[*p].copper_cm3).sum()
    }

    /// Whether a pick keeps every load within the limit and every open run within its fuse.
    pub fn fits(&self, pick: &[usize]) -> bool {
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

    /// A pick with its voltages and currents.
    pub fn wiring(&self, pick: &[usize]) -> Result<Wiring, OpenError> {
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
    pub fn shortfall(&self) -> OpenError {
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

/// What the search came to.
pub(super) struct Found {
    /// The best pick, where any was found.
    pub best: Option<Vec<usize>>,
    /// No other pick has less copper, in cm³.
    pub bound: f64,
    /// Whether every pick was tried or ruled out.
    pub exhausted: bool,
}
