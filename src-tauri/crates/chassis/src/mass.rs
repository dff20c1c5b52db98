//! The mass of the car: where its centre is, how high, what moving mass does, and what to move for a wanted share.
//!
//! Places are `behind_front_axle_mm` (as a car's data have them) and `left_mm` (ISO 8855: left positive).
//! Collars can do none of this: they leave the total and both moments of the loads alone.

mod centre;
mod change;
mod height;
mod lift;
mod reach;

pub use centre::{CentreSpread, LengthSpread, MassCentre, mass_centre, mass_centre_spread, moment_to_left_kg_mm};
pub use change::{MassChange, MassEffect, Spot, after_mass_change, carried};
pub use height::{CentreHeight, HeightPart, LiftSpread, centre_height, mass_centre_height_mm};
pub use lift::{AxleRates, Going, Lift, LiftStep, LiftTest, Suspension};
pub use reach::{Ballast, Movable, Move, Reach, Share, Short, ballast_to_reach, reach};
