//! In the store: whole packs at the store's prices, own lines, ticks, the way to a line's sheet, what is not in stock, the weight
//! on the axles; with no signal.

use calc::project::{Place, Project};
use e2e::{Context, Imperial, Metric, Page, Result, ensure, in_each_engine};
use serde_json::json;

in_each_engine!(
    buys_whole_packs_with_no_signal,
    adds_lines_of_ones_own,
    goes_from_a_line_to_its_sheet_and_back,
    shows_what_another_length_would_change,
    counts_the_weight_on_the_axles,
    axe_finds_nothing_in_the_store,
);

/// The screws of the demo's ceiling strips.
const SCREW: &str = "screw/8/31.8mm";

async fn to_line(page: &mut Page, key: &str) -> Result<()> {
    page.go_to("buy").await?;
    open_row(page, key).await?;
    let link = format!("a[href$=\"{}\"]", encoded(key));
    page.click(&link).await?;
    page.wait_for(".inputs [data-path=pack]").await?;
    Ok(())
}

/// Opens what stands under a row.
async fn open_row(page: &mut Page, key: &str) -> Result<()> {
    page.wait_for(".left-to-buy").await?;
    let button = format!(".row-more[data-with=\"{key}\"]");
    let open = format!("return !!document.querySelector('{button}[aria-expanded=true]')");
    if page.execute(&open, vec![]).await? == json!(false) {
        page.click(&button).await?;
        page.wait_for(&format!("{button}[aria-expanded=true]")).await?;
    }
    Ok(())
}

/// A key as it stands in an address.
fn encoded(key: &str) -> String {
    let mut address = String::new();
    for letter in key.chars() {
        match letter {
            ' ' => address.push_str("%20"),
            '#' => address.push_str("%23"),
            '|' => address.push_str("%7C"),
            '/' => address.push_str("%2F"),
            _ => address.push(letter),
        }
    }
    address
}

fn needed(project: &Project, key: &str) -> Result<f64> {
    let all = calc::evaluate(project);
    let line = all.buy_list.iter().find(|line| line.key() == key);
    Ok(line.with_context(|| format!("no line {key}"))?.line.quantity)
}

async fn buys_whole_packs_with_no_signal(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.wait_until_kept().await?;
    page.go_offline();
    page.reload().await?;
    // The way there from the project's page.
    page.click(".buy a.card").await?;
    page.wait_for(".left-to-buy").await?;
    to_line(page, SCREW).await?;
    page.fill("pack", "half a box").await?;
    page.wait_for(".field.wrong").await?;
    page.fill("pack", "100").await?;
    page.fill("price", "8.50").await?;
    page.leave_field().await?;
    let project = page.kept_project().await?;
    ensure!(project.typed(&Place::Line(SCREW.into()), "pack") == "100", "the pack is not kept");
    let need = needed(&project, SCREW)?;
    let packs = (need / 100.0).ceil();
    page.go_to("buy").await?;
    let row = format!("li:has(input[data-with=\"{SCREW}\"])");
    page.wait_for_text(&row, &format!("{packs} packs of 100")).await?;
    page.wait_for_text(&format!("{row} .cost"), &format!("{:.2}", 8.5 * packs)).await?;
    page.wait_for_text(&format!("{row} .cost"), "8.50 each").await?;
    open_row(page, SCREW).await?;
    page.wait_for_text(&row, &format!("{} left over", packs * 100.0 - need)).await?;
    // Only some of it was on the shelf, at another price.
    page.type_into(&format!("{row} [data-do=got]"), "60").await?;
    page.press("\u{E007}").await?;
    page.wait_until_with(
        "what was got",
        "return document.querySelector(arguments[0]).value === '60'",
        vec![json!(format!("{row} [data-do=got]"))],
    )
    .await?;
    page.wait_for_text(&row, "more needed").await?;
    page.type_into(&format!("{row} [data-do=price]"), "9").await?;
    page.press("\u{E007}").await?;
    page.wait_for_text(&format!("{row} .cost"), "9.00 each").await?;
    page.type_into(&format!("{row} [data-do=price]"), "8.50").await?;
    page.press("\u{E007}").await?;
    page.wait_for_text(&format!("{row} .cost"), "8.50 each").await?;
    // A tick is for what was bought: what is left in the box serves when the need grows.
    let left = page.text(".left-to-buy").await?;
    page.click(&format!("{row} input")).await?;
    page.wait_for(&format!("{row}.done")).await?;
    ensure!(page.text(".left-to-buy").await? != left, "what is left does not change: {left}");
    let kept = page.kept_project().await?;
    let ticked = kept.extra("ticked").and_then(|all| all.get("buy")?.get(SCREW)?.as_f64());
    ensure!(ticked == Some(packs * 100.0), "ticked off: {ticked:?}");
    // Lines that are done sink.
    page.click("[data-do=order][data-with=left]").await?;
    page.wait_for(".ticks li:last-child.done").await?;
    page.reload().await?;
    page.wait_for(".ticks li:last-child.done").await?;
    page.screenshot("store").await?;
    Ok(())
}

async fn adds_lines_of_ones_own(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.go_to("buy").await?;
    page.click("[data-do=add-row][data-with=own]").await?;
    page.fill_all(&[
        ("own.0.item", "masking tape"),
        ("own.0.quantity", "3"),
        ("own.0.price", "4.20"),
    ])
    .await?;
    page.leave_field().await?;
    page.wait_for_text(".ticks li", "3 × masking tape").await?;
    page.wait_for_text(".ticks .cost", "12.60").await?;
    page.wait_for_text(".left-to-buy", "1 of 1 left to buy").await?;
    // What cannot be read is said at its field, and nothing is bought by a guess.
    page.fill("own.0.quantity", "a few").await?;
    page.wait_for(".field.wrong").await?;
    page.wait_until_gone(".ticks li").await?;
    page.fill("own.0.quantity", "2").await?;
    page.wait_for_text(".ticks li", "2 × masking tape").await?;
    page.reload().await?;
    page.wait_for_text(".ticks li", "2 × masking tape").await?;
    Ok(())
}

async fn goes_from_a_line_to_its_sheet_and_back(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("buy").await?;
    let row = format!("li:has(input[data-with=\"{SCREW}\"])");
    open_row(page, SCREW).await?;
    page.click(&format!("{row} .from a")).await?;
    page.wait_for_text("h1", "Ceiling strips").await?;
    ensure!(page.sheet_id().await? == "furring", "another sheet: {}", page.sheet_id().await?);
    // Back from a line's own page one goes on at that line.
    to_line(page, SCREW).await?;
    page.click(".back").await?;
    page.wait_for(".left-to-buy").await?;
    page.wait_until_with(
        "the focus on the line",
        "return document.activeElement?.getAttribute('href')?.endsWith(arguments[0]) ?? false",
        vec![json!(encoded(SCREW))],
    )
    .await?;
    Ok(())
}

async fn shows_what_another_length_would_change(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    to_line(page, "stock/1x2-strip/19.1x38.1mm/4267.2mm").await?;
    let before = page.kept_project().await?;
    page.click(".lacking [data-do=lacking][data-with=\"stock|14 ft\"]").await?;
    page.wait_for_text(".lacking table", "To pay").await?;
    ensure!(page.kept_project().await? == before, "changed before it was taken");
    page.click(".lacking [data-do=take]").await?;
    page.wait_for_text("h1", "Not on the list any more").await?;
    let after = page.kept_project().await?;
    let all = calc::evaluate(&after);
    ensure!(
        all.buy_list.iter().any(|line| line.key() == "stock/1x2-strip/19.1x38.1mm/2438.4mm"),
        "no 8 ft strips"
    );
    ensure!(all.sheet("furring").is_some_and(Result::is_ok), "the strips have faults");
    Ok(())
}

async fn counts_the_weight_on_the_axles(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.go_to("buy").await?;
    page.wait_for(".left-to-buy").await?;
    page.unfold_all().await?;
    let project = page.kept_project().await?;
    let all = calc::evaluate(&project);
    let weight = &all.shopping().weight;
    let style = project.style();
    page.wait_for_text(".weight dd", &style.mass(weight.balance.mass)).await?;
    page.wait_for_text(".weight", "The list is counted in.").await?;
    let front = page.text(".weight tr:first-child td").await?;
    // A heavy thing far forward takes from the front axle what its moment says.
    page.click("[data-do=add-row][data-with=own]").await?;
    page.fill_all(&[("own.0.item", "tool chest"), ("own.0.mass", "100"), ("own.0.place", "-600")])
        .await?;
    page.leave_field().await?;
    let project = page.kept_project().await?;
    let after = calc::evaluate(&project);
    let kg = |all: &calc::project::Evaluation| match all.sheet("axles") {
        Some(Ok(report)) => report.outcome.number("front_left_kg"),
        _ => None,
    };
    let (before, after) = (kg(&all).context("axles")?, kg(&after).context("axles")?);
    ensure!((before - after - 100.0).abs() < 1e-6, "{before} kg, then {after} kg");
    page.wait_until_with(
        "another payload",
        "return document.querySelector('.weight tr td').textContent !== arguments[0]",
        vec![json!(front)],
    )
    .await?;
    // Over the limit the list says so.
    page.fill("own.0.mass", "1000").await?;
    page.wait_for_text(".weight .warning", "over its limit").await?;
    Ok(())
}

async fn axe_finds_nothing_in_the_store(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    for light in ["day", "night"] {
        page.go_to("buy").await?;
        page.wait_for(".left-to-buy").await?;
        page.set_light(light).await?;
        let found = page.axe().await?;
        ensure!(found.is_empty(), "{light}: {}", found.join("\n"));
        page.whole_screenshot(&format!("buy-{light}")).await?;
        to_line(page, SCREW).await?;
        let found = page.axe().await?;
        ensure!(found.is_empty(), "line, {light}: {}", found.join("\n"));
    }
    Ok(())
}
