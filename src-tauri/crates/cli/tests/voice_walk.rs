//! A whole job by voice: each line of it is said by the system's voice, each answer is spoken, laid under noise at 10 dB,
//! heard and carried out as the window would. Hazards and the seal are by hand. And at any noise nothing is stored that was
//! not confirmed.
//!
//! Needs the voice model and a voice, so it runs where it is asked for by `--ignored`, as `cargo xtask test` does when the
//! model is there. The usual form speaks from the last reading of the baseline to the first turns; the long one speaks the whole job.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

#[path = "../../../src/meaning.rs"]
mod meaning;
#[path = "../../speech/tests/common/noise.rs"]
mod noise;

use bayhand_cli::practice::VirtualClock;
use bayhand_cli::setter;
use bayhand_job::Desk;
use bayhand_job::ask::{Ask, Attention, Entry, PracticeAsk, Wish};
use bayhand_job::hearing::{CONFIRM, sayable};
use bayhand_job::view::{Field, FieldKind, HeardAct, HeardPending, HeardView, Screen, StepBody, StepView};
use bayhand_speech::hear::Recogniser;
use bayhand_speech::model::place;
use bayhand_speech::say::voice::{self, Manner};
use bayhand_speech::sound;
use bayhand_speech::spoken::grammar::Grammar;
use bayhand_speech::spoken::number::{Tongue, expand, words};
use noise::Noise;
use std::collections::{BTreeMap, HashMap};
use std::path::PathBuf;
use std::sync::{Arc, LazyLock};
use std::time::Instant;
use tempfile::TempDir;

static RECOGNISER: LazyLock<Recogniser> =
    LazyLock::new(|| Recogniser::read(&place::usual().unwrap()).expect("cargo xtask voice makes the model"));

/// The distance of the noise below speech, dB.
const NOISE_DB: f32 = 10.0;
/// Something that is not understood so often is answered by key.
const MOST_TRIES: u32 = 4;

/// Where the long form says all looks of a reading in one breath, as the usual form does. Elsewhere it says the first: three in
/// noise are often understood only in part, and its time is better spent on the rest of the job.
const ALL_LOOKS: &str = "baseline.read-3";

/// How it went.
#[derive(Debug, Default)]
struct Went {
    lines: u32,
    spoken: u32,
    first: u32,
    again: u32,
    /// Answers for which there are no words, such as a name.
    typed: u32,
    /// Answers that were given up and typed.
    given_up: u32,
    /// Numbers that were heard wrong, seen at the read-back and not confirmed.
    caught: u32,
}

/// Somebody at the car who speaks, and the window that does as it is told.
struct Car {
    desk: Desk,
    clock: Arc<VirtualClock>,
    view: StepView,
    entries: BTreeMap<String, Entry>,
    reading_back: bool,
    folder: TempDir,
    said: HashMap<String, Vec<f32>>,
    utterance: u64,
    went: Went,
}

impl Car {
    async fn begin(seed: u64) -> Car {
        let folder = tempfile::tempdir().unwrap();
        let clock = Arc::new(VirtualClock::at("2026-03-02T08:15:00+01:00".parse().unwrap()));
        let desk = Desk::open(&folder.path().join("jobs.db"), clock.clone()).await.unwrap();
        let view = desk.step_view().await;
        let mut car = Car {
            desk,
            clock,
            view,
            entries: BTreeMap::new(),
            reading_back: false,
            folder,
            said: HashMap::new(),
            utterance: 0,
            went: Went::default(),
        };
        let begin = Wish::Begin { car: format!("Practice coupe {seed}"), practice: Some(PracticeAsk::sound(seed)) };
        car.ask("", begin).await;
        for (initials, name, rank) in [
            ("RO", "Robin Oakes", "trainee"),
            ("LB", "Lee Barrow", "technician"),
            ("MT", "Morgan Thwaite", "supervisor"),
        ] {
            let (initials, name, rank) = (initials.into(), name.into(), rank.into());
            car.ask("", Wish::SignOn { initials, name, rank }).await;
        }
        car
    }

    async fn ask(&mut self, by: &str, wish: Wish) {
        let ask = Ask { revision: self.view.revision, by: by.into(), wish };
        self.view = self.desk.act(ask.clone()).await.unwrap_or_else(|why| panic!("{ask:?}: {why:?}"));
        self.clock.pass(15);
    }

    fn step(&self) -> Option<StepBody> {
        match &self.view.screen {
            Screen::Step(body) => Some((**body).clone()),
            _ => None,
        }
    }

    fn attention(&self, step: &str) -> Attention {
        Attention {
            by: setter::who(step).into(),
            step: step.into(),
            entries: self.entries.clone(),
            reading_back: self.reading_back,
        }
    }

    /// The sound of words, in the system's voice.
    fn sound(&mut self, words: &str) -> Vec<f32> {
        if let Some(sound) = self.said.get(words) {
            return sound.clone();
        }
        let out = self.folder.path().join("said.wav");
        voice::to_file(words, &Manner { words_a_minute: 140, ..Manner::usual(Tongue::English) }, &out).unwrap();
        let sound = sound::read(&out).unwrap();
        self.said.insert(words.to_owned(), sound.clone());
        sound
    }

    /// A line as the system's voice says it; it may last longer than anything that is listened to.
    fn render(&mut self, line: &str) {
        let words = expand(line, Tongue::English);
        assert!(!words.contains(|c: char| c.is_ascii_digit()), "every number is in words: {words}");
        let out = self.folder.path().join("line.wav");
        voice::to_file(&words, &Manner::usual(Tongue::English), &out).unwrap();
        let bytes = std::fs::metadata(&out).unwrap().len();
        assert!(bytes > 16_000, "{words:?} is longer than a third of a second");
        self.went.lines += 1;
    }

    /// Each line that the job has to say becomes a sound.
    fn listen(&mut self, by: &str) {
        for line in self.desk.to_say(by, &self.view).lines {
            self.render(&line.words);
        }
    }

    /// Says words in the noise of the bay; the window does what comes of it.
    async fn say(&mut self, step: &str, words: &str) -> HeardView {
        let clean = self.sound(words);
        let kind = Noise::ALL[self.utterance as usize % 3];
        let sound = noise::mix(&clean, kind, NOISE_DB, self.utterance);
        self.utterance += 1;
        let attention = self.attention(step);
        let awaited = self.desk.awaited(&attention).await.unwrap();
        let grammar = Grammar::new(meaning::expect(awaited)).unwrap();
        let above_noise_db = sound::loudness(&sound).map(|loudness| loudness.above_noise_db());
        let heard = meaning::said(RECOGNISER.hear(&sound, &grammar), above_noise_db);
        let view = self.desk.heard(&attention, &heard).await;
        match &view.act {
            HeardAct::Fill { key, text, unit } => {
                self.entries.insert(key.clone(), Entry { text: text.clone(), unit: unit.clone() });
            }
            HeardAct::Change => self.reading_back = false,
            HeardAct::Undo | HeardAct::Focus { .. } | HeardAct::Hold | HeardAct::Again | HeardAct::Nothing => {}
            HeardAct::Confirm => {}
        }
        view
    }

    /// Does the step at hand by voice; a gate that does not pass leaves it at hand.
    async fn speak_step(&mut self, body: &StepBody) {
        let by = setter::who(&body.id);
        self.listen(by);
        for hazard in body.hazards.iter().filter(|hazard| hazard.acknowledged.is_none()) {
            self.ask(by, Wish::Acknowledge { step: body.id.clone(), hazard: hazard.id.clone() }).await;
        }
        self.listen(by);
        if let Some(timer) = &body.timer {
            self.clock.pass(timer.seconds);
        }
        (self.entries, self.reading_back) = (BTreeMap::new(), false);
        let mut wanted = setter::entries(body);
        if long() && body.id != ALL_LOOKS {
            wanted.values_mut().for_each(first_look);
        }
        for field in body.fields.iter().filter(|field| wanted.contains_key(&field.key)) {
            self.speak_field(body, field, &wanted[&field.key]).await;
        }
        for (key, entry) in &wanted {
            assert!(
                same(&self.entries[key], entry),
                "{}: what stands in the draft is what was meant: {entry:?}",
                body.id
            );
        }
        let numbers = body
            .fields
            .iter()
            .any(|field| matches!(field.kind, FieldKind::Number { .. }) && wanted.contains_key(&field.key));
        if numbers {
            self.confirm(&body.id).await;
            let read = self.desk.read_back(by, &body.id, self.entries.clone()).await.unwrap();
            let line = self.desk.to_say_back(by, &read).unwrap();
            self.render(&line.words);
            self.reading_back = true;
        }
        self.confirm(&body.id).await;
        self.ask(by, Wish::Record { step: body.id.clone(), entries: self.entries.clone() }).await;
        self.reading_back = false;
    }

    /// Says `confirm` until it is understood, or presses the key.
    async fn confirm(&mut self, step: &str) {
        for tried in 0..MOST_TRIES {
            self.count(tried);
            if self.say(step, CONFIRM).await.act == HeardAct::Confirm {
                return;
            }
        }
        self.went.given_up += 1;
    }

    fn count(&mut self, tried: u32) {
        self.went.spoken += 1;
        if tried == 0 {
            self.went.first += 1;
        } else {
            self.went.again += 1;
        }
    }

    async fn speak_field(&mut self, body: &StepBody, field: &Field, wanted: &Entry) {
        let phrases = self.desk.awaited(&self.attention(&body.id)).await.unwrap().phrases;
        let said = match &field.kind {
            FieldKind::Check { .. } => {
                Some(if wanted.text == "yes" { "all in order" } else { "fault found" }.to_owned())
            }
            FieldKind::Text => (wanted.text == "none").then(|| "write none".to_owned()),
            FieldKind::Choice { options } => {
                let label =
                    options.iter().find(|option| option.code == wanted.text).map(|option| option.label.as_str());
                label.and_then(sayable).filter(|said| phrases.contains(said))
            }
            FieldKind::Number { .. } => self.number_said(body, field, wanted).await,
        };
        let Some(said) = said else {
            self.went.typed += 1;
            self.entries.insert(field.key.clone(), wanted.clone());
            return;
        };
        let number = matches!(field.kind, FieldKind::Number { .. });
        for tried in 0..MOST_TRIES {
            self.count(tried);
            let view = self.say(&body.id, &said).await;
            let Some(pending) = view.pending else {
                if self.entries.get(&field.key).is_some_and(|entry| entry.text == wanted.text) {
                    return;
                }
                // An answer that was heard wrong is on the screen and is answered again by hand.
                if !number && self.entries.contains_key(&field.key) {
                    break;
                }
                continue;
            };
            // The person compares what is read back with the instrument, each time, and says it again where it differs:
            // `confirm` in noise may be heard as another number.
            let right = |pending: &HeardPending| pending.key == field.key && same_looks(&pending.text, &wanted.text);
            let mut waits = Some(pending);
            for tried in 0..MOST_TRIES {
                if let Some(wrong) = waits.filter(|pending| !right(pending)) {
                    println!("{}: {said:?} was heard as {}: {}", body.id, wrong.key, wrong.text);
                    self.went.caught += 1;
                    break;
                }
                self.count(tried);
                waits = self.say(&body.id, CONFIRM).await.pending;
                if let Some(entry) = self.entries.get(&field.key) {
                    assert!(same(entry, wanted), "{}: {entry:?} is entered as it was confirmed: {wanted:?}", body.id);
                    return;
                }
            }
        }
        self.went.given_up += 1;
        self.desk.confirm_heard(&self.attention(&body.id), false).await;
        self.entries.insert(field.key.clone(), wanted.clone());
    }

    /// A number with its corner in words; none where the field's form has no such number.
    async fn number_said(&self, body: &StepBody, field: &Field, wanted: &Entry) -> Option<String> {
        let looks: Option<Vec<_>> =
            wanted.text.split_whitespace().map(|look| words(look.trim_start_matches('+'), Tongue::English)).collect();
        let corner = match field.key.split_once('.').map(|(_, corner)| corner) {
            Some("FL") => "front left ",
            Some("FR") => "front right ",
            Some("RL") => "rear left ",
            Some("RR") => "rear right ",
            _ => "",
        };
        let said = format!("{corner}{}", looks?.join(" then "));
        let awaited = self.desk.awaited(&self.attention(&body.id)).await.unwrap();
        Grammar::new(meaning::expect(awaited)).unwrap().allows(&said).then_some(said)
    }

    /// Does the step at hand by key.
    async fn type_step(&mut self, body: &StepBody) {
        let by = setter::who(&body.id);
        for hazard in body.hazards.iter().filter(|hazard| hazard.acknowledged.is_none()) {
            self.ask(by, Wish::Acknowledge { step: body.id.clone(), hazard: hazard.id.clone() }).await;
        }
        if let Some(timer) = &body.timer {
            self.clock.pass(timer.seconds);
        }
        self.ask(by, Wish::Record { step: body.id.clone(), entries: setter::entries(body) }).await;
    }

    async fn let_pass(&mut self, step: &str) {
        let held = self.step().filter(|now| now.id == step && now.gate.is_some());
        let Some(held) = held else { return };
        let may_change =
            ["rough.heights", "rough.angles", "align.read", "back.front-read", "back.rear-read"].contains(&step);
        if !may_change || !setter::lets_pass(&held) {
            return self.waive(&held).await;
        }
    }

    async fn waive(&mut self, held: &StepBody) {
        if setter::lets_pass(held) {
            self.ask("MT", Wish::Waive { step: held.id.clone(), reason: setter::WAIVER.into() }).await;
        }
    }
}

/// The same entry; a plus sign is not said.
fn same(entry: &Entry, wanted: &Entry) -> bool {
    entry.text == wanted.text.trim_start_matches('+') && entry.unit == wanted.unit || entry == wanted
}

/// `221.4  221.5 kg` are the looks `221.4 221.5`.
fn same_looks(shown: &str, wanted: &str) -> bool {
    let looks = |text: &str| text.split_whitespace().filter_map(|word| word.parse::<f64>().ok()).collect::<Vec<_>>();
    looks(shown) == looks(wanted)
}

/// Leaves the first look of a reading.
fn first_look(entry: &mut Entry) {
    let looks: Vec<&str> = entry.text.split_whitespace().collect();
    if looks.len() > 1 && looks.iter().all(|look| look.parse::<f64>().is_ok()) {
        entry.text = looks[0].to_owned();
    }
}

fn long() -> bool {
    std::env::var_os("BAYHAND_LONG").is_some()
}

#[tokio::test]
#[ignore = "needs the voice model: cargo xtask voice"]
async fn a_job_is_led_by_voice_in_noise() {
    let began = Instant::now();
    let mut car = Car::begin(1).await;
    let mut speaks = long();
    let mut steps = 0;
    while let Some(body) = car.step() {
        if body.seal_in_review || (!long() && body.id.starts_with("loop.turn-RL")) {
            break;
        }
        speaks |= body.id == "baseline.read-3";
        if speaks {
            car.speak_step(&body).await
        } else {
            car.type_step(&body).await
        }
        car.let_pass(&body.id).await;
        steps += 1;
        println!("{:>4} s: {} is done, {} things were said", began.elapsed().as_secs(), body.id, car.went.spoken);
        assert!(steps < 400, "the job ends; it stands at {}", body.id);
    }
    if long() {
        let job = car.view.job.as_ref().unwrap().id;
        let seal = Ask { revision: car.view.revision, by: "MT".into(), wish: Wish::Seal };
        car.desk.review_act(job, seal).await.unwrap();
    }
    println!("{steps} steps: {:?}", car.went);
    let Went { lines, spoken, first, again, given_up, .. } = car.went;
    let least = if long() { 400 } else { 30 };
    assert!(lines > 20 && spoken > least, "control: it was spoken");
    assert!(given_up * 20 <= first, "at most one answer in twenty is given up and typed: {given_up} of {first}");
    assert!(again * 4 <= first, "three of four answers are understood at once: {again} more for {first}");
}

/// Readings, commands and other talk at every noise, wherever a job can stand with a whole draft: nothing is stored.
#[tokio::test]
#[ignore = "needs the voice model: cargo xtask voice"]
async fn nothing_is_stored_without_confirm_at_any_noise() {
    let mut car = Car::begin(1).await;
    while let Some(body) = car.step().filter(|body| body.id != "baseline.read-1") {
        car.type_step(&body).await;
        car.let_pass(&body.id).await;
    }
    let body = car.step().unwrap();
    let data = |name: &str| {
        sound::read(&PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("../speech/tests/data/{name}.flac")))
            .unwrap()
    };
    let mut sounds: Vec<Vec<f32>> =
        ["voice3-r00", "voice3-r20", "voice3-o01", "voice3-o05", "voice3-c07", "voice4-r05", "voice4-o02"]
            .map(data)
            .into();
    for words in ["next", "back", "repeat", "cancel", "all in order", "front left two one four point five", "come on"] {
        sounds.push(car.sound(words));
    }
    let levels: &[f32] = if long() { &[20.0, 10.0, 5.0, 0.0, -5.0, -10.0, -20.0] } else { &[10.0, 0.0, -10.0] };
    let before = car.desk.head().await;
    let (mut asked, mut taken) = (0, 0);
    for (draft, reading_back) in [(false, false), (true, false), (true, true)] {
        car.entries = if draft { setter::entries(&body) } else { BTreeMap::new() };
        car.reading_back = reading_back;
        for (number, sound) in sounds.iter().enumerate() {
            for (level, decibels) in levels.iter().enumerate() {
                let kind = Noise::ALL[(number + level) % 3];
                let mixed = noise::mix(sound, kind, *decibels, number as u64);
                let attention = car.attention(&body.id);
                let grammar = Grammar::new(meaning::expect(car.desk.awaited(&attention).await.unwrap())).unwrap();
                let above_noise_db = sound::loudness(&mixed).map(|loudness| loudness.above_noise_db());
                let heard = meaning::said(RECOGNISER.hear(&mixed, &grammar), above_noise_db);
                let view = car.desk.heard(&attention, &heard).await;
                assert_ne!(view.act, HeardAct::Confirm, "sound {number} at {decibels} dB in {kind:?}: {heard:?}");
                asked += 1;
                taken += u32::from(view.act != HeardAct::Nothing || view.pending.is_some());
            }
        }
    }
    println!("{asked} sounds, of {taken} something came, nothing was stored");
    assert!(taken > asked / 20, "control: some of it is understood");
    assert_eq!(car.desk.head().await, before, "the record is as it was");
}
