//! The mixing cup with its two marks, and sections of what is filled; both to scale.

use crate::text::text;
use std::f64::consts::PI;

use uom::si::f64::Length;
use uom::si::length::meter;
use uom::si::volume::cubic_meter;

use super::words::{named, shortened};
use super::{Inputs, Worked};
use crate::coating::gap::Hole;
use crate::coating::mixing::By;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;

/// More sections than this are not drawn: they could not be told apart.
const MOST_DRAWN: usize = 24;
/// So many sections stand on one drawing.
const LINES: usize = 5;

/// One cup with one batch in it: part a up to the first mark, part b from there to the second.
pub fn cup(inputs: &Inputs, worked: &Worked, style: Style) -> Drawing {
    let (first, second) = (worked.cup.first, worked.cup.second);
    let (a, whole) = (first.get::<cubic_meter>(), second.get::<cubic_meter>());
    // Without a cup given: one as high as it is wide when the batch is in.
    let across =
        inputs.cup.map_or_else(|| libm::cbrt(whole * 4.0 / PI), |across| across.get::<meter>());
    let height = |volume: f64| volume / (PI / 4.0 * across * across);
    let (top, a_up_to) = (height(whole), height(a));
    let rim = top * 1.25;
    let level = |up: f64| rim - up;
    // By mass the scale tells; the cup shows no more than where the parts lie.
    let pour = match worked.in_cup.a_mass.zip(worked.in_cup.b_mass) {
        Some((a, b)) if inputs.mix.by == By::Mass => style.weighed_into_one(a, b),
        _ => style.poured_into_one(worked.in_cup.a, worked.in_cup.b),
    };
    let (verb, read) = match inputs.mix.by {
        By::Mass => ("weigh", "scale"),
        By::Volume => ("pour", "level"),
    };
    let words = [
        text!("{} {} a; {} {}", &verb, &pour.first, &read, &pour.first),
        text!("then {} b; {} {}", &pour.second, &read, &pour.level),
    ];
    let mut drawing = Drawing::new(
        if worked.cups == 1 { "One batch in a straight-walled cup" } else { "One cup of a batch" },
        text!("{}, {}.", &words[0], &words[1]),
    );
    let at = Point::metres;
    drawing.rectangle(Pen::Thin, Fill::Level(1), at(0.0, level(a_up_to)), at(across, rim));
    drawing.rectangle(Pen::Thin, Fill::Level(3), at(0.0, level(top)), at(across, level(a_up_to)));
    // The bench that it stands on is as long as the texts beside it are.
    drawing.line(Pen::Thin, &[at(-across * 0.1, rim), at(across * 5.4, rim)]);
    let wall = [at(0.0, 0.0), at(0.0, rim), at(across, rim), at(across, 0.0)];
    drawing.line(Pen::Solid, &wall);
    // The upper text stands clear of the lower one, its line bent up to it.
    let clear = a_up_to + across * 0.3;
    let [a_words, b_words] = words;
    for (up, beside, words) in [(a_up_to, a_up_to, a_words), (top, top.max(clear), b_words)] {
        let line = [at(0.0, level(up)), at(across, level(up)), at(across * 1.1, level(beside))];
        drawing.line(Pen::Mark, &line);
        drawing.text(at(across * 1.15, level(beside)), Anchor::Start, words);
    }
    if let Some(cup) = inputs.cup {
        drawing.dimension(at(across, rim), at(0.0, rim), 1.0, style.short(cup));
    }
    drawing
}

/// Sections across each row's gap or hole, one below the other, with name and size beside it.
pub fn sections(inputs: &Inputs, style: Style) -> Vec<Drawing> {
    let gaps = inputs.gaps.iter().enumerate().map(|(index, gap)| {
        (named(&gap.label, "gap", index), Section::Straight(gap.width, gap.depth))
    });
    let holes = inputs
        .holes
        .iter()
        .enumerate()
        .map(|(index, holes)| (named(&holes.label, "hole", index), Section::Hole(holes.hole)));
    let all: Vec<(String, Section)> = gaps.chain(holes).take(MOST_DRAWN).collect();
    let sizes = all.iter().map(|(_, section)| section.size());
    let largest = sizes.fold(0.0_f64, |largest, (width, depth)| largest.max(width).max(depth));

    // All drawings have one scale: each has as many lines.
    let chunks = all.chunks(LINES);
    let drawings = chunks.enumerate().map(|(part, some)| {
        let title = "Sections across gaps and holes, filled";
        let title = if part == 0 { title.to_owned() } else { text!("{}, continued", title) };
        let words = some
            .iter()
            .map(|(name, section)| text!("{}: {}", name, section.words(style).join(", ")));
        let words = text!("{}.", words.collect::<Vec<_>>().join("; "));
        let mut drawing = Drawing::new(title, words);
        let wood = largest * 1.6;
        for (index, (name, section)) in some.iter().enumerate() {
            let y = index as f64 * largest * 1.3;
            let far = Point::metres(wood, y + largest * 1.12);
            drawing.rectangle(Pen::Thin, Fill::Stock, Point::metres(0.0, y), far);
            section.draw(&mut drawing, wood / 2.0, y);
            let beside = |down: f64| Point::metres(wood + largest * 0.1, y + largest * down);
            drawing.text(beside(0.2), Anchor::Start, shortened(name));
            for (line, words) in section.words(style).into_iter().enumerate() {
                drawing.text(beside(0.56 + 0.36 * line as f64), Anchor::Start, words);
            }
        }
        drawing
    });
    drawings.collect()
}

/// What is seen where a gap or hole is cut across.
enum Section {
    Straight(Length, Length),
    Hole(Hole),
}

impl Section {
    /// Width at the surface, and depth, in metres.
    fn size(&self) -> (f64, f64) {
        let (width, depth) = match *self {
            Self::Straight(width, depth) => (width, depth),
            Self::Hole(Hole::Plain { diameter, depth } | Hole::Plugged { diameter, depth, .. }) => {
                (diameter, depth)
            }
            Self::Hole(Hole::Countersunk { top, depth, .. }) => (top, depth),
        };
        (width.get::<meter>(), depth.get::<meter>())
    }

    /// Its size, in short lines: `3 mm wide, 18 mm deep`; `Ø 9 mm to 4 mm`, `4 mm deep`.
    fn words(&self, style: Style) -> Vec<String> {
        let deep = |depth| text!("{} deep", style.short(depth));
        match *self {
            Self::Straight(width, depth) => {
                vec![text!("{} wide, {}", style.short(width), deep(depth))]
            }
            Self::Hole(Hole::Plain { diameter, depth }) => {
                vec![text!("Ø {}, {}", style.short(diameter), deep(depth))]
            }
            Self::Hole(Hole::Countersunk { top, bottom, depth }) => {
                vec![text!("Ø {} to {}", style.short(top), style.short(bottom)), deep(depth)]
            }
            Self::Hole(Hole::Plugged { diameter, plug_diameter, depth, .. }) => vec![
                text!("Ø {}, {}", style.short(diameter), deep(depth)),
                text!("plug Ø {}", style.short(plug_diameter)),
            ],
        }
    }

    fn draw(&self, drawing: &mut Drawing, middle: f64, surface: f64) {
        let (width, depth) = self.size();
        let bottom = match *self {
            Self::Hole(Hole::Countersunk { bottom, .. }) => bottom.get::<meter>(),
            _ => width,
        };
        let outline = [(-width, 0.0), (width, 0.0), (bottom, depth), (-bottom, depth)]
            .map(|(twice, down)| Point::metres(middle + twice / 2.0, surface + down));
        drawing.area(Pen::Solid, Fill::Level(3), &outline);
        if let Self::Hole(Hole::Plugged { plug_diameter, plug_length, .. }) = *self {
            let half = plug_diameter.get::<meter>() / 2.0;
            let foot = Point::metres(middle + half, surface + plug_length.get::<meter>());
            drawing.rectangle(Pen::Solid, Fill::Stock, Point::metres(middle - half, surface), foot);
        }
    }
}
