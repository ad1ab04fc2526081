//! Times what `cargo xtask bench` reports: typing into a field of each sheet of the demo project, on a phone-sized
//! page whose processor is four times slower. Prints `keystroke KIND SECONDS`, the time that the browser works
//! from the key to the painted page: the script until it is done, and the frame in which the page is painted.

use e2e::{Engine, Metric, Page, Result, ensure};
use serde_json::json;

/// Keys a sheet; the median counts.
const KEYS: usize = 15;

/// Presses the last key of a field's text again and again, and waits for the page to be painted each time.
const TYPE: &str = "
    const [keys, done] = [arguments[0], arguments[arguments.length - 1]];
    const field = [...document.querySelectorAll('.form input[type=text]')].find(one => /^[0-9.]+ [a-z]/.test(one.value));
    if (!field) return done(null);
    const text = field.value, unit = text.replace(/^[0-9.]+/, ''), number = text.slice(0, text.length - unit.length);
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
    const turn = () => new Promise(go => { const { port1, port2 } = new MessageChannel(); port1.onmessage = go; port2.postMessage(0) });
    const frame = () => new Promise(go => requestAnimationFrame(go));
    (async () => {
        const times = [];
        for (let key = 0; key < keys; key++) {
            await frame();
            await turn();
            set.call(field, number + (key % 2 ? '' : number.includes('.') ? '1' : '.1') + unit);
            const start = performance.now();
            field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            await turn();
            const script = performance.now() - start;
            await frame();
            const paint = performance.now();
            await turn();
            times.push(script + performance.now() - paint);
        }
        done(times);
    })();";

fn main() {
    e2e::run(Engine::Chromium, "keystroke", keystrokes);
}

async fn keystrokes(page: &mut Page) -> Result<()> {
    page.open_demo(Metric).await?;
    page.slow_down(4).await?;
    let project: calc::project::Project = page.kept_project().await?;
    let sheets = project.sheets().map(|sheet| (sheet.id(), sheet.kind().unwrap_or_default()));
    let mut timed = 0;
    for (id, kind) in sheets {
        page.go_to(&format!("s/{id}")).await?;
        page.wait_for(".answers [data-result]").await?;
        let times = page.browser().execute_async(TYPE, vec![json!(KEYS)]).await?;
        let Some(times) = times.json().as_array() else { continue };
        let mut times: Vec<f64> = times.iter().filter_map(serde_json::Value::as_f64).collect();
        calc::sorting::sort_by(&mut times, f64::total_cmp);
        let Some(median) = times.get(times.len() / 2) else { continue };
        println!("keystroke {kind} {:.6}", median / 1000.0);
        timed += 1;
    }
    ensure!(timed > 0, "no sheet has a measure to type");
    Ok(())
}
