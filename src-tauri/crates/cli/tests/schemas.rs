//! The published JSON Schemas: those in `tests/data/schema` are what the program says today, and its answers keep to
//! them. With `BAYHAND_WRITE_GENERATED` set they are written instead of compared.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

#[path = "../../planner/tests/common/mod.rs"]
mod boxes;
mod common;

use boxes::{Random, any_problem};
use common::{answers, complaint, printed, run};
use jsonschema::Validator;
use serde_json::{Value, json};
use std::{fs, path::PathBuf};

const PUBLISHED: [&str; 11] = [
    "predict",
    "predict-answer",
    "plan",
    "plan-answer",
    "plausible",
    "plausible-answer",
    "align",
    "align-answer",
    "hear",
    "hear-answer",
    "refused",
];
const REFERENCE: &str = include_str!("../../chassis/tests/data/statics.json");

fn path(of: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("../../../tests/data/schema/{of}.json"))
}

#[test]
fn published_schemas_are_what_the_program_says() {
    for of in PUBLISHED {
        let said = run(["schema", of]);
        assert!(said.status.success(), "{of}: {}", complaint(&said));
        if std::env::var_os("BAYHAND_WRITE_GENERATED").is_some() {
            fs::create_dir_all(path(of).parent().unwrap()).unwrap();
            fs::write(path(of), printed(&said)).unwrap();
        }
        let published = fs::read_to_string(path(of)).unwrap_or_default();
        assert_eq!(published, printed(&said), "{}; BAYHAND_WRITE_GENERATED=1 writes it again", path(of).display());
    }
    let unknown = run(["schema", "predictions"]);
    assert_eq!(unknown.status.code(), Some(1), "there is no schema of that name");
    assert!(complaint(&unknown).contains("predictions"), "and it is named: {}", complaint(&unknown));
}

fn schema(of: &str) -> Validator {
    jsonschema::validator_for(&serde_json::from_str(&printed(&run(["schema", of]))).unwrap()).unwrap()
}

fn check(schema: &Validator, value: &Value) {
    let faults: Vec<String> = schema.iter_errors(value).map(|e| format!("{}: {e}", e.instance_path())).collect();
    assert!(faults.is_empty(), "{value} does not keep to its schema: {faults:?}");
}

#[test]
fn questions_and_answers_keep_to_their_schemas() {
    let reference: Value = serde_json::from_str(REFERENCE).unwrap();
    let case = &reference["cases"][0];
    let to = json!({ "collar_mm": case["readings"][1]["collar_mm"], "pads_mm": case["readings"][1]["pads_mm"] });
    let predict = json!({ "car": case["car"], "from": case["readings"][0], "to": to });
    check(&schema("predict"), &predict);
    let mut lifts = predict.clone();
    lifts["to"]["collar_mm"]["FL"] = json!(-60);
    for answer in answers("predict", &[predict.to_string(), lifts.to_string()]) {
        check(&schema("predict-answer"), &answer);
    }
    let plausible = plausible_line();
    check(&schema("plausible"), &plausible);
    check(&schema("plausible-answer"), &answers("plausible", &[plausible.to_string()])[0]);
    check(&schema("refused"), &answers("predict", &["{}".into()])[0]);

    const SEED: u64 = 11_223;
    println!("seed {SEED}");
    let mut random = Random(SEED);
    let problems: Vec<Value> = (0..25).map(|_| serde_json::to_value(any_problem(&mut random, 3)).unwrap()).collect();
    problems.iter().for_each(|problem| check(&schema("plan"), problem));
    let questions: Vec<String> = problems.iter().map(Value::to_string).collect();
    answers("plan", &questions).iter().for_each(|answer| check(&schema("plan-answer"), answer));
}

/// Two readings of a car, the second with a pad that shows 9 kg too much.
fn plausible_line() -> Value {
    let plan = serde_json::to_value(boxes::coupe()).unwrap();
    let first = plan["rounds"][0].clone();
    let mut second = first.clone();
    second["loads_kg"]["RL"] = json!(first["loads_kg"]["RL"].as_f64().unwrap() + 9.0);
    json!({ "car": plan["car"], "adjusters": plan["adjusters"], "pads": plan["pads"], "rounds": [first, second] })
}

/// Control: the schemas refuse what the program refuses by form.
#[test]
fn what_is_of_another_form_does_not_keep_to_the_schema() {
    let answer = answers("predict", &["{}".into()]).remove(0);
    assert!(!schema("predict-answer").is_valid(&answer), "a refusal is no prediction");
    assert!(!schema("plan-answer").is_valid(&json!({ "steps": { "FL": 1 } })), "half a plan is none");
    let problem = serde_json::to_value(boxes::coupe()).unwrap();
    let mut with_unknown_key = problem.clone();
    with_unknown_key["wishes"]["crossweight"] = json!(50);
    assert!(schema("plan").is_valid(&problem), "control: the problem itself keeps to it");
    assert!(!schema("plan").is_valid(&with_unknown_key), "an unknown key is refused");
}
