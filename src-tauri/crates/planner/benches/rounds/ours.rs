//! The planner, told only what a person at the car would enter: the data sheet, the usual confidence, and the usual
//! friction of half a kilogram a settle, whatever the truth is.

use crate::Work;
use crate::class::{Class, HEIGHT_MM, LOOK_KG, RESOLUTION_KG, Reading, Subject};
use bayhand_chassis::Pads;
use bayhand_planner::{Confidence, Limits, Minutes, Price, Problem, Round, Wish, Wishes, optimum};
use bayhand_vehicle::{Adjuster, Corners, Place};

/// Friction of a settle that is assumed before any was seen, kg at FL.
const SETTLE_KG: f64 = 0.5;

/// The readings so far.
#[derive(Default)]
pub struct Ours {
    rounds: Vec<Round>,
    collars: [i32; 4],
}

impl Work for Ours {
    fn turn(&mut self, subject: &Subject, class: &Class, readings: &[Reading], turned: [i32; 4]) -> [i32; 4] {
        for (i, reading) in readings.iter().enumerate() {
            // The settles after the first are the same state read again.
            let turned_steps = Corners::from_array(if i == 0 { turned.map(f64::from) } else { [0.0; 4] });
            self.rounds.push(Round { turned_steps, loads_kg: reading.loads_kg, heights_mm: reading.heights_mm });
        }
        for (collar, steps) in self.collars.iter_mut().zip(turned) {
            *collar += steps;
        }
        let height = |p: Place| Some(Wish { target: *subject.wanted_mm.at(p), window: 3.0, weight: 0.05 });
        let problem = Problem {
            car: subject.entered,
            confidence: Confidence::default(),
            adjusters: Corners::from_fn(|p| Adjuster {
                step_mm: subject.step_mm,
                up_steps: subject.steps - self.collars[p.index()],
                down_steps: subject.steps + self.collars[p.index()],
            }),
            limits: Limits { height_diff_front_mm: Some(7.5), height_diff_rear_mm: Some(7.5), ..Limits::default() },
            wishes: Wishes {
                cross_pct: Some(Wish { target: 50.0, window: class.window_pct, weight: 1.0 }),
                heights_mm: Corners::from_fn(height),
                ..Wishes::default()
            },
            price: Price { per_collar: 0.002, per_step: 0.0002 },
            pads: Pads {
                resolution_kg: RESOLUTION_KG,
                look_kg: LOOK_KG,
                settle_kg: SETTLE_KG,
                level_mm: 0.05,
                height_mm: HEIGHT_MM,
                patch_mm: 0.0,
            },
            rounds: self.rounds.clone(),
            known: None,
            minutes: Minutes::default(),
        };
        optimum(&problem).expect("a plan").steps.to_array()
    }
}
