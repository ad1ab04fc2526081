//! The buy list of the project, made for one hand in a store: like things merged, in whole packs, ticked off by thumb.

mod line;
mod weight;

use calc::lists::{MergedBuyLine, in_si, to_buy};
use calc::project::shopping::OWN_ASKS;
use calc::project::{Evaluation, Place, Project};
use calc::quantity::{money, plain};
use calc::sheet;
use leptos::prelude::*;

use super::form::form;
use super::html::{Html, asked, shown};
use super::report::buy_words;
use crate::desk::{Desk, tick, ticked};
use crate::route::{Part, Route, go};
pub use line::line_page;

/// The page.
pub fn buy_page(desk: Desk) -> AnyView {
    let list = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| lines(html, project, &all));
    });
    let ticking = move |event: leptos::ev::Event| {
        let Some((_, key)) = asked(&event) else { return };
        // What is bought, not what is needed: the rest of a box serves when the need grows.
        let bought = event_target_checked(&event).then(|| {
            desk.evaluation.with_untracked(|all| {
                let line = all.buy_list.iter().find(|line| line.key() == key);
                line.map_or(0.0, |line| in_si(line.bought(), line.line.unit))
            })
        });
        desk.change(|project| tick(project, "buy", &key, bought));
        super::focus_again("data-with", &key);
    };
    let tapping = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        match what.as_str() {
            "order" => {
                desk.change(|p| p.set(&Place::Shopping, "order", with.as_str().into()));
                super::focus_again("data-with", &with);
            }
            "count-weight" => {
                desk.change(|p| p.set(&Place::Sheet(with.clone()), "project", true.into()));
                go(&Route::Sheet(desk.project.with_untracked(|p| p.id().to_owned()), with));
            }
            _ => {}
        }
    };
    // Back from a line, one goes on there.
    let last = desk.line.try_update_value(std::mem::take).unwrap_or_default();
    if !last.is_empty() {
        let id = desk.project.with_untracked(|project| project.id().to_owned());
        super::focus_again("href", &Route::Line(id, last).hash());
    }
    let weight = shown("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| weight::section(html, project, &all));
    });
    view! {
        <h1 tabindex="-1">"Buy list"</h1>
        <div class="store" on:change=ticking on:click=tapping>{list}</div>
        <section class="own">{form(desk, Place::Shopping, OWN_ASKS)}</section>
        <div on:click=tapping>{weight}</div>
    }
    .into_any()
}

/// The list on the project's page: how much is left to buy, and the way there.
pub fn summary(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<section class=\"buy\"><h2>Buy list</h2>");
    html.raw("<a class=\"card\" href=\"");
    html.text(&Route::Part(project.id().to_owned(), Part::Buy).hash());
    html.raw("\"><span class=\"name\">");
    let left = Left::of(project, all);
    html.text(&left.count_words());
    html.raw("</span>");
    html.tag("strong", "", &left.cost_words());
    html.raw("</a></section>");
}

/// A line as it stands against its tick.
struct Open {
    /// Units that are missing; none where all is bought.
    missing: Option<f64>,
    /// It was ticked, and the need has grown since.
    grown: bool,
}

impl Open {
    fn of(project: &Project, merged: &MergedBuyLine) -> Self {
        let need = merged.asked();
        // A tick stands for the quantity it was set at: a need that grew shows what is missing.
        let had =
            ticked(project, "buy", merged.key()).map(|had| had / in_si(1.0, merged.line.unit));
        let missing = Some(need - had.unwrap_or(0.0)).filter(|missing| *missing > 1e-9);
        match had {
            // What is here already need not be bought.
            None => Self { missing: missing.filter(|_| need > 1e-9), grown: false },
            Some(_) => Self { missing, grown: missing.is_some() },
        }
    }

    /// What the missing part costs.
    fn cost(&self, merged: &MergedBuyLine) -> Option<f64> {
        let (cost, missing) = (merged.line.cost?, self.missing?);
        let share = match merged.packs {
            Some(packs) if packs.count > 0.0 => packs_for(missing, packs.size) / packs.count,
            _ if merged.asked() > 0.0 => missing / merged.asked(),
            _ => 1.0,
        };
        Some(cost * share)
    }
}

fn packs_for(units: f64, size: f64) -> f64 {
    (units / size - 1e-9).ceil().max(0.0)
}

/// What is left to buy.
struct Left {
    lines: usize,
    cost: f64,
    without_price: usize,
    of: usize,
}

impl Left {
    fn of(project: &Project, all: &Evaluation) -> Self {
        let mut left = Self { lines: 0, cost: 0.0, without_price: 0, of: all.buy_list.len() };
        for merged in &all.buy_list {
            let open = Open::of(project, merged);
            if open.missing.is_some() {
                left.lines += 1;
                match open.cost(merged) {
                    Some(cost) => left.cost += cost,
                    None => left.without_price += 1,
                }
            }
        }
        left
    }

    fn count_words(&self) -> String {
        match (self.of, self.lines) {
            (0, _) => "What the sheets need is gathered here.".to_owned(),
            (_, 0) => "All is bought.".to_owned(),
            (of, left) => format!("{left} of {of} left to buy"),
        }
    }

    fn cost_words(&self) -> String {
        match self.without_price {
            _ if self.lines == 0 => String::new(),
            0 => money(self.cost),
            without if without == self.lines => "no prices yet".to_owned(),
            without => format!("{} + {without} without a price", money(self.cost)),
        }
    }
}

fn lines(html: &mut Html, project: &Project, all: &Evaluation) {
    let left = Left::of(project, all);
    html.raw("<p class=\"left-to-buy\" role=\"status\"><span>");
    html.text(&left.count_words());
    html.raw("</span> ");
    html.tag("strong", "", &left.cost_words());
    html.raw("</p>");
    let left_first = project.typed(&Place::Shopping, "order") == "left";
    html.raw("<p class=\"choices\">");
    for (key, name, pressed) in
        [("trade", "By trade", !left_first), ("left", "What is left first", left_first)]
    {
        html.raw("<button data-do=\"order\" data-with=\"");
        html.raw(key);
        html.raw(if pressed { "\" aria-pressed=\"true\">" } else { "\" aria-pressed=\"false\">" });
        html.raw(name);
        html.raw("</button>");
    }
    html.raw("</p>");
    if left_first {
        html.raw("<ul class=\"ticks\">");
        for done in [false, true] {
            for merged in &all.buy_list {
                if Open::of(project, merged).missing.is_none() == done {
                    buy_line(html, project, merged);
                }
            }
        }
        html.raw("</ul>");
    } else {
        by_trade(html, project, all);
    }
    let priced = all.buy_list.iter().filter_map(|line| line.line.cost);
    let (total, count) = priced.fold((0.0, 0), |(total, count), cost| (total + cost, count + 1));
    if count > 0 {
        let mut words = match all.buy_list.len() - count {
            0 => format!("Together {}", money(total)),
            without => format!("Together {}, and {without} without a price", money(total)),
        };
        // Some of it is bought already: the figure above is the rest of this one.
        if total - left.cost > 5e-3 {
            words.push_str(&format!("; {} of it bought already", money(total - left.cost)));
        }
        html.tag("p", "total", &words);
    }
}

fn by_trade(html: &mut Html, project: &Project, all: &Evaluation) {
    let mut trades: Vec<&str> = Vec::new();
    for merged in &all.buy_list {
        let trade = trade_of(project, merged);
        if !trades.contains(&trade) {
            trades.push(trade);
        }
    }
    for trade in trades {
        html.tag("h2", "", trade);
        html.raw("<ul class=\"ticks\">");
        for merged in all.buy_list.iter().filter(|merged| trade_of(project, merged) == trade) {
            buy_line(html, project, merged);
        }
        html.raw("</ul>");
    }
}

/// The trade of the first sheet that a line comes from.
fn trade_of(project: &Project, merged: &MergedBuyLine) -> &'static str {
    let kind = merged.sheets().next().and_then(|id| project.sheet(id)?.kind());
    kind.and_then(sheet::find).map_or("Your own", |sheet| sheet.trade.say(crate::words::words()))
}

fn buy_line(html: &mut Html, project: &Project, merged: &MergedBuyLine) {
    let key = merged.key();
    let open = Open::of(project, merged);
    let done = open.missing.is_none();
    html.open("li", if done { "done" } else { "" });
    html.raw("<label><input type=\"checkbox\" data-do=\"tick\" data-with=\"");
    html.text(key);
    html.raw(if done { "\" checked>" } else { "\">" });
    html.raw("<span class=\"what\">");
    html.text(&words(merged));
    html.tag_if_any("span", "note", &about(project, merged));
    if let Some(missing) = open.missing.filter(|_| open.grown) {
        let packs = merged.packs.map_or(String::new(), |packs| {
            format!(", {} of the packs", plain(packs_for(missing, packs.size), 0))
        });
        let words = format!("{} more needed{packs}", plain(to_buy(missing, merged.line.unit), 1));
        html.tag("span", "note warning", &words);
    }
    html.raw("</span>");
    if let Some(cost) = merged.line.cost {
        html.tag("span", "cost", &money(cost));
    }
    html.raw("</label><p class=\"from\">");
    for sheet in merged.sheets().filter_map(|id| project.sheet(id)) {
        let hash = Route::Sheet(project.id().to_owned(), sheet.id()).hash();
        html.link("", &hash, &super::title_of(&sheet));
    }
    html.raw("<a class=\"more\" href=\"");
    html.text(&Route::Line(project.id().to_owned(), key.to_owned()).hash());
    html.raw("\">In the store<span class=\"visually-hidden\"> of ");
    html.text(&name(merged));
    html.raw("</span></a></p></li>");
}

/// `screw, #8 x 1 1/4 in`.
fn name(merged: &MergedBuyLine) -> String {
    match (merged.line.item.as_str(), merged.line.spec.as_str()) {
        (item, "") => item.to_owned(),
        (item, spec) => format!("{item}, {spec}"),
    }
}

/// A size or a quantity with its unit; pieces have none.
fn counted(quantity: f64, merged: &MergedBuyLine) -> String {
    match merged.line.unit {
        "each" => plain(quantity, 1),
        unit => format!("{} {unit}", plain(quantity, 1)),
    }
}

/// What to take off the shelf: `2 packs of 100: screw, #8 x 1 1/4 in`.
pub fn words(merged: &MergedBuyLine) -> String {
    let Some(packs) = merged.packs else { return buy_words(&merged.line) };
    let noun = if packs.count == 1.0 { "pack" } else { "packs" };
    let count = plain(packs.count, 0);
    format!("{count} {noun} of {}: {}", counted(packs.size, merged), name(merged))
}

/// What is needed of the packs, and what all of it weighs.
fn about(project: &Project, merged: &MergedBuyLine) -> String {
    let mut parts = Vec::new();
    if let Some(packs) = merged.packs {
        let needed = to_buy(merged.asked(), merged.line.unit);
        parts.push(format!("{} needed", counted(needed, merged)));
        if packs.left_over > 0.0 {
            parts.push(format!("{} left over", counted(packs.left_over, merged)));
        }
    }
    if merged.line.on_hand > 0.0 && merged.line.quantity > 0.0 {
        parts.push(format!("{} more here already", counted(merged.line.on_hand, merged)));
    }
    if let Some(mass) = merged.line.mass {
        parts.push(project.style().mass(mass));
    }
    parts.join(" · ")
}
