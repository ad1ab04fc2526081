//! Joints and stock chosen together: ceilings whose least cost is known, and what must hold for any ceiling.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{close, list, number, outcome, with};

fn solved() -> Vec<Json> {
    let text = include_str!("../../../shared/ceilings/least_cost.json");
    serde_json::from_str(text).unwrap()
}

/// What the outcome says of its layouts holds together: cost of the cut plan, bounds, and what is called proved.
#[track_caller]
fn check(got: &Json, joint_price: f64) -> f64 {
    let near = |a: f64, b: f64| (a - b).abs() <= 1e-6 * (1.0 + b.abs());
    let layouts = list(&got["layouts"]);
    let joints: f64 = list(&got["pieces"]).len() as f64 - number(&got["courses"]);
    let chosen = layouts
        .iter()
        .find(|one| number(&one["joints"]) == joints)
        .expect("the chosen one is listed");
    let cost = number(&got["cut_plan"]["cost"]);
    close(&chosen["cost"], cost, 1e-6);
    for pair in layouts.windows(2) {
        assert!(number(&pair[0]["joints"]) < number(&pair[1]["joints"]));
        assert!(number(&pair[0]["cost"]) > number(&pair[1]["cost"]));
        assert!(number(&pair[0]["bound"]) >= number(&pair[1]["bound"]) - 1e-6);
    }
    for one in layouts {
        let (cost, bound) = (number(&one["cost"]), number(&one["bound"]));
        assert!(bound <= cost + 1e-6 && (one["proved"] == true) == near(cost, bound));
    }
    let total = cost + joint_price * joints;
    let bound = number(&got["layout_bound"]);
    assert!(bound <= total + 1e-6 && (got["layout_proved"] == true) == near(total, bound));
    cost
}

/// Proved by a general-purpose integer solver: `shared/ceilings/README.md`.
#[test]
fn the_least_cost_is_reached_and_no_bound_is_above_it() {
    for ceiling in solved() {
        let got = outcome("boards", &ceiling["body"], &ceiling["inputs"]);
        let least = number(&ceiling["least_cost"]);
        let cost = check(&got, 0.0);
        assert!((cost - least).abs() < 1e-6, "{}: {cost} instead of {least}", ceiling["name"]);
        assert!(number(&got["layout_bound"]) <= least + 1e-6);
    }
}

#[test]
fn a_worth_of_a_joint_lowers_their_number() {
    let ceiling = solved().remove(3);
    let joints = |price: f64| {
        let inputs = with(ceiling["inputs"].clone(), json!({ "joint_price": price }));
        let got = outcome("boards", &ceiling["body"], &inputs);
        check(&got, price);
        list(&got["pieces"]).len() - number(&got["courses"]) as usize
    };
    assert!(joints(0.0) > joints(1.5) && joints(1.5) > joints(1000.0));
    assert_eq!(joints(1000.0), 0);
}

/// Without prices all is told in mm of stock.
#[test]
fn without_prices_the_length_of_stock_is_least() {
    let ceiling = solved().remove(0);
    let stock =
        json!([{ "length": "2438.4 mm" }, { "length": "3048 mm" }, { "length": "3657.6 mm" }]);
    let got = outcome(
        "boards",
        &ceiling["body"],
        &with(ceiling["inputs"].clone(), json!({ "stock": stock })),
    );
    let length = check(&got, 0.0);
    let run = 5.0 * (2605.0 - 8.0);
    assert!(length >= run && number(&got["layout_bound"]) >= run - 3657.6);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10, failure_persistence: None, ..Default::default() })]

    /// What is proved least stays least: a stock length less never makes it cheaper.
    #[test]
    fn a_stock_length_less_is_never_cheaper(
        spacings in proptest::collection::vec(380.0..620.0_f64, 4..8),
        prices in proptest::collection::vec(3.4..4.6_f64, 3),
        courses in 3u32..8,
        stagger in prop::sample::select(vec![152.4, 300.0, 400.0]),
        left_out in 0usize..3,
    ) {
        let mut at = 0.0;
        let ribs: Vec<f64> = spacings.iter().map(|spacing| { at += spacing.round(); at }).collect();
        let body = json!({ "length": format!("{} mm", at + 300.0), "width": format!("{} mm", 100 * courses + 6),
            "rib_width": "40 mm", "ribs": { "measured": ribs.iter().map(|at| format!("{at} mm")).collect::<Vec<_>>() } });
        let mut stock: Vec<Json> = [2400.0, 3000.0, 3600.0].iter().zip(&prices)
            .map(|(length, rate)| json!({ "length": format!("{length} mm"), "price": (length * rate / 10.0).round() / 100.0 }))
            .collect();
        let inputs = json!({ "coverage": "100 mm", "kerf": "3 mm", "end_gap": "4 mm", "side_gap": "3 mm", "start": "balanced",
            "joint_stagger": format!("{stagger} mm"), "edge_distance": "10 mm", "stock": stock });
        let all = outcome("boards", &body, &inputs);
        let cost = check(&all, 0.0);
        stock.remove(left_out);
        let less = super::report("boards", &body, &with(inputs, json!({ "stock": stock })));
        if let Ok(less) = less {
            let less = Json::from(&less.outcome);
            let dearer = check(&less, 0.0);
            // The bound of all lengths holds for some of them.
            prop_assert!(dearer >= number(&all["layout_bound"]) - 1e-6);
            prop_assert!(all["layout_proved"] != true || dearer >= cost - 1e-6, "{dearer} instead of {cost}");
        }
    }
}
