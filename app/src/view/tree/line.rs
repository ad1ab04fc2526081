//! One line of the tree: a splice with its run, its loads and what came out for it.

use calc::words::app_tree as said;
use std::collections::BTreeMap;

use calc::outcome::{Record, Value};
use calc::project::{Evaluation, Place, Project};
use calc::quantity::{plain, significant};

use super::outline::{Line, Pick};
use crate::view::html::Html;
use crate::view::page::faults_by_path;
use crate::words::{figure, say, text};

/// What lines are written from.
pub struct Shows<'a> {
    project: &'a Project,
    place: &'a Place,
    faults: BTreeMap<&'a str, &'a str>,
    outcome: Option<&'a Record>,
}

impl<'a> Shows<'a> {
    /// All that is known of a circuit.
    pub fn new(project: &'a Project, place: &'a Place, all: &'a Evaluation) -> Self {
        let outcome = match place {
            Place::Sheet(id) => all.sheet(id).and_then(|result| result.as_ref().ok()),
            _ => None,
        };
        Self {
            project,
            place,
            faults: faults_by_path(all, place),
            outcome: outcome.map(|report| &report.outcome),
        }
    }

    /// Writes a line as a button that opens it.
    pub fn push(&self, html: &mut Html, line: &Line, open: bool) {
        html.raw("<li class=\"d");
        html.raw(["0", "1", "2", "3", "4", "5"][line.depth.min(5)]);
        html.raw("\"><button type=\"button\" class=\"node\" data-do=\"pick\" data-with=\"");
        html.raw(&line.pick.path());
        html.raw(if open { "\" aria-expanded=\"true\">" } else { "\" aria-expanded=\"false\">" });
        html.raw("<span class=\"name\">");
        html.text(if line.name.is_empty() { text(said::NO_NAME) } else { &line.name });
        html.raw("</span> ");
        let (voltage, drop) = self.voltage(line);
        html.tag_if_any("strong", "", &voltage);
        html.raw(" ");
        html.tag_if_any("span", "note", &self.words(line));
        html.raw(" ");
        html.tag_if_any("span", "drop", &drop);
        if line.loose {
            html.tag("span", "note warning", text(said::NOT_FED));
        }
        if self.is_wrong(line) {
            html.tag("span", "note warning", text(said::NEEDS_ATTENTION));
        }
        html.raw("</button></li>");
    }

    fn typed(&self, line: &Line, key: &str) -> String {
        self.project.typed(self.place, &format!("{}.{key}", line.pick.path()))
    }

    /// How it is fed, and what hangs on it.
    fn words(&self, line: &Line) -> String {
        let mut words = Vec::new();
        if line.told {
            words.push(say(said::FromNode { node: line.from.as_str() }));
        }
        match line.pick {
            Pick::Source => words.push(self.project.typed(self.place, "source_voltage")),
            Pick::Run(_) => {
                let id = self.typed(line, "id");
                let run = self.entry("runs", &id);
                let typed = self.typed(line, "length");
                // A length that was left out is taken from where the run lies.
                let length = match run.and_then(|run| run.number("length_m")) {
                    Some(_) if !typed.is_empty() => typed,
                    Some(metres) => self
                        .project
                        .style()
                        .run(calc::quantity::Length { value: metres, ..Default::default() }),
                    None => typed,
                };
                words.extend([length, self.conductor(line, run)]);
            }
            Pick::Row(_) => {
                let count = self.typed(line, "count");
                words.push(format!("{count} × {}", self.typed(line, "value")));
                words.extend([self.typed(line, "first"), self.typed(line, "spacing")]);
                let id = format!("run {}", line.nodes.first().map_or("", String::as_str));
                words.push(self.conductor(line, self.entry("runs", &id)));
            }
            Pick::Load(_) => {}
        }
        for load in &line.loads {
            let typed = |key: &str| self.project.typed(self.place, &format!("loads.{load}.{key}"));
            let (label, count) = (typed("label"), typed("count"));
            let several =
                if count.is_empty() || count == "1" { String::new() } else { count + " × " };
            words.push(format!("{several}{label} {}", typed("value")));
        }
        words.retain(|word| !word.trim().is_empty());
        words.join(" · ")
    }

    /// The size that was chosen where the choice was left open.
    fn conductor(&self, line: &Line, run: Option<&Record>) -> String {
        let typed = self.typed(line, "conductor");
        match run.and_then(|run| run.get("conductor")) {
            Some(Value::Text(size)) => size.clone(),
            _ => typed,
        }
    }

    /// The voltage and the drop at its last splice.
    fn voltage(&self, line: &Line) -> (String, String) {
        let node = line.nodes.last().and_then(|node| self.entry("nodes", node));
        let number = |key: &str| node.and_then(|node| node.number(key));
        match (number("voltage_v"), number("drop_percent")) {
            (Some(volts), Some(drop)) if line.pick != Pick::Source => (
                figure(format!("{} V", significant(volts, 4))),
                figure(format!("−{} %", plain(drop, 2))),
            ),
            _ => Default::default(),
        }
    }

    /// A record of the outcome under a name that may have any sign in it.
    fn entry(&self, of: &str, name: &str) -> Option<&'a Record> {
        let Some(Value::Record(all)) = self.outcome?.get(of) else { return None };
        all.entries().find(|(known, _)| *known == name).and_then(|(_, value)| match value {
            Value::Record(record) => Some(record),
            _ => None,
        })
    }

    fn is_wrong(&self, line: &Line) -> bool {
        let own = std::iter::once(line.pick).chain(line.loads.iter().map(|l| Pick::Load(*l)));
        own.map(|pick| pick.path() + ".")
            .any(|path| self.faults.keys().any(|fault| fault.starts_with(&path)))
    }
}
