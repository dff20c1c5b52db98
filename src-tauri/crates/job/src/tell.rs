//! Figures and codes made words: `measure` rounds them, `words` says them.

use bayhand_chassis::Verdict;
use bayhand_measure::{Unit, show};
use bayhand_vehicle::Place;
use bayhand_words::{Arg, Words};

/// Makes words. Units of the person come in here; for now everybody reads kg, mm, bar and degrees.
pub struct Tell<'w> {
    /// The words.
    pub words: &'w Words,
}

impl Tell<'_> {
    /// A message with its arguments.
    pub fn text(&self, id: &str, args: &[(&str, String)]) -> String {
        let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
        self.words.text(id, &args)
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

    /// '214.5 kg'.
    pub fn kg(&self, kg: f64) -> String {
        format!("{} kg", self.kg_bare(kg))
    }

    /// '214.5'.
    pub fn kg_bare(&self, kg: f64) -> String {
        show(kg, Unit::Kilogram, 1)
    }

    /// '+1.5 kg'.
    pub fn signed_kg(&self, kg: f64) -> String {
        signed(kg, self.kg(kg))
    }

    /// '82.5 mm'.
    pub fn mm(&self, mm: f64, decimals: usize) -> String {
        format!("{} mm", show(mm, Unit::Millimetre, decimals))
    }

    /// '+0.5 mm'.
    pub fn signed_mm(&self, mm: f64) -> String {
        signed(mm, self.mm(mm, 1))
    }

    /// '50.00 %'.
    pub fn percent(&self, percent: f64, decimals: usize) -> String {
        format!("{} %", show(percent, Unit::Percent, decimals))
    }

    /// '1.90 bar'.
    pub fn bar(&self, bar: f64) -> String {
        format!("{} bar", show(bar, Unit::Bar, 2))
    }

    /// '-1.50 deg', with the degree sign.
    pub fn deg(&self, deg: f64) -> String {
        format!("{}°", show(deg, Unit::Degree, 2))
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
