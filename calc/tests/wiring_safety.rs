//! Nothing unsafe leaves the wiring sheets: random runs and trees, from typed text to outcome, held
//! against the published tables.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

mod tables;

use calc::fault::Fault;
use calc::outcome::Value;
use calc::project::Project;
use calc::report::Report;
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value as Json, json};
use tables::{Lies, WIRES, limits};

fn lies() -> impl Strategy<Value = Lies> {
    (any::<bool>(), 1u32..9, 10.0..55.0f64, any::<bool>(), any::<bool>())
}

fn enter(inputs: &mut Json, (is_105, bundled, air_c, in_insulation, in_jacket): Lies) {
    if is_105 {
        inputs["insulation"] = json!("105 C");
    }
    inputs["bundled"] = json!(bundled);
    inputs["air_temperature"] = json!(format!("{air_c} C"));
    inputs["in_insulation"] = json!(in_insulation);
    inputs["in_jacket"] = json!(in_jacket);
}

fn evaluate(kind: &str, inputs: &Json) -> Result<Report, Vec<Fault>> {
    let file = json!({ "battenbook": 1, "id": "p", "units": "metric",
        "sheets": [{ "id": "s", "kind": kind, "title": "", "inputs": inputs }] });
    let project = Project::from_text(&file.to_string()).unwrap();
    calc::evaluate(&project).sheet("s").unwrap().clone()
}

fn text(report: &Report, path: &str) -> String {
    match report.outcome.get(path) {
        Some(Value::Text(text)) => text.clone(),
        other => panic!("{path}: {other:?}"),
    }
}

/// Nominal voltages with the voltage that batteries of each are charged to.
const SYSTEMS: [(f64, f64); 6] =
    [(12.0, 14.4), (12.8, 14.6), (24.0, 28.8), (25.6, 29.2), (38.4, 43.8), (51.2, 58.4)];

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn one_run(
        system in 0usize..6, lies in lies(), watts in 1.0..2500.0f64, metres in 0.1..6.0f64,
        wire in prop::option::of(0usize..31), low in prop::option::of(0.75..1.0f64),
        is_metric in any::<bool>(), limit in 2.0..15.0f64,
    ) {
        let (source_v, charging_v) = SYSTEMS[system];
        let conductor = match wire {
            Some(wire) => WIRES[wire].0,
            None if is_metric => "auto mm2",
            None => "auto",
        };
        let mut inputs = json!({ "source_voltage": format!("{source_v} V"),
            "power": format!("{watts} W"), "length": format!("{metres} m"),
            "conductor": conductor, "drop_limit_percent": limit });
        if let Some(low) = low {
            inputs["low_voltage"] = json!(format!("{} V", low * source_v));
        }
        enter(&mut inputs, lies);
        let Ok(report) = evaluate("voltage_drop", &inputs) else { return Ok(()) };
        let chosen = text(&report, "conductor");
        let (carries_a, fuse_limit_a) = limits(&chosen, lies);
        let Some(fuse_a) = report.outcome.number("fuse_a") else {
            prop_assert!(report.buy.is_empty() && report.drawings.is_empty(), "{}", inputs);
            prop_assert!(!report.faults.is_empty(), "{}", inputs);
            return Ok(());
        };
        prop_assert!(report.faults.is_empty(), "{}", inputs);
        prop_assert!(fuse_a <= fuse_limit_a, "{} {} {}", chosen, fuse_a, inputs);
        // The load draws P / V, and V is no more than the lowest voltage.
        let least_a = watts / (source_v * low.unwrap_or(1.0));
        prop_assert!(carries_a >= least_a && fuse_a >= 1.25 * least_a * (1.0 - 1e-9));
        prop_assert!(report.outcome.number("fuse_volts_least").unwrap() >= charging_v);
        if wire.is_none() && !lies.4 {
            prop_assert!(!["18 AWG", "0.75 mm2", "0.5 mm2"].contains(&chosen.as_str()), "{}", inputs);
        }
    }

    #[test]
    fn trees(
        system in 0usize..6, lies in lies(), low in prop::option::of(0.8..1.0f64),
        runs in prop::collection::vec(
            (any::<Index>(), 0.2..3.0f64, prop::option::weighted(0.4, 0usize..31), prop::bool::weighted(0.3),
                prop::option::weighted(0.3, 0.5..20.0f64), prop::bool::weighted(0.2), prop::option::of(1.0..150.0f64)),
            1..6,
        ),
    ) {
        let (source_v, charging_v) = SYSTEMS[system];
        let name = |node: usize| if node == 0 { "source".to_owned() } else { format!("n{node}") };
        let from: Vec<usize> = runs.iter().enumerate().map(|(i, run)| run.0.index(i + 1)).collect();
        let is_block = |node: usize| node > 0 && runs[node - 1].3;
        let (mut typed, mut loads) = (Vec::new(), Vec::new());
        for (i, (_, metres, wire, block, device, own, watts)) in runs.iter().enumerate() {
            let wire = wire.map_or("auto", |wire| WIRES[wire].0);
            let mut run = json!({ "id": format!("r{i}"), "from": name(from[i]), "to": name(i + 1),
                "length": format!("{metres} m"), "conductor": wire, "fuse_block": block });
            if let Some(device) = device {
                run["device_rating"] = json!(format!("{device} A"));
                run["protects_itself"] = json!(own);
            }
            typed.push(run);
            if let Some(watts) = watts.filter(|_| !block) {
                loads.push(json!({ "at": name(i + 1), "label": "", "model": "power",
                    "value": format!("{watts} W") }));
            }
        }
        let mut inputs = json!({ "source_voltage": format!("{source_v} V"),
            "drop_limit_percent": 10, "runs": typed, "loads": loads });
        if let Some(low) = low {
            inputs["low_voltage"] = json!(format!("{} V", low * source_v));
        }
        enter(&mut inputs, lies);
        let Ok(report) = evaluate("circuit", &inputs) else { return Ok(()) };
        let Some(main_a) = report.outcome.number("fuse_a") else {
            prop_assert!(report.buy.is_empty() && report.cut.is_empty() && report.drawings.is_empty());
            prop_assert!(!report.faults.is_empty(), "{}", inputs);
            return Ok(());
        };
        prop_assert!(report.faults.is_empty(), "{}", inputs);
        prop_assert!(report.outcome.number("fuse_volts_least").unwrap() >= charging_v);
        prop_assert_eq!(report.outcome.get("device_rating_ok"), Some(&Value::Flag(true)));
        let branches: Vec<(usize, f64)> = report.outcome.list("branches").iter().map(|branch| {
            let Some(Value::Text(run)) = branch.get("run") else { panic!() };
            (run[1..].parse().unwrap(), branch.number("fuse_a").unwrap())
        }).collect();
        for (i, (.., device, own, _)) in runs.iter().enumerate() {
            // The fuse before a run: its own, or that of the run that feeds it, up to the source.
            let mut at = i;
            let fuse_a = loop {
                if let Some((_, fuse_a)) = branches.iter().find(|(run, _)| *run == at) {
                    break *fuse_a;
                }
                prop_assert!(!is_block(from[at]), "no fuse for a branch of a block: {}", inputs);
                if from[at] == 0 {
                    break main_a;
                }
                at = from[at] - 1;
            };
            let wire = text(&report, &format!("runs.r{i}.conductor"));
            let (carries_a, fuse_limit_a) = limits(&wire, lies);
            prop_assert!(fuse_a <= fuse_limit_a, "{} {} {}", wire, fuse_a, inputs);
            let flows_a = report.outcome.number(&format!("runs.r{i}.highest_current_a")).unwrap();
            prop_assert!(carries_a >= flows_a);
            if let Some(device) = device {
                prop_assert!(*own || fuse_a <= device * (1.0 + 1e-9), "{} {}", device, inputs);
                prop_assert!(flows_a <= device * (1.0 + 1e-9));
            }
            if runs[i].2.is_none() && !lies.4 {
                prop_assert!(wire != "18 AWG", "{}", inputs);
            }
        }
        // The source gives what the loads take at the lowest voltage, and what the wire loses.
        let watts: f64 = runs.iter().filter(|run| !run.3).filter_map(|run| run.6).sum();
        let least_a = watts / (source_v * low.unwrap_or(1.0));
        prop_assert!(report.outcome.number("source_current_a").unwrap() >= least_a * (1.0 - 1e-9));
        prop_assert!(main_a >= 1.25 * least_a * (1.0 - 1e-9));
    }
}
