//! What goes wrong beyond the app itself: it stops, its parts come broken, another site frames it. Each time it is said what
//! happened, what is kept can be had, and there is a way on.

use e2e::{Context, Metric, Page, Request, Response, Result, copy_of_dist, ensure, in_each_engine};
use serde_json::{Value, json};
use std::path::PathBuf;
use std::time::Duration;

in_each_engine!(
    stops_on_an_exception_and_gives_out_what_is_kept,
    stops_when_the_stack_runs_over,
    stops_on_a_trap,
    says_kept_only_where_something_is,
    holds_back_a_project_that_stops_it_each_time,
    says_which_part_is_missing_and_fetches_it_again,
    runs_nothing_that_was_changed_on_the_way,
    mends_itself_past_what_a_cache_has_kept,
    starts_though_the_module_comes_as_another_type,
    starts_without_the_part_that_comes_later,
    goes_on_from_its_copy_while_the_server_fails,
    does_nothing_in_another_site_s_frame,
    axe_finds_nothing_where_it_stopped,
);

/// Every project on the page of a stop, saved to a file.
async fn saved(page: &Page) -> Result<Vec<String>> {
    page.gather_downloads().await?;
    page.click_button("Save every project to a file").await?;
    page.downloads().await
}

/// A copy of the site that can be harmed from within, by events of these names: a script of the driver's may stand in a
/// world of its own, whose errors are not the page's.
fn that_can_be_harmed() -> Result<PathBuf> {
    with_script(
        "const on = (name, harm) => addEventListener(name, harm);
        on('make-a-throw', () => { Date.now = () => { throw new TypeError('broken on purpose') } });
        on('make-an-overflow', () => { Date.now = function deeper() { return deeper() + 1 } });
        // More memory than there is, asked for by the app's own means.
        on('make-a-trap', async () => {
            const map = JSON.parse(document.querySelector('script[type=importmap]').textContent);
            const glue = await import(new URL(Object.keys(map.integrity)[0], document.baseURI));
            const exports = await glue.default();
            setTimeout(() => exports.__wbindgen_malloc(-1, 1));
        });",
    )
}

/// A copy of the site with a script more.
fn with_script(script: &str) -> Result<PathBuf> {
    let copy = copy_of_dist()?;
    std::fs::write(copy.join("harm.js"), script)?;
    let page = std::fs::read_to_string(copy.join("index.html"))?;
    let page = page.replace("<title>", "<script src=\"./harm.js\"></script><title>");
    ensure!(page.contains("harm.js"), "the page takes the script");
    std::fs::write(copy.join("index.html"), page)?;
    Ok(copy)
}

async fn harm(page: &Page, name: &str) -> Result<()> {
    page.execute("window.dispatchEvent(new Event(arguments[0]))", vec![json!(name)]).await?;
    Ok(())
}

/// The demo, changed and kept, in a site that can be harmed.
async fn open_to_be_harmed(page: &mut Page) -> Result<()> {
    page.site.set_folder(&that_can_be_harmed()?);
    page.open_demo(Metric).await?;
    page.go_to("s/s4").await?;
    page.fill("length", "19 ft").await?;
    page.leave_field().await?;
    page.kept_project().await?;
    Ok(())
}

async fn stops_on_an_exception_and_gives_out_what_is_kept(page: &mut Page) -> Result<()> {
    open_to_be_harmed(page).await?;
    harm(page, "make-a-throw").await?;
    page.fill("length", "21 ft").await?;
    page.wait_for_text("#stopped h1", "Battenbook stopped").await?;
    page.wait_for_text("#stopped", "broken on purpose").await?;
    page.wait_for_text("#stopped li", "Bookmobile").await?;
    page.wait_for_text("#stopped", "What was typed after these times is not kept").await?;
    page.screenshot("stopped").await?;
    let texts = saved(page).await?;
    let all: Value = serde_json::from_str(&texts[0])?;
    ensure!(all["projects"].as_array().map(Vec::len) == Some(1), "not one project: {}", texts[0]);
    ensure!(texts[0].contains("19 ft") && !texts[0].contains("21 ft"), "not what was kept");
    // What has ended saves nothing any more, and the way on is there.
    page.execute("window.beforeReload = true", vec![]).await?;
    page.click_button("Reload").await?;
    page.wait_for_value("length", "19 ft").await?;
    // The file is one that the app opens.
    page.clear_device().await?;
    page.arrive("#/").await?;
    page.import(&texts[0]).await?;
    page.wait_for_text(".projects", "Bookmobile").await
}

async fn stops_when_the_stack_runs_over(page: &mut Page) -> Result<()> {
    open_to_be_harmed(page).await?;
    harm(page, "make-an-overflow").await?;
    page.fill("length", "21 ft").await?;
    page.wait_for_text("#stopped h1", "Battenbook stopped").await?;
    page.wait_for_text("#stopped li", "Bookmobile").await?;
    page.click_button("All projects").await?;
    page.wait_for_text(".projects", "Bookmobile").await
}

async fn stops_on_a_trap(page: &mut Page) -> Result<()> {
    open_to_be_harmed(page).await?;
    harm(page, "make-a-trap").await?;
    page.wait_for_text("#stopped h1", "Battenbook stopped").await?;
    page.wait_for_text("#stopped li", "Bookmobile").await?;
    let texts = saved(page).await?;
    ensure!(texts[0].contains("Bookmobile"), "{}", texts[0]);
    Ok(())
}

async fn says_kept_only_where_something_is(page: &mut Page) -> Result<()> {
    page.site.set_folder(&that_can_be_harmed()?);
    // Nothing was ever kept here.
    page.open("#/").await?;
    page.wait_for("main h1").await?;
    harm(page, "make-a-trap").await?;
    page.wait_for_text("#stopped h1", "Battenbook stopped").await?;
    page.wait_for_text("#stopped", "No project is kept on this device").await?;
    let said = page.text("#stopped").await?;
    ensure!(!said.contains("Kept on this device"), "{said}");
    Ok(())
}

/// A copy of the site that fails whenever it shows a project, unless told otherwise.
fn that_stops_at_projects() -> Result<PathBuf> {
    with_script(
        "const plain = Object.getOwnPropertyDescriptor(Element.prototype, 'innerHTML');
        Object.defineProperty(Element.prototype, 'innerHTML', { ...plain, set(text) {
            if (location.hash.startsWith('#/p/') && !sessionStorage.getItem('mended by the test')) throw new Error('broken on purpose');
            plain.set.call(this, text);
        } })",
    )
}

async fn holds_back_a_project_that_stops_it_each_time(page: &mut Page) -> Result<()> {
    page.site.set_folder(&that_stops_at_projects()?);
    page.open("#/").await?;
    page.wait_for("main h1").await?;
    page.import(&e2e::project_with_every_sheet()?).await?;
    page.wait_for_text(".said", "Every sheet").await?;
    page.click(".projects li > a").await?;
    page.wait_for_text("#stopped h1", "Battenbook stopped").await?;
    page.click_button("Reload").await?;
    // The second time it is held back, and offered as a file.
    page.wait_for_text("#stopped h1", "stopped Battenbook the last time").await?;
    page.gather_downloads().await?;
    page.click_button("Save this project to a file").await?;
    let texts = page.downloads().await?;
    let project: Value = serde_json::from_str(&texts[0])?;
    ensure!(project["name"] == json!("Every sheet"), "not the project: {}", project["name"]);
    page.screenshot("held-back").await?;
    // The others are not held back.
    page.click_button("All projects").await?;
    page.wait_for_text(".projects", "Every sheet").await?;
    // Neither is it opened by a tap; opened all the same it stops again.
    page.click(".projects li > a").await?;
    page.wait_for_text("#stopped h1", "stopped Battenbook the last time").await?;
    page.click_button("Open it all the same").await?;
    page.wait_for_text("#stopped h1", "Battenbook stopped").await?;
    page.click_button("Reload").await?;
    page.wait_for_text("#stopped h1", "stopped Battenbook the last time").await?;
    // Once it opens, it is a project like any other.
    page.execute("sessionStorage.setItem('mended by the test', '1')", vec![]).await?;
    page.click_button("Open it all the same").await?;
    page.wait_for_text("h1", "Every sheet").await?;
    page.wait_until(
        "the mark to go",
        "return !Object.keys(localStorage).some(key => key.endsWith(' stops'))",
    )
    .await?;
    page.reload().await?;
    page.wait_for_text("h1", "Every sheet").await
}

fn is_part(request: &Request, ending: &str) -> bool {
    request.path.starts_with("app-") && request.path.ends_with(ending)
}

/// An answer that a host tells browsers to keep for good, as it does with names that carry a hash.
fn kept_for_good(kind: &str, body: impl Into<Vec<u8>>) -> Response {
    let mut response = Response::text(kind, body);
    response.headers[1].1 = "public, max-age=31536000, immutable".to_owned();
    response
}

async fn says_which_part_is_missing_and_fetches_it_again(page: &mut Page) -> Result<()> {
    for (status, words) in
        [("404 Not Found", "answered 404"), ("503 Service Unavailable", "answered 503")]
    {
        page.site.break_with(move |request| {
            let mut response = Response::text("text/plain", "no");
            response.status = status;
            is_part(request, ".wasm").then_some(response)
        });
        page.load().await?;
        page.wait_for_text("#stopped h1", "could not start").await?;
        page.wait_for_text("#stopped [role=alert]", words).await?;
        page.wait_for_text("#stopped", "No project is kept on this device").await?;
    }
    page.screenshot("could-not-start").await?;
    // Asked again while it is still so, it says so again.
    page.click_button("Fetch it all again").await?;
    page.wait_for_text("#stopped [role=alert]", "answered 503").await?;
    page.site.mend();
    page.click_button("Fetch it all again").await?;
    page.wait_for_text("h1", "Battenbook").await?;
    page.wait_until("the app to run", "return document.documentElement.dataset.app === 'running'")
        .await
}

/// The bytes of the app's part with this ending.
fn part(ending: &str) -> Result<Vec<u8>> {
    let mut all = std::fs::read_dir(copy_of_dist()?)?.filter_map(|entry| Some(entry.ok()?.path()));
    let is_it = |path: &PathBuf| {
        let name = path.file_name().map(|name| name.to_string_lossy().into_owned());
        name.is_some_and(|name| name.starts_with("app-") && name.ends_with(ending))
    };
    Ok(std::fs::read(all.find(is_it).with_context(|| format!("no part {ending}"))?)?)
}

async fn runs_nothing_that_was_changed_on_the_way(page: &mut Page) -> Result<()> {
    let (wasm, glue) = (part(".wasm")?, part(".js")?);
    // Cut midway, as by a transfer that broke off; and working as before, but for what somebody put in.
    let cut = wasm[..wasm.len() / 2].to_vec();
    let strange = [glue.as_slice(), b"\nwindow.strange = true;\n"].concat();
    for (wasm, glue) in [(cut, glue), (wasm, strange)] {
        page.site.break_with(move |request| {
            if is_part(request, ".wasm") {
                return Some(Response::text("application/wasm", wasm.clone()));
            }
            is_part(request, ".js").then(|| Response::text("text/javascript", glue.clone()))
        });
        page.load().await?;
        page.wait_for_text("#stopped h1", "could not start").await?;
        page.wait_for_text("#stopped [role=alert]", "cut short or changed").await?;
        let ran = page.execute("return window.strange === true", vec![]).await?;
        ensure!(ran == json!(false), "a changed script ran");
    }
    Ok(())
}

/// While a new version is being put up, a host may answer with a page in place of a file that is not there yet, and tell
/// browsers to keep it for good.
async fn mends_itself_past_what_a_cache_has_kept(page: &mut Page) -> Result<()> {
    page.site.break_with(|request| {
        let page = "<!doctype html><title>Not here</title>";
        (is_part(request, ".wasm") || is_part(request, ".js"))
            .then(|| kept_for_good("text/html; charset=utf-8", page))
    });
    page.load().await?;
    page.wait_for_text("#stopped h1", "could not start").await?;
    page.wait_for_text("#stopped [role=alert]", "a page came in its place").await?;
    page.site.mend();
    // The next load, by no more than the address.
    page.load().await?;
    page.wait_until("the app to run", "return document.documentElement.dataset.app === 'running'")
        .await?;
    page.wait_for_text("h1", "Battenbook").await
}

async fn starts_though_the_module_comes_as_another_type(page: &mut Page) -> Result<()> {
    let dist = copy_of_dist()?;
    page.site.break_with(move |request| {
        let name = request.path.rsplit('/').next().filter(|name| name.ends_with(".wasm"))?;
        let bytes = std::fs::read(dist.join(name)).ok()?;
        Some(Response::text("application/octet-stream", bytes))
    });
    page.open("").await?;
    page.wait_for_text("h1", "Battenbook").await?;
    page.open_demo(Metric).await
}

/// The pages of a project come after the start page: without them that can be used, and says what has not come.
async fn starts_without_the_part_that_comes_later(page: &mut Page) -> Result<()> {
    let away = |request: &Request| {
        let mut answer = Response::text("text/plain", "not now");
        answer.status = "503 Service Unavailable";
        request.path.contains("split_").then_some(answer)
    };
    page.site.break_with(away);
    page.open("").await?;
    page.wait_for_page().await?;
    // Its words have to be in the part that is here.
    let words = "return [...document.querySelectorAll('.try :is(h2, li, button), .begin :is(h2, label, button), .files :is(h2, label), footer p, header :is(button, label)')]
        .map(one => (one.textContent.trim() || one.getAttribute('aria-label') || '(nothing) ' + one.outerHTML))";
    let before: Vec<String> = serde_json::from_value(page.execute(words, vec![]).await?)?;
    ensure!(before.len() > 15, "{before:?}");
    ensure!(!before.iter().any(|one| one.starts_with("(nothing)")), "{before:?}");
    page.click("[data-do=demo][data-with=metric]").await?;
    page.wait_for_text(".said", "have not come").await?;
    page.type_into("#new-name", "Kept van").await?;
    page.click("[data-do=new][data-with=imperial]").await?;
    page.wait_for_text("main [role=status]", "have not come").await?;
    page.click("[data-do=again]").await?;
    page.wait_for_text("main [role=status]", "have not come").await?;
    page.site.mend();
    page.click("[data-do=again]").await?;
    page.wait_for_page().await?;
    page.wait_for_text("body", "Kept van").await?;
    page.open("#/").await?;
    page.wait_for_text("h1", "Battenbook").await?;
    let after: Vec<String> = serde_json::from_value(page.execute(words, vec![]).await?)?;
    let said_otherwise: Vec<_> = before.iter().filter(|one| !after.contains(one)).collect();
    ensure!(said_otherwise.is_empty(), "{said_otherwise:?}");
    Ok(())
}

async fn goes_on_from_its_copy_while_the_server_fails(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.wait_until_kept().await?;
    page.site.break_with(|_| {
        let mut response = Response::text("text/html; charset=utf-8", "<h1>Server error</h1>");
        response.status = "500 Internal Server Error";
        Some(response)
    });
    page.look_for_update().await?;
    page.reload().await?;
    page.wait_for_text("h1", "Bookmobile").await?;
    // Asking past the copy while the server fails harms nothing.
    let script = "const done = arguments[arguments.length - 1];
        fetch('./', { cache: 'reload' }).then(answer => done(answer.status), () => done(0))";
    let status = page.browser().execute_async(script, vec![]).await?.json().clone();
    ensure!(status == json!(500), "what was asked past the copy came from it: {status}");
    page.reload().await?;
    page.wait_for_text("h1", "Bookmobile").await
}

async fn does_nothing_in_another_site_s_frame(page: &mut Page) -> Result<()> {
    let (_server, address) = page.site.framed_by_a_stranger()?;
    page.browser().goto(&address).await?;
    page.browser().enter_frame(0).await?;
    page.wait_for_text("main", "Open Battenbook on its own").await?;
    tokio::time::sleep(Duration::from_millis(500)).await;
    let ran = page.execute("return [document.documentElement.dataset.app, document.getElementById('app') === null]", vec![]).await?;
    ensure!(ran == json!(["framed", true]), "it runs in a stranger's frame: {ran}");
    let link = page.execute("return document.querySelector('main a').href", vec![]).await?;
    ensure!(link == json!(page.site.url()), "the way out leads to {link}");
    // On its own it opens as ever.
    page.browser().enter_default_frame().await?;
    page.open("").await?;
    page.wait_for_text("h1", "Battenbook").await
}

async fn axe_finds_nothing_where_it_stopped(page: &mut Page) -> Result<()> {
    open_to_be_harmed(page).await?;
    harm(page, "make-a-throw").await?;
    page.fill("length", "21 ft").await?;
    page.wait_for_text("#stopped li", "Bookmobile").await?;
    let found = page.axe().await?;
    ensure!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}
