//! The lamp's hole in true size, to be laid on the ceiling.

use uom::si::length::meter;

use super::Lamp;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::words::lights as words;

/// How far the center lines reach past the lamp. [m]
const PAST: f64 = 0.012;

/// Hole, rim and center lines.
pub(super) fn hole(lamp: &Lamp, style: Style) -> Drawing {
    let (hole, rim) = (lamp.hole.get::<meter>() / 2.0, lamp.rim.get::<meter>() / 2.0);
    let mut drawing = Drawing::new(
        style.say(words::TEMPLATE),
        style.say(words::TemplateWords { hole: lamp.hole, rim: lamp.rim }),
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
    drawing.text(below(-far), Anchor::Start, style.say(words::TemplateHole { hole: lamp.hole }));
    drawing.text(below(far), Anchor::End, style.say(words::TemplateRim { rim: lamp.rim }));
    drawing
}
