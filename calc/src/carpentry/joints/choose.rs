//! The choice of joints: for each number of joints the least cost, and what is known of cheaper ones.

use super::chain::{Chain, cheapest, cut, in_order};
use super::cheapest::Prices;
use super::dive::dive;
use super::field::{Field, Layout};
use super::master::{Group, Line, Master, Worth};
use super::mixes::{Mix, mixes};
use crate::carpentry::cut_stock::ladder::Ladder;
use crate::carpentry::cut_stock::model::{Bin, Effort, Packing};
use crate::carpentry::cut_stock::solve::Failed;
use crate::sorting::sort_by;
use std::collections::BTreeSet;

/// Layouts of one course that a first choice is made from.
const MOST_FIRST: usize = 600;
/// Steps for one cut plan while layouts are compared.
const CUT_STEPS: u64 = 400_000;
/// Dives from one solution.
const DIVES: usize = 3;
/// Layouts of each number of joints that courses are swapped for.
const MOST_SWAPPED: usize = 40;
/// So many swaps are tried at once.
const MOST_NEIGHBOURS: usize = 600;
/// So many are listed for that.
const MOST_LISTED: usize = 3_000;
/// Steps for looking whether two layouts may lie side by side, and for one place of a sorted list.
const APART_STEPS: usize = 20;
/// Mixes of stock that are looked into for one number of joints.
const MOST_MIXES: usize = 400;

/// Joints of all courses, and how they are cut.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub joints: u32,
    /// In steps of the price grid.
    pub cost: i64,
    pub courses: Vec<Layout>,
    /// No cut plan of these pieces costs less.
    pub bound: i64,
    pub packing: Packing,
}

/// The least cost for a number of joints.
#[derive(Clone, Debug)]
pub(super) struct Choice {
    pub found: Found,
    /// No layout with at most so many joints costs less.
    pub bound: i64,
}

/// What is known of all choices.
#[derive(Clone, Debug)]
pub(super) struct Choices {
    /// By rising number of joints, each cheaper than the one before.
    pub choices: Vec<Choice>,
    /// For the numbers of joints from the fewest on: no layout with at most so many costs less.
    pub bounds: Vec<(u32, i64)>,
    /// There are no layouts with fewer joints.
    pub fewest: u32,
    /// No layout costs less, however many joints it has.
    pub bound: i64,
    /// No layout costs less, its joints priced in. In steps of the price grid.
    pub priced: f64,
}

/// Why there are none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Refused {
    Stagger,
    Cut(Failed),
    /// Nothing better than what is known elsewhere.
    NoBetter,
}

/// The choices; `joint` is what a joint is worth, in steps of the price grid. Where no layout can cost less than `known`, its joints
/// priced in, it is left at that.
pub(super) fn choose(
    field: &Field,
    bins: &[Bin],
    joint: f64,
    known: f64,
    effort: &mut Effort,
) -> Result<Choices, Refused> {
    let mut search = Search {
        field,
        bins,
        joint,
        found: Vec::new(),
        known: BTreeSet::new(),
        worths: Vec::new(),
        elsewhere: known,
        swapped: Vec::new(),
        failed: Failed::NotFound,
        ladder: Ladder::new(bins, 0),
        lines: Vec::new(),
    };
    let first = search.first().ok_or(Refused::Stagger)?;
    search.record(&first.0, first.1, effort);
    for (way, graph) in field.ways.iter().enumerate() {
        let (fewest, most) = graph.joints();
        for count in fewest..=most {
            let room = search.swapped.len() + MOST_SWAPPED;
            field.each(way, count, room, &mut search.swapped);
        }
    }
    search.run(effort)
}

/// What is looked for: the least cost and joint price together, with at most so many joints.
#[derive(Clone, Copy, Debug)]
struct Goal {
    joints: Option<u32>,
    /// Of a joint, in steps of the price grid.
    price: f64,
}

/// Other layouts for one course, or for it and the next.
#[derive(Clone, Copy, Debug)]
struct Swap {
    /// What that adds at least.
    adds: f64,
    course: usize,
    one: usize,
    other: Option<usize>,
}

impl Goal {
    const LEAST: Self = Self { joints: None, price: 0.0 };

    fn within(joints: Option<u32>) -> Self {
        Self { joints, price: 0.0 }
    }

    fn of(&self, found: &Found) -> f64 {
        found.cost as f64 + self.price * f64::from(found.joints)
    }
}

struct Search<'a> {
    field: &'a Field,
    bins: &'a [Bin],
    /// What a joint is worth, in steps of the price grid.
    joint: f64,
    /// Everything that was found and may be worth having, by rising number of joints, each cheaper than the one before.
    found: Vec<Found>,
    /// Demands that were cut already.
    known: BTreeSet<Vec<u32>>,
    /// Prices that show what pieces cost at least.
    worths: Vec<Worth>,
    /// What is known elsewhere to be had, joints priced in: nothing that costs as much is looked for.
    elsewhere: f64,
    /// What courses are swapped for.
    swapped: Vec<Layout>,
    failed: Failed,
    ladder: Ladder,
    /// Bounds by the number of joints.
    lines: Vec<Line>,
}

impl Search<'_> {
    /// Any layouts that keep the stagger, with few joints.
    fn first(&self) -> Option<(Vec<Layout>, Vec<usize>)> {
        let ways = self.field.ways.iter();
        let most = ways.map(|way| way.joints().1 - way.joints().0).max().unwrap_or(0);
        let mut layouts = Vec::new();
        for more in 0..=most {
            for (index, way) in self.field.ways.iter().enumerate() {
                let (fewest, most) = way.joints();
                if fewest + more <= most {
                    let room = layouts.len() + MOST_FIRST;
                    self.field.each(index, fewest + more, room, &mut layouts);
                }
            }
            let cost: Vec<f64> = layouts.iter().map(|one| one.joints_mm.len() as f64).collect();
            if let Some(chain) = cheapest(self.field, &layouts, &cost) {
                return Some((layouts, chain));
            }
            if more >= 3 && layouts.len() > 3 * MOST_FIRST {
                break;
            }
        }
        None
    }

    /// The best known one.
    fn best(&self, goal: Goal) -> Option<&Found> {
        let within = |found: &&Found| goal.joints.is_none_or(|most| found.joints <= most);
        self.found.iter().filter(within).min_by(|a, b| goal.of(a).total_cmp(&goal.of(b)))
    }

    fn record(&mut self, layouts: &[Layout], taken: Vec<usize>, effort: &mut Effort) {
        let chain = Chain::new(self.field, layouts, taken);
        if !self.known.insert(chain.demand.clone()) {
            return;
        }
        effort.spend(chain.demand.len() * (1 + self.worths.len()));
        let pieces = || chain.demand.iter().copied().enumerate();
        let leasts = self.worths.iter().map(|worth| worth.least(worth.of(pieces())));
        let least = self.ladder.next(leasts.fold(0.0, f64::max));
        let no_better = |other: &Found| other.joints <= chain.joints && other.cost <= least;
        if self.found.iter().any(no_better) {
            return;
        }
        let mut part = effort.steps(CUT_STEPS);
        let result = cut(self.field, self.bins, &chain.demand, &mut part);
        effort.give_back(part);
        match result {
            Ok((cost, bound, packing)) => {
                let worse = |other: &Found| other.joints <= chain.joints && other.cost <= cost;
                if self.found.iter().any(worse) {
                    return;
                }
                self.found.retain(|other| other.joints < chain.joints || other.cost < cost);
                let courses = chain.layouts.iter().map(|at| layouts[*at].clone()).collect();
                self.found.push(Found { joints: chain.joints, cost, courses, bound, packing });
                sort_by(&mut self.found, |a, b| a.joints.cmp(&b.joints));
            }
            Err(failed) => self.failed = failed,
        }
    }

    /// Dives from a solved master and keeps what comes of it.
    fn dive(&mut self, master: &Master<'_>, turn: usize, effort: &mut Effort) {
        let mut below = master.clone();
        let Some(fixed) = dive(&mut below, turn, effort) else { return };
        let order = in_order(self.field, &below.layouts, &fixed).or_else(|| {
            // The nearest that keeps the stagger: what the dive took is cheap, the rest at its worth.
            let worth = below.worth();
            let cost: Vec<f64> = below
                .layouts
                .iter()
                .enumerate()
                .map(|(at, one)| {
                    let cost: f64 = one
                        .pieces
                        .iter()
                        .map(|&(kind, count)| worth[kind] * f64::from(count))
                        .sum();
                    let cost = cost + below.joint_price() * one.joints_mm.len() as f64;
                    if fixed.iter().any(|(known, _)| *known == at) { 0.99 * cost } else { cost }
                })
                .collect();
            cheapest(self.field, &below.layouts, &cost)
        });
        if let Some(order) = order {
            self.record(&below.layouts, order, effort);
        }
    }

    fn run(mut self, effort: &mut Effort) -> Result<Choices, Refused> {
        let highest = self.found.iter().map(|found| found.cost).max();
        let highest = highest.unwrap_or_else(|| self.most_cost());
        self.ladder = Ladder::new(self.bins, highest);
        let mut priced = f64::NEG_INFINITY;
        if self.joint > 0.0 {
            let mut part = effort.part(0.4);
            priced = self.look_priced(&mut part);
            effort.give_back(part);
            if self.is_elsewhere(priced) {
                return Err(Refused::NoBetter);
            }
        }
        let mut master = Master::new(self.field, self.bins.to_vec(), 0.0);
        let mut part = effort.part(0.5);
        master.start_by_length(&mut part);
        let bound = self.look(&mut master, None, 0, &mut part);
        effort.give_back(part);
        if self.is_elsewhere(bound as f64) {
            return Err(Refused::NoBetter);
        }
        let is_least =
            |search: &Self| search.best(Goal::LEAST).is_some_and(|best| best.cost <= bound);
        if self.joint <= 0.0 && !is_least(&self) {
            let mut part = effort.part(0.3);
            self.swaps(&master, Goal::LEAST, bound as f64, &mut part);
            effort.give_back(part);
        }
        if bound >= self.most_cost() && self.found.is_empty() {
            return Err(Refused::Cut(Failed::Impossible));
        }
        let fewest = self.fewest();
        let mut bounds: Vec<(u32, i64)> = Vec::new();
        let mut joints = fewest;
        // With more joints nothing cheaper is left to find than what is known.
        while self.found.last().is_some_and(|best| joints < best.joints) {
            let left = self.found.last().map_or(1, |best| best.joints - joints).min(12);
            let mut part = effort.part(1.0 / f64::from(left + 1));
            let at = self.look(&mut master, Some(joints), bound, &mut part);
            effort.give_back(part);
            // What the program and its dives used up leaves something for swaps.
            if self.best(Goal::within(Some(joints))).is_some_and(|best| best.cost > at) {
                let mut part = effort.part(0.2);
                self.swaps(&master, Goal::within(Some(joints)), at as f64, &mut part);
                effort.give_back(part);
            }
            bounds.push((joints, at));
            joints += 1;
        }
        if !is_least(&self) {
            self.swaps(&master, Goal::LEAST, bound as f64, effort);
        }
        // More joints never cost more.
        for at in (1..bounds.len()).rev() {
            bounds[at - 1].1 = bounds[at - 1].1.max(bounds[at].1);
        }
        if self.found.is_empty() {
            return Err(Refused::Cut(self.failed));
        }
        let choices = self.found.iter().map(|found| {
            let own = bounds.iter().find(|(joints, _)| *joints == found.joints);
            let bound = own.map_or(bound, |(_, bound)| *bound).min(found.cost);
            Choice { found: found.clone(), bound }
        });
        Ok(Choices { choices: choices.collect(), bounds, fewest, bound, priced })
    }

    /// Whether what costs no less than a bound is known elsewhere.
    fn is_elsewhere(&self, bound: f64) -> bool {
        self.elsewhere.is_finite() && bound >= self.elsewhere
    }

    /// Dearer than any plan.
    fn most_cost(&self) -> i64 {
        let pieces = self.field.ways.iter().map(|way| way.joints().1 + 1).max().unwrap_or(1);
        let pieces = pieces as i64 * self.field.courses.len() as i64;
        let dearest = self.bins.iter().map(|bin| bin.cost).max().unwrap_or(0);
        dearest.saturating_mul(pieces)
    }

    /// The fewest joints, taken group by group.
    fn fewest(&self) -> u32 {
        let none = vec![0.0; self.field.weights.len()];
        let groups = Group::all(self.field);
        let joints = groups.iter().filter_map(|group| {
            let (cost, _) = group.cheapest(self.field, Prices { pieces: &none, joint: 1.0 })?;
            Some(cost * f64::from(group.count))
        });
        joints.sum::<f64>().round() as u32
    }

    /// Bound, dives and swaps for the least with joints priced in; gives what no layout can cost less than, joints and all. Where that
    /// is known elsewhere it stays at that.
    fn look_priced(&mut self, effort: &mut Effort) -> f64 {
        let mut master = Master::new(self.field, self.bins.to_vec(), self.joint);
        let mut part = effort.part(0.5);
        master.start_by_length(&mut part);
        master.solve(&mut part);
        effort.give_back(part);
        let shown = master.bound();
        let bound = shown.line.at(0);
        if !bound.is_finite() || self.is_elsewhere(bound) {
            return bound;
        }
        self.worths.push(shown.worth);
        let goal = Goal { joints: None, price: self.joint };
        // Rounded as costs are.
        let enough = bound + 1e-6 * bound.abs();
        let reached = |search: &Self| search.best(goal).is_some_and(|best| goal.of(best) <= enough);
        for turn in 0..DIVES {
            if reached(self) || effort.is_spent() {
                break;
            }
            self.dive(&master, turn, effort);
        }
        if !reached(self) {
            self.swaps(&master, goal, enough, effort);
        }
        bound
    }

    /// Bound, dives and mixes for at most so many joints; gives what no layout can cost less than.
    fn look(
        &mut self,
        master: &mut Master<'_>,
        joints: Option<u32>,
        lowest: i64,
        effort: &mut Effort,
    ) -> i64 {
        let known = self.lines.iter().map(|line| line.at(joints.unwrap_or(u32::MAX)));
        let known = known.fold(0.0, f64::max);
        let mut bound = self.ladder.next(known).max(lowest);
        let goal = Goal::within(joints);
        if self.best(goal).is_some_and(|best| best.cost <= bound) {
            return bound;
        }
        master.joints = joints;
        let mut part = effort.part(0.4);
        master.solve(&mut part);
        let shown = master.bound();
        let line = shown.line;
        effort.give_back(part);
        let least = line.at(joints.unwrap_or(0));
        if least > 2.0 * self.most_cost() as f64 + 10.0 {
            return self.most_cost();
        }
        self.lines.push(line);
        self.worths.push(shown.worth);
        bound = self.ladder.next(least.max(0.0)).max(bound);
        if joints.is_none() && self.is_elsewhere(bound as f64) {
            return bound;
        }
        let reached =
            |search: &Self, bound: i64| search.best(goal).is_some_and(|best| best.cost <= bound);
        for turn in 0..DIVES {
            if reached(self, bound) || effort.is_spent() {
                break;
            }
            self.dive(master, turn, effort);
        }
        if !reached(self, bound) {
            bound = self.mixes(joints, bound, effort);
        }
        bound
    }

    /// Other layouts for one course of the best found, and for two neighbours, as long as that makes it cheaper. What the best prices of
    /// `master` show to be the least comes first, what they show to be too dear is left out.
    fn swaps(&mut self, master: &Master<'_>, goal: Goal, bound: f64, effort: &mut Effort) {
        let mut layouts = self.swapped.clone();
        layouts.extend(master.layouts.iter().cloned());
        let worth = master.bound().worth;
        let least = |layout: &Layout| {
            worth.of(layout.pieces.iter().copied()) + goal.price * layout.joints_mm.len() as f64
        };
        let mut leasts: Vec<f64> = layouts.iter().map(least).collect();
        let mut improved = true;
        while std::mem::take(&mut improved) {
            let Some(best) = self.best(goal).filter(|best| goal.of(best) > bound) else { return };
            let (most, first) = (goal.of(best), layouts.len());
            layouts.extend(best.courses.iter().cloned());
            leasts.extend(best.courses.iter().map(least));
            let chain: Vec<usize> = (first..layouts.len()).collect();
            let joints = best.joints;
            let room = most - worth.least(chain.iter().map(|at| leasts[*at]).sum());
            for swap in self.neighbours(&layouts, &leasts, &chain, room, effort) {
                let mut tried = chain.clone();
                tried[swap.course] = swap.one;
                if let (Some(next), Some(other)) = (tried.get_mut(swap.course + 1), swap.other) {
                    *next = other;
                }
                let count: usize = tried.iter().map(|at| layouts[*at].joints_mm.len()).sum();
                if goal.joints.is_some_and(|most| count > most as usize) {
                    continue;
                }
                if effort.is_spent() {
                    return;
                }
                self.record(&layouts, tried, effort);
                // From a cheaper one, or one of as many joints less, on.
                let now = self.best(goal).map(|best| (goal.of(best), best.joints));
                if now.is_some_and(|now| now != (most, joints)) {
                    improved = true;
                    break;
                }
            }
        }
    }

    /// Swaps in `chain` that keep the stagger, by what they add at least, as long as that is less than `room`.
    fn neighbours(
        &self,
        layouts: &[Layout],
        leasts: &[f64],
        chain: &[usize],
        room: f64,
        effort: &mut Effort,
    ) -> Vec<Swap> {
        // The layouts of each way, the least first.
        let of = |way: usize| {
            let mut own: Vec<usize> =
                (0..layouts.len()).filter(|at| layouts[*at].way == way).collect();
            sort_by(&mut own, |a, b| leasts[*a].total_cmp(&leasts[*b]).then(a.cmp(b)));
            own
        };
        let ways: Vec<Vec<usize>> = (0..self.field.ways.len()).map(of).collect();
        effort.spend(layouts.len() * APART_STEPS);
        let mut apart = |a: usize, b: usize| {
            effort.spend(APART_STEPS);
            self.field.are_apart(&layouts[a], &layouts[b])
        };
        let mut found: Vec<Swap> = Vec::new();
        for course in 0..chain.len() {
            let room_here = MOST_LISTED * (course + 1) / chain.len();
            let adds = |course: usize, layout: usize| leasts[layout] - leasts[chain[course]];
            let ones = &ways[self.field.courses[course]];
            let next = chain.get(course + 1).copied();
            let others: &[usize] = match next {
                Some(_) => &ways[self.field.courses[course + 1]],
                None => &[],
            };
            let most = others.first().map_or(0.0, |least| adds(course + 1, *least).min(0.0));
            for &one in ones.iter().take_while(|one| adds(course, **one) + most < room) {
                if course.checked_sub(1).is_some_and(|before| !apart(chain[before], one)) {
                    continue;
                }
                let own = adds(course, one);
                if own < room && next.is_none_or(|next| apart(one, next)) {
                    found.push(Swap { adds: own, course, one, other: None });
                }
                let near = others.iter().take_while(|at| own + adds(course + 1, **at) < room);
                for &other in near {
                    if found.len() >= room_here {
                        break;
                    }
                    let after = chain.get(course + 2);
                    if apart(one, other) && after.is_none_or(|after| apart(other, *after)) {
                        let adds = own + adds(course + 1, other);
                        found.push(Swap { adds, course, one, other: Some(other) });
                    }
                }
            }
        }
        effort.spend(found.len() * APART_STEPS);
        sort_by(&mut found, |a, b| {
            let place = |swap: &Swap| (swap.course, swap.one, swap.other);
            a.adds.total_cmp(&b.adds).then_with(|| place(a).cmp(&place(b)))
        });
        found.truncate(MOST_NEIGHBOURS);
        found
    }

    /// Mixes of stock that cost less than what is known: each is shown to be too little, or dived for.
    fn mixes(&mut self, joints: Option<u32>, mut bound: i64, effort: &mut Effort) -> i64 {
        let goal = Goal::within(joints);
        let highest = self.best(goal).map_or_else(|| self.most_cost(), |best| best.cost);
        let Some(list) = mixes(self.field, self.bins, bound, highest, MOST_MIXES) else {
            return bound;
        };
        let mut master = Mix::master(self.field, self.bins);
        master.joints = joints;
        let mut open = !list.complete;
        let mut at = 0;
        while at < list.mixes.len() {
            let cost = list.mixes[at].cost;
            if self.best(goal).is_some_and(|best| best.cost <= cost) {
                // All cheaper ones were looked into.
                return if open { bound } else { cost };
            }
            if !open {
                bound = cost;
            }
            while let Some(mix) = list.mixes.get(at).filter(|mix| mix.cost == cost) {
                if effort.is_spent() {
                    return bound;
                }
                at += 1;
                mix.limit(&mut master);
                master.solve(effort);
                if master.bound().line.at(joints.unwrap_or(0)) > 1e-3 {
                    continue;
                }
                open = true;
                for turn in 0..DIVES {
                    if self.best(goal).is_some_and(|best| best.cost <= cost) {
                        break;
                    }
                    self.dive(&master, turn, effort);
                }
                if self.best(goal).is_some_and(|best| best.cost <= cost) {
                    return if bound == cost { cost } else { bound };
                }
            }
        }
        if open || !list.all { bound } else { highest }
    }
}
