//! The twelve months: table, bars and working.

use crate::text::text;
use uom::si::energy::watt_hour;
use uom::si::f64::Energy;
use uom::si::power::watt;

use super::{Figures, Inputs, degrees};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::energy::budget::PANEL_LOSSES;
use crate::energy::solar::{DIFFUSE_SHARE, TILTED_PLANE};
use crate::energy::sun::GEOMETRY;
use crate::quantity::{amount, percent, plain};
use crate::report::{Step, Table, TableRow, texts};

/// January first.
pub const NAMES: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

pub(super) fn wh(energy: Energy) -> String {
    amount(energy.get::<watt_hour>(), 0, "Wh")
}

pub(super) fn wh_day(energy: Energy) -> String {
    text!("{} a day", wh(energy))
}

pub(super) fn table(inputs: &Inputs, figures: &Figures) -> Table {
    let mut heads: Vec<String> =
        texts(&["Month", "Clearness", "On the level", "On the panels", "Yield of a day"]);
    if inputs.need.is_some() {
        heads.push("Over the need".into());
    }
    let rows = NAMES.iter().enumerate().map(|(index, name)| {
        let month = &figures.months[index];
        let energy = figures.yields[index];
        let mut cells = vec![
            (*name).to_owned(),
            plain(inputs.site.clearness[index], 2),
            amount(month.level_mj_m2, 1, "MJ/m²"),
            amount(month.plane_mj_m2, 1, "MJ/m²"),
            wh(energy),
        ];
        cells.extend(inputs.need.map(|need| wh(energy - need)));
        TableRow { cells, chosen: index == figures.least() }
    });
    Table { title: "A mean day of each month".into(), heads, rows: rows.collect() }
}

/// Twelve bars side by side, with a line across at the need.
pub(super) fn bars(inputs: &Inputs, figures: &Figures) -> Drawing {
    const HEIGHT: f64 = 0.6;
    const PITCH: f64 = 1.0 / 12.0;
    let least = figures.least();
    let values: Vec<f64> = figures.yields.iter().map(|energy| energy.get::<watt_hour>()).collect();
    let need = inputs.need.map(|need| need.get::<watt_hour>());
    let highest = values.iter().copied().chain(need).fold(1e-9, f64::max);
    let y = |wh: f64| HEIGHT * (1.0 - wh / highest);
    let best =
        values.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(index, _)| index);
    let mut drawing = Drawing::new(
        "Yield of a mean day, month by month",
        text!(
            "Twelve bars, from {} in {} to {} in {}{}.",
            wh(figures.yields[least]),
            &NAMES[least],
            wh(figures.yields[best]),
            &NAMES[best],
            inputs
                .need
                .map_or_else(String::new, |need| text!(", and a line at the need of {}", wh(need)))
        ),
    );
    if let Some(need) = need {
        // Above the highest bar: at its line it would stand on bars, beside them take their room.
        drawing.text(
            Point::metres(0.0, -0.001),
            Anchor::Start,
            text!("dashes: needed, {}", amount(need, 0, "Wh")),
        );
    }
    for (index, value) in values.iter().enumerate() {
        let left = PITCH * index as f64;
        let short = need.is_some_and(|need| *value + 1e-9 < need);
        if *value > 0.0 {
            drawing.rectangle(
                Pen::Solid,
                if short { Fill::Waste } else { Fill::Level(2) },
                Point::metres(left + PITCH * 0.15, y(*value)),
                Point::metres(left + PITCH * 0.85, HEIGHT),
            );
        }
        let middle = left + PITCH / 2.0;
        let letter: String = NAMES[index].chars().take(1).collect();
        drawing.text(Point::metres(middle, HEIGHT + 0.05), Anchor::Middle, letter);
        if index == least || index == best {
            drawing.text(
                Point::metres(middle, y(*value) - 0.015),
                Anchor::Middle,
                wh(figures.yields[index]),
            );
        }
    }
    drawing.line(Pen::Solid, &[Point::metres(0.0, HEIGHT), Point::metres(1.0, HEIGHT)]);
    if let Some(need) = need {
        drawing.line(Pen::Cut, &[Point::metres(0.0, y(need)), Point::metres(1.0, y(need))]);
    }
    drawing
}

/// The darkest month, step by step; the others go the same way.
pub(super) fn working(inputs: &Inputs, figures: &Figures) -> Vec<Step> {
    let index = figures.least();
    let (month, name) = (&figures.months[index], NAMES[index]);
    let megajoule = |value: f64| amount(value, 2, "MJ/m²");
    vec![
        Step::new(
            text!("{}: outside the atmosphere", &name),
            "H₀ = (86400 s · Gsc / π) · (1 + 0.033 cos(2π n / 365)) · (cos φ cos δ sin ωs + ωs sin φ sin δ)",
            text!(
                "φ = {}, n = {}, Gsc = 1367 W/m²",
                degrees(inputs.site.latitude),
                crate::energy::sun::MONTH_DAYS[index]
            ),
            megajoule(month.h0_mj_m2),
            &GEOMETRY,
        ),
        Step::new(
            text!("{}: on the level", &name),
            "H = K · H₀",
            text!("{} · {}", plain(inputs.site.clearness[index], 3), megajoule(month.h0_mj_m2)),
            megajoule(month.level_mj_m2),
            &GEOMETRY,
        ),
        Step::new(
            text!("{}: share from the whole sky", &name),
            "Hd / H, from K and the sunset hour",
            text!("K = {}", plain(inputs.site.clearness[index], 3)),
            percent(month.diffuse_share * 100.0),
            &DIFFUSE_SHARE,
        ),
        Step::new(
            text!("{}: on the panels", &name),
            "direct + sky · (1 + cos β) / 2 + ground · (1 − cos β) / 2",
            text!("β = {}, turned {}", degrees(inputs.plane.tilt), degrees(inputs.plane.azimuth)),
            megajoule(month.plane_mj_m2),
            &TILTED_PLANE,
        ),
        Step::new(
            text!("{}: yield of a day", &name),
            "E = H / 3.6 · P · (1 − loss)",
            text!(
                "{} / 3.6 · {} · (1 − {})",
                megajoule(month.plane_mj_m2),
                amount(inputs.rated().get::<watt>(), 0, "W"),
                percent(inputs.loss * 100.0)
            ),
            wh(figures.yields[index]),
            &PANEL_LOSSES,
        ),
    ]
}
