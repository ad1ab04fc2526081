//! From a measured body to a warm, dry, powered rig, by typing and by choosing: each sheet takes from the others.

use calc::project::{Place, Project};
use e2e::{Metric, Page, Result, answers_in, ensure, in_each_engine};
use serde_json::json;

in_each_engine!(makes_the_body_warm_and_dry_and_powered, axe_finds_nothing_in_living,);

/// Picks a thing from the table beside a field, by its name.
async fn pick(page: &Page, path: &str, name: &str) -> Result<()> {
    page.wait_for(&format!("[data-picks=\"{path}\"]")).await?;
    let script = "const list = document.querySelector(`[data-picks=\"${arguments[0]}\"]`);
        list.value = [...list.options].find(one => one.textContent === arguments[1]).value;
        list.dispatchEvent(new Event('change', { bubbles: true }))";
    page.execute(script, vec![json!(path), json!(name)]).await?;
    page.settle().await
}

async fn open(page: &Page, group: &str) -> Result<()> {
    page.click(&format!(
        "details[data-group=\"{group}\"] > summary, details[data-group=\"ask {group}\"] > summary"
    ))
    .await
}

/// Another way to say what a row holds.
async fn other_way(page: &Page, row: &str, name: &str) -> Result<()> {
    let words = format!("//button[@data-do='either'][starts-with(@data-with, '{row}/')]");
    page.click_path(&format!("{words}[normalize-space()=\"{name}\"]")).await
}

/// The page shows what the calculations give natively.
async fn same_as_native(page: &mut Page, id: &str) -> Result<Project> {
    page.leave_field().await?;
    let project = page.kept_project().await?;
    page.wait_for_answers(&answers_in(&project, id)?).await?;
    Ok(project)
}

async fn makes_the_body_warm_and_dry_and_powered(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    measure(page).await?;
    let wall = insulate(page).await?;
    let heater = warm(page).await?;
    let battery = power(page).await?;
    let panels = sun(page).await?;

    // The panels charge the battery whose use they are held against.
    page.go_to(&format!("s/{battery}")).await?;
    page.click("[data-do=add-row][data-with=charging]").await?;
    other_way(page, "charging.0", "Panels from a sheet").await?;
    page.choose("charging.0.solar", "Solar panels").await?;
    page.wait_for_text("main", "Left over").await?;
    same_as_native(page, &battery).await?;

    // A thicker wall is felt by the heater, and nothing of it needs the network.
    page.wait_until_kept().await?;
    page.go_offline();
    page.reload().await?;
    page.go_to(&format!("s/{wall}")).await?;
    let before = page.kept_project().await?;
    page.fill("layers.1.thickness", "60").await?;
    let after = same_as_native(page, &wall).await?;
    ensure!(
        answers_in(&before, &heater)?[0] != answers_in(&after, &heater)?[0],
        "the heater does not follow the wall"
    );
    for id in [heater, battery, panels] {
        page.go_to(&format!("s/{id}")).await?;
        page.wait_for_answers(&answers_in(&after, &id)?).await?;
    }
    Ok(())
}

async fn measure(page: &mut Page) -> Result<()> {
    page.go_to("body").await?;
    page.fill_all(&[
        ("length", "5480"),
        ("width", "2060"),
        ("height", "1980"),
        ("rib_width", "38"),
    ])
    .await?;
    open(page, "ribs").await?;
    // The other way: evenly spaced.
    page.click_path("//button[@data-do='either'][contains(@data-with, '|1|')][starts-with(@data-with, 'ribs/')]")
        .await?;
    page.fill_all(&[
        ("ribs.even.count", "13"),
        ("ribs.even.first", "212"),
        ("ribs.even.spacing", "420"),
    ])
    .await?;
    page.click("[data-do=add-row][data-with=openings]").await?;
    page.fill_all(&[
        ("openings.0.name", "roof hatch"),
        ("openings.0.x", "2345"),
        ("openings.0.y", "730"),
        ("openings.0.length", "350"),
        ("openings.0.width", "600"),
    ])
    .await?;
    page.leave_field().await
}

/// Layers from the table of materials; what was typed stays.
async fn insulate(page: &mut Page) -> Result<String> {
    page.add_sheet("insulation").await?;
    pick(page, "layers.0.name", "birch plywood").await?;
    page.wait_for_value("layers.0.conductivity", "0.17 W/m/K").await?;
    page.wait_for_value("layers.0.vapour_factor", "90").await?;
    page.fill("layers.0.thickness", "6").await?;
    page.click("[data-do=add-row][data-with=layers]").await?;
    page.fill("layers.1.conductivity", "0.034").await?;
    page.leave_field().await?;
    pick(page, "layers.1.name", "mineral wool").await?;
    page.wait_for_value("layers.1.vapour_factor", "1").await?;
    // Another one takes the place of what the table filled in, and of nothing else.
    pick(page, "layers.1.name", "extruded polystyrene (XPS)").await?;
    page.wait_for_value("layers.1.vapour_factor", "80").await?;
    page.wait_for_value("layers.1.name", "extruded polystyrene (XPS)").await?;
    page.wait_for_value("layers.1.conductivity", "0.034 W/m/K").await?;
    page.fill("layers.1.thickness", "40").await?;
    page.click("[data-do=add-row][data-with=layers]").await?;
    pick(page, "layers.2.name", "steel").await?;
    page.fill("layers.2.thickness", "1").await?;
    // One undo takes back all that one choice filled in.
    page.leave_field().await?;
    page.click("[aria-label=Undo]").await?;
    page.click("[aria-label=Undo]").await?;
    page.wait_for_value("layers.2.name", "").await?;
    page.wait_for_value("layers.2.conductivity", "").await?;
    page.click("[aria-label=Redo]").await?;
    page.click("[aria-label=Redo]").await?;
    page.wait_for_value("layers.2.conductivity", "50 W/m/K").await?;

    open(page, "bridge").await?;
    page.fill_all(&[("bridge.layer", "2"), ("bridge.web", "1.2"), ("bridge.conductivity", "50")])
        .await?;
    page.wait_for_text("[data-field=\"bridge.spacing\"]", "Uses the body's mean rib spacing")
        .await?;
    open(page, "inside").await?;
    page.fill_all(&[("inside.temperature", "18"), ("inside.humidity_percent", "60")]).await?;
    open(page, "outside").await?;
    page.fill_all(&[("outside.temperature", "-5"), ("outside.humidity_percent", "85")]).await?;
    let id = page.sheet_id().await?;
    same_as_native(page, &id).await?;
    page.wait_for_text("main", "From rib to rib").await?;
    page.screenshot("living-insulation").await?;
    Ok(id)
}

/// The heater from the body's surfaces, one choice for all of them.
async fn warm(page: &mut Page) -> Result<String> {
    page.add_sheet("heat_load").await?;
    page.choose("surfaces.walls", "Insulation").await?;
    page.click("[data-do=add-row][data-with=windows]").await?;
    page.fill_all(&[
        ("windows.0.area", "2.6"),
        ("windows.0.u", "5.6"),
        ("fresh_air", "30"),
        ("inside_temperature", "18"),
        ("outside_temperature", "-5"),
    ])
    .await?;
    open(page, "noon").await?;
    page.fill_all(&[
        ("noon.inside_temperature", "26"),
        ("noon.outside_temperature", "36"),
        ("performance", "2.8"),
    ])
    .await?;
    open(page, "heater").await?;
    page.fill_all(&[("heater.output", "2000"), ("heater.draw", "30")]).await?;
    let id = page.sheet_id().await?;
    let project = same_as_native(page, &id).await?;
    let parts = calc::evaluate(&project);
    let outcome = parts.sheet(&id).and_then(|sheet| sheet.as_ref().ok()).map(|r| r.outcome.clone());
    let area = outcome.and_then(|outcome| outcome.number("parts.1.area_m2"));
    ensure!(area.is_some_and(|area| (area - 11.0788).abs() < 1e-6), "the roof has {area:?} m²");
    page.screenshot("living-heater").await?;
    Ok(id)
}

/// A day of loads from other sheets, with inverter and cable.
async fn power(page: &mut Page) -> Result<String> {
    page.add_sheet("water").await?;
    page.fill_all(&[
        ("people", "2"),
        ("use", "6"),
        ("tank", "70"),
        ("grey_tank", "70"),
        ("pump_flow", "8"),
        ("pump_current", "4.7"),
        ("drain_length", "1400"),
    ])
    .await?;
    let water = page.sheet_id().await?;
    same_as_native(page, &water).await?;

    page.add_sheet("energy").await?;
    page.fill_all(&[
        ("nominal_voltage", "12.8"),
        ("loads.0.label", "fridge"),
        ("loads.0.power", "45"),
    ])
    .await?;
    page.fill_all(&[("loads.0.hours", "24"), ("loads.0.duty_percent", "40")]).await?;
    page.click("[data-do=add-row][data-with=loads]").await?;
    other_way(page, "loads.1", "From its sheet").await?;
    page.choose("loads.1.sheet", "Fresh water").await?;
    page.click("[data-do=add-row][data-with=loads]").await?;
    other_way(page, "loads.2", "Heater from a sheet").await?;
    page.choose("loads.2.heater", "Heater and cooler").await?;
    page.fill("loads.2.hours", "10").await?;
    page.fill_all(&[("days", "2"), ("usable_percent", "80"), ("efficiency_percent", "95")]).await?;
    open(page, "battery").await?;
    page.fill("battery.capacity", "200 Ah").await?;
    open(page, "cable").await?;
    page.fill_all(&[("cable.length", "1.2"), ("cable.drop_limit_percent", "2")]).await?;
    let id = page.sheet_id().await?;
    same_as_native(page, &id).await?;
    page.wait_for_text("main", "class T fuse").await?;
    page.screenshot("living-energy").await?;
    Ok(id)
}

/// Panels around the hatch, held against the day's use.
async fn sun(page: &mut Page) -> Result<String> {
    page.add_sheet("solar").await?;
    page.fill_all(&[("latitude", "43"), ("panels.count", "3"), ("panels.watts", "120")]).await?;
    page.fill("loss_percent", "20").await?;
    for month in 0..12 {
        page.fill(&format!("clearness.{month}"), "0.45").await?;
    }
    page.leave_field().await?;
    page.wait_until(
        "no thirteenth month",
        "return document.querySelector('[data-path=\"clearness.11\"]') !== null
            && document.querySelector('[data-path=\"clearness.12\"]') === null",
    )
    .await?;
    page.click_button("From the energy sheet").await?;
    page.choose("sheet", "Battery and a day's use").await?;
    open(page, "roof").await?;
    page.fill_all(&[
        ("roof.panel_length", "1190"),
        ("roof.panel_width", "540"),
        ("roof.walkway", "350"),
    ])
    .await?;
    let id = page.sheet_id().await?;
    let project = same_as_native(page, &id).await?;
    page.wait_for_text("main", "Panels on the roof, from above").await?;
    page.wait_for_text("main", "What closes the gap").await?;
    ensure!(
        project.row_count(&Place::Sheet(id.clone()), "clearness") == 12,
        "twelve months are kept"
    );
    page.screenshot("living-solar").await?;
    Ok(id)
}

/// The demo's living sheets, by day and by night.
async fn axe_finds_nothing_in_living(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    for id in ["insulation", "heat_load", "energy", "solar", "water"] {
        page.go_to(&format!("s/{id}")).await?;
        page.wait_for(".answers [data-result]").await?;
        for light in ["day", "night"] {
            page.set_light(light).await?;
            let found = page.axe().await?;
            ensure!(found.is_empty(), "{id} by {light}: {found:#?}");
        }
    }
    Ok(())
}
