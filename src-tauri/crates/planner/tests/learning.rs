//! What rounds teach, how one bad round is seen, what is kept for the next visit, and whether to settle again.

mod common;

use bayhand_chassis::{From as Standing, To, diagonal, predict};
use bayhand_planner::{
    Confidence, Knowledge, Learned, Plan, Problem, Round, Scaled, Wish, collar_effects, optimum, plan,
};
use bayhand_vehicle::{Corners, Place};
use common::{Random, coupe};

fn planned(problem: &Problem) -> Plan {
    plan(problem).expect("a plan")
}

fn learned(problem: &Problem) -> Learned {
    planned(problem).learned.expect("rounds teach")
}

const TURNED: [[f64; 4]; 4] =
    [[-6.0, 4.0, 0.0, -8.0], [3.0, 0.0, -6.0, 2.0], [-2.0, -5.0, 4.0, 4.0], [6.0, 2.0, 3.0, -5.0]];

/// Readings that a car with other springs would give, by the statics of chassis; what is entered is what was turned.
fn rounds_of_another_car(problem: &Problem, front_spring: f64, rear_spring: f64) -> Vec<Round> {
    let mut truth = problem.car;
    for (p, factor) in
        [(Place::Fl, front_spring), (Place::Fr, front_spring), (Place::Rl, rear_spring), (Place::Rr, rear_spring)]
    {
        let corner = truth.corners.at_mut(p);
        corner.spring_n_per_mm = corner.spring_n_per_mm.map(|v| v * factor);
    }
    let mut rounds = vec![problem.rounds[0]];
    for turned in TURNED {
        let last = rounds[rounds.len() - 1];
        let zero = Corners::same(0.0);
        let from = Standing { collar_mm: zero, pads_mm: zero, loads_kg: last.loads_kg, heights_mm: last.heights_mm };
        let collar_mm = Corners::from_array(turned.map(|s| 0.5 * s));
        let after = predict(&truth, &from, &To { collar_mm, pads_mm: zero }).expect("a reading");
        rounds.push(Round {
            turned_steps: Corners::from_array(turned),
            loads_kg: after.loads_kg,
            heights_mm: after.heights_mm,
        });
    }
    rounds
}

/// A car whose springs are believed to 20 % and are 1.2 and 0.85 times what was entered.
fn unlike_its_sheet() -> Problem {
    let mut problem = coupe();
    problem.confidence = Confidence { spring_pct: 20.0, motion_ratio_pct: 0.0 };
    problem.rounds = rounds_of_another_car(&problem, 1.2, 0.85);
    problem
}

/// R: a Bayesian update moves from the prior to the truth: all factors within `most` of it.
fn check_near_truth(learned: &Learned, most: f64, why: &str) {
    assert_eq!(learned.scales.len(), 2, "motion ratios are certain");
    for (scale, truth) in learned.scales.iter().zip([1.2_f64, 0.85]) {
        assert_eq!(scale.what, Scaled::SpringRate);
        let off = (scale.factor / truth).ln().abs();
        assert!(off < most, "{why}: {scale:?} is {off} off {truth}");
    }
}

#[test]
fn rounds_teach_the_spring_rates() {
    let found = learned(&unlike_its_sheet());
    assert_eq!(found.readings, 5);
    check_near_truth(&found, 0.06, "clean rounds");
    for scale in &found.scales {
        assert!(scale.sigma_pct < 0.5 * scale.prior_sigma_pct, "known better: {scale:?}");
    }
    assert!(found.doubted.is_empty(), "nothing is wrong with them: {:?}", found.doubted);
}

/// One round is bad: what was learned stays near the truth, and the round is named.
fn check_bad_round(change: impl FnOnce(&mut Problem), round: usize, why: &str) {
    let mut problem = unlike_its_sheet();
    change(&mut problem);
    let found = learned(&problem);
    let doubted = found.doubted.iter().max_by(|a, b| a.chance.total_cmp(&b.chance));
    let worst = doubted.unwrap_or_else(|| panic!("{why}: no round is doubted"));
    assert_eq!(worst.round, round, "{why}: the round is named: {:?}", found.doubted);
    assert!(worst.chance > 0.9, "{why}: and hardly in doubt: {worst:?}");
    check_near_truth(&found, 0.08, why);
    assert!(planned(&problem).why.contains(&format!("Reading {} does not fit", round + 1)), "and it is said");
}

#[test]
fn one_bad_round_teaches_little_and_is_named() {
    check_bad_round(|p| p.rounds[2].turned_steps = Corners::same(0.0), 2, "turns that were not entered");
    check_bad_round(|p| p.rounds[2].turned_steps.fl += 12.0, 2, "other turns than entered");
    check_bad_round(|p| p.rounds[2].loads_kg.fr += 9.0, 2, "a hand on the car at one reading");
    check_bad_round(|p| p.rounds[3..].iter_mut().for_each(|r| r.loads_kg.rl += 8.0), 3, "a mass put in and left in");
}

/// Friction moves load along the diagonal pattern, at rest and in rounds alike: it is learned as friction, and not as a
/// spring.
#[test]
fn friction_is_seen_as_such() {
    let mut problem = unlike_its_sheet();
    problem.pads.settle_kg = 0.5;
    problem.rounds.truncate(1);
    let n = diagonal(&problem.car);
    let first = problem.rounds[0];
    for held in [2.1, -1.6, 1.2, -2.4, 0.4] {
        let loads_kg = Corners::from_fn(|p| first.loads_kg.at(p) + held * n.at(p));
        problem.rounds.push(Round { turned_steps: Corners::same(0.0), loads_kg, ..first });
    }
    let found = learned(&problem);
    assert!(found.settle_kg > 1.2, "the settles show more than half a kilogram: {}", found.settle_kg);
    for scale in &found.scales {
        assert!((scale.factor - 1.0).abs() < 0.02, "nothing was turned, nothing is learned of springs: {scale:?}");
    }
    assert!(found.doubted.is_empty(), "no round is bad: {:?}", found.doubted);
    let quiet = Problem { rounds: vec![first; 6], ..problem };
    assert!(learned(&quiet).settle_kg < 0.6, "settles that agree show no more than was stated");
}

/// R: the mean of several settles is known better than one: the same state read again counts.
#[test]
fn the_same_state_read_again_is_averaged() {
    let mut problem = coupe();
    problem.confidence = Confidence::default();
    let once = planned(&problem);
    let first = problem.rounds[0];
    for held in [0.2, -0.2] {
        let n = diagonal(&problem.car);
        let loads_kg = Corners::from_fn(|p| first.loads_kg.at(p) + held * n.at(p));
        problem.rounds.push(Round { turned_steps: Corners::same(0.0), loads_kg, ..first });
    }
    let thrice = planned(&problem);
    assert_eq!(once.steps, thrice.steps, "the mean is the first reading");
    let moved = once.predicted.loads_kg.fl - thrice.predicted.loads_kg.fl;
    assert!(moved.abs() < 0.02, "and so is what is predicted: {moved} kg apart");
    let (one, three) = (once.uncertainty.loads_kg.fl, thrice.uncertainty.loads_kg.fl);
    assert!(three < one, "three settles are known better than one: {three} against {one}");
}

/// With data that is certain rounds teach nothing, and the last reading is now.
#[test]
fn certain_data_is_not_taught() {
    let mut problem = coupe();
    problem.rounds = rounds_of_another_car(&problem, 1.2, 0.85);
    let all = planned(&problem);
    assert!(all.learned.is_none(), "nothing to learn");
    problem.rounds = vec![problem.rounds[4]];
    assert_eq!(planned(&problem), all, "the last reading alone gives the same plan");
}

/// No data entered: a plan all the same, with a wide uncertainty; rounds narrow it.
#[test]
fn no_data_still_plans_and_learns() {
    let known = planned(&coupe());
    let mut problem = coupe();
    problem.rounds = rounds_of_another_car(&problem, 1.0, 1.0);
    for p in Place::ALL {
        let corner = problem.car.corners.at_mut(p);
        (corner.spring_n_per_mm, corner.motion_ratio) = (None, None);
    }
    let all = problem.rounds.clone();
    problem.rounds.truncate(1);
    let found = planned(&problem);
    assert!(found.cost < known.reason.cost_now, "better than leaving the car alone");
    let wider = found.uncertainty.figures.cross_pct / known.uncertainty.figures.cross_pct;
    assert!(wider > 2.0, "less is known of its outcome: {wider} times");
    problem.rounds = all;
    let sigma_pct = |of: &Learned| of.scales.iter().map(|s| s.sigma_pct).fold(0.0, f64::max);
    let taught = learned(&problem);
    assert!(sigma_pct(&taught) < 10.0, "four rounds know every factor to a few percent: {taught:?}");
}

/// What was learned survives as JSON and is the prior of the next visit.
#[test]
fn what_was_learned_is_used_at_the_next_visit() {
    let problem = unlike_its_sheet();
    let text = serde_json::to_string(&learned(&problem).kept("2026-11-25")).expect("JSON");
    let known: Knowledge = serde_json::from_str(&text).expect("the same knowledge");
    let next = Problem { rounds: vec![problem.rounds[0]], known: Some(known.clone()), ..problem.clone() };
    let found = learned(&next);
    assert_eq!(found.known_since.as_deref(), Some("2026-11-25"), "its age is shown");
    check_near_truth(&found, 0.06, "before anything was turned");
    // A spring that was changed since is another one; the ratio between the axles is kept.
    let mut changed = next.clone();
    for p in [Place::Fl, Place::Fr] {
        changed.car.corners.at_mut(p).spring_n_per_mm = Some(120.0);
    }
    let found = learned(&changed);
    assert!((found.scales[0].factor - 1.0).abs() < 1e-12, "nothing is known of the new front springs");
    assert!((found.scales[1].factor / 0.85).ln().abs() < 0.06, "the rear ones are the same");
    let mut broken = next;
    if let Some(known) = &mut broken.known {
        known.covariance[0][1] = 5.0;
    }
    let why = plan(&broken).expect_err("no such covariance");
    assert_eq!(why.at(), "known.covariance[0][1]", "{why}");
}

/// What a collar does by what was learned is what the statics of the true car say, and what is said of its uncertainty holds.
#[test]
fn what_a_collar_does_is_told_as_it_was_learned() {
    let problem = unlike_its_sheet();
    let known = learned(&problem).kept("2026-11-25");
    let mut truth = problem.car;
    for (p, factor) in [(Place::Fl, 1.2), (Place::Fr, 1.2), (Place::Rl, 0.85), (Place::Rr, 0.85)] {
        let corner = truth.corners.at_mut(p);
        corner.spring_n_per_mm = corner.spring_n_per_mm.map(|v| v * factor);
    }
    let one = Corners::same(1.0);
    let of = |car, known| collar_effects(car, &problem.confidence, one, known).expect("a car");
    let (told, entered) = (of(&problem.car, Some(&known)), of(&problem.car, None));
    let certain = Confidence { spring_pct: 0.0, motion_ratio_pct: 0.0 };
    let true_ones = collar_effects(&truth, &certain, one, None).expect("a car");
    for p in Place::ALL {
        let (told, entered, truth) = (told.at(p), entered.at(p), true_ones.at(p));
        assert_eq!(truth.u_load_kg, 0.0, "{p:?}: certain data leaves no doubt");
        assert!((told.load_kg - truth.load_kg).abs() <= told.u_load_kg, "{p:?}: {told:?} holds {truth:?}");
        assert!((told.height_mm - truth.height_mm).abs() <= told.u_height_mm, "{p:?}: {told:?} holds {truth:?}");
        assert!(
            told.u_load_kg < 0.5 * entered.u_load_kg,
            "{p:?}: known better than by the papers: {told:?} {entered:?}"
        );
        // By hand: one mm at the seat is told as the change of load that `predict` gives.
        let mut collar_mm = Corners::same(0.0);
        *collar_mm.at_mut(p) = 1.0;
        let zero = Corners::same(0.0);
        let now = problem.rounds[problem.rounds.len() - 1];
        let from = Standing { collar_mm: zero, pads_mm: zero, loads_kg: now.loads_kg, heights_mm: now.heights_mm };
        let after = bayhand_chassis::predict(&problem.car, &from, &To { collar_mm, pads_mm: zero }).expect("a reading");
        let by = after.loads_kg.at(p) - now.loads_kg.at(p);
        assert!((by - entered.load_kg).abs() < 1e-6, "{p:?}: {by} by statics, {} told", entered.load_kg);
    }
}

/// R: chances are what they say: over many cars drawn from the prior, as many are inside as was foretold.
#[test]
fn chances_after_rounds_come_true() {
    const SEED: u64 = 515;
    const CROSS_PCT: f64 = 0.06;
    /// So wide that the cross weight decides: these cars all stand at the same heights, which is no prior.
    const HEIGHT_MM: f64 = 5.0;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let (cars, mut foretold, mut inside) = (600, 0.0, 0);
    for _ in 0..cars {
        let mut problem = coupe();
        problem.confidence = Confidence { spring_pct: 10.0, motion_ratio_pct: 3.0 };
        problem.pads.level_mm = 0.0;
        problem.wishes.front_diff_kg = None;
        problem.wishes.rear_diff_kg = None;
        problem.limits = Default::default();
        problem.wishes.cross_pct = Some(Wish { target: 50.0, window: CROSS_PCT, weight: 1.0 });
        problem.wishes.heights_mm = Corners::same(Some(Wish { target: 100.0, window: HEIGHT_MM, weight: 0.3 }));
        problem.rounds[0].heights_mm = Corners { fl: 101.5, fr: 100.5, rl: 99.5, rr: 98.5 };
        let mut truth = problem.car;
        for axle in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]] {
            let (spring, ratio) = ((0.1 * r.gauss()).exp(), (0.03 * r.gauss()).exp());
            for p in axle {
                let corner = truth.corners.at_mut(p);
                corner.spring_n_per_mm = corner.spring_n_per_mm.map(|v| v * spring);
                corner.motion_ratio = corner.motion_ratio.map(|v| v * ratio);
            }
        }
        let n = diagonal(&truth);
        let mut stands = problem.rounds[0];
        let read = |stands: &Round, r: &mut Random| {
            let held = r.gauss() * 0.2;
            let loads_kg = Corners::from_fn(|p| stands.loads_kg.at(p) + held * n.at(p) + r.gauss() * 0.1);
            Round { loads_kg, heights_mm: stands.heights_mm.map(|mm| mm + r.gauss() * 0.3), ..*stands }
        };
        let turn = |stands: &mut Round, steps: [i32; 4]| {
            let zero = Corners::same(0.0);
            let from =
                Standing { collar_mm: zero, pads_mm: zero, loads_kg: stands.loads_kg, heights_mm: stands.heights_mm };
            let collar_mm = Corners::from_array(steps.map(|s| 0.5 * f64::from(s)));
            let after = predict(&truth, &from, &To { collar_mm, pads_mm: zero }).expect("a reading");
            *stands = Round {
                turned_steps: Corners::from_array(steps.map(f64::from)),
                loads_kg: after.loads_kg,
                heights_mm: after.heights_mm,
            };
        };
        problem.rounds = vec![read(&stands, &mut r)];
        // The first round has done its part where it taught something.
        turn(&mut stands, optimum(&problem).expect("a plan").steps.to_array());
        problem.rounds.push(read(&stands, &mut r));
        let found = planned(&problem);
        foretold += found.inside_chance;
        turn(&mut stands, found.steps.to_array());
        let f = bayhand_chassis::Figures::of(&stands.loads_kg);
        let kept = Place::ALL.into_iter().all(|p| (stands.heights_mm.at(p) - 100.0).abs() <= HEIGHT_MM);
        inside += u32::from((f.cross_pct - 50.0).abs() <= CROSS_PCT && kept);
    }
    let (foretold, seen) = (foretold / f64::from(cars), f64::from(inside) / f64::from(cars));
    // Two sigma of so many cars are four points at most.
    assert!((foretold - seen).abs() < 0.04, "{foretold} was foretold, {seen} came");
    assert!((0.2..0.98).contains(&seen), "the test says something: {seen}");
}

/// R: by definition: what one more settle brings is what two readings of the same state know.
#[test]
fn one_more_settle_brings_what_two_readings_know() {
    let mut problem = coupe();
    problem.confidence = Confidence { spring_pct: 10.0, motion_ratio_pct: 3.0 };
    problem.pads.settle_kg = 1.0;
    problem.pads.level_mm = 0.0;
    problem.rounds[0].loads_kg = Corners { fl: 247.0, fr: 244.4, rl: 296.2, rr: 298.8 };
    problem.rounds[0].heights_mm = Corners { fl: 100.3, fr: 99.9, rl: 100.2, rr: 99.7 };
    let once = planned(&problem);
    let mut twice = problem.clone();
    twice.rounds.push(twice.rounds[0]);
    let twice = planned(&twice);
    assert_eq!(once.steps, twice.steps, "the same state, the same plan");
    let (said, came) = (once.settle_again.inside_chance, twice.inside_chance);
    // The second pass of the update moves the mean by its rounding: a point or so.
    assert!((said - came).abs() < 0.01, "{said} was said, {came} came");
    assert!(came > once.inside_chance + 0.05, "and it is worth something here: {} now", once.inside_chance);
}

#[test]
fn settling_again_is_advised_where_it_pays() {
    let mut problem = coupe();
    problem.pads.settle_kg = 1.2;
    problem.rounds[0].loads_kg = Corners { fl: 247.0, fr: 244.4, rl: 296.2, rr: 298.8 };
    problem.rounds[0].heights_mm = Corners { fl: 100.3, fr: 99.9, rl: 100.2, rr: 99.7 };
    (problem.minutes.settle, problem.minutes.round) = (1.0, 30.0);
    let found = planned(&problem);
    let s = found.settle_again;
    assert!(s.worth && found.why.contains("Settle and read once more"), "{s:?}: {}", found.why);
    assert!((s.saves_min - (s.inside_chance - found.inside_chance) * 30.0).abs() < 1e-12, "{s:?}");
    problem.minutes.settle = 29.0;
    assert!(!planned(&problem).settle_again.worth, "not at any price");
    (problem.minutes.settle, problem.pads.settle_kg) = (1.0, 0.0);
    problem.pads.look_kg = 0.01;
    let found = planned(&problem);
    assert!(!found.settle_again.worth, "without friction a settle brings nothing: {:?}", found.settle_again);
}
