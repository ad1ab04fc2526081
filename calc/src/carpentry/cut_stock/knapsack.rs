//! Bounded knapsacks of the cut planner: the most valuable cut of one bin, and every cut above a value.
//!
//! Lists of undominated states (Nemhauser and Ullmann, "Discrete Dynamic Programming and Capital Allocation", 1969),
//! thinned by the bound of the fractional knapsack (Dantzig, "Discrete-Variable Extremum Problems", 1957).

use super::model::Effort;
use crate::sorting::{sort, sort_by};

/// A kind of piece as the knapsack sees it.
#[derive(Clone, Copy, Debug)]
pub(in crate::carpentry) struct Item {
    pub kind: usize,
    pub weight: i64,
    pub value: f64,
    pub count: u32,
}

/// Items by falling value per weight, with sums for the bound.
#[derive(Debug)]
pub(in crate::carpentry) struct Knapsack {
    items: Vec<Item>,
    /// Weight and value of all items before each.
    sums: Vec<(i64, f64)>,
}

/// The best cut found; `exact` is false when effort ran out first.
#[derive(Debug)]
pub(in crate::carpentry) struct Best {
    pub value: f64,
    pub counts: Vec<(usize, u32)>,
    pub exact: bool,
}

#[derive(Clone, Copy)]
struct State {
    weight: i64,
    value: f64,
    parent: u32,
    kind: u32,
    count: u32,
}

const ROOT: u32 = u32::MAX;
/// A table of more cells is not worth it.
const MOST_CELLS: usize = 1_500_000;
const SLACK: f64 = 1e-10;

impl Knapsack {
    pub(in crate::carpentry) fn new(mut items: Vec<Item>) -> Self {
        items.retain(|item| item.count > 0 && item.weight > 0);
        sort_by(&mut items, |a, b| {
            let (x, y) = (a.value / a.weight as f64, b.value / b.weight as f64);
            y.total_cmp(&x).then(b.weight.cmp(&a.weight)).then(a.kind.cmp(&b.kind))
        });
        let mut sums = Vec::with_capacity(items.len() + 1);
        let mut sum = (0i64, 0.0);
        sums.push(sum);
        for item in &items {
            sum.0 += item.weight * i64::from(item.count);
            sum.1 += item.value * f64::from(item.count);
            sums.push(sum);
        }
        Self { items, sums }
    }

    /// Most value that items from `first` on can add in `room`, parts of an item allowed.
    pub(in crate::carpentry) fn bound(&self, first: usize, room: i64) -> f64 {
        let (weight, value) = self.sums[first];
        let end = self.sums[first..].partition_point(|sum| sum.0 - weight <= room) + first - 1;
        let whole = self.sums[end].1 - value;
        match self.items.get(end) {
            Some(item) => {
                let left = room - (self.sums[end].0 - weight);
                whole + item.value * (left as f64 / item.weight as f64)
            }
            None => whole,
        }
    }

    /// The cut of most value above `least`, if there is one.
    pub(in crate::carpentry) fn best(
        &self,
        room: i64,
        least: f64,
        effort: &mut Effort,
    ) -> Option<Best> {
        let mut floor = least;
        let mut found: Option<(f64, u32)> = None;
        let mut arena: Vec<State> = Vec::new();
        let mut states = vec![State { weight: 0, value: 0.0, parent: ROOT, kind: 0, count: 0 }];
        let mut ids = vec![ROOT];
        let mut exact = true;
        // The greedy cut is there before any state is: it lifts the floor.
        let greedy = self.greedy(room);
        let mut greedy_stands = greedy.value > floor + SLACK;
        if greedy_stands {
            floor = greedy.value;
        }
        'items: for (index, item) in self.items.iter().enumerate() {
            if item.value <= 0.0 || states.is_empty() {
                break;
            }
            let fitting = u32::try_from(room / item.weight).unwrap_or(u32::MAX);
            let mut left = item.count.min(fitting);
            let mut lot = 1;
            while left > 0 {
                let copies = lot.min(left);
                left -= copies;
                lot *= 2;
                let last = left == 0;
                let next = if last { index + 1 } else { index };
                if !effort.spend(8 * states.len()) {
                    exact = false;
                    break 'items;
                }
                let weight = item.weight * i64::from(copies);
                let value = item.value * f64::from(copies);
                let mut merged = Vec::with_capacity(states.len() * 2);
                let mut merged_ids = Vec::with_capacity(states.len() * 2);
                let mut top = f64::NEG_INFINITY;
                let (mut old, mut new) = (0, 0);
                while old < states.len() || new < states.len() {
                    let fits = new < states.len() && states[new].weight + weight <= room;
                    if !fits && new < states.len() {
                        new = states.len();
                    }
                    let take_old = match (states.get(old), states.get(new)) {
                        (Some(o), Some(n)) => o.weight <= n.weight + weight,
                        (Some(_), None) => true,
                        (None, Some(_)) => false,
                        (None, None) => break,
                    };
                    let (state, id) = if take_old {
                        old += 1;
                        (states[old - 1], Some(ids[old - 1]))
                    } else {
                        let from = states[new];
                        let state = State {
                            weight: from.weight + weight,
                            value: from.value + value,
                            parent: ids[new],
                            kind: item.kind as u32,
                            count: copies,
                        };
                        new += 1;
                        (state, None)
                    };
                    if state.value <= top + SLACK {
                        continue;
                    }
                    let hope = state.value + self.bound(next, room - state.weight);
                    if hope <= floor + SLACK {
                        continue;
                    }
                    top = state.value;
                    let id = id.unwrap_or_else(|| {
                        arena.push(state);
                        (arena.len() - 1) as u32
                    });
                    if state.value > floor + SLACK {
                        floor = state.value;
                        found = Some((state.value, id));
                        greedy_stands = false;
                    }
                    merged.push(state);
                    merged_ids.push(id);
                }
                states = merged;
                ids = merged_ids;
            }
        }
        if greedy_stands {
            return Some(Best { exact, ..greedy });
        }
        let (value, mut at) = found?;
        let mut counts: Vec<(usize, u32)> = Vec::new();
        while at != ROOT {
            let state = arena[at as usize];
            match counts.last_mut() {
                Some(last) if last.0 == state.kind as usize => last.1 += state.count,
                _ => counts.push((state.kind as usize, state.count)),
            }
            at = state.parent;
        }
        sort(&mut counts);
        Some(Best { value, counts, exact })
    }

    /// The cut of most value above `least` over every multiple of the weights' common divisor; `None` in the outer option where these are
    /// too many to be worth it.
    pub(in crate::carpentry) fn best_on_grid(
        &self,
        room: i64,
        least: f64,
        effort: &mut Effort,
    ) -> Option<Option<Best>> {
        let items = || self.items.iter().filter(|item| item.value > 0.0 && item.weight <= room);
        let step = items().fold(0, |step, item| greatest_common_divisor(step, item.weight));
        let cells = usize::try_from(room.checked_div(step)?).ok()?;
        let mut lots: Vec<(usize, f64, usize, u32)> = Vec::new();
        for item in items() {
            let weight = usize::try_from(item.weight / step).ok()?;
            let mut left = item.count.min((cells / weight) as u32);
            let mut lot = 1;
            while left > 0 {
                let copies = lot.min(left);
                left -= copies;
                lot *= 2;
                lots.push((
                    weight * copies as usize,
                    item.value * f64::from(copies),
                    item.kind,
                    copies,
                ));
            }
        }
        let work = lots.len().checked_mul(cells + 1)?;
        if work > MOST_CELLS || !effort.spend(work) {
            return None;
        }
        let mut values = vec![0.0; cells + 1];
        let mut taken = vec![false; work];
        for ((weight, value, ..), taken) in lots.iter().zip(taken.chunks_exact_mut(cells + 1)) {
            for cell in (*weight..=cells).rev() {
                let with = values[cell - weight] + value;
                if with > values[cell] + SLACK {
                    values[cell] = with;
                    taken[cell] = true;
                }
            }
        }
        if values[cells] <= least + SLACK {
            return Some(None);
        }
        let mut best = Best { value: values[cells], counts: Vec::new(), exact: true };
        let mut cell = cells;
        for ((weight, _, kind, copies), taken) in
            lots.iter().zip(taken.chunks_exact(cells + 1)).rev()
        {
            if taken[cell] {
                cell -= weight;
                match best.counts.last_mut() {
                    Some(last) if last.0 == *kind => last.1 += copies,
                    _ => best.counts.push((*kind, *copies)),
                }
            }
        }
        sort(&mut best.counts);
        Some(Some(best))
    }

    fn greedy(&self, room: i64) -> Best {
        let mut best = Best { value: 0.0, counts: Vec::new(), exact: true };
        let mut left = room;
        for item in self.items.iter().filter(|item| item.value > 0.0) {
            let count = item.count.min(u32::try_from(left / item.weight).unwrap_or(u32::MAX));
            if count > 0 {
                left -= item.weight * i64::from(count);
                best.value += item.value * f64::from(count);
                best.counts.push((item.kind, count));
            }
        }
        sort(&mut best.counts);
        best
    }

    /// Every cut that no further piece fits into and that is worth at least `least`; false when there are more than
    /// `most` or effort ran out.
    pub(in crate::carpentry) fn each_above(
        &self,
        room: i64,
        least: f64,
        most: usize,
        effort: &mut Effort,
        cuts: &mut Vec<Vec<(usize, u32)>>,
    ) -> bool {
        let mut path = Vec::new();
        self.walk(0, room, least, i64::MAX, most, effort, &mut path, cuts)
    }

    /// `smallest` is the lightest item of which a piece was left out on the way.
    #[expect(clippy::too_many_arguments, reason = "one recursion, its state spelled out")]
    fn walk(
        &self,
        index: usize,
        room: i64,
        least: f64,
        smallest: i64,
        most: usize,
        effort: &mut Effort,
        path: &mut Vec<(usize, u32)>,
        cuts: &mut Vec<Vec<(usize, u32)>>,
    ) -> bool {
        if !effort.spend(12) {
            return false;
        }
        if self.bound(index, room) < least {
            return true;
        }
        let Some(item) = self.items.get(index) else {
            if room >= smallest || path.is_empty() {
                return true;
            }
            if cuts.len() >= most {
                return false;
            }
            let mut counts = path.clone();
            sort(&mut counts);
            cuts.push(counts);
            return true;
        };
        let fitting = u32::try_from(room / item.weight).unwrap_or(u32::MAX);
        for count in (0..=item.count.min(fitting)).rev() {
            let smallest = if count < item.count { smallest.min(item.weight) } else { smallest };
            let weight = item.weight * i64::from(count);
            let value = item.value * f64::from(count);
            if count > 0 {
                path.push((item.kind, count));
            }
            let whole = self.walk(
                index + 1,
                room - weight,
                least - value,
                smallest,
                most,
                effort,
                path,
                cuts,
            );
            if count > 0 {
                path.pop();
            }
            if !whole {
                return false;
            }
            // Fewer pieces of this kind leave only less valuable ones for the room.
            if self.bound(index + 1, room - weight + item.weight) + value - item.value < least
                && count > 0
            {
                break;
            }
        }
        true
    }
}

/// Euclid's.
pub(in crate::carpentry) fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}
