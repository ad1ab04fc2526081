//! Files given to the app, and a project with every sheet in it.

use crate::page::Page;
use anyhow::Result;
use calc::sheet::SHEETS;
use serde_json::{Value, json};
use std::sync::atomic::{AtomicU32, Ordering};
use xtask::engine::Engine;
use xtask::workspace;

/// The text of the demo project.
pub const DEMO: &str = include_str!("../../shared/demo.json");

/// The text of a project file with the demo's body and the example of every sheet, each with its kind as its id.
pub fn project_with_every_sheet() -> Result<String> {
    let mut project: Value = serde_json::from_str(DEMO)?;
    let sheets = SHEETS.iter().map(|sheet| {
        let inputs: Value = serde_json::from_str(sheet.example)?;
        Ok(json!({ "id": sheet.kind, "kind": sheet.kind, "title": sheet.title.to_string(), "inputs": inputs }))
    });
    project["id"] = json!("every");
    project["name"] = json!("Every sheet");
    project["sheets"] = Value::Array(sheets.collect::<Result<_>>()?);
    Ok(project.to_string())
}

/// The text of a project file with this many cut plans, each of many pieces in its own lengths: heavy to work out.
pub fn project_with_cut_plans(id: &str, count: usize) -> String {
    let piece = |plan: usize, at: usize| json!({ "label": format!("p{at}"), "length": format!("{} mm", 310 + 17 * at + 3 * plan), "count": 3 + at % 5 });
    let sheets: Vec<Value> = (0..count)
        .map(|plan| {
            let pieces: Vec<Value> = (0..24).map(|at| piece(plan, at)).collect();
            let stock: Vec<Value> = ["2400 mm", "3000 mm", "3600 mm"].iter().map(|length| json!({ "length": length })).collect();
            json!({ "id": format!("c{plan}"), "kind": "cut_plan", "title": format!("Plan {plan}"), "inputs": {
                "material": format!("batten {plan}"), "pieces": pieces, "stock": stock, "kerf": "3 mm" } })
        })
        .collect();
    json!({ "battenbook": 1, "id": id, "name": "Heavy", "units": "metric", "body": {}, "sheets": sheets }).to_string()
}

/// The text of a project file whose body has this many ribs, measured one by one.
pub fn project_with_ribs(id: &str, count: usize) -> String {
    let ribs: Vec<String> = (0..count).map(|rib| format!("{} mm", rib + 1)).collect();
    json!({ "battenbook": 1, "id": id, "name": "Many ribs", "units": "metric",
        "body": { "length": "9 m", "width": "2 m", "ribs": { "measured": ribs } }, "sheets": [] })
    .to_string()
}

impl Page {
    /// Gives a file with this text to the start page.
    pub async fn import(&self, text: &str) -> Result<()> {
        static NUMBER: AtomicU32 = AtomicU32::new(0);
        if self.engine() == Engine::WebKit {
            // Its driver cannot reach the disk from a frame, so the page is handed the file itself.
            let script = "const files = new DataTransfer();
                files.items.add(new File([arguments[0]], 'project.json', { type: 'application/json' }));
                const input = document.querySelector('#import');
                input.files = files.files;
                input.dispatchEvent(new Event('change', { bubbles: true }))";
            self.execute(script, vec![json!(text)]).await?;
            return Ok(());
        }
        let folder = workspace::target().join("e2e/files");
        std::fs::create_dir_all(&folder)?;
        let number = NUMBER.fetch_add(1, Ordering::Relaxed);
        let file = folder.join(format!("{}-{number}.json", std::process::id()));
        std::fs::write(&file, text)?;
        let input = self.browser().find(thirtyfour::By::Id("import")).await?;
        Ok(input.send_keys(file.to_string_lossy()).await?)
    }

    /// Opens the project with every sheet.
    pub async fn open_every_sheet(&mut self) -> Result<()> {
        self.open("#/").await?;
        self.wait_for_page().await?;
        self.import(&project_with_every_sheet()?).await?;
        self.wait_for_text(".said", "Every sheet").await?;
        self.open("#/p/every").await?;
        self.wait_for_text("h1", "Every sheet").await
    }
}
