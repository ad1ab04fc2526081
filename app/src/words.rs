//! The language of the device: what every page, list and paper is written in.

use std::cell::Cell;

use calc::words::Words;

thread_local! {
    static CHOSEN: Cell<Words> = const { Cell::new(Words::ENGLISH) };
}

/// The words of the language that is shown.
pub fn words() -> Words {
    CHOSEN.get()
}

/// Shows another language from the next page on.
pub fn choose(words: Words) {
    CHOSEN.set(words);
}
