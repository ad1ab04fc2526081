//! What a person does in the app: begins a project, adds a sheet, fills fields, reads answers.

use crate::page::Page;
use anyhow::{Context, Result, bail, ensure};
use calc::project::{Evaluation, Project};
use calc::quantity::UnitSystem;
use serde_json::{Value, json};
use std::time::{Duration, Instant};
use thirtyfour::{By, Key};

const PATIENCE: Duration = Duration::from_secs(10);

/// An answer as shown: what it is, the figure, the line below it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// What it is.
    pub label: String,
    /// The figure with its unit.
    pub text: String,
    /// The second line; empty where there is none.
    pub note: String,
}

/// The selector of the field for the input at a path.
pub fn field(path: &str) -> String {
    format!("[data-path=\"{path}\"]")
}

/// What the calculations give for a sheet alone in a project without a measured body.
///
/// # Errors
/// The inputs have faults.
pub fn answers(kind: &str, inputs: Value, system: UnitSystem) -> Result<Vec<Shown>> {
    let mut project = Project::new("p", "", system);
    let id = project.add_sheet(kind, "", inputs);
    answers_in(&project, &id)
}

/// What the calculations give for a sheet of a project.
///
/// # Errors
/// There is no such sheet, or its inputs have faults.
pub fn answers_in(project: &Project, id: &str) -> Result<Vec<Shown>> {
    answers_of(&calc::evaluate(project), id)
}

/// What the calculations have given for a sheet.
///
/// # Errors
/// There is no such sheet, or its inputs have faults.
pub fn answers_of(all: &Evaluation, id: &str) -> Result<Vec<Shown>> {
    let report = match all.sheet(id).with_context(|| format!("no sheet {id}"))? {
        Ok(report) => report,
        Err(faults) => bail!("{id}: {faults:#?}"),
    };
    let shown = report.answers.iter().map(|answer| Shown {
        label: answer.label.clone(),
        text: answer.text.clone(),
        note: answer.note.clone(),
    });
    Ok(shown.collect())
}

impl Page {
    /// Begins a project on the start page.
    pub async fn begin_project(&mut self, system: UnitSystem) -> Result<()> {
        self.begin("new", system).await
    }

    /// Opens the demo from the start page.
    pub async fn open_demo(&mut self, system: UnitSystem) -> Result<()> {
        self.begin("demo", system).await
    }

    async fn begin(&mut self, what: &str, system: UnitSystem) -> Result<()> {
        let system = match system {
            UnitSystem::Imperial => "imperial",
            UnitSystem::Metric => "metric",
        };
        self.open("#/").await?;
        self.click(&format!("[data-do={what}][data-with={system}]")).await?;
        self.wait_until("the project's page", "return /^#\\/p\\/[^/]+$/.test(location.hash)")
            .await?;
        self.wait_for_page().await?;
        Ok(())
    }

    /// The hash of the page, without a part of the project.
    pub async fn project_hash(&self) -> Result<String> {
        let hash =
            self.execute("return location.hash.split('/').slice(0, 3).join('/')", vec![]).await?;
        let hash = hash.as_str().unwrap_or_default().to_owned();
        ensure!(hash.starts_with("#/p/"), "no project is open: {hash}");
        Ok(hash)
    }

    /// Goes to a page of the open project: nothing for the project itself, `body`, `s/s1`.
    pub async fn go_to(&mut self, part: &str) -> Result<()> {
        let project = self.project_hash().await?;
        let hash = if part.is_empty() { project } else { format!("{project}/{part}") };
        self.open(&hash).await?;
        self.wait_until_with(
            "the page",
            "return location.hash === arguments[0]",
            vec![json!(hash)],
        )
        .await?;
        // The page follows the address in the next turn of the event loop.
        self.settle().await
    }

    /// Adds a sheet by way of the project's page, and opens it.
    pub async fn add_sheet(&mut self, kind: &str) -> Result<()> {
        self.go_to("").await?;
        self.click("a.add").await?;
        self.click(&format!("[data-do=add][data-with={kind}]")).await?;
        self.wait_for("main .form").await?;
        Ok(())
    }

    /// Types into the field for the input at a path.
    pub async fn fill(&self, path: &str, text: &str) -> Result<()> {
        self.open_row(path).await?;
        self.type_into(&field(path), text).await
    }

    /// Opens the row that the field for the input at a path is folded away in, if it is.
    pub async fn open_row(&self, path: &str) -> Result<()> {
        let script = "const field = document.querySelector(arguments[0]);
            for (let row = field; row; row = row.parentElement.closest('main details')) row.open = true;
            return !!field";
        self.wait_until_with(path, script, vec![json!(field(path))]).await
    }

    /// Types into several fields.
    pub async fn fill_all(&self, fields: &[(&str, &str)]) -> Result<()> {
        for (path, text) in fields {
            self.fill(path, text).await?;
        }
        Ok(())
    }

    /// Leaves the field with the focus by the tab key.
    pub async fn leave_field(&self) -> Result<()> {
        self.press(&char::from(Key::Tab).to_string()).await
    }

    /// Waits until two frames were painted: what follows from the last change is on the page.
    pub async fn settle(&self) -> Result<()> {
        // A tab that is not in sight paints nothing.
        let script = "const done = arguments[arguments.length - 1];
            requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => done(true))));
            setTimeout(() => done(true), 500)";
        self.browser().execute_async(script, vec![]).await?;
        Ok(())
    }

    /// The answers of the sheet on the page.
    pub async fn shown_answers(&self) -> Result<Vec<Shown>> {
        let script = "return [...document.querySelectorAll('.answers [data-result]')].map(one => [
            one.dataset.result, one.firstChild.textContent, one.querySelector('.note')?.textContent ?? ''])";
        let Value::Array(rows) = self.execute(script, vec![]).await? else {
            bail!("answers are a list")
        };
        let text = |row: &Value, at: usize| row[at].as_str().unwrap_or_default().to_owned();
        let shown = rows.iter();
        Ok(shown
            .map(|row| Shown { label: text(row, 0), text: text(row, 1), note: text(row, 2) })
            .collect())
    }

    /// Waits until the page shows these answers.
    ///
    /// # Errors
    /// It shows others, or none.
    pub async fn wait_for_answers(&self, wanted: &[Shown]) -> Result<()> {
        ensure!(!wanted.is_empty(), "no answers are waited for");
        let deadline = Instant::now() + PATIENCE;
        loop {
            let shown = self.shown_answers().await?;
            if shown == wanted {
                return Ok(());
            }
            ensure!(Instant::now() < deadline, "shown: {shown:#?}\nwanted: {wanted:#?}");
            tokio::time::sleep(Duration::from_millis(40)).await;
        }
    }

    /// Waits until a field holds a text.
    pub async fn wait_for_value(&self, path: &str, text: &str) -> Result<()> {
        let script = "return document.querySelector(arguments[0])?.value === arguments[1]";
        let waited = self
            .wait_until_with(
                &format!("{text:?} in {path}"),
                script,
                vec![json!(field(path)), json!(text)],
            )
            .await;
        match waited {
            Ok(()) => Ok(()),
            Err(error) => bail!("{error}; it holds {:?}", self.value(&field(path)).await?),
        }
    }

    /// Picks the option of a choice by the words it shows.
    pub async fn choose(&self, path: &str, option: &str) -> Result<()> {
        self.open_row(path).await?;
        let field = self.wait_for(&field(path)).await?;
        self.bring_to_middle(&field).await?;
        let options = field.find_all(By::Tag("option")).await?;
        for one in options {
            if one.text().await? == option {
                return Ok(one.click().await?);
            }
        }
        bail!("{path} has no option {option:?}")
    }

    /// Clicks the first button of the page with these words.
    pub async fn click_button(&self, words: &str) -> Result<()> {
        self.click_path(&format!("//button[normalize-space()=\"{words}\"]")).await
    }

    /// The marks on the page, as texts.
    pub async fn marks(&self) -> Result<Vec<String>> {
        self.wait_for(".mark strong").await?;
        let script =
            "return [...document.querySelectorAll('.mark strong')].map(one => one.textContent)";
        Ok(self.browser().execute(script, vec![]).await?.convert()?)
    }

    /// The id of the sheet on the page.
    pub async fn sheet_id(&self) -> Result<String> {
        let id = self.execute("return location.hash.split('/s/')[1] ?? ''", vec![]).await?;
        Ok(id.as_str().unwrap_or_default().to_owned())
    }

    /// Shows results in a system, by the menu.
    pub async fn set_system(&self, system: UnitSystem) -> Result<()> {
        self.click("details.menu summary").await?;
        self.click_button(match system {
            UnitSystem::Imperial => "inches",
            UnitSystem::Metric => "millimeters",
        })
        .await?;
        self.click("details.menu summary").await
    }

    /// Shows the page by day or by night.
    pub async fn set_light(&self, light: &str) -> Result<()> {
        self.execute("document.documentElement.dataset.light = arguments[0]", vec![json!(light)])
            .await?;
        self.settle().await
    }

    /// Waits until the page shows these marks.
    pub async fn wait_until_marks(&self, wanted: &[&str]) -> Result<()> {
        let read = "JSON.stringify([...document.querySelectorAll('.mark strong')].map(one => one.textContent))";
        let wanted = serde_json::to_string(wanted)?;
        // They stand behind a line of their own on a sheet.
        let script = format!(
            "document.querySelectorAll('main details.part-fold:not([open])').forEach(one => one.open = true);
            return {read} === arguments[0]"
        );
        let waited = self.wait_until_with("the marks", &script, vec![json!(wanted)]).await;
        if let Err(error) = waited {
            let script = format!(
                "return [{read}, ...[...document.querySelectorAll('[data-path]')].map(one => one.dataset.path + ': ' + one.value)]"
            );
            let seen = self.execute(&script, vec![]).await?;
            return Err(error.context(format!("wanted {wanted}, saw {seen}")));
        }
        Ok(())
    }
}
