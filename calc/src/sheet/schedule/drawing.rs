//! The plan as a time line: an hour is drawn as one metre.

use super::Worked;
use super::clock::written;
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::text::text;

const HOUR_MIN: f64 = 60.0;
const DAY_H: f64 = 24.0;
/// Height of a step's line, in hours.
const LINE: f64 = 1.2;

/// Each step as a bar, the wait behind it hatched, its window up to the latest start in dashes.
pub fn time_line(worked: &Worked, style: Style) -> Drawing {
    let slots = &worked.schedule.slots;
    let first = slots.iter().fold(f64::INFINITY, |first, slot| first.min(slot.start_min));
    let first = if first.is_finite() { (first / HOUR_MIN).floor() } else { 0.0 };
    let last = (worked.schedule.ready_min / HOUR_MIN).ceil().max(first + 1.0);
    let x = |minutes: f64| (minutes / HOUR_MIN).clamp(first, last) - first;
    let mut drawing = Drawing::new(
        "Time line",
        text!(
            "{} steps from {} to {}.",
            slots.len(),
            written(first * HOUR_MIN, style),
            written(worked.schedule.ready_min, style)
        ),
    )
    .strip();
    let foot = slots.len() as f64 * LINE;
    grid(&mut drawing, (first, last), foot, style);
    for (index, (step, slot)) in worked.steps.iter().zip(slots).enumerate() {
        let top = index as f64 * LINE + LINE * 0.45;
        let bottom = top + LINE * 0.4;
        let mut bar = |from: f64, to: f64, pen, fill| {
            if x(to) > x(from) {
                let (near, far) = (Point::metres(x(from), top), Point::metres(x(to), bottom));
                drawing.rectangle(pen, fill, near, far);
            }
        };
        if let Some(latest) = slot.latest_min {
            bar(slot.earliest_min, latest + step.work_min, Pen::Hidden, Fill::Empty);
        }
        if let Some(traffic) = slot.traffic_from_min {
            bar(slot.end_min, traffic, Pen::Thin, Fill::Waste);
        } else if let Some(next) = slots.get(index + 1) {
            bar(slot.end_min, next.earliest_min, Pen::Thin, Fill::Waste);
        }
        bar(slot.start_min, slot.end_min, Pen::Solid, Fill::Stock);
        if step.workable_min.is_some() {
            let mix = x(slot.last_mix_min);
            drawing.line(Pen::Mark, &[Point::metres(mix, top), Point::metres(mix, bottom)]);
        }
        let words = text!("{} · {}", written(slot.start_min, style), &step.label);
        let at = Point::metres(x(slot.start_min), top - LINE * 0.08);
        drawing.text(at, Anchor::Start, words);
    }
    drawing
}

/// A line for every sixth hour, a heavier one for midnight; closer ones where the plan is short.
fn grid(drawing: &mut Drawing, (first, last): (f64, f64), foot: f64, style: Style) {
    let span = last - first;
    let every = match span {
        span if span <= 12.0 => 1.0,
        span if span <= 72.0 => 6.0,
        span if span <= 480.0 => DAY_H,
        _ => DAY_H * 7.0,
    };
    drawing.line(Pen::Solid, &[Point::metres(0.0, foot), Point::metres(span, foot)]);
    let mut hour = (first / every).ceil() * every;
    while hour <= last {
        let midnight = hour - (hour / DAY_H).floor() * DAY_H == 0.0;
        let pen = if midnight { Pen::Centre } else { Pen::Thin };
        let at = hour - first;
        drawing.line(pen, &[Point::metres(at, 0.0), Point::metres(at, foot)]);
        let words = written(hour * HOUR_MIN, style);
        drawing.text(Point::metres(at, foot + LINE * 0.5), Anchor::Middle, words);
        hour += every;
    }
}
