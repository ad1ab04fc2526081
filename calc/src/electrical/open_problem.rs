//! An open circuit made ready for choosing: options tabulated, picks checked by the network solver.
//!
//! A pick names a size for every run by its place; runs that were given have one choice.

use super::ampacity::{Rated, carries};
use super::conductor::Conductor;
use super::copper_search::{self, Search};
use super::copper_tables::Choice;
use super::drop::is_within;
use super::fuse;
use super::least_copper::{OpenCircuit, OpenError, Wiring};
use super::least_size::may_be_chosen;
use super::network::{self, Circuit, Draw, NetworkError, Part};
use super::range;
use crate::sorting::sort_by;

/// An open circuit with its quantities checked and its options tabulated.
pub(super) struct Problem<'a> {
    open: &'a OpenCircuit<'a>,
    draws: Vec<Draw>,
    /// Usable choices with the greatest fuses that they stand, least copper first.
    pub sizes: Vec<(Conductor, f64)>,
    /// The run whose fuse protects each run; none where it is the main fuse.
    zone: Vec<Option<usize>>,
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
            .filter(|c| may_be_chosen(**c, &open.conditions))
            .filter_map(|c| {
                let rated = Rated::new(*c, &open.conditions).ok()?;
                Some((c.area_mm2()?, *c, rated.fuse_limit_a()))
            })
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
        Ok(Self { zone: open.tree.zones(open.fused), open, draws, sizes, choices })
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
        let bounds =
            |least_v: f64| self.draws.iter().map(move |d| d.bounds_a(least_v, self.open.source_v));
        // What each run carries at least: its fuse is no less.
        let branch_a: Vec<f64> = self
            .inwards(bounds(least_v).map(|(low, _)| low).collect())
            .into_iter()
            .map(|low| fuse::next_rating(self.needed_a(low)).map_or(f64::INFINITY, |(a, _)| a))
            .collect();
        let low_a: f64 = bounds(least_v).map(|(low, _)| low).sum();
        let high_a: f64 = match self.floor_v(least_v) {
            Some(floor_v) => bounds(floor_v).map(|(_, high)| high).sum(),
            None => f64::INFINITY,
        };
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
            let is_main =
                |run: usize| self.zone[run].is_none() && self.open.conductor[run].is_none();
            if !behind.contains(&true) && (0..self.open.tree.runs()).any(is_main) {
                continue;
            }
            let allowed = |run: usize, size: usize| {
                self.open.conductor[run].is_some()
                    || match self.zone[run] {
                        None => behind[size],
                        Some(head) => carries(self.sizes[size].1, branch_a[head]),
                    }
            };
            let check = |pick: &[usize]| {
                let volts = self.settled(pick)?;
                let ratings = self.ratings(pick, &volts)?;
                (ratings.main_a <= fuse_a && self.stands(pick, &ratings)).then_some(volts)
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
        let ratings = self.settled(pick).and_then(|volts| self.ratings(pick, &volts));
        ratings.is_some_and(|ratings| self.stands(pick, &ratings))
    }

    /// Whether every open run stands the fuse before it.
    fn stands(&self, pick: &[usize], ratings: &Ratings) -> bool {
        pick.iter().enumerate().all(|(run, size)| {
            self.open.conductor[run].is_some()
                || carries(self.sizes[*size].1, ratings.before(self.zone[run]))
        })
    }

    /// No load of a pick within the limit falls below this, with the source at its lowest. All
    /// currents there are at most Vs / x times those at the source voltage, whatever the loads, so
    /// the drops are at most Vs / x times the limit: x (V - x) = Vs (Vs - least). None where that
    /// has no solution.
    fn floor_v(&self, least_v: f64) -> Option<f64> {
        let source_v = self.open.source_v;
        let Some(low_v) = self.open.low_v else { return Some(least_v) };
        let left = low_v * low_v - 4.0 * source_v * (source_v - least_v) * (1.0 + 1e-8);
        (left > 0.0).then(|| (low_v + left.sqrt()) / 2.0)
    }

    /// Run currents from what is drawn at each node.
    fn inwards(&self, mut node_a: Vec<f64>) -> Vec<f64> {
        let mut run_a = vec![0.0; self.open.tree.runs()];
        for &run in self.open.tree.outward().iter().rev() {
            let (from, to) = self.open.tree.ends(run);
            run_a[run] = node_a[to];
            node_a[from] += node_a[to];
        }
        run_a
    }

    /// The fuses that a pick asks for, at the higher of its currents at the source voltage and at
    /// its lowest; none where no voltage is steady there, or none is listed.
    fn ratings(&self, pick: &[usize], volts: &[f64]) -> Option<Ratings> {
        let drawn = |volts: &[f64]| -> (f64, Vec<f64>) {
            let node_a: Vec<f64> =
                self.draws.iter().zip(volts).map(|(draw, v)| draw.amperes(*v)).collect();
            (node_a.iter().sum(), self.inwards(node_a))
        };
        let (mut source_a, mut run_a) = drawn(volts);
        if let Some(low_v) = self.open.low_v {
            let (low_source_a, low_run_a) = drawn(&self.volts(pick, low_v).ok()?);
            source_a = source_a.max(low_source_a);
            for (a, low_a) in run_a.iter_mut().zip(low_run_a) {
                *a = a.max(low_a);
            }
        }
        let rating = |a: f64| fuse::next_rating(self.needed_a(a)).map(|(rating_a, _)| rating_a);
        let is_fused = |run: usize| self.open.fused.get(run).copied().unwrap_or(false);
        let mut branch_a = Vec::with_capacity(run_a.len());
        for (run, a) in run_a.into_iter().enumerate() {
            branch_a.push(if is_fused(run) { rating(a)? } else { 0.0 });
        }
        Some(Ratings { main_a: rating(source_a)?, branch_a })
    }

    /// The voltages of a pick, when they are steady and every load is within the limit.
    fn settled(&self, pick: &[usize]) -> Option<Vec<f64>> {
        let Ok(volts) = self.volts(pick, self.open.source_v) else { return None };
        let within = |(draw, v): (&Draw, &f64)| {
            !draw.is_load()
                || is_within(
                    100.0 * (self.open.source_v - v) / self.open.source_v,
                    self.open.drop_limit_percent,
                )
        };
        self.draws.iter().zip(&volts).all(within).then_some(volts)
    }

    fn volts(&self, pick: &[usize], source_v: f64) -> Result<Vec<f64>, usize> {
        let run_ohm: Vec<f64> =
            self.choices.iter().zip(pick).map(|(choices, p)| choices[*p].ohm).collect();
        network::settle(self.open.tree, source_v, 0.0, &run_ohm, &self.draws)
    }

    fn needed_a(&self, source_a: f64) -> f64 {
        if self.open.continuous { 1.25 * source_a } else { source_a }
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
            fuse_a: self.ratings(pick, &solution.node_v).map_or(0.0, |ratings| ratings.main_a),
            solution,
        })
    }

    /// What the thickest choice in all open runs falls short by.
    pub fn shortfall(&self) -> OpenError {
        let thickest = self.sizes.len() - 1;
        let (conductor, limit_a) = self.sizes[thickest];
        let limit_percent = self.open.drop_limit_percent;
        let pick = self.all(thickest);
        let Ok(volts) = self.volts(&pick, self.open.source_v) else {
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
        if let Some(low_v) = self.open.low_v.filter(|low_v| self.volts(&pick, *low_v).is_err()) {
            return OpenError::LowCollapse { conductor, low_v };
        }
        let Some(ratings) = self.ratings(&pick, &volts) else {
            let drawn: f64 = self.draws.iter().zip(&volts).map(|(d, v)| d.amperes(*v)).sum();
            return OpenError::AmpacityTooSmall {
                conductor,
                needed_a: self.needed_a(drawn),
                limit_a,
            };
        };
        let open = (0..pick.len()).filter(|run| self.open.conductor[*run].is_none());
        let needed_a = open.map(|run| ratings.before(self.zone[run])).fold(0.0, f64::max);
        if carries(limit_a, needed_a) {
            OpenError::GivenUp
        } else {
            OpenError::AmpacityTooSmall { conductor, needed_a, limit_a }
        }
    }
}

/// The fuses that a pick asks for. [A]
struct Ratings {
    main_a: f64,
    /// By the run that begins behind each; 0 where there is none.
    branch_a: Vec<f64>,
}

impl Ratings {
    /// The fuse of a zone: that of the run it begins with, else the main fuse.
    fn before(&self, zone: Option<usize>) -> f64 {
        zone.and_then(|head| self.branch_a.get(head).copied()).unwrap_or(self.main_a)
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
