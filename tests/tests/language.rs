//! The language of the pages: chosen in the menu, kept with no signal, and said by nothing but the table of words.

use std::collections::BTreeSet;

use calc::thermal::materials::MATERIALS;
use calc::words::Words;
use e2e::{Context, Metric, Page, Response, Result, anyhow, ensure, in_each_engine};
use serde_json::{Value, json};
use words::{Catalogue, FIRST};
use xtask::hash::integrity;
use xtask::workspace;

in_each_engine!(
    turns_to_spanish_and_keeps_it_offline,
    spells_english_both_ways,
    says_so_where_a_language_cannot_be_fetched,
    leaves_no_word_of_a_page_untouched,
);

async fn choose(page: &mut Page, tag: &str) -> Result<()> {
    page.execute(
        "const at = document.querySelector('#language');
         at.closest('details').open = true;
         at.value = arguments[0];
         at.dispatchEvent(new Event('change', { bubbles: true }))",
        vec![json!(tag)],
    )
    .await?;
    Ok(())
}

async fn turn_to(page: &mut Page, tag: &str) -> Result<()> {
    choose(page, tag).await?;
    let turned = format!("return document.documentElement.lang === '{tag}'");
    page.wait_until(tag, &turned).await
}

/// What has no other spelling is said as in the first English, and nothing is reckoned otherwise.
async fn spells_english_both_ways(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.go_to("s/circuit").await?;
    page.unfold_all().await?;
    page.settle().await?;
    let answers = page.shown_answers().await?;
    page.wait_for_text("main", "color").await?;
    turn_to(page, "en-GB").await?;
    page.unfold_all().await?;
    page.settle().await?;
    page.wait_for_text("main", "colour").await?;
    let said = page.text("main").await?;
    ensure!(!said.to_ascii_lowercase().contains("color"), "an American word is left");
    ensure!(page.shown_answers().await?.len() == answers.len(), "answers went");
    turn_to(page, "en").await?;
    page.wait_for_text("main", "color").await
}

async fn turns_to_spanish_and_keeps_it_offline(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.wait_until_kept().await?;
    page.go_to("s/s3").await?;
    page.unfold_all().await?;
    page.settle().await?;
    let (answers, marks) = (page.shown_answers().await?, page.marks().await?);
    turn_to(page, "es").await?;
    page.wait_for_text("main", "Trazos").await?;
    page.unfold_all().await?;
    page.settle().await?;
    // Other words, the same figures, though typed text may be written with a comma.
    ensure!(page.marks().await? == marks, "marks: {marks:?}");
    let other = page.shown_answers().await?;
    ensure!(other != answers && other.len() == answers.len(), "{other:?}");
    page.go_offline();
    page.reload().await?;
    page.wait_until("Spanish", "return document.documentElement.lang === 'es'").await?;
    page.wait_for_text("main", "Trazos").await?;
    turn_to(page, "en").await?;
    page.unfold_all().await?;
    page.settle().await?;
    ensure!(page.shown_answers().await? == answers, "English again: {answers:?}");
    Ok(())
}

async fn says_so_where_a_language_cannot_be_fetched(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.site.break_with(|request| {
        request.path.starts_with("words-es").then(|| Response::text("text/plain", "not here"))
    });
    choose(page, "es").await?;
    page.wait_for_text("body", "Español could not be loaded").await?;
    ensure!(page.execute("return document.documentElement.lang", vec![]).await? == json!("en"));
    Ok(())
}

/// All that can be read on a page or heard from it, but for sources that are cited.
const READ: &str = "
    const out = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node; node = walk.nextNode();) {
        if (!node.parentElement.closest('script, style, noscript, cite, .cited, .formula, #stopped, [lang]:not(html)')) out.push(node.data);
    }
    for (const one of document.querySelectorAll('[aria-label], [placeholder], [title], [alt]')) {
        for (const name of ['aria-label', 'placeholder', 'title', 'alt']) {
            if (one.hasAttribute(name)) out.push(one.getAttribute(name));
        }
    }
    return [document.title, ...out]";

/// Whoever finds a plain word found one that somebody wrote into the code.
async fn leaves_no_word_of_a_page_untouched(page: &mut Page) -> Result<()> {
    let folder = workspace::root().join("shared/words");
    let english = Catalogue::read(FIRST, &folder.join(FIRST)).map_err(|at| anyhow!("{at:?}"))?;
    let mut made_up = english.made_up();
    // It takes the place of a language that is on the menu.
    made_up.tag = "es".to_owned();
    let table = english.table(&made_up);
    let named = format!("made-up.bin {}", integrity(&table));
    let words = Words::load(table.clone()).map_err(|_| anyhow!("the table is not read"))?;
    page.site.break_with(move |request| {
        (request.path == "made-up.bin")
            .then(|| Response::text("application/octet-stream", table.clone()))
    });
    page.open_demo(Metric).await?;
    page.execute(
        "document.documentElement.setAttribute('data-words-es', arguments[0])",
        vec![json!(named)],
    )
    .await?;
    turn_to(page, "es").await?;
    let demo: Value = serde_json::from_str(include_str!("../../shared/demo.json"))?;
    let mut typed = Vec::new();
    names(&demo, "", &mut typed);
    // Who is cited for a material stands beside it.
    for material in &MATERIALS {
        let factor = material.vapour_factor.map(|factor| factor.source.say(words));
        typed.extend([material.conductivity_w_mk.source.say(words)].into_iter().chain(factor));
    }
    // A name that has another one in it goes first.
    calc::sorting::sort_by_key(&mut typed, |name| std::cmp::Reverse(name.len()));
    let sheets = demo.get("sheets").and_then(Value::as_array).context("no sheets")?;
    let sheets =
        sheets.iter().filter_map(|sheet| Some(format!("s/{}", sheet.get("id")?.as_str()?)));
    let parts =
        ["", "body", "add", "buy", "marks", "cuts", "book", "pass", "versions", "bench", "s/none"];
    let mut found = Vec::new();
    for part in parts.map(str::to_owned).into_iter().chain(sheets) {
        page.go_to(&part).await?;
        page.wait_for("main:not(.working) h1, .bench").await?;
        page.unfold_all().await?;
        page.settle().await?;
        let texts: Vec<String> = serde_json::from_value(page.execute(READ, vec![]).await?)?;
        let here: BTreeSet<String> =
            texts.iter().flat_map(|text| untouched(text, &typed)).collect();
        if !here.is_empty() {
            found.push(format!("{part}: {here:?}"));
        }
    }
    page.open("#/").await?;
    page.wait_for(".projects li").await?;
    let texts: Vec<String> = serde_json::from_value(page.execute(READ, vec![]).await?)?;
    let here: BTreeSet<String> = texts.iter().flat_map(|text| untouched(text, &typed)).collect();
    if !here.is_empty() {
        found.push(format!("start: {here:?}"));
    }
    ensure!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}

/// Plain words of a text, but for those of names that were typed, whole or cut short.
fn untouched(text: &str, typed: &[String]) -> Vec<String> {
    let rest = typed.iter().fold(text.to_owned(), |rest, name| rest.replace(name.as_str(), " "));
    let of_name = |word: &String| {
        let mut words =
            typed.iter().flat_map(|name| name.split(|letter: char| !letter.is_alphanumeric()));
        words.any(|name| name.starts_with(word.as_str()))
    };
    plain_words(&rest).into_iter().filter(|word| !of_name(word)).collect()
}

/// What the demo's person typed as a name: no language has a say in it.
fn names(of: &Value, key: &str, found: &mut Vec<String>) {
    const NAMED: &[&str] = &[
        "name",
        "title",
        "label",
        "material",
        "product",
        "species",
        "screw",
        "positive_lead",
        "negative_lead",
        "from",
        "to",
        "at",
        "item",
        "spec",
        "id",
        "conductor",
    ];
    match of {
        Value::Object(fields) => fields.iter().for_each(|(key, of)| names(of, key, found)),
        Value::Array(items) => items.iter().for_each(|of| names(of, key, found)),
        Value::String(text) if NAMED.contains(&key) && text.len() > 1 => found.push(text.clone()),
        _ => {}
    }
}

/// Words of plain letters, which the made-up language has none of; units and functions are the same in every language.
fn plain_words(text: &str) -> Vec<String> {
    const SAME: &[&str] = &[
        "in",
        "ft",
        "mm",
        "m",
        "gal",
        "qt",
        "fl",
        "oz",
        "ml",
        "lb",
        "kg",
        "min",
        "Btu",
        "cfm",
        "Wh",
        "MJ",
        "Pa",
        "lm",
        "lx",
        "fc",
        "cd",
        "cos",
        "sin",
        "ln",
        "MPa",
        "AWG",
        "Ah",
        "ohm",
        "cm",
        "km",
        "kW",
        "kWh",
        "deg",
        "ga",
        "Battenbook",
        // The usual color of a lead: typed text, read in both languages.
        "red",
        "English",
        "Espa",
        "ol",
        "Letter",
        "KB",
        "MB",
    ];
    text.split(|letter: char| !letter.is_alphabetic())
        .filter(|word| word.len() > 1 && word.chars().all(|letter| letter.is_ascii_alphabetic()))
        .filter(|word| !SAME.contains(word))
        .map(str::to_owned)
        .collect()
}
