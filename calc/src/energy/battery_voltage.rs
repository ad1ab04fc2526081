//! The voltages that a battery stands at: rested, and at the end of a charge, where fuses and holders must stand it.

use crate::source::Source;

/// 3.2 V nominal and 3.65 V at the end of a charge for a cell; rested and nearly full about 3.33 V.
pub const LITHIUM_CELL: Source = Source::from_memory(
    "makers' data sheets of lithium iron phosphate cells",
    "3.2 V nominal, 3.65 V at the end of a charge; rested between 30 and 90 % full 3.29 to 3.34 V, so that four cells stand near 13.3 V",
);
/// Up to 2.67 V a cell while it is equalised.
pub const LEAD_CELL: Source = Source::from_memory(
    "makers' charging instructions for lead-acid batteries",
    "2.4 V a cell absorbing, up to 2.67 V equalising a flooded one",
);

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

/// The highest voltage that a charger takes a battery of this nominal voltage to, by its cells; the higher of both
/// kinds where it may be either. From 1 V on. [V]
///
/// A lithium battery has a cell for each 3.2 V, and where four of them are sold as "12 V" for each 3.2 V of 12.8 V; a
/// lead-acid battery one for each 2 V.
///
/// # Source
/// [`LITHIUM_CELL`], [`LEAD_CELL`].
pub fn charging_v(nominal_v: f64, chemistry: Chemistry) -> f64 {
    // Of four, eight, twelve or sixteen cells, whatever the label rounds their voltage to.
    let fours = (nominal_v / 12.4).round();
    let cells = (nominal_v / 3.2 - 1e-6).ceil();
    let lithium = 3.65 * if fours >= 1.0 { cells.max(4.0 * fours) } else { cells };
    let lead = (2.67 * (nominal_v / 2.0).round()).max(1.25 * nominal_v);
    match chemistry {
        Chemistry::Lithium => lithium,
        Chemistry::LeadAcid => lead,
        // Twos of volts are lead-acid's; 12.8 or 51.2 V is no number of its cells.
        Chemistry::Unknown if (nominal_v - 2.0 * (nominal_v / 2.0).round()).abs() < 0.1 => {
            lithium.max(lead)
        }
        Chemistry::Unknown => lithium,
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
            let found = charging_v(nominal, Chemistry::Lithium);
            assert!((found - charging).abs() < 1e-9, "{nominal}: {found}");
        }
        assert!((charging_v(12.0, Chemistry::LeadAcid) - 16.02).abs() < 1e-9);
        assert!((charging_v(48.0, Chemistry::LeadAcid) - 64.08).abs() < 1e-9);
        assert!(charging_v(51.2, Chemistry::Unknown) >= 58.4);
    }

    #[test]
    fn a_charge_is_never_below_the_nominal_voltage() {
        for tenth in 10..1000 {
            let nominal = f64::from(tenth) / 10.0;
            for kind in [Chemistry::Lithium, Chemistry::LeadAcid, Chemistry::Unknown] {
                assert!(charging_v(nominal, kind) > nominal, "{nominal} {kind:?}");
            }
        }
    }
}
