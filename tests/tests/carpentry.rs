//! From a measured body to marked strips and boards, with no signal: every mark follows the tape.

use calc::project::{Place, Project};
use e2e::{Context, Metric, Page, Result, answers_in, ensure, in_each_engine};
use serde_json::json;

in_each_engine!(marks_follow_the_measured_body_offline);

const BOWS: [&str; 13] = [
    "212", "631", "1049", "1472", "1888", "2311", "2727", "3150", "3566", "3988", "4407", "4829",
    "5246",
];

/// The marks that the calculations give for a sheet, as they are shown.
fn marks_in(project: &Project, id: &str) -> Result<Vec<String>> {
    let all = calc::evaluate(project);
    let report = all.sheet(id).and_then(|result| result.as_ref().ok()).context("no report")?;
    let style = project.style();
    let marks = report.marks.iter().flat_map(|strip| &strip.marks);
    Ok(marks.map(|mark| style.mark(mark.at).text).collect())
}

/// The sheet's page shows what the calculations give for the kept project; gives its marks.
async fn check(page: &mut Page, id: &str) -> Result<Vec<String>> {
    page.go_to(&format!("s/{id}")).await?;
    let project = page.kept_project().await?;
    page.wait_for_answers(&answers_in(&project, id)?).await?;
    let marks = marks_in(&project, id)?;
    ensure!(!marks.is_empty(), "{id} has no marks");
    let texts: Vec<&str> = marks.iter().map(String::as_str).collect();
    page.wait_until_marks(&texts).await?;
    Ok(marks)
}

async fn marks_follow_the_measured_body_offline(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.wait_until_kept().await?;
    page.go_offline();
    page.reload().await?;
    page.begin_project(Metric).await?;
    page.go_to("body").await?;
    page.fill_all(&[("length", "5480"), ("width", "2060"), ("rib_width", "38")]).await?;
    page.click("details[data-group='ask ribs'] > summary").await?;
    page.click_button("Measured one by one").await?;
    for (index, bow) in BOWS.into_iter().enumerate() {
        page.fill(&format!("ribs.measured.{index}"), bow).await?;
    }
    page.wait_for_value("ribs.measured.12", "5246").await?;

    page.add_sheet("furring").await?;
    let furring = page.sheet_id().await?;
    page.fill_all(&[
        ("section.thickness", "19"),
        ("section.width", "38"),
        ("screws_per_strip", "8"),
        ("end_distance", "38"),
        ("stock.0.length", "2400"),
        ("kerf", "3"),
    ])
    .await?;
    let strips = check(page, &furring).await?;
    ensure!(strips.len() == 8, "strips of an even body are all alike: {strips:?}");

    page.add_sheet("boards").await?;
    let boards = page.sheet_id().await?;
    page.fill_all(&[("coverage", "130"), ("stock.0.length", "3600"), ("kerf", "3")]).await?;
    page.choose("start", "First and last course equally wide").await?;
    let before = check(page, &boards).await?;

    // One bow was read wrong by 7 mm: every mark on it follows, and none but those.
    page.go_to("body").await?;
    page.fill("ribs.measured.0", "219").await?;
    let after = check(page, &boards).await?;
    ensure!(before.len() == after.len(), "other marks than before");
    let moved: Vec<_> = before.iter().zip(&after).filter(|(a, b)| a != b).collect();
    ensure!(!moved.is_empty(), "no mark moved");
    for (old, new) in &moved {
        ensure!(*old == "209 mm" && *new == "216 mm", "{old} became {new}");
    }
    ensure!(!after.contains(&"209 mm".to_owned()), "a mark stayed behind");
    ensure!(check(page, &furring).await? == strips, "strips do not hang on a rib's place here");

    // The body is narrower behind: strips by their ribs, a last course that tapers.
    page.go_to("body").await?;
    for (index, (x, width)) in
        [("0", "2060"), ("3000", "2048"), ("5480", "2056")].into_iter().enumerate()
    {
        page.click("[data-do=add-row][data-with=widths]").await?;
        page.fill(&format!("widths.{index}.x"), x).await?;
        page.fill(&format!("widths.{index}.width"), width).await?;
    }
    page.click("details[data-group='ask diagonals'] > summary").await?;
    page.fill_all(&[("diagonals.first", "5860"), ("diagonals.second", "5848")]).await?;
    // (5860² − 5848²) / (4 · 2058) by hand: 17.1 mm to the right.
    page.wait_for_text(".results .answers", "17.1 mm").await?;
    page.wait_for_text(".results .answers", "2048 mm to 2060 mm").await?;
    page.screenshot("body-stations").await?;
    let uneven = check(page, &furring).await?;
    ensure!(uneven.len() == 13 * 8, "each strip has its own marks: {}", uneven.len());
    check(page, &boards).await?;
    page.wait_for_text(".results .answers", "front to rear").await?;

    // Now a strip's length hangs on where its rib is.
    page.go_to("body").await?;
    page.fill("ribs.measured.0", "400").await?;
    let again = check(page, &furring).await?;
    ensure!(again != uneven, "no strip follows its rib");
    check(page, &boards).await?;

    // All of it is kept on the device.
    page.reload().await?;
    let project = page.kept_project().await?;
    ensure!(project.row_count(&Place::Body, "widths") == 3, "a station was lost");
    ensure!(
        project.node(&Place::Body, "ribs.measured.0") == Some(&json!("400 mm")),
        "the rib was lost"
    );
    page.wait_for_answers(&answers_in(&project, &boards)?).await
}
