//! Two windows in sight with one project: what is typed in both within milliseconds is kept.
//!
//! `WINDOW_TRIALS=200` makes the trials more.

use calc::project::{Place, Project};
use e2e::{Context, Imperial, Page, Response, Result, bail, ensure, field, in_each_engine};
use serde_json::{Value, json};
use xtask::workspace;

in_each_engine!(
    two_windows_lose_nothing_in_different_fields,
    two_windows_keep_both_of_one_field,
    what_two_windows_add_is_all_there,
    windows_without_their_usual_storage_lose_nothing,
);

fn trials() -> usize {
    std::env::var("WINDOW_TRIALS").ok().and_then(|times| times.parse().ok()).unwrap_or(10)
}

/// How far apart the two windows type, one trial after the other. [ms]
const APART: [i64; 10] = [0, 1, -1, 3, -5, 10, -20, 35, -50, 50];

/// What a window does when its time has come: `type(number)` types into the field at `selector`, and
/// keeps what the field held before.
const TYPE: &str = "
    window.typedAt = 0;
    const type = value => {
        const field = document.querySelector(selector);
        field.focus();
        window.typedOver = field.value;
        field.value = value;
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    };
    const go = () => {
        if (values.length > 0) { type(values.shift()); setTimeout(go, 20) } else window.typedAt = Date.now();
    };
    const channel = new BroadcastChannel('when to type');";

/// Has a window type values into a field, one after the other, when the other window says so.
async fn type_when_told(page: &Page, path: &str, values: &[&str]) -> Result<()> {
    let script = format!(
        "const [selector, values] = arguments; {TYPE}
        channel.onmessage = event => {{ channel.close(); setTimeout(go, event.data - Date.now()) }}"
    );
    page.execute(&script, vec![json!(field(path)), json!(values)]).await?;
    Ok(())
}

/// Tells the other window to type, and has this one type so many milliseconds after it.
async fn type_and_tell(page: &Page, path: &str, values: &[&str], apart: i64) -> Result<()> {
    let script = format!(
        "const [selector, values, apart] = arguments; {TYPE}
        const at = Date.now() + 120;
        channel.postMessage(at);
        channel.close();
        setTimeout(go, at + apart - Date.now())"
    );
    page.execute(&script, vec![json!(field(path)), json!(values), json!(apart)]).await?;
    Ok(())
}

/// When it has typed, and what the field held before the last value.
async fn wait_until_typed(page: &Page) -> Result<(f64, String)> {
    page.wait_until("what is to be typed", "return window.typedAt > 0").await?;
    let answer = page.execute("return [window.typedAt, window.typedOver]", vec![]).await?;
    Ok((answer[0].as_f64().unwrap_or_default(), answer[1].as_str().unwrap_or_default().to_owned()))
}

async fn in_sight(page: &Page) -> Result<()> {
    let state = page.execute("return document.visibilityState", vec![]).await?;
    ensure!(state == json!("visible"), "the window is {state}");
    Ok(())
}

/// All projects that are kept, by the slots in use.
async fn all_kept(page: &Page) -> Result<Vec<Project>> {
    let script = "return Object.keys(localStorage).filter(key => key.includes(' ptr ')).map(key =>
        localStorage[key.replace(' ptr ', ` ${localStorage[key].split(' ')[0]} `)] ?? '')";
    let Value::Array(slots) = page.execute(script, vec![]).await? else {
        bail!("slots are a list")
    };
    let mut projects = Vec::new();
    for slot in slots.iter().filter_map(Value::as_str) {
        let document = slot.split_once('\n').map_or("", |(_, document)| document);
        projects.push(Project::from_text(document).map_err(|error| e2e::anyhow!("{error}"))?);
    }
    Ok(projects)
}

fn typed(project: &Project, path: &str) -> String {
    project.typed(&Place::Sheet("s4".to_owned()), path)
}

async fn two_windows_lose_nothing_in_different_fields(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "18 ft").await?;
    let hash = page.execute("return location.hash", vec![]).await?;
    let first = page.leave_for_new_window(hash.as_str().unwrap_or_default()).await?;
    page.wait_for_value("length", "18 ft").await?;
    let second = page.browser().window().await?;
    let mut farthest = 0.0_f64;
    for number in 0..trials() {
        let length = format!("{} ft", 20 + number);
        let power = format!("{} W", 40 + number);
        in_sight(page).await?;
        type_when_told(page, "power", &[&power]).await?;
        page.back_to_first_tab(&first).await?;
        in_sight(page).await?;
        let apart = APART[number % APART.len()];
        type_and_tell(page, "length", &[&length], apart).await?;
        let (here, _) = wait_until_typed(page).await?;
        page.wait_for_value("power", &power).await?;
        page.wait_for_value("length", &length).await?;
        page.to_new_tab(&second).await?;
        let (there, _) = wait_until_typed(page).await?;
        page.wait_for_value("length", &length).await?;
        page.wait_for_value("power", &power).await?;
        farthest = farthest.max((here - there).abs());
        let all = all_kept(page).await?;
        ensure!(all.len() == 1, "trial {number}: {} projects", all.len());
        let kept = (typed(&all[0], "length"), typed(&all[0], "power"));
        ensure!(kept == (length, power), "trial {number}: kept {kept:?}");
    }
    println!("typed at most {farthest} ms apart");
    // And all of it is there for who comes later.
    let kept = page.kept_project().await?;
    page.reload_window().await?;
    page.wait_for_value("length", &typed(&kept, "length")).await?;
    page.wait_for_value("power", &typed(&kept, "power")).await
}

async fn two_windows_keep_both_of_one_field(page: &mut Page) -> Result<()> {
    let wanted = trials().div_ceil(5);
    let (mut blind, mut number) = (0, 0);
    // A window that has taken the other's value in before it types is no trial: it types over what it
    // shows.
    while blind < wanted {
        ensure!(number < 10 * wanted, "of {number} trials {blind} are blind");
        // A demo of its own for each trial: the app would open the one of the trial before.
        page.open("#/").await?;
        let forget = "Object.keys(localStorage).filter(key => / set demo$/.test(key))
            .forEach(key => localStorage.removeItem(key))";
        page.execute(forget, vec![]).await?;
        page.open_demo(Imperial).await?;
        page.go_to("s/s4").await?;
        page.wait_for_value("length", "18 ft").await?;
        let hash = page.execute("return location.hash", vec![]).await?;
        let first = page.leave_for_new_window(hash.as_str().unwrap_or_default()).await?;
        page.wait_for_value("length", "18 ft").await?;
        let second = page.browser().window().await?;
        let (mine, theirs) = (format!("{} ft", 100 + number), format!("{} ft", 300 + number));
        type_when_told(page, "length", &[&theirs]).await?;
        page.back_to_first_tab(&first).await?;
        type_and_tell(page, "length", &[&mine], APART[number % APART.len()]).await?;
        let (_, over_here) = wait_until_typed(page).await?;
        page.to_new_tab(&second).await?;
        let (_, over_there) = wait_until_typed(page).await?;
        page.leave_field().await?;
        number += 1;
        if over_here == "18 ft" && over_there == "18 ft" {
            blind += 1;
            both_are_there(page, [&mine, &theirs]).await?;
        }
        page.close_window(&first).await?;
    }
    println!("typed blindly {blind} of {number} times");
    Ok(())
}

/// Both values of the one field are kept, one of them in a project that is named as a copy.
async fn both_are_there(page: &Page, values: [&String; 2]) -> Result<()> {
    let mut kept = Vec::new();
    for _ in 0..40 {
        page.settle().await?;
        let of = |project: &Project| (typed(project, "length"), project.name().to_owned());
        kept = all_kept(page).await?.iter().map(of).collect();
        let has = |value: &String| kept.iter().any(|(length, _)| length == value);
        if values.into_iter().all(has)
            && kept.iter().any(|(_, name)| name.ends_with("(other window)"))
        {
            return Ok(());
        }
    }
    bail!("{values:?} were typed, kept: {kept:?}")
}

async fn what_two_windows_add_is_all_there(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("s/s4").await?;
    let project = page.project_hash().await?;
    let first = page.leave_for_new_window(&format!("{project}/s/s1")).await?;
    page.wait_for(&field("coats")).await?;
    let second = page.browser().window().await?;
    // Many keystrokes in both at once, each saved.
    let coats: Vec<String> = (2..42).map(|number| number.to_string()).collect();
    let lengths: Vec<String> = (100..140).map(|number| number.to_string()).collect();
    let (coats, lengths): (Vec<&str>, Vec<&str>) =
        (coats.iter().map(String::as_str).collect(), lengths.iter().map(String::as_str).collect());
    type_when_told(page, "coats", &coats).await?;
    page.back_to_first_tab(&first).await?;
    type_and_tell(page, "length", &lengths, 0).await?;
    wait_until_typed(page).await?;
    page.to_new_tab(&second).await?;
    wait_until_typed(page).await?;
    page.leave_field().await?;
    page.back_to_first_tab(&first).await?;
    page.leave_field().await?;
    page.wait_for_value("length", "139 ft").await?;
    // In one project, since the fields are two.
    let mut kept = Vec::new();
    for _ in 0..40 {
        page.settle().await?;
        let of = |project: &Project| {
            (typed(project, "length"), project.typed(&Place::Sheet("s1".to_owned()), "coats"))
        };
        kept = all_kept(page).await?.iter().map(of).collect();
        if kept == [("139 ft".to_owned(), "41".to_owned())] {
            return Ok(());
        }
    }
    bail!("kept: {kept:?}")
}

/// Where the browser refuses local storage, windows tell each other what they keep, and the second
/// store has all of it.
async fn windows_without_their_usual_storage_lose_nothing(page: &mut Page) -> Result<()> {
    let whole = std::fs::read_to_string(workspace::dist().join("index.html"))?;
    let (before, policy) =
        whole.split_once("<meta http-equiv=\"Content-Security-Policy\"").context("a policy")?;
    let (_, after) = policy.split_once('>').context("the end of the policy")?;
    let refusing = format!(
        "{before}<script>Object.defineProperty(window, 'localStorage', {{ get() {{ throw new DOMException('refused', 'SecurityError') }} }})</script>{after}"
    );
    page.site.break_with(move |request| {
        let is_page = request.path.is_empty() || request.path == "index.html";
        is_page.then(|| Response::text("text/html; charset=utf-8", refusing.clone()))
    });
    page.open_demo(Imperial).await?;
    page.wait_for_text(".notice-line", "blocks its usual storage").await?;
    page.go_to("s/s4").await?;
    page.wait_for_value("length", "18 ft").await?;
    let hash = page.execute("return location.hash", vec![]).await?;
    // What was saved before is in the second store once that has been written.
    page.journal_is_written().await?;
    let first = page.leave_for_new_window(hash.as_str().unwrap_or_default()).await?;
    page.wait_for_value("length", "18 ft").await?;
    let second = page.browser().window().await?;
    let (mut length, mut power) = (String::new(), String::new());
    for number in 0..trials().div_ceil(2) {
        (length, power) = (format!("{} ft", 20 + number), format!("{} W", 40 + number));
        type_when_told(page, "power", &[&power]).await?;
        page.back_to_first_tab(&first).await?;
        type_and_tell(page, "length", &[&length], APART[number % APART.len()]).await?;
        wait_until_typed(page).await?;
        page.wait_for_value("power", &power).await?;
        page.wait_for_value("length", &length).await?;
        page.to_new_tab(&second).await?;
        wait_until_typed(page).await?;
        page.wait_for_value("length", &length).await?;
        page.wait_for_value("power", &power).await?;
    }
    page.leave_field().await?;
    page.journal_is_written().await?;
    page.reload_window().await?;
    page.wait_for_value("length", &length).await?;
    page.wait_for_value("power", &power).await?;
    page.open("#/").await?;
    page.wait_for(".projects li").await?;
    let listed =
        page.execute("return document.querySelectorAll('.projects li').length", vec![]).await?;
    ensure!(listed == json!(1), "{listed} projects");
    Ok(())
}
