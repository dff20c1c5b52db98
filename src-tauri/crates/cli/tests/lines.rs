//! JSON lines through the built program: the reference cases, brute force, and lines that are wrong.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

#[path = "../../planner/tests/common/mod.rs"]
mod boxes;
mod common;

use bayhand_planner::{Plan, Problem};
use boxes::{Ledger, Random, any_problem, coupe};
use common::answers;
use serde_json::{Value, json};

/// Class I: 24 cars with three changes each, computed by an independent rigid-body engine; origin in the data's ORIGIN.md.
const REFERENCE: &str = include_str!("../../chassis/tests/data/statics.json");
const CORNERS: [&str; 4] = ["FL", "FR", "RL", "RR"];

fn apart(a: &Value, b: &Value) -> f64 {
    let at = |v: &Value, corner: &str| v[corner].as_f64().unwrap_or(f64::NAN);
    // A missing corner is infinitely far away.
    let distance = |corner: &&str| (at(a, corner) - at(b, corner)).abs();
    CORNERS.iter().map(distance).map(|d| if d.is_nan() { f64::INFINITY } else { d }).fold(0.0, f64::max)
}

#[test]
fn predict_meets_every_reference_change() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let mut questions = Vec::new();
    let mut wanted = Vec::new();
    for case in reference["cases"].as_array().unwrap() {
        let readings = case["readings"].as_array().unwrap();
        for after in &readings[1..] {
            let to = json!({ "collar_mm": after["collar_mm"], "pads_mm": after["pads_mm"] });
            questions.push(json!({ "car": case["car"], "from": readings[0], "to": to }).to_string());
            wanted.push((case["name"].clone(), after));
        }
    }
    assert_eq!(questions.len(), 72, "24 cars with three changes each");
    let answers = answers("predict", &questions);
    assert_eq!(answers.len(), questions.len(), "a line for each line");
    let mut worst = (0.0_f64, 0.0_f64);
    for (answer, (name, after)) in answers.iter().zip(&wanted) {
        let kg = apart(&answer["loads_kg"], &after["loads_kg"]);
        let mm = apart(&answer["heights_mm"], &after["heights_mm"]);
        assert!(kg <= 0.01, "{name}: loads are {kg} kg off: {answer}");
        assert!(mm <= 0.01, "{name}: heights are {mm} mm off: {answer}");
        worst = (worst.0.max(kg), worst.1.max(mm));
    }
    println!("worst of {}: {:.4} kg, {:.4} mm", answers.len(), worst.0, worst.1);
}

/// R: brute force over every whole step of small boxes (checks.md, quadratic programs).
#[test]
fn plan_is_what_brute_force_finds() {
    const SEED: u64 = 20_261;
    println!("seed {SEED}");
    let mut random = Random(SEED);
    let problems: Vec<Problem> = (0..40).map(|_| any_problem(&mut random, 3)).collect();
    let questions: Vec<String> = problems.iter().map(|p| serde_json::to_string(p).unwrap()).collect();
    for ((problem, question), answer) in problems.iter().zip(&questions).zip(answers("plan", &questions)) {
        let plan: Plan = serde_json::from_value(answer).unwrap_or_else(|e| panic!("{e}: {question}"));
        let (steps, cost) = Ledger::of(problem).optimum();
        assert_eq!(plan.steps.to_array(), steps, "the best of all plans: {question}");
        assert!((plan.cost - cost).abs() <= 1e-8 * (1.0 + cost), "cost {} is not {cost}: {question}", plan.cost);
    }
}

/// A line of `predict` that is answered.
fn good() -> Value {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let case = &reference["cases"][0];
    let (from, after) = (&case["readings"][0], &case["readings"][1]);
    json!({ "car": case["car"], "from": from, "to": { "collar_mm": after["collar_mm"], "pads_mm": after["pads_mm"] } })
}

/// The good line with one value changed.
fn with(mut line: Value, pointer: &str, value: Value) -> String {
    *line.pointer_mut(pointer).unwrap_or_else(|| panic!("{pointer} is in the line")) = value;
    line.to_string()
}

/// A bad line is refused with its code, place and words, and the good line after it is answered.
fn check(command: &str, bad: String, good: &Value, code: &str, at: &str, says: &[&str]) {
    let answers = answers(command, &[bad.clone(), good.to_string()]);
    assert_eq!(answers.len(), 2, "a line for each line: {bad}");
    let error = &answers[0]["error"];
    assert_eq!(error["code"], code, "{bad} -> {error}");
    assert_eq!(error["at"], at, "{bad} -> {error}");
    let text = error["says"].as_str().unwrap_or_default();
    for words in says {
        assert!(text.contains(words), "{words:?} is said of {bad}: {text}");
    }
    assert!(answers[1].get("error").is_none(), "the next line is answered: {}", answers[1]);
}

#[test]
fn lines_that_are_no_question_are_refused() {
    let good = good();
    let bad = |line: &str, code: &str, at: &str, says: &[&str]| check("predict", line.into(), &good, code, at, says);
    bad("fl 250, fr 251", "not-json", "", &["expected"]);
    bad("{\"car\": ", "not-json", "car", &["EOF"]);
    bad(&format!("{good} {good}"), "not-json", "", &["trailing"]);
    bad("[]", "wrong-form", "", &["invalid length"]);
    bad("{}", "wrong-form", "", &["missing field `car`"]);
}

#[test]
fn an_unknown_key_is_refused_with_the_nearest_known_one() {
    let good = good();
    let text = good.to_string();
    let line = text.replacen("spring_n_per_mm", "spring_n_mm", 1);
    // Corners are written in the order FL, FR, RL, RR, so the first one is FL's.
    let says = ["unknown field `spring_n_mm`", "the nearest known one is `spring_n_per_mm`"];
    check("predict", line, &good, "wrong-form", "car.corners.FL.spring_n_mm", &says);
    let line = text.replacen("loads_kg", "load_kg", 1);
    check("predict", line, &good, "wrong-form", "from.load_kg", &["the nearest known one is `loads_kg`"]);
}

#[test]
fn numbers_that_are_none_are_refused() {
    let good = good();
    let at = "/from/loads_kg/FL";
    let number = good.pointer(at).unwrap().to_string();
    let line = good.to_string();
    let written = |text: &str| {
        // The value's own text, right behind its key.
        let place = line.find("\"loads_kg\":{\"FL\":").unwrap() + "\"loads_kg\":{\"FL\":".len();
        format!("{}{text}{}", &line[..place], &line[place + number.len()..])
    };
    assert_eq!(written(&number), line, "control: only the number is changed");
    check("predict", written("NaN"), &good, "not-json", "from.loads_kg.FL", &["expected"]);
    check("predict", written("Infinity"), &good, "not-json", "from.loads_kg.FL", &["expected"]);
    check("predict", written("1e999"), &good, "not-json", "from.loads_kg.FL", &["out of range"]);
    check("predict", written("\"NaN\""), &good, "wrong-form", "from.loads_kg.FL", &["expected f64"]);
    check("predict", written("null"), &good, "wrong-form", "from.loads_kg.FL", &["expected f64"]);
    check("predict", written("-3"), &good, "cannot-be", "from.loads_kg.FL", &["is -3", "from 0 to 5000 kg"]);
    check("predict", written("1e300"), &good, "cannot-be", "from.loads_kg.FL", &["from 0 to 5000 kg"]);
}

#[test]
fn a_car_that_cannot_be_is_refused_by_field_and_value() {
    let good = good();
    let bad = |pointer: &str, value: Value, at: &str, says: &[&str]| {
        check("predict", with(good.clone(), pointer, value), &good, "cannot-be", at, says);
    };
    let centre = "/car/sprung/cg_behind_front_axle_mm";
    bad(centre, json!(9000), "car.sprung.cg_behind_front_axle_mm", &["9000", "between the axles"]);
    bad(centre, json!(-10), "car.sprung.cg_behind_front_axle_mm", &["-10", "between the axles"]);
    bad("/car/corners/RL/spring_n_per_mm", json!(0), "car.corners.RL.spring_n_per_mm", &["is 0", "1 to 5000 N/mm"]);
    bad("/car/corners/FR/tyre_n_per_mm", json!(0), "car.corners.FR.tyre_n_per_mm", &["is 0", "20 to 5000 N/mm"]);
    bad("/car/corners/FR/motion_ratio", json!(-0.8), "car.corners.FR.motion_ratio", &["is -0.8", "0.1 to 3"]);
    bad("/car/wheelbase_mm", json!(2.5), "car.wheelbase_mm", &["is 2.5", "500 to 10000 mm"]);
    bad("/car/sprung/mass_kg", json!(0), "car.sprung.mass_kg", &["is 0", "50 to 10000 kg"]);
}

#[test]
fn a_problem_that_cannot_be_is_refused_by_field_and_value() {
    let good = serde_json::to_value(coupe()).unwrap();
    let bad = |pointer: &str, value: Value, code: &str, at: &str, says: &[&str]| {
        check("plan", with(good.clone(), pointer, value), &good, code, at, says);
    };
    bad("/wishes/cross_pct/window", json!(-0.2), "cannot-be", "wishes.cross_pct.window", &["is -0.2"]);
    bad("/wishes/cross_pct/window", json!(0), "cannot-be", "wishes.cross_pct.window", &["is 0"]);
    bad("/wishes/front_diff_kg/weight", json!(-1), "cannot-be", "wishes.front_diff_kg.weight", &["is -1"]);
    bad("/adjusters/RR/step_mm", json!(0), "cannot-be", "adjusters.RR.step_mm", &["is 0"]);
    bad("/adjusters/FL/up_steps", json!(2.5), "wrong-form", "adjusters.FL.up_steps", &["2.5"]);
    bad("/rounds", json!([]), "cannot-be", "rounds", &[]);
    bad("/car/corners/FL/motion_ratio", json!(0), "cannot-be", "car.corners.FL.motion_ratio", &["is 0"]);
}

/// Two readings of the coupe, the second after turning FL by two steps as entered.
fn like_readings() -> Value {
    let plan = serde_json::to_value(coupe()).unwrap();
    let first = plan["rounds"][0].clone();
    json!({ "car": plan["car"], "adjusters": plan["adjusters"], "pads": plan["pads"], "rounds": [first, first] })
}

#[test]
fn plausible_names_the_pad_that_is_off() {
    let same = like_readings();
    let off = with(same.clone(), "/rounds/1/loads_kg/RR", json!(301.0));
    let answers = answers("plausible", &[same.to_string(), off]);
    assert_eq!(answers[0]["consistent"], json!(true), "the same reading twice: {}", answers[0]);
    assert_eq!(answers[0]["dof"], json!(8), "four loads and four heights: {}", answers[0]);
    assert_eq!(answers[1]["consistent"], json!(false), "7 kg less at RR alone: {}", answers[1]);
    let first = &answers[1]["causes"][0];
    assert_eq!((&first["cause"], &first["where"], &first["unit"]), (&json!("pad_offset"), &json!("RR"), &json!("kg")));
    assert!((first["size"].as_f64().unwrap() + 7.0).abs() < 1.0, "about 7 kg: {first}");
}

#[test]
fn readings_that_cannot_be_are_refused_by_field_and_value() {
    let good = like_readings();
    let bad = |pointer: &str, value: Value, code: &str, at: &str, says: &[&str]| {
        check("plausible", with(good.clone(), pointer, value), &good, code, at, says);
    };
    bad("/rounds", json!([]), "cannot-be", "rounds", &["0 readings", "from 1 to 40"]);
    bad("/rounds/1/loads_kg/FL", json!(-3), "cannot-be", "rounds[1].loads_kg.FL", &["is -3", "from 0 to 5000 kg"]);
    bad("/adjusters/RL/step_mm", json!(0), "cannot-be", "adjusters.RL.step_mm", &["is 0"]);
    bad("/pads/look_kg", json!(-1), "cannot-be", "pads.look_kg", &["is -1"]);
    let line = good.to_string().replacen("heights_mm", "height_mm", 1);
    check("plausible", line, &good, "wrong-form", "rounds[0].height_mm", &["the nearest known one is `heights_mm`"]);
}
