//! The names that the code says a message by.

use std::fmt::Write as _;

use crate::{Catalogue, Piece, Text};

impl Catalogue {
    /// Rust code with a module for each file: a constant for a message that stands by itself, a struct for one
    /// that is filled. It expects `Id`, `Arg` and `Msg` one module above.
    pub fn rust(&self) -> String {
        let mut code = String::new();
        let mut open = "";
        for (number, text) in self.texts.iter().enumerate() {
            if text.file != open {
                if !open.is_empty() {
                    code.push_str("}\n");
                }
                let _ =
                    writeln!(code, "/// What `{}.ftl` says.\npub mod {} {{", text.file, text.file);
                code.push_str("#[allow(unused_imports)]\nuse super::{Arg, Id, Msg};\n");
                open = &text.file;
            }
            message(&mut code, number, text);
        }
        if !open.is_empty() {
            code.push_str("}\n");
        }
        code
    }
}

fn message(code: &mut String, number: usize, text: &Text) {
    let _ = writeln!(code, "/// {}", shown(&text.pieces).replace('`', "'"));
    let arguments = text.arguments();
    if arguments.is_empty() {
        let _ = writeln!(code, "pub const {}: Id = Id({number});", constant(&text.name));
        return;
    }
    let name = camel(&text.name);
    let letters: Vec<String> = (0..arguments.len()).map(|at| format!("A{at}")).collect();
    let fields: Vec<String> = arguments.iter().map(|name| snake(name)).collect();
    let listed = letters.join(", ");
    let _ = writeln!(code, "pub struct {name}<{listed}> {{");
    for (field, letter) in fields.iter().zip(&letters) {
        let _ = writeln!(code, "/// `${field}`\npub {field}: {letter},");
    }
    let bounds: Vec<String> = letters.iter().map(|letter| format!("{letter}: Into<Arg>")).collect();
    let given: Vec<String> = fields.iter().map(|field| format!("from.{field}.into()")).collect();
    let _ = writeln!(
        code,
        "}}\nimpl<{}> From<{name}<{listed}>> for Msg {{\n#[inline]\nfn from(from: {name}<{listed}>) -> Self {{\n\
         Self::filled(Id({number}), vec![{}])\n}}\n}}",
        bounds.join(", "),
        given.join(", ")
    );
}

/// A message as it stands in the documentation.
fn shown(pieces: &[Piece]) -> String {
    pieces
        .iter()
        .map(|piece| match piece {
            Piece::Words(words) => words.clone(),
            Piece::Argument(name) => format!("{{${name}}}"),
            Piece::Select(_, variants) => {
                variants.last().map_or_else(String::new, |(_, pieces)| shown(pieces))
            }
        })
        .collect()
}

fn snake(name: &str) -> String {
    name.replace(['-', '.'], "_")
}

fn constant(name: &str) -> String {
    snake(name).to_ascii_uppercase()
}

fn camel(name: &str) -> String {
    let capital = |word: &str| {
        let mut letters = word.chars();
        letters.next().map_or_else(String::new, |first| {
            first.to_ascii_uppercase().to_string() + letters.as_str()
        })
    };
    name.split(['-', '.']).map(capital).collect()
}
