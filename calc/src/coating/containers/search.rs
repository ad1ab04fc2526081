//! The branch and bound behind the choice of containers.
//!
//! Choosing how many of each size to buy so that they cover a need is the unbounded covering
//! knapsack. It is solved exactly by branch and bound. Two facts keep the tree small, and neither
//! cuts off a best choice:
//! - Each litre costs at least the best price per litre, so what a partial choice has spent above
//!   that price (its excess), plus the best price of the need, is a bound on its cost. Sizes that
//!   are multiples of one measure give totals that are multiples of it too, which lifts the
//!   bound.
//! - If m of size i hold exactly what n of a larger size j hold (or of any size that is cheaper
//!   by the litre), and j costs no more by the litre, then no best choice has m of i: the
//!   exchange would be cheaper, or as cheap with fewer containers.
//!
//! The search counts its steps and gives up proving, not answering, at its step limit.

use super::super::range::ceiling;
use crate::sorting::sort_by;

/// One size on the shelf, in litres.
#[derive(Clone, Copy)]
pub struct Size {
    /// Its place among the offers.
    pub index: usize,
    /// What it holds.
    pub size: f64,
    /// What it costs.
    pub price: f64,
}

impl Size {
    fn rate(&self) -> f64 {
        self.price / self.size
    }

    /// Whether a litre in `other` costs less, or as much in a larger container.
    fn yields_to(&self, other: &Self) -> bool {
        let slack = 1e-12 * self.rate().max(other.rate());
        if (self.rate() - other.rate()).abs() <= slack {
            other.size > self.size * (1.0 + 1e-12)
        } else {
            other.rate() < self.rate()
        }
    }
}

/// Cost, total and number of containers of a whole choice.
struct Best {
    cost: f64,
    total: f64,
    number: f64,
    counts: Vec<u32>,
}

/// A search under way.
pub struct Search {
    need: f64,
    /// In the order they are tried: the dearest by the litre first, the one that fills up last.
    sizes: Vec<Size>,
    /// The most of each that a best choice can have.
    most: Vec<f64>,
    /// The largest size from each place on.
    largest: Vec<f64>,
    /// The best price by the litre.
    rate: f64,
    /// The least total that covers the need.
    least_total: f64,
    counts: Vec<u32>,
    best: Option<Best>,
    steps: u32,
    step_limit: u32,
}

impl Search {
    /// The best number of each of `offers` places for `need` litres, and whether no other can be
    /// better.
    pub fn run(
        need: f64,
        mut sizes: Vec<Size>,
        offers: usize,
        step_limit: u32,
    ) -> (Vec<u32>, bool) {
        let mut result = vec![0; offers];
        // The best by the litre comes last, the largest of equals; equal offers keep their first.
        sort_by(&mut sizes, |a, b| {
            b.rate()
                .total_cmp(&a.rate())
                .then(a.size.total_cmp(&b.size))
                .then(b.index.cmp(&a.index))
        });
        sizes.dedup_by(|next, kept| {
            let same = next.size == kept.size && next.price == kept.price;
            if same {
                *kept = *next;
            }
            same
        });
        // Rounding must not put a smaller size of an equal price by the litre behind a larger one.
        for _ in 0..sizes.len() {
            for at in 1..sizes.len() {
                if sizes[at].yields_to(&sizes[at - 1]) {
                    sizes.swap(at, at - 1);
                }
            }
        }
        let Some(filler) = sizes.last() else { return (result, true) };
        let measure = common_measure(&sizes);
        let least_total = match measure {
            Some(measure) => (ceiling(need / measure) * measure).max(need),
            None => need,
        };
        let mut largest = vec![0.0_f64; sizes.len()];
        let mut so_far = 0.0_f64;
        for (place, size) in sizes.iter().enumerate().rev() {
            so_far = so_far.max(size.size);
            largest[place] = so_far;
        }
        let most = sizes.iter().map(|size| most_of(size, &sizes, need)).collect();
        let rate = filler.rate();
        let counts = vec![0; sizes.len()];
        let mut search = Self {
            need,
            sizes,
            most,
            largest,
            rate,
            least_total,
            counts,
            best: None,
            steps: 0,
            step_limit,
        };
        search.branch(0, 0.0, 0.0, 0.0);
        if let Some(best) = &search.best {
            for (size, count) in search.sizes.iter().zip(&best.counts) {
                result[size.index] = *count;
            }
        }
        (result, search.steps < step_limit)
    }

    /// Tries every number of the size at `place` that could still be part of a best choice.
    fn branch(&mut self, place: usize, cost: f64, total: f64, number: f64) {
        let Some(size) = self.sizes.get(place).copied() else { return };
        let missing = self.need * (1.0 - 1e-9) - total;
        let fill = (missing.max(0.0) / size.size).ceil();
        if place + 1 == self.sizes.len() || missing <= 0.0 {
            self.counts[place] = fill as u32;
            self.offer_best(cost + fill * size.price, total + fill * size.size, number + fill);
            self.counts[place] = 0;
            return;
        }
        let mut count = 0.0;
        while count <= self.most[place].min(fill) {
            self.steps += 1;
            if self.steps >= self.step_limit {
                break;
            }
            let cost = cost + count * size.price;
            let total = total + count * size.size;
            if self.is_beaten(place + 1, cost, total, number + count) {
                break;
            }
            self.counts[place] = count as u32;
            self.branch(place + 1, cost, total, number + count);
            count += 1.0;
        }
        self.counts[place] = 0;
    }

    /// Whether nothing that starts like this, or with more of the size just tried, can be better
    /// than the best.
    fn is_beaten(&self, place: usize, cost: f64, total: f64, number: f64) -> bool {
        let Some(best) = &self.best else { return false };
        let excess = cost - self.rate * total;
        let bound = (excess + self.rate * self.least_total.max(total)).max(0.0);
        let slack = 1e-9 * best.cost.max(f64::MIN_POSITIVE);
        if bound > best.cost + slack {
            return true;
        }
        // As cheap at best: it would have to leave less over, or do with fewer.
        let missing = (self.need * (1.0 - 1e-9) - total).max(0.0);
        let fewest = number + (missing / self.largest[place]).ceil();
        bound >= best.cost - slack
            && self.least_total.max(total) >= best.total - self.total_slack()
            && fewest >= best.number - 0.5
    }

    fn offer_best(&mut self, cost: f64, total: f64, number: f64) {
        let better = match &self.best {
            None => true,
            Some(best) => {
                let slack = 1e-9 * best.cost.max(cost);
                if (cost - best.cost).abs() > slack {
                    cost < best.cost
                } else if (total - best.total).abs() > self.total_slack() {
                    total < best.total
                } else {
                    number < best.number - 0.5
                }
            }
        };
        if better {
            self.best = Some(Best { cost, total, number, counts: self.counts.clone() });
        }
    }

    fn total_slack(&self) -> f64 {
        1e-6 * self.need
    }
}

/// The most of a size that a best choice has: never more than covers the need alone, and fewer
/// than can be exchanged.
fn most_of(size: &Size, sizes: &[Size], need: f64) -> f64 {
    let alone = (need / size.size).ceil();
    sizes
        .iter()
        .filter(|other| size.yields_to(other))
        .filter_map(|other| as_fraction(other.size / size.size))
        .map(|(numerator, _)| numerator - 1.0)
        .fold(alone, f64::min)
}

/// The largest volume that every size is a whole multiple of, where there is one of a practical
/// size.
fn common_measure(sizes: &[Size]) -> Option<f64> {
    let first = sizes.first()?.size;
    let mut parts = 1.0;
    for size in sizes {
        let (_, denominator) = as_fraction(size.size / first)?;
        parts = parts / greatest_common_divisor(parts, denominator) * denominator;
        if parts > 1e6 {
            return None;
        }
    }
    let multiples = |size: &Size| (size.size / first * parts).round();
    let common = sizes.iter().map(multiples).fold(0.0, greatest_common_divisor);
    Some(first / parts * common)
}

/// The fraction, of whole numbers up to 100 000, that a ratio is within rounding of: numerator,
/// denominator.
fn as_fraction(ratio: f64) -> Option<(f64, f64)> {
    let (mut before, mut now) = ((0.0, 1.0), (1.0, 0.0));
    let mut rest = ratio;
    for _ in 0..24 {
        let whole = rest.floor();
        (before, now) = (now, (whole * now.0 + before.0, whole * now.1 + before.1));
        if now.0 > 1e5 || now.1 > 1e5 {
            return None;
        }
        if (now.0 - ratio * now.1).abs() <= 1e-12 * now.0 {
            return Some(now);
        }
        rest = 1.0 / (rest - whole);
    }
    None
}

fn greatest_common_divisor(a: f64, b: f64) -> f64 {
    let (mut a, mut b) = (a, b);
    while b > 0.5 {
        (a, b) = (b, a % b);
    }
    a
}
