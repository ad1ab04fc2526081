//! Least copper on a tree for currents that are held fixed: tables of copper against drop.

use super::tree::Tree;
use crate::sorting::{sort, sort_by};

/// One way to wire a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Choice {
    /// Resistance of both conductors, in ohm.
    pub ohm: f64,
    /// Copper of both conductors, in cm³.
    pub copper_cm3: f64,
}

/// Copper needed against drop allowed: points (V, cm³) with rising drop and falling copper.
pub(super) type Staircase = Vec<(f64, f64)>;

/// What is left to choose from, and what is known of every pick that is still looked for: one that
/// keeps the limit and has less copper than the best.
pub(super) struct Field<'a> {
    pub tree: &'a Tree,
    pub choices: &'a [Vec<Choice>],
    /// Places of the choices of each run that are not ruled out.
    pub left: Vec<Vec<usize>>,
    /// Drop that is allowed, in V.
    pub limit_v: f64,
    /// Copper that is to be beaten, in cm³.
    pub best_cm3: f64,
    /// Most points that a table of a run may have.
    longest: usize,
    /// Copper outside of each node against the drop to it; a lower bound.
    pub outside: Vec<Staircase>,
}

/// Tables for one set of run currents.
pub(super) struct Tables {
    /// The currents, in A.
    pub run_a: Vec<f64>,
    /// Copper of all behind a node against the drop that is left at it.
    pub behind: Vec<Staircase>,
    /// The same for a run and all behind it, at the node it starts from.
    fed: Vec<Staircase>,
}

impl<'a> Field<'a> {
    /// A field where nothing is known yet.
    pub fn new(
        tree: &'a Tree,
        choices: &'a [Vec<Choice>],
        left: Vec<Vec<usize>>,
        limit_v: f64,
        best_cm3: f64,
    ) -> Self {
        let least_of = |run: usize| {
            let copper = left[run].iter().map(|place| choices[run][*place].copper_cm3);
            copper.fold(f64::INFINITY, f64::min)
        };
        // Outside of a node lies at least the thinnest of every run that is not behind it.
        let mut behind_cm3 = vec![0.0; tree.nodes()];
        for &run in tree.outward().iter().rev() {
            let (from, to) = tree.ends(run);
            behind_cm3[from] += behind_cm3[to] + least_of(run);
        }
        let outside = behind_cm3.iter().map(|cm3| vec![(0.0, behind_cm3[0] - cm3)]).collect();
        // Long tables are sharper; their work is kept in bounds for circuits of hundreds of runs.
        let count = left.iter().map(Vec::len).sum::<usize>().max(1);
        let longest = (400_000 / count).clamp(20, 500);
        Self { tree, choices, left, limit_v, best_cm3, longest, outside }
    }

    /// Whether a bound on copper still leaves room for something better than the best.
    pub fn is_open(&self, bound_cm3: f64) -> bool {
        bound_cm3 < self.best_cm3 * (1.0 - 1e-9)
    }

    /// From the source outwards: least drop to each node, bounds on what is outside of it, and
    /// choices ruled out. Returns the drops and whether a choice was ruled out.
    pub fn narrow(&mut self, tables: &Tables) -> (Vec<f64>, bool) {
        let mut outside = vec![Vec::new(); self.tree.nodes()];
        let mut least_v = vec![self.limit_v; self.tree.nodes()];
        let mut possible = vec![Vec::new(); self.tree.runs()];
        let mut leaving = vec![Vec::new(); self.tree.nodes()];
        for run in 0..self.tree.runs() {
            leaving[self.tree.ends(run).0].push(run);
        }
        outside[0] = vec![(0.0, 0.0)];
        least_v[0] = 0.0;
        let outward =
            [0].into_iter().chain(self.tree.outward().iter().map(|r| self.tree.ends(*r).1));
        for from in outward {
            let stairs = std::mem::take(&mut outside[from]);
            let mut reached = vec![Vec::new(); leaving[from].len()];
            for &(drop_v, copper_cm3) in &stairs {
                // What each branch needs at this drop; a branch that cannot rules the drop out.
                let needs =
                    leaving[from].iter().map(|r| least(&tables.fed[*r], self.limit_v - drop_v));
                let Some(needs) = needs.collect::<Option<Vec<f64>>>() else { continue };
                let all_cm3 = copper_cm3 + needs.iter().sum::<f64>();
                for ((&run, need), reached) in leaving[from].iter().zip(&needs).zip(&mut reached) {
                    let (_, to) = self.tree.ends(run);
                    for &place in &self.left[run] {
                        let choice = self.choices[run][place];
                        let point_v = drop_v + choice.ohm * tables.run_a[run];
                        let point_cm3 = all_cm3 - need + choice.copper_cm3;
                        let behind = least(&tables.behind[to], self.limit_v - point_v);
                        if behind.is_some_and(|behind| self.is_open(point_cm3 + behind)) {
                            reached.push((point_v, point_cm3));
                            if !possible[run].contains(&place) {
                                possible[run].push(place);
                            }
                        }
                    }
                }
            }
            outside[from] = stairs;
            for (&run, mut reached) in leaving[from].iter().zip(reached) {
                let (_, to) = self.tree.ends(run);
                least_v[to] = reached.iter().fold(self.limit_v, |least: f64, p| least.min(p.0));
                lower_left(&mut reached);
                thin(&mut reached, self.longest);
                outside[to] = reached;
            }
        }
        for places in &mut possible {
            sort(places);
        }
        let count = |lists: &[Vec<usize>]| lists.iter().map(Vec::len).sum::<usize>();
        let has_shrunk = count(&possible) < count(&self.left);
        self.left = possible;
        self.outside = outside;
        (least_v, has_shrunk)
    }
}

impl Tables {
    /// From the ends inwards.
    pub fn new(field: &Field<'_>, run_a: Vec<f64>) -> Self {
        let mut behind: Vec<Staircase> = vec![vec![(0.0, 0.0)]; field.tree.nodes()];
        let mut fed = vec![Vec::new(); field.tree.runs()];
        for &run in field.tree.outward().iter().rev() {
            let (from, to) = field.tree.ends(run);
            // What cannot be completed to less copper than the best is left out.
            let outside = &field.outside[to];
            behind[to].retain(|p| {
                least(outside, field.limit_v - p.0).is_some_and(|rest| field.is_open(p.1 + rest))
            });
            let mut stairs: Staircase = Vec::new();
            for &place in &field.left[run] {
                let choice = field.choices[run][place];
                let drop_v = choice.ohm * run_a[run];
                stairs.extend(behind[to].iter().map(|p| (p.0 + drop_v, p.1 + choice.copper_cm3)));
            }
            stairs.retain(|p| p.0 <= field.limit_v);
            lower_left(&mut stairs);
            thin(&mut stairs, field.longest);
            behind[from] = together(&behind[from], &stairs);
            fed[run] = stairs;
        }
        Self { run_a, behind, fed }
    }
}

/// The least copper that a drop allows.
pub(super) fn least(stairs: &Staircase, drop_v: f64) -> Option<f64> {
    let within = stairs.partition_point(|p| p.0 <= drop_v);
    within.checked_sub(1).map(|last| stairs[last].1)
}

/// Keeps the points that no other is below and left of.
fn lower_left(points: &mut Staircase) {
    sort_by(points, |a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut lowest = f64::INFINITY;
    points.retain(|p| {
        let is_lower = p.1 < lowest;
        lowest = lowest.min(p.1);
        is_lower
    });
}

/// Halves a long staircase: two points become one at the drop of the one and the copper of the
/// other, so that a lower bound stays one.
fn thin(points: &mut Staircase, longest: usize) {
    while points.len() > longest {
        *points = points.chunks(2).map(|two| (two[0].0, two[two.len() - 1].1)).collect();
    }
}

/// Two branches of one node: the drop of the worse, the copper of both.
fn together(one: &Staircase, two: &Staircase) -> Staircase {
    let mut both: Staircase = Vec::with_capacity(one.len() + two.len());
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
        let is_same = later.0 <= kept.0;
        if is_same {
            kept.1 = kept.1.min(later.1);
        }
        is_same
    });
    both
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn stairs() -> impl Strategy<Value = Staircase> {
        prop::collection::vec((0u8..20, 0u8..20), 1..12).prop_map(|points| {
            let mut points: Staircase =
                points.iter().map(|p| (f64::from(p.0), f64::from(p.1))).collect();
            lower_left(&mut points);
            points
        })
    }

    proptest! {
        #[test]
        fn two_branches_need_what_each_needs(one in stairs(), two in stairs()) {
            let both = together(&one, &two);
            for tenth in 0..250 {
                let drop_v = f64::from(tenth) / 10.0;
                let apart = least(&one, drop_v).zip(least(&two, drop_v)).map(|(a, b)| a + b);
                prop_assert_eq!(least(&both, drop_v), apart);
            }
        }
    }
}
