//! Fresh water aboard: how long it lasts and what it weighs.

use uom::si::f64::{Length, Mass, Volume, VolumeRate};
use uom::si::mass::kilogram;
use uom::si::volume::liter;
use uom::si::volume_rate::liter_per_minute;

use crate::formula::formula;
use crate::source::Source;
use crate::words::{Phrase, cautions_water, water as words};

/// Days a tank lasts.
pub static DAYS: Source = Source::identity_of(words::SOURCE_DAYS);
/// Density of water at 20 °C.
pub static DENSITY: Source = Source::from_memory(
    "CRC Handbook of Chemistry and Physics",
    "density of water at 20 °C, 998 kg/m³",
);
/// Where the fall of drains is set.
pub static DRAIN: Source =
    Source::from_memory("International Plumbing Code", "table 704.1, 1/4 in a foot");
/// What one person uses.
pub static USUAL_USE: Source = Source::practice_of(words::SOURCE_USE);

/// Density of water at 20 °C, kg/l.
pub const WATER_KG_L: f64 = 0.998;

/// Fall of a drain of up to 2 1/2 in: 1/4 in a foot.
pub const DRAIN_FALL: f64 = 0.25 / 12.0;

formula! {
    /// What all use in a day.
    DayUse: "D = n · u", &DAYS;
    |of| of.use_each * of.people => Volume as volume;
    /// People aboard, 1 to 100.
    "n" as hundredths: people: f64,
    /// Use of each in a day, 0.01 to 1000 l.
    "u" as volume: use_each: Volume,
}

formula! {
    /// Days until a tank is drawn empty.
    TankDays: "t = V · (1 − s) / D", &DAYS;
    |of| of.tank.get::<liter>() * (1.0 - of.dead_share) / of.day.get::<liter>() => f64 as days;
    /// Tank, 0.1 to 100 000 l.
    "V" as volume: tank: Volume,
    /// Share of the tank that cannot be drawn, 0 to below 1.
    "s" as share: dead_share: f64,
    /// What all use in a day, 0.01 to 100 000 l.
    "D" as volume: day: Volume,
}

formula! {
    /// Mass of the water in a full tank.
    WaterMass: "m = V · ρ", &DENSITY;
    |of| Mass::new::<kilogram>(of.tank.get::<liter>() * of.kg_l) => Mass as mass;
    /// Tank.
    "V" as volume: tank: Volume,
    /// Density, such as [`WATER_KG_L`].
    "ρ" as kilograms_per_liter: kg_l: f64,
}

formula! {
    /// Days until an empty waste tank is full.
    WasteDays: "t = V / D", &DAYS;
    |of| of.tank.get::<liter>() / of.day.get::<liter>() => f64 as days;
    /// Waste tank, 0.1 to 100 000 l.
    "V" as volume: tank: Volume,
    /// What all use in a day, 0.01 to 100 000 l.
    "D" as volume: day: Volume,
}

formula! {
    /// Minutes that a pump runs in a day to bring what is used.
    PumpMinutes: "t = D / q", &DAYS;
    |of| of.day.get::<liter>() / of.flow.get::<liter_per_minute>() => f64 as minutes;
    /// What all use in a day, 0.01 to 100 000 l.
    "D" as volume: day: Volume,
    /// The pump's flow, 0.1 to 1000 l/min.
    "q" as flow: flow: VolumeRate,
}

formula! {
    /// How much lower the end of a drain lies than its start, at [`DRAIN_FALL`].
    DrainFall: "h = l · 1/48", &DRAIN;
    |of| of.length * DRAIN_FALL => Length as mark;
    /// Along the pipe.
    "l" as length: length: Length,
}

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// What to show beside tanks, pump and drain.
pub static CAUTIONS: [Caution; 6] = [
    (Phrase::Id(cautions_water::TANK_DOWN), Source::practice_of(cautions_water::TANK_DOWN_SOURCE)),
    (
        Phrase::Id(cautions_water::TRAP),
        Source::from_memory(
            "International Plumbing Code",
            "1002.1 traps; 704.1 slope; the same in plumbing for recreational vehicles",
        ),
    ),
    (Phrase::Id(cautions_water::VENT), Source::practice_of(cautions_water::VENT_SOURCE)),
    (Phrase::Id(cautions_water::PUMP_FUSE), Source::practice_of(cautions_water::PUMP_FUSE_SOURCE)),
    (
        Phrase::Id(cautions_water::POTABLE),
        Source::from_memory("NSF/ANSI 61; EN 12873", "materials in contact with drinking water"),
    ),
    (Phrase::Id(cautions_water::FROST), Source::practice_of(cautions_water::FROST_SOURCE)),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formula::Formula;
    use proptest::prelude::*;

    fn litres(value: f64) -> Volume {
        Volume::new::<liter>(value)
    }

    // Plain arithmetic.
    #[test]
    fn two_people_on_seventy_litres() {
        let day = DayUse { people: 2.0, use_each: litres(6.0) }.value();
        let days = TankDays { tank: litres(70.0), dead_share: 0.05, day }.value();
        assert!((days - 66.5 / 12.0).abs() < 1e-12);
        let mass = WaterMass { tank: litres(70.0), kg_l: WATER_KG_L }.value();
        assert!((mass.get::<kilogram>() - 69.86).abs() < 1e-9);
    }

    #[test]
    fn pump_and_drain_by_arithmetic() {
        let flow = VolumeRate::new::<liter_per_minute>(8.0);
        let minutes = PumpMinutes { day: litres(12.0), flow }.value();
        assert!((minutes - 1.5).abs() < 1e-12);
        let fall = DrainFall { length: Length::new::<uom::si::length::foot>(6.0) }.value();
        assert!((fall.get::<uom::si::length::inch>() - 1.5).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn all_that_can_be_typed_gives_finite_days(
            people in 1.0..=100.0_f64, each in 0.01..=1000.0_f64, tank in 0.1..=100_000.0_f64,
            dead_share in 0.0..=0.99_f64, flow in 0.1..=960.0_f64,
        ) {
            let day = DayUse { people, use_each: litres(each) }.value();
            let days = TankDays { tank: litres(tank), dead_share, day }.value();
            let waste = WasteDays { tank: litres(tank), day }.value();
            prop_assert!(days.is_finite() && days > 0.0 && days <= waste);
            let flow = VolumeRate::new::<liter_per_minute>(flow);
            let run = PumpMinutes { day, flow }.value();
            prop_assert!(run.is_finite());
        }
    }
}
