//! The choice of joints: for each number of joints the least cost, and what is known of cheaper ones.

use super::chain::{Chain, cheapest, cut, in_order};
use super::cheapest::Prices;
use super::dive::dive;
use super::field::{Field, Layout};
use super::master::{Group, Line, Master};
use super::mixes::{Mix, mixes};
use crate::carpentry::cut_stock::ladder::Ladder;
use crate::carpentry::cut_stock::model::{Bin, Effort, Packing};
use crate::carpentry::cut_stock::solve::Failed;
use crate::sorting::sort_by;

/// Layouts of one course that a first choice is made from.
const MOST_FIRST: usize = 600;
/// Steps for one cut plan while layouts are compared.
const CUT_STEPS: u64 = 400_000;
/// Dives from one solution.
const DIVES: usize = 3;
/// Layouts of each number of joints that courses are swapped for.
const MOST_SWAPPED: usize = 40;
/// So many swaps are tried at once.
const MOST_NEIGHBOURS: usize = 1_500;
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
}

/// Why there are none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Refused {
    Stagger,
    Cut(Failed),
}

pub(super) fn choose(field: &Field, bins: &[Bin], effort: &mut Effort) -> Result<Choices, Refused> {
    let mut search = Search {
        field,
        bins,
        found: Vec::new(),
        known: Vec::new(),
        failed: Failed::NotFound,
        ladder: Ladder::new(bins, 0),
        lines: Vec::new(),
    };
    let first = search.first().ok_or(Refused::Stagger)?;
    search.record(&first.0, first.1, effort);
    search.run(effort)
}

struct Search<'a> {
    field: &'a Field,
    bins: &'a [Bin],
    /// Everything that was found and may be worth having, by rising number of joints, each cheaper than the one before.
    found: Vec<Found>,
    /// Demands that were cut already.
    known: Vec<Vec<u32>>,
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

    /// The least known cost with at most so many joints.
    fn best(&self, joints: Option<u32>) -> Option<&Found> {
        let within = |found: &&Found| joints.is_none_or(|most| found.joints <= most);
        self.found.iter().rfind(within)
    }

    fn record(&mut self, layouts: &[Layout], taken: Vec<usize>, effort: &mut Effort) {
        let chain = Chain::new(self.field, layouts, taken);
        if self.known.contains(&chain.demand) {
            return;
        }
        self.known.push(chain.demand.clone());
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
        let mut master = Master::new(self.field, self.bins.to_vec(), false);
        let mut part = effort.part(0.5);
        master.start_by_length(&mut part);
        let bound = self.look(&mut master, None, 0, &mut part);
        effort.give_back(part);
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
            if self.best(Some(joints)).is_some_and(|best| best.cost > at) {
                let mut part = effort.part(0.2);
                self.swaps(&master, Some(joints), at, &mut part);
                effort.give_back(part);
            }
            bounds.push((joints, at));
            joints += 1;
        }
        if self.best(None).is_some_and(|best| best.cost > bound) {
            self.swaps(&master, None, bound, effort);
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
        Ok(Choices { choices: choices.collect(), bounds, fewest, bound })
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
        if self.best(joints).is_some_and(|best| best.cost <= bound) {
            return bound;
        }
        master.joints = joints;
        let mut part = effort.part(0.4);
        master.solve(&mut part);
        let line = master.bound();
        effort.give_back(part);
        let least = line.at(joints.unwrap_or(0));
        if least > 2.0 * self.most_cost() as f64 + 10.0 {
            return self.most_cost();
        }
        self.lines.push(line);
        bound = self.ladder.next(least.max(0.0)).max(bound);
        let reached =
            |search: &Self, bound: i64| search.best(joints).is_some_and(|best| best.cost <= bound);
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

    /// Other layouts for one course of the best found, and for two neighbours, as long as that makes it cheaper.
    fn swaps(&mut self, master: &Master<'_>, joints: Option<u32>, bound: i64, effort: &mut Effort) {
        let mut layouts = master.layouts.clone();
        for (way, graph) in self.field.ways.iter().enumerate() {
            let (fewest, most) = graph.joints();
            for count in fewest..=most {
                let room = layouts.len() + MOST_SWAPPED;
                self.field.each(way, count, room, &mut layouts);
            }
        }
        let mut from = None;
        while let Some(best) = self.best(joints).filter(|best| best.cost > bound) {
            let state = (best.cost, best.joints);
            if from == Some(state) || effort.is_spent() {
                return;
            }
            from = Some(state);
            let first = layouts.len();
            layouts.extend(best.courses.iter().cloned());
            let chain: Vec<usize> = (first..layouts.len()).collect();
            for tried in self.neighbours(&layouts, &chain) {
                let count: usize = tried.iter().map(|at| layouts[*at].joints_mm.len()).sum();
                if joints.is_some_and(|most| count > most as usize) || effort.is_spent() {
                    continue;
                }
                self.record(&layouts, tried, effort);
                if self.best(joints).is_some_and(|best| best.cost <= bound) {
                    return;
                }
            }
        }
    }

    /// Chains that keep the stagger and differ from `chain` in one course or in two neighbours.
    fn neighbours(&self, layouts: &[Layout], chain: &[usize]) -> Vec<Vec<usize>> {
        let fits = |tried: &[usize], course: usize| {
            let beside = [course.checked_sub(1), Some(course + 1)];
            let mut beside = beside.into_iter().flatten().filter_map(|at| tried.get(at));
            beside.all(|other| self.field.are_apart(&layouts[*other], &layouts[tried[course]]))
        };
        let of = |course: usize| {
            let way = self.field.courses[course];
            (0..layouts.len()).filter(move |at| layouts[*at].way == way)
        };
        let mut found = Vec::new();
        for course in 0..chain.len() {
            for one in of(course) {
                let mut tried = chain.to_vec();
                tried[course] = one;
                if fits(&tried, course) {
                    found.push(tried.clone());
                }
                if course + 1 == chain.len() || found.len() >= MOST_NEIGHBOURS {
                    continue;
                }
                for other in of(course + 1) {
                    tried[course + 1] = other;
                    if other != chain[course + 1]
                        && fits(&tried, course)
                        && fits(&tried, course + 1)
                    {
                        found.push(tried.clone());
                    }
                }
            }
        }
        found.truncate(MOST_NEIGHBOURS);
        found
    }

    /// Mixes of stock that cost less than what is known: each is shown to be too little, or dived for.
    fn mixes(&mut self, joints: Option<u32>, mut bound: i64, effort: &mut Effort) -> i64 {
        let highest = self.best(joints).map_or_else(|| self.most_cost(), |best| best.cost);
        let Some(list) = mixes(self.field, self.bins, bound, highest, MOST_MIXES) else {
            return bound;
        };
        let mut master = Mix::master(self.field, self.bins);
        master.joints = joints;
        let mut open = !list.complete;
        let mut at = 0;
        while at < list.mixes.len() {
            let cost = list.mixes[at].cost;
            if self.best(joints).is_some_and(|best| best.cost <= cost) {
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
                if master.bound().at(joints.unwrap_or(0)) > 1e-3 {
                    continue;
                }
                open = true;
                for turn in 0..DIVES {
                    if self.best(joints).is_some_and(|best| best.cost <= cost) {
                        break;
                    }
                    self.dive(&master, turn, effort);
                }
                if self.best(joints).is_some_and(|best| best.cost <= cost) {
                    return if bound == cost { cost } else { bound };
                }
            }
        }
        if open || !list.all { bound } else { highest }
    }
}
