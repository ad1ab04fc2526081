//! The areas as rectangles to scale, side by side; what is taken off is hatched.

use uom::si::length::meter;

use super::Inputs;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Area, Style};

/// More rectangles than this are not drawn: they could not be told apart.
const MOST_DRAWN: usize = 40;

/// Draws each row's rectangle once, its longer side across, in lines like words on a page.
pub fn areas(inputs: &Inputs, net: Area, style: Style) -> Drawing {
    let added = inputs.areas.iter().filter(|rectangle| !rectangle.subtract).count();
    let words = format!(
        "{added} coated and {} taken-off rectangles to scale, {} in all.",
        inputs.areas.len() - added,
        style.area(net)
    );
    let mut drawing = Drawing::new("Areas to scale; hatched areas are not coated", words);
    let sizes: Vec<(f64, f64)> = inputs
        .areas
        .iter()
        .take(MOST_DRAWN)
        .map(|area| (area.length.get::<meter>(), area.width.get::<meter>()))
        .map(|(a, b)| (a.max(b), a.min(b)))
        .collect();
    let widest = sizes.iter().fold(0.0_f64, |widest, (across, _)| widest.max(*across));
    // Room for the figures, whose size does not scale.
    let room = widest * 0.2;
    let (mut x, mut y, mut line_height) = (0.0, 0.0, 0.0_f64);
    for (index, (area, (across, down))) in inputs.areas.iter().zip(sizes).enumerate() {
        if x > 0.0 && x + across > widest * 1.6 {
            (x, y, line_height) = (0.0, y + line_height + room, 0.0);
        }
        let (near, far) = (Point::metres(x, y), Point::metres(x + across, y + down));
        let fill = if area.subtract { Fill::Waste } else { Fill::Stock };
        drawing.rectangle(Pen::Solid, fill, near, far);
        let (long, short) = (area.length.max(area.width), area.length.min(area.width));
        drawing.dimension(near, Point::metres(far.x, near.y), 1.0, style.length(long));
        drawing.dimension(Point::metres(far.x, near.y), far, 1.0, style.length(short));
        drawing.text(
            Point::metres(x + across / 2.0, y + down + room * 0.3),
            Anchor::Middle,
            super::words::named(area, index),
        );
        x += across + room;
        line_height = line_height.max(down);
    }
    drawing
}
