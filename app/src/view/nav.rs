//! The four places of the work, always one tap away: the rig, the sheets, marking, buying. Each keeps where one was.

use calc::words::{Id, app_page as said};
use leptos::prelude::*;

use crate::desk::Desk;
use crate::route::{Part, Route};
use crate::words::text;

const PLACES: [Id; 4] =
    [said::PLACE_RIG, said::PLACE_SHEETS, said::PLACE_MARKING, said::PLACE_BUYING];

/// The bar at the bottom.
pub fn places(desk: Desk, route: ReadSignal<Route>) -> AnyView {
    // Where one was last in each place.
    let last = StoredValue::new([const { None::<Route> }; PLACES.len()]);
    let here = Memo::new(move |_| {
        let route = route.get();
        let place = place_of(&route)?;
        last.update_value(|last| last[place] = Some(route));
        Some(place)
    });
    let link = move |place: usize| {
        let address = move || {
            // A second tap leads to the place's own page.
            let kept = last.with_value(|last| last[place].clone());
            let kept = kept.filter(|_| here.get() != Some(place));
            kept.unwrap_or_else(|| root(desk, place)).hash()
        };
        let current = move || (here.get() == Some(place)).then_some("page");
        view! { <a href=address aria-current=current>{text(PLACES[place])}</a> }
    };
    view! {
        <nav class="places" aria-label=text(said::PLACES)>{link(0)}{link(1)}{link(2)}{link(3)}</nav>
    }
    .into_any()
}

fn root(desk: Desk, place: usize) -> Route {
    let id = desk.project.with(|project| project.id().to_owned());
    match place {
        0 => Route::Part(id, Part::Body),
        1 => Route::Project(id),
        2 => Route::Part(id, Part::Marks),
        _ => Route::Part(id, Part::Buy),
    }
}

/// The place that a page belongs to.
fn place_of(route: &Route) -> Option<usize> {
    match route {
        Route::Part(_, Part::Body) => Some(0),
        Route::Project(_) | Route::Sheet(..) | Route::Templates(..) | Route::Part(_, Part::Add) => {
            Some(1)
        }
        Route::Part(_, Part::Marks | Part::Cuts) | Route::Bench(..) => Some(2),
        Route::Part(_, Part::Buy) | Route::Line(..) => Some(3),
        _ => None,
    }
}
