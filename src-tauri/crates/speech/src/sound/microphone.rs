//! The microphone: a program of the system that records, started as a process and never linked.
//!
//! It runs only while somebody is listened to. Where no such program or no microphone is, opening or taking says so.

use super::HERTZ;
use std::io::{self, Read as _};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::mpsc::{self, TryRecvError};

/// Why nothing is recorded.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum MicrophoneError {
    /// No program here records.
    #[error("no program here records sound (arecord, parec or pw-record)")]
    Missing,
    /// The program says that there is no microphone, or that it is lost.
    #[error("no microphone answers: {0}")]
    Silent(String),
}

/// What records: the system's microphone, or in tests a file.
pub trait Microphone: Send + 'static {
    /// Begins to record.
    ///
    /// # Errors
    /// Nothing records here.
    fn open(&mut self) -> Result<Box<dyn Recording>, MicrophoneError>;
}

/// A recording under way; dropped, it ends.
pub trait Recording: Send {
    /// What came since the last call, at 16 kHz.
    ///
    /// # Errors
    /// The microphone is lost, or never was there.
    fn take(&mut self) -> Result<Vec<f32>, MicrophoneError>;
}

/// The microphone that the system prefers.
pub struct SystemMicrophone;

/// Programs that record, each with what makes it write bare 16-bit samples of one channel.
const PROGRAMS: [(&str, &[&str]); 3] = [
    // Periods of 20 ms: what was said last must not wait in a buffer.
    ("arecord", &["-q", "-t", "raw", "-f", "S16_LE", "-c", "1", "-F", "20000", "-B", "200000", "-r"]),
    ("parec", &["--raw", "--format=s16le", "--channels=1", "--latency-msec=20", "--rate"]),
    ("pw-record", &["--format=s16", "--channels=1", "--latency=20ms", "-", "--rate"]),
];

impl Microphone for SystemMicrophone {
    fn open(&mut self) -> Result<Box<dyn Recording>, MicrophoneError> {
        for (program, arguments) in PROGRAMS {
            let mut command = Command::new(program);
            command.args(arguments).arg(HERTZ.to_string());
            if let Some(recording) = Process::start(command)? {
                return Ok(Box::new(recording));
            }
        }
        Err(MicrophoneError::Missing)
    }
}

/// A program that writes samples to its standard output.
pub struct Process {
    child: Child,
    sound: mpsc::Receiver<Vec<f32>>,
}

impl Process {
    /// Starts a program that records; `None` when it is not here.
    ///
    /// # Errors
    /// It is here and cannot be started.
    pub fn start(mut command: Command) -> Result<Option<Self>, MicrophoneError> {
        command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = match command.spawn() {
            Ok(child) => child,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(MicrophoneError::Silent(error.to_string())),
        };
        let (send, sound) = mpsc::channel();
        if let Some(output) = child.stdout.take() {
            std::thread::spawn(move || read(output, &send));
        }
        Ok(Some(Self { child, sound }))
    }
}

fn read(mut output: ChildStdout, send: &mpsc::Sender<Vec<f32>>) {
    let mut bytes = [0; 1280];
    // A sample may be cut in two between two reads.
    let mut half: Option<u8> = None;
    while let Ok(length @ 1..) = output.read(&mut bytes) {
        let all: Vec<u8> = half.take().into_iter().chain(bytes[..length].iter().copied()).collect();
        let samples = all.chunks_exact(2);
        half = samples.remainder().first().copied();
        let samples = samples.map(|pair| f32::from(i16::from_le_bytes([pair[0], pair[1]])) / 32768.0).collect();
        if send.send(samples).is_err() {
            break;
        }
    }
}

impl Recording for Process {
    fn take(&mut self) -> Result<Vec<f32>, MicrophoneError> {
        let mut sound = Vec::new();
        loop {
            match self.sound.try_recv() {
                Ok(more) => sound.extend(more),
                Err(TryRecvError::Empty) => return Ok(sound),
                Err(TryRecvError::Disconnected) if !sound.is_empty() => return Ok(sound),
                Err(TryRecvError::Disconnected) => {
                    let mut says = String::new();
                    if let Some(mut errors) = self.child.stderr.take() {
                        // What cannot be read says nothing.
                        let _ = errors.read_to_string(&mut says);
                    }
                    let says = says.lines().last().unwrap_or("it ended").trim().to_owned();
                    return Err(MicrophoneError::Silent(says));
                }
            }
        }
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // One that has ended cannot be killed, and that is what is wanted.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
