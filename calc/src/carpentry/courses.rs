//! Courses across a field: how many, how wide the first and the last are ripped, and what an uneven field shows.

pub mod rips;

use crate::source::Source;
use crate::words::carpentry as words;

/// Sharing what is left over between both ends.
pub static BALANCED: Source = Source::identity_of(words::SOURCE_BALANCED);
/// No rip narrower than half a course.
pub static LEAST_RIP: Source = Source::practice_of(words::SOURCE_LEAST_RIP);
/// Exposed widths of pattern boards.
pub static PATTERN_BOARDS: Source =
    Source::transcribed("Western Wood Products Association, Coverage Estimator", "table 4");

/// A taper that nobody sees in the last course.
pub static SHOWN_TAPER: Source = Source::practice_of(words::SOURCE_SHOWN_TAPER);
/// The taper of [`SHOWN_TAPER`]. [mm]
pub const SHOWN_MM: f64 = 3.175;

/// A remainder below this is none. [mm]
const SLACK_MM: f64 = 1e-3;
/// The most courses a field may take.
pub const MOST_COURSES: f64 = 10_000.0;

/// Where the first course begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// First and last course equally wide.
    Balanced,
    /// First course full, the last takes what is left.
    Full,
}

/// Courses over a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Courses {
    /// Courses in all, ripped ones included.
    pub count: u32,
    /// Covered width of the first course; the coverage where it is not ripped. [mm]
    pub first_mm: f64,
    /// Covered width of the last course; the coverage where it is not ripped. [mm]
    pub last_mm: f64,
    /// True when first or last are narrower than the coverage.
    pub ripped: bool,
}

/// Why courses cannot be laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CoursesError {
    /// A width is not a number above zero, or there would be more than [`MOST_COURSES`].
    Width {
        /// Width of the field. [mm]
        field_mm: f64,
        /// Coverage of one course. [mm]
        coverage_mm: f64,
    },
    /// A ripped course would be narrower than the least rip.
    RipTooNarrow {
        /// Its width. [mm]
        rip_mm: f64,
        /// The least rip. [mm]
        least_mm: f64,
    },
}

/// The least rip where none is given: half a course. [mm]
pub fn usual_least_rip_mm(coverage_mm: f64) -> f64 {
    coverage_mm / 2.0
}

/// Courses of one coverage over a field; side gaps are off the field already.
///
/// With r left over beyond full courses, a balanced start rips both ends to r/2, or to (r + coverage)/2 where r/2 is below the
/// least rip. A field narrower than one course takes one ripped course. The tongue or lap that a rip takes off comes on top.
///
/// # Errors
/// Where a width is not above zero, or a rip would be narrower than the least one.
pub fn courses(
    field_mm: f64,
    coverage_mm: f64,
    start: Start,
    least_rip_mm: f64,
) -> Result<Courses, CoursesError> {
    let full = ((field_mm + SLACK_MM) / coverage_mm).floor();
    if !(field_mm > 0.0 && coverage_mm > 0.0 && full <= MOST_COURSES) {
        return Err(CoursesError::Width { field_mm, coverage_mm });
    }
    let left = field_mm - full * coverage_mm;
    let full = full as u32;
    if left <= SLACK_MM && full > 0 {
        return Ok(Courses {
            count: full,
            first_mm: coverage_mm,
            last_mm: coverage_mm,
            ripped: false,
        });
    }
    let narrow = |rip_mm: f64| rip_mm < least_rip_mm - SLACK_MM;
    let (count, first_mm, last_mm) = match start {
        _ if full == 0 => (1, left, left),
        Start::Full => (full + 1, coverage_mm, left),
        Start::Balanced if narrow(left / 2.0) => {
            let rip = (left + coverage_mm) / 2.0;
            (full + 1, rip, rip)
        }
        Start::Balanced => (full + 2, left / 2.0, left / 2.0),
    };
    if narrow(last_mm) {
        return Err(CoursesError::RipTooNarrow { rip_mm: last_mm, least_mm: least_rip_mm });
    }
    Ok(Courses { count, first_mm, last_mm, ripped: true })
}

/// Courses over a field that is not equally wide: laid by its width at the front; the last course takes up what the field is
/// narrower and wider elsewhere, by `narrower_mm` (zero or below) and `wider_mm` (zero or above). A balanced start takes a course more
/// or less where that keeps the last course between the least rip and a full board all along.
///
/// The flag says whether it is kept; where no number of courses keeps it, these are the courses of the front.
///
/// # Errors
/// As [`courses`].
pub fn courses_along(
    front_mm: f64,
    (narrower_mm, wider_mm): (f64, f64),
    coverage_mm: f64,
    start: Start,
    least_rip_mm: f64,
) -> Result<(Courses, bool), CoursesError> {
    let laid = courses(front_mm, coverage_mm, start, least_rip_mm)?;
    let kept = |courses: &Courses| {
        courses.last_mm + wider_mm <= coverage_mm + SLACK_MM
            && courses.last_mm + narrower_mm >= least_rip_mm.max(1.0) - SLACK_MM
            && courses.first_mm >= least_rip_mm - SLACK_MM
    };
    let even = wider_mm <= SLACK_MM && narrower_mm >= -SLACK_MM;
    if even || kept(&laid) {
        return Ok((laid, true));
    }
    if start == Start::Full {
        return Ok((laid, false));
    }
    for count in [laid.count + 1, laid.count.saturating_sub(1)] {
        let rip_mm = (front_mm - (f64::from(count) - 2.0) * coverage_mm) / 2.0;
        let other = Courses { count, first_mm: rip_mm, last_mm: rip_mm, ripped: true };
        if count >= 2 && rip_mm > 0.0 && rip_mm <= coverage_mm + SLACK_MM && kept(&other) {
            return Ok((other, true));
        }
    }
    Ok((laid, false))
}

/// What a field that is not parallel does to its courses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunOut {
    /// Width lost from one end to the other; below zero the field widens. [mm]
    pub taper_mm: f64,
    /// Width lost for each metre of run. [mm/m]
    pub taper_mm_per_m: f64,
    /// Taper of each course when all share it. [mm]
    pub each_course_mm: f64,
}

/// Run-out of a field measured at both ends, shared by `courses` courses; `None` where there is no run or no course.
pub fn run_out(near_mm: f64, far_mm: f64, run_mm: f64, courses: u32) -> Option<RunOut> {
    let taper_mm = near_mm - far_mm;
    let run_out = RunOut {
        taper_mm,
        taper_mm_per_m: taper_mm / run_mm * 1000.0,
        each_course_mm: taper_mm / f64::from(courses),
    };
    let finite = run_out.taper_mm_per_m.is_finite() && run_out.each_course_mm.is_finite();
    (finite && run_mm > 0.0).then_some(run_out)
}

/// How far the first course's far end may lie out into the field, lowest and highest, before the last course shows it: its
/// rip tapers by no more than `shown_mm` and is nowhere below the least rip. `None` where no position will do. [mm]
pub fn first_course_range_mm(
    near_mm: f64,
    far_mm: f64,
    last_rip_mm: f64,
    least_rip_mm: f64,
    shown_mm: f64,
) -> Option<(f64, f64)> {
    let widening = far_mm - near_mm;
    let low = widening - shown_mm;
    let high = (widening + shown_mm).min(widening + last_rip_mm - least_rip_mm);
    (low.is_finite() && high.is_finite() && low <= high).then_some((low, high))
}

/// Profile of a pattern board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Profile {
    /// Drop siding, tongue and groove, or channel.
    TongueAndGroove,
    /// Bevel.
    Bevel,
    /// Rabbeted bevel.
    RabbetedBevel,
    /// Log cabin, 2 in nominal thickness.
    LogCabin,
}

/// Widths of a pattern board. Makers differ: measure the exposed width where the boards are at hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PatternBoard {
    /// Its profile.
    pub profile: Profile,
    /// Nominal width. [in]
    pub nominal_in: f64,
    /// Dressed width over all. [in]
    pub dressed_in: f64,
    /// Width that one course covers. [in]
    pub exposed_in: f64,
}

impl PatternBoard {
    /// Running feet of board for each square foot of field, without waste: 12 by the exposed width.
    pub fn running_feet_per_square_foot(&self) -> f64 {
        12.0 / self.exposed_in
    }
}

const fn board(
    profile: Profile,
    nominal_in: f64,
    dressed_in: f64,
    exposed_in: f64,
) -> PatternBoard {
    PatternBoard { profile, nominal_in, dressed_in, exposed_in }
}

/// Exposed widths. Source: [`PATTERN_BOARDS`].
pub static PATTERN_BOARD_WIDTHS: [PatternBoard; 16] = [
    board(Profile::TongueAndGroove, 4.0, 3.375, 3.125),
    board(Profile::TongueAndGroove, 6.0, 5.375, 5.125),
    board(Profile::TongueAndGroove, 8.0, 7.125, 6.875),
    board(Profile::TongueAndGroove, 10.0, 9.125, 8.875),
    board(Profile::Bevel, 4.0, 3.5, 2.5),
    board(Profile::Bevel, 6.0, 5.5, 4.5),
    board(Profile::Bevel, 8.0, 7.25, 6.25),
    board(Profile::Bevel, 10.0, 9.25, 8.25),
    board(Profile::RabbetedBevel, 4.0, 3.5, 3.0),
    board(Profile::RabbetedBevel, 6.0, 5.5, 5.0),
    board(Profile::RabbetedBevel, 8.0, 7.25, 6.75),
    board(Profile::RabbetedBevel, 10.0, 9.25, 8.75),
    board(Profile::RabbetedBevel, 12.0, 11.25, 10.75),
    board(Profile::LogCabin, 6.0, 5.4375, 4.9375),
    board(Profile::LogCabin, 8.0, 7.125, 6.625),
    board(Profile::LogCabin, 10.0, 9.125, 8.625),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Identity, worked by hand: W, b, full courses, end rip; the least rip of half a course always takes the wide form.
    #[test]
    fn balanced_ends_are_equal_and_not_narrow() {
        for (field, coverage, full, rip) in [
            (90.0, 6.875, 12, 3.75),
            (84.5, 5.125, 15, 3.8125),
            (2300.0, 135.0, 16, 70.0),
            (72.0, 7.25, 8, 7.0),
        ] {
            let least = usual_least_rip_mm(coverage);
            let found = courses(field, coverage, Start::Balanced, least).unwrap();
            assert_eq!(found.count, full + 2);
            assert!((found.first_mm - rip).abs() < 1e-9 && found.first_mm == found.last_mm);
        }
        let even = courses(2300.0, 115.0, Start::Balanced, 57.5).unwrap();
        assert_eq!((even.count, even.ripped, even.first_mm), (20, false, 115.0));
    }

    #[test]
    fn half_the_rest_is_taken_where_it_is_wide_enough() {
        // 2300 = 16 x 135 + 140, so 17 full courses leave 5: half of 5 is under 2 but not under 1.
        let wide = courses(2300.0, 135.0, Start::Balanced, 3.0).unwrap();
        assert_eq!((wide.count, wide.first_mm), (18, 70.0));
        let narrow = courses(2300.0, 135.0, Start::Balanced, 2.0).unwrap();
        assert_eq!((narrow.count, narrow.first_mm, narrow.last_mm), (19, 2.5, 2.5));
        let full = courses(2300.0, 135.0, Start::Full, 5.0).unwrap();
        assert_eq!((full.count, full.first_mm, full.last_mm), (18, 135.0, 5.0));
    }

    #[test]
    fn faults_say_what_would_be_narrow() {
        assert_eq!(
            courses(2300.0, 135.0, Start::Full, 40.0),
            Err(CoursesError::RipTooNarrow { rip_mm: 5.0, least_mm: 40.0 })
        );
        assert!(courses(0.0, 135.0, Start::Full, 0.0).is_err());
        assert!(courses(2300.0, 0.0, Start::Full, 0.0).is_err());
        assert!(courses(f64::NAN, 135.0, Start::Balanced, 0.0).is_err());
        assert_eq!(courses(100.0, 135.0, Start::Balanced, 40.0).unwrap().count, 1);
    }

    proptest::proptest! {
        #[test]
        fn courses_fill_the_field(field in 1.0..5000.0_f64, coverage in 1.0..400.0_f64, least in 0.0..200.0_f64, full in proptest::bool::ANY) {
            let start = if full { Start::Full } else { Start::Balanced };
            if let Ok(found) = courses(field, coverage, start, least) {
                let inner = found.count.saturating_sub(2);
                let ends = if found.count == 1 { found.first_mm } else { found.first_mm + found.last_mm };
                proptest::prop_assert!((f64::from(inner) * coverage + ends - field).abs() < 2e-3);
                proptest::prop_assert!(!found.ripped || found.first_mm >= least - 1e-2);
                proptest::prop_assert!(found.first_mm <= coverage + 1e-9 && found.last_mm <= coverage + 1e-9);
            }
        }
    }

    /// Worked by hand: 2300 mm in courses of 135 mm leaves 70 mm rips at both ends.
    #[test]
    fn the_last_course_takes_up_the_taper() {
        let along = |front: f64, deltas, start, least| {
            courses_along(front, deltas, 135.0, start, least).unwrap()
        };
        let even = courses(2300.0, 135.0, Start::Balanced, 67.5).unwrap();
        assert_eq!(along(2300.0, (0.0, 0.0), Start::Balanced, 67.5), (even, true));
        // From 70 to 90 mm is still one board, and so is 70 down to 68 mm.
        assert_eq!(along(2300.0, (-2.0, 20.0), Start::Balanced, 67.5), (even, true));
        // 70 mm and 80 mm more are beyond a board: a course more has rips of 2.5 mm, too narrow; with 20 mm less at the least rip
        // of 40 mm the rips of 70 mm serve.
        assert_eq!(along(2300.0, (0.0, 80.0), Start::Balanced, 67.5), (even, false));
        // 2400 mm leaves 120 mm rips; 20 mm more at the rear takes a course more, of 52.5 to 72.5 mm.
        let (more, kept) = along(2400.0, (0.0, 20.0), Start::Balanced, 50.0);
        assert!(kept && more.count == 19 && (more.first_mm - 52.5).abs() < 1e-9, "{more:?}");
        // A full start has no choice.
        let (full, kept) = along(2300.0, (-10.0, 0.0), Start::Full, 0.0);
        assert!(!kept && full.count == 18 && (full.last_mm - 5.0).abs() < 1e-9, "{full:?}");
    }

    /// Worked by hand: 90 1/4 against 89 3/4 in over 190 3/4 in, 14 courses.
    #[test]
    fn run_out_is_shared() {
        let inch = 25.4;
        let found = run_out(90.25 * inch, 89.75 * inch, 190.75 * inch, 14).unwrap();
        assert!((found.taper_mm_per_m * 12.0 / 1000.0 - 0.0315).abs() < 5e-5);
        assert!((found.each_course_mm / inch - 0.0357).abs() < 5e-5);
        assert_eq!(run_out(90.0, 89.0, 0.0, 14), None);
        assert_eq!(run_out(90.0, 89.0, 100.0, 0), None);
    }

    #[test]
    fn the_first_course_may_be_off_by_what_the_last_hides() {
        assert_eq!(first_course_range_mm(2000.0, 2000.0, 70.0, 40.0, 2.0), Some((-2.0, 2.0)));
        assert_eq!(first_course_range_mm(2000.0, 2010.0, 70.0, 69.0, 2.0), Some((8.0, 11.0)));
        assert_eq!(first_course_range_mm(2000.0, 2000.0, 30.0, 40.0, 2.0), None);
    }

    /// WWPA coverage estimator, table 4: printed running-foot factors.
    #[test]
    fn exposed_widths_give_the_printed_factors() {
        let printed = [
            3.84, 2.34, 1.75, 1.35, 4.8, 2.67, 1.92, 1.45, 4.0, 2.4, 1.78, 1.37, 1.12, 2.43, 1.81,
            1.39,
        ];
        for (board, printed) in PATTERN_BOARD_WIDTHS.iter().zip(printed) {
            let factor = board.running_feet_per_square_foot();
            assert!((factor - printed).abs() < 5.1e-3, "{board:?}: {factor} is not {printed}");
        }
    }
}
