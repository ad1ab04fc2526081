//! Why boards cannot be laid out.

use crate::carpentry::courses::CoursesError;
use crate::carpentry::joints::JointError;

/// Why boards cannot be laid out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoardsError {
    /// The end gaps leave no run, or the side gaps no field.
    Gap {
        /// True for the end gap, false for the side gap.
        end: bool,
    },
    /// Boards are joined, and the width of the supports is not known.
    SupportWidth,
    /// The courses cannot be laid.
    Courses(CoursesError),
    /// The joints cannot be laid.
    Joints(JointError),
    /// A piece would hang loose.
    Loose {
        /// Its course, counted from 1 at the left wall.
        course: u32,
        /// Its left end, from the front wall. [mm]
        from_mm: f64,
        /// Its right end. [mm]
        to_mm: f64,
        /// The opening at its left end, where one cuts it off.
        from_opening: Option<usize>,
        /// The opening at its right end.
        to_opening: Option<usize>,
        /// What is wrong with it.
        why: Loose,
    },
}

/// What is wrong with a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Loose {
    /// It is held on fewer than two supports.
    Supports {
        /// How many hold it.
        held: usize,
    },
    /// It is shorter than the least piece.
    Short {
        /// The least piece. [mm]
        least_mm: f64,
    },
    /// An opening leaves no room for the marks at a joint.
    Joint,
}
