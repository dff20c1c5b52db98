//! What friction does over settles: how much it holds, where, and what it leaves alone.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_practice::{Configuration, Fault, Freeing, PracticeCar, Standing};
use bayhand_vehicle::Corners;

/// Cars that the friction was not invented on.
const SEEDS: std::ops::Range<u64> = 5_000..5_080;
const SETTLES: u64 = 60;

/// One settle against the car without friction.
struct Error {
    /// Load moved along the diagonal pattern, kg at FL.
    along_kg: f64,
    /// What lies beside the pattern, kg at each corner.
    beside_kg: [f64; 4],
    /// Heights, mm.
    heights_mm: [f64; 4],
}

fn error(car: &PracticeCar, rest: &Standing, stands: &Standing) -> Error {
    let tracks = car.data_sheet().track_mm.front / car.data_sheet().track_mm.rear;
    let pattern = [1.0, -1.0, -tracks, tracks];
    let length: f64 = pattern.iter().map(|n| n * n).sum();
    let difference = |a: &Corners<f64>, b: &Corners<f64>| Corners::from_fn(|p| a.at(p) - b.at(p)).to_array();
    let moved_kg = difference(&stands.loads_kg, &rest.loads_kg);
    let along_kg = moved_kg.iter().zip(pattern).map(|(kg, n)| kg * n).sum::<f64>() / length;
    Error {
        along_kg,
        beside_kg: std::array::from_fn(|i| moved_kg[i] - along_kg * pattern[i]),
        heights_mm: difference(&stands.heights_mm, &rest.heights_mm),
    }
}

fn errors(car: &PracticeCar, set: &Configuration, settles: u64) -> Vec<Error> {
    let rest = car.at_rest(set, 0).unwrap();
    (0..settles).map(|settle| error(car, &rest, &car.stand(set, settle).unwrap())).collect()
}

fn root_mean_square(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), v| (sum + v * v, count + 1.0));
    (sum / count).sqrt()
}

/// The data sheet's figures are those of the friction: over many cars the spread is the stated one within 4 %, no car
/// is far from it, the mean is nothing, and one settle in twenty is beyond two sigma.
#[test]
fn settles_spread_as_the_sheet_says() {
    let mut all = Vec::new();
    let mut per_car = Vec::new();
    for seed in SEEDS {
        let car = PracticeCar::from_seed(seed);
        let of_car = errors(&car, &car.ready(), SETTLES);
        per_car.push(root_mean_square(of_car.iter().map(|e| e.along_kg)));
        all.extend(of_car);
    }
    let instruments = PracticeCar::from_seed(SEEDS.start).data_sheet().instruments;
    let n = all.len() as f64;
    let sigma_kg = root_mean_square(all.iter().map(|e| e.along_kg));
    let mean_kg = all.iter().map(|e| e.along_kg).sum::<f64>() / n;
    let height_mm = root_mean_square(all.iter().flat_map(|e| e.heights_mm));
    let beyond = all.iter().filter(|e| e.along_kg.abs() > 2.0 * instruments.settle_kg).count() as f64 / n;
    per_car.sort_by(f64::total_cmp);
    let (least, most) = (per_car[0], per_car[per_car.len() - 1]);
    println!(
        "along the pattern: mean {mean_kg:.4}, sigma {sigma_kg:.4} kg (cars {least:.3} to {most:.3}), {beyond:.3} beyond two"
    );
    println!("heights: {height_mm:.4} mm");
    assert!((sigma_kg / instruments.settle_kg - 1.0).abs() < 0.04, "spread {sigma_kg} kg");
    assert!((height_mm / instruments.settle_height_mm - 1.0).abs() < 0.05, "spread of heights {height_mm} mm");
    assert!(mean_kg.abs() < 4.0 * sigma_kg / n.sqrt(), "mean {mean_kg} kg");
    assert!(least > 0.6 * sigma_kg && most < 1.6 * sigma_kg, "each car is a car in good order: {least} to {most} kg");
    assert!((0.03..0.06).contains(&beyond), "{beyond} are beyond two sigma");
}

/// Friction holds forces inside the car: what a settle moves lies along the diagonal pattern but for the little that the
/// mass centre moves as the body stands otherwise, and the total stays.
#[test]
fn settles_differ_along_the_diagonal_pattern() {
    let (mut along, mut beside, mut most_kg) = (0.0, 0.0, 0.0_f64);
    for seed in SEEDS {
        let car = PracticeCar::from_seed(seed);
        let rest = car.at_rest(&car.ready(), 0).unwrap();
        let total = |s: &Standing| s.loads_kg.to_array().iter().sum::<f64>();
        for settle in 0..10 {
            let stands = car.stand(&car.ready(), settle).unwrap();
            assert!((total(&stands) - total(&rest)).abs() < 1e-6, "seed {seed}: friction changes no total");
            let e = error(&car, &rest, &stands);
            along += 4.0 * e.along_kg * e.along_kg;
            beside += e.beside_kg.iter().map(|kg| kg * kg).sum::<f64>();
            most_kg = e.beside_kg.iter().fold(most_kg, |most, kg| most.max(kg.abs()));
        }
    }
    println!("beside the pattern: {:.4} % of the variance, at most {most_kg:.4} kg", 100.0 * beside / along);
    assert!(beside < 0.01 * along, "less than a hundredth of the variance lies beside: {beside} of {along}");
    assert!(most_kg < 0.1, "below a pad's resolution: {most_kg} kg");
}

/// A strut never holds more than its friction, and settles leave it holding this or that.
#[test]
fn struts_stick_where_their_last_move_left_them() {
    let car = PracticeCar::from_seed(5_000);
    let limits = car.truth().friction_n;
    let held: Vec<_> = (0..60).map(|settle| car.stand(&car.ready(), settle).unwrap().friction_n).collect();
    for (place, limit_n) in limits.iter() {
        let shares = held.iter().map(|h| h.at(place) / limit_n);
        assert!(shares.clone().all(|s| s.abs() <= 1.0 + 1e-9), "{place:?} holds no more than {limit_n} N");
        let (least, most) = shares.fold((f64::MAX, f64::MIN), |(l, m), s| (l.min(s), m.max(s)));
        assert!(least < -0.4 && most > 0.4, "{place:?} holds either way: {least} to {most} of its limit");
    }
}

/// On slip plates, or rolled off and on, tyres hold no side load worth the name. On bare pads they hold hundreds of
/// newtons from the way that they went outwards as the car came down; the car stands high, and its cross is out by
/// what its two sides differ.
#[test]
fn without_slip_plates_the_tyres_hold_side_load() {
    let (mut freed_kg, mut bare_kg) = (Vec::new(), Vec::new());
    for seed in SEEDS.take(20) {
        let car = PracticeCar::from_seed(seed);
        let stand = |freeing| car.stand(&Configuration { freeing, ..car.ready() }, 1).unwrap();
        for freeing in [Freeing::SlipPlates, Freeing::RunOffs] {
            let side_n = stand(freeing).side_n;
            assert!(side_n.iter().all(|n| n.abs() < 35.0), "seed {seed}, {freeing:?}: {side_n:?} N");
        }
        let (free, bare) = (stand(Freeing::SlipPlates), stand(Freeing::Nothing));
        assert!(bare.side_n.iter().all(|n| *n > 150.0), "seed {seed}: pressed inwards by {:?} N", bare.side_n);
        let rise_mm =
            (bare.heights_mm.to_array().iter().sum::<f64>() - free.heights_mm.to_array().iter().sum::<f64>()) / 4.0;
        assert!(rise_mm > 0.4, "seed {seed}: the car stands {rise_mm} mm high");
        let total = |s: &Standing| s.loads_kg.to_array().iter().sum::<f64>();
        assert!((total(&bare) - total(&free)).abs() < 1e-6, "seed {seed}: side loads change no total");
        let bare_set = Configuration { freeing: Freeing::Nothing, ..car.ready() };
        freed_kg.extend(errors(&car, &car.ready(), 10).iter().map(|e| e.along_kg));
        bare_kg.extend(errors(&car, &bare_set, 10).iter().map(|e| e.along_kg));
    }
    let (freed, bare) = (root_mean_square(freed_kg.into_iter()), root_mean_square(bare_kg.into_iter()));
    println!("along the pattern: {freed:.3} kg on slip plates, {bare:.3} kg on bare pads");
    assert!(bare > 1.2 * freed, "bare pads read worse: {bare} against {freed} kg");
}

/// A sticking strut settles kilograms apart, along the pattern like any friction.
#[test]
fn a_sticking_strut_settles_far_apart() {
    let sound = PracticeCar::from_seed(5_000);
    let sticky = sound.clone().with_fault(Fault::StickyStrut, 0);
    let spread_kg = |car: &PracticeCar| root_mean_square(errors(car, &car.ready(), 40).iter().map(|e| e.along_kg));
    let (good, bad) = (spread_kg(&sound), spread_kg(&sticky));
    println!("in good order {good:.2} kg, with a sticking strut {bad:.2} kg");
    assert!(bad > 1.5, "kilograms apart: {bad}");
    // The body stands millimetres otherwise, and its mass centre with it.
    let beside = root_mean_square(errors(&sticky, &sticky.ready(), 40).iter().flat_map(|e| e.beside_kg));
    assert!(beside < 0.1 * bad, "and yet along the pattern: {beside} kg beside");
}
