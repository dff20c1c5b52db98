//! The cars of the independent engine: `data/engine.json`, made by `data/make_statics.py`; class I.
#![allow(dead_code, reason = "each test file uses its own part")]

use bayhand_chassis::From;
use bayhand_vehicle::{Car, Corners, Place};
use serde::Deserialize;

#[derive(Deserialize)]
pub struct Fixture {
    pub engine: String,
    pub seed: u64,
    pub cases: Vec<Case>,
}

/// A car with a first reading and changes; of those with one bar also the reading with its links released, and by how
/// much the bar was off, mm at the wheels.
#[derive(Deserialize)]
pub struct Case {
    pub kind: String,
    pub car: Car,
    pub readings: Vec<Reading>,
    pub released: Option<Reading>,
    pub misfit_mm: Option<Misfit>,
}

#[derive(Clone, Copy, Deserialize)]
pub struct Misfit {
    pub front: Option<f64>,
    pub rear: Option<f64>,
}

#[derive(Deserialize)]
pub struct Reading {
    pub collar_mm: Corners<f64>,
    pub pads_mm: Corners<f64>,
    pub loads_kg: Corners<f64>,
    pub heights_mm: Corners<f64>,
    #[serde(default)]
    pub lifted: Vec<Place>,
    #[serde(default)]
    pub at_stop: Vec<Place>,
}

impl Fixture {
    pub fn read() -> Fixture {
        serde_json::from_str(include_str!("../data/engine.json")).expect("the engine's cases")
    }
}

impl Reading {
    pub fn standing(&self) -> From {
        let Reading { collar_mm, pads_mm, loads_kg, heights_mm, .. } = *self;
        From { collar_mm, pads_mm, loads_kg, heights_mm }
    }
}
