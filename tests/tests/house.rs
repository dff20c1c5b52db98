//! The invariants of the house: who depends on what, and what stands in no file.
//!
//! Each rule is tried on a case that breaks it as well, so that a rule that sees nothing is noticed.

mod house {
    pub mod crates;
    pub mod files;
}

use house::crates::Crates;
use house::files::{File, written};

/// They never read a clock, a file or a socket.
const PURE: [&str; 6] = [
    "bayhand-measure",
    "bayhand-vehicle",
    "bayhand-chassis",
    "bayhand-planner",
    "bayhand-practice",
    "bayhand-procedure",
];

/// Crates for async work, databases, windows and input or output. A name ending in `*` means all that begin so.
const IMPURE: [&str; 20] = [
    "tokio*",
    "async-*",
    "futures*",
    "smol",
    "mio",
    "socket2",
    "hyper*",
    "reqwest",
    "sqlx*",
    "rusqlite",
    "libsqlite3-sys",
    "tauri*",
    "wry",
    "tao",
    "gtk*",
    "rustix",
    "tempfile",
    "memmap2",
    "walkdir",
    "tracing-appender",
];

fn fits(name: &str, pattern: &str) -> bool {
    pattern.strip_suffix('*').map_or(name == pattern, |begin| name.starts_with(begin))
}

#[test]
fn the_pure_crates_reach_no_async_database_window_or_io() {
    let crates = Crates::read();
    let impure = |from: &str| {
        let reached = crates.reached_by(from);
        reached.into_iter().filter(|name| IMPURE.iter().any(|pattern| fits(name, pattern))).collect::<Vec<_>>()
    };
    for pure in PURE {
        assert_eq!(impure(pure), Vec::<String>::new(), "{pure} is pure");
    }
    for (impure_crate, what) in [("bayhand-jobbook", "sqlx"), ("bayhand-job", "tokio"), ("bayhand", "tauri")] {
        assert!(impure(impure_crate).contains(&what.to_owned()), "control: {impure_crate} reaches {what}");
    }
}

/// A simulated car that shared the model of the program could not contradict it.
#[test]
fn the_practice_car_knows_neither_chassis_nor_planner() {
    let crates = Crates::read();
    let reached = crates.reached_by("bayhand-practice");
    for model in ["bayhand-chassis", "bayhand-planner"] {
        assert!(!reached.contains(model), "bayhand-practice reaches {model}");
        assert!(crates.reached_by("bayhand-job").contains(model), "control: bayhand-job reaches {model}");
    }
}

/// Who may name the crates that fit a pattern among their own dependencies, tests included. The first must do so.
fn only(crates: &Crates, may: &[&str], pattern: &str) {
    let do_so: Vec<String> = crates.members_naming(|name| fits(name, pattern));
    assert!(do_so.contains(&may[0].to_owned()), "control: {} names {pattern}", may[0]);
    let others: Vec<&String> = do_so.iter().filter(|name| !may.contains(&name.as_str())).collect();
    assert!(others.is_empty(), "only {may:?} may depend on {pattern}, but so do {others:?}");
}

#[test]
fn each_foreign_language_is_known_by_one_crate() {
    let crates = Crates::read();
    only(&crates, &["bayhand-jobbook"], "sqlx*");
    // The empty app is there only to be measured beside ours.
    only(&crates, &["bayhand", "bayhand-empty"], "tauri*");
    only(&crates, &["bayhand"], "gtk*");
    only(&crates, &["bayhand-words"], "fluent*");
    only(&crates, &["bayhand-sheet"], "typst*");
}

/// The command line joins them for its own checks and benches, the tests because they test the whole.
#[test]
fn only_job_joins_the_pure_crates_with_the_record() {
    let crates = Crates::read();
    let record = crates.members_naming(|name| name == "bayhand-jobbook");
    let pure = crates.members_naming(|name| PURE.contains(&name));
    let join: Vec<&String> = record.iter().filter(|name| pure.contains(name)).collect();
    assert!(join.contains(&&"bayhand-job".to_owned()), "control: bayhand-job joins them");
    let allowed = ["bayhand-job", "bayhand-cli", "bayhand-tests"];
    let others: Vec<_> = join.into_iter().filter(|name| !allowed.contains(&name.as_str())).collect();
    assert!(others.is_empty(), "{others:?} join pure crates with the record");
}

/// Every member takes the workspace's lints, which deny unsafe code, and none allows it again outside `speech`.
#[test]
fn unsafe_code_is_denied_everywhere() {
    let files = written(&["toml", "rs"]);
    let root = files.iter().find(|file| file.path == "Cargo.toml").expect("the workspace's manifest");
    assert!(root.text.contains("unsafe_code = \"deny\""), "the workspace denies unsafe code");
    let members: Vec<&File> = files.iter().filter(|file| file.path.ends_with("/Cargo.toml")).collect();
    assert!(members.len() >= 13, "control: the members' manifests are read, {} of them", members.len());
    for member in members {
        assert!(member.text.contains("[lints]\nworkspace = true"), "{} takes the workspace's lints", member.path);
    }
    let allows =
        |code: &str| ["allow", "expect", "warn"].iter().any(|word| code.contains(&format!("{word}(unsafe_code")));
    assert!(allows("#![allow(unsafe_code)]"), "control");
    let allowing = files.iter().filter(|file| file.path.ends_with(".rs") && allows(&file.code()));
    for file in allowing.filter(|file| !file.path.starts_with("tests/")) {
        assert!(file.path.starts_with("src-tauri/crates/speech/"), "{} allows unsafe code", file.path);
    }
}

/// The procedure carries ranges as decimal text and never computes with them.
#[test]
fn the_procedure_has_no_float() {
    let float = |code: &str| code.split(|c: char| !c.is_alphanumeric()).any(|word| ["f32", "f64"].contains(&word));
    assert!(float("x: Option<f64>") && !float("let half64 = 1;"), "control");
    let files = written(&["rs"]);
    let procedure: Vec<_> =
        files.iter().filter(|file| file.path.starts_with("src-tauri/crates/procedure/src/")).collect();
    assert!(procedure.len() > 3, "control: its sources are read");
    for file in procedure {
        assert!(!float(&file.code()), "{} names a float type", file.path);
    }
}

/// The clock, the random source, the files and the sockets are passed in.
#[test]
fn the_pure_crates_name_no_clock_file_or_socket() {
    let named = |code: &str| {
        let impure =
            ["std::fs", "std::net", "std::process", "std::env", "SystemTime", "Instant", "Utc::now", "Local::now"];
        impure.into_iter().find(|word| code.contains(word))
    };
    assert_eq!(named("let now = std::time::SystemTime::now();"), Some("SystemTime"), "control");
    for file in written(&["rs"]) {
        let pure = PURE.iter().find(|name| {
            let folder = name.trim_start_matches("bayhand-");
            file.path.starts_with(&format!("src-tauri/crates/{folder}/src/"))
        });
        if let (Some(pure), Some(word)) = (pure, named(&file.code())) {
            panic!("{}: {word}, but {pure} is pure", file.path);
        }
    }
}

#[test]
fn no_file_is_too_long_to_have_one_idea() {
    const MOST: usize = 500;
    let files = written(&["rs", "ts", "svelte"]);
    assert!(files.len() > 50, "control: {} files are read", files.len());
    let long: Vec<_> = files.iter().filter(|file| file.text.lines().count() > MOST).map(|file| &file.path).collect();
    assert!(long.is_empty(), "more than {MOST} lines: {long:?}");
}

/// Nothing in the project rests on one machine's folders or on one mirror of a registry.
#[test]
fn no_machine_path_and_no_registry_host() {
    // Written in parts, so that this file does not break its own rule.
    let forbidden = [
        concat!("/wo", "rk/"),
        concat!("/ro", "ot/"),
        concat!("/ho", "me/"),
        concat!("/Us", "ers/"),
        concat!("C:", "\\"),
        concat!("registry.", "npmjs"),
        concat!("index.", "crates.io"),
        concat!("static.", "crates.io"),
    ];
    let broken = |text: &str| forbidden.into_iter().find(|part| text.contains(part));
    assert!(broken(concat!("open(\"/ho", "me/somebody/book.db\")")).is_some(), "control");
    let extensions =
        ["rs", "ts", "svelte", "toml", "json", "md", "ftl", "lock", "html", "css", "typ", "npmrc", "run", "sql"];
    for file in written(&extensions) {
        assert_eq!(broken(&file.text), None, "{}", file.path);
    }
}
