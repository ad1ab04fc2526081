//! Axle loads against body builder manuals.

use super::*;
use crate::testing::any_number;
use proptest::prelude::*;
use uom::si::length::inch;
use uom::si::mass::pound;

fn vehicle(wheelbase: Length) -> Vehicle {
    let axle =
        |limit| Axle { limit: Mass::new::<kilogram>(limit), weighed: Mass::new::<kilogram>(0.0) };
    Vehicle {
        wheelbase,
        front: axle(3000.0),
        rear: axle(6000.0),
        gross_limit: Mass::new::<kilogram>(8000.0),
    }
}

fn item(pounds: f64, inches: f64) -> Item {
    Item { mass: Mass::new::<pound>(pounds), from_front_axle: Length::new::<inch>(inches) }
}

fn kg(value: f64) -> Mass {
    Mass::new::<kilogram>(value)
}

// Truck maker's body builder manual, appendix B, as transcribed, wheelbase 214 in, and a trade text, wheelbase
// 220 in: lb, in behind the front axle, rear lb, front lb, half a unit of the last printed digit. The manual prints
// 62.14 / 38.86 for the first, which add up to 101: a slip for 37.86; arithmetic gives 62.150 and 37.850.
#[test]
fn body_builder_manual_examples() {
    for (wheelbase, pounds, place, rear, front, within) in [
        (214.0, 100.0, 133.0, 62.150, 37.850, 0.0005),
        (214.0, 14_500.0, 156.0, 10_570.0, 3_929.9, 0.15),
        (220.0, 6_000.0, 190.0, 5_181.8, 818.2, 0.05),
        (214.0, 400.0, 250.0, 467.3, -67.3, 0.05),
    ] {
        let found =
            loads(&vehicle(Length::new::<inch>(wheelbase)), &[item(pounds, place)]).unwrap();
        assert!((found.rear.value().get::<pound>() - rear).abs() < within, "{pounds}: {found:?}");
        assert!((found.front.value().get::<pound>() - front).abs() < within, "{pounds}: {found:?}");
        assert_eq!(found.lifts, front < 0.0);
    }
}

// Front-mounted load C ahead of the axle (truck handbook): front W (C + WB) / WB, rear -W C / WB.
#[test]
fn a_load_ahead_of_the_front_axle_relieves_the_rear() {
    let found = loads(&vehicle(Length::new::<inch>(200.0)), &[item(300.0, -40.0)]).unwrap();
    assert!((found.front.value().get::<pound>() - 360.0).abs() < 1e-9);
    assert!((found.rear.value().get::<pound>() + 60.0).abs() < 1e-9);
}

#[test]
fn weighed_axles_are_the_base_and_limits_are_told_one_by_one() {
    let mut vehicle = vehicle(Length::new::<meter>(4.0));
    vehicle.front.weighed = kg(2000.0);
    vehicle.rear.weighed = kg(3000.0);
    vehicle.rear.limit = kg(3100.0);
    let water = Item { mass: kg(140.0), from_front_axle: Length::new::<meter>(4.0) };
    let found = loads(&vehicle, &[water]).unwrap();
    assert!((found.rear_left.value().get::<kilogram>() + 40.0).abs() < 1e-9, "{found:?}");
    assert!((found.front_left.value().get::<kilogram>() - 1000.0).abs() < 1e-9);
    assert!((found.gross_left.value().get::<kilogram>() - 2860.0).abs() < 1e-9);
    assert!(!found.within_limits);
    let lighter = Item { mass: kg(100.0), ..water };
    assert!(loads(&vehicle, &[lighter]).unwrap().within_limits);
}

// m a h / WB: 3500 kg, 0.5 g, 0.9 m, 3.6 m: 437.5 kg (arithmetic).
#[test]
fn braking_moves_load_forward() {
    let metres = |m| Length::new::<meter>(m);
    let found = braking_transfer(kg(3500.0), 0.5, metres(0.9), metres(3.6)).unwrap();
    assert!((found.get::<kilogram>() - 437.5).abs() < 1e-9);
}

// 150 kg moved by 10° over 3.6 m at 3500 kg: 0.875 m above the axles (arithmetic).
#[test]
fn centre_height_by_tilt() {
    let (wheelbase, tilt) = (Length::new::<meter>(3.6), Angle::new::<degree>(10.0));
    let found = centre_height_above_axles(kg(150.0), kg(3500.0), wheelbase, tilt).unwrap();
    assert!((found.get::<meter>() - 0.875).abs() < 0.0005, "{found:?}");
}

proptest! {
    #[test]
    fn any_numbers_give_finite_loads_or_an_error(
        wheelbase in any_number(), weighed in any_number(), mass in any_number(), place in any_number(),
    ) {
        let mut vehicle = vehicle(Length::new::<meter>(wheelbase));
        vehicle.front.weighed = kg(weighed);
        let item = Item { mass: kg(mass), from_front_axle: Length::new::<meter>(place) };
        if let Ok(found) = loads(&vehicle, &[item, item]) {
            prop_assert!(found.front.value().is_finite() && found.gross_left.value().is_finite());
            prop_assert!(found.items_centre.is_none_or(|c| c.value.is_finite()));
        }
        if let Ok(found) = braking_transfer(kg(mass), weighed, Length::new::<meter>(place), Length::new::<meter>(wheelbase)) {
            prop_assert!(found.value.is_finite());
        }
    }

    #[test]
    fn both_axles_together_carry_everything(
        masses in prop::collection::vec((1.0..500.0_f64, -1.0..8.0_f64), 0..10),
    ) {
        let items: Vec<_> = masses.iter()
            .map(|&(m, x)| Item { mass: kg(m), from_front_axle: Length::new::<meter>(x) })
            .collect();
        let found = loads(&vehicle(Length::new::<meter>(4.3)), &items).unwrap();
        let total: f64 = masses.iter().map(|(m, _)| m).sum();
        prop_assert!(((found.front.value() + found.rear.value()).value - total).abs() < 1e-9 * (1.0 + total));
    }
}
