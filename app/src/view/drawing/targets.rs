//! What can be tapped in a drawing: a button over each part that asks for what it shows.

use calc::drawing::Drawing;

use super::layout::{Layout, Room};
use super::paper::Paper;

/// How wide and how high a button is at least, where its neighbors leave it room. [px]
pub(super) const TOUCH: f64 = 48.0;
/// Of two that overlap, one that is smaller than this share of the other is whole, and the larger one gives way where it is under it.
const MUCH_SMALLER: f64 = 0.75;

/// The buttons of a laid-out drawing as SVG of this height, the later over the earlier as its shapes are.
pub(super) fn over(drawing: &Drawing, layout: &Layout<'_>, height: f64) -> String {
    let mut paper = Paper::over(layout.width, height);
    for (target, room) in drawing.targets.iter().zip(rooms(drawing, layout, height)) {
        paper.push("<foreignObject");
        paper.number("x", room.left);
        paper.number("y", room.top);
        paper.number("width", room.right - room.left);
        paper.number("height", room.bottom - room.top);
        paper.push("><button type=\"button\" data-do=\"ask\"");
        paper.attribute("class", if target.given { "target" } else { "target blank" });
        paper.said("data-with", &target.asks);
        paper.said("aria-label", &target.name);
        paper.push("></button></foreignObject>");
    }
    paper.finish()
}

/// The room of each button: large enough for a thumb, on the sheet, and shared between neighbors so that a tap goes to the nearest.
pub(super) fn rooms(drawing: &Drawing, layout: &Layout<'_>, height: f64) -> Vec<Room> {
    let cores: Vec<Room> =
        drawing.targets.iter().map(|target| layout.room_of(&target.shapes)).collect();
    let mut rooms: Vec<Room> =
        cores.iter().map(|core| grown(*core, (layout.width, height))).collect();
    let whole = rooms.clone();
    for (at, core) in cores.iter().enumerate() {
        for (other, beside) in cores.iter().enumerate().skip(at + 1) {
            let (Some(a), Some(b)) = (whole.get(at), whole.get(other)) else { continue };
            let (small, large) = (area(a).min(area(b)), area(a).max(area(b)));
            if small < large * MUCH_SMALLER || !a.meets(b) {
                continue;
            }
            let Ok([first, second]) = rooms.get_disjoint_mut([at, other]) else { continue };
            share(first, second, core, beside);
        }
    }
    rooms
}

/// At least so large, around the same middle, and on the sheet.
fn grown(core: Room, (width, height): (f64, f64)) -> Room {
    let side = |low: f64, high: f64, end: f64| {
        let more = ((TOUCH - (high - low)) / 2.0).max(0.0);
        let (low, high) = (low - more, high + more);
        let back = (-low).max(0.0) - (high - end).max(0.0);
        ((low + back).max(0.0), (high + back).min(end))
    };
    let (left, right) = side(core.left, core.right, width);
    let (top, bottom) = side(core.top, core.bottom, height);
    Room { left, top, right, bottom }
}

/// Draws the border of two that overlap midway between what they stand for, in what is free between the two.
fn share(first: &mut Room, second: &mut Room, core: &Room, beside: &Room) {
    let x = (beside.left - core.right).max(core.left - beside.right);
    let y = (beside.top - core.bottom).max(core.top - beside.bottom);
    if x.max(y) <= 0.0 {
        return;
    }
    // Quarters of what both reach over: half of one middle and half of the other.
    let across = (core.left + core.right + beside.left + beside.right) / 4.0;
    let down = (core.top + core.bottom + beside.top + beside.bottom) / 4.0;
    if x >= y && core.right < beside.left {
        side_by_side(first, second, across.clamp(core.right, beside.left));
    } else if x >= y {
        side_by_side(second, first, across.clamp(beside.right, core.left));
    } else if core.bottom < beside.top {
        one_below(first, second, down.clamp(core.bottom, beside.top));
    } else {
        one_below(second, first, down.clamp(beside.bottom, core.top));
    }
}

fn side_by_side(left: &mut Room, right: &mut Room, border: f64) {
    left.right = left.right.min(border);
    right.left = right.left.max(border);
}

fn one_below(above: &mut Room, below: &mut Room, border: f64) {
    above.bottom = above.bottom.min(border);
    below.top = below.top.max(border);
}

fn area(room: &Room) -> f64 {
    (room.right - room.left) * (room.bottom - room.top)
}
