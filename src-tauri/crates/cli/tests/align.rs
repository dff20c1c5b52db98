//! `align` through the built program: the values of the check list, signs, and lines that are wrong.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use common::{answers, printed, run};
use serde_json::{Value, json};

fn one(question: &Value) -> Value {
    answers("align", &[question.to_string()]).remove(0)
}

#[track_caller]
fn near(answer: &Value, key: &str, wanted: f64, tolerance: f64) {
    let found = answer[key].as_f64().unwrap_or_else(|| panic!("{key} is in {answer}"));
    assert!((found - wanted).abs() <= tolerance, "{key}: {found} is not {wanted}");
}

/// R: caster 7, inclination 14, camber -2, 20 degrees: +1.262121 and -3.525174; caster 3 alone: +-1.026889.
#[test]
fn caster_of_a_sweep() {
    let sweep = |out: f64, inward: f64, inclination: f64| json!({ "sweep": { "angle_deg": 20, "camber_out_deg": out, "camber_in_deg": inward, "inclination_deg": inclination } });
    near(&one(&sweep(1.262121, -3.525174, 14.0)), "caster_deg", 7.0, 2e-6);
    near(&one(&sweep(1.026889, -1.026889, 0.0)), "caster_deg", 3.0, 2e-6);
    assert_eq!(one(&sweep(1.0, -1.0, 0.0)).as_object().unwrap().len(), 1, "the answer to what was asked and no more");
}

/// R: D sin(toe): 1 mm at 405.6 mm = 0.1413 degrees. The line lies outside: a smaller front distance is toe-out.
#[test]
fn toe_of_two_distances() {
    let toe = one(&json!({ "toe": { "front_mm": 101, "rear_mm": 100, "between_mm": 405.6 } }));
    near(&toe, "toe_deg", 0.1413, 5e-5);
    near(&toe, "toe_min", 0.1413 * 60.0, 3e-3);
    near(&one(&json!({ "toe": { "front_mm": 100, "rear_mm": 101, "between_mm": 405.6 } })), "toe_deg", -0.1413, 5e-5);
}

/// M: thrust = (right - left) / 2, positive when the rear wheels point left.
#[test]
fn thrust_of_the_rear_toes() {
    near(&one(&json!({ "rear_toe_deg": { "left": 0.1, "right": 0.3 } })), "thrust_deg", 0.1, 1e-12);
    near(&one(&json!({ "rear_toe_deg": { "left": 0.3, "right": 0.1 } })), "thrust_deg", -0.1, 1e-12);
}

/// R: ISO 724: one turn is a pitch, opposite threads two pitches.
#[test]
fn turns_of_a_tie_rod() {
    let rod = |deg: f64, opposite: bool| json!({ "tie_rod": { "toe_change_deg": deg, "arm_mm": 110, "pitch_mm": 1.5, "opposite_threads": opposite } });
    let wanted = 110.0 * 0.25_f64.to_radians().sin() / 1.5;
    near(&one(&rod(0.25, false)), "turns", wanted, 1e-12);
    near(&one(&rod(-0.25, true)), "turns", -wanted / 2.0, 1e-12);
}

#[test]
fn wrong_lines_are_refused_and_the_next_one_is_answered() {
    let good = json!({ "rear_toe_deg": { "left": 0.1, "right": 0.3 } });
    let check = |bad: Value, code: &str, at: &str, says: &str| {
        let answers = answers("align", &[bad.to_string(), good.to_string()]);
        let error = &answers[0]["error"];
        assert_eq!((error["code"].as_str(), error["at"].as_str()), (Some(code), Some(at)), "{bad} -> {error}");
        assert!(error["says"].as_str().unwrap().contains(says), "{says:?} is said of {bad}: {error}");
        near(&answers[1], "thrust_deg", 0.1, 1e-12);
    };
    check(json!({}), "wrong-form", "", "exactly one of");
    check(
        json!({ "rear_toe_deg": { "left": 0, "right": 0 }, "toe": { "front_mm": 1, "rear_mm": 1, "between_mm": 400 } }),
        "wrong-form",
        "",
        "exactly one of",
    );
    check(json!({ "tow": {} }), "wrong-form", "tow", "the nearest known one is `toe`");
    check(
        json!({ "toe": { "front_mm": 1, "rear_mm": 1, "between_mm": 0 } }),
        "cannot-be",
        "toe.between_mm",
        "toe.between_mm is 0; it must be from 100 to 1500 mm",
    );
    check(
        json!({ "sweep": { "angle_deg": 0, "camber_out_deg": 1, "camber_in_deg": -1, "inclination_deg": 12 } }),
        "cannot-be",
        "sweep.angle_deg",
        "from 5 to 60 degrees",
    );
    check(json!({ "rear_toe_deg": { "left": 90, "right": 0 } }), "cannot-be", "rear_toe_deg.left", "is 90");
    let rod = json!({ "tie_rod": { "toe_change_deg": 1, "arm_mm": 0, "pitch_mm": 1.5, "opposite_threads": true } });
    check(rod, "cannot-be", "tie_rod.arm_mm", "from 20 to 500 mm");
}

#[test]
fn questions_and_answers_keep_to_their_schemas() {
    let schema =
        |of: &str| jsonschema::validator_for(&serde_json::from_str(&printed(&run(["schema", of]))).unwrap()).unwrap();
    let question = json!({ "toe": { "front_mm": 101, "rear_mm": 100, "between_mm": 405.6 } });
    assert!(schema("align").is_valid(&question), "the question");
    assert!(schema("align-answer").is_valid(&one(&question)), "the answer");
    assert!(!schema("align").is_valid(&json!({ "tow": {} })), "control: an unknown key");
    assert!(!schema("align-answer").is_valid(&one(&json!({}))), "control: a refusal is no answer");
}
