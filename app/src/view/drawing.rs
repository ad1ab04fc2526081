//! Drawings to scale on the page: the one renderer for the drawings of all sheets.

#[cfg(test)]
mod kept;
mod layout;
#[cfg(test)]
mod legible;
mod lettering;
pub(crate) mod paper;
mod placing;
mod svg;
mod targets;
#[cfg(test)]
mod tests;

use crate::words::say;
use calc::drawing::{Drawing, Fit};
use calc::words::app_page;

pub use svg::{pen_class, svg};

use super::html::Html;

/// Width of a strip on paper. [px]
const PRINTED_WIDTH: f64 = 660.0;
/// Beyond this width lines get longer without saying more. [px]
const GREATEST_WIDTH: f64 = 720.0;

/// No drawing is made narrower than this to be less high. [px]
const LEAST_WIDTH: f64 = 150.0;

/// Texts may be moved so much farther than at full width: by more they no longer stand at what they name. [px]
const CROWDED: f64 = 3.0 * paper::ROW;

/// How wide a drawing is made so that it is at most so high, for a page of this width; and whether it is higher all the same, since
/// its texts would cover each other where it were smaller. [px]
pub fn width_in_sight(drawing: &Drawing, width: f64, most: f64) -> (f64, bool) {
    let mut width = width.min(GREATEST_WIDTH);
    let laid = |width: f64| {
        let laid = layout::Layout::new(drawing, width);
        laid.map_or((0.0, 0.0), |laid| {
            let is_over = drawing.fit == Fit::Whole && laid.width > width + 0.5;
            (laid.height, if is_over { f64::INFINITY } else { laid.crowding() })
        })
    };
    let (mut height, at_most) = laid(width);
    // Texts keep their size, so that height does not go with width: a few steps come near enough.
    for _ in 0..4 {
        if height <= most || width <= LEAST_WIDTH {
            break;
        }
        let smaller = (width * (most / height).max(0.6)).max(LEAST_WIDTH);
        let (lower, crowding) = laid(smaller);
        if crowding > at_most + CROWDED {
            break;
        }
        (width, height) = (smaller, lower);
    }
    (width, height > most * 1.05)
}

/// Writes a drawing, without its title, that asks for what it shows: a button on each figure and each thing in it, that says `ask` with the path.
pub fn push_asking(html: &mut Html, drawing: &Drawing, width: f64) {
    let (picture, over) = svg::asking_svg(drawing, width.min(GREATEST_WIDTH), 0);
    html.raw("<figure class=\"drawing asking\"><div class=\"drawing-window\"><div class=\"drawing-sheet\" role=\"group\" aria-label=\"");
    html.text(&drawing.words);
    html.raw("\">");
    html.raw(&picture);
    html.raw(&over);
    html.raw("</div></div></figure>");
}

/// Writes a drawing as a figure with its title below, for a page of this width in px; long strips
/// scroll sideways in their own window, and are printed whole. `number` tells the drawings of a
/// page apart.
pub fn push_drawing(html: &mut Html, drawing: &Drawing, width: f64, number: u64) {
    // Two numbers a drawing: one for the page, one for paper.
    let number = number * 2;
    let picture = svg(drawing, width.min(GREATEST_WIDTH), number);
    let strip = drawing.fit == Fit::Strip;
    html.raw("<figure class=\"drawing\"><div class=\"drawing-window");
    if strip {
        html.raw(" drawing-strip\" tabindex=\"0\" role=\"group\" aria-label=\"");
        html.text(&say(app_page::Scrolls { title: drawing.title.as_str() }));
    }
    html.raw("\"><div class=\"drawing-sheet\" role=\"img\" aria-label=\"");
    html.text(&drawing.words);
    html.raw("\">");
    html.raw(&picture);
    html.raw("</div></div>");
    if strip {
        // A sheet of paper does not scroll.
        let whole = Drawing { fit: Fit::Whole, ..drawing.clone() };
        html.raw("<div class=\"drawing-printed\" aria-hidden=\"true\">");
        html.raw(&svg(&whole, PRINTED_WIDTH, number + 1));
        html.raw("</div>");
    }
    html.tag("figcaption", "", &drawing.title);
    html.raw("</figure>");
}
