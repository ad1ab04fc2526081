//! Paper and the first minute: what is printed, in its true size; the demo that teaches; an empty sheet's example.

use calc::project::Place;
use e2e::{
    Context, Engine, Imperial, Metric, PHONE, Page, Result, answers_in, ensure, in_each_engine,
};
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;

in_each_engine!(
    what_is_printed_has_no_controls,
    the_contents_number_the_sections,
    templates_join_piece_to_piece,
    teaches_with_the_demo,
    an_empty_sheet_shows_its_example,
    says_where_the_tape_goes_by_a_drawing,
    axe_finds_nothing_on_paper_and_first_steps,
);

/// Only Chromium's driver prints on the paper that the page asks for.
macro_rules! in_chromium {
    ($($name:ident),+ $(,)?) => {$(
        mod $name {
            #[test]
            fn chromium() {
                e2e::run(e2e::Engine::Chromium, stringify!($name), super::$name);
            }
        }
    )+};
}

in_chromium!(
    prints_the_booklet,
    prints_the_booklet_in_spanish,
    prints_today_on_one_page,
    prints_sheets_marks_and_lists,
    prints_templates_in_true_size,
);

/// Points of a PDF in a mm.
const POINTS: f64 = 72.0 / 25.4;
/// The papers, with their sizes. [mm]
const PAPERS: [(&str, (f64, f64)); 2] = [("Letter", (215.9, 279.4)), ("A4", (210.0, 297.0))];
/// The demo's booklet takes no more.
const MOST_PAGES: usize = 30;

async fn prints_the_booklet(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("book").await?;
    page.type_into("#book-date", "14 May, second week").await?;
    page.leave_field().await?;
    page.wait_for_text(".book .date", "14 May").await?;
    let printed = page.print_on_its_paper("booklet-letter").await?;
    let text = text_of(&printed)?;
    let project = page.kept_project().await?;
    let wanted = ["Contents", "14May,secondweek", "Thebody", "Buylist", "Cutlist", "Takecare"];
    for words in wanted {
        ensure!(text.contains(words), "no {words:?} in the booklet");
    }
    for sheet in project.sheets() {
        ensure!(text.contains(&flat(sheet.title())), "no {:?} in the booklet", sheet.title());
        for answer in answers_in(&project, &sheet.id())? {
            ensure!(text.contains(&flat(&answer.text)), "no {:?} in the booklet", answer.text);
        }
    }
    let sheets: Vec<String> = project.sheets().map(|sheet| sheet.title().to_owned()).collect();
    for (paper, size) in PAPERS {
        page.choose_paper(paper).await?;
        let printed = page.print_on_its_paper(&format!("booklet-{paper}")).await?;
        let sizes = page_sizes(&printed)?;
        ensure!(sizes.iter().all(|one| near(*one, size)), "not {paper}: {sizes:?}");
        println!("booklet on {paper}: {} pages", sizes.len());
        ensure!(sizes.len() <= MOST_PAGES, "{} pages on {paper}", sizes.len());
        // Each sheet's number stands with its title in the contents, and again above the sheet.
        let lines = lines_of(&printed)?;
        for (number, title) in (2..).zip(&sheets) {
            let wanted = flat(&format!("{number}{title}"));
            let found = lines.iter().filter(|line| flat(line).starts_with(&wanted)).count();
            ensure!(found >= 2, "{paper}: {wanted:?} stands {found} times");
        }
        within_margins(&printed)?;
    }
    Ok(())
}

async fn prints_the_booklet_in_spanish(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    speak_spanish(page).await?;
    page.go_to("book").await?;
    page.wait_for(".book .contents").await?;
    for (paper, _) in PAPERS {
        page.choose_paper(paper).await?;
        let printed = page.print_on_its_paper(&format!("cuaderno-{paper}")).await?;
        let pages = page_sizes(&printed)?.len();
        println!("booklet in Spanish on {paper}: {pages} pages");
        ensure!(text_of(&printed)?.contains("Contenido"), "not in Spanish");
        ensure!(pages <= MOST_PAGES, "{pages} pages on {paper}");
        within_margins(&printed)?;
    }
    page.go_to("today").await?;
    page.wait_for(".wallet .panel").await?;
    wallet_is_one_page(page, "cartera").await
}

async fn prints_today_on_one_page(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("book").await?;
    page.click_path("//a[contains(., 'for the wallet')]").await?;
    page.wait_for(".wallet .panel").await?;
    wallet_is_one_page(page, "wallet").await?;
    let project = page.kept_project().await?;
    let all = calc::evaluate(&project);
    let style = project.style();
    let boards: Vec<_> = all
        .sheets
        .iter()
        .filter_map(|(_, result)| result.as_ref().as_ref().ok())
        .flat_map(|report| &report.marks)
        .collect();
    let first = boards.first().and_then(|board| board.marks.first()).context("no marks")?;
    let printed = page.print_on_its_paper("wallet").await?;
    let text = text_of(&printed)?;
    let marks: usize = boards.iter().map(|board| board.marks.len()).sum();
    ensure!(text.contains(&format!("{marks}marks")), "not {marks} marks");
    for sheet in project.sheets() {
        let answers = answers_in(&project, &sheet.id())?;
        let figure = &answers.first().context("no answer")?.text;
        let row = flat(&[figure, sheet.title()].concat());
        ensure!(text.contains(&row), "no {row:?} on the sheet");
    }
    // What does not fit is counted, and what is shown and counted is all of them.
    let script = "return ['Marks next', 'Left to buy'].map(title => {
        const panels = [...document.querySelectorAll('.wallet .panel')].filter(one => one.querySelector('h2').textContent === title);
        const more = panels.map(one => one.querySelector('.more')?.textContent ?? '0').join(' ').match(/\\d+/g).map(Number);
        return panels.reduce((sum, one) => sum + one.querySelectorAll('li').length, 0) + more.reduce((a, b) => a + b) })";
    let told = page.execute(script, vec![]).await?;
    ensure!(told[0] == json!(marks), "{told} told of {marks} marks");
    let bought = all.buy_list.iter().filter(|line| line.asked() > 1e-9).count();
    ensure!(told[1] == json!(bought), "{told} told of {bought} to buy");
    // A mark that is ticked is gone from it.
    let next = "return document.querySelector('.wallet .panel:nth-child(2) li').textContent";
    let before = page.execute(next, vec![]).await?;
    let figure = style.mark(first.at).text;
    ensure!(before.as_str().is_some_and(|row| row.starts_with(&figure)), "{before}: not {figure}");
    page.go_to("marks").await?;
    page.click(".board > summary").await?;
    page.click(".board .mark label").await?;
    page.wait_for(".board .mark.done").await?;
    page.go_to("today").await?;
    page.wait_for(".wallet .panel").await?;
    let after = page.execute(next, vec![]).await?;
    ensure!(after != before, "{before} is ticked and still next");
    Ok(())
}

/// One page on both papers, and nothing in a panel that is cut off.
async fn wallet_is_one_page(page: &Page, name: &str) -> Result<()> {
    for (paper, size) in PAPERS {
        page.choose_paper(paper).await?;
        let printed = page.print_on_its_paper(&format!("{name}-{paper}")).await?;
        let sizes = page_sizes(&printed)?;
        ensure!(sizes.len() == 1 && near(sizes[0], size), "{paper}: {sizes:?}");
        // What is cut off a page is in no PDF's text: every row of every panel is.
        let script = "return [...document.querySelectorAll('.wallet li, .wallet .more')].map(one => one.textContent)";
        let Value::Array(rows) = page.execute(script, vec![]).await? else {
            e2e::bail!("rows are a list")
        };
        ensure!(rows.len() > 30, "{} rows", rows.len());
        let text = text_of(&printed)?;
        for row in rows {
            // A row of two lines stands beside another panel's.
            let start: String = flat(row.as_str().unwrap_or_default()).chars().take(12).collect();
            ensure!(text.contains(&start), "{paper}: no {start:?}");
        }
        bottoms_stand_clear(&printed, size)?;
    }
    Ok(())
}

/// No letter stands on a fold: each panel ends above it.
fn bottoms_stand_clear(file: &Path, size: (f64, f64)) -> Result<()> {
    let words = words_on_pages(file)?;
    ensure!(words.len() > 100, "{} words", words.len());
    for word in words {
        for fold in [0.25, 0.5, 0.75].map(|part| size.1 * part) {
            ensure!(word.bottom < fold || word.top > fold, "{:?} on a fold", word.text);
        }
        let middle = size.0 / 2.0;
        ensure!(word.right < middle || word.left > middle, "{:?} on the fold", word.text);
        ensure!(word.bottom < size.1 - 8.0, "{:?} is too low", word.text);
    }
    Ok(())
}

async fn speak_spanish(page: &Page) -> Result<()> {
    page.execute(
        "const at = document.querySelector('#language');
        at.value = 'es';
        at.dispatchEvent(new Event('change', { bubbles: true }))",
        vec![],
    )
    .await?;
    page.wait_until("Spanish", "return document.documentElement.lang === 'es'").await
}

/// Nothing that is wider than its column is cut off by the paper's edge.
fn within_margins(file: &Path) -> Result<()> {
    let (wide, high) = *page_sizes(file)?.first().context("no page")?;
    for word in words_on_pages(file)? {
        let inside = word.left > 9.0 && word.right < wide - 9.0;
        ensure!(inside && word.top > 9.0 && word.bottom < high - 3.0, "{:?} runs out", word.text);
    }
    Ok(())
}

async fn the_contents_number_the_sections(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.go_to("book").await?;
    page.wait_for(".book .contents").await?;
    let script = "const said = row => row.replace(/\\s+/g, ' ').trim();
        const contents = [...document.querySelectorAll('.book .contents tr')].map(row =>
            said(row.querySelector('.number').textContent + ' ' + row.querySelector('th').textContent));
        const heads = [...document.querySelectorAll('.book .chapter > h2')].map(head => said(head.textContent));
        return [contents, heads]";
    let found = page.execute(script, vec![]).await?;
    ensure!(found[0] == found[1], "contents and sections differ: {found}");
    let count = page.kept_project().await?.sheets().count();
    // The body, the sheets, two lists, cautions, workings, sources.
    ensure!(found[0].as_array().map(Vec::len) == Some(count + 6), "{found}");
    Ok(())
}

async fn prints_sheets_marks_and_lists(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.go_to("buy").await?;
    page.click(".ticks label").await?;
    page.wait_for(".ticks .done").await?;
    let project = page.kept_project().await?;
    let all = calc::evaluate(&project);
    let style = project.style();
    // A sheet: what was measured, the working in sight, the cautions.
    page.go_to("s/boards").await?;
    page.wait_for(".answers [data-result]").await?;
    let text = text_of(&page.print_on_its_paper("sheet-boards").await?)?;
    let report = all.sheet("boards").context("no boards")?.as_ref().ok().context("faults")?;
    for step in &report.working {
        ensure!(text.contains(&flat(&step.result)), "no {:?} in print", step.result);
    }
    for caution in &report.cautions {
        ensure!(
            text.contains(&flat(&caution.text.to_string())),
            "no {:?} in print",
            caution.text.to_string()
        );
    }
    let typed = project.typed(&Place::Sheet("boards".into()), "coverage");
    ensure!(text.contains(&flat(&typed)), "no {typed:?} in print");
    for control in ["Fillintheexample", "usual:", "Removethissheet", "Addanother"] {
        ensure!(!text.contains(control), "{control:?} in print");
    }
    // The mark list: every mark of every board.
    page.go_to("marks").await?;
    let text = text_of(&page.print_on_its_paper("marks").await?)?;
    let reports = all.sheets.iter().filter_map(|(_, result)| result.as_ref().as_ref().ok());
    let mut strips = 0;
    for strip in reports.flat_map(|report| &report.marks) {
        strips += 1;
        ensure!(text.contains(&flat(&strip.label)), "no {:?} in print", strip.label);
        for mark in &strip.marks {
            let figure = style.mark(mark.at).text;
            ensure!(text.contains(&flat(&figure)), "no {figure:?} in print");
        }
    }
    ensure!(strips > 5, "{strips} strips");
    // The lists: the project's page gives both, ticked off what is.
    page.go_to("").await?;
    let text = text_of(&page.print_on_its_paper("lists").await?)?;
    for line in &all.buy_list {
        ensure!(text.contains(&flat(&line.line.item)), "no {:?} in print", line.line.item);
    }
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        ensure!(text.contains(&flat(&bar.stock)), "no {:?} in print", bar.stock);
    }
    ensure!(text.contains('✓'), "what is ticked is not ticked in print");
    Ok(())
}

async fn prints_templates_in_true_size(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    let project = page.kept_project().await?;
    let lights = project.sheets().find(|sheet| sheet.kind() == Some("lights"));
    let id = lights.context("the demo has lights")?.id();
    page.go_to(&format!("t/{id}")).await?;
    page.wait_for(".template svg circle").await?;
    for paper in ["A4", "Letter"] {
        page.choose_paper(paper).await?;
        let printed = page.print_on_its_paper(&format!("template-{paper}")).await?;
        let sheet = Picture::of(&printed)?;
        // 10 pixels in a mm. Across the lines of the square, and along the lines of 4 in.
        for (way, lines) in [("down", sheet.long_lines(true)), ("across", sheet.long_lines(false))]
        {
            let [(first, _), (second, _), (_, inches)] = lines.as_slice() else {
                e2e::bail!("{paper}: {way}, lines {lines:?}, not the square's two and one of 4 in");
            };
            let square = second - first;
            ensure!((square - 1000.0).abs() <= 2.0, "{paper}: 100 mm {way} are {square} px");
            ensure!((inches - 1016.0).abs() <= 3.0, "{paper}: 4 in {way} are {inches} px");
        }
    }
    Ok(())
}

async fn what_is_printed_has_no_controls(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    let wanted = [
        (
            "s/boards",
            ".given tr, .answers, .remarks, figure, .strip, table, .working li, .cautions",
        ),
        ("body", ".given tr, figure"),
        ("marks", ".strip svg, .strip strong"),
        ("cuts", ".cut .box"),
        ("today", ".wallet .panel:nth-child(8) li"),
        ("", ".contents, .box, .cut"),
    ];
    for (part, parts) in wanted {
        page.go_to(part).await?;
        page.wait_for_page().await?;
        page.execute("dispatchEvent(new Event('beforeprint'))", vec![]).await?;
        let script = "const paper = document.querySelector('#paper');
            const missing = arguments[0].split(', ').filter(one => !paper.querySelector(one));
            const controls = paper.querySelectorAll('button, input, select, a, summary, [tabindex]:not(.table):not(.drawing-window)');
            return [missing.join(', '), controls.length]";
        let found = page.execute(script, vec![json!(parts)]).await?;
        ensure!(found == json!(["", 0]), "{part:?} on paper: missing and controls: {found}");
        page.execute("dispatchEvent(new Event('afterprint'))", vec![]).await?;
        let rest =
            page.execute("return document.querySelector('#paper').innerHTML", vec![]).await?;
        ensure!(rest == json!(""), "{part:?}: paper is left on the page");
    }
    Ok(())
}

async fn templates_join_piece_to_piece(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let project = page.kept_project().await?;
    let trim = project.sheets().find(|sheet| sheet.kind() == Some("trim"));
    page.go_to(&format!("s/{}", trim.context("the demo has a trim")?.id())).await?;
    page.click_path("//a[contains(., 'Full-size templates')]").await?;
    page.wait_for(".template.control svg").await?;
    // Every piece is as wide on paper as it says, and crosses of neighbours lie in the same spots.
    let script = "const pieces = [...document.querySelectorAll('.cut-out .template svg')];
        return pieces.map(svg => ({
            size: [svg.getAttribute('width'), svg.getAttribute('height')],
            box: svg.getAttribute('viewBox').trim().split(' ').map(Number),
            joints: [...svg.querySelectorAll('.joint')].map(one => one.getAttribute('d')),
            shown: svg.getBoundingClientRect().width }))";
    let Value::Array(pieces) = page.execute(script, vec![]).await? else {
        e2e::bail!("pieces are a list")
    };
    ensure!(pieces.len() > 3, "{} pieces", pieces.len());
    for (index, piece) in pieces.iter().enumerate() {
        let width = piece["box"][2].as_f64().unwrap_or_default();
        ensure!(piece["size"][0] == json!(format!("{width}mm")), "piece {index}: {piece}");
        let shown = piece["shown"].as_f64().unwrap_or_default();
        ensure!((shown - width / 25.4 * 96.0).abs() < 1.0, "piece {index} is {shown} px wide");
        let joints = piece["joints"].as_array().map_or(0, Vec::len);
        let wanted = if index == 0 || index + 1 == pieces.len() { 1 } else { 2 };
        ensure!(joints == wanted, "piece {index} has {joints} joints");
        if let Some(next) = pieces.get(index + 1) {
            let last = piece["joints"].as_array().and_then(|all| all.last());
            ensure!(last == next["joints"].get(0), "pieces {index} and the next: {piece} {next}");
        }
    }
    Ok(())
}

async fn teaches_with_the_demo(page: &mut Page) -> Result<()> {
    page.open("#/").await?;
    // One tap to the first answer.
    page.click("[data-do=try][data-with=imperial]").await?;
    page.wait_for(".answers [data-result]").await?;
    page.wait_for_text(".guide [aria-current=step]", "1 Look").await?;
    let before = page.marks().await?;
    page.wait_for_text(".guide p", &before[1]).await?;
    page.click(".guide [data-do=change]").await?;
    page.wait_for_text(".guide [aria-current=step]", "2 Change").await?;
    // What stands there is typed over.
    page.press("9").await?;
    page.wait_for_text(".guide [aria-current=step]", "3 Your own").await?;
    let after = page.marks().await?;
    ensure!(before.len() == after.len() && before != after, "{before:?} then {after:?}");
    ensure!(after[0] == "9 in", "the first mark is {}", after[0]);
    page.wait_for_text(".guide p", &format!("from {} to {}", before[1], after[1])).await?;
    page.screenshot("first-steps").await?;
    page.click(".guide [data-do=own]").await?;
    page.wait_until("the body of a rig of one's own", "return location.hash.endsWith('/body')")
        .await?;
    page.wait_for(".plan [data-do=ask][data-with=length]").await?;
    page.wait_until_gone(".guide aside").await?;
    // Whoever was through is not asked again, and it is in nobody's way.
    page.open("#/").await?;
    page.wait_for_text(".projects", "My rig").await?;
    page.wait_until_gone(".try").await?;
    page.reload().await?;
    page.wait_for("[data-do=new]").await?;
    page.wait_until_gone(".try").await
}

async fn an_empty_sheet_shows_its_example(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.add_sheet("coating").await?;
    page.click(".example [data-fill]").await?;
    page.wait_for(".answers [data-result]").await?;
    page.settle().await?;
    let hidden =
        page.execute("return document.querySelector('.example').checkVisibility()", vec![]).await?;
    ensure!(hidden == json!(false), "the example is still offered");
    page.click("[aria-label=Undo]").await?;
    page.wait_for(".example [data-fill]").await?;
    Ok(())
}

async fn says_where_the_tape_goes_by_a_drawing(page: &mut Page) -> Result<()> {
    page.begin_project(Metric).await?;
    page.go_to("body").await?;
    page.wait_for("[data-field=length] .figure").await?;
    page.add_sheet("trim").await?;
    page.wait_for("[data-field=height] .figure").await?;
    // In a row it comes with the focus, where there is room for it.
    page.fill("corners.0.standoff", "12").await?;
    // A window without a window manager is never active, so WebKit's fields never count as focused here.
    if page.engine() != Engine::WebKit {
        page.wait_for("[data-field='corners.0.standoff'] .figure").await?;
    }
    let wide = page.execute("return document.documentElement.scrollWidth", vec![]).await?;
    ensure!(wide.as_u64() <= Some(PHONE.0.into()), "the page is {wide} wide");
    Ok(())
}

async fn axe_finds_nothing_on_paper_and_first_steps(page: &mut Page) -> Result<()> {
    page.open("#/").await?;
    page.wait_for(".try").await?;
    page.click("[data-do=try][data-with=metric]").await?;
    page.wait_for(".guide aside").await?;
    let project = page.kept_project().await?;
    let boards = project.sheets().find(|sheet| sheet.kind() == Some("boards"));
    let boards = format!("t/{}", boards.context("the demo has boards")?.id());
    let mut found = Vec::new();
    for part in ["s/s3", "book", "today", &boards] {
        page.go_to(part).await?;
        page.wait_for_page().await?;
        for light in ["day", "night"] {
            page.set_light(light).await?;
            let here = page.axe().await?;
            found.extend(here.into_iter().map(|one| format!("{part} by {light}: {one}")));
        }
        let wide = page.execute("return document.documentElement.scrollWidth", vec![]).await?;
        ensure!(wide.as_u64() <= Some(PHONE.0.into()), "{part} is {wide} wide");
    }
    ensure!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}

trait Paper {
    async fn choose_paper(&self, name: &str) -> Result<()>;
}

impl Paper for Page {
    async fn choose_paper(&self, name: &str) -> Result<()> {
        let script = "const select = document.querySelector('#paper-size');
            select.value = arguments[0].toLowerCase();
            select.dispatchEvent(new Event('change', { bubbles: true }))";
        self.execute(script, vec![json!(name)]).await?;
        self.wait_until_with(
            "the paper",
            "return document.documentElement.dataset.paper === arguments[0].toLowerCase()",
            vec![json!(name)],
        )
        .await
    }
}

fn text_of(file: &Path) -> Result<String> {
    let text = Command::new("pdftotext").arg("-layout").arg(file).arg("-").output()?;
    // Columns and hyphens break lines anywhere; only the letters count.
    let raw = Command::new("pdftotext").arg("-raw").arg(file).arg("-").output()?;
    let both = [text.stdout, raw.stdout].concat();
    Ok(flat(&String::from_utf8_lossy(&both)))
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect()
}

/// The lines of a PDF, column by column.
fn lines_of(file: &Path) -> Result<Vec<String>> {
    let raw = Command::new("pdftotext").arg("-raw").arg(file).arg("-").output()?;
    Ok(String::from_utf8_lossy(&raw.stdout).lines().map(str::to_owned).collect())
}

/// A word and where it stands on its page. [mm]
struct Word {
    text: String,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

fn words_on_pages(file: &Path) -> Result<Vec<Word>> {
    let boxes = Command::new("pdftotext").arg("-bbox").arg(file).arg("-").output()?;
    let boxes = String::from_utf8_lossy(&boxes.stdout).into_owned();
    let words = boxes.lines().filter(|line| line.trim_start().starts_with("<word "));
    words
        .map(|line| {
            let text = line.split(['>', '<']).nth(2).unwrap_or_default().to_owned();
            let [left, top, right, bottom] =
                ["xMin", "yMin", "xMax", "yMax"].map(|name| attribute(line, name));
            Ok(Word { text, left: left?, top: top?, right: right?, bottom: bottom? })
        })
        .collect()
}

/// A length in a line of boxes. [mm]
fn attribute(line: &str, name: &str) -> Result<f64> {
    let rest = line.split_once(&format!("{name}=\"")).context("no size")?.1;
    Ok(rest.split('"').next().context("no size")?.parse::<f64>()? / POINTS)
}

/// Width and height of every page. [mm]
fn page_sizes(file: &Path) -> Result<Vec<(f64, f64)>> {
    let boxes = Command::new("pdftotext").arg("-bbox").arg(file).arg("-").output()?;
    let boxes = String::from_utf8_lossy(&boxes.stdout).into_owned();
    let pages = boxes.lines().filter(|line| line.trim_start().starts_with("<page "));
    pages.map(|line| Ok((attribute(line, "width")?, attribute(line, "height")?))).collect()
}

fn near(a: (f64, f64), b: (f64, f64)) -> bool {
    (a.0 - b.0).abs() < 0.6 && (a.1 - b.1).abs() < 0.6
}

/// A printed page in grey, ten pixels in a mm.
struct Picture {
    width: usize,
    pixels: Vec<u8>,
}

impl Picture {
    fn of(file: &Path) -> Result<Self> {
        let out = file.with_extension("");
        let done = Command::new("pdftoppm")
            .args(["-r", "254", "-gray", "-singlefile"])
            .arg(file)
            .arg(&out)
            .status()?;
        ensure!(done.success(), "pdftoppm fails");
        let picture = out.with_extension("pgm");
        let bytes = std::fs::read(&picture)?;
        std::fs::remove_file(&picture)?;
        // P5, width, height, 255, then the pixels.
        let mut parts = bytes.splitn(4, |byte| byte.is_ascii_whitespace());
        let mut part = || parts.next().map(|part| String::from_utf8_lossy(part).into_owned());
        ensure!(part().as_deref() == Some("P5"), "not a grey picture");
        let width: usize = part().context("no width")?.parse()?;
        let height: usize = part().context("no height")?.parse()?;
        let pixels = bytes[bytes.len() - width * height..].to_vec();
        Ok(Self { width, pixels })
    }

    /// Lines longer than 90 mm, along rows or along columns: the middle of each, and its length. [px]
    fn long_lines(&self, rows: bool) -> Vec<(f64, f64)> {
        let height = self.pixels.len() / self.width;
        let (count, along) = if rows { (height, self.width) } else { (self.width, height) };
        let dark = |line: usize, at: usize| {
            let (row, column) = if rows { (line, at) } else { (at, line) };
            self.pixels[row * self.width + column] < 128
        };
        let mut lines: Vec<(usize, usize, usize)> = Vec::new();
        for line in 0..count {
            let (mut longest, mut run) = (0, 0);
            for at in 0..along {
                run = if dark(line, at) { run + 1 } else { 0 };
                longest = longest.max(run);
            }
            if longest < 900 {
                continue;
            }
            match lines.last_mut() {
                Some((_, last, length)) if *last + 1 == line => {
                    *last = line;
                    *length = longest.max(*length);
                }
                _ => lines.push((line, line, longest)),
            }
        }
        let middle =
            |(from, to, length): (usize, usize, usize)| ((from + to) as f64 / 2.0, length as f64);
        lines.into_iter().map(middle).collect()
    }
}
