//! The plan day by day, as time lines: the day runs across, each step has a line of its own.

use super::super::gap_fill::shortened;
use super::clock::{day_name, from_to, hour_of_day, of_day};
use super::dial::Dial;
use super::found::Found;
use super::inputs::Job;
use crate::coating::schedule::{Slot, Step};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::quantity::Style;
use crate::sorting::sort;
use crate::words::{Arg, Msg, schedule as words};

const HOUR: f64 = 60.0;
const DAY: f64 = 24.0 * HOUR;
/// More lines than this on one drawing would run into each other.
const MOST_LINES: usize = 8;
/// How wide a day is drawn, in the height of ten lines.
const WIDE: f64 = 10.0;

/// What stands on a line of a day.
struct Line<'a> {
    name: String,
    step: &'a Step,
    slot: &'a Slot,
    /// Its work, as the clock is read.
    work: (f64, f64),
    /// From when it bears traffic, as the clock is read.
    walk_min: Option<f64>,
    /// Until when the next must wait, or until it bears traffic.
    dry_min: f64,
}

/// The days on which something is begun, done, or can be walked on for the first time.
pub fn days(job: &Job, found: &Found, style: Style) -> Vec<Drawing> {
    let (slots, dial) = (&found.schedule.slots, Dial::of(job, found));
    let lines: Vec<Line<'_>> = found
        .all()
        .zip(&job.steps)
        .enumerate()
        .map(|(index, ((step, slot, _), planned))| {
            let next = slots.get(index + 1).map_or(slot.end_min, |next| next.earliest_min);
            let dry_min = slot.traffic_from_min.unwrap_or(next);
            Line {
                name: style.write(&planned.name),
                step,
                slot,
                work: (dial.from(slot.start_min), dial.from(slot.end_min)),
                walk_min: slot.traffic_from_min.map(|time| dial.from(time)),
                dry_min,
            }
        })
        .collect();
    let span = hours_drawn(job, slots);
    let mut drawings: Vec<Drawing> = Vec::new();
    for day in days_of(slots) {
        let midnight = day as f64 * DAY;
        let of_this: Vec<&Line<'_>> = lines
            .iter()
            .filter(|line| {
                let ends_here = line.slot.traffic_from_min.is_some_and(|time| is_on(time, day));
                is_on(line.slot.start_min, day)
                    || (line.slot.start_min < midnight && line.slot.end_min > midnight)
                    || ends_here
            })
            .collect();
        for (part, some) in of_this.chunks(MOST_LINES).enumerate() {
            let day_name = day_name(day);
            let title = match (part, drawings.is_empty()) {
                (0, true) => words::Drawing { day: day_name }.into(),
                (0, false) => day_name,
                _ => words::DrawingContinued { day: day_name }.into(),
            };
            let mut drawing = Drawing::new(style.say(title), words_of(some, style));
            draw(&mut drawing, some, day as f64 * DAY, span, style);
            drawings.push(drawing);
        }
    }
    drawings
}

/// The hours that are drawn of every day: those of work, with one to spare at both ends.
fn hours_drawn(job: &Job, slots: &[Slot]) -> (f64, f64) {
    let given = job.hours.map(|hours| (hours.from_min / HOUR, hours.to_min / HOUR));
    let mut span = given.unwrap_or((9.0, 18.0));
    for slot in slots {
        let start = of_day(slot.start_min) / HOUR;
        let end = start + (slot.end_min - slot.start_min) / HOUR;
        if end > 24.0 {
            return (0.0, 24.0);
        }
        span = (span.0.min(start), span.1.max(end));
    }
    ((span.0 - 1.0).floor().max(0.0), (span.1 + 1.0).ceil().min(24.0))
}

/// The days in question, counted from 0.
fn days_of(slots: &[Slot]) -> Vec<usize> {
    let day = |time: f64| (time / DAY).floor().max(0.0) as usize;
    let mut days: Vec<usize> = Vec::new();
    for slot in slots {
        // Work of several days is seen on the first and the last of them.
        let times = [Some(slot.start_min), Some(slot.end_min - 1.0), slot.traffic_from_min];
        days.extend(times.into_iter().flatten().map(day));
    }
    sort(&mut days);
    days.dedup();
    days
}

fn is_on(time: f64, day: usize) -> bool {
    (time / DAY).floor() == day as f64
}

fn words_of(lines: &[&Line<'_>], style: Style) -> String {
    let bars = lines.iter().map(|line| Msg::from(line.bar(style)));
    let steps = bars.reduce(|first, next| words::DrawingNext { first, next }.into());
    style.say(words::DrawingWords { steps: steps.map_or_else(|| Arg::from(""), Arg::from) })
}

impl Line<'_> {
    /// `8:30–10:00 am first coat`.
    fn bar(&self, style: Style) -> words::Bar<String, String> {
        let hours = from_to(self.work.0, self.work.1, &style);
        words::Bar { hours, step: self.name.clone() }
    }
}

fn draw(
    drawing: &mut Drawing,
    lines: &[&Line<'_>],
    midnight: f64,
    (from, to): (f64, f64),
    style: Style,
) {
    // Lines of a day are as high whatever hours it has.
    let scale = WIDE / (to - from);
    let x = |time: f64| ((time - midnight) / HOUR).clamp(from, to) * scale - from * scale;
    let foot = lines.len() as f64;
    drawing.rectangle(Pen::Thin, Fill::Empty, Point::metres(0.0, 0.0), Point::metres(WIDE, foot));
    let every = if to - from <= 13.0 { 3.0 } else { 4.0 };
    let mut hour = (from / every + 1.0).floor() * every;
    while hour < to {
        let at = (hour - from) * scale;
        drawing.line(Pen::Thin, &[Point::metres(at, 0.0), Point::metres(at, foot)]);
        let name = hour_of_day(hour * HOUR, &style);
        drawing.text(Point::metres(at, -0.05), Anchor::Middle, name);
        hour += every;
    }
    for (index, line) in lines.iter().enumerate() {
        let Line { name, step, slot, dry_min, .. } = line;
        let (top, bottom) = (index as f64 + 0.56, index as f64 + 0.88);
        let mut bar = |from: f64, to: f64, pen, fill| {
            if x(to) > x(from) {
                // The window stands round the others.
                let round = if pen == Pen::Hidden { 0.06 } else { 0.0 };
                let near = Point::metres(x(from), top - round);
                drawing.rectangle(pen, fill, near, Point::metres(x(to), bottom + round));
            }
        };
        bar(slot.end_min, *dry_min, Pen::Thin, Fill::Waste);
        bar(slot.start_min, slot.end_min, Pen::Solid, Fill::Stock);
        if let Some(latest) = slot.offer_until_min {
            bar(slot.offer_from_min, latest + step.work_min, Pen::Hidden, Fill::Empty);
        }
        if step.is_mixed() && slot.last_mix_min >= midnight && slot.last_mix_min < midnight + DAY {
            let mix = x(slot.last_mix_min);
            drawing.line(Pen::Mark, &[Point::metres(mix, top), Point::metres(mix, bottom)]);
        }
        let begins = slot.start_min >= midnight && slot.start_min < midnight + DAY;
        let name = shortened(name);
        let what: Msg = match line.walk_min {
            Some(traffic) if !begins => {
                words::BarWalk { time: hour_of_day(traffic, &style), step: name }.into()
            }
            _ => words::Bar { step: name, ..line.bar(style) }.into(),
        };
        drawing.text(Point::metres(0.1, index as f64 + 0.3), Anchor::Start, style.say(what));
    }
}
