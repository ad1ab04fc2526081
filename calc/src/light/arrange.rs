//! All lamps of a ceiling together. Each goes to its own nearest spot; where two would come too close there, they are
//! placed one after another, in several orders, each clear of those before it.

use super::nearest::{Free, SLACK_MM};
use crate::sorting::sort_by;

/// How a lamp's place follows from that of the first of its group: mirrored about half of a side.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Mirror {
    /// The length, where it is mirrored along x.
    pub x: Option<f64>,
    /// The width, where it is mirrored along y.
    pub y: Option<f64>,
}

impl Mirror {
    pub fn of(self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.x.map_or(x, |length| length - x), self.y.map_or(y, |width| width - y))
    }
}

/// Lamps that move together.
#[derive(Clone)]
pub(super) struct Group {
    /// Where the first of them may go for all to be clear.
    pub free: Free,
    /// Where the first was to go.
    pub wanted: (f64, f64),
    /// Each lamp of the group, the first with no mirror.
    pub lamps: Vec<(usize, Mirror)>,
}

/// All lamps that are to be placed.
pub(super) struct Task {
    /// Where a lamp by itself may go.
    pub room: Free,
    /// Every lamp in one group.
    pub groups: Vec<Group>,
    /// Where each lamp was to go.
    pub wanted: Vec<(f64, f64)>,
    /// The symmetry that was asked for.
    pub mirror: Mirror,
    /// None was asked for: every arrangement counts as keeping it.
    pub any_symmetry: bool,
}

/// Places of all lamps.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Arrangement {
    /// None where no spot is left.
    pub at: Vec<Option<(f64, f64)>>,
    /// Whether each keeps the symmetry.
    pub symmetric: Vec<bool>,
}

impl Arrangement {
    /// No spot found for so many; so many out of symmetry; so far moved in all.
    fn badness(&self, wanted: &[(f64, f64)]) -> (usize, usize, f64) {
        let missing = self.at.iter().filter(|at| at.is_none()).count();
        let odd = self.symmetric.iter().filter(|symmetric| !**symmetric).count();
        let moved =
            self.at.iter().zip(wanted).filter_map(|(at, wanted)| {
                at.map(|(x, y)| libm::hypot(x - wanted.0, y - wanted.1))
            });
        (missing, odd, moved.sum())
    }
}

/// Work that the search may take: it runs at every keystroke. Counted in spots looked for, times what is in the way.
const MOST_WORK: usize = 20_000;
/// Steps of the last search, through the spots that hold a lamp from two sides.
const MOST_STEPS: usize = 1_500;
/// The most lamps that the last search is tried for.
const MOST_SEARCHED: usize = 12;

impl Task {
    /// An arrangement with every lamp clear, where one is found; otherwise the best that was.
    pub fn arranged(&self) -> Arrangement {
        let alone = self.each_for_itself();
        let crowded = self.crowded(&alone);
        if crowded.iter().all(|crowded| !crowded) {
            return alone;
        }
        let mut search = Search { best: None, work: MOST_WORK };
        search.orders(self, &crowded);
        if search.unfinished() {
            let single = self.single();
            if search.work > 0 {
                search.orders(&single, &crowded);
            }
            if search.unfinished() {
                search.packed_from_edges(&single);
            }
            if search.unfinished() && self.wanted.len() <= MOST_SEARCHED {
                search.through_held_spots(&single);
            }
        }
        search.best.map_or(alone, |(_, found)| found)
    }

    /// Every group at its nearest spot, whatever the others do.
    fn each_for_itself(&self) -> Arrangement {
        self.placed(self.groups.iter(), false)
    }

    /// Lamps that have no spot, or come too close to another.
    fn crowded(&self, found: &Arrangement) -> Vec<bool> {
        let apart = self.room.apart - SLACK_MM;
        let too_close = |one: usize, (x, y): (f64, f64)| {
            found.at.iter().enumerate().any(|(other, at)| {
                other != one && at.is_some_and(|at| libm::hypot(at.0 - x, at.1 - y) < apart)
            })
        };
        let each = found.at.iter().enumerate();
        each.map(|(lamp, at)| at.is_none_or(|at| too_close(lamp, at))).collect()
    }

    /// The same lamps with no symmetry asked for.
    fn single(&self) -> Self {
        let group = |(lamp, &wanted): (usize, &(f64, f64))| Group {
            free: self.room.clone(),
            wanted,
            lamps: vec![(lamp, Mirror::default())],
        };
        Self {
            room: self.room.clone(),
            groups: self.wanted.iter().enumerate().map(group).collect(),
            wanted: self.wanted.clone(),
            mirror: Mirror::default(),
            any_symmetry: self.any_symmetry,
        }
    }

    /// The groups one after another, clear of those before where `in_turn`. A group that finds no common spot is
    /// placed lamp by lamp.
    fn placed<'a>(&self, groups: impl Iterator<Item = &'a Group>, in_turn: bool) -> Arrangement {
        let lamps = self.wanted.len();
        let any = self.any_symmetry || self.mirror != Mirror::default();
        let mut found = Arrangement { at: vec![None; lamps], symmetric: vec![any; lamps] };
        let mut taken: Vec<(f64, f64)> = Vec::new();
        // Once a lamp by itself finds nothing, no later one does: what is free only shrinks.
        let mut full = false;
        for group in groups {
            let (x, y) = group.wanted;
            let together = if full {
                None
            } else if in_turn {
                group.free.beside(&self.with_images(&taken)).nearest(x, y)
            } else {
                group.free.nearest(x, y)
            };
            for (lamp, mirror) in &group.lamps {
                let at = match together {
                    Some(at) => Some(mirror.of(at)),
                    None => {
                        found.symmetric[*lamp] = self.any_symmetry;
                        let (x, y) = self.wanted[*lamp];
                        if full {
                            None
                        } else if in_turn {
                            let at = self.room.beside(&taken).nearest(x, y);
                            full = at.is_none();
                            at
                        } else {
                            self.room.nearest(x, y)
                        }
                    }
                };
                if in_turn {
                    taken.extend(at);
                }
                found.at[*lamp] = at;
            }
        }
        found
    }

    /// Spots and their mirror images: a group must keep clear of both, or its own images would not.
    fn with_images(&self, spots: &[(f64, f64)]) -> Vec<(f64, f64)> {
        let mut all = spots.to_vec();
        for mirror in [Mirror { y: None, ..self.mirror }, Mirror { x: None, ..self.mirror }] {
            if mirror != Mirror::default() {
                let images: Vec<_> = all.iter().map(|spot| mirror.of(*spot)).collect();
                all.extend(images);
            }
        }
        all
    }
}

/// The best arrangement so far.
struct Search {
    best: Option<((usize, usize, f64), Arrangement)>,
    work: usize,
}

impl Search {
    /// Some lamp has no spot yet.
    fn unfinished(&self) -> bool {
        self.best.as_ref().is_none_or(|((missing, ..), _)| *missing > 0)
    }

    fn keep(&mut self, task: &Task, found: Arrangement) {
        let bad = found.badness(&task.wanted);
        let better = self.best.as_ref().is_none_or(|(best, _)| {
            (bad.0, bad.1) < (best.0, best.1)
                || (bad.0, bad.1) == (best.0, best.1) && bad.2 < best.2 - SLACK_MM
        });
        if better {
            self.best = Some((bad, found));
        }
    }

    /// One order; the place of the first group that found no spot.
    fn order(&mut self, task: &Task, order: &[usize]) -> Option<usize> {
        let work = task.wanted.len() * (task.wanted.len() + 30);
        self.work = self.work.saturating_sub(work);
        let found = task.placed(order.iter().map(|at| &task.groups[*at]), true);
        let failed = order.iter().position(|at| {
            task.groups[*at].lamps.iter().any(|(lamp, _)| found.at[*lamp].is_none())
        });
        self.keep(task, found);
        failed
    }

    /// As given, backwards, the undisturbed first and last; then whichever found no spot goes first.
    fn orders(&mut self, task: &Task, crowded: &[bool]) {
        let given: Vec<usize> = (0..task.groups.len()).collect();
        let disturbed = |at: &usize| task.groups[*at].lamps.iter().any(|(lamp, _)| crowded[*lamp]);
        let (last, first): (Vec<usize>, Vec<usize>) = given.iter().partition(|at| disturbed(at));
        let backwards: Vec<usize> = given.iter().rev().copied().collect();
        let disturbed_first: Vec<usize> = last.iter().chain(&first).copied().collect();
        let mut order: Vec<usize> = first.iter().chain(&last).copied().collect();
        let mut failed = self.order(task, &order);
        for other in [given, backwards, disturbed_first] {
            if self.work == 0 {
                return;
            }
            self.order(task, &other);
        }
        let mut left = 2 * task.groups.len();
        while let (Some(at), 1..) = (failed, left.min(self.work)) {
            if !self.unfinished() {
                return;
            }
            let group = order.remove(at);
            order.insert(0, group);
            failed = self.order(task, &order);
            left -= 1;
        }
    }

    /// Packed from a corner or a side, and each lamp given one of the spots.
    fn packed_from_edges(&mut self, task: &Task) {
        let (length, width) = (task.room.area.x.1, task.room.area.y.1);
        let far = 1e5;
        for target in [
            (0.0, 0.0),
            (0.0, width),
            (length, 0.0),
            (length, width),
            (-far, 0.0),
            (far, 0.0),
            (0.0, -far),
            (0.0, far),
            (-far, width),
            (length, -far),
        ] {
            if self.work == 0 || !self.unfinished() {
                return;
            }
            let mut packed = Vec::with_capacity(task.wanted.len());
            let mut free = task.room.clone();
            for lamp in 0..task.wanted.len() {
                self.work = self.work.saturating_sub(lamp + 30);
                let Some(at) = free.nearest(target.0, target.1) else { break };
                free.lamps.push(at);
                packed.push(at);
            }
            if packed.len() == task.wanted.len() {
                self.keep(task, handed_out(&packed, &task.wanted));
            }
        }
    }

    /// Through the spots that hold a lamp from two sides, lamp by lamp and back again; given up after so many steps.
    fn through_held_spots(&mut self, task: &Task) {
        let mut steps = MOST_STEPS;
        let mut packed = Vec::new();
        if deeper(&task.room, task.wanted.len(), &mut packed, &mut steps) {
            self.keep(task, handed_out(&packed, &task.wanted));
        }
    }
}

fn deeper(free: &Free, lamps: usize, packed: &mut Vec<(f64, f64)>, steps: &mut usize) -> bool {
    if packed.len() == lamps {
        return true;
    }
    let free = free.beside(packed.last().copied().as_slice());
    *steps = steps.saturating_sub(free.lamps.len() + 1);
    for spot in free.held_spots() {
        if *steps == 0 {
            return false;
        }
        packed.push(spot);
        if deeper(&free, lamps, packed, steps) {
            return true;
        }
        packed.pop();
    }
    false
}

/// Each lamp takes one of as many spots: the closest pairs first, then swapped while that shortens the ways.
fn handed_out(spots: &[(f64, f64)], wanted: &[(f64, f64)]) -> Arrangement {
    let way = |spot: usize, lamp: usize| {
        libm::hypot(spots[spot].0 - wanted[lamp].0, spots[spot].1 - wanted[lamp].1)
    };
    let lamps = wanted.len();
    let mut pairs: Vec<(f64, usize, usize)> = (0..lamps)
        .flat_map(|lamp| (0..lamps).map(move |spot| (lamp, spot)))
        .map(|(lamp, spot)| (way(spot, lamp), lamp, spot))
        .collect();
    sort_by(&mut pairs, |a, b| a.0.total_cmp(&b.0));
    let (mut of_lamp, mut taken) = (vec![None; lamps], vec![false; lamps]);
    for (_, lamp, spot) in pairs {
        if of_lamp[lamp].is_none() && !taken[spot] {
            of_lamp[lamp] = Some(spot);
            taken[spot] = true;
        }
    }
    let mut of_lamp: Vec<usize> = of_lamp.into_iter().flatten().collect();
    for _ in 0..4 {
        for one in 0..lamps {
            for other in one + 1..lamps {
                let (a, b) = (of_lamp[one], of_lamp[other]);
                if way(b, one) + way(a, other) < way(a, one) + way(b, other) - SLACK_MM {
                    of_lamp.swap(one, other);
                }
            }
        }
    }
    Arrangement {
        at: of_lamp.into_iter().map(|spot| spots.get(spot).copied()).collect(),
        symmetric: vec![false; lamps],
    }
}
