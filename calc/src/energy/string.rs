//! Voltage of panels in series on the coldest morning, against the charge controller.

use std::fmt;

use uom::si::electric_potential::volt;
use uom::si::f64::{ElectricPotential, ThermodynamicTemperature};
use uom::si::thermodynamic_temperature::degree_celsius;

use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Msg, solar as words};

/// The order of methods: the maker's coefficient first, the table for crystalline silicon otherwise.
pub const METHOD: Source = Source::transcribed("NEC (NFPA 70)", "690.7(A)(1) and (2)");
/// Rows of the table at and below 4 °C, and the row from 20 to 24 °C.
pub const TABLE: Source = Source::transcribed("NEC (NFPA 70)", "table 690.7(A)");
/// Rows of the table from 5 to 19 °C.
pub const TABLE_MILD: Source =
    Source::from_memory("NEC (NFPA 70)", "table 690.7(A), rows from 5 to 19 °C");

/// What wire and fuse of a string carry.
pub const NEC_690_8: Source =
    Source::transcribed("NEC (NFPA 70)", "690.8: 1.25 · 1.25 of the short-circuit current");

/// What the wire and the fuse of a string must carry, from the panels' short-circuit current. [A]
pub fn string_wire_a(short_circuit_a: f64) -> f64 {
    StringWire { short_circuit_a }.value()
}

formula! {
    /// What the wire and the fuse of a string must carry. [A]
    StringWire: "I = 1.25 · 1.25 · Isc", &NEC_690_8;
    |of| 1.5625 * of.short_circuit_a => f64 as amperes_to_hundredths;
    /// Short-circuit current of a panel. [A]
    "Isc" as amperes_to_hundredths: short_circuit_a: f64,
}

formula! {
    /// Open-circuit voltage of a panel in the cold by its maker's coefficient.
    ColdByCoefficient: "V = Voc · (1 + β · (θ − θ₀))", &METHOD;
    |of| {
        let kelvins = of.coldest.get::<degree_celsius>() - of.rated_at.get::<degree_celsius>();
        ElectricPotential::new::<volt>(
            of.open_circuit.get::<volt>() * (1.0 + of.percent / 100.0 * kelvins))
    } => ElectricPotential as volts;
    /// Of a panel, as it is rated.
    "Voc" as volts: open_circuit: ElectricPotential,
    /// For each kelvin, -2 to 0 %.
    "β" as percent_of: percent: f64,
    /// The coldest.
    "θ" as temperature: coldest: ThermodynamicTemperature,
    /// What panels are rated at: 25 °C.
    "θ₀" as temperature_in_sum: rated_at: ThermodynamicTemperature,
}

formula! {
    /// Open-circuit voltage of a panel in the cold by the NEC's table.
    ColdByTable: "V = Voc · k", &TABLE;
    |of| ElectricPotential::new::<volt>(of.open_circuit.get::<volt>() * of.factor) => ElectricPotential as volts;
    /// Of a panel, as it is rated.
    "Voc" as volts: open_circuit: ElectricPotential,
    /// The row's factor.
    "k" as factor: factor: f64,
}

formula! {
    /// Voltage of a string.
    InString: "V_n = n · V", &METHOD;
    |of| ElectricPotential::new::<volt>(of.panel.get::<volt>() * f64::from(of.in_series)) => ElectricPotential as volts;
    /// Panels in series.
    "n" as count: in_series: u32,
    /// Of one panel.
    "V" as volts: panel: ElectricPotential,
}

/// From three strings side by side on each has a fuse, no larger than the panel allows.
pub const NEC_690_9: Source = Source::transcribed(
    "NEC (NFPA 70)",
    "690.9(A): two strings cannot push more than the panels' own current back into one; 690.8, 110.3(B): fuse from 1.56 Isc to the panel's maximum series fuse",
);
/// Ratings of fuses for panels.
pub const PV_RATINGS: Source = Source::from_memory(
    "IEC 60269-6 and UL 248-19",
    "ratings that gPV fuses of 10 x 38 mm are sold in",
);
/// What hot cells do to the voltage of most power.
pub const HOT_CELLS: Source = Source::from_memory(
    "data sheets of crystalline silicon panels",
    "voltage at most power falls by about 0.45 % of its rating at 25 °C for each kelvin",
);
/// Where a controller starts.
pub const FIVE_ABOVE: Source = Source::from_memory(
    "makers' data sheets of tracking charge controllers",
    "the panels must stand 5 V above the battery for charging to start",
);

/// The string's voltage at most power with cells of this temperature, from its rating at 25 °C. [V, °C]
pub fn hot_string_v(at_most_power_v: f64, in_series: u32, cells_c: f64) -> f64 {
    at_most_power_v * f64::from(in_series) * (1.0 - 0.0045 * (cells_c - 25.0)).max(0.0)
}

/// Ratings of fuses for strings of panels, least first. [A]
const PV_FUSES_A: [f64; 14] =
    [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 16.0, 20.0, 25.0, 30.0];

/// The fuse of each of several strings side by side: the least rating from 1.56 times the short-circuit current on
/// that is no larger than the panel's maximum series fuse; none where there is no such rating.
///
/// # Source
/// [`NEC_690_8`], [`NEC_690_9`], [`PV_RATINGS`].
pub fn string_fuse_a(short_circuit_a: f64, most_a: f64) -> Option<f64> {
    let least = string_wire_a(short_circuit_a);
    PV_FUSES_A
        .into_iter()
        .find(|rating| least <= rating * (1.0 + 1e-9))
        .filter(|rating| *rating <= most_a * (1.0 + 1e-9))
}

/// How the open-circuit voltage is carried from 25 °C to the cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ColdRule {
    /// The maker's temperature coefficient of the open-circuit voltage, percent per kelvin, -2 to 0.
    Coefficient(f64),
    /// The factor of the NEC's table, for crystalline silicon.
    Table,
}

/// A panel's voltage in the cold, as it is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ColdPanel {
    /// By the maker's coefficient.
    Coefficient(ColdByCoefficient),
    /// By the table.
    Table(ColdByTable),
}

/// A string of panels in the cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColdString {
    /// How a panel's voltage was found.
    pub by: ColdPanel,
    /// And a string's.
    pub in_string: InString,
    /// Open-circuit voltage of one panel at the coldest.
    pub panel: ElectricPotential,
    /// The same of the whole string.
    pub string: ElectricPotential,
}

/// Why there is no cold voltage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StringError {
    /// The panel's open-circuit voltage is out of range.
    OpenCircuit,
    /// The coefficient is positive or too large.
    Coefficient,
    /// The coldest temperature is out of range.
    Coldest,
    /// The coldest temperature is below the table.
    BelowTable,
    /// The number of panels in series is out of range.
    InSeries,
    /// The controller's voltage is out of range.
    Controller,
}

impl StringError {
    /// What is wrong, as a message.
    pub fn told(self) -> Msg {
        match self {
            Self::OpenCircuit => words::OPEN_CIRCUIT_RANGE.into(),
            Self::Coefficient => words::COEFFICIENT_RANGE.into(),
            Self::Coldest => words::COLDEST_RANGE.into(),
            Self::BelowTable => words::BELOW_TABLE.into(),
            Self::InSeries => words::SERIES_RANGE.into(),
            Self::Controller => words::CONTROLLER_RANGE.into(),
        }
    }
}

impl fmt::Display for StringError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for StringError {}

/// Open-circuit voltage of a panel and its string at the coldest ambient temperature, taken for the cells' own: at
/// dawn the panel is as cold as the air, and full voltage comes with the first light.
///
/// # Errors
/// A voltage, coefficient, temperature or number out of range.
pub fn cold_string(
    open_circuit: ElectricPotential,
    rule: ColdRule,
    coldest: ThermodynamicTemperature,
    in_series: u32,
) -> Result<ColdString, StringError> {
    let volts = open_circuit.get::<volt>();
    if !(0.1..=1000.0).contains(&volts) {
        return Err(StringError::OpenCircuit);
    }
    if !(1..=100).contains(&in_series) {
        return Err(StringError::InSeries);
    }
    let by = match rule {
        ColdRule::Coefficient(percent) => {
            if !(-2.0..=0.0).contains(&percent) {
                return Err(StringError::Coefficient);
            }
            celsius_in_range(coldest)?;
            let rated_at = ThermodynamicTemperature::new::<degree_celsius>(25.0);
            ColdPanel::Coefficient(ColdByCoefficient { open_circuit, percent, coldest, rated_at })
        }
        ColdRule::Table => {
            ColdPanel::Table(ColdByTable { open_circuit, factor: table_factor(coldest)? })
        }
    };
    let panel = match &by {
        ColdPanel::Coefficient(by) => by.value(),
        ColdPanel::Table(by) => by.value(),
    };
    let string = InString { in_series, panel };
    Ok(ColdString { by, panel, string: string.value(), in_string: string })
}

/// Factor of NEC table 690.7(A) for crystalline silicon; between two rows the colder one; 1 from 25 °C on.
///
/// # Errors
/// Below the table's -40 °C, or no temperature at all.
pub fn table_factor(coldest: ThermodynamicTemperature) -> Result<f64, StringError> {
    let celsius = celsius_in_range(coldest)?;
    // Slack keeps -10 °C, which may arrive a hair colder from another unit, in its own row.
    if celsius >= 25.0 - 1e-6 {
        return Ok(1.0);
    }
    TABLE_ROWS
        .iter()
        .find(|(lowest, _)| celsius >= lowest - 1e-6)
        .map(|(_, factor)| *factor)
        .ok_or(StringError::BelowTable)
}

/// The most panels in series that stay at or below the controller's highest voltage; 0 where one is too much.
///
/// # Errors
/// The controller's voltage out of range.
pub fn most_in_series(
    cold_panel: ElectricPotential,
    controller: ElectricPotential,
) -> Result<u32, StringError> {
    let (panel, limit) = (cold_panel.get::<volt>(), controller.get::<volt>());
    if !(1.0..=2000.0).contains(&limit) {
        return Err(StringError::Controller);
    }
    if !(0.05..=10_000.0).contains(&panel) {
        return Err(StringError::OpenCircuit);
    }
    Ok((limit / panel + 1e-9).floor() as u32)
}

/// Lowest temperature of the row in °C, factor.
const TABLE_ROWS: [(f64, f64); 13] = [
    (20.0, 1.02),
    (15.0, 1.04),
    (10.0, 1.06),
    (5.0, 1.08),
    (0.0, 1.10),
    (-5.0, 1.12),
    (-10.0, 1.14),
    (-15.0, 1.16),
    (-20.0, 1.18),
    (-25.0, 1.20),
    (-30.0, 1.21),
    (-35.0, 1.23),
    (-40.0, 1.25),
];

fn celsius_in_range(temperature: ThermodynamicTemperature) -> Result<f64, StringError> {
    let celsius = temperature.get::<degree_celsius>();
    if (-60.0..=60.0).contains(&celsius) { Ok(celsius) } else { Err(StringError::Coldest) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::any_number;
    use proptest::prelude::*;

    fn at(celsius: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(celsius)
    }

    fn volts(value: f64) -> ElectricPotential {
        ElectricPotential::new::<volt>(value)
    }

    // 1.5625 · 9.5 A = 14.84 A: 15 A where the panel allows it; nothing where it allows 12 A only.
    #[test]
    fn string_fuses_stay_below_what_the_panel_allows() {
        assert_eq!(string_fuse_a(9.5, 20.0), Some(15.0));
        assert_eq!(string_fuse_a(9.5, 12.0), None);
        assert_eq!(string_fuse_a(25.0, 60.0), None);
        assert_eq!(string_fuse_a(f64::NAN, 60.0), None);
    }

    // 18.5 V at 25 °C, 45 K hotter: 18.5 · (1 - 0.2025) = 14.754 V.
    #[test]
    fn hot_cells_lose_voltage() {
        assert!((hot_string_v(18.5, 1, 70.0) - 14.753_75).abs() < 1e-9);
        assert!((hot_string_v(18.5, 2, 25.0) - 37.0).abs() < 1e-9);
    }

    // NEC 690.7(A)(1), published worked example as transcribed: 49.5 V, -0.27 %/°C, -10 °C gives 54.18 V, 11 in 600 V.
    #[test]
    fn nec_690_7_coefficient_example() {
        let found = cold_string(volts(49.5), ColdRule::Coefficient(-0.27), at(-10.0), 1).unwrap();
        assert!((found.panel.get::<volt>() - 54.17775).abs() < 1e-9, "{found:?}");
        assert_eq!(most_in_series(found.panel, volts(600.0)), Ok(11));
    }

    // Two panels of 22.5 V at -10 °C: 51.3 V by the table's 1.14, 49.725 V by -0.30 %/°C (arithmetic).
    #[test]
    fn two_in_series_by_table_and_by_coefficient() {
        let table = cold_string(volts(22.5), ColdRule::Table, at(-10.0), 2).unwrap();
        assert!((table.string.get::<volt>() - 51.3).abs() < 1e-9, "{table:?}");
        let maker = cold_string(volts(22.5), ColdRule::Coefficient(-0.30), at(-10.0), 2).unwrap();
        assert!((maker.string.get::<volt>() - 49.725).abs() < 1e-9, "{maker:?}");
    }

    // NEC table 690.7(A), both ends of each row as printed; the rows from 5 to 19 °C are from memory.
    #[test]
    fn nec_table_690_7_a_rows() {
        for (warm, cold, factor) in [
            (24.0, 20.0, 1.02),
            (4.0, 0.0, 1.10),
            (-1.0, -5.0, 1.12),
            (-6.0, -10.0, 1.14),
            (-11.0, -15.0, 1.16),
            (-16.0, -20.0, 1.18),
            (-21.0, -25.0, 1.20),
            (-26.0, -30.0, 1.21),
            (-31.0, -35.0, 1.23),
            (-36.0, -40.0, 1.25),
        ] {
            assert_eq!(table_factor(at(warm)), Ok(factor), "{warm}");
            assert_eq!(table_factor(at(cold)), Ok(factor), "{cold}");
        }
        assert_eq!(table_factor(at(25.0)), Ok(1.0));
        assert_eq!(table_factor(at(-40.5)), Err(StringError::BelowTable));
    }

    // NEC 690.8 as transcribed: 1.5625 times the short-circuit current.
    #[test]
    fn nec_690_8_string_current() {
        assert!((string_wire_a(8.0) - 12.5).abs() < 1e-12);
    }

    #[test]
    fn a_coefficient_with_the_wrong_sign_is_refused() {
        let found = cold_string(volts(22.5), ColdRule::Coefficient(0.3), at(-10.0), 1);
        assert_eq!(found, Err(StringError::Coefficient));
    }

    proptest! {
        #[test]
        fn any_numbers_give_finite_volts_or_an_error(
            v in any_number(), k in any_number(), c in any_number(), n in any::<u32>(), limit in any_number(),
        ) {
            for rule in [ColdRule::Coefficient(k), ColdRule::Table] {
                if let Ok(found) = cold_string(volts(v), rule, at(c), n) {
                    prop_assert!(found.string.value.is_finite() && found.string.value >= found.panel.value);
                    let _ = most_in_series(found.panel, volts(limit));
                }
            }
        }

        #[test]
        fn colder_never_means_less_voltage(c in -39.0..24.0_f64, step in 0.0..20.0_f64) {
            let colder = (c - step).max(-40.0);
            prop_assert!(table_factor(at(colder)).unwrap() >= table_factor(at(c)).unwrap());
        }
    }
}
