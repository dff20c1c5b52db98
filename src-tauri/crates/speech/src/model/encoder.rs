//! The encoder: from a spectrogram to a state for each 20 ms. Matrices are places x states, so that a layer's map is one
//! product with the weights as the file holds them.

use super::shape::{BANDS, HEAD, HEADS, STATE};
use super::spectrogram::Spectrogram;
use super::weights::{Encoder, Linear, Norm};
use nalgebra::{DMatrix, DMatrixView};
use std::thread;

impl Linear {
    /// Maps each row; the columns of the result are shared out between two threads.
    pub fn rows(&self, input: &DMatrix<f32>) -> DMatrix<f32> {
        let (inputs, outputs) = self.weight.shape();
        let rows = input.nrows();
        let mut out = DMatrix::zeros(rows, outputs);
        let half = outputs / 2;
        {
            let (first, second) = out.as_mut_slice().split_at_mut(rows * half);
            let part = |into: &mut [f32], from: usize| {
                let columns = into.len() / rows.max(1);
                let mut into = nalgebra::DMatrixViewMut::from_slice(into, rows, columns);
                for (mut column, bias) in into.column_iter_mut().zip(&self.bias[from..]) {
                    column.fill(*bias);
                }
                into.gemm(1.0, input, &self.weight.view((0, from), (inputs, columns)), 1.0);
            };
            thread::scope(|scope| {
                scope.spawn(|| part(second, half));
                part(first, 0);
            });
        }
        out
    }
}

impl Norm {
    fn rows(&self, input: &DMatrix<f32>) -> DMatrix<f32> {
        let count = input.ncols() as f32;
        let mean = input.column_sum() / count;
        let mut out = input.clone();
        let mut square = nalgebra::DVector::zeros(input.nrows());
        for mut column in out.column_iter_mut() {
            column -= &mean;
            square += column.component_mul(&column);
        }
        let scale = square.map(|square: f32| (square / count + 1e-5).sqrt().recip());
        for ((mut column, gamma), beta) in out.column_iter_mut().zip(&self.scale).zip(&self.offset) {
            column.zip_apply(&scale, |value, scale| *value = *value * scale * gamma + beta);
        }
        out
    }
}

impl Encoder {
    /// A state for each place; `places` is how many, of two frames each.
    pub fn states(&self, spectrogram: &Spectrogram, sound: &[f32], places: usize) -> DMatrix<f32> {
        let bands = spectrogram.of(sound, 2 * places);
        debug_assert_eq!(bands.ncols(), BANDS);
        let mut first = self.first.rows(&neighbours(&bands, 1));
        first.apply(gelu);
        let mut state = self.second.rows(&neighbours(&first, 2));
        state.apply(gelu);
        state += self.places.rows(0, places);
        for layer in &self.layers {
            let mixed = attend(&layer.query_key_value.rows(&layer.before_attention.rows(&state)));
            state += layer.out.rows(&mixed);
            let mut wide = layer.widen.rows(&layer.before_feed.rows(&state));
            wide.apply(gelu);
            state += layer.narrow.rows(&wide);
        }
        self.last.rows(&state)
    }
}

/// For each `step`-th row the row before, itself and the row after, channel by channel: a convolution of three becomes a
/// product.
fn neighbours(input: &DMatrix<f32>, step: usize) -> DMatrix<f32> {
    let rows = input.nrows().div_ceil(step);
    DMatrix::from_fn(rows, 3 * input.ncols(), |row, column| {
        let (channel, offset) = (column / 3, column % 3);
        (row * step + offset).checked_sub(1).filter(|at| *at < input.nrows()).map_or(0.0, |at| input[(at, channel)])
    })
}

/// Self-attention over all places; queries, keys and values lie beside each other.
fn attend(all: &DMatrix<f32>) -> DMatrix<f32> {
    let rows = all.nrows();
    let mut out = DMatrix::zeros(rows, STATE);
    let (left, right) = out.as_mut_slice().split_at_mut(rows * STATE / 2);
    let part = |into: &mut [f32], from: usize| {
        for (head, into) in (from..).zip(into.chunks_exact_mut((rows * HEAD).max(1))) {
            let at = |block: usize| all.columns(block * STATE + head * HEAD, HEAD);
            head_of(at(0), at(1), at(2), into);
        }
    };
    thread::scope(|scope| {
        scope.spawn(|| part(right, HEADS / 2));
        part(left, 0);
    });
    out
}

fn head_of(query: DMatrixView<f32>, key: DMatrixView<f32>, value: DMatrixView<f32>, into: &mut [f32]) {
    // Keys x queries, so that the weights of one query lie together.
    let mut weights = key * query.transpose();
    weights *= 1.0 / (HEAD as f32).sqrt();
    for mut column in weights.column_iter_mut() {
        super::softmax(column.as_mut_slice());
    }
    let mixed = weights.transpose() * value;
    into.copy_from_slice(mixed.as_slice());
}

/// `x` times the normal distribution's function of `x`.
pub fn gelu(x: &mut f32) {
    *x *= 0.5 * (1.0 + erf(*x * std::f32::consts::FRAC_1_SQRT_2));
}

/// Abramowitz and Stegun 7.1.26, within 1.5e-7.
fn erf(x: f32) -> f32 {
    let t = 1.0 / (1.0 + 0.327_591_1 * x.abs());
    let sum = ((((1.061_405_4 * t - 1.453_152_1) * t + 1.421_413_8) * t - 0.284_496_72) * t + 0.254_829_6) * t;
    (1.0 - sum * (-x * x).exp()).copysign(x)
}
