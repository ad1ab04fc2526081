//! The gap-filling sheet.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{close, faulty, outcome, report};

/// One gap of 100 mm × 10 mm × 10 mm: 10 ml.
fn with(changes: Json) -> Json {
    let gap = json!({ "label": "joint", "count": 1, "length": "100 mm", "width": "10 mm", "depth": "10 mm" });
    let mut inputs =
        json!({ "gaps": [gap], "mix": { "by": "volume", "a": 2, "b": 1 }, "loss_percent": 0 });
    for (key, value) in changes.as_object().unwrap() {
        inputs[key] = value.clone();
    }
    inputs
}

fn number(got: &Json) -> f64 {
    got.as_f64().unwrap()
}

/// By hand: a gap of 3 × 18 × 2400 mm is 129.6 ml, a hole of Ø 10 × 18 mm 1.414 ml, of Ø 1/2 × 3/4 in
/// 2.413 ml; a cone of Ø 9 to 3 mm, 4 mm deep, 0.1225 ml.
#[test]
fn volumes_by_hand() {
    let gap = json!([{ "count": 2, "length": "2400 mm", "width": "3 mm", "depth": "18 mm" }]);
    close(&outcome("gap_fill", &with(json!({ "gaps": gap })))["volume_l"], 0.2592, 1e-12);
    let hole = |hole: Json| {
        outcome("gap_fill", &with(json!({ "gaps": null, "holes": [hole] })))["volume_l"].clone()
    };
    close(&hole(json!({ "count": 1, "diameter": "10 mm", "depth": "18 mm" })), 1.414e-3, 5e-7);
    close(&hole(json!({ "count": 10, "diameter": "1/2 in", "depth": "3/4 in" })), 24.13e-3, 5e-6);
    let cone =
        json!({ "diameter": "9 mm", "bottom": "3 mm", "depth": "4 mm", "shape": "countersunk" });
    close(&hole(cone), std::f64::consts::PI / 12.0 * 4.0 * (81.0 + 27.0 + 9.0) * 1e-6, 1e-12);
    let plug = json!({ "diameter": "20 mm", "depth": "18 mm", "shape": "plugged",
        "plug_diameter": "20 mm", "plug_length": "12 mm" });
    close(&hole(plug), std::f64::consts::PI / 4.0 * 400.0 * 6.0 * 1e-6, 1e-12);
}

#[test]
fn shrinkage_and_loss_by_the_contract() {
    let got = outcome(
        "gap_fill",
        &with(json!({ "shrink_percent": 20, "loss_percent": 10, "passes": 3 })),
    );
    close(&got["volume_l"], 0.01 / 0.8 / 0.9, 1e-12);
    assert_eq!(got["batches"].as_array().unwrap().len(), 3);
    assert_eq!(got["batches"][0]["count"], 1);
}

/// By hand: 34.5 ml at 5 : 1 are 28.75 and 5.75 ml.
#[test]
fn five_to_one_by_hand() {
    let got = outcome(
        "gap_fill",
        &with(json!({ "gaps": [{ "length": "345 mm", "width": "10 mm", "depth": "10 mm" }],
            "mix": { "by": "volume", "a": 5, "b": 1 } })),
    );
    close(&got["part_a_l"], 28.75e-3, 1e-12);
    close(&got["part_b_l"], 5.75e-3, 1e-12);
    assert!(got.get("part_a_kg").is_none() && got.get("pot_life_min").is_none());
}

/// Epoxy makers' data sheets: 2 : 1 by volume is 100 : 47 by mass, where b has 0.940 of a's density; 3 : 1
/// is 3.5 : 1 with 0.857.
#[test]
fn makers_ratios_by_mass_and_by_volume() {
    for (by_mass, by_volume, density_b) in [([100.0, 47.0], 2.0, 1.034), ([3.5, 1.0], 3.0, 0.9427)]
    {
        let [a, b] = by_mass;
        let mix = json!({ "by": "mass", "a": a, "b": b, "density_a": "1.1 kg/l", "density_b": format!("{density_b} kg/l") });
        let got = outcome("gap_fill", &with(json!({ "mix": mix })));
        close(&json!(number(&got["part_a_l"]) / number(&got["part_b_l"])), by_volume, 0.005);
        close(&json!(number(&got["part_a_kg"]) / number(&got["part_b_kg"])), a / b, 1e-9);
    }
}

/// Makers' texts: pot life halves for each 10 °C (18 °F) warmer: 20 min at 25 °C are 40 at 15, 28.3 at 20,
/// 14.1 at 30, 10 at 35.
#[test]
fn pot_life_rule_of_makers_texts() {
    for (t, life) in [(15, 40.0), (20, 28.3), (25, 20.0), (30, 14.1), (35, 10.0)] {
        let got = outcome(
            "gap_fill",
            &with(
                json!({ "pot_life": { "time": "20 min", "at": "25 C" }, "temperature": format!("{t} C") }),
            ),
        );
        close(&got["pot_life_min"], life, 0.05);
    }
    let got = outcome("gap_fill", &with(json!({ "pot_life": { "time": "20 min", "at": "77 F" } })));
    close(&got["pot_life_min"], 20.0, 1e-9);
}

#[test]
fn batches_keep_to_the_limit_and_to_what_is_poured_in_time() {
    // 10 ml by 4 ml: three of a third each.
    let got = outcome("gap_fill", &with(json!({ "batch_limit": "4 ml" })));
    assert_eq!(got["batches"][0]["count"], 3);
    close(&got["batches"][0]["part_a_l"], 0.01 / 3.0 * 2.0 / 3.0, 1e-12);
    // 1 ml/min for 20 min at 25 °C, at 35 °C 10 min: 10 ml at once; a hair colder is enough, too.
    let pour = |limit: &str| {
        with(json!({ "pot_life": { "time": "20 min", "at": "25 C" }, "temperature": "35 C",
            "pour_rate": "1 ml/min", "batch_limit": limit }))
    };
    assert_eq!(outcome("gap_fill", &pour("1 l"))["batches"][0]["count"], 1);
    assert_eq!(outcome("gap_fill", &pour("2 ml"))["batches"][0]["count"], 5);
    // 0.1 + 0.2 l with 10 % loss against batches of 0.1 l / 0.9: three, not four.
    let gaps = json!([
        { "length": "1 m", "width": "10 mm", "depth": "10 mm" },
        { "length": "2 m", "width": "10 mm", "depth": "10 mm" } ]);
    let got = outcome(
        "gap_fill",
        &with(json!({ "gaps": gaps, "loss_percent": 10, "batch_limit": "111.11111111111111 ml" })),
    );
    assert_eq!(got["batches"][0]["count"], 3);
}

#[test]
fn kits_and_bottles() {
    let got = outcome(
        "gap_fill",
        &with(json!({ "gaps": [{ "length": "2 m", "width": "100 mm", "depth": "10 mm" }],
            "containers": [{ "part": "kit", "size": "1.5 l", "price": 80 },
                { "part": "a", "size": "0.5 l", "price": 30 }, { "part": "b", "size": "0.25 l", "price": 20 }] })),
    );
    // Two kits would cost 160, bottles alone 150.
    close(&got["cost"], 130.0, 1e-12);
    assert_eq!(got["containers"].as_array().unwrap().len(), 3);
    close(&got["left_over_a_l"], 1.0 + 0.5 - 4.0 / 3.0, 1e-9);
}

#[test]
fn faults_name_their_fields() {
    let mix = |mix: Json| with(json!({ "mix": mix }));
    assert_eq!(
        faulty("gap_fill", &mix(json!({ "by": "mass", "a": 2, "b": 1 }))),
        ["mix.density_a"]
    );
    assert_eq!(
        faulty("gap_fill", &mix(json!({ "by": "mass", "a": 2, "b": 1, "density_a": "1.1 kg/l" }))),
        ["mix.density_b"]
    );
    assert_eq!(
        faulty("gap_fill", &mix(json!({ "by": "weight", "a": 2, "b": 0 }))),
        ["mix.by", "mix.b"]
    );
    assert_eq!(faulty("gap_fill", &with(json!({ "mix": null })))[0], "mix");
    assert_eq!(faulty("gap_fill", &with(json!({ "gaps": [] }))), ["gaps"]);
    assert_eq!(
        faulty("gap_fill", &with(json!({ "gaps": [{ "length": "1 m", "width": "3 mm" }] }))),
        ["gaps.0.depth"]
    );
    let plug = json!([{ "diameter": "20 mm", "depth": "18 mm", "shape": "plugged", "plug_diameter": "21 mm" }]);
    assert_eq!(
        faulty("gap_fill", &with(json!({ "holes": plug }))),
        ["holes.0.plug_length", "holes.0.plug_diameter"]
    );
    assert_eq!(
        faulty("gap_fill", &with(json!({ "pot_life": { "time": "20 min" } }))),
        ["pot_life.at"]
    );
    assert_eq!(
        faulty("gap_fill", &with(json!({ "containers": [{ "part": "a", "size": "1 l" }] }))),
        ["containers"]
    );
    assert_eq!(
        faulty("gap_fill", &with(json!({ "containers": [{ "size": "1 l" }] }))),
        ["containers.0.part"]
    );
    let huge = json!([{ "count": 9000, "length": "90 m", "width": "0.9 m", "depth": "0.9 m" }]);
    assert_eq!(faulty("gap_fill", &with(json!({ "gaps": huge }))), ["gaps"]);
    let much = json!([{ "length": "50 m", "width": "0.5 m", "depth": "0.5 m" }]);
    assert_eq!(
        faulty("gap_fill", &with(json!({ "gaps": much, "batch_limit": "3 ml" }))),
        ["batch_limit"]
    );
}

/// A cylinder by hand: 10 ml in a cup 20 mm across stand 31.83 mm high; 2 : 1 puts part a at two thirds.
/// Each mark says what to pour and the level after it.
#[test]
fn cup_marks_as_heights() {
    let report = report("gap_fill", &with(json!({ "cup_diameter": "20 mm" })), "metric").unwrap();
    let marks = &report.marks[0].marks;
    close(&json!(marks[1].at.value), 0.031_831, 1e-6);
    close(&json!(marks[0].at.value), 0.031_831 * 2.0 / 3.0, 1e-6);
    let words = |index: usize| format!("{}; {}", marks[index].label, marks[index].note);
    assert_eq!(words(0), "pour 6.7 ml part A; level 6.7 ml");
    assert_eq!(words(1), "then 3.4 ml part B; level 10.1 ml");
}

/// 180 ml at 2 : 1 into one cup: 120 ml, then 60 ml, and the cup stands at 180.
#[test]
fn what_to_pour_and_the_level_after_it() {
    let gap = json!([{ "length": "1.8 m", "width": "10 mm", "depth": "10 mm" }]);
    let inputs = with(json!({ "gaps": gap, "batch_limit": "200 ml" }));
    let got = report("gap_fill", &inputs, "metric").unwrap();
    assert_eq!(got.drawings[0].words, "pour 120 ml A; level 120 ml, then 60 ml B; level 180 ml.");
    assert_eq!(got.tables[0].rows[0].cells[1..], ["120 ml", "120 ml", "60 ml", "180 ml"]);
}

/// Without a label's limit no cup holds more than 100 g, told for 400 °F by Gougeon Brothers: 330 g in
/// four cups of 82.5 g; of unknown density 300 ml in four cups of 75 ml. The batches stay as they are.
#[test]
fn a_large_batch_goes_into_several_cups() {
    let gap = json!([{ "length": "1 m", "width": "10 mm", "depth": "30 mm" }]);
    let known = json!({ "a": 2, "b": 1, "density_a": "1.1 kg/l", "density_b": "1.1 kg/l" });
    for (mix, litres) in [(known, 0.3 / 4.0), (json!({ "a": 2, "b": 1 }), 0.3 / 4.0)] {
        let got = outcome("gap_fill", &with(json!({ "gaps": gap, "mix": mix })));
        assert_eq!(got["batches"][0]["count"], 1);
        assert_eq!(got["cups"], 4);
        close(&json!(number(&got["cup_part_a_l"]) + number(&got["cup_part_b_l"])), litres, 1e-12);
        let limited =
            outcome("gap_fill", &with(json!({ "gaps": gap, "mix": mix, "batch_limit": "300 ml" })));
        assert_eq!(limited["cups"], 1);
    }
}

/// By hand: four gaps of 2 m, two of them closed below, and ten holes of 10 mm: 4 m + 10 · 60 mm below,
/// 16 m along the edges; a plug for each plugged hole, a cup and a stick for each batch.
#[test]
fn what_it_takes_beside_the_filler() {
    let gap = json!({ "count": 2, "length": "2 m", "width": "3 mm", "depth": "10 mm" });
    let mut closed = gap.clone();
    closed["open_below"] = json!(false);
    let inputs = with(json!({ "gaps": [gap, closed], "batch_limit": "60 ml", "holes": [
        { "count": 10, "diameter": "10 mm", "depth": "18 mm" },
        { "count": 7, "diameter": "9 mm", "depth": "4 mm", "shape": "countersunk" },
        { "count": 12, "diameter": "20 mm", "depth": "18 mm", "shape": "plugged", "open_below": false,
            "plug_diameter": "19 mm", "plug_length": "12 mm" } ] }));
    let got = outcome("gap_fill", &inputs);
    close(&got["tape_below_m"], 4.6, 1e-12);
    close(&got["masking_tape_m"], 16.0, 1e-12);
    let report = report("gap_fill", &inputs, "metric").unwrap();
    let quantity = |item: &str| {
        let line = report.buy.iter().find(|line| line.item.starts_with(item));
        line.map(|line| (line.quantity, line.unit))
    };
    assert_eq!(quantity("wood plug"), Some((12.0, "each")));
    assert_eq!(quantity("tape to close"), Some((5.0, "m")));
    assert_eq!(quantity("masking tape"), Some((16.0, "m")));
    let batches = got["batches"][0]["count"].as_f64().unwrap();
    assert_eq!(quantity("mixing cup"), Some((batches, "each")));
    assert_eq!(quantity("mixing stick"), Some((batches, "each")));
}

/// Left out, the loss is the usual one and said; typed 0 is 0.
#[test]
fn loss_is_never_silently_zero() {
    let net = 0.01;
    close(
        &outcome("gap_fill", &with(json!({ "loss_percent": null })))["volume_l"],
        net / 0.9,
        1e-12,
    );
    close(&outcome("gap_fill", &with(json!({})))["volume_l"], net, 1e-12);
    let report = report("gap_fill", &with(json!({ "loss_percent": null })), "metric").unwrap();
    assert!(
        report
            .remarks
            .iter()
            .any(|remark| remark.text.contains("No waste allowance is entered, so 10 %"))
    );
}

/// USDA Wood Handbook FPL-GTR-190, equation 13-2 and table 13-5: flat-sawn red oak, 100 mm wide, from 6
/// to 14 % moisture: 100 · 0.00369 · 8 = 2.95 mm.
#[test]
fn rigid_filler_between_boards_warns_with_the_swing() {
    let inputs = with(json!({ "wood": { "species": "oak, red", "board_width": "100 mm" } }));
    close(&outcome("gap_fill", &inputs)["joint_swing_mm"], 2.952, 1e-9);
    let report = report("gap_fill", &inputs, "metric").unwrap();
    assert!(report.remarks.iter().any(|remark| remark.text.contains("2.95 mm")));
    assert_eq!(
        faulty("gap_fill", &with(json!({ "wood": { "species": "balsa", "board_width": "9 cm" } }))),
        ["wood.species"]
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// The parts of all batches add up to what is needed, and no batch exceeds a limit.
    #[test]
    fn mass_balance(
        length in 1.0..5000.0,
        width in 0.5..20.0,
        passes in 1..4_u32,
        a in 0.5..10.0_f64,
        limit in 20.0..500.0,
        rate in 5.0..100.0,
        t in 5.0..35.0,
        loss in 0.0..50.0,
    ) {
        let got = outcome("gap_fill", &with(json!({
            "gaps": [{ "length": format!("{length} mm"), "width": format!("{width} mm"), "depth": "18 mm" }],
            "passes": passes, "loss_percent": loss, "mix": { "by": "volume", "a": a, "b": 1 },
            "pot_life": { "time": "25 min", "at": "25 C" }, "temperature": format!("{t} C"),
            "pour_rate": format!("{rate} ml/min"), "batch_limit": format!("{limit} ml") })));
        let whole = number(&got["volume_l"]);
        let expected: f64 = length * width * 18.0e-6 / (1.0 - loss / 100.0);
        prop_assert!((whole - expected).abs() < 1e-9);
        let mut sum = 0.0_f64;
        for pass in got["batches"].as_array().unwrap() {
            let batch = number(&pass["part_a_l"]) + number(&pass["part_b_l"]);
            prop_assert!(batch <= limit / 1e3 * (1.0 + 1e-8));
            prop_assert!(batch <= rate / 1e3 * number(&got["pot_life_min"]) * (1.0 + 1e-8));
            sum += batch * number(&pass["count"]);
        }
        prop_assert!((sum - whole).abs() < 1e-9 * (1.0 + whole));
        prop_assert!((number(&got["part_a_l"]) - a * number(&got["part_b_l"])).abs() < 1e-9 * (1.0 + whole));
    }
}
