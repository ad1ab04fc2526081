//! Inputs as short lines to tap: what was told stands in sight, usual values and what may be left out behind a line each.

use std::collections::BTreeMap;

use calc::ask::{Ask, Kind, Need};
use calc::body::FIRST;
use calc::project::{Evaluation, Place, Project};
use calc::words::{Msg, app_page as said};

use super::{Walker, join};
use crate::view::title_of;
use crate::words::{text, words};

/// So many values stand in the line of a group or of usual values.
const NAMED: usize = 3;

/// Where more is told than this, what is needed stands in sight and the rest behind a line.
const IN_SIGHT: usize = 10;

/// Where an input stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shelf {
    /// Told, or needed: in sight.
    Told,
    /// Told, though the sheet would do without; of many, behind a line.
    Also,
    /// Left blank, with a value that stands for it.
    Usual,
    /// Left blank; the sheet does without.
    More,
}

/// Where each input of a form stands, by its name. It is kept while somebody types: nothing moves away under the hand.
pub type Shelves = BTreeMap<&'static str, Shelf>;

/// What the line of an input shows.
pub struct Chip {
    /// The name of the input.
    pub name: &'static str,
    /// What was told, or stands for it.
    pub value: String,
    /// It is needed, and nothing is told.
    pub missing: bool,
    /// What was told is wrong.
    pub wrong: bool,
    /// It is one of what is measured first of a body, and not told yet.
    pub to_measure: bool,
}

/// The name of an input in `Shelves`: its key, or that of the first of several.
pub fn name_of(ask: &Ask) -> &'static str {
    match ask.kind {
        Kind::Either(of) => of.first().map_or("", |first| first.key),
        _ => ask.key,
    }
}

/// Where the inputs of a form stand now.
pub fn shelves(
    project: &Project,
    all: &Evaluation,
    place: &Place,
    asks: &'static [&'static Ask],
) -> Shelves {
    let none = BTreeMap::new();
    let walker = Walker::new(project, all, place, &none);
    let mut shelves: Shelves = asks.iter().map(|ask| (name_of(ask), walker.shelf(ask))).collect();
    let told = shelves.values().filter(|shelf| **shelf == Shelf::Told).count();
    if told > IN_SIGHT && *place != Place::Body {
        for ask in asks.iter().filter(|ask| ask.need != Need::Required && !walker.has_fault(ask)) {
            if let Some(shelf) =
                shelves.get_mut(name_of(ask)).filter(|shelf| **shelf == Shelf::Told)
            {
                *shelf = Shelf::Also;
            }
        }
    }
    shelves
}

impl Walker<'_> {
    /// All asks, each a line on its shelf.
    pub(super) fn shelved(&mut self, asks: &'static [&'static Ask], shelves: &Shelves) {
        for shelf in [Shelf::Told, Shelf::Also, Shelf::Usual, Shelf::More] {
            let on = |ask: &&&'static Ask| {
                shelves.get(name_of(ask)).copied().unwrap_or(Shelf::Told) == shelf
            };
            let here: Vec<&'static Ask> = asks.iter().filter(on).copied().collect();
            if here.is_empty() {
                continue;
            }
            let head = match shelf {
                Shelf::Told => None,
                Shelf::Also => Some(("/also", Msg::from(said::AlsoTold { count: here.len() }))),
                Shelf::Usual => {
                    Some(("/usual", Msg::from(said::UsualValues { count: here.len() })))
                }
                Shelf::More => Some(("/more", Msg::from(said::MoreInputs { count: here.len() }))),
            };
            if let Some((group, head)) = &head {
                self.html.raw("<details class=\"shelf\"");
                self.attribute("data-group", group);
                self.html.raw("><summary data-chip=\"\">");
                self.html.tag("span", "name", &self.project.style().say(head.clone()));
                self.html.raw(" <span class=\"value\"></span></summary>");
                let named: Vec<String> =
                    here.iter().take(NAMED).map(|ask| self.named(ask)).collect();
                let value = if shelf == Shelf::More { String::new() } else { named.join(" · ") };
                self.chips.push(Chip {
                    name: "",
                    value,
                    missing: false,
                    wrong: false,
                    to_measure: false,
                });
            }
            self.html.raw("<div class=\"asks\">");
            for ask in here {
                self.chip(ask);
            }
            self.html.raw(if head.is_some() { "</div></details>" } else { "</div>" });
        }
    }

    /// One input: a line, and its field behind it.
    fn chip(&mut self, ask: &'static Ask) {
        let name = name_of(ask);
        self.html.raw("<details class=\"ask\"");
        self.attribute("data-group", &["ask ", name].concat());
        self.html.raw("><summary data-chip=\"\"><span class=\"name\">");
        self.html.text(self.label_of(ask));
        self.html.raw("</span> <span class=\"value\"></span></summary>");
        let (missing, wrong) = (self.is_missing(ask), self.is_wrong(ask));
        let mut value = self.value(ask, "");
        if missing {
            value = text(said::NEEDED).to_owned();
        } else if value.is_empty() {
            value = text(said::NOT_GIVEN).to_owned();
        }
        let to_measure = *self.place == Place::Body && FIRST.contains(&name) && !self.is_given(ask);
        self.chips.push(Chip { name, value, missing, wrong, to_measure });
        match ask.kind {
            // It has been unfolded with its line.
            Kind::Group(of) => self.group(ask, of, ask.key, false),
            _ => self.one(ask, ""),
        }
        self.html.raw("</details>");
    }

    fn shelf(&self, ask: &'static Ask) -> Shelf {
        // All of the body is to be measured, one thing after another.
        if *self.place == Place::Body || self.is_given(ask) || self.is_missing(ask) {
            return Shelf::Told;
        }
        match ask.need {
            Need::Required => Shelf::Told,
            Need::Default(_) | Need::Body(_) => Shelf::Usual,
            Need::Optional => Shelf::More,
        }
    }

    fn is_given(&self, ask: &Ask) -> bool {
        match ask.kind {
            Kind::Either(of) => of.iter().any(|one| self.filled(one.key)),
            _ => self.filled(ask.key),
        }
    }

    fn has_fault(&self, ask: &Ask) -> bool {
        let keys: Vec<&str> = match ask.kind {
            Kind::Either(of) => of.iter().map(|one| one.key).collect(),
            _ => vec![ask.key],
        };
        self.faults.keys().any(|path| keys.contains(&path.split('.').next().unwrap_or_default()))
    }

    fn is_missing(&self, ask: &Ask) -> bool {
        !self.is_given(ask) && self.has_fault(ask)
    }

    fn is_wrong(&self, ask: &Ask) -> bool {
        self.is_given(ask) && self.has_fault(ask)
    }

    fn label_of(&self, ask: &Ask) -> &'static str {
        match ask.kind {
            // What it is, where it says no more than "choose one".
            Kind::Either(of) if ask.label.is_none() => {
                of.first().map_or("", |first| first.label.say(words()))
            }
            _ => ask.label.say(words()),
        }
    }

    /// Name and value of an input, for the line of its shelf.
    fn named(&self, ask: &Ask) -> String {
        [self.label_of(ask), " ", &self.value(ask, "")].concat()
    }

    /// What was told, or what stands for it; empty where neither is.
    fn value(&self, ask: &Ask, base: &str) -> String {
        let here = join(base, ask.key);
        let style = self.project.style();
        let count = || self.project.row_count(self.place, &here);
        match ask.kind {
            Kind::Rows { noun, .. } => match count() {
                0 => String::new(),
                count => style.say(said::Rows { count, row: noun.say(words()) }),
            },
            Kind::List { .. } => match (count(), ask.need) {
                (0, Need::Body(_)) if !self.all.body.ribs.is_empty() => {
                    style.say(said::BodyRibs { count: self.all.body.ribs.len() })
                }
                (0, _) => String::new(),
                (count, _) => style.say(said::ValuesGiven { count }),
            },
            Kind::Group(of) => self.values(of, &here),
            Kind::Either(of) => {
                let given = of.iter().find(|one| self.filled(&join(base, one.key)));
                given.or(of.first()).map_or_else(String::new, |one| self.value(one, base))
            }
            _ => self.plain_value(ask, &here),
        }
    }

    fn values(&self, of: &[&Ask], base: &str) -> String {
        let values = of.iter().map(|ask| self.value(ask, base)).filter(|value| !value.is_empty());
        values.take(NAMED).collect::<Vec<_>>().join(" · ")
    }

    /// Of an input that is one field.
    fn plain_value(&self, ask: &Ask, path: &str) -> String {
        let typed = self.project.typed(self.place, path);
        let blank = typed.trim().is_empty();
        let text = match ask.need {
            Need::Default(usual) if blank => usual.to_owned(),
            Need::Body(part) if blank => {
                let taken = self.all.body.part(part, self.project.style());
                taken.map_or_else(String::new, |(_, text)| text)
            }
            _ => typed,
        };
        match ask.kind {
            Kind::Choice(of) => of
                .all(words())
                .find(|(key, _)| *key == text)
                .map_or_else(String::new, |(_, name)| name.to_owned()),
            Kind::Flag if !text.is_empty() => {
                crate::words::text(if text == "true" { said::YES } else { said::NO }).to_owned()
            }
            Kind::SheetOf(_) => {
                self.project.sheet(&text).map_or_else(String::new, |sheet| title_of(&sheet))
            }
            _ => text,
        }
    }
}
