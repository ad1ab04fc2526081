//! A bar for each load of the day; below, needed and own battery to one scale; last the day as one bar.

use uom::si::energy::watt_hour;
use uom::si::f64::Energy;

use super::super::bars::{self, Bar};
use super::{Found, Job};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::formula::Formula as _;
use crate::quantity::Style;
use crate::words::{Arg, energy as words};

pub(super) fn day(job: &Job, found: &Found, style: Style) -> Drawing {
    let budget = &found.budget;
    let all = Arg::day_energy(budget.day);
    let mut drawing = Drawing::new(
        style.say(words::DRAWING),
        style.say(words::DrawingWords { energy: all.clone() }),
    );
    let bar =
        |text: String, energy: Energy, fill| Bar { text, value: energy.get::<watt_hour>(), fill };
    let loads = found.loads.iter().zip(&budget.loads).map(|((load, _), energy)| {
        let text = words::DrawingLoad { load: load.clone(), energy: Arg::day_energy(*energy) };
        bar(style.say(text), *energy, Fill::Level(2))
    });
    let end = bars::draw(&mut drawing, &loads.collect::<Vec<_>>(), 0.0);
    let needed = budget.needed.value();
    let said = style.say(words::DrawingNeeded { energy: Arg::day_energy(needed) });
    let mut sizes = vec![
        bar(style.say(words::DrawingOneDay { energy: all }), budget.day, Fill::Level(2)),
        bar(said, needed, Fill::Stock),
    ];
    if let Some(battery) = &job.battery {
        let said = style.say(words::DrawingYours { energy: Arg::day_energy(battery.energy) });
        sizes.push(bar(said, battery.energy, Fill::Level(1)));
    }
    let end = bars::draw(&mut drawing, &sizes, end + 0.06);
    one_day(&mut drawing, found, end + 0.14, style);
    drawing
}

/// The day as one bar, its loads end to end.
fn one_day(drawing: &mut Drawing, found: &Found, top: f64, style: Style) {
    const HEIGHT: f64 = 0.06;
    /// Width of a letter on a phone, where the bar is as wide as the page.
    const LETTER: f64 = 0.025;
    let day = found.budget.day.get::<watt_hour>();
    if day <= 0.0 {
        return;
    }
    let title = style.say(words::DRAWING_IN_A_ROW);
    drawing.text(Point::metres(0.0, top - 0.03), Anchor::Start, title);
    let mut from = 0.0;
    for (index, ((name, _), energy)) in found.loads.iter().zip(&found.budget.loads).enumerate() {
        let to = from + energy.get::<watt_hour>() / day;
        let fill = Fill::Level((index % 5) as u8);
        drawing.rectangle(
            Pen::Solid,
            fill,
            Point::metres(from, top),
            Point::metres(to, top + HEIGHT),
        );
        // A name needs room below its part; the table has them all.
        let name = style.write(name);
        if to - from > LETTER * name.chars().count() as f64 {
            let below = Point::metres((from + to) / 2.0, top + HEIGHT + 0.04);
            drawing.text(below, Anchor::Middle, name);
        }
        from = to;
    }
}
