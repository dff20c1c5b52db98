//! A reading with its uncertainty: where it comes from, what it says of each figure, and what would help.
//!
//! Three kinds of spread are never mixed ([`Spreads`]): looks at a resting car, settles, and what is constant over the
//! job (zero, calibration, level of the pads); rounding comes anew with each reading and is not averaged. Each source is
//! a load change per standard uncertainty ([`Source`]), so that together they are the covariance of the four loads:
//!
//! ```text
//!   V = sum over independent inputs of  e e' part²     e: kg per standard uncertainty at FL, FR, RL, RR
//! ```
//!
//! with `part = 1/sqrt(looks · settles)` for looks, `1/sqrt(settles)` for friction and contact patches, and 1 for the
//! rest. The level of the pads is what the staff leaves (independent at each pad: its twist and the three patterns of a
//! plane are kept apart, since only twist does much) and the laser's own tilt. Figures follow by the law of propagation
//! ([`propagate`], JCGM 100:2008, 5.1.2), are expanded with k = 2, and are judged with a guard band (JCGM 106:2012).
//!
//! - [`Instruments`]: what is stated. [`repeats`]: what the car's own readings say.
//! - [`Reading`], [`Budget`]: each figure with U and what contributes most; differences without what is constant.
//! - [`judge_figure`], [`capability`], [`level_limits`]: inside, outside or cannot tell, what would help, and whether
//!   these instruments can tell at all.
//! - [`Interval`]: windows, guard bands and risks.

mod advice;
mod budget;
mod conformity;
mod gum;
mod heights;
mod instruments;
mod repeats;
mod sources;

pub use advice::{Capability, Help, Judgement, LevelLimits, capability, judge_figure, level_limits, loads_by_data};
pub use budget::{Budget, Figure, Part, Reading};
pub use conformity::{Decision, Interval};
pub use gum::{Input, Propagated, coverage_factor, effective_dof, propagate};
pub use heights::{HeightSpread, height_spread};
pub use instruments::{HeightGauge, Instruments, Level, class_iii_limit_kg, standard_of_limits};
pub use repeats::{Repeats, repeats};
pub use sources::{Source, Spreads};
