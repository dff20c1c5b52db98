//! One open job as the windows see it: takes what a person asks, asks `chassis` and `planner`, gives `procedure` its
//! evidence, appends to the job book, and gives views.
//!
//! One way for data to flow: [`ask::Ask`] -> figures and evidence -> `decide` -> event -> book -> `apply` -> views.
//!
//! - [`Desk`]: owns the book and the open job.
//! - [`log::Log`]: one job's record, read back. Its state is nothing but its events replayed.
//! - [`known::Known`], [`reading`], [`instruments`], [`judge`], [`suspicion`], [`preload`], [`gates`], [`plan`]: what follows from the record, without a clock or a file.
//! - [`align`]: angles from raw readings, judged, and what to turn for them.
//! - [`coach`]: what was wrong at a practice job and where it showed, from the record and the hidden truth.
//! - [`view`]: what the windows show, in words. [`spoken`]: what is said aloud of it. [`hearing`]: what may be answered aloud. [`handover`]: what the sheet says.
//!
//! Deliberately absent: SQL, Tauri, Fluent, statics of its own.

pub mod align;
pub mod ask;
pub mod bench;
pub mod body;
pub mod budget;
pub mod card;
pub mod clock;
pub mod coach;
mod desk;
pub mod draft;
mod fault;
pub mod gates;
pub mod handover;
pub mod hearing;
pub mod instruments;
pub mod judge;
pub mod known;
pub mod log;
pub mod plan;
pub mod preferences;
pub mod preload;
pub mod reading;
mod refuse;
pub mod scenario;
mod show;
pub mod spoken;
pub mod suspicion;
pub mod tell;
pub mod view;
pub mod whole;
mod work_out;

pub use bayhand_jobbook::Secret;
pub use clock::{Clock, SystemClock};
pub use desk::{Desk, DeskError, Lack, Missing, ToSay};
