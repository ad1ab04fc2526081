//! What the wiring sheets share: inputs on the source and on how the wire lies, figures in print, steps, list lines.

pub(super) mod cautions;
mod lines;
mod remarks;
mod steps;

pub use lines::{
    buy_wire_and_lugs, fuse_id, fuse_line, fuse_spec, lug_line, stud_id, wire_id, wire_line,
    wire_name,
};
pub use remarks::general_remarks;
pub use steps::{ampacity_steps, fuse_steps, resistance_steps};

use calc_derive::{Choice, Inputs};
use uom::si::f64::{ElectricPotential, ThermodynamicTemperature};
use uom::si::length::meter;

use crate::electrical::ampacity::{Conditions, Insulation, TABLE_AMBIENT_C};
use crate::electrical::charging::{GREATEST_CHARGING_V, GREATEST_NOMINAL_V, highest_v};
use crate::electrical::wanted::Wanted;
pub use crate::quantity::electric::{
    amperes, drop_beside, drop_percent as percent, drop_volts, limit, ohms, volts, watts,
};
use crate::quantity::{Length, Style, amount};
use crate::reader::Reader;
use crate::source::Source;
use crate::words::{Msg, wiring as words};

/// What is asked of a source.
#[derive(Inputs)]
#[words(wiring)]
pub struct SupplyInputs {
    #[ask(units("V", "V"), range(0.1, 1000.0), usual("12.8 V", "12.8 V"))]
    source_voltage: ElectricPotential,
    #[ask(units("V", "V"), range(0.1, 1000.0), usual("10.5 V", "10.5 V"))]
    low_voltage: Option<ElectricPotential>,
    #[ask(units("V", "V"), range(0.1, 1000.0), usual("14.6 V", "14.6 V"))]
    charging_voltage: Option<ElectricPotential>,
}

/// What is asked of how wire lies.
#[derive(Inputs)]
#[words(wiring)]
pub struct LaidInputs {
    #[ask(choice, default("60 C"))]
    insulation: Rating,
    #[ask(range(1, 1000), usual("2", "2"))]
    bundled: Option<u32>,
    #[ask(usually(false))]
    in_jacket: bool,
    #[ask(usually(false))]
    in_insulation: bool,
    #[ask(units("F", "C"), range(223.15, 473.15), default("30 C"), usual("86 F", "30 C"))]
    conductor_temperature: ThermodynamicTemperature,
    #[ask(units("F", "C"), range(223.15, 373.15), usual("104 F", "40 C"))]
    air_temperature: Option<ThermodynamicTemperature>,
}

/// What is printed on the jacket.
#[derive(Clone, Copy, Choice)]
#[words(wiring)]
pub enum Rating {
    #[key("60 C")]
    C60,
    #[key("75 C")]
    C75,
    #[key("80 C")]
    C80,
    #[key("90 C")]
    C90,
    #[key("105 C")]
    C105,
    #[key("125 C")]
    C125,
    #[key("200 C")]
    C200,
}

impl From<Rating> for Insulation {
    fn from(rating: Rating) -> Self {
        match rating {
            Rating::C60 => Self::C60,
            Rating::C75 => Self::C75,
            Rating::C80 => Self::C80,
            Rating::C90 => Self::C90,
            Rating::C105 => Self::C105,
            Rating::C125 => Self::C125,
            Rating::C200 => Self::C200,
        }
    }
}

/// Reads a conductor or `auto`.
///
/// # Errors
/// What is wrong with the text.
pub fn wanted(text: &str) -> Result<Wanted, Msg> {
    text.parse().map_err(|error| words::OrAuto { problem: Msg::from(&error) }.into())
}

/// How the wire lies, and how warm its copper is. [C]
pub fn read_conditions(reader: &Reader<'_>) -> (Conditions, f64) {
    let laid = LaidInputs::read(reader);
    let insulation = Insulation::from(laid.insulation);
    let air_c = laid.air_temperature.map(|air| celsius(air.value));
    let copper_c = celsius(laid.conductor_temperature.value);
    let given = reader.given(LaidInputs::CONDUCTOR_TEMPERATURE);
    if let Some(air_c) = air_c {
        if air_c >= insulation.rating_c() {
            let rating = degrees(insulation.rating_c());
            reader.tell(LaidInputs::AIR_TEMPERATURE, words::AirTooHot { rating });
        }
        if given && copper_c < air_c {
            reader.tell(LaidInputs::CONDUCTOR_TEMPERATURE, words::COPPER_TOO_COOL);
        }
    }
    let ambient_c = air_c.unwrap_or(TABLE_AMBIENT_C);
    let copper_c = if given { copper_c } else { copper_c.max(air_c.unwrap_or(copper_c)) };
    let conditions = Conditions {
        insulation,
        bundled: laid.bundled.unwrap_or(2),
        ambient_c,
        in_insulation: laid.in_insulation,
        in_jacket: laid.in_jacket,
    };
    (conditions, copper_c)
}

/// The voltages of a source.
pub struct Supply {
    /// As measured or nominal. [V]
    pub source_v: f64,
    /// The lowest, where it was given. [V]
    pub low_v: Option<f64>,
    /// The highest that stands on fuse and holder. [V]
    pub highest_v: f64,
    /// Where the highest comes from.
    pub highest_source: &'static Source,
}

/// Reads the voltages of a source; from 50 V on is a fault, save a 48 V battery's own charging.
pub fn read_supply(reader: &Reader<'_>) -> Supply {
    let inputs = SupplyInputs::read(reader);
    let source_v = inputs.source_voltage.value;
    let low_v = inputs.low_voltage.map(|low| low.value);
    let charging_v = inputs.charging_voltage.map(|charging| charging.value);
    if reader.given(SupplyInputs::SOURCE_VOLTAGE) {
        if source_v > GREATEST_NOMINAL_V * (1.0 + 1e-9) {
            reader.tell(
                SupplyInputs::SOURCE_VOLTAGE,
                words::NotLowVoltage { most: volts(GREATEST_NOMINAL_V) },
            );
        }
        if low_v.is_some_and(|low| low > source_v) {
            reader.tell(SupplyInputs::LOW_VOLTAGE, words::LOW_ABOVE_SOURCE);
        }
        if charging_v.is_some_and(|charging| charging < source_v * (1.0 - 1e-9)) {
            reader.tell(SupplyInputs::CHARGING_VOLTAGE, words::CHARGING_BELOW_SOURCE);
        }
    }
    if charging_v.is_some_and(|charging| charging > GREATEST_CHARGING_V * (1.0 + 1e-9)) {
        reader.tell(
            SupplyInputs::CHARGING_VOLTAGE,
            words::ChargedTooHigh { most: volts(GREATEST_CHARGING_V) },
        );
    }
    let (highest_v, highest_source) = highest_v(source_v, charging_v);
    Supply { source_v, low_v, highest_v, highest_source }
}

/// Kelvin to degrees Celsius, free of the rounding that the offset leaves behind.
fn celsius(kelvin: f64) -> f64 {
    ((kelvin - 273.15) * 1e9).round() / 1e9
}

/// A length of wire.
pub fn run_length(metres: f64, style: Style) -> String {
    style.run(Length::new::<meter>(metres))
}

/// A whole temperature: `105 °C`.
pub fn degrees(c: f64) -> String {
    amount(c, 0, "°C")
}

/// A rating of a fuse: `7.5 A`.
pub fn rating(a: f64) -> String {
    amount(a, 1, "A")
}
