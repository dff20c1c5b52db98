//! From sound to what was said, held to a grammar.
//!
//! The network gives each token a chance. Of all texts that the grammar allows the likeliest few are followed, token by
//! token, and beside them the network's own text, held to nothing. What the grammar allows is taken when its chance comes
//! near to that of the network's own text: other talk leaves every allowed text far behind.

use crate::heard::{Heard, What, Why};
use crate::model::shape::{BEFORE, END, NO_TIMES, NOBODY, START, STATE};
use crate::model::{Model, ModelError, Past, Sound};
use crate::sound::{HERTZ, is_hum, loudness};
use crate::spoken::grammar::{Grammar, Place};
use crate::spoken::reading;
use std::collections::HashMap;
use std::path::Path;

/// Texts of the grammar that are followed side by side.
const BESIDE: usize = 8;

/// So far behind the likeliest text under way, in logarithms of chances, a text is not followed any further once it has so
/// many tokens; the first ones tell little, as `can` of `cancel`. On 143 sounds of voices 1 and 2, clean and with noise at 10
/// and 5 dB, nothing is decided otherwise without this than with 5 from the first token on.
const BEHIND: f32 = 6.0;
const SURE_AFTER: usize = 3;

/// Most tokens of a text.
const MOST_TOKENS: usize = 40;

/// What the network is told to have been said before, so that it writes numbers in words and expects short commands.
const MANNER: &str = " front left two one four point five. rear right six hundred and eighty four point three. next. \
     repeat. confirm.";

/// The least difference of logarithms of chances, of the best allowed text over the network's own, that is taken.
/// On voices 1 and 2 of the test speech and on four of espeak-ng, clean and with noise at 10 and 5 dB, all but two of 416
/// that were right had at least -5.6; other talk that [`says_more`] leaves had at most -6.6, but for one of 296.
const TAKEN: f32 = -6.2;

/// The least difference between the best allowed text and the best one of another meaning.
const APART: f32 = 0.7;

/// The network's chance that nobody speaks, from which on nothing is taken: told that commands come, it hears one in a click.
/// Speech of voices 1 and 2 had at most 0.22, clean and with noise at 10 and 5 dB; noise without speech at least 0.37.
const NOBODY_SPEAKS: f32 = 0.3;

/// The same where the network's own text begins with the words that would be taken.
const NOBODY_SPEAKS_BUT_HEARD: f32 = 0.5;

/// With more than so many times the letters of what would be taken, and so many more, the network's own text says more than
/// that. On the same voices it had at most one letter above twice as many for what was right; nearly all other talk that came
/// near to a command had five and more.
const MORE_TIMES: usize = 2;
const MORE_LETTERS: usize = 4;

/// The shortest sound that can hold a word, seconds.
const SHORTEST_S: f32 = 0.15;

/// The loudest part of what is silence, decibels below full scale.
const SILENCE_DB: f32 = -60.0;

/// What the recogniser makes of a sound before it is decided upon. Chances are natural logarithms.
#[derive(Clone, Debug, PartialEq)]
pub struct Guess {
    /// Bare words: lower case, no punctuation.
    pub words: String,
    /// Chance of the text over that of the network's own; 0 when they are the same.
    pub over_free: f32,
    /// Chance of the text over that of the likeliest one that means something else.
    pub over_next: f32,
    /// The network's own text as far as others were followed beside it, in bare words.
    pub own: String,
    /// Whether it goes on with much more than these words.
    pub says_more: bool,
    /// The network's chance, from 0 to 1, that nobody speaks.
    pub nobody: f32,
}

/// A recogniser: a model with the tokens that spoken words are made of.
pub struct Recogniser {
    model: Model,
    /// Tokens of letters, spaces and the punctuation of the grammar.
    pieces: Vec<usize>,
    /// What goes before every text.
    prompt: Vec<usize>,
}

/// A text that is being followed.
#[derive(Clone)]
struct Text {
    tokens: Vec<usize>,
    place: Place,
    chance: f32,
}

/// A text of the grammar that has come to its end.
struct Ended {
    tokens: Vec<usize>,
    /// Without the token that ends it.
    chance: f32,
    end: f32,
}

/// All texts that mean the same.
struct Meant {
    /// Of the likeliest of them.
    words: String,
    what: Option<What>,
    likeliest: f32,
    /// Of all together.
    chance: f32,
}

/// The network's own text, by its likeliest tokens.
#[derive(Default)]
struct Free {
    tokens: Vec<usize>,
    /// After each token.
    chances: Vec<f32>,
    /// So many of its tokens others were followed beside.
    beside: usize,
}

impl Recogniser {
    /// Reads a model's file.
    ///
    /// # Errors
    /// It cannot be read, is another file, or is damaged.
    pub fn read(path: &Path) -> Result<Self, ModelError> {
        let model = Model::read(path)?;
        let plain = |byte: &u8| byte.is_ascii_alphabetic() || b" ,.!?'".contains(byte);
        let words = model.vocabulary()[..END].iter().enumerate();
        let words = words.filter(|(_, bytes)| !bytes.is_empty() && bytes.iter().all(plain));
        let by_bytes: HashMap<_, _> = words.map(|(token, bytes)| (bytes.clone(), token)).collect();
        let mut pieces: Vec<usize> = by_bytes.values().copied().collect();
        // In one order always, so that the same sound gives the same answer.
        pieces.sort_unstable();
        let prompt = [&[BEFORE], &in_tokens(MANNER, &by_bytes)[..], &[START, NO_TIMES]].concat();
        Ok(Self { model, pieces, prompt })
    }

    /// What was said, or why nothing is taken.
    pub fn hear(&self, sound: &[f32], grammar: &Grammar) -> Heard {
        let nothing = |why| Heard { words: String::new(), what: What::Rejected(why), score: 0.0 };
        if (sound.len() as f32) < SHORTEST_S * HERTZ as f32 {
            return nothing(Why::TooShort);
        }
        // The network hears words in the hum of mains.
        if loudness(sound).is_some_and(|loudness| loudness.speech_db < SILENCE_DB) || is_hum(sound) {
            return nothing(Why::Silence);
        }
        let Some(guess) = self.guess(sound, grammar) else { return nothing(Why::OtherTalk) };
        let heard = guess.own.strip_prefix(&guess.words).is_some_and(|rest| rest.is_empty() || rest.starts_with(' '));
        if guess.nobody > if heard { NOBODY_SPEAKS_BUT_HEARD } else { NOBODY_SPEAKS } {
            return nothing(Why::Silence);
        }
        // Each is a half at its bound.
        let near = |difference: f32| 1.0 / (1.0 + (-difference).exp());
        let (taken, apart) = (near(guess.over_free - TAKEN), near(guess.over_next - APART));
        let score = taken.min(apart);
        let what = if taken < 0.5 || guess.says_more {
            What::Rejected(Why::OtherTalk)
        } else if apart < 0.5 {
            What::Rejected(Why::Unsure)
        } else {
            meaning(&guess.words, grammar).unwrap_or(What::Rejected(Why::OtherTalk))
        };
        Heard { words: guess.words, what, score }
    }

    /// The likeliest text of the grammar; `None` when none came to its end.
    pub fn guess(&self, sound: &[f32], grammar: &Grammar) -> Option<Guess> {
        let heard = self.model.listen(sound);
        let (ended, free, nobody) = self.follow(&heard, grammar);
        let mut meanings: Vec<Meant> = Vec::new();
        for text in &ended {
            let (words, chance) = (self.words(&text.tokens), text.chance + text.end);
            let what = meaning(&words, grammar);
            match meanings.iter_mut().find(|known| known.what == what && (what.is_some() || known.words == words)) {
                Some(known) => {
                    known.chance = add_logs(known.chance, chance);
                    if chance > known.likeliest {
                        (known.words, known.likeliest) = (words, chance);
                    }
                }
                None => meanings.push(Meant { words, what, likeliest: chance, chance }),
            }
        }
        meanings.sort_by(|a, b| b.chance.total_cmp(&a.chance));
        let next = meanings.get(1).map_or(f32::NEG_INFINITY, |second| second.chance);
        let Meant { words, chance, .. } = meanings.into_iter().next()?;
        let ways = ended.iter().filter(|text| self.words(&text.tokens) == words);
        let longest = ways.max_by(|a, b| (a.chance + a.end).total_cmp(&(b.chance + b.end)))?;
        // On a short sound the network may say the same again and again instead of coming to an end; then the end tells
        // nothing.
        let own = self.words(free.said(free.beside));
        let again = repeats(&own);
        let says_more = !again && says_more(&self.words(free.said(free.tokens.len())), &words);
        let places = longest.tokens.len();
        let over_free =
            if again { longest.chance - free.chance_of(places) } else { chance - free.chance_of(places + 1) };
        Some(Guess { words, over_free: over_free.min(0.0), over_next: chance - next, own, says_more, nobody })
    }

    /// Follows the likeliest texts of the grammar, and the network's own.
    fn follow(&self, heard: &Sound, grammar: &Grammar) -> (Vec<Ended>, Free, f32) {
        let mut pasts = vec![Past::default()];
        let prompt: Vec<(usize, usize)> = self.prompt.iter().map(|token| (0, *token)).collect();
        let states = self.model.step(heard, &mut pasts, &prompt);
        // After the two last tokens: the one that begins a text, where the network says whether anybody speaks, and the one
        // before the first word.
        let mut last = self.model.chances(&states[states.len() - 2 * STATE..]);
        let nobody = last[0][NOBODY].exp();
        let first = last.swap_remove(1);
        pasts.push(pasts[0].clone());
        // The network's own text has the first place, the grammar's have those after it.
        let mut chances = vec![first.clone(), first];
        let mut free = Free::default();
        let mut open = vec![Text { tokens: Vec::new(), place: grammar.begin(), chance: 0.0 }];
        let mut ended: Vec<Ended> = Vec::new();
        let mut allowed: HashMap<Place, Vec<(usize, Place)>> = HashMap::new();
        loop {
            free.grow(&chances[0]);
            let mut grown: Vec<(usize, Text)> = Vec::new();
            for (number, (text, chances)) in open.iter().zip(&chances[1..]).enumerate() {
                if grammar.may_end(text.place) {
                    ended.push(Ended { tokens: text.tokens.clone(), chance: text.chance, end: chances[END] });
                }
                let next = allowed.entry(text.place).or_insert_with(|| self.allowed(grammar, text.place));
                grown.extend(next.iter().map(|(token, place)| {
                    let tokens = [&text.tokens[..], &[*token]].concat();
                    (number + 1, Text { tokens, place: *place, chance: text.chance + chances[*token] })
                }));
            }
            let best = ended.iter().map(|text| text.chance + text.end).fold(f32::NEG_INFINITY, f32::max);
            // What is far less likely than a text that has ended cannot matter any more.
            grown.retain(|(_, text)| text.chance > best - 6.0);
            grown.sort_by(|a, b| b.1.chance.total_cmp(&a.1.chance));
            grown.truncate(BESIDE);
            let likeliest = grown.first().map_or(f32::NEG_INFINITY, |(_, text)| text.chance);
            grown.retain(|(_, text)| text.tokens.len() < SURE_AFTER || text.chance > likeliest - BEHIND);
            let long = grown.iter().any(|(_, text)| text.tokens.len() == MOST_TOKENS);
            if grown.is_empty() || long {
                break;
            }
            let own = std::mem::take(&mut pasts[0]);
            pasts = std::iter::once(own).chain(grown.iter().map(|(from, _)| pasts[*from].clone())).collect();
            open = grown.into_iter().map(|(_, text)| text).collect();
            let next = free.tokens.last().into_iter().chain(open.iter().filter_map(|text| text.tokens.last()));
            let next: Vec<(usize, usize)> = next.copied().enumerate().collect();
            let states = self.model.step(heard, &mut pasts, &next);
            chances = self.model.chances(&states);
        }
        free.beside = free.tokens.len();
        // Whether much more was said than the likeliest of them shows only once the network's own text is longer.
        let likeliest = ended.iter().max_by(|a, b| (a.chance + a.end).total_cmp(&(b.chance + b.end)));
        let enough = likeliest.map_or(0, |text| 2 * text.tokens.len() + 4);
        while free.tokens.len() < enough
            && let Some(token) = free.tokens.last().filter(|token| **token != END)
        {
            let states = self.model.step(heard, &mut pasts, &[(0, *token)]);
            free.grow(&self.model.chances(&states)[0]);
        }
        (ended, free, nobody)
    }

    /// The tokens that may follow at a place, with the place after each.
    fn allowed(&self, grammar: &Grammar, place: Place) -> Vec<(usize, Place)> {
        let vocabulary = self.model.vocabulary();
        let after = |token: &usize| grammar.after(place, &vocabulary[*token]).map(|after| (*token, after));
        self.pieces.iter().filter_map(after).collect()
    }

    fn words(&self, tokens: &[usize]) -> String {
        let bytes: Vec<u8> = tokens.iter().flat_map(|token| self.model.vocabulary()[*token].clone()).collect();
        let text = String::from_utf8_lossy(&bytes).to_ascii_lowercase();
        let bare: String = text.chars().filter(|c| !",.!?".contains(*c)).collect();
        bare.trim().to_owned()
    }
}

/// A text in tokens, each the longest that fits.
fn in_tokens(text: &str, by_bytes: &HashMap<Vec<u8>, usize>) -> Vec<usize> {
    let mut rest = text.as_bytes();
    let mut tokens = Vec::new();
    while !rest.is_empty() {
        let fits = (1..=rest.len()).rev().find_map(|length| Some((length, *by_bytes.get(&rest[..length])?)));
        let (length, token) = fits.map_or((1, None), |(length, token)| (length, Some(token)));
        tokens.extend(token);
        rest = &rest[length..];
    }
    tokens
}

impl Free {
    /// Goes on with the likeliest token; after its end with further ends, which cost nothing.
    fn grow(&mut self, chances: &[f32]) {
        let sum = self.chances.last().copied().unwrap_or(0.0);
        if self.tokens.last() == Some(&END) {
            self.tokens.push(END);
            self.chances.push(sum);
            return;
        }
        let likeliest = chances.iter().copied().enumerate().take(END + 1).max_by(|a, b| a.1.total_cmp(&b.1));
        let (token, chance) = likeliest.unwrap_or((END, 0.0));
        self.tokens.push(token);
        self.chances.push(sum + chance);
    }

    /// Of its first so many tokens those before its end.
    fn said(&self, tokens: usize) -> &[usize] {
        let end = self.tokens.iter().position(|token| *token == END).unwrap_or(self.tokens.len());
        &self.tokens[..end.min(tokens)]
    }

    /// Chance of its first so many tokens.
    fn chance_of(&self, tokens: usize) -> f32 {
        let last = tokens.min(self.chances.len()).checked_sub(1);
        last.map_or(0.0, |last| self.chances[last])
    }
}

/// Whether words begin again from the first of them.
fn repeats(words: &str) -> bool {
    let words: Vec<&str> = words.split(' ').collect();
    let begins_again = |period: usize| words.iter().zip(&words[period..]).all(|(before, now)| before == now);
    (1..words.len()).any(begins_again)
}

/// Whether the network's own text holds much more than these words: they are a part of other talk, cut short. A text that
/// begins again tells nothing of how much was said.
fn says_more(own: &str, words: &str) -> bool {
    let letters = |text: &str| text.bytes().filter(u8::is_ascii_alphabetic).count();
    !repeats(own) && letters(own) > MORE_TIMES * letters(words) + MORE_LETTERS
}

/// What bare words mean in a grammar.
fn meaning(words: &str, grammar: &Grammar) -> Option<What> {
    let expect = grammar.expect();
    let same = |phrase: &&String| phrase.to_ascii_lowercase().split_ascii_whitespace().eq(words.split(' '));
    if let Some(phrase) = expect.phrases.iter().find(same) {
        return Some(What::Phrase(phrase.clone()));
    }
    let form = expect.reading.as_ref()?;
    let said = reading::parse(words)?;
    Some(What::Reading { corner: said.corner.or(form.corner), looks: said.looks, unit: said.unit })
}

fn add_logs(a: f32, b: f32) -> f32 {
    let (high, low) = if a > b { (a, b) } else { (b, a) };
    if low == f32::NEG_INFINITY { high } else { high + (low - high).exp().ln_1p() }
}

#[cfg(test)]
mod tests {
    use super::{repeats, says_more};

    #[test]
    fn words_that_begin_again_are_seen() {
        for (words, again) in [
            ("pause pause pause", true),
            ("and you and", true),
            ("where did i put it where", true),
            ("help it", false),
            ("next", false),
            ("", false),
            ("two one one", false),
        ] {
            assert_eq!(repeats(words), again, "{words:?}");
        }
    }

    #[test]
    fn what_is_a_part_of_other_talk_is_seen() {
        for (own, words, more) in [
            ("it is cold in here today", "next", true),
            ("who parked the van outside", "back", true),
            ("front left two six five point two", "front left two six", false),
            ("rear right two nine point six and two nine point five", "rear right two", true),
            ("four points", "pause", false),
            ("and firm", "confirm", false),
            ("next next next next", "next", false),
            ("", "next", false),
        ] {
            assert_eq!(says_more(own, words), more, "{own:?} for {words:?}");
        }
    }
}
