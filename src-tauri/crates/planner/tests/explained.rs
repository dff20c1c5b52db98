//! Every part of the explanation, and every sentence of it, is true of the plan that it explains.

mod common;

use bayhand_planner::{Confidence, LimitName, Plan, Planner, Problem, ReasonCode, UnreachableBecause, optimum, plan};
use bayhand_vehicle::{Adjuster, Axle, Corners, Place};
use common::{Ledger, Random, any_problem, full_problem};

fn planned(problem: &Problem) -> Plan {
    plan(problem).expect("a plan")
}

/// The problem with one unit more of a limit.
fn with_one_more(problem: &Problem, limit: LimitName) -> Problem {
    let mut more = problem.clone();
    let l = &mut more.limits;
    let add = |limit: &mut Option<f64>, by: f64| *limit = limit.map(|v| v + by);
    match limit {
        LimitName::UpSteps { place } => more.adjusters.at_mut(place).up_steps += 1,
        LimitName::DownSteps { place } => more.adjusters.at_mut(place).down_steps += 1,
        LimitName::CollarChange => add(&mut l.collar_change_mm, 1.0),
        LimitName::HeightDiff { axle: Axle::Front } => add(&mut l.height_diff_front_mm, 1.0),
        LimitName::HeightDiff { axle: Axle::Rear } => add(&mut l.height_diff_rear_mm, 1.0),
        LimitName::RakeLeast => add(&mut l.rake_least_mm, -1.0),
        LimitName::RakeMost => add(&mut l.rake_most_mm, 1.0),
        LimitName::BumpGap { place } => {
            // The gap is one for all corners: more room at one corner is more travel there.
            add(&mut more.car.corners.at_mut(place).bump_mm, 1.0);
        }
        LimitName::DroopGap { place } => add(&mut more.car.corners.at_mut(place).droop_mm, 1.0),
        LimitName::Clearance { index } => l.clearances[index].least_mm -= 1.0,
    }
    more
}

/// Every limit that a problem has.
fn limits_of(problem: &Problem) -> Vec<LimitName> {
    let l = &problem.limits;
    let mut all = Vec::new();
    for place in Place::ALL {
        all.extend([LimitName::UpSteps { place }, LimitName::DownSteps { place }]);
        let corner = problem.car.corners.at(place);
        all.extend(l.bump_gap_mm.and(corner.bump_mm).map(|_| LimitName::BumpGap { place }));
        all.extend(l.droop_gap_mm.and(corner.droop_mm).map(|_| LimitName::DroopGap { place }));
    }
    all.extend(l.collar_change_mm.map(|_| LimitName::CollarChange));
    all.extend(l.height_diff_front_mm.map(|_| LimitName::HeightDiff { axle: Axle::Front }));
    all.extend(l.height_diff_rear_mm.map(|_| LimitName::HeightDiff { axle: Axle::Rear }));
    all.extend(l.rake_least_mm.map(|_| LimitName::RakeLeast));
    all.extend(l.rake_most_mm.map(|_| LimitName::RakeMost));
    all.extend((0..l.clearances.len()).map(|index| LimitName::Clearance { index }));
    all
}

/// R: by definition: solved again with one unit more of a limit, the problem costs less by what was said; and a limit
/// that is not named saves nothing.
#[test]
fn limits_that_bind_save_what_is_said_and_others_nothing() {
    const SEED: u64 = 4_242;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let (mut named, mut silent, mut kinds) = (0, 0, std::collections::HashSet::new());
    for number in 0..250 {
        let problem = any_problem(&mut r, 4);
        let found = planned(&problem);
        if found.excess.is_some() {
            assert!(found.binding.is_empty(), "problem {number}: then the excess says what binds");
            continue;
        }
        for limit in limits_of(&problem) {
            let more = optimum(&with_one_more(&problem, limit)).expect("a plan");
            let saves = found.cost - more.cost;
            match found.binding.iter().find(|b| b.limit == limit) {
                Some(said) => {
                    assert!(said.exact, "problem {number}: so small a box is searched to the end");
                    let off = (saves - said.saves_per_unit).abs();
                    assert!(off < 1e-7 * (1.0 + found.cost), "problem {number}, {limit:?}: {said:?}, but {saves}");
                    named += 1;
                    kinds.insert(std::mem::discriminant(&limit));
                }
                None => {
                    assert!(saves < 1e-7 * (1.0 + found.cost), "problem {number}: {limit:?} saves {saves} unnamed");
                    silent += 1;
                }
            }
        }
        let sorted = found.binding.is_sorted_by(|a, b| a.saves_per_unit >= b.saves_per_unit);
        assert!(sorted, "problem {number}: the dearest comes first");
    }
    println!("{named} named, {silent} not");
    assert!(named > 200 && silent > 500, "both occur");
    assert!(kinds.len() >= 8, "limits of all kinds bind somewhere: {} kinds", kinds.len());
}

/// R: brute force: the alternatives are the best plans with fewer collars.
#[test]
fn alternatives_are_the_best_with_fewer_collars() {
    const SEED: u64 = 515_151;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let mut seen = 0;
    for number in 0..120 {
        let problem = any_problem(&mut r, 3);
        let found = planned(&problem);
        let ledger = Ledger::of(&problem);
        let excess = ledger.excess_mm(found.steps.to_array());
        let touched = |s: &[i32; 4]| s.iter().filter(|v| **v != 0).count();
        let allowed: Vec<[i32; 4]> =
            ledger.all().into_iter().filter(|s| ledger.excess_mm(*s) <= excess + 1e-9).collect();
        for other in &found.alternatives {
            let with_so_few = allowed.iter().filter(|s| touched(s) <= other.collars);
            let least = with_so_few.map(|s| ledger.cost(*s)).fold(f64::INFINITY, f64::min);
            assert_eq!(touched(&other.steps.to_array()), other.collars, "problem {number}");
            let off = (other.cost - least).abs();
            assert!(off <= 1e-8 * (1.0 + least), "problem {number}: {other:?}, but {least} is possible");
            seen += 1;
        }
    }
    assert!(seen > 100, "the test says something: {seen} alternatives");
}

/// R: brute force: a place on the trade line is answered by the nearest whole steps, while it is dragged.
#[test]
fn a_place_on_the_line_is_reached_as_near_as_steps_allow() {
    const SEED: u64 = 313;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    for number in 0..60 {
        let mut problem = any_problem(&mut r, 3);
        problem.limits.clearances.clear();
        let planner = Planner::of(&problem).expect("a problem");
        let ledger = Ledger::of(&problem);
        let n = bayhand_chassis::diagonal(&problem.car).to_array();
        let length: f64 = n.iter().map(|v| v * v).sum();
        let (now, _) = ledger.after([0; 4]);
        let excess = planner.optimum().excess_mm;
        let along = |loads: [f64; 4]| (0..4).map(|i| n[i] * (loads[i] - now[i])).sum::<f64>() / length;
        for _ in 0..3 {
            let along_kg = r.within(-12.0, 12.0);
            let distance = |steps: [i32; 4]| {
                let (loads, heights) = ledger.after(steps);
                let mut sum = ((along(loads) - along_kg) / 0.5).powi(2);
                for p in Place::ALL {
                    let here = *problem.rounds[0].heights_mm.at(p);
                    let wish = problem.wishes.heights_mm.at(p).filter(|w| w.weight > 0.0);
                    let (target, window, weight) = wish.map_or((here, 1.0, 1.0), |w| (w.target, w.window, w.weight));
                    sum += weight * ((heights[p.index()] - target) / window).powi(2);
                }
                sum
            };
            let place = planner.place(along_kg);
            let allowed = ledger.all().into_iter().filter(|s| ledger.excess_mm(*s) <= excess + 1e-9);
            let least = allowed.map(distance).fold(f64::INFINITY, f64::min);
            let found = distance(place.steps.to_array());
            assert!((found - least).abs() < 1e-7 * (1.0 + least), "problem {number}: {found}, but {least} is possible");
            let reached = along(ledger.after(place.steps.to_array()).0);
            assert!((place.reached_along_kg - reached).abs() < 1e-9, "problem {number}: and says where that is");
        }
    }
}

/// R: statics of model.md: with the mass moved as said, some place on the trade line meets all load targets.
#[test]
fn mass_moved_as_said_makes_all_load_wishes_possible() {
    const SEED: u64 = 999;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let mut seen = 0;
    for number in 0..300 {
        let problem = full_problem(&mut r);
        let found = planned(&problem);
        let Some(moment) = found.unreachable.iter().find_map(|u| u.move_left_kg_mm) else { continue };
        let f = found.predicted.figures;
        let (tf, tr) = (problem.car.track_front_mm, problem.car.track_rear_mm);
        // The whole moment on the front axle first; then along the line until the front target is met.
        let front = f.front_diff_kg + 2.0 * moment / tf;
        let w = &problem.wishes;
        let [cross, fd, rd] = [w.cross_pct, w.front_diff_kg, w.rear_diff_kg].map(|w| w.expect("all are wished"));
        let along = (fd.target - front) / 2.0;
        let rear = f.rear_diff_kg - 2.0 * along * tf / tr;
        assert!((rear - rd.target).abs() < 1e-9, "problem {number}: the rear target is met too: {rear}");
        let pct = 50.0 + 50.0 * (rear - fd.target) / f.total_kg;
        assert!((pct - cross.target).abs() <= cross.window, "problem {number}: and cross weight is inside: {pct}");
        seen += 1;
    }
    assert!(seen > 30, "the test says something: {seen} times mass was to be moved");
}

/// What a sentence begins with, and what follows from it.
#[test]
fn every_sentence_is_true() {
    const SEED: u64 = 2_718;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    let mut heard = std::collections::BTreeMap::<&str, u32>::new();
    for number in 0..400 {
        let mut problem = if r.chance(0.7) { any_problem(&mut r, 3) } else { full_problem(&mut r) };
        (problem.minutes.settle, problem.minutes.round) = (r.within(0.5, 5.0), r.within(5.0, 60.0));
        problem.pads.settle_kg = r.within(0.0, 2.0);
        if r.chance(0.5) {
            problem.confidence = Confidence::default();
        }
        if r.chance(0.3) {
            problem.rounds[0].loads_kg = Corners { fl: 246.3, fr: 245.1, rl: 296.9, rr: 298.1 };
        }
        let found = planned(&problem);
        for sentence in found.why.split_inclusive(". ").flat_map(split_at_full_stop) {
            let kind = check_sentence(sentence, &problem, &found)
                .unwrap_or_else(|why| panic!("problem {number}: {sentence:?}: {why}"));
            *heard.entry(kind).or_default() += 1;
        }
    }
    println!("{heard:?}");
    for kind in ["turn", "nothing-to-gain", "nearest", "costs-more", "mends", "limits", "binds", "mass", "settle"] {
        assert!(heard.get(kind).is_some_and(|n| *n >= 3), "{kind} is said somewhere: {heard:?}");
    }
}

/// A sentence without its blank; numbers have full stops as well, but no blank behind them.
fn split_at_full_stop(sentence: &str) -> Option<&str> {
    let trimmed = sentence.trim();
    (!trimmed.is_empty()).then_some(trimmed)
}

/// The numbers of a sentence, in order.
fn numbers(sentence: &str) -> Vec<f64> {
    let words = sentence.split(|c: char| !(c.is_ascii_digit() || c == '.'));
    words.filter_map(|word| word.trim_end_matches('.').parse().ok()).collect()
}

/// Chance after steps, by asking about a car that stands there already and cannot be turned. For data that is certain.
fn chance_after(problem: &Problem, steps: [i32; 4]) -> f64 {
    let mut there = problem.clone();
    let (loads, heights) = Ledger::of(problem).after(steps);
    there.rounds[0].loads_kg = Corners::from_array(loads);
    there.rounds[0].heights_mm = Corners::from_array(heights);
    there.adjusters = there.adjusters.map(|a| Adjuster { up_steps: 0, down_steps: 0, ..*a });
    planned(&there).inside_chance
}

fn check_sentence(sentence: &str, problem: &Problem, found: &Plan) -> Result<&'static str, String> {
    let said = numbers(sentence);
    let ledger = Ledger::of(problem);
    let steps = found.steps.to_array();
    let certain = problem.confidence.spring_pct == 0.0;
    let ok = |holds: bool, why: &str| if holds { Ok(()) } else { Err(format!("{why}; numbers {said:?}")) };
    let percent = |chance: f64| (100.0 * chance).round();
    let close = |a: f64, b: f64| (a - b).abs() <= 1.0;
    let nothing = |s: [i32; 4]| s == [0; 4];
    if sentence.starts_with("Turning as planned") {
        ok(!nothing(steps) && !found.stop, "something is turned, and it is worth it")?;
        ok(said[1] == percent(found.inside_chance), "the chance of the plan")?;
        if certain {
            ok(close(said[0], 100.0 * chance_after(problem, [0; 4])), "the chance now")?;
            ok(close(said[1], 100.0 * chance_after(problem, steps)), "the chance of the plan, asked apart")?;
        }
        Ok("turn")
    } else if sentence.starts_with("No steps raise the chance") {
        ok(found.stop && said[1] <= said[0] + 2.0, "nothing adds two points")?;
        ok(found.reason.chance_best < found.reason.chance_now + 0.02, "to the last digit")?;
        Ok("nothing-to-gain")
    } else if sentence.starts_with("The steps given still") {
        ok(!nothing(steps) && ledger.cost(steps) <= ledger.cost([0; 4]), "nearer than now")?;
        Ok("nearest")
    } else if sentence.starts_with("The steps given bring the car back inside") {
        ok(ledger.excess_mm([0; 4]) > 1e-9 && ledger.excess_mm(steps) <= 1e-9, "broken now, kept then")?;
        Ok("mends")
    } else if sentence.starts_with("Turning costs more") {
        ok(nothing(steps) && !found.stop, "nothing is turned, although the chance could rise")?;
        ok(said[1] > said[0] + 0.9, "by two points before rounding")?;
        Ok("costs-more")
    } else if sentence.starts_with("The limits cannot be met") {
        let excess = ledger.excess_mm(steps);
        ok(excess > 0.0 && (said[0] - excess).abs() <= 0.051, "broken by as much as is said")?;
        let broken: f64 = found.excess.as_ref().map_or(0.0, |e| e.broken.iter().map(|b| b.by_mm).sum());
        ok((broken - excess).abs() < 1e-6, "the limits that are named make it up")?;
        Ok("limits")
    } else if sentence.starts_with("What binds most is") {
        let dearest = found.binding.first().ok_or("a limit binds")?;
        let more = optimum(&with_one_more(problem, dearest.limit)).map_err(|e| e.to_string())?;
        // A point of the body is named by its number.
        let [.., saves, cost] = said[..] else { return Err("two numbers".to_owned()) };
        let least = if sentence.contains("at least") { f64::INFINITY } else { 0.000_6 };
        ok(
            saves <= found.cost - more.cost + 0.000_6 && found.cost - more.cost <= saves + least,
            "saved when solved again",
        )?;
        ok((cost - found.cost).abs() <= 0.000_6, "of the cost of the plan")?;
        Ok("binds")
    } else if sentence.starts_with("Collars cannot meet all load wishes at once") {
        let moment = found.unreachable.iter().find_map(|u| u.move_left_kg_mm).ok_or("mass is to be moved")?;
        ok(sentence.contains(if moment > 0.0 { "the left" } else { "the right" }), "to that side")?;
        ok((said[0] * 1_000.0 - moment.abs()).abs() <= 51.0, "by that moment")?;
        ok((said[1] * said[2] - moment.abs()).abs() <= 5.1, "and the example is one")?;
        Ok("mass")
    } else if sentence.starts_with("The load wishes contradict") {
        let against = found.unreachable.iter().any(|u| u.because == UnreachableBecause::Contradiction);
        ok(against, "they do")?;
        Ok("contradiction")
    } else if sentence.starts_with("Settle and read once more") {
        let s = &found.settle_again;
        ok(s.worth && s.saves_min > problem.minutes.settle, "it saves more than it takes")?;
        ok((said[1] - s.saves_min).abs() <= 0.051 && said[2] == percent(s.inside_chance), "as much as is said")?;
        ok(s.inside_chance >= found.inside_chance, "the chance rises")?;
        Ok("settle")
    } else if sentence.starts_with("The search was cut off") {
        ok(!found.proof.optimal && found.proof.gap > 0.0, "it was")?;
        Ok("cut-off")
    } else {
        Err("nobody knows this sentence".to_owned())
    }
}

/// The reason's code and the sentences go together.
#[test]
fn the_code_is_that_of_the_sentence() {
    const SEED: u64 = 1_618;
    println!("seed {SEED}");
    let mut r = Random(SEED);
    for _ in 0..100 {
        let found = planned(&any_problem(&mut r, 3));
        let begins = match found.reason.code {
            ReasonCode::Turn => "Turning as planned",
            ReasonCode::NothingToGain => "No steps raise",
            ReasonCode::TurningCostsMore => "Turning costs more",
            ReasonCode::LimitsCannotBeMet => "The limits cannot be met",
        };
        assert!(found.why.starts_with(begins), "{:?}: {}", found.reason.code, found.why);
    }
}
