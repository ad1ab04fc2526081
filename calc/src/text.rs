//! Texts put together in few bytes.

use std::fmt::Display;

/// Puts parts into the blanks `{}` of a template, as `format!` does.
///
/// Where `format!` has the caller lay out its arguments and drop them afterwards, this hands each
/// of them over: with hundreds of texts in the sheets that is a good part of the app's code. For
/// a part that is still needed, give a reference. Up to four parts: more is a message of its own.
macro_rules! text {
    (@fill $template:literal, $a:expr) => {
        $crate::text::fill_1($template, $crate::text::Part::text($a))
    };
    (@fill $template:literal, $a:expr, $b:expr) => {
        $crate::text::fill_2(
            $template,
            $crate::text::Part::text($a),
            $crate::text::Part::text($b),
        )
    };
    (@fill $template:literal, $a:expr, $b:expr, $c:expr) => {
        $crate::text::fill_3(
            $template,
            $crate::text::Part::text($a),
            $crate::text::Part::text($b),
            $crate::text::Part::text($c),
        )
    };
    (@fill $template:literal, $a:expr, $b:expr, $c:expr, $d:expr) => {
        $crate::text::fill_4(
            $template,
            $crate::text::Part::text($a),
            $crate::text::Part::text($b),
            $crate::text::Part::text($c),
            $crate::text::Part::text($d),
        )
    };
    (@count $($part:expr),+) => {
        [$(stringify!($part)),+].len()
    };
    ($template:literal, $($part:expr),+ $(,)?) => {{
        const {
            assert!(
                $crate::text::blanks($template) == text!(@count $($part),+),
                "a part for each blank"
            );
        }
        text!(@fill $template, $($part),+)
    }};
}
pub(crate) use text;

/// What fills a blank.
pub trait Part {
    /// As text.
    fn text(self) -> String;
}

impl Part for String {
    #[inline(always)]
    fn text(self) -> String {
        self
    }
}

impl<T: Display + ?Sized> Part for &T {
    #[inline(never)]
    fn text(self) -> String {
        self.to_string()
    }
}

macro_rules! parts {
    ($($number:ty)+) => {$(
        impl Part for $number {
            #[inline(never)]
            fn text(self) -> String {
                self.to_string()
            }
        }
    )+};
}

parts! { usize u32 f64 }

/// How many blanks there are in a template.
pub const fn blanks(template: &str) -> usize {
    let bytes = template.as_bytes();
    let (mut at, mut blanks) = (0, 0);
    while at < bytes.len() {
        if bytes[at] == b'{' {
            assert!(
                at + 1 < bytes.len() && bytes[at + 1] == b'}',
                "a blank is written with nothing in it"
            );
            blanks += 1;
        }
        at += 1;
    }
    blanks
}

/// A letter in lower case, as far as the words and units that are looked for need it. All of
/// Unicode's tables would cost more bytes than a small sheet.
pub const fn lower(letter: char) -> char {
    match letter {
        // The Greek letter and the sign of its own for the unit.
        'Ω' | '\u{2126}' => 'ω',
        // The sign of its own for kelvin.
        '\u{212a}' => 'k',
        _ => letter.to_ascii_lowercase(),
    }
}

#[doc(hidden)]
#[inline(never)]
pub fn fill_1(template: &'static str, a: String) -> String {
    fill(template, &[&a])
}

#[doc(hidden)]
#[inline(never)]
pub fn fill_2(template: &'static str, a: String, b: String) -> String {
    fill(template, &[&a, &b])
}

#[doc(hidden)]
#[inline(never)]
pub fn fill_3(template: &'static str, a: String, b: String, c: String) -> String {
    fill(template, &[&a, &b, &c])
}

#[doc(hidden)]
#[inline(never)]
pub fn fill_4(template: &'static str, a: String, b: String, c: String, d: String) -> String {
    fill(template, &[&a, &b, &c, &d])
}

#[inline(never)]
fn fill(template: &str, parts: &[&str]) -> String {
    let mut pieces = template.split('{');
    let length = template.len() + parts.iter().map(|part| part.len()).sum::<usize>();
    let mut text = String::with_capacity(length);
    text.push_str(pieces.next().unwrap_or_default());
    for (part, piece) in parts.iter().zip(pieces) {
        text.push_str(part);
        text.push_str(piece.get(1..).unwrap_or_default());
    }
    text
}

#[cfg(test)]
mod tests {
    use super::lower;

    #[test]
    #[expect(clippy::disallowed_methods, reason = "Unicode's tables are what it is held against")]
    fn what_turns_into_a_known_letter_does_as_in_unicode() {
        let known = |letter: &char| letter.is_ascii() || *letter == 'ω';
        for letter in '\0'..=char::MAX {
            let mut unicode = letter.to_lowercase();
            if let (Some(small), None) = (unicode.next(), unicode.next())
                && known(&small)
            {
                assert_eq!(lower(letter), small, "{letter}");
            } else {
                assert_eq!(lower(letter), letter);
            }
        }
    }

    #[test]
    fn fills_blanks_as_format_does() {
        let (name, count) = ("run".to_owned(), 3_usize);
        assert_eq!(text!("{}", &name), "run");
        assert_eq!(text!("⌈{}⌉ · {}", &name, count + 1), format!("⌈{name}⌉ · {}", count + 1));
        assert_eq!(text!("{}{} {}", "a", 0.5, name.clone()), "a0.5 run");
        assert_eq!(text!("({} − {}) / {} = {}", 1_u32, 2_u32, 3_u32, name), "(1 − 2) / 3 = run");
    }
}
