//! The decoder: from what was heard and a text so far to the scores of the next token. Several texts go one step at a
//! time together, so that the weights are read from memory once for all of them.

use super::encoder::gelu;
use super::shape::{HEAD, HEADS, LAYERS, STATE, TOKENS};
use super::weights::{Decoder, Linear, Norm};
use nalgebra::DMatrix;
use std::thread;

/// What a text has left behind in each layer: keys and values of its tokens.
#[derive(Clone, Default)]
pub struct Past {
    layers: [Layer; LAYERS],
    length: usize,
}

#[derive(Clone, Default)]
struct Layer {
    keys: Vec<f32>,
    values: Vec<f32>,
}

/// Keys and values of the sound, for each layer: places x states.
pub struct Sound {
    layers: Vec<(Vec<f32>, Vec<f32>)>,
}

impl Decoder {
    /// Prepares what was heard.
    pub fn sound(&self, states: &DMatrix<f32>) -> Sound {
        let layers = self.layers.iter().map(|layer| {
            // Place by place, as one place is looked at after the other.
            let both = layer.audio_key_value.rows(states);
            let (keys, values) = (both.columns(0, STATE).transpose(), both.columns(STATE, STATE).transpose());
            (keys.as_slice().to_vec(), values.as_slice().to_vec())
        });
        Sound { layers: layers.collect() }
    }

    /// Adds tokens to texts, each named by its place in `texts`, in this order; the state after each, from which
    /// [`Self::scores`] tells what may come next, one after the other.
    pub fn step(&self, sound: &Sound, texts: &mut [Past], tokens: &[(usize, usize)]) -> Vec<f32> {
        let mut states = Vec::with_capacity(tokens.len() * STATE);
        for (text, token) in tokens {
            let past = &mut texts[*text];
            let (token, place) = (&self.tokens[token * STATE..], &self.places[past.length * STATE..]);
            states.extend(token.iter().zip(place).take(STATE).map(|(token, place)| token + place));
            past.length += 1;
        }
        let mut mixed = vec![0.0; states.len()];
        for (number, layer) in self.layers.iter().enumerate() {
            let all = layer.query_key_value.each(&layer.before_attention.each(&states));
            for ((all, mixed), (text, _)) in all.chunks_exact(3 * STATE).zip(mixed.chunks_exact_mut(STATE)).zip(tokens)
            {
                let past = &mut texts[*text].layers[number];
                past.keys.extend_from_slice(&all[STATE..2 * STATE]);
                past.values.extend_from_slice(&all[2 * STATE..]);
                attend(&all[..STATE], &past.keys, &past.values, mixed);
            }
            add(&mut states, &layer.out.each(&mixed));
            let queries = layer.audio_query.each(&layer.before_audio.each(&states));
            let (keys, values) = &sound.layers[number];
            for (query, mixed) in queries.chunks_exact(STATE).zip(mixed.chunks_exact_mut(STATE)) {
                attend(query, keys, values, mixed);
            }
            add(&mut states, &layer.audio_out.each(&mixed));
            let mut wide = layer.widen.each(&layer.before_feed.each(&states));
            wide.iter_mut().for_each(gelu);
            add(&mut states, &layer.narrow.each(&wide));
        }
        self.last.each(&states)
    }

    /// The scores of all tokens after each state.
    pub fn scores(&self, states: &[f32]) -> Vec<Vec<f32>> {
        let count = states.len() / STATE;
        let mut out = vec![vec![0.0; TOKENS]; count];
        let half = TOKENS / 2;
        let (mut first, mut second): (Vec<&mut [f32]>, Vec<&mut [f32]>) =
            out.iter_mut().map(|scores| scores.split_at_mut(half)).unzip();
        thread::scope(|scope| {
            scope.spawn(|| rows(&self.tokens[half * STATE..], states, &mut second));
            rows(&self.tokens[..half * STATE], states, &mut first);
        });
        out
    }
}

/// The dot product of each row of `weights` with each state, into that state's place.
fn rows(weights: &[f32], states: &[f32], into: &mut [&mut [f32]]) {
    for (number, row) in weights.chunks_exact(STATE).enumerate() {
        for (state, into) in states.chunks_exact(STATE).zip(into.iter_mut()) {
            into[number] = dot(row, state);
        }
    }
}

/// From this many states on, a matrix product is quicker than one dot product after the other.
const MANY: usize = 12;

impl Linear {
    /// Maps each state of those that lie one after the other.
    fn each(&self, states: &[f32]) -> Vec<f32> {
        let (inputs, outputs) = self.weight.shape();
        let count = states.len() / inputs;
        if count >= MANY {
            let mapped = self.rows(&DMatrix::from_row_slice(count, inputs, states));
            return mapped.transpose().as_slice().to_vec();
        }
        let mut out = vec![0.0; count * outputs];
        for (number, (row, bias)) in self.weight.as_slice().chunks_exact(inputs).zip(&self.bias).enumerate() {
            for (state, out) in states.chunks_exact(inputs).zip(out.chunks_exact_mut(outputs)) {
                out[number] = dot(row, state) + bias;
            }
        }
        out
    }
}

impl Norm {
    fn each(&self, states: &[f32]) -> Vec<f32> {
        let mut out = Vec::with_capacity(states.len());
        for state in states.chunks_exact(STATE) {
            let mean = state.iter().sum::<f32>() / STATE as f32;
            let square = state.iter().map(|value| (value - mean).powi(2)).sum::<f32>() / STATE as f32;
            let scale = (square + 1e-5).sqrt().recip();
            let scaled = state.iter().zip(&self.scale).zip(&self.offset);
            out.extend(scaled.map(|((value, gamma), beta)| (value - mean) * scale * gamma + beta));
        }
        out
    }
}

/// One query over keys and values that lie place by place.
fn attend(query: &[f32], keys: &[f32], values: &[f32], into: &mut [f32]) {
    into.fill(0.0);
    let mut weights = vec![0.0; keys.len() / STATE];
    for head in 0..HEADS {
        let part = head * HEAD..(head + 1) * HEAD;
        let query = &query[part.clone()];
        for (weight, key) in weights.iter_mut().zip(keys.chunks_exact(STATE)) {
            *weight = dot(query, &key[part.clone()]) / (HEAD as f32).sqrt();
        }
        super::softmax(&mut weights);
        let into = &mut into[part.clone()];
        for (weight, value) in weights.iter().zip(values.chunks_exact(STATE)) {
            for (into, value) in into.iter_mut().zip(&value[part.clone()]) {
                *into += weight * value;
            }
        }
    }
}

fn add(states: &mut [f32], more: &[f32]) {
    states.iter_mut().zip(more).for_each(|(state, more)| *state += more);
}

/// Summed in sixteen lanes, which the compiler turns into vector instructions. All lengths here are multiples of 16.
fn dot(a: &[f32], b: &[f32]) -> f32 {
    let mut lanes = [0.0_f32; 16];
    for (a, b) in a.chunks_exact(16).zip(b.chunks_exact(16)) {
        for lane in 0..16 {
            lanes[lane] += a[lane] * b[lane];
        }
    }
    lanes.iter().sum()
}
