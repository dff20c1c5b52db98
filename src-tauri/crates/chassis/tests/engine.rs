//! `predict` against an independent 3-D rigid-body engine on 225 invented cars: torsion, unequal tracks, lifted wheels,
//! bump stops, droop limits, bars with preload and beam axles. Class I: `data/engine.json`, made by
//! `data/make_statics.py` with MuJoCo; the seed stands in both.

#[path = "common/engine.rs"]
mod engine;

use bayhand_chassis::{State, To, predict};
use bayhand_vehicle::{Corners, Place};
use engine::Fixture;
use std::collections::BTreeMap;

/// What was seen of one kind of car.
#[derive(Default)]
struct Seen {
    cars: usize,
    changes: usize,
    lifted: usize,
    at_stop: usize,
    worst_kg: f64,
    worst_mm: f64,
}

#[test]
fn every_change_of_225_cars_is_met() {
    let fixture = Fixture::read();
    let mut kinds: BTreeMap<&str, Seen> = BTreeMap::new();
    for (number, case) in fixture.cases.iter().enumerate() {
        let seen = kinds.entry(&case.kind).or_default();
        seen.cars += 1;
        let (first, changes) = case.readings.split_first().expect("a first reading");
        for after in changes {
            let to = To { collar_mm: after.collar_mm, pads_mm: after.pads_mm };
            let found = predict(&case.car, &first.standing(), &to).expect("a prediction");
            let of = |wanted: fn(&State) -> Option<Place>| found.states.iter().filter_map(wanted).collect::<Vec<_>>();
            let lifted = of(|s| if let State::WheelLifted { place } = s { Some(*place) } else { None });
            let at_stop = of(|s| match s {
                State::OnBumpStop { place } | State::ToppedOut { place } => Some(*place),
                _ => None,
            });
            let what = format!("car {number}, {}, {:?}", case.kind, found.states);
            assert_eq!(lifted, after.lifted, "{what}: wheels off their pads");
            assert_eq!(at_stop, after.at_stop, "{what}: struts at a stop");
            let (kg, mm) = (apart(&found.loads_kg, &after.loads_kg), apart(&found.heights_mm, &after.heights_mm));
            assert!(kg <= 0.01, "{what}: loads are {kg} kg off");
            assert!(mm <= 0.01, "{what}: heights are {mm} mm off");
            seen.changes += 1;
            seen.lifted += usize::from(!lifted.is_empty());
            seen.at_stop += usize::from(!at_stop.is_empty());
            (seen.worst_kg, seen.worst_mm) = (seen.worst_kg.max(kg), seen.worst_mm.max(mm));
        }
    }
    println!("{}, seed {}", fixture.engine, fixture.seed);
    for (kind, s) in &kinds {
        println!(
            "{kind}: {} cars, {} changes, {} with a wheel lifted, {} at a stop; worst {:.4} kg, {:.4} mm",
            s.cars, s.changes, s.lifted, s.at_stop, s.worst_kg, s.worst_mm
        );
    }
    assert!(kinds.values().map(|s| s.cars).sum::<usize>() >= 200, "at least 200 cars");
    assert!(kinds.values().all(|s| s.cars >= 20), "at least 20 of each kind");
    assert!(kinds["wheel lifted"].lifted >= 20, "wheels lift");
    assert!(kinds["on bump stop"].at_stop >= 20 && kinds["topped out"].at_stop >= 20, "stops are reached");
}

fn apart(a: &Corners<f64>, b: &Corners<f64>) -> f64 {
    a.iter().map(|(p, v)| (v - b.at(p)).abs()).fold(0.0, f64::max)
}
