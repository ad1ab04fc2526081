//! Marks from one datum: equal spacing, and what chained marks and copied templates lose against it.

use uom::si::length::millimeter;

use crate::formula::formula;
use crate::quantity::Length;
use crate::source::Source;
use crate::words::{Arg, Msg, carpentry, stud_marks as words};

/// Equal spacing between a first and a last mark.
pub static EQUAL_SPACING: Source = Source::identity_of(carpentry::SOURCE_SPACING);
/// Strips end short of both walls.
pub static STRIP_LENGTH: Source = Source::identity_of(carpentry::SOURCE_STRIP);
/// A rib that is cut for an opening.
pub static FRAMED: Source = Source::practice_of(carpentry::SOURCE_FRAMED);
/// offset = traced + (stud - first stud).
pub static DATUM_OFFSET: Source = Source::identity_of(words::SOURCE_OFFSET);
/// Errors of chained steps.
pub static CHAIN_ERROR: Source = Source::identity_of(words::SOURCE_CHAIN);
/// Chained dimensions build up tolerance; dimensions from a datum do not.
pub static FROM_DATUM: Source = Source::transcribed_of(carpentry::SOURCE_FROM_DATUM);

/// The most marks a spacing may give.
pub const MOST_MARKS: u32 = 10_000;
/// A spacing that is over its limit by less than this part does not take one mark more.
const SLACK: f64 = 1e-9;

/// Why marks cannot be set out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SettingOutError {
    /// A length is not a number, or the last mark lies before the first.
    Length {
        /// From the first to the last mark. [mm]
        length_mm: f64,
    },
    /// The largest spacing is zero, below it, or not a number.
    Spacing {
        /// The largest spacing. [mm]
        spacing_mm: f64,
    },
    /// Fewer than two marks, or more than [`MOST_MARKS`].
    Count {
        /// Marks asked for.
        marks: u64,
    },
    /// The slats together are wider than the length, or a width is not a number above zero.
    SlatsTooWide {
        /// All slats side by side. [mm]
        slats_mm: f64,
        /// The length to fill. [mm]
        length_mm: f64,
    },
}

impl SettingOutError {
    /// What is wrong, and what would be right.
    pub fn said(self) -> Msg {
        match self {
            Self::Length { length_mm } => {
                carpentry::MarksOutOfOrder { length: mm(length_mm) }.into()
            }
            Self::Spacing { spacing_mm } => carpentry::NoSpacing { spacing: mm(spacing_mm) }.into(),
            Self::Count { marks } => {
                carpentry::TooManyMarks { marks: Arg::Count(marks), most: MOST_MARKS }.into()
            }
            Self::SlatsTooWide { slats_mm, length_mm } => {
                carpentry::SlatsTooWide { slats: mm(slats_mm), length: mm(length_mm) }.into()
            }
        }
    }
}

/// `count` equally spaced marks from `first_mm` to `last_mm`, both included, each worked out from the datum. [mm]
///
/// # Errors
/// Where the marks are fewer than two or the last does not lie beyond the first.
pub fn marks_by_count(
    first_mm: f64,
    last_mm: f64,
    count: u32,
) -> Result<Vec<f64>, SettingOutError> {
    let length_mm = last_mm - first_mm;
    if !(length_mm.is_finite() && length_mm > 0.0) {
        return Err(SettingOutError::Length { length_mm });
    }
    if !(2..=MOST_MARKS).contains(&count) {
        return Err(SettingOutError::Count { marks: u64::from(count) });
    }
    let spaces = f64::from(count - 1);
    Ok((0..count).map(|mark| first_mm + length_mm * (f64::from(mark) / spaces)).collect())
}

/// The fewest equally spaced marks that are nowhere farther apart than `largest_mm`. [mm]
///
/// # Errors
/// As [`marks_by_count`], and where the largest spacing is not above zero.
pub fn marks_by_spacing(
    first_mm: f64,
    last_mm: f64,
    largest_mm: f64,
) -> Result<Vec<f64>, SettingOutError> {
    if !(largest_mm.is_finite() && largest_mm > 0.0) {
        return Err(SettingOutError::Spacing { spacing_mm: largest_mm });
    }
    let spaces = ((last_mm - first_mm) / largest_mm * (1.0 - SLACK)).ceil().max(1.0);
    if spaces >= f64::from(MOST_MARKS) {
        return Err(SettingOutError::Count { marks: (spaces as u64).saturating_add(1) });
    }
    marks_by_count(first_mm, last_mm, spaces as u32 + 1)
}

/// Where the gaps between slats lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gaps {
    /// Between the slats and outside of the first and the last.
    Outside,
    /// Between the slats only; the end slats are flush.
    Between,
}

/// Width of each gap when `count` slats of one width share a length. [mm]
///
/// # Errors
/// Where the slats do not fit, or there is no gap to share.
pub fn slat_gap_mm(
    length_mm: f64,
    count: u32,
    slat_mm: f64,
    gaps: Gaps,
) -> Result<f64, SettingOutError> {
    let shares = match gaps {
        Gaps::Outside => u64::from(count) + 1,
        Gaps::Between => u64::from(count).saturating_sub(1),
    };
    if count == 0 || shares == 0 {
        return Err(SettingOutError::Count { marks: u64::from(count) });
    }
    let slats_mm = f64::from(count) * slat_mm;
    let gap = (length_mm - slats_mm) / shares as f64;
    if !(slat_mm > 0.0 && gap.is_finite() && gap >= 0.0) {
        return Err(SettingOutError::SlatsTooWide { slats_mm, length_mm });
    }
    Ok(gap)
}

/// A mark as it can be read on the tape: to the nearest `step_mm` from the datum, with what rounding left over. [mm]
///
/// Marks are rounded one by one from the datum; a rounded spacing must never be added up.
pub fn round_to_mm(mark_mm: f64, step_mm: f64) -> (f64, f64) {
    let rounded = (mark_mm / step_mm).round() * step_mm;
    if rounded.is_finite() { (rounded, mark_mm - rounded) } else { (mark_mm, 0.0) }
}

formula! {
    /// Where a stud meets a board that was held in place to trace one of the studs on it.
    Offset: "o = o₁ + (p − p₁)", &DATUM_OFFSET;
    |of| of.traced + (of.center - of.first) => Length as mark;
    /// The traced stud, from the board's left end.
    "o₁" as mark: traced: Length,
    /// The stud's center, from any one point.
    "p" as mark: center: Length,
    /// The traced stud's center, from the same point.
    "p₁" as mark: first: Length,
}

formula! {
    /// How far off the last of marks can be that are each measured on from the one before, when every error falls
    /// the same way.
    ChainWorst: "e = n · t", &CHAIN_ERROR;
    |of| mm(even_chain_error(of.steps, of.reading.get::<millimeter>()).worst_mm) => Length as error;
    /// From the first mark to the last.
    "n" as count: steps: u32,
    /// Of each reading, plus or minus.
    "t" as error: reading: Length,
}

formula! {
    /// As [`ChainWorst`], where the errors fall either way.
    ChainLikely: "e = √n · t", &CHAIN_ERROR;
    |of| mm(even_chain_error(of.steps, of.reading.get::<millimeter>()).likely_mm) => Length as error;
    /// From the first mark to the last.
    "n" as count: steps: u32,
    /// Of each reading, plus or minus.
    "t" as error: reading: Length,
}

formula! {
    /// How long a strip is cut.
    StripLength: "l = W − 2 · c", &STRIP_LENGTH;
    |of| of.span - 2.0 * of.clearance => Length as mark;
    /// What it spans.
    "W" as mark: span: Length,
    /// Free at each end.
    "c" as mark: clearance: Length,
}

formula! {
    /// From one of equally spaced marks to the next.
    EqualSpacing: "s = (l − 2 · e) / (n − 1)", &EQUAL_SPACING;
    |of| (of.length - 2.0 * of.end) / f64::from(of.marks.max(2) - 1) => Length as mark;
    /// Of what is marked, end to end.
    "l" as mark: length: Length,
    /// From either end to the first mark.
    "e" as mark: end: Length,
    /// How many.
    "n" as count: marks: u32,
}

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

/// How far a mark can be off.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct MarkError {
    /// When every error falls the same way, plus or minus. [mm]
    pub worst_mm: f64,
    /// Root of the sum of squares of independent errors, plus or minus. [mm]
    pub likely_mm: f64,
}

/// Error of the last mark when each is measured from the one before, each step with its own reading error. [mm]
pub fn chain_error(steps_mm: &[f64]) -> MarkError {
    MarkError {
        worst_mm: steps_mm.iter().map(|step| step.abs()).sum(),
        likely_mm: steps_mm.iter().map(|step| step * step).sum::<f64>().sqrt(),
    }
}

/// Error of the last of `steps` chained marks of one reading error. [mm]
pub fn even_chain_error(steps: u32, reading_mm: f64) -> MarkError {
    let steps = f64::from(steps);
    MarkError { worst_mm: steps * reading_mm.abs(), likely_mm: steps.sqrt() * reading_mm.abs() }
}

/// Error of any mark measured from one datum: one reading. [mm]
pub fn datum_error(reading_mm: f64) -> MarkError {
    even_chain_error(1, reading_mm)
}

/// Error between any two marks that were both measured from one datum: two readings. [mm]
pub fn datum_error_between(reading_mm: f64) -> MarkError {
    even_chain_error(2, reading_mm)
}

/// Error of the last of `boards` boards, each marked from the board before; with one master template it is that of the first copy. [mm]
pub fn copied_template_error(boards: u32, copying_mm: f64) -> MarkError {
    even_chain_error(boards, copying_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 25.4;

    fn close(a: f64, b: f64, within: f64) {
        assert!((a - b).abs() <= within, "{a} is not {b}");
    }

    /// Identity: s = L / (n - 1).
    #[test]
    fn marks_by_count_are_equally_spaced() {
        for (length, count, spacing) in [(95.0, 4, 31.6667), (190.75, 9, 23.84375)] {
            let marks = marks_by_count(0.0, length * INCH, count).unwrap();
            assert_eq!(marks.len(), count as usize);
            close(marks[1] / INCH, spacing, 5e-5);
            assert_eq!(marks.last(), Some(&(length * INCH)));
        }
    }

    /// Identity: k = ceil(L / s), spacing L / k.
    #[test]
    fn marks_by_spacing_take_the_fewest() {
        let marks = marks_by_spacing(0.0, 95.5, 16.0).unwrap();
        assert_eq!(marks.len(), 7);
        close(marks[1], 15.916_67, 5e-6);
        // Six spaces of 400 mm, however 2400 came about.
        let marks = marks_by_spacing(0.1, 0.1 + 2_400.000_000_1, 400.0).unwrap();
        assert_eq!(marks.len(), 7);
    }

    /// Identity: seven slats of 2 1/2 in 40.
    #[test]
    fn slats_share_their_gaps() {
        assert_eq!(slat_gap_mm(40.0, 7, 2.5, Gaps::Outside), Ok(2.8125));
        assert_eq!(slat_gap_mm(40.0, 7, 2.5, Gaps::Between), Ok(3.75));
        assert!(slat_gap_mm(40.0, 17, 2.5, Gaps::Between).is_err());
        assert!(slat_gap_mm(40.0, 1, 2.5, Gaps::Between).is_err());
    }

    /// Sixth mark at 16 in largest over 95 1/2 in: rounded from the datum 95 1/2, by adding a rounded spacing 95 5/8.
    #[test]
    fn rounding_from_the_datum_does_not_add_up() {
        let marks = marks_by_spacing(0.0, 95.5, 16.0).unwrap();
        let (last, over) = round_to_mm(marks[6], 1.0 / 16.0);
        assert_eq!((last, over), (95.5, 0.0));
        let (pitch, _) = round_to_mm(marks[1], 1.0 / 16.0);
        assert_eq!(pitch * 6.0, 95.625);
        assert_eq!(round_to_mm(12.3, 0.0), (12.3, 0.0));
    }

    /// RSS texts: ten of 0.1 give 1.0 and 0.316; 0.20, 0.10, 0.15 give 0.45 and 0.269 (printed 0.27).
    #[test]
    fn chains_grow_as_published() {
        let ten = even_chain_error(10, 0.1);
        close(ten.worst_mm, 1.0, 1e-12);
        close(ten.likely_mm, 0.316, 5e-4);
        let three = chain_error(&[0.20, 0.10, 0.15]);
        close(three.worst_mm, 0.45, 1e-12);
        close(three.likely_mm, 0.269, 5e-4);
        close(even_chain_error(9, 1.0 / 16.0).likely_mm, 3.0 / 16.0, 1e-12);
        close(even_chain_error(12, 1.0).likely_mm, 3.464, 5e-4);
        assert_eq!(datum_error(0.8).worst_mm, 0.8);
        assert_eq!(datum_error_between(0.8).worst_mm, 1.6);
        assert_eq!(copied_template_error(12, 1.0).worst_mm, 12.0);
    }

    #[test]
    fn wrong_numbers_are_faults() {
        assert!(marks_by_count(5.0, 5.0, 3).is_err());
        assert!(marks_by_count(0.0, f64::NAN, 3).is_err());
        assert!(marks_by_count(0.0, 10.0, 1).is_err());
        assert!(marks_by_spacing(0.0, 10.0, 0.0).is_err());
        assert!(marks_by_spacing(0.0, 1e9, 1e-9).is_err());
        assert!(marks_by_spacing(0.0, f64::INFINITY, 3.0).is_err());
    }
}
