//! The weights, each in its place.

use super::file::{self, Contents, ModelError};
use super::shape::{LAYERS, STATE};
use nalgebra::DMatrix;
use std::path::Path;

/// A linear map: `inputs x outputs`, column by column as the file holds it row by row of outputs.
pub struct Linear {
    pub weight: DMatrix<f32>,
    pub bias: Vec<f32>,
}

/// Scale and offset after normalising.
pub struct Norm {
    pub scale: Vec<f32>,
    pub offset: Vec<f32>,
}

pub struct EncoderLayer {
    pub before_attention: Norm,
    pub query_key_value: Linear,
    pub out: Linear,
    pub before_feed: Norm,
    pub widen: Linear,
    pub narrow: Linear,
}

pub struct Encoder {
    pub first: Linear,
    pub second: Linear,
    /// Places x states.
    pub places: DMatrix<f32>,
    pub layers: Vec<EncoderLayer>,
    pub last: Norm,
}

pub struct DecoderLayer {
    pub before_attention: Norm,
    pub query_key_value: Linear,
    pub out: Linear,
    pub before_audio: Norm,
    pub audio_query: Linear,
    pub audio_key_value: Linear,
    pub audio_out: Linear,
    pub before_feed: Norm,
    pub widen: Linear,
    pub narrow: Linear,
}

pub struct Decoder {
    /// Tokens row by row; also maps a state to the tokens' scores.
    pub tokens: Vec<f32>,
    pub places: Vec<f32>,
    pub layers: Vec<DecoderLayer>,
    pub last: Norm,
}

/// The whole network with the text of its tokens.
pub struct Network {
    pub vocabulary: Vec<Vec<u8>>,
    pub encoder: Encoder,
    pub decoder: Decoder,
}

impl Network {
    /// Reads a file.
    ///
    /// # Errors
    /// As [`file::read`].
    pub fn read(path: &Path) -> Result<Self, ModelError> {
        let Contents { vocabulary, weights } = file::read(path)?;
        let mut next = Taken(weights.into_iter());
        let encoder = Encoder {
            first: next.linear()?,
            second: next.linear()?,
            places: {
                let rows = next.vector()?;
                DMatrix::from_row_slice(rows.len() / STATE, STATE, &rows)
            },
            layers: (0..LAYERS).map(|_| next.encoder_layer()).collect::<Result<_, _>>()?,
            last: next.norm()?,
        };
        let decoder = Decoder {
            tokens: next.vector()?,
            places: next.vector()?,
            layers: (0..LAYERS).map(|_| next.decoder_layer()).collect::<Result<_, _>>()?,
            last: next.norm()?,
        };
        Ok(Self { vocabulary, encoder, decoder })
    }
}

/// The tensors in the order of [`super::shape::tensors`].
struct Taken(std::vec::IntoIter<Vec<f32>>);

impl Taken {
    fn vector(&mut self) -> Result<Vec<f32>, ModelError> {
        self.0.next().ok_or(ModelError::Damaged("a tensor is missing"))
    }

    fn norm(&mut self) -> Result<Norm, ModelError> {
        Ok(Norm { scale: self.vector()?, offset: self.vector()? })
    }

    fn linear(&mut self) -> Result<Linear, ModelError> {
        let (weight, bias) = (self.vector()?, self.vector()?);
        Ok(Linear { weight: DMatrix::from_vec(weight.len() / bias.len(), bias.len(), weight), bias })
    }

    fn encoder_layer(&mut self) -> Result<EncoderLayer, ModelError> {
        Ok(EncoderLayer {
            before_attention: self.norm()?,
            query_key_value: self.linear()?,
            out: self.linear()?,
            before_feed: self.norm()?,
            widen: self.linear()?,
            narrow: self.linear()?,
        })
    }

    fn decoder_layer(&mut self) -> Result<DecoderLayer, ModelError> {
        Ok(DecoderLayer {
            before_attention: self.norm()?,
            query_key_value: self.linear()?,
            out: self.linear()?,
            before_audio: self.norm()?,
            audio_query: self.linear()?,
            audio_key_value: self.linear()?,
            audio_out: self.linear()?,
            before_feed: self.norm()?,
            widen: self.linear()?,
            narrow: self.linear()?,
        })
    }
}
