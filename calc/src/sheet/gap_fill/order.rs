//! The order of work of a filling, to be ticked off; and what it takes beside the filler.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::inputs::Inputs;
use crate::coating::gap::Hole;
use crate::quantity::Style;
use crate::report::{CheckLine, CheckList};
use crate::words::{Id, gap_fill as words};

/// What is done from the open gap to the sanded one.
pub fn of_work(inputs: &Inputs, style: Style) -> CheckList {
    let below = needs(inputs).below.value > 0.0;
    let all: [(&str, Id, Id); 7] = [
        ("dry", words::ORDER_DRY, words::ORDER_DRY_NOTE),
        ("below", words::ORDER_BELOW, words::ORDER_BELOW_NOTE),
        ("mask", words::ORDER_MASK, words::ORDER_MASK_NOTE),
        ("wet", words::ORDER_WET, words::ORDER_WET_NOTE),
        ("sets", words::ORDER_SETS, words::ORDER_SETS_NOTE),
        ("blush", words::ORDER_BLUSH, words::ORDER_BLUSH_NOTE),
        ("sand", words::ORDER_SAND, words::ORDER_SAND_NOTE),
    ];
    let lines = all.into_iter().filter(|(key, ..)| *key != "below" || below);
    let lines = lines.map(|(key, text, note)| CheckLine {
        key: String::from("order ") + key,
        text: style.say(text),
        note: style.say(note),
        warns: false,
    });
    CheckList { title: style.say(words::ORDER), lines: lines.collect() }
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
        let across = match holes.hole() {
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
