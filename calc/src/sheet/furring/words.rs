//! What the furring sheet says: answers, remarks, the table of strips, a strip as a template.

use crate::text::text;
use crate::words::Phrase;
use uom::si::force::newton;
use uom::si::length::millimeter;

use super::screw::{Choice, Screwing, at_most};
use super::{Inputs, Kind, Worked};
use crate::carpentry::cautions::{DRILLED_STEEL, DUST, LOOK_BEHIND, MEASURE_AGAIN, OVERHEAD, SAW};
use crate::coating::cautions::FOR_GLUING;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::lists::{Mark, MarkStrip};
use crate::quantity::{Length, Style, UnitSystem, percent, significant};
use crate::report::{Answer, Caution, Remark, Table, TableRow, texts};
use crate::source::Source;

static CAUTIONS: &[(Phrase, Source)] =
    &[LOOK_BEHIND, OVERHEAD, DUST, SAW, DRILLED_STEEL, MEASURE_AGAIN];

pub(super) fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

pub(super) fn cautions(inputs: &Inputs) -> Vec<Caution> {
    let mut cautions = Caution::all(CAUTIONS);
    if inputs.adhesive.is_some() {
        cautions.extend(Caution::all(&FOR_GLUING));
    }
    cautions
}

pub(super) fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let mark = |value: f64| style.mark(mm(value)).text;
    let (longest, label) = (worked.longest(), text!("Cut {} strips to", inputs.strips()));
    let cut = style.mark(mm(longest.length_mm));
    let cut = match worked.kinds.last() {
        Some(shortest) if worked.kinds.len() > 1 => {
            Answer::new(label, text!("{} to {}", mark(shortest.length_mm), cut.text))
                .note("each to the width at its own rib: see the table")
        }
        _ => Answer::new(label, cut.text.clone()).note(style.left_over(&cut)),
    };
    let counts = || worked.kinds.iter().map(|kind| kind.marks_mm.len());
    let (fewest, most) = (counts().min().unwrap_or(0), counts().max().unwrap_or(0));
    let each = if fewest == most { most.to_string() } else { text!("{} to {}", &fewest, &most) };
    let spacings = worked.kinds.iter().map(Kind::spacing_mm);
    let widest = spacings.fold(0.0, f64::max);
    let most_apart = if worked.kinds.len() > 1 { "at most " } else { "" };
    let mut answers = vec![
        cut,
        Answer::new("Screws in each strip", each).note(text!(
            "{} in all, {}{} apart",
            &worked.screws,
            &most_apart,
            mark(widest)
        )),
    ];
    answers.push(match (&inputs.screwing, &worked.screw) {
        (Some(screwing), Some(choice)) => {
            let least = style.small(choice.need.least);
            let range = match choice.longest {
                Some(longest) => text!("from {} to {} long", &least, at_most(longest, style)),
                None => text!(
                    "at least {} long; longest not shown: enter what is behind the steel",
                    &least
                ),
            };
            let number = choice.point.filter(|_| screwing.self_drilling);
            Answer::new("Screw", choice.name(style)).note(match number {
                Some(point) => text!(
                    "drill point {}, which drills up to {} of steel; {}",
                    &point.number(),
                    point
                        .capacity(choice.screw.gauge)
                        .map_or(String::new(), |most| style.small(most)),
                    &range
                ),
                None => range,
            })
        }
        _ => Answer::new("Buy", worked.planned.bought_words(style)),
    });
    answers
}

/// Which strip goes where, where they are not all alike.
pub(super) fn tables(worked: &Worked, style: Style) -> Vec<Table> {
    if worked.kinds.len() < 2 {
        return Vec::new();
    }
    let rows = worked.kinds.iter().map(|kind| TableRow {
        cells: vec![
            kind.name.clone(),
            kind.places(),
            style.mark(mm(kind.length_mm)).text,
            kind.marks_mm.len().to_string(),
            style.mark(mm(kind.spacing_mm())).text,
        ],
        chosen: false,
    });
    vec![Table {
        title: "Strips, and the ribs they go to".into(),
        heads: texts(&["Strip", "Goes to", "Length", "Screws", "Apart"]),
        rows: rows.collect(),
    }]
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
            remarks.push(Remark::good(text));
        } else {
            remarks.push(Remark::note(
                "Give the mass that hangs on the strips, and it is checked against the screws' pull-out.",
            ));
        }
        let same =
            |thickness: &Length| (thickness.get::<millimeter>() - inputs.thickness_mm).abs() < 0.05;
        if !screwing.layers.iter().any(|(_, thickness)| same(thickness)) {
            remarks.push(Remark::warning(text!("No layer under the screw's head is as thick as the strip ({}): the list must hold all from head to steel.", style.mark(mm(inputs.thickness_mm)).text)));
        }
        if let Some(least) = choice.with_point {
            let number = choice.point.map_or(0, |point| point.number());
            remarks.push(Remark::note(text!("This length is for a drilled pilot hole. A self-drilling screw (point {} gets through this steel) has to be at least {} long.", &number, style.small(least))));
        } else if choice.point.is_none() {
            remarks.push(Remark::note(text!(
                "No drill point of a #{} screw gets through {}: drill a pilot hole.",
                &choice.screw.gauge,
                style.small(screwing.steel)
            )));
        }
        if choice.longest.is_none() {
            let reach = choice.length - choice.need.grip - choice.need.steel;
            remarks.push(Remark::warning(text!(
                "Nothing says what lies behind the steel, and this screw reaches {} behind it. Probe a hole, and enter the free depth here or the body's depth behind a rib's face.",
                style.small(reach)
            )));
        }
        remarks.push(Remark::note(text!(
            "Drill {} through the strip, so that the screw draws it tight. {}",
            drill(choice.screw.clearance_drill(), style),
            steel_hole(screwing, choice, style)
        )));
    }
    if !inputs.usual.is_empty() {
        remarks.push(Remark::note(text!(
            "Left out, so the usual stands: {}.",
            inputs.usual.join("; ")
        )));
    }
    if inputs.clearance_mm < 0.5 {
        remarks.push(Remark::warning(
            "Without clearance at its ends a strip as long as the span does not go in: cut it short, or in two.",
        ));
    }
    remarks.push(Remark::note(
        "One strip lies on each rib and along it, screwed to the rib all the way; the lining's boards cross the strips. For battens across the ribs, screwed where they cross them, give length and number yourself.",
    ));
    remarks.extend(cut_ribs(inputs));
    if inputs.end_distance_mm < 10.0 {
        remarks.push(Remark::warning(
            "So close to its end a screw splits the strip: keep off the end, or drill a clearance hole.",
        ));
    }
    remarks.extend(worked.planned.remarks(style));
    remarks
}

/// The hole in the steel.
fn steel_hole(screwing: &Screwing, choice: &Choice, style: Style) -> String {
    match choice.steel_pilot {
        _ if screwing.self_drilling => "A drill point makes its own hole in the steel.".to_owned(),
        Some(hole) => text!(
            "In the steel a tapping screw wants a hole of {}, unless its box names another: the box comes first.",
            drill(hole, style)
        ),
        None => "In steel of this thickness the hole is not shown: take the one that the screw's box names.".to_owned(),
    }
}

/// Strips that end at an opening.
fn cut_ribs(inputs: &Inputs) -> Option<Remark> {
    let mut ribs: Vec<String> = Vec::new();
    let mut names: Vec<&str> = Vec::new();
    for span in &inputs.spans {
        let Some(name) = span.opening.as_deref() else { continue };
        let rib = span.rib.to_string();
        if ribs.last() != Some(&rib) {
            ribs.push(rib);
        }
        if !names.contains(&name) {
            names.push(name);
        }
    }
    (!ribs.is_empty()).then(|| {
        let (head, it) = match ribs.len() {
            1 => ("Rib", ("is", "its strip ends")),
            _ => ("Ribs", ("are", "their strips end")),
        };
        Remark::warning(text!(
            "{} {} {} interrupted by the {}: {} there. A roof bow that is cut needs a frame: headers to the bows beside it, before any strip goes on.",
            head,
            ribs.join(", "),
            it.0,
            names.join(", "),
            it.1
        ))
    })
}

/// A drill as it is sold: 64ths of an inch, or tenths of a millimetre.
pub(super) fn drill(diameter: Length, style: Style) -> String {
    match style.system {
        UnitSystem::Imperial => {
            let fine = Style { rounding: crate::quantity::Rounding::ThirtySecond, ..style };
            let whole = fine.mark(diameter);
            if whole.left_over().is_none() {
                return whole.text;
            }
            let (mut parts, mut of) =
                ((diameter.get::<uom::si::length::inch>() * 64.0).round(), 64.0);
            while parts > 1.0 && parts % 2.0 == 0.0 && of > 1.0 {
                (parts, of) = (parts / 2.0, of / 2.0);
            }
            text!("{}/{} in", &parts, &of)
        }
        UnitSystem::Metric => text!("{} mm", significant(diameter.get::<millimeter>(), 2)),
    }
}

pub(super) fn force(newtons: f64, style: Style) -> String {
    match style.system {
        UnitSystem::Imperial => text!("{} lb", significant(newtons / 4.448_221_615_260_5, 3)),
        UnitSystem::Metric => text!("{} N", significant(newtons, 3)),
    }
}

pub(super) fn marks(kind: &Kind) -> MarkStrip {
    let marks = kind.marks_mm.iter().enumerate().map(|(index, at)| Mark {
        id: text!("s{}", index + 1),
        label: text!("screw {}", index + 1),
        at: mm(*at),
        note: String::new(),
    });
    MarkStrip {
        id: kind.id(),
        label: kind.name.clone(),
        note: kind.places(),
        alike: kind.count as usize,
        length: mm(kind.length_mm),
        marks: marks.collect(),
    }
}

pub(super) fn template(inputs: &Inputs, kind: &Kind, style: Style) -> Drawing {
    let strip = kind.length_mm / 1e3;
    let title = match kind.ribs.is_empty() {
        true => "Strip with its screw marks".to_owned(),
        false => text!("Longest strip ({}) with its screw marks", kind.places()),
    };
    let mut drawing = Drawing::new(
        title,
        text!(
            "A strip {} long with {} screw marks, the first {} from its end.",
            style.length(mm(kind.length_mm)),
            kind.marks_mm.len(),
            style.length(mm(inputs.end_distance_mm))
        ),
    )
    .strip();
    // Never so thin that it cannot be seen.
    let high = (inputs.width_mm / 1e3).max(strip * 0.02);
    drawing.rectangle(Pen::Solid, Fill::Stock, Point::metres(0.0, 0.0), Point::metres(strip, high));
    for at in &kind.marks_mm {
        let x = at / 1e3;
        drawing.cross(Pen::Mark, Point::metres(x, high / 2.0));
        drawing.text(Point::metres(x, -high * 0.3), Anchor::Middle, style.mark(mm(*at)).text);
    }
    drawing.dimension(
        Point::metres(strip, high),
        Point::metres(0.0, high),
        2.0,
        style.length(mm(kind.length_mm)),
    );
    drawing
}
