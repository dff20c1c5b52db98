//! `hear` through the built program on fixed files, and `say` heard again. Needs the voice model and a voice, so it runs
//! where it is asked for by `--ignored`, as `cargo xtask test` does when the model is there.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use common::{answers, complaint, printed, run};
use serde_json::{Value, json};

fn file(name: &str) -> String {
    format!("{}/../speech/tests/data/{name}.flac", env!("CARGO_MANIFEST_DIR"))
}

fn question(audio: &str, phrases: &[&str], reading: Value) -> String {
    json!({ "audio": audio, "expect": { "phrases": phrases, "reading": reading } }).to_string()
}

#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn files_are_heard_line_by_line_and_a_wrong_line_does_not_end_it() {
    let load = json!({ "corner": "front left", "digits": 3, "decimals": 1, "minus": false });
    let heard = answers(
        "hear",
        &[
            question(&file("voice3-c03"), &["confirm", "cancel"], json!(false)),
            question(&file("voice3-r00"), &["confirm"], json!(true)),
            question(&file("voice3-r20"), &[], load),
            question(&file("voice3-o01"), &["confirm", "cancel"], json!(true)),
            question("no-such.flac", &["next"], json!(false)),
            question(&file("voice3-c03"), &["step 2"], json!(false)),
            question(&file("voice3-c03"), &[], json!(false)),
        ],
    );
    assert_eq!(heard[0]["phrase"], "confirm");
    assert_eq!(heard[1]["reading"], json!({ "corner": "front left", "text": "265.2" }));
    assert_eq!(heard[2]["reading"]["text"], "684.4", "held to a form");
    assert_eq!(heard[3]["rejected"], "other-talk");
    for answer in &heard[..4] {
        assert!(answer["score"].is_number() && answer["ms"].is_number(), "{answer}");
    }
    for (answer, at) in heard[4..].iter().zip(["audio", "expect.phrases[0]", "expect"]) {
        assert_eq!(answer["error"]["at"], at, "{answer}");
    }
}

/// Round trip: what the voice says of a reading is heard as that reading.
#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn what_is_said_is_heard_again() {
    let folder = tempfile::tempdir().unwrap();
    let mut questions = Vec::new();
    let texts = [("front left", "214.5"), ("rear right", "308.0"), ("front right", "96.2")];
    for (number, (corner, text)) in texts.iter().enumerate() {
        let out = folder.path().join(format!("{number}.wav"));
        let said = run(["say", "--text", &format!("{corner} {text}"), "--out", out.to_str().unwrap()]);
        assert!(said.status.success(), "{}", complaint(&said));
        questions.push(question(out.to_str().unwrap(), &["confirm"], json!(true)));
    }
    for (heard, (corner, text)) in answers("hear", &questions).iter().zip(texts) {
        assert_eq!(heard["reading"], json!({ "corner": corner, "text": text }), "{heard}");
    }
}

#[test]
#[ignore = "needs the voice model: cargo xtask voice"]
fn what_is_missing_is_said() {
    let no_model = run(["hear", "--model", "no-such.model"]);
    assert_eq!(no_model.status.code(), Some(1));
    assert!(complaint(&no_model).contains("no-such.model") && complaint(&no_model).contains("cargo xtask voice"));
    let too_fast = run(["say", "--text", "next", "--out", "x.wav", "--speed", "900"]);
    assert!(complaint(&too_fast).contains("80 to 300"), "{}{}", complaint(&too_fast), printed(&too_fast));
}
