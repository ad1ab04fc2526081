//! Stable sorting in few bytes: the standard library's sorts are compiled anew, some 5 KB each, for
//! every type that is sorted; here only the comparison is.

use std::cmp::Ordering;

/// Sorts in natural order; equals keep their order.
pub fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, T::cmp);
}

/// Sorts by a comparison; equals keep their order. O(n log n) comparisons.
pub fn sort_by<T>(items: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    arrange(&mut Compared { items, compare });
}

/// Sorts by a key; equals keep their order.
pub fn sort_by_key<T, K: Ord>(items: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(items, |one, other| key(one).cmp(&key(other)));
}

/// What the sort has to know of a slice.
trait Items {
    fn len(&self) -> usize;
    /// Whether the item at the second place belongs before the one at the first.
    fn is_before(&self, later: usize, earlier: usize) -> bool;
    fn swap(&mut self, one: usize, other: usize);
}

struct Compared<'a, T, F> {
    items: &'a mut [T],
    compare: F,
}

impl<T, F: Fn(&T, &T) -> Ordering> Items for Compared<'_, T, F> {
    fn len(&self) -> usize {
        self.items.len()
    }

    fn is_before(&self, later: usize, earlier: usize) -> bool {
        (self.compare)(&self.items[later], &self.items[earlier]) == Ordering::Less
    }

    fn swap(&mut self, one: usize, other: usize) {
        self.items.swap(one, other);
    }
}

/// Few items are put in place one by one; of more, the order is found first.
#[inline(never)]
fn arrange(items: &mut dyn Items) {
    let count = items.len();
    if count <= 8 {
        for end in 1..count {
            let mut at = end;
            while at > 0 && items.is_before(at, at - 1) {
                items.swap(at, at - 1);
                at -= 1;
            }
        }
        return;
    }
    let mut order = order(items, count);
    for place in 0..count {
        // What stood there at first may have been swapped away: its place then says where to.
        let mut from = order[place];
        while from < place {
            from = order[from];
        }
        items.swap(place, from);
        order[place] = from;
    }
}

/// The places of the items in order, by merging neighbouring runs of what is in order already.
fn order(items: &dyn Items, count: usize) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    let mut ends: Vec<usize> = (1..count).filter(|at| items.is_before(*at, at - 1)).collect();
    ends.push(count);
    let mut merged = Vec::with_capacity(count);
    while ends.len() > 1 {
        merged.clear();
        let mut start = 0;
        let pairs = ends.chunks(2).map(|pair| (pair[0], pair[pair.len() - 1]));
        let after: Vec<usize> = pairs
            .map(|(middle, end)| {
                let (mut left, mut right) = (start, middle);
                while left < middle || right < end {
                    let from_right =
                        left == middle || right < end && items.is_before(order[right], order[left]);
                    let from = if from_right { &mut right } else { &mut left };
                    merged.push(order[*from]);
                    *from += 1;
                }
                start = end;
                end
            })
            .collect();
        ends = after;
        std::mem::swap(&mut order, &mut merged);
    }
    order
}

#[cfg(test)]
#[allow(
    clippy::disallowed_methods,
    reason = "the standard library's sort is what is compared with"
)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn sorts_as_the_standard_library_does(keys in proptest::collection::vec(0_u8..20, 0..200)) {
            let mut sorted: Vec<(u8, usize)> = keys.iter().copied().zip(0..).collect();
            let mut expected = sorted.clone();
            expected.sort_by_key(|(key, _)| *key);
            sort_by_key(&mut sorted, |(key, _)| *key);
            prop_assert_eq!(&sorted, &expected);
            expected.sort_by_key(|(key, _)| std::cmp::Reverse(*key));
            sort_by(&mut sorted, |one, other| other.0.cmp(&one.0));
            prop_assert_eq!(sorted, expected);
            let mut plain = keys.clone();
            sort(&mut plain);
            prop_assert!(plain.is_sorted());
        }
    }

    #[test]
    fn long_runs_turned_by_one_are_sorted_too() {
        let mut items: Vec<usize> = (1..5000).chain([0]).collect();
        sort(&mut items);
        assert!(items.is_sorted());
        let mut items: Vec<usize> = [5000].into_iter().chain(0..5000).collect();
        sort(&mut items);
        assert!(items.is_sorted());
    }
}
