//! The rule that no stated uncertainty can talk away: collars do not move load from the left to the right.

use super::question::LikeReading;
use bayhand_vehicle::Corners;
use statrs::function::erf::erfc;

/// Change of left minus right that collars do not make while the heights stay, kg.
const LEFT_MINUS_RIGHT_KG: f64 = 20.0;
/// Heights stay when none has moved by this, mm.
const HEIGHT_MM: f64 = 10.0;
/// Most that left minus right is allowed to be uncertain by, one sigma, kg: a bay that is worse cannot judge a car.
/// With it the chance-probability of the change above is 0.4 %, below [`super::CONSISTENT_P`].
const MOST_SIGMA_KG: f64 = 7.0;

/// The smallest chance-probability that this rule gives any two of the readings; one when it has nothing to say.
///
/// Left minus right changes by about 0.3 kg per mm of side-to-side height (model.md, statics 2). A change of more
/// than 20 kg while no height moved by 10 mm is something else, whatever spread the pads are said to have.
pub(crate) fn least_p(rounds: &[LikeReading]) -> f64 {
    let side = |l: &Corners<f64>| l.fl + l.rl - l.fr - l.rr;
    let mut least = 1.0_f64;
    for (i, before) in rounds.iter().enumerate() {
        for after in &rounds[i + 1..] {
            let stayed = after.heights_mm.iter().all(|(p, mm)| (mm - before.heights_mm.at(p)).abs() < HEIGHT_MM);
            let moved_kg = (side(&after.loads_kg) - side(&before.loads_kg)).abs();
            if stayed && moved_kg > LEFT_MINUS_RIGHT_KG {
                least = least.min(erfc(moved_kg / MOST_SIGMA_KG / std::f64::consts::SQRT_2));
            }
        }
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(left_minus_right_kg: f64, fl_mm: f64) -> LikeReading {
        let (half, level) = (left_minus_right_kg / 4.0, 120.0);
        LikeReading {
            turned_steps: Corners::same(0.0),
            loads_kg: Corners { fl: 300.0 + half, fr: 300.0 - half, rl: 250.0 + half, rr: 250.0 - half },
            heights_mm: Corners { fl: level + fl_mm, fr: level, rl: level, rr: level },
        }
    }

    /// The rule speaks of more than 20 kg while every height stayed within 10 mm, between any two readings.
    #[test]
    fn it_speaks_only_where_the_trade_does() {
        let check = |readings: &[LikeReading], speaks: bool| {
            assert_eq!(least_p(readings) < 0.01, speaks, "{readings:?}");
        };
        check(&[reading(0.0, 0.0), reading(-21.0, 0.0)], true);
        check(&[reading(0.0, 0.0), reading(21.0, 9.9)], true);
        check(&[reading(0.0, 0.0), reading(-20.0, 0.0)], false);
        check(&[reading(0.0, 0.0), reading(-21.0, 10.0)], false);
        check(&[reading(0.0, 0.0), reading(-11.0, 0.0), reading(-22.0, 0.0)], true);
        check(&[reading(-30.0, 0.0)], false);
    }
}
