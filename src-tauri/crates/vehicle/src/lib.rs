//! What a car, its adjusters, pads and instruments are: plain types and their validity.
//!
//! Axes are those of ISO 8855: x forward, y left, z up. Corners always stand in the order FL, FR, RL, RR.
//! Every field carries its unit in its name. A load in kilograms is what a scale shows: force / 9.80665 m/s².
//!
//! - [`Corners`]: one value for each corner.
//! - [`Car`]: what statics needs to know of a car; the same JSON as `bayhand-cli` reads.
//! - [`Adjuster`], [`Thread`]: how a spring collar moves, and which way it turns.
//! - [`EnteredRatio`]: a motion ratio as it was entered, in either convention of the trade.
//! - [`SprungLike`]: what stands in for springs that nobody knows.
//! - [`Link`]: the thread of an anti-roll bar's link, and which way it turns.
//! - [`CarError`]: what is wrong with a car that cannot be, by field, value and range.
//!
//! Deliberately absent: arithmetic beyond validity, files, clocks.

mod adjuster;
mod car;
mod corners;
mod link;
mod ratio;
mod springing;

pub use adjuster::{Adjuster, Hand, SpringSeat, Thread, Turning};
pub use car::{Bar, Bars, Beam, Beams, Car, CarError, Corner, HeightPoint, Sprung};
pub use corners::{Axle, Corners, Place};
pub use link::{Lengthening, Link};
pub use ratio::{ASK_BACK_ABOVE, EnteredRatio, RatioConvention};
pub use springing::SprungLike;

/// Standard gravity in m/s² (ISO 80000-3; 3rd CGPM 1901): what makes a scale's kilogram of a newton.
pub const STANDARD_GRAVITY: f64 = 9.806_65;
