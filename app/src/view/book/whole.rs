//! The booklet: what is done at the front, sheet by sheet in numbered sections; what is only looked up at its end.

use calc::project::{Evaluation, Project};
use calc::report::{Caution, Step};
use calc::words::{Arg, app_common, app_page, app_paper as said};

use super::sheet::{push_figure, push_in_book};
use super::{first_figure, lists, push_contents_row, side_view};
use crate::view::html::Html;
use crate::view::title_of;
use crate::words::{text, words};

/// What the sheets say once, together, at the end of the booklet.
#[derive(Default)]
struct Ends {
    cautions: Vec<Caution>,
    workings: Html,
    sources: Vec<String>,
}

/// Cover and contents, body, sheets, lists, what to take care of, workings, sources.
pub fn push_book(html: &mut Html, project: &Project, all: &Evaluation) {
    let ends =
        [said::TAKE_CARE, app_page::WORKING, said::SOURCES].map(|title| text(title).to_owned());
    let mut titles = vec![text(app_common::THE_BODY).to_owned()];
    titles.extend(project.sheets().map(|entry| title_of(&entry)));
    titles.extend([app_common::CUT_LIST, app_common::BUY_LIST].map(|title| text(title).to_owned()));
    titles.extend(ends);
    push_cover(html, project, all, &titles);

    let mut titles = (1..).zip(&titles);
    let mut begin = |html: &mut Html| {
        html.raw("<section class=\"chapter\">");
        titles.next().map_or(0, |(number, title)| {
            push_head(html, "h2", number, title);
            number
        })
    };
    let (mut ends, mut shown) = (Ends::default(), Vec::new());
    html.raw("<div class=\"chapters\">");
    begin(html);
    super::push_body(html, project, all, true);
    html.raw("</section>");
    for entry in project.sheets() {
        let number = begin(html);
        if let Some(report) = push_in_book(html, project, all, (number, &entry.id()), &mut shown) {
            ends.push_working(number, &title_of(&entry), &report.working);
            let numbers: Vec<Arg> =
                report.cautions.iter().map(|one| ends.caution_number(one).into()).collect();
            if !numbers.is_empty() {
                let care = said::CareNumbers { numbers: Arg::each(numbers) };
                html.tag("p", "care", &project.style().say(care));
            }
        }
        html.raw("</section>");
    }
    begin(html);
    lists::push_cuts(html, all, project.style());
    html.raw("</section>");
    begin(html);
    lists::push_buy(html, project, all);
    html.raw("</section></div><div class=\"ends\">");
    begin(html);
    ends.push_cautions(html);
    html.raw("</section>");
    begin(html);
    html.raw(&ends.workings.finish());
    html.raw("</section>");
    begin(html);
    html.raw("<ol class=\"sources\">");
    for source in &ends.sources {
        html.tag("li", "cited", source);
    }
    html.raw("</ol></section></div>");
}

fn push_cover(html: &mut Html, project: &Project, all: &Evaluation, titles: &[String]) {
    html.raw("<section class=\"cover\">");
    html.tag("p", "title", project.name());
    html.tag_if_any("p", "date", &super::date_of(project));
    if let Some(rig) = side_view(&all.body, project.style()) {
        push_figure(html, &rig, 900);
    }
    html.tag("p", "help", text(said::ESTIMATES));
    html.tag("h2", "", text(said::CONTENTS));
    html.raw("<table class=\"contents\"><tbody>");
    let ids: Vec<String> = project.sheets().map(|entry| entry.id()).collect();
    for (index, title) in titles.iter().enumerate() {
        // The body comes first, then the sheets.
        let id = index.checked_sub(1).and_then(|sheet| ids.get(sheet));
        push_contents_row(html, index + 1, title, id.map_or(("", ""), |id| first_figure(all, id)));
    }
    html.raw("</tbody></table></section>");
}

fn push_head(html: &mut Html, tag: &str, number: usize, title: &str) {
    html.open(tag, "");
    html.tag("span", "number", &number.to_string());
    html.raw(" ");
    html.text(title);
    html.close(tag);
}

impl Ends {
    /// The number of a caution among all, from 1.
    fn caution_number(&mut self, caution: &Caution) -> usize {
        let known = self.cautions.iter().position(|one| one.text == caution.text);
        known.unwrap_or_else(|| {
            self.cautions.push(*caution);
            self.cautions.len() - 1
        }) + 1
    }

    /// The number of a source among all, from 1.
    fn source_number(&mut self, source: &str) -> usize {
        let known = self.sources.iter().position(|one| one == source);
        known.unwrap_or_else(|| {
            self.sources.push(source.to_owned());
            self.sources.len() - 1
        }) + 1
    }

    /// The steps of a sheet, each in one run of text with the number of its source.
    fn push_working(&mut self, number: usize, title: &str, steps: &[Step]) {
        push_head(&mut self.workings, "h3", number, title);
        self.workings.raw("<ol class=\"steps\">");
        for step in steps {
            let source = self.source_number(&step.source.say(words()));
            let html = &mut self.workings;
            html.raw("<li>");
            html.tag("b", "", &step.name);
            html.raw(" ");
            html.tag("i", "formula", &step.formula);
            if !step.numbers.is_empty() {
                html.raw(" = ");
                html.text(&step.numbers);
            }
            html.raw(" = ");
            html.tag("b", "", &step.result);
            push_source(html, source);
            html.raw("</li>");
        }
        self.workings.raw("</ol>");
    }

    /// Cautions with their numbers, once each.
    fn push_cautions(&mut self, html: &mut Html) {
        html.raw("<ol class=\"cares\">");
        for caution in std::mem::take(&mut self.cautions) {
            html.raw("<li>");
            html.text(caution.text.say(words()));
            push_source(html, self.source_number(&caution.source.say(words())));
            html.raw("</li>");
        }
        html.raw("</ol>");
    }
}

fn push_source(html: &mut Html, number: usize) {
    html.tag("cite", "", &format!(" [{number}]"));
}
