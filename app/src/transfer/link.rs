//! A project as a link: its text, packed, in the part of the address that no browser sends to a host.
//!
//! `#/get/DATA` carries a whole project. `#/get/NUMBER.COUNT.SET.DATA` carries one of several parts;
//! `SET` is drawn from the whole of the data, so that parts of different projects never mix.

use std::fmt;

use calc::words::app_keep as words;

use crate::storage::checksum;
use crate::words::text;

/// The longest link that one QR code carries: 97 modules a side at the lowest correction, which a
/// phone's camera reads from another phone's screen without coming close. [characters]
/// Source: ISO/IEC 18004, capacity of version 20-L in byte mode: 858.
pub const LONGEST_CODE: usize = 858;

/// The most codes of a sequence: more is no way to pass a project on.
pub const MOST_CODES: usize = 40;

/// The longest data of a link that is made and read: what all browsers take in an address. [characters]
pub const MAX_LINK_CHARS: usize = 1_000_000;

/// What an address below `#/get/` carries.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Carried {
    /// A whole project, packed and written in letters.
    Whole(String),
    /// A part of one.
    Part {
        /// Its number, from 1.
        number: usize,
        /// How many parts there are.
        count: usize,
        /// The sequence that it belongs to.
        set: String,
        /// The part.
        data: String,
    },
}

/// The link to a whole project; `page` is the address of the app.
pub fn whole_link(page: &str, data: &str) -> String {
    [page, "#/get/", data].concat()
}

/// The links of a sequence of codes: one where the whole project fits comfortably. None where there
/// would be too many.
pub fn code_links(page: &str, data: &str) -> Option<Vec<String>> {
    let whole = whole_link(page, data);
    if whole.len() <= LONGEST_CODE {
        return Some(vec![whole]);
    }
    let set = set_id(data);
    // With both numbers of two digits.
    let frame = page.len() + "#/get/".len() + "40.40.".len() + set.len() + ".".len();
    let room = LONGEST_CODE.checked_sub(frame).filter(|room| *room > 0)?;
    let count = data.len().div_ceil(room);
    if count > MOST_CODES {
        return None;
    }
    // All of a size, so that none is harder to read than the others.
    let size = data.len().div_ceil(count);
    let parts = (0..count).map(|index| {
        let end = ((index + 1) * size).min(data.len());
        let part = data.get(index * size..end).unwrap_or_default();
        let (number, count) = ((index + 1).to_string(), count.to_string());
        [page, "#/get/", &number, ".", &count, ".", &set, ".", part].concat()
    });
    Some(parts.collect())
}

/// Reads what follows `#/get/`.
///
/// # Errors
/// `BadLink` where it cannot be what it was.
pub fn read_link(text: &str) -> Result<Carried, BadLink> {
    if text.len() > MAX_LINK_CHARS {
        return Err(BadLink::TooLong);
    }
    let mut fields = text.split('.');
    let first = fields.next().unwrap_or_default();
    let (Some(count), Some(set), Some(data), None) =
        (fields.next(), fields.next(), fields.next(), fields.next())
    else {
        let whole = !text.is_empty() && text.bytes().all(|byte| value(byte).is_some());
        return if whole { Ok(Carried::Whole(text.to_owned())) } else { Err(BadLink::Damaged) };
    };
    let (number, count): (usize, usize) = match (first.parse(), count.parse()) {
        (Ok(number), Ok(count)) => (number, count),
        _ => return Err(BadLink::Damaged),
    };
    let fits = (2..=MOST_CODES).contains(&count)
        && (1..=count).contains(&number)
        && (1..=20).contains(&set.len())
        && set.bytes().all(|byte| byte.is_ascii_digit())
        && (1..=LONGEST_CODE).contains(&data.len())
        && data.bytes().all(|byte| value(byte).is_some());
    if !fits {
        return Err(BadLink::Damaged);
    }
    Ok(Carried::Part { number, count, set: set.to_owned(), data: data.to_owned() })
}

/// Joins the parts of a sequence.
///
/// # Errors
/// `BadLink::NotTogether` where they are not what the sequence was made of.
pub fn join(set: &str, parts: &[(usize, String)]) -> Result<String, BadLink> {
    let data: String = parts.iter().map(|(_, part)| part.as_str()).collect();
    if set_id(&data) == set { Ok(data) } else { Err(BadLink::NotTogether) }
}

/// Why a link cannot be taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BadLink {
    /// Longer than `MAX_LINK_CHARS`, or larger than a project when unpacked.
    TooLong,
    /// Cut short or changed on the way.
    Damaged,
    /// The parts of the sequence do not belong together.
    NotTogether,
    /// This browser cannot unpack.
    CannotUnpack,
}

impl fmt::Display for BadLink {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(text(match self {
            Self::TooLong => words::LINK_LONG,
            Self::Damaged => words::LINK_DAMAGED,
            Self::NotTogether => words::LINK_APART,
            Self::CannotUnpack => words::LINK_CANNOT,
        }))
    }
}

/// The letters of data in a link. Source: RFC 4648, section 5 (base64url), without padding.
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Writes bytes in letters that an address takes as they are.
pub fn to_letters(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 4 / 3 + 3);
    for three in bytes.chunks(3) {
        let at = |index: usize| u32::from(three.get(index).copied().unwrap_or(0));
        let bits = at(0) << 16 | at(1) << 8 | at(2);
        for letter in 0..=three.len() {
            text.push(char::from(LETTERS[(bits >> (18 - 6 * letter) & 63) as usize]));
        }
    }
    text
}

/// Reads what `to_letters` wrote; none where it did not.
pub fn from_letters(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    for four in text.as_bytes().chunks(4) {
        let mut bits = 0;
        for index in 0..4 {
            bits = bits << 6 | four.get(index).map_or(Some(0), |byte| value(*byte))?;
        }
        let here = [(bits >> 16) as u8, (bits >> 8) as u8, bits as u8];
        bytes.extend_from_slice(here.get(..four.len().checked_sub(1)?)?);
        if four.len() == 1 {
            return None;
        }
    }
    Some(bytes)
}

fn value(byte: u8) -> Option<u32> {
    let place = LETTERS.iter().position(|letter| *letter == byte)?;
    u32::try_from(place).ok()
}

/// Ten digits drawn from the data.
fn set_id(data: &str) -> String {
    (checksum(data) % 10_000_000_000).to_string()
}

/// The same JSON without the line breaks and blanks between its values.
pub fn compact(json: &str) -> String {
    let mut text = String::with_capacity(json.len());
    let (mut quoted, mut escaped) = (false, false);
    for letter in json.chars() {
        if quoted || !letter.is_ascii_whitespace() {
            text.push(letter);
        }
        match letter {
            _ if escaped => escaped = false,
            '\\' => escaped = quoted,
            '"' => quoted = !quoted,
            _ => {}
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "https://example.org/rig/";

    /// RFC 4648, section 10, in the letters of section 5 and without padding.
    #[test]
    fn letters_are_base64url() {
        let cases = [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("foobar", "Zm9vYmFy"),
        ];
        for (bytes, text) in cases {
            assert_eq!(to_letters(bytes.as_bytes()), text);
            assert_eq!(from_letters(text).as_deref(), Some(bytes.as_bytes()));
        }
        assert_eq!(to_letters(&[0xfb, 0xff, 0xfe]), "-__-");
        for wrong in ["A", "AAAAA", "A+", "A=", "ä", "AA AA"] {
            assert_eq!(from_letters(wrong), None, "{wrong}");
        }
        let all: Vec<u8> = (0..=255).collect();
        for length in 0..all.len() {
            assert_eq!(from_letters(&to_letters(&all[..length])).as_deref(), Some(&all[..length]));
        }
    }

    #[test]
    fn blanks_go_where_they_mean_nothing() {
        let json = "{\n  \"a b\": [ 1,\n 2 ],\t\"c\\\" d\\\\\" : \"\\n e \" }";
        assert_eq!(compact(json), r#"{"a b":[1,2],"c\" d\\":"\n e "}"#);
    }

    #[test]
    fn a_small_project_is_one_code_and_a_larger_one_a_sequence_that_joins_again() {
        let small = "x".repeat(LONGEST_CODE - PAGE.len() - 6);
        assert_eq!(code_links(PAGE, &small).unwrap(), [whole_link(PAGE, &small)]);
        for length in [small.len() + 1, 2000, 5000, 20_000] {
            let data: String = (0..length).map(|n| char::from(LETTERS[n * n / 7 % 64])).collect();
            let links = code_links(PAGE, &data).unwrap();
            assert!(links.len() > 1 && links.iter().all(|link| link.len() <= LONGEST_CODE));
            let mut parts = Vec::new();
            let mut of = String::new();
            for (index, link) in links.iter().enumerate() {
                let text = link.strip_prefix(PAGE).unwrap().strip_prefix("#/get/").unwrap();
                let Ok(Carried::Part { number, count, set, data }) = read_link(text) else {
                    unreachable!("a part: {text}")
                };
                assert_eq!((number, count), (index + 1, links.len()));
                parts.push((number, data));
                of = set;
            }
            assert_eq!(join(&of, &parts), Ok(data));
            parts.swap(0, 1);
            assert_eq!(join(&of, &parts), Err(BadLink::NotTogether));
        }
        assert_eq!(code_links(PAGE, &"x".repeat(MOST_CODES * LONGEST_CODE)), None);
        assert_eq!(code_links(&"p".repeat(LONGEST_CODE), "xx"), None);
    }

    #[test]
    fn what_is_no_link_is_refused() {
        let part = |text: &str| read_link(text).unwrap_err();
        for wrong in [
            "",
            "a b",
            "1.2",
            "1.2.3",
            "0.2.3.A",
            "3.2.3.A",
            "1.1.3.A",
            "1.41.3.A",
            "1.2.x.A",
            "1.2..A",
            "1.2.3.",
            "1.2.3.<",
            "1.2.3.A.A",
            "-1.2.3.A",
            "1.99999999999999999999.3.A",
            "ä",
            "1.2.123456789012345678901.A",
        ] {
            assert_eq!(part(wrong), BadLink::Damaged, "{wrong}");
        }
        assert_eq!(part(&"A".repeat(MAX_LINK_CHARS + 1)), BadLink::TooLong);
        assert_eq!(part(&format!("1.2.3.{}", "A".repeat(LONGEST_CODE + 1))), BadLink::Damaged);
    }
}
