//! The voice: `espeak-ng` on Linux, the system's own voice elsewhere, as a process that is started for each line.
//!
//! The words go in through standard input, so that no line can be taken for an option.

use super::speaker::Utterance;
use crate::spoken::number::Tongue;
use std::io::{self, Read as _, Write as _};
use std::path::Path;
use std::process::{Child, Command, Stdio};

/// How a line is said.
#[derive(Clone, Debug, PartialEq)]
pub struct Manner {
    /// Its language.
    pub tongue: Tongue,
    /// Loudness, 0 to 100 percent.
    pub volume_percent: u8,
    /// Words a minute, 80 to 300.
    pub words_a_minute: u16,
    /// A voice of the system by its own name; `None` takes the language's usual one.
    pub name: Option<String>,
}

impl Manner {
    /// Full loudness, unhurried.
    pub const fn usual(tongue: Tongue) -> Self {
        Self { tongue, volume_percent: 100, words_a_minute: 150, name: None }
    }
}

/// Why nothing was said.
#[derive(Debug, thiserror::Error)]
pub enum VoiceError {
    /// The program that speaks is not here.
    #[error("{0} is not here, so nothing can be said")]
    Missing(&'static str),
    /// It is here, but has no loudspeaker.
    #[error("no loudspeaker answers, so nothing can be heard: {0}")]
    NoSpeaker(String),
    /// It could not be started, or did not end well.
    #[error("the line could not be said: {0}")]
    Failed(String),
    /// A value is out of range.
    #[error("{field} is {is}; it must be {range}")]
    Range {
        /// What.
        field: &'static str,
        /// What it is.
        is: u32,
        /// What it must be.
        range: &'static str,
    },
}

/// A program of the system that speaks.
const PROGRAM: &str = if cfg!(target_os = "macos") {
    "say"
} else if cfg!(windows) {
    "powershell"
} else {
    "espeak-ng"
};

/// A line that is being said through the speaker.
#[derive(Debug)]
pub struct Saying(Child);

impl Saying {
    /// Begins to say words.
    ///
    /// # Errors
    /// The program is missing or cannot be started; a value of the manner is out of range.
    pub fn begin(words: &str, manner: &Manner) -> Result<Self, VoiceError> {
        start(words, manner, None).map(Self)
    }

    /// What it complained of.
    fn complaint(&mut self) -> String {
        let mut says = String::new();
        if let Some(mut errors) = self.0.stderr.take() {
            // What cannot be read is no complaint.
            let _ = errors.read_to_string(&mut says);
        }
        says
    }
}

impl Utterance for Saying {
    fn ended(&mut self) -> Option<Result<(), VoiceError>> {
        let status = match self.0.try_wait() {
            Ok(status) => status?,
            Err(error) => return Some(Err(VoiceError::Failed(error.to_string()))),
        };
        let complaint = self.complaint();
        // `espeak-ng` ends well where there is no loudspeaker, and only writes so.
        let silent = complaint.lines().find_map(|line| line.strip_prefix("error: "));
        Some(match (status.success(), silent) {
            (true, None) => Ok(()),
            (true, Some(why)) => Err(VoiceError::NoSpeaker(why.to_owned())),
            (false, _) => Err(VoiceError::Failed(complaint.trim().to_owned())),
        })
    }

    fn cut(mut self: Box<Self>) {
        // One that has just ended cannot be killed, and that is what is wanted.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// Says words into a WAV file.
///
/// # Errors
/// The program is missing or fails; a value of the manner is out of range.
pub fn to_file(words: &str, manner: &Manner, out: &Path) -> Result<(), VoiceError> {
    let told = start(words, manner, Some(out))?.wait_with_output();
    let told = told.map_err(|error| VoiceError::Failed(error.to_string()))?;
    // The program may end well without a file, as where the folder does not exist.
    if told.status.success() && out.is_file() {
        return Ok(());
    }
    let says = String::from_utf8_lossy(&told.stderr);
    Err(VoiceError::Failed(format!("{} ended with {}: {}", PROGRAM, told.status, says.trim())))
}

fn start(words: &str, manner: &Manner, out: Option<&Path>) -> Result<Child, VoiceError> {
    if manner.volume_percent > 100 {
        return Err(VoiceError::Range { field: "volume", is: manner.volume_percent.into(), range: "0 to 100 percent" });
    }
    if !(80..=300).contains(&manner.words_a_minute) {
        let is = manner.words_a_minute.into();
        return Err(VoiceError::Range { field: "speed", is, range: "80 to 300 words a minute" });
    }
    let mut command = command(manner, out);
    command.stdin(Stdio::piped()).stdout(Stdio::null()).stderr(Stdio::piped());
    let mut child = command.spawn().map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => VoiceError::Missing(PROGRAM),
        _ => VoiceError::Failed(error.to_string()),
    })?;
    // Closed at the end of this block: the program then knows that it has all of it.
    if let Some(mut input) = child.stdin.take() {
        let sent = input.write_all(words.as_bytes());
        if let Err(error) = sent {
            let _ = child.kill();
            let _ = child.wait();
            return Err(VoiceError::Failed(error.to_string()));
        }
    }
    Ok(child)
}

#[cfg(not(any(windows, target_os = "macos")))]
fn command(manner: &Manner, out: Option<&Path>) -> Command {
    let usual = match manner.tongue {
        Tongue::English => "en-us+m3",
        Tongue::German => "de+m3",
    };
    let mut command = Command::new(PROGRAM);
    command.args(["--stdin", "-b", "1", "-v", manner.name.as_deref().unwrap_or(usual)]);
    command.args(["-s", &manner.words_a_minute.to_string(), "-a", &manner.volume_percent.to_string()]);
    if let Some(out) = out {
        command.arg("-w").arg(out);
    }
    command
}

#[cfg(target_os = "macos")]
fn command(manner: &Manner, out: Option<&Path>) -> Command {
    let usual = match manner.tongue {
        Tongue::English => "Samantha",
        Tongue::German => "Anna",
    };
    let mut command = Command::new(PROGRAM);
    command.args(["-f", "-", "-v", manner.name.as_deref().unwrap_or(usual)]);
    command.args(["-r", &manner.words_a_minute.to_string()]);
    if let Some(out) = out {
        command.args(["--file-format=WAVE", "--data-format=LEI16@16000", "-o"]).arg(out);
    }
    command
}

#[cfg(windows)]
fn command(manner: &Manner, out: Option<&Path>) -> Command {
    // The settings come by environment and the words by standard input, so that none of them is read as script.
    let script = "Add-Type -AssemblyName System.Speech; \
        [Console]::InputEncoding = [Text.Encoding]::UTF8; \
        $s = New-Object System.Speech.Synthesis.SpeechSynthesizer; \
        if ($env:BAYHAND_SAY_NAME) { $s.SelectVoice($env:BAYHAND_SAY_NAME) } else { \
        $s.SelectVoiceByHints('NotSet', 'NotSet', 0, (New-Object Globalization.CultureInfo $env:BAYHAND_SAY_TONGUE)) }; \
        $s.Volume = [int]$env:BAYHAND_SAY_VOLUME; $s.Rate = [int]$env:BAYHAND_SAY_RATE; \
        if ($env:BAYHAND_SAY_OUT) { $s.SetOutputToWaveFile($env:BAYHAND_SAY_OUT) }; \
        $s.Speak([Console]::In.ReadToEnd()); $s.Dispose()";
    let tongue = match manner.tongue {
        Tongue::English => "en-US",
        Tongue::German => "de-DE",
    };
    // From -10 to 10 there, with 0 at about 150 words a minute.
    let rate = ((f32::from(manner.words_a_minute) / 150.0).ln() / 3.0_f32.ln() * 10.0).round();
    let mut command = Command::new(PROGRAM);
    command.args(["-NoProfile", "-NonInteractive", "-Command", script]);
    command.env("BAYHAND_SAY_NAME", manner.name.as_deref().unwrap_or_default()).env("BAYHAND_SAY_TONGUE", tongue);
    command.env("BAYHAND_SAY_VOLUME", manner.volume_percent.to_string()).env("BAYHAND_SAY_RATE", rate.to_string());
    if let Some(out) = out {
        command.env("BAYHAND_SAY_OUT", out);
    }
    command
}
