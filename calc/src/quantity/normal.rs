//! One spelling for characters that people's keyboards write in many ways.

use super::problem::Problem;

/// The text in ASCII: primes, dashes, spaces, signs and fraction glyphs in their plain form.
pub(super) fn normalise(typed: &str) -> Result<String, Problem> {
    let mut text = String::with_capacity(typed.len() + 8);
    let mut after_glyph = false;
    for c in typed.chars() {
        if is_invisible(c) {
            return Err(Problem::ControlCharacter);
        }
        // Keeps the digits of a fraction glyph apart from digits that follow it.
        if after_glyph && (c.is_ascii_digit() || c == '.' || c == ',') {
            text.push(' ');
        }
        after_glyph = false;
        match c {
            '\'' | '\u{2032}' | '\u{2018}' | '\u{2019}' | '\u{201B}' | '\u{02B9}' | '\u{02BC}'
            | '\u{00B4}' | '`' => {
                // Two apostrophes are an inch mark.
                if text.ends_with('\'') {
                    text.pop();
                    text.push('"');
                } else {
                    text.push('\'');
                }
            }
            '"' | '\u{2033}' | '\u{201C}' | '\u{201D}' | '\u{201E}' | '\u{02BA}' => text.push('"'),
            '-' | '\u{2212}' | '\u{2010}'..='\u{2015}' | '\u{FE63}' | '\u{FF0D}' => text.push('-'),
            '/' | '\u{2044}' | '\u{2215}' | '\u{00F7}' => text.push('/'),
            '*' | '\u{00D7}' | '\u{00B7}' | '\u{22C5}' | '\u{2217}' | '\u{2715}' => text.push('*'),
            ' ' | '\u{00A0}' | '\u{2000}'..='\u{200A}' | '\u{202F}' | '\u{205F}' | '\u{3000}' => {
                text.push(' ');
            }
            '\u{00B5}' | '\u{03BC}' => text.push('u'),
            '\u{03A9}' | '\u{2126}' => text.push_str("ohm"),
            '\u{00B0}' | '\u{00BA}' => text.push_str("deg"),
            '\u{2103}' => text.push_str("degC"),
            '\u{2109}' => text.push_str("degF"),
            '\u{00B2}' => text.push_str("^2"),
            '\u{00B3}' => text.push_str("^3"),
            _ if c.is_ascii_alphanumeric() || "+().,%^".contains(c) => text.push(c),
            _ => {
                let fraction = glyph(c).ok_or(Problem::Character(c))?;
                if text.ends_with(|last: char| last.is_ascii_alphanumeric() || ".,".contains(last))
                {
                    text.push(' ');
                }
                text.push_str(fraction);
                after_glyph = true;
            }
        }
    }
    Ok(text)
}

/// Control characters and characters without width, which no one can see to correct.
fn is_invisible(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{AD}' | '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}'
            | '\u{2060}'..='\u{206F}' | '\u{FEFF}' | '\u{FE00}'..='\u{FE0F}')
}

fn glyph(c: char) -> Option<&'static str> {
    Some(match c {
        '\u{00BC}' => "1/4",
        '\u{00BD}' => "1/2",
        '\u{00BE}' => "3/4",
        '\u{2150}' => "1/7",
        '\u{2151}' => "1/9",
        '\u{2152}' => "1/10",
        '\u{2153}' => "1/3",
        '\u{2154}' => "2/3",
        '\u{2155}' => "1/5",
        '\u{2156}' => "2/5",
        '\u{2157}' => "3/5",
        '\u{2158}' => "4/5",
        '\u{2159}' => "1/6",
        '\u{215A}' => "5/6",
        '\u{215B}' => "1/8",
        '\u{215C}' => "3/8",
        '\u{215D}' => "5/8",
        '\u{215E}' => "7/8",
        _ => return None,
    })
}
