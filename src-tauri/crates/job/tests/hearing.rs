//! Spoken answers at the car: each step waits for its own words; a reading waits for its confirmation; nothing that is
//! heard acknowledges, waives, seals or opens again; the record says what was heard and how sure that was.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::{Attention, Entry, Wish};
use bayhand_job::hearing::{Awaited, CONFIRM, Heard, What};
use bayhand_job::preferences::{Preferences, Units};
use bayhand_job::view::{HeardAct, HeardView};
use bayhand_measure::Unit;
use bayhand_vehicle::Place;
use common::{Bay, who};
use std::collections::BTreeMap;

/// A person at the window who speaks: the draft that the window holds, and whether it is read back.
struct Voice {
    bay: Bay,
    entries: BTreeMap<String, Entry>,
    reading_back: bool,
}

impl Voice {
    async fn at(step: &str) -> Voice {
        Voice { bay: Bay::practice_at(1, step).await, entries: BTreeMap::new(), reading_back: false }
    }

    fn attention(&self) -> Attention {
        let step = self.bay.step().id.clone();
        Attention { by: who(&step).into(), step, entries: self.entries.clone(), reading_back: self.reading_back }
    }

    async fn awaited(&self) -> Awaited {
        self.bay.desk.awaited(&self.attention()).await.unwrap()
    }

    /// Says a phrase or, as `FL 214.5 214.6`, a reading; the window does as it is told.
    async fn says(&mut self, said: &str) -> HeardView {
        let number = said.split(' ').next_back().is_some_and(|word| word.parse::<f64>().is_ok());
        let what = if number { reading(said, None) } else { What::Phrase(said.into()) };
        self.hears(what, said).await
    }

    async fn hears(&mut self, what: What, words: &str) -> HeardView {
        let heard = Heard { words: words.into(), what, score: 0.934, above_noise_db: Some(25.0) };
        let view = self.bay.desk.heard(&self.attention(), &heard).await;
        match &view.act {
            HeardAct::Fill { key, text, unit } => {
                self.entries.insert(key.clone(), Entry { text: text.clone(), unit: unit.clone() });
            }
            HeardAct::Confirm if !self.reading_back && self.entries.values().any(|e| e.unit.is_some()) => {
                self.reading_back = true;
            }
            HeardAct::Confirm => {
                self.reading_back = false;
                let entries = std::mem::take(&mut self.entries);
                self.bay.record(entries).await.unwrap();
            }
            HeardAct::Change => self.reading_back = false,
            _ => {}
        }
        view
    }
}

fn reading(said: &str, unit: Option<&str>) -> What {
    let corner = Place::ALL.into_iter().find(|place| said.starts_with(place.code()));
    let looks = said.split(' ').filter(|word| word.parse::<f64>().is_ok()).map(str::to_owned).collect();
    What::Reading { corner, looks, unit: unit.map(str::to_owned) }
}

#[tokio::test]
async fn a_reading_is_waited_for_at_its_corner_in_the_form_of_its_field() {
    let voice = Voice::at("baseline.read-1").await;
    let form = voice.awaited().await.reading.unwrap();
    assert_eq!((form.corner, form.others), (Some(Place::Fl), true), "front left first; another may be named");
    assert_eq!((form.digits, form.decimals, form.minus, form.looks), (4, 1, false, 3), "10 to 1500 kg, three looks");
    let voice = Voice::at("align.read").await;
    let form = voice.awaited().await.reading.unwrap();
    assert_eq!((form.digits, form.decimals, form.minus, form.looks), (2, 2, true, 1), "-10 to 6 degrees");
    let voice = Voice::at("used.kit").await;
    assert_eq!(voice.awaited().await.reading, None, "no number is asked for");
}

#[tokio::test]
async fn a_reading_counts_only_once_it_is_confirmed_and_a_correction_is_one_phrase() {
    let mut voice = Voice::at("baseline.read-1").await;
    let heard = voice.says("FL 214.5 214.6").await;
    assert_eq!(heard.says, "Load, front left: 214.5, 214.6 kg.", "read back with corner and unit");
    assert_eq!(heard.act, HeardAct::Nothing, "and not entered");
    let corrected = voice.says("241.5 241.6").await;
    assert_eq!(corrected.pending.unwrap().text, "241.5  241.6 kg");
    let taken = voice.says(CONFIRM).await;
    let fill = HeardAct::Fill { key: "loads.FL".into(), text: "241.5 241.6".into(), unit: Some("kg".into()) };
    assert_eq!((taken.act, taken.says.as_str()), (fill, "Load, front right?"), "then the next is asked for");
    voice.says("RL 300.1").await;
    let back = voice.says("cancel").await;
    assert_eq!((back.act, back.pending), (HeardAct::Nothing, None), "taken back");
    assert_eq!(voice.entries.len(), 1, "only what was confirmed is entered");
}

#[tokio::test]
async fn a_key_confirms_as_well() {
    let mut voice = Voice::at("baseline.read-1").await;
    let before = voice.bay.desk.confirm_heard(&voice.attention(), true).await;
    assert_eq!(before.act, HeardAct::Nothing, "nothing waits: {}", before.says);
    voice.says("FL 214.5").await;
    let taken = voice.bay.desk.confirm_heard(&voice.attention(), true).await;
    assert!(matches!(taken.act, HeardAct::Fill { .. }), "{taken:?}");
}

#[tokio::test]
async fn what_cannot_be_is_refused_and_does_not_wait() {
    let mut voice = Voice::at("baseline.read-1").await;
    let heard = voice.says("FL 4.5").await;
    assert!(heard.pending.is_none() && heard.says.contains("1500"), "out of its range: {heard:?}");
    let heard = voice.hears(reading("FL 214.5", Some("degrees")), "front left ... degrees").await;
    assert!(heard.pending.is_none() && heard.says.contains("unit"), "{heard:?}");
    let heard = voice.hears(reading("FL 473.0", Some("pounds")), "front left ... pounds").await;
    assert_eq!(heard.pending.unwrap().text, "473.0 lb", "another unit of the same kind is taken");
}

#[tokio::test]
async fn while_a_hazard_is_open_nothing_but_repeat_and_hold_is_heard() {
    let mut voice = Voice::at("raise.check").await;
    let awaited = voice.awaited().await;
    assert_eq!(awaited, Awaited { phrases: vec!["repeat".into(), "hold the job".into()], reading: None });
    let before = voice.bay.recorded().await;
    for said in [CONFIRM, "next", "back", "all in order", "fault found", "cancel", "FL 214.5"] {
        let heard = voice.says(said).await;
        assert_eq!(heard.act, HeardAct::Nothing, "{said}");
    }
    assert_eq!(voice.bay.recorded().await, before, "no voice acknowledges a hazard");
}

#[tokio::test]
async fn only_confirm_stores() {
    for step in ["baseline.read-1", "used.kit", "loop.judge", "links.front-release", "used.fuel", "rough.heights"] {
        let mut voice = Voice::at(step).await;
        voice.bay.acknowledge(who(step)).await;
        // Asked again with every answer there, read back or not, and with a reading that waits.
        for filled in [false, true] {
            voice.entries = if filled { voice.bay.entries() } else { BTreeMap::new() };
            for reading_back in [false, filled] {
                voice.reading_back = reading_back;
                for phrase in voice.awaited().await.phrases.into_iter().filter(|phrase| phrase != CONFIRM) {
                    let heard =
                        Heard { words: phrase.clone(), what: What::Phrase(phrase), score: 1.0, above_noise_db: None };
                    let view = voice.bay.desk.heard(&voice.attention(), &heard).await;
                    assert_ne!(view.act, HeardAct::Confirm, "{step}: {heard:?}");
                }
            }
        }
    }
}

#[tokio::test]
async fn checks_and_choices_are_answered_in_words() {
    let mut voice = Voice::at("used.kit").await;
    let view = voice.says("all in order").await;
    assert_eq!(view.act, HeardAct::Fill { key: "kit-out".into(), text: "yes".into(), unit: None });
    assert!(view.says.contains("confirm"), "all is answered: {}", view.says);
    let step = voice.bay.step().id.clone();
    voice.says(CONFIRM).await;
    assert_ne!(voice.bay.step().id, step, "a step without numbers is recorded");
    let mut voice = Voice::at("loop.judge").await;
    let phrases = voice.awaited().await.phrases;
    assert!(
        phrases.contains(&"turn for the cross weight".to_owned()),
        "options are said as they are read: {phrases:?}"
    );
    let view = voice.says("turn for the cross weight").await;
    assert_eq!(view.act, HeardAct::Fill { key: "next".into(), text: "turn-cross".into(), unit: None });
    assert_eq!(
        voice.says("write none").await.act,
        HeardAct::Fill { key: "reason".into(), text: "none".into(), unit: None }
    );
}

/// The place on the trade line is said as its cross weight.
#[tokio::test]
async fn the_place_on_the_trade_line_is_said() {
    let mut voice = Voice::at("loop.judge").await;
    let view = voice.says("turn for a place on the line").await;
    assert_eq!(view.act, HeardAct::Fill { key: "next".into(), text: "turn-place".into(), unit: None });
    assert!(voice.awaited().await.reading.is_some(), "now the place is waited for");
    voice.says("50.20").await;
    let view = voice.says(CONFIRM).await;
    let HeardAct::Fill { key, text, .. } = view.act else { panic!("{view:?}") };
    assert_eq!((key.as_str(), text.as_str()), ("place", "50.20"));
    // The reason is asked for now; the place said again takes the place of the first once it is confirmed.
    let view = voice.says("50.10").await;
    assert_eq!(view.pending.map(|pending| pending.text).as_deref(), Some("50.10 %"), "it is read back");
    assert_eq!(voice.entries["place"].text, "50.20", "and waits");
    voice.says(CONFIRM).await;
    assert_eq!(voice.entries["place"].text, "50.10");
    voice.says("write none").await;
    voice.says("50.30").await;
    voice.says(CONFIRM).await;
    assert_eq!(voice.entries["place"].text, "50.30", "also when all is answered");
}

/// Once they are all there, a reading of a list is said again with its corner; until then a bare number is the next one.
#[tokio::test]
async fn a_bare_number_changes_no_reading_of_a_list() {
    let mut voice = Voice::at("baseline.read-1").await;
    voice.entries = voice.bay.entries();
    voice.entries.retain(|key, _| key.starts_with("loads."));
    let loads = voice.entries.clone();
    let heights = |voice: &Voice| {
        let all = voice.entries.iter().filter(|(key, _)| key.starts_with("heights."));
        all.map(|(_, entry)| entry.text.clone()).collect::<Vec<_>>()
    };
    for said in ["FL 121.0", "122.0", "123.0", "124.0"] {
        voice.says(said).await;
        voice.says(CONFIRM).await;
    }
    assert_eq!(heights(&voice), ["121.0", "122.0", "123.0", "124.0"], "each in its turn");
    let form = voice.awaited().await.reading.unwrap();
    assert_eq!((form.corner, form.others), (None, true), "a corner must be named");
    assert_eq!(voice.says("125.0").await.pending, None, "without one it is nothing");
    assert_eq!(voice.says("RL 125.0").await.pending.unwrap().key, "heights.RL");
    voice.says(CONFIRM).await;
    assert_eq!(heights(&voice), ["121.0", "122.0", "125.0", "124.0"]);
    voice.entries.retain(|key, _| key.starts_with("loads."));
    assert_eq!(voice.entries, loads, "the list before it is as it was");
}

/// Where a check, a text or a choice is asked for, the one number just before it may be said again, and no reading of a list.
#[tokio::test]
async fn only_the_one_number_just_before_may_be_said_again() {
    let mut voice = Voice::at("rough.heights").await;
    voice.entries = voice.bay.entries();
    voice.entries.remove("next");
    assert_eq!(voice.awaited().await.reading, None, "four heights stand before the choice");
    let mut voice = Voice::at("used.ballast").await;
    voice.bay.acknowledge(who("used.ballast")).await;
    voice.entries = voice.bay.entries();
    voice.entries.remove("ballast-strapped");
    assert!(voice.awaited().await.reading.is_some(), "the ballast in the footwell, before it is strapped");
    voice.says("12.0").await;
    let before = voice.entries["ballast"].clone();
    voice.says(CONFIRM).await;
    assert_eq!((voice.entries["footwell"].text.as_str(), &voice.entries["ballast"]), ("12.0", &before));
}

#[tokio::test]
async fn the_record_says_what_was_heard_and_how_sure_that_was() {
    let mut voice = Voice::at("baseline.read-1").await;
    let shown = voice.bay.entries();
    for field in voice.bay.step().fields.clone() {
        let (key, entry) = (&field.key, &shown[&field.key]);
        let corner = key.split_once('.').unwrap().1;
        voice.says(&format!("{corner} {}", entry.text)).await;
        if *key != "loads.RR" {
            voice.says(CONFIRM).await;
        } else {
            voice.says("cancel").await;
            voice.entries.insert(key.clone(), entry.clone());
        }
    }
    // One that was confirmed is typed over.
    voice.entries.insert("loads.FL".into(), Entry { text: "221.0".into(), unit: Some("kg".into()) });
    assert_eq!(voice.says(CONFIRM).await.act, HeardAct::Confirm, "all is entered: it is read back");
    assert!(voice.reading_back);
    voice.says(CONFIRM).await;
    let body = voice.bay.newest().await;
    let heard = &body["what"]["happened"]["seen"]["heard"];
    assert_eq!(heard["loads.FR"]["score"], "0.93");
    assert!(heard["loads.FR"]["words"].as_str().unwrap().starts_with("FR "), "{heard}");
    assert!(heard["loads.FL"].is_null() && heard["loads.RR"].is_null(), "what was typed was not heard: {heard}");
    let review = voice.bay.desk.review_view(None).await.unwrap();
    let row = review.job.unwrap().entries.pop().unwrap();
    assert!(row.note.contains("By voice: ") && row.note.contains("0.93"), "{}", row.note);
}

#[tokio::test]
async fn keys_are_advised_where_it_is_loud_and_where_german_is_spoken() {
    let voice = Voice::at("baseline.read-1").await;
    let heard = |db| Heard {
        words: String::new(),
        what: What::Rejected("other-talk".into()),
        score: 0.1,
        above_noise_db: Some(db),
    };
    let loud = voice.bay.desk.heard(&voice.attention(), &heard(5.0)).await.loud.unwrap();
    assert!(loud.contains('5') && loud.contains("keys"), "{loud}");
    assert_eq!(voice.bay.desk.heard(&voice.attention(), &heard(20.0)).await.loud, None);
    voice.bay.desk.set(Preferences { language: "de".into(), ..Preferences::default() }).unwrap();
    assert_eq!(voice.bay.desk.awaited(&voice.attention()).await, None, "the model knows English only");
    for said in [heard(20.0), Heard::nothing()] {
        let says = voice.bay.desk.heard(&voice.attention(), &said).await.says;
        assert!(says.contains("Englisch"), "{says}");
    }
}

#[tokio::test]
async fn numbers_are_said_in_the_units_of_whoever_acts() {
    let mut voice = Voice::at("baseline.read-1").await;
    let units = Units { mass: Unit::Pound, ..Units::default() };
    voice
        .bay
        .desk
        .set(Preferences { people: BTreeMap::from([("RO".into(), units)]), ..Preferences::default() })
        .unwrap();
    let heard = voice.says("FL 473.5").await;
    assert_eq!(heard.says, "Load, front left: 473.5 lb.");
}

#[tokio::test]
async fn what_waits_is_forgotten_with_its_step_and_nobody_is_not_heard() {
    let mut voice = Voice::at("baseline.read-1").await;
    voice.says("FL 214.5").await;
    let entries = voice.bay.entries();
    voice.bay.record(entries).await.unwrap();
    let waits = voice.bay.desk.confirm_heard(&voice.attention(), true).await;
    assert_eq!(waits.act, HeardAct::Nothing, "another step is at hand");
    let nobody = Attention { by: String::new(), ..voice.attention() };
    assert_eq!(voice.bay.desk.awaited(&nobody).await, None);
    voice.bay.ask("RO", Wish::Hold { reason: "lunch".into() }).await.unwrap();
    let held = Attention { step: "settle.wait".into(), by: "RO".into(), entries: BTreeMap::new(), reading_back: false };
    assert_eq!(voice.bay.desk.awaited(&held).await, None, "no voice goes on with a job on hold");
}
