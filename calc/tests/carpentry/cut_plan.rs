//! The cut plan sheet.

use serde_json::{Value as Json, json};

use super::{check_cut_plan, close, faulty, list, number, outcome, with};

fn body() -> Json {
    json!({})
}

/// A solved instance as inputs, and its least cost.
fn instance(text: &str) -> (Json, f64) {
    let value: Json = serde_json::from_str(text).unwrap();
    let unit = match value["unit"].as_str().unwrap() {
        "1/32 in" => 25.4 / 32.0,
        "mm" => 1.0,
        "1/16 in" => 25.4 / 16.0,
        "in" => 25.4,
        "1/8 in" => 25.4 / 8.0,
        other => panic!("unit {other}"),
    };
    let mm = |value: &Json| format!("{} mm", number(value) * unit);
    let pieces: Vec<Json> = list(&value["pieces"])
        .iter()
        .map(|piece| json!({ "label": piece["label"], "length": mm(&piece["length"]), "count": piece["count"] }))
        .collect();
    let stock: Vec<Json> = list(&value["stock"])
        .iter()
        .map(|stock| json!({ "length": mm(&stock["length"]), "price": stock["price"], "available": stock["available"] }))
        .collect();
    let inputs = json!({ "pieces": pieces, "stock": stock, "kerf": mm(&value["kerf"]),
        "end_trim": mm(&value["end_trim"]) });
    (inputs, number(&value["least_cost"]))
}

/// Instances whose least cost two general-purpose solvers proved; typed as a person would, in lengths with units.
#[test]
fn solved_instances_at_their_proved_cost() {
    for text in [
        include_str!("../../../shared/cutstock/m01_battens.json"),
        include_str!("../../../shared/cutstock/m04_gap_instance.json"),
        include_str!("../../../shared/cutstock/us01_kerf_matters.json"),
        include_str!("../../../shared/cutstock/us02_zero_kerf.json"),
        include_str!("../../../shared/cutstock/us03_furring_2x4.json"),
        include_str!("../../../shared/cutstock/us05_trim_and_kerf.json"),
    ] {
        let (inputs, least) = instance(text);
        let got = outcome("cut_plan", &body(), &inputs);
        close(&got["cost"], least, 1e-6 * least);
        assert_eq!(got["proved"], true);
        let mm = |key: &str| inputs[key].as_str().unwrap().trim_end_matches(" mm").parse().unwrap();
        let cut = check_cut_plan(&got, mm("kerf"), mm("end_trim"));
        let wanted: f64 = list(&inputs["pieces"]).iter().map(|piece| number(&piece["count"])).sum();
        assert_eq!(cut.len() as f64, wanted);
    }
}

fn shelves() -> Json {
    json!({ "pieces": [{ "label": "shelf", "length": "2 ft", "count": 4 }],
        "stock": [{ "length": "8 ft", "price": 5 }], "kerf": "1/8 in" })
}

/// A trade text's worked statement: four 2 ft pieces do not come out of an 8 ft board; they do without a kerf.
#[test]
fn four_two_foot_pieces_and_an_eight_foot_board() {
    let got = outcome("cut_plan", &body(), &shelves());
    close(&got["cost"], 10.0, 0.0);
    let flush = outcome("cut_plan", &body(), &with(shelves(), json!({ "kerf": "0 in" })));
    close(&flush["cost"], 5.0, 0.0);
    close(&flush["waste_mm"], 0.0, 1e-6);
}

#[test]
fn lengths_here_are_used_first_and_cost_nothing() {
    let stock = json!([{ "length": "8 ft", "on_hand": 1 }, { "length": "10 ft", "price": 7 }]);
    let pieces = json!([{ "label": "shelf", "length": "2 ft", "count": 5 }]);
    let inputs = with(shelves(), json!({ "stock": stock, "pieces": pieces }));
    let got = outcome("cut_plan", &body(), &inputs);
    check_cut_plan(&got, 3.175, 0.0);
    close(&got["cost"], 7.0, 0.0);
    let here: Vec<&Json> =
        list(&got["stock"]).iter().filter(|stock| stock["on_hand"] == true).collect();
    assert_eq!((here.len(), &here[0]["count"]), (1, &json!(1)));
    // With eight pieces the one length here is not bought again, as it has no price.
    let pieces = json!([{ "label": "shelf", "length": "2 ft", "count": 8 }]);
    let got = outcome("cut_plan", &body(), &with(inputs, json!({ "pieces": pieces })));
    check_cut_plan(&got, 3.175, 0.0);
    close(&got["cost"], 14.0, 0.0);
}

#[test]
fn without_prices_the_least_length_is_bought() {
    let stock = json!([{ "length": "8 ft" }, { "length": "10 ft" }]);
    let got = outcome("cut_plan", &body(), &with(shelves(), json!({ "stock": stock })));
    close(&got["cost"], 10.0 * 304.8, 1e-6);
    close(&got["bound"], 10.0 * 304.8, 1e-6);
    assert!(list(&got["stock"])[0]["price"].is_null());
}

#[test]
fn faults_name_the_piece_and_the_stock() {
    let bad = |changes: Json| faulty("cut_plan", &body(), &with(shelves(), changes));
    let long = json!([{ "length": "9 ft", "count": 1 }, { "length": "1 ft", "count": 1 }, { "length": "10 ft", "count": 2 }]);
    assert_eq!(bad(json!({ "pieces": long })), ["pieces.0.length", "pieces.2.length"]);
    // What the end trim takes cannot be cut.
    let flush = json!([{ "length": "8 ft", "count": 1 }]);
    assert_eq!(bad(json!({ "pieces": flush, "end_trim": "1 in" })), ["pieces.0.length"]);
    let scarce = json!([{ "length": "8 ft", "price": 5, "available": 1 }]);
    assert_eq!(bad(json!({ "stock": scarce })), ["stock"]);
    let gone = json!([{ "length": "8 ft", "price": 5, "available": 0 }]);
    assert_eq!(bad(json!({ "stock": gone })), ["stock"]);
    let unpriced = json!([{ "length": "8 ft", "price": 5 }, { "length": "10 ft" }]);
    assert_eq!(bad(json!({ "stock": unpriced })), ["stock.1.price"]);
    assert_eq!(bad(json!({ "kerf": "5 in" })), ["kerf"]);
    let many = json!([{ "length": "1 ft", "count": 1500 }, { "length": "1 ft", "count": 1500 }]);
    assert_eq!(bad(json!({ "pieces": many })), ["pieces"]);
}
