//! The linear statics against an independent 3-D rigid-body engine.

use bayhand_chassis::{From, To, predict};
use bayhand_vehicle::{Car, Corners};
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    car: Car,
    readings: Vec<From>,
}

/// Class I: `data/statics.json`, origin in `data/ORIGIN.md`. Each change is predicted from the car's first reading.
#[test]
fn every_reference_change_is_met() {
    let text = include_str!("data/statics.json");
    let Cases { cases } = serde_json::from_str(text).expect("the reference cases");
    assert_eq!(cases.len(), 24, "all reference cars are there");
    let mut worst = (0.0_f64, 0.0_f64);
    for case in &cases {
        let (first, changes) = case.readings.split_first().expect("a first reading");
        assert_eq!(changes.len(), 3, "{}: three changes", case.name);
        for (number, after) in changes.iter().enumerate() {
            let to = To { collar_mm: after.collar_mm, pads_mm: after.pads_mm };
            let found = predict(&case.car, first, &to).expect("a prediction");
            let (kg, mm) = (apart(&found.loads_kg, &after.loads_kg), apart(&found.heights_mm, &after.heights_mm));
            assert!(kg <= 0.01, "{} change {number}: loads are {kg} kg off", case.name);
            assert!(mm <= 0.01, "{} change {number}: heights are {mm} mm off", case.name);
            assert!(found.states.is_empty(), "{} change {number}: an ordinary state", case.name);
            worst = (worst.0.max(kg), worst.1.max(mm));
        }
    }
    println!("worst of 72 changes: {:.4} kg, {:.4} mm", worst.0, worst.1);
}

fn apart(a: &Corners<f64>, b: &Corners<f64>) -> f64 {
    a.iter().map(|(p, v)| (v - b.at(p)).abs()).fold(0.0, f64::max)
}
