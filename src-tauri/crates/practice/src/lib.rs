//! A simulated car with hidden true values, for learning, for the demo and for the closed-loop benchmark.
//!
//! - [`Rig`]: a car with every value known, as bodies and springs in space; it finds its own position of rest from
//!   energies and shares no formula with the planner's model.
//! - [`PracticeCar`]: a rig that was invented from a seed, with pads, instruments, friction and perhaps a [`Fault`]. A
//!   person copies its [`DataSheet`], sets a [`Configuration`] and an [`AlignmentState`], and looks.
//!
//! Every figure that is seen follows from the seed, the configuration and the numbers of settle and look, so that a
//! job that is replayed sees the same figures.
//!
//! Deliberately absent: clocks, files, any generator that lives between calls, and the crates that predict and plan.
//! Inside, SI units; at the edges mm, kg, N/mm, degrees and bar. Axes as ISO 8855.

mod alignment;
mod bench;
mod configuration;
mod data_sheet;
mod equilibrium;
mod fault;
mod invent;
mod links;
mod noise;
mod pads;
mod pose;
mod rig;
mod strut;

pub use alignment::{AlignmentState, Angles};
pub use bench::{Looked, PracticeCar};
pub use configuration::{Configuration, LinkState, PracticeError};
pub use data_sheet::{DataSheet, DriverSide, Instruments, PerAxle, PerSide, TieRod};
pub use equilibrium::EquilibriumError;
pub use fault::Fault;
pub use links::LinkFit;
pub use rig::{BarState, CornerState, PointMass, Reading, Rig, RigError, Standing, Wheel};
pub use strut::Strut;
