//! What is said about lamps: answers, remarks, tables and working.

use crate::sorting::sort_by_key;
use crate::text::text;
use uom::si::f64::Length;
use uom::si::length::meter;

use super::{Figures, Inputs, degrees};
use crate::light::photometry::{
    BeamModel, CONE, COSINE_POWER, LUX_PER_FOOT_CANDLE, POINT_METHOD, is_point_source,
};
use crate::light::placement::{EVEN_ROWS, Placed, Problem};
use crate::light::recommended::RECOMMENDED;
use crate::quantity::{Style, UnitSystem, amount, plain};
use crate::report::{Answer, Remark, Step, Table, TableRow, Weight, texts};

/// Lux, and where they are used foot-candles.
fn lux(value: f64, style: Style) -> String {
    let lux = amount(value, 0, "lx");
    match style.system {
        UnitSystem::Metric => lux,
        UnitSystem::Imperial => {
            text!("{} ({})", &lux, amount(value / LUX_PER_FOOT_CANDLE, 1, "fc"))
        }
    }
}

pub(super) fn answers(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Answer> {
    let moved = figures.placed.iter().filter(|placed| is_moved(placed)).count();
    let map = &figures.map;
    let watts = amount(inputs.lamp.watts * figures.placed.len() as f64, 1, "W");
    vec![
        Answer::new("Lamps", figures.placed.len().to_string()).note(match moved {
            0 => text!("{}; none had to be moved", &watts),
            1 => text!("{}; one moved clear", &watts),
            moved => text!("{}; {} moved clear", &watts, &moved),
        }),
        Answer::new("Mean light on the plane", lux(map.mean, style)).note(text!(
            "from {} to {}",
            lux(map.lowest, style),
            lux(map.highest, style)
        )),
        Answer::new("Holes", style.length(inputs.lamp.hole)).note(text!(
            "under a rim of {}, {} deep",
            style.length(inputs.lamp.rim),
            style.length(inputs.lamp.depth)
        )),
    ]
}

pub(super) fn remarks(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    for (index, placed) in figures.placed.iter().enumerate() {
        match placed.problem {
            Some(Problem::NoClearSpot) => remarks.push(Remark::warning(text!("Lamp {}: there is no clear spot on this ceiling; take a smaller rim or less clearance.", index + 1))),
            // Told once for each pair.
            Some(Problem::TooClose { to, at_most }) if to > index || !told(figures, to, index) => {
                remarks.push(Remark::warning(match at_most {
                    Some(most) => text!(
                        "Lamps {} and {} come too close: no more than {} of these lamps fit on this ceiling with this clearance.",
                        index + 1, to + 1, &most
                    ),
                    None => text!(
                        "Lamps {} and {} come too close: no arrangement that keeps them all clear was found. Move one by hand, or take fewer.",
                        index + 1, to + 1
                    ),
                }));
            }
            _ => {}
        }
    }
    if let Some(space) = inputs.space_above.filter(|space| *space < inputs.lamp.depth) {
        remarks.push(Remark::warning(text!(
            "The lamp is {} deep, and there are {} above the ceiling's face: it does not fit.",
            style.length(inputs.lamp.depth),
            style.length(space)
        )));
    }
    let off: Vec<String> = figures
        .placed
        .iter()
        .enumerate()
        .filter(|(_, placed)| !placed.symmetric)
        .map(|(index, _)| (index + 1).to_string())
        .collect();
    if !off.is_empty() {
        remarks.push(Remark::note(text!(
            "Left and right do not mirror each other at lamps {}: no spot was found for them that is clear on both sides.",
            off.join(", ")
        )));
    }
    if inputs.up_and_over <= Length::default() {
        remarks.push(Remark::note(
            "No way up from the fuse to the ceiling is counted in the wire: enter it under where the wire comes up.",
        ));
    }
    if inputs.rib_width_missing {
        remarks.push(Remark::warning(
            "The ribs' width is not measured: only their centre lines are kept clear, and a lamp may still sit on a rib. Measure it on the body page.",
        ));
    }
    if inputs.supports.is_empty() && inputs.openings.is_empty() {
        remarks.push(Remark::note(
            "No ribs or openings are on the body page: the lamps are kept clear of walls and each \
             other only.",
        ));
    }
    if !is_point_source(figures.height, inputs.lamp.rim) {
        remarks.push(Remark::note(
            "The plane is closer than five times the lamp's size: right below a lamp the light is \
             softer than the map shows.",
        ));
    }
    remarks.push(Remark::note("Direct light alone; a pale ceiling and walls add to it."));
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

/// More than the hair that rounding moves.
pub(super) fn is_moved(placed: &Placed) -> bool {
    placed.moved.get::<meter>() > 1e-6
}

fn told(figures: &Figures, lamp: usize, of: usize) -> bool {
    figures.placed.get(lamp).is_some_and(
        |placed| matches!(placed.problem, Some(Problem::TooClose { to, .. }) if to == of),
    )
}

pub(super) fn tables(figures: &Figures, style: Style) -> Vec<Table> {
    let rows = figures.placed.iter().enumerate().map(|(index, placed)| TableRow {
        cells: vec![
            (index + 1).to_string(),
            style.mark(placed.at.x).text,
            style.mark(placed.at.y).text,
            if is_moved(placed) { style.length(placed.moved) } else { String::new() },
            if placed.clear() { "yes" } else { "no" }.to_owned(),
        ],
        chosen: false,
    });
    let places = Table {
        title: "Where the lamps go".into(),
        heads: texts(&["Lamp", "From the front wall", "From the left wall", "Moved", "Clear"]),
        rows: rows.collect(),
    };
    let map = &figures.map;
    let rows = RECOMMENDED.iter().map(|recommended| TableRow {
        cells: vec![
            recommended.task.to_owned(),
            lux(recommended.lux, style),
            if map.lowest >= recommended.lux {
                "everywhere"
            } else if map.mean >= recommended.lux {
                "on the mean"
            } else if map.highest >= recommended.lux {
                "under the lamps"
            } else {
                "no"
            }
            .to_owned(),
            recommended.source.to_string(),
        ],
        chosen: false,
    });
    let tasks = Table {
        title: "Recommended light, and where it is reached".into(),
        heads: texts(&["Task", "Light", "Reached", "Source"]),
        rows: rows.collect(),
    };
    vec![places, tasks, super::wiring::table(figures, style)]
}

pub(super) fn working(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    if let Some((rows, columns)) = inputs.grid {
        steps.push(Step::new(
            "From lamp to lamp along the body",
            "l / n, half of it to the walls",
            text!("{} / {}", style.length(inputs.ceiling.length), &columns),
            style.length(inputs.ceiling.length / columns as f64),
            &EVEN_ROWS,
        ));
        steps.push(Step::new(
            "From row to row",
            "w / m, half of it to the walls",
            text!("{} / {}", style.length(inputs.ceiling.width), &rows),
            style.length(inputs.ceiling.width / rows as f64),
            &EVEN_ROWS,
        ));
    }
    let lamp = &inputs.lamp;
    let lumens = amount(lamp.lumens, 0, "lm");
    let angle = degrees(lamp.beam_angle);
    let peak = amount(figures.beam.peak_cd(), 1, "cd");
    steps.push(match inputs.model {
        BeamModel::HalfPower => Step::new(
            "Intensity straight down",
            "I₀ = Φ · (m + 1) / 2π, m = −ln 2 / ln cos(a/2)",
            text!("Φ = {}, a = {}", &lumens, &angle),
            peak,
            &COSINE_POWER,
        ),
        BeamModel::Cone => Step::new(
            "Intensity within the beam",
            "I = Φ / (2π · (1 − cos(a/2)))",
            text!("Φ = {}, a = {}", &lumens, &angle),
            peak,
            &CONE,
        ),
    });
    let height = figures.height.get::<meter>();
    steps.push(Step::new(
        "Right below one lamp",
        "E = I / h²",
        text!("{} / ({})²", amount(figures.beam.peak_cd(), 1, "cd"), amount(height, 3, "m")),
        amount(figures.beam.peak_cd() / (height * height), 0, "lx"),
        &POINT_METHOD,
    ));
    let map = &figures.map;
    steps.push(Step::new(
        "Mean over the plane",
        "Σ E(lamp, cell) over all lamps, mean of all cells",
        text!(
            "{} lamps, {} cells",
            figures.placed.len(),
            plain((map.columns * map.rows) as f64, 0)
        ),
        lux(map.mean, style),
        &POINT_METHOD,
    ));
    steps
}
