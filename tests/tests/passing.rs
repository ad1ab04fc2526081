//! From device to device with no server, versions to go back to, and several projects side by side.

use calc::project::{Place, Project};
use e2e::{
    Imperial, Metric, Page, Result, answers_in, bail, ensure, field, in_each_engine,
    project_with_every_sheet,
};
use serde_json::{Value, json};

in_each_engine!(
    passes_a_project_on_by_link,
    shows_what_differs_and_overwrites_nothing,
    passes_a_project_on_by_codes,
    tells_codes_of_two_projects_apart,
    refuses_links_that_mean_harm,
    hands_a_file_to_the_share_sheet,
    says_so_where_nothing_can_be_packed,
    goes_back_to_a_version_and_forth_again,
    searches_and_renames_projects,
    keeps_both_after_a_conflict_of_two_tabs,
    says_when_space_is_getting_short,
    keeps_the_name_in_the_header_within_its_line,
    axe_finds_nothing_on_what_was_received,
);

/// The demo's coating sheet, and the number of coats that it begins with.
const FLOOR: &str = "s1";

/// The hash of the link on the page for passing on.
async fn link(page: &mut Page) -> Result<String> {
    page.go_to("pass").await?;
    let link = page.value("#link").await?;
    let Some(hash) = link.strip_prefix(&page.site.url()) else {
        bail!("the link leads elsewhere: {link}")
    };
    ensure!(hash.starts_with("#/get/"), "the data is not in the fragment: {hash}");
    Ok(hash.to_owned())
}

/// Another device: nothing is kept there.
async fn on_a_fresh_device(page: &Page) -> Result<()> {
    page.clear_device().await
}

/// Comes by a link, is asked, and keeps what came.
async fn take(page: &mut Page, link: &str) -> Result<()> {
    page.arrive(link).await?;
    page.wait_for_text("h1", "Keep").await?;
    page.click("[data-do=keep]").await
}

/// Comes by a code; of a sequence that is new here it is asked first.
async fn scan_in(page: &mut Page, code: &str) -> Result<()> {
    page.arrive(code).await?;
    page.wait_until(
        "something to read",
        "return !document.querySelector('h1')?.innerText.includes('Reading')",
    )
    .await?;
    if page.text("h1").await?.contains("keep it?") {
        page.click("[data-do=keep-codes]").await?;
        page.wait_for_text("h1", "is here").await?;
    }
    Ok(())
}

async fn set_coats(page: &mut Page, coats: &str) -> Result<()> {
    page.go_to("s/s1").await?;
    page.fill("coats", coats).await?;
    page.leave_field().await?;
    page.settle().await
}

fn coats(project: &Project) -> String {
    project.typed(&Place::Sheet(FLOOR.into()), "coats")
}

async fn passes_a_project_on_by_link(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    set_coats(page, "7").await?;
    let sent = page.kept_project().await?;
    let link = link(page).await?;
    on_a_fresh_device(page).await?;
    // It is asked first, and nothing is kept until the answer.
    page.arrive(&link).await?;
    page.wait_for_text("h1", "Keep “Bookmobile").await?;
    let said = page.text("main").await?;
    let sheets = format!("{} sheets", sent.sheets().count());
    for words in [&sheets, "KB", "less than 1 % of the room", "Nothing is kept yet"] {
        ensure!(said.contains(words), "no {words:?} in {said}");
    }
    page.screenshot("link-asks").await?;
    let kept =
        "return Object.keys(localStorage).filter(key => / (a|b|part|received) /.test(key)).length";
    ensure!(page.execute(kept, vec![]).await? == json!(0), "kept without having been asked");
    page.click("[data-do=leave]").await?;
    page.wait_for_text("main", "No projects on this device yet").await?;
    take(page, &link).await?;
    page.wait_for_text("h1", "Bookmobile").await?;
    page.wait_for_text(".received", "Received, and kept").await?;
    ensure!(page.kept_project().await? == sent, "what came is not what was sent");
    // Going back does not take it in once more, and the notice goes when it was read.
    page.click(".received button").await?;
    page.wait_until("the notice to go", "return document.querySelector('.received').hidden")
        .await?;
    page.go_to("s/s1").await?;
    page.wait_for_answers(&answers_in(&sent, FLOOR)?).await?;
    page.arrive(&link).await?;
    page.wait_for_text("h1", "You already have this project").await?;
    page.open("#/").await?;
    page.wait_for_text(".projects", "Bookmobile").await?;
    let listed =
        page.execute("return document.querySelectorAll('.projects li').length", vec![]).await?;
    ensure!(listed == json!(1), "{listed} projects");
    Ok(())
}

async fn shows_what_differs_and_overwrites_nothing(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let theirs = page.kept_project().await?;
    let home = page.project_hash().await?;
    let link = link(page).await?;
    set_coats(page, "7").await?;
    let mine = page.kept_project().await?;

    take(page, &link).await?;
    page.wait_for_text("h1", "Received: Bookmobile").await?;
    page.wait_for_text("main", "Maple floor finish").await?;
    let words = format!("Coats yours: 7 → received: {}", coats(&theirs));
    let script = "return [...document.querySelectorAll('.different li')].map(one => one.textContent.replace(/\\s+/g, ' '))";
    let lines: Vec<String> = serde_json::from_value(page.execute(script, vec![]).await?)?;
    ensure!(lines.contains(&words), "no {words:?} in {lines:#?}");
    // The answers, number by number, in both.
    let (here, there) = (answers_in(&mine, FLOOR)?, answers_in(&theirs, FLOOR)?);
    ensure!(here[0].text != there[0].text, "the first answer hangs on the coats");
    let words = format!("{} yours: {} → received: {}", here[0].label, here[0].text, there[0].text);
    ensure!(lines.contains(&words), "no {words:?} in {lines:#?}");
    page.screenshot("received-beside").await?;

    // Both: two projects, and mine is as it was.
    page.click("[data-choose=both]").await?;
    page.wait_for_text("h1", "(received)").await?;
    ensure!(coats(&page.kept_project().await?) == coats(&theirs), "not theirs");
    page.open(&home).await?;
    page.wait_until_gone(".received").await?;
    ensure!(page.kept_project().await? == mine, "mine is not as it was");

    // Mine: what came is taken out, and can be brought back.
    take(page, &link).await?;
    page.click("[data-choose=mine]").await?;
    page.wait_until_with("mine", "return location.hash === arguments[0]", vec![json!(home)])
        .await?;
    ensure!(page.kept_project().await? == mine, "mine is not as it was");
    page.open("#/").await?;
    page.wait_for_text(".bin", "Bookmobile").await?;

    // Theirs: mine stays as a version.
    take(page, &link).await?;
    page.click("[data-choose=theirs]").await?;
    page.wait_until_with("theirs", "return location.hash === arguments[0]", vec![json!(home)])
        .await?;
    page.wait_for_text("h1", "Bookmobile").await?;
    ensure!(page.kept_project().await? == theirs, "not what was taken");
    page.go_to("versions").await?;
    page.click_path("//a[contains(., 'Before the received one replaced it')]").await?;
    page.wait_for_text("main", "Maple floor finish").await?;
    page.click("[data-go-back]").await?;
    page.wait_until_with("the project", "return location.hash === arguments[0]", vec![json!(home)])
        .await?;
    ensure!(page.kept_project().await? == mine, "mine is lost");
    Ok(())
}

/// Looks at the code on the page as a camera does: its pixels, as painted.
async fn scan(page: &Page) -> Result<(usize, usize, String)> {
    let script = "
        const done = arguments[arguments.length - 1], side = 480;
        const svg = document.querySelector('svg.code').cloneNode(true);
        svg.setAttribute('width', side);
        svg.setAttribute('height', side);
        const image = new Image();
        image.onerror = () => done('no picture');
        image.onload = () => {
            const canvas = document.createElement('canvas');
            canvas.width = canvas.height = side;
            const context = canvas.getContext('2d');
            context.fillStyle = getComputedStyle(document.querySelector('svg.code')).backgroundColor;
            context.fillRect(0, 0, side, side);
            context.drawImage(image, 0, 0, side, side);
            const pixels = context.getImageData(0, 0, side, side).data;
            let text = '';
            for (let at = 0; at < pixels.length; at += 4) text += pixels[at] + pixels[at + 1] + pixels[at + 2] < 384 ? '#' : '.';
            done(text);
        };
        image.src = 'data:image/svg+xml,' + encodeURIComponent(new XMLSerializer().serializeToString(svg))";
    let pixels = page.browser().execute_async(script, vec![]).await?.json().clone();
    let pixels = pixels.as_str().unwrap_or_default().as_bytes();
    ensure!(pixels.len() == 480 * 480, "{}", String::from_utf8_lossy(pixels));
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(480, 480, |x, y| {
        if pixels[y * 480 + x] == b'#' { 0 } else { 255 }
    });
    let grids = picture.detect_grids();
    ensure!(grids.len() == 1, "{} codes in the picture", grids.len());
    let (_, text) = grids[0].decode()?;
    let link =
        page.execute("return document.querySelector('[data-link]').dataset.link", vec![]).await?;
    ensure!(link == json!(text), "the code reads {text}, drawn for {link}");
    let Some(hash) = text.strip_prefix(&page.site.url()) else { bail!("leads elsewhere: {text}") };
    let mut fields = hash.trim_start_matches("#/get/").split('.');
    let mut number = || fields.next().and_then(|field| field.parse().ok()).unwrap_or(0);
    Ok((number(), number(), hash.to_owned()))
}

/// The hashes of all codes of the open project, read from the page.
async fn scan_all(page: &mut Page) -> Result<Vec<String>> {
    page.go_to("pass").await?;
    page.wait_for("svg.code").await?;
    let mut codes = Vec::new();
    loop {
        let (number, count, hash) = scan(page).await?;
        if count == 0 {
            return Ok(vec![hash]);
        }
        ensure!(number == codes.len() + 1, "code {number} after {}", codes.len());
        codes.push(hash);
        if number == count {
            return Ok(codes);
        }
        page.click("[data-step=next]").await?;
        page.wait_for_text("figcaption", &format!("Code {} of {count}", number + 1)).await?;
    }
}

async fn passes_a_project_on_by_codes(page: &mut Page) -> Result<()> {
    // A small one is one code, also by night.
    page.begin_project(Metric).await?;
    page.go_to("pass").await?;
    page.set_light("night").await?;
    let one = scan_all(page).await?;
    ensure!(one.len() == 1, "{} codes for an empty project", one.len());
    page.screenshot("one-code-by-night").await?;
    page.set_light("day").await?;
    page.open_demo(Imperial).await?;
    set_coats(page, "6").await?;
    let sent = page.kept_project().await?;
    let mut codes = scan_all(page).await?;
    println!("the demo is {} codes", codes.len());
    ensure!(codes.len() > 2, "{} codes for the demo", codes.len());
    page.screenshot("code-of-a-sequence").await?;
    // Nothing moves unless asked.
    let pressed =
        page.execute("return document.querySelector('[data-step=auto]').ariaPressed", vec![]);
    ensure!(pressed.await? == json!("false"), "codes move by themselves");

    page.click("[data-step=auto]").await?;
    page.wait_for_text("figcaption", "Code 1 of").await?;
    page.click("[data-step=auto]").await?;
    let pressed =
        page.execute("return document.querySelector('[data-step=auto]').ariaPressed", vec![]);
    ensure!(pressed.await? == json!("false"), "codes move on though stopped");

    on_a_fresh_device(page).await?;
    take(page, &one[0]).await?;
    page.wait_for_text("h1", "My rig").await?;
    // The others in some order, one of them twice.
    codes.reverse();
    codes.swap(0, 1);
    let last = codes.pop().unwrap_or_default();
    codes.push(codes[0].clone());
    let mut seen = Vec::new();
    page.arrive(&codes[0]).await?;
    page.wait_for_text("h1", "keep it?").await?;
    let parts = "return Object.keys(localStorage).filter(key => key.includes(' part ')).length";
    ensure!(
        page.execute(parts, vec![]).await? == json!(0),
        "a code is kept without having been asked"
    );
    for code in &codes {
        scan_in(page, code).await?;
        page.wait_for_text("h1", "is here").await?;
        if !seen.contains(code) {
            seen.push(code.clone());
        }
        let missing = page.text(".missing-codes").await?;
        let missing = missing.split(", ").count();
        ensure!(missing == codes.len() - seen.len(), "{missing} are missing after {}", seen.len());
    }
    page.screenshot("code-received").await?;
    take(page, &last).await?;
    page.wait_for_text("h1", "Bookmobile").await?;
    ensure!(page.kept_project().await? == sent, "what came is not what was sent");
    // Nothing of the sequence is left.
    let left = "return Object.keys(localStorage).filter(key => key.includes(' part ')).length";
    ensure!(page.execute(left, vec![]).await? == json!(0), "parts are left");
    Ok(())
}

async fn tells_codes_of_two_projects_apart(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let first = scan_all(page).await?;
    page.open_demo(Metric).await?;
    set_coats(page, "5").await?;
    let sent = page.kept_project().await?;
    let second = scan_all(page).await?;
    on_a_fresh_device(page).await?;
    scan_in(page, &first[0]).await?;
    for (index, code) in second.iter().enumerate() {
        scan_in(page, code).await?;
        if index + 1 < second.len() {
            page.wait_for_text(".note", "Another set is waiting too: 1 of its").await?;
        }
    }
    page.click("[data-do=keep]").await?;
    page.wait_for_text("h1", "Bookmobile").await?;
    ensure!(page.kept_project().await? == sent, "what came is not what was sent");
    // A part that was changed on the way spoils its sequence, and that is said.
    for code in &first[..first.len() - 1] {
        scan_in(page, code).await?;
        page.wait_for_text("h1", "is here").await?;
    }
    let last = &first[first.len() - 1];
    let end = if last.ends_with('A') { 'B' } else { 'A' };
    page.arrive(&format!("{}{end}", &last[..last.len() - 1])).await?;
    page.wait_for_text("[role=alert]", "do not belong together").await?;
    // Waiting codes can be forgotten.
    scan_in(page, &first[0]).await?;
    page.click_button("Discard the waiting codes").await?;
    page.wait_for_text("h1", "discarded").await?;
    let left = "return Object.keys(localStorage).filter(key => key.includes(' part ')).length";
    ensure!(page.execute(left, vec![]).await? == json!(0), "parts are left");
    Ok(())
}

/// Packs a text as a link carries it, by the browser itself.
async fn packed(page: &Page, text_of: &str) -> Result<String> {
    let script = format!(
        "const done = arguments[arguments.length - 1];
        const packed = new Blob([{text_of}]).stream().pipeThrough(new CompressionStream('deflate-raw'));
        new Response(packed).arrayBuffer().then(buffer => {{
            let text = '';
            for (const byte of new Uint8Array(buffer)) text += String.fromCharCode(byte);
            done(btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', ''));
        }})"
    );
    let letters = page.browser().execute_async(&script, vec![]).await?.json().clone();
    Ok(format!("#/get/{}", letters.as_str().unwrap_or_default()))
}

async fn refuses_links_that_mean_harm(page: &mut Page) -> Result<()> {
    page.open("#/").await?;
    page.wait_for_page().await?;
    let bomb = packed(page, "new Uint8Array(60_000_000)").await?;
    let no_project = packed(page, "'{\"name\": \"<b>else</b>\"}'").await?;
    let later = packed(page, "'{\"battenbook\": 99}'").await?;
    let hostile = packed(
        page,
        "JSON.stringify({ battenbook: 1, id: '<b>/../', name: '<img src=x onerror=\"window.hit=1\">', sheets: [] })",
    )
    .await?;
    let cut = &hostile[..hostile.len() - 9];
    let cases = [
        (bomb.as_str(), "more than a project can have"),
        (no_project.as_str(), "Nothing was imported"),
        (later.as_str(), "newer"),
        (cut, "cut short"),
        ("#/get/a<b>c", "cut short"),
        ("#/get/99.3.1.AAAA", "cut short"),
        ("#/get/AAAA", "cut short"),
    ];
    for (link, words) in cases {
        page.arrive(link).await?;
        page.wait_for_text("h1", "can't be read").await?;
        page.wait_for_text("[role=alert]", words).await?;
    }
    page.screenshot("link-refused").await?;
    page.open("#/").await?;
    page.wait_for_text("main", "No projects on this device yet").await?;
    page.arrive(&hostile).await?;
    page.wait_for_text("h1", "<img src=x").await?;
    page.click("[data-do=keep]").await?;
    page.wait_for(".received").await?;
    page.wait_for_text("h1", "<img src=x").await?;
    let hash = page.project_hash().await?;
    ensure!(!hash.contains("..") && !hash.contains('<'), "an unfit id is kept: {hash}");
    let hit = page.execute("return window.hit ?? null", vec![]).await?;
    ensure!(hit == Value::Null, "script in a name ran");
    Ok(())
}

async fn hands_a_file_to_the_share_sheet(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let sent = page.kept_project().await?;
    page.go_to("pass").await?;
    page.wait_for("#link").await?;
    let play = "navigator.canShare = data => data.files.every(file => file.name.endsWith(arguments[0]));
        navigator.share = async data => { window.shared = [data.files[0].name, await data.files[0].text()] }";
    for (ending, name) in [(".json", "battenbook-Bookmobile"), (".txt", "battenbook-Bookmobile")] {
        // None of these engines has a share sheet here: the test plays one.
        page.execute(
            &format!("const ending = arguments[0]; {}", play.replace("arguments[0]", "ending")),
            vec![json!(ending)],
        )
        .await?;
        page.go_to("").await?;
        page.go_to("pass").await?;
        page.click("[data-share]").await?;
        page.wait_until("the share sheet", "return window.shared !== undefined").await?;
        let shared: (String, String) =
            serde_json::from_value(page.execute("return window.shared", vec![]).await?)?;
        ensure!(shared.0.starts_with(name) && shared.0.ends_with(ending), "{}", shared.0);
        let project = Project::from_text(&shared.1).map_err(|error| e2e::anyhow!("{error}"))?;
        ensure!(project == sent, "not the project");
        page.execute("delete window.shared", vec![]).await?;
    }
    // Where files cannot be shared, nothing is offered.
    page.execute("navigator.canShare = () => false", vec![]).await?;
    page.go_to("").await?;
    page.go_to("pass").await?;
    page.wait_for("[data-save]").await?;
    page.wait_until_gone("[data-share]").await
}

async fn says_so_where_nothing_can_be_packed(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let link = link(page).await?;
    page.execute("delete window.CompressionStream; delete window.DecompressionStream", vec![])
        .await?;
    page.go_to("").await?;
    page.go_to("pass").await?;
    page.wait_for_text("main", "cannot pack a project").await?;
    page.wait_for("[data-save]").await?;
    page.open(&link).await?;
    page.wait_for_text("[role=alert]", "cannot unpack links").await
}

async fn goes_back_to_a_version_and_forth_again(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let then = page.kept_project().await?;
    page.go_to("versions").await?;
    page.wait_for_text("main", "No versions saved yet").await?;
    page.type_into("#version-name", "before the store").await?;
    page.click("[data-keep]").await?;
    page.wait_for_text(".versions .name", "before the store").await?;
    page.wait_for_text(".versions .label", "KB").await?;
    page.screenshot("versions").await?;
    set_coats(page, "9").await?;
    let now = page.kept_project().await?;
    page.reload().await?;
    page.go_to("versions").await?;
    page.click(".versions a").await?;
    page.wait_for_text("h1", "before the store").await?;
    page.wait_for_text("main", "Coats").await?;
    page.screenshot("version").await?;
    let (before, after) = (answers_in(&then, FLOOR)?, answers_in(&now, FLOOR)?);
    let all = page.text("main").await?;
    for answer in [&before[0], &after[0]] {
        ensure!(all.contains(&answer.text), "no {:?} in {all}", answer.text);
    }
    page.click("[data-go-back]").await?;
    page.wait_for(".cards").await?;
    ensure!(page.kept_project().await? == then, "not as it was then");
    page.click("[aria-label=Undo]").await?;
    page.settle().await?;
    ensure!(page.kept_project().await? == now, "going back cannot be undone");
    // What was there before going back is a version too; deleting one can be taken back.
    page.go_to("versions").await?;
    page.wait_for_text(".versions", "Before going back to before the store").await?;
    let count = "return document.querySelectorAll('.versions li').length";
    ensure!(page.execute(count, vec![]).await? == json!(2), "two versions");
    page.click("[aria-label='Delete before the store']").await?;
    page.wait_for_text(".versions", "Version deleted.").await?;
    ensure!(page.execute(count, vec![]).await? == json!(1), "one version");
    page.click_button("Undo").await?;
    page.wait_until("both", "return document.querySelectorAll('.versions li').length === 2")
        .await?;
    // A project deleted for good leaves none of its versions behind.
    page.open("#/").await?;
    page.click("details.more summary").await?;
    page.click("[data-do=delete]").await?;
    page.click("[data-do=forget]").await?;
    page.wait_until_gone(".bin").await?;
    let left = page.kept_keys().await?;
    ensure!(left.is_empty(), "left: {left:?}");
    Ok(())
}

async fn searches_and_renames_projects(page: &mut Page) -> Result<()> {
    for _ in 0..5 {
        page.begin_project(Metric).await?;
    }
    page.open("#/").await?;
    page.wait_for(".projects").await?;
    page.wait_until_gone("#search").await?;
    page.open_demo(Metric).await?;
    page.open("#/").await?;
    page.type_into("#search", "bOOk").await?;
    let count = "return document.querySelectorAll('.projects li').length === arguments[0]";
    page.wait_until_with("the one found", count, vec![json!(1)]).await?;
    page.wait_for_text(".projects", "Bookmobile").await?;
    page.screenshot("search").await?;
    page.type_into("#search", "nothing has this").await?;
    page.wait_for_text("main", "No project has that in its name").await?;
    page.type_into("#search", "").await?;
    page.wait_until_with("all", count, vec![json!(6)]).await?;
    // Renamed here, and found by the new name.
    page.type_into("#search", "bookmobile").await?;
    page.wait_until_with("the one found", count, vec![json!(1)]).await?;
    page.click("details.more summary").await?;
    page.type_into("details.more input", "Survey <van>").await?;
    page.click("[data-do=rename]").await?;
    page.wait_until_with("none by the old name", count, vec![json!(0)]).await?;
    page.type_into("#search", "<VAN>").await?;
    page.wait_for_text(".projects", "Survey <van>").await?;
    page.click(".projects li > a").await?;
    page.wait_for_text("h1", "Survey <van>").await
}

async fn keeps_both_after_a_conflict_of_two_tabs(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "18 ft").await?;
    // This tab does not hear of the other's saves, as when it slept.
    let deaf =
        "Object.defineProperty(StorageEvent.prototype, 'key', { get: () => 'of no concern' })";
    page.execute(deaf, vec![]).await?;
    let hash = page.execute("return location.hash", vec![]).await?;
    let here = page.leave_for_new_tab(hash.as_str().unwrap_or_default()).await?;
    page.wait_for_value("length", "18 ft").await?;
    page.click(&field("length")).await?;
    page.fill("length", "25").await?;
    page.leave_field().await?;
    page.settle().await?;
    page.back_to_first_tab(&here).await?;
    page.wait_for_value("length", "18 ft").await?;
    let there = page.project_hash().await?;
    page.click(&field("length")).await?;
    page.fill("length", "31").await?;
    page.leave_field().await?;
    page.wait_for_text(".notices:has([data-do=seen])", "Another window changed the same field")
        .await?;
    page.screenshot("conflict").await?;
    // The address waits until no field is typed into.
    page.execute("document.activeElement.blur()", vec![]).await?;
    page.wait_until_with(
        "an address of its own",
        "return !location.hash.startsWith(arguments[0])",
        vec![json!(there)],
    )
    .await?;
    page.wait_for_text(".back", "(other window)").await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "31 ft").await?;
    // It is saved on, and the other tab's is as it was left.
    page.fill("length", "32").await?;
    page.reload().await?;
    page.wait_for_value("length", "32 ft").await?;
    page.arrive(&format!("{there}/s/s4")).await?;
    page.wait_for_value("length", "25 ft").await
}

async fn says_when_space_is_getting_short(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.open("#/").await?;
    page.wait_for(".projects").await?;
    page.wait_until_gone(".room").await?;
    page.execute("localStorage.setItem('filler', 'x'.repeat(4_250_000))", vec![]).await?;
    page.reload().await?;
    page.wait_for_text(".room", "Storage is running low").await?;
    page.execute("localStorage.setItem('more', 'x'.repeat(5_242_000 - 4_250_000 - 20_000 - [...Object.entries(localStorage)].filter(([key]) => key !== 'filler').reduce((sum, [key, text]) => sum + key.length + text.length, 0)))", vec![])
        .await?;
    page.click(".projects li > a").await?;
    page.go_to("versions").await?;
    page.wait_for_text(".room", "Storage is running low").await?;
    // Until nothing more fits: the versions that are kept stay, and so does the project.
    let project = page.kept_project().await?;
    for number in 0..6 {
        page.type_into("#version-name", &format!("version {number}")).await?;
        page.click("[data-keep]").await?;
        page.wait_for(".said").await?;
        if page.text(".said").await?.contains("no room") {
            let kept =
                page.execute("return document.querySelectorAll('.versions li').length", vec![]);
            ensure!(kept.await? == json!(number), "a version is lost");
            ensure!(page.kept_project().await? == project, "the project is not as it was");
            return Ok(());
        }
        page.wait_for_text(".versions", &format!("version {number}")).await?;
    }
    bail!("the storage is never full")
}

async fn keeps_the_name_in_the_header_within_its_line(page: &mut Page) -> Result<()> {
    let mut project: Value = serde_json::from_str(&project_with_every_sheet()?)?;
    project["name"] = json!("Library bus of the northern survey, second fit-out");
    page.open("#/").await?;
    page.wait_for_page().await?;
    page.import(&project.to_string()).await?;
    page.wait_for_text(".said", "Library bus").await?;
    page.open("#/p/every/s/coating").await?;
    page.wait_for(".answers [data-result]").await?;
    let cut = "const name = document.querySelector('.top .where'), style = getComputedStyle(name);
        return name.scrollWidth > name.clientWidth && style.textOverflow === 'ellipsis'
            && style.overflowX === 'hidden' && style.display !== 'inline' && name.clientHeight < 40";
    page.wait_until("the name cut with an ellipsis", cut).await?;
    // Each button at the foot is one line of words.
    let lines = "return [...document.querySelectorAll('.foot button')].map(one => {
        const range = document.createRange();
        range.selectNodeContents(one);
        return new Set([...range.getClientRects()].map(rect => Math.round(rect.top))).size })";
    let lines = page.execute(lines, vec![]).await?;
    ensure!(lines == json!([1, 1]), "lines of the foot's buttons: {lines}");
    Ok(())
}

async fn axe_finds_nothing_on_what_was_received(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let link = link(page).await?;
    let codes = scan_all(page).await?;
    page.go_to("versions").await?;
    page.type_into("#version-name", "before").await?;
    page.click("[data-keep]").await?;
    page.wait_for(".versions li").await?;
    set_coats(page, "7").await?;
    let home = page.project_hash().await?;
    let mut found = Vec::new();
    for light in ["day", "night"] {
        for (hash, part) in [
            (format!("{home}/pass"), "svg.code"),
            (format!("{home}/versions"), ".versions li"),
            (codes[0].clone(), "[data-do=keep-codes], .missing-codes"),
            ("#/get/damaged!".to_owned(), "[role=alert]"),
            (link.clone(), "[data-do=keep]"),
            (String::new(), ".different"),
        ] {
            if hash.is_empty() {
                page.click("[data-do=keep]").await?;
            } else {
                page.arrive(&hash).await?;
            }
            page.wait_for(part).await?;
            page.set_light(light).await?;
            let here = page.axe().await?;
            found.extend(here.into_iter().map(|one| format!("{part} by {light}: {one}")));
        }
        page.click("[data-choose=mine]").await?;
        page.wait_for(".cards").await?;
        page.go_to("versions").await?;
        page.click(".versions a").await?;
        page.wait_for(".different").await?;
        page.set_light(light).await?;
        let here = page.axe().await?;
        found.extend(here.into_iter().map(|one| format!("version by {light}: {one}")));
    }
    ensure!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}
