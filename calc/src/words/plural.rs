//! Which form of a word goes with a number, and how a number is written.

/// The plural category of a whole number in a language, by its name in CLDR.
///
/// Source: Unicode CLDR, Language Plural Rules, cardinal: en, `one` where i = 1 and v = 0; es, `one` where n = 1.
/// The `many` of Spanish (whole millions) is told by the text for `other`, which reads the same for what is counted
/// here.
pub fn category(_tag: &str, count: u64) -> &'static str {
    // Both languages that there are agree on whole numbers; one that does not gets its rule here.
    if count == 1 { "one" } else { "other" }
}

/// Whether a language writes a comma before the decimals.
///
/// Source: Unicode CLDR, numbers, symbols of `latn`: en, decimal `.`; es, decimal `,` (Mexico and Central America write a
/// point; both are read).
pub fn decimal_comma(tag: &str) -> bool {
    tag == "es"
}
