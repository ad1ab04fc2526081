//! Marks read aloud, in every language.
#![allow(clippy::unwrap_used, missing_docs)]

use std::path::PathBuf;

use calc::quantity::{Length, Rounding, Style};
use calc::words::Words;
use uom::si::length::{inch, millimeter};
use words::{Catalogue, FIRST};

fn language(tag: &str) -> Words {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../shared/words");
    let english = Catalogue::read(FIRST, &folder.join(FIRST)).unwrap();
    if tag == FIRST {
        return Words::ENGLISH;
    }
    let other = english.read_beside(tag, &folder.join(tag)).unwrap();
    Words::load(english.table(&other)).unwrap()
}

fn read(tag: &str, rounding: Rounding, value: f64) -> Option<String> {
    let style = Style { words: language(tag), ..Style::rounded(rounding) };
    let metric = matches!(rounding, Rounding::Millimetre | Rounding::HalfMillimetre);
    style.aloud(if metric { Length::new::<millimeter>(value) } else { Length::new::<inch>(value) })
}

fn reads(tag: &str, rounding: Rounding, cases: &[(f64, &str)]) {
    for (value, words) in cases {
        assert_eq!(read(tag, rounding, *value).as_deref(), Some(*words), "{tag} {value}");
    }
}

#[test]
fn inches_are_read_as_they_stand_on_the_tape() {
    let cases = [
        (41.3125, "forty-one and five sixteenths"),
        (0.5, "a half"),
        (90.5, "ninety and a half"),
        (8.375, "eight and three eighths"),
        (3.0, "three"),
        (0.0, "zero"),
        (0.0625, "a sixteenth"),
        (12.125, "twelve and an eighth"),
        (100.25, "one hundred and a quarter"),
        (143.75, "one hundred forty-three and three quarters"),
    ];
    reads("en", Rounding::Sixteenth, &cases);
    reads("en", Rounding::ThirtySecond, &[(20.96875, "twenty and thirty-one thirty-seconds")]);
    // To the nearest line of the tape, as the figure is written.
    reads("en", Rounding::Eighth, &[(41.3125, "forty-one and three eighths")]);
    reads(
        "en-GB",
        Rounding::Sixteenth,
        &[(143.75, "one hundred and forty-three and three quarters")],
    );
}

#[test]
fn millimetres_are_read_as_whole_numbers() {
    let cases = [
        (137.0, "one hundred thirty-seven"),
        (546.0, "five hundred forty-six"),
        (2299.4, "two thousand two hundred ninety-nine"),
        (1000.0, "one thousand"),
        (20_999.0, "twenty thousand nine hundred ninety-nine"),
    ];
    reads("en", Rounding::Millimetre, &cases);
    reads("en", Rounding::HalfMillimetre, &[(12.5, "twelve and a half")]);
}

#[test]
fn it_is_read_in_spanish() {
    let cases = [
        (41.3125, "cuarenta y uno y cinco dieciseisavos"),
        (41.5, "cuarenta y uno y medio"),
        (29.25, "veintinueve y un cuarto"),
        (100.0, "cien"),
        (101.125, "ciento uno y un octavo"),
        (130.0, "ciento treinta"),
    ];
    reads("es", Rounding::Sixteenth, &cases);
    let cases = [
        (21.0 / 32.0, "veintiún treintaidosavos"),
        (2.0 + 31.0 / 32.0, "dos y treinta y un treintaidosavos"),
    ];
    reads("es", Rounding::ThirtySecond, &cases);
    let cases = [
        (546.0, "quinientos cuarenta y seis"),
        (1016.0, "mil dieciséis"),
        (2299.0, "dos mil doscientos noventa y nueve"),
        (20_000.0, "veinte mil"),
    ];
    reads("es", Rounding::Millimetre, &cases);
}

/// Numbers have words as far as they are said to, and no two have the same.
#[test]
fn every_figure_has_words_of_its_own() {
    for tag in ["en", "en-GB", "es"] {
        let style = Style { words: language(tag), ..Style::rounded(Rounding::Millimetre) };
        let mut all = std::collections::BTreeSet::new();
        for value in 0..21_000 {
            let words = style.aloud(Length::new::<millimeter>(f64::from(value))).unwrap();
            assert!(!words.contains("  ") && words.trim() == words, "{tag} {value}: {words:?}");
            assert!(!words.chars().any(|letter| letter.is_ascii_digit()), "{tag} {value}: {words}");
            assert!(all.insert(words.clone()), "{tag} {value}: {words} twice");
        }
    }
}

#[test]
fn what_no_tape_shows_has_no_words() {
    for value in [-1.0, 21_000.0, 1e12, f64::NAN, f64::INFINITY] {
        assert_eq!(read("en", Rounding::Millimetre, value), None, "{value}");
    }
}
