//! The shell around the app: it mounts, works offline, updates itself safely, and keeps to its own origin.

use e2e::{Page, Result, copy_of_dist, ensure, in_each_engine, next_version};
use serde_json::json;
use std::time::Duration;

in_each_engine!(
    mounts_at_a_phone_size,
    reloads_offline_after_one_visit,
    fails_offline_without_its_worker,
    breaks_no_content_security_policy,
    sees_what_the_policy_forbids,
    offers_a_new_version_and_takes_it_when_asked,
    keeps_the_old_version_when_the_new_one_comes_in_half,
    axe_finds_nothing,
    axe_finds_what_is_wrong,
);

async fn mounts_at_a_phone_size(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.check_phone_width().await?;
    page.wait_for_text("h1", "Battenbook").await?;
    page.wait_until_gone("#opening").await?;
    page.screenshot("start").await?;
    Ok(())
}

async fn reloads_offline_after_one_visit(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.execute("localStorage.setItem('e2e', 'kept')", vec![]).await?;
    page.wait_until_kept().await?;
    page.go_offline();
    page.reload().await?;
    page.wait_for_text("h1", "Battenbook").await?;
    let kept = page.execute("return localStorage.getItem('e2e')", vec![]).await?;
    ensure!(kept == json!("kept"), "local storage holds {kept}");
    // A deep link typed into the address line.
    page.execute("location.hash = '#/somewhere'", vec![]).await?;
    page.reload().await
}

/// The negative control: without the service worker the page must fail, or the test above proves nothing.
async fn fails_offline_without_its_worker(page: &mut Page) -> Result<()> {
    let copy = copy_of_dist()?;
    std::fs::remove_file(copy.join("sw.js"))?;
    page.site.set_folder(&copy);
    page.open("").await?;
    page.reload().await?;
    page.go_offline();
    let reloaded = page.reload_within(Duration::from_secs(3)).await;
    ensure!(reloaded.is_err(), "the page came although nothing keeps it and the server is gone");
    Ok(())
}

/// A copy of the site whose page notes every breach of the policy, from before the policy takes effect.
fn with_a_witness(body: &str) -> Result<std::path::PathBuf> {
    let copy = copy_of_dist()?;
    let witness = "window.breaches = [];
        document.addEventListener('securitypolicyviolation', e => breaches.push(e.violatedDirective + ' ' + e.blockedURI));";
    std::fs::write(copy.join("witness.js"), witness)?;
    let page = std::fs::read_to_string(copy.join("index.html"))?;
    let page = page
        .replace("<meta http-equiv", "<script src=\"./witness.js\"></script>\n<meta http-equiv")
        .replace("</body>", &format!("{body}</body>"));
    ensure!(page.contains("witness.js") && page.contains(body), "the page takes the witness");
    std::fs::write(copy.join("index.html"), page)?;
    Ok(copy)
}

async fn breaks_no_content_security_policy(page: &mut Page) -> Result<()> {
    page.site.set_folder(&with_a_witness("")?);
    page.open("").await?;
    page.wait_for("h1").await?;
    let breaches = page.execute("return window.breaches", vec![]).await?;
    ensure!(breaches == json!([]), "breaches: {breaches}");
    Ok(())
}

/// The negative control of the witness, and the proof that the policy is in force.
async fn sees_what_the_policy_forbids(page: &mut Page) -> Result<()> {
    page.site.set_folder(&with_a_witness(
        "<p style=\"color:red\">inline</p><script>window.inline = true</script>",
    )?);
    page.open("").await?;
    page.wait_until("two breaches", "return window.breaches.length === 2").await?;
    let ran = page.execute("return window.inline === true", vec![]).await?;
    ensure!(ran == json!(false), "an inline script ran");
    Ok(())
}

async fn version(page: &Page) -> Result<String> {
    let version = page.execute("return document.documentElement.dataset.version", vec![]).await?;
    Ok(version.as_str().unwrap_or_default().to_owned())
}

async fn caches(page: &Page) -> Result<usize> {
    let script = "const done = arguments[0]; caches.keys().then(keys => done(keys.length))";
    Ok(page.browser().execute_async(script, vec![]).await?.convert()?)
}

async fn offers_a_new_version_and_takes_it_when_asked(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.wait_until_kept().await?;
    page.reload().await?;
    let first = version(page).await?;
    page.execute("localStorage.setItem('e2e', 'kept')", vec![]).await?;
    page.site.set_folder(&next_version()?.folder);
    page.look_for_update().await?;
    page.wait_for_text("#notice", "A new version is ready").await?;
    ensure!(version(page).await? == first, "the page in use changed by itself");
    page.screenshot("update-offered").await?;
    page.click_and_wait_for_reload("#notice button").await?;
    ensure!(version(page).await? == "next", "the new version does not run");
    ensure!(caches(page).await? == 1, "the old version is still kept");
    let kept = page.execute("return localStorage.getItem('e2e')", vec![]).await?;
    ensure!(kept == json!("kept"), "local storage holds {kept}");
    page.go_offline();
    page.reload().await?;
    ensure!(version(page).await? == "next", "the new version is not kept");
    Ok(())
}

async fn keeps_the_old_version_when_the_new_one_comes_in_half(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.wait_until_kept().await?;
    page.reload().await?;
    let first = version(page).await?;
    let next = next_version()?;
    std::fs::remove_file(next.folder.join(&next.changed_file))?;
    page.site.set_folder(&next.folder);
    page.look_for_update().await?;
    let script = "const done = arguments[0];
        navigator.serviceWorker.getRegistration().then(r => done(!r.installing && !r.waiting && r.active !== null))";
    let mut settled = false;
    for _ in 0..100 {
        settled = page.browser().execute_async(script, vec![]).await?.convert()?;
        if settled {
            break;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    ensure!(settled, "the half version was not given up");
    ensure!(caches(page).await? == 1, "half a version is kept");
    page.go_offline();
    page.reload().await?;
    ensure!(version(page).await? == first, "the old version does not run any more");
    Ok(())
}

async fn axe_finds_nothing(page: &mut Page) -> Result<()> {
    page.open("").await?;
    page.wait_for("h1").await?;
    let found = page.axe().await?;
    ensure!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}

/// The negative control: a picture without a text and a field without a label.
async fn axe_finds_what_is_wrong(page: &mut Page) -> Result<()> {
    page.open("").await?;
    // The app runs a moment before its first page is there: it looks into its stores first.
    page.wait_for_page().await?;
    let bad = "const picture = document.createElement('img'); picture.src = './icon.svg';
        document.querySelector('main').append(picture, document.createElement('input'))";
    page.execute(bad, vec![]).await?;
    let found = page.axe().await?.join("\n");
    ensure!(found.contains("image-alt:") && found.contains("label:"), "found only: {found}");
    Ok(())
}
