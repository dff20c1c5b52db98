//! A simulated car.
mod equilibrium;
mod pose;
mod rig;
mod strut;

pub use equilibrium::EquilibriumError;
pub use rig::{BarState, CornerState, PointMass, Reading, Rig, RigError, Standing, Wheel};
pub use strut::Strut;
