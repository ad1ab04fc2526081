//! One sheet on paper: what was measured, what follows, how it was worked out.

use calc::ask::{Ask, Kind, Need};
use calc::project::{Evaluation, Place, Project};
use calc::quantity::from_digits;
use calc::report::{Caution, Report};
use calc::sheet;

use super::WIDTH;
use super::lists::push_strip;
use crate::view::form::join;
use crate::view::html::Html;
use crate::view::{report, title_of};
use crate::words::words;

/// A sheet. Where cautions are gathered, they are only pointed at by their number; else they are
/// written out.
pub fn push_sheet(
    html: &mut Html,
    project: &Project,
    all: &Evaluation,
    id: &str,
    gathered: &mut Option<Vec<Caution>>,
) {
    let Some(entry) = project.sheet(id) else { return };
    html.tag("h2", "", &title_of(&entry));
    let Some(kind) = entry.kind().and_then(sheet::find) else {
        html.tag("p", "", "A sheet made by another version.");
        return;
    };
    html.tag("p", "purpose", kind.purpose.say(words()));
    push_inputs(html, project, all, &Place::Sheet(id.to_owned()), kind.asks);
    let report = match all.sheet(id) {
        Some(Ok(report)) => report,
        Some(Err(faults)) => {
            html.raw("<h3>Still needed for an answer</h3><ul>");
            for fault in faults {
                html.tag("li", "", &fault.message);
            }
            html.raw("</ul>");
            return;
        }
        None => return,
    };
    report::answers(html, report);
    report::drawings(html, report, WIDTH, html_number(project, id));
    let style = project.style();
    for strip in &report.marks {
        push_strip(html, strip, style);
    }
    for table in &report.tables {
        report::table(html, table);
    }
    // A booklet has them once, over all sheets.
    if gathered.is_none() {
        push_lists(html, report, project);
    }
    html.raw("<section class=\"working\"><h3>How it is worked out</h3><ol>");
    report::working(html, report);
    html.raw("</ol></section>");
    match gathered {
        None => report::cautions(html, report),
        Some(gathered) => {
            let numbers: Vec<String> =
                report.cautions.iter().map(|one| number_of(gathered, one).to_string()).collect();
            if !numbers.is_empty() {
                let words = format!("Take care: numbers {} at the end.", numbers.join(", "));
                html.tag("p", "care", &words);
            }
        }
    }
}

/// Drawings of different sheets are kept apart by their numbers.
fn html_number(project: &Project, id: &str) -> u64 {
    project.sheets().position(|sheet| sheet.id() == id).unwrap_or(0) as u64 * 64
}

/// The number of a caution among those gathered, from 1; new ones are added.
fn number_of(gathered: &mut Vec<Caution>, caution: &Caution) -> usize {
    let known = gathered.iter().position(|one| one.text == caution.text);
    known.unwrap_or_else(|| {
        gathered.push(*caution);
        gathered.len() - 1
    }) + 1
}

fn push_lists(html: &mut Html, report: &Report, project: &Project) {
    if !report.buy.is_empty() {
        html.raw("<section class=\"buy\"><h3>To buy</h3><ul>");
        for line in &report.buy {
            html.tag("li", "", &report::buy_words(line));
        }
        html.raw("</ul></section>");
    }
    for line in &report.cut {
        report::cut_line(html, line, project.style());
    }
}

/// What was typed, as a table: a line for each input, a table of its own for rows.
pub fn push_inputs(
    html: &mut Html,
    project: &Project,
    all: &Evaluation,
    place: &Place,
    asks: &'static [&'static Ask],
) {
    let mut given = Given { project, all, place, lines: Html::default(), tables: Html::default() };
    given.asks(asks, "");
    let (lines, tables) = (given.lines.finish(), given.tables.finish());
    if lines.is_empty() && tables.is_empty() {
        return;
    }
    html.raw("<section class=\"given\"><h3>Measured and chosen</h3><table class=\"lines\"><tbody>");
    html.raw(&lines);
    html.raw("</tbody></table>");
    html.raw(&tables);
    html.raw("</section>");
}

struct Given<'a> {
    project: &'a Project,
    all: &'a Evaluation,
    place: &'a Place,
    lines: Html,
    tables: Html,
}

impl Given<'_> {
    fn asks(&mut self, asks: &'static [&'static Ask], path: &str) {
        for ask in asks {
            let here = join(path, ask.key);
            match ask.kind {
                Kind::Group(of) | Kind::Either(of) => self.asks(of, &here),
                Kind::Rows { asks, noun, .. } => self.rows(ask, asks, noun.say(words()), &here),
                _ => {
                    let text = self.text(ask, &here);
                    if !text.is_empty() {
                        self.lines.raw("<tr>");
                        self.lines.tag("th", "", ask.label.say(words()));
                        self.lines.tag("td", "", &text);
                        self.lines.raw("</tr>");
                    }
                }
            }
        }
    }

    /// A table with a column for each thing that any of the rows says.
    fn rows(&mut self, ask: &'static Ask, of: &'static [&'static Ask], noun: &str, path: &str) {
        let count = self.project.row_count(self.place, path);
        let mut columns = Vec::new();
        flatten(of, "", &mut columns);
        let cell = |row: usize, column: &(String, &'static Ask)| {
            self.text(column.1, &join(&join(path, &row.to_string()), &column.0))
        };
        columns.retain(|column| (0..count).any(|row| !cell(row, column).is_empty()));
        if columns.is_empty() {
            return;
        }
        let mut html = Html::default();
        html.raw("<table><caption>");
        html.text(ask.label.say(words()));
        html.raw("</caption><thead><tr>");
        html.tag("th", "", noun);
        for (_, ask) in &columns {
            html.tag("th", "", ask.label.say(words()));
        }
        html.raw("</tr></thead><tbody>");
        for row in 0..count {
            html.raw("<tr>");
            html.tag("td", "", &(row + 1).to_string());
            for column in &columns {
                html.tag("td", "", &cell(row, column));
            }
            html.raw("</tr>");
        }
        html.raw("</tbody></table>");
        self.tables.raw(&html.finish());
    }

    /// What stands for an input: as typed, chosen, usual, or taken from the body.
    fn text(&self, ask: &'static Ask, path: &str) -> String {
        if let Kind::List { of, .. } = ask.kind {
            let count = self.project.row_count(self.place, path);
            let values = (0..count).map(|index| self.text(of, &join(path, &index.to_string())));
            let values: Vec<String> = values.filter(|value| !value.is_empty()).collect();
            if !values.is_empty() || !matches!(ask.need, Need::Body(_)) {
                return values.join(", ");
            }
        }
        let typed = self.project.typed(self.place, path);
        let text = match ask.need {
            _ if !typed.trim().is_empty() => typed,
            Need::Default(usual) => usual.to_owned(),
            Need::Body(part) => {
                let taken = self.all.body.part(part, self.project.style());
                return taken
                    .map_or_else(String::new, |(_, words)| format!("{words} (the body's)"));
            }
            _ => return String::new(),
        };
        match ask.kind {
            Kind::Choice(of) => {
                let chosen = of.all(words()).find(|(key, _)| *key == text);
                chosen.map_or(text, |(_, name)| name.to_owned())
            }
            Kind::Flag => if text == "true" { "yes" } else { "no" }.to_owned(),
            Kind::SheetOf(_) => match self.project.sheet(&text) {
                Some(sheet) => title_of(&sheet),
                None => text,
            },
            Kind::Number { unit, .. } if !unit.is_empty() && is_number(&text) => {
                format!("{text} {unit}")
            }
            _ => text,
        }
    }
}

fn is_number(text: &str) -> bool {
    from_digits(text.strip_prefix(['-', '+']).unwrap_or(text)).is_some()
}

/// The inputs of a row that are one text each, with their paths in the row.
fn flatten(of: &'static [&'static Ask], path: &str, columns: &mut Vec<(String, &'static Ask)>) {
    for ask in of {
        let here = join(path, ask.key);
        match ask.kind {
            Kind::Group(of) | Kind::Either(of) => flatten(of, &here, columns),
            _ => columns.push((here, ask)),
        }
    }
}
