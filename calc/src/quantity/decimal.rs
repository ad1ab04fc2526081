//! Numbers as text: decimals and significant digits.

/// The number with up to `digits` (0 to 12) after the point; trailing zeros cut, never `-0`, no
/// marks between thousands. A value that is not finite gives `?`.
pub fn plain(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return "?".to_owned();
    }
    let mut text = format!("{value:.*}", digits.min(12));
    if text.contains('.') {
        let cut = text.trim_end_matches('0').trim_end_matches('.').len();
        text.truncate(cut);
    }
    if text == "-0" { "0".to_owned() } else { text }
}

/// The number with `digits` (1 to 12) significant digits, trailing zeros after the point cut; whole
/// digits are never rounded away (`12345` to three digits stays `12345`).
pub fn significant(value: f64, digits: usize) -> String {
    let digits = digits.clamp(1, 12);
    if value == 0.0 || !value.is_finite() {
        return plain(value, 0);
    }
    let whole = libm::floor(libm::log10(value.abs())) as i64 + 1;
    let mut after = (digits as i64 - whole).clamp(0, 12) as usize;
    // 9.996 to three digits rounds to 10.0, which has a whole digit more.
    let text = format!("{:.*}", after, value.abs());
    if after > 0 && text.find('.').is_some_and(|point| point as i64 > whole.max(1)) {
        after -= 1;
    }
    plain(value, after)
}

/// Three significant digits or so, with a unit behind: `amount(12.34, 1, "V")` is `12.3 V`.
pub fn amount(value: f64, digits: usize, unit: &str) -> String {
    format!("{} {unit}", plain(value, digits))
}

/// A percentage with up to one digit after the point: `2.5 %`.
pub fn percent(value: f64) -> String {
    amount(value, 1, "%")
}

/// A price: `61.50`, in whatever currency the prices were typed in.
pub fn money(value: f64) -> String {
    if value.is_finite() { format!("{value:.2}") } else { "?".to_owned() }
}
