//! How the furring sheet comes to its numbers.

use crate::text::text;
use uom::si::force::newton;

use super::words::{drill, force, mm};
use super::{Inputs, STRIP_LENGTH_RULE, Worked};
use crate::carpentry::setting_out::EQUAL_SPACING;
use crate::carpentry::stations::BETWEEN;
use crate::coating::bead::BEAD;
use crate::fastening::acceleration::ROAD_VERTICAL;
use crate::fastening::drill_point::CAPACITY;
use crate::fastening::hold::EVEN_SHARE;
use crate::fastening::length::THREE_THREADS;
use crate::fastening::screw::HOLES;
use crate::fastening::sheet_steel::PULL_OUT;
use crate::fastening::steel_pilot::STEEL_PILOTS;
use crate::fastening::window::NO_FARTHER;
use crate::quantity::{Style, percent};
use crate::report::Step;

/// So many lengths of strip are worked out in full.
const MOST_WORKED: usize = 16;

pub(super) fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let mark = |value: f64| style.mark(mm(value)).text;
    let longest = worked.longest();
    let count = longest.marks_mm.len();
    let mut steps = Vec::new();
    for kind in worked.kinds.iter().take(MOST_WORKED) {
        let span = kind.length_mm + 2.0 * inputs.clearance_mm;
        steps.push(Step::new(
            match kind.ribs.is_empty() {
                true => "Strip".to_owned(),
                false => text!("{}, {}", capital(&kind.name), kind.places()),
            },
            "l = W − 2 · c",
            text!("{} − 2 · {}", mark(span), mark(inputs.clearance_mm)),
            mark(kind.length_mm),
            if kind.ribs.is_empty() { &STRIP_LENGTH_RULE } else { &BETWEEN },
        ));
    }
    steps.extend([
        Step::new(
            "Screw spacing",
            "s = (l − 2 · e) / (n − 1)",
            text!(
                "({} − 2 · {}) / {}",
                mark(longest.length_mm),
                mark(inputs.end_distance_mm),
                count.saturating_sub(1)
            ),
            mark(longest.spacing_mm()),
            &EQUAL_SPACING,
        ),
        Step::new(
            "Screws",
            "Σ strips · n",
            sum_of_screws(worked),
            worked.screws.to_string(),
            &EQUAL_SPACING,
        ),
    ]);
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
        if let Some(longest) = choice.longest {
            steps.push(Step::new(
                "Longest screw",
                "layers + steel + free depth behind",
                text!(
                    "{} + {} + {}",
                    style.small(need.grip),
                    style.small(need.steel),
                    style.small(longest - need.grip - need.steel)
                ),
                style.small(longest),
                &NO_FARTHER,
            ));
        }
        steps.push(Step::new(
            "Hole through the strip",
            "clearance drill of the gauge",
            text!("#{}", &choice.screw.gauge),
            drill(choice.screw.clearance_drill(), style),
            &HOLES,
        ));
        if let Some(hole) = choice.steel_pilot {
            steps.push(Step::new(
                "Hole in the steel for a tapping screw",
                "by gauge and thickness",
                text!("#{}, {}", &choice.screw.gauge, style.small(need.steel)),
                drill(hole, style),
                &STEEL_PILOTS,
            ));
        }
        let point =
            choice.point.and_then(|point| Some((point, point.capacity(choice.screw.gauge)?)));
        if let Some((point, most)) = point {
            steps.push(Step::new(
                "Drill point",
                "all the steel ≤ what the point drills",
                text!("{} ≤ {}", style.small(need.steel), style.small(most)),
                text!("point {}", &point.number()),
                &CAPACITY,
            ));
        }
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

/// `13 · 8`, or for each length of strip `1 · 8 + 3 · 7`.
fn sum_of_screws(worked: &Worked) -> String {
    let kinds = worked.kinds.iter().take(MOST_WORKED);
    let terms: Vec<String> =
        kinds.map(|kind| text!("{} · {}", &kind.count, kind.marks_mm.len())).collect();
    terms.join(" + ")
}

/// `Strip A`.
fn capital(name: &str) -> String {
    name.replacen('s', "S", 1)
}
