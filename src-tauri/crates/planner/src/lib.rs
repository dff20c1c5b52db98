//! What to turn: the proved optimum over whole steps, and what people should know beside it.
//!
//! A [`Problem`] says how the car is, what each collar may do, what is wanted and what turning costs. [`plan`] answers
//! with the steps whose cost is least, proved and not rounded, with what they will do, how well that is known, and
//! with what collars cannot do. A [`Planner`] answers for any place on the trade line while a person drags.
//!
//! - [`Problem`], [`Plan`]: the JSON of `bayhand-cli plan`. [`Limits`]: what a plan must keep.
//! - `search`: sphere decoding over whole steps; the proof stands at its top. `triangle`, `excess`: its parts.
//! - `prior`, `belief`: springs and ratios as a guess with a spread, and what readings teach about them.
//! - [`Knowledge`]: what was learned, kept on the car and used at its next visit; [`collar_effects`]: what a collar does by it.
//! - `outlook`: what is known of a plan's outcome, and the chance that every wish is inside its window.
//! - `stop`, `binding`, `reach`, `line`, `sentence`: the parts of the explanation.
//! - [`whole_steps`]: the same search for any four adjusters, such as those of an axle's angles.
//! - [`box_probability`]: a Gaussian inside a box, by fixed quasi-random points.
//!
//! Everything is deterministic: the same problem gives the same answer, bit for bit, on the same machine. Every search
//! is bounded by a number of nodes.
//!
//! Deliberately absent: how the car stands (that is chassis), words for people beyond plain sentences, files, clocks.

mod answer;
mod belief;
mod binding;
mod chance;
mod effect;
mod error;
mod excess;
mod knowledge;
mod limits;
mod line;
mod objective;
mod outlook;
mod planner;
mod prior;
mod problem;
mod reach;
mod search;
mod sentence;
mod stop;
mod triangle;
mod whole;

pub use answer::{
    Alternative, Binding, Broken, Excess, LimitName, Optimum, Outcome, Plan, Proof, Reachable, Reason, ReasonCode,
    SettleAgain, Unreachable, UnreachableBecause,
};
pub use bayhand_chassis::{Confidence, Scaled};
pub use chance::box_probability;
pub use effect::{CollarEffect, collar_effects};
pub use error::PlanError;
pub use knowledge::{Doubted, Knowledge, Learned, LearnedScale};
pub use limits::{Clearance, HEIGHT_DIFF_MOST_MM, Limits};
pub use planner::{Planner, optimum, plan};
pub use problem::{Minutes, Price, Problem, Round, Wish, WishName, Wishes};
pub use search::{TIE, WORK_LIMIT};
pub use stop::WORTHWHILE;
pub use whole::{Aim, WholeSteps, whole_steps};
