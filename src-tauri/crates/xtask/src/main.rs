//! Set-up, run, test, benchmarks, packages: `cargo xtask` says what there is.
//!
//! - [`system`]: what this machine must have, and installing it on Debian and Ubuntu.
//! - [`ui`]: the windows' pages: installing, checking, testing, building.
//! - [`test`]: every part of the tests in order, timed. [`screen`]: the screen that windows are tried on; [`picture`]: what
//!   stands on it. [`fresh_root`]: the package on a system that has nothing but itself.
//! - [`voice`]: the model that hears. [`bench`]: the benchmarks. [`package`]: the packages for Debian.
//! - [`types`]: what is generated and committed.
//! - [`call`]: starting a program and saying what went wrong. [`count`]: how many tests passed and failed.
//!
//! Light on purpose: no dependency, and nothing that is not needed to set up, run and test.

mod bench;
mod call;
mod count;
mod fresh_root;
mod package;
mod picture;
mod run;
mod screen;
mod system;
mod test;
mod types;
mod ui;
mod voice;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask run [-- ARGUMENTS]  set up what is missing, build the windows and the app, open it;
                                ARGUMENTS go to the app, such as --book FILE
cargo xtask test [--long]       set up what tests need and run all of them; --long adds the long forms
cargo xtask voice               fetch the voice model (78 MB) by its pinned hash and convert it
cargo xtask types               write the types of the windows and the schemas again from the Rust types
cargo xtask pictures            draw the pictures of docs/model.md again and print the figures of its text
cargo xtask package [--try]     packages for Debian (.deb): the app, and the voice model; says where and how large;
                                --try installs them on a fresh system in a folder and opens the app there
cargo xtask bench [NAME]        the benchmarks: plan, worst, rounds, align, record, solver, windows; without
                                a name all of them, and one table of what each is compared with
cargo xtask bench voice FOLDER  the table of the voices, from a folder of test speech";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["run"] => run::run(&[]),
        ["run", "--", rest @ ..] => run::run(rest),
        ["test"] => test::test(test::Form::Usual),
        ["test", "--long"] => test::test(test::Form::Long),
        ["voice"] => voice::voice(),
        ["types"] => types::write(),
        ["pictures"] => types::pictures(),
        ["package"] => package::package().map(drop),
        ["package", "--try"] => package::package().and_then(|made| fresh_root::install_and_open(&made)),
        ["bench"] => bench::bench(None),
        ["bench", "voice", words @ ..] => bench::voice(words),
        ["bench", name] => bench::bench(Some(name)),
        [] | ["help" | "--help" | "-h"] => {
            println!("{USAGE}");
            return ExitCode::SUCCESS;
        }
        _ => Err(format!("`{}` is none of these:\n{USAGE}", words.join(" "))),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(says) => {
            eprintln!("\n{says}");
            ExitCode::FAILURE
        }
    }
}
