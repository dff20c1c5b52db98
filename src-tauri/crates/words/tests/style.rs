//! How the texts are written: spoken lines by ASD-STE100 5.1 to 5.4, hazards by ANSI Z535.4.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_procedure::{SHIPPED, Signal, load};
use bayhand_words::{Language, Words, id};

/// Verbs that an instruction may begin with. A new one is added here when none of these will do.
const VERBS: &[&str] = &[
    "drive", "end", "adjust", "bounce", "centre", "change", "check", "choose", "count", "crack", "switch", "bring",
    "describe", "find", "fit", "free", "hang", "have", "leave", "look", "loosen", "lower", "make", "measure", "move",
    "place", "prepare", "put", "raise", "read", "release", "rock", "roll", "seal", "seat", "set", "shim", "shut",
    "state", "strap", "take", "tell", "tighten", "turn", "undo", "wait", "write", "zero",
];

/// Words that a condition begins with.
const CONDITIONS: &[&str] = &["when", "if", "with", "as"];

fn words_in(text: &str) -> usize {
    text.split_whitespace().count()
}

fn sentences_in(text: &str) -> usize {
    let ends = text.split_whitespace().filter(|word| word.ends_with(['.', '!', '?']));
    ends.count()
}

fn first_word(text: &str) -> String {
    text.split_whitespace().next().unwrap_or_default().to_lowercase()
}

#[test]
fn a_spoken_line_is_one_short_instruction() {
    let words = Words::english();
    for (_, step) in load(SHIPPED).unwrap().steps() {
        let line = words.text(&id("step", &[&step.id]), &[]);
        assert!(words_in(&line) <= 20, "5.1, at most 20 words: {line}");
        assert!(line.ends_with('.') && sentences_in(&line) == 1, "5.2, one instruction, one sentence: {line}");
        assert!(!line.contains([';', ':', '(', '–']), "5.2, nothing is hung on: {line}");
        assert!(!line.chars().any(|c| c.is_ascii_digit()), "it is spoken, so figures are words: {line}");
        let instruction = match CONDITIONS.contains(&first_word(&line).as_str()) {
            true => line.split_once(", ").unwrap_or_else(|| panic!("5.4, a comma ends the condition: {line}")).1,
            false => &line,
        };
        let verb = first_word(instruction);
        assert!(VERBS.contains(&verb.as_str()), "5.3, the imperative begins it, not {verb:?}: {line}");
    }
}

#[test]
fn a_short_name_fits_a_list() {
    for words in Language::ALL.map(Words::of) {
        for (_, step) in load(SHIPPED).unwrap().steps() {
            let short = words.attr(&id("step", &[&step.id]), "short", &[]).unwrap();
            assert!((1..=6).contains(&words_in(&short)), "{}: one to six words: {short}", step.id);
            assert!(!short.ends_with('.'), "{}: a name, not a sentence: {short}", step.id);
        }
    }
}

#[test]
fn a_detail_is_read_in_a_minute() {
    for words in Language::ALL.map(Words::of) {
        for (_, step) in load(SHIPPED).unwrap().steps() {
            let detail = words.attr(&id("step", &[&step.id]), "detail", &[]).unwrap();
            assert!((2..=5).contains(&sentences_in(&detail)), "{}: two to five sentences: {detail}", step.id);
        }
    }
}

#[test]
fn a_stage_has_a_name_of_three_words_at_most() {
    for words in Language::ALL.map(Words::of) {
        for stage in load(SHIPPED).unwrap().stages {
            let name = words.text(&id("stage", &[&stage.id]), &[]);
            assert!(words_in(&name) <= 3, "{name}");
        }
    }
}

#[test]
fn a_hazard_line_is_seen_across_the_bay() {
    for words in Language::ALL.map(Words::of) {
        for hazard in load(SHIPPED).unwrap().hazards {
            let line = words.attr(&id("hazard", &[&hazard.id]), "line", &[]).unwrap();
            assert!(words_in(&line) <= 6, "{}: at most six words: {line}", hazard.id);
        }
    }
}

#[test]
fn a_hazard_text_bears_out_its_signal_word() {
    let words = Words::english();
    for hazard in load(SHIPPED).unwrap().hazards {
        let text = words.attr(&id("hazard", &[&hazard.id]), "text", &[]).unwrap();
        let grave = ["kill", "death", "heart", "break", "crush", "put out", "blind"].iter().any(|w| text.contains(w));
        let fits = match hazard.signal {
            Signal::Danger => text.contains(" will ") && grave,
            Signal::Warning => text.contains(" could ") && grave,
            Signal::Caution => text.contains(" could ") && !grave,
            Signal::Notice => !grave,
        };
        assert!(fits, "ANSI Z535.4, {:?} does not fit what {} says: {text}", hazard.signal, hazard.id);
    }
}

#[test]
fn a_hazard_text_defers_to_the_maker_and_to_local_rules() {
    let words = Words::english();
    for hazard in load(SHIPPED).unwrap().hazards {
        let text = words.attr(&id("hazard", &[&hazard.id]), "text", &[]).unwrap();
        assert!(text.contains("maker"), "{}: {text}", hazard.id);
        assert!(text.contains("local rules"), "{}: {text}", hazard.id);
        if matches!(hazard.signal, Signal::Danger | Signal::Warning) {
            assert!(text.contains("trained and authorised people"), "{}: {text}", hazard.id);
        }
    }
}

/// Words that a German condition begins with.
const GERMAN_CONDITIONS: &[&str] = &["wenn", "sobald", "falls"];

#[test]
fn a_german_spoken_line_is_one_short_instruction() {
    let words = Words::of(Language::German);
    for (_, step) in load(SHIPPED).unwrap().steps() {
        let line = words.text(&id("step", &[&step.id]), &[]);
        assert!(words_in(&line) <= 20, "5.1, at most 20 words: {line}");
        assert!(line.ends_with('.') && sentences_in(&line) == 1, "5.2, one instruction, one sentence: {line}");
        assert!(!line.contains([';', ':', '(', '–']), "5.2, nothing is hung on: {line}");
        assert!(!line.chars().any(|c| c.is_ascii_digit()), "it is spoken, so figures are words: {line}");
        let conditional = GERMAN_CONDITIONS.contains(&first_word(&line).as_str());
        assert!(!conditional || line.contains(", "), "5.4, a comma ends the condition: {line}");
        // The infinitive of an instruction ends its sentence, or the part before a clause that says what or how far.
        let infinitive = |part: &str| {
            let last = part.rsplit(' ').next().unwrap_or_default();
            last.ends_with('n') && (last == part || last.starts_with(char::is_lowercase))
        };
        let instructs = line.trim_end_matches('.').split(", ").any(infinitive);
        assert!(instructs, "5.3, an infinitive instructs: {line}");
    }
}

#[test]
fn a_german_hazard_bears_out_its_signal_word_and_defers_to_makers_and_rules() {
    let words = Words::of(Language::German);
    for hazard in load(SHIPPED).unwrap().hazards {
        let text = words.attr(&id("hazard", &[&hazard.id]), "text", &[]).unwrap();
        let grave = ["töd", "töten", "Herz", "brechen", "zerquetschen", "Auge kosten", "blind"];
        let grave = grave.iter().any(|w| text.contains(w));
        let fits = match hazard.signal {
            Signal::Danger => text.contains(" wird ") && grave,
            Signal::Warning => text.contains(" kann ") && grave,
            Signal::Caution => text.contains(" kann ") && !grave,
            Signal::Notice => !grave,
        };
        assert!(fits, "{:?} does not fit what {} says: {text}", hazard.signal, hazard.id);
        assert!(text.contains("ersteller") && text.contains("örtlichen Vorschriften"), "{}: {text}", hazard.id);
        if matches!(hazard.signal, Signal::Danger | Signal::Warning) {
            assert!(text.contains("geschulte und befugte Personen"), "{}: {text}", hazard.id);
        }
    }
}

/// ISO 3864 and ANSI Z535, as they are used in German.
#[test]
fn german_signal_words_are_those_of_the_standards() {
    let words = Words::of(Language::German);
    for (signal, word) in [("danger", "GEFAHR"), ("warning", "WARNUNG"), ("caution", "VORSICHT"), ("notice", "HINWEIS")]
    {
        assert_eq!(words.text(&id("signal", &[signal]), &[]), word);
    }
}
