//! Bars one below the other, each with its text above it: for shares of a whole, side by side.

use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};

/// One bar.
pub(super) struct Bar {
    /// What it stands for, with its figure: `fridge · 432 Wh`.
    pub text: String,
    /// How long it is; negative reaches to the left of the zero line.
    pub value: f64,
    /// What fills it.
    pub fill: Fill,
}

/// Height of a bar, and from one to the next, for bars that are 1 m wide together.
const HEIGHT: f64 = 0.05;
const PITCH: f64 = 0.15;

/// Draws bars to one scale below `top`, with the zero line; gives where the next would start.
pub(super) fn draw(drawing: &mut Drawing, bars: &[Bar], top: f64) -> f64 {
    let finite = |value: f64| if value.is_finite() { value } else { 0.0 };
    let low = bars.iter().map(|bar| finite(bar.value)).fold(0.0, f64::min);
    let high = bars.iter().map(|bar| finite(bar.value)).fold(0.0, f64::max);
    let scale = if high - low > 0.0 { 1.0 / (high - low) } else { 0.0 };
    let zero = (0.0 - low) * scale;
    let end = top + PITCH * bars.len() as f64;
    for (index, bar) in bars.iter().enumerate() {
        let y = top + PITCH * (index as f64 + 1.0) - HEIGHT;
        let x = zero + finite(bar.value) * scale;
        if scale > 0.0 && bar.value != 0.0 {
            drawing.rectangle(
                Pen::Solid,
                bar.fill,
                Point::metres(zero.min(x), y),
                Point::metres(zero.max(x), y + HEIGHT),
            );
        }
        drawing.text(Point::metres(0.0, y - HEIGHT * 0.8), Anchor::Start, bar.text.clone());
    }
    drawing.line(Pen::Centre, &[Point::metres(zero, top), Point::metres(zero, end)]);
    // As wide as the longest bar, however short all are.
    drawing.line(Pen::Thin, &[Point::metres(0.0, end), Point::metres(1.0, end)]);
    end
}
