//! The coating sheet.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{close, faulty, outcome, report};

fn with(changes: Json) -> Json {
    let mut inputs = json!({ "areas": [{ "length": "1 m", "width": "1 m" }], "coats": 1, "spread_rate": "10 m2/l", "loss_percent": 0 });
    for (key, value) in changes.as_object().unwrap() {
        inputs[key] = value.clone();
    }
    inputs
}

/// 1 US gal = 231 in³ at 1 mil covers 1604 ft², as coating makers' data sheets print it.
#[test]
fn coating_makers_gallon_at_one_mil() {
    let got = outcome(
        "coating",
        &with(
            json!({ "spread_rate": null, "areas": [{ "length": "1604.1667 ft", "width": "1 ft" }],
            "film": { "dry": "1 mil", "solids_percent": 100 } }),
        ),
    );
    close(&got["volume_l"], 3.785_411_784, 1e-6);
    close(&got["wet_film_um"], 25.4, 1e-9);
}

/// Published spread rates: 65 % solids at 125 µm 5.2 m²/l; a coating maker's table: 100/70/50/45 % at
/// 25/175/75/60 µm 40.0/4.0/6.7/7.5 m²/l.
#[test]
fn coating_makers_table_of_spread_rates() {
    for (solids, dry, rate) in
        [(65, 125, 5.2), (100, 25, 40.0), (70, 175, 4.0), (50, 75, 6.7), (45, 60, 7.5)]
    {
        let got = outcome(
            "coating",
            &with(json!({ "spread_rate": null,
                "film": { "dry": format!("{dry} um"), "solids_percent": solids } })),
        );
        close(&json!(1.0 / got["volume_l"].as_f64().unwrap()), rate, 0.05);
        close(&got["dry_film_um"], f64::from(dry), 1e-9);
    }
}

/// A published example: 50 % solids, 10 % thinner, 60 µm dry: 7.57 m²/l, with 30 % loss 5.30.
#[test]
fn published_example_with_thinner_and_loss() {
    let film = json!({ "dry": "60 um", "solids_percent": 50, "thinner_percent": 10 });
    let got = outcome("coating", &with(json!({ "spread_rate": null, "film": film })));
    close(&json!(1.0 / got["volume_l"].as_f64().unwrap()), 7.57, 0.01);
    close(&got["wet_film_um"], 132.0, 1e-6);
    let lossy = with(json!({ "spread_rate": null, "film": film, "loss_percent": 30,
        "containers": [{ "size": "10 ml" }] }));
    let got = outcome("coating", &lossy);
    close(&json!(1.0 / got["volume_l"].as_f64().unwrap()), 5.30, 0.005);
    // The thinner is no part of what is bought.
    close(&got["paint_l"], got["volume_l"].as_f64().unwrap() / 1.1, 1e-12);
    assert_eq!(got["containers"], json!([{ "size_l": 0.01, "count": 18 }]));
}

/// A published example: 35 % solids, 10 % thinner, 2.8 mil dry: 8.8 mil wet.
#[test]
fn published_wet_film_in_mils() {
    let film = json!({ "dry": "2.8 mil", "solids_percent": 35, "thinner_percent": 10 });
    let got = outcome("coating", &with(json!({ "spread_rate": null, "film": film })));
    close(&got["wet_film_um"], 8.8 * 25.4, 1e-6);
}

/// Floor finish: 400 ft²/gal is 4 mil wet, at 50 % solids 2 mil dry, as finish makers print it.
#[test]
fn floor_finish_makers_film() {
    let got =
        outcome("coating", &with(json!({ "spread_rate": "400 ft2/gal", "solids_percent": 50 })));
    close(&got["wet_film_um"], 4.0 * 25.4, 0.3);
    close(&got["dry_film_um"], 2.0 * 25.4, 0.2);
    // A quart covers a quarter of what a gallon does.
    let quart = outcome("coating", &with(json!({ "spread_rate": "100 ft2/qt" })));
    close(&quart["wet_film_um"], got["wet_film_um"].as_f64().unwrap(), 1e-9);
}

/// A floor worked by hand: 2 m × 3 m less two of 0.5 m × 1 m; 3 coats, surface factor 1.2, 10 % loss.
#[test]
fn a_floor_worked_by_hand() {
    let got = outcome(
        "coating",
        &with(json!({ "coats": 3, "surface_factor": 1.2, "loss_percent": 10,
            "areas": [
                { "label": "floor", "length": "2 m", "width": "3 m" },
                { "label": "boxes", "length": "0.5 m", "width": "1 m", "count": 2, "subtract": true } ] })),
    );
    close(&got["area_m2"], 5.0, 1e-12);
    close(&got["coated_area_m2"], 6.0, 1e-12);
    close(&got["volume_l"], 6.0 * 3.0 / 10.0 / 0.9, 1e-12);
    close(&got["wet_film_um"], 100.0, 1e-9);
    assert!(got.get("dry_film_um").is_none() && got.get("may_coat").is_none());
    assert_eq!(got["containers"], json!([]));
}

/// The cheapest choice against trying all: filling greedily with gallons would cost 178.
#[test]
fn containers_against_brute_force() {
    let cans = [(0.946_352_946, 31.0), (3.785_411_784, 89.0), (9.463_529_46, 205.0)];
    for tenths in [3, 9, 10, 19, 29, 38, 39, 47, 57, 76, 95, 104, 143, 190, 251] {
        let need = f64::from(tenths) / 10.0;
        let inputs = with(json!({
            "areas": [{ "length": format!("{need} m"), "width": "10 m" }],
            "containers": [{ "size": "1 qt", "price": 31 }, { "size": "1 gal", "price": 89 },
                { "size": "2.5 gal", "price": 205 }] }));
        let got = outcome("coating", &inputs);
        let mut least = f64::INFINITY;
        for a in 0..30 {
            for b in 0..10 {
                for c in 0..5 {
                    let counts = [a, b, c].map(f64::from);
                    let held: f64 = counts.iter().zip(cans).map(|(n, (size, _))| n * size).sum();
                    let cost: f64 = counts.iter().zip(cans).map(|(n, (_, price))| n * price).sum();
                    if held >= need - 1e-9 {
                        least = least.min(cost);
                    }
                }
            }
        }
        close(&got["cost"], least, 1e-9);
        let held: f64 = got["containers"]
            .as_array()
            .unwrap()
            .iter()
            .map(|can| can["size_l"].as_f64().unwrap() * can["count"].as_f64().unwrap())
            .sum();
        close(&got["left_over_l"], held - got["volume_l"].as_f64().unwrap(), 1e-9);
        assert_eq!(got["proved"], true);
    }
}

/// 3 × 1.1 l of need that sums to just over a full can by float dust buys no other can.
#[test]
fn dust_of_sums_buys_no_other_can() {
    let row = json!({ "length": "0.1 m", "width": "1 m" });
    let inputs = with(
        json!({ "areas": vec![row; 30], "spread_rate": "1 m2/l", "containers": [{ "size": "1 l" }] }),
    );
    let got = outcome("coating", &inputs);
    assert_eq!(got["containers"], json!([{ "size_l": 1.0, "count": 3 }]));
    assert!(got.get("cost").is_none());
}

fn air(t: f64, h: f64, s: f64) -> Json {
    json!({ "temperature": format!("{t} C"), "humidity_percent": h, "surface_temperature": format!("{s} C") })
}

/// A label, a night that bears it, and an air.
fn ready(air: Json) -> Json {
    json!({ "air": air, "night": self::air(15.0, 60.0, 13.0), "limits": { "temperature_least": "10 C",
        "temperature_most": "30 C", "humidity_most_percent": 80 } })
}

/// A practice text's examples on ISO 8502-4: 16 °C, 71 %, steel at 13 °C must wait; and the Magnus
/// form of WMO-No. 8 at 20 °C, 60 %: 12.0 °C as a weather table prints it.
#[test]
fn published_dew_point_examples() {
    let wait = outcome("coating", &with(json!({ "air": air(16.0, 71.0, 13.0) })));
    assert_eq!(wait["may_coat"], false);
    close(&wait["dew_margin_c"], 2.0, 0.3);
    let paint = outcome("coating", &with(ready(air(20.0, 60.0, 16.0))));
    assert_eq!(paint["may_coat"], true);
    close(&paint["dew_point_c"], 12.0, 0.05);
    // 3 °C above the dew point is enough for the margin; air at 85 % and more is not.
    let humid =
        report("coating", &with(json!({ "air": air(10.0, 90.0, 20.0) })), "metric").unwrap();
    assert!(humid.remarks.iter().any(|remark| remark.text.contains("85 %")));
}

/// The dew point alone is no leave: each thing that is not known leaves the answer out, each limit that
/// is passed says no.
#[test]
fn may_coat_needs_label_and_night() {
    let fine = || air(20.0, 60.0, 16.0);
    let may = |inputs: Json| outcome("coating", &with(inputs)).get("may_coat").cloned();
    assert_eq!(may(ready(fine())), Some(json!(true)));
    assert_eq!(may(json!({ "air": fine() })), None);
    for key in ["temperature_least", "temperature_most", "humidity_most_percent"] {
        let mut inputs = ready(fine());
        inputs["limits"][key] = json!(null);
        assert_eq!(may(inputs), None, "{key}");
    }
    let mut inputs = ready(fine());
    inputs["night"] = json!(null);
    assert_eq!(may(inputs), None);
    let report = report("coating", &with(json!({ "air": fine() })), "metric").unwrap();
    let answer = report.answers.last().unwrap();
    assert!(answer.text.starts_with("Not shown") && answer.note.contains("the coming night"));

    // A night at dew, a night too cold, a label that bears less.
    for night in [air(12.0, 84.0, 10.0), air(11.0, 50.0, 9.0), air(15.0, 81.0, 15.0)] {
        let mut inputs = ready(fine());
        inputs["night"] = night;
        assert_eq!(may(inputs), Some(json!(false)));
    }
    for (key, value) in [
        ("temperature_least", json!("17 C")),
        ("temperature_most", json!("19 C")),
        ("humidity_most_percent", json!(59)),
    ] {
        let mut inputs = ready(fine());
        inputs["limits"][key] = value;
        assert_eq!(may(inputs), Some(json!(false)), "{key}");
    }
    let mut inputs = ready(fine());
    inputs["limits"]["moisture_most_percent"] = json!(12);
    assert_eq!(may(inputs.clone()), None);
    inputs["moisture_percent"] = json!(12);
    assert_eq!(may(inputs.clone()), Some(json!(true)));
    inputs["moisture_percent"] = json!(13);
    assert_eq!(may(inputs), Some(json!(false)));
    let crossed = json!({ "limits": { "temperature_least": "30 C", "temperature_most": "20 C" } });
    assert_eq!(faulty("coating", &with(crossed)), ["limits.temperature_most"]);
}

/// Left out, the loss is the usual one and said; typed 0 is 0.
#[test]
fn loss_is_never_silently_zero() {
    let layer = json!([{ "product": "primer", "coats": 1, "spread_rate": "10 m2/l" }]);
    let inputs = with(json!({ "loss_percent": null, "layers": layer }));
    let got = outcome("coating", &inputs);
    close(&got["volume_l"], 0.1 / 0.9, 1e-12);
    close(&got["layers"][0]["volume_l"], 0.1 / 0.9, 1e-12);
    close(&outcome("coating", &with(json!({})))["volume_l"], 0.1, 1e-12);
    let report = report("coating", &inputs, "metric").unwrap();
    let said = |of: &str| report.remarks.iter().any(|remark| remark.text.starts_with(of));
    assert!(
        said("coating: No waste allowance is entered, so 10 %")
            && said("primer: No waste allowance is entered, so 10 %")
    );
}

/// Both faces of a door take twice as much; of what is taken off as well.
#[test]
fn both_faces_where_asked() {
    let door = json!([{ "length": "2 m", "width": "0.5 m", "count": 3, "faces": 2 },
        { "length": "0.5 m", "width": "0.5 m", "faces": 2, "subtract": true }]);
    close(&outcome("coating", &with(json!({ "areas": door })))["area_m2"], 5.5, 1e-12);
    let three = json!([{ "length": "2 m", "width": "0.5 m", "faces": 3 }]);
    assert_eq!(faulty("coating", &with(json!({ "areas": three }))), ["areas.0.faces"]);
}

/// Oil goes into the wood: bought by its spread rate, and no film is told.
#[test]
fn a_penetrating_finish_has_no_film() {
    let inputs = with(json!({ "finish_type": "penetrating", "wipe_after": "15 min" }));
    let got = outcome("coating", &inputs);
    close(&got["volume_l"], 0.1, 1e-12);
    assert!(got.get("wet_film_um").is_none() && got.get("dry_film_um").is_none());
    close(&got["stages"][0]["wipe_min"], 15.0, 1e-12);
    let report = report("coating", &inputs, "metric").unwrap();
    let lines = report.checks[0].lines.iter();
    let lines: Vec<String> = lines.map(|line| format!("{} {}", line.text, line.note)).collect();
    assert!(lines.iter().any(|line| line.contains("wipe it off Each part 15 min")), "{lines:?}");
    assert!(lines.iter().any(|line| line.contains("rags flat outdoors")));
    let film = json!({ "dry": "60 um", "solids_percent": 50 });
    let wrong = json!({ "finish_type": "penetrating", "spread_rate": null, "film": film });
    assert_eq!(faulty("coating", &with(wrong)), ["film"]);
    assert_eq!(faulty("coating", &with(json!({ "wipe_after": "15 min" }))), ["wipe_after"]);
}

#[test]
fn faults_name_their_fields() {
    let taken = json!([{ "length": "1 m", "width": "2 m" }, { "length": "2 m", "width": "1 m", "subtract": true }]);
    assert_eq!(faulty("coating", &with(json!({ "areas": taken }))), ["areas"]);
    assert_eq!(
        faulty("coating", &with(json!({ "areas": [{ "width": "1 m" }] }))),
        ["areas.0.length"]
    );
    assert_eq!(faulty("coating", &with(json!({ "coats": 0 }))), ["coats"]);
    assert_eq!(faulty("coating", &with(json!({ "spread_rate": null }))), ["spread_rate"]);
    assert_eq!(faulty("coating", &with(json!({ "spread_rate": "10 mm" }))), ["spread_rate"]);
    let film = json!({ "dry": "60 um", "solids_percent": 50 });
    assert_eq!(faulty("coating", &with(json!({ "film": film }))), ["film"]);
    assert_eq!(
        faulty("coating", &with(json!({ "spread_rate": null, "film": { "dry": "60 um" } }))),
        ["film.solids_percent"]
    );
    assert_eq!(
        faulty("coating", &with(json!({ "loss_percent": 100, "surface_factor": 0.5 }))),
        ["loss_percent", "surface_factor"]
    );
    assert_eq!(
        faulty(
            "coating",
            &with(json!({ "air": { "temperature": "20 C", "humidity_percent": 120 } }))
        ),
        ["air.humidity_percent", "air.surface_temperature"]
    );
    assert_eq!(
        faulty("coating", &with(json!({ "containers": [{ "price": 3 }] }))),
        ["containers.0.size"]
    );
}

/// Cans of one product and size are added up over the sheets; a can keeps the size on its label.
#[test]
fn buy_lines_name_product_and_can() {
    let inputs =
        with(json!({ "product": "primer", "containers": [{ "size": "2.5 l", "price": 40 }] }));
    let line = report("coating", &inputs, "imperial").unwrap().buy.remove(0);
    assert_eq!((line.item.as_str(), line.spec.as_str()), ("primer", "2.5 l"));
    assert_eq!((line.quantity, line.cost), (1.0, Some(40.0)));
    let inputs = with(json!({ "containers": [{ "size": "1 gal" }] }));
    assert_eq!(report("coating", &inputs, "metric").unwrap().buy[0].spec, "1 gal");
}

/// By hand: six sides of three boards of 1000 × 100 × 20 mm are 0.732 m²; a face alone 0.1 each.
#[test]
fn boards_on_all_sides_by_hand() {
    let board = json!({ "length": "1 m", "width": "100 mm", "thickness": "20 mm", "count": 3 });
    let got = outcome("coating", &with(json!({ "areas": null, "boards": [board] })));
    close(&got["area_m2"], 0.732, 1e-12);
    let mut face = board;
    face["faces"] = json!(1);
    face["edges"] = json!(0);
    face["ends"] = json!(0);
    close(&outcome("coating", &with(json!({ "boards": [face] })))["area_m2"], 1.3, 1e-12);
    assert_eq!(faulty("coating", &with(json!({ "areas": null }))), ["areas"]);
}

/// Each layer is worked by its own label, and bought by itself.
#[test]
fn layers_and_supplies_by_hand() {
    let primer = json!({ "product": "primer", "coats": 2, "film": { "dry": "50 um", "solids_percent": 50 },
        "loss_percent": 20, "containers": [{ "size": "100 ml", "price": 5 }] });
    let sheet = json!({ "label": "abrasive sheet", "each": "0.3 m2", "times": 3, "price": 2 });
    let inputs = with(json!({ "layers": [primer], "supplies": [sheet] }));
    let got = outcome("coating", &inputs);
    close(&got["volume_l"], 0.1, 1e-12);
    close(&got["layers"][0]["volume_l"], 2.0 * 0.1 / 0.8, 1e-12);
    close(&got["layers"][0]["cost"], 15.0, 1e-12);
    assert_eq!(got["supplies"][0]["count"], 10);
    let items: Vec<String> = report("coating", &inputs, "metric")
        .unwrap()
        .buy
        .into_iter()
        .map(|line| line.item)
        .collect();
    assert_eq!(items, ["coating", "primer", "abrasive sheet"]);
    let wrong = with(
        json!({ "layers": [{ "product": "primer", "coats": 1 }], "supplies": [{ "each": "1 m2" }] }),
    );
    assert_eq!(faulty("coating", &wrong), ["layers.0.spread_rate", "supplies.0.label"]);
}

/// What is bought holds what is needed, what is left over is the difference, and each layer's volume
/// is its film on the surface, its loss added.
fn balance(got: &Json, area: f64, coats: f64, loss: f64) -> bool {
    let number = |name: &str| got[name].as_f64().unwrap();
    let net = area * coats * number("wet_film_um") * 1e-6 * 1e3;
    let held: f64 = got["containers"]
        .as_array()
        .unwrap()
        .iter()
        .map(|can| can["size_l"].as_f64().unwrap() * can["count"].as_f64().unwrap())
        .sum();
    let near = |a: f64, b: f64| (a - b).abs() < 1e-9 * (1.0 + b.abs());
    near(number("net_volume_l"), net)
        && near(number("volume_l") * (1.0 - loss / 100.0), net)
        && near(number("paint_l") + number("thinner_l"), number("volume_l"))
        && held >= number("paint_l") - 1e-9
        && near(number("left_over_l"), (held - number("paint_l")).max(0.0))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn mass_balance_of_every_layer(
        length in 0.2..9.0_f64,
        width in 0.2..3.0_f64,
        coats in 1..5_u32,
        rate in 4.0..20.0_f64,
        dry in 20.0..120.0_f64,
        solids in 20.0..100.0_f64,
        thinner in 0.0..30.0_f64,
        loss in 0.0..40.0_f64,
        factor in 1.0..2.0_f64,
    ) {
        let got = outcome("coating", &with(json!({
            "areas": [{ "length": format!("{length} m"), "width": format!("{width} m") }],
            "coats": coats, "spread_rate": format!("{rate} m2/l"), "loss_percent": loss, "surface_factor": factor,
            "containers": [{ "size": "0.75 l", "price": 20 }, { "size": "2.5 l", "price": 55 }],
            "layers": [{ "product": "primer", "coats": 1, "loss_percent": loss,
                "film": { "dry": format!("{dry} um"), "solids_percent": solids, "thinner_percent": thinner },
                "containers": [{ "size": "0.5 l" }] }] })));
        let area = length * width * factor;
        prop_assert!((got["coated_area_m2"].as_f64().unwrap() - area).abs() < 1e-9);
        prop_assert!(balance(&got, area, f64::from(coats), loss), "{got}");
        prop_assert!(balance(&got["layers"][0], area, 1.0, loss), "{got}");
        prop_assert!((got["layers"][0]["wet_film_um"].as_f64().unwrap() * solids / 100.0
            - dry * (1.0 + thinner / 100.0)).abs() < 1e-6);
    }
}

/// Boards of a boards sheet, on one face: their lengths times the width that is given, or as laid.
#[test]
fn boards_taken_from_their_sheet() {
    let boards = json!({ "run": "3 m", "field": "1 m", "coverage": "100 mm", "stock": [{ "length": "4 m" }],
        "kerf": "3 mm", "start": "full", "end_gap": "0 mm", "side_gap": "0 mm", "joint_price": 100000 });
    let body = json!({ "length": "3 m", "width": "1 m", "height": "2 m", "rib_width": "40 mm",
        "ribs": { "even": { "count": 7, "first": "0.1 m", "spacing": "0.45 m" } } });
    let got = |row: Json| {
        let coating = with(json!({ "areas": null, "boards": [row] }));
        let file = json!({ "battenbook": 1, "units": "metric", "body": body, "sheets": [
            { "id": "c", "kind": "coating", "inputs": coating }, { "id": "b", "kind": "boards", "inputs": boards }] });
        let all = calc::evaluate(&calc::project::Project::from_text(&file.to_string()).unwrap());
        all.sheet("c")
            .unwrap()
            .as_ref()
            .map(|report| Json::from(&report.outcome))
            .map_err(|faults| faults.iter().map(|fault| fault.field.clone()).collect::<Vec<_>>())
    };
    let face = json!({ "sheet": "b", "thickness": "10 mm", "faces": 1, "edges": 0, "ends": 0 });
    close(&got(face.clone()).unwrap()["area_m2"], 3.0, 1e-9);
    let mut wider = face.clone();
    wider["width"] = json!("110 mm");
    close(&got(wider).unwrap()["area_m2"], 3.3, 1e-9);
    // Both faces, both edges, both ends of ten boards.
    let all = json!({ "sheet": "b", "thickness": "10 mm" });
    let by_hand = 10.0 * 2.0 * (3.0 * 0.1 + 3.0 * 0.01 + 0.1 * 0.01);
    close(&got(all).unwrap()["area_m2"], by_hand, 1e-9);
    let mut both = face;
    both["length"] = json!("1 m");
    assert_eq!(got(both).unwrap_err(), ["boards.0.length"]);
    assert_eq!(
        got(json!({ "thickness": "10 mm" })).unwrap_err(),
        ["boards.0.length", "boards.0.width"]
    );
}

/// The same label in all the units that labels use: 400 ft²/gal are 100 ft²/qt, 50 ft²/pt, 9.817 m²/l.
#[test]
fn spread_rates_in_any_usual_unit() {
    for rate in [
        "400 ft2/gal",
        "400 ft²/gal",
        "400 sq ft/gal",
        "100 ft2/qt",
        "100 sq ft/quart",
        "50 ft²/pt",
        "9.8170 m2/l",
        "9.8170 m²/L",
    ] {
        let got = outcome("coating", &with(json!({ "spread_rate": rate })));
        close(&got["wet_film_um"], 101.86, 0.02);
    }
}
