//! Message files in Fluent's syntax, put into compact tables when the project is built.
//!
//! The files of the first language say which messages there are and what each is filled with; from them come the
//! names that the code uses ([`Catalogue::rust`]), so that a message that is not there, or is filled with something
//! else, does not compile. A table ([`Catalogue::table`]) holds the messages of one language in the order of the
//! first; what a language does not say is left empty, and read from the first.

mod code;
mod file;
pub mod made_up;
mod spelling;
mod table;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

pub use file::{Key, Piece, Problem};

/// The language whose files say which messages there are.
pub const FIRST: &str = "en";

/// All messages of one language.
#[derive(Clone, Debug)]
pub struct Catalogue {
    /// Its tag, as in BCP 47: `en`, `es`.
    pub tag: String,
    /// The messages, in the order of their files and in them.
    pub texts: Vec<Text>,
}

/// A message, or one of its attributes.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The file it stands in, without its ending: `stud_marks`.
    pub file: String,
    /// Its name there: `too-close`, `board.help`.
    pub name: String,
    /// What it says.
    pub pieces: Vec<Piece>,
}

impl Text {
    /// What it is filled with, in the order in which it is first named.
    pub fn arguments(&self) -> Vec<&str> {
        let mut found = Vec::new();
        file::arguments(&self.pieces, &mut found);
        found
    }
}

/// The folders of languages in a folder, by tag, the first language first.
///
/// # Errors
/// The folder cannot be read.
pub fn languages(folder: &Path) -> Result<Vec<(String, PathBuf)>, std::io::Error> {
    let mut found = BTreeMap::new();
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if let (true, Some(tag)) = (path.is_dir(), path.file_name().and_then(|name| name.to_str()))
        {
            found.insert((tag != FIRST, tag.to_owned()), path.clone());
        }
    }
    Ok(found.into_iter().map(|((_, tag), path)| (tag, path)).collect())
}

/// The first language of a folder, and the tables of all languages by tag.
///
/// # Errors
/// What is wrong in the files, a line each.
pub fn tables(folder: &Path) -> Result<(Catalogue, BTreeMap<String, Vec<u8>>), String> {
    let told = |problems: Vec<Problem>| {
        let lines: Vec<String> = problems.iter().map(ToString::to_string).collect();
        format!("the messages cannot be read:\n{}", lines.join("\n"))
    };
    let first = Catalogue::read(FIRST, &folder.join(FIRST)).map_err(told)?;
    let mut tables = BTreeMap::new();
    for (tag, folder) in languages(folder).map_err(|error| error.to_string())? {
        let table = first.table(&first.read_beside(&tag, &folder).map_err(told)?);
        tables.insert(tag, table);
    }
    Ok((first, tables))
}

impl Catalogue {
    /// Reads all files of a language.
    ///
    /// # Errors
    /// All that is wrong in the files.
    pub fn read(tag: &str, folder: &Path) -> Result<Self, Vec<Problem>> {
        let unreadable = |error: std::io::Error| vec![Problem::new(tag, &error.to_string())];
        let mut files = BTreeMap::new();
        for entry in std::fs::read_dir(folder).map_err(unreadable)? {
            let path = entry.map_err(unreadable)?.path();
            if path.extension().is_some_and(|ending| ending == "ftl") {
                let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
                files.insert(name, std::fs::read_to_string(&path).map_err(unreadable)?);
            }
        }
        Self::parse(tag, &files)
    }

    /// Reads a language of a folder of languages, given the first one. What is spoken elsewhere too (`en-GB`) says only
    /// what it says otherwise: what its own files say, and what has another spelling by its list.
    ///
    /// # Errors
    /// All that is wrong in the files.
    pub fn read_beside(&self, tag: &str, folder: &Path) -> Result<Self, Vec<Problem>> {
        let mut language = Self::read(tag, folder)?;
        if self.is_variant(tag) {
            let list = spelling::Spelling::read(tag, &folder.join("spelling.txt"))?;
            language.texts.extend(list.spelled_otherwise(&self.texts, &language));
        }
        Ok(language)
    }

    /// Whether a tag is of this language as it is spoken elsewhere.
    pub fn is_variant(&self, tag: &str) -> bool {
        tag.split_once('-').is_some_and(|(base, _)| base == self.tag)
    }

    /// Reads files that are given as name and text.
    ///
    /// # Errors
    /// All that is wrong in the files.
    pub fn parse(tag: &str, files: &BTreeMap<String, String>) -> Result<Self, Vec<Problem>> {
        let texts = file::texts(files)?;
        Ok(Self { tag: tag.to_owned(), texts })
    }

    /// The language with the messages of these files alone.
    pub fn only(&self, files: &[&str]) -> Self {
        let texts = self.texts.iter().filter(|text| files.contains(&&*text.file));
        Self { tag: self.tag.clone(), texts: texts.cloned().collect() }
    }

    /// The message of a name in a file.
    pub fn find(&self, file: &str, name: &str) -> Option<&Text> {
        self.texts.iter().find(|text| text.file == file && text.name == name)
    }

    /// What a translation leaves out of this language, says beside it, or fills with something else.
    pub fn problems_of(&self, translation: &Self) -> Vec<Problem> {
        let mut problems = Vec::new();
        for text in &self.texts {
            let place = format!("{}/{}", translation.tag, text.file);
            match translation.find(&text.file, &text.name) {
                None if self.is_variant(&translation.tag) => {}
                None => problems.push(Problem::new(&place, &format!("{} is missing", text.name))),
                Some(other) => problems.extend(self.unlike(text, other, &place)),
            }
        }
        problems.extend(self.strangers(translation));
        problems
    }

    /// What a translation says that this language does not: a slip in a name, or a message that is gone.
    pub fn strangers(&self, translation: &Self) -> Vec<Problem> {
        translation
            .texts
            .iter()
            .filter(|text| self.find(&text.file, &text.name).is_none())
            .map(|text| {
                let place = format!("{}/{}", translation.tag, text.file);
                Problem::new(&place, &format!("{} is not asked for", text.name))
            })
            .collect()
    }

    fn unlike(&self, text: &Text, other: &Text, place: &str) -> Option<Problem> {
        let own: BTreeSet<&str> = text.arguments().into_iter().collect();
        let theirs: BTreeSet<&str> = other.arguments().into_iter().collect();
        (own != theirs).then(|| {
            Problem::new(place, &format!("{} is filled with {theirs:?}, not {own:?}", text.name))
        })
    }
}
