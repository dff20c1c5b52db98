//! Makes the model's file, for `cargo xtask voice`.
//!
//! `bayhand-voice convert FOLDER` makes it from the carrier's files in FOLDER and says where it lies;
//! `bayhand-voice check` ends well when the file is there and whole, and says where it lies.
//! `bayhand-voice copy FILE` checks the file that is there and copies it to FILE, for a package.

use bayhand_speech::model::{Model, convert, place};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let (Some(own), Some(there)) = (place::own(), place::usual()) else {
        eprintln!("This system names no home folder, so there is no place for the voice model.");
        return ExitCode::FAILURE;
    };
    let done = match words.as_slice() {
        ["convert", carrier] => convert(Path::new(carrier), own),
        ["check"] => check(there),
        ["copy", file] => check(there).and_then(|there| copy(&there, Path::new(file))),
        _ => Err("bayhand-voice convert FOLDER | check | copy FILE".to_owned()),
    };
    match done {
        Ok(model) => {
            println!("The voice model is at {}.", model.display());
            ExitCode::SUCCESS
        }
        Err(says) => {
            eprintln!("{says}");
            ExitCode::FAILURE
        }
    }
}

fn convert(carrier: &Path, model: PathBuf) -> Result<PathBuf, String> {
    convert::convert(carrier, &model).map_err(|error| error.to_string())?;
    Ok(model)
}

fn check(model: PathBuf) -> Result<PathBuf, String> {
    Model::check(&model).map_err(|error| error.to_string())?;
    Ok(model)
}

fn copy(model: &Path, file: &Path) -> Result<PathBuf, String> {
    std::fs::copy(model, file).map_err(|error| format!("{} could not be written: {error}.", file.display()))?;
    Ok(file.to_owned())
}
