//! A language that nobody speaks: every word accented and lengthened. A page shown in it has no word untouched, or
//! somebody wrote that word into the code; and what fits in it fits in any language.

use crate::{Catalogue, Piece};

/// Its tag: a private one of BCP 47.
pub const MADE_UP: &str = "x-long";

impl Catalogue {
    /// This language with every word accented, and as much longer as a translation may get.
    pub fn made_up(&self) -> Self {
        let mut other = self.clone();
        other.tag = MADE_UP.to_owned();
        for text in &mut other.texts {
            accent(&mut text.pieces);
        }
        other
    }
}

fn accent(pieces: &mut [Piece]) {
    for piece in pieces {
        match piece {
            Piece::Words(words) => *words = words.chars().flat_map(accented).collect(),
            Piece::Argument(_) => {}
            Piece::Select(_, variants) => {
                variants.iter_mut().for_each(|(_, pieces)| accent(pieces));
            }
        }
    }
}

/// Vowels twice: some 40 % longer, as short English texts become in other languages.
fn accented(letter: char) -> impl Iterator<Item = char> {
    const PLAIN: &str = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const MARKED: &str = "áƀçđéƒğħíĵķłɱñóþɋřšŧúṽŵẋýžÁɃÇĐÉƑĞĦÍĴĶŁṀÑÓÞɊŘŠŦÚṼŴẊÝŽ";
    let place = PLAIN.chars().position(|plain| plain == letter);
    let marked = place.and_then(|place| MARKED.chars().nth(place)).unwrap_or(letter);
    let times = if "aeiouAEIOU".contains(letter) { 2 } else { 1 };
    std::iter::repeat_n(marked, times)
}
