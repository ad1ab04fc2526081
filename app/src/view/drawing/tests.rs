//! Checks of the renderer on drawings as the sheets make them, and on odd ones.

use calc::drawing::{Anchor, Drawing, Fill, Pen, Point};

use super::layout::Layout;
use super::paper::{ROW, text_width};
use super::svg::{self, svg};

const PAGE: f64 = 358.0;

fn at(x: f64, y: f64) -> Point {
    Point::metres(x, y)
}

/// A roof seen from below: 5.48 m x 2.06 m with 13 bows, a hatch and dimensions.
fn roof() -> Drawing {
    let mut roof = Drawing::new("Roof from below", "A roof with 13 bows and a hatch.");
    roof.rectangle(Pen::Solid, Fill::Stock, at(0.0, 0.0), at(5.48, 2.06));
    for bow in 0..13 {
        let x = 0.1 + f64::from(bow) * 0.44;
        roof.line(Pen::Hidden, &[at(x, 0.0), at(x, 2.06)]);
        roof.text(at(x, -0.05), Anchor::Middle, format!("bow {}", bow + 1));
    }
    roof.rectangle(Pen::Cut, Fill::Opening, at(2.0, 0.8), at(2.4, 1.2));
    roof.dimension(at(0.0, 0.0), at(5.48, 0.0), 2.0, "5480 mm");
    roof.dimension(at(5.48, 0.0), at(5.48, 2.06), 2.0, "2060 mm");
    roof
}

/// A long board with seven marks.
fn board() -> Drawing {
    let mut board = Drawing::new("Board", "A board with seven marks.").strip();
    board.rectangle(Pen::Solid, Fill::Stock, at(0.0, 0.0), at(3.66, 0.12));
    for mark in 0..7 {
        let x = 0.2 + f64::from(mark) * 0.5;
        board.line(Pen::Mark, &[at(x, 0.0), at(x, 0.12)]);
        board.text(at(x, -0.03), Anchor::Middle, format!("rib {}", mark + 1));
    }
    board.dimension(at(3.66, 0.12), at(0.0, 0.12), 2.0, "3660 mm");
    board
}

/// Every number that is drawn.
fn numbers(svg: &str) -> Vec<f64> {
    svg.split('"')
        .flat_map(|part| part.split([' ', 'M', 'L', 'Z']))
        .filter_map(|word| word.parse().ok())
        .collect()
}

fn size(svg: &str) -> (f64, f64) {
    let view = svg.split("viewBox=\"0 0 ").nth(1).unwrap().split('"').next().unwrap();
    let (width, height) = view.split_once(' ').unwrap();
    (width.parse().unwrap(), height.parse().unwrap())
}

#[test]
fn a_whole_drawing_fills_the_width_of_the_page() {
    let (width, height) = size(&svg(&roof(), PAGE, 1));
    assert!((width - PAGE).abs() < 1.0, "{width}");
    assert!(height > 130.0 && height < 300.0, "{height}");
}

#[test]
fn a_strip_is_wider_than_the_page_and_high_enough_to_read() {
    let (width, height) = size(&svg(&board(), PAGE, 1));
    assert!(width > 3.0 * PAGE && width < 7.0 * PAGE, "{width}");
    assert!(height > 90.0, "{height}");
}

#[test]
fn lengths_are_to_scale() {
    let roof = roof();
    let layout = Layout::new(&roof, PAGE).unwrap();
    let (a, b) = (layout.px(at(0.0, 0.0)), layout.px(at(5.48, 2.06)));
    let scale = ((b.0 - a.0) / 5.48, (b.1 - a.1) / 2.06);
    assert!((scale.0 - scale.1).abs() < 1e-9 && !layout.stretched, "{scale:?}");
}

#[test]
fn every_label_is_written_and_none_hides_another() {
    for drawing in [roof(), board()] {
        for width in [240.0, PAGE, 700.0] {
            let layout = Layout::new(&drawing, width).unwrap();
            let picture = svg(&drawing, width, 1);
            let mut rooms: Vec<(f64, f64, f64)> = Vec::new();
            for placed in &layout.placed {
                let calc::drawing::Shape::Text { at, text, .. } = placed.shape else { continue };
                let (x, y) = layout.px(*at);
                assert!(picture.contains(&format!(">{text}<")));
                rooms.push((x + placed.moved.0, y + placed.moved.1, text_width(text)));
            }
            for (index, a) in rooms.iter().enumerate() {
                for b in &rooms[index + 1..] {
                    let apart = (a.0 - b.0).abs() + 1.0 >= (a.2 + b.2) / 2.0;
                    assert!(apart || (a.1 - b.1).abs() + 1.0 >= ROW, "{a:?} {b:?} at {width}");
                }
            }
        }
    }
}

#[test]
fn everything_drawn_is_on_the_page() {
    for drawing in [roof(), board()] {
        let picture = svg(&drawing, PAGE, 1);
        let (width, height) = size(&picture);
        for path in picture.split(" d=\"M ").skip(1) {
            if path.contains("</pattern>") {
                continue;
            }
            let values = numbers(path.split('"').next().unwrap());
            for point in values.chunks_exact(2) {
                assert!((-0.1..=width + 0.1).contains(&point[0]), "{point:?} {width} in {path}");
                assert!((-0.1..=height + 0.1).contains(&point[1]), "{point:?} {height} in {path}");
            }
        }
    }
}

#[test]
fn a_dimension_stands_off_to_the_left_of_its_way() {
    let mut drawing = Drawing::new("", "");
    drawing.rectangle(Pen::Solid, Fill::Empty, at(0.0, 0.0), at(1.0, 1.0));
    drawing.dimension(at(0.0, 0.0), at(1.0, 0.0), 2.0, "above");
    drawing.dimension(at(1.0, 1.0), at(0.0, 1.0), 2.0, "below");
    drawing.dimension(at(0.0, 1.0), at(0.0, 0.0), 2.0, "left");
    let layout = Layout::new(&drawing, PAGE).unwrap();
    let line = |from, to| layout.dimension(from, to, 2.0 * ROW);
    let above = line(at(0.0, 0.0), at(1.0, 0.0));
    assert!(above.ends[0].1 < layout.px(at(0.0, 0.0)).1 && above.figure.1 < above.ends[0].1);
    let below = line(at(1.0, 1.0), at(0.0, 1.0));
    assert!(below.ends[0].1 > layout.px(at(0.0, 1.0)).1 && below.figure.1 < below.ends[0].1);
    let left = line(at(0.0, 1.0), at(0.0, 0.0));
    assert!(left.ends[0].0 < layout.px(at(0.0, 0.0)).0 && left.figure.0 < left.ends[0].0);
    assert_eq!(left.read, (0.0, -1.0), "read from the bottom up");
}

#[test]
fn the_figure_of_a_long_strip_is_seen_before_scrolling() {
    let board = board();
    let layout = Layout::new(&board, PAGE).unwrap();
    let line = layout.dimension(at(3.66, 0.12), at(0.0, 0.12), 2.0 * ROW);
    assert!(line.figure.0 > 0.0 && line.figure.0 < PAGE, "{:?}", line.figure);
}

#[test]
fn shorter_dimensions_stand_nearer_to_the_piece() {
    let mut drawing = roof();
    drawing.dimension(at(5.48, 2.06), at(0.0, 2.06), 2.0, "all");
    drawing.dimension(at(2.4, 2.06), at(0.0, 2.06), 2.0, "part");
    let layout = Layout::new(&drawing, PAGE).unwrap();
    let shift = |name: &str| {
        let named = |placed: &&super::layout::Placed| matches!(placed.shape, calc::drawing::Shape::Dimension { text, .. } if text == name);
        layout.placed.iter().find(named).unwrap().shift
    };
    assert_eq!(shift("part"), 2.0 * ROW);
    assert!(shift("all") > shift("part") + 0.9 * ROW);
}

#[test]
fn flat_and_tall_drawings_stay_on_the_page() {
    for (x, y) in [(5.0, 0.01), (0.01, 5.0), (1.0, 1.0), (0.3, 2.0), (1e-4, 1e-5), (1e8, 1e7)] {
        let mut drawing = Drawing::new("", "");
        drawing.rectangle(Pen::Solid, Fill::Stock, at(0.0, 0.0), at(x, y));
        drawing.dimension(at(0.0, 0.0), at(x, 0.0), 2.0, "12 mm");
        let picture = svg(&drawing, PAGE, 1);
        let (width, height) = size(&picture);
        assert!(width < PAGE + 1.0 && height < 470.0, "{x} x {y}: {width} x {height}");
        let layout = Layout::new(&drawing, PAGE).unwrap();
        let (a, b) = (layout.px(at(0.0, 0.0)), layout.px(at(x, y)));
        assert!(b.0 - a.0 > 15.0 && b.1 - a.1 > 15.0, "{x} x {y} is seen");
        assert_eq!(layout.stretched, picture.contains("Not to scale"), "and it says so");
    }
}

#[test]
fn drawings_without_extent_are_drawn() {
    let mut point = Drawing::new("", "");
    point.cross(Pen::Mark, at(3.0, 3.0));
    let mut line = Drawing::new("", "").strip();
    line.line(Pen::Cut, &[at(0.0, 1.0), at(2.0, 1.0)]);
    line.dimension(at(1.0, 1.0), at(1.0, 1.0), 2.0, "0");
    let mut text = Drawing::new("", "");
    text.text(at(0.0, 0.0), Anchor::Start, "alone");
    for drawing in [point, line, text] {
        let picture = svg(&drawing, PAGE, 1);
        let (width, height) = size(&picture);
        assert!(width > 10.0 && height > 10.0 && height < 300.0, "{picture}");
        assert!(!picture.contains("NaN") && !picture.contains("inf"));
    }
    assert_eq!(svg(&Drawing::default(), PAGE, 1), "");
}

#[test]
fn what_is_not_finite_is_left_out() {
    let mut drawing = roof();
    let whole = svg(&drawing, PAGE, 1);
    drawing.cross(Pen::Mark, at(f64::NAN, 0.0));
    drawing.circle(Pen::Mark, Fill::Empty, at(0.0, 0.0), f64::INFINITY);
    drawing.line(Pen::Solid, &[]);
    drawing.text(at(1e300, 0.0), Anchor::End, "far");
    assert_eq!(svg(&drawing, PAGE, 1), whole);
}

#[test]
fn hatchings_have_names_of_their_own() {
    let mut drawing = Drawing::new("", "");
    drawing.rectangle(Pen::Solid, Fill::Waste, at(0.0, 0.0), at(1.0, 1.0));
    let picture = svg(&drawing, PAGE, 41);
    assert!(picture.contains("id=\"hatch-w41\"") && picture.contains("url(#hatch-w41)"));
    assert!(!picture.contains("hatch-o"), "unused hatchings are left out");
}

#[test]
fn nothing_in_it_is_blocked_by_the_content_security_policy() {
    for drawing in [roof(), board()] {
        let picture = svg(&drawing, PAGE, 1);
        assert!(!picture.contains("style") && !picture.contains("<script"));
    }
}

#[test]
fn line_types_and_fills_have_their_classes() {
    let mut drawing = Drawing::new("", "");
    let pens = [Pen::Solid, Pen::Thin, Pen::Hidden, Pen::Cut, Pen::Mark, Pen::Centre];
    for (row, pen) in (0..).zip(pens) {
        drawing.line(pen, &[at(0.0, f64::from(row)), at(3.0, f64::from(row))]);
    }
    for level in 0..5 {
        drawing.rectangle(Pen::Thin, Fill::Level(level), at(0.0, 0.0), at(1.0, 1.0));
    }
    let picture = svg(&drawing, PAGE, 1);
    for class in ["solid", "thin", "hidden", "cut", "mark", "centre"] {
        assert!(picture.contains(&format!("class=\"pen-{class}\"")), "{class}");
    }
    for level in 0..5 {
        assert!(picture.contains(&format!("class=\"pen-thin fill-level{level}\"")), "{level}");
    }
}

/// How light a colour is, roughly: the luma of ITU-R BT.709.
fn lightness(colour: &str) -> f64 {
    let channel = |at: usize| f64::from(u8::from_str_radix(&colour[at..at + 2], 16).unwrap());
    (0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)) / 255.0
}

#[test]
fn the_brighter_a_step_of_a_light_map_the_lighter_it_is_by_day_and_by_night() {
    let mut map = Drawing::new("", "");
    for step in 0..5 {
        map.rectangle(Pen::Thin, Fill::Light(step), at(0.0, 0.0), at(1.0, 1.0));
    }
    let picture = svg(&map, PAGE, 1);
    let colours = include_str!("../../../../style/10-base.css");
    let drawn = include_str!("../../../../style/40-drawing.css");
    let mut before = 0.0;
    for step in 0..5 {
        let class = format!("fill-light{step}");
        assert!(
            picture.contains(&class)
                && drawn.contains(&format!("{class} {{ fill: var(--light{step}"))
        );
        // Told once: the night has the same.
        let told: Vec<&str> = colours.split(&format!("--light{step}: ")).skip(1).collect();
        let [one] = told.as_slice() else { panic!("light {step} is told {} times", told.len()) };
        let light = lightness(&one[..7]);
        assert!(light > before + 0.05, "step {step}: {light} after {before}");
        before = light;
    }
}

/// The plan of a body with so many ribs 16 in apart, as it is measured on.
fn plan(ribs: usize) -> Drawing {
    let style = calc::quantity::Style::new(calc::quantity::UnitSystem::Imperial);
    let at: Vec<String> = (1..=ribs).map(|rib| format!("{} in", rib * 16)).collect();
    let node = match ribs {
        0 => serde_json::json!({}),
        _ => serde_json::json!({ "length": format!("{} in", (ribs + 1) * 16), "width": "81 in",
            "ribs": { "measured": at } }),
    };
    calc::project::asking_plan(&calc::project::Body::read(&node, style), style)
}

#[test]
fn every_measure_of_a_plan_can_be_tapped_with_a_thumb() {
    for width in [288.0, PAGE, 700.0] {
        for ribs in [0, 5, 13] {
            let drawing = plan(ribs);
            let layout = Layout::new(&drawing, width).unwrap();
            let rooms = super::targets::rooms(&drawing, &layout, layout.height);
            assert_eq!(rooms.len(), drawing.targets.len());
            for (target, room) in drawing.targets.iter().zip(&rooms) {
                let (wide, high) = (room.right - room.left, room.bottom - room.top);
                let name = format!("{}: {wide} x {high} of {ribs} ribs at {width}", target.asks);
                // Ribs that stand closer than a thumb is wide share their room: a tap goes to the nearest.
                let apart = layout.px_size(16.0 * 0.0254).0;
                let least = if target.asks.starts_with("ribs") { apart.min(44.0) } else { 44.0 };
                assert!(wide >= least - 1.0 && high >= 44.0, "{name}");
                assert!(room.left >= 0.0 && room.top >= 0.0, "{name}");
                assert!(room.right <= layout.width + 0.1, "{name}");
                assert!(room.bottom <= layout.height + 0.1, "{name}");
            }
            for (index, a) in rooms.iter().enumerate() {
                let ribs = |at: usize| drawing.targets[at].asks.starts_with("ribs");
                for (other, b) in rooms.iter().enumerate().skip(index + 1) {
                    assert!(!(ribs(index) && ribs(other) && a.meets(b)), "{index} meets {other}");
                }
            }
        }
    }
}

#[test]
fn what_can_be_tapped_is_named_and_says_what_it_asks() {
    let (picture, over) = svg::asking_svg(&plan(0), PAGE, 0);
    assert!(picture.contains(">?<") && !picture.contains("<button"));
    assert_eq!(over.matches("<button").count(), plan(0).targets.len());
    assert!(over.contains(
        "class=\"target blank\" data-with=\"length\" aria-label=\"Length inside, to enter\""
    ));
    let size =
        |svg: &str| svg.split(" viewBox=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    assert_eq!(size(&picture), size(&over), "one lies over the other");
    let (_, over) = svg::asking_svg(&plan(5), PAGE, 0);
    assert!(over.contains("data-with=\"ribs.measured.4\" aria-label=\"Rib 5: 80 in\""));
    assert!(!over.contains("style"), "blocked by the content security policy");
}
