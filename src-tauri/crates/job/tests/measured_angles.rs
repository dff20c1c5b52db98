//! Angles from raw readings at the practice car, whose links know nothing of the formulas that clear them, against the
//! true ones: the stated uncertainty is what they scatter by.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

// The bench's person at the instruments.
#[path = "../benches/align/bay.rs"]
#[allow(dead_code, reason = "the bench plans with it too")]
mod bay;

use bay::{Reading, agreed};
use bayhand_chassis::align::KnownAngle;
use bayhand_practice::PracticeCar;
use bayhand_vehicle::Place;

/// Errors in units of their standard uncertainty.
#[derive(Default)]
struct Errors(Vec<f64>);

impl Errors {
    fn push(&mut self, known: &KnownAngle, truth_deg: f64) {
        self.0.push((known.deg - truth_deg) / known.standard_deg);
    }

    /// Their root of the mean square lies between these, and at least this share within two.
    fn check(&self, what: &str, least: f64, most: f64, within_two: f64) {
        let n = self.0.len() as f64;
        let spread = (self.0.iter().map(|e| e * e).sum::<f64>() / n).sqrt();
        let share = self.0.iter().filter(|e| e.abs() <= 2.0).count() as f64 / n;
        println!("{what}: {spread:.3} standard uncertainties, {:.1} % within two, over {n}", 100.0 * share);
        assert!((least..most).contains(&spread), "{what}: spread by {spread} standard uncertainties");
        assert!(share >= within_two, "{what}: {share} within two standard uncertainties");
    }
}

#[test]
fn stated_uncertainty_is_what_angles_scatter_by() {
    let (mut toe, mut camber, mut caster) = (Errors::default(), Errors::default(), Errors::default());
    for seed in 2_000..2_200 {
        let car = PracticeCar::from_seed(seed);
        let set = car.ready();
        let (truth, read) = (car.angles(&set, 0).unwrap(), Reading::of(&car, &set, &agreed(&car), 0));
        for place in Place::ALL {
            toe.push(read.angles.toe.at(place), *truth.toe_deg.at(place));
            camber.push(read.angles.camber.at(place), *truth.camber_deg.at(place));
        }
        caster.push(&read.caster[0], truth.caster_deg.left);
        caster.push(&read.caster[1], truth.caster_deg.right);
    }
    toe.check("toe", 0.8, 1.2, 0.93);
    camber.check("camber", 0.6, 1.2, 0.93);
    caster.check("caster", 0.6, 1.2, 0.93);
}
