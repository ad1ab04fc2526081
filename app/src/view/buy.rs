//! The buy list of the project, made for one hand in a store: like things merged, in whole packs, ticked off by thumb.

mod line;
mod weight;

use calc::lists::{Aisle, MergedBuyLine, in_si, to_buy};
use calc::project::shopping::{OWN_ASKS, WEIGHT_KEY};
use calc::project::{Evaluation, Place, Project};
use calc::quantity::{from_digits, money, plain};
use calc::sheet;
use calc::words::{Arg, Id, app_common, app_store as said};
use leptos::prelude::*;

use super::form::form;
use super::html::{Html, asked, shown_folded};
use super::page::faults_by_path;
use super::report::buy_words;
use super::sheet::folded;
use crate::desk::{Desk, tick, ticked};
use crate::route::{Part, Route, go};
use crate::words::{figure, say, text};
pub use line::line_page;

/// The page.
pub fn buy_page(desk: Desk) -> AnyView {
    // Back from a line, one goes on there.
    let last = desk.line.try_update_value(std::mem::take).unwrap_or_default();
    if !last.is_empty() {
        let id = desk.project.with_untracked(|project| project.id().to_owned());
        super::focus_again("href", &Route::Line(id, last.clone()).hash());
    }
    // The row whose panel is open.
    let opened = RwSignal::new(last);
    let list = shown_folded("part", move |html| {
        let all = desk.evaluation.get();
        desk.project.with(|project| opened.with(|opened| lines(html, project, &all, opened)));
    });
    let typed = move |event: leptos::ev::Event| {
        let Some((what, key)) = asked(&event) else { return };
        match what.as_str() {
            "tick" => turned(desk, &key, event_target_checked(&event)),
            "got" => got(desk, &key, &event_target_value(&event)),
            "price" => {
                let price = event_target_value(&event);
                desk.change(|p| p.set(&Place::Line(key.clone()), "price", price.as_str().into()));
            }
            _ => return,
        }
        refocus(what, key);
    };
    let tapping = move |event: leptos::ev::MouseEvent| {
        let Some((what, with)) = asked(&event) else { return };
        match what.as_str() {
            "order" => {
                desk.change(|p| p.set(&Place::Shopping, "order", with.as_str().into()));
                super::focus_again("data-with", &with);
            }
            "row" => {
                opened.update(|opened| {
                    *opened = if *opened == with { String::new() } else { with.clone() }
                });
                refocus(what, with);
            }
            "count-weight" => {
                desk.change(|p| p.set(&Place::Sheet(with.clone()), WEIGHT_KEY, true.into()));
                go(&Route::Sheet(desk.project.with_untracked(|p| p.id().to_owned()), with));
            }
            _ => {}
        }
    };
    let own = Memo::new(move |_| {
        let count = desk.project.with(|project| project.row_count(&Place::Shopping, "own"));
        say(said::YourLines { count })
    });
    let any_own =
        desk.project.with_untracked(|project| project.row_count(&Place::Shopping, "own") > 0);
    let weight = folded(
        Memo::new(move |_| Some(text(said::WHAT_IT_WEIGHS).to_owned())),
        Box::new(move |html| {
            let all = desk.evaluation.get();
            desk.project.with(|project| weight::section(html, project, &all));
        }),
    );
    view! {
        <h1 tabindex="-1">{text(app_common::BUY_LIST)}</h1>
        <div class="store" on:change=typed on:click=tapping>{list}</div>
        <details class="part-fold own" open=any_own>
            <summary>{move || own.get()}</summary>
            {form(desk, Place::Shopping, OWN_ASKS)}
        </details>
        <div on:click=tapping>{weight}</div>
    }
    .into_any()
}

/// A box was turned. What is bought counts, not what is needed: the rest of a box serves when the need grows.
fn turned(desk: Desk, key: &str, on: bool) {
    let bought = on.then(|| {
        desk.evaluation.with_untracked(|all| {
            let line = all.buy_list.iter().find(|line| line.key() == key);
            line.map_or(0.0, |line| in_si(line.bought(), line.line.unit))
        })
    });
    desk.change(|project| tick(project, "buy", key, bought));
}

/// So many were got; nothing where the text is no number.
fn got(desk: Desk, key: &str, typed: &str) {
    let count = from_digits(typed.trim()).filter(|count| *count > 0.0);
    let unit = desk.evaluation.with_untracked(|all| {
        all.buy_list.iter().find(|line| line.key() == key).map(|line| line.line.unit)
    });
    let got = count.zip(unit).map(|(count, unit)| in_si(count, unit));
    desk.change(|project| tick(project, "buy", key, got));
}

/// Puts the focus back on what a row is changed with, after the list was written anew.
fn refocus(what: String, key: String) {
    super::dom::move_focus_soon(move || {
        let all = super::elements(None, "[data-with]");
        let same = |one: &&web_sys::Element| {
            one.get_attribute("data-with").as_ref() == Some(&key)
                && one.get_attribute("data-do").as_ref() == Some(&what)
        };
        if let Some(one) = all.iter().find(same) {
            super::dom::focus(one);
        }
    });
}

/// The list on the project's page: how much is left to buy, and the way there.
pub fn summary(html: &mut Html, project: &Project, all: &Evaluation) {
    html.raw("<section class=\"buy\">");
    html.tag("h2", "", text(app_common::BUY_LIST));
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

    /// How many more are needed than were bought; empty where none are.
    fn more_words(&self, merged: &MergedBuyLine) -> String {
        let Some(missing) = self.missing.filter(|_| self.grown) else { return String::new() };
        let count = plain(to_buy(missing, merged.line.unit), 1);
        match merged.packs {
            Some(packs) => {
                let packs = Arg::tenths(packs_for(missing, packs.size));
                say(said::MoreNeededPacks { count, packs })
            }
            None => say(said::MoreNeeded { count }),
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
            (0, _) => say(said::NOTHING_ASKED),
            (_, 0) => say(said::ALL_BOUGHT),
            (of, left) => say(said::LeftToBuy { left, of }),
        }
    }

    fn cost_words(&self) -> String {
        match self.without_price {
            _ if self.lines == 0 => String::new(),
            0 => figure(money(self.cost)),
            without if without == self.lines => say(said::NO_PRICES),
            count => say(said::CostAndUnpriced { cost: money(self.cost), count }),
        }
    }
}

/// How many lines are left to buy, and what they cost.
pub(super) fn left_words(project: &Project, all: &Evaluation) -> (String, String) {
    let left = Left::of(project, all);
    (left.count_words(), left.cost_words())
}

/// The lines that are left to buy: what is missing of them where some were bought, and what they are.
pub(super) fn left_lines(project: &Project, all: &Evaluation) -> Vec<(String, String)> {
    let open = all.buy_list.iter().map(|merged| (Open::of(project, merged), merged));
    let open = open.filter(|(open, _)| open.missing.is_some());
    open.map(|(open, merged)| (open.more_words(merged), words(merged))).collect()
}

fn lines(html: &mut Html, project: &Project, all: &Evaluation, opened: &str) {
    let left = Left::of(project, all);
    html.raw("<p class=\"left-to-buy\" role=\"status\"><span>");
    html.text(&left.count_words());
    html.raw("</span> ");
    html.tag("strong", "", &left.cost_words());
    html.raw("</p>");
    let order = Order::of(project);
    html.raw("<p class=\"choices\">");
    for one in Order::ALL {
        html.raw("<button data-do=\"order\" data-with=\"");
        html.raw(one.key());
        html.raw(if one == order {
            "\" aria-pressed=\"true\">"
        } else {
            "\" aria-pressed=\"false\">"
        });
        html.text(text(one.name()));
        html.raw("</button>");
    }
    html.raw("</p>");
    match order {
        Order::Aisle => {
            let name = |merged: &MergedBuyLine| text(Aisle::of(&merged.line).name());
            let mut aisles: Vec<Aisle> =
                all.buy_list.iter().map(|merged| Aisle::of(&merged.line)).collect();
            calc::sorting::sort(&mut aisles);
            aisles.dedup();
            let names: Vec<&str> = aisles.into_iter().map(|aisle| text(aisle.name())).collect();
            groups(html, project, all, opened, &names, name);
        }
        Order::Trade => {
            let name = |merged: &MergedBuyLine| trade_of(project, merged);
            let mut names: Vec<&str> = Vec::new();
            for merged in &all.buy_list {
                if !names.contains(&name(merged)) {
                    names.push(name(merged));
                }
            }
            groups(html, project, all, opened, &names, name);
        }
        Order::LeftFirst => {
            html.raw("<ul class=\"ticks\">");
            for done in [false, true] {
                for merged in &all.buy_list {
                    if Open::of(project, merged).missing.is_none() == done {
                        buy_line(html, project, all, merged, opened);
                    }
                }
            }
            html.raw("</ul>");
        }
    }
    let priced = all.buy_list.iter().filter_map(|line| line.line.cost);
    let (total, count) = priced.fold((0.0, 0), |(total, count), cost| (total + cost, count + 1));
    if count > 0 {
        let mut words = match all.buy_list.len() - count {
            0 => say(said::Total { cost: money(total) }),
            count => say(said::TotalUnpriced { cost: money(total), count }),
        };
        // Some of it is bought already: the figure above is the rest of this one.
        if total - left.cost > 5e-3 {
            words = say(said::TotalBought { total: words, cost: money(total - left.cost) });
        }
        html.tag("p", "total", &words);
    }
}

/// How the list is ordered.
#[derive(Clone, Copy, PartialEq)]
enum Order {
    Aisle,
    Trade,
    LeftFirst,
}

impl Order {
    const ALL: [Self; 3] = [Self::Aisle, Self::Trade, Self::LeftFirst];

    fn of(project: &Project) -> Self {
        let typed = project.typed(&Place::Shopping, "order");
        Self::ALL.into_iter().find(|one| one.key() == typed).unwrap_or(Self::Aisle)
    }

    fn key(self) -> &'static str {
        match self {
            Self::Aisle => "aisle",
            Self::Trade => "trade",
            Self::LeftFirst => "left",
        }
    }

    fn name(self) -> Id {
        match self {
            Self::Aisle => said::BY_AISLE,
            Self::Trade => said::BY_TRADE,
            Self::LeftFirst => said::LEFT_FIRST,
        }
    }
}

/// Lists longer than this open with only the first group that something is left in: one is in one aisle at a time.
const SHORT_LIST: usize = 16;

/// The lines in groups, each behind a line with its name and how much is left of it.
fn groups<'a>(
    html: &mut Html,
    project: &Project,
    all: &Evaluation,
    opened: &str,
    names: &[&'a str],
    name_of: impl Fn(&MergedBuyLine) -> &'a str,
) {
    let mut open_one = true;
    for group in names {
        let lines = || all.buy_list.iter().filter(|merged| name_of(merged) == *group);
        let of = lines().count();
        let left = lines().filter(|merged| Open::of(project, merged).missing.is_some()).count();
        let open = all.buy_list.len() <= SHORT_LIST || (left > 0 && std::mem::take(&mut open_one));
        html.raw("<details class=\"part-fold aisle\" data-fold=\"");
        html.text(group);
        html.raw(if open { "\" open>" } else { "\">" });
        html.raw("<summary><h2>");
        html.text(group);
        html.raw("</h2>");
        let words = match left {
            0 => text(said::GROUP_DONE).to_owned(),
            left => say(said::GroupLeft { left, of }),
        };
        html.tag("span", "note", &words);
        html.raw("</summary><ul class=\"ticks\">");
        lines().for_each(|merged| buy_line(html, project, all, merged, opened));
        html.raw("</ul></details>");
    }
}

/// The trade of the first sheet that a line comes from.
fn trade_of(project: &Project, merged: &MergedBuyLine) -> &'static str {
    let kind = merged.sheets().next().and_then(|id| project.sheet(id)?.kind());
    kind.and_then(sheet::find)
        .map_or_else(|| text(said::OWN_TRADE), |sheet| sheet.trade.say(crate::words::words()))
}

/// A row: the box, how many, what and which, the price; what else can be told or done stands in a panel under it.
fn buy_line(
    html: &mut Html,
    project: &Project,
    all: &Evaluation,
    merged: &MergedBuyLine,
    opened: &str,
) {
    let key = merged.key();
    let open = Open::of(project, merged);
    let done = open.missing.is_none();
    html.open("li", if done { "done" } else { "" });
    html.raw("<div class=\"line\"><label><input type=\"checkbox\" data-do=\"tick\" data-with=\"");
    html.text(key);
    html.raw(if done { "\" checked>" } else { "\">" });
    html.raw("<span class=\"what\">");
    html.text(&words(merged));
    html.tag_if_any("span", "note warning", &open.more_words(merged));
    html.raw("</span>");
    if let Some(cost) = merged.line.cost {
        html.raw("<span class=\"cost\">");
        html.text(&figure(money(cost)));
        let count = merged.packs.map_or(merged.line.quantity, |packs| packs.count);
        if count > 1.0 {
            html.tag("span", "note", &say(said::Each { price: money(cost / count) }));
        }
        html.raw("</span>");
    }
    html.raw("</label><button class=\"row-more\" data-do=\"row\" data-with=\"");
    html.text(key);
    html.raw("\" aria-label=\"");
    html.text(&say(said::RowOf { name: name(merged) }));
    let is_open = opened == key;
    html.raw(if is_open { "\" aria-expanded=\"true\">" } else { "\" aria-expanded=\"false\">" });
    html.raw("⋯</button></div>");
    if is_open {
        panel(html, project, all, merged);
    }
    html.raw("</li>");
}

/// What opens under a row: got fewer, the price on the shelf, the sheets that ask for it, and what if it is not here.
fn panel(html: &mut Html, project: &Project, all: &Evaluation, merged: &MergedBuyLine) {
    let key = merged.key();
    html.raw("<div class=\"panel\">");
    html.tag_if_any("p", "note", &about(project, merged));
    let of = counted(merged.asked(), merged);
    let got = ticked(project, "buy", key).map(|had| plain(had / in_si(1.0, merged.line.unit), 1));
    field(html, "got", key, &say(said::Got { of }), &got.unwrap_or_default());
    let place = Place::Line(key.to_owned());
    field(html, "price", key, text(said::PRICE_IS), &project.typed(&place, "price"));
    let faults = faults_by_path(all, &place);
    if let Some(fault) = faults.get("price") {
        html.tag("p", "fault", fault);
    }
    html.raw("<p class=\"from\">");
    for sheet in merged.sheets().filter_map(|id| project.sheet(id)) {
        let hash = Route::Sheet(project.id().to_owned(), sheet.id()).hash();
        html.link("", &hash, &super::title_of(&sheet));
    }
    html.raw("</p><p class=\"from\">");
    let line = Route::Line(project.id().to_owned(), key.to_owned()).hash();
    html.link("button wide", &line, text(said::NOT_HERE));
    html.raw("</p></div>");
}

/// A number to type in the store.
fn field(html: &mut Html, what: &str, key: &str, label: &str, typed: &str) {
    html.raw("<label class=\"in-store\"><span>");
    html.text(label);
    html.raw("</span><input type=\"text\" inputmode=\"decimal\" autocomplete=\"off\" enterkeyhint=\"done\" data-do=\"");
    html.raw(what);
    html.raw("\" data-with=\"");
    html.text(key);
    html.raw("\" value=\"");
    html.text(typed);
    html.raw("\"></label>");
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
        "each" => figure(plain(quantity, 1)),
        unit => figure(format!("{} {unit}", plain(quantity, 1))),
    }
}

/// What to take off the shelf: `2 packs of 100: screw, #8 x 1 1/4 in`.
pub fn words(merged: &MergedBuyLine) -> String {
    let Some(packs) = merged.packs else { return buy_words(&merged.line) };
    let count = Arg::tenths(packs.count);
    say(said::PacksOf { count, size: counted(packs.size, merged), name: name(merged) })
}

/// What is needed of the packs, and what all of it weighs.
fn about(project: &Project, merged: &MergedBuyLine) -> String {
    let mut parts = Vec::new();
    if let Some(packs) = merged.packs {
        let needed = to_buy(merged.asked(), merged.line.unit);
        parts.push(say(said::Needed { count: counted(needed, merged) }));
        if packs.left_over > 0.0 {
            parts.push(say(said::LeftOver { count: counted(packs.left_over, merged) }));
        }
    }
    if merged.line.on_hand > 0.0 && merged.line.quantity > 0.0 {
        parts.push(say(said::OnHand { count: counted(merged.line.on_hand, merged) }));
    }
    if let Some(mass) = merged.line.mass {
        parts.push(project.style().mass(mass));
    }
    parts.join(" · ")
}
