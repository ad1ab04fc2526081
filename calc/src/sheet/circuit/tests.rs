//! Checks of the circuit sheet, from typed text to outcome.

use serde_json::{Value as Json, json};

use crate::electrical::drop::Load;
use crate::electrical::published_networks::{NETWORKS, Network};
use crate::fault::Fault;
use crate::outcome::Value;
use crate::project::Project;
use crate::report::{Report, Weight};

fn try_sheet(inputs: &Json, units: &str) -> Result<Report, Vec<Fault>> {
    let file = json!({ "battenbook": 1, "id": "p", "units": units,
        "sheets": [{ "id": "s", "kind": "circuit", "title": "", "inputs": inputs }] });
    let project = Project::from_text(&file.to_string()).unwrap();
    crate::evaluate(&project).sheet("s").unwrap().clone()
}

fn sheet(inputs: &Json) -> Report {
    try_sheet(inputs, "metric").unwrap_or_else(|faults| panic!("{inputs}: {faults:#?}"))
}

fn faults(inputs: &Json) -> Vec<(String, String)> {
    let faults = try_sheet(inputs, "metric").expect_err("faults");
    faults.into_iter().map(|fault| (fault.field, fault.message)).collect()
}

fn number(report: &Report, path: &str) -> f64 {
    report.outcome.number(path).unwrap_or_else(|| panic!("{path}"))
}

fn text(report: &Report, path: &str) -> String {
    match report.outcome.get(path) {
        Some(Value::Text(text)) => text.clone(),
        other => panic!("{path}: {other:?}"),
    }
}

fn run(id: &str, from: &str, to: &str, length: &str, conductor: &str) -> Json {
    json!({ "id": id, "from": from, "to": to, "length": length, "conductor": conductor })
}

fn lamp(at: &str, watts: f64) -> Json {
    json!({ "at": at, "label": format!("lamp {at}"), "model": "power", "value": format!("{watts} W") })
}

fn circuit(limit: f64, runs: Vec<Json>, loads: Vec<Json>) -> Json {
    json!({ "source_voltage": "12.8 V", "drop_limit_percent": limit, "insulation": "105 C",
        "runs": runs, "loads": loads })
}

/// Two lamps in a row behind a panel, and an outlet.
fn small(conductor: &str) -> Json {
    circuit(
        3.0,
        vec![
            run("r1", "source", "panel", "3 m", conductor),
            run("r2", "panel", "a", "2 m", conductor),
            run("r3", "a", "b", "1500 mm", conductor),
            run("r4", "panel", "outlet", "4 m", conductor),
        ],
        vec![lamp("a", 6.0), lamp("b", 6.0), lamp("outlet", 60.0)],
    )
}

fn with(mut inputs: Json, path: &str, value: Json) -> Json {
    match inputs.pointer_mut(path) {
        Some(place) => *place = value,
        None => {
            let (parent, key) = path.rsplit_once('/').unwrap();
            inputs.pointer_mut(parent).unwrap()[key] = value;
        }
    }
    inputs
}

/// A published network as a project file; the source's own resistance becomes a run of a metre.
fn typed(network: &Network, scale: f64) -> Json {
    let inside = network.source_ohm > 0.0;
    let name = |node: &str| if node == "S" && !inside { "source".to_owned() } else { node.into() };
    let mut runs = Vec::new();
    if inside {
        let conductor = format!("{} ohm/m", network.source_ohm / 2.0);
        runs.push(run("inside", "source", "S", "1 m", &conductor));
    }
    for (place, (from, to, metres, ohm_per_m)) in network.runs.iter().enumerate() {
        let length = format!("{metres} m");
        let conductor = format!("{ohm_per_m} ohm/m");
        runs.push(run(&format!("r{place}"), &name(from), &name(to), &length, &conductor));
    }
    let loads = network.loads.iter().map(|(node, load)| {
        let (model, value) = match load {
            Load::Power(w) => ("power", format!("{} W", w * scale)),
            Load::Current(a) => ("current", format!("{} A", a * scale)),
            Load::Resistance(ohm) => ("resistance", format!("{} ohm", ohm / scale)),
        };
        json!({ "at": name(node), "label": "", "model": model, "value": value })
    });
    json!({ "source_voltage": format!("{} V", network.source_v), "drop_limit_percent": 10,
        "runs": runs, "loads": loads.collect::<Vec<_>>() })
}

/// ngspice-39, operating point, relative tolerance 1e-10; read with six decimals.
#[test]
fn five_networks_as_a_circuit_simulator_solves_them() {
    for network in &NETWORKS {
        let report = sheet(&typed(network, 1.0));
        for (node, volts) in network.volts {
            let found = number(&report, &format!("nodes.{node}.voltage_v"));
            assert!((found - volts).abs() < 1e-6, "{}: {node} {found}", network.name);
        }
        let source_a = number(&report, "source_current_a");
        assert!((source_a - network.source_a).abs() < 1e-6, "{}", network.name);
        // What the source gives is what the loads take at their voltages, and what the runs lose.
        let load_w: f64 = network
            .loads
            .iter()
            .map(|(node, load)| {
                let volts = number(&report, &format!("nodes.{node}.voltage_v"));
                match load {
                    Load::Power(w) => *w,
                    Load::Current(a) => a * volts,
                    Load::Resistance(ohm) => volts * volts / ohm,
                }
            })
            .sum();
        let Some(Value::Record(runs)) = report.outcome.get("runs") else { panic!() };
        let lost_w: f64 = runs.entries().map(|(_, run)| run.number("loss_w").unwrap()).sum();
        let given_w = network.source_v * source_a;
        assert!((given_w - load_w - lost_w).abs() < 1e-9 * given_w, "{}", network.name);
        assert!((number(&report, "loss_w") - lost_w).abs() < 1e-9 * given_w);
    }
}

/// The network near collapse, with its loads beyond the limit found by continuation (1.905 times
/// 60, 60, 30 W): (115, 115, 57.5) W has no solution.
#[test]
fn no_steady_voltage_is_a_fault() {
    let near = NETWORKS.iter().find(|network| network.name == "near collapse").unwrap();
    let found = faults(&typed(near, 115.0 / 110.0));
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].0, "loads");
    assert!(found[0].1.contains("no steady voltage"), "{found:?}");
}

#[test]
fn drops_wire_splices_and_fuse_of_a_small_circuit() {
    let inputs = with(small("14 AWG"), "/slack", json!("100 mm"));
    let report = sheet(&inputs);
    let drop = 100.0 * (12.8 - number(&report, "nodes.outlet.voltage_v")) / 12.8;
    assert!((number(&report, "nodes.outlet.drop_percent") - drop).abs() < 1e-9);
    assert_eq!(text(&report, "worst_node"), "outlet");
    assert_eq!(report.outcome.get("within_limit"), Some(&Value::Flag(drop <= 3.0)));
    // NEC 210.20(A): 125 % of 5.8 A is 7.3 A, the next rating 7.5 A.
    let source_a = number(&report, "source_current_a");
    assert!(1.25 * source_a > 5.0 && 1.25 * source_a < 7.5);
    assert_eq!(number(&report, "fuse_a"), 7.5);
    assert_eq!(number(&report, "runs.r1.ampacity_a"), 35.0);
    assert!((number(&report, "runs.r1.current_a") - source_a).abs() < 1e-9);
    // Both conductors, and slack at both ends of each.
    let metres = 2.0 * (3.0 + 2.0 + 1.5 + 4.0 + 4.0 * 0.2);
    assert!((number(&report, "wire.0.length_m") - metres).abs() < 1e-9);
    assert_eq!(report.outcome.list("wire").len(), 1);
    let splice = |place: usize| {
        let path = format!("splices.{place}");
        (
            text(&report, &format!("{path}.node")),
            number(&report, &format!("{path}.ways")),
            number(&report, &format!("{path}.each_polarity")),
        )
    };
    assert_eq!(splice(0), ("panel".into(), 3.0, 1.0));
    assert_eq!(splice(1), ("a".into(), 3.0, 1.0));
    assert_eq!(splice(2), ("b".into(), 2.0, 1.0));
    let bought = |item: &str| -> f64 {
        report.buy.iter().filter(|line| line.item == item).map(|line| line.quantity).sum()
    };
    assert_eq!(bought("wire"), 23.0, "22.6 m in whole metres");
    assert_eq!(bought("splice connector"), 8.0, "four splices, twice");
    assert_eq!(bought("fuse with holder"), 1.0);
    let cut: usize = report.cut.iter().map(|line| line.count * line.pieces.len()).sum();
    assert_eq!(cut, 8, "two pieces a run");
}

/// A row of lights is the same circuit as its runs and loads typed out.
#[test]
fn rows_of_lights_are_runs_and_loads() {
    let feed = run("r1", "source", "panel", "3 m", "14 AWG");
    let row = json!({ "label": "left", "from": "panel", "count": 3, "first": "2 m",
        "spacing": "1270 mm", "model": "power", "value": "3 W", "conductor": "16 AWG" });
    let made = json!({ "source_voltage": "12.8 V", "drop_limit_percent": 3,
        "insulation": "105 C", "runs": [feed.clone()], "rows": [row] });
    let typed = circuit(
        3.0,
        vec![
            feed,
            run("run left 1", "panel", "left 1", "2 m", "16 AWG"),
            run("run left 2", "left 1", "left 2", "1270 mm", "16 AWG"),
            run("run left 3", "left 2", "left 3", "1270 mm", "16 AWG"),
        ],
        vec![lamp("left 1", 3.0), lamp("left 2", 3.0), lamp("left 3", 3.0)],
    );
    assert_eq!(sheet(&made).outcome, sheet(&typed).outcome);
    let fault = |key: &str, value: &str| {
        let found = faults(&with(made.clone(), &format!("/rows/0/{key}"), json!(value)));
        assert_eq!(found.len(), 1, "{found:?}");
        found[0].0.clone()
    };
    assert_eq!(fault("from", "attic"), "rows.0.from");
    assert_eq!(fault("label", ""), "rows.0.label");
    assert_eq!(fault("value", "3 ohm"), "rows.0.value");
    let twice = with(made.clone(), "/rows", json!([made["rows"][0], made["rows"][0]]));
    assert!(faults(&twice).iter().all(|(field, _)| field == "rows.1.label"));
    let many = json!({ "label": "left", "from": "panel", "count": 100, "first": "2 m",
        "spacing": "1 m", "model": "power", "value": "1 mW" });
    let many: Vec<Json> =
        (0..5).map(|i| with(many.clone(), "/label", json!(format!("row {i}")))).collect();
    assert_eq!(faults(&with(made, "/rows", json!(many)))[0].0, "rows");
}

/// Every mix of four sizes over the open runs, each worked out with its conductors given.
#[test]
fn auto_is_the_least_copper_of_every_mix() {
    const SIZES: [(&str, f64); 4] =
        [("16 AWG", 2580.0), ("14 AWG", 4110.0), ("12 AWG", 6530.0), ("10 AWG", 10_380.0)];
    let inputs =
        with(small("auto"), "/conductor_choices", json!(["10 AWG", "12 AWG", "16 AWG", "14 AWG"]));
    for limit in [2.0, 3.0, 5.0] {
        let inputs = with(inputs.clone(), "/drop_limit_percent", json!(limit));
        let report = sheet(&inputs);
        let metres = [3.0, 2.0, 1.5, 4.0];
        let (mut best, mut best_single) = (f64::INFINITY, f64::INFINITY);
        for pick in 0..256_usize {
            let picks = [pick % 4, pick / 4 % 4, pick / 16 % 4, pick / 64];
            let mut given = inputs.clone();
            for (place, size) in picks.into_iter().enumerate() {
                given["runs"][place]["conductor"] = json!(SIZES[size].0);
            }
            let given = sheet(&given);
            let is_enough = given.outcome.get("within_limit") == Some(&Value::Flag(true))
                && given.outcome.number("fuse_a").is_some();
            let copper: f64 = picks
                .iter()
                .zip(metres)
                .map(|(size, metres)| 2.0 * metres * SIZES[*size].1 * 5.067_075e-4)
                .sum();
            if is_enough && copper < best {
                best = copper;
            }
            if is_enough && picks.iter().all(|size| *size == picks[0]) && copper < best_single {
                best_single = copper;
            }
        }
        assert!((number(&report, "mix.copper_cm3") - best).abs() < 1e-6 * best, "{limit} %");
        assert!((number(&report, "single.copper_cm3") - best_single).abs() < 1e-6 * best_single);
        assert_eq!(report.outcome.get("mix.proved"), Some(&Value::Flag(true)));
        assert_eq!(report.outcome.get("within_limit"), Some(&Value::Flag(true)));
    }
}

#[test]
fn what_is_no_tree_names_its_run() {
    let fault = |path: &str, value: &str| {
        let found = faults(&with(small("14 AWG"), path, json!(value)));
        assert_eq!(found.len(), 1, "{path}: {found:?}");
        found[0].0.clone()
    };
    assert_eq!(fault("/runs/2/to", "panel"), "runs.2.to");
    assert_eq!(fault("/runs/2/to", "source"), "runs.2.to");
    assert_eq!(fault("/runs/3/from", "nowhere"), "runs.3.from");
    assert_eq!(fault("/runs/1/from", "b"), "runs.1.from", "a ring of a and b");
    assert_eq!(fault("/runs/3/id", "r1"), "runs.3.id");
    assert_eq!(fault("/runs/2/length", "2 V"), "runs.2.length");
    assert_eq!(fault("/runs/2/conductor", "15 AWG"), "runs.2.conductor");
    assert_eq!(fault("/loads/0/at", "roof"), "loads.0.at");
    assert_eq!(fault("/loads/1/value", "0.5 A"), "loads.1.value");
    assert_eq!(fault("/loads/1/model", "lamp"), "loads.1.model");
    assert_eq!(fault("/loads/0/positive_lead", "black"), "loads.0.negative_lead");
    let blank = with(small("14 AWG"), "/loads/0/negative_lead", json!(" "));
    let found = faults(&with(blank, "/loads/0/positive_lead", json!("black")));
    assert_eq!(found[0].0, "loads.0.negative_lead", "a blank is no color");
    let found = faults(&with(small("14 AWG"), "/runs/2/id", json!("")));
    assert_eq!(found.iter().map(|f| f.0.as_str()).collect::<Vec<_>>(), ["runs.2.id"]);
    // All at once, also when a length is wrong beside the shape.
    let two = with(small("14 AWG"), "/runs/2/length", json!("2 V"));
    let found = faults(&with(two, "/loads/0/at", json!("roof")));
    assert_eq!(found.len(), 2, "{found:?}");
    let none = circuit(3.0, vec![run("r1", "source", "a", "1 m", "auto")], vec![]);
    assert_eq!(faults(&none)[0].0, "loads");
}

/// What is carried away stands first: the lowest voltage, the fuse, and every size to buy, never how many there are.
#[test]
fn answers_are_what_is_carried_away() {
    let mut inputs = small("12 AWG");
    for (run, size) in [(0, "6 AWG"), (1, "8 AWG"), (2, "10 AWG")] {
        inputs = with(inputs, &format!("/runs/{run}/conductor"), json!(size));
    }
    let report = sheet(&inputs);
    let texts: Vec<&str> = report.answers.iter().map(|answer| answer.text.as_str()).collect();
    assert!(texts[0].contains(" V (") && texts[1].ends_with(" A"), "{texts:?}");
    for size in ["6 AWG", "8 AWG", "10 AWG", "12 AWG"] {
        assert!(texts[2].contains(size), "{texts:?}");
    }
}

#[test]
fn sizes_that_will_not_do_are_told() {
    let few = with(small("auto"), "/conductor_choices", json!(["18 AWG"]));
    let found = faults(&few);
    assert_eq!(found[0].0, "conductor_choices");
    assert!(found[0].1.contains("no size to choose from"), "{found:?}");
    let found = faults(&with(few, "/in_jacket", json!(true)));
    assert!(found[0].1.contains("even with 18 AWG"), "{found:?}");
    let bad = with(small("auto"), "/conductor_choices", json!(["14 AWG", "15 AWG"]));
    assert_eq!(faults(&bad)[0].0, "conductor_choices.1");
    let far = with(small("auto"), "/runs/3/length", json!("2000 m"));
    assert_eq!(faults(&far)[0].0, "runs.0.conductor");
    let mixed = with(
        with(small("auto"), "/runs/0/conductor", json!("auto mm2")),
        "/runs/1/conductor",
        json!("auto AWG"),
    );
    assert_eq!(faults(&mixed)[0].0, "runs.1.conductor");
    let metric = sheet(&with(small("auto"), "/runs/0/conductor", json!("auto mm2")));
    assert!(text(&metric, "runs.r4.conductor").ends_with("mm2"));
}

/// 38 A through a feed of 8 AWG ask for a 50 A fuse, which the 16 AWG behind it does not stand.
#[test]
fn a_thin_run_behind_a_large_fuse_gets_no_fuse() {
    let inputs = circuit(
        20.0,
        vec![
            run("feed", "source", "panel", "1 m", "8 AWG"),
            run("thin", "panel", "lamp", "1 m", "16 AWG"),
            run("thick", "panel", "heater", "1 m", "8 AWG"),
        ],
        vec![lamp("heater", 480.0), lamp("lamp", 3.0)],
    );
    let report = sheet(&inputs);
    assert!(report.outcome.number("fuse_a").is_none() && report.buy.is_empty());
    assert_eq!(report.answers[1].text, "not shown: run thin is too thin for the fuse before it");
    assert_eq!(report.faults[0].field, "runs.1.conductor");
    let warning = &report.remarks[0];
    assert_eq!(warning.weight, Weight::Warning);
    assert!(warning.text.contains("8 AWG would do") && warning.text.contains("fuse block"));
    let report = sheet(&with(inputs.clone(), "/runs/1/conductor", json!("auto")));
    assert_eq!(text(&report, "runs.thin.conductor"), "8 AWG", "10 AWG stands no more than 30 A");
    assert_eq!(number(&report, "fuse_a"), 50.0);
    // Through a fuse block each branch has its own.
    let report = sheet(&with(inputs.clone(), "/runs/0/fuse_block", json!(true)));
    let branch = |place: usize| {
        (
            text(&report, &format!("branches.{place}.run")),
            number(&report, &format!("branches.{place}.fuse_a")),
        )
    };
    assert_eq!(number(&report, "fuse_a"), 50.0);
    assert_eq!((branch(0), branch(1)), (("thin".into(), 1.0), ("thick".into(), 50.0)));
    let bought = |item: &str| {
        let lines = report.buy.iter().filter(|line| line.item == item);
        lines.map(|line| line.quantity).sum::<f64>()
    };
    assert_eq!(bought("fuse block with negative bus"), 1.0);
    assert_eq!(bought("fuse for the fuse block"), 2.0);
    assert_eq!(bought("fuse with holder"), 1.0);
    // Lugs: 8 AWG at the source, at the block twice over, and each twice for + and −.
    assert_eq!(bought("ring lug"), 6.0 + 4.0, "{:?}", report.buy);
    assert!(report.drawings[0].words.contains("through a fuse of 1 A"));
    // A load straight on the block would have no fuse of its own.
    let loose =
        with(with(inputs, "/runs/0/fuse_block", json!(true)), "/loads/1/at", json!("panel"));
    assert_eq!(faults(&loose)[0].0, "loads.1.at");
}

/// 0.0133 ohm/m of the published network is held against 16 AWG, which 12 A overheat: the voltages
/// are as the simulator has them, and no wire or fuse is listed.
#[test]
fn by_resistance_the_voltages_stand_and_nothing_unsafe_is_listed() {
    let network = NETWORKS.iter().find(|network| network.name == "near collapse").unwrap();
    let report = sheet(&typed(network, 1.0));
    for hidden in ["fuse_a", "fuse_volts_least", "branches", "wire"] {
        assert!(report.outcome.get(hidden).is_none(), "{hidden}");
    }
    assert!(report.buy.is_empty() && report.cut.is_empty() && report.drawings.is_empty());
    assert!(report.answers.iter().any(|answer| answer.text.starts_with("not shown: ")));
    assert!(report.faults[0].field.ends_with(".conductor"), "{:?}", report.faults);
    let thin = with(small("14 AWG"), "/runs/1/conductor", json!("0.5 mm2"));
    assert_eq!(faults(&thin)[0].0, "runs.1.conductor");
}

#[test]
fn an_overloaded_run_is_a_fault_of_the_choice() {
    // 240 W are 18.8 A at 12.8 V and 25 A at 9.6 V; 12 AWG of 60 C carries 25 A less rounding.
    let heavy =
        circuit(20.0, vec![run("r1", "source", "a", "1 m", "12 AWG")], vec![lamp("a", 236.0)]);
    let heavy = with(with(heavy, "/insulation", json!("60 C")), "/continuous", json!(false));
    assert_eq!(number(&sheet(&heavy), "fuse_a"), 20.0);
    let low = with(heavy.clone(), "/low_voltage", json!("9 V"));
    let found = faults(&low);
    assert_eq!(found[0].0, "runs.0.conductor");
    assert!(found[0].1.contains("overheats") && found[0].1.contains("at 9 V"), "{found:?}");
    let auto = sheet(&with(low, "/runs/0/conductor", json!("auto")));
    assert_eq!(
        (text(&auto, "runs.r1.conductor"), number(&auto, "fuse_a")),
        ("10 AWG".into(), 30.0)
    );
    assert!(number(&auto, "source_current_a") > 26.0, "the highest of both");
}

#[test]
fn a_black_positive_joined_to_a_black_negative_is_warned_of() {
    let wired = with(small("14 AWG"), "/loads/0/positive_lead", json!("black"));
    let wired = with(wired, "/loads/0/negative_lead", json!("white"));
    let report = sheet(&wired);
    let loud = report.remarks.iter().find(|remark| remark.text.contains("do not join black"));
    assert_eq!(loud.map(|remark| remark.weight), Some(Weight::Warning));
    let splices = report.checks.iter().find(|list| list.title.starts_with("Splice")).unwrap();
    let line = splices.lines.iter().find(|line| line.text.starts_with("a:")).unwrap();
    assert_eq!(line.text, "a: 3 ways, twice: from panel (r2), lamp a, on to b (r3)");
    assert_eq!(
        line.note,
        "connectors for each: 1 of 3 ways; lamp a: + black to red, − white to black"
    );
    assert!(line.warns);
    // With wire of other colours nothing clashes.
    let yellow = with(wired, "/negative_wire", json!("yellow"));
    assert!(sheet(&yellow).remarks.iter().all(|remark| !remark.text.contains("Polarity")));
}

#[test]
fn dimmers_are_held_against_their_current() {
    let rated =
        |amperes: &str| sheet(&with(small("14 AWG"), "/runs/3/device_rating", json!(amperes)));
    let ok = |report: &Report| report.outcome.get("device_rating_ok") == Some(&Value::Flag(true));
    let report = rated("3 A");
    assert!(!ok(&report) && report.outcome.number("fuse_a").is_none() && report.buy.is_empty());
    let found = report.remarks.iter().find(|remark| remark.text.contains("dimmer"));
    assert!(found.is_some_and(|remark| remark.text.contains("run r4")), "{:?}", report.remarks);
    let report = rated("8 A");
    assert!(ok(&report) && number(&report, "fuse_a") == 7.5);
    assert!(report.remarks.iter().all(|remark| !remark.text.contains("dimmer or switch")));
    assert!(report.remarks.iter().any(|remark| remark.text.contains("switch the negative")));
    let line = report.buy.iter().find(|line| line.item == "dimmer or switch").unwrap();
    assert_eq!((line.spec.as_str(), line.quantity), ("8 A DC", 1.0));
}

/// A dimmer of 2 A for lamps of 12 W (0.94 A, hence a fuse of 2 A) behind a main fuse of 7.5 A gets a
/// fuse of its own, unless it protects itself; one of 1 A has no fuse that is small enough.
#[test]
fn a_fuse_in_line_before_a_dimmer() {
    let dimmed = |amperes: &str| with(small("14 AWG"), "/runs/1/device_rating", json!(amperes));
    let report = sheet(&dimmed("2 A"));
    assert_eq!(report.outcome.get("device_rating_ok"), Some(&Value::Flag(true)));
    assert_eq!(number(&report, "fuse_a"), 7.5);
    assert_eq!(
        (text(&report, "branches.0.run"), number(&report, "branches.0.fuse_a")),
        ("r2".into(), 2.0)
    );
    assert_eq!(report.buy.iter().filter(|line| line.item == "fuse with holder").count(), 2);
    let own = sheet(&with(dimmed("2 A"), "/runs/1/protects_itself", json!(true)));
    assert!(own.outcome.list("branches").is_empty());
    assert!(own.remarks.iter().any(|remark| remark.text.contains("must protect itself")));
    let small = sheet(&dimmed("1 A"));
    assert_eq!(small.outcome.get("device_rating_ok"), Some(&Value::Flag(false)));
    assert!(small.outcome.number("fuse_a").is_none());
    assert!(small.remarks[0].text.contains("smallest fuse for its current"), "{:?}", small.remarks);
}

#[test]
fn thick_wire_gets_lugs_and_far_sources_a_fuse() {
    let thick = sheet(&small("8 AWG"));
    assert!(thick.buy.iter().all(|line| line.item != "splice connector"), "{:?}", thick.buy);
    assert!(
        thick.buy.iter().any(|line| line.item == "bus bar or stud" && line.spec.contains("M6"))
    );
    let far = sheet(&with(small("14 AWG"), "/runs/0/far_source", json!(true)));
    let fuses = far.buy.iter().find(|line| line.item == "fuse with holder").unwrap();
    assert_eq!(fuses.quantity, 2.0);
}

/// Insulation is part of the name of wire on every list.
#[test]
fn wire_is_named_with_its_insulation() {
    let report = sheet(&small("14 AWG"));
    assert_eq!(number(&report, "insulation_c"), 105.0);
    assert!(report.buy[0].spec.contains("insulation rated 105 °C"), "{}", report.buy[0].spec);
    assert!(report.cut[0].stock.contains("insulation 105 °C"), "{}", report.cut[0].stock);
    let mut unmarked = small("14 AWG");
    unmarked.as_object_mut().unwrap().remove("insulation");
    let unmarked = sheet(&unmarked);
    assert_eq!(
        (number(&unmarked, "insulation_c"), number(&unmarked, "runs.r1.ampacity_a")),
        (60.0, 20.0)
    );
    assert_ne!(unmarked.buy[0].spec, report.buy[0].spec);
    assert_eq!(number(&report, "fuse_volts_least"), 32.0);
    let high = sheet(&with(small("14 AWG"), "/source_voltage", json!("51.2 V")));
    assert_eq!(number(&high, "fuse_volts_least"), 125.0);
    let refused = faults(&with(small("14 AWG"), "/source_voltage", json!("60 V")));
    assert_eq!(refused[0].0, "source_voltage");
}

/// By hand: along 2.0 - 0.3, across 1.5, up and over 2.1 m.
#[test]
fn a_length_left_out_is_taken_from_where_the_run_lies() {
    let mut inputs = small("14 AWG");
    inputs["runs"][0]["length"] = Json::Null;
    assert_eq!(faults(&inputs)[0].0, "runs.0.length");
    inputs["runs"][0]["route"] = json!({ "from": { "x": "300 mm", "y": "0 mm" },
        "to": { "x": "2 m", "y": "1500 mm" }, "rise": "2.1 m" });
    assert!((number(&sheet(&inputs), "runs.r1.length_m") - 5.3).abs() < 1e-12);
    // What is typed comes first.
    inputs["runs"][0]["length"] = json!("4 m");
    assert_eq!(number(&sheet(&inputs), "runs.r1.length_m"), 4.0);
    inputs["runs"][0]["length"] = Json::Null;
    inputs["runs"][0]["route"]["to"] = json!({ "x": "2 m" });
    assert_eq!(faults(&inputs)[0].0, "runs.0.route.to.y");
}

#[test]
fn dimmers_are_held_against_their_watts() {
    let rated = |watts: &str| sheet(&with(small("14 AWG"), "/runs/3/device_watts", json!(watts)));
    let warned =
        |report: &Report| report.remarks.iter().any(|r| r.text.contains("dimmer or switch"));
    assert!(warned(&rated("50 W")) && !warned(&rated("96 W")));
}

/// The circuit at its lowest voltage is the circuit typed with that voltage.
#[test]
fn a_low_battery_is_the_same_circuit_with_less() {
    let report = sheet(&with(small("14 AWG"), "/low_voltage", json!("11.5 V")));
    let typed = sheet(&with(small("14 AWG"), "/source_voltage", json!("11.5 V")));
    let worst = text(&typed, "worst_node");
    let volts = number(&typed, &format!("nodes.{worst}.voltage_v"));
    assert!((number(&report, "low_battery.voltage_v") - volts).abs() < 1e-9);
    assert_eq!(text(&report, "low_battery.worst_node"), worst);
    let above = with(small("14 AWG"), "/low_voltage", json!("13 V"));
    assert_eq!(faults(&above)[0].0, "low_voltage");
}

#[test]
fn lines_to_tick_off_have_keys_of_their_own_that_change_with_the_work() {
    let keys = |report: &Report| -> Vec<String> {
        report.checks.iter().flat_map(|list| &list.lines).map(|line| line.key.clone()).collect()
    };
    let before = keys(&sheet(&small("14 AWG")));
    assert_eq!(before.len(), 4 + 4, "four pieces to cut twice, four splices");
    let once: std::collections::BTreeSet<&String> = before.iter().collect();
    assert_eq!(once.len(), before.len());
    let after = keys(&sheet(&with(small("14 AWG"), "/runs/2/length", json!("1600 mm"))));
    let changed: Vec<_> = before.iter().zip(&after).filter(|(a, b)| a != b).collect();
    assert_eq!(changed.len(), 1, "{changed:?}");
}

/// Leads of two loads at one splice that mean opposite things, whatever the wire.
#[test]
fn leads_that_contradict_each_other_at_a_splice_are_warned_of() {
    let mut inputs = small("14 AWG");
    inputs["positive_wire"] = json!("orange");
    inputs["negative_wire"] = json!("yellow");
    inputs["loads"] = json!([
        { "at": "a", "label": "one", "model": "power", "value": "3 W", "positive_lead": "white", "negative_lead": "blue" },
        { "at": "a", "label": "two", "model": "power", "value": "3 W", "positive_lead": "brown", "negative_lead": "white" },
        { "at": "b", "label": "three", "model": "power", "value": "3 W" },
    ]);
    let report = sheet(&inputs);
    assert!(
        report
            .remarks
            .iter()
            .any(|r| r.weight == Weight::Warning && r.text.contains("opposite of those of two"))
    );
    inputs["loads"][1]["at"] = json!("b");
    assert!(sheet(&inputs).remarks.iter().all(|r| !r.text.contains("opposite of those")));
}

/// A chain of 40 splices and a star of 40: drawn in parts, every node once.
#[test]
fn forty_nodes_are_drawn_in_parts() {
    let chain = (0..40).map(|i| {
        let from = if i == 0 { "source".to_owned() } else { format!("n{}", i - 1) };
        run(&format!("r{i}"), &from, &format!("n{i}"), "500 mm", "auto")
    });
    let star = (0..40).map(|i| {
        let from = if i == 0 { "source".to_owned() } else { "n0".to_owned() };
        run(&format!("r{i}"), &from, &format!("n{i}"), "500 mm", "auto")
    });
    for runs in [chain.collect::<Vec<_>>(), star.collect()] {
        let loads = (0..40).map(|i| lamp(&format!("n{i}"), 2.0)).collect();
        let report = sheet(&circuit(3.0, runs, loads));
        assert_eq!(report.drawings.len(), 6, "41 nodes, at most eight a drawing");
        for i in 0..40 {
            let label = format!("n{i} · ");
            let drawn = report.drawings.iter().flat_map(|drawing| &drawing.shapes).filter(
                |shape| matches!(shape, crate::drawing::Shape::Text { text, .. } if text.starts_with(&label)),
            );
            assert_eq!(drawn.count(), 1, "{label}");
        }
        for drawing in &report.drawings {
            let (low, high) = drawing.bounds().unwrap();
            assert!(high.x - low.x < 12.0 && high.y - low.y < 14.0, "{}", drawing.title);
        }
    }
}
