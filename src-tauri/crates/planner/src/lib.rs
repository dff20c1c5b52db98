//! What to turn: the proved optimum over whole steps, and what people should know beside it.
//!
//! A [`Problem`] says how the car is, what each collar may do, what is wanted and what turning costs. [`plan`] answers
//! with the steps whose cost is least, proved and not rounded, with what they will do, how well that is known, and
//! with what collars cannot do.
//!
//! - [`Problem`], [`Plan`]: the JSON of `bayhand-cli plan`.
//! - `search`: branch and bound over whole steps; the proof stands at its top.
//! - `belief`: springs and ratios as a guess with a spread, and what readings teach about them.
//! - `outlook`: what is known of a plan's outcome, and the chance that every wish is inside its window.
//! - [`box_probability`]: a Gaussian inside a box, by fixed quasi-random points.
//!
//! Everything is deterministic: the same problem gives the same answer, bit for bit, on the same machine.
//!
//! Deliberately absent: how the car stands (that is chassis), words for people beyond one plain sentence, files, clocks.

mod answer;
mod belief;
mod chance;
mod error;
mod excess;
mod explain;
mod objective;
mod outlook;
mod plan;
mod problem;
mod search;
mod stop;

pub use answer::{
    Alternative, Binding, Excess, Learned, LearnedScale, LimitName, Outcome, Plan, Proof, Reachable, Reason,
    ReasonCode, Scaled, Unreachable, UnreachableBecause,
};
pub use chance::box_probability;
pub use error::PlanError;
pub use plan::plan;
pub use problem::{Confidence, Limits, Price, Problem, Round, Wish, WishName, Wishes};
pub use search::{TIE, WORK_LIMIT};
pub use stop::WORTHWHILE;
