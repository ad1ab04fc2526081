//! The formulas of wire and of one run, with their trace.

use super::ampacity::TABLE_AMBIENT_C;
use super::sources::{
    ABYC_BUNDLING, AMBIENT, BS_7671_INSULATION, CONSTANT_POWER, COPPER_TEMPERATURE_COEFFICIENT,
    NEC_CONTINUOUS, NEC_TABLE_8_NOTE, OHMS_LAW,
};
use crate::formula::formula;

formula! {
    /// Resistance of an AWG size at its temperature. [ohm/m]
    WarmAwg: "r = r75 · (1 + 0.00323 · (T − 75 °C))", &NEC_TABLE_8_NOTE;
    |of| of.at_75 * (1.0 + 0.00323 * (of.copper_c - 75.0)) => f64 as ohms_per_length;
    /// At 75 °C. [ohm/m]
    "r75" as ohms_per_length: at_75: f64,
    /// Of the copper. [C]
    "T" as celsius: copper_c: f64,
}

formula! {
    /// Resistance of a metric size at its temperature. [ohm/m]
    WarmMetric: "r = r20 · (1 + 0.00393 · (T − 20 °C))", &COPPER_TEMPERATURE_COEFFICIENT;
    |of| of.at_20 * (1.0 + 0.00393 * (of.copper_c - 20.0)) => f64 as ohms_per_length;
    /// At 20 °C. [ohm/m]
    "r20" as ohms_per_length: at_20: f64,
    /// Of the copper. [C]
    "T" as celsius: copper_c: f64,
}

formula! {
    /// What conductors may carry that lie together. [A]
    Bundled: "Iz = I · k", &ABYC_BUNDLING;
    |of| of.table_a * of.factor => f64 as three_amperes;
    /// By the table. [A]
    "I" as three_amperes: table_a: f64,
    /// Share that is left ([`super::ampacity::bundling_factor`]).
    "k" as factor: factor: f64,
}

formula! {
    /// What a conductor may carry in air warmer than that of the table. [A]
    InWarmAir: "Iz = I · √((Tc − T) / (Tc − 30 °C))", &AMBIENT;
    |of| of.current_a * ((of.rating_c - of.air_c) / (of.rating_c - TABLE_AMBIENT_C)).sqrt()
        => f64 as three_amperes;
    /// In air of 30 °C. [A]
    "I" as three_amperes: current_a: f64,
    /// Of the insulation. [C]
    "Tc" as celsius: rating_c: f64,
    /// Of the air. [C]
    "T" as celsius: air_c: f64,
}

formula! {
    /// What a conductor may carry in thermal insulation. [A]
    Buried: "Iz = I · k", &BS_7671_INSULATION;
    |of| of.current_a * of.factor => f64 as three_amperes;
    /// In free air. [A]
    "I" as three_amperes: current_a: f64,
    /// Share that is left ([`super::ampacity::insulation_factor`]).
    "k" as factor: factor: f64,
}

formula! {
    /// What a fuse carries at least before a load that is on for three hours or more. [A]
    NeededLong: "If = 1.25 · I", &NEC_CONTINUOUS;
    |of| 1.25 * of.current_a => f64 as three_amperes;
    /// Of the load. [A]
    "I" as three_amperes: current_a: f64,
}

formula! {
    /// The same before any other load. [A]
    NeededShort: "If = I", &NEC_CONTINUOUS;
    |of| of.current_a => f64 as three_amperes;
    /// Of the load. [A]
    "I" as three_amperes: current_a: f64,
}

formula! {
    /// Voltage lost along one of several runs. [V]
    RunDrop: "ΔV = I · 2 · L · r", &OHMS_LAW;
    |of| of.current_a * 2.0 * of.length_m * of.ohm_per_m => f64 as lost_volts;
    /// In the run. [A]
    "I" as three_amperes: current_a: f64,
    /// Length one way. [m]
    "L" as run_meters: length_m: f64,
    /// Of one conductor. [ohm/m]
    "r" as ohms_per_length: ohm_per_m: f64,
}

formula! {
    /// What is lost on the way to a load, as a share of the source's voltage.
    LostShare: "p = (Vs − V) / Vs", &OHMS_LAW;
    |of| (of.source_v - of.load_v) / of.source_v => f64 as drop_share;
    /// Of the source. [V]
    "Vs" as four_volts: source_v: f64,
    /// At the load. [V]
    "V" as four_volts: load_v: f64,
}

formula! {
    /// Resistance of both conductors of a run. [ohm]
    BothConductors: "R = 2 · L · r", &OHMS_LAW;
    |of| 2.0 * of.length_m * of.ohm_per_m => f64 as ohms;
    /// Length one way. [m]
    "L" as run_meters: length_m: f64,
    /// Of one conductor. [ohm/m]
    "r" as ohms_per_length: ohm_per_m: f64,
}

formula! {
    /// Voltage at a load of constant power: the upper of two roots, the lower one is unstable. Where no steady
    /// voltage exists, the voltage of the limit. [V]
    LoadVoltage: "V = (Vs + √(Vs² − 4 · R · P)) / 2", &CONSTANT_POWER;
    |of| {
        let left = of.source_v * of.source_v - 4.0 * of.resistance_ohm * of.power_w;
        (of.source_v + left.max(0.0).sqrt()) / 2.0
    } => f64 as four_volts;
    /// Of the source. [V]
    "Vs" as four_volts: source_v: f64,
    /// Of both conductors. [ohm]
    "R" as ohms: resistance_ohm: f64,
    /// Of the load. [W]
    "P" as three_watts: power_w: f64,
}

formula! {
    /// Current of a constant power. [A]
    PowerCurrent: "I = P / V", &OHMS_LAW;
    |of| of.power_w / of.load_v => f64 as three_amperes;
    /// Of the load. [W]
    "P" as three_watts: power_w: f64,
    /// At the load. [V]
    "V" as four_volts: load_v: f64,
}

formula! {
    /// Voltage lost on the way. [V]
    Drop: "ΔV = I · R", &OHMS_LAW;
    |of| of.current_a * of.resistance_ohm => f64 as lost_volts;
    /// In the run. [A]
    "I" as three_amperes: current_a: f64,
    /// Of both conductors. [ohm]
    "R" as ohms: resistance_ohm: f64,
}

formula! {
    /// Voltage lost on the way, as a share of the source's.
    DropShare: "p = ΔV / Vs", &OHMS_LAW;
    |of| of.drop_v / of.source_v => f64 as drop_share;
    /// Lost. [V]
    "ΔV" as lost_volts: drop_v: f64,
    /// Of the source. [V]
    "Vs" as four_volts: source_v: f64,
}

formula! {
    /// Power lost in the wire. [W]
    Loss: "Pv = I · ΔV", &OHMS_LAW;
    |of| of.current_a * of.drop_v => f64 as three_watts;
    /// In the run. [A]
    "I" as three_amperes: current_a: f64,
    /// Lost. [V]
    "ΔV" as lost_volts: drop_v: f64,
}

formula! {
    /// Greatest resistance of both conductors within the limit, before a constant power. It never keeps a steady
    /// voltage with more than half lost. [ohm]
    MostBeforePower: "R = Vs² · p · (1 − p) / P", &OHMS_LAW;
    |of| of.source_v * of.source_v * of.share * (1.0 - of.share) / of.power_w => f64 as ohms;
    /// Of the source. [V]
    "Vs" as four_volts: source_v: f64,
    /// Share that may be lost, up to one half.
    "p" as limit_share: share: f64,
    /// Of the load. [W]
    "P" as three_watts: power_w: f64,
}

formula! {
    /// The same before a constant current. [ohm]
    MostBeforeCurrent: "R = p · Vs / I", &OHMS_LAW;
    |of| of.share * of.source_v / of.current_a => f64 as ohms;
    /// Share that may be lost.
    "p" as limit_share: share: f64,
    /// Of the source. [V]
    "Vs" as four_volts: source_v: f64,
    /// Of the load. [A]
    "I" as three_amperes: current_a: f64,
}

formula! {
    /// Longest run one way. [m]
    LongestRun: "L = R / (2 · r)", &OHMS_LAW;
    |of| of.most_ohm / (2.0 * of.ohm_per_m) => f64 as run_at_most;
    /// Of both conductors at most. [ohm]
    "R" as ohms: most_ohm: f64,
    /// Of one conductor. [ohm/m]
    "r" as ohms_per_length: ohm_per_m: f64,
}
