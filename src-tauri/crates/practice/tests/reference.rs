//! The simulated car against an independent engine (source class I, see `data/ORIGIN.md`).

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_practice::{Reading, Rig};
use bayhand_vehicle::{Car, Corners, Place};
use serde_json::Value;

const LOAD_TOLERANCE_KG: f64 = 0.01;
const HEIGHT_TOLERANCE_MM: f64 = 0.01;

fn corners(reading: &Value, key: &str) -> Corners<f64> {
    serde_json::from_value(reading[key].clone()).unwrap()
}

fn worst(a: &Corners<f64>, b: &Corners<f64>) -> f64 {
    Place::ALL.into_iter().map(|p| (a.at(p) - b.at(p)).abs()).fold(0.0, f64::max)
}

/// Built from the first reading of a case, the car stands at each of its readings as the engine's car does.
#[test]
fn stands_as_the_engine_says() {
    let data: Value = serde_json::from_str(include_str!("data/statics.json")).unwrap();
    let cases = data["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 24, "all cases are read");
    let (mut most_kg, mut most_mm): (f64, f64) = (0.0, 0.0);
    for case in cases {
        let car: Car = serde_json::from_value(case["car"].clone()).unwrap();
        let readings = case["readings"].as_array().unwrap();
        let first = Reading {
            loads_kg: corners(&readings[0], "loads_kg"),
            heights_mm: corners(&readings[0], "heights_mm"),
            pads_mm: corners(&readings[0], "pads_mm"),
            design_heights_mm: Corners::same(car.roll_axis_height_mm),
        };
        let built = Rig::from_reading(&car, &first).unwrap();
        for (number, reading) in readings.iter().enumerate() {
            let mut rig = built.clone();
            for place in Place::ALL {
                let wheel = &mut rig.wheels[place.index()];
                wheel.strut.collar_m =
                    (corners(reading, "collar_mm").at(place) - corners(&readings[0], "collar_mm").at(place)) / 1e3;
                wheel.pad_m = corners(reading, "pads_mm").at(place) / 1e3;
            }
            let standing = rig.stand().unwrap();
            let off_kg = worst(&standing.loads_kg, &corners(reading, "loads_kg"));
            let off_mm = worst(&standing.heights_mm, &corners(reading, "heights_mm"));
            println!("{} reading {number}: {off_kg:.4} kg, {off_mm:.4} mm", case["name"]);
            most_kg = most_kg.max(off_kg);
            most_mm = most_mm.max(off_mm);
        }
    }
    println!("largest differences {most_kg} kg, {most_mm} mm");
    assert!(most_kg < LOAD_TOLERANCE_KG, "loads differ by {most_kg} kg from the engine");
    assert!(most_mm < HEIGHT_TOLERANCE_MM, "heights differ by {most_mm} mm from the engine");
}
