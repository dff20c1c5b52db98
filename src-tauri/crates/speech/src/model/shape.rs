//! What the network is made of: Whisper `tiny.en`, as its authors published it.

/// Length of a state.
pub const STATE: usize = 384;
/// Heads of an attention, and the length of each.
pub const HEADS: usize = 6;
/// Length of one head.
pub const HEAD: usize = STATE / HEADS;
/// Inner length of the feed-forward part.
pub const INNER: usize = 4 * STATE;
/// Layers of the encoder and of the decoder.
pub const LAYERS: usize = 4;
/// Bands of the spectrogram.
pub const BANDS: usize = 80;
/// Most places of the encoder: thirty seconds.
pub const PLACES: usize = 1500;
/// Most tokens of a text.
pub const TEXT: usize = 448;
/// Tokens, the special ones included.
pub const TOKENS: usize = 51_864;

/// Ends a text.
pub const END: usize = 50_256;
/// Begins a text.
pub const START: usize = 50_257;
/// Before a text that went before.
pub const BEFORE: usize = 50_360;
/// In place of a text: nobody speaks.
pub const NOBODY: usize = 50_361;
/// Says that no times are wanted.
pub const NO_TIMES: usize = 50_362;

/// A tensor: its name in the carrier's file, and its extents, the slowest first.
pub struct Tensor {
    /// Its name.
    pub name: String,
    /// Rows: outputs, or one for a vector.
    pub rows: usize,
    /// Columns: inputs.
    pub columns: usize,
}

impl Tensor {
    /// How many values it has.
    pub const fn values(&self) -> usize {
        self.rows * self.columns
    }
}

/// All tensors in the order in which the file holds them and [`super::weights`] takes them.
pub fn tensors() -> Vec<Tensor> {
    let mut all = Vec::new();
    let mut add = |name: &str, rows, columns| all.push(Tensor { name: name.to_owned(), rows, columns });
    let linear = |add: &mut dyn FnMut(&str, usize, usize), name: &str, outputs, inputs| {
        add(&format!("{name}/weight"), outputs, inputs);
        add(&format!("{name}/bias"), 1, outputs);
    };
    let norm = |add: &mut dyn FnMut(&str, usize, usize), name: &str| {
        add(&format!("{name}/gamma"), 1, STATE);
        add(&format!("{name}/beta"), 1, STATE);
    };
    linear(&mut add, "encoder/conv1", STATE, 3 * BANDS);
    linear(&mut add, "encoder/conv2", STATE, 3 * STATE);
    add("encoder/position_encodings/encodings", PLACES, STATE);
    for layer in 0..LAYERS {
        let at = |part: &str| format!("encoder/layer_{layer}/{part}");
        norm(&mut add, &at("self_attention/layer_norm"));
        linear(&mut add, &at("self_attention/linear_0"), 3 * STATE, STATE);
        linear(&mut add, &at("self_attention/linear_1"), STATE, STATE);
        norm(&mut add, &at("ffn/layer_norm"));
        linear(&mut add, &at("ffn/linear_0"), INNER, STATE);
        linear(&mut add, &at("ffn/linear_1"), STATE, INNER);
    }
    norm(&mut add, "encoder/layer_norm");
    add("decoder/embeddings/weight", TOKENS, STATE);
    add("decoder/position_encodings/encodings", TEXT, STATE);
    for layer in 0..LAYERS {
        let at = |part: &str| format!("decoder/layer_{layer}/{part}");
        norm(&mut add, &at("self_attention/layer_norm"));
        linear(&mut add, &at("self_attention/linear_0"), 3 * STATE, STATE);
        linear(&mut add, &at("self_attention/linear_1"), STATE, STATE);
        norm(&mut add, &at("attention/layer_norm"));
        linear(&mut add, &at("attention/linear_0"), STATE, STATE);
        linear(&mut add, &at("attention/linear_1"), 2 * STATE, STATE);
        linear(&mut add, &at("attention/linear_2"), STATE, STATE);
        norm(&mut add, &at("ffn/layer_norm"));
        linear(&mut add, &at("ffn/linear_0"), INNER, STATE);
        linear(&mut add, &at("ffn/linear_1"), STATE, INNER);
    }
    norm(&mut add, "decoder/layer_norm");
    all
}
