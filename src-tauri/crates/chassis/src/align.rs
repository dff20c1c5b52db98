//! Alignment: wheels as planes, steering axes, sweeps, toe from lines, and what adjusters do.
//!
//! Axes of ISO 8855:2011: x forward, y left, z up, square to the plane that the wheels stand on. Signs are those of
//! the trade and of the standard alike: toe-in positive, camber negative when the top leans in, caster positive when
//! the steering axis leans back at its top, its inclination positive when it leans in at its top. A heading is positive
//! to the left (yaw). Angles are degrees at every edge.
//!
//! - [`Wheel`], [`SteeringAxis`]: exact rotations; [`StandardCamber`] and [`GaugeCamber`] are kept apart.
//! - [`Sweep`]: caster and inclination from gauge readings at several steer angles.
//! - [`AxleToe`], [`toe_mm`]: toe, total, thrust, set-back, steering centre.
//! - [`Lines`]: toe from strings or lasers beside the car.
//! - [`CamberReading`], [`FloorSlope`], [`reversed`]: camber from a gauge, cleared of bias, floor and run-out.
//! - [`Adjuster`], [`Learned`]: turns or shims for a change, and what else they change.
//!
//! Deliberately absent: the suspension as linkages. How angles move with ride height is entered or learned.

mod adjuster;
mod axis;
mod camber;
mod effect;
mod gauge;
mod known;
mod line;
mod sweep;
mod toe;
mod wheel;

pub use adjuster::{Adjuster, RodPlace, Setting, Unit, tie_rod_turns};
pub use axis::SteeringAxis;
pub use camber::{CamberReading, CamberSpread, KnownCamber};
pub use effect::{Learned, Response};
pub use gauge::{FloorSlope, Reversed, camber_from_plumb, reversed};
pub use known::KnownAngle;
pub use line::{Closing, LineAngles, LineSpread, Lines, WheelToLine};
pub use sweep::{Sweep, SweepReading, SweepSpread, Swept, Usual, caster_of_symmetric_sweep_deg};
pub use toe::{
    AxleToe, front_toe_for_straight_deg, set_back, steering_off, toe_from_edges_deg, toe_from_mm_deg, toe_minutes,
    toe_mm,
};
pub use wheel::{GaugeCamber, Side, StandardCamber, Wheel};
