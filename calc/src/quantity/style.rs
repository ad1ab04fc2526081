//! How sizes are written to people, in the units of the tool in their hand.

use uom::si::f64::{
    Area, Force, Length, Mass, Power, ThermodynamicTemperature, Time, Volume, VolumeRate,
};
use uom::si::force::{newton, pound_force};
use uom::si::length::{inch, millimeter};
use uom::si::time::minute;

use super::decimal::{amount, down, nearest, significant, up};
use super::dimension::{
    AREA, CONDUCTIVITY, FLOW, LENGTH, MASS, POWER, SPREAD_RATE, TEMPERATURE, THERMAL_RESISTANCE,
    U_VALUE, VOLUME,
};
use super::mark::{Marked, Rounding, UnitSystem, inches, mark, to_lines};
use super::measure::Measure;
use super::needed::{DIGITS, digits_after};
use super::unit::Dimension;
use crate::text::text;
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
    /// Whether figures keep all their digits, as in the working; else they are rounded to what the hand can
    /// read, weigh and keep.
    pub exact: bool,
}

impl Style {
    /// The usual style of a unit system.
    pub fn new(system: UnitSystem) -> Self {
        Self { system, rounding: Rounding::for_system(system), words: Words::ENGLISH, exact: false }
    }

    /// The style of a rounding, in the unit system that it belongs to.
    pub const fn rounded(rounding: Rounding) -> Self {
        Self { system: rounding.system(), rounding, words: Words::ENGLISH, exact: false }
    }

    /// The same with all digits: for the working, and where rounding would hide on which side of a limit a
    /// figure lies.
    #[must_use]
    pub const fn exact(self) -> Self {
        Self { exact: true, ..self }
    }

    /// The style in which the dew point and a surface are written side by side: exact where whole degrees would
    /// not show which is colder.
    #[must_use]
    pub fn of_dew(self, dew: ThermodynamicTemperature, surface: ThermodynamicTemperature) -> Self {
        if self.temperature(dew) == self.temperature(surface) { self.exact() } else { self }
    }

    /// The mark for a length on the tape: total inches `90 1/2 in`, or `2299 mm`.
    pub fn mark(&self, length: Length) -> Marked {
        let mut marked = mark(length, self.lines());
        marked.text = self.figure(marked.text);
        marked
    }

    /// A size to say aloud: `23 3/8 in`, from 2 ft up `7 ft 6 1/2 in`; `2299 mm`, from 10 m up
    /// `12.35 m`. Rounded like a mark.
    pub fn length(&self, length: Length) -> String {
        match self.system {
            UnitSystem::Imperial => feet_and_inches(length, self.lines()),
            UnitSystem::Metric if length.value.abs() < 10.0 => self.mark(length).text,
            UnitSystem::Metric => self.amount(length.value, 2, "m"),
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
            UnitSystem::Metric => self.in_unit(length.value, &LENGTH, "mm", 1),
        }
    }

    /// A long run of wire or boards: whole inches `32 ft 6 in`, or `9.9 m`.
    pub fn run(&self, length: Length) -> String {
        match self.system {
            UnitSystem::Metric => self.amount(length.value, 1, "m"),
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
            UnitSystem::Imperial => self.in_unit(length.value, &LENGTH, "in", 3),
            UnitSystem::Metric => self.in_unit(length.value, &LENGTH, "mm", 2),
        }
    }

    /// A length that may not be exceeded, as it is marked: never rounded up.
    pub fn at_most(&self, length: Length) -> String {
        let step = self.lines().step();
        self.mark(step * ((length / step).value + 1e-6).floor()).text
    }

    /// A drill as it is sold: `11/64 in`, or `4.4 mm`.
    pub fn drill(&self, diameter: Length) -> String {
        if self.system == UnitSystem::Metric {
            return self.figure(text!("{} mm", significant(diameter.get::<millimeter>(), 2)));
        }
        let whole = mark(diameter, Rounding::ThirtySecond);
        if whole.left_over().is_none() {
            return whole.text;
        }
        let (mut parts, mut of) = ((diameter.get::<inch>() * 64.0).round(), 64.0);
        while parts > 1.0 && parts % 2.0 == 0.0 && of > 1.0 {
            (parts, of) = (parts / 2.0, of / 2.0);
        }
        text!("{}/{} in", &parts, &of)
    }

    /// A force that something holds: `92 lb`, `412 N`; below 10 to a tenth. Rounded down, never to more than it
    /// holds. Exact: to three significant digits.
    pub fn force(&self, force: Force) -> String {
        let (value, unit) = match self.system {
            UnitSystem::Imperial => (force.get::<pound_force>(), "lb"),
            UnitSystem::Metric => (force.get::<newton>(), "N"),
        };
        if self.exact {
            return self.figure(significant(value, 3) + " " + unit);
        }
        let digits = usize::from(value < 10.0);
        self.amount(down(value, digits), digits, unit)
    }

    /// A film: `4.01 mil` or `102 µm`, to three significant digits.
    pub fn film(&self, thickness: Length) -> String {
        let unit = self.pick("mil", "um");
        self.significant_in_unit(thickness.value, &LENGTH, unit)
    }

    /// An area: `121.5 ft²`, `11.29 m²`.
    pub fn area(&self, area: Area) -> String {
        match self.system {
            UnitSystem::Imperial => self.in_unit(area.value, &AREA, "ft2", 1),
            UnitSystem::Metric => self.in_unit(area.value, &AREA, "m2", 2),
        }
    }

    /// A volume as it is read off a vessel, in the unit of a container of its size: fluid ounces below a quart,
    /// quarts below a gallon, gallons; millilitres below a litre, litres. Exact: to three significant digits.
    pub fn volume(&self, volume: Volume) -> String {
        let unit = self.volume_unit(volume);
        let number = number_in(volume.value, &VOLUME, unit);
        if self.exact {
            return self.significant_in_unit(volume.value, &VOLUME, unit);
        }
        self.amount(number, self.digits_read(number, unit), unit)
    }

    /// Digits after the point that a cup, a can or a scale shows: whole millilitres and grams from 10 up, tenths of
    /// an ounce, a quart, a gallon and a litre, hundredths of a pound and a kilogram. Below one, two digits are
    /// kept, or sixty small holes would take more than they do. Exact: three digits in all.
    pub(super) fn digits_read(&self, number: f64, unit: &str) -> usize {
        let shown = match unit {
            _ if self.exact => usize::MAX,
            _ if number.abs() < 1.0 => digits_after(number.abs(), 2),
            "ml" | "g" if number.abs() >= 10.0 => 0,
            "lb" | "kg" => 2,
            _ => 1,
        };
        shown.min(digits_after(number.abs(), DIGITS))
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
        format!(
            "{} ({})",
            self.volume(volume),
            Self { words: self.words, exact: self.exact, ..Self::new(other) }.volume(volume)
        )
    }

    /// A container as it is sold: `1 gal`, `2.5 l`. In this style where that is its plain size, else
    /// in the other system where it is plain there, as a can that was filled in the other system.
    pub fn container(&self, size: Volume) -> String {
        // In the way that labels are read, whatever the language writes.
        let english = self.english().exact();
        let own = english.volume(size);
        let other = Self::new(match self.system {
            UnitSystem::Imperial => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Imperial,
        });
        let other = other.exact().volume(size);
        let plain = |text: &str| {
            Measure::read(text, &VOLUME, None)
                .is_ok_and(|read| (read.si() - size.value).abs() <= 1e-6 * size.value.abs())
        };
        self.figure(if !plain(&own) && plain(&other) { other } else { own })
    }

    /// A volume to have ready, for a list: the exact number and its unit, quarts or litres.
    pub fn poured(&self, volume: Volume) -> (f64, &'static str) {
        let unit = self.pick("qt", "l");
        (number_in(volume.value, &VOLUME, unit), unit)
    }

    /// A mass: `85 lb`, below 10 lb `8.5 lb`, below a pound `6.5 oz`; `39 kg`, below 5 kg `3.9 kg`, below a
    /// kilogram `185 g`. Exact: to a tenth.
    pub fn mass(&self, mass: Mass) -> String {
        self.mass_rounded(mass, nearest)
    }

    /// A mass that may not be exceeded, or is left to it: never rounded up.
    pub fn mass_at_most(&self, mass: Mass) -> String {
        self.mass_rounded(mass, down)
    }

    /// A mass that is too much: never rounded down.
    pub fn mass_at_least(&self, mass: Mass) -> String {
        self.mass_rounded(mass, up)
    }

    /// The style in which a load and its limit are written side by side: exact where whole figures would not show
    /// whether the load is within it.
    #[must_use]
    pub fn of_load(self, load: Mass, limit: Mass) -> Self {
        let [load_in, limit_in] = [load, limit].map(|mass| {
            let (unit, digits) = self.mass_unit(mass);
            (number_in(mass.value, &MASS, unit), digits)
        });
        let written_over = nearest(load_in.0, load_in.1) > down(limit_in.0, limit_in.1);
        if written_over == (load > limit) { self } else { self.exact() }
    }

    fn mass_rounded(&self, mass: Mass, round: fn(f64, usize) -> f64) -> String {
        let (unit, digits) = self.mass_unit(mass);
        self.amount(round(number_in(mass.value, &MASS, unit), digits), digits, unit)
    }

    fn mass_unit(&self, mass: Mass) -> (&'static str, usize) {
        let (pounds, kilograms) = (mass.value.abs() / 0.453_592_37, mass.value.abs());
        match self.system {
            UnitSystem::Imperial if kilograms < 0.45 => ("oz", 1),
            UnitSystem::Imperial => ("lb", usize::from(self.exact || pounds < 10.0)),
            UnitSystem::Metric if kilograms < 0.999_5 => ("g", 0),
            UnitSystem::Metric => ("kg", usize::from(self.exact || kilograms < 5.0)),
        }
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

    /// A temperature, whole: `77 °F`, `25 °C`. Exact: to a tenth.
    pub fn temperature(&self, temperature: ThermodynamicTemperature) -> String {
        let digits = usize::from(self.exact);
        self.in_unit(temperature.value, &TEMPERATURE, self.pick("F", "C"), digits)
    }

    /// A temperature that was typed: to a tenth, as it was typed; where it was typed in the other unit, which is
    /// where it is whole there, whole in this one too, rounded in the way given.
    pub fn typed_temperature(
        &self,
        temperature: ThermodynamicTemperature,
        round: fn(f64, usize) -> f64,
    ) -> String {
        let (unit, other) = (self.pick("F", "C"), self.pick("C", "F"));
        let [own, other] =
            [unit, other].map(|unit| number_in(temperature.value, &TEMPERATURE, unit));
        let digits = usize::from(self.exact || (other - nearest(other, 0)).abs() > 1e-6);
        self.amount(round(own, digits), digits, in_print(unit))
    }

    /// A difference of temperatures, given in kelvin: `5.4 °F`, `3 °C`; from 10 degrees up whole. Rounded down: what
    /// a surface is above the dew point is never made more.
    pub fn temperature_difference(&self, kelvin: f64) -> String {
        let (degrees, unit) = match self.system {
            UnitSystem::Imperial => (kelvin * 1.8, "F"),
            UnitSystem::Metric => (kelvin, "C"),
        };
        let digits = usize::from(self.exact || degrees.abs() < 10.0);
        let shown = if self.exact { degrees } else { down(degrees, digits) };
        self.amount(shown, digits, in_print(unit))
    }

    /// A spread rate in m²/m³: `400 ft²/gal`, `9.82 m²/l`, to three significant digits.
    pub fn spread_rate(&self, square_metre_per_cubic_metre: f64) -> String {
        let unit = self.pick("ft2/gal", "m2/l");
        self.significant_in_unit(square_metre_per_cubic_metre, &SPREAD_RATE, unit)
    }

    /// A U value in W/(m² K): `0.156 Btu/(h ft² °F)`, `0.886 W/(m² K)`.
    pub fn u_value(&self, watt_per_square_metre_kelvin: f64) -> String {
        let unit = self.pick("Btu/(h ft2 F)", "W/m2/K");
        self.significant_in_unit(watt_per_square_metre_kelvin, &U_VALUE, unit)
    }

    /// A thermal resistance in m² K/W: `6.41 h ft² °F/Btu`, `1.13 m² K/W`.
    pub fn thermal_resistance(&self, square_metre_kelvin_per_watt: f64) -> String {
        let unit = self.pick("h ft2 F/Btu", "m2K/W");
        self.significant_in_unit(square_metre_kelvin_per_watt, &THERMAL_RESISTANCE, unit)
    }

    /// A conductivity in W/(m K): `0.236 Btu in/(h ft² °F)`, `0.034 W/(m K)`.
    pub fn conductivity(&self, watt_per_metre_kelvin: f64) -> String {
        let unit = self.pick("Btu in/(h ft2 F)", "W/m/K");
        self.significant_in_unit(watt_per_metre_kelvin, &CONDUCTIVITY, unit)
    }

    /// A flow of air in m³/s: `8.83 cfm`, `15 m³/h`, to three significant digits.
    pub fn air_flow(&self, cubic_metre_per_second: f64) -> String {
        self.significant_in_unit(cubic_metre_per_second, &FLOW, self.pick("cfm", "m3/h"))
    }

    /// A flow from a cup: `2 fl oz/min`, `60 ml/min`, to three significant digits.
    pub fn pouring(&self, flow: VolumeRate) -> String {
        let unit = self.pick("fl oz/min", "ml/min");
        self.significant_in_unit(flow.value, &FLOW, unit)
    }

    /// A flow of water: `2.11 gal/min`, `8 l/min`, in the unit of what flows in a minute.
    pub fn flow(&self, flow: VolumeRate) -> String {
        let mut text = self.volume(flow * Time::new::<minute>(1.0));
        text.push_str("/min");
        text
    }

    /// A flow of heat, in the unit that heaters are sold by: `6582 Btu/h`, `1929 W`.
    pub fn heat(&self, power: Power) -> String {
        self.in_unit(power.value, &POWER, self.pick("Btu/h", "W"), 0)
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

    /// A figure as the language writes it: with its decimal sign.
    pub fn figure(&self, text: String) -> String {
        self.words.figure(text)
    }

    fn amount(&self, value: f64, digits: usize, unit: &str) -> String {
        self.figure(amount(value, digits, unit))
    }

    fn in_unit(
        &self,
        si: f64,
        dimension: &'static Dimension,
        symbol: &str,
        digits: usize,
    ) -> String {
        self.amount(number_in(si, dimension, symbol), digits, in_print(symbol))
    }

    fn significant_in_unit(&self, si: f64, dimension: &'static Dimension, symbol: &str) -> String {
        self.figure(significant(number_in(si, dimension, symbol), 3) + " " + in_print(symbol))
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
        assert_eq!(metric.mass(Mass::new::<gram>(184.6)), "185 g");
        assert_eq!(Style::new(IMPERIAL).mass(Mass::new::<gram>(28.349_523_125)), "1 oz");
        assert_eq!(metric.poured(Volume::new::<liter>(0.301)), (0.301, "l"));
    }
}
