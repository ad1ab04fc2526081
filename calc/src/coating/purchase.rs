//! What to buy for a two-part mix: bottles of either part, kits of both, and what is left over.

use uom::si::f64::Volume;
use uom::si::volume::liter;

use super::containers::{self, Choice, Offer};
use super::mixing::{self, Mix, Parts};
use super::range::ceiling;
use crate::sorting::sort_by;
use crate::source::Source;
use crate::words::{Msg, wet as words};

/// Every number of kits is looked at, with the best bottles for what is still missing.
pub static METHOD: Source = Source::identity_of(words::SOURCE_KITS);

/// The most numbers of kits for which bottles are chosen; beyond them a choice is given as unproved.
pub const MOST_TRIED: usize = 200;
/// The most numbers of kits that are looked at where prices say which of them are worth a try.
const MOST_PRICED: usize = 5000;

/// What a container holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Part a alone.
    A,
    /// Part b alone.
    B,
    /// Both, in the ratio of the mix; its size is that of both together.
    Kit,
}

/// One container on the shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartOffer {
    /// What it holds.
    pub part: Part,
    /// How much, and its price.
    pub offer: Offer,
}

/// What to buy of both parts.
#[derive(Clone, Debug, PartialEq)]
pub struct Purchase {
    /// How many of each offer, in the order of the offers.
    pub counts: Vec<u32>,
    /// Cost of all; none where one of them has no price.
    pub cost: Option<f64>,
    /// Part a left over.
    pub left_over_a: Volume,
    /// Part b left over.
    pub left_over_b: Volume,
    /// Whether no other choice can be better.
    pub proved: bool,
}

/// Why nothing can be chosen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// Nothing is offered that holds this part.
    NothingHolds(Part),
    /// The ratio is faulty.
    Mix(mixing::Fault),
    /// A container is faulty.
    Containers(containers::Fault),
}

/// The cheapest kits and bottles that hold both parts; among equally cheap ones those that leave
/// least over, then the fewest. Where one offer has no price: those that leave least over, then
/// the fewest. Source: [`METHOD`].
///
/// # Errors
/// As [`mixing::parts`] and [`containers::choose`]; and where a part is in no container offered.
pub fn choose(mix: &Mix, whole: Volume, offers: &[PartOffer]) -> Result<Purchase, Fault> {
    let needed = mixing::parts(mix, whole).map_err(Fault::Mix)?;
    let share_a = mixing::volume_share_of_a(mix).map_err(Fault::Mix)?;
    let bottles = |part| shelf(offers, part);
    let (a, b, kits) = (bottles(Part::A), bottles(Part::B), bottles(Part::Kit));
    for (part, own) in [(Part::A, &a), (Part::B, &b)] {
        if own.is_empty() && kits.is_empty() {
            return Err(Fault::NothingHolds(part));
        }
    }
    let everything: Vec<Offer> = offers.iter().map(|offer| offer.offer).collect();
    containers::check(&everything).map_err(Fault::Containers)?;
    let priced = offers.iter().all(|offer| offer.offer.price.is_some());

    let (kit_counts, mut proved) =
        kit_numbers(whole, &kits, if priced { MOST_PRICED } else { MOST_TRIED });
    let held = |counts: &[u32]| {
        let each = kits.iter().zip(counts);
        Volume::new::<liter>(
            each.map(|((_, kit), n)| f64::from(*n) * kit.size.get::<liter>()).sum(),
        )
    };
    // The numbers of kits that may cost least first: what cannot be less than the best is left out.
    let mut tries: Vec<(f64, Vec<u32>)> = kit_counts
        .into_iter()
        .map(|counts| {
            let in_kits = held(&counts).get::<liter>();
            let parts = [(&a, needed.a, share_a), (&b, needed.b, 1.0 - share_a)];
            let bottles = parts.iter().map(|(own, need, share)| {
                let need = need.get::<liter>();
                // Short by no more than this is short of nothing.
                least_cost(own, need * (1.0 - 2e-9) - in_kits * share)
            });
            let kits = kits.iter().zip(&counts).map(|((_, kit), n)| price(kit) * f64::from(*n));
            (kits.chain(bottles).sum(), counts)
        })
        .collect();
    sort_by(&mut tries, |one, other| one.0.total_cmp(&other.0));
    let mut best: Option<(Rank, Purchase)> = None;
    let mut surely = true;
    let step_limit = containers::STEP_LIMIT / tries.len().clamp(1, MOST_TRIED) as u32;
    for (tried, (least, counts)) in tries.into_iter().enumerate() {
        let is_dearer = |(known, _): &(Rank, Purchase)| least > known.cost * (1.0 + 1e-9);
        if priced && best.as_ref().is_some_and(is_dearer) || least == f64::INFINITY {
            break;
        }
        if tried == MOST_TRIED {
            proved = false;
            break;
        }
        let in_kits = held(&counts);
        let Some((mut purchase, rank)) =
            beside_kits(&needed, in_kits, share_a, [&a, &b], offers.len(), step_limit)?
        else {
            continue;
        };
        for ((index, _), count) in kits.iter().zip(&counts) {
            purchase.counts[*index] = *count;
        }
        let bought = purchase.counts.iter().zip(offers).filter(|(count, _)| **count > 0);
        purchase.cost = bought.map(|(n, o)| o.offer.price.map(|price| f64::from(*n) * price)).sum();
        surely = surely && purchase.proved;
        let number = purchase.counts.iter().map(|count| f64::from(*count)).sum();
        let cost = if priced { purchase.cost.unwrap_or(0.0) } else { 0.0 };
        let rank = Rank { cost, number, ..rank };
        if best.as_ref().is_none_or(|(least, _)| rank.beats(least)) {
            best = Some((rank, purchase));
        }
    }
    // With kits on the shelf, kits alone are among the choices; without, there are bottles of both.
    let best = best.map(|(_, purchase)| Purchase { proved: proved && surely, ..purchase });
    best.ok_or(Fault::NothingHolds(if a.is_empty() { Part::A } else { Part::B }))
}

impl From<Fault> for Msg {
    fn from(fault: Fault) -> Self {
        match fault {
            Fault::NothingHolds(part) => {
                let part = if part == Part::A { "A" } else { "B" };
                words::NoContainerOf { part }.into()
            }
            Fault::Mix(fault) => fault.into(),
            Fault::Containers(fault) => fault.into(),
        }
    }
}

#[derive(Clone, Copy)]
struct Rank {
    cost: f64,
    left_over: f64,
    number: f64,
    slack: f64,
}

impl Rank {
    fn beats(&self, other: &Self) -> bool {
        if (self.cost - other.cost).abs() > 1e-9 * self.cost.max(other.cost) {
            return self.cost < other.cost;
        }
        if (self.left_over - other.left_over).abs() > self.slack {
            return self.left_over < other.left_over;
        }
        self.number < other.number - 0.5
    }
}

/// Its price; nothing where it has none.
fn price(offer: &Offer) -> f64 {
    offer.price.unwrap_or(0.0)
}

/// No bottles that hold so many litres cost less: all of it at the best price by volume. Infinite
/// where there are no bottles.
fn least_cost(bottles: &[(usize, Offer)], litres: f64) -> f64 {
    if litres <= 0.0 {
        return 0.0;
    }
    let by_litre = bottles.iter().map(|(_, offer)| price(offer) / offer.size.get::<liter>());
    by_litre.fold(f64::INFINITY, f64::min) * litres
}

fn shelf(offers: &[PartOffer], part: Part) -> Vec<(usize, Offer)> {
    let own = offers.iter().enumerate().filter(|(_, offer)| offer.part == part);
    own.map(|(index, offer)| (index, offer.offer)).collect()
}

/// Every number of each kit that does not cover the whole more than once over; and whether these
/// are all.
fn kit_numbers(whole: Volume, kits: &[(usize, Offer)], most_tried: usize) -> (Vec<Vec<u32>>, bool) {
    let mut numbers = vec![vec![0; kits.len()]];
    let mut complete = true;
    for place in 0..kits.len() {
        let allowed = (most_tried / numbers.len()).max(1) as u32;
        let mut grown = Vec::new();
        for counts in &numbers {
            let held: Volume =
                kits.iter().zip(counts).map(|((_, kit), n)| kit.size * f64::from(*n)).sum();
            let missing = (whole - held).max(Volume::new::<liter>(0.0));
            let most = ceiling((missing / kits[place].1.size).value) as u32;
            // Where not all can be tried: the highest numbers, which need few bottles or none.
            let least = most.saturating_sub(allowed - 1);
            complete = complete && least == 0;
            for count in least..=most {
                let mut next = counts.clone();
                next[place] = count;
                grown.push(next);
            }
        }
        numbers = grown;
    }
    (numbers, complete)
}

/// The best bottles beside what the kits hold; nothing where a part is missing and no bottle
/// holds it.
fn beside_kits(
    needed: &Parts,
    in_kits: Volume,
    share_a: f64,
    [a, b]: [&[(usize, Offer)]; 2],
    offers: usize,
    step_limit: u32,
) -> Result<Option<(Purchase, Rank)>, Fault> {
    let none = Volume::new::<liter>(0.0);
    let mut counts = vec![0; offers];
    let mut proved = true;
    let mut left_over = [none; 2];
    for (side, (need, held, own)) in
        [(needed.a, in_kits * share_a, a), (needed.b, in_kits * (1.0 - share_a), b)]
            .into_iter()
            .enumerate()
    {
        let missing = if held >= need * (1.0 - 1e-9) { none } else { need - held };
        if missing > none {
            if own.is_empty() {
                return Ok(None);
            }
            let shelf: Vec<Offer> = own.iter().map(|(_, offer)| *offer).collect();
            let Choice { counts: of_own, total, proved: sure, .. } =
                containers::choose_within(missing, &shelf, step_limit)
                    .map_err(Fault::Containers)?;
            for ((index, _), count) in own.iter().zip(of_own) {
                counts[*index] = count;
            }
            proved = proved && sure;
            left_over[side] = (held + total - need).max(none);
        } else {
            left_over[side] = (held - need).max(none);
        }
    }
    let [left_over_a, left_over_b] = left_over;
    let rank = Rank {
        cost: 0.0,
        left_over: (left_over_a + left_over_b).get::<liter>(),
        number: 0.0,
        slack: 1e-6 * (needed.a + needed.b).get::<liter>(),
    };
    Ok(Some((Purchase { counts, cost: None, left_over_a, left_over_b, proved }, rank)))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::f64::MassDensity;
    use uom::si::mass_density::kilogram_per_cubic_meter;

    use super::*;
    use crate::coating::mixing::By;

    const TWO_TO_ONE: Mix =
        Mix { by: By::Volume, a: 2.0, b: 1.0, density_a: None, density_b: None };

    fn on_shelf(list: &[(Part, f64, Option<f64>)]) -> Vec<PartOffer> {
        let offer = |size, price| Offer { size: Volume::new::<liter>(size), price };
        list.iter()
            .map(|&(part, size, price)| PartOffer { part, offer: offer(size, price) })
            .collect()
    }

    fn pick(whole: f64, list: &[(Part, f64, Option<f64>)]) -> Result<Purchase, Fault> {
        choose(&TWO_TO_ONE, Volume::new::<liter>(whole), &on_shelf(list))
    }

    #[test]
    fn bottles_of_both() {
        let got = pick(3.0, &[(Part::A, 1.0, Some(30.0)), (Part::B, 0.5, Some(20.0))]).unwrap();
        assert_eq!((got.counts.as_slice(), got.cost), (&[2, 2][..], Some(100.0)));
        assert_eq!((got.left_over_a.get::<liter>(), got.proved), (0.0, true));
    }

    #[test]
    fn kits_with_one_bottle_beside_them() {
        // Two kits would cost 160, bottles alone 150; one kit and a bottle of each 130.
        let list =
            [(Part::Kit, 1.5, Some(80.0)), (Part::A, 0.5, Some(30.0)), (Part::B, 0.25, Some(20.0))];
        let got = pick(2.0, &list).unwrap();
        assert_eq!((got.counts.as_slice(), got.cost), (&[1, 1, 1][..], Some(130.0)));
        assert!((got.left_over_a + got.left_over_b).get::<liter>() > 0.0);
    }

    /// The least costs were found by a program of their own that tries every combination.
    #[test]
    fn many_small_kits_beside_large_ones() {
        let list = [
            (Part::Kit, 0.2, Some(11.31)),
            (Part::Kit, 0.75, Some(31.71)),
            (Part::A, 1.5, Some(50.5)),
            (Part::B, 0.2, Some(8.27)),
            (Part::B, 0.5, Some(15.48)),
        ];
        let mix = Mix {
            by: By::Mass,
            density_a: Some(MassDensity::new::<kilogram_per_cubic_meter>(1020.0)),
            density_b: Some(MassDensity::new::<kilogram_per_cubic_meter>(1210.0)),
            ..TWO_TO_ONE
        };
        let whole = Volume::new::<liter>(13.209_722_255_912_677);
        let got = choose(&mix, whole, &on_shelf(&list)).unwrap();
        assert!((got.cost.unwrap() - 451.34).abs() < 1e-9 && got.proved, "{got:?}");
        let list = [
            (Part::Kit, 1.0, Some(40.56)),
            (Part::Kit, 0.5, Some(21.86)),
            (Part::A, 1.0, Some(47.93)),
            (Part::A, 0.5, Some(16.9)),
            (Part::B, 0.5, Some(16.59)),
        ];
        let got = pick(12.256_631_275_137_456, &list).unwrap();
        assert!((got.cost.unwrap() - 424.98).abs() < 1e-9 && got.proved, "{got:?}");
    }

    #[test]
    fn no_price_no_cost_and_least_left_over() {
        let got = pick(3.0, &[(Part::Kit, 1.0, None), (Part::Kit, 5.0, Some(1.0))]).unwrap();
        assert_eq!((got.counts.as_slice(), got.cost), (&[3, 0][..], None));
    }

    #[test]
    fn a_part_that_nothing_holds() {
        assert_eq!(pick(1.0, &[(Part::A, 1.0, None)]), Err(Fault::NothingHolds(Part::B)));
        assert_eq!(pick(1.0, &[]), Err(Fault::NothingHolds(Part::A)));
        // A kit and no bottle of b: kits alone.
        assert_eq!(
            pick(2.0, &[(Part::Kit, 1.5, None), (Part::A, 1.0, None)]).unwrap().counts,
            [2, 0]
        );
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn holds_both_parts_and_costs_no_more_than_kits_or_bottles_alone(
            whole in 0.05..8.0,
            kit in 0.2..3.0,
            a in 0.2..2.0,
            b in 0.1..1.0,
            prices in prop::array::uniform3(1.0..100.0),
        ) {
            let list = [(Part::Kit, kit, Some(prices[0])), (Part::A, a, Some(prices[1])), (Part::B, b, Some(prices[2]))];
            let got = pick(whole, &list).unwrap();
            let n = |place: usize| f64::from(got.counts[place]);
            let held_a = n(0) * kit * 2.0 / 3.0 + n(1) * a;
            let held_b = n(0) * kit / 3.0 + n(2) * b;
            prop_assert!((held_a - whole * 2.0 / 3.0 - got.left_over_a.get::<liter>()).abs() < 1e-6 * whole);
            prop_assert!((held_b - whole / 3.0 - got.left_over_b.get::<liter>()).abs() < 1e-6 * whole);
            for only in [&list[..1], &list[1..]] {
                prop_assert!(got.cost.unwrap() <= pick(whole, only).unwrap().cost.unwrap() + 1e-9);
            }
            // Trying everything.
            let mut least = f64::INFINITY;
            for kits in 0..60 {
                for bottles in 0..60 {
                    if f64::from(kits) * kit / 1.5 + f64::from(bottles) * a >= whole / 1.5 * (1.0 - 1e-9) {
                        let missing = whole / 3.0 - f64::from(kits) * kit / 3.0;
                        let more = ceiling(missing.max(0.0) / b);
                        least = least.min(f64::from(kits) * prices[0] + f64::from(bottles) * prices[1] + more * prices[2]);
                        break;
                    }
                }
            }
            prop_assert!((got.cost.unwrap() - least).abs() < 1e-6, "{:?} {}", got, least);
        }

        #[test]
        fn no_number_breaks_it(
            whole in any::<f64>(),
            size in any::<f64>(),
            other in 0.01..10.0,
            price in any::<f64>(),
        ) {
            for list in [
                [(Part::Kit, size, Some(price)), (Part::A, other, None), (Part::B, 1.0, None)],
                [(Part::Kit, 0.01, None), (Part::Kit, other, None), (Part::B, 1.0, Some(price))],
            ] {
                for whole in [whole, 123.4] {
                    if let Ok(got) = pick(whole, &list) {
                        prop_assert!((got.left_over_a + got.left_over_b).value.is_finite());
                    }
                }
            }
        }
    }
}
