//! Placement of lamps: hand-measured cases, and nearest spots against a fine search.

use crate::testing::any_number;
use proptest::prelude::*;

use super::*;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn ceiling() -> Ceiling {
    Ceiling { length: mm(4000.0), width: mm(2000.0) }
}

/// Rim 70 mm, clearance 15 mm: 50 mm from the centre to whatever is in the way.
fn fitting() -> Fitting {
    Fitting { rim: mm(70.0), clearance: mm(15.0) }
}

fn support(centre: f64) -> Support {
    Support { centre: mm(centre), width: mm(40.0) }
}

fn opening(x: f64, y: f64, length: f64, width: f64) -> Opening {
    Opening { corner: spot(x, y), length: mm(length), width: mm(width) }
}

fn nothing() -> Obstacles<'static> {
    Obstacles { supports: &[], openings: &[], board_centres: None }
}

fn assert_at(placed: &Placed, x: f64, y: f64) {
    let (at_x, at_y) = millimetres(placed.at);
    assert!((at_x - x).abs() < 1e-5 && (at_y - y).abs() < 1e-5, "{placed:?}");
}

#[test]
fn rows_and_columns_stand_half_a_pitch_from_the_walls() {
    let spots: Vec<_> = grid(ceiling(), 2, 4).unwrap().into_iter().map(millimetres).collect();
    assert_eq!(spots[0], (500.0, 500.0));
    assert_eq!(spots[3], (3500.0, 500.0));
    assert_eq!(spots[4], (500.0, 1500.0));
    assert_eq!(grid(ceiling(), 0, 4), Err(PlacementError::Count));
    assert_eq!(grid(ceiling(), usize::MAX, 4), Err(PlacementError::Count));
}

#[test]
fn a_lamp_on_a_support_moves_to_its_nearer_side() {
    let supports = [support(500.0 + 10.0)];
    let obstacles = Obstacles { supports: &supports, ..nothing() };
    let placed = place(ceiling(), obstacles, fitting(), &[spot(500.0, 700.0)]).unwrap();
    // Edge at 490, 50 mm before it.
    assert_at(&placed[0], 440.0, 700.0);
    assert!((placed[0].moved.get::<millimeter>() - 60.0).abs() < 1e-5);
    assert!(placed[0].clear());
}

#[test]
fn a_lamp_by_the_corner_of_an_opening_moves_radially() {
    let openings = [opening(1000.0, 800.0, 400.0, 400.0)];
    let obstacles = Obstacles { openings: &openings, ..nothing() };
    let placed =
        place(ceiling(), obstacles, fitting(), &[spot(1000.0 - 18.0, 800.0 - 24.0)]).unwrap();
    // 30 mm from the corner along 3:4:5, out to 50.
    assert_at(&placed[0], 1000.0 - 30.0, 800.0 - 40.0);
}

#[test]
fn a_lamp_too_close_to_a_wall_moves_in() {
    let placed = place(ceiling(), nothing(), fitting(), &[spot(0.0, 1990.0)]).unwrap();
    assert_at(&placed[0], 50.0, 1950.0);
}

#[test]
fn boards_draw_lamps_to_their_centre_lines() {
    let boards: Vec<_> = (0..20).map(|n| mm(60.0 + 100.0 * f64::from(n))).collect();
    let supports = [support(505.0)];
    let obstacles = Obstacles { supports: &supports, board_centres: Some(&boards), ..nothing() };
    let placed = place(ceiling(), obstacles, fitting(), &[spot(500.0, 505.0)]).unwrap();
    assert_at(&placed[0], 435.0, 460.0);
}

#[test]
fn where_nothing_is_free_the_lamp_says_so() {
    let supports: Vec<_> = (0..41).map(|n| support(100.0 * f64::from(n))).collect();
    let obstacles = Obstacles { supports: &supports, ..nothing() };
    let placed = place(ceiling(), obstacles, fitting(), &[spot(500.0, 500.0)]).unwrap();
    assert_eq!(placed[0].problem, Some(Problem::NoClearSpot));
    assert!(!placed[0].clear());
}

#[test]
fn lamps_that_meet_in_one_gap_make_room_for_each_other() {
    let supports = [support(480.0), support(620.0)];
    let obstacles = Obstacles { supports: &supports, ..nothing() };
    let wanted = [spot(550.0, 500.0), spot(540.0, 560.0)];
    let placed = place(ceiling(), obstacles, fitting(), &wanted).unwrap();
    // The bay between the supports is 60 mm deep for the lamps' centres: the second lamp steps along it.
    assert!(placed.iter().all(Placed::clear), "{placed:?}");
    let apart = millimetres(placed[0].at).1 - millimetres(placed[1].at).1;
    assert!(apart.abs() >= 84.0, "{placed:?}");
}

#[test]
fn a_vent_on_one_side_moves_both_rows() {
    let openings = [opening(450.0, 400.0, 200.0, 120.0)];
    let obstacles = Obstacles { openings: &openings, ..nothing() };
    let across = Symmetry { across: true, along: false };
    let placed = place_grid(ceiling(), obstacles, fitting(), 2, 4, across).unwrap();
    // The lamp at (500, 500): up past 520 by 50. Its image at (500, 1500) comes down as much.
    assert_at(&placed[0], 500.0, 570.0);
    assert_at(&placed[4], 500.0, 1430.0);
    assert!(placed.iter().all(|p| p.symmetric && p.clear()));
    // Without symmetry the other row stays.
    let placed = place_grid(ceiling(), obstacles, fitting(), 2, 4, Symmetry::default()).unwrap();
    assert_at(&placed[4], 500.0, 1500.0);
}

#[test]
fn a_middle_row_stays_on_the_centre_line() {
    let openings = [opening(900.0, 800.0, 200.0, 400.0)];
    let obstacles = Obstacles { openings: &openings, ..nothing() };
    let across = Symmetry { across: true, along: false };
    let placed = place_grid(ceiling(), obstacles, fitting(), 1, 2, across).unwrap();
    assert_at(&placed[0], 850.0, 1000.0);
}

#[test]
fn images_keep_their_distance_across_the_centre_line() {
    // All but a lane of 200 mm along the middle is taken.
    let openings = [opening(0.0, 0.0, 4000.0, 900.0), opening(0.0, 1100.0, 4000.0, 900.0)];
    let obstacles = Obstacles { openings: &openings, ..nothing() };
    let across = Symmetry { across: true, along: false };
    let fitting = Fitting { rim: mm(70.0), clearance: mm(15.0) };
    let placed = place_grid(ceiling(), obstacles, fitting, 2, 2, across).unwrap();
    // 50 mm off the openings leaves 950 to 1050: rims of two lamps 85 mm apart just fit.
    assert!(placed.iter().all(|p| p.symmetric && p.clear()), "{placed:?}");
    assert_at(&placed[0], 1000.0, 950.0);
    assert_at(&placed[2], 1000.0, 1050.0);
    // With a wider rim they would touch side by side: out of step they fit.
    let wide = Fitting { rim: mm(100.0), clearance: mm(0.0) };
    let narrow = [opening(0.0, 0.0, 4000.0, 940.0), opening(0.0, 1060.0, 4000.0, 940.0)];
    let obstacles = Obstacles { openings: &narrow, ..nothing() };
    let placed = place_grid(ceiling(), obstacles, wide, 2, 2, across).unwrap();
    assert!(placed.iter().all(|p| !p.symmetric && p.clear()));
}

#[test]
fn boards_that_do_not_mirror_break_the_symmetry_and_say_so() {
    let boards = [mm(500.0), mm(1300.0)];
    let obstacles = Obstacles { board_centres: Some(&boards), ..nothing() };
    let across = Symmetry { across: true, along: false };
    let placed = place_grid(ceiling(), obstacles, fitting(), 2, 2, across).unwrap();
    assert!(placed.iter().all(|p| !p.symmetric && p.clear()));
    assert_at(&placed[0], 1000.0, 500.0);
    assert_at(&placed[2], 1000.0, 1300.0);
}

fn any_obstacles() -> impl Strategy<Value = (Vec<Support>, Vec<Opening>)> {
    let supports = prop::collection::vec((0.0..4000.0_f64).prop_map(support), 0..6);
    let openings = prop::collection::vec(
        (0.0..3800.0_f64, 0.0..1800.0_f64, 20.0..600.0_f64, 20.0..600.0_f64)
            .prop_map(|(x, y, l, w)| opening(x, y, l, w)),
        0..4,
    );
    (supports, openings)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn any_numbers_give_finite_spots_or_an_error(
        x in any_number(), y in any_number(), centre in any_number(), side in any_number(), rim in any_number(),
    ) {
        let supports = [Support { centre: mm(centre), width: mm(side) }];
        let openings = [opening(x, y, side, 100.0)];
        let boards = [mm(y)];
        let obstacles = Obstacles { supports: &supports, openings: &openings, board_centres: Some(&boards) };
        let fitting = Fitting { rim: mm(rim), clearance: mm(1.0) };
        let ceiling = Ceiling { length: mm(4000.0), width: mm(2000.0) };
        if let Ok(placed) = place(ceiling, obstacles, fitting, &[spot(x, y)]) {
            prop_assert!(placed[0].at.x.value.is_finite() && placed[0].moved.value.is_finite());
        }
    }

    /// The spot is free, and no free spot of a fine net around the wanted one is nearer.
    #[test]
    fn the_nearest_spot_is_free_and_nearest(
        (supports, openings) in any_obstacles(), x in 0.0..4000.0_f64, y in 0.0..2000.0_f64,
    ) {
        let obstacles = Obstacles { supports: &supports, openings: &openings, board_centres: None };
        let free = room(ceiling(), obstacles, fitting()).unwrap();
        let found = free.nearest(x, y);
        let least = match found {
            None => f64::INFINITY,
            Some((fx, fy)) => {
                prop_assert!(free.is_free(fx, fy));
                libm::hypot(fx - x, fy - y)
            }
        };
        let net = least.min(4000.0);
        for i in -12..=12 {
            for j in -12..=12 {
                let (cx, cy) = (x + net * f64::from(i) / 12.0, y + net * f64::from(j) / 12.0);
                if libm::hypot(cx - x, cy - y) < least - 1e-3 {
                    prop_assert!(!free.is_free(cx, cy), "{cx} {cy} is nearer than {found:?}");
                }
            }
        }
    }

    #[test]
    fn mirrored_lamps_mirror_each_other(
        (supports, openings) in any_obstacles(), rows in 1_usize..4, columns in 1_usize..5, along in any::<bool>(),
    ) {
        let obstacles = Obstacles { supports: &supports, openings: &openings, board_centres: None };
        let symmetry = Symmetry { across: true, along };
        let placed = place_grid(ceiling(), obstacles, fitting(), rows, columns, symmetry).unwrap();
        let free = room(ceiling(), obstacles, fitting()).unwrap();
        for (lamp, placed_lamp) in placed.iter().enumerate() {
            let (x, y) = millimetres(placed_lamp.at);
            if placed_lamp.problem != Some(Problem::NoClearSpot) {
                prop_assert!(free.is_free(x, y));
            }
            let image = (rows - 1 - lamp / columns) * columns + lamp % columns;
            if placed_lamp.symmetric {
                let (ix, iy) = millimetres(placed[image].at);
                prop_assert!((ix - x).abs() < 1e-6 && (iy - (2000.0 - y)).abs() < 1e-6);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// Small ceilings against an exhaustive search of a net of spots: no lamp is too close or without a spot where
    /// the net holds an arrangement, and none is called impossible there.
    #[test]
    fn refused_only_where_no_arrangement_exists(
        length in 250.0..700.0_f64, width in 200.0..420.0_f64,
        ribs in prop::collection::vec(0.0..700.0_f64, 0..3),
        holes in prop::collection::vec((0.0..600.0_f64, 0.0..350.0_f64, 30.0..250.0_f64, 30.0..200.0_f64), 0..2),
        rim in 50.0..110.0_f64, clearance in 0.0..25.0_f64, rows in 1_usize..4, columns in 1_usize..5,
        by_hand in prop::option::of(prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 1..7)),
        boards in prop::option::of(40.0..120.0_f64), along in any::<bool>(),
    ) {
        let ceiling = Ceiling { length: mm(length), width: mm(width) };
        let supports: Vec<Support> = ribs.iter().map(|at| support(*at)).collect();
        let openings: Vec<Opening> = holes.iter().map(|h| opening(h.0, h.1, h.2, h.3)).collect();
        let lines: Option<Vec<Length>> = boards
            .map(|wide| (0..12).map(|n| mm(wide * (f64::from(n) + 0.5))).filter(|y| *y < mm(width)).collect());
        let obstacles = Obstacles { supports: &supports, openings: &openings, board_centres: lines.as_deref() };
        let fitting = Fitting { rim: mm(rim), clearance: mm(clearance) };
        let placed = match &by_hand {
            Some(shares) => {
                let wanted: Vec<Spot> = shares.iter().map(|s| spot(s.0 * length, s.1 * width)).collect();
                place(ceiling, obstacles, fitting, &wanted)
            }
            None => {
                let symmetry = Symmetry { across: true, along };
                place_grid(ceiling, obstacles, fitting, rows, columns, symmetry)
            }
        }
        .unwrap();
        let free = room(ceiling, obstacles, fitting).unwrap();
        // What is called clear is clear; a middle row may lie half a millimetre off its board's centre.
        let anywhere = Free { allowed_y: None, ..free.clone() };
        for (lamp, one) in placed.iter().enumerate().filter(|(_, one)| one.clear()) {
            let (x, y) = millimetres(one.at);
            prop_assert!(anywhere.is_free(x, y));
            prop_assert!(free.allowed_y.as_ref().is_none_or(|lines| lines.iter().any(|l| (l - y).abs() < 0.5)));
            for (other, at) in placed.iter().enumerate() {
                let (ox, oy) = millimetres(at.at);
                prop_assert!(other == lamp || libm::hypot(ox - x, oy - y) >= rim + clearance - 1e-5);
            }
        }
        if !placed.iter().all(Placed::clear) {
            prop_assert!(!net_holds(&free, placed.len()), "{placed:?}");
        }
    }
}

/// Whether a net of spots 8 mm apart, with the edges' own lines, holds so many lamps: lamp by lamp from the left,
/// given up after so many steps.
fn net_holds(free: &Free, lamps: usize) -> bool {
    let steps = |(from, to): (f64, f64)| {
        let (from, to) = (from + free.reach, to - free.reach);
        let count = ((to - from) / 8.0).floor().max(-1.0) as i64 + 1;
        (0..count).map(move |n| from + 8.0 * n as f64)
    };
    let mut xs: Vec<f64> = steps(free.area.x).collect();
    xs.extend(free.supports.iter().flat_map(|s| [s.0 - free.reach, s.1 + free.reach]));
    let ys: Vec<f64> = free.allowed_y.clone().unwrap_or_else(|| steps(free.area.y).collect());
    crate::sorting::sort_by(&mut xs, f64::total_cmp);
    let spots: Vec<(f64, f64)> = xs
        .iter()
        .flat_map(|&x| ys.iter().map(move |&y| (x, y)))
        .filter(|&(x, y)| free.is_free(x, y))
        .collect();
    let mut steps_left = 200_000_u32;
    net_deeper(&spots, free.apart, lamps, &mut Vec::new(), &mut steps_left)
}

fn net_deeper(
    spots: &[(f64, f64)],
    apart: f64,
    lamps: usize,
    taken: &mut Vec<(f64, f64)>,
    steps: &mut u32,
) -> bool {
    if taken.len() == lamps {
        return true;
    }
    for (at, spot) in spots.iter().enumerate() {
        *steps = steps.saturating_sub(1);
        if *steps == 0 {
            return false;
        }
        if taken.iter().all(|t| libm::hypot(t.0 - spot.0, t.1 - spot.1) >= apart) {
            taken.push(*spot);
            if net_deeper(&spots[at + 1..], apart, lamps, taken, steps) {
                return true;
            }
            taken.pop();
        }
    }
    false
}

// Bays of 60 mm for the centres of lamps 85 mm apart, 1900 mm long: cells of 60.2 mm by the diagonal, 32 at most in
// one bay; a ceiling of one bay of 150 mm by 200 mm takes no three lamps of 100 mm.
#[test]
fn more_lamps_than_fit_are_proved_not_to() {
    let ceiling = Ceiling { length: mm(150.0), width: mm(200.0) };
    let fitting = Fitting { rim: mm(95.0), clearance: mm(5.0) };
    let placed = place_grid(ceiling, nothing(), fitting, 3, 1, Symmetry::default()).unwrap();
    let told: Vec<_> = placed.iter().filter_map(|p| p.problem).collect();
    assert!(!told.is_empty());
    assert!(
        told.iter().all(|p| matches!(p, Problem::TooClose { at_most: Some(1 | 2), .. })),
        "{told:?}"
    );
}
