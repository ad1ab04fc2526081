//! Drawings to scale on the page: the one renderer for the drawings of all sheets.

mod layout;
pub(crate) mod paper;
mod svg;
#[cfg(test)]
mod tests;

use std::sync::atomic::{AtomicU64, Ordering};

use calc::drawing::{Drawing, Fit};
use leptos::{ev, html, prelude::*};

pub use svg::svg;

/// Width that a drawing is laid out for before the page's own is known. [px]
const USUAL_WIDTH: f64 = 358.0;
/// Width of a strip on paper. [px]
const PRINTED_WIDTH: f64 = 660.0;
/// Beyond this width lines get longer without saying more. [px]
const GREATEST_WIDTH: f64 = 720.0;

/// A drawing as a figure with its title below; long strips scroll sideways in their own window.
#[component]
pub fn DrawingView(
    /// What is drawn.
    #[prop(into)]
    drawing: Signal<Drawing>,
) -> impl IntoView {
    let (number, printed_number) = (next_number(), next_number());
    let window_of_figure = NodeRef::<html::Div>::new();
    let width = RwSignal::new(USUAL_WIDTH);
    let measure = move || {
        let Some(element) = window_of_figure.get_untracked() else { return };
        let measured = f64::from(element.client_width()).min(GREATEST_WIDTH);
        // Not yet laid out: keep what was there.
        if measured > 0.0 && measured != width.get_untracked() {
            width.set(measured);
        }
    };
    Effect::new(move || {
        window_of_figure.track();
        measure();
    });
    let resized = window_event_listener(ev::resize, move |_| measure());
    on_cleanup(move || resized.remove());

    let is_strip = move || drawing.with(|drawing| drawing.fit == Fit::Strip);
    let words = move || drawing.with(|drawing| drawing.words.clone());
    let title = move || drawing.with(|drawing| drawing.title.clone());
    let picture = move || drawing.with(|drawing| svg(drawing, width.get(), number));
    // A sheet of paper does not scroll: strips are printed whole.
    let printed = move || {
        drawing.with(|drawing| match drawing.fit {
            Fit::Whole => String::new(),
            Fit::Strip => {
                let whole = Drawing { fit: Fit::Whole, ..drawing.clone() };
                svg(&whole, PRINTED_WIDTH, printed_number)
            }
        })
    };
    view! {
        <figure class="drawing">
            <div
                class="drawing-window"
                class:drawing-strip=is_strip
                node_ref=window_of_figure
                tabindex=move || is_strip().then_some("0")
                role=move || is_strip().then_some("region")
                aria-label=move || is_strip().then(|| title() + ", scrolls sideways")
            >
                <div class="drawing-sheet" role="img" aria-label=words inner_html=picture></div>
            </div>
            <div class="drawing-printed" aria-hidden="true" inner_html=printed></div>
            <figcaption>{title}</figcaption>
        </figure>
    }
}

/// A number that no other picture on the page has.
fn next_number() -> u64 {
    static LAST: AtomicU64 = AtomicU64::new(0);
    LAST.fetch_add(1, Ordering::Relaxed)
}
