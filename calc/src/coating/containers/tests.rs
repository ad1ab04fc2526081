//! Container choices against hand-worked ones and against trying every choice.

use proptest::prelude::*;

use super::*;
use crate::coating::range::ceiling;

const GALLON_L: f64 = 3.785_411_784;

fn offers(list: &[(f64, Option<f64>)]) -> Vec<Offer> {
    list.iter().map(|&(size, price)| Offer { size: Volume::new::<liter>(size), price }).collect()
}

fn pick(need: f64, list: &[(f64, Option<f64>)]) -> Choice {
    choose(Volume::new::<liter>(need), &offers(list)).unwrap()
}

/// Tries every choice that a container could not be taken from; the orders of preference are
/// those of [`choose`].
fn every_choice(need: f64, list: &[(f64, Option<f64>)]) -> (f64, f64, u32) {
    let priced = list.iter().all(|(_, price)| price.is_some());
    let mut counts = vec![0_u32; list.len()];
    let mut best: Option<(f64, f64, u32)> = None;
    loop {
        let bought = || counts.iter().map(|count| f64::from(*count)).zip(list);
        let total: f64 = bought().map(|(count, offer)| count * offer.0).sum();
        let covered = total >= need * (1.0 - 1e-9);
        if covered {
            let cost: f64 = bought()
                .filter(|_| priced)
                .map(|(count, offer)| count * offer.1.unwrap_or(0.0))
                .sum();
            let number = counts.iter().sum();
            let better = best.is_none_or(|(least, total_least, fewest)| {
                if (cost - least).abs() > 1e-9 * least.max(cost) {
                    cost < least
                } else if (total - total_least).abs() > 1e-6 * need {
                    total < total_least
                } else {
                    number < fewest
                }
            });
            if better {
                best = Some((cost, total, number));
            }
        }
        // The next choice: as an odometer; a place that already covers the need rolls over.
        let mut place = 0;
        loop {
            if place == counts.len() {
                return best.unwrap();
            }
            if f64::from(counts[place]) * list[place].0 < need {
                counts[place] += 1;
                break;
            }
            counts[place] = 0;
            place += 1;
        }
    }
}

fn assert_best(need: f64, list: &[(f64, Option<f64>)]) {
    let got = pick(need, list);
    let (cost, total, number) = every_choice(need, list);
    let total_got = got.total.get::<liter>();
    assert!(got.proved, "{need} l of {list:?}");
    if list.iter().all(|(_, price)| price.is_some()) {
        let cost_got = got.cost.unwrap();
        assert!(
            (cost_got - cost).abs() <= 1e-9 * cost.max(1e-12),
            "{need} l of {list:?}: {got:?}, {cost}"
        );
    }
    assert!((total_got - total).abs() <= 1.001e-6 * need, "{need} l of {list:?}: {got:?}, {total}");
    assert_eq!(got.counts.iter().sum::<u32>(), number, "{need} l of {list:?}: {got:?}, {total}");
}

#[test]
fn greedy_would_be_wrong() {
    // Largest first takes a 5 and a 1 for 6 litres; two of 3 are cheaper.
    let got = pick(6.0, &[(5.0, Some(50.0)), (3.0, Some(20.0)), (1.0, Some(11.0))]);
    assert_eq!((got.counts.as_slice(), got.cost), (&[0, 2, 0][..], Some(40.0)));
    // One large can is cheaper than four small ones that would leave nothing over.
    let got = pick(4.0, &[(1.0, Some(20.0)), (5.0, Some(60.0))]);
    assert_eq!((got.counts.as_slice(), got.left_over.get::<liter>()), (&[0, 1][..], 1.0));
}

#[test]
fn ties_leave_least_over_then_take_fewest() {
    let got = pick(4.0, &[(5.0, Some(40.0)), (2.0, Some(20.0))]);
    assert_eq!(got.counts, [0, 2], "as cheap, and nothing left over");
    let got = pick(4.0, &[(1.0, Some(10.0)), (2.0, Some(20.0)), (4.0, Some(40.0))]);
    assert_eq!(got.counts, [0, 0, 1]);
    let got = pick(4.0, &[(1.0, None), (2.0, None), (4.0, None)]);
    assert_eq!((got.counts.as_slice(), got.cost), (&[0, 0, 1][..], None));
}

#[test]
fn a_cost_needs_the_prices_of_what_is_bought() {
    let got = pick(5.0, &[(5.0, Some(30.0)), (3.0, None)]);
    assert_eq!((got.counts.as_slice(), got.cost), (&[1, 0][..], Some(30.0)));
    let got = pick(6.0, &[(5.0, Some(30.0)), (3.0, None)]);
    assert_eq!((got.counts.as_slice(), got.cost), (&[0, 2][..], None));
}

#[test]
fn a_need_that_rounding_lifted_buys_no_more() {
    let got = pick(
        3.0 * GALLON_L * (1.0 + 1e-12),
        &[(GALLON_L, Some(40.0)), (GALLON_L / 4.0, Some(12.0))],
    );
    assert_eq!((got.counts.as_slice(), got.left_over.get::<liter>()), (&[3, 0][..], 0.0));
    assert_eq!(pick(0.0, &[(1.0, None)]).counts, [0]);
}

#[test]
fn from_a_millilitre_to_ten_thousand_litres() {
    let metric = [0.25, 0.5, 0.75, 1.0, 2.5, 5.0, 10.0];
    let customary = [GALLON_L / 8.0, GALLON_L / 4.0, GALLON_L, 5.0 * GALLON_L];
    let plain: Vec<_> = metric.iter().map(|size| (*size, None)).collect();
    let by_litre: Vec<_> = metric.iter().map(|size| (*size, Some(size * 14.0))).collect();
    let gallons: Vec<_> = customary.iter().map(|size| (*size, Some(size * 9.0))).collect();
    let usual = [(0.75, Some(29.0)), (2.5, Some(79.0)), (5.0, Some(139.0)), (10.0, Some(259.0))];
    for need in [0.001, 0.3, 1.0, 7.3, 123.4, 999.9, 10_000.0] {
        for list in [&plain[..], &by_litre, &gallons, &usual] {
            let got = pick(need, list);
            assert!(
                got.proved && got.total.get::<liter>() >= need * (1.0 - 1e-9),
                "{need} {list:?}"
            );
        }
        let got = pick(need, &plain);
        let least = ceiling(need / 0.25) * 0.25;
        assert!((got.total.get::<liter>() - least).abs() < 1e-6 * need, "{need}: {got:?}");
        let got = pick(need, &by_litre);
        assert!((got.total.get::<liter>() - least).abs() < 1e-6 * need, "{need}: {got:?}");
    }
    // 10 000 l: 1000 of the largest and nothing else.
    assert_eq!(pick(10_000.0, &plain).counts, [0, 0, 0, 0, 0, 0, 1000]);
}

#[test]
fn customary_and_metric_sizes_together() {
    let mixed: Vec<_> = [1.0, 2.5, 5.0, GALLON_L / 4.0, GALLON_L].map(|size| (size, None)).to_vec();
    for need in [0.9, 4.2, 9.1, 14.4] {
        assert_best(need, &mixed);
    }
    for need in [20.3, 50.1, 199.0] {
        let got = pick(need, &mixed);
        assert!(got.proved && got.left_over.get::<liter>() < 0.01 * need, "{need}: {got:?}");
    }
}

/// Least cost, then least total, then fewest, by a table over every volume up to the need.
fn by_table(need: usize, list: &[(usize, u32)]) -> (u32, usize, u32) {
    let mut best = vec![(0, 0, 0); need + 1];
    for volume in 1..=need {
        let after = |&(size, price): &(usize, u32)| {
            let (cost, total, number) = best[volume.saturating_sub(size)];
            (cost + price, total + size, number + 1)
        };
        best[volume] = list.iter().map(after).min().unwrap();
    }
    best[need]
}

#[test]
fn refuses_what_cannot_be_meant() {
    let one = offers(&[(1.0, None)]);
    let need = |value| Volume::new::<liter>(value);
    assert_eq!(choose(need(1.0), &[]), Err(Fault::NoOffers));
    assert!(matches!(choose(need(-1.0), &one), Err(Fault::Range(_))));
    assert!(matches!(choose(need(1.0), &offers(&[(0.0, None)])), Err(Fault::Range(_))));
    assert!(matches!(choose(need(1.0), &offers(&[(1.0, Some(-3.0))])), Err(Fault::Range(_))));
}

fn shelf() -> impl Strategy<Value = Vec<(f64, Option<f64>)>> {
    let price = prop_oneof![
        1 => Just(None),
        6 => (0_u32..40).prop_map(|price| Some(f64::from(price))),
    ];
    prop::collection::vec(((1_u32..12).prop_map(|size| f64::from(size) * 0.25), price), 1..5)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn as_good_as_trying_every_choice(need in 0.05..6.0, list in shelf()) {
        assert_best(need, &list);
    }

    #[test]
    fn as_good_with_one_price_by_the_litre(
        need in 0.05..7.0,
        sizes in prop::collection::vec(0.3..3.0, 1..5),
    ) {
        let list: Vec<_> = sizes.iter().map(|size| (*size, Some(size * 7.0))).collect();
        assert_best(need, &list);
        let list: Vec<_> = sizes.iter().map(|size| (*size, None)).collect();
        assert_best(need, &list);
    }

    /// Hundreds of containers: whole numbers of 0.05 l, against a table over all volumes.
    #[test]
    fn as_good_as_a_table_for_large_needs(
        need in 1_usize..3000,
        list in prop::collection::vec((2_usize..120, 1_u32..60), 1..7),
        one_price in any::<bool>(),
    ) {
        let list: Vec<_> = list
            .into_iter()
            .map(|(size, price)| (size, if one_price { size as u32 } else { price }))
            .collect();
        let (cost, total, number) = by_table(need, &list);
        let offered: Vec<_> =
            list.iter().map(|(size, price)| (*size as f64 * 0.05, Some(f64::from(*price)))).collect();
        let got = pick(need as f64 * 0.05, &offered);
        prop_assert!(got.proved);
        prop_assert!((got.cost.unwrap() - f64::from(cost)).abs() < 1e-6);
        prop_assert!((got.total.get::<liter>() - total as f64 * 0.05).abs() < 0.025, "{:?} {}", got, total);
        prop_assert_eq!(got.counts.iter().sum::<u32>(), number);
    }

    #[test]
    fn always_covers_and_wastes_no_container(
        need in 0.001..10_000.0,
        list in prop::collection::vec((4_u32..600, prop::option::of(0.0..200.0)), 1..7),
    ) {
        let list: Vec<_> = list.iter().map(|(size, price)| (f64::from(*size) * 0.05, *price)).collect();
        let got = pick(need, &list);
        let total = got.total.get::<liter>();
        prop_assert!(total >= need * (1.0 - 1e-9));
        for (count, (size, price)) in got.counts.iter().zip(&list) {
            // Taking one away would leave the need uncovered, unless it came for nothing.
            prop_assert!(*count == 0 || price == &Some(0.0) || total - size < need);
        }
    }

    #[test]
    fn no_number_breaks_it(
        need in any::<f64>(),
        size in any::<f64>(),
        price in any::<f64>(),
        other in any::<f64>(),
    ) {
        if let Ok(got) = choose(Volume::new::<liter>(need), &offers(&[(size, Some(price)), (other, None), (1.0, Some(2.0))])) {
            prop_assert!(got.total.value.is_finite() && got.cost.is_none_or(f64::is_finite));
        }
    }
}
