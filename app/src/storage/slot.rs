//! The text of a slot: a line that says what it is, then the document.
//!
//! The line is `checksum revision changed format before…`, all decimal; the checksum covers all that
//! follows it. `before` are the last revisions that this one follows from, the last one first: by
//! them a window sees whether its own save is in what another window has saved.

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
    /// The revisions that it follows from, the last one first.
    pub before: &'t str,
    /// The document.
    pub document: &'t str,
}

/// The most revisions that a slot names as those before it.
const MOST_BEFORE: usize = 8;

impl Slot<'_> {
    /// What a slot that follows this one names as the revisions before it.
    pub fn line_of(&self) -> String {
        let mut line = self.revision.to_string();
        for before in self.before.split(' ').filter(|one| !one.is_empty()).take(MOST_BEFORE - 1) {
            line.push(' ');
            line.push_str(before);
        }
        line
    }
}

/// Puts the first line before a document.
pub fn compose(revision: u64, changed: u64, format: u64, before: &str, document: &str) -> String {
    let mut rest =
        [&revision.to_string(), " ", &changed.to_string(), " ", &format.to_string()].concat();
    if !before.is_empty() {
        rest.push(' ');
        rest.push_str(before);
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
        let whole = compose(7, 1_732_520_000_000, 1, "", "{\n\"a b\": 1}");
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
    fn a_slot_names_the_last_revisions_before_it() {
        let mut before = String::new();
        for revision in 1..=12 {
            let whole = compose(revision, 0, 1, &before, "{}");
            let slot = read(&whole);
            assert!(slot.intact);
            assert_eq!((slot.revision, slot.document), (revision, "{}"));
            before = slot.line_of();
        }
        assert_eq!(before, "12 11 10 9 8 7 6 5");
    }

    /// RFC 9923, test vectors of FNV-1a 64.
    #[test]
    fn the_checksum_is_fnv_1a() {
        assert_eq!(checksum(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(checksum("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(checksum("foobar"), 0x8594_4171_f739_67e8);
    }
}
