//! The main jobs, by typing into the fields of a phone; the answers are those of the calculations.

use calc::project::{Place, Project};
use calc::sheet::SHEETS;
use e2e::{
    Context, Engine, Imperial, Metric, Page, Result, answers, answers_of, ensure, in_each_engine,
};
use serde_json::json;

in_each_engine!(
    works_out_the_coating_for_a_floor,
    trims_a_flange,
    marks_a_board,
    sizes_a_wire,
    every_example_gives_its_answers,
);

async fn works_out_the_coating_for_a_floor(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("coating").await?;
    page.wait_for_text(".headline", "needed").await?;
    page.fill_all(&[
        ("product", "floor finish"),
        ("areas.0.label", "aisle"),
        ("areas.0.length", "215 3/4"),
        ("areas.0.width", "6' 9\""),
        ("coats", "3"),
        ("spread_rate", "450"),
        ("containers.0.size", "1 qt"),
        ("containers.0.price", "31"),
    ])
    .await?;
    page.click("[data-do=add-row][data-with=containers]").await?;
    page.fill("containers.1.size", "1 gal").await?;
    page.fill("containers.1.price", "89").await?;
    let mut inputs = json!({ "product": "floor finish",
        "areas": [{ "label": "aisle", "length": "215 3/4 in", "width": "81 in" }],
        "coats": 3, "spread_rate": "450 ft2/gal",
        "containers": [{ "size": "1 qt", "price": 31 }, { "size": "1 gal", "price": 89 }] });
    let whole = answers("coating", inputs.clone(), Imperial)?;
    page.wait_for_answers(&whole).await?;
    page.wait_for_text(".headline", &whole[0].text).await?;

    // The wheel boxes are not coated.
    page.click("[data-do=add-row][data-with=areas]").await?;
    page.fill_all(&[("areas.1.length", "36"), ("areas.1.width", "10"), ("areas.1.count", "2")])
        .await?;
    page.choose("areas.1.subtract", "yes").await?;
    let areas = inputs["areas"].as_array_mut().context("areas are a list")?;
    areas.push(json!({ "length": "36 in", "width": "10 in", "count": 2, "subtract": true }));
    let less = answers("coating", inputs, Imperial)?;
    ensure!(less != whole, "what is taken off changes nothing");
    page.wait_for_answers(&less).await?;
    page.screenshot("coating").await?;
    Ok(())
}

async fn trims_a_flange(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("trim").await?;
    page.fill("height", "2 3/8").await?;
    let corners = [
        ("front left", "5/8"),
        ("front right", "11/16"),
        ("rear right", "13/16"),
        ("rear left", "3/4"),
    ];
    for (index, (name, standoff)) in corners.into_iter().enumerate() {
        if index > 0 {
            page.click("[data-do=add-row][data-with=corners]").await?;
        }
        page.fill(&format!("corners.{index}.name"), name).await?;
        page.fill(&format!("corners.{index}.standoff"), standoff).await?;
    }
    let corners: Vec<_> = corners
        .iter()
        .map(|(name, standoff)| json!({ "name": name, "standoff": format!("{standoff} in") }))
        .collect();
    let wanted = answers("trim", json!({ "height": "2 3/8 in", "corners": corners }), Imperial)?;
    page.wait_for_answers(&wanted).await?;
    page.wait_for(".marks .tape svg").await?;
    page.screenshot("trim").await?;
    Ok(())
}

async fn marks_a_board(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.add_sheet("stud_marks").await?;
    page.fill("board", "3.6 m").await?;
    page.fill("first_stud", "137").await?;
    // The next field opens by itself when the last one is filled.
    for (index, stud) in ["412", "821", "1236", "1640", "2049"].into_iter().enumerate() {
        page.fill(&format!("studs.{index}"), stud).await?;
    }
    let inputs = json!({ "board": "3.6 m", "first_stud": "137 mm",
        "studs": ["412 mm", "821 mm", "1236 mm", "1640 mm", "2049 mm"] });
    page.wait_for_answers(&answers("stud_marks", inputs, Metric)?).await?;
    // From the first stud traced at 137 mm: 821 - 412 + 137, and so on.
    let marks = page.marks().await?;
    ensure!(marks == ["137 mm", "546 mm", "961 mm", "1365 mm", "1774 mm"], "marks: {marks:?}");
    page.go_to("marks").await?;
    page.wait_for(".mark .tape svg").await?;
    ensure!(page.marks().await? == marks, "the mark list has other marks");
    let tapes = page
        .execute("return [...document.querySelectorAll('.mark .tape')].map(t => t.ariaLabel ?? t.getAttribute('aria-label'))", vec![])
        .await?;
    ensure!(tapes[1] == json!("mark at 546 mm"), "tapes: {tapes}");
    page.screenshot("mark-list").await?;
    Ok(())
}

async fn sizes_a_wire(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("voltage_drop").await?;
    page.fill_all(&[
        ("source_voltage", "12.8"),
        ("power", "36"),
        ("length", "18"),
        ("conductor", "auto"),
        ("drop_limit_percent", "3"),
    ])
    .await?;
    let inputs = json!({ "source_voltage": "12.8 V", "power": "36 W", "length": "18 ft",
        "conductor": "auto", "drop_limit_percent": 3 });
    page.wait_for_answers(&answers("voltage_drop", inputs, Imperial)?).await?;
    // The other way to say what the load draws.
    page.click_button("Current of the load").await?;
    page.fill("current", "10").await?;
    let inputs = json!({ "source_voltage": "12.8 V", "current": "10 A", "length": "18 ft",
        "conductor": "auto", "drop_limit_percent": 3 });
    page.wait_for_answers(&answers("voltage_drop", inputs, Imperial)?).await?;
    page.screenshot("voltage_drop").await?;
    Ok(())
}

/// Every sheet of the one list, in both unit systems, in one project with the demo's body.
async fn every_example_gives_its_answers(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("").await?;
    let mut systems = [Imperial, Metric];
    // What was worked out for the sheets before, in each system.
    let mut worked_out = [None, None];
    for sheet in SHEETS {
        page.add_sheet(sheet.kind).await?;
        page.click("[data-fill]").await?;
        page.settle().await?;
        let project = page.kept_project().await?;
        let id = page.sheet_id().await?;
        ensure!(
            project
                .node(&Place::Sheet(id.clone()), "")
                .is_some_and(|inputs| inputs.as_object().is_some_and(|all| !all.is_empty())),
            "{}: nothing was filled in",
            sheet.kind
        );
        // As the menu stands, then the other way: the next sheet begins there.
        for (turn, system) in systems.into_iter().enumerate() {
            let mut project: Project = project.clone();
            project.set_system(system);
            if turn > 0 {
                page.set_system(system).await?;
            }
            let before = worked_out[turn].take();
            let all = calc::project::evaluate_since(&project, before.as_ref());
            let wanted = answers_of(&all, &id).with_context(|| sheet.kind)?;
            page.wait_for_answers(&wanted).await.with_context(|| sheet.kind)?;
            worked_out[turn] = Some(all);
        }
        systems.reverse();
        worked_out.reverse();
        if page.engine() == Engine::Chromium {
            for light in ["night", "day"] {
                page.set_light(light).await?;
                page.whole_screenshot(&format!("sheet-{}-{light}", sheet.kind)).await?;
            }
        }
    }
    Ok(())
}
