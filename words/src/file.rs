//! Message files, read by Fluent's own parser and brought into the few shapes that a table holds.

use std::collections::BTreeMap;
use std::fmt;

use fluent_syntax::ast::{
    Entry, Expression, InlineExpression, Pattern, PatternElement, Variant, VariantKey,
};

use crate::Text;

/// A part of a message.
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// Words as they stand.
    Words(String),
    /// What the message is filled with, by name.
    Argument(String),
    /// One of several, by what it is filled with; the last one where no other fits.
    Select(String, Vec<(Key, Vec<Piece>)>),
}

/// What an argument has to be for one of several texts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Key {
    /// A plural category of the language, by its name in CLDR: `one`. Also a word that is handed in.
    Word(String),
    /// This number.
    Number(u8),
}

/// What is wrong in a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Language and file.
    pub place: String,
    /// What is wrong.
    pub what: String,
}

impl Problem {
    pub(crate) fn new(place: &str, what: &str) -> Self {
        Self { place: place.to_owned(), what: what.to_owned() }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.what)
    }
}

type Terms = BTreeMap<String, Pattern<String>>;

/// The messages of all files; terms may stand in any of them.
pub fn texts(files: &BTreeMap<String, String>) -> Result<Vec<Text>, Vec<Problem>> {
    let mut problems = Vec::new();
    let mut parsed = Vec::new();
    let mut terms = Terms::new();
    for (name, text) in files {
        let resource = match fluent_syntax::parser::parse(text.clone()) {
            Ok(resource) => resource,
            Err((resource, errors)) => {
                problems.extend(errors.iter().map(|error| {
                    let line = 1 + text
                        .get(..error.pos.start)
                        .map_or(0, |before| before.matches('\n').count());
                    Problem::new(name, &format!("line {line}: {error}"))
                }));
                resource
            }
        };
        for entry in &resource.body {
            if let Entry::Term(term) = entry {
                terms.insert(term.id.name.clone(), term.value.clone());
            }
        }
        parsed.push((name, resource));
    }
    let mut texts = Vec::new();
    for (file, resource) in parsed {
        for entry in resource.body {
            let Entry::Message(message) = entry else { continue };
            let id = message.id.name;
            let values = message.value.into_iter().map(|value| (id.clone(), value));
            let attributes = message
                .attributes
                .into_iter()
                .map(|attribute| (format!("{id}.{}", attribute.id.name), attribute.value));
            let values: Vec<_> = values.collect();
            for (name, pattern) in values.into_iter().chain(attributes) {
                match pieces(&pattern, &terms) {
                    Ok(pieces) => texts.push(Text { file: file.clone(), name, pieces }),
                    Err(what) => problems.push(Problem::new(file, &format!("{name}: {what}"))),
                }
            }
        }
    }
    if problems.is_empty() { Ok(texts) } else { Err(problems) }
}

/// Names of arguments in the order in which they are first named.
pub fn arguments<'a>(pieces: &'a [Piece], found: &mut Vec<&'a str>) {
    for piece in pieces {
        let (Piece::Argument(name) | Piece::Select(name, _)) = piece else { continue };
        if !found.contains(&name.as_str()) {
            found.push(name);
        }
        if let Piece::Select(_, variants) = piece {
            variants.iter().for_each(|(_, pieces)| arguments(pieces, found));
        }
    }
}

fn pieces(pattern: &Pattern<String>, terms: &Terms) -> Result<Vec<Piece>, String> {
    let mut found = Vec::new();
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => words(&mut found, value),
            PatternElement::Placeable { expression } => placed(expression, terms, &mut found)?,
        }
    }
    Ok(found)
}

/// Adds words to those before them. A line break in a file is only where the line was full.
fn words(found: &mut Vec<Piece>, value: &str) {
    let value = value.replace('\n', " ");
    match found.last_mut() {
        Some(Piece::Words(before)) => before.push_str(&value),
        _ => found.push(Piece::Words(value)),
    }
}

fn placed(
    expression: &Expression<String>,
    terms: &Terms,
    found: &mut Vec<Piece>,
) -> Result<(), String> {
    match expression {
        Expression::Inline(inline) => inlined(inline, terms, found),
        Expression::Select { selector: InlineExpression::VariableReference { id }, variants } => {
            let last = variants.iter().position(|one| one.default);
            let others = variants.iter().filter(|one| !one.default);
            let in_order = others.chain(last.and_then(|at| variants.get(at)));
            let chosen = in_order.map(|one| variant(one, terms)).collect::<Result<_, _>>()?;
            found.push(Piece::Select(id.name.clone(), chosen));
            Ok(())
        }
        Expression::Select { .. } => {
            Err("only what the message is filled with can be chosen by".to_owned())
        }
    }
}

fn variant(of: &Variant<String>, terms: &Terms) -> Result<(Key, Vec<Piece>), String> {
    let key = match &of.key {
        VariantKey::Identifier { name } => Key::Word(name.clone()),
        VariantKey::NumberLiteral { value } => Key::Number(
            value
                .parse()
                .map_err(|_| format!("{value}: a number to choose by is whole, 0 to 255"))?,
        ),
    };
    Ok((key, pieces(&of.value, terms)?))
}

fn inlined(
    inline: &InlineExpression<String>,
    terms: &Terms,
    found: &mut Vec<Piece>,
) -> Result<(), String> {
    match inline {
        InlineExpression::StringLiteral { value } | InlineExpression::NumberLiteral { value } => {
            words(found, &unescaped(value)?);
        }
        InlineExpression::VariableReference { id } => found.push(Piece::Argument(id.name.clone())),
        InlineExpression::Placeable { expression } => placed(expression, terms, found)?,
        InlineExpression::TermReference { id, attribute: None, arguments: None } => {
            let term =
                terms.get(&id.name).ok_or_else(|| format!("there is no term -{}", id.name))?;
            for piece in pieces(term, terms)? {
                match piece {
                    Piece::Words(value) => words(found, &value),
                    other => found.push(other),
                }
            }
        }
        _ => return Err("only arguments, terms and literals can be placed in a message".to_owned()),
    }
    Ok(())
}

fn unescaped(value: &str) -> Result<String, String> {
    if value.contains('\\') {
        Err(format!("{value}: write the character itself"))
    } else {
        Ok(value.to_owned())
    }
}
