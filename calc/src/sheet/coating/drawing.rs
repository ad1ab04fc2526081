//! The areas as rectangles to scale, side by side; what is taken off is hatched.

use uom::si::length::meter;

use super::inputs::Job;
use super::shown::named;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Area, Length, Style};
use crate::words::{Arg, coating as words};

/// So many rectangles are on one drawing: of more, none could be told from another.
const ON_ONE: usize = 24;

/// A rectangle to draw.
struct Drawn {
    name: String,
    across: Length,
    down: Length,
    fill: Fill,
}

/// Draws each row's rectangle or board once, its longer side across, in lines like words on a page.
pub fn areas(job: &Job, net: Area, style: Style) -> Vec<Drawing> {
    let areas = &job.inputs.areas;
    let off = areas.iter().filter(|rectangle| rectangle.subtract).count();
    let (coated, area) = (areas.len() + job.boards.len() - off, Arg::area(net));
    let words = style.say(words::DrawingWords { coated, off, area });
    let all = rectangles(job, style);
    // All drawings have one scale.
    let longest = all.iter().map(|one| one.across.get::<meter>()).fold(0.0, f64::max);
    let blank = Drawing::new(style.say(words::DRAWING), words);
    all.chunks(ON_ONE).map(|some| side_by_side(some, longest, blank.clone(), style)).collect()
}

fn side_by_side(some: &[Drawn], longest: f64, mut drawing: Drawing, style: Style) -> Drawing {
    // Room for the figures, whose size does not scale.
    let room = longest * 0.3;
    let (mut x, mut y, mut line_height) = (0.0, 0.0, 0.0_f64);
    for one in some {
        let (across, down) = (one.across.get::<meter>(), one.down.get::<meter>());
        if x > 0.0 && x + across > longest {
            (x, y, line_height) = (0.0, y + line_height + room, 0.0);
        }
        let (near, far) = (Point::metres(x, y), Point::metres(x + across, y + down));
        drawing.rectangle(Pen::Solid, one.fill, near, far);
        let corner = Point::metres(far.x, near.y);
        drawing.dimension(near, corner, 1.0, style.length(one.across));
        drawing.dimension(corner, far, 1.0, style.length(one.down));
        let below = Point::metres(x, far.y + room * 0.2);
        drawing.text(below, Anchor::Start, one.name.clone());
        x += across + room;
        line_height = line_height.max(down);
    }
    drawing
}

fn rectangles(job: &Job, style: Style) -> Vec<Drawn> {
    let drawn = |name, length: Length, width: Length, fill| Drawn {
        name,
        across: length.max(width),
        down: length.min(width),
        fill,
    };
    let areas = job.inputs.areas.iter().enumerate().map(|(index, area)| {
        let fill = if area.subtract { Fill::Waste } else { Fill::Stock };
        let number = words::AreaNumber { number: index + 1 }.into();
        let name = named(&area.label, number, area.count, style);
        let name = match area.faces {
            1 => name,
            _ => style.say(words::BothFaces { name }),
        };
        drawn(name, area.length, area.width, fill)
    });
    let boards = job.boards.iter().enumerate().filter_map(|(index, boards)| {
        let number = words::BoardNumber { number: index + 1 }.into();
        let name = named(&boards.label, number, boards.number(), style);
        // Of boards that differ, the first stands for all.
        let (length, width) = boards.pieces.first()?;
        Some(drawn(name, *length, *width, Fill::Stock))
    });
    areas.chain(boards).collect()
}
