//! What is said about lamps: answers, remarks, tables and working.

use uom::si::f64::Length;

use super::{Job, Lit};
use crate::formula::step;
use crate::light::photometry::{
    BeamModel, Below, EvenPeak, FadingPeak, POINT_METHOD, is_point_source,
};
use crate::light::placement::{Pitch, Problem};
use crate::light::recommended::RECOMMENDED;
use crate::quantity::Style;
use crate::report::{Answer, Remark, Step, Table, TableRow, Weight};
use crate::sorting::sort_by_key;
use crate::words::{Arg, lights as words};

pub(super) fn answers(job: &Job, found: &Lit, style: Style) -> Vec<Answer> {
    let moved = found.lamps.iter().filter(|lamp| lamp.is_moved()).count();
    let watts = Arg::lamp_watts(found.watts_total);
    let [lowest, mean, highest] =
        [found.lux.lowest, found.lux.mean, found.lux.highest].map(Arg::illuminance);
    let lamp = &job.inputs.lamp;
    // What the saw cuts comes first.
    vec![
        Answer::new(style.say(words::HOLES), style.length(lamp.hole))
            .note(style.say(words::HolesNote { rim: lamp.rim, depth: lamp.depth })),
        Answer::new(style.say(words::COUNT), found.lamps.len().to_string())
            .note(style.say(words::CountNote { moved, watts })),
        Answer::new(style.say(words::MEAN), style.write(&mean))
            .note(style.say(words::MeanNote { lowest, highest })),
    ]
}

pub(super) fn remarks(job: &Job, found: &Lit, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    for (index, lamp) in found.lamps.iter().enumerate() {
        let text = match lamp.problem {
            Some(Problem::NoClearSpot) => style.say(words::NoClearSpot { lamp: index + 1 }),
            // Told once for each pair.
            Some(Problem::TooClose { to, at_most }) if to > index || !told(found, to, index) => {
                let (one, other) = (index + 1, to + 1);
                match at_most {
                    Some(most) => style.say(words::TooMany { most, one, other }),
                    None => style.say(words::TooClose { one, other }),
                }
            }
            _ => continue,
        };
        remarks.push(Remark::warning(text));
    }
    let depth = job.inputs.lamp.depth;
    if let Some(space) = job.inputs.space_above.filter(|space| *space < depth) {
        remarks.push(Remark::warning(style.say(words::TooDeep { depth, space })));
    }
    let off: Vec<usize> = (1..)
        .zip(&found.lamps)
        .filter(|(_, lamp)| !lamp.symmetric)
        .map(|(place, _)| place)
        .collect();
    if !off.is_empty() {
        let (count, lamps) = (off.len(), Arg::each(off));
        remarks.push(Remark::note(style.say(words::NotMirrored { count, lamps })));
    }
    if job.rise() <= Length::default() {
        remarks.push(Remark::note(style.say(words::NO_RISE)));
    }
    if job.rib_width_missing {
        remarks.push(Remark::warning(style.say(words::NO_RIB_WIDTH)));
    }
    if job.supports.is_empty() && job.openings.is_empty() {
        remarks.push(Remark::note(style.say(words::NO_OBSTACLES)));
    }
    if !is_point_source(found.height, job.inputs.lamp.rim) {
        remarks.push(Remark::note(style.say(words::NOT_A_POINT)));
    }
    remarks.push(Remark::note(style.say(words::DIRECT_ONLY)));
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

fn told(found: &Lit, lamp: usize, of: usize) -> bool {
    found
        .lamps
        .get(lamp)
        .is_some_and(|lamp| matches!(lamp.problem, Some(Problem::TooClose { to, .. }) if to == of))
}

pub(super) fn spots(found: &Lit, style: Style) -> Table {
    let rows = (1_u32..).zip(&found.lamps).map(|(place, lamp)| TableRow {
        cells: vec![
            place.to_string(),
            style.mark(lamp.x).text,
            style.mark(lamp.y).text,
            if lamp.is_moved() { style.length(lamp.moved) } else { String::new() },
            style.say(if lamp.clear { words::SPOTS_YES } else { words::SPOTS_NO }),
        ],
        chosen: false,
    });
    Table {
        title: style.say(words::SPOTS),
        heads: [words::SPOTS_LAMP, words::X, words::Y, words::SPOTS_MOVED, words::SPOTS_CLEAR]
            .map(|head| style.say(head))
            .into(),
        rows: rows.collect(),
    }
}

pub(super) fn tasks(found: &Lit, style: Style) -> Table {
    let rows = RECOMMENDED.iter().map(|recommended| {
        let reached = if found.lux.lowest >= recommended.lux {
            words::REACHED_EVERYWHERE
        } else if found.lux.mean >= recommended.lux {
            words::REACHED_ON_AVERAGE
        } else if found.lux.highest >= recommended.lux {
            words::REACHED_UNDER_LAMPS
        } else {
            words::REACHED_NOWHERE
        };
        TableRow {
            cells: vec![
                style.say(recommended.task),
                style.write(&Arg::illuminance(recommended.lux)),
                style.say(reached),
                recommended.source.say(style.words),
            ],
            chosen: false,
        }
    });
    Table {
        title: style.say(words::TASKS),
        heads: [words::TASKS_TASK, words::TASKS_LIGHT, words::TASKS_REACHED, words::TASKS_SOURCE]
            .map(|head| style.say(head))
            .into(),
        rows: rows.collect(),
    }
}

pub(super) fn working(job: &Job, found: &Lit, style: Style) -> Vec<Step> {
    let mut steps = Vec::new();
    if let Some((rows, columns)) = job.grid() {
        let along = Pitch { side: job.ceiling.length, count: columns };
        let across = Pitch { side: job.ceiling.width, count: rows };
        steps.push(step(words::STEP_ALONG, &along, style));
        steps.push(step(words::STEP_ACROSS, &across, style));
    }
    let (lumens, angle) = (job.inputs.lamp.lumens, job.inputs.lamp.beam_angle);
    steps.push(match job.inputs.model {
        BeamModel::HalfPower => step(words::STEP_PEAK, &FadingPeak { lumens, angle }, style),
        BeamModel::Cone => step(words::STEP_CONE, &EvenPeak { lumens, angle }, style),
    });
    let below = Below { peak_cd: found.beam.peak_cd(), height: found.height };
    steps.push(step(words::STEP_BELOW, &below, style));
    let (lamps, cells) = (found.lamps.len(), found.map.columns * found.map.rows);
    // Thousands of terms: only how many there are is shown.
    steps.push(Step::new(
        style.say(words::STEP_MEAN),
        "Ē = Σᵢ Σⱼ E(i, j) / n",
        style.say(words::StepMeanNumbers { lamps, cells }),
        style.write(&Arg::illuminance(found.lux.mean)),
        &POINT_METHOD,
    ));
    steps
}
