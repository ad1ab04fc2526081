//! The text of a slot: a line that says what it is, then the document.
//!
//! The line is `checksum revision changed format before…`, all decimal; the checksum covers all that
//! follows it. `before` are the last revisions that this one follows from, also those that were put
//! together in it, the highest first: by them a window sees whether its own save is in what another
//! window has saved.

/// A slot as read.
#[derive(Clone, Copy, Debug)]
pub struct Slot<'t> {
    /// Whether it is as it was written.
    pub intact: bool,
    /// The write that made it; 0 where its first line cannot be read.
    pub revision: u64,
    /// When it was written. [ms since 1970]
    pub changed: u64,
    /// The version of the format that its document is in.
    pub format: u64,
    /// The revisions that it follows from, the highest first.
    pub before: &'t str,
    /// The document.
    pub document: &'t str,
}

/// The most revisions that a slot names as those before it: of two windows that save every few
/// hundredths of a second, those of a second or so.
const MOST_BEFORE: usize = 48;

impl Slot<'_> {
    /// What a slot that follows this one names as the revisions before it.
    pub fn line_of(&self) -> Vec<u64> {
        in_order(&[self.revision], &self.revisions_before())
    }

    /// The revisions that it follows from, the highest first.
    pub fn revisions_before(&self) -> Vec<u64> {
        self.before.split(' ').flat_map(str::parse).collect()
    }
}

/// The revisions in either of two lists, the highest first, as many as a slot names.
pub fn in_order(one: &[u64], other: &[u64]) -> Vec<u64> {
    let mut all: Vec<u64> = Vec::new();
    for revision in one.iter().chain(other) {
        // The highest come first in both, so most have their place at the end.
        let place = all.iter().rposition(|known| known >= revision).map_or(0, |at| at + 1);
        if place == 0 || all[place - 1] != *revision {
            all.insert(place, *revision);
        }
    }
    all.truncate(MOST_BEFORE);
    all
}

/// Puts the first line before a document.
pub fn compose(revision: u64, changed: u64, format: u64, before: &[u64], document: &str) -> String {
    let mut rest =
        [&revision.to_string(), " ", &changed.to_string(), " ", &format.to_string()].concat();
    for one in before {
        rest.push(' ');
        rest.push_str(&one.to_string());
    }
    rest.push('\n');
    rest.push_str(document);
    [&checksum(&rest).to_string(), " ", &rest].concat()
}

/// Reads a slot. A text without a first line is all document, and not intact.
pub fn read(whole: &str) -> Slot<'_> {
    with_line(whole).unwrap_or(Slot {
        intact: false,
        revision: 0,
        changed: 0,
        format: 0,
        before: "",
        document: whole,
    })
}

fn with_line(whole: &str) -> Option<Slot<'_>> {
    let (sum, rest) = whole.split_once(' ')?;
    let sum: u64 = sum.parse().ok()?;
    let (line, document) = rest.split_once('\n')?;
    let mut fields = line.splitn(4, ' ');
    let mut number = || fields.next()?.parse().ok();
    Some(Slot {
        intact: sum == checksum(rest),
        revision: number()?,
        changed: number()?,
        format: number()?,
        before: fields.next().unwrap_or_default(),
        document,
    })
}

/// FNV-1a, 64 bit: against texts that were cut or muddled, not against people.
/// Source: RFC 9923, The FNV Non-Cryptographic Hash Algorithm.
pub fn checksum(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |sum, byte| {
        (sum ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slot_reads_as_composed_and_shows_any_change() {
        let whole = compose(7, 1_732_520_000_000, 1, &[], "{\n\"a b\": 1}");
        let slot = read(&whole);
        assert!(slot.intact);
        assert_eq!((slot.revision, slot.changed, slot.format), (7, 1_732_520_000_000, 1));
        assert_eq!(slot.document, "{\n\"a b\": 1}");
        for at in 0..whole.len() {
            assert!(!read(&whole[..at]).intact, "cut at {at}");
            let mut bytes = whole.clone().into_bytes();
            bytes[at] ^= 1;
            assert!(!read(&String::from_utf8(bytes).unwrap()).intact, "changed at {at}");
        }
        assert!(!read("{\"battenbook\": 1}").intact);
    }

    #[test]
    fn a_slot_names_the_highest_revisions_before_it() {
        let mut before = Vec::new();
        for revision in 1..=60 {
            let whole = compose(revision, 0, 1, &before, "{}");
            let slot = read(&whole);
            assert!(slot.intact);
            assert_eq!((slot.revision, slot.document), (revision, "{}"));
            before = slot.line_of();
        }
        assert_eq!(before, (13..=60).rev().collect::<Vec<u64>>());
        assert_eq!(in_order(&[9, 7, 3], &[8, 7, 1]), [9, 8, 7, 3, 1]);
        assert_eq!(in_order(&[], &[4]), [4]);
    }

    /// RFC 9923, test vectors of FNV-1a 64.
    #[test]
    fn the_checksum_is_fnv_1a() {
        assert_eq!(checksum(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(checksum("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(checksum("foobar"), 0x8594_4171_f739_67e8);
    }
}
