//! The same job without a window: JSON lines for scripts, a setter that does a whole practice job, and checks of a book.
//!
//! - [`lines`]: `predict`, `plan` and `plausible`, a JSON line in and a JSON line out; [`align`]: the same for alignment.
//! - [`setter`]: what a setter at the practice car enters at a step, read off the same view as the window's.
//! - [`practice`]: a whole job by that setter, on virtual time; [`crew`]: who does it, with their PINs.
//! - [`prove`]: every procedure of a folder, with each safety property.
//! - [`voice`]: `hear` and `say`.
//! - [`book`]: `verify`, `export`, `import` and `sheet`.

pub mod align;
pub mod book;
pub mod crew;
pub mod lines;
pub mod practice;
pub mod prove;
pub mod setter;
pub mod voice;
