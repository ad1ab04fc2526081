//! The cut list of a project: sheets that cut one section are planned together, and bought for that plan.

use calc::project::{Evaluation, Project};
use serde_json::{Value as Json, json};

use super::{list, number, with};

/// 5 ft pieces waste 3 ft of each 8 ft length; 3 ft pieces alone waste 2 ft. Together they waste nothing.
fn long() -> Json {
    json!({ "material": "1x4 pine", "pieces": [{ "label": "rail", "length": "5 ft", "count": 4 }],
        "stock": [{ "length": "8 ft", "price": 5 }], "kerf": "0 in" })
}

fn short() -> Json {
    with(long(), json!({ "pieces": [{ "label": "rung", "length": "3 ft", "count": 4 }] }))
}

fn evaluated(sheets: &[(&str, Json)]) -> Evaluation {
    let sheets: Vec<Json> = sheets
        .iter()
        .enumerate()
        .map(|(at, (kind, inputs))| json!({ "id": format!("s{}", at + 1), "kind": kind, "inputs": inputs }))
        .collect();
    let file = json!({ "battenbook": 1, "id": "p", "units": "imperial", "sheets": sheets });
    calc::evaluate(&Project::from_text(&file.to_string()).unwrap())
}

/// How many of each stock the buy list names, and how many the cut list cuts.
fn bought_and_cut(all: &Evaluation) -> (f64, f64) {
    let json = all.to_json();
    let count = |list: &[Json], key: &str| list.iter().map(|line| number(&line[key])).sum();
    (count(list(&json["buy_list"]), "quantity"), count(list(&json["cut_list"]), "count"))
}

#[test]
fn what_is_cut_from_one_section_is_one_plan_and_bought_for_it() {
    let all = evaluated(&[("cut_plan", long()), ("cut_plan", short())]);
    let json = all.to_json();
    // By hand: each 8 ft length gives one of either; apart, 4 + 2 lengths.
    assert_eq!(
        json["cut_list"],
        json!([{ "id": "stock/1x4-pine/2438.4mm|s1.p1@1524+s2.p1@914.4", "stock": "1x4 pine, 8 ft",
            "count": 4, "sheets": ["s1", "s2"], "pieces": [
            { "id": "s1.p1", "label": "rail", "length_mm": 1524.0, "sheet": "s1" },
            { "id": "s2.p1", "label": "rung", "length_mm": 3.0 * 304.8, "sheet": "s2" }] }])
    );
    assert_eq!(
        json["buy_list"],
        json!([{ "id": "stock/1x4-pine/2438.4mm", "item": "1x4 pine", "spec": "8 ft", "quantity": 4,
            "unit": "each", "needed": 4, "cost": 20.0, "sheets": ["s1", "s2"] }])
    );
    assert_eq!(all.cut_list[0].saved, Some(10.0));
    // The sheets' own outcomes stay those of the sheets alone.
    assert_eq!(number(&json["sheets"]["s1"]["ok"]["cost"]), 20.0);
    assert_eq!(number(&json["sheets"]["s2"]["ok"]["cost"]), 10.0);
}

#[test]
fn another_stock_saw_material_or_section_stays_apart() {
    let dearer = json!({ "stock": [{ "length": "8 ft", "price": 6 }] });
    let section = |width: &str| json!({ "section": { "thickness": "3/4 in", "width": width } });
    for (a, b) in [
        (json!({}), dearer),
        (json!({}), json!({ "kerf": "1/8 in" })),
        (json!({}), json!({ "end_trim": "1 in" })),
        (json!({}), json!({ "material": "1x4 oak" })),
        (section("3 1/2 in"), section("2 1/2 in")),
    ] {
        let all =
            evaluated(&[("cut_plan", with(long(), a)), ("cut_plan", with(short(), b.clone()))]);
        assert_eq!(all.cut_list.len(), 2, "{b}");
        let (bought, cut) = bought_and_cut(&all);
        assert_eq!(bought, cut);
    }
    let all = evaluated(&[
        ("cut_plan", with(long(), section("3 1/2 in"))),
        ("cut_plan", short()),
        ("cut_plan", with(short(), section("89 mm"))),
    ]);
    assert_eq!(all.cut_list.len(), 1);
}

#[test]
fn strips_and_a_cut_plan_of_the_same_section_are_one_plan() {
    let strips = json!({ "length": "5 ft", "strips": 4, "material": "1X4 PINE", "kerf": "0 in",
        "section": { "thickness": "3/4 in", "width": "3 1/2 in" }, "screws_per_strip": 4,
        "end_distance": "2 in", "stock": [{ "length": "8 ft", "price": 5 }] });
    let all = evaluated(&[("furring", strips), ("cut_plan", short())]);
    assert_eq!((all.cut_list.len(), bought_and_cut(&all)), (1, (4.0, 4.0)));
}

#[test]
fn what_is_here_is_counted_once() {
    let stock = json!({ "stock": [{ "length": "8 ft", "price": 5, "on_hand": 2 }] });
    let all =
        evaluated(&[("cut_plan", with(long(), stock.clone())), ("cut_plan", with(long(), stock))]);
    // Eight 5 ft pieces take eight lengths; apart, each sheet would use the same two and buy two.
    let (bought, cut) = bought_and_cut(&all);
    assert_eq!((bought, cut), (6.0, 8.0));
}

#[test]
fn more_than_the_store_has_is_said() {
    let stock = json!({ "stock": [{ "length": "8 ft", "price": 5, "available": 5 }] });
    let all =
        evaluated(&[("cut_plan", with(long(), stock.clone())), ("cut_plan", with(long(), stock))]);
    assert_eq!(bought_and_cut(&all), (8.0, 8.0));
    let group = &all.cut_list[0];
    assert_eq!(group.remarks[0].weight, calc::report::Weight::Warning, "{group:#?}");
}

#[test]
fn a_bar_keeps_its_name_when_units_and_the_rest_of_the_plan_change() {
    let keys = |all: &Evaluation| -> Vec<String> {
        all.cut_list.iter().flat_map(|group| &group.bars).map(calc::project::CutBar::key).collect()
    };
    let all = evaluated(&[("cut_plan", long()), ("cut_plan", short())]);
    assert_eq!(keys(&all), ["stock/1x4-pine/2438.4mm|s1.p1@1524+s2.p1@914.4"]);
    let more = json!({ "pieces": [{ "label": "rail", "length": "5 ft", "count": 6 }] });
    let other = evaluated(&[("cut_plan", with(long(), more)), ("cut_plan", short())]);
    assert_eq!(keys(&other)[0], keys(&all)[0]);
}
