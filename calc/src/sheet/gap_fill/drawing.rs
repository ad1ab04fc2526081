//! The mixing cup with its two marks, and sections of what is filled; both to scale.

use std::f64::consts::PI;

use uom::si::f64::Length;
use uom::si::length::meter;
use uom::si::volume::cubic_meter;

use super::found::Found;
use super::inputs::{Inputs, Job};
use super::shortened;
use super::shown::{clauses, measured, names};
use crate::coating::gap::Hole;
use crate::coating::mixing::By;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::words::{Arg, Msg, gap_fill as words};

/// So many sections stand on one drawing.
const LINES: usize = 5;

/// One cup with one batch in it: part a up to the first mark, part b from there to the second.
pub fn cup(job: &Job, found: &Found, style: Style) -> Drawing {
    let (first, second) = (found.cup.first, found.cup.second);
    let (a, whole) = (first.get::<cubic_meter>(), second.get::<cubic_meter>());
    // Without a cup given: one as high as it is wide when the batch is in.
    let across = job
        .inputs
        .cup_diameter
        .map_or_else(|| libm::cbrt(whole * 4.0 / PI), |across| across.get::<meter>());
    let height = |volume: f64| volume / (PI / 4.0 * across * across);
    let (top, a_up_to) = (height(whole), height(a));
    let rim = top * 1.25;
    let level = |up: f64| rim - up;
    // By mass the scale tells; the cup shows no more than where the parts lie.
    let by = job.inputs.mix.by();
    let pour = measured(by, &found.in_cup, style);
    let (first_amount, first_level) = (pour.first.as_str(), pour.first.as_str());
    let (second_amount, second_level) = (pour.second.as_str(), pour.level.as_str());
    let poured: [Msg; 2] = match by {
        By::Mass => [
            words::WeighFirst { amount: first_amount, level: first_level }.into(),
            words::WeighSecond { amount: second_amount, level: second_level }.into(),
        ],
        By::Volume => [
            words::PourFirst { amount: first_amount, level: first_level }.into(),
            words::PourSecond { amount: second_amount, level: second_level }.into(),
        ],
    };
    let title = if found.cups == 1 { words::DRAWING_CUP_BATCH } else { words::DRAWING_CUP };
    let [first, second] = poured.clone();
    let mut drawing =
        Drawing::new(style.say(title), style.say(words::DrawingCupWords { first, second }));
    let at = Point::metres;
    drawing.rectangle(Pen::Thin, Fill::Level(1), at(0.0, level(a_up_to)), at(across, rim));
    drawing.rectangle(Pen::Thin, Fill::Level(3), at(0.0, level(top)), at(across, level(a_up_to)));
    // The bench that it stands on is as long as the texts beside it are.
    drawing.line(Pen::Thin, &[at(-across * 0.1, rim), at(across * 5.4, rim)]);
    let wall = [at(0.0, 0.0), at(0.0, rim), at(across, rim), at(across, 0.0)];
    drawing.line(Pen::Solid, &wall);
    // The upper text stands clear of the lower one, its line bent up to it.
    let clear = a_up_to + across * 0.3;
    let [a_words, b_words] = poured.map(|message| style.say(message));
    for (up, beside, words) in [(a_up_to, a_up_to, a_words), (top, top.max(clear), b_words)] {
        let line = [at(0.0, level(up)), at(across, level(up)), at(across * 1.1, level(beside))];
        drawing.line(Pen::Mark, &line);
        drawing.text(at(across * 1.15, level(beside)), Anchor::Start, words);
    }
    if let Some(cup) = job.inputs.cup_diameter {
        drawing.dimension(at(across, rim), at(0.0, rim), 1.0, style.short(cup));
    }
    drawing
}

/// Sections across each row's gap or hole, one below the other, with name and size beside it.
pub fn sections(inputs: &Inputs, style: Style) -> Vec<Drawing> {
    let gaps = inputs.gaps.iter().map(|gap| Section::Straight(gap.width, gap.depth));
    let holes = inputs.holes.iter().map(|holes| Section::Hole(holes.hole()));
    let all: Vec<(String, Section)> =
        names(inputs, style).into_iter().zip(gaps.chain(holes)).collect();
    let sizes = all.iter().map(|(_, section)| section.size());
    let largest = sizes.fold(0.0_f64, |largest, (width, depth)| largest.max(width).max(depth));

    // All drawings have one scale: each has as many lines.
    let chunks = all.chunks(LINES);
    let drawings = chunks.enumerate().map(|(part, some)| {
        let title = match part {
            0 => words::DRAWING_SECTIONS,
            _ => words::DRAWING_SECTIONS_CONTINUED,
        };
        let each = some.iter().map(|(name, section)| {
            words::Section { name: name.as_str(), size: section.size_in_words() }.into()
        });
        let sections = clauses(each).map_or_else(|| Arg::from(""), Arg::from);
        let words = style.say(words::DrawingSectionsWords { sections });
        let mut drawing = Drawing::new(style.say(title), words);
        let wood = largest * 1.6;
        for (index, (name, section)) in some.iter().enumerate() {
            let y = index as f64 * largest * 1.3;
            let far = Point::metres(wood, y + largest * 1.12);
            drawing.rectangle(Pen::Thin, Fill::Stock, Point::metres(0.0, y), far);
            section.draw(&mut drawing, wood / 2.0, y);
            let beside = |down: f64| Point::metres(wood + largest * 0.1, y + largest * down);
            drawing.text(beside(0.2), Anchor::Start, shortened(name));
            for (line, words) in section.lines().into_iter().enumerate() {
                drawing.text(beside(0.56 + 0.36 * line as f64), Anchor::Start, style.say(words));
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
    fn lines(&self) -> Vec<Msg> {
        match *self {
            Self::Straight(width, depth) => {
                let (width, depth) = (Arg::short(width), Arg::short(depth));
                vec![words::SectionGap { width, depth }.into()]
            }
            Self::Hole(Hole::Plain { diameter, depth }) => {
                let (diameter, depth) = (Arg::short(diameter), Arg::short(depth));
                vec![words::SectionHole { diameter, depth }.into()]
            }
            Self::Hole(Hole::Countersunk { top, bottom, depth }) => {
                let (top, bottom) = (Arg::short(top), Arg::short(bottom));
                let deep = words::SectionConeDeep { depth: Arg::short(depth) };
                vec![words::SectionCone { top, bottom }.into(), deep.into()]
            }
            Self::Hole(Hole::Plugged { diameter, plug_diameter, depth, .. }) => {
                let (diameter, depth) = (Arg::short(diameter), Arg::short(depth));
                let plug = words::SectionPlug { diameter: Arg::short(plug_diameter) };
                vec![words::SectionHole { diameter, depth }.into(), plug.into()]
            }
        }
    }

    /// The same in one line.
    fn size_in_words(&self) -> Arg {
        let joined = self
            .lines()
            .into_iter()
            .reduce(|first, second| words::SizeLines { first, second }.into());
        joined.map_or_else(|| Arg::from(""), Arg::from)
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
