//! What is left over beyond full courses, and what the outer ones are ripped to of it.

use uom::si::f64::Length;

use super::BALANCED;
use crate::carpentry::stations::BETWEEN;
use crate::formula::formula;
use crate::source::Source;
use crate::words::carpentry as words;

/// Gaps at two walls.
pub static CLEAR: Source = Source::identity_of(words::SOURCE_CLEAR);

formula! {
    /// What lies between two walls, without the gap at each.
    Clear: "f = w − 2 · g", &CLEAR;
    |of| of.wall_to_wall - 2.0 * of.gap => Length as mark;
    /// From wall to wall.
    "w" as mark: wall_to_wall: Length,
    /// At each wall.
    "g" as mark: gap: Length,
}

formula! {
    /// What full courses leave of a field; below zero it is nothing.
    LeftOver: "r = f − n · b", &BALANCED;
    |of| (of.field - f64::from(of.full) * of.coverage).max(Length::default()) => Length as mark;
    /// The field to cover.
    "f" as mark: field: Length,
    /// Full courses.
    "n" as count: full: u32,
    /// What one course covers.
    "b" as mark: coverage: Length,
}

formula! {
    /// The same where a gap stays between courses: each has one beside it, but for the last.
    LeftOverWithGaps: "r = f + j − n · (b + j)", &BALANCED;
    |of| (of.field + of.gap - f64::from(of.full) * (of.coverage + of.gap)).max(Length::default()) => Length as mark;
    /// The field to cover.
    "f" as mark: field: Length,
    /// Between two courses.
    "j" as small: gap: Length,
    /// Full courses.
    "n" as count: full: u32,
    /// What one course covers.
    "b" as mark: coverage: Length,
}

formula! {
    /// The rip of both ends where half of what is left over is wide enough.
    HalfRip: "e = r / 2", &BALANCED;
    |of| of.left / 2.0 => Length as mark;
    /// Left over beyond full courses.
    "r" as mark: left: Length,
}

formula! {
    /// The same with a gap between courses.
    HalfRipWithGap: "e = r / 2 − j", &BALANCED;
    |of| of.left / 2.0 - of.gap => Length as mark;
    /// Left over beyond full courses.
    "r" as mark: left: Length,
    /// Between two courses.
    "j" as small: gap: Length,
}

formula! {
    /// The rip of both ends with one full course less.
    WideRip: "e = (r + b) / 2", &BALANCED;
    |of| (of.left + of.coverage) / 2.0 => Length as mark;
    /// Left over beyond full courses.
    "r" as mark: left: Length,
    /// What one course covers.
    "b" as mark: coverage: Length,
}

formula! {
    /// The same with a gap between courses.
    WideRipWithGap: "e = (r + b + j) / 2 − j", &BALANCED;
    |of| (of.left + of.coverage + of.gap) / 2.0 - of.gap => Length as mark;
    /// Left over beyond full courses.
    "r" as mark: left: Length,
    /// What one course covers.
    "b" as mark: coverage: Length,
    /// Between two courses.
    "j" as small: gap: Length,
}

formula! {
    /// The rip of the last course where the first one is full.
    LastRip: "e = r", &BALANCED;
    |of| of.left => Length as mark;
    /// Left over beyond full courses.
    "r" as mark: left: Length,
}

formula! {
    /// The same with a gap between courses.
    LastRipWithGap: "e = r − j", &BALANCED;
    |of| of.left - of.gap => Length as mark;
    /// Left over beyond full courses.
    "r" as mark: left: Length,
    /// Between two courses.
    "j" as small: gap: Length,
}

formula! {
    /// The taper that each course takes where all share it.
    SharedTaper: "t = (f − r) / n", &BALANCED;
    |of| (of.front - of.rear) / f64::from(of.courses) => Length as small;
    /// Width of the field at the front.
    "f" as mark: front: Length,
    /// Width of the field at the rear.
    "r" as mark: rear: Length,
    /// How many courses share it.
    "n" as count: courses: u32,
}

formula! {
    /// The last course at the rear, where it takes up all that the field is wider or narrower there.
    RearRip: "z = e + (r − f)", &BETWEEN;
    |of| of.rip + (of.rear - of.front) => Length as mark;
    /// The last course at the front.
    "e" as mark: rip: Length,
    /// Width of the field at the rear.
    "r" as mark: rear: Length,
    /// Width of the field at the front.
    "f" as mark: front: Length,
}
