//! The run along its length, and the voltage along it against the limit.

use super::Findings;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::{Style, plain};
use crate::sheet::wiring::{limit, run_length, volts};
use crate::text::text;

impl Findings<'_> {
    /// The length is to scale; so is the voltage of the graph below it, from the source voltage
    /// down to a little under the load's or the limit's.
    pub(super) fn drawing(&self, fuse_a: f64, style: Style) -> Drawing {
        let run = self.run;
        let wired = &self.wired;
        let length = run.length_m;
        let least_v = run.source_v * (1.0 - run.drop_limit_percent / 100.0);
        let fuse = text!("fuse {} A", plain(fuse_a, 1));
        let (source, load) = (volts(run.source_v), volts(wired.load_v));
        let mut drawing = Drawing::new(
            "Voltage along the run",
            text!(
                "Two conductors of {}, {} long, from the source ({} in the positive) to the \
                 load. The voltage falls in a straight line from {} to {}; the limit of \
                 {} is {}.",
                &wired.conductor,
                run_length(length, style),
                &fuse,
                &source,
                &load,
                limit(run.drop_limit_percent),
                volts(least_v)
            ),
        );
        let at = |x: f64, y: f64| Point::metres(x * length, y * length);

        // The two conductors: positive solid, negative dashed.
        drawing.line(Pen::Solid, &[at(0.0, 0.0), at(1.0, 0.0)]);
        drawing.line(Pen::Hidden, &[at(0.0, 0.12), at(1.0, 0.12)]);
        drawing.rectangle(Pen::Solid, Fill::Stock, at(-0.1, -0.04), at(0.0, 0.16));
        drawing.rectangle(Pen::Solid, Fill::Stock, at(0.03, -0.025), at(0.11, 0.025));
        if self.inputs.far_source {
            drawing.rectangle(Pen::Solid, Fill::Stock, at(0.87, -0.025), at(0.95, 0.025));
        }
        drawing.circle(Pen::Solid, Fill::Opening, at(1.06, 0.06), 0.06 * length);
        drawing.text(at(-0.05, -0.09), Anchor::Middle, "source");
        drawing.text(at(0.13, -0.05), Anchor::Start, fuse);
        drawing.text(at(1.06, -0.09), Anchor::Middle, "load");
        drawing.text(at(0.68, -0.05), Anchor::Middle, text!("+  {}", &wired.conductor));
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
        drawing.text(at(0.0, 0.37), Anchor::Start, text!("{} at the source", &source));
        drawing.text(at(1.02, y(wired.load_v)), Anchor::Start, load);
        // Beside the line of the voltage, not over it.
        let (x, anchor) =
            if wired.within_limit { (0.02, Anchor::Start) } else { (0.98, Anchor::End) };
        let told = text!("limit {}: {}", limit(run.drop_limit_percent), volts(least_v));
        drawing.text(at(x, y(least_v) - 0.045), anchor, told);
        drawing
    }
}
