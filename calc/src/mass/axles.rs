//! Load on both axles by moments, and what is left below the limits.

use uom::si::angle::{degree, radian};
use uom::si::f64::{Angle, Length, Mass};
use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;

use crate::formula::{Formula, formula};
use crate::source::Source;
use crate::words::{Msg, axles as words};

/// Rear = load x distance behind the front axle / wheelbase; front = load - rear.
pub static MOMENTS: Source = Source::identity_of(words::SOURCE_MOMENTS);
/// What the limits mean.
pub static LIMITS: Source =
    Source::transcribed("49 CFR 571.3", "gross vehicle and gross axle weight rating");
/// Load that braking moves to the front axle.
pub static BRAKING: Source = Source::identity_of(words::SOURCE_BRAKING);

/// Height of the centre of mass from the load that a tilt moves.
pub static TILT_METHOD: Source = Source::from_memory("ISO 10392", "centre of gravity by axle lift");

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
#[derive(Clone, Copy, Debug)]
pub struct AxleLoads {
    /// On the front axle.
    pub front: FrontAxle,
    /// On the rear axle.
    pub rear: RearAxle,
    /// Together.
    pub gross: Mass,
    /// Below the front limit; negative is over it.
    pub front_left: Left,
    /// Below the rear limit; negative is over it.
    pub rear_left: Left,
    /// Below the gross limit; negative is over it.
    pub gross_left: Left,
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

impl From<AxleError> for Msg {
    fn from(error: AxleError) -> Self {
        match error {
            AxleError::Wheelbase => words::BAD_WHEELBASE.into(),
            AxleError::AxleLimit => words::BAD_LIMIT.into(),
            AxleError::Weighed => words::BAD_WEIGHED.into(),
            AxleError::GrossLimit => words::BAD_GROSS_LIMIT.into(),
            AxleError::ItemMass(at) => words::BadMass { number: at + 1 }.into(),
            AxleError::ItemPlace(at) => words::BadPlace { number: at + 1 }.into(),
            AxleError::Braking => words::BAD_BRAKING.into(),
            AxleError::Tilt => words::BAD_TILT.into(),
        }
    }
}

formula! {
    /// The part of an item that the rear axle carries.
    OnRear: "r = m · x / L", &MOMENTS;
    |of| of.mass * (of.place / of.wheelbase) => Mass as mass;
    /// The item's.
    "m" as mass: mass: Mass,
    /// Its middle behind the front axle.
    "x" as length: place: Length,
    /// The wheelbase.
    "L" as length: wheelbase: Length,
}

formula! {
    /// Load on the rear axle.
    RearAxle: "R = R₀ + Σ r", &MOMENTS;
    |of| of.weighed + of.items => Mass as mass;
    /// Weighed before the items are added.
    "R₀" as mass: weighed: Mass,
    /// What the rear axle carries of all items.
    "Σ r" as mass: items: Mass,
}

formula! {
    /// Load on the front axle.
    FrontAxle: "F = F₀ + Σ m − Σ r", &MOMENTS;
    |of| of.weighed + of.items - of.rear => Mass as mass;
    /// Weighed before the items are added.
    "F₀" as mass: weighed: Mass,
    /// All items.
    "Σ m" as mass: items: Mass,
    /// What the rear axle carries of them.
    "Σ r" as mass: rear: Mass,
}

formula! {
    /// What is left below a limit; negative is over it.
    Left: "Δ = G − m", &LIMITS;
    |of| of.limit - of.load => Mass as mass;
    /// The most that may be carried.
    "G" as mass: limit: Mass,
    /// What is carried.
    "m" as mass: load: Mass,
}

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
    let kg = Mass::new::<kilogram>;
    let on_rear = kg(moment_kg_m / wheelbase_m);
    let front = FrontAxle { weighed: vehicle.front.weighed, items: kg(mass_kg), rear: on_rear };
    let rear = RearAxle { weighed: vehicle.rear.weighed, items: on_rear };
    let gross = front.value() + rear.value();
    let left = [
        Left { limit: vehicle.front.limit, load: front.value() },
        Left { limit: vehicle.rear.limit, load: rear.value() },
        Left { limit: vehicle.gross_limit, load: gross },
    ];
    let slack = -kg(SLACK_KG);
    Ok(AxleLoads {
        front,
        rear,
        gross,
        front_left: left[0],
        rear_left: left[1],
        gross_left: left[2],
        items_centre: centre_mm(mass_kg, moment_kg_m).map(Length::new::<millimeter>),
        within_limits: left.iter().all(|left| left.value() >= slack),
        lifts: front.value() < slack || rear.value() < slack,
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
mod tests;
