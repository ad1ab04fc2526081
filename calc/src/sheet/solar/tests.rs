//! Textbook and code examples, through the whole sheet.

use crate::testing::{faulty_fields, measured, number, solved, solved_in};
use serde_json::{Value as Json, json};

fn flat(latitude: &str, clearness: Json) -> Json {
    json!({ "latitude": latitude, "clearness": clearness, "panels": { "count": 2, "watts": "100 W" }, "loss_percent": 14.08 })
}

fn close(found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() < within, "{found} is not {wanted}");
}

// Duffie & Beckman: Madison, 43° north, June mean of 23 MJ/m² on the level; clearness 23 / 41.776. Example 1.10.1: 33.8
// MJ/m² outside the atmosphere on 15 April, which is the month's mean day.
#[test]
fn duffie_beckman_madison() {
    let result = solved("solar", flat("43 deg", json!(0.5505)));
    close(number(&result, "months.5.h_mj_m2"), 23.0, 0.05);
    close(number(&result, "months.3.h0_mj_m2"), 33.8, 0.05);
}

// FAO-56, annex 2, table 2.6, on the 15th of each month; the mean days differ by a few, so within 0.4 MJ/m².
#[test]
fn fao_56_table_2_6() {
    for (latitude, row) in [
        (30, [21.1, 25.8, 31.4, 36.8, 40.0, 41.2, 40.6, 38.1, 33.4, 27.6, 22.2, 19.8]),
        (40, [15.0, 20.4, 27.2, 34.7, 39.7, 41.9, 40.8, 36.7, 30.0, 22.5, 16.3, 13.6]),
        (50, [8.9, 14.4, 22.2, 31.5, 38.5, 41.7, 40.2, 34.4, 25.7, 16.9, 10.2, 7.5]),
    ] {
        let result = solved("solar", flat(&format!("{latitude} deg"), json!("0.5")));
        for (month, wanted) in row.into_iter().enumerate() {
            close(number(&result, &format!("months.{month}.h0_mj_m2")), wanted, 0.4);
        }
    }
}

// Plain arithmetic: December at 40° north, clearness 0.45: 6.192 MJ/m² or 1.720 h of full sun, on 200 W less 14.08 %.
#[test]
fn a_flat_panel_yields_its_hours_of_full_sun() {
    for clearness in [json!(0.45), json!("0.45"), json!([0.45]), json!(vec![0.45; 12])] {
        let result = solved("solar", flat("40 deg", clearness));
        close(number(&result, "months.11.h_mj_m2"), 6.192, 0.003);
        let level = number(&result, "months.11.h_mj_m2");
        close(number(&result, "months.11.wh_day"), level / 3.6 * 200.0 * 0.8592, 1e-9);
    }
}

#[test]
fn tilting_helps_in_winter_and_the_south_mirrors_the_north() {
    let mut inputs = flat("45 deg", json!(0.5));
    let level = solved("solar", inputs.clone());
    inputs["tilt"] = json!("60 deg");
    let tilted = solved("solar", inputs.clone());
    let december = |result| number(result, "months.11.wh_day");
    assert!(december(&tilted) > 1.5 * december(&level));
    // The level's own radiation stays the level's.
    assert_eq!(number(&tilted, "months.11.h_mj_m2"), number(&level, "months.11.h_mj_m2"));
    inputs["latitude"] = json!("-45 deg");
    let south = solved("solar", inputs);
    assert!(number(&south, "months.5.wh_day") < number(&south, "months.11.wh_day"));
}

// NEC 690.7(A)(1), published worked example as transcribed: 49.5 V, -0.27 %/°C, -10 °C: 54.18 V, 11 in series within
// 600 V. Table 690.7(A): 1.14 at -10 °C, so two of 22.5 V make 51.3 V.
#[test]
fn nec_690_7_cold_strings() {
    let string = |panels: Json, controller: &str| {
        let mut inputs = flat("43 deg", json!(0.5));
        inputs["panels"] = panels;
        inputs["coldest"] = json!("-10 C");
        inputs["controller_voltage"] = json!(controller);
        solved("solar", inputs)
    };
    let maker = |series: u32| json!({ "count": 12, "watts": 300, "voc": "49.5 V", "voc_per_c_percent": -0.27, "in_series": series });
    let eleven = string(maker(11), "600 V");
    close(number(&eleven, "cold_voc_v"), 54.177_75, 1e-9);
    assert_eq!(number(&eleven, "most_in_series"), 11.0);
    assert_eq!(eleven.unwrap().outcome.get("within_controller"), Some(&true.into()));
    let twelve = string(maker(12), "600 V").unwrap();
    assert_eq!(twelve.outcome.get("within_controller"), Some(&false.into()));
    let table =
        string(json!({ "count": 2, "watts": 100, "voc": "22.5 V", "in_series": 2 }), "50 V");
    close(number(&table, "string_v"), 51.3, 1e-9);
}

#[test]
fn short_months_are_told_with_what_closes_the_gap() {
    let mut inputs = flat("50 deg", json!(0.4));
    inputs["need"] = json!("500 Wh");
    let report = solved("solar", inputs).unwrap();
    let warning = &report.remarks[0].text;
    assert!(warning.contains("December") && !warning.contains("June"), "{warning}");
    assert!(warning.contains("driving or shore power"), "{warning}");
}

#[test]
fn faults_name_their_fields() {
    let result = solved(
        "solar",
        json!({ "latitude": "91 deg", "clearness": [0.5, 0.6], "panels": { "count": 2, "watts": 0, "voc_per_c_percent": 0.3 },
            "loss_percent": 100, "sheet": "none" }),
    );
    assert_eq!(
        faulty_fields(&result),
        [
            "latitude",
            "panels.watts",
            "loss_percent",
            "clearness",
            "panels.voc_per_c_percent",
            "sheet"
        ]
    );
    let many = json!({ "count": 2, "watts": 100, "in_series": 3 });
    let mut inputs = flat("43 deg", json!(0.9));
    assert_eq!(faulty_fields(&solved("solar", inputs.clone())), ["clearness"]);
    inputs["clearness"] = json!(0.5);
    inputs["panels"] = many;
    assert_eq!(faulty_fields(&solved("solar", inputs.clone())), ["panels.in_series"]);
    inputs["panels"] = json!({ "count": 2, "watts": 100, "voc": "22 V" });
    inputs["coldest"] = json!("-45 C");
    assert_eq!(faulty_fields(&solved("solar", inputs)), ["coldest"]);
}

// Counted by hand on 5480 x 2060 mm with a hatch at 2200, 780 of 600 x 500 mm: left of a walkway of 350 mm down the
// middle, 50 to 855 mm, four of 1190 x 540 mm in the 5380 mm that no hatch reaches into, and as many on the right.
#[test]
fn panels_lie_around_the_openings() {
    let mut inputs = flat("43 deg", json!(0.5));
    inputs["roof"] = json!({ "panel_length": "1190 mm", "panel_width": "540 mm", "walkway": "350 mm",
        "walkway_side": "middle" });
    let result = solved_in(measured(), "solar", inputs.clone());
    let fits = number(&result, "roof_fits");
    assert!(fits >= 8.0 && fits <= number(&result, "roof_bound"), "{fits}");
    let report = result.as_ref().unwrap();
    assert!(report.drawings.len() == 2 && report.from_body.len() == 2);
    assert!(report.remarks.iter().any(|r| r.text.contains("takes 8")
        || r.text.contains("takes 9")
        || r.text.contains("takes 1")));
    inputs["panels"]["count"] = json!(40);
    let many = solved_in(measured(), "solar", inputs.clone()).unwrap();
    assert!(many.remarks[0].text.contains("of the 40 panels"), "{:?}", many.remarks);
    inputs["roof"]["walkway"] = json!("2060 mm");
    assert_eq!(faulty_fields(&solved_in(measured(), "solar", inputs)), ["roof.walkway"]);
}

// Plain arithmetic of the gap: what lacks, the panels that cover it, days that a full battery makes up for it.
#[test]
fn what_closes_the_gap_adds_up() {
    let mut inputs = flat("50 deg", json!(0.4));
    inputs["sheet"] = json!("energy");
    let result = solved_in(measured(), "solar", inputs.clone());
    let energy = solved_in(
        measured(),
        "energy",
        serde_json::from_str(crate::sheet::energy::SHEET.example).unwrap(),
    );
    let need = number(&energy, "wh_day");
    close(number(&result, "need_wh_day"), need, 1e-9);
    let short = result.as_ref().unwrap().outcome.list("short").len();
    let last = format!("short.{}", short - 1);
    assert_eq!(number(&result, &format!("{last}.month")), 12.0);
    let brings = number(&result, "months.11.wh_day");
    let lacks = number(&result, &format!("{last}.lacks_wh_day"));
    close(lacks, need - brings, 1e-9);
    let panels = number(&result, &format!("{last}.panels"));
    assert!(panels * brings / 2.0 >= need && (panels - 1.0) * brings / 2.0 < need);
    let bridge = number(&result, &format!("{last}.bridge_days"));
    close(bridge, 200.0 * 12.8 * 0.8 * 0.95 / lacks, 1e-9);
    // The strongest charger is the 384 W while driving.
    close(number(&result, &format!("{last}.charge_h_day")), lacks / (384.0 * 0.95 * 0.95), 1e-9);
    // The tilt that helps most brings what the sheet itself says of it.
    let tilt = number(&result, &format!("{last}.tilt_deg"));
    inputs["tilt"] = json!(format!("{tilt} deg"));
    let tilted = solved_in(measured(), "solar", inputs);
    close(
        number(&tilted, "months.11.wh_day"),
        number(&result, &format!("{last}.tilted_wh_day")),
        1e-9,
    );
}

fn array(panels: Json, more: &[(&str, Json)]) -> crate::project::SheetResult {
    let mut inputs = flat("43 deg", json!(0.5));
    inputs["panels"] = panels;
    for (key, value) in more {
        inputs[*key] = value.clone();
    }
    solved("solar", inputs)
}

fn said(result: &crate::project::SheetResult) -> String {
    result.as_ref().unwrap().remarks.iter().map(|r| format!("{}\n", r.text)).collect()
}

// Three strings of 7 A: 1.5625 · 7 = 10.94 A, so 12 A, which 15 A of the panel allow and 10 A do not; -20 °C makes
// 22.5 V · 1.18 = 26.55 V by NEC table 690.7(A). Plain arithmetic for the rest: 1.25 · 7 · 3 = 26.25 A, 360 / 12.8 =
// 28.1 A, 18.5 V · (1 - 0.0045 · 45) = 14.75 V against 14.6 + 5 V.
#[test]
fn three_strings_have_a_fuse_each_and_a_controller_that_takes_them() {
    let panels = |most: &str| json!({ "count": 3, "watts": 120, "voc": "22.5 V", "isc": "7 A", "vmp": "18.5 V", "max_series_fuse": most });
    let more = [
        ("coldest", json!("-20 C")),
        ("controller_voltage", json!("75 V")),
        ("controller_amps", json!("20 A")),
        ("controller_input_amps", json!("25 A")),
        ("battery_voltage", json!("12.8 V")),
    ];
    let found = array(panels("15 A"), &more);
    assert_eq!(number(&found, "string_fuse_a"), 12.0);
    assert!((number(&found, "string_fuse_volts_least") - 26.55).abs() < 1e-9);
    let text = said(&found);
    for part in [
        "can bring 26.2 A",
        "take 25 A",
        "can bring 28.1 A",
        "gives 20 A",
        "Hot panels bring 14.75 V",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let fuse = &found.as_ref().unwrap().buy[1];
    assert!(fuse.quantity == 3.0 && fuse.spec.contains("12 A gPV, 27 V"), "{fuse:?}");
    let small = array(panels("10 A"), &more);
    assert!(
        said(&small).contains("Not shown: it would be 10.9 A or more, and the panel allows 10 A")
    );
    assert_eq!(small.unwrap().buy.len(), 1);
    // Two strings need none; what is missing is asked for.
    let bare = array(json!({ "count": 2, "watts": 120 }), &[]);
    assert!(said(&bare).contains("Not shown: whether the controller takes"), "{}", said(&bare));
    let three = array(json!({ "count": 3, "watts": 120 }), &[]);
    assert!(said(&three).contains("3 strings in parallel need a fuse each. Not shown: enter"));
}

#[test]
fn fifty_volts_in_the_cold_are_refused() {
    let panels = json!({ "count": 6, "watts": 120, "voc": "22.5 V", "isc": "7 A", "max_series_fuse": "15 A", "in_series": 2 });
    let found = array(panels, &[("coldest", json!("-20 C"))]);
    assert!(said(&found).contains("from 50 V on it can kill"), "{}", said(&found));
    assert!(found.unwrap().outcome.get("string_fuse_a").is_none());
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(48))]

    #[test]
    fn no_string_fuse_above_the_panels_own(
        count in 1_u32..20, series in 1_u32..4, isc in 0.5..20.0_f64, most in 1.0..40.0_f64, voc in 5.0..60.0_f64,
    ) {
        let series = series.min(count);
        let panels = json!({ "count": count, "watts": 100, "voc": format!("{voc} V"), "isc": format!("{isc} A"),
            "max_series_fuse": format!("{most} A"), "in_series": series });
        let report = array(panels, &[("coldest", json!("-10 C"))]).unwrap();
        if let Some(fuse) = report.outcome.number("string_fuse_a") {
            proptest::prop_assert!(fuse <= most + 1e-9 && fuse >= 1.5625 * isc - 1e-6);
            proptest::prop_assert!(count.div_ceil(series) >= 3);
            let cold = report.outcome.number("string_v").unwrap();
            proptest::prop_assert!(report.outcome.number("string_fuse_volts_least").unwrap() >= cold - 1e-9 && cold < 50.0);
        }
    }
}
