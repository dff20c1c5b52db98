//! What is said and heard, offline: spoken numbers, the grammar of what may be said, the recogniser, spoken lines.
//!
//! - [`spoken`]: words for numbers, corners and units; the grammar; what words mean. Pure.
//! - [`hear`]: from sound to [`heard`], held to a grammar. [`model`]: the network, in plain Rust. [`sound`]: files, rates,
//!   noise.
//! - [`listen`]: the ear, on a thread: while a key is held, or hands-free. [`sound::microphone`]: a program that records.
//! - [`say`]: which line is said, waits or is cut; the voice, a process of the system.
//!
//! It knows no job, no step and no word of one. No unsafe code: the network is a few hundred lines on one matrix product.

pub mod hear;
pub mod heard;
pub mod listen;
pub mod model;
pub mod say;
pub mod sound;
pub mod spoken;
