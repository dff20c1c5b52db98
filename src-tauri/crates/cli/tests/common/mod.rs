//! What the tests of the built program share: running it, and what it printed.
#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use std::ffi::OsStr;
use std::io::Write as _;
use std::process::{Command, Output, Stdio};
use std::thread;

/// A call of the built program.
pub fn cli<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_bayhand-cli"));
    command.args(arguments);
    command
}

/// Runs the program without input.
pub fn run<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> Output {
    cli(arguments).stdin(Stdio::null()).output().unwrap()
}

/// Asks the program these lines; gives its answers after it ended well.
pub fn answers(command: &str, questions: &[String]) -> Vec<serde_json::Value> {
    let mut child = cli([command]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    let mut input = child.stdin.take().unwrap();
    let text = questions.iter().map(|line| format!("{line}\n")).collect::<String>();
    // Written from a thread of its own: the program answers each line before it reads the next.
    let writer = thread::spawn(move || input.write_all(text.as_bytes()));
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap().unwrap();
    assert!(output.status.success(), "a refused line does not change the exit code: {}", output.status);
    let lines = String::from_utf8(output.stdout).unwrap();
    lines.lines().map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{line}: {e}"))).collect()
}

/// What was printed.
pub fn printed(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// What the program complained of.
pub fn complaint(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

/// Number and hash of a line `recorded NUMBER HASH`; none of another line, or one that was cut short.
pub fn receipt(line: &str) -> Option<(u64, String)> {
    let (number, hash) = line.strip_prefix("recorded ")?.split_once(' ')?;
    (hash.len() == 64).then(|| Some((number.parse().ok()?, hash.to_owned())))?
}

/// The end of a job: `sealed: job 1, 158 steps, 1 rounds, 0 waivers`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sealed {
    pub job: i64,
    pub steps: u32,
    pub rounds: u32,
    pub waivers: u32,
}

/// The last line of a job that ended sealed.
pub fn sealed(printed: &str) -> Option<Sealed> {
    let line = printed.lines().last()?.strip_prefix("sealed: ")?;
    let number = |word: &str| word.split(' ').find_map(|w| w.parse::<i64>().ok());
    let numbers: Vec<i64> = line.split(", ").filter_map(number).collect();
    let [job, steps, rounds, waivers] = numbers.try_into().ok()?;
    let count = |n: i64| u32::try_from(n).ok();
    Some(Sealed { job, steps: count(steps)?, rounds: count(rounds)?, waivers: count(waivers)? })
}
