//! Two honest models of habit. Both look at the cross weight of the mean reading and leave the car alone when it is
//! inside.

use crate::Work;
use crate::class::{Class, Reading, Subject};
use bayhand_chassis::Figures;

fn error_pct(readings: &[Reading]) -> f64 {
    readings.iter().map(|r| Figures::of(&r.loads_kg).cross_pct - 50.0).sum::<f64>() / readings.len() as f64
}

/// Raising this corner adds to the cross weight (FR, RL) or takes from it.
const SIGNS: [f64; 4] = [-1.0, 1.0, 1.0, -1.0];

/// One corner at a time, the next one each round, by a rule of thumb (percent of cross weight per millimetre of collar)
/// that follows what the last round did.
pub struct OneCorner {
    pct_per_mm: f64,
    round: usize,
    /// Error before the last turning, and the collar travel that was to take from it, mm.
    last: Option<(f64, f64)>,
}

impl OneCorner {
    pub fn of(pct_per_mm: f64) -> OneCorner {
        OneCorner { pct_per_mm, round: 0, last: None }
    }
}

impl Work for OneCorner {
    fn turn(&mut self, subject: &Subject, class: &Class, readings: &[Reading], _: [i32; 4]) -> [i32; 4] {
        let error = error_pct(readings);
        if let Some((before, mm)) = self.last
            && mm.abs() > 0.5
        {
            let seen = (before - error) / mm;
            // Nobody believes a rule that is three times another from one round.
            self.pct_per_mm = seen.clamp(self.pct_per_mm / 3.0, self.pct_per_mm * 3.0);
        }
        if error.abs() <= class.window_pct {
            self.last = None;
            return [0; 4];
        }
        let mm = error / self.pct_per_mm;
        let steps = (mm / subject.step_mm).round().clamp(-f64::from(subject.steps), f64::from(subject.steps));
        self.last = Some((error, steps * subject.step_mm));
        let corner = [0, 3, 1, 2][self.round % 4];
        self.round += 1;
        let mut turned = [0; 4];
        turned[corner] = (-SIGNS[corner] * steps) as i32;
        turned
    }
}

/// All four corners at once, by whole quarter turns.
pub struct FourCorners {
    pct_per_quarter: f64,
}

impl FourCorners {
    pub fn of(pct_per_quarter: f64) -> FourCorners {
        FourCorners { pct_per_quarter }
    }
}

impl Work for FourCorners {
    fn turn(&mut self, subject: &Subject, class: &Class, readings: &[Reading], _: [i32; 4]) -> [i32; 4] {
        let error = error_pct(readings);
        if error.abs() <= class.window_pct {
            return [0; 4];
        }
        let quarters = (error / self.pct_per_quarter).round();
        let steps = (quarters * subject.quarter_turn_steps).round();
        SIGNS.map(|sign| (-sign * steps) as i32)
    }
}
