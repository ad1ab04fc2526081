//! What differs between two projects: inputs in words, and the answers that follow from them.

use crate::words::{Id, Phrase, Words, project as words};

use super::{BODY_ASKS, Evaluation, Node, Project, SheetEntry, SheetResult, evaluate, rows};
use crate::ask::{Ask, Kind};
use crate::quantity::money;
use crate::sheet;
use crate::text::text;

/// A part in which two projects differ.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Which part it is.
    pub place: PartPlace,
    /// Its name as it is shown: `Floor finish`.
    pub title: String,
    /// Which of the two projects have it.
    pub found: Found,
    /// What was typed and differs; for a part that only one of them has, nothing.
    pub inputs: Vec<Line>,
    /// Headline answers that differ; for a part that only one of them has, all of its answers.
    pub answers: Vec<Line>,
}

/// A part of a project.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PartPlace {
    /// Its name, its units, its lists, and all that stands beside body and sheets.
    Project,
    /// The measured body.
    Body,
    /// The sheet with this id.
    Sheet(String),
}

/// Which of two projects have a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// Both.
    InBoth,
    /// The first only.
    InFirst,
    /// The other only.
    InOther,
}

/// A value that differs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What it is, in words: `Area 2: Length`.
    pub label: String,
    /// In the first project; empty where it is left out.
    pub first: String,
    /// In the other project; empty where it is left out.
    pub other: String,
}

/// The longest value that is written out. [characters]
const LONGEST: usize = 120;

/// All parts in which two projects differ, in the order of the first one's file; ids and the order
/// of sheets are passed over. Answers of both are written in the first project's units.
pub fn compare(first: &Project, other: &Project) -> Vec<Part> {
    let mut alike = other.clone();
    // What was typed in the other's units is written down before they change.
    alike.set_system(first.system());
    for key in ["units", "rounding"] {
        alike.set_extra(key, first.extra(key).cloned().unwrap_or_default());
    }
    let (before, after) = (evaluate(first), evaluate(&alike));
    let mut parts = vec![whole(first, other, &before, &after), body(first, other, &before, &after)];
    let others: Vec<_> = other.sheets().zip(&after.sheets).collect();
    let mut matched = vec![false; others.len()];
    for (sheet, (_, result)) in first.sheets().zip(&before.sheets) {
        let same = others.iter().zip(&matched).position(|((one, _), taken)| {
            !taken && one.id() == sheet.id() && one.kind() == sheet.kind()
        });
        parts.push(match same {
            Some(index) => {
                matched[index] = true;
                let (one, (_, after)) = &others[index];
                let mut walk = Walk::of(first, other);
                walk.named(words::NAME, sheet.title().to_owned(), one.title().to_owned());
                let asks = sheet.kind().and_then(sheet::find).map_or(&[][..], |sheet| sheet.asks);
                walk.fields(asks, "", sheet.inputs(), one.inputs());
                let answers = answers(first.words, Some(result), Some(after));
                part(first, &sheet, Found::InBoth, walk.lines, answers)
            }
            None => part(
                first,
                &sheet,
                Found::InFirst,
                Vec::new(),
                answers(first.words, Some(result), None),
            ),
        });
    }
    for ((sheet, (_, result)), _) in others.iter().zip(&matched).filter(|(_, matched)| !**matched) {
        parts.push(part(
            first,
            sheet,
            Found::InOther,
            Vec::new(),
            answers(first.words, None, Some(result)),
        ));
    }
    parts.retain(|part| {
        part.found != Found::InBoth || !part.inputs.is_empty() || !part.answers.is_empty()
    });
    parts
}

fn part(
    project: &Project,
    sheet: &SheetEntry<'_>,
    found: Found,
    inputs: Vec<Line>,
    answers: Vec<Line>,
) -> Part {
    let title = title(project, sheet);
    Part { place: PartPlace::Sheet(sheet.id()), title, found, inputs, answers }
}

/// The title of a sheet: its own, else that of its kind, else its id.
fn title(project: &Project, sheet: &SheetEntry<'_>) -> String {
    match (sheet.title(), sheet.kind().and_then(sheet::find)) {
        ("", Some(kind)) => kind.title.say(project.words).to_owned(),
        ("", None) => sheet.id(),
        (title, _) => title.to_owned(),
    }
}

fn whole(first: &Project, other: &Project, before: &Evaluation, after: &Evaluation) -> Part {
    const NAMED: [&str; 8] =
        ["battenbook", "id", "name", "units", "rounding", "body", "sheets", rows::MADE];
    let mut walk = Walk::of(first, other);
    walk.named(words::NAME, first.name().to_owned(), other.name().to_owned());
    let units = |project: &Project| first.style().say(unit_words(project));
    walk.named(words::RESULTS_IN, units(first), units(other));
    if first.system() == other.system() {
        let rounding = |project: &Project| project.style().rounding.name().to_owned();
        walk.named(words::NEAREST, rounding(first), rounding(other));
    }
    let theirs = other.document.keys().filter(|key| !first.document.contains_key(*key));
    for key in first.document.keys().chain(theirs).filter(|key| !NAMED.contains(&key.as_str())) {
        walk.raw(&upper_first(key), first.extra(key), other.extra(key));
    }
    let mut buys = Walk::of(first, other);
    let count = |all: &Evaluation| all.buy_list.len().to_string();
    buys.named(words::BUY_LINES, count(before), count(after));
    let total = |all: &Evaluation| {
        let costs: Vec<f64> = all.buy_list.iter().filter_map(|line| line.line.cost).collect();
        if costs.is_empty() { String::new() } else { money(costs.iter().sum()) }
    };
    buys.named(words::BUY_TOTAL, total(before), total(after));
    Part {
        place: PartPlace::Project,
        title: first.style().say(words::THE_PROJECT),
        found: Found::InBoth,
        inputs: walk.lines,
        answers: buys.lines,
    }
}

fn unit_words(project: &Project) -> Id {
    match project.system() {
        crate::quantity::UnitSystem::Imperial => words::INCHES,
        crate::quantity::UnitSystem::Metric => words::MILLIMETERS,
    }
}

fn body(first: &Project, other: &Project, before: &Evaluation, after: &Evaluation) -> Part {
    let mut walk = Walk::of(first, other);
    walk.fields(BODY_ASKS, "", first.body(), other.body());
    let mut faults = Walk::of(first, other);
    faults.named(words::TO_MEND, faults_of(&before.body.faults), faults_of(&after.body.faults));
    Part {
        place: PartPlace::Body,
        title: first.style().say(words::THE_BODY),
        found: Found::InBoth,
        inputs: walk.lines,
        answers: faults.lines,
    }
}

fn faults_of(faults: &[crate::fault::Fault]) -> String {
    if faults.is_empty() { String::new() } else { faults.len().to_string() }
}

/// The answers that differ. Each is met by the one of the same name; where the names differ, both
/// stand alone.
fn answers(said: Words, first: Option<&SheetResult>, other: Option<&SheetResult>) -> Vec<Line> {
    let shown = |result: Option<&SheetResult>| -> Vec<(String, String, String)> {
        match result {
            Some(Ok(report)) => {
                let all = report.answers.iter();
                all.map(|one| (one.label.clone(), one.text.clone(), one.note.clone())).collect()
            }
            Some(Err(faults)) => {
                vec![(said.plain(words::TO_MEND).to_owned(), faults_of(faults), String::new())]
            }
            None => Vec::new(),
        }
    };
    let (mine, mut theirs) = (shown(first), shown(other));
    let mut lines = Vec::new();
    for (label, text, note) in mine {
        let (mut there, mut there_note) = (String::new(), String::new());
        if let Some(at) = theirs.iter().position(|(known, _, _)| *known == label) {
            (_, there, there_note) = theirs.remove(at);
        }
        if text != there {
            lines.push(Line { label, first: text, other: there });
        } else if note != there_note {
            lines.push(Line { label, first: note, other: there_note });
        }
    }
    let rest = theirs.into_iter();
    lines.extend(rest.map(|(label, other, _)| Line { label, first: String::new(), other }));
    lines
}

/// Goes through two trees of inputs side by side.
struct Walk<'a> {
    first: &'a Project,
    other: &'a Project,
    lines: Vec<Line>,
}

impl<'a> Walk<'a> {
    fn of(first: &'a Project, other: &'a Project) -> Self {
        Self { first, other, lines: Vec::new() }
    }

    fn says(&self, phrase: Phrase) -> &'static str {
        phrase.say(self.first.words)
    }

    fn named(&mut self, label: Id, first: String, other: String) {
        self.leaf(self.first.words.plain(label), first, other);
    }

    fn leaf(&mut self, label: &str, first: String, other: String) {
        if first != other {
            self.lines.push(Line { label: label.to_owned(), first, other });
        }
    }

    /// The fields of a set: those that are asked, then those that nothing asks for.
    fn fields(&mut self, asks: &[&Ask], label: &str, first: &Node, other: &Node) {
        if first == other {
            return;
        }
        if !is_set(first) || !is_set(other) {
            return self.raw(label, Some(first), Some(other));
        }
        let mut asked = Vec::new();
        flatten(asks, &mut asked);
        for ask in &asked {
            self.one(
                ask,
                &below(label, self.says(ask.label)),
                first.get(ask.key),
                other.get(ask.key),
            );
        }
        for key in keys(first, other) {
            if key != crate::node::KEY && !asked.iter().any(|ask| ask.key == key) {
                self.raw(&below(label, &upper_first(&key)), first.get(&key), other.get(&key));
            }
        }
    }

    fn one(&mut self, ask: &Ask, label: &str, first: Option<&Node>, other: Option<&Node>) {
        let (first, other) = (first.unwrap_or(&Node::Null), other.unwrap_or(&Node::Null));
        if first == other {
            return;
        }
        match ask.kind {
            Kind::Group(of) if is_set(first) && is_set(other) => {
                self.fields(of, label, first, other);
            }
            Kind::Rows { asks, noun, .. } if is_list(first) && is_list(other) => {
                // The rows' name says what the list is; its heading is needed only where it is
                // more than their plural.
                let row = upper_first(self.says(noun));
                let label = if self.says(ask.label).starts_with(row.as_str()) {
                    row
                } else {
                    below(label, &row)
                };
                let row = Ask { kind: Kind::Group(asks), ..*ask };
                self.rows(&row, &label, first, other);
            }
            Kind::List { of, .. } if is_list(first) && is_list(other) => {
                self.rows(of, &below(label, self.says(of.label)), first, other);
            }
            _ => {
                let mine = shown(ask, first, self.first);
                let theirs = shown(ask, other, self.other);
                self.leaf(label, mine, theirs);
            }
        }
    }

    /// Rows side by side, whatever they are known by. What is alike at both ends is passed over first, so that a row put in or
    /// taken out is that row alone.
    fn rows(&mut self, ask: &Ask, label: &str, first: &Node, other: &Node) {
        let first: &[Node] = first.as_array().map_or(&[], Vec::as_slice);
        let other: &[Node] = other.as_array().map_or(&[], Vec::as_slice);
        let least = first.len().min(other.len());
        let head = first.iter().zip(other).take_while(|(one, two)| rows::alike(one, two)).count();
        let ends = first.iter().rev().zip(other.iter().rev());
        let tail = ends.take(least - head).take_while(|(one, two)| rows::alike(one, two)).count();
        for index in head..first.len().max(other.len()) - tail {
            let label = text!("{} {}", label, index + 1);
            let mine = first.get(index).filter(|_| index < first.len() - tail);
            let theirs = other.get(index).filter(|_| index < other.len() - tail);
            match (mine, theirs) {
                (Some(_), Some(_)) => self.one(ask, &label, mine, theirs),
                _ => {
                    let brief = |node: Option<&Node>, project| {
                        node.map_or_else(String::new, |node| shown(ask, node, project))
                    };
                    let (mine, theirs) = (brief(mine, self.first), brief(theirs, self.other));
                    self.leaf(&label, mine, theirs);
                }
            }
        }
    }

    /// What nothing asks for, by the names that it has in the file.
    fn raw(&mut self, label: &str, first: Option<&Node>, other: Option<&Node>) {
        if first == other {
            return;
        }
        match (first, other) {
            (Some(Node::Object(_)), None | Some(Node::Object(_)))
            | (None, Some(Node::Object(_))) => {
                let (mine, theirs) = (first.unwrap_or(&Node::Null), other.unwrap_or(&Node::Null));
                for key in keys(mine, theirs) {
                    self.raw(&below(label, &key), mine.get(&key), theirs.get(&key));
                }
            }
            _ => {
                let said = self.first.words;
                self.leaf(label, raw_text(first, said), raw_text(other, said));
            }
        }
    }
}

/// The asks with those of an either in its place.
fn flatten<'a>(asks: &[&'a Ask], into: &mut Vec<&'a Ask>) {
    for ask in asks {
        match ask.kind {
            Kind::Either(of) => flatten(of, into),
            _ => into.push(ask),
        }
    }
}

/// A value as it is read; a set or a list as its values in a row.
fn shown(ask: &Ask, node: &Node, project: &Project) -> String {
    let parts: Vec<String> = match (ask.kind, node) {
        (Kind::Group(of), Node::Object(_)) => {
            let mut asked = Vec::new();
            flatten(of, &mut asked);
            asked.iter().filter_map(|ask| Some(shown(ask, node.get(ask.key)?, project))).collect()
        }
        (Kind::Rows { asks, .. }, Node::Array(rows)) => {
            let row = Ask { kind: Kind::Group(asks), ..*ask };
            rows.iter().map(|node| shown(&row, node, project)).collect()
        }
        (Kind::List { of, .. }, Node::Array(items)) => {
            items.iter().map(|node| shown(of, node, project)).collect()
        }
        (Kind::Choice(of), Node::String(key)) => {
            let known = of.all(project.words).find(|(known, _)| known == key);
            vec![known.map_or_else(|| clipped(key), |(_, name)| name.to_owned())]
        }
        (Kind::SheetOf(_), Node::String(id)) => {
            vec![
                project
                    .sheet(id)
                    .map_or_else(|| clipped(id), |sheet| clipped(&title(project, &sheet))),
            ]
        }
        (Kind::Number { unit, .. }, _) if !unit.is_empty() => {
            let number = raw_text(Some(node), project.words);
            let bare = number.ends_with(|last: char| last.is_ascii_digit());
            vec![if bare { text!("{} {}", number, unit) } else { number }]
        }
        _ => vec![raw_text(Some(node), project.words)],
    };
    let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    clipped(&parts.join(", "))
}

fn raw_text(node: Option<&Node>, said: Words) -> String {
    match node {
        None | Some(Node::Null) => String::new(),
        Some(Node::String(text)) => clipped(text.trim()),
        Some(Node::Bool(flag)) => said.plain(if *flag { words::YES } else { words::NO }).to_owned(),
        Some(node) => clipped(&node.to_string()),
    }
}

fn clipped(text: &str) -> String {
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => [&text[..end], "…"].concat(),
        None => text.to_owned(),
    }
}

/// The keys of both sets, those of the first in front.
fn keys(first: &Node, other: &Node) -> Vec<String> {
    let of = |node: &Node| -> Vec<String> {
        node.as_object().map_or_else(Vec::new, |fields| fields.keys().cloned().collect())
    };
    let mut keys = of(first);
    keys.extend(of(other).into_iter().filter(|key| first.get(key).is_none()));
    keys
}

fn is_set(node: &Node) -> bool {
    node.is_object() || node.is_null()
}

fn is_list(node: &Node) -> bool {
    node.is_array() || node.is_null()
}

fn below(label: &str, name: &str) -> String {
    match (label, name) {
        ("", name) => name.to_owned(),
        (label, "") => label.to_owned(),
        (label, name) => [label, ": ", name].concat(),
    }
}

fn upper_first(word: &str) -> String {
    let mut letters = word.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    first
        .into_iter()
        .chain(letters.map(|letter| if letter == '_' { ' ' } else { letter }))
        .collect()
}

#[cfg(test)]
mod tests;
