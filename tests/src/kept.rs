//! What the app keeps on the device, read and harmed from outside.

use crate::page::Page;
use anyhow::{Context, Result, anyhow};
use calc::project::Project;
use serde_json::{Value, json};

/// Finds the two slots of the project in the address, the one in use first, as pairs of key and text.
const SLOTS: &str = "
    const id = decodeURIComponent(location.hash.split('/')[2]);
    const find = kind => Object.keys(localStorage).find(key => key.endsWith(` ${kind} ${id}`));
    const used = (localStorage[find('ptr')] ?? 'a').split(' ')[0];
    const keys = [used, used === 'a' ? 'b' : 'a'].map(find).filter(key => key !== undefined);
";

impl Page {
    /// The open project as it is kept.
    pub async fn kept_project(&self) -> Result<Project> {
        let script = format!("{SLOTS} return localStorage[keys[0]] ?? ''");
        // A change is saved a moment after it was painted: what stays the same over some frames is kept.
        let mut text = Value::Null;
        for _ in 0..20 {
            self.settle().await?;
            let now = self.execute(&script, vec![]).await?;
            if text == now {
                break;
            }
            text = now;
        }
        let text = text.as_str().unwrap_or_default();
        let (_, document) = text.split_once('\n').context("no slot is kept")?;
        Project::from_text(document).map_err(|error| anyhow!("{error}"))
    }

    /// Writes a text over the slot in use of the open project, or over both; the second store is lost.
    pub async fn harm_kept(&self, both: bool, text: &str) -> Result<()> {
        self.harm_first_store(both, text).await?;
        self.clear_journal().await
    }

    /// As `harm_kept`, but the second store stays as it is.
    pub async fn harm_first_store(&self, both: bool, text: &str) -> Result<()> {
        let script = format!(
            "{SLOTS} for (const key of keys.slice(0, arguments[0])) localStorage[key] = arguments[1];
            return keys.length"
        );
        let slots = if both { 2 } else { 1 };
        let found = self.execute(&script, vec![json!(slots), json!(text)]).await?;
        anyhow::ensure!(found.as_u64() >= Some(slots), "{found} slots are kept, not {slots}");
        Ok(())
    }

    /// Takes away all that the app keeps on the device, in both stores, and the app with it: to be
    /// followed by `arrive` or `reload`.
    pub async fn clear_device(&self) -> Result<()> {
        self.execute("localStorage.clear()", vec![]).await?;
        self.clear_journal().await
    }

    /// Takes away all that the second store holds.
    pub async fn clear_journal(&self) -> Result<()> {
        self.in_journal("copies.clear(); unkept.clear();").await
    }

    /// Runs a script on the second store's `copies` and `unkept`, in one transaction.
    pub async fn in_journal(&self, script: &str) -> Result<()> {
        let script = format!(
            "const done = arguments[arguments.length - 1];
            const opening = indexedDB.open('battenbook ' + location.pathname.replace(/[^/]*$/, ''));
            opening.onerror = () => done('not opened');
            opening.onsuccess = () => {{
                const database = opening.result;
                const change = database.transaction(['copies', 'unkept'], 'readwrite');
                const [copies, unkept] = ['copies', 'unkept'].map(name => change.objectStore(name));
                change.oncomplete = () => {{ database.close(); done('') }};
                change.onabort = () => done(`not changed: ${{change.error}}`);
                {script}
            }}"
        );
        let failed: String = self.browser().execute_async(&script, vec![]).await?.convert()?;
        anyhow::ensure!(failed.is_empty(), "the second store: {failed}");
        Ok(())
    }

    /// Waits until the second store has taken what was saved before.
    pub async fn journal_is_written(&self) -> Result<()> {
        self.settle().await?;
        // Changes are made one after the other, so this one ends after those that were begun.
        self.in_journal("").await
    }

    /// Fills the first store to the last character.
    pub async fn fill_store(&self) -> Result<()> {
        let script = "let size = 1 << 20, n = 0;
            while (size >= 1) {
                try { localStorage.setItem('filler' + n, 'x'.repeat(size)); n += 1; } catch { size >>= 1; }
            }";
        self.execute(script, vec![]).await?;
        Ok(())
    }

    /// The keys that are kept of projects: not those of settings, nor the number of the last write.
    pub async fn kept_keys(&self) -> Result<Vec<String>> {
        let script =
            "return Object.keys(localStorage).filter(key => !/ (set .*|latest)$/.test(key))";
        Ok(serde_json::from_value(self.execute(script, vec![]).await?)?)
    }

    /// From now on gathers the texts that the page offers for download, for `downloads`.
    pub async fn gather_downloads(&self) -> Result<()> {
        let script = "
            window.offered = [];
            const make = URL.createObjectURL;
            URL.createObjectURL = blob => {
                blob.text().then(text => offered.push(text));
                return make.call(URL, blob);
            };
            HTMLAnchorElement.prototype.click = () => {};";
        self.execute(script, vec![]).await?;
        Ok(())
    }

    /// The texts offered for download since `gather_downloads`, once there are any.
    pub async fn downloads(&self) -> Result<Vec<String>> {
        self.wait_until("a download", "return window.offered.length > 0").await?;
        match self.execute("return window.offered", vec![]).await? {
            Value::Array(texts) => {
                Ok(texts.iter().filter_map(Value::as_str).map(str::to_owned).collect())
            }
            other => Err(anyhow!("downloads are {other}")),
        }
    }
}
