//! The figures as CSV and JSON: names that end in units, one row for each time, and texts that stay whole.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_job::handover::{FigureNumber, Figures};
use bayhand_job::view::VerdictCode;
use bayhand_sheet::{csv, json};
use std::collections::BTreeMap;

fn number(name: &str, unit: &str, value: f64, u: Option<f64>) -> FigureNumber {
    FigureNumber { name: name.into(), unit: unit.into(), value, u, wanted: None, verdict: None }
}

fn figures() -> Figures {
    let judged = |value, verdict| FigureNumber {
        wanted: Some((50.0, 0.25)),
        verdict,
        ..number("cross", "pct", value, Some(0.09))
    };
    Figures {
        job: 7,
        car: "Coupe \"GT\", grey".into(),
        practice: true,
        sealed_at: "2026-03-02T16:20:00+01:00".into(),
        seal_code: None,
        as_found: vec![judged(52.76, None)],
        as_left: vec![
            judged(50.02, Some(VerdictCode::Inside)),
            number("load_fl", "kg", 210.2, Some(0.5)),
            number("pressure_cold_fl", "bar", 1.9, None),
        ],
    }
}

#[test]
fn a_row_for_the_car_as_found_and_one_as_left() {
    let text = String::from_utf8(csv(&figures()).unwrap()).unwrap();
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(
        lines,
        [
            "job,car,practice,sealed_at,seal_code,state,cross_pct,cross_u_pct,cross_target_pct,cross_window_pct,\
             cross_verdict,load_fl_kg,load_fl_u_kg,pressure_cold_fl_bar",
            "7,\"Coupe \"\"GT\"\", grey\",true,2026-03-02T16:20:00+01:00,,as found,52.76,0.09,50.0,0.25,,,,",
            "7,\"Coupe \"\"GT\"\", grey\",true,2026-03-02T16:20:00+01:00,,as left,50.02,0.09,50.0,0.25,inside,210.2,0.5,1.9",
            "",
        ],
        "RFC 4180; what was not read is empty"
    );
}

#[test]
fn the_json_has_the_same_names() {
    let text = json(&figures()).unwrap();
    let whole: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert_eq!((&whole["job"], &whole["car"]), (&7.into(), &"Coupe \"GT\", grey".into()));
    assert_eq!(whole["seal_code"], serde_json::Value::Null, "sealed without a key");
    let left: BTreeMap<String, serde_json::Value> = serde_json::from_value(whole["as_left"].clone()).unwrap();
    assert_eq!(left["cross_pct"], 50.02);
    assert_eq!(left["cross_verdict"], "inside");
    let of_csv = String::from_utf8(csv(&figures()).unwrap()).unwrap();
    let header: Vec<&str> = of_csv.split("\r\n").next().unwrap().split(',').collect();
    assert!(left.keys().all(|name| header.contains(&name.as_str())), "{left:?} in {header:?}");
    assert_eq!(json(&figures()).unwrap(), text, "equal input, equal bytes");
}
