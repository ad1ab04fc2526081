//! Least sizes of wire, and the greatest fuses before small wire: rules for vehicles and for boats.

use super::ampacity::{Conditions, listed_below};
use super::conductor::Conductor;
use super::sources;
use crate::source::Source;

/// The greatest fuse before a small conductor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SmallFuse {
    /// The stricter of the two rules. [A]
    pub most_a: f64,
    /// What the other rule allows. [A]
    pub other_a: f64,
    /// The stricter rule.
    pub source: &'static Source,
    /// The other.
    pub other: &'static Source,
}

/// Greatest fuse by AWG size: for the low-voltage circuits of park trailers, and for all small
/// conductors. Boats have no such rule: there the ampacity alone holds.
///
/// # Source
/// [`sources::NEC_552_FUSE`], [`sources::NEC_240_4_D`]; both for 18 and 16 AWG from memory.
static SMALL: [(&str, f64, f64); 5] = [
    ("18", 6.0, 7.0),
    ("16", 8.0, 10.0),
    ("14", 15.0, 15.0),
    ("12", 20.0, 20.0),
    ("10", 30.0, 30.0),
];

/// The greatest fuse before a conductor of 10 AWG or less, whatever it may carry; `None` for a
/// thicker one. What is not listed is held against the size below; 0.75 mm², below them all, against
/// the least.
pub fn small_fuse(conductor: Conductor) -> Option<SmallFuse> {
    let listed = listed_below(conductor).unwrap_or(SMALL[0].0);
    let (_, trailer_a, small_a) = SMALL.iter().find(|(label, ..)| *label == listed)?;
    Some(SmallFuse {
        most_a: trailer_a.min(*small_a),
        other_a: trailer_a.max(*small_a),
        source: &sources::NEC_552_FUSE,
        other: &sources::NEC_240_4_D,
    })
}

/// Whether a conductor is too thin to be run on its own: below 16 AWG or 1 mm². Only inside the
/// jacket of a cable with several conductors may it be 18 AWG or 0.75 mm².
///
/// # Source
/// [`sources::CFR_LEAST_SIZE`], [`sources::ISO_10133_LEAST_SIZE`].
pub fn is_thin(conductor: Conductor) -> bool {
    match conductor {
        Conductor::SquareMillimetre(size) => size.area_mm2 < 1.0,
        _ => matches!(listed_below(conductor), None | Some("18")),
    }
}

/// Whether `auto` may take a conductor as it lies: no single wire thinner than 16 AWG or 1 mm², and
/// nothing below 18 AWG or 0.75 mm² even inside a jacket.
///
/// # Source
/// [`is_thin`].
pub fn may_be_chosen(conductor: Conductor, conditions: &Conditions) -> bool {
    let is_hair = matches!(conductor, Conductor::SquareMillimetre(size) if size.area_mm2 < 0.75);
    !is_hair && (conditions.in_jacket || !is_thin(conductor))
}

#[cfg(test)]
mod tests {
    use super::super::ampacity::BOAT_CABLE;
    use super::*;

    fn conductor(text: &str) -> Conductor {
        text.parse().unwrap()
    }

    /// NEC 240.4(D): 15, 20 and 30 A for 14, 12 and 10 AWG.
    #[test]
    fn small_wire_has_small_fuses() {
        for (text, most_a) in [
            ("14 AWG", Some(15.0)),
            ("12 AWG", Some(20.0)),
            ("10 AWG", Some(30.0)),
            ("8 AWG", None),
            ("2.5 mm2", Some(15.0)),
            ("10 mm2", None),
            ("0.003 ohm/m", Some(30.0)),
        ] {
            assert_eq!(small_fuse(conductor(text)).map(|small| small.most_a), most_a, "{text}");
        }
        assert!(small_fuse(conductor("0.75 mm2")).is_some_and(|small| small.most_a <= 7.0));
    }

    /// 33 CFR 183.425(d), (e): 16 AWG single, 18 AWG in a sheath; ISO 10133: 1 mm2 and 0.75 mm2.
    #[test]
    fn thin_wire_runs_in_a_jacket() {
        let in_jacket = Conditions { in_jacket: true, ..BOAT_CABLE };
        for (text, single, sheathed) in [
            ("16 AWG", true, true),
            ("18 AWG", false, true),
            ("1 mm2", true, true),
            ("0.75 mm2", false, true),
            ("0.5 mm2", false, false),
        ] {
            let wire = conductor(text);
            assert_eq!(may_be_chosen(wire, &BOAT_CABLE), single, "{text}");
            assert_eq!(may_be_chosen(wire, &in_jacket), sheathed, "{text}");
        }
    }
}
