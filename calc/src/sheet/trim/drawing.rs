//! The trim's sides unrolled, with the line to cut; and a section that shows why it runs there.

use super::words;
use crate::text::text;
use uom::si::length::meter;

use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::opening::trim::{CornerCut, Cut, Flange};
use crate::quantity::Style;

pub fn drawings(flange: &Flange, cut: &Cut, style: Style) -> Vec<Drawing> {
    let deepest = cut
        .corners
        .iter()
        .reduce(|deepest, corner| if corner.cut > deepest.cut { corner } else { deepest });
    let first = if cut.sides.is_empty() {
        heights(flange, cut, style)
    } else {
        unrolled(flange, cut, style)
    };
    std::iter::once(first).chain(deepest.map(|corner| section(flange, corner, style))).collect()
}

/// Width of a corner's gauge. [m]
const GAUGE: f64 = 0.05;

/// The cut line in true size: wrapped round the whole trim where its sides are known, else a
/// gauge for each corner.
pub fn template(flange: &Flange, cut: &Cut, style: Style) -> Drawing {
    let height = flange.height.get::<meter>();
    let whole = !cut.sides.is_empty() && flange.sides.is_some();
    let mut drawing = if whole {
        Drawing::new(
            "Cut line round the trim",
            "Wrap it round the face of the neck, inside or outside, on which the corners follow from left to right in this order with the roof-side edge up; its upper edge along that edge, each upright on its corner. Check that its ends meet before you cut along the dashes.",
        )
    } else {
        Drawing::new(
            "Gauges for the corners",
            "Hold each at its corner, its upper edge along the roof-side edge, mark the level of the dashes, and join the marks with a straight line.",
        )
    };
    let gap = if whole { 0.0 } else { 0.01 };
    let mut x = 0.0;
    for (at, corner) in cut.corners.iter().enumerate() {
        let side = cut.sides.get(at).filter(|_| whole);
        let width = side.and_then(|side| side.length).map_or(GAUGE, |length| length.get::<meter>());
        let next = if whole { (at + 1) % cut.corners.len() } else { at };
        let from = corner.cut.get::<meter>();
        let to = cut.corners.get(next).map_or(from, |corner| corner.cut.get::<meter>());
        let far = Point::metres(x + width, height);
        drawing.rectangle(Pen::Thin, Fill::Empty, Point::metres(x, 0.0), far);
        drawing.line(Pen::Cut, &[Point::metres(x, from), Point::metres(x + width, to)]);
        let figure = style.mark(corner.cut).text;
        let words = text!("{}: cut off {}", &corner.name, &figure);
        drawing.text(Point::metres(x + 0.002, height + 0.005), Anchor::Start, words);
        x += width + gap;
    }
    drawing
}

/// The four sides side by side as if the trim were slit at the first corner and laid flat, the
/// roof-side edge above. From the first corner round to it again.
fn unrolled(flange: &Flange, cut: &Cut, style: Style) -> Drawing {
    let height = flange.height.get::<meter>();
    let equal = height * 4.0;
    let mut corners = Vec::with_capacity(5);
    let mut x = 0.0;
    for side in &cut.sides {
        corners.push((x, side.from));
        x += side.length.map_or(equal, |length| length.get::<meter>());
    }
    corners.push((x, 0));

    let scale = if flange.sides.is_some() { "to scale" } else { "drawn equally long" };
    let names: Vec<&str> = cut.corners.iter().map(|corner| corner.name.as_str()).collect();
    let mut drawing = Drawing::new(
        "The trim unrolled: roof-side edge above, flange below",
        text!(
            "Four sides {}, from {} and back; the strip above the cut line comes off.",
            &scale,
            names.join(" to ")
        ),
    )
    .strip();
    panel(&mut drawing, cut, &corners, height);
    for (at, (x, corner)) in corners.iter().enumerate() {
        let Some(corner) = cut.corners.get(*corner) else { continue };
        // The last corner is the first again; its figures stand inside the last side.
        heights_at(&mut drawing, *x, corner, flange, at < 4, style);
        let anchor = match at {
            0 => Anchor::Start,
            4 => Anchor::End,
            _ => Anchor::Middle,
        };
        drawing.text(Point::metres(*x, -height * 0.15), anchor, corner.name.clone());
    }
    for (side, ends) in cut.sides.iter().zip(corners.windows(2)) {
        if let (Some(length), [(from, _), (to, _)]) = (side.length, ends) {
            let (from, to) = (Point::metres(*from, height), Point::metres(*to, height));
            drawing.dimension(to, from, 1.5, style.length(length));
        }
    }
    drawing
}

/// Each corner's neck by itself, where the sides between them are not known.
fn heights(flange: &Flange, cut: &Cut, style: Style) -> Drawing {
    let height = flange.height.get::<meter>();
    let mut drawing = Drawing::new(
        "The trim's height at each corner: roof-side edge above, flange below",
        "One strip for each corner; what lies above the cut line comes off.",
    );
    for (at, corner) in cut.corners.iter().enumerate() {
        let x = at as f64 * height * 2.0;
        let far = x + height;
        let level = |drawing: &mut Drawing, from: f64, to: f64, fill| {
            drawing.rectangle(Pen::Solid, fill, Point::metres(x, from), Point::metres(far, to));
        };
        let line = corner.cut.get::<meter>();
        level(&mut drawing, line, height, Fill::Stock);
        level(&mut drawing, 0.0, line, Fill::Waste);
        drawing.line(Pen::Cut, &[Point::metres(x, line), Point::metres(far, line)]);
        heights_at(&mut drawing, far, corner, flange, true, style);
        drawing.text(Point::metres(x, -height * 0.15), Anchor::Start, corner.name.clone());
    }
    drawing
}

/// What stays and what comes off between the corners, and the line to cut.
fn panel(drawing: &mut Drawing, cut: &Cut, corners: &[(f64, usize)], height: f64) {
    let line: Vec<Point> = corners
        .iter()
        .filter_map(|(x, corner)| {
            Some(Point::metres(*x, cut.corners.get(*corner)?.cut.get::<meter>()))
        })
        .collect();
    let width = corners.last().map_or(0.0, |(x, _)| *x);
    let mut kept = vec![Point::metres(width, height), Point::metres(0.0, height)];
    kept.extend(&line);
    drawing.area(Pen::Solid, Fill::Stock, &kept);
    let mut waste = vec![Point::metres(width, 0.0), Point::metres(0.0, 0.0)];
    waste.extend(&line);
    drawing.area(Pen::Solid, Fill::Waste, &waste);
    for (x, _) in corners {
        drawing.line(Pen::Thin, &[Point::metres(*x, 0.0), Point::metres(*x, height)]);
    }
    drawing.line(Pen::Cut, &line);
}

/// Both heights at a corner, to the right of it or to the left, written so that the head stays upright.
fn heights_at(
    drawing: &mut Drawing,
    x: f64,
    corner: &CornerCut,
    flange: &Flange,
    right: bool,
    style: Style,
) {
    let height = flange.height.get::<meter>();
    let line = corner.cut.get::<meter>();
    let (x, anchor) =
        if right { (x + height * 0.08, Anchor::Start) } else { (x - height * 0.08, Anchor::End) };
    let off = style.mark(corner.cut).text;
    let keep = words::kept(corner, flange, style);
    for (from, to, words, length) in [(0.0, line, "off", off), (line, height, "keep", keep)] {
        if to > from {
            let middle = Point::metres(x, f64::midpoint(from, to));
            drawing.text(middle, anchor, text!("{} {}", &words, &length));
        }
    }
}

/// The neck and the flange at one corner: uncut and pushed up on the left, cut on the right.
fn section(flange: &Flange, corner: &CornerCut, style: Style) -> Drawing {
    let height = flange.height.get::<meter>();
    let line = corner.cut.get::<meter>();
    let clearance = flange.clearance.get::<meter>().min(line);
    let standoff = line - clearance;
    let ceiling = height - standoff;
    let (wall, rim) = (height * 0.05, height * 0.5);
    let mut drawing = Drawing::new(
        text!("Section at {}: uncut and pushed up, then cut", &corner.name),
        "On the left the uncut trim sits on the roof frame and its flange stands off the ceiling; on \
         the right the strip along the roof-side edge is cut off and the flange meets the ceiling.",
    );
    let span = height * 4.4;
    for y in [0.0, ceiling] {
        drawing.line(Pen::Solid, &[Point::metres(-height * 1.4, y), Point::metres(span, y)]);
    }
    drawing.text(Point::metres(span, -height * 0.2), Anchor::End, "roof frame");
    drawing.text(Point::metres(span, ceiling - height * 0.06), Anchor::End, "ceiling");
    let flange_at = |drawing: &mut Drawing, x: f64, top: f64, face: f64| {
        let bottom = Point::metres(x + wall, face);
        drawing.rectangle(Pen::Solid, Fill::Stock, Point::metres(x, top), bottom);
        let (inner, outer) = (Point::metres(x, face), Point::metres(x + rim, face + wall));
        drawing.rectangle(Pen::Solid, Fill::Stock, inner, outer);
    };
    let (uncut, done) = (0.0, height * 2.0);
    flange_at(&mut drawing, uncut, 0.0, height);
    flange_at(&mut drawing, done, clearance, ceiling);
    let (edge, below) = (Point::metres(uncut, 0.0), Point::metres(uncut + wall, line));
    drawing.rectangle(Pen::Solid, Fill::Waste, edge, below);
    let cut_line = [Point::metres(-wall, line), Point::metres(wall * 2.0, line)];
    drawing.line(Pen::Cut, &cut_line);
    // Figures above and below: beside the lines they would be turned, and wider than the drawing.
    let mut measure = |x: f64, from: f64, to: f64, below: f64, words: &str, length| {
        drawing.dimension(Point::metres(x, from), Point::metres(x, to), 1.0, "");
        let words = text!("{} {}", &words, &length);
        drawing.text(Point::metres(uncut.max(x - rim), below), Anchor::Start, words);
    };
    let under = height * 1.25;
    let standoff_text = style.short(flange.height - corner.keep - flange.clearance);
    measure(uncut, line, 0.0, -height * 0.2, "cut off", style.mark(corner.cut).text);
    measure(rim, ceiling, height, under, "standoff", standoff_text);
    let kept = words::kept(corner, flange, style);
    measure(done + rim, clearance, ceiling, under, "keep", kept);
    drawing
}
