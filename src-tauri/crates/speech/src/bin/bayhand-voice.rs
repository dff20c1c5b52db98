//! Makes the model's file, for `cargo xtask voice`.
//!
//! `bayhand-voice convert FOLDER` makes it from the carrier's files in FOLDER and says where it lies;
//! `bayhand-voice check` ends well when the file is there and whole.

use bayhand_speech::model::{Model, convert, place};
use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let Some(model) = place::usual() else {
        eprintln!("This system names no home folder, so there is no place for the voice model.");
        return ExitCode::FAILURE;
    };
    let done = match words.as_slice() {
        ["convert", carrier] => convert::convert(Path::new(carrier), &model).map_err(|error| error.to_string()),
        ["check"] => Model::check(&model).map_err(|error| error.to_string()),
        _ => Err("bayhand-voice convert FOLDER | check".to_owned()),
    };
    match done {
        Ok(()) => {
            println!("The voice model is at {}.", model.display());
            ExitCode::SUCCESS
        }
        Err(says) => {
            eprintln!("{says}");
            ExitCode::FAILURE
        }
    }
}
