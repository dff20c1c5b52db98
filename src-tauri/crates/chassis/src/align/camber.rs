//! Camber from what a gauge shows, cleared of all that is not the wheel, in both meanings and with its uncertainty.

use super::gauge::FloorSlope;
use super::known::{Input, KnownAngle, angles, propagate};
use super::wheel::{GaugeCamber, Side, Wheel};
use crate::StaticsError;
use crate::error::within;

/// What a gauge across the wheel showed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CamberReading {
    /// The wheel's side.
    pub side: Side,
    /// Toe of the wheel while it was read, degrees.
    pub toe_deg: f64,
    /// What the gauge showed, degrees, positive when the top leans out.
    pub shown_deg: f64,
    /// What it showed with the wheel turned by half a turn, where rim run-out is to be taken out.
    pub half_a_turn_on_deg: Option<f64>,
    /// What it shows on a level place, degrees (see [`super::reversed`]).
    pub bias_deg: f64,
    /// The floor.
    pub floor: FloorSlope,
}

/// Standard uncertainties of a camber reading, degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CamberSpread {
    /// One look at the gauge.
    pub gauge_deg: f64,
    /// The bias.
    pub bias_deg: f64,
    /// The toe.
    pub toe_deg: f64,
    /// Either slope of the floor.
    pub floor_deg: f64,
    /// Run-out of the rim that was not taken out; it counts only without the second look.
    pub run_out_deg: f64,
}

/// Camber in both meanings. They are two angles of one wheel and share their uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KnownCamber {
    /// Inclination to the floor's normal, as a gauge reads it on level ground ([`GaugeCamber`]).
    pub gauge: KnownAngle,
    /// As the standard defines it ([`super::StandardCamber`]).
    pub standard: KnownAngle,
}

impl CamberReading {
    /// The camber.
    ///
    /// # Errors
    /// Values that cannot be.
    pub fn camber(&self, spread: &CamberSpread) -> Result<KnownCamber, StaticsError> {
        for (field, value) in [
            ("gauge_deg", spread.gauge_deg),
            ("bias_deg", spread.bias_deg),
            ("toe_deg", spread.toe_deg),
            ("floor_deg", spread.floor_deg),
            ("run_out_deg", spread.run_out_deg),
        ] {
            within(&format!("spread.{field}"), value, 0.0, 5.0, "from 0 to 5 degrees")?;
        }
        let (second_look, run_out) = match self.half_a_turn_on_deg {
            Some(_) => (spread.gauge_deg, 0.0),
            None => (0.0, spread.run_out_deg),
        };
        let inputs = [
            Input { value: self.shown_deg, standard: spread.gauge_deg.hypot(run_out) },
            Input { value: self.half_a_turn_on_deg.unwrap_or(self.shown_deg), standard: second_look },
            Input { value: self.bias_deg, standard: spread.bias_deg },
            Input { value: self.toe_deg, standard: spread.toe_deg },
            Input { value: self.floor.rise_forward_deg, standard: spread.floor_deg },
            Input { value: self.floor.rise_left_deg, standard: spread.floor_deg },
        ];
        let [gauge, standard] = angles(&propagate(&inputs, |v| {
            let floor = FloorSlope { rise_forward_deg: v[4], rise_left_deg: v[5] };
            // One look stands for both, moved together.
            let second = if self.half_a_turn_on_deg.is_some() { v[1] } else { v[0] };
            self.cambers_deg([v[0], second], v[2], v[3], &floor)
        })?);
        Ok(KnownCamber { gauge, standard })
    }

    /// Both cambers of the wheel between two looks.
    fn cambers_deg(
        &self,
        shown_deg: [f64; 2],
        bias_deg: f64,
        toe_deg: f64,
        floor: &FloorSlope,
    ) -> Result<[f64; 2], StaticsError> {
        let heading_deg = -self.side.sign() * toe_deg;
        let rim = |shown: f64| {
            let lean = floor.taken_out(self.side, heading_deg, GaugeCamber { deg: shown - bias_deg })?;
            Wheel::from_gauge(self.side, toe_deg, lean)
        };
        let (wheel, _) = Wheel::without_run_out(&rim(shown_deg[0])?, &rim(shown_deg[1])?)?;
        Ok([wheel.gauge_camber().deg, wheel.standard_camber().deg])
    }
}
