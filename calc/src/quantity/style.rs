//! How sizes are written to people, in the units of the tool in their hand.

use uom::si::f64::{Area, Length, Mass, Power, ThermodynamicTemperature, Time, Volume, VolumeRate};
use uom::si::time::minute;

use super::decimal::{amount, significant};
use super::dimension::{
    AREA, CONDUCTIVITY, FLOW, LENGTH, MASS, POWER, SPREAD_RATE, TEMPERATURE, THERMAL_RESISTANCE,
    U_VALUE, VOLUME,
};
use super::mark::{Marked, Rounding, UnitSystem, inches, mark, to_lines};
use super::measure::Measure;
use super::unit::Dimension;
use crate::words::Words;

/// Unit system and rounding of everything that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// Units of results.
    pub system: UnitSystem,
    /// Finest line on the tape; where it belongs to the other system the usual one of `system` is
    /// taken.
    pub rounding: Rounding,
    /// The language.
    pub words: Words,
}

impl Style {
    /// The usual style of a unit system.
    pub fn new(system: UnitSystem) -> Self {
        Self { system, rounding: Rounding::for_system(system), words: Words::ENGLISH }
    }

    /// The style of a rounding, in the unit system that it belongs to.
    pub const fn rounded(rounding: Rounding) -> Self {
        Self { system: rounding.system(), rounding, words: Words::ENGLISH }
    }

    /// The mark for a length on the tape: total inches `90 1/2 in`, or `2299 mm`.
    pub fn mark(&self, length: Length) -> Marked {
        mark(length, self.lines())
    }

    /// A size to say aloud: `23 3/8 in`, from 2 ft up `7 ft 6 1/2 in`; `2299 mm`, from 10 m up
    /// `12.35 m`. Rounded like a mark.
    pub fn length(&self, length: Length) -> String {
        match self.system {
            UnitSystem::Imperial => feet_and_inches(length, self.lines()),
            UnitSystem::Metric if length.value.abs() < 10.0 => self.mark(length).text,
            UnitSystem::Metric => amount(length.value, 2, "m"),
        }
    }

    /// A short length as it is read off a tape, like a mark; what the tape does not show, in
    /// decimals.
    pub fn short(&self, length: Length) -> String {
        let marked = self.mark(length);
        if marked.rounded.value == 0.0 && length.value != 0.0 {
            self.small(length)
        } else {
            marked.text
        }
    }

    /// How far off something may be: to the nearest 1/32 in, or 0.1 mm.
    pub fn error(&self, length: Length) -> String {
        match self.system {
            UnitSystem::Imperial => {
                Self { rounding: Rounding::ThirtySecond, ..*self }.short(length)
            }
            UnitSystem::Metric => in_unit(length.value, &LENGTH, "mm", 1),
        }
    }

    /// A long run of wire or boards: whole inches `32 ft 6 in`, or `9.9 m`.
    pub fn run(&self, length: Length) -> String {
        match self.system {
            UnitSystem::Metric => amount(length.value, 1, "m"),
            UnitSystem::Imperial => {
                let total = (length.value / 0.0254).round();
                if !total.is_finite() {
                    return "?".to_owned();
                }
                let sign = if total < 0.0 { "-" } else { "" };
                let feet = (total.abs() / 12.0).floor();
                match (feet == 0.0, total.abs() - feet * 12.0) {
                    (true, 0.0) => "0 ft".to_owned(),
                    (true, rest) => format!("{sign}{rest} in"),
                    (false, 0.0) => format!("{sign}{feet} ft"),
                    (false, rest) => format!("{sign}{feet} ft {rest} in"),
                }
            }
        }
    }

    /// A gap or a small size that no tape shows: `0.045 in`, `1.14 mm`.
    pub fn small(&self, length: Length) -> String {
        match self.system {
            UnitSystem::Imperial => in_unit(length.value, &LENGTH, "in", 3),
            UnitSystem::Metric => in_unit(length.value, &LENGTH, "mm", 2),
        }
    }

    /// A film: `4.01 mil` or `102 µm`, to three significant digits.
    pub fn film(&self, thickness: Length) -> String {
        let unit = self.pick("mil", "um");
        significant_in_unit(thickness.value, &LENGTH, unit)
    }

    /// An area: `121.5 ft²`, `11.29 m²`.
    pub fn area(&self, area: Area) -> String {
        match self.system {
            UnitSystem::Imperial => in_unit(area.value, &AREA, "ft2", 1),
            UnitSystem::Metric => in_unit(area.value, &AREA, "m2", 2),
        }
    }

    /// A volume to three significant digits, in the unit of a container of its size: fluid ounces
    /// below a quart, quarts below a gallon, gallons; millilitres below a litre, litres.
    pub fn volume(&self, volume: Volume) -> String {
        significant_in_unit(volume.value, &VOLUME, self.volume_unit(volume))
    }

    /// The unit that a volume of this size is written in.
    pub(super) fn volume_unit(&self, volume: Volume) -> &'static str {
        let litres = volume.value.abs() * 1e3;
        match self.system {
            UnitSystem::Metric if litres < 0.999_5 => "ml",
            UnitSystem::Metric => "l",
            UnitSystem::Imperial if litres < 0.946_35 => "fl oz",
            UnitSystem::Imperial if litres < 3.785_41 => "qt",
            UnitSystem::Imperial => "gal",
        }
    }

    /// A volume in this style and, in parentheses, in the other system: `1.06 gal (4.01 l)`.
    pub fn volume_both(&self, volume: Volume) -> String {
        let other = match self.system {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        };
        format!("{} ({})", self.volume(volume), Self::new(other).volume(volume))
    }

    /// A container as it is sold: `1 gal`, `2.5 l`. In this style where that is its plain size, else
    /// in the other system where it is plain there, as a can that was filled in the other system.
    pub fn container(&self, size: Volume) -> String {
        let own = self.volume(size);
        let other = match self.system {
            UnitSystem::Imperial => Self::new(UnitSystem::Metric).volume(size),
            UnitSystem::Metric => Self::new(UnitSystem::Imperial).volume(size),
        };
        let plain = |text: &str| {
            Measure::read(text, &VOLUME, None)
                .is_ok_and(|read| (read.si() - size.value).abs() <= 1e-6 * size.value.abs())
        };
        if !plain(&own) && plain(&other) { other } else { own }
    }

    /// A volume to have ready, for a list: the exact number and its unit, quarts or litres.
    pub fn poured(&self, volume: Volume) -> (f64, &'static str) {
        let unit = self.pick("qt", "l");
        (number_in(volume.value, &VOLUME, unit), unit)
    }

    /// A mass: `85.4 lb`, below a pound `6.5 oz`; `38.7 kg`, below a kilogram `185 g`.
    pub fn mass(&self, mass: Mass) -> String {
        let (unit, digits) = match self.system {
            UnitSystem::Imperial if mass.value.abs() < 0.45 => ("oz", 1),
            UnitSystem::Imperial => ("lb", 1),
            UnitSystem::Metric if mass.value.abs() < 0.999_5 => ("g", 0),
            UnitSystem::Metric => ("kg", 1),
        };
        in_unit(mass.value, &MASS, unit, digits)
    }

    /// A mass on a small scale, to three significant digits: `4.23 oz`, from a pound up `2.15 lb`;
    /// `47.3 g`, from a kilogram up `1.25 kg`.
    pub fn weighed(&self, mass: Mass) -> String {
        significant_in_unit(mass.value, &MASS, self.weighed_unit(mass))
    }

    /// The unit in which a small scale shows a mass of this size.
    pub(super) fn weighed_unit(&self, mass: Mass) -> &'static str {
        match self.system {
            UnitSystem::Imperial if mass.value.abs() < 0.453 => "oz",
            UnitSystem::Imperial => "lb",
            UnitSystem::Metric if mass.value.abs() < 0.999_5 => "g",
            UnitSystem::Metric => "kg",
        }
    }

    /// A temperature: `77 °F`, `25 °C`, to a tenth.
    pub fn temperature(&self, temperature: ThermodynamicTemperature) -> String {
        in_unit(temperature.value, &TEMPERATURE, self.pick("F", "C"), 1)
    }

    /// A difference of temperatures, given in kelvin: `5.4 °F`, `3 °C`.
    pub fn temperature_difference(&self, kelvin: f64) -> String {
        match self.system {
            UnitSystem::Imperial => amount(kelvin * 1.8, 1, in_print("F")),
            UnitSystem::Metric => amount(kelvin, 1, in_print("C")),
        }
    }

    /// A spread rate in m²/m³: `400 ft²/gal`, `9.82 m²/l`, to three significant digits.
    pub fn spread_rate(&self, square_metre_per_cubic_metre: f64) -> String {
        let unit = self.pick("ft2/gal", "m2/l");
        significant_in_unit(square_metre_per_cubic_metre, &SPREAD_RATE, unit)
    }

    /// A U value in W/(m² K): `0.156 Btu/(h ft² °F)`, `0.886 W/(m² K)`.
    pub fn u_value(&self, watt_per_square_metre_kelvin: f64) -> String {
        let unit = self.pick("Btu/(h ft2 F)", "W/m2/K");
        significant_in_unit(watt_per_square_metre_kelvin, &U_VALUE, unit)
    }

    /// A thermal resistance in m² K/W: `6.41 h ft² °F/Btu`, `1.13 m² K/W`.
    pub fn thermal_resistance(&self, square_metre_kelvin_per_watt: f64) -> String {
        let unit = self.pick("h ft2 F/Btu", "m2K/W");
        significant_in_unit(square_metre_kelvin_per_watt, &THERMAL_RESISTANCE, unit)
    }

    /// A conductivity in W/(m K): `0.236 Btu in/(h ft² °F)`, `0.034 W/(m K)`.
    pub fn conductivity(&self, watt_per_metre_kelvin: f64) -> String {
        let unit = self.pick("Btu in/(h ft2 F)", "W/m/K");
        significant_in_unit(watt_per_metre_kelvin, &CONDUCTIVITY, unit)
    }

    /// A flow of air in m³/s: `8.83 cfm`, `15 m³/h`, to three significant digits.
    pub fn air_flow(&self, cubic_metre_per_second: f64) -> String {
        significant_in_unit(cubic_metre_per_second, &FLOW, self.pick("cfm", "m3/h"))
    }

    /// A flow from a cup: `2 fl oz/min`, `60 ml/min`, to three significant digits.
    pub fn pouring(&self, flow: VolumeRate) -> String {
        let unit = self.pick("fl oz/min", "ml/min");
        significant_in_unit(flow.value, &FLOW, unit)
    }

    /// A flow of water: `2.11 gal/min`, `8 l/min`, in the unit of what flows in a minute.
    pub fn flow(&self, flow: VolumeRate) -> String {
        let mut text = self.volume(flow * Time::new::<minute>(1.0));
        text.push_str("/min");
        text
    }

    /// A flow of heat, in the unit that heaters are sold by: `6582 Btu/h`, `1929 W`.
    pub fn heat(&self, power: Power) -> String {
        in_unit(power.value, &POWER, self.pick("Btu/h", "W"), 0)
    }

    /// The unit that a bare number takes in a field of tape lengths.
    pub fn tape_unit(&self) -> &'static str {
        self.pick("in", "mm")
    }

    fn pick(&self, imperial: &'static str, metric: &'static str) -> &'static str {
        match self.system {
            UnitSystem::Imperial => imperial,
            UnitSystem::Metric => metric,
        }
    }

    /// Lines of the tape, of the right system whatever `rounding` says.
    pub(super) fn lines(&self) -> Rounding {
        if self.rounding.system() == self.system {
            self.rounding
        } else {
            Rounding::for_system(self.system)
        }
    }
}

/// `23 3/8 in`, from 2 ft up `7 ft 6 1/2 in`.
fn feet_and_inches(length: Length, rounding: Rounding) -> String {
    let parts = f64::from(rounding.parts());
    let Some(lines) = to_lines(length, rounding) else { return "?".to_owned() };
    if lines.abs() < 24.0 * parts {
        return inches(lines, parts) + " in";
    }
    let sign = if lines < 0.0 { "-" } else { "" };
    let feet = (lines.abs() / (12.0 * parts)).floor();
    let rest = lines.abs() - feet * 12.0 * parts;
    if rest == 0.0 {
        format!("{sign}{feet} ft")
    } else {
        format!("{sign}{feet} ft {} in", inches(rest, parts))
    }
}

fn in_unit(si: f64, dimension: &'static Dimension, symbol: &str, digits: usize) -> String {
    amount(number_in(si, dimension, symbol), digits, in_print(symbol))
}

fn significant_in_unit(si: f64, dimension: &'static Dimension, symbol: &str) -> String {
    significant(number_in(si, dimension, symbol), 3) + " " + in_print(symbol)
}

pub(super) fn number_in(si: f64, dimension: &'static Dimension, symbol: &str) -> f64 {
    dimension.unit(symbol).map_or(si, |unit| unit.from_si(si))
}

/// The unit as it is printed, where that is not how it is typed.
fn in_print(symbol: &str) -> &str {
    match symbol {
        "ft2" => "ft²",
        "m2" => "m²",
        "ft2/gal" => "ft²/gal",
        "m2/l" => "m²/l",
        "W/m/K" => "W/(m K)",
        "Btu in/(h ft2 F)" => "Btu in/(h ft² °F)",
        "W/m2/K" => "W/(m² K)",
        "Btu/(h ft2 F)" => "Btu/(h ft² °F)",
        "m2K/W" => "m² K/W",
        "h ft2 F/Btu" => "h ft² °F/Btu",
        "m3/h" => "m³/h",
        "um" => "µm",
        "C" => "°C",
        "F" => "°F",
        typed => typed,
    }
}

#[cfg(test)]
mod tests {
    use uom::si::length::millimeter;
    use uom::si::mass::gram;
    use uom::si::volume::{liter, milliliter};

    use super::*;

    const IMPERIAL: UnitSystem = UnitSystem::Imperial;
    const METRIC: UnitSystem = UnitSystem::Metric;

    #[test]
    fn containers_keep_the_size_on_their_label() {
        let both =
            |size: Volume| [IMPERIAL, METRIC].map(|system| Style::new(system).container(size));
        assert_eq!(both(Volume::new::<liter>(2.5)), ["2.5 l", "2.5 l"]);
        assert_eq!(both(Volume::new::<liter>(3.785_411_784)), ["1 gal", "1 gal"]);
        assert_eq!(both(Volume::new::<milliliter>(310.0)), ["310 ml", "310 ml"]);
        // Plain in neither: the style's own.
        assert_eq!(both(Volume::new::<liter>(1.234_56)), ["1.3 qt", "1.23 l"]);
    }

    #[test]
    fn short_lengths_never_vanish() {
        let metric = Style::new(METRIC);
        assert_eq!(metric.short(Length::new::<millimeter>(17.4)), "17 mm");
        assert_eq!(metric.short(Length::new::<millimeter>(0.3)), "0.3 mm");
        assert_eq!(metric.short(Length::new::<millimeter>(0.0)), "0 mm");
    }

    #[test]
    fn small_masses_and_poured_volumes() {
        let metric = Style::new(METRIC);
        assert_eq!(metric.weighed(Mass::new::<gram>(4.726)), "4.73 g");
        assert_eq!(Style::new(IMPERIAL).weighed(Mass::new::<gram>(28.349_523_125)), "1 oz");
        assert_eq!(metric.poured(Volume::new::<liter>(0.301)), (0.301, "l"));
    }
}
