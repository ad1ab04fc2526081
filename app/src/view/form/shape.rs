//! One walk over what is asked: the form's shape as HTML text, and what stands in each field.

mod chips;

use calc::words::{Id, app_form as said, app_page};
use std::collections::{BTreeMap, BTreeSet};

use calc::ask::{Ask, Kind, MOST_ROWS, Need, Picks};
use calc::project::{Evaluation, Node, Place, Project};
use calc::quantity::{LENGTH, Unit};

use super::figure::figure;
use super::takes_unit;
use crate::view::html::Html;
use crate::view::pad;
use crate::view::page::element_id;
use crate::view::title_of;
use crate::words::{say, text, words};

pub use chips::{Chip, Shelves, shelves};

/// Keys that a phone's number pad lacks: what is shown, what is typed, and its name.
const LENGTH_KEYS: &[(&str, &str, Id)] = &[
    ("′", "'", said::KEY_FEET),
    ("″", "\"", said::KEY_INCHES),
    ("/", "/", said::KEY_FRACTION),
    ("␣", " ", said::KEY_SPACE),
    ("+", "+", said::KEY_PLUS),
    ("−", "-", said::KEY_MINUS),
    ("×", "*", said::KEY_TIMES),
];

/// Rows of one list with more fields than this in all are folded, each to a line that names it.
const MANY_FIELDS: usize = 12;
/// Rows of fewer fields than this are lines of their own as they are.
const LONG_ROW: usize = 5;
/// So much of what stands in a folded row is named.
const NAMED: usize = 3;

/// What a walk over the asks found.
pub struct Walk {
    /// The form without what is typed in it.
    pub shape: String,
    /// What stands in its fields, in the order of the form.
    pub fields: Vec<FieldState>,
    /// Groups that may be left out, but have something in them; rows that are not folded at first.
    pub filled_groups: BTreeSet<String>,
    /// How many rows each list shows.
    pub rows_shown: BTreeMap<String, usize>,
    /// What stands in the lines of the inputs, in the order of the form.
    pub chips: Vec<Chip>,
}

/// What stands in a field, or is wrong with a group, a row or a list.
pub struct FieldState {
    /// Its path.
    pub path: String,
    /// The text that is kept.
    pub typed: String,
    /// What is wrong; empty where nothing is.
    pub fault: String,
    /// What could fill it, or where its value comes from, as HTML.
    pub aid: String,
    /// The unit that a bare number takes; empty where none does.
    pub unit: &'static str,
}

struct Walker<'a> {
    project: &'a Project,
    all: &'a Evaluation,
    place: &'a Place,
    picked: &'a BTreeMap<String, usize>,
    faults: BTreeMap<&'a str, &'a str>,
    html: Html,
    fields: Vec<FieldState>,
    filled_groups: BTreeSet<String>,
    rows_shown: BTreeMap<String, usize>,
    chips: Vec<Chip>,
}

impl Walk {
    /// Walks over all asks of a place.
    #[cfg(test)]
    pub fn new(
        project: &Project,
        all: &Evaluation,
        place: &Place,
        picked: &BTreeMap<String, usize>,
        asks: &'static [&'static Ask],
    ) -> Self {
        Self::part(project, all, place, picked, asks, "", &[])
    }

    /// As `new`, of inputs that stand at `base`; those with a key in `skip` are left out.
    pub fn part(
        project: &Project,
        all: &Evaluation,
        place: &Place,
        picked: &BTreeMap<String, usize>,
        asks: &'static [&'static Ask],
        base: &str,
        skip: &[&str],
    ) -> Self {
        let mut walker = Walker::new(project, all, place, picked);
        for ask in asks.iter().filter(|ask| !skip.contains(&ask.key)) {
            walker.one(ask, base);
        }
        walker.finish()
    }

    /// All asks of a place, each a line to tap on its shelf.
    pub fn shelved(
        project: &Project,
        all: &Evaluation,
        place: &Place,
        picked: &BTreeMap<String, usize>,
        asks: &'static [&'static Ask],
        shelves: &Shelves,
    ) -> Self {
        let mut walker = Walker::new(project, all, place, picked);
        walker.shelved(asks, shelves);
        walker.finish()
    }

    /// The lines that stand open at first: what is wrong, and the first of what is needed or to be measured.
    pub fn open_at_first(&self) -> BTreeSet<String> {
        let first =
            self.chips.iter().find(|chip| chip.missing || chip.to_measure).map(|chip| chip.name);
        let open = self.chips.iter().filter(|chip| chip.wrong || Some(chip.name) == first);
        open.map(|chip| ["ask ", chip.name].concat()).collect()
    }
}

impl<'a> Walker<'a> {
    fn new(
        project: &'a Project,
        all: &'a Evaluation,
        place: &'a Place,
        picked: &'a BTreeMap<String, usize>,
    ) -> Self {
        Self {
            project,
            all,
            place,
            picked,
            faults: crate::view::page::faults_by_path(all, place),
            html: Html::default(),
            fields: Vec::new(),
            filled_groups: BTreeSet::new(),
            rows_shown: BTreeMap::new(),
            chips: Vec::new(),
        }
    }

    fn finish(self) -> Walk {
        Walk {
            shape: self.html.finish(),
            fields: self.fields,
            filled_groups: self.filled_groups,
            rows_shown: self.rows_shown,
            chips: self.chips,
        }
    }
}

impl Walker<'_> {
    fn asks(&mut self, asks: &'static [&'static Ask], path: &str) {
        for ask in asks {
            self.one(ask, path);
        }
    }

    fn one(&mut self, ask: &'static Ask, path: &str) {
        let here = join(path, ask.key);
        match ask.kind {
            Kind::Group(of) => self.group(ask, of, &here, ask.need == Need::Optional),
            Kind::Rows { asks, noun, at_least } => {
                self.rows(ask, asks, noun.say(words()), at_least, &here)
            }
            Kind::List { of, at_most, .. } => self.list(ask, of, at_most, &here),
            Kind::Either(of) => self.either(ask, of, path),
            _ => self.field(ask, &here),
        }
    }

    /// Several inputs under one key; a folded one opens on demand.
    fn group(&mut self, ask: &'static Ask, of: &'static [&'static Ask], path: &str, folded: bool) {
        if folded {
            self.html.raw("<details class=\"group\" data-group=\"");
            self.html.text(path);
            self.html.raw("\"><summary>");
        } else {
            self.html.raw("<fieldset class=\"group\"><legend>");
        }
        self.label(ask);
        self.html.raw(if folded { "</summary>" } else { "</legend>" });
        self.html.tag_if_any("p", "help", ask.help.say(words()));
        self.whole(path);
        self.asks(of, path);
        self.html.raw(if folded { "</details>" } else { "</fieldset>" });
        if folded && self.filled(path) {
            self.filled_groups.insert(path.to_owned());
        }
    }

    /// Rows of inputs, one card each.
    fn rows(
        &mut self,
        ask: &'static Ask,
        of: &'static [&'static Ask],
        noun: &str,
        at_least: usize,
        path: &str,
    ) {
        // A sheet that cannot do without a row shows its first one from the start. More rows than are read are not drawn: they
        // could be tens of thousands. A fault says how many there are.
        let count = self.project.row_count(self.place, path).clamp(at_least.min(1), MOST_ROWS);
        self.rows_shown.insert(path.to_owned(), count);
        self.html.raw("<section class=\"rows\">");
        self.heading(ask, path);
        let folds = of.len() >= LONG_ROW;
        for index in 0..count {
            let row = join(path, &index.to_string());
            let name = say(said::RowTitle { row: capital(noun), number: index + 1 });
            if folds {
                self.fold(of, &row, &name, count);
            } else {
                self.html.raw("<fieldset class=\"row\"><legend>");
                self.html.text(&name);
                self.html.raw("</legend>");
            }
            self.whole(&row);
            self.asks(of, &row);
            self.html.raw("<div class=\"row-keys\">");
            self.html.button("", "copy-row", &row, &say(said::CopyRow { row: noun }));
            self.html.button("", "take-row", &row, text(said::REMOVE));
            self.html.raw("</div></fieldset>");
            self.html.raw(if folds { "</details>" } else { "" });
        }
        if count < MOST_ROWS {
            let words = match count {
                0 => say(said::AddFirst { row: noun }),
                _ => say(said::AddAnother { row: noun }),
            };
            self.html.button("add", "add-row", path, &words);
        }
        self.html.raw("</section>");
    }

    /// Opens a row that folds to one line, with what stands in it.
    fn fold(&mut self, of: &'static [&'static Ask], row: &str, name: &str, count: usize) {
        let mut holds: Vec<String> = Vec::new();
        for ask in of.iter().filter(|ask| !matches!(ask.kind, Kind::Choice(_) | Kind::Flag)) {
            let typed = self.project.typed(self.place, &join(row, ask.key));
            let title = match ask.kind {
                Kind::SheetOf(_) => self.project.sheet(&typed).map(|sheet| title_of(&sheet)),
                _ => None,
            };
            holds.push(title.unwrap_or(typed));
        }
        holds.retain(|typed| !typed.is_empty());
        holds.truncate(NAMED);
        let within = |path: &str| {
            path.strip_prefix(row).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
        };
        let fault = self.faults.iter().find(|(path, _)| within(path));
        let fault = fault.map_or_else(String::new, |(_, fault)| (*fault).to_owned());
        if count == 1 || count * of.len() <= MANY_FIELDS || !fault.is_empty() {
            self.filled_groups.insert(row.to_owned());
        }
        self.html.raw("<details class=\"fold\"");
        self.attribute("data-group", row);
        self.html.raw("><summary");
        self.attribute("data-field", row);
        self.html.raw(">");
        self.html.text(name);
        self.html.raw("<span class=\"aid\"></span></summary><fieldset class=\"row\"");
        self.attribute("aria-label", name);
        self.html.raw(">");
        let mut aid = Html::default();
        aid.text(&holds.join(" · "));
        let (path, typed) = (row.to_owned(), String::new());
        self.fields.push(FieldState { path, typed, fault, aid: aid.finish(), unit: "" });
    }

    /// Values in order: the next field opens by itself when the last one is filled.
    fn list(&mut self, ask: &'static Ask, of: &'static Ask, at_most: usize, path: &str) {
        // As in `rows`.
        let kept = self.project.row_count(self.place, path).min(MOST_ROWS);
        let last_blank = kept > 0
            && self.project.typed(self.place, &join(path, &(kept - 1).to_string())).is_empty();
        // What is too much is shown too, so that it can be taken out.
        let shown =
            if last_blank { kept } else { (kept + 1).min(at_most.max(kept)).min(MOST_ROWS) };
        self.html.raw("<section class=\"list\">");
        self.heading(ask, path);
        if kept == 0 && matches!(ask.need, Need::Body(_)) && !self.all.body.ribs.is_empty() {
            let words = say(said::UsesRibs { count: self.all.body.ribs.len() });
            self.html.tag("p", "taken", &words);
        }
        self.html.raw("<ol>");
        for index in 0..shown {
            let item = join(path, &index.to_string());
            self.html.raw("<li><span class=\"number\" aria-hidden=\"true\">");
            self.html.text(&(index + 1).to_string());
            self.html.raw("</span>");
            self.field(of, &item);
            if index < kept {
                self.html.raw("<button class=\"remove\" aria-label=\"");
                let name = of.label.say(words());
                self.html.text(&say(said::RemoveItem { item: name, number: index + 1 }));
                self.html.raw("\" data-do=\"take-row\" data-with=\"");
                self.html.text(&item);
                self.html.raw("\">✕</button>");
            }
            self.html.raw("</li>");
        }
        self.html.raw("</ol></section>");
    }

    /// One of several inputs: which one is a choice of its own.
    fn either(&mut self, ask: &'static Ask, of: &'static [&'static Ask], path: &str) {
        let keys: Vec<&str> = of.iter().map(|one| one.key).collect();
        let group = format!("{path}/{}", keys.join(" "));
        let given = of.iter().position(|one| self.filled(&join(path, one.key)));
        let chosen = given.or_else(|| self.picked.get(&group).copied()).unwrap_or(0);
        let Some(now) = of.get(chosen) else { return };
        self.html.raw("<div class=\"either\"><div class=\"choices\" role=\"group\" aria-label=\"");
        self.html.text(ask.label.say(words()));
        self.html.raw("\"><span class=\"label\">");
        self.label(ask);
        self.html.raw("</span>");
        for (index, one) in of.iter().enumerate() {
            self.html.raw("<button type=\"button\" aria-pressed=\"");
            self.html.raw(if index == chosen { "true" } else { "false" });
            self.html.raw("\" data-do=\"either\" data-with=\"");
            let (old, new) = (join(path, now.key), join(path, one.key));
            self.html.text(&format!("{group}|{index}|{old}|{new}"));
            self.html.raw("\">");
            self.html.text(one.label.say(words()));
            self.html.raw("</button>");
        }
        self.html.raw("</div>");
        match now.kind {
            // Who has just chosen it wants to fill it in.
            Kind::Group(of) => self.group(now, of, &join(path, now.key), false),
            _ => self.one(now, path),
        }
        self.html.raw("</div>");
    }

    /// One field: a label, the text or the choice, and room for what is said about it.
    fn field(&mut self, ask: &'static Ask, path: &str) {
        let id = element_id(path);
        let picked = matches!(ask.kind, Kind::Choice(_) | Kind::Flag | Kind::SheetOf(_));
        let wide = matches!(ask.kind, Kind::Words | Kind::Notation { .. });
        self.html.raw(if wide { "<div class=\"field wide\"" } else { "<div class=\"field\"" });
        self.attribute("data-field", path);
        self.html.raw("><label");
        self.attribute("for", &id);
        self.html.raw(">");
        self.label(ask);
        self.html.raw("</label><div class=\"entry\">");
        if picked {
            self.select(ask, path, &id);
        } else {
            self.input(ask, path, &id);
        }
        self.html.raw("<span class=\"unit\" aria-hidden=\"true\"></span></div>");
        if is_length(ask) {
            self.html.raw("<div class=\"keys\" role=\"group\"");
            self.attribute("aria-label", text(said::LENGTH_KEYS));
            self.html.raw(">");
            for (shown, typed, name) in LENGTH_KEYS {
                self.html.raw("<button type=\"button\" tabindex=\"-1\" aria-label=\"");
                self.html.text(text(*name));
                self.html.raw("\" data-do=\"key\"");
                self.attribute("data-with", typed);
                self.html.raw(">");
                self.html.raw(shown);
                self.html.raw("</button>");
            }
            self.html.raw("</div>");
        }
        if let Some(picks) = ask.picks {
            self.picks(ask, picks, path);
        }
        self.html.raw("<p class=\"fault\"");
        self.attribute("id", &format!("{id}-fault"));
        self.html.raw("></p><div class=\"aid\"></div>");
        self.html.raw("<p class=\"help\"");
        self.attribute("id", &format!("{id}-help"));
        self.html.raw(">");
        self.html.raw(&figure(ask.figure));
        self.html.text(ask.help.say(words()));
        self.html.raw("</p></div>");
        self.state(ask, path);
    }

    fn input(&mut self, ask: &'static Ask, path: &str, id: &str) {
        let mode = match ask.kind {
            Kind::Count { .. } => "numeric",
            Kind::Number { .. } => "decimal",
            _ if is_length(ask) && pad::wanted() => "none",
            _ if is_length(ask) => "decimal",
            _ => "text",
        };
        self.html.raw(
            "<input type=\"text\" autocomplete=\"off\" autocapitalize=\"off\" spellcheck=\"false\" \
             enterkeyhint=\"next\"",
        );
        self.attribute("inputmode", mode);
        if is_length(ask) {
            self.attribute("data-length", "");
        }
        self.attribute("id", id);
        self.attribute("data-path", path);
        self.attribute("aria-describedby", &format!("{id}-fault {id}-help"));
        let usual = ask.usual_in(self.project.system());
        if !usual.is_empty() {
            self.attribute("placeholder", &say(said::ForExample { value: usual }));
        }
        if let Kind::Notation { suggestions, .. } = ask.kind
            && !suggestions.is_empty()
        {
            self.attribute("list", &format!("{id}-choices"));
            self.html.raw("><datalist");
            self.attribute("id", &format!("{id}-choices"));
            self.html.raw(">");
            for text in suggestions {
                self.html.raw("<option");
                self.attribute("value", text);
                self.html.raw("></option>");
            }
            self.html.raw("</datalist>");
            return;
        }
        self.html.raw(">");
    }

    fn select(&mut self, ask: &'static Ask, path: &str, id: &str) {
        self.html.raw("<select");
        self.attribute("id", id);
        self.attribute("data-path", path);
        self.attribute("aria-describedby", &format!("{id}-fault {id}-help"));
        self.html.raw(">");
        match ask.kind {
            Kind::Choice(of) => of.all(words()).for_each(|(key, name)| self.option(key, name)),
            Kind::Flag => {
                self.option("true", text(app_page::YES));
                self.option("false", text(app_page::NO));
            }
            Kind::SheetOf(kind) => {
                self.option("", "—");
                let project = self.project;
                for sheet in project.sheets().filter(|sheet| {
                    sheet.kind().is_some_and(|of| kind.split(' ').any(|one| one == of))
                }) {
                    self.option(&sheet.id(), &title_of(&sheet));
                }
            }
            _ => {}
        }
        self.html.raw("</select>");
    }

    /// A list that fills this field and others of its row from a table.
    fn picks(&mut self, ask: &'static Ask, picks: &'static Picks, path: &str) {
        self.html.raw("<select class=\"picks\"");
        self.attribute("aria-label", &say(said::FromTheTable { ask: ask.label.say(words()) }));
        self.attribute("data-picks", path);
        self.html.raw(">");
        self.option("", &say(said::ChooseFrom { noun: picks.noun.say(words()) }));
        for (index, name) in (picks.names)(words()).iter().enumerate() {
            self.option(&index.to_string(), name);
        }
        self.html.raw("</select>");
    }

    fn option(&mut self, key: &str, name: &str) {
        self.html.raw("<option");
        self.attribute("value", key);
        self.html.raw(">");
        self.html.text(name);
        self.html.raw("</option>");
    }

    fn state(&mut self, ask: &'static Ask, path: &str) {
        let kept = self.project.typed(self.place, path);
        let blank = kept.trim().is_empty();
        let typed = match ask.need {
            // A choice always shows what holds.
            Need::Default(usual) if blank && matches!(ask.kind, Kind::Choice(_) | Kind::Flag) => {
                usual.to_owned()
            }
            _ => kept,
        };
        let unit = match ask.kind {
            Kind::Number { unit, .. } => unit,
            _ if takes_unit(ask) => ask.unit_in(self.project.system()).map_or("", Unit::symbol),
            _ => "",
        };
        let aid = self.aid(ask, path, blank);
        let fault = self.fault(path);
        self.fields.push(FieldState { path: path.to_owned(), typed, fault, aid, unit });
    }

    /// What fills a blank field with one tap, or says where its value comes from.
    fn aid(&self, ask: &'static Ask, path: &str, blank: bool) -> String {
        let mut html = Html::default();
        let mut fill = |text: &str, words: &str| {
            html.button("usual", "fill", &format!("{path}={text}"), words);
        };
        match ask.need {
            Need::Body(part) => {
                if let Some((_, taken)) = self.all.body.part(part, self.project.style()) {
                    let part = words().plain(part.name());
                    if blank {
                        html.tag("p", "taken", &say(said::Uses { part, value: taken }));
                    } else {
                        fill("", &say(said::Use { part, value: taken }));
                    }
                }
            }
            Need::Default(_) if matches!(ask.kind, Kind::Choice(_) | Kind::Flag) => {}
            Need::Default(usual) if blank => {
                html.tag("p", "taken", &say(said::LeftBlank { value: usual }));
            }
            _ => {
                let usual = ask.usual_in(self.project.system());
                if blank && ask.convention && !usual.is_empty() {
                    fill(usual, &say(said::Usual { value: usual }));
                }
            }
        }
        html.finish()
    }

    fn heading(&mut self, ask: &'static Ask, path: &str) {
        self.html.raw("<h2>");
        self.label(ask);
        self.html.raw("</h2><p class=\"help\">");
        self.html.raw(&figure(ask.figure));
        self.html.text(ask.help.say(words()));
        self.html.raw("</p>");
        self.whole(path);
    }

    /// Room for what is wrong with the whole of a group, a row or a list.
    fn whole(&mut self, path: &str) {
        self.html.raw("<div class=\"whole\"");
        self.attribute("data-field", path);
        self.attribute("id", &element_id(path));
        self.html.raw(" tabindex=\"-1\"><p class=\"fault\"></p></div>");
        let fault = self.fault(path);
        let (path, typed, aid) = (path.to_owned(), String::new(), String::new());
        self.fields.push(FieldState { path, typed, fault, aid, unit: "" });
    }

    fn label(&mut self, ask: &Ask) {
        self.html.text(ask.label.say(words()));
        if ask.need == Need::Optional {
            self.html.raw("<span class=\"optional\"> (");
            self.html.text(text(said::OPTIONAL));
            self.html.raw(")</span>");
        }
    }

    fn attribute(&mut self, name: &str, value: &str) {
        self.html.raw(" ");
        self.html.raw(name);
        self.html.raw("=\"");
        self.html.text(value);
        self.html.raw("\"");
    }

    fn fault(&self, path: &str) -> String {
        self.faults.get(path).map_or_else(String::new, |fault| (*fault).to_owned())
    }

    /// Whether anything at all was entered at a path.
    fn filled(&self, path: &str) -> bool {
        match self.project.node(self.place, path) {
            None | Some(Node::Null) => false,
            Some(Node::String(text)) => !text.is_empty(),
            Some(Node::Array(items)) => !items.is_empty(),
            Some(Node::Object(fields)) => !fields.is_empty(),
            Some(_) => true,
        }
    }
}

/// The ask for the input at a path.
pub fn find_ask(asks: &'static [&'static Ask], path: &str) -> Option<&'static Ask> {
    let (head, rest) = match path.split_once('.') {
        Some((head, rest)) => (head, Some(rest)),
        None => (path, None),
    };
    asks.iter().find_map(|ask| {
        if let Kind::Either(of) = ask.kind {
            return find_ask(of, path);
        }
        if ask.key != head {
            return None;
        }
        match (ask.kind, rest) {
            (Kind::Group(of), Some(rest)) => find_ask(of, rest),
            // Past the row's number.
            (Kind::Rows { asks, .. }, Some(rest)) => find_ask(asks, rest.split_once('.')?.1),
            (Kind::List { of, .. }, Some(_)) => Some(of),
            (_, None) => Some(*ask),
            _ => None,
        }
    })
}

/// A path and a key below it.
pub fn join(path: &str, key: &str) -> String {
    match (path.is_empty(), key.is_empty()) {
        (true, _) => key.to_owned(),
        (_, true) => path.to_owned(),
        _ => format!("{path}.{key}"),
    }
}

fn is_length(ask: &Ask) -> bool {
    matches!(ask.kind, Kind::Measure { dimension, .. } if dimension.is(&LENGTH))
}

fn capital(word: &str) -> String {
    // The words are the program's own, in plain letters.
    let mut word = word.to_owned();
    if let Some(first) = word.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    word
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc::sheet::SHEETS;

    #[test]
    fn every_field_of_every_example_finds_its_ask_again() {
        for sheet in SHEETS {
            let mut project = Project::new("p", "", calc::quantity::UnitSystem::Metric);
            let inputs = serde_json::from_str(sheet.example).unwrap();
            let id = project.add_sheet(sheet.kind, "", inputs);
            let all = calc::evaluate(&project);
            let walk = Walk::new(&project, &all, &Place::Sheet(id), &BTreeMap::new(), sheet.asks);
            let typed = walk.fields.iter().filter(|field| !field.typed.is_empty());
            for field in typed {
                assert!(
                    find_ask(sheet.asks, &field.path).is_some(),
                    "{} {}",
                    sheet.kind,
                    field.path
                );
            }
            assert!(walk.fields.len() > 1, "{}", sheet.kind);
        }
    }

    #[test]
    fn what_is_typed_does_not_change_the_shape() {
        for sheet in SHEETS {
            let mut project = Project::new("p", "", calc::quantity::UnitSystem::Metric);
            let id =
                project.add_sheet(sheet.kind, "", serde_json::from_str(sheet.example).unwrap());
            let place = Place::Sheet(id);
            let shape = |project: &Project| {
                let all = calc::evaluate(project);
                Walk::new(project, &all, &place, &BTreeMap::new(), sheet.asks)
            };
            let before = shape(&project);
            let field = before.fields.iter().find(|field| {
                find_ask(sheet.asks, &field.path).is_some_and(takes_unit) && !field.typed.is_empty()
            });
            let Some(field) = field else { continue };
            project.set_typed(&place, &field.path, &Kind::Words, "<b>not a measure</b>");
            assert_eq!(before.shape, shape(&project).shape, "{} {}", sheet.kind, field.path);
        }
    }

    #[test]
    fn many_long_rows_fold_to_lines_that_name_them() {
        let sheet = calc::sheet::find("schedule").unwrap();
        let mut project = Project::new("p", "", calc::quantity::UnitSystem::Metric);
        let step = |label: &str| serde_json::json!({ "label": label, "work": "1 h" });
        let inputs =
            serde_json::json!({ "start": "8:00", "steps": [step("<first>"), step("second")] });
        let id = project.add_sheet(sheet.kind, "", inputs);
        let place = Place::Sheet(id);
        let walk = |project: &Project| {
            let all = calc::evaluate(project);
            Walk::new(project, &all, &place, &BTreeMap::new(), sheet.asks)
        };
        let two = walk(&project);
        assert_eq!(two.shape.matches("class=\"fold\"").count(), 2);
        let line = two.fields.iter().find(|field| field.path == "steps.0").unwrap();
        assert_eq!(line.aid, "&lt;first&gt; · 1 h");
        let open = two.filled_groups.contains("steps.1");
        assert_eq!(open, !line.fault.is_empty(), "folded unless something is to be mended");
        project.set_typed(&place, "steps.1.work", &Kind::Words, "soon");
        let wrong = walk(&project);
        assert!(wrong.filled_groups.contains("steps.1"), "what is wrong stands open");
        project.remove_row(&place, "steps", 1);
        assert!(walk(&project).filled_groups.contains("steps.0"), "one row alone stands open");
    }

    #[test]
    fn a_chosen_way_stands_open() {
        let project = Project::new("p", "", calc::quantity::UnitSystem::Metric);
        let all = calc::evaluate(&project);
        let asks = calc::project::BODY_ASKS;
        let walk = Walk::new(&project, &all, &Place::Body, &BTreeMap::new(), asks);
        assert!(walk.shape.contains("data-path=\"ribs.measured.0\""));
        assert!(!walk.shape.contains("data-path=\"ribs.even.count\""), "one way at a time");
    }
}
