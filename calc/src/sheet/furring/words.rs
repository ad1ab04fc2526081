//! What the furring sheet says: answers, remarks, working, the strip as a template.

use crate::text::text;
use uom::si::force::newton;
use uom::si::length::millimeter;

use super::{Inputs, STRIP_LENGTH_RULE, Worked};
use crate::carpentry::cautions::{DRILLED_STEEL, DUST, LOOK_BEHIND, MEASURE_AGAIN, OVERHEAD, SAW};
use crate::carpentry::setting_out::EQUAL_SPACING;
use crate::coating::bead::BEAD;
use crate::coating::cautions::FOR_GLUING;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::fastening::acceleration::ROAD_VERTICAL;
use crate::fastening::hold::EVEN_SHARE;
use crate::fastening::length::THREE_THREADS;
use crate::fastening::screw::HOLES;
use crate::fastening::sheet_steel::PULL_OUT;
use crate::lists::{Mark, MarkStrip};
use crate::quantity::{Length, Style, UnitSystem, percent, significant};
use crate::report::{Answer, Caution, Remark, Step};
use crate::source::Source;

static CAUTIONS: &[(&str, Source)] =
    &[LOOK_BEHIND, OVERHEAD, DUST, SAW, DRILLED_STEEL, MEASURE_AGAIN];

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

pub(super) fn cautions(inputs: &Inputs) -> Vec<Caution> {
    let mut cautions = Caution::all(CAUTIONS);
    if inputs.adhesive.is_some() {
        cautions.extend(Caution::all(&FOR_GLUING));
    }
    cautions
}

fn spacing_mm(worked: &Worked) -> f64 {
    match worked.marks_mm.as_slice() {
        [first, second, ..] => second - first,
        _ => 0.0,
    }
}

pub(super) fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let cut = style.mark(mm(worked.strip_mm));
    let mut answers = vec![
        Answer::new(text!("Cut {} strips to", &inputs.strips), cut.text).note(cut.left_over_text),
        Answer::new("Screws in each strip", worked.marks_mm.len().to_string()).note(text!(
            "{} in all, {} apart",
            &worked.screws,
            style.mark(mm(spacing_mm(worked))).text
        )),
    ];
    answers.push(match &worked.screw {
        Some(choice) => Answer::new("Screw", choice.name(style))
            .note(text!("at least {} long", style.small(choice.need.least))),
        None => Answer::new("Buy", worked.planned.bought_words(style)),
    });
    answers
}

pub(super) fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if let (Some(screwing), Some(choice)) = (&inputs.screwing, &worked.screw) {
        if let Some(hold) = &choice.hold {
            let share = percent(100.0 * hold.share);
            let text = text!(
                "At twice its weight the ceiling takes {} of what all {} screws may hold in mild steel ({} each).",
                &share,
                &worked.screws,
                force(hold.each.get::<newton>(), style)
            );
            remarks.push(if hold.share > 1.0 {
                Remark::warning(text!("{} Add screws, or take thicker ones.", &text))
            } else {
                Remark::good(text)
            });
        }
        let same =
            |thickness: &Length| (thickness.get::<millimeter>() - inputs.thickness_mm).abs() < 0.05;
        if !screwing.layers.iter().any(|(_, thickness)| same(thickness)) {
            remarks.push(Remark::warning(text!("No layer under the screw's head is as thick as the strip ({}): the list must hold all from head to steel.", style.mark(mm(inputs.thickness_mm)).text)));
        }
        if let Some(least) = choice.with_point {
            let number = choice.point.map_or(0, |point| point.number());
            remarks.push(Remark::note(text!("This length is for a drilled pilot hole. A self-drilling screw (point {} gets through this steel) has to be at least {} long.", &number, style.small(least))));
        }
        remarks.push(Remark::note(text!("Drill {} through the strip; pilot for the thread in soft wood {}, in hard wood {}. In steel take the pilot that the screw's box names.", drill(choice.screw.clearance_drill(), style), drill(choice.screw.pilot_drill(false), style), drill(choice.screw.pilot_drill(true), style))));
    }
    if inputs.end_distance_mm < 10.0 {
        remarks.push(Remark::warning(
            "So close to its end a screw splits the strip: keep off the end, or drill a clearance hole.",
        ));
    }
    remarks.extend(worked.planned.remarks(style));
    remarks
}

/// A drill as it is sold: 64ths of an inch, or tenths of a millimetre.
fn drill(diameter: Length, style: Style) -> String {
    match style.system {
        UnitSystem::Imperial => {
            let fine = Style { rounding: crate::quantity::Rounding::ThirtySecond, ..style };
            let whole = fine.mark(diameter);
            if whole.left_over_text.is_empty() {
                return whole.text;
            }
            let parts = (diameter.get::<uom::si::length::inch>() * 64.0).round();
            text!("{}/64 in", &parts)
        }
        UnitSystem::Metric => text!("{} mm", significant(diameter.get::<millimeter>(), 2)),
    }
}

fn force(newtons: f64, style: Style) -> String {
    match style.system {
        UnitSystem::Imperial => text!("{} lb", significant(newtons / 4.448_221_615_260_5, 3)),
        UnitSystem::Metric => text!("{} N", significant(newtons, 3)),
    }
}

pub(super) fn marks(inputs: &Inputs, worked: &Worked) -> MarkStrip {
    let label = match inputs.strips {
        1 => "strip".to_owned(),
        strips => text!("strip, {} alike", &strips),
    };
    let marks = worked.marks_mm.iter().enumerate().map(|(index, at)| Mark {
        label: text!("screw {}", index + 1),
        at: mm(*at),
        note: String::new(),
    });
    MarkStrip { label, length: mm(worked.strip_mm), marks: marks.collect() }
}

pub(super) fn template(inputs: &Inputs, worked: &Worked, style: Style) -> Drawing {
    let strip = worked.strip_mm / 1e3;
    let mut drawing = Drawing::new(
        "Strip with its screw marks",
        text!(
            "A strip {} long with {} screw marks, the first {} from its end.",
            style.length(mm(worked.strip_mm)),
            worked.marks_mm.len(),
            style.length(mm(inputs.end_distance_mm))
        ),
    )
    .strip();
    // Never so thin that it cannot be seen.
    let high = (inputs.width_mm / 1e3).max(strip * 0.02);
    drawing.rectangle(Pen::Solid, Fill::Stock, Point::metres(0.0, 0.0), Point::metres(strip, high));
    for at in &worked.marks_mm {
        let x = at / 1e3;
        drawing.cross(Pen::Mark, Point::metres(x, high / 2.0));
        drawing.text(Point::metres(x, -high * 0.3), Anchor::Middle, style.mark(mm(*at)).text);
    }
    drawing.dimension(
        Point::metres(strip, high),
        Point::metres(0.0, high),
        2.0,
        style.length(mm(worked.strip_mm)),
    );
    drawing
}

pub(super) fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let mark = |value: f64| style.mark(mm(value)).text;
    let count = worked.marks_mm.len();
    let mut steps = vec![
        Step::new(
            "Strip",
            "l = W − 2 · c",
            text!("{} − 2 · {}", mark(inputs.span_mm), mark(inputs.clearance_mm)),
            mark(worked.strip_mm),
            &STRIP_LENGTH_RULE,
        ),
        Step::new(
            "Screw spacing",
            "s = (l − 2 · e) / (n − 1)",
            text!(
                "({} − 2 · {}) / {}",
                mark(worked.strip_mm),
                mark(inputs.end_distance_mm),
                count.saturating_sub(1)
            ),
            mark(spacing_mm(worked)),
            &EQUAL_SPACING,
        ),
        Step::new(
            "Screws",
            "strips · n",
            text!("{} · {}", &inputs.strips, &count),
            worked.screws.to_string(),
            &EQUAL_SPACING,
        ),
    ];
    if let Some(choice) = &worked.screw {
        let need = &choice.need;
        steps.push(Step::new(
            "Least screw length",
            "layers + steel + 3 threads + point",
            text!(
                "{} + {} + {} + {}",
                style.small(need.grip),
                style.small(need.steel),
                style.small(need.threads),
                style.small(need.point)
            ),
            style.small(need.least),
            &THREE_THREADS,
        ));
        steps.push(Step::new(
            "Hole through the strip",
            "clearance drill of the gauge",
            text!("#{}", &choice.screw.gauge),
            drill(choice.screw.clearance_drill(), style),
            &HOLES,
        ));
        if let Some(hold) = &choice.hold {
            steps.push(Step::new(
                "Pull-out of one screw",
                "0.85 · t · d · Fu / 3",
                text!(
                    "0.85 · {} · {} · 230 MPa / 3",
                    style.small(need.steel),
                    style.small(choice.screw.diameter())
                ),
                force(hold.each.get::<newton>(), style),
                &PULL_OUT,
            ));
            steps.push(Step::new(
                "Load on the road",
                "F = 2 · m · g",
                "own weight and as much again",
                force(hold.load.get::<newton>(), style),
                &ROAD_VERTICAL,
            ));
            steps.push(Step::new(
                "Share used",
                "F / (screws · pull-out)",
                text!(
                    "{} / ({} · {})",
                    force(hold.load.get::<newton>(), style),
                    &worked.screws,
                    force(hold.each.get::<newton>(), style)
                ),
                percent(100.0 * hold.share),
                &EVEN_SHARE,
            ));
        }
    }
    if let (Some(adhesive), Some(glue)) = (&inputs.adhesive, &worked.glue) {
        steps.push(Step::new(
            "Adhesive",
            "V = π / 4 · d² · l · strips · beads / (1 − loss)",
            text!(
                "π / 4 · ({})² · {} / (1 − {})",
                style.small(adhesive.bead),
                style.run(glue.bead),
                percent(adhesive.loss_percent)
            ),
            text!("{}: {} cartridges", style.volume(glue.volume), &glue.cartridges),
            &BEAD,
        ));
    }
    steps.extend(worked.planned.working(style));
    steps
}
