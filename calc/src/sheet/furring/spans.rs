//! What each strip spans: wall to wall along a rib, or from a wall to an opening, or between two.

use uom::si::length::millimeter;

use super::mm;
use crate::ask::{Ask, BodyPart, Figure};
use crate::body::Body;
use crate::quantity::{LENGTH, Length};
use crate::reader::Reader;
use crate::sorting::sort_by;
use crate::words::{Arg, Phrase, furring as words};

// Length and number depend on each other and on the body: which is read hangs on what is typed.
pub(super) static SPANNED: Ask = Ask::measure("length", "", &LENGTH, ["in", "mm"], (0.02, 15.0))
    .named(Phrase::Id(words::LENGTH))
    .told(Phrase::Id(words::LENGTH_HELP))
    .from_body(BodyPart::Width)
    .usual("72 in", "1900 mm")
    .figure(Figure::BodyWidth);
pub(super) static STRIPS: Ask = Ask::count("strips", "", (1, 500))
    .named(Phrase::Id(words::STRIPS))
    .told(Phrase::Id(words::STRIPS_HELP))
    .from_body(BodyPart::RibCount)
    .usual("13", "13");

/// What one strip spans.
pub(super) struct Span {
    pub(super) length_mm: f64,
    /// Its rib, counted from 1.
    pub(super) rib: usize,
    /// Which of its rib's strips, counted from 1 at the left wall.
    pub(super) part: usize,
    /// The name of the opening that it ends at.
    pub(super) opening: Option<String>,
}

/// The span of each strip: the one typed, or the body's width, at each rib where it was measured at
/// stations. A number of strips that is not that of the ribs says nothing of their places: then
/// all take the narrowest.
pub(super) fn read(reader: &Reader<'_>, strip: Length) -> Vec<Span> {
    let body = reader.body();
    let typed = reader.given(&SPANNED);
    let one = || reader.measure::<Length>(&SPANNED).get::<millimeter>();
    let of_all = (typed || body.widths.is_empty()).then(one);
    let strips = reader.count(&STRIPS) as usize;
    let on_ribs = body.ribs.len() == strips;
    let spans_mm: Vec<f64> = if of_all.is_some() || !on_ribs {
        vec![of_all.unwrap_or_else(one); strips]
    } else {
        let widths = body.ribs.iter().filter_map(|rib| body.width_at(*rib));
        let widths: Vec<f64> = widths.map(|width| width.get::<millimeter>()).collect();
        let low = widths.iter().copied().fold(f64::INFINITY, f64::min);
        let high = widths.iter().copied().fold(0.0, f64::max);
        let [least, most] = [low, high].map(|width| Arg::mark(mm(width)));
        reader.took(&SPANNED, reader.style().say(words::WidthsAtRibs { least, most }));
        widths
    };
    if !typed && on_ribs {
        let unnamed = reader.style().say(words::OPENING);
        return along_ribs(body, &spans_mm, strip, &unnamed);
    }
    let whole = |(length_mm, rib)| Span { length_mm, rib, part: 1, opening: None };
    spans_mm.into_iter().zip(1..).map(whole).collect()
}

/// A strip that reaches over an opening by less is laid aside by as much, and whole. [mm]
const UNSEEN_MM: f64 = 1.0;

/// The strips of all ribs, those cut short that an opening of the body crosses. Source:
/// [`crate::carpentry::setting_out::FRAMED`].
fn along_ribs(body: &Body, widths_mm: &[f64], strip: Length, unnamed: &str) -> Vec<Span> {
    let mm = |length: Length| length.get::<millimeter>();
    let mut spans = Vec::new();
    for (rib, (at, wall_mm)) in (1..).zip(body.ribs.iter().zip(widths_mm)) {
        let half = strip / 2.0;
        let crosses = body.openings.iter().filter(|opening| {
            mm(*at + half - opening.x) > UNSEEN_MM
                && mm(opening.x + opening.length - (*at - half)) > UNSEEN_MM
        });
        let mut cuts: Vec<(f64, f64, &str)> =
            crosses.map(|one| (mm(one.y), mm(one.y + one.width), one.name.as_str())).collect();
        sort_by(&mut cuts, |a, b| a.0.total_cmp(&b.0));
        let (mut from, mut before, mut part) = (0.0, None, 1);
        for (low, high, name) in cuts {
            let name = if name.is_empty() { unnamed } else { name };
            if low - from > 0.01 {
                let opening = Some(name.to_owned());
                spans.push(Span { length_mm: low - from, rib, part, opening });
                part += 1;
            }
            from = f64::max(from, high);
            before = Some(name.to_owned());
        }
        if wall_mm - from > 0.01 {
            spans.push(Span { length_mm: wall_mm - from, rib, part, opening: before });
        }
    }
    spans
}
