//! The trim's sides unrolled, with the line to cut; and a section that shows why it runs there.

use uom::si::length::meter;

use super::{kept, names};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::opening::trim::{CornerCut, Cut, Flange};
use crate::quantity::Style;
use crate::words::{Arg, Msg, trim as words};

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
        Drawing::new(style.say(words::TEMPLATE), style.say(words::TEMPLATE_WORDS))
    } else {
        Drawing::new(style.say(words::GAUGES), style.say(words::GAUGES_WORDS))
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
        let (name, cut) = (corner.name.as_str(), Arg::mark(corner.cut));
        let said = style.say(words::TemplateCorner { corner: name, cut });
        drawing.text(Point::metres(x + 0.002, height + 0.005), Anchor::Start, said);
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

    let said: Msg = match flange.sides {
        Some(_) => words::UnrolledToScale { corners: names(cut) }.into(),
        None => words::UnrolledEqual { corners: names(cut) }.into(),
    };
    let mut drawing = Drawing::new(style.say(words::UNROLLED), style.say(said)).strip();
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
    let mut drawing = Drawing::new(style.say(words::HEIGHTS), style.say(words::HEIGHTS_WORDS));
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
    let off = words::HeightsOff { cut: Arg::mark(corner.cut) }.into();
    let keep = words::HeightsKeep { keep: kept(corner, flange, style) }.into();
    let figures: [(f64, f64, Msg); 2] = [(0.0, line, off), (line, height, keep)];
    for (from, to, said) in figures {
        if to > from {
            drawing.text(Point::metres(x, f64::midpoint(from, to)), anchor, style.say(said));
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
    let title = style.say(words::Section { corner: corner.name.as_str() });
    let mut drawing = Drawing::new(title, style.say(words::SECTION_WORDS));
    let span = height * 4.4;
    for y in [0.0, ceiling] {
        drawing.line(Pen::Solid, &[Point::metres(-height * 1.4, y), Point::metres(span, y)]);
    }
    drawing.text(Point::metres(span, -height * 0.2), Anchor::End, style.say(words::SECTION_FRAME));
    let by_ceiling = Point::metres(span, ceiling - height * 0.06);
    drawing.text(by_ceiling, Anchor::End, style.say(words::SECTION_CEILING));
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
    let mut measure = |x: f64, from: f64, to: f64, below: f64, said: Msg| {
        drawing.dimension(Point::metres(x, from), Point::metres(x, to), 1.0, "");
        let at = Point::metres(uncut.max(x - rim), below);
        drawing.text(at, Anchor::Start, style.say(said));
    };
    let under = height * 1.25;
    let standoff = Arg::short(flange.height - corner.keep - flange.clearance);
    let (off, keep) = (Arg::mark(corner.cut), kept(corner, flange, style));
    measure(uncut, line, 0.0, -height * 0.2, words::SectionCutOff { cut: off }.into());
    measure(rim, ceiling, height, under, words::SectionStandoff { standoff }.into());
    measure(done + rim, clearance, ceiling, under, words::SectionKeep { keep }.into());
    drawing
}
