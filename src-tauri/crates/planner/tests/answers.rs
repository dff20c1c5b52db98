//! What stands beside the plan, and its JSON.

mod common;

use bayhand_chassis::Mark;
use bayhand_planner::{
    Confidence, LimitName, Limits, Plan, Price, Problem, ReasonCode, UnreachableBecause, Wish, WishName, plan,
};
use bayhand_vehicle::{Adjuster, Axle, Corners, Place};
use common::{Ledger, coupe};

fn planned(problem: &Problem) -> Plan {
    plan(problem).expect("a plan")
}

/// R: the same definition of cost, added up apart from the planner.
#[test]
fn the_answer_is_consistent_with_itself() {
    let problem = coupe();
    let ledger = Ledger::of(&problem);
    let found = planned(&problem);
    let (loads, heights) = ledger.after(found.steps.to_array());
    for i in 0..4 {
        assert!((found.predicted.loads_kg.to_array()[i] - loads[i]).abs() < 1e-9, "loads after the steps");
        assert!((found.predicted.heights_mm.to_array()[i] - heights[i]).abs() < 1e-9, "heights after the steps");
    }
    assert_eq!(planned(&problem), found, "the same problem gives the same answer");
    let text = serde_json::to_string(&found).expect("JSON");
    assert_eq!(serde_json::from_str::<Plan>(&text).expect("the same answer"), found, "the answer survives JSON");
    assert!(found.learned.is_none(), "one round teaches nothing");
    let mut fewer = 4;
    for other in &found.alternatives {
        assert!(other.collars < fewer, "fewest collars last");
        assert!(other.cost >= found.cost, "and none is better");
        fewer = other.collars;
    }
}

/// R: the trade line of chassis; whole steps come within a step of each place while heights stay.
#[test]
fn the_trade_line_is_reached_in_whole_steps() {
    let mut problem = coupe();
    problem.wishes.heights_mm = Corners::same(None);
    let found = planned(&problem);
    assert_eq!(found.trade_line.iter().filter(|place| place.mark.is_some()).count(), 4, "four marks");
    assert!(found.trade_line.len() > 10, "and stops between them: {}", found.trade_line.len());
    assert!(found.trade_line.is_sorted_by(|a, b| a.along_kg <= b.along_kg), "in the order along the line");
    for place in &found.trade_line {
        let even = match place.mark {
            Some(Mark::FrontEven) => place.reached.figures.front_diff_kg,
            Some(Mark::RearEven) => place.reached.figures.rear_diff_kg,
            Some(Mark::CrossWanted) => (place.reached.figures.cross_pct - 50.0) / 100.0 * place.figures.total_kg,
            Some(Mark::SameLeftShare) | None => continue,
        };
        // One step of one collar is about 1.5 kg along the line, 3 kg of difference.
        assert!(even.abs() < 2.0, "{:?} is missed by {even} kg", place.mark);
        for p in Place::ALL {
            let moved = place.reached.heights_mm.at(p) - problem.rounds[0].heights_mm.at(p);
            assert!(moved.abs() < 1.5, "{:?}: the body moves {moved} mm at {}", place.mark, p.code());
        }
    }
}

/// R: by definition: solving again with one unit more saves what was said.
#[test]
fn limits_that_bind_say_what_more_would_bring() {
    let mut problem = coupe();
    problem.price = Price::default();
    problem.adjusters.fr = Adjuster { step_mm: 0.5, up_steps: 2, down_steps: 2 };
    let found = planned(&problem);
    let up = found.binding.iter().find(|b| b.limit == LimitName::UpSteps { place: Place::Fr }).expect("FR binds");
    problem.adjusters.fr.up_steps += 1;
    let more = planned(&problem);
    assert!((found.cost - more.cost - up.saves_per_unit).abs() < 1e-9, "one step more at FR");

    let mut problem = coupe();
    problem.limits.height_diff_front_mm = Some(1.0);
    let found = planned(&problem);
    let front = LimitName::HeightDiff { axle: Axle::Front };
    let bound = found.binding.iter().find(|b| b.limit == front).expect("the front limit binds");
    problem.limits.height_diff_front_mm = Some(2.0);
    let more = planned(&problem);
    assert!((found.cost - more.cost - bound.saves_per_unit).abs() < 1e-9, "one mm more in front");
}

/// R: model.md, statics 3 and 5: with the left share off one half both axles cannot be even at once; mass can do it.
#[test]
fn what_collars_cannot_reach_is_said() {
    let mut problem = coupe();
    problem.wishes.heights_mm = Corners::same(None);
    let even = Some(Wish { target: 0.0, window: 1.0, weight: 1.0 });
    (problem.wishes.front_diff_kg, problem.wishes.rear_diff_kg) = (even, even);
    let found = planned(&problem);
    let front = found.unreachable.iter().find(|u| u.wish == WishName::FrontDiffKg).expect("front stays uneven");
    assert_eq!(front.because, UnreachableBecause::TradeLine, "alone it could be even");
    // Moment of the predicted loads about the middle plane, half tracks 740 and 755 mm: it has to go.
    let moment = front.move_left_kg_mm.expect("mass can do it");
    let f = found.predicted.figures;
    assert!((moment + 740.0 * f.front_diff_kg + 755.0 * f.rear_diff_kg).abs() < 1e-6, "{moment} kg mm");
    assert!(moment < -5_000.0, "the reading is some 10000 kg mm heavy on the left");

    problem.adjusters = Corners::same(Adjuster { step_mm: 0.5, up_steps: 1, down_steps: 1 });
    let found = planned(&problem);
    let cross = found.unreachable.iter().find(|u| u.wish == WishName::CrossPct).expect("too few steps left");
    assert_eq!(cross.because, UnreachableBecause::Adjusters, "no steps reach it");
    assert!(cross.least_error < -0.2 && cross.least_error > cross.error - 1e-9, "the best is still outside");
}

#[test]
fn broken_limits_are_broken_least_and_said() {
    let mut problem = coupe();
    problem.limits = Limits { height_diff_front_mm: Some(0.5), ..Limits::default() };
    problem.rounds[0].heights_mm = Corners { fl: 110.0, fr: 90.0, rl: 100.0, rr: 100.0 };
    problem.adjusters = Corners::same(Adjuster { step_mm: 0.5, up_steps: 3, down_steps: 3 });
    let found = planned(&problem);
    assert_eq!(found.reason.code, ReasonCode::LimitsCannotBeMet, "{}", found.why);
    let excess = found.excess.expect("the limit stays broken");
    assert!(excess.least && excess.planned_mm > 0.0 && excess.planned_mm < excess.now_mm, "{excess:?}");
    assert_eq!((found.steps.fl, found.steps.fr), (-3, 3), "all that the front collars can do");
}

/// The JSON of the interchange text, with optional keys left out.
#[test]
fn problems_are_read_from_json() {
    let text = serde_json::to_string(&coupe()).expect("JSON");
    assert_eq!(serde_json::from_str::<Problem>(&text).expect("a problem"), coupe(), "a problem survives JSON");
    let mut value: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    let object = value.as_object_mut().expect("an object");
    for optional in ["confidence", "price", "limits"] {
        object.remove(optional);
    }
    object["wishes"] = serde_json::json!({"heights_mm": {"FL": {"target": 100, "window": 1, "weight": 1}}});
    let round = object["rounds"][0].as_object_mut().expect("a round");
    round.remove("turned_steps");
    let read: Problem = serde_json::from_value(value.clone()).expect("optional keys are optional");
    assert_eq!(read.confidence, Confidence { spring_pct: 10.0, motion_ratio_pct: 3.0 }, "10 and 3 when absent");
    assert!(read.wishes.heights_mm.fr.is_none(), "a corner may be left out");
    value["limits"] = serde_json::json!({"height_diff_mm": 3});
    let why = serde_json::from_value::<Problem>(value).expect_err("an unknown key");
    assert!(why.to_string().contains("height_diff_mm"), "it is named: {why}");
}

/// Every type of the answer has its schema.
#[test]
fn problem_and_plan_have_schemas() {
    let text = |schema: schemars::Schema| serde_json::to_string(&schema).expect("JSON");
    let answer = text(schemars::schema_for!(Plan));
    for key in [
        "steps",
        "cost",
        "predicted",
        "uncertainty",
        "inside_chance",
        "binding",
        "stop",
        "why",
        "trade_line",
        "alternatives",
        "unreachable",
        "learned",
        "states",
    ] {
        assert!(answer.contains(&format!("\"{key}\"")), "{key} is in the schema");
    }
    assert!(text(schemars::schema_for!(Problem)).contains("\"rounds\""), "the problem has one too");
}
