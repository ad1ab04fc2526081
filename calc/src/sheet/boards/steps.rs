//! How the boards sheet comes to its numbers.

use super::found::Found;
use super::inputs::Job;
use super::shown::first_course;
use super::{letters, mm};
use crate::carpentry::boards::{BoardLayout, HALF_BEARING, MARKS, MarkOnBoard};
use crate::carpentry::courses::rips::{
    Clear, HalfRip, HalfRipWithGap, LastRip, LastRipWithGap, LeftOver, LeftOverWithGaps, RearRip,
    SharedTaper, WideRip, WideRipWithGap,
};
use crate::carpentry::courses::{LEAST_RIP, SHOWN_MM, SHOWN_TAPER, first_course_range_mm, run_out};
use crate::carpentry::joints::{ON_SUPPORTS, STRIP_STAGGER};
use crate::formula::{Formula as _, step};
use crate::quantity::{Length, Style};
use crate::report::Step;
use crate::text::text;
use crate::words::{Arg, Msg, boards as words};

/// So many marks are worked out in full.
const MOST_WORKED: usize = 16;

pub(super) fn steps(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let mut steps = courses(job, found, style);
    let run = Clear { wall_to_wall: mm(job.task.run_mm), gap: mm(job.task.end_gap_mm) };
    steps.push(Step { source: &MARKS, ..step(words::STEP_RUN, &run, style) });
    if !found.layout.joints_mm.is_empty() {
        steps.extend(joints(job, found, style));
    }
    steps.extend(marks(job, found, style));
    steps.extend(taper(job, found, style));
    if found.filler.holes > 0 {
        steps.push(step(words::STEP_FILLER, &found.filler, style));
    }
    steps.extend(job.screw.steps(style));
    steps.extend(job.movement.iter().flat_map(|movement| movement.steps(style)));
    steps.extend(found.cut_plan.working(style));
    steps
}

/// How many courses, and what the outer ones are ripped to.
fn courses(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let (task, courses) = (&job.task, &found.layout.courses);
    let [coverage, gap] = [task.coverage_mm, task.joint_gap_mm].map(mm);
    let clear = Clear { wall_to_wall: mm(task.field_mm), gap: mm(task.side_gap_mm) };
    let field = clear.value();
    let apart = task.joint_gap_mm > 0.0;
    // Every board with the gap beside it; the last one has none.
    let pitch = coverage + gap;
    let full = ((field + gap + mm(1e-3)).value / pitch.value).floor() as u32;
    let mut steps = vec![step(words::STEP_FIELD, &clear, style)];
    let left: Length = if apart {
        let of = LeftOverWithGaps { field, gap, full, coverage };
        steps.push(step(words::STEP_LEFT_GAPS, &of, style));
        of.value()
    } else {
        let of = LeftOver { field, full, coverage };
        steps.push(step(words::STEP_LEFT, &of, style));
        of.value()
    };
    if !courses.ripped || courses.count < 2 {
        return steps;
    }
    let name = words::STEP_RIP;
    steps.push(match (job.balanced(), courses.count > full + 1, apart) {
        (false, _, false) => step(name, &LastRip { left }, style),
        (false, _, true) => step(name, &LastRipWithGap { left, gap }, style),
        (true, true, false) => step(name, &HalfRip { left }, style),
        (true, true, true) => step(name, &HalfRipWithGap { left, gap }, style),
        (true, false, false) => step(name, &WideRip { left, coverage }, style),
        (true, false, true) => step(name, &WideRipWithGap { left, coverage, gap }, style),
    });
    if task.least_rip_mm.is_none() && found.layout.least_rip_mm > 0.0 {
        let mark = |value: f64| style.mark(mm(value)).text;
        steps.push(Step::new(
            style.say(words::STEP_LEAST_RIP),
            style.say(words::STEP_LEAST_RIP_FORMULA),
            text!("{} ≥ {}", mark(courses.last_mm), mark(found.layout.least_rip_mm)),
            style.say(words::STEP_LEAST_RIP_KEPT),
            &LEAST_RIP,
        ));
    }
    steps
}

fn joints(job: &Job, found: &Found, style: Style) -> [Step; 3] {
    let (task, layout) = (&job.task, &found.layout);
    let pieces = Msg::from(words::PieceCount { pieces: layout.pieces.len() });
    let courses = Msg::from(words::CourseCount { courses: layout.courses.count });
    let half = task.support_width_mm.unwrap_or_default() / 2.0;
    let small = |value: f64| style.small(mm(value));
    [
        Step::new(
            style.say(words::STEP_JOINTS),
            style.say(words::STEP_JOINTS_FORMULA),
            style.say(words::StepJointsNumbers { pieces, courses }),
            style.say(words::JointCount { joints: layout.joints_mm.len() }),
            &ON_SUPPORTS,
        ),
        Step::new(
            style.say(words::STEP_STAGGER),
            style.say(words::STEP_STAGGER_FORMULA),
            style.say(words::StepStaggerNumbers { layouts: different(layout) }),
            style.mark(mm(layout.stagger_mm)).text,
            &STRIP_STAGGER,
        ),
        Step::new(
            style.say(words::STEP_JOINT_MARK),
            "e ≤ s / 2",
            text!("{} ≤ {}", small(layout.edge_distance_mm), small(half)),
            style.say(words::STEP_JOINT_MARK_RESULT),
            if task.edge_distance_mm.is_some() { &MARKS } else { &HALF_BEARING },
        ),
    ]
}

/// The marks of the first kind of board; those that an end pushes off the support's center line stand in by the edge distance.
fn marks(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let Some(piece) = found.layout.kinds.first().map(|kind| &found.layout.pieces[kind.first])
    else {
        return Vec::new();
    };
    let mut steps = Vec::new();
    for mark in piece.marks.iter().filter(|mark| !mark.joint) {
        let Some(index) = mark.support else { continue };
        let Some(support) = job.task.supports_mm.get(index) else { continue };
        let of = MarkOnBoard { support: mm(*support), left_end: mm(piece.from_mm) };
        if (of.value() - mm(mark.offset_mm)).abs() < mm(1e-3) && steps.len() < MOST_WORKED {
            let name = words::StepMark { letter: letters(0), rib: index + 1 };
            steps.push(step(name, &of, style));
        }
    }
    steps
}

/// What a field that is not equally wide does to the first and the last course.
fn taper(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let (near, far, last, least) = first_course(job, found);
    let mark = |value: f64| style.mark(mm(value)).text;
    let mut steps = Vec::new();
    if let Some((low, high)) = first_course_range_mm(near, far, last, least, SHOWN_MM) {
        let [low, high] = [low, high].map(|by| Arg::mark(mm(by)));
        steps.push(Step::new(
            style.say(words::STEP_FIRST_COURSE),
            style.say(words::STEP_FIRST_COURSE_FORMULA),
            text!(
                "w = {}, s = {}, e = {}, m = {}",
                mark(far - near),
                mark(SHOWN_MM),
                mark(last),
                mark(least)
            ),
            style.say(words::StepFirstCourseResult { low, high }),
            &SHOWN_TAPER,
        ));
    }
    let (front, courses) = (mm(near), found.layout.courses.count);
    if let Some(rear) = job.field_rear_mm
        && run_out(near, rear, job.task.run_mm, courses).is_some()
    {
        let of = SharedTaper { front, rear: mm(rear), courses };
        steps.push(step(words::STEP_TAPER, &of, style));
    }
    if let ([front, .., rear], false) = (job.task.stations.as_slice(), found.last_rips().is_empty())
    {
        let [rip, front, rear] = [last, front.width_mm, rear.width_mm].map(mm);
        steps.push(step(words::STEP_LAST_REAR, &RearRip { rip, rear, front }, style));
    }
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
