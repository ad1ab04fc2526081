//! The twelve months: table, bars and working.

use uom::si::energy::watt_hour;

use super::{Figures, Inputs};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::formula::{Formula as _, step};
use crate::quantity::{Style, amount, plain};
use crate::report::{Step, Table, TableRow};
use crate::words::{Arg, Id, common, solar as words};

/// January first.
pub const MONTHS: [Id; 12] = [
    common::MONTH_JANUARY,
    common::MONTH_FEBRUARY,
    common::MONTH_MARCH,
    common::MONTH_APRIL,
    common::MONTH_MAY,
    common::MONTH_JUNE,
    common::MONTH_JULY,
    common::MONTH_AUGUST,
    common::MONTH_SEPTEMBER,
    common::MONTH_OCTOBER,
    common::MONTH_NOVEMBER,
    common::MONTH_DECEMBER,
];

pub(super) fn table(inputs: &Inputs, figures: &Figures, style: Style) -> Table {
    let mut heads = vec![
        words::MEAN_DAYS_MONTH,
        words::MEAN_DAYS_CLEARNESS,
        words::MEAN_DAYS_LEVEL,
        words::MEAN_DAYS_PANELS,
        words::MEAN_DAYS_YIELD,
    ];
    if inputs.need.is_some() {
        heads.push(words::MEAN_DAYS_OVER);
    }
    let rows = MONTHS.iter().enumerate().map(|(index, name)| {
        let month = &figures.months[index];
        let energy = figures.yields[index];
        let mut cells = vec![
            style.say(*name),
            plain(inputs.site.clearness[index], 2),
            amount(month.level.value(), 1, "MJ/m²"),
            amount(month.plane.value(), 1, "MJ/m²"),
            style.write(&Arg::watt_hours(energy)),
        ];
        cells.extend(inputs.need.map(|need| style.write(&Arg::watt_hours(energy - need))));
        TableRow { cells, chosen: index == figures.least() }
    });
    let rows = rows.collect();
    let heads = heads.into_iter().map(|head| style.say(head)).collect();
    Table { title: style.say(words::MEAN_DAYS), heads, rows }
}

/// Twelve bars side by side, with a line across at the need.
pub(super) fn bars(inputs: &Inputs, figures: &Figures, style: Style) -> Drawing {
    const HEIGHT: f64 = 0.6;
    const PITCH: f64 = 1.0 / 12.0;
    let least = figures.least();
    let values: Vec<f64> = figures.yields.iter().map(|energy| energy.get::<watt_hour>()).collect();
    let need = inputs.need.map(|need| need.get::<watt_hour>());
    let highest = values.iter().copied().chain(need).fold(1e-9, f64::max);
    let y = |wh: f64| HEIGHT * (1.0 - wh / highest);
    let best =
        values.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(index, _)| index);
    let watt_hours = |month: usize| Arg::watt_hours(figures.yields[month]);
    let (low, darkest) = (watt_hours(least), MONTHS[least]);
    let (most, brightest) = (watt_hours(best), MONTHS[best]);
    let said = match inputs.need.map(Arg::watt_hours) {
        None => style.say(words::BarsWords { least: low, darkest, most, brightest }),
        Some(need) => {
            style.say(words::BarsWordsNeed { least: low, darkest, most, brightest, need })
        }
    };
    let mut drawing = Drawing::new(style.say(words::BARS), said);
    if let Some(need) = inputs.need {
        // Above the highest bar: at its line it would stand on bars, beside them take their room.
        drawing.text(
            Point::metres(0.0, -0.001),
            Anchor::Start,
            style.say(words::BarsNeed { need: Arg::watt_hours(need) }),
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
        let letter: String = style.say(MONTHS[index]).chars().take(1).collect();
        drawing.text(Point::metres(middle, HEIGHT + 0.05), Anchor::Middle, letter);
        if index == least || index == best {
            drawing.text(
                Point::metres(middle, y(*value) - 0.015),
                Anchor::Middle,
                style.write(&Arg::watt_hours(figures.yields[index])),
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
pub(super) fn working(inputs: &Inputs, figures: &Figures, style: Style) -> Vec<Step> {
    let index = figures.least();
    let (of, month) = (&figures.months[index], MONTHS[index]);
    let azimuth = Arg::degrees(inputs.plane.azimuth);
    vec![
        step(words::StepOutside { month }, &of.outside, style),
        step(words::StepLevel { month }, &of.level, style),
        step(words::StepDiffuse { month }, &of.diffuse, style),
        step(words::StepPanels { month, azimuth }, &of.plane, style),
        step(words::StepYield { month }, &figures.days[index], style),
    ]
}
