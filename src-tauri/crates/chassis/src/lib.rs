//! How the car stands: what a millimetre of collar or pad does to loads and heights, and how well that is known.
//!
//! The sprung body has heave, pitch and roll, and where its torsion is known it stands as two halves over the axles.
//! Springs act through their motion ratio, in series with the tyres; a beam axle has one ratio in heave and another in
//! roll; connected anti-roll bars couple an axle; the mass centre moves sideways as the body leans. All of it is linear
//! about the reading it starts from, but for three things: contacts that change (a wheel lifts, a strut comes to an end
//! of its travel, a spring comes loose), which are followed one by one, and the lean of the body, to the last digit.
//!
//! To follow the arithmetic with a textbook open, read `rates` (springs), `suspension` (axles), `body` (movements and
//! weight), `system` (the equations), `rest` (contacts), `lean` (beyond the linear), in this order.
//!
//! - [`Sensitivity`]: loads and heights per millimetre of lift at the wheel and per millimetre of pad.
//! - [`predict`]: the reading after collars and pads were moved.
//! - [`Figures`]: total, front, left and cross shares, side differences of four loads.
//! - [`trade_line`]: all that collars can do to the loads of a car on level pads; [`one_step`],
//!   [`reached_in_whole_steps`]: the same in steps of the adjusters; [`share_shift`]: what roll and pitch move beside it.
//! - [`link_preload`], [`link_turns`]: what connecting a bar did, and the turns of its link that take it out.
//! - [`PadPlane`]: four pad heights as mean, pitch, side tilt and twist, and the loads they cause.
//! - [`mass_centre`], [`centre_height`]: where the mass is, from loads and from a lift; [`after_mass_change`] and
//!   [`reach`]: what moving mass does, and what to move.
//! - [`align`]: wheels as planes, steering axes, sweeps, toe from lines, adjusters.
//! - [`tyre`]: pressure and temperature, and what a pressure difference does to loads.
//! - [`Spread`], [`Verdict`]: what is known of a reading, and what can be said against a window.
//! - [`reading`]: where the uncertainty of a reading comes from, what it says of each figure, what would help.
//! - [`Confidence`], [`UnknownFactor`]: how wrong the entered springs and ratios may be.
//! - [`plausible`]: whether readings of like state agree, and what single thing explains it if they do not.
//!
//! Axes are those of ISO 8855; corners stand in the order FL, FR, RL, RR; loads are kilograms as a scale shows them.
//!
//! Deliberately absent: choosing what to turn (that is the planner), words for people, files, clocks.

pub mod align;
mod body;
mod doubt;
mod error;
mod figures;
mod geometry;
mod lean;
mod links;
mod mass;
mod pads;
pub mod plausible;
mod predict;
mod rates;
pub mod reading;
mod regression;
mod rest;
mod sensitivity;
mod spread;
mod steps;
mod suspension;
mod system;
mod trade;
pub mod tyre;

pub use doubt::{Confidence, Scaled, UnknownFactor, unknown_factors, with_factors};
pub use error::StaticsError;
pub use figures::Figures;
pub use geometry::{diagonal, twist};
pub use links::{LinkPreload, LinkTurns, link_preload, link_turns};
pub use mass::{
    AxleRates, Ballast, CentreHeight, CentreSpread, Going, HeightPart, LengthSpread, Lift, LiftSpread, LiftStep,
    LiftTest, MassCentre, MassChange, MassEffect, Movable, Move, Reach, Share, Short, Spot, Suspension,
    after_mass_change, ballast_to_reach, carried, centre_height, mass_centre, mass_centre_height_mm,
    mass_centre_spread, moment_to_left_kg_mm, reach,
};
pub use pads::{PadPlane, side_tilt_limit_mm, twist_limit_mm};
pub use predict::{From, Predicted, State, To, predict};
pub use rates::{DEFAULT_MOTION_RATIO, Rates, RideHz, in_series, ride_hz, wheel_rate};
pub use regression::Line;
pub use sensitivity::{PatchShift, Sensitivity, diagonal_gain, lift_without_height};
pub use spread::{COVERAGE, Pads, Spread, Verdict, expanded_figures, judge};
pub use steps::{OneStep, Reached, ShareShift, one_step, reached_in_whole_steps, share_shift};
pub use trade::{Mark, TradePoint, trade_line};
