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
