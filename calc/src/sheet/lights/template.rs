//! The lamp's hole in true size, to be laid on the ceiling.

use crate::text::text;
use uom::si::length::meter;

use super::Lamp;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;

/// How far the centre lines reach past the lamp. [m]
const PAST: f64 = 0.012;

/// Hole, rim and centre lines.
pub(super) fn hole(lamp: &Lamp, style: Style) -> Drawing {
    let (hole, rim) = (lamp.hole.get::<meter>() / 2.0, lamp.rim.get::<meter>() / 2.0);
    let mut drawing = Drawing::new(
        "Hole of a lamp",
        text!(
            "Lay the crossing centre lines on the pencil cross of a lamp, one of them along the board. Cut the inner circle, {} across; the outer one, {}, is the rim: nothing may stand inside it.",
            style.length(lamp.hole),
            style.length(lamp.rim)
        ),
    );
    let middle = Point::metres(0.0, 0.0);
    let far = hole.max(rim) + PAST;
    for (x, y) in [(far, 0.0), (0.0, far)] {
        drawing.line(Pen::Centre, &[Point::metres(-x, -y), Point::metres(x, y)]);
    }
    drawing.circle(Pen::Thin, Fill::Empty, middle, rim);
    drawing.circle(Pen::Cut, Fill::Empty, middle, hole);
    drawing.cross(Pen::Mark, middle);
    let below = |x: f64| Point::metres(x, far + 0.008);
    drawing.text(below(-far), Anchor::Start, text!("hole {}", style.length(lamp.hole)));
    drawing.text(below(far), Anchor::End, text!("rim {}", style.length(lamp.rim)));
    drawing
}
