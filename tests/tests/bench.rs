//! At the bench: outdoors, at arm's length, with gloves on; and the bars of every page at other sizes than a phone's.

use e2e::{Imperial, Metric, PHONE, Page, Result, ensure, in_each_engine};
use serde_json::{Value, json};

in_each_engine!(
    every_trade_leads_to_the_bench,
    is_read_in_the_sun_and_worked_with_gloves,
    goes_from_piece_to_piece,
    keeps_the_screen_lit_and_lets_it_go,
    reads_figures_aloud,
    reads_nothing_through_a_server,
);

/// The sheets of the demo whose work is done at the bench, and whether their figures stand on a tape.
const SHEETS: [(&str, bool); 7] = [
    ("boards", true),
    ("furring", true),
    ("s3", true),
    ("lights", true),
    ("s2", true),
    ("circuit", true),
    ("gap_fill", true),
];
/// The figure is read at arm's length. [px]
const FIGURE: f64 = 64.0;
/// A target for a glove. [px]
const GLOVE: f64 = 64.0;
/// In the sun: WCAG 2.2, success criterion 1.4.6, contrast (enhanced).
const CONTRAST: f64 = 7.0;

/// Name and figure of what is shown.
async fn here(page: &Page) -> Result<(String, String)> {
    Ok((page.text(".bench-page h1").await?, page.text(".bench-mark").await?))
}

async fn every_trade_leads_to_the_bench(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    for (sheet, tape) in SHEETS {
        page.go_to(&format!("s/{sheet}")).await?;
        // One tap: it stands there behind no line.
        page.wait_until(
            sheet,
            "const way = document.querySelector('main a[href*=\"/bench/\"]');
             return way !== null && !way.closest('details:not([open])') && way.getClientRects().length > 0",
        )
        .await?;
        page.click("main a[href*='/bench/']").await?;
        page.wait_for(".bench-figure").await?;
        let before = here(page).await?;
        ensure!(!before.0.is_empty() && !before.1.is_empty(), "{sheet}: {before:?}");
        ensure!(page.text(".bench-of").await?.len() > 3, "{sheet}: what it is of");
        ensure!(page.text(".bench-left").await?.contains("left"), "{sheet}: how many are left");
        if tape {
            page.wait_for(".bench .tape svg").await?;
        }
        page.click("[data-do=marked]").await?;
        page.settle().await?;
        let after = here(page).await?;
        ensure!(before != after, "{sheet}: stays at {before:?}");
        // The tick holds: whoever comes back goes on after it.
        page.click(".bench-top a").await?;
        page.wait_for(".answers [data-result]").await?;
        page.click("main a[href*='/bench/']").await?;
        page.wait_for(".bench-figure").await?;
        ensure!(here(page).await? == after, "{sheet}: the tick is lost");
        page.screenshot(&format!("bench-{sheet}")).await?;
    }
    // Wire that was cut at the bench is ticked on its sheet.
    page.go_to("s/circuit").await?;
    page.unfold_all().await?;
    page.wait_until("a wire ticked", "return document.querySelector('.checks li.done') !== null")
        .await?;
    // From the mark list: all of them.
    page.go_to("marks").await?;
    page.click("main a[href$='/bench']").await?;
    page.wait_for(".bench-figure").await?;
    Ok(())
}

/// The least contrast of a text, with the text; the smallest target; the figure's height; where the name is when scrolled.
const SEEN: &str = "
    const channel = part => part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4;
    const light = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
    const rgb = text => text.match(/[\\d.]+/g).map(Number);
    const ratio = (one, other) => {
        const [low, high] = [light(one), light(other)].sort((a, b) => a - b);
        return (high + 0.05) / (low + 0.05);
    };
    const behind = one => {
        for (let at = one; at; at = at.parentElement) {
            const colour = rgb(getComputedStyle(at).backgroundColor);
            if (colour.length === 3 || colour[3] === 1) return colour;
        }
        return [255, 255, 255];
    };
    const texts = [...document.querySelectorAll('.bench-page *')].filter(one =>
        [...one.childNodes].some(node => node.nodeType === 3 && node.data.trim()) && one.getClientRects().length);
    const contrasts = texts.map(one => {
        const style = getComputedStyle(one);
        const svg = one.closest('svg');
        if (!svg) return [ratio(rgb(style.color), behind(one)), one.textContent];
        // On the tape, or beside it.
        const body = svg.querySelector('.tape-body');
        const [at, of] = [one.getBoundingClientRect(), body.getBoundingClientRect()];
        const middle = (at.top + at.bottom) / 2;
        const on = middle > of.top && middle < of.bottom;
        return [ratio(rgb(style.fill), on ? rgb(getComputedStyle(body).fill) : behind(svg)), one.textContent];
    });
    contrasts.sort((one, other) => one[0] - other[0]);
    const targets = [...document.querySelectorAll('.bench-page :is(a, button)')].map(one => one.getBoundingClientRect())
        .filter(box => box.width > 0).map(box => Math.min(box.width, box.height));
    return [contrasts[0], contrasts.length, Math.min(...targets), targets.length,
        parseFloat(getComputedStyle(document.querySelector('.bench-figure')).fontSize)]";

async fn is_read_in_the_sun_and_worked_with_gloves(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    for (sheet, _) in SHEETS {
        page.go_to(&format!("bench/{sheet}")).await?;
        page.wait_for(".bench-figure").await?;
        for light in ["day", "night"] {
            page.set_light(light).await?;
            let seen = page.execute(SEEN, vec![]).await?;
            type Seen = ((f64, String), usize, f64, usize, f64);
            let ((contrast, of), texts, target, targets, figure): Seen =
                serde_json::from_value(seen)?;
            ensure!(texts >= 7 && targets >= 6, "{sheet}: {texts} texts, {targets} targets");
            ensure!(contrast >= CONTRAST, "{sheet} by {light}: {of:?} has {contrast:.2}:1");
            ensure!(target >= GLOVE - 0.01, "{sheet}: a target of {target} px");
            ensure!(figure >= FIGURE, "{sheet}: the figure is {figure} px tall");
        }
    }
    // The name stays in sight, and so do the keys.
    page.go_to("bench/boards").await?;
    page.wait_for(".bench-figure").await?;
    page.resize((PHONE.0, 500)).await?;
    let fixed = "scrollTo(0, 1e4);
        const box = what => document.querySelector(what).getBoundingClientRect();
        return scrollY > 0 && box('.bench-page h1').top >= 0 && box('.bench-page h1').bottom < innerHeight / 3
            && box('[data-do=marked]').bottom <= innerHeight + 0.5";
    page.wait_until("name and keys in sight", fixed).await?;
    page.resize(PHONE).await
}

async fn goes_from_piece_to_piece(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    page.go_to("bench/boards").await?;
    page.wait_for(".bench-figure").await?;
    let first = page.text(".bench-page h1").await?;
    page.press("\u{e014}").await?;
    let at = |name: String, is: bool| {
        let script = "return (document.querySelector('.bench-page h1').innerText === arguments[0]) === arguments[1]";
        (script, vec![json!(name), json!(is)])
    };
    let (script, filled) = at(first.clone(), false);
    page.wait_until_with("the next piece", script, filled).await?;
    let second = page.text(".bench-page h1").await?;
    page.press("\u{e012}").await?;
    let (script, filled) = at(first.clone(), true);
    page.wait_until_with("the first piece again", script, filled).await?;
    page.drag(".bench-figure", (-150, 8)).await?;
    let (script, filled) = at(second.clone(), true);
    page.wait_until_with("the next piece by a swipe", script, filled).await?;
    // Up and down, or a little to the side, is no swipe.
    page.drag(".bench-figure", (-20, 4)).await?;
    page.drag(".bench-figure", (-70, 120)).await?;
    page.settle().await?;
    ensure!(page.text(".bench-page h1").await? == second, "no swipe");
    page.drag(".bench-figure", (150, 8)).await?;
    let (script, filled) = at(first.clone(), true);
    page.wait_until_with("back by a swipe", script, filled).await?;
    page.click("[data-do=piece-on]").await?;
    let (script, filled) = at(second, true);
    page.wait_until_with("on by the arrow", script, filled).await?;
    // One board alone: from mark to mark.
    page.go_to("bench/s3").await?;
    page.wait_for(".bench-figure").await?;
    let mark = page.text(".bench-mark").await?;
    page.drag(".bench-figure", (-150, 0)).await?;
    let moved = "return document.querySelector('.bench-mark').innerText.trim() !== arguments[0]";
    page.wait_until_with("the next mark", moved, vec![json!(mark)]).await
}

async fn keeps_the_screen_lit_and_lets_it_go(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    // The device's own lock cannot be looked at.
    let double = "window.lit = { asked: 0, let_go: 0 };
        const request = what => { lit.asked += what === 'screen';
            return Promise.resolve({ release() { lit.let_go += 1; return Promise.resolve() } }) };
        Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request } })";
    page.execute(double, vec![]).await?;
    page.go_to("bench/boards").await?;
    page.wait_for(".bench-figure").await?;
    page.wait_until("the screen kept lit", "return lit.asked === 1 && lit.let_go === 0").await?;
    page.click("[data-do=marked]").await?;
    page.settle().await?;
    page.wait_until("one lock", "return lit.asked === 1 && lit.let_go === 0").await?;
    // Out of sight the browser takes the lock; seen again, the page asks for another.
    page.execute(
        "document.dispatchEvent(new Event('visibilitychange', { bubbles: true }))",
        vec![],
    )
    .await?;
    page.wait_until("asked again", "return lit.asked === 2").await?;
    page.click(".bench-top a").await?;
    page.wait_until("let go", "return lit.let_go === 1").await?;
    page.execute(
        "document.dispatchEvent(new Event('visibilitychange', { bubbles: true }))",
        vec![],
    )
    .await?;
    page.settle().await?;
    page.wait_until("not asked elsewhere", "return lit.asked === 2").await
}

/// A device with these voices, which keeps what it is told to say: no test can hear.
async fn with_voices(page: &Page, voices: Value) -> Result<()> {
    let double = "window.spoken = [];
        window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text } };
        const voices = arguments[0];
        const speechSynthesis = Object.assign(new EventTarget(), { getVoices: () => voices, cancel() { spoken.push(null) },
            speak(said) { spoken.push([said.text, said.voice.name, said.lang]) } });
        Object.defineProperty(window, 'speechSynthesis', { configurable: true, value: speechSynthesis })";
    page.execute(double, vec![voices]).await?;
    Ok(())
}

async fn reads_figures_aloud(page: &mut Page) -> Result<()> {
    page.begin_project(Imperial).await?;
    page.add_sheet("stud_marks").await?;
    page.fill("board", "12 ft").await?;
    page.fill("first_stud", "8 3/8").await?;
    page.fill("studs.0", "16").await?;
    page.fill("studs.1", "57 5/16").await?;
    page.leave_field().await?;
    page.settle().await?;
    let voice = |name: &str, lang: &str, here: bool| json!({ "name": name, "lang": lang, "localService": here });
    with_voices(
        page,
        json!([
            voice("far", "en-US", false),
            voice("there", "es-MX", true),
            voice("near", "en-US", true)
        ]),
    )
    .await?;
    page.click("a[href*='/bench/']").await?;
    page.wait_for(".bench-aloud").await?;
    page.click("[data-do=marked]").await?;
    page.wait_until(
        "the second mark",
        "return document.querySelector('.bench-figure').innerText.includes('49 11/16')",
    )
    .await?;
    ensure!(
        page.execute("return spoken.filter(Boolean).length", vec![]).await? == json!(0),
        "it speaks unasked"
    );
    page.click(".bench-aloud").await?;
    let said = "const last = spoken.at(-1);
        return Boolean(last) && last[0].endsWith(arguments[0]) && last[1] === 'near' && last[2] === 'en-US'";
    page.wait_until_with("the figure", said, vec![json!("forty-nine and eleven sixteenths")])
        .await?;
    page.click("[data-do=back]").await?;
    page.wait_until_with("the one before", said, vec![json!("eight and three eighths")]).await?;
    // It ends with the page.
    page.click(".bench-top a").await?;
    page.wait_until("hushed", "return spoken.at(-1) === null").await
}

async fn reads_nothing_through_a_server(page: &mut Page) -> Result<()> {
    page.open_demo(Imperial).await?;
    let far = json!([{ "name": "far", "lang": "en-US", "localService": false },
        { "name": "other", "lang": "de-DE", "localService": true }]);
    with_voices(page, far).await?;
    page.go_to("bench/boards").await?;
    page.wait_for(".bench-figure").await?;
    let hidden = "return document.querySelector('.bench-aloud').getClientRects().length === 0";
    page.wait_until("no button", hidden).await?;
    // A voice that comes late.
    page.execute(
        "speechSynthesis.getVoices().push({ name: 'near', lang: 'en_GB', localService: true });
        speechSynthesis.dispatchEvent(new Event('voiceschanged'))",
        vec![],
    )
    .await?;
    page.wait_for(".bench-aloud").await?;
    Ok(())
}
