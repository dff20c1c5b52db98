//! The table of the voices: how much is heard right, clean and in noise, with counts and Wilson's intervals. `cargo xtask bench voice FOLDER [VOICE...]`, FOLDER holding `texts.json` and a folder for each voice.
//!
//! Every sound is held to all phrases of the texts and any reading at once, the hardest that a step waits for.
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot be set up should stop")]

#[path = "../tests/common/noise.rs"]
mod noise;
#[path = "common/test_speech.rs"]
mod test_speech;

use bayhand_speech::hear::Recogniser;
use bayhand_speech::heard::What;
use bayhand_speech::spoken::grammar::Grammar;
use bayhand_speech::{model::place, sound};
use noise::Noise;
use serde_json::Value;
use std::path::Path;
use test_speech::TestSpeech;

/// Decibels of speech above noise.
const DECIBELS: [f32; 3] = [20.0, 10.0, 5.0];

/// How many of a kind were right, wrongly taken, and there.
#[derive(Clone, Copy, Default)]
struct Count {
    right: u32,
    wrong: u32,
    all: u32,
}

fn main() {
    let Some(speech) = TestSpeech::named() else { return };
    let TestSpeech { folder, texts, voices } = &speech;
    let recogniser = Recogniser::read(&place::usual().unwrap()).expect("cargo xtask voice makes the model");
    let grammar = Grammar::new(speech.expect()).unwrap();
    println!("voice   noise       dB  commands right      readings right      wrong taken         other talk taken");
    for voice in voices {
        let clean = row(&recogniser, &grammar, texts, &folder.join(voice), None);
        print(voice, "none", None, clean);
        for decibels in DECIBELS {
            let mut sum = [Count::default(); 3];
            for kind in Noise::ALL {
                let counts = row(&recogniser, &grammar, texts, &folder.join(voice), Some((kind, decibels)));
                print(voice, &format!("{kind:?}"), Some(decibels), counts);
                for (sum, count) in sum.iter_mut().zip(counts) {
                    *sum = Count {
                        right: sum.right + count.right,
                        wrong: sum.wrong + count.wrong,
                        all: sum.all + count.all,
                    };
                }
            }
            print(voice, "all three", Some(decibels), sum);
        }
    }
}

/// Commands, readings, other talk.
fn row(
    recogniser: &Recogniser,
    grammar: &Grammar,
    texts: &[Value],
    folder: &Path,
    noise: Option<(Noise, f32)>,
) -> [Count; 3] {
    let mut counts = [Count::default(); 3];
    for (number, text) in texts.iter().enumerate() {
        let path = folder.join(format!("{}.flac", text["id"].as_str().unwrap()));
        if !path.is_file() {
            continue;
        }
        let clean = sound::read(&path).unwrap();
        let sound = noise.map_or(clean.clone(), |(kind, decibels)| noise::mix(&clean, kind, decibels, number as u64));
        let heard = recogniser.hear(&sound, grammar);
        let (kind, right) = match (text["kind"].as_str().unwrap(), &heard.what) {
            ("command", What::Phrase(phrase)) => (0, text["text"] == phrase.as_str()),
            ("reading", What::Reading { corner, looks, .. }) => {
                let corner = corner.map(|corner| corner.words()).unwrap_or_default();
                (1, text["corner"] == corner && looks.len() == 1 && text["value"] == looks[0].as_str())
            }
            ("command", _) => (0, false),
            ("reading", _) => (1, false),
            _ => (2, false),
        };
        counts[kind].all += 1;
        counts[kind].right += u32::from(right);
        let wrong = !right && !matches!(heard.what, What::Rejected(_));
        counts[kind].wrong += u32::from(wrong);
        if wrong {
            println!("        {} {noise:?}: {:?} with {:.2}", text["text"], heard.what, heard.score);
        }
    }
    counts
}

fn print(voice: &str, noise: &str, decibels: Option<f32>, [commands, readings, other]: [Count; 3]) {
    let decibels = decibels.map_or("-".to_owned(), |decibels| decibels.to_string());
    let wrong = commands.wrong + readings.wrong;
    let cells = [
        share(commands.right, commands.all),
        share(readings.right, readings.all),
        share(wrong, commands.all + readings.all),
        share(other.wrong, other.all),
    ];
    println!("{voice:7} {noise:11} {decibels:>2}  {}", cells.map(|cell| format!("{cell:19}")).join(" "));
}

/// A share with Wilson's interval of 95 %, in percent.
fn share(some: u32, all: u32) -> String {
    let (n, p, z) = (f64::from(all), f64::from(some) / f64::from(all.max(1)), 1.96_f64);
    let centre = (p + z * z / (2.0 * n)) / (1.0 + z * z / n);
    let half = z / (1.0 + z * z / n) * (p * (1.0 - p) / n + z * z / (4.0 * n * n)).sqrt();
    format!("{some}/{all} ({:.0} to {:.0} %)", 100.0 * (centre - half).max(0.0), 100.0 * (centre + half).min(1.0))
}
