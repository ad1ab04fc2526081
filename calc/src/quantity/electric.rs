//! Electrical figures in print, as finely as wire is chosen by.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::{Style, UnitSystem, amount, beside, significant};

/// A voltage as a meter shows it: `12.34 V`. [V]
pub fn volts(v: f64) -> String {
    amount(v, 2, "V")
}

/// A drop in volts, likewise; what a meter does not show, to a digit. [V]
pub fn drop_volts(v: f64) -> String {
    if v.abs() < 0.1 { significant(v, 1) + " V" } else { volts(v) }
}

/// A current to three digits. [A]
pub fn amperes(a: f64) -> String {
    significant(a, 3) + " A"
}

/// A power to three digits. [W]
pub fn watts(w: f64) -> String {
    significant(w, 3) + " W"
}

/// A resistance to four digits. [ohm]
pub fn ohms(ohm: f64) -> String {
    significant(ohm, 4) + " ohm"
}

/// A drop in percent, finely enough to tell neighbouring conductors apart. [%]
pub fn drop_percent(percent: f64) -> String {
    amount(percent, 2, "%")
}

/// A drop beside its limit: with more digits where it takes them to show whether it is within it. [%]
pub fn drop_beside(percent: f64, limit_percent: f64) -> String {
    beside(percent, limit_percent, 2, "%")
}

/// A limit as it was typed. [%]
pub fn limit(percent: f64) -> String {
    amount(percent, 3, "%")
}

impl Style {
    /// Resistance by length: `3.14 ohm/kft`, `10.3 ohm/km`. [ohm/m]
    pub fn ohms_per_length(&self, ohm_per_m: f64) -> String {
        match self.system {
            UnitSystem::Imperial => self.figure(significant(ohm_per_m * 304.8, 4) + " ohm/kft"),
            UnitSystem::Metric => self.figure(significant(ohm_per_m * 1000.0, 4) + " ohm/km"),
        }
    }

    /// A length of wire that must not be exceeded: rounded down to the inch or to 0.1 m. [m]
    pub fn run_at_most(&self, metres: f64) -> String {
        let step = match self.system {
            UnitSystem::Imperial => 0.0254,
            UnitSystem::Metric => 0.1,
        };
        self.run(Length::new::<meter>((metres / step * (1.0 + 1e-9)).floor() * step))
    }
}
