//! Opens a project file in steps: it is said how far it is, and it can be stopped between two projects.

use std::time::Duration;

use calc::words::app_start as words;
use leptos::prelude::*;

use super::notices;
use crate::storage::Store;
use crate::transfer::{self, ImportError, Reading};
use crate::words::{say, text};

/// Work goes on for so long before the page is painted again. [ms]
const SLICE_MS: f64 = 60.0;

/// A file that is being opened.
struct Work {
    reading: Reading,
    /// What became of each project so far, in words.
    said: Vec<String>,
    kept: usize,
}

/// Opens files on the start page.
#[derive(Clone, Copy)]
pub struct TakingIn {
    store: Store,
    /// What is said when it is done.
    said: RwSignal<String>,
    /// Counts up when what is kept has changed.
    version: RwSignal<u32>,
    /// How many projects were opened, and how many the file has; none while no file is being opened.
    far: RwSignal<Option<(usize, usize)>>,
    work: StoredValue<Option<Work>>,
}

impl TakingIn {
    /// Nothing is being opened yet.
    pub fn new(store: Store, said: RwSignal<String>, version: RwSignal<u32>) -> Self {
        Self { store, said, version, far: RwSignal::new(None), work: StoredValue::new(None) }
    }

    /// Opens a chosen file.
    pub fn begin(self, file: &web_sys::File) {
        self.said.set(String::new());
        self.far.set(Some((0, 0)));
        transfer::read_file(file, move |text| match text {
            // What it says now is painted before the file is read.
            Ok(text) => set_timeout(move || self.read(&text), Duration::ZERO),
            Err(error) => self.refuse(&error),
        });
    }

    /// How far it is, with a way to stop.
    pub fn progress(self) -> impl IntoView {
        let open = Memo::new(move |_| self.far.with(Option::is_some));
        move || {
            open.get().then(|| {
                let part = move || {
                    let (done, count) = self.far.get().unwrap_or_default();
                    done as f64 / count.max(1) as f64
                };
                let words = move || match self.far.get().unwrap_or_default() {
                    (_, 0) => text(words::READING).to_owned(),
                    (done, count) => say(words::Opening { done, count }),
                };
                view! {
                    <div class="working" data-taking-in="">
                        <p role="status">{words}</p>
                        <p><progress aria-label=text(words::DONE) prop:value=part></progress></p>
                        <p><button on:click=move |_| self.stop()>{text(words::STOP)}</button></p>
                    </div>
                }
            })
        }
    }

    fn read(self, text: &str) {
        // Stopped, or the page was left, while the browser read the file.
        if self.far.try_get_untracked().flatten().is_none() {
            return;
        }
        match Reading::of(text) {
            Ok(reading) => {
                self.work.set_value(Some(Work { reading, said: Vec::new(), kept: 0 }));
                self.go_on();
            }
            Err(error) => self.refuse(&error),
        }
    }

    fn refuse(self, error: &ImportError) {
        let _ = self.said.try_set(error.to_string());
        let _ = self.far.try_set(None);
    }

    /// Opens projects for a while; what is left goes on after the page was painted.
    fn go_on(self) {
        let end = js_sys::Date::now() + SLICE_MS;
        let more = self.work.try_update_value(|work| {
            work.as_mut().map(|work| {
                while work.step(self.store) {
                    if js_sys::Date::now() > end {
                        return Some(work.reading.progress());
                    }
                }
                None
            })
        });
        match more.flatten() {
            // It was stopped, or the page was left, and the work with it.
            None => {}
            Some(Some(far)) => {
                self.far.set(Some(far));
                set_timeout(move || self.go_on(), Duration::ZERO);
            }
            Some(None) => self.end(false),
        }
    }

    fn stop(self) {
        self.end(true);
    }

    /// Says what became of the file.
    fn end(self, stopped: bool) {
        // Stopped twice: it has been told.
        if self.far.try_get_untracked().flatten().is_none() {
            return;
        }
        let Some(work) = self.work.try_update_value(Option::take) else { return };
        let mut said: Vec<String> = Vec::new();
        if stopped {
            let far = work.as_ref().map(|work| (work.kept, work.reading.progress().1));
            said.push(match far {
                Some((kept, count)) if kept > 0 => say(words::Stopped { kept, count }),
                _ => text(words::STOPPED_AT_ONCE).to_owned(),
            });
        }
        said.extend(work.map(|work| work.said).unwrap_or_default());
        self.said.set(said.join(" "));
        self.far.set(None);
        self.version.update(|version| *version += 1);
    }
}

impl Work {
    /// Keeps the next project beside what is kept already; says whether there was one.
    fn step(&mut self, store: Store) -> bool {
        let alone = self.reading.alone();
        let Some(one) = self.reading.next() else { return false };
        let words = match one {
            Ok(project) => match transfer::keep(store, project) {
                Ok(kept) => {
                    self.kept += 1;
                    let name = kept.project.name();
                    if store.received(kept.project.id()).is_some() {
                        say(words::OpenedBeside { name })
                    } else {
                        notices::ask_to_stay(store, false);
                        say(words::Opened { name })
                    }
                }
                Err(error) => error.to_string(),
            },
            Err(refused) if alone => ImportError::Project(refused.reason).to_string(),
            Err(refused) => {
                let reason = refused.reason.message();
                say(words::Refused { number: refused.number, reason })
            }
        };
        self.said.push(words);
        true
    }
}
