//! Why boards cannot be laid out, in words.

use super::inputs::Job;
use super::mm;
use crate::carpentry::boards::{BoardsError, Loose};
use crate::carpentry::courses::CoursesError;
use crate::carpentry::joints::JointError;
use crate::cutting::stock;
use crate::words::{Arg, Msg, boards as words};

/// The field that a refusal is about, and what is said of it.
pub(super) fn refused(error: &BoardsError, job: &Job) -> (String, Msg) {
    let (field, message): (&str, Msg) = match *error {
        BoardsError::Loose { why, .. } => loose(error, why, job),
        BoardsError::Gap { end: true } => ("end_gap", words::NO_RUN.into()),
        BoardsError::Gap { end: false } => ("side_gap", words::NO_FIELD.into()),
        BoardsError::SupportWidth => ("support_width", words::SUPPORT_WIDTH_MISSING.into()),
        BoardsError::Courses(CoursesError::Width { .. }) => ("coverage", words::NO_COURSES.into()),
        BoardsError::Courses(CoursesError::RipTooNarrow { rip_mm, least_mm }) => {
            let (rip, least) = (mm(rip_mm), mm(least_mm));
            let message = match job.balanced() {
                true => words::RipTooNarrow { rip, least }.into(),
                false => words::RipTooNarrowFull { rip, least }.into(),
            };
            ("least_rip", message)
        }
        BoardsError::Joints(JointError::EdgeDistance { edge_distance_mm, most_mm }) => {
            let [edge, most] = [edge_distance_mm, most_mm].map(|length| Arg::small(mm(length)));
            ("edge_distance", words::EdgeOffSupport { edge, most }.into())
        }
        BoardsError::Joints(JointError::Unreachable { longest_mm }) => {
            ("stock", words::Unreachable { longest: mm(longest_mm) }.into())
        }
        BoardsError::Joints(JointError::Stagger { stagger_mm }) => {
            ("joint_stagger", words::NoStagger { stagger: mm(stagger_mm) }.into())
        }
        BoardsError::Joints(JointError::ShortPiece { least_mm }) => {
            ("stock", words::ShortPiece { least: mm(least_mm) }.into())
        }
        BoardsError::Joints(JointError::Number) => ("stock", words::JOINTS_NUMBER.into()),
        BoardsError::Joints(JointError::Cut(error)) => {
            let (field, message) = stock::refused(&error, |_| "stock".into());
            let field = if field == "pieces" { "coverage".to_owned() } else { field };
            return (field, message);
        }
    };
    (field.to_owned(), message)
}

/// A board that would hang loose, and what would be right.
fn loose(error: &BoardsError, why: Loose, job: &Job) -> (&'static str, Msg) {
    let (board, cut) = place(error, job);
    match why {
        Loose::Supports { held } if cut => {
            ("supports", words::LooseBesideOpening { held, board }.into())
        }
        Loose::Supports { held } => ("supports", words::Loose { held, board }.into()),
        Loose::Short { least_mm } => {
            ("least_piece", words::LooseShort { board, least: mm(least_mm) }.into())
        }
        Loose::Joint => ("stock", words::LooseJoint { board }.into()),
    }
}

/// Which board it is, and whether an opening cuts it off.
fn place(error: &BoardsError, job: &Job) -> (Msg, bool) {
    let BoardsError::Loose { course, from_mm, to_mm, from_opening, to_opening, .. } = *error else {
        return (words::BetweenWalls { course: 0u32, length: mm(0.0) }.into(), false);
    };
    let length = mm(to_mm - from_mm);
    if from_opening.is_none() && to_opening.is_none() {
        return (words::BetweenWalls { course, length }.into(), false);
    }
    let (run_mm, gap_mm) = (job.task.run_mm, job.task.end_gap_mm);
    let end = |opening: Option<usize>, at_wall: bool, wall| -> Msg {
        match opening {
            Some(index) => words::EndOpening { opening: job.opening(index) }.into(),
            None if at_wall => Msg::from(wall),
            None => words::END_JOINT.into(),
        }
    };
    let from = end(from_opening, from_mm <= gap_mm + 1.0, words::END_FRONT);
    let to = end(to_opening, to_mm >= run_mm - gap_mm - 1.0, words::END_REAR);
    (words::Between { course, from, to, length }.into(), true)
}
