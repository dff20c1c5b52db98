//! How many passes an axle takes that is out by up to two degrees: 500 practice cars, read by their instruments, planned
//! and learned as a job does, turned by whole steps.
//!
//! `cargo xtask bench align [FIRST SEED]`. A pass is a change of the axle's adjusters and a reading of everything. Printed
//! with the seeds, so that any case can be looked at again.
#![allow(clippy::unwrap_used, reason = "a benchmark that cannot be set up should stop")]

mod bay;

use bay::{Reading, agreed, couplings, steps};
use bayhand_job::align::{Agreed, Effects, wheel_plan};
use bayhand_practice::{AlignmentState, Configuration, PracticeCar, Standing};
use bayhand_vehicle::{Axle, Place};

/// Cars.
const CARS: u64 = 500;
/// Passes that are waited for.
const PASSES: usize = 4;
/// The worst that an angle is out by, degrees.
const OUT_DEG: f64 = 2.0;
/// Window of the cross weight, %, as the practice job agrees it.
const CROSS_WINDOW_PCT: f64 = 0.5;

fn main() {
    let first = std::env::args().skip(1).find_map(|a| a.parse().ok()).unwrap_or(1);
    println!("{CARS} practice cars, seeds {first} to {}; one axle out by up to {OUT_DEG} degrees", first + CARS - 1);
    let shares = [("the drawing tells what the adjusters move besides", true), ("nothing is known of that", false)]
        .map(|(papers, told)| {
            println!("\n{papers}");
            inside(first, told)
        });
    for passes in 1..=3 {
        let [told, unknown] = shares.map(|of| of[passes]);
        println!(
            "table: an axle's angles inside after {passes} passes at most, couplings drawn | {told:.1} % | couplings not \
             known | {unknown:.1} % | {:.2} |",
            told / unknown
        );
    }
}

/// Share of the axles whose angles are inside after so many passes at most, percent.
fn inside(first: u64, told: bool) -> [f64; PASSES + 1] {
    let mut passes = [0_u64; PASSES + 1];
    let (mut never, mut truly, mut back) = (Vec::new(), 0, 0);
    let mut most_cross: f64 = 0.0;
    for seed in first..first + CARS {
        let went = align(seed, told);
        match went.passes {
            Some(n) => passes[n] += 1,
            None => never.push(seed),
        }
        truly += u64::from(went.truly_inside);
        back += u64::from(went.cross_moved_pct.abs() > CROSS_WINDOW_PCT);
        most_cross = most_cross.max(went.cross_moved_pct.abs());
    }
    let mut so_far = 0;
    let shares = passes.map(|count| {
        so_far += count;
        100.0 * so_far as f64 / CARS as f64
    });
    for (n, share) in shares.iter().enumerate() {
        println!("inside after {n} passes at most: {share:.1} %");
    }
    println!("not after {PASSES}: seeds {never:?}");
    println!("every angle truly inside at the end: {truly} ({:.1} %)", 100.0 * truly as f64 / CARS as f64);
    println!(
        "the cross weight moved by up to {most_cross:.2} %; by more than its window of {CROSS_WINDOW_PCT} %, so that the \
         final reading leads the job back to the collars: {back} ({:.1} %)",
        100.0 * back as f64 / CARS as f64
    );
    shares
}

struct Went {
    passes: Option<usize>,
    truly_inside: bool,
    cross_moved_pct: f64,
}

/// The axle of a car that is out, and by how much each angle of its wheels: toe, camber, caster, degrees.
fn out_of(seed: u64) -> (Axle, [[f64; 3]; 2]) {
    // An own sequence of numbers: the fractional parts of multiples of irrational roots.
    let number = |k: f64| 2.0 * OUT_DEG * ((seed as f64 * k.sqrt()).fract() - 0.5);
    let axle = if seed.is_multiple_of(2) { Axle::Front } else { Axle::Rear };
    (axle, [[number(2.0), number(3.0), number(5.0)], [number(7.0), number(11.0), number(13.0)]])
}

fn align(seed: u64, told: bool) -> Went {
    let car = PracticeCar::from_seed(seed);
    let (axle, out_deg) = out_of(seed);
    let places = if axle == Axle::Front { [Place::Fl, Place::Fr] } else { [Place::Rl, Place::Rr] };
    let agreed = agreed(&car);
    let mut set = car.ready();
    for (place, out_deg) in places.into_iter().zip(out_deg) {
        let steps = steps(&car, place);
        let turns = std::array::from_fn(|i| out_deg[i] / steps.per_turn_deg[i]);
        turn(&mut set.turned, place, turns);
    }
    let before = car.at_rest(&set, 0).unwrap();
    let mut effects = places.map(|place| {
        let besides = told.then(|| couplings(&car, place));
        Effects::entered(&steps(&car, place), besides.as_ref())
    });
    let mut passes = None;
    let mut read = Reading::of(&car, &set, &agreed, 0);
    for pass in 0..=PASSES {
        if read.inside(axle) {
            passes = Some(pass);
            break;
        }
        let mut turned = [[0.0; 3]; 2];
        for (i, place) in places.into_iter().enumerate() {
            let plan = wheel_plan(
                &effects[i],
                &steps(&car, place),
                read.off_deg(place),
                read.windows(place),
                [true, true, axle == Axle::Front],
            );
            turned[i] = plan.unwrap().turns;
            turn(&mut set.turned, place, turned[i]);
        }
        let now = Reading::of(&car, &set, &agreed, pass as u64 + 1);
        for (i, place) in places.into_iter().enumerate() {
            let (seen, spread) = read.change_to(&now, place);
            effects[i] = effects[i].after(turned[i], seen, spread).unwrap();
        }
        read = now;
    }
    let after = car.at_rest(&set, 0).unwrap();
    Went {
        passes,
        truly_inside: truly_inside(&car, &set, &agreed, places),
        cross_moved_pct: cross_pct(&after) - cross_pct(&before),
    }
}

fn cross_pct(stands: &Standing) -> f64 {
    let kg = stands.loads_kg;
    100.0 * (kg.fr + kg.rl) / kg.to_array().iter().sum::<f64>()
}

fn turn(turned: &mut AlignmentState, place: Place, [toe, camber, caster]: [f64; 3]) {
    *turned.tie_rod_turns.at_mut(place) += toe;
    *turned.camber_turns.at_mut(place) += camber;
    match place {
        Place::Fl => turned.caster_turns.left += caster,
        Place::Fr => turned.caster_turns.right += caster,
        Place::Rl | Place::Rr => {}
    }
}

/// Whether the angles of the axle are inside their windows, as the car knows them and no instrument does.
fn truly_inside(car: &PracticeCar, set: &Configuration, agreed: &Agreed, places: [Place; 2]) -> bool {
    let truth = car.angles(set, 0).unwrap();
    let thrust_deg = (truth.toe_deg.rr - truth.toe_deg.rl) / 2.0;
    places.into_iter().all(|place| {
        let front = place.axle() == Axle::Front;
        let camber = if front { agreed.camber_deg.0 } else { agreed.camber_deg.1 };
        let caster = if place.is_left() { truth.caster_deg.left } else { truth.caster_deg.right };
        let toe_off = truth.toe_deg.at(place) - agreed.toe_target_deg(place, thrust_deg);
        toe_off.abs() <= agreed.toe_window_deg
            && (truth.camber_deg.at(place) - camber).abs() <= agreed.window_deg
            && (!front || (caster - agreed.caster_deg).abs() <= agreed.caster_window_deg)
    })
}
