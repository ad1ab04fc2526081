//! The voltages that a battery stands at: rested, and at the end of a charge, where fuses and holders must stand it.

use crate::source::Source;
use crate::words::electrical as words;

/// 3.2 V nominal and 3.65 V at the end of a charge for a cell.
pub static LITHIUM_CELL: Source = Source::from_memory_of(words::SOURCE_LITHIUM_CELL);
/// About 3.33 V a cell, rested and nearly full.
pub static LITHIUM_RESTED: Source = Source::from_memory_of(words::SOURCE_LITHIUM_RESTED);
/// Up to 2.67 V a cell while it is equalised: 16 V for six.
pub static LEAD_CELL: Source = Source::from_memory_of(words::SOURCE_LEAD_CELL);

/// What the battery is made of, as far as its voltage goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chemistry {
    /// Lithium iron phosphate.
    Lithium,
    /// Lead-acid of any kind.
    LeadAcid,
    /// Nobody said.
    Unknown,
}

/// The highest voltage that a charger takes a battery of this nominal voltage to, and who says so; the higher of both kinds where it may
/// be either. From 1 V on. [V]
///
/// A lithium battery has a cell for each 3.2 V, a lead-acid battery one for each 2 V. What reads 11 to 14.6 V is a "12 V" battery, of
/// four lithium cells or six of lead, whether that is its label or what a meter says of it; so with two, three and four of them.
///
/// # Source
/// [`LITHIUM_CELL`], [`LEAD_CELL`].
pub fn highest_v(nominal_v: f64, chemistry: Chemistry) -> (f64, &'static Source) {
    let twelves = (nominal_v / 12.8).round();
    let is_of_twelves =
        twelves >= 1.0 && (11.0 * twelves..=14.6 * twelves + 1e-6).contains(&nominal_v);
    let near = |cell_v: f64| nominal_v - cell_v * (nominal_v / cell_v).round();
    let (lithium_v, lead_v) = if is_of_twelves {
        (14.6 * twelves, 16.0 * twelves)
    } else {
        let cells = (nominal_v / 3.2 - 1e-6).ceil();
        (3.65 * cells, (16.0 / 6.0 * (nominal_v / 2.0).round()).max(1.25 * nominal_v))
    };
    match chemistry {
        Chemistry::Lithium => (lithium_v, &LITHIUM_CELL),
        Chemistry::LeadAcid => (lead_v, &LEAD_CELL),
        // 12.8 or 51.2 V is what lithium cells add up to, and no number of lead-acid's.
        Chemistry::Unknown if near(3.2).abs() < 0.05 && near(2.0).abs() > 0.1 => {
            (lithium_v, &LITHIUM_CELL)
        }
        Chemistry::Unknown if lithium_v > lead_v => (lithium_v, &LITHIUM_CELL),
        Chemistry::Unknown => (lead_v, &LEAD_CELL),
    }
}

/// What the rules here are for: below this, and a 48 V battery's own range. [V]
pub const LOW_VOLTAGE_V: f64 = 50.0;

/// Where low voltage ends in the rules that are followed here.
pub const BELOW_50_V: Source = Source::transcribed("33 CFR 183.455", "(c), less than 50 V");

#[cfg(test)]
mod tests {
    use super::*;

    // 3.65 V a cell, as makers of batteries of 4, 8, 12 and 16 cells print it: 14.6, 29.2, 43.8 and 58.4 V.
    #[test]
    fn charging_voltage_by_cells() {
        for (nominal, charging) in [
            (12.8, 14.6),
            (12.0, 14.6),
            (25.6, 29.2),
            (24.0, 29.2),
            (38.4, 43.8),
            (51.2, 58.4),
            (48.0, 58.4),
            (3.2, 3.65),
        ] {
            let (found, _) = highest_v(nominal, Chemistry::Lithium);
            assert!((found - charging).abs() < 1e-9, "{nominal}: {found}");
        }
        // 15.5 to 16 V is what makers of flooded 12 V batteries have them equalised at.
        for (nominal, charging) in
            [(12.0, 16.0), (12.2, 16.0), (24.0, 32.0), (36.0, 48.0), (48.0, 64.0)]
        {
            for chemistry in [Chemistry::LeadAcid, Chemistry::Unknown] {
                let (found, _) = highest_v(nominal, chemistry);
                assert!((found - charging).abs() < 1e-9, "{nominal}: {found}");
            }
        }
        for (nominal, charging) in [(12.8, 14.6), (25.6, 29.2), (38.4, 43.8), (51.2, 58.4)] {
            let (found, _) = highest_v(nominal, Chemistry::Unknown);
            assert!((found - charging).abs() < 1e-9, "{nominal}: {found}");
        }
    }

    #[test]
    fn a_charge_is_never_below_the_nominal_voltage() {
        for tenth in 10..1000 {
            let nominal = f64::from(tenth) / 10.0;
            for kind in [Chemistry::Lithium, Chemistry::LeadAcid, Chemistry::Unknown] {
                assert!(highest_v(nominal, kind).0 >= nominal, "{nominal} {kind:?}");
            }
        }
    }
}
