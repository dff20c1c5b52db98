//! Invents a car from a seed: first its data sheet, then the car that really stands there.
//!
//! Nothing here describes a real car. Sizes are those of a small mid-engined coupe; how far the truth is from the
//! sheet is what the project's practice car is agreed to hide (springs up to 25 %, ratios up to 10 %).

use crate::alignment::{AlignmentState, Geometry, as_drawn};
use crate::angle_bench::{self, AngleBench};
use crate::bench::{FUEL_KG_PER_L, HEIGHT_RESOLUTION_MM, LOOK_HEIGHT_SIGMA_MM, PRESSURE_RESOLUTION_BAR, PracticeCar};
use crate::configuration::{Configuration, Freeing, LinkState};
use crate::data_sheet::{Couplings, DataSheet, DriverSide, Instruments, PerAxle, PerSide, TieRod};
use crate::links::TrueLink;
use crate::noise::{Draws, Purpose, to_step};
use crate::pads::{self, Pads};
use crate::rig::{PointMass, Reading, Rig};
use crate::settle::Rubs;
use crate::truth::Truth;
use bayhand_vehicle::{Bars, Beams, Car, Corner, Corners, Hand, Place, STANDARD_GRAVITY, SpringSeat, Sprung, Thread};

/// Load at FL that friction holds after a settle, one sigma, kg: what the friction of a car is invented for.
const SETTLE_SIGMA_KG: f64 = 0.2;
/// Spread of a height over settles that goes with it, one sigma, mm (measured: see `tests/settles.rs`).
const SETTLE_HEIGHT_SIGMA_MM: f64 = 0.14;
/// What the four struts hold after a settle, one sigma along the diagonal, as a share of what they would if each held
/// its limit at a random sign (measured: see `tests/settles.rs`).
const HELD_SHARE: f64 = 0.319;

/// The car of a seed.
pub(crate) fn car(seed: u64) -> PracticeCar {
    let mut draws = Draws::new(seed, Purpose::Car, 0, 0);
    let mut sheet = data_sheet(&mut draws);
    sheet.couplings = as_drawn(&sheet);
    let as_found = Configuration {
        collar_mm: Corners::same(0.0),
        shims_mm: Corners::same(0.0),
        freeing: Freeing::SlipPlates,
        links: PerAxle {
            front: LinkState::Connected { adjust_turns: 0.0 },
            rear: LinkState::Connected { adjust_turns: 0.0 },
        },
        ballast_kg: 0.0,
        fuel_l: draws.printed(5.0, 40.0, 1.0),
        pressures_bar: sheet.cold_bar.map(|bar| to_step(bar + draws.even(-0.25, 0.15), 0.01)),
        turned: AlignmentState::default(),
    };
    PracticeCar {
        entered: sheet.entered(),
        seed,
        sheet,
        as_found,
        truth: truth(seed, &sheet, &mut draws),
        faults: Vec::new(),
        put_right: Vec::new(),
    }
}

fn data_sheet(draws: &mut Draws) -> DataSheet {
    let agreed_mm = PerAxle { front: draws.printed(110.0, 125.0, 1.0), rear: draws.printed(118.0, 135.0, 1.0) };
    let cold_bar = PerAxle { front: draws.printed(1.6, 1.9, 0.05), rear: draws.printed(1.7, 2.0, 0.05) };
    let camber_deg = PerAxle { front: draws.printed(-2.5, -1.5, 0.1), rear: draws.printed(-2.0, -1.2, 0.1) };
    let toe_deg = PerAxle { front: draws.printed(-0.05, 0.05, 0.05), rear: draws.printed(0.1, 0.2, 0.05) };
    let corners = |v: PerAxle<f64>| Corners::from_fn(|p| *v.of(p));
    let caster_deg = draws.printed(4.0, 7.0, 0.5);
    let [pitch_mm, steps] = if draws.even(0.0, 1.0) < 0.5 { [1.5, 6.0] } else { [2.0, 8.0] };
    DataSheet {
        wheelbase_mm: draws.printed(2300.0, 2480.0, 5.0),
        track_mm: PerAxle { front: draws.printed(1400.0, 1500.0, 5.0), rear: draws.printed(1400.0, 1510.0, 5.0) },
        total_kg: draws.printed(910.0, 990.0, 1.0),
        front_share_pct: draws.printed(42.4, 43.6, 0.1),
        unsprung_kg: PerAxle { front: draws.printed(27.0, 33.0, 1.0), rear: draws.printed(31.0, 38.0, 1.0) },
        cg_height_mm: draws.printed(420.0, 480.0, 5.0),
        roll_axis_height_mm: draws.printed(50.0, 110.0, 5.0),
        spring_n_per_mm: PerAxle { front: draws.printed(60.0, 85.0, 5.0), rear: draws.printed(75.0, 110.0, 5.0) },
        motion_ratio: PerAxle { front: draws.printed(0.70, 0.82, 0.01), rear: draws.printed(0.74, 0.86, 0.01) },
        tyre_n_per_mm: PerAxle { front: draws.printed(190.0, 230.0, 5.0), rear: draws.printed(200.0, 250.0, 5.0) },
        tyre_radius_mm: PerAxle { front: draws.printed(288.0, 300.0, 1.0), rear: draws.printed(292.0, 308.0, 1.0) },
        bump_mm: PerAxle { front: draws.printed(40.0, 50.0, 1.0), rear: draws.printed(40.0, 55.0, 1.0) },
        droop_mm: PerAxle { front: draws.printed(40.0, 55.0, 1.0), rear: draws.printed(40.0, 55.0, 1.0) },
        bar_n_per_mm: PerAxle { front: draws.printed(12.0, 24.0, 1.0), rear: draws.printed(10.0, 18.0, 1.0) },
        link_pitch_mm: 1.25,
        wheel_per_link: 1.5,
        thread: Thread { pitch_mm, hand: Hand::Right, spring: SpringSeat::AboveCollar },
        steps_per_turn: steps as u32,
        collar_travel_up_mm: draws.printed(14.0, 20.0, 1.0),
        collar_travel_down_mm: draws.printed(14.0, 20.0, 1.0),
        tank_l: 45.0,
        fuel_l: 20.0,
        driver: if draws.even(0.0, 1.0) < 0.5 { DriverSide::Left } else { DriverSide::Right },
        ballast_kg: draws.printed(70.0, 90.0, 5.0),
        cross_pct: 50.0,
        heights_mm: corners(agreed_mm),
        cold_bar: corners(cold_bar),
        working_bar: corners(cold_bar).map(|bar| to_step(bar + 0.3, 0.05)),
        toe_deg: corners(toe_deg),
        camber_deg: corners(camber_deg),
        caster_deg: PerSide { left: caster_deg, right: caster_deg },
        tie_rod: PerAxle {
            front: TieRod { arm_mm: draws.printed(110.0, 130.0, 1.0), pitch_mm: 1.5, opposite_threads: false },
            rear: TieRod { arm_mm: draws.printed(130.0, 160.0, 1.0), pitch_mm: 1.5, opposite_threads: true },
        },
        camber_deg_per_turn: PerAxle { front: 0.25, rear: 0.3 },
        caster_deg_per_turn: 0.3,
        couplings: Couplings::default(),
        inclination_deg: 12.5,
        bump_camber_deg_per_mm: -0.022,
        instruments: Instruments {
            pad_resolution_kg: pads::RESOLUTION_KG,
            pad_look_kg: pads::LOOK_SIGMA_KG,
            pad_zero_kg: pads::ZERO_SIGMA_KG,
            pad_calibration_pct: pads::CALIBRATION_SIGMA_PCT,
            settle_kg: SETTLE_SIGMA_KG,
            settle_height_mm: SETTLE_HEIGHT_SIGMA_MM,
            height_resolution_mm: HEIGHT_RESOLUTION_MM,
            height_look_mm: LOOK_HEIGHT_SIGMA_MM,
            laser_resolution_mm: pads::LASER_RESOLUTION_MM,
            laser_look_mm: pads::LASER_SIGMA_MM,
            laser_accuracy_mm_per_m: 2.0 * pads::LASER_TILT_SIGMA_MM_PER_M,
            pressure_resolution_bar: PRESSURE_RESOLUTION_BAR,
            angle_resolution_deg: angle_bench::GAUGE_RESOLUTION_DEG,
            angle_look_deg: angle_bench::GAUGE_LOOK_DEG,
            plate_resolution_deg: angle_bench::PLATE_RESOLUTION_DEG,
            plate_look_deg: angle_bench::PLATE_LOOK_DEG,
            plate_scale_pct: angle_bench::PLATE_SCALE_PCT,
            line_resolution_mm: angle_bench::LINE_RESOLUTION_MM,
            line_look_mm: angle_bench::LINE_LOOK_MM,
            across_resolution_mm: angle_bench::ACROSS_RESOLUTION_MM,
            across_look_mm: angle_bench::ACROSS_LOOK_MM,
            steering_held_deg: angle_bench::HELD_DEG,
        },
    }
}

/// Way outwards of a contact patch for one metre of upward travel of its wheel, as invented about: a roll centre 70 mm
/// over the ground in front and 90 mm behind, over half a track.
const OUTWARDS: PerAxle<f64> = PerAxle { front: 0.095, rear: 0.125 };

/// What is aboard beside the empty car.
struct Aboard {
    seat: PointMass,
    tank: PointMass,
}

fn truth(seed: u64, sheet: &DataSheet, draws: &mut Draws) -> Truth {
    let wheelbase_m = sheet.wheelbase_mm / 1e3;
    let seat_left_m = match sheet.driver {
        DriverSide::Left => 0.36,
        DriverSide::Right => -0.36,
    };
    let aboard = Aboard {
        seat: PointMass {
            mass_kg: sheet.ballast_kg,
            behind_front_axle_m: 0.52 * wheelbase_m,
            left_m: seat_left_m,
            height_m: 0.40,
        },
        tank: PointMass {
            mass_kg: sheet.fuel_l * FUEL_KG_PER_L,
            behind_front_axle_m: 0.66 * wheelbase_m,
            left_m: draws.even(-0.15, 0.15),
            height_m: 0.35,
        },
    };
    let reading = reading_as_it_comes(sheet, draws);
    let car = true_car(sheet, &reading, &aboard, draws);
    // Every invented value lies well inside the ranges that a car is checked against, no corner carries less than
    // 150 kg, and the heights are within 10 mm of the agreed ones: there is nothing left to refuse.
    let rig = Rig::from_reading(&car, &reading).expect("invented values lie inside the ranges of a car");
    let mut loaded = rig.clone();
    loaded.add(&aboard.seat);
    loaded.add(&aboard.tank);
    // The free lengths were chosen for this very state, so that rest is a small step away.
    let came = loaded.stand().expect("a car built from its own reading stands");
    let mut link = |rate: f64, left: Place, right: Place| {
        let n_per_mm = rate * draws.even(0.85, 1.15);
        let preload_n = draws.either_side(40.0, 90.0);
        TrueLink {
            n_per_mm,
            rest_mm: came.struts_mm.at(right) - came.struts_mm.at(left) - preload_n / n_per_mm,
            pitch_mm: sheet.link_pitch_mm,
            wheel_per_link: sheet.wheel_per_link * draws.even(0.87, 1.13),
        }
    };
    let links = PerAxle {
        front: link(sheet.bar_n_per_mm.front, Place::Fl, Place::Fr),
        rear: link(sheet.bar_n_per_mm.rear, Place::Rl, Place::Rr),
    };
    let mut own = Draws::new(seed, Purpose::Geometry, 0, 0);
    let geometry = Geometry::invent(sheet, &came, &mut own);
    let angle_bench = AngleBench::invent(&mut own);
    // As many as an earlier geometry drew: pads and friction of a seed stay what they were in jobs that are open.
    for _ in 0..48 {
        draws.even(0.0, 1.0);
    }
    let pads = Pads::invent(draws);
    let rubs = rubs(sheet, &rig, draws);
    Truth { rig, seat: aboard.seat, tank: aboard.tank, links, came, geometry, angle_bench, pads, rubs }
}

/// Friction of struts and tyres, such that settles of the ready car differ by as much as its sheet says.
///
/// What a strut holds acts like a change of its free length by force / wheel rate; along the diagonal pattern n that
/// moves n . (force / wheel rate) / sum(n^2 / ride rate) at FL (model: rigid body, bars released).
fn rubs(sheet: &DataSheet, rig: &Rig, draws: &mut Draws) -> Rubs {
    let tracks = sheet.track_mm.front / sheet.track_mm.rear;
    let pattern = Corners::from_array([1.0, -1.0, -tracks, tracks]);
    let shares = Corners::from_fn(|_| draws.even(0.75, 1.25));
    let (mut held_m2, mut give_m_per_n) = (0.0, 0.0);
    for place in Place::ALL {
        let wheel = &rig.wheels[place.index()];
        let (n, rate) = (pattern.at(place), wheel.strut.wheel_rate_n_per_m());
        held_m2 += (n * HELD_SHARE * shares.at(place) / rate).powi(2);
        give_m_per_n += n * n * (1.0 / rate + 1.0 / wheel.tyre_n_per_m);
    }
    let limit_n = SETTLE_SIGMA_KG * STANDARD_GRAVITY * give_m_per_n / held_m2.sqrt();
    Rubs {
        strut_n: shares.map(|share| share * limit_n),
        outwards: Corners::from_fn(|p| OUTWARDS.of(p) * draws.even(0.85, 1.15)),
        tyre_side_n_per_m: PerAxle { front: draws.even(1.0e5, 1.3e5), rear: draws.even(1.1e5, 1.4e5) },
    }
}

/// The state in which the ready car comes in, on level pads: a few percent out of cross, a few millimetres out of
/// height, its left share near the middle.
fn reading_as_it_comes(sheet: &DataSheet, draws: &mut Draws) -> Reading {
    let total_kg = sheet.total_kg + draws.even(-6.0, 6.0);
    let front_kg = total_kg * (sheet.front_share_pct + draws.even(-0.4, 0.4)) / 100.0;
    let rear_kg = total_kg - front_kg;
    let left = 0.5 + draws.even(-0.005, 0.005);
    // Cross wanted, from what equal left shares give, moved along the diagonal pattern.
    let cross = 0.5 + draws.either_side(0.013, 0.037);
    let even_cross_kg = front_kg * (1.0 - left) + rear_kg * left;
    let tracks = sheet.track_mm.front / sheet.track_mm.rear;
    let moved_kg = (even_cross_kg - cross * total_kg) / (1.0 + tracks);
    let loads_kg = Corners {
        fl: front_kg * left + moved_kg,
        fr: front_kg * (1.0 - left) - moved_kg,
        rl: rear_kg * left - tracks * moved_kg,
        rr: rear_kg * (1.0 - left) + tracks * moved_kg,
    };
    let out_mm = PerAxle { front: draws.either_side(1.0, 3.5), rear: draws.either_side(1.0, 3.5) };
    let roll = draws.even(-0.002, 0.002);
    let heights_mm = Corners::from_fn(|p| {
        let side = if p.is_left() { 0.5 } else { -0.5 };
        sheet.heights_mm.at(p) + out_mm.of(p) + side * roll * sheet.track_mm.of(p)
    });
    Reading { loads_kg, heights_mm, pads_mm: Corners::same(0.0), design_heights_mm: sheet.heights_mm }
}

/// The empty car that shows this reading with everything aboard.
fn true_car(sheet: &DataSheet, reading: &Reading, aboard: &Aboard, draws: &mut Draws) -> Car {
    let spring = PerAxle { front: draws.even(0.78, 1.22), rear: draws.even(0.78, 1.22) };
    let ratio = PerAxle { front: draws.even(0.92, 1.08), rear: draws.even(0.92, 1.08) };
    let tyre = PerAxle { front: draws.even(0.92, 1.08), rear: draws.even(0.92, 1.08) };
    let corners = Corners::from_fn(|p| Corner {
        spring_n_per_mm: Some(sheet.spring_n_per_mm.of(p) * spring.of(p) * draws.even(0.98, 1.02)),
        motion_ratio: Some(sheet.motion_ratio.of(p) * ratio.of(p) * draws.even(0.99, 1.01)),
        tyre_n_per_mm: sheet.tyre_n_per_mm.of(p) * tyre.of(p) * draws.even(0.98, 1.02),
        unsprung_kg: sheet.unsprung_kg.of(p) + draws.even(-1.0, 1.0),
        tyre_radius_mm: *sheet.tyre_radius_mm.of(p),
        adjuster_ratio: None,
        bump_mm: Some(sheet.bump_mm.of(p) + reading.heights_mm.at(p) - sheet.heights_mm.at(p)),
        droop_mm: Some(sheet.droop_mm.of(p) - reading.heights_mm.at(p) + sheet.heights_mm.at(p)),
        bump_stop_n_per_mm: None,
        coil_bind_mm: None,
    });
    let sum = |of: &dyn Fn(Place) -> f64| Place::ALL.into_iter().map(of).sum::<f64>();
    let on_springs_kg = |p: Place| reading.loads_kg.at(p) - corners.at(p).unsprung_kg;
    let mass_kg = sum(&on_springs_kg) - aboard.seat.mass_kg - aboard.tank.mass_kg;
    let back_kg_m = sum(&|p| if p.index() < 2 { 0.0 } else { on_springs_kg(p) * sheet.wheelbase_mm / 1e3 });
    let left_kg_m = sum(&|p| on_springs_kg(p) * pads::signs(p).1 * sheet.track_mm.of(p) / 2e3);
    let moment =
        |at: fn(&PointMass) -> f64| aboard.seat.mass_kg * at(&aboard.seat) + aboard.tank.mass_kg * at(&aboard.tank);
    Car {
        wheelbase_mm: sheet.wheelbase_mm,
        track_front_mm: sheet.track_mm.front,
        track_rear_mm: sheet.track_mm.rear,
        roll_axis_height_mm: sheet.roll_axis_height_mm + draws.even(-15.0, 15.0),
        sprung: Sprung {
            mass_kg,
            cg_behind_front_axle_mm: (back_kg_m - moment(|m| m.behind_front_axle_m)) / mass_kg * 1e3,
            cg_left_mm: (left_kg_m - moment(|m| m.left_m)) / mass_kg * 1e3,
            cg_height_mm: sheet.cg_height_mm + draws.even(-20.0, 20.0),
        },
        torsion_nm_per_deg: Some(draws.even(7_000.0, 15_000.0)),
        corners,
        bars: Bars::default(),
        beams: Beams::default(),
        sprung_like: None,
        height_points: None,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    /// Springs are off by up to 25 %, ratios by up to 10 %, and the sheet is never right by rule.
    #[test]
    fn the_truth_hides_what_is_agreed() {
        let (mut most_spring, mut most_ratio): (f64, f64) = (0.0, 0.0);
        for seed in 0..300 {
            let car = car(seed);
            for (place, entered) in car.entered.corners.iter() {
                let strut = &car.truth.rig.wheels[place.index()].strut;
                let spring = strut.spring_n_per_m / 1e3 / entered.spring_n_per_mm.unwrap() - 1.0;
                let ratio = strut.motion_ratio / entered.motion_ratio.unwrap() - 1.0;
                assert!(spring.abs() <= 0.25, "seed {seed} {place:?}: spring off by {spring}");
                assert!(ratio.abs() <= 0.10, "seed {seed} {place:?}: ratio off by {ratio}");
                most_spring = most_spring.max(spring.abs());
                most_ratio = most_ratio.max(ratio.abs());
            }
        }
        assert!(most_spring > 0.22 && most_ratio > 0.08, "the ranges are used: {most_spring}, {most_ratio}");
    }

    /// The ready car comes in as agreed: 1 to 4 % out of cross, left share within 0.6 % of the middle, a few
    /// millimetres out of height, with about 43 % in front.
    #[test]
    fn the_car_comes_in_as_agreed() {
        for seed in 0..300 {
            let car = car(seed);
            car.entered.validate().unwrap();
            let stands = &car.truth.came;
            let loads = stands.loads_kg;
            let total = loads.to_array().iter().sum::<f64>();
            let percent = |kg: f64| 100.0 * kg / total;
            let (cross, left) = (percent(loads.fr + loads.rl), percent(loads.fl + loads.rl));
            let front = percent(loads.fl + loads.fr);
            assert!((900.0..=1000.0).contains(&total), "seed {seed}: {total} kg");
            assert!((1.0..=4.0).contains(&(cross - 50.0).abs()), "seed {seed}: cross {cross} %");
            assert!((left - 50.0).abs() <= 0.6, "seed {seed}: left {left} %");
            assert!((front - 43.0).abs() <= 1.2, "seed {seed}: front {front} %");
            for (place, mm) in stands.heights_mm.iter() {
                let out = mm - car.sheet.heights_mm.at(place);
                assert!(out.abs() <= 6.0, "seed {seed} {place:?}: {out} mm out of height");
                assert_eq!(*stands.states.at(place), Default::default(), "seed {seed}: nothing unusual at {place:?}");
            }
        }
    }

    /// A sheet prints few decimals: thousandths at most, of a degree for one mm of travel.
    #[test]
    fn the_sheet_prints_clean_decimals() {
        for seed in 0..50 {
            let text = serde_json::to_string(&car(seed).sheet).unwrap();
            let longest = text
                .split(|c: char| !c.is_ascii_digit() && c != '.')
                .filter_map(|number| number.split_once('.'))
                .map(|(_, decimals)| decimals.len())
                .max();
            assert!(longest.is_some_and(|n| n <= 3), "seed {seed}: {text}");
        }
    }
}
