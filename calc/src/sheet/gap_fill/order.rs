//! The order of work of a filling, to be ticked off; and what it takes beside the filler.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::Inputs;
use crate::coating::gap::Hole;
use crate::report::{CheckLine, CheckList};

/// What is done from the open gap to the sanded one.
pub fn of_work(inputs: &Inputs) -> CheckList {
    let mut lines = vec![line(
        "dry",
        "Check the wood with the moisture meter",
        "Filler does not hold on wet wood; dry and clean it first.",
    )];
    if needs(inputs).below.value > 0.0 {
        lines.push(line(
            "below",
            "Close from below with tape or plugs",
            "Filler runs through onto exhaust, wires and skin.",
        ));
    }
    lines.push(line("mask", "Mask the edges", "What runs over is sanded off again."));
    lines.push(line(
        "wet",
        "Wet it out with the mix as it is, then fill",
        "Thickened filler alone does not soak in; thicken it for gaps that it would run out of.",
    ));
    lines.push(line(
        "sets",
        "Let it set as far as the label says",
        "Before the next pass, and before it is sanded.",
    ));
    lines.push(line(
        "blush",
        "Wash it off with water and let it dry",
        "Amine blush clogs the abrasive and keeps the finish from holding; solvent does not take it off.",
    ));
    lines.push(line(
        "sand",
        "Sand it flush, with the dust extracted",
        "Cured through: half-cured dust sensitises.",
    ));
    CheckList { title: "Order of work".into(), lines }
}

fn line(key: &str, text: &str, note: &str) -> CheckLine {
    CheckLine {
        key: String::from("order ") + key,
        text: text.to_owned(),
        note: note.to_owned(),
        warns: false,
    }
}

/// Lengths of tape.
pub struct Tape {
    /// Along what is open below.
    pub below: Length,
    /// Along both edges of all gaps.
    pub edges: Length,
}

/// What tape reaches beyond a hole on either side; our own rule. [mm]
const BESIDE_HOLE_MM: f64 = 25.0;

/// The tape that a filling takes. A countersink has its screw in it and is closed.
pub fn needs(inputs: &Inputs) -> Tape {
    let mut tape = Tape { below: Length::default(), edges: Length::default() };
    for gap in &inputs.gaps {
        let all = gap.length * f64::from(gap.count);
        tape.edges += all * 2.0;
        if gap.open_below {
            tape.below += all;
        }
    }
    for holes in &inputs.holes {
        let across = match holes.hole {
            Hole::Plain { diameter, .. } | Hole::Plugged { diameter, .. } => diameter,
            Hole::Countersunk { .. } => continue,
        };
        if holes.open_below {
            let each = across + 2.0 * Length::new::<millimeter>(BESIDE_HOLE_MM);
            tape.below += each * f64::from(holes.count);
        }
    }
    tape
}
