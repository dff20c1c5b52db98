//! A third party checks an export by the recipe of `RECORD.md`, in another language and without this program.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use std::path::Path;
use std::process::Command;

use bayhand_jobbook::{Along, Book, Mark};
use common::{PASSPHRASE, at, bodies, place, secret, staffed};

/// What the script says of an export, and whether it found it sound; none where there is no Python.
fn check(export: &Path, more: &[&str]) -> Option<(bool, String)> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/check_export.py");
    let output = Command::new("python3").arg(script).arg(export).args(more).output().ok()?;
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(
        output.status.success() || said.starts_with("wrong: "),
        "{said}{}",
        String::from_utf8_lossy(&output.stderr)
    );
    Some((output.status.success(), said))
}

#[tokio::test]
async fn an_export_is_sound_to_a_third_party_and_a_changed_one_is_not() {
    let (folder, path) = place();
    let (book, _) = staffed(&path).await;
    let (job, _) = book.open_job("{\"car\":\"Größe\u{a0}1\"}", at()).await.unwrap();
    book.append(job, 1, &bodies(&[r#"{"load_kg":"251.50"}"#]), at()).await.unwrap();
    let key = book.unlock("MT", &secret(PASSPHRASE)).await.unwrap();
    let seal = Along { card: None, mark: Mark::IsSealed { by: "MT", key: &key } };
    book.append_with(job, 2, &bodies(&["{}"]), seal, at()).await.unwrap();
    let (code, fingerprint) = book.seal_of(job).await.unwrap().unwrap();
    let text = book.export(job).await.unwrap().text();
    let file = folder.path().join("job.json");
    std::fs::write(&file, &text).unwrap();
    let Some((sound, said)) = check(&file, &[&code, &fingerprint]) else {
        println!("SKIPPED: there is no python3 here, so no third party could check the export");
        return;
    };
    assert!(sound, "{said}");
    assert!(said.contains(&format!("sealed by MT, code {code}, key {fingerprint}")), "it finds the same marks: {said}");

    let (sound, said) = check(&file, &["0000-0000-0000", &fingerprint]).unwrap();
    assert!(!sound && said.contains("not those of the sheet"), "{said}");
    for (from, to, says) in [
        ("251.50", "251.60", "the hash of entry 2"),
        ("+01:00", "+02:00", "the hash of entry 1"),
        (r#"\"entries\":3"#, r#"\"entries\":2"#, "of the book does not follow"),
    ] {
        assert!(text.contains(from), "control: {from} stands in the export");
        std::fs::write(&file, text.replacen(from, to, 1)).unwrap();
        let (sound, said) = check(&file, &[]).unwrap();
        assert!(!sound && said.contains(says), "{from} -> {to}: {said}");
    }
    // A seal that was made up, in a chain that is sound in itself.
    let mut export: serde_json::Value = serde_json::from_str(&text).unwrap();
    let line = export["book"].as_array_mut().unwrap().last_mut().unwrap();
    let body = line["body"].as_str().unwrap().replace(r#""by":"MT""#, r#""by":"XX""#);
    let (number, mono) = (line["number"].as_u64().unwrap(), line["mono"].as_u64().unwrap());
    let before: Vec<u8> = unhex(line["before"].as_str().unwrap());
    let at = line["at"].as_str().unwrap().to_owned();
    let hash =
        bayhand_jobbook::chain::Link { job: 0, number, mono, at: at.as_bytes(), body: body.as_bytes() }.hash(&before);
    line["body"] = body.into();
    line["hash"] = hash.iter().map(|byte| format!("{byte:02x}")).collect::<String>().into();
    std::fs::write(&file, export.to_string()).unwrap();
    let (sound, said) = check(&file, &[]).unwrap();
    assert!(!sound && said.contains("signature of a seal does not fit"), "{said}");
    book.close().await.unwrap();
    Book::open_read_only(&path).await.unwrap().verify().await.expect("the book itself was not touched");
}

fn unhex(text: &str) -> Vec<u8> {
    (0..text.len()).step_by(2).map(|at| u8::from_str_radix(&text[at..at + 2], 16).unwrap()).collect()
}
