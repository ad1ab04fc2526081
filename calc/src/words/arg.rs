//! A message as data: its id, and the values it is filled with.

use std::fmt;

use uom::si::angle::degree;
use uom::si::electric_charge::ampere_hour;
use uom::si::energy::watt_hour;
use uom::si::f64::{
    Angle, Area, ElectricCharge, ElectricCurrent, ElectricPotential, Energy, Force, HeatTransfer,
    Length, Mass, MassDensity, Power, Pressure, Ratio, ReciprocalLength, ThermalConductivity,
    ThermodynamicTemperature, Time, Volume, VolumeRate,
};
use uom::si::ratio::percent as percent_unit;
use uom::si::time::{hour, minute};

use uom::si::mass::gram;
use uom::si::pressure::megapascal;
use uom::si::volume::milliliter;

use super::{Id, common};
use crate::light::photometry::LUX_PER_FOOT_CANDLE;
use crate::quantity::{
    Style, UnitSystem, amount, down, electric, minutes_down, minutes_up, money, nearest, percent,
    plain, significant, span, up,
};
use crate::reader::Quantity;
use crate::source::Source;
use crate::thermal::heat_loss::btu_per_hour;

/// A message with what it is filled with.
#[derive(Clone, Debug)]
pub struct Msg {
    pub(super) id: Id,
    pub(super) filled: Vec<Arg>,
}

/// What a message is filled with: a value, put into words only where it is shown.
#[derive(Clone, Debug)]
pub enum Arg {
    /// As it stands: a name that somebody typed, a figure, a word to choose a text by.
    As(String),
    /// A count, which also chooses between singular and plural.
    Count(u64),
    /// A quantity in its SI unit, and how it is written.
    Quantity(f64, fn(&Style, f64) -> String),
    /// Several, joined as the language joins them.
    Each(Vec<Arg>),
    /// Another message.
    Message(Msg),
    /// Who is cited.
    Cited(&'static Source),
}

impl Msg {
    /// A message and what it is filled with, in the order in which the first language names it.
    #[inline(never)]
    pub(super) fn filled(id: Id, filled: Vec<Arg>) -> Self {
        Self { id, filled }
    }
}

/// In English: for tests and scripts.
impl fmt::Display for Msg {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Style::new(UnitSystem::Metric).say(self.clone()))
    }
}

impl From<Id> for Msg {
    fn from(id: Id) -> Self {
        Self { id, filled: Vec::new() }
    }
}

/// Ways to write a quantity, each by the method of `Style` that does it.
macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident($of:ty): $style:ident, $value:ident => $text:expr;)+) => {
        impl Arg {
            $(
                $(#[$doc])*
                pub fn $name(of: $of) -> Self {
                    Self::Quantity(of.value, |$style, si| {
                        let $value = <$of>::from_si(si);
                        $text
                    })
                }
            )+
        }
    };
}

quantities! {
    /// A length to say aloud: from 2 ft up in feet and inches.
    length(Length): style, length => style.length(length);
    /// A length as it is marked on a piece: rounded to a line of the tape.
    mark(Length): style, length => style.mark(length).text;
    /// How far off something may be: finer than a mark.
    error(Length): style, length => style.error(length);
    /// A short length as it is read off a tape.
    short(Length): style, length => style.short(length);
    /// A length that no tape shows.
    small(Length): style, length => style.small(length);
    /// A length in a sum that is to be seen to add up: finer than the tape where that is metric.
    fine(Length): style, length => match style.system {
        UnitSystem::Metric => style.small(length),
        UnitSystem::Imperial => style.short(length),
    };
    /// What is paid out from a roll: wire, pipe.
    run(Length): style, length => style.run(length);
    /// An area.
    area(Area): style, area => style.area(area);
    /// A volume.
    volume(Volume): style, volume => style.volume(volume);
    /// A volume that is needed: rounded up.
    volume_needed(Volume): style, volume => style.volume_needed(volume);
    /// The same in both systems: `1.06 gal (4.01 l)`.
    volume_needed_both(Volume): style, volume => style.volume_needed_both(volume);
    /// A container as it is sold.
    container(Volume): style, size => style.container(size);
    /// A mass in whole grams.
    grams(Mass): _style, mass => amount(mass.get::<gram>(), 0, "g");
    /// A mass in grams, to a tenth.
    tenth_grams(Mass): _style, mass => amount(mass.get::<gram>(), 1, "g");
    /// A volume in whole milliliters.
    milliliters(Volume): _style, volume => amount(volume.get::<milliliter>(), 0, "ml");
    /// A density in kg/l.
    density(MassDensity): _style, density => amount(density.value / 1e3, 3, "kg/l");
    /// A film of a coat.
    film(Length): style, thickness => style.film(thickness);
    /// How far a volume goes.
    spread_rate(ReciprocalLength): style, rate => style.spread_rate(rate.value);
    /// A flow from a cup.
    pouring(VolumeRate): style, flow => style.pouring(flow);
    /// How long a mix stays workable: `25 min`, `2 h 30 min`. Rounded down: too late, and it sets in the cup.
    pot_life(Time): style, time => {
        let minutes = time.get::<minute>();
        match style.exact {
            true => typed_life(minutes),
            false => span(minutes_down(minutes)),
        }
    };
    /// The same as a label has it.
    label_life(Time): _style, time => typed_life(time.get::<minute>());
    /// Minutes to two digits: `15 min`.
    rough_minutes(Time): _style, time => significant(time.get::<minute>(), 2) + " min";
    /// A share of one, in percent to a tenth.
    ratio(Ratio): _style, share => percent(share.get::<percent_unit>());
    /// A mass.
    mass(Mass): style, mass => style.mass(mass);
    /// A mass that may not be exceeded, or is left to it.
    mass_at_most(Mass): style, mass => style.mass_at_most(mass);
    /// A mass that is too much.
    mass_at_least(Mass): style, mass => style.mass_at_least(mass);
    /// A conductivity.
    conductivity(ThermalConductivity): style, conductivity => style.conductivity(conductivity.value);
    /// A hole as a drill is sold for it.
    drill(Length): style, diameter => style.drill(diameter);
    /// A length that may not be exceeded: never rounded up.
    at_most(Length): style, length => style.at_most(length);
    /// The square of a length that no tape shows: `(0.25 in)²`.
    small_squared(Length): style, length => format!("({})²", style.small(length));
    /// A force.
    force(Force): style, force => style.force(force);
    /// A strength.
    megapascals(Pressure): _style, strength => amount(strength.get::<megapascal>(), 0, "MPa");
    /// A pressure, in whole pascals.
    pressure(Pressure): _style, pressure => amount(pressure.value, 0, "Pa");
    /// An angle in degrees.
    degrees(Angle): _style, angle => plain(angle.get::<degree>(), 2) + "°";
    /// A beam angle in degrees.
    beam(Angle): _style, angle => plain(angle.get::<degree>(), 1) + "°";
    /// The square of a distance, which with lux is always in meters: `(1.08 m)²`.
    squared(Length): _style, distance => format!("({})²", amount(distance.value, 3, "m"));
    /// A power, in whole watts.
    watts(Power): _style, power => amount(power.value, 0, "W");
    /// An energy, in whole watt hours.
    watt_hours(Energy): _style, energy => amount(energy.get::<watt_hour>(), 0, "Wh");
    /// An energy: below 100 Wh to a tenth, above in whole watt hours.
    day_energy(Energy): _style, energy => {
        let wh = energy.get::<watt_hour>();
        amount(wh, if wh < 100.0 { 1 } else { 0 }, "Wh")
    };
    /// A charge to a tenth.
    ampere_hours(ElectricCharge): _style, charge => amount(charge.get::<ampere_hour>(), 1, "Ah");
    /// A power to hundredths, as a label has it.
    exact_watts(Power): _style, power => amount(power.value, 2, "W");
    /// A time in hours, to hundredths.
    exact_hours(Time): _style, time => amount(time.get::<hour>(), 2, "h");
    /// A time in hours, to tenths.
    tenth_hours(Time): _style, time => amount(time.get::<hour>(), 1, "h");
    /// A current to three digits, as wire and fuse are chosen by.
    amperes(ElectricCurrent): _style, current => significant(current.value, 3) + " A";
    /// A current to tenths.
    tenth_amperes(ElectricCurrent): _style, current => amount(current.value, 1, "A");
    /// An energy to four digits.
    rough_energy(Energy): _style, energy => significant(energy.get::<watt_hour>(), 4) + " Wh";
    /// A current to hundredths.
    exact_amperes(ElectricCurrent): _style, current => amount(current.value, 2, "A");
    /// A voltage, as a meter shows it.
    volts(ElectricPotential): _style, voltage => electric::volts(voltage.value);
    /// A voltage that must be borne: never rounded down.
    volts_borne(ElectricPotential): _style, voltage => electric::volts(up(voltage.value, 2));
    /// A temperature as it stands behind a minus sign.
    temperature_in_sum(ThermodynamicTemperature): style, temperature => {
        let text = style.temperature(temperature);
        if text.starts_with('-') { format!("({text})") } else { text }
    };
    /// A temperature.
    temperature(ThermodynamicTemperature): style, temperature => style.temperature(temperature);
    /// A temperature that was typed.
    typed_temperature(ThermodynamicTemperature): style, typed => style.typed_temperature(typed, nearest);
    /// The coldest that a label allows: never rounded down.
    coldest(ThermodynamicTemperature): style, typed => style.typed_temperature(typed, up);
    /// The warmest that a label allows: never rounded up.
    warmest(ThermodynamicTemperature): style, typed => style.typed_temperature(typed, down);
    /// A flow of water, as volume a minute.
    flow(VolumeRate): style, flow => style.flow(flow);
    /// A flow of heat, in the unit that heaters are sold by.
    heat(Power): style, power => style.heat(power);
    /// A flow of heat in Btu an hour.
    btu(Power): _style, power => amount(btu_per_hour(power), 0, "Btu/h");
    /// A U value.
    u_value(HeatTransfer): style, u => style.u_value(u.value);
    /// A flow of air.
    air_flow(VolumeRate): style, flow => style.air_flow(flow.value);
}

/// As `quantities`, for plain numbers in their SI unit.
macro_rules! numbers {
    ($($(#[$doc:meta])* $name:ident: $style:ident, $value:ident => $text:expr;)+) => {
        impl Arg {
            $(
                $(#[$doc])*
                pub fn $name(of: f64) -> Self {
                    Self::Quantity(of, |$style, $value| $text)
                }
            )+
        }
    };
}

numbers! {
    /// A thermal resistance, m² K/W.
    resistance: style, resistance => style.thermal_resistance(resistance);
    /// A thermal transmittance (U value), W/(m² K).
    transmittance: style, u => style.u_value(u);
    /// Radiation of a day, MJ/m².
    megajoules: _style, radiation => amount(radiation, 2, "MJ/m²");
    /// A current to hundredths, A.
    amperes_to_hundredths: _style, amperes => amount(amperes, 2, "A");
    /// A percentage as it stands in a product.
    percent_of: _style, percent => format!("({} %)", plain(percent, 3));
    /// A plain number to three digits after the point.
    factor: _style, factor => plain(factor, 3);
    /// A small factor to five digits after the point.
    coefficient: _style, coefficient => plain(coefficient, 5);
    /// A plain number, to a tenth.
    tenths: _style, number => plain(number, 1);
    /// A plain number, to a hundredth.
    hundredths: _style, number => plain(number, 2);
    /// A share of one, in percent to a tenth.
    share: _style, share => percent(share * 100.0);
    /// A percentage, to a tenth.
    percent: _style, of => percent(of);
    /// A difference of temperatures. [K]
    kelvin: style, kelvin => style.temperature_difference(kelvin);
    /// What a cubic metre of air carries. [Wh/(m³ K)]
    air_heat: _style, heat => amount(heat, 3, "Wh/(m³ K)");
    /// The sun on a surface. [W/m²]
    radiation: _style, sun => amount(sun, 0, "W/m²");
    /// Minutes, to a hundredth.
    minutes: _style, minutes => amount(minutes, 2, "min");
    /// Whole minutes: `90 min`.
    minutes_of_work: _style, minutes => amount(minutes, 0, "min");
    /// Minutes that something is off: from an hour up to 5, never fewer than they are.
    minutes_off: _style, minutes => amount(minutes_up(minutes), 0, "min");
    /// A price, as it is written in any currency.
    price: _style, price => money(price);
    /// A density in kg/l.
    kilograms_per_liter: _style, density => amount(density, 3, "kg/l");
    /// What a lamp gives, in lumens.
    lumens: _style, lumens => amount(lumens, 0, "lm");
    /// An intensity in candelas.
    candelas: _style, candelas => amount(candelas, 1, "cd");
    /// An illuminance in lux.
    lux: _style, lux => amount(lux, 0, "lx");
    /// An illuminance in lux, and where they are used in foot-candles: `134 lx (12.5 fc)`.
    illuminance: style, lux => {
        let written = amount(lux, 0, "lx");
        match style.system {
            UnitSystem::Metric => written,
            UnitSystem::Imperial => {
                let foot_candles = amount(lux / LUX_PER_FOOT_CANDLE, 1, "fc");
                format!("{written} ({foot_candles})")
            }
        }
    };
    /// A voltage in volts, to four digits.
    four_volts: _style, volts => significant(volts, 4) + " V";
    /// A voltage lost on the way, to three digits.
    lost_volts: _style, volts => significant(volts, 3) + " V";
    /// A current in amperes, to three digits.
    three_amperes: _style, amperes => electric::amperes(amperes);
    /// A power in watts, to three digits.
    three_watts: _style, watts => electric::watts(watts);
    /// A resistance in ohm.
    ohms: _style, ohm => electric::ohms(ohm);
    /// A temperature in °C, to a tenth.
    celsius: _style, celsius => amount(celsius, 1, "°C");
    /// A resistance by length. [ohm/m]
    ohms_per_length: style, ohm => style.ohms_per_length(ohm);
    /// A share of one as a voltage drop in percent.
    drop_share: _style, share => electric::drop_percent(share * 100.0);
    /// A share of one as the limit of a voltage drop in percent.
    limit_share: _style, share => electric::limit(share * 100.0);
    /// A length of wire in meters.
    run_meters: style, meters => style.run(Length::from_si(meters));
    /// A length of wire that may not be exceeded, in meters.
    run_at_most: style, meters => style.run_at_most(meters);
    /// The power of a lamp in watts, to a tenth.
    lamp_watts: _style, watts => amount(watts, 1, "W");
}

fn typed_life(minutes: f64) -> String {
    match minutes < 120.0 {
        true => significant(minutes, 2) + " min",
        false => amount(minutes / 60.0, 1, "h"),
    }
}

impl Arg {
    /// A stretch of time: in hours, from two days on in days.
    pub fn spell(time: Time) -> Self {
        let hours = time.get::<hour>();
        if hours < 48.0 {
            Self::Quantity(hours, |_, hours| amount(hours, 1, "h"))
        } else {
            Self::Message(common::Days { days: Self::tenths(hours / 24.0) }.into())
        }
    }

    /// Days, to a hundredth.
    pub fn days(days: f64) -> Self {
        Self::Message(common::Days { days: Self::hundredths(days) }.into())
    }

    /// A count.
    pub fn count(of: u32) -> Self {
        Self::Count(of.into())
    }

    /// Values in order: `1, 2 and 3`.
    pub fn each<T: Into<Self>>(of: impl IntoIterator<Item = T>) -> Self {
        Self::Each(of.into_iter().map(Into::into).collect())
    }
}

impl From<Length> for Arg {
    fn from(length: Length) -> Self {
        Self::length(length)
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Self {
        Self::As(text)
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Self::As(text.to_owned())
    }
}

impl From<usize> for Arg {
    fn from(count: usize) -> Self {
        Self::Count(count as u64)
    }
}

impl From<u32> for Arg {
    fn from(count: u32) -> Self {
        Self::Count(count.into())
    }
}

impl From<&'static Source> for Arg {
    fn from(source: &'static Source) -> Self {
        Self::Cited(source)
    }
}

impl From<Msg> for Arg {
    fn from(message: Msg) -> Self {
        Self::Message(message)
    }
}

impl From<Id> for Arg {
    fn from(id: Id) -> Self {
        Self::Message(id.into())
    }
}
