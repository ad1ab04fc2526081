//! The dimensions and their units, with exact factors.
//!
//! Factors are those of [`SP_811`], with the digits of the exact definitions (1 in = 25.4 mm, 1 lb =
//! 0.453 592 37 kg, 1 gal = 231 in³, 1 Btu/lb = 2.326 kJ/kg) where it prints seven; units not listed
//! there are built from the ones that are. Gallon, quart, pint and fluid ounce are US customary.

use super::unit::{Dimension, Unit};
use crate::source::Source;
use crate::words::reading as words;

/// Where the factors of the units come from.
pub static SP_811: Source = Source::transcribed(
    "NIST Special Publication 811 (2008), Guide for the Use of the International System of Units",
    "appendix B.8",
);

/// Exact values of in, ft, mil, in² and ft².
pub static INCH_POUND: Source = Source::published("16 CFR (Code of Federal Regulations)", "500.19");

/// The US gallon is 231 in³; quart, pint, cup and fluid ounce are its 4th, 8th, 16th, 128th part.
pub static GALLON_231: Source = Source::published("NIST Handbook 44", "appendix C");

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const YARD: f64 = 0.9144;
const SQUARE_INCH: f64 = 6.4516e-4;
const SQUARE_FOOT: f64 = 0.092_903_04;
const SQUARE_YARD: f64 = 0.836_127_36;
const CUBIC_FOOT: f64 = 0.028_316_846_592;
const GALLON: f64 = 3.785_411_784e-3;
const QUART: f64 = 9.463_529_46e-4;
const PINT: f64 = 4.731_764_73e-4;
const CUP: f64 = 2.365_882_365e-4;
const FLUID_OUNCE: f64 = 2.957_352_956_25e-5;
const POUND: f64 = 0.453_592_37;
const OUNCE: f64 = 0.028_349_523_125;
/// Pound-force: the pound under the standard acceleration 9.80665 m/s².
const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// International Table British thermal unit.
const BTU: f64 = 1_055.055_852_62;
const MINUTE: f64 = 60.0;
const HOUR: f64 = 3_600.0;
const DAY: f64 = 86_400.0;
/// One degree Fahrenheit as an interval, in kelvin.
const FAHRENHEIT: f64 = 5.0 / 9.0;
const DEGREE: f64 = std::f64::consts::PI / 180.0;

const fn u(symbols: &'static [&'static str], factor: f64) -> Unit {
    Unit::new(symbols, factor)
}

/// Length; SI unit metre.
pub static LENGTH: Dimension = Dimension {
    name: words::LENGTH,
    example: words::LENGTH_EXAMPLE,
    units: &[
        u(&["in", "inch", "inches", "\"", "in."], INCH),
        u(&["ft", "foot", "feet", "'", "ft."], FOOT),
        u(&["mm", "millimetre", "millimetres", "millimeter", "millimeters"], 1e-3),
        u(&["cm", "centimetre", "centimetres", "centimeter", "centimeters"], 1e-2),
        u(&["m", "metre", "metres", "meter", "meters"], 1.0),
        u(&["um", "micron", "microns", "micrometre", "micrometer"], 1e-6),
        u(&["mil", "mils", "thou"], 2.54e-5),
        u(&["yd", "yard", "yards", "yds"], YARD),
        u(&["km", "kilometre", "kilometres", "kilometer", "kilometers"], 1e3),
        u(&["mi", "mile", "miles"], 1_609.344),
    ],
};

/// Area; SI unit square metre.
pub static AREA: Dimension = Dimension {
    name: words::AREA,
    example: words::AREA_EXAMPLE,
    units: &[
        u(&["ft2", "sq ft", "square feet", "square foot", "sq. ft.", "sf"], SQUARE_FOOT),
        u(&["m2", "sq m", "square metres", "square meters"], 1.0),
        u(&["in2", "sq in", "square inches", "square inch", "sq. in."], SQUARE_INCH),
        u(&["cm2", "sq cm"], 1e-4),
        u(&["mm2", "sq mm"], 1e-6),
        u(&["yd2", "sq yd", "square yards"], SQUARE_YARD),
    ],
};

/// Volume; SI unit cubic metre. US customary gallon, quart, pint, cup and fluid ounce.
pub static VOLUME: Dimension = Dimension {
    name: words::VOLUME,
    example: words::VOLUME_EXAMPLE,
    units: &[
        u(&["gal", "gallon", "gallons", "us gal"], GALLON),
        u(&["qt", "quart", "quarts", "us qt"], QUART),
        u(&["pt", "pint", "pints"], PINT),
        u(&["cup", "cups"], CUP),
        u(&["fl oz", "fluid ounce", "fluid ounces", "fl. oz.", "us fl oz"], FLUID_OUNCE),
        u(&["l", "litre", "litres", "liter", "liters", "dm3"], 1e-3),
        u(&["ml", "millilitre", "millilitres", "milliliter", "milliliters", "cc", "cm3"], 1e-6),
        u(&["cl"], 1e-5),
        u(&["dl"], 1e-4),
        u(&["m3", "cubic metres", "cubic meters"], 1.0),
        u(&["mm3"], 1e-9),
        u(&["in3", "cu in", "cubic inches", "cubic inch"], 1.638_706_4e-5),
        u(&["ft3", "cu ft", "cubic feet", "cubic foot"], CUBIC_FOOT),
    ],
};

/// Mass; SI unit kilogram.
pub static MASS: Dimension = Dimension {
    name: words::MASS,
    example: words::MASS_EXAMPLE,
    units: &[
        u(&["lb", "lbs", "pound", "pounds", "lb."], POUND),
        u(&["kg", "kilogram", "kilograms", "kilo", "kilos"], 1.0),
        u(&["g", "gram", "grams"], 1e-3),
        u(&["oz", "ounce", "ounces", "oz."], OUNCE),
        u(&["t", "tonne", "tonnes"], 1e3),
    ],
};

/// Time; SI unit second.
pub static TIME: Dimension = Dimension {
    name: words::TIME,
    example: words::TIME_EXAMPLE,
    units: &[
        u(&["min", "minute", "minutes", "mins"], MINUTE),
        u(&["h", "hr", "hrs", "hour", "hours"], HOUR),
        u(&["s", "sec", "second", "seconds", "secs"], 1.0),
        u(&["d", "day", "days"], DAY),
    ],
};

/// Temperature; SI unit kelvin.
pub static TEMPERATURE: Dimension = Dimension {
    name: words::TEMPERATURE,
    example: words::TEMPERATURE_EXAMPLE,
    units: &[
        u(&["C", "deg C", "celsius", "degrees C", "degrees celsius"], 1.0).with_offset(273.15),
        u(&["F", "deg F", "fahrenheit", "degrees F", "degrees fahrenheit"], FAHRENHEIT)
            .with_offset(459.67),
        u(&["K", "kelvin"], 1.0),
    ],
};

/// Electric potential; SI unit volt.
pub static VOLTAGE: Dimension = Dimension {
    name: words::VOLTAGE,
    example: words::VOLTAGE_EXAMPLE,
    units: &[
        u(&["V", "volt", "volts", "VDC", "V DC"], 1.0),
        u(&["mV", "mv", "millivolt", "millivolts"], 1e-3).exact(),
        u(&["kV", "kv"], 1e3).exact(),
    ],
};

/// Electric current; SI unit ampere.
pub static CURRENT: Dimension = Dimension {
    name: words::CURRENT,
    example: words::CURRENT_EXAMPLE,
    units: &[
        u(&["A", "amp", "amps", "ampere", "amperes"], 1.0),
        u(&["mA", "ma", "milliamp", "milliamps", "milliampere", "milliamperes"], 1e-3).exact(),
    ],
};

/// Electrical resistance; SI unit ohm.
pub static RESISTANCE: Dimension = Dimension {
    name: words::RESISTANCE,
    example: words::RESISTANCE_EXAMPLE,
    units: &[
        u(&["ohm", "ohms"], 1.0),
        u(&["mohm", "mohms", "milliohm", "milliohms"], 1e-3).exact(),
        u(&["kohm", "kohms", "kiloohm"], 1e3),
        u(&["Mohm", "Mohms", "megohm"], 1e6).exact(),
    ],
};

/// Power; SI unit watt.
pub static POWER: Dimension = Dimension {
    name: words::POWER,
    example: words::POWER_EXAMPLE,
    units: &[
        u(&["W", "watt", "watts"], 1.0),
        u(&["kW", "kilowatt", "kilowatts"], 1e3),
        u(&["mW", "milliwatt", "milliwatts"], 1e-3),
        u(&["MW", "megawatt"], 1e6),
        u(&["Btu/h", "Btu/hr", "Btuh"], BTU / HOUR),
    ],
};

/// Energy; SI unit joule.
pub static ENERGY: Dimension = Dimension {
    name: words::ENERGY,
    example: words::ENERGY_EXAMPLE,
    units: &[
        u(&["Wh", "W h", "watt hours", "watt-hours"], HOUR),
        u(&["kWh", "kW h", "kilowatt hours"], 1e3 * HOUR),
        u(&["J", "joule", "joules"], 1.0),
        u(&["kJ"], 1e3),
        u(&["MJ"], 1e6).exact(),
        u(&["Btu"], BTU),
    ],
};

/// Electric charge; SI unit coulomb.
pub static CHARGE: Dimension = Dimension {
    name: words::CHARGE,
    example: words::CHARGE_EXAMPLE,
    units: &[
        u(&["Ah", "A h", "amp hours", "amp-hours", "ampere hours"], HOUR),
        u(&["mAh", "mah", "mA h"], HOUR / 1e3).exact(),
        u(&["C", "coulomb", "coulombs"], 1.0),
    ],
};

/// Spread rate, area covered by a volume; SI unit m²/m³ = 1/m.
pub static SPREAD_RATE: Dimension = Dimension {
    name: words::SPREAD_RATE,
    example: words::SPREAD_RATE_EXAMPLE,
    units: &[
        u(&["ft2/gal", "sq ft/gal", "sq. ft./gal", "ft2/gallon", "sq ft/gallon", "sf/gal"], {
            SQUARE_FOOT / GALLON
        }),
        u(&["m2/l", "m2/litre", "m2/liter", "sq m/l"], 1e3),
        u(&["ft2/qt", "sq ft/qt", "sq. ft./qt", "sq ft/quart"], SQUARE_FOOT / QUART),
        u(&["ft2/pt", "sq ft/pt", "sq ft/pint"], SQUARE_FOOT / PINT),
        u(&["m2/ml"], 1e6),
        u(&["m2/m3"], 1.0),
    ],
};

/// Mass density; SI unit kg/m³.
pub static MASS_DENSITY: Dimension = Dimension {
    name: words::DENSITY,
    example: words::DENSITY_EXAMPLE,
    units: &[
        u(&["kg/l", "g/ml", "g/cm3", "g/cc", "kg/dm3", "kg/litre", "kg/liter"], 1e3),
        u(&["kg/m3", "g/l"], 1.0),
        u(&["lb/gal", "lbs/gal", "lb/gallon", "lb/us gal"], POUND / GALLON),
        u(&["lb/ft3", "lb/cu ft", "lbs/ft3", "pcf"], POUND / CUBIC_FOOT),
    ],
};

/// Mass per area; SI unit kg/m².
pub static MASS_PER_AREA: Dimension = Dimension {
    name: words::MASS_PER_AREA,
    example: words::MASS_PER_AREA_EXAMPLE,
    units: &[
        u(&["kg/m2", "kg/sq m"], 1.0),
        u(&["g/m2", "gsm"], 1e-3),
        u(&["lb/ft2", "lb/sq ft", "lbs/ft2"], POUND / SQUARE_FOOT),
        u(&["oz/ft2", "oz/sq ft"], OUNCE / SQUARE_FOOT),
        u(&["oz/yd2", "oz/sq yd"], OUNCE / SQUARE_YARD),
    ],
};

/// Mass per length; SI unit kg/m.
pub static MASS_PER_LENGTH: Dimension = Dimension {
    name: words::MASS_PER_LENGTH,
    example: words::MASS_PER_LENGTH_EXAMPLE,
    units: &[
        u(&["kg/m"], 1.0),
        u(&["g/m"], 1e-3),
        u(&["lb/ft", "lbs/ft"], POUND / FOOT),
        u(&["oz/ft"], OUNCE / FOOT),
    ],
};

/// Thermal conductivity; SI unit W/(m·K).
pub static CONDUCTIVITY: Dimension = Dimension {
    name: words::CONDUCTIVITY,
    example: words::CONDUCTIVITY_EXAMPLE,
    units: &[
        u(&["W/m/K", "W/(m K)", "W/m K", "W/(m C)", "W/m/C"], 1.0),
        u(&["mW/m/K", "mW/(m K)", "mW/m K"], 1e-3).exact(),
        u(
            &["Btu in/(h ft2 F)", "Btu in/h/ft2/F", "Btu in/h ft2 F", "Btu in/(hr ft2 F)"],
            BTU * INCH / (HOUR * SQUARE_FOOT * FAHRENHEIT),
        ),
        u(
            &["Btu/(h ft F)", "Btu/h/ft/F", "Btu/h ft F", "Btu/(hr ft F)"],
            BTU / (HOUR * FOOT * FAHRENHEIT),
        ),
    ],
};

/// Thermal transmittance; SI unit W/(m²·K).
pub static U_VALUE: Dimension = Dimension {
    name: words::U_VALUE,
    example: words::U_VALUE_EXAMPLE,
    units: &[
        u(&["W/m2/K", "W/(m2 K)", "W/m2 K", "W/m2/C"], 1.0),
        u(
            &["Btu/(h ft2 F)", "Btu/h/ft2/F", "Btu/h ft2 F", "Btu/(hr ft2 F)"],
            BTU / (HOUR * SQUARE_FOOT * FAHRENHEIT),
        ),
    ],
};

/// Thermal resistance of an area; SI unit m²·K/W.
pub static THERMAL_RESISTANCE: Dimension = Dimension {
    name: words::THERMAL_RESISTANCE,
    example: words::THERMAL_RESISTANCE_EXAMPLE,
    units: &[
        u(&["m2K/W", "m2 K/W", "K m2/W"], 1.0),
        u(
            &["h ft2 F/Btu", "ft2 h F/Btu", "hr ft2 F/Btu", "F ft2 h/Btu", "ft2 F h/Btu"],
            HOUR * SQUARE_FOOT * FAHRENHEIT / BTU,
        ),
    ],
};

/// Volume flow; SI unit m³/s.
pub static FLOW: Dimension = Dimension {
    name: words::FLOW,
    example: words::FLOW_EXAMPLE,
    units: &[
        u(&["m3/h", "m3/hr"], 1.0 / HOUR),
        u(&["l/min", "lpm"], 1e-3 / MINUTE),
        u(&["ml/min"], 1e-6 / MINUTE),
        u(&["l/s"], 1e-3),
        u(&["l/h"], 1e-3 / HOUR),
        u(&["m3/s"], 1.0),
        u(&["cfm", "ft3/min", "cu ft/min"], CUBIC_FOOT / MINUTE),
        u(&["gal/min", "gpm"], GALLON / MINUTE),
        u(&["gal/h", "gph"], GALLON / HOUR),
        u(&["qt/min"], QUART / MINUTE),
        u(&["fl oz/min"], FLUID_OUNCE / MINUTE),
    ],
};

/// Resistance of a conductor per length; SI unit Ω/m.
pub static RESISTANCE_PER_LENGTH: Dimension = Dimension {
    name: words::RESISTANCE_PER_LENGTH,
    example: words::RESISTANCE_PER_LENGTH_EXAMPLE,
    units: &[
        u(&["ohm/m", "ohms/m"], 1.0),
        u(&["ohm/km", "ohms/km"], 1e-3),
        u(&["ohm/ft", "ohms/ft"], 1.0 / FOOT),
        u(&["ohm/kft", "ohms/kft", "ohm/1000 ft", "ohms/1000 ft"], 1e-3 / FOOT),
        u(&["mohm/m", "mohms/m", "milliohm/m"], 1e-3).exact(),
        u(&["mohm/ft", "mohms/ft", "milliohm/ft"], 1e-3 / FOOT).exact(),
    ],
};

/// Luminous flux; SI unit lumen.
pub static LUMINOUS_FLUX: Dimension = Dimension {
    name: words::LUMINOUS_FLUX,
    example: words::LUMINOUS_FLUX_EXAMPLE,
    units: &[u(&["lm", "lumen", "lumens"], 1.0)],
};

/// Illuminance; SI unit lux.
pub static ILLUMINANCE: Dimension = Dimension {
    name: words::ILLUMINANCE,
    example: words::ILLUMINANCE_EXAMPLE,
    units: &[
        u(&["lx", "lux"], 1.0),
        u(&["fc", "footcandle", "footcandles", "lm/ft2"], 1.0 / SQUARE_FOOT),
    ],
};

/// Plane angle; SI unit radian.
pub static ANGLE: Dimension = Dimension {
    name: words::ANGLE,
    example: words::ANGLE_EXAMPLE,
    units: &[u(&["deg", "degree", "degrees"], DEGREE), u(&["rad", "radian", "radians"], 1.0)],
};

/// Force; SI unit newton.
pub static FORCE: Dimension = Dimension {
    name: words::FORCE,
    example: words::FORCE_EXAMPLE,
    units: &[u(&["lbf"], POUND_FORCE), u(&["N", "newton", "newtons"], 1.0), u(&["kN"], 1e3)],
};

/// Pressure; SI unit pascal.
pub static PRESSURE: Dimension = Dimension {
    name: words::PRESSURE,
    example: words::PRESSURE_EXAMPLE,
    units: &[
        u(&["hPa", "mbar"], 1e2),
        u(&["Pa", "pascal", "pascals"], 1.0),
        u(&["kPa"], 1e3),
        u(&["bar"], 1e5),
        u(&["psi", "lbf/in2"], POUND_FORCE / SQUARE_INCH),
    ],
};

/// Speed; SI unit m/s.
pub static SPEED: Dimension = Dimension {
    name: words::SPEED,
    example: words::SPEED_EXAMPLE,
    units: &[
        u(&["mph", "mi/h"], 0.447_04),
        u(&["km/h", "kmh", "kph"], 1.0 / 3.6),
        u(&["m/s"], 1.0),
        u(&["ft/s"], FOOT),
    ],
};

/// Plain numbers: counts, factors and percents. `12 %` is read as 12.
pub static NUMBER: Dimension = Dimension {
    name: words::PLAIN_NUMBER,
    example: words::PLAIN_NUMBER_EXAMPLE,
    units: &[u(&["%", "percent"], 1.0)],
};

/// Every dimension, so that a unit of the wrong kind can be told from no unit at all.
pub static DIMENSIONS: &[&Dimension] = &[
    &LENGTH,
    &AREA,
    &VOLUME,
    &MASS,
    &TIME,
    &TEMPERATURE,
    &VOLTAGE,
    &CURRENT,
    &RESISTANCE,
    &POWER,
    &ENERGY,
    &CHARGE,
    &SPREAD_RATE,
    &MASS_DENSITY,
    &MASS_PER_AREA,
    &MASS_PER_LENGTH,
    &CONDUCTIVITY,
    &U_VALUE,
    &THERMAL_RESISTANCE,
    &FLOW,
    &RESISTANCE_PER_LENGTH,
    &LUMINOUS_FLUX,
    &ILLUMINANCE,
    &ANGLE,
    &FORCE,
    &PRESSURE,
    &SPEED,
    &NUMBER,
];
