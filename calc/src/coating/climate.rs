//! Air and surface over the day: readings of some hours, and what lies between them.

use std::rc::Rc;

use uom::si::f64::{Ratio, ThermodynamicTemperature};

use super::air::{self, Margin};
use super::mixing;
use super::range::OutOfRange;
use super::schedule::Pace;
use super::verdict::{self, Bar, Limits};
use crate::sorting::sort_by;
use crate::source::Source;
use crate::words::wet as words;

/// What is taken between two readings.
pub static BETWEEN: Source = Source::practice_of(words::SOURCE_BETWEEN);

const DAY_MIN: f64 = 24.0 * 60.0;
/// How finely a day is looked at. [min]
const GRAIN_MIN: f64 = 15.0;
/// A reading between these hours tells how cold the night gets; common practice. [min]
const BEFORE_DAWN_MIN: (f64, f64) = (120.0, 450.0);
/// When a body is taken to be coldest; common practice. [min]
pub const BEFORE_DAWN: f64 = 300.0;
/// One reading for all day speaks for these hours, and not for the night; common practice. [min]
const BY_DAY_MIN: (f64, f64) = (360.0, 1320.0);

/// Air and surface at one time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weather {
    /// Of the air.
    pub temperature: ThermodynamicTemperature,
    /// Relative humidity of the air.
    pub humidity: Ratio,
    /// Of the surface, at its coldest spot.
    pub surface: ThermodynamicTemperature,
}

/// A reading at a time of day, in minutes since midnight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// When, from 0 to 1440.
    pub at_min: f64,
    /// What was read.
    pub weather: Weather,
}

/// A day's readings; every day is like the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Climate {
    first: Reading,
    /// In the order of the day.
    others: Vec<Reading>,
}

impl Climate {
    /// The same all day.
    pub fn even(weather: Weather) -> Self {
        Self { first: Reading { at_min: 0.0, weather }, others: Vec::new() }
    }

    /// The same by day, and a night that is coldest at [`BEFORE_DAWN`].
    pub fn with_night(day: Weather, night: Weather) -> Self {
        let (from, to) = BY_DAY_MIN;
        let reading = |at_min, weather| Reading { at_min, weather };
        Self {
            first: reading(BEFORE_DAWN, night),
            others: vec![reading(from, day), reading(to, day)],
        }
    }

    /// Of a day's readings in any order; none where there is none.
    pub fn new(mut readings: Vec<Reading>) -> Option<Self> {
        sort_by(&mut readings, |one, other| one.at_min.total_cmp(&other.at_min));
        let mut readings = readings.into_iter();
        let first = readings.next()?;
        Some(Self { first, others: readings.collect() })
    }

    /// Whether it is the same all day.
    pub fn is_even(&self) -> bool {
        self.others.is_empty()
    }

    /// Whether its readings speak for all of a time, in minutes since any midnight. A body of steel is
    /// coldest before dawn: a straight line from the evening to the morning misses that, so the night
    /// is known only where there is a reading of it.
    pub fn speaks_for(&self, from_min: f64, to_min: f64) -> bool {
        let before_dawn = |reading: &Reading| {
            let (from, to) = BEFORE_DAWN_MIN;
            (from..=to).contains(&reading.at_min)
        };
        if let Some(last) = self.others.last() {
            if [&self.first].into_iter().chain(&self.others).any(before_dawn) {
                return true;
            }
            return in_one_day(from_min, to_min, (self.first.at_min, last.at_min));
        }
        in_one_day(from_min, to_min, BY_DAY_MIN)
    }

    /// All that forbids a coat at some time from one to another. Sources: [`BETWEEN`],
    /// [`verdict::LABEL_LIMITS`].
    ///
    /// # Errors
    /// As [`air::margin`].
    pub fn bars(
        &self,
        limits: &Limits,
        from_min: f64,
        to_min: f64,
    ) -> Result<Vec<Bar>, OutOfRange> {
        let mut bars: Vec<Bar> = Vec::new();
        let to_min = to_min.min(from_min + DAY_MIN);
        let mut time = from_min;
        loop {
            let weather = self.at(time);
            let margin = air::margin(weather.temperature, weather.humidity, weather.surface)?;
            for bar in verdict::bars(limits, &weather, &margin) {
                if !bars.contains(&bar) {
                    bars.push(bar);
                }
            }
            if time >= to_min || self.is_even() {
                return Ok(bars);
            }
            // The readings themselves are looked at: what is coldest is one of them.
            time = self.next_reading(time).min(time + GRAIN_MIN).min(to_min);
        }
    }

    /// The time of the first reading after a time.
    fn next_reading(&self, time_min: f64) -> f64 {
        let midnight = (time_min / DAY_MIN).floor() * DAY_MIN;
        let of_day = time_min - midnight;
        let all = || [&self.first].into_iter().chain(&self.others).map(|reading| reading.at_min);
        let next = all().find(|at| *at > of_day + 1e-6);
        midnight + next.unwrap_or(self.first.at_min + DAY_MIN)
    }

    /// Air and surface at a time, in minutes since any midnight. Source: [`BETWEEN`].
    pub fn at(&self, time_min: f64) -> Weather {
        let of_day = time_min - (time_min / DAY_MIN).floor() * DAY_MIN;
        let Some(last) = self.others.last() else { return self.first.weather };
        // From last night's to the first of today, between those of the day, and so on.
        let mut before = Reading { at_min: last.at_min - DAY_MIN, ..*last };
        let tomorrow = Reading { at_min: self.first.at_min + DAY_MIN, ..self.first };
        for after in [&self.first].into_iter().chain(&self.others).chain([&tomorrow]) {
            if of_day <= after.at_min {
                return between(&before, after, of_day);
            }
            before = *after;
        }
        last.weather
    }

    /// How fast things set over the day, for a label's temperature. Source:
    /// [`mixing::POT_LIFE`].
    ///
    /// # Errors
    /// As [`mixing::pace`].
    pub fn pace(&self, label_at: ThermodynamicTemperature) -> Result<Pace, OutOfRange> {
        if self.is_even() {
            return Ok(Pace::Even(mixing::pace(label_at, self.first.weather.temperature)?));
        }
        let mut paces = Vec::new();
        let mut time = 0.0;
        while time <= DAY_MIN {
            paces.push(mixing::pace(label_at, self.at(time).temperature)?);
            time += GRAIN_MIN;
        }
        Ok(Pace::daily(&paces).map_or(Pace::Even(1.0), |daily| Pace::Daily(Rc::new(daily))))
    }

    /// The time from one to another at which the surface is least above the dew point, and by how
    /// much. Sources: [`BETWEEN`], [`air::MAGNUS`], [`air::MARGIN_RULE`].
    ///
    /// # Errors
    /// As [`air::margin`].
    pub fn worst(&self, from_min: f64, to_min: f64) -> Result<(f64, Margin), OutOfRange> {
        let margin = |time: f64| {
            let Weather { temperature, humidity, surface } = self.at(time);
            Ok((time, air::margin(temperature, humidity, surface)?))
        };
        let mut worst = margin(from_min)?;
        if self.is_even() {
            return Ok(worst);
        }
        // Every day is like the other.
        let to_min = to_min.min(from_min + DAY_MIN);
        let mut time = from_min;
        while time < to_min {
            time = (time + GRAIN_MIN).min(to_min);
            let here = margin(time)?;
            let too_humid = here.1.too_humid || worst.1.too_humid;
            if here.1.margin < worst.1.margin {
                worst = here;
            }
            worst.1.too_humid = too_humid;
        }
        Ok(worst)
    }
}

/// Whether a stretch of time lies between two times of one day.
fn in_one_day(from_min: f64, to_min: f64, (earliest, latest): (f64, f64)) -> bool {
    let midnight = (from_min / DAY_MIN).floor() * DAY_MIN;
    from_min - midnight >= earliest - 1e-6 && to_min - midnight <= latest + 1e-6
}

fn between(before: &Reading, after: &Reading, at_min: f64) -> Weather {
    let span = after.at_min - before.at_min;
    let share = if span > 1e-9 { ((at_min - before.at_min) / span).clamp(0.0, 1.0) } else { 1.0 };
    let (one, other) = (before.weather, after.weather);
    let mix = |a: f64, b: f64| a + (b - a) * share;
    let kelvins = |value: f64| {
        ThermodynamicTemperature::new::<uom::si::thermodynamic_temperature::kelvin>(value)
    };
    Weather {
        temperature: kelvins(mix(one.temperature.value, other.temperature.value)),
        humidity: one.humidity + (other.humidity - one.humidity) * share,
        surface: kelvins(mix(one.surface.value, other.surface.value)),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::ratio::percent;
    use uom::si::thermodynamic_temperature::degree_celsius;

    use super::*;

    fn celsius(value: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(value)
    }

    fn reading(hour: f64, air: f64, humidity: f64, surface: f64) -> Reading {
        let weather = Weather {
            temperature: celsius(air),
            humidity: Ratio::new::<percent>(humidity),
            surface: celsius(surface),
        };
        Reading { at_min: hour * 60.0, weather }
    }

    fn day() -> Climate {
        let readings = vec![
            reading(14.0, 24.0, 45.0, 22.0),
            reading(8.0, 12.0, 75.0, 10.0),
            reading(20.0, 18.0, 60.0, 17.0),
        ];
        Climate::new(readings).unwrap()
    }

    #[test]
    fn straight_lines_between_readings_by_hand() {
        let at = |hour: f64| {
            let weather = day().at(hour * 60.0);
            let close = |value: f64| (value * 1e6).round() / 1e6;
            [
                close(weather.temperature.get::<degree_celsius>()),
                close(weather.humidity.get::<percent>()),
                close(weather.surface.get::<degree_celsius>()),
            ]
        };
        assert_eq!(at(8.0), [12.0, 75.0, 10.0]);
        assert_eq!(at(11.0), [18.0, 60.0, 16.0]);
        assert_eq!(at(17.0), [21.0, 52.5, 19.5]);
        // From 20:00 to 8:00 the night is half over at 2:00, tomorrow as today.
        assert_eq!(at(2.0), [15.0, 67.5, 13.5]);
        assert_eq!(at(26.0), at(2.0));
        assert_eq!(at(24.0 * 9.0 + 11.0), at(11.0));
    }

    /// 16 °C, 71 % and a surface of 13 °C: 2.3 °C above the dew point, as a practice text works it.
    #[test]
    fn the_worst_of_a_period_is_found() {
        let humid =
            Climate::new(vec![reading(9.0, 20.0, 50.0, 20.0), reading(18.0, 16.0, 71.0, 13.0)]);
        let humid = humid.unwrap();
        let (time, margin) = humid.worst(9.0 * 60.0, 20.0 * 60.0).unwrap();
        assert_eq!(time, 18.0 * 60.0);
        assert!(!margin.far_enough && (margin.margin.value - 2.3).abs() < 0.1);
        assert!(humid.worst(9.0 * 60.0, 10.0 * 60.0).unwrap().1.far_enough);
    }

    #[test]
    fn one_reading_is_an_even_day() {
        let even = Climate::new(vec![reading(9.0, 15.0, 50.0, 15.0)]).unwrap();
        assert_eq!(even.pace(celsius(25.0)), Ok(Pace::Even(2.0)));
        assert_eq!(Climate::new(Vec::new()), None);
    }

    #[test]
    fn the_night_is_known_only_by_a_reading_of_it() {
        let hours = |from: f64, to: f64| (from * 60.0, to * 60.0);
        let asked = |climate: &Climate, (from, to): (f64, f64)| climate.speaks_for(from, to);
        assert!(asked(&day(), hours(8.0, 20.0)));
        assert!(!asked(&day(), hours(8.0, 20.5)) && !asked(&day(), hours(7.5, 9.0)));
        assert!(!asked(&day(), hours(14.0, 33.0)));
        let even = Climate::even(day().first.weather);
        assert!(asked(&even, hours(6.0, 22.0)) && !asked(&even, hours(14.0, 30.0)));
        let mut with_night: Vec<Reading> = day().others.clone();
        with_night.push(reading(5.0, 8.0, 90.0, 7.0));
        assert!(asked(&Climate::new(with_night).unwrap(), hours(14.0, 33.0)));
    }

    #[test]
    fn a_cold_reading_is_never_stepped_over() {
        let readings = vec![
            reading(5.1, 8.0, 60.0, 8.0),
            reading(5.0, 20.0, 60.0, 20.0),
            reading(5.2, 20.0, 60.0, 20.0),
        ];
        let climate = Climate::new(readings).unwrap();
        let limits = Limits { least: Some(celsius(10.0)), ..Limits::default() };
        assert_eq!(climate.bars(&limits, 0.0, 1440.0), Ok(vec![Bar::Cold]));
        assert_eq!(climate.bars(&limits, 600.0, 900.0), Ok(vec![]));
    }

    proptest! {
        #[test]
        fn between_readings_nothing_leaves_their_range(
            readings in prop::collection::vec((0.0..1440.0, -10.0..40.0, 1.0..100.0, -10.0..40.0), 1..5),
            time in 0.0..20_000.0,
        ) {
            let readings: Vec<Reading> =
                readings.into_iter().map(|(at, t, h, s)| reading(at / 60.0, t, h, s)).collect();
            let range = |of: fn(&Weather) -> f64| readings.iter().map(|one| of(&one.weather)).fold(
                (f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
            let ranges = [range(|w| w.temperature.value), range(|w| w.humidity.value), range(|w| w.surface.value)];
            let climate = Climate::new(readings).unwrap();
            let got = climate.at(time);
            for (value, (low, high)) in [got.temperature.value, got.humidity.value, got.surface.value].into_iter().zip(ranges) {
                prop_assert!(value >= low - 1e-9 && value <= high + 1e-9);
            }
            let (at, margin) = climate.worst(time, time + 300.0).unwrap();
            prop_assert!(at >= time && at <= time + 300.0 && margin.margin.value.is_finite());
        }
    }
}
