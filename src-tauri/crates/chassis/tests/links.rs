//! The preload of a bar from connecting its links, against the engine and by hand.

mod common;
#[path = "common/engine.rs"]
mod engine;

use bayhand_chassis::{From, LinkPreload, StaticsError, link_preload, link_turns, predict};
use bayhand_vehicle::{Axle, Bar, Corners, Hand, Lengthening, Link, Turning};
use common::{near, square_car, square_loads_kg};
use engine::Fixture;

/// Looks of 0.1 kg on each pad, independent, in both readings.
fn quiet_kg2() -> [[f64; 4]; 4] {
    std::array::from_fn(|i| std::array::from_fn(|j| if i == j { 0.02 } else { 0.0 }))
}

const LINK: Link = Link {
    pitch_mm: 1.25,
    hand: Hand::Right,
    opposite_threads: true,
    link_per_wheel: 0.8,
    longer: Lengthening::PressesWheelDown,
};

/// I: `data/engine.json` (origin beside it): the cars of which one bar alone was connected. The engine gives the
/// preload in newtons and by how much the bar was off before.
#[test]
fn preload_and_misfit_are_those_of_the_engine() {
    let fixture = Fixture::read();
    let (mut seen, mut worst_n, mut worst_mm) = (0, 0.0_f64, 0.0_f64);
    for case in fixture.cases.iter().filter(|c| c.kind == "bar preload") {
        let misfit = case.misfit_mm.expect("a misfit");
        let (axle, bar, misfit_mm) = match (case.car.bars.front, case.car.bars.rear) {
            (Some(bar), None) => (Axle::Front, bar, misfit.front.expect("the front's")),
            (None, Some(bar)) => (Axle::Rear, bar, misfit.rear.expect("the rear's")),
            _ => continue,
        };
        let released = case.released.as_ref().expect("a reading with the links released").standing();
        let connected = case.readings[0].standing();
        let found = link_preload(&case.car, axle, &released, &connected, &quiet_kg2(), 0.1).expect("a preload");
        let turns = link_turns(&found, bar.n_per_mm, &LINK).expect("turns");
        let (n, mm) = ((found.preload_n - bar.preload_n).abs(), (turns.misfit_mm - misfit_mm).abs());
        assert!(n <= 0.5, "{axle:?} {bar:?}: found {} N", found.preload_n);
        assert!(mm <= 0.02, "{axle:?} {bar:?}: off by {misfit_mm} mm, found {}", turns.misfit_mm);
        assert!(found.chi2 < 0.05, "nothing else changed: {}", found.chi2);
        (seen, worst_n, worst_mm) = (seen + 1, worst_n.max(n), worst_mm.max(mm));
    }
    println!("{seen} cars with one bar: worst {worst_n:.3} N, {worst_mm:.4} mm at the wheels");
    assert!(seen >= 15, "enough cars with one bar: {seen}");
}

fn reading() -> From {
    From {
        collar_mm: Corners::same(0.0),
        pads_mm: Corners::same(0.0),
        loads_kg: square_loads_kg(),
        heights_mm: Corners::same(100.0),
    }
}

/// The square car with its front bar pressing the left wheel down by `b_n`: as collars that raise FL and lower FR by
/// `b / kw` would move it, worked out with the diagonal load of checks.md.
fn connected(b_n: f64) -> From {
    let wheel = 30.0 * 4_000.0 / (4_000.0 - 30.0);
    let moved_kg = 2.0 * b_n / wheel * 7.241_379_31 / 9.806_65;
    let mut after = reading();
    for (load, n) in [
        (&mut after.loads_kg.fl, 1.0),
        (&mut after.loads_kg.fr, -1.0),
        (&mut after.loads_kg.rl, -1.0),
        (&mut after.loads_kg.rr, 1.0),
    ] {
        *load += n * moved_kg;
    }
    // Front: lift less what the ride rate gives; rear: what it gives.
    let front_mm = b_n / wheel - moved_kg * 9.806_65 / 30.0;
    let rear_mm = moved_kg * 9.806_65 / 28.0;
    let h = &mut after.heights_mm;
    (h.fl, h.fr, h.rl, h.rr) = (100.0 + front_mm, 100.0 - front_mm, 100.0 + rear_mm, 100.0 - rear_mm);
    after
}

/// R: by hand. 200 N: each front wheel gives way `B / kw` less what the loads take back; the bar of 20 N/mm is wound
/// up by 10 mm beside that; a turnbuckle of 2 x 1.25 mm at 0.8 of the wheel's travel.
#[test]
fn preload_and_turns_by_hand() {
    let found = link_preload(&square_car(), Axle::Front, &reading(), &connected(200.0), &quiet_kg2(), 0.1);
    let found = found.expect("a preload");
    near(found.preload_n, 200.0, 1e-3, "the preload");
    near(found.chi2, 0.0, 1e-9, "and nothing else");
    let turns = link_turns(&found, 20.0, &LINK).expect("turns");
    // Load moved: 2 B / kw x 7.241379 N; each front spring gives (B - moved) / kw, the left one longer.
    let wheel = 30.0 * 4_000.0 / (4_000.0 - 30.0);
    let moved_n = 2.0 * 200.0 / wheel * 7.241_379_31;
    let misfit = 200.0 / 20.0 + 2.0 * (200.0 - moved_n) / wheel;
    near(turns.misfit_mm, misfit, 1e-4, "wound up and given way");
    near(turns.left_longer_mm, -0.8 * misfit, 1e-4, "the left link presses its wheel down: shorter");
    near(turns.turns, 0.8 * misfit / 2.5, 1e-4, "two threads at once");
    assert_eq!(
        (turns.left, turns.right),
        (Turning::Anticlockwise, Turning::Clockwise),
        "right hand: clockwise is longer"
    );
    near(turns.expanded_turns / turns.turns, found.expanded_n / found.preload_n, 1e-9, "in proportion");

    let pulls = Link { longer: Lengthening::PullsWheelUp, hand: Hand::Left, opposite_threads: false, ..LINK };
    let turns = link_turns(&found, 20.0, &pulls).expect("turns");
    near(turns.left_longer_mm, 0.8 * misfit, 1e-4, "the left link pulls its wheel up: longer");
    near(turns.turns, 0.8 * misfit / 1.25, 1e-4, "one thread");
    assert_eq!((turns.left, turns.right), (Turning::Anticlockwise, Turning::Clockwise), "left hand: the other way");
}

/// R: JCGM 100: with one observation of standard uncertainty u and response g, u(B) = u / g. Loads of no use leave the
/// heights, heights of no use leave the loads.
#[test]
fn uncertainty_follows_what_can_be_seen() {
    let wide = quiet_kg2().map(|row| row.map(|v| v * 1e12));
    let of = |kg2: &[[f64; 4]; 4], mm: f64| {
        let found = link_preload(&square_car(), Axle::Front, &reading(), &connected(200.0), kg2, mm);
        found.expect("a preload").expanded_n
    };
    let wheel = 30.0 * 4_000.0 / (4_000.0 - 30.0);
    let per_n_kg = 2.0 / wheel * 7.241_379_31 / 9.806_65;
    // Four loads alike, each of variance 0.02 kg²: sqrt(0.02 / 4) / g, k = 2.
    near(of(&quiet_kg2(), 100.0), 2.0 * 0.02_f64.sqrt() / 2.0 / per_n_kg, 1e-3, "loads alone");
    let front = 1.0 / wheel - per_n_kg * 9.806_65 / 30.0;
    let rear = per_n_kg * 9.806_65 / 28.0;
    let heights = (2.0 * (front * front + rear * rear)).sqrt();
    near(of(&wide, 0.1), 2.0 * 0.1 * 2.0_f64.sqrt() / heights, 1e-3, "heights alone");
    // Friction along the pattern hides the preload from the loads.
    let n = [1.0, -1.0, -1.0, 1.0];
    let rubbing: [[f64; 4]; 4] =
        std::array::from_fn(|i| std::array::from_fn(|j| quiet_kg2()[i][j] + 50.0 * n[i] * n[j]));
    // Along the pattern the variance is then 0.02 + 4 x 50 kg², and the heights decide.
    let information = (2.0 * per_n_kg).powi(2) / 200.02 + (heights / (0.3 * 2.0_f64.sqrt())).powi(2);
    near(of(&rubbing, 0.3), 2.0 / information.sqrt(), 1e-3, "friction looks like a bar");
}

/// R: the other axle's bar, connected in both readings, is part of the car: what it does to the answer is its own.
#[test]
fn the_other_bar_is_part_of_the_car() {
    let mut car = square_car();
    car.bars.rear = Some(Bar { n_per_mm: 25.0, preload_n: -80.0 });
    let with = link_preload(&car, Axle::Front, &reading(), &connected(200.0), &quiet_kg2(), 0.1).expect("a preload");
    assert!(with.chi2 > 10.0, "a car with a rear bar would not have moved like that: {}", with.chi2);
    // The bar of the axle itself is the one that is sought; what the car says of it does not matter.
    car.bars = bayhand_vehicle::Bars { front: Some(Bar { n_per_mm: 40.0, preload_n: 900.0 }), rear: None };
    let own = link_preload(&car, Axle::Front, &reading(), &connected(200.0), &quiet_kg2(), 0.1).expect("a preload");
    near(own.preload_n, 200.0, 1e-3, "as without");
}

#[test]
fn what_cannot_be_compared_is_refused() {
    let says = |connected: From, kg2: [[f64; 4]; 4], mm: f64| {
        link_preload(&square_car(), Axle::Rear, &reading(), &connected, &kg2, mm).expect_err("refused").to_string()
    };
    let mut moved = reading();
    moved.collar_mm.rl = 0.5;
    assert_eq!(
        says(moved, quiet_kg2(), 0.1),
        "connected.collar_mm.RL is 0.5; it must be the same as with the links released"
    );
    let singular =
        "difference_kg2 is not positive definite; it must be a covariance in which every load has a spread of its own";
    assert_eq!(says(reading(), [[0.0; 4]; 4], 0.1), singular);
    assert_eq!(says(reading(), quiet_kg2(), 0.0), "height_mm is 0; it must be from 0.001 to 100 mm");
    let none = LinkPreload { preload_n: 0.0, expanded_n: 10.0, chi2: 0.0, gives_mm_per_n: 0.01 };
    let bad = |bar, link: Link| link_turns(&none, bar, &link).map_err(|e: StaticsError| e.at());
    assert_eq!(bad(0.0, LINK), Err("bar.n_per_mm".to_owned()));
    assert_eq!(bad(20.0, Link { pitch_mm: 0.0, ..LINK }), Err("link.pitch_mm".to_owned()));
    assert_eq!(bad(20.0, Link { link_per_wheel: f64::NAN, ..LINK }), Err("link.link_per_wheel".to_owned()));
    let still = bad(20.0, LINK).expect("no preload, no turns");
    near(still.turns, 0.0, 0.0, "nothing to turn");
    near(still.expanded_turns, 10.0 * (1.0 / 20.0 + 0.01) * 0.8 / 2.5, 1e-12, "but not certain");
}

/// R: a preload balanced in the reading changes no prediction (`predict` counts from it); a bar's rate does.
#[test]
fn preload_is_in_the_reading() {
    let after = |bar: Option<Bar>| {
        let mut car = square_car();
        car.bars.front = bar;
        let mut to = bayhand_chassis::To { collar_mm: Corners::same(0.0), pads_mm: Corners::same(0.0) };
        to.collar_mm.fl = 4.0;
        predict(&car, &reading(), &to).expect("a prediction").loads_kg.fl
    };
    let bar = |preload_n| Some(Bar { n_per_mm: 20.0, preload_n });
    near(after(bar(300.0)), after(bar(0.0)), 1e-9, "whatever it is");
    assert!((after(bar(0.0)) - after(None)).abs() > 0.1, "a connected bar shares the work of a collar");
}
