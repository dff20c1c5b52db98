//! A simulated car with hidden true values, for learning, for the demo and for the closed-loop benchmark.
//!
//! - [`Rig`]: a car with every value known, as bodies and springs in space; it finds its own position of rest from
//!   energies and shares no formula with the planner's model.
//! - [`PracticeCar`]: a rig that was invented from a seed, with pads, instruments, friction and perhaps [`Fault`]s. A
//!   person copies its [`DataSheet`], sets a [`Configuration`], turns of the alignment included, and looks.
//! - [`Angles`]: where its wheels point and lean, from five links to each upright, solved in space (`linkage`).
//! - [`TrueValues`]: what the sheet and the instruments do not tell, for tests that compare estimates with the truth.
//!
//! Friction is dry friction in the struts and between tyres and pads, carried through the moves of each settle; what it
//! holds in the end is the settle's error. Nothing is added to a load that was not a force on some part of the car.
//!
//! Every figure that is seen follows from the seed, the configuration and the numbers of settle and look, so that a
//! job that is replayed sees the same figures.
//!
//! Deliberately absent: clocks, files, any generator that lives between calls, and the crates that predict and plan.
//! Inside, SI units; at the edges mm, kg, N/mm, degrees and bar. Axes as ISO 8855.

mod alignment;
mod angle_bench;
mod bench;
mod configuration;
mod data_sheet;
mod equilibrium;
mod fault;
mod friction;
mod invent;
mod linkage;
mod links;
mod noise;
mod pads;
mod pose;
mod reality;
mod rig;
mod settle;
mod strut;
mod truth;

pub use alignment::{AlignmentState, Angles};
pub use angle_bench::{LinesSeen, RunOutSeen, SweepSeen, WheelSeen};
pub use bench::{Looked, PracticeCar};
pub use configuration::{Configuration, Freeing, LinkState, PracticeError};
pub use data_sheet::{Couplings, DataSheet, DriverSide, Instruments, PerAxle, PerSide, TieRod};
pub use equilibrium::EquilibriumError;
pub use fault::Fault;
pub use friction::DryFriction;
pub use links::LinkFit;
pub use reality::Difference;
pub use rig::{BarState, CornerState, PointMass, Reading, Rig, RigError, Scrub, Standing, Wheel};
pub use strut::Strut;
pub use truth::TrueValues;
