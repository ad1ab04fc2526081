//! Amounts that are needed, as they are written: rounded up in the last digit that is shown, so that
//! nobody who goes by them buys or mixes too little.

use uom::si::f64::{Length, Mass, Volume};

use super::decimal::up;
use super::dimension::{LENGTH, MASS, VOLUME};
use super::style::number_in;
use super::unit::Dimension;
use super::{Style, UnitSystem, plain};

/// Digits that an amount is shown with at most.
pub(super) const DIGITS: i32 = 3;
/// How far a mix may be off its ratio by what the cup or the scale shows: common practice, no source.
const OFF_RATIO: f64 = 0.02;

/// Two parts that go into one vessel, as they are read off it: in one unit, each rounded up, and the
/// level after the second is the sum of the two as shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pour {
    /// How much of the first, which is the level after it, too.
    pub first: String,
    /// How much of the second on top of it.
    pub second: String,
    /// The level after the second.
    pub level: String,
}

impl Style {
    /// As [`Style::volume`], rounded up: `1.15 gal` for 1.141 gal.
    pub fn volume_needed(&self, volume: Volume) -> String {
        let unit = self.volume_unit(volume);
        let value = number_in(volume.value, &VOLUME, unit);
        let after = self.digits_needed(value, unit);
        self.figure(plain(up(value, after), after) + " " + unit)
    }

    /// As they are read off a vessel; of what is bought in cans three, as cans are told apart by: a litre is more than
    /// 1.01 quarts, though 1.1 would be more than a litre.
    fn digits_needed(&self, number: f64, unit: &str) -> usize {
        match unit {
            "l" | "qt" | "gal" => digits_after(number.abs(), DIGITS),
            _ => self.digits_read(number, unit),
        }
    }

    /// As [`Style::volume_both`], rounded up in both units.
    pub fn volume_needed_both(&self, volume: Volume) -> String {
        let other = Self::new(match self.system {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        });
        let other = Self { words: self.words, exact: self.exact, ..other };
        self.volume_needed(volume) + " (" + &other.volume_needed(volume) + ")"
    }

    /// Two volumes poured into one cup, the second on top of the first.
    pub fn poured_into_one(&self, first: Volume, second: Volume) -> Pour {
        self.pour(first.value, second.value, &VOLUME, self.volume_unit(first + second))
    }

    /// Two masses weighed into one cup on a scale that was set to zero with the empty cup.
    pub fn weighed_into_one(&self, first: Mass, second: Mass) -> Pour {
        self.pour(first.value, second.value, &MASS, self.weighed_unit(first + second))
    }

    fn pour(&self, first: f64, second: f64, of: &'static Dimension, unit: &str) -> Pour {
        let read = |value| self.digits_needed(value, unit);
        let Pour { first, second, level } = pour(first, second, of, unit, read);
        let [first, second, level] = [first, second, level].map(|text| self.figure(text));
        Pour { first, second, level }
    }

    /// A length of tape to have ready, for a list: the exact number and its unit, feet or metres.
    pub fn by_the_roll(&self, length: Length) -> (f64, &'static str) {
        let unit = match self.system {
            UnitSystem::Imperial => "ft",
            UnitSystem::Metric => "m",
        };
        (number_in(length.value, &LENGTH, unit), unit)
    }
}

/// How many digits after the point show so many digits of a value.
pub(super) fn digits_after(value: f64, digits: i32) -> usize {
    if value <= 0.0 || !value.is_finite() {
        return 0;
    }
    let whole = libm::floor(libm::log10(value)) as i32 + 1;
    (digits - whole).clamp(0, 12) as usize
}

/// As the cup or the scale shows them; finer only where a small part would spoil the ratio. The second part
/// follows the first as it is shown, so that rounding up leaves the ratio right to the last digit of the
/// smaller part.
fn pour(
    first: f64,
    second: f64,
    dimension: &'static Dimension,
    unit: &str,
    read: impl Fn(f64) -> usize,
) -> Pour {
    let [a, b] = [first, second].map(|si| number_in(si, dimension, unit));
    let least = if a > 0.0 { a.min(b) } else { b };
    let with = |after: usize| {
        let shown = up(a, after);
        (shown, up(if a > 0.0 { b * (shown / a).max(1.0) } else { b }, after))
    };
    let finest = digits_after(least, DIGITS);
    let mut after = read(least).min(finest);
    let off = |(shown, more): (f64, f64)| more * a / (shown * b) - 1.0;
    while after < finest && off(with(after)) > OFF_RATIO {
        after += 1;
    }
    let (shown, more) = with(after);
    let text = |value: f64| plain(value, after) + " " + unit;
    Pour { first: text(shown), second: text(more), level: text(shown + more) }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::length::meter;
    use uom::si::mass::gram;
    use uom::si::volume::{liter, milliliter};

    use super::*;
    use crate::quantity::Measure;

    const SYSTEMS: [UnitSystem; 2] = [UnitSystem::Imperial, UnitSystem::Metric];

    fn read(text: &str, dimension: &'static Dimension) -> f64 {
        Measure::read(text, dimension, None).unwrap().si()
    }

    #[test]
    fn up_and_never_down() {
        let metric = Style::new(UnitSystem::Metric);
        assert_eq!(metric.volume_needed(Volume::new::<liter>(1.141)), "1.15 l");
        assert_eq!(metric.volume_needed(Volume::new::<liter>(1.14)), "1.14 l");
        assert_eq!(metric.volume_needed(Volume::new::<milliliter>(99.11)), "100 ml");
        assert_eq!(metric.volume_needed(Volume::new::<milliliter>(0.1394)), "0.14 ml");
        assert_eq!(metric.volume_needed(Volume::new::<liter>(0.0)), "0 ml");
        assert_eq!(metric.by_the_roll(Length::new::<meter>(28.8)), (28.8, "m"));
    }

    #[test]
    fn the_level_is_the_sum_of_what_is_poured() {
        let metric = Style::new(UnitSystem::Metric);
        let ml = Volume::new::<milliliter>;
        let got = metric.poured_into_one(ml(120.0), ml(60.0));
        assert_eq!([got.first, got.second, got.level], ["120 ml", "60 ml", "180 ml"]);
        let got = metric.poured_into_one(ml(117.21), ml(58.605));
        assert_eq!([got.first, got.second, got.level], ["118 ml", "59 ml", "177 ml"]);
        let got = metric.weighed_into_one(Mass::new::<gram>(129.0), Mass::new::<gram>(60.61));
        assert_eq!([got.first, got.second, got.level], ["129 g", "61 g", "190 g"]);
    }

    proptest! {
        #[test]
        fn what_is_shown_is_enough(litres in 1e-5..900.0_f64, share in 0.005..0.995_f64) {
            let volume = Volume::new::<liter>(litres);
            let (a, b) = (volume * share, volume * (1.0 - share));
            for system in SYSTEMS {
                let style = Style::new(system);
                let shown = read(&style.volume_needed(volume), &VOLUME);
                // Enough, and no more than a line of the vessel above it.
                let unit = style.volume_unit(volume);
                let number = number_in(volume.value, &VOLUME, unit);
                let line = libm::pow(10.0, -(style.digits_needed(number, unit) as f64));
                let over = number_in(shown, &VOLUME, unit) - number;
                prop_assert!((-1e-6 * number..line * 1.0001).contains(&over), "{shown} {number}");
                let pour = style.poured_into_one(a, b);
                let [first, second, level] =
                    [&pour.first, &pour.second, &pour.level].map(|text| read(text, &VOLUME));
                prop_assert!(first >= a.value * (1.0 - 1e-6), "{pour:?}");
                prop_assert!(second >= b.value * (1.0 - 1e-6), "{pour:?}");
                prop_assert!((first + second - level).abs() < 1e-9 * level, "{pour:?}");
                let off = (second / first) / (b / a).value - 1.0;
                prop_assert!(off.abs() < 0.0201, "{pour:?} {off}");
                let (number, unit) = style.poured(volume);
                let list = read(&format!("{number} {unit}"), &VOLUME);
                prop_assert!(list >= volume.value * (1.0 - 1e-6) - 1e-11);
            }
        }
    }
}
