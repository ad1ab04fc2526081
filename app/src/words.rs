//! The language that every page, list and paper is written in. There is one in the program yet; another
//! is shown once all of its words stand in the table.

use calc::words::Words;

/// The words of the language that is shown.
pub fn words() -> Words {
    Words::ENGLISH
}
