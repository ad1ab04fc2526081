//! One sheet on paper: what was measured, what follows, how it was worked out.

use calc::ask::{Ask, Kind, Need};
use calc::drawing::{Drawing, Fit, Shape};
use calc::project::{Evaluation, Place, Project};
use calc::quantity::from_digits;
use calc::report::{Report, Table};
use calc::sheet;
use calc::words::{app_page, app_paper as said};

use super::WIDTH;
use super::lists::push_strips;
use crate::view::drawing::paper::text_width;
use crate::view::drawing::{svg, width_in_sight};
use crate::view::form::join;
use crate::view::html::Html;
use crate::view::{report, title_of};
use crate::words::{say, text, words};

/// A drawing's width and greatest height in the booklet: on paper it takes three quarters of that, its letters then 8 pt. [px]
const FIGURE: (f64, f64) = (440.0, 340.0);

/// Width of a column of the booklet. [px]
const COLUMN: f64 = 336.0;
/// Letters in the booklet's tables beside those of drawings.
const SMALL: f64 = 0.72;
/// Rows of more columns than this are written out in the booklet.
const MOST_COLUMNS: usize = 6;

/// A sheet by itself.
pub fn push_sheet(html: &mut Html, project: &Project, all: &Evaluation, id: &str) {
    let Some(entry) = project.sheet(id) else { return };
    let title = title_of(&entry);
    html.tag("h2", "", &title);
    let kind = entry.kind().and_then(sheet::find);
    html.tag_if_any("p", "purpose", kind.map_or("", |kind| kind.purpose.say(words())));
    let Some(report) = given_and_report(html, project, all, id, false) else { return };
    report::answers(html, report);
    report::drawings(html, &report.drawings, WIDTH, html_number(project, id));
    html.raw("<div class=\"strips\">");
    push_strips(html, &title, &report.marks, project.style());
    html.raw("</div>");
    for table in &report.tables {
        report::table(html, table);
    }
    push_lists(html, report, project);
    html.raw("<section class=\"working\">");
    html.tag("h3", "", text(app_page::WORKING));
    html.raw("<ol>");
    report::working(html, report);
    html.raw("</ol></section>");
    report::cautions(html, report);
}

/// Tables that the booklet has shown, each with its section.
pub type Shown<'a> = Vec<(usize, &'a Table)>;

/// A sheet in a booklet, under its heading: what goes to the end of the booklet, for all sheets, is left out, and a table that
/// stood before is only pointed at. Gives what came out.
pub fn push_in_book<'a>(
    html: &mut Html,
    project: &Project,
    all: &'a Evaluation,
    (section, id): (usize, &str),
    shown: &mut Shown<'a>,
) -> Option<&'a Report> {
    let report = given_and_report(html, project, all, id, true)?;
    report::answers(html, report);
    let style = project.style();
    for (number, drawing) in (html_number(project, id)..).zip(&report.drawings) {
        if !report
            .marks
            .iter()
            .any(|strip| strip.title(style) == drawing.title && is_plain(drawing))
        {
            push_figure(html, drawing, number);
        }
    }
    let title = project.sheet(id).map_or_else(String::new, |entry| title_of(&entry));
    push_strips(html, &title, &report.marks, style);
    for table in &report.tables {
        match shown.iter().find(|(_, one)| *one == table) {
            Some((section, _)) => {
                let same = said::SameTable { title: table.title.as_str(), section: *section };
                html.tag("p", "", &say(same));
            }
            None => {
                let cells = |column: usize| {
                    let rows = table.rows.iter().filter_map(move |row| row.cells.get(column));
                    table.heads.get(column).into_iter().chain(rows)
                };
                let widths = (0..table.heads.len()).map(|column| least_width(cells(column)));
                html.open("div", if widths.sum::<f64>() > COLUMN { "wide" } else { "" });
                report::table(html, table);
                html.close("div");
                shown.push((section, table));
            }
        }
    }
    Some(report)
}

/// What was measured, then what is missing, or the report.
fn given_and_report<'a>(
    html: &mut Html,
    project: &Project,
    all: &'a Evaluation,
    id: &str,
    in_book: bool,
) -> Option<&'a Report> {
    let Some(kind) = project.sheet(id).and_then(|entry| entry.kind().and_then(sheet::find)) else {
        html.tag("p", "", text(app_page::OTHER_VERSION));
        return None;
    };
    push_inputs(html, project, all, &Place::Sheet(id.to_owned()), kind.asks, in_book);
    match all.sheet(id)? {
        Ok(report) => Some(report),
        Err(faults) => {
            html.tag("h3", "", text(app_page::STILL_NEEDED));
            html.raw("<ul>");
            for fault in faults {
                html.tag("li", "", &fault.message);
            }
            html.raw("</ul>");
            None
        }
    }
}

/// A board without a cut-out: its strip shows all that its drawing does.
fn is_plain(drawing: &Drawing) -> bool {
    drawing
        .shapes
        .iter()
        .all(|shape| !matches!(shape, Shape::Area { points, .. } if points.len() > 4))
}

/// How narrow a table's column can be made: its longest word, and the air beside it. [px]
fn least_width<'a>(cells: impl Iterator<Item = &'a String>) -> f64 {
    let words = cells.flat_map(|cell| cell.split(' ')).map(text_width);
    words.fold(0.0, f64::max) * SMALL + 6.0
}

/// A drawing for a column of the booklet: laid out for it, so that its texts keep their size.
pub fn push_figure(html: &mut Html, drawing: &Drawing, number: u64) {
    let whole = Drawing { fit: Fit::Whole, ..drawing.clone() };
    let (width, higher) = width_in_sight(&whole, FIGURE.0, FIGURE.1);
    html.open("figure", if higher { "drawing tall" } else { "drawing" });
    html.raw("<div class=\"drawing-window\" role=\"img\" aria-label=\"");
    html.text(&drawing.words);
    html.raw("\">");
    html.raw(&svg(&whole, width, number * 2));
    html.raw("</div>");
    html.tag("figcaption", "", &drawing.title);
    html.raw("</figure>");
}

/// Drawings of different sheets are kept apart by their numbers.
fn html_number(project: &Project, id: &str) -> u64 {
    project.sheets().position(|sheet| sheet.id() == id).unwrap_or(0) as u64 * 64
}

fn push_lists(html: &mut Html, report: &Report, project: &Project) {
    if !report.buy.is_empty() {
        html.raw("<section class=\"buy\">");
        html.tag("h3", "", text(said::TO_BUY));
        html.raw("<ul>");
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
    in_book: bool,
) {
    let mut given =
        Given { project, all, place, in_book, lines: Html::default(), tables: Html::default() };
    given.asks(asks, "");
    let (lines, tables) = (given.lines.finish(), given.tables.finish());
    if lines.is_empty() && tables.is_empty() {
        return;
    }
    html.raw("<section class=\"given\">");
    html.tag("h3", "", text(said::GIVEN));
    html.raw("<table class=\"lines\"><tbody>");
    html.raw(&lines);
    html.raw("</tbody></table>");
    html.raw(&tables);
    html.raw("</section>");
}

struct Given<'a> {
    project: &'a Project,
    all: &'a Evaluation,
    place: &'a Place,
    in_book: bool,
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
        if self.in_book && columns.len() > MOST_COLUMNS {
            html.tag("h3", "", ask.label.say(words()));
            for row in 0..count {
                html.raw("<p>");
                html.tag("b", "", &format!("{noun} {}", row + 1));
                for column in &columns {
                    let cell = cell(row, column);
                    if !cell.is_empty() {
                        html.raw(" · ");
                        html.text(column.1.label.say(words()));
                        html.raw(" ");
                        html.tag("b", "", &cell);
                    }
                }
                html.raw("</p>");
            }
            self.tables.raw(&html.finish());
            return;
        }
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
                    .map_or_else(String::new, |(_, words)| say(said::OfTheBody { value: words }));
            }
            _ => return String::new(),
        };
        match ask.kind {
            Kind::Choice(of) => {
                let chosen = of.all(words()).find(|(key, _)| *key == text);
                chosen.map_or(text, |(_, name)| name.to_owned())
            }
            Kind::Flag => {
                crate::words::text(if text == "true" { app_page::YES } else { app_page::NO })
                    .to_owned()
            }
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
