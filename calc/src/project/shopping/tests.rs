//! The buy list with what a person typed for it.

use super::*;
use crate::project::{Evaluation, Place, Project};
use serde_json::json;

const DEMO: &str = include_str!("../../../../shared/demo.json");
const SCREW: &str = "screw/8/31.8mm";
const WIRE: &str = "wire/awg18/105c";

fn demo(shopping: serde_json::Value) -> (Project, Evaluation) {
    let mut project = Project::from_text(DEMO).unwrap();
    project.set_extra(KEY, shopping);
    let all = crate::evaluate(&project);
    (project, all)
}

fn line<'a>(all: &'a Evaluation, key: &str) -> &'a MergedBuyLine {
    all.buy_list.iter().find(|line| line.key() == key).unwrap_or_else(|| {
        panic!("{:?}", all.buy_list.iter().map(MergedBuyLine::key).collect::<Vec<_>>())
    })
}

fn kg(mass: Option<Mass>) -> f64 {
    mass.unwrap().get::<uom::si::mass::kilogram>()
}

/// 104 screws are 2 boxes of 100 with 96 left over; the wire is bought in whole spools of 100 ft.
#[test]
fn whole_packs_are_bought_and_what_is_left_over_is_told() {
    let (_, all) = demo(json!({ "lines": {
        SCREW: { "pack": "100", "price": 8.5, "mass": "0.3 kg" },
        WIRE: { "pack": "30.48 m", "price": 30 },
    } }));
    assert_eq!(all.shopping().line_faults, BTreeMap::new());
    let screws = line(&all, SCREW);
    assert_eq!(screws.line.quantity, 104.0);
    assert_eq!(screws.packs, Some(Packs { size: 100.0, count: 2.0, left_over: 96.0 }));
    assert_eq!((screws.bought(), screws.line.cost), (200.0, Some(17.0)));
    // What is aboard are the screws that are driven, not those left in the box.
    assert!((kg(screws.line.mass) - 104.0 * 0.003).abs() < 1e-12);
    let wire = line(&all, WIRE);
    let spools = (wire.line.quantity / 100.0 - 1e-9).ceil();
    let packs = wire.packs.unwrap();
    assert!((packs.size - 100.0).abs() < 1e-9, "{packs:?}");
    assert_eq!((packs.count, wire.line.cost), (spools, Some(30.0 * spools)));
}

/// 96.0000000001 packs' worth never buys a 97th.
#[test]
fn a_need_that_fills_its_packs_buys_no_more() {
    let mut line = MergedBuyLine {
        id: "wire".into(),
        line: BuyLine::amount(LineId::shared("wire"), "wire", "", 0.1 + 0.2, "m"),
        from: Vec::new(),
        packs: None,
    };
    let said = Said { pack: Some(0.1), price: Some(2.0), mass: None, place: None, faults: vec![] };
    said.apply(&mut line);
    let packs = line.packs.unwrap();
    assert_eq!((packs.count, packs.left_over, line.line.cost), (3.0, 0.0, Some(6.0)));
}

#[test]
fn what_is_typed_wrong_is_a_fault_of_its_field_and_the_rest_holds() {
    let (_, all) = demo(json!({
        "lines": { SCREW: { "pack": "2.5", "price": 8.5, "mass": "heavy" }, WIRE: { "pack": "2 kg" }, "gone|x|each": { "pack": "?" } },
        "own": [{ "item": "tape", "quantity": 2, "price": 4 }, { "quantity": "two", "item": "glue" }, { "spec": "no name" }],
    }));
    let fields = |faults: &[Fault]| -> Vec<String> {
        faults.iter().map(|fault| fault.field.clone()).collect()
    };
    assert_eq!(fields(&all.shopping().line_faults[SCREW]), ["pack", "mass"]);
    assert_eq!(fields(&all.shopping().line_faults[WIRE]), ["pack"]);
    assert_eq!(all.shopping().line_faults.len(), 2);
    assert_eq!(fields(&all.shopping().faults), ["own.1.quantity", "own.2.item"]);
    let screws = line(&all, SCREW);
    assert_eq!((screws.packs, screws.line.cost, screws.line.mass), (None, Some(8.5 * 104.0), None));
    let own = line(&all, "own/tape//each");
    assert_eq!((own.line.quantity, own.line.cost, own.sheets().count()), (2.0, Some(8.0), 0));
    assert!(!all.buy_list.iter().any(|line| line.line.item == "glue"));
}

#[test]
fn own_lines_are_merged_with_like_ones_and_weigh_where_they_are() {
    let (mut project, all) = demo(json!({ "own": [
        { "item": "screw", "adds_to": SCREW, "quantity": 20 },
        { "item": "water filter", "mass": "4 kg", "place": "1 m" } ] }));
    let screws = line(&all, SCREW);
    assert_eq!((screws.line.quantity, screws.from.len()), (124.0, 2));
    assert_eq!(screws.sheets().collect::<Vec<_>>(), ["furring"]);
    // A place that is typed for the line goes before the sheet's own.
    let before = all.shopping().weight.balance;
    let key = "stock/1x2-strip/19x38.1mm/4267.2mm";
    project.set(&Place::Line(key.into()), "place", json!("0 mm"));
    project.set(&Place::Line(key.into()), "mass", json!("2 kg"));
    let after = crate::evaluate(&project).shopping().weight.balance;
    assert!((kg(Some(after.mass - before.mass)) - 2.0 * 5.0 + kg_or_0(&all, key)).abs() < 1e-9);
    assert!(after.centre() < before.centre());
}

fn kg_or_0(all: &Evaluation, key: &str) -> f64 {
    line(all, key).line.mass.map_or(0.0, |mass| kg(Some(mass)))
}

#[test]
fn what_is_typed_is_kept_beside_what_is_not_known() {
    let (mut project, _) =
        demo(json!({ "later": 1, "lines": { SCREW: { "shop": "on the corner" } } }));
    project.set(&Place::Line(SCREW.into()), "pack", json!("100"));
    project.set(&Place::Shopping, "own.0.item", json!("tape"));
    let again = Project::from_text(&project.to_text()).unwrap();
    let kept = again.extra(KEY).unwrap();
    let screw = json!({ "shop": "on the corner", "pack": "100" });
    assert_eq!(
        kept,
        &json!({ "later": 1, "lines": { SCREW: screw }, "own": [{ "item": "tape" }] })
    );
    assert_eq!(again.typed(&Place::Line(SCREW.into()), "pack"), "100");
    for rubbish in [json!(3), json!([1]), json!({ "lines": 5, "own": {} })] {
        project.set_extra(KEY, rubbish);
        crate::evaluate(&project);
        project.set(&Place::Line(SCREW.into()), "pack", json!("100"));
        project.set(&Place::Shopping, "own.0.item", json!("tape"));
        assert_eq!(project.typed(&Place::Line(SCREW.into()), "pack"), "100");
    }
}
