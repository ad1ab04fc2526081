//! Flanges worked by hand, every fault, and the geometry that holds for all.

use proptest::prelude::*;
use uom::si::length::inch;

use super::*;
use crate::formula::Formula;

fn corners(readings: [(Option<f64>, Option<f64>); 4]) -> Vec<Corner> {
    let corner = |(at, (standoff, depth)): (usize, (Option<f64>, Option<f64>))| Corner {
        name: format!("corner {}", at + 1),
        standoff: standoff.map(millimeters),
        depth: depth.map(millimeters),
    };
    readings.into_iter().enumerate().map(corner).collect()
}

fn flange(height: f64, readings: [(Option<f64>, Option<f64>); 4]) -> Flange {
    Flange {
        height: millimeters(height),
        corners: corners(readings),
        clearance: millimeters(0.0),
        least_grip: millimeters(0.0),
        sides: None,
    }
}

fn standoffs(height: f64, standoffs: [f64; 4]) -> Flange {
    flange(height, standoffs.map(|standoff| (Some(standoff), None)))
}

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

#[test]
fn cut_from_the_edge_and_keep_from_the_rim_make_the_height() {
    let mut low_ceiling = standoffs(102.0, [31.0, 33.0, 36.0, 34.0]);
    low_ceiling.sides = Some((millimeters(400.0), millimeters(360.0)));
    let got = cut(&low_ceiling).unwrap();
    let pairs: Vec<_> =
        got.corners.iter().map(|corner| (mm(corner.cut), mm(corner.keep))).collect();
    let expected = [(31.0, 71.0), (33.0, 69.0), (36.0, 66.0), (34.0, 68.0)];
    for (got, expected) in pairs.iter().zip(expected) {
        assert!(
            (got.0 - expected.0).abs() < 1e-9 && (got.1 - expected.1).abs() < 1e-9,
            "{pairs:?}"
        );
    }
    assert!((mm(got.uneven) - 5.0).abs() < 1e-9);
    let twist = got.twist.unwrap();
    assert!(mm(twist.of_corners).abs() < 1e-9 && twist.rim_follows);
    let lengths: Vec<_> = got.sides.iter().map(|side| mm(side.length.unwrap()).round()).collect();
    assert_eq!(lengths, [400.0, 360.0, 400.0, 360.0]);
    // The unrolled line is closed: each side starts where the one before ends.
    for (at, side) in got.sides.iter().enumerate() {
        assert_eq!((side.from, side.to), (at, (at + 1) % 4));
        assert_eq!(side.cut_to, got.sides[(at + 1) % 4].cut_from);
    }
}

#[test]
fn depth_and_standoff_say_the_same() {
    let from_depth = flange(102.0, [71.0, 69.0, 66.0, 68.0].map(|depth| (None, Some(depth))));
    let (one, other) =
        (cut(&from_depth).unwrap(), cut(&standoffs(102.0, [31.0, 33.0, 36.0, 34.0])).unwrap());
    for (one, other) in one.corners.iter().zip(&other.corners) {
        assert!((mm(one.cut) - mm(other.cut)).abs() < 1e-9);
    }
}

#[test]
fn clearance_shortens_the_wall() {
    let mut with_clearance = standoffs(100.0, [20.0; 4]);
    with_clearance.clearance = millimeters(1.5);
    let got = cut(&with_clearance).unwrap();
    assert!((mm(got.corners[0].cut) - 21.5).abs() < 1e-9);
    assert!((mm(got.corners[0].keep) - 78.5).abs() < 1e-9);
}

#[test]
fn the_standoff_is_cut_to_and_the_depth_checks_it() {
    // 1/16 in apart to the hair still agrees.
    let sixteenth = Length::new::<inch>(1.0 / 16.0);
    let got = cut(&flange(100.0, [(Some(20.0), Some(80.0 + mm(sixteenth))); 4])).unwrap();
    assert!((mm(got.corners[2].cut) - 20.0).abs() < 1e-9);
    let apart = [
        (Some(20.0), Some(80.0)),
        (Some(20.0), Some(82.0)),
        (Some(20.0), None),
        (None, Some(80.0)),
    ];
    let faults = cut(&flange(100.0, apart)).unwrap_err();
    let (standoff, from_depth) = (millimeters(20.0), millimeters(18.0));
    assert_eq!(faults, [Fault::ReadingsDisagree { corner: 1, standoff, from_depth }]);
}

#[test]
fn one_corner_may_need_no_cut() {
    assert!(mm(cut(&standoffs(50.0, [0.0, 3.0, 6.0, 3.0])).unwrap().corners[0].cut).abs() < 1e-9);
    assert_eq!(cut(&standoffs(50.0, [0.0; 4])), Err(vec![Fault::NothingToCut]));
    let mut with_clearance = standoffs(50.0, [0.0; 4]);
    with_clearance.clearance = millimeters(2.0);
    assert_eq!(cut(&with_clearance), Err(vec![Fault::NothingToCut]));
    let flush = 2.0 * 25.4;
    assert_eq!(cut(&flange(flush, [(None, Some(flush)); 4])), Err(vec![Fault::NothingToCut]));
}

#[test]
fn a_flange_too_low_or_left_too_low() {
    let deep = flange(
        50.0,
        [(None, Some(45.0)), (None, Some(52.0)), (Some(3.0), None), (Some(-1.0), None)],
    );
    let faults = cut(&deep).unwrap_err();
    let short = |fault: &Fault| match fault {
        Fault::TallerFlangeNeeded { corner, short_by } => {
            (*corner, (mm(*short_by) * 1e6).round() / 1e6)
        }
        other => panic!("{other:?}"),
    };
    assert_eq!(faults.iter().map(short).collect::<Vec<_>>(), [(1, 2.0), (3, 1.0)]);
    assert!(faults[0].to_string().contains("corner 2 the trim is 2 mm too short"), "{}", faults[0]);
    let mut grip = standoffs(50.0, [20.0, 20.0, 30.0, 30.0]);
    grip.least_grip = millimeters(25.0);
    let left =
        |corner| Fault::TooLittleLeft { corner, keep: millimeters(20.0), least: millimeters(25.0) };
    assert_eq!(cut(&grip), Err(vec![left(2), left(3)]));
    assert!(matches!(
        cut(&standoffs(50.0, [20.0, 20.0, 50.0, 50.0])).unwrap_err()[0],
        Fault::TooLittleLeft { corner: 2, .. }
    ));
}

/// What is shown as working comes to what is cut.
#[test]
fn the_working_comes_to_the_cut() {
    let mut flange = flange(
        60.0,
        [(Some(16.0), None), (Some(17.0), Some(43.0)), (None, Some(39.0)), (None, Some(42.0))],
    );
    flange.clearance = millimeters(1.5);
    let got = cut(&flange).unwrap();
    let (height, clearance) = (flange.height, flange.clearance);
    for (corner, readings) in got.corners.iter().zip(&flange.corners) {
        let (cut, keep) = match (readings.standoff, readings.depth) {
            (None, Some(depth)) => {
                let keep = Keep { depth, clearance }.value();
                (CutRest { height, keep }.value(), keep)
            }
            (standoff, _) => {
                let cut = CutOff { standoff: standoff.unwrap(), clearance }.value();
                (cut, KeepRest { height, cut }.value())
            }
        };
        assert!((mm(cut) - mm(corner.cut)).abs() < 1e-9);
        assert!((mm(keep) - mm(corner.keep)).abs() < 1e-9);
    }
    let [first, second, third, fourth] = [0, 1, 2, 3].map(|at: usize| got.corners[at].cut);
    let rocks_by = RocksBy { first, second, third, fourth }.value();
    assert!((mm(rocks_by) - 1.0).abs() < 1e-9);
    assert!((mm(got.twist.unwrap().rocks_by) - 1.0).abs() < 1e-9);
}

#[test]
fn missing_readings_and_corners() {
    let missing = [(Some(5.0), None), (None, None), (Some(5.0), None), (None, None)];
    let faults = [Fault::NoReading { corner: 1 }, Fault::NoReading { corner: 3 }];
    assert_eq!(cut(&flange(50.0, missing)), Err(faults.to_vec()));
    let mut three = standoffs(50.0, [5.0; 4]);
    three.corners.pop();
    let got = cut(&three).unwrap();
    assert_eq!((got.corners.len(), got.sides.len(), got.twist), (3, 0, None));
    three.corners.clear();
    assert_eq!(cut(&three), Err(vec![Fault::NoCorners]));
}

#[test]
fn a_twisted_ceiling_rocks_the_rim() {
    let got = cut(&standoffs(80.0, [10.0, 10.0, 10.0, 20.0])).unwrap().twist.unwrap();
    assert!((mm(got.of_corners) - 10.0).abs() < 1e-9 && (mm(got.rocks_by) - 5.0).abs() < 1e-9);
    assert!(!got.rim_follows);
}

proptest! {
    /// Build a flat roof frame and a flat ceiling, hold the cut flange to it, and look: the rim
    /// lies on the ceiling and the edge on the roof frame.
    #[test]
    fn the_cut_flange_fits_the_opening(
        height in 80.0..150.0,
        depth in 30.0..55.0,
        slope_x in -0.02..0.02,
        slope_y in -0.02..0.02,
        length in 200.0..500.0,
        width in 200.0..500.0,
    ) {
        let depth_at = |x: f64, y: f64| depth + slope_x * x + slope_y * y;
        let places = [(0.0, 0.0), (length, 0.0), (length, width), (0.0, width)];
        let mut flange = flange(height, places.map(|(x, y)| (None, Some(depth_at(x, y)))));
        flange.sides = Some((millimeters(length), millimeters(width)));
        let got = cut(&flange).unwrap();
        prop_assert!(mm(got.twist.unwrap().of_corners).abs() < 1e-9);
        for side in &got.sides {
            let ((x0, y0), (x1, y1)) = (places[side.from], places[side.to]);
            for along in [0.0, 0.3, 0.5, 0.9, 1.0] {
                let kept = mm(side.keep_from) * (1.0 - along) + mm(side.keep_to) * along;
                let needed = depth_at(x0 + (x1 - x0) * along, y0 + (y1 - y0) * along);
                prop_assert!((kept - needed).abs() < 1e-9);
            }
        }
        for corner in &got.corners {
            prop_assert!((mm(corner.cut) + mm(corner.keep) - height).abs() < 1e-9);
        }
    }

    #[test]
    fn no_number_breaks_it(
        a in any::<f64>(),
        b in any::<f64>(),
        c in any::<f64>(),
        d in 1.0..200.0,
        e in 0.0..30.0,
    ) {
        for (height, standoff, depth) in [(a, b, c), (d, a, b), (d, e, a), (d, e, d - e)] {
            for (clearance, grip, side) in [(0.0, 0.0, 100.0), (a, 0.0, d), (0.0, b, c)] {
                let mut flange = flange(height, [(Some(standoff), None), (None, Some(depth)), (Some(standoff), Some(depth)), (Some(e), None)]);
                flange.clearance = millimeters(clearance);
                flange.least_grip = millimeters(grip);
                flange.sides = Some((millimeters(side), millimeters(d)));
                match cut(&flange) {
                    Ok(got) => for corner in &got.corners {
                        prop_assert!(corner.cut.value >= 0.0 && corner.keep.value > 0.0 && corner.keep <= flange.height);
                    },
                    Err(faults) => {
                        prop_assert!(!faults.is_empty());
                        prop_assert!(faults.iter().all(|fault| !fault.to_string().is_empty()));
                    }
                }
            }
        }
    }
}
