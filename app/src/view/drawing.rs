//! Drawings to scale on the page: the one renderer for the drawings of all sheets.

mod layout;
pub(crate) mod paper;
mod svg;
#[cfg(test)]
mod tests;

use calc::drawing::{Drawing, Fit};

pub use svg::{pen_class, svg};

use super::html::Html;

/// Width of a strip on paper. [px]
const PRINTED_WIDTH: f64 = 660.0;
/// Beyond this width lines get longer without saying more. [px]
const GREATEST_WIDTH: f64 = 720.0;

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
        html.text(&drawing.title);
        html.raw(", scrolls sideways");
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
