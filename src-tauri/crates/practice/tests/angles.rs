//! The wheels of the practice car, as its links hold them, and what the instruments of the alignment show.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_practice::{Angles, Configuration, PracticeCar};
use bayhand_vehicle::{Corners, Place};

fn cars() -> impl Iterator<Item = (u64, PracticeCar)> {
    (300..360).map(|seed| (seed, PracticeCar::from_seed(seed)))
}

fn angles(car: &PracticeCar, set: &Configuration) -> Angles {
    car.angles(set, 0).unwrap()
}

/// A car comes in out of what was agreed by what a setter usually meets: toe a fifth of a degree, camber and caster four
/// tenths, at most; a few hundredths more, for its pads are not level.
#[test]
fn a_car_comes_in_out_of_its_angles() {
    for (seed, car) in cars() {
        let (sheet, found) = (car.data_sheet(), angles(&car, &car.ready()));
        for place in Place::ALL {
            let toe = found.toe_deg.at(place) - sheet.toe_deg.at(place);
            let camber = found.camber_deg.at(place) - sheet.camber_deg.at(place);
            assert!((0.02..0.23).contains(&toe.abs()), "seed {seed} {place:?}: toe out by {toe}");
            assert!((0.05..0.45).contains(&camber.abs()), "seed {seed} {place:?}: camber out by {camber}");
        }
        let caster = found.caster_deg.left - sheet.caster_deg.left;
        assert!((0.05..0.45).contains(&caster.abs()), "seed {seed}: caster out by {caster}");
        assert!((8.0..15.0).contains(&found.inclination_deg.right), "seed {seed}: {found:?}");
    }
}

/// One turn of each adjuster does about what the sheet says, and something else besides.
#[test]
fn adjusters_do_what_they_are_for_and_more() {
    let mut besides: f64 = 0.0;
    for (seed, car) in cars() {
        let (sheet, found) = (car.data_sheet(), angles(&car, &car.ready()));
        let turned = |turn: fn(&mut Configuration)| {
            let mut set = car.ready();
            turn(&mut set);
            angles(&car, &set)
        };
        let rod = sheet.tie_rod.front;
        let due = (rod.pitch_mm / rod.arm_mm).asin().to_degrees();
        let toe = turned(|set| set.turned.tie_rod_turns.fl = 1.0).toe_deg.fl - found.toe_deg.fl;
        assert!((0.85..1.1).contains(&(toe / due)), "seed {seed}: {toe} degrees of toe, {due} by the arm");
        let in_two = turned(|set| set.turned.camber_turns.rr = -2.0);
        let camber = (in_two.camber_deg.rr - found.camber_deg.rr) / -2.0;
        let due = sheet.camber_deg_per_turn.rear;
        assert!((0.8..1.2).contains(&(camber / due)), "seed {seed}: {camber} degrees of camber, {due} by the sheet");
        besides = besides.max((in_two.toe_deg.rr - found.toe_deg.rr).abs());
        let back = turned(|set| set.turned.caster_turns.right = 1.0);
        let caster = back.caster_deg.right - found.caster_deg.right;
        assert!((0.75..1.25).contains(&(caster / 0.3)), "seed {seed}: {caster} degrees of caster");
        assert!((back.camber_deg.fr - found.camber_deg.fr).abs() < 0.1, "seed {seed}");
    }
    assert!(besides > 0.05, "camber brings toe along: at most {besides}");
}

/// Lower is more negative camber, by 0.01 to 0.04 degrees for one mm; toe moves by a few thousandths only, either way.
#[test]
fn height_moves_the_angles() {
    let (mut in_, mut out) = (0, 0);
    for (seed, car) in cars() {
        let mut low = car.ready();
        low.collar_mm = Corners::same(-5.0);
        let (found, lowered) = (car.at_rest(&car.ready(), 0).unwrap(), car.at_rest(&low, 0).unwrap());
        let (before, after) = (angles(&car, &car.ready()), angles(&car, &low));
        for place in Place::ALL {
            let down_mm = found.struts_mm.at(place) - lowered.struts_mm.at(place);
            let per_mm =
                |angle: fn(&Angles) -> Corners<f64>| (angle(&after).at(place) - angle(&before).at(place)) / down_mm;
            let camber = per_mm(|a| a.camber_deg);
            assert!((-0.04..-0.01).contains(&camber), "seed {seed} {place:?}: {camber} degrees for one mm");
            let toe = per_mm(|a| a.toe_deg);
            assert!(toe.abs() < 0.03, "seed {seed} {place:?}: {toe} degrees of toe for one mm");
            if toe > 0.0 { in_ += 1 } else { out += 1 }
        }
    }
    assert!(in_ > 20 && out > 20, "bump steers in at {in_} wheels, out at {out}");
}

/// Leaning a top out about the lower joint, which stands some 80 mm inside the tyre's middle, lets its contact down against
/// the body: one degree raises that corner by more than half a millimetre and loads its diagonal.
#[test]
fn camber_moves_height_and_load() {
    for (seed, car) in cars() {
        let mut set = car.ready();
        set.turned.camber_turns.fl = 4.0;
        let (before, after) = (car.at_rest(&car.ready(), 0).unwrap(), car.at_rest(&set, 0).unwrap());
        let camber = angles(&car, &set).camber_deg.fl - angles(&car, &car.ready()).camber_deg.fl;
        let up_mm = (after.heights_mm.fl - before.heights_mm.fl) / camber;
        let load_kg = (after.loads_kg.fl - before.loads_kg.fl) / camber;
        println!("seed {seed}: {up_mm:.2} mm and {load_kg:.2} kg for one degree");
        assert!((0.2..2.5).contains(&up_mm.abs()), "seed {seed}: {up_mm} mm for one degree");
        assert!((0.2..4.0).contains(&load_kg.abs()), "seed {seed}: {load_kg} kg for one degree");
        let total = |s: &bayhand_practice::Standing| s.loads_kg.to_array().into_iter().sum::<f64>();
        assert!((total(&after) - total(&before)).abs() < 1e-6, "the weight stays");
    }
}

/// Readings of the lines, taken the long way round by hand, give back the wheels' headings: rims, lines and gauge each
/// err as they are said to.
#[test]
fn instruments_show_the_wheels() {
    let (mut worst_toe, mut worst_camber): (f64, f64) = (0.0, 0.0);
    for (seed, car) in cars() {
        let set = car.ready();
        let (truth, seen, rims) =
            (angles(&car, &set), car.wheels_seen(&set, 0, 0, 0).unwrap(), car.run_out_seen(&set, 0, 0));
        let lines = car.lines_seen(0);
        let [shown, turned] = car.gauge_reversed_seen(0);
        for place in Place::ALL {
            let (wheel, rim) = (seen.at(place), rims.at(place));
            let wobble_mm = (rim.edge_mm[0] - rim.edge_mm[1]) / 2.0;
            let to_line = (wheel.front_mm - wheel.rear_mm - 2.0 * wobble_mm) / car.rim_mm();
            // The skew of both lines together; each alone is up to two millimetres in three metres.
            let toe = to_line.asin().to_degrees();
            worst_toe = worst_toe.max((toe - truth.toe_deg.at(place)).abs());
            let camber = wheel.camber_deg - (rim.camber_deg[0] - rim.camber_deg[1]) / 2.0 - (shown + turned) / 2.0;
            worst_camber = worst_camber.max((camber - truth.camber_deg.at(place)).abs());
        }
        assert!((lines.apart_mm - car.data_sheet().wheelbase_mm - 1000.0).abs() < 1e-9, "seed {seed}");
    }
    assert!(worst_toe < 0.35, "toe but for the lines' skew: off by {worst_toe}");
    assert!(worst_camber < 0.2, "camber but for the pads' slope: off by {worst_camber}");
}

/// In a sweep the wheel that leads stands at about 20 degrees, the other at less or more, and a wheel with caster leans
/// its top in on the outside of the bend.
#[test]
fn a_sweep_leans_the_wheels() {
    for (seed, car) in cars() {
        let seen = car.sweep_seen(&car.ready(), 0, 0).unwrap();
        let (left, right) = (seen.left, seen.right);
        assert!((19.0..21.0).contains(&left.plate_deg[0]), "seed {seed}: {seen:?}");
        assert!((19.0..21.0).contains(&right.plate_deg[1]), "seed {seed}: {seen:?}");
        assert!((-23.0..-17.0).contains(&left.plate_deg[1]), "seed {seed}: {seen:?}");
        assert!(left.gauge_deg[0] > left.gauge_deg[1] + 1.0, "seed {seed}: {seen:?}");
        assert!(right.gauge_deg[1] > right.gauge_deg[0] + 1.0, "seed {seed}: {seen:?}");
    }
}

/// The same question is answered alike; another settle is another.
#[test]
fn angle_readings_repeat() {
    let car = PracticeCar::from_seed(5);
    let seen = |settle| car.wheels_seen(&car.ready(), settle, 1, 0).unwrap();
    assert_eq!(seen(3), seen(3));
    assert_ne!(seen(3), seen(4));
}

/// What the adjusters move besides is drawn for joints that stand where they were meant to: a real car's is within some
/// hundredths of a degree for a turn.
#[test]
fn a_drawing_tells_what_an_adjuster_moves_besides() {
    for (seed, car) in cars() {
        let (drawn, found) = (car.data_sheet().couplings, angles(&car, &car.ready()));
        let turned = |turn: fn(&mut Configuration)| {
            let mut set = car.ready();
            turn(&mut set);
            angles(&car, &set)
        };
        let camber = turned(|set| set.turned.camber_turns = Corners { fl: 1.0, rl: 1.0, ..Corners::same(0.0) });
        let caster = turned(|set| set.turned.caster_turns.left = 1.0);
        let by_camber = |p: Place| camber.toe_deg.at(p) - found.toe_deg.at(p);
        for (what, is, told) in [
            ("toe by camber in front", by_camber(Place::Fl), drawn.camber_moves_toe_deg.front),
            ("toe by camber at the rear", by_camber(Place::Rl), drawn.camber_moves_toe_deg.rear),
            ("camber by caster", caster.camber_deg.fl - found.camber_deg.fl, drawn.caster_moves_camber_deg),
            ("toe by caster", caster.toe_deg.fl - found.toe_deg.fl, drawn.caster_moves_toe_deg),
        ] {
            assert!((is - told).abs() < 0.06, "seed {seed}, {what}: {is} degrees, drawn {told}");
        }
    }
}
