//! Branch and bound over the choices of a tree's runs.
//!
//! In any wiring that keeps every load within the limit, each load's voltage lies between the
//! least voltage allowed and what the wires can give it at best, so its current lies between two
//! bounds. Tables ([`super::copper_tables`]) held at the lower currents are a bound that no wiring
//! can be under; held at the upper currents, or at those of a wiring already found, they lead to
//! good wirings. Whatever has less copper than a wiring already found must lose some voltage on
//! the way: that raises the lower currents, hence the bound, round by round. What is left is tried
//! outwards from the source. Only what the network solver itself has checked is ever taken.

use super::copper_tables::{Choice, Field, Tables, least};
use super::network::Draw;
use super::tree::Tree;
use crate::sorting::sort_by;

/// What is searched. A pick names a choice for every run, by its place.
pub(super) struct Search<'a> {
    pub tree: &'a Tree,
    pub source_v: f64,
    pub least_v: f64,
    /// Most that the source may give under the fuse, in A.
    pub most_a: f64,
    pub draws: &'a [Draw],
    pub choices: &'a [Vec<Choice>],
    /// Whether a choice of a run may be taken.
    pub allowed: &'a dyn Fn(usize, usize) -> bool,
    /// The voltages of a pick that keeps all limits.
    pub check: &'a dyn Fn(&[usize]) -> Option<Vec<f64>>,
}

/// What was found.
pub(super) struct Outcome {
    /// The best pick with less copper than was known before.
    pub best: Option<Vec<usize>>,
    /// No pick has less copper than this or than the best; infinite when nothing was left open.
    pub bound_cm3: f64,
    /// Whether every pick was tried or ruled out.
    pub exhausted: bool,
}

/// Keeps rounding from ruling out what the limit's own slack lets pass; what is taken is checked.
const SLACK: f64 = 1.0 + 4e-9;

/// Finds the pick with the least copper below `best_cm3`, within `effort` steps, which are used up.
pub(super) fn run(search: &Search<'_>, best_cm3: f64, effort: &mut usize) -> Outcome {
    const ROUNDS: usize = 8;
    let left = search.choices.iter().enumerate().map(|(run, choices)| {
        (0..choices.len()).filter(|place| (search.allowed)(run, *place)).collect()
    });
    let limit_v = (search.source_v - search.least_v) * SLACK;
    let field = Field::new(search.tree, search.choices, left.collect(), limit_v, best_cm3);
    let mut descent = Descent { search, field, best: None, effort, gave_up: false };
    let mut least_drop_v = vec![0.0; search.tree.nodes()];
    let mut bound_cm3 = 0.0;
    for round in 0..ROUNDS {
        let (low_a, high_a, source_a) = descent.current_bounds(&least_drop_v);
        if source_a > search.most_a || !descent.field.is_open(descent.bound_by_loss(&low_a)) {
            return descent.outcome(f64::INFINITY);
        }
        let tables = Tables::new(&descent.field, low_a);
        let bound = least(&tables.behind[0], limit_v).filter(|b| descent.field.is_open(*b));
        let Some(bound) = bound else { return descent.outcome(f64::INFINITY) };
        let has_risen = bound > bound_cm3 * (1.0 + 1e-4);
        bound_cm3 = bound_cm3.max(bound);
        let (drops, has_shrunk) = descent.field.narrow(&tables);
        least_drop_v = drops;
        if round == 0 {
            descent.seed(high_a);
        } else if !has_risen && !has_shrunk || round + 1 == ROUNDS {
            descent.down_from_source(&tables, bound);
            break;
        }
    }
    descent.outcome(bound_cm3)
}

struct Descent<'a, 'b> {
    search: &'b Search<'a>,
    field: Field<'b>,
    best: Option<Vec<usize>>,
    effort: &'b mut usize,
    gave_up: bool,
}

/// Where the descent stands: what is picked so far and the drop that is left at each node.
struct Standing<'t> {
    tables: &'t Tables,
    left_v: Vec<f64>,
    pick: Vec<usize>,
}

impl Descent<'_, '_> {
    fn outcome(self, bound_cm3: f64) -> Outcome {
        Outcome {
            best: self.best,
            bound_cm3: if self.gave_up { bound_cm3 } else { f64::INFINITY },
            exhausted: !self.gave_up,
        }
    }

    /// Least and greatest current of each run in any pick that is still looked for, when each node
    /// is known to lose some voltage; and the least current of the source.
    fn current_bounds(&self, least_drop_v: &[f64]) -> (Vec<f64>, Vec<f64>, f64) {
        let Search { tree, source_v, least_v, draws, choices, .. } = *self.search;
        let least_ohm = |run: usize| {
            let ohms = self.field.left[run].iter().map(|place| choices[run][*place].ohm);
            ohms.fold(f64::INFINITY, f64::min)
        };
        let mut drop_v = least_drop_v.to_vec();
        let (mut low_a, mut high_a, mut source_a) = (Vec::new(), Vec::new(), 0.0);
        // Each pass adds drops that the last one made certain; a few passes do.
        for _ in 0..3 {
            let bounds = drop_v
                .iter()
                .zip(draws)
                .map(|(drop_v, draw)| draw.bounds_a(least_v, (source_v - drop_v).max(least_v)));
            let (low, high): (Vec<f64>, Vec<f64>) = bounds.unzip();
            source_a = low.iter().sum();
            (low_a, high_a) = (inwards(tree, low), inwards(tree, high));
            for &run in tree.outward() {
                let (from, to) = tree.ends(run);
                if !self.field.left[run].is_empty() {
                    drop_v[to] = drop_v[to].max(drop_v[from] + least_ohm(run) * low_a[run]);
                }
            }
        }
        (low_a, high_a, source_a)
    }

    /// A bound on copper from the fuse alone. What the source may give at most, less what the loads
    /// take at least, is left to be lost in the runs, each of which loses at least R I² at its
    /// lowest current. For any price on loss, the cheapest choices of all runs together bound the
    /// copper (Lagrange); the price is found by halving.
    fn bound_by_loss(&self, low_a: &[f64]) -> f64 {
        let Search { source_v, least_v, most_a, draws, choices, .. } = *self.search;
        let least_w: f64 = draws.iter().map(|draw| draw.least_w(least_v)).sum();
        let left_w = source_v * most_a - least_w;
        let at_price = |price: f64| {
            let (mut copper_cm3, mut lost_w) = (0.0, 0.0);
            for (run, places) in self.field.left.iter().enumerate() {
                let costs = places.iter().map(|place| {
                    let Choice { ohm, copper_cm3 } = choices[run][*place];
                    (copper_cm3, ohm * low_a[run] * low_a[run])
                });
                let cost = |c: &(f64, f64)| c.0 + price * c.1;
                if let Some((c, w)) = costs.min_by(|a, b| cost(a).total_cmp(&cost(b))) {
                    copper_cm3 += c;
                    lost_w += w;
                }
            }
            (copper_cm3 + price * (lost_w - left_w), lost_w > left_w)
        };
        let (mut bound, mut is_short) = at_price(0.0);
        let (mut low, mut high) = (0.0, 1.0);
        for _ in 0..60 {
            if !is_short {
                break;
            }
            let outcome = at_price(high);
            bound = bound.max(outcome.0);
            is_short = outcome.1;
            if is_short {
                (low, high) = (high, 2.0 * high);
            }
        }
        for _ in 0..30 {
            let middle = (low + high) / 2.0;
            let outcome = at_price(middle);
            bound = bound.max(outcome.0);
            if outcome.1 { low = middle } else { high = middle }
        }
        bound
    }

    /// Good picks to start from: the tables at the greatest currents, then at the currents of what
    /// they found, with the limit drawn in a little where that overshoots.
    fn seed(&mut self, high_a: Vec<f64>) {
        let mut run_a = high_a;
        for _ in 0..4 {
            let tables = Tables::new(&self.field, run_a);
            let mut found = None;
            for share in [1.0, 0.9995, 0.998, 0.995, 0.99, 0.98] {
                found = self.follow(&tables, share).and_then(|pick| self.offer(&pick));
                if found.is_some() {
                    break;
                }
            }
            let Some(volts) = found else { return };
            let drawn = self.search.draws.iter().zip(&volts).map(|(d, v)| d.amperes(*v)).collect();
            run_a = inwards(self.search.tree, drawn);
        }
    }

    /// The pick that tables lead to with a share of the limit.
    fn follow(&self, tables: &Tables, share: f64) -> Option<Vec<usize>> {
        let mut at = self.standing(tables);
        at.left_v[0] *= share;
        for &run in self.search.tree.outward() {
            let (_, place) = self.ways(&at, run).into_iter().next()?;
            self.take(&mut at, run, place);
        }
        Some(at.pick)
    }

    fn standing<'t>(&self, tables: &'t Tables) -> Standing<'t> {
        Standing {
            tables,
            left_v: vec![self.field.limit_v; self.search.tree.nodes()],
            pick: vec![0; self.search.tree.runs()],
        }
    }

    fn take(&self, at: &mut Standing<'_>, run: usize, place: usize) {
        let (from, to) = self.search.tree.ends(run);
        at.pick[run] = place;
        at.left_v[to] =
            at.left_v[from] - self.search.choices[run][place].ohm * at.tables.run_a[run];
    }

    /// Choices of a run by the copper of it and all behind it, least first.
    fn ways(&self, at: &Standing<'_>, run: usize) -> Vec<(f64, usize)> {
        let (from, to) = self.search.tree.ends(run);
        let mut ways: Vec<(f64, usize)> = self.field.left[run]
            .iter()
            .filter_map(|&place| {
                let choice = self.search.choices[run][place];
                let left_v = at.left_v[from] - choice.ohm * at.tables.run_a[run];
                Some((choice.copper_cm3 + least(&at.tables.behind[to], left_v)?, place))
            })
            .collect();
        sort_by(&mut ways, |a, b| a.0.total_cmp(&b.0));
        ways
    }

    /// Checks a pick and keeps it when it is the best so far; its voltages when it is within all
    /// limits.
    fn offer(&mut self, pick: &[usize]) -> Option<Vec<f64>> {
        let volts = (self.search.check)(pick)?;
        let choices = self.search.choices.iter().zip(pick);
        let copper_cm3: f64 = choices.map(|(choices, p)| choices[*p].copper_cm3).sum();
        if copper_cm3 < self.field.best_cm3 * (1.0 - 1e-12) {
            self.field.best_cm3 = copper_cm3;
            self.best = Some(pick.to_vec());
        }
        Some(volts)
    }

    /// The descent keeps a place on the stack for each run, so it is left out for very many.
    fn down_from_source(&mut self, tables: &Tables, bound_cm3: f64) {
        const DEEPEST: usize = 500;
        if self.search.tree.runs() > DEEPEST {
            self.gave_up = true;
            return;
        }
        let mut at = self.standing(tables);
        self.down(&mut at, 0, bound_cm3);
    }

    /// Tries what is left open from the `depth`th run outwards; `bound_cm3` is what no completion
    /// can be under.
    fn down(&mut self, at: &mut Standing<'_>, depth: usize, bound_cm3: f64) {
        const STEPS_OF_A_CHECK: usize = 10;
        let Some(&run) = self.search.tree.outward().get(depth) else {
            *self.effort = self.effort.saturating_sub(STEPS_OF_A_CHECK);
            let pick = at.pick.clone();
            self.offer(&pick);
            return;
        };
        let ways = self.ways(at, run);
        let Some((least_cm3, _)) = ways.first().copied() else { return };
        for (cm3, place) in ways {
            let bound_cm3 = bound_cm3 - least_cm3 + cm3;
            if !self.field.is_open(bound_cm3) {
                return;
            }
            self.gave_up |= *self.effort == 0;
            if self.gave_up {
                return;
            }
            *self.effort -= 1;
            self.take(at, run, place);
            self.down(at, depth + 1, bound_cm3);
        }
    }
}

/// Run currents from what is drawn at each node.
fn inwards(tree: &Tree, mut node_a: Vec<f64>) -> Vec<f64> {
    let mut run_a = vec![0.0; tree.runs()];
    for &run in tree.outward().iter().rev() {
        let (from, to) = tree.ends(run);
        run_a[run] = node_a[to];
        node_a[from] += node_a[to];
    }
    run_a
}
