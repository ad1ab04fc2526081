//! Load on both axles by moments, and what is left below the limits.

use std::fmt;

use uom::si::angle::{degree, radian};
use uom::si::f64::{Angle, Length, Mass};
use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;

use crate::source::Source;

/// Rear = load x distance behind the front axle / wheelbase; front = load - rear.
pub const MOMENTS: Source =
    Source::transcribed("truck makers' body builder manuals", "weight distribution by moments");
/// What the limits mean.
pub const LIMITS: Source =
    Source::transcribed("49 CFR 571.3", "gross vehicle and gross axle weight rating");
/// Load that braking moves to the front axle.
pub const BRAKING: Source = Source::identity("moments about a wheel: m a h / wheelbase");

/// Height of the centre of mass from the load that a tilt moves.
pub const TILT_METHOD: Source = Source::from_memory("ISO 10392", "centre of gravity by axle lift");

/// One axle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axle {
    /// The most it may carry, on its plate; 1 to 50 000 kg.
    pub limit: Mass,
    /// Weighed before the items are added, 0 to 50 000 kg; 0 where nobody weighed it.
    pub weighed: Mass,
}

/// The vehicle with its limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vehicle {
    /// Front axle to rear axle, or to the middle of a tandem; 0.5 to 20 m.
    pub wheelbase: Length,
    /// Front axle.
    pub front: Axle,
    /// Rear axle.
    pub rear: Axle,
    /// The most the whole may weigh, on its plate; 1 to 100 000 kg.
    pub gross_limit: Mass,
}

/// Something aboard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// -20 000 to 20 000 kg; negative for what is taken out.
    pub mass: Mass,
    /// Its middle behind the front axle, -10 to 30 m; negative ahead of it, above the wheelbase behind the rear axle.
    pub from_front_axle: Length,
}

/// Loads on the axles and what is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxleLoads {
    /// On the front axle.
    pub front: Mass,
    /// On the rear axle.
    pub rear: Mass,
    /// Together.
    pub gross: Mass,
    /// Below the front limit; negative is over it.
    pub front_left: Mass,
    /// Below the rear limit; negative is over it.
    pub rear_left: Mass,
    /// Below the gross limit; negative is over it.
    pub gross_left: Mass,
    /// Middle of the items' mass behind the front axle; none where their masses cancel.
    pub items_centre: Option<Length>,
    /// All three limits are kept.
    pub within_limits: bool,
    /// An axle carries less than nothing: it would lift, and the figures below it cannot be.
    pub lifts: bool,
}

/// Why there are no loads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AxleError {
    /// The wheelbase is out of range.
    Wheelbase,
    /// An axle's limit is out of range.
    AxleLimit,
    /// An axle's weight is out of range.
    Weighed,
    /// The gross limit is out of range.
    GrossLimit,
    /// An item's mass is out of range; items count from 0.
    ItemMass(usize),
    /// An item's place is out of range; items count from 0.
    ItemPlace(usize),
    /// The deceleration, or the height of the centre of mass, is out of range.
    Braking,
    /// The tilt is out of range.
    Tilt,
}

impl fmt::Display for AxleError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Wheelbase => f.write_str("the wheelbase must be from 0.5 to 20 m"),
            Self::AxleLimit => f.write_str("an axle's limit must be from 1 to 50 000 kg; it is on the vehicle's plate"),
            Self::Weighed => f.write_str("an axle's weight must be from 0 to 50 000 kg"),
            Self::GrossLimit => {
                f.write_str("the gross limit must be from 1 to 100 000 kg; it is on the vehicle's plate")
            }
            Self::ItemMass(at) => write!(f, "item {}: the mass must be from -20 000 to 20 000 kg", at + 1),
            Self::ItemPlace(at) => write!(
                f,
                "item {}: its place must be from 10 m ahead of the front axle to 30 m behind it",
                at + 1
            ),
            Self::Braking => f.write_str(
                "the deceleration must be from 0 to 2 g, and the height of the centre of mass from 0 to 5 m",
            ),
            Self::Tilt => f.write_str("the tilt must be from 1 to 45 degrees"),
        }
    }
}

impl std::error::Error for AxleError {}

/// Loads on both axles: what was weighed, and each item by its moment.
///
/// # Errors
/// A figure of the vehicle or of an item out of range.
pub fn loads(vehicle: &Vehicle, items: &[Item]) -> Result<AxleLoads, AxleError> {
    let wheelbase_m = wheelbase_m(vehicle.wheelbase)?;
    for axle in [vehicle.front, vehicle.rear] {
        if !(1.0..=50_000.0).contains(&axle.limit.get::<kilogram>()) {
            return Err(AxleError::AxleLimit);
        }
        if !(0.0..=50_000.0).contains(&axle.weighed.get::<kilogram>()) {
            return Err(AxleError::Weighed);
        }
    }
    let gross_limit = vehicle.gross_limit.get::<kilogram>();
    if !(1.0..=100_000.0).contains(&gross_limit) {
        return Err(AxleError::GrossLimit);
    }

    let (mut mass_kg, mut moment_kg_m) = (0.0, 0.0);
    for (at, item) in items.iter().enumerate() {
        let (mass, place) = (item.mass.get::<kilogram>(), item.from_front_axle.get::<meter>());
        if !(-20_000.0..=20_000.0).contains(&mass) {
            return Err(AxleError::ItemMass(at));
        }
        if !(-10.0..=30.0).contains(&place) {
            return Err(AxleError::ItemPlace(at));
        }
        mass_kg += mass;
        moment_kg_m += mass * place;
    }
    let rear_of_items = moment_kg_m / wheelbase_m;
    let front = vehicle.front.weighed.get::<kilogram>() + mass_kg - rear_of_items;
    let rear = vehicle.rear.weighed.get::<kilogram>() + rear_of_items;
    let left = [
        vehicle.front.limit.get::<kilogram>() - front,
        vehicle.rear.limit.get::<kilogram>() - rear,
        gross_limit - front - rear,
    ];
    let kg = Mass::new::<kilogram>;
    Ok(AxleLoads {
        front: kg(front),
        rear: kg(rear),
        gross: kg(front + rear),
        front_left: kg(left[0]),
        rear_left: kg(left[1]),
        gross_left: kg(left[2]),
        items_centre: centre_mm(mass_kg, moment_kg_m).map(Length::new::<millimeter>),
        within_limits: left.iter().all(|kg| *kg >= -SLACK_KG),
        lifts: front < -SLACK_KG || rear < -SLACK_KG,
    })
}

/// Load that braking moves from the rear to the front axle, m a h / wheelbase; deceleration in g, 0 to 2.
///
/// # Errors
/// A figure out of range.
pub fn braking_transfer(
    gross: Mass,
    deceleration_g: f64,
    centre_height: Length,
    wheelbase: Length,
) -> Result<Mass, AxleError> {
    let wheelbase_m = wheelbase_m(wheelbase)?;
    let (mass, height) = (gross.get::<kilogram>(), centre_height.get::<meter>());
    if !(0.0..=100_000.0).contains(&mass) {
        return Err(AxleError::Weighed);
    }
    if !(0.0..=2.0).contains(&deceleration_g) || !(0.0..=5.0).contains(&height) {
        return Err(AxleError::Braking);
    }
    Ok(Mass::new::<kilogram>(mass * deceleration_g * height / wheelbase_m))
}

/// Height of the centre of mass above the axles, from weighing once level and once with one end raised: moved load x
/// wheelbase / (gross x tan(tilt)); tilt from 1 to 45°.
///
/// # Errors
/// A figure out of range.
pub fn centre_height_above_axles(
    moved: Mass,
    gross: Mass,
    wheelbase: Length,
    tilt: Angle,
) -> Result<Length, AxleError> {
    let wheelbase_m = wheelbase_m(wheelbase)?;
    let (moved, gross) = (moved.get::<kilogram>(), gross.get::<kilogram>());
    if !(1.0..=100_000.0).contains(&gross) || !(0.0..=gross).contains(&moved) {
        return Err(AxleError::Weighed);
    }
    if !(1.0..=45.0 + 1e-9).contains(&tilt.get::<degree>()) {
        return Err(AxleError::Tilt);
    }
    let tangent = libm::tan(tilt.get::<radian>());
    Ok(Length::new::<meter>(moved * wheelbase_m / (gross * tangent)))
}

/// A gram over a limit is rounding.
const SLACK_KG: f64 = 0.001;

fn wheelbase_m(wheelbase: Length) -> Result<f64, AxleError> {
    let metres = wheelbase.get::<meter>();
    if (0.5..=20.0).contains(&metres) { Ok(metres) } else { Err(AxleError::Wheelbase) }
}

/// Centre of the items, mm; none where the masses cancel or their centre lies off the road.
fn centre_mm(mass_kg: f64, moment_kg_m: f64) -> Option<f64> {
    let centre = moment_kg_m / mass_kg * 1000.0;
    (mass_kg.abs() > SLACK_KG && centre.abs() < 1e5).then_some(centre)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use uom::si::length::inch;
    use uom::si::mass::pound;

    fn vehicle(wheelbase: Length) -> Vehicle {
        let axle = |limit| Axle {
            limit: Mass::new::<kilogram>(limit),
            weighed: Mass::new::<kilogram>(0.0),
        };
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
            assert!((found.rear.get::<pound>() - rear).abs() < within, "{pounds}: {found:?}");
            assert!((found.front.get::<pound>() - front).abs() < within, "{pounds}: {found:?}");
            assert_eq!(found.lifts, front < 0.0);
        }
    }

    // Front-mounted load C ahead of the axle (truck handbook): front W (C + WB) / WB, rear -W C / WB.
    #[test]
    fn a_load_ahead_of_the_front_axle_relieves_the_rear() {
        let found = loads(&vehicle(Length::new::<inch>(200.0)), &[item(300.0, -40.0)]).unwrap();
        assert!((found.front.get::<pound>() - 360.0).abs() < 1e-9);
        assert!((found.rear.get::<pound>() + 60.0).abs() < 1e-9);
    }

    #[test]
    fn weighed_axles_are_the_base_and_limits_are_told_one_by_one() {
        let mut vehicle = vehicle(Length::new::<meter>(4.0));
        vehicle.front.weighed = kg(2000.0);
        vehicle.rear.weighed = kg(3000.0);
        vehicle.rear.limit = kg(3100.0);
        let water = Item { mass: kg(140.0), from_front_axle: Length::new::<meter>(4.0) };
        let found = loads(&vehicle, &[water]).unwrap();
        assert!((found.rear_left.get::<kilogram>() + 40.0).abs() < 1e-9, "{found:?}");
        assert!((found.front_left.get::<kilogram>() - 1000.0).abs() < 1e-9);
        assert!((found.gross_left.get::<kilogram>() - 2860.0).abs() < 1e-9);
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
            wheelbase in any::<f64>(), weighed in any::<f64>(), mass in any::<f64>(), place in any::<f64>(),
        ) {
            let mut vehicle = vehicle(Length::new::<meter>(wheelbase));
            vehicle.front.weighed = kg(weighed);
            let item = Item { mass: kg(mass), from_front_axle: Length::new::<meter>(place) };
            if let Ok(found) = loads(&vehicle, &[item, item]) {
                prop_assert!(found.front.value.is_finite() && found.gross_left.value.is_finite());
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
            prop_assert!((found.front.value + found.rear.value - total).abs() < 1e-9 * (1.0 + total));
        }
    }
}
