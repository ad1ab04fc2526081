//! The run along its length, and the voltage along it against the limit.

use super::{Found, Job};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::sheet::wiring::{limit, rating, run_length, volts};
use crate::text::text;
use crate::words::{Arg, voltage_drop as words};

/// The length is to scale; so is the voltage of the graph below it, from the source voltage
/// down to a little under the load's or the limit's.
pub(super) fn draw(job: &Job, found: &Found, fuse_a: f64, style: Style) -> Drawing {
    let (run, wired) = (&job.run, &found.wired);
    let length = run.length_m;
    let least_v = run.source_v * (1.0 - run.drop_limit_percent / 100.0);
    let fuse = style.say(words::DrawingFuse { rating: rating(fuse_a) });
    let [source, load] = [run.source_v, wired.load_v].map(|v| style.figure(volts(v)));
    let told = words::DrawingWords {
        conductor: found.conductor.as_str(),
        length: Arg::run_meters(length),
        fuse: fuse.as_str(),
        source: source.as_str(),
        load: load.as_str(),
        limit: limit(run.drop_limit_percent),
        least: volts(least_v),
    };
    let mut drawing = Drawing::new(style.say(words::DRAWING), style.say(told));
    let at = |x: f64, y: f64| Point::metres(x * length, y * length);

    // The two conductors: positive solid, negative dashed.
    drawing.line(Pen::Solid, &[at(0.0, 0.0), at(1.0, 0.0)]);
    drawing.line(Pen::Hidden, &[at(0.0, 0.12), at(1.0, 0.12)]);
    drawing.rectangle(Pen::Solid, Fill::Stock, at(-0.1, -0.04), at(0.0, 0.16));
    drawing.rectangle(Pen::Solid, Fill::Stock, at(0.03, -0.025), at(0.11, 0.025));
    if job.far_source {
        drawing.rectangle(Pen::Solid, Fill::Stock, at(0.87, -0.025), at(0.95, 0.025));
    }
    drawing.circle(Pen::Solid, Fill::Opening, at(1.06, 0.06), 0.06 * length);
    drawing.text(at(-0.05, -0.09), Anchor::Middle, style.say(words::DRAWING_SOURCE));
    drawing.text(at(0.13, -0.05), Anchor::Start, fuse);
    drawing.text(at(1.06, -0.09), Anchor::Middle, style.say(words::DRAWING_LOAD));
    drawing.text(at(0.68, -0.05), Anchor::Middle, style.figure(text!("+  {}", &wired.conductor)));
    drawing.text(at(0.68, 0.075), Anchor::Middle, "−");
    drawing.dimension(at(1.0, 0.12), at(0.0, 0.12), 1.8, run_length(length, style));

    // The graph: a full scale of 0.4 lengths is the greater of drop and limit.
    let full_v = wired.drop_v.max(run.source_v - least_v).max(1e-9 * run.source_v);
    let y = |v: f64| 0.42 + 0.4 * (run.source_v - v) / full_v;
    let corners = [at(0.0, 0.42), at(1.0, 0.42), at(1.0, y(wired.load_v))];
    drawing.area(Pen::Thin, Fill::Level(1), &corners);
    drawing.line(Pen::Thin, &[at(0.0, 0.42), at(0.0, 0.86)]);
    drawing.line(Pen::Thin, &[at(0.0, 0.42), at(1.0, 0.42)]);
    drawing.line(Pen::Cut, &[at(0.0, y(least_v)), at(1.0, y(least_v))]);
    drawing.line(Pen::Solid, &[at(0.0, 0.42), at(1.0, y(wired.load_v))]);
    drawing.cross(Pen::Mark, at(1.0, y(wired.load_v)));
    drawing.text(at(0.0, 0.37), Anchor::Start, style.say(words::DrawingAtSource { volts: source }));
    drawing.text(at(1.02, y(wired.load_v)), Anchor::Start, load);
    // Beside the line of the voltage, not over it.
    let (x, anchor) = if wired.within_limit { (0.02, Anchor::Start) } else { (0.98, Anchor::End) };
    let limit = words::DrawingLimit { limit: limit(run.drop_limit_percent), least: volts(least_v) };
    drawing.text(at(x, y(least_v) - 0.045), anchor, style.say(limit));
    drawing
}
