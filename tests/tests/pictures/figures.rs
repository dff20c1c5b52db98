//! Figures as the text says them, and whether the text says these and no others.

/// Units that a figure of the text may stand before.
const UNITS: [&str; 5] = ["N/mm", "kg", "mm", "m", "%"];

/// Figures that the program found, each with its unit as the text has it.
#[derive(Default)]
pub struct Figures(Vec<(&'static str, String)>);

impl Figures {
    /// Takes a figure, rounded to so many digits after the point.
    pub fn say(&mut self, what: &'static str, value: f64, digits: usize, unit: &str) {
        self.0.push((what, format!("{value:.digits$} {unit}")));
    }

    /// All of them, a line each.
    pub fn list(&self) -> String {
        self.0.iter().map(|(what, figure)| format!("{figure:>10}  {what}\n")).collect()
    }

    /// The figures that the text lacks, and those in the text that the program did not find.
    pub fn differ(&self, text: &str) -> (Vec<String>, Vec<String>) {
        let said = said(text);
        let found: Vec<&String> = self.0.iter().map(|(_, figure)| figure).collect();
        let lacks = found.iter().filter(|figure| !said.contains(figure)).map(|figure| (*figure).clone()).collect();
        (lacks, said.into_iter().filter(|figure| !found.contains(&figure)).collect())
    }
}

/// Each number of a text that a unit follows.
fn said(text: &str) -> Vec<String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let mut figures = Vec::new();
    for pair in words.windows(2) {
        let number = pair[0].trim_start_matches(['(', '*', '|']);
        let unit = pair[1].trim_end_matches(|c: char| ".,;:)*|".contains(c));
        if number.parse::<f64>().is_ok() && UNITS.contains(&unit) {
            figures.push(format!("{number} {unit}"));
        }
    }
    figures
}

#[test]
fn what_a_text_says_too_much_or_too_little_is_named() {
    let mut figures = Figures::default();
    figures.say("a load", 1.24, 1, "kg");
    figures.say("a share", -0.004, 3, "%");
    let (lacks, unknown) = figures.differ("FL gains *1.2 kg*, the whole\nside (-0.004 %).");
    assert_eq!((lacks, unknown), (Vec::new(), Vec::new()));
    let (lacks, unknown) = figures.differ("FL gains 1.3 kg; five turns, 2026, -0.004 %");
    assert_eq!((lacks, unknown), (vec!["1.2 kg".to_owned()], vec!["1.3 kg".to_owned()]));
}
