//! Decimal text as people type it.

/// Digits that an entry can have at most: more is a slip, and a double still holds this many exactly.
pub(crate) const MOST_DIGITS: usize = 12;

/// Why text is not a decimal number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NotDecimal {
    Empty,
    NotANumber,
    TwoSeparators,
    TooManyDigits,
}

/// Reads degrees and minutes, `-1°30`, as decimal degrees. A closing sign of minutes may stand, blanks may not. Whole
/// degrees alone are degrees; with minutes the degrees are whole, and minutes are below 60.
pub(crate) fn read_degrees_and_minutes(text: &str) -> Result<f64, NotDecimal> {
    let text = text.trim();
    let Some((degrees, minutes)) = text.split_once(['°', ':']) else { return read(text) };
    let minutes = minutes.trim_end_matches(['′', '\'']);
    let minutes = if minutes.is_empty() { 0.0 } else { read(minutes)? };
    let size = read(degrees.trim_start_matches(['-', '\u{2212}', '+']))?;
    if minutes.is_sign_negative() || minutes >= 60.0 || size.fract() != 0.0 {
        return Err(NotDecimal::NotANumber);
    }
    let angle = size + minutes / 60.0;
    Ok(if degrees.starts_with(['-', '\u{2212}']) && angle != 0.0 { -angle } else { angle })
}

/// Decimal degrees as degrees and minutes, `-1°30′`, the minutes with `decimals`.
pub(crate) fn degrees_and_minutes(degrees: f64, decimals: usize) -> String {
    let scale = 10f64.powi(decimals as i32);
    // Rounded before it is split, so that no minute shows as 60.
    let minutes = (degrees.abs() * 60.0 * scale).round() / scale;
    let whole = (minutes / 60.0).floor();
    let width = if decimals == 0 { 2 } else { decimals + 3 };
    let sign = if degrees < 0.0 && minutes != 0.0 { "-" } else { "" };
    format!("{sign}{whole:.0}°{:0width$.decimals$}′", minutes - whole * 60.0)
}

/// Reads a decimal number: optional sign (`+`, `-`, or the minus sign U+2212), digits, and at most one comma or
/// point, which is always the decimal one. Blanks before and after do not count.
pub(crate) fn read(text: &str) -> Result<f64, NotDecimal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NotDecimal::Empty);
    }
    let (negative, digits) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    if !digits.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',')) {
        return Err(NotDecimal::NotANumber);
    }
    if digits.matches(['.', ',']).count() > 1 {
        return Err(NotDecimal::TwoSeparators);
    }
    // "5." is half typed; ".5" is how some write 0.5.
    if !digits.ends_with(|c: char| c.is_ascii_digit()) {
        return Err(NotDecimal::NotANumber);
    }
    if digits.bytes().filter(u8::is_ascii_digit).count() > MOST_DIGITS {
        return Err(NotDecimal::TooManyDigits);
    }
    let size: f64 = digits.replace(',', ".").parse().map_err(|_| NotDecimal::NotANumber)?;
    // `-0` is zero: a sign without a size says nothing.
    Ok(if negative && size != 0.0 { -size } else { size })
}
