//! Answers, remarks, table and working of the trim sheet.

use crate::text::text;
use uom::si::length::millimeter;

use crate::opening::trim::{self, Corner, CornerCut, Cut, Flange};
use crate::quantity::{Length, Marked, Style};
use crate::report::{Answer, Remark, Step, Table, TableRow, texts};

/// A reading that is off by less than this, or a rim that rocks by less, is not worth a word.
const UNSEEN_MM: f64 = 0.4;

pub fn answers(flange: &Flange, cut: &Cut, style: Style) -> Vec<Answer> {
    let at_all = |of: fn(&CornerCut) -> Length| {
        let texts: Vec<String> =
            cut.corners.iter().map(|corner| style.mark(of(corner)).text).collect();
        texts.join(" · ")
    };
    let names: Vec<&str> = cut.corners.iter().map(|corner| corner.name.as_str()).collect();
    let names = names.join(", ");
    vec![
        Answer::new("Cut off, from the roof-side edge", at_all(|corner| corner.cut))
            .note(names.clone()),
        Answer::new("Keep, from the rim", at_all(|corner| corner.keep)).note(text!(
            "{}; with the cut-off each makes {}",
            &names,
            style.mark(flange.height).text
        )),
        Answer::new("Out of level", style.short(cut.uneven))
            .note("from the corner that loses most to the one that loses least"),
    ]
}

pub fn remarks(flange: &Flange, cut: &Cut, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if let Some(twist) = cut.twist {
        let rocks_by = style.short(twist.rocks_by);
        if !twist.rim_follows {
            remarks.push(Remark::warning(text!(
                "Ceiling and roof frame are twisted to each other: a flat rim stands off by \
                 {} at two corners, more than its screws can draw in. Measure again; if it \
                 stays, pack the ceiling there or seal the gap.",
                &rocks_by
            )));
        } else if twist.rocks_by.get::<millimeter>() > UNSEEN_MM {
            remarks.push(Remark::note(text!(
                "A flat rim rocks by {} on two corners; its screws can draw that in.",
                &rocks_by
            )));
        }
    }
    remarks.push(Remark::note(
        "Mark the cut-off from the roof-side edge and the kept height from the rim's face at every \
         corner: where both marks meet, they are right. Join them with a straight line on each side.",
    ));
    remarks.push(Remark::note(
        "Do not cut along a line traced at the ceiling. With the flange pushed up, what shows below \
         the ceiling is as much as must go, but it must go from the roof-side edge: the rim stays.",
    ));
    for corner in &flange.corners {
        if let Some(off) = difference(corner, flange.height)
            && off.get::<millimeter>() > UNSEEN_MM
        {
            remarks.push(Remark::note(text!(
                "At {} the two readings differ by {}: near enough; the standoff is cut to.",
                &corner.name,
                style.small(off)
            )));
        }
    }
    if flange.corners.len() != 4 {
        remarks.push(Remark::note(
            "With all four corners, in order round the opening, the four sides are drawn unrolled, \
             and it is seen whether the rim can lie flat.",
        ));
    } else if flange.sides.is_none() {
        remarks.push(Remark::note(
            "The sides are drawn equally long; give their lengths to have them to scale.",
        ));
    }
    remarks
}

/// By how much the two readings of a corner differ, where there are two.
fn difference(corner: &Corner, height: Length) -> Option<Length> {
    let (standoff, depth) = corner.standoff.zip(corner.depth)?;
    Some((height - depth - standoff).abs())
}

/// Every corner with both heights and what rounding left over.
pub fn table(flange: &Flange, cut: &Cut, style: Style) -> Table {
    let row = |(corner, readings): (&CornerCut, &Corner)| {
        let (off, kept) = (style.mark(corner.cut), style.mark(corner.keep));
        let reading = |length: Option<Length>| length.map_or_else(String::new, |l| style.short(l));
        TableRow {
            cells: vec![
                corner.name.clone(),
                reading(readings.standoff),
                reading(readings.depth),
                beside(&off),
                beside(&kept),
            ],
            chosen: false,
        }
    };
    Table {
        title: "Corner by corner: cut off from the roof-side edge, keep from the rim".into(),
        heads: texts(&["Corner", "Standoff", "Depth", "Cut off", "Keep"]),
        rows: cut.corners.iter().zip(&flange.corners).map(row).collect(),
    }
}

fn beside(marked: &Marked) -> String {
    let left_over = marked.left_over_text();
    if left_over.is_empty() {
        marked.text.clone()
    } else {
        text!("{} ({})", &marked.text, left_over)
    }
}

pub fn working(flange: &Flange, cut: &Cut, style: Style) -> Vec<Step> {
    let text = |length: Length| style.short(length);
    let (height, clearance) = (text(flange.height), text(flange.clearance));
    let mut steps = Vec::new();
    for (corner, readings) in cut.corners.iter().zip(&flange.corners) {
        let (name, off, keep) = (&corner.name, text(corner.cut), text(corner.keep));
        let mut step = |what: &str, formula: &str, numbers: String, result: &String| {
            let name = text!("{}, {}", &what, &name);
            steps.push(Step::new(name, formula, numbers, result.clone(), &trim::GEOMETRY));
        };
        match (readings.standoff, readings.depth) {
            (None, Some(depth)) => {
                step("Keep", "keep = d − c", text!("{} − {}", text(depth), &clearance), &keep);
                step("Cut off", "cut = H − keep", text!("{} − {}", &height, &keep), &off);
            }
            (standoff, _) => {
                let standoff = text(standoff.unwrap_or_default());
                step("Cut off", "cut = s + c", text!("{} + {}", &standoff, &clearance), &off);
                step("Keep", "keep = H − cut", text!("{} − {}", &height, &off), &keep);
            }
        }
    }
    if let (Some(twist), [first, second, third, fourth]) = (cut.twist, cut.corners.as_slice()) {
        steps.push(Step::new(
            "A flat rim stands off at two corners by",
            "r = |cut₂ + cut₄ − cut₁ − cut₃| / 2",
            text!(
                "|{} + {} − {} − {}| / 2",
                text(second.cut),
                text(fourth.cut),
                text(first.cut),
                text(third.cut)
            ),
            text(twist.rocks_by),
            &trim::TWIST,
        ));
    }
    steps
}
