//! How wrong the entered car data may be: factors on spring rates and motion ratios, with their standard uncertainty.

use super::question::Confidence;
use crate::Rates;
use bayhand_vehicle::{Car, Corner, Corners, Place};

/// One sigma of the logarithm of a wheel rate that nobody entered: a ride frequency of 1.7 to 3.2 Hz as two sigmas
/// either way (the rate goes with its square). Common practice, no source.
fn wide_rate() -> f64 {
    2.0 * (3.2_f64 / 1.7).ln() / 4.0
}

/// One sigma of the logarithm of a motion ratio that nobody entered: 0.6 to 1 as two sigmas either way. Common
/// practice, no source.
fn wide_ratio() -> f64 {
    (1.0_f64 / 0.6).ln() / 4.0
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Scaled {
    Spring,
    MotionRatio,
}

/// A factor that is not known; its logarithm has this standard uncertainty.
#[derive(Clone, Debug)]
pub(crate) struct Unknown {
    what: Scaled,
    places: Vec<Place>,
    pub(crate) sigma: f64,
}

/// The unknown factors of a car: common to left and right of an axle where both are entered equal.
pub(crate) fn unknowns(car: &Car, confidence: &Confidence) -> Vec<Unknown> {
    let mut all = Vec::new();
    for axle in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]] {
        let springs = axle.map(|p| car.corners.at(p).spring_n_per_mm);
        let ratios = axle.map(|p| car.corners.at(p).motion_ratio);
        of_axle(&mut all, Scaled::Spring, axle, springs, confidence.spring_pct / 100.0, wide_rate());
        of_axle(&mut all, Scaled::MotionRatio, axle, ratios, confidence.motion_ratio_pct / 100.0, wide_ratio());
    }
    all.retain(|unknown| unknown.sigma > 0.0);
    all
}

fn of_axle(
    all: &mut Vec<Unknown>,
    what: Scaled,
    places: [Place; 2],
    entered: [Option<f64>; 2],
    stated: f64,
    wide: f64,
) {
    let sigma = |value: Option<f64>| if value.is_some() { stated } else { wide };
    if entered[0] == entered[1] {
        all.push(Unknown { what, places: places.to_vec(), sigma: sigma(entered[0]) });
    } else {
        all.extend(places.iter().zip(entered).map(|(p, v)| Unknown { what, places: vec![*p], sigma: sigma(v) }));
    }
}

/// The car with one factor off by `log`.
pub(crate) fn with_factor(car: &Car, unknown: &Unknown, log: f64) -> Car {
    let rates = Rates::of(car);
    let corners = Corners::from_fn(|p| {
        let corner = car.corners.at(p);
        if !unknown.places.contains(&p) {
            return *corner;
        }
        let (ratio, wheel) = (*rates.motion_ratio.at(p), *rates.wheel_n_per_mm.at(p));
        let factor = log.exp();
        let (ratio, spring) = match unknown.what {
            Scaled::Spring => (ratio, wheel / (ratio * ratio) * factor),
            // A wheel rate that was assumed stays when the ratio changes; an entered spring does.
            Scaled::MotionRatio => {
                let new = ratio * factor;
                (new, corner.spring_n_per_mm.unwrap_or(wheel / (new * new)))
            }
        };
        Corner {
            motion_ratio: Some(ratio.clamp(0.1, 3.0)),
            spring_n_per_mm: Some(spring.clamp(1.0, 5_000.0)),
            ..*corner
        }
    });
    Car { corners, ..*car }
}
