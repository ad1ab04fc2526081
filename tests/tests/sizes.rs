//! Pages at other sizes: under a keyboard, on a phone's side, on a laptop, in text of twice the size.

use e2e::{Imperial, PHONE, Page, Result, ensure, field, in_each_engine};
use serde_json::{Value, json};

in_each_engine!(shows_input_and_answer_side_by_side, holds_text_of_twice_the_size,);

/// WebKitGTK's driver leaves no focus in a field here: there is no bar to look at.
mod bars_stay_above_the_keyboard {
    #[test]
    fn chromium() {
        let name = "bars_stay_above_the_keyboard";
        e2e::run(e2e::Engine::Chromium, name, super::bars_stay_above_the_keyboard);
    }
    #[test]
    fn firefox() {
        let name = "bars_stay_above_the_keyboard";
        e2e::run(e2e::Engine::Firefox, name, super::bars_stay_above_the_keyboard);
    }
}

/// Only Chromium's driver can take the mouse away, so that the pad is there.
mod types_on_its_side_beside_the_pad {
    #[test]
    fn chromium() {
        e2e::run(
            e2e::Engine::Chromium,
            "types_on_its_side_beside_the_pad",
            super::types_on_its_side_beside_the_pad,
        );
    }
}

/// What a phone's keyboard leaves of the page. [px]
const LEFT: f64 = 470.0;

/// No driver brings up a phone's keyboard: the visual viewport is made smaller by hand, as a keyboard makes it.
const KEYBOARD: &str = "const seen = arguments[0];
    for (const [name, value] of [['height', seen ?? innerHeight], ['offsetTop', 0]]) {
        Object.defineProperty(visualViewport, name, { configurable: true, value });
    }
    visualViewport.dispatchEvent(new Event('resize'))";

/// The bars that stick to the lower edge: their names and where they end, but for those that are not shown.
const BARS: &str = "['.headline.typing', '.places', '.bench-keys', '.notice-shown', 'button.headline:not(.typing)'].flatMap(name =>
    [...document.querySelectorAll(name)].filter(one => getComputedStyle(one).display !== 'none')
        .map(one => [name, one.getBoundingClientRect().top, one.getBoundingClientRect().bottom]))";

async fn bars(page: &Page) -> Result<Vec<(String, f64, f64)>> {
    Ok(serde_json::from_value(page.execute(&format!("return {BARS}"), vec![]).await?)?)
}

async fn bars_stay_above_the_keyboard(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    // The last field of a sheet: it would lie under the keyboard.
    page.go_to("s/s1").await?;
    page.unfold_all().await?;
    page.settle().await?;
    let last = "const all = [...document.querySelectorAll('.inputs input[data-path]')].filter(one => one.getClientRects().length);
        const last = all.at(-1);
        return last.dataset.path";
    let last = page.execute(last, vec![]).await?;
    page.click(&field(last.as_str().unwrap_or_default())).await?;
    page.execute("document.activeElement.scrollIntoView({ block: 'end' })", vec![]).await?;
    page.execute(KEYBOARD, vec![json!(LEFT)]).await?;
    page.settle().await?;
    let seen = bars(page).await?;
    ensure!(seen.iter().any(|(name, ..)| name == ".headline.typing"), "{seen:?}: no answer");
    for (name, top, bottom) in &seen {
        ensure!(
            *top >= 0.0 && (LEFT - 1.0..=LEFT + 1.0).contains(bottom),
            "{name} ends at {bottom}"
        );
    }
    let answer = seen.iter().map(|(_, top, _)| *top).fold(LEFT, f64::min);
    let box_of = "const box = document.activeElement.getBoundingClientRect();
        return [document.activeElement.dataset.path, box.top, box.bottom]";
    let (path, top, bottom): (Value, f64, f64) =
        serde_json::from_value(page.execute(box_of, vec![]).await?)?;
    ensure!(
        path == last && top >= 0.0 && bottom <= answer + 1.0,
        "{path}: {top} to {bottom}, the answer at {answer}"
    );
    // Scrolled under the keyboard, as iOS does: the bars stay with what is seen.
    page.execute(
        "Object.defineProperty(visualViewport, 'offsetTop', { configurable: true, value: 100 });
        visualViewport.dispatchEvent(new Event('scroll'))",
        vec![],
    )
    .await?;
    for (name, _, bottom) in bars(page).await? {
        ensure!((bottom - LEFT - 100.0).abs() <= 1.0, "{name} ends at {bottom}");
    }
    // Back down with the keyboard gone.
    page.execute(KEYBOARD, vec![Value::Null]).await?;
    page.execute("document.activeElement.blur()", vec![]).await?;
    page.settle().await?;
    let seen = bars(page).await?;
    let high = page.execute("return innerHeight", vec![]).await?.as_f64().unwrap_or_default();
    ensure!(
        seen.iter().any(|(name, _, bottom)| name == ".places" && (bottom - high).abs() <= 1.0),
        "{seen:?}"
    );
    // The keys at the bench, too.
    page.go_to("bench/boards").await?;
    page.wait_for(".bench-figure").await?;
    page.execute(KEYBOARD, vec![json!(LEFT)]).await?;
    page.settle().await?;
    let seen = bars(page).await?;
    ensure!(
        seen.iter().any(|(name, _, bottom)| name == ".bench-keys" && (bottom - LEFT).abs() <= 1.0),
        "{seen:?}"
    );
    Ok(())
}

/// Where field, answers and the answer's bar are, and how wide the page is.
const PLACES: &str = "const box = what => {
        const one = typeof what === 'string' ? document.querySelector(what) : what;
        const at = one && getComputedStyle(one).display !== 'none' ? one.getBoundingClientRect() : null;
        return at && { left: at.left, top: at.top, right: at.right, bottom: at.bottom };
    };
    return { field: box(document.activeElement), answers: box('.results .answers'), inputs: box('.sheet > .inputs'),
        results: box('.sheet > .results'), bar: box('.headline.typing'), top: box('.top').bottom, pad: box('.pad'),
        wide: document.documentElement.scrollWidth - innerWidth }";

async fn shows_input_and_answer_side_by_side(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    for (width, height) in [(844, 390), (1024, 768), (1280, 800)] {
        page.resize((width, height)).await?;
        for (sheet, path) in
            [("s3", "first_stud"), ("furring", "kerf"), ("s1", "coats"), ("boards", "coverage")]
        {
            page.go_to(&format!("s/{sheet}")).await?;
            page.wait_for(".answers [data-result]").await?;
            page.wait_for(&field(path)).await?;
            // As a person gets there: by a tap.
            page.execute("const one = document.querySelector(arguments[0]); one.focus(); one.scrollIntoView({ block: 'nearest' })",
                vec![json!(field(path))]).await?;
            page.settle().await?;
            let at = page.execute(PLACES, vec![]).await?;
            let of = |name: &str, side: &str| at[name][side].as_f64().unwrap_or(f64::NAN);
            let name = format!("{sheet} at {width} x {height}: {at}");
            ensure!(of("inputs", "right") <= of("results", "left"), "not side by side, {name}");
            ensure!(at["wide"].as_f64().unwrap_or(1.0) <= 0.5, "scrolls sideways, {name}");
            let low = f64::from(height);
            let low = if at["bar"].is_null() { low } else { of("bar", "top") };
            let top = at["top"].as_f64().unwrap_or(f64::NAN);
            ensure!(
                of("field", "top") >= top - 1.0 && of("field", "bottom") <= low + 1.0,
                "the field, {name}"
            );
            // The answer: in its place, or in the bar.
            let there = of("answers", "top") >= top - 1.0 && of("answers", "top") + 60.0 <= low;
            let bar = of("bar", "top") > 0.0 && of("bar", "bottom") <= f64::from(height) + 1.0;
            ensure!(there || bar, "the answer, {name}");
            page.screenshot(&format!("side-{sheet}-{width}")).await?;
        }
    }
    page.resize(PHONE).await
}

async fn types_on_its_side_beside_the_pad(page: &mut Page) -> Result<()> {
    page.touch_only().await?;
    page.open_demo(Imperial).await?;
    for size in [(844, 390), (667, 375)] {
        page.resize(size).await?;
        page.go_to("s/s3").await?;
        page.wait_for(".answers [data-result]").await?;
        page.click(&field("first_stud")).await?;
        page.wait_for(".pad button").await?;
        page.settle().await?;
        let at = page.execute(PLACES, vec![]).await?;
        let of = |name: &str, side: &str| at[name][side].as_f64().unwrap_or(f64::NAN);
        let (low, top) = (f64::from(size.1), at["top"].as_f64().unwrap_or(f64::NAN));
        ensure!(of("field", "right") <= of("pad", "left"), "field beside the pad: {at}");
        ensure!(of("bar", "right") <= of("pad", "left") + 1.0, "answer beside the pad: {at}");
        ensure!(
            of("field", "top") >= top - 1.0 && of("field", "bottom") <= of("bar", "top") + 1.0,
            "field in sight: {at}"
        );
        ensure!(
            of("bar", "bottom") <= low + 1.0 && of("pad", "bottom") <= low + 1.0,
            "in the page: {at}"
        );
        ensure!(of("pad", "top") >= top - 1.0, "the pad under the header: {at}");
        page.screenshot(&format!("pad-on-its-side-{}", size.0)).await?;
    }
    page.resize(PHONE).await
}

/// What is wrong with a page in large text: wider than the screen, a bar too high, words that are cut.
const TOO_LARGE: &str = "
    const found = [], wide = 320;
    const shown = one => one.getClientRects().length > 0 && getComputedStyle(one).visibility !== 'hidden';
    const name = one => one.tagName.toLowerCase() + '.' + [...one.classList].join('.');
    // A phone shows more where something is wider: not what it says is measured, but what it has.
    const over = document.documentElement.scrollWidth - wide;
    if (over > 0.5) {
        const beyond = [...document.querySelectorAll('body *')].filter(one => shown(one) && one.getBoundingClientRect().right > wide + 1
            && !one.closest('.drawing-window, .table, pre, svg, .visually-hidden, .skip'));
        found.push(`${over} px wider than the screen: ${[...new Set(beyond.map(name))].slice(0, 6).join(', ')}`);
    }
    for (const one of document.querySelectorAll('body *')) {
        const style = getComputedStyle(one);
        const sticks = style.position === 'fixed' || style.position === 'sticky';
        // A caption sticks to the left of its table alone.
        if (sticks && shown(one) && !one.matches('caption, .skip, .pad') && one.getBoundingClientRect().height > innerHeight / 5) {
            found.push(`${name(one)} is ${Math.round(one.getBoundingClientRect().height)} px high`);
        }
    }
    // Words beyond the screen, or beyond what clips them; what scrolls can be scrolled to.
    const edge = one => {
        let [left, right] = [0, wide];
        for (let at = one; at && at !== document.documentElement; at = at.parentElement) {
            const style = getComputedStyle(at);
            if (/auto|scroll/.test(style.overflowX) || style.textOverflow === 'ellipsis') return null;
            if (/hidden|clip/.test(style.overflowX) || style.contentVisibility === 'auto') {
                const box = at.getBoundingClientRect();
                // For screen readers alone.
                if (box.width <= 1) return null;
                [left, right] = [Math.max(left, box.left), Math.min(right, box.right)];
            }
        }
        return [left, right];
    };
    const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (words.nextNode()) {
        const [node, one] = [words.currentNode, words.currentNode.parentElement];
        const folded = one.closest('details:not([open])');
        if (!node.data.trim() || !shown(one) || one.closest('.visually-hidden, .skip, svg, option, script, style, #paper')
            || (folded && !one.closest('summary'))) continue;
        const inside = edge(one);
        if (!inside) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const box of range.getClientRects()) {
            if (box.width > 1 && (box.left < inside[0] - 2 || box.right > inside[1] + 2)) {
                found.push(`${name(one)} is cut at ${Math.round(box.right)} of ${Math.round(inside[1])} px: ${node.data.slice(0, 30)}`);
                break;
            }
        }
    }
    return [...new Set(found)]";

async fn holds_text_of_twice_the_size(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.resize((320, 568)).await?;
    page.execute("document.documentElement.style.fontSize = '200%'", vec![]).await?;
    let mut wrong = Vec::new();
    let parts = [
        "",
        "body",
        "add",
        "marks",
        "buy",
        "cuts",
        "bench",
        "bench/circuit",
        "bench/gap_fill",
        "bench/boards",
        "s/s3",
        "s/boards",
        "s/furring",
        "s/lights",
        "s/s2",
        "s/circuit",
        "s/gap_fill",
        "s/s1",
        "s/energy",
        "s/axles",
        "pass",
        "versions",
    ];
    for part in parts {
        page.go_to(part).await?;
        page.wait_for_page().await?;
        page.settle().await?;
        let found: Vec<String> = serde_json::from_value(page.execute(TOO_LARGE, vec![]).await?)?;
        if !found.is_empty() {
            wrong.push(format!("{part}: {}", found.join("; ")));
        }
    }
    // While a field is typed into.
    page.go_to("s/s3").await?;
    page.wait_for(&field("first_stud")).await?;
    page.execute("document.querySelector(arguments[0]).focus()", vec![json!(field("first_stud"))])
        .await?;
    page.settle().await?;
    let found: Vec<String> = serde_json::from_value(page.execute(TOO_LARGE, vec![]).await?)?;
    if !found.is_empty() {
        wrong.push(format!("typing: {}", found.join("; ")));
    }
    page.screenshot("twice-typing").await?;
    page.execute("document.documentElement.style.fontSize = ''", vec![]).await?;
    page.resize(PHONE).await?;
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    Ok(())
}
