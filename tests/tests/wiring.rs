//! Two dimmed zones of lights and a fan, wired by thumb in the tree; lamps that become a circuit.

use calc::project::{Place, Project};
use e2e::{Context, Imperial, Metric, Page, Result, answers_in, ensure, in_each_engine};
use serde_json::json;

in_each_engine!(wires_two_zones_and_a_fan_by_thumb, makes_a_circuit_of_the_lamps);

/// What a load's or row's node has in the calculations, as the tree shows it.
fn voltage(project: &Project, id: &str, node: &str) -> Result<String> {
    let all = calc::evaluate(project);
    let report = all.sheet(id).context("no sheet")?.as_ref().ok().context("faults")?;
    let volts = report.outcome.number(&format!("nodes.{node}.voltage_v")).context("no node")?;
    Ok(format!("{} V", calc::quantity::significant(volts, 4)))
}

async fn wires_two_zones_and_a_fan_by_thumb(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("circuit").await?;
    page.fill_all(&[("source_voltage", "12.8"), ("drop_limit_percent", "3")]).await?;
    page.click("[data-do=run][data-with=source]").await?;
    page.fill("runs.0.length", "9").await?;
    page.type_into("#in-runs-0-to", "panel").await?;
    page.leave_field().await?;
    page.wait_for_text(".tree .name", "source").await?;
    page.click("[data-do=lamps][data-with=\"runs.0\"]").await?;
    page.fill_all(&[
        ("rows.0.count", "4"),
        ("rows.0.first", "7"),
        ("rows.0.spacing", "50"),
        ("rows.0.value", "3 W"),
        ("rows.0.device_rating", "8"),
        ("rows.0.positive_lead", "black/white"),
        ("rows.0.negative_lead", "black"),
    ])
    .await?;
    page.leave_field().await?;
    // The second zone is a copy, fed from the same panel.
    page.click("[data-do=copy][data-with=\"rows.0\"]").await?;
    page.fill("rows.1.first", "10").await?;
    page.leave_field().await?;
    page.click("[data-do=pick][data-with=\"runs.0\"]").await?;
    page.click("[data-do=run][data-with=\"runs.0\"]").await?;
    page.fill("runs.1.length", "14").await?;
    page.type_into("#in-runs-1-to", "fan").await?;
    page.leave_field().await?;
    page.click("[data-do=load][data-with=\"runs.1\"]").await?;
    page.fill_all(&[("loads.0.label", "fan"), ("loads.0.value", "36 W")]).await?;
    page.leave_field().await?;
    page.settle().await?;
    let project = page.kept_project().await?;
    let id = page.sheet_id().await?;
    let place = Place::Sheet(id.clone());
    ensure!(project.typed(&place, "rows.1.from") == "panel", "the copy hangs elsewhere");
    page.wait_for_answers(&answers_in(&project, &id)?).await?;
    for (pick, node) in [("runs.1", "fan"), ("rows.0", "lights 4"), ("rows.1", "lights b 4")] {
        let selector = format!(".node[data-with=\"{pick}\"] strong");
        page.wait_for_text(&selector, &voltage(&project, &id, node)?).await?;
    }
    page.screenshot("wiring-tree").await?;

    // Splices are ticked off, and stay so.
    page.click(".checks:last-of-type input[data-do=tick]").await?;
    page.wait_for(".checks li.done").await?;
    page.settle().await?;
    let key = page
        .execute("return document.querySelector('.checks li.done input').dataset.with", vec![])
        .await?;
    page.go_offline();
    page.reload().await?;
    page.wait_for(".checks li.done").await?;
    let again = page
        .execute("return document.querySelector('.checks li.done input').dataset.with", vec![])
        .await?;
    ensure!(key == again && key.as_str().is_some_and(|key| !key.is_empty()), "{key} {again}");
    page.wait_for_answers(&answers_in(&project, &id)?).await?;
    // Without the server, and by undo back again.
    page.click("[data-do=pick][data-with=\"rows.1\"]").await?;
    page.click("[data-do=out][data-with=\"rows.1\"]").await?;
    page.wait_until_gone(".node[data-with=\"rows.1\"]").await?;
    page.click("button[aria-label=Undo]").await?;
    page.wait_for_answers(&answers_in(&project, &id)?).await?;
    // The plain form holds the same.
    page.click_button("Plain form").await?;
    page.wait_for_value("rows.1.first", "10 ft").await?;
    page.check_phone_width().await
}

async fn makes_a_circuit_of_the_lamps(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.go_to("s/lights").await?;
    page.click("[data-do=make]").await?;
    page.wait_for(".tree .node").await?;
    page.settle().await?;
    let made = page.sheet_id().await?;
    let project = page.kept_project().await?;
    page.wait_for_answers(&answers_in(&project, &made)?).await?;
    // Fewer lamps: the circuit says that it is behind, and follows.
    page.go_to("s/lights").await?;
    page.fill("columns", "4").await?;
    page.leave_field().await?;
    page.settle().await?;
    page.go_to(&format!("s/{made}")).await?;
    page.click("[data-do=catch-up]").await?;
    page.wait_until_gone("[data-do=catch-up]").await?;
    page.settle().await?;
    let followed = page.kept_project().await?;
    let runs = followed.row_count(&Place::Sheet(made.clone()), "runs");
    ensure!(json!(runs) == json!(8), "{runs} runs for eight lamps");
    page.wait_for_answers(&answers_in(&followed, &made)?).await
}
