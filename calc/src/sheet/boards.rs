//! Boards over ribs: courses and rips, joints on ribs, marks and notches of every board, what to cut and to buy.

mod choices;
mod drawing;
mod faults;
mod found;
mod inputs;
mod marks;
mod movement;
mod nailers;
mod screw;
mod shown;
mod steps;
mod template;

use uom::si::f64::{Mass, Volume};
use uom::si::length::millimeter;

use self::found::Found;
use self::inputs::{FIELD, FIELD_REAR, Inputs, Job, RUN};
use super::{Sheet, solve};
use crate::carpentry::boards::{
    ACROSS, ENDS, HALF_BEARING, LEAST_STRIP, MARKS, NAILER, TWO_SUPPORTS, USUAL_EDGE,
};
use crate::carpentry::courses::rips::CLEAR;
use crate::carpentry::courses::{BALANCED, LEAST_RIP, SHOWN_TAPER};
use crate::carpentry::cut_stock::{KERF_RULE, PATTERNS};
use crate::carpentry::joints::{LEAST_PIECE, ON_SUPPORTS, STRIP_STAGGER, TOGETHER};
use crate::carpentry::margin::{CULL, MARGIN};
use crate::carpentry::moisture::CHANGE;
use crate::carpentry::setting_out::FROM_DATUM;
use crate::carpentry::stations::BETWEEN;
use crate::coating::gap::VOLUMES;
use crate::cutting::stock::{DENSITY, END_TRIM, KERF, MATERIAL, STOCK};
use crate::fastening::window::{LEAST_THREAD, NO_FARTHER};
use crate::fault::Fault;
use crate::formula::Formula as _;
use crate::lists::{BuyLine, LineId};
use crate::mass::densities::{MASS_OF_VOLUME, WOOD};
use crate::outcome::Outcome as _;
use crate::quantity::{Length, Style};
use crate::report::Report;
use crate::text::text;
use crate::words::{Msg, Phrase, boards as words, common};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "boards",
    title: Phrase::Id(words::TITLE),
    trade: Phrase::Id(common::TRADE_WALLS),
    purpose: Phrase::Id(words::PURPOSE),
    asks: &[
        &RUN,
        &FIELD,
        &FIELD_REAR,
        Inputs::COVERAGE,
        Inputs::FULL_WIDTH,
        Inputs::JOINT_GAP,
        Inputs::THICKNESS,
        Inputs::START,
        Inputs::LEAST_RIP,
        Inputs::END_GAP,
        Inputs::SIDE_GAP,
        &STOCK,
        &KERF,
        &END_TRIM,
        &MATERIAL,
        &DENSITY,
        Inputs::SUPPORTS,
        Inputs::SUPPORT_WIDTH,
        Inputs::EDGE_DISTANCE,
        Inputs::JOINT_STAGGER,
        Inputs::LEAST_PIECE,
        Inputs::JOINT_PRICE,
        Inputs::SHOWN_RIBS,
        Inputs::OPENING_CLEARANCE,
        Inputs::FLANGE,
        Inputs::SCREW,
        Inputs::SCREW_LENGTH,
        Inputs::STRIP_THICKNESS,
        Inputs::BEHIND,
        Inputs::SCREWS_ACROSS,
        Inputs::FILL_DIAMETER,
        Inputs::FILL_DEPTH,
        Inputs::SPECIES,
        Inputs::LAID_PERCENT,
        Inputs::DRIEST_PERCENT,
        Inputs::WETTEST_PERCENT,
        Inputs::CULL_PERCENT,
    ],
    sources: &[
        &CLEAR,
        &BALANCED,
        &LEAST_RIP,
        &ON_SUPPORTS,
        &STRIP_STAGGER,
        &LEAST_PIECE,
        &TOGETHER,
        &MARKS,
        &ENDS,
        &TWO_SUPPORTS,
        &NAILER,
        &HALF_BEARING,
        &USUAL_EDGE,
        &LEAST_STRIP,
        &FROM_DATUM,
        &SHOWN_TAPER,
        &BETWEEN,
        &ACROSS,
        &VOLUMES,
        &NO_FARTHER,
        &LEAST_THREAD,
        &CULL,
        &MARGIN,
        &CHANGE,
        &PATTERNS,
        &KERF_RULE,
        &MASS_OF_VOLUME,
        &WOOD,
    ],
    example: r#"{ "coverage": "5 1/8 in", "full_width": "5 3/8 in",
        "material": "1x6 tongue-and-groove board",
        "stock": [
            { "length": "8 ft", "price": 11.5 },
            { "length": "10 ft", "price": 14.4 },
            { "length": "12 ft", "price": 17.9 } ],
        "kerf": "1/8 in", "end_gap": "1/8 in", "side_gap": "1/4 in", "start": "balanced",
        "least_rip": "2 in", "joint_stagger": "16 in", "joint_price": 2, "edge_distance": "3/8 in",
        "shown_ribs": [1, 13], "opening_clearance": "1/8 in", "flange": "1 in",
        "joint_gap": "1/16 in", "laid_percent": "10", "screw": "trim-head #8 x 1 1/4 in", "strip_thickness": "3/4 in", "behind": "1 mm",
        "species": "pine, ponderosa", "thickness": "3/4 in", "density": "white pine" }"#,
    ahead: None,
    solve: |reader| solve(reader, Job::read, report),
};

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn report(job: &Job, style: Style) -> Result<Report, Vec<Fault>> {
    let told = |(field, message): (String, Msg)| vec![Fault::new(field, style.say(message))];
    job.screw.check().map_err(told)?;
    let found = Found::of(job, style).map_err(told)?;
    let mut drawings = vec![drawing::plan(job, &found, style)];
    drawings.extend(drawing::boards(job, &found, style));
    drawings.extend(found.cut_plan.drawings(style));
    Ok(Report {
        answers: shown::answers(job, &found, style),
        remarks: shown::remarks(job, &found, style),
        tables: shown::tables(job, &found, style),
        checks: nailers::checks(job, &found, style),
        drawings,
        templates: template::templates(job, &found, style),
        marks: marks::strips(job, &found, style),
        working: steps::steps(job, &found, style.exact()),
        cautions: shown::cautions(),
        buy: buy(job, &found, style),
        centre: Some(mm(job.task.run_mm / 2.0)),
        cut: found.cut_plan.cut(style),
        cutting: found.cut_plan.cutting(),
        gives: found.gives(),
        outcome: found.record(),
        ..Report::default()
    })
}

/// `A`, `B`, …, `Z`, `AA`, …
pub(super) fn letters(index: usize) -> String {
    let mut text = String::new();
    let mut rest = index;
    loop {
        let letter = u8::try_from(rest % 26).unwrap_or(0);
        text.insert(0, char::from(b'A' + letter));
        match (rest / 26).checked_sub(1) {
            Some(next) => rest = next,
            None => return text,
        }
    }
}

fn buy(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let mut lines = found.cut_plan.buy(style);
    if let Some(spare) = &found.spare {
        let count = f64::from(spare.count);
        let id = LineId::own(text!("spare/{}", LineId::mm(spare.length_mm)));
        let item = style.say(words::SpareItem { material: job.shelf.material.as_str() });
        let line = BuyLine::pieces(id, item, style.length(mm(spare.length_mm)), count)
            .cost(spare.price.map(|price| price * count));
        // A spare takes the place of a board that is left out, or stays behind: it adds nothing to the rig.
        lines.push(line.mass(Some(Mass::default())));
    }
    lines.extend(nailers::buy(job, found, style));
    if found.all_holes() > 0 {
        lines.push(job.screw.line(found.all_holes(), style));
    }
    let filler: Volume = found.filler.value();
    if filler > Volume::default() {
        let (needed, unit) = style.poured(filler);
        let id = LineId::shared("filler/wood");
        let [item, spec] = [words::FILLER_ITEM, words::FILLER_ITEM_SPEC].map(|id| style.say(id));
        lines.push(BuyLine::amount(id, item, spec, needed, unit));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::letters;

    #[test]
    fn boards_are_lettered_past_z() {
        let names: Vec<String> = [0, 25, 26, 27, 51, 52, 701, 702].map(letters).to_vec();
        assert_eq!(names, ["A", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA"]);
    }
}
