//! The test speech that a benchmark was given: a folder with its texts and a folder of sounds for each voice.

use bayhand_speech::spoken::grammar::{Expect, Form};
use serde_json::Value;
use std::path::PathBuf;

/// The folder, what is said in it, and the voices that are wanted.
pub struct TestSpeech {
    pub folder: PathBuf,
    pub texts: Vec<Value>,
    pub voices: Vec<String>,
}

impl TestSpeech {
    /// What the command line names; `None`, and said so, where it names nothing.
    pub fn named() -> Option<TestSpeech> {
        // Cargo adds `--bench`.
        let mut words = std::env::args().skip(1).filter(|word| word != "--bench");
        let Some(folder) = words.next().map(PathBuf::from) else {
            println!("NOT RUN: name the folder of the test speech: cargo xtask bench voice FOLDER [VOICE...]");
            return None;
        };
        let named: Vec<String> = words.collect();
        let voices = if named.is_empty() { vec!["voice3".to_owned(), "voice4".to_owned()] } else { named };
        let texts = serde_json::from_str(&std::fs::read_to_string(folder.join("texts.json")).unwrap()).unwrap();
        Some(TestSpeech { folder, texts, voices })
    }

    /// All its commands at once and any reading: more than any step waits for.
    pub fn expect(&self) -> Expect {
        let commands = self.texts.iter().filter(|text| text["kind"] == "command");
        let phrases = commands.map(|text| text["text"].as_str().unwrap().to_owned()).collect();
        Expect { phrases, reading: Some(Form::default()) }
    }
}
