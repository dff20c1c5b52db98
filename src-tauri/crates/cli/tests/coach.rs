//! What the coach says after jobs on a simulated car with which something is wrong. It sees the record and the hidden truth,
//! never the fault's name: every fault is either held by a gate, or the coach says why nobody could see it.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use common::{complaint, printed, run};

/// What the coach says of a job on the car of seed 1, from its line of points on, and whether the job was sealed.
fn coached(arguments: &[&str]) -> (bool, String) {
    let output = run(["practice", "--seed", "1", "--coach"].iter().chain(arguments));
    let says = printed(&output);
    let from = says.lines().position(|line| line.starts_with("coach: ")).unwrap();
    (output.status.success(), says.lines().skip(from).collect::<Vec<_>>().join("\n"))
}

/// The job ends so, the coach names the thing with this, says what became of it, and gives these points.
fn check(faults: &[&str], sealed: bool, names: &[&str], outcomes: &[&str], points: u32) {
    let arguments: Vec<&str> = faults.iter().flat_map(|fault| ["--fault", fault]).collect();
    let (was_sealed, says) = coached(&arguments);
    println!("{faults:?}\n{says}");
    assert_eq!(was_sealed, sealed, "{faults:?}: {says}");
    for text in names {
        assert!(says.contains(text), "{faults:?}: {text} is named: {says}");
    }
    let titles = says.lines().filter(|line| line.starts_with("  ") && line.ends_with(']'));
    let found: Vec<&str> = titles.map(|line| line.rsplit_once('[').unwrap().1.trim_end_matches(']')).collect();
    assert_eq!(found, outcomes, "{faults:?}: {says}");
    assert!(says.starts_with(&format!("coach: {points} of 100 ")), "{faults:?}: {points} points: {says}");
    assert!(faults.iter().all(|fault| !says.contains(fault)), "{faults:?}: no fault is named by its name: {says}");
}

#[test]
fn a_sound_job_has_nothing_to_say() {
    let (sealed, says) = coached(&[]);
    assert!(sealed && says.contains("Nothing was wrong with car and bench"), "{says}");
}

/// A gate held for it, at a reading or at the gauge, and the careful setter did not let it pass.
#[test]
fn what_a_gate_holds_for_is_told_with_its_entry() {
    check(&["pad-zero"], false, &["The pad at front right showed +2.0 kg"], &["held"], 100);
    check(&["pad-low"], false, &["The pad at rear right stood -1.5 mm"], &["held"], 100);
    check(&["off-pad-middle"], false, &["The pad at rear left showed -2.0 %"], &["held"], 100);
    check(&["pounds-shown"], false, &["they stood on pounds"], &["held"], 100);
    check(&["ballast-forgotten"], false, &["The ballast differed by -80.0 kg"], &["held"], 100);
    check(&["ballast-slides"], false, &["+80.0 mm further back and +120.0 mm further out"], &["held"], 100);
    check(&["hot-pressure"], false, &["The tyre at rear left differed by -0.25 bar"], &["held"], 100);
    check(
        &["tyre-down"],
        false,
        &["The tyre at front left differed by -0.40 bar", "1.35 bar"],
        &["held, and put right"],
        100,
    );
    check(&["sticky-strut"], false, &["The strut at rear left held"], &["held"], 100);
    check(&["on-bump-stop"], false, &["51.0 mm of the wheel travel", "Load, front left showed"], &["held"], 100);
    check(&["arm-touches"], false, &["at front left carried 12.0 kg"], &["held"], 100);
    check(&["rim-run-out"], false, &["The rim at front left leaned"], &["held, and put right"], 100);
    check(&["steering-off"], false, &["+0.25° at the wheels to the left"], &["held, and put right"], 100);
    check(&["wrong-corner"], false, &["The collar at rear left stood -1.5 mm"], &["held"], 100);
}

/// A link that was left on is found at the reading after it went back on, a preload by the bolt that does not slide in.
#[test]
fn what_ends_is_found_at_the_reading_after_it() {
    check(&["link-left-on"], false, &["The link of the front bar was bolted up"], &["held, and put right"], 100);
    check(&["bar-preload"], true, &["The link of the rear bar stood +3 turns"], &["held, and put right"], 100);
}

/// A bent arm is held for at the rough reading of the angles, which says to look for one; a setter who only turns, and has
/// an angle waived at the end, hands the car over with it.
#[test]
fn what_was_held_for_and_never_looked_at_is_sealed_in() {
    check(
        &["bent-arm"],
        true,
        &["The lower arm at front right was 5.0 mm short", "Toe, positive when the front points in, front right"],
        &["held, and let pass"],
        60,
    );
}

/// A collar that slips by a millimetre moves less than a settle hides: the coach says so and takes no points.
#[test]
fn what_nobody_can_see_costs_nothing() {
    check(
        &["collar-slips"],
        true,
        &["By eye it could not be told", "front right stood -1.0 mm"],
        &["could not be seen"],
        100,
    );
}

/// Two things at once are told apart.
#[test]
fn two_things_at_once_are_told_apart() {
    check(&["pad-zero", "ballast-slides"], false, &["+2.0 kg", "+80.0 mm further back"], &["held", "held"], 100);
}

/// What the seed draws is drawn again.
#[test]
fn what_is_drawn_follows_from_the_seed() {
    let (_, says) = coached(&["--drawn", "2"]);
    println!("{says}");
    assert_eq!(says, coached(&["--drawn", "2"]).1, "the same seed draws the same");
    assert!(!says.contains("Nothing was wrong"), "{says}");
}

/// The shipped scenarios without a window: the coach finds as many things as each hides.
#[test]
fn scenarios_are_led_without_a_window() {
    for (name, hides) in [
        ("first-morning", "Nothing was wrong with car and bench"),
        ("after-a-kerb", "to be: 2."),
        ("another-hand", "to be: 2."),
    ] {
        let file = format!("{}/../../../scenarios/{name}.json", env!("CARGO_MANIFEST_DIR"));
        let says = printed(&run(["practice", "--scenario", &file, "--coach"]));
        assert!(says.contains(hides), "{name}: {says}");
    }
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bad.json");
    std::fs::write(&file, r#"{ "format": 9, "id": "x", "title": { "en": "X" }, "story": { "en": "X" }, "seed": 1 }"#)
        .unwrap();
    let refused = run(["practice", "--scenario", file.to_str().unwrap()]);
    assert!(!refused.status.success());
    assert!(complaint(&refused).contains("`format` is 9; it may be 1"), "{}", complaint(&refused));
}
