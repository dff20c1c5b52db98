//! What cannot be is refused by field, value and range; what is odd but possible gets a clear answer; nothing hangs.

mod common;

use bayhand_planner::{
    Clearance, Confidence, LimitName, Plan, Price, Problem, ReasonCode, UnreachableBecause, WORK_LIMIT, Wish, WishName,
    Wishes, plan,
};
use bayhand_vehicle::{Adjuster, Corners, Place};
use common::coupe;

fn planned(problem: &Problem) -> Plan {
    plan(problem).expect("a plan")
}

#[test]
fn bad_problems_are_refused_by_field_and_range() {
    fn check(change: impl FnOnce(&mut Problem), says: &str) {
        let mut problem = coupe();
        change(&mut problem);
        let why = plan(&problem).expect_err(says);
        assert_eq!(why.to_string(), says);
        assert!(says.starts_with(&why.at()), "{} is the field", why.at());
    }
    let wish = |window: f64, weight: f64| Some(Wish { target: 50.0, window, weight });
    check(|p| p.wishes.cross_pct = wish(0.0, 1.0), "wishes.cross_pct.window is 0; it must be from 0.000001 to 10000");
    check(
        |p| p.wishes.heights_mm.fl = wish(1.0, -1.0),
        "wishes.heights_mm.FL.weight is -1; it must be from 0 to 1000000",
    );
    check(
        |p| p.wishes.cross_pct = wish(f64::NAN, 1.0),
        "wishes.cross_pct.window is NaN; it must be from 0.000001 to 10000",
    );
    check(
        |p| p.wishes = bayhand_planner::Wishes { cross_pct: wish(1.0, 0.0), ..Default::default() },
        "wishes is 1 wishes of weight 0; it must be at least one wish with a weight above zero",
    );
    check(|p| p.adjusters.rl.up_steps = -1, "adjusters.RL.up_steps is -1; it must be from 0 to 10000 steps");
    check(|p| p.adjusters.fr.step_mm = 0.0, "adjusters.FR.step_mm is 0; it must be above 0 and at most 100 mm");
    check(|p| p.rounds.clear(), "rounds is 0 readings; it must be from 1 to 1000 readings; the last one is now");
    check(|p| p.rounds[0].loads_kg.rr = f64::NAN, "rounds[0].loads_kg.RR is NaN; it must be a load from 0 to 5000 kg");
    check(|p| p.price.per_step = -0.1, "price.per_step is -0.1; it must be from 0 to 1e9");
    check(|p| p.pads.settle_kg = -0.1, "pads.settle_kg is -0.1; it must be from 0 to 100");
    check(|p| p.price.per_collar = 1e12, "price.per_collar is 1000000000000; it must be from 0 to 1e9");
    check(
        |p| p.limits.height_diff_rear_mm = Some(10.5),
        "limits.height_diff_rear_mm is 10.5; it must be from 0 to 10 mm, a supervisor's waiver included",
    );
    check(
        |p| (p.limits.rake_least_mm, p.limits.rake_most_mm) = (Some(3.0), Some(2.0)),
        "limits.rake_least_mm is 3, above rake_most_mm 2; it must be at most rake_most_mm",
    );
    check(
        |p| {
            let point = Clearance { behind_front_axle_mm: 0.0, left_mm: 0.0, now_mm: f64::NAN, least_mm: 60.0 };
            p.limits.clearances.push(point);
        },
        "limits.clearances[0].now_mm is NaN; it must be from -1000 to 5000 mm",
    );
    check(|p| p.limits.bump_gap_mm = Some(-1.0), "limits.bump_gap_mm is -1; it must be from 0 to 500 mm");
    check(|p| p.limits.collar_change_mm = Some(-1.0), "limits.collar_change_mm is -1; it must be from 0 to 1000 mm");
    check(|p| p.minutes.round = f64::NAN, "minutes.round is NaN; it must be from 0 to 10000 min");
    check(|p| p.car.wheelbase_mm = 0.0, "car.wheelbase_mm is 0; it must be from 500 to 10000 mm");
    check(|p| p.confidence.spring_pct = f64::INFINITY, "confidence.spring_pct is inf; it must be from 0 to 100 %");
}

/// Every number of a problem, made NaN, infinite or huge in turn, is refused by its own path.
#[test]
fn numbers_that_cannot_be_are_refused_wherever_they_stand() {
    fn places(value: &serde_json::Value, at: String, found: &mut Vec<String>) {
        match value {
            serde_json::Value::Number(_) => found.push(at),
            serde_json::Value::Array(all) => {
                all.iter().enumerate().for_each(|(i, v)| places(v, format!("{at}/{i}"), found));
            }
            serde_json::Value::Object(all) => all.iter().for_each(|(k, v)| places(v, format!("{at}/{k}"), found)),
            _ => {}
        }
    }
    let good = serde_json::to_value(coupe()).expect("JSON");
    let mut all = Vec::new();
    places(&good, String::new(), &mut all);
    assert!(all.len() > 80, "control: every number is tried, {} of them", all.len());
    for at in all {
        let mut bad = good.clone();
        *bad.pointer_mut(&at).expect("it is there") = serde_json::json!(1e200);
        // A whole number of steps is refused by its form, the others by their range.
        if let Ok(problem) = serde_json::from_value::<Problem>(bad) {
            let why = plan(&problem).expect_err(&at);
            let named = why.at().replace(['.', '['], "/").replace(']', "");
            assert!(format!("/{named}").starts_with(&at) || at.starts_with(&format!("/{named}")), "{at}: {why}");
        }
    }
}

/// Front even, rear even and 52 % cross at once: no car does that, and it is said.
#[test]
fn windows_that_contradict_each_other() {
    let mut problem = coupe();
    let wish = |target: f64| Some(Wish { target, window: 0.1, weight: 1.0 });
    problem.wishes =
        Wishes { cross_pct: wish(52.0), front_diff_kg: wish(0.0), rear_diff_kg: wish(0.0), ..Wishes::default() };
    let found = planned(&problem);
    let because: Vec<_> = found.unreachable.iter().map(|u| u.because).collect();
    assert!(because.contains(&UnreachableBecause::Contradiction), "{because:?}");
    assert!(found.unreachable.iter().all(|u| u.move_left_kg_mm.is_none()), "no mass helps");
    assert!(found.why.contains("contradict each other"), "{}", found.why);
    assert!(found.inside_chance < 1e-6, "and nothing is inside");
}

#[test]
fn collars_without_travel() {
    let mut problem = coupe();
    problem.adjusters = Corners::same(Adjuster { step_mm: 0.5, up_steps: 0, down_steps: 0 });
    let found = planned(&problem);
    assert_eq!(found.steps, Corners::same(0), "nothing can be turned");
    assert!(found.stop, "no allowed plan raises the chance");
    assert!(!found.binding.is_empty(), "and one step more would help");
    let cross = found.unreachable.iter().find(|u| u.wish == WishName::CrossPct).expect("it stays outside");
    assert_eq!(cross.because, UnreachableBecause::Adjusters, "that is why");
}

#[test]
fn four_equal_loads() {
    let mut problem = coupe();
    problem.rounds[0].loads_kg = Corners::same(270.0);
    problem.rounds[0].heights_mm = Corners::same(100.0);
    let found = planned(&problem);
    assert_eq!(found.steps, Corners::same(0), "everything is where it should be");
    assert_eq!(found.cost, 0.0, "and costs nothing");
    assert!(found.stop && found.reason.code == ReasonCode::NothingToGain, "{}", found.why);
}

/// One reading of a car of which nothing is known.
#[test]
fn one_reading_only() {
    let mut problem = coupe();
    problem.confidence = Confidence::default();
    for p in Place::ALL {
        let corner = problem.car.corners.at_mut(p);
        (corner.spring_n_per_mm, corner.motion_ratio) = (None, None);
    }
    let found = planned(&problem);
    assert!(found.learned.is_none(), "one reading teaches nothing");
    assert!(found.cost < found.reason.cost_now, "and there is a plan all the same");
}

/// The finest steps and the longest travel that are allowed, and wishes that leave directions free: the work is bounded,
/// and what is not proved is said.
#[test]
fn the_largest_problems_come_to_an_end() {
    let wish = |target: f64| Some(Wish { target, window: 0.2, weight: 1.0 });
    let one = Wishes { cross_pct: wish(50.0), ..Wishes::default() };
    let two = Wishes { cross_pct: wish(50.0), front_diff_kg: wish(1.0), ..Wishes::default() };
    for (wishes, limit) in [(one, None), (two, Some(0.01)), (coupe().wishes, Some(0.01))] {
        let mut problem = coupe();
        problem.adjusters = Corners::same(Adjuster { step_mm: 0.001, up_steps: 10_000, down_steps: 10_000 });
        problem.price = Price::default();
        (problem.limits.height_diff_front_mm, problem.limits.height_diff_rear_mm) = (limit, limit);
        problem.wishes = wishes;
        let found = planned(&problem);
        let proof = found.proof;
        println!("{proof:?}: {}", found.why);
        assert!(proof.nodes <= WORK_LIMIT, "work is bounded: {proof:?}");
        assert!(
            found.cost - proof.gap >= -1e-12 && found.cost <= found.reason.cost_now,
            "a plan and its gap: {proof:?}"
        );
        assert_eq!(found.why.contains("cut off"), proof.gap > 0.0, "what is not proved is said: {}", found.why);
        let front = found.binding.iter().any(|b| matches!(b.limit, LimitName::HeightDiff { .. }));
        assert!(limit.is_some() || !front, "a limit that is not there does not bind");
    }
}
