//! Names from elsewhere, made fit to be shown.

/// The longest name that is taken from a file. [characters]
const LONGEST: usize = 80;

/// A name without characters that show nothing, break the line or turn its direction, and of a length
/// that fits a list.
pub fn clean(name: &str) -> String {
    let shown = name.chars().filter(|character| !is_hidden(*character));
    shown.take(LONGEST).collect::<String>().trim().to_owned()
}

/// Control characters, and the format characters that Unicode calls invisible: marks of width and
/// direction, line and paragraph separators, tags.
/// Source: The Unicode Standard, general categories Cc, Cf, Zl and Zp (Cf in part).
fn is_hidden(character: char) -> bool {
    character.is_control()
        || matches!(character,
            '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}
