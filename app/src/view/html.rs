//! What is only shown, as HTML text: far fewer bytes than a reactive tree. Escaped here and only here.
//!
//! The page's content security policy blocks `style` attributes and scripts in such text. What can
//! be tapped in it carries `data-do` (and `data-with`); the page that shows it listens.

use leptos::ev::Event;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Element;

/// HTML text that grows.
#[derive(Default)]
pub struct Html(String);

impl Html {
    /// Writes markup as it is: the program's own, never people's text.
    pub fn raw(&mut self, markup: &str) {
        self.0.push_str(markup);
    }

    /// Writes text, in an element or in a quoted attribute.
    pub fn text(&mut self, text: &str) {
        escape(&mut self.0, text);
    }

    /// Writes an element with a class and a text in it.
    pub fn tag(&mut self, tag: &str, class: &str, text: &str) {
        self.open(tag, class);
        self.text(text);
        self.close(tag);
    }

    /// As `tag`, but nothing where there is no text.
    pub fn tag_if_any(&mut self, tag: &str, class: &str, text: &str) {
        if !text.is_empty() {
            self.tag(tag, class, text);
        }
    }

    /// Opens an element.
    pub fn open(&mut self, tag: &str, class: &str) {
        self.raw("<");
        self.raw(tag);
        if !class.is_empty() {
            self.raw(" class=\"");
            self.raw(class);
            self.raw("\"");
        }
        self.raw(">");
    }

    /// Closes an element.
    pub fn close(&mut self, tag: &str) {
        self.raw("</");
        self.raw(tag);
        self.raw(">");
    }

    /// Writes a link to a page.
    pub fn link(&mut self, class: &str, hash: &str, text: &str) {
        self.raw("<a class=\"");
        self.raw(class);
        self.raw("\" href=\"");
        self.text(hash);
        self.raw("\">");
        self.text(text);
        self.raw("</a>");
    }

    /// Writes a button that asks the page to `act`, `with` something.
    pub fn button(&mut self, class: &str, act: &str, with: &str, text: &str) {
        self.raw("<button class=\"");
        self.raw(class);
        self.raw("\" data-do=\"");
        self.raw(act);
        self.raw("\" data-with=\"");
        self.text(with);
        self.raw("\">");
        self.text(text);
        self.raw("</button>");
    }

    /// The finished text.
    pub fn finish(self) -> String {
        self.0
    }
}

/// Writes text so that it stays text, in an element or in a quoted attribute.
pub fn escape(into: &mut String, text: &str) {
    for letter in text.chars() {
        match letter {
            '&' => into.push_str("&amp;"),
            '<' => into.push_str("&lt;"),
            '>' => into.push_str("&gt;"),
            '"' => into.push_str("&quot;"),
            '\'' => into.push_str("&#39;"),
            _ if letter.is_control() => into.push(' '),
            _ => into.push(letter),
        }
    }
}

/// What was tapped in such text: what is to be done, and with what.
pub fn asked<E: AsRef<Event>>(event: &E) -> Option<(String, String)> {
    asked_of(event.as_ref())
}

fn asked_of(event: &Event) -> Option<(String, String)> {
    let target = event.target()?.dyn_into::<Element>().ok()?;
    let element = target.closest("[data-do]").ok()??;
    Some((
        element.get_attribute("data-do")?,
        element.get_attribute("data-with").unwrap_or_default(),
    ))
}

/// A part of the page that is only shown, written anew when what it is made of changes.
pub fn shown(class: &'static str, write: impl Fn(&mut Html) + Send + 'static) -> AnyView {
    shown_by(class, Box::new(write))
}

/// One type of view for all such parts.
#[inline(never)]
fn shown_by(class: &'static str, write: Box<dyn Fn(&mut Html) + Send>) -> AnyView {
    let html = move || {
        let mut html = Html::default();
        write(&mut html);
        html.finish()
    };
    view! { <div class=class inner_html=html></div> }.into_any()
}

/// As [`shown`], for a part with lines to open: each `details` with a `data-fold` stays as it is, open or closed, when the part is written anew.
pub fn shown_folded(class: &'static str, write: impl Fn(&mut Html) + Send + 'static) -> AnyView {
    let root = NodeRef::<leptos::html::Div>::new();
    Effect::new(move |_| {
        let mut html = Html::default();
        write(&mut html);
        let Some(root) = root.get() else { return };
        let stood: Vec<(String, bool)> =
            folds(&root).into_iter().map(|(key, one)| (key, one.has_attribute("open"))).collect();
        root.set_inner_html(&html.finish());
        for (key, one) in folds(&root) {
            if let Some((_, open)) = stood.iter().find(|(known, _)| *known == key) {
                let _ = one.toggle_attribute_with_force("open", *open);
            }
        }
    });
    view! { <div class=class node_ref=root></div> }.into_any()
}

fn folds(root: &Element) -> Vec<(String, Element)> {
    let Ok(all) = root.query_selector_all("details[data-fold]") else { return Vec::new() };
    (0..all.length())
        .filter_map(|at| all.item(at)?.dyn_into::<Element>().ok())
        .filter_map(|one| Some((one.get_attribute("data-fold")?, one)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn people_s_text_stays_text() {
        let mut html = Html::default();
        html.tag("p", "note", "<script>alert(\"1\" & '2')</script>\u{0}");
        assert_eq!(
            html.finish(),
            "<p class=\"note\">&lt;script&gt;alert(&quot;1&quot; &amp; &#39;2&#39;)&lt;/script&gt; </p>"
        );
    }
}
