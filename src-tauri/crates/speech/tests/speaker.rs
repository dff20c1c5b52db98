//! Lines through the speaker with a voice that writes down what it says.

use bayhand_speech::say::queue::{Line, Weight};
use bayhand_speech::say::speaker::{Speaker, Utterance, Voice};
use bayhand_speech::say::voice::{Manner, VoiceError};
use std::sync::{Arc, Mutex, PoisonError, mpsc};
use std::time::Duration;

/// What happened to the lines, in order.
type Notes = Arc<Mutex<Vec<String>>>;

fn note(notes: &Notes, what: String) {
    notes.lock().unwrap_or_else(PoisonError::into_inner).push(what);
}

/// A voice whose lines end when they are let.
struct Written {
    notes: Notes,
    ends: Arc<Mutex<bool>>,
}

struct WrittenLine {
    words: String,
    notes: Notes,
    ends: Arc<Mutex<bool>>,
}

impl Voice for Written {
    fn begin(&mut self, words: &str, _: &Manner) -> Result<Box<dyn Utterance>, VoiceError> {
        if words == "no" {
            return Err(VoiceError::Missing("espeak-ng"));
        }
        note(&self.notes, format!("begins {words}"));
        let (words, notes, ends) = (words.to_owned(), self.notes.clone(), self.ends.clone());
        Ok(Box::new(WrittenLine { words, notes, ends }))
    }
}

impl Utterance for WrittenLine {
    fn ended(&mut self) -> Option<Result<(), VoiceError>> {
        let ends = *self.ends.lock().unwrap_or_else(PoisonError::into_inner);
        ends.then(|| {
            note(&self.notes, format!("said {}", self.words));
            Ok(())
        })
    }

    fn cut(self: Box<Self>) {
        note(&self.notes, format!("cut {}", self.words));
    }
}

fn line(words: &str, weight: Weight) -> Line {
    Line { words: words.to_owned(), weight }
}

/// A speaker, what it notes, the switch by which lines end, and its trouble.
fn speaker() -> (Speaker, Notes, Arc<Mutex<bool>>, mpsc::Receiver<String>) {
    let (notes, ends) = (Notes::default(), Arc::new(Mutex::new(false)));
    let (tell, told) = mpsc::channel();
    let voice = Written { notes: notes.clone(), ends: ends.clone() };
    let speaker = Speaker::start(voice, move |error| drop(tell.send(error.to_string())));
    (speaker, notes, ends, told)
}

/// Waits until the notes are these.
fn expect(notes: &Notes, wanted: &[&str]) {
    let now = || notes.lock().unwrap_or_else(PoisonError::into_inner).clone();
    for _ in 0..400 {
        if now() == wanted {
            return;
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    assert_eq!(now(), wanted);
}

#[test]
fn a_new_line_cuts_an_old_one_and_a_hazard_comes_to_its_end() {
    let (speaker, notes, ends, _) = speaker();
    speaker.say(line("step", Weight::Plain));
    expect(&notes, &["begins step"]);
    speaker.say(line("hot", Weight::Hazard));
    speaker.say(line("next step", Weight::Plain));
    speaker.hush();
    speaker.say(line("newest step", Weight::Plain));
    expect(&notes, &["begins step", "cut step", "begins hot"]);
    *ends.lock().unwrap_or_else(PoisonError::into_inner) = true;
    let all = ["begins step", "cut step", "begins hot", "said hot", "begins newest step", "said newest step"];
    expect(&notes, &all);
}

#[test]
fn nothing_begins_while_a_person_speaks() {
    let (speaker, notes, _, _) = speaker();
    speaker.person(true);
    speaker.say(line("step", Weight::Plain));
    std::thread::sleep(Duration::from_millis(60));
    expect(&notes, &[]);
    speaker.person(false);
    expect(&notes, &["begins step"]);
    drop(speaker);
    expect(&notes, &["begins step", "cut step"]);
}

#[test]
fn what_cannot_be_said_is_told_and_the_next_line_is_said() {
    let (speaker, notes, _, told) = speaker();
    speaker.say(line("no", Weight::Hazard));
    speaker.say(line("step", Weight::Plain));
    expect(&notes, &["begins step"]);
    let says = told.recv_timeout(Duration::from_secs(2)).unwrap_or_default();
    assert!(says.contains("espeak-ng is not here"), "{says}");
}
