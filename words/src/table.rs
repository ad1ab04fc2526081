//! The table of a language: a tag, where each message begins, and the messages.
//!
//! | bytes | what |
//! |---|---|
//! | 1, and so many | length of the tag, and the tag |
//! | 2 | how many messages |
//! | 4 each, and 4 for the end | where each begins behind this list |
//! | the rest | the messages, without anything between them |
//!
//! Whole numbers stand with their low byte first. In a message, a byte of [`ARGUMENT`] is followed by the number of
//! the argument; one of [`SELECT`] by the argument's number and how many texts there are to choose from, each with
//! its key and its length (2 bytes) in front. A key is a byte of length and a word, or a byte of [`NUMBER`] and the
//! number. All else is text in UTF-8, in which these three bytes do not occur.

use crate::{Catalogue, Key, Piece, Text};

/// What a message is filled with stands here.
pub const ARGUMENT: u8 = 1;
/// One of several texts stands here.
pub const SELECT: u8 = 2;
/// The key of a text is a number.
pub const NUMBER: u8 = 255;

impl Catalogue {
    /// The table of a language, in the order of this one, which is the first.
    pub fn table(&self, of: &Self) -> Vec<u8> {
        let mut bodies = Vec::new();
        let mut starts = Vec::new();
        for text in &self.texts {
            starts.push(bodies.len() as u32);
            if let Some(said) = of.find(&text.file, &text.name) {
                write(&said.pieces, text, &mut bodies);
            }
        }
        starts.push(bodies.len() as u32);
        let mut table = vec![of.tag.len() as u8];
        table.extend(of.tag.bytes());
        table.extend((self.texts.len() as u16).to_le_bytes());
        starts.iter().for_each(|start| table.extend(start.to_le_bytes()));
        table.extend(bodies);
        table
    }
}

/// Writes a message whose arguments are numbered as those of the first language's message.
fn write(pieces: &[Piece], first: &Text, out: &mut Vec<u8>) {
    let number = |name: &str| {
        let place = first.arguments().iter().position(|one| *one == name);
        // A stranger is told by `problems_of`; here it reads as an argument that is not handed in.
        place.unwrap_or(usize::from(u8::MAX)) as u8
    };
    for piece in pieces {
        match piece {
            Piece::Words(words) => out.extend(words.bytes()),
            Piece::Argument(name) => out.extend([ARGUMENT, number(name)]),
            Piece::Select(name, variants) => {
                out.extend([SELECT, number(name), variants.len() as u8]);
                for (key, pieces) in variants {
                    match key {
                        Key::Word(word) => {
                            out.push(word.len() as u8);
                            out.extend(word.bytes());
                        }
                        Key::Number(number) => out.extend([NUMBER, *number]),
                    }
                    let mut body = Vec::new();
                    write(pieces, first, &mut body);
                    out.extend((body.len() as u16).to_le_bytes());
                    out.extend(body);
                }
            }
        }
    }
}
