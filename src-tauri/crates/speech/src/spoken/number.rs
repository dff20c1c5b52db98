//! A decimal text to the words in which it is said: digit by digit, so that each digit is heard.

/// The languages in which lines are said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tongue {
    /// English.
    English,
    /// German.
    German,
}

/// The digits from zero, as the recogniser hears them and English says them.
pub const DIGITS: [&str; 10] = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const ZIFFERN: [&str; 10] = ["null", "eins", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun"];

impl Tongue {
    const fn digit(self, digit: u32) -> &'static str {
        let digits = match self {
            Self::English => DIGITS,
            Self::German => ZIFFERN,
        };
        digits[digit as usize % 10]
    }

    const fn point(self) -> &'static str {
        match self {
            Self::English => "point",
            Self::German => "Komma",
        }
    }

    /// Between the two numbers of a fraction.
    const fn over(self) -> &'static str {
        match self {
            Self::English => " over ",
            Self::German => " durch ",
        }
    }

    const fn minus(self) -> &'static str {
        "minus"
    }
}

/// The words of a decimal text such as `-214.50` or `1,5`; `None` when it is none.
pub fn words(text: &str, tongue: Tongue) -> Option<String> {
    let (minus, figures) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let mut words = Vec::new();
    if minus {
        words.push(tongue.minus());
    }
    let mut points = 0;
    for character in figures.chars() {
        match character.to_digit(10) {
            Some(digit) => words.push(tongue.digit(digit)),
            None if matches!(character, '.' | ',') => {
                points += 1;
                words.push(tongue.point());
            }
            None => return None,
        }
    }
    let digits_around =
        figures.starts_with(|c: char| c.is_ascii_digit()) && figures.ends_with(|c: char| c.is_ascii_digit());
    (points <= 1 && digits_around).then(|| words.join(" "))
}

/// A line with each number in it put into words, its unit too where one of [`units`] follows it.
pub fn expand(line: &str, tongue: Tongue) -> String {
    let mut out = String::with_capacity(2 * line.len());
    let mut rest = line;
    let mut before = None;
    while let Some(character) = rest.chars().next() {
        let length = number_length(rest, before);
        if let Some(said) = rest.get(..length).filter(|_| length > 0).and_then(|figures| words(figures, tongue)) {
            out.push_str(&said);
            before = rest[..length].chars().last();
            rest = &rest[length..];
            if let Some((sign, unit)) = unit_at(rest, tongue) {
                out.push(' ');
                out.push_str(unit);
                before = rest[..sign].chars().last();
                rest = &rest[sign..];
            }
            let next_digit = |rest: &str| rest.starts_with(|c: char| c.is_ascii_digit());
            // A fraction such as 5/6; and minutes that follow their degrees without a space.
            if rest.strip_prefix('/').is_some_and(next_digit) {
                out.push_str(tongue.over());
                before = None;
                rest = &rest[1..];
            } else if next_digit(rest) {
                out.push(' ');
                before = None;
            }
        } else {
            out.push(character);
            before = Some(character);
            rest = &rest[character.len_utf8()..];
        }
    }
    out
}

/// How many bytes of a number stand at the beginning of `rest`: a sign only where no letter or digit goes before.
fn number_length(rest: &str, before: Option<char>) -> usize {
    if before.is_some_and(char::is_alphanumeric) {
        return 0;
    }
    let signed = rest.chars().next().filter(|c| matches!(c, '-' | '\u{2212}' | '+')).map_or(0, char::len_utf8);
    let digits = |from: usize| rest[from..].bytes().take_while(u8::is_ascii_digit).count();
    let whole = digits(signed);
    if whole == 0 {
        return 0;
    }
    let end = signed + whole;
    let fraction = if rest[end..].starts_with(['.', ',']) { digits(end + 1) } else { 0 };
    if fraction > 0 { end + 1 + fraction } else { end }
}

/// Signs of units with what is said for them in English and German.
const UNITS: [(&str, &str, &str); 15] = [
    ("kg", "kilograms", "Kilogramm"),
    ("lb", "pounds", "Pfund"),
    ("mm", "millimetres", "Millimeter"),
    ("in", "inches", "Zoll"),
    ("bar", "bar", "Bar"),
    ("kPa", "kilopascals", "Kilopascal"),
    ("psi", "p s i", "P S I"),
    ("min", "minutes", "Minuten"),
    ("N/mm", "newtons a millimetre", "Newton je Millimeter"),
    ("deg", "degrees", "Grad"),
    ("\u{2032}", "minutes", "Minuten"),
    ("N\u{b7}m", "newton metres", "Newtonmeter"),
    ("s", "seconds", "Sekunden"),
    ("%", "percent", "Prozent"),
    ("\u{b0}", "degrees", "Grad"),
];

/// The sign of a unit that follows a number, its length with the space before it, and what is said.
fn unit_at(rest: &str, tongue: Tongue) -> Option<(usize, &'static str)> {
    let bare = rest.trim_start_matches([' ', '\u{a0}', '\u{202f}']);
    let space = rest.len() - bare.len();
    UNITS.iter().find_map(|(sign, english, german)| {
        let after = bare.strip_prefix(sign)?;
        // `in` must not be the beginning of `inside`, nor the word itself: `2 in the book` is told by nothing but sense.
        let goes_on = sign.ends_with(char::is_alphabetic) && after.starts_with(char::is_alphanumeric);
        if goes_on || (*sign == "in" && after.starts_with(' ')) {
            return None;
        }
        let said = match tongue {
            Tongue::English => english,
            Tongue::German => german,
        };
        Some((space + sign.len(), *said))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, english: &str, german: &str) {
        assert_eq!(words(text, Tongue::English).as_deref(), Some(english), "{text}");
        assert_eq!(words(text, Tongue::German).as_deref(), Some(german), "{text}");
    }

    #[test]
    fn numbers_are_said_digit_by_digit_with_their_trailing_zeros() {
        check("214.5", "two one four point five", "zwei eins vier Komma fünf");
        check("214.50", "two one four point five zero", "zwei eins vier Komma fünf null");
        check("-1,25", "minus one point two five", "minus eins Komma zwei fünf");
        check("\u{2212}0.3", "minus zero point three", "minus null Komma drei");
        check("908", "nine zero eight", "neun null acht");
    }

    #[test]
    fn what_is_no_number_has_no_words() {
        for text in ["", "-", ".", "1.", ".5", "1.2.3", "4x", "--1"] {
            assert_eq!(words(text, Tongue::English), None, "{text:?}");
        }
    }

    fn expands(line: &str, english: &str) {
        assert_eq!(expand(line, Tongue::English), english);
    }

    #[test]
    fn lines_have_their_numbers_and_units_in_words() {
        expands("Front left, 214.5 kg.", "Front left, two one four point five kilograms.");
        expands("Turn it by -0.5 mm", "Turn it by minus zero point five millimetres");
        expands("2 steps up, 30 s", "two steps up, three zero seconds");
        expands("step A3", "step A3");
        expands("1.9 bar inside", "one point nine bar inside");
        expands("Wait 2 minutes.", "Wait two minutes.");
        expands("\u{2212}1\u{b0}30\u{2032}", "minus one degrees three zero minutes");
        expands("1 5/6 turns", "one five over six turns");
        expands("from 1 to 3.", "from one to three.");
        assert_eq!(expand("3,0 kg zu schwer", Tongue::German), "drei Komma null Kilogramm zu schwer");
    }
}
