//! Style sheets, joined and freed of comments and spare blanks.

/// The sheet without comments, line breaks and blanks beside braces, semicolons and commas. Text in quotes or round
/// brackets keeps its blanks: `calc(1px + 2px)` needs them.
pub fn minify(sheet: &str) -> String {
    let mut out = String::with_capacity(sheet.len());
    let mut rest = sheet.chars().peekable();
    let mut depth = 0_usize;
    let mut blank = false;
    while let Some(c) = rest.next() {
        if c == '/' && rest.peek() == Some(&'*') {
            skip_comment(&mut rest);
            blank = true;
            continue;
        }
        if c.is_whitespace() {
            blank = true;
            continue;
        }
        let tight = |c: char| matches!(c, '{' | '}' | ';') || (c == ',' && depth == 0);
        if std::mem::take(&mut blank) && !tight(c) && !out.ends_with(tight) && !out.is_empty() {
            out.push(' ');
        }
        if c == '}' && out.ends_with(';') {
            out.pop();
        }
        out.push(c);
        match c {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            '"' | '\'' => copy_quoted(c, &mut rest, &mut out),
            _ => {}
        }
    }
    out
}

fn skip_comment(rest: &mut std::iter::Peekable<std::str::Chars>) {
    rest.next();
    let mut last = ' ';
    for c in rest {
        if last == '*' && c == '/' {
            return;
        }
        last = c;
    }
}

fn copy_quoted(quote: char, rest: &mut std::iter::Peekable<std::str::Chars>, out: &mut String) {
    while let Some(c) = rest.next() {
        out.push(c);
        if c == '\\' {
            out.extend(rest.next());
        } else if c == quote {
            return;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::minify;

    #[test]
    fn drops_what_a_browser_does_not_need() {
        let sheet = "/* a */\n.a ,\n.b > i:hover {\n  margin: 0 auto;\n  width: calc(1px + 2px);\n}\n\n.c :hover { top: 0 }";
        assert_eq!(
            minify(sheet),
            ".a,.b > i:hover{margin: 0 auto;width: calc(1px + 2px)}.c :hover{top: 0}"
        );
    }

    #[test]
    fn keeps_text_and_brackets_as_they_are() {
        let sheet = ".a::after { content: \"a ; { /* b */  \\\" c\"; transition: a 1s, b 2s }";
        assert_eq!(
            minify(sheet),
            ".a::after{content: \"a ; { /* b */  \\\" c\";transition: a 1s,b 2s}"
        );
        assert_eq!(
            minify("@media (a) and (b) { i { x: min(1px, 2px) } }"),
            "@media (a) and (b){i{x: min(1px, 2px)}}"
        );
    }
}
