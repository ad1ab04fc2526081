//! Branch and bound over the choices of a tree's runs.
//!
//! In any wiring that keeps every load within the limit, each load's voltage lies between the
//! least voltage allowed and what the thickest choices would give it, so its current lies between
//! two bounds. With currents held fixed, least copper on a tree is a short table at each node:
//! copper needed behind the node against the drop left for it. Held at the lower bounds, the
//! tables are a bound that no wiring can be under, and exact for constant currents; held at the
//! upper bounds or at currents of a wiring already found, they lead to good wirings. Only what is
//! checked by the network solver itself is ever taken.

use super::network::Draw;
use super::tree::Tree;

/// One way to wire a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Choice {
    /// Resistance of both conductors, in ohm.
    pub ohm: f64,
    /// Copper of both conductors, in cm³.
    pub copper_cm3: f64,
}

/// What is searched. A pick names a choice for every run.
pub(super) struct Search<'a> {
    pub tree: &'a Tree,
    pub source_v: f64,
    pub least_v: f64,
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
    /// No pick has less copper.
    pub bound_cm3: f64,
    /// Whether every pick was tried or ruled out.
    pub exhausted: bool,
}

/// Finds the pick with the least copper below `best_cm3`, within `effort` steps, which are used up.
pub(super) fn run(search: &Search<'_>, best_cm3: f64, effort: &mut usize) -> Outcome {
    let (low_a, high_a) = current_bounds(search);
    let limit_v = (search.source_v - search.least_v) * SLACK;
    let lowest = Tables::new(search, &low_a, limit_v);
    let Some(bound_cm3) = least(&lowest.behind[0], limit_v) else {
        return Outcome { best: None, bound_cm3: f64::INFINITY, exhausted: true };
    };
    let mut descent = Descent {
        search,
        tables: &lowest,
        left_v: vec![limit_v; search.tree.nodes()],
        pick: vec![0; search.tree.runs()],
        best: None,
        best_cm3,
        effort,
        gave_up: false,
    };
    descent.seed(high_a, limit_v);
    descent.down(0, bound_cm3);
    Outcome { best: descent.best, bound_cm3, exhausted: !descent.gave_up }
}

/// Copper needed against drop allowed: points with rising drop and falling copper.
type Staircase = Vec<(f64, f64)>;

/// For fixed run currents, what is needed behind each node.
struct Tables {
    run_a: Vec<f64>,
    behind: Vec<Staircase>,
}

impl Tables {
    fn new(search: &Search<'_>, run_a: &[f64], limit_v: f64) -> Self {
        let mut behind: Vec<Staircase> = vec![vec![(0.0, 0.0)]; search.tree.nodes()];
        for &run in search.tree.outward().iter().rev() {
            let (from, to) = search.tree.ends(run);
            let mut fed = Vec::new();
            for (place, choice) in search.choices[run].iter().enumerate() {
                if (search.allowed)(run, place) {
                    let drop_v = choice.ohm * run_a[run];
                    fed.extend(behind[to].iter().map(|p| (p.0 + drop_v, p.1 + choice.copper_cm3)));
                }
            }
            fed.retain(|p| p.0 <= limit_v);
            lower_left(&mut fed);
            thin(&mut fed);
            behind[from] = together(&behind[from], &fed);
        }
        Self { run_a: run_a.to_vec(), behind }
    }
}

/// Keeps rounding from ruling out what the limit's own slack lets pass; what is taken is checked.
const SLACK: f64 = 1.0 + 4e-9;

/// The least copper that a drop allows.
fn least(stairs: &Staircase, drop_v: f64) -> Option<f64> {
    let within = stairs.partition_point(|p| p.0 <= drop_v);
    within.checked_sub(1).map(|last| stairs[last].1)
}

/// Keeps the points that no other is below and left of.
fn lower_left(points: &mut Staircase) {
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut lowest = f64::INFINITY;
    points.retain(|p| {
        let keep = p.1 < lowest * (1.0 - 1e-12);
        lowest = lowest.min(p.1);
        keep
    });
}

/// Halves a long staircase: two points become one at the drop of the one and the copper of the
/// other, so that the bound stays a bound.
fn thin(points: &mut Staircase) {
    const LONGEST: usize = 1500;
    while points.len() > LONGEST {
        *points = points.chunks(2).map(|two| (two[0].0, two[two.len() - 1].1)).collect();
    }
}

/// Two branches of one node: the drop of the worse, the copper of both.
fn together(one: &Staircase, two: &Staircase) -> Staircase {
    let mut both = Vec::with_capacity(one.len() + two.len());
    let (mut i, mut j) = (0, 0);
    while let (Some(a), Some(b)) = (one.get(i), two.get(j)) {
        both.push((a.0.max(b.0), a.1 + b.1));
        // The next step is where the first of the two stairs goes down.
        let next = |stairs: &Staircase, k: usize| stairs.get(k + 1).map_or(f64::INFINITY, |p| p.0);
        let (next_one, next_two) = (next(one, i), next(two, j));
        i += usize::from(next_one <= next_two);
        j += usize::from(next_two <= next_one);
    }
    both.dedup_by(|later, kept| {
        let same = later.0 <= kept.0;
        if same {
            kept.1 = kept.1.min(later.1);
        }
        same
    });
    both
}

/// Least and greatest current of each run in any pick within the limits.
fn current_bounds(search: &Search<'_>) -> (Vec<f64>, Vec<f64>) {
    let least_ohm: Vec<f64> = search
        .choices
        .iter()
        .enumerate()
        .map(|(run, choices)| {
            let allowed = choices.iter().enumerate().filter(|(i, _)| (search.allowed)(run, *i));
            allowed.fold(f64::INFINITY, |least, (_, choice)| least.min(choice.ohm))
        })
        .collect();
    let mut most_v = vec![search.source_v; search.tree.nodes()];
    let (mut low_a, mut high_a) = (Vec::new(), Vec::new());
    // Each round lowers the greatest voltages by drops that are certain; a few rounds do.
    for _ in 0..4 {
        let bounds = |most: &f64, draw: &Draw| draw.bounds_a(search.least_v, most.max(search.least_v));
        let pairs: Vec<(f64, f64)> =
            most_v.iter().zip(search.draws).map(|(most, draw)| bounds(most, draw)).collect();
        low_a = inwards(search.tree, pairs.iter().map(|p| p.0).collect());
        high_a = inwards(search.tree, pairs.iter().map(|p| p.1).collect());
        for &run in search.tree.outward() {
            let (from, to) = search.tree.ends(run);
            most_v[to] = most_v[from] - least_ohm[run] * low_a[run];
        }
    }
    (low_a, high_a)
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

struct Descent<'a, 'b> {
    search: &'b Search<'a>,
    tables: &'b Tables,
    left_v: Vec<f64>,
    pick: Vec<usize>,
    best: Option<Vec<usize>>,
    best_cm3: f64,
    effort: &'b mut usize,
    gave_up: bool,
}

impl Descent<'_, '_> {
    /// Good picks to start from: the tables at the greatest currents, then at the currents of what
    /// they found, with the limit drawn in a little where that overshoots.
    fn seed(&mut self, high_a: Vec<f64>, limit_v: f64) {
        let mut run_a = high_a;
        for _ in 0..4 {
            let tables = Tables::new(self.search, &run_a, limit_v);
            let mut found = None;
            for share in [1.0, 0.9995, 0.998, 0.995, 0.99, 0.98] {
                found = self.follow(&tables, limit_v * share).and_then(|pick| self.offer(&pick));
                if found.is_some() {
                    break;
                }
            }
            let Some(volts) = found else { return };
            let drawn = self.search.draws.iter().zip(&volts).map(|(d, v)| d.amperes(*v)).collect();
            run_a = inwards(self.search.tree, drawn);
        }
    }

    /// The pick that tables lead to.
    fn follow(&self, tables: &Tables, limit_v: f64) -> Option<Vec<usize>> {
        let mut left_v = vec![limit_v; self.search.tree.nodes()];
        let mut pick = vec![0; self.search.tree.runs()];
        for &run in self.search.tree.outward() {
            let (from, to) = self.search.tree.ends(run);
            let (_, place) = self.ways(tables, run, left_v[from]).into_iter().next()?;
            pick[run] = place;
            left_v[to] = left_v[from] - self.search.choices[run][place].ohm * tables.run_a[run];
        }
        Some(pick)
    }

    /// Choices of a run by the copper of it and all behind it, least first.
    fn ways(&self, tables: &Tables, run: usize, left_v: f64) -> Vec<(f64, usize)> {
        let (_, to) = self.search.tree.ends(run);
        let mut ways: Vec<(f64, usize)> = self.search.choices[run]
            .iter()
            .enumerate()
            .filter(|(place, _)| (self.search.allowed)(run, *place))
            .filter_map(|(place, choice)| {
                let left_v = left_v - choice.ohm * tables.run_a[run];
                Some((choice.copper_cm3 + least(&tables.behind[to], left_v)?, place))
            })
            .collect();
        ways.sort_by(|a, b| a.0.total_cmp(&b.0));
        ways
    }

    /// Checks a pick and keeps it when it is the best so far; its voltages when it is within all
    /// limits.
    fn offer(&mut self, pick: &[usize]) -> Option<Vec<f64>> {
        let volts = (self.search.check)(pick)?;
        let choices = self.search.choices.iter().zip(pick);
        let copper_cm3: f64 = choices.map(|(choices, p)| choices[*p].copper_cm3).sum();
        if copper_cm3 < self.best_cm3 * (1.0 - 1e-12) {
            self.best_cm3 = copper_cm3;
            self.best = Some(pick.to_vec());
        }
        Some(volts)
    }

    /// Tries what is left open from the `depth`th run outwards; `bound_cm3` is what no completion
    /// can be under.
    fn down(&mut self, depth: usize, bound_cm3: f64) {
        const STEPS_OF_A_CHECK: usize = 10;
        if self.gave_up {
            return;
        }
        let Some(&run) = self.search.tree.outward().get(depth) else {
            *self.effort = self.effort.saturating_sub(STEPS_OF_A_CHECK);
            let pick = self.pick.clone();
            self.offer(&pick);
            return;
        };
        let (from, to) = self.search.tree.ends(run);
        let ways = self.ways(self.tables, run, self.left_v[from]);
        let Some((least_cm3, _)) = ways.first().copied() else { return };
        for (cm3, place) in ways {
            let bound_cm3 = bound_cm3 - least_cm3 + cm3;
            if bound_cm3 >= self.best_cm3 * (1.0 - 1e-9) {
                return;
            }
            if *self.effort == 0 {
                self.gave_up = true;
                return;
            }
            *self.effort -= 1;
            self.pick[run] = place;
            self.left_v[to] =
                self.left_v[from] - self.search.choices[run][place].ohm * self.tables.run_a[run];
            self.down(depth + 1, bound_cm3);
        }
    }
}
