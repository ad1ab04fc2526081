//! Words that are spelled otherwise where the first language is spoken elsewhere.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::{Catalogue, Piece, Problem, Text};

/// Words of the first language, in small letters, and what stands for each.
pub struct Spelling {
    tag: String,
    words: BTreeMap<String, String>,
}

impl Spelling {
    /// Reads a list: a line holds a word and what stands for it; `#` begins a comment.
    ///
    /// # Errors
    /// The file cannot be read, or a line holds something else.
    pub fn read(tag: &str, path: &Path) -> Result<Self, Vec<Problem>> {
        let text = std::fs::read_to_string(path)
            .map_err(|error| vec![Problem::new(tag, &error.to_string())])?;
        let lines = text.lines().filter(|line| !line.is_empty() && !line.starts_with('#'));
        let pairs: Result<BTreeMap<_, _>, _> = lines
            .map(|line| match line.split_whitespace().collect::<Vec<_>>()[..] {
                [word, other] => Ok((word.to_owned(), other.to_owned())),
                _ => Err(vec![Problem::new(tag, &format!("no pair of words: {line}"))]),
            })
            .collect();
        Ok(Self { tag: tag.to_owned(), words: pairs? })
    }

    /// Those of the texts that are spelled otherwise, save what the language says itself.
    ///
    /// A word of the list that no text has would be a slip; it is told as a text that is not asked for.
    pub fn spelled_otherwise(&self, texts: &[Text], own: &Catalogue) -> Vec<Text> {
        let mut used = BTreeSet::new();
        let mut found: Vec<Text> = texts
            .iter()
            .filter_map(|text| {
                let pieces = self.pieces(&text.pieces, &mut used);
                let said = own.find(&text.file, &text.name).is_some();
                (pieces != text.pieces && !said).then(|| Text { pieces, ..text.clone() })
            })
            .collect();
        found.extend(self.words.keys().filter(|word| !used.contains(*word)).map(|word| Text {
            file: format!("spelling of {}", self.tag),
            name: word.clone(),
            pieces: Vec::new(),
        }));
        found
    }

    fn pieces(&self, pieces: &[Piece], used: &mut BTreeSet<String>) -> Vec<Piece> {
        let one = |piece: &Piece| match piece {
            Piece::Words(words) => Piece::Words(self.spell(words, used)),
            Piece::Argument(name) => Piece::Argument(name.clone()),
            Piece::Select(name, variants) => {
                let variants = variants.iter();
                let spelled =
                    variants.map(|(key, pieces)| (key.clone(), self.pieces(pieces, used)));
                Piece::Select(name.clone(), spelled.collect())
            }
        };
        pieces.iter().map(one).collect()
    }

    fn spell(&self, text: &str, used: &mut BTreeSet<String>) -> String {
        let letter = |c: char| c.is_alphabetic();
        let mut spelled = String::new();
        let mut rest = text;
        while !rest.is_empty() {
            let end = rest.find(|c| !letter(c)).unwrap_or(rest.len());
            let (word, after) = rest.split_at(end);
            match self.words.get(&word.to_ascii_lowercase()) {
                Some(other) => {
                    used.insert(word.to_ascii_lowercase());
                    spelled += &as_large(word, other);
                }
                None => spelled += word,
            }
            let gap = after.find(letter).unwrap_or(after.len());
            spelled += &after[..gap];
            rest = &after[gap..];
        }
        spelled
    }
}

/// A word with a capital where the other one has it.
fn as_large(like: &str, word: &str) -> String {
    let mut letters = word.chars();
    match (like.chars().next(), letters.next()) {
        (Some(first), Some(own)) if first.is_ascii_uppercase() => {
            std::iter::once(own.to_ascii_uppercase()).chain(letters).collect()
        }
        _ => word.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_is_spelled_otherwise_is_said_again() {
        let files = |text: &str| BTreeMap::from([("paint".to_owned(), text.to_owned())]);
        let first = Catalogue::parse(
            "en",
            &files(
                "color = Color, colors and { $color }\nplain = Nothing\nspray = { $count ->\n    [one] one color\n   *[other] colorless\n }\nown = A color\n",
            ),
        )
        .unwrap_or_else(|problems| panic!("{problems:?}"));
        let own = Catalogue::parse("en-GB", &files("own = A shade\n"))
            .unwrap_or_else(|problems| panic!("{problems:?}"));
        let pairs = [("color", "colour"), ("colors", "colours"), ("tire", "tyre")];
        let list = Spelling {
            tag: "en-GB".to_owned(),
            words: pairs.map(|(word, other)| (word.to_owned(), other.to_owned())).into(),
        };
        let found = list.spelled_otherwise(&first.texts, &own);
        let names: Vec<&str> = found.iter().map(|text| text.name.as_str()).collect();
        assert_eq!(names, ["color", "spray", "tire"]);
        assert_eq!(
            found[0].pieces,
            [Piece::Words("Colour, colours and ".to_owned()), Piece::Argument("color".to_owned())]
        );
        let language = Catalogue { tag: "en-GB".to_owned(), texts: [own.texts, found].concat() };
        let problems: Vec<String> =
            first.problems_of(&language).iter().map(ToString::to_string).collect();
        assert_eq!(problems, ["en-GB/spelling of en-GB: tire is not asked for"]);
    }
}
