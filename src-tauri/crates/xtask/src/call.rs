//! Starting a program and saying what went wrong.

use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What went wrong and what to do, for a person.
pub type Done<T = ()> = Result<T, String>;

/// The project's root folder.
pub fn root() -> &'static Path {
    // This package lies three folders below it.
    Path::new(env!("CARGO_MANIFEST_DIR")).ancestors().nth(3).unwrap_or(Path::new("."))
}

/// The cargo that started this program.
pub fn cargo() -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(root());
    command
}

/// A program of the workspace that cargo has built: it lies beside this one, whatever the target folder is.
///
/// # Errors
/// When this program cannot tell where it lies.
pub fn built(name: &str) -> Done<PathBuf> {
    let own = std::env::current_exe().map_err(|error| format!("This program cannot tell where it lies: {error}."))?;
    Ok(own.with_file_name(format!("{name}{}", std::env::consts::EXE_SUFFIX)))
}

/// The folder that cargo builds into, whatever it is set to.
///
/// # Errors
/// As [`built`].
pub fn target() -> Done<PathBuf> {
    // This program lies in the folder of its profile.
    let own = built("xtask")?;
    own.ancestors().nth(2).map(Path::to_owned).ok_or_else(|| format!("{} has no folder above it.", own.display()))
}

/// Runs to the end, its output shown.
///
/// # Errors
/// When it cannot be started or does not end well.
pub fn run(command: &mut Command) -> Done {
    let shown = shown(command);
    println!("\n> {shown}");
    let status = command.status().map_err(|error| format!("`{shown}` could not be started: {error}."))?;
    if status.success() { Ok(()) } else { Err(format!("`{shown}` failed ({status}); what it said stands above.")) }
}

/// Runs to the end, shows its output and gives each of its lines to `line`.
///
/// # Errors
/// As [`run`].
pub fn run_reading(command: &mut Command, mut line: impl FnMut(&str)) -> Done {
    let shown = shown(command);
    println!("\n> {shown}");
    let mut child =
        command.stdout(Stdio::piped()).spawn().map_err(|error| format!("`{shown}` could not be started: {error}."))?;
    if let Some(output) = child.stdout.take() {
        for text in BufReader::new(output).split(b'\n').map_while(Result::ok) {
            let text = String::from_utf8_lossy(&text);
            println!("{text}");
            line(&text);
        }
    }
    let status = child.wait().map_err(|error| format!("`{shown}` was lost: {error}."))?;
    if status.success() { Ok(()) } else { Err(format!("`{shown}` failed ({status}); what it said stands above.")) }
}

/// Runs to the end and gives what it printed.
///
/// # Errors
/// As [`run`]; what it complained of is shown.
pub fn told(command: &mut Command) -> Done<String> {
    let shown = shown(command);
    let told =
        command.stderr(Stdio::inherit()).output().map_err(|e| format!("`{shown}` could not be started: {e}."))?;
    if !told.status.success() {
        return Err(format!("`{shown}` failed ({}); what it said stands above.", told.status));
    }
    Ok(String::from_utf8_lossy(&told.stdout).into_owned())
}

/// True when a program of that name is on the search path.
pub fn on_path(name: &str) -> bool {
    found_on_path(name).is_some()
}

/// The program of that name on the search path.
pub fn found_on_path(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path).map(|folder| folder.join(name)).find(|program| program.is_file())
}

/// As one would type it.
fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or_default();
    let words = std::iter::once(program).chain(command.get_args());
    words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ")
}
