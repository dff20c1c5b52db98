//! Does the stated uncertainty hold the truth as often as it says?
//!
//! Class I: readings come from the practice car, which shares no formula with this crate: pads that are quantised, keep
//! a zero and are calibrated a little wrong, lie out of level and are read by a laser whose plane tilts; struts and tyres
//! that rub. The estimator is told what stands on the data sheet of instruments and car, and that sheet's springs are
//! off by up to a quarter.

use bayhand_chassis::reading::{Figure, HeightGauge, Instruments, Level, Reading, coverage_factor, height_spread};
use bayhand_chassis::{COVERAGE, PadPlane};
use bayhand_practice::{Configuration, DataSheet, Freeing, PracticeCar};
use bayhand_vehicle::{Corners, Place};

const LOOKS: u32 = 2;
const SETTLES: u32 = 3;

/// What the sheet states, in the words of the estimator.
fn stated(sheet: &DataSheet) -> Instruments {
    let i = &sheet.instruments;
    Instruments {
        pad_resolution_kg: i.pad_resolution_kg,
        pad_look_kg: i.pad_look_kg,
        pad_zero_kg: i.pad_zero_kg,
        pad_calibration_pct: i.pad_calibration_pct,
        settle_kg: i.settle_kg,
        settle_dof: None,
        patch_mm: 0.0,
        level: Level {
            resolution_mm: i.laser_resolution_mm,
            look_mm: i.laser_look_mm,
            // Stated as an interval of about 95 %.
            plane_mm_per_m: i.laser_accuracy_mm_per_m / COVERAGE,
            set_ups: 2,
            turned: true,
        },
        heights: HeightGauge {
            resolution_mm: i.height_resolution_mm,
            look_mm: i.height_look_mm,
            settle_mm: i.settle_height_mm,
            zero_mm: 0.0,
        },
    }
}

/// Pad heights as two set-ups of the laser show them, half a turn apart.
fn levelled(car: &PracticeCar, shims_mm: &Corners<f64>, first: u64) -> Corners<f64> {
    let (a, b) = (car.pad_heights_seen(shims_mm, 0, first), car.pad_heights_seen(shims_mm, 0, first + 1));
    Corners::from_fn(|p| (a.at(p) + b.at(p)) / 2.0)
}

/// One reading: how far each figure, load and height is from the truth, in standard uncertainties.
fn reading_off(seed: u64) -> [f64; 14] {
    let car = PracticeCar::from_seed(seed);
    let instruments = stated(car.data_sheet());
    // Shims of a tenth under all but the highest pad, then the laser once more.
    let seen = levelled(&car, &Corners::same(0.0), 0);
    let highest = seen.to_array().into_iter().fold(f64::MIN, f64::max);
    let shims_mm = seen.map(|mm| ((highest - mm) * 10.0).round() / 10.0);
    let left_mm = levelled(&car, &shims_mm, 2);
    let configuration = Configuration { shims_mm, freeing: Freeing::SlipPlates, ..car.ready() };
    let (mut loads, mut heights) = (Corners::same(0.0), Corners::same(0.0));
    let part = 1.0 / f64::from(LOOKS * SETTLES);
    for settle in 0..u64::from(SETTLES) {
        let stands = car.stand(&configuration, settle).expect("it finds its rest");
        for look in 0..u64::from(LOOKS) {
            let looked = car.looked(&stands, settle, look);
            loads = Corners::from_fn(|p| loads.at(p) + part * looked.loads_kg.at(p));
            heights = Corners::from_fn(|p| heights.at(p) + part * looked.heights_mm.at(p));
        }
    }
    let known = PadPlane::of(&car.entered, &left_mm).expect("pads").loads_kg;
    let loads = Corners::from_fn(|p| loads.at(p) - known.at(p));
    let reading = Reading::of(&car.entered, &instruments, &loads, LOOKS, SETTLES).expect("a reading");
    let truth = car.on_level_pads(&configuration).expect("it finds its rest");
    let covariance = reading.covariance_kg2(true);
    let height = height_spread(&instruments.heights, LOOKS, SETTLES).one_mm / COVERAGE;
    std::array::from_fn(|k| match k {
        0..6 => {
            let budget = reading.budget(Figure::ALL[k]);
            (budget.value - Figure::ALL[k].of(&truth.loads_kg)) / budget.standard
        }
        6..10 => {
            let p = Place::ALL[k - 6];
            (loads.at(p) - truth.loads_kg.at(p)) / covariance[k - 6][k - 6].sqrt()
        }
        _ => {
            let p = Place::ALL[k - 10];
            (heights.at(p) - truth.heights_mm.at(p)) / height
        }
    })
}

/// Each reading is of another car, so that what is constant over a job is drawn anew for each.
#[test]
fn the_band_holds_the_truth() {
    let readings: u64 = if std::env::var_os("BAYHAND_LONG").is_some() { 10_000 } else { 2_000 };
    const FIRST_SEED: u64 = 1_000_000;
    println!("cars of seeds {FIRST_SEED} to {}", FIRST_SEED + readings - 1);
    let k95 = coverage_factor(0.95, f64::INFINITY);
    let mut inside = [0_u32; 14];
    let mut squares = [0.0; 14];
    for seed in FIRST_SEED..FIRST_SEED + readings {
        for (k, off) in reading_off(seed).into_iter().enumerate() {
            inside[k] += u32::from(off.abs() <= k95);
            squares[k] += off * off;
        }
    }
    let part = |k: usize| f64::from(inside[k]) / readings as f64;
    for (k, squares) in squares.iter().enumerate() {
        let name = match k {
            0..6 => format!("{:?}", Figure::ALL[k]),
            6..10 => format!("load {}", Place::ALL[k - 6].code()),
            _ => format!("height {}", Place::ALL[k - 10].code()),
        };
        println!("{name}: {:.4} inside, {:.3} standard uncertainties", part(k), (squares / readings as f64).sqrt());
    }
    // The sheet has one figure for the settling of all four heights, though the axles differ: they are pooled.
    let heights = (10..14).map(part).sum::<f64>() / 4.0;
    println!("heights together: {heights:.4} inside");
    assert!((0.93..=0.97).contains(&heights), "heights: {heights} inside");
    for (k, count) in inside.iter().enumerate().take(10) {
        assert!((0.93..=0.97).contains(&part(k)), "figure or load {k}: {count} of {readings} inside");
    }
}
