//! Answers, remarks, table and working of the trim sheet.

use crate::text::text;
use uom::si::length::millimeter;

use super::{Inputs, SEALANT_BEAD_MM, sealant};
use crate::opening::trim::{self, Corner, CornerCut, Cut, Flange};
use crate::quantity::{Length, Marked, Style, UnitSystem};
use crate::report::{Answer, Remark, Step, Table, TableRow, texts};
use crate::sheet::furring::screw::at_most;

/// A reading that is off by less than this, or a flange that rocks by less, is not worth a word.
const UNSEEN_MM: f64 = 0.4;

pub fn answers(flange: &Flange, cut: &Cut, style: Style) -> Vec<Answer> {
    let at_all = |of: &dyn Fn(&CornerCut) -> String| {
        let texts: Vec<String> = cut.corners.iter().map(of).collect();
        texts.join(" · ")
    };
    let names: Vec<&str> = cut.corners.iter().map(|corner| corner.name.as_str()).collect();
    let names = names.join(", ");
    vec![
        Answer::new(
            "Cut off, from the roof-side edge",
            at_all(&|corner| style.mark(corner.cut).text),
        )
        .note(names.clone()),
        Answer::new("Keep, from the flange", at_all(&|corner| kept(corner, flange, style))).note(
            text!("{}; with the cut-off each makes {}", &names, style.mark(flange.height).text),
        ),
        Answer::new("Out of level", style.short(cut.uneven))
            .note("from the corner that loses most to the one that loses least"),
    ]
}

/// What stays at a corner, as it is marked: the height less the cut, both as shown, so that the two marks meet on the tape.
pub(super) fn kept(corner: &CornerCut, flange: &Flange, style: Style) -> String {
    style.mark(style.mark(flange.height).rounded - style.mark(corner.cut).rounded).text
}

pub(super) fn remarks(inputs: &Inputs, cut: &Cut, style: Style) -> Vec<Remark> {
    let flange = &inputs.flange;
    let mut remarks = Vec::new();
    if let Some(twist) = cut.twist {
        let rocks_by = style.short(twist.rocks_by);
        if !twist.rim_follows {
            remarks.push(Remark::warning(text!(
                "Ceiling and roof frame are twisted to each other: a flat flange stands off by \
                 {} at two corners, more than its screws can draw in. Measure again; if it \
                 stays, pack the ceiling there or seal the gap.",
                &rocks_by
            )));
        } else if twist.rocks_by.get::<millimeter>() > UNSEEN_MM {
            remarks.push(Remark::note(text!(
                "A flat flange rocks by {} on two corners; its screws can draw that in.",
                &rocks_by
            )));
        }
    }
    remarks.push(Remark::note(
        "Mark the cut-off from the roof-side edge and the kept height from the flange's face at every \
         corner: where both marks meet, they are right. Join them with a straight line on each side.",
    ));
    remarks.push(Remark::note(
        "Do not cut along a line traced at the ceiling. With the trim pushed up, what shows below \
         the ceiling is as much as must go, but it must go from the roof-side edge: the flange stays.",
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
    remarks.push(Remark::note(
        "On a crowned roof the ceiling may stand lower or higher between the corners: read the standoff half-way along each side too, and where it is another, cut that side to a curve through three marks.",
    ));
    remarks.push(match inputs.lining {
        Some(lining) => Remark::note(text!(
            "Trim screws may go {} into the ceiling, board and strip: no screw longer than that and the flange's own thickness.",
            at_most(lining, style)
        )),
        None => Remark::note(
            "The longest trim screw is not shown: enter how thick board and strip are where its screws go.",
        ),
    });
    if let Some(sealant) = sealant(flange) {
        remarks.push(Remark::note(text!(
            "Round the opening goes {} of sealant, by a bead of {}: it is on the buy list. Seal to the roof frame as the vent's maker says; the trim itself keeps no water out.",
            style.run(sealant.bead),
            style.short(Length::new::<millimeter>(SEALANT_BEAD_MM))
        )));
    }
    if !inputs.usual.is_empty() {
        remarks.push(Remark::note(text!(
            "Left out, so the usual stands: {}.",
            inputs.usual.join("; ")
        )));
    }
    if flange.corners.len() != 4 {
        remarks.push(Remark::note(
            "With all four corners, in order round the opening, the four sides are drawn unrolled, \
             and it is seen whether the flange can lie flat.",
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
        let off = style.mark(corner.cut);
        let reading = |length: Option<Length>| length.map_or_else(String::new, |l| style.short(l));
        TableRow {
            cells: vec![
                corner.name.clone(),
                reading(readings.standoff),
                reading(readings.depth),
                beside(&off, style),
                kept(corner, flange, style),
            ],
            chosen: false,
        }
    };
    Table {
        title: "Corner by corner: cut off from the roof-side edge, keep from the flange".into(),
        heads: texts(&["Corner", "Standoff", "Depth", "Cut off", "Keep"]),
        rows: cut.corners.iter().zip(&flange.corners).map(row).collect(),
    }
}

fn beside(marked: &Marked, style: Style) -> String {
    let left_over = style.left_over(marked);
    if left_over.is_empty() {
        marked.text.clone()
    } else {
        text!("{} ({})", &marked.text, left_over)
    }
}

pub fn working(flange: &Flange, cut: &Cut, style: Style) -> Vec<Step> {
    // Finer than the tape, so that the sums are seen to add up.
    let text = |length: Length| match style.system {
        UnitSystem::Metric => style.small(length),
        UnitSystem::Imperial => style.short(length),
    };
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
            "A flat flange stands off at two corners by",
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
