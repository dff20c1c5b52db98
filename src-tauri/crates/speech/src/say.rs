//! Saying a line: who may speak when, and the voice that speaks.
//!
//! - [`queue`]: which line is said, which waits, which is cut; pure.
//! - [`voice`]: the voice, a program of the system that is started as a process and never linked.
//! - [`speaker`]: both together, on a thread.

pub mod queue;
pub mod speaker;
pub mod voice;
