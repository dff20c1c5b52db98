//! Every command called from every window: allowed only where that window's capability says so.
//!
//! The table below is the truth that is tested; it is written by hand and must name every command of the program.

use bayhand_tests::windows::{App, Tested, Window};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::Path;

/// A command, arguments that it takes, and which of the windows may call it: step, bay, review.
fn rights() -> Vec<(&'static str, Value, [bool; 3])> {
    // A job that no book has: an allowed call is refused by the program itself, and records nothing.
    let none = 999_999;
    let ask = json!({ "revision": 0, "by": "", "wish": { "kind": "seal" } });
    let nobody = json!({ "initials": "", "name": "", "rank": "", "alone": [] });
    let staff = json!({ "by": "", "passphrase": "", "wish": { "kind": "let-go", "initials": "" } });
    let correction = json!({
        "job": none, "revision": 0, "by": "", "pin": "", "entry": 1, "key": "", "text": "", "reason": ""
    });
    vec![
        ("labels", json!({}), [true, true, true]),
        ("step_view", json!({ "by": "" }), [true, false, false]),
        ("preview", json!({ "by": "", "at": 0.5 }), [true, false, false]),
        ("read_back", json!({ "by": "", "step": "", "entries": {} }), [true, false, false]),
        ("settings", json!({}), [true, false, false]),
        // Refused by the program: nothing is set.
        ("set_preferences", json!({ "preferences": { "language": "none" } }), [true, false, false]),
        ("say_again", json!({ "by": "" }), [true, false, false]),
        (
            "attend",
            json!({ "attention": { "by": "", "step": "", "entries": {}, "reading_back": false } }),
            [true, false, false],
        ),
        ("talk", json!({ "down": false }), [true, false, false]),
        ("confirm_heard", json!({ "right": false }), [true, false, false]),
        ("pedal", json!({}), [false, false, true]),
        ("act", json!({ "ask": ask }), [true, false, false]),
        ("first_supervisor", json!({ "person": nobody, "pin": "", "passphrase": "" }), [true, false, false]),
        ("recover", json!({ "initials": "", "code": "", "pin": "", "passphrase": "" }), [true, false, true]),
        ("hand_over", json!({ "initials": "", "pin": "" }), [true, false, false]),
        ("sign_off", json!({}), [true, false, false]),
        ("change_pin", json!({ "initials": "", "old": "", "new": "" }), [true, false, false]),
        ("keep_people", json!({ "ask": staff }), [true, false, true]),
        ("waive", json!({ "revision": 0, "by": "", "pin": "", "step": "", "reason": "" }), [true, false, false]),
        ("look_at_procedure", json!({ "place": "" }), [true, false, false]),
        ("shipped_procedure", json!({}), [true, false, false]),
        ("sign_for_procedure", json!({ "by": "", "passphrase": "", "reason": "" }), [true, false, false]),
        ("bay_view", json!({}), [false, true, false]),
        ("review_view", json!({ "job": null, "filter": {} }), [false, false, true]),
        ("review_act", json!({ "job": none, "ask": ask }), [false, false, true]),
        ("seal", json!({ "job": none, "revision": 0, "by": "", "passphrase": "" }), [false, false, true]),
        (
            "send_back",
            json!({ "job": none, "revision": 0, "by": "", "pin": "", "step": "", "reason": "" }),
            [false, false, true],
        ),
        ("correct", json!({ "ask": correction }), [false, false, true]),
        ("person_record", json!({ "initials": "XX" }), [false, false, true]),
        ("cars", json!({ "search": "" }), [false, false, true]),
        ("manual", json!({}), [false, false, true]),
        ("car", json!({ "id": none }), [false, false, true]),
        ("instruments", json!({}), [false, false, true]),
        ("origin", json!({ "job": none, "figure": "" }), [false, false, true]),
        ("book_view", json!({}), [false, false, true]),
        // A folder that cannot be made.
        ("copy_to", json!({ "place": "/dev/null/copies" }), [false, false, true]),
        ("export_job", json!({ "job": none }), [false, false, true]),
        ("import_job", json!({ "place": "", "by": "", "pin": "" }), [false, false, true]),
        ("imported_job", json!({ "id": none }), [false, false, true]),
        ("customer", json!({ "job": none }), [false, false, true]),
        ("set_customer", json!({ "job": none, "by": "", "pin": "", "text": "" }), [false, false, true]),
        ("erase_customer", json!({ "job": none, "by": "", "pin": "", "reason": "" }), [false, false, true]),
        ("verify", json!({ "job": none }), [false, false, true]),
        ("coach", json!({ "job": none }), [false, false, true]),
        ("write_sheet", json!({ "job": none }), [false, false, true]),
        // Of Tauri's own commands none that acts on windows or speaks to them in the program's name.
        ("plugin:event|emit", json!({ "event": "changed", "payload": { "revision": 1 } }), [false; 3]),
        ("plugin:webview|create_webview_window", json!({ "options": { "label": "other" } }), [false; 3]),
        ("plugin:window|close", json!({ "label": "step" }), [false; 3]),
    ]
}

/// True when Tauri let the call through to the program; an answer of the program's own is a view or a refusal object.
fn let_through(command: &str, answer: Result<Value, Value>) -> bool {
    match answer {
        Ok(_) => true,
        Err(Value::Object(refused)) => {
            assert!(refused.contains_key("code"), "{command}: not a refusal in our form: {refused:?}");
            true
        }
        Err(Value::String(says)) => {
            assert!(says.contains("not allowed"), "{command}: neither refused by us nor forbidden: {says}");
            false
        }
        Err(other) => panic!("{command}: {other}"),
    }
}

#[tokio::test]
async fn every_command_from_every_window() -> Tested {
    let app = App::start().await?;
    let windows: [Window; 3] = [app.step(), app.bay(), app.review()];
    let mut wrong = vec![];
    for (command, arguments, allowed) in rights() {
        for (window, allowed) in windows.iter().zip(allowed) {
            let through = let_through(command, window.invoke(command, arguments.clone()).await?);
            if through != allowed {
                wrong.push(format!("{command} from {}: let through {through}, should be {allowed}", window.page()));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    app.close().await
}

/// The table names every command that there is, and Tauri is told of the same ones.
#[test]
fn the_table_is_whole() -> Tested {
    let app = Path::new(env!("CARGO_MANIFEST_DIR")).join("../src-tauri");
    let source = std::fs::read_to_string(app.join("src/commands.rs"))?;
    let after_mark = source.split("#[tauri::command]").skip(1);
    let there: BTreeSet<&str> =
        after_mark.filter_map(|text| text.split("fn ").nth(1)?.split(['(', '<']).next()).collect();
    let tested: BTreeSet<&str> =
        rights().into_iter().map(|(name, ..)| name).filter(|name| !name.contains('|')).collect();
    assert_eq!(there, tested, "commands in commands.rs and in this test's table");

    let build = std::fs::read_to_string(app.join("build.rs"))?;
    let listed = build.split(".commands(&[").nth(1).and_then(|rest| rest.split("])").next()).unwrap_or_default();
    let listed: BTreeSet<&str> = listed.split('"').skip(1).step_by(2).collect();
    assert_eq!(there, listed, "commands in commands.rs and in build.rs");
    Ok(())
}
