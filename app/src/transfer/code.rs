//! QR codes as drawings: always dark on light, with their quiet zone, whatever the light of the page.
//!
//! Source: ISO/IEC 18004, QR Code bar code symbology specification.

use qrcodegen::{QrCode, QrCodeEcc};

/// The light rim that a reader needs on every side. Source: ISO/IEC 18004. [modules]
const QUIET: i32 = 4;

/// Draws a code that carries a text; nothing where the text is too long for any.
pub fn drawn(text: &str, label: &str) -> String {
    let Ok(code) = QrCode::encode_text(text, QrCodeEcc::Low) else { return String::new() };
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let begin = x;
            while x < size && code.get_module(x, y) {
                x += 1;
            }
            if x > begin {
                for (letter, number) in [("M", begin + QUIET), (" ", y + QUIET), ("h", x - begin)] {
                    path.push_str(letter);
                    path.push_str(&number.to_string());
                }
                path.push_str("v1H");
                path.push_str(&(begin + QUIET).to_string());
                path.push('z');
            }
            x += 1;
        }
    }
    let side = (size + 2 * QUIET).to_string();
    [
        "<svg class=\"code\" role=\"img\" aria-label=\"",
        label,
        "\" viewBox=\"0 0 ",
        &side,
        " ",
        &side,
        "\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h",
        &side,
        "v",
        &side,
        "H0z\"/><path fill=\"#000\" d=\"",
        &path,
        "\"/></svg>",
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO/IEC 18004: version 1 has 21 modules a side, and each further version 4 more; a finder
    /// pattern begins with 7 dark modules in its corner.
    #[test]
    fn a_code_has_its_size_its_rim_and_its_finders() {
        let svg = drawn("HELLO", "one");
        assert!(svg.contains("viewBox=\"0 0 29 29\""), "{svg}");
        assert!(svg.contains("M4 4h7v1H4z") && svg.contains("M18 4h7v1H18z"), "{svg}");
        assert!(svg.contains("M4 24h7v1H4z"), "{svg}");
        assert_eq!(drawn(&"x".repeat(3000), "too long"), "");
    }

    /// ISO/IEC 18004, table 7: 858 bytes fill version 20 at the lowest level, 97 modules a side.
    #[test]
    fn the_longest_link_of_a_code_fills_version_20() {
        let longest = "x".repeat(super::super::link::LONGEST_CODE);
        assert!(drawn(&longest, "").contains("viewBox=\"0 0 105 105\""));
        assert!(drawn(&format!("{longest}x"), "").contains("viewBox=\"0 0 109 109\""));
    }
}
