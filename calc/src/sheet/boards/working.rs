//! How the boards sheet comes to its numbers.

use super::words::first_course;
use super::{Inputs, Worked, last_rips, mm};
use crate::carpentry::boards::{BoardLayout, HALF_BEARING, MARKS};
use crate::carpentry::courses::{
    BALANCED, LEAST_RIP, SHOWN_MM, SHOWN_TAPER, first_course_range_mm, run_out,
};
use crate::carpentry::joints::{ON_SUPPORTS, STRIP_STAGGER};
use crate::carpentry::stations::BETWEEN;
use crate::coating::gap::{Hole, VOLUMES};
use crate::quantity::Style;
use crate::report::Step;
use crate::text::text;

/// So many marks are worked out in full.
const MOST_WORKED: usize = 16;

pub(super) fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let (task, layout) = (&inputs.task, &worked.layout);
    let courses = &layout.courses;
    let mark = |value: f64| style.mark(mm(value)).text;
    let field = task.field_mm - 2.0 * task.side_gap_mm;
    let run = task.run_mm - 2.0 * task.end_gap_mm;
    // Every board with the gap beside it; the last one has none.
    let (gap, pitch) = (task.joint_gap_mm, task.coverage_mm + task.joint_gap_mm);
    let full = ((field + gap + 1e-3) / pitch).floor();
    let left = (field + gap - full * pitch).max(0.0);
    let mut steps = vec![
        Step::new(
            "Field to cover",
            "F − 2 · g",
            text!("{} − 2 · {}", mark(task.field_mm), mark(task.side_gap_mm)),
            mark(field),
            &BALANCED,
        ),
        if gap > 0.0 {
            Step::new(
                "Left over beyond full courses, each with its gap j",
                "r = F + j − n · (b + j)",
                text!(
                    "{} + {} − {} · ({} + {})",
                    mark(field),
                    style.small(mm(gap)),
                    &full,
                    mark(task.coverage_mm),
                    style.small(mm(gap))
                ),
                mark(left),
                &BALANCED,
            )
        } else {
            Step::new(
                "Left over beyond full courses",
                "r = F − n · b",
                text!("{} − {} · {}", mark(field), &full, mark(task.coverage_mm)),
                mark(left),
                &BALANCED,
            )
        },
    ];
    if courses.ripped && courses.count > 1 {
        let less = if gap > 0.0 { text!(" − {}", style.small(mm(gap))) } else { String::new() };
        let (formula, numbers) = if !inputs.balanced() {
            ("last = r − j", text!("{}{}", mark(left), less))
        } else if f64::from(courses.count) > full + 1.5 {
            ("rip = r / 2 − j", text!("{} / 2{}", mark(left), less))
        } else {
            ("rip = (r + b + j) / 2 − j", text!("({} + {}) / 2{}", mark(left), mark(pitch), less))
        };
        let formula = if gap > 0.0 {
            formula.to_owned()
        } else {
            formula.replace(" + j", "").replace(" − j", "")
        };
        steps.push(Step::new("Rip", formula, numbers, mark(courses.last_mm), &BALANCED));
        if task.least_rip_mm.is_none() && layout.least_rip_mm > 0.0 {
            steps.push(Step::new(
                "Least rip",
                "rip ≥ least",
                text!("{} ≥ {}", mark(courses.last_mm), mark(layout.least_rip_mm)),
                "kept",
                &LEAST_RIP,
            ));
        }
    }
    steps.push(Step::new(
        "Run to cover",
        "R − 2 · g",
        text!("{} − 2 · {}", mark(task.run_mm), mark(task.end_gap_mm)),
        mark(run),
        &MARKS,
    ));
    let joints = layout.joints_mm.len();
    if joints > 0 {
        steps.push(Step::new(
            "Joints",
            "joint = support's centre line",
            text!("{} pieces in {} courses", layout.pieces.len(), &courses.count),
            text!("{} joints", &joints),
            &ON_SUPPORTS,
        ));
        steps.push(Step::new(
            "Stagger",
            "joints of neighbouring courses ≥ stagger",
            text!("{} different layouts of a course", different(layout)),
            mark(layout.stagger_mm),
            &STRIP_STAGGER,
        ));
        let half = task.support_width_mm.unwrap_or_default() / 2.0;
        steps.push(Step::new(
            "Mark at a joint",
            "e ≤ support / 2",
            text!("{} ≤ {}", style.small(mm(layout.edge_distance_mm)), style.small(mm(half))),
            "on the support",
            if task.edge_distance_mm.is_some() { &MARKS } else { &HALF_BEARING },
        ));
    }
    if let Some(kind) = layout.kinds.first() {
        let piece = &layout.pieces[kind.first];
        for one in piece.marks.iter().filter(|one| !one.joint).take(MOST_WORKED) {
            let Some(index) = one.support else { continue };
            let support = task.supports_mm.get(index).copied().unwrap_or_default();
            steps.push(Step::new(
                text!("Board A, rib {}", index + 1),
                "mark = support − left end",
                text!("{} − {}", mark(support), mark(piece.from_mm)),
                mark(one.offset_mm),
                &MARKS,
            ));
        }
    }
    let (near, far, last, least) = first_course(inputs, worked);
    if let Some((low, high)) = first_course_range_mm(near, far, last, least, SHOWN_MM) {
        steps.push(Step::new(
            "First course at the rear",
            "w − s to min(w + s, w + last − least)",
            text!(
                "w = {}, s = {}, last = {}, least = {}",
                mark(far - near),
                mark(SHOWN_MM),
                mark(last),
                mark(least)
            ),
            text!("{} to {}", mark(low), mark(high)),
            &SHOWN_TAPER,
        ));
    }
    if let (Some(rear), Some(out)) = (
        inputs.field_rear_mm,
        inputs
            .field_rear_mm
            .and_then(|rear| run_out(task.field_mm, rear, task.run_mm, courses.count)),
    ) {
        steps.push(Step::new(
            "Taper of each course, when all share it",
            "(front − rear) / courses",
            text!("({} − {}) / {}", mark(task.field_mm), mark(rear), &courses.count),
            style.small(mm(out.each_course_mm)),
            &BALANCED,
        ));
    }
    if let ([front, .., rear], false) = (task.stations.as_slice(), last_rips(worked).is_empty()) {
        steps.push(Step::new(
            "Last course at the rear wall",
            "last + (w − w at the front)",
            text!("{} + ({} − {})", mark(last), mark(rear.width_mm), mark(front.width_mm)),
            mark(last + rear.width_mm - front.width_mm),
            &BETWEEN,
        ));
    }
    if worked.filled_holes > 0 {
        let Hole::Plain { diameter, depth } = inputs.fill else { return steps };
        steps.push(Step::new(
            "Filler for the filled holes",
            "V = n · π / 4 · d² · h",
            text!(
                "{} · π / 4 · ({})² · {}",
                &worked.filled_holes,
                style.small(diameter),
                style.small(depth)
            ),
            style.volume(worked.filler),
            &VOLUMES,
        ));
    }
    steps.extend(inputs.screw.steps(style));
    if let Some(movement) = &inputs.movement {
        steps.extend(movement.steps(style));
    }
    steps.extend(worked.planned.working(style));
    steps
}

/// How many different sets of joints the courses have.
fn different(layout: &BoardLayout) -> usize {
    let mut found: Vec<&[f64]> = Vec::new();
    for joints in &layout.joining.joints_mm {
        if !found.contains(&joints.as_slice()) {
            found.push(joints);
        }
    }
    found.len()
}
