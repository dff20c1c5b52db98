//! Figures and codes made words: `measure` rounds them, `words` says them.

use crate::preferences::Units;
use bayhand_chassis::Verdict;
use bayhand_measure::{Quantity, Unit, decimals_for, parse, show};
use bayhand_vehicle::Place;
use bayhand_words::{Arg, Words};
use chrono::{DateTime, Datelike, FixedOffset};

/// Makes words in one language and in the units of one person.
pub struct Tell<'w> {
    /// The words.
    pub words: &'w Words,
    /// The units that are shown.
    pub units: Units,
}

impl Tell<'_> {
    /// A message with its arguments.
    pub fn text(&self, id: &str, args: &[(&str, String)]) -> String {
        let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.words.text(id, &args)
    }

    /// '25 Nov 2026'.
    pub fn day(&self, at: &DateTime<FixedOffset>) -> String {
        let month = self.text(&format!("month-{}", at.month()), &[]);
        self.text("day", &[("day", at.day().to_string()), ("month", month), ("year", at.year().to_string())])
    }

    /// '25 Nov 2026, 11:26'.
    pub fn date(&self, at: &DateTime<FixedOffset>) -> String {
        format!("{}, {}", self.day(at), at.format("%H:%M"))
    }

    /// The label of an input at a step.
    pub fn input(&self, step: &str, input: &str) -> String {
        self.words.input(step, input)
    }

    /// 'front left'.
    pub fn corner(&self, place: Place) -> String {
        self.words.text(&format!("corner-{}", place.code()), &[])
    }

    /// 'inside'.
    pub fn verdict(&self, verdict: Verdict) -> String {
        let id = match verdict {
            Verdict::Inside => "verdict-inside",
            Verdict::Outside => "verdict-outside",
            Verdict::CannotTell => "verdict-cannot-tell",
        };
        self.words.text(id, &[])
    }

    /// A value in base units with the unit of the person, with as many decimals as `decimals` of the base unit need.
    fn measure(&self, base: f64, quantity: Quantity, decimals: usize) -> String {
        let unit = self.units.of(quantity);
        let text = show(base, unit, decimals_in(unit, decimals));
        // The signs of degrees and minutes stand in the number itself.
        if unit == Unit::DegreeMinute { text } else { format!("{text} {}", unit.symbol()) }
    }

    /// '214.5 kg'.
    pub fn kg(&self, kg: f64) -> String {
        self.measure(kg, Quantity::Mass, 1)
    }

    /// '214.5'.
    pub fn kg_bare(&self, kg: f64) -> String {
        show(kg, self.units.mass, 1)
    }

    /// '+1.5 kg'.
    pub fn signed_kg(&self, kg: f64) -> String {
        signed(kg, self.kg(kg))
    }

    /// '82.5 mm'.
    pub fn mm(&self, mm: f64, decimals: usize) -> String {
        self.measure(mm, Quantity::Length, decimals)
    }

    /// '+0.5 mm'.
    pub fn signed_mm(&self, mm: f64) -> String {
        signed(mm, self.mm(mm, 1))
    }

    /// Numbers that an instrument shows in `unit`, separated by blanks, in the unit of the person; what is no number
    /// stays as it is.
    pub fn instrument(&self, text: &str, unit: Unit) -> String {
        let own = self.units.of(unit.quantity());
        if own == unit {
            return text.to_owned();
        }
        let one =
            |look: &str| parse(look, unit).map_or_else(|_| look.to_owned(), |v| show(v.base, own, decimals_for(own)));
        text.split(' ').map(one).collect::<Vec<_>>().join(" ")
    }

    /// '50.00 %'.
    pub fn percent(&self, percent: f64, decimals: usize) -> String {
        format!("{} %", show(percent, Unit::Percent, decimals))
    }

    /// '1.90 bar'.
    pub fn bar(&self, bar: f64) -> String {
        self.measure(bar, Quantity::Pressure, 2)
    }

    /// '-1.50 deg', with the degree sign.
    pub fn deg(&self, deg: f64) -> String {
        match self.units.angle {
            Unit::DegreeMinute => show(deg, Unit::DegreeMinute, 0),
            _ => format!("{}°", show(deg, Unit::Degree, 2)),
        }
    }

    /// '+0.25°'.
    pub fn signed_deg(&self, deg: f64) -> String {
        signed(deg, self.deg(deg))
    }

    /// '+1.25' turns, without the word.
    pub fn turns(&self, turns: f64) -> String {
        let text = show(turns, Unit::Turn, 3);
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text };
        signed(turns, text)
    }
}

/// A plus sign before what shows as more than zero.
fn signed(value: f64, text: String) -> String {
    let zero = text.chars().all(|c| !c.is_ascii_digit() || c == '0');
    if value > 0.0 && !zero { format!("+{text}") } else { text }
}

/// Decimals in `unit` that keep what `decimals` of its base unit show: an inch needs two more than a millimetre, a psi
/// one less than a bar, a kilopascal two less.
fn decimals_in(unit: Unit, decimals: usize) -> usize {
    match unit {
        Unit::Inch => decimals + 2,
        Unit::Psi => decimals.saturating_sub(1),
        Unit::Kilopascal => decimals.saturating_sub(2),
        Unit::DegreeMinute => 0,
        _ => decimals,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bayhand_words::Language;

    #[test]
    fn each_reads_in_their_own_units() {
        let words = Words::english();
        let base = Tell { words: &words, units: Units::default() };
        let units = Units { mass: Unit::Pound, length: Unit::Inch, pressure: Unit::Psi, angle: Unit::DegreeMinute };
        let other = Tell { words: &words, units };
        assert_eq!((base.kg(100.0), other.kg(100.0)), ("100.0 kg".into(), "220.5 lb".into()));
        assert_eq!((base.mm(25.4, 1), other.mm(25.4, 1)), ("25.4 mm".into(), "1.000 in".into()));
        assert_eq!((base.bar(2.0), other.bar(2.0)), ("2.00 bar".into(), "29.0 psi".into()));
        assert_eq!((base.deg(-1.5), other.deg(-1.5)), ("-1.50°".into(), "-1°30′".into()));
        assert_eq!(other.instrument("100.0 - 99.5", Unit::Kilogram), "220.5 - 219.4", "a switched instrument");
        assert_eq!(other.instrument("0.25", Unit::Turn), "0.25", "a turn is a turn for everybody");
    }

    #[test]
    fn a_day_is_written_in_the_language_that_is_set() {
        let at = "2026-03-02T08:05:00+01:00".parse().expect("a time");
        for (language, day) in [(Language::English, "2 Mar 2026"), (Language::German, "2. März 2026")] {
            let words = Words::of(language);
            let tell = Tell { words: &words, units: Units::default() };
            assert_eq!((tell.day(&at), tell.date(&at)), (day.to_owned(), format!("{day}, 08:05")));
            let month = |month: u32| tell.text(&format!("month-{month}"), &[]);
            assert!((1..=12).all(|number| !month(number).contains('[')), "every month has its word");
        }
    }
}
