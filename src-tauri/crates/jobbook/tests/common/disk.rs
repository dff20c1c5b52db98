//! A disk that loses power: the writes of a real process, recorded by strace, replayed up to any moment.
//!
//! What a process wrote to a file is safe once it synced that file after; until then each write may have reached the disk
//! whole, not at all, or in part, with anything in the rest of it. Names (making, renaming, removing files) are taken to
//! be kept in order, as journalling file systems keep them.

#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What happened, in order.
pub enum Event {
    Write {
        file: String,
        at: usize,
        bytes: Vec<u8>,
    },
    Truncate {
        file: String,
        len: usize,
    },
    Sync {
        file: String,
    },
    Rename {
        from: String,
        to: String,
    },
    Remove {
        file: String,
    },
    /// The process said this to whoever reads it.
    Said(String),
}

/// Lets a command run under strace in `folder`, which is where all its files are, and gives back what it did to them.
pub fn record(mut command: Command, folder: &Path) -> Vec<Event> {
    let trace = folder.with_extension("trace");
    let mut strace = Command::new("strace");
    strace.args(["-f", "-y", "-xx", "-s", "1000000", "-o"]).arg(&trace);
    strace.arg("-e").arg("trace=pwrite64,write,fsync,fdatasync,ftruncate,rename,renameat2,unlink,openat");
    strace.arg(command.get_program()).args(command.get_args()).stdout(Stdio::piped()).stdin(Stdio::null());
    for (name, value) in command.get_envs() {
        strace.env(name, value.unwrap_or_default());
    }
    let output = strace.output().expect("strace is installed; `cargo xtask test` does that");
    assert!(output.status.success(), "the recorded process ends well: {}", String::from_utf8_lossy(&output.stderr));
    command.stdin(Stdio::null());
    let text = std::fs::read_to_string(&trace).unwrap();
    std::fs::remove_file(&trace).unwrap();
    events(&text, folder)
}

/// The events of a trace that concern files in `folder`, and what was said.
fn events(trace: &str, folder: &Path) -> Vec<Event> {
    let mut unfinished: BTreeMap<&str, String> = BTreeMap::new();
    let mut events = Vec::new();
    for line in trace.lines() {
        let Some((process, call)) = line.split_once(' ') else { continue };
        let call = call.trim_start();
        if let Some(begun) = call.strip_suffix(" <unfinished ...>") {
            unfinished.insert(process, begun.to_owned());
            continue;
        }
        let whole = match call.strip_prefix("<... ").and_then(|rest| rest.split_once(" resumed>")) {
            Some((_, rest)) => format!("{}{rest}", unfinished.remove(process).unwrap_or_default()),
            None => call.to_owned(),
        };
        events.extend(event(&whole, folder));
    }
    events
}

fn event(call: &str, folder: &Path) -> Option<Event> {
    let (name, rest) = call.split_once('(')?;
    let (arguments, result) = rest.rsplit_once(" = ")?;
    if result.starts_with('-') {
        return None;
    }
    let arguments = arguments.trim_end().strip_suffix(')')?;
    let parts: Vec<&str> = arguments.split(", ").collect();
    let of_descriptor = |part: &str| in_folder(&unescape(part.split_once('<')?.1.strip_suffix('>')?), folder);
    let of_name = |part: &str| in_folder(&quoted(part)?, folder);
    match name {
        "pwrite64" => {
            let file = of_descriptor(parts[0])?;
            Some(Event::Write { file, bytes: quoted(parts[1])?, at: parts.last()?.parse().ok()? })
        }
        "write" if parts[0].starts_with("1<") => Some(Event::Said(String::from_utf8(quoted(parts[1])?).ok()?)),
        "fsync" | "fdatasync" => Some(Event::Sync { file: of_descriptor(parts[0])? }),
        "ftruncate" => Some(Event::Truncate { file: of_descriptor(parts[0])?, len: parts[1].parse().ok()? }),
        "rename" => Some(Event::Rename { from: of_name(parts[0])?, to: of_name(parts[1])? }),
        "unlink" => Some(Event::Remove { file: of_name(parts[0])? }),
        _ => None,
    }
}

fn quoted(part: &str) -> Option<Vec<u8>> {
    Some(unescape(part.strip_prefix('"')?.strip_suffix('"')?))
}

/// `\x2f\x74` as strace prints every byte with `-xx`.
fn unescape(text: &str) -> Vec<u8> {
    text.split("\\x").skip(1).filter_map(|byte| u8::from_str_radix(byte.get(..2)?, 16).ok()).collect()
}

/// The name of a file in the folder; none of one elsewhere, or of the folder itself.
fn in_folder(path: &[u8], folder: &Path) -> Option<String> {
    let path = PathBuf::from(String::from_utf8(path.to_vec()).ok()?);
    (path.parent()? == folder).then(|| path.file_name()?.to_str().map(str::to_owned))?
}

/// What becomes of a write that was not synced.
#[derive(Clone, Copy, Debug)]
pub enum Fate {
    Written,
    Dropped,
    /// Each sector for itself: written, dropped or trashed.
    Trashed,
}

#[derive(Clone)]
enum Pending {
    Write(usize, Vec<u8>),
    Truncate(usize),
}

/// What lies on the disk, and what is on its way.
#[derive(Default)]
pub struct Disk {
    files: BTreeMap<String, (Vec<u8>, Vec<Pending>)>,
    said: String,
    /// Names of files whose syncs do nothing: how a log behaves that is not synced at a commit.
    pub unsynced: BTreeSet<String>,
}

const SECTOR: usize = 512;

impl Disk {
    /// The next thing that happens.
    pub fn happens(&mut self, event: &Event) {
        match event {
            Event::Write { file, at, bytes } => {
                self.files.entry(file.clone()).or_default().1.push(Pending::Write(*at, bytes.clone()));
            }
            Event::Truncate { file, len } => {
                self.files.entry(file.clone()).or_default().1.push(Pending::Truncate(*len));
            }
            Event::Sync { file } if self.unsynced.contains(file) => {}
            Event::Sync { file } => {
                if let Some((safe, pending)) = self.files.get_mut(file) {
                    pending.drain(..).for_each(|change| change.on(safe));
                }
            }
            Event::Rename { from, to } => {
                if let Some(contents) = self.files.remove(from) {
                    self.files.insert(to.clone(), contents);
                }
            }
            Event::Remove { file } => {
                self.files.remove(file);
            }
            Event::Said(text) => self.said.push_str(text),
        }
    }

    /// Numbers and hashes that the process has said are recorded.
    pub fn receipts(&self) -> BTreeMap<u64, String> {
        let receipt = |line: &str| {
            let (number, hash) = line.strip_prefix("recorded ")?.split_once(' ')?;
            Some((number.parse().ok()?, hash.to_owned()))
        };
        self.said.lines().filter_map(receipt).filter(|(_, hash)| hash.len() == 64).collect()
    }

    /// Leaves in `folder` what the disk holds after the power went, the shared memory apart, which holds nothing.
    pub fn crash(&self, folder: &Path, fate: Fate, random: &mut impl FnMut(u64) -> u64) {
        for (name, (safe, pending)) in self.files.iter().filter(|(name, _)| !name.ends_with("-shm")) {
            let mut left = safe.clone();
            for change in pending {
                match (fate, change) {
                    (Fate::Written, change) => change.clone().on(&mut left),
                    (Fate::Dropped, _) => {}
                    (Fate::Trashed, Pending::Truncate(_)) => {
                        if random(2) == 0 {
                            change.clone().on(&mut left);
                        }
                    }
                    (Fate::Trashed, Pending::Write(at, bytes)) => {
                        for (index, sector) in bytes.chunks(SECTOR).enumerate() {
                            let at = at + index * SECTOR;
                            match random(3) {
                                0 => Pending::Write(at, sector.to_vec()).on(&mut left),
                                1 => {}
                                _ => {
                                    let trash = sector.iter().map(|_| random(256) as u8).collect();
                                    Pending::Write(at, trash).on(&mut left);
                                }
                            }
                        }
                    }
                }
            }
            std::fs::write(folder.join(name), left).unwrap();
        }
    }
}

impl Pending {
    fn on(self, bytes: &mut Vec<u8>) {
        match self {
            Pending::Truncate(len) => bytes.resize(len, 0),
            Pending::Write(at, new) => {
                let end = at + new.len();
                if bytes.len() < end {
                    bytes.resize(end, 0);
                }
                bytes[at..end].copy_from_slice(&new);
            }
        }
    }
}
