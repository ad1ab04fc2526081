//! Texts that are refused, each with its reason.

use crate::quantity::*;

fn message(typed: &str, asked: &'static Dimension, bare: Option<&str>) -> String {
    let bare = bare.map(|symbol| asked.unit(symbol).unwrap());
    match Measure::read(typed, asked, bare) {
        Ok(measure) => panic!("{typed} reads as {}", measure.si()),
        Err(error) => error.to_string(),
    }
}

#[track_caller]
fn lengths_refused(reason: &str, texts: &[&str]) {
    for typed in texts {
        assert_eq!(
            message(typed, &LENGTH, Some("in")),
            format!("{reason}, e.g. 90 1/2 in"),
            "{typed}"
        );
    }
}

#[test]
fn nothing_or_no_text_of_a_measure() {
    lengths_refused("nothing is entered here; a length is needed", &["", "   ", "\u{a0}"]);
    lengths_refused(
        "this is longer than 200 characters; write a length more briefly",
        &[&"1".repeat(201), &" ".repeat(201)],
    );
    lengths_refused(
        "there is an invisible character in this; type it again by hand",
        &["3 in\n", "\t3", "3\u{0}", "\u{200b}3", "3\u{202e}"],
    );
    lengths_refused("\"$\" means nothing in a length; leave it out", &["3 $", "$3"]);
    lengths_refused("\"😀\" means nothing in a length; leave it out", &["3 😀"]);
    lengths_refused("\".\" does not belong here; leave it out", &["3 mm."]);
}

#[test]
fn units() {
    let known = "use in, ft, mm, cm, m, um, mil, yd, km or mi";
    lengths_refused(&format!("\"xyz\" is not a unit for a length; {known}"), &["90 xyz", "90xyz"]);
    lengths_refused(&format!("\"e3\" is not a unit for a length; {known}"), &["1e3"]);
    lengths_refused(
        "\"x4\" is not a unit for a length; to multiply write *, as a unit use in, ft, mm, cm, m, um, mil, yd, \
         km or mi",
        &["2x4"],
    );
    lengths_refused("that is a mass; a length is needed", &["5 kg", "3 in + 5 kg", "5 lb 3 oz"]);
    lengths_refused("that is an area; a length is needed", &["5 m²", "5 sq ft", "7ft2", "5 M2"]);
    lengths_refused("that is a volume; a length is needed", &["5 m^3", "1 gal"]);
    lengths_refused("that is a speed; a length is needed", &["3 m/s"]);
    lengths_refused("that is a percentage; a length is needed", &["12 %"]);
    lengths_refused("one number has two units; keep one", &["3 in ft", "(3 ft) in", "(3 ft in)"]);
    lengths_refused(
        "some numbers have a unit and some have none; give each number its unit",
        &["3 - 2 m", "3 + 2 m + 1 ft", "2300 - 1/2 mm"],
    );
    for (typed, asked, reason) in [
        ("5 kg", &AREA, "that is a mass; an area is needed, e.g. 120 ft2"),
        (
            "10 oz",
            &VOLUME,
            "that is a mass; a volume is needed, fl oz if you mean fluid ounces, e.g. 1.5 gal",
        ),
        ("12 V", &NUMBER, "that is a voltage; a plain number is needed, e.g. 12"),
        ("25 deg", &TEMPERATURE, "that is an angle; a temperature is needed, e.g. 25 C or 77 F"),
        ("400 ft2", &SPREAD_RATE, "that is an area; a spread rate is needed, e.g. 400 ft2/gal"),
        (
            "400 ft2/l",
            &SPREAD_RATE,
            "\"ft2/l\" is not a unit for a spread rate; use ft2/gal, m2/l, ft2/qt, ft2/pt, m2/ml or m2/m3, \
             e.g. 400 ft2/gal",
        ),
        (
            "60 mw",
            &POWER,
            "this could be mW or MW; use capital and small letters as shown, e.g. 60 W",
        ),
        (
            "60 Mw",
            &POWER,
            "this could be mW or MW; use capital and small letters as shown, e.g. 60 W",
        ),
        (
            "90 1/2",
            &LENGTH,
            "the unit is missing; put one after the number: in, ft, mm, cm, m, um, mil, yd, km or mi, \
             e.g. 90 1/2 in",
        ),
        (
            "3",
            &U_VALUE,
            "the unit is missing; put one after the number: W/m2/K or Btu/(h ft2 F), e.g. 0.9 W/m2/K",
        ),
    ] {
        assert_eq!(message(typed, asked, None), reason);
    }
}

#[test]
fn numbers() {
    lengths_refused(
        "\"2,300\" could be 2300 or 2.3; write the one you mean",
        &["2,300", "2,300 mm"],
    );
    lengths_refused("\"12,345\" could be 12345 or 12.345; write the one you mean", &["12,345"]);
    for typed in ["1.2.3", "1,2,3", "12,34.5", "3,", "..", ".", ",", "1.234,567,8"] {
        let reason = format!("\"{typed}\" is not a number; use digits with one decimal point");
        lengths_refused(&reason, &[typed]);
    }
    let side_by_side = "there are two numbers side by side; write 5 ft 4 1/2 in for feet and inches, put a +, \
                        - or * between them, or close the gap";
    lengths_refused(
        side_by_side,
        &["7 6", "5 4 1/2", "1 234.5", "2(3)", "(2)(3)", "(2)3", "3.½", "90½3", "7'6\"3", "2 m 30"],
    );
    let two =
        "there are two fractions in a row; put a + or a * between them, or parentheses around one";
    lengths_refused(
        two,
        &["90 1/2 1/2", "1/2 3/4", "1/2/3", "½½", "½/2", "90 1/2 / 4", "8/1/2", "6 ft / 1/2"],
    );
    lengths_refused(
        "the fraction after a whole number must be less than one; write the whole number and the rest",
        &["90 5/4", "90 2/2", "7' 6 5/4\""],
    );
    lengths_refused(
        "that is too large; write a length that makes sense",
        &["99999999999999 m", &"9".repeat(200), "(99999999999999 m)"],
    );
}

#[test]
fn joining_and_arithmetic() {
    lengths_refused(
        "this hyphen could join or subtract; write 90 1/2 or 7 ft 6 in to join, and 90 - (1/2) or 7 ft - 6 \
         in, with a space on both sides, to subtract",
        &["90 -1/2", "90- 1/2", "90-1/2*2", "7' -6\"", "7'- 6\"", "7'-14\""],
    );
    lengths_refused(
        "measures side by side must go from whole larger units to smaller ones; otherwise put a + between them",
        &["6 in 7 ft", "2 m 3 in", "7.5 ft 6 in", "7 1/2' 6\"", "3 in 3 in"],
    );
    lengths_refused(
        "a measure times a measure is not a length; multiply by a plain number",
        &["3 ft * 2 ft", "3 m * (2 m)"],
    );
    lengths_refused(
        "this divides by a measure; divide by a plain number",
        &["6 / (2 ft)", "6 ft / 2.0 ft"],
    );
    lengths_refused(
        "this divides by zero; divide by another number",
        &["1/0", "90 1/0", "6 ft / 0", "6/(2-2)", "6/0.0"],
    );
    lengths_refused(
        "a parenthesis has no partner; close it or leave it out",
        &["(3", "3)", "((3)"],
    );
    lengths_refused(
        "a number is missing; write it or leave out the rest",
        &["3 +", "()", "(3 -)", "-", "3 * "],
    );
    for (typed, at) in
        [("abc", "abc"), ("* 3", "* 3"), ("3--2", "-2"), ("3 + -2", "-2"), ("in", "in")]
    {
        lengths_refused(&format!("a number is missing at \"{at}\"; write it there"), &[typed]);
    }
    let deep = format!("{}1 in{}", "(".repeat(17), ")".repeat(17));
    lengths_refused(
        "there are too many parentheses inside each other; use fewer",
        &[&deep, &"(".repeat(200)],
    );
}

#[test]
fn temperatures() {
    let no_sums =
        "temperatures cannot be added or multiplied; write one temperature, e.g. 25 C or 77 F";
    for typed in ["25 C + 3 C", "2*25 C", "(20 + 5) C", "25 C / 2", "77 F - 25 C"] {
        assert_eq!(message(typed, &TEMPERATURE, None), no_sums);
    }
    let too_cold = "that is colder than absolute zero (-273.15 C, -459.67 F); write a temperature above \
                    it, e.g. 25 C or 77 F";
    for typed in ["-300 C", "-1 K", "-460 F"] {
        assert_eq!(message(typed, &TEMPERATURE, None), too_cold);
    }
}

/// A metric field does not turn its bare numbers into inches because one inch was written.
#[test]
fn a_bare_number_never_changes_the_unit_of_its_field() {
    assert!(Measure::read("2300 - 1/2 in", &LENGTH, LENGTH.unit("mm")).is_err());
    assert!(Measure::read("2300 - 1/2 in", &LENGTH, LENGTH.unit("in")).is_ok());
    assert!(Measure::read("90 - 1/2 in", &LENGTH, None).is_ok());
}
