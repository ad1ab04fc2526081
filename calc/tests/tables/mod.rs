//! What is published for wire, for tests of what leaves the sheets.
//!
//! 33 CFR 183.425 table 5 (60 and 105 C), ABYC E-11 bundling, the ambient formula of the NEC, BS 7671
//! 523.9, NEC 240.4(D); what is not listed by the size below.

/// Conductor as typed; ampacity at 60 and 105 C; greatest fuse by NEC 240.4(D) where it has one.
pub const WIRES: [(&str, f64, f64, f64); 31] = [
    ("18 AWG", 10.0, 20.0, 7.0),
    ("16 AWG", 15.0, 25.0, 10.0),
    ("14 AWG", 20.0, 35.0, 15.0),
    ("12 AWG", 25.0, 45.0, 20.0),
    ("10 AWG", 40.0, 60.0, 30.0),
    ("8 AWG", 55.0, 80.0, 1e9),
    ("6 AWG", 80.0, 120.0, 1e9),
    ("4 AWG", 105.0, 160.0, 1e9),
    ("3 AWG", 120.0, 180.0, 1e9),
    ("2 AWG", 140.0, 210.0, 1e9),
    ("1 AWG", 165.0, 245.0, 1e9),
    ("1/0 AWG", 195.0, 285.0, 1e9),
    ("2/0 AWG", 225.0, 330.0, 1e9),
    ("3/0 AWG", 260.0, 385.0, 1e9),
    ("4/0 AWG", 300.0, 445.0, 1e9),
    ("0.5 mm2", 0.0, 0.0, 0.0),
    ("0.75 mm2", 0.0, 16.0, 7.0),
    ("1 mm2", 10.0, 20.0, 7.0),
    ("1.5 mm2", 15.0, 25.0, 10.0),
    ("2.5 mm2", 20.0, 35.0, 15.0),
    ("4 mm2", 25.0, 45.0, 20.0),
    ("6 mm2", 40.0, 60.0, 30.0),
    ("10 mm2", 55.0, 80.0, 1e9),
    ("16 mm2", 80.0, 120.0, 1e9),
    ("25 mm2", 105.0, 160.0, 1e9),
    ("35 mm2", 140.0, 210.0, 1e9),
    ("50 mm2", 165.0, 245.0, 1e9),
    ("70 mm2", 225.0, 330.0, 1e9),
    ("95 mm2", 260.0, 385.0, 1e9),
    // Between 18 and 16 AWG, and between 12 and 10 AWG, at 20 C and at 75 C.
    ("0.018 ohm/m", 10.0, 20.0, 7.0),
    ("0.0045 ohm/m", 25.0, 45.0, 20.0),
];

/// How wire lies: insulation of 60 or 105 C, conductors together, air, thermal insulation, jacket.
pub type Lies = (bool, u32, f64, bool, bool);

/// What a wire may carry as it lies, and the greatest fuse before it. [A]
pub fn limits(wire: &str, (is_105, bundled, air_c, in_insulation, _): Lies) -> (f64, f64) {
    let listed = WIRES.iter().find(|(name, ..)| *name == wire);
    let (_, at_60, at_105, small) = *listed.expect("a wire of the tables");
    let (rating_c, alone) = if is_105 { (105.0, at_105) } else { (60.0, at_60) };
    let together = match bundled {
        0..=2 => 1.0,
        3 => 0.7,
        4..=6 => 0.6,
        _ => 0.5,
    };
    let warm = if air_c > 30.0 { f64::sqrt((rating_c - air_c) / (rating_c - 30.0)) } else { 1.0 };
    let carries = alone * together * warm * if in_insulation { 0.5 } else { 1.0 };
    (carries * (1.0 + 1e-6), small.min(carries) * (1.0 + 1e-6))
}
